"""The recipe for a new kind of question: topic, row, formula, phrases, transcript. What is absent is named here."""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Callable
from functools import cache
from importlib import import_module
from pathlib import Path

import pytest

import assistant
from assistant.query import Query
from assistant.solving import solver
from assistant.solving.solution import Solution

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent / "language"), str(HERE.parent / "transcripts")]

import corpus  # noqa: E402
import rewrite  # noqa: E402

TOPICS = [name for name, _ in solver.TOPICS]
SOLVING = Path(assistant.__file__).parent / "solving"


def solvers() -> set[str]:
    """Modules of solving/ that can solve: they have a public `solve` that takes a query."""
    found = set()
    for path in SOLVING.glob("*.py"):
        module = import_module(f"assistant.solving.{path.stem}")
        solve = getattr(module, "solve", None)
        if solve is not None and solve.__module__ == module.__name__ and path.stem != "solver":
            found.add(path.stem)
    return found


def test_every_topic_has_a_row_and_every_row_a_topic() -> None:
    """A topic nobody asks is dead; a row without a topic would fail when asked."""
    assert set(TOPICS) <= solvers()
    assert len(TOPICS) == len(set(TOPICS))
    for part in solvers() - set(TOPICS):  # a part of another topic: something else asks it
        others = (path.read_text(encoding="utf-8") for path in SOLVING.parent.rglob("*.py") if path.stem != part)
        assert any(re.search(rf"\b{part}\b", text) for text in others), part


@pytest.mark.parametrize("name", TOPICS)
def test_a_topic_says_what_it_answers(name: str) -> None:
    """Its module and its function have a docstring."""
    module = import_module(f"assistant.solving.{name}")
    assert module.__doc__ and module.solve.__doc__


@cache
def answering(texts: tuple[tuple[str, ...], ...]) -> dict[str, str]:
    """Topic -> a text of these conversations that it answered."""
    found: dict[str, str] = {}
    said: list[str] = [""]

    def watched(name: str, solve: Callable[[Query], Solution | None]) -> Callable[[Query], Solution | None]:
        def wrapped(query: Query) -> Solution | None:
            solution = solve(query)
            if solution is not None and solution.status in ("answered", "out_of_reach"):
                found.setdefault(name, said[0])
            return solution

        return wrapped

    with pytest.MonkeyPatch.context() as patch:
        for name in TOPICS:
            module = import_module(f"assistant.solving.{name}")
            patch.setattr(module, "solve", watched(name, module.solve))
        for turns in texts:
            talk = corpus.fresh()
            for turn in turns:
                said[0] = turn
                talk.answer(turn)
    return found


def _questions() -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(t[0] for t in case.turns) or (case.phrase,) for case in corpus.cases() if case.kind in ("answers", "talks"))


def _evenings() -> tuple[tuple[str, ...], ...]:
    texts = [path.read_text(encoding="utf-8") for path in rewrite.transcripts()]
    return tuple(tuple(said for said, _ in rewrite.exchanges(part)) for text in texts for part in text.split("\n\n"))


@pytest.mark.parametrize("name", TOPICS)
def test_a_topic_has_phrases(name: str) -> None:
    """Some question of the corpus is answered by it."""
    assert name in answering(_questions())


@pytest.mark.parametrize("name", TOPICS)
def test_a_topic_has_a_transcript(name: str) -> None:
    """Some conversation of transcripts_demo/ shows it."""
    assert name in answering(_evenings())


def test_every_formula_is_used() -> None:
    """A public function of physics/ that nothing above it calls is not part of the program."""
    package = Path(assistant.__file__).parent
    public = {(path.stem, node.name) for path in (package / "physics").glob("*.py") for node in ast.parse(path.read_text(encoding="utf-8")).body
              if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")}
    text = "\n".join(path.read_text(encoding="utf-8") for path in package.rglob("*.py"))
    unused = sorted(f"{module}.{name}" for module, name in public if len(re.findall(rf"\b{name}\b", text)) < 2)
    assert not unused
