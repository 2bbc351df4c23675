"""Words for the light that is there, and a fill told as a part of it: "a third of the sun", "fill at minus one"."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.ambient import SUNNY_EV
from assistant.places import ROOMS
from assistant.query import Fact
from assistant.records import replace

_OURS = "hair rim fill key main flash background back top side second other first the my one that this each"
LIGHT_ALONE = "(?=light)" + "".join(f"(?<!{word} )" for word in _OURS.split()) + r"lights?(?= alone\b| by itself\b| on its own\b)"
""""the stage light alone": of whatever is there, and of no lamp of ours."""
AMBIENT = (r"(?:ambient|daylight|day light|sun|sunlight|sunset|sky|dusk|dawn|twilight|afterglow|moonlight|candlelight|firelight|lamplight|street ?(?:lights|lamps)|windows?(?! (?:seat|sill|ledge|bench))|available light|existing light|outdoors|outside|"
            r"background|bg|backdrop|scene|doorway|open doors?|landscape|city|skyline|(?:house|disco|fairy|festoon|stage) lights|disco|bar|view|natural light|own light|" + ROOMS + "|" + LIGHT_ALONE + r"|(?:back |far |rear )?(?<!off the )(?<!off a )(?<!off )wall)(?:'?s)?")

OF_FLASH = Pattern(r"\b(?:fill|flash|strobe|speedlight|flashgun|light)\b", re.I)

_FILL_AT = Pattern(r"\bfill(?:-?in)?(?: flash| light)?(?: is| set)?(?: at| to|:|,)?\s*$", re.I)
_FILL_OF = Pattern(r"\b(?:fill(?:-?in)?|flash|strobe)(?: flash| light)?(?: alone| only| to be| is| be| at| just| about| as)*\s*$", re.I)
_OF_THE_SUN = Pattern(rf"\s*(?:of (?:the )?|as (?:bright|strong|much) as (?:the )?|the )(?:(?:light|strength|brightness|level) of (?:the )?)?(?:{AMBIENT})\b", re.I)


def _share_of_the_sun(fact: Fact, text: str) -> Fact:
    """"fill a third of the light of the sun": so many stops under it."""
    part = fact.quantity in ("number", "share", "power") and 0 < fact.value < 1 and _OF_THE_SUN.match(text[fact.end :]) and _FILL_OF.search(text[: fact.start])
    return replace(fact, quantity="relation", value=-math.log2(fact.value), unit="", of="fill", to="ambient", cue="less") if part else fact


_READING_OF = Pattern(rf"\b(?:{AMBIENT})(?:'s)? reading (?:of|is|at) $", re.I)
"""Right before what the daylight reads, though the fill was named before it."""


def signed_fill(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"fill at minus one and a half": so many stops under the daylight."""
    facts = [replace(f, of="ambient") if f.quantity == "aperture" and f.of == "fill" and _READING_OF.search(text[max(0, f.start - 40) : f.start]) else _share_of_the_sun(f, text) for f in facts]
    return [replace(f, quantity="relation", value=abs(f.value), unit="", of="fill", to="ambient", cue="less" if f.value < 0 or f.unit == "-" else "more") if f.quantity == "signed" and _FILL_AT.search(text[: f.start]) else f for f in facts]


_SUNNY_SIXTEEN = Pattern(r"\b(?:sunny[- ](?:16|sixteen|f ?/? ?16|rule|eleven)|(?:full|bright|open|direct|plain|clear|strong) sun(?:light|shine)?)\b", re.I)
_SKY_DIMMED = Pattern(r"\b(?:clouds?|cloudy|cloud|haz[ey]\w*|overcast|shade|thin|dull|mist\w*|fog\w*|drizzl\w*|grey|gray|sky|weather)\b", re.I)
_OF_OUR_LIGHT = Pattern(r"\b(?:flash|fill|key|gun|strobe|backlit|sun behind|under the (?:sun|ambient|daylight)|shadows?)\b", re.I)
_BRIGHTER_SKY = Pattern(r"\s*(?:of light )?(?:more|brighter|over|above|up|better)\b", re.I)
_FROM_SUN = frozenset({"stops", "relation", "signed", "loss", "power_down"})


def sky_in_stops(facts: list[Fact], text: str) -> list[Fact]:
    """"light cloud, two stops less than full sun": the daylight, counted in stops from the sunny-16 rule, and no fill under it."""
    if {f.quantity for f in facts if f.of == "ambient"} >= {"aperture", "shutter"}:
        return facts  # it was read, and need not be reckoned from the rule
    told = [f for f in facts if f.quantity in _FROM_SUN]
    if len(told) != 1 or any(f.quantity in ("guide_number", "exposure_value", "distance", "power", "count") for f in facts) or not _SUNNY_SIXTEEN.search(text):
        return facts
    if not _SKY_DIMMED.search(text) or _OF_OUR_LIGHT.search(text):
        return facts
    more = told[0].unit == "+" or _BRIGHTER_SKY.match(text[told[0].end :]) is not None
    sky = replace(told[0], quantity="exposure_value", value=SUNNY_EV + abs(told[0].value) * (1 if more else -1), unit="", of="", to="", cue="")
    return [sky if f is told[0] else f for f in facts]


_THE_THING = Pattern(r"\b(?:the|that|those|these|my|our) (?P<thing>[a-z]+)(?: to be| be| about| at| by| down| up| fall| go| come| come out| drop| sink| record| sit| lie)*\s*$", re.I)


_BEHIND = Pattern(r"\b(?:the|my|those|these|that|his|her|their) (?!flash|fill|strobe|light|gun|key|kicker|rim)[a-z]+(?: [a-z]+)? (?:behind|beyond|outside|at the back|in the distance)(?: (?:her|him|them|it|us|me|you|everybody|everyone|the \w+))?(?: (?:should|to|must|can|may|will|ought to))?(?: (?:be|come out|go|fall|read|sit|drop|sink|lie|print|record))?(?: (?:about|at))? $", re.I)
"""Right before so many stops: what stands behind is lit by what is there."""


_SUNK = Pattern(r"\b(?P<asked>shutter(?: speed)?|(?:what|which) (?:speed|time)|how long)\b[^.?!]*?\b(?:drops?|puts?|sends?|takes?|brings?|sinks?|leaves?|pushes|pulls?|lets?|holds?|keeps?|makes?|gets?|have|want) (?:the|that|my|our|those|these|his|her) (?P<thing>[a-z]+)(?: [a-z]+)?(?: (?:go|fall|sink|drop|sit|lie|be|come out|down|about|at))*\s*$", re.I)
"""Right before so many stops, where a time is asked: nothing but the light that is there changes by it."""


def metered_thing(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """"the quay meters 1/4 at f/2.8 … and the quay one stop under", "and the books behind two under", "which shutter drops the wood two stops under": whatever it is, it is lit by what is there."""
    if not any(f.quantity == "shutter" and f.of == "ambient" for f in facts):
        return False
    if _BEHIND.search(text[max(0, fact.start - 60) : fact.start]):
        return True
    sunk = _SUNK.search(text[max(0, fact.start - 120) : fact.start])
    if sunk is not None and not OF_FLASH.search(sunk["thing"]):
        return True
    named = _THE_THING.search(text[: fact.start])
    if named is None or OF_FLASH.search(named["thing"]):
        return False
    return patterns.search(rf"\b{named['thing']}\b[^.;?!]{{0,24}}\b(?:meters?|metered|reads?|needs?|wants?|takes?)\b", text[: named.start()], re.I) is not None
