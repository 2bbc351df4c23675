"""Where a light stood before it was moved, from where it stands now and what the move cost or gained (inverse square law)."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.flash import distance_for_falloff
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution
from assistant.units import speak_length

_BEFORE = Pattern(
    r"\b(?:where|how far(?: away| off| back)?|how (?:close|near)|(?:from |at )?(?:what|which) distance)\b[^?]{0,30}\b(?:before|had (?:it|the \w+|i|she|he) (?:been|stood|had)|did (?:it|the \w+) (?:stand|sit|start|hang|come from)|did i (?:move|start|bring|pull|push|begin)\b(?! to)|was (?:it|the \w+|he|she)(?: \w+)? (?:before|first|at first|originally|to start with))\b", re.I)
_LOST = Pattern(r"\b(?:cost|costs|lost|lose|loses|losing|less|darker|dimmer|down|dropped|fell|weaker)\b", re.I)
_GAINED = Pattern(r"\b(?:gain(?:ed|s)?|won|more|brighter|up|rose|stronger)\b", re.I)


def solve(query: Query, scene: Scene) -> Solution | None:
    """"moved to 6 m it lost two stops, from what distance did I move it": nearer by what was lost, farther by what was gained."""
    told = [f for f in query.facts if f.quantity in ("stops", "loss", "signed", "relation")]
    if scene.near is None or scene.far is not None or scene.gap is not None or len(told) != 1 or query.has("guide_number") or query.has("aperture") or not _BEFORE.search(query.text):
        return None
    around = query.text[max(0, told[0].start - 40) : told[0].end + 24]
    lost, gained = _LOST.search(around) is not None or told[0].quantity == "loss", _GAINED.search(around) is not None
    if lost == gained:
        return None
    place = distance_for_falloff(scene.near, abs(told[0].value) * (1 if lost else -1))
    unit = preferred_unit(query)
    return Solution(answers=(marks.distance(place, unit), marks.distance(abs(place - scene.near), unit, "move")), used=(*scene.used, told[0]), topic="falloff", lead=f"It stood {speak_length(place, unit)} from there.")
