"""The store's file: its tables, how one version becomes the next, and how a file is recognised.

The file says whose it is in two numbers of its own header, which SQLite keeps for this purpose:
`application_id` (whose) and `user_version` (which version).
Source: SQLite documentation, "Database File Format", section 1.3 (from memory).
"""

from __future__ import annotations

from enum import Enum

TYPE_CHECKING = False
if TYPE_CHECKING:
    import sqlite3

APPLICATION_ID = 0x53746F70  # "Stop" in ASCII
CHECKED_BYTES = 8 * 1024 * 1024

# Step n takes a file of version n to version n + 1. Steps are only ever added at the end.
MIGRATIONS: tuple[tuple[str, ...], ...] = (
    (
        (
            "CREATE TABLE kit (owner TEXT NOT NULL, quantity TEXT NOT NULL, value TEXT NOT NULL,"
            " said TEXT NOT NULL, noted TEXT NOT NULL, PRIMARY KEY (owner, quantity)) WITHOUT ROWID"
        ),
        # AUTOINCREMENT: the number of a frame that was struck out is never given to another.
        (
            "CREATE TABLE log (id INTEGER PRIMARY KEY AUTOINCREMENT, noted TEXT NOT NULL,"
            " roll TEXT NOT NULL, text TEXT NOT NULL, facts TEXT NOT NULL)"
        ),
    ),
)

# What the newest version must be able to answer; a file that cannot is not whole.
SHAPE: tuple[str, ...] = (
    "SELECT owner, quantity, value, said, noted FROM kit LIMIT 0",
    "SELECT id, noted, roll, text, facts FROM log LIMIT 0",
)

# A rollback journal and not a write-ahead log: a person writes a few rows an hour, so nothing is
# gained by readers overlapping a writer, while one file can be renamed, copied and backed up whole,
# needs no shared memory (which network folders lack) and can be read in a folder that is read-only.
# EXTRA is FULL plus a sync of the folder once the journal is gone; without it a power cut just after
# the commit could bring the journal back and undo a write that was already acknowledged.
# fullfsync makes macOS empty the drive's own cache too; elsewhere it does nothing.
SETTINGS: tuple[str, ...] = (
    "PRAGMA journal_mode = DELETE",
    "PRAGMA synchronous = EXTRA",
    "PRAGMA fullfsync = ON",
)


class Standing(Enum):
    """What a file turned out to be; the value is the word used when it has to be set aside."""

    NEW = "new"
    OURS = "ours"
    FUTURE = "newer"
    FOREIGN = "foreign"
    DAMAGED = "damaged"


def recognise(connection: sqlite3.Connection) -> Standing:
    """Tell what the open file is, without writing to it.

    Raises sqlite3.Error where it cannot be read at all.

    >>> import sqlite3
    >>> recognise(sqlite3.connect(":memory:"))
    <Standing.NEW: 'new'>
    """
    # One transaction: read apart, the two numbers could come from before and after another
    # program has made the file, and its brand-new store would be taken for a stranger's.
    connection.execute("BEGIN")
    try:
        mark, version = _number(connection, "application_id"), _number(connection, "user_version")
        # Before anything reads the tables: a newer version may use what this SQLite cannot parse.
        if mark == APPLICATION_ID and version > len(MIGRATIONS):
            return Standing.FUTURE
        if mark != APPLICATION_ID:
            blank = mark == version == 0 and not connection.execute("SELECT 1 FROM sqlite_master").fetchone()
            return Standing.NEW if blank else Standing.FOREIGN
        return Standing.OURS if version > 0 and _sound(connection) else Standing.DAMAGED
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")


def settle(connection: sqlite3.Connection) -> None:
    """Make a new or older file of ours the newest version, in one transaction, ready for use.

    Raises sqlite3.Error: the file is then as it was.
    """
    for setting in SETTINGS:
        connection.execute(setting).fetchall()
    if _number(connection, "user_version") < len(MIGRATIONS):
        _migrate(connection)
    for question in SHAPE:
        connection.execute(question).fetchall()


def _migrate(connection: sqlite3.Connection) -> None:
    connection.execute("BEGIN IMMEDIATE")
    try:
        # Read again now that nobody else can write: two programs may have come for the same step.
        for step in MIGRATIONS[_number(connection, "user_version") :]:
            for statement in step:
                connection.execute(statement)
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute(f"PRAGMA user_version = {len(MIGRATIONS)}")
        connection.execute("COMMIT")
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")


def _sound(connection: sqlite3.Connection) -> bool:
    """Check every page of a store of ordinary size; a huge one is not worth the wait at each start."""
    if _number(connection, "page_count") * _number(connection, "page_size") > CHECKED_BYTES:
        return True
    return bool(connection.execute("PRAGMA quick_check(1)").fetchone()[0] == "ok")


def _number(connection: sqlite3.Connection, pragma: str) -> int:
    return int(connection.execute(f"PRAGMA {pragma}").fetchone()[0])
