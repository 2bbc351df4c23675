"""Flashes that meter for themselves, and flash bulbs: what to set, what to tell them, what else counts.

An auto flash gives the light for the film speed and aperture it was told. Told a faster film
or a wider aperture it gives less. With a bulb the shutter cuts off part of the burn, so its
guide number holds for one shutter speed, one reflector and one sync setting only.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import flash, marks
from assistant.solving.pops import own
from assistant.solving.solution import Solution, needs

_BULB_LAMP = Pattern(r"flash ?-?bulbs?\b|\bbulbs\b|\b(?:a|one|per|each|blue|clear|class \w) bulb\b|\bbulb (?:flash|gun|holder)")
_TOLD = Pattern(r"tell (?:it|the flash|the sensor)|on (?:the|my) (?:flash|auto|sensor|gun|dial)|set (?:it|the flash|the sensor|the dial|the auto)|dial (?:it|the flash)|flash (?:be )?set")
_ON_LENS = Pattern(r"on (?:the|my) (?:lens|camera|ring)|(?:lens|camera) (?:to|at|be)|set (?:the|my) (?:lens|camera)")


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """"the blue range wants f/4 with 100 film; I've 400 in, its dial still on 100": the light stays that of f/4 at 100, and the camera's film is 400."""
    if "auto" not in query.cues or query.has("guide_number") or not query.asks_for("aperture") or len(query.all("aperture")) != 1:
        return None
    speeds = [f for f in query.facts if f.quantity in ("film_speed", "rated")]
    if len({f.value for f in speeds}) != 2:
        return None
    told = own(query.all("aperture")[0], speeds, query.text)
    loaded = next(f for f in reversed(speeds) if f.value != told.value)
    others = [f for f in query.facts if f not in speeds]
    pair = [replace(f, quantity="film_speed", of="") for f in (told, loaded)]
    plainer = replace(query, facts=(*others, *pair), cues=query.cues - {"span", "want"}, text=patterns.sub(r"\brange\b", "band ", query.text))
    return plainer, tuple(speeds), ("The sensor lets out the light it lets out at that aperture and film speed: a faster film wants the lens closed as many stops.", _TONE)


def solve(query: Query) -> Solution | None:
    """Auto-sensor settings and bulbs; None for all others."""
    if _BULB_LAMP.search(query.text.lower()):
        return _bulbs(query)
    if "auto" not in query.cues or query.has("guide_number"):
        return None
    ask = next((a for a in query.asks if a.quantity in ("film_speed", "aperture")), None)
    return _auto(query, ask) if ask else None


def _way(query: Query) -> tuple[float, Fact | None]:
    """Stops more (plus) or less (minus) than the flash would give by itself."""
    change = next((f for f in query.facts if f.quantity in ("stops", "relation", "power_down", "signed") and f.value), None)
    if change is None:
        return 0.0, None
    less = change.cue == "less" or change.quantity == "power_down" or change.unit == "-" or change.value < 0
    return (-abs(change.value) if less else abs(change.value)), change


def _auto(query: Query, ask: Ask) -> Solution | None:
    stops, change = _way(query)
    film, opening = query.last("film_speed"), query.last("aperture")
    if any(len({f.value for f in query.all(q)}) > 1 for q in ("film_speed", "aperture")) or change is None and ask.quantity == "film_speed":
        return None
    known = film if ask.quantity == "film_speed" else opening
    if known is None:
        what = "the film speed it is set for" if ask.quantity == "film_speed" else "the aperture of the auto range"
        return needs((ask.quantity,), f"I need {what}.", topic="auto")
    used = tuple(f for f in (known, change) if f)
    if ask.quantity == "film_speed":
        way = "faster" if stops < 0 else "slower"
        return Solution(lead="Tell the flash", answers=(marks.film_speed(known.value * 2.0**-stops),), used=used, topic="auto", notes=(f"It believes the film is {way}; leave the lens as it is.", _TONE))
    return _auto_aperture(query, known, stops, used)


def _auto_aperture(query: Query, known: Fact, stops: float, used: tuple[Fact, ...]) -> Solution:
    lower = query.text.lower()
    told = bool(_TOLD.search(lower)) and not _ON_LENS.search(lower)
    value = known.value * 2.0 ** ((stops if told else -stops) / 2)
    lead = "Tell the flash" if told and stops else "Set the lens to"
    note = "Leave the lens as it is." if told and stops else "Leave the flash as it is." if stops else "An auto range asks for its own aperture on the lens, at any distance within the range."
    return Solution(lead=lead, answers=(marks.aperture(value),), used=used, topic="auto", notes=(note, _TONE))


_TONE = "The sensor goes by what it sees: a light subject comes out darker, a dark one lighter."


def _bulbs(query: Query) -> Solution | None:
    """With a guide number as any flash, and what else counts; without one the bulb's table is needed."""
    if not any(a.quantity in ("aperture", "distance", "guide_number") for a in query.asks):
        return None
    if query.has("guide_number") or len(query.all("aperture")) > 1 or query.has("aperture") and query.has("distance"):
        found = flash.solve(query) if query.has("guide_number") else None
        return replace(found, used=found.used + tuple(query.all("shutter"))).noting(_SHUTTER) if found else None
    return needs(("guide_number",), "I need the guide number from the table of your bulb, for your film, shutter speed and reflector.", topic="bulbs").noting(_SHUTTER)


_SHUTTER = "With bulbs the shutter counts: the guide number holds for one shutter speed, reflector and sync setting (M, or X at 1/30 s and slower)."
