"""What of a battery's charge becomes light: "three quarters of that reaches the tube", "40 percent is lost as heat".

Such a part is no power of a pop. It is told of the battery and stays with it: "and if a pop takes 200 J?".
"""

from __future__ import annotations

import re

from assistant.parts import A_PART, part_said
from assistant.patterns import Pattern
from assistant.query import Fact

_OF_IT = r"(?: of (?:it|that|this|them|which|(?:the|its) (?:charge|energy|battery|power|watt[- ]hours)))?(?: (?:actually|really|only|ever|is|are|gets|goes|get|go|turns?|finds? its way))*"
_REACHES = Pattern(
    rf"\b{A_PART.format('kept')}{_OF_IT} (?:reach(?:es|ing)?|to (?=the (?:tube|lamp|flash|head|capacitor))|into|through|(?:ends?|ending) up (?:in|at|as)|(?:comes?|coming) (?:through|over|across|out)|arriv(?:es?|ing)|becom(?:es?|ing)|(?:makes?|making) it|usable|useful|used|efficien\w+)\b"
    rf"|\b(?:efficien\w+|usable)(?: (?:is|are|of|at|about|only|part))*,? {A_PART.format('said')}"
    rf"|\b{A_PART.format('lost')}{_OF_IT} (?:lost|wasted|(?:as|in|to|into) (?:heat|warmth|the (?:charger|electronics|converter|circuit\w*)))\b|\b(?:los(?:es|ing)|wast(?:es|ing)) (?:about |some )?{A_PART.format('gone')}", re.I)
"""What of the charge becomes light: "60 percent of that reaches the tube", "40 percent is lost as heat"."""
_BATTERY = Pattern(r"\b(?:tube|charger|usable|batter(?:y|ies)|accumulator|cells)\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the part of the charge that reaches the tube told apart, where a battery is told of, or the tube itself."""
    found = _REACHES.search(text) if any(f.quantity == "supply" for f in facts) or _BATTERY.search(text) else None
    if found is None:
        return facts
    name = next(name for name in ("kept", "said", "lost", "gone") if found[name])
    start, end, part = found.start(name), found.end(name), part_said(found[name])
    told = Fact("charge_share", 1 - part if name in ("lost", "gone") else part, start=start, end=end, said=found[name])
    return sorted([*(f for f in facts if not start <= f.start < end), told], key=lambda f: f.start)
