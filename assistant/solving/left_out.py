"""What an answer leaves out: figures said this turn that neither bear on it nor are told not to."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from assistant import patterns
from assistant.query import Fact, Query
from assistant.solving.solution import Solution
from assistant.solving.solver import unused


def left_out(said: Query, whole: Query, solution: Solution, told: str) -> tuple[str, ...]:
    """The words of each figure of `said` that the answer to `whole` leaves out; `told` is the reply so far."""
    if solution.status not in ("answered", "out_of_reach") or not solution.answers or solution.topic == "claims" or not said.figures:
        return ()
    meant = frozenset(whole.facts)
    became_other = [f for f in said.facts if f not in meant]  # "back 4 feet": told as where the light is now
    places = [f for f in whole.facts if f.quantity in ("place", "rows")]  # "row 2": which, not how much
    accounted = [(f.start, f.end) for f in (*solution.used, *unused(whole, solution), *became_other, *places) if f.origin == "said"]
    loose = [figure for figure in said.figures if not any(start <= figure[0] < end for start, end in accounted)]
    if not loose:
        return ()
    values, shown = set(_values(solution.used)), _figures(told)
    return tuple(dict.fromkeys(
        words for start, end, value in loose if not _figures(words := said.text[start:end].strip()) <= shown and _rounded(value) not in values
    ))


def _figures(text: str) -> set[str]:
    return {figure.strip(".,").replace(",", "") for figure in patterns.findall(r"\d[\d.,]*", text)}


def _values(facts: Sequence[Fact]) -> Iterator[float]:
    """The values of these facts and of their conditions ("80 at ISO 400")."""
    for fact in facts:
        for value in (fact.value, fact.other, fact.at_iso, fact.at_power):
            if value is not None and not math.isnan(value):
                yield _rounded(value)


def _rounded(value: float) -> float:
    return float(f"{abs(value):.3g}")
