"""Where a background light stands: "background light: guide number 64 ft, 4 ft off the paper" has the paper lit by it, and nobody stands before it."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"gap"})
_LAMP = Pattern(r"\b(?:background|backdrop|bg) (?:light|lamp|flash|head|strobe)\b")
_SOMEBODY = Pattern(r"\b(?:she|he|her|him|they|them|we|subject|sitter|model|bride|groom|couple|group|dancer|client|key|main|fill|hair|rim|stands?|sits?|behind|in front)\b")
_LENGTHS = frozenset({"distance", "path", "gap", "move", "camera_distance", "subject_height", "max_distance"})


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the one length before the cloth as that of the lamp, where nothing but that lamp is told of."""
    lengths = [f for f in facts if f.quantity in _LENGTHS]
    guides = [f for f in facts if f.quantity == "guide_number"]
    said = text.lower()
    if len(lengths) != 1 or len(guides) != 1 or lengths[0].of != "backdrop" or not _LAMP.search(said) or _SOMEBODY.search(said):
        return facts
    return [replace(f, quantity="distance", of=guides[0].of, cue="") if f is lengths[0] else f for f in facts]
