"""Whether a flash lights all that the lens sees: the spread of the one against the angle of the other."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.solving.claim_denial import denials
from assistant.solving.solution import Solution

_LIT = Pattern(r"\b(?:flash|lamp|light|beam|head|spread\w*|gun|strobe|it|that)\b[^.?]{0,40}\b(?:reach\w*|cover\w*|lights?|fills?|illuminat\w*|wide enough|get\w* into|enough)\b|\b(?:edges|corners|sides|ends)\b[^.?]{0,20}\b(?:lit|dark|covered|black)\b", re.I)
_DARK = Pattern(r"\b(?:dark|black|unlit|vignett\w*|fall off|cut off)\b", re.I)


def claim_of_coverage(query: Query) -> Solution | None:
    """"it spreads 60 degrees side to side, a 28 mm lens: does it light the whole width": the angle against that of the lens."""
    degrees = query.all("degrees") or query.all("zoom")
    if not query.claim or len(degrees) != 1 or len(query.all("focal_length")) != 1 or query.has("guide_number") or _LIT.search(query.text) is None:
        return None
    if degrees[0].quantity == "zoom":
        return _by_zoom(query, degrees[0].value, query.all("focal_length")[0].value * 1000)
    from assistant.solving.lens_geometry import solve

    found = solve(replace(query, asks=(Ask("coverage", "", "degrees"),)))
    if found is None or found.status != "answered":
        return None
    angle = next((q for q in found.answers if q.quantity == "coverage"), None)
    if angle is None or not isinstance(angle.value, (int, float)):
        return None
    covers = degrees[0].value >= float(angle.value) - 0.5
    holds = covers is not (_DARK.search(query.text) is not None and not denials(query.text.lower()))
    lead = f"{'Yes' if holds else 'No'}. The lens sees {float(angle.value):.3g} degrees and the flash lights {degrees[0].value:.3g}."
    return replace(found, lead=lead, answers=(Quantity("claim", holds), angle), used=query.facts, topic="claims")


def _by_zoom(query: Query, head: float, lens: float) -> Solution:
    """The zoom of a head is named by the lens that it is wide enough for."""
    covers = head <= lens * 1.02
    holds = covers is not (_DARK.search(query.text) is not None and not denials(query.text.lower()))
    why = "the lens sees no wider than the head lights" if covers else "the lens sees wider than the head lights, so the corners go dark: zoom the head out or use the wide panel"
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}: {why}.")
