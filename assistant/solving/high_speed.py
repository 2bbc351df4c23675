"""High-speed sync: what it takes of the flash where no loss is told, and a guide number that has it in it."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

_NO_HSS = Pattern(r"\b(?:no|not|without|isn't|aren't|never|instead of)\b[\w ]{0,20}(?:high.speed|hss|fp)\b", re.I)


_HSS = r"(?:the |this |its )?(?:hss|high[- ]speed(?: sync\w*)?|fp(?: sync| mode)?)"
_GUIDE = r"(?:guide(?: numbers?| no\.?)?|gn)"
_OF_THE_MODE = Pattern(
    rf"\b{_GUIDE}\b[^.?!]{{0,60}}\b(?:for|in|at|with) (?:that|this) (?:mode|speed|setting|sync)\b|\b{_GUIDE} (?:for|in|at|with|under) {_HSS}\b|\b{_HSS}(?: mode)? {_GUIDE}\b"
    rf"|\b{_GUIDE}\b[^.?!;]{{0,24}}\b(?:drops|falls|goes down|shrinks|comes down) to\b[^.?!;]{{0,16}}\bin {_HSS}\b|\b{_HSS}(?: at 1/\d+)? (?:gives|leaves|makes|allows)\b[^.,;:?!\d]{{0,32}}?\b{_GUIDE}\b|\b(?:in|with|for|at|under) {_HSS}(?: mode)?(?: at 1/\d+)?,? (?!(?:with|and|guide|gn)\b)[^.,;:?!\d]{{0,48}}?\b{_GUIDE}\b", re.I)
"""The guide number that is told holds for that way of firing, with what it costs in it."""


def with_its_loss(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """High-speed sync with no loss stated: a typical one; the shutter time is part of it."""
    if "hss" not in query.cues or not query.has("guide_number") or _NO_HSS.search(query.text):
        return None
    anew = _at_the_time(query)
    if anew is not None:
        return anew
    note = "In high-speed sync the loss goes with the shutter: each halving of the time loses another stop."
    told = [f for f in query.facts if f.quantity == "loss" and f.unit in ("hss", "")]
    facts = query.facts if told or query.has("stops") or _OF_THE_MODE.search(query.text) else (*query.facts, Fact("modifier", 0.0, "hss", origin="assumed"))
    return query.with_facts(facts), tuple(query.all("shutter")), (note,)


_TOLD_AT = re.compile(rf"[,;]? ?(?:(?:in|for|with|on) {_HSS},? )?(?:at|for|with) (?:a shutter of |a time of )?$", re.I)


def _at_the_time(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """"a guide number of 20 metres at 1/500", then a shutter of 1/1000: the guide number goes with the root of the time, so that half the time takes a stop."""
    guides, times = query.all("guide_number"), query.all("shutter")
    if len(guides) != 1 or len(times) != 2 or any(f.value <= 0 for f in times) or any(f.quantity in ("loss", "stops") for f in query.facts):
        return None
    told = [f for f in times if f.start > guides[0].end and _TOLD_AT.fullmatch(query.text[guides[0].end : f.start])]
    if len(told) != 1:
        return None
    now = next(f for f in times if f is not told[0])
    lost = math.log2(told[0].value / now.value)
    taken = () if lost <= 0 else (Fact("loss", lost, "hss", said=""),)
    guide = guides[0] if lost >= 0 else replace(guides[0], value=guides[0].value * math.sqrt(2.0**-lost))
    note = "In high-speed sync each halving of the time takes a stop, and the guide number goes with its root."
    return query.with_facts((*(guide if f is guides[0] else f for f in query.facts), *taken)), tuple(times), (note,)
