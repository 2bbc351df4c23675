"""A flash turned down beside what hangs in its light: "and on top of that I turned the head from full to half power"."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query

_FROM = Pattern(r"\bfrom (?:about )?$", re.I)
_TO = Pattern(r"(?: power| output)?(?: down)? to (?:about |only )?", re.I)


def turned_down(query: Query) -> tuple[tuple[Fact, ...], float]:
    """What tells that the power was changed, and the stops of light that it takes; nothing where it is not plain from what to what.

    Light goes with power, so a power told from one to another takes the logarithm to two of their quotient.
    """
    powers, steps = sorted(query.all("power"), key=lambda f: f.start), query.all("power_down")
    if len(powers) == 2 and not steps and _FROM.search(query.text[: powers[0].start]) and _TO.fullmatch(query.text[powers[0].end : powers[1].start]):
        return tuple(powers), math.log2(powers[0].value / powers[1].value)
    return (tuple(steps), steps[0].value) if len(steps) == 1 and not powers else ((), 0.0)
