"""Claims about two distances of the light: as many stops between them as was said, or rows more even from one than from the other."""

from __future__ import annotations

import math

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import called_wrong, turned
from assistant.solving.placing import scene_of, two_lights
from assistant.solving.set_for_row import RIGHT_AT
from assistant.solving.solution import Solution

_UNDER = Pattern(r"\b(?:(?:less|fewer|smaller) than|under|below|within|no more than|at most|up to|not (?:even|quite)|inside)(?: about)?\W*$")
_OVER = Pattern(r"\b(?:(?:more|greater|bigger) than|over|above|at least|beyond)(?: about)?\W*$")


def bounded(query: Query) -> bool:
    """"is 8 ft to 12 ft less than a stop": a bound that no rounding widens."""
    return any(f.quantity in ("stops", "loss", "relation") and (_UNDER.search(query.text.lower()[: f.start]) or _OVER.search(query.text.lower()[: f.start])) for f in query.facts)


def claim_of_distances(query: Query) -> Solution | None:
    """"8 feet to 5.6, is that a stop?": the stops claimed against those of two distances."""
    scene = scene_of(query)
    said = [f for f in query.facts if f.quantity in ("stops", "loss", "relation")]
    kinds = {f.quantity for f in query.facts} - {"distance", "gap", "length_range", "stops", "loss", "relation", "rows", "remark", "place", "camera_distance", "modifier"} - ({"count"} if all(f.value == 1 for f in query.all("count")) else set())
    if not query.claim or scene is None or scene.near is None or scene.far is None or len(said) != 1 or kinds or two_lights(query):
        return None
    right = falloff_stops(scene.near, scene.far)
    size, want = abs(right), abs(said[0].value)
    words = query.text[: said[0].start].lower()
    holds = size < want + 0.005 if _UNDER.search(words) else size > want - 0.005 if _OVER.search(words) else abs(size - want) <= 0.17
    lead = f"{'Yes' if holds else 'No'}: it is {speak_stops(abs(right))} {'more' if right > 0 else 'less'} light ({right:+.2f})."
    return Solution(answers=(Quantity("claim", holds, ""), marks.stops(right)), used=(*scene.used, said[0]), lead=lead, topic="claims")


_ALL_OF_THEM = Pattern(r"\b(?:all|they|both|everyone|everybody|each|still|always|any|either|neither|none|anyone|anybody)\b")
_NOT_ONE = Pattern(r"\b(?:neither|none|nobody|no one)\b")


def claim_of_places_within(query: Query) -> Solution | None:
    """"set for 16 feet, they walk past at 14 to 18: all within half a stop?": the farthest out of them, against the place that is right."""
    places, ends, said = query.all("distance"), query.all("length_range"), [f for f in query.facts if f.quantity in ("stops", "loss", "relation")]
    kinds = {f.quantity for f in query.facts} - {"distance", "length_range", "stops", "loss", "relation", "remark", "place", "film_speed"}
    words = query.text.lower()
    right = places if len(places) == 1 else [f for f in places if RIGHT_AT.search(query.text[: f.start])]
    others = [f.value for f in places if f not in right] + [v for f in ends for v in (f.value, f.other)]
    if not query.claim or len(right) != 1 or len(others) != 2 or len(said) != 1 or kinds or min(right[0].value, *others) <= 0 or not _ALL_OF_THEM.search(words):
        return None
    before = words[: said[0].start]
    under, over = _UNDER.search(before) is not None, _OVER.search(before) is not None
    if under is over:
        return None
    worst = max((falloff_stops(right[0].value, place) for place in others), key=abs)
    inside = abs(worst) < abs(said[0].value) + 0.005
    holds = (inside is under) is not (_NOT_ONE.search(words) is not None)
    lead = f"{'Yes' if holds else 'No'}: the farthest out of them is {speak_stops(abs(worst))} {'over' if worst > 0 else 'under'} ({worst:+.2f})."
    return Solution(answers=(Quantity("claim", holds, ""), marks.stops(worst)), used=(*places, *ends, *said, *query.all("film_speed")), lead=lead, topic="claims")


_OF_LIGHT = Pattern(r"\s*(?:of |as much )?(?:of )?(?:the )?(?:light|brightness|exposure|illumination)\b")


def claim_of_share_by_distance(query: Query) -> Solution | None:
    """"rows at 8 and 16 feet: the back gets half the light of the front": the square of the distances (the inverse square law)."""
    scene = scene_of(query)
    shares = [f for f in query.facts if f.quantity in ("power", "share") and 0 < f.value < 1]
    kinds = {f.quantity for f in query.facts if f.origin == "said"} - {"distance", "power", "share", "rows", "camera_distance"}
    words = query.text.lower()
    if not query.claim or scene is None or scene.near is None or scene.far is None or len(shares) != 1 or kinds or two_lights(query) or not _OF_LIGHT.match(words, shares[0].end):
        return None
    near, far = sorted((scene.near, scene.far))
    right = falloff_stops(near, far)
    off = right - math.log2(shares[0].value)
    holds = within(bound_of(words[: shares[0].start])[0], off, 0.17) is not turned(words, [(shares[0].start, shares[0].end)])
    lead = f"{'Yes' if holds else 'No'}: the farther one gets 1/{2**-right:.3g} of the light of the nearer ({right:+.2f} stops)."
    return Solution(answers=(Quantity("claim", holds, ""), marks.stops(right)), used=(*scene.used, shares[0]), lead=lead, topic="claims")


_SPREAD = Pattern(
    r"\b(?:front[- ]to[- ]back|row[- ]to[- ]row) (?:difference|spread|drop)\b|\b(?:difference|spread)\b[^.?]{0,24}\b(?:front|back|rows?|group|ends?)\b|\bfall-?off\b[^.?]{0,24}\b(?:front|back|rows?|group|across|ends?)\b"
    r"|\bfront[- ]to[- ]back fall-?off\b|\b(?:back|front|far|near) (?:row|one|end)\b[^.?]{0,16}\b(?:closer|nearer) to the (?:front|back|far|near)(?: row| one| end)? in (?:exposure|brightness|light|stops)\b|\brows?\b[^.?]{0,30}\beven\b|\b(?:more|less) (?:even|evenly|uneven)\b[^.?]{0,40}\b(?:over|across|on|for)\b|\bevener\b|\bmore evenly\b|\b(?:more|less) (?:even|evenly|uneven)\b[^.?]*\bthan\b"
)
_LARGER = Pattern(r"\b(?:larger|bigger|greater|grows?|increas\w*|widens?|worse|steeper|(?<!even )more(?! even)|less even|uneven)\b")
_SMALLER = Pattern(r"\b(?:smaller|less(?! even)|lessens?|shrinks?|narrow\w*|reduc\w*|decreas\w*|more even(?:ly)?|evener|gentler|closer to the|nearer to the)\b")
_ALONE = frozenset({"distance", "length_range", "gap", "rows", "move"})


def claim_of_evenness(query: Query) -> Solution | None:
    """"the light goes from 6 to 12 feet, does the front-to-back difference shrink": from further away two rows differ less."""
    words = query.text.lower()
    if not query.claim or {f.quantity for f in query.facts} - _ALONE or not _SPREAD.search(words):
        return None
    larger, smaller = _LARGER.search(words) is not None, _SMALLER.search(words) is not None
    places = [(f.value, f.start) for f in query.facts if f.quantity == "distance" and f.of != "back"] + [(v, f.start) for f in query.facts if f.quantity == "length_range" for v in (f.value, f.other)]
    if larger is smaller or len(places) != 2 or places[0][0] == places[1][0]:
        return None
    before, after = (v for v, _ in sorted(places, key=lambda p: p[1]))
    if patterns.search(r"\bthan\b[^.?]{0,40}$", words[: max(at for _, at in places)]):
        before, after = after, before  # "less at 12 ft than at 6 ft"
    holds = ((after > before) is smaller) is not called_wrong(words)
    lead = f"{'Yes' if holds else 'No'}. The farther the light, the less the depth of a group matters beside its distance, so the rows come out more even."
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, lead=lead, topic="claims")
