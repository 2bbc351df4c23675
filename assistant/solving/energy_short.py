"""Watt-seconds that were too few or too many by so many stops: "240 Ws is 1 2/3 stops short"."""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.scales import speak_stops
from assistant.solving.solution import Solution

_SHORT = Pattern(r"\W*(?:stops? )?(?:too )?(?:short|shy|little|weak|low|under\w*|dark|thin|missing|lacking|less than (?:i|we) need)\b", re.I)
_OVER = Pattern(r"\W*(?:stops? )?(?:too )?(?:much|strong|bright|over\w*|hot|high|more than (?:i|we) need)\b", re.I)
_LACKS = Pattern(r"\b(?:need|lack|want|miss)\w*(?: (?:another|a further|about|just|some))*\W*$", re.I)


def solve(query: Query, ask: Ask) -> Solution | None:
    """The energy that would be right, from one that was not and how far it was out."""
    energies, told = query.all("energy"), [f for f in query.facts if f.quantity in ("stops", "relation", "signed")]
    if ask.quantity != "energy" or len(energies) != 1 or len(told) != 1 or any(f.quantity in ("guide_number", "distance", "power", "loss", "count", "film_speed") for f in query.facts):
        return None
    out, text = told[0], query.text
    short = _SHORT.match(text, out.end) is not None or _SHORT.search(out.said) is not None or _LACKS.search(text[: out.start]) is not None
    over = _OVER.match(text, out.end) is not None or _OVER.search(out.said) is not None
    if short is over:
        return None
    stops = abs(out.value) if short else -abs(out.value)
    note = f"{speak_stops(abs(stops))} {'more' if short else 'less'} is {2.0 ** stops:.3g} times the energy."
    return Solution(answers=(Quantity("energy", energies[0].value * 2.0**stops, "J"),), used=(energies[0], out, *query.all("aperture")), topic="time", notes=(note[0].upper() + note[1:],))
