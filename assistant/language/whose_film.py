"""Two films and one f-number: which of the two it was read for, wherever the words put it.

"ISO 50 in the left camera, 200 in the right; the right one wants f/11": the film whose f-number is told goes first,
and a film named again ("on the 400") is no third one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_TWO_OF_THEM = Pattern(r"\b(?:bod(?:y|ies)|cameras?|backs?|magazines?|rolls?|films?|holders?|inserts?|one|other|second)\b", re.I)
_NO_LABEL = frozenset("the and with one has have had for this that are was were its his her film films body camera back roll flash wants needs gets gives light what does take takes read reads same iso asa under using from into".split())
_FIRST, _SECOND = frozenset({"first", "former"}), frozenset({"second", "other", "latter"})
_BREAK = Pattern(r"[.;?!](?!\d)")


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the film whose f-number is told before the other, and each once."""
    speeds = [f for f in facts if f.quantity == "film_speed" and not f.bad]
    read = [f for f in facts if f.quantity == "aperture"]
    if len({f.value for f in speeds}) != 2 or len(read) != 1 or any(f.quantity in ("guide_number", "distance", "shutter", "rated", "push", "exposure_value") for f in facts) or not _TWO_OF_THEM.search(text):
        return facts
    first = speeds[0]
    second = next(f for f in speeds if f.value != first.value)
    told = (first.value, second.value)
    echoes = [f for f in facts if f is not first and f is not second and (f in speeds or f.quantity == "number" and f.value in told and f.start > second.end)]
    out = [replace(f, quantity="remark") if f in echoes else f for f in facts]
    if second.start > read[0].start or not _is_the_second(read[0], first, second, echoes, text):
        return out
    swapped = {first.start: second, second.start: first}
    return [replace(f, value=swapped[f.start].value, said=swapped[f.start].said, unit=swapped[f.start].unit) if f.start in swapped and f.quantity == "film_speed" else f for f in out]


def _is_the_second(read: Fact, first: Fact, second: Fact, echoes: Sequence[Fact], text: str) -> bool:
    """Whether the f-number is of the film told second: by that film named again beside it, by "the other", or by a word told with that film alone."""
    start = max([m.end() for m in patterns.finditer(r"[.;?!,:](?!\d)", text) if m.end() <= read.start], default=0)
    start = max(start, second.end)
    end = next((m.start() for m in patterns.finditer(r"[.;?!,:](?!\d)", text) if m.start() >= read.end), len(text))
    here = [f for f in echoes if start <= f.start < end]
    if here:
        return min(here, key=lambda f: read.start - f.end if f.end <= read.start else f.start - read.end).value == second.value
    words = _words(text[start:end])
    if words & _SECOND or words & _FIRST:
        return bool(words & _SECOND)
    with_first, with_second = _words(_BREAK.split(text[: first.end + 12])[0]), _words(_BREAK.split(text[first.end : second.end + 16].lstrip(" ,;"))[0])
    return bool(words & (with_second - with_first)) and not words & (with_first - with_second)


def _words(text: str) -> set[str]:
    return {w for w in patterns.findall(r"[a-z]{3,}", text.lower()) if w not in _NO_LABEL}
