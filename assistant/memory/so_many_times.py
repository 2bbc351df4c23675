"""So many times as much, put up once more: "is it four times as many?" after "twice the distance needs twice the pops, is that right?"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.patterns import Pattern

_TIMES = r"(?:twice|double|treble|triple|quadruple|half|(?:\d+|two|three|four|five|six|eight|nine|ten|twelve|sixteen) times)"
_PUT_UP = Pattern(
    rf"^\W*(?:(?:and|so|then|ok|okay|but|or|no)\b\W*)*(?:(?:is|isn't|would|does|will|do|must|should) (?:it|that|this|he|i|we|they|you)(?: (?:be|need|take|mean|give|make|want|use))? )?(?:more like |really |rather )?"
    rf"(?P<many>{_TIMES})(?: (?:as (?:many|much)|of (?:them|it|that)|(?:the|that) (?P<what>\w+)))?(?: (?:then|instead|rather|really|in fact|right))*\W*$", re.I)
_TOLD = Pattern(rf"\b(?P<many>{_TIMES}) (?:as|the|that|its|of the)? ?(?P<what>[\w-]+)", re.I)
_HOW_FAR = ("distance", "far", "way", "space")
"""What is told of how far off it is; the other is what is said to follow."""


def so_many_times(text: str, talk: Conversation) -> str | None:
    """The claim that stands with the new multiple in the place of what was said to follow; None where the half-sentence tells none, or the claim has not one of distance and one other."""
    said = _PUT_UP.match(text)
    if said is None or talk.judged is None or not talk.judged.claim:
        return None
    claim = talk.judged.query.text
    told = list(_TOLD.finditer(claim))
    follows = [m for m in told if m["what"].lower() not in _HOW_FAR]
    if len(told) != 2 or len(follows) != 1 or said["what"] and said["what"].lower() != follows[0]["what"].lower():
        return None
    start, end = follows[0].span("many")
    return f"{claim[:start]}{said['many'].lower()}{claim[end:]}"
