"""The grey filter, or the scrim, that brings the light to a part of itself: "which ND cuts it to an eighth?".

A part 1/n of the light is log2 n stops, and a filter's strength is a positive number of stops, as it is sold (contract).
"""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_CUTS_TO = Pattern(r"\b(?:cut|reduc|bring|knock|drop|tak|hold|dim|weaken|get|pull|turn)\w*\b[^.?!]{0,40}\b(?:down )?(?:to|into) (?:only |just |about |exactly )?(?:an? |one )?$", re.I)
_STRENGTH = Pattern(r"\b(?:what|which|how (?:strong|dense|dark|many stops))\b[^.?!]*\b(?:nd|neutral|gr[ae]y|filter|density)\b", re.I)


def solve(query: Query) -> Solution | None:
    """The strength in stops of what leaves the told part of the light; None for anything else."""
    parts = query.all("power")
    if query.claim or len(parts) != 1 or not 0 < parts[0].value < 1 or {f.quantity for f in query.facts} - {"power", "camera_filter", "remark", "place"}:
        return None
    if not _CUTS_TO.search(query.text[: parts[0].start]) or "power" in parts[0].said or not _STRENGTH.search(query.text):
        return None
    stops = -math.log2(parts[0].value)
    return Solution(answers=(marks.stops(stops), Quantity("factor", 1 / parts[0].value, "x")), used=query.facts, topic="losses", working=(f"log2 of {1 / parts[0].value:g}",))
