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
_WAS_ITS_PLACE = Pattern(r"\b(?:what|which) (?:was|had been) (?:its|the|my|the \w+'s) (?:old |first |former |earlier |previous |original )?(?:distance|place)\b|\b(?:from )?(?:where|(?:what|which) (?:distance|place)|how far(?: away| off)?) (?:did|had|has) (?:it|the \w+|i|he|she|they) (?:come|been|move|brought|start)|\b(?:old|first|former|earlier|previous|original|starting) (?:distance|place|position|spot)\b", re.I)
_LOST = Pattern(r"\b(?:cost|costs|lost|lose|loses|losing|less|darker|dimmer|down|dropped|fell|weaker)\b", re.I)
_GAINED = Pattern(r"\b(?:gain(?:ed|s)?|won|more|brighter|up|rose|stronger)\b", re.I)


def solve(query: Query, scene: Scene) -> Solution | None:
    """"moved to 6 m it lost two stops, from what distance did I move it": nearer by what was lost, farther by what was gained."""
    if scene.near is None or scene.far is not None or scene.gap is not None or not (_BEFORE.search(query.text) or _WAS_ITS_PLACE.search(query.text)):
        return None
    by_readings = _by_readings(query, scene)
    if by_readings is not None:
        return by_readings
    told = [f for f in query.facts if f.quantity in ("stops", "loss", "signed", "relation")]
    if len(told) != 1 or query.has("guide_number") or query.has("aperture"):
        return None
    around = query.text[max(0, told[0].start - 40) : told[0].end + 24]
    lost, gained = _LOST.search(around) is not None or told[0].quantity == "loss", _GAINED.search(around) is not None
    if lost == gained:
        return None
    place = distance_for_falloff(scene.near, abs(told[0].value) * (1 if lost else -1))
    unit = preferred_unit(query)
    return Solution(answers=(marks.distance(place, unit), marks.distance(abs(place - scene.near), unit, "move")), used=(*scene.used, told[0]), topic="falloff", lead=f"It stood {speak_length(place, unit)} from there.")


_FROM_ONE_TO_ANOTHER = Pattern(r"\b(?:fell|fall\w*|dropped|went|goes|rose|climbed|sank|changed|came|moved|jumped)(?: \w+)? (?:down |up )?from\s*$", re.I)


_USED_TO = Pattern(r"\b(?:used to (?:give|read|be|meter|show)|had (?:given|read|been|metered|shown)|(?:gave|read|metered|showed) (?:me )?(?:at first|before|originally|earlier))(?: (?:me|at|about))*\s*$", re.I)


def _by_readings(query: Query, scene: Scene) -> Solution | None:
    """"I pulled it back to 12 feet and the reading fell from f/11 to f/8": it stood as much nearer as the f-number was larger."""
    read = query.all("aperture")
    was = [f for f in read if _USED_TO.search(query.text[: f.start])]
    if len(read) == 2 and len(was) == 1 and scene.near is not None and not any(query.has(q) for q in ("aperture_range", "guide_number", "stops", "power", "loss")):
        now = next(f for f in read if f is not was[0])
        place, unit = scene.near * now.value / was[0].value, preferred_unit(query)
        return Solution(answers=(marks.distance(place, unit), marks.distance(abs(place - scene.near), unit, "move")), used=(*scene.used, *read), topic="falloff", lead=f"It stood {speak_length(place, unit)} from there.")
    pair = query.last("aperture_range")
    if pair is None or scene.near is None or pair.value <= 0 or pair.other <= 0 or not _FROM_ONE_TO_ANOTHER.search(query.text[: pair.start]) or any(query.has(q) for q in ("aperture", "guide_number", "stops", "power", "loss")):
        return None
    place, unit = scene.near * pair.other / pair.value, preferred_unit(query)
    return Solution(answers=(marks.distance(place, unit), marks.distance(abs(place - scene.near), unit, "move")), used=(*scene.used, pair), topic="falloff", lead=f"It stood {speak_length(place, unit)} from there.")
