"""The guide number at another shutter time, in high-speed sync: "at 1/250 it is 20 metres, what is it at 1/1000?"."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.lights import guide_unit
from assistant.solving.solution import Solution

_EACH_HALVING = Pattern(r"[^.?!\d]{0,24}\b(?:each|every|per|for each|for every)\b[^.?!]{0,40}\b(?:halv\w*|half|doubl\w*|shutter step|step of the shutter)\b", re.I)
"""After a loss that comes again with each halving of the time: "loses one stop every time the shutter time is halved"."""
_HALVING_TAKES = Pattern(r"\b(?:each|every) (?:halving|doubling|step|time)\b[^.?!\d]{0,48}\b(?:costs?|takes?|loses?|eats?|robs?)(?: (?:me|us|it|the flash|about))* $", re.I)


def at_the_time(query: Query, fact: Fact) -> Solution | None:
    """The guide number at the second of two times, by what each halving of the time takes: a stop, where nothing else is said."""
    each = [f for f in (*query.all("loss"), *query.all("stops")) if _EACH_HALVING.match(query.text, f.end) or _HALVING_TAKES.search(query.text, 0, f.start)]
    times = query.all("shutter")
    if "hss" not in query.cues or len(times) != 2 or len(each) > 1 or any(f.value <= 0 for f in times):
        return None
    by_stop = each[0].value if each else 1.0
    value = fact.value * math.sqrt(times[1].value / times[0].value) ** by_stop
    return Solution(answers=(marks.guide_number(value, guide_unit(query, fact, "")[0]),), used=(fact, *times, *each), topic="conversions",
                    notes=(f"In high-speed sync each halving of the time takes {'a stop' if by_stop == 1.0 else speak_stops(by_stop)}, and the guide number goes with its root.",))
