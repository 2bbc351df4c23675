"""Claims of the bellows: what a draw or a scale of reproduction takes, against the factor or the stops that are said."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.optics import bellows_factor, bellows_factor_from_magnification, effective_aperture
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.camera import bellows_factor as drawn_factor
from assistant.solving.claim_bounds import bound_of, tolerance, within
from assistant.solving.claim_denial import called_wrong, turned
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain
from assistant.solving.lens_geometry import magnification_of
from assistant.solving.solution import Solution

_FACTOR = Pattern(r"\b(?:bellows|exposure|extension|close-?up)[- ]factor\b|\bfactor\b[^.?!]{0,40}\b(?:bellows|life[- ]?size|magnification|1:\d|extension|draw)\b|\b(?:bellows|life[- ]?size|magnification|1:\d|extension|draw)\b[^.?!]{0,40}\bfactor\b")
_EXPOSURE = Pattern(r"\btimes (?:as much |the |more )?(?:normal |usual )?(?:exposure|light|time)\b|\b(?:twice|double|half) (?:as much |the )?(?:normal |usual )?(?:exposure|light|time)\b")
_CLOSE = 0.1
"""Stops by which a factor that is said may be off: 2.2 for 2.25 is near."""


def claim_of_bellows(query: Query) -> Solution | None:
    """"at 1:1 the bellows factor is four": one and the scale of reproduction, squared."""
    said = [f for f in query.facts if f.origin == "said"]
    claimed = [f for f in said if f.quantity in ("factor", "times", "number")]
    rest = [f for f in said if f not in claimed]
    right = _factor(rest)
    if right is None or len(claimed) != 1 or claimed[0].bad or claimed[0].value <= 0 or not (_FACTOR.search(query.text.lower()) or claimed[0].quantity == "times" and _EXPOSURE.search(query.text.lower())):
        return None
    holds = abs(math.log2(claimed[0].value / right)) < _CLOSE
    lead = f"{'Yes' if holds else 'No'}. The factor is {right:.3g}, which is {speak_stops(math.log2(right))}."
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", right, "x"), marks.stops(math.log2(right))), used=query.facts, topic="claims", lead=lead)


def _factor(told: list[Fact]) -> float | None:
    """The factor of what is told, where that is a scale of reproduction, or a lens and its draw, and nothing else."""
    values = {f.quantity: f.value for f in told}
    if len(values) != len(told) or any(f.bad or not 0 < f.value < math.inf for f in told):
        return None
    if set(values) == {"magnification"}:
        return bellows_factor_from_magnification(values["magnification"])
    if set(values) == {"extension", "focal_length"}:
        return bellows_factor(values["extension"], values["focal_length"])
    return None


_CLOSE_UP = frozenset({"magnification", "extension", "focal_length", "focus_distance", "stops", "loss", "filter_loss"})
_STOPS = ("stops", "loss", "filter_loss")
_MADE_UP = r"(?: (?:really|actually|even|ever|still|also))?(?: any)?(?: (?:need|have|going))?(?: to)? (?:open(?:ing)? (?:up|the lens|it up)|compensat\w*|correct\w* (?:for|the exposure)|allow for|adjust (?:for|the exposure)|add (?:any )?(?:light|exposure|stops?|power)|change (?:the |my )?exposure)\b"
_NO_NEED = Pattern(rf"\b(?:(?:(?:do|does|did|would|will|need|must) ?n(?:o|'|)t|never|no)\b{_MADE_UP})")
"""Nothing at all is said to be made up for: "with flash I don't need to open up for that"."""
_NEED = Pattern(rf"\b(?:(?:do|does|would|should|must|will|need|shall) (?:i|we|you|one|they)|(?:i|we|you|one) (?:need|must|should|have|ought))\b{_MADE_UP}")

_REALLY = Pattern(r"\beffective\w*|\breally\b|\bin (?:effect|truth|fact)\b|\bworth\b|\bacts? (?:as|like)\b|\bbehaves? (?:as|like)\b|\bworks? (?:as|like|out|at)\b|\bfilm (?:gets|sees)\b|\bbecomes?\b|\bamounts? to\b")
_SAME = 0.2


def claim_of_scale(query: Query) -> Solution | None:
    """"a 50 mm tube on a 50 mm lens gives life size": the scale said, against that of the lens and its draw."""
    said = [f for f in query.facts if f.origin == "said" and not math.isinf(f.value)]
    values = {f.quantity: f for f in said}
    if set(values) != {"magnification", "extension", "focal_length"} or len(said) != 3 or any(f.bad or f.value <= 0 for f in said):
        return None
    right = math.sqrt(drawn_factor(query, values["extension"], values["focal_length"])) - 1
    if right <= 0:
        return None
    holds = (abs(math.log2(values["magnification"].value / right)) < _CLOSE) is not called_wrong(plain(query.text))
    lead = f"{'Yes' if holds else 'No'}. It is {right:.3g} times life size: the extension over the focal length."
    return Solution(answers=(Quantity("claim", holds), Quantity("magnification", right, "x")), used=query.facts, topic="claims", lead=lead)


def claim_of_effective(query: Query) -> Solution | None:
    """"f/16 marked at life size is really f/32": the mark, times one and the scale."""
    said = [f for f in query.facts if f.origin == "said"]
    marked = [f for f in said if f.quantity == "aperture" and not f.of]
    if len(marked) != 2 or len(said) - len(marked) != sum(f.quantity in _DRAWN for f in said) or marked[0].value == marked[1].value or not _REALLY.search(plain(query.text)):
        return None
    size, used = magnification_of(query)
    if size is None or size <= 0:
        return None
    right = min(f.value for f in marked) * (1 + size)
    holds = (abs(2 * math.log2(max(f.value for f in marked) / right)) < _SAME) is not called_wrong(plain(query.text))
    lead = f"{'Yes' if holds else 'No'}. The mark times one and the magnification is what the film gets."
    return Solution(answers=(Quantity("claim", holds), marks.aperture(right)), used=(*marked, *used), topic="claims", lead=lead)


_FILM_GETS = Pattern(r"\bfilm\b[^.?!]{0,16}\b(?:get\w*|see\w*|receiv\w*)\b[^.?!]{0,12}\b(?P<way>less|more) (?:light )?than\b")


def claim_of_what_the_film_gets(query: Query) -> Solution | None:
    """"f/16 on the ring, half life size: is the film getting less than f/22?": the effective opening against the one that is named."""
    found = _FILM_GETS.search(plain(query.text))
    marked = [f for f in query.facts if f.quantity == "aperture" and not f.of]
    if found is None or len(marked) != 2 or not {f.quantity for f in query.facts if f.origin == "said"} <= {"aperture"} | _DRAWN:
        return None
    size, used = magnification_of(query)
    if size is None or size <= 0:
        return None
    ring, named = marked
    right = effective_aperture(ring.value, size)
    holds = (right > named.value * 1.01 if found["way"] == "less" else right < named.value / 1.01) is not called_wrong(plain(query.text))
    lead = f"{'Yes' if holds else 'No'}. The mark times one and the magnification is what the film gets: f/{right:.3g}."
    return Solution(answers=(Quantity("claim", holds), marks.aperture(right)), used=(*marked, *used), topic="claims", lead=lead)


_DRAWN = frozenset({"magnification", "extension", "focal_length", "focus_distance"})
_LOST = Pattern(r"\b(?:lost|los(?:es?|ing|s)|costs?|costing|darker|eats?|robs?|steals?)\b")


def claim_of_draw_in_stops(query: Query) -> Solution | None:
    """"life size costs one stop", "at double extension I only need to open up one", "no need to open up for the tube"."""
    said = [f for f in query.facts if f.origin == "said"]
    claimed = [f for f in said if f.quantity in _STOPS]
    if not any(f.quantity in ("magnification", "extension") for f in said) or len({abs(f.value) for f in claimed}) > 1 or not all(f.quantity in _CLOSE_UP and not f.bad for f in said):
        return None
    text = plain(query.text)
    no_need = _NO_NEED.search(text) if not claimed else None
    size, used = magnification_of(query) if claimed or no_need or _NEED.search(text) else (None, ())
    if size is None or size <= 0 or any(f.quantity == "focus_distance" for f in said if f not in used):
        return None
    right = math.log2(bellows_factor_from_magnification(size))
    fact = claimed[0] if claimed else None
    over = right - abs(fact.value) if fact else right
    holds = within(bound_of(text[: fact.start])[0], over, tolerance(text, fact.start, fact.end, TOLERANCE)) if fact else (right < _CLOSE) is (no_need is not None)
    holds = holds is not (turned(text, [(fact.start, fact.end)]) if fact else called_wrong(text))
    lost = (marks.stops(-right),) if _LOST.search(text) else ()  # a loss is negative, what makes up for it is not
    open_up = marks.stops(right, "to open up" if lost else None)
    lead = f"{'Yes' if holds else 'No'}. It takes {speak_stops(right)}: open up, or add light, by that much, for flash and ambient light alike."
    return Solution(answers=(Quantity("claim", holds), *lost, open_up, marks.factor(right)), used=tuple(dict.fromkeys((*used, *claimed))), topic="claims", lead=lead)


_HELD_AGAINST = Pattern(r"\b(?:costs?|takes?|los(?:es?|ing)|eats?|robs?|steals?|swallows?|needs?|darker)\b[^.?!]{0,30}?\b(?:(?P<more>more)|(?P<less>less))\b[^.?!]{0,24}?\bthan\b")
_OF_GLASS = frozenset({"factor", "nd", "filter_loss", "loss", "stops"})


def claim_of_draw_against(query: Query) -> Solution | None:
    """"does a 180 mm lens drawn to 252 mm cost more light than a filter of factor 1.8?": what the draw takes against what the other takes."""
    other, found = [f for f in query.facts if f.quantity in _OF_GLASS and f.value > 0], _HELD_AGAINST.search(plain(query.text))
    rest = {f.quantity for f in query.facts if f.origin == "said"} - _OF_GLASS - {"camera_filter", "modifier", "remark"}
    if found is None or len(other) != 1 or not rest & {"magnification", "extension"} or rest - _DRAWN:
        return None
    size, used = magnification_of(query.with_facts(f for f in query.facts if f is not other[0]))
    if size is None or size <= 0:
        return None
    drawn, glass = math.log2(bellows_factor_from_magnification(size)), math.log2(other[0].value) if other[0].quantity == "factor" else abs(other[0].value)
    places = [f.start for f in used]
    if max(places) < found.end() <= other[0].start:
        apart = drawn - glass
    elif other[0].start < found.end() <= min(places):
        apart = glass - drawn
    else:
        return None
    holds = (apart > 0.01 if found["more"] else apart < -0.01) is not turned(plain(query.text), [(other[0].start, other[0].end)])
    lead = f"{'Yes' if holds else 'No'}. The draw takes {speak_stops(drawn)} ({drawn:.2f}), the other {speak_stops(glass)} ({glass:.2f})."
    return Solution(answers=(Quantity("claim", holds), marks.stops(abs(apart))), used=query.facts, topic="claims", lead=lead)
