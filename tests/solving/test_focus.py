"""Sharpness asked in words: limits, depth, hyperfocal, the stop for two limits, close up, angles.

Published figures have their source beside them; where none is named the figure follows from
the thin-lens laws alone, so the law is what is checked.
"""

from __future__ import annotations

import math
from functools import lru_cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation
from assistant.units import to_metres


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def ask(*turns: str) -> Answer:
    """The answer to the last turn of a conversation with nobody's gear."""
    assistant = Assistant(_tables(), Conversation())
    return [assistant.answer(turn) for turn in turns][-1]


def found(quantity: str, *turns: str) -> float:
    """The value of one quantity of the answer, lengths in metres."""
    answer = ask(*turns)
    assert answer.status == "answered", answer.reply
    one = next(a for a in answer.answers if a.quantity == quantity)
    value = float(one.value) if one.value != "infinity" else math.inf
    return to_metres(value, one.unit) if one.unit in ("m", "ft", "cm", "in", "mm") and math.isfinite(value) else value


# --- published ----------------------------------------------------------------------------------

def test_the_hyperfocal_distance_of_an_encyclopaedia() -> None:
    """Hyperfocal distance, example, Wikipedia: 50 mm at f/8, 0.03 mm circle, 10 467 mm; set at infinity, near limit 10 417 mm."""
    assert found("hyperfocal", "hyperfocal distance of a 50 mm lens at f/8 on 35mm film?") == pytest.approx(10.467, abs=0.001)
    assert found("near_limit", "50 mm lens at f/8 focused at infinity on 35mm film, what's the near limit?") == pytest.approx(10.417, abs=0.001)


def test_the_navy_lens() -> None:
    """Photography (Basic), NAVEDTRA 14209, ch. 1: a 6.1 in (155 mm) lens at f/2.8, circle 0.002 in: 554 ft; focused at 10 ft sharp from 9.8 to 10.2 ft."""
    lens = "154.94 mm lens at f/2.8, circle of confusion 0.0508 mm"
    assert found("hyperfocal", f"{lens}, hyperfocal in feet?") / 0.3048 == pytest.approx(554, abs=1)
    assert found("near_limit", f"{lens}, focused at 10 feet. Near and far limits?") / 0.3048 == pytest.approx(9.8, abs=0.05)
    assert found("far_limit", f"{lens}, focused at 10 feet. Near and far limits?") / 0.3048 == pytest.approx(10.2, abs=0.05)
    assert found("distance", "where do I focus so that 9.8 ft and 10.2 ft are both sharp?") / 0.3048 == pytest.approx(10, abs=0.01)


@pytest.mark.parametrize(("question", "quantity", "expected", "within"), [
    ("300 mm lens, bellows drawn out to 450 mm. What exposure factor?", "factor", 2.25, 0.001),  # US Army subcourse SS0512
    ("half life size, what exposure factor?", "factor", 2.25, 0.001),  # Bellows worked examples, web article
    ("100 mm lens at life size: how many stops of bellows?", "stops", 2.0, 0.001),  # Bellows factor with a magnifier lens, web article
    ("150 mm lens, bellows racked out to 320 mm. What magnification?", "magnification", 1.133, 0.001),  # Bellows worked examples, web article
    ("I'm at f/8 and half life size. What's the effective aperture?", "aperture", 12.0, 0.001),  # Bellows worked examples, web article
])
def test_published_close_up_figures(question: str, quantity: str, expected: float, within: float) -> None:
    assert found(quantity, question) == pytest.approx(expected, abs=within)


# --- laws ------------------------------------------------------------------------------------------

LENSES, STOPS, FOCUS = st.sampled_from([24, 35, 50, 85, 135]), st.sampled_from([2.8, 4, 5.6, 8, 11, 16]), st.sampled_from([1.5, 2, 3, 4, 6, 10])


@settings(max_examples=25, deadline=None)
@given(LENSES, STOPS, FOCUS)
def test_the_focus_lies_between_its_limits_and_they_close_the_depth(lens: int, stop: float, focus: float) -> None:
    scene = f"{lens} mm lens at f/{stop:g} focused at {focus:g} m on 35mm film"
    near, far, depth = (found(q, f"{scene}: {words}?") for q, words in (("near_limit", "near limit"), ("far_limit", "far limit"), ("depth_of_field", "depth of field")))
    assert near < focus < far
    assert depth == pytest.approx(far - near) or math.isinf(far) and math.isinf(depth)


@settings(max_examples=25, deadline=None)
@given(LENSES, STOPS)
def test_focused_at_the_hyperfocal_distance_half_of_it_is_sharp(lens: int, stop: float) -> None:
    hyper = found("hyperfocal", f"hyperfocal of a {lens} mm lens at f/{stop:g}?")
    assert found("near_limit", f"near limit at the hyperfocal, {lens} mm lens f/{stop:g}?") == pytest.approx(hyper / 2)
    assert found("aperture", f"{lens} mm lens focused at {hyper:.6f} m, widest f-number that keeps infinity sharp?") == pytest.approx(stop, rel=1e-3)


@settings(max_examples=25, deadline=None)
@given(LENSES, STOPS, FOCUS)
def test_the_stop_found_for_a_near_limit_gives_that_limit(lens: int, stop: float, focus: float) -> None:
    near = found("near_limit", f"{lens} mm lens at f/{stop:g} focused at {focus:g} m: near limit?")
    assert found("aperture", f"{lens} mm lens focused at {focus:g} m. What aperture keeps {near:.6f} m sharp?") == pytest.approx(stop, rel=1e-3)


def test_horizontal_degrees_of_a_lens_as_long_as_half_its_frame() -> None:
    """2 atan(18/18) is a right angle."""
    assert found("coverage", "what horizontal angle does an 18 mm lens cover on 35mm film?") == pytest.approx(90)


# --- the talk round it -------------------------------------------------------------------------------

def test_the_film_format_is_said_when_taken_and_used_when_said() -> None:
    assert "35 mm" in ask("hyperfocal of a 50 mm lens at f/8?").reply
    small, large = (found("hyperfocal", f"hyperfocal of an 80 mm lens at f/8 on {film}?") for film in ("35mm film", "six by six"))
    assert large < small


@pytest.mark.parametrize(("turns", "missing"), [
    (("depth of field of a 50 mm lens at f/8?",), "focus_distance"),
    (("depth of field at f/8 focused at 3 m?",), "focal_length"),
    (("50 mm lens focused at 3 m, depth of field?",), "aperture"),
])
def test_what_is_missing_is_asked_for(turns: tuple[str, ...], missing: str) -> None:
    answer = ask(*turns)
    assert answer.status == "needs" and answer.missing == (missing,)


def test_follow_ups_keep_what_they_do_not_name() -> None:
    first = ("depth of field of a 50 mm lens at f/8 focused at 3 m?",)
    again = found("depth_of_field", "depth of field of an 85 mm lens at f/16 focused at 4 m?")
    assert found("depth_of_field", *first, "and at f/16?", "what about an 85?", "and at 4 m?") == pytest.approx(again)


@pytest.mark.parametrize(("question", "holds"), [
    ("50 mm lens at f/8 focused at 3 m, is 2.5 m sharp?", True),
    ("50 mm lens at f/8 focused at 3 m. Will something at 2 m be in focus?", False),
    ("is f/8 enough to keep 2 m and 4 m sharp with a 50 mm lens?", False),
    ("is f/11 enough to keep 2 m and 4 m sharp with a 50 mm lens?", True),
])
def test_a_yes_or_a_no(question: str, holds: bool) -> None:
    assert ask(question).answers[0].value is holds


def test_the_flash_sets_the_stop_and_the_stop_the_depth() -> None:
    answer = ask("guide number 110 feet, flash 10 ft from the crew, ISO 100. 85mm lens on 35mm film focused at 12 feet. What aperture, and what depth of field?")
    assert [a.quantity for a in answer.answers[:2]] == ["aperture", "depth_of_field"]
    assert float(answer.answers[1].value) == pytest.approx(found("depth_of_field", "85mm lens, f/11, focused at 12 feet: depth of field?") / 0.3048)


@pytest.mark.parametrize("question", [
    "50 mm lens at f/8 focused at zero feet, depth of field?", "depth of field of a 0 mm lens at f/8 and 3 m?", "85 mm lens focused at 5 cm, f/8: depth of field?",
])
def test_what_cannot_be_is_rejected(question: str) -> None:
    assert ask(question).status == "rejected"
