"""Rows of printed marks, and where a value stands in one."""

from __future__ import annotations

import math
from bisect import bisect_left
from operator import neg

from assistant.records import record

Series = tuple[float, ...]


@record
class Scale:
    """A row of marks: the first stands at `first_stop`, and `steps_in_a_stop` of them make a stop, counted along the printed numbers.

    The marks are above nothing and rise or fall all along the row.
    """

    marks: Series
    first_stop: float
    steps_in_a_stop: int

    def place(self, value: float, tolerance: float) -> float | None:
        """Where `value` stands in stops if it is one of the marks, else None."""
        for index in _neighbours(value, self.marks):
            if math.isclose(value, self.marks[index], rel_tol=tolerance):
                return self.first_stop + index / self.steps_in_a_stop
        return None

    def whole(self) -> Series:
        """Every mark that is a full stop."""
        return self.marks[:: self.steps_in_a_stop]


def _neighbours(value: float, marks: Series) -> range:
    """The places of the marks on either side of a value, in a row that rises or falls.

    >>> list(_neighbours(5, (1, 2, 4, 8))), list(_neighbours(5, (8, 4, 2))), list(_neighbours(9, (1, 2, 4, 8)))
    ([2, 3], [0, 1], [3])
    """
    above = bisect_left(marks, value) if marks[0] < marks[-1] else bisect_left(marks, -value, key=neg)
    return range(max(0, above - 1), min(above + 1, len(marks)))


def nearest(value: float, marks: Series, stops_in_a_doubling: float) -> tuple[float, float]:
    """The mark closest in stops, and how much more exposure it gives than `value`, in stops.

    `value` is above nothing; beyond the ends of the row the end is the nearest. `stops_in_a_doubling` is 2 for f-numbers,
    less than nothing where a greater mark gives less light.

    >>> nearest(7.2, (5.6, 8, 11), -2)[0], nearest(90.0, (5.6, 8, 11), -2)[0]
    (8.0, 11.0)
    """
    best, *others = [marks[at] for at in _neighbours(value, marks)]
    for other in others:
        if abs(math.log2(other / value)) < abs(math.log2(best / value)):
            best = other
    best = float(best)
    return best, math.log2(best / value) * stops_in_a_doubling + 0.0  # never minus zero


def stops_between(a: float, b: float, scales: tuple[Scale, ...], tolerance: float) -> float | None:
    """Stops along the printed row from a to b, less than nothing where b stands before a; one row is preferred to a mixture of two.

    None where one of the two is no mark of any row, give or take `tolerance`, a part of the mark between 0 and 1.
    """
    places = [(scale.place(a, tolerance), scale.place(b, tolerance)) for scale in scales]
    for start, end in places:
        if start is not None and end is not None:
            return end - start
    starts = [start for start, _ in places if start is not None]
    ends = [end for _, end in places if end is not None]
    return ends[0] - starts[0] if starts and ends else None
