"""Two times by their figures alone, which of them is the quicker: "125 or 500" on a shutter dial."""

from __future__ import annotations

import re

from assistant.language.bare import UNIT_NEXT
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"number"})
_DIAL = frozenset({2, 4, 8, 15, 30, 60, 125, 250, 500, 1000, 2000, 4000, 8000})
"""What the dial of a shutter is marked with, the 1/ left out."""
_QUICKER = Pattern(r"\b(?:which|what)\b[^.?!]{0,24}\b(?:quick|fast|slow|short|long)(?:er|est)\b(?! (?:lens|glass|film|recycl))", re.I)
_OF_FILM = Pattern(r"\b(?:films?|rolls?|stock|iso|asa|din|sensitiv\w*|lens|glass|flash|recycl\w*|pack|charge)\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with two such figures as parts of a second, where nothing else is told and no film is spoken of.

    A hundred and four hundred stay films; 125 and 500 are on both scales, two stops apart on either.
    """
    told = [f for f in facts if f.quantity != "remark"]
    pair = len(told) == 2 and all((f.quantity == "number" or f.quantity == "film_speed" and not f.unit) and f.value in _DIAL and f.said.strip().isdigit() and not f.bad for f in told)
    if not pair or told[0].value == told[1].value or not _QUICKER.search(text) or _OF_FILM.search(text) or any(UNIT_NEXT.match(text, f.end) for f in told):
        return facts
    return [replace(f, quantity="shutter", value=1 / f.value, unit="s", of="") if f in told else f for f in facts]
