"""What a figure is by the values told before: 300 after 1000 microfarads and 330 volts, 60 per cent after the part of a charge, a length that no lens has."""

from __future__ import annotations

import math
import re

from assistant.memory.conversation import Conversation
from assistant.memory.in_place_of import AMOUNT_ALONE
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_SIZED = frozenset({"count", "voltage", "capacitance", "energy", "velocity", "years", "capacity", "draw"})
_ABOUT, _FAR_FROM = 2.0, 2.5
"""How many times as large a bare figure may be as the one it takes the place of, and by how much all the others must differ from it."""


def of_its_size(mine: Fact, told: list[Fact]) -> list[Fact]:
    """"only gets to 300" after "1000 microfarads charged to 330 volts": the volts, which alone are of that size."""
    told = [f for f in told if f.quantity != "power"]
    figures = [(f, _times(mine.value, float(said[0]))) for f in told if len(said := AMOUNT_ALONE.findall(f.said)) == 1 and float(said[0]) > 0]
    near = [f for f, times in figures if times <= _ABOUT]
    alone = len(near) == 1 and len(figures) == len(told) and near[0].quantity in _SIZED and all(f is near[0] or times > _FAR_FROM for f, times in figures)
    return near if alone else []


def _times(one: float, other: float) -> float:
    return max(one / other, other / one) if one > 0 else math.inf


def as_a_part_of_the_charge(mine: Fact, query: Query, last: Query) -> Fact:
    """"and if only 60 per cent reaches it?", after what part of a charge reaches the tube: another part, and no power."""
    return replace(mine, quantity="charge_share", of="") if last.has("charge_share") and mine.quantity in ("power", "share") and mine.unit == "%" and "power" not in query.text.lower() else mine


_AT = Pattern(r"\b(?:at|from|to)\W*$", re.I)


def as_a_place(mine: Fact, query: Query, talk: Conversation, last: Query) -> Fact:
    """"and at 300 mm?" after "a 100 mm lens, a beetle 600 mm in front of it: what magnification?": where it is put, and no other lens."""
    placed = [f for f in last.facts if f.quantity == "focus_distance" and f.unit == mine.unit]
    if mine.quantity != "focal_length" or len(placed) != 1 or "lens" in query.text.lower() or any(f.quantity == "focal_length" and f.value >= mine.value for f in last.facts):
        return mine
    goes_on = talk.changed is not None and talk.changed.quantity == "focus_distance"
    return replace(mine, quantity="focus_distance") if goes_on or _AT.search(query.text[: mine.start]) else mine
