"""The share of the light that is left at so many times the distance: one over the square."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution

_FRACTION = Pattern(r"\b(?:what|which|how large a|how big a|how much of a) (?:fraction|share|part|proportion|percentage|per ?cent|portion)\b|\bhow many per ?cent\b|\bhow much of (?:the|my|its) light\b|\bby what factor\b", re.I)


def asked(query: Query) -> bool:
    """Whether a share is asked, and not stops."""
    return _FRACTION.search(query.text) is not None


_ONE_TO_OTHER = Pattern(r"\b(?:reach\w*|gets?|arriv\w*|falls?|lands?|left|remains?|com\w+)\b|\bof that\b", re.I)


_BEFORE_A_WALL = Pattern(r"\b(?:before|in front of|ahead of) (?:the|a|my|her|his) (?:\w+ )?(?:wall|backdrop|background|curtain|cloth|canvas|screen|hedge)\b", re.I)
"""A length from somebody to what stands behind: no second place counted from the light."""


_TIMES_AS_STRONG = Pattern(r"\bhow many times\b[^?]{0,24}\b(?:as (?:strong|bright|much|intense)|brighter|stronger|more|the (?:light|brightness|strength))\b|\bby (?:what|which) factor\b[^?]{0,40}\b(?:stronger|brighter|more|raise|increase|turn up|gain|multiply)\w*\b|\b(?:what|which) factor (?:more|of (?:extra|more)) (?:light|power)\b", re.I)


def times_as_strong(query: Query, scene: Scene) -> Solution | None:
    """"at 4 feet how many times as strong as at 8 feet", "by what factor must I raise the power from 2 m to 3 m": the square of the farther over the nearer."""
    if scene.near is None or scene.far is None or not query.asks_for("factor", "count", "stops") or not _TIMES_AS_STRONG.search(query.text) or {f.quantity for f in query.facts} - {"distance", "remark", "place", "rows"}:
        return None
    near, far = sorted((scene.near, scene.far))
    times = (far / near) ** 2
    return Solution(answers=(Quantity("factor", times, "x"), marks.stops(-falloff_stops(near, far))), used=scene.used, topic="falloff", lead=f"{times:.3g} times.", working=(f"({far:.4g} / {near:.4g}) squared",))


def between(query: Query, scene: Scene) -> Solution | None:
    """"what share of the light on the front row at 6 feet gets to the back at 9": the square of the nearer over the farther."""
    if scene.near is None or scene.far is None or not asked(query) or not _ONE_TO_OTHER.search(query.text) or _BEFORE_A_WALL.search(query.text) or any(query.has(q) for q in ("stops", "guide_number", "aperture", "power", "loss")):
        return None
    near, far = sorted((scene.near, scene.far))
    part = (near / far) ** 2
    return Solution(answers=(Quantity("factor", part, "x"), marks.stops(falloff_stops(near, far))), used=scene.used, topic="falloff", lead=f"{part:.3g} of the light.", working=(f"({near:.4g} / {far:.4g}) squared",))


def left(query: Query, times: float) -> Solution:
    """The share at `times` the distance (more than 0), and the same in stops; the inverse square law."""
    part = 1 / times**2
    lead = f"{part:.3g} of the light, one part in {times**2:g}." if times > 1 else f"{part:g} times the light."
    return Solution(answers=(Quantity("factor", part, "x"), marks.stops(falloff_stops(1.0, times))), used=tuple(query.all("times")), topic="falloff", lead=lead, working=(f"1 / {times:g} squared",))


_RATIO_OF_LIGHT = Pattern(r"\bratio (?:of|between) (?:the )?(?:(?:light|brightness|illumination|intensit\w+|illuminances?)\b(?! ratio)|(?:amounts?|quantit\w+) of light\b)|\b(?:light|brightness|illumination|intensity)\b[^.?!]{0,60}\bin (?:what|which) ratio\b", re.I)
_OF_TWO_LIGHTS = Pattern(r"\b(?:key|fill|main|lighting ratio|second (?:light|lamp|flash)|two (?:lights|lamps|heads|flashes)|other (?:light|lamp|flash))\b", re.I)


def ratio_of_places(query: Query) -> Solution | None:
    """"the ratio of the light at 4.5 feet from the lamp to that at 7.5 feet": the square of the farther over the nearer, with no fill in it."""
    away = [f for f in query.all("distance") if not f.of or f.of in ("front", "back", "backdrop")]
    if len(away) != 2 or {f.quantity for f in query.facts} - {"distance", "remark", "place", "rows"} or not _RATIO_OF_LIGHT.search(query.text) or _OF_TWO_LIGHTS.search(query.text):
        return None
    near, far = sorted(f.value for f in away)
    if near <= 0:
        return None
    stops = falloff_stops(near, far)
    return Solution(answers=(marks.ratio(2.0**-stops), marks.stops(stops)), used=tuple(away), topic="relations", notes=("Of the one place's light to the other's, from one lamp: it falls with the square of the distance.",))
