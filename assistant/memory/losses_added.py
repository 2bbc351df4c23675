"""Something more in the light, beside what is in it already: "and if a grid takes one more stop?", "and tissue, half a stop on top of those"."""

from __future__ import annotations

import re

from assistant.memory.anew import MORE
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Query
from assistant.records import replace

_WORN = ("modifier", "camera_filter")
_ON_IT_TOO = frozenset({"grid", "gel", "scrim", "diffuser", "tissue"})
"""What goes on or in front of another thing in the light, and seldom in its place."""
_IN_ITS_PLACE = Pattern(r"\b(?:instead|rather|swap\w*|replac\w*|chang\w*|not|no|only|just|off|actually|sorry|i mean(?:t)?|make (?:it|that)|without|alone|on its own|bare)\b", re.I)


def loss_more(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and if a grid takes one more stop?", "the grid in it takes one", "and tissue, half a stop on top": beside what is lost already."""
    query = _taken_on_top(query, scene)
    new = [f for f in query.facts if f.quantity in TAKES_LIGHT]
    old = tuple(f for f in scene.facts if new and f.quantity == new[0].quantity)
    if not old or len(new) != 1:
        return query, scene
    other = new[0].unit in _ON_IT_TOO and all(f.unit and f.unit != new[0].unit for f in old) and not _IN_ITS_PLACE.search(query.text)
    if not (other or MORE.search(query.text)):
        return query, scene
    return replace(query, facts=(*old, *query.facts)), replace(scene, facts=tuple(f for f in scene.facts if f not in old))


_ON_TOP = Pattern(r"\b(?:on top|as well|too|also|plus|besides|another|extra|additional|in front|over it|over that|again)\b", re.I)
_LOST_STOPS = frozenset({"loss", "filter_loss"})


def _taken_on_top(query: Query, scene: Scene) -> Query:
    """"and tissue, half a stop more on top of those" after a gel and a grid: what the tissue takes."""
    worn = [f for f in query.facts if f.quantity in _WORN and f.unit != "BARE"]
    told = [f for f in query.facts if f.quantity == "stops" and not f.of and not f.bad]
    if len(worn) != 1 or len(told) != 1 or len(query.facts) != 2 or worn[0].start > told[0].start or query.asks or not any(f.quantity in _LOST_STOPS for f in scene.facts) or not _ON_TOP.search(query.text):
        return query
    lost = replace(told[0], quantity="loss" if worn[0].quantity == "modifier" else "filter_loss", value=abs(told[0].value), unit=worn[0].unit, of=worn[0].of, cue="")
    return replace(query, facts=(worn[0], lost), cues=query.cues - {"more", "less"})
