"""Items: each phrase of the grammar becomes one quantity in the units of the trade.

Lengths are in metres, times in seconds, powers fractions of full; the unit that was said is
kept beside the value. A value that cannot be (a negative distance, a power above full) is
kept with the reason, so that the reply can say what was wrong.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from assistant import patterns
from assistant.language.parsing import Node, Part
from assistant.language.pieces import Number
from assistant.language.tokens import Token
from assistant.records import record, replace
from assistant.scales import is_aperture_mark, is_film_speed_mark, iso_from_din
from assistant.units import LENGTH

PACE_METRES = {"ft": 2.5 * LENGTH["ft"], "m": 0.75}  # common practice, no source
ARM_METRES = 0.6  # common practice, no source


@record
class Item:
    """One quantity, name, cue or word of a question, with its place in the text.

    kind: what it is ("length", "aperture", "cue", "role", "name", "word", …).
    word: for names, cues, roles and words: which. unit: the unit said.
    other: the second number of a range or pair. bad: why the value cannot be.
    """

    kind: str
    start: int
    end: int
    value: float = math.nan
    unit: str = ""
    word: str = ""
    other: float = math.nan
    bad: str = ""
    estimate: bool = False
    named: bool = False  # the quantity's own name was said with it


def _numbers(node: Node) -> list[Number]:
    return [c.value for c in node.children if isinstance(c, Token) and isinstance(c.value, Number)]


def _unit(node: Node, default: str = "") -> str:
    for child in node.children:
        if isinstance(child, Token):
            if child.type == "LEN":
                return str(child.value)
            if child.type == "FOOT_MARK":
                return "ft"
            if child.type == "METER":
                return "m"
            if child.type == "MM":
                return "mm"
    return default


def _has(node: Node, *types: str) -> bool:
    return any(isinstance(c, Token) and c.type in types for c in node.children)


def _item(kind: str, node: Node, value: float, **more: object) -> Item:
    return Item(kind, node.start, node.end, value, **more)  # type: ignore[arg-type]


def _mark_value(number: Number) -> float:
    """An f-number as said: "five six" is 5.6, "eight and a half" half a stop past 8."""
    if number.pair is not None and is_aperture_mark(number.pair):
        return number.pair
    if number.whole and number.part:
        return float(number.whole * 2 ** (number.part / 2))
    return number.value


def _length(node: Node) -> Item:
    unit = _unit(node, "m")
    value = _numbers(node)[0].value * LENGTH[unit]
    bad = "" if 0 < value < math.inf else "a distance must be more than nothing"
    return _item("length", node, value, unit=unit, bad=bad)


def _negative_length(node: Node) -> Item:
    unit = _unit(node, "m")
    return _item("length", node, -_numbers(node)[0].value * LENGTH[unit], unit=unit, bad="a distance cannot be negative")


def _one_length(node: Node) -> Item:
    unit = _unit(node, "m")
    extra = sum(n.value for n in _numbers(node))
    return _item("length", node, (1 + extra) * LENGTH[unit], unit=unit)


def _length_more(node: Node) -> Item:
    unit = _unit(node, "m")
    numbers = _numbers(node)
    return _item("length", node, (numbers[0].value if numbers else 1.0) * LENGTH[unit], unit=unit, word="again")


def _feet_and_inches(node: Node) -> Item:
    said = _numbers(node)
    whole, part = (said[0], said[1]) if len(said) > 1 else (Number(1.0), said[0])
    units = [str(c.value) for c in node.children if isinstance(c, Token) and c.type == "LEN" and c.value in LENGTH]
    large = "m" if any(isinstance(c, Token) and c.type == "METER" for c in node.children) else units[0] if units else "ft"
    small = units[-1] if len(units) > 1 else "cm" if large == "m" else "in"
    return _item("length", node, whole.value * LENGTH[large] + part.value * LENGTH[small], unit=large)


def _marked(unit: str) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        value = _numbers(node)[0].value
        return _item("length", node, value * LENGTH[unit], unit=unit, bad="" if value > 0 else "a distance must be more than nothing")

    return read


def _paces(node: Node) -> Item:
    arm = _has(node, "ARM")
    many = _numbers(node)[0].value if _numbers(node) else 1.0
    return _item("length", node, ARM_METRES if arm else many * PACE_METRES["ft"], unit="arm" if arm else "pace", estimate=True)


def _length_range(node: Node) -> Item:
    unit = _unit(node, "m")
    low, high = (n.value * LENGTH[unit] for n in _numbers(node)[:2])
    return _item("length_range", node, low, other=high, unit=unit)


def _guide(node: Node) -> Item:
    number = _numbers(node)[0]
    bad = "" if 0 < number.value < math.inf else "a guide number must be more than nothing"
    return _item("guide_number", node, number.value, unit=_unit(node), bad=bad, named=True)


def _guide_both(node: Node) -> Item:
    number = _numbers(node)[0]
    return _item("guide_number", node, number.top or 0.0, unit="m", named=True)


def _guide_pair(node: Node) -> Item:
    one, two = _numbers(node)[:2]
    return _item("guide_number_pair", node, one.value, other=two.value, unit=_unit(node), named=True)


def _negative(kind: str, what: str) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        return _item(kind, node, -_numbers(node)[0].value, unit=_unit(node), bad=f"{what} cannot be negative", named=True)

    return read


def _power_bad(value: float) -> str:
    if not math.isfinite(value):
        return "a power cannot be divided by nothing"
    if value <= 0:
        return "a power must be more than nothing"
    return "a flash cannot give more than full power" if value > 1 else ""


def _share(node: Node) -> float:
    number = _numbers(node)[0]
    hundredth = 0.01 if _has(node, "PERCENT", "PERCENT_WORD") else 1.0
    return number.value * hundredth


def _power(node: Node) -> Item:
    value = _share(node)
    return _item("power", node, value, bad=_power_bad(value), named=_has(node, "POWER", "FULL", "POP"))


def _bare_power(node: Node) -> Item:
    value = _share(node)
    if _has(node, "PERCENT", "PERCENT_WORD"):
        return _item("power", node, value, bad=_power_bad(value), unit="%")
    number = _numbers(node)[0]
    return _item("share", node, value, bad=_power_bad(value) if number.bottom == 0 else "", unit=f"{number.bottom or 0:g}")


def _full(node: Node) -> Item:
    return _item("power", node, 1.0, named=_has(node, "POWER", "POP"), unit="full")


def _power_shifted(sign: int) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        base, step = _numbers(node)[:2]
        if _has(node, "AND") and not _has(node, "STOP") and not 0.3 < step.value % 1 < 0.7 or (_has(node, "AND") and step.value == 0.5):
            return _item("power_pair", node, base.value, other=step.value, bad=_power_bad(base.value))
        value = base.value * 2.0 ** (sign * step.value)
        return _item("power", node, value, bad=_power_bad(value), named=True)

    return read


def _simple(kind: str, unit: str = "", scale: float = 1.0, bad_at_zero: str = "") -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        value = next((n.value for n in _numbers(node)), 1.0) * scale  # "a hertz" is one
        bad = bad_at_zero if bad_at_zero and not 0 < value < math.inf else ""
        return _item(kind, node, value, unit=unit, bad=bad, named=len(node.children) > 1)

    return read


def _count(node: Node) -> Item:
    number = _numbers(node)[0].value
    noun = next(str(c.value) for c in node.children if isinstance(c, Token) and c.type == "COUNTED")
    whole = number == int(number) if math.isfinite(number) else False
    bad = "" if number > 0 and whole else "a number of flashes must be one or more"
    return _item("count", node, number, word=noun, bad=bad)


def _pair(node: Node) -> Item:
    many = next(float(str(c.value)) for c in node.children if isinstance(c, Token) and c.type == "PAIR")
    return _item("count", node, many, word="flashes")


def _aperture(node: Node) -> Item:
    value = _mark_value(_numbers(node)[0])
    bad = "" if 0 < value < math.inf else "an f-number must be more than nothing"
    return _item("aperture", node, value, bad=bad, named=_has(node, "APERTURE"))


def _aperture_shifted(sign: int) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        base, step = _numbers(node)[:2]
        return _item("aperture", node, _mark_value(base) * 2.0 ** (sign * step.value / 2))

    return read


def _aperture_two(kind: str) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        one, two = (_mark_value(n) for n in _numbers(node)[:2])
        if kind == "aperture":
            beside = 0 < one < two and 2 * math.log2(two / one) < 1.2
            if not _has(node, "F") and not beside:
                return _item("number_range", node, one, other=two)  # "between 1 and 10 seconds"
            return _item("aperture", node, math.sqrt(one * two), other=two)
        return _item(kind, node, one, other=two)

    return read


def _film_speed(node: Node) -> Item:
    number = _numbers(node)[0]
    value = number.top if number.bottom and number.top and number.top > 10 else number.value
    if number.spoken and number.pair and is_aperture_mark(number.pair) and not is_film_speed_mark(value) and not _has(node, "ISO", "FILM_SPEED", "SPEED_WORD"):
        return _item("aperture", node, number.pair)  # "a good neg at five six"
    bad = "" if 0 < value < math.inf else "a film speed must be more than nothing"
    return _item("film_speed", node, value, bad=bad, named=_has(node, "ISO", "FILM_SPEED", "FILM", "SPEED_WORD"))


def _din(node: Node) -> Item:
    degrees = _numbers(node)[-1].value
    if _has(node, "ISO"):
        degrees = _numbers(node)[0].value
    return _item("film_speed", node, iso_from_din(degrees) if abs(degrees) < 80 else math.nan, unit="DIN", other=degrees, named=True,
                 bad="" if abs(degrees) < 80 else "no film has that many degrees")


OLD_SCALES = {"GOST": 1 / 0.9, "Weston": 1 / 0.8}
"""ISO arithmetic for one degree of an old scale; values from memory, no source to hand."""


def _old_scale(node: Node) -> Item:
    name = next(str(c.value) for c in node.children if isinstance(c, Token) and c.type == "OLD_SCALE")
    number = _numbers(node)[0].value
    return _item("film_speed", node, number * OLD_SCALES[name], unit=name, other=number, named=True, bad="" if number > 0 else "a film speed must be more than nothing")


def _shutter_bad(value: float) -> str:
    return "" if 0 < value < math.inf else "a shutter time must be more than nothing"


def _shutter(node: Node) -> Item:
    value = _numbers(node)[0].value
    return _item("shutter", node, value, bad=_shutter_bad(value), named=_has(node, "SHUTTER", "SEC"))


def _time(node: Node) -> Item:
    value = _numbers(node)[0].value
    return _item("time", node, value, unit="s", bad=_shutter_bad(value), named=_has(node, "SHUTTER"))


def _shutter_number(node: Node) -> Item:
    value = _numbers(node)[0].value
    if value > 1 and value != int(value) and is_aperture_mark(value):
        return _item("aperture", node, value)  # "what shutter at 2.8"
    seconds = 1 / value if value > 1 else value
    return _item("shutter", node, seconds, bad=_shutter_bad(seconds), named=True)


def _sync_number(node: Node) -> Item:
    value = _numbers(node)[0].value
    return _item("sync", node, 1 / value if value > 1 else value, bad="" if value > 0 else "a sync speed must be more than nothing", named=True)


def _minutes(node: Node) -> Item:
    numbers = _numbers(node)
    whole = 1.0 if _has(node, "AND") and len(numbers) == 1 else 0.0
    return _item("time", node, 60.0 * (whole + (sum(n.value for n in numbers) or 1.0)), unit="min")


def _minutes_seconds(node: Node) -> Item:
    numbers = [n.value for n in _numbers(node)]
    minutes = numbers[0] if len(numbers) == 2 else 1.0
    return _item("time", node, 60.0 * minutes + numbers[-1], unit="min")


def _focal(node: Node) -> Item:
    value = _numbers(node)[0].value / 1000
    return _item("focal_length", node, value, unit="mm", bad="" if value > 0 else "a focal length must be more than nothing", named=True)


def _film_width(node: Node) -> Item:
    return _item("format", node, _numbers(node)[0].value, unit="35 mm" if _numbers(node)[0].value == 35 else "")


def _nd(node: Node) -> Item:
    """An ND's strength in stops lost: ND8 is a factor, ND 0.9 a density."""
    value = _numbers(node)[0].value
    bad = "" if 0 < value < math.inf else "a filter's strength must be more than nothing"
    density = value < 1 or (value < 5 and value != int(value))
    stops = value / math.log10(2) if density else (math.log2(value) if value > 0 else math.nan)
    return _item("nd", node, stops, other=value, unit="density" if density else "factor", bad=bad)


def _life_size(node: Node) -> Item:
    numbers = _numbers(node)
    return _item("magnification", node, numbers[0].value if numbers else 1.0, named=True)


def _ratio(node: Node) -> Item:
    numbers = _numbers(node)
    top, bottom = (numbers[0].top, numbers[0].bottom) if len(numbers) == 1 else (numbers[0].value, numbers[1].value)
    top, bottom = float(top or 0), float(bottom or 0)
    bad = "" if top > 0 and bottom > 0 else "a ratio needs two numbers above nothing"
    return _item("ratio", node, top / bottom if bottom else math.nan, other=bottom, bad=bad, named=_has(node, "RATIO_WORD"))


def _ratio_or_range(node: Node) -> Item:
    one, two = _numbers(node)[:2]
    if two.value == 1 or one.value == 1:
        return _ratio(node)
    return _item("number_range", node, one.value, other=two.value)


def _stops(sign: int) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        numbers = _numbers(node)
        one = 1.0 if node.name == "one_stop" or not numbers else 0.0
        value = one + sum(n.value for n in numbers)
        return _item("stops", node, sign * value if sign else value, unit="" if sign == 0 else ("-" if sign < 0 else "+"))

    return read


def _stops_range(node: Node) -> Item:
    one, two = _numbers(node)[:2]
    return _item("stops", node, one.value, other=two.value)


def _velocity(node: Node) -> Item:
    unit = next((str(c.value) for c in node.children if isinstance(c, Token) and c.type in ("VELOCITY", "LEN", "METER")), "m")
    return _item("velocity", node, _numbers(node)[0].value * LENGTH.get("m" if unit == "meter" else unit, 1.0), unit=unit)


def _bare(node: Node) -> Item:
    number = _numbers(node)[0]
    return _item("number", node, number.value, other=number.pair if number.pair is not None else math.nan,
                 unit="mixed" if number.part else "", bad="" if math.isfinite(number.value) else "that number is beyond any scale")


def _not_a_number(node: Node) -> Item:
    return _item("number", node, math.nan, word="nan", bad="that is no number")


_SPEEDS = {"mph": 0.44704, "kmh": 1 / 3.6, "ms": 1.0, "fts": LENGTH["ft"]}


def _velocity_named(node: Node) -> Item:
    name = next((c for c in node.children if isinstance(c, Token) and c.type == "VELOCITY"), None)
    if name is None:
        return _velocity(node)
    return _item("velocity", node, _numbers(node)[0].value * _SPEEDS[str(name.value)], unit="ft" if str(name.value) in ("mph", "fts") else "m")


def _capacitance(node: Node) -> Item:
    scale = next(float(str(c.value)) for c in node.children if isinstance(c, Token) and c.type == "FARAD")
    return _item("capacitance", node, _numbers(node)[0].value * scale, unit="F")


def _format(node: Node) -> Item:
    """4x5, 6x7, 24x36: the name of the film format, spelled without spaces."""
    return _item("format", node, 0.0, unit=patterns.sub(r"\s", "", str(node.children[0].value)))  # type: ignore[union-attr]


BUILDERS: dict[str, Callable[[Node], Item]] = {
    "length": _length, "negative_length": _negative_length, "one_length": _one_length, "length_more": _length_more, "length_more_and": lambda node: replace(_one_length(node), word="again"),
    "feet_and_inches": _feet_and_inches, "feet": _marked("ft"), "inches": _marked("in"), "paces": _paces, "length_range": _length_range,
    "guide_number": _guide, "guide_number_in": _guide, "guide_number_both": _guide_both, "guide_number_pair": _guide_pair, "rated_number": _guide,
    "negative_guide_number": _negative("guide_number", "a guide number"),
    "power": _power, "bare_power": _bare_power, "full_power": _full, "twice_power": lambda node: _item("power", node, 2.0, bad=_power_bad(2.0), named=True), "power_and": _power_shifted(1), "power_less": _power_shifted(-1),
    "negative_power": _negative("power", "a power"),
    "energy": _simple("energy", "J", 1.0, "an energy must be more than nothing"),
    "count": _count, "negative_count": _negative("count", "a number of flashes"), "count_pair": _pair,
    "count_pops": _simple("count", "", 1.0, "a number of pops must be one or more"),
    "aperture": _aperture, "aperture_and": _aperture_shifted(1), "aperture_less": _aperture_shifted(-1),
    "negative_aperture": _negative("aperture", "an f-number"), "aperture_choice": _aperture_two("aperture_choice"),
    "aperture_range": _aperture_two("aperture_range"), "aperture_pair": _aperture_two("aperture_pair"), "aperture_between": _aperture_two("aperture"),
    "film_speed": _film_speed, "negative_film_speed": _negative("film_speed", "a film speed"), "din": _din, "old_scale": _old_scale,
    "not_a_number": _not_a_number, "degrees": _simple("degrees", "degrees"),
    "shutter": _shutter, "time": _time, "milliseconds": _simple("time", "ms", 0.001, "a time must be more than nothing"),
    "minutes": _minutes, "minutes_seconds": _minutes_seconds, "negative_time": _negative("time", "a time"), "shutter_number": _shutter_number,
    "sync": lambda node: _item("sync", node, _numbers(node)[0].value, named=True), "sync_number": _sync_number,
    "one_second": lambda node: _item("time", node, 1.0, unit="s"),
    "exposure_value": _simple("exposure_value"), "negative_exposure_value": lambda node: _item("exposure_value", node, -_numbers(node)[0].value),
    "ev_stops": lambda node: _item("ev_stops", node, _numbers(node)[0].value),
    "focal_length": _focal, "film_width": _film_width,
    "factor": _simple("factor", "", 1.0, "a factor must be more than nothing"), "times": _simple("times"),
    "nd": _nd, "nd_stops": lambda node: _item("nd", node, _numbers(node)[0].value, unit="stops"),
    "life_size": _life_size, "twice_life_size": lambda node: _item("magnification", node, 2.0, named=True), "magnification": _simple("magnification", "", 1.0, "a magnification must be more than nothing"),
    "film_format": _format, "infinite_length": lambda node: _item("length", node, math.inf, bad="that is no distance a light can be at"),
    "frequency": _simple("frequency", "Hz", 1.0, "a rate must be more than nothing"), "capacitance": _capacitance, "supply": _simple("supply", "Wh"),
    "stops": _stops(0), "one_stop": _stops(0), "minus_stops": _stops(-1), "plus_stops": _stops(1), "stops_range": _stops_range,
    "plus_number": lambda node: _item("signed", node, _numbers(node)[0].value, unit="+"),
    "minus_number": lambda node: _item("signed", node, -_numbers(node)[0].value, unit="-"),
    "ratio": _ratio, "ratio_or_range": _ratio_or_range, "number": _bare, "number_in": lambda node: _item("number", node, _numbers(node)[0].value, unit=_unit(node)), "velocity": _velocity_named,
    "voltage": _simple("voltage", "V"),
}

_TOKEN_KINDS = {"CUE": "cue", "ROLE": "role", "NAMED": "named", "MODIFIER": "modifier", "CAMERA_FILTER": "camera_filter",
                "COUNTED": "noun", "GLUE": "glue", "LINK": "link", "WORD": "word"}
_NAMES = {"guide": "guide_number", "guide_after": "guide_number", "film_speed": "film_speed", "iso": "film_speed", "aperture": "aperture", "f": "aperture",
          "power": "power", "shutter": "shutter", "sync": "sync", "distance": "distance", "ratio_word": "ratio", "factor": "factor",
          "nd": "nd", "mag": "magnification", "focal": "focal_length", "evw": "exposure_value", "stop": "stops", "joule": "energy",
          "speed_word": "speed", "meter": "meter", "degree_word": "degrees"}


def build(parts: Sequence[Part]) -> list[Item]:
    """The items of a parsed question, in order."""
    return [_from_node(p) if isinstance(p, Node) else _from_token(p) for p in parts]


def _from_node(node: Node) -> Item:
    if node.name == "quantity_name":
        token = node.children[0]
        assert isinstance(token, Token)
        if token.type == "LEN":
            return Item("unit_name", token.start, token.end, word=str(token.value))
        return Item("name", token.start, token.end, word=_NAMES[token.type.lower()], unit=token.type)
    return _within_reason(BUILDERS[node.name](node))


SCALE_END = 1e9
"""Nothing a photographer measures is beyond this, or nearer to nothing than one part of it."""


def _within_reason(item: Item) -> Item:
    """The item, or what is wrong with it when no scale reaches so far."""
    size = abs(item.value)
    fits = item.kind == "number" or not math.isfinite(size) or size == 0 or 1 / SCALE_END <= size <= SCALE_END
    return item if fits or item.bad else replace(item, bad="that number is beyond any scale")


def _from_token(token: Token) -> Item:
    kind = _TOKEN_KINDS.get(token.type)
    if token.type == "ANOTHER":
        return Item("cue", token.start, token.end, word="another_length")
    if kind:
        return Item(kind, token.start, token.end, word=str(token.value))
    if token.type in ("LEN", "METER", "MM"):
        return Item("unit_name", token.start, token.end, word={"METER": "m", "MM": "mm"}.get(token.type, str(token.value)))
    return Item("mark", token.start, token.end, word=token.type)
