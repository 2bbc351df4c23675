"""Room light known only by how far under it came out: what a change of time or aperture makes of it.

"The room is three stops under at 1/125; what shutter makes it one under?" No reading is
needed for this, since only differences count.
"""

from __future__ import annotations

from assistant import scales
from assistant.answer import Quantity
from assistant.query import Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.daylight import signed
from assistant.solving.solution import Solution


def solve(query: Query, ask: Ask) -> Solution | None:
    """The new time, aperture, film speed, or how far under; None when a reading is there to go by."""
    under = [f for f in query.facts if (f.quantity == "relation" and f.of in ("ambient", "backdrop")) or (f.quantity == "stops" and f.cue in ("less", "more") and f.of in ("", "ambient"))]
    if not under or query.has("exposure_value") or query.has("guide_number"):
        return None
    if ask.quantity == "stops" and len(under) == 1:
        return _now_under(query, under[0])
    if ask.quantity in ("shutter", "aperture", "film_speed") and len(under) >= 2 and len({u.start for u in under}) >= 2:
        return _for_under(query, ask, under[0], under[-1])
    return None


def _now_under(query: Query, before: Fact) -> Solution | None:
    rows = (("shutter", scales.shutter_difference_stops), ("aperture", scales.aperture_difference_stops), ("film_speed", scales.film_speed_difference_stops))
    pairs = [(query.all(q), between) for q, between in rows]
    pairs = [(facts, between) for facts, between in pairs if len(facts) == 2]
    if not pairs:
        return None
    value = signed(before) + sum(between(facts[0].value, facts[1].value) for facts, between in pairs)
    used = (before, *(f for facts, _ in pairs for f in facts))
    return Solution(answers=(marks.stops(value, "ambient"),), used=used, topic="ambient")


def _for_under(query: Query, ask: Ask, before: Fact, after: Fact) -> Solution | None:
    base = query.last(ask.quantity, "") or query.last(ask.quantity, "ambient")
    if base is None or len(query.all(ask.quantity)) != 1:
        return None
    moved = signed(after) - signed(before)
    answer: Quantity = marks.shutter(base.value * 2.0**moved) if ask.quantity == "shutter" else \
        marks.aperture(base.value * 2.0 ** (-moved / 2)) if ask.quantity == "aperture" else marks.film_speed(base.value * 2.0**moved)
    note = f"That is {scales.speak_stops(abs(moved))} {'more' if moved > 0 else 'less'} ambient light."
    if ask.quantity != "shutter":
        note += " The flash changes by as much."
    return Solution(answers=(answer,), used=(base, before, after), topic="ambient", notes=(note,))
