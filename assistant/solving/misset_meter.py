"""A meter that stood at another speed than the film's: the aperture that would have been right."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_METER_AT = Pattern(r"\b(?:(?:meter|dial)(?:'s)?(?! (?:gives?|reads?|says)\b)|metered|measured|worked|reckoned)\b[^.?!;,\d]{0,32}\b(?:at|to|on|for|as)\s*(?:iso |asa |ei )?$", re.I)
_RIGHT = Pattern(r"\b(?:should (?:i|we|it) have|ought (?:i|we|it) to have|instead|would (?:have been|be) (?:right|correct)|(?:right|correct|proper) (?:aperture|f-?stop|f-?number|opening|one)|must i (?:really )?set|(?:really|in fact) (?:set|be|use))\b", re.I)
_ONLY = frozenset({"film_speed", "rated", "aperture", "shutter", "remark", "place"})


def opened(query: Query, ask: Ask) -> Solution | None:
    """"the meter stood at 800 with 200 film and gave f/11: what should I have set?": opened by what the film is slower."""
    speeds, read = [f for f in query.facts if f.quantity in ("film_speed", "rated") and f.origin == "said"], query.all("aperture")
    if len(speeds) != 2 or len(read) != 1 or not _RIGHT.search(query.text) or any(f.quantity not in _ONLY for f in query.facts if f.origin == "said"):
        return None
    told = _told_apart(speeds, query.text)
    if told is None:
        return None
    film, metered = told
    value = read[0].value * (film.value / metered.value) ** 0.5
    return Solution(answers=(marks.aperture(value),), used=tuple(query.facts), topic="film", notes=(f"The meter was {_off(film, metered)}.",))


_OWN = Pattern(r"film|roll|slide|neg|stock|load|box", re.I)


def _told_apart(speeds: list[Fact], text: str) -> tuple[Fact, Fact] | None:
    """The film's own speed and the meter's; by the word it was said with, since their places may have been changed."""
    metered = [f for f in speeds if _METER_AT.search(text[: _figure(f, text)])]
    own = [f for f in speeds if _OWN.search(f.said)]
    if len(metered) != 1 or len(own) > 1:
        return None
    film = own[0] if own else next(f for f in speeds if f is not metered[0])
    return film, next(f for f in speeds if f is not film)


def _figure(fact: Fact, text: str) -> int:
    """Where the figure itself begins: "metered at 800" may be read as one thing."""
    digits = re.search(r"\d", text[fact.start : fact.end])
    return fact.start + (digits.start() if digits else 0)


def _off(film: Fact, metered: Fact) -> str:
    stops = math.log2(metered.value / film.value)
    return f"set {speak_stops(abs(stops))} too {'fast' if stops > 0 else 'slow'} for the film"
