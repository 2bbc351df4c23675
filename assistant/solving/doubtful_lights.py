"""Signs that what was told of two lights, or of what stands behind the subject, was counted for one."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Query
from assistant.solving.solution import Solution

_LIGHT = r"(?:the |my )?(?:key|fill|main|hair|rim|background|kicker)(?: light)?"
_ON_EACH_OF = Pattern(rf"\b(?:on|for|over|before|in front of) {_LIGHT} and {_LIGHT}\b")


def shared_out(said: Query, whole: Query, found: Solution) -> bool:
    """"one stop and two stops on key and fill", and both of them counted on one light."""
    lost = [f for f in said.facts if f.quantity in TAKES_LIGHT and f in found.used]
    return len({f.value for f in lost}) > 1 and _ON_EACH_OF.search(said.text.lower()) is not None


_NEW_POPS = Pattern(r"\bhow (?:many|often)\b|\bwhat\b|\b(?:need|want|to (?:light|reach|get)|same|match|level|as bright|also|too)\b")


def pops_asked_again(said: Query, whole: Query, found: Solution) -> bool:
    """"ten pops from 3 m; the backdrop is at 6 m. flashes?": so many were told, and nothing is said of what for more would be."""
    counts = [f for f in said.facts if f.quantity == "count" and f.value > 1]
    return len(counts) == 1 and len(said.facts) == 3 and any(f.of == "backdrop" for f in said.facts) and _NEW_POPS.search(said.text.lower()) is None


_A_GREY_ONE = Pattern(r"(?<!no )(?<!without )(?<!without an )(?<!without the )(?<!not )(?<!off the )\b(?:nds?|neutral[- ]density)\b(?! (?:is |was |are |comes |now )*(?:off|out|gone|away))")
_STRENGTHS = frozenset({"nd", "factor", "filter_loss", "loss", "stops", "camera_filter", "times"})


def grey_of_no_strength(said: Query, whole: Query, found: Solution) -> bool:
    """"an ND filter on the lens, GN 110 ft, 10 ft": what it takes is not told, and nothing is taken for it."""
    if _A_GREY_ONE.search(said.text.lower()) is None:
        return False
    return any(f.quantity == "guide_number" for f in found.used) and not any(f.quantity in _STRENGTHS for f in whole.facts)


_SO_OFTEN = Pattern(r"\bstops? (?:of (?:light|power|speed) )?(?:every|each|per|for every|for each)\b|\b(?:every|each) [\w ]{1,20} (?:minutes?|hours?)\b[^.?!;]{0,30}\bstops?\b")


def gone_on_for_how_long(said: Query, whole: Query, found: Solution) -> bool:
    """"it loses a stop every five minutes", and one stop is counted: for how long it has gone on was not told, or not used."""
    places = {f.start for f in found.used}
    return any(f.quantity == "interval" and f.start not in places for f in said.facts) and any(f.quantity in (*TAKES_LIGHT, "stops", "relation") for f in found.used) and _SO_OFTEN.search(said.text.lower()) is not None


_TURNED = Pattern(r"\bpower(?:'s| is| was| gets)? (?:doubled|halved|quartered|quadrupled)\b|\b(?:doubl|halv|quarter|quadrupl)(?:ed|ing|e) (?:the |my )?power\b")
_POWERS = frozenset({"power", "power_down", "share", "energy", "times", "stops"})


def power_turned_idle(said: Query, whole: Query, found: Solution) -> bool:
    """"what does it read at 6 m with the power doubled", and the power is not counted."""
    return _TURNED.search(said.text.lower()) is not None and not any(f.quantity in _POWERS for f in found.used) and not any("The power" in note for note in found.notes)


_SUM_TOLD = Pattern(r"\b(?:total|sum|together|combined)\b", re.I)
_OF_THE_LIFT = Pattern(r"\b(?:adds?|added|lifts?|rais\w+|gains?|brighter|more|brightens?)\b", re.I)


def sum_as_a_reading(said: Query, whole: Query, found: Solution) -> bool:
    """"the flash is f/8 and the total f/11: how strong is the daylight", and the distance of the two readings."""
    return found.topic == "conversions" and len({f.value for f in found.used if f.quantity == "aperture"}) == 2 and _SUM_TOLD.search(said.text) is not None and _OF_THE_LIFT.search(said.text) is None


_EXPOSURE_TURNED = Pattern(r"\b(?:doubl\w+|tripl\w+|quadrupl\w+|halv\w+|twice|three times|four times) (?:the |my |its )?(?:metered |normal |indicated )?exposure\b(?! times?)|\bexposure (?:is |was |has to be |must be |should be )?(?:doubled|tripled|quadrupled|halved)\b")
_TURNS = frozenset({"stops", "times", "factor", "relation", "loss", "filter_loss", "nd", "power", "sheet_row"})


def exposure_turned_idle(said: Query, whole: Query, found: Solution) -> bool:
    """"the maker says to double the exposure", and nothing of the kind is counted."""
    return _EXPOSURE_TURNED.search(said.text.lower()) is not None and not any(f.quantity in _TURNS for f in found.used) and not any(a.quantity == "stops" for a in found.answers[1:])  # counted by its word
