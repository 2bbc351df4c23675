"""An opening put up in the light that is there, with the shortest time that the shutter has: "sun f/16 at 1/125, top speed 1/500. Could I shoot at f/5.6 with no ND?"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_PUT_UP = Pattern(r"\b(?:can|could|may|might|will|would|am|is|are)\b(?:[^.?!]|\.(?=\d))*\b(?:shoot|use|work|open|have|go|keep|get|expos\w*|take|possible|able|set|do|allowed|manage|right|correct\w*|ok|okay|all right)\b(?:[^.?!]|\.(?=\d))*\?")
_OTHERWISE = Pattern(r"\b(?:need\w*|require\w*|must|have to|flash\w*|strobe|fill|too (?:bright|dark|much)|over-?expos\w*|under-?expos\w*|stops?|than|isn't|can't|couldn't|won't)\b")
"""What is put up otherwise, or with another light."""
_TOLD = frozenset({"aperture", "shutter", "sync", "film_speed", "camera_filter", "remark", "place", "format"})
_CLOSE = 1 / 3
"""Stops over that a film still forgives (as for a lens that cannot close enough)."""


def claim_of_wide_in_sun(query: Query) -> Solution | None:
    """Whether the shutter is fast enough for the opening: the time that the reading gives there, against the shortest."""
    read = [f for f in query.facts if f.of == "ambient" and f.quantity in ("aperture", "shutter")]
    top = [f for f in query.all("sync") if f.cue == "top"]
    wanted = [f for f in query.all("aperture") if f.of != "ambient"]
    if sorted(f.quantity for f in read) != ["aperture", "shutter"] or len(top) != 1 or len(wanted) != 1 or {f.quantity for f in query.facts} - _TOLD or len(query.all("shutter")) != 1:
        return None
    asked = _PUT_UP.search(query.text.lower())
    if asked is None or not asked.start() < wanted[0].start < asked.end() or _OTHERWISE.search(asked.group()):
        return None
    return _judged(read, top[0], wanted[0], query)


def _judged(read: list[Fact], top: Fact, wanted: Fact, query: Query) -> Solution:
    stop, time = sorted(read, key=lambda f: f.quantity)
    needed = time.value / 2.0 ** aperture_difference_stops(stop.value, wanted.value)
    over = math.log2(top.value / needed)
    holds = over <= _CLOSE
    right = marks.shutter(needed)
    lead = f"{'Yes' if holds else 'No'}. At f/{wanted.value:g} the light takes {right.set}" + ("." if holds else f", {speak_stops(over)} faster than the shutter goes: close down, or take slower film or an ND.")
    return Solution(lead=lead, answers=(Quantity("claim", holds), right), used=query.facts, topic="claims")
