"""Half-words heaped after a question, and questions that break off where a figure stood: found by `python -m tests.fuzz`."""

from __future__ import annotations

import pytest

from assistant.assistant import Assistant

STATUSES = {"answered", "needs", "not_understood", "noted", "out_of_reach", "rejected"}


@pytest.mark.parametrize("heap", ["and " * 300, "and then " * 100, "what if " * 200, "half of " * 60, "ok so now " * 100])
@pytest.mark.parametrize("first", ["gn 80 ft, iso 400, ten feet, film rated one stop slower than the box, aperture?", "GN 40 metres, 5 m, a box that loses two stops, aperture?"])
def test_a_heap_of_half_words_is_gone_through_once(first: str, heap: str) -> None:
    assistant = Assistant.create()
    assert assistant.answer(first).status == "answered"
    assert assistant.answer(heap).status in STATUSES


@pytest.mark.parametrize("text", [
    "True or false: at close range opening from f/8 to halves the depth of field.",
    "Sun gives f/0 at 1/iso 0. Stops of ND to shoot at f/4, same speed?",
    "my two flashes together have a guide number of 56 ketres. what is the guide number of each?",
    "The scale is 1:5 and the subject moves 2 mm during the flash. How far does its image move on the film, in millimetres?At a quarter my set of cells fired 480 times. How many pops power?",
    pytest.param("and 8 " * 2_000, id="and 8 ..."), pytest.param("and 8.5 " * 2_000, id="and 8.5 ..."),
])
def test_what_breaks_off_raises_nothing(text: str) -> None:
    assert Assistant.create().answer(text).status in STATUSES
