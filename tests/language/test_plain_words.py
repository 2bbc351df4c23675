"""Small talk around a question is left out; nothing that tells a figure, a unit, a light or a "not" is."""

from __future__ import annotations

import pytest

from assistant.assistant import Assistant
from assistant.language.plain_words import plainly

LEXICON = Assistant.create().tables.lexicon


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("Ok so what aperture at 7 feet?", "what aperture at 7 feet?"),
        ("Hey, quick question: what aperture at 7 feet? Thanks!", "what aperture at 7 feet?"),
        ("Can you tell me how far the strobe must stand?", "how far the flash must stand?"),
        ("what number of stops dont I have", "how many stops don't I have"),
        ("WHAT APERTURE AT 7 FEET", "what aperture at 7 feet"),
        ("What aperture at 7 feet? I can never remember.", "What aperture at 7 feet?"),
        ("What aperture? The softbox is on.", "The softbox is on. What aperture?"),
        ("What aperture? I am at 1/4 power.", "I am at 1/4 power. What aperture?"),
    ],
)
def test_small_talk_is_left_out(said: str, read: str) -> None:
    assert plainly(said, LEXICON) == read


@pytest.mark.parametrize(
    "said",
    [
        "Is it ok to use flash near a baby?",
        "ok to use it in the rain?",
        "right light at 5 feet, left at 8, f/8?",
        "What aperture? Not in feet, in metres.",
        "What is a strobe?",
        "ok f/8",
        "What aperture at 7 feet? No flash.",
    ],
)
def test_what_tells_something_stays(said: str) -> None:
    assert plainly(said, LEXICON) == said
