"""The question that stands asked of another row: "what f for the back row?", then "and the front?"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.memory.said_again import says_all, standing
from assistant.patterns import Pattern
from assistant.solving.set_for_row import set_for_another

_ROW = r"(?:front|middle|back)"
_ALONE = Pattern(rf"^\W*(?:(?:and|or|ok|okay|so|then|now|what|how|about|for|at|on|of|with)\b\W*)*(?:the )?(?P<row>{_ROW})(?: (?:row|rank|tier|one|lot|ones|people))?(?: then| now| please| too| as well)*\W*$", re.I)
_ASKED_FOR = Pattern(rf"\b(?P<asked>(?:what|which)\b[^.?!]{{0,60}}?\b(?:for|at|on|suits|gets|reaches) (?:the )?)(?P<row>{_ROW})\b(?= (?:row|rank|tier|one|lot)\b|\s*[?.]|\s*$)", re.I)


_SET_FOR_ANOTHER = Pattern(rf"^\W*(?:(?:and|or|ok|okay|so|but|then|now|what)\b\W*)*if (?:i|we) (?:expose|set|meter|exposed|metered)(?: it| the lens| the aperture)? for (?:the )?(?P<row>{_ROW})(?: (?:row|rank|one|people))?(?: instead| now| then)*\W*$", re.I)


def in_another_row(text: str, talk: Conversation) -> str | None:
    """The question of one row in its own words, of the row that this half-sentence names; None where it names none, or the question is of none or of several."""
    last = standing(talk)
    if (set_for := _SET_FOR_ANOTHER.match(text)) is not None:
        return set_for_another(last.text, set_for["row"]) if last is not None and not last.claim and not talk.missing and says_all(last, talk) else None
    said = _ALONE.match(text)
    if said is None or last is None or last.claim or talk.missing or not says_all(last, talk):
        return None
    asked = list(_ASKED_FOR.finditer(last.text))
    if len(asked) != 1 or asked[0]["row"].lower() == said["row"].lower():
        return None
    return f"{last.text[: asked[0].start('row')]}{said['row'].lower()}{last.text[asked[0].end('row') :]}"
