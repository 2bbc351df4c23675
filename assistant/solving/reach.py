"""How much farther one flash carries than another, or on one film than on another: by the root of the light and of the speed, and by the guide number itself.

The distance a flash reaches at one aperture is its guide number over that aperture (inverse square law), and the guide number
grows with the root of film speed and of power.
"""

from __future__ import annotations

import math
import re

from assistant import scales
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.solution import Solution
from assistant.units import speak_length

_FAR = r"(?:far|far away|distance|reach|range|throw)"
_NUMBERS = {"twice": 2.0, "double": 2.0, "doubles": 2.0, "half": 0.5, "halves": 0.5, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "eight": 8.0, "ten": 10.0, "three times": 3.0, "a third": 1 / 3, "a quarter": 0.25}
_TIMES = Pattern(rf"\b(?:(?P<n>\d+(?:\.\d+)?|two|three|four|five|six|eight|ten) times|(?P<word>twice|double|doubles|half|halves|a third|a quarter))(?: (?:as|the|of|its|my|my flash's|how))* (?P<far>{_FAR})\b", re.I)
_REACHES = Pattern(r"\b(?:reach\w*|carr(?:y|ies|ied)|goes|get|gets|take|takes|throw\w*|range|lights? (?:up )?|cover\w*)\b", re.I)
_HOW_MANY_TIMES = Pattern(rf"\bhow many times (?:as|the) {_FAR}\b|\bby what factor\b[^?]*\b(?:reach|range|distance|throw)\b|\bhow much (?:further|farther)\b[^?]*\b(?:as a factor|times)\b", re.I)
_OLD_LAST = Pattern(r"\b(?:as|than|instead of|in place of|rather than|over|against|compared (?:with|to)|not|versus)\b[^.,;?!\d]{0,24}$", re.I)
_FROM = Pattern(r"\b(?:from|between)\b[^.,;?!\d]{0,24}$", re.I)
_KINDS = ("film_speed", "power", "guide_number", "aperture")
_BELONGS = frozenset({*_KINDS, "aperture_range", "rated", "times", "factor", "number", "place", "remark", "count"})


def _ends(fact: Fact) -> tuple[Fact, ...]:
    """"f/8 to f/4" as the two that it goes from and to."""
    if fact.quantity != "aperture_range":
        return (fact,)
    return (replace(fact, quantity="aperture", other=math.nan), replace(fact, quantity="aperture", value=fact.other, other=math.nan, start=fact.end - 1))


def _ratio(query: Query) -> tuple[float, tuple[Fact, Fact]] | None:
    """How many times as far with the new one as with the old; None where not exactly two of one kind are told."""
    if {f.quantity for f in query.facts} - _BELONGS:
        return None
    query = query.with_facts(one for f in query.facts for one in _ends(f))
    pairs = [pair for pair in (query.all(q) + (query.all("rated") if q == "film_speed" else []) for q in _KINDS) if len(pair) > 1]
    if len(pairs) != 1 or len(pairs[0]) != 2 or len([f for f in query.facts if f.quantity in _KINDS and (f.quantity != "aperture" or f in pairs[0])]) > 2:
        return None
    one, two = sorted(pairs[0], key=lambda f: f.start)
    if _OLD_LAST.search(query.text[one.end : two.start]):
        new, old = one, two
    elif _FROM.search(query.text[: one.start]) or one.said == two.said:
        new, old = two, one
    else:
        return None
    return _farther(old, new), (new, old)


def _farther(old: Fact, new: Fact) -> float:
    if new.quantity == "film_speed" or new.quantity == "rated":
        return float(2.0 ** (scales.film_speed_difference_stops(old.value, new.value) / 2))
    if new.quantity == "aperture":
        return float(2.0 ** (scales.aperture_difference_stops(old.value, new.value) / 2))
    return float(new.value / old.value) if new.quantity == "guide_number" else math.sqrt(new.value / old.value)


def _multiple(said: re.Match[str]) -> float:
    return float(said["n"]) if said["n"] and said["n"][0].isdigit() else _NUMBERS[(said["n"] or said["word"]).lower()]


def claim_of_reach(query: Query) -> Solution | None:
    """"does 1600 film carry my flash twice as far as 400": the roots held against what is said."""
    said = _TIMES.search(query.text)
    found = _ratio(query) if said is not None and _REACHES.search(query.text) else None
    if found is None or said is None:
        return None
    claimed = _multiple(said)
    right, pair = found
    holds = abs(2 * math.log2(right / claimed)) < 0.2
    lead = f"{'Yes' if holds else 'No'}: {right:.3g} times as far at the same aperture."
    beside = tuple(f for f in query.facts if f.quantity in ("times", "factor", "number", "count") and f.start < said.end() and f.end > said.start())
    return Solution(lead=lead, answers=(Quantity("claim", holds), Quantity("factor", right, "times")), used=(*pair, *beside), topic="claims")


_CARRIES = Pattern(r"\b(?:reach\w*|carr(?:y|ies|ied)|gets?|goes|throws?|is good (?:to|for)|(?:is|was|be) (?:right|correct|enough) (?:for|at)|lights? up to|range)\b", re.I)
_STOPS_NEAR = 0.2


def claim_of_reach_at(query: Query) -> Solution | None:
    """"it reaches 5 m on ISO 100; on ISO 400 it reaches 10 m, is that so": the distance there is, from the first and the root of what changed."""
    away = sorted(query.all("distance"), key=lambda f: f.start)
    pairs = [sorted(query.all(kind), key=lambda f: f.start) for kind in ("film_speed", "power") if query.has(kind)]
    if len(away) != 2 or len(pairs) != 1 or len(pairs[0]) != 2 or {f.quantity for f in query.facts} - {"distance", "film_speed", "power", "aperture", "remark", "place"} or len({f.value for f in query.all("aperture")}) > 1 or any(f.origin != "said" for f in (*away, *pairs[0])):
        return None
    (old, new), (near, far) = pairs[0], away
    if not max(old.end, near.end) <= min(new.start, far.start) or len(_CARRIES.findall(query.text)) < 1 or _DENIED.search(query.text):
        return None
    right = near.value * _farther(old, new)
    said = query.text.lower()
    holds = within(bound_of(said[: far.start])[0], 2 * math.log2(right / far.value), _STOPS_NEAR)
    return Solution(answers=(Quantity("claim", holds), marks.distance(right, far.unit)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. It reaches {speak_length(right, far.unit)}: the reach goes with the square root of the light.")


_DENIED = Pattern(r"\b(?:not|never|no)\b|n't\b", re.I)


def times_as_far(query: Query, ask: Ask) -> Solution | None:
    """"how many times as far does my flash reach on 800 film as on 100"."""
    found = _ratio(query) if _HOW_MANY_TIMES.search(query.text) else None
    if found is None:
        return None
    return Solution(answers=(Quantity("factor", found[0], "times"),), used=found[1], topic="conversions", lead=f"{found[0]:.3g} times as far at the same aperture.")


def film_for(query: Query) -> Solution | None:
    """"to reach three times as far, what film instead of 100": the speed goes as the square of the reach."""
    said, speeds = _TIMES.search(query.text), query.all("film_speed")
    away, marks_told = query.all("distance"), {f.value for f in query.all("aperture")}
    if said is None and len(away) == 2 and len(speeds) == 1 and len(marks_told) <= 1 and _REACHES.search(query.text) and {f.quantity for f in query.facts} <= {"film_speed", "distance", "aperture", "remark", "place"}:
        value = speeds[0].value * (away[1].value / away[0].value) ** 2
        return Solution(answers=(marks.film_speed(value),), used=query.facts, topic="film", notes=("At one aperture the speed goes with the square of the distance.",))
    if said is None or len(speeds) != 1 or not _REACHES.search(query.text) or {f.quantity for f in query.facts} - {"film_speed", "times", "factor", "number", "count", "place", "remark"}:
        return None
    times = _multiple(said)
    beside = tuple(f for f in query.facts if f.quantity in ("times", "factor", "number", "count") and f.start < said.end() and f.end > said.start())
    return Solution(answers=(marks.film_speed(speeds[0].value * times**2),), used=(speeds[0], *beside), topic="film", notes=(f"{times:g} times as far takes {times**2:g} times the speed at the same aperture.",))
