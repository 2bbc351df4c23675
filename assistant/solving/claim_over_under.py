"""Whether a setting that is told is so far over or under: "GN 40 m at 5 m: is f/5.6 a stop over?", "is 1/125 at f/16 two stops over in bright sun?"."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_words import plain
from assistant.solving.how_much import Said
from assistant.solving.solution import Solution

_OFF = Pattern(r"\s*(?:too (?:bright|dark|hot|much|little)|over|under)(?:-?expos\w*)?\b(?! (?:the|my|her|his|its?|that|what|f ?/|ev|iso|full|box|key|fill|ambient|daylight)\b)")
"""After so many stops, and not of another light or setting."""
_NO_SETTING = Pattern(r"\b(?:reads?|meters?|metered|reading|fill|key|rim|background|backdrop|room|ambient|film|push\w*|pull\w*|rat(?:e|ed|ing)|develop\w*|instead of|enough|latitude|stand|hold|forgiv\w*|survive|usable|print)\b")
_LIGHT = frozenset({"guide_number", "exposure_value", "energy"})


def claim_of_over_under(query: Query) -> Solution | None:
    """The verdict, and by how much the setting is off; None where it is no setting of the lens, or what is right cannot be found."""
    said = plain(query.text)
    sizes = how_much.claimed(query)
    stops = query.all("aperture")
    if query.claim and len(sizes) == 1 and sizes[0].kind == "stops" and len(stops) == 2 and {f.quantity for f in how_much.without(query, sizes)} == {"aperture"}:
        return _of_called_for(query, said, sizes[0], stops)
    if not query.claim or len(sizes) != 1 or sizes[0].kind != "stops" or len(stops) != 1 or stops[0].of not in ("", "ambient") or _NO_SETTING.search(said):
        return None
    size = sizes[0]
    figure = size.figure if size.figure[1] else (size.start, size.end)
    if _OFF.match(said[figure[1] :]) is None or not ("sunny" in query.cues or any(f.quantity in _LIGHT for f in query.facts)):
        return None
    from assistant.solving.solver import solve, unused

    rest = query.with_facts(replace(f, of="") if f.of == "ambient" and f.quantity == "shutter" else f for f in how_much.without(query, [size]) if f is not stops[0])
    found = solve(replace(rest, asks=(Ask("aperture"),), claim=False))
    if found is None or found.status not in ("answered", "out_of_reach") or found.answers[0].quantity != "aperture" or unused(rest, found):
        return None
    right = float(found.answers[0].value)
    over = aperture_difference_stops(right, stops[0].value)
    holds = how_much.verdict([size], [over], said)
    state = "right" if abs(over) < 0.05 else f"{speak_stops(abs(over))} {'over' if over > 0 else 'under'}"
    return replace(found, status="answered", answers=(Quantity("claim", holds), marks.aperture(right), marks.stops(over)), used=query.facts, topic="claims", alternatives=(), notes=(),
                   lead=f"{'Yes' if holds else 'No'}. Right would be f/{right:.3g}; f/{stops[0].value:g} is {state}.")


_CALLED_FOR = Pattern(r"\b(?:calls? for|called for|asks? for|wants?|wanted|needs?|needed|requires?|should (?:be|have been)|right (?:at|would be|is)|correct (?:is|at|would be))(?: (?:about|an?|aperture of))* $")
_IS_SET = Pattern(r"\b(?:set|use|used|shoot|shot|left|took|am|was|lens (?:is|was|stood|stands)|ring (?:is|was|stood|stands)|set to|at|on|i(?:'m| am) (?:at|on))(?: (?:it|the lens|the ring|at|on|to|to be))* $")


def _of_called_for(query: Query, said: str, size: Said, stops: list[Fact]) -> Solution | None:
    """"the flash calls for f/8 and I set f/5.6. Am I a stop over?": what is set against what was called for."""
    called = [f for f in stops if _CALLED_FOR.search(said[: f.start])]
    put = [f for f in stops if f not in called and _IS_SET.search(said[: f.start])]
    figure = size.figure if size.figure[1] else (size.start, size.end)
    if len(called) != 1 or len(put) != 1 or not size.way or _OFF.match(said[figure[1] :]) is None:
        return None
    over = aperture_difference_stops(called[0].value, put[0].value)
    holds = how_much.verdict([size], [over], said)
    state = "right" if abs(over) < 0.05 else f"{speak_stops(abs(over))} {'over' if over > 0 else 'under'}"
    return Solution(answers=(Quantity("claim", holds), marks.stops(over)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. f/{put[0].value:g} is {state}.")
