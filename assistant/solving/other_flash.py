"""Another flash that is to give the same light: its distance goes as its guide number, its power as its distance squared (inverse square law)."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

_SAME = Pattern(r"\b(?:same|identical|equal|unchanged)\b(?! (?:model|kind|type|make|sort))|\bmatch(?:es)?\b|\bequals?\b|\bas (?:bright|strong)\b|\bkeep\b", re.I)
_BELONGS = frozenset({"guide_number", "distance", "count", "film_speed", "remark", "place", "power"})


def solve(query: Query) -> Solution | None:
    """Where it stands, or which power it takes where it stands; None where not two guide numbers and what the first does are told."""
    ask = next((a for a in query.asks if a.quantity in ("distance", "power")), None)
    twin = _its_twin(query, ask) if ask is not None and not query.has("guide_number") else None
    if twin is not None:
        return twin
    guides, placed = query.all("guide_number"), query.all("distance")
    if ask is None or len(guides) != 2 or not _SAME.search(query.text) or {f.quantity for f in query.facts} - _BELONGS or len(query.all("film_speed")) > 1 or any(f.at_iso or f.at_power for f in guides):
        return None
    if any(f.value > 1 for f in query.all("count")) or len(placed) != (1 if ask.quantity == "distance" else 2):
        return None
    return _its_place(query, ask, guides, placed[0]) if ask.quantity == "distance" else _its_power(query, guides, placed)


_A_TWIN = Pattern(r"\b(?:second|other|another|twin|matching|identical|spare) (?:one|flash|head|lamp|light|gun|strobe|unit|flashgun)\b|\b(?:flash|head|lamp|light|gun|strobe) (?:number )?(?:two|2)\b", re.I)
_OF_ONE_MODEL = Pattern(r"\b(?:same|identical|matching|equal) (?:model|kind|type|make|sort)\b|\b(?:identical|matching|twin|same) (?:one|flash\w*|heads?|lamps?|lights?|guns?|strobes?|units?)\b|\balike\b|\btwins?\b", re.I)
_JUST_AS_STRONG = Pattern(r"\b(?:(?:just |equally |exactly )?as (?:strongly|strong|bright|brightly|hot|much light)|(?:the )?same (?:light|exposure|brightness|reading|strength|f-?stop|amount)|equally (?:strong\w*|bright\w*|lit)|match(?:es)?|level)\b", re.I)


def _its_twin(query: Query, ask: Ask) -> Solution | None:
    """"a flash on full 12 ft from one doorway, a second of the same model on a quarter lights the other just as strongly: how far off": power over distance squared is the same for both."""
    text, second = query.text, _A_TWIN.search(query.text)
    told = [f for f in query.facts if f.quantity in ("distance", "power")]
    if second is None or len(told) != 3 or {f.quantity for f in query.facts} - {"distance", "power", "count", "remark", "place"} or any(f.bad or text[f.start : f.end].strip() != f.said.strip() for f in told):
        return None
    if not _OF_ONE_MODEL.search(text) or not _JUST_AS_STRONG.search(text) or any(f.value > 2 for f in query.all("count")):
        return None
    first = {f.quantity: f.value for f in told if f.start < second.start()}
    other = {f.quantity: f.value for f in told if f.start >= second.start()}
    if len(first) != 2 or len(other) != 1 or ask.quantity in other:
        return None
    used = (*told, *query.all("count"))
    if ask.quantity == "distance":
        place = first["distance"] * (other["power"] / first["power"]) ** 0.5
        return Solution(answers=(marks.distance(place, preferred_unit(query, ask.unit)),), used=used, topic="falloff", lead=f"{speak_length(place, preferred_unit(query, ask.unit))} from what it lights.")
    value = first["power"] * (other["distance"] / first["distance"]) ** 2
    return Solution("answered" if value <= 1.0005 else "out_of_reach", answers=(marks.power(value),), used=used, topic="falloff")


def _its_place(query: Query, ask: Ask, guides: list[Fact], there: Fact) -> Solution | None:
    if query.has("power") and len({f.value for f in query.all("power")}) > 1:
        return None
    mine = _of(there, guides, query.text)
    other = next(g for g in guides if g is not mine)
    one, two = _alike(mine, other)
    unit = preferred_unit(query, ask.unit)
    used = (*guides, there, *query.all("power"), *query.all("count"))
    return Solution(answers=(marks.distance(there.value * two / one, unit),), used=used, topic="falloff", working=(f"{there.value / LENGTH[unit]:.4g} {unit} × {two:g} / {one:g}",),
                    notes=("At the same power and film speed the distance goes as the guide number.",))


def _its_power(query: Query, guides: list[Fact], placed: list[Fact]) -> Solution | None:
    first, second = guides
    powers = query.all("power")
    if len(powers) > 1 or not first.start < second.start or _of(placed[0], guides, query.text) is not first or _of(placed[1], guides, query.text) is not second:
        return None
    one, two = _alike(first, second)
    value = (powers[0].value if powers else 1.0) * (one / placed[0].value * placed[1].value / two) ** 2
    return Solution("answered" if value <= 1.0005 else "out_of_reach", answers=(marks.power(value),), used=(*guides, *placed, *powers), topic="falloff")


_SIZE = Pattern(r"\b(?:(?P<big>big\w*|larg\w+|strong\w*|more powerful|great\w+)|small\w*|little|weak\w*|less powerful)(?: one| flash| gun| head| unit)?\b[^.,;?!\d]{0,24}$", re.I)


def _of(place: Fact, guides: list[Fact], text: str) -> Fact:
    """The flash that stands there: the one named alike, else the one told nearest before, else the nearest."""
    named = [g for g in guides if g.of and g.of == place.of]
    if len(named) == 1:
        return named[0]
    by_size = _SIZE.search(text[max(0, place.start - 40) : place.start])
    if by_size is not None:
        return (max if by_size["big"] else min)(guides, key=lambda g: g.value)
    same = [g for g in guides if g.sentence == place.sentence]
    if len(same) == 1:
        return same[0]
    before = [g for g in guides if g.end <= place.start]
    return before[-1] if before else guides[0]


def _alike(one: Fact, two: Fact) -> tuple[float, float]:
    """Both guide numbers in one unit; with no unit told of one, it is the other's."""
    scale = (LENGTH.get(one.unit or two.unit, 1.0), LENGTH.get(two.unit or one.unit, 1.0))
    return (one.value, two.value) if scale[0] == scale[1] else (one.value * scale[0], two.value * scale[1])
