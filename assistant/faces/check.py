"""The self-check: whether the grammar, the store, the terminal and the locale are in order, in plain words."""

from __future__ import annotations

import sys
from collections.abc import Callable

from assistant.records import record


@record
class Finding:
    """One thing looked at: whether it is in order, and a sentence."""

    sound: bool
    sentence: str


def check(say: Callable[[str], int]) -> int:
    """Look at everything, say what was found; 0 when all is in order, else 1."""
    from assistant.faces.streams import shown

    status = 0
    for looked_at in LOOKED_AT:
        try:
            finding = looked_at()
        except Exception as fault:
            finding = Finding(False, f"This could not be looked at ({type(fault).__name__}: {fault}).")
        say(shown(("In order: " if finding.sound else "Not in order: ") + finding.sentence))
        status = max(status, 0 if finding.sound else 1)
    return status


def _grammar() -> Finding:
    """The tables are made anew from the grammar's files, and a known question is answered with them."""
    from assistant.assistant import Assistant
    from assistant.language.tables import grammar_folder

    answer = Assistant.create().answer("guide number 80 feet, 10 feet, ISO 100, what aperture")
    if answer.status == "answered" and answer.answers and answer.answers[0].set == "f/8":
        return Finding(True, f"the grammar in {grammar_folder()} reads a question and gets f/8, as it should.")
    return Finding(False, f"the grammar in {grammar_folder()} does not read a simple question as it should.")


def _cache() -> Finding:
    import os

    from assistant.memory.places import cache_folder

    folder = cache_folder()
    nearest = next((part for part in (folder, *folder.parents) if part.exists()), folder)
    if nearest.is_dir() and os.access(nearest, os.W_OK):
        return Finding(True, f"the tables made from the grammar are kept in {folder}.")
    return Finding(False, f"{folder} cannot be written to, so each start is slower; answers are the same.")


def _store() -> Finding:
    from assistant.memory.places import FILE_NAME, home_folder

    path = home_folder() / FILE_NAME
    if not path.exists():
        return _place_for_store()
    from assistant.memory.store import Store

    with Store.open(home_folder()) as store:
        kit, frames = store.load_kit(), store.frames(1_000_000)
        if store.trouble or not store.keeps:
            return Finding(False, store.trouble or f"{path} cannot be kept.")
    return Finding(True, f"the kit ({len(kit)} facts) and the log ({len(frames)} frames) are kept in {path}.")


def _place_for_store() -> Finding:
    import os

    from assistant.memory.places import home_folder

    folder = home_folder()
    nearest = next((part for part in (folder, *folder.parents) if part.exists()), folder)
    if nearest.is_dir() and os.access(nearest, os.W_OK):
        return Finding(True, f"nothing is kept yet; the kit will be kept in {folder}.")
    return Finding(False, f"a kit could not be kept: {folder} cannot be made.")


def _terminal() -> Finding:
    import shutil

    from assistant.faces.streams import is_terminal

    if not (is_terminal(sys.stdin) and is_terminal(sys.stdout)):
        return Finding(True, "this is not a terminal; questions are read a line at a time and answered plainly.")
    try:
        import prompt_toolkit  # noqa: F401
    except ImportError:
        return Finding(False, "prompt_toolkit is not installed, so the chat is plain.")
    return Finding(True, f"the terminal is {shutil.get_terminal_size().columns} letters wide; the chat can be opened.")


def _letters() -> Finding:
    encoding = getattr(sys.stdout, "encoding", None) or "ascii"
    try:
        "½ “f/8” ×".encode(encoding)
    except (UnicodeEncodeError, LookupError):
        return Finding(True, f"the locale writes {encoding}, which lacks some letters; plain ones stand in for them.")
    return Finding(True, f"the locale writes {encoding}; every letter used can be shown.")


LOOKED_AT: tuple[Callable[[], Finding], ...] = (_grammar, _cache, _store, _terminal, _letters)
