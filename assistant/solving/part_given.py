"""What a flash really gave, from how far the frame came out: "a 300 Ws head fired too early, and the frame was a stop under"; and how far it came out, from what was given."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import energy_short, marks
from assistant.solving.energy_short import OVER, SHORT
from assistant.solving.solution import Solution

_ASKING = Pattern(r"\b(?:how (?:many|much)|what|which)\b", re.I)
_GIVEN = Pattern(
    r"\b(?:did|does|has|had|was|is|were)\b[^.?!;]*\b(?:g[ia]ve|given|giving|put(?:ting)? out|deliver\w*|fir(?:e|ed|ing)|releas\w*|let go|emit\w*|have|held?|hold|us(?:e|ed|ing)|spend|spent)\b"
    r"|\b(?:came|come|comes|coming|got|went) out\b|\b(?:actually|really)\b|\bin (?:it|the (?:capacitors?|head|flash|pack))\b", re.I)
_EARLY = Pattern(r"\b(?:too (?:early|soon)|early|misfired|(?:not|n't|never|before|only (?:half|part)[ -]?) ?(?:\w+ )?(?:fully )?(?:charged?|recycled?|ready|full)|half[ -]charged|(?:was|were)n't (?:quite )?(?:ready|full))\b", re.I)
"""Why a flash gave less than all of it."""
_NEEDED = Pattern(r"\b(?:should|need\w*|must|right|correct|would|set|required?|want\w*|ought|enough|for a (?:good|proper|normal))\b", re.I)
_A_SHARE = Pattern(r"\b(?:what|which) (?:part|share|fraction|percentage|proportion)\b|\bhow much of\b|\b(?:what|how many) per ?cent\b", re.I)
_OF_ALL = Pattern(r" (?:ws |w/s |joules |watt[- ]?seconds )?(?:out )?of (?:its |the |a |my |all )?(?:full |possible |nominal )?$", re.I)
_MAY_BE_TOLD = frozenset({"energy", "stops", "relation", "signed", "power", "remark", "place", "count"})


def solve(query: Query) -> Solution | None:
    """The energy or the part of it that came out, or how far under a part of the energy leaves a frame."""
    if query.claim or {f.quantity for f in query.facts} - _MAY_BE_TOLD or any(f.value != 1 for q in ("count", "power") for f in query.all(q)):
        return None
    asking = list(_ASKING.finditer(query.text))
    question = query.text[asking[-1].start() :] if asking else ""
    found = _given(query, question) or _comes_out(query)
    return found or (energy_short.solve(query, query.asks[0]) if _NEEDED.search(question) else None)


def _out(query: Query) -> tuple[Fact, float] | None:
    """So many stops under or over that the frame was, with their sign."""
    told = [f for f in query.facts if f.quantity in ("stops", "relation", "signed")]
    if len(told) != 1 or told[0].of not in ("", "frame"):
        return None
    short = told[0].cue == "less" or SHORT.match(query.text, told[0].end) is not None or SHORT.search(told[0].said) is not None
    over = told[0].cue == "more" or OVER.match(query.text, told[0].end) is not None or OVER.search(told[0].said) is not None
    return None if short is over else (told[0], -abs(told[0].value) if short else abs(told[0].value))


def _given(query: Query, question: str) -> Solution | None:
    out, energies = _out(query), query.all("energy")
    if out is None or not (_GIVEN.search(question) or _EARLY.search(query.text)) or _NEEDED.search(question):
        return None
    fact, stops = out
    note = f"{speak_stops(abs(stops)).capitalize()} {'less' if stops < 0 else 'more'} is {2.0**stops:.3g} times the energy."
    used = (*energies, fact, *query.all("power"), *query.all("count"))
    if stops < 0 and _A_SHARE.search(question) and len(energies) < 2:
        beside = tuple(Quantity("energy", f.value * 2.0**stops, "J") for f in energies)
        return Solution(answers=(Quantity("power", 2.0**stops, "of full"), *beside), used=used, topic="time", lead=f"It gave {2.0**stops:.0%} of full.", notes=(note,))
    if not query.asks_for("energy") or len(energies) != 1:
        return None
    return Solution(answers=(Quantity("energy", energies[0].value * 2.0**stops, "J"),), used=used, topic="time", notes=(note,))


def _comes_out(query: Query) -> Solution | None:
    """"it fired with only 100 of its 400 watt-seconds: how many stops under was the frame?"."""
    energies = query.all("energy")
    if not query.asks_for("stops") or len(energies) != 2 or {f.quantity for f in query.facts} - {"energy", "remark", "place", "power"} or not _OF_ALL.fullmatch(query.text, energies[0].end, energies[1].start):
        return None
    part, whole = energies
    if not 0 < part.value < whole.value:
        return None
    return Solution(answers=(marks.stops(math.log2(part.value / whole.value)),), used=(*energies, *query.all("power")), topic="time", lead="Under by", working=(f"{part.value:g} Ws of {whole.value:g} Ws",))
