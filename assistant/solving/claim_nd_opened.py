"""Claims of what the flash must do once a grey filter is on the lens and the lens has been opened or closed: the two are added up.

A filter on the lens takes from the flash what it takes from everything, and an opening gives it back;
the shutter has no part in it. So the flash is left as it is where the opening makes up for the filter.
"""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_denial import denied
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_OF_THE_FLASH = Pattern(r"\b(?:flash|strobe|heads?|gun|key|power|output)\b")
_RAISED = Pattern(r"\b(?:turn\w*|power\w*|crank\w*|dial\w*|go|goes|push\w*|bring|brought) (?:it |the flash |the power |the strobe )?up\b|\bmore (?:power|output|light|flash)\b|\b(?:raise|raised|raising|stronger|increase\w*|lift\w*|boost\w*)\b")
_LOWERED = Pattern(r"\b(?:turn\w*|power\w*|dial\w*|go|goes|bring|brought) (?:it |the flash |the power |the strobe )?down\b|\bless (?:power|output|light|flash)\b|\b(?:lower|lowered|weaker|cut back|reduc\w*)\b")
_LEFT = Pattern(r"\b(?:stay\w*|leave|left|keep|kept|remain\w*|same power|unchanged|as it (?:is|was)|alone)\b")
_CLOSED = Pattern(r"\b(?:clos\w+|stop\w* (?:it |the lens )?down)\b")
_OPENED = Pattern(r"\b(?:open\w*|wider)\b")
_BESIDE = frozenset({"nd", "stops", "signed", "aperture", "aperture_range", "camera_filter", "remark", "power"})
"""What may be told; the power that the flash has stays what it is."""


def _opened(query: Query, said: str) -> tuple[float, tuple[Fact, ...]] | None:
    """Stops that the lens was opened by (closed: negative), and the facts that tell it."""
    spans, marks_told, steps = query.all("aperture_range"), query.all("aperture"), [f for f in query.facts if f.quantity in ("stops", "signed")]
    if len(spans) == 1 and not marks_told and not steps:
        return aperture_difference_stops(spans[0].value, spans[0].other), tuple(spans)
    if len(marks_told) == 2 and not spans and not steps:
        return aperture_difference_stops(marks_told[0].value, marks_told[1].value), tuple(marks_told)
    if len(steps) == 1 and not spans and not marks_told and (_OPENED.search(said) is None) is not (_CLOSED.search(said) is None):
        return abs(steps[0].value) * (-1 if _CLOSED.search(said) else 1), tuple(steps)
    return None


def claim_of_nd_opened(query: Query) -> Solution | None:
    """"a 3-stop ND on the lens and three stops opened: must the flash be turned up?": not at all."""
    grey = query.all("nd")
    if len(grey) != 1 or {f.quantity for f in query.facts if f.origin == "said"} - _BESIDE or len(query.all("power")) > 1:
        return None
    said = plain(query.text)
    moved = _opened(query, said)
    asked = said[max(f.end for f in (*grey, *(moved[1] if moved else ()))) :]
    ways = [(pattern, way) for pattern, way in ((_RAISED, 1), (_LOWERED, -1), (_LEFT, 0)) if pattern.search(asked)]
    if moved is None or len(ways) != 1 or not _OF_THE_FLASH.search(asked):
        return None
    needed = abs(grey[0].value) - moved[0]
    sign = 0 if abs(needed) < 0.05 else math.copysign(1, needed)
    holds = (ways[0][1] == sign) is not denied(asked)
    lead = "The opening gives back what the filter takes, so the flash stays as it is." if not sign else f"Filter and opening together leave the flash {speak_stops(abs(needed))} too {'weak' if sign > 0 else 'strong'}."
    return Solution(answers=(Quantity("claim", holds), *((marks.stops(needed),) if sign else ())), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {lead}")
