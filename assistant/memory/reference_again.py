"""A reading and its place told anew together: "what if it gives f/16 at 2 m?" after "f/11 at 2 m; what at 4 m?"."""

from __future__ import annotations

import math
import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace
from assistant.scales import exact_aperture, nearest_aperture

_GIVES = Pattern(r"\b(?:gives?|gave|reads?|meters?|metered|measures?|measured|is|was|were|got|gets|makes?|made|comes? to|came to)\b", re.I)


def reference_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The pair that was tested, anew; what was asked for another place is asked for it still."""
    read = [f for f in scene.facts if f.quantity == "aperture"]
    places = [f for f in scene.facts if f.quantity == "distance"]
    stop, place = query.first("aperture"), query.first("distance")
    if len(query.facts) != 2 or stop is None or place is None or stop.of or place.of or query.asks or len(read) != 1 or len(places) != 2 or any(f.of for f in (*read, *places)) or not scene.asks or scene.asks[0].quantity != "aperture":
        return query, scene
    if any(f.quantity == "guide_number" for f in (*scene.facts, *talk.kit.facts)) or not _GIVES.search(query.text[: max(stop.start, place.start)]):
        return query, scene
    together = [f for f in places if _beside(f.start, read[0].start, scene.text)]
    tested = together[0] if len(together) == 1 else min(places, key=lambda f: abs(f.start - read[0].start))
    other = places[0] if tested is places[1] else places[1]
    if math.isclose(other.value, place.value) and not math.isclose(tested.value, place.value):
        return query, scene
    facts = (replace(as_told(tested, place.value, place), unit=place.unit, start=tested.start, end=tested.end), replace(as_told(read[0], stop.value, stop), start=read[0].start, end=read[0].end), replace(other, origin="kept"))
    return replace(query, facts=facts), replace(scene, facts=tuple(f for f in scene.facts if f not in (*read, *places)))


def _beside(one: int, other: int, text: str) -> bool:
    """Whether two places of the text stand in one sentence."""
    return not any(mark in text[min(one, other) : max(one, other)] for mark in ".?!;") if max(one, other) <= len(text) else False


_OF_THE_TEST = Pattern(r"\b(?:gave|read|metered|measured|was|were|tested|test|got|made)\b", re.I)

_SETTINGS = frozenset({"aperture", "distance", "power", "film_speed", "energy", "shutter"})


def _read_by_one(scene: Scene) -> Scene:
    """"how many pops for f/16, one gave f/8": what one gave goes first."""
    read = [f for f in scene.facts if f.quantity == "aperture"]
    if len(read) != 2 or read[1].cue != "meter" or read[0].cue == "meter":
        return scene
    return replace(scene, facts=(*(f for f in scene.facts if f not in read), read[1], read[0]))


def asked_first(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"1.4 m" after "what would it read at 3 m; it gave f/11 at 2 m": the figure that was asked for is changed, and what was tested is put before it."""
    from assistant.solving.change import is_found_with

    mine = query.facts[0] if len(query.facts) == 1 else None
    wanted = scene.asks[0].quantity if scene.asks else ""
    if mine is None or mine.of or mine.quantity not in _SETTINGS or wanted not in {*_SETTINGS, "count"} or mine.quantity == wanted or any(a.quantity != wanted for a in query.asks):
        return query, scene
    if wanted == "count":
        return query, _read_by_one(scene) if mine.quantity == "aperture" else scene
    read, pair = ([f for f in scene.facts if f.quantity == quantity] for quantity in (wanted, mine.quantity))
    if len(read) != 1 or len(pair) != 2 or any(f.of or scene.text[f.start : f.end] != f.said for f in (*read, *pair)) or any(f.quantity == "guide_number" for f in scene.facts) or _OF_THE_TEST.search(query.text):
        return query, scene
    asked, tested = pair
    if not is_found_with(tested, read[0], scene.text) or is_found_with(asked, read[0], scene.text):
        return query, scene
    return query, replace(scene, facts=(*(f for f in scene.facts if f not in pair), tested, asked))


_ITS_POWER = Pattern(r"\b(?P<way>halv(?:e|ed|ing)|half|doubl(?:e|ed|ing)|twice|quarter(?:ed|ing)?|a quarter(?: of)?)\b (?:of )?(?:its|the|her|his|that light's|their) (?:power|output)\b", re.I)
_BY = {"hal": 0.5, "dou": 2.0, "twi": 2.0, "qua": 0.25, "a q": 0.25}


def reading_by_power(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and if I halve its power?" of a light that was metered: it reads as much less."""
    said = _ITS_POWER.search(query.text)
    read = [f for f in scene.facts if f.quantity == "aperture" and f.cue == "meter"]
    if said is None or len(read) != 1 or any(f.quantity != "power" for f in query.facts) or any(a.quantity != "power" for a in query.asks) or not scene.asks or scene.asks[0].quantity not in ("stops", "aperture") or any(f.quantity in ("guide_number", "power", "power_down") for f in scene.facts):
        return query, scene
    exact = exact_aperture(read[0].value) * math.sqrt(_BY[said["way"].lower()[:3]])
    mark = nearest_aperture(exact)  # lights are held against each other by the marks
    new = replace(read[0], value=mark.value if abs(2 * math.log2(exact / exact_aperture(mark.value))) < 0.03 else exact, said=said.group(), origin="said")
    return replace(query, facts=(*(replace(f, origin="kept") for f in scene.facts if f.quantity == "aperture" and f is not read[0]), new), asks=(), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "aperture"))
