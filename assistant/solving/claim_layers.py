"""Claims of several alike in the light: "three nets, each passing half the light: three stops", "two sheets at a stop each leave a quarter"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import record
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_words import number, plain, terms
from assistant.solving.solution import Solution

_MANY = Pattern(
    r"\b(?P<n>two|three|four|five|six|\d) (?:(?:thin|thick|identical|equal|such|of|the|my|those|these|same|white|of them) )*"
    r"(?!flash(?:es)?\b|heads?\b|pops?\b|lights?\b|guns?\b|strobes?\b|units?\b|lamps?\b|frames?\b|stops?\b|times\b)[a-z]+(?:s|silk|diffusion|net|cloth|paper|gel|scrim)\b|(?<!\d)\b(?P<again>twice|thrice)\b(?! (?:as|the|that|a|its)\b)"
)
_EACH = Pattern(r"\b(?:each|apiece|every one|either of them|twice|thrice|per (?:sheet|layer|thickness))\b")
_SHARE = Pattern(r"\b(?:(?:an?|one) )?(?P<share>half|third|quarter|eighth|sixteenth)\b(?! (?:an? )?stops?\b)(?: of)?(?: (?:the|its|my|all the))?(?: (?:flash|light))?|\b1/(?P<part>2|3|4|8|16|32|64)(?: of (?:the )?light)?\b")
_SHARES = {"half": 0.5, "third": 1 / 3, "quarter": 0.25, "eighth": 0.125, "sixteenth": 0.0625}
_SWALLOWED = Pattern(r"\b(?:eat\w*|swallow\w*|steal\w*|soak\w*|tak(?:es?|ing)|absorb\w*|los\w+|cost\w*|stop(?:s|ping) out|gone)\b")
_OTHER = Pattern(r"\b(?:push|pull|film|iso|faster|power|gn|guide|feet|foot|metres?|meters?|f ?/|1/\d{3,})\b")
_PART_OF_STOP = Pattern(r"\b(?:(?:two|2) thirds?|2/3|three quarters?|3/4)(?: of)?(?: an?)? stop\b")
_CLOSE = 0.1
_WORDS = {2.0: "Two", 3.0: "Three", 4.0: "Four", 5.0: "Five", 6.0: "Six"}


@record
class _Measure:
    """So much light in stops lost, and where it is said."""

    start: int
    end: int
    lost: float


def claim_of_layers(query: Query) -> Solution | None:
    """What so many alike take together, against the stops or the share that is said."""
    said = plain(query.text)
    each = _EACH.search(said)
    many = _MANY.search(said)
    if each is None or many is None or _OTHER.search(said):
        return None
    n = {"twice": 2.0, "thrice": 3.0}[many["again"]] if many["again"] else number(many["n"])
    measures = _measures(said)
    if len(measures) != 2 or n < 2:
        return None
    before = many["again"] is not None  # "half the light through, twice": it is of what was just said
    one, total = measures if before else sorted(measures, key=lambda m: min(abs(m.start - each.end()), abs(each.start() - m.end)))
    right = n * one.lost
    holds = abs(right - total.lost) < _CLOSE
    return Solution(answers=(Quantity("claim", holds), marks.stops(-right)), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {_WORDS.get(n, f'{n:g}')} times {speak_stops(one.lost)} are {speak_stops(right)}: 1/{2**right:.3g} of the light is left.")


def _measures(said: str) -> list[_Measure]:
    parts = [_Measure(m.start(), m.end(), 2 / 3 if "third" in m.group() or "/3" in m.group() else 0.75) for m in _PART_OF_STOP.finditer(said)]
    stops = parts + [_Measure(t.start, t.end, abs(t.doublings)) for t in terms(said) if t.quantity in ("stops", "filter") and not any(p.start < t.end and t.start < p.end for p in parts)]
    shares = [_share(said, m) for m in _SHARE.finditer(said) if not any(s.start < m.end() and m.start() < s.end for s in stops)]
    return sorted((*stops, *shares), key=lambda m: m.start)


def _share(said: str, found: re.Match[str]) -> _Measure:
    part = _SHARES[found["share"]] if found["share"] else 1 / float(found["part"])
    near = said[max(0, found.start() - 14) : found.start()] + " | " + said[found.end() : found.end() + 12]
    return _Measure(found.start(), found.end(), -math.log2(1 - part if _SWALLOWED.search(near) else part))
