"""A rule for daylight told in its own words: "sunny 16 (f/16 at one over the film speed)", "overcast, f/8 at 1/ISO".

Its f-number is no setting of the camera and its "one" no stop. Where the rule is named besides, the
words only explain it; where it is not, they tell how bright the light is. The rule itself is common practice, no source.
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.ambient import BASE_SPEED, exposure_value

_SPEED = r"(?:(?:the|your|my|its|his|that|whatever) )*(?:film(?:'s)?[ -]?(?:speed|iso|rating|asa)?|iso(?: speed| number| rating| value)?|asa(?: number| rating)?|speed(?: of the film| number)?)"
_RECIPROCAL = rf"(?:(?:one|1) ?(?:over|/|upon|divided by) ?{_SPEED}|the (?:reciprocal|inverse) of {_SPEED})(?: (?:of (?:a )?second|seconds?|sec|s))?"
_TIME = rf"(?:(?:a |the )?(?:shutter|time|exposure)(?: speed| time)? (?:of |at |is |equal to )?(?:about )?)?{_RECIPROCAL}"
_STATED = Pattern(rf"(?:f ?/? ?(?P<number>\d+(?:\.\d)?)(?:,| at| and| with| @| &)* (?:for |using )?{_TIME}\b|\b{_TIME}(?:,| at| and| with| @| &)* f ?/? ?(?P<after>\d+(?:\.\d)?))", re.I)
_SIGNS = ("one over", "1 over", "1/iso", "1/asa", "1/film", "1/the", "1/speed", "1/ ", "1 /", "1 upon", "one upon", "reciprocal", "inverse", "divided by", "one /", "one/")
_NAMED = Pattern(r"\bsunny[ -]?(?:16|sixteen|f ?/? ?16)\b", re.I)
_LEAD = Pattern(r"[\s,:;(\[-]*(?:\b(?:rule|rule of thumb|which|that|it|is|means?|says?|gives?|being|i\.?e\.?|to say|of|as|with|the|namely)\b[\s,:;(\[-]*)*$", re.I)
_ANOTHER_F = Pattern(r"\bf ?/? ?\d", re.I)
_OPENING_ASKED = Pattern(r"\b(?:what|which)\b[^.?!]*\b(?:aperture|f-?stop|f-?number|lens|opening)\b|\b(?:aperture|f-?stop|f-?number)\W*$", re.I)

_MOST = 1000.0
"""No f-number comes to so much."""


def without_statement(text: str) -> str:
    """The text with a rule's own statement left out, or made the light that it tells of.

    >>> without_statement("By sunny 16 (f/16 at one over the film speed), f/11 and 1/500: what film was it?")
    'By sunny 16, f/11 and 1/500: what film was it?'
    >>> without_statement("Overcast, f/8 at 1/ISO is right. What film wants f/5.6 and 1/250?")
    'Overcast, EV 12.64 is right. What film wants f/5.6 and 1/250?'
    """
    low = text.lower()
    for sign in _SIGNS:  # a plain loop: asked of every text, and most have none
        if sign in low:
            break
    else:
        return text
    found = _STATED.search(text)
    if found is None:
        return text
    number = float(found["number"] or found["after"])
    if not 0 < number < _MOST:
        return text
    by_name, light = _NAMED.search(text) is not None and number == 16, f"EV {exposure_value(number, 1 / BASE_SPEED):.2f}"
    before, after = text[: found.start()], text[found.end() :]
    if not (_ANOTHER_F.search(before) or _ANOTHER_F.search(after)) and not _OPENING_ASKED.search(after):
        return f"{before}f/{number:g}{after}" if by_name else f"{before}{light} at f/{number:g}{after}"  # the rule is worked by: its f-number is that of the camera
    if not by_name:
        return f"{before}{light}{after}"
    lead = _LEAD.search(before)
    head = before[: lead.start()] if lead is not None else before
    tail = patterns.sub(r"^\s*[)\]]", "", after)
    return head + (tail if tail[:1] in (",", ".", "?", ";", ":", "") else " " + tail.lstrip())
