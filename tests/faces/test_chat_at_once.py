"""A chat in which one types, or leaves, before what an answer needs has been read; and terminals of any make."""

from __future__ import annotations

import json
import os
import sys
import time
from pathlib import Path
from threading import Event

import pytest
from command import ROOT, surroundings
from prompt_toolkit.application import create_app_session
from prompt_toolkit.history import InMemoryHistory
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.assistant import Assistant
from assistant.faces import chat as face
from assistant.language.tables import load_tables

QUESTION = "guide number 90 feet, 9 feet, ISO 100, what aperture?\r"
CONTROL_D = "\x04"


def shown_by(assistant: Assistant, keys: str, capsys: pytest.CaptureFixture[str]) -> str:
    """What a chat shows, on either stream, when these keys are typed at once."""
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
        pipe.send_text(keys)
        assert face.converse(assistant, InMemoryHistory()) == 0
    return "".join(capsys.readouterr())


@pytest.mark.parametrize("keys", [CONTROL_D, QUESTION + CONTROL_D])
def test_a_fault_beside_the_chat_is_not_shown(assistant: Assistant, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], keys: str) -> None:
    def broken(_: Assistant) -> None:
        raise ImportError("a part is missing")

    monkeypatch.setattr(Assistant, "prepare", broken)
    shown = shown_by(assistant, keys, capsys)
    assert "Traceback" not in shown and "missing" not in shown and ("f/10" in shown) == (keys != CONTROL_D)


def test_a_question_typed_at_once_waits_for_what_is_being_read(assistant: Assistant, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    done = Event()

    def slow(_: Assistant) -> None:
        time.sleep(0.3)
        done.set()

    monkeypatch.setattr(Assistant, "prepare", slow)
    answer = Assistant.answer
    monkeypatch.setattr(Assistant, "answer", lambda self, text: answer(self, text) if done.is_set() else pytest.fail("answered before"))
    assert "f/10" in shown_by(assistant, QUESTION + CONTROL_D, capsys)


def test_who_leaves_at_once_leaves_nothing_half_done(assistant: Assistant, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    done = Event()

    def slow(_: Assistant) -> None:
        time.sleep(0.2)
        done.set()

    monkeypatch.setattr(Assistant, "prepare", slow)
    shown_by(assistant, CONTROL_D, capsys)
    assert done.is_set()


def test_where_there_are_no_more_threads_the_chat_goes_on(assistant: Assistant, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    def none_left(self: object) -> None:
        raise RuntimeError("can't start new thread")

    beside = face.Beside(assistant.prepare)
    monkeypatch.setattr(face.Thread, "start", none_left)
    beside.begin()
    beside.begin()
    beside.wait()
    assert beside.left() == 0


@pytest.mark.parametrize("harm", ["cut", "null", "nested", "other"])
def test_a_damaged_table_is_made_anew(tmp_path: Path, harm: str) -> None:
    load_tables(tmp_path)
    file = next(tmp_path.glob("tables-*.json"))
    whole = json.loads(file.read_text())
    file.write_text({"cut": file.read_text()[:-20], "null": json.dumps({**whole, "rules": None}), "nested": "[" * 100_000, "other": json.dumps({"format": whole["format"]})}[harm])
    assert Assistant(load_tables(tmp_path)).answer(QUESTION).reply.startswith("Set f/8 and two thirds (f/10)")
    assert len(json.loads(file.read_text())["actions"]) == len(whole["actions"])


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal of its own")
@pytest.mark.parametrize(("columns", "more"), [
    (20, {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}), (20, {"LC_ALL": "xx_YY.nonsense", "TERM": "frobozz"}), (1, {}), (0, {"STOPWISE_HOME": "/dev/null/nowhere"}),
], ids=["C", "odd", "one", "none"])
def test_any_terminal_will_do(home: Path, columns: int, more: dict[str, str]) -> None:
    """A question typed as soon as the prompt stands, and the way out."""
    import fcntl
    import pty
    import select
    import struct
    import termios

    child, terminal = pty.fork()
    if child == 0:
        os.chdir(ROOT)
        os.execve(sys.executable, [sys.executable, "-m", "assistant"], surroundings(home, **{"TERM": "xterm", **more}))
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    shown, keys, until = b"", [(b"known", QUESTION.encode()), (b"f/10", CONTROL_D.encode())] if columns > 1 else [(b">", QUESTION.encode() + CONTROL_D.encode())], time.monotonic() + 60
    while time.monotonic() < until:
        if not select.select([terminal], [], [], 0.1)[0]:
            continue
        try:
            got = os.read(terminal, 65536)
        except OSError:
            break
        shown += got
        if b"\x1b[6n" in got:
            os.write(terminal, b"\x1b[1;1R")
        if keys and keys[0][0] in shown:
            time.sleep(0.3)
            os.write(terminal, keys.pop(0)[1])
    if time.monotonic() >= until:
        os.kill(child, 9)
    _, status = os.waitpid(child, 0)
    os.close(terminal)
    assert os.waitstatus_to_exitcode(status) == 0 and b"f/10" in shown and b"Traceback" not in shown, shown.decode("utf-8", "replace")
