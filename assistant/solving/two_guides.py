"""What lies between two guide numbers of one flash: bare and with something on, zoomed in and pulled back."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_LOSES = Pattern(r"\b(?:los[et]|los(?:es|ing|s)|costs?|costing|takes?|eats?|swallows?|absorbs?|sacrific\w*|giv\w+ (?:up|away)|weaker|dimmer|darker|less|fainter|down|drops?|fall\w*|steals?|robs?|forfeit\w*|lower|poorer)\b", re.I)
_GAINS = Pattern(r"\b(?:gain\w*|win|wins|winning|won|pick up|brighter|stronger|more|extra|add(?:s|ed)?|better|higher)\b", re.I)
_ASKED = Pattern(r"\b(?:what|how|which)\b", re.I)
_BY_THE_WAY = frozenset({"guide_number", "modifier", "camera_filter", "remark", "zoom", "focal_length", "film_speed", "power", "shutter", "sync"})


def solve(query: Query, ask: Ask) -> Solution | None:
    """Twice the logarithm of their ratio, since a guide number goes with the root of the light; lost or gained as the question says, else from the first to the second."""
    guides = query.all("guide_number")
    if ask.quantity not in ("stops", "factor") or len(guides) != 2 or {f.quantity for f in query.facts} - _BY_THE_WAY or len({f.of for f in guides}) != 1:
        return None
    if any(len({f.value for f in query.all(q)}) > 1 for q in ("film_speed", "power", "shutter")) or any(f.at_iso or f.at_power for f in guides if (f.at_iso, f.at_power) != (guides[0].at_iso, guides[0].at_power)):
        return None
    one, two = (f.value for f in guides)
    last = max((m.start() for m in _ASKED.finditer(query.text)), default=0)
    apart = abs(2 * math.log2(two / one))
    loses, gains = _LOSES.search(query.text, last) is not None, _GAINS.search(query.text, last) is not None
    value = -apart if loses and not gains else apart if gains and not loses else 2 * math.log2(two / one)
    stops, factor = marks.stops(value), marks.factor(abs(value))
    used = (*guides, *query.all("modifier"), *query.all("camera_filter"), *query.all("zoom"), *query.all("film_speed"), *query.all("power"), *query.all("shutter"), *query.all("sync"))
    return Solution(answers=(factor, stops) if ask.quantity == "factor" else (stops, factor), used=used, topic="losses", lead="Lost" if value < 0 and ask.quantity == "stops" else "",
                    notes=("A guide number goes with the square root of the light, so it counts twice.",))
