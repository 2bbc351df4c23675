"""Sharpness by figures that are the same for every lens: half the hyperfocal distance, the other limit, the hyperfocal distance at another stop.

Of the thin-lens form (`physics.optics`) 1/near + 1/far = 2/focus is exact; that the hyperfocal distance goes as one over
the f-number holds but for one focal length, which is nothing beside it.
"""

from __future__ import annotations

import math

from assistant.physics import optics
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.sharp_limits import length
from assistant.solving.solution import Solution

_ASIDE = frozenset({"format", "remark", "place"})


def solve(query: Query) -> Solution | None:
    """What a limit, a focus or a hyperfocal distance says of another; None where a lens is told, which then decides."""
    asked = [a.quantity for a in query.asks]
    if sorted(asked) == ["aperture", "hyperfocal"] and len(query.all("aperture")) == 1:
        asked = ["aperture"]  # "at which stop is it 10 m?"
    if len(asked) != 1 or query.claim or query.has("focal_length") or any(f.origin != "said" for f in query.facts):
        return None
    kinds = {f.quantity for f in query.facts} - _ASIDE
    quantity = asked[0]
    if quantity == "hyperfocal" and kinds == {"sharp_limit"}:
        return _twice_the_near(query)
    if quantity in ("near_limit", "far_limit") and kinds == {"focus_distance", "sharp_limit"}:
        return _other_limit(query, quantity)
    if quantity in ("hyperfocal", "aperture") and kinds <= {"focus_distance", "distance", "aperture"} and "hyperfocal" in query.cues:
        return _at_another_stop(query, quantity)
    return None


def _twice_the_near(query: Query) -> Solution | None:
    """"focused at the hyperfocal distance all was sharp from 3 m: what is it?": twice the near limit."""
    limits = query.all("sharp_limit")
    near = [f for f in limits if math.isfinite(f.value)]
    if len(near) != 1 or not (near[0].cue == "near_limit" or len(limits) == 2):
        return None
    return Solution(answers=(length("hyperfocal", 2 * near[0].value, near[0].unit),), used=tuple(limits), topic="focus", working=("focused at the hyperfocal distance, the near limit is half of it",))


def _other_limit(query: Query, quantity: str) -> Solution | None:
    """"focused at 5 m the near limit is 3 m: where's the far one?": 1/near + 1/far = 2/focus."""
    focus, told = query.all("focus_distance"), query.all("sharp_limit")
    if len(focus) != 1 or len(told) != 1 or math.isinf(focus[0].value) or not math.isfinite(told[0].value) or told[0].cue == quantity:
        return None
    if (told[0].value < focus[0].value) is not (quantity == "far_limit"):
        return None  # the limit that is told lies on the side that is asked
    value = optics.other_limit(focus[0].value, told[0].value)
    return Solution(answers=(length(quantity, value, focus[0].unit),), used=(*focus, *told), topic="focus", working=("one over the near limit and one over the far limit are two over the focus",))


def _at_another_stop(query: Query, quantity: str) -> Solution | None:
    """"at f/8 the hyperfocal distance is 10 m: what is it at f/16?", or the f-number for another one of the same lens."""
    stops, lengths = _each(query, "aperture"), [*_each(query, "focus_distance"), *_each(query, "distance")]
    wanted = (2, 1) if quantity == "hyperfocal" else (1, 2)
    if (len(stops), len(lengths)) != wanted or min(f.value for f in (*stops, *lengths)) <= 0 or not all(math.isfinite(f.value) for f in lengths):
        return None
    used, note = (*stops, *lengths), ("It goes as one over the f-number.",)
    if quantity == "hyperfocal":
        first = min(stops, key=lambda f: (f.sentence != lengths[0].sentence, abs(f.start - lengths[0].start)))
        other = next(f for f in stops if f is not first)
        return Solution(answers=(length("hyperfocal", lengths[0].value * first.value / other.value, lengths[0].unit),), used=used, topic="focus", notes=note)
    first_length = min(lengths, key=lambda f: (f.sentence != stops[0].sentence, abs(f.start - stops[0].start)))
    other_length = next(f for f in lengths if f is not first_length)
    return Solution(answers=(marks.aperture(stops[0].value * first_length.value / other_length.value),), used=used, topic="focus", notes=note)


def _each(query: Query, quantity: str) -> list[Fact]:
    """The values told of a quantity, each once."""
    return list({f.value: f for f in reversed(query.all(quantity))}.values())[::-1]
