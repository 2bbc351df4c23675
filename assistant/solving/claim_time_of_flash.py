"""What the shutter time does to the flash: nothing with electronic flash within sync, but bulbs burn longer, and a flash of full power may outlast a short time."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.duration import t01_from_t05
from assistant.query import Query
from assistant.solving.claim_denial import denied, untagged
from assistant.solving.claim_words import SETTING_STAYS, plain
from assistant.solving.solution import Solution

_OF_FLASH = Pattern(r"\bof (?:the |my |its )?flash\b(?! (?:sync|speed))|\b(?:the|my|its) flash(?:'s)?(?: (?:part|exposure|light|side|itself))?(?= (?:gets?|goes|is|comes|drops?|falls?|los\w+|weak\w+|dark\w+|dimm\w+|bright\w+|stays?|half|down|by|one|two|three|a)\b)|\bflash (?:part|exposure)\b|\bflash ?bulbs?\b|\bbulbs?\b")
_OTHER_LIGHT = Pattern(r"\b(?:ambient|daylight|background|room|sky|sun\w*|window|hall|scene)\b")
_SAME = Pattern(r"\b(?:no (?:difference|change|effect)|the same|all the same|unchanged|stays? (?:put|as it)|nothing (?:changes|lost)|makes no|does not matter|doesn't matter|isn't (?:changed|affected))\b")
_CHANGED = Pattern(r"\b(?:dark\w*|dimm\w*|weak\w*|los[et]\w*|less|drops?|falls?|costs?|bright\w*|gains?|stronger|more|cuts?|halv\w*|doubl\w*|chang\w*)\b")
_BULBS = Pattern(r"\b(?:flash ?)?bulbs?\b(?! setting)")
_FASTER = Pattern(r"\b(?:faster|shorter|quicker|briefer|higher|raising|quick|short|fast) (?:the )?(?:shutter|time|exposure|speed)\b|\b(?:shutter|time|speed)\b[^.?!]{0,12}\b(?:faster|shorter|quicker|higher)\b")
_SLOWER = Pattern(r"\b(?:slower|longer|slow|long) (?:the )?(?:shutter|time|exposure|speed)\b")
_CUTS = Pattern(r"\b(?:cut|cuts|cutting|clip\w*|chop\w*|trim\w*|shorten\w*|los[et]\w*|waste\w*)\b")
_SHORTENS = Pattern(r"\b(?:cut|cuts|cutting|clip\w*|chop\w*|trim\w*|shorten\w*|dark\w*|dimm\w*|weak\w*|los[et]\w*|less|reduc\w*|drops?|costs?|waste\w*|chang\w*|affect\w*|matter\w*|alter\w*)\b")
_FASTEST = 1 / 300
"""Seconds; a shorter time is within sync with a leaf shutter only."""


def claim_of_flash_by_time(query: Query) -> Solution | None:
    """"from 1/60 to 1/250 do I lose two stops of the flash": by what kind of light it is."""
    times = [f for f in query.facts if f.quantity == "shutter"]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"shutter", "sync", "duration", "loss", "stops", "relation", "t05", "t01"}
    said = untagged(plain(query.text))
    if query.claim and not query.facts and _BULBS.search(said) and (_FASTER.search(said) or _SLOWER.search(said) and _CUTS.search(said)):
        return _of_a_bulb(said)
    if not query.claim or len(times) != 2 or rest or _OF_FLASH.search(said) is None or _OTHER_LIGHT.search(said):
        return None
    about = SETTING_STAYS.sub(" ", said)
    named = _SAME.search(about) is not None
    if not named and _CHANGED.search(about) is None:
        return None
    same = named is not denied(_SAME.sub(" ", about))  # "does not change the flash" says that it stays the same
    if _BULBS.search(said):
        holds, why = not same, "A flash bulb burns longer than a short shutter time, so a faster shutter cuts off part of its light."
        if query.has("loss") or query.has("stops"):
            return None  # by how much is for the maker's table
    elif _in_sync(query, min(f.value for f in times)):
        holds, why = same, "Electronic flash is over while the shutter is open, so the time changes the ambient light alone."
    else:
        return None
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {why}")


def _in_sync(query: Query, shortest: float) -> bool:
    """Whether the shutter is all open for all of the flash at the shortest time."""
    lasts = next((f.value for f in query.facts if f.quantity in ("t01", "duration", "t05")), 0.001)
    if lasts > shortest or "hss" in query.cues:
        return False
    sync = query.last("sync")
    return "leaf" in query.cues or shortest >= (sync.value * 0.9 if sync is not None else _FASTEST)


def _of_a_bulb(said: str) -> Solution | None:
    """"with a flash bulb does a faster shutter cut the flash?": it burns longer than such a time."""
    same = _SAME.search(said) is not None
    if not same and _SHORTENS.search(said) is None:
        return None
    holds = same is denied(_SAME.sub(" ", said)) if same else not denied(said)
    if _SLOWER.search(said):
        return Solution(answers=(Quantity("claim", not holds),), used=(), topic="claims", lead=f"{'No' if holds else 'Yes'}. A flash bulb burns for some time: a slow shutter takes in all of its light, a fast one cuts off part.")
    return Solution(answers=(Quantity("claim", holds),), used=(), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. A flash bulb burns longer than a short shutter time, so a faster shutter cuts off part of its light.")


_ALL_OF_IT = Pattern(
    r"\b(?:all|the whole|whole|full|most|enough|entire|every bit)\b[^?]{0,24}\b(?:light|flash|pulse|burst|it|caught|recorded|through|in)\b|\b(?:long|slow) enough\b|\bshorter than\b|\b(?:in|by|within) time\b"
    r"|\b(?:over|finish\w*|done|out|end(?:s|ed)?|complete|spent|gone|dead|burn\w*(?: out)?|fir(?:es|ed)|goes off|fits?|falls?|pass\w*|gets? (?:through|in))\b[^?]{0,30}\b(?:before|while|when|by the time|within|inside|during|as)\b[^?]{0,30}\b(?:shut\w*|clos\w*|open\w*|exposure|that|it|time)\b"
    r"|\b(?:clos\w*|shut\w*)\b[^?]{0,16}\bafter\b[^?]{0,20}\b(?:flash|pulse|burst|light)\b")
_IS_CUT = Pattern(r"\b(?:cut|cuts|cutting|clip\w*|chop\w*|trim\w*|truncat\w*|miss\w*|los[et]\w*|wast\w*|shorten\w*)\b|\b(?:too (?:short|fast|quick|brief)|longer than|outlast\w*|still (?:burn\w*|going|alight|on|firing))\b|\b(?:clos\w*|shut\w*)\b[^?]{0,16}\b(?:too (?:soon|early)|before)\b[^?]{0,20}\b(?:flash|pulse|burst|light)\b")


_SENTENCE_ENDS = re.compile(r"(?<=[.;!?])\s+")


def claim_of_flash_in_time(query: Query) -> Solution | None:
    """"a flash of 1/100 s through a leaf shutter at 1/250: is all of it caught?": what the shutter is not open for is lost."""
    lasts, shutter = next((f for q in ("t01", "duration", "t05") for f in query.all(q)), None), query.last("shutter")
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"t01", "duration", "t05", "shutter", "power", "remark", "place"}
    if not query.claim or lasts is None or shutter is None or rest or len({f.value for f in query.all("shutter")}) > 1:
        return None
    said = untagged(plain(query.text))
    cut = _IS_CUT.search(said) is not None
    if not cut and _ALL_OF_IT.search(said) is None:
        return None
    burns = t01_from_t05(lasts.value) if lasts.quantity == "t05" else lasts.value
    passes = burns <= shutter.value
    asked = untagged(_SENTENCE_ENDS.split(said.rstrip())[-1])
    holds = (passes is not cut) is not denied(_IS_CUT.sub(" ", asked))
    why = "the shutter is open for all of the flash" if passes else "the shutter closes while the flash still burns, so part of its light is lost: set a longer time, or test what it costs"
    return Solution(answers=(Quantity("claim", holds, ""),), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}: {why}.")
