"""How many layers of a thing take so many stops: "each sheet takes 0.4 of a stop, how many for two stops"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.flash import whole_count
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_LAYERS = Pattern(r"\bhow many (?:more |such )?(?:sheets?|layers?|thicknesses|pieces|folds|hankies|hankys|handkerchiefs|tissues|cloths?|nets?|scrims?|gels?|silks?|diffusers?|filters|of (?:them|these|those))\b", re.I)
_EACH = Pattern(r"\b(?:each|every|a (?:sheet|layer|piece|hankie|tissue|cloth|net)|one (?:sheet|layer|piece|hankie|tissue|cloth|net|of them)|apiece|per (?:sheet|layer|piece))\b", re.I)
_AT_MOST = Pattern(r"\b(?:at most|no more than|without losing more than|up to)\b", re.I)
_STOPS = ("loss", "stops", "relation", "power_down", "filter_loss")


def solve(query: Query) -> Solution | None:
    """The smallest whole number of layers that takes what is wanted; the greatest where that is a limit (contract 23)."""
    told = [f for f in query.facts if f.quantity in _STOPS and f.value]
    if not query.asks_for("count") or query.claim or not _LAYERS.search(query.text) or len(told) != 2 or {f.quantity for f in query.facts} - {*_STOPS, "modifier", "count", "remark", "rows"}:
        return None
    if _EACH.search(query.text) is None:
        return None
    one, wanted = sorted(told, key=lambda f: abs(f.value))
    needed = abs(wanted.value) / abs(one.value)
    limit = _AT_MOST.search(query.text[max(0, wanted.start - 40) : wanted.start]) is not None
    many = int(needed + 1e-6) if limit else whole_count(needed)
    if many < 1:
        return None
    note = f"{many:g} take {speak_stops(many * abs(one.value))}."
    return Solution(answers=(marks.count(many, "layers"), marks.stops(-many * abs(one.value))), used=query.facts, topic="losses", notes=(note,), working=(f"{abs(wanted.value):.3g} / {abs(one.value):.3g} = {needed:.3g}",))
