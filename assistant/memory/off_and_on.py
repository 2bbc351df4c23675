"""One thing taken out of the light and another put back: "umbrella off, gel back on", "other way round: silk on, grid off"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.memory.taken_away import bared, nothing_on, of_the_thing
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Fact, Query
from assistant.records import replace

_LEAD = r"^\W*(?:(?:and|or|so|then|now|no|ok|okay|but|what if|if|what about|how about|actually|sorry|instead|with|(?:the )?other way (?:round|around|about)|vice versa|swap (?:them|those)(?: (?:round|over))?|the (?:reverse|opposite))\b\W*)*"
_TAKE = r"(?:(?:i |we )?(?:take|took|taking|pull|have|leave) )?(?:the |my |that )?(?:[a-z]+ )??"
_GO_ON = r"(?:(?:i |we )?(?:put|stick|have|keep|leave|with) )?(?:the |my |that )?(?:[a-z]+ )??"
_JOIN = r"(?:\s*[,;.]\s*|\s+)(?:and |but |then |with )*"
_OFF = rf"{_TAKE}(?P<{{}}>[a-z-]+)(?: is| comes| goes)? (?:off|out|gone|away)(?: again)?"
_ON = rf"{_GO_ON}(?P<{{}}>[a-z-]+)(?: is| comes| goes| stays)? (?:back )?(?:on|in)(?: again| instead)?"
_ENDS = r"(?: now| then| please| instead)*\W*$"
_OFF_AND_ON = Pattern(rf"{_LEAD}(?:{_OFF.format('gone')}{_JOIN}{_ON.format('back')}|{_ON.format('there')}{_JOIN}{_OFF.format('off')}){_ENDS}", re.I)


def says_off_and_on(query: Query, scene: Scene) -> re.Match[str] | None:
    """What is taken out and what is put back, where nothing else is said after a question."""
    told = query.asks or any(f.quantity not in ("modifier", "camera_filter", "remark") for f in query.facts)
    return _OFF_AND_ON.match(query.text) if scene.asks and not told else None


def off_and_on(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The scene without what the one thing takes, and with what the other takes, as each was told once."""
    said = says_off_and_on(query, scene)
    if said is None:
        return query, scene
    gone, back = (said["gone"] or said["off"]).lower(), (said["back"] or said["there"]).lower()
    out, put = _told(gone, scene, talk), _told(back, scene, talk)
    if out is None or put is None or out == put:
        return query, scene
    if out in scene.facts:
        scene = bared(scene, out)
    if put not in scene.facts:
        scene = replace(scene, facts=(*scene.facts, *_with_its_thing(put, talk)))
    return replace(query, text=" " * len(query.text), facts=(nothing_on(query),), asks=(), mentioned=(), unknown=(), unplaced=(), cues=query.cues - {"box_speed", "keep", out.unit, put.unit}), scene


def _told(word: str, scene: Scene, talk: Conversation) -> Fact | None:
    """The loss that was told with this word, now or before."""
    for known in (scene, *reversed(talk.past)):
        found = of_the_thing(word, known)
        if found is not None:
            return found
    return None


def _with_its_thing(loss: Fact, talk: Conversation) -> tuple[Fact, ...]:
    """A loss, and what hangs in the light for it, as they stood together."""
    before = next(old for old in reversed(talk.past) if loss in old.facts)
    return tuple(f for f in before.facts if f == loss or loss.unit and f.unit == loss.unit and f.quantity in ("modifier", "camera_filter") and f.quantity not in TAKES_LIGHT)
