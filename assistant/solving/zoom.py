"""Zoom heads: which guide number of a maker's table counts, and what zooming gains."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.flash import interpolate_zoom_guide_number
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.lights import guide_unit
from assistant.solving.solution import Solution, needs

_BACK = Pattern(r"\b(?:los[et]|losing|loss|cost\w*|zoom\w* (?:out|back)|pull\w* back|wider|giv\w+ (?:up|away))\b", re.I)
_LOSES = Pattern(r"\b(?:los[et]|losing|loses|loss|costs?|costing|sacrific\w*|forfeit\w*|giv\w+ (?:up|away))\b", re.I)
_GAINS = Pattern(r"\b(?:gain\w*|win|winning|won|pick up|more light)\b", re.I)
_FROM_TO = Pattern(r"(\d+(?:\.\d+)?)\s*(?:m|metres?|meters?|ft|feet)?\s*(?:to|up to|->|and)\s*(\d+(?:\.\d+)?)\s*(?:m\b|metres?|meters?|ft|feet)?(?!\s*mm)", re.I)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the guide number of the zoom setting in place of the table."""
    rows, settings = query.all("zoom_row"), query.all("zoom")
    if len(rows) < 2 or not settings or _gained(query, rows) or _same_light(query, rows) or _other_end(query, rows) or _known_at(query, rows) is not None:
        return None
    setting = settings[-1]
    table = [(f.other, f.value) for f in rows]
    value = interpolate_zoom_guide_number(setting.value, table)
    exact = any(math.isclose(setting.value, mm) for mm, _ in table)
    guide = replace(rows[0], quantity="guide_number", value=value, other=math.nan, at_iso=None)
    note = f"Only the guide number at {setting.value:g} mm counts." if exact else _estimated(setting.value, value)
    facts = [f for f in query.facts if f not in rows and f is not setting] + [guide]
    return query.with_facts(facts), (*rows, setting), (note,)


def solve(query: Query) -> Solution | None:
    """What zooming gains in stops, or the setting that is missing; None without a table."""
    rows = query.all("zoom_row")
    if len(rows) < 2:
        return _only_guide(query) or _gain(query)
    if _gained(query, rows):
        return _from_to(query, rows)
    if _same_light(query, rows):
        return _turned_to(query, rows)
    if _other_end(query, rows):
        return _opened_for(query, rows)
    known = _known_at(query, rows)
    if known is not None:
        return _carried(query, *known)
    return needs(("focal_length",), "I need the zoom setting of the head, in millimetres.", tuple(rows), "zoom")


_QUESTION = Pattern(r"\b(?:what|which|how)\b(?:(?!\b(?:if|when|where|given|since)\b)[^?;,.])*", re.I)


def _known_at(query: Query, rows: Sequence[Fact]) -> tuple[Fact, Fact, Fact] | None:
    """"it gave f/8 at 24 mm; what at 85 mm from the same place?": the f-number, the row it was found with, and the row that is asked of."""
    read = query.all("aperture")
    if len(read) != 1 or len(rows) != 2 or not query.asks_for("aperture") or any(query.has(q) for q in ("distance", "path", "loss", "power")) or any(f.origin != "said" for f in (*read, *rows)):
        return None
    asks = _QUESTION.search(query.text)
    asked = {f.value for f in query.all("zoom") if asks is not None and asks.start() < f.start < asks.end()}
    if asks is None or asks.start() < read[0].start < asks.end():
        return None
    if not query.all("zoom") and rows[0].start < read[0].start < rows[1].start and asks.end() > rows[1].start:
        return read[0], rows[0], rows[1]  # read at the first, then the second is turned to
    if len(asked) != 1:
        return None
    wanted = [row for row in rows if row.other in asked]
    return (read[0], next(row for row in rows if row is not wanted[0]), wanted[0]) if len(wanted) == 1 else None


def _carried(query: Query, read: Fact, known: Fact, wanted: Fact) -> Solution:
    """At one distance f-numbers go as the guide numbers do."""
    note = f"From one place f-numbers go as guide numbers: {wanted.value:g} / {known.value:g}."
    return Solution(answers=(marks.aperture(read.value * wanted.value / known.value),), used=(read, known, wanted, *query.all("zoom"), *query.all("film_speed")), topic="zoom", notes=(note,))


_FROM = Pattern(r"\bfrom (?:the )?$", re.I)


def _from_to(query: Query, rows: list[Fact]) -> Solution:
    """What going from one setting to another gives or costs: as the words say, else in the order of the settings said."""
    by_mm = {row.other: row for row in rows}
    between = list(dict.fromkeys(f.value for f in query.all("zoom") if f.value not in by_mm))
    by_mm |= {mm: replace(rows[0], value=interpolate_zoom_guide_number(mm, [(f.other, f.value) for f in rows]), other=mm) for mm in between}
    said = [f for f in query.facts if f.quantity in ("zoom", "number") and f.value in by_mm]
    span = query.last("number_range") or query.last("length_range")
    ends = sorted(rows, key=lambda f: f.other)
    one, two = ends[0], ends[-1]
    settings = list(dict.fromkeys(f.value for f in said))
    explicit = len(settings) > 1 and (said[0].cue == "from" or _FROM.search(query.text[max(0, said[0].start - 12) : said[0].start]) is not None)
    if len(settings) > 1:
        one, two = by_mm[settings[0]], by_mm[settings[1]]
    elif settings and len(rows) == 2:
        two = by_mm[settings[0]]
        one = next(row for row in rows if row is not two)
    elif span is not None and span.value > span.other:
        one, two = two, one
    if not explicit and (_LOSES.search(query.text) or not settings and _BACK.search(query.text)) and two.value > one.value or not explicit and _GAINS.search(query.text) and two.value < one.value:
        one, two = two, one
    used = (*rows, *said, *((span,) if span else ()))
    notes = tuple(_estimated(mm, by_mm[mm].value) for mm in between)
    return Solution(answers=(marks.stops(2 * math.log2(two.value / one.value)),), used=used, topic="zoom", notes=notes)


def _estimated(mm: float, guide: float) -> str:
    return f"Guide number {guide:.3g} at {mm:g} mm is an estimate, taken between the table's settings in stops."


def _same_light(query: Query, rows: Sequence[Fact]) -> bool:
    """Whether it is the power asked that makes up for zooming from one setting of the table to another."""
    told = {f.other for f in rows}
    settings = list(dict.fromkeys(f.value for f in query.all("zoom")))
    apart = len(settings) == 2 and set(settings) <= told and not any(query.has(q) for q in ("distance", "aperture", "loss", "film_speed"))
    return apart and query.asks_for("power") and len({f.value for f in query.all("power")}) <= 1 and _FROM.search(query.text[: query.all("zoom")[0].start]) is not None


def _turned_to(query: Query, rows: Sequence[Fact]) -> Solution:
    """"if I zoom from 35 to 85, what power keeps the f-stop": less by the light that is gained."""
    by_mm = {row.other: row.value for row in rows}
    zooms, powers = query.all("zoom"), query.all("power")
    one, two = (by_mm[mm] for mm in dict.fromkeys(f.value for f in zooms))
    value = (powers[0].value if powers else 1.0) * (one / two) ** 2
    used = (*rows, *zooms, *powers)
    if value > 1.0 + 1e-9:
        return Solution("out_of_reach", f"It would take {value:.3g} times full power.", (marks.power(value),), used=used, topic="zoom")
    return Solution(answers=(marks.power(value),), used=used, topic="zoom", notes=(f"The guide number goes from {one:g} to {two:g}: {2 * math.log2(two / one):+.2f} stops.",))


def _other_end(query: Query, rows: Sequence[Fact]) -> bool:
    """Whether it is the aperture at one setting of the table that is asked, from the one that was right at another."""
    settings = {f.value for f in query.all("zoom")}
    apart = len(settings) == 2 and settings <= {f.other for f in rows} and not any(query.has(q) for q in ("distance", "path", "loss", "film_speed", "power"))
    return apart and query.asks_for("aperture") and len(query.all("aperture")) == 1


_ZOOMED_TO = Pattern(r"\b(?:zoom\w*|turn\w*|go(?:ing)?|went|rack\w*|pull\w*|set)(?: it| the head| back| in| out| up)* to (?:the )?$", re.I)


def _opened_for(query: Query, rows: Sequence[Fact]) -> Solution:
    """"f/8 at 85, what when I zoom back to 35": the f-number goes with the guide number."""
    by_mm = {row.other: row.value for row in rows}
    read, zooms = query.all("aperture")[0], query.all("zoom")
    stood = [f for f in zooms if not _ZOOMED_TO.search(query.text[: f.start])]
    near = stood if len({f.value for f in stood}) == 1 else zooms
    one = min(near, key=lambda f: min(abs(f.start - read.end), abs(read.start - f.end)))
    two = next(f for f in reversed(zooms) if f.value != one.value)
    ratio = by_mm[two.value] / by_mm[one.value]
    return Solution(answers=(marks.aperture(read.value * ratio),), used=(*rows, *zooms, read), topic="zoom", notes=(f"The guide number goes from {by_mm[one.value]:g} to {by_mm[two.value]:g}: {2 * math.log2(ratio):+.2f} stops.",))


def _gained(query: Query, rows: tuple[Fact, ...] | list[Fact]) -> bool:
    """Whether it is what zooming gains that is asked, over settings that the table tells of."""
    told = [f.other for f in rows]
    return query.asks_for("stops") and not query.has("distance") and all(min(told) <= f.value <= max(told) for f in query.all("zoom"))


def _only_guide(query: Query) -> Solution | None:
    guide = query.last("guide_number")
    if not query.asks_for("guide_number") or guide is None or "zoom" not in query.cues or query.has("distance") or query.has("power") or query.has("film_speed"):
        return None
    lost = query.all("loss")
    if (other := _at_other_end(query, guide, lost or query.all("stops"))) is not None:
        return other
    stays = guide.value * 2.0 ** (-sum(f.value for f in lost) / 2)
    return Solution(answers=(marks.guide_number(stays, guide_unit(query, guide)[0]),), used=(guide, *lost, *query.all("zoom")), topic="zoom")


_MM = r"(?:at|on|for|to|zoomed to) (?:the |its )?(?P<mm>\d{2,3}) ?mm(?: (?:setting|position|end|mark|zoom))?"
_SETTING_BEFORE = Pattern(rf"\b{_MM}(?:'s| is| was| of|:)? (?:about )?$", re.I)
_SETTING_AFTER = Pattern(rf"\s*(?:in |\()?(?:m|ft|feet|metres|meters)?\)?,? (?:with (?:it|the head) )?{_MM}", re.I)
_ASKED_AT_MM = Pattern(rf"\b(?:what|which)\b[^?.!]*\b{_MM}[^?.!]*\?", re.I)
_SETTINGS = Pattern(r"(\d{2,3}) ?mm\b", re.I)


def _at_other_end(query: Query, guide: Fact, lost: Sequence[Fact]) -> Solution | None:
    """"from 105 mm back to 35 mm it loses a stop and a half, at 105 mm the guide number is 50 m: at 35 mm?": less at the wider setting, more at the longer."""
    known = _SETTING_BEFORE.search(query.text[: guide.start]) or _SETTING_AFTER.match(query.text, guide.end)
    asked = _ASKED_AT_MM.search(query.text)
    if known is None or asked is None or len(lost) != 1 or known["mm"] == asked["mm"] or len({*_SETTINGS.findall(query.text)}) > 2:
        return None
    wider = float(asked["mm"]) < float(known["mm"])
    value = guide.value * 2.0 ** ((-1 if wider else 1) * abs(lost[0].value) / 2)
    used = (guide, lost[0], *query.all("zoom"), *query.all("focal_length"), *query.all("format"))
    note = f"The beam is {'wider' if wider else 'narrower'} at {asked['mm']} mm, so {'less' if wider else 'more'} light goes forward."
    return Solution(answers=(marks.guide_number(value, guide_unit(query, guide)[0]),), used=used, topic="zoom", notes=(note,))


def _gain(query: Query) -> Solution | None:
    """"Zooming takes the guide number from 30 to 52: what do I gain?" """
    if not query.asks_for("stops") or not patterns.search(r"\bzoom", query.text, re.I):
        return None
    pair = query.all("guide_number")
    if len(pair) == 2:
        one, two = pair[0].value, pair[1].value
        if (_LOSES.search(query.text) and two > one) or (_GAINS.search(query.text) and two < one):
            one, two = two, one
    else:
        named = patterns.search(r"\b(?:gn|guide)\w*(?: numbers?)?", query.text, re.I)
        found = (_FROM_TO.search(query.text, named.end()) if named else None) or _FROM_TO.search(query.text)
        if not found or not patterns.search(r"\bgn\b|guide", query.text, re.I):
            return None
        one, two = float(found[1]), float(found[2])
    used = tuple(f for f in query.facts if f.quantity in ("guide_number", "distance", "length_range", "number_range"))
    return Solution(answers=(marks.stops(2 * math.log2(two / one)),), used=used, topic="zoom", notes=("A guide number goes with the square root of the light, so it counts twice.",))
