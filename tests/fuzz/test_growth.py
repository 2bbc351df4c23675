"""What made the time grow faster than the text, and what keeps it from doing so again."""

from __future__ import annotations

import re
import sys
import time
from pathlib import Path

import pytest

from assistant.assistant import Assistant
from assistant.patterns import LONG, Pattern, bounded

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "faces"))
from pattern_stems import patterns as every_pattern  # noqa: E402

HEAPS = ("a stop under ", "and then ", "half of ", "½", "no, sorry, ", "1/1/", "iso 0 ", "shutter 60 ", "1.2.3 ", "5. ", "1e ", "wins ", "cover ", "frames ", "dof ", "depth ", "third ", "multiplied ", "frames step ", "twice dark ", "er. ", "where half ")
TAILS = ("", "the slipway metered 1/8 at f/4. I want it one stop under at f/4. what shutter?", "the background is two stops too dark at 1/60, what shutter", "true or not, an ND filter takes light from the flash as well")
LIMIT_S = 0.040
"""Seconds of the processor for each 1,000 letters begun: on a quiet machine none of these takes more than half of it."""


def pace(text: str) -> float:
    """The processor's time for each 1,000 letters begun, the best of four."""
    found = []
    for _ in range(4):
        assistant = Assistant.create()
        assistant.answer("hello")
        begun = time.process_time()
        assistant.answer(text)
        found.append((time.process_time() - begun) / -(-len(text) // 1000))
        if found[-1] < LIMIT_S:
            break
    return min(found)


@pytest.mark.parametrize("tail", TAILS, ids=lambda tail: tail[:12])
@pytest.mark.parametrize("part", HEAPS, ids=ascii)
def test_a_heap_of_one_phrase_takes_no_longer_than_its_letters(part: str, tail: str) -> None:
    assert pace((part * 300)[:5_900] + tail) < LIMIT_S


@pytest.mark.parametrize("part", ["f/8 at 10 feet and ", "the key one stop over the fill ", "1/60 at f/8 "])
def test_a_long_line_of_figures_takes_no_longer_than_its_letters(part: str) -> None:
    assert pace((part * 400)[:6_000]) < LIMIT_S


def test_no_pattern_looks_through_all_of_a_long_text() -> None:
    """Each of them repeats nothing without end where the text is long, and is a pattern still."""
    for source, flags in every_pattern().items():
        if not flags & re.VERBOSE:
            found = bounded(source, flags)
            assert re.compile(found, flags) and not re.search(r"[*+]", re.sub(r"\\.|\[\^?\]?(?:[^\\\]]|\\.)*\]", "", found)), source


@pytest.mark.parametrize(("source", "part"), [
    (r"\b(?:frames?|shots)\b.*\b(?:over|under|apart|steps?)\b.*\bshutter\b", "frames step "),
    (r"(?:^|[.,;]\s+|\band\s+)(?:(?:so|then|now|and|the) )*(?:lens|ring)\s*$", "and then "),
    (r"\b(?:shutter|iso)(?: to| at)?\s*$", "iso 0 "),
], ids=lambda part: part[:12])
def test_a_search_of_a_long_text_is_bounded(source: str, part: str) -> None:
    """Without bounds the first takes half a minute here."""
    text, begun = (part * 2_000)[:6_000], time.process_time()
    for place in range(0, len(text), 12):
        Pattern(source).search(text[:place] if source.endswith("$") else text)
        if not source.endswith("$"):
            break
    assert time.process_time() - begun < 1


def test_what_stands_at_the_end_of_a_long_text_is_found() -> None:
    """And what stands in its midst, as far apart as anybody says it."""
    at_end, apart = Pattern(r"\b(?:set|turn) (?:it )?to\s*$|\blens\s*$"), Pattern(r"\bbracket\b[^?]*\bstops\b")
    assert at_end.search("word " * LONG + "turn it to ") and not at_end.search("turn it to " + "word " * LONG)
    assert apart.search("word " * LONG + "bracket these with the shutter, please, in whole stops" + " word" * LONG)
    for _ in range(2):  # found and kept, of two texts in turn
        assert apart.search("word " * LONG) is None and apart.search("bracket in stops " * LONG) is not None
