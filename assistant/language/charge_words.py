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
    rf"\b(?:(?:each|every|an?|one|per|single|full) (?:(?:full|single|whole) )?(?:shot|pop|flash|frame|picture|burst|exposure|firing|discharge)(?:'s)?(?: (?:on|of|at|for|to) (?:the |my |her |him )?\w+)? (?:takes|uses|costs|needs|eats|burns|draws|spends|wants|consumes|drains|is)"
    rf"|(?:pack|capacitors?|bank|battery|charge|unit|head|flash|it)(?: that| which)? (?:holds|stores|has|takes|keeps|can (?:hold|store|take)|gives|delivers)){_SO} $", re.I)
"""Before what a pack holds or a shot takes: of the kind that was told with its unit."""
_SHOULD_BE = Pattern(rf"\b(?:should (?:be|read|reach|get|have been)|(?:gets?|goes|comes?|reach(?:es)?|charged?|is|was|sits?|stops?|drops?|falls?|sags?|down)(?: up| down)?(?: only| just)? (?:to|at)|(?:only|just|normally|usually) (?:reaches|gets|reads|is|has|at)|reaches|instead of|rather than|not|(?:meant|supposed|rated) (?:to be|for|at)|(?:full|normal)(?: charge)? (?:is|was|at|being)){_SO} $", re.I)
_A_SECOND = Pattern(r"\s*(?:(?:a|an|per|every|each|in a|in one|to the) second|/ ?s(?:ec(?:ond)?)?\b)", re.I)
_WATTS = Pattern(r"\d\s*(?:watts|watt|w)$", re.I)
_CHARGING = Pattern(r"\bcharg(?:e|es|er|ers|ed|ing)\b|\bmains supply\b|\bpower supply\b|\brefill\w*|\bfills?\b|\brecycl\w*|\btops? (?:it )?up\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with such figures of the kind that the one beside them has, and what fills the pack as a rate."""
    facts = _rate([_of_a_kind(f, facts, text) if _is_bare(f) and not f.bad and f.value >= 5 else f for f in facts], text)
    return _part_kept(facts, text) if any(f.quantity == "energy" for f in facts) else facts


_PER_CENT = r"(?P<{0}>(?:\d{{1,2}}(?:\.\d+)?|ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?= ?%| per ?cent)|(?:half|a third|a quarter|a fifth|two thirds|three quarters)(?= of | is | are ))(?: ?%| per ?cent)?"
_OF_IT = r"(?: of (?:it|that|this|them|which|(?:the|its) (?:charge|energy|battery|power|watt[- ]hours)))?(?: (?:actually|really|only|ever|is|are|gets|goes|get|go))*"
_REACHES = Pattern(
    rf"\b{_PER_CENT.format('kept')}{_OF_IT} (?:reach(?:es)?|to (?=the (?:tube|lamp|flash|head|capacitor))|into|through|ends? up (?:in|at)|arrives?|makes? it|comes? out|usable|useful|used|efficien\w+)\b"
    rf"|\b(?:efficien\w+|usable)(?: (?:is|are|of|at|about|only|part))*,? {_PER_CENT.format('said')}"
    rf"|\b{_PER_CENT.format('lost')}{_OF_IT} (?:lost|wasted|(?:as|in|to) (?:heat|the (?:charger|electronics|converter|circuit\w*)))\b|\b(?:los(?:es|ing)|wast(?:es|ing)) (?:about |some )?{_PER_CENT.format('gone')}", re.I)
"""What of the charge becomes light: "60 percent of that reaches the tube", "40 percent is lost as heat"."""
_TENS = {"ten": 10, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "half": 50, "a third": 100 / 3, "a quarter": 25, "a fifth": 20, "two thirds": 200 / 3, "three quarters": 75}


def _part_kept(facts: list[Fact], text: str) -> list[Fact]:
    """"80 per cent of it reaches the tube": a part of the charge, and no power of the flash."""
    found = _REACHES.search(text)
    telling = next((f for f in facts if found and found.start() <= f.start < found.end()), None)
    if found is None or telling is None:
        return facts
    said = next(part for part in found.groups() if part).lower()
    part = float(_TENS.get(said) or said) / 100
    kept = replace(telling, quantity="charge_kept", value=1 - part if found["lost"] or found["gone"] else part, unit="%", of="", cue="")
    return [kept if f is telling else f for f in facts]


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
