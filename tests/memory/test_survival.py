"""What was acknowledged is on the disk: killed at any moment, and with two programs at once.

The slow run is `STOPWISE_KILLS=200 pytest tests/memory/test_survival.py`.
"""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from assistant.memory.store import Frame, KitFact, Store

GROUP = 25  # as many facts as the writer replaces in one go
WRITER = Path(__file__).with_name("writer.py")
ROOT = WRITER.parents[2]
KILLS = int(os.environ.get("STOPWISE_KILLS", "12"))


def start_writer(home: Path, name: str) -> subprocess.Popen[str]:
    command = [sys.executable, str(WRITER), str(home), name]
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    return subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment)


def said(writer: subprocess.Popen[str]) -> tuple[str, int]:
    """The next thing it acknowledges."""
    assert writer.stdout is not None
    what, turn = writer.stdout.readline().split()
    return what, int(turn)


def stop(writer: subprocess.Popen[str]) -> list[tuple[str, int]]:
    """Kill it outright; what it had acknowledged by then, as (what, turn)."""
    assert writer.poll() is None, writer.communicate()[1]
    writer.kill()
    assert writer.stdout is not None
    spoken = writer.stdout.read()  # what is left in the reader, and in the pipe
    writer.wait()
    complete = spoken[: spoken.rfind("\n") + 1].splitlines()
    return [(what, int(turn)) for what, turn in (line.split() for line in complete)]


def assert_all_there(store: Store, name: str, acknowledged: list[tuple[str, int]]) -> None:
    kit = store.load_kit()
    facts = {fact.quantity: int(fact.value) for fact in kit if fact.owner == name}
    group = [int(fact.value) for fact in kit if fact.owner == f"{name} group"]
    frames = [frame.text for frame in store.frames(10**6) if frame.roll == name]
    missing = {turn for what, turn in acknowledged if what == "fact"} - set(facts.values())
    assert not missing
    assert all(quantity == f"q{turn}" for quantity, turn in facts.items())
    spoken = [f"frame {turn}" for what, turn in acknowledged if what == "frame"]
    assert frames[: len(spoken)] == spoken
    assert len(frames) <= len(spoken) + 1, "at most the one write that was under way"
    last = max((turn for what, turn in acknowledged if what == "group"), default=0)
    assert len(set(group)) <= 1, "a group is of one turn: written whole or not at all"
    assert len(group) == GROUP if last else len(group) in (0, GROUP)
    assert not last or group[0] in (last, last + 10)


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="no such signal on this platform")
@pytest.mark.parametrize("kill", range(KILLS))
def test_what_was_acknowledged_survives_a_kill(tmp_path: Path, kill: int) -> None:
    """A writer killed at a random moment has lost nothing it said was saved, and left no half of anything."""
    chance = random.Random(kill)
    writer = start_writer(tmp_path, "boathouse")
    assert writer.stdout is not None
    first = writer.stdout.readline()
    time.sleep(chance.uniform(0, 0.4))
    acknowledged = [("fact", int(first.split()[1])), *stop(writer)]
    with Store.open(tmp_path) as store:
        assert store.trouble is None
        assert store.keeps
        assert_all_there(store, "boathouse", acknowledged)
        assert store.put(KitFact("after", "power", "1", "", "")) is None
    assert sorted(path.name for path in tmp_path.iterdir()) == ["stopwise.db"]


def test_two_programs_at_once_keep_each_others_facts(tmp_path: Path) -> None:
    """Two programs that begin the same new store together both keep everything they acknowledged."""
    writers = {name: start_writer(tmp_path, name) for name in ("crew one", "crew two")}
    begun = {name: [said(writer) for _ in range(6)] for name, writer in writers.items()}
    acknowledged = {name: [*begun[name], *stop(writer)] for name, writer in writers.items()}
    with Store.open(tmp_path) as store:
        assert store.trouble is None
        for name, spoken in acknowledged.items():
            assert len(spoken) > 5
            assert_all_there(store, name, spoken)


def test_many_programs_may_make_the_store_together(tmp_path: Path) -> None:
    """Ten programs that find no store make one, and none takes it for a stranger's."""
    troubles: list[str | None] = []
    gate = threading.Barrier(10)

    def begin(number: int) -> None:
        gate.wait()
        with Store.open(tmp_path) as store:
            troubles.append(store.trouble or store.put(KitFact("boat", f"q{number}", "1", "", "")))

    threads = [threading.Thread(target=begin, args=(number,)) for number in range(10)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with Store.open(tmp_path) as store:
        assert len(store.load_kit()) == 10
    assert troubles == [None] * 10


def test_replacing_the_kit_keeps_what_another_program_added(tmp_path: Path) -> None:
    """Replacing the whole kit writes only what changed since it was loaded."""
    head = KitFact("the big head", "guide_number", "110", "", "")
    little = KitFact("the little one", "guide_number", "60", "", "")
    film = KitFact("film", "film_speed", "400", "", "")
    with Store.open(tmp_path) as one, Store.open(tmp_path) as two:
        assert one.save_kit([head, film]) is None
        assert two.put(little) is None
        louder = KitFact("the big head", "guide_number", "120", "no, 120", "later")
        assert one.save_kit([louder]) is None
        assert two.load_kit() == [louder, little]


def test_a_frame_of_either_program_gets_a_number_of_its_own(tmp_path: Path) -> None:
    """Frames noted by two programs stand in one log, and a struck number is not given again."""
    with Store.open(tmp_path) as one, Store.open(tmp_path) as two:
        for store, text in ((one, "first"), (two, "second"), (one, "third")):
            assert store.note_frame(Frame(0, "t", "roll 1", text, "{}")) is None
        assert two.drop_frame(3) is None
        assert one.note_frame(Frame(0, "t", "roll 1", "fourth", "{}")) is None
        assert [(frame.id, frame.text) for frame in two.frames(10)] == [(1, "first"), (2, "second"), (4, "fourth")]
