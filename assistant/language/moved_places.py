"""Places told as limits: "the dog won't sit nearer than 11 ft: what would it be there?"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_THERE = Pattern(r"\bthere\b|\b(?:at|from) that(?: distance| range)?\b|\bthat far\b|\bwhat (?:would|will|should|must) (?:it|that|the \w+) (?:be|read|take)\b", re.I)


def as_near_as_it_gets(facts: list[Fact], text: str) -> list[Fact]:
    """The nearest that somebody comes is where he is, where a reading from elsewhere or a guide number is told and "there" is asked."""
    near = [f for f in facts if f.quantity == "min_distance" and not f.bad]
    if len(near) != 1 or not _THERE.search(text, near[0].end):
        return facts
    told = [f.quantity for f in facts if f.quantity in ("distance", "aperture", "guide_number", "max_distance", "gap", "path")]
    if sorted(told) not in (["aperture", "distance"], ["guide_number"]):
        return facts
    return [replace(f, quantity="distance", cue="", of="") if f is near[0] else f for f in facts]
