"""Two speeds offered for a film whose push or habit is told: "50 or 200 on the meter, it's a 100 roll pulled a stop".

Neither of the two is told of the film: which it is goes by the film and by what is done with it.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import OFFERED, Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark

KINDS = frozenset({"push", "stops", "relation", "signed"})
_EITHER = Pattern(r"(?<![\w./:])(?P<one>\d{1,4}) or (?:(?:at|to|on|as|for|iso|asa|ei) ){0,2}(?P<other>\d{1,4})(?![\w/:]|\.\d| (?:feet|foot|ft|m|metres|met\w*|mm|s|sec\w*|stops?|watt\w*|pops?|heads?)\b)")
_SPEEDS = frozenset({"film_speed", "rated", "number"})
_BESIDE = frozenset({"remark", "place"})
_NEAR = 0.06


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the two that are offered as remarks, where one of them is what the film comes to."""
    found = _EITHER.search(text)
    if found is None:
        return facts
    spans = (found.span("one"), found.span("other"))
    two = [f for f in facts if f.quantity in _SPEEDS and any(start <= f.end - 1 < end for start, end in spans)]
    rest = [f for f in facts if f not in two and f.quantity not in _BESIDE]
    box, shift = [f for f in rest if f.quantity == "film_speed"], [f for f in rest if f.quantity in KINDS]
    offered = (float(found["one"]), float(found["other"]))
    if len(two) != 2 or len(rest) != 2 or len(box) != 1 or len(shift) != 1 or not all(is_film_speed_mark(v) for v in offered) or not _comes_to(box[0], shift[0], offered):
        return facts
    return [replace(f, quantity="remark", unit="", of="", cue=OFFERED) if f in two else f for f in facts]


def _comes_to(box: Fact, shift: Fact, offered: Sequence[float]) -> bool:
    """Whether one of the two is the film's speed so many stops up or down."""
    by = 2.0 ** abs(shift.value)
    return any(abs(speed / right - 1) < _NEAR for speed in offered for right in (box.value * by, box.value / by))
