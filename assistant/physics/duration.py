"""The flash pulse and what feeds it: duration, frozen motion, capacitors, batteries."""

import math

from assistant.physics.ranges import require_positive

TAIL_RATIO = math.log2(10)
"""t0.1 over t0.5 of an exponential discharge: ln 10 / ln 2, about 3.32."""


def t01_from_t05(t05: float) -> float:
    """Seconds above a tenth of the peak, from seconds above half of it (exponential pulse).

    >>> round(t01_from_t05(0.001), 6)
    0.003322
    """
    require_positive(duration=t05)
    return t05 * TAIL_RATIO


def t05_from_t01(t01: float) -> float:
    """Seconds above half of the peak, from seconds above a tenth of it (exponential pulse).

    >>> round(t05_from_t01(0.00332), 4)
    0.001
    """
    require_positive(duration=t01)
    return t01 / TAIL_RATIO


def light_left(elapsed: float, t05: float) -> float:
    """Share of an exponential pulse's light still to come `elapsed` seconds after its peak.

    >>> light_left(0.002, 0.001)
    0.25
    """
    require_positive(duration=t05)
    return float(2.0 ** (-elapsed / t05))


def motion(speed: float, duration: float) -> float:
    """Metres a subject moves (metres a second) while the flash burns.

    >>> motion(10, 0.001)
    0.01
    """
    require_positive(duration=duration)
    return speed * duration


def duration_for_motion(speed: float, movement: float) -> float:
    """Longest flash, in seconds, that lets a subject move no more than `movement` metres.

    >>> duration_for_motion(10, 0.01)
    0.001
    """
    require_positive(speed=speed, movement=movement)
    return movement / speed


def image_motion(movement: float, magnification: float) -> float:
    """Metres the image smears on the film.

    >>> image_motion(0.01, 0.1)
    0.001
    """
    return movement * magnification


# Energy


def capacitor_energy(farads: float, volts: float) -> float:
    """Joules (watt-seconds) stored: C V**2 / 2.

    >>> capacitor_energy(0.001, 300)
    45.0
    """
    require_positive(capacitance=farads, voltage=volts)
    return farads * volts**2 / 2


def capacitance_for(joules: float, volts: float) -> float:
    """Farads that store so many joules at so many volts.

    >>> round(capacitance_for(45, 300), 9)
    0.001
    """
    require_positive(energy=joules, voltage=volts)
    return 2 * joules / volts**2


def energy_at(full_joules: float, power: float) -> float:
    """Joules of one pop at a fraction of full power.

    >>> energy_at(400, 0.25)
    100.0
    """
    require_positive(energy=full_joules, power=power)
    return full_joules * power


def guide_number_factor(joules_from: float, joules_to: float) -> float:
    """What the guide number is multiplied by, the same head fed more or less energy.

    >>> guide_number_factor(100, 400)
    2.0
    """
    require_positive(energy_from=joules_from, energy_to=joules_to)
    return math.sqrt(joules_to / joules_from)


def charge_stops(energy_fraction: float) -> float:
    """Stops by which a flash fired at a fraction of its energy is under (negative).

    >>> charge_stops(0.5)
    -1.0
    """
    require_positive(energy_fraction=energy_fraction)
    return math.log2(energy_fraction)


def energy_fraction_at(voltage_fraction: float) -> float:
    """Energy held at a fraction of full voltage: its square.

    >>> energy_fraction_at(0.5)
    0.25
    """
    require_positive(voltage_fraction=voltage_fraction)
    return voltage_fraction**2


def recycle_time(full_recycle: float, power: float) -> float:
    """Seconds to be ready after a pop at a fraction of full, energy refilled at an even rate.

    >>> recycle_time(8, 0.25)
    2.0
    """
    require_positive(recycle=full_recycle, power=power)
    return full_recycle * power


def shortest_recycle(joules: float, watts: float) -> float:
    """Seconds a supply of so many watts needs to refill so many joules, nothing lost.

    >>> shortest_recycle(400, 100)
    4.0
    """
    require_positive(energy=joules, supply=watts)
    return joules / watts


def battery_energy(volts: float, ampere_hours: float) -> float:
    """Watt-hours of a battery.

    >>> battery_energy(7.5, 4)
    30.0
    """
    require_positive(voltage=volts, capacity=ampere_hours)
    return volts * ampere_hours


def pops_from_battery(watt_hours: float, joules: float, efficiency: float = 1.0) -> int:
    """Whole pops of so many joules in a battery; `efficiency` (0 to 1) of it reaches the tube.

    >>> pops_from_battery(1, 100)
    36
    """
    require_positive(battery=watt_hours, energy=joules, efficiency=efficiency)
    return math.floor(watt_hours * 3600 * efficiency / joules * (1 + 1e-9))


def pops_at_power(full_pops: float, power: float) -> int:
    """Whole pops at a fraction of full, where a full charge of the battery gives `full_pops`.

    >>> pops_at_power(100, 0.25)
    400
    """
    require_positive(pops=full_pops, power=power)
    return math.floor(full_pops / power * (1 + 1e-9))
