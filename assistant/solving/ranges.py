"""Ranges and tables: one thing from here to there, or at several values, and what the answer is at each."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact, Query, tally
from assistant.records import replace
from assistant.solving import pairs
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import LENGTH

Solve = Callable[[Query], "Solution | None"]
SERIES = ("distance", "aperture", "power", "film_speed", "guide_number")
_RANGE = Pattern(r"\b(?:range|span|anywhere|spread|(?:nearest|closest) and (?:farthest|furthest)|(?:farthest|furthest) and (?:nearest|closest)|apertures|f-?stops|distances|powers|limits)\b", re.IGNORECASE)
_TABLE = Phrasings(r"\b(?:make|give|show|build|want|need|print|draw|do)\b[^.?]{0,24}\b(?<!whole )(?<!entire )(?:table|ladder|chart|list)\b(?!'s| (?:is|has|sharp|in focus|top|edge|lamp|away|setting|cloth|setup|laid))|\b(?:make|give|show|write|print|draw|do|work|jot|fill|need|want)\b[^.?]{0,16}\b(?:the|a|my|me|up|out|down)\b[^.?]{0,16}\b(?:cards?|cheat ?sheets?|cribs?|crib sheets?)\b(?= (?:for|of|with|at|from)\b)|(?:^|[.,;:])\s*(?:(?:so|and|now|then) )*(?:an? |the |my )?(?:exposure |flash |distance )?card (?:for|of|at) f?/?\d|\b(?:table|ladder|chart|list) of\b|\bas a (?:table|list|chart)\b|^\W*(?:a )?(?:table|ladder|chart)\b|\b(?:distance|exposure|aperture|f-?stop|flash|guide(?: number)?) (?:table|chart|ladder)\b(?! (?:says|gives|reads|on|wants))|\btable the\b|\btabulate\b", re.IGNORECASE)
LADDER = tuple(2.0 ** (n / 2) for n in range(-3, 4))
HEADS = {"distance": "distance", "aperture": "aperture", "power": "power", "film_speed": "film speed", "guide_number": "guide number"}


def wants_table(query: Query) -> bool:
    """"make a table", "a ladder of distances"."""
    return _TABLE.found_in(query.text)


def over_values(query: Query, solve: Solve) -> Solution | None:
    """A range as two answers, or a table with one row a value; None where neither is asked."""
    in_a_table = wants_table(query)
    paired = pairs.as_guide(query, in_a_table)
    if paired is not None:
        table = _table(paired[0], solve)
        return None if table is None else replace(table, used=tuple(dict.fromkeys((*paired[1], *(f for f in table.used if f.origin == "said")))), assumed=())
    if in_a_table or _listed(query):
        return _table(query, solve)
    pair = _pair(query) if query.asks and "auto" not in query.cues and _may_be_pair(query) and _RANGE.search(query.text) else None  # an auto range is a setting
    if pair is None:
        return None
    quantity, facts = pair
    if facts[0].value == facts[1].value:
        return None  # one value said again
    named = patterns.search(r"\b(?:range|span|spread) of (?:the )?(apertures?|f-?stops?|distances?|powers?)", query.text.lower())
    wanted = {"a": "aperture", "f": "aperture", "d": "distance", "p": "power"}[named.group(1)[0]] if named else ""
    ask = next((a for a in query.asks if a.quantity in SERIES and a.quantity != quantity and a.quantity == (wanted or a.quantity)), None)
    if ask is None:
        return None
    found = [_at(query, solve, ask, quantity, facts, f) for f in facts]
    if any(s is None or s.status not in ("answered", "out_of_reach") for s in found):
        return None
    first, last = (s for s in found if s is not None)
    if ask.quantity == "distance":  # nearest and farthest
        first, last = sorted((first, last), key=lambda s: float(s.answers[0].value))
    from assistant.language.speaking import say

    answers = (replace(first.answers[0], of="from"), replace(last.answers[0], of="to"))
    return replace(first, status="answered", answers=answers, used=tuple(dict.fromkeys((*first.used, *last.used, *facts))), lines=(), topic="range",
                   lead=f"From {say(first.answers[0])} to {say(last.answers[0])}.")


_JOIN = Pattern(r"\s*(?:,|;|/|&|\b(?:and|or|then)\b|\s|\b(?:at|on|f|iso|asa)\b)+\s*/?\s*", re.IGNORECASE)
_COMPARED = frozenset({"both", "front", "back", "middle", "versus", "each", "box_speed", "rate", "push", "pull", "ambient", "meter"})


def _listed(query: Query) -> bool:
    """"what distance for f/8 and f/11", "at 5, 7 and 10 feet": one question, put for each value of a row."""
    if query.claim or query.mentioned or query.cues & _COMPARED or len(query.asks) != 1 or query.asks[0].quantity not in ("aperture", "distance", "power"):
        return False
    if len(query.facts) < 3 or tally(query.facts)["guide_number"] != 1:
        return False
    told = [f for f in query.facts if f.origin == "said"]
    rows = {q: [f for f in told if f.quantity == q] for q in ("distance", "aperture", "power", "film_speed") if q != query.asks[0].quantity}
    long = [row for row in rows.values() if len(row) > 1]
    if len(long) != 1 or len(long[0]) < (3 if long[0][0].quantity == "distance" else 2):
        return False
    if long[0][0].quantity == "power" and any(f.quantity in ("count", "max_count") for f in query.facts):
        return False  # three flashes on three powers
    return all(not f.of for f in long[0]) and all(b.start < a.end or _JOIN.fullmatch(query.text[a.end : b.start]) for a, b in zip(long[0], long[0][1:]))


def _may_be_pair(query: Query) -> bool:
    kinds = [f.quantity for f in query.facts]
    return len(kinds) > len(set(kinds)) or "length_range" in kinds or "aperture_range" in kinds


def _pair(query: Query) -> tuple[str, list[Fact]] | None:
    """Two values of one quantity joined by "to" or "and"."""
    for quantity in ("distance", "aperture", "power", "film_speed"):
        facts = [f for f in query.facts if f.quantity == quantity and f.origin == "said" and f.of in ("", "front", "back")]
        ranged = next((f for f in query.facts if f.quantity in ("length_range", "aperture_range") and f.quantity.startswith("length" if quantity == "distance" else quantity)), None)
        if ranged is not None:
            return quantity, [replace(ranged, quantity=quantity), replace(ranged, quantity=quantity, value=ranged.other)]
        if len(facts) == 2 and patterns.search(r"\b(?:to|and|or|through)\b|-", query.text[facts[0].end : facts[1].start]):
            return quantity, [replace(f, of="", cue="") for f in facts]
    return None


def _at(query: Query, solve: Solve, ask: Ask, quantity: str, facts: list[Fact], value: Fact) -> Solution | None:
    """The question with one value in the place of all."""
    starts = {f.start for f in facts}
    kept = tuple(f for f in query.facts if f.start not in starts and not (f.quantity == quantity and f.of == value.of))
    return solve(replace(query, facts=(*kept, value), asks=(ask,), claim=False, cues=query.cues - {"span"}, text=_TABLE.whole.sub(" ", _RANGE.sub(" ", query.text))))


def _table(query: Query, solve: Solve) -> Solution | None:
    series = _series(query)
    if series is None:
        return None
    quantity, facts = series
    if quantity == "distance" and query.has("aperture") and not query.has("guide_number") and not query.asks_for("power"):
        return None  # a pair that could not be read with certainty
    ask = next((a for a in query.asks if a.quantity in SERIES and a.quantity != quantity and not (a.quantity == "guide_number" and facts[0].origin == _ROW)), None) or _named(query, quantity) or _other(query, quantity)
    found = [(f, _at(query, solve, ask, quantity, facts, f)) for f in facts]
    rows = [(f, s) for f, s in found if s is not None and s.status in ("answered", "out_of_reach")]
    if len(rows) < 2:
        return None
    from assistant.language.speaking import fact, say

    lines = tuple((fact(f), _mark(s.answers[0], say)) for f, s in rows)
    head = (HEADS.get(quantity, quantity), HEADS.get(ask.quantity, ask.quantity))
    first = rows[0][1]
    lead = "; ".join(f"{left}: {right}" for left, right in lines)
    return replace(first, status="answered", lead=f"{lead if lead.startswith('f/') else lead[:1].upper() + lead[1:]}.", answers=tuple(s.answers[0] for _, s in rows) if not _TABLE.found_in(query.text) else first.answers[:1], table=(head, *lines), lines=(), topic="table",
                   used=tuple(dict.fromkeys(u for u in (*(u for _, s in rows for u in s.used), *facts, *_ends(query)) if u.origin != _ROW)))


def _mark(answer: Quantity, say: Callable[[Quantity], str]) -> str:
    """The mark as a person would read it."""
    if answer.quantity == "power" and isinstance(answer.value, float) and answer.value > 1.001:
        return "more than full"
    return answer.set or say(answer)


def _named(query: Query, quantity: str) -> Ask | None:
    """The quantity that the table is to be of, by its name."""
    for words, wanted in ((r"apertures?|f-?stops?|stops?\b", "aperture"), (r"distances?", "distance"), (r"powers?", "power")):
        if wanted != quantity and patterns.search(rf"\b(?:{words})", query.text.lower()):
            return Ask(wanted)
    return None


def _other(query: Query, quantity: str) -> Ask:
    return Ask("distance" if quantity == "aperture" else "aperture")


def _series(query: Query) -> tuple[str, list[Fact]] | None:
    run = _run(query) if query.has("guide_number") and _TABLE.found_in(query.text) else None
    if run is not None:
        return run
    for quantity in SERIES:
        facts = [f for f in query.facts if f.quantity == quantity and not f.of]
        if len(facts) > 1:
            return quantity, facts
    known = query.last("distance")
    if known is not None and query.has("guide_number"):
        unit = preferred_unit(query)
        return "distance", [replace(known, value=known.value * step, unit=unit, said="") for step in LADDER]
    if query.has("guide_number"):
        return "aperture", [Fact("aperture", value) for value in (2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0)]
    return None


_STEPS = (0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0)
_ROWS_AT_MOST = 16
_ROW = "row"
"""The origin of a value between the two that were told."""
_FULL_STOPS = (1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0, 45.0, 64.0)
_UP_TO = Pattern(r"\s*(?:to|down to|up to|out to|till|until|through|-|–|and)\s*", re.IGNORECASE)


def _run(query: Query) -> tuple[str, list[Fact]] | None:
    """"from 5 to 20 feet", "f/4 to f/16": every round distance, every full stop, from the one to the other."""
    stops = query.last("aperture_range")
    if stops is not None:
        low, high = sorted((stops.value, stops.other))
        return "aperture", [replace(stops, quantity="aperture", value=v, origin=_ROW) for v in _FULL_STOPS if low * 0.99 <= v <= high * 1.01]
    span, pair = query.last("length_range"), query.all("distance")
    joined = len(pair) == 2 and not any(f.of for f in pair) and pair[0].start < pair[1].start and _UP_TO.fullmatch(query.text[pair[0].end : pair[1].start])
    if span is None and not joined:
        return None
    told, far = (span, span.other) if span is not None else (pair[0], pair[1].value)
    unit = told.unit if told.unit in LENGTH else preferred_unit(query)
    low, high = sorted(value / LENGTH[unit] for value in (told.value, far))
    step = next((s for s in _STEPS if (high - low) / s < _ROWS_AT_MOST), high - low)
    between = [n * step for n in range(int(low / step) + 1, int(high / step) + 2) if low + 0.01 < n * step < high - 0.01] if step > 0 else []
    return "distance", [Fact("distance", v * LENGTH[unit], unit, start=told.start, origin=_ROW) for v in (low, *between, high)]


def _ends(query: Query) -> tuple[Fact, ...]:
    """What a run from one value to another was told by."""
    return tuple(f for f in query.facts if f.quantity in ("aperture_range", "length_range") or f.quantity == "distance" and f.origin == "said")
