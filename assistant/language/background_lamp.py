"""Where a background light stands: "background light: guide number 64 ft, 4 ft off the paper" has the paper lit by it, and nobody stands before it."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"gap"})
_LAMP = Pattern(r"\b(?:background|backdrop|bg) (?:light|lamp|flash|head|strobe)\b")
_CLOTH = r"(?:(?:white|grey|gray|black|plain|painted|seamless) )*(?:paper|backdrop|background|seamless|cloth|canvas|cyc)"
_LIGHTS_ON_IT = Pattern(rf"\b(?:lights?|heads?|flash(?:es)?|lamps?) (?:(?:aimed|pointed|shining|fired|set) )?(?:on|at|onto) (?:the |my |a )?{_CLOTH} (?:(?:then|now|together|both) )*(?:meter|read|give|show)s?(?: about| exactly)? $|\b(?:background|backdrop|bg) (?:lights?|lamps?|flash(?:es)?|heads?) (?:(?:then|now|together|both) )*(?:meter|read|give|show)s?(?: about| exactly)? $", re.I)
"""Right before what the lamps of the cloth read: "two lights on the white paper meter f/16"."""
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


READ = frozenset({"aperture"})


def read_on_it(facts: list[Fact], text: str) -> list[Fact]:
    """"two lights on the white paper meter f/16": what the background's lamps read, both of them together."""
    read = [f for f in facts if f.quantity == "aperture" and _LIGHTS_ON_IT.search(text[: f.start])]
    if len(read) != 1:
        return facts
    opens = _LIGHTS_ON_IT.search(text[: read[0].start])
    heads = [f for f in facts if f.quantity == "count" and opens is not None and f.end > opens.start() > f.start]
    return [replace(f, of="background") if f is read[0] else replace(f, quantity="remark", of="") if f in heads else f for f in facts]
