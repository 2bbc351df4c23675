"""Signs that an amount was said and not read: "thurd power" answered at full power, "foor hundred film" at 100."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.solution import Solution

_SO_MUCH_POWER = Pattern(r"\b(?P<word>[a-z]{3,12})[ -](?:power|pwr|powr)\b", re.I)
_MISTYPED = Pattern(r"(?:h[ae]*a?l+[fv]+e?|ha[fv]+e?|full+|fu[l]|th?[eiu]+rd?|th[a-z]r?d|fo[ur]*th|qu?[a-z]{0,2}t+e?r+|ei[gh]*th?|[ae]i?th|si[xk]+t?e+n+th)", re.I)
"""A share of the power, one letter or two away from how it is written."""
_RIGHT = frozenset({"half", "halve", "full", "third", "fourth", "quarter", "eighth", "sixteenth", "hale"})
_VAGUE = frozenset({"minimum", "min", "lowest", "least", "low", "lower", "reduced", "weak", "weakest", "smallest", "partial", "ate", "some"})
"""Less than full, and nobody says how much; "ate" is heard where an eighth was said."""
_HUNDREDS = Pattern(r"\b(?P<word>[a-z]{2,8})[ -]hundr[ei]d\b", re.I)


_TAKES = Pattern(r"\b(?:takes|eats|costs|loses|robs|swallows|steals|drinks|soaks up) (?:about |roughly |me |us )*(?P<much>one|two|three|four|half|\d(?:\.\d+)?)\b", re.I)


_SO_MUCH_UNDER = Pattern(r"\b(?:want|wants|wanted|flash|fill|it|room|sky|ambient|background) (?:\w+ )?(?:one|two|three|half|a third|two thirds) (?:under|over)\W*$", re.I)
_STOPS = frozenset({"stops", "relation", "loss", "push", "filter_loss", "signed", "ev_stops"})
"""So much under, said last and without its stops."""


def amount_not_read(said: Query, whole: Query, found: Solution) -> bool:
    """Full power was taken, where a word stands before "power" that was meant for another one; or a word that nobody knows counts the hundreds."""
    power = _SO_MUCH_POWER.search(said.text)
    if power is not None and any(a.quantity == "power" for a in found.assumed) and _is_an_amount(power["word"].lower()):
        return True
    if _SO_MUCH_UNDER.search(said.text) and found.topic != "bracket" and not any(f.quantity in _STOPS for f in whole.facts):
        return True
    taken = _TAKES.search(said.text)
    if taken is not None and taken["much"] in said.unplaced and not any(f.quantity in _STOPS for f in found.used):
        return True  # "… box takes two", and two of what was not read
    hundreds = _HUNDREDS.search(said.text)
    return hundreds is not None and hundreds["word"].lower() in said.unknown


def _is_an_amount(word: str) -> bool:
    """Whether a word is a slip for a share of the power, or says that it is less than full.

    >>> [_is_an_amount(word) for word in ("thurd", "minimum", "battery", "fill")]
    [True, True, False, False]
    """
    return word in _VAGUE or word not in _RIGHT and _MISTYPED.fullmatch(word) is not None
