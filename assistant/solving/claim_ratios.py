"""Lighting ratios claimed: "a 2:1 lighting ratio is two equal lights", "4:1 key to fill is two stops"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import key_plus_fill_ratio, key_to_fill_ratio
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_rules import TOLERANCE, Verdict
from assistant.solving.claim_words import Term, number, plain, terms
from assistant.solving.placing import times_as_far
from assistant.solving.solution import Solution

_RATIO = Pattern(r"\b(?P<a>\d+(?:\.\d+)?|one|two|three|four|five|eight|nine) ?(?::|to|-to-) ?(?P<b>\d+|one|two)\b(?! ?(?:ft|feet|m\b|met))")
_EQUAL = Pattern(r"\b(?:equal\w*|same (?:brightness|power|strength|reading|light)|identical|as bright as|evenly|equally)\b")
_KEY_TO_FILL = Pattern(r"\b(?:key|main)[- ](?:to[- ])?fill\b")

_APART = Pattern(r"\bstops? (?:apart|between|difference|of difference|from (?:key|main) to fill|of contrast)\b")


def judge_ratio(text: str) -> Verdict | None:
    """The verdict on a ratio said together with how many stops the fill is under; None where not both are said."""
    said = plain(text)
    found = _RATIO.search(said)
    if found is None or "ratio" not in said and not _KEY_TO_FILL.search(said):
        return None
    one, two = number(found["a"]), number(found["b"])
    ratio = max(one, two) / min(one, two)
    step = next((t for t in terms(text) if t.quantity == "stops"), None)
    stops = step.doublings if step is not None else 0.0 if _EQUAL.search(said) else None
    if stops is None:
        return None
    bounded = _bounded(said, step, ratio)
    if bounded is not None:
        return bounded
    plain_ratio = _KEY_TO_FILL.search(said) is not None
    right = key_to_fill_ratio(stops) if plain_ratio else key_plus_fill_ratio(stops)
    kind = "key-to-fill ratio" if plain_ratio else "lighting ratio, (key + fill) to fill,"
    lights = "Equal lights" if stops == 0 else f"A fill {speak_stops(stops)} under the key"
    other = key_plus_fill_ratio(stops) if plain_ratio else key_to_fill_ratio(stops)
    off = _off(ratio, right)
    why = f"Counted the other way, as {'(key + fill) to fill' if plain_ratio else 'key to fill'}, it is {other:.3g}:1."
    holds, told = off <= TOLERANCE / 2, f"{lights} {'give' if stops == 0 else 'gives'} a {kind} of {right:.3g}:1."
    apart = _APART.search(said)
    share = ratio if plain_ratio else ratio - 1
    if not holds and share >= 1 and apart is not None and apart.start() > found.start():  # the ratio is what is told, the stops what is said of it
        true = math.log2(share)
        return Verdict(False, abs(true - abs(stops)), f"A {kind.split(',')[0]} of {ratio:.3g}:1 is {speak_stops(true)} between key and fill.", told + " " + why, (marks.stops(true), marks.ratio(right)), found.start())
    return Verdict(holds, off, told, why, (marks.ratio(right),), found.start())


def _bounded(said: str, step: Term | None, ratio: float) -> Verdict | None:
    """"is 5:1 more than a stop and a half between key and fill": the stops of the ratio against a bound on them."""
    bound = bound_of(said[: step.start])[0] if step is not None else ""
    share = ratio if _KEY_TO_FILL.search(said) else ratio - 1
    if step is None or not bound or share < 1:
        return None
    right = math.log2(share)
    return Verdict(within(bound, right - step.doublings, 0.1, 0.02), 0.0, f"That is {speak_stops(right)} between key and fill.", "", (marks.stops(right),), step.start)


def _off(one: float, two: float) -> float:
    return abs(math.log2(one / two))


_FILL_AS_FAR = Pattern(r"\bfill\b[^.?!;]{0,40}\b(?:twice|double|three times|half|four times)\b[^.?!;]{0,24}\b(?:as far|the (?:key's )?distance|the key's)\b|\bfill\b[^.?!;]{0,40}\b(?:twice|double|three times|half|four times) the key's distance\b", re.I)


def claim_of_ratio_by_place(query: Query) -> Solution | None:
    """"key at 4 feet, the same flash as fill at 5.6: two to one, key to fill": two equal flashes, each by the square of its distance."""
    places = {f.of: f for f in query.all("distance") if f.of in ("key", "fill")}
    said = [f for f in query.facts if f.quantity == "ratio" and f.value > 0]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"distance", "ratio", "count", "film_speed"}
    times = times_as_far(query) if _FILL_AS_FAR.search(query.text) else None
    placed = len(places) == 2 == len(query.all("distance")) and min(f.value for f in places.values()) > 0
    if not placed and times is None or len(said) != 1 or rest - {"times"}:
        return None
    each = (places["fill"].value / places["key"].value) ** 2 if times is None else times**2
    right = each if _KEY_TO_FILL.search(plain(query.text)) is not None else each + 1
    claimed = max(said[0].value, 1 / said[0].value)
    holds = _off(claimed, max(right, 1 / right)) <= TOLERANCE / 2  # 3.25:1 is not 4:1
    kind = "key to fill, each by itself" if right == each else "(key + fill) to fill"
    other = each + 1 if right == each else each
    lead = f"{'Yes' if holds else 'No'}. Equal flashes at those distances stand {right:.2g}:1, {kind}; counted the other way it is {other:.2g}:1."
    return Solution(answers=(Quantity("claim", holds), marks.ratio(right)), used=query.facts, topic="claims", lead=lead)
