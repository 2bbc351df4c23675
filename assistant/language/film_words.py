"""What is asked of a film in few words: the rating to set, the push it needs, half its box speed."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language import bracket_words
from assistant.language.number_words import STOPS_SPOKEN
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.physics.film import OLD_SCALES, iso_from_old_scale
from assistant.query import BY_RULE, Ask, Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark, iso_from_din

_PART_OF_SPEED = Pattern(r"^\s*(?:of )?(?:(?:its|the|my|that|box|rated|film|nominal|normal) )*(?:box )?(?:speed|rating)\b|^\s*(?:of )?(?:its|my|that|box|rated) (?:iso|asa)\b", re.I)
_RATE = Pattern(r"\b(?:what|which) index\b|\b(?:rate|rating|ei|exposure index)\s*(?:it|this|that)?(?: at)?\W*(?:\?|$)|\b(?:what|which|how|where)\b[^?.]{0,16}\b(?:set|dial|put|rate|enter)\b[^?.]{0,14}\b(?:meter|dial|it|film|iso|speed)\b|\bmeter (?:it )?at\W*(?:what\W*)?(?:\?|$)|\bwhat\b[^?.]{0,14}\bon (?:the |my )?(?:light ?)?meter\b"
                r"|\bwhat\b[^?.]{0,24}\b(?:goes|belongs|go|put|set|dial)\b[^?.]{0,12}\b(?:dial|meter|camera)\b|\b(?:dial|meter)\b[^?.,]{0,16}\b(?:to|at|on|say|read|be) what\b|\bwhat\b[^?.]{0,20}\bdial (?:say|read|go|be|to)\b|\b(?:my|the|so|real|really) (?:ei|exposure index)\b[^?.]{0,14}\bwhat\b|\bwhat(?:'s| is|s)? [^?.]{0,16}\b(?:ei|exposure index)\b"
                r"|\b(?:is|gets|to be|are|then|must be|(?:should|must|can|could|ought|shall) (?:it|this|that|they|the (?:film|roll|stock)) (?:to )?(?:now )?be) (?:rated|metered|shot|exposed)(?: at| as| for)?\W*$|\b(?:meter|dial|camera|iso|film speed) (?:setting|speed|number|to what)\b\W*$|(?:^|[.,:;?!-]\s*)(?:(?:so|and|then|on) )*(?:the |my )?(?:dial|meter|rating|iso|asa|speed)\W*\?\W*$", re.I)
_PUSH = Pattern(r"\b(?:what|how much|which)(?: of a| sort of| kind of)? (?:a )?(?:push|pull)\b|\bhow (?:much|far) (?:do|must|should|to|shall)[^?.]{0,14}(?:push|pull)\b", re.I)


_HOW_MANY_PARTS = Pattern(r"\bhow many (?:thirds?|third[- ]stops|halves|half[- ]stops)(?: of a stop)?\W*$", re.I)
_HOW_MANY = Pattern(r"\bhow many (?:thirds?|third[- ]stops|halves|half[- ]stops)\b|\bstops? differen\w+|\bdifference in stops?\b", re.I)


def speed_on_scale(number: Fact, scale: str) -> Fact | None:
    """A bare number as a speed on an old scale: 18 on that of DIN is ISO 50."""
    if scale == "DIN":
        ok = 1 <= number.value <= 45 and number.value == int(number.value)
        return replace(number, quantity="film_speed", value=float(iso_from_din(number.value)), unit="DIN", of="") if ok else None
    return replace(number, quantity="film_speed", value=iso_from_old_scale(scale, number.value), other=number.value, unit=scale, of="") if number.value > 0 else None


TOLD = "told"
"""The cue of a speed on a scale that the person told."""
_EQUALS = Pattern(r"\s*(?:gost )?(?:equals?|equalled|is|was|=|means|meant|makes|stands for|stood for|corresponds to|corresponded to|goes with|matches|for|became|becomes)(?: about| roughly| the same as| like)?\s*(?:iso |asa )?", re.I)


def _scale_told(facts: list[Fact], text: str) -> list[Fact]:
    """"GOST 180, where 90 equals ISO 100": the scale as the person tells it."""
    mine = [f for f in facts if f.quantity == "film_speed" and f.unit in OLD_SCALES]
    if not mine:
        return facts
    pair = next(((a, b) for a, b in zip(facts, facts[1:]) if a.quantity in ("number", "film_speed") and b.quantity in ("film_speed", "number") and b.unit not in OLD_SCALES and a.value > 0 and _EQUALS.fullmatch(text[a.end : b.start])), None)
    if not 1 <= len(mine) <= 2 or pair is None or len(facts) > len(mine) + 2:
        return facts
    own = [f for f in mine if f is not pair[0]]
    rate = pair[1].value / (pair[0].other if pair[0].unit in OLD_SCALES else pair[0].value)
    if len(own) != 1 or not 0.8 <= rate <= 1.6:
        return facts
    return [replace(f, value=f.other * rate, cue=TOLD) if f is own[0] else replace(f, quantity="remark", unit="", of="") if f in pair else f for f in facts]


_BEYOND_IT = Pattern(r"\b(?:above|over|beyond|past|after|longer than|more than|slower than|exceeding|up to|until|till|below|under|than|from)\s*(?:about |a |the )*$", re.I)
_ON_FROM = Pattern(r"\s*(?:on(?:wards?)?|up(?:wards?)?|and (?:up|over|longer|beyond)|or (?:more|longer))\b", re.I)


def threshold(facts: list[Fact], text: str) -> list[Fact]:
    """"an exponent of 1.3 above one second; metered 12": the second above which it holds was not metered."""
    times = [f for f in facts if f.quantity == "shutter"]
    if len(times) < 2 or not any(f.quantity == "exponent" for f in facts):
        return facts
    holds = [f for f in times if f.value <= 1 and (_BEYOND_IT.search(text[: f.start]) or _ON_FROM.match(text[f.end :]))]
    return [replace(f, quantity="remark", unit="") if f in holds and len(holds) < len(times) else f for f in facts]


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """"rated at half its box speed": a stop more exposure, and no power of a flash."""
    kinds = [f.quantity for f in facts]
    kept = _without_parts_asked(facts, text) if "stops" in kinds else facts
    found = kept if _FIGURES.isdisjoint(kinds) else [_figure(f, facts, kept, text) if f.quantity in _FIGURES else f for f in kept]
    of_film = not _SPEEDS.isdisjoint([f.quantity for f in found])
    if of_film:
        found = _scale_told(_pushed_apart(_by_so_much(found, text), text), text)
    found = threshold(found, text)
    return bracket_words.settle(_right_way_up(found, text) if of_film else found, text)


_DEGREES_OR_FRAMES = frozenset({12.0, 15.0, 18.0, 20.0, 21.0, 24.0, 27.0, 30.0, 33.0, 36.0, 39.0})
"""Figures that stand on a film's box as degrees of its speed or as its number of frames, and as no arithmetic speed."""
_NAMES_SPEED = Pattern(r"\b(?:iso|asa|din|ei|speed|rated|rate|gost|gn|guide|flash|gun|strobe|frames?|exposures?|shots?)\b", re.I)
_ON_FILM_BOX = Pattern(r"\b(?:film|roll|cassette|cartridge|canister)\b", re.I)


def as_marked(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"film says 27 on the box": degrees or frames, so the number is taken for neither."""
    one = facts[0] if len(facts) == 1 else None
    if one is None or one.quantity not in ("film_speed", "guide_number") or one.value not in _DEGREES_OR_FRAMES or one.unit or one.bad:
        return list(facts)
    told = _ON_FILM_BOX.search(text) is not None and _NAMES_SPEED.search(text) is None
    return [replace(one, quantity="number", of="")] if told else list(facts)


_FIGURES = frozenset({"number", "film_speed", "stops", "power"})


_TIMES = Pattern(r"\s*(?:times|x)\b", re.I)


def _figure(fact: Fact, facts: Sequence[Fact], kept: Sequence[Fact], text: str) -> Fact:
    if fact.quantity == "power":
        return _part(fact, kept, text)
    if fact.quantity == "film_speed" and fact.value < 12 and not fact.unit and _TIMES.match(text, fact.end):
        return replace(fact, quantity="factor", of="")  # "the film wants 1.5 times as much"
    return _exponent(_slipped(_compared(fact, facts, text), facts, text) if fact.quantity == "number" else fact, text)


def _without_parts_asked(facts: list[Fact], text: str) -> list[Fact]:
    """"how many thirds" from one film or opening to another asks for stops and tells none."""
    if not any(f.quantity == "stops" and _HOW_MANY_PARTS.search(text[: f.end]) for f in facts):
        return facts
    pairs = sum(f.quantity in ("film_speed", "rated") for f in facts) == 2 or sum(f.quantity == "aperture" for f in facts) == 2
    return [f for f in facts if not (pairs and f.quantity == "stops" and _HOW_MANY_PARTS.search(text[: f.end]))]


_STALE = Pattern(r"\b(?:expir\w*|out ?dated|out of date|best before|use by|develop before|process before|dated?|sell by|(?:per|a|each|every) decade|(?:every|per) (?:ten|10) years)\b", re.I)


_EACH = Pattern(r"\b(?:every|per|each|a)\s*$", re.I)
_NOW_BEFORE = Pattern(r"\b(?:now|today|this year|presently|it'?s|it is|we'?re in|(?:(?:shot|shoot\w*|us(?:e|ed|ing)|expos\w+|load\w*|met?er\w*) (?:it |them |this |that |the \w+ )?|only )(?:in|now))(?: already| now)?\W{1,2}$", re.I)
_NOW_AFTER = Pattern(r"\s*(?:now|today|this year|already|is (?:now|today|this year)|as (?:we speak|of now))\b", re.I)


def years_between(facts: list[Fact], text: str) -> list[Fact]:
    """"expired 2006, it's 2026 now": twenty years."""
    dated = [f for f in facts if f.quantity in ("number", "remark", "film_speed") and not f.unit and 1930 <= f.value <= 2060 and f.value == int(f.value)]
    if len(dated) != 2 or dated[0].value == dated[1].value or any(f.quantity == "years" and not _EACH.search(text[: f.start]) for f in facts) or not _STALE.search(text):
        return facts
    made, now = sorted(dated, key=lambda f: f.value)
    if not (_NOW_BEFORE.search(text[max(0, now.start - 40) : now.start]) or _NOW_AFTER.match(text, now.end)):
        return facts
    old = replace(made, quantity="years", value=now.value - made.value, unit="years", of="film", start=min(made.start, now.start), end=max(made.end, now.end))
    return [old if f is made else f for f in facts if f is not now]


_CARTON = Pattern(r"(?:(?:the|its|my|no|a|old|film) )*(?:box|carton)", re.I)
_COUNTS_BY = Pattern(r"\b(?:every|per|each)(?: (?:full|whole|further))?\s*$", re.I)


def years_of_a_rule(facts: list[Fact], text: str) -> list[Fact]:
    """"a stop for every ten years": what a rule counts by, and no age; and the box of an old film hangs in no light."""
    facts = [replace(f, quantity="remark", unit="") if f.quantity == "modifier" and _CARTON.fullmatch(f.said.strip()) else f for f in facts]
    return [replace(f, cue=BY_RULE) if f.quantity == "years" and f.cue != BY_RULE and _COUNTS_BY.search(text[: f.start]) else f for f in facts]


_NO = Pattern(r"\b(?:no|sorry|wait|i mean|rather|correction|oops|upside down|wrong way|hang on|hold on)\b", re.I)


def _right_way_up(facts: list[Fact], text: str) -> list[Fact]:
    """"this film is twenty one, no, I have that upside down, twenty four DIN": the one is taken back for the other."""
    din = [f for f in facts if f.quantity == "film_speed" and f.unit == "DIN"]
    if not din:
        return facts
    old = [f for f in facts if f.quantity in ("film_speed", "number") and not f.unit and 9 <= f.value <= 45 and din and f.end <= din[-1].start and _NO.search(text[f.end : din[-1].start])]
    return [replace(f, quantity="remark", of="") if f is old[0] else f for f in facts] if len(din) == len(old) == 1 else facts


_IN_DIN = Pattern(r"\s*(?:degrees?|°)?\s*(?:on the |of )?din\b", re.I)


def in_degrees(facts: list[Fact], text: str) -> list[Fact]:
    """"a film of 21 degrees DIN": ISO 100, and no ISO 21."""
    return [_by_din(f, text) if f.quantity == "film_speed" and not f.unit and 1 <= f.value <= 45 and f.value == int(f.value) else f for f in facts]


def _by_din(speed: Fact, text: str) -> Fact:
    unit = _IN_DIN.match(text, speed.end)
    return replace(speed, value=float(iso_from_din(speed.value)), other=speed.value, unit="DIN", end=unit.end(), said=text[speed.start : unit.end()]) if unit is not None else speed


_PUSHED = Pattern(r"\b(?P<way>push|pull)(?:ing|ed|s)?\b[^.?!;]{0,60}$", re.I)
_OF_FILM = frozenset({"film_speed", "rated", "stops", "number", "place", "remark"})


def _pushed_apart(facts: list[Fact], text: str) -> list[Fact]:
    """"pushing the 400 tonight, one and two thirds stops": the push, though words stand between."""
    stops = [f for f in facts if f.quantity == "stops" and not f.cue and not f.unit]
    way = _PUSHED.search(text[: stops[0].start]) if len(stops) == 1 else None
    if way is None or not {f.quantity for f in facts} <= _OF_FILM or not any(f.quantity == "film_speed" for f in facts):
        return facts
    return [replace(f, quantity="push", value=abs(f.value) * (1 if way["way"].lower() == "push" else -1), of="film") if f is stops[0] else f for f in facts]


_BY_SO_MUCH = Pattern(r"\b(?P<way>push|pull|over-?expos|under-?expos)\w*\b[^.?!;]{0,30}?\bby (?:about |just )?(?P<many>one and a half|one and a third|one and two thirds|two thirds|a third|one third|a half|half|one|two|three)\b(?!(?: and\b|(?: of)?(?: a)? stops?\b))", re.I)


def speaks_of_by(text: str) -> bool:
    """Whether a film is pushed or overexposed "by one", with the stops left unsaid."""
    return _BY_SO_MUCH.search(text) is not None


def _by_so_much(facts: list[Fact], text: str) -> list[Fact]:
    """"pulling my film by one", "overexpose by a third": stops, where a film speed is told and nothing of a flash."""
    found = _BY_SO_MUCH.search(text)
    if found is None:
        return facts
    kinds = {f.quantity for f in facts}
    if not kinds & {"film_speed", "rated"} or kinds & {"guide_number", "distance", "push", "stops", "relation"}:
        return facts
    start, end = found.span("many")
    value, way = STOPS_SPOKEN[found["many"].lower()], found["way"].lower()
    made = Fact("push", value * (-1 if way == "pull" else 1), of="film", start=start, end=end, said=found["many"]) if way in ("push", "pull") else \
        Fact("stops", value, cue="more" if way.startswith("over") else "less", start=start, end=end, said=found["many"])
    return sorted([*(f for f in facts if not (f.start < end and f.end > start)), made], key=lambda f: f.start)


_QUICKER = Pattern(r"\bhow many stops (?:quicker|faster|slower)\b|\bstops? (?:of )?(?:a )?(?:push|pull)\b|\bwhat push\b", re.I)


def _compared(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"how many stops quicker is 3200 than 400", "shooting 125 at 500, how many stops of push": two films."""
    if fact.quantity != "number" or fact.bad or not is_film_speed_mark(fact.value) or fact.value < 12 or not _QUICKER.search(text):
        return fact
    others = [f for f in facts if f is not fact]
    alike = len(others) == 1 and (others[0].quantity == "film_speed" or others[0].quantity == "number" and is_film_speed_mark(others[0].value))
    return replace(fact, quantity="film_speed", of="", unit="") if alike else fact


_METERED_FOR = Pattern(r"\b(?:sums?|maths?|meter\w*|dial\w*|worked|calculat\w+|reckoned|figured|set|rat(?:ed|ing)|thought|expos\w+|shot)\b", re.I)
_SLIPPED = Pattern(r"\b(?:thought|believed|left|still|forgot\w*|mistake\w*|accident\w*|wrong\w*|really|actually|turned out|instead of|in fact|but the (?:roll|film)|but (?:i'?d|i had|it was)|supposed to be|should(?:'ve| have))\b", re.I)
_SUMS_FOR = Pattern(r"\b(?:sums?|calculations?|flash|maths?|figures|numbers|exposures?|readings?|meter\w*|dial\w*|worked|calculated|computed|reckoned|set|card|table|scale)\b[^.?!;\d]{0,24}\b(?:for|at|on|to|as)(?: (?:iso|asa|a|the))? $", re.I)
"""Right before a number: what the exposure was worked out for."""
_IS_SET = Pattern(r"[\s,]*(?:is |was )?(?:what|where) (?:\w+ ){0,3}?(?:meter|dial|set|sums?)\w*", re.I)
_HELD_FILM = Pattern(r"\b(?:film|roll|stock|sheets?|holder|camera|loaded|back)\b[^.?!;\d]{0,20}$", re.I)
_STOPS_OUT = Pattern(r"\bhow (?:many stops|far|much)\b[^?.]{0,40}\b(?:over|under|off|out|wrong|over-?exposed|under-?exposed)\b|\bstops? (?:over|under|off|out)\b", re.I)


def _slipped(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"400 film with the meter left at 100, how many stops over": the number is a speed as well."""
    if fact.quantity != "number" or fact.bad or not is_film_speed_mark(fact.value) or fact.value < 12 or sum(f.quantity == "film_speed" for f in facts) != 1:
        return fact
    held = any(f.quantity == "film_speed" and _METERED_FOR.search(text[: f.start]) for f in facts) and _HELD_FILM.search(text[: fact.start])
    alone = held and _STOPS_OUT.search(text) or all(f.quantity in ("film_speed", "number", "place", "remark", "format", "signed") for f in facts) and _STOPS_OUT.search(text) and (_SLIPPED.search(text) and _METERED_FOR.search(text) or _SUMS_FOR.search(text[: fact.start]) or _IS_SET.match(text[fact.end :]))
    return replace(fact, quantity="film_speed", of="", unit="") if alone else fact


_EXPONENT_BEFORE = Pattern(r"\b(?:exponent|schwarzschild|reciprocity)\b[^.?!\d]{0,40}$", re.I)


def _exponent(fact: Fact, text: str) -> Fact:
    """"the reciprocity exponent for my film is 1.3": no film has such a speed."""
    small = fact.quantity in ("film_speed", "number", "stops") and 0.5 < fact.value < 3 and fact.value != int(fact.value)
    return replace(fact, quantity="exponent", of="film", unit="", bad="") if small and _EXPONENT_BEFORE.search(text[: fact.start]) else fact


def _part(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    halves = {0.5: 1.0, 0.25: 2.0}
    size = next((stops for value, stops in halves.items() if abs(fact.value - value) < 0.005), 0.0)
    if fact.quantity != "power" or "power" in fact.said.lower() or not size or not _PART_OF_SPEED.match(text[fact.end :]):
        return fact
    speed = next((f for f in facts if f.quantity in ("film_speed", "rated")), None)
    if speed is None:
        return fact
    if any(f.quantity == "guide_number" for f in facts):
        return replace(fact, quantity="rated", value=speed.value * fact.value, unit="", of="film", cue="", to="")
    return replace(fact, quantity="stops", value=size, unit="", of="", cue="more", to="")


_BY_WHAT = Pattern(r"\b(?:over|under|out|off)(?:-?exposed)? by\W*(?:how much|what|how many(?: stops)?)?\W*$", re.I)
_TELL_THE_LAB = Pattern(r"\b(?:what|which) (?:development|processing|dev)\b|\bhow (?:do|should|must|shall) (?:i|we|they|the lab) (?:develop|process|soup) it\b|\bwhat\b[^?.]{0,20}\b(?:tell|ask|say to|order from|write for)\b[^?.]{0,12}\blab\b|\blab\b[^?.]{0,24}\bwhat\b", re.I)
_DIN_ASKED = Pattern(r"\b(?:how many|how much|what|which)(?: is (?:it|that))?(?: in)? (?:degrees )?(?:din|gost)\b", re.I)
_FAST_FILM = Phrasings(r"\bthe (?:slowest|least sensitive|lowest) (?:film|stock|emulsion|iso|asa)\b|\b(?:what|which) film (?:lets|allows|permits|gives|do|should|must|would|will|instead|is needed|speed)\b|\bfilm (?:speed )?(?:needed|required|wanted)\b|\bfilm instead\b|\bhow (?:fast|sensitive|quick) (?:an? |the |must |should |does |need |has )*(?:film|stock|emulsion|roll|iso)\b|\b(?:film|roll|stock|emulsion)\b[^?.,]{0,16}\bhow (?:fast|sensitive|quick)\b", re.I)
_FASTER = Pattern(r"\bstops? (?:faster|slower|more sensitive|less sensitive) than\b", re.I)


_TESTS_SLOW = Pattern(r"\b(?:film|roll|stock|emulsion)\b[^.?!;]{0,50}\bstops? (?:too )?(?:slow|fast)(?:er)?\b", re.I)
_INDEX = Pattern(r"\b(?:what|which) (?:exposure )?index\b", re.I)
_SPEEDS = frozenset({"film_speed", "rated"})


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The rating or the push, where nothing else is asked."""
    kinds = {f.quantity for f in facts}
    asks = asks or bracket_words.asked(facts, text)
    if _FAST_FILM.found_in(text) and (kinds & {"guide_number", "aperture", "distance", "exposure_value"} or kinds == {"film_speed", "shutter"} or {"film_speed", "stops"} <= kinds):
        return [Ask("film_speed", "", "")]
    if _INDEX.search(text) and not kinds & {"guide_number", "distance", "aperture", "shutter", "exposure_value"}:
        asks = [Ask("film_speed", "", "") if a.quantity == "aperture" else a for a in asks]
    if kinds.isdisjoint(_SPEEDS):
        return [Ask("film_speed", "", "")] if not asks and ({"years"} <= kinds <= {"years", "stops", "remark"} or {"stops"} <= kinds <= {"stops", "remark"} and _TESTS_SLOW.search(text)) and _RATE.search(text) else list(asks)
    if _DIN_ASKED.search(text) and "film_speed" in kinds and kinds <= {"film_speed", "push", "stops", "signed", "relation"} and (kinds == {"film_speed"} or all(a.quantity == "count" for a in asks)):
        return [Ask("film_speed", "", "")]
    two = len([f for f in facts if f.quantity in _SPEEDS]) == 2
    if two and len(facts) == 3 and "stops" in kinds and _FASTER.search(text):
        return [Ask("stops", "", "")]
    if two and not kinds & {"guide_number", "distance", "aperture"} and _HOW_MANY.search(text):
        return [Ask("stops", "", "")]
    if two and [a.quantity for a in asks] == ["distance"] and kinds <= {"film_speed", "rated", "place", "remark"} and _STOPS_OUT.search(text):
        return [Ask("stops", "", "", asks[0].start)]  # "how far out am I" of a film
    if asks or "film_speed" not in kinds or kinds & {"guide_number", "distance", "aperture", "shutter", "exposure_value", "power"}:
        return list(asks)
    if two and len(kinds) <= 2 and _BY_WHAT.search(text) or {"film_speed", "rated"} >= kinds and len(facts) == 2 and _TELL_THE_LAB.search(text) or "rated" in kinds and (_PUSH.search(text) or _TELL_THE_LAB.search(text)):
        return [Ask("stops", "", "")]
    changed = kinds & {"years", "push", "stops", "relation", "signed"}
    return [Ask("film_speed", "", "")] if changed and _RATE.search(text) else []
