"""A value of one of two, told with the name of the one that it is of: "say the wall meters f/4?", after "she meters f/11, the wall behind her f/5.6"."""

from __future__ import annotations

import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.set_ups import named_in
from assistant.solving.whose_figure import spoken_of

_OF_TWO = frozenset({"aperture", "distance", "power", "exposure_value", "shutter", "film_speed", "guide_number", "energy", "loss"})


def of_the_named(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The new value in the place of that of the two which stood by the same name; the other one stays."""
    told = [f for f in query.facts if f.quantity != "remark"]
    if len(told) != 1 or query.asks or told[0].quantity not in _OF_TWO or told[0].bad or told[0].origin != "said":
        return query, scene
    two = [f for f in scene.facts if f.quantity == told[0].quantity and f.of != "camera"]
    if len(two) != 2 or told[0].of and any(f.of == told[0].of for f in two) or not all(_stands(f, scene.text) for f in two):
        return query, scene
    two.sort(key=lambda f: f.start)
    words = spoken_of(scene.text, two[0], two[1])
    side = named_in((query.text[: told[0].start] + " " + query.text[told[0].end :]).lower(), words)
    if side < 0:
        return query, scene
    old = two[side]
    new = replace(as_told(old, told[0].value, told[0]), unit=told[0].unit or old.unit, other=told[0].other, start=old.start, end=old.end)
    both = tuple(new if f is old else replace(f, origin="kept") for f in scene.facts if f in two)
    return replace(query, facts=both, unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f not in two))


def _stands(fact: Fact, text: str) -> bool:
    """Whether a figure stands, or stood before it was told anew, in the words of the question."""
    there = text[fact.start : fact.end]
    return there == fact.said or re.search(r"\d", there) is not None and re.match(r"\w", text[fact.end : fact.end + 1]) is None
