"""The marks engraved on lenses, shutters, film boxes and flashes, and their exact values.

Every scale is a row of printed numbers at equal steps of exposure. A mark is rounded (f/11
stands for 11.314), so differences between two marks are counted along the row, while the
distance of a solved value from a mark is taken to the printed number.
Sources: f-numbers after ISO 517, shutter times after ISO 516, film speeds after ISO 6, 2240
and 5800 (all from memory); half steps are common practice.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache

from assistant.bounds import OutOfRange
from assistant.mark_rows import Scale, Series, nearest, stops_between
from assistant.records import record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Literal

    Steps = Literal["thirds", "halves", "whole"]


@record
class Mark:
    """A setting one can dial in.

    `error_stops` is how far it lies from the exact value; positive: the mark gives more exposure.
    """

    text: str
    value: float
    error_stops: float


def _fractions(*denominators: float) -> Series:
    return tuple(1 / denominator for denominator in denominators)


# f/0.5 is two stops wider than f/1; the count runs towards more closed.
_APERTURE_THIRDS = Scale(
    (
        0.5, 0.56, 0.63, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5,
        4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40,
        45, 51, 57, 64, 72, 80, 90, 102, 114, 128, 144, 161, 180, 203, 228, 256, 287, 322,
        360, 406, 456, 512,
    ),
    first_stop=-2,
    steps_in_a_stop=3,
)  # fmt: skip
_APERTURE_HALVES = Scale(
    (
        0.5, 0.6, 0.7, 0.85, 1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.3, 4, 4.8, 5.6, 6.7, 8, 9.5, 11, 13,
        16, 19, 22, 27, 32, 38, 45, 54, 64, 76, 90, 107, 128, 152, 180, 215, 256, 304, 360, 431,
        512,
    ),
    first_stop=-2,
    steps_in_a_stop=2,
)  # fmt: skip

# The count runs towards longer times, 1 s being zero. Past 30 s nothing is engraved; the
# doublings are listed so that 30 s to 60 s still counts as one stop.
_SHUTTER_THIRDS = Scale(
    _fractions(
        8000, 6400, 5000, 4000, 3200, 2500, 2000, 1600, 1250, 1000, 800, 640, 500, 400, 320,
        250, 200, 160, 125, 100, 80, 60, 50, 40, 30, 25, 20, 15, 13, 10, 8, 6, 5, 4, 3, 2.5, 2,
    )
    + (0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80,
       100, 120, 160, 200, 240, 320, 400, 480, 640, 800, 960),
    first_stop=-13,
    steps_in_a_stop=3,
)  # fmt: skip
_SHUTTER_HALVES = Scale(
    _fractions(
        8000, 6000, 4000, 3000, 2000, 1500, 1000, 750, 500, 350, 250, 180, 125, 90, 60, 45, 30,
        20, 15, 10, 8, 6, 4, 3, 2)
    + (0.7, 1, 1.5, 2, 3, 4, 6, 8, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360, 480, 720, 960),
    first_stop=-13,
    steps_in_a_stop=2,
)  # fmt: skip
_LONGEST_ENGRAVED = 30.0

# Degrees run in thirds of a stop: ISO 100 is 21, ISO 0.1 is -9.
_FILM_SPEED = Scale(
    (
        0.1, 0.12, 0.16, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8,
        10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800,
        1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000,
        25600, 32000, 40000, 51200, 64000, 80000, 102400),
    first_stop=-10,
    steps_in_a_stop=3,
)  # fmt: skip
# Other printings of the same mark.
_FILM_SPEED_ALSO = {1.25: 1.2, 3.2: 3, 6.4: 6, 12.5: 12, 1300: 1250, 12500: 12800, 25000: 25600, 50000: 51200, 100000: 102400}  # fmt: skip
_FIRST_DEGREE = -9

_EXACT = 1e-6
_SPOKEN_TIME = 2e-3
"""A time typed as 0.0167 is still the mark 1/60; the exact 1/64 is not."""


def _positive(name: str, value: float) -> None:
    if not (value > 0 and math.isfinite(value)):
        raise OutOfRange(f"{name} must be above zero, not {value}")


def _choose(steps: Steps, thirds: Scale, halves: Scale) -> Series:
    rows = {"thirds": thirds.marks, "halves": halves.marks, "whole": thirds.whole()}
    return rows[steps]


_APERTURES = (_APERTURE_THIRDS, _APERTURE_HALVES)


def nearest_aperture(n: float, steps: Steps = "thirds", ring: Series | None = None) -> Mark:
    """The f-number mark nearest to `n` (above 0), or the nearest on a lens's own `ring`.

    The series runs from f/0.5 to f/512; beyond it the end mark comes with its error.

    >>> nearest_aperture(22.223).text, round(nearest_aperture(22.223).error_stops, 2)
    ('f/22', 0.03)
    >>> nearest_aperture(9.2, steps="whole").text, nearest_aperture(30, ring=(2.8, 16.0)).text
    ('f/8', 'f/16')
    """
    _positive("f-number", n)
    value, error = nearest(n, tuple(sorted(ring)) if ring else _choose(steps, *_APERTURES), -2)
    return Mark(f"f/{value:g}", value, error)


@lru_cache(maxsize=1000)
def is_aperture_mark(n: float) -> bool:
    """Whether `n` is printed on a standard scale of whole, half or third stops.

    >>> is_aperture_mark(11), is_aperture_mark(11.3137)
    (True, False)
    """
    for scale in _APERTURES:
        if scale.place(n, _EXACT) is not None:
            return True
    return False


def exact_aperture(marked: float) -> float:
    """The f-number a mark stands for, 2**(stops/2); any other number is itself.

    >>> round(exact_aperture(11), 4), exact_aperture(11.2)
    (11.3137, 11.2)
    """
    place = next((p for s in _APERTURES if (p := s.place(marked, _EXACT)) is not None), None)
    return marked if place is None else float(2 ** (place / 2))


def aperture_difference_stops(a: float, b: float) -> float:
    """Exposure gained (+) or lost (-) from f-number `a` to `b`, counted by the marks.

    Where one of them is no mark: 2 log2(a/b).

    >>> aperture_difference_stops(8, 11), aperture_difference_stops(8, 5.6)
    (-1.0, 1.0)
    """
    _positive("f-number", a)
    _positive("f-number", b)
    counted = stops_between(_whole_mark(a), _whole_mark(b), _APERTURES, _EXACT)
    return 2 * math.log2(a / b) if counted is None else _past(a) - _past(b) - counted


_SPOKEN_PARTS = (1 / 3, 1 / 2, 2 / 3)


@lru_cache(maxsize=1000)
def _whole_mark(n: float) -> float:
    """The whole mark that a spoken part of a stop was counted from ("f/11 and a half"); any other number is itself."""
    if is_aperture_mark(n):
        return n
    return next((mark for part in _SPOKEN_PARTS for mark in _APERTURE_THIRDS.whole() if math.isclose(mark * 2 ** (part / 2), n, rel_tol=1e-9)), n)


def _past(n: float) -> float:
    """The part of a stop that such a number stands past its mark."""
    return 2 * math.log2(n / _whole_mark(n))


def _time_text(seconds: float) -> str:
    # Third- and half-second marks are printed 0.3", 0.4": slower than 1/4 is said in seconds.
    if seconds <= 0.25 or math.isclose(seconds, 0.5):
        return f"1/{1 / seconds:.0f}"
    if seconds < 120:
        return f"{round(seconds, 1):g} s"
    minutes, rest = divmod(round(seconds), 60)
    return f"{minutes} min {rest} s" if rest else f"{minutes} min"


def nearest_shutter(t: float, steps: Steps = "thirds", dial: Series | None = None) -> Mark:
    """The shutter mark nearest to `t` seconds (above 0), or the nearest on a camera's own `dial`.

    Past 30 s nothing is engraved: the time is counted on B, to the second.

    >>> nearest_shutter(1 / 64).text, nearest_shutter(2.1).text, nearest_shutter(150).text
    ('1/60', '2 s', '2 min 30 s')
    """
    _positive("shutter time", t)
    if dial is None and t > _LONGEST_ENGRAVED * 1.1:
        value, error = nearest(t, (float(round(t)),), 1)
    else:
        value, error = nearest(t, tuple(sorted(dial)) if dial else _choose(steps, _SHUTTER_THIRDS, _SHUTTER_HALVES), 1)
    return Mark(_time_text(value), value, error)


_SHUTTERS = (_SHUTTER_THIRDS, _SHUTTER_HALVES)


def is_shutter_mark(t: float) -> bool:
    """Whether `t` seconds is a marked time.

    >>> is_shutter_mark(1 / 125), is_shutter_mark(1 / 128)
    (True, False)
    """
    return any(scale.place(t, _SPOKEN_TIME) is not None for scale in _SHUTTERS)


_LONGEST_MARK = 30.0
"""Seconds: the longest time that a shutter dial is marked with."""


def shutter_difference_stops(a: float, b: float) -> float:
    """Exposure gained (+) from `a` seconds to `b`, counted by the marks, else log2(b/a); no dial has marks beyond 30 s.

    >>> shutter_difference_stops(1 / 60, 1 / 125)
    -1.0
    """
    _positive("shutter time", a)
    _positive("shutter time", b)
    counted = stops_between(a, b, _SHUTTERS, _SPOKEN_TIME) if max(a, b) <= _LONGEST_MARK else None
    return math.log2(b / a) if counted is None else counted


def nearest_film_speed(s: float) -> Mark:
    """The ISO arithmetic mark nearest to `s` (above 0), in thirds of a stop from 0.1 to 102400.

    >>> nearest_film_speed(105).text
    'ISO 100'
    """
    _positive("film speed", s)
    value, error = nearest(s, _FILM_SPEED.marks, 1)
    return Mark(f"ISO {value:.15g}", value, error)


def _film_speed_place(s: float) -> float | None:
    return _FILM_SPEED.place(_FILM_SPEED_ALSO.get(s, s), _EXACT)


def is_film_speed_mark(s: float) -> bool:
    """Whether `s` is a marked ISO speed.

    >>> is_film_speed_mark(125), is_film_speed_mark(120)
    (True, False)
    """
    return _film_speed_place(s) is not None


def film_speed_difference_stops(a: float, b: float) -> float:
    """Exposure gained (+) from film speed `a` to `b`, counted by the marks, else log2(b/a).

    >>> round(film_speed_difference_stops(100, 125), 4)
    0.3333
    """
    _positive("film speed", a)
    _positive("film speed", b)
    start, end = _film_speed_place(a), _film_speed_place(b)
    return math.log2(b / a) if start is None or end is None else end - start


DIFFERENCE_STOPS: dict[str, Callable[[float, float], float]] = {
    "shutter": shutter_difference_stops, "aperture": aperture_difference_stops, "film_speed": film_speed_difference_stops,
}
"""The settings of the camera, and how the stops from one mark of each to another are counted (contract 12): plus is more exposure."""


def din_from_iso(s: float) -> float:
    """Degrees of an ISO arithmetic speed: by the table for a mark, else 1 + 10 log10(s).

    >>> din_from_iso(100), din_from_iso(1600)
    (21.0, 33.0)
    """
    _positive("film speed", s)
    place = _film_speed_place(s)
    return 1 + 10 * math.log10(s) if place is None else float(round(place * 3 + 21))


def iso_from_din(degrees: float) -> float:
    """ISO arithmetic speed of so many degrees: the marked value, between marks 10**((d-1)/10).

    >>> iso_from_din(33), iso_from_din(21)
    (1600, 100)
    """
    index = degrees - _FIRST_DEGREE
    if index == int(index) and 0 <= index < len(_FILM_SPEED.marks):
        return _FILM_SPEED.marks[int(index)]
    return float(10 ** ((degrees - 1) / 10))


_FLOOR_SLACK = 0.1
"""Steps: a floor typed as 0.0079 is still 1/128."""
_STEPS_IN_A_STOP: dict[Steps, int] = {"thirds": 3, "halves": 2, "whole": 1}


def _power_text(steps_down: int, in_a_stop: int) -> str:
    """Whole fraction of full at or below, and what is added to it: "1/8 + 1/3"."""
    whole = math.ceil(steps_down / in_a_stop)
    added = whole * in_a_stop - steps_down
    base = "full" if whole == 0 else f"1/{2**whole}"
    return f"{base} + {added}/{in_a_stop}" if added else base


def nearest_power(p: float, steps: Steps = "thirds", floor: float | None = None) -> Mark:
    """The power setting nearest to `p` (fraction of full, above 0); `floor` is the flash's lowest.

    More than full has no mark: full comes back with its negative error.

    >>> nearest_power(0.125).text, nearest_power(0.16).text, nearest_power(1).text
    ('1/8', '1/8 + 1/3', 'full')
    >>> nearest_power(0.001, floor=1 / 128).text
    '1/128'
    """
    _positive("power", p)
    in_a_stop = _STEPS_IN_A_STOP[steps]
    steps_down = max(0, round(-math.log2(p) * in_a_stop))
    if floor is not None:
        lowest = math.floor(-math.log2(floor) * in_a_stop + _FLOOR_SLACK)
        steps_down = min(steps_down, lowest)
    value = float(2 ** (-steps_down / in_a_stop))
    return Mark(_power_text(steps_down, in_a_stop), value, math.log2(value / p))


_PARTS = ((0.0, ""), (1 / 3, "a third"), (0.5, "a half"), (2 / 3, "two thirds"), (1.0, ""))
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
            "eleven", "twelve")  # fmt: skip
_NEAR = 0.035
"""Stops: 0.3 and 0.7 are said of thirds, 1.6 of neither a third nor a half."""


def _split(stops: float) -> tuple[int, str, float]:
    """Whole stops, the part beyond them in words, and how far off that is."""
    whole = math.floor(stops)
    least, part, words = math.inf, 0.0, ""
    for each, said in _PARTS:
        off = abs(stops - whole - each)
        if off < least:
            least, part, words = off, each, said
    return whole + (part == 1.0), words, least


def speak_stops(x: float) -> str:
    """So many stops in words; the sign is not spoken.

    >>> speak_stops(4 / 3), speak_stops(-0.5), speak_stops(1.6)
    ('one and a third stops', 'half a stop', '1.6 stops')
    """
    whole, part, off = _split(abs(x))
    if off > _NEAR:
        return f"{abs(x):.1f} stops"
    if whole == 0 and part:
        return "half a stop" if part == "a half" else f"{part} of a stop"
    number = _NUMBERS[whole] if whole < len(_NUMBERS) else str(whole)
    return f"{number} and {part} stops" if part else f"{number} stop{'s' * (whole != 1)}"


def speak_aperture(n: float) -> str:
    """An f-number as a click on the ring: whole stop, and a third or two; or halfway.

    >>> speak_aperture(8), speak_aperture(9), speak_aperture(9.5)
    ('f/8', 'f/8 and a third', 'halfway between f/8 and f/11')
    """
    _positive("f-number", n)
    whole, part, _ = _split(2 * math.log2(exact_aperture(n)))
    marks = _APERTURE_THIRDS.whole()
    index = whole - int(_APERTURE_THIRDS.first_stop)
    if not 0 <= index < len(marks) - bool(part):
        return f"f/{n:.2g}" if n < 100 else f"f/{n:.0f}"
    if not part:
        return f"f/{marks[index]:g}"
    if part == "a half":
        return f"halfway between f/{marks[index]:g} and f/{marks[index + 1]:g}"
    return f"f/{marks[index]:g} and {part}"


def speak_power(p: float) -> str:
    """A power setting (fraction of full, above 0) in words, to a third of a stop.

    >>> speak_power(1), speak_power(0.5), speak_power(0.315)
    ('full', 'half', '1/4 plus a third')
    """
    _positive("power", p)
    base, _, added = nearest_power(p).text.partition(" + ")
    named = "half" if base == "1/2" else base
    return f"{named} plus {'a third' if added == '1/3' else 'two thirds'}" if added else named
