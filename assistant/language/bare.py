"""A bare number and what stands around it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import record, replace

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


COMMON_FILMS = frozenset({25, 32, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1600, 3200})


UNIT_NEXT = Pattern(
    r"\s*-?(?:of an? |more |further |full |f-)?(?:feet|foot|ft|m\b|met(?:re|er)s?\b|cm|mm|inch\w*|stops?\b|ev\b|pops?\b|flash|frames?\b|rolls?\b|people|times\b|x\b|%|iso|asa|din\b|degrees?\b|hz|sec|s\b|minutes?\b|years?\b|o'clock|volts?\b|v\b|ws\b|w/s|joules?\b|j\b|watt|kg\b)", re.I)
"""Right after a number: what it counts or measures, so that it is no f-number and no film."""
CLAUSE_ENDS = Pattern(r"\s*(?:$|[,;:?!)]|\.(?!\d)|(?:and|so|but|then|what|how)\b)", re.I)
"""Right after a number: nothing that belongs to it."""


@record
class Bare:
    """A bare number and what stands around it: four items before it, three after; kinds and names said anywhere."""

    fact: Fact
    items: Sequence[Item]
    at: int
    names: set[str]
    facts: Sequence[Fact]
    kinds: frozenset[str]
    text: str
    value: float  # as written
    mark: float  # as an f-number: "five six" is 5.6
    before: Sequence[Item]
    after: Sequence[Item]

    @property
    def cues(self) -> set[str]:
        """The cues before it."""
        return {i.word for i in self.before if i.kind == "cue"}

    @property
    def reads(self) -> bool:
        """Whether a meter or a verb stands right before it."""
        return any(i.kind == "link" or (i.kind in ("cue", "name") and i.word == "meter") for i in self.before[-2:])

    def of(self, quantity: str, **more: Any) -> Fact:
        """The number as that quantity."""
        return replace(self.fact, quantity=quantity, **more)
