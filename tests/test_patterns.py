"""The bits of a text's words pass by no pattern whose letters stand in the text."""

from __future__ import annotations

import importlib
import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant import patterns
from assistant.pattern_stems import STEMS
from assistant.patterns import LONGEST_PIECE, Pattern, sets_of

STEM_WORDS = sorted({stem for letters in STEMS.values() for stems in sets_of(letters) for stem in stems})
ALL = tuple(Pattern(source) for source in sorted(STEMS))


def held(text: str) -> list[str]:
    """The patterns that a text may match, by their letters alone."""
    return [p.pattern for p in ALL if all(any(stem in text.lower() for stem in stems) for stems in sets_of(STEMS[p.pattern]))]


def test_no_piece_of_a_stem_is_longer_than_what_is_looked_for() -> None:
    assert max(len(max(stem.split(), key=len)) for stem in STEM_WORDS) <= LONGEST_PIECE


@given(st.lists(st.sampled_from(STEM_WORDS) | st.text(alphabet="abefst 18/'-.,", max_size=6), max_size=12), st.sampled_from(["", " ", "x"]))
@settings(max_examples=60, deadline=None)
def test_the_bits_let_through_what_the_letters_let_through(parts: list[str], between: str) -> None:
    for _ in range(patterns.FEW_TEXTS + 2):  # bits are given, then gone by
        patterns.at_hand("")
        text = patterns.at_hand(between.join(parts))
        assert [p.pattern for p in ALL if p.may_match(text)] == held(text)
    assert [p.pattern for p in ALL if p.may_match(text)] == held(text)
    assert [p.pattern for p in ALL if p.may_match(text.lower())] == held(text)


@pytest.mark.parametrize("text", ["two stops under", "TWO STOPS UNDER"])
def test_a_pattern_made_while_a_text_is_at_hand_is_not_passed_by(text: str) -> None:
    patterns.at_hand(text)
    late = Pattern(r"(?P<n>two) stops? (?:under|over)\b", 2)
    assert late.search(text) is not None


PACKAGE = Path(patterns.__file__).parent
ASKED = [(path, name) for path in sorted(PACKAGE.rglob("*.py")) for name in sorted(set(re.findall(r"\b(_?[A-Z][A-Z_]+)\.may_match\(", path.read_text(encoding="utf-8"))))]


@pytest.mark.parametrize(("path", "name"), ASKED, ids=lambda part: getattr(part, "stem", part))
def test_a_pattern_asked_by_its_letters_alone_has_some(path: Path, name: str) -> None:
    """Else the early exit that hangs on it is never taken, and every question is slower."""
    module = importlib.import_module("assistant." + ".".join(path.relative_to(PACKAGE).with_suffix("").parts))
    assert STEMS.get(getattr(module, name).pattern)
