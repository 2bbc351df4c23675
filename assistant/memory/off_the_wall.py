"""A follow-up in which the subject is taken away from what hangs behind, "drag her two feet further from the wall, and the light with her".

With the light along, only the way from the subject to the wall grows; where the light stays, its way to the subject shrinks by as much.
"""

from __future__ import annotations

import re

from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace

_WALL = r"(?:the |that |my )?(?:wall|backdrop|background|paper|curtain|seamless|screen|cloth|sheet)"
_WHO = r"(?:her|him|them|it all|everybody|everyone|(?:the |my )?(?:sitter|subject|couple|group|model|bride|pair|lot|set-?up))"
_THE_LIGHT = r"(?:(?:the |my )?(?:light|flash|lamp|key|head|strobe)s?)"
_MOVES = r"(?:drag|pull|bring|move|shift|take|walk|push|step|get)(?:ging|ing|s)?"
_AWAY = Pattern(rf"\b{_MOVES} (?P<both>{_THE_LIGHT} (?:and|with) )?(?P<who>{_WHO})(?P<and>,? (?:and|with) {_THE_LIGHT})?\b[^.?!]{{0,40}}\b(?P<way>(?:away|further|farther|more|off|out)(?: away)? from|off|(?:nearer|closer)(?: to)?|towards?) {_WALL}\b(?P<rest>[^.?!]{{0,60}})", re.I)
_ALONG = Pattern(rf"\b{_THE_LIGHT} (?:(?:comes?|goes|moves?|moving|going|coming|along) )*(?:with (?:her|him|them|it)|too|as well|along|likewise|by as much|the same)\b|\b(?:with|and) {_THE_LIGHT}\W*$|\btogether\b|\bboth\b", re.I)
_STAYS = Pattern(rf"\b{_THE_LIGHT} (?:stays|is left|left|remains|where it (?:is|was)|does(?: not|n't) move|unmoved)\b", re.I)


def off_the_wall(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The subject so much farther from what hangs behind, or nearer to it; the light with it, or as it stands."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    behind = [f for f in scene.facts if f.quantity == "gap" and f.of == "backdrop"]
    lights = [f for f in scene.facts if f.quantity == "distance" and f.of != "backdrop"]
    said = _AWAY.search(query.text)
    if mine is None or mine.quantity not in ("move", "distance") or len(behind) != 1 or len(lights) != 1 or said is None or mine.bad:
        return query, scene
    nearer = said["way"].lower().startswith(("near", "close", "toward"))
    by = -abs(mine.value) if nearer else abs(mine.value)
    moved = [as_told(behind[0], behind[0].value + by, mine)]
    along = said["and"] is not None or said["both"] is not None or _ALONG.search(said["rest"]) is not None
    if not along:
        if _STAYS.search(query.text) is None:
            return query.with_facts([]), replace(scene, facts=())  # whether the light goes along is not said
        moved.append(as_told(lights[0], lights[0].value - by, mine))
    if any(f.value <= 0 for f in moved):
        return query, scene
    return replace(query, facts=tuple(moved), unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f not in (behind[0], *(lights if not along else []))))
