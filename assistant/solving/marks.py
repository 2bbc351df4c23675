"""Quantities with their marks: the exact value and the setting a person can dial in."""

from __future__ import annotations

import math

from assistant import scales
from assistant.answer import Quantity
from assistant.physics.ambient import factor_from_stops
from assistant.units import length_in


def aperture(value: float, of: str | None = None) -> Quantity:
    """An f-number with its nearest third-stop mark."""
    if not 0 < value < math.inf:
        return Quantity("aperture", value, "f-number", of)
    mark = scales.nearest_aperture(value)
    return Quantity("aperture", value, "f-number", of, mark.text, round(mark.error_stops, 3))


def distance(metres: float, unit: str, of: str | None = None) -> Quantity:
    """A distance in the person's unit."""
    unit = unit if unit in ("ft", "m", "cm", "in", "yd") else "ft"
    return Quantity("distance", length_in(metres, unit), unit, of)


def power(value: float, of: str | None = None) -> Quantity:
    """A power as a fraction of full with its nearest third-stop step."""
    mark = scales.nearest_power(value) if value > 0 else None
    return Quantity("power", value, "of full", of, mark.text if mark else None, round(mark.error_stops, 3) if mark else None)


def film_speed(value: float, of: str | None = None) -> Quantity:
    """An ISO arithmetic speed with its nearest mark."""
    mark = scales.nearest_film_speed(value)
    return Quantity("film_speed", value, "ISO", of, mark.text, round(mark.error_stops, 3))


def shutter(seconds: float, of: str | None = None) -> Quantity:
    """A shutter time with its nearest mark."""
    mark = scales.nearest_shutter(seconds)
    return Quantity("shutter", seconds, "s", of, mark.text, round(mark.error_stops, 3))


def guide_number(value: float, unit: str, at_iso: float = 100.0, at_power: float | None = None) -> Quantity:
    """A guide number in feet or metres."""
    return Quantity("guide_number", value, unit, None, None, None, None if at_iso == 100.0 else at_iso, at_power)


def count(value: float, unit: str) -> Quantity:
    """A whole number of things."""
    return Quantity("count", value, unit)


def stops(value: float, of: str | None = None) -> Quantity:
    """Stops, plus is more exposure."""
    return Quantity("stops", value, "stops", of)


def factor(stops: float) -> Quantity:
    """How many times the light is, so many stops apart."""
    return Quantity("factor", factor_from_stops(stops), "x")


def ratio(value: float) -> Quantity:
    """A lighting ratio of so much to one."""
    return Quantity("ratio", value, ":1")
