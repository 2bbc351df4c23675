"""The power that brings a reading back: "at quarter power f/8, with the grid f/5.6: which power gives f/8 again?"."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_AGAIN = Pattern(r"\b(?:again|back|restore\w*|regain\w*|as before|once more)\b", re.I)
_QUESTION = Pattern(r"\b(?:what|which|how (?:much|many))\b", re.I)
_TOLD = frozenset({"power", "energy", "aperture", "aperture_range", "modifier", "camera_filter", "remark", "film_speed", "place"})


def solve(query: Query, ask: Ask) -> Solution | None:
    """So many times the power that was told as the light has fallen; None where it is not plain from which reading to which."""
    quantity = ask.quantity
    known, read, span = query.all(quantity), query.all("aperture"), query.last("aperture_range")
    if quantity not in ("power", "energy") or len(known) != 1 or not (query.has("modifier") or query.has("camera_filter")) or {f.quantity for f in query.facts} - _TOLD or query.has("power") and query.has("energy"):
        return None
    asking = list(_QUESTION.finditer(query.text))
    if not asking or not read or any(len({f.value for f in query.all(q)}) > 1 for q in ("film_speed",)):
        return None
    wanted = max(read, key=lambda f: f.start)
    values = {f.value for f in read} | ({span.value, span.other} if span is not None else set())
    told_before = any(f.value == wanted.value for f in read if f is not wanted)
    if len(values) != 2 or wanted.start < asking[-1].start() or not (told_before or _AGAIN.search(query.text, wanted.end) or _AGAIN.search(query.text, asking[-1].start(), wanted.start)):
        return None
    now = next(value for value in values if value != wanted.value)
    stops = abs(aperture_difference_stops(now, wanted.value)) * (1 if wanted.value > now else -1)
    value = known[0].value * 2.0**stops
    used = (*known, *read, *((span,) if span is not None else ()), *query.all("modifier"), *query.all("camera_filter"), *query.all("film_speed"))
    note = f"It has {'lost' if stops > 0 else 'gained'} {speak_stops(abs(stops))}."
    if quantity == "energy":
        return Solution(answers=(Quantity("energy", value, "J"),), used=used, topic="losses", notes=(note,))
    if value > 1.0005:
        return Solution("out_of_reach", "Out of reach; it would take", (marks.power(value),), used=used, topic="losses", notes=(note,), alternatives=((marks.power(1.0), marks.aperture(wanted.value / value**0.5)),))
    return Solution(answers=(marks.power(value),), used=used, topic="losses", notes=(note,))
