"""The share of the light that is left at so many times the distance: one over the square."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_FRACTION = Pattern(r"\b(?:what|which|how large a|how big a|how much of a) (?:fraction|share|part|proportion|percentage|per ?cent|portion)\b|\bhow many per ?cent\b|\bhow much of (?:the|my|its) light\b|\bby what factor\b", re.I)


def asked(query: Query) -> bool:
    """Whether a share is asked, and not stops."""
    return _FRACTION.search(query.text) is not None


def left(query: Query, times: float) -> Solution:
    """The share at `times` the distance (more than 0), and the same in stops; the inverse square law."""
    part = 1 / times**2
    lead = f"{part:.3g} of the light, one part in {times**2:g}." if times > 1 else f"{part:g} times the light."
    return Solution(answers=(Quantity("factor", part, "x"), marks.stops(falloff_stops(1.0, times))), used=tuple(query.all("times")), topic="falloff", lead=lead, working=(f"1 / {times:g} squared",))
