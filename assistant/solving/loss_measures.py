"""What a thing in the light takes or adds, from readings: of the last of several things, from two distances with one f-number, of a dish that strengthens, and a filter's factor."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving import marks, nd_share, what_it_takes
from assistant.solving.solution import Solution

_ASIDE = frozenset({"modifier", "camera_filter", "remark", "place", "size", "format", "rows", "count"})
_TAKES = Pattern(r"\b(?:cost|los[est]|eat|swallow|tak|steal|absorb|drink|rob|soak|dim|weaken|hold\w* back|keep\w* back|cut)\w*", re.I)
_ADDS = Pattern(r"\b(?:add(?:s|ed|ing)?|gain(?:s|ed|ing)?|strengthen\w*|concentrat\w*|intensif\w*|boost\w*|brighten\w*|contribut\w*|bring(?:s|ing)?|brought|give(?:s)? me more)\b", re.I)


def solve(query: Query) -> Solution | None:
    """The loss, gain or factor of a thing from readings with it and without; None where it is another's."""
    if len(query.asks) != 1 or query.claim or any(f.origin != "said" for f in query.facts):
        return None
    share = nd_share.solve(query) if query.asks[0].quantity in ("stops", "nd") else None
    if share is not None:
        return share
    for rule in (*_RULES.get(query.asks[0].quantity, ()), *what_it_takes.RULES.get(query.asks[0].quantity, ())):
        found = rule(query, query.asks[0])
        if found is not None:
            return found
    return None


def _question(text: str) -> str:
    """The last sentence, which asks."""
    return re.split(r"[.;!](?=\s)", text.rstrip(" ?.!"))[-1]


def _read(query: Query) -> list[Fact]:
    """The f-numbers told, both ends of a span among them."""
    span = query.last("aperture_range")
    return query.all("aperture") or ([replace(span, quantity="aperture"), replace(span, quantity="aperture", value=span.other)] if span is not None else [])


def _kinds(query: Query) -> set[str]:
    return {f.quantity for f in query.facts} - _ASIDE


_THE_LAST = Pattern(r"\b(?:second|other|last|outer|inner|latter)\b", re.I)
_ALL_OF_IT = Pattern(r"\b(?:both|together|altogether|in all|in total|all told|between them|the two|the pair|the lot)\b", re.I)
_THE_FIRST = Pattern(r"\bfirst\b|\bboth\b|\btogether\b|\bbetween them\b|\bin all\b|\baltogether\b|\bthe (?:two|pair|lot)\b", re.I)


def _last_of_two(query: Query, ask: Ask) -> Solution | None:
    """"bare f/16, behind the first silk f/9, behind both f/5.6: what does the second take alone": the marks between the last two."""
    read = _read(query)
    if len(read) != 3 or _kinds(query) != {"aperture"} or not read[0].value > read[1].value > read[2].value:
        return None
    asked = _question(query.text)
    pair = [read[0], read[2]] if _ALL_OF_IT.search(asked) else read[1:] if _THE_LAST.search(asked) and not _THE_FIRST.search(asked) else _by_name(query, read, len(query.text) - len(asked) - 2)
    if pair is None or not _TAKES.search(asked):
        return None
    lost = aperture_difference_stops(pair[1].value, pair[0].value)
    note = f"From f/{pair[0].value:g} to f/{pair[1].value:g}; what stood in the light for both readings drops out."
    return _told(query, ask, -abs(lost), note)


def _by_name(query: Query, read: list[Fact], asked_from: int) -> list[Fact] | None:
    """The two readings between which the thing that is asked of was put on, where it stands with the last or from the second on."""
    things = [f for f in query.facts if f.quantity == "modifier"]
    asked = [f.unit for f in things if f.start >= asked_from]
    ends = [read[0].end, read[1].end, min(read[2].end + 50, asked_from)]
    after = _beside_after(query.text, things, read)
    second, third = (({f.unit for f in things if a <= f.start < b}) for a, b in ((ends[0], read[1].start if not after else read[2].start), (ends[1] if not after else read[2].start, ends[2])))
    if len(set(asked)) != 1:
        return None
    if asked[0] in third - second:
        return read[1:]
    return read[:2] if asked[0] in second and third - second else None


def _beside_after(text: str, things: list[Fact], read: list[Fact]) -> bool:
    """Whether the things are named after their readings: "f/11 with the diffuser"."""
    return any(re.fullmatch(r"\W*(?:with|in|through|behind|under) (?:the |my |its |a )?", text[read[1].end : f.start], re.I) for f in things if f.start >= read[1].end)


def _same_reading(query: Query, ask: Ask) -> Solution | None:
    """"bare it reads f/8 from 12 feet, in its box f/8 from 7": twice the logarithm of the distances' ratio."""
    away = list({f.value: f for f in query.all("distance")}.values())
    values = {f.value for f in query.all("aperture")}
    if len(away) != 2 or len(values) > 1 or _kinds(query) - {"aperture", "distance", "power", "film_speed"} or any(len({f.value for f in query.all(q)}) > 1 for q in ("power", "film_speed")):
        return None
    things = {f.unit for f in query.all("modifier") if f.unit != "BARE"}
    with_and_without = any(f.unit == "BARE" for f in query.all("camera_filter")) or _WITHOUT.search(query.text)
    if len(things) > 1 or not with_and_without or not _TAKES.search(_question(query.text)):
        return None
    lost = 2 * abs(math.log2(away[0].value / away[1].value))
    return _told(query, ask, -lost, "The same f-number from nearer: so many stops more were needed there.")


_WITHOUT = Pattern(r"\b(?:without|bare|naked|nothing on|uncovered|unmodified)\b", re.I)


def _strengthened(query: Query, ask: Ask) -> Solution | None:
    """"f/16 with the dish, f/9.5 with the bulb bare: what had the dish been adding": more light, where it reads more with it."""
    read, bare = _read(query), [f for f in query.all("camera_filter") if f.unit == "BARE"]
    asked = _question(query.text)
    if len(read) != 2 or _kinds(query) - {"aperture", "aperture_range"} or len(bare) != 1 or not _ADDS.search(asked) or _TAKES.search(_ADDS.sub(" ", asked)):
        return None
    following = [f for f in read if f.start > bare[0].end and _THEN_READS.fullmatch(query.text, bare[0].end, f.start)]
    without = following[0] if following else min(read, key=lambda f: (abs(f.sentence - bare[0].sentence), max(f.start - bare[0].end, bare[0].start - f.end)))
    on = read[0] if without is read[1] else read[1]
    if on.value <= without.value:
        return None
    return _told(query, ask, abs(aperture_difference_stops(on.value, without.value)), "It reads more with it on.")


_THEN_READS = Pattern(r"(?: (?:bulb|head|flash|tube|lamp|it|alone))*,? (?:gave|gives|reads?|was|is|made|makes|wanted|wants|at|metered|meters) (?:me )?", re.I)
_FILTER = Pattern(r"\bfilters?\b|\bpolari[sz]er\b", re.I)
_FACTOR = Pattern(r"\bfactor\b", re.I)


def _of_filter(query: Query, ask: Ask) -> Solution | None:
    """"from f/16 to f/6.3 after a filter went on: its factor": two to the power of the stops between."""
    read = _read(query)
    if len(read) != 2 or _kinds(query) - {"aperture", "aperture_range"} or not _FILTER.search(query.text) or not _FACTOR.search(query.text):
        return None
    return _told(query, ask, -abs(aperture_difference_stops(read[0].value, read[1].value)), "")


def _told(query: Query, ask: Ask, stops: float, note: str) -> Solution:
    factor = marks.factor(abs(stops))
    answers = (factor, marks.stops(stops)) if ask.quantity == "factor" else (marks.stops(stops), factor)
    return Solution(answers=answers, used=query.facts, topic="losses", notes=(note,) if note else ())


_RULES: dict[str, tuple[Callable[[Query, Ask], Solution | None], ...]] = {"stops": (_last_of_two, _same_reading, _strengthened), "factor": (_of_filter, _last_of_two, _same_reading)}
