"""Answers that look like those of a question misread are not given.

What is checked is a promise of the program (better no answer than a wrong one), and no figure of the trade.
"""

from __future__ import annotations

from functools import lru_cache

import pytest

from assistant.answer import Answer, Assumed, Quantity
from assistant.assistant import Assistant
from assistant.language.reading import read
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation
from assistant.query import Query
from assistant.records import replace
from assistant.solving.asking import asks_something
from assistant.solving.doubtful import doubtful
from assistant.solving.solution import Solution


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def heard(text: str) -> Query:
    """What is read of a question."""
    return read(text, _tables())


def say(*turns: str) -> Answer:
    """The answer to the last turn of a conversation."""
    assistant = Assistant(_tables(), Conversation())
    return [assistant.answer(turn) for turn in turns][-1]


def found(quantity: str, value: float, unit: str = "", **more: object) -> Solution:
    """An answer of one figure."""
    return Solution(answers=(Quantity(quantity, value, unit),), topic="flash", **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(("question", "solution"), [
    ("how many stops brighter is the sail than the cox?", found("stops", -2.0, "stops")),
    ("how many stops brighter is the sail than the cox?", found("stops", 0.0, "stops")),
    ("how many pops at a quarter equal one at full?", found("count", 1.0, "pops")),
    ("what is their guide number together?", found("guide_number", 0.0, "ft")),
    ("and at 200?", found("aperture", 0.4, "f-number")),
    ("guide number 33 metres is about 108 feet?", found("aperture", 1.0, "f-number")),
    ("f/16 bare, the softbox takes a stop and then a third got wasted someplace. what aperture", found("aperture", 11.31, "f-number")),
])
def test_what_a_right_answer_never_looks_like(question: str, solution: Solution) -> None:
    query = heard(question)
    assert doubtful(query, query, solution)


@pytest.mark.parametrize(("question", "solution"), [
    ("how many stops brighter is the sail than the cox?", found("stops", 2.0, "stops")),
    ("how many stops over or under is it?", found("stops", -2.0, "stops")),
    ("how many more pops?", found("count", 1.0, "pops")),
    ("guide number 20 feet, 40 feet away, aperture?", found("aperture", 0.5, "f-number")),
])
def test_what_is_odd_and_right_is_said(question: str, solution: Solution) -> None:
    query = heard(question)
    assert not doubtful(query, query, replace(solution, used=query.facts))


def test_what_such_an_answer_always_uses_is_not_left_out() -> None:
    query = heard("on ISO 100 it was f/11 at half power. f/11 again on ISO 400 pushed to 1600: what power?")
    rated = [f for f in query.facts if f.quantity == "rated"]
    assert rated and doubtful(query, query, replace(found("power", 0.125, "of full"), used=tuple(f for f in query.facts if f not in rated)))
    at_sync = heard("GN 40 m at 5 m, 1/125, aperture?")
    assert not doubtful(at_sync, at_sync, replace(found("aperture", 8.0, "f-number"), used=tuple(f for f in at_sync.facts if f.quantity != "shutter")))


def test_a_yes_or_a_no_is_not_answered_with_a_figure() -> None:
    query = heard("35 mm lens, f/8, focused at 3 m, does the depth of field reach to infinity?")
    assert doubtful(query, query, replace(found("depth_of_field", 5.26, "m"), used=query.facts))


def test_a_loss_that_is_told_is_not_taken_once_more() -> None:
    query = heard("the softbox loses a stop, how many stops do I open up?")
    twice = found("stops", 3.0, "stops", assumed=(Assumed("loss", 2.0, "stops", "a typical loss for a softbox; common practice, test your own"),))
    assert doubtful(query, query, twice)


@pytest.mark.parametrize("text", ["what do I set?", "how far back?", "which one", "and now?", "the meter says f/11 so i set", "at ISO 400 it becomes...", "softbox loses two stops, max distance", "the cox asks me for the aperture, gn 110 ft"])
def test_a_question_is_never_only_noted(text: str) -> None:
    assert asks_something(heard(text))
    assert say(text).status != "noted"


@pytest.mark.parametrize("text", ["my flash is guide number 110 feet", "I'm on 400 film, ok?", "the big head is 60 metres, right?"])
def test_what_is_told_may_be_noted(text: str) -> None:
    assert not asks_something(heard(text))


def test_a_half_sentence_that_changes_nothing_gets_no_answer() -> None:
    """The exposure of a pair is told; a shutter time is of no use to it, and to answer once more would be to pretend."""
    assert say("how many stops brighter is f/4 than f/8?", "and at 1/60?").status == "not_understood"


def test_a_power_that_no_answer_went_by_bears_on_it() -> None:
    """The depth has no use for the power of a flash, so something else was asked."""
    assert say("50 mm lens on 35 mm film, f/8, focused at 10 ft, depth of field? quarter power").status == "not_understood"
    assert say("guide number 80 feet, 10 feet, a shutter of 2 seconds, what aperture?").status == "answered"


def test_a_small_figure_left_beside_losses_stops_the_answer() -> None:
    """A second loss that found no owner is no figure to leave out; how many things there are is."""
    assert say("cross polarised, 1.5 stops on the lamps and 1.3 on the lens, meter f/16 before. aperture?").status == "not_understood"
    assert say("f/16 bare and two nds on the lens, a 0.3 and a 0.6. what aperture").status == "answered"


@pytest.mark.parametrize("question", [
    "guide number 90, 9 ft. The batteries manage only 60 pops. aperture?",
    "I pushed my ISO 200 one stop last week; this week I shoot it at box speed. what do I meter at?",
    "GN 90 at 9 ft. I took off the umbrella that cost two stops. aperture?",
    "GN 90 at full power, which is what I use; my colleague uses half. 9 ft. aperture?",
])
def test_what_was_told_of_another_case_is_not_counted(question: str) -> None:
    """What a charge holds, the last roll, what has been taken off, another one's setting."""
    assert say(question).status == "not_understood"


@pytest.mark.parametrize(("question", "value"), [
    ("guide number 90, 9 ft, two pops. aperture?", 14.142),
    ("ISO 200 at box speed last week, this roll pushed one stop. EI?", 400.0),
    ("GN 90 at 9 ft. umbrella on, it costs two stops. aperture?", 5.0),
    ("if I double the distance how many stops do I lose?", -2.0),
])
def test_what_is_told_of_the_case_is_counted(question: str, value: float) -> None:
    """The near misses: guide number over distance, the root of the pops, a stop for each doubling of the speed, inverse square."""
    assert say(question).answers[0].value == pytest.approx(value, rel=0.01)
