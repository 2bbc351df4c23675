"""What a longer or shorter time does to the flash: nothing, as long as both lie within sync."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_FLASH_ALONE = Pattern(
    r"\bflash(?:'s)?(?: (?:light|part|exposure))?\b[^.?!\d]{0,16}\b(?:los\w+|gain\w*|drop\w*|change\w*|darker|brighter|weaker)\b"
    r"|\b(?:los\w+|gain\w*|drop|change|darker|weaker)\b[^.?!\d]{0,16}\b(?:of|from|in|on) (?:the |my )?flash(?:'s)?(?: (?:light|part|exposure))?\b|\bhow much (?:of (?:the |my )?)?flash\b(?! and)"
    r"|^\W*(?:and |so |for )?(?:the |my )?flash(?:'s)? (?:part|exposure|light|side|share|alone)\s*(?:alone|only)?\s*[:,-]|\b(?:how many stops|how much) (?:more|less|brighter|darker|weaker|stronger|extra) (?:of )?(?:(?:is|from|comes from|gets|does) )?(?:the |my )?flash\b(?! distance)", re.I)
_AMBIENT_TOO = Pattern(r"\b(?:ambient|daylight|room|sky|sun\w*|background|backdrop|window|available|bulbs?|hss|high.speed)\b", re.I)
_USUAL_SYNC = 1 / 250
"""Seconds: a shorter time is beyond sync on most focal-plane shutters (common practice, no source)."""


def unmoved(query: Query) -> Solution | None:
    """No stops of the flash between two shutter times within sync; None where that is not what is asked."""
    times, sync = query.all("shutter"), query.last("sync")
    within = sync.value if sync is not None else _USUAL_SYNC
    if len(times) != 2 or min(t.value for t in times) < within * 0.98 or not _FLASH_ALONE.search(query.text) or _AMBIENT_TOO.search(query.text):
        return None
    note = "The flash is over before either time is up, as long as both lie within sync; only the ambient light changes."
    return Solution(answers=(marks.stops(0.0),), used=(*times, *((sync,) if sync else ()), *query.all("aperture")), notes=(note,), topic="conversions")
