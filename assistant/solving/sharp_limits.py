"""One limit of what is sharp and the f-number for it, the limits at the hyperfocal distance, and lengths too near for a lens to focus at."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Ask, Fact, Query
from assistant.solving.solution import Solution
from assistant.units import LENGTH, length_in

_AT_A_PART = Pattern(r"\bfocus\w*(?: (?:it|the (?:lens|ring)))? (?:at|on|to)(?: only| just)? (?:a |one )?$", re.I)
"""Before a part of the hyperfocal distance: "focused at half the hyperfocal distance"."""


def aperture_for(focal: float, focus: float, limit: float, circle: float) -> float:
    """The f-number that just holds a limit, nearer or farther than the focus; 0 where any does."""
    if limit == focus:
        return 0.0
    formula: Callable[[float, float, float, float], float] = optics.aperture_for_near_limit if limit < focus else optics.aperture_for_far_limit
    return formula(focal, focus, limit, circle)


def too_near(focal: float, lengths: tuple[float, ...]) -> str:
    """What is to be said of a length that the lens cannot focus at; nothing where all are far enough."""
    near = min(lengths)
    return f"A {focal * 1000:g} mm lens cannot focus at {near * 1000:g} mm: the focus must be farther off than one focal length." if near <= focal else ""


def length(quantity: str, metres: float, unit: str, of: str | None = None) -> Quantity:
    """A length in the person's unit, in metres where they paced it out; infinity stays infinity."""
    unit = unit if unit in LENGTH else "m"
    return Quantity(quantity, metres if math.isinf(metres) else length_in(metres, unit), unit, of)


def say(metres: float, unit: str) -> str:
    """A length in words, infinity by its name."""
    return "infinity" if math.isinf(metres) else f"{length_in(metres, unit):.3g} {unit}"


def hyperfocal_limits(query: Query, hyper: float, unit: str, asks: tuple[Ask, ...], known: tuple[Fact, ...]) -> Solution:
    """The limits of a lens focused at its hyperfocal distance, from half of it to infinity, or at a part of it: k of it reaches from k / (1 + k) to k / (1 - k) of it."""
    part = next((f for f in query.all("remark") if 0 < f.value <= 1 and _AT_A_PART.search(query.text[: f.start])), None)
    if part is not None:
        near, far = hyper * part.value / (1 + part.value), hyper * part.value / (1 - part.value) if part.value < 1 else math.inf
        there = {"near_limit": near, "far_limit": far, "depth_of_field": far - near, "hyperfocal": hyper}
        return Solution(answers=tuple(length(a.quantity, there[a.quantity], unit) for a in asks), used=(part, *known), topic="focus")
    focus = hyper
    values = {"near_limit": focus / 2, "far_limit": math.inf, "depth_of_field": math.inf, "hyperfocal": focus}
    wanted = sorted(asks, key=lambda a: a.quantity == "hyperfocal")  # which is told
    answers = tuple(length(a.quantity, values[a.quantity], unit) for a in wanted)
    return Solution(answers=answers, used=known, topic="focus", notes=(f"Focused at the hyperfocal distance all is sharp from half of it, {say(focus / 2, unit)}, to infinity.",))
