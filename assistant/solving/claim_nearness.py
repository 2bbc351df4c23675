"""How far a claimed figure is from the right one, and how near it must come to count as right."""

from __future__ import annotations

import math
from collections.abc import Iterable

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.scales import aperture_difference_stops
from assistant.solving.claim_reading import LENGTH_OF
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain
from assistant.units import LENGTH

_WITHIN = Pattern(r"\bwithin (?:about |roughly )?(?P<many>half an?|an? half|an? third(?: of an?)?|an? quarter(?: of an?)?|two thirds(?: of an?)?|an?|one|two)(?: full| whole)? stops?\b(?= of (?:right|correct|it\b|that\b|exact\w*|spot on|the (?:right|correct|true|exact)|f/|what)|\W*$)")
_STOPS = {"half": 0.5, "third": 1 / 3, "quarter": 0.25, "thirds": 2 / 3, "two": 2.0}
_BY_THE_RULE = 0.4
"""The sunny-16 rule, f/16 at one over the film speed, is a third of a stop from the EV 15 that stands for it."""


def nearness(text: str, assumed: Iterable[Assumed]) -> float:
    """Stops within which a figure counts as right: as said, "within half a stop", else a third.

    >>> nearness("would f/8 be within half a stop of right", ())
    0.51
    """
    said = _WITHIN.search(plain(text))
    if said is not None:
        return next((stops for word, stops in _STOPS.items() if word in said["many"].split()), 1.0) + 0.01
    return _BY_THE_RULE if any(a.quantity == "exposure_value" for a in assumed) else TOLERANCE


WEIGHT = {"aperture": -2.0, "distance": 2.0, "film_speed": 1.0, "power": 1.0, "guide_number": 2.0, "count": 1.0, "stops": 1.0, "ratio": 2.0, "energy": 1.0, "shutter": 1.0, "factor": 1.0,
          "exposure_value": 1.0, "nd": 1.0}
"""Stops for each doubling of a claimed value."""


def stops_off(fact: Fact, right: Quantity) -> float | None:
    """Stops between the claimed value and the right one; plus is a larger figure."""
    if not isinstance(right.value, (int, float)) or isinstance(right.value, bool):
        return None
    value, exact = fact.value, float(right.value)
    if fact.quantity == "distance":
        exact *= LENGTH.get(right.unit, 1.0)
    if fact.quantity == "guide_number" and fact.unit and fact.unit != right.unit:
        value *= LENGTH_OF.get(fact.unit, 1.0) / LENGTH_OF.get(right.unit, 1.0)
    if fact.quantity == "stops":
        return abs(value) - abs(exact)
    if value <= 0 or exact <= 0:
        return None
    if fact.quantity == "aperture":
        return aperture_difference_stops(value, exact)
    return abs(WEIGHT[fact.quantity]) * math.log2(value / exact)
