"""The same few laws asked in many ways: lens, film, distance, time, daylight and losses.

Every expected value follows from a law alone, written out beside the question: inverse squares,
(1 + magnification) squared, stops as powers of two, 2 atan(side / 2f), squares of f-numbers that add.
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

LENS: tuple[Row, ...] = (
    ("50 mm lens at infinity plus a 25 mm tube, how much magnification", "magnification", 25 / 50),
    ("hundred mil lens, 50 mm of extra extension past infinity, what magnification", "magnification", 50 / 100),
    ("with the ring at infinity and 36mm of tubes on my 50, what's the reproduction ratio?", "magnification", 36 / 50),
    ("50 mm of tubes behind a 100 mm lens set at infinity: how many stops do I open up?", "stops", 2 * math.log2(1.5)),
    ("150 mm lens racked out to 300 mm from the film, f/22 on the shutter. What f-number is it acting as?", "aperture", 22 * 2),
    ("lens says f/16, I'm at half life size: what f-number is that acting as?", "aperture", 16 * 1.5),
    ("105 mm lens, magnification 0.25, what aperture does f/8 turn into?", "aperture", 8 * 1.25),
    ("meter wants f/22 and I'm at 1:1. What do I put on the ring?", "aperture", 22 / 2),
    ("150 mm lens, 225 mm from lens to film, meter wants f/16. what do I set?", "aperture", 16 / 1.5),
    ("at 1:1 by how many times does the exposure have to be multiplied", "factor", 4.0),
    ("at twice life size, how many times more exposure", "factor", 9.0),
    ("A page 24 cm wide fills the full 36 mm of the frame. What magnification is that?", "magnification", 36 / 240),
    ("object is 10 cm wide and it comes out 2 cm wide on the negative, what magnification is it", "magnification", 0.2),
    ("What's the horizontal angle of view of a 35 mm lens on a 36 mm wide frame?", "coverage", 2 * math.degrees(math.atan(18 / 35))),
    ("what's the vertical angle of view of a 50 mm on a frame 24 mm high", "coverage", 2 * math.degrees(math.atan(12 / 50))),
    ("If I focus exactly at the hyperfocal distance, which is 8 m, what is the near limit?", "near_limit", 4.0),
)
FILM: tuple[Row, ...] = (
    ("400 pushed two stops gets metered at what?", "film_speed", 1600.0),
    ("64 film shot at EI 32, how many stops overexposed?", "stops", 1.0),
    ("Box says 800. I rate it 200. How many stops of extra exposure is the film getting?", "stops", 2.0),
    ("box says 200, I shot it at 1600, how far under is it?", "stops", -3.0),
    ("the film in the camera is 100 but I metered for 400, how many stops under", "stops", -2.0),
    ("my digital says f/8 at ISO 200 for this flash, film in the other body is 50. aperture?", "aperture", 4.0),
    ("My ISO 400 film is thirty years out of date. Losing one stop per decade, what speed do I rate it at?", "film_speed", 50.0),
    ("My slides come out 1.5 stops too dark every time. how many stops should I add?", "stops", 1.5),
    ("film speed two stops slower than 800", "film_speed", 200.0),
)
DISTANCE: tuple[Row, ...] = (
    ("choir. front lot 8 feet from the flash, back lot 16. how much dimmer are the back lot", "stops", -2.0),
    ("nearest chair 4 m from light, team is 1.5 m deep. loss at the rear?", "stops", 2 * math.log2(4 / 5.5)),
    ("Near end of the boat is 5 ft from the flash, far end one stop down. How far off is the far end?", "distance", 5 * math.sqrt(2)),
    ("light goes from 8 feet to 12 feet but I want the same exposure. It was on 1/8 power, what now?", "power", 1 / 8 * (12 / 8) ** 2),
    ("where would the light have to be to make him twice as bright as it does from 12 feet?", "distance", 12 / math.sqrt(2)),
    ("lit from 6 feet. Want it four times dimmer. where does the light go?", "distance", 12.0),
    ("lamp 2 m away is a stop too bright. how far back?", "distance", 2 * (math.sqrt(2) - 1)),
    ("flash is 6 feet away, guide number 80 feet. For f/8 how much further back must it go?", "distance", 80 / 8 - 6),
    ("f/11 is right at 6 ft, what's right at 9 ft with the same flash and power?", "aperture", 11 * 6 / 9),
)
TIME: tuple[Row, ...] = (
    ("Full power recycles in 8 seconds. And at 1/16?", "duration", 0.5),
    ("at 1/8 it recycles in 0.5 s, what about full", "duration", 4.0),
    ("1200 watt seconds split evenly between three heads, what does each get?", "energy", 400.0),
    ("200 Ws gives f/8, what would 800 Ws give me?", "aperture", 16.0),
    ("from 150 joules up to 600 how many stops do I gain", "stops", 2.0),
    ("I got 150 full-power flashes out of a charge. How many at half?", "count", 300.0),
    ("a battery holds 5000 joules and each pop takes 60 joules. How many pops do I get from it?", "count", 83.0),
    ("six pops 10 seconds apart, time from first to last?", "duration", 50.0),
)
DAYLIGHT: tuple[Row, ...] = (
    ("hall reads f/2 at 1/30 with 800 film. Now I'm on 200. Same f/2, what shutter?", "shutter", 4 / 30),
    ("the window light reads f/4 at 1/60 and flash reads f/4. together?", "aperture", 4 * math.sqrt(2)),
    ("meter reads 1/4 at f/11. what is it at f/5.5?", "shutter", 1 / 16),
    ("overcast EV 12, 400 film, 1/250. f-stop?", "aperture", math.sqrt(2**12 / 250 * 4)),
    ("1/120 at f/4 is right. what shutter speed at f/8 keeps the ambient the same", "shutter", 1 / 30),
    ("With a 3 stop ND on, my 1/4 second exposure becomes how long?", "shutter", 2.0),
    ("ambient gives f/8 and the flash gives f/8 on the same face. how many stops over if i leave the lens at f/8", "stops", 1.0),
)
LOSSES: tuple[Row, ...] = (
    ("scrim costs 1 stop, gel costs two thirds, total loss?", "stops", -5 / 3),
    ("bare f/22, with the brolly f/11, cost?", "stops", -2.0),
    ("softbox on, f/5.6; without it f/11. what does it eat?", "stops", -2.0),
    ("shooting through frosted glass drops me from f/16 to f/8. how many stops?", "stops", -2.0),
    ("flash wants f/16. I add a 2 stop ND. ring?", "aperture", 8.0),
    ("taking the two stop softbox off, it was f/8 with it on, now?", "aperture", 16.0),
    ("bare at 1/8 power was good, i add a gel eating 2 stops, new power?", "power", 0.5),
    ("with the 1 stop scrim I was on half power. without it?", "power", 0.25),
    ("I lose a stop to the umbrella and half to a gel, GN 50 m, f/8, how far?", "distance", 50 / 8 / 2**0.75),
)


@pytest.mark.parametrize(("question", "quantity", "value"), (*LENS, *FILM, *DISTANCE, *TIME, *DAYLIGHT, *LOSSES))
def test_a_law_asked_in_other_words(question: str, quantity: str, value: float) -> None:
    answer = ask(question)
    assert answer.status in ("answered", "out_of_reach"), answer.reply
    first = answer.answers[0]
    assert first.quantity == quantity
    # marks stand for powers of the root of two: f/11 to f/22 and 5.6 to 11 are whole stops (contract 12)
    assert float(first.value) == pytest.approx(value, rel=0.005, abs=0.005)


@pytest.mark.parametrize("question", (
    "A page 24 cm wide fills the frame, what magnification is that?",  # which frame, and which side of it
    "what aperture at 1:1",  # no aperture to start from
))
def test_too_little_said_gets_no_figure(question: str) -> None:
    assert ask(question).status in ("needs", "not_understood")
