"""Which of two speeds to dial for more, or for less, exposure than the box gives: "320 or 640? I want the 400 film overexposed a touch"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import film_speed_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_OVER = Pattern(r"\b(?:overexpos\w*|over-exposed|(?:a (?:touch|bit|little|shade|hair|tad|stop|third|half)|slightly|somewhat) (?:over|more|denser|heavier)|more (?:exposure|light|density)|denser|dense|generous(?:ly)?|fatter|thicker|richer|open (?:up )?the shadows|shadow detail)\b", re.I)
_UNDER = Pattern(r"\b(?:underexpos\w*|under-exposed|(?:a (?:touch|bit|little|shade|hair|tad|stop|third|half)|slightly|somewhat) (?:under|less|thinner)|less (?:exposure|light|density)|thinner|hold (?:back )?the highlights|richer colou?rs?)\b", re.I)
_DENIED = Pattern(r"\b(?:not|never|without|avoid\w*|prevent\w*|too)\b|n't\b", re.I)
_BY_THE_WAY = frozenset({"remark", "place", "rated", "film_speed", "stops", "relation"})


def pick(query: Query, options: list[Fact]) -> Solution | None:
    """The one of two speeds on the side that is wished for; None where the wish, the box or the side is not plain."""
    rated = [f for f in query.facts if f.quantity == "rated"]
    options = rated if len(rated) == 2 else options  # "200 or 800, my 400 film": the comma joins no third
    starts = {f.start for f in options}
    boxes = [f for f in query.facts if f.quantity == "film_speed" and f.start not in starts]
    over, under = _OVER.search(query.text), _UNDER.search(query.text)
    if len(options) != 2 or len(boxes) != 1 or (over is None) is (under is None) or _DENIED.search(query.text) or {f.quantity for f in query.facts if f.origin == "said"} - _BY_THE_WAY:
        return None
    box = boxes[0].value
    fits = [f for f in options if f.value > 0 and (f.value < box if over else f.value > box)]
    if len(fits) != 1:
        return None
    off = -film_speed_difference_stops(box, fits[0].value)
    lead = f"EI {fits[0].value:g}: {speak_stops(abs(off))} {'more' if off > 0 else 'less'} exposure than ISO {box:g}."
    return Solution(answers=(marks.film_speed(fits[0].value), marks.stops(off)), used=query.facts, topic="film", lead=lead)
