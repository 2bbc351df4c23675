"""Watt-seconds that were too few or too many by so many stops: "240 Ws is 1 2/3 stops short"; and how many pops make up so many."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.duration import energy_at
from assistant.physics.flash import whole_count
from assistant.query import Ask, Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.solution import Solution

SHORT = Pattern(r"\W*(?:stops? )?(?:too )?(?:short|shy|little|weak|low|under\w*|dark|thin|missing|lacking|less than (?:i|we) need)\b", re.I)
OVER = Pattern(r"\W*(?:stops? )?(?:too )?(?:much|strong|bright|over\w*|hot|high|more than (?:i|we) need)\b", re.I)
_LACKS = Pattern(r"\b(?:need|lack|want|miss)\w*(?: (?:another|a further|about|just|some))*\W*$", re.I)


def solve(query: Query, ask: Ask) -> Solution | None:
    """The energy that would be right, from one that was not and how far it was out."""
    energies, told = query.all("energy"), [f for f in query.facts if f.quantity in ("stops", "relation", "signed")]
    if ask.quantity != "energy" or len(energies) != 1 or len(told) != 1 or any(f.quantity in ("guide_number", "distance", "power", "loss", "count", "film_speed") for f in query.facts):
        return None
    out, text = told[0], query.text
    short = SHORT.match(text, out.end) is not None or SHORT.search(out.said) is not None or _LACKS.search(text[: out.start]) is not None
    over = OVER.match(text, out.end) is not None or OVER.search(out.said) is not None
    if short is over:
        return None
    stops = abs(out.value) if short else -abs(out.value)
    note = f"{speak_stops(abs(stops))} {'more' if short else 'less'} is {2.0 ** stops:.3g} times the energy."
    return Solution(answers=(Quantity("energy", energies[0].value * 2.0**stops, "J"),), used=(energies[0], out, *query.all("aperture")), topic="time", notes=(note[0].upper() + note[1:],))


def pops_for(query: Query) -> Solution | None:
    """"the still life wants 2400 Ws, the pack holds 300: how many pops?": the greater is what all of them come to."""
    energies, powers = query.all("energy"), {f.value for f in query.all("power")}
    if len(energies) != 2 or len(powers) > 1 or {f.quantity for f in query.facts} - {"energy", "power", "remark", "place"} - {f.quantity for f in query.facts if f.quantity == "count" and f.value == 1}:
        return None
    each, total = sorted(energies, key=lambda f: f.value)
    part = next(iter(powers), 1.0)
    light = total.value / energy_at(each.value, part)
    used = (*energies, *query.all("power"), *query.all("count"))
    return Solution(answers=(marks.count(whole_count(light), "pops"),), used=used, topic="time", working=(f"{total.value:g} Ws in pops of {each.value * part:g} Ws: {light:.3g}, rounded up",), notes=("One already gives more.",) if light <= 1 else ())


def of_heads(query: Query, ask: Ask) -> Solution | None:
    """"a pack of 2400 on two heads, one takes 1600: what is left for the other?", "four heads at 150 each: what does the pack put out?"."""
    energies, heads = query.all("energy"), next((f for f in query.all("count") if f.value > 1 and f.unit in ("flashes", "heads")), None)
    if heads is None or ask.of not in ("rest", "all heads"):
        return None
    if ask.of == "all heads":
        return Solution(answers=(Quantity("energy", energies[0].value * heads.value, "J"),), used=(*energies, heads), topic="time", working=(f"{heads.value:g} × {energies[0].value:g} Ws",)) if len(energies) == 1 else None
    if len(energies) != 2 or energies[0].value == energies[1].value:
        return None
    whole, part = max(energies, key=lambda f: f.value), min(energies, key=lambda f: f.value)
    others = heads.value - 1
    lead = "Left for each of the others" if others > 1 else ""
    return Solution(lead=lead, answers=(Quantity("energy", (whole.value - part.value) / others, "J"),), used=(*energies, *query.all("count")), topic="time", working=(f"{whole.value:g} less {part.value:g} Ws",))


_THE_LARGER = Pattern(r"\b(?P<who>\w+) (?:gets|takes|has|getting|taking) (?:the )?(?:larger|bigger|greater|lion'?s|most|more)\b", re.I)
_ASKED_OF = Pattern(r"\b(?:brighter|stronger|more)\b(?: light)?(?: is| does| will)? (?P<who>\w+)", re.I)


def uneven(query: Query, heads: Fact) -> Solution | None:
    """"a pack split three to one between two heads alike, A has the larger share: how many stops brighter is A": the logarithm of the ratio."""
    ratios, larger, asked = query.all("ratio"), _THE_LARGER.search(query.text), _ASKED_OF.search(query.text)
    if len(ratios) != 1 or heads.value != 2 or ratios[0].value <= 0 or asked is None or {f.quantity for f in query.facts} - {"ratio", "energy", "count", "remark"}:
        return None
    apart = abs(math.log2(ratios[0].value))
    if larger is not None and larger["who"].lower() != asked["who"].lower():
        if larger["who"].lower() not in query.text[asked.start() :].lower().split(" than ")[-1]:
            return None
        apart = -apart
    return Solution(answers=(Quantity("stops", apart, "stops"),), used=query.facts, topic="time", lead=f"{speak_stops(abs(apart)).capitalize()} {'brighter' if apart >= 0 else 'darker'} ({apart:+.2f}).", notes=("A share of the energy is the same share of the light, where the heads and their distances are alike.",))
