"""The question of one lamp against another asked of another level: "what power for a stop under the key?", then "and level with it?"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.memory.said_again import says_all, standing
from assistant.patterns import Pattern
from assistant.solving.lamp_against_lamp import apart
from assistant.solving.lamp_names import mentions

_FILLING = r"(?:(?:and|or|no|ok|okay|so|then|now|what|how|about|for|if|make|made|it|that|i|we|want|wanted|meant|mean|to|be|is|at|only|just|rather|actually|sorry|say|would|for it to be|to be|bring|put)\b\W*)*"
_SIZE = r"(?:half(?: a)?|a half|a third(?: of a)?|two thirds(?: of a)?|(?:an?|one|two|three|four|five|\d(?:\.\d+)?)(?: and a (?:half|third))?)"
_AGAIN = Pattern(
    rf"^\W*{_FILLING}(?:(?P<size>{_SIZE})(?P<stop>(?: full)? stops?)? (?P<way>over|under|above|below|brighter than|darker than|hotter than|weaker than|more than|less than)|(?P<level>level|even|the same|equal|match(?:ed|ing)?|on a par)(?: (?:with|to|as))?)(?: (?P<than>(?:(?:the|my) )?(?:[a-z]+(?:'s)?(?: light| lamp)?)))?(?: (?:then|now|instead|please|too|reading))*\W*$", re.I)
_NOBODY = frozenset({"", "it", "that", "then", "instead", "now", "the other", "them"})


def at_another_level(text: str, talk: Conversation) -> str | None:
    """The question that stands in its own words, with the level that this half-sentence names; None where it names none."""
    said, last = _AGAIN.match(text), standing(talk)
    if said is None or last is None or last.claim or talk.missing or not says_all(last, talk):
        return None
    old = apart(last.text, last.facts)
    named = mentions(last.text)
    if not old or (old[-1].fact is None and not any(m.start <= old[-1].end + 4 and m.end > old[-1].end for m in named)):
        return None
    than = (said["than"] or "").lower()
    with_whom = next((m for m in named if old[-1].end - 1 <= m.start <= old[-1].end + 5), None)
    lamp = {m.name for m in mentions(than)}
    if than not in _NOBODY and (not lamp or with_whom is None):
        return None
    level = "0 stops over" if said["level"] else f"{said['size']}{said['stop'] or ' stops'} {said['way']}"
    if with_whom is not None and lamp and lamp != {with_whom.name}:  # "two stops under the fill", and it was the key
        return f"{last.text[: old[-1].start]}{level} {than}{last.text[with_whom.end :]}"
    return f"{last.text[: old[-1].start]}{level}{' the' if old[-1].fact is None else ''} {last.text[old[-1].end :].lstrip()}"
