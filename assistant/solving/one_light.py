"""One light only: what is told of it is told of the flash, whatever it is called."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

ROLES = frozenset({"hair", "rim", "background", "fill", "key"})
_OF_IT = ("guide_number", "distance", "aperture", "power", "loss")


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query with the name of its only light left out: "the hair light to read f/8, GN 30 m, 1.5 m: what power?"."""
    read = _reading_moved(query)
    if read is not None:
        return read, (), ()
    guides = query.all("guide_number")
    of = guides[0].of if len(guides) == 1 else ""
    if of not in ROLES:
        return None
    told = [f for f in query.facts if f.quantity in _OF_IT]
    if not query.has("distance", "aperture") and not query.has("power", "distance") or not query.asks_for("power", "distance", "aperture", "film_speed"):
        return None
    if any(f.of != of for f in told) or any(a.of not in ("", of) for a in query.asks) or any(query.has(q) for q in ("relation", "ratio", "stops", "exposure_value")):
        return None
    return replace(query, facts=tuple(replace(f, of="") if f in told else f for f in query.facts), asks=tuple(replace(a, of="") for a in query.asks)), (), ()


_CAMERA_AT = Pattern(
    r"\b(?:shooting|shot|working|exposing|(?:camera|lens)(?: is| stays| set| left)?|(?:i'm|i am|we're|we are)(?: all)?)(?: (?:set|staying|still|it|all|this))*(?: at| on| to)? (?:about )?$", re.I)
"""Right before what the camera is at, while one lamp's own reading is told and asked: "shooting at f/8"."""


def _reading_moved(query: Query) -> Query | None:
    """"a rim light twelve feet away reads f/8: how far away would it be at one stop brighter?": no other light is spoken of, and what the camera is at is no matter."""
    read = [f for f in query.facts if f.quantity == "aperture" and f.of]
    if len(read) == 1 and query.asks and all((a.quantity, a.of) == ("aperture", read[0].of) for a in query.asks):
        query = query.with_facts(f for f in query.facts if not (f.quantity == "aperture" and not f.of and _CAMERA_AT.search(query.text[max(0, f.start - 40) : f.start])))
    named = {f.of for f in query.facts if f.of} | {a.of for a in query.asks if a.of not in ("", "move")} | set(query.mentioned)
    kinds = [f.quantity for f in query.facts]
    if len(named) != 1 or not named <= ROLES or sorted(kinds) not in (["aperture", "distance", "stops"], ["aperture", "aperture", "distance"], ["aperture", "distance", "distance"]):
        return None
    return replace(query, facts=tuple(replace(f, of="") for f in query.facts), asks=tuple(replace(a, of=a.of if a.of == "move" else "") for a in query.asks))
