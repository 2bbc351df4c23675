"""Pops, pulses, recycling and watt-seconds asked in words.

Published figures have their source beside them; where none is named the figure follows from
energy going with power and light adding, so the law is what is checked.
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


def first(quantity: str, *turns: str) -> float:
    """The first answer, which must be of this quantity; lengths in metres."""
    answer = ask(*turns)
    assert answer.status == "answered", answer.reply
    one = answer.answers[0]
    assert one.quantity == quantity
    return to_metres(float(one.value), one.unit) if one.unit in ("m", "ft", "cm", "in", "mm") else float(one.value)


# --- published ------------------------------------------------------------------------------------

def test_a_capacitor_of_a_worked_example() -> None:
    """Capacitors: real-world scenarios, web article: 1000 microfarads at 300 V hold 45 J."""
    assert first("energy", "how much energy is in a 1000 microfarad capacitor at 300 V?") == pytest.approx(45)


def test_half_of_the_charge_is_a_stop() -> None:
    """Standard photometric relations (energy proportional to voltage squared); from memory."""
    assert first("stops", "the flash fires at 50 % charge. How many stops under?") == pytest.approx(-1)
    assert first("stops", "the flash fires at 50 % of full voltage, how many stops under?") == pytest.approx(-2)


def test_the_tail_of_an_exponential_pulse() -> None:
    """ISO 2827 as restated: t0.1 is the time above a tenth of the peak, t0.5 above half: log2 of ten apart."""
    assert first("duration", "t0.5 is 1/1000 s, what is t0.1?") == pytest.approx(0.001 * math.log2(10))
    assert first("duration", "t0.1 is 1/300 s, what is t0.5?") == pytest.approx(1 / 300 / math.log2(10))


# --- laws --------------------------------------------------------------------------------------------

@settings(max_examples=20, deadline=None)
@given(st.integers(2, 40), st.sampled_from([2.8, 4, 5.6, 8, 11]))
def test_pops_add_as_light(pops: int, stop: float) -> None:
    assert first("aperture", f"{pops} pops at f/{stop:g} each, what aperture do they add up to?") == pytest.approx(stop * math.sqrt(pops))


@settings(max_examples=20, deadline=None)
@given(st.integers(1, 6))
def test_each_stop_doubles_the_pops(stops: int) -> None:
    assert first("count", f"I'm {stops} stops short with one pop. How many pops in total?") == 2**stops
    assert first("count", f"I'm {stops} stops short with one pop. How many more pops?") == 2**stops - 1


@pytest.mark.parametrize(("question", "count"), [
    ("one pop is f/8. How many pops for f/22?", 8), ("pops needed for f/32 when one pop reads f/11?", 8),
    ("one pop is right at 10 feet. How many pops at 20 feet?", 4), ("how many half-power pops make up for three full ones?", 6),
    ("a stop and a half short with one pop, how many pops in all?", 3),
])
def test_pops_are_counted_up(question: str, count: int) -> None:
    assert first("count", question) == count


@settings(max_examples=20, deadline=None)
@given(st.integers(10, 900), st.sampled_from([2, 4, 8, 16, 32]))
def test_a_battery_goes_by_energy(pops: int, part: int) -> None:
    assert first("count", f"the battery does {pops} full pops. How many at 1/{part} power?") == pops * part
    assert first("count", f"the battery does {pops} pops at 1/{part} power. How many at full?") == pops // part


@settings(max_examples=20, deadline=None)
@given(st.integers(2, 20), st.sampled_from([2, 4, 8, 16]))
def test_recycling_goes_by_energy(seconds: int, part: int) -> None:
    assert first("duration", f"it recycles in {seconds} seconds at full. How long at 1/{part}?") == pytest.approx(seconds / part)
    assert first("duration", f"at 1/{part} power it takes {seconds} s to recycle. How long at full?") == pytest.approx(seconds * part)


@settings(max_examples=20, deadline=None)
@given(st.integers(1, 30), st.sampled_from([250, 500, 1000, 4000]))
def test_movement_is_speed_times_time_and_back(speed: int, part: int) -> None:
    moved = first("distance", f"a rower moves at {speed} m/s and the flash lasts 1/{part} s. How far does he move?")
    assert moved == pytest.approx(speed / part)
    assert first("duration", f"a rower at {speed} m/s, I allow {moved * 1000:.6f} mm of blur. How short must the flash be?") == pytest.approx(1 / part, rel=1e-4)


@pytest.mark.parametrize(("question", "joules"), [
    ("600 Ws head at 1/4, how many joules?", 150), ("a 1200 Ws pack split evenly between three heads, how many joules each?", 400),
    ("20 pops of a 300 Ws head at half power, total energy?", 3000), ("500 Ws gives f/16. What energy for f/8?", 125),
    ("how many watt seconds for f/16 if 200 Ws gives f/8?", 800),
])
def test_watt_seconds(question: str, joules: float) -> None:
    assert first("energy", question) == pytest.approx(joules)


def test_a_strobe_counts_down_and_its_shutter_is_long_enough() -> None:
    assert first("count", "strobe at 5 Hz, shutter open for 3 s. How many flashes?") == 15
    assert first("shutter", "how long must the shutter stay open for 8 flashes at 4 Hz?") == pytest.approx(2)


# --- the talk round it ---------------------------------------------------------------------------------

@pytest.mark.parametrize(("question", "missing"), [
    ("how many joules at quarter power?", "energy"), ("how far does a rower move during a flash of 1/800 s?", "speed"),
    ("flash bulbs at 10 feet, what aperture?", "guide_number"),
])
def test_what_is_missing_is_asked_for(question: str, missing: str) -> None:
    answer = ask(question)
    assert answer.status == "needs" and missing in answer.missing


def test_follow_ups_replace_the_old_value() -> None:
    start = "a rower moves at 4 m/s, the flash is 1/1000. How far does he move?"
    assert first("distance", start, "and at 1/4000?", "and at 6 m/s?") == pytest.approx(6 / 4000)
    assert first("duration", "recycle 8 s at full. What is it at 1/4?", "and at half?") == pytest.approx(4)
    assert first("energy", "600 Ws at 1/4, how many joules?", "what about a 400 Ws head?") == pytest.approx(100)


def test_an_auto_flash_is_fooled_by_what_it_is_told() -> None:
    """Less light: a faster film or a wider aperture told to it, or a smaller one on the lens (common practice, no source)."""
    told = "my auto flash is set for f/8 at ISO 100."
    assert first("film_speed", f"{told} What film speed do I tell it to get one stop less?") == pytest.approx(200)
    assert first("aperture", f"{told} What aperture do I tell the flash to get one stop less?") == pytest.approx(8 / math.sqrt(2))
    assert first("aperture", f"{told} What do I set on the lens to get one stop less?") == pytest.approx(8 * math.sqrt(2))
