"""What a lens's glass takes: its T-number beside its f-number, the share of the light it passes, and where its ring must stand.

T = N / √ transmittance (ISO 517, from memory); the ring is marked in f-numbers, the film sees the T-number.
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.physics.ambient import aperture_after
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.solution import Solution

_PASSES = Pattern(r"(?:transmits|passes|passing|transmitting|transmission(?: is| of)?|lets through)\s*(?:only |just |about )?(\d+(?:\.\d+)?)\s*(?:%|percent|per cent)|(\d+(?:\.\d+)?)\s*(?:%|percent|per cent)\s*(?:(?:transmission|transmittance)|(?:of )?(?:the |its )?light (?:gets|comes|goes|is let|makes it) through)", re.I)
_QUESTION = Pattern(r"\b(?:what|which|where|how|find|give me|work out)\b", re.I)
_OF_T = Pattern(r"\bt(?:[- ]?(?:stop|number|no|value|mark)\b|/|\b(?![-']))|\b(?:effective|true|real) (?:stop|aperture)\b", re.I)
_OF_THE_RING = Pattern(r"\bring\b|\bf-?(?:number|stop)\b|\bset\b|\bput\b|\baperture\b", re.I)
_WANTED = Pattern(r"\b(?:call(?:s|ed|ing)? for|ask(?:s|ed|ing)? for|want(?:s|ed)?|need(?:s|ed)?|says?|said|reads?|meter\w*|by the guide number|gives?|works? out at|comes? (?:out )?(?:to|at)|requires?|demands?|exposure of)\b[^.?!;]*$", re.I)
_OPENED = Pattern(r"(?<!\bwide )\bopen(?:ed)?\b(?! at\b)", re.I)
"""What is done to the ring; "the opening" of a lens is a part of it."""
_DEPTH = "Expose by the T-number; depth of field goes by the f-number."


def solve(query: Query, ask: Ask) -> Solution | None:
    """The loss of a lens in stops, its T-number, or the mark of its ring that gives what is wanted."""
    numbers = query.all("t_number")
    share = None if query.has("modifier") else _PASSES.search(query.text)  # "a frost passes 25 percent": not of the glass
    openings = _openings(query)
    if not numbers and not share and ask.quantity == "aperture" and len(openings) == 1 and _asks_t(query.text):
        return _by_loss(query, openings[0])
    if ask.quantity == "aperture" and len({f.value for f in numbers}) == 1 and not openings and not share:
        return _ring_for(query, numbers[-1])
    if not (numbers or share) or not openings:
        return None
    passed = float(share[1] or share[2]) / 100 if share else 0.0
    if ask.quantity == "aperture":
        if query.has("guide_number"):
            return None
        return _by_share(query, openings, passed) if share else _by_numbers(query, openings, numbers)
    if ask.quantity not in ("stops", "factor"):
        return None
    used = (*query.all("aperture")[-1:], *query.all("widest_aperture"), *(f for f in query.facts if f.quantity in ("number", "power", "t_number")))
    lost = -math.log2(passed) if share else 2 * math.log2(numbers[-1].value / openings[-1].value)
    return _loss(query, ask, lost, used)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """A lens that stands at a T-number and is told no f-number: the guide number counts what the lens lets through, so it is the aperture."""
    numbers = {f.value for f in query.all("t_number")}
    if len(numbers) != 1 or not query.has("guide_number") or any(query.has(q) for q in ("aperture", "widest_aperture", "aperture_range")) or not query.asks_for("distance", "power", "film_speed", "count"):
        return None
    number = query.all("t_number")[0]
    facts = (*(f for f in query.facts if f.quantity != "t_number"), replace(number, quantity="aperture", unit=""))
    return query.with_facts(facts), (number,), ("A T-number is what the lens lets through, which is what the guide number counts.",)


def _asks_t(text: str) -> bool:
    """Whether the T-number is asked and not the mark on the ring: by what stands after the last question word."""
    last = max((m.start() for m in _QUESTION.finditer(text)), default=0)
    return _OF_T.search(text, last) is not None and _OF_THE_RING.search(text, last) is None


def _openings(query: Query) -> list[Fact]:
    """The f-numbers told, each once."""
    told = [f for f in query.facts if f.quantity in ("aperture", "widest_aperture")]
    return list({f.value: f for f in reversed(told)}.values())[::-1]  # "the meter says eleven … its f/11 worth": one reading


def _loss(query: Query, ask: Ask, lost: float, used: tuple[Fact, ...]) -> Solution:
    if "open_up" in query.cues and _OPENED.search(query.text) and ask.quantity == "stops":
        return Solution(answers=(marks.stops(lost), marks.factor(lost)), used=used, topic="losses", lead="Open up")
    stops, factor = marks.stops(-lost), marks.factor(lost)
    answers = (factor, stops) if ask.quantity == "factor" else (stops, factor)
    return Solution(answers=answers, used=used, topic="losses", notes=(_DEPTH,), lead="" if ask.quantity == "factor" else "Lost")


def _by_loss(query: Query, opening: Fact) -> Solution | None:
    """"my lens loses a third of a stop, what T-number is f/4?": as much narrower."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss") and f.unit in ("", "lens")]
    if len(lost) != 1 or {f.quantity for f in query.facts} - {"aperture", "loss", "filter_loss", "focal_length"}:
        return None
    value = aperture_after(opening.value, lost[0].value)
    return Solution(answers=(marks.aperture(value),), used=(opening, lost[0], *query.all("focal_length")), topic="losses", lead=f"T{value:.3g}.", notes=("That is the f-number a lens that loses nothing would have for as much light.",))


def _ring_for(query: Query, wanted: Fact) -> Solution | None:
    """"the meter asks for T/8, the glass loses two thirds of a stop: what f-number": the ring, opened by what is lost."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss") and f.unit in ("", "lens")]
    if len(lost) != 1 or {f.quantity for f in query.facts} - {"t_number", "loss", "filter_loss", "focal_length", "film_speed", "shutter", "remark"} or _asks_t(query.text):
        return None
    value = aperture_after(wanted.value, -lost[0].value)
    return Solution(answers=(marks.aperture(value),), used=(*query.all("t_number"), lost[0], *query.all("focal_length")), topic="losses", notes=(f"The glass takes {lost[0].value:.2g} stops, so the ring is opened by as much.",))


def _by_share(query: Query, openings: list[Fact], passed: float) -> Solution | None:
    """"passes 70 per cent, with its ring on f/4": the T-stop; "the meter asks for f/8": the ring, opened by what is swallowed."""
    used = (*query.all("aperture"), *query.all("widest_aperture"), *(replace(f, quantity="remark") for f in query.facts if f.quantity in ("number", "power", "share", "filter_loss", "loss")))
    named = openings[-1]
    wanted = next((f for f in openings if _WANTED.search(query.text[max(0, f.start - 50) : f.start])), None)
    if wanted is not None and not _asks_t(query.text) and passed > 0:
        value = wanted.value * math.sqrt(passed)
        return Solution(answers=(marks.aperture(value),), used=used, topic="losses", notes=(f"The glass takes {-math.log2(passed):.2g} stops, so the ring is opened by as much.",))
    value = optics.t_stop(named.value, passed)
    return Solution(answers=(marks.aperture(value),), used=used, topic="losses", lead=f"T{value:.3g}.", notes=("That is the f-number a lens that loses nothing would have for as much light.",))


def _by_numbers(query: Query, openings: list[Fact], numbers: list[Fact]) -> Solution | None:
    """"f/2.8 but T3.2, the meter asks for f/8": the ring stands at as much wider as the glass swallows; "set to f/8, what T-stop": as much narrower."""
    own, number = _pair(openings, numbers)
    rest = [f for f in (*openings, *numbers) if f is not own and f is not number]
    values = {round(f.value, 2) for f in rest}
    if len(values) != 1:
        return None
    wanted = rest[0]
    to_t = len(numbers) == 1 and _asks_t(query.text)
    ratio = own.value / number.value
    value = wanted.value / ratio if to_t else wanted.value * ratio
    return Solution(answers=(marks.aperture(value),), used=(own, number, *rest, *_said_as_stops(query, own, number)), topic="losses", lead=f"T{value:.3g}." if to_t else "",
                    notes=(f"The ring is marked in f-numbers; T{number.value:g} is what an f/{own.value:g} of this glass lets through.",))


def _said_as_stops(query: Query, own: Fact, number: Fact) -> list[Fact]:
    """"f/2.8 but T/4, so it swallows a stop": what the two numbers say, said once more."""
    apart = 2 * math.log2(number.value / own.value)
    return [f for f in query.facts if f.quantity in ("loss", "filter_loss", "stops") and f.unit in ("", "lens") and abs(abs(f.value) - apart) < _AS_SAID]


_AS_SAID = 0.2
"""Stops that a rounded figure may be off."""


def _pair(openings: list[Fact], numbers: list[Fact]) -> tuple[Fact, Fact]:
    """The lens's own two numbers: its widest opening where that is told, else the two that stand side by side."""
    pairs = [(f, t) for f in openings for t in numbers if 0.7 < f.value / t.value <= 1]
    pairs = pairs or [(f, t) for f in openings for t in numbers]
    return min(pairs, key=lambda p: (p[0].quantity != "widest_aperture", abs(p[0].start - p[1].start)))
