"""The hour of the day, and words that are called as a thing of ours: none bears on the question.

"The doors open at nine": no f-number. "The guide is 10 feet away": who shows people round, and no guide number.
"Nobody brought a meter": no length.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_HOUR = r"(?:(?:half past|quarter (?:past|to)|ten (?:past|to)|twenty (?:past|to)) )?(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?)(?: ?(?:thirty|fifteen|o'clock|am|pm|a\.m|p\.m|sharp|tonight|tomorrow|today|in the (?:morning|evening|afternoon)|at night))*"
_STARTS = r"(?:starts?|started|begins?|began|opens?|opened|closes?|closed|ends?|ended|finish(?:es|ed)?|kicks? off|sets? (?:off|out)|leaves?|sails?|arrives?|meets?|gathers?|gets? going|goes on|is on|curtain(?:'s| is)? up|doors (?:are|open))"
_AT_AN_HOUR = Pattern(
    rf"(?:(?:^|[.!?;:,] |\band )(?:(?!\b(?:lens|zoom|aperture|bracket|series|scale|dial|range|ring|exposure|count|timer|wedge|stop|iris|f-?stop|meter|roll|frame|fall-?off|depth|focus|power|flash|strip|film|shutter|diaphragm|numbers?|figures?|sum|table|row|we|i)\b)[^\d.!?;:,]){{3,50}}? {_STARTS})(?: again| up| only)? (?:at|by|before|after|from|till|until|around) (?:about |around )?(?P<hour>{_HOUR})(?=\s*(?:$|[.!?;,]|\band\b|\bso\b))", re.I)
_TWELVE = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|1[0-2]|[1-9])"
_ON_THE_CLOCK = Pattern(
    rf"\b(?P<hour>(?:half|(?:a )?quarter|five|ten|twenty(?:[- ]five)?) past {_TWELVE}|(?:(?<=\bat )|(?<=\bby )|(?<=\bis )|(?<=\b's )|(?<=\btill )|(?<=\bbefore )|(?<=\bafter ))(?:a )?quarter to {_TWELVE}|(?:(?<=\bat )|(?<=\bby )|(?<=\btill )|(?<=\bfrom ))(?:1[0-2]|[1-9]):[0-5][05])\b"
    r"(?!(?: and a half)? (?:feet|foot|ft|metres?|m|stops?|power|pops?|flash\w*|seconds?|key|fill|ratio)\b)", re.I)
_A_RATIO = Pattern(r"\bratio|\bscale|\bmagnif|\bkey\b|\bfill\b", re.I)
_FIGURES = frozenset({"number", "power", "ratio", "aperture", "count", "power_down", "share", "number_range"})
KINDS = _FIGURES
_A_GUIDE = Pattern(
    r"\b(?P<whose>the|our|my|a|this|his|her|their)(?: (?:tour|ghost|museum|cave|castle|mountain|river|walking|old|young|local))? guide(?P<does>(?:'s|,? who is| is| stands| stood| sits| sat| poses| was| waits)(?: (?:standing|sitting|posing|waiting|now|about|only|just|at|some|up))* [\w.½-]+(?: and a half)? ?(?:feet|foot|ft|metres?|meters?|m|yards?)(?: \d+ ?(?:in|inches))?"
    r" (?:away|off|back|from (?:the|my|our|it|me)|in front|out|behind|further|down)\b)", re.I)
_A_METER = Pattern(
    r"\b(?P<has>brought|bring|brings|own|owns|owned|have|has|had|got|use|used|borrow|borrowed|buy|bought|carry|carries|carried|packed|pack|find|found|lent|lend me|forgot|with|without|wish i had) a meter(?=\s*(?:[.,;:!?]|$|(?:with (?:me|us|him|her|them)|(?:(?:up|out|down|in|over) )?here|today|tonight|to hand|handy|but|along|any ?more|so)\b))", re.I)


def in_other_words(text: str) -> str:
    """The text with a guide as one who is led by, and a meter that is owned as the instrument.

    >>> in_other_words("GN 50 feet, the guide is 10 feet from the flash.")
    'GN 50 feet, the leader is 10 feet from the flash.'
    """
    said = _A_METER.sub(r"\g<has> the light meter", text)
    return _A_GUIDE.sub(lambda found: f"{found['whose']} leader{found['does']}", said)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the hour at which something begins as a remark.

    >>> [f.quantity for f in settle([Fact("number", 9.0, start=25, end=29)], "The ghost walk starts at nine. GN 50 feet.")]
    ['remark']
    """
    clock = () if _A_RATIO.search(text) and ":" in text else _ON_THE_CLOCK.finditer(text)
    spans = [found.span("hour") for found in (*_AT_AN_HOUR.finditer(text), *clock)]
    return [replace(f, quantity="remark", unit="", of="") if f.quantity in _FIGURES and any(start <= f.start < end for start, end in spans) else f for f in facts] if spans else facts
