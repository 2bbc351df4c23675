"""Zoom heads told in words: a guide number for each setting, and the setting it stands at.

"GN 28 at 35 mm and 40 at 85, zoomed to 50" · "and zoomed to 105?"
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_NUMBER = r"(\d+(?:\.\d+)?)"
_UNIT = r"(?:\s*(?:m|metres?|meters?|ft|feet|foot))?"
_GUIDE_AT_ZOOM = Pattern(rf"{_NUMBER}{_UNIT}\s*,?\s*(?:(?:with|when|if|once) (?:the |its )?(?:(?:head|zoom|it|it's|its|flash)(?: is|'s)? )?)?(?:is |it's )?(?:zoomed (?:to|at)|set (?:to|at)|at|@|for|on|\()\s*(?:the |its )?(?:zoom )?{_NUMBER}\s*-?(?:mm|mil)?(?: (?:setting|position|zoom))?\)?", re.I)
_ZOOM_GIVES_GUIDE = Pattern(rf"(?:at |zoom(?:ed)? (?:to |at )?)?{_NUMBER}\s*-?mm\s*(?:setting )?(?::|=|gives|is|it's|->|reads|,)?\s*(?:a )?(?:guide number |guide |gn )?(?:of )?{_NUMBER}{_UNIT}", re.I)
_ZOOMED_IS_GUIDE = Pattern(rf"\bzoom(?:ed)?(?: in| out)? (?:to|at) {_NUMBER}\s*(?:mm|mil)?\s*,?\s*(?:(?:the|my) (?:flash|head|gn|guide(?: number)?) |it )?(?:is|it's|'s|gives|has|=)?\s*(?:an? )?(?:guide number |guide |gn )?(?:of )?{_NUMBER}{_UNIT}\b", re.I)
_SET_TO = Pattern(rf"(?:zoomed(?: in| out)?(?: to| at)?|zoom(?: is| head)?(?: set)?(?: at| to| on)?|(?:head|it|i'm|flash)(?: is|'s)?(?: set| zoomed| now)?(?: at| to| on)|set (?:at|to|on)|at the|on the|using|with it at|now at|what about|and at|at)\s+(?:the )?{_NUMBER}\s*-?(?:mm)?\b", re.I)


def table(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with guide numbers by zoom as zoom_row facts (value: guide number, other: mm) and the setting chosen."""
    if not patterns.search(r"\bzoom|\bhead\b|(?:\b|\d)mm\b", text, re.I) or not patterns.search(r"\bgn\b|guide", text, re.I):
        return _zoom_alone(facts, text)
    rows = _rows(text)
    if len(rows) < 2:
        return _zoom_alone(facts, text)
    spans = [(a, b) for a, b, _, _ in rows]
    guide = next((f for f in facts if f.quantity == "guide_number"), None)
    unit = (guide.unit if guide else "") or _said_unit(text)
    table = [Fact("zoom_row", gn, unit, other=zoom, start=a, end=b, said=text[a:b], sentence=0) for a, b, gn, zoom in rows]
    rest = [f for f in facts if not any(a <= f.start < b for a, b in spans) and f.quantity not in ("guide_number",)]
    chosen = [m for m in _SET_TO.finditer(text) if not any(a <= m.start(1) < b for a, b in spans)]
    chosen = [m for m in chosen if 10 <= float(m[1]) <= 400 and not patterns.match(r"\s*(?:ft|feet|m\b|metres?|meters?|asa|film|iso)", text[m.end() :], re.I)]
    if not chosen:
        lens = next((f for f in rest if f.quantity == "focal_length"), None)
        setting = [replace(lens, quantity="zoom", value=lens.value * 1000)] if lens else []
        return table + setting + rest
    match = chosen[-1]
    zoom = Fact("zoom", float(match[1]), "mm", start=match.start(1), end=match.end(), said=match[1])
    rest = [f for f in rest if not (f.start >= match.start(1) and f.start < match.end())]
    return table + [zoom] + [f for f in rest if f.quantity != "focal_length" or f.start < 0]


_ZOOMED = Pattern(rf"\b(?:pull|push|bring|tak|set|mov|rack)\w* (?:the |my )?(?:flash )?(?:head|zoom)(?: back| out| in)? to\s+(?:the )?{_NUMBER}\b(?!\s*(?:ft|feet|m\b|metre|meter))|\bzoom(?:ed|ing)?(?: in| out| head| the head)?(?: is| set)?(?: to| at| on)?\s+(?:the )?{_NUMBER}\s*-?(?:mm)?\b(?!\s*(?:ft|feet|m\b|metre|meter))", re.I)


def _zoom_alone(facts: list[Fact], text: str) -> list[Fact]:
    """"and zoomed to 105?": a setting for a table told before."""
    out = facts
    for match in _ZOOMED.finditer(text):
        group = 1 if match[1] else 2
        if not 10 <= float(match[group]) <= 400:
            continue
        rest = [f for f in out if not (f.start < match.end() and f.end > match.start(group) and f.quantity in ("number", "focal_length", "distance"))]
        out = [*rest, Fact("zoom", float(match[group]), "mm", start=match.start(group), end=match.end(), said=match[group])]
    return out


def _rows(text: str) -> list[tuple[int, int, float, float]]:
    forward = [(m.start(), m.end(), float(m[1]), float(m[2])) for m in _GUIDE_AT_ZOOM.finditer(text)]
    backward = [(m.start(), m.end(), float(m[2]), float(m[1])) for m in _ZOOM_GIVES_GUIDE.finditer(text)] or [(m.start(), m.end(), float(m[2]), float(m[1])) for m in _ZOOMED_IS_GUIDE.finditer(text)]
    def plausible(rows: list[tuple[int, int, float, float]]) -> list[tuple[int, int, float, float]]:
        return [r for r in rows if 10 <= r[3] <= 300 and 3 <= r[2] <= 400]
    rows = max((plausible(forward), plausible(backward)), key=len)
    ordered = sorted(rows, key=lambda r: r[3])
    rising = all(a[2] < b[2] and a[3] < b[3] for a, b in zip(ordered, ordered[1:]))
    return rows if rising else []


def _said_unit(text: str) -> str:
    if patterns.search(r"\bmetres?\b|\bmeters?\b|\d\s*m\b", text, re.I) and not patterns.search(r"\bfeet\b|\bft\b|\bfoot\b", text, re.I):
        return "m"
    return ""
