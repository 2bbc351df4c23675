"""Pops claimed for another distance, "one is right at 2 m, so two are right at 4 m", and what so many more of them gain."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import NUMBER_WORDS, number, plain, terms
from assistant.solving.solution import Solution
from assistant.units import speak_length

_NUM = r"\d+|single|once|twice|" + "|".join(NUMBER_WORDS)
_POPS = Pattern(rf"\b(?P<n>{_NUM}) (?:(?:flash|full|full-power|equal|single|separate) )*(?:pops?|bursts?|firings?|discharges?)\b|\bpop(?:s|ping)? (?:it )?(?P<again>once|twice)\b")
_BARE = Pattern(rf"\b(?P<n>{_NUM})\b(?= (?:is|are|will|would|should|does|do|gives?|at|for|right|correct|enough)\b)")


_CLAIMED = Pattern(rf"\b(?:need|needs|takes?|want|be|use|fire|give)\s+(?P<n>\d+|{'|'.join(NUMBER_WORDS)})(?=\s*(?:[,.;?!]|$|of them|then|now|right))")


_SO_MANY_TIMES = Pattern(rf"\b(?P<n>twice|double|(?:{_NUM})(?= times))(?: times)?(?: as many| the number of| the| more)? (?:pops|flashes|bursts|firings)\b")
"""Beside a number of pops that was told."""
_TIMES_AS_MANY = Pattern(rf"\b(?P<n>{_NUM})(?: times)?(?: as many| the number of| the| more)? (?:pops|flashes|bursts|firings)\b")
"""So many times the pops, which is of what one distance took before."""


def claim_of_pops(query: Query) -> Solution | None:
    """The pops claimed for another distance, against the square of the distances; None where not both are said."""
    said = plain(query.text)
    ratio = _ratio(query, said)
    counts = _counts(said)
    many = _TIMES_AS_MANY.search(said) if not counts else _SO_MANY_TIMES.search(said)
    if many is not None and len(counts) < 2:
        share = _value(many["n"])
        counts = [counts[0], counts[0] * share] if counts else [share]  # "it took 4 pops; twice the distance, twice the pops"
    if not query.claim or ratio is None or not counts or " again" in said or query.has("guide_number") or len({f.value for f in query.all("aperture")}) > 1:
        return None
    base, claimed = (counts[0], counts[-1]) if len(counts) > 1 else (1.0, counts[0])
    if len(counts) == 1 and query.all("number"):
        return None  # a figure that is read as nothing
    right = math.ceil(base * ratio**2 - 1e-6)
    if right < 1:
        return None
    lengths = query.all("distance")
    place = f"At {speak_length(lengths[-1].value, lengths[-1].unit)}" if len(lengths) == 2 else f"At {ratio:.3g} times the distance"
    holds = claimed == right
    why = f"the light falls with the square of the distance, so {base:g} {'pop' if base == 1 else 'pops'} {'becomes' if base == 1 else 'become'} {base:g} x {ratio:.3g} x {ratio:.3g} = {base * ratio**2:.3g}."
    used = (*lengths, *query.all("count"), *query.all("number"), *query.all("pops"), *query.all("aperture"), *query.all("times"))
    return Solution(answers=(Quantity("claim", holds, ""), Quantity("count", float(right), "pops")), used=used, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {place} it takes {right} {'pop' if right == 1 else 'pops'}{'' if holds else f', not {claimed:g}'}: {why}")


_PUT_UP = Pattern(r"\b(?:is|are|will|would|do|does|should|can)(?:n't)?(?: (?:only|just|about|the|my|these|those))*\s*$")
_SUFFICES = Pattern(r"(?: (?:of (?:them|those|these)|in all|altogether|at that|each|then|at full|there))*(?: be)? (?:(?P<exact>right|correct|the right number)|enough|sufficient|plenty|do\b|do it|suffice|manage|cover it|get (?:me|us|it) (?:there|that))\b")


_ENOUGH_IF = Pattern(r"\b(?:enough|sufficient|plenty|ok|okay|will it do|would it do) (?:if|when) (?:i|we) (?:fire|pop|flash|hit|set) (?:it |that |them |the \w+ )?(?:off )?$")
"""Before the pops: "enough if I fire it 3 times?"."""


def claim_of_enough_pops(query: Query) -> Solution | None:
    """"one pop gives f/4 and I need f/11. are eight enough?": the pops that it takes, against those put up."""
    said = plain(query.text)
    many = [f for f in query.facts if f.quantity == "count" and f.unit in ("pops", "flashes") and f.origin == "said" and not f.bad and f.value >= 1]
    put_up = [(f, after) for f in many if (after := _SUFFICES.match(said, f.end)) and _PUT_UP.search(said[: f.start]) or (after := _ENOUGH_IF.search(said[: f.start]))]
    if len(put_up) != 1 or not query.has("aperture") or query.asks:
        return None
    from assistant.solving.solver import solve

    (fact, after), rest = put_up[0], query.with_facts(f for f in query.facts if f is not put_up[0][0])
    found = solve(replace(rest, asks=(Ask("count", "", fact.unit),), claim=False))
    if found is None or found.status != "answered" or not found.answers or found.answers[0].quantity != "count":
        return None
    right = float(found.answers[0].value)
    holds = fact.value == right if after.groupdict().get("exact") else fact.value >= right
    takes = f"It takes {right:g} {fact.unit if right != 1 else fact.unit.removesuffix('es' if fact.unit == 'flashes' else 's')}"
    return replace(found, lead=f"{'Yes' if holds else 'No'}. {takes}{'' if fact.value == right else f', not {fact.value:g}'}.", answers=(Quantity("claim", holds), found.answers[0]), used=(*found.used, fact), topic="claims")


_FEWER = Pattern(r"\b(?:loses?|costs?|less|darker|dimmer|weaker|down|drops?|lowers?|under|takes? (?:off|away)|reduces?|cuts?)\b")
_SETTLED_ELSEWHERE = ("guide_number", "distance", "power", "film_speed", "aperture", "energy", "shutter", "open_each", "number", "ratio", "modifier")


def claim_of_pops_in_stops(query: Query) -> Solution | None:
    """"from three pops to six is two stops more": the stops are the doublings of their number, and the way is as said."""
    counts = [f for f in query.all("count") if f.unit in ("pops", "flashes")]
    steps = [f for f in query.facts if f.quantity in ("stops", "relation", "signed", "loss")]
    one_to_many = [f for f in counts if f.value > 1] if len(counts) == 1 and _FROM_ONE.search(plain(query.text)[: counts[0].start]) else []
    if len(steps) != 1 or not (len(counts) == 2 or one_to_many) or any(query.has(q) for q in _SETTLED_ELSEWHERE):
        return None
    before, after = (counts[0].value, counts[1].value) if len(counts) == 2 else (1.0, counts[0].value)
    if len(counts) == 2 and _INSTEAD.search(plain(query.text)[counts[0].end : counts[1].start]):
        before, after = after, before
    right = math.log2(after / before)
    if len(counts) == 2 and steps[0].end <= counts[1].start and _COMES_RIGHT.match(plain(query.text), counts[1].end) is not None:
        level = -abs(steps[0].value) if _FEWER.search(plain(query.text)) or _WANTED.search(plain(query.text)[: steps[0].start]) else abs(steps[0].value)
        holds = abs(level + right) < TOLERANCE
        return Solution(answers=(Quantity("claim", holds), marks.stops(level + right)), used=(*counts, *steps), topic="claims", lead=f"{'Yes' if holds else 'No'}. {before:g} to {after:g} is {speak_stops(abs(right))} {'more' if right >= 0 else 'less'}.")
    claimed = -abs(steps[0].value) if _FEWER.search(plain(query.text)) else abs(steps[0].value)
    holds = abs(right - claimed) < TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=(*counts, *steps), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. The light of pops adds, and every doubling of their number is one stop: {before:g} to {after:g} is {speak_stops(abs(right))} {'more' if right >= 0 else 'less'}.")


_COMES_RIGHT = Pattern(r"(?: of them| pops)? (?:(?:are|is|be|will be|would be|come out|must be|should be) )?(?:just |exactly |quite )?(?:right|correct|enough|spot on)\b|(?: of them| pops)? (?:do it|get it right|expose it right)\b")
"""So many pops make good what fewer of them were short of."""
_FROM_ONE = Pattern(r"\b(?:one|an?|1|single) (?:full )?(?:pop|flash|burst)(?: up| on)? to (?:firing )?$")
_WANTED = Pattern(r"\b(?:want|need|would like|'d like|like|must have|am after|looking for)\b[^.?!;]{0,16}$")
"""So many stops that are still to come."""
_INSTEAD = Pattern(r"\b(?:instead of|rather than|in place of|than|against|over|compared)\b")


def _ratio(query: Query, said: str) -> float | None:
    """How many times the distance: of two lengths, or as said."""
    lengths = query.all("distance")
    if len(lengths) == 2 and min(f.value for f in lengths) > 0:
        return lengths[1].value / lengths[0].value
    far = [t for t in terms(said) if t.quantity == "distance"]
    return float(2 ** far[0].doublings) if len(far) == 1 and not lengths else None


def _counts(said: str) -> list[float]:
    found = [(m.start(), _value(m["n"] or m["again"])) for m in _POPS.finditer(said)]
    if len(found) == 1:
        found += [(m.start(), _value(m["n"])) for m in _BARE.finditer(said) if m.start() > found[0][0] + 3 and m["n"] not in ("a", "an", "twice")]
    if len(found) == 1:
        found += [(m.start("n"), _value(m["n"])) for m in _CLAIMED.finditer(said) if m.start() > found[0][0] + 3]
    return [value for _, value in sorted(found)]


def _value(word: str) -> float:
    return {"single": 1.0, "once": 1.0, "twice": 2.0, "double": 2.0}.get(word) or number(word)
