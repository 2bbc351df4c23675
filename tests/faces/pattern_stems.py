"""The stems of every waiting pattern of the program, worked out from the patterns themselves.

Run it to write assistant/language/pattern_stems.py anew after a change of patterns:
    PYTHONPATH=. python tests/faces/pattern_stems.py
"""

from __future__ import annotations

import importlib
import pkgutil
from pathlib import Path

from stems import stems_of

import assistant
from assistant.language.patterns import Pattern

TARGET = Path(__file__).resolve().parents[2] / "assistant" / "language" / "pattern_stems.py"
HEAD = '"""Letters of which some must stand in a text that a pattern matches. Made from the patterns; see patterns.py."""\n\nSTEMS: dict[str, tuple[str, ...]] = {\n'


def patterns() -> dict[str, Pattern]:
    """Every waiting pattern that a module keeps, by its source."""
    found: dict[str, Pattern] = {}
    for module in pkgutil.walk_packages(assistant.__path__, "assistant."):
        if not module.name.endswith("__main__"):
            for value in vars(importlib.import_module(module.name)).values():
                for one in _inside(value):
                    found[one.pattern] = one
    return found


def _inside(value: object) -> list[Pattern]:
    if isinstance(value, Pattern):
        return [value]
    if isinstance(value, dict):
        return [p for part in (*value, *value.values()) for p in _inside(part)]
    return [p for part in value for p in _inside(part)] if isinstance(value, (tuple, list, frozenset)) else []


def wanted() -> dict[str, tuple[str, ...]]:
    """The table; patterns with no certain letters, or with single ones only, are left out."""
    table = {source: tuple(sorted(stems_of(source, one.flags))) for source, one in sorted(patterns().items())}
    return {source: stems for source, stems in table.items() if stems and min(map(len, stems)) > 1}


if __name__ == "__main__":
    TARGET.write_text(HEAD + "".join(f"    {source!r}: {stems!r},\n" for source, stems in wanted().items()) + "}\n")
