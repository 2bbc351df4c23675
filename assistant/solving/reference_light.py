"""One light by another that it is counted from, or the other way round: "the fill reads f/4, two stops under the sun: what does the sun read?"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.ambient import aperture_after
from assistant.places import ROOMS
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_CALLED = {
    "ambient": rf"ambient|daylight|sun(?:light)?|sky|window|available light|{ROOMS}", "fill": r"fill|flash|strobe|gun", "key": r"key|main", "hair": r"hair", "rim": r"rim", "kicker": r"kicker",
    "accent": r"accent", "background": r"background (?:light|head|lamp|flash)", "backdrop": r"wall|backdrop|background|paper|backcloth",
}
_NAMES = {of: Pattern(rf"\b(?:{words})\b", re.I) for of, words in _CALLED.items()}
_CLAUSE = Pattern(r"[.;:?!,](?!\d)\s*")
_LITTLE = frozenset({"aperture", "relation", "film_speed", "shutter", "remark", "place"})


def solve(query: Query) -> Solution | None:
    """The reading of the light that is counted from, or of a backdrop that is counted, by the other's; None where the question is any other."""
    said, read = query.all("relation"), query.all("aperture")
    if len(said) != 1 or len(read) != 1 or {f.quantity for f in query.facts} - _LITTLE or said[0].cue not in ("less", "more") or len(query.asks) != 1:
        return None
    subject, reference = said[0].of or read[0].of, said[0].to
    stops = abs(said[0].value) * (1 if said[0].cue == "more" else -1)
    if subject == "backdrop" and reference == "key" and query.asks[0].of != "key" and _read_of(read[0], "key", query.text) and (_THERE.search(query.text) or _asked_of(query.text, "key", "backdrop", query.asks[0].of)):
        return Solution(answers=(marks.aperture(aperture_after(read[0].value, stops), subject),), used=query.facts, topic="relations", lead="The background should read")
    if subject not in _NAMES or reference not in _NAMES or read[0].of not in (subject, "") or not _read_of(read[0], subject, query.text) or not _asked_of(query.text, subject, reference, query.asks[0].of):
        return None
    name = "daylight" if reference == "ambient" else reference
    return Solution(answers=(marks.aperture(aperture_after(read[0].value, -stops), name),), used=query.facts, topic="relations", lead=f"The {name} reads")


_THERE = Pattern(r"\b(?:what|which)\b[^?]*\b(?:meter|read(?:ing)?|show)\b[^?]*\b(?:there|on it|off it)\W*$", re.I)
"""The backdrop was named before: "what should the meter read there?"."""


def _read_of(reading: Fact, subject: str, text: str) -> bool:
    """Whether the f-number is told of the light that is counted."""
    opens = max((m.end() for m in _CLAUSE.finditer(text[: reading.start])), default=0)
    return reading.of == subject or _NAMES[subject].search(text, opens, reading.start) is not None


def _asked_of(text: str, subject: str, reference: str, asked: str) -> bool:
    """Whether the last sentence asks for the other light alone."""
    last = re.split(r"[.;:!](?!\d)\s+", text.rstrip(" ?!."))[-1]
    return (asked == reference or _NAMES[reference].search(last) is not None) and asked != subject and _NAMES[subject].search(last) is None
