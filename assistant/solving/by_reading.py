"""Where along its beam a light gives each of several readings: the f-number goes as one over the distance (inverse square law)."""

from __future__ import annotations

from assistant.query import Ask, Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution
from assistant.units import speak_length

_BELONGS = frozenset({"distance", "aperture", "remark", "place", "modifier", "film_speed", "count"})


def solve(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"f/8 at 3 m: where is it f/5.6, and where f/11": a place for each, in the order said; None unless one place and its reading come first."""
    places, read = query.all("distance"), query.all("aperture")
    if len(places) != 1 or len(read) < 3 or places[0].of or any(f.of for f in read) or {f.quantity for f in query.facts} - _BELONGS or any(f.value > 1 for f in query.all("count")):
        return None
    here, known = places[0], read[0]
    between = query.text[min(here.end, known.end) : max(here.start, known.start)]
    if here.start > read[1].start or any(mark in between for mark in ".?;") or len({f.value for f in read}) < len(read):
        return None
    unit = preferred_unit(query, ask.unit)
    there = [(f, here.value * known.value / f.value) for f in read[1:]]
    lead = "; ".join(f"f/{f.value:g} at {speak_length(place, unit)}" for f, place in there)
    return Solution(answers=tuple(marks.distance(place, unit, f"f/{f.value:g}") for f, place in there), used=(here, *read, *query.all("count")), topic="falloff", lead=f"{lead}.")
