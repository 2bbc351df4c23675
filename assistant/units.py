"""Lengths as people say them, and guide numbers between feet and metres.

The factors are exact by definition (international yard and pound agreement, 1959:
one yard is 0.9144 m), so nothing is imported to know them.
"""

import math

LENGTH: dict[str, float] = {
    "m": 1.0,
    "cm": 0.01,
    "mm": 0.001,
    "ft": 0.3048,
    "in": 0.0254,
    "yd": 0.9144,
}
"""Metres in one of each unit."""

_INCHES_HEARD_TO = 20.0
"""Feet beyond which nobody measures a light in inches."""

_INCH_SLACK = 0.25
"""A quarter inch: closer than a tape is read at arm's length."""


def metres_in(unit: str) -> float:
    """Metres in one `unit` (a key of LENGTH); ValueError for any other word.

    >>> metres_in("yd")
    0.9144
    """
    try:
        return LENGTH[unit]
    except KeyError:
        raise ValueError(f"no length unit {unit!r}; known: {', '.join(LENGTH)}") from None


def to_metres(value: float, unit: str) -> float:
    """`value` in `unit`, as metres.

    >>> to_metres(10, "ft")
    3.048
    """
    return value * metres_in(unit)


def length_in(metres: float, unit: str) -> float:
    """A length in metres, as a number of `unit`.

    >>> length_in(3.048, "ft")
    10.0
    """
    return metres / metres_in(unit)


def guide_number_in(value: float, from_unit: str, to_unit: str) -> float:
    """A guide number (f-number times distance) moved between length units.

    >>> round(guide_number_in(30.48, "m", "ft"), 6)
    100.0
    """
    return value * metres_in(from_unit) / metres_in(to_unit)


def significant(value: float, figures: int = 3) -> str:
    """`value` with so many significant figures, never in powers of ten.

    >>> significant(2.5), significant(1234.5), significant(0.04567)
    ('2.5', '1230', '0.0457')
    """
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else str(value)
    places = figures - 1 - math.floor(math.log10(abs(value)))
    text = f"{round(value, places):.{max(places, 0)}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _feet_and_inches(feet: float) -> str:
    """Feet with inches where a tape would show them, else feet in decimals."""
    inches = feet * 12
    whole = round(inches)
    on_a_tenth = math.isclose(feet * 10, round(feet * 10), rel_tol=1e-9)
    on_an_inch = math.isclose(inches, whole, rel_tol=1e-9)
    slack = 1e-6 * inches if on_a_tenth and not on_an_inch else _INCH_SLACK
    if feet >= _INCHES_HEARD_TO or not whole or abs(inches - whole) > slack:
        return f"{significant(feet)} ft"
    parts = (f"{whole // 12} ft" if whole >= 12 else "", f"{whole % 12} in" if whole % 12 else "")
    return " ".join(part for part in parts if part)


def speak_length(metres: float, unit: str) -> str:
    """A length (metres, 0 to infinity) said in `unit`, to three figures.

    Feet take inches where they fall within a quarter inch; less than a metre is said in
    centimetres, less than a centimetre in millimetres. Tenths of feet stay tenths.
    A pace or an arm's length, which is no unit, is said in feet.

    >>> speak_length(2.1336, "ft"), speak_length(1.6764, "ft"), speak_length(2.25552, "ft")
    ('7 ft', '5 ft 6 in', '7.4 ft')
    >>> speak_length(2.5, "m"), speak_length(0.45, "m"), speak_length(0.003, "m")
    ('2.5 m', '45 cm', '3 mm')
    """
    if math.isinf(metres):
        return "infinity"
    if unit == "ft" or unit not in LENGTH:
        return _feet_and_inches(length_in(metres, "ft"))
    if unit in ("m", "cm") and 0 < metres < 1:
        unit = "cm" if metres >= 0.01 else "mm"
    return f"{significant(length_in(metres, unit))} {unit}"
