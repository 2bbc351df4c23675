"""High-speed sync: what it takes of the flash where no loss is told, and a guide number that has it in it."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query

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
    note = "In high-speed sync the loss goes with the shutter: each halving of the time loses another stop."
    told = [f for f in query.facts if f.quantity == "loss" and f.unit in ("hss", "")]
    facts = query.facts if told or query.has("stops") or _OF_THE_MODE.search(query.text) else (*query.facts, Fact("modifier", 0.0, "hss", origin="assumed"))
    return query.with_facts(facts), tuple(query.all("shutter")), (note,)
