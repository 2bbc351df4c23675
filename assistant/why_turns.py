""""ok so why not?" after a verdict: the reason behind it."""

from __future__ import annotations

import re

from assistant.answer import Answer
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.turn import Turn

_BARE_WHY = Pattern(
    r"^\W*(?:(?:but|ok|okay|so|and|then|hm+|oh|ah|right|well|er+m?|um+|no|yes|really|interesting|wait|sorry|go on|please)\b[\s,.!?…-]*)*(?:why|how come)(?:'s| is| was)?"
    r"(?: (?:that|it|this|so|not|though|then|exactly|on earth|ever|the case|no|yes|please|does (?:it|that) (?:not|do that)|doesn't it|isn't it|wouldn't it|won't it|can't it))*\W*$", re.I)
"""Nothing but a why."""
_BY_WHAT_IS_TURNED = (
    ("shutter", "why does a slower shutter not change the flash"), ("film_speed", "why does a faster film change the guide number"), ("distance", "why does light fall off with the square of the distance"),
    ("aperture", "why do f-numbers go by 1.4"),
)
"""What a claim has two figures of, and the question that its reason answers."""
_OF_DISTANCE = Pattern(r"\b(?:(?:doubl|halv|tripl)\w+ (?:the|my|its|your) distance|(?:twice|half|three times) (?:as far|as close|as near|the distance))\b", re.I)


def bare_why(text: str) -> bool:
    """Whether nothing but a why is said."""
    return _BARE_WHY.match(text) is not None


def why_so(turn: Turn) -> Answer | None:
    """The reason of the verdict just given, in the words of its claim; None where nothing is known of it."""
    judged = turn.conversation.judged
    if judged is None or not judged.claim or not bare_why(turn.query.text):
        return None
    from assistant.teaching.glossary import explain

    term = explain(f"why {judged.query.text}") or explain(_reason_asked(judged.query))
    return Answer(heard=turn.query.text, status="answered", reply=f"{term.text} ({term.source})") if term else None


def _reason_asked(claim: Query) -> str:
    """The question for the reason of what the claim has two figures of."""
    told = [f.quantity for f in claim.facts]
    return next((asked for quantity, asked in _BY_WHAT_IS_TURNED if told.count(quantity) > 1 or quantity == "distance" and _OF_DISTANCE.search(claim.text)), "")
