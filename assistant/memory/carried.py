"""Values said on their own in a follow-up take the meaning the conversation gives them.

"And at 3 m?" after a question of depth of field is the focus, "and with an 80?" the lens,
"and at 1/4000?" after a movement the flash. Without this the old value would stay beside it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from assistant import patterns
from assistant.language.metered_at import OF_THE_READING
from assistant.memory.conversation import Conversation
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import is_aperture_mark
from assistant.units import LENGTH

_DRAWN_TO = Pattern(r"\b(?:at|to|out to|drawn to|on)\s*$|\b(?:draw|bell?ows|extension|racked|pulled)(?: (?:is|of|now|out|to|at|instead|only|just))*\s*$", re.I)
_ONE = Pattern(r"\bone (?:is|was|gives?|gave|reads?|makes?|does)\b", re.I)
"""One pop, after it was asked how many."""
LENS_ASKS = frozenset({"near_limit", "far_limit", "depth_of_field", "hyperfocal", "sharp", "magnification", "coverage", "focus_distance"})


def carried(query: Query, facts: Iterable[Fact], asks: Iterable[Ask]) -> Query:
    """The query with bare values read as the scene's `facts` and `asks` have them."""
    facts, asks = tuple(facts), tuple(asks)
    if not facts and not asks:
        return query
    query = _same_filter(_asked_as_before(_of_two_places(_no_other_light(query), facts), asks), facts)
    scene = {f.quantity for f in facts}
    wanted = {a.quantity for a in asks} | {f"{a.quantity} {a.of}" for a in asks}
    if "guide_number" in scene or query.has("guide_number"):
        return query
    if "count pops" in {f"{a.quantity} {a.unit}" for a in asks} or "count" in wanted:
        query = replace(query, facts=tuple(replace(f, of="") if f.of == "a" and _ONE.search(query.text[max(0, f.start - 24) : f.start]) else f for f in query.facts), mentioned=tuple(m for m in query.mentioned if m != "a"))
    if any(f.quantity == "count" and f.unit == "pops" for f in facts) and "times" not in scene:
        query = query.with_facts(replace(f, quantity="count", unit="pops") if f.quantity == "times" and f.value == int(f.value) else f for f in query.facts)  # "and four times?", after three pops
    query = _to_another_end(query, facts, wanted)
    unit = next((f.unit for f in facts if f.quantity == "extension" and f.unit in LENGTH), "mm")
    facts = tuple(_drawn(f, _read(f, query, scene, wanted), unit) for f in query.facts)
    placed = {new.said for old, new in zip(query.facts, facts) if old.quantity == "number" and new is not old}
    return replace(query, facts=facts, unplaced=tuple(u for u in query.unplaced if u not in placed))


def _to_another_end(query: Query, facts: tuple[Fact, ...], wanted: set[str]) -> Query:
    """"and if I were content with f/5.6?", after "how many stops of ND from f/16 to f/4": where it goes to, from where it was."""
    spans = [f for f in facts if f.quantity == "aperture_range" and f.other]
    told = [f for f in query.facts if f.origin == "said" and (f.quantity == "aperture" or f.quantity == "number" and is_aperture_mark(f.value))]
    if len(spans) != 1 or len(told) != 1 or query.asks or query.text[: told[0].start].lower().rstrip().endswith("from") or not wanted & {"stops", "nd", "factor"} or any(f.quantity == "aperture" for f in facts):
        return query
    span = replace(spans[0], other=told[0].value, start=told[0].start, end=told[0].end, said=told[0].said, origin="said", sentence=told[0].sentence)
    return replace(query, facts=tuple(span if f is told[0] else f for f in query.facts), unplaced=tuple(u for u in query.unplaced if u != told[0].said.strip()))


def on_the_film_there_is(query: Query, kit: Iterable[Fact], scene: Iterable[Fact]) -> Query:
    """"I have ISO 160 loaded", then "EV 5 at ISO 100": the reading is for the one speed, and the film is of the other."""
    told = [f for f in query.facts if f.quantity == "film_speed"]
    if len(told) != 1 or told[0].cue != OF_THE_READING:
        return query
    loaded = [f for f in (*kit, *scene) if f.quantity == "film_speed" and f.cue != OF_THE_READING]
    return query.with_facts(f for f in query.facts if f is not told[0]) if loaded else query


_WHAT_NOW = Pattern(
    r"\b(?:what|where)(?:'?s|s| is| was| does| will| would)?(?: (?:it|that|this|the (?:result|answer|outcome|difference|drop|fall-?off|loss|figure|spread)))?(?: (?:that|it|be|make|come to|come out (?:at|to)|look like|leave))*(?: (?:it|that|us|me))?(?: (?:now|then|instead|after that|in that case))*\W*$", re.I)


_OTHER_WAY = Pattern(r"\bother way (?:round|around|about)\b", re.I)


_OF_TWO = Pattern(r"\b(?:(?P<near>near(?:er|est)?|clos(?:e|er|est)|front)|(?P<far>far(?:ther|thest)?|furthest|back|rear))(?:most)? one\b[^.?!\d]{0,20}$", re.I)


def _of_two_places(query: Query, facts: tuple[Fact, ...]) -> Query:
    """"and the near one at 4 ft?" of two people in one light: the nearer of them, and no light."""
    places = [f for f in facts if f.quantity == "distance"]
    if len(places) != 2 or any(f.of not in ("", "front", "back") for f in places) or not any(f.of in ("a", "b") for f in query.facts):
        return query
    told = tuple(replace(f, of="front" if said["near"] else "back") if f.of in ("a", "b") and (said := _OF_TWO.search(query.text[: f.start])) else f for f in query.facts)
    return replace(query, facts=told, mentioned=tuple(m for m in query.mentioned if m not in ("a", "b"))) if told != query.facts else query


def _no_other_light(query: Query) -> Query:
    """"the other way round" names no other light."""
    if "b" not in query.mentioned or not _OTHER_WAY.search(query.text):
        return query
    return replace(query, mentioned=tuple(m for m in query.mentioned if m != "b"), facts=tuple(replace(f, of="") if f.of == "b" else f for f in query.facts), asks=tuple(replace(a, of="") if a.of == "b" else a for a in query.asks))


_WHAT_IF_SO = Pattern(r"^\W*(?:(?:and|so|then|now|ok) )*what(?:'?s| is| would| will| does)? (?:it|that|the (?:result|answer|difference|drop|fall-?off|loss|figure|spread))(?: (?:be|become|come to|now|then))* (?:if|when|with|for|once|after)\b", re.I)


def _asked_as_before(query: Query, asks: tuple[Ask, ...]) -> Query:
    """"pull the fill back to 2.4 m, what's it now?" after a ratio: nothing is named, so it is the ratio that is asked again."""
    named = "name_aperture" in query.cues or [a.quantity for a in query.asks] != ["aperture"] or query.asks[0].of
    if named or not asks or asks[0].quantity == "aperture" or not query.facts or not (_WHAT_NOW.search(query.text) or _WHAT_IF_SO.match(query.text)):
        return query
    return replace(query, asks=())


_THAT_FILTER = Pattern(r"\b(?:that|the same|this) (?:\w+ )?(?:filter|nd|polari[sz]er)\b")


def _same_filter(query: Query, told: tuple[Fact, ...]) -> Query:
    """"with that filter on": as strong as it was told to be."""
    worn = [f for f in query.facts if f.quantity == "camera_filter" and f.unit in ("filter", "nd")]
    strong = [f for f in told if f.quantity in ("nd", "factor", "filter_loss")]
    if len(worn) != 1 or len(strong) != 1 or any(f.quantity in ("nd", "factor", "filter_loss", "loss", "stops", "times") for f in query.facts) or not _THAT_FILTER.search(query.text.lower()):
        return query
    return replace(query, facts=tuple(replace(strong[0], origin="kept") if f is worn[0] else f for f in query.facts))


def _read(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> Fact:
    for holds, quantity, change in _RULES:
        if fact.quantity in quantity and holds(fact, query, scene, wanted):
            return change(fact)
    return fact


def _is_lens(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return "focal_length" in scene and "film_speed" not in scene and not patterns.search(r"iso|asa|film|din|speed|\bei\b|/", fact.said.lower()) and not query.has("focal_length")


_AT = Pattern(r"\b(?:at|down to|up to|stopped to)\s*$", re.I)


_FULL_STOPS = (1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0)
_AND_NOW = Pattern(r"(?:^|\b(?:make (?:it|that)|and|or|then|now|try|say|what about|how about|what if|if))\W*$", re.I)
"""Before a mark of the aperture ring that stands alone: no lens is of 11 or 16 mm as often as f/16 is set."""


def _is_stop(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    told = {"focal_length", "aperture"} <= scene and is_aperture_mark(fact.value) and fact.value <= 64 and "lens" not in query.cues
    before = query.text[: fact.start]
    return told and (_AT.search(before) is not None or fact.value in _FULL_STOPS and _AND_NOW.search(before) is not None)


_ON_THE_RING = Pattern(r"\b(?:lens|ring|aperture|iris|barrel)(?: (?:is|was|set|left|now|stays))* (?:on|at|to) $", re.I)


def _is_on_the_ring(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return "aperture" in scene and is_aperture_mark(fact.value) and fact.value <= 64 and _ON_THE_RING.search(query.text[: fact.start]) is not None


def _is_draw(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return "extension" in scene and _DRAWN_TO.search(query.text[: fact.start]) is not None


def _drawn(said: Fact, read: Fact, unit: str) -> Fact:
    """A bare number that is the draw is in the unit of the draw before."""
    return replace(read, value=said.value * LENGTH[unit], unit=unit) if read.quantity == "extension" and said.quantity in ("number", "film_speed") else read


def _is_smear(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return {"velocity", "blur"} <= scene and not fact.of and fact.value < 0.1


def _is_limit(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return "sharp" in wanted and "sharp_limit" in scene and not fact.of


def _is_focus(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return bool(wanted & LENS_ASKS) and not fact.of and not query.has("focus_distance") and not query.has("sharp_limit") and "focal_length" in scene


def _is_pulse(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return "velocity" in scene and bool(scene & {"duration", "t05", "t01"}) and "distance movement" in wanted and not query.has("duration")


def _is_half_pulse(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    """Another t0.5, where that was told and no other time of the flash."""
    return _is_pulse(fact, query, scene, wanted) and "t05" in scene and not scene & {"t01", "duration"}


def _is_recycle(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return "recycle" in scene and "duration recycle" in wanted


def _is_of_the_charge(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    """"and if only 60 per cent gets there?": the part of the charge anew, and no power."""
    return "charge_share" in scene and fact.unit == "%" and "power" not in query.text.lower()


def _is_of_the_charge_lost(fact: Fact, query: Query, scene: set[str], wanted: set[str]) -> bool:
    return _is_of_the_charge(fact, query, scene, wanted) and _LOST.search(query.text) is not None


_LOST = Pattern(r"\b(?:lost|loses?|losing|wast\w+|heat)\b", re.I)


Rule = tuple[Callable[[Fact, Query, set[str], set[str]], bool], tuple[str, ...], Callable[[Fact], Fact]]
_RULES: tuple[Rule, ...] = (
    (_is_draw, ("film_speed", "number"), lambda f: replace(f, quantity="extension", value=f.value / 1000, unit="mm")),
    (_is_smear, ("distance", "focal_length", "move"), lambda f: replace(f, quantity="blur", of="")),
    (_is_on_the_ring, ("film_speed", "number"), lambda f: replace(f, quantity="aperture", of="", unit="")),
    (_is_stop, ("film_speed", "number"), lambda f: replace(f, quantity="aperture", of="")),
    (_is_lens, ("film_speed", "number"), lambda f: replace(f, quantity="focal_length", value=f.value / 1000, unit="mm")),
    (_is_limit, ("distance",), lambda f: replace(f, quantity="sharp_limit")),
    (_is_focus, ("distance", "camera_distance"), lambda f: replace(f, quantity="focus_distance", of="camera")),
    (_is_half_pulse, ("shutter", "time"), lambda f: replace(f, quantity="t05")),
    (_is_pulse, ("shutter", "time"), lambda f: replace(f, quantity="duration")),
    (_is_recycle, ("shutter", "time"), lambda f: replace(f, quantity="recycle")),
    (_is_of_the_charge_lost, ("power", "share"), lambda f: replace(f, quantity="charge_share", value=1 - f.value, of="")),
    (_is_of_the_charge, ("power", "share"), lambda f: replace(f, quantity="charge_share", of="")),
)


_HUNG_IN_IT = frozenset({"modifier", "loss"})


def with_what_was_found(whole: Query, talk: Conversation, missing: tuple[str, ...]) -> Query:
    """A question that lacks what an earlier answer found, or a claim told, with it; the same query where neither has it."""
    known = (*talk.scene.answered, *(replace(f, origin="kept") for f in (talk.judged.query.facts if talk.judged else ())))
    found = tuple(f for f in known if f.quantity in missing)
    if not found:
        return whole
    tested = any(f.quantity == "guide_number" for f in talk.scene.answered)  # with what hung in the light, which takes nothing more
    kept = (f for f in whole.facts if not (tested and f.origin == "kept" and f.quantity in _HUNG_IN_IT))
    return replace(whole, facts=(*kept, *found))
