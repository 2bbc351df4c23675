"""The order of time: what is now, told before what was, is put after it.

"It now stands at 10 feet. At 5 feet the rim was fine on 1/8. What power holds it?" is read as if the five feet
had been told first. Only two sentences before one question are turned, and only when the first speaks of a
change and not of the past, and the second of the past and not of a change.
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern

_TWO_AND_ASKED = Pattern(r"(?P<one>[^?!]{8,160}?[.])\s+(?P<two>[^?!]{8,160}?[.])\s+(?P<asked>[^?!]{4,120}\?)\s*")
_SCENE = Pattern(r"[^.?!]{8,120}[.]\s+")
"""A first sentence; with no measure in it, it is neither what was nor what is now: "it is about to rain"."""
_AFTERWARDS = Pattern(r"(?<=\?)\s+[^?]{8,120}$")
"""The same after the question."""
_CHANGED = Pattern(
    r"^(?:now|after)\b|\bnow (?:stands?|sits?|has|is|i|we|add|the|at|in|on)\b|'s now\b|^[a-z ]+: .+\bwill be\b"
    r"|^(?:then |but )?(?:i|we) (?:now |then )?(?:move|draw|pull|push|bring|take|put|add|rack|swap|slide|carry|drop|raise|lower|turn|tape|hang|clip|fit|screw)\b"
    r"|\b(?:has|have|i've had|we've had|had) to (?:go|come|move|be moved|pull|push|draw|bring)\b|^from the camera (?:i|we) add\b"
    r"|^(?:i|we)(?:'d like| want| need)\b|\bi've turned\b|\bone (?:dies|fails)\b",
    re.I,
)
_BEFORE = Pattern(
    r"\b(?:was|were|took|needed|did|metered|tested|came out|looked|before|had been|used to|would need|bare)\b|\b(?:meters|reads|reading|says|gives|gave|read) f/?\d|^(?:f/?\d|\d+ ws\b)[^,]{0,60}$|\b(?:lens|camera)\.$"
    r"|^(?:three|two|four|\d) (?:equal|identical|same)\b|\bone (?:pop|flash|head) is f/?\d",
    re.I,
)
_FILM_THEN_DIGITAL = Pattern(r"^(?:the|my) film\b[^.]{0,40}[^.]*\. .*\bdigital\b", re.I)
_SETS_IN = Pattern(r"^(?:now|then|but|and|after|so|next)\b|\bnow\b|\bafterwards\b|\binstead\b|\bthere\b", re.I)
"""What is no beginning: a sentence that goes on from the one before it."""
_GOES_ON = Pattern(r"^(?:it|that|this|there|both|the same|which|he|she|they)\b(?!.*\bbefore\b)", re.I)
"""It speaks of what was named before it, and stays after that."""
_MEASURE = Pattern(r"\d[\d./]*|\b(?:one|two|three|four|half|quarter|second|both|another)\b", re.I)
_CONDITION = Pattern(r"\b(?:bare|before|had been|used to|daylight|ambient|lens[.])(?:\b|$)", re.I)

_NOW_AND_BEFORE = Pattern(
    r"(?P<one>(?:(?!\. |\b(?:was|were|before|used|want|if)\b)[^?!,;]){1,70}?)(?:\s*[,;]|\s+(?=where\b))\s*(?:(?:and|but|where)\s+)?(?:before(?: that| this| now)?\b|previously\b|formerly\b|earlier\b|(?=(?:it|i|we|(?:the|my) \w+) (?:was|were|had|used to)\b)),?\s*"
    r"(?P<whose>(?:it|i|we|(?:the|my) \w+) (?:was|were|had|used to be|used to stand)\b)?(?P<two>(?:(?!\. )[^?!;]){4,90})\.\s+(?P<asked>[^.?!]{4,120}\?)\s*", re.I)
"""What is now and what was before it, in one sentence: "flash now at 2 m, it was at 4 m when f/8 was right"."""
_NOW = Pattern(r"\b(?:now|today|these days|at present)\b", re.I)


def _was_before_now(text: str) -> str:
    """"flash at 2 m now, previously at 4 m and f/8. What aperture?": what was goes first, in a sentence of its own."""
    found = _NOW_AND_BEFORE.fullmatch(text)
    if found is None or not (_NOW.search(found["one"]) and _MEASURE.search(found["one"]) and _MEASURE.search(found["two"])):
        return text
    return f"{found['whose'] or 'it was'} {found['two'].strip()}. {found['one'].strip()}. {found['asked']}"


def in_order_of_time(text: str) -> str:
    """The text with what was before what is now, where the two are told the other way round.

    A reading alone may have been taken before the change or after it; with the place or the power that it was
    taken at, or said to be bare, it was before.
    """
    if text.count(". ") == 3 and (scene := _SCENE.match(text)) is not None and not _MEASURE.search(scene[0]):
        return scene[0] + in_order_of_time(text[scene.end() :])
    if (after := _AFTERWARDS.search(text)) is not None and not _MEASURE.search(after[0]):
        return in_order_of_time(text[: after.start()]) + after[0]
    if text.count(". ") == 1 and text.endswith("?"):
        return _was_before_now(text)
    if text.count(". ") != 2 or not text.endswith("?"):
        return text
    found = _TWO_AND_ASKED.fullmatch(text)
    if found is None:
        return text
    one, two = found["one"], found["two"]
    turned = _FILM_THEN_DIGITAL.match(f"{one} {two}") or (_tells_of_a_change(one) and _tells_of_the_past(two))
    return f"{two} {one} {found['asked']}" if turned else text


def _tells_of_a_change(said: str) -> bool:
    past = patterns.search(r"\b(?:was|were|(?<!as )before)\b", said, re.I)
    return past is None and _CHANGED.search(said) is not None and _MEASURE.search(said) is not None


def _tells_of_the_past(said: str) -> bool:
    if not _BEFORE.search(said) or _SETS_IN.search(said) or _CHANGED.search(said) or _GOES_ON.search(said):
        return False
    return len(_MEASURE.findall(said)) > 1 or _CONDITION.search(said) is not None
