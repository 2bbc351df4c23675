"""Signs of a question misread: a value said beside an answer of a kind that always uses such values, or a yes or a no that was asked and is not given."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.solving.guide_aside import bears_not
from assistant.solving.placing import SO_FAR
from assistant.solving.solution import Solution
from assistant.solving.solver import unused
from assistant.units import LENGTH

_ANYWHERE = frozenset({"format", "sync", "aperture_range", "widest_aperture", "smallest_aperture", "max_distance", "max_film_speed", "max_count", "min_distance", "min_power", "only_powers", "camera_distance"})
"""What the gear and the room can do, and what only the lens looks at: told by the way."""
_BESIDE: dict[str, frozenset[str]] = {
    # what else may stand beside an answer without bearing on it, and the topics in which it has none
    "aperture": frozenset({"focus", "falloff", "flash", "auto", "bracket", "film", "losses", "ambient"}),
    "shutter": frozenset({"ambient", "change", "flash", "relations", "film", "falloff", "lights", "focus", "optics", "losses", "lamps", "twins"}),
    "film_speed": frozenset({"time", "film", "falloff", "relations", "auto", "focus", "optics", "zoom", "twins"}),
    "focal_length": frozenset({"flash", "optics", "losses", "falloff", "ambient", "lamps"}),
    "focus_distance": frozenset({"flash", "optics", "falloff", "change"}),
    "count": frozenset({"focus", "flash", "relations", "falloff", "time", "twins", "ambient"}),
    "ceiling_height": frozenset({"flash"}), "move": frozenset({"flash"}), "power": frozenset({"flash"}),
}
_NEVER_OF: dict[str, frozenset[str]] = {"energy": frozenset({"shutter", "focus_distance"})}
"""What has no say in an answer of this quantity, whatever the topic: a flash is over before the shutter is."""
_IS_A_TIME = Pattern(r"\d|s\b|sec|min|th\b")
"""What a part needs to be a time that may be told by the way: "f/8 at a quarter" may as well be a power."""
_LEGS = ("path", "ceiling_above")


def left_idle(said: Query, whole: Query, found: Solution) -> bool:
    """A magnification beside stops, a rating beside a power, one leg of a bounce: such an answer would have used it."""
    return any(not _may_be_idle(fact, found) and not _said_before(fact, whole, found) and not bears_not(fact, whole, found) for fact in unused(whole, found))


_HELD_AGAINST = Pattern(r"\b(?:than|over|under|above|below|beyond|against|compared (?:to|with)|(?:short|shy) of) (?:the |my |that |those |about )*$")


def _said_before(fact: Fact, whole: Query, found: Solution) -> bool:
    """"the key gives f/8 … a stop brighter than f/8": that reading, said once more; "took it for 400 and exposed it as 400": that speed."""
    if fact.quantity == "rated":
        return any(f.quantity == "film_speed" and f.value == fact.value for f in found.used)
    same = [f for f in found.used if f.quantity == "aperture" and f.value == fact.value and f.start != fact.start] if fact.quantity == "aperture" else []
    return any(f.quantity == "relation" for f in found.used) and bool(same) and any(_HELD_AGAINST.search(whole.text[: f.start].lower()) for f in (fact, *same))


def _may_be_idle(fact: Fact, found: Solution) -> bool:
    if fact.quantity == "shutter" and not _IS_A_TIME.search(fact.said):
        return False
    if fact.quantity == "aperture" and found.topic == "ambient" and found.answers[0].quantity == "shutter" and not fact.of:
        return any(f.quantity == "aperture" and f.value == fact.value for f in found.used)
    if fact.quantity in _NEVER_OF.get(found.answers[0].quantity, ()) or _is_of_both_marks(fact, found):
        return True
    if fact.quantity in _ANYWHERE or fact.quantity in ("count", "power") and fact.value == 1.0 or fact.quantity in ("number", found.answers[0].quantity):
        return True
    if fact.quantity == "ceiling_height" and fact.cue != "straight" and any(f.quantity in _LEGS for f in found.used):
        return False
    return found.topic in _BESIDE.get(fact.quantity, ()) and not (fact.quantity == "count" and (fact.unit == "frames" or fact.unit == "pops" and found.topic == "flash"))


def _is_of_both_marks(fact: Fact, found: Solution) -> bool:
    """"ISO 100, the meter says f/16, I want f/4: what ND?", "a stop and a half below that, what does the fill read?": the film is the same for the one mark and the other."""
    marks = [f for f in found.used if f.quantity == "aperture"]
    levels = [f for f in found.used if f.quantity == "relation"]
    of_two = len(marks) == len(found.used) == 2 and found.answers[0].of == "ND" or len(marks) == len(levels) == 1 and len(found.used) == 2
    return fact.quantity == "film_speed" and found.topic == "ambient" and of_two


_OF_FLASH = ("flash", "change", "conversions")


def is_no_place(fact: Fact, found: Solution, before: Query | None, last: Solution | None) -> bool:
    """A length that is new, taken for a place, and all stays as it was: "no, 38 m" after a flash of 25 m is no place."""
    known = [f.value for f in before.facts if f.quantity == "distance"] if before is not None else []
    return fact.quantity == "distance" and not fact.of and fact.value not in known and last is not None and found.answers == last.answers and found.topic in _OF_FLASH


def bare_then_worn(said: Query, whole: Query, found: Solution) -> bool:
    """"bare it reads f/16 at 2 m; I put on a softbox and move it to 3 m", and no softbox counted: only the move was."""
    bare = [f for f in whole.facts if f.unit == "BARE"]
    worn = [f for f in whole.facts if f.quantity == "modifier" and f.unit != "BARE"]
    return bool(bare) and any(f.start > bare[0].start for f in worn) and not any(f.quantity in ("loss", "modifier", "stops") for f in found.used) and not any(f.quantity == "stops" for f in found.assumed)


def far_left_out(said: Query, whole: Query, found: Solution) -> bool:
    """"the fill stands twice as far off", and no distance used: two lights were weighed as if from one spot."""
    return found.topic == "relations" and SO_FAR.search(said.text) is not None and not any(f.quantity in ("distance", "times") for f in found.used)


_OPEN = frozenset({"what", "which", "how", "where", "when", "why", "whose"})
_SENTENCE = Pattern(r"[.?!;:]\s+")
_YES_OR_NO = Pattern(
    r"(?:(?:(?!\b(?:what|which|how|where|when|why|whose|who)\b)[^?]){1,120},\s+)?(?:(?:so|and|then|but|ok|now),?\s+)*(?:is|are|does|do|will|would|can|could|has|have|did|am|isn't|doesn't|won't|aren't|don't|must|should)\b"
    r"(?! (?:you|u|please)\b)(?:(?!\b(?:what|which|how|where|when|why|or|whose)\b)[^?])*\?\W*$")


def wanted_a_yes(said: Query, whole: Query, found: Solution) -> bool:
    """"does the depth of field stretch to infinity?", and a figure in place of a yes or a no (contract 17)."""
    if found.answers[0].quantity == "claim" or "?" not in said.text[-3:]:
        return False
    words = said.text.lower().replace("’", "'")
    if said.claim and not said.asks and _TAG.search(words):
        return True
    if not _OPEN.isdisjoint(words[max([words.rfind(mark, 0, -3) for mark in ".?!;:"]) + 1 :].split()):
        return False  # the last sentence asks for a value
    cuts = [m.end() for m in _SENTENCE.finditer(words.rstrip(" ?!"))]
    return _YES_OR_NO.match(words, cuts[-1] if cuts else 0) is not None


_TAG = Pattern(r"[,.;] *(?:right|yes|correct|true|isn't it|doesn't it|don't they|agreed)\W*$")


_INWARD = Pattern(r"\b(?:how (?:much|far|many \w+)|by how much|by what)\b[^?.]{0,50}\b(?:closer|nearer)\b")
_OUTWARD = Pattern(r"\b(?:how (?:much|far|many \w+)|by how much|by what)\b[^?.]{0,50}\b(?:further|farther)\b")


def moved_the_other_way(said: Query, whole: Query, found: Solution) -> bool:
    """"how much closer must it come?", and a place that is farther off than the one that was told."""
    first, words = found.answers[0], said.text.lower()
    inward, outward = _INWARD.search(words) is not None, _OUTWARD.search(words) is not None
    told = [f.value for f in found.used if f.quantity == "distance"]
    if inward is outward or len(told) != 1 or first.of != "move" or len(found.answers) < 2 or not isinstance(found.answers[1].value, float):
        return False
    there = found.answers[1].value * LENGTH.get(found.answers[1].unit, 1.0)
    return inward and there > told[0] * 1.001 or outward and there < told[0] * 0.999


_HOW_DEEP = Pattern(r"\bhow (?:far|deep|much|wide)\b[^?.;]{0,30}\b(?:spread|deep|depth|front to back|apart)\b")


def moved_for_a_depth(said: Query, whole: Query, found: Solution) -> bool:
    """"how far can they spread front to back for one stop?", and a move of the lamp."""
    return len(found.answers) > 1 and found.answers[1].of == "subject" and _HOW_DEEP.search(said.text.lower()) is not None


_STOPS = frozenset({"stops", "relation"})
_ON_TOP = Pattern(r"\b(?:another|more|further|again|also|too|as well|extra|plus|adds?|added|besides|still|together|both|on top|than|back|closer|from|fill|key|hair|rim|kicker)\b", re.I)


def old_value_kept(said: Query, whole: Query, found: Solution) -> bool:
    """"now the ridge two stops over", after "one stop over", and both counted: the new value was to take the place of the old."""
    told = [f for f in said.facts if f.quantity != "remark"]
    kept = [f for f in whole.facts if f.origin == "kept"]
    if len(told) != 1 or told[0].quantity not in _STOPS or not kept or _ON_TOP.search(said.text.replace("more light", "")):
        return False
    before = [f for f in kept if f.quantity in _STOPS]
    used = {(f.quantity, f.value) for f in found.used}
    return len(before) == 1 and before[0].value != told[0].value and (before[0].quantity, before[0].value) in used and (told[0].quantity, told[0].value) in used
