"""The two shapes of a taught fact: a term, and an explanation that keywords call for."""

from __future__ import annotations

from assistant.records import record

COMMON = "common practice, no source"
PHOTOMETRY = "Standard photometric relations (derivation)"
NAVY = "Photography (Basic), NAVEDTRA 14209"


@record
class Term:
    """A trade term: all its names (singular, lower case), one to four plain sentences, and their source."""

    names: tuple[str, ...]
    text: str
    source: str


@record
class Why:
    """An explanation. Every pattern of `hears` must be found; `example` is a phrase it must hear."""

    term: Term
    hears: tuple[str, ...]
    example: str


def why(name: str, hears: tuple[str, ...], text: str, source: str, example: str) -> Why:
    """One row of an explanation table."""
    return Why(Term((name,), text, source), hears, example)
