"""Two openings and how much of the light of the one the other lets in: "f/11 passes half the light of f/8"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import turned
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_F = r"f ?/? ?\d+(?:\.\d+)?"
_MUCH = r"(?P<much>half|twice|double|(?:four|eight|sixteen|three) times|(?:an?|one) (?:quarter|eighth|third|sixteenth)|[\d.]+ ?(?:times|x|%|per ?cent))"
_LETS_IN = Pattern(
    rf"\b{_F} (?:will |would |does |only |really |just |won't |wouldn't |doesn't |does not |will not )*(?:lets? in|lets? through|admits?|pass(?:es)?|gives?|transmits?|takes? in|gets?|has|have|is|isn't|is not|means|put through)(?: only| just| about| exactly| roughly| no| more than| less than| at least| at most| over| under)* {_MUCH}(?: of)?(?: as much)?(?: the| of the)? light (?:(?:of|as|than|at|that|through|from|compared (?:to|with)) )+(?:that of |at |of )?{_F}")
_STOPS = {"half": -1.0, "twice": 1.0, "double": 1.0, "four": 2.0, "eight": 3.0, "sixteen": 4.0, "three": math.log2(3), "quarter": -2.0, "eighth": -3.0, "third": -math.log2(3), "two": 1.0, "nine": math.log2(9), "ninth": -math.log2(9), "sixteenth": -4.0}
_NEAR = 0.2


def claim_of_light_let_in(query: Query) -> Solution | None:
    """Whether the first opening lets in so much of the light of the second; None where no such thing is put up."""
    stops = sorted((f for f in query.facts if f.quantity == "aperture" and not f.of), key=lambda f: f.start)
    said = plain(query.text)
    found = _LETS_IN.search(said)
    if not query.claim or found is None or len(stops) != 2 or {f.quantity for f in query.facts} - {"aperture", "power", "times", "number", "share"}:
        return None
    claimed = in_stops(found["much"])
    if claimed is None:
        return None
    right = aperture_difference_stops(stops[1].value, stops[0].value)
    at = found.start("much")
    holds = within(bound_of(said[:at])[0], right - claimed, _NEAR) is not turned(said, [(at, at + 1)])
    way = "more" if right > 0 else "less"
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. f/{stops[0].value:g} lets in {speak_stops(abs(right))} {way} than f/{stops[1].value:g}: the larger the number, the smaller the hole.")


def in_stops(much: str) -> float | None:
    """So much of the light, in stops; None where the figure is none."""
    word = next((w for w in much.split() if w in _STOPS), "")
    if word:
        return _STOPS[word]
    figure = float(much.rstrip("%x percntims") or 0)
    share = figure / 100 if "%" in much or "cent" in much else figure
    return math.log2(share) if share > 0 else None
