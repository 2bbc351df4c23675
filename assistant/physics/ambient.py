"""Continuous light: exposure values, sunny 16, filters, and flash on top of daylight.

Exposure value is quoted at ISO 100 throughout: 2**EV = N**2 / t * 100 / S (APEX, as restated
in CIPA DC-008, from memory). EV 15 at ISO 100 is a sunlit scene (sunny 16).
"""

import math
from collections.abc import Iterable

from assistant.physics.ranges import require_positive

BASE_SPEED = 100.0
INCIDENT_CONSTANT = 250.0
"""C of E = C N**2 / (t S), flat receptor; lux (ISO 2720, from secondary text)."""
REFLECTED_CONSTANT = 12.5
"""K of L = K N**2 / (t S); candela per square metre (ISO 2720, from secondary text)."""
SUNNY_EV = 15.0
"""Full sun at ISO 100: f/16 at 1/125, the mark beside 1/100 (common practice)."""


def exposure_value(aperture: float, shutter: float, film_speed: float = BASE_SPEED) -> float:
    """EV at ISO 100 that a setting (f-number, seconds, ISO) exposes correctly.

    >>> exposure_value(4, 1), exposure_value(4, 1, 400)
    (4.0, 2.0)
    """
    require_positive(aperture=aperture, shutter=shutter, film_speed=film_speed)
    return math.log2(aperture**2 / shutter * BASE_SPEED / film_speed)


def shutter(ev: float, aperture: float, film_speed: float = BASE_SPEED) -> float:
    """Seconds for a scene of `ev` (at ISO 100).

    >>> shutter(4, 4)
    1.0
    """
    require_positive(aperture=aperture, film_speed=film_speed)
    return float(aperture**2 * BASE_SPEED / film_speed / 2.0**ev)


def aperture(ev: float, shutter: float, film_speed: float = BASE_SPEED) -> float:
    """f-number for a scene of `ev` (at ISO 100).

    >>> aperture(4, 1)
    4.0
    """
    require_positive(shutter=shutter, film_speed=film_speed)
    return math.sqrt(2.0**ev * shutter * film_speed / BASE_SPEED)


def film_speed(ev: float, aperture: float, shutter: float) -> float:
    """ISO speed for a scene of `ev` (at ISO 100).

    >>> film_speed(4, 8, 1)
    400.0
    """
    require_positive(aperture=aperture, shutter=shutter)
    return float(BASE_SPEED * aperture**2 / shutter / 2.0**ev)


def balance_stops(ev: float, aperture: float, shutter: float, film_speed: float) -> float:
    """Stops by which a scene of `ev` comes out over (+) or under (-) at these settings.

    >>> balance_stops(4, 4, 2, 100)
    1.0
    """
    return ev - exposure_value(aperture, shutter, film_speed)


# Flash and daylight together


def added_light_stops(under: float) -> float:
    """Stops gained where a second light `under` stops below the first falls on top of it.

    >>> added_light_stops(0)
    1.0
    """
    return math.log2(1 + 2.0**-under)


def stops_under_to_add(added: float) -> float:
    """Stops that a second light lies below the first where it lifts the exposure by `added`: the inverse of `added_light_stops`.

    >>> stops_under_to_add(1)
    0.0
    """
    require_positive(added=added)
    return math.log2(1 / (2.0**added - 1))


def fill_aperture(ambient_aperture: float, stops_under: float) -> float:
    """f-number the fill alone must read to lie `stops_under` (plus) below the ambient light.

    >>> fill_aperture(16, 2)
    8.0
    """
    return aperture_after(ambient_aperture, -stops_under)


def aperture_after(reading: float, stops: float) -> float:
    """What a light reads once it is `stops` stronger (+) or weaker (-).

    >>> aperture_after(8, 2)
    16.0
    """
    require_positive(aperture=reading)
    return float(reading * 2.0 ** (stops / 2))


# Filters


def stops_from_factor(factor: float) -> float:
    """Strength, in stops (plus), of an exposure factor.

    >>> stops_from_factor(8)
    3.0
    """
    require_positive(factor=factor)
    return math.log2(factor)


def factor_from_stops(stops: float) -> float:
    """Exposure factor of a filter so many stops strong.

    >>> factor_from_stops(3)
    8.0
    """
    return float(2.0**stops)


def stops_from_density(density: float) -> float:
    """Strength, in stops, of an optical density (log10 of the factor).

    >>> round(stops_from_density(0.9), 2)
    2.99
    """
    return density / math.log10(2)


def density_from_stops(stops: float) -> float:
    """Optical density of a filter so many stops strong.

    >>> round(density_from_stops(1), 3)
    0.301
    """
    return stops * math.log10(2)


def factor_from_density(density: float) -> float:
    """Exposure factor of an optical density.

    >>> factor_from_density(2)
    100.0
    """
    return float(10.0**density)


def density_from_factor(factor: float) -> float:
    """Optical density of an exposure factor.

    >>> density_from_factor(100)
    2.0
    """
    require_positive(factor=factor)
    return math.log10(factor)


def combined_factor(factors: Iterable[float]) -> float:
    """Factor of filters stacked: factors multiply (stops and densities add).

    >>> combined_factor([4, 4])
    16.0
    """
    stack = tuple(factors)
    for factor in stack:
        require_positive(factor=factor)
    return float(math.prod(stack))


def mired(kelvin: float) -> float:
    """Micro reciprocal degrees of a colour temperature.

    >>> mired(5000)
    200.0
    """
    require_positive(colour_temperature=kelvin)
    return 1e6 / kelvin


# Meter relations


def illuminance(
    aperture: float, shutter: float, film_speed: float, calibration: float = INCIDENT_CONSTANT
) -> float:
    """Lux on the subject that a setting exposes correctly: C N**2 / (t S).

    >>> illuminance(8, 1, 100)
    160.0
    """
    require_positive(aperture=aperture, shutter=shutter, film_speed=film_speed)
    return calibration * aperture**2 / (shutter * film_speed)


def luminance(
    aperture: float, shutter: float, film_speed: float, calibration: float = REFLECTED_CONSTANT
) -> float:
    """Candela per square metre of a mid-tone that a setting exposes correctly: K N**2 / (t S).

    >>> luminance(16, 1, 1)
    3200.0
    """
    return illuminance(aperture, shutter, film_speed, calibration)


def ev_from_illuminance(lux: float, calibration: float = INCIDENT_CONSTANT) -> float:
    """EV at ISO 100 of a subject lit by so many lux.

    >>> ev_from_illuminance(2.5)
    0.0
    """
    require_positive(illuminance=lux, calibration=calibration)
    return math.log2(lux * BASE_SPEED / calibration)


def ev_from_luminance(
    candela_per_square_metre: float, calibration: float = REFLECTED_CONSTANT
) -> float:
    """EV at ISO 100 of a mid-tone so bright.

    >>> ev_from_luminance(4096)
    15.0
    """
    return ev_from_illuminance(candela_per_square_metre, calibration)


def luminance_from_ev(ev: float, calibration: float = REFLECTED_CONSTANT) -> float:
    """Candela per square metre of a mid-tone at `ev` (ISO 100).

    >>> luminance_from_ev(15)
    4096.0
    """
    return float(2.0**ev * calibration / BASE_SPEED)


def calibrated_reflectance(reflected: float, incident: float) -> float:
    """Reflectance at which reflected and incident meters agree: pi K / C.

    >>> round(calibrated_reflectance(12.5, 250), 3)
    0.157
    """
    require_positive(reflected_constant=reflected, incident_constant=incident)
    return math.pi * reflected / incident
