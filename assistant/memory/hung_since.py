"""What hangs in the light since it was read, and what is done after that: the light moved, or what hangs there taken off.

"f/11 at 8 feet, an umbrella on now that loses 2 stops: what stop?", then "shift it to 6 feet": bare it would read f/14.7
from there, and the umbrella still takes its two stops. "Umbrella off again": what it reads bare.
"""

from __future__ import annotations

import re

from assistant.memory.anew import as_told, lone
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.memory.taken_away import nothing_on
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_TAKING = ("loss", "filter_loss", "nd")
_AROUND = frozenset({*_TAKING, "camera_distance", "aperture", "distance", "modifier", "camera_filter", "power", "film_speed", "shutter", "remark", "place", "last_move"})
_OF_THESE = ("change", "losses", "before_after")
_TAKES_BACK = Pattern(r"^\W*(?:no|nope|sorry|wait|oops|i mean|i meant|actually)\b|\b(?:it was|not|read at|metered at)\b", re.I)
_OFF = Pattern(r"^\W*(?:(?:and|ok|okay|so|then|now|what about|how about|with|take|taking|get|lose) )*(?:the |my )?(?P<what>[a-z]+)(?: (?:comes|goes|is|gets|taken))? (?:off|away|gone|out)(?: again| then| now)?\W*$|^\W*(?:(?:and|ok|okay|so|then|now|what about|how about|back to) )*(?:bare|without (?:the |my )?[a-z]+|without it)(?: again| then| now)?\W*$", re.I)


def _read_bare(scene: Scene, talk: Conversation) -> tuple[Fact, Fact, tuple[Fact, ...]] | None:
    """The reading, where it was taken and what hangs there since; None where another thing may be meant."""
    read = [f for f in scene.facts if f.quantity == "aperture"]
    placed = [f for f in scene.facts if f.quantity == "distance"]
    taken = tuple(f for f in scene.facts if f.quantity in _TAKING)
    last = talk.last_solution
    if not scene.asks or scene.asks[0].quantity != "aperture" or len(read) != 1 or len(placed) != 1 or not taken or last is None or {f.quantity for f in scene.facts} - _AROUND:
        return None
    if read[0].of or placed[0].of or read[0].cue == "want" or last.topic not in _OF_THESE or not all(any(f.quantity == t.quantity and f.value == t.value for f in last.used) for t in taken):
        return None
    return read[0], placed[0], taken


def moved_with_it(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The light somewhere else, with what hangs there: what it reads bare changes by the distances."""
    mine = lone(query, "distance")
    if mine is None or mine.of or mine.bad or mine.value <= 0 or query.asks or _TAKES_BACK.search(query.text):
        return query, scene
    known = _read_bare(scene, talk)
    if known is None:
        return query, scene
    read, placed, _ = known
    there = as_told(read, read.value * placed.value / mine.value, replace(mine, start=-1, end=-1))
    return query.with_facts((replace(there, origin="kept", said=read.said), mine)), replace(scene, facts=tuple(f for f in scene.facts if f not in (read, placed)))


def taken_off_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"umbrella off again": it takes nothing now, and what was read bare is what counts."""
    if query.asks or any(f.quantity not in ("modifier", "camera_filter", "remark") for f in query.facts) or not _OFF.match(query.text):
        return query, scene
    known = _read_bare(scene, talk)
    if known is None or len(known[2]) != 1:
        return query, scene
    lost = known[2][0]
    named = [f for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    if named and lost.unit and named[0].unit != lost.unit:
        return query, scene
    return replace(query, facts=(nothing_on(query),), unplaced=(), unknown=(), cues=query.cues | {"BARE"}), replace(scene, facts=tuple(f for f in scene.facts if f is not lost and f.quantity not in ("modifier", "camera_filter")))
