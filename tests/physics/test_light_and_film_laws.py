"""Laws of continuous light, film and the flash pulse, for every sensible number."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.physics import ambient, duration, film, flash

APERTURES = st.floats(0.7, 300)
SPEEDS = st.floats(0.1, 100_000)
POWERS = st.floats(1 / 1024, 1)
STOPS = st.floats(-12, 12)
TIMES = st.floats(1e-5, 5000)
EVS = st.floats(-8, 20)


def near(value: float) -> object:
    return pytest.approx(value, rel=1e-9, abs=1e-9)


@given(EVS, APERTURES, SPEEDS)
def test_the_daylight_balance_closes_whatever_was_asked(ev: float, n: float, speed: float) -> None:
    """The time found, put back, gives every quantity it was found from."""
    t = ambient.shutter(ev, n, speed)
    assert ambient.exposure_value(n, t, speed) == near(ev)
    assert ambient.aperture(ev, t, speed) == near(n)
    assert ambient.film_speed(ev, n, t) == near(speed)
    assert ambient.balance_stops(ev, n, 2 * t, speed) == near(1)


@given(APERTURES, st.floats(-6, 6))
def test_fill_on_top_of_daylight_adds_as_two_lights_do(n: float, under: float) -> None:
    """Stops added by a weaker light agree with the sum of the two readings."""
    fill = ambient.fill_aperture(n, under)
    total = flash.sum_of_light([n, fill])
    assert 2 * math.log2(total / n) == near(ambient.added_light_stops(under))
    assert ambient.stops_under_to_add(2 * math.log2(total / n)) == near(under)


@given(APERTURES, st.floats(0.01, 3))
def test_light_that_may_add_so_much_adds_just_that(n: float, allowed: float) -> None:
    """The sum of two readings, one so far under the other, is brighter by what was allowed."""
    weaker = ambient.fill_aperture(n, ambient.stops_under_to_add(allowed))
    assert 2 * math.log2(flash.sum_of_light([n, weaker]) / n) == pytest.approx(allowed, rel=1e-6)


@given(st.floats(0.01, 20))
def test_filter_strengths_agree_however_they_are_sold(stops: float) -> None:
    """Stops, factor and density turn into each other without loss."""
    factor = ambient.factor_from_stops(stops)
    density = ambient.density_from_stops(stops)
    assert ambient.stops_from_factor(factor) == near(stops)
    assert ambient.stops_from_density(density) == near(stops)
    assert ambient.factor_from_density(density) == near(factor)
    assert ambient.density_from_factor(factor) == near(density)


@given(st.floats(0, 10), st.floats(0, 10))
def test_stacked_factors_multiply_and_their_stops_add(a: float, b: float) -> None:
    """Two filters cost the sum of their stops."""
    stack = ambient.combined_factor([2**a, 2**b])
    assert ambient.stops_from_factor(stack) == near(a + b)


@given(APERTURES, TIMES, SPEEDS)
def test_meters_agree_on_the_exposure_value(n: float, t: float, speed: float) -> None:
    """The light a setting needs has the exposure value of that setting."""
    ev = ambient.exposure_value(n, t, speed)
    assert ambient.ev_from_illuminance(ambient.illuminance(n, t, speed)) == near(ev)
    assert ambient.ev_from_luminance(ambient.luminance(n, t, speed)) == near(ev)
    assert ambient.luminance_from_ev(ev) == near(ambient.luminance(n, t, speed))


@given(SPEEDS, STOPS)
def test_pushing_and_overexposing_are_opposites(speed: float, stops: float) -> None:
    """One stop over halves the index; pushed one stop doubles it."""
    assert film.exposure_index(film.pushed(speed, stops), stops) == near(speed)
    assert film.push_stops(speed, film.pushed(speed, stops)) == near(stops)


@given(TIMES, st.floats(1, 2), st.floats(0.1, 10))
def test_reciprocity_never_shortens_and_undoes_itself(
    t: float, exponent: float, threshold: float
) -> None:
    """Short times stand, long ones lengthen, and the metered time is found again."""
    given_time = film.reciprocity_time(t, exponent, threshold)
    assert given_time >= t * (1 - 1e-12)
    assert film.metered_time(given_time, exponent, threshold) == near(t)


@given(st.floats(0.01, 3000), st.floats(1, 1.9))
def test_a_table_made_by_an_exponent_gives_that_exponent_back(t: float, exponent: float) -> None:
    """Straight in logarithms, between and beyond the points of a sheet."""
    sheet = [(seconds, seconds**exponent) for seconds in (2.0, 10.0, 100.0)]
    assert film.corrected_from_table(t, sheet) == near(film.reciprocity_time(t, exponent))


@pytest.mark.parametrize("years, stops", [(0, 0), (10, 1), (25, 2.5)])
def test_old_film_takes_a_stop_a_decade(years: float, stops: float) -> None:
    """Common practice, no source."""
    assert film.expired_stops(years) == stops


@given(st.integers(1, 15), st.floats(0.1, 3))
def test_a_bracket_is_even_and_balanced(frames: int, step: float) -> None:
    """Equal steps, darkest first, the middle where the meter put it."""
    offsets = film.bracket_offsets(frames, step)
    assert len(offsets) == frames
    assert sum(offsets) == pytest.approx(0, abs=1e-9)
    assert all(b - a == near(step) for a, b in zip(offsets, offsets[1:], strict=False))


@given(TIMES)
def test_pulse_durations_turn_into_each_other(t: float) -> None:
    """The tenth is 3.32 times the half, and light halves in each half-peak time."""
    assert duration.t05_from_t01(duration.t01_from_t05(t)) == near(t)
    assert duration.light_left(3 * t, t) == near(0.125)


@given(st.floats(0.1, 100), TIMES, st.floats(0.01, 1))
def test_a_duration_allows_the_motion_it_was_found_for(
    speed: float, t: float, magnification: float
) -> None:
    """Motion is speed by time, smaller on the film by the magnification."""
    moved = duration.motion(speed, t)
    assert duration.duration_for_motion(speed, moved) == near(t)
    assert duration.image_motion(moved, magnification) == near(moved * magnification)


@given(st.floats(1e-5, 0.1), st.floats(1, 1000))
def test_half_the_voltage_holds_two_stops_less(farads: float, volts: float) -> None:
    """Energy goes with the square of the voltage."""
    full = duration.capacitor_energy(farads, volts)
    half = duration.capacitor_energy(farads, volts / 2)
    assert half / full == near(duration.energy_fraction_at(0.5))
    assert duration.charge_stops(half / full) == near(-2)
    assert duration.capacitance_for(full, volts) == near(farads)
    assert duration.guide_number_factor(full, half) == near(0.5)


@given(st.floats(1, 100), POWERS)
def test_less_power_is_ready_sooner_and_lasts_longer(full: float, power: float) -> None:
    """Recycling and pops are in proportion to the energy of a pop."""
    assert duration.recycle_time(full, power) == near(full * power)
    assert duration.energy_at(full, power) == near(full * power)
    assert duration.shortest_recycle(duration.energy_at(full, power), 50) == near(full * power / 50)
    assert duration.pops_at_power(full, power) >= math.floor(full)


@given(st.integers(1, 500), st.floats(10, 2000))
def test_a_battery_gives_the_pops_its_energy_holds(pops: int, joules: float) -> None:
    """Rounded down, but not robbed of one by a float."""
    hours = pops * joules / 3600
    assert duration.pops_from_battery(hours, joules) == pops
    assert duration.pops_from_battery(hours * 0.99999, joules) == pops - 1
    assert duration.pops_from_battery(hours, joules, efficiency=0.5) == pops // 2
