"""Places said in short: "both at the same five feet", and rows named by how far off they are, "the 13 foot one"."""

from __future__ import annotations

import re

from assistant.language.number_words import SMALL
from assistant.patterns import Pattern

_UNIT = r"(?:feet|foot|ft|met(?:re|er)s?|m)\b"
_FIGURE = r"(?:\d+(?:\.\d+)?|(?:two|three|four|five|six|seven|eight|nine|ten|twelve)(?: and a half)?)"
_TWO_ALIKE = Pattern(r"\b(?:key|main|fill)(?: light)?(?:,| and| or|&)+ (?:the )?(?:fill|key|main)\b", re.I)
_THE_SAME = Pattern(rf"(?P<of> of)?,? (?:both )?(?:at|from|on|off) the same (?P<place>{_FIGURE}[ -]?{_UNIT})", re.I)


def _both_there(said: str) -> str:
    """"key and fill are the same flash at the same five feet": both of them stand there."""
    return _THE_SAME.sub(r", both at \g<place>", said, 1) if _TWO_ALIKE.search(said) else said


_ROWS = Pattern(rf"\b(?:rows?|ranks?|tiers?|lines)\b[^.?!\d]{{0,24}}(?P<places>{_FIGURE}(?: ?{_UNIT})?(?:(?:,| and|, and) {_FIGURE}(?: ?{_UNIT})?){{1,2}})(?=[^\d])", re.I)
_BY_PLACE = Pattern(rf"\b(?P<the>the|that) (?P<place>{_FIGURE})[ -]?(?:foot(?:er)?|feet|ft|met(?:re|er)|m)(?:er)?(?: (?P<what>row|rank|tier|line|one|lot|people|kids))\b", re.I)
_NAMES = {2: ("front", "back"), 3: ("front", "middle", "back")}


def _figure(figure: str) -> float:
    """The figure of a place, in words or in figures.

    >>> _figure("13"), _figure("ten"), _figure("two and a half")
    (13.0, 10.0, 2.5)
    """
    whole = figure.lower().removesuffix(" and a half")
    return float(SMALL.get(whole) or whole) + 0.5 * (whole != figure.lower())


def _row_by_place(said: str) -> str:
    """"rows at 9, 11 and 13 feet … the 13 foot one": the back row, where each is as far off as one that was told."""
    told = _ROWS.search(said)
    if told is None:
        return said
    places = [_figure(m[0]) for m in re.finditer(_FIGURE, told["places"], re.I)]
    names = _NAMES.get(len(places)) if places == sorted(set(places)) else None
    named = [_figure(m["place"]) for m in _BY_PLACE.finditer(said, told.end())]
    if names is None or not named or not all(place in places for place in named):
        return said
    return said[: told.end()] + _BY_PLACE.sub(lambda m: f"{m['the']} {names[places.index(_figure(m['place']))]} row", said[told.end() :])


def with_places_named(said: str) -> str:
    """The text with each place under its usual name.

    >>> with_places_named("rows at 9 and 13 feet. I expose for the 9 foot row. How far under is the 13 foot one?")
    'rows at 9 and 13 feet. I expose for the front row. How far under is the back row?'
    >>> with_places_named("key and fill are the same flash at the same five feet. What power on the fill?")
    'key and fill are the same flash, both at five feet. What power on the fill?'
    """
    if " the same " in said:
        said = _both_there(said)
    return _row_by_place(said) if _BY_PLACE.may_match(said) and _BY_PLACE.search(said) else said
