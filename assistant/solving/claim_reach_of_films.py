"""Claims of how far a flash carries on one film and on another: "does ISO 1600 carry it twice as far as 400?".

At one aperture the distance goes with the root of the film speed (guide number, NAVEDTRA 14209 ch. 4).
"""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.solution import Solution

_TIMES = {"twice": 2.0, "double": 2.0, "half": 0.5, "three times": 3.0, "four times": 4.0, "1.4 times": 2**0.5, "a third": 1 / 3, "a quarter": 0.25, "eight times": 8.0, "sixteen times": 16.0}
_SO_FAR = Pattern(r"\b(?P<size>" + "|".join(sorted(_TIMES, key=len, reverse=True)) + r")(?: as far(?: away)?| the (?:reach|distance|range|throw)| further)\b(?: (?:as|than|of|that of|with|on|at))*", re.I)
_CARRIES = Pattern(r"\b(?:reach\w*|carr\w+|far|throw\w*|range)\b", re.I)
_BESIDE = frozenset({"film_speed", "rated", "remark", "place"})
_TOLERANCE = 0.06


def claim_of_reach(query: Query) -> Solution | None:
    """The verdict, where two films are told, the first before so many times and the second after; None else."""
    films, size = [f for f in query.facts if f.quantity in ("film_speed", "rated")], _SO_FAR.search(query.text)
    if len(films) != 2 or size is None or not _CARRIES.search(query.text) or {f.quantity for f in query.facts} - _BESIDE:
        return None
    first, second = films
    if not first.end <= size.start() < second.start:
        return None
    right, said = math.sqrt(first.value / second.value), _TIMES[size["size"].lower()]
    holds = abs(right / said - 1) < _TOLERANCE
    lead = f"{'Yes' if holds else 'No'}: at one aperture the flash carries {right:.2g} times as far on ISO {first.value:g} as on ISO {second.value:g}."
    return Solution(answers=(Quantity("claim", holds),), used=(first, second), lead=lead, topic="claims", notes=("The distance goes with the root of the film speed.",))
