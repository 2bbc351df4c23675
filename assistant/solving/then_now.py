"""The light then and the light now, or the settings then and now: how many stops it has lost or gained.

Two readings at two times tell of the light: a longer time or a wider opening read now is less of it. Two
settings tell of the picture: a longer time or a wider opening set now makes the same sky brighter.
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import DIFFERENCE_STOPS, speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_NOW = Pattern(r"\b(?:now|then|next|afterwards|later|by (?:six|seven|eight|nine|ten|dusk|sunset|nightfall)|at (?:noon|dusk|dawn|sunset|midday|midnight|(?:\w+ )?o'clock|\w+ o'clock|\d{1,2}(?:[:.]\d\d)? ?[ap]\.?m)|today|tonight|has (?:become|sunk|dropped|fallen|gone)|sank|fell|dropped|sunk)\b", re.I)
_I_SET = Pattern(r"\b(?:i|we)(?:'m|'d|'re| am| are| was| were| had| have| shot| shoot| used| use| set| went| moved| changed| switched| stopped| go| worked| exposed| expose| started| stay(?:ed)?)\b(?! (?:read|metered|measured))[^.;?!\d]{0,24}$", re.I)
_SET_ON = Pattern(r"\bnow (?:it(?:'s| is) )?(?:at|on|with)?\s*(?:f\W?)?$", re.I)
_HOW = Pattern(r"\bhow (?:many stops|much|far)\b(?:[^?]{0,12}\b(?:darker|brighter|dimmer|lighter|less light|more light)\b|[^?]{0,30}\b(?:lost|lose|gained?|down|up|dropped|fallen|sunk|risen|faded|changed?)\b)", re.I)
_LOST = Pattern(r"\b(?:lost|lose|gained?|gone|dropped|fallen|sunk|risen|faded|become|got|grown|changed)\b|\b(?:is|are) (?:it|the light|things)\b", re.I)


def compared(query: Query, first: list[Fact], second: list[Fact], more: float) -> Solution | None:
    """How the light, or what comes out of it, changed from the first of two pairs to the second, whose light was read as `more` stops more; None where no change is told."""
    text, end = query.text, max(f.end for f in first)
    start = min(f.start for f in second)
    asked = _HOW.search(text)
    if asked is None or end > start or not _NOW.search(text[end : max(f.end for f in second) + 24]):
        return None
    used = (*first, *second, *query.all("film_speed"))
    before = text[end:start]
    if first[0].quantity != "exposure_value" and _I_SET.search(text[: min(f.start for f in first)]) and (_I_SET.search(before) or _SET_ON.search(before)):
        return _said(-more, used, "the ambient light, as it comes out")
    if _LOST.search(text[asked.start() :]) is None:
        return None
    return _said(more, used, "the light itself")


_OF_THE_ROOM = Pattern(rf"\b(?:background|backdrop|sky|ambient|daylight|window|existing light|available light|{ROOMS})\b", re.I)


_FROM, _TO = Pattern(r"\bfrom $", re.I), Pattern(r"\bto $", re.I)


_ONLY_TO = Pattern(r"\s*(?:up |down )?to (?:f ?/? ?)?", re.I)
_HOW_CHANGED = Pattern(r"\bhow (?:does|did|has|will|would) (?:the |my )?[a-z]+(?: light)? (?:change\w*|differ|come out)\b[^?]*\bstops\b", re.I)


def by_settings(query: Query) -> Solution | None:
    """"we were at 1/30 on 400, now 1/30 on 100: how far has the background gone down": by each setting that was told twice."""
    text = query.text
    span = query.last("aperture_range")
    if span is not None and not query.has("aperture"):  # "and from f/8 to f/4": the opening was changed as well
        first_said, last_said = span.said.split(" to ")[0], span.said.split(" to ")[-1]
        ends = (replace(span, quantity="aperture", other=math.nan, end=span.start + len(first_said)), replace(span, quantity="aperture", value=span.other, other=math.nan, start=span.end - len(last_said)))
        query = query.with_facts((*(f for f in query.facts if f is not span), *ends))
    pairs = [(query.all(q), apart) for q, apart in DIFFERENCE_STOPS.items() if query.has(q)]
    if any(len(told) > 2 for told, _ in pairs) or {f.quantity for f in query.facts} - {"shutter", "aperture", "film_speed", "remark", "place"}:
        return None
    twice = [(told, apart) for told, apart in pairs if len(told) == 2]
    if not twice or not (_HOW.search(text) or _HOW_CHANGED.search(text)) or not _OF_THE_ROOM.search(text):
        return None
    first, second = min(told[0].start for told, _ in twice), min(told[1].start for told, _ in twice)
    if not _I_SET.search(text[:first]) or not (_NOW.search(text[first:second]) or _FROM.search(text[:first]) and _TO.search(text[first:second])) or any(told[0].start > second for told, _ in twice) and not all(_ONLY_TO.fullmatch(text, told[0].end, told[1].start) for told, _ in twice):
        return None
    value = sum(apart(told[0].value, told[1].value) for told, apart in twice)
    used = (*(f for told, _ in pairs for f in told if span is None or f.quantity != "aperture"), *((span,) if span is not None else query.all("aperture")))
    return _said(value, used, "the ambient light, as it comes out") if abs(value) > 0.05 else None


_SWAPPED = Pattern(r"\b(?:swap|chang|switch|trad|exchang|replac|went|gone|going|mov)\w*\b[^.;?!]{0,60}$", re.I)
_OTHER_ONE = Pattern(r"\b(?:instead of|in place of|rather than)\b", re.I)
_EACH_CAMERA = Pattern(r"\b(?:to|for|onto|with|by|into) ", re.I)


def by_cameras(query: Query) -> Solution | None:
    """"I swapped the camera, 1/60 sync, for a leaf shutter at 1/500, same f/11: how much darker is the sky?": the fastest times of two cameras, one after the other."""
    times = sorted((*query.all("sync"), *query.all("shutter")), key=lambda f: f.start)
    told = {f.quantity for f in query.facts} <= {"sync", "shutter", "aperture", "film_speed", "remark", "place"} and len(query.all("aperture")) < 2 and len(query.all("film_speed")) < 2
    if len(times) != 2 or not query.has("sync") or not told or _HOW.search(query.text) is None or not _OF_THE_ROOM.search(query.text) or _OTHER_ONE.search(query.text):
        return None
    if not _SWAPPED.search(query.text[: times[0].start]) or not _EACH_CAMERA.search(query.text[times[0].end : times[1].start]):
        return None
    value = DIFFERENCE_STOPS["shutter"](times[0].value, times[1].value)
    return _said(value, (*times, *query.all("aperture"), *query.all("film_speed")), "the ambient light, as it comes out") if abs(value) > 0.05 else None


def _said(value: float, used: tuple[Fact, ...], what: str) -> Solution:
    way = "brighter" if value > 0 else "darker"
    return Solution(lead=f"{speak_stops(abs(value)).capitalize()} {way} now ({value:+.2f}).", answers=(marks.stops(value, "ambient"),), used=used, topic="ambient", notes=(f"That is of {what}.",))
