"""Frames of a bracket counted in other words: "a three-sheet bracket", "three negs around f/8", "list the three apertures"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact
from assistant.records import replace

_FRAMES = Pattern(r"[\s-]*(?:different |separate )?(?:sheets?|negs?|negatives?|plates?|holders?|chromes?|slides?|frames?|shots?|exposures?|goes|tries|versions|polaroids?)\b(?! (?:film|stock|iso))", re.I)
_BRACKET = Phrasings(r"\bbracket\w*\b|\b(?:either|each|both|every) (?:side|way)\b|\bapart\b|\b(?:in|by) (?:half|third|whole|full)\b|\b(?:darkest|lightest|brightest|thinnest|densest|least|most)\b|\bplus\b[^.?!]{0,60}\bminus\b|\bover\b[^.?!]{0,60}\bunder\b|\bunder\b[^.?!]{0,60}\bover\b", re.I)
_NAMED = Pattern(r"\s*(?:different )?(?:f[- ]?(?:stops?|numbers?)|apertures?|openings|settings|times|lens settings|marks)\b", re.I)
_THE_SAME = Pattern(r"\b(?:what|which|the|those|these|all|list|give me|name|my|are)\s*$", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the frames of a bracket as a count, and "the three apertures" as no more than said again."""
    if not _BRACKET.found_in(text):
        return facts
    facts = [replace(f, quantity="remark", cue="") if f.quantity == "stops" and _THE_ONE.search(text[: f.end]) and _UNDER_OR_OVER.match(text, f.end) and _IN_STEPS.search(text) else f for f in facts]
    facts = [replace(f, quantity="remark", unit="", of="", bad="") if f.quantity == "number" and f.value in (1, 2, 3, 4, 5) and _NTH.search(text[: f.start]) else f for f in facts]
    return _in_whole_stops([_said_again(_frames(_one_under(f, facts, text), facts, text), text) for f in facts], text)


_THE_ONE = Pattern(r"\bthe one$", re.I)
_NTH = Pattern(r"\b(?:frame|shot|sheet|plate|neg|exposure|number|no\.?) $", re.I)
"""Before the number of a frame: which it is, and not how many."""
_IN_STEPS = Pattern(r"\b(?:in|by|at|of) (?:whole|full|half|third)(?:[- ]of a)?[- ](?:stops?|steps)\b", re.I)
""""The one over": which frame, where the size of the steps is told."""
_WHOLE = Pattern(r"\b(?:in|by|at|of) (?P<said>(?:whole|full)(?:[- ]of a)?[- ]stops?)\b(?! (?:under|over|more|less|brighter|darker))", re.I)


def _in_whole_stops(facts: list[Fact], text: str) -> list[Fact]:
    """"a three-frame bracket in whole stops": steps of one, as "in half stops" are of a half."""
    said = _WHOLE.search(text)
    if said is None or any(f.quantity in ("stops", "signed", "relation", "power_down", "loss") for f in facts) or not (any(f.quantity == "count" and f.unit == "frames" and f.value > 1 for f in facts) or any(f.quantity == "aperture_range" for f in facts) and _HOW_MANY_FRAMES.search(text)):
        return facts
    return sorted([*facts, Fact("stops", 1.0, start=said.start("said"), end=said.end("said"), said=said["said"])], key=lambda f: f.start)


_HOW_MANY_FRAMES = Pattern(r"\bhow many (?:frames|exposures|shots|sheets|negatives|pictures)\b", re.I)
_WHICH_SETTINGS = Pattern(r"\b(?:which|what|give me the|name the)(?: \w+)? (?:settings?|values?|marks|positions)\b|\bsettings?(?: in order)?\W*\?", re.I)
_TURNED = Pattern(r"\b(?:by|with|using|through|on)(?: only)? (?:(?:changing|altering|varying|turning) )?(?:the |my )?(?:flash )?(?P<what>power|shutter|aperture|index|film speed|iso)\b", re.I)
_HOW_WIDE = Pattern(r"\bhow (?:wide|broad) (?:is|was|would|will|does)\b[^?.]{0,24}\b(?:bracket|it|row|series)\b", re.I)
_ASKED = {"power": "power", "shutter": "shutter", "aperture": "aperture", "index": "film_speed", "film speed": "film_speed", "iso": "film_speed"}


def asked(facts: Sequence[Fact], text: str) -> list[Ask]:
    """"one stop over, then right, then one under, using the power dial: which settings?": those of what is turned."""
    if _HOW_WIDE.search(text) and any(f.quantity == "count" and f.unit == "frames" for f in facts):
        return [Ask("stops")]
    way = _TURNED.search(text) if _WHICH_SETTINGS.search(text) and _BRACKET.found_in(text) else None
    wanted = _ASKED[way["what"].lower()] if way else ""
    return [Ask(wanted)] if any(f.quantity == wanted for f in facts) else []


_UNDER_OR_OVER = Pattern(r"\s*(?:stops? )?(?:(?P<less>under|below|down|darker)|over|above|up|brighter|hotter)\b", re.I)


def _one_under(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"changing only the aperture: one under first, then one over": stops, and no f/1, where the f-number is told."""
    small = fact.quantity == "aperture" and fact.value in (1, 2, 3) and fact.said[-1:].isalpha() and any(f.quantity == "aperture" and f is not fact and f.value > 3 for f in facts)
    way = _UNDER_OR_OVER.match(text, fact.end) if small else None
    return replace(fact, quantity="stops", of="", cue="less" if way["less"] else "more") if way is not None else fact


def _frames(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    small = fact.quantity in ("number", "film_speed", "rows") and not fact.unit and fact.value in (2, 3, 4, 5, 7, 9)
    counted = any(f.quantity == "count" and f.unit == "frames" and f.value > 1 for f in facts)
    number = text[fact.start : fact.end] if fact.quantity != "film_speed" else re.split(r"[\s-]", text[fact.start : fact.end])[0]
    return replace(fact, quantity="count", unit="frames", of="", bad="") if small and not counted and _FRAMES.match(text[fact.start + len(number) :]) else fact


def _said_again(fact: Fact, text: str) -> Fact:
    """"the three f-numbers please": no stops, and no number of anything new."""
    small = fact.quantity in ("number", "stops", "power") and not fact.cue and fact.value in (2, 3, 4, 5, 7, 9)
    if small and fact.quantity == "power":  # "what three power settings"
        return replace(fact, quantity="remark", unit="", of="", bad="") if _THE_SAME.search(text[: fact.start]) else fact
    number = re.split(r"[\s-]", text[fact.start : fact.end].strip())[0]
    again = small and _THE_SAME.search(text[: fact.start]) and _NAMED.match(text[fact.start + len(number) :])
    return replace(fact, quantity="remark", unit="", of="") if again else fact
