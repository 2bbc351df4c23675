"""The leeway told anew: "if I only allow a third?", after "half a stop either way is fine: from where to where?"."""

from __future__ import annotations

import re

from assistant.memory.anew import as_told, lone
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace

_SO_MUCH = r"(?P<many>(?:a |one )?third|two[- ]thirds|(?:a |one )?quarter|three[- ]quarters|(?:a )?half|one|two|one and a half|a whole one)"
_LEADS = r"^\W*(?:(?:and|or|so|then|now|but|no|ok|what about|how about|what if|if|with|at|say|suppose)\b\W*)*"
_ENDS = r"(?: (?:instead|then|only|either way|each way|at most))*\W*$"
_ALLOWED = Pattern(rf"{_LEADS}(?:(?:my|the|its|her|his|your) (?:limit|tolerance|leeway|latitude)|i|we|you|it|they|the film|my film|slide film)(?:'s|'ll| is| was| were| only| just| can| could| will| would)* (?:(?:allow|accept|take|tolerate|stand|live with|put up with|forgive|permit)(?:s|ed)?(?: only| just)? )?(?:me |us )?{_SO_MUCH}{_ENDS}", re.I)
_PART_ALONE = Pattern(rf"{_LEADS}(?P<many>(?:a |one )?third|two[- ]thirds|three[- ]quarters|(?:a |one )quarter){_ENDS}", re.I)
_MANY = {"third": 1 / 3, "two-thirds": 2 / 3, "quarter": 0.25, "three-quarters": 0.75, "half": 0.5, "one": 1.0, "two": 2.0, "one and a half": 1.5, "a whole one": 1.0}
_OF_LEEWAY = frozenset({"near_limit", "far_limit", "depth_of_field", "distance", "stops", "aperture", "shutter"})
_BESIDE = frozenset({"relation", "loss", "filter_loss", "push", "nd", "count", "signed"})


def leeway_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """Another part of a stop, where one leeway was told in stops: no place that is a third of a metre off."""
    told = [f for f in scene.facts if f.quantity == "stops"]
    mine = lone(query, "number", "share", "power", "aperture", "ratio")
    if len(told) != 1 or mine is None or not scene.asks or scene.asks[0].quantity not in _OF_LEEWAY or any(f.quantity in _BESIDE for f in scene.facts):
        return query, scene
    said = _ALLOWED.match(query.text) or _PART_ALONE.match(query.text)
    if said is None:
        return query, scene
    many = said["many"].lower().replace(" thirds", "-thirds").replace(" quarters", "-quarters")
    value = _MANY.get(many) or _MANY[many.split(" ")[-1]]
    return replace(query, facts=(as_told(told[0], value, replace(mine, start=said.start("many"), end=said.end("many"), said=said["many"])),), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))
