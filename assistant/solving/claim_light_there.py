"""Two places and how much of the light of the one the other gets: "at 3 m it is two stops weaker than at 1.5 m", "half the light that one at 2 m gets"."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import turned
from assistant.solving.claim_light_let_in import in_stops
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution

_SHARE = r"(?P<much>half|twice|double|(?:two|three|four|eight|nine|sixteen) times|(?:an?|one) (?:quarter|eighth|third|ninth|sixteenth)|[\d.]+ ?(?:times|x|%|per ?cent))"
_OF_LIGHT = Pattern(rf"\bplace1\b[^.?!]{{0,40}}?\b{_SHARE}(?:(?: of)?(?: as much)?(?: the| of the)? light\b| as (?:bright|strong|brightly lit)\b)[^.?!]{{0,50}}?\bplace2\b")
_IN_STOPS = Pattern(r"\bplace1\b[^.?!]{0,40}?\bsomuch (?:(?P<less>weaker|darker|dimmer|less|under|below|fainter)|brighter|stronger|hotter|more|over|above)\b[^.?!]{0,60}?\b(?:than|as|at|from)\b[^.?!]{0,40}?\bplace2\b")
_OF_STOPS = ("stops", "relation", "loss", "signed", "power_down")
_ASIDE = frozenset({"power", "times", "number", "share", "remark", "rows", "place", "count"})
_NEAR = 0.2


def claim_of_light_there(query: Query) -> Solution | None:
    """Whether the first place gets so much more or less light than the second; None where no such thing is put up."""
    places = [f for f in query.facts if f.quantity == "distance" and not f.bad]
    said = [f for f in query.facts if f.quantity in _OF_STOPS]
    if not query.claim or len(places) != 2 or len(said) > 1 or {f.quantity for f in query.facts} - _ASIDE - {"distance", *_OF_STOPS} or min(f.value for f in places) <= 0:
        return None
    text = plain(query.text)
    named = ((places[0], "place1"), (places[1], "place2"), *((f, "somuch") for f in said))
    for fact, name in sorted(named, key=lambda pair: -pair[0].start):
        text = text[: fact.start] + name + text[fact.end :]
    found = _IN_STOPS.search(text) if said else _OF_LIGHT.search(text)
    if found is None:
        return None
    claimed = abs(said[0].value) * (-1 if found["less"] else 1) if said else in_stops(found["much"])
    if claimed is None:
        return None
    right = falloff_stops(places[1].value, places[0].value)
    at = found.start("less") if said else found.start("much")
    holds = within(bound_of(text[: max(at, 0)])[0], right - claimed, _NEAR if said else _NEAR / 2) is not turned(text, [(max(at, 0), max(at, 0) + 1)])
    lead = f"{'Yes' if holds else 'No'}. It is {speak_stops(abs(right))} {'more' if right > 0 else 'less'} light there ({right:+.2f}): light falls with the square of the distance."
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, lead=lead, topic="claims")
