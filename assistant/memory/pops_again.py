"""So many pops after it was asked how many: "and one pop only, what aperture?" goes by what a pop reads, not by what was wanted."""

from __future__ import annotations

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.query import Query
from assistant.records import replace
from assistant.solving.pop_facts import POP_WORDS


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
