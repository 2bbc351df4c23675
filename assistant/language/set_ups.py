"""A set-up named by a number, a letter or its turn, before what it is: "option two: the light 4 m away", "plan B: 14 feet".

The name is no figure and no light; what stands after it is told as if it stood alone. Where two of them are
named in one text they are held against each other, and their names stay.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_KIND = r"(?:options?|plans?|ideas?|versions?|alternatives?|choices?|arrangements?|lay-?outs?|schemes?|variants?|scenarios?|attempts?|set-?ups?|set ups?|proposals?|tries|try)"
_WHICH = r"(?:one|two|three|four|five|six|[1-9]|[a-f])"
_TURN = r"(?:first|second|third|fourth|fifth|other|next|last|new|2nd|3rd|4th|1st)"
_NAME = rf"(?:{_KIND}(?: (?:number|no\.?|nr))?[ -]?{_WHICH}\b|(?:my |the |our )?{_TURN} {_KIND}\b|(?:my |the |our )?other {_KIND}\b)"
_LABEL = Pattern(rf"^\W*(?:(?:and|now|then|or|ok|okay|so|but|well|right|try|what about|how about|with|in|for),? )*{_NAME}(?:\s*[:;,.\u2013\u2014-]+\s*|\s+(?=(?:at|with|has|have|is|puts?|uses?|would be|from|on|in|goes|the|gives)\b))(?:is |has |puts |uses |would be |goes )?(?=\S)", re.I)
_NAMED = Pattern(_NAME, re.I)
_WEIGHED = Pattern(r"\bwhich(?:ever)? (?:one|is|of|gives?|has|would|will|lights?|loses)\b|\bthan (?:the |in the |with the |that )?(?:first|other|one before|last|before|that)\b|\b(?:versus|vs|compared|better)\b", re.I)


def without_its_name(text: str) -> str:
    """The text without the name of the one set-up that it tells.

    >>> without_its_name("Option two: the light 4 m from the front row.")
    'the light 4 m from the front row.'
    >>> without_its_name("Option 1: f/8 at 2 m. Option 2: f/8 at 3 m. Which is brighter?")
    'Option 1: f/8 at 2 m. Option 2: f/8 at 3 m. Which is brighter?'
    """
    label = _LABEL.match(text)
    if label is None or len(_NAMED.findall(text)) != 1 or _WEIGHED.search(text):
        return text
    return text[label.end() :]
