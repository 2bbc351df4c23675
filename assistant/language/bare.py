"""A bare number and what stands around it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.language.items import Item
from assistant.query import Fact
from assistant.records import record, replace

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


COMMON_FILMS = frozenset({25, 32, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1600, 3200})


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

    @property
    def value(self) -> float:
        """The number as written."""
        return self.fact.value

    @property
    def mark(self) -> float:
        """The number as an f-number: "five six" is 5.6."""
        return self.fact.value if math.isnan(self.fact.other) else self.fact.other

    @property
    def before(self) -> list[Item]:
        """Up to four items before it."""
        return list(self.items[max(0, self.at - 4) : self.at])

    @property
    def after(self) -> list[Item]:
        """Up to three items after it."""
        return list(self.items[self.at + 1 : self.at + 4])

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
