"""A lens asked of anew in a half-sentence: the other limit of what is sharp, another size of the image."""

from __future__ import annotations

import math
import re

from assistant.memory.anew import lone
from assistant.memory.bare_again import EITHER
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.units import LENGTH

_THE_OTHER = Pattern(
    r"^\W*(?:(?:and|so|now|then|ok|okay|what about|how about|what(?:'s| is)|where(?:'s| is)) )*(?:the )?"
    r"(?:(?P<far>far(?:thest|ther)?|furthest|back|rear|distant)|(?P<near>near(?:est|er)?|close(?:st|r)?|front)|other)"
    r"(?: (?:one|limit|end|side|edge|point|sharp|bit|part))*(?: (?:then|please|too|as well|of (?:it|that)))*\W*$", re.I)
_IT = r"(?: (?:does|do|will|would|is|can))?(?: (?:it|that|this|(?:the )?(?:sharp(?:ness)?|focus|zone|sharp (?:zone|part|bit|range)|depth|range)|things|everything))?(?: (?:does|be|being|to be))?"
_WHERE_IT_ENDS = Pattern(
    rf"^\W*(?:(?:and|so|now|then|ok|okay|but|or) )*(?:(?P<far>where{_IT} (?:stops?|ends?|runs? out|finish(?:es)?|gives? out|leaves? off|goes? soft|lets? go)|how far(?: back| out| away)?{_IT}(?: (?:go|reach|extend|run|stretch|carry|last|hold|sharp)(?:es|s)?)?(?: (?:back|to|out))?)"
    rf"|(?P<near>where{_IT} (?:starts?|begins?|come in|set in)|how (?:near|close)(?: in)?{_IT}(?: (?:comes?|starts?|begins?|goes?|gets?|sharp)(?: (?:in|to|sharp|being sharp))?)?)"
    r"|(?P<deep>how (?:deep|thick|much)(?: (?:is|does) (?:that|it|this))?(?: (?:come to|make))?))(?: (?:then|now|please|altogether|in all|together|in total))*\W*$", re.I)
"""Where the sharp zone ends or begins, with nothing else said."""
_LIMITS = ("near_limit", "far_limit")
_OF_THE_ZONE = (*_LIMITS, "depth_of_field")


def other_limit(query: Query, scene: Scene) -> str:
    """The end of the sharp zone that a half-sentence asks for, or how deep it is, where one of these was asked before; else nothing."""
    asked = [a.quantity for a in scene.asks if a.quantity in _OF_THE_ZONE]
    if not asked or any(f.quantity not in ("remark", "number") for f in query.facts):
        return ""
    ends = _WHERE_IT_ENDS.match(query.text)
    if ends is not None:
        return "far_limit" if ends["far"] else "near_limit" if ends["near"] else "depth_of_field"
    said = _THE_OTHER.match(query.text) if len(asked) == 1 else None
    if said is None or any(a.quantity not in _LIMITS for a in query.asks):
        return ""
    if said["far"] or said["near"]:
        return "far_limit" if said["far"] else "near_limit"
    return _LIMITS[1 - _LIMITS.index(asked[0])] if asked[0] in _LIMITS else ""


def limit_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and the far one?" after the near limit was asked: the other end of the same zone."""
    other = other_limit(query, scene)
    if not other:
        return _focused_there(query, scene), scene
    return replace(query, facts=(), asks=(Ask(other, "", scene.asks[0].unit),), unplaced=(), mentioned=()), scene


_THERE = Pattern(r"\bfocus\w*(?: the lens)? (?:there|at (?:that|it)|on (?:that|it))\b", re.I)


def _focused_there(query: Query, scene: Scene) -> Query:
    """"and the near limit when I focus there?" after the hyperfocal distance: focused at it."""
    there = [a.quantity for a in scene.asks] == ["hyperfocal"] and not query.facts and query.asks_for(*_LIMITS) and _THERE.search(query.text)
    return replace(query, cues=query.cues | {"hyperfocal"}) if there else query


_AT_THE_HYPERFOCAL = Pattern(r",? (?:and|then) (?:i |we )?(?:re)?(?:set|put|turn|move|rack|focus)(?:ed)?(?: (?:the |my )?(?:focus|lens|ring|it))? (?:at|to|on|for) (?:the|its) (?:new )?hyperfocal(?: (?:distance|point))?(?: (?:for|of|at) (?:that|it|this))?(?=\W*$)", re.I)


def at_its_hyperfocal(text: str, talk: Conversation) -> str:
    """"what if I open to f/4 and set the focus to the hyperfocal for that?" of a lens that is so focused already: at f/4."""
    stands = talk.judged.query if talk.judged is not None and talk.judged.claim else None
    return _AT_THE_HYPERFOCAL.sub("", text) if stands is not None and "hyperfocal" in stands.cues else text


_NO_PLACE = frozenset({"distance", "gap", "path", "camera_distance", "focus_distance", "move", "guide_number"})


def sharp_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"from 3 metres", after "sharp from 2.5 m to infinity": the near end anew; where both ends were told, it may be either, and is asked back."""
    mine = lone(query, "distance")
    told = [f for f in scene.facts if f.quantity == "sharp_limit" and math.isfinite(f.value)]
    ends = [f for f in scene.facts if f.quantity == "distance"]
    if mine is not None and not mine.of and "in_focus" in scene.cues and sorted(f.of for f in ends) == ["back", "front"] and any(f.quantity == "focal_length" for f in scene.facts):
        return replace(query, facts=(replace(mine, quantity="number", cue=EITHER),)), scene
    if mine is None or mine.of not in ("", "front") or not told or any(f.quantity in _NO_PLACE for f in scene.facts):
        return query, scene
    if len(told) > 1:
        return replace(query, facts=(replace(mine, quantity="number", cue=EITHER),)), scene
    far = tuple(replace(f, origin="kept") for f in scene.facts if f.quantity == "sharp_limit" and f is not told[0])
    return replace(query, facts=(replace(mine, quantity="sharp_limit", of=told[0].of, cue=told[0].cue), *far)), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "sharp_limit"))


_ON_THE_SCREEN = Pattern(r"\s*(?:tall|long|wide|high|across)? ?(?:on|across|at) (?:the |my )?(?:ground ?|focus+ing )?(?:glass|screen)\b", re.I)
"""After the size of an image: the glass is no lens."""


_IMAGE_NAMED = Pattern(r"\b(?:image|on (?:the |my )?(?:film|neg|negative|glass|screen))\b", re.I)


def image_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"now she wants 80" after the size of a thing and of its image: another image."""
    images = [f for f in scene.facts if f.quantity == "image_size"]
    told = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if len(images) != 1 or told is None or told.quantity not in ("number", "focal_length", "distance", "film_speed", "size") or told.bad or "lens" in query.cues and not _ON_THE_SCREEN.match(query.text, told.end):
        return query, scene
    value = told.value if told.unit in LENGTH else told.value * LENGTH[images[0].unit]
    things = [f for f in scene.facts if f.quantity == "object_size" and f.value > 0]
    if len(things) == 1 and told.unit in LENGTH and 0 < value and not _IMAGE_NAMED.search(query.text) and abs(math.log(value / things[0].value)) < abs(math.log(value / images[0].value)):  # "and 1 m wide?": nearer to the thing's size than to its image's
        thing = replace(things[0], value=value, unit=told.unit, start=told.start, end=told.end, said=told.said, origin="said")
        return replace(query, facts=(thing,), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not things[0]))
    new = replace(images[0], value=value, start=told.start, end=told.end, said=told.said, origin="said")
    return replace(query, facts=(new,), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not images[0]))
