"""A film speed on an old scale that is named apart from the figure: "the dial is in GOST and sits on 180", "65 on the old GOST scale"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.bare import UNIT_NEXT
from assistant.language.film_words import speed_on_scale
from assistant.patterns import Pattern
from assistant.physics.film import OLD_SCALES
from assistant.query import Fact

KINDS = frozenset({"number", "film_speed"})
_SCALE = Pattern(r"\b(?P<scale>gost)\b", re.I)
_SCALE_AFTER = Pattern(r"[\s,]*(?:(?:on|in|by|of|from|degrees|units|points) )*(?:(?:the|that|this|an?|my|old|soviet|russian|older) )*(?P<scale>gost)\b", re.I)
_OWN_ISO = Pattern(r"\b(?:iso|asa|ei|din)(?: (?:of|film|speed))*\s*$", re.I)
_IS_IN_ISO = Pattern(r"(?:iso|asa|ei)(?: (?:of|film|speed))* ?\d", re.I)
"""A speed that is told in ISO; in "what ISO speed is 90 on the GOST scale?" it is asked."""
_NAMES = {name.lower(): name for name in OLD_SCALES}


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the one figure that is on the scale as a film speed; where two may be meant, as they were told."""
    scales = {_NAMES[found["scale"].lower()] for found in _SCALE.finditer(text)} if _SCALE.may_match(text) else set()
    if len(scales) != 1 or any(f.unit in OLD_SCALES for f in facts):
        return facts
    one = _on_the_scale([f for f in facts if f.quantity in KINDS and not f.unit and not f.bad and not UNIT_NEXT.match(text, f.end) and not (f.said[:1].isdigit() and _OWN_ISO.search(text[: f.start])) and not _IS_IN_ISO.match(f.said.strip())], text)
    made = speed_on_scale(one, scales.pop()) if one is not None else None
    return facts if made is None else [made if f is one else f for f in facts]


def _on_the_scale(figures: Sequence[Fact], text: str) -> Fact | None:
    """The figure right before the scale's name, else the only one."""
    beside = [f for f in figures if _SCALE_AFTER.match(text, f.end)]
    told = beside or figures
    return told[0] if len(told) == 1 else None
