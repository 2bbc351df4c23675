"""Words for the light that is there, and a fill told as a part of it: "a third of the sun", "fill at minus one"."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Fact
from assistant.records import replace

_OURS = "hair rim fill key main flash background back top side second other first the my one that this each"
LIGHT_ALONE = "".join(f"(?<!{word} )" for word in _OURS.split()) + r"lights?(?= alone\b| by itself\b| on its own\b)"
""""the stage light alone": of whatever is there, and of no lamp of ours."""
AMBIENT = (r"(?:ambient|daylight|day light|sun|sunlight|sunset|sky|dusk|twilight|window|windows|available light|existing light|outdoors|outside|"
            r"background|bg|backdrop|scene|doorway|open doors?|landscape|city|skyline|house lights|bar|view|natural light|" + ROOMS + "|" + LIGHT_ALONE + r"|(?:back |far |rear )?(?<!off the )(?<!off a )(?<!off )wall)(?:'?s)?")

_FILL_AT = Pattern(r"\bfill(?:-?in)?(?: flash| light)?(?: is| set)?(?: at| to|:|,)?\s*$", re.I)
_FILL_OF = Pattern(r"\b(?:fill(?:-?in)?|flash|strobe)(?: flash| light)?(?: alone| only| to be| is| be| at| just| about| as)*\s*$", re.I)
_OF_THE_SUN = Pattern(rf"\s*(?:of (?:the )?|as (?:bright|strong|much) as (?:the )?|the )(?:(?:light|strength|brightness|level) of (?:the )?)?(?:{AMBIENT})\b", re.I)


def _share_of_the_sun(fact: Fact, text: str) -> Fact:
    """"fill a third of the light of the sun": so many stops under it."""
    part = fact.quantity in ("number", "share", "power") and 0 < fact.value < 1 and _OF_THE_SUN.match(text[fact.end :]) and _FILL_OF.search(text[: fact.start])
    return replace(fact, quantity="relation", value=-math.log2(fact.value), unit="", of="fill", to="ambient", cue="less") if part else fact


def signed_fill(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"fill at minus one and a half": so many stops under the daylight."""
    facts = [_share_of_the_sun(f, text) for f in facts]
    return [replace(f, quantity="relation", value=abs(f.value), unit="", of="fill", to="ambient", cue="less" if f.value < 0 or f.unit == "-" else "more") if f.quantity == "signed" and _FILL_AT.search(text[: f.start]) else f for f in facts]
