"""Asked where, of an f-number and nothing else, after a question of a flash: "and where does f/4 land?", "so 5.6 is where?"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Scene
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace

_MARK = r"(?:f ?/? ?\d|\b(?:1\.4|2\.8|5\.6)\b)"
_ELSEWHERE = r"\b(?:lens|ring|barrel|aperture|iris|dial|set|shutter|power|film|iso|sun|sky|room|ambient|background|backdrop)\b"
_WHERE = Pattern(
    rf"^\W*(?:(?:and|so|but|then|now|ok|okay) )*(?:where\b(?:(?!{_ELSEWHERE})[^?.!,;]){{0,40}}?{_MARK}"
    rf"|{_MARK}[.\d]*(?: is| falls| lands| comes| would be)* where\W*$)", re.I)
_OF_A_FLASH = frozenset({"aperture", "guide_number", "distance", "power"})
_CONDITIONS = frozenset({"aperture", "power", "film_speed", "remark"})
_OF_A_LENS = frozenset({"focal_length", "focus_distance", "exposure_value"})


def where_it_reads(query: Query, scene: Scene) -> Query:
    """The query with the distance asked for, and not again what was asked before; any other query as it is."""
    asked = {a.quantity for a in scene.asks}
    if query.asks or not asked or not asked <= _OF_A_FLASH or {f.quantity for f in scene.facts} & _OF_A_LENS or len(query.all("aperture")) != 1:
        return query
    if {f.quantity for f in query.facts} - _CONDITIONS or not _WHERE.search(query.text):
        return query
    return replace(query, asks=(Ask("distance"),), claim=False)
