"""A shutter speed put up against the sync speed: "can I use 1/500 with a sync of 1/125?"."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.solution import Solution

_OF_LIGHT = Pattern(r"\b(?:dim(?:s|med|ming)?|brighten\w*|darken\w*|weaken\w*|strengthen\w*|affect\w*|lessen\w*)\b|\b(?:daylight|ambient|background|sky|room(?: light)?)\b[^?]*\b(?:drops?|loses?|falls?|gains?|rises?|chang\w*)\b|\b(?:darker|brighter|lighter|weaker|dimmer|stronger|less (?:flash|light)|more (?:flash|light))\b|\bexposure\b[^.?]{0,20}\b(?:chang\w*|differ\w*|alter\w*|shift\w*|drop\w*|fall\w*|ris\w*|halv\w*|doubl\w*|stays?|same)\b|\b(?:flash|face|subject|sitter)\b[^.?]{0,24}\b(?:drops?|falls?|rises?|stays?|remains?|unchanged|the same)\b|\b(?:chang\w*|alter\w*|affect\w*)\b[^.?]{0,24}\b(?:flash )?exposure\b", re.I)
"""What is asked then is what the time does to the light, not whether it is within the sync."""
_CUT_OFF = Pattern(r"\b(?:black|dark|cut off|shaded|unlit|shadow\w*)\b[^?]*\b(?:band|bar|stripe|edge|strip|frame|part|half)\b|\b(?:part|half|some|edge|bottom|top|side|band|bar|strip|frame|picture|negative|any)\b[^?]*\b(?:black|dark|cut(?: off)?|unlit|missing|lost|blank)\b|\b(?:lose|cut off|cut|miss)(?: off)? (?:part|half|some|any|a (?:bit|strip|part|piece)|the (?:edge|top|bottom|side))\b", re.I)
"""What is asked then is whether a part stays dark."""
_FREE_OF_IT = Pattern(r"\b(?:without|no|free of|free from|safe from|clear of|avoid\w*|not)\b[^?,;]{0,24}\b(?:black|dark|cut|unlit|missing|lost|blank|bands?|losing|cutting)\b", re.I)
_BEYOND = frozenset({"hss", "leaf"})
_NO_HSS = Pattern(r"\b(?:no|not|without|isn't|hasn't|never|lacks?) (?:\w+ ){0,2}(?:hss|high[- ]?speed)\b", re.I)
"""The mode that goes beyond the sync is named to say that it is not at work."""


def claim_of_sync(query: Query) -> Solution | None:
    """Whether a shutter speed is within the sync speed; None where not just these two are known."""
    syncs = query.all("sync")
    sync = query.last("sync")
    shutter = query.last("shutter") or query.last("duration") or (syncs[0] if len(syncs) == 2 and "within" in query.text.lower() else None)
    if not query.claim or shutter is None or sync is None or "said" not in (shutter.origin, sync.origin) or query.cues & _BEYOND and _NO_HSS.search(query.text) is None or query.has("exposure_value") or query.has("aperture", "film_speed") or query.has("guide_number") or _OF_LIGHT.search(query.text):
        return None
    holds = shutter.value >= sync.value * 0.9
    if _CUT_OFF.search(query.text) and not _FREE_OF_IT.search(query.text):
        return Solution(answers=(Quantity("claim", not holds, ""), Quantity("shutter", sync.value, "s")), used=(shutter, sync), topic="claims",
                        lead=f"{'No' if holds else 'Yes'}. 1/{1 / sync.value:.4g} s is the fastest for flash" + (", so the whole frame is lit." if holds else ": faster than that a focal-plane shutter is never fully open, so part of the frame stays dark."))
    fastest = f"1/{1 / sync.value:.4g} s"
    why = "the whole frame is open while the flash fires" if holds else "faster than that a focal-plane shutter is never fully open, so part of the frame stays dark"
    return Solution(answers=(Quantity("claim", holds, ""), Quantity("shutter", sync.value, "s")), used=(shutter, sync), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {fastest} is the fastest for flash: {why}." + ("" if holds else " A leaf shutter or high-speed sync has no such limit."))
