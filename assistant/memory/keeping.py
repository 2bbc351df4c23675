"""Keeping: the kit and the shot log of a conversation, read from the store and written to it.

The store is opened only when its file is there or something must be written, so that a single
question does not wait for a database. Trouble is gathered as sentences, never raised.
"""

from __future__ import annotations

import json
import math
import os
import time
from collections.abc import Iterable

from assistant.memory.kit import Kit
from assistant.memory.places import FILE_NAME
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from assistant.memory.shotlog import Shot, ShotLog
    from assistant.memory.store import Frame, KitFact, Store

NAME = "name"
CAMERA_OWNER = "camera and film"
"""Whose a fact is that belongs to no light, as it stands in the file."""

PLAIN_OWNERS = frozenset({"key", "fill", "hair", "rim", "kicker", "accent", "background", "left", "right", "a", "b", "c", "big", "small"})
"""Lights that the language knows without a name: of these the kit keeps no name."""

LONGEST_LOG = 2000
_LENGTHS = frozenset({"max_distance", "min_distance", "distance", "focus_distance", "camera_distance", "path", "focal_length"})
_PLAIN = {f: getattr(Fact("", 0.0), f) for f in ("cue", "to", "at_iso", "at_power", "estimate")}


class Keeper:
    """The store of one person, opened when it is needed; home None keeps nothing."""

    __slots__ = ("_home", "_store", "_known", "_troubles")

    def __init__(self, home: str | os.PathLike[str] | None) -> None:
        self._home = home
        self._store: Store | None = None
        self._known: dict[tuple[str, str], KitFact] = {}
        self._troubles: list[str] = []

    def load_kit(self) -> Kit:
        """The kit as it was kept; an empty one where there is none."""
        store = self._opened() if self._has_file() else None
        if store is None:
            return Kit()
        kept = store.load_kit()
        self._hear(store)
        self._known = {(fact.owner, fact.quantity): fact for fact in kept}
        return kit_of(kept)

    def save_kit(self, kit: Kit) -> None:
        """Keep the kit; it is on the disk once this returns, unless `troubles` says otherwise."""
        store = self._opened()
        if store is None:
            return
        rows = [self._unchanged(row) for row in rows_now(kit)]
        self._tell(store.save_kit(rows))
        self._known = {(row.owner, row.quantity): row for row in rows}

    def load_log(self) -> ShotLog:
        """The latest frames of the log."""
        from assistant.memory.shotlog import ShotLog

        store = self._opened() if self._has_file() or self._store else None
        if store is None:
            return ShotLog()
        shots = [shot_of(frame) for frame in store.frames(LONGEST_LOG)]
        self._hear(store)
        return ShotLog(tuple(shots))

    def save_log(self, before: ShotLog, after: ShotLog) -> ShotLog:
        """Keep what was logged, changed or struck out; the log with the numbers of the store."""
        store = self._opened()
        if store is None:
            return after
        told = [s for s in after.shots if s not in before.shots]
        struck = [s for s in before.shots if s.id and not any(s.id == a.id for a in after.shots)]
        troubles = [store.drop_frame(s.id) for s in struck] + [store.note_frame(frame_of(s, _iso(_now_us()))) for s in told]
        for trouble in troubles:
            self._tell(trouble)
        return after if any(troubles) else replace(self.load_log(), begun=after.begun)

    def troubles(self) -> tuple[str, ...]:
        """What went wrong with keeping since the last call, one sentence each."""
        found, self._troubles = tuple(dict.fromkeys(self._troubles)), []
        return found

    def close(self) -> None:
        """Let go of the store."""
        if self._store is not None:
            self._store.close()

    def _has_file(self) -> bool:
        if self._home is None:
            return False
        try:
            os.stat(os.path.join(self._home, FILE_NAME))
        except (FileNotFoundError, NotADirectoryError):
            return False
        except (OSError, ValueError):  # not even to be looked at: opening will say why
            return True
        return True

    def _opened(self) -> Store | None:
        if self._store is None and self._home is not None:
            from pathlib import Path

            from assistant.memory.store import Store

            self._store = Store.open(Path(self._home))
            self._hear(self._store)
        return self._store

    def _unchanged(self, row: KitFact) -> KitFact:
        """The row as it is kept already when only the time differs: it was not said anew."""
        known = self._known.get((row.owner, row.quantity))
        return known if known and (known.value, known.said) == (row.value, row.said) else row

    def _hear(self, store: Store) -> None:
        self._tell(store.trouble)
        store.trouble = None

    def _tell(self, trouble: str | None) -> None:
        if trouble:
            self._troubles.append(trouble)


# --- facts as rows, and back ----------------------------------------------------------------------


def rows_of(kit: Kit, now_us: int) -> list[KitFact]:
    """The kit as the store and a file have it; `now_us`: microseconds since 1970, one later for each row, which keeps the order."""
    from assistant.memory.store import KitFact

    named = [KitFact(name, NAME, json.dumps(name), "", _iso(now_us + n)) for n, name in enumerate(kit.names)]
    facts = [KitFact(f.of or CAMERA_OWNER, f.quantity, json.dumps(value_of(f), ensure_ascii=False), f.said, _iso(now_us + len(named) + n))
             for n, f in enumerate(kit.facts) if math.isfinite(f.value)]
    return named + facts


def rows_now(kit: Kit) -> list[KitFact]:
    """The kit as a file has it, told just now."""
    return rows_of(kit, _now_us())


def kit_of(rows: Iterable[KitFact]) -> Kit:
    """The kit in these rows, in the order it was told. A row that makes no fact is left out."""
    ordered = sorted(rows, key=lambda row: row.when)
    names = tuple(row.owner for row in ordered if row.quantity == NAME)
    facts = (fact_of("" if row.owner == CAMERA_OWNER else row.owner, row.quantity, json.loads(row.value), row.said) for row in ordered if row.quantity != NAME)
    found = tuple(replace(f, origin="kit") for f in facts if f is not None)
    owners = dict.fromkeys((*names, *(f.of for f in found if f.of and f.of not in PLAIN_OWNERS)))
    return Kit(found, tuple(owners))


def value_of(fact: Fact) -> dict[str, Any]:
    """A fact's value as JSON: the number in the unit that was said, and what else is not plain.

    >>> value_of(Fact("max_distance", 3.048, "ft", cue="at_most"))
    {'number': 10.0, 'unit': 'ft', 'cue': 'at_most'}
    """
    per = LENGTH[fact.unit] if fact.quantity in _LENGTHS and fact.unit in LENGTH else 1.0
    found: dict[str, Any] = {"number": float(f"{fact.value / per:.14g}")}
    if fact.unit:
        found["unit"] = fact.unit
    if math.isfinite(fact.other):
        found["second_number"] = fact.other
    return found | {key: getattr(fact, key) for key, plain in _PLAIN.items() if getattr(fact, key) != plain}


def fact_of(owner: str, quantity: str, value: object, said: str) -> Fact | None:
    """The fact of such a value, or of a number alone; None for anything else.

    >>> fact_of("", "film_speed", 400, "").value
    400.0
    """
    given = value if isinstance(value, dict) else {"number": value}
    number, other = _number(given.get("number")), _number(given.get("second_number"))
    if number is None or (number <= 0 and quantity not in ("loss", "push", "count", "preferred_unit", "ring", "modifier")):
        return None
    unit = _word(given.get("unit"))
    per = LENGTH[unit] if quantity in _LENGTHS and unit in LENGTH else 1.0
    return Fact(quantity, number * per, unit, owner, _word(given.get("cue")), _word(given.get("to")), math.nan if other is None else other,
                _number(given.get("at_iso")), _number(given.get("at_power")), said=said, estimate=given.get("estimate") is True)


def _number(value: object) -> float | None:
    """A finite number, else None. A whole number too large for a float is none either."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None
    try:
        return float(value) if math.isfinite(value) else None
    except OverflowError:
        return None


def _word(value: object) -> str:
    return value if isinstance(value, str) else ""


def frame_of(shot: Shot, when: str) -> Frame:
    """A shot as the store has it."""
    from assistant.memory.store import Frame

    facts = [{"quantity": f.quantity, **({"of": f.of} if f.of else {}), **value_of(f)} for f in shot.facts if math.isfinite(f.value)]
    return Frame(shot.id, when, shot.roll, shot.note, json.dumps({"frame": shot.frame, "facts": facts}, ensure_ascii=False))


def shot_of(frame: Frame) -> Shot:
    """A shot from what the store has; facts that make no sense are left out."""
    from assistant.memory.shotlog import FIRST_ROLL, Shot

    kept = json.loads(frame.facts)
    kept = kept if isinstance(kept, dict) else {}
    rows = [row for row in kept.get("facts") or () if isinstance(row, dict)] if isinstance(kept.get("facts"), list) else []
    facts = (fact_of(_word(row.get("of")), _word(row.get("quantity")), row, "") for row in rows)
    number = kept.get("frame")
    return Shot(number if isinstance(number, int) else frame.id, frame.roll or FIRST_ROLL, frame.text, tuple(f for f in facts if f), frame.id)


def _iso(us: int) -> str:
    """A time in the ISO 8601 form, local, to the microsecond."""
    return f"{time.strftime('%Y-%m-%dT%H:%M:%S', time.localtime(us // 1_000_000))}.{us % 1_000_000:06d}"


def _now_us() -> int:
    return time.time_ns() // 1000
