"""A time so many stops from another, with no light told: "which shutter speed is three stops slower than 1/125?", "I slowed by two stops to 1/15: where was I?".

Every stop is a doubling of the time; what is slower is longer.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_KINDS = frozenset({"shutter", "stops", "relation", "signed", "remark"})
_SLOWER = Pattern(r"\b(?:slow(?:er|ed|ing)?|long(?:er)|lengthen(?:ed|ing)?|dragg(?:ed|ing))\b", re.I)
_FASTER = Pattern(r"\b(?:fast(?:er)|short(?:er|ened)|quick(?:er)|sped up)\b", re.I)
_FROM_IT = Pattern(r"\b(?:than|from)\s+(?:an? |the )?$", re.I)
_CAME_TO = Pattern(r"\b(?:to|at|now|am on|is)\s+(?:an? |the )?$", re.I)
_WAS = Pattern(r"\b(?:come|came|start(?:ed)?) from\b|\b(?:was|were|had|did)\b[^?]{0,30}\b(?:i|we|it|at|on|before|set)\b[^?]{0,12}\?|\bbefore\b", re.I)


def solve(query: Query) -> Solution | None:
    """The time that is so far from the one told, or the one that it was before; None where a light is told or the way is not."""
    times, sizes = query.all("shutter"), [f for f in query.facts if f.quantity in ("stops", "relation", "signed")]
    if len(times) != 1 or len(sizes) != 1 or {f.quantity for f in query.facts} - _KINDS:
        return None
    slower, faster = _SLOWER.search(query.text) is not None, _FASTER.search(query.text) is not None
    before = query.text[: times[0].start]
    back = _WAS.search(query.text) is not None
    if slower is faster or not (_CAME_TO.search(before) if back else _FROM_IT.search(before)):
        return None
    way = (1 if slower else -1) * (-1 if back else 1)
    return Solution(answers=(marks.shutter(times[0].value * 2.0 ** (way * abs(sizes[0].value))),), used=query.facts, topic="ambient")
