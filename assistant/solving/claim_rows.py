"""What the back of a group gets against its front, put up for a yes or a no: "does the last row stay within one stop of the first?"."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_denial import called_wrong, denials
from assistant.solving.claim_words import plain
from assistant.solving.how_much import Said
from assistant.solving.solution import Solution

_TOLD = frozenset({"distance", "gap", "rows", "remark", "place"})
_BACK, _FRONT = Pattern(r"\b(?:back|last|rear|farthest|furthest|third|far) (?:row|one|end|man|people|ones)\b|\b(?:the|its) (?:back|rear|last)\b|\bbehind\b"), Pattern(r"\b(?:front|first|nearest|near) (?:row|one|end|man|people|ones)\b|\b(?:the|its) (?:front|first)\b")
_WITHIN = Pattern(r"\b(?:within|inside|no more than|not more than|at most|up to)(?: of)?(?: about)? (?:an? |one )?$")
_OTHER_MATTER = Pattern(r"\b(?:sharp\w*|focus\w*|depth of|dof|lens|film|slide|negative|latitude|forgiv\w*|aperture|f ?/ ?\d|power|enough|than (?:it|with|at|from))\b")
_NEAR = 0.1


def claim_of_rows(query: Query) -> Solution | None:
    """The verdict on so many stops, or so much of the light, from the front of a group to its back; None where more is told than where they stand."""
    said = plain(query.text)
    sizes = how_much.claimed(query)
    if not query.claim or len(sizes) != 1 or sizes[0].kind not in ("stops", "share") or not query.has("gap") or _OTHER_MATTER.search(said):
        return None
    size = sizes[0]
    rest = query.with_facts(f for f in how_much.without(query, sizes) if f.quantity not in ("number", "times", "share"))
    if not {f.quantity for f in rest.facts} <= _TOLD or len({round(f.value, 6) for f in rest.all("distance")}) != 1:
        return None
    from assistant.solving.falloff import solve

    found = solve(replace(rest, asks=(Ask("stops"),), claim=False))
    if found is None or found.status != "answered" or found.answers[0].quantity != "stops" or found.assumed or not {f.start for f in rest.facts} <= {f.start for f in found.used}:
        return None
    right = float(found.answers[0].value)
    of_front = _of_front(said, size)
    if size.kind == "share" and of_front is None:
        return None
    within = _WITHIN.search(said[: size.figure[0] or size.start]) is not None
    holds = _fits(size, -right if of_front else right, within, said)
    return Solution(answers=(Quantity("claim", holds), marks.stops(right, "back row")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. The back gets {speak_stops(abs(right))} less ({right:+.2f}).")


def _of_front(said: str, size: Said) -> bool | None:
    """Whether it is the front that is spoken of before the size, and not the back; None where neither is, or both are."""
    begins = max((said.rfind(mark, 0, size.start) for mark in (". ", "; ", ": ", ", ", "? ")), default=-1) + 1
    front, back = _FRONT.search(said, begins, size.start) is not None, _BACK.search(said, begins, size.start) is not None
    return None if front is back else front


def _fits(size: Said, right: float, within: bool, said: str) -> bool:
    if not within:
        return how_much.verdict([size], [right], said)
    fits = abs(right) <= size.value + _NEAR
    denied = sum(a <= size.start < b for a, b in denials(said)) % 2 == 1
    return (fits is not denied) is not called_wrong(said)
