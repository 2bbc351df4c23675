"""A bracket asked of again in other steps: "in half stops?" after "how many frames from two stops under to two over in whole stops?".

What its stops are, an extent, an end or the step, is told by the words around them, so that the question
is said once more with the new step in it.
"""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.patterns import Pattern

_ALONE = Pattern(r"^\W*(?:(?:and|or|then|so|but|now|what about|how about|what if|make it|say)\b\W*)*(?:in|by|with|of|it's) (?P<size>whole|full|half|halves|third|thirds)(?:[- ](?:of a )?(?:stops?|steps?)(?: steps)?)?(?: (?:instead|then|now|please))?\W*$", re.I)
_STEP = Pattern(
    r"\b(?:in|by|at|of|with) (?:(?:whole|full|single|half|third)[- ](?:of a )?(?:stops?|steps?)(?: steps)?|halves|thirds(?: of a stop)?)\b(?! (?:over|under|either|each|both))"
    r"|\b(?:half a stop|a third(?: of a stop)?|two thirds(?: of a stop)?|(?:a|one) (?:whole |full )?stop) apart\b|\b(?:(?:in|with|by) )?(?:half|third|whole|full|one)[- ]stop (?:steps|intervals|increments)\b", re.I)
_OF_SOME_SIZE = Pattern(r"\b(?:half|halves|thirds?|whole|full)[- ]?(?:stops?|steps?)?\b", re.I)
_SAID = {"w": "whole", "f": "whole", "h": "half", "t": "third"}


def in_other_steps(text: str, talk: Conversation) -> str | None:
    """The question that stands in the steps that this half-sentence tells; None where it tells none, or the question has several."""
    before, last = talk.last_solution, talk.last_query
    if before is None or last is None or before.topic != "bracket" or talk.missing or any(f.origin == "kept" for f in last.facts):
        return None
    said = _ALONE.match(text)
    told = list(_STEP.finditer(last.text)) if said is not None else []
    if said is None or len(told) > 1 or not told and _OF_SOME_SIZE.search(last.text):
        return None
    step = f"in {_SAID[said['size'][0].lower()]} stops"
    if told:
        return f"{last.text[: told[0].start()]}{step}{last.text[told[0].end() :]}"
    return f"{last.text.rstrip(' ?.!')} {step}?"
