"""Which of two settings of one lens keeps more sharp, where f-number and distance both differ: "f/4 at 6 feet or f/11 at 4 feet, which is deeper?"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.frames import frame_of
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import LENGTH

_DEPTH = Pattern(r"\b(?:depth(?: of (?:field|focus))?|d\.?o\.?f|in focus|deeper|shallower)\b")
_LESS = Pattern(r"\b(?:less|least|shallow\w*|thin\w*|smaller)\b")
_MORE = Pattern(r"\b(?:more|most|deep\w*|greater|greatest|larger|bigger)\b")
_CUT = Pattern(r"\bor\b|\bversus\b|\bvs\b")
_PLACES = frozenset({"distance", "camera_distance", "focus_distance", "sharp_limit"})
_BESIDE = frozenset({"remark", "place", "format", "circle"})
_LENSES = (0.028, 0.05, 0.1)
"""Focal lengths that are tried where none is told: all of them must agree."""


def deeper_of_two(query: Query, said: str) -> Solution | None:
    """The f-number and the place that keep more sharp, or less where that is asked; None where it is not of two such settings."""
    facts = [f for f in query.facts if f.quantity not in _BESIDE and not f.bad]
    if not _DEPTH.search(said) or (_MORE.search(said) is None) is (_LESS.search(said) is None):
        return None
    lens = [f for f in facts if f.quantity == "focal_length"]
    settings = [f for f in facts if f.quantity in ("aperture", *_PLACES)]
    if len(settings) != 4 or len(lens) > 1 or len(settings) + len(lens) != len(facts):
        return None
    cut = next((m.start() for m in _CUT.finditer(said) if sum(f.end <= m.start() for f in settings) == 2), None)
    if cut is None:
        return None
    sides = [[f for f in settings if (f.start < cut) is first] for first in (True, False)]
    if any(sorted(f.quantity == "aperture" for f in side) != [False, True] for side in sides):
        return None
    ways = {_first_is_deeper(query, sides, focal) for focal in ([lens[0].value] if lens else _LENSES)}
    if len(ways) != 1 or None in ways:
        return None
    wins = sides[0] if ways.pop() is (_MORE.search(said) is not None) else sides[1]
    return _said(query, wins, _MORE.search(said) is not None)


def _first_is_deeper(query: Query, sides: Sequence[Sequence[Fact]], focal: float) -> bool | None:
    circle = frame_of(query).circle
    depths = []
    for side in sides:
        stop, place = sorted(side, key=lambda f: f.quantity != "aperture")
        if place.value <= 2 * focal or stop.value <= 0:
            return None
        depths.append(optics.depth_of_field(focal, stop.value, place.value, circle))
    return None if depths[0] == depths[1] else depths[0] > depths[1]


def _said(query: Query, wins: Sequence[Fact], more: bool) -> Solution:
    stop, place = sorted(wins, key=lambda f: f.quantity != "aperture")
    unit = place.unit if place.unit in LENGTH else preferred_unit(query, "")
    answers: tuple[Quantity, ...] = (marks.aperture(stop.value), marks.distance(place.value, unit))
    return Solution(answers=answers, used=query.facts, topic="which_of_two", lead=f"f/{stop.value:g} at {place.said.strip()}: {'more' if more else 'less'} depth of field.",
                    notes=("A larger f-number and a greater distance give more depth of field; both are reckoned here.",))
