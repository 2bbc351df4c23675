"""Two readings taken bare, and something hung on one of the lights since: what that one reads now."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops

_SINCE = Pattern(r"\b(?:then|now|after (?:that|which)|next|since)\b[^.?!;]{0,40}\b(?:clip|put|add|hang|hung|slip|fit|tape|drape|mount|pull|stretch|attach|gel|cover)\w*\b|\bi (?:then |now |have since )?(?:clip|put|add|hang|slip|fit|tape|drape|mount|pull|stretch|attach)\w*\b", re.I)
_LOSSES = ("loss", "filter_loss")


def hung_since(query: Query) -> Query:
    """The query with each reading lowered by what was hung on that light after it was taken; as it was where nothing was.

    A light reads a stop lower for each stop that is lost before it, so its f-number is divided by the root of two.
    """
    lost = [f for f in query.facts if f.quantity in _LOSSES and f.of and f.value > 0]
    if len(lost) != 1 or not _SINCE.search(query.text[: lost[0].start]):
        return query
    read = [f for f in query.all("aperture") if f.of == lost[0].of and f.end <= lost[0].start]
    if len(read) != 1 or len(query.all("aperture")) != 2:
        return query
    stops = -aperture_difference_stops(1.0, read[0].value) - lost[0].value  # down the ring from f/1, counted by the marks
    now = replace(read[0], value=2.0 ** (stops / 2))
    return query.with_facts(now if f is read[0] else f for f in query.facts if f is not lost[0] and not (f.quantity == "modifier" and f.of == lost[0].of))
