"""Values of time, energy and angle put up for a yes or a no: "recycle is 8 s at full, so 2 s at quarter", "so it smears 2 mm"."""

from __future__ import annotations

import re
from fractions import Fraction

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving.claim_words import plain
from assistant.solving.pop_facts import apart
from assistant.solving.solution import Solution

_ASKED: dict[str, tuple[str, str, str]] = {
    # what is told as a fact: what is asked instead, of what, in which unit
    "blur": ("distance", "movement", "mm"), "recycle": ("duration", "recycle", ""), "t01": ("duration", "t0.1", "s"), "t05": ("duration", "t0.5", "s"), "energy": ("energy", "", "J"), "count": ("count", "", "pops"),
}
_CLOSE, _ABOUT = 0.06, 0.16
"""Parts by which a figure may be off, and one said to be round."""
_ROUND = Pattern(r"\b(?:about|roughly|around|nearly|approximately|some|near enough|or so|ish)\b")
_TO_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "m": 1000.0, "ft": 304.8}
_CONCLUDES = Pattern(r"\b(?:so|thus|hence|therefore|means?|makes?|gives?|leaves?|is|takes?|uses?|smears?|moves?|travels?|that's|thats|be|of|to|at)\b[^.;?]{0,24}$")
_LESS_OR_MORE = Pattern(r"\b(?:less|more|under|over|within|at least|at most|longer|shorter|enough|below|above|freez\w*|sharp)\b")


def claim_of_value(query: Query) -> Solution | None:
    """The last value of its kind, against what the rest comes to."""
    said = plain(query.text)
    charge = _of_a_charge(query, said)
    if charge is not None:
        return charge
    query = _second_wait(query)
    fact = next((f for f in sorted(query.facts, key=lambda f: -f.start) if f.quantity in _ASKED), None)
    if fact is None or fact.origin != "said" or fact.value <= 0 or query.has("guide_number") or query.has("aperture") or _LESS_OR_MORE.search(said) or not _CONCLUDES.search(said[: fact.start]):
        return None
    if fact.quantity in ("recycle", "energy", "count") and len(query.all(fact.quantity)) != 2:
        return None
    if fact.quantity == "energy" and {f.quantity for f in query.facts} == {"energy"}:
        return None  # nothing told that leads from the one to the other
    if fact.quantity == "count" and (fact.unit not in ("pops", "") or len(query.all("power")) not in (1, 2)):
        return None
    from assistant.solving.solver import solve, unused

    quantity, of, unit = _ASKED[fact.quantity]
    rest = query.with_facts(f for f in query.facts if f is not fact)
    found = solve(replace(rest, asks=(Ask(quantity, of, unit, 0),), claim=False))
    if found is None or found.status != "answered" or not found.answers or found.assumed or unused(rest, found):
        return None
    right = found.answers[0]
    if right.quantity != quantity or not isinstance(right.value, (int, float)) or right.value <= 0:
        return None
    exact = right.value * _TO_MM[right.unit] / 1000 if fact.quantity == "blur" else right.value
    holds = abs(fact.value / exact - 1) <= (_ABOUT if _ROUND.search(said[max(0, fact.start - 16) : fact.end + 10]) else _CLOSE)
    return replace(found, lead=f"{'Yes' if holds else 'No'}. {_figure(right)}", answers=(Quantity("claim", holds), right), used=(*found.used, fact), topic="claims")


_SUFFICES = Pattern(r"\b(?:enough|will (?:one|a|the|it|that|they|my|this) (?:\w+ )?(?:charge |set |pack |battery )?(?:do|last|manage|cover|see me through|get me through)|last|suffic\w*|get through|manage|do it|make it|run out|run dry|(?:is|are|be) (?:the |my |it |they |that )?(?:\w+ )?good for (?:all|the lot|them))\b")
_FAILS = Pattern(r"\b(?:run(?:s)? (?:out|dry|short)|fall short|be short|not enough)\b")


def _of_a_charge(query: Query, said: str) -> Solution | None:
    """"200 full pops to a charge, 900 frames at 1/8 power: is one enough": the pops there are against those that are wanted."""
    counts = [f for f in query.facts if f.quantity == "count" and f.unit in ("pops", "frames", "flashes")]
    powers = query.all("power")
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"count", "power"}
    if len(counts) == 3 and not rest and all(f.value == 1.0 for f in powers):
        return _of_pops_a_frame(query, counts, said)
    if len(counts) != 2 or rest or len({f.value for f in powers if f.value < 1}) != 1 or _SUFFICES.search(said) is None or patterns.search(r"\b(?:charge|batter\w+|pack|cells?|set)\b", said) is None:
        return None
    has, wants = sorted(counts, key=lambda f: f.unit != "pops") if len({f.unit for f in counts}) > 1 else _had_and_wanted(counts, said)
    of_each = {f.start: _power_beside(f, counts, powers, said) for f in counts}
    if of_each[has.start] < 1 and of_each[wants.start] < 1:
        return None  # a power told once, and which of them it is of is not plain
    there = has.value * of_each[has.start] / of_each[wants.start]
    holds = (there >= wants.value) is not (_FAILS.search(said) is not None)
    lead = f"{'Yes' if holds else 'No'}. {has.value:g} at {_of_full(of_each[has.start])} are {there:.4g} at {_of_full(of_each[wants.start])}, going by energy alone."
    return Solution(answers=(Quantity("claim", holds), Quantity("count", float(int(there)), "pops")), used=query.facts, topic="claims", lead=lead)


_A_FRAME = Pattern(r"\b(?:each|every|per|apiece|a) (?:one of (?:my |the |these )?)?(?:\d+ )?(?:frames?|pictures?|sheets?|plates?|exposures?|shots?|one)\b|\beach\b|\bapiece\b")


def _of_pops_a_frame(query: Query, counts: list[Fact], said: str) -> Solution | None:
    """"60 pops left, every one of 12 frames takes 4: will it last": the frames times the pops of each against those there are."""
    frames, pops = [f for f in counts if f.unit == "frames"], sorted((f for f in counts if f.unit != "frames"), key=lambda f: f.value)
    if len(frames) != 1 or len(pops) != 2 or pops[0].value == pops[1].value or _SUFFICES.search(said) is None or _A_FRAME.search(said) is None:
        return None
    wanted = frames[0].value * pops[0].value
    holds = (pops[1].value >= wanted) is not (_FAILS.search(said) is not None)
    return Solution(answers=(Quantity("claim", holds), Quantity("count", wanted, "pops")), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {frames[0].value:g} frames of {pops[0].value:g} pops take {wanted:g}, and there are {pops[1].value:g}.")


_TO_BE_FIRED = Pattern(r"\b(?:needs?|wants?|must|have to|has to|got to|want to|plan\w*|calls for|requires?|takes|for|to (?:do|shoot|take|fire|make)|after)(?: (?:fire|do|shoot|take|make|get|about|some|another|all))*(?: of)? $")
"""Right before the pops that are wanted, and not those that a charge holds."""


def _had_and_wanted(counts: list[Fact], said: str) -> tuple[Fact, Fact]:
    """"I need 40 at half, there are 25 full ones left": what there is, and what is wanted, in whichever order they are told."""
    wanted = [f for f in counts if _TO_BE_FIRED.search(said[: f.start]) and not re.search(r"\bgood for $", said[: f.start])]
    if len(wanted) != 1:
        return counts[0], counts[1]
    return next(f for f in counts if f is not wanted[0]), wanted[0]


def _power_beside(count: Fact, counts: list[Fact], powers: list[Fact], said: str) -> float:
    """The power of these pops: the one told within them or nearer to them than to the others; full where none is."""
    def nearest(power: Fact) -> Fact:
        return min(counts, key=lambda f: 0 if f.start <= power.start < f.end else apart(f, power, said))

    return next((p.value for p in powers if nearest(p) is count), 1.0)


def _of_full(power: float) -> str:
    return "full power" if power == 1.0 else f"{Fraction(power).limit_denominator(512)} of it"


def _figure(right: Quantity) -> str:
    value = float(right.value) if isinstance(right.value, (int, float)) else 0.0
    if right.unit == "s" and value < 0.2:
        return f"It comes to 1/{1 / value:,.0f} s."
    return f"It comes to {value:.3g} {'watt-seconds' if right.unit == 'J' else right.unit}."


def _second_wait(query: Query) -> Query:
    """"8 s at full so 2 s at quarter": the second is a wait too, and no time of the shutter."""
    if len(query.all("recycle")) != 1 or len(query.all("power")) != 2:
        return query
    first = query.all("recycle")[0]
    return query.with_facts(_as_wait(f) if f.quantity in ("shutter", "duration", "time") and f.start > first.start else f for f in query.facts)


def _as_wait(fact: Fact) -> Fact:
    return replace(fact, quantity="recycle", unit="s")
