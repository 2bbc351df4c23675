"""Strange files: damaged, foreign, newer, huge or tinkered with. Nothing of anybody's is lost."""

from __future__ import annotations

import os
import sqlite3
import threading
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from harm import HEAD, LITTLE, assert_works_in_memory, print_of, set_aside

from assistant.memory import opening, schema
from assistant.memory.store import FILE_NAME, KitFact, Store

BROKEN: dict[str, Callable[[bytes], bytes]] = {
    "empty pages": lambda whole: bytes(len(whole)),
    "not a database": lambda whole: b"a picture of the boathouse\n" * 500,
    "header gone": lambda whole: b"\xff" * 100 + whole[100:],
    "cut short": lambda whole: whole[: len(whole) // 2],
    "cut within the header": lambda whole: whole[:60],
    "page overwritten": lambda whole: whole[:8192] + b"\xa5" * 4096 + whole[12288:],
    "tables gone": lambda whole: whole[:100] + bytes(3996) + whole[4096:],
}


@pytest.mark.parametrize("harm", BROKEN)
def test_a_damaged_file_is_kept_under_the_name_the_sentence_gives(filled: Path, harm: str) -> None:
    """Every byte of the damaged file is still there, and a new store is in use and lasts."""
    broken = BROKEN[harm](filled.read_bytes())
    filled.write_bytes(broken)
    with Store.open(filled.parent) as kept:
        aside = set_aside(filled, kept.trouble, "(damaged|foreign)")
        assert aside.read_bytes() == broken
        assert kept.keeps
        assert kept.load_kit() == []
        assert kept.put(LITTLE) is None
    with Store.open(filled.parent) as again:
        assert again.trouble is None
        assert again.load_kit() == [LITTLE]


def test_no_damaged_file_overwrites_another(filled: Path) -> None:
    """Three damaged files within one minute get three names."""
    for number in range(3):
        filled.write_bytes(b"damage %d" % number * 100)
        Store.open(filled.parent).close()
    kept = sorted(path.read_bytes()[:8] for path in filled.parent.glob("stopwise.damaged-*.db"))
    assert kept == [b"damage 0", b"damage 1", b"damage 2"]


def test_what_lies_beside_a_damaged_file_goes_with_it(filled: Path) -> None:
    """A journal is never left to be played into the new file, and keeps its damaged file company."""
    tails = ("", "-journal", "-wal", "-shm")
    for tail in tails:
        filled.with_name(FILE_NAME + tail).write_text("damage" + tail)
    name = opening._set_aside(filled, "damaged")
    assert {path.name: path.read_text() for path in filled.parent.iterdir()} == {
        name + tail: "damage" + tail for tail in tails
    }


@pytest.mark.parametrize("meeting", range(10))
def test_programs_that_find_one_damaged_file_set_aside_only_that(filled: Path, meeting: int) -> None:
    """What one program saved after the damage is not set aside by another that saw the damage too."""
    broken = b"damage" * (100 + meeting)
    filled.write_bytes(broken)
    gate = threading.Barrier(8)
    results: list[str | None] = []

    def begin(number: int) -> None:
        gate.wait()
        with Store.open(filled.parent) as kept:
            results.append(kept.put(KitFact("boat", f"q{number}", "1", "", "")) if kept.keeps else kept.trouble)

    threads = [threading.Thread(target=begin, args=(number,)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert results == [None] * 8
    assert [path.read_bytes() for path in filled.parent.glob("stopwise.damaged-*.db")] == [broken]
    with Store.open(filled.parent) as kept:
        assert len(kept.load_kit()) == 8


@pytest.mark.skipif(os.name == "nt", reason="there an open file cannot be renamed")
def test_a_damaged_file_is_not_renamed_under_a_program_that_has_it_open(
    filled: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """SQLite goes by names: renaming an open file would spoil the new one too. It waits for the other to end."""
    monkeypatch.setattr(opening, "PATIENCE_S", 0.2)
    with Store.open(filled.parent) as other:
        broken = b"damage" * (filled.stat().st_size // 6)
        filled.write_bytes(broken)
        with Store.open(filled.parent) as kept:
            assert_works_in_memory(kept, "cannot be put right while another program has it open")
        assert filled.read_bytes() == broken
        assert other.put(LITTLE) is not None
    with Store.open(filled.parent) as kept:
        assert set_aside(filled, kept.trouble, "damaged").read_bytes() == broken
        assert kept.keeps


@pytest.mark.parametrize("mark", [0, 7])
def test_a_foreign_database_is_kept_whole_under_another_name(tmp_path: Path, mark: int) -> None:
    """Another program's SQLite file of the same name is set aside as it is."""
    path = tmp_path / FILE_NAME
    with sqlite3.connect(path) as foreign:
        foreign.execute("CREATE TABLE kit (oars)")
        foreign.execute("INSERT INTO kit VALUES (8)")
        foreign.execute(f"PRAGMA application_id = {mark}")
    foreign.close()
    before, _ = print_of(path)
    with Store.open(tmp_path) as kept:
        aside = set_aside(path, kept.trouble, "foreign")
        assert kept.put(LITTLE) is None
    assert print_of(aside)[0] == before


@pytest.mark.parametrize("journal", ["delete", "wal"])
def test_a_newer_version_is_left_as_it_is(filled: Path, journal: str) -> None:
    """A file of a version yet to come is neither written, nor renamed, nor damaged by what we do then."""
    newer = sqlite3.connect(filled)
    newer.execute(f"PRAGMA journal_mode = {journal}")
    newer.execute(f"PRAGMA user_version = {len(schema.MIGRATIONS) + 1}")
    newer.close()
    filled.chmod(0o640)
    before = print_of(filled)
    with Store.open(filled.parent) as kept:
        assert_works_in_memory(kept, str(filled), "newer version", "left as it is")
        assert kept.drop(HEAD.owner) is None
    assert print_of(filled) == before
    assert filled.stat().st_mode & 0o777 == 0o640
    assert [path.name for path in filled.parent.iterdir()] == [FILE_NAME]


def test_a_newer_version_that_this_sqlite_cannot_read_is_not_taken_for_damage(filled: Path) -> None:
    """The version is read before the tables, which may be written in a way yet to come."""
    newer = sqlite3.connect(filled)
    newer.execute("PRAGMA writable_schema = ON")
    newer.execute("UPDATE sqlite_master SET sql = 'CREATE TABLE kit (owner) YET TO COME' WHERE name = 'kit'")
    newer.execute(f"PRAGMA user_version = {len(schema.MIGRATIONS) + 1}")
    newer.commit()
    newer.close()
    before = print_of(filled)
    with Store.open(filled.parent) as kept:
        assert_works_in_memory(kept, "newer version")
    assert print_of(filled) == before


def test_a_huge_file_that_is_no_store_is_set_aside_at_once(tmp_path: Path) -> None:
    """Four gigabytes of nothing cost no more than a small file."""
    path = tmp_path / FILE_NAME
    with path.open("wb") as huge:
        huge.truncate(4 * 1024**3)
    began = time.monotonic()
    with Store.open(tmp_path) as kept:
        aside = set_aside(path, kept.trouble, "(damaged|foreign)")
        assert kept.put(HEAD) is None
    assert time.monotonic() - began < 1
    assert aside.stat().st_size == 4 * 1024**3
    aside.unlink()


def test_a_huge_log_does_not_slow_the_start(filled: Path) -> None:
    """A log of 100,000 frames opens and gives its latest in a moment."""
    with sqlite3.connect(filled) as other:
        rows = (("t", "roll", f"crew {number} " * 20, "{}") for number in range(100_000))
        other.executemany("INSERT INTO log (noted, roll, text, facts) VALUES (?, ?, ?, ?)", rows)
    other.close()
    assert filled.stat().st_size > schema.CHECKED_BYTES
    began = time.monotonic()
    with Store.open(filled.parent) as kept:
        latest = kept.frames(2)
    assert time.monotonic() - began < 0.2
    assert [frame.id for frame in latest] == [100_299, 100_300]


def test_damage_met_while_reading_is_said(filled: Path) -> None:
    """A file that breaks while it is open gives no rows and a sentence."""
    with Store.open(filled.parent) as kept:
        filled.write_bytes(b"\xa5" * filled.stat().st_size)
        assert kept.frames(5) == []
        assert kept.trouble is not None
        assert kept.trouble.startswith("What was saved cannot be read now: ")


BAD_ROWS = {
    "no JSON": ("not json", "said"),
    "endless": ("Infinity", "said"),
    "deep": ("[" * 100_000, "said"),
    "bytes": (b"\xff\xfe", "said"),
    "a number for words": ("1", b"\x00"),
}


@pytest.mark.parametrize("bad", BAD_ROWS)
def test_a_fact_that_cannot_be_read_is_left_out_and_said(filled: Path, bad: str) -> None:
    """Somebody's own tinkering with the file costs one fact, in words, and never stops the program."""
    value, said = BAD_ROWS[bad]
    with sqlite3.connect(filled) as other:
        other.execute("INSERT INTO kit VALUES ('boat', 'power', ?, ?, '')", (value, said))
    other.close()
    with Store.open(filled.parent) as kept:
        assert kept.load_kit() == [HEAD]
        assert "left out" in (kept.trouble or "")
        assert kept.save_kit([HEAD, LITTLE]) is None
        count = kept._connection.execute("SELECT count(*) FROM kit").fetchone()
        assert count == (3,), "what could not be read is not thrown away"
