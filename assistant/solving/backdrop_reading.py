"""A backdrop that is lit by a flash of its own, against what the subject reads: how many stops it lies over or under.

"the subject reads f/5.6; the backdrop has its own flash, guide number 20 m, 2 m from the paper: how many stops over the subject is it?"
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.solving import flash, marks
from assistant.solving.solution import Solution

CLOTH = r"(?:(?:white|grey|gray|black) )?(?:paper|backdrop|background|cloth|canvas|seamless|wall)"
_ITS_OWN = Pattern(rf"\b{CLOTH} (?:(?:has|gets|with|is lit by|lit by|under) )+(?:(?:a|an|its|the) )?(?:(?:own|separate|second|another|other)(?: (?:flash|light|head|lamp|gun))?|(?:flash|light|head|lamp|gun) of its own)\b|\b(?:own|separate|second|another) (?:flash|light|head|lamp|gun) (?:for|on|lights|lighting) (?:the |my )?{CLOTH}\b", re.I)
_OF_THE_SUBJECT = Pattern(rf"\b(?:over|under|above|below|brighter than|darker than|than) (?:the |my |that )?{CLOTH}\b", re.I)
_MAY_BE_TOLD = frozenset({"aperture", "guide_number", "distance", "power", "power_down", "film_speed", "loss", "modifier", "shutter", "sync", "remark", "place", "count"})


def solve(query: Query) -> Solution | None:
    """Stops of the backdrop over (+) or under (-) the subject; None where no flash of its own is told for it."""
    guides, places, read = query.all("guide_number"), query.all("distance"), query.all("aperture")
    if not query.asks_for("stops") or len(guides) != 1 or len(places) != 1 or len(read) != 1 or places[0].of not in ("", "backdrop", "background") or read[0].of not in ("", "key", "subject"):
        return None
    if {f.quantity for f in query.facts} - _MAY_BE_TOLD or _ITS_OWN.search(query.text) is None:
        return None
    own = [replace(f, of="") for f in query.facts if f is not read[0]]
    found = flash.solve(replace(query.with_facts(own), asks=(Ask("aperture"),), claim=False))
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return None
    over = 2 * math.log2(found.answers[0].value / read[0].value)
    of_subject = _OF_THE_SUBJECT.search(query.text) is not None
    used = (read[0], *(f for f in query.facts if any(f.start == u.start and f.quantity == u.quantity for u in found.used)))
    note = f"The backdrop reads f/{found.answers[0].value:.3g} by its own flash."
    return Solution(answers=(marks.stops(-over if of_subject else over, "subject" if of_subject else "background"),), used=used, assumed=found.assumed, notes=(note,), topic="relations",
                    lead=f"The {'subject' if of_subject else 'backdrop'} is {'brighter' if (over > 0) is not of_subject else 'darker'}")
