"""A gel in two strengths, of which one is on and the other is asked of: the reading by the difference of the two, and never by both together."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.last_question import last_question
from assistant.solving.solution import Solution, needs

_STRENGTH = Pattern(r"\b(half|full|quarter)\b(?! (?:power|a stop|of|the))", re.I)
_TOGETHER = Pattern(r"\b(?:both|together|stacked|on top|as well|in all|altogether)\b", re.I)
_BARE = Pattern(r"\b(?:bare|without|naked|nothing on|no gel)\b", re.I)
_ENDS = Pattern(r"[.;!?](?=\s|$)")


def solve(query: Query) -> Solution | None:
    """"half CTO takes 2/3 of a stop, full CTO 1 1/3; with the half on I read f/11, what with the full?"; None where no two strengths are told."""
    taken, read = _strengths(query), query.all("aperture")
    if taken is None or len(read) != 1 or {f.quantity for f in query.facts} - {"loss", "modifier", "camera_filter", "aperture", "remark", "film_speed", "place"} or _TOGETHER.search(query.text):
        return None
    question = last_question(query.text)
    if question is None or not question[0] >= read[0].start >= max(f.end for f in taken.values()):
        return _which(query)
    start = max([m.end() for m in _ENDS.finditer(query.text, 0, read[0].start)], default=0)
    on, asked = _named(query.text[start : question[0]]), _named(query.text[question[0] : question[1]])
    bare = _BARE.search(query.text, start, question[0]) is not None
    if len(on) != (not bare) or len(asked) != 1 or on == asked or not on | asked <= set(taken):
        return _which(query)
    more = taken[asked.pop()].value - (taken[on.pop()].value if on else 0.0)
    note = f"{speak_stops(abs(more)).capitalize()} {'more' if more > 0 else 'less'} than {'with nothing on' if bare else 'with the one it was read with'}."
    return Solution(answers=(marks.aperture(read[0].value * 2.0 ** (-more / 2)),), used=query.facts, topic="losses", notes=(note,))


def _named(text: str) -> set[str]:
    return {word.lower() for word in _STRENGTH.findall(text)}


def _strengths(query: Query) -> dict[str, Fact] | None:
    """What the gel takes in each of two strengths, by the word before each loss."""
    losses = query.all("loss")
    if len(losses) != 2 or {f.unit for f in losses} != {"gel"}:
        return None
    found: dict[str, Fact] = {}
    begin = 0
    for loss in losses:
        said = _STRENGTH.findall(query.text[begin : loss.start])
        if said:
            found[said[-1].lower()] = loss
        begin = loss.end
    return found if len(found) == 2 else None


def _which(query: Query) -> Solution:
    return needs(("aperture",), "I need to know with which of the two gels it was read, and which of them is on now.", query.facts, "losses")
