"""Whether so many flashes of a strobe fit into the time that the shutter is open."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.solution import Solution, needs

FIT_IN = Pattern(r"\bfit\b|\b(?:get|catch|record|have|see)(?: me)? (?:all|them all|every one|the (?:lot|whole)|all of them)\b|\b(?:long|open) enough\b|\benough (?:time|for)\b", re.I)


def solve(query: Query) -> Solution | None:
    """"five flashes at ten a second, do they fit in a whole second?": from the first flash to the last."""
    rate = query.last("frequency")
    flashes = next((f for f in query.facts if f.quantity == "count" and f.value > 1), None)
    if rate is None or flashes is None or not query.claim or not FIT_IN.search(query.text):
        return None
    opened = query.last("shutter") or query.last("time") or query.last("interval")
    if opened is None:
        return needs(("shutter",), "I need the time the shutter is open.", (flashes, rate), "time")
    span = (flashes.value - 1) / rate.value
    return Solution(answers=(Quantity("claim", span <= opened.value * (1 + 1e-9)), Quantity("duration", span, "s")), used=(flashes, rate, opened), topic="time", working=(f"({flashes.value:g} - 1) / {rate.value:g} a second",),
                    notes=("From the first flash to the last, the first as the shutter opens.",))
