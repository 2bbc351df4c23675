"""Room light known only by how far under it came out: what a change of time or aperture makes of it.

"The room is three stops under at 1/125; what shutter makes it one under?" No reading is
needed for this, since only differences count.
"""

from __future__ import annotations

import math
import re

from assistant import patterns, scales
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.ambient import aperture_after
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.daylight import signed
from assistant.solving.solution import Solution


def solve(query: Query, ask: Ask) -> Solution | None:
    """The new time, aperture, film speed, or how far under; None when a reading is there to go by."""
    other = _other_light(query, ask)
    if other is not None:
        return other
    under = [f for f in query.facts if (f.quantity == "relation" and f.of in ("ambient", "backdrop")) or (f.quantity == "stops" and f.cue in ("less", "more") and f.of in ("", "ambient"))]
    if not under or query.has("exposure_value") or query.has("guide_number"):
        return None
    behind = _backdrop_reading(query, ask)
    if behind is not None:
        return behind
    if ask.quantity == "stops" and len(under) == 1:
        return _now_under(query, under[0])
    if ask.quantity in ("shutter", "aperture", "film_speed") and len(under) >= 2 and len({u.start for u in under}) >= 2:
        return _for_under(query, ask, under[0], under[-1])
    if ask.quantity in ("shutter", "aperture", "film_speed") and len({u.start for u in under}) == 1:
        return _one_change(query, ask, under[0])
    return None


_METER_WOULD = Pattern(r"\bwhat(?: shutter(?: speed)?| time| aperture| f-?stop| f-?number| exposure)? (?:would|does|did|will|must|should) (?:the|my|a) meter (?:then )?(?:show|say|read|give|ask for|want|call for)\b", re.I)
_PUTS_RIGHT = Pattern(r"\b(?:makes?|would (?:make|be)|is|was|puts?|gets?|had been|have been|brings?) (?:it|that|the \w+|her|him|them)? ?(?:right|correct|normal|proper|level|as metered|properly exposed)\b|\b(?:right|correct|normal|proper)(?: exposure| one| time| aperture)? (?:for|of) (?:it|that|the \w+)\b", re.I)
_WITH_FLASH = Pattern(r"\b(?:flash|strobe|both|together|sum)\b", re.I)
_BOTH = Pattern(r"\b(?:both|together|the two|the pair|in all|sum|total)\b", re.I)
_METERED = Pattern(r"\b(?:meter(?:s|ed)?|reads?|reading)\b", re.I)


def from_result(query: Query, ask: Ask) -> Solution | None:
    """"at f/11 and 1/125 the sky is a stop and a half over: what aperture makes it right", "I want it a stop under at 1/15: what would the meter show": the setting without what it came out, or shall come out, over or under."""
    apart = [f for f in query.facts if f.quantity == "relation" and f.of in ("ambient", "backdrop") or f.quantity == "stops" and f.cue in ("less", "more")]
    if len(apart) != 1 or ask.quantity not in ("shutter", "aperture") or {f.quantity for f in query.facts} - {"shutter", "aperture", "relation", "stops", "film_speed", "remark", "place"}:
        return None
    base = query.all(ask.quantity)
    if any(len({f.value for f in query.all(q)}) > 1 for q in ("shutter", "aperture", "film_speed")) or len({f.value for f in base}) != 1:
        return None
    meter = _METER_WOULD.search(query.text)
    came_out = _PUTS_RIGHT.search(query.text[apart[0].end :]) and _IS.search(query.text[: apart[0].start]) and not _METERED.search(query.text) and not _WITH_FLASH.search(query.text) and not _WANTED.search(query.text[: apart[0].start])
    if not meter and not came_out or meter and _BOTH.search(query.text[meter.start() :]):
        return None
    return _moved(ask, base[0], -signed(apart[0]), (*base, apart[0], *(f for f in query.facts if f.quantity in ("shutter", "aperture", "film_speed") and f not in base)))


def _other_light(query: Query, ask: Ask) -> Solution | None:
    """"EV 14 sank to EV 11, I was at 1/250: the new time": the setting goes with the light."""
    values, bases = query.all("exposure_value"), query.all(ask.quantity)
    if ask.quantity not in ("shutter", "aperture", "film_speed") or len(values) != 2 or len(bases) != 1 or query.has("guide_number"):
        return None
    others = [f for f in query.facts if f.quantity in ("shutter", "aperture", "film_speed") and f is not bases[0]]
    return _moved(ask, bases[0], values[0].value - values[1].value, (*values, bases[0], *others), "The light changed by") if len(others) < 2 else None


_WANTED = Pattern(r"\b(?:want\w*|wanna|puts?|putting|sets?|sits?|make|making|need\w*|like|drop\w*|bring|knock|darken\w*|brighten\w*|lower|lift|raise|take|to be|get|should be|must be|go|for)\b|^[^.?!]*\b(?:darker|brighter)\b", re.I)
_IS = Pattern(r"\b(?:is|was|came|comes|come|reads?|looks?|too|turned out|it's|are)\b[^.?!,]*$", re.I)
_RIGHT = Pattern(r"\b(?:right|normal|correct|proper|as metered|fix\w*|level|cures?|sorts?)\b", re.I)


_BEHIND = r"(?:background|backdrop|wall|paper|seamless|curtain|sheet|fence|door|hedge)"
_READS = Pattern(rf"\bwhat (?:would|does|should|will|must) (?:the |my )?meter (?:say|read|show|give)\b[^?]*\b(?:ambient|room|window|sky|daylight|sun)\b|\b(?:ambient|room|window|sky|daylight|sun)(?: light)? reading\W*$|\b{_BEHIND}\b[^.?!,]{{0,24}}\b(?:meter|read|show|give)s?\b|\b(?:meter|reading)\b[^.?!,]{{0,16}}\b(?:say|read|show|be|give)\b[^.?!,]{{0,30}}\b(?:{_BEHIND}|there|on it|off it)\b|\bwhat (?:should|must|will|would) (?:the |my )?(?:meter|reading)\b[^.?!,]*\b(?:there|{_BEHIND})\b", re.I)


def _backdrop_reading(query: Query, ask: Ask) -> Solution | None:
    """"f/8 on the model, the paper two stops over that: what should the background meter": a reading, no setting."""
    said = next((f for f in query.facts if f.quantity == "relation" and f.of in ("backdrop", "background", "ambient")), None)
    read = query.all("aperture")
    if said is not None and said.of == "ambient" and any(f.of == "ambient" for f in read):
        return None
    if ask.quantity != "aperture" or said is None or len(read) != 1 or _BOTH.search(query.text.split(".")[-1]) or query.has("shutter") or not _READS.search(query.text.split(".")[-1]):
        return None
    return Solution(lead="The background should read" if said.of != "ambient" else "It should read", answers=(marks.aperture(aperture_after(read[0].value, signed(said)), "background" if said.of != "ambient" else "ambient"),), used=(read[0], said), topic="ambient")


def _one_change(query: Query, ask: Ask, wanted: Fact) -> Solution | None:
    """"I'm on 1/30, want the background two stops darker": a change from what is set; "it's two under, make it right" the other way."""
    base = query.last(ask.quantity, "") or query.last(ask.quantity, "ambient")
    if base is None or base.origin != "said" or query.first("aperture", "ambient") or any(len(query.all(q)) > 1 for q in ("shutter", "aperture", "film_speed")) or query.has("nd"):
        return None
    if ask.quantity == "aperture" and (ask.of or patterns.search(r"\bread(?:s|ing)?\b|\blight\b", query.text, re.I)):
        return None
    before = query.text[: wanted.start]
    told = _IS.search(before) is not None and not patterns.search(r"\b(?:want|make|need|like)\w*\b", before, re.I)
    too = patterns.match(r"\s*too\b", query.text[wanted.end :], re.I) is not None or patterns.search(r"\btoo \w+ by\s*$", before, re.I) is not None  # "two stops too bright" is what came out
    told = told or too or _RIGHT.search(query.text) is not None and not _WANTED.search(before)
    if told and not too and not _RIGHT.search(query.text):
        return None
    moved = -signed(wanted) if told else signed(wanted)
    return _moved(ask, base, moved, (base, wanted, *(f for f in query.facts if f.quantity in ("shutter", "aperture", "film_speed") and f is not base)))


def _now_under(query: Query, before: Fact) -> Solution | None:
    pairs = [(query.all(q), between) for q, between in scales.DIFFERENCE_STOPS.items()]
    pairs = [(_from_the_reading(facts), between) for facts, between in pairs if len(facts) == 2]
    if not pairs:
        return None
    value = signed(before) + sum(between(facts[0].value, facts[1].value) for facts, between in pairs)
    used = (before, *(f for facts, _ in pairs for f in facts))
    return Solution(answers=(marks.stops(value, "ambient"),), used=used, topic="ambient")


def _from_the_reading(two: list[Fact]) -> list[Fact]:
    """What it was read at first, wherever it is told: "opened for each at 1/60, and a single 1/60 leaves the room five under"."""
    return two[::-1] if two[1].of == "ambient" and two[0].of != "ambient" else two


def _for_under(query: Query, ask: Ask, before: Fact, after: Fact) -> Solution | None:
    base = query.last(ask.quantity, "") or query.last(ask.quantity, "ambient")
    if base is None or len(query.all(ask.quantity)) != 1:
        return None
    return _moved(ask, base, signed(after) - signed(before), (base, before, after))


def _moved(ask: Ask, base: Fact, moved: float, used: tuple[Fact, ...], why: str = "") -> Solution:
    """A setting so many stops on, with what that does to the flash."""
    answer: Quantity = marks.shutter(base.value * 2.0**moved) if ask.quantity == "shutter" else \
        marks.aperture(base.value * 2.0 ** (-moved / 2)) if ask.quantity == "aperture" else marks.film_speed(base.value * 2.0**moved)
    if why:
        return Solution(answers=(answer,), used=used, topic="ambient", notes=(f"{why} {scales.speak_stops(abs(moved))}.",))
    note = f"That is {scales.speak_stops(abs(moved))} {'more' if moved > 0 else 'less'} ambient light."
    if ask.quantity != "shutter":
        note += " The flash changes by as much."
    return Solution(answers=(answer,), used=used, topic="ambient", notes=(note,))


_MARGIN = 1.06
"""A marked time may differ by this much from the exact one and still be the sync mark."""


def no_faster_than_sync(query: Query, solution: Solution) -> Solution:
    """A time found by stops alone, with no f-number told: out of reach as well where the sync that was told is slower."""
    sync, answer = query.last("sync"), solution.answers[0] if solution.answers else None
    if sync is None or sync.origin != "said" or answer is None or answer.quantity != "shutter" or solution.status != "answered" or "hss" in query.cues or float(answer.value) * _MARGIN >= sync.value:
        return solution
    over = math.log2(sync.value / float(answer.value))
    at = marks.shutter(sync.value)
    note = f"That is faster than the sync of {at.set} s, by {scales.speak_stops(over)}. At sync close the lens by so much, or put so much ND on it, or load film as much slower; each cuts the flash as well."
    return replace(solution, status="out_of_reach", alternatives=((marks.stops(over, "ND"), at),), used=(*solution.used, sync), lead="Out of reach with flash; it would take").noting(note)
