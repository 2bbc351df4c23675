"""The embedded store: the kit and the shot log, kept between conversations in one SQLite file.

Trouble with the disk is never an exception here. Opening always gives a store, if need be one that
lives in memory only; a write gives back None once it is safely on the disk, else a sentence for the
person. SQLite is imported only when a store is opened, since a question about light may need none.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable
from pathlib import Path

from assistant.memory.opening import (
    SET_ASIDE,
    Hold,
    admit,
    begin_anew,
    copied_to_memory,
    in_memory,
    make_file,
    make_folder,
    may_write,
    why_in_words,
)
from assistant.memory.places import FILE_NAME as FILE_NAME
from assistant.memory.places import cache_folder as cache_folder
from assistant.memory.places import home_folder as home_folder
from assistant.memory.schema import Standing
from assistant.records import record

TYPE_CHECKING = False
if TYPE_CHECKING:
    import sqlite3
    from typing import Any, Self

_NOT_KEPT = "What you tell me is forgotten when you leave: {why}."


@record
class KitFact:
    """One thing known of the gear: whose, what, the value as JSON, the words, and when (ISO 8601)."""

    owner: str
    quantity: str
    value: str
    said: str
    when: str


@record
class Frame:
    """One line of the shot log. The id 0 asks for the next free number; `facts` is JSON."""

    id: int
    when: str
    roll: str
    text: str
    facts: str


class Store:
    """The kit and the log. `trouble` is a sentence for the person, or None when all is well."""

    __slots__ = ("_connection", "_hold", "_path", "_seen", "keeps", "trouble")

    def __init__(
        self,
        connection: sqlite3.Connection,
        trouble: str | None,
        path: Path | None = None,
        hold: Hold | None = None,
    ) -> None:
        connection.text_factory = lambda raw: str(raw, "utf-8", "replace")
        self._connection = connection
        self._path = path
        self._hold = hold
        self._seen: dict[tuple[str, str], KitFact] = {}
        self.keeps = path is not None
        self.trouble = trouble

    @classmethod
    def open(cls, home: Path) -> Store:
        """Open the store in the folder `home`, making both where they are not there yet.

        Never raises because of what is, or is not, on the disk: see `trouble` and `keeps`.
        """
        import sqlite3

        path, trouble = home / FILE_NAME, None
        try:
            make_folder(home)
            hold = Hold(home)
            make_file(path)
            if not (may_write(home) and may_write(path)):
                why = f"{path if may_write(home) else home} cannot be written to"
                return cls(copied_to_memory(path), _NOT_KEPT.format(why=why))
            connection, standing = admit(path)
            if standing in SET_ASIDE:
                hold.take_alone()
                connection, standing, trouble = begin_anew(path)
                hold.share()
        except (sqlite3.Error, OSError, ValueError) as error:
            return cls(in_memory(), _NOT_KEPT.format(why=why_in_words(error, path)))
        if connection is None:
            newer = f"{path} was written by a newer version of this program, and is left as it is"
            why = newer if standing is Standing.FUTURE else f"{path} cannot be used"
            return cls(in_memory(), _NOT_KEPT.format(why=why))
        return cls(connection, trouble, path, hold)

    @classmethod
    def unsaved(cls) -> Store:
        """A store that was asked to keep nothing: in memory only, and no trouble about it."""
        return cls(in_memory(), None)

    def close(self) -> None:
        """Let go of the file. Closing twice does no harm."""
        self._connection.close()
        if self._hold is not None:
            self._hold.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def load_kit(self) -> list[KitFact]:
        """All facts of the kit, by owner and quantity, with what other programs have added.

        A fact that cannot be read is left out, and `trouble` says so.
        """
        rows = self._read("SELECT owner, quantity, value, said, noted FROM kit ORDER BY owner, quantity")
        facts = [KitFact(*row) for row in rows if self._readable(row, row[2])]
        self._seen = {(fact.owner, fact.quantity): fact for fact in facts}
        return facts

    def save_kit(self, facts: Iterable[KitFact]) -> str | None:
        """Make the kit these facts, all or nothing; None once saved, else the reason as a sentence.

        Only what differs from what this store last loaded or saved is written, so that a fact which
        another program has added meanwhile stays.
        """
        wanted = {(fact.owner, fact.quantity): fact for fact in facts}
        changed = [fact for key, fact in wanted.items() if self._seen.get(key) != fact]
        gone = [key for key in self._seen if key not in wanted]

        def replace(connection: sqlite3.Connection) -> None:
            connection.executemany(_DROP_FACT, gone)
            connection.executemany(_PUT_FACT, [_fact_row(fact) for fact in changed])

        trouble = self._write(replace)
        if trouble is None:
            self._seen = wanted
        return trouble

    def put(self, fact: KitFact) -> str | None:
        """Keep one fact, in place of an earlier one of that owner and quantity. None once saved."""
        trouble = self._write(lambda connection: connection.execute(_PUT_FACT, _fact_row(fact)))
        if trouble is None:
            self._seen[fact.owner, fact.quantity] = fact
        return trouble

    def drop(self, owner: str, quantity: str | None = None) -> str | None:
        """Forget one fact of an owner, or all of them. None once done, also where there was none."""
        every = "DELETE FROM kit WHERE owner = ?"
        order, row = (every, (owner,)) if quantity is None else (_DROP_FACT, (owner, quantity))
        trouble = self._write(lambda connection: connection.execute(order, row))
        if trouble is None:
            self._seen = {k: f for k, f in self._seen.items() if k[0] != owner or quantity not in (None, k[1])}
        return trouble

    def note_frame(self, frame: Frame) -> str | None:
        """Add a frame to the log; one with the id of a logged frame corrects that. None once saved."""
        row = (frame.id or None, frame.when, frame.roll, frame.text, frame.facts)
        return self._write(lambda connection: connection.execute(_NOTE_FRAME, row))

    def frames(self, limit: int = 36) -> list[Frame]:
        """The latest `limit` frames of the log, oldest first. One that cannot be read is left out."""
        latest = "SELECT id, noted, roll, text, facts FROM log ORDER BY id DESC LIMIT ?"
        rows = self._read(latest, max(0, min(limit, sys.maxsize)))
        return [Frame(*row) for row in reversed(rows) if self._readable(row[1:], row[4])]

    def drop_frame(self, id: int) -> str | None:
        """Strike a frame out of the log. None once done, else the reason as a sentence."""
        found: list[int] = []

        def strike(connection: sqlite3.Connection) -> None:
            found.append(connection.execute("DELETE FROM log WHERE id = ?", (id,)).rowcount)

        trouble = self._write(strike)
        return f"There is no frame {id} in the log." if trouble is None and found == [0] else trouble

    def _read(self, question: str, *values: object) -> list[Any]:
        import sqlite3

        try:
            return self._connection.execute(question, values).fetchall()
        except sqlite3.Error as error:
            self.trouble = f"What was saved cannot be read now: {why_in_words(error, self._path)}."
            return []

    def _write(self, work: Callable[[sqlite3.Connection], object]) -> str | None:
        import sqlite3

        connection = self._connection
        try:
            # IMMEDIATE: wait for the other program now, instead of failing halfway.
            connection.execute("BEGIN IMMEDIATE")
            work(connection)
            connection.execute("COMMIT")
            return None
        except (sqlite3.Error, ValueError, OverflowError) as error:
            return f"That was not saved: {why_in_words(error, self._path)}."
        finally:
            _undo(connection)

    def _readable(self, texts: Iterable[object], value: object) -> bool:
        whole = all(isinstance(text, str) for text in texts) and is_json(value)
        if not whole:
            self.trouble = f"Something in {self._path} could not be read, and is left out."
        return whole


_PUT_FACT = (
    "INSERT INTO kit (owner, quantity, value, said, noted) VALUES (?, ?, ?, ?, ?)"
    " ON CONFLICT (owner, quantity) DO UPDATE SET value = excluded.value, said = excluded.said,"
    " noted = excluded.noted"
)
_DROP_FACT = "DELETE FROM kit WHERE owner = ? AND quantity = ?"
_NOTE_FRAME = (
    "INSERT INTO log (id, noted, roll, text, facts) VALUES (?, ?, ?, ?, ?)"
    " ON CONFLICT (id) DO UPDATE SET noted = excluded.noted, roll = excluded.roll,"
    " text = excluded.text, facts = excluded.facts"
)


def _fact_row(fact: KitFact) -> tuple[str, ...]:
    return (fact.owner, fact.quantity, fact.value, fact.said, fact.when)


def _undo(connection: sqlite3.Connection) -> None:
    """Take back whatever was not committed; after a full disk SQLite may have done so already."""
    import sqlite3

    try:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
    except sqlite3.Error:  # then the journal is left behind, and the next program to open rolls back
        pass


def is_json(text: object) -> bool:
    """Whether the text is JSON as the standard has it: no NaN, no Infinity."""
    import json

    if not isinstance(text, str):
        return False

    def refuse(word: str) -> None:
        raise ValueError(word)

    try:
        json.loads(text, parse_constant=refuse)
    except (ValueError, RecursionError):
        return False
    return True
