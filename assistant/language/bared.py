"""What stands before the light in the case told, and not in the one asked: "the dome costs a stop; what aperture without it"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_QUESTION = Pattern(r"\b(?:what|which|where|how|give me|tell me|aperture|f-?stop|power|distance|stop)\b", re.I)
_BARE = Pattern(r"\b(?:bare(?:[- ](?:head|flash|bulb|gun))?|naked|without (?:it|that|anything|any of (?:it|them|that))|with (?:it|that) (?:off|gone|away)|nothing (?:on|in front|over it))\b(?! (?:f|i|it|reads?|gave|gives|was|wall|skin|back|shoulder|branch))", re.I)
_OFF_BEFORE = Pattern(r"\b(?:without|no|minus|(?:take|taking|took|pull|pulling|leave|leaving|left|whip|peel|strip|remov\w*|ditch\w*|los(?:e|ing)|drop(?:ping)?|skip(?:ping)?)(?: off| out)?)(?: (?:the|my|that|its|this|a|an))?(?: [a-z]+)? ?$", re.I)
_OFF_AFTER = Pattern(r" (?:is |comes |taken |folded |moved |swung |flipped )?(?:off|removed|gone|away|out of the way|left off)\b(?! (?:the|my|it|a)\b)", re.I)
_OF_THE_GUIDE = Pattern(r"[ ,(]*(?:(?:at|on|with|for|in) (?:(?:iso|asa|ei) ?\d+|\d+ (?:film|iso|asa)|(?:full|half)(?: power| output)?|feet|metres|meters)[ ,(]*){0,3}(?:(?:when|if|with the|as a|for the|is|it's) )?", re.I)
"""From a guide number to the word that it is the bare light's: "58 metres at ISO 100 at full power without it"."""
_WITH_IT_ON = Pattern(r"\b(?:with|through|behind|in|under|inside) (?:the|my|its|a|an|that) [a-z -]{3,24}[^.;?!]*$|\b(?:working|effective) (?:guide number|gn)\b[^.;?!]*$", re.I)
_THROUGH_IT = Pattern(r"\b(?:measured|tested|found|works? out|came out|comes out)\b[^.;?!]*\b(?:with|through|behind|in|under)\b", re.I)
""""guide number 40 m, measured through the dome": then it is not the bare light's."""


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts without the losses of what the question takes off; a guide number is the bare light's."""
    lost = [f for f in facts if f.quantity == "loss"]
    guides = [f for f in facts if f.quantity == "guide_number"]
    if not lost or len(guides) != 1 or any(f.quantity in ("relation", "nd") or f.quantity == "camera_filter" and f.unit != "BARE" for f in facts) or _THROUGH_IT.search(text) or _WITH_IT_ON.search(text[: guides[0].start]):
        return list(facts)
    worn = [f for f in facts if f.quantity == "modifier"]
    told = min(f.start for f in lost)
    off = {f.unit for f in worn if f.start > told and (_is_off_before(f, guides[0], text) or _OFF_AFTER.match(text[f.end :]))}
    bare = _BARE.search(text, max(f.end for f in lost))
    if bare is not None and _OF_THE_GUIDE.fullmatch(text[guides[0].end : bare.start()]):
        bare = None  # "a guide number of 110 feet bare": how it was quoted
    if bare is not None and _asked_there(text, bare.start()) and len({f.unit for f in worn}) <= 1:
        off |= {f.unit for f in (*worn, *lost)}
    gone = [f for f in lost if f.unit in off or len(lost) == 1 and off]
    if not gone or not any(_asked_there(text, f.start) for f in worn if f.unit in off) and bare is None:
        return list(facts)
    return [replace(f, quantity="remark", unit="", of="", cue="") if f in gone else f for f in facts if not (f.quantity == "modifier" and f.unit in off)]


def _is_off_before(thing: Fact, guide: Fact, text: str) -> bool:
    """"what aperture without the dome"; not "guide number 40 m at ISO 100 without the dome", which is how the number was found."""
    start = max(0, thing.start - 40)
    found = _OFF_BEFORE.search(text[start : thing.start])
    return found is not None and not _OF_THE_GUIDE.fullmatch(text[guide.end : start + found.start()])


def _asked_there(text: str, place: int) -> bool:
    """Whether the sentence around a place is the one that asks."""
    start = max(text.rfind(mark, 0, place) for mark in (". ", "; ", "! ", ": ")) + 1
    end = min((at for at in (text.find(mark, place) for mark in (". ", "; ", "! ", "?")) if at >= 0), default=len(text))
    return _QUESTION.search(text[start : end + 1]) is not None
