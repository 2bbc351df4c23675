"""Several flashes, each through something that takes light, against one that is bare: "two heads, each in an umbrella that costs a stop: are they as bright as one bare head?"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_denial import called_wrong
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_LIGHT = r"(?:flash|head|gun|strobe|light|lamp|one|unit)"
_ONE_BARE = Pattern(
    rf"\b(?:an?|one|1|the|single) (?:single |lone |same )?(?:bare|naked|unmodified|plain|uncovered|direct)(?: {_LIGHT})?\b"
    rf"|\b(?:an?|one|1|single) (?:single |lone )?{_LIGHT}(?: (?:that is|that's|used|left|fired|shot))? (?:bare|naked|unmodified|uncovered|direct|with nothing on)\b")
_OF_EACH = Pattern(r"\b(?:each|every|apiece|both|either|per (?:head|flash|light|gun)|an? \w+ on each)\b")
_EQUAL = Pattern(r"\b(?:same|equals?|equal to|as (?:much|bright|strong|good)|match(?:es)?|level|no (?:brighter|dimmer|darker)|cancels?(?: out)?|back to)\b")
_HELD_TO_IT = Pattern(r"\b(?:than|as|with|to|against|versus|from|of|equals?|match(?:es)?)(?: the)? $")
"""Before what the rest is held against."""
_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark"})
_NEAR = 0.15
"""Stops within which two lights are the same."""


def are_several_through(query: Query) -> bool:
    """Whether so many heads and what each of them loses are held against a bare one: no question of what such a thing usually takes."""
    return _told(query) is not None


def _told(query: Query) -> tuple[Fact, Fact, bool] | None:
    """The heads, what each loses, and whether it is the bare one of which something is said."""
    heads = [f for f in query.facts if f.quantity == "count" and f.unit in ("flashes", "heads") and f.value > 1]
    lost = [f for f in query.facts if f.quantity == "loss" and f.value > 0]
    said = plain(query.text)
    bare = _ONE_BARE.search(said)
    if len(heads) != 1 or len(lost) != 1 or bare is None or _OF_EACH.search(said) is None:
        return None
    return heads[0], lost[0], bare.start() < heads[0].start and _HELD_TO_IT.search(said[: bare.start()]) is None


def claim_of_many_through(query: Query) -> Solution | None:
    """So many times the light, less what each loses, against what is said of it; None where another figure would have to be weighed."""
    told = _told(query)
    if told is None:
        return None
    heads, lost, of_the_bare = told
    said = plain(query.text)
    sizes = [s for s in how_much.claimed(query) if not (s.start < lost.end and lost.start < s.end)]
    rest = [f for f in how_much.without(query, sizes) if f not in (heads, lost) and f.quantity not in _BY_THE_WAY and not (f.quantity == "number" and f.value == heads.value)]
    places = {(f.value, f.of) for f in rest if f.quantity == "distance"}
    if any(f.quantity != "distance" for f in rest) or len(places) > 1:
        return None
    right = math.log2(heads.value) - lost.value
    if sizes:
        holds = how_much.verdict(sizes, [-right if of_the_bare else right] * len(sizes), said)
    elif _EQUAL.search(said) is not None:
        holds = (abs(right) < _NEAR) is not called_wrong(said)
    else:
        return None
    way = "as bright as" if abs(right) < _NEAR else f"{speak_stops(abs(right))} {'brighter' if right > 0 else 'darker'} than"
    lead = f"{'Yes' if holds else 'No'}. {heads.value:g} of them are {speak_stops(math.log2(heads.value))} more, and each loses {speak_stops(lost.value)}: together {way} one bare flash."
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, lead=lead, topic="claims")
