"""Bad disks: full, locked, read-only or no place at all. Never an exception, always a sentence."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from harm import HEAD, LITTLE, assert_works_in_memory, print_of

from assistant.memory import opening
from assistant.memory.store import FILE_NAME, Frame, KitFact, Store

ROOT = Path(__file__).parents[2]


@pytest.fixture
def locked(filled: Path) -> Iterator[Path]:
    """A store that another connection holds for itself alone."""
    other = sqlite3.connect(filled, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    yield filled
    other.close()


def test_a_store_locked_for_long_means_memory_only_and_soon(locked: Path) -> None:
    """After about three seconds, not longer, the program goes on without the file."""
    before, began = print_of(locked), time.monotonic()
    with Store.open(locked.parent) as kept:
        assert time.monotonic() - began < 5
        assert_works_in_memory(kept, "another program", "3 seconds")
    assert print_of(locked) == before


def test_a_write_to_a_locked_store_is_refused_in_words(filled: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is half-written, and once the lock is gone the same store writes again."""
    monkeypatch.setattr(opening, "PATIENCE_S", 0.2)
    other = sqlite3.connect(filled, isolation_level=None)
    with Store.open(filled.parent) as kept:
        other.execute("BEGIN IMMEDIATE")
        trouble = kept.save_kit([LITTLE])
        assert trouble is not None
        assert trouble.startswith("That was not saved: another program")
        assert kept.load_kit() == [HEAD]
        other.execute("ROLLBACK")
        assert kept.save_kit([LITTLE]) is None
        assert kept.load_kit() == [LITTLE]
    other.close()


def test_a_short_lock_is_waited_for(filled: Path) -> None:
    """A program that holds the store for half a second costs half a second, nothing else."""
    other = sqlite3.connect(filled, isolation_level=None, check_same_thread=False)
    other.execute("BEGIN EXCLUSIVE")
    release = threading.Timer(0.5, other.execute, ["COMMIT"])
    release.start()
    with Store.open(filled.parent) as kept:
        assert kept.trouble is None
        assert kept.load_kit() == [HEAD]
    release.join()
    other.close()


def test_a_full_disk_is_said_and_leaves_no_half_of_anything(filled: Path) -> None:
    """A write that does not fit is refused whole; what was there stays; a smaller one still fits after."""
    with Store.open(filled.parent) as kept:
        assert kept.load_kit() == [HEAD]
        pages = kept._connection.execute("PRAGMA page_count").fetchone()[0]
        kept._connection.execute(f"PRAGMA max_page_count = {pages}")
        many = [KitFact("boat", f"q{number}", "1", "said " * 100, "") for number in range(500)]
        assert kept.save_kit(many) == "That was not saved: the disk is full."
        assert kept.load_kit() == [HEAD]
        assert kept.note_frame(Frame(0, "t", "roll", "x" * 10**6, "{}")) == "That was not saved: the disk is full."
        assert len(kept.frames(1000)) == 300
        assert kept.put(LITTLE) is None
    with Store.open(filled.parent) as again:
        assert again.trouble is None
        assert again.load_kit() == [HEAD, LITTLE]


FILLING = """
import resource, sys
from pathlib import Path
from assistant.memory.store import KitFact, Store
room, home = int(sys.argv[1]), Path(sys.argv[2])
if not room:
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))
store = Store.open(home)
if room:
    resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))
print(store.keeps, store.trouble)
for number in range(2000):
    trouble = store.put(KitFact("boat", f"q{number:05}", str(number), "said " * 100, ""))
    if trouble:
        print(number, trouble)
        break
print(len(store.load_kit()))
"""


def run_filling(room: int, home: Path) -> list[str]:
    pytest.importorskip("resource", reason="no limit on file sizes on this platform")
    command = [sys.executable, "-c", FILLING, str(room), str(home)]
    done = subprocess.run(command, capture_output=True, text=True, cwd=ROOT, check=False)
    assert done.stderr == ""
    return done.stdout.splitlines()


def test_what_was_acknowledged_before_the_disk_ran_out_is_all_there(tmp_path: Path) -> None:
    """The operating system stops the file at 100,000 bytes: everything acknowledged stays, nothing more."""
    opened, refused, count = run_filling(100_000, tmp_path)
    number, sentence = refused.split(" ", 1)
    assert opened == "True None"
    assert sentence.startswith("That was not saved: the disk ")
    assert int(number) > 20
    assert count == number
    with Store.open(tmp_path) as again:
        assert again.trouble is None
        assert [int(fact.value) for fact in again.load_kit()] == list(range(int(number)))


def test_no_room_for_a_store_at_all_means_memory_only(tmp_path: Path) -> None:
    """With no room for a single byte the program works in memory and says so."""
    opened, count = run_filling(0, tmp_path)
    assert opened.startswith("False What you tell me is forgotten when you leave: the disk ")
    assert count == "2000"
    with Store.open(tmp_path) as later:
        assert later.trouble is None


def test_a_file_in_the_place_of_a_folder_means_memory_only(tmp_path: Path) -> None:
    """A home that cannot be a folder, for anybody, is said to be so and left as it is."""
    (tmp_path / "home").write_text("a note")
    for home in (tmp_path / "home", tmp_path / "home" / "deeper"):
        with Store.open(home) as kept:
            assert_works_in_memory(kept, str(home), "folder")
    assert (tmp_path / "home").read_text() == "a note"


def test_a_folder_in_the_place_of_the_file_means_memory_only(tmp_path: Path) -> None:
    """What is not a file is not opened as one, nor renamed."""
    (tmp_path / FILE_NAME).mkdir()
    with Store.open(tmp_path) as kept:
        assert_works_in_memory(kept, "is not a file")
    assert (tmp_path / FILE_NAME).is_dir()


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes on this platform")
def test_a_pipe_in_the_place_of_the_file_does_not_hang(tmp_path: Path) -> None:
    """Opening a pipe would wait for somebody at its other end."""
    os.mkfifo(tmp_path / FILE_NAME)
    with Store.open(tmp_path) as kept:
        assert_works_in_memory(kept, "is not a file")


@pytest.mark.parametrize("home", ["/proc/stopwise", "/dev/null/stopwise", "broken\0name"])
def test_a_place_that_cannot_be_made_means_memory_only(home: str) -> None:
    """Whatever the system answers, there is a store and a sentence."""
    with Store.open(Path(home)) as kept:
        assert_works_in_memory(kept)


@pytest.fixture
def unprivileged(tmp_path: Path) -> Iterator[Path]:
    """A folder in which modes count: as root, who may do anything, we act as somebody else meanwhile."""
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        yield tmp_path
        return
    import tempfile

    nobody = 65534
    with tempfile.TemporaryDirectory() as folder:
        os.chown(folder, nobody, nobody)
        os.seteuid(nobody)
        try:
            yield Path(folder)
        finally:
            os.seteuid(0)


@pytest.mark.skipif(os.name == "nt", reason="modes are a POSIX matter")
@pytest.mark.parametrize("mode", ["folder", "file", "both"])
def test_a_store_that_may_only_be_read_is_read(unprivileged: Path, mode: str) -> None:
    """The kit is known, changes last until the end of the program, and the file stays as it was."""
    with Store.open(unprivileged) as kept:
        assert kept.put(HEAD) is None
    path = unprivileged / FILE_NAME
    path.chmod(0o600 if mode == "folder" else 0o400)
    unprivileged.chmod(0o700 if mode == "file" else 0o500)
    before = print_of(path)
    with Store.open(unprivileged) as kept:
        assert kept.load_kit() == [HEAD]
        assert_works_in_memory(kept, "cannot be written to")
        assert kept.load_kit() == [HEAD, LITTLE]
    assert print_of(path) == before
    unprivileged.chmod(0o700)


@pytest.mark.skipif(os.name == "nt", reason="modes are a POSIX matter")
def test_a_damaged_file_in_a_folder_that_may_only_be_read_stays(unprivileged: Path) -> None:
    """With nowhere to set it aside it stays in its place, and the store is in memory."""
    (unprivileged / FILE_NAME).write_bytes(b"damage" * 100)
    unprivileged.chmod(0o500)
    with Store.open(unprivileged) as kept:
        assert_works_in_memory(kept)
    unprivileged.chmod(0o700)
    assert (unprivileged / FILE_NAME).read_bytes() == b"damage" * 100


def test_a_store_deleted_while_in_use_is_not_written_into_the_void(filled: Path) -> None:
    """No write is acknowledged that nobody could ever read again."""
    if os.name == "nt":
        pytest.skip("there an open file cannot be deleted")
    with Store.open(filled.parent) as kept:
        filled.unlink()
        assert "moved or deleted" in (kept.put(LITTLE) or "")
