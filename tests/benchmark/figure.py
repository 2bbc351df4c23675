"""One figure of the benchmark, and the table of them all."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median


@dataclass(frozen=True, slots=True)
class Figure:
    """What was measured, what it is compared to, the figure, and the most it may be."""

    what: str
    measured: str
    compared: str
    value: float
    bar: float
    unit: str = "×"

    @property
    def met(self) -> bool:
        """Whether the figure is within its bar."""
        return self.value <= self.bar

    def row(self) -> str:
        """One row of the table."""
        return f"| {self.what} | {self.measured} | {self.compared} | {self.value:.2f}{self.unit} | {self.bar:g}{self.unit} | {'yes' if self.met else '**no**'} |"


def table(figures: Sequence[Figure]) -> str:
    """The figures as a table."""
    head = "| figure | measured | compared to | comes to | at most | met |\n| --- | --- | --- | --- | --- | --- |\n"
    return head + "".join(figure.row() + "\n" for figure in figures)


def milliseconds(seconds: float) -> str:
    """A time as it is shown.

    >>> milliseconds(0.00123)
    '1.23 ms'
    """
    return f"{seconds * 1000:.3g} ms"


def exponent(sizes: Sequence[float], times: Sequence[float]) -> float:
    """The power of the size that the time grows with: the slope of the straight line through the logarithms.

    >>> round(exponent([1, 10, 100], [2, 20, 200]), 6)
    1.0
    """
    x, y = [math.log(s) for s in sizes], [math.log(t) for t in times]
    middle_x, middle_y = sum(x) / len(x), sum(y) / len(y)
    return sum((a - middle_x) * (b - middle_y) for a, b in zip(x, y)) / sum((a - middle_x) ** 2 for a in x)


def hundredth(times: Sequence[float], share: int) -> float:
    """The time that `share` of a hundred stay within."""
    ordered = sorted(times)
    return ordered[min(len(ordered) - 1, math.ceil(len(ordered) * share / 100) - 1)]


__all__ = ["Figure", "exponent", "hundredth", "median", "milliseconds", "table"]
