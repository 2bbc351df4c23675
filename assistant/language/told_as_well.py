"""What words beside a figure settle: stops that say the same as the two readings, a wall that is lit itself, a light held against itself.

"Flash f/8, ambient two stops under that, f/4" · "guide number 28 m, 7 m from the wall, how many pops" · "the hair light is at 5 ft and I want it a stop brighter, new distance?"
"""

from __future__ import annotations

import re

from assistant.language.steps import Steps
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import aperture_difference_stops

_WAYS = {"less": -1.0, "more": 1.0}
_SAME = 0.1
"""Stops by which two marks may miss the difference that is told of them."""


def the_stops_too(facts: list[Fact], text: str) -> list[Fact]:
    """"flash f/8, ambient two stops under that, f/4": the stops are the difference of the two readings, and no third thing."""
    told = [f for f in facts if f.quantity == "relation"]
    read = [f for f in facts if f.quantity == "aperture"]
    if len(told) != 1 or len(read) != 2 or told[0].cue not in _WAYS or not _ASKS.search(text) or _JUDGED.search(text):
        return facts
    its = [f for f in read if f.end <= told[0].start and _SO_MUCH.fullmatch(text[f.end : told[0].start])] or [f for f in read if f.start > told[0].end and _NEXT.fullmatch(text[told[0].end : f.start])]
    if len(its) != 1 or its[0].of and told[0].of and its[0].of != told[0].of:
        return facts
    other = read[0] if its[0] is read[1] else read[1]
    brighter = aperture_difference_stops(its[0].value, other.value)  # a reading of a larger f-number is more light
    if abs(abs(brighter) - told[0].value) > _SAME or brighter * _WAYS[told[0].cue] <= 0:
        return facts
    named = replace(its[0], of=told[0].of) if told[0].of and not its[0].of else its[0]
    return [named if f is its[0] else replace(f, quantity="remark", of="", to="", cue="") if f is told[0] else f for f in facts]


_NEXT = Pattern(r"(?!\s*(?:\w+ )?(?:than )?$)\s*(?:under|over|below|above|down|up|less|more|darker|brighter)?(?: than)?(?: (?:that|it|this|the (?:key|flash|main|ambient|room|fill)))?(?: alone)?[,;:( –-]*(?:(?:so |i\.e\. |that'?s |which is |is |or |and reads |at |reads? )*)", re.I)
"""Between the stops and the reading that they come to."""
_ASKS = Pattern(r"\b(?:what|which|how|ratio|total|sum)\b", re.I)
_JUDGED = Pattern(r"(?:^|[.;:!?,]\s*)(?:so |and |then |but )?(?:is|are|was|were|isn't|aren't|does|do|doesn't|will|would|can|should) (?!(?:what|how|which)\b)|\b(?:true|right|correct|wrong|agree|claims?|reckons?|says? that|swears?)\b", re.I)
"""A claim is held against its own stops."""
_SO_MUCH = Pattern(r"[,;:(–-]* *(?:(?:so|that'?s|that is|which is|which makes it|is|i\.e\.|just|only|about|or|exactly|being) )*", re.I)
"""Between a reading and the stops that it is from the other."""


_SOMEBODY = Pattern(
    r"\b(?:she|he|her|him|his|they|them|i|i'm|we|we're|me|us|camera|sitter|subject|model|bride|groom|couple|group|people|person|man|woman|girl|boy|child|children|kids?|baby|dancers?|singers?|band|actors?|family|friend|chair|table|car|statue|bounc\w+|ceiling|"
    r"behind|in front|background|backdrop|rows?)\b", re.I)
_LIT = frozenset({"guide_number", "gap", "aperture", "film_speed", "power", "count", "shutter", "modifier", "loss", "remark", "place"})


def the_wall_lit(facts: list[Fact], text: str) -> list[Fact]:
    """"guide number 28 metres, 7 metres from the wall": with nobody spoken of, the wall is what is lit."""
    behind = [f for f in facts if f.quantity == "gap"]
    if len(behind) != 1 or behind[0].of != "backdrop" or not {f.quantity for f in facts} <= _LIT or not any(f.quantity == "guide_number" for f in facts):
        return facts
    if not _FROM_IT.match(text, behind[0].end) or _SOMEBODY.search(text):
        return facts
    return [replace(f, quantity="distance", of="") if f is behind[0] else f for f in facts]


_FROM_IT = Pattern(r"\s*(?:away )?(?:from|off) (?:the|a|that|this|my|one) (?:[\w-]+ ){0,2}?(?:wall|curtain|hedge|fence|cloth|sheet|screen|canvas)s?\b", re.I)


_WANTS_IT = Pattern(r"\b(?:want|need|like|have|get|make|wish|wanted|needed)s? it (?:to (?:be|come out|read) |just |only |about )*$", re.I)
_WHERE = Pattern(r"\b(?:where|distance|how (?:far|close|near)|mov(?:e|ing))\b", re.I)
_ANOTHER = Pattern(r"\b(?:than|as|under|over|below|above|against)\b", re.I)


_MUCH, _LITTLE = r"(?P<much>hot|bright|strong|much|hard|over)", r"(?:dark|dim|weak|little|dull|under)"
_TOO = Pattern(rf"\btoo (?:{_MUCH}|{_LITTLE})(?: on her| on him| for me)? by (?:about |roughly |some |a good )?$", re.I)
_TOO_AFTER = Pattern(rf"\s*(?:too (?:{_MUCH}|{_LITTLE})\b|(?:(?P<more>over|above|hotter than|brighter than)|under|below|darker than|dimmer than) (?:what|where|how) (?:i|we|it) (?:want|need|like|should)\b)", re.I)


def than_it_was(facts: list[Fact], text: str) -> list[Fact]:
    """"the hair light is 5 ft away and I want it a stop brighter. New distance?": than it is now, where no other light and no reading is spoken of."""
    told = [f for f in facts if f.quantity in ("relation", "power_down") and f.of and not f.to]
    places = [f for f in facts if f.quantity == "distance"]
    if len(told) != 1 or len(places) != 1 or places[0].of != told[0].of or any(f.of not in ("", told[0].of) or f.quantity in ("aperture", "guide_number") for f in facts):
        return facts
    too = _TOO.search(text[: told[0].start]) or _TOO_AFTER.match(text, told[0].end)
    if too is not None and _WHERE.search(text):
        return [replace(f, quantity="stops", cue="more" if too["much"] or too.groupdict().get("more") else "less") if f is told[0] else f for f in facts]
    if not _WANTS_IT.search(text[: told[0].start]) or not _WHERE.search(text) or _ANOTHER.search(text):
        return facts
    way = told[0].cue if told[0].quantity == "relation" else "less"
    return [replace(f, quantity="stops", cue=way) if f is told[0] else f for f in facts]


STEPS: Steps = ((the_stops_too, frozenset({"relation"})), (the_wall_lit, frozenset({"gap"})), (than_it_was, frozenset({"relation", "power_down"})))
