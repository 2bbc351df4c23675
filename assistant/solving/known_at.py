"""A figure that is known at one power and asked at another: which of the powers told it goes with.

"It puts out 50 Ws at 1/16: what at full?", "at half power a charge lasts 300 pops: how many at an
eighth?": the one that stands by the figure is the one it was told for, wherever the other is.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving.pop_facts import own

_ASKS = Pattern(r"\b(?:what|which|how (?:much|many|long|often))\b", re.I)
_WHOLE = Pattern(r"[^?.]*\b(?:full(?:y|-power)?|in all|altogether|whole|holds?|stores?|capacity|flat out|maximum|total)\b", re.I)
_OF_THE_PACK = Pattern(r" of (?:the|its|my|a) (?:pack|generator|unit|whole|total|capacity)\b", re.I)
_PACK_ASKED = Pattern(r"[^?.]*\b(?:pack|generator|unit|whole|total)\b(?!'s share)", re.I)
""""A fifth of the pack. What is the pack?": the whole by its part."""
_CONDITION = Pattern(r"\b(?:if|when|since|because|where|given)\b", re.I)


def _part(fact: Fact) -> float:
    """The share of full power that a fact says, or nothing."""
    if fact.quantity == "power":
        return fact.value
    down = fact.quantity == "power_down" or fact.quantity in ("stops", "signed", "relation") and (fact.cue == "less" or fact.unit == "-")
    return 2.0 ** -abs(fact.value) if down else 0.0


def told_and_asked(query: Query, known: Fact) -> tuple[float, float, tuple[Fact, ...]] | None:
    """The power a known figure was told for, the one it is asked for, and the facts that say so; None where but one of them is told."""
    parts = [f for f in query.facts if 0 < _part(f) <= 1]
    lower = sorted({_part(f) for f in parts if _part(f) < 1})
    if len(lower) == 1 and (base := next(f for f in parts if _part(f) < 1)) and _asked_of_the_whole(query, known, base):
        return _part(base), 1.0, tuple(parts)
    parts = [f for f in parts if f.quantity == "power"]
    if len({f.value for f in parts}) != 2:
        return None
    base = own(known, parts, query.text)
    asked = next(_part(f) for f in reversed(parts) if _part(f) != _part(base))
    return _part(base), asked, tuple(parts)


def _asked_of_the_whole(query: Query, known: Fact, base: Fact) -> bool:
    """Whether what is told stands together at a part of full power, and what is asked is the whole."""
    if not known.origin == base.origin == "said" or any(f.quantity == "count" and f.value > 1 and f is not known for f in query.facts):
        return False
    first, last = min(known.start, base.start), max(known.end, base.end)
    asks = [m.start() for m in _ASKS.finditer(query.text)]
    if len(asks) != 1 or first < asks[0] < last or asks[0] < first and not _CONDITION.search(query.text[asks[0] : first]):
        return False
    return _WHOLE.match(query.text if asks[0] > last else query.text[:first], asks[0]) is not None or _OF_THE_PACK.match(query.text, base.end) is not None and _PACK_ASKED.match(query.text, asks[0]) is not None


_TOO_SHORT_FOR_A_SHUTTER = 1 / 600
_LENGTHS_OF_A_FLASH = ("duration", "t05", "t01")


def of_the_power_asked(query: Query) -> tuple[Fact, ...]:
    """"1/800 s at full, 1/12800 at a sixteenth; at the sixteenth, how far does it move": the duration of the power that is said again, with the others and the powers; nothing where none is."""
    lengths = [f for f in query.facts if f.quantity in _LENGTHS_OF_A_FLASH]
    lengths += [f for f in query.facts if f.quantity == "shutter" and len(lengths) == 1 and f.value < _TOO_SHORT_FOR_A_SHUTTER]
    powers = [f for f in query.facts if f.quantity == "power"]
    if len({f.value for f in lengths}) != 2 or len(lengths) != 2 or len({f.value for f in powers}) != 2 or len(powers) != 3:
        return ()
    first, last = min(f.start for f in lengths), max(f.end for f in lengths)
    told = sorted(powers, key=lambda f: f.start)
    asked = told[-1] if told[-1].start > last and told[1].start <= last + 40 else told[0] if told[0].end < first else None
    if asked is None:
        return ()
    rest = [f for f in told if f is not asked]
    if rest[0].value == rest[1].value:
        return ()
    ordered = sorted(lengths, key=lambda f: f.start)
    before = all(p.end <= d.start for p, d in zip(rest, ordered)) and rest[1].start >= ordered[0].end
    after = all(d.end <= p.start for p, d in zip(rest, ordered)) and rest[0].end <= ordered[1].start
    mixed = [own(d, rest, query.text) for d in ordered]
    pairs = dict(zip((p.value for p in rest), ordered)) if before or after else {p.value: d for p, d in zip(mixed, ordered)}
    chosen = pairs.get(asked.value)
    return (chosen, *(f for f in lengths if f is not chosen), *powers) if chosen is not None and len(pairs) == 2 else ()


def power_of(query: Query, brief: Fact) -> tuple[Fact, ...]:
    """The one power that a flash's duration is told for, "1/500 s at full power": it is in the duration already."""
    powers = [f for f in query.facts if f.quantity == "power"]
    beside = len(powers) == 1 and powers[0].origin == brief.origin and brief.quantity not in ("shutter", "time")
    return tuple(powers) if beside and _FOR_IT.fullmatch(query.text, *sorted((min(powers[0].end, brief.end), max(powers[0].start, brief.start)))) else ()


_FOR_IT = Pattern(r"(?: ?(?:s|sec|seconds?))?,? ?(?:(?:at|on|with|for|is|it's|gives|lasts|it lasts|the (?:flash|duration|pulse)|duration|of|,) )*", re.I)
