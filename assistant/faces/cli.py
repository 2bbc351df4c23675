"""stopwise: ask about manual flash exposure in plain words.

  stopwise                  opens the chat
  stopwise "QUESTION"       answers once and ends
  stopwise --lines          reads questions from standard input, one a line, as one
                            conversation; an empty line starts a new one

  --json                    one JSON object a line instead of sentences
  --unsaved                 keeps nothing: empty kit and log, held in memory only
  --check                   says whether this program is in order here, and where it keeps things
  --version                 says which version this is
  --help                    says this

For example:

  stopwise "guide number 110 feet, 7 feet, ISO 200, what aperture"
  stopwise "my flash is guide number 110 feet"
  stopwise "what power for f/4 at 6 feet?"

Your kit and the log of your frames are kept in your own data folder, or in the folder
that STOPWISE_HOME names. Words that begin with a dash stand after "--".

Exit status: 0 when every question was answered or noted, 1 when one was not, 2 for wrong usage.
"""

from __future__ import annotations

import gc
import sys

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterable

    from assistant.assistant import Assistant

OPTIONS = frozenset({"--json", "--lines", "--unsaved", "--check", "--version", "--help", "-h"})
INTERRUPTED = 130


def main(arguments: list[str] | None = None) -> int:
    """The command; returns its exit status. Never ends in a traceback."""
    gc.disable()  # one question makes little to clear away, and looking for it takes a tenth of its time
    try:
        from assistant.faces.streams import prepare_output, silence

        prepare_output()
        return _run(sys.argv[1:] if arguments is None else arguments)
    except KeyboardInterrupt:
        silence(sys.stdout)
        return INTERRUPTED
    except BrokenPipeError:
        silence(sys.stdout)
        return 1
    except OSError as error:
        silence(sys.stdout)
        _complain(f"the answer could not be written ({error.strerror})")
        return 1
    except Exception as fault:  # ours alone: a part that is missing or broken
        _complain(f"this program is not in order ({type(fault).__name__}: {fault}); stopwise --check says more")
        return 1
    finally:
        gc.enable()


def _run(given: list[str]) -> int:
    options, words, wrong = _sorted_out(given)
    if wrong:
        _complain(f"{wrong}; see stopwise --help")
        return 2
    if options & {"--help", "-h"}:
        return _say(str(__doc__).rstrip())
    if "--version" in options:
        from assistant import __version__

        return _say(f"stopwise {__version__}")
    if "--check" in options:
        from assistant.faces.check import check

        return check(_say)
    return _serve(options, words)


def _sorted_out(given: list[str]) -> tuple[frozenset[str], list[str], str]:
    """Options, words, and what is wrong with them ("" when nothing is)."""
    end = given.index("--") if "--" in given else len(given)
    options = frozenset(a for a in given[:end] if a in OPTIONS)
    words = [a for a in given[:end] if a not in OPTIONS] + given[end + 1 :]
    strange = next((a for a in given[:end] if a not in OPTIONS and _looks_like_option(a)), "")
    if strange:
        return options, words, f"there is no option {_shown(strange)}"
    if words and not any(w.strip() for w in words):
        return options, words, "the question is empty"
    if words and "--lines" in options:
        return options, words, f"--lines reads the questions from standard input, but “{_shown(words[0])}” is on the command line"
    return options, words, ""


def _looks_like_option(word: str) -> bool:
    """A dash and letters without a space: "--jsn", "-x". "-1 stop" is a question."""
    return word.startswith("-") and len(word) > 1 and " " not in word and not word.lstrip("-")[:1].isdigit() and word.lstrip("-")[:1] not in (".", "½", "⅓", "⅔", "¼", "¾")


def _serve(options: frozenset[str], words: list[str]) -> int:
    from assistant.faces.streams import is_terminal, lines_of, standard_input, words_given

    as_json, unsaved = "--json" in options, "--unsaved" in options
    at_keyboard = is_terminal(sys.stdin)
    if not words and "--lines" not in options and at_keyboard:
        if as_json:
            _complain("--json needs a question, or --lines; see stopwise --help")
            return 2
        if is_terminal(sys.stdout):
            from assistant.faces.chat import chat

            gc.enable()
            return chat(unsaved=unsaved)
    from assistant.faces.asking import open_assistant

    assistant = open_assistant(unsaved=unsaved)
    if words:
        status = _answer(assistant, words_given(words), as_json)
        gc.freeze()  # what is left the system takes back whole; to go through it first would take as long as reading the question
        return status
    gc.enable()
    source = standard_input()
    return _converse(assistant, lines_of(source) if source else (), as_json, keep_kit=not unsaved)


def _converse(assistant: Assistant, lines: Iterable[str], as_json: bool, *, keep_kit: bool) -> int:
    """One conversation after another; the worst exit status of all."""
    status = 0
    for text in lines:
        if text.strip():
            status = max(status, _answer(assistant, text, as_json))
        else:
            assistant.new_conversation(keep_kit=keep_kit)
    return status


def _answer(assistant: Assistant, text: str, as_json: bool) -> int:
    from assistant.faces.asking import ask, with_troubles

    answer = ask(assistant, text)
    troubles = assistant.troubles()
    if as_json:
        for trouble in troubles:
            _complain(trouble)
    written = _say(answer.as_json() if as_json else with_troubles(answer, troubles))
    return max(written, 0 if answer.good else 1)


def _say(text: str) -> int:
    """Write it now; 1 when there is no standard output to write to."""
    if sys.stdout is None:
        return 1
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
    return 0


def _complain(sentence: str) -> None:
    """One sentence on standard error, where there is one."""
    try:
        if sys.stderr is not None:
            sys.stderr.write(f"stopwise: {_shown(sentence)}\n")
            sys.stderr.flush()
    except OSError:
        pass


def _shown(text: str) -> str:
    from assistant.faces.streams import shown, words_given

    return shown(words_given([text]))
