"""Depth close up, by the scale of reproduction alone, and the f-number for a depth that is wanted."""

from __future__ import annotations

from assistant.physics import optics
from assistant.query import Query
from assistant.solving import lensless, marks
from assistant.solving.focus import setting
from assistant.solving.frames import frame_of
from assistant.solving.sharp_limits import length
from assistant.solving.solution import Solution, needs

SMALLEST_SCALE = 0.05
"""Below it the lens counts as well, and the far limit may be infinity."""


def solve(query: Query) -> Solution | None:
    """"Half life size, f/22: total depth", "1:4, 80 mm deep: which f-stop"; None where the lens and the focus are told."""
    scale = query.last("magnification")
    if (found := lensless.solve(query)) is not None:
        return found
    if scale is None and query.has("depth_wanted", "focal_length") and not query.has("guide_number") and query.asks_for("aperture"):
        return _stop_at(query)
    if scale is None or scale.value < SMALLEST_SCALE or query.has("guide_number"):
        return None
    wanted = query.last("depth_wanted")
    if query.asks_for("aperture") and wanted is not None and not query.has("aperture"):
        return _stop_for(query, scale.value, wanted.value)
    if not query.asks_for("depth_of_field") or query.has("focal_length") and query.has("focus_distance"):
        return None
    stop, frame = query.last("aperture"), frame_of(query)
    if stop is None:
        return needs(("aperture",), "I need the aperture.", (scale,), "focus")
    depth = optics.depth_at_magnification(stop.value, scale.value, frame.circle)
    unit = next((a.unit for a in query.asks if a.unit), "") or ("in" if "in" in query.units else "mm")
    parts = {"behind": depth / 2, "in front": depth / 2}
    ask = next(a for a in query.asks if a.quantity == "depth_of_field")
    return Solution(answers=(length("depth_of_field", parts.get(ask.of, depth), unit, ask.of or None),), used=(scale, stop, *frame.used), assumed=frame.assumed, topic="focus",
                    notes=("Close up it lies half before the focus and half behind it, whatever the lens.",), working=("2 × f-number × circle of confusion × (1 + magnification) over the magnification squared",))


def _stop_at(query: Query) -> Solution:
    """"With an 85 at 3 m, which stop gives 60 cm of depth": by the lens and where it is focused."""
    state, wanted = setting(query), query.all("depth_wanted")[-1]
    if state.focal is None or state.focus is None or state.focus <= state.focal:
        return needs(("focus_distance",), "I need the distance it is focused at.", (*state.used, wanted), "focus")
    value = optics.aperture_for_depth_at(state.focal, state.focus, wanted.value, state.frame.circle)
    return Solution(answers=(marks.aperture(value),), used=(*state.used, wanted), assumed=state.assumed, topic="focus", notes=("Any smaller opening does as well.",))


def _stop_for(query: Query, scale: float, depth: float) -> Solution:
    """The ring's f-number for so much depth."""
    frame = frame_of(query)
    used = tuple(f for f in query.facts if f.quantity in ("magnification", "depth_wanted"))
    return Solution(answers=(marks.aperture(optics.aperture_for_depth(depth, scale, frame.circle)),), used=(*used, *frame.used), assumed=frame.assumed, topic="focus",
                    notes=("Any smaller opening does as well; that is the mark on the ring, and the film sees less light than it says.",), working=("depth × magnification squared over 2 × circle of confusion × (1 + magnification)",))
