"""The f-number for one limit of what is sharp, and lengths too near for a lens to focus at."""

from __future__ import annotations

from collections.abc import Callable

from assistant.physics import optics


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
