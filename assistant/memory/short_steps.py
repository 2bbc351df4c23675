"""Steps told with no more than their length: "a metre back" after a distance, "back another" after that, "to four?" after three flashes."""

from __future__ import annotations

import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_WALL = r"(?:wall|backdrop|background|paper|cloth|curtain)"
_WHO = rf"(?:(?:the |my |our |her |his )?(?:light|flash|lamp|key|fill|head|strobe|softbox|box|subject|sitter|model|bride|couple|group|she|he|they|it|i|we|everyone|everybody|{_WALL})(?:'s|'ve|'re| is| are| has| have)? )?"
_GOES = rf"(?P<goes>(?:steps?|stepp(?:ed|ing)|mov(?:es?|ed|ing)|walk(?:s|ed|ing)?|go(?:es|ing|ne)?|went|com(?:es?|ing)|came|shuffl(?:es?|ed|ing)|edg(?:es?|ed|ing)|slid(?:es?|ing)?|shift(?:s|ed|ing)?|pull(?:s|ed|ing)?|push(?:es|ed|ing)?|tak(?:es?|ing|en)|took|bring(?:s|ing)?|brought|carr(?:y|ies|ied)) (?:it |her |him |them |(?:the |my )(?:light|flash|lamp|key|head|strobe|softbox|{_WALL}) )?)?"
_BEFORE = Pattern(rf"^\W*(?:(?:and|then|now|ok|okay|so|but|or|what if|what about|how about|if|say|with) )*{_WHO}{_GOES}(?:(?:about|just|only|some|maybe|by) )*$", re.I)
_AFTER = Pattern(
    r"^ (?:(?P<more>further|farther|more) )?(?P<way>back|backwards?|out|away|in|inwards?|forwards?|closer|nearer)(?: (?:now|then|again|more|from (?:there|that|here)|(?:from|to) (?:the |my )?(?:light|flash|lamp|key|head|strobe|her|him|it|them|subject|sitter)))?"
    r"\W*(?:(?<=[,;.?!] )[^\d]{0,60})?$", re.I)
_NEARER = frozenset({"in", "inward", "inwards", "forward", "forwards", "closer", "nearer"})
_FURTHER = Pattern(r"\s*(?:further|farther)\b", re.I)
"""Told so from the first, it is told so again: "the wall 3 m further back", then "2 m further back"."""
_SHORT = 0.5
"""Of the distance that stands: what is no longer is a step, where no verb says so; "8 feet back" after 10 is a place."""


def step_told(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"a metre back", "half a metre in", "she steps two feet back", "the wall a metre further away": a step from the place that stands, and no place."""
    stands = [f for f in scene.facts if f.quantity == "distance" or f.quantity == "gap" and f.of == "backdrop" and not _FURTHER.match(scene.text, f.end)]
    placed = {f.of for f in stands}
    lengths = [f for f in query.facts if (f.quantity == "distance" or f.quantity == "gap" and f.of in placed) and not f.bad]
    if len(lengths) != 1 or not stands or any(f.quantity in ("move", "path", "camera_distance") for f in query.facts):
        return query, scene
    told = lengths[0]
    places = [f for f in stands if f.of == told.of or not told.of and f.quantity == "distance"]
    before, after = _BEFORE.match(query.text[: told.start]), _AFTER.match(query.text[told.end :])
    if before is None or after is None or len({f.of for f in places}) != 1:
        return query, scene
    if not (before["goes"] or after["more"]) and told.value > _SHORT * places[-1].value:
        return query, scene
    way = -1 if after["way"].lower() in _NEARER else 1
    if (old := places[-1]).quantity == "gap":
        return query.with_facts(as_told(old, old.value + way * told.value, told) if f is told else f for f in query.facts), scene
    return query.with_facts(replace(f, quantity="move", value=f.value * way, cue="") if f is told else f for f in query.facts), scene


_AS_BEFORE = Pattern(r"^\W*(?:(?:and|then|now|ok|so) )*(?:(?P<back>back|out|further(?: back)?|farther(?: back)?)|(?P<in>in|forward|closer|nearer)) (?:another(?: one)?|one more|the same again|as much again|once more|again)\W*$|^\W*(?:(?:and|then|now|ok|so) )*(?:another(?: one)?|one more|the same again|as much again|once more) (?:(?P<too>back|further(?: back)?|farther(?: back)?)|(?P<near>in|forward|closer|nearer))\W*$", re.I)


def step_as_before(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"back another", after "back a metre": a step as long as the one before, and no second flash."""
    last = next((f for f in reversed(scene.facts) if f.quantity == "last_move"), None)
    found = _AS_BEFORE.match(query.text) if last is not None and not query.facts and not query.asks else None
    if last is None or found is None:
        return query, scene
    size = abs(last.value) * (-1 if found["in"] or found["near"] else 1)
    return replace(query, facts=(Fact("move", size, said=query.text.strip(), end=len(query.text)),), cues=query.cues - {"another_length", "add_light"}, unplaced=()), scene


_FROM_ONE = Pattern(r"\bfrom (?:one|a single|1|just one|only one)\b", re.I)
_TO_SO_MANY = Pattern(r"^\W*(?:(?:and|or|what about|how about|then|now) )*(?:(?:from one|going|up) )?to (?:\w+|\d+)(?: (?:of them|flashes|heads|pops|lights|units))?\W*$", re.I)


def to_so_many(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"to four?", after "how many stops from one flash to three?"."""
    counts = [f for f in scene.facts if f.quantity == "count"]
    told = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if told is None or told.quantity != "number" or told.bad or told.value < 2 or told.value % 1 or len(counts) != 1 or not scene.asks or scene.asks[0].quantity not in ("stops", "factor"):
        return query, scene
    if not _FROM_ONE.search(scene.text) or not _TO_SO_MANY.match(query.text):
        return query, scene
    new = replace(counts[0], value=told.value, start=told.start, end=told.end, said=told.said, origin="said")
    return replace(query, facts=(new,), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not counts[0]))
