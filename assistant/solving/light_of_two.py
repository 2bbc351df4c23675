"""The light of two set-ups: how many stops the one has more than the other, by all that is told of each.

Two flashes are weighed by guide number, power, distance and what hangs before them; two settings of a camera by
their marks; two readings the other way round, since a meter gives the larger number where there is more light.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving import set_ups
from assistant.solving.before_after import difference
from assistant.solving.claim_rules import keeps_together
from assistant.solving.set_ups import BARE, LOSSES, SetUps
from assistant.units import LENGTH

FLASH = frozenset({"guide_number", "distance", "power", "energy", "count", "film_speed", "power_down", *LOSSES})
_CAMERA = frozenset({"aperture", "shutter", "film_speed"})
_READING = frozenset({"exposure_value", "aperture", "shutter", "film_speed"})
_READ = Pattern(r"\b(?:key|fill|main|rim|hair|kicker|backdrop|background)(?: light)? (?:is|was|stands)(?: at)? f ?/ ?\d|\b(?:reads?|reading|meters?|metered|metering|measures?|measured|gives?|gave|shows?)\b(?: (?:me|us|about|only|at|of|is|was|just|off))* (?:f ?/? ?\d|1/\d)")
_FAST = Pattern(r"\b(?:fast(?:er)?|slow(?:er)?)\b")
OF_LIGHT = ("guide_number", "distance", "power", "energy", "count", "film_speed", "aperture", "magnification", "shutter")
TAKEN = ("loss", "filter_loss", "nd", "power_down")
_DEFAULT = {"power": 1.0, "count": 1.0}
_LEAST_KINDS = 2


def apart(query: Query, held: SetUps, said: str) -> float | None:
    """The stops that the one has more than the other; None where that is not known."""
    kinds = {f.quantity for f in (*held.one, *held.other, *held.shared)}
    if not held.one and not held.other or not (held.one and held.other) and BARE.search(held.words[1 if held.one else 0]) is None:
        return None  # of one of them nothing is told
    if {f.quantity for f in (*held.one, *held.other)} == {"nd"}:
        return None  # the stronger one lets less through
    if kinds <= _READING and ("exposure_value" in kinds or _READ.search(said)):
        return _of_readings(held)
    if kinds <= _CAMERA and len({f.quantity for f in (*held.one, *held.other)}) >= _LEAST_KINDS:
        return -sum(_apart(held, kind) for kind in kinds)
    if not kinds <= FLASH or {f.quantity for f in (*held.one, *held.other)} == {"film_speed"} and not _FAST.search(said) or "distance" in kinds and keeps_together(query.text) or set_ups.unknown_loss(query, held):
        return None
    return gained(held.shared, held.one, held.other)


def _apart(held: SetUps, kind: str) -> float:
    """The stops that a setting of the other puts on the film more than that of the one."""
    one, other = (next((f for f in held.of(side) if f.quantity == kind), None) for side in (0, 1))
    return difference(kind, one.value, other.value) if one is not None and other is not None else 0.0


def _of_readings(held: SetUps) -> float | None:
    """A meter gives a smaller opening and a shorter time where there is more light."""
    pairs = {f.quantity for f in held.one}
    if pairs != {f.quantity for f in held.other} or "film_speed" in pairs or "exposure_value" in pairs and len(pairs) > 1:
        return None
    values = {f.quantity: (f.value, next(o.value for o in held.other if o.quantity == f.quantity)) for f in held.one}
    if "exposure_value" in values:
        return values["exposure_value"][0] - values["exposure_value"][1]
    return sum(difference(kind, one, other) for kind, (one, other) in values.items())


def gained(shared: Sequence[Fact], one: Sequence[Fact], other: Sequence[Fact]) -> float | None:
    """The stops that the one puts on the film more than the other; None where a figure that the one has is told neither of the other nor of both."""
    total = sum(f.value for f in other if f.quantity in TAKEN) - sum(f.value for f in one if f.quantity in TAKEN)
    for quantity in OF_LIGHT:
        mine, theirs = (next((f for f in (*side, *shared) if f.quantity == quantity), None) for side in (one, other))
        if mine is None and theirs is None:
            continue
        if (mine is None or theirs is None) and quantity not in _DEFAULT:
            return None
        if quantity == "guide_number" and mine is not None and theirs is not None:
            if (mine.at_power is None) is not (theirs.at_power is None) or (mine.at_iso or 100.0) != (theirs.at_iso or 100.0):
                return None
            total += 2 * math.log2(_metres(mine, (*one, *shared)) / _metres(theirs, (*other, *shared))) + math.log2((mine.at_power or 1.0) / (theirs.at_power or 1.0))
        else:
            usual = _DEFAULT.get(quantity, 1.0)
            total += difference(quantity, theirs.value if theirs else usual, mine.value if mine else usual)
    return total


def _metres(guide: Fact, facts: Sequence[Fact]) -> float:
    """A guide number in metres; with no unit it is in that of its distance (contract 1)."""
    unit = guide.unit or next((f.unit for f in facts if f.quantity == "distance"), "")
    return guide.value * LENGTH.get(unit, 1.0)
