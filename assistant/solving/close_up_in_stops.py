"""A close-up whose loss is told in stops beside its scale: "at 1:1 the bellows cost two stops" is one loss, told twice."""

from __future__ import annotations

from assistant.query import Fact, Query
from assistant.scales import speak_stops

_DRAWN = frozenset({"magnification", "extension"})
_OF_ITSELF = frozenset({"magnification", "extension", "subject_distance", "factor"})


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the loss as it was told, and without what causes it; None where the cause itself is asked for."""
    told = [f for f in query.facts if f.quantity == "filter_loss" and f.unit == "bellows loss"]
    causes = tuple(f for f in query.facts if f.quantity in _DRAWN)
    if len(told) != 1 or not causes or any(a.quantity in _OF_ITSELF for a in query.asks):
        return None
    note = f"Counted once: the {speak_stops(told[0].value)} are what the close-up takes."
    return query.with_facts(f for f in query.facts if f not in causes), causes, (note,)
