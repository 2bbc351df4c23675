"""The corpus: phrases beside each grammar file, and what each of them must be read as.

A corpus file holds entries of six kinds, each one expected value with all the phrases that mean it:

  [[means]]           expect = "distance 5.5 ft; aperture 8"    every fact of the phrase, no more and no less
                      asks = "aperture"                         and what it asks for, where that matters
  [[never]]           never = "distance"                        no such fact may be read, nor such a thing asked
  [[answers]]         expect = "answered aperture 11"           the whole question's status and first answer
  [[talks]]           turns = [[say, expect], …]                a conversation, an expectation for each turn
  [[not_yet]]         like means or answers, with a reason      must fail today; a pass is an error (strict)

Values may be fractions; lengths may be in any unit; "key.distance 5 ft" names whose it is;
"move/again 1 ft" how it was meant; "aperture cannot" is a value that cannot be.
"""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.language.hearing import hear
from assistant.language.parsing import Node, Part, parse
from assistant.language.reading import read
from assistant.language.tables import Tables, grammar_folder, load_tables
from assistant.memory.conversation import Conversation
from assistant.query import Fact, Query
from assistant.units import LENGTH

KINDS = ("means", "never", "answers", "talks", "not_yet")


@dataclass(frozen=True, slots=True)
class Case:
    """One phrase and what is expected of it."""

    file: str
    kind: str
    phrase: str
    expect: str = ""
    asks: str = ""
    reason: str = ""
    turns: tuple[tuple[str, str], ...] = ()


@cache
def tables() -> Tables:
    """The grammar's tables, made once for all tests."""
    return load_tables(None)


def fresh() -> Assistant:
    """An assistant that has heard nothing and keeps nothing."""
    return Assistant(tables(), Conversation())


@cache
def _shared() -> Assistant:
    return fresh()


def answer(text: str) -> Answer:
    """One question by itself."""
    ready = _shared()
    ready.new_conversation(keep_kit=False)
    return ready.answer(text)


def query(text: str) -> Query:
    """One phrase read."""
    return read(text, tables())


def corpus_files() -> list[Path]:
    """Every corpus file, in name order."""
    return sorted(grammar_folder().glob("*.corpus.toml"))


@cache
def cases() -> tuple[Case, ...]:
    """Every case of every file, in order."""
    return tuple(case for path in corpus_files() for case in _cases(path))


def _cases(path: Path) -> Iterator[Case]:
    body = tomllib.loads(path.read_text(encoding="utf-8"))
    name = path.name.removesuffix(".corpus.toml")
    for kind in KINDS:
        for entry in body.get(kind, ()):
            if kind == "talks":
                turns = tuple((say, expect) for say, expect in entry["turns"])
                yield Case(name, kind, " | ".join(say for say, _ in turns), turns=turns, reason=entry.get("reason", ""))
                continue
            expect = entry["never"] if kind == "never" else entry.get("expect", "")
            for phrase in entry["phrases"]:
                yield Case(name, kind, phrase, expect, entry.get("asks", ""), entry.get("reason", ""))


# --- what is expected against what was read ------------------------------------------------------


def number(text: str) -> float:
    """A number of an expectation: "1/60" or "2.5" or "inf"."""
    top, _, bottom = text.partition("/")
    return float(top) / float(bottom) if bottom else float(text)


_IS_NUMBER = re.compile(r"-?(?:inf|\d*\.?\d+(?:/\d+)?)")
_STATUSES = ("answered", "needs", "out_of_reach", "noted", "not_understood", "rejected")


def _fact_fits(fact: Fact, expected: str) -> bool:
    name, *rest = expected.split()
    name, _, cue = name.partition("/")
    of, _, quantity = name.rpartition(".")
    if fact.quantity != quantity or (cue and fact.cue != cue) or (fact.of or "") not in ({of} if of else {"", "camera", "film", "ambient"}):
        return False
    if not rest:
        return True
    if rest[-1] == "cannot":
        rest = rest[:-1]
        if not fact.bad or not rest:
            return bool(fact.bad)
    value = number(rest[0]) if _IS_NUMBER.fullmatch(rest[0]) else None
    unit = rest[-1] if len(rest) > 1 or value is None else ""
    if value is None:
        return fact.unit == unit or fact.cue == unit
    if unit in LENGTH and not quantity.startswith("guide_number"):
        value *= LENGTH[unit]
    elif unit and unit != "s" and unit not in (fact.unit, fact.cue):
        return False
    return math.isclose(fact.value, value, rel_tol=2e-3, abs_tol=1e-9)


def facts_fit(facts: tuple[Fact, ...], expected: str) -> bool:
    """Every fact expected is there, and there is no other."""
    wanted = [e.strip() for e in expected.split(";") if e.strip()]
    left = list(facts)
    for one in wanted:
        found = next((f for f in left if _fact_fits(f, one)), None)
        if found is None:
            return False
        left.remove(found)
    return not left


def show_facts(found: Query) -> str:
    """The facts of a query as an expectation would write them."""
    shown = []
    for f in found.facts:
        whose = f"{f.of}." if f.of else ""
        bad = " cannot" if f.bad else ""
        shown.append(f"{whose}{f.quantity} {f.value:.5g} {f.unit} {f.cue}".strip() + bad)
    return "; ".join(shown) or "nothing"


def show_asks(found: Query) -> str:
    """What a query asks, as an expectation would write it."""
    return "; ".join(f"{a.of}.{a.quantity}" if a.of else a.quantity for a in found.asks)


def show_answer(found: Answer) -> str:
    """Status and first answer as an expectation would write them."""
    first = found.answers[0] if found.answers else None
    if found.status == "needs":
        return "needs " + " ".join(found.missing)
    if first is None:
        return found.status
    value = f"{first.value:.5g}" if isinstance(first.value, float) and not isinstance(first.value, bool) else str(first.value).lower()
    return f"{found.status} {first.of + '.' if first.of else ''}{first.quantity} {value} {first.unit}".strip()


def answer_fits(found: Answer, expected: str) -> bool:
    """Status, first quantity and its value within three percent."""
    status, *rest = expected.split()
    assert status in _STATUSES, f"no status {status!r}"
    if found.status != status:
        return False
    if status == "needs":
        return all(name in found.missing for name in rest)
    if not rest:
        return True
    first = found.answers[0] if found.answers else None
    if first is None or first.quantity != rest[0].rpartition(".")[2]:
        return False
    if "." in rest[0] and first.of != rest[0].rpartition(".")[0]:
        return False
    if len(rest) < 2:
        return True
    if rest[1] in ("true", "false", "infinity"):
        return str(first.value).lower() == rest[1]
    value = number(rest[1])
    unit_right = len(rest) < 3 or rest[2] == first.unit
    return unit_right and isinstance(first.value, (int, float)) and math.isclose(float(first.value), value, rel_tol=0.03, abs_tol=0.03 if first.quantity == "stops" else 1e-9)


def tree(text: str) -> str:
    """The phrases of a text as the grammar took them: rule names and the words each took."""
    return "\n".join(_drawn(part, text, 0) for part in parse(hear(text, tables().lexicon).tokens, tables()))


def _drawn(part: Part, text: str, depth: int) -> str:
    pad = "  " * depth
    if isinstance(part, Node):
        return f"{pad}{part.name}\n" + "\n".join(_drawn(child, text, depth + 1) for child in part.children)
    return f"{pad}{part.type} {text[part.start : part.end]!r} -> {part.value}"


def failure(case: Case, expected: str, actual: str, text: str) -> str:
    """What a failing case says: phrase, expected, actual, tree."""
    return f"\nphrase:   {text!r} ({case.file})\nexpected: {expected}\nactual:   {actual}\ntree:\n{tree(text)}"
