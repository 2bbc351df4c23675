"""Two films, two times or two degrees of one film held against each other: the stops between them, or the time for the other film."""

from __future__ import annotations

import math
import re

from assistant import scales
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.change import is_found_with
from assistant.solving.pop_facts import own
from assistant.solving.reciprocity import done
from assistant.solving.solution import Solution, needs

_BY_THE_WAY = frozenset({"remark", "place"})
_FASTER = Pattern(r"\b(?:stops?|much) (?:(?:faster|quicker|more sensitive|gain\w*)|(?P<slow>slower|less sensitive))\b|\bhow many stops\b[^?]{0,24}\b(?:(?:gain\w*|won)|(?P<lost>los[et]\w*))\b", re.I)


def _kinds(query: Query) -> set[str]:
    """The kinds of facts told, without a number that only says that there are two of them."""
    told = {f.quantity for f in query.facts if not (f.quantity in ("number", "count") and f.value == _PAIR and _OF_TWO.match(query.text, f.start))}
    return told - _BY_THE_WAY


_PAIR = 2
_OF_TWO = Pattern(r"(?:two|2|both|a pair of)\b(?: (?:different|film|loaded|camera))* (?:films?|rolls?|backs?|magazines?|bodies|cameras?|sorts?|kinds?|boxes|emulsions?|stocks?)\b", re.I)


def _counted(query: Query) -> tuple[Fact, ...]:
    return tuple(f for f in query.facts if f.quantity in ("number", "count") and f.value == _PAIR)


_THE_OTHER = Pattern(r"\b(?:the|my|that|this|his|her|our) (?:other|second)(?: (?:one|film|roll|stock|box|sheet|emulsion))?\b", re.I)
"""A film that is spoken of, and its speed not told."""


def apart(query: Query) -> Solution | None:
    """"I took the 50 out and loaded 200, how many stops faster is it": by the marks of the scale, and by the word it is asked with."""
    speeds, way = query.all("film_speed"), _FASTER.search(query.text)
    if way is None or _kinds(query) != {"film_speed"} or query.has("rated"):
        return None
    if len({f.value for f in speeds}) == 1 and _THE_OTHER.search(query.text):
        return needs(("film_speed",), "I need the speed of the other film.", tuple(speeds), "film")
    if len({f.value for f in speeds}) != 2:
        return None
    stops = abs(scales.film_speed_difference_stops(min(f.value for f in speeds), max(f.value for f in speeds)))
    return done((marks.stops(-stops if way["slow"] or way["lost"] else stops),), *speeds, *_counted(query))


_WHICH = Pattern(r"\b(?:which|what)\b[^.?!]{0,60}?\b(?:fast(?:er|est)|quicker|more sensitive|(?P<slow>slow(?:er|est)|less sensitive))\b", re.I)


def which_faster(query: Query) -> Solution | None:
    """"which is faster, 23 DIN or ISO 125, and by how many stops": the winner, and the stops between the two by the marks."""
    speeds, which = query.all("film_speed"), _WHICH.search(query.text)
    if which is not None and _kinds(query) == {"shutter"}:
        return _quicker(query)
    if which is None or _kinds(query) != {"film_speed"} or len({f.value for f in speeds}) != _PAIR:
        return None
    slow, fast = min(speeds, key=lambda f: f.value), max(speeds, key=lambda f: f.value)
    chosen = slow if which["slow"] else fast
    apart = abs(scales.film_speed_difference_stops(slow.value, fast.value))
    lead = f"{'The slower' if which['slow'] else 'The faster'} is {chosen.said.strip()}, by {scales.speak_stops(apart)}."
    stops = Quantity("stops", -apart if which["slow"] else apart, "stops", chosen.said.strip())
    answers = (stops,) if query.asks_for("stops") else (marks.film_speed(chosen.value), stops)
    return done(answers, *speeds, *_counted(query), lead=lead)


_QUICKER = Pattern(r"\b(?:which|what)(?:'?s| is| one is|one's| of (?:the two|these|them) is)?(?: the)? (?:quick(?:er|est)|fast(?:er|est)|short(?:er|est)|(?P<slow>slow(?:er|est)|long(?:er|est)))\b(?! (?:shutter|time|film|exposure))", re.I)


def _quicker(query: Query) -> Solution | None:
    """"which is quicker, 1/125 or 1/500, and by how many stops": as `which_faster`, of two times."""
    times, which = query.all("shutter"), _QUICKER.search(query.text)
    if which is None or len(times) != _PAIR or times[0].value == times[1].value:
        return None
    chosen = (max if which["slow"] else min)(times, key=lambda f: f.value)
    stops = Quantity("stops", abs(scales.shutter_difference_stops(times[0].value, times[1].value)), "stops", chosen.said.strip())
    lead = f"The {'slower' if which['slow'] else 'quicker'} is {chosen.said.strip()}, by {scales.speak_stops(float(stops.value))}."
    answers = (stops,) if query.asks_for("stops") else (marks.shutter(chosen.value), stops)
    return done(answers, *times, *_counted(query), lead=lead)


_SO_MANY_DEGREES = Pattern(r"(?:\w+ )?(?P<n>\d+|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve)[ -](?:din[ -])?degrees?\b(?: (?:on the |of |in )?din(?: scale)?)?", re.I)
_STOPS_OF_THEM = Pattern(r"\bhow many (?:whole |full )?stops\b(?![^?]{0,24}\b(?:faster|slower|quicker)\b)", re.I)
_MOST_DEGREES = 12


def stops_of_degrees(query: Query) -> Solution | None:
    """"how many stops are six degrees DIN?": three degrees to a stop, where so few can be no film's speed."""
    told = query.all("film_speed")
    if len(told) != 1 or told[0].unit != "DIN" or _kinds(query) != {"film_speed"} or _STOPS_OF_THEM.search(query.text) is None:
        return None
    degrees = scales.din_from_iso(told[0].value)
    if _SO_MANY_DEGREES.fullmatch(told[0].said.strip()) is None or degrees > _MOST_DEGREES:
        return None
    return done((marks.stops(degrees / 3),), *told, notes=("Three degrees DIN are one stop.",))


_TESTED = Pattern(r"\b(?:tests?|tested|testing|proves?|proved|behaves?|behaved|turned out|measures?|measured)\b", re.I)
_LOST = Pattern(r"\b(?:los[et]\w*|lose[sd]?|slower|down|weaker|less sensitive)\b", re.I)


def lost_speed(query: Query) -> Solution | None:
    """"the old 100 film tests at 40, how many stops has it lost?": what it tests at against its box."""
    box, tested = query.all("film_speed"), query.all("rated")
    if len(box) != 1 or len(tested) != 1 or _kinds(query) - {"film_speed", "rated", "years"} or not _TESTED.search(query.text) or not _LOST.search(query.text) or tested[0].value >= box[0].value:
        return None
    return done((marks.stops(scales.film_speed_difference_stops(box[0].value, tested[0].value)),), *query.facts, lead="Slower by")


_METERED = Pattern(r"\b(?:meter(?:ed)?|reading|table|sheet)(?: (?:says?|said|reads?|gave|gives|was|is|wanted|asked for|showed|at|only|about))* $", re.I)


def given_over_metered(query: Query) -> Solution | None:
    """"I gave 90 s where the meter said 30, how many stops did I add?": what was given against what was metered."""
    times = query.all("shutter")
    metered = [f for f in times if _METERED.search(query.text[: f.start])]
    if len(times) != 2 or len(metered) != 1 or _kinds(query) != {"shutter"} or min(f.value for f in times) < 1:
        return None
    given = next(f for f in times if f is not metered[0])
    return done((marks.stops(math.log2(given.value / metered[0].value)),), *times)


def time_for_other_film(query: Query, ask: Ask) -> Solution | None:
    """"1/30 was right for ISO 100; what time for ISO 400": as much shorter as the film is faster."""
    speeds, times = query.all("film_speed"), query.all("shutter")
    if len({f.value for f in speeds}) != 2 or len(times) != 1 or _kinds(query) - {"film_speed", "shutter", "aperture"} or len({f.value for f in query.all("aperture")}) > 1:
        return None
    found = [f for f in speeds if is_found_with(f, times[0], query.text)]
    known = found[0] if len({f.value for f in found}) == 1 else own(times[0], speeds, query.text)
    other = next(f for f in reversed(speeds) if f.value != known.value)
    return done((marks.shutter(times[0].value * known.value / other.value),), *query.facts, working=(f"ISO {known.value:g} to ISO {other.value:g}",))


def film_for_time(query: Query) -> Solution | None:
    """"from 1/15 to 1/125 at the same aperture; from ISO 50, what film do I need?": as much faster as the time is shorter."""
    speeds, times = query.all("film_speed"), sorted(query.all("shutter"), key=lambda f: f.start)
    if len(speeds) != 1 or len(times) != 2 or times[0].value == times[1].value or _kinds(query) != {"film_speed", "shutter"}:
        return None
    wanted = [f for f in times if f.cue == "want" or _WISHED.search(query.text[: f.start])]
    now = times[0] if len(wanted) != 1 or wanted[0] is times[1] else times[1]
    other = times[1] if now is times[0] else times[0]
    return done((marks.film_speed(speeds[0].value * now.value / other.value),), *query.facts, working=(f"{now.value:.4g} s to {other.value:.4g} s",))


_WISHED = Pattern(r"\b(?:want|need|like|get to|up to|to use|use)(?: (?:a|an|to get|to use|at|it|to be))* $", re.I)
_IN_DEGREES = Pattern(r"\b(?:what|which|how many|in)\b[^?.]{0,40}\b(?:din|degrees)\b", re.I)


def degrees_after(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """"24 DIN plus one stop is what DIN?", "21 DIN pushed two stops": three degrees a stop."""
    moved = [f for f in query.facts if f.quantity in ("stops", "signed", "relation", "push")]
    if said.unit != "DIN" or len(moved) != 1 or not _IN_DEGREES.search(query.text[said.end :]) or _kinds(query) - {"film_speed", moved[0].quantity}:
        return None
    slower = moved[0].value < 0 or moved[0].cue == "less" or moved[0].unit == "-" or re.search(r"\b(?:slower|less|pull\w*|under)\b", query.text, re.I) is not None
    iso = said.value * 2.0 ** (-abs(moved[0].value) if slower else abs(moved[0].value))
    degrees = scales.din_from_iso(iso)
    return done((Quantity("film_speed", degrees, "DIN"), marks.film_speed(iso)), said, moved[0], lead=f"{degrees:g} DIN (ISO {iso:g}/{degrees:g}°).")


_TIMES_WORDS = {"twice": 2.0, "double": 2.0, "half": 0.5, "a third": 1 / 3, "a quarter": 0.25, "an eighth": 0.125, "three": 3.0, "four": 4.0, "five": 5.0, "eight": 8.0, "ten": 10.0}
_TIMES_AS_FAST = Pattern(r"\b(?:(?P<word>twice|double|half|a third|a quarter|an eighth)|(?P<n>three|four|five|eight|ten|\d+(?:\.\d+)?) times|(?P<x>\d+(?:\.\d+)?)x) (?:as |the )?(?P<way>fast|sensitive|quick|speed|slow)(?: as| of| that of)? (?:(?:the|my|an|a|one|film|of|rated|iso|asa) )*$", re.I)
_STOPS_OFF = Pattern(r"\s*(?:(?P<slow>slower|less sensitive)|faster|quicker|more sensitive) than (?:(?:the|my|an|a|one|film|of|rated|iso|asa) )*$", re.I)
_TOLD_WITH = frozenset({"film_speed", "stops", "relation", "times", "power", "number", "remark"})


def so_much_faster(query: Query, ask: Ask) -> Solution | None:
    """"a film twice as fast as 24 DIN", "three stops slower than 27 DIN": its speed from the one that is told."""
    speeds = query.all("film_speed")
    if ask.quantity not in ("film_speed", "speed", "degrees", "coverage") or query.claim or len(speeds) != 1 or _kinds(query) - _TOLD_WITH:
        return None
    said, before = speeds[0], query.text[: speeds[0].start]
    times, moved = _TIMES_AS_FAST.search(before), [f for f in query.facts if f.quantity in ("stops", "relation")]
    if times is not None and not moved:
        said_times = times["word"] or times["n"] or times["x"]
        factor = _TIMES_WORDS.get(said_times.lower()) or float(said_times)
        factor = 1 / factor if times["way"].lower() == "slow" and factor > 1 else factor
    elif times is None and len(moved) == 1 and moved[0].end <= said.start and (off := _STOPS_OFF.fullmatch(query.text, moved[0].end, said.start)) is not None:
        factor = 2.0 ** (-abs(moved[0].value) if off["slow"] else abs(moved[0].value))
    else:
        return None
    iso = said.value * factor
    used = tuple(f for f in query.facts if f.quantity in _TOLD_WITH)
    note = f"{factor:.3g} times the speed of ISO {said.value:g}."
    if not _IN_DEGREES.search(query.text[said.end :]) or "iso" in query.text[said.end :].lower():
        return done((marks.film_speed(iso),), *used, notes=(note,))
    degrees = scales.din_from_iso(iso)
    return done((Quantity("film_speed", degrees, "DIN"), marks.film_speed(iso)), *used, lead=f"{degrees:g} DIN (ISO {iso:g}/{degrees:g}°).", notes=(note,))
