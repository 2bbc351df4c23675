"""The stems that any text heard by the safety tables must contain, worked out from their patterns.

Run it to write assistant/safety/stems.py anew after a change of those tables:
    PYTHONPATH=. python tests/faces/stems.py
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from assistant.safety.questions import ASPECTS
from assistant.safety.triggers import TRIGGERS

TARGET = Path(__file__).resolve().parents[2] / "assistant" / "safety" / "stems.py"
COMMON = frozenset("the unit head got get goo old went flash set on in to at of light camera power look new open meter day long fast after drop up down can over red wall".split())
"""Letters that half of all questions contain: a pattern is judged by others where it can be."""


def stems_of(pattern: str, flags: int = 0) -> frozenset[str]:
    """Letters of which some must stand in any text that the pattern matches; empty when none are certain.

    >>> sorted(stems_of(r"(?:wet|damp) \\w+"))
    ['damp', 'wet']
    """
    return _needed(re._parser.parse(pattern, flags))  # type: ignore[attr-defined]


def _needed(sequence: Iterable[Any]) -> frozenset[str]:
    found: list[frozenset[str]] = []
    run = ""
    for operation, value in sequence:
        kind = str(operation)
        if kind == "LITERAL":
            run += chr(value).lower()
            continue
        if kind in ("AT", "ASSERT_NOT"):  # these take no room
            continue
        if run and kind == "BRANCH":  # "h(?:z|ertz)"
            found.append(frozenset(run + _leading(branch) for branch in value[1]))
        found.append(frozenset({run} - {""}))
        found.append(_inside(kind, value))
        run = ""
    found.append(frozenset({run} - {""}))
    return max((f for f in found if f), key=_worth, default=frozenset())


def _inside(kind: str, value: Any) -> frozenset[str]:
    if kind == "BRANCH":
        parts = [_needed(branch) for branch in value[1]]
        return frozenset().union(*parts) if all(parts) else frozenset()
    if kind in ("MAX_REPEAT", "MIN_REPEAT"):
        return _needed(value[2]) if value[0] >= 1 else frozenset()
    return _needed(value[3]) if kind == "SUBPATTERN" else _needed(value[1]) if kind == "ASSERT" else frozenset()


def _leading(sequence: Iterable[Any]) -> str:
    run = ""
    for operation, value in sequence:
        if str(operation) != "LITERAL":
            break
        run += chr(value).lower()
    return run


def _worth(stems: frozenset[str]) -> tuple[bool, int, int]:
    return not any(s.strip() in COMMON or len(s.strip()) < 3 for s in stems), min(map(len, stems)), -len(stems)


def wanted() -> frozenset[str]:
    """One set of stems for each trigger and each prepared answer, together; stems that contain another are left out."""
    sets = [stems_of(t.pattern) for t in TRIGGERS] + [max((stems_of(p) for p in a.hears), key=lambda s: _worth(s) if s else (False, 0, 0)) for a in ASPECTS]
    assert all(sets), "a pattern with no certain letters: the tables can no longer be passed by"
    stems = frozenset().union(*sets)
    return frozenset(s for s in stems if not any(other != s and other in s for other in stems))


HEAD = '''"""Letters without which no hazard is heard: a text with none of them need not wait for the safety tables.

Made from the patterns of those tables; a test holds the two together and says how to make it anew.
"""

from __future__ import annotations

STEMS = (
'''
TAIL = ''')


def may_concern_safety(text: str) -> bool:
    """Whether the safety tables could hear anything in this text; True when in doubt.

    >>> may_concern_safety("guide number 110 feet, 7 feet, ISO 200"), may_concern_safety("it's raining")
    (False, True)
    """
    if not text.isascii():
        return True
    said = " ".join(text.lower().split())
    for stem in STEMS:  # a plain loop: this is asked of every question
        if stem in said:
            return True
    return False
'''

if __name__ == "__main__":
    rows = [repr(stem).replace("'", '"') + "," for stem in sorted(wanted())]
    lines = ["    " + " ".join(rows[n : n + 12]) for n in range(0, len(rows), 12)]
    TARGET.write_text(HEAD + "\n".join(lines) + "\n" + TAIL)
