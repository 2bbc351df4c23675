"""A value held against the answer that was given: "I used f/11, how far under is that?", "would a 1.2 filter do it?"."""

from __future__ import annotations

import math
import re

from assistant.answer import Answer, Quantity
from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density
from assistant.query import Fact
from assistant.records import replace
from assistant.replying import remember, speak
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.solution import Solution
from assistant.turn import Turn

_USED = Pattern(r"\b(?:used|shot|set|set it|was|had|left|exposed|took|went|stayed|stood|stopped|opened|dialled|dialed|been)\b[^.?!\d]{0,24}$", re.I)


def used_instead(turn: Turn) -> Answer | None:
    """How far out the aperture that was used comes, against the one that was found."""
    query, talk = turn.query, turn.conversation
    found, told = talk.last_solution, [f for f in query.facts if f.quantity == "aperture"]
    if found is None or not query.asks_for("stops") or len(told) != 1 or len(query.facts) != 1 or told[0].of or told[0].bad or not _USED.search(query.text[: told[0].start]):
        return None
    right = found.answers[0] if found.answers and found.topic in ("flash", "losses") else None
    if right is None or right.quantity != "aperture" or right.of or not isinstance(right.value, float) or right.value <= 0:
        return None
    off = 2 * math.log2(right.value / told[0].value)
    state = "That is right." if abs(off) < 0.05 else f"That is {speak_stops(abs(off))} {'under' if off < 0 else 'over'} f/{right.value:.3g}."
    kept = tuple(replace(f, origin="kept") if f.origin == "said" else f for f in found.used)
    solution = Solution(answers=(marks.stops(off),), used=(*kept, told[0]), topic="how_far_out", lead=state)
    return speak(turn, query, solution)


_DOES_IT_DO = Pattern(r"\b(?:would|will|is|does|do|are|can|could|might|should)\b.*\b(?:do(?: (?:it|that|the job|for (?:it|that)))?|enough|right|work|suffice|ok|okay|fine|manage|cover it|get (?:me|us) there)\W*$", re.I)
_FILTER_AFTER = Pattern(r"\s*-?(?:nd|neutral density|grey|gray|filter|density|one)\b", re.I)


def would_do(turn: Turn) -> Answer | None:
    """Whether a value that is put up is what was found: so many pops, so many stops of filter, so much energy."""
    query, talk = turn.query, turn.conversation
    found = talk.last_solution
    told = [f for f in query.facts if f.quantity not in ("camera_filter", "modifier", "remark")]
    if found is None or not found.answers or found.topic == "claims" or not query.claim or len(told) != 1 or told[0].bad or not _DOES_IT_DO.search(query.text):
        return None
    right = found.answers[0]
    value = _put_up(told[0], right, query.text)
    if value is None or not isinstance(right.value, (int, float)) or right.value <= 0:
        return None
    spare = value - float(right.value) if right.quantity == "stops" else math.log2(value / float(right.value))
    holds = abs(spare) <= TOLERANCE if right.quantity == "stops" else spare >= -1e-9
    kept = tuple(replace(f, origin="kept") if f.origin == "said" else f for f in found.used)
    takes, mine = (speak_stops(float(right.value)), speak_stops(value)) if right.quantity == "stops" else (f"{float(right.value):.4g} {right.unit}", f"{value:g}")
    lead = f"{'Yes' if holds else 'No'}. It takes {takes}{'' if abs(spare) < 0.01 else f', not {mine}'}."
    new = replace(told[0], quantity="nd" if right.quantity == "stops" else right.quantity, value=value, unit=told[0].unit if right.quantity == "stops" else right.unit, of="")
    solution = Solution(answers=(Quantity("claim", holds), right), used=(*kept, new), topic="claims", lead=lead)
    last, before = talk.last_query, talk.last_solution
    if last is not None:
        remember(turn, last, found, text=last.text)  # what stands is the question that was asked before
        talk.last_query, talk.last_solution = last, before
    return speak(turn, replace(query, facts=(new,), unplaced=()), solution)


def _put_up(fact: Fact, right: Quantity, text: str) -> float | None:
    """The value put up, as one of the kind that was found; None where it is of another."""
    if right.quantity == "stops" and right.of == "ND":
        if fact.quantity in ("nd", "loss", "filter_loss", "stops"):
            return abs(fact.value)
        bare = fact.quantity in ("number", "aperture") and "f" not in fact.said.lower() and 0.1 <= fact.value <= 4
        return stops_from_density(fact.value) if bare and (_FILTER_AFTER.match(text, fact.end) or fact.value != int(fact.value)) else None
    if right.quantity in ("count", "energy") and fact.quantity in (right.quantity, "number") and fact.value > 0:
        return fact.value
    return None
