"""How many of several alike in the light are spoken of: "two identical layers", "a pair of the same silks", "a single one", "each", "one of the three"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.records import record

NUMBERS = {
    "a": 1, "one": 1, "single": 1, "each": 1, "every": 1, "per": 1, "apiece": 1, "two": 2, "double": 2, "doubled": 2, "twin": 2, "both": 2, "pair": 2, "couple": 2,
    "three": 3, "triple": 3, "trebled": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12,
}
_HOW_OFTEN = r"one|single|each|every|two|double|doubled|twin|both|pair of|couple of|triple|trebled|three|four|five|six|seven|eight|nine|ten|twelve|\d{1,2}"
_LIKE = r"(?:thin|thick|white|black|silver|more|equal|the same|identical|similar|matching|such|same|separate|alike|neutral density|nd|gr[ea]y|half|full|cto|ctb|orange|blue|of (?:the|my|our|these|those|that|this)(?: same)?)"
_THING = (
    r"(?:layers?|sheets?|thickness(?:es)?|folds?|ply|plies|pieces?|bits|silks?|scrims?|nets?|veils?|frosts?|grids?|muslins?|gels?|filters?|nds|diffusers?|diffusions?|tissues?|hankies|hankie|handkerchiefs?|cloths?|gauzes?|polari[sz]ers|panes?|screens?"
    r"|neutral densit(?:y|ies))"
)
_OF_LIGHT = r"(?:\w*heads?|flash\w*|\w*lamps?|\w*lights?|pops?|guns?|strobes?|units?|frames?|people|rows?|stops?|thirds?|boxes|softboxes|umbrellas|metres?|feet|seconds?|films?|rolls?|lenses)\b"
_SAID = Pattern(
    rf"(?<![.\d/-])\b(?:(?P<many>{_HOW_OFTEN}|a(?= (?:layer|sheet|thickness|fold|piece|ply)\b)|per) (?:{_LIKE} )*(?P<thing>{_THING})\b"
    rf"|(?P<some>one|each|every one|either|both|two|three|four|five|six)(?: one)? of (?:(?:them|these|those|it)\b|(?:the |these |those |my |our )?(?:(?P<all>two|three|four|five|six|pair|couple)(?: (?:{_LIKE} )*{_THING}\b|\b(?! (?:\w+ )?{_OF_LIGHT}))|(?:{_LIKE} )*{_THING}\b)))"
    rf"|\b(?:just|only)(?: the)? (?P<alone>one|two|three|four)\b(?! (?:stops?|and|third|half|of)\b)|\b(?P<apart>each|apiece|both)\b(?! (?:time|pop|flash|frame|head|light|lamp)\b)", re.I)


@record
class Some:
    """So many of several alike, and where they are spoken of. `of`: of how many, where that is said with them."""

    many: int
    start: int
    end: int
    of: int = 0
    by_name: bool = False


def spoken_of(text: str) -> list[Some]:
    """Every mention of so many layers, sheets, filters, in the order said.

    >>> [(s.many, s.of) for s in spoken_of("f/8 through a pair of the same white silks. What does one of the two take?")]
    [(2, 0), (1, 2)]
    """
    out = []
    for found in _SAID.finditer(text):
        word = next(found[g] for g in ("many", "some", "alone", "apart") if found[g] is not None).lower().split(" ")[0]
        many = int(word) if word.isdecimal() else NUMBERS.get(word, 1)
        every = (found["all"] or "").lower()
        out.append(Some(many, found.start(), found.end(), NUMBERS.get(every, 0), found["many"] is not None))
    return out


_ASKING = Pattern(r"\b(?:how|what|which)\b", re.I)
_NEXT_CLAUSE = Pattern(r"[,;:?!]|\.(?!\d)|\b(?:if|when|given|seeing|since|because)\b|\s[-\u2013\u2014]+\s", re.I)
_UNLIKE = Pattern(rf"\b(?:different|unequal|unlike|differ|thicker|thinner|heavier|denser|stronger|weaker|not (?:the same|identical|equal|alike|of the same)|(?:first|second|third|another|other) (?:one\b|of\b|{_THING}))\b|n't (?:the same|identical|equal|alike)\b", re.I)


def measured_and_asked(text: str) -> tuple[Some, Some] | None:
    """Of how many the readings are told, and of how many it is asked; None where one is not said, or they are not alike."""
    said, asking = spoken_of(text), list(_ASKING.finditer(text))
    if not said or not asking or _UNLIKE.search(text):
        return None
    begin = asking[-1].start()
    stop = _NEXT_CLAUSE.search(text, asking[-1].end())
    end = stop.start() if stop is not None else len(text)
    wanted = [s for s in said if begin <= s.start < end]
    told = [s for s in said if not begin <= s.start < end and (s.by_name or s.of or s.many > 1)]
    if len(wanted) != 1 or len({s.many for s in told}) > 1:
        return None
    if wanted[0].of and (not told or told[0].many == wanted[0].of):
        told = told or [Some(wanted[0].of, wanted[0].start, wanted[0].end)]
    return (told[0], wanted[0]) if told and told[0].many != wanted[0].many else None


def asks_of_one(text: str) -> bool:
    """Whether it is asked of one of several: "what does one of them take?", "how much is each?"."""
    asking = list(_ASKING.finditer(text))
    if not asking:
        return False
    stop = _NEXT_CLAUSE.search(text, asking[-1].end())
    wanted = [s for s in spoken_of(text) if asking[-1].start() <= s.start < (stop.start() if stop is not None else len(text))]
    return len(wanted) == 1 and wanted[0].many == 1
