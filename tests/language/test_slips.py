"""A slip of the fingers is put right in the text, and a word of its own is left as it is."""

from __future__ import annotations

import pytest

from assistant.assistant import Assistant
from assistant.language.slips import put_right_slips

LEXICON = Assistant.create().tables.lexicon


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("which apreture", "which aperture"), ("six fet betwen the rows", "six fet between the rows"), ("a sofbox", "a softbox"), ("the Distnce", "the distance")],
)
def test_a_slip_is_put_right(typed: str, meant: str) -> None:
    assert put_right_slips(typed, LEXICON)[0] == meant


@pytest.mark.parametrize("said", ["the father of the bride", "over the bridge", "my sister", "a widow", "darken the room", "filled in", "one thousandth", "two domes", "f/8 at the factory"])
def test_a_word_of_its_own_stays(said: str) -> None:
    assert put_right_slips(said, LEXICON) == (said, ())


def test_a_name_given_to_a_light_stays() -> None:
    assert put_right_slips("the apreture at 5 feet", LEXICON, ["apreture"]) == ("the apreture at 5 feet", ())


def test_the_reply_says_how_the_word_was_read() -> None:
    answer = Assistant.create().answer("guide number 110 feet, 7 feet, iso 100, apreture?")
    assert answer.status == "answered" and "I read “apreture” as aperture." in answer.reply
