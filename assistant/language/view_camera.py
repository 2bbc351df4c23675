"""Work at a view camera or a macro lens that sounds like work at a flash: the dark cloth over a head, a lens that is cranked out."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact

_UNDER_IT = Pattern(r"\b(?:under|beneath|underneath|below)(?: (?:the|my|a|that))?(?: (?:dark|black|focus\w*|viewing|velvet))*\s*$", re.I)
_DARK = Pattern(r"\b(?:dark|black|focus\w*|viewing|velvet)\s*$", re.I)
_OVER_ME = Pattern(r"\s*(?:is |goes )?(?:over|round|around|on) my (?:head|shoulders)\b", re.I)
_WOUND = Pattern(r"\s*(?:it |them |the \w+ |my \w+ )?(?:right |all the way |fully |well |hard |up |down )*(?:in|out|forward|up|down) (?:\w+ ){0,3}?to\b(?! full| half)|\s*(?:the|my) (?:lens|bellows|focus|rail|standard|macro|barrel)\b", re.I)
_OF_THE_LENS = frozenset({"focal_length", "extension", "magnification"})


def left_alone(facts: list[Fact], text: str) -> list[Fact]:
    """The facts without a cloth to look under and a power that was only a handle: "cranked out to life size"."""
    if _OF_THE_LENS.isdisjoint([f.quantity for f in facts]):
        return facts
    lost = {f.unit for f in facts if f.quantity == "loss"}
    return [f for f in facts if not (f.quantity == "modifier" and f.unit not in lost and _is_to_look_under(f, text) or f.quantity == "power" and f.said.lower().strip() == "cranked" and _WOUND.match(text, f.end))]


def _is_to_look_under(cloth: Fact, text: str) -> bool:
    if cloth.said.lower().strip().split()[-1:] not in (["cloth"], ["cloths"]):
        return False
    before = text[max(0, cloth.start - 40) : cloth.start]
    return _UNDER_IT.search(before) is not None or _DARK.search(before) is not None or _OVER_ME.match(text, cloth.end) is not None
