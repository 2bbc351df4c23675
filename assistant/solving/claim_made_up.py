"""Whether one thing makes up for another: "the cloth costs a stop and a half; from a quarter to full power, is that enough?"."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import aperture_difference_stops, film_speed_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import EXACTLY
from assistant.solving.claim_rules import WEIGHTS
from assistant.solving.claim_words import Term, plain, terms
from assistant.solving.solution import Solution

_MAKES_UP = Pattern(
    r"\b(?:mak(?:e|es|ing)|made) (?:it |that |this |the \w+ )?(?:all )?(?:up (?:for|again)|good|good for)\b|\bcompensat\w*|\bcancel\w*(?: (?:it|that|each other|out))?|\boffsets?\b|\b(?:balanc|even)\w* (?:it |that |them )?out\b"
    r"|\b(?:win|wins|gets?|give|gives|brings?|puts?) (?:it |that |the \w+ )?back (?:what|all)\b|\b(?:make|makes|made) (?:(?:it|that|this|them|those|the loss) )?up\b|\bcounter(?:s|act\w*)?\b|\bcovers? (?:the|that|its?|my) (?:loss|cloth|gel|filter|umbrella|softbox|silk|diffus\w+|scrim)\b"
)
_SETS_RIGHT = Pattern(
    r"\b(?:put|puts|set|sets|get|gets|bring|brings|make|makes|come|comes) (?:me |it |things |us |her |him |them |that |the \w+ )?(?:all |just |back )*(?:right|correct|spot on|level|back(?: (?:to|where|on|in)\b|\W*$))(?! (?:after|beside|behind|here|there|next))"
    r"|\b(?:restor\w+|gets?|brings?|puts?) (?:me |it |us |the |my |her )?(?:back|exposure|light|same|old)\b|\bdo(?:es)? (?:it|the (?:trick|job))\b|\bthe right power\b|\b(?:is|would|will|was)\b[^.?!,]{0,24}\bpower (?:be |now |then )*(?:right|correct)\b(?! (?:after|beside|behind|here|there|next))")
"""What is turned is to come out as it was before: too much is as wrong as too little."""
_ENOUGH_POWER = Pattern(r"\b(?:is|would|will|does|was)\b[^.?!,]{0,24}\bpower (?:be |now |then )*(?:enough|suffic\w+|cover it|see me right|make it)\b")
_TAKEN_OFF = Pattern(r"\b(?:took|take|takes|taken|taking|pull(?:ed)?|strip(?:ped)?|whip(?:ped)?|remov\w+|peel(?:ed)?)\b[^.?!]{0,24}\b(?:off|away|out)\b|\b(?:remov\w+|without|unclip\w*|ditch\w*)\b|\b(?:comes?|came|goes|went|is|was) (?:off|away)\b")
_ENOUGH = Pattern(r"\b(?:enough|at least|suffic\w*|can|could|covers?)\b")
_BY_POWER = Pattern(r"\b(?:with|by|on|through|from|using|out of) (?:the )?power (?:alone|only|by itself)\b|\b(?:by|with|through) (?:turning (?:it |the flash |the power )?up|(?:just |only )?(?:the |more )?power)(?: alone| only)?\W*$")
"""It is to be made up for from what the flash has left, which is a question of how far it is from full power."""
_A_CASE = Pattern(r"\b(?:i|i'm|im|i've|my|me|we|our)\b")
TOLERANCE = 0.2
"""Stops within which the one makes up for the other: less than a third, the least that gear is marked in."""
_DENIED = Pattern(r"(?:n't|\bnot|\bnever|\bcannot|\b(?:doesn|don|won|can|couldn|wouldn|isn)t)(?: (?:quite|fully|really|nearly|be|go|enough|to|even|at all))*\s*$")
_LOSSES = ("loss", "filter_loss", "nd")
_GAINS = {quantity: WEIGHTS["flash"][quantity] for quantity in ("power", "pops", "count", "film_speed", "aperture", "distance")}
"""Stops of light of the flash for one doubling of each."""
_BELONGS = frozenset({*_LOSSES, "stops", "power_down", "power", "aperture", "film_speed", "distance", "aperture_range", "count", "energy", "modifier", "camera_filter", "number", "place", "remark", "rows"})


def claim_of_made_up(query: Query) -> Solution | None:
    """The light won against the light lost, where one change is told to make up for what takes light; None where either is not told once and plainly."""
    said = plain(query.text)
    by_power = len({f.value for f in query.all("power")}) > 1 and any(f.quantity in _LOSSES and f.value for f in query.facts)
    right = _SETS_RIGHT.search(said) if by_power else None
    made = _MAKES_UP.search(said) or right or (_ENOUGH_POWER.search(said) if by_power else None)
    if not query.claim or made is None or {f.quantity for f in query.facts} - _BELONGS:
        return None
    lost = _lost(query, said)
    gained = _gained(query, said) if lost is not None else None
    if lost is None or gained is None or lost[0] <= 0:
        return None
    if right and _TAKEN_OFF.search(said):
        return _after_it_is_off(query, lost, gained)
    short = lost[0] - gained[0]
    holds = short <= TOLERANCE if not right and not EXACTLY.search(said) and (_ENOUGH.search(said) or _A_CASE.search(said)) else abs(short) <= TOLERANCE
    if _DENIED.search(said[: made.start()]):
        holds = not holds
    rest = "the one makes up for the other" if abs(short) <= TOLERANCE else f"it falls {speak_stops(short)} short" if short > 0 else f"that is {speak_stops(-short)} to spare"
    lead = f"{'Yes' if holds else 'No'}: {speak_stops(lost[0])} lost, {speak_stops(abs(gained[0]))} {'won' if gained[0] >= 0 else 'lost again'}; {rest}."
    return Solution(lead=lead, answers=(Quantity("claim", holds), marks.stops(gained[0])), used=(*lost[1], *gained[1], *query.all("modifier"), *query.all("camera_filter"), *query.all("rows")), topic="claims")


def worn_beside_powers(query: Query) -> bool:
    """What a softbox takes, told beside two powers, is no rule of what a power takes."""
    return any(f.quantity in ("loss", "filter_loss") and f.unit and f.value for f in query.facts) and len({f.value for f in query.all("power")}) > 1


def _after_it_is_off(query: Query, lost: tuple[float, tuple[Fact, ...]], gained: tuple[float, tuple[Fact, ...]]) -> Solution:
    """What took light is gone, so the power comes down by as much."""
    over = lost[0] + gained[0]
    holds = abs(over) <= TOLERANCE
    lead = f"{'Yes' if holds else 'No'}: {speak_stops(lost[0])} more without it, {speak_stops(abs(gained[0]))} {'more' if gained[0] > 0 else 'less'} by the power" + ("; the one makes up for the other." if holds else f"; that leaves {speak_stops(abs(over))} too {'much' if over > 0 else 'little'}.")
    return Solution(lead=lead, answers=(Quantity("claim", holds), marks.stops(gained[0])), used=(*lost[1], *gained[1], *query.all("modifier"), *query.all("camera_filter")), topic="claims")


def _lost(query: Query, said: str) -> tuple[float, tuple[Fact, ...]] | None:
    """The stops that are lost in all, and where they were told."""
    told = tuple(f for f in query.facts if f.quantity in _LOSSES and f.value)
    stops = tuple(f for f in query.facts if f.quantity in ("stops", "power_down"))
    if told and not stops:
        return sum(f.value for f in told), told
    if told or len(stops) > 1:
        return None
    spoken = [t for t in terms(said) if t.quantity in ("stops", "filter")]
    return (abs(stops[0].value), stops) if stops else (spoken[0].doublings, ()) if len(spoken) == 1 else None  # "the two stops my silk eats"


def _gained(query: Query, said: str) -> tuple[float, tuple[Fact, ...]] | None:
    """The stops that are won by the one setting that was changed, by its two figures or by how many times; None where more than one was changed."""
    powers = query.all("power")
    if len(powers) == 1 and 0 < powers[0].value <= 1 and _BY_POWER.search(said):
        return math.log2(1 / powers[0].value), (*powers, *query.all("aperture"))  # what is left up to full power
    span = query.all("aperture_range")
    if len(span) == 1 and not query.has("aperture"):
        return aperture_difference_stops(span[0].value, span[0].other), tuple(span)
    pairs = [pair for pair in (query.all(q) for q in ("power", "energy", "aperture", "film_speed", "distance")) if len({f.value for f in pair}) > 1]
    changes = [t for t in terms(said) if t.quantity in _GAINS]
    if len(pairs) == 1 and len(pairs[0]) == 2:
        beside = [t for t in changes if t.quantity != pairs[0][0].quantity]
        return (_between(*pairs[0]), tuple(pairs[0])) if not beside else None
    if pairs or len(changes) != 1:
        return None
    within = tuple(f for f in query.facts if f.quantity not in (*_LOSSES, "stops", "power_down") and f.start < changes[0].end and f.end > changes[0].start)
    return (_won(changes[0]), within) if not any(f.quantity in _GAINS and f not in within for f in query.facts) else None


def _between(one: Fact, two: Fact) -> float:
    """Stops more light, or exposure, with the second."""
    if one.quantity == "aperture":
        return aperture_difference_stops(one.value, two.value)
    if one.quantity == "film_speed":
        return film_speed_difference_stops(one.value, two.value)
    return _GAINS.get(one.quantity, 1.0) * math.log2(two.value / one.value)


def _won(change: Term) -> float:
    return _GAINS[change.quantity] * change.doublings
