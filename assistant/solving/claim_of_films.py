"""What one film is said to need beside another: "the 24 DIN film needs half the flash power", "the slower one wants two stops more light".

Needed light goes with one over the film speed (film speed is a constant over the exposure that the film needs: ISO 6, 2240 and 5800, from memory).
"""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_WANTS = Pattern(r"\b(?:needs?|wants?|requires?|calls? for|asks? for|takes?|(?:makes?|make) do with|gets? by with)\b")
_OF_LIGHT = Pattern(r"[^,.;?]{0,24}\b(?:power|light|flash|output|exposure|energy|pops|flashes)\b")
_SENTENCE = Pattern(r"[.?!;:](?!\d)|\bthat\b")
_BY_SPEED = Pattern(r"\b(?:(?P<fast>faster|quicker|more sensitive)|slower|less sensitive)\b")
_TWO = 2


def claim_of_films(query: Query) -> Solution | None:
    """The verdict on what one of two films needs beside the other; None where it is not plain which is spoken of, or how much."""
    speeds = query.all("film_speed")
    values = list(dict.fromkeys(f.value for f in speeds))
    if not query.claim or len(values) != _TWO:
        return None
    said = plain(query.text)
    sizes = [s for s in how_much.claimed(query) if s.kind in ("share", "stops") and _OF_LIGHT.match(said, s.end)]
    if len(sizes) != 1 or any(f.quantity != "film_speed" for f in how_much.without(query, sizes)):
        return None
    size = how_much.as_lost(sizes[0]) if sizes[0].lost else sizes[0]  # "takes a third of the light": takes it in, not away
    begins = max((m.end() for m in _SENTENCE.finditer(said, 0, size.start)), default=0)
    wants = list(_WANTS.finditer(said, begins, size.start))
    own = _spoken_of(said, begins, wants[-1].start(), speeds) if wants else None
    if own is None:
        return None
    other = values[0] if own == values[1] else values[1]
    right = math.log2(other / own)
    verdict = how_much.verdict([size], [right], said)
    way = "more" if right > 0 else "less"
    lead = f"{'Yes' if verdict else 'No'}. ISO {own:g} film needs {speak_stops(abs(right))} {way} light than ISO {other:g} ({2.0**right:.3g} times)."
    return Solution(lead=lead, answers=(Quantity("claim", verdict), marks.stops(right), marks.factor(right)), used=query.facts, topic="claims")


def _spoken_of(said: str, begins: int, ends: int, speeds: list[Fact]) -> float | None:
    """The speed of the film that stands before the verb: by its figure, or as the faster or slower one."""
    called = _BY_SPEED.search(said, begins, ends)
    told = {f.value for f in speeds if begins <= f.start < ends}
    if called is not None and not told:
        values = [f.value for f in speeds]
        return max(values) if called["fast"] else min(values)
    return told.pop() if len(told) == 1 and called is None else None
