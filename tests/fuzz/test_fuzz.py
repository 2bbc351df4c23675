"""A small seeded run of the fuzz, and inputs that broke something once."""

from __future__ import annotations

import pytest

from tests.fuzz.inputs import NUMBERS, TURNING
from tests.fuzz.run import answered, run


@pytest.mark.parametrize("seed", [11, 12, 13])
def test_strange_inputs_break_no_law(seed: int) -> None:
    """No exception, no hang, nothing unfit to be shown, sound JSON, no number left out of an answer."""
    tally = run(700, seed)
    assert tally.broken == [] and tally.inputs == 700


HARD = (
    "my flash gives f/8 at 10 feet. a 30 ft flash shot, what aperture? arms length",
    "", " ", "\n", "\0", "\ud800", "\u202ewhat aperture", "guide number ۱۱۰ feet, ۷ feet, what aperture", "(" * 3000, "f/" * 2000, "½" * 2000, "what if " * 500,
    "half of " * 500 + "80 feet", "guide number 1e400 feet, 1e-400 feet, what aperture", "9" * 5000,
)


@pytest.mark.parametrize("text", HARD, ids=lambda text: ascii(text[:20]))
def test_a_hard_input_breaks_no_law(text: str) -> None:
    assert answered(text)[1] == []


@pytest.mark.parametrize("number", NUMBERS)
def test_a_strange_number_breaks_no_law(number: str) -> None:
    for text in (f"guide number {number} feet, 7 feet, ISO 200, what aperture", f"guide number 110 feet, {number} feet, what aperture", f"f/8 at {number}, ISO {number}, what power", f"and at {number} stops?"):
        assert answered(text)[1] == []


@pytest.mark.parametrize("letters", ["a", "1", " ", "x ", "1 ", "what ", "7 feet ", "½", "?", "'", TURNING])
def test_a_line_of_a_million_letters_is_cut_and_the_reply_says_so(letters: str) -> None:
    answer, laws = answered(letters * (1_000_000 // len(letters)))
    assert laws == [] and "Only the first 6,000 letters were read." in answer.reply
