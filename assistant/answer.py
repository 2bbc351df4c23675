"""An answer: what is told to people and to other programs (the JSON of the contract)."""

from __future__ import annotations

import math

from assistant.records import record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

Scalar = float | bool | str


@record
class Quantity:
    """One quantity of an answer: exact `value`, and `set`, the mark nearest to it."""

    quantity: str
    value: Scalar
    unit: str = ""
    of: str | None = None
    set: str | None = None
    error_stops: float | None = None
    at_iso: float | None = None
    at_power: float | None = None

    def as_json(self) -> dict[str, Any]:
        """The keys of the contract; what is unknown is left out, `of` is always there."""
        found: dict[str, Any] = {"quantity": self.quantity, "value": _plain(self.value), "unit": self.unit, "of": self.of}
        for key in ("set", "error_stops", "at_iso", "at_power"):
            value = getattr(self, key)
            if value is not None:
                found[key] = _plain(value)
        return found


def _plain(value: Scalar) -> Scalar:
    if isinstance(value, float) and not math.isfinite(value):
        return "infinity" if value > 0 else "-infinity"
    return value


@record
class Assumed:
    """Something that was not said and had to be taken."""

    quantity: str
    value: Scalar
    unit: str
    why: str


@record
class Told:
    """A caution as it is told: topic, text, source."""

    topic: str
    text: str
    source: str


@record
class Answer:
    """One whole answer; `status` as the contract lists them."""

    heard: str
    status: str
    reply: str
    answers: tuple[Quantity, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    missing: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()
    alternatives: tuple[tuple[Quantity, ...], ...] = ()
    cautions: tuple[Told, ...] = ()
    working: tuple[str, ...] = ()
    table: tuple[tuple[str, ...], ...] = ()

    @property
    def good(self) -> bool:
        """Whether the question was answered or what was told was noted."""
        return self.status in ("answered", "noted")

    def as_json(self) -> str:
        """One object on one line."""
        import json

        body: dict[str, Any] = {
            "heard": self.heard,
            "status": self.status,
            "answers": [q.as_json() for q in self.answers],
            "assumed": [{"quantity": a.quantity, "value": _plain(a.value), "unit": a.unit, "why": a.why} for a in self.assumed],
            "missing": list(self.missing),
            "unplaced": list(self.unplaced),
            "alternatives": [[q.as_json() for q in way] for way in self.alternatives],
            "cautions": [{"topic": c.topic, "text": c.text, "source": c.source} for c in self.cautions],
            "working": list(self.working),
            "reply": self.reply,
        }
        if self.table:
            body["table"] = {"columns": list(self.table[0]), "rows": [list(row) for row in self.table[1:]]}
        return json.dumps(body, ensure_ascii=True, allow_nan=False)
