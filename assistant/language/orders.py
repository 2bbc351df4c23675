"""Questions put as orders: "state the ring setting", "count the flashes", "estimate it at quarter power"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.solving.asking import ORDER

_WANTED: tuple[tuple[Pattern, str], ...] = (
    (Pattern(r"\b(?:guide number|gn)\b", re.I), "guide_number"),
    (Pattern(r"\b(?:ring|apertures?|f-?stop|f-?number|lens setting|working stop|stop to (?:use|set)|stop on the lens|lens mark)\b", re.I), "aperture"),
    (Pattern(r"\b(?:flashes|pops|bursts|firings)\b", re.I), "count"),
    (Pattern(r"\b(?:stops|loss|difference)\b", re.I), "stops"),
    (Pattern(r"\b(?:distance|reach|range)\b", re.I), "distance"),
    (Pattern(r"\b(?:shutter(?: speed| time)?|exposure time)\b", re.I), "shutter"),
    (Pattern(r"\b(?:joules|watt[- ]?seconds|energy)\b", re.I), "energy"),
    (Pattern(r"\bratio\b", re.I), "ratio"),
    (Pattern(r"\b(?:power|output) setting\b|\b(?:the|my) power\b", re.I), "power"),
)
_IT = Pattern(r"\b(?:it|that|this)\b", re.I)
_AGAIN: tuple[tuple[str, str, str], ...] = (
    # what "it" is, where one thing is told under one condition and wanted under another
    ("guide_number", "film_speed", "guide_number"), ("guide_number", "power", "guide_number"), ("recycle", "power", "duration"), ("aperture", "power", "aperture"),
)


_TOGETHER = Pattern(r"\b(?:together|combined|in all|as one|the pair|the lot|total)\b\W*(?:equals?|makes?|gives?|is|comes? to)?\W*(?:what)?\s*[?=]\W*$", re.I)
"""At the end, where nothing but guide numbers is told: what they are as one."""
_CAME_OUT_WRONG = Pattern(r"^(?!\W*(?:is|are|can|could|do|does|will|would|if|what if)\b)[^?]{0,80}?\b(?:(?:negs?|negatives?|rolls?|frames?)\b[^.?!]{0,40}\b(?:thin|dense|under\w*|over\w*)|(?:slides?|chromes?|transparenc\w+|prints?|frames?)\b[^.?!]{0,40}\b(?:(?:too|all) (?:dark|light|bright|pale)|under\w*|over\w*))\b", re.I)
"""A result that is told with the f-number it was shot at, and nothing besides: where the lens should stand is what is wanted."""


def ordered(text: str, facts: Sequence[Fact]) -> list[Ask]:
    """What an order at the end of a text asks for; empty where there is none.

    >>> ordered("f/8 bare, a two-stop ND. State the ring setting.", [])[0].quantity
    'aperture'
    """
    found = ORDER.search(text)
    told = [f.quantity for f in facts]
    if found is None and len(told) > 1 and "guide_number" in told and set(told) <= {"guide_number", "count"} and _TOGETHER.search(text):
        return [Ask("guide_number", "both" if told.count("guide_number") > 1 else "")]
    if found is None:
        return [Ask("aperture")] if sorted(told) in (["aperture", "stops"], ["aperture", "relation"]) and _CAME_OUT_WRONG.search(text) else []
    within = [f for f in facts if f.start >= found.start()]
    wanted = next((quantity for words, quantity in _WANTED if words.search(found.group()) and not any(f.quantity == quantity for f in within)), None)
    if wanted is not None:
        return [Ask(wanted, "", "J" if wanted == "energy" else "", found.start())]
    kinds = {f.quantity for f in facts}
    return [Ask(ask, "", "", found.start()) for told, condition, ask in _AGAIN if _IT.search(found.group()) and {told, condition} <= kinds][:1]
