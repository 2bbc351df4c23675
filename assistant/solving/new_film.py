"""Another film put in the camera: "half power gives f/8 here. if I load 400, power?". What the reading was on is told apart, or asked for."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query

_LOADS = Pattern(r"\b(?:load(?:ed|ing)?|put(?:ting)? in|swap(?:ped|ping)? (?:in|to|for)|switch(?:ed|ing)? to|chang(?:e|ed|ing) to|drop(?:ped)? in|go(?:ing)? over to) (?:(?:a|an|the|some|roll|of|in|to|iso|asa) )*$", re.I)


def newly_loaded(query: Query) -> Fact | None:
    """The one film speed told, where it is that of a film put in after something was read; nobody says on which film."""
    speeds = [f for f in query.facts if f.quantity == "film_speed" and f.origin == "said"]
    if len(speeds) != 1 or query.has("guide_number") or query.has("rated") or query.has("shutter"):
        return None
    at = query.text.find(speeds[0].said)
    read = next((f for f in query.facts if f.quantity == "aperture"), None)
    if at < 0 or read is None or not _LOADS.search(query.text[max(0, at - 40) : at]):
        return None
    return speeds[0] if read.origin != "said" or query.text.find(read.said) < at else None
