"""Which numbers a formula may be given."""

import math

from assistant.bounds import OutOfRange


def require_positive(**values: float) -> None:
    """OutOfRange (a ValueError), naming the quantity, unless every value is finite and above zero.

    >>> require_positive(distance=0)
    Traceback (most recent call last):
    assistant.bounds.OutOfRange: distance must be above zero, not 0
    """
    for name, value in values.items():
        if not (value > 0 and math.isfinite(value)):
            raise OutOfRange(f"{name.replace('_', ' ')} must be above zero, not {value}")
