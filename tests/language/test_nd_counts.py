"""How many grey filters there are, and how strong each is."""

from __future__ import annotations

import corpus
import pytest

from assistant.language.reading import read


@pytest.mark.parametrize(
    ("said", "stops"),
    [
        ("two ND4s", [2, 2]), ("2 x ND8", [3, 3]), ("a pair of ND 0.6 filters", [2, 2]), ("three ND2 filters", [1, 1, 1]), ("two ND filters, a 0.3 and a 0.9", [1, 3]),
        ("a 0.9 ND", [3]), ("a two stop ND", [2]), ("ND8", [3]), ("an ND4 and an ND8", [2, 3]),
    ],
)
def test_so_many_filters_of_such_a_strength(said: str, stops: list[float]) -> None:
    found = [f.value for f in read(f"{said} on the lens, how many stops?", corpus.tables()).facts if f.quantity == "nd"]
    assert found == pytest.approx(stops, abs=0.02)
