"""So many pops after it was asked how many: "and one pop only, what aperture?" goes by what a pop reads, not by what was wanted."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace
from assistant.solving.pop_facts import POP_WORDS

_OF_THE_POP = Pattern(r"\b(?:pop|flash|it)(?:'s| is| was) (?:only )?(?:right|good|correct|fine)\b|\b(?:right|good|correct) (?:at|from) [\d.]+", re.I)
"""Said of where one pop is right."""


def pops_told(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The number of pops told, and of the two f-numbers that of a pop alone; the scene as it was where either is not plain."""
    told = [f for f in query.facts if f.quantity != "remark"]
    last = talk.last_query
    if len(told) != 1 or told[0].quantity not in ("count", "max_count") or told[0].unit not in POP_WORDS or told[0].value < 1 or not query.asks_for("aperture") or last is None or not last.asks_for("count"):
        return query, scene
    two = [f for f in scene.facts if f.quantity == "aperture"]
    counts = [f for f in scene.facts if f.quantity == "count"]
    if len(two) != 2 or any(f.value != 1 for f in counts) or {f.quantity for f in scene.facts} - {"aperture", "count", "power", "remark", "place"}:
        return query, scene
    from assistant.solving.pops import wanted

    there = last.all("aperture")
    if len(there) != 2:
        return query, scene
    target = wanted(last, there)
    left = tuple(f for f in scene.facts if f not in counts and (f.quantity != "aperture" or f.value != target.value))
    return replace(query, facts=tuple(replace(f, quantity="count", unit="pops") if f is told[0] else f for f in query.facts)), replace(scene, facts=left)


def reach_told(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and from 9 m?", after "one pop is right at 3 m; I can only get within 6 m, how many?": as near as one gets now, and no other place of the pop."""
    told = [f for f in query.facts if f.quantity != "remark" and not (f.quantity == "count" and f.value == 1)]
    near = [f for f in scene.facts if f.quantity == "max_distance" and f.origin != "kit"]
    placed = [f for f in scene.facts if f.quantity == "distance" and not f.of]
    if len(told) != 1 or told[0].quantity not in ("distance", "max_distance") or told[0].of or told[0].bad or not scene.asks or scene.asks[0].quantity != "count" or len(placed) + len(near) != 2 or not placed:
        return query, scene
    if query.asks and not query.asks_for("count") or any(f.quantity == "guide_number" for f in scene.facts):
        return query, scene
    of_the_pop = _OF_THE_POP.search(query.text) is not None
    if not of_the_pop and not near and told[0].quantity == "distance":
        return query, scene
    new = replace(told[0], quantity="distance", cue="")
    other = replace((near or placed)[-1] if of_the_pop else placed[0], quantity="distance", origin="kept", cue="")
    both = (new, other) if of_the_pop else (other, new)
    return replace(query, facts=(*both, *(f for f in query.facts if f.quantity == "count"))), replace(scene, facts=tuple(f for f in scene.facts if f not in placed and f not in near))


_SO_MANY_OF_THEM = Pattern(r"^(?P<said>\W*(?:(?:okay|ok|and|or|so|then|now|what about|how about|for|with|make it|say)\b\W*)*(?:\d{1,3}|[a-z]+)) of them(?=\W*$)", re.I)


def so_many_of_them(text: str, talk: Conversation) -> str:
    """"and ten of them?" after a question of pops: so many of those."""
    counted = any(f.quantity == "count" and f.unit == "pops" for f in talk.scene.facts)
    return _SO_MANY_OF_THEM.sub(r"\g<said>", text) if counted else text
