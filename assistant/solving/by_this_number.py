"""An f-number as what changes the light: "which f-number cuts the room by two stops from f/5.6?".

The number that is asked does it, so it is closed for less and opened for more; what would make up for it is another question.
"""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.physics.ambient import aperture_after
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.solution import Solution

_NUMBER = r"\b(?:what|which) (?:lens )?(?:f-?\W?number|aperture|f-?\W?stop|opening|stop|setting|mark)"
_HELPS = r"(?: (?:will|would|must i set to|do i (?:set|need|use) to|should i (?:set|use) to|to))?"
_LESS = r"cuts?|darkens?|reduces?|drops?|lowers?|dims?|brings? (?=[^?]*\bdown\b)|knocks?|takes?|kills?|sinks?|weakens?|puts? (?=[^?]*\b(?:under|down)\b)|loses?"
_MORE = r"lifts?|raises?|brightens?|brings? (?=[^?]*\bup\b)|gains?|increases?|puts? (?=[^?]*\b(?:over|up)\b)|lets? in"
_DOES = Pattern(rf"{_NUMBER}{_HELPS} (?:(?P<half>halves|halve)|(?P<twice>doubles?)|(?P<quarter>quarters?)|(?P<less>{_LESS})|(?P<more>{_MORE}))\b(?=[^?]*\bf\W?\d)")
_BY_WORD = {"half": -1.0, "twice": 1.0, "quarter": -2.0}
_SIZES = ("loss", "stops", "relation", "signed", "power_down")
_ALONE = frozenset({"aperture", "remark", "shutter", "film_speed", "place", *_SIZES})


_TIMES_THE_LIGHT = Pattern(r"\b(?:(?P<twice>doubl(?:es?|ed|ing))|(?P<half>halv(?:es?|ed|ing))|(?P<four>quadrupl(?:es?|ed|ing)))\b (?:the |my )?(?:(?:room|ambient|day|window|flash|key|fill|available|existing) ?)?(?:light|daylight|ambient|reading)\b")
_READ_THEN = Pattern(r"\bwhat (?:does|do|will|would|is|must|did)\b[^?]*\b(?:reads?|reading|metered?|show|give)\b[^?]*\?")
_TIMES = {"twice": 1.0, "half": -1.0, "four": 2.0}


def _reading_then(query: Query) -> Solution | None:
    """"I add a lamp that doubles the room light of f/4: what does it read now?"."""
    read = query.all("aperture")
    found = _TIMES_THE_LIGHT.search(query.text.lower()) if len(read) == 1 and not {f.quantity for f in query.facts} - {"aperture", "remark", "shutter", "times"} else None
    if found is None or not _READ_THEN.search(query.text.lower()):
        return None
    return Solution(answers=(marks.aperture(aperture_after(read[0].value, _TIMES[found.lastgroup or ""])),), used=query.facts, topic="ambient")


def solve(query: Query) -> Solution | None:
    """The f-number that is so many stops from the one told; None where no number is asked as the cause."""
    then = _reading_then(query)
    if then is not None:
        return then
    read, sizes = query.all("aperture"), [f for f in query.facts if f.quantity in _SIZES]
    if len(read) != 1 or len(sizes) > 1 or {f.quantity for f in query.facts} - _ALONE:
        return None
    found = _DOES.search(query.text.lower())
    if found is None or (found.lastgroup in _BY_WORD) == bool(sizes):
        return None
    by_word = _BY_WORD.get(found.lastgroup or "")
    stops = by_word if by_word is not None else abs(sizes[0].value) * (1 if found.lastgroup == "more" else -1)
    return Solution(answers=(marks.aperture(aperture_after(read[0].value, -stops)),), used=query.facts, topic="ambient")
