"""A question as structure: what is given, what is asked, what was not placed.

Lengths in metres, times in seconds, powers as a fraction of full; the unit that was said
stays beside each value so that the answer can be given in the person's own.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from assistant.records import field, record, replace

BY_RULE = "by_rule"
"""How the years are meant that a rule counts by, "a stop for every ten years": another age of the film leaves them as they were."""


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


TAKES_LIGHT = frozenset({"loss", "filter_loss", "nd", "factor"})
"""The quantities of what takes light on its way: a modifier, a gel, a neutral density, a filter by its factor."""
COUNTED = "counted"
"""The cue of a film speed that the reading beside it has been brought to already."""
DENIED = "denied power"
"""The cue of a remark that was a power and is ruled out: "not half power"."""
OFFERED = "offered"
"""The cue of a remark that was one of two film speeds to choose from."""


class Tally(dict[str, int]):
    """How many facts there are of each quantity; none of one that is not in it."""

    def __missing__(self, quantity: str) -> int:
        return 0


def tally(facts: Iterable[Fact]) -> Tally:
    """How many facts there are of each quantity.

    >>> tally([Fact("aperture", 8.0), Fact("aperture", 11.0)])["aperture"], tally([])["distance"]
    (2, 0)
    """
    counted = Tally()
    for fact in facts:
        counted[fact.quantity] = counted.get(fact.quantity, 0) + 1
    return counted


@record
class Ask:
    """One thing that is wanted, of whom, and in which unit when one was named."""

    quantity: str
    of: str = ""
    unit: str = ""
    start: int = 0


class _Told:
    """The facts that were asked about last, by quantity: every solver asks about the same ones, and most about what is not among them."""

    __slots__ = ("by_quantity", "facts")

    def __init__(self) -> None:
        self.facts: tuple[Fact, ...] = ()
        self.by_quantity: dict[str, list[Fact]] = {}

    def of(self, facts: tuple[Fact, ...]) -> dict[str, list[Fact]]:
        found: dict[str, list[Fact]] = {}
        for fact in facts:
            found.setdefault(fact.quantity, []).append(fact)
        self.facts, self.by_quantity = facts, found
        return found


_told = _Told()


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
    taken_back: tuple[tuple[int, int, float, int], ...] = ()  # those that were put right, each with the place of what was said instead

    def all(self, quantity: str, of: str | None = None) -> list[Fact]:
        """Every fact of a quantity, in the order said; `of` None means anybody's."""
        told = (_told.by_quantity if self.facts is _told.facts else _told.of(self.facts)).get(quantity, ())
        return list(told) if of is None or not told else [f for f in told if f.of == of]

    def first(self, quantity: str, of: str | None = None) -> Fact | None:
        """The first such fact."""
        for fact in (_told.by_quantity if self.facts is _told.facts else _told.of(self.facts)).get(quantity, ()):
            if of is None or fact.of == of:
                return fact
        return None

    def last(self, quantity: str, of: str | None = None) -> Fact | None:
        """The latest such fact: a later value replaces an earlier one."""
        for fact in reversed((_told.by_quantity if self.facts is _told.facts else _told.of(self.facts)).get(quantity, ())):
            if of is None or fact.of == of:
                return fact
        return None

    def has(self, *quantities: str) -> bool:
        """Whether every one of these quantities is known of somebody."""
        told = _told.by_quantity if self.facts is _told.facts else _told.of(self.facts)
        for quantity in quantities:
            if quantity not in told:
                return False
        return True

    def asks_for(self, *quantities: str) -> bool:
        """Whether one of these is asked."""
        for ask in self.asks:
            if ask.quantity in quantities:
                return True
        return False

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
