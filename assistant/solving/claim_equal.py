"""Two whole settings said to give the same light: "half power at 2 m is the same as full power at 2.8 m"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import STRICT, bound_of, within
from assistant.solving.claim_rules import TOLERANCE, WEIGHTS
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

_SAME = Pattern(r"\b(?:(?:is|are|gives?|makes?|does|puts?)\b[^.;?]{0,24}?\b)?(?:(?:just |exactly )?(?:the )?same(?! (?:flash|flashgun|gun|strobe|head|lamp|unit|pack|monolight|bulb|one|film|lens|camera|subject|sitter|wall|thing again)\b)|equals?|equivalent to|equal to|as bright(?:ly)? as|as strong(?:ly)? as|as good as|as much light as|matches)\b")
"""Said of the light; "the same flash" says only which."""
_SETTINGS = ("power", "distance", "aperture", "film_speed", "count")


def claim_of_equals(query: Query) -> Solution | None:
    """Whether two settings with a distance each give the same light; None where the sentence is no such comparison."""
    said = plain(query.text)
    same = _SAME.search(said)
    facts = [f for f in query.facts if f.quantity in _SETTINGS and f.origin == "said" and not f.of]
    if not query.claim or same is None or query.has("guide_number") or any(f.quantity in ("stops", "ratio", "shutter", "loss") for f in query.facts):
        return None
    one, two = [f for f in facts if f.start < same.start()], [f for f in facts if f.start >= same.end()]
    kinds = sorted(f.quantity for f in one)
    if kinds != sorted(f.quantity for f in two) or len(kinds) != len(set(kinds)) or len(kinds) < 2 or "distance" not in kinds:
        return None
    off = _light(two) - _light(one)
    holds = abs(off) <= TOLERANCE
    far = next(f for f in two if f.quantity == "distance")
    right = far.value * 2 ** (off / 2)
    lead = f"{'Yes' if holds else 'No'}. The second gives {f'{speak_stops(abs(off))} {_way(off)} light than' if abs(off) > 0.05 else 'the same light as'} the first."
    more = "" if holds else f" It would be the same at {speak_length(right, far.unit)}."
    return Solution(answers=(Quantity("claim", holds), Quantity("distance", right / LENGTH.get(far.unit, 1.0), far.unit), *((marks.stops(off),) if abs(off) > 0.01 else ())),
                    used=tuple(facts), topic="claims", lead=lead + more)


def claim_of_readings(query: Query) -> Solution | None:
    """"key f/8, fill f/4, so two stops": the stops claimed between the readings of two lights; None for anything else."""
    readings = [f for f in query.facts if f.quantity == "aperture"]
    stops = [f for f in query.facts if f.quantity in ("stops", "relation", "loss")]
    others = {f.quantity for f in query.facts} - {"aperture", "stops", "relation", "loss", "number", "shutter"}
    if not query.claim or others or len({f.value for f in query.all("shutter")}) > 1 or len(readings) != 2 or len(stops) != 1:
        return None
    one, two = readings
    compared = stops[0].of and stops[0].to and one.end <= stops[0].start and stops[0].end <= two.start  # "the rim at f/11 a stop over the key at f/8"
    if not compared and (one.of == two.of or not (one.of and two.of or {one.of, two.of} == {"", "ambient"} and _A_FLASH.search(query.text.lower()))):
        return None
    if _TOGETHER.search(query.text, two.end):
        return _more_together(one, two, stops[0])
    right = aperture_difference_stops(one.value, two.value)
    if not compared and {one.of, two.of} == {"", "ambient"} and stops[0].of == "ambient" and stops[0].cue in ("less", "more") and _SO_MUCH_OFF.match(query.text, stops[0].end) and _ROOM_IS.search(query.text[: stops[0].start]):
        over = right if one.of == "ambient" else -right  # what is read of the room, at the stop that is set
        holds = abs(over - abs(stops[0].value) * (1 if stops[0].cue == "more" else -1)) <= TOLERANCE
        return Solution(answers=(Quantity("claim", holds), marks.stops(over, "ambient")), used=(one, two, stops[0], *query.all("shutter")), topic="claims",
                        lead=f"{'Yes' if holds else 'No'}. It comes out {speak_stops(abs(over))} {'over' if over > 0 else 'under'}.")
    bound, begins = bound_of(plain(query.text)[: stops[0].start])
    said = _by_its_words(stops[0], query.text) if begins >= 0 else stops[0]
    other_way = _other_way(one, two, said, right)
    apart = -abs(right) if other_way else abs(right)
    holds = within(bound, apart - abs(said.value), TOLERANCE) and (apart > 0 or not bound)
    if other_way and not holds and said.quantity == "relation" and said.of:  # how it is with the one that it is said of
        return Solution(answers=(Quantity("claim", False), marks.stops(abs(right) * (-1 if said.cue == "more" else 1), said.of)), used=(one, two, stops[0], *query.all("shutter")), topic="claims",
                        lead=f"No, it is the other way: {speak_stops(abs(right))} {'under' if said.cue == 'more' else 'over'}.")
    return Solution(answers=(Quantity("claim", holds), marks.stops(right, one.of if right > 0 else two.of)), used=(one, two, stops[0], *query.all("shutter")), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. f/{one.value:g} and f/{two.value:g} are {speak_stops(abs(right))} apart.")


_ROOM_IS = Pattern(r"\b(?:sky|ambient(?: light)?|daylight|room|background|hall|church|windows?|scene|sunset)(?: (?:will|would|should|is|are|be|being|comes? out|then|now|still|about|exactly|just))+ $", re.I)
_SO_MUCH_OFF = Pattern(r"(?: too (?:bright|dark)| over(?:exposed)?| under(?:exposed)?)?\s*(?:[.,;?!]|$| (?:then|now|there)\b)", re.I)


def _by_its_words(said: Fact, text: str) -> Fact:
    """"more than a stop under": the way is said after the size, and the bound before it says none."""
    way = "less" if _SO_MUCH_LESS.match(text.lower(), said.end) else "more" if _SO_MUCH_MORE.match(text.lower(), said.end) else said.cue
    return replace(said, cue=way)


_TOGETHER = Pattern(r"\b(?:together|combined|both at once|the two of them|added up|on top of each other|the sum)\b", re.I)


def _more_together(one: Fact, two: Fact, said: Fact) -> Solution | None:
    """"both give f/8, so together that is a stop more": what two lights come to, above the stronger of them."""
    if said.cue == "less":
        return None
    right = math.log2(1.0 + 2.0 ** -abs(aperture_difference_stops(one.value, two.value)))
    holds = abs(said.value - right) <= TOLERANCE
    told = "Two equal lights from one side are one stop more than either" if one.value == two.value else f"Together they are {speak_stops(right)} more than the stronger of them alone"
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=(one, two, said), topic="claims", lead=f"{'Yes' if holds else 'No'}. {told}.")


_A_FLASH = Pattern(r"\b(?:flash|fill|strobe|gun)\b")


def _other_way(one: Fact, two: Fact, said: Fact, right: float) -> bool:
    """"the fill is two stops over the key", and it is under: of a light that is named, or said first, beside the other; `right`: plus where the first is the brighter."""
    if said.cue in ("less", "more") and said.quantity in ("relation", "stops") and one.end <= said.start and said.end <= two.start and abs(right) >= TOLERANCE:
        return (right > 0) is not (said.cue == "more")  # "the fill at f/4, three stops below the sun at f/11": the first, against the second
    names = {one.of or "fill", two.of or "fill"}
    if said.quantity != "relation" or said.cue not in ("less", "more") or {said.of, said.to} != names or abs(right) < TOLERANCE:
        return False
    brighter = right > 0 if said.of == (one.of or "fill") else right < 0
    return brighter is not (said.cue == "more")


_BELOW_FULL = Pattern(r"\b(?:down|off|under|below|less|lower|weaker|from|beneath|short|darker)\b")
_TURNED = Pattern(r"\b(?:too|enough|over-?expos\w*|under-?expos\w*|same|up|more|over|above)\b")


def claim_of_power_in_stops(query: Query) -> Solution | None:
    """"1/16 is four stops down off full": a power told against full, in stops; "1/8 is two stops less than half" against another."""
    powers = {f.value for f in query.facts if f.quantity == "power" and not f.of}
    stops = [f for f in query.facts if f.quantity in ("stops", "power_down", "relation", "loss")]
    others = {f.quantity for f in query.facts} - {"power", "stops", "power_down", "relation", "loss"}
    said = plain(query.text)
    if not query.claim or others or len(stops) != 1 or len(powers) != 2 or min(powers) <= 0:
        return None
    if max(powers) != 1.0:
        return _between_powers(query, stops[0], said)
    if not _BELOW_FULL.search(said[stops[0].start :]) or _TURNED.search(said):
        return None
    right = math.log2(min(powers))
    holds = abs(abs(right) - abs(stops[0].value)) <= TOLERANCE
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. 1/{1 / min(powers):.3g} power is {speak_stops(-right)} under full.")


_SO_MUCH_LESS = Pattern(r"\s*(?:less|under|below|down|weaker|lower|darker|dimmer|off|beneath)\b")
_SO_MUCH_MORE = Pattern(r"\s*(?:more|over|above|up|stronger|higher|brighter)\b")


def _between_powers(query: Query, stops: Fact, said: str) -> Solution | None:
    """"1/8 is two stops less than half": the first power against the second, where the stops stand between them."""
    one, two = sorted((f for f in query.facts if f.quantity == "power"), key=lambda f: f.start)[:2]
    way = next((w for w, words in ((-1, _SO_MUCH_LESS), (1, _SO_MUCH_MORE)) if words.match(said, stops.end) or words.match(said, stops.end - 5)), 0)
    if not one.start < stops.start < two.start or way == 0:
        return None
    right = math.log2(one.value / two.value)
    holds = within(bound_of(said[: stops.start])[0], abs(right) - abs(stops.value), TOLERANCE) and right * way > 0
    return Solution(answers=(Quantity("claim", holds), marks.stops(right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. They are {speak_stops(abs(right))} apart.")


_STRONGER = Pattern(r"\b(?:stronger|darker|heavier|denser|greater|bigger|larger|higher|more)\b[^?]{0,20}\bthan\b")
_WEAKER = Pattern(r"\b(?:weaker|lighter|thinner|smaller|lower|fewer|less)\b[^?]{0,20}\bthan\b")
_EQUALS = Pattern(r"\b(?:same|equals?|equivalent|equal|identical|is|are|another name|=)\b|=")


def claim_of_filters(query: Query) -> Solution | None:
    """"a three-stop ND is the same as ND 0.6": two ways of marking a filter, set side by side."""
    filters = query.all("nd")
    summed = _filters_summed(query, filters)
    if summed is not None:
        return summed
    return _set_side_by_side(query)


_AS_MUCH = Pattern(r"\b(?:as (?:much|many|strong|dark|heavy)\b[^?]{0,24}\bas|same\b[^?]{0,24}\bas|equals?|equivalent|identical)\b")
_IS_CALLED = Pattern(r" (?:(?:filter|glass|one) )?(?:(?:is|has|have|means?|makes?|carr(?:ies|y)|comes? to|would be|must be)(?: |$))?(?:(?:an?|the|exposure|filter|marked|called) ?)*")
"""Between one mark of a filter and another: "a three-stop ND is a factor 8"."""
_HAS_OR_MEANS = Pattern(r"\b(?:has|have|means?|makes?|carr(?:ies|y)|comes? to)\b")
_PASSES = Pattern(r"\b(?:pass(?:es)?|lets?|transmits?|leaves?|brighter|kinder|cheaper)\b")
"""What is let through is the more, the less is taken."""


def _set_side_by_side(query: Query) -> Solution | None:
    """Two things in the way of the light, each with its own mark: "does a factor 4 filter hold back more than a gel of a stop and a half?"."""
    takers = [f for f in query.facts if f.quantity in TAKES_LIGHT and f.value > 0 and not f.bad]
    one_thing = sum(f.quantity in ("modifier", "camera_filter") for f in query.facts) == 1 and {f.quantity for f in takers} == {"loss"} and not all(f.unit for f in takers)
    if one_thing:
        return None  # "a diffuser that passes 45 percent, does it cost more than a stop and a half": what it takes, and what is said of it
    if not query.claim or len(takers) != 2 or {f.quantity for f in query.facts} - {*TAKES_LIGHT, "camera_filter", "modifier", "number"}:
        return None
    said = plain(query.text)
    one, two = sorted(takers, key=lambda f: f.start)
    nds = {f.quantity for f in takers} == {"nd"}
    between = said[one.end : two.start]
    named = _IS_CALLED.fullmatch(between) is not None
    if not nds and (query.has("number") or not (" than " in between or _AS_MUCH.search(between) or named)) or not (_STRONGER.search(said) or _WEAKER.search(said) or (_EQUALS if nds or named else _AS_MUCH).search(said) or named and _HAS_OR_MEANS.search(between)):
        return None
    off = _taken(one) - _taken(two)
    passed = -off if _PASSES.search(said) else off
    holds = passed > STRICT if _STRONGER.search(said) else passed < -STRICT if _WEAKER.search(said) else abs(off) <= TOLERANCE
    lead = f"{'Yes' if holds else 'No'}. The first takes {speak_stops(_taken(one))}, the second {speak_stops(_taken(two))}."
    if named and two.quantity == "factor" and one.quantity != "factor":  # "a three-stop ND has a filter factor of 6": the factor is what is claimed
        return Solution(answers=(Quantity("claim", holds), marks.factor(_taken(one))), used=tuple(f for f in query.facts if f.quantity != "number"), topic="claims", lead=lead)
    return Solution(answers=(Quantity("claim", holds), marks.stops(one.value, "ND") if nds else marks.stops(-_taken(one))), used=tuple(f for f in query.facts if f.quantity != "number"), topic="claims", lead=lead)


def _taken(fact: Fact) -> float:
    """Stops that it takes."""
    return math.log2(fact.value) if fact.quantity == "factor" else fact.value


def _filters_summed(query: Query, filters: list[Fact]) -> Solution | None:
    """"two stops of ND plus one stop of ND is three stops": densities add, factors multiply."""
    said = plain(query.text)
    told = [f for f in query.facts if f.quantity in ("stops", "loss", "filter_loss")]
    parts, last = (filters, told) if told else (filters[:2], filters[2:])
    if not query.claim or len(parts) < 2 or len(last) != 1 or {f.quantity for f in query.facts} - {"nd", "stops", "loss", "filter_loss", "camera_filter", "number"}:
        return None
    if not (_STACKED.search(said[parts[0].start : parts[-1].end]) or parts[0].end == parts[-1].end) or last[0].start < parts[-1].start:
        return None
    right = sum(f.value for f in parts)
    holds = within(bound_of(said[: last[0].start])[0], right - abs(last[0].value), TOLERANCE)
    return Solution(answers=(Quantity("claim", holds), marks.stops(right, "ND")), used=(*parts, last[0]), topic="claims", lead=f"{'Yes' if holds else 'No'}. Stops of filters add: together they take {speak_stops(right)}.")


_STACKED = Pattern(r"\b(?:plus|and|with|on|over|behind|added|stacked|together)\b|[+&]")


def _way(off: float) -> str:
    return "more" if off > 0 else "less"


def _light(facts: list[Fact]) -> float:
    """Stops of light on the film, from an arbitrary start."""
    return sum(WEIGHTS["flash"][f.quantity] * math.log2(f.value) for f in facts if f.value > 0)
