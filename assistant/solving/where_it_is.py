"""Where along the beam it is so many stops under or over: "the flash is right for somebody at 2 m. At what distance is it a stop under?"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.flash import distance_for_falloff
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution

_WHERE = Pattern(
    r"\b(?:at what distance|(?:at )?how far(?: away| off| out)?|where)\b(?: from (?:it|the (?:flash|light|lamp|head)))? (?:is|are|am|does|do|will|would) (?:it|they|he|she|i|we|somebody|someone|people|the light)\b"
    r"[^?]{0,24}\bstops? (?:too )?(?:(?P<less>under|down|darker|dark|less|dim)|over|up|brighter|bright|more|hot)\b", re.I)
_RIGHT = Pattern(r"\b(?:right|correct|spot on|perfect|good|exposed for)\b", re.I)
_PUTS = Pattern(r"\b(?:move|put|place|set|pull|push|bring|hang)\b", re.I)
_OTHERS = ("guide_number", "power", "gap", "loss", "move")


def solve(query: Query) -> Solution | None:
    """The place beyond (or before) the one where it is right, by the inverse square (physics.flash.distance_for_falloff); None where anything else bears on it."""
    said = _WHERE.search(query.text)
    if said is None or not _RIGHT.search(query.text[: said.start()]) or _PUTS.search(query.text) or any(query.has(q) for q in _OTHERS):
        return None
    places, steps = query.all("distance"), [f for f in query.facts if f.quantity in ("stops", "relation")]
    if len(places) != 1 or len(steps) != 1 or len(query.all("aperture")) > 1:
        return None
    less = steps[0].cue == "less" if steps[0].cue in ("less", "more") else bool(said["less"])
    stops = abs(steps[0].value) * (-1 if less else 1)
    value = distance_for_falloff(places[0].value, stops)
    return Solution(answers=(marks.distance(value, preferred_unit(query)),), used=(places[0], *steps, *query.all("aperture")), topic="falloff", notes=("The light falls with the square of the distance.",))
