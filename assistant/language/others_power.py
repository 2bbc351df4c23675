"""A light's power told by another's: "at half the key's power" is the fill's own, so many times what the key is on."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"power"})
_OF_THE_OTHER = Pattern(r"\s*(?:of )?(?:(?:the |that of the )?(?P<light>key|main|fill)(?:'s| light's)|(?:the )?power of the (?P<named>key|main|fill))(?: power| output| setting| strength)?\b", re.I)
_SECOND = Pattern(r"\b(?P<light>fill|hair|rim|kicker|key|main)\b(?!(?:'s| light's) (?:power|output|setting|strength))", re.I)
_CALLED = {"main": "key", "kicker": "kicker"}


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with such a power given to the one other light that is spoken of; as told where there is none, or more."""
    if not _OF_THE_OTHER.may_match(text):
        return facts
    return [_given(f, facts, text) if f.quantity == "power" and not f.bad else f for f in facts]


def _given(fact: Fact, facts: list[Fact], text: str) -> Fact:
    found = _OF_THE_OTHER.match(text, fact.end)
    if found is None:
        return fact
    one = (found["light"] or found["named"]).lower()
    one = _CALLED.get(one, one)
    others = {_CALLED.get(m["light"].lower(), m["light"].lower()) for m in _SECOND.finditer(text)} - {one}
    theirs = [f.value for f in facts if f.quantity == "power" and f is not fact and f.of == one]
    return replace(fact, of=others.pop(), value=fact.value * (theirs[0] if len(theirs) == 1 else 1.0)) if len(others) == 1 else fact
