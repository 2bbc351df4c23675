"""A cloth that is lit hangs behind somebody: "the background light is to read f/8 on the cloth" has none over the lamp."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"modifier"})
_CLOTH = Pattern(r"(?:cloth|sheet|muslin|canvas|silk|fabric|paper|bed ?sheet)s?", re.I)
_LIT_ON = Pattern(r"\b(?:f ?/? ?\d[\d.]*|reads?|reading|falls?|lights?|lit|aimed|pointed|light|metres?|m|feet|ft) (?:on|at|from|onto|off) (?:the|my|a|that) (?:(?:white|grey|gray|black|painted|plain|back|hanging) )*$", re.I)

_READS = Pattern(r" (?:(?:should|must|will|would|is to|has to) )?(?:reads?|meters?)\b", re.I)
"""After a cloth whose own reading is spoken of."""


_NO_NET = Pattern(r"[ -](?:store|shed|loft|house|maker|result|effect|gain|loss|change|curtain|bag)\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with each cloth that a background light falls on left out of what hangs in the light."""
    facts = [f for f in facts if not (f.quantity == "modifier" and f.said.strip().lower() in ("net", "a net", "the net") and _NO_NET.match(text, f.end))]
    cloths = [f for f in facts if f.quantity == "modifier" and _CLOTH.fullmatch(f.said.strip())]
    lit = {f.said.strip().lower() for f in cloths if f.of == "background" and (_LIT_ON.search(text[: f.start]) or _READS.match(text, f.end))}
    return [replace(f, quantity="remark", unit="", of="") if f in cloths and f.of in ("", "background") and f.said.strip().lower() in lit else f for f in facts] if lit else facts
