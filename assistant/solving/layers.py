"""How many layers of a thing take so many stops: "each sheet takes 0.4 of a stop, how many for two stops"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.ambient import aperture_after
from assistant.physics.flash import whole_count
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.alike import measured_and_asked
from assistant.solving.solution import Solution

_LAYERS = Pattern(r"\bhow many (?:more |such )?(?:sheets?|layers?|thicknesses|pieces|folds|hankies|hankys|handkerchiefs|tissues|cloths?|nets?|scrims?|gels?|silks?|diffusers?|filters|of (?:them|these|those))\b", re.I)
_EACH = Pattern(r"\b(?:each|every|(?:a|one|a single) (?:sheet|layer|piece|hankie|handkerchief|thickness|fold|ply|silk|scrim|gel|diffuser|tissue|cloth|net)|one of them|apiece|per (?:sheet|layer|piece)|[\w./]+-stop)\b", re.I)
_AT_MOST = Pattern(r"\b(?:at most|no more than|without losing more than|up to)\b", re.I)
_ASIDE = ("modifier", "camera_filter", "count", "remark", "rows", "aperture", "aperture_range")
_STOPS = ("loss", "stops", "relation", "power_down", "filter_loss")


def _readings(query: Query) -> list[Fact]:
    """The two f-numbers that are told, one by one or as a span."""
    read, span = query.all("aperture"), query.last("aperture_range")
    if span is not None and not read:
        read = [span, replace(span, value=span.other)]
    return read if len(read) == 2 and min(f.value for f in read) > 0 and read[0].value != read[1].value else []


def _between(query: Query) -> list[Fact]:
    """What lies between two f-numbers, as the loss that is wanted."""
    ends = _readings(query)
    return [Fact("loss", abs(aperture_difference_stops(ends[0].value, ends[1].value)), start=ends[1].start)] if ends else []


_TO_ASK = frozenset({"modifier", "camera_filter", "count", "remark", "rows", "aperture", "aperture_range", "number"})


_TAKES = Pattern(r"\b(?:cost|tak(?:e|es|ing)|los(?:e|es|ing|s)|swallow|eat|steal|rob|absorb|worth)\w*\b", re.I)
_STRENGTH = Pattern(r"\bhow strong\b|\b(?:strength|density)\b", re.I)
"""A filter's strength is told as it is sold, plus (contract 32)."""


def _some_of_them(query: Query) -> Solution | None:
    """"f/16 bare and f/6.3 through two identical layers: what does a single one cost", or read: its share of the stops that went in all of them."""
    if query.claim or not query.asks_for("stops", "factor", "aperture") or {f.quantity for f in query.facts} - _TO_ASK:
        return None
    gone = _between(query)
    pair = measured_and_asked(query.text) if gone else None
    if pair is None:
        return None
    measured, wanted = pair
    if any(f.quantity in ("number", "count") and f.value != 1 and not any(s.start <= f.start < s.end for s in pair) and f.value not in (measured.many, measured.of or measured.many) for f in query.facts):
        return None
    part = gone[0].value * wanted.many / measured.many
    working = (f"{gone[0].value:.3g} / {measured.many:g}{f' x {wanted.many:g}' if wanted.many > 1 else ''} = {part:.3g}",)
    note = f"{speak_stops(gone[0].value).capitalize()} in {measured.many:g} alike."
    if query.asks[0].quantity == "aperture" and not _TAKES.search(query.text, wanted.start, wanted.start + 60):
        bare = max(f.value for f in _readings(query))
        return Solution(answers=(marks.aperture(aperture_after(bare, -part)),), used=query.facts, topic="losses", notes=(note,), working=working)
    stops, factor = marks.stops(part if _STRENGTH.search(query.text) else -part), marks.factor(part)
    return Solution(answers=(factor, stops) if query.asks[0].quantity == "factor" else (stops, factor), used=query.facts, topic="losses", notes=(note,), working=working)


def solve(query: Query) -> Solution | None:
    """The smallest whole number of layers that takes what is wanted; the greatest where that is a limit (contract 23)."""
    each = _some_of_them(query)
    if each is not None:
        return each
    told = [*[f for f in query.facts if f.quantity in _STOPS and f.value], *_between(query)]
    if not query.asks_for("count") or query.claim or not _LAYERS.search(query.text) or len(told) != 2 or {f.quantity for f in query.facts} - {*_STOPS, *_ASIDE}:
        return None
    if _EACH.search(query.text) is None:
        return None
    one, wanted = sorted(told, key=lambda f: abs(f.value)) if not _between(query) else told
    needed = abs(wanted.value) / abs(one.value)
    limit = _AT_MOST.search(query.text[max(0, wanted.start - 40) : wanted.start]) is not None
    many = int(needed + 1e-6) if limit else whole_count(needed)
    if many < 1:
        return None
    note = f"{many:g} take {speak_stops(many * abs(one.value))}."
    return Solution(answers=(marks.count(many, "layers"), marks.stops(-many * abs(one.value))), used=query.facts, topic="losses", notes=(note,), working=(f"{abs(wanted.value):.3g} / {abs(one.value):.3g} = {needed:.3g}",))
