"""Film formats: which one is meant, its circle of confusion and its sides."""

from __future__ import annotations

import math

from assistant.answer import Assumed
from assistant.physics.optics import CIRCLE_OF_CONFUSION, FRAME
from assistant.query import Fact, Query
from assistant.records import record

_NAMES = {"24x36": "35 mm", "36x24": "35 mm", "35 mm": "35 mm", "6x8": "6x7", "18x24": "half frame", "5x4": "4x5", "7x5": "5x7", "10x8": "8x10"}
_CUES = (("half_frame", "half frame"), ("full_frame", "35 mm"), ("medium_format", "6x6"), ("large_format", "4x5"))
_LOOSE = frozenset({"medium_format", "large_format"})


@record
class Frame:
    """A film format: name, circle of confusion in metres, sides in metres, what it was taken from."""

    name: str
    circle: float
    sides: tuple[float, float]
    used: tuple[Fact, ...] = ()
    assumed: tuple[Assumed, ...] = ()

    @property
    def diagonal(self) -> float:
        """Corner to corner in metres."""
        return math.hypot(*self.sides)


def frame_of(query: Query) -> Frame:
    """The film format of a question; 35 mm, said as assumed, where none was named."""
    said = query.last("format")
    circle = query.last("circle")
    name, why = _named(query, said)
    used = tuple(f for f in (said, circle) if f)
    assumed: tuple[Assumed, ...] = ()
    if why and circle is None:
        assumed = (Assumed("format", name, "", f"{why}; circle of confusion {CIRCLE_OF_CONFUSION[name] * 1000:.3f} mm"),)
    elif circle is None:
        assumed = (Assumed("circle_of_confusion", round(CIRCLE_OF_CONFUSION[name] * 1000, 4), "mm", f"usual for {name} film"),)
    return Frame(name, circle.value if circle else CIRCLE_OF_CONFUSION[name], FRAME[name], used, assumed)


def _named(query: Query, said: Fact | None) -> tuple[str, str]:
    """The format's name, and why where it had to be taken."""
    if said is not None:
        name = _NAMES.get(said.unit, said.unit)
        if name in CIRCLE_OF_CONFUSION:
            return name, ""
    for cue, name in _CUES:
        if cue in query.cues:
            return name, f"{cue.replace('_', ' ')} taken as {name}" if cue in _LOOSE else ""
    return "35 mm", "no film format was given"
