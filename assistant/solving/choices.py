"""Choices: "f/8 or f/11?", "8 or 16 feet?", "100 or 400 film?": the one nearest to what is right."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import film_dialled, marks
from assistant.solving.ledger import WEIGHT
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution

PAIRS = {"aperture_choice": "aperture", "length_range": "distance"}
_NAMED_SO = {**PAIRS, "rated": "film_speed"}
CHOSEN = ("aperture", "distance", "film_speed", "power", "shutter", "count")


_WHICH_OF_BOTH = Pattern(r"\bwhich (?:of (?:the two|them|these|those|the (?:films|apertures|powers)|both)|one|film|do i need)\b[^?]*\?|\b(?:which|what) (?:one )?of (?:the two|both)\b|\bof (?:the )?(?:\S+ )?\S+ and (?:\S+ )?\S+, which\b", re.I)
"""Two are told with an "and", and one of them is asked for."""


def options(query: Query) -> tuple[str, list[Fact]]:
    """The quantity that is to be chosen and its options; nothing where there is no "or"."""
    both = _WHICH_OF_BOTH.search(query.text) is not None
    if not both and not patterns.search(r"\bor\b", query.text.lower()):
        return "", []
    for quantity in CHOSEN:
        found: list[Fact] = []
        facts = [f if f.quantity in PAIRS else replace(f, quantity=quantity) for f in query.facts if _NAMED_SO.get(f.quantity, f.quantity) == quantity and f.origin == "said"]
        for before, fact in zip([None, *facts], facts):
            joined = before is not None and patterns.search(r"\bor\b|,|\band\b" if both else r"\bor\b|,", query.text[before.end : fact.start]) and len(query.text[before.end : fact.start]) < 16
            joined = joined or before is not None and _OR_DO_I.fullmatch(query.text, before.end, fact.start) is not None
            joined = joined or before is not None and fact.start < before.end and both and " and " in fact.said
            inside = fact.quantity in PAIRS and patterns.search(r"\bor\b", fact.said.lower())
            if joined and before is not None:
                found += [] if before in found else [before]
                found.append(fact)
            elif inside:
                found.append(fact)
        single = [one for f in found for one in flat(f)]
        if len(single) > 1 and (both and len(single) == 2 or patterns.search(r"\bor\b", query.text[single[0].start : single[-1].end].lower())):
            return quantity, single
    return "", []


_OR_DO_I = Pattern(r"(?: (?:enough|sufficient|all right|ok|okay|closed enough|good enough|small enough))?,? or (?:(?:do|must|should|would|shall|will) (?:i|we) (?:need|use|set|take|have|go)(?: to)?|is it|does it (?:take|need)|rather)(?: (?:down to|to|at|an?|use))* ", re.I)
""""is f/4 enough or do I need f/8": the two to choose from, with words between."""


def flat(fact: Fact) -> tuple[Fact, ...]:
    """The two values that one phrase tells, "f/2.8 or f/8", each by itself."""
    if fact.quantity not in PAIRS or math.isnan(fact.other):
        return (fact,)
    one = replace(fact, quantity=PAIRS[fact.quantity], other=math.nan)
    return one, replace(one, value=fact.other)


def choose(query: Query, solve: Callable[[Query], Solution | None]) -> Solution | None:
    """The option that comes nearest, named first; the exact value beside it."""
    quantity, found = options(query)
    if not found:
        return None
    if quantity == "shutter" and not query.has("stops") and not query.has("relation") and not query.has("exposure_value"):
        return _darker_room(query, found)
    if quantity == "film_speed" and (dialled := film_dialled.pick(query, found)) is not None:
        return dialled
    if quantity == "power" and _FREEZES.search(query.text) and {f.quantity for f in query.facts if f.origin == "said"} <= {"power", "remark"}:
        return _shorter_flash(query, found)
    if quantity == "power" and query.asks and all(a.quantity in ("stops", "factor") for a in query.asks):
        return None  # "half power bare or full through the box, by how much": two set-ups, and no power that is to be set
    starts = {f.start for f in found}
    rest = query.with_facts(f for f in query.facts if f.start not in starts)
    exact = solve(replace(rest, asks=(Ask(quantity),), claim=False))
    if exact is None or exact.status not in ("answered", "out_of_reach") or exact.answers[0].quantity != quantity:
        return None
    unit = exact.answers[0].unit
    value = float(exact.answers[0].value)
    scale = marks.distance(1.0, unit).value if quantity == "distance" else 1.0
    enough = [f for f in found if f.value >= value * _ALMOST] if exact.topic == "focus" and quantity == "aperture" else []
    if exact.topic == "focus" and quantity == "aperture" and not enough:
        return replace(exact, used=exact.used + tuple(found)).noting(f"Neither f/{found[0].value:g} nor f/{found[1].value:g} is closed far enough.")
    best = min(enough, key=lambda f: f.value) if enough else min(found, key=lambda f: abs(math.log2(f.value * float(scale) / value)))
    off = abs(WEIGHT[quantity]) * abs(math.log2(best.value * float(scale) / value))
    note = "" if off < 1 / 6 or enough else f"That is {off:.2g} stop from exact."
    return replace(exact, status="answered", topic="which_of_two" if enough else exact.topic, answers=(_quantity(quantity, best.value, preferred_unit(query, unit)), *(exact.answers[:1] if off > 0.02 else ())), used=exact.used + tuple(found)).noting(note)


_ALMOST = 0.97
"""What is to be sharp takes a lens closed at least so far; this near to it is no difference."""


def _quantity(quantity: str, value: float, unit: str) -> Quantity:
    if quantity == "distance":
        return marks.distance(value, unit)
    if quantity == "count":
        return Quantity("count", int(value), unit)
    return {"aperture": marks.aperture, "film_speed": marks.film_speed, "power": marks.power, "shutter": marks.shutter}[quantity](value)


_HOW_DARK = Pattern(r"\b(?P<not>(?:not|never|avoid(?:ing)?|prevent(?:ing)?|\w+n't|(?:keep|stop|save|hold) (?:the |it |my )?(?:\w+ )?from) (?:going |coming (?:out )?|come (?:out )?|go |get |turn(?:ing)? |be |being |quite |all |so |it |an? |any |make it |let it |want (?:it|the \w+) )*)?(?P<too>too )?"
                    r"(?:(?P<less>darker|darken\w*|kill|less (?:ambient|of the room))|(?P<more>brighter|lighter|more (?:ambient|of the room)|let (?:in|the room)|open up the room)|(?P<dark>dark|black|dim)|(?P<light>bright|white|hot))\b", re.I)
"""How dark the room is, or is to be; "too dark" and "so that it isn't black" ask for more light."""


_NOT = Pattern(r"\b(?:not|never|without|avoid\w*|prevent\w*)\b|n't\b", re.I)


def _wished(text: str) -> int:
    """1 where more of the room is wanted, -1 where less, 0 where that is not said or said both ways."""
    if any(not any(m.start() <= no.start() < m.end() for m in _HOW_DARK.finditer(text)) for no in _NOT.finditer(text)):
        return 0  # a "not" of which it is not plain what it denies
    plain: set[int] = set()
    ways: set[int] = set()
    for found in _HOW_DARK.finditer(text):
        turned = bool(found["not"] or found["too"])
        if turned and (found["less"] or found["more"]):
            return 0  # "I don't want it darker": as it is, or lighter
        way = (1 if found["more"] or found["light"] else -1) * (-1 if turned else 1)
        (ways if turned or found["less"] or found["more"] else plain).add(way)
    wished = ways or plain - {1}  # "a bright window", "the white wall" is how it is
    return wished.pop() if len(wished) == 1 else 0


_NO_ROOM_LIGHT = Pattern(r"\b(?:in (?:the |an? )(?:pitch[- ])?(?:dark|black)(?:ened|ed[- ]out)?(?: \w+)?|pitch[- ]dark|pitch[- ]black|blacked[- ]out|unlit|no (?:other|ambient|room) light)\b", re.I)
"""There the flash is alone, and the time changes nothing."""


_EITHER_WAY = ("sync", "aperture", "film_speed")
"""Of these one value, which both times have, makes neither the darker."""


def _darker_room(query: Query, found: list[Fact]) -> Solution | None:
    """Which of two shutter times makes the room darker, or lighter; the flash stays as it is."""
    way = _wished(query.text)
    if not way or _NO_ROOM_LIGHT.search(query.text):
        return None
    best = (min if way < 0 else max)(found, key=lambda f: f.value)
    kept = tuple(f for quantity in _EITHER_WAY for f in query.all(quantity) if len(query.all(quantity)) == 1)
    return Solution(answers=(marks.shutter(best.value),), used=tuple(found) + kept, topic="ambient",
                    notes=("The flash exposure does not change with the shutter, within sync.",))


_FREEZES = Pattern(r"\bfreez\w*|\bfrozen\b|\bstop(?:s|ping)? (?:the |all )?(?:action|motion|movement)\b|\bstop(?:s|ping)? (?:him|her|it|them|the \w+) (?:dead|cold|mid|in mid|in the air|in flight)\b|\b(?:shorter|shortest|briefer|briefest|quicker|quickest) (?:flash|burst|pulse|pop|duration)\b|\b(?:flash|burst|pulse|pop|duration) (?:is|lasts|gets|comes out|will be)(?: the)? (?:shorter|shortest|briefer|briefest|quicker|quickest)\b|\bless (?:blur|smear)\b", re.I)
_BY_VOLTAGE = Pattern(r"\b(?:studio|monolights?|monoblocs?|monoblocks?|pack|generator|heads?|mains|volt\w*|bulbs?|not|never|\w+n't|worse|least|longest|longer)\b", re.I)
"""Of a studio flash the burst may last longer at low power; what is denied is not judged here."""


def _shorter_flash(query: Query, found: list[Fact]) -> Solution | None:
    """"full or 1/16 power to freeze him sharper?": an ordinary flash is cut off early at low power, so its burst is shorter."""
    if _BY_VOLTAGE.search(query.text) or len({f.value for f in found}) < 2:
        return None
    best = min(found, key=lambda f: f.value)
    return Solution(answers=(marks.power(best.value),), used=tuple(found), topic="time",
                    notes=("A shoe flash is cut off early at low power, so its burst is shorter; a studio flash may do the opposite. The light lost has to be made up by a wider aperture, a shorter distance or faster film.",))
