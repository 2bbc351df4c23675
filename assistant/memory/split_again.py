"""A pack that was shared by several heads, asked of again beside one head alone: "and how many stops dimmer is each than a single head taking all of it?"."""

from __future__ import annotations

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_THAN_ONE = Pattern(r"\b(?:than|below|under|beside|against|compared (?:with|to)) (?:with |by |from |using )?(?:just |only )?$")


def beside_one(query: Query, scene: Scene) -> list[Fact]:
    """The facts of a half-sentence that only name the one head that has the whole pack; none where it is not about such a split."""
    energies, heads = [f for f in scene.facts if f.quantity == "energy"], [f for f in scene.facts if f.quantity == "count" and f.value > 1]
    if len(energies) != 1 or len(heads) != 1 or [a.quantity for a in query.asks] != ["stops"] or "each" not in query.cues:
        return []
    lower = query.text.lower()
    alone = [f for f in query.facts if f.quantity == "count" and f.value == 1 and _THAN_ONE.search(lower[: f.start])]
    again = [f for f in query.facts if f.quantity in ("number", "energy") and f.value == energies[0].value]
    return [*alone, *again] if alone and len(alone) + len(again) == len(query.facts) else []


def split_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The question with the pack and the heads that stand."""
    named = beside_one(query, scene)
    return (replace(query, facts=(), unplaced=()), scene) if named else (query, scene)
