"""Places told as limits: "the dog won't sit nearer than 11 ft: what would it be there?"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_THERE = Pattern(r"\bthere\b|\b(?:at|from) that(?: distance| range)?\b|\bthat far\b|\bwhat (?:would|will|should|must) (?:it|that|the \w+) (?:be|read|take)\b", re.I)

_HOW_STRONG = Pattern(r"\b(?:what|which|how much) (?:power|fraction|output)\b|\bpower (?:do i need|is needed|does (?:it|that) (?:need|take))\b", re.I)


def as_near_as_it_gets(facts: list[Fact], text: str) -> list[Fact]:
    """The nearest that somebody comes is where he is, where a reading from elsewhere or a guide number is told and "there" is asked, or the power it takes."""
    near = [f for f in facts if f.quantity == "min_distance" and not f.bad]
    if len(near) != 1:
        return facts
    told = sorted(f.quantity for f in facts if f.quantity in ("distance", "aperture", "guide_number", "max_distance", "gap", "path"))
    there = told in (["aperture", "distance"], ["guide_number"]) and _THERE.search(text, near[0].end)
    if not there and not (told == ["aperture", "guide_number"] and _HOW_STRONG.search(text)):
        return facts
    return [replace(f, quantity="distance", cue="", of="") if f is near[0] else f for f in facts]
