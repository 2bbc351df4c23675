"""A program that writes to a store without end and prints each write once it is acknowledged.

Run as a program by the tests: `python writer.py HOME NAME`. Every tenth write replaces a whole group
of facts in one go; the others each keep one fact and one frame.
"""

from __future__ import annotations

import itertools
import sys
import time
from pathlib import Path

from assistant.memory.store import Frame, KitFact, Store

GROUP = 25


def fact(owner: str, quantity: str, value: int) -> KitFact:
    return KitFact(owner, quantity, str(value), f"{owner} {quantity} {value}" * 20, "2026-11-24T22:51:00")


def main(home: Path, name: str) -> None:
    store = Store.open(home)
    if store.trouble:
        sys.exit(store.trouble)
    for turn in itertools.count(1):
        if turn % 10 == 0:
            kept = [known for known in store.load_kit() if known.owner != f"{name} group"]
            group = [fact(f"{name} group", f"q{number}", turn) for number in range(GROUP)]
            acknowledge(store.save_kit(kept + group), f"group {turn}")
            continue
        acknowledge(store.put(fact(name, f"q{turn}", turn)), f"fact {turn}")
        frame = Frame(0, "2026-11-24T22:51:00", name, f"frame {turn}", "{}")
        acknowledge(store.note_frame(frame), f"frame {turn}")


def acknowledge(trouble: str | None, what: str) -> None:
    if trouble:
        sys.exit(trouble)
    sys.stdout.write(what + "\n")
    sys.stdout.flush()
    time.sleep(0.001)  # a person draws breath too: without it one writer never lets the other have the store


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2])
