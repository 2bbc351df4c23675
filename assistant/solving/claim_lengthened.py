"""Whether a metered time must be lengthened for the film: "it metered half a second and the exponent is 1.3; do I have to lengthen it?"."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.claim_words import plain
from assistant.solving.reciprocity import lengthened
from assistant.solving.solution import Solution

_MORE = (r"(?:lengthen\w*|prolong\w*|stretch\w*|extend\w*|correct(?:ed|ing|ions?)?|allowance|compensat\w+|allow(?:ance)? for|add(?:ing)? (?:to (?:it|that)|anything|something|any|some|time|more|extra|a bit)|adjust\w*|"
         r"(?:give|keep|leave|hold|expose) (?:it|that|the \w+)(?: open)? (?:any |a bit |some )?(?:longer|more|extra)|(?:any|some) (?:more|longer|extra|correction|lengthening|allowance|compensation)|a (?:correction|longer time|longer exposure))")
_MUST = Pattern(rf"\b(?:do|does|must|should|shall|have|has|need|needs|will|would|is|are|ought)\b(?: (?:i|we|you|it|that|this|one|there|(?:the|my|that|this) \w+|any|an?|(?:an? |the )?(?:(?:metered|reading|time|exposure|of) )*(?:\d[\d./]*|one|two|three|four|five|six|eight|ten|twelve|fifteen|twenty|thirty|half a|a) ?(?:s|secs?|seconds?|minutes?)))(?: (?:have|need|ought|really|still|to|be|even|then|get|want|any|got|call for|required|necessary))* {_MORE}\b(?:[^.?!]|\.(?=\d))*\?")
_DENIED = Pattern(r"\b(?:not|never|without|unless|no|n't|only|else|enough|by how much|how (?:much|long|many))\b|n't\b|\bwhat\b")
_TOLD = frozenset({"shutter", "exponent", "remark", "place", "film_speed"})


_COUNTED_FROM = Pattern(r"\b(?:above|over|beyond|past|longer than|after|from|more than)(?: about)? *$")
"""Right before the time from which a film's exponent counts."""


def claim_of_lengthening(query: Query) -> Solution | None:
    """Yes where the film's own exponent makes the time longer, no up to the time from which it counts: a second, where none is told."""
    said = plain(query.text)
    asked, times = _MUST.search(said), sorted(query.all("shutter"), key=lambda f: _COUNTED_FROM.search(said[: f.start]) is not None)
    if asked is None or _DENIED.search(asked.group()) or not query.has("exponent") or not times or {f.quantity for f in query.facts} - _TOLD or len({f.value for f in query.all("exponent")}) != 1:
        return None
    metered = times[0]
    if len(times) > 1:
        if len(times) > 2 or times[1].value <= 1 or not _COUNTED_FROM.search(said[: times[1].start]) or _COUNTED_FROM.search(said[: metered.start]):
            return None
        longer = metered.value > times[1].value
        return Solution(answers=(Quantity("claim", longer), *(() if longer else (marks.shutter(metered.value),))), used=query.facts, topic="claims", lead="Yes." if longer else "No: it stays as metered.")
    found = lengthened(replace(query, claim=False, asks=(Ask("shutter"),)), Ask("shutter"))
    if found is None or found.status != "answered" or found.answers[0].quantity != "shutter":
        return None
    given = found.answers[0]
    longer = float(given.value) > 1.01 * metered.value
    time = given.set or f"{float(given.value):.4g} s"
    return replace(found, answers=(Quantity("claim", longer), given), topic="claims", lead=f"Yes. The time to give is {time if time.endswith('s') else time + ' s'}." if longer else "No: it stays as metered.")
