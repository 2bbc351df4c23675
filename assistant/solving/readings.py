"""Readings: several lights each metered alone; together their light adds."""

from __future__ import annotations

import math

from assistant.physics.flash import sum_of_light
from assistant.query import Query
from assistant.solving.lights import NOT_SUBJECT
from assistant.solving.marks import aperture
from assistant.solving.solution import Solution


def solve(query: Query) -> Solution | None:
    """The aperture for two lights or more that were each read by themselves."""
    alike = _each_alike(query)
    if alike is not None:
        return alike
    named = {f.of for f in query.facts if f.quantity == "aperture" and f.of not in ("", "ambient", "camera", "front", "back")}
    ask = query.asks[0] if query.asks else None
    return metered_sum(query) if len(named) > 1 and ask is not None and ask.of in ("", "both") and not query.has("shutter") else None


def _each_alike(query: Query) -> Solution | None:
    """"each light alone reads f/8, key and fill: both together?": two of one reading."""
    read = query.all("aperture")
    if len(read) != 1 or len(query.facts) != 1 or not query.cues & {"both", "combined"} or not query.cues & {"each", "one_light"} or not query.asks_for("aperture"):
        return None
    return Solution(answers=(aperture(read[0].value * math.sqrt(2.0)),), used=(read[0],), topic="flash")


def metered_sum(query: Query) -> Solution | None:
    """Several readings, each of one light alone: together their light adds."""
    read = [f for f in query.facts if f.quantity == "aperture" and f.of not in NOT_SUBJECT]
    count_said = query.last("count")
    if len(read) == 1 and count_said and count_said.unit == "flashes" and not query.has("guide_number") and query.cues & {"each", "one_light", "meter", "name_meter"}:
        value = read[0].value * math.sqrt(count_said.value)
        return Solution(answers=(aperture(value),), used=(read[0], count_said), topic="flash")
    if len(read) < 2 or query.has("guide_number") or query.has("distance") or any(f.of in ("ambient", "camera") for f in read):
        return None
    if not (query.cues & {"both", "combined", "one_light", "each"} or len({f.of for f in read}) == len(read)):
        return None
    return Solution(answers=(aperture(sum_of_light(f.value for f in read)),), used=tuple(read) + ((count_said,) if count_said else ()), topic="flash")


