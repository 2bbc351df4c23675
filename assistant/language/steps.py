"""Steps that settle what facts mean, each passed by where nothing told is of a kind that it can begin with: of all that are known a question needs few."""

from __future__ import annotations

from collections.abc import Callable

from assistant.query import Fact

Step = Callable[[list[Fact], str], list[Fact]]
Steps = tuple[tuple[Step, frozenset[str] | None], ...]
"""Each step with the kinds of facts of which it needs one; None: it looks for words of its own."""


def stepped(facts: list[Fact], text: str, steps: Steps) -> list[Fact]:
    """The facts after those steps that have one of their kind to begin with."""
    kinds = {f.quantity for f in facts}
    for step, of in steps:
        if of is None or not kinds.isdisjoint(of):
            settled = step(facts, text)
            if settled is not facts:
                facts, kinds = settled, {f.quantity for f in settled}
    return facts
