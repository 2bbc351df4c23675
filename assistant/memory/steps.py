"""Steps from where things stand: "a stop more light", "half that", "and another metre"."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.memory.bare import of_a_move
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace


def more_or_less(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"a stop more light", "turn it up a stop", "half that": a step from where things stand."""
    if not scene.asks:
        return query, scene
    step = next((f for f in query.facts if f.quantity in ("stops", "power_down") and not f.of), None)
    if step is None or _IS_CALLED.search(query.text[: step.start]) and not _spoken_way(query.text[step.start :]) or of_a_move(scene) or _of_a_rating(scene) or query.asks_for("stops", "power", "aperture", "factor"):
        return query, scene
    sign = _sign(step, query)
    if not sign or _said_anew(step, query, scene):
        return query, scene
    if _placed_fill(step, query, scene):
        return replace(query, facts=tuple(replace(f, quantity="relation", value=abs(f.value), of="fill", to="ambient", unit="") if f is step else f for f in query.facts)), scene
    stops = sign * abs(step.value)
    facts = tuple(f for f in query.facts if f is not step)
    asked = scene.asks[0].quantity
    if _turns_power(query, asked):
        return replace(query, facts=facts), _power_by(scene, talk, stops)
    if asked == "aperture" and query.cues & {"open_up", "close_down"} and scene.answered:
        return replace(query, facts=facts), _offset(scene, stops)
    if _THAN_NORMAL.search(query.text):  # held against what is right, and not against the step before
        scene = replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "offset"))
    return replace(query, facts=facts), _offset(scene, stops)


_IS_CALLED = Pattern(r"(?:^|[,.;:!?] )(?:\w+ )?(?:make|call) (?:the|that|this|my|its) [a-z]+(?: (?:itself|loss|eat|take|cost))? $", re.I)
"""So much is what a thing takes, "make the paint two stops", and no step from where things stand."""
_THAN_NORMAL = Pattern(r"\b(?:than|over|under|above|below) normal\b", re.I)


_PLACED = Pattern(r"^\W*(?:and|what about|how about|what if|now|or|with)\b[^.?!]{0,24}\b(?:under|over|below|above)\W*$", re.I)


def _said_anew(step: Fact, query: Query, scene: Scene) -> bool:
    """"and two stops under?" after "what puts the room one stop under": the same thing, placed anew."""
    told = [f for f in scene.facts if f.quantity == "stops" and f.cue in ("less", "more") and not f.of]
    if len(told) == 1 and scene.asks[0].quantity == "count" and step.quantity == "stops" and step.cue == told[0].cue and not query.text.strip():
        return True  # "only one and a half short", which the pops are to make up: read already
    return len(told) == 1 and step.quantity == "stops" and step.cue in ("less", "more") and _PLACED.search(query.text) is not None and any(f.of == "ambient" for f in scene.facts)


def _placed_fill(step: Fact, query: Query, scene: Scene) -> bool:
    """"make it one stop under" of a flash beside daylight: so much under the daylight."""
    kinds = {f.quantity for f in scene.facts}
    lit = any(f.of == "ambient" for f in scene.facts) and "guide_number" in kinds and "relation" not in kinds
    return lit and step.quantity == "stops" and step.cue in ("less", "more") and scene.asks[0].quantity in ("power", "distance") and patterns.search(r"\b(?:under|over|below|above)\W*$", query.text, re.I) is not None


def _of_a_rating(scene: Scene) -> bool:
    """Whether it is a film's rating that is asked, for so many stops over or under."""
    kinds = {f.quantity for f in scene.facts}
    return scene.asks[0].quantity in ("film_speed", "speed") and bool(kinds & {"stops", "relation"}) and not kinds & {"guide_number", "distance"}


def _sign(step: Fact, query: Query) -> int:
    """Which way a step goes; the last direction word said decides ("too much, back down half a stop")."""
    if step.quantity == "power_down":
        return -1
    ways = {"more": 1, "up": 1, "open_up": 1, "less": -1, "down": -1, "close_down": -1}
    words = [i.word for i in query.items if getattr(i, "kind", "") == "cue" and getattr(i, "word", "") in ways]  # type: ignore[attr-defined]
    near = step.cue or (words[-1] if words else "") or _spoken_way(query.text)
    return {"more": 1, "less": -1}.get(near, ways.get(near, 0))


_WAYS = Pattern(r"\b(more|up|brighter|hotter|over|open|raise|boost|increase|add)\b|\b(less|down|darker|dimmer|under|back off|drop|lower|reduce|cut)\b")


def _spoken_way(text: str) -> str:
    """The last direction word, whatever phrase it stood in."""
    found = _WAYS.findall(text.lower())
    return "" if not found else "more" if found[-1][0] else "less"


def _turns_power(query: Query, asked: str) -> bool:
    text = query.text.lower()
    if asked == "power":
        return False
    return "power" in text or bool(patterns.search(r"\b(turn|dial|crank|knock|bump|wind|bring|pull)\b.*\b(up|down|back)\b", text)) or "it down" in text or "it up" in text


def _power_by(scene: Scene, talk: Conversation, stops: float) -> Scene:
    now = next((f for f in reversed(scene.facts) if f.quantity in ("power", "power_down")), None)
    value = 1.0 if now is None else (now.value if now.quantity == "power" else 2.0**-now.value)
    changed = Fact("power", value * 2.0**stops, "", now.of if now else "", said="the changed power",
                   bad="" if value * 2.0**stops <= 1.0001 else "a flash cannot give more than full power")
    return replace(scene, facts=tuple(f for f in scene.facts if f is not now) + (changed,))


def _offset(scene: Scene, stops: float) -> Scene:
    old = next((f for f in scene.facts if f.quantity == "offset"), None)
    total = stops + (old.value if old else 0.0)
    return replace(scene, facts=tuple(f for f in scene.facts if f is not old) + (Fact("offset", total, "stops", said=f"{total:+g} stops"),))


_HALVES = Pattern(r"\b(half|twice|double|quarter|a third)\s+(?:of\s+)?(?:that|it|the distance|the power|as far|as much)\b|\b(halve|double)\s+(?:that|it|the (?:distance|power))")


def halves(query: Query) -> bool:
    """"half that", "double it again"."""
    return _HALVES.search(query.text.lower()) is not None


def half_that(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"half that", "double it": the answer's or the latest value, halved or doubled."""
    text = query.text.lower()
    found = _HALVES.search(text)
    if not found or not scene.facts or any(f.quantity == "charge_share" for f in query.facts):
        return query, scene
    word = next(g for g in found.groups() if g)
    factor = {"half": 0.5, "halve": 0.5, "twice": 2.0, "double": 2.0, "quarter": 0.25, "a third": 1 / 3}[word]
    share = next((f for f in scene.facts if f.quantity == "charge_share"), None)
    if share is not None and found.group().endswith(" of it"):  # of a charge whose part was told: that part anew
        told = replace(share, value=factor, said=found.group(), origin="said", start=found.start(), end=found.end())
        return replace(query, facts=(*(f for f in query.facts if f.quantity not in ("power", "share")), told)), scene
    quantity = "distance" if "distance" in text or "as far" in text else "power" if "power" in text or "as much" in text else ""
    target = next((f for f in reversed(scene.facts) if (f.quantity == quantity if quantity else f.quantity in ("power", "distance"))), None)
    deep = [f for f in scene.facts if f.quantity == "gap" and f.of == "back"]
    if target is None and not quantity and len(deep) == 1:
        target = deep[0]
    if target is None and quantity in ("", "power"):
        target = Fact("power", 1.0)
    if target is None:
        return query, scene
    new = replace(target, value=target.value * factor, said=found.group(), origin="said", bad="" if target.quantity != "power" or target.value * factor <= 1 else "a flash cannot give more than full power")
    facts = tuple(f for f in query.facts if f.quantity not in ("power", "share", "count", "times"))
    asks = tuple(a for a in query.asks if a.quantity != target.quantity) or scene.asks
    return replace(query, facts=facts + (new,), asks=asks, unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not target))


def another_length(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and another metre": the same way as the move before."""
    last = next((f for f in reversed(scene.facts) if f.quantity == "last_move"), None)
    facts = []
    for fact in query.facts:
        if fact.quantity == "move" and fact.cue == "again" and last is not None:
            fact = replace(fact, value=math.copysign(fact.value, last.value), cue="")
        facts.append(fact)
    moves = [f for f in facts if f.quantity == "move"]
    if moves:
        kept = tuple(f for f in scene.facts if f.quantity != "last_move")
        scene = replace(scene, facts=kept + (Fact("last_move", moves[-1].value, said="the last move"),))
    return replace(query, facts=tuple(facts)), scene
