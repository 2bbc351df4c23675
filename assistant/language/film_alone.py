"""What is told and asked of a film where nothing of a flash is told: a bare number is a speed, "the box" is the film's, and what is open is a speed.

"I overexpose my 160 by two thirds, what do I dial in?", "pulled a stop and metered at 50, what does the box say?"
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language import film_choices
from assistant.language.bare import UNIT_NEXT
from assistant.patterns import Pattern
from assistant.query import OFFERED, Ask, Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark

KINDS = frozenset({"number", "modifier", *film_choices.KINDS})
_SPEEDS = frozenset({"film_speed", "rated"})
_SHIFTS = frozenset({"stops", "relation", "push", "signed"})
_ALONE = frozenset({*_SPEEDS, *_SHIFTS, "number", "remark", "place", "modifier", "years"})
_FILM = Pattern(r"\b(?:films?|rolls?|slides?|neg(?:ative)?s?|chromes?|stock|emulsion|box|(?:over|under)-?expos\w*|push\w*|pull(?:s|ed|ing)?|rat(?:e|es|ed|ing)|meter\w*|iso|asa)\b", re.I)
_BOX = Pattern(r"(?:the |its |my )?box(?: speed)?", re.I)
_OF_THE_FILM = Pattern(r"\bbox(?:'s)? (?:says?|said|reads?|speed)\b|\bwhat\b[^.?!]{0,16}\bbox\b|\bon (?:the|its) box\b", re.I)
_IS_SPEED = Pattern(
    r"\b(?:over|under)-?(?:expos|rat)\w* (?:my|the|this|that|every|all) (?:box of |roll of )?$|\b(?:meter(?:ed|ing|s)?|rat(?:e|ed|es|ing)|expos(?:e|ed|ing)|shot|shoot(?:ing)?)(?: (?:it|them|this|everything|the (?:roll|film|lot)|all|always))*(?: (?:at|for|as|on))? (?:ei |iso )?$"
    r"|\b(?:meter|dial|calculator)(?:'s| is| was| stands| stood| set| sits)?(?: (?:set|left|still|all|standing))* (?:at|on|to) $|\b(?:film|roll|slide|stock|box|it|which|and)(?: itself| speed)? (?:is|was|says|said|reads)(?: (?:an?|iso|only|really))* $", re.I)
_ON_METER = Pattern(r" (?:set |dialled |dialed )?(?:in )?on (?:the|my) (?:light )?(?:meter|dial|camera|iso dial|speed dial)\b", re.I)
_RIGHT_TO_SET = Pattern(r" (?:then )?(?:the )?(?:right|correct|proper) (?:film )?(?:speed|iso|asa|index|rating|number|setting|figure)\b(?: (?:to|for|on|in)\b|\W*$)", re.I)
_PARTS = (1 / 3, 0.5, 2 / 3)
_MORE_OR_LESS = Pattern(r" (?:(?P<less>less|under)|more|over|extra)\b", re.I)
_OF_A_STOP = Pattern(r"\b(?:over|under)-?(?:expos|rat)\w*[^.?!;]{0,30} by (?:about |just )?$", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with such a number as a film's speed, a part as of a stop, and without the box that is no softbox."""
    if not _FILM.search(text) or not {f.quantity for f in facts} <= _ALONE:
        return facts
    facts = film_choices.settle(facts, text)
    if _OF_THE_FILM.search(text):
        facts = [f for f in facts if not (f.quantity == "modifier" and _BOX.fullmatch(f.said.strip()))]
    return [_meant(f, text) if f.quantity == "number" and not f.bad else _pushed(f, text) if f.quantity == "stops" and not f.cue else f for f in facts]


_PUSH_IT = Pattern(r"\b(?P<way>push|pull)(?:ed|ing|s)? (?:it|that|this|them|the (?:film|roll|lot))(?: (?:only|just|by|about))* $", re.I)


def _pushed(fact: Fact, text: str) -> Fact:
    """"I push it only one stop"."""
    way = _PUSH_IT.search(text[: fact.start])
    return replace(fact, quantity="push", value=abs(fact.value) * (1 if way["way"].lower() == "push" else -1), unit="", of="film") if way else fact


def _meant(fact: Fact, text: str) -> Fact:
    if any(abs(fact.value - part) < 0.01 for part in _PARTS):
        way = _MORE_OR_LESS.match(text, fact.end)
        if way is not None:
            return replace(fact, quantity="stops", unit="", of="", cue="less" if way["less"] else "more")
        return replace(fact, quantity="stops", unit="", of="", cue="more" if "over" in text[max(0, fact.start - 50) : fact.start].lower() else "less") if _OF_A_STOP.search(text[: fact.start]) else fact
    told = fact.value >= 12 and is_film_speed_mark(fact.value) and not UNIT_NEXT.match(text, fact.end)
    return replace(fact, quantity="film_speed", unit="", of="") if told and (_IS_SPEED.search(text[: fact.start]) or _ON_METER.match(text, fact.end) or _RIGHT_TO_SET.match(text, fact.end)) else fact


_WHICH_FILM = Pattern(r"\b(?:what|which) (?:film|roll|box|stock|slide|neg\w*) (?:is|was|did|do|have|had|am)\b(?! (?:i (?:need|want|load|use|take|set)|needed|wanted|best|faster|slower))|\bwhat(?:'s| is| was) (?:the|my|its) (?:film|roll|stock)(?: itself| in the camera| really| then)?\W*$|\bwhat(?:'s| is| was| does| did| would)?(?: it say| say)? ?(?:on )?(?:the|its)? ?box\b", re.I)
"""What the film itself is, behind what it was rated at."""
_TO_SET = Pattern(r"\b(?:what|which|where|how)\b[^.?!]{0,24}\b(?:set|dial(?:l?ed)?|put|rate|use|meter)\b[^.?!\d]{0,24}\W*$|\b(?:what|which) (?:exposure )?index\b|\bwhat (?:was|is) (?:it|the (?:meter|dial)) (?:on|at|set)\b|\bwhat'?s the (?:index|ei)\b", re.I)
_METER = Pattern(r"\b(?:meter|dial|rat(?:e|ed|ing)|expos(?:e|ed|ing)|ei|box speed)\b|\b(?:over|under)-?expos", re.I)


_WHAT_TIME = Pattern(r"\b(?:what|which)(?: shutter)? (?:time|speed)\b|\bhow long\b|\bshutter\W*\?|\btime\W*\?|\bwhat (?:for|on|with)\b")


_HOW_MANY_SECONDS = Pattern(r"\bhow many (?:seconds|minutes)\b")


def asked(asks: Sequence[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """The speed, where one speed of a film and the stops that it is off are all that is told."""
    kinds = {f.quantity for f in facts} - {"remark", "place"}
    if kinds == {"film_speed", "shutter"} and len({f.value for f in facts if f.quantity == "film_speed"}) == 2 and all(a.quantity in ("duration", "time", "aperture") for a in asks) and _WHAT_TIME.search(lower):
        return Ask("shutter")  # "1/60 on 400 film. On 100, how long?"
    if {"exponent", "shutter"} <= kinds <= {"exponent", "shutter", "aperture"} and all(a.quantity in ("count", "duration", "time") for a in asks) and _HOW_MANY_SECONDS.search(lower):
        return Ask("shutter")
    told = kinds <= _SPEEDS | _SHIFTS and len([f for f in facts if f.quantity in _SPEEDS]) == len([f for f in facts if f.quantity in _SHIFTS]) == 1
    if not told or any(a.quantity not in ("aperture", "film_speed", "distance") for a in asks):
        return None
    if _WHICH_FILM.search(lower):
        return Ask("film_speed", "box")
    return Ask("film_speed") if not any(a.quantity == "film_speed" for a in asks) and (_TO_SET.search(lower) and _METER.search(lower) or any(f.cue == OFFERED for f in facts)) else None
