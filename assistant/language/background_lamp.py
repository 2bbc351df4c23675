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


_OF_THE_CLOTH = Pattern(rf"\b{_CLOTH} (?:(?:has|gets|with|is|comes with|lit|by|from|having|its own|their own|separate|a|an|the|set|my) ?)*$", re.I)
_AIMED_AT = Pattern(rf"(?: (?:of its own|of their own|aimed|pointed|set|shining|lighting))*(?: (?:on|at|onto|for) (?:the |my |a )?{_CLOTH}| lighting (?:the |my |a )?{_CLOTH})\b", re.I)
HEADS = frozenset({"count"})


def heads_on_it(facts: list[Fact], text: str) -> list[Fact]:
    """"the white backdrop has its own pair of lights, and is to read two stops over the portrait": how many they are is no matter, where only what they read is told of."""
    heads = [f for f in facts if f.quantity == "count" and f.unit in ("flashes", "heads") and (_OF_THE_CLOTH.search(text[max(0, f.start - 60) : f.start]) or _AIMED_AT.match(text, f.end))]
    if len(heads) != 1 or {f.quantity for f in facts} - {"count", "aperture", "relation", "stops", "film_speed", "remark", "shutter"} or sum(f.quantity == "aperture" for f in facts) != 1 or not any(f.quantity in ("relation", "stops") for f in facts):
        return facts
    return [replace(f, quantity="remark", of="") if f is heads[0] else f for f in facts]
