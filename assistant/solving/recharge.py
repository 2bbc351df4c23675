"""How long a pack takes to fill from empty: what it holds over what the charger puts in each second."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.physics import duration
from assistant.query import Ask, Query
from assistant.solving.solution import Solution, needs


def solve(query: Query, ask: Ask) -> Solution | None:
    """"the charger puts 100 joules a second into a pack that holds 600: how long till it is full?": six seconds."""
    rate, held = query.last("charge_rate"), query.all("energy")
    if rate is None or ask.of not in ("", "recycle", "series"):
        return None
    if not held:
        return needs(("energy",), "I need what the pack holds.", (rate,), "time")
    parts = {f.value for f in query.all("power") if f.value < 1}
    if len(held) != 1 or parts:
        return None
    return Solution(answers=(Quantity("duration", duration.shortest_recycle(held[0].value, rate.value), "s"),), used=(held[0], rate, *query.all("power")), topic="time",
                    working=(f"{held[0].value:g} J at {rate.value:g} J a second",), notes=("From empty, and with nothing lost in the charger; the last part of a charge is often slower.",))
