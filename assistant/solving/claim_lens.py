"""Claims about sharpness that need no lens: what a hyperfocal distance keeps sharp, and how much depth is said to be there."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.solving.focus import solve as of_sharpness
from assistant.solving.sharp_limits import length
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

_NEAR_ENOUGH = 0.02
"""Part of a limit by which what is said may be off."""


def claim_of_hyperfocal(query: Query) -> Solution | None:
    """"the hyperfocal is 12 ft and I focus there: all is sharp from 6 ft": sharp from half of it, to infinity."""
    focus, limits = query.last("focus_distance"), query.all("sharp_limit")
    near = [f for f in limits if not math.isinf(f.value)]
    if "hyperfocal" not in query.cues or focus is None or focus.origin != "said" or len(near) > 1 or not limits or query.has("aperture"):
        return None
    half = focus.value / 2
    holds = not near or near[0].value >= half * (1 - _NEAR_ENOUGH)
    unit = focus.unit if focus.unit in LENGTH else "m"
    return Solution(answers=(Quantity("claim", holds), length("near_limit", half, unit)), used=(focus, *limits), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. Focused at the hyperfocal distance all is sharp from half of it, {speak_length(half, unit)}, to infinity.")


_SO_DEEP = Pattern(r"\b(?P<many>an?|one|two|three|half an?|\d+(?:\.\d+)?) (?:good |full |whole |clear |solid )?(?P<unit>met(?:re|er)s?|m|feet|foot|ft|cm|centimet(?:re|er)s?|inch(?:es)?)\b(?: and a half)? (?:of|for) (?:depth(?: of (?:field|focus|sharpness))?|dof|sharpness)\b")
_MANY = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "half a": 0.5, "half an": 0.5}
_CLOSE = 0.15
"""Part by which a depth that is said as round as "a metre" may be off."""


def claim_of_depth(query: Query) -> Solution | None:
    """"a 135 at f/8 focused on 4 m gives a good metre of depth of field": against the depth there is."""
    said = _SO_DEEP.search(query.text.lower())
    if said is None or "and a half" in said.group():
        return None
    unit = {"m": "m", "f": "ft", "c": "cm", "i": "in"}[said["unit"][0]]
    claimed = (_MANY[said["many"]] if said["many"] in _MANY else float(said["many"])) * LENGTH[unit]
    facts = tuple(f for f in query.facts if not said.start() <= f.start < said.end())
    found = of_sharpness(replace(query.with_facts(facts), asks=(Ask("depth_of_field", "", unit),), claim=False))
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return found
    right = found.answers[0].value * LENGTH[unit]
    holds = abs(claimed - right) <= _CLOSE * right
    there = "without end" if math.isinf(right) else speak_length(right, unit)
    return replace(found, lead=f"{'Yes' if holds else 'No'}. The depth of field there is {there}.", answers=(Quantity("claim", holds), *found.answers), used=(*found.used, *(f for f in query.facts if f not in facts)), topic="claims")


_DEEPER = Pattern(r"\bf ?/? ?(?P<one>\d+(?:\.\d+)?)\b[^.?!\d]{0,40}\b(?P<way>more|deeper|greater|less|shallower)\b[^.?!\d]{0,30}\b(?:than|over|as against)\b[^.?!\d]{0,10}\bf ?/? ?(?P<two>\d+(?:\.\d+)?)")


def claim_of_deeper(query: Query) -> Solution | None:
    """"f/16 gives more depth of field than f/4": the larger f-number is the deeper one, whatever the lens."""
    said = _DEEPER.search(query.text.lower())
    if said is None or "depth_of_field" not in query.cues or query.has("focal_length") or float(said["one"]) == float(said["two"]):
        return None
    deeper = float(said["one"]) > float(said["two"])
    denied = " not " in query.text.lower() or "n't " in said.group()
    holds = (deeper is (said["way"] in ("more", "deeper", "greater"))) is not denied
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. A larger f-number is a smaller opening and gives more depth of field.")
