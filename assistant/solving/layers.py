"""How many layers of a thing take so many stops: "each sheet takes 0.4 of a stop, how many for two stops"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.flash import whole_count
from assistant.query import Fact, Query
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

_LAYERS = Pattern(r"\bhow many (?:more |such )?(?:sheets?|layers?|thicknesses|pieces|folds|hankies|hankys|handkerchiefs|tissues|cloths?|nets?|scrims?|gels?|silks?|diffusers?|filters|of (?:them|these|those))\b", re.I)
_EACH = Pattern(r"\b(?:each|every|(?:a|one|a single) (?:sheet|layer|piece|hankie|handkerchief|thickness|fold|ply|silk|scrim|gel|diffuser|tissue|cloth|net)|one of them|apiece|per (?:sheet|layer|piece)|[\w./]+-stop)\b", re.I)
_AT_MOST = Pattern(r"\b(?:at most|no more than|without losing more than|up to)\b", re.I)
_ASIDE = ("modifier", "camera_filter", "count", "remark", "rows", "aperture", "aperture_range")
_STOPS = ("loss", "stops", "relation", "power_down", "filter_loss")


def _between(query: Query) -> list[Fact]:
    """What lies between two f-numbers, as the loss that is wanted."""
    read, span = query.all("aperture"), query.last("aperture_range")
    ends = [f.value for f in read] if len(read) == 2 else [span.value, span.other] if span is not None and not read else []
    if len(ends) != 2 or min(ends) <= 0 or ends[0] == ends[1]:
        return []
    return [Fact("loss", abs(aperture_difference_stops(*ends)), start=read[-1].start if read else span.start if span else 0)]


_OF_EACH = Pattern(r"\b(?:each|every|apiece|a single|one of (?:them|these|those)|(?:one|a) (?:layer|sheet|thickness|net|silk|scrim|gel))\b", re.I)


def _each_of(query: Query) -> Solution | None:
    """"three equal layers took f/16 down to f/8: what does each cost": its share of the stops that went in all of them."""
    rows = [f for f in query.all("rows") if f.unit == "layers" and f.value >= 2]
    gone = _between(query) if len(rows) == 1 else []
    if len(gone) != 1 or not query.asks_for("stops", "factor") or query.claim or {f.quantity for f in query.facts} - set(_ASIDE) or any(f.quantity == "rows" and f.value > 1 and f is not rows[0] for f in query.facts):
        return None
    if not _OF_EACH.search(query.text, max(f.end for f in query.facts if f.quantity in ("aperture", "aperture_range"))):
        return None
    one = gone[0].value / rows[0].value
    stops, factor = marks.stops(-one), marks.factor(one)
    return Solution(answers=(factor, stops) if query.asks[0].quantity == "factor" else (stops, factor), used=query.facts, topic="losses", working=(f"{gone[0].value:.3g} / {rows[0].value:g} = {one:.3g}",))


def solve(query: Query) -> Solution | None:
    """The smallest whole number of layers that takes what is wanted; the greatest where that is a limit (contract 23)."""
    each = _each_of(query)
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
