"""The store in good health: what goes in comes out, in the right place, for the owner's eyes only."""

from __future__ import annotations

import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.memory import schema, store
from assistant.memory.store import Frame, KitFact, Store

HEAD = KitFact("the big head", "guide_number", '{"number": 110, "unit": "ft"}', "it is 110", "2026-11-24T22:51:00")
LITTLE = KitFact("the little one", "guide_number", "60", "the little one is 60", "2026-11-24T22:52:00")
FRAME = Frame(0, "2026-11-24T22:53:00", "roll 3", "crew at the open doors, f/8", '{"aperture": 8}')
POSIX = pytest.mark.skipif(os.name == "nt", reason="modes are a POSIX matter")


def test_what_was_saved_is_there_the_next_time(tmp_path: Path) -> None:
    """Facts and frames come back equal after the store was closed and opened again."""
    with Store.open(tmp_path) as first:
        assert first.save_kit([LITTLE, HEAD]) is None
        assert first.note_frame(FRAME) is None
    with Store.open(tmp_path) as again:
        assert (again.trouble, again.keeps) == (None, True)
        assert again.load_kit() == [HEAD, LITTLE]
        assert again.frames(5) == [Frame(1, FRAME.when, FRAME.roll, FRAME.text, FRAME.facts)]


def test_a_later_value_replaces_an_earlier_one(tmp_path: Path) -> None:
    """One owner has one value of a quantity: the last."""
    later = KitFact(HEAD.owner, HEAD.quantity, "120", "no, 120", "2026-11-25T08:00:00")
    with Store.open(tmp_path) as kept:
        assert kept.put(HEAD) is None
        assert kept.put(later) is None
        assert kept.load_kit() == [later]


def test_one_fact_or_a_whole_owner_can_be_forgotten(tmp_path: Path) -> None:
    """Dropping touches what it names and nothing else; dropping what is not there is no trouble."""
    power = KitFact(HEAD.owner, "power", "0.25", "", "")
    colour = KitFact(HEAD.owner, "colour", '"white"', "", "")
    with Store.open(tmp_path) as kept:
        assert kept.save_kit([HEAD, power, colour, LITTLE]) is None
        assert kept.drop(HEAD.owner, "power") is None
        assert kept.load_kit() == [colour, HEAD, LITTLE]
        assert kept.drop(HEAD.owner) is None
        assert kept.drop("nobody") is None
        assert kept.load_kit() == [LITTLE]
        assert kept.save_kit([]) is None
        assert kept.load_kit() == []


def test_the_log_gives_its_latest_frames_oldest_first(tmp_path: Path) -> None:
    """A limit takes the latest frames; an id that is known corrects that frame; one unknown is said to be so."""
    with Store.open(tmp_path) as kept:
        for number in range(1, 6):
            assert kept.note_frame(Frame(0, "t", "roll", str(number), "{}")) is None
        assert [frame.text for frame in kept.frames(2)] == ["4", "5"]
        assert kept.frames(0) == kept.frames(-3) == []
        assert kept.note_frame(Frame(4, "t", "roll", "four, at f/11", "{}")) is None
        assert [frame.text for frame in kept.frames(10**30)] == ["1", "2", "3", "four, at f/11", "5"]
        assert kept.drop_frame(9) == "There is no frame 9 in the log."
        assert kept.drop_frame(10**30) is not None
        assert len(kept.frames(10)) == 5


@given(st.lists(st.tuples(st.text(), st.text(), st.text(), st.text()), max_size=4))
def test_any_text_comes_back_as_it_was_or_is_refused_in_words(rows: list[tuple[str, str, str, str]]) -> None:
    """No text is changed by being kept."""
    facts = {(owner, quantity): KitFact(owner, quantity, "1", said, when) for owner, quantity, said, when in rows}
    with Store.unsaved() as kept:
        assert kept.save_kit(facts.values()) is None
        assert set(kept.load_kit()) == set(facts.values())


def test_text_that_is_no_text_is_refused_in_words(tmp_path: Path) -> None:
    """A broken character, as a terminal may send it, is refused, and nothing of that write is kept."""
    with Store.open(tmp_path) as kept:
        trouble = kept.save_kit([LITTLE, KitFact("the \udce9 head", "power", "1", "", "")])
        assert trouble == "That was not saved: it holds a character or a number that cannot be kept."
        assert kept.load_kit() == []
        assert kept.put(LITTLE) is None


def test_an_unsaved_store_is_no_trouble_and_leaves_nothing() -> None:
    """Asked to keep nothing, it works as ever and reports no trouble."""
    with Store.unsaved() as kept:
        assert (kept.trouble, kept.keeps) == (None, False)
        assert kept.put(HEAD) is None
        assert kept.load_kit() == [HEAD]
    with Store.unsaved() as other:
        assert other.load_kit() == []


def test_a_closed_store_answers_in_words(tmp_path: Path) -> None:
    """Use after closing is a sentence, not an error."""
    kept = Store.open(tmp_path)
    kept.close()
    kept.close()
    assert "not saved" in (kept.put(HEAD) or "")
    assert kept.load_kit() == []
    assert kept.trouble is not None


@POSIX
@pytest.mark.parametrize("mask", [0o000, 0o022, 0o077])
def test_only_the_owner_can_read_the_store(tmp_path: Path, mask: int) -> None:
    """Folders made are 0700 and the file 0600 whatever the umask; its journal is no more open than it."""
    before = os.umask(mask)
    try:
        home = tmp_path / "deep" / "home"
        with Store.open(home) as kept:
            kept._connection.execute("BEGIN IMMEDIATE")
            kept._connection.execute("INSERT INTO kit VALUES ('a', 'b', '1', '', '')")
            modes = {path.name: stat.S_IMODE(path.stat().st_mode) for path in home.iterdir()}
        assert modes == {"stopwise.db": 0o600, "stopwise.db-journal": 0o600}
        assert stat.S_IMODE(home.stat().st_mode) == stat.S_IMODE(home.parent.stat().st_mode) == 0o700
    finally:
        os.umask(before)


@POSIX
def test_a_store_that_others_could_read_is_closed_to_them(tmp_path: Path) -> None:
    """A file found open to others is made private; the mode of a folder that was there is left alone."""
    Store.open(tmp_path).close()
    (tmp_path / "stopwise.db").chmod(0o644)
    tmp_path.chmod(0o755)
    Store.open(tmp_path).close()
    assert stat.S_IMODE((tmp_path / "stopwise.db").stat().st_mode) == 0o600
    assert stat.S_IMODE(tmp_path.stat().st_mode) == 0o755


def test_every_commit_is_forced_to_the_disk(tmp_path: Path) -> None:
    """SQLite is told to sync the file and the folder (3: EXTRA) and to keep a rollback journal."""
    with Store.open(tmp_path) as kept:
        assert kept._connection.execute("PRAGMA synchronous").fetchone() == (3,)
        assert kept._connection.execute("PRAGMA journal_mode").fetchone() == ("delete",)


def test_an_older_store_is_brought_up_to_date_with_all_it_holds(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A next version takes over what this version wrote, once, and this version then leaves it alone."""
    with Store.open(tmp_path) as kept:
        assert kept.save_kit([HEAD, LITTLE]) is None
    step = ("ALTER TABLE kit ADD COLUMN lent TEXT NOT NULL DEFAULT 'no'",)
    with monkeypatch.context() as later:
        later.setattr(schema, "MIGRATIONS", (*schema.MIGRATIONS, step))
        for _ in range(2):
            with Store.open(tmp_path) as newer:
                assert newer.trouble is None
                assert newer.load_kit() == [HEAD, LITTLE]
                assert newer._connection.execute("SELECT lent FROM kit").fetchall() == [("no",), ("no",)]
                assert newer._connection.execute("PRAGMA user_version").fetchone() == (2,)
    with Store.open(tmp_path) as older:
        assert "newer version" in (older.trouble or "")


def test_a_migration_that_fails_leaves_the_store_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The steps of a migration are one transaction."""
    import sqlite3

    with Store.open(tmp_path) as kept:
        assert kept.put(HEAD) is None
        monkeypatch.setattr(schema, "MIGRATIONS", (*schema.MIGRATIONS, ("CREATE TABLE extra (a)", "nonsense")))
        with pytest.raises(sqlite3.OperationalError):
            schema.settle(kept._connection)
        assert not kept._connection.in_transaction
        assert kept._connection.execute("SELECT name FROM sqlite_master WHERE name = 'extra'").fetchall() == []
        assert kept._connection.execute("PRAGMA user_version").fetchone() == (1,)
        assert kept.load_kit() == [HEAD]


PLACES = [
    ("linux", {"XDG_DATA_HOME": "/far/data"}, "/far/data/stopwise"),
    ("linux", {"XDG_DATA_HOME": "near/data"}, "/home/cox/.local/share/stopwise"),
    ("linux", {"XDG_DATA_HOME": ""}, "/home/cox/.local/share/stopwise"),
    ("freebsd14", {}, "/home/cox/.local/share/stopwise"),
    ("darwin", {"XDG_DATA_HOME": "/far/data"}, "/home/cox/Library/Application Support/stopwise"),
    ("win32", {"LOCALAPPDATA": "/cox/AppData/Local"}, "/cox/AppData/Local/stopwise"),
    ("win32", {}, "/home/cox/AppData/Local/stopwise"),
    ("linux", {"STOPWISE_HOME": "/own", "XDG_DATA_HOME": "/far/data"}, "/own"),
    ("linux", {"STOPWISE_HOME": "~/own"}, "/home/cox/own"),
]
CACHES = [
    ("linux", {"XDG_CACHE_HOME": "/far/cache"}, "/far/cache/stopwise"),
    ("linux", {}, "/home/cox/.cache/stopwise"),
    ("darwin", {}, "/home/cox/Library/Caches/stopwise"),
    ("win32", {"LOCALAPPDATA": "/cox/AppData/Local"}, "/cox/AppData/Local/stopwise/cache"),
    ("win32", {"STOPWISE_HOME": "/own"}, "/own/cache"),
]


def _stand_in(monkeypatch: pytest.MonkeyPatch, platform: str, said: dict[str, str]) -> None:
    for name in ("STOPWISE_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "LOCALAPPDATA"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("HOME", "/home/cox")
    monkeypatch.setattr(sys, "platform", platform)
    for name, value in said.items():
        monkeypatch.setenv(name, value)


@POSIX
@pytest.mark.parametrize(("platform", "said", "place"), PLACES)
def test_each_platform_has_its_place_for_the_kit(
    monkeypatch: pytest.MonkeyPatch, platform: str, said: dict[str, str], place: str
) -> None:
    """Source: XDG Base Directory Specification 0.8 and the vendors' guides (from memory)."""
    _stand_in(monkeypatch, platform, said)
    assert store.home_folder() == Path(place)


@POSIX
@pytest.mark.parametrize(("platform", "said", "place"), CACHES)
def test_each_platform_has_its_place_for_what_can_be_made_anew(
    monkeypatch: pytest.MonkeyPatch, platform: str, said: dict[str, str], place: str
) -> None:
    """Source: XDG Base Directory Specification 0.8 and the vendors' guides (from memory)."""
    _stand_in(monkeypatch, platform, said)
    assert store.cache_folder() == Path(place)


def test_nobodys_home_means_memory_only(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where no home is known the program works, and says that nothing is kept."""
    _stand_in(monkeypatch, sys.platform, {})
    monkeypatch.setattr(os.path, "expanduser", lambda path: path)
    with Store.open(store.home_folder()) as kept:
        assert not kept.keeps
        assert kept.trouble
        assert kept.put(HEAD) is None


def test_sqlite_is_not_imported_before_a_store_is_opened() -> None:
    """A question that needs no kit does not wait for SQLite, JSON or TOML."""
    script = (
        "import sys, assistant.memory.store; print([n for n in ('sqlite3', 'json', 'tomllib') if n in sys.modules])"
    )
    root = Path(__file__).parents[2]
    spoken = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, cwd=root, check=True)
    assert spoken.stdout == "[]\n"
