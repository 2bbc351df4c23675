"""Limits: what the gear and the room can do, and the ways that work when the need is outside.

An exact answer that cannot be set is out of reach: the exact need is said first, then two or
three complete settings that do work, nearest to the intention first. Each is put back into
the balance and lies inside every limit that is known.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from assistant.answer import Quantity
from assistant.physics.flash import falloff_stops, whole_count
from assistant.query import Fact, Query
from assistant.records import record, replace
from assistant.scales import speak_power, speak_stops
from assistant.solving import marks
from assistant.solving.ledger import Line, balance, close, line
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

_BETWEEN = 1 / 6
"""Stops by which a power may lie off the only ones that there are."""
SLACK = 1 / 12  # stops: nearer than this to a limit counts as on it


@record
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
    max_energy: float | None = None
    facts: tuple[Fact, ...] = ()


_BOUNDS = ("aperture_range", "widest_aperture", "smallest_aperture", "min_power", "max_distance", "min_distance", "sync", "only_powers", "max_film_speed", "max_count")
GEAR = frozenset({*_BOUNDS, "energy"})
"""What is known of the gear and the room that an answer may be out of reach of."""


def limits_of(query: Query) -> Limits:
    """What is known of the gear and the room."""
    latest = {f.quantity: f for f in query.facts}
    bounds = list(map(latest.get, _BOUNDS))
    span, wide, small, low, far, near, sync, steps, fast, many = bounds
    store = next((f for f in query.facts if f.quantity == "energy" and f.origin == "kit"), None)  # told of the gear it is what there is; in a question it is one figure of it
    return Limits(
        widest=wide.value if wide else (min(span.value, span.other) if span else None),
        smallest=small.value if small else (max(span.value, span.other) if span else None),
        min_power=low.value if low else 0.5 if "only_full_half" in query.cues else None,
        powers=tuple(float(p) for p in steps.said.split(",")) if steps else (1.0, 0.5) if "only_full_half" in query.cues else (),
        max_distance=far.value if far else None,
        min_distance=near.value if near else None,
        sync=sync.value if sync else None,
        max_film_speed=fast.value if fast else None,
        max_count=many.value if many else None,
        max_energy=store.value if store else None,
        facts=tuple(filter(None, (*bounds, store))),
    )


def check(query: Query, solution: Solution) -> Solution:
    """The solution, or the same as out of reach with ways that work."""
    if solution.status != "answered" or not solution.answers or solution.topic not in ("flash", "relations", "change", "time", "twins", "falloff", "focus"):
        return solution
    first = solution.answers[0]
    if solution.topic == "falloff" and (first.quantity != "distance" or first.of) or solution.topic == "focus" and (first.quantity != "aperture" or not query.has("smallest_aperture")):
        return solution
    limits = limits_of(query)
    broken = _broken(first, limits, query)
    if not broken:
        return solution
    fact, sentence = broken
    ways = alternatives(query, solution, limits) if solution.lines else _as_far_as_it_goes(query, first, limits) if solution.topic == "falloff" else _with_all_it_has(first, limits)
    used = solution.used + ((fact,) if fact else ())
    notes = (*solution.notes, sentence, _spoken(ways))
    return replace(solution, status="out_of_reach", alternatives=tuple(way for _, way in ways), used=used, notes=tuple(n for n in notes if n))


def _as_far_as_it_goes(query: Query, wanted: Quantity, limits: Limits) -> list[tuple[str, tuple[Quantity, ...]]]:
    """Rows in too short a room: the light as far back as it goes, and what the back row then lacks."""
    gap = query.last("gap")
    if gap is None or not limits.max_distance:
        return []
    lacks = marks.stops(falloff_stops(limits.max_distance, limits.max_distance + gap.value), "back row")
    return [("put the light as far back as it goes", (marks.distance(limits.max_distance, wanted.unit), lacks))]


def _with_all_it_has(wanted: Quantity, limits: Limits) -> list[tuple[str, tuple[Quantity, ...]]]:
    """More energy than the pack holds: as many pops with all that it has."""
    if wanted.quantity != "energy" or not limits.max_energy or not isinstance(wanted.value, (int, float)):
        return []
    pops = whole_count(wanted.value / limits.max_energy)
    return [("fire more than once", (marks.count(pops, "pops"), Quantity("energy", limits.max_energy, "J")))] if pops <= _MOST_POPS else []


_MOST_POPS = 32


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
    if answer.quantity == "energy" and len(query.all("aperture")) > 1 and limits.max_energy and value > limits.max_energy * 2**SLACK:
        return _fact(limits, "energy"), f"There are only {limits.max_energy:g} Ws."
    if answer.quantity == "count" and limits.max_count and value > limits.max_count and not ((held := _fact(limits, "max_count")) is not None and held.unit == "frames" and answer.unit == "pops"):  # frames bound no pops
        return _fact(limits, "max_count"), f"There are only {limits.max_count:g}."
    return None


def _fact(limits: Limits, *quantities: str) -> Fact | None:
    return next((f for f in limits.facts if f.quantity in quantities), None)


def _power_broken(value: float, limits: Limits) -> tuple[Fact | None, str] | None:
    if value > 2**SLACK:
        short = math.log2(value)
        return None, f"That is {speak_stops(short)} more than the flash has."
    if limits.min_power and value < limits.min_power * 2**-SLACK:
        return _fact(limits, "min_power"), f"The flash goes no lower than 1/{1 / limits.min_power:g}."
    if limits.powers and all(abs(math.log2(value / power)) > _BETWEEN for power in limits.powers):
        return _fact(limits, "only_powers"), f"The flash has no power but {' and '.join(speak_power(power) for power in limits.powers)}."
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
SPEEDS = (25.0, 50.0, 100.0, 200.0, 400.0, 800.0, 1600.0, 3200.0)
Settings = dict[str, float]
Way = Callable[[tuple[Line, ...], Limits], "Settings | None"]


def alternatives(query: Query, solution: Solution, limits: Limits) -> list[tuple[str, tuple[Quantity, ...]]]:
    """Up to three ways with their complete settings, each inside every limit and solved anew."""
    unit = preferred_unit(query)
    found: list[tuple[str, tuple[Quantity, ...]]] = []
    seen: list[Settings] = []
    lines = _with_so_many(solution.lines, limits)
    for words, way in WAYS:
        settings = None if _unwished(query, way) else way(lines, limits)
        if settings is None or any(_alike(settings, s) for s in seen):
            continue
        seen.append(settings)
        found.append((words, tuple(_quantities(settings, unit))))
        if len(found) == 3:
            break
    return found


def _with_so_many(lines: tuple[Line, ...], limits: Limits) -> tuple[Line, ...]:
    """The ledger with no more flashes than there are."""
    most = limits.max_count
    return tuple(line("count", most, entry.label) if entry.quantity == "count" and most and entry.value > most else entry for entry in lines)


def _alike(one: Settings, two: Settings) -> bool:
    return one.keys() == two.keys() and all(math.isclose(one[k], two[k], rel_tol=0.01) for k in one)


_UNMOVED = ("can't move", "cannot move", "cant move", "don't move", "keep the distance", "must stay where", "not move", "can't get closer", "stay where")


def _unwished(query: Query, way: Way) -> bool:
    """A way that the person ruled out: "I can't move the light", "keep f/2.8"."""
    text = query.text.lower()
    if way is _by_distance:
        return any(words in text for words in _UNMOVED)
    return way is _by_aperture and "keep" in query.cues and query.has("aperture")


def _value(lines: tuple[Line, ...], quantity: str) -> float | None:
    return next((entry.value for entry in lines if entry.quantity == quantity), None)


def _solve(lines: tuple[Line, ...], fixed: Settings, unknown: str) -> float:
    """The unknown with some lines set to other values, so that the balance closes."""
    kept = [line(entry.quantity, fixed.get(entry.quantity, entry.value), entry.label) for entry in lines if entry.quantity != unknown]
    kept += [line(q, v) for q, v in fixed.items() if q != unknown and _value(lines, q) is None]
    return close(unknown, kept)


def _settings(lines: tuple[Line, ...], changed: Settings) -> Settings:
    known = {q: v for q in ("aperture", "power", "distance", "film_speed") if (v := _value(lines, q)) is not None}
    return {"power": 1.0, **known, **changed}


def _inside(settings: Settings, limits: Limits) -> bool:
    power, aperture, distance = settings.get("power", 1.0), settings.get("aperture"), settings.get("distance")
    if not _floor(limits) * 0.999 <= power <= 1.001:
        return False
    if aperture and not (limits.widest or 0.0) * 0.999 <= aperture <= (limits.smallest or 1000.0) * 1.001:
        return False
    return not distance or (limits.min_distance or 0.0) * 0.999 <= distance <= (limits.max_distance or math.inf) * 1.001


def _floor(limits: Limits) -> float:
    return limits.min_power or min(limits.powers, default=0.0)


def _aperture_within(lines: tuple[Line, ...], limits: Limits) -> float:
    wanted = _value(lines, "aperture") or 8.0
    return min(max(wanted, limits.widest or 0.0), limits.smallest or math.inf)


def _power_within(lines: tuple[Line, ...], limits: Limits) -> float:
    clamped = min(max(_value(lines, "power") or 1.0, _floor(limits)), 1.0)
    return min(limits.powers, key=lambda p: abs(math.log2(p / clamped))) if limits.powers else clamped


def _distance_within(lines: tuple[Line, ...], limits: Limits) -> float | None:
    distance = _value(lines, "distance")
    return None if distance is None else min(max(distance, limits.min_distance or 0.0), limits.max_distance or math.inf)


def _by_power(lines: tuple[Line, ...], limits: Limits) -> Settings | None:
    """The power at which all the rest can be set as it is wanted."""
    held: Settings = {"aperture": _aperture_within(lines, limits)}
    distance = _distance_within(lines, limits)
    if distance:
        held["distance"] = distance
    power = _solve(lines, held, "power")
    settings = _settings(lines, {**held, "power": power})
    return settings if power <= 1.001 and _inside(settings, limits) and not limits.powers else None


def _by_distance(lines: tuple[Line, ...], limits: Limits) -> Settings | None:
    """Move the light, at the aperture wanted and a power that exists."""
    held = {"aperture": _aperture_within(lines, limits), "power": _power_within(lines, limits)}
    distance = _solve(lines, held, "distance")
    settings = _settings(lines, {**held, "distance": distance})
    return settings if 0.3 <= distance <= 60 and _inside(settings, limits) else None


def _by_aperture(lines: tuple[Line, ...], limits: Limits) -> Settings | None:
    """Another aperture at the same place, at a power that exists."""
    held: Settings = {"power": _power_within(lines, limits)}
    distance = _distance_within(lines, limits)
    if distance is None:
        return None
    held["distance"] = distance
    aperture = _solve(lines, held, "aperture")
    settings = _settings(lines, {**held, "aperture": aperture})
    return settings if 0.95 <= aperture <= 128 and _inside(settings, limits) else None


def _by_count(lines: tuple[Line, ...], limits: Limits) -> Settings | None:
    """Several pops on one frame, or as many flashes, where one gives too little."""
    need = _value(lines, "power") or 1.0
    many = whole_count(need * (_value(lines, "count") or 1.0)) if need > 1.0 else 0
    if not 2 <= many <= (limits.max_count or _MOST_POPS):
        return None
    settings = _settings(lines, {"power": need / many})
    return {**settings, "count": float(many)} if _inside(settings, limits) else None


def _by_filter(lines: tuple[Line, ...], limits: Limits) -> Settings | None:
    """A neutral-density filter, or cloths over the light, where there is too much of it."""
    power, aperture, floor = _value(lines, "power"), _value(lines, "aperture"), _floor(limits)
    excess, held = 0.0, Settings()
    if power is not None and floor and power < floor:
        excess, held = math.log2(floor / power), {"power": floor}
    elif aperture and limits.smallest and aperture > limits.smallest:
        excess, held = 2 * math.log2(aperture / limits.smallest), {"aperture": limits.smallest}
    settings = _settings(lines, held)
    return {**settings, "stops": excess} if 0 < excess <= 10 and _inside(settings, limits) else None


def _by_film(lines: tuple[Line, ...], limits: Limits) -> Settings | None:
    """Another film, with the rest as it was wanted."""
    held: Settings = {"aperture": _aperture_within(lines, limits), "power": _power_within(lines, limits)}
    distance = _distance_within(lines, limits)
    if distance:
        held["distance"] = distance
    if _value(lines, "film_speed") is None:
        return None
    speed = _solve(lines, held, "film_speed")
    near = min(SPEEDS, key=lambda s: abs(math.log2(s / speed)))
    if not 20 <= speed <= (limits.max_film_speed or 4000.0) or abs(math.log2(near / speed)) > 1 / 6:
        return None
    settings = _settings(lines, {**held, "film_speed": near})
    unknown = "aperture" if _value(lines, "aperture") else "power"
    settings[unknown] = _solve(lines, {k: v for k, v in settings.items() if k != unknown}, unknown)
    return settings if _inside(settings, limits) else None


WAYS: tuple[tuple[str, Way], ...] = (
    ("turn the power", _by_power), ("move the light", _by_distance), ("change the aperture", _by_aperture), ("fire more than once", _by_count),
    ("take away light with a neutral-density filter", _by_filter), ("change the film", _by_film),
)
"""Ways round a limit, nearest to the intention first."""


def _quantities(settings: Settings, unit: str) -> Iterator[Quantity]:
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


def _spoken(ways: list[tuple[str, tuple[Quantity, ...]]]) -> str:
    from assistant.language.speaking import say

    told = [f"{words}: " + ", ".join(("an ND of " if q.of == "ND filter" else "") + say(q) for q in way) for words, way in ways]
    return "What works: " + "; or ".join(told) + "." if told else ""


def closes(lines: tuple[Line, ...]) -> bool:
    """Whether the ledger of a solution is in balance."""
    return abs(balance(list(lines))) < 1e-6
