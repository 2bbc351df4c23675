"""Two set-ups, two settings or two readings held against each other in a claim: "does the GN 80 at 7 ft put more light on her than the GN 125 at 12 ft?".

The light of each is summed from all that is told of it, whichever of its figures differ; then what is said of how
much more or less the one has is held against the difference.
"""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import how_much, light_of_two, marks, set_ups
from assistant.solving.claim_backdrop import names_a_backdrop
from assistant.solving.claim_words import plain
from assistant.solving.how_much import Said
from assistant.solving.solution import Solution

_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark", "place", "rows", "times", "number", "share", "format", "sync", "gap"})
_OF_LIGHT = Pattern(r"\b(?:(?:day|sun|back)?light\w*|ambient|bright\w*|dark\w*|dim\w*|strong\w*|weak\w*|expos\w*|hot\w*|lit|stops?|fast(?:er)?|slow(?:er)?|let in|illuminat\w*|faint\w*)\b")
_OTHER_MATTER = Pattern(
    r"\b(?:depth|dof|deep\w*|shallow\w*|hyperfocal|focus\w*|sharp\w*|grain\w*|contrast\w*|soft(?! ?box)\w*|hard(?:er|ness)?|energy|recycl\w*|batter\w+|cells|reach\w*|range|fall-?off|even\w*|ratio|blur\w*|freez\w*|duration|t0?\.[15]|last\w*|colou?r\w*|warm\w*|cool\w*|guide numbers? (?:is|drops?|falls?|halves|doubles)|"
    r"sensitiv\w*|latitude|enough|together|combined|in all|both at once|add(?:ed|s)? (?:up|to)|difference between|camera (?:back|closer|further|farther)|always|every time|bulbs?|ttl|hss|high-speed)\b")
_ENERGY = Pattern(r"\benerg\w*\b")
_OUTPUT = frozenset({"energy", "power", "count"})
"""Of these the light is what is put out: of energy it may be spoken then."""
_LEAST_KINDS = 2


def claim_of_two_lights(query: Query) -> Solution | None:
    """The verdict on one set-up's light against another's; None where a figure has no side, or nothing is said of how much."""
    said = plain(query.text)
    sizes = how_much.claimed(query)
    if query.has("energy") and {f.quantity for f in query.facts} - _BY_THE_WAY <= _OUTPUT:
        said = _ENERGY.sub("light", said)
        sizes = [s for s in how_much.every(query) if not any(f.start < s.end and s.start < f.end for f in query.all("power"))]
        sizes = [s for s in sizes if s.kind in ("stops", "share")] or [s for s in sizes if s.kind == "same"] or sizes
    if not query.claim or not sizes or len(sizes) > 1 and sizes[0].kind in ("stops", "share") or _OTHER_MATTER.search(said) or not _OF_LIGHT.search(said):
        return None
    for size in sizes:
        found = _judged(query, said, size)
        if found is not None:
            return found
    return None


def _judged(query: Query, said: str, size: Said) -> Solution | None:
    if query.all("gap", "backdrop") and names_a_backdrop(said, size.end):
        return None  # the light goes that way further to it, and as far again from the other place
    facts = _once([f for f in how_much.without(query, [size]) if f.quantity not in _BY_THE_WAY])
    if not facts or any(f.origin != "said" or f.bad for f in facts) or _metered_then_set(facts, query.text):
        return None
    for held in (set_ups.across(facts, query.text, size.start, size.end), set_ups.told(facts, query.text, size.start, size.end)):
        right = light_of_two.apart(query, held, said) if held is not None else None
        if held is None or right is None or held.named < 0 and (size.way or size.kind != "stops") and (size.kind != "same" or size.at_least):
            continue
        if size.kind == "stops" and not size.way and not _APART.search(said):
            continue
        if {f.quantity for f in (*held.one, *held.other)} == {"film_speed"} and size.kind == "stops":
            size = replace(size, near=min(size.near, _BY_THIRDS))
        mine = how_much.turned(size) if how_much.held_back(said, size) else size
        right = -right if held.named == 1 else right
        holds = how_much.verdict([mine], [right], said)
        way = "more" if right > 0 else "less"
        lead = f"{'Yes' if holds else 'No'}. " + ("They are alike." if abs(right) < 0.005 else f"The {'second' if held.named == 1 else 'first'} has {speak_stops(abs(right))} {way} light ({right:+.2f}).")
        return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, topic="claims", lead=lead)
    return None


_I_SET = Pattern(r"\b(?:i|we|i'm|we're|camera|lens|shutter|shoot\w*|set\w*|work\w*|use|using|drop|stay\w*|leave)\b", re.I)


def _metered_then_set(facts: list[Fact], text: str) -> bool:
    """"the room meters 1/15 at f/8, I shoot at 1/60 and f/22": a reading of one light and what the camera is set to, and no two lights."""
    metered, chosen = ([f for f in facts if f.of == of and f.quantity in ("aperture", "shutter")] for of in ("ambient", ""))
    if {f.quantity for f in metered} != {f.quantity for f in chosen} or len({f.quantity for f in chosen}) < 2:
        return False
    start = min(f.start for f in chosen)
    return _I_SET.search(text, max((f.end for f in metered if f.end <= start), default=0), start) is not None


_BY_THIRDS = 0.2
"""Stops within which a difference of two film speeds must come: they are marked in thirds."""
_APART = Pattern(r"\b(?:apart|differ\w*|between them|gap)\b")


def _once(facts: list[Fact]) -> list[Fact]:
    """Without a reading that is told again where a third of its kind would have no side: "f/8 and f/5.6; at f/8 the room is"."""
    out: list[Fact] = []
    for fact in facts:
        same = [f for f in facts if f.quantity == fact.quantity]
        if len(same) > _LEAST_KINDS and any(f.quantity == fact.quantity and f.value == fact.value for f in out):
            continue
        out.append(fact)
    return out
