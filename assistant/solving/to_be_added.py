"""Stops that are to be added: "how many stops of flash must I add?", "how many stops longer must the shutter be open?".

Most topics give the difference of two settings, a lack with its minus. What is to be added, opened or
lengthened is asked for as a size that makes up for it, and counts plus (contract 26).
"""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving.solution import Solution

_MUST = r"(?:must|should|shall|ha(?:ve|s|d) to|needs? to|ought|do|does|would|will|to|can|could)"
_ADDED = Pattern(
    rf"\bhow (?:many|much|far)\b(?:(?!\b(?:under|over|less|darker|weaker|dimmer|lost?|lose|close|closing|gain|between|short)\b)[^.?;,])*?"
    rf"(?:\b{_MUST}\b(?:(?!\b(?:under|over|less|close|lose|stop down)\b)[^.?;,]){{0,40}}?\b(?:add(?:ed)?|open(?: it| the lens)?(?: up)?|slow(?: down)?|lengthen(?:ed)?|raised?|lift(?:ed)?|boost(?:ed)?|turn(?:ed)? (?:it |the \w+ )?up|push(?:ed)?)\b(?! (?:the (?:light|flash|lamp)|it) (?:back|away))"
    rf"|\b(?:of|on) (?:push\w*|pushing|development|extra \w+|more \w+)\b|\blonger\b|\b(?:more|extra|added|additional) (?:flash|light|power|exposure|output|development|time)\b[^.?;,]{{0,30}}\b(?:(?:need|want|take|require)\w*|(?:must|should|shall|ha(?:ve|s|d) to|do|need to) (?:i |we |you )?(?:have to |need to |then )?(?:give|find|supply|put|pump|use)\b)"
    rf"|\b(?:of|in) (?:flash|light|power|exposure|flash power|output|iso|film speed)\b[^.?;,]{{0,30}}\b(?:need|want|lack|require)\w*)")
_WON_BACK = Pattern(r"\bhow (?:many|much)\b[^.?;,]*\b(?:get|gain|win|regain|recover|pick up|save|have)\b[^.?;,]*\b(?:by|if i|if we|when i|from)(?: \w+)? ?(?:tak(?:e|ing)|remov\w+|pull\w*|peel\w*|strip\w*|leav(?:e|ing) (?:off|out)|los(?:e|ing)|dropp?\w*)\b")
"""What comes back when something that takes light goes."""
_FASTER_FILM = Pattern(r"\b(?:how many stops|(?:by )?how much) (?:faster|more sensitive)\b[^.?;]{0,12}\b(?:must|should|does|do|has|have|need|needs|would|is)\b[^.?;]{0,16}\b(?:film|stock|emulsion|roll|iso|material)\b")
_APART = Pattern(r"\b(?:how many stops|how far)\b(?:[^.?;]|\.\d)*\b(?:apart|lies? between|are (?:there )?between|separate)\b")
_DIRECTED = Pattern(r"\b(?:under|over|less|more|darker|weaker|dimmer|lost?|loses?|drops?|falls?|slower|down)\b")
_SIZED = frozenset({"ambient", "conversions", "relations", "film"})
"""Where the distance of two readings, and no loss of light on its way, is asked."""
_EITHER = Pattern(r"\b(?:over or under|under or over|more or less|less or more|up or down|down or up|net|pull(?:ed|ing)?)\b")


def asks_to_add(words: str) -> bool:
    """Whether a question in small letters asks how much is to be added."""
    return _ADDED.search(words) is not None


def as_an_addition(query: Query, found: Solution) -> Solution:
    """The answer with its stops counted as what is to be added, where that is what is asked."""
    if found.status != "answered" or not found.answers or found.topic == "claims":
        return found
    first = found.answers[0]
    if first.quantity != "stops" or not isinstance(first.value, float) or first.value >= -0.005 and not found.lead.startswith("That is over"):
        return found
    words = query.text.lower()
    if found.topic in _SIZED and _APART.search(words) and not _DIRECTED.search(words):
        size = abs(first.value)
        return replace(found, answers=(replace(first, value=size, of=None), *found.answers[1:]), lead=f"{_said(size)} apart ({size:+.2f}).")
    if _FASTER_FILM.search(words) and not query.has("shutter"):
        return replace(found, answers=(replace(first, value=abs(first.value)), *found.answers[1:]), lead=f"{_said(abs(first.value))} faster ({abs(first.value):+.2f}).")
    if found.topic == "losses" and _WON_BACK.search(words):
        return replace(found, answers=(replace(first, value=abs(first.value)), *found.answers[1:]), lead=f"{_said(abs(first.value))} back ({abs(first.value):+.2f}).")
    if _ADDED.search(words) is None or _EITHER.search(words) is not None:
        return found
    size = abs(first.value)
    more: Quantity = replace(first, value=size)
    return replace(found, answers=(more, *found.answers[1:]), lead=f"{_said(size)} to add ({size:+.2f}).")


def _said(size: float) -> str:
    words = speak_stops(size)
    return words[:1].upper() + words[1:]
