"""Bare numbers in the shorthand of somebody at work: "umbrella down 2", "octa down two and a third", "gel minus 1"."""

from __future__ import annotations

import re

from assistant.language.bare import CLAUSE_ENDS, Bare
from assistant.language.stop_words import LOSING
from assistant.patterns import Pattern
from assistant.query import Fact

_DOWN = Pattern(r"\s*(?:is |'s |measures |measured |tests |tested |reads |comes out |itself |on |up )*(?:down|minus|less|short)(?: by)?(?: (?:about|around|roughly|maybe|another|a further|some))*\s*", re.I)


def worn_down(n: Bare) -> Fact | None:
    """"umbrella down 2": so many stops, of what stands in the light and is named right before."""
    if not 0 < n.value <= 5 or not CLAUSE_ENDS.match(n.text[n.fact.end :]):
        return None
    taker = next((f for f in sorted(n.facts, key=lambda f: -f.end) if f.end <= n.fact.start), None)
    if taker is None or taker.quantity not in ("modifier", "camera_filter") or taker.unit == "BARE" or not _DOWN.fullmatch(n.text[taker.end : n.fact.start]):
        return None
    return n.of("filter_loss" if taker.quantity == "camera_filter" else "loss", unit=taker.unit, of=taker.of)


_IT_TAKES = Pattern(rf"\s*(?:it|that|this|which|the thing) (?:always |usually |just |only )?{LOSING}(?: (?:me|us|you))?(?:,? (?:it does|that one|the \w+))?", re.I)


def lost_by_it(n: Bare) -> Fact | None:
    """"pola's on, one and two thirds it loses": so many stops, of the one thing that is named."""
    takers = [f for f in n.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    takes = _IT_TAKES.match(n.text, n.fact.end) if 0 < n.value <= 5 and len(takers) == 1 else None
    if takes is None or not CLAUSE_ENDS.match(n.text[takes.end() :]):
        return None
    return n.of("filter_loss" if takers[0].quantity == "camera_filter" else "loss", unit=takers[0].unit, of=takers[0].of)


RULES = (worn_down, lost_by_it)
