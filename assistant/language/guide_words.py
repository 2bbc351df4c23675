"""Guide numbers said without their name in front: "a 60 ft flash", "56 m is the gn", "its full power guide number"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

_FLASH_AFTER = Pattern(r"^\)?\s*(?:\w+\s+)?(?:flash(?:es|guns?)?|strobes?|speedlights?|guns?|units?|heads?)\b(?! (?:to|from|is|and|at|away))", re.IGNORECASE)
_IS_THE_GUIDE = Pattern(r"^\s*(?:is|was|'s)\s+(?:the|its|my|his|her)?\s*(?:gn|guide)\b", re.IGNORECASE)
_JOINED = Pattern(r"^\s*(?:and|plus|,)\s+(?:an?|one)\s*$", re.IGNORECASE)
_QUOTED = Pattern(r"(?:^|[.,;?!])(?!\s*(?:so |and |then )?(?:what|how|whats|give|find|bring|work)\b)[^.,;?!\d]*\b(?:gn|guide(?: number| no)?)\b[^.?\d]{0,16}\b(?:for|at|given at|quoted at|quoted for|given for)\s*$", re.IGNORECASE)


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """Lengths that are guide numbers made so, and the conditions a guide number is quoted for."""
    out = _lengths_of_flashes(list(facts), text)
    out = _quoted_for(out, text)
    return _full_power_guide(out, text)


def _lengths_of_flashes(facts: list[Fact], text: str) -> list[Fact]:
    if any(f.quantity.startswith("guide_number") for f in facts):
        return facts
    meant: set[int] = set()
    for n, fact in enumerate(facts):
        if fact.quantity != "distance" or fact.unit not in ("ft", "m"):
            continue
        article = patterns.search(r"(?:\ban?|\bone|\btwo|\d)\s*$", text[: fact.start], re.IGNORECASE)
        if _IS_THE_GUIDE.match(text[fact.end :]) or (_FLASH_AFTER.match(text[fact.end :]) and article):
            meant.add(n)
    for n in sorted(meant, reverse=True):
        if n and facts[n - 1].quantity == "distance" and _JOINED.match(text[facts[n - 1].end : facts[n].start]):
            meant.add(n - 1)
    return [replace(f, quantity="guide_number", value=f.value / LENGTH[f.unit], cue="") if n in meant else f for n, f in enumerate(facts)]


def _quoted_for(facts: list[Fact], text: str) -> list[Fact]:
    """"The guide number is for ISO 100": said apart from the number, but of it."""
    guide = next((n for n, f in enumerate(facts) if f.quantity == "guide_number"), None)
    if guide is None:
        return facts
    shot = facts[guide].at_iso
    for n, fact in enumerate(facts):
        if fact.quantity == "film_speed" and shot is not None and shot != fact.value and n > guide and _QUOTED.search(text[: fact.start]):
            return [replace(f, at_iso=fact.value) if m == guide else replace(f, value=shot) if m == n else f for m, f in enumerate(facts)]
        if fact.quantity == "film_speed" and n > guide and _QUOTED.search(text[: fact.start]) and sum(f.quantity == "film_speed" for f in facts) > 1:
            known = replace(facts[guide], at_iso=fact.value)
            return [known if m == guide else f for m, f in enumerate(facts) if m != n]
    return facts


def _full_power_guide(facts: list[Fact], text: str) -> list[Fact]:
    """"its full power guide number is 120 feet": full is what the number is for, not what is set."""
    powers = [f for f in facts if f.quantity == "power"]
    if len(powers) < 2:
        return facts
    return [f for f in facts if not (f.quantity == "power" and f.unit == "full" and patterns.match(r"^(?:[\s-]+power)?\s+(?:gn|guide)\b", text[f.end :], re.IGNORECASE))]
