"""Fall-off asked in words: published figures, and the laws that every answer must keep."""

from __future__ import annotations

import math
from functools import lru_cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.language.rows import row_length
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def ask(*turns: str) -> Answer:
    """The answer to the last turn of a conversation with nobody's gear."""
    assistant = Assistant(_tables(), Conversation())
    return [assistant.answer(turn) for turn in turns][-1]


def first(*turns: str) -> tuple[str, float]:
    """Quantity and value of the first answer."""
    answer = ask(*turns)
    assert answer.status == "answered", answer.reply
    return answer.answers[0].quantity, float(answer.answers[0].value)


PUBLISHED = (
    # question, quantity, value, tolerance; the source stands beside each
    ("f/8 at 10 feet, what do I get at 40 feet?", "aperture", 2.0, 0.01),  # article "Flash basics", opening paragraphs
    ("I get f/8 at 10 ft. What do I get at 5 ft?", "aperture", 16.0, 0.01),  # the same
    ("how far for one stop less from 5 ft", "distance", 7.0, 0.1),  # flash cards on the inverse square law, question 5
    ("light moves from 11 ft to 8 ft, how many stops brighter?", "stops", 1.0, 0.15),  # US Army SS0510 p. 1-18 b: twice the light (exact 0.92)
)


@pytest.mark.parametrize(("question", "quantity", "value", "tolerance"), PUBLISHED)
def test_published_figure(question: str, quantity: str, value: float, tolerance: float) -> None:
    got, number = first(question)
    assert (got, number) == (quantity, pytest.approx(value, abs=tolerance))


WAYS = (
    # the same thing said in other words has the same answer; the figures follow from the inverse square law
    ("front row 2 m, back row 4 m, how much darker is the back row?", "stops", -2.0),
    ("rows at 2 and 4 metres, difference in stops?", "stops", -2.0),
    ("front row at 2 m and the back at 4, how much darker is the back", "stops", -2.0),
    ("front row 2 m from the flash, three rows a metre apart, how many stops darker is the back row", "stops", -2.0),
    ("Moved it from 2 m to 4 m, how many stops do I open up?", "stops", 2.0),
    ("I bring the light in from 4 m to 2 m, how many stops do I close down?", "stops", -2.0),
    ("how many stops do I lose if I double the distance?", "stops", -2.0),
    ("light 4 ft from the sitter, wall 4 ft behind her, how many stops under is the wall?", "stops", -2.0),
    ("key 4 ft from her and the backdrop 8 ft from the key, how far under does the background go?", "stops", -2.0),
    ("she stands 1 m in front of a grey wall, key 1 m from her, how dark is the wall", "stops", -2.0),
    ("flash at 6 ft, how much further back for two stops less?", "distance", 6.0),
    ("flash at 6 ft, where do I put it for two stops less?", "distance", 12.0),
    ("The light is 6 ft away and two stops too hot. Where do I move it?", "distance", 12.0),
    ("The light is 6 ft away, I want it two stops brighter. what distance?", "distance", 3.0),
    ("rows are 2 m and 4 m from the flash, I want only a stop between them. how far from the front row should it be?", "distance", 2 / (math.sqrt(2) - 1)),
    ("light 3 m from her, how far behind her must the backdrop be for two stops under?", "distance", 3.0),
    ("subject reads f/8 with the light 3 ft away; the wall is 6 ft from the light. what does the wall read?", "aperture", 4.0),
)


@pytest.mark.parametrize(("question", "quantity", "value"), WAYS)
def test_ways_of_saying(question: str, quantity: str, value: float) -> None:
    got, number = first(question)
    assert (got, number) == (quantity, pytest.approx(value, rel=1e-6))


@settings(max_examples=60, deadline=None)
@given(near=st.integers(2, 40), depth=st.integers(1, 30), stops=st.sampled_from((0.5, 1.0, 2.0)))
def test_a_spread_asked_for_is_the_spread_got(near: int, depth: int, stops: float) -> None:
    words = {0.5: "half a stop", 1.0: "one stop", 2.0: "two stops"}[stops]
    _, place = first(f"rows {near} feet and {near + depth} feet from the flash: where must the light be so they differ by only {words}?")
    assert 2 * math.log2((place + depth) / place) == pytest.approx(stops, rel=1e-6)


@settings(max_examples=60, deadline=None)
@given(right=st.integers(2, 60), stops=st.sampled_from((0.5, 1.0)))
def test_both_ends_of_a_range_are_as_far_off_as_was_said(right: int, stops: float) -> None:
    words = "half a stop" if stops == 0.5 else "one stop"
    answer = ask(f"exposure is right at {right} ft. What range of distances stays within {words} either way?")
    near, far = (float(a.value) for a in answer.answers)
    assert [a.of for a in answer.answers] == ["from", "to"]
    assert 2 * math.log2(right / near) == pytest.approx(stops) and 2 * math.log2(far / right) == pytest.approx(stops)


@settings(max_examples=60, deadline=None)
@given(one=st.integers(1, 50), two=st.integers(1, 50))
def test_there_and_back_loses_nothing(one: int, two: int) -> None:
    _, there = first(f"the light moves from {one} ft to {two} ft, exposure change in stops?")
    _, back = first(f"the light moves from {two} ft to {one} ft, exposure change in stops?")
    assert there + back == pytest.approx(0.0, abs=1e-9)


def test_a_power_for_the_even_spread_follows_the_square_of_the_distance() -> None:
    quantity, power = first("rows at 8 ft and 12 ft from the flash, how much darker is the back?",
                            "And what power does it need if I move it back so they differ by one stop? I'm at 1/8 now.")
    place = 4 / (math.sqrt(2) - 1)
    assert (quantity, power) == ("power", pytest.approx((place / 8) ** 2 / 8))


def test_a_follow_up_moves_only_what_it_names() -> None:
    assert first("Light 4 ft from the sitter, wall 4 ft behind her. How many stops under is the wall?", "and if the wall is 12 ft behind?") == ("stops", pytest.approx(-4.0))


def test_rows_with_no_distance_ask_for_it() -> None:
    answer = ask("How many stops do I lose from the front row to the back row?")
    assert (answer.status, answer.missing) == ("needs", ("distance",))


def test_no_key_light_makes_the_wall_behind_brighter() -> None:
    assert ask("key 4 ft from her, how far behind must the backdrop be to go pure white?").status == "out_of_reach"


@pytest.mark.parametrize(("before", "after", "meant"), [
    ("two rows, ", " apart", ("gap", "back")), ("the wall is ", " behind her", ("gap", "backdrop")), ("the light is ", " from him", None),
    ("move the light ", " further back", None), ("the rim light is ", " behind her", None), ("she is ", " from the backdrop", ("gap", "backdrop")),
])
def test_what_a_length_reaches_to(before: str, after: str, meant: tuple[str, str] | None) -> None:
    assert row_length(before, after) == meant


def test_rows_are_counted_from_the_one_the_lens_is_set_for() -> None:
    rows = "three rows at 9, 11 and 13 ft, set for the middle row: how far off are the front and the back, in stops?"
    answers = ask(rows).answers
    assert [(a.of, pytest.approx(a.value)) for a in answers] == [("front row", 2 * math.log2(11 / 9)), ("back row", 2 * math.log2(11 / 13))]


def test_a_guide_number_with_no_unit_is_in_feet_for_the_leeway_too() -> None:
    answer = ask("guide number 80, f/8, ISO 100: how near and how far for half a stop either way?")
    assert [(a.unit, pytest.approx(a.value)) for a in answer.answers] == [("ft", 10 * 2**-0.25), ("ft", 10 * 2**0.25)]


def test_what_a_light_still_lacks_is_counted_from_what_it_reads_now() -> None:
    assert first("the lens is on f/8, the hair light should read one stop over that and at the moment it reads f/5.6: how many stops do I raise it?") == ("stops", pytest.approx(2.0))
