"""Two flashes that nobody counted: "both flashes at 10 ft", "a gel on one flash and a gel on the other", one guide number for each."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_FLASH = r"(?:flash(?:es|guns?)?|heads?|guns?|strobes?|speedlights?|lights?|lamps?|units?)"
_BOTH = Pattern(rf"\bboth (?:of (?:the|my|them|these) ?|the |my )?(?:{_FLASH}\b(?! (?:and|or|as well as) (?:the |my )?(?:camera|lens|tripod)\b)|(?=at \d|are |have |from \d))", re.I)
_ONE_AND_OTHER = Pattern(rf"\b(?:the|one|my|first) (?:{_FLASH}|one)\b[^.?!]{{0,60}}\b(?:(?:the other|the second|another|a second) (?:{_FLASH}|one)\b|the other(?=\s*[,.;?]|\s*$))|\bon each (?:of (?:the|my) two )?{_FLASH}\b", re.I)
_EACH = Pattern(r"\b(?:each|apiece|both|the pair|same)\b", re.I)
_APART = Pattern(r"\b(?:left|right|behind|opposite|rim|hair|back ?(?:light|ground|drop)|kicker|either side|each side|key|fill|main|sides|bounce\w*|which|stronger|weaker|brighter|closer|nearer|further|farther|not both|only one|one of)\b", re.I)
"""Lights that do not stand together, or are compared."""
_NOBODYS = frozenset({"", "both", "a", "b"})
_WORN = ("modifier", "loss")


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with a count of two, and with what both of them wear told once."""
    told = [f.quantity for f in facts]
    if told.count("guide_number") != 1 or not _EACH.search(text):
        return facts
    if any(f.quantity == "count" and f.value > 1 for f in facts) or told.count("distance") > 1 or "power" in told and told.count("power") > 1 or any(f.of not in _NOBODYS for f in facts if f.quantity not in ("shutter", "film_speed", "focal_length")):
        return facts
    found = _BOTH.search(text) or _ONE_AND_OTHER.search(text)
    if found is None or _APART.search(text):
        return facts
    two = Fact("count", 2.0, "flashes", start=found.start(), end=found.end(), said=found.group().strip())
    return sorted([*_once(facts), two], key=lambda f: f.start)


def _once(facts: Sequence[Fact]) -> list[Fact]:
    """What is told of the one and again of the other, once for each of them."""
    out: list[Fact] = []
    for fact in facts:
        alike = fact.quantity == "count" or fact.quantity in _WORN and any(f.quantity == fact.quantity and f.unit == fact.unit and f.value == fact.value for f in out)
        if not alike:
            out.append(replace(fact, of="") if fact.of in _NOBODYS else fact)
    return out
