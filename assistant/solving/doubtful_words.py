"""Signs that an answer says the opposite of what was asked: how much brighter, and darker found; by how much, and no difference."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Query
from assistant.solving.light_wanted import IS_OUT, WISHED
from assistant.solving.solution import Solution
from assistant.solving.to_be_added import asks_to_add
from assistant.units import LENGTH

_BRIGHTER = Pattern(r"\bhow (?:many|much|far)\b[^.?,;]{0,45}?\b(?:over|brighter|stronger|hotter|above|more|gain|open)\b|\b(?:brighter|stronger|hotter)\b[^.?]{0,20}\bhow (?:many|much)\b")
_WHICH_MORE = Pattern(r"\b(?:which|who|what)\b[^.?!]{0,60}\b(?:faster|brighter|stronger|hotter|more (?:\w+ )?(?:light|exposure))\b[^?]*\bby (?:how (?:many|much)|what)\b")
"""The winner is asked, and by how much: plus (the contract names it)."""
_DARKER = Pattern(r"\bhow (?:many|much|far)\b[^.?,;]{0,45}?\b(?:under|darker|dimmer|weaker|below|down|less|lost?|lose|thin|fallen|dropped|sunk|faded)\b")
_TO_RAISE = Pattern(r"\bhow (?:much|many)\b[^?.]{0,24}\b(?:must|should|do|would|have to|need to|to) (?:i |we |you )?(?:raise|add|lift|boost|turn up|bring up|brighten|increase)\b|\bhow (?:much|many)\b[^?]{0,40}\bto (?:bring|lift|raise|pull|get) (?:it|her|him|them|that|the \w+)(?: face)? (?:up|level|equal|to match|even)\b")
_EITHER = Pattern(r"\b(?:over or under|under or over|brighter or darker|darker or brighter|more or less|less or more|up or down|down or up|net)\b|\badds?\b")


_HOW_MANY = Pattern(r"\bhow (?:many stops|much) (?:brighter|darker|more|less|stronger|weaker|hotter|dimmer|under|over|faster|slower)\b|\bby how (?:much|many stops)\b[^.?]{0,24}\b(?:over|under)-?expos")


def no_difference(said: Query, whole: Query, found: Solution) -> bool:
    """Nobody asks by how many stops it is brighter where it is not."""
    first = found.answers[0]
    return first.quantity == "stops" and isinstance(first.value, float) and abs(first.value) < 0.005 and bool(said.asks) and _HOW_MANY.search(said.text.lower()) is not None and _EITHER.search(said.text.lower()) is None


_THAN_AT = Pattern(r"\bhow (?:many stops|much)\b[^.?!]*\d[^.?!]*\bthan\b[^.?!]*\d")
"""Two places held against each other, each with its length."""


def against_the_word(said: Query, whole: Query, found: Solution) -> bool:
    """Asked how much brighter, and found darker; or the other way round."""
    first = found.answers[0]
    if first.quantity != "stops" or not isinstance(first.value, float) or abs(first.value) < 0.05:
        return False
    words = said.text.lower()
    if not said.asks and found.topic == "falloff" and _THAN_AT.search(whole.text.lower()):
        words = whole.text.lower()  # a half-sentence, and which of the two places it tells anew is not plain
    if _EITHER.search(words):
        return False
    if _TO_RAISE.search(words) and first.value < 0:
        return True
    if _WHICH_MORE.search(words) and first.value < 0:
        return True
    brighter, darker = _BRIGHTER.search(words) is not None, _DARKER.search(words) is not None
    return brighter and not darker and first.value < 0 or darker and not brighter and first.value > 0 and not asks_to_add(words)


_ASKED_WITHOUT = Pattern(r"\bwhat\b[^?.!]{0,60}\b(?:before (?:the |my |a |i )?(?:put|hung|\w*umbrella|brolly|\w*box|silk|gel|grid|scrim|dome|diffuser|filter|polari[sz]er|nd|cloth|net)|without (?:it|the|any|a)|bare|(?:is |was )?(?:gone|taken off|removed)|out of (?:the |my )?\w*box)\b[^?.!]{0,30}\?")
"""Asked for what is read with nothing in the light."""
_SET_WITH_IT = Pattern(r"\b(?:set|should i|do i|would i|use|shoot at|open|power|distance|after)\b")


def against_the_taking(said: Query, whole: Query, found: Solution) -> bool:
    """Asked what was read before something hung in the light, and found less than was read through it."""
    first, read = found.answers[0], [f for f in whole.facts if f.quantity == "aperture" and not f.of]
    words = said.text.lower()
    if first.quantity != "aperture" or len(read) != 1 or not isinstance(first.value, float) or not any(f.quantity in TAKES_LIGHT and f in found.used for f in whole.facts):
        return False
    asked = _ASKED_WITHOUT.search(words)
    return asked is not None and _SET_WITH_IT.search(asked[0]) is None and first.value < read[0].value

_LESS_LIGHT = Pattern(r"\btoo (?:bright|strong|hot|much|dense)\b|\b(?:less|darker|weaker|dimmer|lower|drop\w*|los(?:e|es|t|ing)|under\w*|below|reduce\w*|dim|cut|darken\w*|down|beneath|short|shy)\b")
_MORE_LIGHT = Pattern(r"\btoo (?:dark|weak|dim|little|thin)\b|\b(?:more|brighter|stronger|hotter|lighter|over\w*|above|gain\w*|boost\w*|up|brighten\w*|rais\w+|extra|another|add\w*)\b")

_OF_SOMETHING_ELSE = Pattern(r"\b(?:more than|less than|was|were|before|originally|at first|used to|stood|(?:more|less) (?:flash )?power|than (?:i|we) (?:want|need|like|care)\w*)\b")
"""Asked for where it was, or to make up for another change."""


def moved_against_the_light(said: Query, whole: Query, found: Solution) -> bool:
    """"it's too strong, i want a stop less", and the lamp put closer; or more light wanted, and it goes back."""
    if len(found.answers) < 2 or found.answers[1].of != "move" or found.answers[0].of or not isinstance(found.answers[0].value, float) or "backdrop" in whole.cues or any(f.of in ("backdrop", "back") for f in whole.facts):
        return False
    words, told = said.text.lower(), [f.value for f in found.used if f.quantity == "distance"]
    less, more = _LESS_LIGHT.search(words) is not None, _MORE_LIGHT.search(words) is not None
    out = IS_OUT.search(words)
    if out is not None and " too " not in out[0] and WISHED.search(words[: out.end()]) is None:
        less, more = more, less  # as it is now, which the move is to put right
    there = found.answers[0].value * LENGTH.get(found.answers[0].unit, 1.0)
    return less is not more and len(told) == 1 and _OF_SOMETHING_ELSE.search(words) is None and (there < told[0] * 0.999 if less else there > told[0] * 1.001)


def against_what_was_asked(said: Query, whole: Query, found: Solution) -> bool:
    """Any of these; and where a half-sentence changes what is lost, a gain."""
    first = found.answers[0]
    if not said.asks and "loss" in whole.cues and first.quantity == "stops" and isinstance(first.value, float) and first.value > 0.05 and found.topic in ("conversions", "losses") and not asks_to_add(whole.text.lower()):
        return True
    return no_difference(said, whole, found) or against_the_word(said, whole, found) or against_the_taking(said, whole, found)
