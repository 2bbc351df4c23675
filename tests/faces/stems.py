"""The stems that any text heard by the safety tables must contain, worked out from their patterns.

Run it to write assistant/safety/stems.py anew after a change of those tables:
    PYTHONPATH=. python tests/faces/stems.py
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from assistant.safety.questions import ASPECTS
from assistant.safety.triggers import TRIGGERS

TARGET = Path(__file__).resolve().parents[2] / "assistant" / "safety" / "stems.py"
SHARES = {
    # so many of a hundred questions hold these letters, roughly (counted once, over the corpus); all others fewer
    60: 'at|er|he|th'.split("|"),
    40: 'an|et|ha|on|op|ow|re|st|stop|the|to|top'.split("|"),
    25: 'and|as|de|en|es|f/|hat|in|is|it|me|nd|ne|sh|wh|what'.split("|"),
    15: '10|ap|ar|be|do|ea|ed|eet|flash|ght|how|how m|id|igh|il|lash|le|ll|ma|met|ny|of|one|or|per|po|so|stops|ure|ve|we|wo'.split("|"),
    10: '1/|100|am|ame|any|ape|aperture|at f|ay|ca|feet|film|for|from|ft|gn|guide|hal|hi|how many|ilm|ing|iso|ke|lens|li|man|many|ns|nt|num|number|ot|rom|ta|the f|two|uide|um|umber|un|us|ut'.split("|"),
    7: '16|50|ack|all|any stops|ck|di|do i|does|ec|ere|guide n|guide number|half|her|how many stops|if|ive|light|many stops|meter|metre|metres|mm|no|oes|on the|power|res|rig|right|s at|sa|that|the flash|uide n|uide number|ver|with'.split("|"),
    5: "'s|and the|are|ays|back|br|econd|ei|far|from th|from the|full|go|head|ill|im|is the|ld|los|my|ond|out|over|ox|read|red|ree|sec|second|set|t is|ten|ther|ull|under|want|what a|what aperture|ws".split("|"),
    3: "35|ai|and a|and i|at 1/|at is|at the|box|by|distance|dr|econds|eigh|eight|ep|ers|ev|exp|expos|f-|ff|for the|four|frame|front|get|giv|give|gr|han|here|hes|how far|hree|ie|kes|lose|low|ly|nds|now|of th|of the|off|ome|onds|open|ose|ould|our|own|ows|pop|pops|pu|quarter|reads|ront|row|s it|same|say|says|seconds|sharp|she|sho|shut|shutter|six|sp|ss|sure|t's|tak|take|than|the g|the lens|thir|thr|three|time|to f|ty|up|use|was|what do|what s".split("|"),
}
_SHARE = {letters: share for share, every in SHARES.items() for letters in every}
_RARE, _SHORT = 1, 5


def _groups(sequence: Iterable[Any]) -> list[frozenset[str]]:
    """Sets of letters, of each of which some must stand in the text; the most telling first."""
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
        found += _inside(kind, value)
        run = ""
    found.append(frozenset({run} - {""}))
    return sorted(dict.fromkeys(f for f in found if f), key=_worth, reverse=True)


def _inside(kind: str, value: Any) -> list[frozenset[str]]:
    if kind == "BRANCH":
        branches = [_groups(branch) for branch in value[1]]
        most = max(map(len, branches)) if all(branches) else 0
        return [frozenset().union(*(groups[min(n, len(groups) - 1)] for groups in branches)) for n in range(most)]  # whichever branch it is, it has its first, its second, … set
    if kind in ("MAX_REPEAT", "MIN_REPEAT"):
        return _groups(value[2]) if value[0] >= 1 else []
    return _groups(value[3]) if kind == "SUBPATTERN" else _groups(value[1]) if kind == "ASSERT" else []


def _leading(sequence: Iterable[Any]) -> str:
    run = ""
    for operation, value in sequence:
        if str(operation) != "LITERAL":
            break
        run += chr(value).lower()
    return run


def share_of(stems: Iterable[str]) -> float:
    """Of a hundred questions so many hold some of these letters, roughly: as if they stood there by chance."""
    return 100 - 100 * math.prod(1 - _SHARE.get(s.strip(), _SHORT if len(s.strip()) < 3 else _RARE) / 100 for s in sorted(stems))


def _worth(stems: frozenset[str]) -> tuple[bool, float, int]:
    """A pattern is judged by the letters that fewest questions hold."""
    return min(map(len, stems)) > 1, -share_of(stems), -len(stems)


def groups_of(pattern: str, flags: int = 0) -> list[frozenset[str]]:
    """Every set of letters of which some must stand in any text that the pattern matches, the most telling first.

    >>> [sorted(group) for group in groups_of(r"(?:wet|damp) (?:floor|grass)")]
    [['floor', 'grass'], ['damp', 'wet']]
    """
    return _groups(re._parser.parse(pattern, flags))  # type: ignore[attr-defined]


def wanted() -> tuple[tuple[frozenset[str], ...], ...]:
    """For each trigger and each prepared answer its most telling set, and the next one where there is one."""
    every = [groups_of(t.pattern) for t in TRIGGERS] + [sorted((g for p in a.hears for g in groups_of(p)), key=_worth, reverse=True) for a in ASPECTS]
    assert all(every), "a pattern with no certain letters: the tables can no longer be passed by"
    return tuple(dict.fromkeys(tuple(groups[:2]) for groups in every))


HEAD = '''"""Letters without which no hazard is heard: a text with none of them need not wait for the safety tables.

Made from the patterns of those tables; a test holds the two together and says how to make it anew.
"""

from __future__ import annotations

RULES: tuple[tuple[tuple[str, ...], ...], ...] = (
    # of each of these sets some letters must stand in a text that the rule hears
'''


def made() -> str:
    """The module that wanted() makes."""
    rows = ["    (" + " ".join("(" + " ".join(f"{json.dumps(stem)}," for stem in sorted(group)) + ")," for group in rule) + ")," for rule in wanted()]
    return HEAD + "\n".join(rows) + "\n)\n"


if __name__ == "__main__":
    TARGET.write_text(made(), encoding="utf-8")
