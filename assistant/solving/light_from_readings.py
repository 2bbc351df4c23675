"""Where a light stands, from what it reads at two places on one line: "f/8 at the near chair, f/5.6 a chair 1.2 m further"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.scales import aperture_difference_stops
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import speak_length

_FARTHER = Pattern(r"\s*(?:further|farther|behind|beyond|back|away from (?:it|the first|the near))\b", re.I)
_FAR_ASKED = Pattern(r"\b(?:far|farther|second|back|further) (?:one|chair|place|spot|row|table|person|end)\b[^?]{0,24}\?|\bfrom the (?:far|back|second)", re.I)


def solve(query: Query, ask: Ask) -> Solution | None:
    """The distance to the nearer place: the readings fall as the distance grows, f-number for distance (inverse square law)."""
    read = [f for f in query.all("aperture") if not f.of]
    apart = [f for f in query.facts if f.quantity in ("move", "gap")]
    if len(read) != 2 or len(apart) != 1 or query.has("distance") or apart[0].value <= 0 or not _FARTHER.match(query.text[apart[0].end :]):
        return None
    if {f.quantity for f in query.facts} - {"aperture", "move", "gap", "film_speed", "power", "remark", "place"}:
        return None
    stops = abs(aperture_difference_stops(read[0].value, read[1].value))
    if stops == 0:
        return None
    near = apart[0].value / (2.0 ** (stops / 2) - 1)
    far, unit = near + apart[0].value, preferred_unit(query, ask.unit)
    answers = (marks.distance(near, unit, "near"), marks.distance(far, unit, "far"))
    asked_far = _FAR_ASKED.search(query.text) is not None
    lead = f"{speak_length(near, unit)} to the nearer place, {speak_length(far, unit)} to the farther one."
    return Solution(answers=answers[::-1] if asked_far else answers, used=query.facts, topic="change", lead=lead, working=(f"2^({stops:.3g} / 2) = {far / near:.4g} times as far",))
