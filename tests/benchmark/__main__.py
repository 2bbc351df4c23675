"""The command: measures, prints the table, and says by its exit status whether every bar is met."""

from __future__ import annotations

import os
import platform
import sys
from pathlib import Path

from tests.benchmark import growth, starts, warm
from tests.benchmark.figure import Figure, table

README = Path(__file__).resolve().parents[2] / "README.md"
BEGIN, END = "<!-- benchmark: begin -->\n", "<!-- benchmark: end -->"


def machine() -> str:
    """The machine in a sentence."""
    import lark

    return f"{os.cpu_count()} cores ({platform.machine()}), {platform.system()}, Python {platform.python_version()}, Lark {lark.__version__}"


def measured(*, quick: bool) -> list[Figure]:
    """Every figure, told on standard error as it comes; memory first, while this process is small."""
    found: list[Figure] = []
    for part in (starts.memory, starts.cold, starts.chat, warm.against_lark, warm.spread, growth.with_words, growth.with_lights, growth.with_turns):
        for figure in part(quick=quick):
            print(figure.row(), file=sys.stderr, flush=True)
            found.append(figure)
    return found


def main(arguments: list[str]) -> int:
    """0 when every bar is met, else 1."""
    figures = measured(quick="--quick" in arguments)
    text = table(figures) + f"\nMeasured on {machine()}.\n"
    print(text)
    if "--write" in arguments:
        page = README.read_text(encoding="utf-8")
        before, _, rest = page.partition(BEGIN)
        _, _, after = rest.partition(END)
        README.write_text(before + BEGIN + "`python -m tests.benchmark` measured, in one run:\n\n" + text + END + after, encoding="utf-8")
    return 0 if all(f.met for f in figures) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
