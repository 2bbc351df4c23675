"""What is told stays told: across programs, across a kill, whatever the disk does."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from command import QUESTION, objects, run, surroundings, text
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.memory.keeping import Keeper, fact_of, kit_of, rows_now, value_of
from assistant.memory.kit import Kit
from assistant.memory.shotlog import Shot, ShotLog
from assistant.query import Fact


def test_gear_told_once_is_known_to_the_next_program(home: Path) -> None:
    """80 feet at 10 feet is f/8 (guide number arithmetic)."""
    run(home, "my flash is guide number 80 feet")
    assert objects(run(home, "--json", "what aperture at 10 feet?"))[0]["answers"][0]["set"] == "f/8"


def test_a_name_given_in_a_later_program_goes_to_the_flash_told_last(home: Path) -> None:
    run(home, "the little one is guide number 40 feet")
    run(home, "the big one is guide number 80 feet")
    assert run(home, "call it Duke").returncode == 0
    known = text(run(home, "what do you know about my gear?"))
    assert "Duke: guide number 80 ft" in known and "The little one: guide number 40 ft" in known


def test_a_question_makes_no_file(home: Path) -> None:
    run(home, QUESTION)
    assert {p.name for p in home.iterdir()} == {"cache"}


def test_unsaved_reads_and_writes_nothing(home: Path) -> None:
    run(home, "my flash is guide number 80 feet")
    before = (home / "stopwise.db").read_bytes()
    assert objects(run(home, "--json", "--unsaved", "what aperture at 10 feet?"))[0]["status"] == "needs"
    run(home, "--unsaved", "my flash is guide number 50 feet")
    run(home, "--unsaved", "log f/8 at 10 feet")
    assert (home / "stopwise.db").read_bytes() == before


@pytest.mark.skipif(sys.platform == "win32", reason="needs SIGKILL")
def test_each_acknowledged_note_survives_a_kill(home: Path) -> None:
    told = [b"my flash is guide number 80 feet", b"call it Duke", b"I'm on 400 film", b"log f/8 at 10 feet frame 12", b"log f/11 at 9 feet frame 13"]
    for number in range(1, len(told) + 1):
        folder = home / str(number)
        with subprocess.Popen([sys.executable, "-m", "assistant", "--json", "--lines"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=surroundings(folder)) as talk:
            assert talk.stdin and talk.stdout
            for line in told[:number]:
                talk.stdin.write(line + b"\n")
                talk.stdin.flush()
                assert b'"noted"' in talk.stdout.readline()
            talk.send_signal(signal.SIGKILL)
        kept = Keeper(folder)
        kit, log = kept.load_kit(), kept.load_log()
        assert [f.of for f in kit.facts if f.quantity == "guide_number"] == ["Duke" if number > 1 else ""]
        assert any(f.quantity == "film_speed" and f.value == 400 for f in kit.facts) is (number > 2)
        assert [s.frame for s in log.shots] == [12, 13][: max(number - 3, 0)]


def test_trouble_with_the_disk_is_told_in_the_reply_or_beside_the_json(home: Path) -> None:
    (home / "stopwise.db").mkdir()
    done = run(home, "my flash is guide number 80 feet")
    assert done.returncode == 0 and "forgotten when you leave" in text(done) and done.stderr == b""
    done = run(home, "--json", "my flash is guide number 80 feet")
    assert objects(done)[0]["status"] == "noted" and b"forgotten when you leave" in done.stderr


def test_a_damaged_file_is_set_aside_and_said_so_once(home: Path) -> None:
    (home / "stopwise.db").write_bytes(b"not a database at all" * 100)
    done = run(home, "--lines", stdin=f"{QUESTION}\n{QUESTION}\n".encode())
    assert text(done).count("is kept as") == 1 and done.returncode == 0


@pytest.mark.skipif(sys.platform == "win32" or os.geteuid() == 0, reason="needs a folder that cannot be written to")
def test_a_home_that_cannot_be_written_to_is_told(home: Path) -> None:
    home.chmod(0o500)
    assert "forgotten when you leave" in text(run(home, "my flash is guide number 80 feet"))
    home.chmod(0o700)


def test_a_home_that_cannot_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    done = run(tmp_path / "file" / "home", "my flash is guide number 80 feet")
    assert done.returncode == 0 and "forgotten when you leave" in text(done)


NUMBERS = st.floats(1e-6, 1e6, allow_nan=False)
WORDS = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), min_size=1, max_size=20)
FACTS = st.builds(
    Fact, st.sampled_from(["guide_number", "film_speed", "aperture_range", "max_distance", "min_power", "focal_length", "sync"]), NUMBERS, st.sampled_from(["ft", "m", "mm", ""]),
    of=st.one_of(st.just(""), WORDS), other=NUMBERS, at_iso=st.one_of(st.none(), NUMBERS), cue=st.sampled_from(["", "at_most"]), said=WORDS)


@given(st.lists(FACTS, max_size=6), st.lists(WORDS, max_size=3, unique=True))
@settings(max_examples=60, deadline=None)
def test_a_kit_comes_back_as_it_was_kept(facts: list[Fact], names: list[str]) -> None:
    kit = Kit(names=tuple(names)).with_facts(facts)
    back = kit_of(rows_now(kit))
    assert [(f.quantity, f.unit, f.of, f.cue, f.said, f.at_iso, f.other) for f in back.facts] == [(f.quantity, f.unit, f.of, f.cue, f.said, f.at_iso, f.other) for f in kit.facts]
    assert all(abs(a.value / b.value - 1) < 1e-12 for a, b in zip(back.facts, kit.facts, strict=True)) and set(kit.names) <= set(back.names)


@pytest.mark.parametrize("value", [None, "", "110", True, [110], {}, {"number": None}, {"number": "110"}, {"number": True}, {"number": -1}, {"number": 0}, {"number": 10**400}])
def test_a_value_that_is_no_number_makes_no_fact(value: object) -> None:
    assert fact_of("", "guide_number", value, "") is None


def test_a_length_is_kept_in_the_unit_it_was_said_in() -> None:
    assert value_of(Fact("max_distance", 12 * 0.3048, "ft"))["number"] == 12


def test_a_frame_told_again_takes_the_place_of_the_first(tmp_path: Path) -> None:
    keeper = Keeper(tmp_path)
    one = keeper.save_log(ShotLog(), ShotLog().with_shot(Shot(3, facts=(Fact("aperture", 8.0),))))
    two = keeper.save_log(one, one.with_shot(Shot(3, facts=(Fact("aperture", 11.0),))))
    again = Keeper(tmp_path).load_log()
    assert [f.value for s in again.shots for f in s.facts] == [11.0] and two.shots == again.shots
