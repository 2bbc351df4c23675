"""Daylight and room light put up for a yes or a no: "sun, ISO 400, sync 1/60, the lens stops down to f/22: can I expose it right?"."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import DIFFERENCE_STOPS, aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_words import WITHOUT
from assistant.solving.solution import Solution

_CAN_IT = Pattern(r"\b(?:can|could|will|would|is it possible|possible|able|does|do)\b", re.I)
_EXPOSED = Pattern(r"\b(?:expos\w*|shoot\w*|daylight|sun\w*|ambient|sky|background|properly|correct\w*|normal\w*)\b", re.I)
_SPOILT = Pattern(r"\b(?:over-?expos\w*|under-?expos\w*|too (?:bright|dark|much|hot|light)|blow\w*|burn\w*|(?:over|under)(?! (?:an?|the|my|our|his|her|this|that|[a-z]+ (?:clouds?|sky|skies|sun|trees))\b))\b", re.I)
_WITHOUT = Pattern(WITHOUT + r"(?:over-?expos\w*|blow\w*|burn\w*)(?: out)?", re.I)
_ON_THE_SKY = Pattern(r"\bunder (?:an? |the )?(?:\w+ )?(?:clouds?|sky|skies|haze|sun|trees?|cover|canopy)\b", re.I)
_NO_FILTER = Pattern(r"\b(?:without|no|not|lack\w*|forgot\w*)\b[^.?!]{0,20}\b(?:filters?|nds?)\b", re.I)
"""A filter that is named to say that there is none."""
_CLOSE = 1 / 3
"""Stops within which a lens that cannot close enough still will do."""


def claim_of_daylight(query: Query) -> Solution | None:
    """Whether the lens closes far enough for the daylight at sync speed; None where not all of it is told."""
    sync, smallest = query.last("sync") or query.last("shutter"), query.last("smallest_aperture") or _end_of_the_lens(query)
    if sync is None or smallest is None or query.has("guide_number") or _SPOILT.search(_ON_THE_SKY.sub(" ", _WITHOUT.sub(" ", query.text))) or not (_CAN_IT.search(query.text) and _EXPOSED.search(query.text)):
        return None
    from assistant.solving.ambient_light import solve as of_the_light

    bare = tuple(f for f in query.facts if f.quantity == "camera_filter") if _NO_FILTER.search(query.text) else ()
    found = of_the_light(replace(query, facts=tuple(f for f in query.facts if f not in (sync, smallest, *bare)) + (_worked_at(sync),), asks=(Ask("aperture"),), claim=False))
    if found is None or not found.answers or not isinstance(found.answers[0].value, float):
        return None
    needed = found.answers[0].value
    over = aperture_difference_stops(needed, smallest.value)
    holds = over <= _CLOSE
    lead = f"{'Yes' if holds else 'No'}. The daylight takes f/{needed:.3g} there" + ("." if holds else f"; at f/{smallest.value:g} it is {speak_stops(over)} over: use slower film, an ND filter, or shade.")
    return Solution(lead=lead, answers=(Quantity("claim", holds), marks.aperture(needed)), used=(*found.used, sync, smallest, *bare), assumed=found.assumed, topic="claims")


_STAYS_RIGHT = Pattern(r"\b(?:have|keep|get|leave|hold|with|and) (?:the |my |that |all the )?(?:day|sun|window)?(?:light|sun|ambient|sky|background|river|room|scene|square|quay|harbour|water)(?: (?:still|be|is|come out|stay|also|just))* (?:(?:correct|right|proper|normal|perfect)(?:ly)?|well|as metered)\b", re.I)


def at_its_sync(query: Query) -> Query:
    """"the sun reads f/16 at 1/125, my sync is 1/60: can I use f/8 without overexposing the quay?": the picture's time is the sync, and that of the reading is no time to be synced."""
    syncs, times, openings = query.all("sync"), query.all("shutter"), query.all("aperture")
    set_to = [f for f in times if f.of != "ambient"]
    read = len(times) - len(set_to) == 1 and [f.of for f in openings].count("ambient") == 1
    if not query.claim or len(syncs) != 1 or not read or len(openings) != 2 or [f for f in set_to if f.value != syncs[0].value]:
        return query
    if set_to:
        return query.with_facts(f for f in query.facts if f is not syncs[0])
    if not (_SPOILT.search(query.text) or _STAYS_RIGHT.search(query.text)):
        return query
    return query.with_facts(_worked_at(f) if f is syncs[0] else f for f in query.facts)


_DOWN_TO = Pattern(r"\blens\b[^.,;?!]{0,24}\b(?:down to|closes? (?:down )?to|stops? (?:down )?to|ends? at|goes(?: down| only| as far as)* to|as far as|no further than|up to)\W*$", re.I)


def _end_of_the_lens(query: Query) -> Fact | None:
    """"lens down to f/16": how far it closes, and no setting."""
    marks_told = [f for f in query.all("aperture") if f.of != "ambient"]
    return marks_told[0] if len(marks_told) == 1 and query.has("sync") and _DOWN_TO.search(query.text[: marks_told[0].start]) else None


def _worked_at(sync: Fact) -> Fact:
    """The sync speed as the shutter time that is set."""
    return Fact("shutter", sync.value, sync.unit, origin=sync.origin, start=sync.start, end=sync.end, said=sync.said)


_NEEDS_ND = Pattern(r"\b(?:need|require|have to (?:use|put on)|want|take)\b[^?.]{0,12}\b(?:nds?|nd filters?|neutral density|grey filters?|gray filters?)\b", re.I)


def claim_of_nd(query: Query) -> Solution | None:
    """"ISO 50 in bright sun at 1/60: do I need an ND for f/5.6?": where the daylight is more than that by a third of a stop."""
    if not _NEEDS_ND.search(query.text) or query.has("nd") or query.has("guide_number") or not query.has("aperture"):
        return None
    from assistant.solving.ambient_light import solve as of_the_light

    sync = query.last("sync")
    at_sync = (_worked_at(sync),) if sync is not None and not query.has("shutter") else ()
    found = of_the_light(replace(query, facts=(*query.facts, *at_sync), asks=(Ask("nd"),), claim=False))
    if found is None or found.status != "answered" or not found.answers or not isinstance(found.answers[0].value, float):
        return None
    strength = found.answers[0].value
    holds = strength > _CLOSE
    said = f"Yes: one of {speak_stops(strength)}." if holds else "No: it is not too bright for that."
    return replace(found, lead=said, answers=(Quantity("claim", holds), *(found.answers if holds else ())), notes=(), topic="claims", used=tuple(dict.fromkeys((*found.used, *((sync,) if sync else ())))))


_LEAST = Pattern(r"\bat least\b|\bor more\b|\bmore than\b|\bno less\b", re.I)
_MOST = Pattern(r"\bat most\b|\bno more than\b|\bwithin\b|\bor less\b", re.I)


_IS_RIGHT = Pattern(r"\b(?:it|that|the \w+|this)(?:'s| is| would be| will be| comes out)(?: then| now| just| about| exactly)* (?:right|correct|spot on|exposed right)\b", re.I)


def _made_good(query: Query, said: Fact) -> Solution | None:
    """"at f/8 and 1/60 the hall is two stops under. At f/4 and 1/60 it is right": whether the second setting makes up what the first is off by."""
    right = _IS_RIGHT.search(query.text, said.end)
    settings = [(q, sorted(query.all(q), key=lambda f: f.start)) for q in ("aperture", "shutter")]
    if right is None or {f.quantity for f in query.facts} - {"aperture", "shutter", "relation", "film_speed"} or any(len(told) > 2 for _, told in settings):
        return None
    before = {q: told[0] for q, told in settings if told and told[0].start < said.start}
    after = {q: told[-1] for q, told in settings if told and said.end < told[-1].start < right.start()}
    if not after or not set(after) <= set(before):
        return None
    change = sum(DIFFERENCE_STOPS[q](before[q].value, fact.value) for q, fact in after.items())
    off = change + abs(said.value) * (1 if said.cue == "more" else -1)
    holds = abs(off) < 0.25
    state = "right" if holds else f"{speak_stops(abs(off))} {'over' if off > 0 else 'under'}"
    return Solution(answers=(Quantity("claim", holds), marks.stops(off)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. It is {state} then.")


_UNDER_OR_OVER = Pattern(r" ?(?:(?P<less>too dark|under(?:-?expos\w*)?)|too (?:bright|light)|over(?:-?expos\w*)?)\b(?! (?:the|my) (?:flash|key|fill|face|subject)\b)", re.I)
_THAN_BEFORE = Pattern(r"\b(?:darker|brighter|lighter|dimmer)\b", re.I)
"""Held against what it was, and not against what is right."""


def claim_of_room(query: Query) -> Solution | None:
    """"f/2 at 1/15 here; at f/8 and 1/60, is the room at least five stops under?": what the settings do to what was read."""
    said = next((f for f in query.facts if f.quantity == "relation" and f.of in ("ambient", "backdrop")), None) or next((replace(f, cue="less" if state["less"] else "more") for f in query.facts if f.quantity == "stops" and (state := _UNDER_OR_OVER.match(query.text, f.end))), None)
    read = query.last("aperture", "ambient") is not None and query.last("shutter", "ambient") is not None or query.has("exposure_value")
    made_good = _made_good(query, said) if said is not None else None
    if made_good is not None:
        return made_good
    if said is None or not read or query.last("shutter", "") is None and (query.has("sync") or query.last("aperture", "") is None) or query.has("guide_number") or _THAN_BEFORE.search(query.text, said.start):
        return None
    from assistant.solving.ambient_light import solve as of_the_room

    plain = replace(query.with_facts(f for f in query.facts if f.start != said.start), asks=(Ask("stops", "ambient"),), claim=False)
    found = of_the_room(plain)
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return None
    value, want = found.answers[0].value, abs(said.value) * (1 if said.cue == "more" else -1)
    beyond = value - want if want > 0 else want - value
    least, most = _LEAST.search(query.text), _MOST.search(query.text)
    holds = beyond >= -0.1 if least else beyond <= 0.1 if most else abs(beyond) < 0.25
    way = "over" if value > 0 else "under"
    return replace(found, answers=(Quantity("claim", holds, ""), *found.answers), used=(*found.used, *(f for f in query.facts if f.start == said.start)), topic="claims", notes=(), lead=f"{'Yes' if holds else 'No'}. It lies {speak_stops(abs(value))} {way}.")
