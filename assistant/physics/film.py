"""Film: rating, push and pull, reciprocity, age, brackets."""

import math
from collections.abc import Sequence

from assistant.bounds import OutOfRange
from assistant.physics.ranges import require_positive

RECIPROCITY_THRESHOLD = 1.0
"""Seconds up to which a metered time stands (texts say half a second to one)."""

DECADE = 10.0
"""Years in which old film is taken to lose a stop (common practice, no source)."""


def exposure_index(box_speed: float, stops_over: float) -> float:
    """Speed to set on the meter to be `stops_over` (+) or under (-) on every frame.

    >>> exposure_index(400, 1), exposure_index(400, -1)
    (200.0, 800.0)
    """
    require_positive(film_speed=box_speed)
    return float(box_speed * 2.0**-stops_over)


def pushed(box_speed: float, stops: float) -> float:
    """Speed a film is rated at when pushed so many stops; negative stops pull.

    >>> pushed(400, 1), pushed(400, -1)
    (800.0, 200.0)
    """
    return exposure_index(box_speed, -stops)


def push_stops(box_speed: float, rated: float) -> float:
    """Stops of push (+) or pull (-) in rating a film so.

    >>> push_stops(400, 1600)
    2.0
    """
    require_positive(film_speed=box_speed, exposure_index=rated)
    return math.log2(rated / box_speed)


OLD_SCALES = {"GOST": 1 / 0.9}
"""ISO arithmetic for one degree of an old scale, between its marks; values from memory, no source to hand."""

GOST_MARKS: dict[float, float] = {11: 12, 16: 20, 22: 25, 32: 40, 45: 50, 65: 80, 90: 100, 130: 160, 180: 200, 250: 320, 360: 400}
"""The marks of the GOST scale used before 1987 and the film speeds they stood for; values from memory, no source to hand."""


def iso_from_old_scale(scale: str, number: float) -> float:
    """ISO arithmetic speed for a number on an old scale: by its marks, else by how the scales lie to each other.

    GOST about 0.9 of ISO (from memory, no source to hand); any number above nothing.

    >>> iso_from_old_scale("GOST", 90), iso_from_old_scale("GOST", 65)
    (100.0, 80.0)
    """
    marks = GOST_MARKS if scale == "GOST" else {}
    return float(marks.get(number, number * OLD_SCALES[scale]))


def old_scale_from_iso(scale: str, speed: float) -> float:
    """The number on an old scale for an ISO arithmetic speed, the same marks and shares the other way (from memory).

    >>> old_scale_from_iso("GOST", 100), old_scale_from_iso("GOST", 400)
    (90.0, 360.0)
    """
    marks = {iso: mark for mark, iso in GOST_MARKS.items()} if scale == "GOST" else {}
    return float(marks.get(speed, speed / OLD_SCALES[scale]))


# Speed from exposure (ISO 12232, 2240, 5800; read or restated from memory beside the tests)


def index_from_exposure(lux_seconds: float, constant: float = 10.0) -> float:
    """Speed for which so many lux seconds are right: constant / H.

    10 is the mid-tone of ISO 12232 and the reversal speed of ISO 2240, 78 saturation
    (ISO 12232), sqrt(2) colour negative speed (ISO 5800).

    >>> index_from_exposure(0.1)
    100.0
    """
    require_positive(luminous_exposure=lux_seconds, constant=constant)
    return constant / lux_seconds


# Reciprocity


def reciprocity_time(
    metered: float, exponent: float, threshold: float = RECIPROCITY_THRESHOLD
) -> float:
    """Seconds to give for a `metered` time: t**p past the threshold, t itself up to it.

    The power is taken of t/threshold, so that there is no jump at the threshold. The
    exponent is one film's (above 1 lengthens); no single value fits all.

    >>> reciprocity_time(10, 2), reciprocity_time(0.5, 2)
    (100.0, 0.5)
    """
    require_positive(shutter=metered, exponent=exponent, threshold=threshold)
    if metered <= threshold:
        return metered
    return float(threshold * (metered / threshold) ** exponent)


def metered_time(given: float, exponent: float, threshold: float = RECIPROCITY_THRESHOLD) -> float:
    """The metered time whose lengthened exposure is `given` seconds.

    >>> metered_time(100, 2)
    10.0
    """
    require_positive(exponent=exponent)
    return reciprocity_time(given, 1 / exponent, threshold)


def metered_time_adding(stops: float, exponent: float) -> float:
    """The metered time, in seconds, whose lengthening by t**p comes to so many stops: 2**(stops / (p - 1)).

    >>> metered_time_adding(1, 1.5), metered_time_adding(2, 1.5)
    (4.0, 16.0)
    """
    require_positive(stops=stops, exponent_over_one=exponent - 1)
    return float(2.0 ** (stops / (exponent - 1)))


def reciprocity_exponent(metered: float, corrected: float) -> float:
    """The exponent through one point of a film's sheet; the metered time must be above 1 s.

    >>> round(reciprocity_exponent(10, 100), 9)
    2.0
    """
    require_positive(corrected=corrected, seconds_over_one=metered - 1)
    return math.log(corrected) / math.log(metered)


def time_by_failure_exponent(metered: float, p: float) -> float:
    """Seconds by the law I t**p = constant (p at most 1): t**(1/p) past one second.

    >>> time_by_failure_exponent(10, 0.5)
    100.0
    """
    require_positive(p=p)
    return reciprocity_time(metered, 1 / p)


def corrected_from_table(metered: float, table: Sequence[tuple[float, float]]) -> float:
    """Seconds to give, from a film sheet's (metered, corrected) pairs, straight in logarithms.

    Below the first pair the metered time stands, joined at 1 s when the sheet starts later;
    past the last the last slope goes on.

    >>> round(corrected_from_table(10, [(1, 1), (100, 10000)]), 6)
    100.0
    """
    rows = sorted(table)
    if not rows:
        raise OutOfRange("no reciprocity table")
    for measured, corrected in rows:
        require_positive(metered=measured, corrected=corrected)
    require_positive(shutter=metered)
    if rows[0][0] > RECIPROCITY_THRESHOLD:
        rows.insert(0, (RECIPROCITY_THRESHOLD, RECIPROCITY_THRESHOLD))
    if metered <= rows[0][0] or len(rows) == 1:
        return metered * (rows[0][1] / rows[0][0] if metered >= rows[0][0] else 1.0)
    index = next((i for i, row in enumerate(rows) if metered <= row[0]), len(rows) - 1)
    (low, low_out), (high, high_out) = rows[index - 1], rows[index]
    slope = math.log(high_out / low_out) / math.log(high / low)
    return float(low_out * (metered / low) ** slope)


# Age and brackets


def expired_stops(years: float, per_decade: float = 1.0) -> float:
    """Extra stops for film `years` past its date, one a decade unless told (common practice, no source).

    Stored warm it needs more, frozen less; a test roll beats the rule.

    >>> expired_stops(20), expired_stops(30, 0.5)
    (2.0, 1.5)
    """
    if not (years >= 0 and math.isfinite(years)):
        raise OutOfRange(f"years past the date cannot be {years}")
    return years / DECADE * per_decade


def bracket_offsets(frames: int, step_stops: float) -> tuple[float, ...]:
    """Stops off the middle for each frame, darkest first; an even count has no middle frame.

    >>> bracket_offsets(3, 0.5)
    (-0.5, 0.0, 0.5)
    """
    if frames < 1:
        raise OutOfRange(f"a bracket cannot have {frames} frames")
    return tuple((index - (frames - 1) / 2) * step_stops for index in range(frames))
