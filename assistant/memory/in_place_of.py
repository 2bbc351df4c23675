"""Which old value a half-sentence points at: "a sixteenth in place of the eighth", "that close one on 1/16"."""

from __future__ import annotations

import re

from assistant.memory.in_the_same_words import FILLING
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.pop_facts import own

AMOUNT_ALONE = re.compile(r"\d+(?:\.\d+)?")
_INSTEAD_OF = Pattern(r" (?:in place of|instead of|rather than|in the place of|for|not) (?:the |that |my |an? )*", re.I)
_PLACED = Pattern(r"\b(?:the|that|this|my) (?:(?P<far>far|farther|further|farthest|furthest|distant)|close|closer|closest|near|nearer|nearest)(?: (?:one|light|lamp|flash|head))\b", re.I)


def in_place_of(query: Query) -> tuple[Query, Fact | None, re.Match[str] | None]:
    """The half-sentence with its new value alone, the old one that it names beside it, or where it says which of two lights it means."""
    told = sorted((f for f in query.facts if f.quantity != "remark"), key=lambda f: f.start)
    if len(told) == 2 and (told[0].quantity == told[1].quantity or AMOUNT_ALONE.fullmatch(told[1].said.strip())) and _INSTEAD_OF.fullmatch(query.text[told[0].end : told[1].start]) and FILLING.fullmatch(query.text[told[1].end :]):
        return replace(query, text=query.text[: told[0].end], facts=(told[0],)), told[1], None
    placed = _PLACED.search(query.text)
    if placed is not None:
        query = replace(query, text=query.text[: placed.start()] + "it" + " " * (placed.end() - placed.start() - 2) + query.text[placed.end() :])
    return query, None, placed


def as_it_was_called(old: Fact, mine: Fact, last: Query) -> list[Fact]:
    """The values of the question that the old one of the half-sentence can be: by its size or by its figure."""
    figures = AMOUNT_ALONE.findall(old.said)
    return [f for f in last.facts if f.quantity == mine.quantity and (f.value == old.value or figures and AMOUNT_ALONE.findall(f.said) == figures)]


def told_with_place(placed: re.Match[str], mine: Fact, last: Query) -> list[Fact]:
    """"and with that close one on 1/16?": of two lights the value of the one that stands so, by the place told with it."""
    same = [f for f in last.facts if f.quantity == mine.quantity]
    places = list({f.value: f for f in sorted(last.facts, key=lambda f: -f.start) if f.quantity == "distance"}.values())
    if len(same) != 2 or len(places) != 2:
        return []
    where = (max if placed["far"] else min)(places, key=lambda f: f.value)
    other = places[1] if where is places[0] else places[0]
    its = own(where, same, last.text)
    return [its] if own(other, same, last.text) is not its else []
