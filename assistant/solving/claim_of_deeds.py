"""Two things done at once, said by how much and without figures of a case: "double the distance and open up two stops, and the exposure stays the same".

Each deed is so many stops of flash light on the film; their sum is held against what is said to follow. A shutter time
is none of them: it does not act on the flash, and whose light is meant must then be told.
"""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_denial import called_wrong
from assistant.solving.claim_rules import WEIGHTS, elsewhere, keeps_together
from assistant.solving.claim_words import Term, plain, terms
from assistant.solving.how_much import Said
from assistant.solving.solution import Solution

_DEEDS = ("distance", "power", "count", "film_speed", "pops")
_STAYS = Pattern(r"\b(?:stays?|remains?|is|are|will be|comes out|gives?|keeps?|leaves?)\b[^.;?!]{0,30}\b(?:the same|unchanged|as it was|where it was)\b|\b(?:cancels?|evens?)\b[^.;?!]{0,20}\bout\b|\bthe same (?:exposure|light|picture)\b")
_DONE = Pattern(
    r"\b(?:(?P<more>open\w*(?: (?:the |my )?(?:lens|aperture))?(?: up)?|(?:turn|dial|push|set|crank)\w* (?:the |my )?(?:flash|power|light|head) up|(?:turn|dial)\w* up (?:the |my )?(?:flash|power|light|head))"
    r"|(?:clos|stop)\w*(?: (?:the |my )?(?:lens|aperture))? down|(?:turn|dial|pull|set)\w* (?:the |my )?(?:flash|power|light|head) down|(?:turn|dial)\w* down (?:the |my )?(?:flash|power|light|head))(?: by)? (?:only |just |another )?$")
"""Before the stops by which the lens or the flash is turned."""
_OTHER_MATTER = Pattern(r"\b(?:shutter|time|ambient|room|background|daylight|depth|dof|sharp\w*|grain|soft\w*|reach\w*|range|guide|need\w*|must|have to|camera|rim|behind|umbrella|softbox|gel|filter|nd|energy)\b")


def claim_of_deeds(query: Query) -> Solution | None:
    """The verdict on what two deeds or more come to together; None where a part of it is not one of them, or nothing is said to follow."""
    said = plain(query.text)
    found = terms(query.text)
    if not query.claim or len(found) < 2 or _OTHER_MATTER.search(said) or elsewhere(said) or any(f.quantity in ("aperture", "distance", "guide_number", "shutter", "film_speed", "exposure_value", "energy") for f in query.facts):
        return None
    deeds = [(t, stops) for t in found if (stops := _stops(said, t)) is not None]
    rest = [t for t in found if all(t is not d for d, _ in deeds)]
    end = max((t.end for t, _ in deeds), default=0)
    if len(deeds) < 2 or any(t.start < end for t in rest) or any(t.quantity == "distance" for t, _ in deeds) and keeps_together(said):
        return None
    net = sum(stops for _, stops in deeds)
    sizes = [s for s in how_much.every(query) if s.start >= end]
    holds = _holds(said, end, net, sizes)
    if holds is None:
        return None
    lead = f"{'Yes' if holds else 'No'}. Together that is {'no change' if abs(net) < 0.005 else f'{speak_stops(abs(net))} ' + ('more' if net > 0 else 'less')} ({net:+.2f})."
    return Solution(answers=(Quantity("claim", holds), marks.stops(net)), used=query.facts, topic="claims", lead=lead)


def _stops(said: str, term: Term) -> float | None:
    """The stops that one deed puts on the film; None where a term is no deed."""
    if term.quantity in _DEEDS:
        return term.doublings * WEIGHTS["flash"][term.quantity]
    if term.quantity != "stops":
        return None
    done = _DONE.search(said[: term.start])
    return None if done is None else abs(term.doublings) * (1 if done["more"] else -1)


def _holds(said: str, end: int, net: float, sizes: list[Said]) -> bool | None:
    """Whether what is said to follow holds."""
    after = said[end:]
    if _STAYS.search(after):
        denied = after.count("n't") + after.count(" not ")
        return ((abs(net) < how_much.NEAR_SAME) is not (denied % 2 == 1)) is not called_wrong(said)
    sized = [s for s in sizes if s.kind in ("stops", "share")] or [s for s in sizes if s.kind == "way"]
    if len(sized) != 1:
        return None
    return how_much.verdict(sized, [net], said)
