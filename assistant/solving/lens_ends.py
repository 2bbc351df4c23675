"""The ends of the lens: "how far will it reach" at its widest aperture, "how close can I get" at its smallest."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_FAR = Pattern(r"\b(?:how far|far(?:thest|est)|furthest|maximum (?:distance|reach)|max (?:distance|reach)|reach|as far as|how many (?:metres|meters|feet|yards|paces) (?:away|off|back|out))\b|\b(?:can|could|will|would) (?:i|it|the flash|my flash) (?:light|reach|cover)\b", re.I)
_NEAR = Pattern(r"\b(?:how (?:close|near)|near(?:est)|closest|minimum distance)\b", re.I)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the aperture of the lens's end that bounds the distance, where no aperture was said."""
    if not query.has("guide_number") or query.has("aperture") or query.has("power") and any(f.cue == "want" for f in query.facts):
        return None
    if not query.asks_for("distance") and not (query.claim and query.has("distance")):
        return None
    far, near = _FAR.search(query.text) is not None, _NEAR.search(query.text) is not None
    if far == near:
        return None
    wide, small = query.last("widest_aperture"), query.last("smallest_aperture")
    span = query.last("aperture_range")
    end = (wide or span) if far else (small or span)
    if end is None:
        return None
    value = end.other if end is span and near else end.value
    at = replace(end, quantity="aperture", value=value, of="", cue="")
    note = f"Reckoned with the lens at f/{value:g}, its {'widest' if far else 'smallest'}."
    return query.with_facts((*query.facts, at)), (end,), (note,)
