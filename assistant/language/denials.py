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

_SMALL = frozenset("at on to even a an any have has got do go give offer be the really want use using set run running as of".split())
_SMALL_WORDS = rf"(?:\s+(?:{'|'.join(sorted(_SMALL))}))*\s*$"
_NOT = Pattern(
    rf"\b(?<!why )(?<!if )(?:not|no|without|lacks?|never|cannot|(?:has|have|does|do|ca|wo|did|could|would|should)n['’]?t|(?:it|that|this|flash|gun|head|power|we|i) (?:is|are|was|were)n['’]?t|(?:i|it|that|we)['’]?(?:m|s|re) not){_SMALL_WORDS}", re.I)
_NO_END = ("not", "no", "out", "lack", "lacks", "never", "nt", "n't", "n’t")
"""What the last word before the small ones ends with, where anything is denied."""
_SINGLE = frozenset({"power", "distance", "aperture", "film_speed", "shutter"})
"""Settings that have one value: the one denied gives way to the one that is told."""


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts without the settings that the text rules out."""
    denied = [f for f in facts if f.quantity in _SINGLE and not f.bad and _is_denied(text[max(0, f.start - 40) : f.start])]
    if not denied:
        return facts
    out = frozenset(denied)
    rest = [f for f in facts if f not in out]
    gone = frozenset(f for f in denied if f.quantity == "power" or _told_otherwise(f, rest))
    return [_ruled_out(f) if f in gone else f for f in facts] if gone else facts


def _is_denied(before: str) -> bool:
    words = before.lower().split()
    while words and words[-1] in _SMALL:
        words.pop()
    return bool(words) and words[-1].endswith(_NO_END) and _NOT.search(before) is not None


def _told_otherwise(fact: Fact, rest: Sequence[Fact]) -> bool:
    """Whether the same thing has one other value among what is not denied."""
    others = [f for f in rest if f.quantity == fact.quantity and f.of == fact.of]
    return len(others) == 1 and others[0].value != fact.value


def _ruled_out(fact: Fact) -> Fact:
    return replace(fact, quantity="remark", of="", unit="", to="", cue=DENIED if fact.quantity == "power" else "")
