"""A group told anew in a half-sentence: how deep it stands, "and if they squeeze up into 0.8 m?", "spread over two metres"."""

from __future__ import annotations

import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace

_OF_DEPTH = Pattern(
    r"\b(?:squeez|squash|bunch|crowd|pack|cram|huddl|shuffl|squish|tighten|gather|compress|jam)(?:e|es|ed|ing|s|le|les|led|ling)?\b|\b(?:close|closes|closed|closing|move|moves|moved|press|pressed|push|pushed|stand|come|step|draw|pull) (?:(?:up|in|right|themselves|a bit|them) )*(?:together|closer together|closer to each other|tighter)\b"
    r"|\bclos(?:e|es|ed|ing) (?:up|ranks|the gap)\b|\b(?:spread|spreads|spreading|spaced|stretch|stretched|stretches|strung|fan|fanned|fans|opened|open|thin|thinned|drawn)\b(?: \w+){0,2} (?:out|over|across|to)\b|\b(?:spread|stretch)(?:ed|es|s)?\b"
    r"|\b(?:depth|deep|deeper|shallower|apart)\b|\b(?:take|takes|taking|fill|fills|occupy|occupies|occupying)(?: up| only| just| all of)*\b", re.I)
_OF_THE_LIGHT = Pattern(r"\b(?:light|flash|lamp|head|strobe|box|it'?s|i|we|camera|lens|gun)\b(?! (?:make|have|get|let|squeeze|bunch|pack|spread|crowd)\b)(?! the(?:m|y)\b)", re.I)
_MADE = Pattern(r"^\W*(?:(?:and|or|so|then|now|no|well|sorry|actually|what about|how about|what if(?: it'?s| it is| it were| it was)?|make (?:it|that)|say|for|with|if it'?s|if it were)\b\W*)*[\w.,]+(?: and a (?:half|quarter))? ?(?:m|metres?|meters?|ft|feet|foot|cm|centimetres?|inches|in)?(?: (?:instead|then|now|please))*\W*$", re.I)
_BY_ITS_WORDS = frozenset({"depth_of_field", "coverage", "more", "less", "further", "closer", "up", "move"})
"""What the words of a group that stands closer or wider would be taken for in a question of its own."""
_APART = Pattern(r"\bapart\b", re.I)
_LENGTHS = ("distance", "gap", "move", "sharp_limit", "focus_distance", "max_distance", "size")


def depth_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The new depth of the group in the place of the old one, and nobody moves the light."""
    deep = [f for f in scene.facts if f.quantity == "gap" and f.of == "back"]
    told = [f for f in query.facts if f.quantity in _LENGTHS]
    others = [f for f in query.facts if f not in told and f.quantity not in ("place", "rows", "remark")]
    if len(deep) != 1 or len(told) != 1 or told[0].bad or any(f.quantity != "count" for f in others) or any(a.quantity not in _BY_ITS_WORDS for a in query.asks):
        return query, scene
    where_is_asked = bool(scene.asks) and scene.asks[0].quantity == "distance" and not any(f.quantity == "distance" for f in scene.facts)
    if told[0].quantity != "gap" and not (_OF_DEPTH.search(query.text) and not _OF_THE_LIGHT.search(query.text)) and not (where_is_asked and _MADE.match(query.text)):
        return query, scene
    new = replace(as_told(deep[0], abs(told[0].value), told[0]), unit=told[0].unit, cue=deep[0].cue if _APART.search(query.text) else "in_all")
    return replace(query, facts=(new,), asks=(), unknown=(), cues=query.cues - _BY_ITS_WORDS, unplaced=tuple(u for u in query.unplaced if u != told[0].said)), replace(scene, facts=tuple(f for f in scene.facts if f is not deep[0]))


_DIFFERENCE = Pattern(r"\b(?:difference|spread|drop|fall-?off|gap)\b", re.I)


def both_of_them_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"I could move the flash back so it's 5 m and 7 m": both rows anew, the nearer one first or last."""
    said, rows = [f for f in query.facts if f.quantity == "distance"], [f for f in scene.facts if f.quantity == "distance"]
    if len(said) != 2 or {f.of for f in rows} != {"front", "back"} or any(f.of or f.bad for f in said) or len(query.facts) > 2 or said[0].value == said[1].value or query.mentioned or not scene.asks or scene.asks[0].quantity != "stops":
        return query, scene
    near = min(said, key=lambda f: f.value)
    asks = () if _DIFFERENCE.search(query.text) else query.asks
    return replace(query, asks=asks, facts=tuple(replace(f, of="front" if f is near else "back") for f in said)), replace(scene, facts=tuple(f for f in scene.facts if f not in rows))


def one_of_two_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and the near one at 4 ft?" of two people in one light: that one's place, and the other stays."""
    places = [f for f in scene.facts if f.quantity == "distance"]
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if mine is None or mine.quantity != "distance" or mine.of not in ("front", "back") or mine.bad or len(places) != 2 or any(f.of for f in places) or not scene.asks or scene.asks[0].quantity != "stops":
        return query, scene
    old = min(places, key=lambda f: f.value) if mine.of == "front" else max(places, key=lambda f: f.value)
    new = replace(as_told(old, mine.value, mine), unit=mine.unit, start=old.start, end=old.end)
    told = tuple(new if f is old else replace(f, origin="kept") for f in places)
    return replace(query, facts=told), replace(scene, facts=tuple(f for f in scene.facts if f not in places))
