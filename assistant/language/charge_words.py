"""What a pack holds, what a shot takes of it and how fast it is filled, where a figure is told without its unit.

"36000 watt seconds on a charge, every shot uses 200" · "charged to 300 volts when it should be 330" · "100 joules a second into a pack that holds 600".
"""

from __future__ import annotations

import re

from assistant.language.bare import UNIT_NEXT
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"energy", "voltage"})
_SO = r"(?: (?:about|only|just|roughly|up|me|to|around))*"
_HELD_OR_TAKEN = Pattern(
    rf"\b(?:(?:each|every|an?|one|per|single|full) (?:(?:full|single|whole|half|quarter|1/\d+)(?:[- ]power)? )?(?:shot|pop|flash|frame|picture|burst|exposure|firing|discharge)(?:'s)?(?: (?:on|of|at|for|to) (?:the |my |her |him |an? |1/)?\w+(?: power)?)? (?:takes|uses|costs|needs|eats|burns|draws|spends|wants|consumes|drains|is)"
    rf"|(?:pack|capacitors?|bank|battery|charge|unit|head|flash|it)(?: that| which)? (?:holds|stores|has|takes|keeps|can (?:hold|store|take)|gives|delivers)){_SO} $", re.I)
"""Before what a pack holds or a shot takes: of the kind that was told with its unit."""
_SHOULD_BE = Pattern(rf"\b(?:should (?:be|read|reach|get|have been)|(?:gets?|goes|comes?|reach(?:es)?|charged?|is|was|sits?|stops?|drops?|falls?|sags?|down)(?: up| down)?(?: only| just)? (?:to|at)|(?:only|just|normally|usually) (?:reaches|gets|reads|is|has|at)|reaches|instead of|rather than|not|(?:meant|supposed|rated) (?:to be|for|at)|(?:full|normal)(?: charge)? (?:is|was|at|being)){_SO} $", re.I)
_A_SECOND = Pattern(r"\s*(?:(?:a|an|per|every|each|in a|in one|to the) second|/ ?s(?:ec(?:ond)?)?\b)", re.I)
_WATTS = Pattern(r"\d\s*(?:watts|watt|w)$", re.I)
_CHARGING = Pattern(r"\bcharg(?:e|es|er|ers|ed|ing)\b|\bmains supply\b|\bpower supply\b|\brefill\w*|\bfills?\b|\brecycl\w*|\btops? (?:it )?up\b|\b(?:puts?|pumps?|pushes|feeds?) [^.?!]{0,40}\binto\b|\bfull again\b", re.I)


_SAID_AS_ONE = Pattern(r"(?:(?! (?:and|but|if|how|what|i|we|pack|battery|are|so) )[^.,;:?!\d]){1,40}", re.I)
"""Between the power of a pop and what it takes: "every half power pop draws 60"."""
_HOW_MANY = Pattern(r"\bhow many\b|\bhow often\b|\b(?:number|count) of\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with such figures of the kind that the one beside them has, what fills the pack as a rate, and the power that a pop's energy is told for."""
    return _at_its_power(_rate([_of_a_kind(f, facts, text) if _is_bare(f) and not f.bad and f.value >= 5 else f for f in facts], text), text)


def _at_its_power(facts: list[Fact], text: str) -> list[Fact]:
    """"9000 joules, every half power pop draws 60: how many": half is what the 60 is told for, as a guide number may be; another power is still to be asked."""
    energies = [f for f in facts if f.quantity == "energy" and not f.bad]
    if len(energies) != 2 or energies[0].value == energies[1].value or not _HOW_MANY.search(text):
        return facts
    pop = min(energies, key=lambda f: f.value)
    told = [f for f in facts if f.quantity == "power" and not f.bad and f.sentence == pop.sentence and _SAID_AS_ONE.fullmatch(text, min(f.end, pop.end), max(f.start, pop.start))]
    if len(told) != 1 or pop.at_power is not None:
        return facts
    start, end = min(told[0].start, pop.start), max(told[0].end, pop.end)
    whole = replace(pop, at_power=told[0].value, start=start, end=end, said=text[start:end])
    return [whole if f is pop else f for f in facts if f is not told[0]]


def _is_bare(fact: Fact) -> bool:
    return fact.quantity == "number" or fact.quantity == "count" and fact.said.strip().isdigit()


def _of_a_kind(number: Fact, facts: list[Fact], text: str) -> Fact:
    told = {f.quantity: f for f in facts if f.quantity in KINDS}
    before = text[max(0, number.start - 60) : number.start]
    if len(told) != 1 or UNIT_NEXT.match(text, number.end):
        return number
    kind, known = next(iter(told.items()))
    joined = _HELD_OR_TAKEN.search(before) if kind == "energy" else _SHOULD_BE.search(before)
    return replace(number, quantity=kind, unit=known.unit, of="") if joined else number


def _rate(facts: list[Fact], text: str) -> list[Fact]:
    """"100 joules a second", "a charger of 100 watts": what goes into the pack in a second, and no second of a shutter."""
    energies = [f for f in facts if f.quantity == "energy"]
    if len(energies) != 2 or not _CHARGING.search(text):
        return facts
    every = [(f, _A_SECOND.match(text, f.end)) for f in energies]
    rates = [f for f, second in every if second is not None or _WATTS.search(text[f.start : f.end])]
    if len(rates) != 1:
        return facts
    spoken = next((second for f, second in every if f is rates[0] and second is not None), None)
    rest = [f for f in facts if spoken is None or f is rates[0] or not spoken.start() <= f.start < spoken.end()]
    return [replace(f, quantity="charge_rate", unit="W", of="") if f is rates[0] else f for f in rest]
