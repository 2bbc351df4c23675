"""Two f-numbers told of one lens: which of them is in use, which gives more depth, and whether it is what lies between that is asked."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving import marks
from assistant.solving.solution import Solution

DEPTH_CHANGED = Pattern(r"\bhow much (?:of the |more |less |extra )?(?:depth|sharpness|is|in focus)\b[^?]{0,24}\b(?:lose|lost|gain|gained|win|get back|give up)\b|\bhow much (?:more|less|extra) (?:depth|sharpness)\b[^?]{0,40}\b(?:than|over|by|instead|if i)\b", re.I)
"""How much depth an f-number has over another, and not the depth of each."""
_USED_TO = Pattern(r"\b(?:used to|was|were|had|shot|before|yesterday|last (?:time|year|week)|till now|until now|normally|usually)\b[^.;?!]{0,30}$", re.I)
_WAS_AT = Pattern(r"[^.;?!,]{0,30}\b(?:before|last (?:time|year|week)|yesterday|earlier|was (?:too|not)|wasn't)\b", re.I)


def in_use(stops: list[Fact], text: str) -> list[Fact]:
    """"it was f/4 before, now f/8", "at f/2 the depth was too thin, what about f/8": without the one that is past, where the other is not."""
    begins = (max(text.rfind(mark, 0, f.start) for mark in ".;?!") + 1 for f in stops)
    past = [bool(_USED_TO.search(text[b : f.start]) or _WAS_AT.match(text[f.end :])) for b, f in zip(begins, stops)]
    return [f for f, gone in zip(stops, past) if not gone] if sum(past) == 1 else stops


WHICH = Pattern(r"\bwhich\b[^?]*\b(?:(?P<more>more|deep\w*|great\w*|most|larger)|less|shallow\w*|least|thinner)\b", re.I)


_SHARP = r"(?:depth|d\.?o\.?f|sharp(?:ness)?|in focus|crisp)\b"
_DEEPER = Pattern(rf"\b(?:more|most|greater|greatest|as much|all|everything|everyone|everybody|both|whole|them|rows?|lot|front (?:to|and) back)\b[^.?!]{{0,40}}\b{_SHARP}|\bdeeper\b|\bbackground (?:as )?(?:sharp|in focus)", re.I)
_SHALLOWER = Pattern(rf"\b(?:less|least|little|thin(?:ner)?)\b[^.?!]{{0,24}}\b{_SHARP}|\bshallow\w*|\b(?:blur\w*|out of focus|soft|softer|melt\w*|thrown? out)\b", re.I)
_DENIED = Pattern(r"\b(?:not|never|without|neither)\b|n't\b", re.I)


def _wished(text: str) -> bool | None:
    """True where more is to be sharp, False where less; None where that is not said, or said both ways."""
    asked = WHICH.search(text)
    if asked is not None:
        return asked["more"] is not None
    deeper, shallower = (pattern.search(text) is not None for pattern in (_DEEPER, _SHALLOWER))
    return None if deeper is shallower or _DENIED.search(text) else deeper


def which_is_deeper(query: Query) -> Solution | None:
    """"which gives me more depth of field, f/4 or f/11?", "f/4 or f/11 to get all of them sharp?": no lens is needed for that."""
    choice = query.last("aperture_choice")
    stops = [choice.value, choice.other] if choice is not None else [f.value for f in query.all("aperture")] if WHICH.search(query.text) else []
    deeper = _wished(query.text) if len(stops) == 2 and not query.has("focal_length") else None
    if deeper is None:
        return None
    found = max(stops) if deeper else min(stops)
    return Solution(answers=(marks.aperture(found),), used=tuple(f for f in query.facts if f.quantity in ("aperture", "aperture_choice")), topic="focus", lead="That is",
                    notes=("A larger f-number is a smaller opening and gives more depth of field.",))


def asked_of_the_second(text: str, told: list[Fact]) -> bool:
    """"the hyperfocal of my 50 is 10.5 m. What is it for a 100?": the last sentence names the second alone."""
    asked_from = text.rstrip(" ?.!").rfind(". ")
    return asked_from > 0 and [f.start > asked_from for f in told] == [False, True]
