"""Leeway: how near and how far somebody may go and stay within so many stops."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import distance_for_falloff
from assistant.query import Ask, Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution, needs
from assistant.units import LENGTH, speak_length

TOLERANCE = 0.5


def within(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """How near and how far the subject may go and stay within so much."""
    if query.has("focal_length") or query.has("focus_distance") or patterns.search(r"\brange of (?:apertures|f|stops|powers|speeds)", query.text, re.I):
        return None
    if "span" not in query.cues or _ONE_WAY.search(query.text):
        return None
    centre = scene.near if scene.near is not None and scene.far is None else None
    lines: tuple[Fact, ...] = ()
    taken: tuple[Assumed, ...] = ()
    if centre is None and scene.near is None:
        centre, lines, taken = by_guide(query, ask.unit)
    if centre is None or scene.gap is not None:
        return None
    by_lens = _as_far_as_the_lens_opens(query, ask, scene, centre)
    if by_lens is not None:
        return by_lens
    over, under, used, assumed = tolerance(query)
    assumed += taken
    near, far = distance_for_falloff(centre, over), distance_for_falloff(centre, -under)
    unit = preferred_unit(query, ask.unit)
    answers = (marks.distance(near, unit, "from"), marks.distance(far, unit, "to"))
    if _FARTHEST.search(query.text) and not _NEAREST.search(query.text):
        return _ranged((marks.distance(far, unit, "to"),), scene, used + lines, assumed, f"As far as {speak_length(far, unit)} from the light ({speak_stops(under)} under).")
    lead = f"From {speak_length(near, unit)} ({speak_stops(over)} over) to {speak_length(far, unit)} ({speak_stops(under)} under), around {speak_length(centre, unit)}."
    return _ranged(answers, scene, used + lines, assumed, lead)


_ONE_WAY = Pattern(r"\bhow (?:much|far) (?:further|farther|closer|nearer)\b|\bhow many (?:more \w+|\w+ more)\b|\bhow far\b[^?]{0,40}\b(?:back|backwards?|away|off)\b[^?]{0,20}\b(?:before|until|without)\b", re.I)
"""A way that somebody goes, and no span around where they stand."""
_FARTHEST = Pattern(r"\b(?:what|which)(?:'s| is) the (?:farthest|furthest)\b|\bhow far (?:away |back )?may\b", re.I)


_NEAREST = Pattern(r"\bhow (?:near|close)\b|\b(?:nearest|closest)\b", re.I)


def _ranged(answers: tuple[Quantity, ...], scene: Scene, used: tuple[Fact, ...], assumed: tuple[Assumed, ...], lead: str) -> Solution:
    return Solution(answers=answers, used=tuple(dict.fromkeys(scene.used + used)), assumed=assumed, lead=lead, topic="falloff")


def by_guide(query: Query, unit: str = "") -> tuple[float | None, tuple[Fact, ...], tuple[Assumed, ...]]:
    """The distance in metres that is exactly right by guide number and aperture, from what, and what was taken."""
    from assistant.solving import flash

    if not query.has("guide_number", "aperture"):
        return None, (), ()
    found = flash.solve(Query(query.text, tuple(f for f in query.facts if f.quantity not in ("stops", "relation")), (Ask("distance", "", unit),)))
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return None, (), ()
    return found.answers[0].value * LENGTH.get(found.answers[0].unit, 1.0), found.used, found.assumed


def tolerance(query: Query) -> tuple[float, float, tuple[Fact, ...], tuple[Assumed, ...]]:
    """Stops allowed over and under."""
    said = [f for f in query.facts if f.quantity in ("stops", "relation", "loss", "signed")]
    over, under = (next((f for f in said if patterns.match(words, query.text[f.end :], re.I)), None) for words in (r"\W*(?:too |of )?(?:over|hot|more|above|bright|much)", r"\W*(?:too |of )?(?:under|less|below|dark|little)"))
    if over and under:
        return abs(over.value), abs(under.value), (over, under), ()
    if said:
        return abs(said[-1].value), abs(said[-1].value), tuple(said[-1:]), ()
    return TOLERANCE, TOLERANCE, (), (Assumed("stops", TOLERANCE, "stops", "a tolerance of half a stop either way, common practice for slide film"),)


def _as_far_as_the_lens_opens(query: Query, ask: Ask, scene: Scene, centre: float) -> Solution | None:
    """"f/8 at 4 m, the lens goes from f/5.6 to f/11": as near as the smallest opening allows and as far as the widest."""
    told, ends = query.all("aperture"), query.last("aperture_range")
    if len(told) != 1 or ends is None or ends.other != ends.other or any(query.has(q) for q in ("guide_number", "stops", "relation", "loss", "signed")):
        return None
    wide, small = sorted((ends.value, ends.other))
    near, far = centre * told[0].value / small, centre * told[0].value / wide
    unit = preferred_unit(query, ask.unit)
    lead = f"From {speak_length(near, unit)} (f/{small:g}) to {speak_length(far, unit)} (f/{wide:g})."
    return _ranged((marks.distance(near, unit, "from"), marks.distance(far, unit, "to")), scene, (told[0], ends), (), lead)


_DEEP = Pattern(r"\bhow (?:deep|thick|far back)\b[^?]*\b(?:group|rows?|ranks?|tiers?|crowd|they|choir|crew|party|lot|bunch|team|class)\b|\bhow (?:deep|thick) (?:can|may|could)\b|\bhow many (?:feet|metres|meters) (?:deep|of depth)\b|\bdeepest\b|\b(?:greatest|largest|maximum) depth\b|\bhow far apart (?:can|may|could|might) (?!the (?:light|flash|lamp|head|strobe))|\bhow far behind (?:the |that )?(?:it|them|him|her|front|first|near\w*)(?: (?:row|one|rank|person))? (?:can|may|could|might)\b", re.I)


def how_deep(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"the front row is 3 m from the flash: how deep may the group be for half a stop": the last place, less the first."""
    first = scene.near_fact or next((f for f in query.all("distance") if f.of in ("", "front")), None)
    said = next((f for f in query.facts if f.quantity in ("stops", "relation", "loss", "signed", "power_down")), None)
    if not _DEEP.search(query.text) or first is None or len(query.all("distance")) != 1 or said is None or scene.gap is not None or query.has("guide_number"):
        return None
    deep = distance_for_falloff(first.value, -abs(said.value)) - first.value
    unit = preferred_unit(query, ask.unit)
    return Solution(answers=(marks.distance(deep, unit, "depth"),), used=(first, said), lead=f"{speak_length(deep, unit)} deep.", topic="falloff")


_HOW_NEAR_THE_FRONT = Pattern(r"\bhow (?:close|near|far)\b[^?.]{0,24}\b(?:front|first|near\w*)\b|\b(?:closest|nearest) (?:the )?(?:front|first)|\bwhere (?:is|are|does|must|should) (?:the )?(?:front|first|near)", re.I)


def front_of(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"the back row is at 15 feet and may be two thirds of a stop under: how near may the front be": the first place, from the last."""
    back = query.last("distance", "back")
    said = next((f for f in query.facts if f.quantity in ("stops", "relation", "loss", "signed", "power_down")), None)
    if back is None or said is None or len(query.all("distance")) != 1 or scene.gap is not None or query.has("guide_number") or not _HOW_NEAR_THE_FRONT.search(query.text):
        return None
    place = distance_for_falloff(back.value, abs(said.value))
    return Solution(answers=(marks.distance(place, preferred_unit(query, ask.unit), "front row"),), used=(back, said), lead=f"{speak_length(place, preferred_unit(query, ask.unit))} from the light.", topic="falloff")


_STEP_BACK = r"(?:(?:'s)? (?:step|move|walk|shift|pull)s? (?:back|away|further|farther|off)|(?: of)? (?:further|farther|more)(?: (?:back|away|off))?|back(?:wards)?\b)"
_STEP = Pattern(r"\b(?:(?:step|mov|go|walk|back|pull|shift|push|retreat)\w* (?:the (?:light|flash|lamp) |it )?(?:back|away|off|further|farther)(?: by| another)*\W*$)", re.I)
_STEP_AFTER = Pattern(rf"\W*{_STEP_BACK}|,? back\b", re.I)
_FROM_WHERE = Pattern(r"\b(?:(?:at|from) (?:what|which) distance|from how far|how far (?:away )?(?:is|must|does|do)|where)\b[^?]*\b(?:costs?|loses?|takes?|darkens?|dims?|mak\w+|is|worth|means?)\b", re.I)


def step_costs(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"at what distance does a metre's step back cost a stop": where so small a move makes so much."""
    steps = query.all("distance") + query.all("move")
    said = [f for f in query.facts if f.quantity in ("stops", "relation", "loss", "signed")]
    if len(steps) != 1 or len(said) != 1 or {f.quantity for f in query.facts} - {"distance", "move", "stops", "relation", "loss", "signed", "remark"} or steps[0].of or not said[0].value:
        return None
    step = steps[0]
    if not _FROM_WHERE.search(query.text) or not (_STEP_AFTER.match(query.text, step.end) or _STEP.search(query.text[: step.start])):
        return None
    place = step.value / (2 ** (abs(said[0].value) / 2) - 1)
    unit = preferred_unit(query, ask.unit)
    return Solution(answers=(marks.distance(place, unit),), used=(step, said[0]), lead=f"{speak_length(place, unit)} from the subject.", topic="falloff")


_EVENLY = Pattern(r"\b(?:all|both|every|the) (?:of )?(?:the |my |our )?(?:rows?|ranks?|tiers?|lines?|group|choir|class|team|faces)\b", re.I)
_ROW_OF_ROW = Pattern(r"\b(?:back|last|rear|furthest|farthest)\b[^?.]{0,24}\bwithin\b[^?.]{0,40}\b(?:front|first|near\w*|closest)\b", re.I)
_FROM_THE_FRONT = Pattern(r"\b(?:from|to) (?:the |my |our )?(?:front|first|near\w*|closest)\b", re.I)


def lacks_depth(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"how far from the front row for all the rows to be within half a stop", "… the back row within half a stop of the front": how deep the rows are was not said."""
    told = [f for f in query.facts if f.quantity in ("stops", "relation", "loss")]
    if len(told) != 1 or not scene.rows or not {f.quantity for f in query.facts} <= {"stops", "relation", "loss", "rows", "remark"} or not (_EVENLY.search(query.text) and _FROM_THE_FRONT.search(query.text) or _ROW_OF_ROW.search(query.text)):
        return None
    return needs(("distance",), "I need how deep the rows are, from the front one to the back one.", tuple(told), "falloff")
