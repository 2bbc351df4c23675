"""A light that is to give so much less, or more, by its place alone, where nobody said where it stands."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution, needs

_TOLD = frozenset({"stops", "relation", "loss", "power_down", "signed", "remark", "place"})
_WISHED = Pattern(r"\b(?:needs?|wants?|must|has to|have to|got to|gotta|should|i'?d like|i like|would like)\b")
_BY_PLACE = Pattern(r"\b(?:without|no|not|don'?t|do not|can'?t|cannot|never|won'?t|rather than|instead of)\b[^.?!;]{0,24}\b(?:touch\w*|turn\w*|chang\w*|dial\w*|alter\w*|power|fiddl\w*|mov\w* the dial|us\w* the dial)\b|\b(?:power|dial|output) (?:stays?|remains?|is fixed|kept|unchanged|as it is)\b|\bsame power\b|\bby (?:moving|distance|place)\b")


_HOW_FAR_BACK = Pattern(r"\bhow (?:far|much (?:further|farther)) (?:back|away|off) (?:must|should|do|does|would|can|has|have)\b[^?]{0,24}\b(?:go|move|step|stand|pull|put|walk)\b[^?]{0,24}\bto (?:lose|drop|gain|get|take off)\b")


def lacks_its_place(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"the light needs to drop a stop and I don't want to touch the dial: how many feet from him?": from where it stands now."""
    kinds, lower = {f.quantity for f in query.facts}, query.text.lower()
    told = [f for f in query.facts if f.quantity not in ("remark", "place")]
    if scene.near is not None or ask.quantity != "distance" or len(told) != 1 or not kinds <= _TOLD or told[0].unit or not (_WISHED.search(lower) and _BY_PLACE.search(lower) or _HOW_FAR_BACK.search(lower)):
        return None
    return needs(("distance",), "I need how far the light is from the subject now.", tuple(told), "falloff")


_ELSEWHERE = Pattern(r"\b(?:behind|beyond|further|farther|back|rear|second|last|others?|away)\b")


def lacks_the_second(query: Query, scene: Scene) -> bool:
    """"the first desks are 2.5 m from the lamp, the horns somewhere behind them: how many stops less?": one place is told, and the other is only named."""
    told = {f.quantity for f in query.facts} <= {"distance", "remark", "place", "count"} and len(query.all("distance")) == 1
    return told and scene.near is not None and scene.far is None and not scene.moved and bool(query.cues & {"less", "more", "loss"}) and _ELSEWHERE.search(query.text.lower()) is not None


_EQUAL = Pattern(r"\b(?:identical|equal|same|matching|twin|alike)\b")


def lacks_the_other(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"key and fill are identical heads, the fill is 9 feet off: how far under the key is it": where the other of the two stands."""
    placed = query.all("distance")
    lights = {"key", "fill"} & {ask.of, *query.mentioned, *(f.of for f in query.facts)}
    if len(placed) != 1 or placed[0].of not in lights or len(lights) != 2 or not {f.quantity for f in query.facts} <= {"distance", "remark", "place", "count", "power"} or not _EQUAL.search(query.text.lower()):
        return None
    other = "key" if placed[0].of == "fill" else "fill"
    return needs(("distance",), f"I need how far the {other} is from the subject.", (placed[0],), "falloff")


_MOVED_ALONE = frozenset({"move", "remark", "place", "count"})


def lacks_where_it_was(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"I pulled the light back three feet: how many stops did I lose": as much is little from far off, and much from near."""
    moves = query.all("move")
    if len(moves) != 1 or {f.quantity for f in query.facts} - _MOVED_ALONE or any(f.value > 1 for f in query.all("count")):
        return None
    return needs(("distance",), "I need how far the light was from the subject before it was moved.", tuple(moves), "falloff")
