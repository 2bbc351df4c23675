"""The chat: a line is typed, an answer comes back; what can be said next is offered, what is known stands below."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterable
from contextlib import suppress
from threading import Thread

from prompt_toolkit import PromptSession
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.history import FileHistory, History, InMemoryHistory
from prompt_toolkit.output.color_depth import ColorDepth
from prompt_toolkit.styles import Style, merge_styles

from assistant.faces.asking import ask, open_assistant, with_troubles
from assistant.faces.phrases import HELP, WELCOME, WELCOME_BACK, known_so_far, names_known, next_phrases
from assistant.faces.streams import shown, wrapped

TYPE_CHECKING = False
if TYPE_CHECKING:
    from pathlib import Path

    from assistant.assistant import Assistant
    from assistant.memory.conversation import Conversation

HISTORY_NAME = "history"
LONGEST_WAIT_S = 2.0
"""For what is still being read when the person leaves."""
LEAVING = frozenset({"quit", "exit", "bye", "goodbye", "leave", "q", ":q"})
HELPING = frozenset({"help", "?", "help me", "what can i ask", "what can i say", "how does this work"})
# Readable on a dark set: letters only, no light behind them.
_UNLIT = "noreverse bg:default fg:default"
_PARTS = ("bottom-toolbar", "completion-menu", "completion-menu.completion", "scrollbar.background", "scrollbar.button", "scrollbar.arrow")
PLAIN_STYLE = Style.from_dict({**dict.fromkeys(_PARTS, _UNLIT), "completion-menu.completion.current": f"{_UNLIT} bold underline"})
STYLE = merge_styles([PLAIN_STYLE, Style.from_dict({"prompt": "ansigreen", "bottom-toolbar": "ansibrightblack"})])


class NextPhrases(Completer):
    """Offers what can be said next: whole phrases at the start of a line, names of lights anywhere."""

    def __init__(self, assistant: Assistant) -> None:
        self._assistant = assistant

    @property
    def _talk(self) -> Conversation:
        return self._assistant.conversation

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterable[Completion]:
        """Phrases that continue the line, then names that continue its last word."""
        typed = document.text_before_cursor.lstrip()
        if typed or complete_event.completion_requested:
            for phrase in next_phrases(self._talk):
                if phrase.lower().startswith(typed.lower()) and phrase != typed:
                    yield Completion(phrase, start_position=-len(typed))
        word = document.get_word_before_cursor()
        for name in names_known(self._talk) if word and word != typed else ():
            ending = name.removeprefix("the ")
            if ending.lower().startswith(word.lower()) and ending.lower() != word.lower():
                yield Completion(ending, start_position=-len(word))


def history_in(home: Path | None) -> History:
    """The lines typed before, in a file for the person's own eyes; in memory where none can be had."""
    if home is None:
        return InMemoryHistory()
    from assistant.memory.opening import make_folder

    path = home / HISTORY_NAME
    try:
        make_folder(home)
        os.close(os.open(path, os.O_CREAT | os.O_WRONLY | os.O_APPEND, 0o600))
        os.chmod(path, 0o600)
        path.read_bytes()
    except (OSError, ValueError):
        return InMemoryHistory()
    return _Lines(str(path))


class _Lines(FileHistory):
    """A history whose file may become unwritable: then a line is not kept, and the chat goes on."""

    def store_string(self, string: str) -> None:
        try:
            super().store_string(string.encode("utf-8", "replace").decode())
        except OSError:
            pass


def chat(*, unsaved: bool) -> int:
    """Open the chat on this terminal; its exit status."""
    from assistant.memory.places import home_folder

    assistant = open_assistant(unsaved=unsaved)
    return converse(assistant, history_in(None if unsaved else home_folder()))


def converse(assistant: Assistant, history: History) -> int:
    """Take turns until the person leaves; always 0, for nothing depends on it."""
    session = _session(assistant, history)
    beside = Beside(assistant.prepare)
    session.app.after_render += beside.begin
    _show(WELCOME_BACK if assistant.conversation.kit.facts else WELCOME)
    _show(" ".join(assistant.troubles()))
    interrupted = False
    while True:
        try:
            typed = session.prompt()
        except EOFError:
            return beside.left()
        except KeyboardInterrupt:
            if interrupted:
                return beside.left()
            interrupted = True
            _show("(Ctrl-C once more leaves.)")
            continue
        interrupted = False
        beside.wait()
        if not _take(assistant, typed):
            return beside.left()


class Beside:
    """Work done beside the chat from when the prompt first stands on the screen: hardly anybody types as fast.

    What goes wrong in it is not shown, since it would stand in the midst of the prompt: the first answer needs the same, and tells of it.
    """

    def __init__(self, work: Callable[[], None]) -> None:
        self._work = work
        self._thread: Thread | None = None

    def begin(self, _: object = None) -> None:
        """Begin, once."""
        if self._thread is None:
            self._thread = Thread(target=self._do, daemon=True)
            with suppress(RuntimeError):  # the system gives no more threads: then the first answer reads what it needs
                self._thread.start()

    def _do(self) -> None:
        with suppress(Exception):
            self._work()

    def wait(self, seconds: float | None = None) -> None:
        """Until it is done: a question typed at once needs what is being read, and to read it twice would take longer."""
        if self._thread is not None and self._thread.ident is not None:
            self._thread.join(seconds)

    def left(self) -> int:
        """The exit status of a chat that is left, when nothing is half written."""
        self.wait(LONGEST_WAIT_S)
        return 0


def _session(assistant: Assistant, history: History) -> PromptSession[str]:
    plain = bool(os.environ.get("NO_COLOR"))
    return PromptSession(
        [("class:prompt", "> ")],
        history=history,
        completer=NextPhrases(assistant),
        complete_while_typing=False,
        bottom_toolbar=lambda: known_so_far(assistant.conversation, _width()),
        style=PLAIN_STYLE if plain else STYLE,
        color_depth=ColorDepth.DEPTH_1_BIT if plain else None,
        reserve_space_for_menu=4,
    )


def _take(assistant: Assistant, typed: str) -> bool:
    """Answer what was typed or pasted, a line at a time; False when the person leaves."""
    lines = [line.strip() for line in typed.splitlines() if line.strip()]
    for text in lines:
        word = text.lower().rstrip("!.? ") or text
        if word in LEAVING:
            return False
        if word in HELPING:
            _show(HELP)
        else:
            if len(lines) > 1:
                _show(f"> {text}")
            _show(with_troubles(ask(assistant, text), assistant.troubles()))
    return True


def _show(text: str) -> None:
    """Plain letters, in lines that fit the terminal."""
    if text:
        print(wrapped(shown(text), _width()), flush=True)


def _width() -> int:
    return max(20, min(shutil.get_terminal_size().columns - 1, 100))
