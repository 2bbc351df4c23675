"""Places that are to be sharp, told by where the lens is focused: so far behind it, out to infinity, the hills."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the places that must be sharp told as such."""
    return _from_the_focus(_out_to_infinity(_far_things(facts, text), text), text)


_FAR = r"(?:(?:far|distant) )?(?:mountains?|hills|horizon|skyline|stars)|far (?:shore|bank|distance)|distant \w+"
_IN_THE_ZONE = r"(?:sharp|in focus|crisp|(?:with)?in(?:side)? (?:the |my |its )?(?:depth|zone|d\.?o\.?f|sharp)|covered by (?:the |my |its )?depth)"
_FAR_THINGS = Pattern(rf"\b(?:is|are|will|would|do|does|keeps?|get|gets|holds?|have|want)\b[^.?!]{{0,40}}\b(?P<far>{_FAR})\b[^.?!]{{0,24}}\b{_IN_THE_ZONE}\b", re.I)
_AS_FAR_AS = Pattern(rf"\b(?:sharp|focus|crisp|depth of field|depth)\b[^.?!]{{0,36}}\b(?:to|as|reach\w*|includ\w*|cover\w*|holds?|takes? in)(?: far as)? (?:the |those |my )?(?P<far>{_FAR})\b", re.I)
"""What is sharp, and how far out: "sharp right out to the horizon"."""


def _far_things(facts: list[Fact], text: str) -> list[Fact]:
    """"are the mountains sharp?", "sharp right out to the horizon": they are at infinity."""
    if not any(f.quantity in ("focus_distance", "focal_length") for f in facts):
        return facts
    found = _FAR_THINGS.search(text) or _AS_FAR_AS.search(text)
    if found is None or any(math.isinf(f.value) for f in facts) or sum(f.quantity == "sharp_limit" for f in facts) > 1:
        return facts
    return [*facts, Fact("sharp_limit", math.inf, "m", start=found.start("far"), end=found.end("far"), said=found["far"])]


_BEYOND = Pattern(r"\s*(?:further |farther )?(?:behind|beyond|back|further|farther|past|after)\b", re.I)
_BEFORE_IT = Pattern(r"\s*(?:in front|nearer|closer|before|this side|forward)\b", re.I)
_IS_SHARP = Pattern(r"\b(?:sharp|focus|crisp|soft|blurred|blurry)\b", re.I)


def _from_the_focus(facts: list[Fact], text: str) -> list[Fact]:
    """"focused at 2 m, her mother half a metre behind her: is she sharp too?": a place that is to be sharp, counted from where it is focused."""
    focus = [f for f in facts if f.quantity == "focus_distance" and not f.bad]
    apart = [f for f in facts if f.quantity in ("gap", "distance", "move", "focus_distance") and focus and f.start > focus[0].start and (_BEYOND.match(text[f.end :]) or _BEFORE_IT.match(text[f.end :]))]
    focus = [f for f in focus if f not in apart]
    if len(focus) != 1 or len(apart) != 1 or any(f.quantity in ("sharp_limit", "guide_number") for f in facts) or not _IS_SHARP.search(text[apart[0].end :]):
        return facts
    way = 1.0 if _BEYOND.match(text[apart[0].end :]) else -1.0
    place = focus[0].value + way * apart[0].value
    return [replace(f, quantity="sharp_limit", value=place, of="", cue="") if f is apart[0] else f for f in facts] if place > 0 else facts


def _out_to_infinity(facts: list[Fact], text: str) -> list[Fact]:
    """"sharp to infinity"; "focused on 15 m, does it hold to infinity": what is to be sharp, and no place of a light or second focus."""
    focused = any(f.quantity == "focus_distance" and not math.isinf(f.value) for f in facts) and not any(f.quantity == "guide_number" for f in facts)
    return [
        replace(f, quantity="sharp_limit", of="", cue="", bad="") if math.isinf(f.value) and (f.quantity == "distance" and _SHARP_OUT.search(text[: f.start]) or focused and f.quantity in ("distance", "focus_distance") and _HOLDS_TO.search(text[: f.start])) else f
        for f in facts
    ]


_HOLDS_TO = Pattern(r"\b(?:good|holds?|carr(?:y|ies)|go(?:es)?|reach(?:es)?|stretch(?:es)?|extends?|gets?|runs?|covers?|includes?|is|keeps?)(?: me| it| that)?(?: good)?(?: right| all the way| clear)?(?: out| up| on)?(?: to)?\s*$", re.I)
_SHARP_OUT = Pattern(r"\b(?:sharp|focus|crisp)\b[^.?!]{0,24}\bto\s*$", re.I)


ANOTHER_CLAUSE = Pattern(r"[\s,]*\b(?:while|whilst|when|with|but|and|though|as) (?:(?:the|my|a|our) )?(?:\d+ ?mm )?(?:lens|camera|i|i'm|we)\b[^.?!;\d]{0,30}?\bfocus\w* (?:on|at|to) (?:about |only )?(?:\d|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty)", re.I)
"""Between a length and the word that says what the lens is focused on: "a bassist at 8 feet while my lens is focused on 10"."""
HAIR = 0.0005
"""No lens, no focus and no limit of sharpness is told in less than half a millimetre."""
_MOVES = Pattern(r"\b(?:mov\w+|blur\w*|smear\w*|shak\w+|travel\w*|shift\w*|wobbl\w*|thick\w*|gap|step)\b", re.I)


def hair_alone(facts: list[Fact], text: str) -> list[Fact]:
    """"he now says 0.03 mm": told alone, such a length is what counts as sharp too, where nothing is said to move."""
    alone = all(f.quantity == "remark" or f.quantity == "distance" and f.unit == "mm" and 0 < f.value < HAIR for f in facts)
    return [replace(f, quantity="circle", of="", cue="", bad="") if f.quantity == "distance" else f for f in facts] if alone and not _MOVES.search(text) else facts
