"""Two places, each with a reading of its own: how much brighter or darker the one asked for is."""

from __future__ import annotations

import re

from assistant import patterns, scales
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving import marks, then_now
from assistant.solving.lights import ROLES
from assistant.solving.solution import Solution, needs

_WAY = r"(?:darker|brighter|dimmer|lighter|less light|more light|stronger|weaker|over|under|below|above|hotter|down)"
_DARKER = Pattern(rf"\bhow (?:many stops|much|many|far)\b[^?]{{0,12}}\b{_WAY}\b(?: than(?: [a-z']+){{1,5}}?)?[^?]{{0,16}}\b(?:is|are|does|do|was|will|would) (?P<one>(?:[a-z']+ ?){{1,4}})|\bhow (?:many stops|much|far) (?:is|are|does|will) (?P<first>(?:[a-z']+ ){{1,4}}?)(?:sit |lie |read |come out |be )?(?:the )?{_WAY}\b", re.I)

_SAME_TIME = Pattern(r"\b(?:same|one) (?:shutter|time|speed|exposure time)\b|\bboth at \S+|\bshutter (?:the same|unchanged)\b", re.I)
_APART = Pattern(r"\bstops? (?:apart|between)\b|\b(?:difference|gap|spread)\b", re.I)

Reading = list[Fact]
"""What one place was read as: an exposure value, or an aperture and a time."""


def compared(query: Query) -> Solution | None:
    """"the window meters 1/125 at f/11, the room 1/8 at f/5.6: how many stops darker is the room?"; None where no such two are told.

    In stops by the marks (contract 12); plus where the place asked for is the brighter.
    """
    gone = _the_meter_went(query)
    if gone is not None:
        return gone
    left_open = _left_open(query)
    if left_open is not None:
        return left_open
    asked, pair = _DARKER.search(query.text), readings(query)
    if pair is None:
        return None
    first, second = pair
    used = (*first, *second, *query.all("film_speed"))
    changed = then_now.compared(query, first, second, more_light(first, second))
    if changed is not None:
        return changed
    if _is_worked_at(query.text, first, second):
        return None
    if first[0].quantity == "exposure_value" and _SET_AT.search(query.text[: second[0].start]) and _UNDER_OVER.search(query.text):
        return Solution(answers=(marks.stops(first[0].value - second[0].value, "ambient"),), used=used, topic="ambient")
    if _WENT.search(query.text):
        return Solution(answers=(marks.stops(more_light(*pair), "ambient"),), used=used, topic="ambient")
    which = _which(query, first, second, used)
    if which is not None:
        return which
    if asked is None and _APART.search(query.text) and query.asks_for("stops") and all(f.end > f.start for f in used):
        return Solution(answers=(marks.stops(abs(more_light(first, second))),), used=used, topic="ambient")
    if asked is None:
        return None
    place = asked["one"] or asked["first"]
    found = _is_the_second(place, first, second, _beside_the_question(query.text, asked.start(), asked.end(), first[0].start))
    if found is None:
        return None
    more = more_light(first, second)
    second_asked, name = found
    return _brighter(more if second_asked else -more, name, used)


def _beside_the_question(text: str, start: int, end: int, first: int) -> str:
    """What is told before the question, or after it where the question comes first; every letter in its place."""
    return " " * end + text[end:] if end <= first else text[:start]


def _brighter(value: float, name: str, used: tuple[Fact, ...]) -> Solution:
    way = "brighter" if value > 0 else "darker"
    return Solution(lead=f"{scales.speak_stops(abs(value)).capitalize()} {way} ({value:+.2f}).", answers=(marks.stops(value, name),), used=used, topic="ambient")


_WHICH = Pattern(r"\bwhich (?:one |place |side |end |half |part |light |of (?:the two|them|these|the places) )?(?:is|reads?|gets|was|has) (?:the )?(?:brighter|stronger|lighter|hotter|more light|darker|dimmer|weaker|less light)\b", re.I)
_DIMMER = Pattern(r"\b(?:darker|dimmer|weaker|less light)\b", re.I)
_NAMED_BEFORE = Pattern(r"(?:^|[.;:,]|\band\b|\bwhile\b|\bbut\b)\s*(?:(?:i (?:read|meter|metered|measured?|get|have)|and|while|but|the|my|his|her|our|at|on|in|by) )*(?P<name>(?!(?:and|while|but|at|on|in|the|it|i)\b)[a-z][a-z' -]*?)(?:'s| is| was| are| reads?| meters?| metered| needs?| wants?| shows?| gives?| stands| at| alone| by itself| itself|,)*(?: at| for| ev)*\s*$", re.I)
_NAMED_AFTER = Pattern(r"\s*(?:on|for|at|in|off|from|by|towards?|outside|inside) (?:the |my |his |her |a )?(?P<name>[a-z][a-z']*(?: (?!and\b|at\b|with\b|both\b)[a-z']+)?)", re.I)


def _which(query: Query, first: Reading, second: Reading, used: tuple[Fact, ...]) -> Solution | None:
    """"f/11 on the curtain, f/5.6 on the sofa: which is brighter, and by how much": the winner by the word it was told with."""
    asked = _WHICH.search(query.text)
    if asked is None or not query.asks_for("stops"):
        return None
    more = more_light(first, second)
    darker = _DIMMER.search(asked.group()) is not None
    winner = second if (more > 0) != darker else first
    name = named(winner, first if winner is second else second, query.text)
    return _brighter(-abs(more) if darker else abs(more), name, used) if name else None


def named(reading: Reading, other: Reading, text: str) -> str:
    """What a reading was told to be of, by the word before it or after it; empty where none stands there."""
    start, end = min(f.start for f in reading), max(f.end for f in reading)
    after = _NAMED_AFTER.match(text[end:])
    floor = max((f.end for f in other if f.end <= start), default=0)
    before = _NAMED_BEFORE.search(text[floor:start])
    if before and before["name"].strip().lower() not in _NO_PLACE:
        return before["name"].strip().lower()
    return after["name"].lower() if after else ""


_METER_WENT = Pattern(r"\b(?:meter|reading|light|needle)(?: reading)? (?:then |has |had |suddenly )?(?:went|gone|moved|changed|dropped|fallen|fell|rose|risen|climbed|jumped) from\b", re.I)
_GONE = Pattern(r"\bhow (?:many stops|much|far)\b[^?]{0,40}\b(?:brighter|darker|lost|gained|gone|dropped|fallen|changed|risen|up|down)\b", re.I)


def _the_meter_went(query: Query) -> Solution | None:
    """"the meter went from 1/60 to 1/250 at f/8": brighter where the time is shorter or the opening smaller."""
    times, numbers, span = query.all("shutter"), query.all("aperture"), query.last("aperture_range")
    if not _METER_WENT.search(query.text) or not _GONE.search(query.text) or query.has("exposure_value"):
        return None
    if len(times) == 2 and len(numbers) < 2 and span is None:
        value = scales.shutter_difference_stops(times[1].value, times[0].value)
    elif len(times) < 2 and (span is not None and not numbers or len(numbers) == 2):
        first, last = (span.value, span.other) if span is not None else (numbers[0].value, numbers[1].value)
        value = scales.aperture_difference_stops(last, first)
    else:
        return None
    way = "brighter" if value > 0 else "darker"
    return Solution(lead=f"{scales.speak_stops(abs(value)).capitalize()} {way} ({value:+.2f}).", answers=(marks.stops(value, "ambient"),), used=(*times, *numbers, *query.all("aperture_range"), *query.all("film_speed")), topic="ambient")


_OURS = Pattern(r"\b(?:i'm|i am|i|my|camera|shoot\w*|flash\w*|setting\w*|working|exposing|exposed)\b", re.I)


def _is_worked_at(text: str, first: Reading, second: Reading) -> bool:
    """"the wall reads 1/30 at f/4; I shoot at 1/125 and f/8": the second is what the camera is set to, no reading of another place."""
    end, start = max(f.end for f in first), min(f.start for f in second)
    return second[0].quantity == "aperture" and end < start and _OURS.search(text[end:start]) is not None


_SET_AT = Pattern(r"\b(?:settings?|camera|lens and shutter|i(?:'m| am)?|exposure)(?: (?:is|are|am|come|comes|amount|amounts|set|work|works|working|shoot|shooting|out|down|expose|exposing|for|at|to|on|as|of|an?|about))+ $", re.I)
"""Right before an exposure value that the camera is set to."""
_UNDER_OVER = Pattern(r"\bhow (?:many stops|far|much)\b[^?]{0,40}\b(?:under\w*|over\w*|below|above|too (?:dark|bright))\b", re.I)


_WENT = Pattern(r"\bhow (?:many stops|much|far)\b[^?]{0,30}\b(?:has|have|had|did) (?:it|the (?:[a-z]+ )?(?:sky|light|daylight|sun|dusk|ambient|scene|evening))\b[^?]{0,24}\b(?:lost|lose|fallen|fall|dropped|drop|faded|fade|sunk|sink|dimmed|dim|gone down|go down|gained?|risen|rise|brightened?|come up|changed?)\b|\bhow (?:many stops|much)\b[^?]{0,12}\b(?:has|did) (?:it|the (?:sky|light)) (?:go|gone|come) (?:down|up)\b", re.I)
"""One light read twice, in the order of time: a loss is minus."""


_PLACED_AFTER = Pattern(r"[\s,]*(?:on|for|at the(?! same| sync| \w+ speed)|in the|off|from|by the|towards?|out|outside|inside)\b", re.I)
_NO_PLACE = frozenset("the her his my that this our their its than when set at to it there then now in on of by a an be come out read sit lie light alone".split())


def _is_the_second(place: str, first: Reading, second: Reading, told: str) -> tuple[bool, str] | None:
    """Whether the place asked about is the one read second, and that word of it which belongs to one of the two only; None where no word tells."""
    end, start, over = max(f.end for f in first), min(f.start for f in second), max(f.end for f in second)
    if end > start:
        return None
    border = start if _PLACED_AFTER.match(told[over:]) else end  # "f/11 at the window and f/4 on her cheek": a place stands after its figure
    for word in (w for w in place.lower().split() if w not in _NO_PLACE):
        sides = {m.start() >= border for m in patterns.finditer(rf"\b{word}\b", told, re.I)}
        if len(sides) == 1:
            return sides.pop(), word
    for word in place.lower().split():  # "through the window f/16, inside f/2.8: how much brighter is the view?"
        alike = next((kind for kind in _SAME_PLACE if word in kind), frozenset())
        sides = {m.start() >= border for other in alike for m in patterns.finditer(rf"\b{other}\b", told, re.I)}
        if len(sides) == 1:
            return sides.pop(), word
    return None


_SAME_PLACE = (frozenset({"view", "outside", "outdoors", "window", "garden", "street"}), frozenset({"interior", "inside", "indoors", "room"}))
"""Words for the light out there, and for that within."""


_READ = Pattern(r"\b(?:needs?|reads?|meters?|metered|wants?|takes|calls for|calls)(?: (?:for|about|only|just|at))*\W*$", re.I)
_OVER = Pattern(r"\b(?:over|under|brighter|darker|too (?:bright|dark|much|little)|out)\b", re.I)


def _left_open(query: Query) -> Solution | None:
    """"the church reads 30 s at this aperture, the shutter is open for two minutes: how far over is it?"."""
    times = query.all("shutter")
    read = [f for f in times if _READ.search(query.text[: f.start])]
    if len(times) == 2 and not read and not query.has("aperture") or len(times) == 2 and _DRAGGED.search(query.text):
        return _dragged(query, times)
    if len(times) != 2 or len(read) != 1 or not query.asks_for("stops") or not _OVER.search(query.text) or any(query.has(q) for q in ("aperture", "exposure_value", "film_speed", "nd", "exponent", "stops")):
        return None
    kept = next(f for f in times if f is not read[0])
    value = scales.shutter_difference_stops(read[0].value, kept.value)
    way = "over" if value > 0 else "under"
    return Solution(lead=f"{scales.speak_stops(abs(value)).capitalize()} {way} ({value:+.2f}).", answers=(marks.stops(value, "ambient"),), used=(read[0], kept, *query.all("count")), topic="ambient")


_DRAGGED = Pattern(r"\bdrag(?:s|ged|ging)?\b|\bslow(?:ed|ing)?\b|\bopen (?:for )?longer\b|\blengthen\w*\b|\binstead\b", re.I)
_OTHERWISE = ("aperture", "exposure_value", "film_speed", "nd", "exponent", "stops", "relation", "guide_number", "distance", "factor", "loss")


def _dragged(query: Query, times: list[Fact]) -> Solution | None:
    """"the room metered a sixtieth, I drag to a quarter: how many more stops of room": by the times alone."""
    if not _DRAGGED.search(query.text) or not query.asks_for("stops") or any(query.has(q) for q in _OTHERWISE):
        return None
    return Solution(answers=(marks.stops(scales.shutter_difference_stops(times[0].value, times[1].value), "ambient"),), used=tuple(times), topic="ambient")


def readings(query: Query) -> tuple[Reading, Reading] | None:
    """The two readings that are told, and nothing beside them that makes them unlike; None where there are no such two."""
    values, numbers, times = query.all("exposure_value"), query.all("aperture"), query.all("shutter")
    if len(values) == 2 and not numbers and not times:
        return [values[0]], [values[1]]
    filtered = any(query.has(q) for q in ("nd", "factor", "filter_loss")) or len(query.all("film_speed")) > 1
    if values or filtered or len(numbers) != 2:
        return None
    if not times or len(times) == 1 and _SAME_TIME.search(query.text):
        return [numbers[0]], [numbers[1], *times]
    return ([numbers[0], times[0]], [numbers[1], times[1]]) if len(times) == 2 else None


def more_light(first: Reading, second: Reading) -> float:
    """How many stops more light the second has: a larger EV, a smaller opening or a shorter time was read in more."""
    if first[0].quantity == "exposure_value":
        return second[0].value - first[0].value
    if len(first) == 1 or len(second) == 1:
        return scales.aperture_difference_stops(second[0].value, first[0].value)
    return scales.aperture_difference_stops(second[0].value, first[0].value) + scales.shutter_difference_stops(second[1].value, first[1].value)


def of_lamps(query: Query, skies: frozenset[str]) -> bool:
    """"the background's heads read f/11, the key f/5.6 at 1/125": both readings are of lamps that are named, and the time bears on neither."""
    read = query.all("aperture")
    return len(read) == 2 and {f.of for f in read} <= ROLES and not query.has("exposure_value") and query.cues.isdisjoint(skies | {"ambient"})


_I_AM_AT = Pattern(r"\b(?:i'm|i am|we're|we are|camera(?:'s| is)?|set|working|shooting)(?: set| working| shooting)? (?:at|on|to|with) $", re.I)


def set_for_the_flash(query: Query) -> Solution | None:
    """"I'm at 1/60 and f/8, the flash reads f/8: how far under it is the stage?": what the camera is set to for the flash, and no reading of the stage; None where it may be one."""
    openings, times = query.all("aperture"), query.all("shutter")
    if len(openings) != 2 or len(times) != 1 or openings[0].value != openings[1].value or len([f for f in openings if f.of == "ambient"]) != 1 or query.has("exposure_value"):
        return None
    if _I_AM_AT.search(query.text[: min(openings[0].start, times[0].start)]) is None:
        return None
    return needs(("exposure_value",), "I need a reading of that light (its EV, or an f-number and a time).", (*openings, *times, *query.all("film_speed")), "ambient")
