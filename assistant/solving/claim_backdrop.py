"""Claims of what a backdrop will look like in the light of the subject: "wall 3 m behind her, light 1 m from her, will it go black?"."""

from __future__ import annotations

import re

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.placing import scene_of
from assistant.solving.solution import Solution
from assistant.solving.tones import TONES

_GOES = Pattern(r"\b(?:go|goes|going|turns?|looks?|reads?|comes? out|be|is|appear|photograph|render|print|fall)\b[^?.]{0,30}\bblack\b|\b(?:dark|black) enough\b|\bblack\b[^?.]{0,24}\b(?:enough|far enough)\b|\benough\b[^?]{0,30}\bblack\b", re.IGNORECASE)
_BLACK = next((stops, why) for word, stops, why in TONES if "black" in word)
_NEARLY = 1 / 3


def claim_of_black(query: Query) -> Solution | None:
    """Whether a backdrop that only this light reaches falls far enough under the subject to look black."""
    if not query.claim or _GOES.search(query.text) is None or query.has("guide_number") or query.has("stops") or query.has("relation"):
        return None
    scene = scene_of(query)
    if scene is None or scene.near is None or scene.far is None or scene.rows or scene.far <= scene.near:
        return None
    wanted, why = _BLACK
    lost = falloff_stops(scene.near, scene.far)
    holds = lost <= wanted + _NEARLY
    lead = f"{'Yes' if holds else 'No'}. The backdrop gets {speak_stops(-lost)} less than the subject; black takes about {speak_stops(-wanted)}."
    help_ = "" if holds else "Bring the light nearer to the subject, hang the backdrop further behind, or keep the light off it with a flag or a grid."
    return Solution(answers=(Quantity("claim", holds), marks.stops(lost, "background")), used=scene.used, topic="claims", lead=lead, notes=(help_,) if help_ else (),
                    assumed=(Assumed("stops", wanted, "stops", why),))
