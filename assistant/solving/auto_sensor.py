"""Flashes that meter for themselves, and flash bulbs: what to set, what to tell them, what else counts.

An auto flash gives the light for the film speed and aperture it was told. Told a faster film
or a wider aperture it gives less. With a bulb the shutter cuts off part of the burn, so its
guide number holds for one shutter speed, one reflector and one sync setting only.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, film_speed_difference_stops
from assistant.solving import flash, marks
from assistant.solving.pop_facts import own
from assistant.solving.solution import Solution, needs

_BULB_LAMP = Pattern(r"flash ?-?bulbs?\b|\b(?<!modelling )(?<!modeling )(?<!household )(?<!tungsten )(?<!light )bulbs\b|\b(?:a|one|per|each|blue|clear|class \w) bulb\b|\bbulb (?:flash|gun|holder)")
_TOLD = Pattern(r"tell (?:it|the flash|the sensor)|on (?:the|my) (?:flash|auto|sensor|gun|dial)|set (?:it|the flash|the sensor|the dial|the auto)|dial (?:it|the flash)|flash (?:be )?set")
_ON_LENS = Pattern(r"on (?:the|my) (?:lens|camera|ring)|(?:lens|camera) (?:to|at|be)|set (?:the|my) (?:lens|camera|ring)|\b(?:where|what) (?:does|do|should|must|will|goes)\b[^.?]{0,16}\b(?:ring|lens|aperture)\b|\b(?:ring|lens) (?:where|goes)\b|which (?:f-?stop|aperture) (?:on|for) the lens")


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """"the blue range wants f/4 with 100 film; I've 400 in, its dial still on 100": the light stays that of f/4 at 100, and the camera's film is 400."""
    if "auto" in query.cues and query.has("guide_number") and query.asks_for("distance") and "span" in query.cues and _SPAN_OF_RANGE.search(query.text):
        return replace(query, cues=query.cues - {"span"}, text=patterns.sub(r"\brange\b", "band ", query.text)), (), (_TO_THE_NEAREST,)
    if "auto" not in query.cues or query.has("guide_number") or not query.asks_for("aperture"):
        return None
    opening = _range_asked(query)
    if opening is None:
        return None
    speeds = [f for f in query.facts if f.quantity in ("film_speed", "rated")]
    if len({f.value for f in speeds}) != 2:
        return None
    told = own(opening, speeds, query.text)
    loaded = next(f for f in reversed(speeds) if f.value != told.value)
    idle = [f for f in query.all("aperture") if f is not opening]
    others = [f for f in query.facts if f not in speeds and f not in idle]
    pair = [replace(f, quantity="film_speed", of="") for f in (told, loaded)]
    plainer = replace(query, facts=(*others, *pair), cues=query.cues - {"span", "want"}, text=patterns.sub(r"\brange\b", "band ", query.text))
    return plainer, (*speeds, *idle), ("The sensor lets out the light it lets out at that aperture and film speed: a faster film wants the lens closed as many stops.", _TONE)


_COLOUR = Pattern(r"\b(?:red|blue|yellow|green|purple|orange|white)\b", re.I)


def _range_asked(query: Query) -> Fact | None:
    """The one aperture, or that of the colour named last: "red is f/4, blue f/8 at 100. on 400, what f for red"."""
    stops = query.all("aperture")
    if len(stops) == 1 or not stops:
        return stops[0] if stops else None
    asked = list(_COLOUR.finditer(query.text, stops[-1].end))
    ends = [0, *(f.end for f in stops)]
    named = [f for f, end in zip(stops, ends) if asked and asked[-1].group().lower() in query.text[end : f.start].lower()]
    return named[0] if len(named) == 1 else None


def solve(query: Query) -> Solution | None:
    """Auto-sensor settings and bulbs; None for all others."""
    if _BULB_LAMP.search(query.text.lower()):
        return _bulbs(query)
    if "auto" not in query.cues or query.has("guide_number"):
        return None
    if query.asks_for("stops"):
        return _off(query)
    ask = next((a for a in query.asks if a.quantity in ("film_speed", "aperture")), None)
    return _auto(query, ask) if ask else None


_OF_SENSOR = Pattern(r"\b(?:range|mode|band|dial|sensor|flash|gun|flashgun|auto|told|tell|telling|believes?|thinks?|red|blue|yellow|green)\b")
_OF_CAMERA = Pattern(r"\b(?:lens|ring|camera|film|roll|loaded|load|in it|stopped|stay|really|actually)\b")


def _off(query: Query) -> Solution | None:
    """"its dial says 200, the film is 100": how far the flash comes out from what the film wants; plus is more light."""
    pairs = [_told_and_real(query, q) for q in ("film_speed", "aperture")]
    if any(pair is None for pair in pairs) or any(query.has(q) for q in ("distance", "stops", "relation", "shutter", "power")):
        return None
    (dial, film), (band, lens) = (pair or (None, None) for pair in pairs)
    value = 0.0
    if dial and film:
        value += film_speed_difference_stops(dial.value, film.value)
    if band and lens:
        value += aperture_difference_stops(band.value, lens.value)
    used = (*query.all("film_speed"), *query.all("aperture"))
    return Solution(answers=(marks.stops(value),), used=used, topic="auto", notes=("The sensor lets out the light that its own film speed and aperture want.", _TONE)) if value else None


def _told_and_real(query: Query, quantity: str) -> tuple[Fact | None, Fact | None] | None:
    """What the sensor goes by and what is so, where the two differ; None where it is not clear which is which."""
    facts = list({f.value: f for f in query.all(quantity)}.values())
    if len(facts) < 2:
        return (None, None)
    if len(facts) > 2:
        return None
    sensor = [_side(query, f) for f in facts]
    if sensor[0] == sensor[1] and sensor[0] is not None or sensor == [None, None]:
        return None
    first = sensor[0] if sensor[0] is not None else not sensor[1]
    return (facts[0], facts[1]) if first else (facts[1], facts[0])


def _side(query: Query, fact: Fact) -> bool | None:
    """Whether a figure is the sensor's own (true) or the camera's, by the last word of either in the clause before it, or the next after it."""
    lower = query.text.lower()
    start = max((lower.rfind(mark, 0, fact.start) for mark in (".", ";", ",", " and ", " but ")), default=-1) + 1
    if _SENSOR_AFTER.match(lower[fact.end :]):
        return True
    for clause in (lower[start : fact.start], fact.said.lower()):
        ours, theirs = (max((m.start() for m in side.finditer(clause)), default=-1) for side in (_OF_SENSOR, _OF_CAMERA))
        if ours != theirs:
            return ours > theirs
    return None


_SENSOR_AFTER = Pattern(r"\s*(?:film )?(?:range|band|mode|on (?:the|its) dial)\b")


_SPAN_OF_RANGE = Pattern(r"\b(?:auto(?:matic)?|red|blue|yellow|green|f/?[\d.]+|sensor)\b[^.,;?]{0,16}\brange\b", re.I)
"""The range that is set, no range of distances."""
_TO_THE_NEAREST = "Nearer than that the sensor cuts the flash short, down to the least distance in its manual."


def _way(query: Query) -> tuple[float, Fact | None]:
    """Stops more (plus) or less (minus) than the flash would give by itself."""
    change = next((f for f in query.facts if f.quantity in ("stops", "relation", "power_down", "signed") and f.value), None)
    part = next((f for f in query.facts if f.quantity == "power" and 0 < f.value < 1 and _OF_THE_LIGHT.match(query.text[f.end :])), None)
    if change is None and part is not None:
        return math.log2(part.value), part
    if change is None:
        return 0.0, None
    less = change.cue == "less" or change.quantity == "power_down" or change.unit == "-" or change.value < 0
    return (-abs(change.value) if less else abs(change.value)), change


_OF_THE_LIGHT = Pattern(r"\s*(?:of |as much )?(?:the |its |that )?(?:light|exposure|flash|output|as much|that)\b", re.I)
""""I want half the light from it"."""


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
