"""Two states of one exposure, before and after, or one and the other: the ledger of what differs.

"I move it from 6 feet to 8, swap the softbox for the umbrella and go up to full power": each
change is so many stops, and what they come to is the answer, or what one setting must make up
for. Every figure must have its place in one of the two states; where one has none, nothing
is answered here.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.physics.flash import whole_count
from assistant.query import Ask, Fact, Query
from assistant.records import record, replace
from assistant.scales import DIFFERENCE_STOPS, speak_stops
from assistant.solving import deeds, level_to_level, marks
from assistant.solving.change import in_time, is_found_with, metered_first, place_or_move
from assistant.solving.ledger import WEIGHT
from assistant.solving.light_wanted import TO_LOSE
from assistant.solving.lights import guide_in_metres, preferred_unit
from assistant.solving.solution import Solution
from assistant.solving.worn import AFTER, BOTH, worn

ASKED = frozenset({"stops", "factor", "aperture", "power", "distance", "energy", "film_speed"})
_SETTINGS = ("distance", "power", "energy", "film_speed", "count", "aperture", "magnification", "extension", "t_number")
"""Quantities that may be told twice, before and after."""
_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark", "format", "place", "focal_length", "aperture_range"})
_LOSSES = frozenset({"loss", "filter_loss", "nd"})
_WEIGHED = _BY_THE_WAY | _LOSSES | frozenset(_SETTINGS) | {"power_down", "push", "length_range"}
_DEFAULT = {"power": 1.0, "count": 1.0}


@record
class Change:
    """One thing that differs: its name, its stops (plus is more light on the film), and the facts that tell it."""

    name: str
    stops: float
    facts: tuple[Fact, ...]


def solve(query: Query) -> Solution | None:
    """What several changes come to, or what one setting must be to make up for them; None for fewer than two changes."""
    if len(query.asks) != 1 or query.asks[0].quantity not in ASKED or _ON_THE_METER.search(query.text) and query.asks[0].quantity == "film_speed":
        return None
    if query.asks[0].quantity == "distance" and any(f.quantity == "loss" and TO_LOSE.search(query.text[: f.start].lower()) for f in query.facts):
        return None  # what the move is for
    if query.asks[0].quantity == "distance" and _LATITUDE.search(query.text):
        return None  # what a film forgives on either side, and no change
    levels = level_to_level.solve(query)
    if levels is not None:
        return levels
    in_stops = query.asks[0].quantity in ("stops", "factor")
    found = (_found_by_guide(query) or _times_the_light(query) if in_stops else None) or _solved(_once_each(query))
    return None if found is None else replace(found, used=query.facts)


_LATITUDE = Pattern(r"\b(?:under|over)(?:-?expos\w+)? (?:to|and|or|through|up to|,) (?:about |up to )?[a-z0-9 ½⅓⅔/.]{1,24}? (?:over|under)\b", re.I)
"""From so much under to so much over: "one stop under to three stops over"."""
_GOES_UP = Pattern(r"\b(?:what|which) factor\b[^?]*\b(?:exposure|time)\b[^?]*\b(?:up|longer|rise|rises|grow|grows|increase\w*|multipl\w*|lengthen\w*)\b|\bfactor\b[^?]*\b(?:multiply|lengthen|increase|raise)\b|\b(?:exposure|filter) factor\b", re.I)
"""An exposure that makes up for what is lost is so many times as much."""
_ON_THE_METER = Pattern(r"\b(?:meter|dial)\b", re.I)
"""The film speed that a meter is set to, so that it allows for what is on the lens: no change of film."""


def _solved(query: Query) -> Solution | None:
    if query.claim:
        return None
    done, query = deeds.told(query)
    kinds = {f.quantity for f in query.facts}
    if not kinds <= _WEIGHED or len(kinds) + len(done) < 2 and kinds != {"magnification"}:
        return None
    query = _of_lenses(query)
    owners = {f.of for f in query.facts if f.of and f.quantity not in _BY_THE_WAY and f.quantity not in _LOSSES and f.quantity != "push"}
    if len(owners) > 1 or not owners <= _ONE_LIGHT or any(f.origin != "said" for f in query.facts):
        return None
    ask = query.asks[0]
    read = ask.quantity in ("stops", "factor") and len(once(query, "aperture")) == 2
    if read and not _SET_TO.search(query.text):
        return _left_to(query, ask)
    changes = _changes(query, ask)
    if done and changes is not None:
        if any(d.name == ask.quantity for d in done) or not deeds.after(done, query.first(ask.quantity)):
            return None
        changes = [*(Change(d.name, d.stops, ()) for d in done), *changes]
    return _answer(query, ask, changes) if changes and (len(changes) > 1 or _nobody_else(changes[0], ask)) else None


_TIMES_LIGHT = Pattern(r"\bhow many times (?:as much|more|the)(?: of the)? light\b(?: does| do| will| has)? (?:the |his |her )?(?P<who>near\w*|close\w*|far\w*|first|second|other|last|front|back|rear)\b", re.I)


def _times_the_light(query: Query) -> Solution | None:
    """"one sits 6 feet off and the other 9.5: how many times as much light does the near one get": the square of the distances' ratio."""
    away, found = query.all("distance"), _TIMES_LIGHT.search(query.text)
    if found is None or len(away) != 2 or {f.quantity for f in query.facts} - _BY_THE_WAY - {"distance"} or any(f.origin != "said" for f in away) or [a.quantity for a in query.asks] != ["factor"]:
        return None
    near, far = sorted(away, key=lambda f: f.value)
    who = found["who"].lower()
    mine = near if who.startswith(("near", "clos")) else far if who.startswith("far") else next((f for f in away if f.of == who), None) if who in ("front", "back") else away[0] if who == "first" else away[1] if who in ("second", "other", "last") else None
    if mine is None:
        return None
    other = far if mine is near else near
    value = (other.value / mine.value) ** 2
    return Solution(answers=(Quantity("factor", value, "x"), marks.stops(math.log2(value))), topic="change", notes=("Light goes with the square of the distance.",))


_TAKES = Pattern(r"\b(?:cost|los[est]|eat|swallow|tak|steal|absorb|drink|rob|soak)\w*|\b(?:went|goes|disappears?|vanish\w*) in(?:to)?\b", re.I)


_THING_TAKES = Pattern(r"\b(?:how (?:many|much)|what|which|loss)\b[^?.!]*\b(?:does|do|did|must|is|are|loss)\b[^?.!]*\b(?:paint|ceiling|wall|plaster|roof|boards|card|umbrella|brolly|softbox|box|dish|dome|grid|cloth|silk|scrim|gel|diffuser|snoot|handkerchief|hankie|tissue|net|panel|bowl|filter|polari[sz]er)s?\b[^?.!]*(?:\?|$)|\bhow (?:many stops|much(?: light)?) (?:went|goes|go|gets? lost|was lost|is lost|disappears?) (?:in|into|to|on|at) the \w+\b", re.I)
"""What a thing takes is asked, of the exposure that was right with it."""


def _found_by_guide(query: Query) -> Solution | None:
    """"guide number 36 m, 5.4 m, through the umbrella the meter shows f/4: what does it cost": what the reading lacks."""
    guides, read, away = query.all("guide_number"), query.all("aperture"), [*query.all("distance"), *query.all("path")]
    if query.claim or not len(guides) == len(read) == len(away) == 1 or read[0].cue != "meter" and not _THING_TAKES.search(query.text[read[0].end :]):
        return None
    rest = {q: query.all(q) for q in ("film_speed", "power", "count")}
    alike = {f.of for f in (*guides, *read, *away) if f.of} <= {"key"} and all(len(told) < 2 for told in rest.values())
    if not alike or {f.quantity for f in query.facts} - _BY_THE_WAY - {"guide_number", "aperture", "distance", "path", *rest} or not _TAKES.search(query.text[read[0].start :]):
        return None
    speed, power, count = (rest[q][0].value if rest[q] else usual for q, usual in (("film_speed", 100.0), ("power", guides[0].at_power or 1.0), ("count", 1.0)))
    bare = guide_in_metres(query, guides[0]) / away[0].value * math.sqrt(speed / 100.0 * power * count)
    lost = difference("aperture", bare, read[0].value)
    if lost <= 0:
        return None
    stops, factor = marks.stops(-lost), marks.factor(lost)
    return Solution(answers=(factor, stops) if query.asks[0].quantity == "factor" else (stops, factor), topic="change", lead=f"Lost: {speak_stops(lost)} ({-lost:+.2f}).", notes=(f"With nothing in the way it would read f/{bare:.3g} there.",))


def _nobody_else(only: Change, ask: Ask) -> bool:
    """Whether a single change is one that no other topic weighs."""
    if only.name.endswith((" on", " off")) and ask.quantity in ("distance", "film_speed"):
        return True
    return only.name in ("extension", "magnification", "t_number") or only.name == "push" and ask.quantity != "aperture" or ask.quantity == "energy" and only.name in ("distance", "film_speed")


_SET_TO = Pattern(r"\b(?:from|going|open\w*|clos\w*|stop\w* down|stopping)\b[^.?!;\d]{0,24}f ?/? ?\d[\d.]*[^.?!;\d]{0,12}\bto f", re.I)
"""Apertures that are set, not read: "from f/4 to f/8"."""


def _left_to(query: Query, ask: Ask) -> Solution | None:
    """"bare at 5 ft f/11, with the dome at 7 ft f/5.6": what the readings fall by, less what the other changes account for, is the dome's."""
    things = {f.unit: f for f in query.all("modifier") if f.value == 0.0}
    changes = _changes(query, ask)
    if len(things) != 1 or changes is None or len(changes) != 2 or any(f.quantity in _LOSSES for f in query.facts):
        return None
    thing = next(iter(things.values()))
    fallen, rest = (sum(c.stops for c in changes if (c.name == "aperture") is read) for read in (True, False))
    alone = -fallen - rest
    stops, factor = marks.stops(alone, _plain(thing.said)), marks.factor(-alone)
    lead = f"The {_plain(thing.said)} itself takes {speak_stops(abs(alone))} ({alone:+.2f})."
    note = f"The readings differ by {-fallen:+.2f} stops, of which the {next(c.name for c in changes if c.name != 'aperture')} is {rest:+.2f}."
    return Solution(answers=(factor, stops) if ask.quantity == "factor" else (stops, factor), topic="change", lead=lead, notes=(note,))


def _once_each(query: Query) -> Query:
    again = [f for f in query.facts if f.quantity in ("number", "focus_distance") and _said_again(f, query)]
    return query.with_facts(f for f in query.facts if f not in again) if again else query


def _said_again(fact: Fact, query: Query) -> bool:
    """"more than with the 25": a figure that another fact has already."""
    return fact.quantity == "number" and any(f is not fact and fact.said.strip() in f.said.split() for f in query.facts) or fact.quantity == "focus_distance" and math.isinf(fact.value) and query.has("extension")


_ONE_LIGHT = frozenset({"key", "rim", "hair", "fill", "background", "kicker"})
_REVERSED = Pattern(r"\b(?:instead of|rather than|in place of|(?:it|which|this|that) (?:was|used to be)(?: (?:at|on))?|was (?:at|on)|used to (?:be|stand)(?: (?:at|on))?|before(?: it was)?)\W*(?:the |a |an )?$", re.I)
"""Right before the second of two values: it is the one from before."""


_OLD_LENS = Pattern(r"\bwith the (?P<name>\w+)(?: one| lens)?\b[^.?!]{0,40}\b(?:right|correct|fine|good|spot on)\b", re.I)


def _of_lenses(query: Query) -> Query:
    """"the old one passes T/4.4, the other T/4.8; with the old one it was right at 1/4": "the other" is of a lens, and the one it was right with goes first."""
    told = query.all("t_number")
    known = _OLD_LENS.search(query.text) if len(told) == 2 else None
    if known is None:
        return query
    first = [f for f in told if re.search(rf"\b{known['name']}\b", query.text[max(0, f.start - 40) : f.start], re.I)]
    if len(first) != 1 and not (len(first) == 2 and first[0].start < known.start()):
        return query
    facts = [f for f in query.facts if f is not first[0] and not (f.quantity == "focal_length" and f.said.lower().endswith("lenses"))]
    return replace(query.with_facts([first[0], *(replace(f, of="") if f.of in ("a", "b") else f for f in facts)]), asks=tuple(replace(a, of="") for a in query.asks))


def _changes(query: Query, ask: Ask) -> list[Change] | None:
    """Every change told; None where a figure has no place."""
    out: list[Change] = []
    for quantity in _SETTINGS:
        told = once(query, quantity)
        if quantity == ask.quantity:
            if len(told) != 1:
                return None
            continue
        if len(told) > 2:
            return None
        fewer = _one_fewer(query, told) if quantity == "count" else None
        if fewer is not None:
            out.append(fewer)
        elif len(told) == 2:
            first, second = in_order(query, quantity, told)
            stops = _drawn(query, first, second) if quantity == "extension" else difference(quantity, first.value, second.value)
            if stops is None:
                return None
            out.append(Change(quantity, stops, tuple(told)))
        elif told and quantity == "magnification" and ask.quantity not in ("stops", "factor") and not ask.of and _GOES_IN.search(query.text[: told[0].start]):
            out.append(Change(quantity, difference(quantity, 0.0, told[0].value), tuple(told)))
        elif told and (quantity in ("magnification", "extension", "t_number") or quantity in _DEFAULT and not _stays(told[0], query)):
            return None  # said once, and whether it holds for both is not plain
    pushed = query.all("push")
    if pushed:
        if len(pushed) > 1 or query.has("film_speed"):
            return None
        out.append(Change("push", pushed[0].value, tuple(pushed)))
    turned = query.all("power_down")
    if turned:
        if len(turned) > 1 or query.has("power") and ask.quantity != "power":
            return None
        out.append(Change("power", -turned[0].value, tuple(turned)))
    hung = worn(query)
    if hung is None:
        return None
    for one in hung:
        if one.when == BOTH:
            continue
        name = f"{_plain((one.thing or one.loss).said)} {'on' if one.when == AFTER else 'off'}"
        out.append(Change(name, -one.loss.value if one.when == AFTER else one.loss.value, (one.loss,)))
    return out


_GOES_IN = Pattern(r"\b(?:go|goes|going|went|mov\w*|clos(?:e|ing)|focus\w*|crank\w*|rack\w*|chang\w*)(?: right| all the way| in| down| up| it| closer)* (?:to|for) $", re.I)
"""A scale that is gone to from far off, where the lens is not drawn out."""


def _plain(said: str) -> str:
    """The name of a thing without the words that hang it up."""
    return re.sub(r"^(?:plus |and |with )?(?:an? |the |my )?", "", said.strip().lower())


_BELLOWS = Pattern(r"\b(?:bellows|draw|drawn|rack\w*|lens to (?:the )?film)\b", re.I)
_ADDED_TUBE = Pattern(r"\b(?:tubes?|rings?|spacers?|added|extra|beyond|past infinity)\b", re.I)


def _drawn(query: Query, first: Fact, second: Fact) -> float | None:
    """Two extensions of one lens, focused at infinity without them: each (1 + extension / focal length) squared."""
    lenses = {f.value for f in query.all("focal_length")}
    lens = lenses.pop() if len(lenses) == 1 else 0.0
    if _BELLOWS.search(query.text) and not _ADDED_TUBE.search(query.text) and min(first.value, second.value) >= lens:
        return 2 * math.log2(first.value / second.value)  # from the lens to the film: it tells all
    return math.log2(optics.bellows_factor(lens + first.value, lens) / optics.bellows_factor(lens + second.value, lens)) if lens > 0 else None


_DIES = Pattern(r"\bone(?: (?:of (?:them|these|those)|flash|head|gun|light))? (?:dies|died|fails|failed|goes (?:out|dead|down|off)|went (?:out|dead|down|off)|packs up|quits|gave up|gives up|is (?:taken|switched|turned) (?:away|off)|drops out|stops working|won't fire|does not fire|doesn't fire|is broken)\b|\b(?:take|taking|took|switch(?:ing)?|turn(?:ing)?|remov(?:e|ing)) (?:off |away )?one(?: of (?:them|these))?(?: (?:off|away|out))?\b|\b(?:losing|lose|lost) one\b", re.I)


def _one_fewer(query: Query, told: Sequence[Fact]) -> Change | None:
    """"three flashes on one stand, one dies": one fewer than were told."""
    if len(told) != 1 or not _DIES.search(query.text, told[0].end) or told[0].value < 2:
        return None
    return Change("count", math.log2((told[0].value - 1) / told[0].value), tuple(told))


def in_order(query: Query, quantity: str, told: list[Fact]) -> list[Fact]:
    """The two values of a quantity, what was first and what came then."""
    if quantity == "film_speed":
        return metered_first(told, query)
    if quantity == "aperture":
        told = in_time(told, query.text)
    return told[::-1] if _REVERSED.search(query.text[told[0].end : told[1].start]) or _found_by_the_second(query, quantity, told) else told


def _found_by_the_second(query: Query, quantity: str, told: list[Fact]) -> bool:
    """"how many joules at 4 m, 200 J was fine at 2 m": what is asked for was found with the value told last."""
    tried = [f for a in query.asks if a.quantity != quantity for f in query.all(a.quantity)]
    return len(tried) == 1 and is_found_with(told[1], tried[0], query.text) and not is_found_with(told[0], tried[0], query.text)


def once(query: Query, quantity: str) -> list[Fact]:
    """The values told of a quantity, each once, in the order said."""
    told = query.all(quantity)
    if quantity == "aperture" and not told:
        span = query.last("aperture_range")
        told = [replace(span, quantity="aperture"), replace(span, quantity="aperture", value=span.other)] if span is not None else []
    if quantity == "distance" and not told:
        moved = query.last("length_range")
        told = [replace(moved, quantity="distance"), replace(moved, quantity="distance", value=moved.other, start=moved.end - 1)] if moved is not None and _MOVED.search(query.text[: moved.start]) else []
    first: dict[float, Fact] = {}
    for fact in told:
        if not (quantity == "count" and fact.unit == "frames"):
            first.setdefault(round(fact.value, 9), fact)
    return list(first.values())


_MOVED = Pattern(r"\b(?:mov|back|brought|bring|push|pull|carr|shift|walk|go|went|come|came|drag|set)\w*[^.?!;\d]{0,30}\bfrom $", re.I)
_HOLDS = Pattern(r"\b(?:both|still|same|all|always|throughout|stays?|unchanged|untouched)\b", re.I)


def _stays(fact: Fact, query: Query) -> bool:
    """Whether a setting told once is full, or said to hold for both."""
    return fact.value == 1.0 or _HOLDS.search(query.text[max(0, fact.start - 30) : fact.end + 20]) is not None


def difference(quantity: str, first: float, second: float) -> float:
    """The stops that the second value puts on the film more than the first; marks of a scale are counted (contract 12)."""
    by_marks = DIFFERENCE_STOPS.get(quantity)
    return by_marks(first, second) if by_marks is not None else _stops(quantity, second) - _stops(quantity, first)


def _stops(quantity: str, value: float) -> float:
    """The stops that a value puts on the film."""
    if quantity == "magnification":
        return -math.log2(optics.bellows_factor_from_magnification(value))
    return WEIGHT["aperture" if quantity == "t_number" else quantity] * math.log2(value)


def _answer(query: Query, ask: Ask, changes: Sequence[Change]) -> Solution | None:
    """The sum of the changes, or the asked setting that makes up for them."""
    net = sum(c.stops for c in changes)
    working = tuple(f"{c.name.replace('_', ' ')}: {c.stops:+.2f} stops" for c in changes)
    note = f"{_listed(changes)}: {net:+.2f} stops in all."
    made_up = _MAKE_UP.search(query.text) or _GIVE_MORE.search(query.text) and net < 0 and all(c.name in ("extension", "magnification", "t_number") for c in changes)
    if ask.quantity in ("stops", "factor") and made_up:
        net = -net  # what is opened up, not what is lost
    if ask.quantity in ("stops", "factor"):
        size = speak_stops(abs(net))
        way = ("Open up {}." if net > 0 else "Close down {}.") if made_up else "{} more light." if net > 0 else "{} less light."
        lead = "No difference." if abs(net) < 0.005 else f"{way.format(size)[:1].upper()}{way.format(size)[1:-1]} ({net:+.2f})."
        stops, factor = marks.stops(net), marks.factor(-net if net < 0 and _GOES_UP.search(query.text) else net)
        return Solution(answers=(factor, stops) if ask.quantity == "factor" else (stops, factor), working=working, topic="change", lead=lead, notes=(note,))
    known = once(query, ask.quantity)[0]
    weight = WEIGHT[ask.quantity]
    value = known.value * 2.0 ** (-net / weight)
    if ask.quantity == "distance" and (moved := place_or_move(query, ask, known.value, value)) is not None:
        return replace(moved, working=working, notes=(note,))
    return Solution(answers=(quantity_of(query, ask, value, known),), working=working, topic="change", notes=(note,))


_MAKE_UP = Pattern(r"\b(?:open(?:ing)? (?:it |the lens )?up|make up|makes? up for|compensat\w+|(?:must|should|have to|need to|do|have) i (?:got to |have to |need to |then )?(?:open|add|give|close|stop down)|to keep (?:the )?(?:exposure|same)|close (?:it |the lens )?down|stop (?:it |the lens )?down|by (?:what|which) factor (?:does|must|should|do|will|has) (?:i |we |the |my )?(?:\w+ ){0,2}?exposure (?:go|goes|have to go|rise|increase|grow|be (?:raised|increased|multiplied)))\b", re.I)
"""What is to be done about a change, not what it comes to."""


_GIVE_MORE = Pattern(r"\bhow (?:many|much) (?:(?:more|extra|further) stops|stops (?:more|extra|further)|(?:stops )?more exposure|extra exposure)\b(?![^.?!]*\blos)|\b(?:factor|exposure (?:rise|grow|go up|increase))", re.I)


def _listed(changes: Sequence[Change]) -> str:
    """"the distance -0.83, the loss +1.70"."""
    said = [f"the {c.name.replace('_', ' ')} {c.stops:+.2f}" for c in changes]
    words = " and ".join(w for w in (", ".join(said[:-1]), said[-1]) if w)
    return words[:1].upper() + words[1:]


def quantity_of(query: Query, ask: Ask, value: float, known: Fact) -> Quantity:
    """A value of what is asked, in the person's unit."""
    if ask.quantity == "distance":
        return marks.distance(value, preferred_unit(query, ask.unit))
    if ask.quantity == "energy":
        return Quantity("energy", value, "J")
    if ask.quantity == "count":
        return marks.count(whole_count(value), known.unit or "flashes")
    return {"aperture": marks.aperture, "power": marks.power, "film_speed": marks.film_speed}[ask.quantity](value)
