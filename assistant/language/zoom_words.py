"""Zoom heads told in words: a guide number for each setting, and the setting it stands at.

"GN 28 at 35 mm and 40 at 85, zoomed to 50" · "and zoomed to 105?"
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import zoom_figures
from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.units import LENGTH

_NUMBER = r"(\d+(?:\.\d+)?)"
_SET_TO = Pattern(rf"(?:zoomed(?: in| out)?(?: to| at)?|zoom(?: is| head)?(?: set)?(?: at| to| on)?|(?:head|it|i'm|flash)(?: is|'s)?(?: set| zoomed| now)?(?: at| to| on)|set (?:at|to|on)|at the|on the|using|with it at|now at|what about|and at|at)\s+(?:the )?{_NUMBER}\s*-?(?:mm)?\b", re.I)


_OF_A_HEAD = Pattern(r"\bzoom|\b\d+ (?:setting|position)\b|\bhead\b|\breflector at\b|(?:\b|\d)mm\b", re.I)
_OF_THE_MAKER = Pattern(r"\b(?:book|booklet|manual|maker|makers|leaflet|printed|scale|chart|table|data ?sheet|label|rated|reach|reaches)\b", re.I)
_GUIDE = Pattern(r"\bgn\b|guide|leitzahl", re.I)
_ZOOM = Pattern(r"\bzoom(?!s? lens)", re.I)


def table(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with guide numbers by zoom as zoom_row facts (value: guide number, other: mm) and the setting chosen."""
    facts = covers_a_lens(facts, text)
    if not _OF_A_HEAD.search(text):
        return _zoom_alone(facts, text)
    named = _GUIDE.search(text) is not None
    if not (named or _ZOOM.search(text)):
        return _zoom_alone(facts, text)
    told = zoom_figures.figures(facts, text)
    rows = zoom_figures.rows(told)
    if len(rows) < 2 or not named and not _OF_THE_MAKER.search(text) and any(_LENGTH_AFTER.match(text[f.end :]) for f in told if any(a <= f.start < b for a, b, _, _ in rows)):
        return _zoom_alone(zoom_figures.at_the_ends(facts, text) if named else facts, text)
    return _chosen(facts, rows, told, text)


def _chosen(facts: list[Fact], rows: list[zoom_figures.Row], told: list[zoom_figures.Figure], text: str) -> list[Fact]:
    """The rows of the table, and the settings said after it: one that it stands at, or from one to another."""
    guide = next((f for f in facts if f.quantity == "guide_number" and f.unit), None)
    unit = (guide.unit if guide else "") or _said_unit(text)
    made = [Fact("zoom_row", gn, unit, other=mm, start=a, end=b, said=text[a:b], sentence=0) for a, b, gn, mm in rows]
    last, settings = rows[-1][1], {mm for _, _, _, mm in rows}
    rest = [f for f in facts if not any(f.start < b and f.end > a for a, b, _, _ in rows) and f.quantity != "guide_number"]
    again = [f for f in told if f.start >= last and f.value in settings and f.kind != "guide"]
    chosen = [Fact("zoom", f.value, "mm", start=f.start, end=f.end, said=text[f.start : f.end]) for f in again] or _set_to(text, rows)
    chosen = _from_to(text, last, settings) or chosen
    if not chosen:
        lens = next((f for f in rest if f.quantity == "focal_length"), None)
        return made + ([replace(lens, quantity="zoom", value=lens.value * 1000)] if lens else []) + rest
    rest = [f for f in rest if not any(f.start < z.end and f.end > z.start for z in chosen)]
    return made + chosen + [f for f in rest if f.quantity not in ("focal_length", "zoom") or f.start < 0]


_BOTH_ENDS = Pattern(r"\bfrom (?:the )?(?P<one>\d{2,3})(?: ?mm)? (?:back |out |in |up |down )?to (?:the )?(?P<two>\d{2,3})(?: ?mm)?\b(?! ?(?:ft|feet|m\b|metres?|meters?))", re.I)


def _from_to(text: str, after: int, settings: set[float]) -> list[Fact]:
    """"zooming from 105 to 50": both ends, also where the table has only one of them."""
    found = _BOTH_ENDS.search(text[after:])
    if found is None or not settings & {float(found["one"]), float(found["two"])}:
        return []
    return [Fact("zoom", float(found[end]), "mm", start=after + found.start(end), end=after + found.end(end), said=found[end]) for end in ("one", "two")]


def _set_to(text: str, rows: list[zoom_figures.Row]) -> list[Fact]:
    """"zoomed to 50": a setting that is not in the table."""
    found = [m for m in _SET_TO.finditer(text) if not any(a <= m.start(1) < b for a, b, _, _ in rows) and 10 <= float(m[1]) <= 400]
    found = [m for m in found if not patterns.match(r"\s*(?:ft|feet|m\b|metres?|meters?|asa|film|iso)", text[m.end() :], re.I)]
    return [Fact("zoom", float(m[1]), "mm", start=m.start(1), end=m.end(), said=m[1]) for m in found[-1:]]


_LENGTH_AFTER = Pattern(r"\s*-?\s*(?:m|ft|feet|foot|met(?:re|er)s?)\b", re.I)
_STANDS = Pattern(rf"\b(?:zoom(?: head)?|(?:flash )?head|flash)(?:'s| is| was)? (?:still )?(?:left|stuck|jammed|parked|fixed|sitting|locked|set)(?: still)? (?:at|on|to|for) (?:the |its )?{_NUMBER}\s*-?(?:mm)?(?: (?:position|setting|mark))?\b(?!\s*(?:ft|feet|m\b|metre|meter|power|%))", re.I)
"""A head that stands at a setting: "the head is stuck on the 50 position"."""
_ZOOMED = Pattern(rf"\b(?:pull|push|bring|tak|set|mov|rack)\w* (?:the |my )?(?:flash )?(?:head|zoom)(?: back| out| in)? to\s+(?:the )?{_NUMBER}\b(?!\s*(?:ft|feet|m\b|metre|meter))|\bzoom(?:ed|ing)?(?: in| out| head| the head)?(?: is| set)?(?: to| at| on)?\s+(?:the )?{_NUMBER}\s*-?(?:mm)?\b(?!\s*(?:ft|feet|m\b|metre|meter))", re.I)


_GUIDE_AT = Pattern(r"\b(?:gn|guide(?: number| no\.?)?)(?: of (?:it|the \w+))? (?:at|on|for|in) (?:the |its )?\d{2,3} ?mm(?: (?:setting|position|end|mark|zoom))?(?:'s| is| was| of|:)? (?:about )?$", re.I)
"""Right before a length: "its guide number at the 105 mm setting is 50 m"."""


def _zoom_alone(facts: list[Fact], text: str) -> list[Fact]:
    """"and zoomed to 105?": a setting for a table told before; a guide number that is told for one setting."""
    out = [replace(f, quantity="guide_number", value=f.value / LENGTH[f.unit], cue="") if f.quantity == "distance" and f.unit in ("ft", "m") and _GUIDE_AT.search(text[max(0, f.start - 70) : f.start]) else f for f in facts]
    for match in (*_ZOOMED.finditer(text), *_STANDS.finditer(text)):
        group = 1 if match[1] else 2
        if any(f.quantity == "zoom" and f.start == match.start(group) for f in out):
            continue
        if not 10 <= float(match[group]) <= 400:
            continue
        rest = [f for f in out if not (f.start < match.end() and f.end > match.start(group) and f.quantity in ("number", "focal_length", "distance"))]
        out = [*rest, Fact("zoom", float(match[group]), "mm", start=match.start(group), end=match.end(), said=match[group])]
    return out


def _said_unit(text: str) -> str:
    if patterns.search(r"\bmetres?\b|\bmeters?\b|\d\s*m\b", text, re.I) and not patterns.search(r"\bfeet\b|\bft\b|\bfoot\b", text, re.I):
        return "m"
    return ""


_WON_OR_LOST = Pattern(r"\b(?:what|how much)(?:'s|s| do| does| will| would| did| have| has| is| am| are)?(?: \w+){0,3}? (?:los[et]|loses|losing|giv(?:e|ing) (?:up|away)|gain(?:s|ed|ing)?|win|won|buys?|bought|costs?|costing)\b|\bstops? (?:gained|lost|won)\b", re.I)


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """"what do I lose at 35?" of a table of settings: stops."""
    kinds = [f.quantity for f in facts]
    told = kinds.count("zoom_row") > 1 and "distance" not in kinds and "aperture" not in kinds
    return [Ask("stops", "", "")] if told and not asks and _WON_OR_LOST.search(text) else list(asks)


_COVERS_LENS = Pattern(r"\b(?:flash|head|gun|strobe|light|lamp|it|beam|that|which|reflector|dish)(?: head)?(?: only| just)? (?:covers?|is good for|is (?:wide )?enough for|spreads (?:for|as wide as)|lights|is made for|reaches|will cover|can cover|does|suits)(?: only| just)?(?: up to| down to| as wide as| the (?:angle|view|field) of| for)?(?: an?| the)? (?P<n>\d{2,3}) ?(?:mm|mil)?\b(?! ?(?:degrees?|°|ft|feet|m\b|metres|meters|people|stops))", re.I)
_SEES = Pattern(r"(?<![\d./])(?P<n>\d{2,3})(?: ?mm|mil)?(?= (?:lens|frame|shot|picture|view|glass|wide|prime)\b| on (?:the|my) (?:camera|body)\b| on\b|\W*$|[?.,:;] )", re.I)
_WHOLE_FRAME = Pattern(r"\b(?:corners?|edges?|cover\w*|whole|full(?: frame)?|light (?:a|the|my|all)|lit|vignett\w*|dark|into)\b", re.I)


_OF_ANOTHER_MATTER = frozenset({"zoom", "zoom_row", "guide_number", "distance", "degrees"})


def covers_a_lens(facts: list[Fact], text: str) -> list[Fact]:
    """"the head covers a 35 mm lens and no wider; will it light a 28 mm frame": what the head is wide enough for, and what the lens sees."""
    kinds = {f.quantity for f in facts}
    head = _COVERS_LENS.search(text) if kinds.isdisjoint(_OF_ANOTHER_MATTER) else None
    if head is None or not 14 <= float(head["n"]) <= 200:
        return facts
    lens = next((m for m in _SEES.finditer(text) if m.start() >= head.end() and 10 <= float(m["n"]) <= 600), None) or next((m for m in _SEES.finditer(text) if m.end() <= head.start() and 10 <= float(m["n"]) <= 600), None)
    if lens is None or not _WHOLE_FRAME.search(text):
        return facts
    places = ((head.start("n"), head.end("n"), "zoom", float(head["n"])), (lens.start("n"), lens.end("n"), "focal_length", float(lens["n"]) / 1000))
    rest = [f for f in facts if not any(f.start < end and f.end > start for start, end, _, _ in places) and f.quantity not in ("focal_length", "frame_side")]
    made = [Fact(quantity, value, "mm", start=start, end=end, said=text[start:end]) for start, end, quantity, value in places]
    return sorted([*rest, *made], key=lambda f: f.start)
