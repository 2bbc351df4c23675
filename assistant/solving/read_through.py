"""A reading of a light with what stands before it on: "the softbox reads f/8" lacks nothing of what a softbox takes."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.physics.flash import times_the_light
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.solution import Solution
from assistant.solving.taken_off import is_taken_off

_READS = Pattern(r"(?: light| head| key| flash| lamp)?(?:,? (?:each|both|each one|each of them|alone|by itself|on its own))*[, ]*\b(?:reads?|reading|meter(?:s|ed|ing)?|gives?|giving|shows?|says)(?: (?:about|me|us))*\s*")
_PLACED = Pattern(r"[, ]*(?:(?:one |on |to |at )*(?:each|either) side(?: of (?:him|her|it|them|the \w+))?)?[, ]*(?:at )?")
_EACH_SO = Pattern(r"[\s,]*(?:each|apiece)\b")
"""After a reading: "two umbrellas either side, f/8 each"."""
_EACH = Pattern(r"\b(?:each|every|both)\b")
_OTHER_CASE = Pattern(r"\bbare\b|\bwithout\b|\bif i (?:put|add|hang|fit)\b|\b(?:then|now) (?:i |we )?(?:put|add|hang|fit)\b")
_ALL = frozenset({"aperture", "modifier", "number", "count", "remark"})


def read_through(query: Query) -> Solution | None:
    """The f-number to set by a reading of one light, or of so many alike on one face, with their boxes or umbrellas on."""
    said, text = [f for f in query.facts if f.origin == "said"], query.text.lower()
    read, worn = query.all("aperture"), [f for f in said if f.quantity == "modifier"]
    if len(read) != 1 or len(worn) != 1 or not query.asks_for("aperture") or {f.quantity for f in said} - _ALL or _OTHER_CASE.search(text) or is_taken_off(query.text, read[0]):
        return None
    gap = text[worn[0].end : read[0].start]
    if not (_READS.fullmatch(gap) or _PLACED.fullmatch(gap) and _EACH_SO.match(text, read[0].end)):
        return None
    many = [f for f in said if f.quantity in ("number", "count")]
    if worn[0].said.lower().endswith("s") or many:
        return _of_several(read[0], worn[0], many, text)
    return Solution(answers=(marks.aperture(read[0].value),), used=(read[0], worn[0]), topic="losses", notes=("It was read with that on, so nothing more is taken off.",))


def _of_several(read: Fact, worn: Fact, many: list[Fact], text: str) -> Solution | None:
    """"two softboxes each reading f/8": their light adds on the face."""
    if len(many) != 1 or many[0].value not in (2, 3, 4) or not 0 <= worn.start - many[0].end <= 12 or not _EACH.search(text):
        return None
    return Solution(answers=(marks.aperture(times_the_light(read.value, many[0].value)),), used=(read, worn, many[0]), topic="losses", notes=("They were read with those on; where they fall on one face their light adds.",))
