"""What is named after a question word and still not asked for: "two stops over what the guide number gives", "a family spread from 3 m to 5 m"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_STANDS_SPREAD = Pattern(r"\b(?:is|are|was|were|all|stands?|sits?|people|group|they|and) (?:all |well |evenly )?$", re.IGNORECASE)
_OVER_A_LENGTH = Pattern(r" (?:out )?(?:from|between|over|across|along|through) ", re.IGNORECASE)
_OVER_WHAT = Pattern(r"\b(?:over|than|beyond|above|below|past|from|to|on|with|as|under) what (?:the|my|its|a) $", re.I)
_SAYS = Pattern(r" (?:gives?|says?|tells?|asks?|calls?|suggests?|works? out|comes?|wants?|makes?|alone)\b", re.I)


def stands_spread(text: str, start: int, end: int) -> bool:
    """Whether people are spread over a length, where no beam spreads."""
    return _STANDS_SPREAD.search(text[:start]) is not None and _OVER_A_LENGTH.match(text, end) is not None


def is_what_it_says(text: str, start: int, end: int) -> bool:
    """Whether "what the … gives" is only what something is compared with."""
    return _OVER_WHAT.search(text[:start]) is not None and _SAYS.match(text, end) is not None
