"""A guide number told beside a question that goes by the distances alone: nothing of it bears on the answer (contract 22).

"guide number 24 metres, the light's at 3 m and the exposure is right: at 4.5 m how many stops do I lose?" · "guide
number 110, f/11, so ten feet: between what distances may they stray within half a stop?" · "guide number 14 m, he is 2.5 m
from flash and camera, so f/5.6: how far back is it sharp?"
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving.solution import Solution
from assistant.units import LENGTH

_SETTINGS = frozenset({"aperture", "film_speed", "power", "power_down", "loss", "modifier", "nd", "filter_loss", "factor", "energy", "t_number"})
_AGREES = 0.06
"""How far a distance that was worked out before may be off the quotient, as a part of it: a tape is read to a few inches."""


_OF_ITS_FLASH = Pattern(r"\b(?:flash|lamp|light|head|gun)\b[^.;?!\d]{0,20}$", re.I)
"""Before a power that is told with its flash; one that comes by itself after the question changes something, and is not passed over."""


def bears_not(guide: Fact, query: Query, solution: Solution) -> bool:
    """Whether the answer is the same for every guide number, or goes by a distance that this one was worked out to; of a depth, the flash's own distance too."""
    if guide.quantity == "distance" and solution.topic == "focus":
        guides = query.all("guide_number")
        return len(guides) == 1 and _is_from_there(guides[0], guide, query)
    if guide.quantity == "power":
        return solution.topic == "focus" and not query.has("guide_number") and _OF_ITS_FLASH.search(query.text[: guide.start]) is not None
    if guide.quantity != "guide_number" or not solution.answers:
        return False
    if solution.topic == "focus":  # the depth is that of the f-number told, which this one was worked out to
        focus = query.all("distance") or [f for f in solution.used if f.quantity == "focus_distance"]
        return len({f.value for f in focus}) == 1 and _is_from_there(guide, focus[0], query)
    if solution.topic != "falloff":
        return False
    places = [f for f in solution.used if f.quantity == "distance"]
    first = solution.answers[0].quantity
    if first == "stops" and len(places) >= 2 and not any(f.quantity in _SETTINGS for f in query.facts):
        return True  # from one place to another
    return first in ("stops", "distance") and len(places) == 1 and _is_from_there(guide, places[0], query)


def _is_from_there(guide: Fact, place: Fact, query: Query) -> bool:
    """"guide number 110, f/11, so ten feet": by these the light is right where it stands."""
    stops = {f.value for f in query.facts if f.quantity == "aperture"}
    if len(stops) != 1 or any(f.quantity in _SETTINGS - {"aperture"} for f in query.facts if f.value not in (1.0, 100.0)):
        return False
    unit = guide.unit or place.unit
    return unit in LENGTH and abs(guide.value / stops.pop() * LENGTH[unit] / place.value - 1) < _AGREES
