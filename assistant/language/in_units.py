"""What is asked by the unit that was named before: "I need that in stops: how many is it?"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Ask
from assistant.records import replace

_IS_THAT = Pattern(r"\s+(?:is|are|was|were|does|do|did|would|will|must|should) (?:it|that|this|they|those|these)\b(?! (?:pops?|flash\w*|heads?|lights?|frames?|sheets?|layers?)\b)", re.I)
_IN = Pattern(r"\b(?:in|into|as|by way of|the number of|number of|for|the) (?:(?:full|whole|f-|exact|plain) ?)?(stops|seconds|feet|metres|meters|watt[- ]?seconds|joules)\b", re.I)
_UNITS = {
    "stop": Ask("stops"), "seco": Ask("shutter"), "feet": Ask("distance", "", "ft"), "metr": Ask("distance", "", "m"), "mete": Ask("distance", "", "m"),
    "watt": Ask("energy", "", "J"), "joul": Ask("energy", "", "J"),
}


def named_before(text: str, start: int, end: int) -> Ask | None:
    """What a "how many" from `start` to `end` counts, where "is it" follows and a unit was named before.

    >>> named_before("I need it in stops, how many is it?", 20, 28).quantity
    'stops'
    """
    if _IS_THAT.match(text, end) is None:
        return None
    named = [found[1] for found in _IN.finditer(text, 0, start)]
    return replace(_UNITS[named[-1].lower()[:4]], start=start) if named else None
