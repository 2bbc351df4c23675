"""How sure: what the figures of an exposure may be off by, put together as light adds.

Each doubt is in stops: a hand's width of distance, half a pace where the distance was
paced, the usual overrating of a maker's guide number, the range of a typical loss. Doubts
that have nothing to do with each other add as squares. Said only when it is more than the
film forgives.
"""

from __future__ import annotations

import math

from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving.lights import MODIFIER_NAMES, TYPICAL_LOSS
from assistant.solving.solution import Solution

HAND = 0.1  # metres: what a tape held at arm's length may be off by; common practice, no source
HALF_PACE = 0.375  # metres; common practice, no source
OVERRATED = 2 / 3  # stops a maker's guide number may be too high; measured outdoors, one report of 2/3 to 1 1/3
SLIDE_WORDS = ("slide film", "slides", "on slide", "transparenc", "trannies", "reversal film", "chrome")
FORGIVES = {"slide": 0.5, "negative": 1.0}  # stops either way; common practice, no source
EXPOSURES = frozenset({"aperture", "power", "distance", "film_speed"})


def doubts(query: Query, solution: Solution) -> dict[str, float]:
    """What each figure may be off by, in stops.

    >>> doubts(Query(""), Solution())
    {}
    """
    found: dict[str, float] = {}
    distance = next((f for f in solution.used if f.quantity == "distance" and f.value > 0), None)
    if distance is not None:
        slack = HALF_PACE if distance.estimate else HAND
        found["half a pace" if distance.estimate else "a hand's width of distance"] = 2 * math.log2(1 + slack / distance.value)
    if any(f.quantity == "guide_number" for f in solution.used) and "meter" not in query.cues:
        found["the maker's guide number"] = OVERRATED
    for taken in solution.assumed:
        name = next((n for n, words in MODIFIER_NAMES.items() if taken.quantity == "stops" and words in taken.why), "")
        if name:
            low, _, high = TYPICAL_LOSS[name]
            found[f"the {MODIFIER_NAMES[name]}"] = (high - low) / 2
    return found


def together(parts: dict[str, float]) -> float:
    """Independent doubts in stops as one: the root of the sum of their squares.

    >>> together({"a": 3.0, "b": 4.0})
    5.0
    """
    return math.sqrt(sum(stops**2 for stops in parts.values()))


def film_of(query: Query) -> str:
    """The kind of film that was named: slide, or negative."""
    text = query.text.lower()
    return "slide" if "slide" in query.cues or any([word in text for word in SLIDE_WORDS]) else "negative"


def sentence(query: Query, solution: Solution) -> str:
    """One short sentence where the doubt is more than the film forgives, with the bracket that covers it."""
    if solution.status != "answered" or solution.topic != "flash" or not solution.answers or solution.answers[0].quantity not in EXPOSURES:
        return ""
    parts = doubts(query, solution)
    total, film = together(parts), film_of(query)
    paced = f" Half a pace either way is {speak_stops(parts['half a pace'])}." if "half a pace" in parts else ""
    if total <= FORGIVES[film]:
        return paced.strip()
    step = math.ceil(total * 2 - 0.25) / 2
    largest = max(parts, key=lambda name: parts[name])
    more = "slide film" if film == "slide" else "even negative film"
    return f"Give or take {speak_stops(round(total * 3) / 3)}, most of it {largest}: more than {more} forgives, so bracket {speak_stops(step)} either side.{paced}"
