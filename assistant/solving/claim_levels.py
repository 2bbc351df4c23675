"""Whether a time or a power is enough to bring a light from one level to another: "is 1/30 slow enough to bring the room from three stops under at 1/125 to one under?"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.level_to_level import levels_told
from assistant.solving.solution import Solution

_AT_IT = Pattern(r"[^.?!,;\d]{0,40}\b(?:at|on|with) (?:an? )?$", re.I)
_ENOUGH = Pattern(r"\benough\b|\bat least\b|\bsuffic\w+", re.I)
_NEAR = 0.2


def claim_of_levels(query: Query) -> Solution | None:
    """The verdict, and the time or the power that is right; None unless two levels of one light and two values of one setting are told."""
    levels, times, powers = levels_told(query), query.all("shutter"), query.all("power")
    values = times if len(times) == 2 and not powers else powers if len(powers) == 2 and not times else []
    if levels is None or len(values) != 2 or min(f.value for f in values) <= 0:
        return None
    told, (first, wanted) = levels
    before = [f for f in values if f.start > told.end and _AT_IT.fullmatch(query.text, told.end, f.start)]
    if len(before) != 1:
        return None
    tried = next(f for f in values if f is not before[0])
    return _judged(query, before[0], tried, wanted - first)


def _judged(query: Query, before: Fact, tried: Fact, change: float) -> Solution:
    over = math.log2(tried.value / before.value) - change
    enough = _ENOUGH.search(query.text) is not None
    holds = (over >= -_NEAR if change > 0 else over <= _NEAR) if enough else abs(over) <= _NEAR
    right = (marks.shutter if tried.quantity == "shutter" else marks.power)(before.value * 2.0**change)
    lead = f"{'Yes' if holds else 'No'}. It takes {speak_stops(abs(change))} {'more' if change > 0 else 'less'}: {right.set or right.value}{' s' if tried.quantity == 'shutter' else ''}."
    return Solution(answers=(Quantity("claim", holds), right), used=query.facts, topic="claims", lead=lead)
