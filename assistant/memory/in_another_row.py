"""The question that stands asked of another row: "what f for the back row?", then "and the front?"; "how much darker is the back?", then "and the middle one, at 3 m?"."""

from __future__ import annotations

import re

from assistant.memory.conversation import Conversation
from assistant.memory.said_again import says_all, standing
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.solving.placing import held_against, row_asked
from assistant.solving.set_for_row import names_its_row, set_for_another
from assistant.units import LENGTH

_ROW = r"(?:front|middle|back|first|second|third|last|rear)"
_LENGTH = r"(?:ft|feet|foot|m|metres?|meters?)"
_ALONE = Pattern(rf"^\W*(?:(?:and|or|ok|okay|so|then|now|what|how|about|for|at|on|of|with)\b\W*)*(?:(?:the|a|my|our) )?(?P<row>{_ROW})(?: (?:row|rank|tier|one|lot|ones|people))?(?:,?(?:'s| is| are| stands?| sits?)*(?: at)? (?P<at>\d[\d.]*(?: and a half)?(?: ?{_LENGTH})?|[a-z]+(?: and a half)? {_LENGTH}))?(?: then| now| please| too| as well)*\W*$", re.I)
_ASKED_FOR = Pattern(rf"\b(?P<asked>(?:what|which)\b[^.?!]{{0,60}}?\b(?:for|at|on|suits|gets|reaches) (?:the )?)(?P<row>{_ROW})\b(?= (?:row|rank|tier|one|lot)\b|\s*[?.]|\s*$)", re.I)


_SET_FOR_ANOTHER = Pattern(rf"^\W*(?:(?:and|or|ok|okay|so|but|then|now|what|how about|what about)\b\W*)*(?:if )?(?:(?:i|we|i'm|we're) )?(?:expose|set|meter|exposed|metered)(?: it| the lens| the aperture)? for (?:the )?(?P<row>{_ROW})(?: (?:row|rank|one|people))?(?: instead| now| then)*\W*$", re.I)


def in_another_row(text: str, talk: Conversation) -> str | None:
    """The question of one row in its own words, of the row that this half-sentence names; None where it names none, or the question is of none or of several."""
    last = standing(talk)
    if last is None or last.claim or talk.missing:
        return None
    if (set_for := _SET_FOR_ANOTHER.match(text)) is not None:
        return set_for_another(last.text, set_for["row"]) if says_all(last, talk) else None
    said = _ALONE.match(text)
    if said is None:
        return None
    row = _named(said["row"].lower(), talk)
    if talk.last_solution is not None and talk.last_solution.answers[0].quantity == "stops":
        return _its_stops(row, said["at"] or "", last.text, talk)
    asked = list(_ASKED_FOR.finditer(last.text))
    if said["at"] or not says_all(last, talk) or len(asked) != 1 or _named(asked[0]["row"].lower(), talk) == row:
        return None
    return f"{last.text[: asked[0].start('row')]}{row}{last.text[asked[0].end('row') :]}"


def _named(row: str, talk: Conversation) -> str:
    """A row by its place: the second of three stands in the middle, the second of two at the back."""
    if row == "second":
        return "middle" if "middle" in _places(talk) or any(f.quantity == "rows" and f.value > 2 for f in talk.scene.facts) else "back"
    return {"first": "front", "third": "back", "last": "back", "rear": "back"}.get(row, row)


def _places(talk: Conversation) -> dict[str, Fact]:
    return {f.of: f for f in talk.scene.facts if f.quantity == "distance" and f.of in ("front", "middle", "back")}


def _its_stops(row: str, at: str, before: str, talk: Conversation) -> str | None:
    """How much darker this row is than the one that the other row was held against, with the place that is told of it now."""
    found, places = talk.last_solution, _places(talk)
    against = _named(held_against(before) or "front", talk)
    if found is None or names_its_row(before) or row == against or _named((found.answers[0].of or "").removesuffix(" row"), talk) == row:
        return None
    if all(f.quantity in ("distance", "rows", "remark") and (f.of in places or f.quantity != "distance") for f in talk.scene.facts):
        if against not in places or not at and row not in places:
            return None
        unit = places[against].unit
        told = {name: f"{f.value / LENGTH[f.unit]:.4g} {f.unit}" for name, f in places.items()} | ({row: at if any(c.isalpha() for c in at.split(" ")[-1]) else f"{at} {unit}"} if at else {})
        value = found.answers[0].value
        way = "brighter" if isinstance(value, float) and value > 0 and "more" in talk.scene.cues else "darker"
        return f"{', '.join(f'the {name} row is at {place}' for name, place in told.items())}. By how many stops is the {row} row {way} than the {against} row?"
    asked, last = row_asked(before), standing(talk)
    if at or asked is None or last is None or not says_all(last, talk):
        return None
    return f"{before[: asked[0]]}{row}{before[asked[1] :]}"
