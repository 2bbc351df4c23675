"""Terse questions, four to ten words and no apostrophes, and rules put up for a yes or a no in passing.

Every expected value follows from a law alone, written out beside the question: stops as powers of two,
inverse squares, squares of f-numbers that add, 2 atan(half the width / distance), the sunny-16 rule
(f/16 at EV 15 is 1/128 s; common practice) and a metered time to the power p (contract 30). An old film
loses a stop a decade (common practice, no source).
"""

from __future__ import annotations

import math
from functools import lru_cache

import pytest

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def ask(question: str) -> Answer:
    """The answer with nobody's gear."""
    return Assistant(_tables(), Conversation()).answer(question)


Row = tuple[str, str, float]

DAYLIGHT: tuple[Row, ...] = (
    ("im on 1/30, want the background two stops darker, lens stays put. shutter?", "shutter", 1 / 120),
    ("at 1/60, room one stop brighter, shutter?", "shutter", 1 / 30),
    ("im at f4 1/60, room a stop darker, what aperture", "aperture", 4 * math.sqrt(2)),
    ("background is two stops under at 1/60, what shutter makes it right", "shutter", 1 / 15),
    ("sky too bright by a stop at 1/125, what shutter fixes it", "shutter", 1 / 250),
    ("room too dark by two stops at 1/60, shutter to put it right", "shutter", 1 / 15),
    ("flash f8, ambient f5.6, both on her. set what?", "aperture", math.sqrt(8**2 + 5.6**2)),
    ("ambient f4, flash f8, add them", "aperture", math.sqrt(4**2 + 8**2)),
    ("rooms 1/8 at f4, im at 1/60 f8 same film. how dark does it go", "stops", -5.0),
    ("back wall reads 1/4 s at f/8, im at f/8, wall three stops under, shutter?", "shutter", 1 / 32),
    ("sun, iso 400, f16, shutter?", "shutter", 16**2 / 2**15 / 4),
    ("in the sun, 400 film, 1/500, what stop", "aperture", math.sqrt(2**15 * 4 / 500)),
    ("sunlit garden exposure is f/16. fill one stop under that, GN 110 ft, full power, how far?", "distance", 110 / (16 / math.sqrt(2))),
    ("3 stop nd on, was 1/125, new shutter?", "shutter", 8 / 125),
    ("going from 1/200 to 1/50 what happens to the background", "stops", 2.0),
    ("dusk 1/4 at f4. at f8?", "shutter", 1.0),
)
FILM: tuple[Row, ...] = (
    ("film is 12 years expired 400 neg, how should i rate it", "film_speed", 400 / 2**1.2),
    ("p 1.26, metered 30 s, what do i really give", "shutter", 30**1.26),
    ("p 1.31 metered 10 seconds", "shutter", 10**1.31),
    ("36 exposures, 3 frame bracket each time, how many brackets do i get", "count", 12.0),
    ("roll of 36, five shot brackets, how many setups do i get", "count", 7.0),
    ("how many times more light does ISO 50 film need than ISO 400 film?", "factor", 8.0),
    ("how much more light does iso 25 need than iso 200", "stops", 3.0),
    ("loaded 100, metered 400, how many stops under", "stops", -2.0),
    ("160 film rated one stop over, what do i set", "film_speed", 80.0),
    ("pushed 400 to 1600 stops?", "stops", 2.0),
)
DISTANCE: tuple[Row, ...] = (
    ("row 2 is 1.4x further than row 1 from the flash. stops down?", "stops", -2 * math.log2(1.4)),
    ("back row twice as far as front, stops lost?", "stops", -2.0),
    ("wall twice as far as her. how dark", "stops", -2.0),
    ("bg 4 m from light, subject 2 m. bg how many stops under", "stops", -2.0),
    ("move light from 3 m to 2 m, gain?", "stops", 2 * math.log2(3 / 2)),
    ("set for 10 ft, within half a stop, near and far?", "distance", 10 / 2**0.25),
    ("if I double the flash distance how many times the light output do I need", "factor", 4.0),
    ("double the distance how much more power", "stops", 2.0),
    ("8 ft f11. where for f8", "distance", 8 * 11 / 8),
)
LOSSES: tuple[Row, ...] = (
    ("softbox eats two stops, how many pops to make it up", "count", 4.0),
    ("nd4 plus polariser 1.5 stops, total?", "stops", 3.5),
    ("grid two stops and gel half a stop, total loss", "stops", -2.5),
    ("i take the softbox off, it was costing 2 stops at f4. new stop", "aperture", 8.0),
    ("snoot off, was f4 with it eating 2 stops, now?", "aperture", 8.0),
    ("with umbrella f5.6, it eats 1.5 stops, bare would be", "aperture", 5.6 * 2**0.75),
    ("1:1 macro stops lost?", "stops", -2.0),
    ("life size, meter says f16, set?", "aperture", 8.0),
)
REST: tuple[Row, ...] = (
    ("300 joules gives me the f-stop, how many joules for one stop more", "energy", 600.0),
    ("300 joules for f8, how many for f11", "energy", 300 * 2),
    ("250 joules gives f8, need one stop more. joules?", "energy", 500.0),
    ("400 ws vs 100 ws stops", "stops", 2.0),
    ("How wide an angle must the flash cover to light a group 4 m across from 3 m away?", "coverage", 2 * math.degrees(math.atan(2 / 3))),
    ("what beam angle covers 6 ft at 8 ft", "coverage", 2 * math.degrees(math.atan(3 / 8))),
    ("angle of view 85mm full frame", "coverage", 2 * math.degrees(math.atan(math.hypot(24, 36) / 2 / 85))),
    ("whats gn 50 at iso 400", "guide_number", 100.0),
)
FALSE_PREMISE: tuple[Row, ...] = (
    ("because half power halves the guide number, what does my guide number 100 feet become at half power?", "guide_number", 100 / math.sqrt(2)),
    ("since iso 400 quadruples the guide number, whats gn 50 at iso 400", "guide_number", 100.0),
    ("given that flash light falls off in a straight line, how many stops do I lose moving the flash from 5 to 10 feet?", "stops", -2.0),
    ("because twice the distance is one stop, how many stops do i lose from 4 ft to 8 ft", "stops", -2.0),
)


@pytest.mark.parametrize(("question", "quantity", "value"), (*DAYLIGHT, *FILM, *DISTANCE, *LOSSES, *REST, *FALSE_PREMISE))
def test_few_words_are_enough(question: str, quantity: str, value: float) -> None:
    answer = ask(question)
    assert answer.status in ("answered", "out_of_reach"), answer.reply
    first = answer.answers[0]
    assert first.quantity == quantity
    assert float(first.value) == pytest.approx(value, rel=0.005, abs=0.005)


@pytest.mark.parametrize(("question", "quantity", "value"), FALSE_PREMISE)
def test_a_false_premise_is_put_right_in_a_sentence(question: str, quantity: str, value: float) -> None:
    assert "A correction:" in ask(question).reply


@pytest.mark.parametrize(("claim", "holds", "right"), (
    ("Guide number 110 feet over 10 feet is f/11, so at half power it is f/5.5. Is that right?", False, 11 / math.sqrt(2)),
    ("gn 80 over 10 ft is f8 so quarter power is f4, right?", True, 4.0),
    ("nd8 takes off eight stops, right?", False, 3.0),
    ("iso 400 doubles the guide number youd have at iso 100, yes?", True, 2.0),
    ("iso 200 doubles the gn i get at iso 100, right?", False, math.sqrt(2)),
    ("iso 800 doubles the guide number of iso 200?", True, 2.0),
    ("GN 36 m. ISO 400 doubles it to 72, quarter power halves that to 36, at 4.5 m that makes f/8. have i got that right?", True, 8.0),
    ("I reckon a 36 m guide number becomes 144 at ISO 400. Am I right?", False, 72.0),
    ("Is life size two stops more exposure, yes or no?", True, 2.0),
    ("a three stop nd is the same as nd 0.6, isnt it", False, 3.0),
    ("nd8 plus nd4 is five stops, yes?", True, 5.0),
    ("nd4 is stronger than nd 0.9, true?", False, 2.0),
    ("Will a flash with guide number 33 m light somebody 8 metres away at f/2.8 on ISO 100?", True, 33 / 8),
))
def test_a_rule_put_up_in_few_words(claim: str, holds: bool, right: float) -> None:
    answer = ask(claim)
    assert answer.answers[0].quantity == "claim"
    assert answer.answers[0].value is holds, answer.reply
    assert float(answer.answers[1].value) == pytest.approx(right, rel=0.01)


@pytest.mark.parametrize("question", (
    "sun behind her, f8, shutter?",  # against the light: no sunny-16 scene
    "how many litres of emulsion paint cover a 12 foot by 10 foot wall",
))
def test_no_figure_is_made_up(question: str) -> None:
    assert ask(question).status in ("needs", "not_understood")


@pytest.mark.parametrize(("question", "word"), (
    ("how does feathering change the light", "edge"),
    ("why cant i sync at 1/500", "slit"),
    ("whats nd 0.9 mean", "three"),
    ("how do i use my flash manually", "divide"),
))
def test_taught_without_apostrophes(question: str, word: str) -> None:
    assert word in ask(question).reply.lower()
