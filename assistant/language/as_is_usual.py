"""Wordings of an everyday hand put as they are usually put: "flash at a quarter", "how far down does the paper fall against her".

Each row has letters without which it is not looked for, and takes in a whole way of putting it; none of them adds a figure.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_SHARE = r"(?:an? (?:half|third|quarter|eighth|sixteenth|thirty[- ]second|sixty[- ]fourth))"
_AMOUNT = r"(?:(?:an?|one|two|three|four|half an?|\d+(?:\.\d+)?)(?: and (?:an? |one |two )?(?:half|thirds?|quarter))?(?: \d/\d)? stops?(?: and (?:an? |one |two )?(?:half|thirds?|quarter))?|\d \d/\d stops|(?:a |one )third of a stop|two thirds of a stop|half a stop)"
_LAMP = r"(?:flash|strobe|speedlight|flashgun|gun|head|monolight|monoblock)"
_CLOTH = r"(?:brolly|umbrella|soft ?box|octa\w*|scrim|diffuser|dome|grid|snoot|shoot-through|silk|beauty dish|bare head|bare bulb|bare flash|cloth|sheet|tissue|hanky|handkerchief|bounce card)"
_ROWS: tuple[tuple[str, Pattern, str], ...] = (
    # an eighth said of a flash is of its power, also in the sun, where "an eighth" by itself would be a time
    ("lash", Pattern(rf"(?P<lamp>\b{_LAMP}(?: (?:is|was|set|sits|stands))?(?: at| on| to)) (?P<share>{_SHARE}|half)(?=\s*(?:[,.;:?!]|$|and\b|with\b|gave\b|gives\b|looked\b|looks\b|was\b|is\b|for\b|through\b|into\b|lit\b|then\b|so\b|but\b))(?! (?:and|or) (?:a half|a third|two))", re.I), r"\g<lamp> \g<share> power"),
    ("un", Pattern(rf"(?P<lamp>\b(?:sun|sunny|sunlit|sunlight|sunshine)\b[^?]{{0,60}}?\b{_LAMP}(?: (?:is|was|set|sits|stands))?(?: at| on| to)) (?P<share>1/(?:2|4|8|16|32|64|128))(?=\s*(?:[,.;:?!]|$|and\b|with\b|gave\b|looked\b|was\b))", re.I), r"\g<lamp> \g<share> power"),
    ("bare", Pattern(rf"(?P<cloth>\b{_CLOTH}\b[^.?!]{{0,60}}?\b)(?:it's|it is|it was|it reads|it comes out|it came out|that's|that is|is|was|reads|comes out|came out) (?P<many>{_AMOUNT}) (?:down|darker|weaker|less|less light)? ?(?:on|than|under|below|against|from) (?:the |a |my )?bare (?:head|bulb|flash|gun|lamp|reading)\b", re.I), r"\g<cloth>it costs \g<many>"),
    ("EV", Pattern(r"\bwhat EV (?P<is>is|'s|was) (?P<that>that|this|it)\b\W{1,3}(?P<at>at (?:ISO|ASA) ?\d+)(?:,? I mean)?\b", re.I), r"what EV \g<at> \g<is> \g<that>"),
    (" or ", Pattern(r"(?P<told>\bf/\d[^?]*\b(?:do|should|shall|would|must|can) (?:i|we) (?:set|use|dial|shoot at|go to|take|open to|close to)(?: the (?:ring|lens) (?:to|at|on))?) (?P<one>1\.4|2|2\.8|4|5\.6|8|11|16|22|32) or (?P<other>1\.4|2|2\.8|4|5\.6|8|11|16|22|32)(?=\s*(?:\?|$))", re.I), r"\g<told> f/\g<one> or f/\g<other>"),
    (" setting", Pattern(r"(?P<film>\b\d{2,4} film(?: \w+){0,2}? )(?:on|at) the (?P<speed>\d{2,4}) setting\b", re.I), r"\g<film>at \g<speed>"),
    ("dial ", Pattern(r"\b(?P<dial>dial)(?: is| was| still| had been| has been|'d been)? (?:still )?(?:left |stuck |still )?(?:sitting|standing|sat|left|parked|stuck|resting|lying) (?:on|at) (?=\d{2,4}\b)", re.I), r"\g<dial> on "),
    (" had been ", Pattern(r"\b(?P<if>if|suppose|say) (?:it|i|the dial|the meter|my dial) had been (?:left |sat |sitting |standing |parked |stuck |set )?(?:on|at|to) (?=\d)", re.I), r"\g<if> it had been on "),
    ("hade", Pattern(r"\b(?P<where>in (?:the |open |deep |light |full ){0,2}shade)(?: here| there)?,? (?:i get|i got|i have|i've got|it's|it is|it was|we get|we've got)(?: a)? (?=f/?\d)", re.I), r"\g<where> I meter "),
    ("-in-law", Pattern(r"\b(?P<kin>brother|sister|father|mother|son|daughter)s?-in-law\b", re.I), r"\g<kin>"),
    ("right", Pattern(r", (?:an?|my|our|his|her|some|one) (?!meter|table|dial|sheet)[a-z]+(?: [a-z]+){0,3}? (?:says|said|claims|claimed|reckons|reckoned|swears|swore|insists|insisted|thinks|tells me|told me)(?= ?[.?!]\s*(?:is|was|are|were) (?:he|she|they|that|this|it) right\b)", re.I), ""),
    ("ow far out", Pattern(r"\bhow far out (?P<is>is|was|will|would|am|are)\b(?P<what> (?:the |my )?(?:flash |whole )?(?:exposures?|frames?|shots?|negs?|negatives?|slides?|pictures?))", re.I), r"how many stops out \g<is>\g<what>"),
    ("ow far ", Pattern(r"\bhow far (?:down|under|below|behind) (?:does|do|will|would|did) (?P<what>(?:the |my |her |his )?\w+(?: \w+)?) (?:fall|drop|sit|lie|go|come|end up|read|land)(?: down)? (?:against|below|under|behind|beneath|compared (?:with|to)|relative to) (?P<whom>(?:the |my )?\w+)(?=\s*(?:\?|$))", re.I), r"how many stops darker is \g<what> than \g<whom>"),
    ("ow slow", Pattern(r"\bhow slow (?:do|must|should|shall|can|would) (?:i|we) (?:have to |need to )?(?:drag (?:it|the shutter)|go|shoot|set it|set the shutter|make it)\b", re.I), r"what shutter do I need"),
    ("near enough", Pattern(r",? near enough(?:, (?:right|yes|no))?(?=\s*\?\s*$)", re.I), r", right"),
    (" DIN", Pattern(r"\b(?P<many>one|two|three|four|six|nine|\d{1,2}) (?P<more>more|up|less|down|higher|lower)(?: steps?| degrees?| points?)? (?:on|in|along) (?:the |a )?DIN(?: scale| numbers?| figures?)?\b"), r"\g<many> DIN \g<more>"),
    ("overexpos", Pattern(r"\b(?P<if>if (?:i|we)(?:'m| am|'re| are|'d| would|'ve| have)?(?: rather| going| got)? (?:to )?)(?:lean|err|tend|want to err|want to lean|be) (?:towards?|to|on the side of|to the side of) overexpos(?:ure|ing)\b", re.I), r"if I want more exposure"),
    ("underexpos", Pattern(r"\b(?P<if>if (?:i|we)(?:'m| am|'re| are|'d| would|'ve| have)?(?: rather| going| got)? (?:to )?)(?:lean|err|tend|want to err|want to lean|be) (?:towards?|to|on the side of|to the side of) underexpos(?:ure|ing)\b", re.I), r"if I want less exposure"),
)
_STOPS_OF_PACKS = Pattern(r"\b(?:how many stops|by how much|how much)\b[^?]*\bthe (?P<pack>\d{2,4})(?= (?:give|gives|over|than|make|makes|put|puts)\b|\s*\?)(?! ?(?:ws|w|j|joules?|watts?)\b)", re.I)
_PACK = Pattern(r"\b(?P<many>\d{2,4}) ?(?P<unit>ws|watt[- ]?seconds?|joules?|j)\b", re.I)


def as_is_usual(text: str) -> str:
    """A text with such wordings put as they usually are.

    >>> as_is_usual("Bright sun, flash at a quarter and f/16 looked right.")
    'Bright sun, flash at a quarter power and f/16 looked right.'
    >>> as_is_usual("Sitter 4 ft, paper 9 ft. How far down does the paper fall against her?")
    'Sitter 4 ft, paper 9 ft. how many stops darker is the paper than her?'
    """
    for sign, pattern, wording in _ROWS:
        if sign in text:
            text = pattern.sub(wording, text)
    text = _by_its_latitude(text) if "how " in text.lower() and "over" in text else text
    return _with_its_energy(text) if "the " in text and "top" in text else text


_STANDS = Pattern(rf"\b(?P<film>(?:films?|negs?|negatives?|print film|stock)\b(?: (?:can|will|could|easily|happily|only|just|does|do)){{0,3}}) (?:stands?|takes?|bears?|tolerates?|forgives?|survives?) (?P<many>{_AMOUNT}) over\b(?!-| ?exp)", re.I)
_HOW_WIDE = Pattern(r"\bhow (?:wide|far) (?:can|may|could|might|dare) i (?:go|open(?: (?:up|it|the lens))?)\b(?: then)?(?=\s*(?:\?|$))", re.I)


def _by_its_latitude(text: str) -> str:
    """"the neg can stand two stops over, f/8 is correct, how wide can I go?": the widest stop within what the film forgives."""
    stands, wide = _STANDS.search(text), _HOW_WIDE.search(text)
    if stands is None or wide is None:
        return text
    return _HOW_WIDE.sub("what is the widest stop I can use", _STANDS.sub(r"\g<film> takes \g<many> of overexposure", text))


def _with_its_energy(text: str) -> str:
    """"a 400 Ws pack and a 200 Ws; how many stops more does the 400 give?": the 400 is the pack of 400 Ws."""
    asked = _STOPS_OF_PACKS.search(text)
    if asked is None:
        return text
    units = [m["unit"] for m in _PACK.finditer(text, 0, asked.start()) if m["many"] == asked["pack"]]
    return f"{text[: asked.end('pack')]} {units[0]}{text[asked.end('pack') :]}" if len(units) == 1 else text
