"""What an answer leaves out: figures said this turn that neither bear on it nor are told not to."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving.solution import Solution
from assistant.units import LENGTH


def left_out(said: Query, whole: Query, solution: Solution, idle: Sequence[Fact], told: str) -> tuple[str, ...]:
    """The words of each figure of `said` that the answer to `whole` leaves out; `idle` are its facts without a use, `told` is the reply so far."""
    if solution.status not in ("answered", "out_of_reach") or not solution.answers or solution.topic == "claims" or not (said.figures or said.taken_back):
        return ()
    meant = None if whole.facts == said.facts else frozenset(whole.facts)
    still = {f.value for f in whole.facts if f.quantity == "number"} if meant is not None else set()
    became_other = [f for f in said.facts if f not in meant and not (f.quantity == "number" and f.value in still)] if meant is not None else []  # "back 4 feet": told as where the light is now
    accounted = [(f.start, f.end) for f in (*solution.used, *idle, *became_other) if f.origin == "said"]
    accounted += [(f.start, f.end) for f in whole.facts if f.quantity in ("place", "rows") and f.origin == "said"]  # "row 2": which, not how much
    loose = [figure for figure in said.figures if not _within(figure[0], accounted)]
    loose += _put_right_in_vain(said, solution, idle) if said.taken_back else []
    if not loose:
        return ()
    values, shown = set(_values((*solution.used, *idle))), _figures(told)
    return tuple(dict.fromkeys(
        words for start, end, value in loose if not _figures(words := said.text[start:end].strip()) <= shown and _rounded(value) not in values
    ))


def _put_right_in_vain(said: Query, solution: Solution, idle: Sequence[Fact]) -> list[tuple[int, int, float]]:
    """"18°, make it two": a figure that was taken back, where the one said instead has no use either."""
    used = [(f.start, f.end) for f in solution.used]
    vain = [(f.start, f.end) for f in (*idle, *(f for f in said.facts if f.quantity == "number")) if not _within(f.start, used)]
    return [(start, end, value) for start, end, value, instead in said.taken_back if _within(instead, vain)]


def _within(place: int, spans: list[tuple[int, int]]) -> bool:
    for start, end in spans:
        if start <= place < end:
            return True
    return False


_MEASURED = Pattern(r"\.\d")
"""A figure with a point was measured, and nobody says it by the way."""


def measured_figures(said: Query, whole: Query, solution: Solution, idle: Sequence[Fact]) -> list[Fact]:
    """The figures with a point that the answer leaves out."""
    if not _MEASURED.search(said.text):
        return []
    told = " ".join((solution.lead, *solution.notes))
    words = [w for w in left_out(said, whole, solution, idle, told) if _MEASURED.search(w)]
    return [Fact("number", 0.0, said=w) for w in words]


def _figures(text: str) -> set[str]:
    return {figure.strip(".,").replace(",", "") for figure in patterns.findall(r"\d[\d.,]*", text)}


def _values(facts: Sequence[Fact]) -> Iterator[float]:
    """The values of these facts and of their conditions ("80 at ISO 400")."""
    for fact in facts:
        for value in (fact.value, fact.other, fact.at_iso, fact.at_power):
            if value is not None and not math.isnan(value):
                yield _rounded(value)


def _rounded(value: float) -> float:
    return float(f"{abs(value):.3g}")


_BY_THE_WAY_BEFORE = Pattern(r"\b(?:year|grade|class|form|room|stage|chapter|like i'?m|as if i'?m|aged?|number|roll|take|channel|since|until|till|half past|quarter past|(?:famil(?:y|ies)|group|crew|party|class|choir|team|band|table|row|ensemble|squad)s? of)\s*$", re.IGNORECASE)
_BY_THE_WAY_AFTER = Pattern(r"^\s*(?:of (?:the|us|them|you|my|his|her|our|those)|people|guests|kids|children|singers|dancers|rowers|men|women|faces|years? old|o'clock|(?:different )?(?:apertures|f-?stops|settings|things|losses|filters|powers|shutter speeds|exposures|f-?numbers|values)\b(?! (?:at|of|apart)))\b", re.IGNORECASE)
_PARTY_OF = Pattern(r"\b(?:group|crew|party|class|choir|team|band|cast|squad|ensemble|crowd|row)s? of $", re.IGNORECASE)
_THINGS = Pattern(r"\s+(?:(?:little|small|big|old|young|tall|wooden|shiny|empty|full|tiny|large) )*(?P<thing>[a-z]{5,}s)\b", re.IGNORECASE)


_OF_A_CLASS = Pattern(r"\b(?:class of|year|grade|form|primary) ['’]?$", re.IGNORECASE)
_CLASS_GOES_ON = Pattern(r"[a-d]?(?:s|'s)?(?:\s*[,;:?!]|\s*$|\.(?!\d)| (?!(?:feet|foot|ft|m|metres?|stops?|iso|asa|years?)\b)[a-z]{2,})", re.IGNORECASE)
_OLD_FILM = Pattern(r"\b(?:expir\w*|out of date|fog\w*|stor(?:ed|age)|freezer|fridge|aged|old (?:film|stock|roll))\b", re.IGNORECASE)


def _of_a_class(fact: Fact, text: str) -> bool:
    """"Year 6, three rows", "the class of '91": a class at school, where no film has aged so many years."""
    return _OF_A_CLASS.search(text[: fact.start]) is not None and _CLASS_GOES_ON.match(text[fact.end :]) is not None and _OLD_FILM.search(text) is None


def told_by_the_way(fact: Fact, query: Query) -> bool:
    """"I teach year nine", "thirty of the little darlings", "eleven glasses": spelled, and of nothing that is lit or set."""
    text = query.text
    if _of_a_class(fact, text):
        return True
    things = _THINGS.match(text[fact.end :])
    if things and things["thing"] in query.unknown and fact.value == int(fact.value):
        return True
    if _PARTY_OF.search(text[: fact.start]) and fact.value == int(fact.value):
        return True
    return not fact.said[:1].isdigit() and (_BY_THE_WAY_BEFORE.search(text[: fact.start]) is not None or _BY_THE_WAY_AFTER.match(text[fact.end :]) is not None)


def shown(fact: Fact) -> float:
    """A fact's number as the person would say it."""
    if fact.quantity in ("distance", "camera_distance", "focus_distance", "max_distance") and fact.unit in LENGTH:
        return fact.value / LENGTH[fact.unit]
    if fact.quantity in ("extension", "focal_length") and fact.unit == "mm":
        return fact.value * 1000
    return fact.value


def only_numbers(query: Query, whole: Query) -> list[Fact]:
    """A half-sentence of bare numbers to which the conversation gave no meaning."""
    loose = [f for f in whole.facts if f.quantity == "number" and f.origin == "said" and not f.bad]
    return loose if query.facts and len(loose) == len(query.facts) else []


def stray_numbers(query: Query, whole: Query, solution: Solution) -> list[Fact]:
    """Numbers in figures that nothing took and that are not an echo of one that was taken."""
    if solution.status not in ("answered", "out_of_reach") or solution.topic == "claims":
        return []
    numbers = [f for f in query.facts if f.quantity == "number" and _is_a_figure(f, query.text) and not told_by_the_way(f, query)]
    if not numbers:
        return []
    taken = [f for f in whole.facts if f.quantity != "number"]
    known = {round(value, 3) for f in taken for value in (shown(f), f.value)}
    known |= {float(figure) for f in taken if f.quantity == "film_speed" for figure in patterns.findall(r"\d+(?:\.\d+)?", f.said)}  # "27 DIN … the 27"
    return [f for f in numbers if round(f.value, 3) not in known and f not in solution.used]


def _is_a_figure(fact: Fact, text: str) -> bool:
    """Whether a number was said in figures, or is too large or too odd for a word like "one"."""
    in_figures = fact.said[:1].isdigit() or fact.unit == "mixed" or fact.value >= 3 or text[fact.end :].lstrip()[:1].isdigit()
    return in_figures and (fact.value > 1 or fact.unit == "mixed" and fact.value >= 1)
