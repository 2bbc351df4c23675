"""What a weaker light adds to a stronger one on the same face, and how weak it must be to add no more than so much.

Two lights add as light and not as stops: one that lies u stops under the other lifts the exposure by log2(1 + 2^-u).
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.physics import ambient
from assistant.query import Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_ROOM_OR_FLASH = Pattern(r"\b(?:flash\w*|strobe|gun|key|main)\b", re.I)
_HOW_UNDER = Pattern(
    r"\b(?:how (?:many (?:\w+ )?stops|far|much|many)|(?:what|which) number of stops)\b[^?]{0,60}?\b(?:under|below|beneath|weaker|darker|dimmer|fainter|less than|lower|down)\b", re.I)
_ADDS_BEFORE = Pattern(
    r"\b(?:add\w*|contribut\w+|lift\w*|rais\w+|brighten\w*|push\w*|increas\w+|chang\w+|alter\w*|affect\w*|spoil\w*|upset\w*|stand|allow\w*|accept\w*|tolerat\w+|put\w*|spare|gain\w*|creep\w*|bear|afford|overexpos\w+|contaminat\w+|influenc\w+|part|share|contribution)\b[^.?!;,]{0,70}$", re.I)
_ON_TOP = Pattern(r"\s*(?:(?:or (?:less|under)|and no more|at (?:the )?most|only|just|more) )*(?:of (?:light )?)?(?:to|on top of|over|from|above|beyond) (?:the |my |what )?(?:flash|strobe|key|house|room|stage|window|ambient|exposure|total)", re.I)


def most_under(query: Query, ask: Ask) -> Solution | None:
    """"how far under the flash must the room be to add at most a tenth of a stop": a loss, to be read as that or more."""
    told = [f for f in query.facts if f.quantity not in ("remark", "place", "modifier")]
    if ask.quantity != "stops" or len(told) != 1 or told[0].quantity not in ("stops", "relation", "loss") or "ambient" not in query.cues:
        return None
    added = told[0]
    if not 0 < abs(added.value) <= 1 or not _ROOM_OR_FLASH.search(query.text) or not _HOW_UNDER.search(query.text) or not _is_added(added, query.text):
        return None
    under = ambient.stops_under_to_add(abs(added.value))
    return Solution(answers=(marks.stops(-under, "ambient"),), used=(added,), topic="ambient",
                    notes=("The two fall on the same face, so their light adds; further under it adds less.",))


def _is_added(fact: Fact, text: str) -> bool:
    return _ADDS_BEFORE.search(text[: fact.start]) is not None or _ON_TOP.match(text, fact.end) is not None


SET_FOR_FLASH = Pattern(
    r"\b(?:set|sets|setting|expos\w+|meter\w*|aperture|lens|work\w* (?:it )?out|go)\b[^.?!]{0,40}\b(?:for|by|to|on|from) (?:the |my )?(?:flash|strobe|gun)(?:'s reading| reading)? (?:alone|only|by itself|on its own)\b"
    r"|\bonly (?:for|by) the flash\b", re.I)
"""The aperture is that of the flash, and what else falls there comes on top."""
_ONE_SIDE = Pattern(r"\b(?:the )?same (?:side|cheek|face|half|spot|place|part)\b|\bon (?:his|her|their|the) (?:\w+ )?(?:face|cheek|forehead|side)\b", re.I)
_FLASH_ALONE = Pattern(r"\b(?:flash|strobe|gun|fill|key)\b(?: (?:alone|by itself|on its own|only|itself|also|too|as well|likewise|reads?|meters?|gives?|on (?:the |his |her )?(?:same )?\w+))*(?: at| of)? $", re.I)
_HOW_OVER = Pattern(r"\bhow (?:many stops|far|much)\b[^?]{0,32}\b(?:(?:over|under)(?:-?exposed)?|out|too (?:bright|hot))\b", re.I)
_ANOTHER_SIDE = Pattern(r"\b(?:other|opposite|shadow|far|left|right|background|unlit) (?:side|cheek|half)\b", re.I)


def both_over(query: Query) -> Solution | None:
    """"the room alone gives f/8 on his face, the flash alone f/8 on the same side, the camera is at f/8: how far over is it?": both together against what is set."""
    room, own = query.all("aperture", "ambient"), query.all("aperture", "")
    told = {f.quantity for f in query.facts} <= {"aperture", "shutter", "film_speed", "remark", "place"} and len({f.value for f in query.all("shutter")}) < 2 and len({f.value for f in query.all("film_speed")}) < 2
    if len(room) != 1 or len(own) != 2 or not told or not _HOW_OVER.search(query.text) or not _ONE_SIDE.search(query.text) or _ANOTHER_SIDE.search(query.text):
        return None
    flash = [f for f in own if _FLASH_ALONE.search(query.text[: f.start])]
    if len(flash) != 1:
        return None
    lens = next(f for f in own if f is not flash[0])
    over = 2 * math.log2(math.hypot(flash[0].value, room[0].value) / lens.value)
    return Solution(answers=(marks.stops(over),), used=query.facts, topic="ambient", lead="Over" if over > 0 else "Under", notes=("The two fall on the same face, so their light adds.",))


def on_top(query: Query) -> Solution | None:
    """"the room is a stop under the flash, I set for the flash alone: how many stops over?": what the room adds to a right exposure."""
    told = [f for f in query.facts if f.quantity not in ("remark", "place", "modifier")]
    if len(told) != 1 or told[0].quantity != "relation" or told[0].of != "ambient" or told[0].cue not in ("less", "more") or not SET_FOR_FLASH.search(query.text) or not _HOW_OVER.search(query.text) or _ANOTHER_SIDE.search(query.text):
        return None
    under = abs(told[0].value) if told[0].cue == "less" else -abs(told[0].value)
    over = math.log2(1 + 2.0**-under)
    return Solution(answers=(marks.stops(over),), used=(told[0],), topic="ambient", lead="Over", working=(f"log2(1 + 2^{-under:g}) = {over:.3g}",), notes=("The two fall on the same face, so their light adds.",))
