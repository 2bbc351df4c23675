"""Guide numbers told for each shutter speed: which of them counts. With bulbs the shutter cuts off part of the burn."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import marks

_SAME_MARK = 0.04
"""1/125 and 1/128 are one mark."""

_WITH_OPEN = Pattern(r"\b(?:open(?: flash)?|on (?:b|t|x)|slow(?:er)?|x sync|time exposure)\W*(?:(?:is|at|has|of|the|a|it's) )*$", re.I)
"""The row of a table for a shutter that is left open."""


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the guide number of the shutter speed that is set in place of the table."""
    rows = query.all("shutter_row")
    if len(rows) < 2:
        return None
    setting = query.last("shutter")
    row = None if setting is None else next((r for r in reversed(rows) if math.isclose(r.other, setting.value, rel_tol=_SAME_MARK)), None)
    facts = [f for f in query.facts if f.quantity not in ("shutter_row", "guide_number")]
    if setting is None or row is None:
        return query.with_facts(facts), tuple(rows), ()
    known = query.first("guide_number")
    idle = tuple([f for f in query.all("guide_number") if _WITH_OPEN.search(query.text[max(0, f.start - 30) : f.start])])
    unit = row.unit or (known.unit if known is not None else "")
    guide = replace(row, quantity="guide_number", unit=unit, other=math.nan)
    plainer = replace(query, facts=(guide, *facts), cues=query.cues - {"hss"})  # what high-speed sync costs is in the table
    return plainer, (*rows, *idle, setting), (f"Only the guide number at {marks.shutter(row.other).set} counts.",)
