"""One end of what a film still bears: the widest aperture, the longest time, the least power, the farthest place that still passes.

What is right is told, and so many stops that the film bears over or under it; the end asked for is where so much too much, or too little, is reached.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution

_BEARS = Pattern(r"\b(?:puts?(?: right)? up with|stands?|bears?|tolerat\w+|forgiv\w+|allows?|takes?|accepts?|copes? with|surviv\w+|holds?|swallows?|endures?|withstands?|good for|latitude|leeway|margin|can be|may be)\b", re.I)
_FILM = Pattern(r"\b(?:films?|slides?|neg(?:ative)?s?|chromes?|transparenc\w+|emulsion|stock|rolls?|print film|latitude)\b", re.I)
_OVER_AFTER = r"(?:too (?:much|bright|generous)|over\w*|more(?: light| exposure)?\b|extra)"
_UNDER_AFTER = r"(?:too (?:little|dark)|under\w*|less(?: light| exposure)?\b)"
_WAYS = tuple(Pattern(rf"\W*(?:stops? )?(?:of )?(?:light |exposure )?{words}", re.I) for words in (_OVER_AFTER, _UNDER_AFTER))
_BEFORE = tuple(Pattern(rf"\b{words}(?:exposure)? (?:of|by)(?: up to| about| at most)? $", re.I) for words in (r"over", r"under"))
_EITHER = Pattern(r"\b(?:either|each) (?:way|side|direction)|\bboth (?:ways|sides|directions)\b|\bplus (?:or|and) minus\b", re.I)

_MOST = r"(?:widest|largest|biggest)"
_LIMIT = Pattern(
    rf"\b(?:(?P<wide>{_MOST} (?:aperture|f-?stop|stop|f-?number|opening|setting|lens opening)|how far (?:can|may|could) i open)|(?P<small>(?:smallest|narrowest|tightest) (?:aperture|f-?stop|stop|opening|setting)|how far (?:can|may|could) i (?:stop|close) down)"
    r"|(?P<long>(?:longest|slowest) (?:shutter(?: speed| time)?|exposure(?: time)?|time|speed))|(?P<short>(?:shortest|fastest|quickest) (?:shutter(?: speed| time)?|exposure(?: time)?|time|speed))"
    r"|(?P<most>(?:most|highest|greatest|strongest) power)|(?P<least>(?:least|lowest|smallest|weakest) power)"
    r"|(?P<far>(?:farthest|furthest|greatest distance|longest distance)|how far(?: away| off| back)? (?:can|may|could) )|(?P<near>(?:nearest|closest|shortest distance)|how (?:near|close) (?:can|may|could) ))", re.I)
_BOTH_ENDS = Pattern(r"\b(?:nearest|closest|how (?:near|close))\b[^?.;]{0,32}\b(?:farthest|furthest|how far)\b|\b(?:farthest|furthest|how far)\b[^?.;]{0,32}\b(?:nearest|closest|how (?:near|close))\b", re.I)
"""Both ends of what passes are asked for: "from how near to how far can they stand?"."""
_ENDS = {
    # what is asked, the quantity, whether it is where there is too much light, the power of two its value takes for one stop more light
    "wide": ("aperture", True, -0.5), "small": ("aperture", False, -0.5), "long": ("shutter", True, 1.0), "short": ("shutter", False, 1.0),
    "most": ("power", True, 1.0), "least": ("power", False, 1.0), "far": ("distance", False, -0.5), "near": ("distance", True, -0.5),
}
_SIZES = ("stops", "loss", "signed", "relation")
_MAKE = {"aperture": marks.aperture, "shutter": marks.shutter, "power": marks.power}
_NOT_BESIDE = frozenset({"guide_number", "rated", "push", "nd", "factor", "filter_loss", "exponent", "ratio", "modifier", "gap", "move", "focal_length", "exposure_value"})


def solve(query: Query) -> Solution | None:
    """"the film bears two stops over, f/11 is right: what is the widest aperture?"; None where no such end is asked for."""
    sizes = [f for f in query.facts if f.quantity in _SIZES]
    asked = [m for m in _LIMIT.finditer(query.text)] if sizes else []
    if len(asked) != 1 or _BOTH_ENDS.search(query.text) or not _FILM.search(query.text) or not _BEARS.search(query.text) or any(f.quantity in _NOT_BESIDE and f.origin == "said" for f in query.facts):
        return None
    quantity, over, weight = _ENDS[str(asked[0].lastgroup)]
    right = {f.value for f in query.all(quantity)}
    size = _allowed(query.text, sizes, over)
    if size is None or len(right) != 1:
        return None
    fact, stops = query.all(quantity)[0], abs(size.value) if over else -abs(size.value)
    value = fact.value * 2.0 ** (weight * stops)
    answer = _MAKE[quantity](value) if quantity != "distance" else marks.distance(value, preferred_unit(query, fact.unit))
    return Solution(answers=(answer,), used=(*query.all(quantity), *sizes, *(f for f in query.facts if f.quantity in ("aperture", "shutter", "power", "film_speed"))), topic="film",
                    notes=(f"There it is {speak_stops(abs(size.value))} {'over' if over else 'under'}exposed.",))


def _allowed(text: str, sizes: list[Fact], over: bool) -> Fact | None:
    """The stops that the film bears on that side."""
    side = 0 if over else 1
    said = [f for f in sizes if _WAYS[side].match(text, f.end) or _BEFORE[side].search(text[: f.start])]
    if len(said) == 1:
        return said[0]
    return sizes[0] if len(sizes) == 1 and not said and _EITHER.search(text) else None
