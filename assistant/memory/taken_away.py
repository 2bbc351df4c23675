"""What stands in the light taken away again, by the word it was told with: "a lantern that eats two stops", then "and without the lantern?"."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_THING = r"(?P<{}>[a-z]+(?:-[a-z]+)*)"
_AWAY = r"(?:off|out|away|down|gone|removed)"
_WITHOUT = Pattern(
    rf"\b(?:without|los(?:e|ing)|drop(?:ping)?|remov(?:e|ing)|forget|no|minus|ditch(?:ing)?|skip(?:ping)?|(?:leav|tak|whipp|pull|stripp)(?:e|ing)? {_AWAY}) (?:the |my |that |this |any )?(?:[a-z]+ ){{0,2}}?{_THING.format('one')}(?: then| now| please| at all)*\W*$"
    rf"|\b(?:with|take|taking|pull|pulling|whip|leave|leaving|if i take) (?:the |my |that |this )(?:[a-z]+ ){{0,2}}?{_THING.format('two')} {_AWAY}(?: of it)?\W*$|(?:^|\b(?:the|my|that) )(?:[a-z]+ )?{_THING.format('three')} {_AWAY}\W*$", re.I)
_TAKES_LIGHT = ("loss", "filter_loss", "nd", "factor")
_CLAUSE = Pattern(r"[.;?!:](?!\d)|,(?!\d)(?! (?:that|which))", re.I)


def takes_away(query: Query, scene: Scene) -> Fact | None:
    """The one loss whose thing is taken away here; None where it is none of them, or not clear which."""
    said = None if query.asks or any(f.quantity not in ("modifier", "camera_filter", "remark") for f in query.facts) else _WITHOUT.search(query.text)
    if said is None:
        return None
    word = (said["one"] or said["two"] or said["three"]).lower()
    told = [f for f in scene.facts if f.quantity in _TAKES_LIGHT and f.start < f.end and scene.text[f.start : f.end].strip() == f.said.strip()]
    mine = [f for f in told if word in _words_about(f, scene, told)]
    return mine[0] if len(mine) == 1 else None


def _words_about(loss: Fact, scene: Scene, told: list[Fact]) -> list[str]:
    """The words of the clause that a loss is told in, as far as no other loss is."""
    begin = max([0, *(m.end() for m in _CLAUSE.finditer(scene.text[: loss.start])), *(f.end for f in told if f.end <= loss.start)])
    after = _CLAUSE.search(scene.text[loss.end :])
    end = min([len(scene.text) if after is None else loss.end + after.start(), *(f.start for f in told if f.start >= loss.end)])
    return patterns.findall(r"[a-z]+(?:-[a-z]+)*", f"{scene.text[begin : loss.start]} {scene.text[loss.end : end]}".lower())


def taken_away(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and without the lantern?": what it took is there again, and everything else stays."""
    gone = takes_away(query, scene)
    if gone is None:
        return query, scene
    bare = Fact("camera_filter", 0.0, "BARE", "camera", end=len(query.text), said=query.text.strip())  # told, though nothing is on
    return replace(query, facts=(bare,), unknown=(), unplaced=(), cues=query.cues - {"box_speed", gone.unit}), replace(scene, facts=tuple(f for f in scene.facts if f is not gone and not (f.quantity in ("modifier", "camera_filter") and f.unit and f.unit == gone.unit)), cues=scene.cues - {gone.unit})
