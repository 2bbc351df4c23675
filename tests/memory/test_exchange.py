"""The kit as a TOML file: it comes back as it went, and a file edited by hand is met with words."""

from __future__ import annotations

import json
import os
import stat
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.memory.exchange import HEAD, export_kit, import_kit, kit_as_toml, kit_from_toml
from assistant.memory.store import KitFact

VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
    max_leaves=12,
)
FACTS = st.builds(KitFact, st.text(), st.text(), VALUES.map(json.dumps), st.text(), st.text())
KITS = st.lists(FACTS, max_size=6, unique_by=lambda fact: (fact.owner, fact.quantity))
KIT = [
    KitFact("film", "film_speed", "400", "I'm on 400 film", "2026-11-24T22:50:00"),
    KitFact("the big head", "guide_number", '{"number": 110.0, "unit": "ft"}', 'it says "110"', "2026-11-24T22:51:00"),
    KitFact("the little one", "powers", "[1, 0.5, 0.25]", "full, half and a quarter", ""),
]


def plain(fact: KitFact) -> tuple[str, str, str, str, str]:
    """The fact with its value in one spelling; 1 and 1.0 stay different."""
    return fact.owner, fact.quantity, json.dumps(json.loads(fact.value)), fact.said, fact.when


@given(KITS)
def test_any_kit_comes_back_as_it_went(kit: list[KitFact]) -> None:
    """Every owner, quantity, value, word and time survives the way out and in."""
    read = kit_from_toml(kit_as_toml(kit))
    assert read.troubles == ()
    assert sorted(map(plain, read.facts)) == sorted(map(plain, kit))


@given(KITS)
def test_the_file_is_toml_to_any_reader(kit: list[KitFact]) -> None:
    """Python's own TOML reader finds one block a fact."""
    owners = tomllib.loads(kit_as_toml(kit))
    assert sum(len(quantities) for quantities in owners.values()) == len(kit)


def test_a_kit_reads_as_a_person_would_write_it() -> None:
    """The file is meant for eyes: this is what a kit of three things looks like."""
    assert kit_as_toml(KIT).removeprefix(HEAD) == (
        '\n[film.film_speed]\nvalue = 400\nsaid = "I\'m on 400 film"\nwhen = "2026-11-24T22:50:00"\n'
        '\n["the big head".guide_number]\nvalue = { number = 110.0, unit = "ft" }\nsaid = "it says \\"110\\""\n'
        'when = "2026-11-24T22:51:00"\n'
        '\n["the little one".powers]\nvalue = [1, 0.5, 0.25]\nsaid = "full, half and a quarter"\nwhen = ""\n'
    )


def test_the_example_at_the_top_is_one_that_can_be_read() -> None:
    """The lesson in the comments, taken out of them, is itself a kit."""
    lines = [line.removeprefix("#   ") for line in HEAD.splitlines() if line.startswith("#   ")]
    lesson = "\n".join(line.split("      ")[0] for line in lines)
    assert kit_from_toml(lesson).facts == (
        KitFact(
            "the big head",
            "guide_number",
            '{"number": 110, "unit": "ft"}',
            "the big head is 110 in feet",
            "2026-11-24T22:51:00",
        ),
    )


BY_HAND = [
    ("", [], []),
    ("[film.film_speed]\nvalue = 400\nwhen = 2026-11-24T22:51:00", [("400", "2026-11-24T22:51:00")], []),
    ("[film.film_speed]\nvalue = 400\nwhen = 2026-11-24", [("400", "2026-11-24")], []),
    ("[a.b]\nvalue = 1\n[c.d]\nvalue = nan\n", [("1", "")], ["c, d: the value is not one that can be kept."]),
    ("[a.b]\njson = 'NaN'", [], ["a, b: the value is not one that can be kept."]),
    ("[a.b]\njson = 5", [], ["a, b: the value is not one that can be kept."]),
    ("[a.b]\njson = 'null'", [("null", "")], []),
    ("[a.b]\nvalue = 2026-11-24", [], ["a, b: the value is not one that can be kept."]),
    ("[a.b]\nvalue = 1\nsaid = 3", [], ["a, b: the words and the time must stand in quotes."]),
    ("film = 400", [], ["film: this needs a heading of two names, and a value under it."]),
    ("[film]\nspeed = 400", [], ["film, speed: this needs a heading of two names, and a value under it."]),
    ("[film.speed]", [], ["film, speed: there is no value."]),
]


@pytest.mark.parametrize(("text", "facts", "troubles"), BY_HAND)
def test_a_file_written_by_hand_is_read_block_by_block(
    text: str, facts: list[tuple[str, str]], troubles: list[str]
) -> None:
    """One bad block costs itself and is named; the others are read."""
    read = kit_from_toml(text)
    assert [(fact.value, fact.when) for fact in read.facts] == facts
    assert list(read.troubles) == troubles


@given(st.text() | st.sampled_from(["[" * 5000, "a = " + "[" * 5000, "a.b.value = " + "9" * 5000, "[a.b"]))
def test_no_text_is_met_with_anything_but_words(text: str) -> None:
    """Whatever the file holds, there is a reading of it."""
    assert isinstance(kit_from_toml(text).troubles, tuple)


def test_a_file_goes_out_once_and_comes_back(tmp_path: Path) -> None:
    """The file is for its owner's eyes, comes back equal, and is never written over."""
    path = tmp_path / "kit.toml"
    assert export_kit(KIT, path) is None
    assert import_kit(path).facts == tuple(KIT)
    if os.name != "nt":
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
    before = path.read_bytes()
    assert export_kit([], path) == f"Nothing was written: {path} is there already; give another name."
    assert path.read_bytes() == before


def test_a_file_saved_by_an_editor_elsewhere_is_read(tmp_path: Path) -> None:
    """A byte-order mark and carriage returns change nothing."""
    path = tmp_path / "kit.toml"
    path.write_bytes(b"\xef\xbb\xbf" + kit_as_toml(KIT).replace("\n", "\r\n").encode())
    assert import_kit(path).facts == tuple(KIT)


def test_files_that_are_no_kit_are_met_with_words(tmp_path: Path) -> None:
    """Missing, a folder, a picture, huge, or nowhere to write: a sentence each."""
    picture, huge = tmp_path / "picture", tmp_path / "huge"
    picture.write_bytes(b"\xff\xd8\xff\xe0" * 100)
    with huge.open("wb") as file:
        file.truncate(1024**3)
    assert import_kit(picture).troubles == (f"{picture} is not a text file.",)
    assert import_kit(huge).troubles == (f"{huge} is too large to be a kit.",)
    assert import_kit(tmp_path).troubles == (f"There is no file {tmp_path}.",)
    assert import_kit(tmp_path / "none").troubles == (f"There is no file {tmp_path / 'none'}.",)
    assert "cannot be made" in (export_kit(KIT, tmp_path / "none" / "kit.toml") or "")
