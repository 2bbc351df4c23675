"""Claims of the bellows factor: what a draw or a scale of reproduction multiplies the exposure by, against the factor that is said."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.optics import bellows_factor, bellows_factor_from_magnification
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_FACTOR = Pattern(r"\b(?:bellows|exposure|extension|close-?up)[- ]factor\b|\bfactor\b[^.?!]{0,40}\b(?:bellows|life[- ]?size|magnification|1:\d|extension|draw)\b|\b(?:bellows|life[- ]?size|magnification|1:\d|extension|draw)\b[^.?!]{0,40}\bfactor\b")
_CLOSE = 0.1
"""Stops by which a factor that is said may be off: 2.2 for 2.25 is near."""


def claim_of_bellows(query: Query) -> Solution | None:
    """"at 1:1 the bellows factor is four": one and the scale of reproduction, squared."""
    said = [f for f in query.facts if f.origin == "said"]
    claimed = [f for f in said if f.quantity in ("factor", "times", "number")]
    rest = [f for f in said if f not in claimed]
    right = _factor(rest)
    if right is None or len(claimed) != 1 or claimed[0].bad or claimed[0].value <= 0 or not _FACTOR.search(query.text.lower()):
        return None
    holds = abs(math.log2(claimed[0].value / right)) < _CLOSE
    lead = f"{'Yes' if holds else 'No'}. The factor is {right:.3g}, which is {speak_stops(math.log2(right))}."
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", right, "x"), marks.stops(math.log2(right))), used=query.facts, topic="claims", lead=lead)


def _factor(told: list[Fact]) -> float | None:
    """The factor of what is told, where that is a scale of reproduction, or a lens and its draw, and nothing else."""
    values = {f.quantity: f.value for f in told}
    if len(values) != len(told) or any(f.bad or not 0 < f.value < math.inf for f in told):
        return None
    if set(values) == {"magnification"}:
        return bellows_factor_from_magnification(values["magnification"])
    if set(values) == {"extension", "focal_length"}:
        return bellows_factor(values["extension"], values["focal_length"])
    return None
