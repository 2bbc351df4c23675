"""Pops of several powers add by their light (a pop's light goes with its power); held against the sum written out here."""

from __future__ import annotations

import math

import pytest

from assistant.assistant import Assistant


def _first(text: str) -> tuple[str, float]:
    answer = Assistant().answer(text)
    assert answer.status == "answered", answer.reply
    return answer.answers[0].quantity, float(answer.answers[0].value)


@pytest.mark.parametrize(("full", "parts", "power"), [(1, 2, 0.5), (3, 5, 0.25), (2, 7, 0.125)])
def test_the_light_of_unlike_pops_is_summed(full: int, parts: int, power: float) -> None:
    said = f"On one frame I fire {full} pops at full power and {parts} at 1/{round(1 / power)} power. One full pop is worth f/8. What aperture for the lot?"
    quantity, value = _first(said)
    assert quantity == "aperture"
    assert value == pytest.approx(8 * math.sqrt(full + parts * power), rel=0.01)


@pytest.mark.parametrize(("now", "before"), [(12, 5), (3, 10)])
def test_two_numbers_of_pops_are_compared_by_their_logarithm(now: int, before: int) -> None:
    quantity, value = _first(f"By how many stops does the frame change if I give it {now} pops instead of {before}?")
    assert (quantity, value) == ("stops", pytest.approx(math.log2(now / before)))
