"""Bounced flash: the length of the light's path, and what the surface swallows.

The path counts by the inverse square law; the paint is a loss of its own. The two are told
apart in the reply, since counting one of them twice is the usual mistake.
"""

from __future__ import annotations

import math
import re

from assistant import scales
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.lights import TYPICAL_LOSS, preferred_unit
from assistant.solving.solution import Solution, needs
from assistant.units import speak_length

_HELD = 1.5
"""Metres above the floor of a flash and a face, where a ceiling's height is all that is said (common practice)."""


def mirror_path(across: float, rise_one: float, rise_two: float) -> float:
    """Metres from flash to ceiling to subject, the ceiling taken as a mirror for the direction.

    `across`: metres between flash and subject; the rises: metres from each up to the ceiling.

    >>> mirror_path(3, 2, 2)
    5.0
    """
    return math.hypot(across, rise_one + rise_two)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with its path and its surface's loss made plain, facts used, what to say."""
    legs = [f for f in query.facts if f.quantity == "path"]
    if _asks_the_way(query):
        return None  # a length, and no paint in it
    if query.asks_for("stops", "factor") and (against := _way_against_direct(query)) is not None:
        return against
    if legs and query.has("guide_number") and query.has("aperture") and query.asks_for("stops", "factor") and not query.has("loss") and not query.has("stops"):
        return None  # what the paint takes is asked
    used: tuple[Fact, ...] = ()
    heights: tuple[str, ...] = ()
    facts = list(query.facts)
    if not legs:
        made = _from_heights(query)
        if made is None:
            return _all_in(query)
        path, used, held = made
        facts = [f for f in facts if f not in used] + [path]
        legs = [path]
        heights = ("Flash and face were taken to be 5 ft (1.5 m) above the floor.",) if held else ()
    parts = _summed(legs, facts)
    used, facts = (*used, *parts), [f for f in facts if f not in parts]
    surface = "wall" if "wall" in query.cues and "ceiling" not in query.cues else "ceiling"
    facts, notes = _with_loss(query, facts, surface)
    total = sum(f.value for f in legs)
    unit = preferred_unit(query)
    shown = speak_length(total, unit if unit in ("ft", "m", "cm", "in", "yd") else "ft")
    loss = next((f.value for f in facts if f.quantity == "loss" and f.unit in (surface, "")), 0.0)
    loss = loss or next((TYPICAL_LOSS[surface][1] for f in facts if f.quantity == "modifier" and f.unit == surface), 0.0)
    said = f"The light's path is {shown} by way of the {surface}; that is counted by distance. The paint takes {scales.speak_stops(loss)} more." if loss else f"The light's path is {shown}; nothing was taken off for the paint."
    return query.with_facts(facts), used, (said, *heights, *notes)


def _summed(legs: list[Fact], facts: list[Fact]) -> tuple[Fact, ...]:
    """"2 m up to the corner and 2.5 m down, so 4.5 m of path": the two ways that the told sum is made of."""
    parts = tuple(f for f in facts if f.quantity == "ceiling_above" or f.quantity == "distance" and f.of == "leg")
    whole = len(legs) == 1 and legs[0].cue == "total" and len(parts) == 2
    return parts if whole and math.isclose(sum(f.value for f in parts), legs[0].value, rel_tol=0.02) else ()


def _way_against_direct(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The way that the heights make beside the direct one, which stays: it is what the way is held against."""
    if query.has("path") or query.has("guide_number") or query.has("aperture") or (made := _from_heights(query)) is None:
        return None
    path, used, held = made
    across = query.last("distance")
    kept = [f for f in query.facts if f not in used or f is across]
    return query.with_facts([*kept, path]), used, ("Flash and face were taken to be 5 ft (1.5 m) above the floor.",) if held else ()


def _asks_the_way(query: Query) -> bool:
    return any(a.quantity == "distance" and a.of == "path" for a in query.asks)


def solve(query: Query) -> Solution | None:
    """How long the light's way by the ceiling is: both legs, or what the heights of the room make of it."""
    if not _asks_the_way(query):
        return _against_direct(query)
    legs = query.all("path")
    if len(legs) == 1 and not legs[0].cue and query.text:
        return needs(("distance",), "I need both legs of the light's way, up to the ceiling and down again.", tuple(legs), "bounce")
    made = None if legs else _from_heights(query)
    if not legs and made is None:
        return needs(("distance",), "I need the height of the ceiling above flash and face, and how far apart they are.", tuple(query.all("distance")), "bounce")
    used, held = (tuple(legs), False) if made is None else made[1:]
    total = sum(f.value for f in legs) if made is None else made[0].value
    notes = ("Flash and face were taken to be 5 ft (1.5 m) above the floor.",) if held else ()
    asked = next((a.unit for a in query.asks if a.unit), "")
    unit = preferred_unit(query, asked)
    return Solution(answers=(marks.distance(total, unit),), used=used, topic="bounce", lead=f"The light's path is {speak_length(total, unit)}.", notes=(*notes, "The loss in the paint comes on top of the path."))


_THAN_DIRECT = Pattern(r"\b(?:direct\w*|straight|longer|bouncing|by way of|than)\b", re.I)


def _against_direct(query: Query) -> Solution | None:
    """"how many stops do I lose by bouncing": the longer way, and the paint where it is told."""
    paths, across = query.all("path"), query.all("distance")
    asked = query.asks[0].quantity if len(query.asks) == 1 else ""
    read, lost = query.all("aperture"), [f for f in query.facts if f.quantity == "loss"]
    if asked not in ("stops", "factor", "aperture") or query.claim or len(across) != 1 or not paths or not _THAN_DIRECT.search(query.text):
        return None
    if any(query.has(q) for q in ("guide_number", "power", "film_speed", "stops")) or len(read) != (asked == "aperture") or read and not lost or any(f.origin != "said" for f in across):
        return None
    longer = 2 * math.log2(sum(f.value for f in paths) / across[0].value)
    if longer < 0:
        return None
    total, paint = longer + sum(f.value for f in lost), sum(f.value for f in lost)
    used = (*paths, *across, *lost, *read)
    note = f"The longer way takes {scales.speak_stops(longer)}" + (f", the paint {scales.speak_stops(paint)}." if lost else "; the paint comes on top.")
    if read:
        return Solution(answers=(marks.aperture(read[0].value * 2.0 ** (-total / 2)),), used=used, topic="bounce", notes=(note,))
    stops, factor = marks.stops(-total), marks.factor(total)
    lead = "" if asked == "factor" else f"{scales.speak_stops(total)[:1].upper()}{scales.speak_stops(total)[1:]} less light ({-total:+.2f})."
    return Solution(answers=(factor, stops) if asked == "factor" else (stops, factor), used=used, topic="bounce", lead=lead, notes=(note,))


def _with_loss(query: Query, facts: list[Fact], surface: str) -> tuple[list[Fact], tuple[str, ...]]:
    told = [f for f in facts if f.quantity == "loss" and f.unit in ("ceiling", "wall", "card", "")]
    told += [f for f in facts if f.quantity == "stops" and not f.cue]
    if told:
        return [replace(f, quantity="loss", unit=surface, value=abs(f.value)) if f is told[0] and f.quantity == "stops" else f for f in facts], ()
    if any(f.quantity == "loss" and f.value == 0 for f in facts) or "umbrella" in query.text.lower():
        return facts, ()
    low, typical, high = TYPICAL_LOSS[surface]
    return [*facts, Fact("modifier", 0.0, surface, origin="assumed")], (f"White paint takes {low:g} to {high:g} stops beyond the path, colour more; bracket a stop.",)


def _from_heights(query: Query) -> tuple[Fact, tuple[Fact, ...], bool] | None:
    across = query.last("distance")
    above, height = query.all("ceiling_above"), query.last("ceiling_height")
    if across is None or not (above or height) or height is not None and height.cue == "straight":
        return None
    flash, face = query.last("flash_height"), query.last("face_height")
    if above:
        one, two = above[0].value, above[-1].value
    else:
        assert height is not None
        held = flash.value if flash else _HELD
        one, two = height.value - held, height.value - (face.value if face else held)
    if one <= 0 or two <= 0:
        return None
    used = tuple(f for f in (across, *above, height, flash, face) if f)
    return replace(across, quantity="path", value=mirror_path(across.value, one, two), of=""), used, flash is None and not above


def _all_in(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """Bounced, with only a distance: the typical loss, and which distance it was taken for."""
    if "bounce" not in query.cues or not query.has("distance") or not query.has("guide_number"):
        return None
    surface = "wall" if "wall" in query.cues and "ceiling" not in query.cues else "ceiling"
    facts, notes = _with_loss(query, list(query.facts), surface)
    note = f"The distance was taken as the whole path of the light, flash to {surface} to subject; measure both legs if it was not."
    return query.with_facts(facts), (), (note, *notes)
