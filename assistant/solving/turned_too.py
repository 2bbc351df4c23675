"""What else is turned where a light is moved: the flash, "half the distance and quarter power", or the ring of the lens."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.last_question import last_question

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


_TURNED_RING = Pattern(r"\b(?:(?P<open>open\w*)|clos\w+|stop(?:ped|ping) down)(?: (?:it|the lens|the ring|up|down|by|the aperture))* $", re.I)
_NET_ASKED = Pattern(r"\b(?:off|out|net|left|over or under|under or over|come out|over|under)\b", re.I)


def opened_by(query: Query) -> tuple[float, Fact] | None:
    """Stops by which the lens was opened (plus) or closed, told in so many words, where it is asked how far out it then is."""
    told = query.all("stops")
    ring = _TURNED_RING.search(query.text[: told[0].start]) if len(told) == 1 else None
    asked = last_question(query.text)
    if ring is None or asked is None or asked[0] <= told[0].start < asked[1] or not _NET_ASKED.search(query.text[asked[0] : asked[1]]):
        return None
    return abs(told[0].value) * (1 if ring["open"] else -1), told[0]


def stood_on(power: Fact, query: Query, moved: Fact | None) -> bool:
    """Whether this is the power of the light before it was moved, and nothing that was changed with the move."""
    return moved is not None and (moved.origin != "said" or moved.sentence > power.sentence or power.start < moved.start) and not _SET_TO.search(query.text[: power.start]) and _IS_POWER.search(power.said) is not None and not _NOW.match(query.text, power.end)


_NOW = Pattern(r"\W*now\b", re.I)
_IS_POWER = Pattern(r"\d/\d|\bpower\b", re.I)
_SET_TO = Pattern(r"\b(?:turn\w*|dial\w*|drop\w*|cut|put|set|go|going|goes|went|switch\w*|chang\w*|halv\w*|reduc\w*|rais\w*)\b[^.;?!\d]{0,24}$|\b(?:to|by) $", re.I)


def turned_up(power: Fact, stops: float) -> tuple[Quantity, ...]:
    """What makes up for a move as a power, where there is as much: "on 1/8, from 2 m to 4: how many stops more must it give?" is half power."""
    value = power.value * 2**stops
    return (marks.power(value),) if value <= 1.0005 else ()
