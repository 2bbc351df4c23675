"""What a flash is turned up or down by, where it is moved as well: "half the distance and quarter power"."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Query

SAID_OF_IT = ("half", "a half", "halved", "halve")
"""How the half of a distance is said, which is no power."""
_POWER_TOO = Pattern(r"\bpower (?:is |was |gets )?(?P<one>doubled|halved|quartered)\b|\b(?P<two>doubl|halv|quarter)(?:ed|ing|e) (?:the )?power\b", re.I)


def turned(query: Query) -> float | None:
    """Stops by which the power is turned besides, where the distance is so many times what it was; None where it stays."""
    told = [f for f in query.all("power") if f.said.strip().lower() not in SAID_OF_IT]
    down = query.all("power_down")
    if told or down:
        return sum(math.log2(f.value) for f in told if f.value > 0) - sum(f.value for f in down)
    besides = _POWER_TOO.search(query.text)
    return {"d": 1.0, "h": -1.0, "q": -2.0}[(besides["one"] or besides["two"])[0].lower()] if besides else None
