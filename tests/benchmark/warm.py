"""A warm question from hearing to reply, over the phrase corpus, against Lark's own parse of the same tokens."""

from __future__ import annotations

import gc
import math
import sys
import time
from collections.abc import Callable
from functools import cache, partial
from pathlib import Path

from lark import Lark
from lark import Token as LarkToken
from lark.exceptions import UnexpectedToken
from lark.parsers.lalr_interactive_parser import InteractiveParser

from assistant.assistant import Assistant
from assistant.language.building import make_lark
from assistant.language.hearing import hear
from assistant.language.tables import grammar_folder
from tests.benchmark.figure import Figure, hundredth, median, milliseconds

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "language"))
import corpus  # noqa: E402


@cache
def texts() -> tuple[str, ...]:
    """Every phrase of the corpus and every turn of its conversations."""
    return _said(corpus.KINDS)


@cache
def questions() -> tuple[str, ...]:
    """Those that are whole questions and turns, with an answer expected."""
    return _said(("answers", "talks"))


def _said(kinds: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(text for case in corpus.cases() if case.kind in kinds for text in ([say for say, _ in case.turns] or [case.phrase])))


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


def in_rounds(repetitions: int, acts: dict[str, Callable[[], object]]) -> dict[str, float]:
    """Text -> seconds of the fastest of some rounds: what is kept of one question is no help to its repetition."""
    found = dict.fromkeys(acts, math.inf)
    for _ in range(repetitions):
        for text, act in acts.items():
            found[text] = min(found[text], fastest(1, act))
    return found


@cache
def question_times(repetitions: int) -> dict[str, float]:
    """Text -> seconds from hearing to reply."""
    assistant = Assistant.create()
    for text in texts():
        alone(assistant, text)()
    gc.collect()
    return in_rounds(repetitions, {text: alone(assistant, text) for text in texts()})


def lark_times(repetitions: int) -> dict[str, float]:
    """Text -> seconds of Lark's own parser over the tokens that hearing makes of it."""
    assistant, lark = Assistant.create(), make_lark(sorted(grammar_folder().glob("*.lark")))
    tokens = {text: [LarkToken(t.type, str(t.value)) for t in hear(text, assistant.tables.lexicon).tokens] for text in texts()}
    gc.collect()
    return in_rounds(repetitions, {text: partial(longest_phrases, lark, said) for text, said in tokens.items()})


def longest_phrases(lark: Lark, tokens: list[LarkToken]) -> list[int]:
    """The longest phrase at each place, in tokens, by Lark's LALR parser: the job that our parser does with the same table."""
    lengths, place = [], 0
    while place < len(tokens):
        length = _longest(lark, tokens[place:])
        lengths.append(length)
        place += length or 1
    return lengths


def _longest(lark: Lark, tokens: list[LarkToken]) -> int:
    parser, best = lark.parse_interactive(), 0
    for count, token in enumerate(tokens, 1):
        try:
            parser.feed_token(token)
        except UnexpectedToken:
            break
        if "$END" in parser.choices() and _ends(parser):
            best = count
    return best


def _ends(parser: InteractiveParser) -> bool:
    try:
        parser.copy(deepcopy_values=False).feed_eof()
    except UnexpectedToken:
        return False
    return True


def against_lark(*, quick: bool) -> list[Figure]:
    """The median question and the median phrase, each against the median of Lark's parse of the same tokens."""
    repetitions = 3 if quick else 9
    ours, lark = question_times(repetitions), lark_times(repetitions)
    return [_figure("a warm question, hearing to reply, median of the corpus's questions", questions(), ours, lark),
            _figure("the same, median of all phrases of the corpus, fragments of a few words too", texts(), ours, lark)]


def _figure(what: str, of: tuple[str, ...], ours: dict[str, float], lark: dict[str, float]) -> Figure:
    one, other = median(ours[t] for t in of), median(lark[t] for t in of)
    return Figure(what, f"{milliseconds(one)} ({len(of)})", f"Lark's own LALR parse of the same tokens {milliseconds(other)}", one / other, 6.0)


def spread(*, quick: bool) -> list[Figure]:
    """The median and the slowest hundredth, in milliseconds."""
    times = list(question_times(3 if quick else 9).values())
    half, most = median(times) * 1000, hundredth(times, 99) * 1000
    of = f"{len(times)} phrases"
    return [Figure("a warm question, median", of, "the clock", half, 1.0, " ms"), Figure("a warm question, 99th percentile", of, "the clock", most, 4.0, " ms")]
