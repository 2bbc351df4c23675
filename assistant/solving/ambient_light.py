"""Daylight and room light: the second balance of aperture, time, film speed and EV.

Asked for one of them, or how far under the room comes out, or which ND, or what a flash must
give as fill beside it. With a flash in play the sync time bounds the shutter.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant import patterns, scales
from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics import ambient
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import ambient_change, came_out, flash_and_time, marks, room_adds, shaded, stepped_time, then_now, two_readings
from assistant.solving.daylight import SKY_EV, Daylight, Working, daylight, wanted, working
from assistant.solving.solution import Solution, needs

ASKED = ("shutter", "aperture", "film_speed", "exposure_value", "stops", "nd", "factor", "power", "distance", "guide_number")
_FLASH_WORDS = Pattern(r"(?<!no )(?<!without )(?<!without the )\b(?:flash|strobe|speedlight|fill|sync|gun|monolight)(?!(?:gun|es)?(?: is| stays)?(?: switched| turned)? off\b)", re.I)
NAMES = {"aperture": "the aperture you want", "shutter": "the shutter speed", "exposure_value": "a reading of the ambient light (aperture and time, or EV)",
         "stops": "how many stops under or over you want it"}
_FOR_DAYLIGHT = r"(?:for|suits?|right for|does|would) (?:the |this )?(?:daylight|ambient|sun|room|sky|window|available light|existing light)"
_SKIES = frozenset(cue for cue, _, _ in SKY_EV)
_MARGIN = 1.06
"""A marked time may differ by this much from the exact one and still be the sync mark."""


def solve(query: Query) -> Solution | None:
    """The answer about ambient light; None when the question is about flash alone."""
    ask = next((a for a in query.asks if a.quantity in ASKED), None)
    if ask is None:
        ask = _how_long(query)
    if ask is None or query.claim:
        return None
    stepped = stepped_time.solve(query) if ask.quantity == "shutter" else None
    if stepped is not None:
        return stepped
    least = came_out.solve(query, ask) or (room_adds.most_under(query, ask) or then_now.by_settings(query) or then_now.by_cameras(query) if ask.quantity == "stops" else None)
    if least is not None:
        return least
    if not is_about_daylight(query, ask):
        return None
    from assistant.solving.fill_light import added, fill

    unread = (two_readings.set_for_the_flash(query) if ask.quantity == "stops" else None) or (shaded.solve(query, ask) if query.has("modifier") else None)
    if unread is not None:
        return unread
    result = ambient_change.from_result(query, ask)
    if result is not None:
        return result
    reading = any(f.quantity == "aperture" and f.of == "ambient" for f in query.facts) and query.has("shutter")
    for topic in (added, fill) if reading else (added, fill, ambient_change.solve):
        found = topic(query, ask)
        if found is not None:
            return ambient_change.no_faster_than_sync(query, found)
    solver = _SOLVERS.get(ask.quantity)
    return solver(query, ask) if solver else None


def _how_long(query: Query) -> Ask | None:
    """"How long do I leave it open": a shutter time, where it is ambient light that is exposed."""
    asked = next((a for a in query.asks if a.quantity in ("duration", "time")), None)
    lit = query.has("exposure_value") or any(f.of == "ambient" for f in query.facts) or query.cues & _SKIES
    slowed = query.has("shutter") and (query.has("nd") or query.has("filter_loss"))
    return replace(asked, quantity="shutter") if asked and (lit or slowed) and not query.has("velocity") else None


def is_about_daylight(query: Query, ask: Ask) -> bool:
    """Whether light that is there bears on the question at all."""
    if ask.quantity in ("shutter", "exposure_value"):
        return True
    if ask.quantity == "stops" and two_readings.of_lamps(query, _SKIES):
        return False
    known = query.has("exposure_value") or bool([f for f in query.facts if f.of in ("ambient", "backdrop") or f.to == "ambient"]) or bool(query.cues & _SKIES)
    together = "ambient" in query.cues and ask.quantity in ("stops", "aperture") and bool(patterns.search(r"\btogether\b|add up|\btotal\b|\bsum\b|\b(?:each|both)\b[^.?]*\b(?:right|correct|proper|normal|enough)\b|\b(?:than|with|over|from|above|to|against) (?:the |my )?(?:flash|strobe) (?:alone|by itself|on its own)\b", query.text, re.I))
    placed = ask.quantity == "stops" and query.cues & {"ambient", "backdrop", "less", "more"} and query.has("aperture", "shutter") and len(query.facts) < 4
    if not known and ask.quantity == "aperture" and "ambient" in query.cues:
        from assistant.solving.fill_light import takes_apart

        known = takes_apart(query)
    return known or together or bool(placed) or (wants_nd(query) and not query.has("guide_number"))


def _lacks(missing: tuple[str, ...], used: tuple[Fact, ...] = ()) -> Solution:
    return needs(missing, "I need " + " and ".join(NAMES.get(m, m.replace("_", " ")) for m in missing) + ".", used, "ambient")


def _scene(query: Query, asked: str) -> tuple[Daylight | None, Working]:
    at = working(query, asked)
    return daylight(query, at), at


def _level(light: Daylight, at: Working) -> float:
    """EV that reaches the film through whatever is on the lens."""
    return light.ev - at.loss


def _done(answers: tuple[Quantity, ...], light: Daylight | None, at: Working, used: tuple[Fact, ...] = (), notes: tuple[str, ...] = (), lead: str = "") -> Solution:
    assumed = (light.assumed if light else ()) + (() if light and light.relative else _speed_assumed(light, at))
    facts = (light.facts if light else ()) + at.facts + used
    return Solution(answers=answers, assumed=assumed, used=tuple(dict.fromkeys(facts)), notes=notes, topic="ambient", lead=lead, working=_working(light, at, answers))


def _speed_assumed(light: Daylight | None, at: Working) -> tuple[Assumed, ...]:
    same = light is not None and light.aperture is not None and light.film_speed == at.film_speed
    return tuple(a for a in at.assumed if a.quantity != "film_speed") if same else at.assumed


def _working(light: Daylight | None, at: Working, answers: tuple[Quantity, ...]) -> tuple[str, ...]:
    steps = []
    if light and not light.relative:
        steps.append(f"ambient light: EV {light.ev:.2f} at ISO 100")
    if at.film_speed != 100:
        steps.append(f"film speed ISO {at.film_speed:g}: {math.log2(at.film_speed / 100):+.2f} stops")
    if at.loss:
        steps.append(f"filters: {-at.loss:+.2f} stops")
    return tuple(steps + [f"{q.quantity.replace('_', ' ')}: {q.value:.4g}" for q in answers[:1] if isinstance(q.value, float)])


# --- one unknown of the balance ------------------------------------------------------------------


def _shutter(query: Query, ask: Ask) -> Solution | None:
    light, at = _scene(query, "shutter")
    if light is not None and light.relative:
        light = daylight(query, working(query))  # a time given later is that of the reading
    number = at.aperture or (light.aperture if light else None)
    if number is None and "wide_open" in query.cues and query.has("widest_aperture"):
        number, at = query.all("widest_aperture")[-1].value, replace(at, facts=(*at.facts, query.all("widest_aperture")[-1]))
    beyond = _beyond_the_lens(query, light) if at.aperture is None and light is not None else None
    if beyond is not None:
        number, at = beyond.value, replace(at, facts=(*at.facts, beyond))
    if light is None and number is None:
        return _slower(query, at)
    if light is None or light.relative or number is None:
        missing = (("exposure_value",) if light is None or (light.relative and at.aperture is None) else ("shutter",) if light.relative else ()) + (("aperture",) if number is None else ())
        return _lacks(missing, at.facts) if light or query.cues & {"ambient", "backdrop"} or not query.has("guide_number") else None
    stops, used, notes = wanted(query)
    value = ambient.shutter(_level(light, at), number, at.film_speed) * 2.0**stops
    return _within_sync(query, _done((marks.shutter(value),), light, at, used, notes), light, at, number, stops)


def _beyond_the_lens(query: Query, light: Daylight) -> Fact | None:
    """The end of the lens, where the light was read for an opening that it does not have."""
    widest, smallest = _limit(query, "widest_aperture"), _limit(query, "smallest_aperture")
    if widest is not None and light.aperture is not None and light.aperture * _MARGIN < widest.value:
        return widest
    return smallest if smallest is not None and light.aperture is not None and light.aperture > smallest.value * _MARGIN else None


def _slower(query: Query, at: Working) -> Solution | None:
    """A time that was right, and a filter put on: longer by what the filter takes."""
    before = query.last("shutter")
    if before is None or not at.loss:
        return _lacks(("exposure_value", "aperture"), at.facts) if query.cues & {"ambient", "backdrop"} or not query.has("guide_number") else None
    return Solution(answers=(marks.shutter(before.value * 2.0**at.loss),), used=(before, *at.facts), assumed=tuple(a for a in at.assumed if a.quantity == "stops"), topic="ambient",
                    notes=("That holds for the daylight; a flash needs a wider stop or more power instead.",))


def _within_sync(query: Query, solution: Solution, light: Daylight, at: Working, number: float, stops: float) -> Solution:
    """A time faster than the flash allows is out of reach; what would do instead."""
    sync, value = query.last("sync"), float(solution.answers[0].value)
    if sync is None or value * _MARGIN >= sync.value or "hss" in query.cues:
        return replace(solution, used=solution.used + ((sync,) if sync else ()))
    if sync.origin != "said" and _FLASH_WORDS.search(query.text) is None:
        return solution.noting(f"With flash the limit is {marks.shutter(sync.value).set} s.")
    over = math.log2(sync.value / value)
    smaller = number * 2.0 ** (over / 2)
    slower = at.film_speed / 2.0**over
    ways = ((marks.aperture(smaller), marks.shutter(sync.value)), (marks.stops(over, "ND"), marks.aperture(number), marks.shutter(sync.value)),
            (marks.film_speed(slower), marks.aperture(number), marks.shutter(sync.value)))
    top = sync.cue == "top"
    note = (f"That is faster than the {'fastest time' if top else 'sync'} of {marks.shutter(sync.value).set} s, by {scales.speak_stops(over)}. At {'that time' if top else 'sync'} either close to {ways[0][0].set}, "
            f"or put {scales.speak_stops(over)} of ND on the lens, or load ISO {number_of(slower)} film; a filter and a smaller stop cut the flash as well.")
    return replace(solution, status="out_of_reach", alternatives=ways, used=solution.used + (sync,), lead="Out of reach of the shutter; it would take" if top else "Out of reach with flash; it would take").noting(note)


def number_of(value: float) -> str:
    """A film speed to three figures."""
    return f"{value:.3g}"


def _aperture(query: Query, ask: Ask) -> Solution | None:
    if query.has("guide_number") and query.has("distance") or query.has("path") or any(f.quantity == "loss" and f.unit == "hss" for f in query.facts):
        return None
    if _AT_IT.search(query.text) and len({f.value for f in query.all("aperture")}) == 1 and query.has("shutter"):
        return _shutter(query, ask)  # "what will it read in half an hour at f/4?": the time
    light, at = _scene(query, "aperture")
    if light is None:
        return None if query.has("guide_number") or not patterns.search(_FOR_DAYLIGHT, query.text, re.I) else _lacks(("exposure_value",), at.facts)
    time = at.shutter or light.shutter
    if time is None and not light.relative:
        instead = _shutter(query, ask) if _own_lens(query) and not at.loss else None  # "what do I set at f/8" of a sky
        return instead or _through_filters(query, at) or _lacks(("shutter",), light.facts + at.facts)
    stops, used, notes = wanted(query)
    value = ambient.aperture(_level(light, at), time or 1.0, at.film_speed) * 2.0 ** (-stops / 2)
    solution = _done((marks.aperture(value),), light, at, used, notes)
    if at.from_sync:
        solution = solution.noting("At the sync speed.")
    return _within_lens(query, solution, light, at, value, stops)


_AT_IT = Pattern(r"\b(?:what|which)\b(?:(?!\b(?:aperture|f-?stop|f-?number|opening|lens|ring|stop|if)\b)[^?])*\bat (?:the same )?f ?/? ?\d[\d.]*\W*$", re.I)
"""A question that ends with where the lens stands."""


def _own_lens(query: Query) -> bool:
    return len(query.all("aperture")) == 1 and query.last("aperture", "") is not None and not query.has("distance") and not query.has("guide_number")


def _through_filters(query: Query, at: Working) -> Solution | None:
    """"f/16 in the sun and two NDs on the lens": what was right without them, opened by what they take."""
    before = query.all("aperture")
    if len(before) != 1 or at.loss <= 0 or query.has("exposure_value") or query.has("film_speed"):
        return None
    return Solution(answers=(marks.aperture(before[0].value * 2.0 ** (-at.loss / 2)),), used=(before[0], *at.facts), topic="ambient", notes=("At the same shutter time; the flash loses as much.",))


def _within_lens(query: Query, solution: Solution, light: Daylight, at: Working, value: float, stops: float) -> Solution:
    """An aperture the lens does not have is out of reach; what would do instead."""
    smallest, widest = _limit(query, "smallest_aperture"), _limit(query, "widest_aperture")
    time = at.shutter or light.shutter or 1.0
    if smallest and value > smallest.value * _MARGIN:
        over = 2 * math.log2(value / smallest.value)
        ways: tuple[tuple[Quantity, ...], ...] = ((marks.stops(over, "ND"), marks.aperture(smallest.value), marks.shutter(time)),
                (marks.film_speed(at.film_speed / 2.0**over), marks.aperture(smallest.value), marks.shutter(time)))
        sync = query.last("sync")
        quicker = time / 2.0**over
        if sync is None or quicker * _MARGIN >= sync.value:
            ways += ((marks.aperture(smallest.value), marks.shutter(quicker)),)
        note = f"The lens stops at {marks.aperture(smallest.value).set}: {scales.speak_stops(over)} too bright. Use that much ND, or film of ISO {number_of(at.film_speed / 2.0**over)}."
        return replace(solution, status="out_of_reach", alternatives=ways, used=solution.used + (smallest,), lead="Out of reach of the lens; it would take").noting(note)
    if widest and value * _MARGIN < widest.value:
        short = 2 * math.log2(widest.value / value)
        ways = ((marks.aperture(widest.value), marks.shutter(time * 2.0**short)), (marks.film_speed(at.film_speed * 2.0**short), marks.aperture(widest.value), marks.shutter(time)))
        note = f"The lens opens to {marks.aperture(widest.value).set}: {scales.speak_stops(short)} too dark. Use {ways[0][1].set} s, or film of ISO {number_of(at.film_speed * 2.0**short)}."
        return replace(solution, status="out_of_reach", alternatives=ways, used=solution.used + (widest,), lead="Out of reach of the lens; it would take").noting(note)
    return solution


def _limit(query: Query, quantity: str) -> Fact | None:
    found = query.last(quantity)
    both = query.last("aperture_range")
    if found is None and both is not None:
        ends = sorted((both.value, both.other))
        return replace(both, quantity=quantity, value=ends[1] if quantity == "smallest_aperture" else ends[0])
    return found


def _film_speed(query: Query, ask: Ask) -> Solution | None:
    if query.has("guide_number"):
        return None
    light, at = _scene(query, "film_speed")
    if light is None:
        return None
    number, time = at.aperture or light.aperture, at.shutter or light.shutter
    opens = _limit(query, "widest_aperture") if number is None else None
    if opens is not None:  # the film that would just do is asked for where the lens is as wide as it goes
        number, at = opens.value, replace(at, facts=(*at.facts, opens))
    if number is None or time is None:
        return _lacks((("aperture",) if number is None else ()) + (("shutter",) if time is None else ()), light.facts + at.facts)
    stops, used, notes = wanted(query)
    value = ambient.film_speed(_level(light, at), number, time) * 2.0**stops
    return _done((marks.film_speed(value),), light, replace(at, assumed=()), used, notes)


_REFERRED = Pattern(r"\b(?:refer\w*|relative|in terms|correct\w*|convert\w*|reduc\w*|counted|based|normali\w*)\b[^.?]{0,12}\b(?:to|of|at|on)\s*(?:iso |asa )?$|\bev\W*(?:(?:is|would|does) (?:that|this|it) (?:be |make |come to )?)?(?:\(?(?:at|@|for|in)\s*)?(?:iso )?$|\bev of (?:that|the|this|my) [a-z]+ (?:at|for|on) (?:iso )?$", re.I)
"""What stands before the speed that an exposure value is to be counted at."""


def _exposure_value(query: Query, ask: Ask) -> Solution | None:
    speeds = query.all("film_speed")
    if len(speeds) == 2 and speeds[1].value == 100 and _REFERRED.search(query.text[: speeds[1].start]):
        found = _exposure_value(query.with_facts(f for f in query.facts if f is not speeds[1]), ask)
        return replace(found, used=(*found.used, speeds[1])) if found is not None else None
    light, at = _scene(query, "")
    if light is not None and light.aperture is None and light.assumed and at.aperture and at.shutter:
        light = None  # it was metered, whatever the words for the sky
    if light is None and at.aperture and at.shutter:
        light = Daylight(ambient.exposure_value(at.aperture, at.shutter, at.film_speed) + at.loss, (), at.assumed, at.aperture, at.shutter, at.film_speed)
    if light is None or light.relative:
        return _lacks(tuple(q for q, v in (("aperture", at.aperture), ("shutter", at.shutter)) if v is None) or ("shutter",), at.facts)
    extra = () if query.has("film_speed") or not light.aperture or light.assumed else at.assumed
    solution = _done((Quantity("exposure_value", light.ev, "EV"),), light, at, notes=("Counted at ISO 100.",))
    return replace(solution, assumed=light.assumed + extra)


def _stops(query: Query, ask: Ask) -> Solution | None:
    """How far the ambient light alone comes out over or under, or how strong an ND must be."""
    if wants_nd(query):
        return _nd(query, ask)
    if query.has("guide_number"):
        return None
    apart = flash_and_time.unmoved(query) or two_readings.compared(query)
    if apart is not None:
        return apart
    light, at = _scene(query, "")
    if light is None and query.has("aperture", "shutter") and query.cues & {"less", "more"} and (query.cues & {"ambient", "backdrop"} or len(query.all("aperture")) == len(query.all("shutter")) == 1):
        return _lacks(("exposure_value",), tuple(query.facts))
    if light is None or (at.aperture is None and at.shutter is None and not query.has("film_speed")):
        return None
    number, time = at.aperture or light.aperture, at.shutter or light.shutter
    if number is None or (time is None and not light.relative):
        return _lacks((("aperture",) if number is None else ()) + (("shutter",) if time is None and not light.relative else ()), light.facts + at.facts)
    value = _difference(light, at, number, time) - at.loss
    way = "over" if value > 0.005 else "under" if value < -0.005 else "right"
    note = f"By itself the ambient light comes out {scales.speak_stops(abs(value))} {way}." if way != "right" else "By itself the ambient light is exposed as it was read."
    return _done((marks.stops(value, "" if _WHICH.search(query.text) else "ambient"),), light, at, notes=(note,))


_WHICH = Pattern(r"\bwhich\b[^?.]{0,24}\b(?:brighter|darker|lighter|dimmer|stronger)\b", re.I)
"""Of the brighter of two that is, not of the ambient light."""


def _difference(light: Daylight, at: Working, number: float, time: float | None) -> float:
    """Stops over (+) or under (-): counted by the marks from a reading (contract 12), else exact."""
    if light.aperture is None:
        return ambient.balance_stops(light.ev, number, time or 1.0, at.film_speed)
    moved = scales.aperture_difference_stops(light.aperture, number) + scales.film_speed_difference_stops(light.film_speed, at.film_speed)
    if light.shutter is not None and time is not None:
        moved += scales.shutter_difference_stops(light.shutter, time)
    return moved


# --- neutral density --------------------------------------------------------------------------------


def wants_nd(query: Query) -> bool:
    """Whether it is the strength of an ND that is asked."""
    asked = any(a.quantity == "nd" for a in query.asks)
    return asked or ("name_nd" in query.cues and not query.has("nd")) or (query.asks_for("factor") and any(f.of == "ambient" for f in query.facts) and not query.has("factor", "nd"))


def _nd(query: Query, ask: Ask) -> Solution | None:
    if query.has("nd") or query.has("factor") or query.has("filter_loss"):
        return None
    light, at = _scene(query, "")
    no_time = not query.has("shutter") and not query.has("sync") and not query.has("exposure_value")
    span = query.last("aperture_range")
    opened = span is not None and not query.has("aperture") and span.value > span.other  # "from f/16 to f/4"
    if light is not None and light.relative and at.shutter is None and at.aperture is not None or no_time and (len(query.all("aperture")) == 2 or opened):
        found = _between(query)  # no time told: the same for both
        if found is not None:
            return found
    if light is None:
        return _between(query) or (None if not wants_nd(query) or query.has("guide_number") else _lacks(("exposure_value",), at.facts))
    closed = _limit(query, "smallest_aperture") if at.aperture is None else None
    if closed is not None:
        at = replace(at, aperture=closed.value, facts=(*at.facts, closed))
    if at.aperture is None or (at.shutter or light.shutter) is None:
        return _lacks((("aperture",) if at.aperture is None else ()) + (("shutter",) if at.shutter is None and light.shutter is None else ()), light.facts + at.facts)
    stops, used, notes = wanted(query)
    value = _difference(light, at, at.aperture, at.shutter or light.shutter) - at.loss - stops
    value = abs(value) if _WITH_AND_WITHOUT.search(query.text) else value
    answers, said = _strength(query, ask, value)
    return _done(answers, light, at, used, notes + said)


_WITH_AND_WITHOUT = Pattern(r"\bwith (?:the |an? |my )?(?:nd|filter|it)\b(?:[^.?!]|\.\d)*\bwithout\b|\bwithout\b(?:[^.?!]|\.\d)*\bwith (?:the |an? |my )?(?:nd|filter|it)\b", re.I)
"""Both settings are told, with the filter on and off: its strength lies between them, whichever is told first."""


def _strength(query: Query, ask: Ask, value: float) -> tuple[tuple[Quantity, ...], tuple[str, ...]]:
    """An ND so many stops strong, as a factor first where a factor is asked."""
    strength, factor = marks.stops(value, "ND"), marks.factor(value)
    by_factor = ask.quantity == "factor" or (ask.quantity == "nd" and "factor" in query.text.lower())
    if value <= 0:
        return (strength, factor), ("No ND is needed: it is not too bright there.",)
    note = f"Sold as ND {_sold(value)} or density {ambient.density_from_stops(value):.1f}; it cuts the flash as much as the daylight."
    return ((factor, strength) if by_factor else (strength, factor)), (note,)


def _between(query: Query) -> Solution | None:
    """"What ND takes me from f/11 to f/2.8": the marks between two settings, times too."""
    pairs = [(query.all(q), between) for q, between in scales.DIFFERENCE_STOPS.items()]
    moved = [(facts, between(facts[0].value, facts[-1].value)) for facts, between in pairs if len(facts) == 2]
    span = query.last("aperture_range")
    if span:
        moved.append(([span], scales.aperture_difference_stops(span.value, span.other)))
    if not moved or not wants_nd(query):
        return None
    ask = next((a for a in query.asks if a.quantity in ASKED), Ask("stops"))
    answers, said = _strength(query, ask, abs(sum(stops for _, stops in moved)))
    return Solution(answers=answers, used=tuple(f for facts, _ in moved for f in facts), notes=said, topic="ambient")


def _sold(stops: float) -> str:
    """The factor of the nearest whole-stop filter."""
    return f"{2 ** max(1, round(stops)):g}"


_SOLVERS: dict[str, Callable[[Query, Ask], Solution | None]] = {
    "shutter": _shutter, "aperture": _aperture, "film_speed": _film_speed, "exposure_value": _exposure_value, "stops": _stops, "nd": _nd, "factor": _nd,
}
