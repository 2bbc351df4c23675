"""The reading of what another is compared with: "the background reads f/11 and that is a stop over the face: what does the face read?".

The reading is of the one that is spoken of; so many stops over or under are counted from the other, whose reading is asked.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving import marks
from assistant.solving.lights import Light
from assistant.solving.solution import Solution

_THAT_IS = Pattern(r",? ?(?:(?:and|which|so) )*(?:(?:that|it|this|which)(?:'s)? )?(?:(?:is|lies|sits|makes|comes|means|are|was|being|puts it|makes it) )?(?:about |just |only |some |roughly )*", re.I)
_THAN = Pattern(r"\s*(?:too )?(?P<way>over|above|brighter than|hotter than|stronger than|more than|under|below|darker than|weaker than|dimmer than|less than)(?: what| that of)? (?:the |my |her |his |our )?(?P<other>[a-z]+)", re.I)
_ASKED = Pattern(r"\bwhat(?:'s| is| does| did| would| will| was| must| should)? (?:the |my |her |his |our )?(?P<one>[a-z]+)(?:'s reading| light)?(?: (?:itself|alone|then|now|by itself|on its own))*(?: (?:read|reading|meter|measure|give|show|at|be|have))*(?: (?:itself|alone|then|now|by itself|on its own))*\W*$", re.I)
_MEANT = {"she": "her", "he": "him", "sitter": "subject", "face": "subject", "her": "subject", "him": "subject", "model": "subject", "bride": "subject", "background": "wall", "backdrop": "wall", "paper": "wall"}


def solve(query: Query) -> Solution | None:
    """The other's reading; None where the words do not say of whom the reading is and who is asked of."""
    read, apart = query.all("aperture"), [f for f in query.facts if f.quantity in ("relation", "stops")]
    if query.claim or not query.asks_for("aperture") or len(read) != 1 or len(apart) != 1 or {f.quantity for f in query.facts} - {"aperture", "relation", "stops", "remark", "place"}:
        return None
    if not read[0].end <= apart[0].start or _THAT_IS.fullmatch(query.text, read[0].end, apart[0].start) is None:
        return None
    than, asked = _THAN.match(query.text, apart[0].end), _ASKED.search(query.text, apart[0].end)
    if than is None or asked is None or _called(than["other"]) != _called(asked["one"]):
        return None
    over = than["way"].lower().split(" ")[0] in ("over", "above", "brighter", "hotter", "stronger", "more")
    value = read[0].value * 2.0 ** ((-1 if over else 1) * abs(apart[0].value) / 2)
    return Solution(answers=(marks.aperture(value),), used=(read[0], apart[0]), topic="relations", lead="" if than["other"].lower() in ("her", "him", "them", "it") else f"The {than['other'].lower()} reads")


def _called(word: str) -> str:
    word = word.lower()
    return _MEANT.get(_MEANT.get(word, word), _MEANT.get(word, word))


_PUT_ON = Pattern(r"\b(?:put|clip|hang|hung|fit|add|tape|slip|stretch|mount|gel|screw|slide|drop|fix)\w*\b[^.?!]*$", re.I)


def put_on_one(query: Query, found: list[Light]) -> float | None:
    """Stops that the first of two lights loses beside the second by what is put on after both were read; None where a loss is told and it is not plain on which."""
    lost = query.all("loss")
    if not lost or not all(lamp.reading is not None for lamp in found):
        return 0.0
    last = max(f.end for f in query.all("aperture"))
    if any(f.start < last for f in lost):
        return 0.0  # the readings were taken with it on
    names = [lamp.name for lamp in found]
    if any(f.of not in names or not _PUT_ON.search(query.text[last : f.start + 1]) for f in lost):
        return None
    return sum(f.value if f.of == names[0] else -f.value for f in lost)
