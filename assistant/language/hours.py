"""The hour of the day, and somebody whose trade is called as a thing of ours: neither is a figure or a word of the question.

"The doors open at nine": no number. "The guide is 10 feet away": who shows people round, and no guide number.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_HOUR = r"(?:(?:half past|quarter (?:past|to)|ten (?:past|to)|twenty (?:past|to)) )?(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?)(?: ?(?:thirty|fifteen|o'clock|am|pm|a\.m|p\.m|sharp|tonight|tomorrow|today|in the (?:morning|evening|afternoon)|at night))*"
_STARTS = r"(?:starts?|started|begins?|began|opens?|opened|closes?|closed|ends?|ended|finish(?:es|ed)?|kicks? off|sets? (?:off|out)|leaves?|sails?|arrives?|meets?|gathers?|gets? going|goes on|is on|curtain(?:'s| is)? up|doors (?:are|open))"
_AT_AN_HOUR = Pattern(
    rf"(?P<what>(?:^|[.!?;:,] |\band )(?:(?!\b(?:lens|zoom|aperture|bracket|series|scale|dial|range|ring|exposure|count|timer|wedge|stop|iris|f-?stop|meter|roll|frame|fall-?off|depth|focus|power|flash|strip|film|shutter|diaphragm|numbers?|figures?|sum|table|row|we|i)\b)[^\d.!?;:,]){{3,50}}? {_STARTS})(?: again| up| only)? (?:at|by|before|after|from|till|until|around) (?:about |around )?{_HOUR}(?=\s*(?:$|[.!?;,]|\band\b|\bso\b))", re.I)
_A_GUIDE = Pattern(
    r"\b(?P<whose>the|our|my|a|this|his|her|their)(?: (?:tour|ghost|museum|cave|castle|mountain|river|walking|old|young|local))? guide(?P<does>(?:'s|,? who is| is| stands| stood| sits| sat| poses| was| waits)(?: (?:standing|sitting|posing|waiting|now|about|only|just|at|some|up))* [\w.½-]+(?: and a half)? ?(?:feet|foot|ft|metres?|meters?|m|yards?)(?: \d+ ?(?:in|inches))?"
    r" (?:away|off|back|from (?:the|my|our|it|me)|in front|out|behind|further|down)\b)", re.I)


def without_hours(text: str) -> str:
    """The text without the hour at which something begins, and with a guide as one who is led by.

    >>> without_hours("The ghost walk starts at nine. GN 50 feet, the guide is 10 feet from the flash.")
    'The ghost walk starts. GN 50 feet, the leader is 10 feet from the flash.'
    """
    said = _AT_AN_HOUR.sub(lambda found: found["what"], text)
    return _A_GUIDE.sub(lambda found: f"{found['whose']} leader{found['does']}", said)
