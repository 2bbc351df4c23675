"""A close-up whose loss is told beside its scale: "at 1:1 the bellows cost two stops", "life size, so the factor is 4" is one loss, told twice."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Fact, Query
from assistant.scales import speak_stops

_DRAWN = frozenset({"magnification", "extension"})
_OF_ITSELF = frozenset({"magnification", "extension", "subject_distance", "factor"})
_CALLED_SO = Pattern(r"\b(?:bellows|extension|draw|magnification|close-up)\b", re.I)
_BETWEEN = Pattern(
    r"[\s,;:(–-]*(?:(?:so|that's|that is|thats|which is|which|i\.e\.?|hence|meaning|and|making|it|the|a|an|my|with|for|of|at|bellows|extension|draw|magnification|exposure|needs|eats|costs|takes|loses|costing|its|is|=|gives|means|about|then)[\s:=,]*){0,9}", re.I)
_A_FILTER = Pattern(r"\s*(?:\w+ )?(?:filters?|polari[sz]er|pola|nd|glass|gel|yellow|red|orange|green)\b", re.I)
_NEARLY = 0.2
"""Of a stop, between what is told and what the scale comes to."""


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the loss as it was told, and without what causes it; None where the cause itself is asked for."""
    causes = tuple(f for f in query.facts if f.quantity in _DRAWN)
    told = [f for f in query.facts if f.quantity == "filter_loss" and f.unit == "bellows loss"] or [f for f in query.facts if len(causes) == 1 and _tells_of(f, causes[0], query.text)]
    if len(told) != 1 or not causes or any(a.quantity in _OF_ITSELF for a in query.asks):
        return None
    one = told[0]
    note = f"Counted once: the {speak_stops(one.value) if one.quantity != 'factor' else f'factor of {one.value:g}'} {'is' if one.quantity == 'factor' else 'are'} what the close-up takes."
    return query.with_facts(f for f in query.facts if f not in causes), causes, (note,)


def _tells_of(fact: Fact, scale: Fact, text: str) -> bool:
    """Whether a factor or a loss told beside the scale is what the scale costs: by its name, or since it comes to the same."""
    if fact.quantity not in ("factor", "loss", "filter_loss") or fact.unit or fact.value <= 0 or _A_FILTER.match(text, fact.end):
        return False
    if fact.quantity == "factor" and _CALLED_SO.search(fact.said):
        return True
    if scale.quantity != "magnification":
        return False
    first, second = sorted((scale, fact), key=lambda f: f.start)
    stops = math.log2(fact.value) if fact.quantity == "factor" else fact.value
    same = abs(stops - math.log2(optics.bellows_factor_from_magnification(scale.value))) < _NEARLY if scale.value > 0 else False
    return same and _BETWEEN.fullmatch(text[first.end : second.start]) is not None
