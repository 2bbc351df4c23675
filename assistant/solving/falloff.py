"""Fall-off: rows, backdrops, and moving the light. Only the distances count, not the flash.

Inverse square law throughout, for a light small against its distance. Stops are signed:
plus is more light (contract 6 and 26: opening up and adding are plus).
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import back_off_for_spread, distance_for_falloff, falloff_stops
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import (
    backdrop_place,
    by_reading,
    leeway,
    marks,
    named_places,
    other_flash,
    other_place,
    place_by_light,
    set_for_row,
    share_of_light,
    shared_error,
    turned_too,
    twins,
    unplaced_light,
    where_it_is,
)
from assistant.solving.backdrop_place import darker_by
from assistant.solving.light_wanted import asked_change
from assistant.solving.lights import lights, preferred_unit
from assistant.solving.placing import Scene, asks_move, between_rows, meant, names_no_place, scene_of, taken_further, times_as_far, two_lights
from assistant.solving.solution import Solution, needs
from assistant.solving.tones import looks
from assistant.solving.whose_figure import brighter_by_name, told_with
from assistant.units import speak_length

_WHICH = Pattern(r"\bwhich (?:one |of them |of the two )?(?:is|gets|has|receives) (?:the )?(?:brighter|more|most)\b|\bwho gets (?:more|the most)\b|\bwho(?:'s| is)? (?:the )?(?:brighter|brightest|hotter)\b", re.I)
_COMPENSATE = Pattern(r"clos(?:e|ing) (?:it )?down|stop(?:ping)? (?:it )?down|open(?:ing)? (?:it )?up|\bopen\b|\badd\b|make up|\b(?:have to|need to|must|should|do i|got to|gotta) give\b(?! (?:me|us))|compensat|to keep|hold the|give it(?! (?:to me )?in )|more exposure|more (?:power|output|juice)|more light (?:do i need|is needed|needed|to keep|must)|\b(?:must|should|does|will|would) (?:it|they|the (?:flash|light|head|lamp|strobe)) (?:have to |need to )?(?:give|put out|deliver)\b|increase|turn (?:it |the power )?up", re.I)


def solve(query: Query) -> Solution | None:
    """A question of fall-off, or None."""
    twin = other_flash.solve(query) or twins.solve(query)
    if twin is not None:
        return twin
    named = "name_guide_number" in query.cues and (len(query.all("guide_number")) != 1 or query.asks_for("guide_number"))  # "88 ft, that's the guide number" is told
    if "zoom" in query.cues or named or len(query.all("guide_number")) > 1 or two_lights(query):
        return None
    scene = scene_of(query)
    if scene is None:
        return None
    there = where_it_is.solve(query)
    if there is not None:
        return there
    placed = next((found for ask in query.asks if ask.quantity == "distance" and (found := place_by_light.solve(query, ask))), None)
    shared = placed or shared_error.solve(query, scene) or share_of_light.between(query, scene) or share_of_light.times_as_strong(query, scene)
    if shared is not None:
        return shared
    for ask in query.asks:
        for row in _ROWS.get(meant(query, ask, scene), ()):
            found = row(query, ask, scene)
            if found:
                return found
    return None


def _done(answers: tuple[Quantity, ...], scene: Scene, *used: Fact | None, lead: str = "", notes: tuple[str, ...] = (), working: tuple[str, ...] = (), assumed: tuple[Assumed, ...] = ()) -> Solution:
    facts = scene.used + tuple(f for f in used if f is not None)
    return Solution(answers=answers, used=tuple(dict.fromkeys(facts)), notes=notes, working=working, topic="falloff", lead=lead, assumed=assumed)


def _length(query: Query, metres: float) -> str:
    return speak_length(metres, preferred_unit(query))


# --- stops ---------------------------------------------------------------------------------------


def _so_many_times(query: Query, scene: Scene, times: float) -> Solution:
    """Stops of a place so many times as far, with what the power is turned by besides."""
    if share_of_light.asked(query):
        return share_of_light.left(query, times)
    besides = turned_too.turned(query)
    if besides is not None:
        net = falloff_stops(1.0, times) + besides
        return _done((marks.stops(net),), scene, *query.all("times"), *query.all("power"), *query.all("power_down"), lead=_stops_lead(net, net, None))
    scene = Scene(1.0, times, rows=scene.rows, moved=not scene.rows)
    return _done((marks.stops(_signed(query, falloff_stops(1.0, times), scene)),), scene, *query.all("times"), *(f for f in query.all("power") if f.said.strip().lower() in turned_too.SAID_OF_IT), lead=_stops_lead(_signed(query, falloff_stops(1.0, times), scene), falloff_stops(1.0, times), None))


def _stops(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """Stops from the near place to the far one, or from the old place of the light to the new."""
    if scene.used == () and scene.rows and all(f.quantity in ("rows", "count", "remark") for f in query.facts) and times_as_far(query) is None:
        return needs(("distance",), "I need the distance from the flash to the front row and to the back row.", topic="falloff")
    if scene.far is None and (times := times_as_far(query)) is not None:
        return _so_many_times(query, scene, times)
    scene = taken_further(query, scene)
    if (scene.near is None or scene.far is None) and "front" in query.cues and query.cues & {"back", "middle"} and not query.has("stops"):
        lacking = "back" if query.last("distance", "front") else "front" if query.last("distance", "back") else "front row and to the back"
        return needs(("distance",), f"I need the distance from the flash to the {lacking} row.", scene.used, "falloff")
    if scene.near is not None and scene.far is None and ("backdrop" in query.cues or _BEHIND_IT.search(query.text)) and {f.quantity for f in query.facts} <= {"distance", "remark", "place", "format"} and len(query.all("distance")) == 1:
        return needs(("distance",), "I need the distance from the light to what stands behind the subject, or how far behind it stands.", scene.used, "falloff")
    if unplaced_light.lacks_the_second(query, scene):
        return needs(("distance",), "I need the distance from the light to the other place as well.", scene.used, "falloff")
    if scene.near is None and scene.gap is not None and {f.quantity for f in query.facts} <= {"gap", "rows", "remark", "place", "count", "max_count"} and all(f.value == 1 for f in (*query.all("count"), *query.all("max_count"))):
        return needs(("distance",), f"I need the distance from the light to the {scene.front if scene.of else 'front row'}.", scene.used, "falloff")
    if scene.near is None or scene.far is None or names_no_place(scene, query.text):
        return None
    lost = falloff_stops(scene.near, scene.far)
    if scene.moved and (opened := turned_too.opened_by(query)) is not None:  # "from 6 feet to 9 and opened up a stop": what is left of both
        net = lost + opened[0]
        return _done((marks.stops(net),), scene, opened[1], lead=_stops_lead(net, net, None))
    if query.has("stops"):
        return None
    turned = query.all("power_down")
    if turned and scene.moved and len(turned) == 1:  # "moved from 3 m to 2 m and turned down a stop": what is left of both
        net = lost - turned[0].value
        return _done((marks.stops(net),), scene, turned[0], lead=_stops_lead(net, net, None))
    if scene.rows and lost < 0 and set_for_row.ADDED_FOR.search(query.text):
        return _done((marks.stops(-lost, "back row"),), scene, lead=f"Add {speak_stops(-lost)} for the back row ({-lost:+.2f}); the front is over by as much then.")
    value = _signed(query, lost, scene)
    if _SET_FOR.search(query.text) and not scene.rows and scene.far_fact is not None and scene.near_fact is not None:
        for_it = min((scene.near_fact, scene.far_fact), key=lambda f: abs(f.start - _SET_FOR.search(query.text).end()))  # type: ignore[union-attr]
        was = scene.far_fact if for_it is scene.near_fact else scene.near_fact
        value = falloff_stops(for_it.value, was.value)  # where it was, against where it was worked out for
        return _done((marks.stops(value),), scene, lead=f"{speak_stops(abs(value)).capitalize()} {'over' if value > 0 else 'under'} ({value:+.2f}).")
    if _WHICH.search(query.text):
        return _done((marks.stops(abs(lost)),), scene, lead="The nearer one gets more light")
    of = scene.asked(query)
    if (inner := between_rows(scene, query.text)) is not None:
        apart = falloff_stops(inner[2], inner[1])
        return _done((marks.stops(apart, inner[0]),), scene, lead=_stops_lead(apart, apart, inner[0]))
    of = "front row" if of == "back row" and value > 0 > lost else of  # whose light is the more
    step = f"2 × log2({_length(query, scene.near)} / {_length(query, scene.far)}) = {lost:+.2f} stops"
    more = tuple(marks.stops(falloff_stops(scene.near, d), name) for name, d in scene.others)
    notes = ("With more exposure on the lens or the film the back comes up and the front with it; only moving the light changes the spread.",) if scene.rows and abs(lost) > 1 else ()
    if scene.of == "background":
        notes = (looks(lost),)
    if scene.moved and len(powers := query.all("power")) == 1 and turned_too.stood_on(powers[0], query, scene.far_fact):  # what it stood on: the same before and after, or what makes up for the move
        more, scene = (*more, *(turned_too.turned_up(powers[0], value) if value == -lost and "open_up" not in query.cues else ())), replace(scene, used=(*scene.used, powers[0]))
    return _done((marks.stops(value, of), *more), scene, lead=_stops_lead(value, lost if brighter_by_name(query) is None else value, of), notes=notes, working=(step,))


_BEHIND_IT = Pattern(r"\b(?:darker|under|below|less|lose|dimmer|fall\w*|brighter)\b[^.?!]{0,40}\b(?:wall|curtains?|drapes?|canvas|panelling|hedge|fence|cloth)\b", re.I)
_SET_FOR = Pattern(r"\b(?:set|worked (?:it )?out|calculated|exposed|figured|opened|dialled|dialed)\b[^.?!\d]{0,30}\bfor\s*$|\b(?:set|worked (?:it )?out|calculated|exposed|figured)\b[^.?!\d]{0,30}\bfor(?= (?:about )?\d)", re.I)


def _stops_lead(value: float, lost: float, of: str | None) -> str:
    """The whole first sentence, with the sign as it was asked for."""
    if abs(value) < 0.005:
        return "No difference."
    size, sign = speak_stops(abs(value)), f" ({value:+.2f})"
    if value != lost and not of:
        return f"{'Open up' if value > 0 else 'Close down'} {size}{sign}."
    return f"{size[:1].upper()}{size[1:]} {'more' if value > 0 else 'less'} light{f' on the {of}' if of else ''}{sign}."


def _signed(query: Query, lost: float, scene: Scene) -> float:
    text = query.text
    if _COMPENSATE.search(text) and not scene.rows:
        return -lost
    named = brighter_by_name(query) if not scene.moved and not scene.rows else None
    if named is not None:
        return abs(lost) if named else -abs(lost)
    if patterns.search(r"how much (?:brighter|hotter|more|over)|how many stops (?:brighter|hotter|more|over|do i gain)|(?:front|near)\w*(?: \w+)?(?: is| be)? (?:brighter|hotter|over)|how many stops (?:is|are|will|would) (?:the |my )?(?:front|first|near\w*)\b[^?]{0,40}\b(?:over|brighter|hotter|too bright)", text, re.I) and not scene.moved:
        return abs(lost)
    return lost


# --- distances -----------------------------------------------------------------------------------


def _farthest(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """How far the last one may be when the first one's distance and the spread are given."""
    if scene.near_fact is None or scene.near_fact.of != "front" or scene.far is not None or scene.near is None or scene.gap is not None:
        return None
    wanted = darker_by(query)
    if wanted is None or wanted[0] >= 0 or not patterns.search(r"\b(?:farthest|furthest) (?:distance|place|spot)\b|how far\b[^?]*\b(?:farthest|furthest|far (?:end|side|one)|back|last|rear|stern|be)\b", query.text, re.I):
        return None
    place, unit = distance_for_falloff(scene.near, wanted[0]), preferred_unit(query, ask.unit)
    if patterns.search(r"\bhow (?:far|many (?:feet|metres)) (?:behind|beyond|further back than) (?:the |that |it|them)|\bhow deep\b", query.text, re.I):
        return _done((marks.distance(place - scene.near, unit, "between"), marks.distance(place, unit, "back row")), scene, *wanted[1], lead=f"{_length(query, place - scene.near)} behind, which is {_length(query, place)} from the light.")
    return _done((marks.distance(place, unit),), scene, *wanted[1], lead=f"{_length(query, place)} from the light.")


def _by_guide_moved(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """How much further the flash must go from where it is, by guide number and aperture."""
    if scene.near is None or scene.far is not None or scene.rows or ask.of != "move" or not query.has("guide_number", "aperture") or len(query.all("aperture")) > 1:
        return None
    place, used, taken = leeway.by_guide(query.with_facts(f for f in query.facts if f is not scene.near_fact), preferred_unit(query, ask.unit))
    if place is None:
        return None
    return _done(_move_or_place(query, ask, scene, place - scene.near, place), scene, *used, assumed=taken, lead=_place_lead(query, ask, scene, place - scene.near, place))


def _spread(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """Where the light must go so that two places differ by no more than so much."""
    wanted, depth = darker_by(query), scene.depth
    if wanted is None or depth is None or depth <= 0:
        return None
    stops, used, assumed = abs(wanted[0]), wanted[1], wanted[2]
    if stops <= 0:
        return Solution("rejected", "No distance makes two places equally bright: some fall-off always stays. Say how much you can stand.", topic="falloff")
    near = scene.near or 0.0
    move = back_off_for_spread(near or depth, (near or depth) + depth, stops)
    place = move + (near or depth)
    power = 2 * math.log2(place / near) if near else 0.0
    notes = (f"From there it takes {speak_stops(abs(power))} more light than now ({2 ** power:.3g} times the power) for the same f-stop on the front.",) if near and power > 0.05 else ()
    if near and move < 0:
        notes = ("They are within that already: the light may even come nearer.",)
    there: tuple[Quantity, ...] = ()
    now = [f for f in query.all("power") if f.value < 1 and not f.of] if near else []
    if len(now) == 1 and len(query.all("power")) == 1 and now[0].value * 2**power <= 1.0005:  # at what it stood on, what it must stand on there
        used, there = (*used, now[0]), (marks.power(now[0].value * 2**power),)
    if _TO_THE_LAST.search(query.text) and scene.rows:
        unit, last = preferred_unit(query, ask.unit), place + depth
        return _done((marks.distance(last, unit, "back row"), marks.distance(place, unit, "front row")), scene, *used, notes=notes, assumed=assumed, lead=f"{_length(query, last)} from the back row, which is {_length(query, place)} from the front.")
    return _done((*_move_or_place(query, ask, scene, move, place), *there), scene, *used, notes=notes, assumed=assumed, lead=_place_lead(query, ask, scene, move, place),
                 working=(f"depth {_length(query, depth)} / (2^({stops:g}/2) - 1) = {_length(query, place)} from the light to the front",))


_TO_THE_LAST = Pattern(r"\b(?:distance|far)\b[^.?!,]{0,24}?\b(?:from|to) (?:the |my )?(?:last|back|rear) (?:row|one|rank)\b", re.I)
"""The way to the row at the back is asked, and not that to the front."""


def _move_or_place(query: Query, ask: Ask, scene: Scene, move: float, place: float) -> tuple[Quantity, ...]:
    unit = preferred_unit(query, ask.unit)
    if scene.near is None:
        return (marks.distance(place, unit),)
    if asks_move(query, ask):
        return marks.distance(abs(move), unit), marks.distance(place, unit, scene.front)
    return marks.distance(place, unit), marks.distance(abs(move), unit, "move")


def _place_lead(query: Query, ask: Ask, scene: Scene, move: float, place: float) -> str:
    way = "back" if move >= 0 else "closer"
    whom = {"front": "the front row", "subject": "the subject"}.get(scene.front, "the subject")
    there = f"{_length(query, place)} from {whom}"
    if scene.near is None:
        return f"Put the light {there}."
    by = f"{_length(query, abs(move))} {way}"
    return f"Move it {by}, to {there}." if asks_move(query, ask) else f"Put the light {there}: {by} from where it is."


_ASKED_APART = Pattern(r"\bhow far apart\b", re.I)


def _shifted(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """The new distance for so many stops more or less, from one distance."""
    if ask.of in ("fill", "hair", "rim", "kicker", "accent") or any(f.of in ("fill", "hair", "rim", "kicker", "accent", "backdrop") for f in query.all("relation")):
        return None
    if scene.near is None or scene.far is not None or query.has("guide_number") or len(query.all("aperture")) > 1 or any(f.value != 1.0 and f.said.lower() not in ("half", "halve", "halving", "quarter", "a quarter") for f in query.all("power")) or any(f.to for f in query.all("relation")):
        return None
    change = asked_change(query)
    if change is None or _ASKED_APART.search(query.text) or (query.has("aperture") and not patterns.search(r"\bstep|before|until|\bstop\w* (?:under|over|less|more|brighter|darker|hotter|dimmer)|\bdrift", query.text, re.I)):
        return None
    stops, used = change
    place = distance_for_falloff(scene.near, stops)
    answers = _move_or_place(query, ask, scene, place - scene.near, place)
    full = [f for f in query.all("power") if f.value == 1.0]  # "and the power is flat out": which is why it moves
    return _done(answers, scene, *used, *full, lead=_place_lead(query, ask, scene, place - scene.near, place),
                 working=(f"{_length(query, scene.near)} × 2^({-stops:g}/2) = {_length(query, place)}",))


_OUTPUT = Pattern(r"\b(?:power|output|energy|watt[- ]?seconds|flash|light)\b[^?.;]{0,40}\b(?:rise|go up|increase\w*|raised?|multipl\w+|turn\w* up|(?P<less>fall|come down|go down|decrease\w*|reduced?|cut|lowered|turn\w* down|drop))\b|\bhow many times (?:the|its|as much|more) (?:power|output|energy|watt[- ]?seconds)\b", re.I)


def _output_for(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"from 6 ft to 9 ft, and the aperture stays: by what factor must the output rise?": by the square of the distances."""
    if scene.near is None or scene.far is None or not scene.moved or {f.quantity for f in query.facts} - {"distance", "length_range", "move", "aperture", "film_speed", "camera_distance", "focus_distance", "remark", "place"}:
        return None
    asked = _OUTPUT.search(query.text)
    if asked is None or any(len({f.value for f in query.all(q)}) > 1 for q in ("aperture", "film_speed")) or (asked["less"] is not None) is not (scene.far < scene.near):
        return None
    lost = falloff_stops(scene.near, scene.far)
    return _done((marks.factor(abs(lost)), marks.stops(-lost)), scene, *query.all("aperture"), *query.all("film_speed"))


# --- apertures and powers --------------------------------------------------------------------------


def _aperture(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """The reading at the other place, from the reading at one."""
    if query.has("guide_number") and scene.rows and not query.has("aperture"):
        return _by_row(query, scene)
    if query.has("guide_number") and not query.has("aperture") and scene.far is None:
        return set_for_row.of_one_row(query, scene)
    known = query.last("aperture", "") or query.last("aperture", "key") or query.last("aperture", "ambient")
    if known is None or scene.near is None or scene.far is None or not (scene.rows or scene.moved or scene.of):
        return None
    if query.has("guide_number") or len(query.all("aperture")) > 1 or query.has("stops") or set_for_row.changes_more(query):
        return None
    if any(name == "middle row" for name, _ in scene.others) and known.sentence == next(f.sentence for f in query.all("distance") if f.of == "middle"):
        return None  # what was read in the middle is no reading of either end
    at_near = scene.read_near(known, query.text)
    here, there = (scene.near, scene.far) if at_near else (scene.far, scene.near)
    of = scene.of or (("back row" if at_near else "front row") if scene.rows else None)
    value = known.value * here / there
    lost = falloff_stops(here, there)
    return _done((marks.aperture(value, of), marks.stops(lost, of)), scene, known, *told_with(known, query), working=(f"f/{known.value:g} × {_length(query, here)} / {_length(query, there)} = f/{value:.3g}",))


def _by_row(query: Query, scene: Scene) -> Solution | None:
    """The aperture for each row, by the guide number; something between the two splits the difference."""
    from assistant.solving import flash

    named = {f.of for f in query.all("distance")} & {"front", "back"}
    if scene.near is None or scene.far is None or set_for_row.changes_more(query) or not (named or query.has("gap") or query.has("length_range") and "rows" in query.cues and not query.has("stops")):
        return None
    rest = [f for f in query.facts if f not in scene.used]
    found = []
    middle = next((f for f in query.all("distance") if f.of == "middle"), None)
    far = "middle row" if scene.far_fact is not None and scene.far_fact is middle else "back row"
    places: tuple[tuple[float, str], ...] = ((middle.value, "middle row"),) if middle is not None and (_MIDDLE.search(query.text) or set_for_row.names_its_row(query.text) == "middle") else ((scene.near, "front row"), (scene.far, far))
    if len(places) == 2 and middle is not None and far == "back row" and "each" in query.cues:
        places = (places[0], (middle.value, "middle row"), places[1])
    for place, of in places:
        there = Fact("distance", place, preferred_unit(query))
        one = flash.solve(query.with_facts((*rest, there)))
        if one is None or one.status != "answered" or not isinstance(one.answers[0].value, float):
            return None
        found.append((marks.aperture(one.answers[0].value, of), one))
    used = tuple(f for f in found[0][1].used if f in query.facts)
    assumed = found[0][1].assumed
    if len(found) > 1 and set_for_row.back_first(query):
        found.reverse()
    elif len(found) == 2 and scene.near_fact is not None and scene.far_fact is not None and (scene.near_fact.origin, scene.far_fact.origin) == ("kept", "said"):
        return _done((found[1][0], found[0][0]), scene, *used, assumed=assumed)  # "and for the last row, at 22 feet"
    if len(found) == 1:
        return _done((found[0][0],), scene, *used, middle, assumed=assumed)
    return _done(tuple(mark for mark, _ in found), scene, *used, assumed=assumed, notes=("Between the two splits the difference; negative film is better served by the back row's.",))


_MIDDLE = Pattern(r"\b(?:what|which)\b[^?]*\b(?:middle|centre|center|second) (?:row|one)\b[^?]*\?", re.I)


_POWER_FOR_ROW = Pattern(r"\b(?:what|which) power\b[^?]*\bfor (?:the |my )?(?:front|first|back|last|rear|near\w*|far\w*)(?: row| one| rank)?\b", re.I)


def _power_moved(query: Query, scene: Scene) -> Solution | None:
    """The power for the same exposure at another distance, from one that was right."""
    powers = query.all("power")
    if len(powers) != 1 or scene.near is None or scene.far is None or scene.rows and not _POWER_FOR_ROW.search(query.text) or scene.of or query.has("stops") or query.has("aperture") or query.has("guide_number") or query.has("relation"):
        return None
    known_near = scene.moved or scene.read_near(powers[0], query.text)
    here, there = (scene.near, scene.far) if known_near else (scene.far, scene.near)
    value = powers[0].value * (there / here) ** 2
    done = _done((marks.power(value),), scene, powers[0], working=(f"{powers[0].value:g} × ({_length(query, there)} / {_length(query, here)})²",))
    return done if value <= 1.0005 else Solution("out_of_reach", f"It would take {value:.3g} times full power: open the lens by {speak_stops(math.log2(value))}.", done.answers, used=done.used, topic="falloff")


def _power(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """The power that the move for an even spread then needs."""
    moved = _power_moved(query, scene)
    if moved is not None:
        return moved
    wanted = darker_by(query)
    if wanted and not scene.used and patterns.search(r"\bdiffer|\bspread\b|\brows?\b|between (?:them|front)", query.text, re.I):
        return needs(("distance",), "I need how far the light is from the front row and from the back row.", wanted[1], "falloff")
    if wanted is None or scene.depth is None or scene.near is None or query.has("relation") or not (scene.rows or scene.of or patterns.search(r"\bdiffer|\bspread\b|between them", query.text, re.I)):
        return None
    if not (scene.depth > 0 and scene.near > 0 and wanted[0]):
        return None
    place = scene.near + back_off_for_spread(scene.near, scene.near + scene.depth, abs(wanted[0]))
    stops = 2 * math.log2(place / scene.near)
    told = query.with_facts(f for f in query.facts if f not in wanted[1])  # "a drop of half a stop to the back" turns no lamp down
    now = next((lamp.power for lamp in lights(told) if lamp.power is not None), None)
    if now is None:
        return needs(("power",), f"It takes {speak_stops(abs(stops))} ({2 ** stops:.3g} times) {'more' if stops > 0 else 'less'} light than now. What power is the flash at now?", scene.used + wanted[1], "falloff")
    value = now * 2**stops
    used = tuple(f for f in query.facts if f.quantity in ("power", "power_down"))
    answers = (marks.power(value), marks.stops(stops))
    done = _done(answers, scene, *wanted[1], *used)
    if value <= 1.0005:
        return done
    return Solution("out_of_reach", f"It would take {value:.3g} times full power.", answers, used=done.used, topic="falloff",
                    notes=(f"At full power the front gets {speak_stops(math.log2(value))} less than now: open up by that, or use faster film.",))


_ROWS = {"stops": (set_for_row.solve, named_places.solve, _stops, unplaced_light.lacks_the_other, unplaced_light.lacks_where_it_was), "distance": (leeway.step_costs, leeway.how_deep, by_reading.solve, _by_guide_moved, _farthest, leeway.front_of, leeway.within, other_place.solve, _spread, backdrop_place.solve, _shifted, unplaced_light.lacks_its_place, leeway.lacks_depth), "near_limit": (_farthest, leeway.within), "far_limit": (_farthest, leeway.within), "aperture": (set_for_row.read_there, set_for_row.at_each, _aperture), "power": (_power,), "factor": (_output_for,)}
