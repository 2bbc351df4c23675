"""Energies put up for a yes or a no: "is 600 Ws two stops brighter than 150"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import factor_said, plain
from assistant.solving.solution import Solution

_EVENLY = Pattern(r"\b(?:equal\w*|even\w*|same|each|apiece|every|(?:a|per) head|shar(?:es?|ed|ing)|split\w*|divid\w*)\b")
_EACH = Pattern(r"\b(?:each|apiece|every|(?:a|per) head)\b")
_UNEVEN = Pattern(r"\b(?:asymmetric\w*|uneven\w*|unequal\w*|ratio|not even\w*|two thirds|one third|a third|more|less|half|twice|double)\b|\d ?: ?\d")
_ALL_OF_IT = Pattern(r"\b(?:in all|altogether|total|together|between them|combined)\b")


def claim_of_split(query: Query) -> Solution | None:
    """"a 1200 Ws pack over three heads, that's 400 in each?": what each head of an evenly shared pack gets."""
    told = sorted((f for f in query.facts if f.quantity == "energy" and not f.bad), key=lambda f: f.value)
    heads = [f for f in query.facts if f.quantity == "count" and f.unit in ("flashes", "heads") and f.value > 1]
    if len(told) != 2 or len({f.value for f in heads}) != 1 or {f.quantity for f in query.facts if f.origin == "said"} - {"energy", "count", "remark"}:
        return None
    said = query.text.lower()
    if told[0].value <= 0 or not _EACH.search(said) or not _EVENLY.search(said) or _UNEVEN.search(said) or _DENIED.search(said) or _ALL_OF_IT.search(said):
        return None
    part = told[1].value / heads[0].value
    holds = abs(math.log2(part / told[0].value)) <= 0.05
    lead = f"{'Yes' if holds else 'No'}. {told[1].value:g} Ws shared evenly by {heads[0].value:g} heads is {part:.4g} Ws in each."
    return Solution(answers=(Quantity("claim", holds), Quantity("energy", part, "J", "each")), used=query.facts, topic="claims", lead=lead)


def claim_of_pops_in_all(query: Query) -> Solution | None:
    """"is 12 pops of 200 Ws more than 2000 Ws": as many times the energy of one, against the other."""
    told, pops = sorted(query.all("energy"), key=lambda f: f.start), [f for f in query.all("count") if f.unit in ("pops", "flashes") and f.value > 1]
    if len(told) != 2 or len(pops) != 1 or {f.quantity for f in query.facts if f.origin == "said"} - {"energy", "count", "remark"} or not _OF_ONE.fullmatch(query.text, pops[0].end, told[0].start):
        return None
    said = query.text.lower()
    bound, _ = bound_of(said[: told[1].start])
    if not bound or _DENIED.search(said):
        return None
    whole = pops[0].value * told[0].value
    holds = within(bound, math.log2(whole / told[1].value), 0.05)
    return Solution(answers=(Quantity("claim", holds), Quantity("energy", whole, "J")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {pops[0].value:g} times {told[0].value:g} is {whole:.5g} Ws.")


_SUMMED = Pattern(r"\b(?:add(?:ed|s)? (?:up|together)|together|in all|altogether|all told|in total|total|sum|taken together|combined)\b")
_FITS_IN = Pattern(r"\b(?:can|could|will|would|does|do|is)\b[^.?!]{0,40}\b(?:hold|holds|manage|give|afford|possible|enough|fit|fits|do that|cover)\b")
_AS_MUCH = Pattern(r"\b(?:as much as|the same as|equal to|equals?|exactly|just)\b")
_ONE_CHARGE = Pattern(r"\b(?:one|a|the|single|full)(?: (?:single|full))* (?:charge|capacitor)\b")


def claim_of_parts_in_all(query: Query) -> Solution | None:
    """"ten flashes at 1/32 out of one charge: more than a quarter of a full pop?": their number times the part that each is."""
    said = plain(query.text)
    many = [f for f in query.facts if f.quantity == "count" and f.unit in ("flashes", "pops", "images") and f.value > 1]
    parts = sorted((f for f in query.all("power") if 0 < f.value < 1), key=lambda f: f.start)
    if len(many) != 1 or {f.quantity for f in query.facts if f.origin == "said"} - {"count", "power", "remark", "place", "frequency"} or not parts or len(parts) > _PAIR or _DENIED.search(said):
        return None
    whole = many[0].value * parts[0].value
    if len(parts) == _PAIR:
        bound = bound_of(said[: parts[1].start])[0]
        if not _SUMMED.search(said) or not (bound or _AS_MUCH.search(said[parts[0].end : parts[1].start])):
            return None
        holds = within(bound, math.log2(whole / parts[1].value), 0.05)
    elif _ONE_CHARGE.search(said) and _FITS_IN.search(said):
        holds = whole <= 1 + 1e-9
    else:
        return None
    lead = f"{'Yes' if holds else 'No'}. {many[0].value:g} times 1/{1 / parts[0].value:g} is {whole:.3g} of a full pop."
    return Solution(answers=(Quantity("claim", holds), Quantity("power", whole, "of full")), used=query.facts, topic="claims", lead=lead)


_PAIR = 2
_OF_ONE = Pattern(r" (?:of|at|with|from)(?: only| about)? ")
_ONTO = Pattern(r"\bfrom\b|\b(?:to|turned (?:down|up)|instead of|->)\b")
_THAN = Pattern(r"\b(?:than|over|on|above|below|under|down on|up on|compared (?:to|with)|against|of|as)\W*$")
_LESS = Pattern(r"\b(?:less|under|below|down|darker|dimmer|weaker|los\w+|short|drops?|lower|fewer)\b")
_DENIED = Pattern(r"\b(?:not|never|isn't|aren't|no)\b")


def claim_of_energies(query: Query) -> Solution | None:
    """Two energies and the stops between them: the one held against the other, in the order in which they are said."""
    told = sorted((f for f in query.facts if f.quantity == "energy" and not f.bad), key=lambda f: f.start)
    stops = [f for f in query.facts if f.quantity in ("stops", "relation", "loss") and f.value > 0]
    said = query.text.lower()
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"energy", "stops", "relation", "loss", "remark", *(("modifier",) if "same" in said else ())}
    if len(told) != 2 or len(stops) != 1 or rest or min(f.value for f in told) <= 0 or _DENIED.search(said):
        return None
    held = _THAN.search(said[: told[1].start]) is not None
    if not held and not _ONTO.search(said):
        return None
    first, second = (told[1], told[0]) if not held else (told[0], told[1])
    more = math.log2(first.value / second.value)
    direction = -1.0 if stops[0].cue == "less" or _LESS.search(said) else 1.0
    holds = abs(more - direction * stops[0].value) <= TOLERANCE
    lead = f"{'Yes' if holds else 'No'}. {first.value:g} Ws is {speak_stops(abs(more))} {'more' if more > 0 else 'less'} than {second.value:g} Ws: every doubling is one stop."
    return Solution(answers=(Quantity("claim", holds), marks.stops(more)), used=query.facts, topic="claims", lead=lead)


_RECYCLES = Pattern(r"\b(?:recycl\w*|recharg\w*|ready again|charges? (?:up )?again)\b")
_SOONER = Pattern(r"\b(?:as (?:fast|quick|soon)\w*|(?:fast|quick|soon)er)\b")


def claim_of_recycling(query: Query) -> Solution | None:
    """"a quarter of the power recycles four times as fast": the charger refills at an even rate, so the time goes with the energy."""
    said = query.text.lower()
    powers = [f for f in query.facts if f.quantity == "power" and 0 < f.value < 1]
    part = powers[0] if powers and _RECYCLES.search(said, powers[0].end) else None
    rest = [f for f in query.facts if f is not part and f.quantity != "remark"]
    if part is None or len(rest) > 1 or any(f.quantity not in ("times", "power") for f in rest):
        return None
    factor = factor_said(said[part.end :])
    if factor is None or factor <= 0:
        return None
    claimed = 1 / factor if _SOONER.search(said) and factor > 1 else factor
    holds = (abs(math.log2(claimed / part.value)) <= 0.15) is not (_DENIED.search(said) is not None)
    lead = f"{'Yes' if holds else 'No'}. Going by energy it takes {_share(part.value)} of the time; the last part of a charge is often slower."
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", part.value, "x")), used=query.facts, topic="claims", lead=lead)


def _share(part: float) -> str:
    return {0.5: "half", 0.25: "a quarter"}.get(part, f"1/{1 / part:.3g}")
