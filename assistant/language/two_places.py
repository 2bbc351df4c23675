"""Two people or things that both have to be sharp: how far off the one is, and how far the other.

"one's seven feet from the camera and the other nine" gives two places, the second in the unit of
the first, as the front and the back of what is to be sharp; no light is counted by the second.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

_SHARP = Pattern(r"\bsharp\w*|\bfocus\w*|\bcrisp|\b(?:lens|aperture|f-?(?:stop|number))\b[^.?!]{0,40}\b(?:holds?|covers?|keeps?|takes? in) (?:them )?both\b", re.I)
_LIT = frozenset({"guide_number", "power", "sharp_limit", "relation", "ratio"})
_PLACES = ("distance", "camera_distance")
_TO_INFINITY = Pattern(r"[^.?!\d]{0,40}\band (?:the |a )?(?:(?:far|distant) )?[\w ]{0,24}?\bat (?:infinity|∞)", re.I)
_OF_A_LIGHT = Pattern(r"\b(?:flash|light|strobe|lamp|head|key|fill|rim|softbox|umbrella)\b[^.?!,;]{0,24}$", re.I)
_BARE = ("number", "count", "film_speed")
BOTH = Pattern(r"\b(?:both|all|each|everyone|everybody|everything|the two|two of them|the lot|the whole (?:group|row|lot)|pair|equal(?:ly)?|same sharpness|as sharp as)\b", re.I)
"""Said of all that was placed: no single place is the one focused at."""

_ON_TO_THE_OTHER = Pattern(r"[^.?!]{0,40}(?:\band\b|,|;)[^.?!]{0,12}\b(?:another|other|second|one|ears?|eyes?|nose|tail|hands?|feet|toes|knees|shoulders?|farthest|furthest|far|back|last|rear|hindmost|nearest|front|closest|the \w+|(?:his|her|their|its) \w+)\b[^.?!\d]{0,24}", re.I)
_FIGURE_BETWEEN = Pattern(r"\d|\b(?:mm|lens|film|iso|asa|f)\b", re.I)
_ENDS = Pattern(r"\s*(?:$|[.,;:?!](?!\d)|(?:and|so|but|from|away|off|where|which|both|what)\b)", re.I)
_SPEED = Pattern(r"iso|asa|film|speed", re.I)
_PEOPLE_AFTER = Pattern(r"\s+[a-z]+s\b|\s+(?:people|men|women|children|of (?:them|us|my|our|the))\b", re.I)


def told_apart(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with two places, where sharpness is asked of, as the front and the back."""
    kinds = {f.quantity for f in facts}
    near = [f for f in facts if f.quantity in _PLACES and not math.isinf(f.value) and not f.bad]
    if len(near) == 1 and any(math.isinf(f.value) for f in facts) and "guide_number" not in kinds and BOTH.search(text) and _TO_INFINITY.match(text, near[0].end):
        return [replace(f, quantity="sharp_limit", of="", cue="", bad="") if f is near[0] or math.isinf(f.value) and f.quantity in (*_PLACES, "sharp_limit", "focus_distance") else f for f in facts]
    if kinds & _LIT or not kinds & set(_PLACES) or not _SHARP.search(text):
        return list(facts)
    places = [f for f in facts if f.quantity in _PLACES and f.unit in LENGTH and not f.bad and not f.cue.startswith("at_") and not _OF_A_LIGHT.search(text[max(0, f.start - 40) : f.start])]
    if len(places) == 1:
        return _as_deep(places[0], facts, text) or _second(places[0], facts, text)
    aimed = {f.value for f in facts if f.quantity == "focus_distance"}  # "one at 2.5 m and one at 3.5 m, focused at 2.9 m: are both sharp"
    if len(places) == 2 and aimed.isdisjoint([f.value for f in places]) and places[0].value != places[1].value and BOTH.search(text):
        return _in_rows(places, facts, text)
    return list(facts)


def _second(first: Fact, facts: Sequence[Fact], text: str) -> list[Fact]:
    """"… and the farthest ear twelve": in the unit of the place before."""
    for fact in facts:
        gap = text[first.end : fact.start]
        if fact.quantity not in _BARE or fact.start < first.end or _SPEED.search(fact.said) or math.isnan(fact.value):
            continue
        metres = fact.value * LENGTH[first.unit]
        if 0.2 < metres / first.value < 5 and metres != first.value and _ON_TO_THE_OTHER.fullmatch(gap) and not _FIGURE_BETWEEN.search(gap) and _ENDS.match(text[fact.end :]):
            other = replace(fact, quantity="distance", value=metres, unit=first.unit)
            return _in_rows([first, other], [other if f is fact else f for f in facts], text)
    return list(facts)


_FRONT_BEFORE = Pattern(r"\b(?:front|nearest|closest|first|starts?|begins?|starting|beginning)\b[^.?!,;\d]{0,24}$", re.I)
_SO_DEEP = Pattern(r"[\s-]*(?:deep|in depth|of depth|front to back|behind|further back|farther back|back from (?:that|it|them))\b", re.I)


def _as_deep(front: Fact, facts: Sequence[Fact], text: str) -> list[Fact]:
    """"the group starts at 10 ft and is 4 ft deep": from the front one to as far behind it; empty where that is not said."""
    deep = [f for f in facts if f.quantity == "gap" and _SO_DEEP.match(text[f.end :])]
    if len(deep) != 1 or front.of not in ("", "front") or front.of != "front" and not _FRONT_BEFORE.search(text[: front.start]):
        return []
    back = replace(deep[0], quantity="distance", value=front.value + deep[0].value, of="back", cue="")
    return [back if f is deep[0] else replace(f, quantity="distance", of="front", cue="") if f is front else f for f in facts]


def _in_rows(places: Sequence[Fact], facts: Sequence[Fact], text: str) -> list[Fact]:
    """The nearer is the front, the farther the back; "two brothers" are those two."""
    near = min(f.value for f in places)
    out = [replace(f, quantity="distance", of="front" if f.value == near else "back", cue="") if f in places else f for f in facts]
    return [replace(f, quantity="remark") if f.quantity == "number" and f.value == 2 and _PEOPLE_AFTER.match(text[f.end :]) else f for f in out]


def one_row_moved_from(facts: list[Fact], text: str) -> list[Fact]:
    """"8 feet from the front row was right; I carry it back to 20 feet from the front row": one row, from two places of the light, and it is the subject."""
    places = [f for f in facts if f.quantity == "distance"]
    rows = {f.of for f in places} - {""}
    bare = [f for f in places if not f.of]
    if len({f.value for f in places}) != 2 or len(rows) != 1 or not rows <= {"front", "back"} or any(f.quantity in ("gap", "rows", "length_range") for f in facts):
        return facts
    from_to = _FROM.search(text[: places[0].start]) is not None and _ON_TO.fullmatch(text, places[0].end, places[1].start) is not None
    if not from_to and (len(places) != 2 or bare and not (bare[0].start > places[0].start and _CARRIED.search(text[places[0].end : bare[0].start]))):
        return facts
    return [replace(f, of="", cue="from" if from_to and f is places[0] else f.cue) if f in places else f for f in facts]


_FROM = Pattern(r"\bfrom (?:about |just )?$", re.I)
_ON_TO = Pattern(r"(?: (?:away|off|from (?:the|my) \w+(?: row)?))? (?:back |out |in |up |on )?to (?:about |just )?", re.I)
_CARRIED = Pattern(r"\b(?:mov|carr|pull|push|shift|tak|took|bring|brought|drag|walk|go|going|went|back|step|slid|put)\w*\b", re.I)


_FROM_ONE_LAMP = Pattern(r"\s*(?:away |back )?from (?:the|my|that|this|our|one|a single) (?:one |only |same |single )?(?:flash(?:gun)?|light|lamp|head|gun|strobe|softbox|umbrella)\b(?! (?:and|to)\b)", re.I)
_TWO_OF_THEM = Pattern(r"\W*(?!flash|light|lamp|head|gun|strobe|unit|pop|stop)[a-z]+s\b", re.I)


def of_two_things(facts: list[Fact], text: str) -> list[Fact]:
    """"two boats, one 2 metres from my flash and the other 3": what stands so far from a lamp is lit by it, and is no lamp."""
    named = [f for f in facts if f.quantity == "distance" and f.of in ("a", "b")]
    if not any(_FROM_ONE_LAMP.match(text, f.end) for f in named) or any(f.of in ("a", "b") and f.quantity != "distance" for f in facts):
        return facts
    out = [replace(f, of="") if f in named else f for f in facts]
    return [replace(f, quantity="remark") if f.quantity == "number" and f.value == len(named) == 2 and _TWO_OF_THEM.match(text, f.end) else f for f in out]
