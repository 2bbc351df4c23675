"""A half-sentence that gives another of what was told, by what the question holds: another sky, another exponent, a light level with the key."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.language.daylight import SKIES
from assistant.memory.anew import as_told, lone
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import is_film_speed_mark


def sky_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and overcast?" after a question of full sun: the other sky alone."""
    sky = query.cues & SKIES
    if not sky or not scene.cues & SKIES:
        return query, scene
    return query, replace(scene, cues=scene.cues - SKIES)


_LEVEL = Pattern(r"\b(?:level|equal|even|(?:the )?same(?= as\b|\W*$)|the same|as (?:bright|strong|hot|much)|match\w*|no (?:brighter|darker))\b", re.I)


_AMBIENT_LEVEL = Pattern(r"^(?!.*(?:\b(?:not|never|nor)\b|n't\b))(?=.*\b(?:ambient|daylight|room|background|sky|window|it|they|the two|both|existing light|available light)\b)\W*(?:(?:and|or|so|now|but|what|how about|what about|if|when|with|say|suppose) )*(?:the )?[a-z' ]{0,40}?\b(?:level|equal|even|the same|as (?:bright|strong|hot|much)|match\w*)\b[a-z ]{0,24}\W*$", re.I)


def says_level(query: Query, scene: Scene) -> re.Match[str] | None:
    """"level with it": said of a light that was so many stops over or under another."""
    told = [f for f in scene.facts if f.quantity == "relation" and (f.to or f.of)]
    if len(told) == 1 and told[0].of == "ambient" and not told[0].to and not query.facts and not query.asks and not query.mentioned:
        return _AMBIENT_LEVEL.match(query.text)  # "and when the ambient is equal to the flash?"
    if query.facts or query.asks or len(told) != 1 or set(query.mentioned) - {told[0].to or _read_alone(told[0], scene), told[0].of} or not (told[0].to or query.mentioned):
        return None
    return _LEVEL.search(query.text)


def _read_alone(told: Fact, scene: Scene) -> str:
    """The only other light whose reading was told: what "a stop over that" is over."""
    read = {f.of for f in scene.facts if f.quantity == "aperture" and f.of and f.of != told.of}
    return read.pop() if len(read) == 1 else told.of


def level_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"level with the key?" after "a stop over the key": none over."""
    level = says_level(query, scene)
    if level is None:
        return query, scene
    told = next(f for f in scene.facts if f.quantity == "relation" and (f.to or f.of))
    none = replace(told, value=0.0, said=level.group(), start=level.start(), end=level.end(), origin="said")
    return replace(query, facts=(none,), unknown=(), mentioned=()), scene


def _is_exponent(fact: Fact) -> bool:
    return fact.quantity in ("aperture", "number") and 1.0 < fact.value < 2.0 and "f" not in fact.said.lower()


_TIMES = ("t05", "t01", "duration")


def kind_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and with 1.2?" after an exponent of 1.3, "and for 1/2000?" after a t0.5: the one value that it can be."""
    mine = lone(query, "aperture", "number", "shutter")
    if mine is None or mine.of not in ("", "ambient") or any(f.quantity == mine.quantity for f in scene.facts):
        return query, scene
    fits = ("exponent",) if _is_exponent(mine) else _TIMES if mine.quantity == "shutter" and mine.value < 1 / 30 else ("interval", "recycle") if mine.quantity == "shutter" and mine.value >= 0.2 else ()
    old = [f for f in scene.facts if f.quantity in fits]
    if len(old) != 1:
        return query, scene
    return replace(query, facts=(as_told(old[0], mine.value, mine),), unplaced=()), scene


_METERED = Pattern(r"\bmeter(?:s|ed|ing|ed at|s at)?\W*$", re.I)


def metered_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"8 s?" after a metered 4 s and the film's exponent: another metered time, and none that the camera is set to."""
    times = [f for f in scene.facts if f.quantity in ("shutter", "time")]
    mine = lone(query, "shutter", "number", "film_speed")
    if mine is not None and mine.quantity != "shutter" and len(times) == 1 and _only_a_time(mine, times[0], query, scene):
        mine = replace(mine, quantity="shutter", unit="s", of="", cue="")
    elif mine is not None and mine.quantity != "shutter":
        mine = replace(mine, quantity="shutter", unit="s", of="") if _METERED.search(query.text[: mine.start]) and not any(c.isalpha() for c in mine.said) else None
    if mine is None or mine.of or len(times) != 1 or times[0].of != "ambient" or not any(f.quantity in ("exponent", "sheet_row") for f in scene.facts):
        return query, scene
    return replace(query, facts=(replace(mine, quantity=times[0].quantity, of="ambient"),), unplaced=()), scene


_ANOTHER_ONE = Pattern(r"^\W*(?:(?:and|or|so|now|ok|okay|then|what about|how about|what if(?: it'?s| it says| it is)?|if it'?s|if it says|make it|say|for|with)\b\W*)*(?:an? )?[\w.]+(?: (?:instead|then|now))?\W*$", re.I)
_BESIDE_A_TIME = frozenset({"shutter", "time", "exponent", "sheet_row", "remark", "film_speed"})


def _only_a_time(mine: Fact, told: Fact, query: Query, scene: Scene) -> bool:
    """"what about 30" after a metered ten seconds: seconds too, where nothing else is told that it could be."""
    speeds = any(f.quantity == "film_speed" for f in scene.facts)
    a_film = is_film_speed_mark(mine.value) and mine.value >= _SLOW_FILM and (speeds or mine.value > _MUCH_LONGER * told.value)
    alone = {f.quantity for f in scene.facts} <= _BESIDE_A_TIME and told.value >= 1 and not a_film
    return alone and mine.value >= (_LONGEST_EXPONENT if any(f.quantity == "exponent" for f in scene.facts) else 1) and _ANOTHER_ONE.match(query.text) is not None


_SLOW_FILM, _MUCH_LONGER = 25, 12
_LONGEST_EXPONENT = 2
"""No film's exponent is as much."""


_READ = ("shutter", "aperture")


def reading_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"now it's 1/15, same stop" after "f/8 at 1/60: what EV is that?": the reading anew, and no setting of the camera beside it."""
    if query.asks or not scene.asks or scene.asks[0].quantity != "exposure_value":
        return query, scene
    read = [f.quantity for f in scene.facts if f.quantity in _READ and f.of == "ambient"]
    if "shutter" in read and not query.has("shutter") and not any(f.quantity in ("power", "guide_number") for f in scene.facts):
        query = replace(query, facts=tuple(replace(f, quantity="shutter", unit="s") if f.quantity == "power" and f.said.strip().startswith("1/") and "power" not in f.said else f for f in query.facts))
    mine = [f for f in query.facts if f.quantity in _READ and not f.of and read.count(f.quantity) == 1]
    return replace(query, facts=tuple(replace(f, of="ambient") if f in mine else f for f in query.facts)) if mine else query, scene


_HOW_MANY_OF = Pattern(r"\bhow many(?= (?:would|will|is|are|do|does|did|should|at|for|with|from|if|then|now|on|in|by|when)\b|\W*$)", re.I)
_WAS_HOW_MANY = Pattern(r"\b(?:how many|number of)\b", re.I)


def many_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and how many at 18 feet?" after "how many stops …?": as many of the same, and no pops."""
    return (replace(query, asks=()), scene) if as_many(query, scene) else (query, scene)


def as_many(query: Query, scene: Scene) -> bool:
    """Whether "how many" is of what was counted before, which was no number of pops or frames."""
    if len(query.asks) != 1 or query.asks[0].quantity != "count" or not scene.asks or scene.asks[0].quantity == "count":
        return False
    return _HOW_MANY_OF.search(query.text) is not None and _WAS_HOW_MANY.search(scene.text) is not None


_ROWS = ("front", "middle", "back")
_ROW_AT = Pattern(r"^\W*(?:(?:and|ok|okay|so|then|what about|how about|for|at|on) )*(?:the )?(?:[\w.]+(?: and a half)?[ -]?(?:feet|foot|ft|metres?|meters?|m) (?:row|one|rank|tier|lot)|(?:row|one|rank|tier|lot) at [\w.]+(?: and a half)? ?(?:feet|foot|ft|metres?|meters?|m))(?: then)?\W*$", re.I)
"""Another row, named by how far off it is: "and the 5 metre row?"."""


def row_by_place(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"how much darker than the middle row is the one at 13 feet?", where the back row stands there: no new place of the middle row."""
    places = {f.of: f.value for f in scene.facts if f.quantity == "distance" and f.of in _ROWS}
    named = [f for f in query.facts if f.quantity == "distance" and f.of in _ROWS and not math.isclose(places.get(f.of, f.value), f.value) and any(math.isclose(value, f.value) for value in places.values())]
    asked = _ROW_AT.match(query.text)
    alone = query.facts[0] if asked is not None and len(query.facts) == 1 and query.facts[0].quantity == "distance" and not query.asks else None
    there = [of for of, value in places.items() if alone is not None and math.isclose(value, alone.value)]
    if len(places) > 1 and len(there) == 1:
        return replace(query, facts=(), text=patterns.at_hand(f"and the {there[0]} row?"), cues=query.cues | {there[0]}, unplaced=()), scene
    if len(places) < 2 or not named or len([f for f in query.facts if f.quantity == "distance"]) != 1:
        return query, scene
    return replace(query, facts=tuple(replace(f, quantity="number", of="") if f in named else f for f in query.facts)), scene
