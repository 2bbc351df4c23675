"""A figure changed and the lens turned to make up for it: "from 2 m to 4 m and I open two stops, does she keep her exposure?".

Which way the lens is turned decides as much as by how far: a move back that is met by closing down adds up.
"""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.before_after import difference
from assistant.solving.claim_denial import called_wrong
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_KINDS = ("distance", "power", "film_speed", "energy")
_STOPS = ("stops", "relation", "signed", "loss")
_BY_THE_WAY = frozenset({"remark", "place", "number", "rows"})
_TURNED = Pattern(r"\b(?:(?P<more>open(?:s|ed|ing)?)|clos(?:e|es|ed|ing)|stop(?:s|ped|ping)?)(?: (?:the|my|his|her|lens|aperture|it|up|down|by|another|exactly|just|about|only|then))* $")
_KEEPS = Pattern(
    r"\b(?:exposure|picture|negative|it|everything|reading)\b[^.?!]{0,40}\b(?:the same|unchanged|as (?:it was|before)|stays? (?:put|right)|still right|come out even)\b|\bkeeps? (?:its|the|his|her|my|their)(?: same)? exposure\b|\bthe same exposure\b"
    r"|\b(?:cancels?|evens?)(?: (?:it(?:self)?|each other|one another))? out\b|\bmakes? (?:up for|good)\b")
_TO = Pattern(r"[ ,]*(?:(?:back|in|out|up|down|over|away)[ ,]+)*(?:to|->|→) *(?:about |iso |an? )?")
_NOT = Pattern(r"\b(?:not|never|no longer)\b|n't\b")
_SEEN = 0.25
"""Stops from which a difference is one."""


def turned_to_keep(query: Query) -> tuple[bool, Solution | None]:
    """Whether the claim is of this kind, and the verdict on it; None where something else is told that bears on it."""
    said = plain(query.text)
    turned = [(f, done) for f in query.facts if f.quantity in _STOPS and f.origin == "said" and (done := _TURNED.search(said[: f.start])) is not None]
    pairs = [pair for kind in _KINDS if len(pair := sorted((f for f in query.all(kind) if f.origin == "said"), key=lambda f: f.start)) > 1]
    if not query.claim or len(turned) != 1 or not pairs or _KEEPS.search(said) is None:
        return False, None
    held = {f for pair in pairs for f in pair} | {turned[0][0]}
    if any(len(pair) != 2 or not _TO.fullmatch(said[pair[0].end : pair[1].start]) for pair in pairs) or any(f not in held and f.quantity not in _BY_THE_WAY for f in query.facts) or len(_NOT.findall(said)):
        return True, None
    return True, _verdict(query, said, pairs, *turned[0])


def _verdict(query: Query, said: str, pairs: list[list[Fact]], fact: Fact, done: re.Match[str]) -> Solution:
    moved = sum(difference(a.quantity, a.value, b.value) for a, b in pairs)
    opened = abs(fact.value) * (1 if done["more"] else -1)
    net = moved + opened
    holds = (abs(net) < _SEEN) is not called_wrong(said)
    lead = f"{'Yes' if holds else 'No'}. The change is {_so_much(moved)}, the lens {_so_much(opened)}: together {_so_much(net)}."
    return Solution(answers=(Quantity("claim", holds), marks.stops(net)), used=query.facts, topic="claims", lead=lead)


def _so_much(stops: float) -> str:
    return "nothing" if abs(stops) < 0.05 else f"{speak_stops(abs(stops))} {'more' if stops > 0 else 'less'}"
