"""One question put again for another value in the same breath: "what shutter at f/8, and what at f/11?"; each answered, in the order asked."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.solution import Solution

Solve = Callable[[Query], "Solution | None"]
_AGAIN = Pattern(r"[,;:.?]?\s+(?:and|then)\s+(?:then )?(?:again )?(?:what|which|how (?:many|much|long|far|close)|for how (?:many|long))\b(?P<rest>[^?!;]*)", re.I)
_OTHERWISE = Pattern(r"\b(?:together|both|stops?|between|if|difference|more|less|further|farther|brighter|darker|than|instead|sum|total|change\w*|then|same|loss|lose|cost)\b", re.I)
"""The second half asks something else, or of something changed."""
_VARIED = ("aperture", "shutter", "film_speed", "distance", "power")


def solve(query: Query, asked: Solve) -> Solution | None:
    """The answer for the one value and for the other; None where it is not one question put twice."""
    told = [f.quantity for f in query.facts]
    if len(told) == len(set(told)) and not any(f.at_iso for f in query.facts):
        return None  # no two values of one thing
    again = _AGAIN.search(query.text) if query.asks and not query.claim and len({a.quantity for a in query.asks}) == 1 else None
    if again is None or _OTHERWISE.search(again["rest"]):
        return None
    pair = _varied(query, again.start(), again.end())
    if pair is None:
        return None
    one, two = pair
    last = query.text[: again.start()] + " " * (again.end() - again.start()) + query.text[again.end() :]
    first_said = query.text[: one.start] + " " * (one.end - one.start) + query.text[one.end :]
    halves = [asked(replace(query, text=text, facts=tuple(f for f in (*query.facts, *([one] if one not in query.facts else [])) if f is not other), asks=query.asks[:1])) for text, other in ((last, two), (first_said, one))]
    found = [s for s in halves if s is not None and s.status == "answered" and s.answers and s.answers[0].quantity != one.quantity]
    if len(found) != 2:
        return None
    answers = tuple(replace(s.answers[0], of=f"at {value.said.strip()}") for value, s in zip(pair, found))
    return replace(found[0], answers=answers, lead="", lines=(), notes=(), used=tuple(dict.fromkeys((*found[0].used, *found[1].used, *pair))), assumed=tuple(dict.fromkeys((*found[0].assumed, *found[1].assumed))))


def _varied(query: Query, start: int, end: int) -> tuple[Fact, Fact] | None:
    """The value that the second half names, and the one of its kind that the first half had in the same sentence."""
    there = [f for f in query.facts if start <= f.start < end and f.origin == "said"]
    if len(there) != 1 or there[0].quantity not in _VARIED:
        return None
    before = [f for f in query.facts if f.quantity == there[0].quantity and f.origin == "said" and f.start < start]
    stated = [f for f in query.facts if f.at_iso and f.end <= start]
    if there[0].quantity == "film_speed" and not before and len(stated) == 1:  # "EV 4 on ISO 100, and how long at ISO 400"
        return Fact("film_speed", stated[0].at_iso or 100.0, said=f"ISO {stated[0].at_iso:g}", start=stated[0].end, end=stated[0].end), there[0]
    asked_from = max((m for mark in (". ", "? ", "! ") if (m := query.text.rfind(mark, 0, start)) >= 0), default=0)
    same = [f for f in before if f.start >= asked_from and f.of == there[0].of]
    return (same[0], there[0]) if len(same) == 1 and all(f.value == same[0].value or f.of != same[0].of for f in before) else None
