"""What a claim says, made plain: the words of the rule left out, sums done, lengths that are guide numbers, a first product checked."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_steps import is_figure, without_sums
from assistant.solving.claim_words import plain, terms
from assistant.solving.solution import Solution


def readable(query: Query) -> Query:
    """Without the words of the rule itself ("halves the guide number" is no half power), sums done."""
    spans = [(t.start, t.end) for t in terms(query.text) if t.quantity not in ("power", "count", "stops", "aperture", "distance", "film_speed", "time") or not patterns.search(r"\d", query.text[t.start : t.end])]
    powers = [(t.start, t.end) for t in terms(query.text) if t.quantity == "power"]
    counts = [(t.start, t.end) for t in terms(query.text) if t.quantity == "count"]

    def misread(f: Fact) -> bool:
        over = any(s <= f.start < e for s, e in spans)
        return over and f.quantity in ("power", "times", "count", "guide_number", "number", "share") and not any(s <= f.start < e for s, e in (powers if f.quantity in ("power", "share") else counts if f.quantity == "count" else ()))

    facts = [_figure(query, f) if f.quantity == "film_speed" else f for f in query.facts if not spans or not misread(f)]
    return _guides_in_lengths(without_sums(query.with_facts(_more_flashes(query, facts))))


_GIVES = Pattern(r"\b(?:gives?|makes?|so|now|leaves?|is|becomes?|comes to)\W+(?:(?:it|us|me|now|about|that)\W+)*$|[=→]\s*$")


def _figure(query: Query, fact: Fact) -> Fact:
    """"half power gives 160": a figure, not a film speed, however much it looks like one."""
    bare = not patterns.search(r"[a-z]", fact.said.lower())
    return replace(fact, quantity="number", unit="") if bare and query.has("guide_number") and _GIVES.search(plain(query.text)[: fact.start]) else fact


def _more_flashes(query: Query, facts: list[Fact]) -> list[Fact]:
    """"one flash gives f/8 so two give f/11": two flashes."""
    if not [f for f in facts if f.quantity == "count" and f.unit == "flashes"]:
        return facts
    said = plain(query.text)
    return [replace(f, quantity="count", unit="flashes") if f.quantity == "number" and f.value == int(f.value) and patterns.match(r"(?: of them| together)? (?:will |would |should )?(?:give|make|get|do|add)", said[f.end :]) else f for f in facts]


def _guides_in_lengths(query: Query) -> Query:
    """"my 40 metres is 20 metres" of a guide number; "becomes 60 metres", "turns into 160"."""
    query = _guide_of_mine(query)
    said = plain(query.text)
    lengths = query.all("distance", "")
    if "name_guide_number" in query.cues and not query.has("guide_number") and len(lengths) > 1 and not query.has("aperture"):
        return query.with_facts(replace(f, quantity="guide_number", value=f.value / LENGTH_OF.get(f.unit, 1.0)) if f in lengths else f for f in query.facts)
    if not query.has("guide_number"):
        return query
    first = query.all("guide_number")[0].start
    facts = []
    for f in query.facts:
        becomes = f.start > first and _BECOMES.search(said[: f.start]) is not None
        another = any(o is not f and (o.start > f.start or not query.has("aperture")) for o in lengths) or not query.has("aperture")
        if becomes and f in lengths and f is lengths[0] and another and (query.has("aperture") or len(lengths) == 1):
            f = replace(f, quantity="guide_number", value=f.value / LENGTH_OF.get(f.unit, 1.0), cue="result" if query.has("aperture") else "claimed")
        elif becomes and f.quantity == "number" and not query.has("distance") and not query.has("aperture"):
            unit = _UNIT_AFTER.search(said[f.end : f.end + 14])
            f = replace(f, quantity="guide_number", unit=("m" if unit.group(1)[0] == "m" else "ft") if unit else f.unit if f.unit in LENGTH_OF else "", cue="claimed")
        facts.append(f)
    return _conditions_apart(query.with_facts(facts))


_MINE = Pattern(r"\b(?:my|the|his|her|our|your|a) $")


def _guide_of_mine(query: Query) -> Query:
    """"iso 200 doubles your guide number, so my 40 metres becomes 80": a guide number and what becomes of it."""
    said = plain(query.text)
    lengths = query.all("distance", "")
    one = next((f for f in lengths if _MINE.search(said[: f.start]) and patterns.match(r" ?(?:flash |gun |gn |guide number )?(?:becomes?|turns into|goes (?:up |down )?to|is now|comes to)\b", said[f.end :])), None)
    if one is None or query.has("guide_number") or not {"name_guide_number"} & query.cues and not patterns.search(r"\b(?:gn|guide (?:number|no))\b", said):
        return query
    facts: list[Fact] = []
    for f in query.facts:
        if f is one:
            f = replace(f, quantity="guide_number", value=f.value / LENGTH_OF.get(f.unit, 1.0))
        elif f.quantity in ("film_speed", "number", "guide_number") and f.start > one.end and f.start - one.end < 24 and _BECOMES.search(said[: f.start]) and not patterns.search(r"[a-z]", f.said.lower()):
            f = replace(f, quantity="number", unit="sum", cue="result")
        facts.append(f)
    return query.with_facts(facts)


def _conditions_apart(query: Query) -> Query:
    """"guide number 80 at a quarter power becomes 40": the condition is what changes it."""
    guides = query.all("guide_number")
    last = guides[-1]
    if len(guides) == 2 and (last.at_iso or last.at_power) and last.of == guides[0].of and _PUT_UP.search(plain(query.text)[: last.start]) and not query.has("distance"):
        last, guides = replace(last, cue="claimed", of=""), [replace(guides[0], of=""), guides[-1]]
        query = query.with_facts(last if f.start == last.start and f.quantity == "guide_number" else replace(f, of="") for f in query.facts)
    if len(guides) < 2 or not is_figure(last, plain(query.text)):
        return query
    one = guides[0]
    if one.at_power == 1.0 or one.at_iso == 100.0:
        one, before = replace(one, at_power=None if one.at_power == 1.0 else one.at_power, at_iso=None if one.at_iso == 100.0 else one.at_iso), one
        query = query.with_facts(one if f is before else f for f in query.facts)
    facts = [f for f in query.facts if f is not one and f is not last] + [replace(last, at_iso=None, at_power=None, cue="claimed" if not query.has("aperture") else last.cue)]
    if last.at_iso:
        facts.append(Fact("film_speed", last.at_iso, start=last.start - 1, end=last.start - 1, said=last.said))
    if last.at_power:
        facts.append(Fact("power", last.at_power, start=last.start - 1, end=last.start - 1, said=last.said))
    if last.at_iso or last.at_power:
        return query.with_facts(sorted((one, *facts), key=lambda f: f.start))
    if one.at_power not in (None, 1.0) and not query.has("power"):
        facts.append(Fact("power", float(one.at_power or 1.0), start=one.end, end=one.end, said=one.said))
        one = replace(one, at_power=None)
    if one.at_iso not in (None, 100.0) and not query.has("film_speed"):
        facts.append(Fact("film_speed", float(one.at_iso or 100.0), start=one.end, end=one.end, said=one.said))
        one = replace(one, at_iso=None)
    return query.with_facts(sorted((one, *facts), key=lambda f: f.start))


_PUT_UP = Pattern(r"(?:^|[.,;?!]\s+|\bso |\band )(?:is|are|does|would|will|can|has|do)\b[^.?!]*$")
LENGTH_OF = {"ft": 0.3048, "m": 1.0}
_BECOMES = Pattern(r"(?:\b(?:becomes?|turns into|turns? (?:it )?to|goes (?:up |down )?to|is|makes?|gives?|comes to|equals?|equal to|same as|it's|that's|drops? to|falls? to|rises? to|so|now|means|get)|=|->|→)\W{0,3}(?:(?:only|just|about|around|roughly|a|an|the|guide number|gn|of|it|in|up|down|to)\W+)*$")
_UNIT_AFTER = Pattern(r"^\s*(?:in )?(m\b|met|ft|feet|foot)")


def first_step(query: Query) -> Query | Solution:
    """"f/11 at 8 feet means guide number 88, so on ISO 400 it's 176 …": the product checked, then left out of the rest."""
    guides, said = query.all("guide_number"), plain(query.text)
    if not guides or not is_figure(guides[0], said) and not _MEANS.search(said[: guides[0].start]):
        return query
    one = guides[0]
    before = [f for f in query.facts if f.start < one.start and f.quantity in ("aperture", "distance") and not f.of]
    rest = [f for f in query.facts if f.start > one.start and f.quantity in ("aperture", "distance", "guide_number", "number")]
    if {f.quantity for f in before} != {"aperture", "distance"} or len(before) != 2 or not rest:
        return query
    far, mark = (next(f for f in before if f.quantity == q) for q in ("distance", "aperture"))
    unit = one.unit if one.unit in LENGTH_OF else far.unit if far.unit in LENGTH_OF else "ft"
    right = far.value / LENGTH_OF[unit] * mark.value
    if abs(2 * math.log2(one.value / right)) > TOLERANCE:
        known = marks.guide_number(right, unit)
        return Solution(answers=(Quantity("claim", False), known), lead=f"No. The first step that is off is the guide number: {mark.value:g} x {far.value / LENGTH_OF[unit]:g} = {right:.3g}.", used=query.facts, topic="claims")
    early = [f for f in query.facts if f.quantity in ("film_speed", "power") and f.start < one.start]
    dropped = (*before, *(f for f in early if f.value in (100.0, 1.0)))
    return query.with_facts(replace(f, unit=unit, cue="") if f is one else f for f in query.facts if f not in dropped)


_MEANS = Pattern(r"\b(?:means|makes|gives?|so|is|=)\W+(?:(?:a|the|my|it|guide number|gn|of|about)\W+)*$")


_LAST_SENTENCE = Pattern(r"(?:^|[.;:!?]\s+)(?P<last>(?:[^.;:!?]|[.:](?=\d))+)[?!.]*\s*$")
_OF_SYNC = Pattern(r"\bsync\w*|\bshutter|\bflash|\bblack|\bcurtain|\b1/\d|\bspeed|\btime\b", re.I)
_SLACK = 0.9


def without_kept_sync(query: Query) -> Query:
    """The claim of a grey filter without the sync speed, where the one time told is no faster and the last sentence speaks of no time.

    "Max sync 1/125, daylight meters f/16 at 1/125, I want f/8: will a two-stop ND get me there?" asks for the ND alone.
    """
    syncs, times = query.all("sync"), query.all("shutter")
    if len(syncs) != 1 or not times or not query.has("nd") or any(t.value < syncs[0].value * _SLACK for t in times):
        return query
    last = _LAST_SENTENCE.search(query.text)
    if last is None or _OF_SYNC.search(last["last"]) is not None:
        return query
    return query.with_facts(f for f in query.facts if f is not syncs[0])
