"""What was told of pops: how many, at what power, and which of several values a known one goes with."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.optics import bellows_factor_from_magnification
from assistant.query import Fact, Query
from assistant.solving.placing import times_as_far

POP_WORDS = ("pops", "flashes")


_AS_FAR = Pattern(r"\s*(?:the |that |its )?(?:distance|as far|further|farther)\b", re.I)
"""After "three times": how far, and no pops."""


def popped(query: Query) -> Fact | None:
    """The number of pops that was said, frames not counted."""
    found = [f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS and not (f.origin == "said" and _AS_FAR.match(query.text, f.end))]
    several = [f for f in found if f.value > 1]
    counted = several or found
    return counted[-1] if counted else None


def share(query: Query) -> tuple[float | None, Fact | None]:
    """The power asked about, as a fraction of full: the last one said that is not full, if any."""
    downs = [f for f in query.facts if f.quantity in ("power", "power_down") or f.quantity in ("stops", "signed") and (f.cue == "less" or f.unit == "-")]
    if not downs:
        return None, None
    values = [(f.value if f.quantity == "power" else 2.0 ** -abs(f.value), f) for f in downs]
    lower = [v for v in values if v[0] < 1]
    return (lower or values)[-1]


_OF_THE_CHARGE = Pattern(r"\s*(?:of )?(?:the |its |my )?(?:full )?(?:energy|charged?|capacity|joules|watt-?seconds)\b", re.I)


def said_twice(query: Query) -> bool:
    """"half charge, half the energy": one part of a charge in two words."""
    powers = query.all("power")
    return len({f.value for f in powers}) == 1 and all(_OF_THE_CHARGE.match(query.text[f.end :]) for f in powers)


_AT_IT = Pattern(r" (?:at|on|for|with) (?:about |only |just )?(?:an? )?", re.I)
""""at half power, 3 s at a quarter": between a figure and the power that it goes with, whatever stands before it."""


def own(known: Fact, facts: list[Fact], text: str = "") -> Fact:
    """Which of several powers a known value was said with: one from before the question, else the nearest in the text."""
    kept = [f for f in facts if f.origin != "said"]
    if kept and any(f.origin == "said" for f in facts):
        return kept[0]
    def asked(fact: Fact) -> bool:
        return bool(patterns.search(r"\b(?:what|how|and (?:at|for|on)|(?:i|we)'?ve|there'?s|now|then)\b|\?", text[min(fact.end, known.end) : max(fact.start, known.start)], re.I))

    beside = [f for f in facts if _AT_IT.fullmatch(text, known.end, f.start)]
    if len(beside) == 1 and known.end > known.start:
        return beside[0]
    return min(facts, key=lambda f: (asked(f), f.sentence != known.sentence, max(f.start - known.end, known.start - f.end)))


def apart(fact: Fact, other: Fact, text: str) -> int:
    """How far two figures stand from each other; another sentence or clause is far.

    >>> apart(Fact("energy", 200.0, end=6), Fact("aperture", 8.0, start=13, end=16), "200 Ws gives f/8")
    7
    """
    between = text[min(fact.end, other.end) : max(fact.start, other.start)]
    return len(between) + FAR * len(patterns.findall(r"[,;?!]|\.(?!\d)|\b(?:if|when|and|but|while|because|since|so)\b", between, re.I))


FAR = 100
"""What a clause between two figures counts, in letters."""


_EFFECTIVE = Pattern(r"\beffective\b", re.I)


def drawn_out(query: Query) -> bool:
    """Whether pops are asked for with a bellows drawn out to a scale that is told, and nothing else is."""
    return query.asks_for("count") and len(query.all("magnification")) == 1 and len(query.all("aperture")) == 2 and {f.quantity for f in query.facts} <= {"count", "aperture", "magnification", "remark", "place"} and _EFFECTIVE.search(query.text) is None


_OF_ROWS = ("front", "middle", "back")


def unclear_places(query: Query) -> bool:
    """More than two places, or two of which it is not said where the pop was read and where it is wanted."""
    places = query.all("distance")
    return len(places) > 1 and (len(places) > 2 or any(f.of in _OF_ROWS or f.of != places[0].of for f in places) or len({f.value for f in query.all("aperture")}) < 2)


def _fallen_off(query: Query, read: Fact) -> float:
    """The stops from the place where a pop was read to the other one: "f/5.6 at 2 m; I'm 4 m from the wall, how many for f/8?"."""
    places = query.all("distance")
    if len(places) < 2 and (times := times_as_far(query.with_facts(f for f in query.facts if f.quantity != "distance"))) is not None:
        return 2 * math.log2(times)  # "one pop gives f/11; with the flash twice as far off, how many for f/22?"
    if len(places) != 2 or any(f.value <= 0 for f in places):
        return 0.0
    kept = [f for f in places if f.origin != "said"]
    base = kept[0] if len(kept) == 1 else places[0] if kept else min(places, key=lambda f: apart(f, read, query.text))
    other = next(f for f in places if f is not base)
    return 2 * math.log2(other.value / base.value)


def lost_besides(query: Query, read: Fact | None = None) -> tuple[float, tuple[Fact, ...]]:
    """What a bellows, a filter or a diffuser takes on top of the aperture that is wanted, in stops."""
    factors = [f for f in query.facts if f.quantity == "factor" and f.value > 0]
    losses = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd")]
    drawn = query.all("magnification") if drawn_out(query) else []
    taken = sum(math.log2(f.value) for f in factors) + sum(f.value for f in losses) + sum(math.log2(bellows_factor_from_magnification(f.value)) for f in drawn)
    off = _fallen_off(query, read) if read is not None else 0.0
    return taken + off, (*factors, *losses, *drawn, *(query.all("distance") if off else ()))


_BY_EACH = Pattern(r"\s*(?:each|apiece|per (?:pop|flash|burst)|a (?:pop|piece|time))\b", re.I)
_EACH_OF = Pattern(r"\b(?:each|every one|any one|one) of (?:the |my |our |these |those )?$", re.I)


def is_of_each(query: Query, pops: Fact, read: Fact) -> bool:
    """Whether what was read is of one pop, though several are told: "8 pops at f/8 each", "each of 8 pops gives f/8"."""
    return _BY_EACH.match(query.text, read.end) is not None or _EACH_OF.search(query.text[: pops.start]) is not None


_READ_OF_IT = Pattern(r"\b(?:reads?|reading|gives?|gave|meters|metered|measures?|is|was|does|makes?|comes to|good for|worth|gets?)\b", re.I)
_AT_ANOTHER = Pattern(r"\b(?:full|what|how|want|need|for f)\b", re.I)


def power_that_was_read(query: Query, read: Fact) -> tuple[Fact, ...]:
    """"half power pops, one of those reads f/5.6": the power of every pop, the one that was read too, so that it changes nothing; none where the reading may be of another."""
    powers = query.all("power")
    if len(powers) != 1 or powers[0].value >= 1.0 or not powers[0].end <= read.start <= powers[0].end + 48 or " full" in query.text.lower():
        return ()
    between = query.text[powers[0].end : read.start]
    return (powers[0],) if _READ_OF_IT.search(between) and not _AT_ANOTHER.search(between) else ()
