"""Why a value is told anew, said before it: "need more light, so half power", "the lab can only pull. make it one".

Where one part of a half-sentence tells a value that the question said again would take, the parts before it and
after it that tell nothing take no part: their "more", "weaker" or "not" would be taken for a claim or for a change.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.memory.conversation import Conversation
from assistant.memory.said_again import said_again
from assistant.patterns import Pattern
from assistant.query import Query

_PARTS = re.compile(r"(?:\s*[,;:!…]+|\s*\.+(?=\s)|\s+[-–—])\s+|\s+(?=so (?:it's|its|make|let's|i'm|we're|go|use)\b)", re.I)
"""Where one part of a short remark ends; the point of "5.6" is none."""
_FIGURE = Pattern(r"\d|\b(?:half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|quarter|third|full|double|twice|a stop|a minute|a second|an hour)\b", re.I)
_TELLS_NOTHING = frozenset({"correction", "claim", "not", "now", "want", "more", "less", "subject", "self", "wait", "softbox", "my_kit", "at_most", "at_least", "meter", "film", "negative", "battery", "camera", "flash", "what"})
"""Cues of a part that only says why."""
_BY_SO_MUCH = frozenset({"more", "less"})
_TO_IT = Pattern(r"^\W*(?:so|make (?:it|that)|call it|it's|it is|its|let's say|say|go for|use|set it)\b", re.I)
"""By which a value is what it shall be, and not by how much."""
_CHANGES = Pattern(r"\b(?:off|on|without|with|instead|add\w*|remov\w*|swap\w*|chang\w*|loaded|closer|nearer|further|farther|back|away|same|still|both|each|all|keep\w*|rest|as before|bounc\w*|another|also|too)\b", re.I)
"""Words of a part that may tell a change of its own, or what stays."""
_FEWEST = 3
"""Words of a reason: "no" and "sorry, wait" say that something is put right."""
_LONGEST = 160


def without_reasons(text: str, talk: Conversation, reading: Callable[[str], Query]) -> str:
    """The one part of a half-sentence that tells a value anew; all of it where another part may tell something too."""
    if len(text) > _LONGEST or "?" in text or talk.missing:
        return text
    parts = [part for part in _PARTS.split(text.strip(" .!")) if part.strip()]
    telling = [part for part in parts if _FIGURE.search(part)]
    others = [part for part in parts if part not in telling]
    if len(telling) == 1 and others and _so_it_takes(telling[0], others, talk, reading):
        return telling[0]
    if len(telling) != 1 or not others or any(len(part.split()) < _FEWEST or _CHANGES.search(part) for part in others):
        return text
    cues: set[str] = set()
    for part in others:
        read = reading(part)
        if any(f.quantity != "remark" for f in read.facts) or read.asks or read.mentioned or read.units or read.cues - _TELLS_NOTHING:
            return text
        cues |= read.cues
    if cues & _BY_SO_MUCH and not _TO_IT.search(telling[0]):
        return text
    told = reading(telling[0])
    return telling[0] if len(told.facts) == 1 and not told.asks and _takes_a_place(told, talk) else text


_SO = Pattern(r"^\W*(?:so|then|which means|that way|now)\b", re.I)


def _so_it_takes(telling: str, others: list[str], talk: Conversation, reading: Callable[[str], Query]) -> bool:
    """"pull the inner baffle, so the octa only costs one stop": what takes light is told anew, and what came out of it was never counted."""
    told = reading(telling) if _SO.search(telling) else None
    known = {f.unit for f in talk.scene.facts if f.quantity == "loss"}
    if told is None or told.asks or [f.quantity for f in told.facts if f.quantity != "modifier"] != ["loss"] or not {f.unit for f in told.facts} <= known:
        return False
    read = [reading(part) for part in others]
    return not any(r.asks or r.units or any(f.quantity != "modifier" or f.unit in known for f in r.facts) for r in read)


def _takes_a_place(told: Query, talk: Conversation) -> bool:
    """Whether the value is one that the question said again takes, or a bare figure with its "make it"."""
    return said_again(told, talk) is not None or told.facts[0].quantity == "number" and _TO_IT.search(told.text) is not None
