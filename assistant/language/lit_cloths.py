"""A cloth that is lit hangs behind somebody: "the background light is to read f/8 on the cloth" has none over the lamp."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"modifier"})
_CLOTH = Pattern(r"(?:cloth|sheet|muslin|canvas|silk|fabric|paper|bed ?sheet)s?", re.I)
_LIT_ON = Pattern(r"\b(?:f ?/? ?\d[\d.]*|reads?|reading|falls?|lights?|lit|aimed|pointed|light|metres?|m|feet|ft) (?:on|at|from|onto|off) (?:the|my|a|that) (?:(?:white|grey|gray|black|painted|plain|back|hanging) )*$", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with each cloth that a background light falls on left out of what hangs in the light."""
    return [replace(f, quantity="remark", unit="", of="") if f.quantity == "modifier" and f.of == "background" and _CLOTH.fullmatch(f.said.strip()) and _LIT_ON.search(text[: f.start]) else f for f in facts]
