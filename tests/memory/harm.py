"""What the tests of bad disks and strange files share: two facts, a fingerprint, and what must hold."""

from __future__ import annotations

import hashlib
import re
from pathlib import Path

from assistant.memory.store import Frame, KitFact, Store

HEAD = KitFact("the big head", "guide_number", "110", "it is 110", "2026-11-24T22:51:00")
LITTLE = KitFact("the little one", "guide_number", "60", "it is 60", "2026-11-24T22:52:00")


def print_of(path: Path) -> tuple[str, int]:
    """A fingerprint of the file's bytes and its time of change."""
    return hashlib.sha256(path.read_bytes()).hexdigest(), path.stat().st_mtime_ns


def assert_works_in_memory(kept: Store, *words: str) -> None:
    assert not kept.keeps
    assert kept.trouble is not None
    assert kept.trouble.startswith("What you tell me is forgotten when you leave: ")
    assert kept.trouble.endswith(".")
    assert "{" not in kept.trouble
    assert all(word in kept.trouble for word in words), kept.trouble
    assert kept.put(LITTLE) is None
    assert LITTLE in kept.load_kit()
    assert kept.note_frame(Frame(0, "t", "roll", "text", "{}")) is None


def set_aside(path: Path, trouble: str | None, word: str) -> Path:
    """The file that the sentence names, after a new store was begun in its stead."""
    assert trouble is not None
    named = re.search(rf"stopwise\.{word}-\d{{8}}-\d{{4}}(-\d+)?\.db", trouble)
    assert named, trouble
    return path.with_name(named[0])
