"""The bound that is put on a claimed figure: "more than two stops", "at least f/8", "less than half the light"."""

from __future__ import annotations

from assistant.patterns import Pattern

_FILL = r"(?:(?: about| roughly| some)?(?: an?| the)? ?(?:gn|guide number(?: of)?|iso|asa)?)\W*$"
_BOUNDS: tuple[tuple[str, Pattern], ...] = (
    ("most", Pattern(r"\b(?:at (?:the )?most|(?<!add )(?<!adds )(?<!added )(?<!sum )(?<!sums )(?<!come )(?<!comes )(?<!open )(?<!turn )(?<!opened )up to|(?:no|nothing) (?:more|greater|further|farther|longer|higher|bigger) than)" + _FILL)),
    ("least", Pattern(r"\b(?:at (?:the )?least|(?:no|nothing) (?:less|fewer|smaller|nearer|closer|shorter|lower) than|a good)" + _FILL)),
    ("over", Pattern(r"\b(?:(?:more|greater|further|farther|longer|higher|bigger|larger|better) than|over|above|beyond|upwards of|well over)" + _FILL)),
    ("under", Pattern(r"\b(?:(?:less|fewer|smaller|nearer|closer|shorter|lower) than|(?:just |well )?(?:under|below)|short of|(?<!is )within|inside)" + _FILL)),
)
_SIZED = Pattern(r"\b(?:stops?|times|twice|half|third)\s*$")
"""So much more or less than a figure: that is no bound of it."""
STRICT = 0.05
"""Stops by which a figure must pass a bound that it has to pass."""


def bound_of(before: str) -> tuple[str, int]:
    """The bound right before a figure, and where it begins; nothing where there is none.

    >>> bound_of("it costs more than "), bound_of("it costs no more than "), bound_of("it costs ")
    (('over', 9), ('most', 9), ('', -1))
    """
    near = before[-40:]
    for name, pattern in _BOUNDS:
        found = pattern.search(near)
        if found is not None and _SIZED.search(near[: found.start()]) is None:
            return name, len(before) - len(near) + found.start()
    return "", -1


TO_THE_DOT = 0.1
"""Stops within which a figure must come that is said to be exact: what the marks of the rings are rounded by."""
EXACTLY = Pattern(r"\b(?:exactly|precisely|to the (?:dot|mark)|dead on)\b")
"""Anywhere in a claim: near enough is not what is asked."""
_EXACTLY_BEFORE = Pattern(r"\b(?:exactly|precisely|dead on|bang on|spot on|just)(?: (?:an?|the|at|to))? ?$")
_EXACTLY_AFTER = Pattern(r",? ?(?:exactly|precisely|dead|dead on|on the dot|to the dot|spot on)\b")


def tolerance(said: str, start: int, end: int, usual: float) -> float:
    """Stops within which the figure there must come: the usual, or next to none where it is said to be exact.

    >>> tolerance("is it exactly one stop", 14, 22, 0.34), tolerance("is it one stop", 6, 14, 0.34)
    (0.1, 0.34)
    """
    return min(TO_THE_DOT, usual) if is_exact(said, start, end) else usual


def is_exact(said: str, start: int, end: int) -> bool:
    """Whether the figure there is said to be exact."""
    return bool(_EXACTLY_BEFORE.search(said[max(0, start - 20) : start]) or _EXACTLY_AFTER.match(said[end : end + 20]))


_IN_SO_MANY_WORDS = Pattern(r"\b(?:than|least|most)\b")


def is_bounded(before: str) -> bool:
    """Whether a bound stands right before a figure that can be nothing but one ("over 20 feet" may be a place)."""
    bound, start = bound_of(before)
    return bool(bound) and _IN_SO_MANY_WORDS.search(before[start:]) is not None


def within(bound: str, over: float, near: float, strict: float = STRICT) -> bool:
    """Whether the bound holds where the right figure is `over` above the one that is said; without a bound it must come near.

    >>> within("over", 1.0, 0.3), within("under", 1.0, 0.3), within("least", 0.0, 0.3), within("", 1.0, 0.3)
    (True, False, True, False)
    """
    if bound == "over":
        return over > strict
    if bound == "under":
        return over < -strict
    if bound == "least":
        return over >= -near
    return over <= near if bound == "most" else abs(over) <= near
