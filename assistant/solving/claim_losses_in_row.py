"""Losses of several things in the light, and what all of them are said to come to: "a one-stop silk and a two-stop box, three stops lost, right?"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_LOST = frozenset({"loss", "filter_loss", "nd", "factor"})
_MARKED = ("nd", "factor")
"""What is engraved on the filter itself: each is of one of its own."""
_BESIDE = frozenset({"modifier", "camera_filter", "remark", *_LOST})
_COMES_TO = Pattern(r"\b(?:so|makes?|altogether|in all|together|total|both|comes to|adds? up to|that's|that is|is|means?|costs?)\b|i (?:make|call|get|reckon)|[.;:,?] *$")
_IN_ALL = Pattern(r"[ -]?(?:stops? )?(?:lost|gone|down|in all|altogether|all told|in total|together)\b")
_OTHERWISE = Pattern(r"n't\b|\b(?:not|no|never|only|but|each|every|apiece|at least|at most|more than|less than|left|instead|or|without|took|takes? (?:it|that|the \w+) off)\b")


def claim_of_losses_in_row(query: Query) -> Solution | None:
    """Each loss has a thing of its own, and the last figure is all of them: "polariser a stop and a half, red filter a factor of eight. I make that four and a half stops lost"."""
    lost = sorted((f for f in query.facts if f.quantity in _LOST and f.value > 0), key=lambda f: f.start)
    said = query.text.lower()
    if len(lost) < 3 or lost[-1].quantity in _MARKED or any(f.quantity not in _BESIDE for f in query.facts if f.origin == "said" and not (f.quantity == "count" and f.value == 1)) or _OTHERWISE.search(said):
        return None
    *parts, claimed = lost
    own = [f"{f.quantity} {f.start}" if f.quantity in _MARKED else f.unit for f in parts]
    if not all(own) or len(set(own)) < len(own) or claimed.unit and claimed.unit != own[-1] or not (_COMES_TO.search(said[parts[-1].end : claimed.start]) and _IN_ALL.match(said[claimed.end :]) or _IN_ALL.search(said[parts[-1].end : claimed.end])):
        return None
    right = sum(_in_stops(f) for f in parts)
    holds = abs(right - abs(claimed.value)) < 0.1
    return Solution(answers=(Quantity("claim", holds), marks.stops(-right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Losses in stops add: together {speak_stops(right)}.")


def _in_stops(lost: Fact) -> float:
    return math.log2(lost.value) if lost.quantity == "factor" else abs(lost.value)
