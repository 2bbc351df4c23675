"""The lens open so long at each of several pops: the light that is there builds up for all those times together."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving.pop_facts import popped
from assistant.solving.solution import Solution


def _in_all(query: Query) -> tuple[Fact, Fact] | None:
    """The time of one part and the pops that it is for."""
    each, pops = query.last("open_each"), popped(query)
    return (each, pops) if each is not None and pops is not None and pops.value > 1 else None


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """A question about the light that is there, with one time in the place of so many parts."""
    told = _in_all(query)
    if told is None:
        return None
    each, pops = told
    if not any(f.of == "ambient" or f.quantity == "exposure_value" for f in query.facts):
        return None
    whole = replace(each, quantity="shutter", value=each.value * pops.value, unit="s")
    return query.with_facts(whole if f is each else f for f in query.facts if f is not pops), (pops, each), (f"{pops.value:g} times {each.value:.3g} s make {whole.value:.3g} s of the light that is there.",)


def solve(query: Query, ask: Ask) -> Solution | None:
    """"how long does the room build up in all?": so many times the time of one."""
    told = _in_all(query)
    if told is None or ask.of in ("freeze", "recycle") or query.has("recycle"):
        return None
    each, pops = told
    return Solution(answers=(Quantity("duration", each.value * pops.value, "s"),), used=told, topic="time", working=(f"{pops.value:g} times {each.value:g} s",))
