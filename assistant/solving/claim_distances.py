"""A claim about two distances: whether it is as many stops between them as was said."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.falloff import two_lights
from assistant.solving.placing import scene_of
from assistant.solving.solution import Solution

_UNDER = Pattern(r"\b(?:(?:less|fewer|smaller) than|under|below|within|no more than|at most|up to|not (?:even|quite)|inside)(?: about)?\W*$")
_OVER = Pattern(r"\b(?:(?:more|greater|bigger) than|over|above|at least|beyond)(?: about)?\W*$")


def claim_of_distances(query: Query) -> Solution | None:
    """"8 feet to 5.6, is that a stop?": the stops claimed against those of two distances."""
    scene = scene_of(query)
    said = [f for f in query.facts if f.quantity in ("stops", "loss", "relation")]
    kinds = {f.quantity for f in query.facts} - {"distance", "gap", "length_range", "stops", "loss", "relation"}
    if not query.claim or scene is None or scene.near is None or scene.far is None or len(said) != 1 or kinds or two_lights(query):
        return None
    right = falloff_stops(scene.near, scene.far)
    size, want = abs(right), abs(said[0].value)
    words = query.text[: said[0].start].lower()
    holds = size < want + 0.005 if _UNDER.search(words) else size > want - 0.005 if _OVER.search(words) else abs(size - want) <= 0.17
    lead = f"{'Yes' if holds else 'No'}: it is {speak_stops(abs(right))} {'more' if right > 0 else 'less'} light ({right:+.2f})."
    return Solution(answers=(Quantity("claim", holds, ""), marks.stops(right)), used=(*scene.used, said[0]), lead=lead, topic="claims")
