"""Signs that something else was measured: the whole where a part of it was asked, a scene where it was held against a rule."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import aperture_difference_stops
from assistant.solving.alike import asks_of_one, spoken_of
from assistant.solving.solution import Solution


def all_for_one(said: Query, whole: Query, found: Solution) -> bool:
    """"a silk and a net took f/16 to f/8: what does one of them take?", and what both took was found."""
    first = found.answers[0]
    read = [f for f in found.used if f.quantity == "aperture"]
    if first.quantity != "stops" or len(read) != 2 or not isinstance(first.value, float) or not asks_of_one(said.text):
        return False
    several = any(s.many > 1 for s in spoken_of(said.text)) or sum(f.quantity == "modifier" for f in said.facts) > 1
    return several and abs(abs(first.value) - abs(aperture_difference_stops(read[0].value, read[1].value))) < 0.01


_AGAINST_THE_RULE = Pattern(r"\b(?:under|below|over|above|than|short of|from|off|against|beyond)(?: what)?(?: the)? sunny.?(?:16|sixteen)\b", re.I)


def against_the_rule(said: Query, whole: Query, found: Solution) -> bool:
    """"f/5.6 and 1/125 in the shade: how many stops under sunny 16 is that?": two lights, and only one was looked at."""
    return not any(f.quantity in ("stops", "relation") for f in found.used) and _AGAINST_THE_RULE.search(said.text) is not None
