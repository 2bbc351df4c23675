"""Daylight and room light asked in words: readings, skies, fill, ND, sync, and what adds up."""

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
from assistant.scales import nearest_shutter


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def ask(*turns: str) -> Answer:
    """The answer to the last turn of a conversation with nobody's gear."""
    assistant = Assistant(_tables(), Conversation())
    return [assistant.answer(turn) for turn in turns][-1]


def value(*turns: str, quantity: str = "", status: str = "answered") -> float:
    """The first answer's value, checked for its status and quantity."""
    answer = ask(*turns)
    assert answer.status == status, answer.reply
    assert not quantity or answer.answers[0].quantity == quantity, answer.reply
    return float(answer.answers[0].value)


# --- published ------------------------------------------------------------------------------------

SKIES = (
    # US Navy, Photography (Basic), NAVEDTRA 14209, ch. 4: aperture at one over the film speed, by the light
    ("bright sun on sand", 22.0), ("bright sun", 16.0), ("cloudy bright", 11.0), ("heavy overcast", 5.6), ("open shade", 5.6),
    # encyclopaedia table of the same rule
    ("overcast", 8.0),
)


@pytest.mark.parametrize(("sky", "aperture"), SKIES)
def test_skies_by_the_sunny_16_table(sky: str, aperture: float) -> None:
    # 1/125 on ISO 125 film is the table's own time
    assert value(f"{sky}, ISO 125, 1/125, what aperture", quantity="aperture") == pytest.approx(aperture, rel=0.19)  # a third of a stop: EV 15 against 1/ISO


def test_rule_named_outright_gives_one_over_the_film_speed() -> None:
    # NAVEDTRA 14209 ch. 4: ISO 125 in bright sun is 1/125 at f/16
    assert value("by the sunny 16 rule, ISO 125 film at f/16, what shutter", quantity="shutter") == pytest.approx(1 / 125)
    # "Sunny 16 rule", Wikipedia: ISO 400 is 1/400, the mark 1/500 beside it
    answer = ask("sunny 16, ISO 400, f/16, shutter speed?")
    assert float(answer.answers[0].value) == pytest.approx(1 / 400)


def test_equal_exposures_of_the_sunny_16_article() -> None:
    # "Sunny 16 rule", Wikipedia: 1/125 at f/16 equals 1/250 at f/11 (marks)
    seconds = value("Sunny day, 1/125 at f/16. What shutter at f/11?", quantity="shutter")
    assert nearest_shutter(seconds, "whole").value == pytest.approx(1 / 250)


@pytest.mark.parametrize(
    ("question", "ev"),
    [
        ("what EV is f/16 at 1/125, ISO 100", 14.97),  # "Exposure value", Wikipedia: EV 15, exact 14.97
        ("what EV is f/8 at 1/250 on ISO 400", 11.9657842),  # colour-hdri 0.2.6, exposure docstrings
    ],
)
def test_published_exposure_values(question: str, ev: float) -> None:
    assert value(question, quantity="exposure_value") == pytest.approx(ev, abs=0.005)


def test_fill_one_stop_under_reads_f11_beside_f16() -> None:
    # standard photometric relations: one stop is half the light; the number from memory
    assert value("Daylight reads f/16. Fill one stop under the daylight. What should the fill flash read?", quantity="aperture") == pytest.approx(11.31, rel=0.01)


def test_equal_flash_and_daylight_make_a_stop() -> None:
    # addition of luminous exposure: f/8 and f/8 make f/11 (from memory)
    assert value("Flash alone reads f/8, the daylight alone reads f/8. What do I set for the two together?", quantity="aperture") == pytest.approx(8 * math.sqrt(2))


# --- laws -----------------------------------------------------------------------------------------

SHUTTERS = st.sampled_from([15, 30, 60, 125, 250, 500])
APERTURES = st.sampled_from([2.8, 4, 5.6, 8, 11, 16])


@settings(max_examples=25, deadline=None)
@given(SHUTTERS, APERTURES, APERTURES, st.integers(1, 5))
def test_each_stop_under_halves_the_time(time: int, read: float, used: float, under: int) -> None:
    scene = f"The hall meters 1/{time} at f/{read}. I'm at f/{used} for the flash and want the hall"
    normal = (used / read) ** 2 / time
    assert value(f"{scene} {under} stops under. What shutter?", quantity="shutter") == pytest.approx(normal / 2**under)


@settings(max_examples=25, deadline=None)
@given(st.integers(2, 15), SHUTTERS, st.sampled_from([50, 100, 200, 400, 800]))
def test_aperture_and_shutter_are_inverses(ev: int, time: int, speed: int) -> None:
    aperture = value(f"EV {ev} at ISO 100, {speed} film, 1/{time}. What aperture?", quantity="aperture")
    assert value(f"EV {ev} at ISO 100, {speed} film, f/{aperture:.6f}. What shutter speed?", quantity="shutter") == pytest.approx(1 / time, rel=1e-4)


@settings(max_examples=20, deadline=None)
@given(st.integers(1, 3), st.sampled_from([2, 3, 4]))
def test_fill_power_quarters_when_two_stops_lower(under: int, distance: int) -> None:
    scene = f"Daylight f/8 at 1/125, ISO 100. GN 60 m, {distance} m away. Fill"
    nearer, lower = (value(f"{scene} {n} stops under the daylight. What power?", quantity="power") for n in (under, under + 2))
    assert nearer == pytest.approx(4 * lower)


def test_nd_strength_and_factor_agree() -> None:
    answer = ask("EV 15, ISO 100, 1/250, and I want f/4. How many stops of ND?")
    found = {a.quantity: float(a.value) for a in answer.answers}
    assert found["factor"] == pytest.approx(2 ** found["stops"])
    assert found["stops"] == pytest.approx(15 - math.log2(16 * 250))


# --- which setting is the reading ------------------------------------------------------------------


@pytest.mark.parametrize(
    "question",
    [
        "Room meters f/2.8 at 1/50. How many stops under will it be at f/8 and 1/200?",
        "I'm at f/8 and 1/200. The room meters f/2.8 at 1/50. How far under is it?",
        "How many stops under will the room be at 1/200, f/8 if it meters f/2.8 at 1/50?",
    ],
)
def test_the_metered_setting_is_the_reading_in_any_order(question: str) -> None:
    assert value(question, quantity="stops") == pytest.approx(-5.0)


def test_a_slow_time_is_no_power() -> None:
    assert value("The nave meters 1/8 at f/2.8. I'm on 1/60 at f/8. How many stops under is the nave?", quantity="stops") == pytest.approx(-6.0)


# --- out of reach -----------------------------------------------------------------------------------


def test_faster_than_sync_is_out_of_reach_with_ways_that_work() -> None:
    answer = ask("Fill flash in bright sun, my camera syncs at 1/60, ISO 100, f/8. What shutter does the daylight want?")
    assert answer.status == "out_of_reach"
    assert float(answer.answers[0].value) == pytest.approx(64 / 2**15)
    for way in answer.alternatives:  # each must expose the same daylight: EV 15
        found = {q.quantity: float(q.value) for q in way}
        number, time = found.get("aperture", 8.0), found["shutter"]
        light = 15 + math.log2(found.get("film_speed", 100.0) / 100) - found.get("stops", 0.0)
        assert math.log2(number**2 / time) == pytest.approx(light, abs=0.01)


def test_smaller_than_the_lens_goes_is_out_of_reach() -> None:
    answer = ask("Bright sun, 400 film, 1/60 sync, the lens closes to f/16. What aperture would the sun need?")
    assert answer.status == "out_of_reach"
    assert answer.alternatives


def test_more_than_full_power_says_how_near() -> None:
    answer = ask("Daylight f/16 at 1/125, ISO 100. GN 28 m at 4 m, fill one stop under. Power?")
    assert answer.status == "out_of_reach"
    power, nearer = (float(q.value) for q in answer.alternatives[0])
    assert power == 1.0
    assert 28 / nearer == pytest.approx(16 / math.sqrt(2))


# --- conversation and what is said ---------------------------------------------------------------------


def test_a_later_film_speed_leaves_the_reading_alone() -> None:
    scene = ("The hall meters 1/15 at f/4, ISO 400. I'm at f/4. Two stops under, what shutter?",)
    assert value(*scene, "and at ISO 800?") == pytest.approx(value(*scene) / 2)


def test_a_sky_is_an_assumption_and_said() -> None:
    answer = ask("bright sun, ISO 100, f/8, what shutter")
    assert any(a.quantity == "exposure_value" for a in answer.assumed)
    assert "sunny-16" in answer.reply


@pytest.mark.parametrize(
    ("question", "missing"),
    [
        ("The room is dark. I'm at f/8, what shutter for the room?", "exposure_value"),
        ("EV 9 at ISO 100, what shutter?", "aperture"),
        ("EV 9 at ISO 100, what aperture?", "shutter"),
    ],
)
def test_asks_for_exactly_what_is_missing(question: str, missing: str) -> None:
    answer = ask(question)
    assert answer.status == "needs", answer.reply
    assert answer.missing == (missing,)


def test_flash_alone_in_the_sun_is_still_a_flash_question() -> None:
    assert value("GN 120 feet, 10 feet, sunny day, ISO 100, aperture?") == pytest.approx(12.0)


def test_room_known_only_by_how_far_under_it_came_out() -> None:
    assert value("I shoot at f/8 and 1/60 and the hall comes out three stops under. What shutter gets it to one stop under?", quantity="shutter") == pytest.approx(4 / 60)


# --- two places, the times alone, and the shutter's own end ---------------------------------------


def test_the_place_asked_about_is_darker_or_brighter_than_the_other() -> None:
    """Of two readings at one time the sign goes with the place that is asked for, wherever its figure stands."""
    told = "window side f/11, shadow side f/4, same time. "
    assert value(told + "how many stops darker is the shadow side?") == -3
    assert value(told + "how many stops brighter is the window side?") == 3
    assert value("f/11 on the lawn and f/4 on the porch. how many stops under is the porch?") == -3


def test_a_dragged_shutter_gains_by_the_times_alone() -> None:
    """From a sixtieth to a quarter the room gains four stops, whatever the lens is at."""
    assert value("the room metered a sixtieth, I drag to a quarter. how many stops more room is that?") == 4


def test_a_time_beyond_the_shutters_own_end_is_out_of_reach() -> None:
    """f/8 in bright sun one stop under wants 1/1000 s, which a leaf shutter of 1/500 s has not."""
    assert value("bright sun, ISO 100, f/8, background one stop under. fastest is 1/500. shutter speed?", status="out_of_reach") == pytest.approx(1 / 1000, rel=0.05)


def test_how_much_to_bring_a_face_up_is_never_a_loss() -> None:
    """Two exposure values and a wish to bring the darker level do not tell what the flash must read."""
    assert ask("sky EV 13, face EV 11, how much flash on the face to bring it level").status == "not_understood"
