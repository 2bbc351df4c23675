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
from assistant.units import LENGTH

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


_BECOMES = Pattern(r"\s*(?:(?:down|up|back) )?(?:to|becomes|is then|drops to|falls to)(?: (?:only|just|about|around|roughly|some|exactly|nearly))* $", re.I)
_NEAR_NUMBER = 0.06
"""Doublings by which a guide number may be rounded."""


def claim_of_guide_left(query: Query) -> Solution | None:
    """"a dome that costs one stop reduces a guide number of 40 m to about 28 m": the number that is left, in the same unit."""
    lost, guide = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd", "power_down")], query.all("guide_number")
    left = guide[1:] or query.all("distance") or query.all("number") or [f for f in query.all("film_speed") if f.said.strip().isdigit()]
    if len(lost) != 1 or len(guide) not in (1, 2) or len(left) != 1 or {f.quantity for f in query.facts} - {"loss", "filter_loss", "nd", "power_down", "guide_number", "distance", "number", "film_speed", "remark", "modifier", "camera_filter"}:
        return None
    said = plain(query.text)
    between = said[guide[0].end : left[0].start]
    if query.has("number") and query.has("distance") or not _BECOMES.fullmatch(between) or left[0].unit and guide[0].unit and left[0].unit != guide[0].unit:
        return None
    scale = LENGTH.get(left[0].unit, 1.0) if left[0].quantity == "distance" else 1.0
    right, claimed = guide[0].value * 2.0 ** (-abs(lost[0].value) / 2), left[0].value / scale
    if claimed <= 0:
        return None
    holds = within(bound_of(said[: left[0].start])[0], math.log2(right / claimed), _NEAR_NUMBER) is not turned(said, [(left[0].start, left[0].end)])
    return Solution(answers=(Quantity("claim", holds), Quantity("guide_number", right, guide[0].unit or "ft")), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {speak_stops(abs(lost[0].value)).capitalize()} less leaves {right:.3g}: the guide number goes with the square root of the light.")
