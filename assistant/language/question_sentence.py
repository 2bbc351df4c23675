"""Where a sentence with a question mark asks, what a sentence beside it only tells of is not asked.

"I'm working out how much light gets to the film. What is the effective aperture?": an aperture, and no stops.
"""

from __future__ import annotations

import re
from bisect import bisect_left

from assistant.patterns import Pattern
from assistant.query import Ask

_ENDS = Pattern(r"[.?!;](?=\s|$)")
_ASKS_TOO = Pattern(
    r"\W*(?:(?:and|so|but|then|now|also|please|ok|just),? )*(?:what|which|how|where|when|give|tell|find|work out|calculate|name|state|show|say|let me|help|can|could|would|will|is|are|do|does|did|should|must"
    r"|(?:i|we|he|she|they)(?:'d| would)? (?:also )?(?:want|wants|need|needs|like|likes|wonder|wonders|have|has) (?:to (?:know|find|hear|work|have|get|see)|the|a|an|my|what|how|which|where|it in)\b|(?:i|we)(?:'m| am|'re| are)? (?:after|wondering|asking|looking for))\b", re.I)
"""How a sentence begins that asks without its mark."""
_OF_ANOTHER = Pattern(r"(?:what|which)(?:'s|’s| is| are| will| would)?(?: be)?(?: the| my| its)* ?", re.I)
"""A question word that belongs to what follows it: "what are the near and far limits?"."""


def asked_there(asks: list[Ask], text: str) -> list[Ask]:
    """The asks of the sentences that ask, where one of them ends with a question mark; all of them else.

    >>> said = "I am working out how much light gets in. What is the aperture?"
    >>> [a.quantity for a in asked_there([Ask("stops", "", "", 20), Ask("aperture", "", "", 54)], said)]
    ['aperture']
    """
    if len(asks) < 2 or "?" not in text:
        return asks
    ends = [m.start() for m in _ENDS.finditer(text)]
    marked = [text[end] == "?" for end in ends] + [False]
    if not any(marked[bisect_left(ends, ask.start)] for ask in asks):
        return asks
    return [ask for ask in asks if ask.start == 0 or not _only_tells(ask, ends, text)]


def asked_first(asks: list[Ask], text: str) -> list[Ask]:
    """All the asks, an aperture last that another sentence only tells of: "so that sets my aperture. How deep is it sharp?"."""
    if len(asks) < 2 or "?" not in text:
        return asks
    ends = [m.start() for m in _ENDS.finditer(text)]
    others = [ask.start for ask in asks if ask.quantity != "aperture"]
    return sorted(asks, key=lambda ask: ask.quantity == "aperture" and (_only_tells(ask, ends, text) or any(_OF_ANOTHER.fullmatch(text, ask.start, at) for at in others if at > ask.start)))


def _only_tells(ask: Ask, ends: list[int], text: str) -> bool:
    """Whether the sentence of an ask neither ends with a question mark nor begins as one that asks."""
    number = bisect_left(ends, ask.start)
    begin = ends[number - 1] + 1 if number else 0
    return not (number < len(ends) and text[ends[number]] == "?") and _ASKS_TOO.match(text, begin) is None
