"""What is told in a clause that hangs on a light's name: "one stop under the key, which stands 1.5 m off", "match the key, which reads f/8"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"relation", "stops", "ratio", "aperture"})
_LIGHT = r"\b(?P<light>key|main|fill|hair|rim|kicker)(?: ?light| flash| head)?"
_WHICH_STANDS = Pattern(
    rf"{_LIGHT}(?:,? (?:itself |in turn )?(?:which|that)(?:'s| is| stands| sits| hangs| stays| burns)?|, (?:itself|standing|placed|which is))(?: (?:itself|set|placed|fixed|up|at|about|some|exactly|only|just))* $", re.I)
_WHICH_READS = Pattern(rf"{_LIGHT},? (?:which|that)(?:'s| is| reads| gives| meters| shows| sits)(?: (?:itself|set|at|for|about|exactly|only|just|me|on))* $", re.I)
_CALLED = {"main": "key"}
_TOLD = {"distance": _WHICH_STANDS, "camera_distance": _WHICH_STANDS, "aperture": _WHICH_READS}


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with each such distance and reading given to the light that the clause is of."""
    if not (_WHICH_STANDS.may_match(text) or _WHICH_READS.may_match(text)):
        return facts
    return [_of_its_light(f, text) if f.quantity in _TOLD else f for f in facts]


def _of_its_light(fact: Fact, text: str) -> Fact:
    found = _TOLD[fact.quantity].search(text[max(0, fact.start - 60) : fact.start])
    if found is None:
        return fact
    light = _CALLED.get(found["light"].lower(), found["light"].lower())
    return replace(fact, of=light) if fact.quantity == "aperture" else replace(fact, quantity="distance", of=light, cue="")
