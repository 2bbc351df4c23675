"""A solution: what was found, before it is put in words."""

from __future__ import annotations

from assistant.answer import Assumed, Quantity
from assistant.query import Fact
from assistant.records import record, replace
from assistant.solving.ledger import Line


@record
class Solution:
    """What a topic found. `lead` is the first sentence; `notes` are said after it.

    `used` are the facts that bear on the answer; the rest of the facts are reported as
    understood but not needed.
    """

    status: str = "answered"
    lead: str = ""
    answers: tuple[Quantity, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    notes: tuple[str, ...] = ()
    working: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    alternatives: tuple[tuple[Quantity, ...], ...] = ()
    used: tuple[Fact, ...] = ()
    table: tuple[tuple[str, ...], ...] = ()
    topic: str = ""
    lines: tuple[Line, ...] = ()

    def noting(self, *sentences: str) -> Solution:
        """The same with more sentences after it."""
        if not any(sentences):
            return self
        more = tuple([s for s in sentences if s and s not in self.notes])
        return replace(self, notes=self.notes + more) if more else self


def needs(missing: tuple[str, ...], lead: str, used: tuple[Fact, ...] = (), topic: str = "") -> Solution:
    """Something is missing: which quantities, and the question that asks for them."""
    return Solution("needs", lead, missing=missing, used=used, topic=topic)


def rejected(lead: str) -> Solution:
    """A value that cannot be: which and why."""
    return Solution("rejected", lead)
