"""One more told by its number: "and a third?", "a fourth one", where so many less one are known. It is no part of a stop or of full power then."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.patterns import Pattern
from assistant.query import Fact

_NUMBERS = {"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8}
NTH = Pattern(
    r"\b(?:a|the) (?P<nth>second|third|fourth|fifth|sixth|seventh|eighth)(?P<noun> (?:one|flash|light|head|gun|strobe|lamp|unit|flashgun|speedlight|pop|burst|layer|sheet|piece|scrim|net|silk|gel|cloth|filter))?"
    r"(?=\W*$|\W+(?:at|in|on|to|too|as well|the same|same|with|there|beside|next|just|like|over|behind)\b)", re.I)


def nth_told(text: str, have: float) -> int | None:
    """How many there are with the one that is told by its number; `have`: how many were known before.

    >>> nth_told("and a fourth?", 3), nth_told("and a third one, the same as those?", 1), nth_told("and a fourth?", 1)
    (4, 3, None)
    """
    found = NTH.search(text)
    if found is None:
        return None
    many = _NUMBERS[found["nth"].lower()]
    return many if many == have + 1 and (found["noun"] or many > 2) or found["noun"] and many > have else None


def without_it(facts: Iterable[Fact], text: str) -> tuple[Fact, ...]:
    """The facts but for the part of something that its number was read as."""
    found = NTH.search(text)
    return tuple(f for f in facts if found is None or not (f.start < found.end() and f.end > found.start()))
