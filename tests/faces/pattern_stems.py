"""The stems of every waiting pattern of the program, worked out from the patterns themselves.

Run it to write assistant/pattern_stems.py anew after a change of patterns:
    PYTHONPATH=. python tests/faces/pattern_stems.py
"""

from __future__ import annotations

import ast
import importlib
import pkgutil
import re
from collections.abc import Iterator
from pathlib import Path

from stems import groups_of, share_of

import assistant
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings

PACKAGE = Path(__file__).resolve().parents[2] / "assistant"
TARGET = PACKAGE / "pattern_stems.py"
HEAD = '"""Letters of which some ("|") must stand in a text that the pattern matches, and ("&") some others. Made from the patterns; see patterns.py."""\n\nSTEMS: dict[str, str] = {\n'
TELLING = 85
"""Of a hundred questions; letters that more of them hold pass by next to nothing."""
MOST_SETS = 3
"""More pass by hardly more."""
ASKING = frozenset({"search", "match", "fullmatch", "finditer", "findall", "sub", "split"})


def patterns() -> dict[str, int]:
    """Every waiting pattern that a module keeps or writes where it is used, and its flags."""
    found: dict[str, int] = {}
    for module in pkgutil.walk_packages(assistant.__path__, "assistant."):
        if not module.name.endswith(("__main__", ".patterns")):  # those that patterns.py keeps are of the texts asked about so far
            for value in vars(importlib.import_module(module.name)).values():
                found.update({one.pattern: one.flags for one in _inside(value)})
    for path in sorted(PACKAGE.rglob("*.py")):
        found.update(_written(ast.parse(path.read_text(encoding="utf-8"))))
    return found


def _inside(value: object) -> list[Pattern]:
    if isinstance(value, Pattern):
        return [value]
    if isinstance(value, Phrasings):
        return [value.whole, *value.parts]
    if isinstance(value, dict):
        return [p for part in (*value, *value.values()) for p in _inside(part)]
    return [p for part in value for p in _inside(part)] if isinstance(value, (tuple, list, frozenset)) else []


def _written(tree: ast.AST) -> Iterator[tuple[str, int]]:
    """Patterns in calls such as patterns.search(r"...", text, re.I)."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and isinstance(node.func.value, ast.Name) and node.func.value.id == "patterns" and node.func.attr in ASKING:
            first = node.args[0]
            if isinstance(first, ast.Constant) and isinstance(first.value, str):
                yield first.value, _flags(node)


def _flags(call: ast.Call) -> int:
    parts = (*call.args[2:], *(word.value for word in call.keywords))
    named = [n.attr for part in parts for n in ast.walk(part) if isinstance(n, ast.Attribute) and isinstance(n.value, ast.Name) and n.value.id == "re"]
    return sum({int(getattr(re, name)) for name in named})


def wanted() -> dict[str, str]:
    """The table; sets with single letters and of such as most questions hold are left out, and so are patterns that have no others."""
    telling = {source: ["|".join(sorted(g)) for g in groups_of(source, flags) if min(map(len, g)) > 1 and share_of(g) < TELLING and not {"|", "&"} & set("".join(g))] for source, flags in sorted(patterns().items())}
    return {source: "&".join(sets[:MOST_SETS]) for source, sets in telling.items() if sets}


if __name__ == "__main__":
    TARGET.write_text(HEAD + "".join(f"    {source!r}: {stems!r},\n" for source, stems in wanted().items()) + "}\n", encoding="utf-8")
