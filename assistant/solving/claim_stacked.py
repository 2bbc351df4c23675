"""Claims of filters: factors multiply, a density of 0.3 is a stop."""

from __future__ import annotations

import math

from assistant import patterns
from assistant.answer import Quantity
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.solution import Solution


def claim_of_factors_stacked(query: Query) -> Solution | None:
    """"a factor of 2 stacked with one of 4 makes 6": factors multiply."""
    factors = sorted((f for f in query.facts if f.quantity in ("factor", "times")), key=lambda f: f.start)
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"factor", "times", "camera_filter", "rows", "count"}
    if len(factors) != 3 or rest or min(f.value for f in factors) <= 0 or not patterns.search(r"\b(?:stack\w*|combin\w*|together|both|on top|plus|and|with|multipl\w*)\b", query.text.lower()):
        return None
    *parts, claimed = factors
    right = math.prod(f.value for f in parts)
    holds = abs(math.log2(claimed.value / right)) < 0.1
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", right, "x")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Factors multiply: together {right:g}, which is {speak_stops(math.log2(right))}.")


def claim_of_density(query: Query) -> Solution | None:
    """"a filter of density 0.6 wants two stops more": what an ND is said to cost against its marking."""
    marked = [f for f in query.facts if f.quantity == "nd"]
    stops = [f for f in query.facts if f.quantity in ("filter_loss", "loss", "stops")]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"nd", "filter_loss", "loss", "stops", "camera_filter"}
    if len(marked) != 1 or len(stops) != 1 or rest or stops[0].start == marked[0].start:
        return None
    holds = abs(marked[0].value - abs(stops[0].value)) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.stops(marked[0].value, "ND")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. It takes {speak_stops(marked[0].value)}.")
