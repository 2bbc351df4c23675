"""Where a sentence with a question mark asks, what a sentence beside it only tells of is not asked.

"I'm working out how much light gets to the film. What is the effective aperture?": an aperture, and no stops.
"""

from __future__ import annotations

import re
from bisect import bisect_right

from assistant.patterns import Pattern
from assistant.query import Ask

_ENDS = Pattern(r"[.?!;](?=\s|$)")
_ASKS_TOO = Pattern(
    r"\W*(?:(?:and|so|but|then|now|also|please|ok|just),? )*(?:what|which|how|where|when|give|tell|find|work out|calculate|name|state|show|say|let me|help|can|could|would|will|is|are|do|does|did|should|must"
    r"|(?:i|we|he|she|they)(?:'d| would)? (?:also )?(?:want|wants|need|needs|like|likes|wonder|wonders|have|has) (?:to (?:know|find|hear|work|have|get|see)|the|a|an|my|what|how|which|where|it in)\b|(?:i|we)(?:'m| am|'re| are)? (?:after|wondering|asking|looking for))\b", re.I)
"""How a sentence begins that asks without its mark."""


def asked_there(asks: list[Ask], text: str) -> list[Ask]:
    """The asks of the sentences that ask, where one of them ends with a question mark; all of them else.

    >>> said = "I am working out how much light gets in. What is the aperture?"
    >>> [a.quantity for a in asked_there([Ask("stops", "", "", 20), Ask("aperture", "", "", 54)], said)]
    ['aperture']
    """
    if len(asks) < 2 or "?" not in text:
        return asks
    ends = [m.start() for m in _ENDS.finditer(text)]
    begins = [0, *(end + 1 for end in ends)]
    placed = [(ask, begins[bisect_right(begins, ask.start) - 1]) for ask in asks]
    marked = {begin for begin, end in zip(begins, ends) if text[end] == "?"}  # each begins right after the end before it
    if not any(b in marked for _, b in placed):
        return asks
    return [ask for ask, b in placed if b in marked or ask.start == 0 or _ASKS_TOO.match(text, b) is not None]
