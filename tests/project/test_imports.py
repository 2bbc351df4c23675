"""Imports run downward, without circles, and a warm question loads nothing it does not need."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

import assistant

ROOT = Path(assistant.__file__).resolve().parent

FLOORS: tuple[tuple[str, ...], ...] = (
    # top to bottom; a floor may import any floor below it, and its own
    ("__main__",),
    ("faces",),
    ("assistant",),
    ("answering",),
    ("turns", "two_asked"),
    ("against_turns", "anew_turns", "claim_turns", "summed_up_turns"),
    ("replying",),
    ("kit_turns", "told_turns", "log_turns", "which_turns", "way_turns", "safety_turns", "teach_turns", "why_turns"),
    ("turn",),
    ("memory",),
    ("teaching",),
    ("language",),
    ("solving",),
    ("safety",),
    ("physics",),
    ("query", "answer"),
    ("scales", "units"),
    ("phrasings",),
    ("mark_rows", "patterns"),
    ("bounds", "parts", "pattern_stems", "places", "records"),
)
RANK = {name: -floor for floor, names in enumerate(FLOORS) for name in names}

EXCUSED: dict[tuple[str, str], str] = {
    ("assistant.solving.ranges", "assistant.language.speaking"): "what comes between two settings is named in the words of the reply",
    ("assistant.solving.limits", "assistant.language.speaking"): "a way out of reach is named in the words of the reply",
}


def _module(path: Path) -> str:
    return ".".join(path.relative_to(ROOT.parent).with_suffix("").parts).removesuffix(".__init__")


def _imported(tree: ast.AST) -> Iterator[str]:
    """Every module of ours that a file imports, type-only and in-function imports included."""
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0, "relative imports hide the direction"
            for name in node.names:
                whole = f"{node.module}.{name.name}"
                is_module = (ROOT.parent / (whole.replace(".", "/") + ".py")).exists()
                yield whole if is_module else str(node.module)
        elif isinstance(node, ast.Import):
            yield from (name.name for name in node.names)


@cache
def edges() -> dict[str, tuple[str, ...]]:
    """Module -> modules of ours it imports."""
    return {
        _module(path): tuple(sorted({m for m in _imported(ast.parse(path.read_text(encoding="utf-8"))) if m.startswith("assistant.")}))
        for path in sorted(ROOT.rglob("*.py"))
    }


def _floor(module: str) -> str:
    return module.split(".")[1]


def test_every_module_stands_on_a_floor() -> None:
    """A new module at the top of the package is given its floor here."""
    assert {_floor(m) for m in edges() if m != "assistant"} == set(RANK)


@pytest.mark.parametrize("module", [m for m in edges() if m != "assistant"])
def test_imports_run_downward(module: str) -> None:
    """The offending pair is named."""
    wrong = [(module, other) for other in edges()[module] if RANK.get(_floor(other), 0) > RANK[_floor(module)] and (module, other) not in EXCUSED]
    assert not wrong


def test_every_excuse_is_still_needed() -> None:
    """An excuse that is no longer needed goes."""
    needed = {(m, o) for m, others in edges().items() for o in others if m != "assistant" and RANK[_floor(o)] > RANK[_floor(m)]}
    assert set(EXCUSED) == needed


def test_there_are_no_circles() -> None:
    """Walking down from any module never comes back to it."""
    graph = edges()
    done: set[str] = set()

    def walk(module: str, above: tuple[str, ...]) -> None:
        assert module not in above, " -> ".join((*above[above.index(module) :], module))
        if module in done:
            return
        for other in graph.get(module, ()):
            walk(other, (*above, module))
        done.add(module)

    for module in graph:
        walk(module, ())


WARM = """
import sys
from assistant.faces.cli import main
status = main({arguments})
print(sorted(m for m in ("lark", "pint", "prompt_toolkit", "sqlite3", "hypothesis") if m in sys.modules), status, file=sys.stderr)
"""


@pytest.mark.parametrize("options", [[], ["--json"], ["--unsaved"]], ids=str)
def test_a_warm_question_loads_no_library(options: list[str], tmp_path: Path) -> None:
    """The tables are read, nothing is built, the kit is not a database until something is kept."""
    code = WARM.format(arguments=[*options, "guide number 110 feet, 7 feet, ISO 200, what aperture"])
    for _ in range(2):
        run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"STOPWISE_HOME": str(tmp_path), "PYTHONPATH": str(ROOT.parent), "PATH": ""})
    assert run.stderr.strip().endswith("[] 0"), run.stderr


def test_the_core_is_pure() -> None:
    """Below the memory nobody reads a clock, a file, the environment or chance, and nobody prints."""
    forbidden = {"time", "datetime", "random", "os", "pathlib", "sqlite3", "subprocess", "socket", "locale"}
    for path in (*ROOT.glob("solving/*.py"), *ROOT.glob("physics/*.py"), *ROOT.glob("safety/*.py"), ROOT / "scales.py", ROOT / "units.py", ROOT / "query.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        named = {n.split(".")[0] for n in _imported(tree)}
        assert not named & forbidden, (path.name, named & forbidden)
        called = {node.func.id for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)}
        assert not called & {"print", "open", "input", "eval", "exec"}, (path.name, called)


@pytest.mark.parametrize("library, folder", [("lark", "language"), ("prompt_toolkit", "faces"), ("sqlite3", "memory")])
def test_each_library_has_one_home(library: str, folder: str) -> None:
    """A library is imported in one folder only."""
    homes = {path.relative_to(ROOT).parts[0] for path in ROOT.rglob("*.py")
             if any(name.split(".")[0] == library for name in _imported(ast.parse(path.read_text(encoding="utf-8"))))}
    assert homes <= {folder}
