"""Which flash of the kit can do it: "which of my flashes can do f/16 at 8 feet?"."""

from __future__ import annotations

import re

from assistant import scales
from assistant.answer import Answer, Quantity
from assistant.language.calling import called
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.solving.limits import check
from assistant.solving.solver import solve
from assistant.turn import Turn

_WHICH = Pattern(r"\bwhich (?:one |ones )?(?:of (?:my|the|our) )?(?:flash\w*|lights?|heads?|strobes?|guns?|ones?|two|them)?\b[^?.]{0,24}\b(?:can|could|will|would|does|do|is able|reach\w*|manage\w*)\b", re.I)


def which_can(turn: Turn) -> Answer | None:
    """Each flash of the kit in turn: the power it takes for the aperture and distance asked about, and whether it has it."""
    query, kit = turn.query, turn.conversation.kit
    lights = [name for name in kit.flashes() if name]
    if len(lights) < 2 or query.mentioned or not query.has("aperture", "distance") or not _WHICH.search(query.text):
        return None
    found = [(name, _power(turn, query, name)) for name in lights]
    told = [(name, power) for name, power in found if power is not None]
    if not told:
        return None
    reply = " ".join(_sentence(name, power) for name, power in told)
    return Answer(heard=query.text, status="answered" if any(_can(p) for _, p in told) else "out_of_reach", reply=reply, answers=tuple(p for _, p in told))


def _power(turn: Turn, query: Query, name: str) -> Quantity | None:
    kit = turn.conversation.kit.for_scene(query, {name})
    facts = tuple(replace(f, of=name) if f.quantity == "distance" and not f.of else f for f in query.facts)
    whole = replace(query, facts=(*kit, *facts), asks=(Ask("power", name),), mentioned=(name,), claim=False)
    solution = solve(whole)
    if solution is None or not solution.answers or solution.answers[0].quantity != "power":
        return None
    first = check(whole, solution)
    return replace(first.answers[0], of=name) if first.status in ("answered", "out_of_reach") else None


def _can(power: Quantity) -> bool:
    return float(power.value) <= 1.001


def _sentence(name: str, power: Quantity) -> str:
    who, value = called(name), float(power.value)
    opening = who[:1].upper() + who[1:]
    if _can(power):
        return f"{opening} can, at {power.set or scales.speak_power(value)} power." if value < 0.999 else f"{opening} can, at full power."
    return f"{opening} cannot: it would take {value:.3g} times its full power."
