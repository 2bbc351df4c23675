"""What stands now against what was told before it: "how many stops down is that from the 330?" after "at 330 volts" and "at 300 volts"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation, Scene
from assistant.patterns import Pattern
from assistant.query import Fact

_AGAINST = Pattern(
    r"^\W*(?:(?:and|so|then|ok|okay|but)\b\W*)*(?:by )?how many stops(?: (?:more|less|down|up|under|over|brighter|darker|weaker|stronger|of light|is|are|was|that|it|this|do|i|we|lose|gain|below|above))*"
    r" (?:from|than|below|above|under|over|against|compared (?:to|with))\b\W*(?:(?:with|at|the|that|my|first|old|what|it|was|i|had)\b\W*)*f?/?(?P<was>\d+(?:\.\d+)?) ?(?P<unit>[a-zµ]+)?(?: (?:before|first|one|then))*\W*$", re.I)
_COMPARED = ("voltage", "energy", "aperture", "film_speed", "distance")


def against_before(text: str, talk: Conversation) -> str | None:
    """The question of the stops from the value that stood before to the one of its kind that stands now; None where there is no such value."""
    said = _AGAINST.match(text)
    if said is None:
        return None
    for scene in reversed(talk.past):
        for old in scene.facts:
            now = [f for f in talk.scene.facts if f.quantity == old.quantity]
            if old.quantity in _COMPARED and _is_told_as(old, said["was"], said["unit"]) and len(now) == 1 and (now[0].of, now[0].unit) == (old.of, old.unit) and now[0].value != old.value and _others(scene, old.quantity) == _others(talk.scene, old.quantity):
                return f"from {old.said.strip()} to {now[0].said.strip()}, how many stops is that?"
    return None


def _others(scene: Scene, quantity: str) -> set[tuple[str, float, str]]:
    """What else is told, which must not have changed as well."""
    return {(f.quantity, f.value, f.of) for f in scene.facts if f.quantity != quantity}


def _is_told_as(fact: Fact, figure: str, unit: str | None) -> bool:
    """Whether a value was told in this figure, and in this unit where one is named."""
    return figure in re.findall(r"\d+(?:\.\d+)?", fact.said) and (unit is None or unit.lower() in fact.said.lower())
