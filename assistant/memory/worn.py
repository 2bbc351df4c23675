"""What hangs in the light still does: "and GN 45 m, 2.5 m, with those on, which aperture?", after what they take was asked."""

from __future__ import annotations

import math
import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Query
from assistant.records import replace

_WITH_THOSE = Pattern(
    r"\b(?:with|through|behind|under|using|wearing) (?:all |both )?(?:of )?(?:those|these|them|both|it|that|this|all that|all this|the lot|the whole lot|all three|everything|(?:that|this|those|these|the same) (?:filters?|gels?|modifiers?|box|softbox|umbrella|brolly|cloths?|tissue|silk|scrims?|diffusers?|dome|grid|lot|stack))"
    r"(?: (?:all |both |still )?(?:on|in place|fitted|up|there|in front|over (?:it|the (?:flash|head|lens))))?(?=\W*(?:$|[,.;?!]))", re.I)
"""What was told is spoken of as in its place."""
WORN = TAKES_LIGHT | {"modifier", "camera_filter", "rows"}


def with_what_is_on(query: Query, scene: Scene) -> bool:
    """Whether a question of another kind takes what was told to hang in the light with it."""
    return any(f.quantity in TAKES_LIGHT for f in scene.facts) and not any(query.has(kind) for kind in TAKES_LIGHT) and _WITH_THOSE.search(query.text) is not None


_PASSES = Pattern(r"\b(?:pass|let|leav|transmit|giv)\w*\b", re.I)


def passes_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and one that passes a third?", after a cloth that passes a quarter: another share of the light in its place."""
    before = [f for f in scene.facts if f.quantity in TAKES_LIGHT and f.cue == "passed"]
    told = [f for f in query.facts if f.quantity in ("number", "share", "power")]
    if query.asks or len(before) != 1 or len(told) != 1 or len(query.facts) != 1 or not 0 < told[0].value < 1 or not _PASSES.search(query.text):
        return query, scene
    return replace(query, facts=(as_told(before[0], -math.log2(told[0].value), told[0]),), unplaced=(), unknown=()), scene


_THE_OTHER_GLASS = Pattern(r"\b(?:the|an?|my|his|her) (?:(?:light|dark|deep|pale|strong|weak|other|darker|deeper|lighter|stronger|weaker|yellow|orange|red|green|blue|yellow-green) )+(?:one|filter|glass)\b|^\W*(?:(?:and|or|so|sorry|no|oh|what about|how about|what if it'?s|if it'?s|with|it'?s),? )*(?:a |the )?(?:yellow|orange|red|green|blue)(?: (?:one|filter|glass))?\b", re.I)
_OF_GLASS = frozenset({"factor", "filter_loss"})


def glass_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"sorry, it's the orange one, factor 4", after a yellow filter of factor 2: another glass in its place, and none on the flash."""
    before = [f for f in scene.facts if f.quantity in _OF_GLASS]
    told = [f for f in query.facts if f.quantity in ("factor", "filter_loss", "loss", "stops", "times")]
    rest = [f for f in query.facts if f not in told and f.quantity not in ("modifier", "camera_filter", "remark")]
    if query.asks or len(before) != 1 or len(told) != 1 or rest or told[0].value <= 0 or "gel" in query.text.lower() or not _THE_OTHER_GLASS.search(query.text) or any(f.quantity == "modifier" for f in scene.facts):
        return query, scene
    in_stops = told[0].quantity in ("filter_loss", "loss", "stops")
    stops = told[0].value if in_stops else math.log2(told[0].value)
    new = as_told(before[0], 2.0**stops if before[0].quantity == "factor" else stops, told[0])
    return replace(query, facts=(new,), unplaced=(), unknown=(), cues=query.cues - {"gel", "loss"}), replace(scene, facts=tuple(f for f in scene.facts if f is not before[0]))
