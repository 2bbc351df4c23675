"""Lengths: exact factors, and how they are said."""

import subprocess
import sys

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant import units

PINT_NAMES = {
    "m": "metre", "cm": "centimetre", "mm": "millimetre", "ft": "foot", "in": "inch", "yd": "yard",
}  # fmt: skip


def test_factors_equal_those_of_the_units_library() -> None:
    """Every length factor is the one an outside table of units has."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    assert PINT_NAMES.keys() == units.LENGTH.keys()
    for unit, factor in units.LENGTH.items():
        outside = registry.Quantity(1, PINT_NAMES[unit]).to("metre").magnitude
        assert factor == pytest.approx(outside, rel=1e-15), unit


def test_lengths_are_known_without_the_units_library() -> None:
    """A cold start pays for no registry."""
    code = "import sys, assistant.units, assistant.scales; print('pint' in sys.modules)"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "False"


@given(st.floats(0.001, 1e6), st.sampled_from(sorted(units.LENGTH)))
def test_a_length_survives_there_and_back(value: float, unit: str) -> None:
    """Metres are only a halfway house."""
    assert units.length_in(units.to_metres(value, unit), unit) == pytest.approx(value)


@given(st.floats(1, 1000), *[st.sampled_from(sorted(units.LENGTH))] * 2)
def test_a_guide_number_survives_there_and_back(value: float, first: str, second: str) -> None:
    """Any two units, either way."""
    there = units.guide_number_in(value, first, second)
    assert units.guide_number_in(there, second, first) == pytest.approx(value)


def test_an_unknown_unit_is_refused_by_name() -> None:
    """The message quotes the word and names the known ones."""
    with pytest.raises(ValueError, match="'furlong'.*ft"):
        units.metres_in("furlong")


SAID = [
    (7, "ft", "7 ft"),
    (5.5, "ft", "5 ft 6 in"),
    (7.4, "ft", "7.4 ft"),
    (3.27, "ft", "3 ft 3 in"),
    (4.9619, "ft", "4.96 ft"),
    (0.75, "ft", "9 in"),
    (6.99, "ft", "7 ft"),
    (28.28, "ft", "28.3 ft"),
    (100, "ft", "100 ft"),
    (18, "in", "18 in"),
    (0.2, "in", "0.2 in"),
    (2, "yd", "2 yd"),
    (2.5, "m", "2.5 m"),
    (2.8284, "m", "2.83 m"),
    (1234.5, "m", "1230 m"),
    (0.45, "m", "45 cm"),
    (45, "cm", "45 cm"),
    (250, "cm", "250 cm"),
    (0.004, "m", "4 mm"),
    (35, "mm", "35 mm"),
    (float("inf"), "m", "infinity"),
    (float("inf"), "ft", "infinity"),
]


@pytest.mark.parametrize("value, unit, said", SAID)
def test_a_length_is_said_as_people_say_it(value: float, unit: str, said: str) -> None:
    """Feet and inches where a tape shows them, three figures elsewhere."""
    assert units.speak_length(units.to_metres(value, unit), unit) == said


@pytest.mark.parametrize(
    "value, text",
    [
        (0, "0"),
        (9.999, "10"),
        (0.0009994, "0.000999"),
        (99940, "99900"),
        (99960, "100000"),
        (-2.5, "-2.5"),
    ],
)
def test_three_figures_are_kept(value: float, text: str) -> None:
    """No powers of ten, no trailing noughts."""
    assert units.significant(value) == text
