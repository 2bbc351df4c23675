"""What is asked of a film in few words: the rating to set, the push it needs, half its box speed."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

_PART_OF_SPEED = Pattern(r"^\s*(?:of )?(?:(?:its|the|my|that|box|rated|film|nominal|normal) )*(?:box )?(?:speed|rating)\b|^\s*(?:of )?(?:its|my|that|box|rated) (?:iso|asa)\b", re.I)
_RATE = Pattern(r"\b(?:rate|rating|ei|exposure index)\s*(?:it|this|that)?\W*(?:\?|$)|\b(?:what|which|how|where)\b[^?.]{0,16}\b(?:set|dial|put|rate|enter)\b[^?.]{0,14}\b(?:meter|dial|it|film|iso|speed)\b|\bmeter (?:it )?at\W*(?:what\W*)?(?:\?|$)|\bwhat\b[^?.]{0,14}\bon (?:the |my )?(?:light ?)?meter\b", re.I)
_PUSH = Pattern(r"\b(?:what|how much|which)(?: of a| sort of| kind of)? (?:a )?(?:push|pull)\b|\bhow (?:much|far) (?:do|must|should|to|shall)[^?.]{0,14}(?:push|pull)\b", re.I)


_HOW_MANY_PARTS = Pattern(r"\bhow many (?:thirds?|third[- ]stops|halves|half[- ]stops)(?: of a stop)?\W*$", re.I)
_HOW_MANY = Pattern(r"\bhow many (?:thirds?|third[- ]stops|halves|half[- ]stops)\b|\bstops? differen\w+|\bdifference in stops?\b", re.I)


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"rated at half its box speed": a stop more exposure, and no power of a flash."""
    pairs = sum(f.quantity in ("film_speed", "rated") for f in facts) == 2 or sum(f.quantity == "aperture" for f in facts) == 2
    kept = [f for f in facts if not (pairs and f.quantity == "stops" and _HOW_MANY_PARTS.search(text[: f.end]))]
    return [_part(_exponent(f, text), kept, text) for f in kept]


_EXPONENT_BEFORE = Pattern(r"\b(?:exponent|schwarzschild|reciprocity)\b[^.?!\d]{0,40}$", re.I)


def _exponent(fact: Fact, text: str) -> Fact:
    """"the reciprocity exponent for my film is 1.3": no film has such a speed."""
    small = fact.quantity in ("film_speed", "number") and 0.5 < fact.value < 3 and fact.value != int(fact.value)
    return replace(fact, quantity="exponent", of="film", unit="", bad="") if small and _EXPONENT_BEFORE.search(text[: fact.start]) else fact


def _part(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    halves = {0.5: 1.0, 0.25: 2.0}
    size = next((stops for value, stops in halves.items() if abs(fact.value - value) < 0.005), 0.0)
    if fact.quantity != "power" or "power" in fact.said.lower() or not size or not _PART_OF_SPEED.match(text[fact.end :]):
        return fact
    if not any(f.quantity in ("film_speed", "rated") for f in facts):
        return fact
    return replace(fact, quantity="stops", value=size, unit="", of="", cue="more", to="")


_FASTER = Pattern(r"\bstops? (?:faster|slower|more sensitive|less sensitive) than\b", re.I)


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The rating or the push, where nothing else is asked."""
    kinds = {f.quantity for f in facts}
    if _FASTER.search(text) and sum(f.quantity in ("film_speed", "rated") for f in facts) == 2 and sum(f.quantity == "stops" for f in facts) == 1 and len(facts) == 3:
        return [Ask("stops", "", "")]
    if _HOW_MANY.search(text) and sum(f.quantity in ("film_speed", "rated") for f in facts) == 2 and not kinds & {"guide_number", "distance", "aperture"}:
        return [Ask("stops", "", "")]
    if asks or "film_speed" not in kinds or kinds & {"guide_number", "distance", "aperture", "shutter", "exposure_value", "power"}:
        return list(asks)
    if "rated" in kinds and _PUSH.search(text):
        return [Ask("stops", "", "")]
    changed = kinds & {"years", "push", "stops", "relation", "signed"}
    return [Ask("film_speed", "", "")] if changed and _RATE.search(text) else []
