"""The command line: what it takes, what it writes, its exit status (contract of the command line)."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
import tomllib
from pathlib import Path

import pytest
from command import QUESTION, ROOT, objects, run, surroundings, text

KEYS = {"heard", "status", "answers", "assumed", "missing", "unplaced", "alternatives", "cautions", "working", "reply"}


def test_a_question_is_answered_once(home: Path) -> None:
    """GN 110 ft at ISO 200 and 7 ft: 110 × √2 / 7 = 22.2, so f/22 (guide number arithmetic)."""
    done = run(home, QUESTION)
    assert (done.returncode, done.stderr) == (0, b"")
    assert "f/22" in text(done).split(".")[0] and text(done).count("\n") == 1


def test_words_need_no_quotes(home: Path) -> None:
    assert run(home, *QUESTION.split()).stdout == run(home, QUESTION).stdout


def test_json_is_one_object_on_one_line(home: Path) -> None:
    done = run(home, "--json", QUESTION)
    (answer,) = objects(done)
    assert set(answer) >= KEYS and answer["heard"] == QUESTION and answer["status"] == "answered"
    assert answer["answers"][0]["set"] == "f/22" and abs(answer["answers"][0]["value"] - 22.223) < 0.001


def test_lines_are_one_conversation_and_an_empty_line_begins_another(home: Path) -> None:
    said = f"{QUESTION}\nand at 14 feet?\n\nand at 14 feet?\n"
    answers = objects(run(home, "--json", "--lines", "--unsaved", stdin=said.encode()))
    assert [a["status"] for a in answers][:2] == ["answered", "answered"] and len(answers) == 3
    assert abs(answers[1]["answers"][0]["value"] - 11.11) < 0.01 and answers[2]["status"] != "answered"


def test_an_empty_line_keeps_the_kit_but_not_when_unsaved(home: Path) -> None:
    said = b"my flash is guide number 80 feet\n\nwhat aperture at 10 feet?\n"
    assert objects(run(home, "--json", "--lines", stdin=said))[1]["status"] == "answered"
    assert objects(run(home, "--json", "--lines", "--unsaved", stdin=said))[1]["status"] == "needs"


def test_lines_are_read_without_being_asked_when_no_terminal_is_there(home: Path) -> None:
    assert run(home, stdin=QUESTION.encode()).stdout == run(home, QUESTION).stdout


def test_each_answer_is_written_before_the_next_line_is_read(home: Path) -> None:
    with subprocess.Popen([sys.executable, "-m", "assistant", "--json", "--lines"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=surroundings(home)) as talk:
        assert talk.stdin and talk.stdout
        talk.stdin.write(QUESTION.encode() + b"\n")
        talk.stdin.flush()
        assert b"answered" in talk.stdout.readline()
        talk.stdin.close()
        assert talk.wait(20) == 0


@pytest.mark.parametrize(("words", "status"), [((QUESTION,), 0), (("my flash is guide number 110 feet",), 0), (("what aperture at 7 feet",), 1), (("glorp the snarkwhistle",), 1), (("guide number 110 feet, 0 feet, what aperture",), 1)])
def test_the_exit_status_says_whether_all_was_answered(home: Path, words: tuple[str, ...], status: int) -> None:
    assert run(home, *words).returncode == status


def test_one_unanswered_line_makes_the_status_one(home: Path) -> None:
    assert run(home, "--lines", stdin=f"what aperture at 7 feet\n\n{QUESTION}\n".encode()).returncode == 1


@pytest.mark.parametrize("wrong", [("--jsn", QUESTION), ("-x",), ("--lines", QUESTION), ("",), ("  ",), ("--json=yes", QUESTION)])
def test_wrong_usage_is_two_and_one_sentence(home: Path, wrong: tuple[str, ...]) -> None:
    done = run(home, *wrong)
    assert (done.returncode, done.stdout) == (2, b"") and done.stderr.startswith(b"stopwise: ") and done.stderr.count(b"\n") == 1


def test_words_with_a_dash_are_words_after_two_dashes(home: Path) -> None:
    assert run(home, "--unsaved", "--", "--what").returncode == 1
    assert run(home, "-1 stop from f/8, what aperture").returncode in (0, 1)


def test_help_names_every_option(home: Path) -> None:
    from assistant.faces.cli import OPTIONS

    done = run(home, "--help")
    assert done.returncode == 0 and all(option in text(done) for option in OPTIONS - {"-h"}) and run(home, "-h").stdout == done.stdout


def test_version_is_that_of_the_distribution(home: Path) -> None:
    wanted = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]
    assert text(run(home, "--version")) == f"stopwise {wanted}\n"


def test_check_says_in_words_that_all_is_in_order(home: Path) -> None:
    done = run(home, "--check")
    assert done.returncode == 0 and text(done).count("In order: ") == 5 and str(home) in text(done)
    assert not (home / "stopwise.db").exists()


def test_check_says_what_is_not_in_order(home: Path) -> None:
    (home / "stopwise.db").mkdir()
    done = run(home, "--check")
    assert done.returncode == 1 and "Not in order: " in text(done)


def test_a_reader_that_leaves_is_no_trouble(home: Path) -> None:
    said = (QUESTION + "\n").encode() * 3000
    with subprocess.Popen([sys.executable, "-m", "assistant", "--lines"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=surroundings(home)) as talk:
        assert talk.stdin and talk.stdout and talk.stderr
        os.set_blocking(talk.stdin.fileno(), False)
        talk.stdin.write(said[:40_000])
        talk.stdout.readline()
        talk.stdout.close()
        try:
            talk.stdin.close()
        except OSError:
            pass
        assert talk.stderr.read() == b"" and talk.wait(30) in (0, 1)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_full_disk_behind_the_output_is_told_in_a_sentence(home: Path) -> None:
    with open("/dev/full", "wb") as full:
        done = subprocess.run([sys.executable, "-m", "assistant", QUESTION], stdout=full, stderr=subprocess.PIPE, env=surroundings(home))
    assert done.returncode == 1 and done.stderr.startswith(b"stopwise: ") and b"Traceback" not in done.stderr and done.stderr.count(b"\n") == 1


@pytest.mark.skipif(sys.platform == "win32", reason="needs a shell that closes streams")
@pytest.mark.parametrize(("closed", "status"), [(">&-", 1), ("2>&-", 0), ("<&-", 0), ("<&- >&- 2>&-", 1)])
def test_closed_streams_are_no_trouble(home: Path, closed: str, status: int) -> None:
    done = subprocess.run(["sh", "-c", f'exec "$0" -m assistant "$1" {closed}', sys.executable, QUESTION], capture_output=True, env=surroundings(home))
    assert done.returncode == status and b"Traceback" not in done.stderr and b"Exception" not in done.stderr


@pytest.mark.skipif(sys.platform == "win32", reason="needs signals")
def test_control_c_ends_quietly(home: Path) -> None:
    heard = lambda: signal.signal(signal.SIGINT, signal.default_int_handler)  # noqa: E731  a program begun in the background has it ignored
    with subprocess.Popen([sys.executable, "-m", "assistant", "--lines"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=surroundings(home), preexec_fn=heard) as talk:
        assert talk.stdin and talk.stdout and talk.stderr
        talk.stdin.write(QUESTION.encode() + b"\n")
        talk.stdin.flush()
        talk.stdout.readline()
        talk.send_signal(signal.SIGINT)
        assert talk.wait(20) == 130 and talk.stderr.read() == b""


def test_a_megabyte_on_one_line_is_answered_in_good_time(home: Path) -> None:
    started = time.monotonic()
    answers = objects(run(home, "--json", "--lines", stdin=b"x" * 1_000_000 + b"\n" + b"feet 7 and " * 100_000 + b"\n" + QUESTION.encode() + b"\n"))
    assert len(answers) == 3 and answers[2]["status"] == "answered" and all(len(a["reply"]) < 20_000 for a in answers)
    assert time.monotonic() - started < 20


def test_a_line_without_end_is_cut(home: Path) -> None:
    done = run(home, "--lines", stdin=b"x" * 9_000_000 + b"\n" + QUESTION.encode())
    assert text(done).count("\n") == 2 and "f/22" in text(done)


STRANGE = [b"\xff\xfe7\x00 feet", b"\x1b[31mguide number 110\x07 feet \x9b5m", b"\xe2\x80\xae7 feet\xe2\x80\xac", b"\x00\x01\x02\x7f", "ＧＮ １１０ 日本語 🚣".encode(), b"\xed\xa0\x80 lone half", "7 feet\u2028and\x0b8".encode()]


@pytest.mark.parametrize("strange", STRANGE)
@pytest.mark.parametrize("flags", [(), ("--json",)])
def test_no_control_character_comes_back(home: Path, strange: bytes, flags: tuple[str, ...]) -> None:
    for done in (run(home, *flags, "--lines", stdin=strange + b"\n"), *([] if b"\0" in strange else [run(home, *flags, strange)])):
        lines = text(done).splitlines()
        assert len(lines) == 1 and lines[0].isprintable() and done.returncode in (0, 1)
        assert not flags or objects(done)[0]["reply"].isprintable()


@pytest.mark.parametrize("locale", [{"LC_ALL": "C"}, {"LC_ALL": "POSIX", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}, {"PYTHONIOENCODING": "ascii"}, {"PYTHONIOENCODING": "latin-1"}, {"LC_ALL": "xx_XX.nothing"}, {"PYTHONIOENCODING": "utf-16"}])
def test_any_locale_will_do(home: Path, locale: dict[str, str]) -> None:
    done = run(home, "what aperture at ½ foot in the pouring rain glorp", **locale)
    assert done.returncode in (0, 1) and done.stdout and done.stderr == b""


def test_letters_a_terminal_lacks_are_told_in_plain_ones(home: Path) -> None:
    done = run(home, "snarkwhistle", PYTHONIOENCODING="ascii")
    assert b'"snarkwhistle"' in done.stdout and b"?snark" not in done.stdout


def test_a_byte_order_mark_is_not_a_word(home: Path) -> None:
    assert objects(run(home, "--json", "--lines", stdin=b"\xef\xbb\xbf" + QUESTION.encode() + b"\r\n"))[0]["heard"] == QUESTION


def test_of_a_very_long_text_the_reply_says_how_much_was_read(home: Path) -> None:
    (answer,) = objects(run(home, "--json", "--lines", stdin=QUESTION.encode() + b" and then" * 2000))
    assert "Only the first 6,000 letters were read." in answer["reply"] and answer["heard"].count("then") == 2000
