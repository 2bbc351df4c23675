"""A place told anew with a bare number, by what stands there: "and the vase at 2.5?", "and the groom, he was at 2.5", "no, to 12" of a way."""

from __future__ import annotations

import math
import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.units import LENGTH

_LEAD = r"^\W*(?:(?:and|or|but|so|then|now|ok|if|with|say|what if|what about|how about|next)\b\W*)*"
_THING = r"(?:the |my |her |his |our |a |an |another )(?:(?:other|second|third|next|little|small|big|tall|old|red|blue|white|black|green) )?(?P<thing>[a-z]{3,14})"
_STANDS = Pattern(rf"{_LEAD}{_THING}(?:,? (?:he|she|it|they|who|which|that))?(?:'s| is| was| were| are| stands?| stood| sits?| sat| standing| sitting)?(?: only| just| about| back| out| over)* at(?: about| only| just)? $", re.I)
_ENDS = Pattern(r"\s*(?:away|then|now|instead|off|from it|from the (?:flash|light))?\s*[?.!]*\s*$", re.I)
_NO_THING = frozenset({
    "lens", "ring", "iris", "camera", "aperture", "opening", "stop", "flash", "light", "lights", "lamp", "head", "gun", "strobe", "meter", "key", "fill", "rim", "hair", "main", "kicker", "back", "shutter", "power", "film", "iso", "speed", "time", "exposure",
    "wall", "background", "backdrop", "paper", "sky", "room", "window", "ambient", "ceiling", "same", "one", "other", "box", "softbox", "umbrella", "front", "row", "shadow", "shadows", "reading", "zoom", "end", "ratio", "dial", "setting", "filter", "gel", "sun",
    "unit", "second", "first", "third", "shot", "frame", "focus", "subject", "face", "cheek", "picture", "scene", "flashgun", "speedlight", "hall", "church", "street", "bracket",
})
"""What has an f-number, a reading or a setting of its own, or is no thing that stands somewhere."""
_SET_FOR = Pattern(r"\b(?:set|setting|expos\w+|right|correct\w*|metered|calculated|worked out|spot on|good|fine)\b[^.;?!\d]*$", re.I)
_READS = Pattern(r"\b(?:reads?|meters?|metered|reading|measures?|measured)\b", re.I)
_TIMES = 8.0
"""The most by which the new place is farther or nearer than the old one."""
_NUMBERS = ("number", "aperture", "film_speed")


def thing_placed(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """Another thing in the same light: its distance, in the unit of the one before it; where the exposure was set for stays."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if mine is None or mine.bad or mine.of or not _ENDS.match(query.text, mine.end):
        return query, scene
    said = _STANDS.match(query.text[: mine.start])
    old = _stood(scene, talk)
    if said is None or old is None or said["thing"].lower() in _NO_THING:
        return query, scene
    if mine.quantity == "distance":
        value, unit = mine.value, mine.unit
    elif mine.quantity in _NUMBERS and not any(c.isalpha() for c in mine.said):
        value, unit = mine.value * LENGTH[old.unit], old.unit
        if any(f.quantity == "aperture" for f in scene.facts) and _READS.search(scene.text):
            return query, scene  # "the face reads f/4; and the vase at 2.8": what it reads
    else:
        return query, scene
    if value <= 0 or not 1 / _TIMES <= value / old.value <= _TIMES:
        return query, scene
    new = replace(mine, quantity="distance", value=value, unit=unit, of=old.of, cue="", other=math.nan, start=old.start, end=old.end)
    others = [f for f in scene.facts if f.quantity == "distance" and f is not old]
    if others and others[0].start > new.start:  # what it was set for goes first
        new, others = replace(new, start=others[0].start, end=others[0].end), [replace(others[0], start=old.start, end=old.end)]
    facts = (*(replace(f, origin="kept") for f in others), new)
    return replace(query, facts=facts, unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "distance"))


def _stood(scene: Scene, talk: Conversation) -> Fact | None:
    """The place that the new one is told in the place of: the only one, or of two the one that nothing was set for."""
    places = [f for f in scene.facts if f.quantity == "distance"]
    if any(f.of or f.unit not in LENGTH or f.value <= 0 for f in places) or not scene.asks:
        return None
    if len(places) == 1:
        return places[0]
    if len(places) != 2:
        return None
    last = [f.value for f in talk.last_query.facts if f.quantity == "distance" and f.origin == "said"] if talk.last_query is not None and talk.past else []
    if len(last) == 1:
        return next((f for f in places if f.value == last[0]), None)  # the one that was told anew before
    places.sort(key=lambda f: f.start)
    since = (0, places[0].end)
    free = [f for f, begins in zip(places, since) if not _SET_FOR.search(scene.text[begins : f.start])]
    return free[0] if len(free) == 1 else None


_AN_END = Pattern(
    r"^\W*(?:(?:and|or|then|so|now|no|nope|sorry|oops|wait|actually|what about|how about|what if|make (?:it|that)|i mean(?:t)?|i said|say|rather)\b\W*)*(?:it was |it's |i (?:moved|went|go) (?:it )?)?(?P<end>to|from)\W*(?:about )?$", re.I)


def way_end_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, to 12" after "from 6 to 9 feet": the other end of the way stays where it is."""
    told = [f for f in scene.facts if f.quantity == "length_range"]
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if mine is None or mine.bad or mine.of or mine.quantity not in ("distance", *_NUMBERS) or len(told) != 1 or told[0].unit not in LENGTH or any(f.quantity == "distance" for f in scene.facts):
        return query, scene
    said = _AN_END.match(query.text[: mine.start])
    if said is None or not _ENDS.match(query.text, mine.end) or mine.quantity != "distance" and any(c.isalpha() for c in mine.said.strip()) and not mine.said.strip().isalpha():
        return query, scene
    value = mine.value if mine.quantity == "distance" else mine.value * LENGTH[told[0].unit]
    if value <= 0:
        return query, scene
    ends = {"value": value} if said["end"].lower() == "from" else {"other": value}
    new = replace(told[0], **ends, said=query.text[mine.start : mine.end], origin="said")
    return replace(query, facts=(new,), unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))
