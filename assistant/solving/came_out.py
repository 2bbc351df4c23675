"""Ambient light known by how it came out: so far over or under, or right, at what the camera was set to.

"The hall came out two stops under at 1/60 and f/8" tells as much as a meter would have: two stops more light
on the film is a normal exposure. So one sum serves whatever is asked, since only differences count:

    how it came out + what the settings changed by = how it comes out then

with the setting, the outcome (then, or before the change), what a meter would have shown, or the EV left open.
"""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.ambient import aperture_after, exposure_value
from assistant.places import ROOMS
from assistant.query import Ask, Fact, Query
from assistant.records import record
from assistant.scales import DIFFERENCE_STOPS, speak_stops
from assistant.solving import marks
from assistant.solving.daylight import signed
from assistant.solving.last_question import last_question
from assistant.solving.solution import Solution

_KINDS = frozenset({*DIFFERENCE_STOPS, "aperture_range", "relation", "stops", "remark", "place", "sync"})
_ROOM = rf"(?:ambient|background|backdrop|sky|window|daylight|sun|wall|street|scene|{ROOMS})(?: light)?"
_READ = Pattern(rf"\b(?:meter|reading)(?: of| off| on| for)?\b(?! (?:it|the light) (?:right|normal))[^.;?!]{{0,40}}\b(?:f\W?\d|1/\d|\d s)|\b{_ROOM}(?: behind| there| alone| itself| outside)*(?:'s)? (?:meters|metered|reads|read|is metered|needs|wants|calls for|is right|reading)\b", re.I)
"""The light was read with a meter, and is not known by how it came out."""
_CAME_OUT = Pattern(r"\b(?:is|are|was|were|came|comes|come|turned|turns|sits?|sat|lies|lay|sank|sinks|fell|falls|disappears?|disappeared|drops?|dropped|records?|recorded|brought|coming|looks?|looked|went|lift(?:s|ed)|rais(?:es|ed)|lower(?:s|ed)|made|makes|leaves|has|it's|'s|left|put|puts)\b[^.;?!]{0,60}$", re.I)
_WISHED = Pattern(r"\b(?:want\w*|wish\w*|like|need\w*|prefer\w*|should|must|to (?:be|come|get|have|bring|put|make|let|drop|lift)|so (?:that )?(?:the|it)|would rather|aim\w*|rather)\b[^.;?!]{0,60}$", re.I)
_RIGHT = r"(?:right|normal(?:ly)?|correct(?:ly)?|proper(?:ly)?|level|even|as metered|spot on|fully exposed|as bright as (?:the|her|his) (?:flash|face|subject))"
_WAS_RIGHT = Pattern(rf"\b(?:is|are|was|were|came|comes|come|turned|looks?|looked|brought|got|went)\b[^.;?!,]{{0,24}}\b(?:to |up to |down to |back to )?(?:a )?{_RIGHT}\b|\b{_RIGHT} (?:at|with|on) (?:f\W?\d|1/\d)", re.I)
_MADE_RIGHT = Pattern(rf"\b{_RIGHT}\b|\bshould (?:it|the \w+(?: \w+)?|i) have\b|\bought (?:it|the \w+|i) to have\b|\bwould (?:it|the \w+(?: \w+)?) have (?:needed|wanted|called for|taken)\b|\bfix\w*\b|\bcure[sd]?\b", re.I)
_TOO = Pattern(r"\s*too\b", re.I)
"""What is too much or too little is to be put right, though only the setting is asked: "two stops too dark at f/8 and 1/125. What shutter?"."""
_SUM = Pattern(r"\b(?:both|together|the two|the pair|add|adds|sum|total)\b", re.I)
_METER_SAID = Pattern(r"\bwhat\b[^?]{0,24}\b(?:meter|reading)\b|\bmeter (?:at|show|say|read|give)\b|\b(?:own|real|true|proper) reading\b|\bwhat (?:does|did|would|will) (?:the |my )?[a-z]+(?: light)? (?:itself )?(?:meter|read)\b", re.I)
_LAMP = Pattern(r"\b(?:flash|strobe|key|fill|face|subject|sitter|model|bride|her|him|she|he)\b[^.;?!,]{0,16}$", re.I)

_WITH_ROOM = Pattern(rf"\b{_ROOM}[^.;?!,]{{0,12}} and [^.;?!,]{{0,24}}$|\band (?:the |my )?{_ROOM} $", re.I)
"""Both are told to be level: the room and the flash."""


@record
class State:
    """How it came out (stops) and at which settings (`here`), the settings that it is asked of (`there`), and the facts that tell it."""

    out: float
    here: dict[str, float]
    there: dict[str, float]
    used: tuple[Fact, ...]

    def moved(self, besides: str = "") -> float:
        """Stops from here to there, the setting that is asked for left out."""
        return sum(between(self.here[q], self.there[q]) for q, between in DIFFERENCE_STOPS.items() if q in self.here and q != besides)


def solve(query: Query, ask: Ask) -> Solution | None:
    """What is open in the sum; None where the light was metered, or not told by how it came out."""
    if ask.quantity not in ("shutter", "aperture", "film_speed", "stops", "exposure_value") or {f.quantity for f in query.facts} - _KINDS or any(f.origin != "said" for f in query.facts):
        return None
    asked = last_question(query.text)
    if asked is None or _READ.search(query.text[: asked[0]]) or asked[0] == 0 and _READ.search(query.text[asked[1] :]):
        return None
    question = query.text[asked[0] : asked[1]]
    if _SUM.search(question):
        return None
    offsets = [f for f in query.facts if f.quantity == "relation" and f.of in ("ambient", "backdrop") or f.quantity == "stops" and f.cue in ("less", "more") and f.of in ("", "ambient")]
    if len({f.start for f in offsets}) != len(offsets) or sum(f.quantity in ("relation", "stops") for f in query.facts) != len(offsets):
        return None
    told = [f for f in offsets if not asked[0] <= f.start < asked[1] and not _WISHED.search(query.text[: f.start])]
    wished = [f for f in offsets if f not in told]
    state = _state(query, told, asked)
    if state is None or len(wished) > 1 or not (ask.quantity in ("shutter", "film_speed") or query.cues & {"ambient", "backdrop"} or any(f.of in ("ambient", "backdrop") for f in offsets)):
        return None
    if ask.quantity in ("shutter", "aperture", "film_speed") and not _METER_SAID.search(question):
        return _setting(query, ask, state, wished, question)
    return _outcome(query, ask, state, question) if not wished else None


def _state(query: Query, told: list[Fact], asked: tuple[int, int]) -> State | None:
    """How it came out at which settings: told in stops, or told to be right."""
    text = query.text
    rest = text[: asked[0]] + "." * (asked[1] - asked[0]) + text[asked[1] :]
    if len(told) > 1 or told and not _CAME_OUT.search(rest[: told[0].start]):
        return None
    right = None if told else next((m for m in _WAS_RIGHT.finditer(rest) if not _LAMP.search(before := rest[: m.start()]) or _WITH_ROOM.search(before)), None)
    if not told and right is None:
        return None
    at = told[0].start if told else right.start() if right is not None else 0
    here, there, used = dict[str, float](), dict[str, float](), list[Fact](told)
    for quantity in DIFFERENCE_STOPS:
        facts = [*(query.all("aperture_range") if quantity == "aperture" else ()), *query.all(quantity)]
        values = [(f.at_iso, f.start) for f in query.facts if quantity == "film_speed" and f.at_iso]
        values += list(dict.fromkeys((value, f.start) for f in facts for value in (f.value, f.other) if not math.isnan(value)))
        places = dict(reversed(values))  # where each value is told first
        if len(places) > 2:
            return None
        if places:
            first, last = sorted(places, key=lambda v: places[v])[0], sorted(places, key=lambda v: places[v])[-1]
            if first != last and places[last] < at:
                first, last = last, first  # changed before it came out so
            here[quantity], there[quantity] = first, last
            used += facts
    return State(signed(told[0]) if told else 0.0, here, there, (*used, *query.all("sync")))


def _setting(query: Query, ask: Ask, state: State, wished: list[Fact], question: str) -> Solution | None:
    """The time, opening or film with which it comes out as it is wanted."""
    base = state.here.get(ask.quantity)
    too = state.out != 0.0 and any(f.quantity in ("relation", "stops") and _TOO.match(query.text, f.end) for f in state.used)
    if base is None or base != state.there[ask.quantity] or not wished and (not (too or _MADE_RIGHT.search(question)) or state.out == 0.0 and state.here == state.there):
        return None
    target = signed(wished[0]) if wished else 0.0
    stops = target - state.out - state.moved(ask.quantity)
    value = base * 2.0 ** (-stops / 2 if ask.quantity == "aperture" else stops)
    make = {"shutter": marks.shutter, "aperture": marks.aperture, "film_speed": marks.film_speed}[ask.quantity]
    note = f"That is {speak_stops(abs(stops))} {'more' if stops > 0 else 'less'} exposure than it had." + ("" if ask.quantity == "shutter" else " The flash changes by as much.")
    return Solution(answers=(make(value),), used=(*state.used, *wished), topic="ambient", notes=(note,))


def _outcome(query: Query, ask: Ask, state: State, question: str) -> Solution | None:
    """How it comes out then or came out before, what a meter would have shown, or the EV."""
    here = state.here
    if ask.quantity == "exposure_value":
        if not {"aperture", "shutter"} <= set(here) or here != state.there:
            return None
        value = exposure_value(here["aperture"], here["shutter"], here.get("film_speed", 100.0)) + state.out
        return Solution(answers=(Quantity("exposure_value", value, "EV"),), used=state.used, topic="ambient", notes=("Counted at ISO 100.",))
    if _METER_SAID.search(question):
        if "aperture" not in here or here["aperture"] != state.there["aperture"] or state.out == 0.0:
            return None
        value = aperture_after(here["aperture"], state.out + state.moved())
        return Solution(answers=(marks.aperture(value, "ambient"),), used=state.used, topic="ambient", lead="It should read")
    if ask.quantity != "stops" or here == state.there:
        return None
    return Solution(answers=(marks.stops(state.out + state.moved(), "ambient"),), used=state.used, topic="ambient", notes=(f"The settings make {speak_stops(abs(state.moved()))} of difference.",))
