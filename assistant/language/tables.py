"""The grammar's tables: made once by Lark from grammar/, kept in the user's own cache folder.

Lark reads the joined grammar files and makes the LALR(1) table; the table and the lexicon
are stored as JSON (never pickled) under a name that holds a digest of the grammar files,
so that a changed grammar is never read with an old table. A cold start reads the JSON and
does not import Lark.
"""

from __future__ import annotations

import json
import os

from assistant.language.lexicon import Lexicon
from assistant.records import field, record

TYPE_CHECKING = False
if TYPE_CHECKING:  # each of these takes longer to import than a table to read
    from pathlib import Path
    from typing import Any

FORMAT = 3  # raised when the shape of the stored tables changes


class Shapes:
    """What parsing made of the runs of token types that it saw, found by one type after the other."""

    __slots__ = ("many", "tree")

    def __init__(self) -> None:
        self.tree: dict[str, Any] = {}  # type -> the shape of the run that ends here, or the tree of the types that may follow
        self.many = 0


@record
class Tables:
    """What parsing needs: actions and gotos by state, rules, and the lexicon."""

    actions: list[dict[str, int]]  # terminal -> state + 1 to shift to, or -(rule + 1) to reduce by
    rules: list[tuple[str, int, str]]  # origin, length, name of the node
    start: int
    end: int
    lexicon: Lexicon
    shapes: Shapes = field(default_factory=Shapes, repr=False)


def grammar_folder() -> Path:
    """Where the grammar files are: inside the installed package, or beside it in a checkout."""
    from pathlib import Path

    return Path(_grammar_place())


def _grammar_place() -> str:
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    inside = os.path.join(package, "grammar")
    return inside if os.path.isdir(inside) else os.path.join(os.path.dirname(package), "grammar")


def _grammar_files() -> list[str]:
    folder = _grammar_place()
    return [os.path.join(folder, name) for name in sorted(os.listdir(folder)) if name.endswith(".lark") or name.startswith("words")]


def load_tables(cache: str | os.PathLike[str] | None = None) -> Tables:
    """The tables, from the cache when it holds them for these very grammar files."""
    files = _grammar_files()
    kept = os.path.join(cache, f"tables-{_digest(files)}.json") if cache else ""
    stored = _stored(kept) if kept else None
    if stored is None:
        stored = build(files)
        if kept:
            _keep(kept, stored)
    rules = [(origin, length, name) for origin, length, name in stored["rules"]]
    return Tables(stored["actions"], rules, stored["start"], stored["end"], Lexicon(stored["lexicon"]))


def _digest(files: list[str]) -> str:
    """Tells these files, and what makes the tables of them, from any others; a checksum will do, for the folder is the person's own."""
    from zlib import adler32, crc32

    parts = []
    for path in (*files, os.path.join(os.path.dirname(os.path.abspath(__file__)), "building.py")):
        try:
            with open(path, "rb") as file:
                parts.append(os.path.basename(path).encode() + b"\0" + file.read())
        except FileNotFoundError:  # installed without sources
            continue
    whole = b"\0".join(parts)
    return f"{FORMAT}-{len(whole):x}-{crc32(whole):08x}{adler32(whole):08x}"


def _stored(path: str) -> dict[str, Any] | None:
    """A stored table, only if it is a plain file of our own that nobody else may write."""
    try:
        with open(path, "rb") as file:
            status = os.fstat(file.fileno())
            mine = not hasattr(os, "getuid") or status.st_uid == os.getuid()
            if not mine or status.st_mode & 0o022:
                return None
            found = json.load(file)
    except (OSError, ValueError, RecursionError):
        return None
    whole = isinstance(found, dict) and found.get("format") == FORMAT and all(isinstance(found.get(part), kind) for part, kind in _PARTS.items())
    return found if whole else None


_PARTS = {"actions": list, "rules": list, "start": int, "end": int, "lexicon": dict}
"""What a stored table holds; one that was cut off or changed since is made anew."""


def _keep(kept: str, tables: dict[str, Any]) -> None:
    """Store the tables whole or not at all; a cache that cannot be written is no trouble."""
    from pathlib import Path

    path = Path(kept)
    part = path.with_suffix(f".{os.getpid()}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        with open(handle, "w") as file:
            json.dump(tables, file, separators=(",", ":"))
        os.replace(part, path)
        for old in path.parent.glob("tables-*.json"):
            if old != path:
                old.unlink(missing_ok=True)
    except OSError:
        part.unlink(missing_ok=True) if part.exists() else None


def build(files: list[str]) -> dict[str, Any]:
    """The tables of these grammar files, made by Lark."""
    from pathlib import Path

    from assistant.language.building import build_lexicon, build_parser

    grammar = [Path(p) for p in files if p.endswith(".lark")]
    words = [Path(p) for p in files if p.endswith(".toml")]
    return {"format": FORMAT, **build_parser(grammar), "lexicon": build_lexicon(words)}
