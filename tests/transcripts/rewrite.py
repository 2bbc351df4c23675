"""Transcripts: conversations in transcripts_demo/, their replies made by the program.

  python -m tests.transcripts.rewrite            writes the replies anew, from the top folder of the repository

A file is one person's evening: lines "you: …" and "stopwise: …"; a line that begins with "#" is a remark;
an empty line begins a new conversation, which keeps the kit and the log; lines of a reply after the first are indented. The README quotes from here.
The "you" lines are written by hand. After a change of wording: rewrite, read the difference, commit it.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from assistant.assistant import Assistant
from assistant.faces.asking import ask

REPO = Path(__file__).resolve().parents[2]
FOLDER, README = REPO / "transcripts_demo", REPO / "README.md"
YOU, ANSWER = "you: ", "stopwise: "
INDENT = "  "


def transcripts() -> list[Path]:
    """Every transcript, in name order."""
    return sorted(FOLDER.glob("*.txt"))


def replayed(text: str) -> str:
    """The same transcript with the replies the program gives today."""
    with tempfile.TemporaryDirectory() as home:
        return "\n".join(_lines(text, Assistant.create(None, Path(home)))) + "\n"


def _lines(text: str, assistant: Assistant) -> Iterator[str]:
    for line in text.rstrip("\n").split("\n"):
        if line.startswith(YOU):
            yield line
            yield ANSWER + ask(assistant, line.removeprefix(YOU)).reply.replace("\n", "\n" + INDENT)
        elif line.startswith("#"):
            yield line
        elif not line.strip():
            assistant.new_conversation()
            yield ""


def exchanges(text: str) -> list[tuple[str, str]]:
    """Each thing said and its reply."""
    found: list[tuple[str, str]] = []
    replying = False
    for line in text.splitlines():
        if line.startswith(YOU):
            found.append((line.removeprefix(YOU), ""))
        elif line.startswith(ANSWER):
            found[-1] = (found[-1][0], line.removeprefix(ANSWER))
        elif line.startswith(INDENT) and replying:
            found[-1] = (found[-1][0], found[-1][1] + "\n" + line.removeprefix(INDENT))
        replying = line.startswith(ANSWER) or (replying and line.startswith(INDENT))
    return found


def requoted(readme: str, known: list[tuple[str, str]]) -> str:
    """The README with the replies of the transcripts under what it quotes of them."""
    for said, reply in exchanges(readme):
        today = [now for asked, now in known if asked == said]
        if today and reply not in today:
            readme = readme.replace(f"{YOU}{said}\n{ANSWER}{reply}\n", f"{YOU}{said}\n{ANSWER}{today[0]}\n")
    return readme


def main() -> int:
    """Write every transcript and the README's quotations anew; says which changed."""
    for path in (*transcripts(), README):
        old = path.read_text(encoding="utf-8")
        known = [pair for other in transcripts() for pair in exchanges(other.read_text(encoding="utf-8"))]
        new = requoted(old, known) if path == README else replayed(old)
        if new != old:
            path.write_text(new, encoding="utf-8")
            print(f"rewritten: {path.name}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
