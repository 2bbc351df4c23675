"""What lets only a part of the light through: per cents passed or swallowed, converters, a thing that is not there.

"the gel passes 25 %" is a loss of two stops, not a power; "no umbrella" is no loss at all;
a 1.4x converter costs a stop, a 2x two.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import loss_lists
from assistant.language.stop_words import LOSING
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Ask, Fact
from assistant.records import replace
from assistant.scales import aperture_difference_stops, is_aperture_mark

_PASSED = Pattern(r"\b(?:returns?|reflects?|(?:gives?|throws?|sends?|bounces?) back|transmits?|transmitting|passes|passing|lets?(?: only| just)?(?: through)?|letting through|transmission(?: is| of)?)(?: of)?(?: only| just| about| roughly)*\s*$", re.I)
_PASSED_AFTER = Pattern(r"^\s*(?:of (?:the |my )?light )?(?:transmission|transmittance|transmissive|gets? through|comes? through|passes|through)\b", re.I)
_KEPT = Pattern(r"\bloss\b[^.;?!\d]{0,30}\b(?:is|of|was|comes to)\s*$|\b(?:silk|net|gel|filter|glass|cloth|diffuser|scrim|sheet|layer|fabric|paper|it|that|which|and) stop(?:s|ped)(?: out| back)?\s*$|\b(?:swallow|eat|absorb|take|lose|lost|losing|soak|block|steal|rob|cost|waste|kill|cut|hold|drink|throw|sacrific|discard|forfeit)\w*(?: up| out| away| off| back| me| us| you| about| roughly| only| nearly| some| around)*\s*$", re.I)
_OF_LIGHT = Pattern(r"^\s*(?:of )?(?:the |my |its |that |all )?(?:light|flash|output|illumination)\b|^\s*(?:off|away)\b|^\W*$|^\s*[.,;:?!]|^\s*(?:of (?:it|what(?:'s| is) left|what remains|the (?:rest|remainder|remaining light)))\b|^\s*(?:in|to|by|through|with) (?:the|my|an?|that)\b", re.I)
_SENT_BACK = Pattern(r"^\s*(?:of )?(?:the |my |its |that |all |flash'?s )*(?:light|flash|output|illumination) (?:only |just )?(?:comes? (?:back|out|through)|gets? (?:through|past|out)|is left|are left|is passed|is returned|is reflected|reaches|remains|survives|makes it)\b", re.I)
"""After a share of the light: what is left of it."""
_STAYS_IN = Pattern(r"^\s*(?:of )?(?:the |my |its |that |all |flash'?s )*(?:light|flash|output|illumination) (?:is |are |gets? |goes |ends up )?(?:lost|eaten|swallowed|absorbed|wasted|blocked|gone|stays|missing|stolen|held back)\b", re.I)
"""After a share of the light: what is taken from it."""
_DENIED = Pattern(r"(?:\bnot|n't|n’t|\bnever|\bcannot) (?:even )?(?P<what>pass|transmit|return|reflect|let|give back|eat|take|swallow|absorb|lose|cost|steal|rob)\w*(?: through| back| me| us)?(?: only| just| about| roughly)*\s*$", re.I)
_ALL_BUT = Pattern(r"\b(?:all|everything) (?:but|except|bar)(?: for)?(?: about| some)?\s*$", re.I)
_SHARE = Pattern(r"^\s*(?:of )?(?:the |my |its |that |all |flash'?s )*(?:light|flash|output|illumination)\b", re.I)
_CONVERTER = Pattern(r"^[\s-]*(?:tele[- ]?)?(?:converter|extender|multiplier|tc)\b", re.I)
_CONVERTER_BEFORE = Pattern(r"(?:converter|extender|tc)(?: of| at| is|,)?\s*$", re.I)
_COST_TOLD = Pattern(r"\b(?:cost|lose|loss|take|eat|is|that's|steal|=)\w*", re.I)
_ABSENT = Pattern(r"\b(?:no|without|minus)(?: the| an?| any| my| more)?\s*$|\bnot (?:using|with|through)(?: the| an?| any| my)?\s*$"
                  r"|(?:\bnot|n't|n’t|\bnever|\b(?:don|didn|haven|won|isn)t)(?: yet)? (?:us(?:e|es|ed|ing)|have|got|need|fit(?:ted|ting)?|brought|bring|put(?:ting)? on|packed|mounted|mounting)(?: the| an?| any| my)?\s*$"
                  r"|\b(?:took|taken|take|taking|taking|left|leave|leaving) (?:off|out|away|behind)(?: the| an?| any| my)?\s*$|\b(?:removed|removing|forgot|stopped using|gave up)(?: the| an?| any| my)?\s*$", re.I)
_GONE = Pattern(r"^(?: filter| box| diffuser)?(?:'s| is| was| comes| came| stays| stayed)? (?:(?:now|already|still) )?(?:off|gone|removed|put away|packed away|(?:back )?(?:in (?:the|my) (?:bag|case|car|van)|at home|home))\b(?=\W*$|[.,;:!?]| (?:now|today|tonight|this time|again|and|so|the (?:lens|head|flash|light|gun|camera))\b)"
                r"|^(?: filter| box| diffuser)?(?:'s| is| was)?(?: not|n't|n’t| no longer|nt) (?:on|fitted|in use|used|attached|mounted|up|in place|in front|there)\b", re.I)
"""After what stood in the light once: "the polariser isn't on", "the umbrella is off now"."""
_WITH_IT_ON = Pattern(r"\b(?:with|through|behind) (?:it|that|them|the filter)\b|\b(?:was|were|had been) on\b|\bwith\b[^.?!]{0,30}\bon\b", re.I)
"""A value found while it was still on: what it took is then to be given back."""
_NONE_OF_IT = Pattern(r"(?<!with and )\b(?:with no|no|not? using any|using no)\s*$", re.I)
_OF_STOPS = Pattern(r"^\s*(?:of|at|is|:|worth|,)?\s*(?:about |around )?$", re.I)


_GEL_STRENGTHS = Pattern(r"\b(?:half|full|quarter) (?:ct[ob]|blue|orange|straw|green)\b[^?]*\b(?:half|full|quarter) (?:ct[ob]|blue|orange|straw|green)\b", re.I)
_A_STRENGTH = Pattern(r"\b(?:from|to|the|a) (?:a )?(?:half|full|quarter)$", re.I)
_POWER_AFTER = Pattern(r"\s*(?:power|output|of full)\b", re.I)
"""Gels are told by their strength, and so is the one that is put on: "going from half to full"."""


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with parts of the light as losses, and nothing taken for what is not there."""
    kinds = {f.quantity for f in facts}
    facts = facts if kinds.isdisjoint(_NUMBERS) else _engraved(_one_t_number([_times_of_glass(_t_number(f, text), text) if f.quantity in _NUMBERS else f for f in facts], text), text)
    facts = [replace(f, quantity="remark") if f.quantity == "power" and _A_STRENGTH.search(text[max(0, f.start - 8) : f.end]) and not _POWER_AFTER.match(text, f.end) else f for f in facts] if "power" in kinds and _GEL_STRENGTHS.search(text) else facts
    out = [*[_through(f, facts, text) if f.quantity in ("power", "number") else f for f in facts], *_free(facts, text)]
    out = _taken_off(out, text) if "nd" in kinds else out
    out = out if kinds.isdisjoint(_WORN) else [f for f in _absent(out, text) if not (f.unit == "softbox" and f.quantity == "modifier" and (_FILM_BOX.search(text[f.start : f.end + 40]) or _ON_THE_BOX.search(text[max(0, f.start - 40) : f.start])))]
    if not kinds.isdisjoint(_TIMES) and _CONVERTER.may_match(text):
        out = [_converter(f, facts, text) if f.quantity in _TIMES else f for f in out]
    return [_bare_stops(f, out, text) if f.quantity == "number" else f for f in out] if "number" in kinds else out


_NUMBERS = frozenset({"number", "focal_length", "times", "widest_aperture"})
_TIMES = frozenset({"times", "factor", "number", "aperture"})
_WORN = frozenset({"modifier", "camera_filter"})
KINDS = frozenset({*_NUMBERS, *_TIMES, *_WORN, "power", "nd"})
"""What is read here begins with a fact of one of these."""

_ON_THE_BOX = Pattern(r"\b(?:says|said|printed|stamped|marked|written|stands|reads|quoted|claimed|given)\b[^.;?!]{0,24}\bon $", re.I)
"""Before a box that something is printed on: a film's, or the flash's own."""
_FILM_BOX = Pattern(r"^(?:the|that) box (?:of (?:the|my|this|that|a|an) [a-z -]{0,24}(?:filters?|films?|flash|gun|lens|glass)\b|that came with )|^(?:the|that) box (?:it )?(?:is |was |it's )?(?:stamped|marked|printed|labell?ed|says|said|reads|gives|quotes|claims|promises)\b", re.I)
_T_BEFORE = Pattern(r"(?<!['’])\bt(?:[- ]?(?:stop|number|no\.?))?\s*[-/]?\s*(?:of |is )?$", re.I)


_FILTER_BEFORE = Pattern(r"\bfilter(?: is| of|,| \(|'s)?\s*$", re.I)
_FILTER_AFTER = Pattern(r"^\s*(?:\w+ ){0,2}filter\b", re.I)


def _times_of_glass(fact: Fact, text: str) -> Fact:
    """"a x2 yellow filter": its factor."""
    glass = fact.quantity == "times" and fact.value > 1 and (_FILTER_AFTER.match(text[fact.end :]) or _FILTER_BEFORE.search(text[: fact.start]))
    return replace(fact, quantity="factor", of="camera", cue="") if glass else fact


def _t_number(fact: Fact, text: str) -> Fact:
    """"f/2.8 and T3.4", "like a T three point two": what the glass passes, as a number of its own."""
    if fact.quantity == "focal_length" and fact.unit == "mm" and "mm" not in fact.said.lower() and 0.0007 <= fact.value <= 0.064 and _T_BEFORE.search(text[: fact.start]):
        return replace(fact, quantity="t_number", value=fact.value * 1000, unit="", of="")  # "a T/4 lens"
    named = fact.quantity in ("number", "widest_aperture") and not fact.bad and 0.7 <= fact.value <= 64 and _T_BEFORE.search(text[: fact.start])
    return replace(fact, quantity="t_number", of="") if named else fact


_ENGRAVED = Pattern(r"\b(?:engraved|marked|labelled|opens to|sold as|called)(?: as)?(?: an?)? $", re.I)


def _engraved(facts: list[Fact], text: str) -> list[Fact]:
    """"engraved two point eight, but T3.2": the lens's own f-number, where a T-number stands beside it."""
    if not any(f.quantity == "t_number" for f in facts):
        return facts
    return [replace(f, quantity="aperture", of="") if f.quantity == "number" and not f.bad and is_aperture_mark(f.value) and _ENGRAVED.search(text[: f.start]) else f for f in facts]


_NOT_T = Pattern(r"(?:\bnot|instead of|rather than) t[ /-]?$", re.I)


def _one_t_number(facts: list[Fact], text: str) -> list[Fact]:
    """"it says T3.1, not T3.3": the one that is not denied."""
    told = [f for f in facts if f.quantity == "t_number"]
    denied = [f for f in told if _NOT_T.search(text[: f.start])] if len(told) == 2 else []
    return [replace(f, quantity="remark") if f in denied else f for f in facts] if len(denied) == 1 else facts


_ANOTHER_PART = Pattern(rf"\b{LOSING} (?:me )?(?:another|a further)(?: about)? $", re.I)


def _part_of_a_stop(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """"the dish loses half a stop and the sock loses another 3/4": of a stop as well."""
    told = any(f.quantity in ("loss", "filter_loss") and f.end <= fact.start and "stop" in f.said for f in facts)
    return told and fact.unit != "%" and "power" not in fact.said and _ANOTHER_PART.search(text[: fact.start]) is not None


_FREE = Pattern(r"^[^.,;?!\d]{0,12}?\b(?:doesn.?t|does not|do not|don.?t|will not|won.?t) (?:really )?(?:cost|lose|eat|take|steal|absorb|swallow|rob)(?: me| us)? (?:anything|any(?: light)?|a thing|light)\b", re.I)


def _free(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"the grid doesn't cost anything": nothing lost, so nothing is taken for it."""
    found = [(f, m) for f in facts if f.quantity == "modifier" for m in [_FREE.match(text[f.end :])] if m]
    return [replace(f, quantity="loss", value=0.0, start=f.end, end=f.end + m.end(), said=m.group().strip()) for f, m in found]


def _taker(fact: Fact, facts: Sequence[Fact]) -> Fact | None:
    """What stands in the light nearest before it, or else after it."""
    worn = [f for f in facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    before = [f for f in worn if f.start <= fact.start]
    return before[-1] if before else worn[0] if worn else None


_A_PANE = Pattern(r"\b(?:element|pane|window glass|glass|mirror|prism|port|perspex|acrylic|cloth|fabric|sheet|material|stuff)\b", re.I)


def _through(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"passes 25 %" and "swallows 75 % of the light": two stops lost, both."""
    if fact.quantity not in ("power", "number") or fact.bad or not 0 < fact.value < 1:
        return fact
    if _part_of_a_stop(fact, facts, text):
        taker = _taker(fact, facts)
        return replace(fact, quantity="loss", unit=taker.unit if taker else "", of=taker.of if taker else "", cue="", to="")
    if (fact.unit != "%" or fact.quantity == "number") and not (_SHARE.match(text[fact.end :]) or _all_said(fact, text) or _LETTING.search(text[: fact.start]) and _LET_THROUGH.match(text, fact.end)):
        return fact
    before, after = text[: fact.start], text[fact.end :]
    way = _way(before, after)
    if way is not None:
        return _by_share(fact, way, _taker(fact, facts))
    passed = _PASSED.search(before) or _SHARE.match(after) and patterns.search(r"\b(?:gets?|gives?|leaves?|keeps?)(?: only| just| about)*\s*$", before, re.I) or _PASSED_AFTER.match(after) and (fact.unit == "%" or patterns.search(r"\blight\b", text, re.I))
    kept = _KEPT.search(before) and _OF_LIGHT.match(after) and (patterns.search(r"\blight\b|\bstops?\b", text, re.I) or _all_said(fact, text))
    taker = _taker(fact, facts)
    lens = patterns.search(r"\blens\b", text, re.I) and taker is None
    if lens or not (passed and (taker or fact.unit == "%" and _A_PANE.search(text)) or kept and (taker or fact.unit == "%")) or patterns.search(r"\bpower\b", after[:10], re.I):
        return replace(fact, quantity="number", of="", to="") if taker and fact.unit == "%" and _SHARE.match(after) else fact
    lost = -math.log2(fact.value if passed else 1 - fact.value)
    glass = taker is not None and taker.quantity == "camera_filter"
    return replace(fact, quantity="filter_loss" if glass else "loss", value=lost, unit=taker.unit if taker else "", of=taker.of if taker else "", cue="passed", to="")


_LET_THROUGH = Pattern(r"\s*(?:of it )?(?:through|by|past)\b", re.I)
_LETTING = Pattern(r"\blet(?:s|ting)?\b[^.?!]{0,20}$", re.I)
_PASSING = frozenset({"pass", "transmit", "return", "reflect", "let", "give back"})
_OTHER_WAY = {"lost": "left", "left": "lost", "": ""}


def _way(before: str, after: str) -> str | None:
    """Whether a share of the light is "lost" or "left", where it is not said outright: by what follows it, by a "not", by "all but"; None where none of these is there.

    >>> _way("", " of the light is lost in the umbrella"), _way("it lets all but ", " of the light through"), _way("it doesn't pass ", " of it")
    ('lost', 'lost', 'lost')
    """
    denied, all_but = _DENIED.search(before), _ALL_BUT.search(before)
    plain = _ALL_BUT.sub("", before)
    if _STAYS_IN.match(after) or _SENT_BACK.match(after):
        way = "lost" if _STAYS_IN.match(after) else "left"
    elif denied is not None:
        way = "lost" if denied["what"].lower() in _PASSING else ""
    elif all_but is not None:
        way = "left" if _PASSED.search(plain) or _LETTING.search(plain) else "lost" if _KEPT.search(plain) else ""
    else:
        return None
    return _OTHER_WAY[way] if all_but is not None else way


def _by_share(fact: Fact, way: str, taker: Fact | None) -> Fact:
    """So much of the light lost or left by what stands in it; a number that nobody has placed where the words leave it open."""
    if taker is None:
        return fact
    if not way:
        return replace(fact, quantity="number", of="", to="")
    share = 1 - fact.value if way == "lost" else fact.value
    glass = taker.quantity == "camera_filter"
    return replace(fact, quantity="filter_loss" if glass else "loss", value=-math.log2(share), unit=taker.unit, of=taker.of, cue="passed", to="")


def _all_said(fact: Fact, text: str) -> bool:
    """"the diffuser loses half.": half the light, where no stops are counted, nor told without the word ("the dome 1 1/2, the gel 1/2")."""
    return fact.quantity == "power" and _OF_LIGHT.match(text[fact.end :]) is not None and not patterns.search(r"\bstops?\b|\bpower\b|\b\d \d/[23]\b", text[: fact.end + 12], re.I)


def _absent(facts: list[Fact], text: str) -> list[Fact]:
    """"no umbrella, just the bare head": nothing stands in the light, where none of its kind is told of otherwise."""
    if any(f.quantity in ("loss", "filter_loss", "factor", "nd") for f in facts):
        return facts
    if not any(f.quantity == "guide_number" for f in facts):  # beside a reading with and without it, the light is told by what is gone
        gone_glass = [f for f in facts if f.quantity == "camera_filter" and _NONE_OF_IT.search(text[: f.start])]
        if gone_glass and len(facts) == 1:
            return [replace(gone_glass[0], unit="BARE")]  # "no polariser": all that is said
        return [f for f in facts if f not in gone_glass]
    gone = {f.unit for f in facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE" and _is_gone(f, text)}
    here = {f.unit for f in facts if f.quantity in ("modifier", "camera_filter") and not _is_gone(f, text)}
    return [f for f in facts if not (f.quantity in ("modifier", "camera_filter") and f.unit in gone - here)]


def _is_gone(fact: Fact, text: str) -> bool:
    """"no umbrella", "I don't use the umbrella", "the umbrella is off now"."""
    return _ABSENT.search(text[: fact.start]) is not None or _GONE.match(text[fact.end :]) is not None or _FITTING.match(text, fact.end) is not None


_FITTING = Pattern(r"[ -](?:brackets?|holders?|stands?|adapters?|adaptors?|swivels?|clamps?|mounts?|bags?|cases?)\b", re.I)
"""What a thing is held by or carried in: a flash "in an umbrella bracket" has no umbrella yet."""


def _taken_off(facts: list[Fact], text: str) -> list[Fact]:
    """"the three-stop ND is in the bag": told and not in the light, where no value is told that it was on for."""
    if _WITH_IT_ON.search(text):
        return facts
    by_guide = any(f.quantity == "guide_number" for f in facts)
    gone = [f for f in facts if f.quantity == "nd" and (m := _GONE.match(text[f.end :])) and (by_guide or not m.group().endswith(("off", "removed")))]
    return [replace(f, quantity="remark", unit="", of="", cue="") if f in gone else f for f in facts]


def _converter(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"a 1.4x converter": it costs a stop, unless the text says what it costs."""
    named = (_CONVERTER.match(text[fact.end :]) or fact.quantity == "times" and _CONVERTER_BEFORE.search(text[: fact.start]))
    if not named or not 1 < fact.value <= 4 or patterns.search(r"\bbetween\b", text, re.I):
        return fact
    glass = _CONVERTER.match(text[fact.end :])
    if glass is not None and _GONE.match(text[fact.end + glass.end() :]) and not _WITH_IT_ON.search(text):
        return replace(fact, quantity="remark", unit="", of="", cue="")
    later = [f for f in facts if f.start > fact.start and f.quantity in ("stops", "loss", "filter_loss") and f.value]
    if later and _COST_TOLD.search(text[fact.end : later[0].start]) and not patterns.search(r"[?!;]|\.\s|\bnd\b", text[fact.end : later[0].start], re.I):
        return fact
    return replace(fact, quantity="filter_loss", value=abs(aperture_difference_stops(1.0, fact.value)), unit="converter", of="camera", cue="passed")


def _bare_stops(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"a three stop ND and a polariser of one and a half": stops again, left unsaid."""
    if fact.quantity != "number" or fact.bad or not 0 < fact.value <= 5 or not any(f.quantity in ("stops", "loss", "filter_loss", "nd") for f in facts):
        return fact
    taker = next((f for f in reversed(facts) if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE" and f.end <= fact.start and _OF_STOPS.match(text[f.end : fact.start])), None)
    if taker is None or not patterns.match(r"\s*(?:$|[.,;?!]|and\b)", text[fact.end :], re.I):
        return fact
    glass = taker.quantity == "camera_filter"
    return replace(fact, quantity="filter_loss" if glass else "loss", unit=taker.unit, of=taker.of)


# --- what is asked ---------------------------------------------------------------------------------

_ALL = Pattern(r"\b(?:total|together|altogether|in all|combined|all told|in total|sum)\b[^.?!]*\?|\bwhat(?:'?s| is| are| will be)? (?:the|my|our) (?:total|sum|whole|combined|entire|overall)\b|\b(?:total|together|altogether|combined|in all|all told|all up)\W*$", re.I)
_TAKEN_BY_ALL = Pattern(
    r"\b(?:what|how much)(?:'s| is| are| do| does| did| will| would)?\b[^?.!]*?\b(?:two|three|four|both|pair|lot|all|they|them|together)\b[^?.!]*?\b(?:cost|take|lose|losing|lost|loss|rob|eat|swallow|steal|come to|amount to|add up to|make)\b"
    r"|\b(?:what|how much)\b[^?.!]*?\b(?:lose|losing|loss|cost|lost)\b[^?.!]*?\b(?:both|all|pair|together|(?:the|of) (?:two|three|four|pair|lot))\b|\bwhat (?:do|does|will|would)\b[^?!]*\b(?:come|amount|add up) to\b", re.I)
"""What several things in the light take, each told as a clause of its own: "what do the two of them cost me?"."""
_ONE_READING = frozenset({"aperture", "loss", "filter_loss", "nd", "factor", "modifier", "camera_filter", "rows", "film_speed", "remark", "format", "size"})
_WHAT_NOW = Pattern(r"\b(?:what(?:'?s|'?re|'?ll|'?d)?|where(?:'?s|'?ll|'?d)?|which|wot|wat)\b(?! (?:a |an )?(?:shame|pity|mess|day|nuisance)\b)", re.I)
_SOMETHING_ELSE = Pattern(r"\bhow (?:many|much|far|long|close|strong)\b|\b(?:time|shutter|power|distance|(?:what|which) (?:filter )?factor|density|speed|rating|difference|cost|costing|happens|brighter|darker|better|colou?r|right|correct|mean|called|for|why)\b|\bstops? (?:is|are|do|does|down|under|lost|over)\b|\bin stops\b", re.I)
_HOW_MANY_IN_ALL = Pattern(r"\bhow many (?:is that |does that make |do i lose |am i losing )?(?:altogether|in all|all told|in total|together|between them|all up|gone|lost)\b", re.I)
_METER_SAID = Pattern(r"\bwhat (?:did|does|would|will|should|must|had) (?:the|my|a) (?:light |flash |hand )?meter (?:say|said|read|show|shown|have (?:said|read|shown))\b", re.I)
_SET = Pattern(r"\b(?:where|what|how) (?:do|should|must|shall) i (?:set|open|put|use)\b|\bset (?:it |the lens )?(?:to |at )?what\b|\bwhat (?:with|through|behind) (?:(?:it|them|both|this|that|all (?:of it|of them|that|this|three|two)|the (?:lot|whole lot)|(?:(?:the|my|all|two|three|four|both) )?(?:\w+ )?\w+)(?: on| up| in| in place)?)?\W*$|\bwhat(?:'?s| is| does| will| would)? (?:it|the meter|she|that) (?:then |now )?(?:read|meter|show|give|be)s? (?:at )?(?:through|with|behind|under)\b", re.I)
_WHAT_FACTOR = Pattern(r"\b(?:what|which)(?:'s| is| has)?(?: the| a)? (?:filter |exposure )?factor\b", re.I)
_TIME = Pattern(r"\b(?:becomes?|turns into|goes to|is now|gives|makes) what\b|\bwhat (?:does|will) (?:it|that|\d[\d/]*) (?:become|turn into|go to)\b|\b(?:what|which)(?:'s| is)?(?: the| new| my)* (?:shutter|time|exposure time|speed)\b|\bhow long\b|\b(?:now|with(?: it)?(?: on)?|without(?: it| the \w+)?|then)\W*\?\W*$", re.I)


_IN_STOPS = Pattern(r"\b(?:what|how|which)\b[^.?!]*\bstops?\b|\bin stops\b", re.I)


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The total of losses, the aperture to set and the time to give, in few words."""
    kinds = {f.quantity for f in facts}
    takes = [] if kinds & {"guide_number", "distance"} else [f for f in facts if f.quantity in TAKES_LIGHT and f.value]
    if not takes:
        return list(asks)
    if kinds & {"shutter", "duration"} and "aperture" not in kinds and all(a.quantity in ("shutter", "duration", "time") for a in asks) and _TIME.search(text):
        return [Ask("shutter", "through", "s")]
    if kinds == {"nd"} and all(a.quantity == "nd" for a in asks) and _WHAT_FACTOR.search(text):
        return [Ask("factor", "", "x")]
    if kinds == {"nd"} and asks and all(a.quantity == "nd" for a in asks) and _IN_STOPS.search(text):
        return [Ask("stops", "", "")]
    if [a.quantity for a in asks] == ["count"] and not kinds & {"aperture", "shutter", "count", "power"} and _HOW_MANY_IN_ALL.search(text):
        return [Ask("stops", "", "")]
    if not asks and "aperture" in kinds and _SET.search(text):
        return [Ask("aperture", "", "")]
    if not asks and [f.quantity for f in facts].count("aperture") == 1 and kinds <= _ONE_READING and _WHAT_NOW.search(text) and not _SOMETHING_ELSE.search(text):
        return [Ask("aperture", "", "")]
    if not asks and [f.quantity for f in facts].count("aperture") == 1 and kinds <= _ONE_READING and _METER_SAID.search(text):
        return [Ask("aperture", "", "")]
    if not asks and takes and not kinds & {"aperture", "shutter"} and (_ALL.search(text) or len(takes) > 1 and _TAKEN_BY_ALL.search(text) or len(takes) > 1 and loss_lists.SUMMED.search(text.lower())):
        return [Ask("factor" if all(f.quantity == "factor" for f in takes) else "stops", "", "")]
    return list(asks)
