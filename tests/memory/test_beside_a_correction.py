"""What is told beside a correction is no correction, and what is kept of another turn hides nothing that was said in this one."""

from __future__ import annotations

from assistant.assistant import Assistant
from assistant.query import Fact, Query
from assistant.solving.solution import Solution
from assistant.solving.solver import unused


def test_a_loss_beside_a_power_denied_is_no_power_of_the_kit() -> None:
    assistant = Assistant.create()
    assistant.answer("my flash only does full and half")
    found = assistant.answer("the polariser loses 1.5 stops, gn 40 m, iso 100, 5 m, at quarter power, not half power. what aperture?")
    assert found.status in ("answered", "out_of_reach", "rejected", "not_understood")
    assert [f.said for f in assistant.conversation.kit.facts if f.quantity == "only_powers"] == ["1,0.5"]


def test_a_kept_fact_at_the_same_place_of_another_text_hides_no_figure() -> None:
    kept = Fact("power", 1.0, start=63, end=67, said="100%", origin="kept")
    said = Fact("number_range", 0.5, other=22.0, start=63, end=71, said=".5 to 22")
    query = Query("f/4 .5 to 22", facts=(kept, said))
    assert unused(query, Solution(used=(kept,))) == [said]
