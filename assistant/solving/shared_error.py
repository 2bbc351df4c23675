"""Two places at different distances, the lens set so that the one is as much over as the other is under.

Halfway in stops is the geometric mean of the two distances (inverse square law: stops go with the logarithm of the distance).
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution
from assistant.units import speak_length

_AS_MUCH = r"(?:as (?:much|far|many stops)|by as much|by the same|the same (?:number|amount)|equal(?:ly)?|just as|the same error|same number of stops)"
_OFF = r"(?:wrong|off|out|mis-?exposed|in error|from right|from correct)"
_SHARED = Pattern(
    rf"\bover\b[^?]*\b{_AS_MUCH}\b[^?]*\bunder\b|\bunder\b[^?]*\b{_AS_MUCH}\b[^?]*\bover\b|\b{_AS_MUCH}\b[^?]*\bover\b[^?]*\bunder\b|\b{_AS_MUCH}\b[^?]*\bunder\b[^?]*\bover\b|\bover\b[^?]*\bunder\b[^?]*\b{_AS_MUCH}\b"
    rf"|\b{_OFF}\b[^?.]{{0,24}}\b(?:by|to) (?:exactly |just )?(?:the same|an? equal|equal|like|the very same|as much)\b|\b(?:same|equal|like) (?:amounts?|numbers? of stops|stops|fraction of a stop)?[^?.]{{0,12}}\b{_OFF}\b|\berrors?\b[^?.]{{0,30}}\b(?:same|equal(?:ly)?|shared|even(?:ly)?|split|alike|balanced)\b|\b(?:same|equal|even|balanced|shared) (?:size of )?errors?\b"
    r"|\bequally (?:wrong|off|far off|far out|far from right|bad)\b|\b(?:shar|split|divid|spread|balanc|halv)\w* the (?:error|difference|fall[- ]?off|loss)\b|\bexpos\w* (?:it |them )?(?:for )?(?:half ?way|midway)\b|\b(?:half ?way|midway) in stops\b|\b(?:half ?way|midway) between (?:them|the two|both)\b[^?]*\bstops\b", re.I)
_MOVING = Pattern(r"\b(?:mov|pull|push|bring|brought|shift|carr|walk|step)\w*\b", re.I)
_HOW_FAR_OUT = Pattern(r"\bhow (?:many stops|much|far)\b[^?]*\b(?:over|under|out|off|wrong)\b", re.I)
_WHERE = Pattern(r"\b(?:what|which) distance\b|\bdistance\b[^?]{0,30}\b(?:should|do|must|to)\b|\bwhere\b|\bhow far (?:away|from)\b", re.I)


def solve(query: Query, scene: Scene) -> Solution | None:
    """The distance to work out for, the aperture for it, or how far out each then is."""
    near, far = scene.near, scene.far
    if near is None or far is None or scene.moved and _MOVING.search(query.text) or near <= 0 or far <= 0 or near == far or not _SHARED.search(query.text) or query.has("stops"):
        return None
    near, far = sorted((near, far))
    middle, out = math.sqrt(near * far), abs(falloff_stops(near, far)) / 2
    unit = preferred_unit(query)
    lead = f"Work it out for {speak_length(middle, unit)}: the nearer is then {speak_stops(out)} over and the farther as much under."
    if _HOW_FAR_OUT.search(query.text.split(".")[-1]):
        answers = (marks.stops(out, "near"), marks.stops(-out, "far"))
        return Solution(answers=answers[::-1] if _FAR_ASKED.search(query.text) else answers, used=scene.used, topic="falloff", lead=lead)
    if query.has("guide_number"):
        return _with_the_flash(query, scene, middle, lead)
    if not _WHERE.search(query.text):
        return None
    return Solution(answers=(marks.distance(middle, unit),), used=scene.used, topic="falloff", lead=lead, working=(f"√({near:.4g} × {far:.4g}) = {middle:.4g} m",))


_FAR_ASKED = Pattern(r"\bunder\b[^?.]{0,16}\b(?:is|are|does|will)\b|\bis (?:the )?(?:far|back|last|furthest|farthest)\w*[^?]{0,16}\?", re.I)


def _with_the_flash(query: Query, scene: Scene, middle: float, lead: str) -> Solution | None:
    """The aperture or the power of a flash of known guide number for the distance between."""
    from assistant.solving import flash

    asked = next((a.quantity for a in query.asks if a.quantity in ("aperture", "power")), None)
    one = next((f for f in scene.used if f.quantity == "distance"), None)
    if asked is None or one is None:
        return None
    plain = tuple(f for f in query.facts if f not in scene.used and f.quantity != "rows")
    found = flash.solve(Query(query.text, (*plain, replace(one, value=middle, of="", cue="")), (Ask(asked),)))
    if found is None or found.status != "answered":
        return None
    return replace(found, used=(*found.used, *scene.used), notes=(lead, *found.notes), topic="falloff")
