"""A question known by its order of words, whose mark is a full stop or lacks: "I moved it to 12 feet. Must I turn the flash up."

A sentence that opens with a question word, or with a verb before its subject, asks, however it ends. It is given
its mark before anything else is read, so that no rule need know both ways; what only tells ("what I set is f/8",
"do the key at f/8") is left as it is.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_OPENING = Pattern(r"(?:^\W{0,8}|[.!?;:]\s+|,\s+)(?:(?:so|and|but|then|now|ok|well|or|also),? ){0,2}(?P<asks>(?:(?:at|on|to|for|from|in|by|with) (?=which |what ))?(?P<first>[A-Za-z']+))(?= )", re.I)
_FIRST = frozenset("what whats what's which how where wheres where's why when any is are was were am does do did will would can could should shall must may might has have isn't aren't wasn't doesn't don't didn't won't wouldn't can't couldn't shouldn't hasn't haven't mustn't".split())
"""What a question opens with."""
_WHOSE = r"(?:the|my|our|his|her|hers|mine|their|your|this|that|these|those|an?|one|each|both|all|either|another|any|every)"
_THING = rf"(?:i|we|he|she|it|they|you|there|everything|everybody|everyone|anything|{_WHOSE}|f ?/ ?\d[\d.]*|1/\d+|\d+[\d.]*|iso|two|three|four|five|six|eight|ten|half|quarter|full|head|flash|daylight|[a-z]+ing)\b"
_DOES = r"(?:give|take|make|cost|lose|leave|add|need|get|let|keep|have|reach|match|put|show|read|come|hold|hit|fall|bring|equal|work|pass|eat|light|cover|change|suffice|do|go|matter|expose|look|burn|stay|receive|see)"
_INVERTED = Pattern(
    rf"(?:(?:is|are|was|were|am|does|did|will|would|can|could|should|must|isn't|aren't|wasn't|doesn't|didn't|won't|wouldn't|can't|couldn't|shouldn't|hasn't|haven't) {_THING}|(?:may|might|shall) (?:i|we|it|the|this|that) "
    rf"|(?:do|don't) (?:(?:i|we|they|you)\b|(?:both|all|these|those|two|three|four|five|six|eight|the|my)\b(?: [\w'/-]+){{0,6}} {_DOES}\b)|has (?:it|he|she|the|my|that|this|anything)\b|have (?:i|we|they|you) (?!to\b)"
    r"|any (?:[a-z]+ ){1,2}(?:needed|required|wanted|called for|left|lost)\W*$)",
    re.I,
)
"""A verb before its subject; "do the key at f/8" is an order."""
_OPENLY = Pattern(
    r"(?:what(?:'s|s)? (?!(?:i|we|he|she|they|you|it|an?|happened|matters)\b)|how (?:many|much|far|long|bright|dark|fast|slow|wide|close|near|big|strong|deep|high|often|do|does|did|can|should|must|would|will|is|are|about|come)\b|(?:at|on|to|for|from|in|by|with) (?:which|what) "
    r"|which (?:(?:aperture|f-?stop|stop|f-?numbers?|apertures|power|powers|shutter|speed|distance|film|lens|flash|head|light|side|row|one|way|of|setting|settings|ring|mark|is right|is it)\b|[a-z]+s (?:[a-z']+ ){0,5}?(?:more|less|most|least|better|best|softer|harder|deeper|brighter|darker)\b)|where(?:'s|s)? (?:is|are|do|does|did|should|must|can|will|would|the|to)\b|why (?:is|are|do|does|did)\b|when (?:do|does|should|must|can|will) (?:i|it|the)\b)",
    re.I,
)
"""A question word that asks; "what I set is f/8" and "which gives me f/8" tell."""
_CASE = Pattern(r"(?:should|were|did) [^?]*, ", re.I)
"""A case put without an "if": "should it rain, I go in"."""
_TOLD_AFTER = Pattern(r"[,;:.] (?:so |and |then |but )?(?:i|we|he|she|it|they|gn|guide|iso|my|the (?:key|fill|flash))\b[^,;:]*$", re.I)
"""A clause after the question that only tells."""
_MARK = Pattern(r"[?!;:,]|\.(?!\d)")
_ENDS = Pattern(r"[.!?](?=\s|$)")
_LIGHT = r"(?:the |my )?(?:key|main|fill|hair|rim|kicker|accent|background|backdrop|back|window|flash)(?: lights?)?"
_NAMED = Pattern(
    rf"(?:^|[.,;:]\s+|\b(?:so|and|now|then) )(?:(?:so|and|now|then) )*(?:{_LIGHT} (?:then |should |must |has |will |ought |now )*(?:to )?(?:reads?|meters?|at|power|pwr|setting|alone is|by itself is)"
    r"|(?:the )?(?:new |camera )?(?:lens|ring|aperture|f-?stop|dial|iris)(?: (?:then|now|goes|is|set|to|on|at|says|reads|on the meter says))*|(?:the )?(?:pops|flashes|frames|battery sets|sets|rolls|rolls per charge|bellows draw|open up by|total|dark enough|bright enough))$", re.I)
"""What is wanted, only named, as the last words: "key f/11, hair light one over. hair light reads."."""
_ELSE = Pattern(r"\b(?:what|which|how|where|note|log|keep|remember|is for|my kit)\b", re.I)


_AND_ASKS = Pattern(r",? and (?:then )?(?=(?:what(?:'s|s)?|how (?:many|much|far|long|close|near)|which|where(?:'s)?) (?!(?:i|we|he|she|they|you)\b))", re.I)
"""Between what is told and what is asked: after a question it would begin a second one."""
_ASKED_BEFORE = Pattern(
    r"\b(?:true|right|yes|correct|fact) or\b|\b(?:what|whats|which|how|where|why|when|whether|tell|give me|show|find|work out|know|ask\w*|want|need|say|see|between|both)\b|\b(?:is|are|does|do|did|will|would|can|could|should|must|am) (?:it|that|this|i|we|they|the|my|there|an?)\b"
    r"|(?:^|[.,;:] )(?:the )?(?:aperture|f-?stop|f-?number|stop|stops|distance|power|shutter|pops|range|reach|factor|ratio|guide number|gn|depth of field|time|near limit|right|true|correct|yes)\W*$", re.I)


def without_and(text: str) -> str:
    """"GN 24 at ISO 64 and what is it at ISO 100?": one question, and the "and" begins no second one."""
    joint = _AND_ASKS.search(text)
    told = text[: joint.start()] if joint is not None else ""
    if joint is None or len(told) < 8 or "?" in told or not any(c.isdigit() for c in told) or _ASKED_BEFORE.search(told[_last_sentence(told) :]):
        return text
    return f"{told}, {text[joint.end() :]}"


def with_its_mark(text: str) -> str:
    """The text with a question mark after each sentence that asks by its order of words.

    >>> with_its_mark("f/8 was fine. I moved it from 3 m to 6 m. Must I turn the flash up.")
    'f/8 was fine. I moved it from 3 m to 6 m. Must I turn the flash up?'
    >>> with_its_mark("GN 40 m, 5 m. What I set was f/8.")
    'GN 40 m, 5 m. What I set was f/8.'
    """
    if text.rstrip().endswith("?"):
        return without_and(text)
    said = text.rstrip(" .!\n")
    start = _last_sentence(said)
    if _asks(said[start:], start > 0 or text.rstrip()[-1:] == ".") or _only_names(said):
        return without_and(said + "?")
    if text.rstrip()[-1:] == "." and not _MARK.search(said):
        return without_and(said)  # one stop at the end of all, which is no more than its end
    return without_and(text)


def _last_sentence(said: str) -> int:
    ends = [e.end() for e in _ENDS.finditer(said)]
    return ends[-1] if ends else 0


def _asks(sentence: str, ended: bool) -> bool:
    """Whether a sentence, or its last clause, opens as a question does; one that runs on with no end of its own, by its verb alone."""
    for opening in _OPENING.finditer(sentence):
        if opening["first"].lower() not in _FIRST:
            continue
        rest = sentence[opening.start("asks") :]
        if ended and _OPENLY.match(rest) or _INVERTED.match(rest) and not _CASE.match(rest):
            return _TOLD_AFTER.search(rest) is None
    return False


def _only_names(said: str) -> bool:
    """Whether the last words only name what is wanted, after figures and with no other question."""
    found = _NAMED.search(said) if any(c.isdigit() for c in said) else None
    return found is not None and found.start() > 8 and _ELSE.search(said) is None
