"""Two things asked in one sentence: both are answered, in the order asked, or it is said which one was not understood."""

from __future__ import annotations

import pytest

from assistant.assistant import Assistant
from assistant.two_asked import halves


@pytest.mark.parametrize(("text", "expected"), [
    # t0.5 = t0.1 / 3.32 (contract); 3 m/s for 1/300 s are 10 mm
    ("The t0.1 is 1/300 s. What is the t0.5, and how far does a fist at 3 m/s move within the t0.1 time?", [("duration", 1 / 996), ("distance", 10.0)]),
    # recycling goes with the energy: 8 s at full are 2 s at a quarter, 30 of which fit into a minute
    ("It recycles in 8 seconds from full power. How long does it take at 1/4, and how many pops a minute is that?", [("duration", 2.0), ("count", 30.0)]),
    # 25 percent are two stops, and 11.31 / 2 is 5.66
    ("A frost passes 25 percent of the light. How many stops does it take, and what aperture do I use in place of f/11?", [("stops", -2.0), ("aperture", 5.5)]),
])
def test_both_are_answered_in_the_order_asked(text: str, expected: list[tuple[str, float]]) -> None:
    found = Assistant.create().answer(text)
    assert found.status == "answered"
    first, second = ([q for q in found.answers if q.quantity == name][0] for name, _ in expected)
    assert found.answers[0] == first
    assert [float(first.value), float(second.value)] == pytest.approx([value for _, value in expected], rel=0.01)


def test_the_one_that_is_not_understood_is_named() -> None:
    found = Assistant.create().answer("A flash fires 6 times a second for 2 seconds. How many images do I get, and how many stops would the gaffer grumble?")
    assert found.status == "not_understood" and "how many stops would the gaffer grumble" in found.reply and "12" in found.reply


def test_a_half_asked_by_the_way_leaves_the_conversation_as_it_was() -> None:
    talk = Assistant.create()
    talk.answer("It recycles in 8 seconds from full power. How long does it take at 1/4, and how many pops a minute is that?")
    assert talk.answer("Guide number 80 feet, 10 feet, what aperture?").answers[0].value == pytest.approx(8.0)


@pytest.mark.parametrize("text", ["What aperture for guide number 80 feet at 10 feet?", "I know what I want and how I want it.", "The key and what is behind it: how far apart?"])
def test_one_question_has_no_halves(text: str) -> None:
    assert halves(text) is None
