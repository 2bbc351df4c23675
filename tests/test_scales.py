"""Marks on lenses, shutters, film and flashes: nearest, exact, counted and spoken."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant import scales
from assistant.scales import Mark

STEPS: list[scales.Steps] = ["thirds", "halves", "whole"]
WIDEST_GAP = {"thirds": 1 / 3, "halves": 1 / 2, "whole": 1.0}
ROUNDING = 0.17
"""Stops by which engravers round (f/1.2, 1/10 on a half-stop dial)."""


@pytest.mark.parametrize("stop", range(-2, 19))
def test_exact_whole_stops_find_their_own_mark(stop: int) -> None:
    """2**(stops/2) is set by the printed number that stands for it (ISO 517, from memory)."""
    mark = scales.nearest_aperture(2 ** (stop / 2), "whole")
    assert scales.exact_aperture(mark.value) == pytest.approx(2 ** (stop / 2))


@pytest.mark.parametrize("third", range(-6, 55))
def test_exact_thirds_find_their_own_mark(third: int) -> None:
    """No third mark steals its neighbour's place, though all are rounded."""
    mark = scales.nearest_aperture(2 ** (third / 6))
    assert scales.exact_aperture(mark.value) == pytest.approx(2 ** (third / 6))
    assert abs(mark.error_stops) < ROUNDING


@given(st.floats(0.5, 512), st.sampled_from(STEPS))
def test_the_nearest_aperture_is_within_half_a_step(n: float, steps: scales.Steps) -> None:
    """Rounding of the engraving aside."""
    mark = scales.nearest_aperture(n, steps)
    assert abs(mark.error_stops) <= WIDEST_GAP[steps] / 2 + ROUNDING
    assert mark.error_stops == pytest.approx(2 * math.log2(n / mark.value))


def test_a_mark_wider_than_exact_gives_more_exposure() -> None:
    """f/22 for 22.223 is 0.03 of a stop brighter; slower times and faster film likewise."""
    mark = scales.nearest_aperture(22.223)
    assert (mark.text, mark.value) == ("f/22", 22)
    assert mark.error_stops == pytest.approx(0.0291, abs=1e-4)
    assert scales.nearest_shutter(1 / 64).error_stops == pytest.approx(math.log2(64 / 60))
    assert scales.nearest_film_speed(96).error_stops > 0
    assert scales.nearest_power(0.12).error_stops > 0


RINGS = [
    (5.0, (3.5, 4.5, 6.3, 9.0), "f/4.5"),
    (30.0, (2.8, 4.0, 5.6, 8.0, 11.0, 16.0), "f/16"),
    (1.2, (2.8, 4.0), "f/2.8"),
]


@pytest.mark.parametrize("n, ring, text", RINGS)
def test_a_lens_with_its_own_ring_is_set_by_that_ring(
    n: float, ring: tuple[float, ...], text: str
) -> None:
    """Old rings and short ones."""
    assert scales.nearest_aperture(n, ring=ring).text == text


SHUTTERS: list[tuple[float, scales.Steps, str]] = [
    (1 / 60, "thirds", "1/60"),
    (1 / 125, "thirds", "1/125"),
    (1 / 100, "whole", "1/125"),
    (1 / 90, "halves", "1/90"),
    (0.0167, "thirds", "1/60"),
    (1 / 3, "thirds", "0.3 s"),
    (0.5, "whole", "1/2"),
    (2.0, "whole", "2 s"),
    (1.3, "thirds", "1.3 s"),
    (31, "thirds", "30 s"),
    (47.4, "thirds", "47 s"),
    (120, "whole", "2 min"),
    (150, "thirds", "2 min 30 s"),
]


@pytest.mark.parametrize("t, steps, text", SHUTTERS)
def test_a_time_is_set_by_the_nearest_mark(t: float, steps: scales.Steps, text: str) -> None:
    """Fractions as engraved; past 30 s, counted on B."""
    assert scales.nearest_shutter(t, steps).text == text


def test_a_camera_with_its_own_dial_is_set_by_that_dial() -> None:
    """An old leaf shutter has 1/50 and 1/100."""
    dial = (1 / 25, 1 / 50, 1 / 100, 1 / 200)
    assert scales.nearest_shutter(1 / 60, dial=dial).text == "1/50"


DIFFERENCES = [
    (scales.aperture_difference_stops, 8, 11, -1),
    (scales.aperture_difference_stops, 11, 8, 1),
    (scales.aperture_difference_stops, 1, 22, -9),
    (scales.aperture_difference_stops, 2.8, 5.6, -2),
    (scales.aperture_difference_stops, 8, 9, -1 / 3),
    (scales.aperture_difference_stops, 11, 14, -2 / 3),
    (scales.aperture_difference_stops, 8, 9.5, -1 / 2),
    (scales.aperture_difference_stops, 6.7, 9.5, -1),
    (scales.aperture_difference_stops, 9.5, 13, -1),
    (scales.aperture_difference_stops, 45, 64, -1),
    (scales.aperture_difference_stops, 8, 12, 2 * math.log2(8 / 12)),
    (scales.shutter_difference_stops, 1 / 60, 1 / 125, -1),
    (scales.shutter_difference_stops, 1 / 8, 1 / 15, -1),
    (scales.shutter_difference_stops, 1 / 1000, 1, 10),
    (scales.shutter_difference_stops, 1 / 60, 1 / 90, -1 / 2),
    (scales.shutter_difference_stops, 1 / 50, 1 / 100, -1),
    (scales.shutter_difference_stops, 1 / 200, 1 / 250, -1 / 3),
    (scales.shutter_difference_stops, 30, 60, 1),
    (scales.shutter_difference_stops, 1 / 70, 1 / 140, -1),
    (scales.film_speed_difference_stops, 100, 125, 1 / 3),
    (scales.film_speed_difference_stops, 64, 125, 1),
    (scales.film_speed_difference_stops, 400, 1600, 2),
    (scales.film_speed_difference_stops, 100, 25, -2),
    (scales.film_speed_difference_stops, 6, 100, 4),
    (scales.film_speed_difference_stops, 12800, 12500, 0),
    (scales.film_speed_difference_stops, 100, 120, math.log2(1.2)),
]


@pytest.mark.parametrize("difference, a, b, stops", DIFFERENCES)
def test_differences_are_counted_by_the_marks(
    difference: object, a: float, b: float, stops: float
) -> None:
    """Plus is more exposure; where one is no mark, by the numbers."""
    assert callable(difference)
    assert difference(a, b) == pytest.approx(stops)


@given(st.floats(0.5, 512), st.floats(0.5, 512))
def test_there_and_back_is_no_change(a: float, b: float) -> None:
    """Differences are odd in their direction."""
    there = scales.aperture_difference_stops(a, b)
    assert there == pytest.approx(-scales.aperture_difference_stops(b, a))


def test_only_printed_numbers_are_marks() -> None:
    """Exact values that a mark stands for are not marks themselves."""
    assert all(map(scales.is_aperture_mark, (1, 1.4, 6.3, 6.7, 9.5, 13, 16, 90, 512)))
    assert not any(map(scales.is_aperture_mark, (11.3137, 22.63, 12, 8.5)))
    assert all(map(scales.is_shutter_mark, (1 / 8000, 1 / 90, 1 / 60, 0.5, 1, 30, 60)))
    assert not any(map(scales.is_shutter_mark, (1 / 64, 1 / 128, 1 / 70, 7.5)))
    assert all(map(scales.is_film_speed_mark, (6, 25, 64, 100, 125, 1600, 12800, 12500)))
    assert not any(map(scales.is_film_speed_mark, (90, 120, 1500)))


@given(st.floats(0.1, 102_400))
def test_degrees_and_arithmetic_speeds_agree(speed: float) -> None:
    """Within the rounding of the printed arithmetic speeds, about a tenth of a stop."""
    back = scales.iso_from_din(scales.din_from_iso(speed))
    assert abs(math.log2(back / speed)) < 0.12


@pytest.mark.parametrize("degrees, iso", [(9, 6), (12, 12), (15, 25), (21, 100), (33, 1600)])
def test_whole_degrees_give_the_marked_speed(degrees: float, iso: float) -> None:
    """Speeds of the ISO 6, 2240 and 5800 tables (from memory)."""
    assert scales.iso_from_din(degrees) == iso
    assert scales.din_from_iso(iso) == degrees


def test_a_speed_between_the_marks_has_broken_degrees() -> None:
    """1 + 10 log10(S)."""
    assert scales.din_from_iso(90) == pytest.approx(20.542, abs=1e-3)
    assert scales.iso_from_din(20.542425) == pytest.approx(90)


POWERS = [
    (1.0, "full", "full"),
    (0.5, "1/2", "half"),
    (0.8, "1/2 + 2/3", "half plus two thirds"),
    (0.125, "1/8", "1/8"),
    (0.16, "1/8 + 1/3", "1/8 plus a third"),
    (0.198, "1/8 + 2/3", "1/8 plus two thirds"),
    (1 / 128, "1/128", "1/128"),
    (2.0, "full", "full"),
]


@pytest.mark.parametrize("p, text, said", POWERS)
def test_a_power_is_set_by_the_whole_mark_below_and_thirds_above(
    p: float, text: str, said: str
) -> None:
    """As a dial in thirds reads."""
    assert scales.nearest_power(p).text == text
    assert scales.speak_power(p) == said


@given(st.floats(1 / 2048, 1), st.sampled_from(STEPS))
def test_a_power_mark_is_within_half_a_step(p: float, steps: scales.Steps) -> None:
    """Power marks are exact, so nothing but the step counts."""
    mark = scales.nearest_power(p, steps)
    assert abs(mark.error_stops) <= WIDEST_GAP[steps] / 2 + 1e-9
    assert mark.value <= 1


def test_a_flash_goes_no_lower_than_its_floor() -> None:
    """The lowest mark comes back with how much too bright it is."""
    mark = scales.nearest_power(1 / 128, floor=1 / 16)
    assert mark == Mark("1/16", 1 / 16, 3.0)
    assert scales.nearest_power(0.001, floor=0.0079).text == "1/128"


def test_a_flash_goes_no_higher_than_full() -> None:
    """Four times full is two stops short."""
    assert scales.nearest_power(4) == Mark("full", 1, -2.0)


APERTURES_SAID = [
    (8, "f/8"),
    (8.98, "f/8 and a third"),
    (9, "f/8 and a third"),
    (10, "f/8 and two thirds"),
    (9.5, "halfway between f/8 and f/11"),
    (11.3137, "f/11"),
    (13, "f/11 and a third"),
    (1.2, "f/1 and two thirds"),
    (0.5, "f/0.5"),
    (0.4, "f/0.4"),
    (512, "f/512"),
    (600, "f/600"),
]


@pytest.mark.parametrize("n, said", APERTURES_SAID)
def test_an_aperture_is_said_as_a_click_on_the_ring(n: float, said: str) -> None:
    """Whole stops and thirds; the half stop between two numbers."""
    assert scales.speak_aperture(n) == said


STOPS_SAID = [
    (0, "no stops"),
    (1 / 3, "a third of a stop"),
    (-0.5, "half a stop"),
    (0.7, "two thirds of a stop"),
    (1, "one stop"),
    (-1, "one stop"),
    (4 / 3, "one and a third stops"),
    (1.5, "one and a half stops"),
    (1.6, "1.6 stops"),
    (2.0, "two stops"),
    (-2.67, "two and two thirds stops"),
    (6.97, "seven stops"),
    (13.3, "13 and a third stops"),
    (0.15, "0.1 stops"),
]


@pytest.mark.parametrize("stops, said", STOPS_SAID)
def test_stops_are_said_in_halves_and_thirds(stops: float, said: str) -> None:
    """In tenths where neither is near; the sign is left to the sentence."""
    assert scales.speak_stops(stops) == said


NEAREST = [
    scales.nearest_aperture,
    scales.nearest_shutter,
    scales.nearest_film_speed,
    scales.nearest_power,
    scales.speak_aperture,
    scales.speak_power,
    scales.din_from_iso,
]


@pytest.mark.parametrize("wrong", [0, -8, math.nan, math.inf])
@pytest.mark.parametrize("function", NEAREST)
def test_impossible_settings_are_refused(function: object, wrong: float) -> None:
    """Nothing is set to zero, less, or endlessly."""
    assert callable(function)
    with pytest.raises(ValueError, match="must be above zero"):
        function(wrong)
