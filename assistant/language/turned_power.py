"""A flash that is turned up or down by a word, beside another change: "at 6 m with the power doubled"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_TURNED = Pattern(r"\bpower(?:'s| is| was| gets| being)? (?:also |then )?(?P<one>doubl|halv|quarter|quadrupl)(?:ed)\b|\b(?P<two>doubl|halv|quarter|quadrupl)(?:ed|ing|e) (?:the |my |its )?power\b|\b(?P<three>twice|double|half) the power\b", re.I)
_DOWN = {"doubl": -1.0, "halv": 1.0, "quarter": 2.0, "quadrupl": -2.0, "twice": -1.0, "double": -1.0, "half": 1.0}
_POWERS = frozenset({"power", "power_down", "share", "energy", "times"})
NEVER_TURNED = Pattern(r"\b(?:what|how much|which) power\b|\bhow (?:far|much) (?:do i|must i|should i) turn\b|\bif\b[^.?!]{0,24}\bpower\b[^?]*\bhow (?:much|many)\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the stops that the power was turned by, where a reading and one other change are told."""
    turned = _TURNED.search(text)
    kinds = [f.quantity for f in facts]
    if turned is None or kinds.count("aperture") != 1 or not any(len({f.value for f in facts if f.quantity == q}) == 2 for q in ("distance", "film_speed")):
        return facts
    if NEVER_TURNED.search(text) or any(f.quantity in _POWERS and not (turned.start() <= f.start < turned.end()) for f in facts):
        return facts
    word = (turned["one"] or turned["two"] or turned["three"]).lower()
    kept = [f for f in facts if not (turned.start() <= f.start < turned.end())]
    made = replace(facts[0], quantity="power_down", value=_DOWN[word], unit="", of="", cue="", to="", start=turned.start(), end=turned.end(), said=turned.group(), bad="")
    return sorted([*kept, made], key=lambda f: f.start)
