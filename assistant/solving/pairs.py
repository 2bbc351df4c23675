"""A pair that was right as a guide number: "tested f/8 at 11 ft", and a row of other distances or f-numbers.

The guide number is the f-number times the distance, for the film and the power of the test.
"""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving.lights import preferred_unit
from assistant.units import LENGTH

_JOIN = Pattern(r"\s*(?:,|;|/|&|\b(?:and|or|then)\b|\s|\b(?:at|on|f)\b)+\s*/?\s*")
_ROW = {"aperture": "distance", "distance": "aperture"}
"""What is asked, and what stands in a row for it."""


def as_guide(query: Query, table: bool) -> tuple[Query, tuple[Fact, ...]] | None:
    """The query with the pair made a guide number, and the pair; None where there is no pair with a row after it."""
    if len(query.facts) < 4:
        return None
    said = [f for f in query.facts if f.origin == "said"]
    others = {f.quantity for f in query.facts} - {"aperture", "distance", "film_speed", "power", "preferred_unit", "remark", "place"}
    if query.claim or others or any(f.of for f in said) or len(query.all("film_speed")) > 2 or len(query.all("power")) > 2:
        return None
    wanted = query.asks[0].quantity if query.asks else "aperture" if table and len(query.all("distance")) > 2 else "distance"
    rows = query.all(_ROW.get(wanted, ""))
    single = query.all(wanted)
    if wanted not in _ROW or len(single) != 1 or single[0].origin != "said" or len(rows) < 3 or any(f.origin != "said" for f in rows):
        return None
    mate = _mate(single[0], rows)
    films, powers = query.all("film_speed"), query.all("power")
    if any(len(two) == 2 and not (mate is rows[0] and two[0].start < rows[1].start) for two in (films, powers)):
        return None  # which of the two the test was made with is not plain
    row = [f for f in rows if f is not mate]
    if not all(_JOIN.fullmatch(query.text[a.end : b.start].lower()) or b.start < a.end for a, b in zip(row, row[1:])):
        return None
    return _paired(query, single[0], mate, row), (single[0], mate, *films, *powers)


def _mate(single: Fact, rows: list[Fact]) -> Fact:
    """The one of the row that the other value was said with: the nearer of its neighbours at either end."""
    return min((rows[0], rows[-1]), key=lambda f: max(f.start - single.end, single.start - f.end))


def _paired(query: Query, single: Fact, mate: Fact, row: list[Fact]) -> Query:
    """The pair as a guide number for the film and power it was found with."""
    stop, place = (single, mate) if single.quantity == "aperture" else (mate, single)
    unit = "m" if (place.unit or preferred_unit(query)) in ("m", "cm") else "ft"
    film, power = query.first("film_speed"), query.first("power")
    guide = Fact("guide_number", stop.value * place.value / LENGTH[unit], unit, at_iso=film.value if film else None, at_power=power.value if power else None, origin="assumed")
    tests = [f for f in (film, power) if f is not None and len(query.all(f.quantity)) > 1]
    kept = tuple(f for f in query.facts if f not in (single, mate, *tests))
    return replace(query, facts=(guide, *kept), asks=query.asks or (Ask("aperture" if row[0].quantity == "distance" else "distance"),))
