"""Figures of a flash that meters for itself: the aperture of its range, the film on its dial.

"the red mode wants 5.6" · "it is on the yellow, which is five six" · "film and dial both 100, the lens is on eight"
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.language.hearing import fold
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_aperture_mark, is_film_speed_mark

_BARE = frozenset({"number", "guide_number", "film_speed"})
_OPENING = Pattern(r"\b(?:range|mode|setting|band|sensor|auto(?:matic)?|red|blue|yellow|green|purple|orange|white|lens|ring|barrel|aperture|opening)\b[^.;?\d]{0,24}$")
_RANGE_AFTER = Pattern(r"\s*(?:range|band|mode|setting|auto|position)\b")
_FILM = Pattern(r"\b(?:film|dial|roll|loaded|camera)\b[^.;?\d]{0,16}$|\b(?:really|actually|in fact|in truth)(?: (?:is|on|only|it|it's|a|in|the))*\s*$")
_NAMED = Pattern(r"[a-z]{0,16}(?:gn|guide|lz|leitzahl|iso|asa|din|film)")
_TENTHS = frozenset({14.0, 28.0, 35.0, 56.0, 63.0})
"""Spoken without the point: "five six"."""


def settle(facts: Sequence[Fact], text: str, cues: Iterable[str]) -> list[Fact]:
    """The facts with the bare figures of an auto flash told apart; all others as they were."""
    if "auto" not in cues:
        return list(facts)
    lower = fold(text)
    ends = [0, *(f.end for f in facts)]
    return [_meant(f, lower[max(e for e in ends if e <= f.start) : f.start], lower[f.end :]) if f.quantity in _BARE and not f.bad and not _NAMED.search(lower[f.start : f.end]) else f for f in facts]


def _meant(fact: Fact, before: str, after: str) -> Fact:
    spoken = " " in fact.said.strip() and fact.value in _TENTHS
    value = fact.value / 10 if spoken else fact.value
    if is_aperture_mark(value) and (_OPENING.search(before) or _RANGE_AFTER.match(after)):
        return replace(fact, quantity="aperture", value=value, unit="", of="", cue="")
    if fact.quantity == "number" and is_film_speed_mark(fact.value) and _FILM.search(before):
        return replace(fact, quantity="film_speed", of="")
    return fact
