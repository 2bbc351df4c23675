"""What so many stops do to the guide number, put up for a yes or a no: it goes with the root of the light."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import turned
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_STOPS = ("stops", "loss", "filter_loss", "signed", "relation", "nd", "power_down")
_FACTORS = ("factor", "times")
_LESS = Pattern(r"\b(?:los[et]\w*|losing|loses?|costs?|takes?|eats?|less|down|drops?|weaker|darker|divid\w*)\b", re.I)
_NEAR = 0.05
"""Doublings of the guide number by which a factor may be rounded."""


def claim_of_guide_by_stops(query: Query) -> Solution | None:
    """"a stop and a third more multiplies the guide number by 1.6": two to the power of half the stops (a guide number goes with the root of the light)."""
    steps, factors = [f for f in query.facts if f.quantity in _STOPS], [f for f in query.facts if f.quantity in _FACTORS and f.value > 0]
    if len(steps) != 1 or len(factors) != 1 or "name_guide_number" not in query.cues or {f.quantity for f in query.facts} - {*_STOPS, *_FACTORS, "remark", "modifier", "camera_filter"}:
        return None
    said = plain(query.text)
    size, claimed = abs(steps[0].value), factors[0].value
    right = 2.0 ** (-size / 2 if claimed < 1 else size / 2)
    if (claimed < 1) is not (_LESS.search(said) is not None):
        return None  # more light for a smaller number, or the other way: read otherwise
    holds = within(bound_of(said[: factors[0].start])[0], math.log2(right / claimed), _NEAR) is not turned(said, [(factors[0].start, factors[0].end)])
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", right, "times")), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {speak_stops(size).capitalize()} {'more' if right > 1 else 'less'} is {right:.3g} times the guide number, since that goes with the square root of the light.")
