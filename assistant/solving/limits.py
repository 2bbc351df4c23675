"""Limits: what the gear and the room can do, and the ways that work when the need is outside.

An exact answer that cannot be set is out of reach: the exact need is said first, then two or
three complete settings that do work, nearest to the intention first. Each is put back into
the balance and lies inside every limit that is known.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Iterator

from assistant.answer import Quantity
from assistant.physics.flash import whole_count
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.ledger import Line, balance, close, line
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

SLACK = 1 / 12  # stops: nearer than this to a limit counts as on it


@dataclass(frozen=True, slots=True)
class Limits:
    """Known bounds: f-numbers, powers, metres, seconds, film speeds, how many flashes."""

    widest: float | None = None
    smallest: float | None = None
    min_power: float | None = None
    powers: tuple[float, ...] = ()
    max_distance: float | None = None
    min_distance: float | None = None
    sync: float | None = None
    max_film_speed: float | None = None
    max_count: float | None = None
    facts: tuple[Fact, ...] = ()


def limits_of(query: Query) -> Limits:
    """What is known of the gear and the room."""
    span = query.last("aperture_range")
    wide, small = query.last("widest_aperture"), query.last("smallest_aperture")
    low, far, near, sync = (query.last(q) for q in ("min_power", "max_distance", "min_distance", "sync"))
    steps = query.last("only_powers")
    fast, many = query.last("max_film_speed"), query.last("max_count")
    known = [f for f in (span, wide, small, low, far, near, sync, steps, fast, many) if f]
    return Limits(
        widest=wide.value if wide else (min(span.value, span.other) if span else None),
        smallest=small.value if small else (max(span.value, span.other) if span else None),
        min_power=low.value if low else None,
        powers=tuple(float(p) for p in steps.said.split(",")) if steps else (),
        max_distance=far.value if far else None,
        min_distance=near.value if near else None,
        sync=sync.value if sync else None,
        max_film_speed=fast.value if fast else None,
        max_count=many.value if many else None,
        facts=tuple(known),
    )


def check(query: Query, solution: Solution) -> Solution:
    """The solution, or the same as out of reach with ways that work."""
    if solution.status != "answered" or not solution.answers or solution.topic not in ("flash", "relations", "change"):
        return solution
    first = solution.answers[0]
    limits = limits_of(query)
    broken = _broken(first, limits, query)
    if not broken:
        return solution
    fact, sentence = broken
    ways = tuple(alternatives(query, solution, limits)) if solution.lines else ()
    used = solution.used + ((fact,) if fact else ())
    notes = (*solution.notes, sentence, _spoken(ways))
    return replace(solution, status="out_of_reach", alternatives=ways, used=used, notes=tuple(n for n in notes if n))


def _broken(answer: Quantity, limits: Limits, query: Query) -> tuple[Fact | None, str] | None:
    value = answer.value
    if isinstance(value, bool) or not isinstance(value, (int, float)) or answer.of in ("move", "hair reading"):
        return None
    if answer.quantity == "power":
        return _power_broken(value, limits)
    if answer.quantity == "aperture" and not answer.of:
        return _aperture_broken(value, limits)
    if answer.quantity == "distance" and answer.unit in LENGTH:
        return _distance_broken(value * LENGTH[answer.unit], answer.unit, limits)
    if answer.quantity == "film_speed" and limits.max_film_speed and value > limits.max_film_speed * 2**SLACK:
        return _fact(limits, "max_film_speed"), f"Your fastest film is ISO {limits.max_film_speed:g}."
    if answer.quantity == "count" and limits.max_count and value > limits.max_count:
        return _fact(limits, "max_count"), f"There are only {limits.max_count:g}."
    return None


def _fact(limits: Limits, *quantities: str) -> Fact | None:
    return next((f for f in limits.facts if f.quantity in quantities), None)


def _power_broken(value: float, limits: Limits) -> tuple[Fact | None, str] | None:
    if value > 2**SLACK:
        short = math.log2(value)
        return None, f"That is {short:.2g} stops more than the flash has."
    if limits.min_power and value < limits.min_power * 2**-SLACK:
        return _fact(limits, "min_power"), f"The flash goes no lower than 1/{1 / limits.min_power:g}."
    return None


def _aperture_broken(value: float, limits: Limits) -> tuple[Fact | None, str] | None:
    if limits.smallest and 2 * math.log2(value / limits.smallest) > SLACK:
        return _fact(limits, "smallest_aperture", "aperture_range"), f"The lens stops down only to f/{limits.smallest:g}."
    if limits.widest and 2 * math.log2(limits.widest / value) > SLACK:
        return _fact(limits, "widest_aperture", "aperture_range"), f"The lens opens only to f/{limits.widest:g}."
    return None


def _distance_broken(metres: float, unit: str, limits: Limits) -> tuple[Fact | None, str] | None:
    if limits.max_distance and metres > limits.max_distance * 1.005:
        return _fact(limits, "max_distance"), f"There is room for {speak_length(limits.max_distance, unit)} only."
    if limits.min_distance and metres < limits.min_distance * 0.995:
        return _fact(limits, "min_distance"), f"It cannot come nearer than {speak_length(limits.min_distance, unit)}."
    return None


# --- ways that do work -----------------------------------------------------------------------------

STEPS = tuple(2.0 ** (-n / 3) for n in range(0, 28))
RING = (1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0, 45.0, 64.0)
SPEEDS = (25.0, 50.0, 100.0, 200.0, 400.0, 800.0, 1600.0, 3200.0)


def alternatives(query: Query, solution: Solution, limits: Limits) -> Iterator[tuple[Quantity, ...]]:
    """Up to three complete settings inside every limit, each solved anew from the ledger."""
    unit = preferred_unit(query)
    found = 0
    for way in (_by_power, _by_distance, _by_aperture, _by_count, _by_filter, _by_film):
        settings = way(solution.lines, limits)
        if settings is None or _wished_away(query, way.__name__):
            continue
        yield tuple(_quantities(settings, unit))
        found += 1
        if found == 3:
            return


def _wished_away(query: Query, way: str) -> bool:
    """A way the person does not want: "I can't move the light", "keep f/2.8"."""
    text = query.text.lower()
    stuck = ("can't move", "cannot move", "cant move", "don't move", "keep the distance", "must stay where", "not move")
    if way == "_by_distance" and any(s in text for s in stuck):
        return True
    return way == "_by_aperture" and "keep" in query.cues and (query.has("aperture") or "aperture" in text)


def _value(lines: tuple[Line, ...], quantity: str) -> float | None:
    return next((l.value for l in lines if l.quantity == quantity), None)


def _solve(lines: tuple[Line, ...], fixed: dict[str, float], unknown: str) -> float:
    """The unknown with some lines set to other values; the new balance closes."""
    kept = [line(l.quantity, fixed.get(l.quantity, l.value), l.label) for l in lines if l.quantity != unknown]
    return close(unknown, kept)


def _settings(lines: tuple[Line, ...], changed: dict[str, float]) -> dict[str, float]:
    known = {q: v for q in ("aperture", "power", "distance", "film_speed") if (v := _value(lines, q)) is not None}
    return {"power": 1.0, **known, **changed}


def _inside(settings: dict[str, float], limits: Limits) -> bool:
    power, aperture, distance = settings.get("power", 1.0), settings.get("aperture"), settings.get("distance")
    floor = limits.min_power or min(limits.powers, default=0.0)
    if not floor * 0.999 <= power <= 1.001:
        return False
    if aperture and ((limits.smallest and aperture > limits.smallest * 1.001) or (limits.widest and aperture < limits.widest * 0.999)):
        return False
    return not (distance and ((limits.max_distance and distance > limits.max_distance * 1.001) or (limits.min_distance and distance < limits.min_distance * 0.999)))


def _by_power(lines: tuple[Line, ...], limits: Limits) -> dict[str, float] | None:
    """Turn the flash down or up to the nearest power at which the rest can be set."""
    now = _value(lines, "power") or 1.0
    steps = limits.powers or STEPS
    for power in sorted(steps, key=lambda p: abs(math.log2(p / now))):
        for unknown in ("aperture", "distance"):
            if _value(lines, unknown) is None:
                continue
            held = {"power": power}
            if unknown == "aperture" and limits.smallest and _value(lines, "aperture"):
                pass
            settings = _settings(lines, {"power": power, unknown: _solve(lines, held, unknown)})
            if _inside(settings, limits) and power != now and _near_mark(settings, unknown):
                return settings
    return None


def _near_mark(settings: dict[str, float], unknown: str) -> bool:
    if unknown != "aperture":
        return True
    return 1.0 <= settings["aperture"] <= 90.0


def _by_distance(lines: tuple[Line, ...], limits: Limits) -> dict[str, float] | None:
    """Move the light: the distance for the aperture asked, at a power that exists."""
    if _value(lines, "distance") is None:
        return None
    for aperture in _apertures(lines, limits):
        for power in _powers(lines, limits):
            distance = _solve(lines, {"aperture": aperture, "power": power}, "distance")
            settings = _settings(lines, {"distance": distance, "aperture": aperture, "power": power})
            if 0.3 <= distance <= 60 and _inside(settings, limits):
                return settings
    return None


def _apertures(lines: tuple[Line, ...], limits: Limits) -> list[float]:
    wanted = _value(lines, "aperture") or 8.0
    clamped = min(max(wanted, limits.widest or 0.0), limits.smallest or math.inf)
    return [clamped]


def _powers(lines: tuple[Line, ...], limits: Limits) -> list[float]:
    now = _value(lines, "power") or 1.0
    floor = limits.min_power or min(limits.powers, default=0.0)
    clamped = min(max(now, floor), 1.0)
    return [clamped] if not limits.powers else [min(limits.powers, key=lambda p: abs(math.log2(p / clamped)))]


def _by_aperture(lines: tuple[Line, ...], limits: Limits) -> dict[str, float] | None:
    """Another aperture at the same place, at a power that exists."""
    distance = _value(lines, "distance")
    if distance is None:
        return None
    held = min(distance, limits.max_distance or math.inf)
    held = max(held, limits.min_distance or 0.0)
    for power in _powers(lines, limits):
        aperture = _solve(lines, {"power": power, "distance": held}, "aperture")
        settings = _settings(lines, {"aperture": aperture, "power": power, "distance": held})
        if 0.95 <= aperture <= 90 and _inside(settings, limits):
            return settings
    return None


def _by_count(lines: tuple[Line, ...], limits: Limits) -> dict[str, float] | None:
    """Several pops, or as many flashes, where one gives too little."""
    need = _value(lines, "power") or 1.0
    if need <= 1.0:
        return None
    many = whole_count(need * (_value(lines, "count") or 1.0))
    if limits.max_count and many > limits.max_count:
        return None
    if many > 64:
        return None
    power = need / many
    settings = _settings(lines, {"power": power})
    return {**settings, "count": float(many)} if _inside(settings, limits) else None


def _by_filter(lines: tuple[Line, ...], limits: Limits) -> dict[str, float] | None:
    """A neutral-density filter where there is too much light."""
    power, aperture = _value(lines, "power"), _value(lines, "aperture")
    floor = limits.min_power or min(limits.powers, default=0.0)
    excess = 0.0
    held = dict[str, float]()
    if power is not None and floor and power < floor:
        excess, held = math.log2(floor / power), {"power": floor}
    elif aperture and limits.smallest and aperture > limits.smallest:
        excess, held = 2 * math.log2(aperture / limits.smallest), {"aperture": limits.smallest}
    if not 0 < excess <= 10:
        return None
    settings = _settings(lines, held)
    return {**settings, "stops": excess} if _inside(settings, limits) else None


def _by_film(lines: tuple[Line, ...], limits: Limits) -> dict[str, float] | None:
    """Another film, with the rest as it was asked."""
    if _value(lines, "film_speed") is None:
        return None
    for aperture in _apertures(lines, limits):
        for power in _powers(lines, limits):
            distance = _value(lines, "distance")
            held = {"aperture": aperture, "power": power}
            if distance and limits.max_distance:
                held["distance"] = min(distance, limits.max_distance)
            speed = _solve(lines, held, "film_speed")
            near = min(SPEEDS, key=lambda s: abs(math.log2(s / speed)))
            if abs(math.log2(near / speed)) > 1 / 6 + 0.01:
                near = speed
            settings = _settings(lines, {**held, "film_speed": near})
            if 12 <= near <= 6400 and near == speed and _inside(settings, limits):
                return settings
    return None


def _quantities(settings: dict[str, float], unit: str) -> Iterator[Quantity]:
    make = {"aperture": marks.aperture, "power": marks.power, "film_speed": marks.film_speed}
    for quantity in ("aperture", "power", "film_speed"):
        if quantity in settings:
            yield make[quantity](settings[quantity])
    if "distance" in settings:
        yield marks.distance(settings["distance"], unit)
    if "count" in settings:
        yield marks.count(settings["count"], "pops")
    if "stops" in settings:
        yield marks.stops(-settings["stops"], "ND filter")


def _spoken(ways: tuple[tuple[Quantity, ...], ...]) -> str:
    from assistant.language.speaking import say

    if not ways:
        return ""
    return "What works: " + "; or ".join(", ".join(("an ND of " if q.of == "ND filter" else "") + say(q) for q in way) for way in ways) + "."


def closes(lines: tuple[Line, ...]) -> bool:
    """Whether the ledger of a solution is in balance."""
    return abs(balance(list(lines))) < 1e-6
