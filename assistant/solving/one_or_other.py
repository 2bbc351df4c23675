"""Which of two set-ups gives more light, and by how much: each one's ledger by itself.

"Which is brighter, a GN 40 flash through an umbrella that loses 2 stops at 1.5 m, or a GN 28
flash bare at 2.5 m?" What is said before or after both holds for both.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks, set_ups
from assistant.solving.before_after import difference
from assistant.solving.set_ups import SetUps
from assistant.solving.solution import Solution
from assistant.units import LENGTH

_WHICH = Pattern(r"\b(?:which|what)\b[^.?!]{0,40}?\b(?P<more>brighter|brightest|stronger|hotter|denser|(?:more|most) (?:\w+ )?(?:light|exposure|flash|daylight|ambient)|heavier|over)\b|\bwhich\b[^.?!]{0,40}?\b(?P<less>darker|dimmer|weaker|thinner|less (?:light|exposure|flash))\b", re.I)
_OR = Pattern(r"[,;]? (?:or|versus|vs\.?|against) ", re.I)
_ON_FILM = Pattern(r"\b(?:negatives?|negs?|slides?|films?|frames?|exposures?|density|denser|thinner|exposed)\b", re.I)
_LETS_IN = Pattern(r"\b(?:lets?|letting|let) (?:\w+ )?(?:in|through|past)\b|\b(?:admits?|pass(?:es)?|gathers?|collects?) (?:the )?(?:more|most|less|least)\b", re.I)
"""Of settings of the camera: the f-number is what the lens is set to, and the time counts."""
_OF_LIGHT = ("guide_number", "distance", "power", "energy", "count", "film_speed", "aperture", "magnification", "shutter")
_LOSSES = ("loss", "filter_loss", "nd", "power_down")
_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark", "format", "place"})
_DEFAULT = {"power": 1.0, "count": 1.0}
_LEAST, _IN_ALL = 1, 3
"""Figures on each side and on both: of fewer, other topics know more."""
_SHOWN = 60


def solve(query: Query) -> Solution | None:
    """The brighter of two set-ups, each told with all that bears on it; None where a figure has no side."""
    if len(query.asks) != 1 or query.asks[0].quantity not in ("stops", "factor") or query.claim:
        return None
    which = _WHICH.search(query.text)
    facts = [f for f in query.facts if f.quantity not in _BY_THE_WAY]
    if which is None or any(f.origin != "said" or f.quantity not in (*_OF_LIGHT, *_LOSSES) for f in facts):
        return None
    parted = _parted(facts, query.text, which.start())
    if parted is None:
        return _of_two_told(query, facts, which)
    shared, one, other, at = parted
    settings = _LETS_IN.search(query.text) is not None
    if query.has("aperture") and not (settings or _ON_FILM.search(query.text)) or query.has("shutter") and not (settings and query.has("aperture")):
        return None  # a reading, or a setting: it is not said
    apart = gained(shared, one, other)
    if apart is None:
        return None
    more = which["more"] is not None
    wins = (apart > 0) is more
    named = _named(query.text, which.end(), at, one) if wins else _named(query.text, at, len(query.text), other)
    return _said(query, more, apart, named)


def _said(query: Query, more: bool, apart: float, named: str) -> Solution:
    """The winner by its name, and by how much."""
    size = speak_stops(abs(apart))
    lead = "They are equally bright." if abs(apart) < 0.005 else f"{'More' if more else 'Less'} light: {named}, by {size} ({abs(apart):.2f})."
    stops = marks.stops(abs(apart) if more else -abs(apart), named)
    factor = marks.factor(abs(apart))
    answers = (factor, stops) if query.asks[0].quantity == "factor" else (stops, factor)
    return Solution(answers=answers, used=query.facts, topic="one_or_other", lead=lead)


def _of_two_told(query: Query, facts: list[Fact], which: re.Match[str]) -> Solution | None:
    """"the umbrella loses two stops but stands 3 feet away, the softbox one but 7 feet: which …?", or with "bare" for one that nothing need be told of."""
    held = set_ups.told(facts, query.text, which.start(), which.end()) or _across_or(facts, query.text, which)
    if held is None or query.has("aperture") or set_ups.unknown_loss(query, held) or not all(side or set_ups.BARE.search(words) for side, words in zip((held.one, held.other), held.words, strict=True)):
        return None
    apart = gained(held.shared, held.one, held.other)
    if apart is None or not (held.one or held.other):
        return None
    wins = (apart > 0) is (which["more"] is not None)
    return _said(query, which["more"] is not None, apart, _name(query, held, 0 if wins else 1))


def _across_or(facts: list[Fact], text: str, which: re.Match[str]) -> SetUps | None:
    """The set-ups on both sides of the only "or" after the question."""
    found = list(_OR.finditer(text, which.start()))
    if len(found) != 1:
        return None
    sides = set_ups.parted(facts, text.lower(), found[0].start(), which.start(), len(text))
    return SetUps(*sides, (text[which.end() : found[0].start()].lower(), text[found[0].end() :].lower()), -1) if sides is not None else None


_LEADS_IN = Pattern(r"^.*\b(?:between|light|brighter|darker|her|him|it|them|face|subject|stops|much|either)[,:]? (?=(?:the|an?|my) )|^\W*(?:and |or |but |so )?", re.I)
_ENDS = Pattern(r",? (?:which|that|loses?|losing|costs?|costing|takes?|eats?|at|from|stands?|standing|is|has|could|must|but|,)\b|[,;:.]", re.I)


def _name(query: Query, held: SetUps, side: int) -> str:
    """What one of them is called: what hangs in its light, else its first words."""
    own = held.other if side else held.one
    worn = [f.said for f in query.facts if f.quantity == "modifier" and own and min(o.start for o in own) - 40 <= f.start <= max(o.end for o in own) and any(o.unit == f.unit for o in own if o.quantity in _LOSSES)]
    words = _LEADS_IN.sub("", held.words[side].strip(), 1)
    ends = _ENDS.search(words, 3)
    return worn[0].strip() if worn else words[: min(ends.start() if ends else _SHOWN, _SHOWN)].strip(" ,.;:?")


def _parted(facts: Sequence[Fact], text: str, which: int) -> tuple[list[Fact], list[Fact], list[Fact], int] | None:
    """What holds for both, the facts of the one and of the other, and where the other begins."""
    shared = [f for f in facts if f.start < which]
    rest = [f for f in facts if f.start >= which]
    for found in _OR.finditer(text, which):
        one, other = ([f for f in rest if f.end <= found.start()], [f for f in rest if f.start >= found.end()])
        if len(one) + len(other) != len(rest) or min(len(one), len(other)) < _LEAST or len(rest) < _IN_ALL:
            continue
        if any(len([f for f in side if f.quantity == q]) > 1 for side in (one, other, shared) for q in _OF_LIGHT):
            return None
        return shared, one, other, found.end()
    return None


def gained(shared: Sequence[Fact], one: Sequence[Fact], other: Sequence[Fact]) -> float | None:
    """The stops that the one puts on the film more than the other; None where a figure that the one has is told neither of the other nor of both."""
    total = sum(f.value for f in other if f.quantity in _LOSSES) - sum(f.value for f in one if f.quantity in _LOSSES)
    for quantity in _OF_LIGHT:
        mine, theirs = (next((f for f in (*side, *shared) if f.quantity == quantity), None) for side in (one, other))
        if mine is None and theirs is None:
            continue
        if (mine is None or theirs is None) and quantity not in _DEFAULT:
            return None
        if quantity == "guide_number" and mine is not None and theirs is not None:
            if (mine.at_power is None) is not (theirs.at_power is None) or (mine.at_iso or 100.0) != (theirs.at_iso or 100.0):
                return None
            total += 2 * math.log2(_metres(mine, (*one, *shared)) / _metres(theirs, (*other, *shared))) + math.log2((mine.at_power or 1.0) / (theirs.at_power or 1.0))
        else:
            usual = _DEFAULT.get(quantity, 1.0)
            total += difference(quantity, theirs.value if theirs else usual, mine.value if mine else usual)
    return total


def _metres(guide: Fact, facts: Sequence[Fact]) -> float:
    """A guide number in metres; with no unit it is in that of its distance (contract 1)."""
    unit = guide.unit or next((f.unit for f in facts if f.quantity == "distance"), "")
    return guide.value * LENGTH.get(unit, 1.0)


def _named(text: str, start: int, end: int, side: Sequence[Fact]) -> str:
    """A set-up in the person's own words, from the last mark before its first figure to its last one."""
    first, last = min(f.start for f in side), max(f.end for f in side)
    begins = start + max((m.end() for m in re.finditer(r"[:?] |, (?=an? |the |my )|\bby how (?:many stops|much),? ", text[start:first])), default=0)
    words = text[begins : min(last, end)].strip(" ,.;:?")
    return words if len(words) <= _SHOWN else text[first:last][:_SHOWN].strip(" ,.;:?")
