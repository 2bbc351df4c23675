"""A rule or a belief that was judged, as a solution: the verdict, what is right, and what it comes to in the case at hand."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_below_full import has_loss_and_power
from assistant.solving.claim_bounds import EXACTLY
from assistant.solving.claim_rules import EXACT, Verdict
from assistant.solving.solution import Solution

_OF_A_CASE = frozenset({"focal_length", "aperture", "distance", "focus_distance", "power", "film_speed", "shutter", "guide_number", "energy", "loss", "nd", "format", "exposure_value", "count", "circle", "aperture_range"})


def differ_in_two(query: Query) -> bool:
    """Whether two cases are told that differ in settings of two kinds: a rule, which goes by one of them, cannot weigh them."""
    values: dict[str, set[object]] = {}
    for fact in query.facts:
        if fact.quantity in _OF_A_CASE and fact.origin == "said":
            kind = "aperture" if fact.quantity == "aperture_range" else fact.quantity
            values.setdefault(kind, set()).update((fact.unit,) if kind == "format" else (fact.value, fact.other) if kind != fact.quantity else (fact.value,))
    return sum(len(told) > 1 for told in values.values()) > 1


_FURTHER = Pattern(r"\b(?:twice|times|double) (?:further|farther|closer|nearer)\b", re.I)
"""So many times a distance, and not the light."""


def told(verdict: Verdict | None, query: Query) -> Solution | None:
    """A rule or belief judged, as a solution; None where it has not looked at all that differs, or at each of several losses."""
    assert verdict is not None
    if differ_in_two(query) or has_loss_and_power(query) or sum(f.quantity in ("loss", "filter_loss") and f.value != 0 and f.origin == "said" for f in query.facts) > 2:
        return None
    if "the light is" in verdict.right and _FURTHER.search(query.text):
        return None
    if verdict.holds and verdict.off > EXACT and EXACTLY.search(query.text.lower()):
        verdict = replace(verdict, holds=False)  # near enough, and that was not asked
    near = f"Close enough: it is {speak_stops(verdict.off)} out." if verdict.holds and verdict.off > 0.04 else ""
    cost = f"The rule as said is {speak_stops(verdict.off)} out." if not verdict.holds and verdict.off > 0.04 else ""
    lead = "Yes, that is so." if verdict.holds else "No, that is not so."
    said = " ".join(s for s in (lead, verdict.right, verdict.why, near, cost) if s)
    facts = tuple(f for f in query.facts if f.origin == "said")
    mine, figure = _of_mine(verdict, query)
    return Solution(lead=f"{said} {figure}".strip(), answers=(Quantity("claim", verdict.holds), *mine, *verdict.answers), used=facts, topic="claims")


def _of_mine(verdict: Verdict, query: Query) -> tuple[tuple[Quantity, ...], str]:
    """"a one-stop diffuser halves the guide number; mine is 56 m": what is left of that one."""
    guides = query.all("guide_number")
    factor = next((q for q in verdict.answers if q.quantity == "factor"), None)
    if len(guides) != 1 or factor is None or "the guide number" not in verdict.right or query.has("distance") or query.has("aperture"):
        return (), ""
    left = guides[0].value * float(factor.value)
    return (marks.guide_number(left, guides[0].unit or "ft"),), f"Of {guides[0].value:g} that leaves {left:.3g}."


def turned_round(judged: Solution) -> Solution:
    """The verdict on the claim that denies what was judged."""
    claim, *rest = judged.answers
    yes, _, why = judged.lead.partition(" ")
    return replace(judged, answers=(replace(claim, value=not claim.value), *rest), lead=f"{yes.replace('Yes', 'no').replace('No', 'yes').capitalize()} {why}".strip().replace("No, that is so.", "No.").replace("Yes, that is not so.", "Yes."))
