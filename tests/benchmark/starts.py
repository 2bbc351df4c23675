"""From a standing start: whole processes, by turns with the libraries they are compared to."""

from __future__ import annotations

import os
import pty
import select
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from tests.benchmark.figure import Figure, median, milliseconds

ROOT = Path(__file__).resolve().parents[2]
QUESTION = "guide number 110 feet, 7 feet, ISO 200, what aperture"
ASKING = [sys.executable, "-m", "assistant", QUESTION]
CHATTING = [sys.executable, "-m", "assistant"]
LARK = [sys.executable, "-c", "import lark"]
TOOLKIT = [sys.executable, "-c", "import prompt_toolkit"]
LONGEST_WAIT = 30.0


@contextmanager
def at_home() -> Iterator[dict[str, str]]:
    """The environment of a person who has asked before: the grammar's tables are kept."""
    with tempfile.TemporaryDirectory() as home:
        surroundings = {**os.environ, "STOPWISE_HOME": home, "PYTHONPATH": str(ROOT), "TERM": "xterm"}
        surroundings.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program finds its modules compiled, and so do the libraries
        for command in (ASKING, LARK, TOOLKIT, ASKING):
            _whole(command, surroundings)
        _until_prompt(surroundings)
        yield surroundings


def _whole(command: list[str], surroundings: Mapping[str, str]) -> float:
    """Seconds from the start of a command to its end."""
    begun = time.perf_counter()
    subprocess.run(command, env=surroundings, cwd=ROOT, check=True, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL)
    return time.perf_counter() - begun


def _until_prompt(surroundings: Mapping[str, str]) -> float:
    """Seconds from the start of the chat to its prompt on the screen; the chat is left by Ctrl-D."""
    ours, theirs = pty.openpty()
    begun = time.perf_counter()
    with subprocess.Popen(CHATTING, env=surroundings, cwd=ROOT, stdin=theirs, stdout=theirs, stderr=theirs, start_new_session=True) as chat:
        seen, shown = b"", 0.0
        while not shown and time.perf_counter() - begun < LONGEST_WAIT:
            if select.select([ours], [], [], 1.0)[0]:
                seen += os.read(ours, 65536)
            shown = time.perf_counter() - begun if b"> " in seen else 0.0
        _leave(chat, ours)
    os.close(ours)
    os.close(theirs)
    if not shown:
        raise RuntimeError(f"the chat did not open: {seen!r}")
    return shown


def _leave(chat: subprocess.Popen[bytes], screen: int) -> None:
    os.write(screen, b"\x04")
    for _ in range(100):
        if chat.poll() is not None:
            return
        if select.select([screen], [], [], 0.05)[0]:
            os.read(screen, 65536)
    chat.terminate()


def _by_turns(times: int, one: Callable[[], float], other: Callable[[], float]) -> tuple[float, float]:
    """Medians of two measurements taken by turns, so that a busy moment slows both."""
    pairs = [(one(), other()) for _ in range(times)]
    return median(p[0] for p in pairs), median(p[1] for p in pairs)


def cold(*, quick: bool) -> list[Figure]:
    """One question, a whole process, against the import of Lark."""
    with at_home() as surroundings:
        question, lark = _by_turns(10 if quick else 60, lambda: _whole(ASKING, surroundings), lambda: _whole(LARK, surroundings))
    return [Figure("one question from a cold start, whole process", milliseconds(question), f'`python -c "import lark"` {milliseconds(lark)}', question / lark, 1.5)]


def chat(*, quick: bool) -> list[Figure]:
    """The chat's prompt on the screen, against the import of prompt_toolkit."""
    with at_home() as surroundings:
        opened, toolkit = _by_turns(8 if quick else 40, lambda: _until_prompt(surroundings), lambda: _whole(TOOLKIT, surroundings))
    return [Figure("chat: prompt on the screen", milliseconds(opened), f'`python -c "import prompt_toolkit"` {milliseconds(toolkit)}', opened / toolkit, 1.3)]


# VmHWM is of the process alone; the peak that wait4 tells contains that of the process it was started from.
_PEAK = "\nprint(next(line.split()[1] for line in open('/proc/self/status') if line.startswith('VmHWM')), file=sys.stderr)"


def _peak(program: str, surroundings: Mapping[str, str]) -> float:
    """The most memory that a program held, in MB."""
    done = subprocess.run([sys.executable, "-c", "import sys\n" + program + _PEAK], env=surroundings, cwd=ROOT, check=True, capture_output=True, text=True)
    return int(done.stderr.split()[-1]) / 1024


def memory(*, quick: bool) -> list[Figure]:
    """The peak memory of one cold question, against the import of Lark."""
    with at_home() as surroundings:
        question, lark = _by_turns(3 if quick else 9, lambda: _peak(f"from assistant.faces.cli import main; main([{QUESTION!r}])", surroundings), lambda: _peak("import lark", surroundings))
    return [Figure("peak memory of one cold question", f"{question:.1f} MB", f"`import lark` {lark:.1f} MB", question / lark, 2.0)]
