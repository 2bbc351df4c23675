"""The images of one movement under a repeating flash: how far apart they fall, and how often it must flash for that.

Between two flashes the subject goes its speed divided by the flashes a second. A doctest in round numbers:

>>> apart(3.0, 20.0)
0.15
"""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.query import Ask, Fact, Query
from assistant.solving.solution import Solution
from assistant.units import LENGTH, length_in

_LENGTHS = ("blur", "gap", "distance", "move", "max_distance")


def apart(speed: float, a_second: float) -> float:
    """Metres from one image to the next at so many metres and flashes a second (both more than 0); uniform motion."""
    return speed / a_second


def spacing(query: Query, ask: Ask) -> Solution | None:
    """"how far apart are the images?"."""
    speed, rate = query.last("velocity"), query.last("frequency") or query.last("interval")
    if ask.of != "spacing" or speed is None or rate is None or rate.value <= 0:
        return None
    by_wait = rate.quantity == "interval"
    metres = apart(speed.value, 1 / rate.value if by_wait else rate.value)
    unit = _unit(query, ask, speed, metres)
    step = f"speed x {rate.value:g} s from flash to flash" if by_wait else f"speed / {rate.value:g} flashes a second"
    return Solution(lead="From one image to the next", answers=(Quantity("distance", length_in(metres, unit), unit),), used=(speed, rate, *query.all("count")), topic="time", working=(step,))


def rate(query: Query) -> Solution | None:
    """"images so far apart of what moves so fast": so many flashes a second."""
    speed = query.last("velocity")
    lengths = [f for f in query.facts if f.quantity in _LENGTHS and f.value > 0]
    if speed is None or len(lengths) != 1:
        return None
    each = speed.value / lengths[0].value
    return Solution(lead=f"{each:.3g} flashes a second.", answers=(Quantity("count", each, "flashes a second"),), used=(speed, lengths[0]), topic="time", working=("speed / distance from image to image",))


def on_film(query: Query, ask: Ask) -> Solution | None:
    """"at 1:10 it moves 5 mm: how far on the film?": so many times the scale of reproduction."""
    size, moved = query.last("magnification"), next((f for f in query.facts if f.quantity in ("distance", "blur", "move")), None)
    if ask.of != "image" or size is None or moved is None or size.value <= 0:
        return None
    unit = (ask.unit if ask.unit in LENGTH else "") or next((u for u in query.units if u in ("mm", "cm", "in")), "") or (moved.unit if moved.unit in ("mm", "cm", "in") else "mm")
    metres = moved.value * size.value
    return Solution(lead="Movement on the film", answers=(Quantity("distance", length_in(metres, unit), unit, "on the film"),), used=(size, moved), topic="time", working=(f"{size.value:g} times the movement at the subject",))


def _unit(query: Query, ask: Ask, speed: Fact, metres: float) -> str:
    """The unit that was asked for, else one of the speed's kind that suits the size."""
    named = next((u for u in (ask.unit, *query.units) if u in ("mm", "cm", "in", "m", "ft", "yd")), "")
    if named:
        return named
    if speed.unit in ("ft", "yd", "in"):
        return "in" if metres < 0.3 else "ft"
    return "cm" if metres < 1 else "m"
