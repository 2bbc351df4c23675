"""Lists: several values of one kind said in a row.

"5, 10 and 20 feet" · "guide numbers 80, 60 and 40" · "ISO 100, 200, 400" · "full, half and quarter".
A bare number in such a row is of the same kind as its neighbour that has a unit or a name.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark
from assistant.units import LENGTH

_JOIN = Pattern(r"^\s*(?:,|and|or|,\s*and|,\s*or|&|/|then|,\s*then)\s*(?:at\s+|f/?\s*)?$", re.IGNORECASE)
_AND = Pattern(r"\b(?:and|or|then)\b|&", re.IGNORECASE)
LISTED = frozenset({"distance", "aperture", "film_speed", "power", "guide_number", "shutter"})
PAIRS = {"length_range": "distance", "aperture_choice": "aperture", "aperture_range": "aperture", "number_range": "number", "guide_number_pair": "guide_number"}


def runs(facts: Sequence[Fact], text: str) -> list[list[Fact]]:
    """Facts said one after another with only commas and "and" between them."""
    out: list[list[Fact]] = []
    for fact in facts:
        gap = text[out[-1][-1].end : fact.start] if out else ""
        if not out or not (_JOIN.match(gap) or _runs_on(out[-1][-1], fact, gap)) or fact.start < out[-1][-1].end:
            out.append([fact])
        elif _another_kind(out[-1], fact):
            out.append([*_taken_along(out[-1], gap), fact])
        else:
            out[-1].append(fact)
    return [run for run in out if run]


def _runs_on(one: Fact, two: Fact, gap: str) -> bool:
    """"rows at 8 10 and 12 feet": a row with no comma, whose numbers grow by little."""
    if gap != " " or one.quantity != "number" or two.quantity != "length_range" or two.unit not in LENGTH:
        return False
    return one.value * LENGTH[two.unit] < two.value < 3 * one.value * LENGTH[two.unit]


def _kind(fact: Fact) -> str:
    return PAIRS.get(fact.quantity, fact.quantity)


def _another_kind(run: Sequence[Fact], fact: Fact) -> bool:
    return _kind(fact) != "number" and any(_kind(f) not in ("number", _kind(fact)) for f in run)


def _taken_along(run: list[Fact], gap: str) -> list[Fact]:
    """In "guide 56, 5, 7 and 10 feet" the 5 and the 7 go with the feet: they are taken from the run before."""
    if not _AND.search(gap):
        return []
    last = max(n for n, f in enumerate(run) if _kind(f) != "number")
    taken = run[last + 1 :]
    del run[last + 1 :]
    return taken


def expand(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with the bare numbers of a row made what their neighbours are.

    Only rows of three or more, so that "ISO 100, 8 feet" stays two things.
    """
    facts = _spans(facts, text)
    out: list[Fact] = []
    for whole in runs(facts, text):
        if len(whole) == 1:
            out += whole
            continue
        run, after = (whole, []) if _one_by_one(whole, text) else _up_to_the_unit(whole)
        many = sum(2 if f.quantity in PAIRS and not math.isnan(f.other) else 1 for f in run)
        kinds = {PAIRS.get(f.quantity, f.quantity) for f in run} - {"number"}
        if (many < 3 and not _two_films(run, text)) or len(kinds) != 1 or not kinds <= LISTED or kinds == {"power"} and _above_full(run):
            out += run + after
            continue
        kind = kinds.pop()
        model = next(f for f in run if PAIRS.get(f.quantity, f.quantity) == kind)
        for fact in run:
            out += _as_kind(fact, kind, model)
        out += after
    return out


def _one_by_one(run: Sequence[Fact], text: str) -> bool:
    """"first at 2.4 m, then 3, then 3.6": the unit said once, with the first."""
    return len(run) > 2 and run[0].quantity == "distance" and all(f.quantity == "number" for f in run[1:]) and all("then" in text[a.end : b.start].lower() for a, b in zip(run, run[1:]))


def _up_to_the_unit(run: list[Fact]) -> tuple[list[Fact], list[Fact]]:
    """A row of lengths ends with its unit: the 400 of "9 feet, 400 pushed to 800" is no length."""
    last = max((n for n, f in enumerate(run) if _kind(f) == "distance"), default=len(run) - 1)
    return run[: last + 1], run[last + 1 :]


def _two_films(run: Sequence[Fact], text: str) -> bool:
    """"ISO 100 and 400", "100 or 400 film": two films, no "100, 8 feet"."""
    return len(run) == 2 and "film_speed" in (run[0].quantity, run[1].quantity) and all(f.value >= 25 and is_film_speed_mark(f.value) for f in run) and _AND.search(text[run[0].end : run[1].start]) is not None


def _above_full(run: Sequence[Fact]) -> bool:
    """"400 to 100, quarter power": two films, for no flash gives four hundred times its full power."""
    return any(f.quantity == "number_range" and f.value > 1 and f.other > 1 for f in run)


_BACK_FROM = Pattern(r"\s*,?\s*(?:(?:back|up|down|over|out|away|in) )?from (?:just |only |about |iso |asa |the )?", re.IGNORECASE)
_GOING_TO = Pattern(r"\bto (?:just |only |about |iso |asa |the |a )?$", re.IGNORECASE)


def in_order_of_time(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"to 4 m from 2 m": where it came from stands first, as in "from 2 m to 4 m"."""
    out = list(facts)
    for n, (one, two) in enumerate(zip(facts, facts[1:])):
        if one.quantity == two.quantity and one.quantity in LISTED and one.of == two.of and one.end <= two.start and _BACK_FROM.fullmatch(text[one.end : two.start]) and _GOING_TO.search(text[max(0, one.start - 16) : one.start]):
            out[n], out[n + 1] = two, one
    return _metered_together(out, text)


_TOGETHER = Pattern(r"\s*(?:at|with|on|was right at|was right with|was|is|right|good|correct|for|and| )*\s*", re.IGNORECASE)


def _metered_together(facts: list[Fact], text: str) -> list[Fact]:
    """"what shutter at f/11 when the room wanted 1/30 at f/5.6": the stop said with the time is the one metered, though said last."""
    times = [f for f in facts if f.quantity in ("shutter", "time") and not f.bad]
    if len(times) != 1:
        return facts
    stops = [n for n, f in enumerate(facts) if f.quantity == "aperture" and not f.bad]
    if len(stops) != 2 or any(f.quantity == "guide_number" for f in facts):
        return facts
    one, two = (facts[n] for n in stops)

    def together(stop: Fact) -> bool:
        return _TOGETHER.fullmatch(text[min(stop.end, times[0].end) : max(stop.start, times[0].start)]) is not None

    if not together(two) or together(one) or two.of == "ambient" or {one.of, two.of} - {"", "ambient", "camera"}:
        return facts
    out = list(facts)
    out[stops[0]], out[stops[1]] = replace(two, of=one.of), replace(one, of=two.of)
    return out


_SPAN = Pattern(r"^\s*(?:out |up |down |back |in |over |away )?(?:to|-)\s*$", re.IGNORECASE)


def _spans(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"from 5 out to 10 feet": the first number is of the unit of the second."""
    out = list(facts)
    for n, (one, two) in enumerate(zip(facts, facts[1:])):
        if one.quantity == "shutter" and two.quantity == "power" and "/" in two.said and "power" not in two.said and _SPAN.match(text[one.end : two.start]):
            out[n + 1] = replace(two, quantity="shutter", unit="", of=one.of)  # "from 1/125 down to 1/8"
        if one.quantity == "number" and two.quantity == "distance" and two.unit in LENGTH and _SPAN.match(text[one.end : two.start]):
            out[n] = replace(two, value=one.value * LENGTH[two.unit], start=one.start, end=one.end, said=one.said, cue="from")
    return out


def _as_kind(fact: Fact, kind: str, model: Fact) -> list[Fact]:
    if fact.quantity == kind:
        return [fact]
    scale = LENGTH.get(model.unit, 1.0) if kind == "distance" and fact.quantity == "number" else 1.0
    if kind == "distance" and fact.quantity == "number_range":
        scale = LENGTH.get(model.unit, 1.0)
    one = replace(fact, quantity=kind, value=fact.value * scale, other=math.nan, unit=model.unit, of=model.of, cue=model.cue if kind == "aperture" else "")
    if fact.quantity not in PAIRS or math.isnan(fact.other):
        return [one]
    return [one, replace(one, value=fact.other * scale, start=fact.end - 1)]


_OF_ITS_OWN = Pattern(r"\s*(?:[-/%°'\"]|(?:feet|foot|ft|metres?|meters?|cm|mm|m|in|iso|asa|film|speed|stops?|flash|pops?|x|times|ws|joule|watt|neg|slide|gn|guide|sec|years?)\b)", re.IGNORECASE)


def metres_and_more(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"one metre forty", "2 m 80": metres and centimetres said in one breath, where the number has no word of its own."""
    out: list[Fact] = []
    for fact in facts:
        last = out[-1] if out else None
        if last is None or fact.quantity != "number" or last.unit != "m" or last.quantity not in ("distance", "gap", "path", "camera_distance", "max_distance", "size") or not _centimetres(last, fact, text):
            out.append(fact)
            continue
        out[-1] = replace(last, value=last.value + fact.value / 100, end=fact.end, said=text[last.start : fact.end])
    return out


def _centimetres(metres: Fact, more: Fact, text: str) -> bool:
    whole = metres.value % 1 == 0 and 1 <= metres.value < 10
    return whole and more.value % 1 == 0 and 10 <= more.value < 100 and not more.bad and text[metres.end : more.start] in ("", " ") and _OF_ITS_OWN.match(text[more.end :]) is None
