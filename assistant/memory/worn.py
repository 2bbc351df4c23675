"""What hangs in the light still does: "and GN 45 m, 2.5 m, with those on, which aperture?", after what they take was asked."""

from __future__ import annotations

import math
import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace

_WITH_THOSE = Pattern(
    r"\b(?:with|through|behind|under|using|wearing) (?:all |both )?(?:of )?(?:those|these|them|both|it|that|this|all that|all this|the lot|the whole lot|all three|everything|(?:that|this|those|these|the same) (?:filters?|gels?|modifiers?|box|softbox|umbrella|brolly|cloths?|tissue|silk|scrims?|diffusers?|dome|grid|lot|stack))"
    r"(?: (?:all |both |still )?(?:on|in place|fitted|up|there|in front|over (?:it|the (?:flash|head|lens))))?(?=\W*(?:$|[,.;?!]))", re.I)
"""What was told is spoken of as in its place."""
_TAKEN = frozenset({"loss", "filter_loss", "nd", "factor"})
WORN = _TAKEN | {"modifier", "camera_filter", "rows"}


def with_what_is_on(query: Query, scene: Scene) -> bool:
    """Whether a question of another kind takes what was told to hang in the light with it."""
    return any(f.quantity in _TAKEN for f in scene.facts) and not any(query.has(kind) for kind in _TAKEN) and _WITH_THOSE.search(query.text) is not None


_PASSES = Pattern(r"\b(?:pass|let|leav|transmit|giv)\w*\b", re.I)


def passes_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and one that passes a third?", after a cloth that passes a quarter: another share of the light in its place."""
    before = [f for f in scene.facts if f.quantity in _TAKEN and f.cue == "passed"]
    told = [f for f in query.facts if f.quantity in ("number", "share", "power")]
    if query.asks or len(before) != 1 or len(told) != 1 or len(query.facts) != 1 or not 0 < told[0].value < 1 or not _PASSES.search(query.text):
        return query, scene
    return replace(query, facts=(as_told(before[0], -math.log2(told[0].value), told[0]),), unplaced=(), unknown=()), scene
