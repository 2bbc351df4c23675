"""More of the same in the light: "a second layer of it", "and with two sheets of that gel?", "another net like it"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.nth import NTH, nth_told
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density
from assistant.query import Fact, Query
from assistant.records import replace

_SHEET = r"(?:layers?|sheets?|pieces?|thickness(?:es)?|folds?|plies|ply|gels?|silks?|scrims?|nets?|veils?|frosts?|tissues?|hankies|hankie|diffusers?|cloths?|filters?)"
_ONE_MORE = Pattern(rf"\b(?:a |the )?(?P<which>second|third|another|one more|an extra|a further)(?: \w+)? {_SHEET}\b|\b(?P<again>another|a second|a third) (?:one )?(?:of (?:the same|them|it|those|that)|the same|just like it|like it)\b")
_SO_MANY = Pattern(rf"\b(?P<many>two|three|four|2|3|4|double|both)(?: \w+)? {_SHEET}\b|\bdoubl(?:e|ed|ing) (?:up |over )?(?:the |that |this |my )?{_SHEET}\b|\b(?:fold(?:ed)?|doubled) (?:it |the \w+ )?(?:over|double|in two)\b")
_MANY = {"two": 2.0, "three": 3.0, "four": 4.0, "2": 2.0, "3": 3.0, "4": 4.0, "double": 2.0, "both": 2.0}
_LOST = ("loss", "filter_loss")


def layered(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """As many times the loss of one as there are of them now; what one loses was told."""
    said = query.text.lower()
    one, many = _ONE_MORE.search(said), _SO_MANY.search(said)
    before = next((f.value for f in reversed(scene.facts) if f.quantity == "rows"), 1.0)
    nth = nth_told(said, before) if one is None and any(f.quantity == "rows" for f in scene.facts) else None
    one = NTH.search(said) if nth is not None else one
    found = one or many
    fewer = None if query.asks else _one_less(query, scene)
    if fewer is not None:
        return fewer
    again = None if found is not None else (None if query.asks else _as_many_now(query, scene)) or _so_many_of_them(query, scene)
    if again is not None:
        return again
    if found is None or query.asks:
        return query, scene
    others = [f for f in query.facts if not (f.start < found.end() and f.end > found.start())]
    whole = [f for f in others if f.quantity in ("stops", "loss") and _IN_ALL.search(query.text[: f.start]) and not _EACH.match(query.text, f.end)]
    others = [f for f in others if f not in whole[:1]]
    if any(f.quantity in (*_LOST, "stops", "aperture", "number", "guide_number", "distance") for f in others):
        return query, scene
    lost = _whose(query, scene)
    if lost is None:
        return query, scene
    now = nth or before + 1 if one else _MANY.get((many["many"] or "two") if many else "two", 2.0)
    rows = Fact("rows", now, start=found.start(), end=found.end(), said=found.group())
    kept = tuple(f for f in others if not (f.quantity in ("modifier", "camera_filter", "rows", "shutter", "time", "count") and f.start < found.end() + 40))
    total = whole[0].value if whole else lost.value / before * now
    facts = tuple(replace(f, value=total) if f is lost else f for f in scene.facts if f.quantity != "rows")
    return replace(query, facts=(*kept, rows), unplaced=()), replace(scene, facts=facts)


_IN_ALL = Pattern(r"(?:\b(?:so|that's|that is|that makes|makes|making|thus|hence|total(?:ling)?|together|in all|which is|call it|i'd say)|=|[,;:–-])(?: (?:now|then|about|say|it's|a loss of|it costs|they cost|they take|i lose|i'm losing|that's))* $", re.I)
_EACH = Pattern(r"\W*(?:each|apiece|per|every)\b", re.I)
"""Stops that are told beside the new number of sheets are what all of them take: "two sheets, so two stops"."""


_TAKE_ONE = Pattern(rf"\b(?:take|pull|peel|strip|lose|drop|remove|whip|without)(?:ing)? (?:just |only )?(?:one|a|an|the (?:second|other|third|last|outer|inner))(?: (?:of (?:them|those|these|the)))?(?: {_SHEET})?\b(?: (?:off|out|away|down))?", re.I)


def _one_less(query: Query, scene: Scene) -> Pair | None:
    """"what if I pull one layer off?" of two that were told: as much less as one of them takes."""
    rows = [f for f in scene.facts if f.quantity == "rows" and f.value > 1]
    lost = [f for f in scene.facts if f.quantity in _LOST and f.value]
    if len(rows) != 1 or len(lost) != 1 or any(f.quantity not in ("modifier", "camera_filter", "rows", "remark", "number", "count", "push") for f in query.facts) or not _TAKE_ONE.search(query.text.lower()):
        return None
    left = rows[0].value - 1
    facts = tuple(replace(f, value=f.value / rows[0].value * left) if f is lost[0] else f for f in scene.facts if f is not rows[0])
    return replace(query, text=" " * len(query.text), cues=query.cues - {"pull", "push"}, facts=(replace(rows[0], value=left, start=0, end=len(query.text), said=query.text.strip(), origin="said"),), unplaced=(), unknown=()), replace(scene, facts=facts)


_BARE = Pattern(r"^\W*(?:(?:and|or|then|what about|how about|what if|with|now)\b\W*)*[a-z\d]+(?: of (?:them|it|those))?\W*$", re.I)


def _as_many_now(query: Query, scene: Scene) -> Pair | None:
    """"four?" after "two layers?": so many layers, and neither f/4 nor four metres."""
    rows = [f for f in scene.facts if f.quantity == "rows" and (_SO_MANY.search(f.said.lower()) or _ONE_MORE.search(f.said.lower()))]
    mine = query.facts[0] if len(query.facts) == 1 else None
    if len(rows) != 1 or mine is None or mine.quantity != "number" or mine.bad or not 1 <= mine.value == int(mine.value) <= 8 or not _BARE.match(query.text):
        return None
    lost = [f for f in scene.facts if f.quantity in _LOST and f.value]
    if len(lost) != 1:
        return None
    facts = tuple(replace(f, value=f.value / rows[0].value * mine.value) if f is lost[0] else f for f in scene.facts if f is not rows[0])
    return replace(query, facts=(replace(rows[0], value=mine.value, start=mine.start, end=mine.end, origin="said"),), unplaced=()), replace(scene, facts=facts)


_OF_THEM = Pattern(r"^\W*(?:(?:and|or|then|so|now|what about|how about|what if|(?:what|which) (?:aperture|f-?stop|stop|f)(?: (?:is it|do i (?:set|need|use)))?|with|through|i use|i put|we use)\b\W*)*(?P<many>two|three|four|2|3|4) (?:of (?:them|'?em|those|these|the same)|layers|together|on top of each other|stacked)(?: (?:then|together|stacked|up|on|over it|in front))*(?:,? (?:the same|what (?:aperture|f-?stop|stop|now)|which (?:aperture|f-?stop)))*\W*$", re.I)
_OF_THE_LOSS = frozenset({*_LOST, "modifier", "camera_filter", "remark", "place"})


def _so_many_of_them(query: Query, scene: Scene) -> Pair | None:
    """"two of them?" after what one gel takes, and nothing besides: two gels, since no flash is spoken of."""
    said = _OF_THEM.match(query.text)
    lost = [f for f in scene.facts if f.quantity in _LOST and f.value]
    if said is None or len(lost) != 1 or not scene.asks or scene.asks[0].quantity not in ("stops", "factor", "aperture") or any(a.quantity != scene.asks[0].quantity for a in query.asks):
        return None
    read = {"aperture"} if scene.asks[0].quantity == "aperture" else set()
    if not {f.quantity for f in scene.facts} <= _OF_THE_LOSS | read or any(f.quantity not in ("count", "number", "rows") for f in query.facts):
        return None
    many = _MANY[said["many"].lower()]
    rows = Fact("rows", many, start=said.start("many"), end=said.end(), said=said.group("many"))
    facts = tuple(replace(f, value=f.value * many) if f is lost[0] else f for f in scene.facts)
    return replace(query, facts=(rows,), unplaced=()), replace(scene, facts=facts)


def _whose(query: Query, scene: Scene) -> Fact | None:
    """The loss of what is named again, or the only one there is."""
    lost = [f for f in scene.facts if f.quantity in _LOST and f.value]
    named = {f.unit for f in query.facts if f.quantity in ("modifier", "camera_filter")}
    mine = [f for f in lost if f.unit in named] if named else lost
    if not mine and len(lost) == 1 and not lost[0].unit:
        mine = lost
    return mine[0] if len(mine) == 1 else None


ON_TOP = Pattern(r"\b(?:stack\w*|on top|on it|with it|over it|in front|add\w*|another|as well|too|also|plus|together|besides?|behind it)\b", re.I)
"""A filter beside the one that was told, and not instead of it."""
_FILTERS = ("nd", "filter_loss")


def stacked(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and with a 0.3 stacked on it?" after a filter: both of them."""
    told = [f for f in scene.facts if f.quantity in _FILTERS]
    if not told or query.asks or len(query.facts) != 1 or not ON_TOP.search(query.text):
        return query, scene
    mine = query.facts[0]
    if mine.quantity in ("number", "aperture") and "f" not in mine.said.lower() and 0 < mine.value < 5 and all(f.unit == "density" for f in told):
        mine = replace(mine, quantity="nd", value=stops_from_density(mine.value), unit="density", of="camera", cue="")
    if mine.quantity not in _FILTERS:
        return query, scene
    return replace(query, facts=(*(replace(f, origin="kept") for f in told), mine), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f not in told))
