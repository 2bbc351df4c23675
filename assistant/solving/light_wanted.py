"""How much more or less light a move is to bring: "a stop too bright", "half as much light", "two stops under the key"."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.ranges import require_positive
from assistant.query import Fact, Query

WISHED = Pattern(r"\b(?:so|want|after|aim\w*|need|make|(?<!\bi )(?<!\bwe )get|do (?:i|we) get|to be|should|for|until|till|before|without|may|can)\b[^.?!]{0,40}$|\b(?:how far|what distance|where)\b(?![^.?!]*\bif\b)[^.?!]{0,20}$", re.I)
_WISHED_THEN = Pattern(r"\b(?:want|need|like|prefer|make|take|give|drop|knock|lose|bring|get|should|must)\b", re.I)
"""Between what is wrong with the light and the stops that are to come of the move: "it's too strong, I want a stop less"."""
_OUT = (
    r"\b(?:is|are|am|was|were|being|'(?:s|m|re)|reads?|says?|c[ao]mes? out|coming out|ends? up|ended up|look(?:s|ed)?|turn(?:s|ed)? out|get(?:s|ting)?|got|leaves?|left|makes?|puts?|finds?|has|have|shows?)\b[^.,;?!]{0,30}"
    r"(?:\bstops?(?: and an? (?:half|third|quarter))?(?: too)? (?:over\w*|under\w*|hot|above|below|dark|bright|short|shy|down|weak|strong|thin|dense)\b|\b(?:short|under|over|down) by\b)")
IS_OUT = Pattern(_OUT, re.I)
"""How far out it is as it stands: "I am two stops short", "the meter says a stop over"."""
_TOO = Pattern(r"\btoo\b|\b(?:brighter|darker|hotter|dimmer|more|less|over|under)\b(?=[^.?!]{0,20}\b(?:than|what) (?:i|we|it|they|she|he)\b[^.?!]{0,12}\b(?:want|wanted|need|needed|like|should|meant)\b)|" + _OUT + r"|(?:under|over)expos(?:ed|ing|es)\b", re.I)


_WHERE_BEFORE = Pattern(r"\b(?:where|how far(?: away| off| back)?|(?:what|which) distance)\b(?:(?! if\b| when\b)[^?])*\b(?:was|were|did|had)\b(?:(?! if\b| when\b| for\b)[^?])*(?:\?|$)", re.I)
_BEFORE = Pattern(r"\b(?:before|originally|at first|to begin with|earlier|formerly|in the first place)\b", re.I)


def asked_change(query: Query) -> tuple[float, tuple[Fact, ...]] | None:
    """Stops more (+) or less (-) that the move is to bring; the other way round where it is asked from where the light came ("it lost me a stop: where was it before?")."""
    found = _change(query)
    back = found is not None and _BEFORE.search(query.text) is not None and _WHERE_BEFORE.search(query.text) is not None
    return (-found[0], found[1]) if found is not None and back else found


def _change(query: Query) -> tuple[float, tuple[Fact, ...]] | None:
    text = query.text.lower()
    said = next((f for f in query.facts if f.quantity in ("stops", "relation", "loss", "power_down", "signed", "times", "ev_stops")), None)
    if said is not None and said.quantity == "loss" and (said.unit or query.has("modifier")) and not TO_LOSE.search(text[: said.start]):
        return None  # put in the way of the light: what stays the same is for another topic
    dimmer = patterns.search(r"\b(?:(?P<n>two|three|four|2|3|4) times|twice|doubly)\s+(?:as |the )?(?:dim|dark|weak|less)\w*", text)
    if dimmer:
        return -math.log2({"three": 3, "3": 3, "four": 4, "4": 4}.get(dimmer["n"] or "", 2)), tuple(query.all("times"))
    by_words = next((s for words, s in ((r"quarter (?:of )?(?:the|as much) light|a quarter (?:as|of)", -2.0), (r"half (?:of )?(?:the|as much) light|halv(?:e|ing) the light|half as (?:bright|much|strong|intense)|half (?:the|its|that) (?:strength|brightness|intensity)", -1.0),
                                        (r"(?:four times|quadruple)\b", 2.0), (r"(?:twice|double|two times)\b", 1.0)) if patterns.search(words, text)), None)
    if said is None or (said.quantity == "times" and by_words is not None):
        return (by_words, tuple(query.all("power"))) if by_words is not None else None
    require_positive(**({"times": said.value} if said.quantity == "times" else {}))
    size = abs(said.value) if said.quantity != "times" else math.log2(said.value)
    if patterns.search(r"how (?:much|far) (?:further|farther|back)|further back|step(?:s|ping)? back|drift(?:s|ing)? back|move (?:it )?back\b|back it off|pull (?:it )?back", text):
        return -size, (said,)
    if patterns.search(r"how (?:much|far) (?:closer|nearer|in\b)|how (?:much )?closer|move (?:it )?(?:in|closer)\b", text):
        return size, (said,)
    if said.origin == "said" and (power := _OF_POWER.match(text, said.end)) is not None:
        return (size if power["less"] else -size), (said,)  # with more power it may stand farther off for the same
    if said.quantity == "power_down" and _MADE_UP_FOR.search(text):
        return size, (said,)
    sign = _sign(said, text)
    return None if sign == 0 else (sign * size, (said,))


TO_LOSE = Pattern(r"\b(?:to|must|should|will|would) (?:lose|drop|shed|take off|give up|cut)(?: it| the light)?(?: by)?(?: (?:exactly|just|only|precisely|about|another|a further))*\s*$")
"""What the move is for, and nothing that hangs before the light."""
_OF_POWER = Pattern(r"\s*(?:of )?(?:more|extra|(?P<less>less)) (?:power|output|energy|juice)\b")
_MADE_UP_FOR = Pattern(r"\bmov(?:e|ed|ing)\b[^.?!]{0,30}\bto (?:keep|hold|make up|restore|get back)\b|\bsame exposure\b")
_SO_WRONG = r"too (?:(?P<much>bright|hot|strong|much|light|over\w*|high|powerful)|dark|dim|weak|little|under\w*|low|faint)\b"
AMISS = Pattern(rf"\b{_SO_WRONG}", re.I)
_TOO_MUCH = Pattern(rf"\s*{_SO_WRONG}", re.I)
_TOO_MUCH_BY = Pattern(rf"\b{_SO_WRONG} by (?:(?:just|only|about|exactly|some|a good|nearly|a|an) )*$", re.I)
"""What is wrong as it is, after the stops or before them: "two stops too hot", "too bright by two stops"."""


def _sign(said: Fact, text: str) -> int:
    if said.quantity in ("loss", "power_down"):
        return -1
    if said.to == "move":  # told on its own after an answer: so much more or less is wanted, whatever was too much before
        return -1 if said.cue == "less" else 1
    beside = (_TOO_MUCH.match(text[said.end :]) or _TOO_MUCH_BY.search(text[: said.start])) if said.origin == "said" else None
    if beside:
        return -1 if beside["much"] else 1
    less = said.cue == "less" or said.unit == "-" or bool(patterns.search(r"\b(?:lose|loses|losing|drop|dropping|falling|giv(?:e|ing) (?:up|away)|darker|dimmer|dark|dim|weak|short|under\w*|less|reduce|take off|knock|down)\b", text))
    more = said.cue == "more" or said.unit == "+" or bool(patterns.search(r"\b(?:gain|brighter|bright|hot|strong|over\w*|more|hotter|add|up)\b", text))
    way = (-1 if said.cue == "less" or said.unit == "-" else 1 if said.cue == "more" or said.unit == "+" else -1 if less else 1 if more else 0)
    begins = max(text.rfind(mark, 0, said.start) for mark in ".?!;") + 1
    own = text[begins:] if said.origin == "said" and (said.cue or said.unit) else text  # a way that other words tell is read in them
    too = _TOO.search(own)
    wished = too is not None and (WISHED.search(own[: too.end()]) or _WISHED_THEN.search(own[too.end() : said.start - begins] if said.origin == "said" else ""))
    return -way if too and not wished else way
