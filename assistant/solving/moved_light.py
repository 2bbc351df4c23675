"""A light, or a subject, that moved: "she was at 5 m and has come a metre closer" is lit from 4 m."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_MOVED = Pattern(r"\b(?:mov|com|came|bring|brought|pull|push|step|walk|back|shift|slid|drag|drew|draw|take|took|inch|shuffl|carr)\w*\b[^.?!;\d]{0,30}$", re.I)
_IT_IS_NOW = Pattern(r"(?:(?!\b(?:and|but)\b)[^.,;?!\d]){0,24}\b(?:now|already)\b", re.I)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the place it moved to, where a guide number, one place and then one move were told."""
    places, moves = query.all("distance"), query.all("move")
    if len(places) != 1 or len(moves) != 1 or not query.has("guide_number") or query.asks_for("distance", "stops"):
        return None
    place, move = places[0], moves[0]
    there = place.value + move.value
    if place.origin != "said" or move.origin != "said" or move.start < place.end or move.cue == "again" or place.of != move.of or there <= 0:
        return None
    if not _MOVED.search(query.text[place.end : move.start]) or _IT_IS_NOW.match(query.text[place.end :]):
        return None
    return query.with_facts(replace(f, value=there) if f is place else f for f in query.facts if f is not move), (move,), ()
