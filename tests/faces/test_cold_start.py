"""One question does not wait for what it does not need."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pattern_stems
import pytest
import stems as derived
from command import QUESTION, run, surroundings
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.pattern_stems import STEMS as KNOWN
from assistant.patterns import Pattern
from assistant.safety.cautions import find_cautions
from assistant.safety.may_concern import may_concern_safety
from assistant.safety.questions import answer_safety
from assistant.safety.stems import RULES
from assistant.safety.triggers import TRIGGERS

HEAVY = ("lark", "pint", "prompt_toolkit", "sqlite3", "tomllib", "assistant.memory.store", "assistant.safety.questions", "assistant.safety.triggers", "assistant.teaching.glossary", "assistant.teaching.diagnosis", "hashlib", "assistant.faces.chat", "assistant.kit_turns")


def loaded(home: Path, *words: str) -> set[str]:
    """The modules that one question loads."""
    program = "import sys, json; from assistant.faces.cli import main; main(sys.argv[1:]); print(json.dumps(sorted(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", program, *words], capture_output=True, env=surroundings(home), check=True, timeout=60)
    return set(json.loads(done.stdout.splitlines()[-1]))


def test_a_question_loads_nothing_heavy(home: Path) -> None:
    found = loaded(home, QUESTION)
    assert not [name for name in found if name.startswith(HEAVY)]


def test_telling_the_gear_loads_the_store(home: Path) -> None:
    assert "sqlite3" in loaded(home, "my flash is guide number 110 feet")


def test_the_second_start_reads_the_tables_from_the_cache(tmp_path: Path) -> None:
    run(tmp_path, QUESTION)
    assert list((tmp_path / "cache").glob("tables-*.json")) and "lark" not in loaded(tmp_path, QUESTION)


def test_the_stems_are_those_of_the_safety_tables() -> None:
    """Made anew by: PYTHONPATH=. python tests/faces/stems.py"""
    assert [[set(group) for group in rule] for rule in RULES] == [[set(group) for group in rule] for rule in derived.wanted()]


@pytest.mark.parametrize("trigger", TRIGGERS, ids=lambda t: t.example)
def test_every_hazard_gets_past_the_stems(trigger: object) -> None:
    assert may_concern_safety(trigger.example)  # type: ignore[attr-defined]


@given(st.lists(st.sampled_from(sorted({w for t in TRIGGERS for w in t.example.split()} | set("is it safe can i the baby's eyes wet 7 feet iso".split()))), max_size=8).map(" ".join))
@settings(max_examples=300, deadline=None)
def test_what_the_stems_pass_by_the_tables_do_not_hear(text: str) -> None:
    if not may_concern_safety(text):
        assert find_cautions(text) == () and answer_safety(text) is None


def test_the_table_of_patterns_is_that_of_the_program() -> None:
    """Made anew by: PYTHONPATH=. python tests/faces/pattern_stems.py"""
    assert pattern_stems.wanted() == KNOWN


SHAPES = (r"(?:wet|damp) \w+", r"h(?:z|ertz)\b", r"(?:a |the )?pool(?:side)?", r"(?P<n>\d+) ?stops? (?:under|over)", r"\b(?=rain)\w+", r"x*y{2,3}(?:ab|cd)", r"(?i:GN) ?\d", r"[ab]c", r"(?:(?:un)?safe|risky?)(?! bet)", r"(?:how (?:far|near)|(?:what|which) (?:pace|place)|where)")


@pytest.mark.parametrize("shape", SHAPES)
@given(noise=st.data())
@settings(max_examples=60, deadline=None)
def test_what_a_pattern_matches_contains_a_stem_of_each_set(shape: str, noise: st.DataObject) -> None:
    import re

    text = noise.draw(st.from_regex(re.compile(shape, re.IGNORECASE | re.ASCII)))
    sets = derived.groups_of(shape)
    assert sets and all(any(stem in text.lower() for stem in stems) for stems in sets)


@given(st.text("abc x1"), st.sampled_from([r"ab", r"a(b|c)x", r"x1+", r"[abc]{2}"]))
@settings(max_examples=200, deadline=None)
def test_a_waiting_pattern_finds_what_a_compiled_one_finds(text: str, source: str) -> None:
    import re

    waiting, ready = Pattern(source), re.compile(source)
    waiting._letters = "&".join("|".join(stems) for stems in derived.groups_of(source))
    for method in ("search", "match", "fullmatch"):
        one, other = getattr(waiting, method)(text), getattr(ready, method)(text)
        assert (one and one.span()) == (other and other.span())
    assert waiting.sub("-", text) == ready.sub("-", text) and waiting.split(text) == ready.split(text) and waiting.findall(text) == ready.findall(text)
    assert [m.span() for m in waiting.finditer(text)] == [m.span() for m in ready.finditer(text)]
