"""Losses told one after the other to be added up, with "stops" left out: "box 1 2/3, orange gel 2/3, net 1/2, in all?".

Where a sum of losses is asked, so small a figure after the name of what stands in the light is what that takes,
whatever little words stand between.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.language.stop_words import is_part
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

SUMMED = Pattern(
    r"\b(?:sum|total|add(?:ed|ing)?(?: it| them| these| those| all| all of (?:it|them))? ?up|altogether|all together|in all|all told|all in|combined|together|overall|whole)\b[^.?!]{0,60}\b(?:los(?:s|ses|e|ing)|down|stops?)\b"
    r"|\b(?:los(?:s|ses|e|ing)|down|stops?)\b[^.?!]{0,80}\b(?:sum|total|altogether|all together|in all|all told|all in|combined|together|overall|added up|add up)\b"
    r"|\bstops? each\b[^.?!]{0,40}\btotal\b|\b(?:total|sum|altogether|in all|all told)\W*$"
)
_OTHER_SUMS = frozenset({"guide_number", "distance", "shutter", "relation", "energy", "exposure_value", "path", "magnification", "extension"})
TAKEN = frozenset({"modifier", "camera_filter", "loss", "filter_loss"})
"""A list is of these, and of nothing without one of them."""
_TOLD = ("loss", "filter_loss", "nd", "factor", "stops")
_BOX = Pattern(r"\b(?:box|brolly)\b(?! (?:speed|says|is (?:stamped|marked)))")
_FAR = 60


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with each figure of such a list as the loss of what it stands behind."""
    if not any(f.quantity in TAKEN for f in facts) or any(f.quantity in _OTHER_SUMS for f in facts):
        return list(facts)
    said = text.lower()
    if not SUMMED.search(said):
        return list(facts)
    takers = sorted([*(f for f in facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"), *_boxes(facts, said)], key=lambda f: f.end)
    out: list[Fact] = []
    for fact in facts:
        out.append(_lost(fact, out, takers, text) if _may_be_lost(fact) else _one_nd(fact))
    return sorted([*out, *_ones(out, takers, said)], key=lambda f: f.start)


_ONE = Pattern(r"(?: (?:on|over) (?:the|my) \w+)?:? (?:takes |eats |costs |loses )?(?P<one>one|a full one)\b(?=\W*(?:[,.;?!]|$|and\b|how\b|what\b|in all\b|total\b))")


def _ones(facts: Sequence[Fact], takers: Sequence[Fact], said: str) -> list[Fact]:
    """"net one": a stop of it, where "one" was taken for the thing itself."""
    found = []
    for taker in takers:
        match = _ONE.match(said, taker.end)
        if match is not None and not any(f.start < match.end() and f.end > match.start("one") for f in facts):
            glass = taker.quantity == "camera_filter"
            found.append(Fact("filter_loss" if glass else "loss", 1.0, taker.unit, taker.of, start=match.start("one"), end=match.end(), said="one"))
    return found


def _boxes(facts: Sequence[Fact], said: str) -> list[Fact]:
    """"box 1 2/3": with no article it is named all the same."""
    found = _BOX.search(said)
    if found is None or any(f.start < found.end() and f.end > found.start() for f in facts):
        return []
    return [Fact("modifier", 0.0, "umbrella" if found.group() == "brolly" else "softbox", start=found.start(), end=found.end(), said=found.group())]


def _may_be_lost(fact: Fact) -> bool:
    if fact.bad or not 0 < abs(fact.value) <= 4:
        return False
    if fact.quantity == "power":
        return is_part(fact.value) and "power" not in fact.said.lower() and "%" not in fact.said
    if fact.quantity == "aperture":
        return "f" not in fact.said.lower() and "." in fact.said
    return fact.quantity == "number" or fact.quantity == "stops" and fact.cue != "more" or fact.quantity == "signed" and fact.unit == "-"


def _lost(fact: Fact, before: Sequence[Fact], takers: Sequence[Fact], text: str) -> Fact:
    taker = next((f for f in reversed(takers) if f.end <= fact.start), None)
    if taker is None or fact.start - taker.end > _FAR or any(f.start >= taker.end and f.quantity in _TOLD for f in before):
        return fact
    glass = taker.quantity == "camera_filter"
    return replace(fact, quantity="filter_loss" if glass else "loss", value=abs(fact.value), unit=taker.unit, of=taker.of, cue="", other=math.nan)


def _one_nd(fact: Fact) -> Fact:
    """"nd one": a stop of it; a factor of one would be no filter."""
    return replace(fact, value=1.0, unit="stops") if fact.quantity == "nd" and fact.unit == "factor" and fact.value == 0 else fact


_SO_MANY = Pattern(r"(?P<many>two|three|four|[234])\s+[a-z ]*", re.I)
_PLURAL_NAME = Pattern(r".*(?:filters|nds|densities)", re.I)
_PLURAL_AFTER = Pattern(r" (?:nd )?filters\b", re.I)


def so_many_filters(facts: list[Fact], text: str) -> list[Fact]:
    """"two ND filters": how many there are, and no factor, which one has; "two 0.6 NDs": twice the stops of one."""
    out: list[Fact] = []
    for fact in facts:
        plural = fact.quantity == "nd" and (_PLURAL_NAME.fullmatch(fact.said) or _PLURAL_AFTER.match(text, fact.end))
        match = _SO_MANY.fullmatch(fact.said) if plural and fact.unit == "factor" else None
        if match is not None:
            out.append(replace(fact, quantity="number", value=fact.other, other=math.nan, unit="", of="", said=match["many"], end=fact.start + match.end("many")))
        elif plural and out and out[-1].quantity == "number" and out[-1].value in (2, 3, 4) and not text[out[-1].end : fact.start].strip():
            out[-1] = replace(out[-1], quantity="rows")
            out.append(replace(fact, value=fact.value * out[-1].value))
        else:
            out.append(fact)
    return out
