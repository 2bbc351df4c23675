"""Words that look like one of the trade's and are none: nothing is put right that was typed right.

The words are plain English; that each is right as it stands is the whole check (no source is needed for a spelling).
"""

from __future__ import annotations

import pytest

from assistant.language.slips import put_right_slips
from assistant.language.tables import load_tables
from assistant.language.well_spelt import WELL_SPELT


@pytest.mark.parametrize("word", sorted(WELL_SPELT))
def test_a_word_typed_right_stays_as_it_is(word: str) -> None:
    lexicon = load_tables(None).lexicon
    assert put_right_slips(f"the {word} is 3 m off", lexicon) == (f"the {word} is 3 m off", ())
    assert lexicon.put_right(word) == word


@pytest.mark.parametrize(("typed", "meant"), [("distnace", "distance"), ("quater", "quarter")])
def test_a_slip_is_still_put_right(typed: str, meant: str) -> None:
    assert load_tables(None).lexicon.put_right(typed) == meant
