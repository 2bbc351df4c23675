"""F-numbers said as bare figures from one to the other: "closing 4 to 11 gets me more depth of field"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_MARK = r"(?:1\.[248]|2(?:\.[258])?|3\.[25]|4(?:\.5)?|5(?:\.6)?|6\.3|7\.1|8|9|10|11|13|14|16|18|20|22|25|29|32|45|64)"
_NO_UNIT = r"(?![\w/]|\.\d| ?(?:feet|foot|ft|m|metres?|meters?|cm|mm|inch\w*|yards?|paces?|s|secs?|seconds?|minutes?|stops?|pops?|heads?|flashes|lights?|people|rows?|frames?|asa|iso|din|degrees?|watt\w*|ws|joules?|percent|times|x)\b|['\"″′%°:])"
_SPAN = rf"(?P<one>{_MARK}) (?P<to>to|down to|up to) (?P<other>{_MARK}){_NO_UNIT}"
_TURNED = Pattern(rf"\b(?P<does>(?:clos|stopp|open)(?:e|es|ed|ing)|stops?|open|close)(?P<how>(?: (?:down|up|right|the lens|it|me|further|my lens|the (?:aperture|ring|iris)))*(?: from)? ){_SPAN}", re.I)
_FROM_TO = Pattern(rf"(?<![\w./:-])(?<!iso )(?<!asa )(?<!gn )(?<!f )(?<!at )(?<!of ){_SPAN}", re.I)
_OF_DEPTH = Pattern(r"\b(?:depth of (?:field|focus)|d\.?o\.?f\b|(?:more|less|deeper|shallower|greater) (?:depth|focus|in focus|field)|(?:zone|range) of (?:focus|sharpness))", re.I)
_MOVES = Pattern(r"\b(?:mov\w*|back(?:s|ed|ing)?|step\w*|walk\w*|com(?:e|es|ing)|pull\w*|push\w*|focus\w*|distance|stand\w*|lens(?:es)?|mm|zoom\w*)\b[^.?!;,]{0,24}$", re.I)
"""Before two figures that are of a place or of a lens."""
_OF_PLACES = Pattern(r"\b(?:feet|ft|metres?|meters?|from the (?:subject|camera))\b", re.I)
_BOTH_READ = Pattern(
    rf"(?P<first>\b(?:side|half|part|end|wall|corner|cheek|one)\b[^.?!;,\d]{{0,32}}?\b(?:reads?|meters?|metered|measures?)(?: about| just| only| at)? )(?P<one>{_MARK}){_NO_UNIT}"
    rf"(?P<between>,? (?:and |but |while |whereas )?(?:on )?(?:the |its |his |her |my )?(?:[a-z'-]+ ){{1,5}}?)(?P<other>{_MARK})(?!\.\d){_NO_UNIT}(?=\W*$|[.,;?!] )", re.I)
"""Two sides of a thing, each with what the meter says of it."""
_STOPS_BETWEEN = Pattern(r"\b(?:how many stops|in stops|stops? (?:apart|between|darker|brighter|under|over|less|more)|difference|ratio|contrast)\b", re.I)
_HAS_MARK = Pattern(r"\bf ?/ ?\d|\bf\d", re.I)


def with_marks(text: str) -> str:
    """The text with both figures as f-numbers, where the lens is turned from one to the other or the depth is spoken of.

    >>> with_marks("closing 4 to 11 gets me more depth"), with_marks("opening hours 8 to 16"), with_marks("open from 8 to 16 feet")
    ('closing f/4 to f/11 gets me more depth', 'opening hours 8 to 16', 'open from 8 to 16 feet')
    """
    if _HAS_MARK.search(text):
        return text
    if _BOTH_READ.may_match(text) and _STOPS_BETWEEN.search(text):
        return _BOTH_READ.sub(r"\g<first>f/\g<one>\g<between>f/\g<other>", text)
    said = _TURNED.sub(r"\g<does>\g<how>f/\g<one> \g<to> f/\g<other>", text) if _TURNED.may_match(text) else text
    if said != text or not _OF_DEPTH.search(text) or _OF_PLACES.search(text):
        return said
    found = list(_FROM_TO.finditer(text))
    return _FROM_TO.sub(r"f/\g<one> \g<to> f/\g<other>", text) if len(found) == 1 and not _MOVES.search(text[: found[0].start()]) else text
