"""How many pops, asked again of another distance that is told by the one before: "how many for f/22?", then "and at double the distance?"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.memory.said_again import says_all, standing
from assistant.patterns import Pattern

_AGAIN = Pattern(
    r"^\W*(?:(?:and|but|so|then|now|ok|okay|what|how about|about|if|when|once|with|say)\b\W*)*(?:(?:i|we) (?:move|moved|put|take|took|carry|set|stand|bring|shift) |(?:i'?m|we'?re) )?(?:(?:the |my )?(?:flash|lamp|light|head|strobe|it)(?:'s)? )?(?:(?:is|goes|was|stands|moved|back|away|out|off|to|at|from|only) )*"
    r"(?:double|twice) (?:(?:the|that|its|this) distance|as far)(?: (?:away|off|back|out|from (?:it|him|her|them|the \w+)))?(?:,? (?:still|again|then|now|instead|same aperture|(?:at|for|on) f ?/? ?(?P<mark>\d+(?:\.\d+)?)))*\W*$", re.I)
_LAST_SENTENCE = Pattern(r"(?:^|(?<=[.!?;])\s+)(?P<last>[^.!?;]*(?:\.\d[^.!?;]*)*[.!?]*\s*)$")


def from_further(text: str, talk: Conversation) -> str | None:
    """The question that stands in its own words, with the flash twice as far off; None where the half-sentence tells no such distance."""
    said, last = _AGAIN.match(text), standing(talk)
    if said is None or last is None or last.claim or not last.asks_for("count") or talk.missing or not says_all(last, talk):
        return None
    marks = [f.value for f in last.all("aperture")]
    if len(marks) != 2 or said["mark"] and float(said["mark"]) not in marks[-1:] or len(last.all("distance")) > 1 or last.has("guide_number"):
        return None
    question = _LAST_SENTENCE.search(last.text)
    if question is None:
        return None
    head, tail = last.text[: question.start("last")], last.text[question.start("last") :]
    return f"{head}With the flash at twice the distance, {tail[:1].lower()}{tail[1:]}"
