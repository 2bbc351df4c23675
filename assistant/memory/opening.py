"""Opening the store's file: made private, recognised, and set aside by name where it cannot be used.

Nothing here overwrites or deletes what it did not make: a damaged or foreign file is renamed, one of
a newer version is left as it is. Everything raises OSError or sqlite3.Error; `why_in_words` turns
these into the reason a person is given.
"""

from __future__ import annotations

import errno
import os
import sys
import time
from contextlib import suppress
from pathlib import Path

from assistant.memory import schema
from assistant.memory.schema import Standing

TYPE_CHECKING = False
if TYPE_CHECKING:
    import sqlite3

PATIENCE_S = 3.0

# SQLite's primary result codes (https://www.sqlite.org/rescode.html, from memory), in words.
_WHY = {
    3: "{path} cannot be written to",
    5: "another program has kept {path} locked for more than 3 seconds",
    6: "another program has kept {path} locked for more than 3 seconds",
    8: "{path} cannot be written to",
    10: "the disk did not read or write {path} as it should",
    11: "{path} is damaged",
    13: "the disk is full",
    14: "{path} cannot be opened",
    18: "it is too long to keep",
    26: "{path} is damaged",
    8 | 4 << 8: "{path} was moved or deleted meanwhile; start the program again",
}
_DAMAGE_CODES = (1, 11, 26)  # not the tables we know; a broken page; not an SQLite file
_WHY_SYSTEM = {
    errno.EACCES: "{path} cannot be written to",
    errno.EPERM: "{path} cannot be written to",
    errno.EROFS: "{path} cannot be written to",
    errno.ENOSPC: "the disk is full",
    errno.ENOTDIR: "a part of {path} is not a folder",
    errno.EISDIR: "{path} is not a file",
    errno.EAGAIN: "{path} cannot be put right while another program has it open",
    errno.EEXIST: "a part of {path} is not a folder",
}
SET_ASIDE = {
    Standing.DAMAGED: "The saved kit and log were damaged and could not be read, so new ones are begun;"
    " the damaged file is kept as {name} in {folder}.",
    Standing.FOREIGN: "The file {file} held something that is not a kit of ours, so a new one is begun;"
    " that file is kept as {name} in {folder}.",
}


def connect(place: Path | str) -> sqlite3.Connection:
    """A connection whose transactions begin and end where this module says, nowhere else."""
    import sqlite3

    return sqlite3.connect(place, timeout=PATIENCE_S, isolation_level=None)


def in_memory() -> sqlite3.Connection:
    """An empty store that is gone with the program."""
    connection = connect(":memory:")
    schema.settle(connection)
    return connection


def admit(path: Path) -> tuple[sqlite3.Connection | None, Standing]:
    """Open the file for use, or say what it is instead. Raises sqlite3.Error when that is not known."""
    import sqlite3

    connection = connect(path)
    try:
        standing = schema.recognise(connection)
        if standing in (Standing.NEW, Standing.OURS):
            schema.settle(connection)
            with suppress(OSError):  # a file lent by somebody else, or a disk that knows no modes
                os.chmod(path, 0o600)
            return connection, standing
    except sqlite3.Error as error:
        connection.close()
        if _code(error) & 0xFF not in _DAMAGE_CODES:
            raise
        return None, Standing.DAMAGED
    connection.close()
    return None, standing


def copied_to_memory(path: Path) -> sqlite3.Connection:
    """What a file that may only be read holds, in memory. Raises sqlite3.Error if it is not ours."""
    connection, memory = connect(path), connect(":memory:")
    try:
        if schema.recognise(connection) is Standing.OURS:
            connection.backup(memory)
    finally:
        connection.close()
    schema.settle(memory)
    return memory


def begin_anew(path: Path) -> tuple[sqlite3.Connection | None, Standing, str | None]:
    """Set the file aside and begin a new one, unless another program has just done so.

    The folder must be held alone. Gives the sentence for the person last.
    """
    connection, standing = admit(path)
    if standing not in SET_ASIDE:
        return connection, standing, None
    name = _set_aside(path, standing.value)
    make_file(path)
    trouble = SET_ASIDE[standing].format(file=path.name, name=name, folder=path.parent)
    return (*admit(path), trouble)


def _set_aside(path: Path, word: str) -> str:
    """Rename the file, and what SQLite keeps beside it, to a name that nothing else has."""
    stamp = time.strftime("%Y%m%d-%H%M")
    number, ending = 1, ""
    while True:
        aside = path.with_name(f"{path.stem}.{word}-{stamp}{ending}{path.suffix}")
        try:
            os.close(os.open(aside, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
            break
        except FileExistsError:
            number += 1
            ending = f"-{number}"
    try:
        # What lies beside goes first: once the file is gone another program may begin a new one in
        # its place, whose journal is not ours to move. Left behind it would be played into that one.
        for tail in ("-journal", "-wal", "-shm"):
            if path.with_name(path.name + tail).exists():
                os.replace(path.with_name(path.name + tail), aside.with_name(aside.name + tail))
        os.replace(path, aside)  # over the empty file just made to hold the name
    except OSError:
        aside.unlink()
        raise
    return aside.name


class Hold:
    """A hold on the folder for as long as a store in it is open, shared with other stores.

    A file must not be renamed while a program has it open: to SQLite a journal belongs to a name, so
    that program would play the new file's journal into the old one, and spoil both. Who wants to set
    a file aside must therefore be alone. The system lets go of the hold when a program ends, however
    it ends. Windows, and network folders without such locks, do without: the first does not rename
    an open file.
    """

    __slots__ = ("_handle",)

    def __init__(self, folder: Path) -> None:
        """Share the folder; raises BlockingIOError when somebody is alone in it for over 3 seconds."""
        self._handle: int | None = None
        with suppress(OSError):
            self._handle = os.open(folder, os.O_RDONLY)
        self.share()

    def share(self) -> None:
        """Let others share the folder with us."""
        self._lock(alone=False)

    def take_alone(self) -> None:
        """Keep others out; raises BlockingIOError when they do not leave within 3 seconds."""
        self._lock(alone=True)

    def close(self) -> None:
        """Let go. Closing twice does no harm."""
        handle, self._handle = self._handle, None
        if handle is not None:
            os.close(handle)

    __del__ = close

    def _lock(self, alone: bool) -> None:
        if sys.platform == "win32" or self._handle is None:
            return
        import fcntl

        kind, deadline = fcntl.LOCK_EX if alone else fcntl.LOCK_SH, time.monotonic() + PATIENCE_S
        # Let go first: two that share and both want to be alone would wait for each other.
        with suppress(OSError):
            fcntl.flock(self._handle, fcntl.LOCK_UN)
        while True:
            try:
                fcntl.flock(self._handle, kind | fcntl.LOCK_NB)
                return
            except BlockingIOError:
                if time.monotonic() > deadline:
                    raise
                time.sleep(0.02)
            except OSError:  # a folder that knows no such locks
                return


def make_folder(folder: Path) -> None:
    """Make the folder, and those above it, for the owner's eyes only. Raises OSError.

    A folder that was there before keeps its mode: it may be shared with others on purpose.
    """
    for part in reversed((folder, *folder.parents)):
        if not part.exists():
            part.mkdir(mode=0o700, exist_ok=True)


def make_file(path: Path) -> None:
    """Make an empty file for the owner's eyes only, unless there is a file. Raises OSError."""
    if path.exists() and not path.is_file():
        raise FileExistsError(errno.EISDIR, "not a file")
    with suppress(FileExistsError):
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))


def may_write(path: Path) -> bool:
    """Whether this user may write there."""
    return os.access(path, os.W_OK, effective_ids=os.access in os.supports_effective_ids)


def _code(error: Exception) -> int:
    return int(getattr(error, "sqlite_errorcode", 0))


def why_in_words(error: Exception, path: Path | None) -> str:
    """The reason in words, to stand after a colon."""
    if isinstance(error, OSError):
        why = _WHY_SYSTEM.get(error.errno or 0, f"{{path}} cannot be used ({error.strerror})")
    elif isinstance(error, (ValueError, OverflowError)):
        why = "it holds a character or a number that cannot be kept"
    else:
        code = _code(error)
        why = _WHY.get(code) or _WHY.get(code & 0xFF) or f"{{path}} cannot be used ({error})"
    return why.replace("{path}", str(path or "the memory"))
