"""A light that lies so many stops under or over, and where it is wanted: "the room is three stops under, how many stops longer to have it one under?".

Both levels are counted from the same light, so what it takes is their difference; in power that is a factor of two a stop, and
of distance the square root of two (inverse square law).
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution

_LEVELS = ("relation", "stops", "loss", "signed")
_BESIDE = frozenset({*_LEVELS, "shutter", "power", "distance", "remark", "place", "film_speed"})
_WAY = Pattern(r"\s*(?:stops?\s*)?(?:too )?(?:(?P<less>under|below|darker|weaker|dimmer|dark|down|less)|(?P<more>over|above|brighter|hotter|stronger|bright|hot|more))\b", re.I)
_WANTED = Pattern(r"\b(?:want|should|must|like|need|prefer|wish|get|have|bring|puts?|makes?|gives?|leaves?|is it|for|to be|to)\b", re.I)
_ANOTHER = Pattern(r"\b(?:the|a|my) (?:key|main|fill|rim|hair|kicker|accent|background|backdrop|room|hall|sun)(?: light)? (?:is|lies|reads|stands|sits|comes|at)\b|\b(?:then|now|while|but|whereas|moved?|added|opened|closed)\b", re.I)
"""A light of its own between the two levels, or something done meanwhile."""
_LEVEL = Pattern(r"\bto (?:bring|get|lift|have|make|put|raise|pull|take) (?:it|them|that|her|him|the \w+)(?: up| down| back)?(?: (?:to be|exactly|dead|just))? (?:level|equal|even|right|to (?:the )?(?:key|flash)'?s? level|on a level)\b", re.I)


def solve(query: Query) -> Solution | None:
    """What it takes from the one level to the other; None where no two levels of one light are told."""
    told = [f for f in query.facts if f.quantity in _LEVELS]
    if not 0 < len(told) < 3 or len(query.asks) != 1 or {f.quantity for f in query.facts} - _BESIDE or any(f.origin != "said" for f in told):
        return None
    levels = _levels(query.text, sorted(told, key=lambda f: f.start))
    if levels is None:
        return None
    return _answer(query, told, levels[1] - levels[0])


def levels_told(query: Query) -> tuple[Fact, tuple[float, float]] | None:
    """The first level as it was told, and both in stops; None where no two levels of one light are told, or something else beside them."""
    told = sorted((f for f in query.facts if f.quantity in _LEVELS), key=lambda f: f.start)
    if len(told) != 2 or {f.quantity for f in query.facts} - _BESIDE or any(f.origin != "said" for f in told):
        return None
    found = _levels(query.text, told)
    return (told[0], found) if found is not None else None


def _answer(query: Query, told: list[Fact], change: float) -> Solution | None:
    """The change in stops, or what it makes of the one power or distance that is told."""
    asked, power, away = query.asks[0], query.all("power"), query.all("distance")
    used = (*told, *query.all("shutter"), *power, *away)
    if asked.quantity == "stops" and not power and not away:
        return Solution(answers=(marks.stops(change),), used=used, topic="relations")
    if asked.quantity == "power" and len(power) == 1 and not away and not query.has("shutter"):
        value = power[0].value * 2**change
        return Solution("answered" if value <= 1.0005 else "out_of_reach", answers=(marks.power(value),), used=used, topic="relations")
    if asked.quantity == "distance" and len(away) == 1 and not power and not query.has("shutter"):
        return Solution(answers=(marks.distance(away[0].value * 2 ** (-change / 2), preferred_unit(query, asked.unit)),), used=used, topic="relations")
    return None


def _levels(text: str, told: list[Fact]) -> tuple[float, float] | None:
    """Where the light lies, and where it is wanted, in stops over (+) or under (-)."""
    ways = [_WAY.match(text, f.end) for f in told]
    found = [abs(f.value) * (-1 if way["less"] else 1) for f, way in zip(told, ways) if way is not None]
    if len(found) != len(told):
        return None
    if len(found) == 1:
        return (found[0], 0.0) if _LEVEL.search(text, told[0].end) else None
    between = text[told[0].end : told[1].start]
    return (found[0], found[1]) if _WANTED.search(between) and not _ANOTHER.search(between) else None
