"""Guide numbers told for each shutter speed, as on a carton of flash bulbs, and the speed it is used at.

"GN 160 ft at 1/60 and 90 ft at 1/250; I'm on 1/250" · "1/30 is 200, 1/125 is 150"
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import record, replace
from assistant.units import LENGTH

_NUMBERS = frozenset({"guide_number", "number", "length"})
_UNITS = ("ft", "m")
_GUIDES = (3.0, 1000.0)
"""Guide numbers of flashes and bulbs, in metres or in feet."""

_BEFORE_SPEED = frozenset({"AT", "FOR", "A", "IN"})
"""Between a guide number and the speed it is for: "180 feet at a thirtieth"."""

_AFTER_SPEED = frozenset({"COLON", "COMMA", "EQ", "DASH", "A", "OF"})
"""Between a speed and the guide number it leaves: "1/30 = 45", "at a thirtieth, 45", "at 1/30 it's a guide number of 45"."""

_BULBS = Pattern(r"\b(?:flash ?-?bulbs?|bulbs|(?:the|a|this|these|each|per) bulb)\b(?! setting)", re.I)
_LEAST = 20.0
"""Bulbs spoken of and no guide number: figures that no f-number reaches."""

_LISTED = Pattern(r"film\s*:\s*[\d.]+", re.I)
"""What comes after "for my film:" is the first row, no film speed."""


@record
class ShutterTable:
    """The rows of a table by shutter speed, and the items that are left."""

    rows: tuple[Fact, ...]
    items: list[Item]


def table(items: list[Item], text: str) -> ShutterTable:
    """The guide numbers by shutter speed that are told: rows (value: guide number, other: seconds).

    The row of the speed that is set stays behind as the guide number of the question.
    """
    speeds = [n for n, i in enumerate(items) if i.kind == "shutter"]
    if len(speeds) < 2:
        return ShutterTable((), items)
    named = _is_of_guides(items)
    if not (named or _BULBS.search(text)):
        return ShutterTable((), items)
    items = [replace(i, kind="number") if i.kind == "film_speed" and _LISTED.fullmatch(text[i.start : i.end]) and n + 2 in speeds else i for n, i in enumerate(items)]
    pairs = _pairs(items, speeds)
    if len(pairs) < 2 or not named and any(_guide(items[g]) < _LEAST for g, _ in pairs):
        return ShutterTable((), items)
    rated = _rated_for(items, pairs)
    unit = next((items[g].unit for g, _ in pairs if items[g].unit in _UNITS), "") or _said_unit(items, pairs)
    rows = tuple([_row(items[g], items[s], unit, rated, text) for g, s in pairs])
    paired = {n for pair in pairs for n in pair}
    setting = next((items[s] for s in reversed(speeds) if s not in paired), None)
    chosen = None if setting is None else next((pair for pair, row in zip(pairs, rows) if math.isclose(row.other, setting.value)), None)
    left = [replace(i, kind="row") if n in paired else i for n, i in enumerate(items)]
    if chosen is not None:
        row = rows[pairs.index(chosen)]
        left[chosen[0]] = replace(items[chosen[0]], kind="guide_number", value=row.value, unit=unit, named=True)
    return ShutterTable(rows, left)


_FROM_THE_LAMP = Pattern(r"\s*(?:away |off )?from (?:the|its|my) (?:bulb's |lamp's )?(?:reflector|dish|bowl|pan)\b", re.I)
"""A bulb sits in its reflector: so far from the light, and no way round by a wall."""


def settle(facts: list[Fact], rows: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with the rows before them; the film a table is for is not the film in the camera, where that is another."""
    if rows:
        facts = [replace(f, quantity="distance", of="") if f.quantity == "path" and _FROM_THE_LAMP.match(text, f.end) else f for f in facts]
    rated = rows[0].at_iso if rows else None
    if rated is not None and any(f.quantity == "film_speed" and not math.isclose(f.value, rated) for f in facts):
        facts = [f for f in facts if f.quantity != "film_speed" or not math.isclose(f.value, rated)]
    return [*rows, *facts]


def _is_of_guides(items: Sequence[Item]) -> bool:
    """Whether guide numbers are spoken of, or a chart of bulbs, which tells nothing else."""
    if any(i.kind == "guide_number" or i.kind == "name" and i.word == "guide_number" for i in items):
        return True
    cues = {i.word for i in items if i.kind == "cue"}
    return {"table", "bulb_lamp"} <= cues


def _pairs(items: Sequence[Item], speeds: Sequence[int]) -> list[tuple[int, int]]:
    """The guide number and the speed of each row; every row goes the same way round, and falls as the shutter gets faster."""
    forward, backward = (_once(items, [(g, s) for s in speeds if (g := _number_beside(items, s, way)) is not None]) for way in (-1, 1))
    if len(forward) == len(backward):
        pairs = min(forward, backward, key=lambda p: min(p[0])) if forward else []
    else:
        pairs = max(forward, backward, key=len)
    ordered = sorted(pairs, key=lambda p: items[p[1]].value)
    falls = all(_guide(items[one]) <= _guide(items[two]) for (one, _), (two, _) in zip(ordered, ordered[1:]))
    return pairs if falls else []


def _once(items: Sequence[Item], pairs: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """The rows without "ten feet at 1/60" after them: a speed has one row."""
    found: dict[float, tuple[int, int]] = {}
    for guide, speed in pairs:
        found.setdefault(items[speed].value, (guide, speed))
    return list(found.values())


def _number_beside(items: Sequence[Item], speed: int, way: int) -> int | None:
    """The guide number that stands next to a speed, with only small words between."""
    between = _BEFORE_SPEED if way < 0 else _AFTER_SPEED
    for n in range(speed + way, max(-1, speed - 6) if way < 0 else min(len(items), speed + 6), way):
        item = items[n]
        if item.kind in _NUMBERS:
            return n if not item.bad and _GUIDES[0] <= _guide(item) <= _GUIDES[1] else None
        small = item.kind in ("glue", "unit_name") or item.kind == "mark" and item.word in between or way > 0 and (item.kind in ("link", "noun") or item.kind == "name" and item.word == "guide_number")
        if not small:
            return None
    return None


def _guide(item: Item) -> float:
    return item.value / LENGTH[item.unit] if item.kind == "length" and item.unit in LENGTH else item.value


def _said_unit(items: Sequence[Item], pairs: Sequence[tuple[int, int]]) -> str:
    """"in feet", said once for the whole table."""
    last = max(max(pair) for pair in pairs)
    named = [i.word for i in items[: last + 4] if i.kind == "unit_name" and i.word in _UNITS]
    lengths = [items[g].unit for g, _ in pairs if items[g].kind == "length"]
    return (named or lengths or [""])[0]


def _rated_for(items: Sequence[Item], pairs: Sequence[tuple[int, int]]) -> float:
    """The film speed the table is for, said in the same breath: "in feet for ISO 200: …", "… both for ISO 200"; 0 where none is."""
    first, last = min(min(pair) for pair in pairs), max(max(pair) for pair in pairs)
    breath = next((n + 1 for n in range(first - 1, -1, -1) if items[n].kind == "mark" and items[n].word in ("END", "Q")), 0)
    if not any(i.kind == "cue" and i.word in ("my_kit", "self") for i in items[breath:first]):
        before = [n for n in range(breath, first) if items[n].kind == "film_speed" and not items[n].bad and _is_told_of_table(items, n)]
        if before:
            return items[before[-1]].value
    after = [i for i in items[last + 1 : last + 6] if i.kind != "glue" and not (i.kind == "mark" and i.word in ("BOTH", "COMMA"))]
    of_it = len(after) > 1 and after[0].kind == "mark" and after[0].word in ("AT", "FOR") and after[1].kind == "film_speed" and not after[1].bad
    return after[1].value if of_it else 0.0


def _is_told_of_table(items: Sequence[Item], at: int) -> bool:
    """"for ISO 100", "on hundred film", "100 film: …"."""
    before, after = items[at - 1] if at else None, items[at + 1]
    return before is not None and (before.kind == "mark" and before.word in ("FOR", "AT") or before.kind == "glue") or after.kind == "mark" and after.word == "COLON"


def _row(guide: Item, speed: Item, unit: str, rated: float, text: str) -> Fact:
    start, end = min(guide.start, speed.start), max(guide.end, speed.end)
    return Fact("shutter_row", _guide(guide), unit, other=speed.value, at_iso=rated or None, start=start, end=end, said=text[start:end])
