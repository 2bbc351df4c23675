"""So many pops at one power held against others: "four pops at quarter power, same as one full pop?"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_SAME = Pattern(
    r"\b(?:(?:is |are |be |gives? |makes? |the |just |exactly |about )*(?:same|as much)(?: (?:light|exposure|total|amount))?(?: of light)? (?:as|to|for|with)|equals?(?: to)?|(?:(?:is|are) )?worth|match(?:es)?|(?:is |are )?equivalent to|add(?:s)? up to|amounts? to|comes? to)\b", re.I)
_ELSE = ("guide_number", "distance", "aperture", "film_speed", "energy", "shutter", "stops", "relation", "loss", "modifier", "ratio", "number", "signed")
_NEARLY = 0.1
_POPS = Pattern(r"\b(?:pops?|bursts?|flashes|hits)\b", re.I)


def claim_of_pop_light(query: Query) -> Solution | None:
    """The light of so many pops at their power against that of others at theirs: number times power, by doublings."""
    text = query.text
    same = _SAME.search(text)
    if same is None or not _POPS.search(text) or any(query.has(q) for q in _ELSE):
        return None
    sides = (_light(query, 0, same.start()), _light(query, same.end(), len(text)))
    if sides[0] is None or sides[1] is None or not query.has("power"):
        return None
    (one, used), (other, also) = sides[0], sides[1]
    off = math.log2(one / other)
    holds = abs(off) < _NEARLY
    lead = f"Yes. Light adds: {one:.3g} of a full pop on both sides." if holds and one != 1 else "Yes. Light adds: they come to one full pop." if holds else f"No. The first come to {one:.3g} full pops, the others to {other:.3g}: {speak_stops(abs(off))} {'more' if off > 0 else 'less'}."
    return Solution(answers=(Quantity("claim", holds), marks.stops(off)), used=(*used, *also), topic="claims", lead=lead)


def _light(query: Query, start: int, end: int) -> tuple[float, tuple[Fact, ...]] | None:
    """In full pops, what is told between two places of the text; None where it tells two of a kind, or nothing."""
    counts = [f for f in query.all("count") if start <= f.start < end]
    powers = [f for f in query.all("power") if start <= f.start < end]
    if len(counts) > 1 or len(powers) > 1 or not (counts or powers):
        return None
    many, power = (counts[0].value if counts else 1.0), (powers[0].value if powers else 1.0)
    return (many * power, (*counts, *powers)) if many > 0 and power > 0 else None
