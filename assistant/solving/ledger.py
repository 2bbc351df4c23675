"""The ledger: one balance of stops behind every flash answer.

Everything that changes exposure is so many stops. A flash exposure is right when the lines
add up to nothing:

    guide number + film speed + power + count - losses - distance - aperture = 0

each in stops (log2 of light; a guide number, a distance and an f-number count twice, since
light goes with their square). The unknown is whatever closes the balance. Source: the
definition of the guide number (ISO 1230) and the inverse square law.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from assistant.physics.ranges import require_positive
from assistant.records import record

WEIGHT: dict[str, float] = {
    "guide_number": 2.0, "film_speed": 1.0, "power": 1.0, "energy": 1.0, "count": 1.0,
    "distance": -2.0, "aperture": -2.0, "shutter": 1.0, "factor": -1.0,
}
"""Stops for each doubling of a quantity."""


@record
class Line:
    """One line of the ledger: what, its value, and its stops (plus is more light)."""

    quantity: str
    value: float
    stops: float
    label: str = ""


def stops_of(quantity: str, value: float) -> float:
    """The stops a value stands for; `stops` themselves count as they are.

    >>> round(stops_of("film_speed", 400) - stops_of("film_speed", 100), 9)
    2.0
    """
    if quantity in ("stops", "loss"):
        return value if quantity == "stops" else -value
    if not 0 < value < math.inf:
        require_positive(**{quantity: value})
    return WEIGHT[quantity] * math.log2(value)


def value_of(quantity: str, stops: float) -> float:
    """The value that stands for so many stops, the inverse of stops_of.

    >>> value_of("distance", stops_of("distance", 3.0))
    3.0
    """
    if quantity in ("stops", "loss"):
        return stops if quantity == "stops" else -stops
    return float(2.0 ** (stops / WEIGHT[quantity]))


def line(quantity: str, value: float, label: str = "") -> Line:
    """A line of the ledger for a value."""
    scaled = value / 100.0 if quantity == "film_speed" else value
    return Line(quantity, value, stops_of(quantity, scaled), label)


def close(unknown: str, lines: list[Line]) -> float:
    """The value of the unknown that brings the balance to nothing.

    Guide numbers and distances in metres, film speed in ISO arithmetic.

    >>> round(close("aperture", [line("guide_number", 40), line("distance", 5)]), 6)
    8.0
    """
    open_stops = -sum([entry.stops for entry in lines])
    value = value_of(unknown, open_stops)
    return value * 100.0 if unknown == "film_speed" else value


def balance(lines: list[Line]) -> float:
    """What the lines add up to, in stops; nothing when the exposure is right."""
    return sum(entry.stops for entry in lines)


def changed(unknown: str, reference: float, before: Mapping[str, float], after: Mapping[str, float]) -> float:
    """A quantity after a change, from its value before: what is not named stays the same.

    >>> round(changed("aperture", 16, {"distance": 4}, {"distance": 8}), 6)
    8.0
    """
    moved = sum(stops_of(q, after[q]) - stops_of(q, before[q]) for q in after)
    return value_of(unknown, stops_of(unknown, reference) - moved)


def spoken(lines: list[Line], say: Callable[[Line], str]) -> tuple[str, ...]:
    """The working: one line of words for each line of the ledger."""
    return tuple(f"{say(entry)}: {entry.stops:+.2f} stops" for entry in lines)
