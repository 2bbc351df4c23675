"""The power of a flash close up: so much as the lens marked for it, the light lost to the extension and what was metered ask for."""

from __future__ import annotations

import math

from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.lens_geometry import magnification_of
from assistant.solving.solution import Solution

_READS = Pattern(r"\b(?:reads?|reading|meter(?:s|ed)?(?: reading)?|gives?|gave|shows?|says|measures?|measured)(?: (?:me|us|about|of|is|was|an?))*\s*$")
_ELSE = frozenset({"guide_number", "distance", "energy", "film_speed", "loss", "filter_loss", "nd", "factor", "modifier", "camera_filter", "power_down", "stops", "count", "relation"})


def solve(query: Query) -> Solution | None:
    """"At full it meters f/64; life size with f/22 marked: what power": as much as the wanted f-number, made smaller by the extension, takes of what was metered; None where that is not what was told."""
    apertures, powers = query.all("aperture"), query.all("power")
    if len(apertures) != 2 or len(powers) > 1 or not query.asks_for("power") or any(f.quantity in _ELSE for f in query.facts):
        return None
    read = [f for f in apertures if _READS.search(query.text[: f.start].lower())]
    size, used = magnification_of(query) if len(read) == 1 else (None, ())
    if size is None or size <= 0:
        return None
    wanted = next(f for f in apertures if f is not read[0])
    lost = math.log2(optics.bellows_factor_from_magnification(size))
    value = _strength(powers) * (wanted.value / read[0].value) ** 2 * 2**lost
    return Solution(answers=(marks.power(value),), used=(*apertures, *powers, *used), topic="change",
                    working=(f"metered f/{read[0].value:g}, wanted f/{wanted.value:g}, and {lost:.2g} stops lost to the extension",))


def _strength(powers: list[Fact]) -> float:
    return powers[0].value if powers else 1.0
