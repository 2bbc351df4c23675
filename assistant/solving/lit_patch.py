"""What a beam lights: how wide a patch from so far, how far off for such a width, and how wide it is elsewhere."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Fact, Query
from assistant.solving.sharp_limits import length
from assistant.solving.solution import Solution

WIDE_AFTER = Pattern(r"^\W*(?:across|wide|in width|broad|end to end|long|high|tall|of (?:group|backdrop|wall|people)|group\b|row\b|backdrop|wall|circle|patch|spot|pool|disc)", re.I)
WIDE_ASKED = Pattern(r"\bhow (?:wide|big|large|broad|high|tall|far across)\b|\bwhat (?:(?:is|'s|will be) the )?(?:width|diameter|size|height)\b|\bhow (?:many (?:metres|meters|feet|inches)|much) (?:wide|across)\b", re.I)
_WIDE_BEFORE = Pattern(r"\b(?:width|covers?|light|group|row|line|spread|span|fill|wall|backdrop)(?: (?:of|is|a|an|the|about|across|over|whole))*\W*$", re.I)
_LIT = Pattern(r"\b(?:flash|lights?|lamp|strobe|head|beam|angle|degrees|reflector|spread)\b", re.I)
_HOW_FAR = Pattern(r"\bhow far\b|\bwhat distance\b|\bhow (?:close|near)\b", re.I)
_FILLS = Pattern(r"\b(?:cover|fill|light|span|spread|reach)\w*\b", re.I)
_ASKING = Pattern(r"\b(?:how|what)\b", re.I)
_IN_FRONT = Pattern(r"\W*(?:straight |right |square |directly |dead )?(?:in front|away from|off|before)\b", re.I)
"""After how far the light stands before what it is to light; "two metres behind him" is no distance of a light."""
_MARGIN = "The edges get less light than the middle: leave a margin."
_LENGTHS = ("distance", "gap", "max_distance")


def _lengths(query: Query) -> list[Fact]:
    return [f for f in query.facts if f.quantity in _LENGTHS and not f.bad]


def width(query: Query) -> Solution | None:
    """"How wide does a 60 degree beam spread at 10 feet": twice the distance times the tangent of half the angle; backwards, how far off for a width."""
    angle, far = query.all("degrees"), _lengths(query)
    if len(angle) != 1 or len(far) != 1 or not 0 < angle[0].value < 180 or query.has("guide_number") or query.claim:
        return None
    tangent = math.tan(math.radians(angle[0].value) / 2)
    used = (angle[0], far[0], *query.all("modifier"))
    told_wide = WIDE_AFTER.match(query.text[far[0].end :]) is not None and _HOW_FAR.search(query.text) is not None
    if not query.asks_for("coverage") and not WIDE_ASKED.search(query.text) and not (told_wide and _FILLS.search(query.text)):
        return None  # an angle at which a light stands is no beam
    if told_wide:
        return Solution(lead="From", answers=(length("distance", far[0].value / (2 * tangent), far[0].unit),), used=used, topic="optics",
                        working=("half the width over the tangent of half the angle",), notes=(_MARGIN,))
    return Solution(lead="Across", answers=(length("distance", 2 * far[0].value * tangent, far[0].unit),), used=used, topic="optics",
                    working=("2 × distance × tangent of half the angle",), notes=(_MARGIN,))


def angle(query: Query) -> Solution | None:
    """"A group 4 m across from 3 m away": the angle the light must cover, twice the arc tangent of half the width over the distance."""
    sizes = query.all("size")
    lengths = [*(f for f in query.facts if (f.quantity == "distance" or f.quantity == "gap" and _IN_FRONT.match(query.text, f.end)) and not f.bad), *sizes]
    if len(lengths) != 2 or query.has("guide_number") or not (_LIT.search(query.text) or sizes):
        return None
    wide = sizes or [f for f in lengths if WIDE_AFTER.match(query.text[f.end :])] or [f for f in lengths if _WIDE_BEFORE.search(query.text[: f.start])]
    if len(wide) != 1:
        return None
    far = next(f for f in lengths if f is not wide[0])
    return Solution(answers=(Quantity("coverage", optics.field_angle(far.value, wide[0].value), "degrees"),), used=(*lengths, *query.all("modifier")), topic="optics",
                    working=("twice the arc tangent of half the width over the distance",), notes=(_MARGIN,))


def elsewhere(query: Query) -> Solution | None:
    """"it throws a 1 m circle at 4 m: how big is it at 2 m?": a patch grows as the distance does."""
    told = _lengths(query)
    wide = [f for f in told if WIDE_AFTER.match(query.text[f.end :])]
    asking = list(_ASKING.finditer(query.text))
    if query.has("degrees") or len(told) != 3 or len(wide) != 1 or not asking or query.has("guide_number") or query.claim:
        return None
    apart = [f for f in told if f is not wide[0]]
    there = [f for f in apart if f.start > asking[-1].start()]
    if len(there) != 1 or wide[0].start > asking[-1].start():
        return None
    here = next(f for f in apart if f is not there[0])
    return Solution(lead="Across", answers=(length("distance", wide[0].value * there[0].value / here.value, wide[0].unit),), used=(*told, *query.all("modifier")), topic="optics",
                    working=("the width grows with the distance",))
