"""Glass that passes less than its f-number says, told as a difference: "the zoom is half a stop slower in T than in f"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"stops", "number", "loss", "relation"})
_T = r"(?:t|t[- ]?stops?|t[- ]?numbers?|transmission)"
_THAN_ITS_F = Pattern(
    rf"\s*(?:of a stop |stops? )?(?:slower|darker|dimmer|down|less|worse|off) (?:in|by|on|as a) {_T}\b"
    rf"|\s*(?:of a stop |stops? )?(?:slower|darker|dimmer|less|down|under)(?: light)? (?:than|from|on|against) (?:(?:its|the|what|it|marked|engraved|says|number|on|ring) )*(?:f[- ]?(?:stop|number|mark)s?\b|f\b(?! ?/?\d))"
    , re.I)
"""After so many stops: they are lost in the glass."""
_GLASS = Pattern(r"\b(?:zoom|lens|glass|prime|tele\w*|mirror|cine\b|t[- ]?stop|t[- ]?number|in t)\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with such a difference as what the glass takes.

    >>> settle([Fact("stops", 0.5, said="half a stop", start=12, end=23)], "the zoom is half a stop slower in T than in f")[0].quantity
    'filter_loss'
    """
    return [replace(f, quantity="filter_loss", value=abs(f.value), unit="", of="camera", cue="", to="") if f.quantity in KINDS and 0 < abs(f.value) < 4 and _THAN_ITS_F.match(text, f.end) and _GLASS.search(text) else f for f in facts]
