"""What cannot be got nearer or farther stands there: "I can only get it to 1.8 m"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace

_ONLY_SO_FAR = Pattern(
    r"\b(?:(?:can|could|will) only (?:get|put|move|place|bring|have|stand|go|come)|only (?:gets?|goes|comes?|reach(?:es)?)|(?:can't|cannot|can not|couldn't|won't) (?:get|put|move|place|bring|have|go|come|stand)\b[^.?!\d]{0,30}\b(?:nearer|closer|further|farther)"
    r"|as (?:near|close|far)(?: back| away| off)? as (?:i|it|we|she|he|they) (?:can|could|will|gets?|goes)|(?:is|be) (?:the|as) (?:nearest|closest|furthest|farthest|near|close|far))\b", re.I)
_LIMIT = ("max_distance", "min_distance", "distance")


def only_so_far(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The distance that stands, changed for the one that can be reached, where it was not itself asked for."""
    placed = [f for f in scene.facts if f.quantity == "distance"]
    told = [f for f in query.facts if f.quantity in _LIMIT and not f.bad]
    if len(placed) != 1 or len(told) != 1 or len(query.facts) != 1 or query.asks and query.asks[0].quantity == "distance" or not scene.asks or scene.asks[0].quantity == "distance" or not _ONLY_SO_FAR.search(query.text):
        return query, scene
    return replace(query, facts=(replace(told[0], quantity="distance", cue="", of=placed[0].of),)), scene


def sync_only(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and if I can only sync at 1/60?", after the aperture at 1/250: at 1/60, which is then the fastest there is."""
    told = [f for f in query.facts if f.quantity == "sync" and f.value > 0]
    times = [f for f in scene.facts if f.quantity == "shutter" and f.of != "ambient"]
    if len(told) != 1 or len(query.facts) != 1 or query.asks or len(times) != 1 or times[0].value >= told[0].value or not scene.asks or scene.asks[0].quantity == "shutter":
        return query, scene
    return replace(query, facts=(replace(told[0], quantity="shutter", unit=times[0].unit, of=times[0].of),)), scene
