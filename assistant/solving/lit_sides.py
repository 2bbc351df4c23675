"""The lighting ratio of two sides of a face, by what is read on each."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import aperture_difference_stops
from assistant.solving import marks
from assistant.solving.readings import told_of_all
from assistant.solving.solution import Solution

_SIDES = Pattern(r"\b(?:lit|bright|light|highlight|key|main|sunny|sunlit|shadow|dark|shaded|fill)(?:er)?[ -](?:side|cheek|half)\b", re.I)


def ratio(query: Query, key_to_fill: bool) -> Solution | None:
    """"lit side f/8, shadow side f/4", "key and fill together f/11, the fill f/5.6": what both lights give against the fill, which is the lighting ratio itself; or key to fill, where that is meant."""
    read = query.all("aperture")
    if len(read) != 2 or any(query.has(q) for q in ("distance", "power", "guide_number", "relation", "stops")) or "one_light" in query.cues and told_of_all(query) is None:
        return None
    summed = _PLUS_FILL.search(query.text) is not None and not any(f.of == "key" for f in read)  # where the key has a reading of its own, it is how the ratio is counted
    if told_of_all(query) is None and len({m.group().lower() for m in _SIDES.finditer(query.text)}) < 2 and not summed:
        return None
    apart = abs(aperture_difference_stops(read[0].value, read[1].value))
    if apart < 0.05:
        return None
    whole, alone = 2.0**apart, 2.0**apart - 1
    value, other = (alone, whole) if key_to_fill else (whole, alone)
    return Solution(answers=(marks.ratio(value), marks.stops(-apart, "shadow side")), used=(*read, *query.all("count"), *query.all("film_speed"), *query.all("shutter")), topic="relations",
                    notes=(f"The brighter reading is taken to be of key and fill together; the other way of counting calls it {other:.3g}:1.",))


_PLUS_FILL = Pattern(r"\b(?:key|main)(?: light)? ?(?:\+|plus) ?(?:the )?fill\b(?!\)? ?(?:to|against|over|:|versus|by)\b)", re.I)
