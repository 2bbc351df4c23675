"""Whose each of two figures is, by the words beside them: "she meters f/11, the wall behind her f/5.6", "8 feet from the cox and 20 feet from the boat"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving.set_ups import named_in

_ENDS = Pattern(r"[;:?!]|[.,](?!\d)")
_BESIDE = Pattern(r"(?<=\w) (?:behind|beside|next to|near|beyond|past|in front of|left of|right of)\b", re.I)
"""What stands after it is not what the figure is of: "the wall behind her"."""
_SPAN = 60
_FROM_WHOM = Pattern(r"\s*(?:away |off |back )?(?:from|to) (?P<whom>(?:the|my|our|his|her|their|its|an?|this|that) (?!(?:\w+ )?(?:flash|light|lamp|head|strobe|gun|key|main|fill|camera|lens|softbox|umbrella|source)\b)[a-z]+(?: [a-z]+)?)", re.I)

_LAMP_IS_AT = Pattern(r"\b(?:flash|light|lamp|head|strobe|gun|key|main)(?: (?:is|was|stands|sits|goes|placed|set|up|at|about|only|some|just))* $", re.I)


def spoken_of(text: str, one: Fact, other: Fact) -> tuple[str, str]:
    """The words that name what the one figure is of, and those of the other.

    >>> spoken_of("piano 2 m from the flash, stall 3 m", Fact("distance", 2.0, start=6, end=9), Fact("distance", 3.0, start=32, end=35))
    ('piano ', ' stall ')
    """
    words = words_of_each(text, (one, other))
    return words[0], words[1]


def words_of_each(text: str, figures: Sequence[Fact]) -> list[str]:
    """The words that name what each of some figures is of, in their order: after them where they all stand so ("8 feet from the cox and 20 feet from the boat"), else before.

    After it too where only the lamp stands before it: "flash at 5 ft from the cox, and the stroke is 10 ft from the flash".
    """
    whom = [_FROM_WHOM.match(text, f.end) for f in figures]
    after = [m if m is not None and (None not in whom or _LAMP_IS_AT.search(text[max(0, f.start - _SPAN) : f.start])) else None for m, f in zip(whom, figures)]
    since = [0, *(m.end() if m is not None else f.end for m, f in zip(after, figures))]
    return [m["whom"].lower() if m is not None else _before(text, f, begins) for m, f, begins in zip(after, figures, since)]


def _before(text: str, fact: Fact, since: int) -> str:
    """The words that name what a figure is of: those before it in its clause, but for what it stands beside."""
    begins = max((m.end() for m in _ENDS.finditer(text, since, fact.start)), default=since)
    words = text[max(begins, fact.start - _SPAN) : fact.start]
    beside = _BESIDE.search(words)
    return (words[: beside.start()] if beside is not None else words).lower()


_IS_BRIGHTER = Pattern(r"\bhow (?:many stops|much) (?:is|are|will|would|does|do) (?P<who>[^?.;,]{2,40}?) (?:be |get |look |come out )?(?:brighter|hotter|stronger|more)\b", re.I)


_PARTED_BY = Pattern(r"\b(?:than|over|under|above|below|outshines?|compared (?:with|to)|against)\b(?:(?!\band\b)[^;:?!.])*$", re.I)
"""What parts the one that is asked of from the one that it is held against."""


def brighter_by_name(query: Query) -> bool | None:
    """"by how many stops is the bread stall brighter?": whether the one that is asked of stands nearer to the light; None where the words do not say which that is.

    It is the one that is named, or the one before "than": "how many stops darker is the bow at 8 feet than the cox at 4".
    """
    told = sorted(query.all("distance"), key=lambda f: f.start)
    if len(told) != 2:
        return None
    asked = _IS_BRIGHTER.search(query.text)
    named = named_in(asked["who"].lower(), spoken_of(query.text[: asked.start()], told[0], told[1])) if asked is not None else -1
    if named < 0 and _HOW_MUCH.search(query.text[: told[0].start]) and _PARTED_BY.search(query.text, told[0].end, told[1].start):
        named = 0
    return None if named < 0 else told[named].value <= told[1 - named].value


_HOW_MUCH = Pattern(r"\bhow (?:many stops|much|far)\b(?:(?!\b(?:moved?|if|when)\b)[^?.;])*$", re.I)


_PARTS = Pattern(r"[,;:?!]|[.](?!\d)|\b(?:but|then|now)\b", re.I)
"""What ends the clause that a reading stands in."""


def told_with(known: Fact, query: Query) -> tuple[Fact, ...]:
    """"at six feet and quarter power I get f/11": what the reading was taken at stays, where no other is told."""
    single = [query.all(q)[0] for q in ("power", "film_speed") if len(query.all(q)) == 1]
    return tuple(f for f in single if not _PARTS.search(query.text, min(f.end, known.end), max(f.start, known.start)))
