"""One thing before the light in another's place: what it lost is won back, what the new one loses goes."""

from __future__ import annotations

import re

from assistant import scales
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_OLD_FIRST = Pattern(r"\b(?:swap(?:s|p?ed|p?ing)?|exchang\w+|trad(?:e|ed|ing)|replac\w+|chang(?:e|ed|ing)|switch(?:ed|ing)?|go(?:ing)?|went)\b(?: over)?(?: from)?[^.?!;]{0,24}$", re.I)
"""Before the one that goes: "swap the octa for the dish", "change from the octa to the dish"."""
_BETWEEN = Pattern(r"\W*(?:for|with|by|to|onto|against)(?: (?:the|my|a|an|that))?(?: \w+)?\W*", re.I)
_NEW_FIRST = Pattern(r"\W*(?:instead of|in place of|rather than)(?: (?:the|my|a|an|that))?(?: \w+)?\W*", re.I)


def solve(query: Query, ask: Ask) -> Solution | None:
    """"my dish loses 0.8 stop and my octa 2.1, if I swap the octa for the dish": the loss of the one less that of the other."""
    pair = _swapped(query) if ask.quantity in ("stops", "factor", "aperture") else None
    if pair is None:
        return None
    old, new = pair
    gained = old.value - new.value
    used = (*query.all("loss"), *query.all("modifier"))
    if ask.quantity == "aperture":
        known = query.all("aperture")
        if len(known) != 1:
            return None
        return Solution(answers=(marks.aperture(known[0].value * 2.0 ** (gained / 2)), marks.stops(gained)), used=(*known, *used), topic="losses")
    note = f"{scales.speak_stops(old.value)} are won back and {scales.speak_stops(new.value)} lost."
    stops, factor = marks.stops(gained), Quantity("factor", 2.0**gained, "x")
    return Solution(answers=(factor, stops) if ask.quantity == "factor" else (stops, factor), used=used, topic="losses", notes=(note[0].upper() + note[1:],))


_SAID = Pattern(r"\b(?:swap(?:s|p?ed|p?ing)?|exchang\w+|trad(?:e|ed|ing)|replac\w+|instead of|in place of|rather than)\b", re.I)


def spoken_of(query: Query) -> bool:
    """Whether one thing takes another's place, so that their losses do not add."""
    return _SAID.search(query.text) is not None and len(query.all("loss")) == 2


def _swapped(query: Query) -> tuple[Fact, Fact] | None:
    """The loss of what goes and of what comes in its place, where each of two was told its own."""
    losses = {f.unit: f for f in query.all("loss") if f.unit}
    if len(losses) != 2 or len(query.all("loss")) != 2 or any(query.has(q) for q in ("guide_number", "distance", "filter_loss", "camera_filter")):
        return None
    worn = [f for f in query.all("modifier") if f.unit in losses]
    for one, other in zip(worn, worn[1:], strict=False):
        between = query.text[one.end : other.start]
        if one.unit == other.unit:
            continue
        if _NEW_FIRST.fullmatch(between):
            return losses[other.unit], losses[one.unit]
        if _BETWEEN.fullmatch(between) and _OLD_FIRST.search(query.text[: one.start]):
            return losses[one.unit], losses[other.unit]
    return None
