"""What to do about a trouble: shadows, glare, shine. Common practice, no source."""

from __future__ import annotations

import re

import pytest

from assistant.teaching.glossary_entry import Why
from assistant.teaching.remedies import REMEDIES, remedy


@pytest.mark.parametrize("entry", REMEDIES, ids=lambda entry: entry.example)
def test_every_remedy_hears_its_example(entry: Why) -> None:
    """Its own row is the one that is taken."""
    assert remedy(entry.example) is entry.term


@pytest.mark.parametrize(
    ("said", "must"),
    [
        ("There's a hard shadow on the wall behind everyone I shoot. Where should the flash go?", "away from the wall"),
        ("glare off his spectacles, what do I move", "angle"),
        ("which sync setting do I use for electronic flash, M or X", "Use X"),
        ("Found a press camera and a box of bulbs. It has an M and an X lever. Which one for bulbs and why?", "reach its peak"),
        ("my slave won't fire out in the sun", "blinds"),
    ],
)
def test_a_trouble_gets_its_cure(said: str, must: str) -> None:
    """The sentence that matters stands in the answer."""
    found = remedy(said)
    assert found is not None and re.search(must, found.text)


@pytest.mark.parametrize("said", ["guide number 110, 7 feet, what aperture?", "how far is the wall?", "bulbs at 3 m, which aperture?", "softbox at 6 feet"])
def test_a_sum_is_no_trouble(said: str) -> None:
    """Figures that are asked for are left to be worked out."""
    assert remedy(said) is None
