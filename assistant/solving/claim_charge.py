"""What a flash fired before it is full loses, put up for a yes or a no: "the ready lamp lights at 75 percent of the energy; does that cost less than half a stop?"."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import duration
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import denied
from assistant.solving.claim_told import turned_round
from assistant.solving.solution import Solution

_OF_A_CHARGE = Pattern(r"\b(?:ready|charged?|capacitor|full|whole|its) (?:\w+ )?(?:lamp|light|neon|energy|charge|capacity|joules|watt-?seconds|voltage)\b|\b(?:of|in) (?:the |its )?(?:energy|charge|voltage)\b|\bcapacitor\b")
_KINDS = frozenset({"charge", "power", "loss", "stops", "relation", "remark", "place"})


def claim_of_charge(query: Query) -> Solution | None:
    """So many stops lost by a part of the charge, by energy or by voltage squared, against the ones that are put up."""
    parts = [f for f in query.facts if f.quantity == "charge" or f.quantity == "power" and f.value != 1]
    stops = [f for f in query.facts if f.quantity in ("loss", "stops", "relation") and f.value > 0]
    said = query.text.lower()
    if len({f.value for f in parts}) != 1 or len(stops) != 1 or not 0 < parts[0].value < 1 or {f.quantity for f in query.facts if f.origin == "said"} - _KINDS or _OF_A_CHARGE.search(said) is None:
        return None
    share = duration.energy_fraction_at(parts[0].value) if "volt" in said else parts[0].value
    lost = -duration.charge_stops(share)
    holds = within(bound_of(said[: stops[0].start])[0], lost - stops[0].value, 0.1, 0.01)
    lead = f"{'Yes' if holds else 'No'}. {share * 100:.3g} percent of the energy is {speak_stops(lost)} under."
    judged = Solution(answers=(Quantity("claim", holds), marks.stops(-lost)), used=query.facts, topic="claims", lead=lead)
    return turned_round(judged) if denied(said) else judged
