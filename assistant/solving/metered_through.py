"""A reading taken through the filter has the filter's loss in it: it is set as it is, and the factor is not counted again."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.read_through import read_through
from assistant.solving.solution import Solution

_GLASS = r"(?:it|them|(?:(?:the|that|my|this|a|an) )?(?:\w+ ){0,2}(?:filters?|glass|nd\d*|polari[sz]er))"
_READ = r"\b(?:meter\w*|read|reads|reading|readings|measur\w+)\b(?:(?!\b(?:not|without|if)\b|n't)(?:[^.?!;]|\.\d)){0,30}"
_THROUGH = Pattern(
    rf"{_READ}\b(?:through|behind|under) {_GLASS}\b(?! (?:off|out)\b)|{_READ}\bwith {_GLASS} (?:already )?(?:on|fitted|in place|over (?:it|the (?:meter|cell)))\b"
    r"|\b(?:filter|nd|polari[sz]er)\b[^.?!;\d]{0,16}\b(?:over|on|in front of|before) the (?:light ?|hand(?:held)? ?)?(?:meter|cell)\b"
    r"|\b(?:filter|factor)(?:(?: of| is)? [\d.]+)?(?:'s| is| was)? (?:already |all )?(?:in|counted in|included in|allowed for in) (?:the|that|my) (?:meter )?reading\b|\b(?:filter|factor)(?:(?: of| is)? [\d.]+)?(?:'s| is| was) already (?:in|counted in|included in|allowed for in) (?:the|that|my) (?:meter|reading)\b|\breading (?:already )?(?:includes|allows for|has) the (?:filter|factor)\b", re.I)
_ELSE = Pattern(r"\bnot (?:yet|on)\b|\b(?:without|bare|unfiltered|no filter|off|remov\w*|take it|(?:then|now) (?:i )?(?:add|put|screw|fit)\w*|swap\w*|another|second|instead)\b|\b(?:not|never) (?:been )?(?:meter|read|measur|behind|through|over|taken|in the reading)\w*|n't\b|\b(?:wasnt|isnt|didnt|dont|hasnt)\b", re.I)
"""The filter on at one time and not at another."""
_GLASSES = ("factor", "nd", "camera_filter", "filter_loss")
_SAID = "The meter read through the filter, so what it takes is in the reading already."


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query without the filter that the meter looked through, where the reading is carried over to another aperture or time."""
    if not (query.has("aperture", "shutter") or query.has("exposure_value")) or not _in_the_reading(query):
        return None
    glass = tuple(f for f in query.facts if f.quantity in _GLASSES)
    return query.with_facts(f for f in query.facts if f not in glass), glass, (_SAID,)


def solve(query: Query) -> Solution | None:
    """The reading itself, where it is all that was told beside the filter, or beside what stands before the light that was read."""
    read = query.all("aperture")
    if len(read) != 1 or {f.quantity for f in query.facts} - {"aperture", "film_speed", *_GLASSES} or not _in_the_reading(query):
        return read_through(query)
    return Solution(answers=(marks.aperture(read[0].value),), used=query.facts, topic="losses", notes=(_SAID,))


def _in_the_reading(query: Query) -> bool:
    """Whether one filter's loss is told, and the meter looked through that filter."""
    counted = sum(f.quantity in _GLASSES and f.quantity != "camera_filter" for f in query.facts)
    if counted != 1 or query.claim or not query.asks_for("aperture", "shutter"):
        return False
    return _THROUGH.search(query.text) is not None and _ELSE.search(query.text) is None
