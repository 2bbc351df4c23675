"""What was read in one place, wanted for another once the guide number was asked: "so what stop at 14 feet?" after "f/8 at 10 feet, what's the guide number?"."""

from __future__ import annotations

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.query import Query
from assistant.records import replace

_READ = ("aperture", "distance")
_CONDITIONS = ("film_speed", "power")


def from_what_was_found(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The reading and its place stay beside the new one, and the conditions it was taken in beside new ones: the flash is the same."""
    if [a.quantity for a in scene.asks] != ["guide_number"] or len(query.asks) != 1 or query.asks[0].of or any(f.quantity == "guide_number" for f in (*scene.facts, *query.facts)):
        return query, scene
    asked = query.asks[0].quantity
    told = [f for f in query.facts if f.quantity in _READ and not f.bad]
    read = [f for f in scene.facts if f.quantity in _READ]
    if asked not in _READ or len(told) != 1 or told[0].quantity == asked or told[0].of or sorted(f.quantity for f in read) != sorted(_READ) or any(f.of for f in read):
        return query, scene
    if any(f.quantity not in (*_READ, *_CONDITIONS) for f in query.facts):
        return query, scene
    new = [f.quantity for f in query.facts if f.quantity in _CONDITIONS]
    before = [f for f in scene.facts if f.quantity in _CONDITIONS]
    if any([f.quantity for f in before].count(quantity) != 1 for quantity in new):
        return query, scene  # what it was read at is not told
    kept = [*read, *(f for f in before if f.quantity in new)]
    facts = (*(replace(f, origin="kept") for f in sorted(kept, key=lambda f: f.start)), *query.facts)
    gone = [*kept, *(f for f in before if f.quantity == "power")]  # the same power as before changes nothing
    return replace(query, facts=facts), replace(scene, facts=tuple(f for f in scene.facts if f not in gone))
