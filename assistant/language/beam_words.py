"""The patch that a beam lights: "a 20 degree grid 8 feet from the paper, how wide is the circle?"; how far off for a width, and which angle."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.solving.lit_patch import WIDE_ASKED

_IN_DEGREES = Pattern(r"[\s-]*(?:degrees?\b|deg\b|°)(?! ?(?:din|celsius|centigrade|fahrenheit|kelvin|[cfk]\b))", re.I)
_OF_A_BEAM = Pattern(r"\bbeam|\bgrid|\bsnoot|\bspread|\breflector|\bhoneycomb|\bspot\b|\bpatch|\bcircle|\bpool\b|\bcon(?:e|ical)\b|\bdish\b", re.I)
_LENGTHS = frozenset({"distance", "gap"})
KINDS = frozenset({"focal_length", "film_speed", "number", "zoom", "aperture"})
"""What the figure before "degree grid" may have been taken for."""
_OTHERS = frozenset({"degrees", "modifier", "remark", "place", "count", "distance", "gap", "size"})


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """"a 20 degree grid": an angle, and neither a lens nor a film.

    >>> [f.quantity for f in settle([Fact("focal_length", 0.02, "mm", start=2, end=4, said="20")], "a 20 degree grid lights how wide a circle?")]
    ['degrees']
    """
    if _OF_A_BEAM.search(text) is None or any(f.quantity in ("guide_number", "loss", "stops") for f in facts):
        return facts
    return [_angle(f, text) if f.quantity in KINDS and _IN_DEGREES.match(text, f.end) else f for f in facts]


def _angle(fact: Fact, text: str) -> Fact:
    figures = fact.said.strip()
    return replace(fact, quantity="degrees", value=float(figures), unit="degrees", of="", cue="", bad="") if figures.replace(".", "", 1).isdecimal() else fact


_TO_COVER = Pattern(r"\b(?:how far|what distance|how close|how near)\b[^.?!]*\b(?:cover|fill|light|reach across|span)\w*\b", re.I)


def asked(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """How wide the patch is, or how far off for such a width, where the beam's angle is told or its width elsewhere."""
    kinds = [f.quantity for f in facts]
    lengths = sum(kind in _LENGTHS for kind in kinds)
    if not _OTHERS.issuperset(kinds) or _OF_A_BEAM.search(text) is None and "degrees" not in kinds:
        return asks
    if kinds.count("degrees") == 1 and lengths == 1:
        return [Ask("coverage")] if WIDE_ASKED.search(text) else [Ask("distance")] if _TO_COVER.search(text) else asks
    return [Ask("coverage")] if "degrees" not in kinds and lengths == 3 and WIDE_ASKED.search(text) else asks
