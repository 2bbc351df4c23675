"""What the kinds of figures told leave open, whatever the order they come in and whatever the verbs between them.

Where all that is told are the watt-seconds of one setting and two f-numbers, a bare 16 is the one and a
bare 22 the other; where it is one film with its f-number and another film, only an f-number can be asked.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from assistant.language.bare import COMMON_FILMS
from assistant.language.hearing import fold
from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.scales import is_aperture_mark

_ASIDE = frozenset({"remark", "place", "rows"})
_POPS = ("pops", "flashes")
_LIKELY_ENERGY = (30.0, 6400.0)
_ANY_ENERGY = Pattern(r"\b(?:energy|joules?|j|watt[- ]?seconds?|w/?s)\b")
_IN_JOULES = Pattern(r"\s*(?:joules?|j\b|watt[- ]?seconds?|w/?s\b)")
_STOPS = Pattern(r"\bstops?\b")
_UNIT_AFTER = Pattern(r"\s*(?:of a |more |further |full |f-)?(?:stops?|feet|foot|ft|metres?|meters?|m\b|cm|mm|inch|volts?|v\b|times|x\b|%|hz|years?|people|seconds?|secs?|s\b|minutes?|iso|asa|din|degrees?|frames?|rolls?)")
_MANY = Pattern(r"\bhow (?:many|often)\b|\b(?:pops|flashes|bursts|hits|firings|shots)\W*\?|\bnumber of\b")
_FIRED = Pattern(r"\b(?:pops?|popped|bursts?|hits?|flash(?:es)?|firings?)\b")
_SUPPLY = Pattern(r"\b(?:batter(?:y|ies)|cells|charges?|charged|packs?|sets?)\b")
_OF_FILM = Pattern(r"\b(?:on|at|for|with|is|in|to|loaded|loading|putting|got|have|of|asa|iso|the|a|an|was|now|set|hold\w*|takes?|shoot\w*|film)\s*$")
_THEN_FILM = Pattern(r"\s*(?:$|[.,;:?!)](?!\d)|(?:film|in|now|instead|so|and|but|today|tonight|loaded|what|whats|which|then|if|when|it)\b)")
_A_METER = Pattern(r"\b(?:for|as|without|borrow\w*|owns?|use|used|using|like) $")
_DECADE = Pattern(r"[\s-]+(?:twen|thir|for|fif|six|seven|eigh|nine)t?ies\b")


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with the bare numbers known that only one kind of figure is left for."""
    out, lower = list(facts), fold(text)
    if not any(f.quantity in ("number", "number_range", "distance", "power", "modifier") for f in out):
        return out
    for rule in (_no_distance, _decades, _two_of_energy, _last_of_a_series, _openings, _energies, _films, _places, _supplies):
        out = rule(out, lower)
    return out


def _bare(facts: Sequence[Fact], lower: str) -> list[Fact]:
    """Numbers that carry no unit and mean nothing yet."""
    return [f for f in facts if f.quantity == "number" and not f.bad and f.value > 0 and not _UNIT_AFTER.match(lower, f.end)]


def _kinds(facts: Sequence[Fact]) -> set[str]:
    return {f.quantity for f in facts} - _ASIDE - {"number"}


def _all(facts: Sequence[Fact], quantity: str) -> list[Fact]:
    return [f for f in facts if f.quantity == quantity]


def _no_distance(facts: list[Fact], lower: str) -> list[Fact]:
    """"uses her camera for a meter": what is read, and no length."""
    return [f for f in facts if not (f.quantity == "distance" and f.said.lower() == "a meter" and _A_METER.search(lower[: f.start]))]


def _decades(facts: list[Fact], lower: str) -> list[Fact]:
    """"cans from the nineteen-seventies": when, and no figure."""
    return [replace(f, quantity="remark", of="") if f.quantity == "number" and f.value == 19 and _DECADE.match(lower, f.end) else f for f in facts]


def _two_of_energy(facts: list[Fact], lower: str) -> list[Fact]:
    """"from 150 to 600 watt seconds": the one and the other."""
    out: list[Fact] = []
    for fact in facts:
        if fact.quantity == "number_range" and _IN_JOULES.match(lower, fact.end):
            one = replace(fact, quantity="energy", unit="J", of="", other=math.nan)
            out += [one, replace(one, value=fact.other, start=fact.end - 1)]
        else:
            out.append(fact)
    same = _all(out, "energy") and not _kinds(out) - {"energy", "modifier"} and _STOPS.search(lower)
    return [replace(f, quantity="remark", value=0.0) if f.quantity == "modifier" else f for f in out] if same and "same" in lower else out


def _last_of_a_series(facts: list[Fact], lower: str) -> list[Fact]:
    """"eight flashes ... right after the eighth": one of them, and no power."""
    counts = {f.value for f in facts if f.quantity == "count" and f.value > 1}
    return [replace(f, quantity="remark", value=0.0, of="") if f.quantity == "power" and f.value and 1 / f.value in counts and f.said.lower().strip().endswith("th") and lower[: f.start].rstrip().endswith("the") else f for f in facts]


def _openings(facts: list[Fact], lower: str) -> list[Fact]:
    """"400 ws gives 16, need 22", "one pop meters at eight, I want sixteen": two f-numbers, where two are what is missing."""
    bare, known = _bare(facts, lower), _all(facts, "aperture")
    kinds = _kinds(facts) - {"aperture"}
    of_energy = kinds == {"energy"} and len(_all(facts, "energy")) == 1 and _ANY_ENERGY.search(lower)
    of_pops = kinds <= {"count"} and all(f.value == 1 for f in _all(facts, "count")) and _FIRED.search(lower) and _MANY.search(lower)
    if not (of_energy or of_pops) or not bare or len(bare) + len(known) != 2:
        return facts
    fits = all(is_aperture_mark(f.value) and f.value <= 64 for f in bare)
    return [replace(f, quantity="aperture", unit="", of="") if f in bare else f for f in facts] if fits else facts


def _energies(facts: list[Fact], lower: str) -> list[Fact]:
    """"swapping my 200 Ws pack for the club's 800: stops?": watt-seconds as well, where nothing else is told."""
    bare = _bare(facts, lower)
    fits = len(bare) == 1 == len(_all(facts, "energy")) and _kinds(facts) == {"energy"} and _LIKELY_ENERGY[0] <= bare[0].value <= _LIKELY_ENERGY[1] and _STOPS.search(lower)
    return [replace(f, quantity="energy", unit="J", of="") if f is bare[0] else f for f in facts] if fits else facts


def _films(facts: list[Fact], lower: str) -> list[Fact]:
    """"what aperture on 800 film if it was f/5.6 on 200": the other film, where one f-number and one film are told."""
    bare = _bare(facts, lower)
    fits = len(bare) == 1 == len(_all(facts, "film_speed")) == len(_all(facts, "aperture")) and _kinds(facts) == {"film_speed", "aperture"} and bare[0].value in COMMON_FILMS and bare[0].value >= 25
    return [replace(f, quantity="film_speed", unit="", of="") if f is bare[0] else f for f in facts] if fits and _OF_FILM.search(lower[: bare[0].start]) and _THEN_FILM.match(lower, bare[0].end) else facts


def _places(facts: list[Fact], lower: str) -> list[Fact]:
    """"ten pops from 3 metres; I can get no nearer than 6": a place in the same unit; and both are of the light."""
    lengths, bare = _all(facts, "distance"), _bare(facts, lower)
    pops = [f for f in _all(facts, "count") if f.unit in _POPS]
    if len(pops) != 1 or not lengths or _kinds(facts) != {"count", "distance"} or not _MANY.search(lower) and "?" not in lower:
        return facts
    if len(lengths) == len(bare) == 1 and lengths[0].unit in ("ft", "m") and not _is_film(bare[0]):
        scale = 0.3048 if lengths[0].unit == "ft" else 1.0
        facts = [replace(f, quantity="distance", value=f.value * scale, unit=lengths[0].unit, of="") if f is bare[0] else f for f in facts]
    both = _all(facts, "distance")
    return [replace(f, of="", cue="") if f in both and f.of in ("", "backdrop", "camera") else f for f in facts] if len(both) == 2 else facts


def _is_film(fact: Fact) -> bool:
    """Whether a bare number is more likely a film than a length."""
    return fact.value >= 50


def _supplies(facts: list[Fact], lower: str) -> list[Fact]:
    """"the run calls for 500 flashes and a set yields 120", "each frame takes six": pops as well, where a battery is spoken of."""
    bare = _bare(facts, lower)
    counts = [f for f in facts if f.quantity in ("count", "max_count") and f.unit in _POPS and f.value > 1]
    fits = len(bare) == len(counts) == 1 and _kinds(facts) <= {"count", "max_count"} and bare[0].value == int(bare[0].value) and _SUPPLY.search(lower) and _FIRED.search(lower)
    return [replace(f, quantity="count", unit="pops", of="") if f is bare[0] else f for f in facts] if fits else facts


# --- what is asked --------------------------------------------------------------------------------

_OPEN = Pattern(r"\?|\b(?:what|whats|which|how|where)\b|\b(?:so )?i (?:then )?(?:set|use|put|need)\W*$")
_NAMES_POPS = Pattern(r"\b(?:pops|flashes|bursts|hits|firings)\W*$|\bhow (?:many|often)\b")
_FRAMES = Pattern(r"\b(?:frames|pictures|exposures|images|negatives)\W*\?\W*$|\bhow many (?:\w+ )?(?:frames|pictures|exposures|images|negatives|photos|shots)\b")
_SETS = Pattern(r"\bhow many (?:\w+ )?(?:sets?|packs?|batteries|charges?|loads)\b|\b(?:sets|batteries|charges)(?: to \w+| needed)?\W*\?\W*$")
_DIAL = Pattern(r"\b(?:dial|meter|rate|rating|ei|exposure index|speed|number|iso|asa)\b")


def asked(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """What is asked where the figures told leave one thing open."""
    lower = fold(text)
    if not _OPEN.search(lower) and not _NAMES_POPS.search(lower):
        return asks
    for rule in _ASKS:
        found = rule(asks, facts, lower)
        if found is not None:
            return [found]
    return asks


def _only(asks: Sequence[Ask], *quantities: str) -> bool:
    return all(a.quantity in quantities for a in asks)


def _asks_opening(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"f/8 on 100. on 400?": the f-number for the other film."""
    speeds = {f.value for f in _all(facts, "film_speed")}
    told = not asks and len(speeds) == 2 and len(_all(facts, "aperture")) == 1 and _kinds(facts) == {"film_speed", "aperture"}
    return Ask("aperture") if told and not _STOPS.search(lower.replace("f-stop", "").replace("f stop", "")) and "film do" not in lower else None


def _asks_pops(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"one hit gives f/8, need f/11. hits?", "twelve flashes at 4 metres; moving to 8, flashes?"."""
    if not _NAMES_POPS.search(lower) or not _FIRED.search(lower) or not _only(asks, "distance", "aperture"):
        return None
    counts, kinds = [f for f in _all(facts, "count") if f.unit in _POPS], _kinds(facts) - {"count"}
    of_light = kinds == {"aperture"} and len(_all(facts, "aperture")) == 2 and all(f.value == 1 for f in counts)
    of_place = kinds == {"distance"} and len(_all(facts, "distance")) == 2 and len(counts) == 1
    return Ask("count", "", "pops") if of_light or of_place else None


def _asks_supply(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"a set does 150 flashes, I need 400, how many sets", "battery 180 pops, 8 pops a frame, frames?"."""
    counts = [f for f in facts if f.quantity in ("count", "max_count") and f.unit in _POPS and f.value > 1]
    if len(counts) != 2 or _kinds(facts) - {"count", "max_count", "power"} or not _only(asks, "count"):
        return None
    if _SETS.search(lower):
        return Ask("count", "", "sets")
    return Ask("count", "", "frames") if _FRAMES.search(lower) and _SUPPLY.search(lower) else None


def _asks_rating(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"400 film, pushing it two stops. the dial says?": the rating, which is all that a film and its push leave open."""
    told = not asks and len(_all(facts, "film_speed")) == 1 and len(_all(facts, "push")) == 1 and _kinds(facts) == {"film_speed", "push"}
    return Ask("film_speed") if told and _DIAL.search(lower) else None


_ASKS: tuple[Callable[[list[Ask], Sequence[Fact], str], Ask | None], ...] = (_asks_opening, _asks_pops, _asks_supply, _asks_rating)
