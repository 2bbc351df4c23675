"""Bare numbers that are places, in the unit of the length told before: where the flash is now, and where the camera stands.

"flash was 2 m from the crew, now it's 6" · "the key is right from six feet, and the camera is on its tripod at ten"
"""

from __future__ import annotations

import re

from assistant.language.bare import CLAUSE_ENDS, Bare
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.units import LENGTH

_NOW_AT = Pattern(
    r"\b(?:was|were|stood|sat|hung|used to be|had been)\b[^?!]*\b(?:now(?: (?:it's|it is|its|he's|she's|they're|at|only|about|stands|sits))*|(?:it's|it is|its|he's|she's|they're) now)(?: at| about| only)? $")
"""Before where something is, which was elsewhere."""
_LIGHT = r"flash|light|lamp|strobe|head|key|main|fill|gun|softbox|umbrella"
_CAMERA_AT = Pattern(rf"(?:^|[.;,] |\b(?:and|but|while|with) )(?:and |but |while |with )?(?:the |my )?camera\b(?:(?!\b(?:{_LIGHT})\b)[^.;?!,\d]){{0,36}}\bat(?: about)? $")
"""Before where the camera stands, and no light with it."""
_NO_READING = frozenset({"distance", "number", "remark", "place", "count"})


def _length_before(n: Bare) -> Fact | None:
    """The length told last, of which the number takes the unit where it is of the same size."""
    before = next((f for f in sorted(n.facts, key=lambda f: -f.start) if f.quantity == "distance" and f.unit in LENGTH and f.start < n.fact.start), None)
    return before if before is not None and 0.1 < n.value * LENGTH[before.unit] / before.value < 10 else None


def is_now(n: Bare) -> Fact | None:
    """"flash was 2 m from the crew, now it's 6": where it has gone, where places alone are told."""
    if not n.kinds <= _NO_READING or not _NOW_AT.search(n.text[: n.fact.start].lower()) or not CLAUSE_ENDS.match(n.text[n.fact.end :]):
        return None
    before = _length_before(n)
    return None if before is None else n.of("distance", value=n.value * LENGTH[before.unit], unit=before.unit, of=before.of)


def camera_stands(n: Bare) -> Fact | None:
    """"the camera is on its tripod at ten": the camera's own distance."""
    if not _CAMERA_AT.search(n.text[: n.fact.start].lower()) or not CLAUSE_ENDS.match(n.text[n.fact.end :]):
        return None
    before = _length_before(n)
    return None if before is None else n.of("camera_distance", value=n.value * LENGTH[before.unit], unit=before.unit, of="camera", cue="camera")


_ANOTHER_AT = Pattern(r"\bone\b[^.?!;]*\d[^.?!;]*(?:,|\band|,? while)(?: and)? (?:another|the other)(?: one)?(?: (?:is|at|stands|sits|only|about))* $", re.I)
"""Before where the second of two stands: "one runner is 17 ft from the flash, another 24"."""


def another_stands(n: Bare) -> Fact | None:
    """The place of the second, where places and stops alone are told."""
    if not n.kinds <= _NO_READING | {"stops", "rows"} or not _ANOTHER_AT.search(n.text[: n.fact.start]) or not CLAUSE_ENDS.match(n.text[n.fact.end :]):
        return None
    before = _length_before(n)
    return None if before is None else n.of("distance", value=n.value * LENGTH[before.unit], unit=before.unit, of=before.of)


RULES = (is_now, camera_stands, another_stands)
