"""One speed on two scales: "27 DIN is the same as 400", "is 200 24 DIN?", the second figure with no scale named."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.bare import UNIT_NEXT
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark

_SPEEDS = frozenset({"film_speed", "number", "remark"})
_EQUALS = Pattern(r"^\W*(?:(?:is|are|was|be|equals?|equivalent|means?|makes|matches|corresponds|comes|works|out|amounts|at|to|as|the|same|thing|film|speed|a|an|iso|asa|really|just|about|exactly|in|of|that's|it's|that|not|isn't|din|degrees?)\b\W*)*$")
"""What may stand between two figures that are said to be one speed, and nothing else."""
_SMALLEST = 6


def one_speed(facts: Sequence[Fact], said: str) -> tuple[Fact, Fact] | None:
    """The speed in degrees and the figure that is held to be the same, where nothing else is told; `said` is in small letters."""
    if len(facts) > 4 or not {f.quantity for f in facts} <= _SPEEDS:
        return None
    told = sorted((f for f in facts if f.quantity != "remark" and not f.bad), key=lambda f: f.start)
    degrees = [f for f in told if f.quantity == "film_speed" and f.unit == "DIN"]
    if len(told) != 2 or len(degrees) != 1 or _EQUALS.match(said[told[0].end : told[1].start]) is None:
        return None
    return degrees[0], next(f for f in told if f is not degrees[0])


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with such a figure as a speed, where it is a mark of the other scale."""
    pair = one_speed(facts, text.lower())
    if pair is None or pair[1].quantity != "number" or not (pair[1].value >= _SMALLEST and is_film_speed_mark(pair[1].value)) or UNIT_NEXT.match(text, pair[1].end):
        return facts
    return [replace(f, quantity="film_speed", unit="", of="") if f is pair[1] else f for f in facts]
