"""A figure that can be only one of the values told: 300 after 1000 microfarads and 330 volts, 60 per cent after the part of a charge."""

from __future__ import annotations

import math

from assistant.memory.in_place_of import AMOUNT_ALONE
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
