"""What a flash gives that is not full, or that has other watt-seconds than another: stops by energy, by voltage squared, by heads."""

from __future__ import annotations

import math

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import duration
from assistant.query import Ask, Fact, Query
from assistant.solving import energy_short
from assistant.solving.pop_facts import own, said_twice
from assistant.solving.solution import Solution

_NOT_FULL = Pattern(r"charge|ready|voltage")
_OF_ITS_ENERGY = Pattern(r" ?(?:(?:of|in) )?(?:its |the |my )?(?:full |whole )?(?:energy|capacity|joules|watt-?seconds)\b")


def solve(query: Query, ask: Ask) -> Solution | None:
    """Stops lost when a flash is fired before it is full: by energy, or by voltage squared."""
    if query.has("guide_number") or query.has("aperture"):
        return None
    volts, energies = query.all("voltage"), query.all("energy")
    if ask.of == "split" or "each" in query.cues and len(energies) == 1 and (query.cues & {"less", "down", "loss"} or energies[0].origin == "kept") and {f.quantity for f in query.facts if f.quantity != "number" or f.value != energies[0].value} == {"energy", "count"}:
        return _split_stops(query)
    if len(volts) == 2:
        low, high = sorted(f.value for f in volts)
        return Solution(answers=(Quantity("stops", 2 * math.log2(low / high), "stops"),), used=tuple(volts), topic="time", working=("energy goes with the voltage squared",))
    if (waited := _waited(query) or _turned_down(query)) is not None:
        return waited
    lower = query.text.lower()
    partial = [f for f in query.all("power") if f.value < 1]
    part = query.last("charge") or next(iter(partial), None)
    if part and (len(partial) <= 1 or said_twice(query)) and not energies and 0 < part.value < 1 and (_NOT_FULL.search(lower) or _OF_ITS_ENERGY.match(lower, part.end)):
        by_voltage = "volt" in lower
        value = duration.charge_stops(duration.energy_fraction_at(part.value) if by_voltage else part.value)
        note = "" if by_voltage else "That is by energy; of the voltage it would be twice as many stops."
        same = tuple(f for f in query.facts if f.quantity in ("charge", "power") and f.value == part.value)
        return Solution(lead="Under by", answers=(Quantity("stops", value, "stops"),), used=(part, *same), topic="time", notes=(note,))
    return _two_energies(query, energies, lower)


def _waited(query: Query) -> Solution | None:
    """"fired again 3 s into a recycle of 6": the charger refills at an even rate, so half of the energy is there."""
    full, since = query.all("recycle"), [f for f in query.facts if f.quantity in ("shutter", "time", "interval", "duration")]
    if len(full) != 1 or len(since) != 1 or not 0 < since[0].value <= full[0].value or {f.quantity for f in query.facts} - {"recycle", since[0].quantity, "remark", "place", "count"} or any(f.value != 1 for f in query.all("count")):
        return None
    value = duration.charge_stops(since[0].value / full[0].value)
    note = "Going by energy at an even rate; the last part of a charge is often slower, so it may be a little better than that."
    return Solution(lead="Under by", answers=(Quantity("stops", value, "stops"),), used=query.facts, topic="time", working=(f"{since[0].value:g} s of {full[0].value:g} s",), notes=(note,))


def _turned_down(query: Query) -> Solution | None:
    """"full recycles in 9 s, I want a pop every 3 s: how many stops down?": recycling goes with the energy."""
    waits = [f for f in query.facts if f.quantity in ("recycle", "interval")]
    if len(waits) != 2 or len({f.value for f in waits}) != 2 or {f.quantity for f in query.facts} - {"recycle", "interval", "power", "remark", "place"} or any(f.value != 1 for f in query.all("power")):
        return None
    long, short = sorted(waits, key=lambda f: -f.value)
    return Solution(lead="Down by", answers=(Quantity("stops", duration.charge_stops(short.value / long.value), "stops"),), used=query.facts, topic="time", working=("recycling goes with the energy",))


def _split_stops(query: Query) -> Solution | None:
    """"a pack split evenly over three heads: how many stops does each drop?": of all of it in one head."""
    heads = next((f for f in query.all("count") if f.value > 1 and f.unit in ("flashes", "heads")), None)
    if heads is None or query.has("ratio"):
        return energy_short.uneven(query, heads) if heads else None
    return Solution(lead="Each head gives", answers=(Quantity("stops", -math.log2(heads.value), "stops"),), used=(*query.all("count"), *query.all("energy"), *query.all("number")), topic="time", working=(f"1/{heads.value:g} of the energy",))


def _counts_both(head: Fact, energies: list[Fact], text: str) -> bool:
    """"two heads, a 600 and a 150": the two of which each energy is told."""
    first = min(energies, key=lambda f: f.start)
    return head.value == len(energies) == 2 and head.end <= first.start and patterns.search(r"[,:;]|\b(?:of|with|at)\b", text[head.end : first.start]) is not None


_TOGETHER = Pattern(r"\b(?:together|both|combined|added|adding|add|plus|as well)\b")
_ALONE = Pattern(r"\b(?:than|over|beside|against)\b[^.?!]{0,16}\b(?:alone|by itself|on its own|single|(?P<many>\d+))\b|\b(?:the|a) (?P<one>\d+)(?: \w+)? (?:alone|by itself|on its own)\b")


def _with_another(query: Query, energies: list[Fact]) -> Solution | None:
    """"a 300 and a 600 together: how many stops more than the 300 alone?": the sum against the one that is named again."""
    again = [e for e in energies if any(f.quantity in ("number", "film_speed") and f.value == e.value and f.start > e.end for f in query.facts)]
    if len(again) != 1:
        return None
    both = sum(e.value for e in energies)
    return Solution(answers=(Quantity("stops", math.log2(both / again[0].value), "stops"),), used=query.facts, topic="time", working=(f"log2 of {both:g} / {again[0].value:g}",))


def _two_energies(query: Query, energies: list[Fact], lower: str) -> Solution | None:
    if len(energies) != 2 or query.has("distance"):
        return None
    if _TOGETHER.search(lower) and _ALONE.search(lower):
        return _with_another(query, energies)
    heads = [f for f in query.facts if f.quantity == "count" and not _counts_both(f, energies, query.text)]
    one, two = (e.value * math.prod(h.value for h in heads if own(h, energies, query.text) is e) for e in energies)
    part = [f for f in query.facts if f.quantity in ("power", "power_down") and f.value != 1]
    if part:
        return None
    value = math.log2(two / one)
    between = any(w in lower for w in ("between", "difference", "brighter", "stronger", "more light", "more powerful", "apart", "gain", "advantage", " beat", "exceed", "outdo", "surpass", "over a", "than", " vs", "versus"))
    weaker = patterns.search(r"\b(?:weaker|less|dimmer|smaller)\b[^.?]{0,40}\bthan\b", lower) is not None and one < two
    if weaker:
        return Solution(answers=(Quantity("stops", math.log2(one / two), "stops"),), used=(*energies, *heads), topic="time", working=(f"log2 of {one:g} / {two:g}",))
    full = next((f for f in query.all("power") if f.value == 1), None)
    if full is not None and "down" in lower:
        return Solution(answers=(Quantity("stops", math.log2(min(one, two) / max(one, two)), "stops"),), used=(*energies, *heads, full), topic="time", working=(f"log2 of {min(one, two):g} / {max(one, two):g}",))
    if patterns.search(r"\b(?:instead of|rather than|in place of|not|from)\b", lower[energies[0].end : energies[1].start]):
        value = -value  # the one that is, then the one that was
    winner = f"{max(one, two):g} Ws" if between and one != two else None
    return Solution(answers=(Quantity("stops", abs(value) if between else value, "stops", winner),), used=(*energies, *heads), topic="time", working=(f"log2 of {max(one, two):g} / {min(one, two):g}",),
                    notes=("Energy alone; the reflector and the head decide how much of it arrives.",))
