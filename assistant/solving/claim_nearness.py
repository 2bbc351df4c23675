"""How near a claimed figure must come to count as right."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.answer import Assumed
from assistant.patterns import Pattern
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain

_WITHIN = Pattern(r"\bwithin (?:about |roughly )?(?P<many>half an?|an? half|an? third(?: of an?)?|an? quarter(?: of an?)?|two thirds(?: of an?)?|an?|one|two)(?: full| whole)? stops?\b")
_STOPS = {"half": 0.5, "third": 1 / 3, "quarter": 0.25, "thirds": 2 / 3, "two": 2.0}
_BY_THE_RULE = 0.4
"""The sunny-16 rule, f/16 at one over the film speed, is a third of a stop from the EV 15 that stands for it."""


def nearness(text: str, assumed: Iterable[Assumed]) -> float:
    """Stops within which a figure counts as right: as said, "within half a stop", else a third.

    >>> nearness("would f/8 be within half a stop of right", ())
    0.51
    """
    said = _WITHIN.search(plain(text))
    if said is not None:
        return next((stops for word, stops in _STOPS.items() if word in said["many"].split()), 1.0) + 0.01
    return _BY_THE_RULE if any(a.quantity == "exposure_value" for a in assumed) else TOLERANCE
