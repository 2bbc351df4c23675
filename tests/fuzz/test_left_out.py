"""Figures that were left out of an answer in silence once."""

from __future__ import annotations

import pytest

from assistant.assistant import Assistant
from tests.fuzz.laws import broken_laws


@pytest.mark.parametrize(("said", "figure"), [
    ("18° make it two. One roll of 12, three frames for each view. How many views do I get?", "18"),
    ("how many stops darker when the light goes from 3 m to 6 m? 1/0 power, make it 16", "1/0"),
])
def test_a_figure_put_right_to_one_without_a_use_is_told(said: str, figure: str) -> None:
    answer = Assistant.create().answer(said)
    assert answer.status != "answered" or figure in answer.reply


def test_a_figure_put_right_to_one_that_is_used_is_gone() -> None:
    reply = Assistant.create().answer("guide number 120 feet, 9 feet, make it 10 feet, what aperture").reply
    assert reply.startswith("Set f/11") and "9" not in reply


def test_the_sum_asked_with_a_question_of_its_own_is_not_that_of_the_answer_before() -> None:
    assistant = Assistant.create()
    assert assistant.answer("the half-peak time is 1/1200 s. what's the t0.1?").answers
    answer = assistant.answer("the meter set for ISO 50 shows EV 11. what's the EV at ISO 100? and show me the sum")
    assert "t0.5" not in answer.reply


@pytest.mark.parametrize("said", ["key f/11, with the flash alone f/8, what's the windo 100% w on its own?", "a 0.6 grey filter and a factoer of 8, how many stops are lost in total?"])
def test_the_law_goes_by_the_text_as_it_was_read(said: str) -> None:
    """A mistyped word put right moves what stands after it."""
    assistant = Assistant.create()
    assert broken_laws(assistant, said, assistant.answer(said)) == []


def test_a_bare_number_beside_what_was_supplied_is_told() -> None:
    """What is supplied to a question before is read with it, so its figures stand elsewhere; a number that stays one is not thereby used."""
    assistant = Assistant.create()
    assert assistant.answer("what's the EV?").status == "needs"
    answer = assistant.answer("α7β2γ1")
    assert answer.status != "answered" or answer.unplaced == ("1",) and "“1”" in answer.reply
