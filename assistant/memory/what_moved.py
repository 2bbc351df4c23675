"""What the turn before changed, called "it" or put right by a bare figure: "the wall 12 ft behind her?", then "put it back to 6, but the light at 4 ft"."""

from __future__ import annotations

import re

from assistant.memory.anew import as_told
from assistant.memory.bare_again import changed_last
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.left_out import shown
from assistant.units import LENGTH

_IT = Pattern(r"(?:^|[\s,.;])(?:(?:put|mov(?:e|ing)|bring|tak(?:e|ing)|hav(?:e|ing)|set|push|pull|make|leave) )?(?:it|that)(?:'s| is| goes)? ?(?:back |out |in |now |only |just )*(?:to |at )?(?:about )?$", re.I)
_PUT_RIGHT = Pattern(r"^\W*(?:(?:no|nope|sorry|wait|actually|oops|i mean|i meant)\b\W*)+$", re.I)


_STILL = Pattern(r"\b(?:still|same|again|also|it's still|still with|always)(?: at| on| the| with)?\W*$", re.I)


def still_so(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"still five, front row at 6 m", after five rows: what is told as it was needs no place of its own."""
    kept = [f for f in query.facts if f.quantity == "number" and not f.bad and _STILL.search(query.text[: f.start]) and any(f.value in (k.value, shown(k)) for k in scene.facts)]
    if not kept or len(query.facts) == len(kept):
        return query, scene
    words = {f.said.strip() for f in kept}
    return replace(query, facts=tuple(f for f in query.facts if f not in kept), unplaced=tuple(w for w in query.unplaced if w.strip() not in words)), scene


def what_moved(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The gap that was told last, anew, where "it" or a correction stands before a length that names nothing else."""
    told = [f for f in scene.facts if f.quantity == "gap"]
    if len(told) != 1 or query.asks or query.has("gap") or changed_last(talk) != "gap":
        return query, scene
    mine = next((f for f in query.facts if f.quantity in ("distance", "number") and f.of in ("", told[0].of) and not f.bad and _is_it(f, query)), None)
    unit = told[0].unit if mine is None or mine.unit not in LENGTH else mine.unit
    if mine is None or unit not in LENGTH or mine.value <= 0:
        return query, scene
    value = mine.value if mine.quantity == "distance" else mine.value * LENGTH[unit] if told[0].value > 0 else mine.value
    new = replace(as_told(told[0], value, mine), unit=unit)
    return replace(query, facts=tuple(new if f is mine else f for f in query.facts), unplaced=(), cues=query.cues - {"go_back"}), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))


def _is_it(fact: Fact, query: Query) -> bool:
    """Whether what stands before a value says only that it is of what was spoken of."""
    before = query.text[: fact.start]
    return _IT.search(before) is not None or _PUT_RIGHT.match(before) is not None and not re.search(r"[a-z]{3}", query.text[fact.end :].lower().replace("feet", "").replace("foot", "").replace("metres", ""))
