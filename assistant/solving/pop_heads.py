"""Several heads that fire at once where pops are counted: how many, and whether a reading is of one of them or of all."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query

_HEAD_WORDS = Pattern(r"\b(?:heads?|units?|lights?|lamps?|packs?|guns?|flashguns?|strobes?|speedlights?|monolights?)\b", re.I)


def heads(query: Query) -> Fact | None:
    """Several heads that fire at once, where pops are counted."""
    told = [f for f in query.all("count") if f.unit in ("flashes", "heads") and f.value > 1]
    return next((f for f in told if _HEAD_WORDS.search(f.said)), None) or (_fired_as_one(query, told) if _ALL_FIRED.search(query.text) else None)


def _fired_as_one(query: Query, told: list[Fact]) -> Fact | None:
    if len({f.value for f in told}) == 1:
        return told[0]
    return None if told or query.has("count") else Fact("count", 2.0, "flashes", said="both") if re.search(r"\b(?:both|pair)\b", query.text, re.I) else None


_ALL_FIRED = Pattern(r"\b(?:fir|pop|flash|set|trigger|work|go|hit)\w*(?: off)? (?:the (?:pair|two|three|four|lot|set|trio)|both|(?:them|these|those)(?: all| both)? (?:together|at once)|all (?:two|three|four|five|of them))\b|\bthe pair\b|\bfirings? of (?:both|all|the two|the three)\b|\bboth (?:together|at once)\b"
                     r"|\b(?:two|three|four|2|3|4) (?:of (?:those|these|them|my|the) |such )?(?:flashes|heads|guns|lamps|units|strobes)\b[^.?!;]{0,24}\b(?:together|at once|each time|every time|(?:on|for|per|at) (?:each|every) pop|per pop)\b", re.I)
"""Flashes that are fired as one: "how many times do I fire the pair"."""


_OF_ONE_HEAD = Pattern(r"\b(?:one of (?:my|the|these|those)|either|alone|by itself|on its own|singly|a single)\b", re.I)
_OF_ALL = Pattern(r"\b(?:together|between them|as a pair|the pair (?:gives?|reads?|is|makes?))\b", re.I)


def of_one(query: Query) -> bool:
    """Whether a reading is the light of one head alone."""
    one = any(f.value == 1 and f.unit in ("flashes", "heads") for f in query.all("count"))
    return bool(query.cues & {"each", "one_light"}) or one or _OF_ONE_HEAD.search(query.text) is not None


def of_all(query: Query) -> bool:
    """Whether it is said to be of all of them together."""
    return bool(query.cues & {"both", "combined"}) or _OF_ALL.search(query.text) is not None
