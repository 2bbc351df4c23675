"""Settings said in words, written as marks, so that the rules read "a sixtieth" as they read "1/60"."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from operator import attrgetter

from assistant import patterns
from assistant.query import Fact
from assistant.units import LENGTH

_WRITTEN: dict[str, Callable[[Fact], str]] = {
    "aperture": lambda f: f"f/{f.value:g}",
    "aperture_range": lambda f: f"f/{f.value:g} to f/{f.other:g}",
    "shutter": lambda f: f"1/{1 / f.value:g}" if f.value < 1 else f"{f.value:g} s",
    "film_speed": lambda f: f"iso {f.value:g}",
    "distance": lambda f: f"{f.value / LENGTH[f.unit]:g} {f.unit}",
}


def in_marks(text: str, facts: Iterable[Fact]) -> str:
    """The text with its spoken apertures, times, film speeds and distances as marks.

    >>> in_marks("from f eight to a sixtieth", [Fact("shutter", 1 / 60, start=16, end=26, said="a sixtieth"), Fact("aperture", 8.0, start=5, end=12, said="f eight")])
    'from f/8 to 1/60'
    """
    out = text
    for fact in sorted(facts, key=attrgetter("start"), reverse=True):
        if _spoken(fact, text):
            out = out[: fact.start] + _WRITTEN[fact.quantity](fact) + out[fact.end :]
    return out


def _spoken(fact: Fact, text: str) -> bool:
    """Said in words, or as a time without its stroke ("a 60th"), and in this very text."""
    if fact.quantity not in _WRITTEN or fact.bad or not 0 < fact.value < math.inf or text[fact.start : fact.end] != fact.said:
        return False
    if fact.quantity == "film_speed" and fact.unit == "DIN":
        return True
    if fact.quantity == "aperture_range" and not 0 < fact.other < math.inf or fact.quantity == "distance" and fact.unit not in LENGTH:
        return False
    if fact.quantity == "shutter":
        return fact.value < 1 and "/" not in fact.said and patterns.search(r"th\b|ths\b", fact.said.lower()) is not None
    return patterns.search(r"\d", fact.said) is None and patterns.match(r"an? ", fact.said.lower()) is None
