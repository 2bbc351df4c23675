"""A flash that stands so far behind the camera, or before it, and the camera so far from the subject: the way of the light is the sum, or the difference."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_PLACED = Pattern(r" ?(?:(?P<behind>behind|in back of|farther back than|further back than)|(?P<before>in front of|ahead of|forward of|before)) (?:the |my )?(?:camera|me|tripod|lens|us)\b", re.I)
_A_LIGHT = Pattern(r"\b(?:flash\w*|light|lamp|strobe|gun|speedlight|head|key|umbrella|soft ?box|it)\b[^.;?!\d]{0,40}$", re.I)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the one distance from the flash to the subject."""
    lengths = [f for f in query.facts if f.quantity in ("distance", "camera_distance") and f.of in ("", "camera", "key")]
    if len(lengths) != 2 or not query.has("guide_number") or any(f.quantity in ("distance", "path") for f in query.facts if f not in lengths):
        return None
    for one, other in (lengths, lengths[::-1]):
        found = _PLACED.match(query.text, one.end)
        if one.origin != "said" or found is None or not _A_LIGHT.search(query.text[max(0, one.start - 60) : one.start]):
            continue
        way = other.value + one.value * (1 if found["behind"] else -1)
        if way <= 0:
            return None
        whole = replace(one, quantity="distance", value=way, of="", cue="")
        note = "The light's way to the subject is what counts, so the camera's distance and the flash's place " + ("are added." if found["behind"] else "are taken from each other.")
        return query.with_facts(whole if f is one else f for f in query.facts if f is not other), (other,), (note,)
    return None
