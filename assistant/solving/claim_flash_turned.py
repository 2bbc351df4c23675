"""Whether the flash must be turned up or down after changes: by what the aperture told lacks of the one that would be right.

"f/16 looked right at 6 feet; I went back to 12 and opened to f/8, do I have to turn the flash up?": f/8 is right, so no.
"""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_denial import denied
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_TURN = r"(?:turn|power|crank|dial|push|bring|raise|lower|run|set)"
_LAMP = r"(?:the |my )?(?:flash|strobe|speedlight|head|gun|power|output)"
_ASKED = Pattern(rf"\b(?:do|must|should|shall|need|would|will) i\b(?: then| still| now)?(?: (?:have|need) to)?(?: then| still| now)? (?:{_TURN} {_LAMP} (?P<way>up|down)|{_TURN} (?P<first>up|down) {_LAMP}|(?P<verb>raise|lower|boost|reduce) {_LAMP})\b(?! (?:by|to|from)\b)[^?]{{0,24}}\?")
_DOWN = ("down", "lower", "reduce")
_SAYS_NOTHING = frozenset({"remark", "place", "number", "shutter", "preferred_unit"})


def asks_to_turn(query: Query, claimed: Fact) -> bool:
    """Whether the power of the flash is what is asked about, after an aperture that was told."""
    return claimed.quantity == "aperture" and _ASKED.search(plain(query.text), claimed.end) is not None


def of_the_flash_turned(query: Query, claimed: Fact, answer: Solution, over: float) -> Solution | None:
    """The verdict by how much too bright the aperture told is; None where something told has no part in what is right, or the shutter was changed, which the flash does not mind."""
    said = plain(query.text)
    asked = _ASKED.search(said, claimed.end)
    told = [f for f in query.facts if f.origin == "said" and f.quantity not in _SAYS_NOTHING]
    if asked is None or answer.answers[0].quantity != "aperture" or len(query.all("shutter")) > 1 or len(query.all("power")) == 1 or any(f is not claimed and f not in answer.used for f in told):
        return None
    down = (asked["way"] or asked["first"] or asked["verb"]) in _DOWN
    holds = (over > TOLERANCE if down else over < -TOLERANCE) is not denied(asked.group())
    right = abs(over) <= TOLERANCE
    lead = "What was changed evens out, so the flash stays as it is." if right else f"As it is now the flash is {speak_stops(abs(over))} too {'strong' if over > 0 else 'weak'}."
    answers = (Quantity("claim", holds), *(() if right else (marks.stops(-over),)))
    return replace(answer, status="answered", answers=answers, used=(*answer.used, claimed), topic="claims", alternatives=(), lead=f"{'Yes' if holds else 'No'}. {lead}")
