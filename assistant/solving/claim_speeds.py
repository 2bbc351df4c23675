"""Speeds of film put up for a yes or a no: "24 DIN is twice as fast as 21 DIN"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_TIMES_AS_FAST = Pattern(r"\b(?P<times>twice|double|half|four times|three times|eight times)(?: as fast| the speed| as slow| as sensitive| faster)\b", re.I)


def claim_of_speeds(query: Query) -> Solution | None:
    """"24 DIN is twice as fast as 21 DIN": the speeds divided."""
    said, speeds = _TIMES_AS_FAST.search(query.text), query.all("film_speed")
    if said is None or len(speeds) != 2 or any(query.has(q) for q in ("guide_number", "aperture", "distance", "power")):
        return None
    ratio = speeds[0].value / speeds[1].value
    ratio = 1 / ratio if "slow" in said.group().lower() else ratio
    claimed = {"twice": 2.0, "double": 2.0, "half": 0.5, "three times": 3.0, "four times": 4.0, "eight times": 8.0}[said["times"].lower()]
    holds = abs(math.log2(ratio / claimed)) < 1 / 6
    lead = f"{'Yes' if holds else 'No'}. ISO {speeds[0].value:g} is {ratio:.3g} times ISO {speeds[1].value:g}: {speak_stops(abs(math.log2(ratio)))} {'more' if ratio > 1 else 'less'}."
    return Solution(lead=lead, answers=(Quantity("claim", holds), marks.stops(math.log2(ratio))), used=tuple(f for f in query.facts if f.origin == "said"), topic="claims")
