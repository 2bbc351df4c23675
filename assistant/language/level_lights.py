"""The room said to be just as strong as the flash, where the lens is set for the flash alone: no stops under it."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.solving.room_adds import SET_FOR_FLASH

_ROOM = r"(?:(?:room|window|hall|house|existing|available|ambient|day|sky|lamp|stage|shop)(?: ?light)?|ambient|daylight|(?:the )?light in the room)"
_WHERE = r"(?: (?:on|at) (?:the |his |her |my |their )?\w+)?"
_AS_STRONG = r"(?:(?:'s|is|are|was|being|falls|reads|measures|comes in|comes out)(?: (?:exactly|just|about|precisely|every bit|quite))? (?:as (?:strong|bright|much|powerful) as|equal to|equal with|level with|the same (?:strength |brightness |reading )?as|on a par with)|(?:exactly )?(?:equals|matches)|the same as)"
_LEVEL = Pattern(rf"\b(?P<room>{_ROOM}{_WHERE}),? {_AS_STRONG} (?:the |my )?(?P<flash>flash|strobe)(?:'s)?(?: light| alone| reading)?", re.I)
_FLASH_FIRST = Pattern(rf"\b(?:the |my )?(?P<flash>flash|strobe){_WHERE} {_AS_STRONG} (?P<room>(?:the )?{_ROOM})", re.I)


def with_level_as_stops(said: str) -> str:
    """The text with the two level by no stops.

    >>> with_level_as_stops("The room light is exactly as strong as the flash, and I set the aperture for the flash alone. How many stops over?")
    'The room light is 0 stops under the flash, and I set the aperture for the flash alone. How many stops over?'
    """
    if not SET_FOR_FLASH.may_match(said) or not SET_FOR_FLASH.search(said):
        return said
    said = _FLASH_FIRST.sub(r"\g<room> is 0 stops under the \g<flash>", said, 1)
    return _LEVEL.sub(r"\g<room> is 0 stops under the \g<flash>", said, 1)
