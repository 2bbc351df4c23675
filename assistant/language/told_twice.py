"""What is told a second time: the same focus again, a second scale said as a bare figure, the stops that it is out by."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with what was told a second time known for the same setting."""
    return _focus_again(_another_scale(_factor_at_a_scale(facts, text), text))


_OUT_BY = frozenset({"more", "less"})
_OUT = Pattern(r"\s*(?:too\b|over\b|under\b|hot\b|out\b)", re.I)
_LOSES = Pattern(r"\b(?:lose|shed|drop|kill|gain|regain|recover|win back|get back|take (?:off|out|away)|make up(?: for)?|put right|correct|cure|undo|get rid of)(?: (?:that|this|those|the|these|my|both|his|her))(?: extra| missing| too many)? $", re.I)


_TO_LOSE = Pattern(r"\bto (?:lose|shed|drop|kill|cut|gain|regain|recover|win back|get back|take off|bring (?:it )?(?:down|up)|come down|make up)(?: it)?(?: by)?(?: (?:exactly|just|precisely|only|the full|a full|the whole|a whole))? $", re.I)
"""What it is done for, told at the end: "how far back do I go to drop exactly one stop"."""


def stops_again(facts: list[Fact], text: str) -> list[Fact]:
    """"it's a stop too hot. How far back, to lose that one stop?": the stops that it is out by, and no others."""
    out = [f for f in facts if f.quantity == "stops" and (f.cue in _OUT_BY or _OUT.match(text, f.end))]
    if len(out) != 1:
        return facts
    return [f for f in facts if not (f is not out[0] and f.quantity in ("stops", "loss", "power_down") and f.start > out[0].end and f.value == out[0].value and _is_lost(text[max(0, f.start - 40) : f.start]))]


def _is_lost(before: str) -> bool:
    return _LOSES.search(before) is not None or _TO_LOSE.search(before) is not None


_FACTOR_AT = Pattern(r"\bfactor (?:at|for) (?:some|a|this|that|one|a certain) (?:unknown )?$", re.I)


def _factor_at_a_scale(facts: list[Fact], text: str) -> list[Fact]:
    """"the exposure factor at some magnification is 2.25": the factor's figure, and no scale."""
    return [replace(f, quantity="factor", unit="", of="") if f.quantity == "magnification" and f.said.lower().startswith("magnification") and _FACTOR_AT.search(text[: f.start]) else f for f in facts]


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


_OR_ANOTHER = Pattern(r"\b(?:or|and|than|against|versus|vs)(?: (?:that|the one|with|of|for|on))*(?: an?| the| my)? $", re.I)
_LENSES = (14, 600)
"""Millimetres of the lenses that are named by a bare number."""


def another_lens(facts: list[Fact], text: str) -> list[Fact]:
    """"which has more depth, a 35 or an 85?": the second lens, named as barely as the first."""
    first = [f for f in facts if f.quantity == "focal_length"]
    if len(first) != 1 or first[0].unit != "mm":
        return facts
    bare = [f for f in facts if f.quantity == "number" and not f.bad and f.start > first[0].end and _LENSES[0] <= f.value <= _LENSES[1] and _OR_ANOTHER.search(text[max(0, f.start - 24) : f.start]) and text[f.end : f.end + 1] in ("", "?", ".", ",", " ")]
    return [replace(f, quantity="focal_length", value=f.value / 1000, unit="mm", of="") if f in bare[:1] else f for f in facts]


def by_its_family(facts: list[Fact], text: str) -> list[Fact]:
    """"a shoot-through umbrella, and that umbrella I measured at two stops": the loss is that of the one umbrella there is."""
    worn = [f for f in facts if f.quantity == "modifier" and f.unit != "BARE"]
    if len({f.unit for f in worn}) != 1:
        return list(facts)
    mine = worn[0]
    return [replace(f, unit=mine.unit) if f.quantity == "loss" and f.unit and f.unit != mine.unit and mine.said.strip().lower().endswith(f" {f.unit}") else f for f in facts]
