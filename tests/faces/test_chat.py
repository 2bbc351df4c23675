"""The chat: keys typed through a pipe, with no terminal; and once on a terminal of its own."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from command import ROOT, surroundings
from prompt_toolkit.application import create_app_session
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document
from prompt_toolkit.history import InMemoryHistory
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.assistant import Assistant
from assistant.faces import chat as face
from assistant.faces.phrases import HELP, WELCOME, known_so_far
from assistant.faces.streams import wrapped

CONTROL_C, CONTROL_D, ENTER = "\x03", "\x04", "\r"


@pytest.fixture
def talk(assistant: Assistant, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Iterator[Callable[..., str]]:
    """Types keys into a chat and gives what it showed; the chat must end by itself."""
    monkeypatch.setenv("COLUMNS", "80")

    def typed(*keys: str) -> str:
        with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
            pipe.send_text("".join(keys))
            assert face.converse(assistant, InMemoryHistory()) == 0
        return capsys.readouterr().out

    yield typed


def test_the_first_run_teaches_by_example(talk: Callable[..., str]) -> None:
    shown = talk(CONTROL_D)
    assert "my flash is guide number 110 feet" in shown and "Ctrl-D leaves" in shown


def test_a_question_is_answered_and_the_next_goes_on_from_it(talk: Callable[..., str]) -> None:
    """110 ft at 11 ft is f/10 (guide number arithmetic); a quarter of the power is two stops, f/5."""
    shown = talk("my flash is guide number 110 feet\r", "what aperture at 11 feet?\r", "and at quarter power?\r", CONTROL_D)
    assert "Noted" in shown and "f/10" in shown and "f/5" in shown


@pytest.mark.parametrize("word", ["quit", "exit", "bye", "Quit."])
def test_a_word_leaves(talk: Callable[..., str], word: str) -> None:
    talk(word + ENTER)


def test_help_shows_example_questions(talk: Callable[..., str]) -> None:
    assert "what did I shoot?" in talk("help\r", CONTROL_D)


def test_control_c_clears_the_line_and_twice_leaves(talk: Callable[..., str]) -> None:
    shown = talk("glorp", CONTROL_C, "guide number 80 feet, 10 feet, what aperture\r", CONTROL_C, CONTROL_C)
    assert "glorp" not in shown and "f/8" in shown and shown.count("Ctrl-C once more leaves") == 2


def test_pasted_lines_are_questions_of_their_own(talk: Callable[..., str]) -> None:
    pasted = "\x1b[200~guide number 80 feet, 10 feet, what aperture?\n\nand at 20 feet?\x1b[201~"
    shown = talk(pasted, ENTER, CONTROL_D)
    assert "> and at 20 feet?" in shown and shown.index("f/8") < shown.index("f/4")


def test_escape_sequences_do_not_come_back(talk: Callable[..., str]) -> None:
    shown = talk("\x1b[200~snark\x07whistle \x1b]0;title\x07 \u202e glorp\x1b[201~", ENTER, CONTROL_D)
    assert all(line.isprintable() for line in shown.splitlines())


def offered(assistant: Assistant, typed: str) -> list[str]:
    event = CompleteEvent(completion_requested=True)
    return [c.text for c in face.NextPhrases(assistant).get_completions(Document(typed), event)]


def test_what_can_be_said_next_depends_on_what_is_missing(assistant: Assistant) -> None:
    assert offered(assistant, "")[0] == "my flash is guide number "
    assistant.answer("what aperture at 10 feet?")
    assert offered(assistant, "")[0] == "guide number "
    assistant.answer("guide number 80 feet")
    assert "and at quarter power?" in offered(assistant, "and")


def test_names_of_the_kit_are_offered(assistant: Assistant) -> None:
    assistant.answer("my flash is guide number 80 feet")
    assistant.answer("call it Thunder")
    assert "Thunder" in offered(assistant, "what power for Thu") and "what aperture with Thunder at " in offered(assistant, "what")


def test_the_line_below_shows_what_is_known(assistant: Assistant) -> None:
    assert known_so_far(assistant.conversation, 80) == "nothing known yet"
    assistant.answer("my flash is guide number 80 feet")
    assistant.answer("what aperture at 10 feet?")
    line = known_so_far(assistant.conversation, 80)
    assert "10 ft" in line and "kit: guide number 80 ft" in line
    assert len(known_so_far(assistant.conversation, 20)) <= 20


def test_what_is_shown_fits_a_narrow_terminal() -> None:
    assert max(len(line) for line in wrapped(WELCOME + HELP, 39).split("\n")) <= 39


def test_no_light_stands_behind_the_letters() -> None:
    for style in (face.STYLE, face.PLAIN_STYLE):
        assert all("bg:ansi" not in rule and "bg:#" not in rule and " reverse" not in f" {rule}" for _, rule in style.style_rules)


def test_history_is_for_the_owner_only(tmp_path: Path) -> None:
    history = face.history_in(tmp_path / "home")
    history.append_string("gn 80 feet \ud800")
    assert (tmp_path / "home" / "history").stat().st_mode & 0o777 == 0o600
    assert list(face.history_in(tmp_path / "home").load_history_strings())[0].startswith("gn 80 feet")


@pytest.mark.parametrize("home", [None, Path("/dev/null/nowhere")])
def test_history_stays_in_memory_where_it_cannot_be_kept(home: Path | None) -> None:
    assert isinstance(face.history_in(home), InMemoryHistory)


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal of its own")
@pytest.mark.parametrize("more", [{}, {"NO_COLOR": "1"}, {"TERM": "dumb"}])
def test_the_chat_opens_on_a_terminal(home: Path, more: dict[str, str]) -> None:
    """Question, answer and the way out, on a real pseudo-terminal of 40 columns."""
    import fcntl
    import pty
    import re
    import select
    import struct
    import termios
    import time

    child, terminal = pty.fork()
    if child == 0:
        os.chdir(ROOT)
        os.execve(sys.executable, [sys.executable, "-m", "assistant"], surroundings(home, **{"TERM": "xterm-256color", **more}))
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 40, 0, 0))
    shown, sent, until = b"", 0, time.monotonic() + 15
    keys = [(b"leaves", b"guide number 80 feet, 10 feet, ISO 100, what aperture?\r"), (b"f/8.", b"\x04")]
    while time.monotonic() < until:
        if not select.select([terminal], [], [], 0.1)[0]:
            continue
        try:
            got = os.read(terminal, 65536)
        except OSError:
            break
        if not got:
            break
        shown += got
        if b"\x1b[6n" in got:
            os.write(terminal, b"\x1b[1;1R")
        if sent < len(keys) and keys[sent][0] in shown:
            time.sleep(0.3)
            os.write(terminal, keys[sent][1])
            sent += 1
    if time.monotonic() >= until:
        os.kill(child, 9)
    _, status = os.waitpid(child, 0)
    os.close(terminal)
    assert os.waitstatus_to_exitcode(status) == 0 and b"f/8" in shown and b"Traceback" not in shown, shown.decode("utf-8", "replace")
    colours = set(re.findall(rb"\x1b\[[0-9;]*m", shown))
    assert not any(re.search(rb"\b(?:4[0-7]|48|10[0-7]|7)\b", c) for c in colours), colours
    assert "NO_COLOR" not in more or not any(re.search(rb"3[0-9]|9[0-7]", c) for c in colours), colours
