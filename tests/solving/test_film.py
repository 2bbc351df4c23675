"""Film asked in words: rating, push and pull, long times, brackets, old film, old scales."""

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


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def ask(*turns: str) -> Answer:
    """The answer to the last turn of a conversation with nobody's gear."""
    assistant = Assistant(_tables(), Conversation())
    return [assistant.answer(turn) for turn in turns][-1]


def values(*turns: str) -> list[tuple[str, float]]:
    """Quantities and values of the answers."""
    answer = ask(*turns)
    assert answer.status == "answered", answer.reply
    return [(a.quantity, float(a.value)) for a in answer.answers]


DIN = {15: 25, 18: 50, 21: 100, 22: 125, 24: 200, 27: 400, 30: 800, 33: 1600, 36: 3200, 39: 6400}
"""Marked speeds by degrees: ASA to DIN table of 1999, and the DIN entry of an encyclopaedia (100 is 21, 200 is 24)."""


@pytest.mark.parametrize(("degrees", "speed"), DIN.items())
def test_degrees_and_arithmetic_speeds(degrees: int, speed: int) -> None:
    assert values(f"what is {degrees} DIN in ISO")[0] == ("film_speed", speed)
    assert values(f"what's ISO {speed} in DIN")[0] == ("film_speed", degrees)


def test_an_exponent_of_one_corrects_nothing() -> None:
    # an encyclopaedia's article on reciprocity, Schwarzschild law: p = 1 means no correction
    assert values("metered 10 seconds, reciprocity exponent 1, how long?")[0] == ("shutter", pytest.approx(10.0))


def test_two_seconds_become_three() -> None:
    # a black-and-white film course on reciprocity failure: 2 s is lengthened to 3 s on an ISO 400 film
    assert values("the film's sheet says 2 s becomes 3 s. Meter says 2 s. how long?")[0] == ("shutter", pytest.approx(3.0))


RATED = (
    # common practice: a push of one stop is rated at double, a pull at half; always over is rated slower
    ("100 speed film pulled a stop, what speed do I rate it", 50.0),
    ("ISO 400 pushed two stops - what do I set the meter to?", 1600.0),
    ("Lab pulls it two stops, film 400, rating?", 100.0),
    ("I always want my 160 colour neg one stop over. What should I rate it at?", 80.0),
    ("box speed 400. I overexpose colour neg by a stop. EI?", 200.0),
    ("100 slide film, I like it a stop under. what EI?", 200.0),
    ("Roll of 400, twenty years past its date, what do I rate it at?", 100.0),
)


@pytest.mark.parametrize(("question", "speed"), RATED)
def test_the_speed_to_rate_a_film_at(question: str, speed: float) -> None:
    assert values(question)[0] == ("film_speed", pytest.approx(speed))


WRONG_SPEED = (
    ("I shot a roll of 400 at 200 by mistake. How many stops over?", 1.0),
    ("Slide film is ISO 64 but the meter was set to 100 the whole roll. How many stops out am I?", -2 / 3),
    ("400 film shot at 1600, how many stops push do I tell the lab?", 2.0),
    ("my 400 film was shot at 100, how many stops does the lab pull it?", -2.0),
)


@pytest.mark.parametrize(("question", "stops"), WRONG_SPEED)
def test_how_far_a_rating_is_from_box_speed(question: str, stops: float) -> None:
    assert values(question)[0] == ("stops", pytest.approx(stops, abs=0.01))


@settings(max_examples=40, deadline=None)
@given(speed=st.sampled_from((100, 200, 400, 800)), stops=st.sampled_from(("one stop", "two stops", "half a stop")))
def test_a_push_and_the_same_pull_meet_at_box_speed(speed: int, stops: str) -> None:
    up, down = (values(f"{speed} film {way} {stops}, what do I rate it?")[0][1] for way in ("pushed", "pulled"))
    assert math.sqrt(up * down) == pytest.approx(speed)


@settings(max_examples=40, deadline=None)
@given(seconds=st.integers(2, 300), exponent=st.sampled_from((1.1, 1.26, 1.3, 1.33)))
def test_a_long_time_is_lengthened_to_the_power(seconds: int, exponent: float) -> None:
    (quantity, value), (_, stops) = values(f"metered {seconds} seconds, reciprocity exponent {exponent}, how long?")[:2]
    assert quantity == "shutter" and math.log(value) == pytest.approx(exponent * math.log(seconds))
    assert stops == pytest.approx(math.log2(value / seconds))


def test_between_the_rows_of_a_sheet() -> None:
    at_rows = values("the film sheet says 1 s becomes 2 s, 10 s becomes 50 s. meter says 10 s. how long?")
    between = values("the film sheet says 1 s becomes 2 s, 10 s becomes 50 s. meter says 4 s. how long?")
    assert at_rows[0][1] == pytest.approx(50.0) and 2 * 4 < between[0][1] < 5 * 4


BRACKETS = (
    # stops off f/8 of each frame, in shooting order
    ("Give me a three-frame bracket around f/8: one stop over first, then normal, then one stop under. Apertures?", (1.0, 0.0, -1.0)),
    ("three frames round f/8: first on the nose, second one stop over, third one stop under. Apertures in that order?", (0.0, 1.0, -1.0)),
    ("Frames: f/8 straight, then half over, then half under. apertures?", (0.0, 0.5, -0.5)),
    ("Give me the three apertures for a half-stop bracket around f/8, shot in this order: normal, then half a stop over, then half a stop under.", (0.0, 0.5, -0.5)),
    ("A one-stop bracket around f/8, in this order: one stop under, then one stop over, then as metered. apertures?", (-1.0, 1.0, 0.0)),
    ("bracket f/8 half a stop either side", (-0.5, 0.0, 0.5)),
    ("five shot bracket, one stop steps, centre f/8", (-2.0, -1.0, 0.0, 1.0, 2.0)),
    ("The flash calls for f/8. For the bracket frame that's half a stop over, what aperture do I set?", (0.5,)),
)


@pytest.mark.parametrize(("question", "offsets"), BRACKETS)
def test_the_frames_of_a_bracket(question: str, offsets: tuple[float, ...]) -> None:
    got = [2 * math.log2(8 / value) for quantity, value in values(question) if quantity == "aperture"]
    assert got == pytest.approx(list(offsets))


def test_how_many_frames_a_bracket_takes() -> None:
    assert values("how many frames for two stops either side in half stop steps")[0] == ("count", 9)


def test_a_power_bracket_cannot_go_above_full() -> None:
    assert ask("bracket by power a stop over and a stop under from full power").status == "out_of_reach"


def test_how_far_off_one_may_be_is_told_in_words() -> None:
    slide, negative = ask("how far off can I be with slide film?"), ask("what's the latitude of colour negative?")
    assert slide.answers == negative.answers == ()
    assert "half a stop" in slide.reply and "two or three stops over" in negative.reply


def test_a_film_swapped_in_keeps_the_light() -> None:
    assert values("digital says f/8 at ISO 200, I'm loading 50 film. aperture?")[0] == ("aperture", pytest.approx(4.0))


@pytest.mark.parametrize(("question", "seconds"), (
    # rows 2 s to 4 s and 8 s to 28 s; a stop closed or a stop of grey doubles the metered time first
    ("my sheet: 2 s becomes 4, 8 becomes 28. metered 8 s. how long?", 28.0),
    ("my sheet: 2 s becomes 4, 8 becomes 28. metered 4 s at f/16, closing down to f/22. how long?", 28.0),
    ("my sheet: 2 s becomes 4, 8 becomes 28. metered 16 s at f/22, opening to f/16. how long?", 28.0),
    ("my sheet: 2 s becomes 4, 8 becomes 28. metered 4 s, then a one stop nd. how long?", 28.0),
))
def test_the_metered_time_is_brought_to_the_lens_before_the_sheet(question: str, seconds: float) -> None:
    assert values(question)[0] == ("shutter", pytest.approx(seconds))


@pytest.mark.parametrize(("said", "rating"), (("a stop thin", 200.0), ("a stop too dark", 200.0), ("a stop too dense", 800.0), ("one stop over", 800.0)))
def test_how_frames_came_out_is_made_up_for(said: str, rating: float) -> None:
    assert values(f"my negatives come out {said} on 400 film, what do I rate it at?")[0] == ("film_speed", pytest.approx(rating))
    assert values("I want them one stop over on 400 film, what do I rate it at?")[0] == ("film_speed", pytest.approx(200.0))


def test_the_exposure_goes_by_the_rating() -> None:
    assert values("box 400, I rate it at 200, GN 40 metres at 100, 5 m, aperture?")[0] == ("aperture", pytest.approx(8 * math.sqrt(2)))
    assert values("I rate the paper at 6. the flash meter is set to 100 and says f/32. lens to what?")[0] == ("aperture", pytest.approx(32 * math.sqrt(0.06)))


@settings(max_examples=12, deadline=None)
@given(st.sampled_from([1.2, 1.25, 1.3, 1.4]), st.sampled_from([1, 2, 3]))
def test_the_time_at_which_a_film_wants_so_many_stops_is_lengthened_by_them(exponent: float, stops: int) -> None:
    """Asked there, and asked back again: the law t**p turned both ways."""
    metered = values(f"With an exponent of {exponent}, at what metered time is the correction {stops} stops?")[0][1]
    assert math.log2(metered**exponent / metered) == pytest.approx(stops, rel=1e-6)


@settings(max_examples=18, deadline=None)
@given(st.sampled_from([100, 160, 400]), st.sampled_from(["a third of a stop", "two thirds of a stop", "a stop"]), st.sampled_from(["overexpose", "underexpose"]))
def test_the_film_behind_a_rating_is_found_again(speed: int, stops: str, way: str) -> None:
    """What a habit makes of a box speed, taken back, is the box speed."""
    rated = values(f"I {way} my {speed} film by {stops}. What do I set on the meter?")[0][1]
    mark = round(rated)
    box = values(f"I set ISO {mark} on the meter to {way} by {stops}. What's the film?")[0][1]
    assert box == pytest.approx(speed * mark / rated, rel=1e-6)
