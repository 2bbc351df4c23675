"""What is out of reach is said, and every way offered does work.

Each alternative is solved again here by the textbook identity
(guide number)^2 x ISO/100 x power x pops = (f-number x distance)^2,
written out with no help from the program, and must lie inside every limit that was told.
STOPWISE_SWEEP sets how many random kits are tried (default 400; 5000 for the long run).
"""

from __future__ import annotations

import math
import os
import random

import pytest

from assistant.answer import Answer, Quantity
from assistant.assistant import Assistant

SWEEP = int(os.environ.get("STOPWISE_SWEEP", "400"))
LENSES = ((1.4, 16.0), (2.0, 16.0), (2.8, 22.0), (3.5, 22.0), (4.0, 32.0), (5.6, 45.0))
FLOORS = (1, 2, 4, 16, 32, 64, 128)
STOPS = (1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32)


@pytest.fixture(scope="module")
def assistant() -> Assistant:
    return Assistant.create()


def _value(way: tuple[Quantity, ...], quantity: str, default: float) -> float:
    return next((float(q.value) for q in way if q.quantity == quantity), default)


def _stops_off(way: tuple[Quantity, ...], guide_number: float, unit: str) -> float:
    """How far from a right exposure a way is, in stops, by the textbook identity."""
    nd = -_value(way, "stops", 0.0)
    light = guide_number**2 * _value(way, "film_speed", 100.0) / 100 * _value(way, "power", 1.0) * _value(way, "count", 1.0) / 2**nd
    distance = next(q for q in way if q.quantity == "distance")
    assert distance.unit == unit
    return math.log2(light / (_value(way, "aperture", 0.0) * float(distance.value)) ** 2)


class Kit:
    """A random flash, lens and room, told in words."""

    def __init__(self, chance: random.Random) -> None:
        self.unit = chance.choice(("ft", "m"))
        self.guide = chance.randint(40, 220) if self.unit == "ft" else chance.randint(12, 70)
        self.floor = chance.choice(FLOORS)
        self.wide, self.small = chance.choice(LENSES)
        self.room = chance.randint(8, 40) if self.unit == "ft" else chance.randint(3, 12)

    def told(self) -> list[str]:
        words = "feet" if self.unit == "ft" else "metres"
        lowest = "" if self.floor == 1 else f" and goes down to 1/{self.floor}"
        return [f"My flash is guide number {self.guide} {words}{lowest}", f"The lens goes from f/{self.wide:g} to f/{self.small:g}", f"We have {self.room} {words} of room"]

    def holds(self, way: tuple[Quantity, ...]) -> bool:
        power, aperture = _value(way, "power", 1.0), _value(way, "aperture", self.wide)
        low = 0.0 if self.floor == 1 else 1 / self.floor
        return low * 0.99 <= power <= 1.01 and self.wide * 0.99 <= aperture <= self.small * 1.01 and _value(way, "distance", 0.0) <= self.room * 1.01


def _question(chance: random.Random, kit: Kit) -> str:
    words = "feet" if kit.unit == "ft" else "m"
    speed = chance.choice((50, 100, 200, 400, 800))
    distance, stop = chance.randint(2, 40 if kit.unit == "ft" else 12), chance.choice(STOPS)
    kinds = (f"{distance} {words}, ISO {speed}, what aperture", f"f/{stop:g} at {distance} {words}, ISO {speed}, what power", f"how far away for f/{stop:g} on ISO {speed}")
    return chance.choice(kinds)


def test_every_way_offered_works_and_is_inside_every_limit(assistant: Assistant) -> None:
    """Over many random kits no alternative is wrong or unreachable."""
    chance, offered, unreachable = random.Random(20), 0, 0
    for _ in range(SWEEP):
        assistant.new_conversation(keep_kit=False)
        kit = Kit(chance)
        for told in kit.told():
            assert assistant.answer(told).status == "noted", told
        question = _question(chance, kit)
        answer = assistant.answer(question)
        assert answer.status in ("answered", "out_of_reach"), (kit.told(), question, answer.reply)
        unreachable += answer.status == "out_of_reach"
        for way in answer.alternatives:
            offered += 1
            assert abs(_stops_off(way, kit.guide, kit.unit)) < 0.02, (kit.told(), question, way)
            assert kit.holds(way), (kit.told(), question, way)
    assert unreachable > SWEEP / 10 and offered > unreachable


def test_an_answer_inside_the_limits_is_not_called_out_of_reach(assistant: Assistant) -> None:
    """f/8 on a lens from f/4 to f/22 can be set."""
    assistant.new_conversation(keep_kit=False)
    assistant.answer("The lens goes from f/4 to f/22")
    assert assistant.answer("guide number 80 feet, 10 feet, ISO 100, aperture?").status == "answered"


def _ask(assistant: Assistant, *said: str) -> Answer:
    assistant.new_conversation(keep_kit=False)
    return [assistant.answer(words) for words in said][-1]


@pytest.mark.parametrize("wish", ["and I can't move the light", "and I cannot move the flash"])
def test_a_light_that_cannot_move_is_not_moved(assistant: Assistant, wish: str) -> None:
    """A wished-for constraint is honoured in the ways offered."""
    answer = _ask(assistant, "My flash goes down to 1/16", f"guide number 160 feet, 6 feet, f/2.8, ISO 100, what power, {wish}")
    assert answer.status == "out_of_reach"
    distances = [float(q.value) for way in answer.alternatives for q in way if q.quantity == "distance"]
    assert distances and all(d == pytest.approx(6.0) for d in distances)


def test_more_than_full_power_says_by_how_much(assistant: Assistant) -> None:
    """Twice the light that there is: one stop, and pops that make it up."""
    answer = _ask(assistant, "guide number 80 feet, 10 feet, f/11.3, ISO 100, what power")
    assert answer.status == "out_of_reach" and "1 stops more" not in answer.reply
    assert any(q.quantity == "count" and q.value == 2 for way in answer.alternatives for q in way)
