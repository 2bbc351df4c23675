"""A claim put up again with another verdict in it: "is it two stops less then?" after "it gets half the light, correct?", "does the daylight drop a stop?" after "does the flash drop a stop?".

What was done stays in its words; what is said to come of it is put in the place of what was said before, and the
whole is read anew.
"""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.patterns import Pattern
from assistant.places import ROOMS

_MANY = r"(?:half an?|an?|one|two|three|four|five|six|one and a half|two and a half|\d+(?:\.\d+)?)"
_AMOUNT = rf"(?:{_MANY} stops? (?:less|more|darker|brighter|weaker|stronger)(?: light)?|(?:only |just )?(?:half|a third|a quarter|a fifth|an eighth|a ninth|a sixteenth|twice|double|three times|four times|1/\d+)(?: of)? (?:the|as much) light)"
_IS_IT = Pattern(
    rf"^\W*(?:(?:and|so|then|or|but|ok|okay|well|no)\b\W*)*(?:(?:is|was|would|will|does|did|isn't|doesn't) (?:it|that|this|he|she|the (?:subject|sitter|light))(?: (?:then|really|just|rather|be|get|lose))*|it(?:'s| is| gets)) (?P<new>{_AMOUNT})(?: (?:then|instead|really|rather|now))*\W*$", re.I)
_CLAIMED = Pattern(rf"\b{_AMOUNT}", re.I)
_THING = rf"(?:flash(?:es)?|strobe|speedlight|flashgun|ambient|daylight|available light|existing light|background|backdrop|sky|{ROOMS})"
_ASKS_OF = Pattern(rf"\b(?:does|do|will|would|did) (?:the |my )?(?:light from the )?{_THING}\b", re.I)
_OF_ANOTHER = Pattern(rf"^\W*(?:(?:and|so|then|but|ok|okay|well)\b\W*)*(?P<asked>(?:does|do|will|would|did) (?:the |my )?{_THING}(?: (?:exposure|light|part))? (?!too\b|also\b|as well\b)[a-z]+\b[a-z' ]*\??)\W*$", re.I)


def claimed_otherwise(text: str, talk: Conversation) -> str | None:
    """The claim that stands, in its own words, with what this half-sentence says of the same case; None where it says nothing of the kind."""
    if talk.judged is None or not talk.judged.claim or talk.missing:
        return None
    before = talk.judged.query.text
    if (said := _IS_IT.match(text)) is not None:
        told = list(_CLAIMED.finditer(before))
        light = "" if said["new"].lower().endswith("light") else " light"
        return f"{before[: told[0].start()]}{said['new']}{light}{before[told[0].end() :]}" if len(told) == 1 and told[0][0].lower().endswith("light") else None
    of_another, asked = _OF_ANOTHER.match(text), list(_ASKS_OF.finditer(before))
    if of_another is None or len(asked) != 1 or not any(c.isdigit() for c in before[: asked[0].start()]):
        return None
    return f"{before[: asked[0].start()]}{of_another['asked'].rstrip('?')}?"
