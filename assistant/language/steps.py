"""Steps that settle what facts mean, each passed by where nothing told is of a kind that it can begin with: of all that are known a question needs few."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from assistant.query import Fact

Step = Callable[[list[Fact], str], list[Fact]]
Steps = tuple[tuple[Step, frozenset[str] | None], ...]
"""Each step with the kinds of facts of which it needs one; None: it looks for words of its own."""


class Table:
    """Steps in order: each has a bit, and each kind of fact the bits of the steps that can begin with it."""

    def __init__(self, steps: Iterable[tuple[Step, frozenset[str] | None]]) -> None:
        self.steps: list[Step] = []
        self.always = 0
        self.of_kind: dict[str, int] = {}
        for step, of in steps:
            bit = 1 << len(self.steps)
            self.steps.append(step)
            self.always |= bit if of is None else 0
            for kind in of or ():
                self.of_kind[kind] = self.of_kind.get(kind, 0) | bit


def stepped(facts: list[Fact], text: str, table: Table) -> list[Fact]:
    """The facts after those steps that have one of their kind to begin with.

    >>> last = lambda facts, text: facts[:-1]
    >>> stepped([Fact("power", 0.5), Fact("aperture", 8.0)], "", Table([(last, frozenset({"aperture"})), (last, frozenset({"shutter"}))]))[0].quantity
    'power'
    """
    of_kind, left = table.of_kind, -1  # every bit
    while True:
        begun = table.always
        for fact in facts:
            begun |= of_kind.get(fact.quantity, 0)
        begun &= left
        while begun:
            bit = begun & -begun
            settled = table.steps[bit.bit_length() - 1](facts, text)
            left = -(bit << 1)  # the bits of the steps after it
            if settled is not facts and settled != facts:  # many make the same list once more
                facts = settled
                break
            begun &= left
        else:
            return facts
