"""A place told anew with a bare number after the thing that stands there: "paper at 16", "back's 10", "front row 6"."""

from __future__ import annotations

import math
import re

from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.units import LENGTH

_BEFORE = r"^\W*(?:(?:and|or|but|so|then|now|ok|if|with|say|what if|what about|how about)\b\W*)*(?:the |my |our )?"
_AT = r"(?: (?:row|one|rank|line|lot|people|end|light|wall))?(?:'s| is| are| was| stands?| sits?| goes| moved| pushed| pulled)?(?: now| only| back| out| in)*(?: (?:at|to|from))?\W*$"
_OF = {
    "back": Pattern(_BEFORE + r"(?:back|rear|last|far|farthest|furthest)" + _AT, re.I),
    "front": Pattern(_BEFORE + r"(?:front|near|nearest|first|closest)" + _AT, re.I),
    "backdrop": Pattern(_BEFORE + r"(?:paper|background|bg|backdrop|wall|cloth|curtain|seamless|canvas|screen)" + _AT, re.I),
}
_AFTER = Pattern(r"\s*(?:away|then|now|instead|off|back)?\s*[?.!]*\s*$", re.I)
_BY_PLACE = ("stops", "ratio", "factor")


def place_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The place of the row or of what is behind, in the unit of the places told, where only places were told and stops are asked."""
    both = _both_anew(query, scene)
    if both:
        return replace(query, facts=both, unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "distance"))
    new = of_a_place(query, scene)
    if new is None:
        return query, scene
    old = [f for f in scene.facts if f.quantity == "distance" and f.of == new.of]
    return replace(query, facts=(new,), unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f not in old))


_AND = Pattern(r"\s(?:and|&)\s|,", re.I)


def _both_anew(query: Query, scene: Scene) -> tuple[Fact, ...]:
    """"and with the flash moved so they're two and a half and five metres from it?": both places that stand, in the order they were told; nothing where there are not just two."""
    pair = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if pair is None or pair.bad or pair.quantity != "length_range" or math.isnan(pair.other) or pair.value >= pair.other or not _AND.search(pair.said):
        return ()
    places = sorted((f for f in scene.facts if f.quantity == "distance"), key=lambda f: f.start)
    told = [f for f in scene.facts if f.quantity not in ("remark", "place")]
    if len(places) != 2 or told != places and sorted(told, key=lambda f: f.start) != places or places[0].value >= places[1].value or not scene.asks or scene.asks[0].quantity not in _BY_PLACE:
        return ()
    return tuple(replace(pair, quantity="distance", value=value, of=place.of, cue="", other=math.nan) for value, place in zip((pair.value, pair.other), places, strict=True))


def of_a_place(query: Query, scene: Scene) -> Fact | None:
    """The place that a bare number is, by the thing that is named right before it; None where it may be anything else."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if mine is None or mine.bad or mine.quantity not in ("number", "aperture", "film_speed") or any(c.isalpha() for c in mine.said) and not mine.said.isalpha() or not _AFTER.match(query.text, mine.end):
        return None
    places = [f for f in scene.facts if f.quantity == "distance" and f.unit in LENGTH]
    if not places or not scene.asks or scene.asks[0].quantity not in _BY_PLACE or any(f.quantity in ("aperture", "guide_number", "exposure_value", "film_speed", "stops", "relation") for f in scene.facts):
        return None
    of = next((name for name, words in _OF.items() if words.match(query.text[: mine.start])), "")
    other = {"back": "front", "front": "back"}.get(of, "")
    known = any(f.of == of for f in places) or any(f.of == other for f in places) if other else any(f.of == of for f in places)
    return replace(mine, quantity="distance", value=mine.value * LENGTH[places[0].unit], unit=places[0].unit, of=of, cue="", other=math.nan) if of and known else None
