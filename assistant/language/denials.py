"""Values that are named only to be ruled out: "at a quarter, not half", "my flash has no half power".

Such a value is no setting. Beside another of its kind it is let go; a power denied alone leaves the
power open, which the cue `DENIED` on the remark tells whoever looks at the answer.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import DENIED, Fact
from assistant.records import replace

_SMALL_WORDS = r"(?:\s+(?:at|on|to|even|an?|any|have|has|got|do|go|give|offer|be|the|really|want|use|using|set|run|running|as|of))*\s*$"
_NOT = Pattern(
    rf"(?<!why )(?<!if )\b(?:not|no|without|lacks?|never|cannot|(?:has|have|does|do|ca|wo|did|could|would|should)n['’]?t|(?:it|that|this|flash|gun|head|power|we|i) (?:is|are|was|were)n['’]?t|(?:i|it|that|we)['’]?(?:m|s|re) not){_SMALL_WORDS}", re.I)
_SINGLE = frozenset({"power", "distance", "aperture", "film_speed", "shutter"})
"""Settings that have one value: the one denied gives way to the one that is told."""


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts without the settings that the text rules out."""
    denied = [f for f in facts if f.quantity in _SINGLE and not f.bad and _NOT.search(text[max(0, f.start - 40) : f.start])]
    gone = [f for f in denied if f.quantity == "power" or _told_otherwise(f, facts, denied)]
    return [_ruled_out(f) if f in gone else f for f in facts] if gone else list(facts)


def _told_otherwise(fact: Fact, facts: Sequence[Fact], denied: Sequence[Fact]) -> bool:
    """Whether the same thing has one other value, which is not denied."""
    others = [f for f in facts if f.quantity == fact.quantity and f.of == fact.of and f not in denied]
    return len(others) == 1 and others[0].value != fact.value


def _ruled_out(fact: Fact) -> Fact:
    return replace(fact, quantity="remark", of="", unit="", to="", cue=DENIED if fact.quantity == "power" else "")
