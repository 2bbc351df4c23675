"""A pair that was right, and what missed: the words of tests, pops and packs that carry no quantity's name.

"a guide of 80 in feet with 100 film" · "it was 5.6 at a quarter" · "how many times do I fire it?" ·
"what would f/11 need?" · "throw of a 56 foot guide number flash".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from assistant import patterns
from assistant.language.bare import UNIT_NEXT
from assistant.language.steps import Steps
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Tally, tally
from assistant.records import replace
from assistant.scales import is_aperture_mark

_OWN_FILM = Pattern(r"^\s*(?:in (?:feet|foot|metres?|meters?)\s*)?,?\s*\(?(?:with|on|for|at|using)\s*(?:the |a |my |an )?$", re.I)
"""Between a guide number and the film it was found with."""
_WAS = Pattern(r"\b(?:was|were|is|got|gave|gives|used|had|at|shot|said|reads?|now|then|want|need|for|to|use|using|pair:?|and|gets?|only|just|reading|metered|versus|vs|against|of|or)\W*(?:an? |about )?$", re.I)
_DECIMAL_MARKS = frozenset({1.4, 2.8, 5.6, 3.5, 4.5, 6.3})


_ONLY_GETS = Pattern(r"\b(?:only|just|closest|nearest|no (?:nearer|closer))\b[^.?!]{0,24}\b(?:get|go|come|reach|stand|manage|be)\b[^.?!]{0,10}$", re.I)


def _only_so_near(facts: list[Fact], text: str) -> list[Fact]:
    """"f/8 at six feet; tonight I can only get to nine feet": where it stands now, and no limit of what may be asked."""
    bound = [f for f in facts if f.quantity in ("max_distance", "min_distance")]
    pair = sum(f.quantity == "distance" for f in facts) == 1 and sum(f.quantity == "aperture" for f in facts) == 1 and not any(f.quantity == "guide_number" for f in facts)
    if len(bound) != 1 or not pair or not _ONLY_GETS.search(text[: bound[0].start]):
        return facts
    return [replace(f, quantity="distance", cue="") if f is bound[0] else f for f in facts]


_AT_A_PLACE = Pattern(r"\s*(?:at|from|@|for)\s*", re.I)
_SAID_AS_A_PAIR = Pattern(r"\b(?:pair|setting|exposure|base|starting point|test)\b", re.I)
_SOMETHING_ELSE = Pattern(r"\b(?:pops?|flashes|people|rows?|times|frames|exposures|pictures|guests|shots|hits)\b", re.I)


def _mark_of_the_pair(facts: list[Fact], text: str) -> list[Fact]:
    """"eight at eleven feet is my pair": the f-number, for nothing else is told with the distance."""
    bare = [f for f in facts if f.quantity == "number" and not f.bad]
    first = bare[0] if len(bare) == 1 else None
    place = next((f for f in facts if f.quantity == "distance" and first is not None and f.start >= first.end), None)
    if first is None or place is None or not _AT_A_PLACE.fullmatch(text[first.end : place.start]) or {f.quantity for f in facts} - {"number", "distance", "remark", "film_speed", "power"}:
        return facts
    mark = first.other if first.other == first.other else first.value
    if not (is_aperture_mark(mark) and 2 <= mark <= 45) or not _SAID_AS_A_PAIR.search(text) or _SOMETHING_ELSE.search(text):
        return facts
    return [replace(f, quantity="aperture", value=mark, unit="", of="", cue="meter") if f is first else f for f in facts]


_ADDED = Pattern(r"\b(?:add(?:ing|ed)?|with|plus|and|bring(?:ing)? in|switch(?:ing|ed)? on|turn(?:ing|ed)? on|put(?:ting|s)?(?: on| up| in)?|plac(?:e|ed|es|ing)|hang(?:ing)?|hung|stand(?:ing)?|stood|clamp(?:ed|ing)?|us(?:e|ing)|fir(?:e|ed|ing)|fit(?:ted|ting)?|set(?:ting)? up|if i had)\s*$", re.I)
_A_HEAD = Pattern(r"^\s*(?:(?:identical|equal|similar|like|matching|of the same|same|just such an?) )*(?:heads?|flash(?:gun)?|lights?|units?|lamps?|strobes?|guns?|packs?|monolights?|speedlights?)\b", re.I)
_OF_ND = Pattern(r"^\s*(?:of |worth of )(?:an? )?(?:nd|neutral density|grey|gray)\b", re.I)


def _another_head(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"adding a second head": two heads, no time of a second."""
    spoken = fact.quantity in ("shutter", "time", "interval", "duration") and fact.value == 1.0 and patterns.fullmatch(r"\W*(?:an?|the|my|one)? ?second\W*", text[fact.start : fact.end], re.I)
    if not spoken or not _A_HEAD.match(text[fact.end :]):
        return fact
    two = _ADDED.search(text[max(0, fact.start - 40) : fact.start]) and not any(f.quantity == "count" and f.value == 2 for f in facts)
    return replace(fact, quantity="count", value=2.0, unit="flashes", of="", cue="") if two else replace(fact, quantity="remark", of="", cue="")


def _dense(fact: Fact, text: str) -> Fact:
    """"1.5 stops of ND": what the filter takes."""
    return replace(fact, quantity="nd", unit="", of="camera", cue="") if fact.quantity == "stops" and _OF_ND.match(text[fact.end :]) else fact


def _heads(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"3 x 200 Ws heads": three of them."""
    if fact.quantity != "times" or fact.bad or fact.value != int(fact.value) or not 2 <= fact.value <= 24:
        return fact
    after = next((f for f in facts if f.start >= fact.end), None)
    own = after is not None and after.quantity == "energy" and not text[fact.end : after.start].strip() and patterns.match(r"\s*(?:\w+ )?(?:heads?|units?|flash\w*|monolights?|strobes?|packs?)\b", text[after.end :], re.I)
    return replace(fact, quantity="count", unit="flashes") if own else fact


_MISTAKEN = frozenset({"times", "shutter", "time", "interval", "duration", "stops"})


def _mistaken(facts: list[Fact], text: str) -> list[Fact]:
    return [_dense(_another_head(_heads(f, facts, text), facts, text), text) if f.quantity in _MISTAKEN else f for f in facts]


def _film_of_the_guide(facts: list[Fact], text: str) -> list[Fact]:
    """"a guide of 80 in feet with 100 film. Tonight ISO 400": the first film is the number's own."""
    guides = [n for n, f in enumerate(facts) if f.quantity == "guide_number"]
    if len(guides) != 1 or len([f for f in facts if f.quantity == "film_speed"]) != 2:
        return facts
    at, guide = guides[0], facts[guides[0]]
    own = facts[at + 1] if at + 1 < len(facts) else guide
    if guide.at_iso or own.quantity != "film_speed" or own.bad or not _OWN_FILM.match(text[guide.end : own.start]):
        return facts
    whole = replace(guide, at_iso=own.value, end=own.end, said=text[guide.start : own.end])
    return [whole if f is guide else f for f in facts if f is not own]


def _pair_mark(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"last time it was 5.6 at a quarter": one of the numbers that only apertures have."""
    if fact.quantity != "number" or fact.bad or fact.value not in _DECIMAL_MARKS or not is_aperture_mark(fact.value):
        return fact
    if any(f.quantity == "guide_number" for f in facts) or not any(f.quantity == "aperture" for f in facts) or not _WAS.search(text[: fact.start]) or UNIT_NEXT.match(text[fact.end :]):
        return fact
    return replace(fact, quantity="aperture", unit="", cue="")


def _marks_of_pairs(facts: list[Fact], text: str) -> list[Fact]:
    return _mark_of_the_pair([_pair_mark(f, facts, text) for f in facts], text)


STEPS: Steps = (
    (_only_so_near, frozenset({"max_distance", "min_distance"})), (_mistaken, _MISTAKEN),
    (_film_of_the_guide, frozenset({"guide_number"})), (_marks_of_pairs, frozenset({"number"})),
)
"""The films that guide numbers were found with, and f-numbers of a pair said without their f."""


# --- what is asked -----------------------------------------------------------------------------------

_TIMES_FIRED = Pattern(r"\bhow (?:many times|often)\b[^?.]{0,20}\b(?:fire|flash|pop|trip|trigger|set (?:it|them) off|let (?:it|them) off|hit|press|push)\b|\bnumber of pops\b")
_HOW_MANY_LIGHTS = Pattern(r"\bhow many (?:(?:such|of those|of these|of them|more|identical|equal|same|like|full|extra) ?)*(?:packs?|heads?|units?|lamps?|guns?|flashguns?|strobes?|monolights?|flashes|lights|such)\b")
_HOW_MANY_MORE = Pattern(r"\bhow many (?:more|extra|further|additional|other|others)\b")
_FRACTION = Pattern(r"\b(?:what|which) (?:fraction|part|share|proportion)\b|\b(?:fraction|part) of (?:full|the power)\W*\?|\bwhat (?:do|should) i (?:dial|turn it|set it|wind it)\b[^?.]{0,16}(?:to|down|in)?\W*\?")
_NEEDS_ENERGY = Pattern(r"\b(?:what|how much)\b[^?]{0,24}\b(?:needs?|takes?|wants?|costs?|calls? for|ask for)\b|\bwhat (?:for|about|is) f/?\s?\d|\bfor f/?\s?[\d.]+\W*\?")
_THROW_OF = Pattern(r"^\W*(?:the |what(?:'s|s| is) the )?(?:throw|reach|range|distance) (?:of|for|from|with)\b")
_VERSUS = Pattern(r"\b(?:vs?|versus|against|compared (?:to|with))\b")


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The asks with those that a test, a pop or a pack implies."""
    lower, kinds = text.lower(), tally(facts)
    told = set(kinds)
    for rule, of in _ASKED:
        found = rule(lower, kinds, asks) if told.issuperset(of) else None
        if found is not None:
            return [found]
    return list(asks)


_HOW_FAR_OUT = Pattern(r"\bhow far (?:off|out|over|under|adrift|wrong)\b(?! (?:must|should|do|does|can|could|to|from|is (?:the|my) (?:flash|light)|the (?:flash|light)))")


def _missed_by(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"10 ft, GN 80 ft, meter reads f/8: how far off is the guide number?": stops, where the distance is told."""
    told = kinds["guide_number"] == kinds["aperture"] == kinds["distance"] == 1
    return Ask("stops") if told and [a.quantity for a in asks] == ["distance"] and _HOW_FAR_OUT.search(lower) else None


def _fired(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"how many times do I fire it", "how many such packs together": a count, from one reading to another."""
    if kinds["aperture"] == 2 and [a.quantity for a in asks] == ["count"] and not kinds["guide_number"] and _HOW_MANY_MORE.search(lower):
        return replace(asks[0], of="more")
    if "frequency" in kinds or "shutter" in kinds or "time" in kinds or "count" in [a.quantity for a in asks]:
        return None
    if ("aperture" in kinds or "guide_number" in kinds or "stops" in kinds or kinds["distance"] == 2) and _TIMES_FIRED.search(lower):
        return Ask("count", "", "pops")
    many = _HOW_MANY_LIGHTS.search(lower) if kinds["aperture"] == 2 else None
    return Ask("count", "", "flashes", many.start()) if many else None


def _fraction(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"f/16 on full, I want f/4: what fraction?"."""
    pair = kinds["aperture"] == 2 and (kinds["power"] or kinds["power_down"]) and not kinds["guide_number"]
    found = _FRACTION.search(lower) if pair and all(a.quantity in ("aperture", "factor", "stops") for a in asks) else None
    return Ask("power", "", "", found.start()) if found else None


def _energy(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"3000 Ws is right at f/5.6: what would f/11 need?"."""
    told = kinds["energy"] == 1 and kinds["aperture"] == 2 and not kinds["guide_number"] and not kinds["distance"]
    implied = not asks or all(a.quantity == "stops" for a in asks) and "stop" not in lower
    return Ask("energy", "", "J") if told and implied and _NEEDS_ENERGY.search(lower) else None


def _throw(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"throw of a 56 foot guide number flash at f/2.8"."""
    told = kinds["guide_number"] and kinds["aperture"] and not kinds["distance"]
    return Ask("distance") if told and not asks and _THROW_OF.search(lower) else None


_STOPS_FOR = Pattern(r"(?:^|[.,;:?!]|\bwhat|\bwhich|\bgive me|\bthe|\bmy)\s*(?:f-? ?stops?|apertures?) (?:for|at|do|would|will|should)\b")


def _f_stops(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"f-stops for 7, 10 and 14 feet?": settings, no differences; "I've set the aperture for the middle one, how many stops over is the front" asks none."""
    found = _STOPS_FOR.search(lower) if "how many stops" not in lower and kinds["distance"] > 2 and [a.quantity for a in asks] in ([], ["stops"]) else None
    return Ask("aperture", "", "", found.start()) if found else None


_GIVES = Pattern(r"[.,;:]\s*(?:(?:and|so|then|now) )*(?:at |on )?(?:full|half|a? ?quarter|an? eighth|1/\d+)(?: power)?(?: (?:gives?|makes?|is|would be|becomes|reads|gets me))?(?: what)?\W*\?\W*$")


def _gives(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"f/8 at half power there. full power gives?"."""
    pair = kinds["aperture"] == 1 and kinds["power"] == 2 and not kinds["guide_number"]
    return Ask("aperture") if pair and not asks and _GIVES.search(lower) else None


def _compared(lower: str, kinds: Tally, asks: Sequence[Ask]) -> Ask | None:
    """"two 100 Ws heads vs one 200 Ws": energies and nothing else, one against the other."""
    bare = kinds["energy"] == 2 and not set(kinds) - {"energy", "count"}
    return Ask("stops") if bare and not asks and _VERSUS.search(lower) else None


_ASKED: tuple[tuple[Callable[[str, Tally, Sequence[Ask]], Ask | None], tuple[str, ...]], ...] = (
    # each rule, and the kinds of facts of which it needs every one
    (_missed_by, ("guide_number", "aperture", "distance")), (_fired, ()), (_fraction, ("aperture",)), (_energy, ("energy", "aperture")),
    (_throw, ("guide_number", "aperture")), (_f_stops, ("distance",)), (_gives, ("aperture", "power")), (_compared, ("energy",)),
)
