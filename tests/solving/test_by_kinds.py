"""What the kinds of figures told leave open is the same in any order of telling."""

from __future__ import annotations

from itertools import permutations

import pytest

from assistant.assistant import Assistant


def _first(text: str) -> tuple[str, float]:
    answer = Assistant.create().answer(text)
    return (answer.answers[0].quantity, float(answer.answers[0].value)) if answer.answers else ("", 0.0)


@pytest.mark.parametrize("told", list(permutations(("one pop gives f/4", "I need f/11"))))
def test_pops_for_an_aperture_in_any_order(told: tuple[str, ...]) -> None:
    assert _first(f"{told[0]}. {told[1]}. pops?") == ("count", 8.0)


@pytest.mark.parametrize("told", list(permutations(("the job needs 400 flashes", "a set of cells yields 150"))))
def test_sets_of_cells_in_any_order(told: tuple[str, ...]) -> None:
    assert _first(f"{told[0]}, {told[1]}. How many sets?") == ("count", 3.0)


@pytest.mark.parametrize("text", ["150 Ws gives f/8, Ws for f/16?", "what Ws for f/16 when 150 Ws gave f/8", "for f/16, if 150 joules makes f/8, how many joules?"])
def test_energy_goes_from_the_aperture_told_with_it(text: str) -> None:
    assert _first(text) == ("energy", 600.0)


@pytest.mark.parametrize("text", ["f/11 on 200 film. 800 film?", "what aperture on 800 film if it was f/11 on 200", "on 200 film it was f/11, what is it on 800"])
def test_another_film(text: str) -> None:
    assert _first(text) == ("aperture", pytest.approx(22.0))


def test_a_part_is_left_alone_where_something_else_is_told() -> None:
    assert _first("gn 80 feet, 10 feet, 16 people, what aperture?")[1] == pytest.approx(8.0)
