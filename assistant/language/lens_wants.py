"""What is wanted of a lens, or measured on it: so much depth close up, a hyperfocal distance, the hole itself.

Each of them is a length beside the focal length, known by the very words around it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

_SMALL = ("mm", "cm", "in")
_LENGTHS = ("focal_length", "distance", "camera_distance", "focus_distance", "sharp_limit", "size", "object_size", "gap")
_NAMED = Pattern(r"lens|focal", re.I)
_DEEP_AFTER = Pattern(r"^[\s-]*(?:of (?:it |them )?(?:sharpness|sharp\b|depth|focus)|(?:deep|in depth|of depth)\b|(?:all |to be |must be |has to be |needs to be )?(?:sharp|in focus)\b|(?:from )?front to back\b|to be (?:held|kept) sharp)", re.I)
_DEEP_BEFORE = Pattern(r"\b(?:depth(?: of field| of focus)?(?: of| is| at least| must be| has to be| should be|:)|sharp over|deep by)\s*(?:about |at least |some )*$", re.I)
_DEPTH_IS = Pattern(r"\bdepth of (?:field|sharpness|focus)(?: (?:is|was|of|comes? to|came to|must be|should be|has to be|to be|at least|only|just|about|around|:))+\s*$", re.I)
_OF_DEPTH = Pattern(r"^[\s-]*(?:of (?:depth|sharpness|sharp\b|focus\b|depth of field)|depth of field\b|in depth\b)", re.I)
_END_TO_END = r"(?:in all|altogether|overall|in total|front to back|back to front|from (?:the |his |her |its )?[a-z]+ to (?:the |his |her |its )?[a-z]+)"
_SHARP_IN_ALL = Pattern(rf"^[\s-]*(?:to be |kept |are |is |be |stay |stays |must be )?(?:sharp|in focus|crisp),? {_END_TO_END}\b|^,? {_END_TO_END},? (?:(?:to be|must be|has to be|needs to be|should be|stays?|is|all) )*(?:sharp|in focus|crisp)\b", re.I)
"""After a depth that is to be had, and no place: "to have eight inches sharp in all", "20 cm from nose to ears sharp"."""
_HOLE_BEFORE = Pattern(r"\b(?:hole|iris|pupil|diaphragm|opening)\b[^.?!]{0,40}$", re.I)
_HOLE_AFTER = Pattern(r"^[\s-]*(?:mm |wide |round )?(?:hole|iris|pupil|diaphragm|opening)\b", re.I)
_HYPER_AFTER = Pattern(r"^\W*(?:away |off )?(?:to be|as|for|is|be|being|should be|must be)\s+(?:the|my|our|its)\s+hyper[- ]?focal\b", re.I)
_HYPER_BEFORE = Pattern(r"\bhyper[- ]?focal(?: distance| point)?\b[^.?!\d]{0,36}\b(?:at|to|of|is|be|on)\s*(?:about )?$", re.I)
_OF_THE_HYPERFOCAL = Pattern(r" (?:of )?(?:the|its|my|that) hyper[- ]?focal\b| of (?:it|that)\b", re.I)
_STOP_ASKED = Pattern(r"\bstop\b|\baperture\b|\bf[- /]?(?:stop|number|what)\b|\bopening\b|\bring\b", re.I)


def measured(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with a depth that is wanted close up and the width of the hole told apart."""
    kinds = {f.quantity for f in facts}
    out = list(facts)
    if "focal_length" in kinds and not kinds & {"magnification", "guide_number", "aperture"} and _STOP_ASKED.search(text):
        out = [replace(f, quantity="depth_wanted", of="", cue="", bad="") if f.quantity in _LENGTHS and f.unit and not _NAMED.search(f.said) and (_OF_DEPTH.match(text[f.end :]) or _SHARP_IN_ALL.match(text[f.end :]) or _DEPTH_IS.search(text[: f.start])) else f for f in out]
        if any(f.quantity == "depth_wanted" for f in out):
            out = [replace(f, quantity="focus_distance", of="camera") if f.quantity in ("sharp_limit", "distance") and not f.cue else f for f in out]
    if "magnification" in kinds and "guide_number" not in kinds:
        out = [replace(f, quantity="depth_wanted", of="", cue="", bad="") if _is_small(f) and (_DEEP_AFTER.match(text[f.end :]) or _DEEP_BEFORE.search(text[: f.start])) else f for f in out]
    if "hyperfocal" in text.lower():
        out = [replace(f, quantity="remark", of="", cue="") if f.quantity in ("power", "number", "share", "times") and _OF_THE_HYPERFOCAL.match(text, f.end) else f for f in out]
        out = [replace(f, quantity="focus_distance", of="camera", cue="") if f.quantity in ("distance", "camera_distance") and f.unit and _HYPER_BEFORE.search(text[: f.start]) else f for f in out]
    out = _pinhole(out, text)
    lens = next((f for f in out if f.quantity == "focal_length" and _NAMED.search(f.said)), None)
    if lens is not None and "aperture" not in kinds:
        out = [replace(f, quantity="pupil", of="", cue="", bad="") if _is_small(f) and f.value < lens.value and (_HOLE_BEFORE.search(text[: f.start]) or _HOLE_AFTER.match(text[f.end :])) else f for f in out]
    return out


_PINHOLE = Pattern(r"\b(?:pin-? ?)?holes?\b", re.I)
_FINE = 0.003
"""Metres that a hole without a lens is never wider than."""


def _pinhole(facts: list[Fact], text: str) -> list[Fact]:
    """"a hole of 0.4 mm in a tin, the paper 120 mm behind it": the hole, and how far it stands from the film."""
    lengths = [f for f in facts if f.quantity in (*_LENGTHS, "circle", "extension", "max_distance", "min_distance") and f.unit in (*_SMALL, "m", "ft") and not f.bad]
    if len(lengths) != 2 or not _PINHOLE.search(text) or any(f.quantity in ("guide_number", "aperture", "magnification") for f in facts) or any(_NAMED.search(f.said) for f in lengths):
        return facts
    hole, far = sorted(lengths, key=lambda f: f.value)
    if not 0 < hole.value <= _FINE or far.value < 10 * hole.value:
        return facts
    return [replace(f, quantity="pupil" if f is hole else "focal_length", of="", cue="", to="") if f in lengths else f for f in facts]


def _is_small(fact: Fact) -> bool:
    return fact.quantity in _LENGTHS and fact.unit in _SMALL and not _NAMED.search(fact.said) and fact.end > fact.start


_SET_THERE = Pattern(r"\b(?:focus\w*|set|park\w*|leav\w+|put\w*)(?: it| the (?:lens|ring))? (?:parked |set |focused )?(?:at|on|to) (?:the |its )?hyper[- ]?focal", re.I)


_TAKEN_BY_THE_DRAW = Pattern(r"\b(?:cost|costs|costing|lose|loses|losing|loss|lost|eat|eats|rob|robs|swallow|swallows|stops)\b", re.I)


def wanted(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The f-number that is asked for where the depth, or the hyperfocal distance, is what is told."""
    kinds = {f.quantity for f in facts}
    if "extension" in kinds and any(a.quantity == "aperture" for a in asks):
        asks = [a for a in asks if a.quantity != "extension"]  # how far it is out is told
    if {"extension", "focal_length"} <= kinds and {a.quantity for a in asks} <= {"extension"} and _TAKEN_BY_THE_DRAW.search(text):
        return [Ask("stops", "", "")]
    if "aperture" in kinds:
        return list(asks)
    if "depth_wanted" in kinds and _STOP_ASKED.search(text):
        return [Ask("aperture", "", "")]
    if {"sharp_limit", "focal_length"} <= kinds and len(asks) > 1 and _SET_THERE.search(text):
        return [a for a in asks if a.quantity != "hyperfocal"]  # where it is focused is told, so the rest is asked
    told = any(a.quantity == "hyperfocal" for a in asks) and any(f.quantity in _LENGTHS and f.unit and (_HYPER_AFTER.match(text[f.end :]) or _HYPER_BEFORE.search(text[: f.start])) for f in facts)
    if told and "focal_length" in kinds and _STOP_ASKED.search(text) and not any(a.quantity == "aperture" for a in asks):
        return [Ask("aperture", "", ""), *asks]
    return list(asks)
