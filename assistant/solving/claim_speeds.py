"""Speeds of film put up for a yes or a no: "24 DIN is twice as fast as 21 DIN"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_TIMES_AS_FAST = Pattern(r"\b(?P<times>twice|double|half|four times|three times|eight times)(?: as fast| the speed| as slow| as sensitive| faster)\b", re.I)


_SAME_SPEED = Pattern(r"\b(?:the |a )?same (?:film )?(?:speed|sensitivity|thing|as)\b|\bequal(?:s| to)?\b|\bequivalent\b|\bmatch(?:es)?\b|\bcorrespond\w*\b", re.I)


def _the_same(query: Query, speeds: list[Fact]) -> Solution:
    """"ISO 400 in the camera and the dial at 27 DIN, is that the same speed?": the one scale against the other (ISO 5800, from memory)."""
    apart = math.log2(speeds[0].value / speeds[1].value)
    holds = abs(apart) < 1 / 6
    lead = f"{'Yes' if holds else 'No'}. {speeds[0].said.strip()} and {speeds[1].said.strip()} are {'one speed' if holds else f'{speak_stops(abs(apart))} apart'}."
    return Solution(lead=lead, answers=(Quantity("claim", holds), *(() if holds else (*_right(speeds), marks.stops(apart)))), used=tuple(f for f in query.facts if f.origin == "said"), topic="claims")


_WEIGHED = Pattern(r"\b(?:fast\w*|slow\w*|quick\w*|sensitiv\w*|stops?|times|more|less|or|better|than)\b", re.I)


def _on_two_scales(query: Query, speeds: list[Fact]) -> bool:
    """"so 400 is 27 DIN?": a figure of each scale and nothing else, and neither weighed against the other."""
    return query.claim and {f.quantity for f in query.facts} <= {"film_speed", "remark"} and len({f.unit for f in speeds}) == len(speeds) and _WEIGHED.search(query.text) is None


def _right(speeds: list[Fact]) -> tuple[Quantity, ...]:
    """What the film in degrees is in ISO, which is the figure that is right beside another one."""
    degrees = [f for f in speeds if f.unit == "DIN"]
    return (marks.film_speed(degrees[0].value),) if len(degrees) == 1 else ()


def claim_of_speeds(query: Query) -> Solution | None:
    """"24 DIN is twice as fast as 21 DIN": the speeds divided."""
    said, speeds = _TIMES_AS_FAST.search(query.text), query.all("film_speed")
    if said is None and len(speeds) == 2 and any(f.unit for f in speeds) and (_SAME_SPEED.search(query.text) or _on_two_scales(query, speeds)):
        return _the_same(query, speeds)
    if said is None or len(speeds) != 2 or any(query.has(q) for q in ("guide_number", "aperture", "distance", "power")):
        return None
    ratio = speeds[0].value / speeds[1].value
    ratio = 1 / ratio if "slow" in said.group().lower() else ratio
    claimed = {"twice": 2.0, "double": 2.0, "half": 0.5, "three times": 3.0, "four times": 4.0, "eight times": 8.0}[said["times"].lower()]
    holds = abs(math.log2(ratio / claimed)) < 1 / 6
    lead = f"{'Yes' if holds else 'No'}. ISO {speeds[0].value:g} is {ratio:.3g} times ISO {speeds[1].value:g}: {speak_stops(abs(math.log2(ratio)))} {'more' if ratio > 1 else 'less'}."
    return Solution(lead=lead, answers=(Quantity("claim", holds), marks.stops(math.log2(ratio))), used=tuple(f for f in query.facts if f.origin == "said"), topic="claims")
