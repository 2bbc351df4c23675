"""Laws of flash exposure, for every sensible number and not only the published ones."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from assistant import units
from assistant.physics import ambient, flash

GUIDE_NUMBERS = st.floats(1, 500)
DISTANCES = st.floats(0.05, 200)
APERTURES = st.floats(0.7, 300)
SPEEDS = st.floats(0.1, 100_000)
POWERS = st.floats(1 / 1024, 1)
COUNTS = st.integers(1, 100)
LOSSES = st.floats(-10, 0)
STOPS = st.floats(-12, 12)


def near(value: float) -> object:
    return pytest.approx(value, rel=1e-9, abs=1e-9)


@given(GUIDE_NUMBERS, DISTANCES)
def test_twice_the_distance_costs_two_stops(guide: float, metres: float) -> None:
    """Inverse square: the f-number halves, the light falls by two stops."""
    assert flash.aperture(guide, 2 * metres) == near(flash.aperture(guide, metres) / 2)
    assert flash.falloff_stops(metres, 2 * metres) == near(-2)


@given(GUIDE_NUMBERS)
def test_four_times_the_film_speed_doubles_the_guide_number(guide: float) -> None:
    """The square-root law of sensitivity."""
    assert flash.guide_number_at(guide, film_speed=400) == near(2 * guide)


@given(GUIDE_NUMBERS, DISTANCES, SPEEDS, POWERS, COUNTS, LOSSES)
def test_the_flash_balance_closes_whatever_was_asked(
    guide: float, metres: float, speed: float, power: float, count: int, loss: float
) -> None:
    """The f-number found, put back, gives every quantity it was found from."""
    n = flash.aperture(guide, metres, film_speed=speed, power=power, count=count, loss=loss)
    scene = {"film_speed": speed, "power": power, "count": count, "loss": loss}

    def without(name: str) -> dict[str, float]:
        return {key: value for key, value in scene.items() if key != name}

    assert flash.balance_stops(guide, n, metres, **scene) == near(0)
    assert flash.distance(guide, n, **scene) == near(metres)
    assert flash.guide_number(n, metres, **scene) == near(guide)
    assert flash.power(guide, n, metres, **without("power")) == near(power)
    assert flash.film_speed(guide, n, metres, **without("film_speed")) == near(speed)
    assert flash.count(guide, n, metres, **without("count")) == near(count)
    assert flash.balance_stops(guide, n, metres, **without("loss")) == near(-loss)


@given(GUIDE_NUMBERS, DISTANCES)
def test_feet_and_metres_give_the_same_aperture(guide_ft: float, feet: float) -> None:
    """A guide number in feet over feet is the same f-number as both in metres."""
    in_metres = flash.aperture(
        units.guide_number_in(guide_ft, "ft", "m"), units.to_metres(feet, "ft")
    )
    assert in_metres == near(guide_ft / feet)


@given(GUIDE_NUMBERS, SPEEDS, POWERS)
def test_a_quoted_guide_number_comes_back(guide: float, speed: float, power: float) -> None:
    """Bringing a guide number to ISO 100 and full power undoes having quoted it otherwise."""
    quoted = flash.guide_number_at(guide, film_speed=speed, power=power)
    assert flash.guide_number_from(quoted, film_speed=speed, power=power) == near(guide)


@given(st.lists(APERTURES, min_size=1, max_size=6), st.data())
def test_adding_light_takes_any_order(readings: list[float], draw: st.DataObject) -> None:
    """Light commutes."""
    shuffled = draw.draw(st.permutations(readings))
    assert flash.sum_of_light(shuffled) == near(flash.sum_of_light(readings))


@given(APERTURES, APERTURES, APERTURES)
def test_adding_light_takes_any_grouping(a: float, b: float, c: float) -> None:
    """Light associates."""
    left = flash.sum_of_light([flash.sum_of_light([a, b]), c])
    right = flash.sum_of_light([a, flash.sum_of_light([b, c])])
    assert left == near(right)


@given(APERTURES, APERTURES)
def test_light_taken_away_is_the_light_that_was_added(a: float, b: float) -> None:
    """What is still wanted, added, gives the total."""
    assume(b > a / 100)
    total = flash.sum_of_light([a, b])
    assert flash.light_still_wanted(total, a) == pytest.approx(b, rel=1e-6)


@given(st.integers(1, 20))
def test_equal_lights_add_as_the_count_says(count: int) -> None:
    """n equal lights read as one light log2(n) stops stronger."""
    together = flash.sum_of_light([8.0] * count)
    assert together == near(ambient.aperture_after(8.0, flash.stops_for_count(count)))
    assert flash.count_for_stops(flash.stops_for_count(count)) == count


@given(st.floats(0.001, 10_000))
def test_a_whole_count_is_enough_and_no_more(exact: float) -> None:
    """One flash fewer would be too few."""
    whole = flash.whole_count(exact)
    assert whole >= exact * (1 - 1e-8)
    assert whole == 1 or whole - 1 < exact


@given(STOPS)
def test_ratios_turn_back_into_stops(stops: float) -> None:
    """Both conventions, there and back; they differ by the fill itself."""
    assert flash.stops_from_key_to_fill(flash.key_to_fill_ratio(stops)) == near(stops)
    back = flash.stops_from_key_plus_fill(flash.key_plus_fill_ratio(stops))
    assert back == pytest.approx(stops, abs=1e-6)


@given(DISTANCES, STOPS)
def test_a_distance_for_a_falloff_has_that_falloff(metres: float, stops: float) -> None:
    """Solving for the distance and measuring the fall-off agree; the range has both ends."""
    moved = flash.distance_for_falloff(metres, stops)
    assert flash.falloff_stops(metres, moved) == near(stops)
    nearest, farthest = flash.range_within(metres, stops)
    assert nearest <= metres * (1 + 1e-9) and metres <= farthest * (1 + 1e-9)
    assert math.sqrt(nearest * farthest) == near(metres)


@given(DISTANCES, st.floats(0.05, 20), st.floats(0.05, 4))
def test_backing_off_leaves_just_the_spread_asked_for(
    front: float, depth: float, stops: float
) -> None:
    """The rows then differ by exactly so many stops."""
    move = flash.back_off_for_spread(front, front + depth, stops)
    assume(front + move > 1e-3)
    spread = flash.falloff_stops(front + move, front + depth + move)
    assert spread == pytest.approx(-stops, rel=1e-6)


@given(st.floats(15, 150))
def test_a_zoom_between_two_settings_lies_between_their_guide_numbers(zoom: float) -> None:
    """Monotone in the zoom, exact at each setting, constant beyond the ends."""
    table = [(24.0, 28.0), (50.0, 42.0), (105.0, 58.0)]
    number = flash.interpolate_zoom_guide_number(zoom, table)
    assert 28 <= number <= 58
    for setting, exact in table:
        assert flash.interpolate_zoom_guide_number(setting, table) == near(exact)
        assert number <= exact + 1e-9 if zoom <= setting else number >= exact - 1e-9
