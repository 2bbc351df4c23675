"""Claims of filters and of marks: factors multiply, a density of 0.3 is a stop, half the light is one, and so is the next mark."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.physics.ambient import combined_factor
from assistant.query import Query
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, tolerance, within
from assistant.solving.claim_denial import turned
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution


def claim_of_factors_stacked(query: Query) -> Solution | None:
    """"a factor of 2 stacked with one of 4 makes 6": factors multiply."""
    factors = sorted((f for f in query.facts if f.quantity in ("factor", "times")), key=lambda f: f.start)
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"factor", "times", "camera_filter", "rows", "count"}
    many = [f.value for f in query.all("rows")]
    alike = len(factors) == 2 and len(many) == 1 and 2 <= many[0] <= 6  # "two filters of factor 4 have a factor of 8"
    if len(factors) != 3 and not alike or rest or min(f.value for f in factors) <= 0 or not patterns.search(r"\b(?:stack\w*|combin\w*|together|both|on top|plus|and|with|multipl\w*)\b", query.text.lower()):
        return None
    *parts, claimed = factors
    right = combined_factor([f.value for f in parts] * (int(many[0]) if alike else 1))
    holds = abs(math.log2(claimed.value / right)) < 0.1
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", right, "x")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Factors multiply: together {right:g}, which is {speak_stops(math.log2(right))}.")


_TOGETHER = patterns.Pattern(r"\b(?:both|together|stack\w*|combin\w*|plus|on top|altogether|in all|makes?|comes? to)\b", re.I)


def claim_of_stops_as_factor(query: Query) -> Solution | None:
    """"a polariser of 2 stops and a filter of 1, both on, make a factor of 8": the stops added, as a factor."""
    lost = [f for f in query.facts if f.quantity in ("filter_loss", "nd")]
    factors = query.all("factor")
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"filter_loss", "nd", "factor", "camera_filter", "remark"}
    if len(lost) < 2 or len(factors) != 1 or rest or factors[0].value <= 0 or any(f.start > factors[0].start for f in lost) or not _TOGETHER.search(query.text):
        return None
    said, total = plain(query.text), sum(abs(f.value) for f in lost)
    holds = within(bound_of(said[: factors[0].start])[0], total - math.log2(factors[0].value), 0.1) is not turned(said, [(factors[0].start, factors[0].end)])
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", 2.0**total, "x")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Together they take {speak_stops(total)}, a factor of {2.0**total:.3g}.")


def claim_of_density(query: Query) -> Solution | None:
    """"a filter of density 0.6 wants two stops more": what an ND is said to cost against its marking."""
    marked = [f for f in query.facts if f.quantity == "nd"]
    stops = [f for f in query.facts if f.quantity in ("filter_loss", "loss", "stops")]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"nd", "filter_loss", "loss", "stops", "camera_filter"}
    if len(marked) != 1 or len(stops) != 1 or rest or stops[0].start == marked[0].start:
        return None
    said = plain(query.text)
    if patterns.search(r"\b(?:than|as) (?:hers|his|mine|yours|the other)\b", said):
        return None
    if patterns.search(r"\b(?:flash|strobe|power|light)\b", said) and patterns.search(r"\bopen\w*\b", said):
        return None  # what the opening makes up for is another claim
    holds = within(bound_of(said[: stops[0].start])[0], marked[0].value - abs(stops[0].value), tolerance(said, stops[0].start, stops[0].end, TOLERANCE))
    return Solution(answers=(Quantity("claim", holds), marks.stops(marked[0].value, "ND")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. It takes {speak_stops(marked[0].value)}.")


def claim_of_density_as_factor(query: Query) -> Solution | None:
    """"a 0.9 neutral density has a filter factor of 4": factor = 10^density (the definition of density)."""
    marked, factors = query.all("nd"), query.all("factor")
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"nd", "factor", "camera_filter"}
    if len(marked) != 1 or len(factors) != 1 or rest or factors[0].value <= 0:
        return None
    said, right = plain(query.text), 2.0 ** marked[0].value
    holds = within(bound_of(said[: factors[0].start])[0], marked[0].value - math.log2(factors[0].value), 0.1) is not turned(said, [(factors[0].start, factors[0].end)])
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", right, "x")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. It takes {speak_stops(marked[0].value)}, a factor of {right:.3g}.")


def claim_of_share_left(query: Query) -> Solution | None:
    """"a 0.9 and a 0.3 ND together leave a sixteenth": their stops added, against the share that is said to be left."""
    filters = [f for f in query.facts if f.quantity in ("nd", "filter_loss", "loss")]
    left = [f for f in query.facts if f.quantity in ("power", "share")]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"nd", "filter_loss", "loss", "power", "share", "camera_filter", "modifier"}
    if len(filters) < 2 or len(left) != 1 or rest or not 0 < left[0].value < 1 or patterns.search(r"\b(?:than|as (?:much|bright|strong)\b.* as)\b", query.text.lower()) or not patterns.search(r"\b(?:leav\w*|pass\w*|left|lets?|gets?|through|transmit\w*)\b", query.text.lower()):
        return None
    right = sum(abs(f.value) for f in filters)
    holds = abs(right + math.log2(left[0].value)) < 0.1
    answers = (Quantity("claim", holds), marks.stops(-right), marks.factor(right))
    return Solution(answers=answers, used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Together they take {speak_stops(right)}, and 1/{2.0**right:.3g} of the light is left.")


def claim_of_passing(query: Query) -> Solution | None:
    """"a diffuser that passes 25 % costs a stop and a half": the share that comes through, in stops."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss")]
    passed = [f for f in lost if f.cue == "passed"]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"loss", "filter_loss", "modifier", "camera_filter"}
    if len(lost) != 2 or len(passed) != 1 or rest:
        return None
    right, claimed = passed[0].value, next(f.value for f in lost if f is not passed[0])
    holds = abs(right - claimed) < 0.2
    return Solution(answers=(Quantity("claim", holds), marks.stops(-right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. That share of the light is {speak_stops(right)} lost.")


def claim_of_marks(query: Query) -> Solution | None:
    """"a third of a stop down from f/8 is f/9", "f/8 plus half a stop is f/9.5": the mark so far from another."""
    stops = sorted((f for f in query.facts if f.quantity == "aperture"), key=lambda f: f.start)
    by = [f for f in query.facts if f.quantity in ("stops", "relation") and f.cue in ("less", "more")]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"aperture", "stops", "relation"}
    if len(stops) != 2 or len(by) > 1 or rest or any(f.of for f in stops):
        return None
    start, claimed = stops
    said = query.text.lower()
    if by and by[0].start < start.start and patterns.search(r"\b(?:down|under|closed|up|over|open\w*|less|more) (?:from|than)? ?$", said[by[0].end : start.start]):
        right = start.value * 2 ** (abs(by[0].value) / 2 * (1 if by[0].cue == "less" else -1))
        read = start.value**2 / right
        if patterns.search(r"\b(?:under|over) ?$", said[by[0].end : start.start]) and abs(aperture_difference_stops(read, claimed.value)) < 0.15:
            right = read  # a light that reads two stops under f/8 reads f/4, a lens set two stops under it stands at f/16
    elif not by and start.unit == "mixed" or not by and patterns.search(r"\b(?:plus|and) (?:a |one |two |half|third)", said[start.start : claimed.start]):
        right = start.value
    else:
        return None
    off = aperture_difference_stops(right, claimed.value)
    holds = abs(off) < 0.15
    return Solution(answers=(Quantity("claim", holds), marks.aperture(right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. That is f/{right:.3g}.")
