"""Flash exposure: guide numbers, distance, power, many flashes, ratios and fall-off.

One identity serves every question (guide numbers after ISO 1230, from memory; square-root
law of light from general photometry):

    guide_number**2 * film_speed/100 * power * count * 2**loss = (aperture * distance)**2

`guide_number` is in metres at ISO 100 and full power; `power` is a fraction of full; `count`
is how many equal flashes or pops; `loss` is in stops, zero or negative, for everything lost
on the way (modifier, filter, bellows). Two things of different lengths share one identity:
the balance is in light, so the square root is taken only for lengths and f-numbers.
"""

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from assistant.bounds import OutOfRange
from assistant.physics.ranges import require_positive

BASE_SPEED = 100.0
"""Film speed a guide number is quoted at (ISO arithmetic)."""

_FLOAT_NOISE = 1e-9


def _light(
    guide_number: float, film_speed: float, power: float, count: float, loss: float
) -> float:
    """Left side of the identity: (f-number times metres) squared."""
    require_positive(guide_number=guide_number, film_speed=film_speed, power=power, count=count)
    return guide_number**2 * film_speed / BASE_SPEED * power * count * math.pow(2, loss)


def _need(aperture: float, distance: float) -> float:
    """Right side of the identity."""
    require_positive(aperture=aperture, distance=distance)
    return (aperture * distance) ** 2


def aperture(
    guide_number: float,
    distance: float,
    *,
    film_speed: float = BASE_SPEED,
    power: float = 1.0,
    count: float = 1.0,
    loss: float = 0.0,
) -> float:
    """f-number that exposes a subject `distance` metres from the flash.

    >>> aperture(32, 4)
    8.0
    """
    require_positive(distance=distance)
    return math.sqrt(_light(guide_number, film_speed, power, count, loss)) / distance


def distance(
    guide_number: float,
    aperture: float,
    *,
    film_speed: float = BASE_SPEED,
    power: float = 1.0,
    count: float = 1.0,
    loss: float = 0.0,
) -> float:
    """Metres from flash to subject that suit `aperture`.

    >>> distance(32, 8)
    4.0
    """
    require_positive(aperture=aperture)
    return math.sqrt(_light(guide_number, film_speed, power, count, loss)) / aperture


def power(
    guide_number: float,
    aperture: float,
    distance: float,
    *,
    film_speed: float = BASE_SPEED,
    count: float = 1.0,
    loss: float = 0.0,
) -> float:
    """Fraction of full power wanted; above 1 the flash cannot do it.

    >>> power(32, 4, 4)
    0.25
    """
    return _need(aperture, distance) / _light(guide_number, film_speed, 1.0, count, loss)


def film_speed(
    guide_number: float,
    aperture: float,
    distance: float,
    *,
    power: float = 1.0,
    count: float = 1.0,
    loss: float = 0.0,
) -> float:
    """ISO speed that closes the balance.

    >>> film_speed(32, 16, 4)
    400.0
    """
    light = _light(guide_number, BASE_SPEED, power, count, loss)
    return BASE_SPEED * _need(aperture, distance) / light


def guide_number(
    aperture: float,
    distance: float,
    *,
    film_speed: float = BASE_SPEED,
    power: float = 1.0,
    count: float = 1.0,
    loss: float = 0.0,
) -> float:
    """Guide number (metres, ISO 100, full power) proved by a good frame.

    >>> guide_number(8, 4), guide_number(8, 4, film_speed=400)
    (32.0, 16.0)
    """
    return math.sqrt(_need(aperture, distance) / _light(1.0, film_speed, power, count, loss))


def count(
    guide_number: float,
    aperture: float,
    distance: float,
    *,
    film_speed: float = BASE_SPEED,
    power: float = 1.0,
    loss: float = 0.0,
) -> float:
    """How many equal flashes or pops the aperture takes, exact; see `whole_count`.

    >>> count(32, 16, 4)
    4.0
    """
    return _need(aperture, distance) / _light(guide_number, film_speed, power, 1.0, loss)


def balance_stops(
    guide_number: float,
    aperture: float,
    distance: float,
    *,
    film_speed: float = BASE_SPEED,
    power: float = 1.0,
    count: float = 1.0,
    loss: float = 0.0,
) -> float:
    """Stops by which the frame is over (+) or under (-) exposed; zero is right.

    With no loss given, its negative is the loss that would make the frame right.

    >>> balance_stops(32, 8, 4), balance_stops(32, 16, 4)
    (0.0, -2.0)
    """
    light = _light(guide_number, film_speed, power, count, loss)
    return math.log2(light / _need(aperture, distance))


def guide_number_at(
    guide_number: float, *, film_speed: float = BASE_SPEED, power: float = 1.0, count: float = 1.0
) -> float:
    """The guide number at ISO 100 and full power as it is under other conditions.

    >>> guide_number_at(20, film_speed=400), guide_number_at(20, power=0.25)
    (40.0, 10.0)
    """
    return math.sqrt(_light(guide_number, film_speed, power, count, 0.0))


def guide_number_from(
    guide_number: float, *, film_speed: float = BASE_SPEED, power: float = 1.0, count: float = 1.0
) -> float:
    """A guide number quoted under a condition, brought back to ISO 100, full power, one flash.

    >>> guide_number_from(40, film_speed=400)
    20.0
    """
    require_positive(guide_number=guide_number)
    return guide_number / math.sqrt(_light(1.0, film_speed, power, count, 0.0))


# Several lights


def whole_count(exact: float) -> int:
    """Smallest whole number of flashes or pops that is not fewer than `exact`.

    >>> whole_count(4.0000000001), whole_count(4.1)
    (4, 5)
    """
    require_positive(count=exact)
    return max(1, math.ceil(exact * (1 - _FLOAT_NOISE)))


def count_for_stops(stops: float) -> int:
    """Equal flashes or pops that add up to `stops` (zero or more) over one.

    >>> count_for_stops(2), count_for_stops(1.5)
    (4, 3)
    """
    return whole_count(2.0**stops)


def stops_for_count(count: float) -> float:
    """Stops that `count` equal flashes give over one.

    >>> stops_for_count(8)
    3.0
    """
    require_positive(count=count)
    return math.log2(count)


def sum_of_light(apertures: Iterable[float]) -> float:
    """f-number of lights that fall together, each given by the f-number it reads alone.

    Light goes with the square of the f-number. ValueError when there are none.

    >>> sum_of_light([3, 4])
    5.0
    """
    readings = tuple(apertures)
    for reading in readings:
        require_positive(aperture=reading)
    if not readings:
        raise OutOfRange("no lights to add")
    return math.sqrt(math.fsum(reading**2 for reading in readings))


def times_the_light(aperture: float, times: float) -> float:
    """f-number of `times` the light that reads `aperture` alone: of so many alike, or of a part of them.

    >>> times_the_light(4, 4), times_the_light(8, 0.25)
    (8.0, 4.0)
    """
    require_positive(aperture=aperture, times=times)
    return aperture * math.sqrt(times)


def light_still_wanted(total: float, already: float) -> float:
    """f-number another light must read so that it makes `already` up to `total`.

    ValueError when there is as much already.

    >>> light_still_wanted(5, 4)
    3.0
    """
    require_positive(total=total, already=already)
    if already >= total:
        raise OutOfRange("the light already there is as much as the total")
    return math.sqrt(total**2 - already**2)


def key_to_fill_ratio(stops: float) -> float:
    """Key : fill, x of x:1, for a fill `stops` under the key (1.0: one stop under).

    >>> key_to_fill_ratio(2)
    4.0
    """
    return float(2.0**stops)


def key_plus_fill_ratio(stops: float) -> float:
    """(Key + fill) : fill, x of x:1, for a fill `stops` under the key.

    >>> key_plus_fill_ratio(1), key_plus_fill_ratio(2)
    (3.0, 5.0)
    """
    return 1 + key_to_fill_ratio(stops)


def stops_from_key_to_fill(ratio: float) -> float:
    """Stops the fill lies under the key in a key : fill ratio.

    >>> stops_from_key_to_fill(4)
    2.0
    """
    require_positive(ratio=ratio)
    return math.log2(ratio)


def stops_from_key_plus_fill(ratio: float) -> float:
    """Stops the fill lies under the key in a (key + fill) : fill ratio (above 1).

    >>> stops_from_key_plus_fill(3)
    1.0
    """
    require_positive(ratio=ratio, ratio_less_one=ratio - 1)
    return math.log2(ratio - 1)


# Fall-off


def falloff_stops(d_from: float, d_to: float) -> float:
    """Stops gained (+, nearer) or lost (-, farther) from one distance to another.

    Inverse square, for a source small against its distance.

    >>> falloff_stops(2, 4)
    -2.0
    """
    require_positive(d_from=d_from, d_to=d_to)
    return 2 * math.log2(d_from / d_to)


def distance_for_falloff(distance: float, stops: float) -> float:
    """Distance at which the light is `stops` more (+, nearer) or less (-) than at `distance`.

    >>> distance_for_falloff(2, -2)
    4.0
    """
    require_positive(distance=distance)
    return float(distance * 2.0 ** (-stops / 2))


def back_off_for_spread(near: float, far: float, stops: float) -> float:
    """How much farther the light must go so that near and far rows differ by `stops`.

    Solves (far + x)/(near + x) = 2**(stops/2). A negative answer: that much may be come nearer.

    >>> round(back_off_for_spread(2, 4, 2), 9)
    0.0
    """
    require_positive(near=near, far=far, stops=stops, depth=far - near)
    return (far - near) / (2 ** (stops / 2) - 1) - near


def range_within(distance: float, stops: float) -> tuple[float, float]:
    """Nearest and farthest subject that stay within plus and minus `stops`.

    >>> range_within(2, 2)
    (1.0, 4.0)
    """
    width = abs(stops)
    return distance_for_falloff(distance, width), distance_for_falloff(distance, -width)


# What the flash itself gives


def guide_number_from_beam(beam_candlepower_seconds: float, calibration: float = 250.0) -> float:
    """Guide number (metres, ISO 100) of so many candela seconds on the axis.

    Incident-meter relation E t = C N**2 / S, hence GN**2 = BCPS * S / C, with C = 250 for a
    flat receptor (ISO 2720, from memory). The trade's feet rule GN**2 = 0.05 BCPS S is C = 215.

    >>> guide_number_from_beam(2500), guide_number_from_beam(1000, 1000)
    (31.622776601683793, 10.0)
    """
    require_positive(beam_candlepower_seconds=beam_candlepower_seconds, calibration=calibration)
    return math.sqrt(beam_candlepower_seconds * BASE_SPEED / calibration)


TRADE_CALIBRATION = BASE_SPEED / (0.05 * BASE_SPEED * 0.3048**2)
"""C implied by the trade rule GN(feet)**2 = 0.05 BCPS ISO (about 215; from memory)."""


def interpolate_zoom_guide_number(zoom: float, table: Sequence[tuple[float, float]]) -> float:
    """Guide number at a `zoom` (mm) between the settings of a maker's (zoom, guide number) table.

    Straight in stops against the logarithm of the zoom (common practice, no source), and
    constant beyond the ends, where the head has stopped moving.

    >>> round(interpolate_zoom_guide_number(50, [(25, 20), (100, 40)]), 6)
    28.284271
    """
    rows = sorted(table)
    if not rows:
        raise OutOfRange("no zoom table")
    for setting, number in rows:
        require_positive(zoom=setting, guide_number=number)
    require_positive(zoom=zoom)
    for (low, low_gn), (high, high_gn) in pairwise(rows):
        if low <= zoom <= high and high > low:
            share = math.log(zoom / low) / math.log(high / low)
            return float(low_gn * (high_gn / low_gn) ** share)
    return rows[0][1] if zoom < rows[0][0] else rows[-1][1]
