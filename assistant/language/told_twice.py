"""A setting of the lens that is told a second time: the same focus again, or a second scale said as a bare figure."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with what was told a second time known for the same setting."""
    return _focus_again(_another_scale(facts, text))


def _focus_again(facts: list[Fact]) -> list[Fact]:
    """"focused at 6 m: at what stop is 6 m the hyperfocal distance?": one length said twice, where no flash is spoken of."""
    focus = {f.value for f in facts if f.quantity == "focus_distance"}
    if not focus or any(f.quantity in ("guide_number", "power", "energy") for f in facts):
        return facts
    return [replace(f, quantity="focus_distance", of="camera", cue="") if f.quantity == "distance" and not f.of and f.value in focus else f for f in facts]


_IN_TO = Pattern(r"\b(?:in|out|up|down|on|go|going|went|back|from|and|or) (?:to|at) $|\b(?:to|from) $", re.I)


def _another_scale(facts: list[Fact], text: str) -> list[Fact]:
    """"from 0.25 to life size", "right at 0.2 times life size; now I close in to 0.5": no lens opens so wide, so it is a scale as well."""
    if not any(f.quantity == "magnification" for f in facts):
        return facts
    return [replace(f, quantity="magnification", unit="", of="") if f.quantity in ("aperture", "number") and 0 < f.value < _WIDEST and "f" not in f.said.lower() and not f.bad and _IN_TO.search(text[max(0, f.start - 12) : f.start]) else f for f in facts]


_WIDEST = 0.9
"""No lens opens wider."""
