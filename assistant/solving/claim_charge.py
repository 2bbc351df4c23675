"""What a flash fired before it is full loses, and whether it is full again in time, put up for a yes or a no.

"the ready lamp lights at 75 percent of the energy; does that cost less than half a stop?" · "it recycles in 4 seconds at full: can I fire every three at half power?"
"""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import duration
from assistant.query import Query
from assistant.scales import speak_power, speak_stops
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


_IN_TIME = Pattern(r"\b(?:can|could|will|would|does|do|is|manage|enough|ready|keeps? up)\b")
_RECYCLING = frozenset({"recycle", "interval", "power", "count", "remark", "place"})


def claim_of_full_in_time(query: Query) -> Solution | None:
    """Whether a flash is full again between two pops at a power: the time to recycle goes with the energy (common practice, no source)."""
    full, every, powers, said = query.all("recycle"), query.all("interval"), query.all("power"), query.text.lower()
    weaker = [f for f in powers if f.value < 1]
    if len(full) != 1 or len(every) != 1 or len(weaker) != 1 or {f.quantity for f in query.facts if f.origin == "said"} - _RECYCLING or any(f.value != 1 for f in query.all("count")) or _IN_TIME.search(said) is None:
        return None
    if weaker[0].start < full[0].end and len(powers) == 1:
        return None  # so long at that power: what it takes at another is not told
    takes = full[0].value * weaker[0].value
    holds = takes <= every[0].value * 1.02
    lead = f"{'Yes' if holds else 'No'}. At {speak_power(weaker[0].value)} power it is full again in {takes:.3g} s, and {every[0].value:.3g} s lie between the pops."
    judged = Solution(answers=(Quantity("claim", holds), Quantity("duration", takes, "s")), used=query.facts, topic="claims", lead=lead)
    return turned_round(judged) if denied(said) else judged
