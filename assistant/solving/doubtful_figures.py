"""Figures that no photograph needs: an f-number of no lens, a place a kilometre off, a guide number of nothing."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.choices import options
from assistant.solving.solution import Solution
from assistant.units import LENGTH

WIDEST, SMALLEST = 0.7, 128.0
"""No lens opens wider or closes further."""

_TOO_MANY = 500.0
"""Times full power: nobody asks a flash for nine stops more than it has."""
_RECKONED_FROM = frozenset({"aperture", "guide_number", "film_speed", "exposure_value", "aperture_range", "t_number", "focal_length"})
_NATURAL = {
    # from and to what is met with in the trade, wide of it on both sides (common practice, no source); lengths in metres
    "aperture": (WIDEST, SMALLEST), "distance": (0.00005, 200.0), "power": (1 / 1100, _TOO_MANY), "shutter": (1 / 10_000, 20_000.0), "film_speed": (0.5, 30_000.0),
    "guide_number": (2.0, 900.0), "stops": (-14.0, 14.0), "ratio": (1 / 70, 70.0), "energy": (0.4, 15_000.0), "factor": (0.0, 5_000.0), "magnification": (0.0005, 40.0), "hyperfocal": (0.05, 1e6),
}

_ODD, _PINHOLE = 8.0, 16.0
_FAR_CLOSED = 3.0
"""Times the smallest f-number of any lens, where depth is asked for: at an f/400 nothing is sharp, and a length was of another thing."""


def beyond_nature(said: Query, whole: Query, found: Solution) -> bool:
    """An f-number of no lens, a place a kilometre off, a power that no flash has: a number was of another thing."""
    first = found.answers[0]
    least, most = _NATURAL.get(first.quantity, (-math.inf, math.inf))
    if not isinstance(first.value, float) or not math.isfinite(first.value):
        return False
    value = first.value * (LENGTH.get(first.unit, 1.0) if first.quantity == "distance" else 1.0)
    of_nothing = first.quantity == "aperture" and not any(f.quantity in _RECKONED_FROM for f in whole.facts)  # no f-number comes of powers and distances alone
    if first.quantity != "stops" and said.asks and not said.unknown and not of_nothing:  # every word of it understood: it may be odd, not absurd
        least, most = least / _ODD, most * (_FAR_CLOSED if found.topic == "focus" else 1.0 if first.quantity == "power" else _ODD)
    pinhole = first.quantity == "aperture" and whole.has("pupil")  # a hole with no lens in it is smaller than any ring goes
    return not least <= value <= (most * _PINHOLE if pinhole else most)


_ABOVE_NOTHING = frozenset({"guide_number", "distance", "power", "film_speed", "aperture", "shutter", "energy", "duration", "depth_of_field", "coverage", "magnification"})


def is_nothing(said: Query, whole: Query, found: Solution) -> bool:
    """A guide number of nothing, or a figure that is none."""
    first = found.answers[0]
    figure = isinstance(first.value, (int, float)) and not isinstance(first.value, bool)
    return figure and (math.isnan(float(first.value)) or first.quantity in _ABOVE_NOTHING and float(first.value) <= 0 and first.of != "move")


_QUARTER = Pattern(r"\band 1/(?:4|8|16)\b")


def quarter_of_a_mark(said: Query, whole: Query, found: Solution) -> bool:
    """"f/8 and 1/4", taken for a quarter of a stop past f/8: beside a shutter time it is one."""
    return any(f.quantity == "aperture" and _QUARTER.search(f.said) for f in whole.facts) and any(f.quantity == "shutter" for f in whole.facts)


_ALSO_ANSWERS: dict[str, frozenset[str]] = {
    # what is asked, and what else may be said to it; everything else is no answer to it
    "aperture": frozenset({"power", "shutter", "film_speed"}), "coverage": frozenset({"distance"}), "depth_of_field": frozenset({"aperture"}), "distance": frozenset({"factor", "near_limit", "far_limit"}), "duration": frozenset({"shutter"}),
    "extension": frozenset({"distance"}), "factor": frozenset({"distance", "stops"}), "focus_distance": frozenset({"distance", "hyperfocal"}), "freeze": frozenset({"claim"}), "latitude": frozenset({"aperture", "stops", "claim"}), "nd": frozenset({"stops", "factor"}),
    "near_limit": frozenset({"distance", "far_limit"}), "far_limit": frozenset({"distance", "near_limit"}), "sharp": frozenset({"claim", "near_limit", "far_limit"}), "shutter": frozenset({"stops", "duration"}), "speed": frozenset({"film_speed", "shutter"}),
    "stops": frozenset({"aperture", "factor"}), "subject_distance": frozenset({"distance"}), "time": frozenset({"shutter", "duration"}), "interval": frozenset({"duration", "shutter"}),
}
_EITHER_WAY = frozenset({"claim", "count"})
"""Said to a question of any kind. A film speed is, where two are told to choose from."""


_WHICH_IS = Pattern(r"\bwhich\b[^.?!]{0,40}\b(?:brighter|darker|dimmer|stronger|weaker)\b", re.I)


def no_one_of_them(said: Query, whole: Query, found: Solution) -> bool:
    """Asked which of two is brighter or darker, and found an aperture that neither of them is."""
    told = [f.value for f in said.facts if f.quantity == "aperture"]
    return len(set(told)) > 1 and _WHICH_IS.search(said.text) is not None and not any(a.quantity == "aperture" and a.value in told for a in found.answers)


def another_quantity(said: Query, whole: Query, found: Solution) -> bool:
    """Stops asked and a power found: whatever it was found from, it is not what was asked."""
    first = found.answers[0].quantity
    asked = {a.quantity for a in whole.asks}
    if first == "film_speed" and len({f.value for f in whole.facts if f.quantity == "film_speed"}) > 1 or first == options(whole)[0]:
        return False  # of two that are told to choose from, one was chosen
    if first == "stops" and found.topic == "losses" and "loss" in whole.cues:
        return False  # "what does it cost" names no quantity
    return bool(asked) and found.topic not in ("time", "which_of_two") and first not in asked and first not in _EITHER_WAY and not any(first in _ALSO_ANSWERS.get(a, ()) for a in asked)


def only_said_back(said: Query, whole: Query, found: Solution) -> bool:
    """"the guide number comes down to 12 metres … how far from it?", and 12 m: the only length told, found as the place, was of another thing."""
    first, lengths = found.answers[0], [f for f in said.facts if f.quantity == "distance" and not f.bad]
    if any(f.quantity in ("stops", "relation", "loss") for f in found.used):
        return False  # two stops less from 3 m: 3 m more
    return not first.of and isinstance(first.value, float) and len(lengths) == 1 and not lengths[0].of and math.isclose(lengths[0].value, first.value * LENGTH.get(first.unit, 1.0), rel_tol=1e-6)


def behind_the_back(said: Query, whole: Query, found: Solution) -> bool:
    """A front row that is farther from the light than the back row: the places were not those of rows."""
    front = [f.value for f in found.used if f.quantity == "distance" and f.of == "front"]
    back = [f.value for f in found.used if f.quantity == "distance" and f.of == "back"]
    return bool(front and back) and max(front) > min(back)
