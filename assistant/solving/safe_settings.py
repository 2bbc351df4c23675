"""The settings between which a film still passes: what is right, and so much over and under it."""

from __future__ import annotations

from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.leeway import tolerance
from assistant.solving.solution import Solution


def solve(query: Query) -> Solution | None:
    """"f/8 is right, the slide takes half a stop either way": from the widest that still passes to the smallest, or from the shortest time to the longest."""
    ask = query.asks[0] if query.asks else None
    if ask is None or "safe_span" not in query.cues or ask.quantity not in ("aperture", "shutter") or len(query.all(ask.quantity)) != 1:
        return None
    over, under, used, assumed = tolerance(query)
    if not used or len([f for f in query.facts if f.quantity in ("stops", "loss", "signed", "relation")]) != len(used):
        return None
    right = query.all(ask.quantity)[0]
    if ask.quantity == "aperture":
        ends = (marks.aperture(right.value * 2.0 ** (-over / 2), "from"), marks.aperture(right.value * 2.0 ** (under / 2), "to"))
    else:
        ends = (marks.shutter(right.value * 2.0**-under, "from"), marks.shutter(right.value * 2.0**over, "to"))
    first, last = (over, under) if ask.quantity == "aperture" else (under, over)
    ways = ("over", "under") if ask.quantity == "aperture" else ("under", "over")
    lead = f"From {ends[0].set} ({speak_stops(first)} {ways[0]}) to {ends[1].set} ({speak_stops(last)} {ways[1]})."
    return Solution(answers=ends, used=(right, *used), assumed=assumed, lead=lead, topic="film")
