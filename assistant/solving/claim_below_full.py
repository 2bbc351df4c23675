"""What a power and what hangs before the head come to together: "a two-stop box at half power is three stops under bare full", "… costs three stops in all"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import denied
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_HEAD = r"(?:flash|head|light|gun|lamp|tube|unit|one|it)"
_BARE = rf"(?:bare|naked|open|uncovered|unmodified)(?:[ -]?bulb)?(?: {_HEAD})?"
_FULL = r"(?:full|max|maximum|1/1)(?: power| whack| output| blast| pop| chat)?"
_FROM_BARE = Pattern(
    rf" ?(?:(?:less|down|below|under|beneath|short|off|darker|dimmer|weaker|lower)(?: than| on| from| of)?|from)(?: (?:what )?(?:the|my|a|that|this))? (?:{_BARE},? (?:at |on )?{_FULL}|{_FULL},? (?:and |with (?:the |a )?|on (?:the |a )?|of (?:the |a )?)?{_BARE}|{_HEAD} (?:bare|naked) (?:at |on )?{_FULL})\b")
"""After the stops: what they are counted from."""
_COMES_TO = Pattern(r"(?:=|:|\b(?:is|are|makes?|costs?|losing|loses?|lose|comes? to|adds? up to|totals?|means?|gives?|that's|i'm|it's|we're|robs?|eats?|takes?)(?: (?:me|us|you|it|a|total|of|loss|about|down|together|in all|only|just|so|then))*) *$")
_ALTOGETHER = Pattern(r"(?: (?:lost|down|less|light|in all|in total|all told|all up|together|altogether|total|gone|of|off|loss|weaker|darker|dimmer|by|then))*\s*(?:[,.;:?!]|$|\b(?:right|true|yes|correct|is that|am i|no)\b)")
"""Before the stops and after them, where they are the sum of what was told before."""
_A_THING = Pattern(r"[ -]?(?!stops?\b|under|over|below|above|less|more|down|up|of\b|from\b|on\b|at\b|and\b|to\b|then\b|off\b|for\b)[a-z]{3,}")
_LOST = frozenset({"loss", "filter_loss", "nd"})
_BESIDE = frozenset({*_LOST, "stops", "power", "modifier", "camera_filter", "remark"})
_NEAR = 0.17


def claim_of_below_full(query: Query) -> Solution | None:
    """The verdict on the sum of what is lost; None where anything else is told, or the stops are counted from something else."""
    said = plain(query.text)
    if not query.claim or {f.quantity for f in query.facts} - _BESIDE or any(f.bad or f.origin != "said" for f in query.facts):
        return None
    claimed = [f for f in query.facts if f.quantity in ("stops", "loss") and _FROM_BARE.match(said, f.end)] or _as_a_sum(query, said)
    if len(claimed) != 1:
        return None
    before = [f for f in query.facts if f is not claimed[0] and f.quantity != "camera_filter"]
    lost = [f for f in before if f.quantity in _LOST or f.quantity == "stops" and _before_a_thing(f, said)]
    powers = [f for f in before if f.quantity == "power" and f.value < 1]
    others = [f for f in before if f.quantity == "stops" and f not in lost]
    if not lost or len(powers) != 1 or others:
        return None
    stops = sum(abs(f.value) for f in lost) - math.log2(powers[0].value)
    holds = within(bound_of(said[: claimed[0].start])[0], stops - abs(claimed[0].value), _NEAR) is not denied(said)
    return Solution(answers=(Quantity("claim", holds), marks.stops(-stops)), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {speak_stops(sum(abs(f.value) for f in lost)).capitalize()} lost and {speak_stops(-math.log2(powers[0].value))} for the power make {speak_stops(stops)} less than the bare head at full.")


def _as_a_sum(query: Query, said: str) -> list[Fact]:
    """The stops that all that was told before them is said to come to."""
    last = max(query.facts, key=lambda f: f.start, default=None)
    if last is None or last.quantity not in ("stops", "loss") or last.cue == "more":
        return []
    bound, start = bound_of(said[: last.start])
    return [last] if _COMES_TO.search(said[: start if bound else last.start].rstrip()) and _ALTOGETHER.match(said, last.end) else []


_OF_POWER = Pattern(r"\bpower\b|^\W*1/\d", re.I)
"""A half of something else ("the guide number drops by half") is no power."""


def has_loss_and_power(query: Query) -> bool:
    """Whether a part of the power is told and a thing that takes so many stops: a rule that goes by one of them cannot weigh both."""
    said = plain(query.text)
    lost = any(f.quantity in _LOST and f.unit or f.quantity == "stops" and _before_a_thing(f, said) for f in query.facts)
    return lost and any(f.quantity == "power" and f.value < 1 and _OF_POWER.search(f.said) for f in query.facts)


def _before_a_thing(fact: Fact, said: str) -> bool:
    """"a two-stop box": what the thing takes."""
    return not fact.cue and fact.said.lower().endswith("stop") and _A_THING.match(said, fact.end) is not None
