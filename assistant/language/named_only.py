"""What is named after a question word and still not asked for: "two stops over what the guide number gives", "a family spread from 3 m to 5 m"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_STANDS_SPREAD = Pattern(r"\b(?:is|are|was|were|all|stands?|sits?|people|group|they|and) (?:all |well |evenly )?$", re.IGNORECASE)
_OVER_A_LENGTH = Pattern(r" (?:out )?(?:from|between|over|across|along|through) ", re.IGNORECASE)
_FROM_PLACE_TO_PLACE = Pattern(r" (?:out )?(?:from|between) (?:\d|[a-z]+)[^.,;?!]{0,24}? (?:to|and) [^.,;?!]{1,16}?\b(?:feet|foot|ft|metres?|meters?|m|yards?|paces)\b", re.IGNORECASE)
"""Whatever is "spread from two to three metres" stands so: a beam's spread goes by degrees."""
_OVER_WHAT = Pattern(r"\b(?:over|than|beyond|above|below|past|from|to|on|with|as|under) what (?:the|my|its|a) $", re.I)
_SAYS = Pattern(r" (?:gives?|says?|tells?|asks?|calls?|suggests?|works? out|comes?|wants?|makes?|alone)\b", re.I)


def stands_spread(text: str, start: int, end: int) -> bool:
    """Whether people are spread over a length, where no beam spreads."""
    return _STANDS_SPREAD.search(text[:start]) is not None and _OVER_A_LENGTH.match(text, end) is not None or _FROM_PLACE_TO_PLACE.match(text, end) is not None


def is_what_it_says(text: str, start: int, end: int) -> bool:
    """Whether "what the … gives" is only what something is compared with."""
    return _OVER_WHAT.search(text[:start]) is not None and _SAYS.match(text, end) is not None


_WHICH_IS = Pattern(r",\s*which(?:'s| is| was| are| were)? (?:also |just |about |still |already )?(?:my|the|our|its|his|her|their|as|a|an)\b", re.I)
_ON_IT_GOES = Pattern(r"[^?]{0,24}?(?:[,;]|\.(?!\d))", re.I)


def is_relative(text: str, start: int, end: int) -> bool:
    """Whether the question word tells of what stands before it: "1/125, which is my sync, and …".

    >>> is_relative("It is f/11 at 1/125, which is my sync, and I want it darker.", 21, 36), is_relative("f/8 at 10 feet, which is the guide number?", 16, 40)
    (True, False)
    """
    comma = text.rfind(",", 0, start + 1)
    found = _WHICH_IS.match(text, comma) if comma >= 0 and not text[comma + 1 : start].strip() else None
    return found is not None and _ON_IT_GOES.match(text, end) is not None


_WHAT_IT_IS = Pattern(r"(?:\b(?:is|was|at|on)|,|\d)\s*(?:also |just )?(?:my|the|its|our|his|her|this camera's)\s+(?:(?:top|fastest|highest|max|maximum|native|flash|x|camera's|body's)[ -])*$|(?:[,;(]|\d|\b(?:well|safely|all|still|and|th|is|was))\s*(?:with)?in(?:side)? (?:its |the )?(?:flash |x[ -]?)?$|\ds?,? which (?:still |just |safely |also |easily )*$", re.I)


def is_told_of(text: str, start: int) -> bool:
    """Whether a name only says what the value before it is: "1/250, my top sync", "the shutter's a sixtieth, in sync", "1/60, which syncs"."""
    return _WHAT_IT_IS.search(text[:start]) is not None


_IS_SO_MUCH = Pattern(r" (?:of|for|on|in|from) (?:(?:the|my|this|that|our|his|her|its|their|one|each) )?[a-z-]+(?: [a-z-]+){0,2}? (?:is|was|reads|says)(?: (?:about|only|just|now|still|set to|set at|given as))* ?(?:f/? ?|iso ?)?\d", re.I)


def is_told_after(text: str, end: int) -> bool:
    """Whether a name ends at `end` whose figure follows: "the guide number of my flash is 32 metres".

    >>> is_told_after("The guide number of my flash is 32 metres.", 16), is_told_after("The aperture for 32 metres?", 12)
    (True, False)
    """
    return _IS_SO_MUCH.match(text, end) is not None


_AN_END = Pattern(r"(?:far|near|other) (?:end|side)(?: of)?$", re.I)
_OF_A_PLACE = Pattern(r"(?: of)? (?:the|a|an|my|our|this|that|her|his)(?: \w+)? (?!focus|sharp|zone|depth|range|field|limit)\w+", re.I)
_SHARP = Pattern(r"\bsharp|\bfocus|\bdepth of field\b", re.I)


def is_end_of_a_place(text: str, start: int, end: int) -> bool:
    """Whether somebody is "at the far end of the bench", where nothing sharp ends."""
    return _AN_END.search(text[start:end]) is not None and _OF_A_PLACE.match(text, end) is not None and _SHARP.search(text) is None


_EXPOSED_LONG = Pattern(r" (?:an? exposure\b|(?:should|must|does|do|will|would|shall|is|can|has|ought) (?:the|my|our|that|this) (?:exposure|shutter)\b|(?:(?:do|must|should|would|shall|can|will|have) (?:i|we)(?: have to| need to)?) (?:leave|keep|hold) (?:the|my) shutter open\b(?![^?]*\b(?:pops?|flash\w*|bursts?|recycl\w*)\b))", re.IGNORECASE)


def is_of_the_exposure(text: str, end: int) -> bool:
    """Whether what lasts so long is the exposure, and no flash: "how long should the exposure be"."""
    return _EXPOSED_LONG.match(text, end) is not None


_READS = Pattern(r"\bwhat (?:does|do|will|would|should) (?:it|that|this|the [a-z]+(?: light)?) (?:then |alone )?(?:read|meter)\b", re.I)


_WHICH_F = Pattern(r"^\W*(?:(?:hi|hey|ok|so|and|quick|please)\W+)*(?:an? )?(?:f(?:-?stop|-?number)?|aperture|stop) what\b|[.,;:!?] *(?:(?:so|and|then) )?(?:at )?(?:f(?:-?stop|-?number)?|aperture|stop) what\W*$", re.I)
"""The setting named before the question word: "f what, off the wall"."""


def asks_a_reading(text: str) -> bool:
    """Whether it is what a light reads, or a setting, that is asked, and not the guide number that is told of it."""
    return _READS.search(text) is not None or _WHICH_F.search(text) is not None
