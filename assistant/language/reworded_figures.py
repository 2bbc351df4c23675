"""Figures, and what is asked of them, put into their usual wording: "40 000 joules", "EV 10, at ISO 100,", "which gets more and how many stops more?".

Rows of the table of `usual_words`: letters one of which the text must hold, what is said, and its usual wording.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.patterns import Pattern

_WHICH_AND_BY = Pattern(
    r"(?P<which>\bwhich (?:one |of (?:them|the two) )?(?:gets?|is|are|receives?|has|takes?|looks?|catches|sees|comes out)[^?.!]{3,40}?),? (?:and|but) how (?P<much>many stops|much) (?:more|brighter|less|darker|stronger|weaker|hotter|dimmer)(?: light)?(?: (?:is|does|do) (?:it|that)(?: (?:get|have|receive))?)?\s*\?", re.I)
"""Which of two, and by how much: "which gets more light and how many stops more?"."""
_BOTH_AT_100 = Pattern(r"(?<=[\dm]),? (?:and )?both(?: of them)?(?: being| are| were)?(?: measured| given| quoted| told| stated| found)? (?:at|for|on) (?:ISO|ASA) 100\b(?! film)(?=\s*[.;,?])", re.I)
"""What guide numbers are for that say nothing of it (contract 2)."""
_HALF_THAT = Pattern(r"\b(?P<half>half) (?:of )?(?:that|this|the) (?:distance|far|way)\b(?! of)", re.I)
"""Half of the distance that was named: no power."""
_THE_TEAM = Pattern(r"\b(?P<game>cricket|football|hockey|first|second|school|village|home|visiting) eleven\b(?! (?:feet|foot|ft|metres?|meters?|m|stops?|people|players|men|women)\b)", re.I)
"""So many play in one; nothing is counted."""
_THE_BRIGHTER_ONE = Pattern(r"(?<=\bstops is )(?P<how>(?:the |my |her |his )(?:\w+ ){1,3}?)the (?P<more>brighter|darker|stronger|weaker|hotter|dimmer) one(?=\s*\?)", re.I)
_LIT_EDGE = Pattern(r"\b(?P<which>near(?:er|est)?|far(?:ther|thest)?|further|furthest) (?:edge|corner)\b", re.I)
_LAMP_ALONE = Pattern(r"\b(?:lamp|light|flash|head|strobe)\b", re.I)
_HOW_FAR = Pattern(r"\d ?(?:m|cm|ft|feet|foot|metres?|meters?|yards?|inches)\b", re.I)
_SHARPNESS = Pattern(r"\b(?:the|an?) (?:edge|corner)\b|\bEV\b|\b(?:focus\w*|sharp\w*|lens|depth|hyperfocal)\b|\d ?mm\b|\bf ?/ ?\d", re.I)


def _as_an_end(found: re.Match[str]) -> str:
    """"the near edge is 1.5 m from the lamp": of a thing that is lit, where nothing of a lens is told, no edge of what is sharp."""
    said = found.string
    return f"{found['which']} end" if _LAMP_ALONE.search(said) and _HOW_FAR.search(said) and not _SHARPNESS.search(said) else found[0]


_EV_AT = Pattern(r"\b(?P<ev>EV -?\d+(?:\.\d+)?), (?:at|for|on) (?P<iso>(?:ISO|ASA) \d+)(?:, |(?=[.;?!]|$))", re.I)
"""The film that an EV is for, set between commas."""
_TAKES_IT_OFF = Pattern(r"(?P<told>\bstops? too (?:bright|hot|much|light|strong)\b[^?]*?)(?P<asked>\b(?:what|which) distance|\bhow far(?: back| away)?) (?:takes?|knocks?|would take|will take|cures?|gets?)(?: (?:that|it|the|this|exactly|just|a|an|half|one|two|third|thirds|of|full|whole|extra|stop|stops))+ off\b", re.I)
"""What is too much is what is to be taken off: it is told once."""
_THOUSANDS = Pattern(r"(?<![\d/.,:'-])(?<!f)\b[1-9]\d{0,2}(?: \d{3})*(?: 0\d\d)(?: \d{3})*(?![\d/.,:'])(?!-\d)", re.I)
"""Thousands set apart by a space: no number begins with nought, so that "40 000" is one."""
_THOUSANDS_OF_ENERGY = Pattern(
    r"(?<![\d/.,:'-])(?<!\bf )(?<!f)(?<!\bf/ )(?<!\biso )(?<!\basa )(?<!\bgn )(?<!\bnumber )(?<!\bof )(?<!\bat )\b[1-9]\d{0,2}(?: \d{3})+(?= ?(?:joules?|j|ws|w/s|watt[- ]?seconds?)\b(?! ?(?:heads?|packs?|units?|flash(?:es)?|monolights?|monoblocs?|lights?|strobes?|guns?|lamps?|each(?! (?:pop|flash|shot|frame)))\b))", re.I)
""""12 500 Ws"; "2 600 Ws heads" are two."""


def _joined(found: re.Match[str]) -> str:
    return found[0].replace(" ", "")


_OF_OVEREXPOSURE = Pattern(r"(?P<so_many>\b(?:gives?|giving|means?|makes?|causes?|amounts? to|comes? to|results? in|leads? to|adds?|is|gets?|leaves?)\b(?: (?:me|us|it|the film|the negs?|about|only|just|exactly))* [^.,;?!]{1,24}? stops?) of (?P<way>over|under)-?exposure\b", re.I)
"""So much light more or less, said by what it does to the film."""
_TIME_HALVED = Pattern(r"\b(?P<each>each|every) time (?:(?:the|my) )?(?:shutter (?:time|speed)|time|exposure time|speed) (?:is |gets )?(?:halved|halves|doubled|doubles)\b", re.I)
"""Where the shutter goes a step shorter, and no half second."""
_LIGHT = r"(?P<light>(?:the|my) (?:key|main|fill|hair|rim|kicker|accent|background|backdrop|back)[- ]?(?:light|head|flash)?|the (?:other|second) (?:light|head|flash|one))"
_HOW_STRONG = Pattern(
    rf"\bhow (?:strong|high|hard) (?P<how>must|should|do i set|does|has) {_LIGHT} (?:be set|be turned|have to be set|need to be set|be dialled|to be set)\b"
    rf"|\bwhat (?:do|should|must|would) i (?:dial|dial in|set|put) (?:in )?on {_LIGHT.replace('<light>', '<dialled>')}(?! to\b)"
    rf"|\bwhat (?:do|should|must|would|does) (?:i (?:put|set|run|dial|turn) )?{_LIGHT.replace('<light>', '<turned>')} (?:(?:have to |need to )?(?:go|run|be set|be put) )?(?:on|to|at)\b(?! (?:be|read|stand|give)\b)", re.I)
_A_POWER = Pattern(r"\bpower\b|\bfull\b|(?<![/\d])1/(?:2|4|8|16|32|64|128)\b", re.I)


def _as_a_power(found: re.Match[str]) -> str:
    """"the key at half power, how strong must the fill be set?", "what does the fill go on?": a power, where one is told."""
    light = found["light"] or found["dialled"] or found["turned"]
    return f"what power {found['how'] or 'does'} {light} {'be set to' if found['how'] else 'need'}" if _A_POWER.search(found.string) else found[0]


_ASKED_AT = Pattern(r"\b(?P<what>factor|aperture|f-?stop|f|stop|f-?number) at (?=[\w ./]{1,24}?(?:\blife[- ]?size|%|\bpercent\b|\btimes (?:full|the|its|as)\b))", re.I)
"""Asked at a scale, a part or a multiple, and no value: "exposure factor at one and a half times life size", "what f at 50%"."""
_INSTEAD = Pattern(r"\b(?:use|using|shoot(?: at)?|work(?: at)?|have|open(?: up)? to|be at|set) f ?/ ?(?P<now>\d[\d.]*) (?:instead of|rather than|in place of|where (?:i|we)(?:'d| would) otherwise (?:be|use|need|have)(?: at)?) (?:the )?(?:f ?/ ?)?(?P<before>\d[\d.]*)\b(?! ?(?:m|ft|feet|metres|s)\b)", re.I)
"""One f-number in place of another: it goes from the one to the other."""
_OR_AT = Pattern(r"(?P<first>\bat (?:iso |f/?)?\d[\d./]* or )at (?=\d)", re.I)
"""Of two to choose from, "at 200 or at 100"."""
_FASTEST_FILM = Pattern(r"\b(?:what(?:'s| is)|which is) the (?:fastest|slowest) film(?: speed)? (?:(?:that )?(?:I|we) (?:can|could|may|might) (?:still |just )?(?:use|expose|shoot|load|put in|get away with)(?: (?:correctly|properly|rightly))?)\b", re.I)
_CLOSES_TO = Pattern(r"(?P<lens>\b(?:my|the) lens) (?:closes|stops|goes|shuts)(?: down)? (?:(?:no (?:further|farther|smaller|more) than|only (?:to|as far as)|to) )(?=f ?/ ?\d)", re.I)


def _at_its_end(found: re.Match[str]) -> str:
    """The fastest film is the one for the end that the lens has."""
    return f"{found['lens']} is at " if "what film do I need" in found.string else found[0]


OF_FIGURES: tuple[tuple[tuple[str, ...], Pattern, str | Callable[[re.Match[str]], str]], ...] = (
    (("how many stops", "how much"), _WHICH_AND_BY, r"\g<which> and by how \g<much>?"), (("oth ",), _BOTH_AT_100, ""), (("yperfocal",), _HALF_THAT, r"\g<half> the hyperfocal distance"), ((" eleven",), _THE_TEAM, r"\g<game> team"), (("er one",), _THE_BRIGHTER_ONE, r"\g<how>\g<more>"),
    (("edge", "corner"), _LIT_EDGE, _as_an_end), (("EV", "ev"), _EV_AT, r"\g<ev> at \g<iso> "), ((" off",), _TAKES_IT_OFF, r"\g<told>\g<asked>"),
    (("test film",), _FASTEST_FILM, "what film do I need"), ((" lens ",), _CLOSES_TO, _at_its_end), (("ow strong", "ow high", "ow hard", "hat do", "hat should", "hat must", "hat would"), _HOW_STRONG, _as_a_power), (("halv", "doubl"), _TIME_HALVED, r"for \g<each> halving of the shutter time"), (("0",), _THOUSANDS, _joined), ((" J", " j", "Ws", "ws", "w/s", "W/s", "watt"), _THOUSANDS_OF_ENERGY, _joined), (("expos",), _OF_OVEREXPOSURE, lambda found: f"{found['so_many']} {'more' if found['way'].lower() == 'over' else 'less'} exposure"),
    (("life", "%", "percent", " times "), _ASKED_AT, r"\g<what>, at "), ((" or at ",), _OR_AT, r"\g<first>"), (("instead of", "rather than", "in place of", "otherwise"), _INSTEAD, r"go from f/\g<before> to f/\g<now>"),
)
