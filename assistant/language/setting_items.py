"""Settings and figures of the light: powers, f-numbers, film speeds, times, stops, ratios, filters and counts."""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant.language.items import Item, has, item_of, negative, numbers_of, simple, unit_of
from assistant.language.parsing import Node
from assistant.language.pieces import Number
from assistant.language.tokens import Token
from assistant.physics.film import iso_from_old_scale
from assistant.scales import is_aperture_mark, is_film_speed_mark, iso_from_din


def _mark_value(number: Number) -> float:
    """An f-number as said: "five six" is 5.6, "eight and a half" half a stop past 8."""
    if number.pair is not None and is_aperture_mark(number.pair):
        return number.pair
    if number.whole and number.part:
        return float(number.whole * 2 ** (number.part / 2))
    return number.value


def _power_bad(value: float) -> str:
    if not math.isfinite(value):
        return "a power cannot be divided by nothing"
    if value <= 0:
        return "a power must be more than nothing"
    return "a flash cannot give more than full power" if value > 1 else ""


def _share(node: Node) -> float:
    number = numbers_of(node)[0]
    hundredth = 0.01 if has(node, "PERCENT", "PERCENT_WORD") else 1.0
    return number.value * hundredth


def _power(node: Node) -> Item:
    value = _share(node)
    return item_of("power", node, value, bad=_power_bad(value), named=has(node, "POWER", "FULL", "POP"))


def _bare_power(node: Node) -> Item:
    value = _share(node)
    if has(node, "PERCENT", "PERCENT_WORD"):
        return item_of("power", node, value, bad=_power_bad(value), unit="%")
    number = numbers_of(node)[0]
    return item_of("share", node, value, bad=_power_bad(value) if number.bottom == 0 else "", unit=f"{number.bottom or 0:g}")


def _full(node: Node) -> Item:
    return item_of("power", node, 1.0, named=has(node, "POWER", "POP"), unit="full")


def _power_shifted(sign: int) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        base, step = numbers_of(node)[:2]
        if has(node, "AND") and not has(node, "STOP") and not 0.3 < step.value % 1 < 0.7 or (has(node, "AND") and step.value == 0.5):
            return item_of("power_pair", node, base.value, other=step.value, bad=_power_bad(base.value))
        value = base.value * 2.0 ** (sign * step.value)
        return item_of("power", node, value, bad=_power_bad(value), named=True)

    return read


def _count(node: Node) -> Item:
    number = numbers_of(node)[0].value
    noun = next(str(c.value) for c in node.children if isinstance(c, Token) and c.type == "COUNTED")
    whole = number == int(number) if math.isfinite(number) else False
    bad = "" if number > 0 and whole else "a number of flashes must be one or more"
    return item_of("count", node, number, word=noun, bad=bad)


def _pair(node: Node) -> Item:
    many = next(float(str(c.value)) for c in node.children if isinstance(c, Token) and c.type == "PAIR")
    return item_of("count", node, many, word="flashes")


def _aperture(node: Node) -> Item:
    value = _mark_value(numbers_of(node)[0])
    bad = "" if 0 < value < math.inf else "an f-number must be more than nothing"
    return item_of("aperture", node, value, bad=bad, named=has(node, "APERTURE"))


def _aperture_shifted(sign: int) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        base, step = numbers_of(node)[:2]
        return item_of("aperture", node, _mark_value(base) * 2.0 ** (sign * step.value / 2))

    return read


def _aperture_two(kind: str) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        one, two = (_mark_value(n) for n in numbers_of(node)[:2])
        if kind == "aperture":
            beside = 0 < one < two and 2 * math.log2(two / one) < 1.2
            if not has(node, "F") and not beside:
                return item_of("number_range", node, one, other=two)  # "between 1 and 10 seconds"
            return item_of("aperture", node, math.sqrt(one * two), other=two)
        return item_of(kind, node, one, other=two)

    return read


def _film_speed(node: Node) -> Item:
    number = numbers_of(node)[0]
    value = number.top if number.bottom and number.top and number.top > 10 else number.value
    if number.spoken and number.pair and is_aperture_mark(number.pair) and not is_film_speed_mark(value) and not has(node, "ISO", "FILM_SPEED", "SPEED_WORD"):
        return item_of("aperture", node, number.pair)  # "a good neg at five six"
    bad = "" if 0 < value < math.inf else "a film speed must be more than nothing"
    return item_of("film_speed", node, value, bad=bad, named=has(node, "ISO", "FILM_SPEED", "FILM", "SPEED_WORD"))


def _din(node: Node) -> Item:
    degrees = numbers_of(node)[-1].value
    if has(node, "ISO"):
        degrees = numbers_of(node)[0].value
    return item_of("film_speed", node, iso_from_din(degrees) if abs(degrees) < 80 else math.nan, unit="DIN", other=degrees, named=True,
                 bad="" if abs(degrees) < 80 else "no film has that many degrees")


def _old_scale(node: Node) -> Item:
    name = next(str(c.value) for c in node.children if isinstance(c, Token) and c.type == "OLD_SCALE")
    number = numbers_of(node)[0].value
    return item_of("film_speed", node, iso_from_old_scale(name, number), unit=name, other=number, named=True, bad="" if number > 0 else "a film speed must be more than nothing")


def _shutter_bad(value: float) -> str:
    return "" if 0 < value < math.inf else "a shutter time must be more than nothing"


def _shutter(node: Node) -> Item:
    value = numbers_of(node)[0].value
    return item_of("shutter", node, value, bad=_shutter_bad(value), named=has(node, "SHUTTER", "SEC"))


def _time(node: Node) -> Item:
    value = numbers_of(node)[0].value
    return item_of("time", node, value, unit="s", bad=_shutter_bad(value), named=has(node, "SHUTTER"))


def _shutter_number(node: Node) -> Item:
    value = numbers_of(node)[0].value
    if value > 1 and value != int(value) and is_aperture_mark(value):
        return item_of("aperture", node, value)  # "what shutter at 2.8"
    seconds = 1 / value if value > 1 else value
    return item_of("shutter", node, seconds, bad=_shutter_bad(seconds), named=True)


def _sync_number(node: Node) -> Item:
    value = numbers_of(node)[0].value
    return item_of("sync", node, 1 / value if value > 1 else value, bad="" if value > 0 else "a sync speed must be more than nothing", named=True)


def _minutes(node: Node) -> Item:
    numbers = numbers_of(node)
    whole = 1.0 if has(node, "AND") and len(numbers) == 1 else 0.0
    return item_of("time", node, 60.0 * (whole + (sum(n.value for n in numbers) or 1.0)), unit="min")


def _minutes_seconds(node: Node) -> Item:
    numbers = [n.value for n in numbers_of(node)]
    minutes = numbers[0] if len(numbers) == 2 else 1.0
    return item_of("time", node, 60.0 * minutes + numbers[-1], unit="min")


def _nd(node: Node) -> Item:
    """An ND's strength in stops lost: ND8 is a factor, ND 0.9 a density."""
    value = numbers_of(node)[0].value
    bad = "" if 0 < value < math.inf else "a filter's strength must be more than nothing"
    density = value < 1 or (value < 5 and value != int(value))
    stops = value / math.log10(2) if density else (math.log2(value) if value > 0 else math.nan)
    return item_of("nd", node, stops, other=value, unit="density" if density else "factor", bad=bad)


def _life_size(node: Node) -> Item:
    numbers = numbers_of(node)
    return item_of("magnification", node, numbers[0].value if numbers else 1.0, named=True)


def _ratio(node: Node) -> Item:
    numbers = numbers_of(node)
    top, bottom = (numbers[0].top, numbers[0].bottom) if len(numbers) == 1 else (numbers[0].value, numbers[1].value)
    top, bottom = float(top or 0), float(bottom or 0)
    bad = "" if top > 0 and bottom > 0 else "a ratio needs two numbers above nothing"
    return item_of("ratio", node, top / bottom if bottom else math.nan, other=bottom, bad=bad, named=has(node, "RATIO_WORD"))


def _ratio_or_range(node: Node) -> Item:
    one, two = numbers_of(node)[:2]
    if two.value == 1 or one.value == 1:
        return _ratio(node)
    return item_of("number_range", node, one.value, other=two.value)


def _stops(sign: int) -> Callable[[Node], Item]:
    def read(node: Node) -> Item:
        numbers = numbers_of(node)
        one = 1.0 if node.name == "one_stop" or not numbers else 0.0
        value = one + sum(n.value for n in numbers)
        return item_of("stops", node, sign * value if sign else value, unit="" if sign == 0 else ("-" if sign < 0 else "+"))

    return read


def _stops_range(node: Node) -> Item:
    one, two = numbers_of(node)[:2]
    return item_of("stops", node, one.value, other=two.value)


def _bare(node: Node) -> Item:
    number = numbers_of(node)[0]
    return item_of("number", node, number.value, other=number.pair if number.pair is not None else math.nan,
                 unit="mixed" if number.part else "", bad="" if math.isfinite(number.value) else "that number is beyond any scale")


def _not_a_number(node: Node) -> Item:
    return item_of("number", node, math.nan, word="nan", bad="that is no number")


def _capacitance(node: Node) -> Item:
    scale = next(float(str(c.value)) for c in node.children if isinstance(c, Token) and c.type == "FARAD")
    return item_of("capacitance", node, numbers_of(node)[0].value * scale, unit="F")


SETTINGS: dict[str, Callable[[Node], Item]] = {
    "power": _power, "bare_power": _bare_power, "full_power": _full, "twice_power": lambda node: item_of("power", node, 2.0, bad=_power_bad(2.0), named=True), "power_and": _power_shifted(1), "power_less": _power_shifted(-1),
    "negative_power": negative("power", "a power"),
    "energy": simple("energy", "J", 1.0, "an energy must be more than nothing"),
    "count": _count, "negative_count": negative("count", "a number of flashes"), "count_pair": _pair,
    "count_pops": simple("count", "", 1.0, "a number of pops must be one or more"),
    "aperture": _aperture, "aperture_and": _aperture_shifted(1), "aperture_less": _aperture_shifted(-1),
    "negative_aperture": negative("aperture", "an f-number"), "aperture_choice": _aperture_two("aperture_choice"),
    "aperture_range": _aperture_two("aperture_range"), "aperture_pair": _aperture_two("aperture_pair"), "aperture_between": _aperture_two("aperture"),
    "film_speed": _film_speed, "negative_film_speed": negative("film_speed", "a film speed"), "din": _din, "old_scale": _old_scale,
    "not_a_number": _not_a_number, "degrees": simple("degrees", "degrees"),
    "shutter": _shutter, "time": _time, "milliseconds": simple("time", "ms", 0.001, "a time must be more than nothing"),
    "minutes": _minutes, "minutes_seconds": _minutes_seconds, "negative_time": negative("time", "a time"), "shutter_number": _shutter_number,
    "sync": lambda node: item_of("sync", node, numbers_of(node)[0].value, named=True), "sync_number": _sync_number,
    "one_second": lambda node: item_of("time", node, 1.0, unit="s"),
    "exposure_value": simple("exposure_value"), "negative_exposure_value": lambda node: item_of("exposure_value", node, -numbers_of(node)[0].value),
    "ev_stops": lambda node: item_of("ev_stops", node, numbers_of(node)[0].value),
    "factor": simple("factor", "", 1.0, "a factor must be more than nothing"), "times": simple("times"),
    "nd": _nd, "nd_stops": lambda node: item_of("nd", node, numbers_of(node)[0].value, unit="stops"),
    "life_size": _life_size, "twice_life_size": lambda node: item_of("magnification", node, 2.0, named=True), "magnification": simple("magnification", "", 1.0, "a magnification must be more than nothing"),
    "frequency": simple("frequency", "Hz", 1.0, "a rate must be more than nothing"), "capacitance": _capacitance, "supply": simple("supply", "Wh"),
    "stops": _stops(0), "one_stop": _stops(0), "minus_stops": _stops(-1), "plus_stops": _stops(1), "stops_range": _stops_range,
    "plus_number": lambda node: item_of("signed", node, numbers_of(node)[0].value, unit="+"),
    "minus_number": lambda node: item_of("signed", node, -numbers_of(node)[0].value, unit="-"),
    "ratio": _ratio, "ratio_or_range": _ratio_or_range, "number": _bare, "number_in": lambda node: item_of("number", node, numbers_of(node)[0].value, unit=unit_of(node)),
    "voltage": simple("voltage", "V"),
}
"""What reads each phrase of the grammar about settings and the light."""
