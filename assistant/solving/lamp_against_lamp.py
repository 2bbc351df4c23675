"""One lamp held against another's reading: "the hair light reads f/11 on a quarter and the key reads f/8: what power puts the hair light a stop under the key?".

What a lamp reads, squared, goes with its power over its distance squared, all else being equal. So a lamp whose
reading is known together with its power or its place, or whose guide number is, can be brought to so many stops over
or under the other by the one that is asked; of two lamps alike, that of the other does for both.
Source: the inverse square law, and the f-number as it is defined (the light goes with its square).
"""

from __future__ import annotations

import math
import re

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import record, replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.lamp_names import BOTH, Mention, mentions, owner, sentences, spoken_of, stands_elsewhere
from assistant.solving.ledger import close, line
from assistant.solving.lights import ROLES, guide_in_metres, preferred_unit
from assistant.solving.placing import asks_move
from assistant.solving.solution import Solution, needs
from assistant.units import speak_length

_OF_A_LAMP = frozenset({"aperture", "power", "distance", "gap", "guide_number"})
_APART = frozenset({"relation", "stops", "loss", "power_down", "ratio"})
_BY_THE_WAY = frozenset({"film_speed", "focal_length", "remark", "place", "format", "shutter"})
_UNKNOWNS = ("power", "distance", "stops")
_MORE = r"over|above|brighter|hotter|stronger|more|up"
_LESS = r"under|below|beneath|darker|dimmer|weaker|less|down|lower"
_THE = r"(?:(?:the|my|our|her|his|their|a)\b(?:'s)? )*"
_WAY_AFTER = Pattern(rf"\s*(?:(?P<more>{_MORE})|(?P<less>{_LESS}))\b(?! to\b)", re.I)
_LEVEL = Pattern(rf"\b(?:level (?:with|to)|even with|on a par with|(?:the )?same(?: reading| light| f-?stop| value)? as|as (?:bright|strong|hot|powerful|much light) as|match(?:es|ing)?|equal(?:s|ling)?(?: to| with)?) {_THE}(?=[a-z])|\b(?:brings?|makes?|puts?|gets?|reads?|are|be) (?:the two |them |both |they )?(?:both )?(?:level|even|equal|match|(?:read )?(?:exactly )?the same|alike)(?=\W*(?:\?|$|now|then))", re.I)
_ALIKE = Pattern(r"\b(?:same|identical|matching|equal) (?:(?:kind|sort|type|make|model|size) of )?(?:flash(?:es)?|heads?|models?|lamps?|lights?|strobes?|guns?|units?|guide numbers?)\b|\b(?:flash(?:es)?|heads?|lamps?|lights?|guns?|strobes?|units?)(?: are| is)? (?:all |both )?(?:the same|alike|identical|twins?)\b|\b(?:just|exactly) like (?:it|the|that|my)\b|\btwins?\b|\bof the same (?:kind|sort|type|make|model)\b|\bidentical to\b|\bsame (?:flash|head|model|lamp|light|gun|strobe) as\b", re.I)
_COMPARED = Pattern(rf"\b(?:{_MORE}|{_LESS}|than|against|compared (?:to|with)|relative to)\b", re.I)
_BY_WHICH = Pattern(r"\b(?:how many|how far|how much|what|which|where)\b", re.I)
_SETTING = Pattern(r"\b(?:what|which) setting\b", re.I)
"""Of a lamp whose power is told: its power, and no f-number."""
_ASKED_MORE = Pattern(rf"\b(?:how (?:many stops|far|much)|by how (?:many stops|much))\b[^?]*?\b(?:{_MORE}|{_LESS})\b", re.I)

_ONE_LIGHT = Pattern(r"\b(?:same|one|single) (?:light|lamp|flash|head|strobe)(?: (?:must|should|will|would|to|can))? (?:falls?|be|lands?|reach(?:es)?|hits?|spills?|strikes?)\b|\bhow far behind\b", re.I)
"""What falls on the subject and on what is behind her is one lamp's: "how far behind the sitter must the backdrop hang for that same light to be three stops weaker".

What is behind her has a place behind her, and the way from a lamp is no such place.
"""

_TO_TURN = Pattern(r"\b(?:change|turn|cut|lower|raise|reduce|drop|come (?:down|up)|go (?:down|up)|bring|be (?:changed|turned|cut|lowered|raised|reduced|dropped|brought)|dial|power|adjust|take)\b", re.I)
"""What is done to a lamp's output, in the question: "by how many stops must the background light's output change?"."""


@record
class Lamp:
    """A lamp: what it reads, its power and place when it read so, and those that it is to have then. Places in metres; `guide` in metres at ISO 100."""

    name: str
    reading: float | None = None
    power: float | None = None
    distance: float | None = None
    guide: float | None = None
    power_then: float | None = None
    distance_then: float | None = None


@record
class Apart:
    """So many stops over (+) or under (-) that a text says, and where it says so."""

    stops: float
    start: int
    end: int
    fact: Fact | None = None


def solve(query: Query) -> Solution | None:
    """The power or the place that brings one lamp so far over or under the other, or how far it is; None where a figure has no lamp or the two are not known."""
    if query.has("power") and query.asks_for("aperture") and _SETTING.search(query.text):
        query = replace(query, asks=tuple(replace(a, quantity="power") for a in query.asks))
    if query.claim or len(query.asks) != 1 or query.asks[0].quantity not in _UNKNOWNS or {f.quantity for f in query.facts} - _OF_A_LAMP - _APART - _BY_THE_WAY:
        return None
    told = [f for f in query.facts if f.quantity in _OF_A_LAMP]
    if _ONE_LIGHT.search(query.text) is not None:
        return None  # one lamp at two places
    if not told or any(query.text[f.start : f.end].strip() != f.said.strip() for f in query.facts if f.quantity in _OF_A_LAMP | _APART):
        return None  # whose a figure is stands in the words around it
    named = mentions(query.text)
    lamps = _lamps(query, told, named)
    said = apart(query.text, query.facts)
    if lamps is None or any(a.fact is not None and a.fact.quantity == "relation" and (a.fact.cue == "more") is (a.stops < 0) for a in said) or len(said) < len([f for f in query.facts if f.quantity in _APART]) or query.has("shutter") and (query.cues & {"ambient"} or any(f.of == "ambient" for f in query.facts)):
        return None
    query = query.with_facts(_as_apart(f, query.text, said, named) for f in query.facts)
    ask = query.asks[0]
    if ask.quantity == "stops":
        turned = len(said) == 1 and _TO_TURN.search(query.text, *_question(query.text)) is not None
        return _how_far(query, lamps, named) if not said else _brought(query, ask, lamps, named, said) if turned else None
    return _brought(query, ask, lamps, named, said)


def _as_apart(fact: Fact, text: str, said: list[Apart], named: list[Mention]) -> Fact:
    """"takes the hair light to one stop under the key": stops that part two lamps, and no loss."""
    mine = next((a for a in said if a.fact is fact), None) if fact.quantity not in ("relation", "ratio") else None
    return fact if mine is None else replace(fact, quantity="relation", cue="less" if mine.stops < 0 else "more", to=_compared_with(text, named, mine.end))


def apart(text: str, facts: tuple[Fact, ...]) -> list[Apart]:
    """What is said of so many stops over, under or level, in order."""
    found = [Apart(0.0, m.start(), m.end()) for m in _LEVEL.finditer(text)]
    for fact in facts:
        if fact.quantity == "ratio":
            found += _as_ratio(fact, text, facts)
        way = _WAY_AFTER.match(text, fact.end) if fact.quantity in _APART - {"ratio"} else None
        if way is not None:
            found.append(Apart(abs(fact.value) * (1 if way["more"] else -1), fact.start, way.end(), fact))
    return sorted(found, key=lambda a: a.start)


def _as_ratio(fact: Fact, text: str, facts: tuple[Fact, ...]) -> list[Apart]:
    """"2:1 key to fill", of a fill: so many stops that it comes under the key (contract 7)."""
    times = fact.value / fact.other if fact.other == fact.other and fact.other else fact.value
    over = times if _KEY_TO_FILL.search(text) else times - 1
    return [Apart(-math.log2(over), fact.start, fact.end, fact)] if over > 0 and any(f.of == "fill" for f in facts) else []


_KEY_TO_FILL = Pattern(r"\b(?:key|main)(?: light)?[- ](?:to[- ])?fill\b", re.I)


def _lamps(query: Query, told: list[Fact], named: list[Mention]) -> dict[str, Lamp] | None:
    """The two lamps with all that is told of them; None where a figure has no lamp, or is one too many."""
    lamps: dict[str, Lamp] = {m.name: Lamp(m.name) for m in named}
    owned = [(f, owner(f, query.text, named)) for f in told]
    if any(whose == BOTH and (f.quantity == "aperture" or len(lamps) != 2) for f, whose in owned):
        return None  # two lamps read together
    for fact, of in [(told_fact, one) for told_fact, whose in owned for one in (list(lamps) if whose == BOTH else [whose])]:
        field = "distance" if fact.quantity == "gap" else {"aperture": "reading", "guide_number": "guide"}.get(fact.quantity, fact.quantity)
        if of not in lamps or field == "distance" and stands_elsewhere(fact, query.text, of):
            return None
        if field == "power" and fact.value == 1.0 and any(g.quantity == "guide_number" for g in told) and _AT_FULL.search(query.text[: fact.start]):
            continue  # "a guide number of 45 at full": what it is quoted for
        value = guide_in_metres(query, fact) if field == "guide" else fact.value
        if getattr(lamps[of], field) is not None:
            field = f"{field}_then"
            if field not in ("power_then", "distance_then") or getattr(lamps[of], field) is not None:
                return None
        lamps[of] = replace(lamps[of], **{field: value})
    return _of_one_model(lamps) if _ALIKE.search(query.text) else lamps


def _of_one_model(lamps: dict[str, Lamp]) -> dict[str, Lamp]:
    """The lamps with the guide number that the one's reading gives for the other, which is the same flash: "key f/8 at 6 ft, the fill is its twin"."""
    read = [lamp for lamp in lamps.values() if lamp.reading is not None]
    if len(read) != 1 or read[0].distance is None or any(lamp.guide is not None for lamp in lamps.values()):
        return lamps
    guide = read[0].reading * read[0].distance / math.sqrt(read[0].power or 1.0)  # type: ignore[operator]
    return {name: lamp if lamp is read[0] else replace(lamp, guide=guide) for name, lamp in lamps.items()}


_AT_FULL = Pattern(r"\bat $|\bat the $|\bmet(?:er|re)s,? (?:at|for) $|\bon $", re.I)


def _question(text: str) -> tuple[int, int]:
    """Where the sentence that asks begins and ends."""
    parts = sentences(text)
    asking = [(a, b) for a, b in parts if _BY_WHICH.search(text[a:b])] or [(a, b) for a, b in parts if text[a:b].rstrip().endswith("?")]
    return asking[-1] if asking else (0, len(text))


def _compared_with(text: str, named: list[Mention], start: int) -> str:
    """The lamp that is named there to be compared with."""
    return next((m.name for m in named if m.start >= start and _UP_TO_IT.fullmatch(text, start, m.start)), "")


_UP_TO_IT = Pattern(rf"\s*(?:that of |what |where )?{_THE}(?:[a-z]+(?:'s)? )?", re.I)


def _others(lamps: dict[str, Lamp], name: str) -> str:
    left = [n for n in lamps if n != name]
    return left[0] if len(left) == 1 else ""


def _reading(lamp: Lamp, query: Query, alike: bool) -> float | None:
    """What a lamp reads; of lamps alike, in proportion."""
    if lamp.reading is not None:
        return lamp.reading
    if lamp.guide is not None and lamp.distance is not None:
        speed = query.last("film_speed")
        return close("aperture", [line("guide_number", lamp.guide), line("distance", lamp.distance), line("power", lamp.power or 1.0), line("film_speed", speed.value if speed else 100.0)])
    return math.sqrt(lamp.power or 1.0) / lamp.distance if alike and lamp.distance is not None else None


# --- how far it is ---------------------------------------------------------------------------------------


def _how_far(query: Query, lamps: dict[str, Lamp], named: list[Mention]) -> Solution | None:
    """"key at f/11, rim at f/16: by how many stops is the rim over the key?"."""
    begins, ends = _question(query.text)
    asked = _ASKED_MORE.search(query.text, begins, ends)
    if asked is None or len(lamps) != 2:
        return None
    one, than = _one_and_than([m for m in named if asked.start() <= m.start < ends] or [m for m in named if begins <= m.start < ends], lamps, query.text[: ends], asked.start())
    if one not in lamps or than not in lamps or one == than:
        return None
    alike = _alike(query, lamps)
    mine, other = _reading(lamps[one], query, alike), _reading(lamps[than], query, alike)
    if mine is None and lamps[one] == Lamp(one) and lamps[than].reading is not None:
        return needs(("aperture",), f"I need what the {one if one in ('key', 'fill', 'kicker') else f'{one} light'} reads.", _used(query), "lamps")
    if mine is None or other is None or (lamps[one].reading is None) is not (lamps[than].reading is None) and alike:
        return None
    read = lamps[one].reading is not None and lamps[than].reading is not None
    value = (aperture_difference_stops(mine, other) if read else 2 * math.log2(mine / other)) + _changed(lamps[one]) - _changed(lamps[than])
    lead = f"{speak_stops(abs(value)).capitalize()} {'over' if value > 0 else 'under'} the {than} ({value:+.2f})." if abs(value) > 0.005 else "They are level."
    return Solution(answers=(marks.stops(value, one),), used=_used(query), topic="lamps", lead=lead)


def _one_and_than(inside: list[Mention], lamps: dict[str, Lamp], text: str, asked: int) -> tuple[str, str]:
    """The lamp that is asked of and the one it is compared with: the only one that the question names is asked of."""
    than = next((m for m in inside if m.part == "reference"), None) or next((m for m in inside[1:] if _COMPARED.search(text, asked, m.start)), None)
    if than is None:
        names = {m.name for m in inside}
        one = next(iter(names)) if len(names) == 1 else ""
        return one, _others(lamps, one)
    return next((m.name for m in inside if m.name != than.name), "") or _others(lamps, than.name), than.name


def _changed(lamp: Lamp) -> float:
    """Stops that a lamp has gained by being turned and moved since it was read."""
    turned = math.log2(lamp.power_then / lamp.power) if lamp.power_then and lamp.power else 0.0
    return turned + (2 * math.log2(lamp.distance / lamp.distance_then) if lamp.distance_then and lamp.distance else 0.0)


def _alike(query: Query, lamps: dict[str, Lamp]) -> bool:
    return _ALIKE.search(query.text) is not None and not any(lamp.reading or lamp.guide for lamp in lamps.values())


# --- what brings it there --------------------------------------------------------------------------------


def _brought(query: Query, ask: Ask, lamps: dict[str, Lamp], named: list[Mention], said: list[Apart]) -> Solution | None:
    """The power or the place of the lamp that is asked of."""
    if not 1 <= len(said) <= 2:
        return None
    wanted = said[-1]
    if query.has("ratio") and (len(said) == 1 or wanted.fact is None or wanted.fact.quantity != "ratio"):
        return None  # by what their places and powers come to
    against = _compared_with(query.text, named, wanted.end)
    one = _subject(query.text, lamps, named, wanted, against)
    against = against if against and against != one else _others(lamps, one)
    if one not in lamps or against not in lamps:
        return None
    alike = _alike(query, lamps)
    if wanted.fact is not None and wanted.fact.to in ROLES - {one, against}:
        return None  # compared with a third one
    asked = _asked_of(query.text, named, one, against)
    stops = wanted.stops if asked == one else -wanted.stops
    lamp, other = lamps[asked], lamps[against if asked == one else one]
    aim = _reading(other, query, alike)
    if len(said) == 2:  # "it is two stops over the key on a quarter: what power brings it level?"
        if lamp.reading is not None and aim is not None or alike:
            return None
        first = _subject(query.text, lamps, named, said[0], _compared_with(query.text, named, said[0].end))
        return _done(query, ask, lamp, stops - (said[0].stops if asked == first else -said[0].stops)) or _lacks(query, ask, lamp)
    if aim is None:
        return None
    aim = aim * 2 ** (_changed(other) / 2)
    if alike:
        lamp = replace(lamp, guide=1.0)
    if lamp.guide is not None and lamp.reading is None and ask.quantity != "stops":
        return _by_guide(query, ask, lamp, aim * 2 ** (stops / 2))
    return _done(query, ask, lamp, aperture_difference_stops(aim, lamp.reading) + stops) if lamp.reading is not None else None


def _lacks(query: Query, ask: Ask, lamp: Lamp) -> Solution | None:
    """What its own power or place is now, where only the other's is told (contract 21)."""
    if ask.quantity == "stops":
        return None
    return needs((ask.quantity,), f"I need the {ask.quantity} of the {lamp.name} as it is now.", _used(query), "lamps") if getattr(lamp, ask.quantity) is None else None


def _subject(text: str, lamps: dict[str, Lamp], named: list[Mention], wanted: Apart, against: str) -> str:
    """The lamp that is to be so far over or under."""
    begins = next((a for a, b in sentences(text) if a <= wanted.start < b), 0)
    before = [m.name for m in named if begins <= m.start < wanted.start and m.name != against and m.part != "reference"]
    if before:
        return before[-1]
    return _others(lamps, against) if against else spoken_of(text, [(a, b) for a, b in sentences(text) if a <= begins], [m for m in named if m.name != "key"])


def _asked_of(text: str, named: list[Mention], one: str, against: str) -> str:
    """Whose power or place is asked: the first lamp of the question that is not only compared with, else the one that is to be so far over or under."""
    begins, ends = _question(text)
    first = next((m.name for m in named if begins <= m.start < ends and m.part == "subject"), one)
    return first if first == against else one


def _done(query: Query, ask: Ask, lamp: Lamp, change: float) -> Solution | None:
    """The power or the place that changes the light by so many stops from what was read; those stops, where they are asked."""
    if ask.quantity == "stops":
        spoken = lamp.name if lamp.name in ("key", "fill", "kicker") else f"{lamp.name} light"
        return Solution(answers=(marks.stops(change, lamp.name),), used=_used(query), topic="lamps", lead=f"Turn the {spoken} {speak_stops(abs(change))} {'up' if change > 0 else 'down'} ({change:+.2f})." if abs(change) > 0.005 else "It is right as it is.")
    value = _turned(lamp, change) if ask.quantity == "power" else _moved(lamp, change)
    return None if value is None else _told(query, ask, lamp, value, (f"{change:+.2f} stops from what it reads",))


def _turned(lamp: Lamp, change: float) -> float | None:
    if lamp.power is None or lamp.power_then is not None:
        return None
    moved = lamp.distance_then / lamp.distance if lamp.distance_then and lamp.distance else 1.0
    return lamp.power * float(2.0**change) * moved**2


def _moved(lamp: Lamp, change: float) -> float | None:
    if lamp.distance is None or lamp.distance_then is not None:
        return None
    turned = lamp.power_then / lamp.power if lamp.power_then and lamp.power else 1.0
    return lamp.distance * math.sqrt(turned) * float(2.0 ** (-change / 2))


def _by_guide(query: Query, ask: Ask, lamp: Lamp, wanted: float) -> Solution | None:
    """The power or the place from a guide number, the other being told."""
    speed = query.last("film_speed")
    known = lamp.power_then or lamp.power or 1.0 if ask.quantity == "distance" else lamp.distance_then or lamp.distance
    if known is None or lamp.guide is None or getattr(lamp, f"{ask.quantity}_then") is not None:
        return None
    lines = [line("guide_number", lamp.guide), line("power" if ask.quantity == "distance" else "distance", known), line("aperture", wanted)]
    return _told(query, ask, lamp, close(ask.quantity, [*lines, line("film_speed", speed.value if speed and lamp.guide != 1.0 else 100.0)]), ())


def _told(query: Query, ask: Ask, lamp: Lamp, value: float, working: tuple[str, ...]) -> Solution:
    taken = (Assumed("power", 1.0, "of full", "none was given"),) if lamp.guide is not None and not query.has("power") and (ask.quantity == "distance") is query.has("guide_number") else ()
    answer: Quantity = marks.power(value, lamp.name) if ask.quantity == "power" else marks.distance(value, preferred_unit(query, ask.unit), lamp.name)
    way = (marks.distance(abs(value - lamp.distance), preferred_unit(query, ask.unit), lamp.name),) if ask.quantity == "distance" and lamp.distance is not None and asks_move(query, ask) else ()
    beyond = ask.quantity == "power" and value > 1.0005
    unit = preferred_unit(query, ask.unit)
    lead = f"Move the {lamp.name} {speak_length(abs(value - lamp.distance), unit)} {'back' if value > lamp.distance else 'closer'}, to {speak_length(value, unit)} from the subject." if way and lamp.distance is not None else ""
    return Solution("out_of_reach" if beyond else "answered", f"It would take {value:.3g} times full power." if beyond else lead, (*way, answer), assumed=taken, used=_used(query), topic="lamps", working=working)


def _used(query: Query) -> tuple[Fact, ...]:
    return tuple(f for f in query.facts if f.quantity in _OF_A_LAMP | _APART | ({"film_speed"} if query.has("guide_number") else set()))
