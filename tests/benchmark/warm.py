"""A warm question from hearing to reply, over the phrase corpus, against Lark's own parse of the same tokens."""

from __future__ import annotations

import gc
import sys
import time
from collections.abc import Callable
from functools import cache
from pathlib import Path

from lark import Lark
from lark import Token as LarkToken

from assistant.assistant import Assistant
from assistant.language.building import make_lark
from assistant.language.hearing import hear
from assistant.language.parsing import Node, Part, parse
from assistant.language.tables import grammar_folder
from tests.benchmark.figure import Figure, hundredth, median, milliseconds

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "language"))
import corpus  # noqa: E402

Run = list[LarkToken]


@cache
def texts() -> tuple[str, ...]:
    """Every phrase of the corpus and every turn of its conversations."""
    return tuple(dict.fromkeys(text for case in corpus.cases() for text in ([say for say, _ in case.turns] or [case.phrase])))


def fastest(times: int, act: Callable[[], object]) -> float:
    """Seconds of the fastest of some runs: what the work itself takes, whoever else is busy on the machine."""
    found = []
    for _ in range(times):
        begun = time.perf_counter()
        act()
        found.append(time.perf_counter() - begun)
    return min(found)


def alone(assistant: Assistant, text: str) -> Callable[[], object]:
    """One question by itself."""

    def act() -> object:
        assistant.new_conversation(keep_kit=False)
        return assistant.answer(text)

    return act


@cache
def question_times(repetitions: int) -> dict[str, float]:
    """Text -> seconds from hearing to reply."""
    assistant = Assistant.create()
    for text in texts():
        alone(assistant, text)()
    gc.collect()
    return {text: fastest(repetitions, alone(assistant, text)) for text in texts()}


def runs(text: str, assistant: Assistant) -> list[Run]:
    """The tokens of each phrase that stands in a text, as Lark's own."""
    return [[LarkToken(t.type, str(t.value)) for t in _tokens(part)] for part in parse(hear(text, assistant.tables.lexicon).tokens, assistant.tables) if isinstance(part, Node)]


def _tokens(part: Part) -> list[Part]:
    return [token for child in part.children for token in _tokens(child)] if isinstance(part, Node) else [part]


def lark_times(repetitions: int) -> dict[str, float]:
    """Text -> seconds that Lark needs for its phrases; texts without a phrase are left out."""
    assistant, lark = Assistant.create(), make_lark(sorted(grammar_folder().glob("*.lark")))
    found = {text: runs(text, assistant) for text in texts()}
    return {text: fastest(repetitions, lambda: _parsed(lark, phrases)) for text, phrases in found.items() if phrases}


def _parsed(lark: Lark, phrases: list[Run]) -> None:
    for phrase in phrases:
        lark.parse(phrase)  # type: ignore[arg-type]


def against_lark(*, quick: bool) -> list[Figure]:
    """The median question, against the median of Lark's parse of its phrases."""
    repetitions = 3 if quick else 9
    whole, parsed = question_times(repetitions), lark_times(repetitions)
    question, lark = median(whole[t] for t in parsed), median(parsed.values())
    return [Figure("a warm question, hearing to reply, median of the corpus", milliseconds(question), f"Lark's own LALR parse of the same tokens {milliseconds(lark)}", question / lark, 6.0)]


def spread(*, quick: bool) -> list[Figure]:
    """The median and the slowest hundredth, in milliseconds."""
    times = list(question_times(3 if quick else 9).values())
    half, most = median(times) * 1000, hundredth(times, 99) * 1000
    of = f"{len(times)} phrases"
    return [Figure("a warm question, median", of, "the clock", half, 1.0, " ms"), Figure("a warm question, 99th percentile", of, "the clock", most, 4.0, " ms")]
