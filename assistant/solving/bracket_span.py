"""A bracket told by its two ends: "one under to two over, half stops" is seven frames, the ends and the middle counted."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Query

_SIZE = r"(?:(?:an?|one|two|three|four|\d+(?:\.\d+)?|[½⅓⅔]|\d/\d|half|third)(?: and a half| and a third| and two thirds| 1/2|½)?(?: (?:a|of a|thirds?(?: of a)?))?(?: (?:whole |full )?(?:stops?|ev))?)"
_WAY = r"(?:over|under|above|below|more|less|plus|minus|brighter|darker|lighter|up|down)(?:exposed|exposure)?"
_JOINED = r"[ ,]*(?:(?:through|right|all the way|up|on|over|and)[ ,]+)*(?:to|till|until|through)[ ,]+(?:the )?"
_AFTER = Pattern(rf"\b(?P<a>{_SIZE}) (?P<aw>{_WAY}){_JOINED}(?P<b>{_SIZE}) (?P<bw>{_WAY})\b", re.I)
_BEFORE = Pattern(rf"(?<!\w)(?P<aw>minus |plus |[-−+] ?)(?P<a>{_SIZE}){_JOINED}(?P<bw>minus |plus |[-−+] ?)(?P<b>{_SIZE})(?![\w/])", re.I)
_BRIGHT = Pattern(r"\b(?:over|above|more|plus|bright|light|up)|\+", re.I)
_STEP = Pattern(
    r"\b(?:(?:in|by|at|of|every|each|with|using) )?(?:steps of )?(?:an? |one )?(?:(?P<half>half|1/2|½|0\.5)|(?P<third>thirds?|1/3|⅓)|(?P<one>whole|full|one|single|1))[- ]?(?:of (?:a|one) |an? )?(?:stops?|steps?|ev|increments?|apart)\b"
    r"|\b(?:in|by) (?:(?P<halves>halves)|(?P<thirds>thirds)|ones)\b", re.I)
_WHOLE_FRAMES = 0.02
MOST = 50
"""Frames of one bracket that anybody shoots."""
_NUMBERS = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "half": 0.5, "third": 1 / 3, "½": 0.5, "⅓": 1 / 3, "⅔": 2 / 3}


def end_to_end(query: Query) -> tuple[float, ...]:
    """Stops off the middle of each frame from the one end to the other, in the order told; empty where the ends or the step are not."""
    text = query.text
    found = _AFTER.search(text) or _BEFORE.search(text)
    if found is None:
        return ()
    first, last = (_size(found[end]) * (1 if _BRIGHT.search(found[f"{end}w"]) else -1) for end in ("a", "b"))
    step = _step(query, found.start(), found.end())
    many = abs(last - first) / step if step else 0.0
    if first * last >= 0 or not 0 < many < MOST or abs(many - round(many)) > _WHOLE_FRAMES:
        return ()
    way = step if last > first else -step
    return tuple(round(first + n * way, 9) for n in range(round(many) + 1))


def _step(query: Query, start: int, end: int) -> float:
    """The size of a step: of a half-sentence that follows, else as said outside the ends; one stop where none is said."""
    later = [f for f in query.facts if f.quantity in ("stops", "relation") and f.value and not math.isnan(f.value)]
    new = [f for f in later if f.origin == "said" and (any(k.origin == "kept" for k in later) or query.text[f.start : f.end].strip() != f.said.strip())]
    if new:
        return abs(new[0].value) if len(new) == 1 else 0.0
    outside = query.text[:start] + " . " + query.text[end:]
    said = _STEP.search(outside)
    if said is None:
        other = [f for f in later if not start <= f.start < end]
        return 1.0 if not other else abs(other[0].value) if len(other) == 1 and not other[0].cue else 0.0
    return 0.5 if said["half"] or said["halves"] else 1 / 3 if said["third"] or said["thirds"] else 1.0


def _size(words: str) -> float:
    """"one and a half stops", "two thirds", "1 1/2" in stops."""
    words = words.lower().strip()
    first = words.split()[0]
    if "two third" in words and first == "two":
        return 2 / 3
    if first in ("a", "one", "1") and re.match(r"(?:a|one|1) third", words):
        return 1 / 3
    top, _, bottom = first.rstrip("½").partition("/")
    value = _NUMBERS.get(first.rstrip("½") or first) or float(top) / float(bottom or 1)
    more = 0.5 if "and a half" in words or " 1/2" in words or len(first) > 1 and first.endswith("½") else 1 / 3 if "and a third" in words else 2 / 3 if "and two thirds" in words else 0.0
    return value + more
