"""Lengths of all kinds: distances, paces, guide numbers, lenses, sizes of film and how fast a thing moves."""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant import patterns
from assistant.language.items import Item, has, item_of, negative, numbers_of, unit_of
from assistant.language.parsing import Node
from assistant.language.pieces import Number
from assistant.language.tokens import Token
from assistant.records import replace
from assistant.units import LENGTH

PACE_METRES = {"ft": 2.5 * LENGTH["ft"], "m": 0.75}  # common practice, no source
ARM_METRES = 0.6  # common practice, no source


def _length(node: Node) -> Item:
    unit = unit_of(node, "m")
    value = numbers_of(node)[0].value * LENGTH[unit]
    bad = "" if 0 < value < math.inf else "a distance must be more than nothing"
    return item_of("length", node, value, unit=unit, bad=bad)


def _negative_length(node: Node) -> Item:
    unit = unit_of(node, "m")
    return item_of("length", node, -numbers_of(node)[0].value * LENGTH[unit], unit=unit, bad="a distance cannot be negative")


def _one_length(node: Node) -> Item:
    unit = unit_of(node, "m")
    extra = sum(n.value for n in numbers_of(node))
    return item_of("length", node, (1 + extra) * LENGTH[unit], unit=unit)


def _length_more(node: Node) -> Item:
    unit = unit_of(node, "m")
    numbers = numbers_of(node)
    return item_of("length", node, (numbers[0].value if numbers else 1.0) * LENGTH[unit], unit=unit, word="again")


def _feet_and_inches(node: Node) -> Item:
    said = numbers_of(node)
    whole, part = (said[0], said[1]) if len(said) > 1 else (Number(1.0), said[0])
    units = [str(c.value) for c in node.children if isinstance(c, Token) and c.type == "LEN" and c.value in LENGTH]
    large = "m" if any(isinstance(c, Token) and c.type == "METER" for c in node.children) else units[0] if units else "ft"
    small = units[-1] if len(units) > 1 else "cm" if large == "m" else "in"
    return item_of("length", node, whole.value * LENGTH[large] + part.value * LENGTH[small], unit=large)


def _marked(unit: str) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        value = numbers_of(node)[0].value
        return item_of("length", node, value * LENGTH[unit], unit=unit, bad="" if value > 0 else "a distance must be more than nothing")

    return read


def _paces(node: Node) -> Item:
    arm = has(node, "ARM")
    many = numbers_of(node)[0].value if numbers_of(node) else 1.0
    return item_of("length", node, ARM_METRES if arm else many * PACE_METRES["ft"], unit="arm" if arm else "pace", estimate=True)


def _length_range(node: Node) -> Item:
    unit = unit_of(node, "m")
    low, high = (n.value * LENGTH[unit] for n in numbers_of(node)[:2])
    return item_of("length_range", node, low, other=high, unit=unit)


def _guide(node: Node) -> Item:
    number = numbers_of(node)[0]
    bad = "" if 0 < number.value < math.inf else "a guide number must be more than nothing"
    return item_of("guide_number", node, number.value, unit=unit_of(node), bad=bad, named=True)


def _guide_both(node: Node) -> Item:
    number = numbers_of(node)[0]
    return item_of("guide_number", node, number.top or 0.0, unit="m", named=True)


def _guide_pair(node: Node) -> Item:
    one, two = numbers_of(node)[:2]
    return item_of("guide_number_pair", node, one.value, other=two.value, unit=unit_of(node), named=True)


def _focal(node: Node) -> Item:
    value = numbers_of(node)[0].value / 1000
    return item_of("focal_length", node, value, unit="mm", bad="" if value > 0 else "a focal length must be more than nothing", named=True)


def _film_width(node: Node) -> Item:
    return item_of("format", node, numbers_of(node)[0].value, unit="35 mm" if numbers_of(node)[0].value == 35 else "")


def _format(node: Node) -> Item:
    """4x5, 6x7, 24x36: the name of the film format, spelled without spaces."""
    return item_of("format", node, 0.0, unit=patterns.sub(r"\s", "", str(node.children[0].value)))  # type: ignore[union-attr]


def _velocity(node: Node) -> Item:
    unit = next((str(c.value) for c in node.children if isinstance(c, Token) and c.type in ("VELOCITY", "LEN", "METER")), "m")
    return item_of("velocity", node, numbers_of(node)[0].value * LENGTH.get("m" if unit == "meter" else unit, 1.0), unit=unit)


SPEEDS = {"mph": 0.44704, "kmh": 1 / 3.6, "ms": 1.0, "fts": LENGTH["ft"]}


def _velocity_named(node: Node) -> Item:
    name = next((c for c in node.children if isinstance(c, Token) and c.type == "VELOCITY"), None)
    if name is None:
        return _velocity(node)
    return item_of("velocity", node, numbers_of(node)[0].value * SPEEDS[str(name.value)], unit="ft" if str(name.value) in ("mph", "fts") else "m")


LENGTHS: dict[str, Callable[[Node], Item]] = {
    "length": _length, "negative_length": _negative_length, "one_length": _one_length, "length_more": _length_more, "length_more_and": lambda node: replace(_one_length(node), word="again"),
    "feet_and_inches": _feet_and_inches, "feet": _marked("ft"), "inches": _marked("in"), "paces": _paces, "length_range": _length_range,
    "infinite_length": lambda node: item_of("length", node, math.inf, bad="that is no distance a light can be at"),
    "guide_number": _guide, "guide_number_in": _guide, "guide_number_both": _guide_both, "guide_number_pair": _guide_pair, "rated_number": _guide,
    "negative_guide_number": negative("guide_number", "a guide number"),
    "focal_length": _focal, "film_width": _film_width, "film_format": _format, "velocity": _velocity_named,
}
"""What reads each phrase of the grammar about lengths."""
