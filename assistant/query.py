"""A question as structure: what is given, what is asked, what was not placed.

Lengths in metres, times in seconds, powers as a fraction of full; the unit that was said
stays beside each value so that the answer can be given in the person's own.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from assistant.records import field, record, replace


@record
class Fact:
    """One thing that is known. `of`: whose (a light, "camera", "front", "ambient", …).

    `cue`: how it was meant ("less", "more", "move", "at_most", …). `to`: what it is
    compared with. `origin`: said, kept (from an earlier turn), kit, assumed.
    """

    quantity: str
    value: float
    unit: str = ""
    of: str = ""
    cue: str = ""
    to: str = ""
    other: float = math.nan
    at_iso: float | None = None
    at_power: float | None = None
    start: int = 0
    end: int = 0
    said: str = ""
    bad: str = ""
    estimate: bool = False
    origin: str = "said"
    sentence: int = 0


@record
class Ask:
    """One thing that is wanted, of whom, and in which unit when one was named."""

    quantity: str
    of: str = ""
    unit: str = ""
    start: int = 0


@record
class Query:
    """A question read. `cues` are the words that say what it is about."""

    text: str
    facts: tuple[Fact, ...] = ()
    asks: tuple[Ask, ...] = ()
    cues: frozenset[str] = frozenset()
    claim: bool = False
    unknown: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()
    read_as: tuple[tuple[str, str], ...] = ()
    known_words: int = 0
    units: tuple[str, ...] = ()
    items: tuple[object, ...] = field(default=(), repr=False)
    names: tuple[str, ...] = ()
    mentioned: tuple[str, ...] = ()
    cut: bool = False  # longer than what is read of a text
    figures: tuple[tuple[int, int, float], ...] = ()  # numbers written in figures: where they stand, and their values

    def all(self, quantity: str, of: str | None = None) -> list[Fact]:
        """Every fact of a quantity, in the order said; `of` None means anybody's."""
        return [f for f in self.facts if f.quantity == quantity and (of is None or f.of == of)]

    def first(self, quantity: str, of: str | None = None) -> Fact | None:
        """The first such fact."""
        return next(iter(self.all(quantity, of)), None)

    def last(self, quantity: str, of: str | None = None) -> Fact | None:
        """The latest such fact: a later value replaces an earlier one."""
        found = self.all(quantity, of)
        return found[-1] if found else None

    def has(self, *quantities: str) -> bool:
        """Whether every one of these quantities is known of somebody."""
        return {f.quantity for f in self.facts}.issuperset(quantities)

    def asks_for(self, *quantities: str) -> bool:
        """Whether one of these is asked."""
        return any(a.quantity in quantities for a in self.asks)

    def with_facts(self, facts: Iterable[Fact]) -> Query:
        """The same question about other facts."""
        return replace(self, facts=tuple(facts))

    def owners(self) -> Iterator[str]:
        """Everybody who has a fact, in order of mention."""
        seen: list[str] = []
        for fact in self.facts:
            if fact.of not in seen:
                seen.append(fact.of)
                yield fact.of
