"""Signs that an amount was said and not read: "thurd power" answered at full power, "foor hundred film" at 100."""

from __future__ import annotations

import re

from assistant.language.lexicon import is_slip
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.solution import Solution

_SO_MUCH_POWER = Pattern(r"\b(?P<word>[a-z]{3,12})[ -](?:power|pwr|powr)\b", re.I)
_AMOUNTS = ("half", "halve", "full", "third", "quarter", "eighth", "sixteenth", "fourth", "minimal")
_VAGUE = frozenset({"minimum", "min", "lowest", "least", "low", "lower", "reduced", "weak", "weakest", "smallest", "partial", "ate", "some"})
"""Less than full, and nobody says how much; "ate" is heard where an eighth was said."""
_OTHER_WORDS = frozenset({"fill", "fall", "fell", "fuel", "hall", "hale", "halo", "hull", "fully"})
_HUNDREDS = Pattern(r"\b(?P<word>[a-z]{2,8})[ -]hundr[ei]d\b", re.I)


def amount_not_read(said: Query, whole: Query, found: Solution) -> bool:
    """Full power was taken, where a word stands before "power" that was meant for another one; or a word that nobody knows counts the hundreds."""
    power = _SO_MUCH_POWER.search(said.text)
    if power is not None and any(a.quantity == "power" for a in found.assumed) and _is_an_amount(power["word"].lower()):
        return True
    hundreds = _HUNDREDS.search(said.text)
    return hundreds is not None and hundreds["word"].lower() in said.unknown


def _is_an_amount(word: str) -> bool:
    """Whether a word is a slip for a share of the power, or says that it is less than full.

    >>> [_is_an_amount(word) for word in ("thurd", "minimum", "battery", "fill")]
    [True, True, False, False]
    """
    return word in _VAGUE or word not in _OTHER_WORDS and any(word != one and is_slip(word, one) for one in _AMOUNTS)
