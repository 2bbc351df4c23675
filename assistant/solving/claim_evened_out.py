"""Claims that several changes come to nothing: "a box that costs 2 stops, and in from 8 feet to 4, so the exposure stays the same"."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving.before_after import in_order, once, quantity_of, solve
from assistant.solving.ledger import WEIGHT
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import speak_length

_TENTH = 0.15
"""Stops that nobody sees."""
_WHAT = r"(?:exposure|aperture|f-?stop|f-?number|stop|light|reading|meter|it|everything|result|density|lens)"
_STAYS = r"(?:stays?|remains?|is|are|will be|comes out|reads?|ends up|should be|would be|won't change|will not change)"
_EVENS_OUT = Pattern(
    rf"\b{_WHAT} (?:on (?:the \w+|her|him|it) )?(?:still )?{_STAYS}(?: exactly| just| about)? (?:the same|unchanged|as (?:it was|before)|where it (?:is|was))\b|\bcancels?(?: each other)? out\b"
    r"|\bevens? (?:it(?:self)? |each other |things )?out\b|\bbreaks? even\b|\bmakes? up for (?:it|each other|the (?:loss|gain|cloth|box|gel|distance|other))\b|\bno (?:net )?(?:change|difference)\b|\bsame exposure\b|\bkeeps? (?:its|the|his|her|my|their)(?: same)? exposure\b", re.I)
_AS_IT_WAS = r"(?:(?:where|what|how|as|the way) (?:it|i|we|things|they|you|she|he|that)(?:'d| had|'ve| have)? (?:was|were|started|start|began|been|stood|left off|had it)|square one|the start|normal|the same|before)"
_BACK = Pattern(
    rf"\bback (?:again )?(?:to |at |on |in )?(?:just |exactly )?{_AS_IT_WAS}\b|\b{_WHAT} (?:on (?:the \w+|her|him|it) )?(?:(?:still|now|just|exactly|{_STAYS}) )*{_AS_IT_WAS}\b|\b(?:puts?|brings?|brought|gets?|got|sets?) (?:the exposure|the light|it|that|things|everything|me|us|her|him)(?: (?:all|right|just|fully|exactly))? back(?: again| then| now)?(?: (?:to|where|as|how)\b|\W*$)"
    r"|\b(?:exposure|picture|frame|neg(?:ative)?|light|it|that|we|i|i'm|we're)\b[^.?!,;]{0,24}\b(?:right|correct|good|the same|as (?:bright|light|dark|dense)) (?:again|as (?:before|it was|i had it|we had it))\b|\bexposure (?:(?:now|still|then) )*(?:right|correct)\b|\bas (?:bright|light|dark|dense) as (?:it was|before|it had been)\b|\brestor(?:es?|ed|ing) (?:the |my |its |her |his |their )?(?:old )?(?:exposure|light|density|it)\b|\b(?:undone|undoes|evened out|cancelled out|made up for (?:it|the \w+))\b", re.I)
"""That what was changed has been changed back, in effect."""
_DENIES = Pattern(r"\b(?:not|never|isn't|doesn't|don't|won't|cannot|can't)\b", re.I)


def is_said_to_even_out(query: Query) -> bool:
    """Whether it is put up that what was changed comes to nothing."""
    return query.claim and bool(_EVENS_OUT.search(query.text) or _BACK.search(query.text)) and not _DENIES.search(query.text)


_CHANGED = ("film_speed", "power", "distance", "energy", "aperture", "shutter")


def weighed_by_nobody(query: Query) -> bool:
    """Whether several changes are said to be back where they were, of which no rule of thumb knows the sum: it is found here or not at all."""
    if not query.claim or not _BACK.search(query.text):
        return False
    changed = sum(len({f.value for f in query.all(q)}) > 1 for q in _CHANGED) + any(f.quantity in ("length_range", "aperture_range") for f in query.facts)
    return changed > 0 and changed + any(f.quantity in ("loss", "filter_loss", "nd") and f.value for f in query.facts) > 1


def evened_out(query: Query) -> Solution | None:
    """Whether they do; where not, what they come to, and what would even it."""
    if not is_said_to_even_out(query):
        return None
    plain = replace(query, claim=False, asks=(Ask("stops"),))
    found = solve(plain)
    if found is None or len(found.working) < 2 or not isinstance(found.answers[0].value, float):
        return None
    net = found.answers[0].value
    if abs(net) < _TENTH:
        return replace(found, answers=(Quantity("claim", True), *found.answers[:1]), lead="Yes, it comes to nothing.", topic="claims")
    lead = f"No: it comes to {speak_stops(abs(net))} {'more' if net > 0 else 'less'} light ({net:+.2f})."
    right, said = _would_even_it(plain, net)
    return replace(found, answers=(Quantity("claim", False), *right, *found.answers[:1]), lead=lead, topic="claims").noting(said)


def _would_even_it(query: Query, net: float) -> tuple[tuple[Quantity, ...], str]:
    """What the power, else the distance, that was changed to would have to be instead, and that in words."""
    for quantity in ("power", "distance"):
        told = once(query, quantity)
        if len(told) == 2:
            second = in_order(query, quantity, told)[1]
            value = second.value * 2.0 ** (-net / WEIGHT[quantity])
            if quantity == "power" and value > 1.0005:
                return (), ""
            right = quantity_of(query, Ask(quantity), value, second)
            return (right,), f"It would take {f'{right.set} power' if quantity == 'power' else speak_length(value, preferred_unit(query))} to come out even."
    return (), ""
