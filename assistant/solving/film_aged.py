"""Film that is not what its box says: past its date, or slower or faster by the person's own test.

The lens is opened, or the film rated lower, by what the years or the test take.
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.film import DECADE, expired_stops, exposure_index
from assistant.query import BY_RULE, Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.reciprocity import done as _done
from assistant.solving.solution import Solution


def _aged(query: Query) -> tuple[float, tuple[Fact, ...]] | None:
    """Stops that the years past the date take, and the facts that say so."""
    years = next((f for f in query.all("years") if f.cue != BY_RULE and not patterns.search(r"\b(?:every|per|each|a)\s*$", query.text[: f.start], re.I)), None)
    if years is None or not patterns.search(r"expir|best before|use by|past|out of date|outdated|old|decade|date|ran out|years? (?:out|over|beyond|gone|stale|late)", query.text, re.I):
        return None
    rate = next((f for f in query.facts if f.quantity in ("stops", "loss") and abs(f.value) < 3), None)
    per = next((f for f in query.all("years") if f is not years and f.cue == BY_RULE and f.value > 0), None)
    a_decade = (abs(rate.value) if rate else 1.0) * DECADE / (per.value if per else DECADE)
    return expired_stops(years.value, a_decade), tuple(f for f in (years, rate, per) if f)


def rating(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """The speed to rate it at, so many years past its date."""
    age = _aged(query)
    if age is None:
        return None
    stops, told = age
    return _done((marks.film_speed(exposure_index(said.value, stops)), marks.stops(stops)), said, *told, notes=(_AGE_NOTE,))


_AGE_NOTE = "A stop a decade is common practice for colour negative, not a law: heat makes it worse, a freezer better, and slide film should not be trusted; shoot a test roll."


def stops(query: Query) -> Solution | None:
    """How many stops the years want more."""
    age = _aged(query)
    if age is None:
        return None
    return _done((marks.stops(age[0]),), *age[1], lead="Add", notes=(_AGE_NOTE,))


def opened(query: Query, ask: Ask) -> Solution | None:
    """"f/16 for the fresh film, this one expired twenty years ago": the lens opened by what the years take."""
    age, read = _aged(query), query.all("aperture")
    if age is None or len(read) != 1 or len({f.value for f in query.all("film_speed")}) > 1 or any(query.has(q) for q in ("guide_number", "distance", "power", "exposure_value", "shutter", "push")):
        return None
    stops, told = age
    return _done((marks.aperture(read[0].value * 2.0 ** (-stops / 2)), marks.stops(stops)), read[0], *told, *query.all("film_speed"), notes=(_AGE_NOTE,))


_WHEN_NEW = Pattern(r"\b(?:what|which)\b[^.?!]*\b(?:when (?:it was |still )?(?:new|fresh)|originally|at first|to begin with|once|on (?:the|its) box|box (?:speed|say)|had it (?:been )?before)\b", re.I)


def when_new(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """"it is right at ISO 64 and has lost a stop and a third: what was its speed when new?": faster by what it lost."""
    if _WHEN_NEW.search(query.text) is None or len(query.all("film_speed") + query.all("rated")) != 1 or query.has("push"):
        return None
    age, lost = _aged(query), [f for f in query.facts if f.quantity in ("loss", "stops") and f.cue != "more"]
    if age is None and (len(lost) != 1 or not patterns.search(r"\b(?:lost|aged|slower|slowed|faded|past|old|expired)\b", query.text, re.I)):
        return None
    stops, told = age if age is not None else (abs(lost[0].value), (lost[0],))
    return _done((marks.film_speed(said.value * 2.0**stops),), said, *told)


_SLOW_OR_FAST = Pattern(r"\W*(?:too )?(?:(?P<slow>slow(?:er)?)|fast(?:er)?)\b", re.I)
_AGED_BY = Pattern(r"\b(?:aged|slowed|faded|gone off|deteriorated)(?: down)?(?: by| about| some| nearly)* $|\b(?:film|roll|batch|stock|emulsion|iso \d+)\b[^.?!;]{0,20}\blost (?:about |some |nearly )?$", re.I)
_A_FILM = Pattern(r"\b(?:film|roll|batch|stock|emulsion)\b", re.I)
_TOLD_BESIDE = frozenset({"stops", "relation", "loss", "aperture", "film_speed", "remark", "place", "modifier"})


def opened_for_speed(query: Query, ask: Ask) -> Solution | None:
    """"f/11 with the fresh film, the old batch tests a stop slower": the lens opened by what the film lacks."""
    moved, read = [f for f in query.facts if f.quantity in ("stops", "relation", "loss")], query.all("aperture")
    if len(moved) != 1 or len(read) != 1 or not _A_FILM.search(query.text) or {f.quantity for f in query.facts} - _TOLD_BESIDE or len({f.value for f in query.all("film_speed")}) > 1:
        return None
    way = _SLOW_OR_FAST.match(query.text, moved[0].end)
    lost = _AGED_BY.search(query.text[: moved[0].start]) is not None
    if way is None and not lost:
        return None
    slower = abs(moved[0].value) * (1 if lost or way is not None and way["slow"] else -1)
    return _done((marks.aperture(read[0].value * 2.0 ** (-slower / 2)),), read[0], moved[0], *query.all("film_speed"))
