"""How the depth of field goes with the f-number alone: "from f/4 to f/8 it roughly doubles at a portrait distance"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.claim_denial import denied
from assistant.solving.claim_told import turned_round
from assistant.solving.claim_words import factor_said, plain
from assistant.solving.solution import Solution

_NOT_FAR = Pattern(r"\b(?:ordinary|portrait|normal|moderate|usual|close|near|short|everyday|working) (?:\w+ )?(?:distances?|range|quarters)\b|\b(?:close[- ]?ups?|portraits?|well (?:inside|short of|within) the hyperfocal)\b")
"""Where the far limit is not yet on its way to infinity: there the depth goes with the f-number."""
_DEPTH = Pattern(r"\b(?:depth of (?:field|focus)|d\.?o\.?f\b|depth)\b")
_OTHER = Pattern(r"\b(?:hyperfocal distance|focal length|format|lens(?:es)?)\b")
_SMALLER = Pattern(r"\bhalv\w*|\bhalf\b|\b(?:a )?quarter\b")
_NEAR = 0.2
"""Doublings by which a factor may be off: marks are rounded, and the depth goes only nearly with the f-number."""


def claim_of_depth_by_stop(query: Query) -> Solution | None:
    """The factor said, against that of the two f-numbers; None where a lens or a distance is told, by which it can be worked out."""
    said = plain(query.text)
    if not query.claim or _DEPTH.search(said) is None or _NOT_FAR.search(said) is None or _OTHER.search(said) or {f.quantity for f in query.facts if f.origin == "said"} - {"aperture", "aperture_range", "times", "remark", "place", "power", "share"}:
        return None
    spans, single = query.all("aperture_range"), sorted(query.all("aperture"), key=lambda f: f.start)
    ends = [(f.value, f.other) for f in spans] or ([(single[0].value, single[1].value)] if len(single) == 2 else [])
    factor = factor_said(_without_marks(query, said))
    if len(ends) != 1 or min(ends[0]) <= 0 or ends[0][0] == ends[0][1] or factor is None:
        return None
    first, second = ends[0]
    right = round(2 * math.log2(second / first)) / 2
    if _SMALLER.search(said) and factor > 1:
        factor = 1 / factor
    holds = abs(math.log2(factor) - right) < _NEAR
    lead = f"{'Yes' if holds else 'No'}. At such distances the depth goes nearly with the f-number: f/{second:g} keeps about {2.0 ** right:.2g} times as much sharp as f/{first:g}."
    judged = Solution(answers=(Quantity("claim", holds), marks.factor(right)), used=query.facts, topic="claims", lead=lead)
    return turned_round(judged) if denied(said) else judged


def _without_marks(query: Query, said: str) -> str:
    """The text without its f-numbers, which are no factors."""
    for fact in query.facts:
        if fact.quantity in ("aperture", "aperture_range"):
            said = said[: fact.start] + " " * (fact.end - fact.start) + said[fact.end :]
    return said
