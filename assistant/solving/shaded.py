"""Daylight through a silk, a scrim or a net hung over the subject: what takes from the light and not from the lens.

"The sun reads f/16 at 1/125, a silk over her takes a stop and a half: what aperture?" · "exposed for her under it,
how far over is the lawn behind?" · "f/16 in the open and f/8 under the net, what does it take?"
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.solution import Solution
from assistant.solving.two_readings import more_light, readings

_CLOTHS = frozenset({"scrim", "diffuser", "tissue"})
_A_LAMP = Pattern(r"\b(?:flash\w*|strobe|gun|head|lamp|monolight|bulb|key|fill|softbox|umbrella)\b", re.I)
_UNDER_IT = r"\b(?:under|beneath|through|behind|below|inside) (?:it|(?:the|a|my|that|this) (?:[\w-]+ )?(?:silk|scrim|net|muslin|diffus\w+|cloth|sheet|butterfly|frame))\b"
_UNDER = Pattern(_UNDER_IT, re.I)
_ENDS = Pattern(r"[.?!;](?=\s|$)")
_OFF = Pattern(r"\b(?:without|take (?:it|the \w+) (?:away|down|off)|comes? (?:off|down)|took (?:it|the \w+) (?:away|down|off)|remov\w+|gone|not (?:under|covered|shaded))\b", re.I)
_OUTSIDE = r"(?:background|backdrop|lawn|rest|world|wall|street|field|beach|trees?|hills?|house|view|landscape|crowd|people|grass|sand|sea|scene|unshaded \w+|open (?:sun|ground|air)|everything (?:else|behind)|what is (?:behind|beyond))"
_HOW_FAR_OUTSIDE = Pattern(rf"\bhow (?:many stops|much|far)\b[^?]{{0,30}}\b(?:over|brighter|hotter|too (?:bright|hot)|above)\b[^?]{{0,40}}\b{_OUTSIDE}\b|\bhow (?:many stops|much|far)\b[^?]{{0,30}}\b{_OUTSIDE}\b[^?]{{0,40}}\b(?:over|brighter|hotter|too (?:bright|hot)|above)\b|\bby how (?:many stops|much)\b[^?]{{0,24}}\b{_OUTSIDE}\b[^?]{{0,24}}\b(?:over\w*|brighter|hotter)\b", re.I)
_COSTS = Pattern(r"\b(?:cost|costs|take|takes|eat|eats|lose|loses|cut|cuts|hold(?:s)? back|absorb|absorbs|losing|costing|taking)\b", re.I)
_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark", "place", "film_speed"})


def solve(query: Query, ask: Ask) -> Solution | None:
    """The answer for daylight with such a cloth in it; None where there is none, or where it hangs before a flash."""
    cloth = [f for f in query.facts if f.unit in _CLOTHS and f.quantity in ("loss", "modifier")]
    if not cloth or ask.quantity != "stops" or not _is_of_daylight(query):
        return None
    lost = [f for f in cloth if f.quantity == "loss"]
    return _outside(query, lost) if lost else _taken(query)


def _is_of_daylight(query: Query) -> bool:
    return not any(query.has(q) for q in ("guide_number", "power", "distance")) and _A_LAMP.search(query.text) is None


def _taken(query: Query) -> Solution | None:
    """"f/16 in the open and f/8 under the net, how many stops does the net take": a loss."""
    pair = readings(query)
    if pair is None or not _COSTS.search(query.text) or {f.quantity for f in query.facts} - _BY_THE_WAY - {"aperture", "shutter", "exposure_value"}:
        return None
    return Solution(lead="It takes", answers=(marks.stops(-abs(more_light(*pair))),), used=(*pair[0], *pair[1], *query.all("film_speed")), topic="ambient")


def _outside(query: Query, lost: list[Fact]) -> Solution | None:
    """"exposed for her under the silk, how far over is the lawn": by what the silk takes."""
    if not _HOW_FAR_OUTSIDE.search(query.text) or {f.quantity for f in query.facts} - _BY_THE_WAY - {"aperture", "shutter", "exposure_value", "loss"} or len(query.all("aperture")) > 1 or len(query.all("loss")) != len(lost):
        return None
    value = sum(f.value for f in lost)
    return Solution(answers=(marks.stops(value, "background"),), used=(*lost, *query.all("aperture"), *query.all("shutter"), *query.all("exposure_value"), *query.all("film_speed")), topic="ambient",
                    notes=("What is not under the cloth keeps all its light.",))


def _sentence(text: str, place: int) -> str:
    """The sentence in which something was said."""
    ends = [m.end() for m in _ENDS.finditer(text)]
    return text[max((e for e in ends if e <= place), default=0) : min((e for e in ends if e > place), default=len(text))]


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """A setting for what is under the cloth, from a reading in the open; back again from one taken under it: the cloth as a loss of the light."""
    lost = [f for f in query.facts if f.unit in _CLOTHS and f.quantity == "loss"]
    read = [f for f in query.facts if f.of == "ambient" and f.quantity in ("aperture", "shutter")] or query.all("exposure_value")
    if not lost or not read or query.claim or len(query.all("loss")) != len(lost) or not query.asks_for("aperture", "shutter", "film_speed", "exposure_value") or not _is_of_daylight(query):
        return None
    under, off = _UNDER.search(_sentence(query.text, read[0].start)) is not None, _OFF.search(query.text) is not None
    if under and not off:
        return query.with_facts(f for f in query.facts if f not in lost), tuple(lost), ("It was read under the cloth, so what that takes is in the reading already.",)
    if off and not under:
        return None
    way = -1 if under else 1
    dimmed = {f: replace(f, quantity="filter_loss", value=way * f.value, cue="") for f in lost}
    return query.with_facts(dimmed.get(f, f) for f in query.facts if f.quantity != "modifier"), (), ()
