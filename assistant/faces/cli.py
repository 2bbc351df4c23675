"""stopwise: ask about manual flash exposure in plain words.

  stopwise                  opens the chat
  stopwise "QUESTION"       answers once and ends
  stopwise --lines          reads questions from standard input, one a line, as one
                            conversation; an empty line starts a new one
  --json                    one JSON object a line instead of sentences
  --unsaved                 keeps nothing: empty kit and log, held in memory only

Exit status: 0 when every question was answered or noted, 1 when one was not, 2 for wrong usage.
"""

from __future__ import annotations

import sys
from typing import Iterable, TextIO

from assistant.answer import Answer
from assistant.assistant import Assistant

FLAGS = {"--json", "--lines", "--unsaved", "--help", "-h", "--version"}


def main(arguments: list[str] | None = None) -> int:
    """The command; returns its exit status."""
    given = sys.argv[1:] if arguments is None else arguments
    flags = {a for a in given if a.startswith("-") and a in FLAGS}
    words = [a for a in given if a not in flags]
    unknown = [w for w in words if w.startswith("--")]
    if unknown:
        print(f"stopwise: unknown option {unknown[0]}; see stopwise --help", file=sys.stderr)
        return 2
    if flags & {"--help", "-h"}:
        print(__doc__)
        return 0
    assistant = _assistant()
    if "--lines" in flags:
        return _lines(assistant, sys.stdin, sys.stdout, "--json" in flags, "--unsaved" in flags)
    if words:
        return _show(assistant.answer(" ".join(words)), "--json" in flags, sys.stdout)
    return _lines(assistant, sys.stdin, sys.stdout, "--json" in flags, "--unsaved" in flags)


def _assistant() -> Assistant:
    from assistant.memory.store import cache_folder

    return Assistant.create(cache_folder())


def _show(answer: Answer, as_json: bool, out: TextIO) -> int:
    print(answer.as_json() if as_json else answer.reply, file=out, flush=True)
    return 0 if answer.good else 1


def _lines(assistant: Assistant, source: Iterable[str], out: TextIO, as_json: bool, unsaved: bool) -> int:
    status = 0
    for line in source:
        text = line.rstrip("\n")
        if not text.strip():
            assistant.new_conversation(keep_kit=not unsaved)
            continue
        status = max(status, _show(assistant.answer(text), as_json, out))
    return status
