"""So many grey filters: "two ND4s", "a pair of ND 0.6", "three one-stop NDs"; and "two ND filters, a 0.6 and a 0.9", which only counts them.

A number before "ND" is a strength ("a 0.9 ND"), but a small whole one before a plural or before a marking says how many.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.number_words import STOPS_SPOKEN
from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density, stops_from_factor
from assistant.query import Fact
from assistant.records import replace

_MANY = r"\b(?P<many>two|three|four|both|a pair of|a couple of|[234](?= ?x\b| times| nd| [^\d\s]))(?: ?x\b| times)?(?: (?:of (?:the|my|those|these)|my|the|the same|identical|equal|stacked|such))*"
_EACH = Pattern(rf"{_MANY} (?:nd|neutral density)[ -]?(?P<mark>\d+(?:\.\d+)?)s?(?: (?:filters?|glasses))?\b", re.I)
_EACH_BEFORE = Pattern(rf"{_MANY} (?:(?P<density>0?\.\d+)|(?P<stops>one|two|three|four|\d)[- ]stop) (?:nds|nd filters|neutral density filters)\b", re.I)
_ONLY_COUNTED = Pattern(rf"{_MANY} (?:nds|(?:nd|neutral density) (?:filters|glasses))\b(?! ?(?:of )?[\d.])", re.I)
_HOW_MANY = {"two": 2, "both": 2, "a pair of": 2, "a couple of": 2, "three": 3, "four": 4, "2": 2, "3": 3, "4": 4}


KINDS = frozenset({"nd", "camera_filter"})
_ONE_OF = Pattern(r" (?:of (?:(?:a |an )?(?:density|factor|strength|grade) )?(?:\d|\.\d|one\b|two\b|three\b|four\b)|(?:with|marked|rated|engraved|that|which|for|on)\b)", re.I)
"""After "plus one": another filter, and no stop."""


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with each of so many equal filters told by itself, and no filter made of their mere number."""
    out = [f for f in facts if not (f.quantity == "signed" and f.said.lower() == "plus one" and _ONE_OF.match(text, f.end))]  # "density 0.6 plus one of density 0.3"
    for match in (*_EACH.finditer(text), *_EACH_BEFORE.finditer(text)):
        made = [Fact("nd", _strength(match), "stops", "camera", start=match.start() + n, end=match.end(), said=match.group()) for n in range(_HOW_MANY[match["many"].lower()])]
        out = [*_outside(out, match), *made]
    for match in _ONLY_COUNTED.finditer(text):
        if any(f.quantity in ("nd", "number", "stops", "aperture") and f.start >= match.end() and 0 < f.value <= 6 for f in out):
            out = _outside(out, match)
    return _named_again(sorted(out, key=lambda f: f.start), text)


_THE_SAME = Pattern(r"\b(?:the|that|this|my|its)(?: same)? $", re.I)


def _named_again(facts: list[Fact], text: str) -> list[Fact]:
    """"1/60 without the ND8; what time with the ND8?": one filter, named twice."""
    out: list[Fact] = []
    for fact in facts:
        again = fact.quantity == "nd" and any(f.quantity == "nd" and f.value == fact.value and f.end <= fact.start for f in out) and _THE_SAME.search(text[max(0, fact.start - 12) : fact.start])
        out.append(replace(fact, quantity="remark") if again else fact)
    return out


def _outside(facts: Sequence[Fact], match: re.Match[str]) -> list[Fact]:
    return [f for f in facts if not (f.start < match.end() and f.end > match.start())]


def _strength(match: re.Match[str]) -> float:
    """Stops that one of them takes: of its factor, of its density, or as told."""
    told = match.groupdict()
    if told.get("stops"):
        return STOPS_SPOKEN.get(told["stops"].lower()) or float(told["stops"])
    value = float(told.get("density") or told["mark"])
    return stops_from_density(value) if value < 1 or value != int(value) and value < 5 else stops_from_factor(value)
