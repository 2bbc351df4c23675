"""The slip behind a wrong figure: which mistake turns the right number into the one that was given.

Each change of light (film speed, power, count, losses) acts on a guide number, an aperture or a
distance by the square root of its light. A slip is another exponent of the same change.
"""

from __future__ import annotations

import math

from assistant.records import record

NEAR = 0.07
"""Doublings within which a figure counts as the one the slip would give (a seventh of a stop)."""


@record
class Change:
    """One change of light: what, its light in doublings (stops), and how it was said."""

    quantity: str
    stops: float
    said: str = ""


EXPONENTS: tuple[tuple[float, str], ...] = (
    # how much of the change's light went into the figure, instead of the half that belongs there
    (1.0, "{what} was used as it stands; only its square root counts, since light goes with the square"),
    (0.0, "{what} was left out"),
    (-0.5, "{what} was put in the wrong way round"),
    (-1.0, "{what} was put in the wrong way round, and without its square root"),
    (0.25, "the root of {what} was taken twice"),
)

WHAT = {"film_speed": "the film speed", "power": "the power", "count": "the number of flashes", "loss": "the light that is lost", "pops": "the number of pops"}


def slip_of(right: float, given: float, changes: tuple[Change, ...], distance: float = math.nan) -> tuple[str, str]:
    """The quantity a slip was made with and the slip in words; two empty words where none fits.

    `right` and `given` are guide numbers, apertures or distances of one unit; `distance` in the
    unit of the guide number, for a distance that was squared or multiplied.

    >>> slip_of(28.3, 20.0, (Change("power", -1.0),))[0]
    'power'
    """
    if not (right > 0 and given > 0):
        return "", ""
    out = math.log2(given / right)
    for exponent, words in EXPONENTS:
        for change in changes:
            if abs(change.stops) > 0.2 and abs((exponent - 0.5) * change.stops - out) < NEAR:
                return change.quantity, words.format(what=WHAT.get(change.quantity, change.quantity))
    everything = sum(c.stops for c in changes)
    if len(changes) > 1 and abs(-0.5 * everything - out) < NEAR:
        return changes[0].quantity, "all the changes were left out"
    for change in changes:
        if change.quantity == "loss" and change.stops < -1.2 and abs(-math.log2(-change.stops) - change.stops / 2 - out) < NEAR:
            return "loss", "the stops were divided by; each stop divides by 1.4, the square root of two"
    return _distance_slip(out, distance)


def _distance_slip(out: float, distance: float) -> tuple[str, str]:
    if distance > 0 and abs(math.log2(distance)) > 0.3:
        if abs(2 * math.log2(distance) - out) < NEAR:
            return "distance", "the guide number was multiplied by the distance instead of divided"
        if abs(-math.log2(distance) - out) < NEAR:
            return "distance", "the distance was squared; the guide number already takes care of the square"
    for factor in (3.2808, 1 / 3.2808):
        if abs(math.log2(factor) - out) < NEAR:
            return "distance", "feet and metres were mixed"
    return "", ""
