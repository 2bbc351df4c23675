"""A stop with no article: "fill stop under the key", "costs stop", "a third of stop", as hurried people write them.

A stop with no number would be read as none, and a third of it as a whole one. It is given its "a" before anything
else is read. "Stop down", "what stop" and "two stop under" have no such stop.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_COSTS = Pattern(
    r"\b(?P<before>(?:costs?|loses?|los(?:ing|t)|takes?|took|taking|eats?|ate|robs|steals|swallows|drinks|gains?|gained|adds?|added|push(?:ed)?|pull(?:ed)?|"
    r"(?:thirds?|quarters?|fifths?|sixths?|eighths?|tenths?|part|fraction|half) of|within|inside|more than|less than|at least|at most|by|about|roughly|exactly)(?: (?:me|us|you|it|only|just))?) "
    r"stop(?=(?: and (?:a )?(?:half|third|quarter))?(?:\W*$|[.,;:?!]|\s+(?:over|under|more|less|down|of|on|off|in|to|for|at|from|too|slow|fast|slower|faster|brighter|darker|weaker|stronger|above|below|and|or|so|what|which|how|each|apiece|if|when|with|through|than|either|extra|no|light)\b(?! bath)))",
    re.I,
)
_AWAY = r"(?:over|under|more|less|above|below|brighter|darker|weaker|stronger|dimmer|slower|slow|faster|fast|lower|higher|hotter|either way|too (?:dense|thin|dark|bright|slow|fast|much|little)|and (?:a )?half|underexposed|overexposed|beneath|short)"
_SO_FAR = Pattern(
    r"(?P<before>^|[,;:.\u2013\u2014]\s+|\b(?:is|are|'s|was|were|be|being|lies?|lie|comes?|came|coming|reads?|shot|exposed|metered|meters?|rated|tests?|needs?|wants?|wanted|like|out|always|so|then|first|last|and|key|fill|hair|rim|"
    r"background|backdrop|sky|room|hall|ambient|light|power|it|them|frames?|negs|negatives|film|stock|i'm|we're|should be|to be|than|lit)\s+)(?<!\bwhat is )(?<!\bwhat's )stop (?=" + _AWAY + r"\b)",
    re.I,
)
_HALF = Pattern(r"\b(?P<one>an? stop|one stop) and (?=(?:half|third|quarter)\b)", re.I)


def with_article(text: str) -> str:
    """The text with the "a" of a stop that lacks it.

    >>> with_article("key f/8, fill stop under, silk costs third of stop")
    'key f/8, fill a stop under, silk costs third of a stop'
    """
    if "stop" not in text and "Stop" not in text:
        return text
    said = _COSTS.sub(r"\g<before> a stop", text)
    said = _SO_FAR.sub(r"\g<before>a stop ", said)
    return _HALF.sub(r"\g<one> and a ", said)
