"""Where somebody stands who is so many stops brighter, or darker, than something that is placed already: as far as the stops say, from where that is."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.flash import distance_for_falloff
from assistant.query import Ask, Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution
from assistant.units import speak_length

_LAMP = r"(?:the |my )?(?:flash|light|lamp|strobe|head|key|softbox)(?: light)?"
_SHOULD_READ = Pattern(rf"\s*(?:away )?from {_LAMP},? (?:and|which|but)(?: it)? (?:should|must|is to|has to|may|will|needs to|reads|comes out|falls)(?: read| be| come out| fall| lie| record| sit| only)* $", re.I)
_THAN = Pattern(r" ?(?:(?P<less>under|below|darker than|dimmer than|weaker than|less than)|(?:over|above|brighter than|hotter than|more than|stronger than)) (?:the |my |her |his |our |that of the )?(?P<who>[a-z]+)\b", re.I)
_IS_PLACED = Pattern(r",? ?(?:which|that|itself)?(?: is| stands| hangs| sits|'s| at)*(?: at| about)? $", re.I)
_WHERE_IS = r"\bhow (?:far|close|near)\b[^?]*?\b(?:is|are|does|do|did|must|should|can|may|will|would) (?:the |my |her |his |our )?{who}\b"
_ANYBODY = Pattern(_WHERE_IS.format(who=r"(?!light|flash|lamp|strobe|key|head|softbox|i\b|wall|backdrop|background)[a-z]+"), re.I)
_STOPS = ("stops", "relation", "loss", "signed", "power_down")


def solve(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"the bookcase is 5 m from my flash and should read a stop under the author: how far from it does he sit"; None where it is not told so."""
    places, said = query.all("distance"), [f for f in query.facts if f.quantity in _STOPS]
    if len(places) != 1 or len(said) != 1 or any(query.has(q) for q in ("gap", "move", "guide_number", "aperture", "length_range")):
        return None
    text, place = query.text, places[0]
    than = _THAN.match(text, said[0].end)
    if than is None:
        return None
    if said[0].start >= place.end and _SHOULD_READ.fullmatch(text, place.end, said[0].start):
        asked, of_asked = re.search(_WHERE_IS.format(who=re.escape(than["who"])), text[than.end() :], re.I) is not None, -1
    else:
        asked, of_asked = place.start >= than.end() and _IS_PLACED.fullmatch(text, than.end(), place.start) is not None and _ANYBODY.search(text[: said[0].start]) is not None, 1
    if not asked:
        return None
    stops = abs(said[0].value) * (-1 if than["less"] else 1) * of_asked
    there, unit = distance_for_falloff(place.value, stops), preferred_unit(query, ask.unit)
    return Solution(answers=(marks.distance(there, unit, "subject"),), used=(place, said[0]), topic="falloff", lead=f"{speak_length(there, unit)} from the light.")
