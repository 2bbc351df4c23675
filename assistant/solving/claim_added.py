"""Claims of what adds up: the readings of lights that fall on one side, losses one behind the other, a loss between two readings."""

from __future__ import annotations

import math

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import sum_of_light, times_the_light
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import number
from assistant.solving.solution import Solution

_ALTOGETHER = Pattern(r"\b(?:in all|altogether|together|total|combined|both|add(?:ed|s)? up|sum|all told)\b")
_CLOSE = 0.1


def claim_of_sum(query: Query) -> Solution | None:
    """"daylight f/16 and flash f/16 on the same cheek make f/22 in all": light adds, so the squares of the f-numbers do."""
    stops = [f for f in query.facts if f.quantity == "aperture"]
    if len(stops) < 3 or not _ALTOGETHER.search(query.text.lower()) or {f.quantity for f in query.facts if f.origin == "said"} - {"aperture", "count"}:
        return None
    *parts, claimed = sorted(stops, key=lambda f: f.start)
    right = sum_of_light(f.value for f in parts)
    off = aperture_difference_stops(claimed.value, right)
    holds = abs(off) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.aperture(right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Light adds: together they give f/{right:.3g}.")


_ALONE = Pattern(r"\b(?:alone|on its own|by itself|by themselves|each|both|either|solo)\b")
_LEFT_AT = Pattern(r"\b(?:leav\w+|left|stay\w*|keep\w*|kept|set|shoot\w*|shot|expos\w+|lens|camera)\b[^.?!\d]{0,20}$")


def claim_of_sum_over(query: Query) -> Solution | None:
    """"the room alone is right at f/8 and so is the flash; left at f/8 she's a stop over": what two lights on one face come to against the lens."""
    said = query.text.lower()
    read = sorted((f for f in query.facts if f.quantity == "aperture"), key=lambda f: f.start)
    off = [f for f in query.facts if f.quantity in ("stops", "relation") and f.cue in ("more", "less")]
    if len(read) not in (2, 3) or len(off) != 1 or not _ALONE.search(said) or {f.quantity for f in query.facts if f.origin == "said"} - {"aperture", "stops", "relation"} or sum(f.of == "ambient" for f in read) != 1:
        return None
    lens = read[2] if len(read) == 3 and _LEFT_AT.search(said[: read[2].start]) else None
    if lens is None and (len(read) == 3 or read[0].value != read[1].value):
        return None
    right = math.log2((read[0].value ** 2 + read[1].value ** 2) / (lens or read[0]).value ** 2)
    holds = abs(right - abs(off[0].value) * (1 if off[0].cue == "more" else -1)) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=(*read, *off), topic="claims", lead=f"{'Yes' if holds else 'No'}. Light adds: together they are {speak_stops(abs(right))} {'over' if right > 0 else 'under'} at f/{(lens or read[0]).value:g}.")


def claim_of_pops_read(query: Query) -> Solution | None:
    """"one pop gives f/8, so four give f/16": the f-number goes with the root of the pops, or of the equal flashes."""
    stops = sorted((f for f in query.facts if f.quantity == "aperture"), key=lambda f: f.start)
    many = _counts(query.text.lower()) if len(stops) == 2 and not query.has("distance") else []
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"aperture", "count", "number"}
    if len(stops) != 2 or len(many) != 2 or rest or min(n for _, n in many) <= 0:
        return None
    if many[1][0] < stops[0].start and patterns.search(r"\b(?:where|when|if|while|and)\b", query.text.lower()[many[0][0] : many[1][0]]):
        many = many[::-1]  # "eight pops where one gives f/4, is that f/11"
    elif not many[0][0] < stops[0].start < many[1][0] < stops[1].start:
        return None
    right = times_the_light(stops[0].value, many[1][1] / many[0][1])
    holds = abs(aperture_difference_stops(stops[1].value, right)) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.aperture(right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Every doubling is one stop: {many[1][1]:g} for {many[0][1]:g} give f/{right:.3g}.")


_MANY = Pattern(r"\b(?P<n>\d+|a|single|one|two|three|four|five|six|eight|nine|ten|twelve|sixteen)\b(?=(?: (?:full|equal|identical|more|of them))* (?:pops?|flash(?:es)?|bursts?|heads?|strobes?)\b| (?:will |would |of them )?(?:give|make|get)s?\b)")


def _counts(said: str) -> list[tuple[int, float]]:
    return [(m.start(), 1.0 if m["n"] == "single" else number(m["n"])) for m in _MANY.finditer(said)]


_EATS = ("loss", "filter_loss")


_IS_SET = Pattern(r"\b(?:set|use|used|using|shoot|shot|open\w*|dial\w*|went|go|am|i'm|be)\b[^.;?!]{0,16}$")
_BARE_THEN = Pattern(r"\b(?:bare|without(?: it)?|naked|nothing on)\b[^.;?!\d]{0,24}$")


def _is_read_through(query: Query, told: list[Fact]) -> bool:
    """"bare it metered f/11, with the tissue f/5.6": the second is what the meter gave with it on, and no setting."""
    if len(told) != 2 or any(_IS_SET.search(query.text[: f.start].lower()) for f in told):
        return False
    things = [f.start for f in query.facts if f.quantity in ("modifier", "camera_filter")]
    return any(told[0].end <= at < told[1].start or told[1].end <= at <= told[1].end + 24 for at in things)


def claim_of_loss_read(query: Query) -> Solution | None:
    """"the cloth took us from f/11 to f/8, so it eats half the light": the stops between two readings are what it takes."""
    told = [f for f in query.facts if f.quantity in ("aperture", "aperture_range")]
    stops = [v for f in told for v in ((f.value, f.other) if f.quantity == "aperture_range" else (f.value,))]
    lost = [f for f in query.facts if f.quantity in (*_EATS, "stops") and f.value]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"aperture", "aperture_range", "modifier", "camera_filter", "stops", *_EATS}
    if len(stops) != 2 or len({f.value for f in lost}) != 1 or rest or not any(f.quantity in ("modifier", "camera_filter") for f in query.facts) or not min(stops) > 0:
        return None
    if lost[-1].start < max(f.start for f in told) and not _is_read_through(query, told) or stops[0] <= stops[1] and not (stops[0] < stops[1] and _BARE_THEN.search(query.text[: told[-1].start].lower())):
        return None
    stops = sorted(stops, reverse=True)
    right = aperture_difference_stops(*stops)
    holds = abs(abs(right) - abs(lost[0].value)) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.stops(-abs(right))), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. From f/{stops[0]:g} to f/{stops[1]:g} it takes {speak_stops(abs(right))}.")


_ADDS = Pattern(r"\b(?:adds?|adding|brightens?|lifts?|raises?|gains?|gives?|makes?)\b[^.?!]{0,24}$")
_ON_ONE_SIDE = Pattern(r"\b(?:both|same side|add\w*|together|where (?:they|the two) (?:meet|overlap|mix|fall|hit|land))\b")
_EQUAL_TO = Pattern(r"\b(?:fill|flash|strobe|key|light)\b[^.?!]{0,24}\b(?:(?:as|so) (?:strong|bright|powerful|much) as|equal to|equals?|level with|match(?:es|ing)?|same as|on a par with) (?:the |my )?(?:daylight|ambient|sun|sky|key|fill|flash|window|room|available light|day)\b")


def claim_of_added_part(query: Query) -> Solution | None:
    """"ambient two stops under the flash adds about a third of a stop where both fall": what the weaker light puts on top of the stronger."""
    told = sorted((f for f in query.facts if f.quantity in ("stops", "relation") and f.value > 0), key=lambda f: f.start)
    said = query.text.lower()
    if len(told) == 1 and told[0].cue != "less" and {f.quantity for f in query.facts if f.origin == "said"} <= {"stops", "relation"} and _EQUAL_TO.search(said[: told[0].start]) and _ON_ONE_SIDE.search(said):
        holds = abs(told[0].value - 1.0) <= TOLERANCE / 2
        return Solution(answers=(Quantity("claim", holds), marks.stops(1.0)), used=tuple(told), topic="claims", lead=f"{'Yes' if holds else 'No'}. Two equal lights add up to one stop more than either, where both fall.")
    if len(told) != 2 or {f.quantity for f in query.facts if f.origin == "said"} - {"stops", "relation", "count"} or not _ON_ONE_SIDE.search(said):
        return None
    weaker, added = told if _ADDS.search(said[: told[1].start]) else told[::-1]
    if not _ADDS.search(said[: added.start]) or _ADDS.search(said[: weaker.start]) or weaker.cue != "less":
        return None
    right = math.log2(1 + 2.0**-weaker.value)
    bound = bound_of(said[: added.start])[0]
    holds = within(bound, right - added.value, _CLOSE + 0.05) if bound else abs(right - added.value) <= _CLOSE + 0.05
    lead = f"{'Yes' if holds else 'No'}. A light {speak_stops(weaker.value)} under another adds {right:.2f} of a stop where both fall."
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, topic="claims", lead=lead)


_SHARE_LEFT = Pattern(
    r"\b(?:(?:only |just )?(?:an? |one )?(?P<share>half|third|quarter|eighth|sixteenth)|1/(?P<part>\d+)|(?P<hundredths>\d+) ?(?:%|percent)) (?:(?:of )?(?:the |my |its )?light(?: is| gets| comes| that)?(?: still)? (?:left|through|gets through|comes through|arrives|remains|out)|(?:of it )?(?:gets|comes|is let|goes) through|(?:of it )?(?:is left|remains|arrives))\b"
)
_LET_BY = Pattern(r"\b(?:lets?|letting|pass(?:es|ing)|transmits?|transmitting)(?: only| just| about)? $")
_SHARES = {"half": 0.5, "third": 1 / 3, "quarter": 0.25, "eighth": 0.125, "sixteenth": 0.0625}


def claim_of_light_left(query: Query) -> Solution | None:
    """"an orange gel that costs a stop behind a cloth that costs a stop: a quarter of the light is left"."""
    said = _SHARE_LEFT.search(query.text.lower())
    lost = [f for f in query.facts if f.quantity in _EATS and f.value and (said is None or not said.start() <= f.start < said.end())]
    within_it = [f for f in query.facts if said is not None and said.start() <= f.start < said.end()]
    rest = {f.quantity for f in query.facts if f.origin == "said" and f not in within_it} - {"modifier", "camera_filter", *_EATS}
    if said is None or not lost or rest or _LET_BY.search(query.text.lower()[: said.start()]) and any(f.quantity in _EATS for f in within_it):
        return None  # "a dome that lets half the light through": what one thing takes, and not what is put up
    share = _SHARES[said["share"]] if said["share"] else 1 / float(said["part"]) if said["part"] and float(said["part"]) else float(said["hundredths"] or 0) / 100
    if share <= 0:
        return None
    left = 2.0 ** -sum(f.value for f in lost)
    bound, _ = bound_of(query.text.lower()[: lost[0].start]) if len(lost) == 1 and lost[0].end <= said.start() else ("", 0)
    if bound:
        right = -math.log2(share)  # "is it over two stops if a fifth comes through"
        holds = within(bound, right - lost[0].value, _CLOSE)
        return Solution(answers=(Quantity("claim", holds), marks.stops(-right)), used=(*lost, *within_it), topic="claims", lead=f"{'Yes' if holds else 'No'}. That share of the light is {speak_stops(right)} lost.")
    holds = abs(math.log2(share / left)) < _CLOSE
    return Solution(answers=(Quantity("claim", holds), marks.stops(math.log2(left))), used=(*lost, *within_it), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {speak_stops(-math.log2(left)).capitalize()} lost leave 1/{1 / left:.3g} of the light.")


_SO = Pattern(r"\b(?:so|makes?|altogether|in all|together|total|both|comes to|adds? up to)\b")


_IN_ALL = Pattern(r"\s*(?:stops? )?(?:in all|altogether|all told|in total|together|for (?:both|the (?:pair|lot))|between (?:them|the two|the three))\b")


def claim_of_losses_summed(query: Query) -> Solution | None:
    """"three quarters of a stop and three quarters, so the box costs a stop and a half": losses add in stops."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd", "stops") and f.value]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"modifier", "camera_filter", "magnification", "loss", "filter_loss", "nd", "stops"} - ({"count"} if all(f.value == 1 for f in query.all("count")) else set())
    if len(lost) < 3 or rest or not any(f.quantity in _EATS for f in lost) or patterns.search(r"\b(?:each|every|apiece|brighter|faster)\b", query.text.lower()):
        return None
    *parts, claimed = sorted(lost, key=lambda f: f.start)
    if claimed.cue != "passed" and not _SO.search(query.text.lower()[parts[-1].end : claimed.start]) and not _IN_ALL.match(query.text.lower(), claimed.end):
        return None
    right = _sum(parts)
    holds = abs(right - abs(claimed.value)) <= _CLOSE
    return Solution(answers=(Quantity("claim", holds), marks.stops(-right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. Losses in stops add: together {speak_stops(right)}.")


def _sum(parts: list[Fact]) -> float:
    return sum(abs(f.value) for f in parts)


def claim_of_factor(query: Query) -> Solution | None:
    """"a times-four filter means opening up four stops": a factor is doublings of the light, and those are the stops."""
    factors = [f for f in query.facts if f.quantity in ("factor", "times")]
    stops = [f for f in query.facts if f.quantity in ("filter_loss", "loss", "stops")]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"factor", "times", "filter_loss", "loss", "stops", "camera_filter"}
    if len(factors) != 1 or len(stops) != 1 or rest or factors[0].value <= 0 or not patterns.search(r"\bfilter|\bfactor", query.text.lower()):
        return None
    right = math.log2(factors[0].value)
    holds = abs(right - abs(stops[0].value)) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. A factor of {factors[0].value:g} is {speak_stops(right)}.")


_SAME_EXPOSURE = Pattern(r"\b(?:same|equals?|equivalent|equal to|as much|(?:i|we) (?:then |now )?(?:want|need)|then (?:want|need|i (?:want|need))|becomes?|calls for)\b")


def _times_for_powers(query: Query) -> Query:
    """"the hall meters 1/15 at f/4; at f/8 I want 1/4": a time, where no flash has a power."""
    if len(query.all("shutter")) != 1 or len(query.all("aperture")) != 2 or patterns.search(r"\b(?:flash|power|strobe|head|pop)\b", query.text.lower()):
        return query
    return query.with_facts(replace(f, quantity="shutter", unit="s", value=f.value) if f.quantity == "power" and f.said.startswith("1/") else f for f in query.facts)


def claim_of_exposures(query: Query) -> Solution | None:
    """"1/60 at f/8 is the same exposure as 1/125 at f/5.6": the light that two settings of the camera let in."""
    query = _times_for_powers(query)
    kinds = {q: sorted((f for f in query.facts if f.quantity == q), key=lambda f: f.start) for q in ("aperture", "shutter", "film_speed")}
    rest = {f.quantity for f in query.facts if f.origin == "said"} - set(kinds)
    stops, times, speeds = kinds.values()
    if len(stops) != 2 or len(times) != 2 or len(speeds) > 2 or rest or not _SAME_EXPOSURE.search(query.text.lower()) or patterns.search(r"\bflash\b", query.text.lower()):
        return None
    more = math.log2(times[1].value / times[0].value) - aperture_difference_stops(stops[1].value, stops[0].value) + (math.log2(speeds[1].value / speeds[0].value) if len(speeds) == 2 else 0.0)
    holds = abs(more) <= TOLERANCE
    said = "the same" if holds else f"{speak_stops(abs(more))} {'more' if more > 0 else 'less'}"
    return Solution(answers=(Quantity("claim", holds), *(() if holds else (marks.stops(more),))), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. The second lets in {said}.")
