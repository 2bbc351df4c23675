"""A move, and where it comes to, told in one breath: "pull it back another 4 feet, so it is 14 and 18".

The places are what the move makes of those that stood: they are said again and are no second change. Where they
do not come of the move, one of the two is wrong, and the person is asked.
"""

from __future__ import annotations

import math
import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.units import LENGTH, speak_length

_SO_IT_IS = Pattern(r"[,;:]? *(?:so|which (?:makes|puts)|that (?:makes|puts)|making|to make|putting)\b[^.?!\d]{0,40}$", re.I)
"""Between the move and the first of the places: "…, so it is", "which makes them"."""
_CLOSE = 0.01
"""Of a length: what people round off (common practice, no source)."""


def where_it_comes_to(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The query without the places that the move told beside them makes of those that stand."""
    moves, places = [f for f in query.facts if f.quantity == "move"], [f.value for f in scene.facts if f.quantity == "distance"]
    after = [f for f in query.facts if not f.bad and moves and f.start >= moves[0].end]
    told = [place for f in after for place in _places(f)]
    stood = sorted(set(places[-1:] if len(told) == 1 else places))  # of the places told one after the other, the last
    if len(moves) != 1 or not told or len(told) != len(stood) or not _SO_IT_IS.search(query.text[moves[0].end : told[0].start]):
        return query, scene
    unit = LENGTH[moves[0].unit] if moves[0].unit in LENGTH else 1.0
    there = [place + moves[0].value for place in stood]
    off = next((f for f, place in zip(sorted(told, key=lambda f: _metres(f, unit)), there, strict=True) if not math.isclose(_metres(f, unit), place, rel_tol=_CLOSE)), None)
    if off is None:
        said = frozenset(f.said.strip() for f in told)
        return replace(query, facts=tuple(f for f in query.facts if f not in after or not _places(f)), unplaced=tuple(w for w in query.unplaced if w.strip() not in said), claim=False), scene
    why = f"moved so far it comes to {' and '.join(speak_length(place, moves[0].unit or 'm') for place in there)}"
    return replace(query, facts=tuple(replace(f, bad=why) if f.start == off.start and f in after else f for f in query.facts)), scene


def _places(fact: Fact) -> tuple[Fact, ...]:
    """The places that a figure tells: "5 and 7 m" tells two."""
    if fact.quantity == "length_range":
        return replace(fact, quantity="distance", other=math.nan), replace(fact, quantity="distance", value=fact.other, other=math.nan)
    return (fact,) if fact.quantity in ("distance", "number") else ()


def _metres(fact: Fact, unit: float) -> float:
    return fact.value if fact.quantity == "distance" else fact.value * unit
