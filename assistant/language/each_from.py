"""Two flashes alike, each from a place of its own: "one from 2 m and the other from 3 m" is one light there and one here."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_ON_TO_THE_NEXT = Pattern(
    r"\s*(?:away|off|out|back)?\s*(?:,|;|and|&|,? ?(?:but|while))\s*(?:(?:and|the|from|at) )*(?:(?:one|first|other|second|another)(?: (?:one|flash|head|gun|light|lamp|unit|strobe))?(?: of them)?)?(?:'s| is| stands| sits| placed| standing| at| from| only| about| some| a)*\s*", re.I)
_AT_ONE_PLACE = Pattern(r"\b(?:rows?|front|back|rear|nearest|farthest|moved?|then|now|instead|ceiling|bounc\w+|faces?|people)\b", re.I)
_NOBODYS = frozenset({"", "a", "b", "both"})


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the first place given to the one and the second to the other, and no more than these two counted."""
    two = [f for f in facts if f.quantity == "count" and f.value == 2 and f.unit == "flashes"]
    if two and _ITS_TWIN.search(text):
        return _and_its_twin(facts, text)
    places = [f for f in facts if f.quantity == "distance" and not f.bad]
    if len(two) != 1 or len(places) != 2 or [f.quantity for f in facts].count("guide_number") != 1 or any(f.of not in _NOBODYS for f in (*two, *places)):
        return facts
    if not _ON_TO_THE_NEXT.fullmatch(text, places[0].end, places[1].start) or _AT_ONE_PLACE.search(text):
        return facts
    return [_of_its_own(f, places, two[0]) for f in facts]


def _of_its_own(fact: Fact, places: Sequence[Fact], two: Fact) -> Fact:
    if fact is two:
        return replace(fact, quantity="remark", of="")
    if fact in places:
        return replace(fact, of="a" if fact is places[0] else "b", cue="")
    return replace(fact, of="both") if fact.quantity in ("guide_number", "power") and fact.of in _NOBODYS else fact


_ITS_TWIN = Pattern(r"\b(?:its|the|a|an) (?:identical )?twin\b", re.I)


def _and_its_twin(facts: list[Fact], text: str) -> list[Fact]:
    """"one lamp at 2 m on full power, its twin at 1 m on a quarter": what is told before the twin is the one's, the rest the twin's."""
    twin = _ITS_TWIN.search(text)
    own = [f for f in facts if f.quantity in ("distance", "power") and f.of != "both" and f.of in _NOBODYS and not f.bad]
    places = [f for f in own if f.quantity == "distance"]
    if twin is None or len(places) != 2 or len(own) != 4 or not places[0].end <= twin.start() < places[1].start or any(f.quantity == "guide_number" for f in facts):
        return facts
    return [replace(f, quantity="remark", of="") if f.quantity == "count" and f.unit == "flashes" else replace(f, of="a" if f.end <= twin.start() else "b", cue="") if f in own else f for f in facts]
