"""Asking the assistant from any face: an answer that may be shown, whatever happens on the way."""

from __future__ import annotations

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.faces.streams import shown
from assistant.records import replace

_FAULT = "I could not work that out: the fault is in this program ({name}), not in what you said. Please say it in other words."


def open_assistant(*, unsaved: bool) -> Assistant:
    """The assistant of the person whose home this is; `unsaved` keeps nothing."""
    from assistant.memory.places import cache_place, home_place

    return Assistant.create(cache_place(), None if unsaved else home_place())


def ask(assistant: Assistant, text: str) -> Answer:
    """The answer, fit to be shown. A fault of ours becomes an answer too: nobody on set can use a traceback."""
    try:
        found = assistant.answer(text)
    except Exception as fault:
        found = Answer(heard=text, status="not_understood", reply=_FAULT.format(name=type(fault).__name__), unplaced=tuple(text.split()[:12]))
    return replace(found, reply=shown(found.reply))


def with_troubles(answer: Answer, troubles: tuple[str, ...]) -> str:
    """The reply, and after it what went wrong with keeping."""
    return " ".join([answer.reply, *map(shown, troubles)])
