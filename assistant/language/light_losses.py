"""Losses told in words: legs of a bounce, stops beside a modifier or a filter, zoom tables.

Works on facts already read, by what stands before and after each in the text.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence
from operator import attrgetter

from assistant import patterns
from assistant.language import (
    bounce_room,
    bounce_words,
    factor_words,
    film_words,
    guide_words,
    layer_words,
    loss_lists,
    passed_light,
    rows,
    slower_in_t,
    stop_words,
    takings_asked,
    told_twice,
    unsaid_stops,
    zoom_words,
)
from assistant.language.nd_marked import as_density
from assistant.language.number_words import STOPS_SPOKEN
from assistant.language.steps import Table, stepped
from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density
from assistant.query import TAKES_LIGHT, Ask, Fact
from assistant.records import replace

_TAKERS = frozenset({"modifier", "camera_filter", "stops", "loss", "filter_loss", "nd", "relation", "signed", "power_down", "ratio", "magnification", "times", "share"})
_SPEAKS = Pattern(r"a meter|zoom|head|mm\b|bounc|path|paint|ceiling|roof|wall|card|board|panel|reflector|surface|umbrella|convert|extend|multipl|\btc\b|on the front", re.I)
_T_MARK = Pattern(r"\bt[-/]?\d", re.I)
_STOPS_OF_LIGHT = Pattern(r"(?<!f-)(?<!f )(?<!f)(?<!what )(?<!which )(?<!what's the )(?<!what f )(?<!the )stop", re.I)
"""A stop that is counted: "what stop?" asks for an opening."""


def _is_plain(facts: Sequence[Fact], text: str, cues: frozenset[str]) -> bool:
    """Nothing said takes light away, and no word speaks of what could: most questions."""
    for fact in facts:
        if fact.quantity in _TAKERS or fact.quantity == "power" and "power" not in fact.said or fact.quantity == "number" or fact.quantity == "film_speed" and fact.value < 6 or fact.quantity == "factor" and fact.value < 4:
            return False
    told = [f.quantity for f in facts]
    return not (_SPEAKS.may_match(text) or told.count("focal_length") > 1 or told.count("film_speed") > 1 or _T_MARK.search(text) or _STOPS_OF_LIGHT.search(text) or film_words.speaks_of_by(text) or "ceiling" in cues or "bounce" in cues or layer_words.LAYERS.search(text) or stop_words.between_speeds(text))


def settle(facts: Sequence[Fact], text: str, cues: frozenset[str]) -> list[Fact]:
    """The facts with what they say about losses made plain."""
    if _is_plain(facts, text, cues):
        return sorted(facts, key=lambda f: f.start)
    out = _counted_stops(stepped(list(facts), text, _OF_EACH), text, cues)
    out = bounce_words.settle(stepped(out, text, _OF_SEVERAL), text, cues)
    return stepped(out, text, _OF_NEIGHBOURS)


_A_METER = Pattern(r"\W*a meter\W*", re.I)


def _no_tool(facts: list[Fact], text: str) -> list[Fact]:
    """"I have a meter": what is read, and no length."""
    if not _A_METER.may_match(text):
        return facts
    return [f for f in facts if not (_A_METER.fullmatch(f.said) and patterns.search(r"\b(?:on|with|by|without|have|using|got|own|no)\s*$", text[: f.start], re.I))]


_STOPS = frozenset({"stops", "loss", "relation", "filter_loss", "nd", "power_down", "signed"})
_MOST_STOPS = 60.0
"""More than lie between a candle and a thousand suns: a slip of the keys."""


def _within_reason(facts: list[Fact], _: str) -> list[Fact]:
    return [replace(f, bad="no light has so many stops") if f.quantity in _STOPS and not f.bad and abs(f.value) > _MOST_STOPS else f for f in facts]


_PLURAL = Pattern(r"\w*(?:boxes|brollies|umbrellas|domes|dishes|octas)\b", re.I)
_EACH_READS = Pattern(r"\beach\b[^.?!;\d]{0,16}\b(?:reads?|reading|meter\w*)\s*$", re.I)
_A_PAIR_OF = Pattern(r"\b(?:a )?pair of (?:\w+ )?$", re.I)
_NOBODYS = frozenset({"", "camera", "a", "b"})


def _a_head_in_each(facts: list[Fact], text: str) -> list[Fact]:
    """"two softboxes, guide number 40 each": a head is in each, so so many flashes."""
    if not _NOBODYS.issuperset([f.of for f in facts]) or "count" in [f.quantity for f in facts] or not any(f.quantity == "guide_number" or f.quantity == "aperture" and (_EACH_READS.search(text[: f.start]) or patterns.match(r"[\s,]*(?:each|apiece)\b", text[f.end : f.end + 16], re.I)) for f in facts):
        return facts
    for fact in facts:
        after = _PLURAL.match(text[fact.end :].lstrip().split(" ", 1)[-1]) or _PLURAL.match(text[fact.end :].lstrip())
        if fact.quantity == "number" and fact.value in (2, 3, 4) and after:
            return [replace(f, quantity="count", unit="flashes", of="") if f is fact else f for f in facts]
    boxes = next((f for f in facts if f.quantity == "modifier" and _PLURAL.match(f.said) and _A_PAIR_OF.search(text[max(0, f.start - 20) : f.start])), None)
    return facts if boxes is None else [*facts, Fact("count", 2.0, "flashes", start=boxes.start, end=boxes.start, said="pair")]


_MORE_STOPS = Pattern(r"\b(?:(?:one|a) (?:more|further|extra)|another|only one|just the one|only a)(?: full)? stop\b(?! and (?:a |one |two )?(?:half|third|quarter))", re.I)
_SIZE_BEFORE = Pattern(r"^[\s-]*(?:wide|across|square|round|long|big|large|white|silver|deep|reflective|bounced|folding|x|by|\d|cm|m|inch|in|ft|foot|-)*[\s-]*(?:wide|white|silver|deep|reflective|square|folding)?[\s-]*$", re.I)
_HOW_WIDE = Pattern(r"^\s*(?:wide|across|in diameter|square|deep|long)\b", re.I)
_IS_AFTER = Pattern(r"\b(?:is|'s|measures|about|umbrella|brolly|softbox|octa|dish|box)\s*$", re.I)
_OF_ND = Pattern(r"\b(?:nd|neutral density|grey filter)(?: filter)?s?(?: of| at| is| that's| worth|:|,)?\s*(?:a )?$", re.I)
_NOTHING = Pattern(r"^\W*(?:on|it|there|which|and)?\W*(?:that )?(?:costs?|loses?|eats?|takes?)(?: me)? (?:nothing|no light|none|no stops)\b", re.I)
_STOP_WORD = Pattern(r"^\s*(?:full |whole )?stops?\b", re.I)
_TAKES = Pattern(r"\b(?:eat|cost|lose|los|take|steal|rob|swallow|soak|drop|knock|absorb|drink|giv)\w*(?: \w+){0,3}\s*$", re.I)
_STRENGTH: tuple[tuple[str, float], ...] = (
    # gels by colour and depth: full orange 1, half 1/2, quarter 1/4; full blue 1 1/2, half 1 (common practice, one published answer)
    (r"(?:quarter|1/4)[\w\s-]*$", 0.25), (r"(?:half|1/2)[\s-]*(?:blue|ctb)", 1.0), (r"(?:half|1/2)[\w\s-]*$", 0.5), (r"(?:blue|ctb)", 1.5),
)


_FLASH_ONE = Pattern(r"\b(?:flash|light|strobe) ((?:one|a)(?: full| whole)?(?P<part> and a half| and a third| and two thirds)?[ -]stops?(?P<late> and a half| and a third| and two thirds)?)\b(?=(?P<way>\W+(?:(?P<over>over|above|brighter|hotter)|under|below|darker|weaker|dimmer)\b)?)", re.I)


def _flash_one(facts: list[Fact], text: str) -> list[Fact]:
    """"the flash one stop over", "the flash a stop under what's correct": stops, and neither flash number one nor flash A."""
    match = _FLASH_ONE.search(text)
    if match is None or any(f.quantity in ("stops", "relation") and match.start(1) <= f.start < match.end(1) for f in facts):
        return facts
    part = {"": 0.0, " and a half": 0.5, " and a third": 1 / 3, " and two thirds": 2 / 3}[(match["part"] or match["late"] or "").lower()]
    cue = "" if match["way"] is None else "more" if match["over"] else "less"
    kept = [replace(f, of="") if f.of == "a" else f for f in facts if not (match.start(1) <= f.start < match.end(1))]
    return sorted([*kept, Fact("stops", 1.0 + part, cue=cue, start=match.start(1), end=match.end(1), said=match[1])], key=lambda f: f.start)


_BARE_COUNT = Pattern(r"^\s*(?:(?:on top|over it|in front|in it|on it)(?: of (?:it|that))?\s+)?(?:(?:that |which )?(?:takes|taking|costs|costing|eats|eating|loses|losing)\s+(?P<figure>\d+(?:\.\d+)?)|(?:(?:that |which )?(?:takes|taking|costs|costing|eats|eating|loses|losing|robs|robbing|pinches|swallows|knocks off|accounts for|is responsible for)(?: me| us)?(?: of)?|another|is|a further|for)?\s*(?P<many>one and a half|two thirds|two-thirds|a third|one third|half|a half|one|two|another|three)(?! and (?:a |one |two )?(?:half|thirds?|quarter)))(?: of (?:them|these|those))?(?: more| further| again| on top)?\s*(?=[.,;?!]\s|[.,;?!]?$|\b(?:and|go|goes|on|both)\b)(?!\W+(?:no|sorry|wait|rather|i mean|make (?:that|it)|actually|correction)\b)", re.I)
_LOSES_TWO = Pattern(r"\b(?:loses|costs|eats|takes|swallows|robs|pinches|knocks off) (?:me |us )?(?:of )?(?:one|two|three|\d|one and a half|half)\s*(?:[.,;?!]|$)", re.I)


_WORN = frozenset({"modifier", "camera_filter"})


def _one_more(facts: list[Fact], text: str) -> list[Fact]:
    """"the umbrella takes two stops and the orange gel one more": stops again, left unsaid."""
    out = facts
    for taker in [f for f in facts if f.quantity == "modifier"]:
        nothing = _NOTHING.match(text[taker.end :])
        if nothing:
            out = [*out, replace(taker, quantity="loss", value=0.0, start=taker.end, end=taker.end + nothing.end(), said=nothing.group().strip())]
    if not any(f.quantity in ("loss", "stops", "filter_loss") for f in out):
        if not _LOSES_TWO.search(text):
            return out
    for taker in [f for f in facts if f.quantity in _WORN]:
        match = _BARE_COUNT.match(text[taker.end :])
        if match is None:
            continue
        group = "figure" if match["figure"] else "many"
        start, end = taker.end + match.start(group), taker.end + match.end(group)
        if any(f.start < end and f.end > start and f.quantity in ("loss", "stops", "filter_loss", "distance") for f in out):
            continue
        out = [f for f in out if not (start <= f.start < end)]
        out.append(Fact("stops", float(match["figure"]) if match["figure"] else STOPS_SPOKEN[match["many"].lower()], start=start, end=end, said=text[start:end]))
    return sorted(out, key=lambda f: f.start)


def _sizes(facts: list[Fact], text: str) -> list[Fact]:
    """"a 60 cm softbox": the size of the thing, not a distance."""
    worn = sorted(f.start for f in facts if f.quantity == "modifier")

    def is_size(fact: Fact) -> bool:
        if fact.quantity not in ("distance", "focal_length", "max_distance", "min_distance"):
            return False
        following = bisect_left(worn, fact.end)
        after = worn[following] if following < len(worn) else -1
        before = text[max(0, fact.start - 40) : fact.start]
        if after >= 0 and patterns.search(r"\b(?:at|from)\s*$", before, re.I) and not patterns.match(r"\s*(?:across|wide)", text[fact.end :], re.I):
            return False  # "half power at 3 m brolly": where it stands
        if after >= 0 and patterns.match(r"\w+ to\b", text[after:], re.I):
            return False  # "1.7 m cloth to face": a leg of the way
        if patterns.search(r"\b(?:at|from) $", before, re.I):
            return False  # "half power at 3 m brolly goes back": where it stood
        if fact.quantity == "distance" and worn and _HOW_WIDE.match(text[fact.end :]) and _IS_AFTER.search(before):
            return True
        return after >= 0 and bool(_SIZE_BEFORE.match(text[fact.end : after]))

    return [replace(f, quantity="size", of="") if is_size(f) else f for f in facts]


_ENDS = Pattern(r"\s*(?:$|[.,;?!]|and\b|[-–—]+\s)", re.I)
_LENS_PASSES = Pattern(r"\b(?:lens|glass|objective)\b[^.;?!\d]{0,50}\b(?:transmits?|passes|lets (?:in|through)|delivers|is|runs)(?: about| only| really)?\s*$", re.I)
_IS_ND = Pattern(r"\s*(?:nd\b|neutral|grad)", re.I)
_COUNTS = ("factor", "number", "stops")


def _counted_stops(facts: list[Fact], text: str, cues: frozenset[str]) -> list[Fact]:
    """"eats 3 stops at 1/1000": a number with its stops, though "stops at" has a meaning of its own."""
    out: list[Fact] = []
    for fact in facts:
        if fact.quantity not in _COUNTS:
            out.append(fact)
            continue
        if fact.quantity == "factor" and fact.value < 4 and "." in fact.said and _IS_ND.match(text[fact.end :]):
            fact = replace(fact, quantity="nd", value=stops_from_density(fact.value), unit="density", of="camera", cue="")  # "what factor is a 0.9 ND"
        if fact.quantity == "number" and _STOP_WORD.match(text[fact.end :]) and not fact.bad:
            takes = bool(_TAKES.search(text[: fact.start]))
            fact = replace(fact, quantity="loss" if takes else "stops", unit=("hss" if "hss" in cues else "") if takes else "", of="")
        if fact.quantity == "number" and fact.unit == "mixed" and not fact.bad and fact.value <= 5 and _TAKES.search(text[: fact.start]) and (_ENDS.match(text[fact.end :]) or _next_taker(fact, facts, text)):
            fact = replace(fact, quantity="loss", unit="", of="")  # "the gel takes 1 1/3", with or without a mark after it
        if fact.quantity == "stops" and fact.cue == "less" and _LENS_PASSES.search(text[: fact.start]):
            fact = replace(fact, quantity="filter_loss", unit="lens", of="camera", cue="", value=abs(fact.value))  # "this lens transmits half a stop less"
        if fact.quantity == "stops" and _OF_ND.search(text[: fact.start]):
            fact = as_density(replace(fact, quantity="nd", value=abs(fact.value), unit="stops", of="camera", cue=""), text.lower())
        out.append(fact)
    return out


def _next_taker(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """"grid takes 1 1/3 gel takes 2/3": the next thing in the light stands right after it, and takes on its own account."""
    return any(f.quantity in ("modifier", "camera_filter") and 0 < f.start - fact.end <= 14 and _DEPTH_BETWEEN.fullmatch(text[fact.end : f.start]) and _TAKES_ITSELF.match(text[f.end :]) for f in facts)


_DEPTH_BETWEEN = Pattern(r"[a-z\s-]*", re.I)
_TAKES_ITSELF = Pattern(r"[^.;?!\d]{0,16}\b(?:eat|cost|los|take|took|steal|rob|swallow|soak|drop|knock|absorb|drink|is|another|and)\w*\b|[\s:]*[\d½⅓⅔]", re.I)
_BEFORE_THE_LENS = Pattern(r"\s*(?:in front of|before|away from|from|ahead of) (?:it|the lens|my lens|(?:the |my |an? )?\d+ ?mm)\b", re.I)


def _close_focus(facts: list[Fact], text: str) -> list[Fact]:
    """"a 100 mm lens focused at 300 mm": the second is where it is focused."""
    focal = [f for f in facts if f.quantity == "focal_length"]
    if len(focal) < 2:
        return facts
    return [replace(f, quantity="focus_distance", of="camera") if f in focal and (patterns.search(r"\bfocus\w*(?: down)?(?: at| on| to)\s*$", text[: f.start], re.I) or _BEFORE_THE_LENS.match(text[f.end :])) else f for f in facts]


def _not_rows(facts: list[Fact], text: str) -> list[Fact]:
    """"a softbox on the front, face five feet from it": no front row."""
    if not patterns.search(r"\bon the front\b|\bfrom (?:the|its) front(?: of (?:it|the|my|its)\b|$|[,.])|\bfront (?:cloth|panel|edge|baffle|diffuser|surface)\b|\bin front\b(?! (?:row|rank|one|people|person|of (?:me|us|them)))", text, re.I) or patterns.search(r"\brows?\b|\bback (?:one|person|face)|\b(?:nearest|furthest|farthest)\b", text, re.I):
        return facts
    return [replace(f, of="") if f.of == "front" else f for f in facts]


def _said_apart(facts: list[Fact], text: str) -> list[Fact]:
    """"one more stop for the dome": a stop of its own. A ratio beside "life size" is the same thing again."""
    out = facts
    for match in _MORE_STOPS.finditer(text):
        if not any(f.start < match.end() and f.end > match.start() and f.quantity in ("stops", "loss") for f in out):
            out = [f for f in out if not (match.start() <= f.start < match.end())]
            takes = bool(_TAKES.search(text[: match.start()]))
            surface = patterns.search(r"\b(ceiling|wall)\b", text[: match.start()], re.I) if takes else None
            out.append(Fact("loss" if takes else "stops", 1.0, surface[1].lower() if surface else "", start=match.start(), end=match.end(), said=match.group()))
    ratio = "ratio" in [f.quantity for f in out]
    if ratio and any(f.quantity == "magnification" for f in out):
        out = [f for f in out if f.quantity != "ratio"]
    elif ratio and patterns.search(r"\b(?:macro|close.?up|reproduction|magnif\w+|scale|life|effective|bellows)\b", text, re.I) and not patterns.search(r"\b(?:key|fill|lighting|main)\b", text, re.I):
        out = [replace(f, quantity="magnification", other=1.0) if f.quantity == "ratio" else f for f in out]
    return sorted(out, key=attrgetter("start"))


_TESTED = Pattern(r"\b(?:tested|measured|checked|mine|worth|came (?:in|out)|comes (?:in|out)|found)\b[^.;?!]{0,24}$", re.I)
"""A loss that was found, and no power turned down: "tested mine at two stops down"."""


_THROUGH_A = Pattern(r" (?:an?|the|my|this|that|its|some|two|one|all)\b(?! (?:\w+ )?(?:umbrella|brolly))", re.I)
"""After "shoot through" as a verb: no umbrella, but what is named then."""


def _worn(facts: list[Fact], text: str) -> list[Fact]:
    """A gel's own typical loss goes with its colour and depth; "half orange" is no half power."""
    facts = [f for f in facts if not (f.unit == "shoot_through" and f.quantity == "modifier" and _THROUGH_A.match(text, f.end))]
    if any(f.unit == "shoot_through" for f in facts):
        facts = [f for f in facts if not (f.quantity == "modifier" and f.unit == "umbrella")]
        its_own = any(f.quantity == "loss" and f.unit == "shoot_through" for f in facts)
        facts = facts if its_own else [replace(f, unit="shoot_through") if f.quantity == "loss" and f.unit == "umbrella" else f for f in facts]  # "a shoot-through brolly … the brolly swallows two stops": one thing
    worn = [f for f in facts if f.quantity == "modifier"]
    doubled = [one for one, two in zip(worn, worn[1:]) if one.unit in ("diffuser", "tissue", "scrim") and one.unit != two.unit and not text[one.end : two.start].strip(" -")]
    if worn:
        facts = [replace(f, quantity="loss", unit=worn[-1].unit, cue="") if f.quantity == "power_down" and f.start > worn[-1].end and _TESTED.search(text[: f.start]) else f for f in facts]
    named = {one.unit: two.unit for one, two in zip(worn, worn[1:]) if one in doubled}
    facts = [replace(f, unit=named.get(f.unit, f.unit)) if f.quantity == "loss" else f for f in facts if f not in doubled]  # "diffusion dome": one thing
    gels = [f for f in facts if f.quantity == "modifier" and f.unit == "gel"]
    told = [f for f in facts if f.quantity in ("power", "number", "share", "signed") and abs(f.value) <= 1 and not _LOST_BEFORE.search(text[max(0, f.start - 24) : f.start])] if gels else []
    depths = {g.start: f for g in gels for f in told if 0 <= g.start - f.end <= 24 and _DEPTH_OF_GEL.fullmatch(text[f.end : g.start])}
    taken = {f.start for f in depths.values()}
    return [_of_its_depth(f, depths.get(f.start), text) if f.quantity == "modifier" and f.unit == "gel" else f for f in facts if not (f.start in taken and f in depths.values())]


_LOST_BEFORE = Pattern(rf"\b{stop_words.LOSING}\s*$", re.I)
"""Before "1/3 gel": what the thing before it takes, "grid takes 1/3 gel takes 2/3"."""
_DEPTH_OF_GEL = Pattern(r"[\s-]*(?:(?:warm(?:ing)?|amber|straw|salmon|cool(?:ing)?|orange|blue|strength|depth)[\s-]+)?", re.I)
"""Between "half" and the gel."""


def _of_its_depth(gel: Fact, depth: Fact | None, text: str) -> Fact:
    """The gel with its own typical loss, the words for its depth taken along."""
    gel = replace(gel, value=_gel_loss(text[max(0, gel.start - 9) : gel.end]))
    return replace(gel, start=depth.start, said=text[depth.start : gel.end]) if depth is not None else gel


def _gel_loss(said: str) -> float:
    return next((loss for words, loss in _STRENGTH if patterns.search(words, said, re.I)), 0.0)


# --- stops beside what takes them ------------------------------------------------------------------


def _beside(facts: list[Fact], text: str) -> list[Fact]:
    """"a scrim over the lamp, one stop", "polariser on the lens, that's 1.5 stops"."""
    if not any(f.quantity in ("modifier", "camera_filter") for f in facts):
        return facts
    out: list[Fact] = []
    path = any(f.quantity in ("path", "guide_number") for f in facts)  # a wall takes light only where light is sent by way of it
    taker: Fact | None = None
    units: set[str] = set()
    for said in facts:
        fact, gap = said, text[taker.end : said.start] if taker else ""
        counted = fact.quantity in ("stops", "loss") or fact.quantity == "number" and (fact.unit == "mixed" or stop_words.is_part(fact.value))
        after = _for_what(fact, facts, text) if counted and (fact.quantity == "loss" or not fact.cue or fact.cue == "more") else None
        if after is not None:
            quantity = "loss" if after.quantity == "modifier" else "filter_loss"
            out.append(replace(fact, quantity=quantity, value=abs(fact.value), unit=after.unit, of=after.of, cue=""))
            continue
        if fact.quantity == "stops" and taker and text[fact.start - 1 : fact.start] == "(" and text[fact.end : fact.end + 1] == ")" and not _taken(taker, out):
            quantity = "loss" if taker.quantity == "modifier" else "filter_loss"  # "a hankie over it (one stop)"
            fact = replace(fact, quantity=quantity, value=abs(fact.value), unit=taker.unit, of=taker.of, cue="")
        elif (fact.quantity == "stops" and (not fact.cue or fact.unit == "-") or fact.quantity == "signed" and fact.unit == "-") and taker and _is_beside(gap) and not _taken(taker, out):
            quantity = "loss" if taker.quantity == "modifier" else "filter_loss"
            fact = replace(fact, quantity=quantity, value=abs(fact.value), unit=taker.unit, of=taker.of)
        elif fact.quantity == "loss" and taker and (not fact.unit or fact.unit in ("wall", "ceiling") and not path) and _is_beside(gap) and not _taken(taker, out):
            fact = replace(fact, unit=taker.unit, of=taker.of) if taker.quantity == "modifier" else replace(fact, quantity="filter_loss", unit=taker.unit, of="camera")
        elif fact.quantity in ("loss", "filter_loss") and fact.unit and taker and taker.unit != fact.unit and fact.unit in units and _is_beside(gap):
            fact = replace(fact, quantity="loss", unit=taker.unit, of=taker.of) if taker.quantity == "modifier" else replace(fact, quantity="filter_loss", unit=taker.unit, of="camera")
        out.append(fact)
        if said.quantity in ("modifier", "camera_filter") and said.unit != "BARE":
            taker, units = said if taker is None or said.start > taker.start else taker, units | {said.unit}
    return out


def _for_what(fact: Fact, facts: Sequence[Fact], text: str) -> Fact | None:
    """"half a stop for the gel", "lose two stops to the softbox": what stands right after the stops."""
    later = [f for f in facts if f.start >= fact.end and f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    after = min(later, key=lambda f: f.start) if later else None
    joined = after is not None and patterns.fullmatch(r"\W*(?:of light )?(?:lost |goes |gone |more |loss |each |apiece )*(?:for|to|in|by|from|through|with)\s+(?:the|a|my|that|this|its)?\s*(?:\w+ )?", text[fact.end : after.start], re.I)
    return after if joined else None


def _is_beside(gap: str) -> bool:
    return len(gap) < 70 and not patterns.search(r"\d|[?!]|\.\s|under|below|over (?:the )?(?:ambient|daylight)|\bplus a\b", gap)


def _taken(taker: Fact, out: Sequence[Fact]) -> bool:
    return any(f.quantity in ("loss", "filter_loss", "factor", "nd") and f.start > taker.start and f.unit in (taker.unit, "") for f in out)


_OF_EACH = Table((
    (_no_tool, None), (loss_lists.so_many_filters, frozenset({"nd"})),
    (rows.parts_further, frozenset({"power"})),
    (film_words.settle, None),
    *stop_words.STEPS,
    (slower_in_t.settle, slower_in_t.KINDS), (passed_light.settle, passed_light.KINDS),
    (_sizes, frozenset({"modifier"})),
))
_OF_SEVERAL = Table((
    (_close_focus, frozenset({"focal_length"})),
    (layer_words.settle, None),
    (_not_rows, None),
    (_a_head_in_each, frozenset({"guide_number", "aperture"})),
    (_flash_one, None),
    (_one_more, _WORN),
    (_said_apart, None),
    (_worn, frozenset({"modifier"})),
))
_OF_NEIGHBOURS = Table((
    (factor_words.settle, factor_words.KINDS),
    (zoom_words.table, None),
    (_beside, _WORN),
    *unsaid_stops.STEPS,
    (unsaid_stops.without_gel_of_glass, frozenset({"modifier"})),
    (loss_lists.settle, loss_lists.TAKEN),
    (guide_words.with_the_losses_in_it, frozenset({"guide_number"})),
    (_within_reason, _STOPS), (told_twice.stops_again, _STOPS), (told_twice.by_its_family, frozenset({"modifier"})),
))


# --- what is asked ---------------------------------------------------------------------------------


_THEN_STOPS = Pattern(r"\W*(?:nd|neutral density|grey filter)(?: filter)?\W*(?:of|at|is|worth)?\s*(?:a )?", re.I)
"""The name with its strength right after it: "another ND of one stop" tells and does not ask."""


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """"The strength in stops of an ND": a filter's, not a flash's power."""
    kinds = {f.quantity for f in facts}
    asks = list(asks) if kinds.isdisjoint(TAKES_LIGHT) else passed_light.asked(asks, facts, text)
    asks = asks if kinds.isdisjoint(layer_words.TOLD) else layer_words.asked(asks, facts, text)
    asks = film_words.asked(asks if kinds.isdisjoint(takings_asked.KINDS) else takings_asked.asked(asks, facts, text), facts, text)
    asks = zoom_words.asked(asks, facts, text) if "zoom_row" in kinds else asks
    asks = asks if kinds.isdisjoint(bounce_room.KINDS) else bounce_room.asked(asks, text)
    wanted = [a.quantity for a in asks]
    if "nd" in wanted:
        asks = [a for a in asks if a.quantity != "nd" or not any(f.quantity == "nd" and a.start <= f.start and _THEN_STOPS.fullmatch(text[a.start : f.start]) for f in facts)]
    if "power" not in wanted:
        return asks
    through = any(f.quantity in ("nd", "factor", "camera_filter", "filter_loss") for f in facts)
    if through and not any(f.quantity in ("guide_number", "power", "aperture") for f in facts):
        return [replace(a, quantity="factor" if "factor" in text.lower() and "stop" not in text.lower() else "stops") if a.quantity == "power" else a for a in asks]
    return [a for a in asks if a.quantity != "power" or text[a.start : a.start + 3].lower() == "how" or not patterns.search(r"\b(?:same|keep\w*|unchanged)\b(?:(?!\b(?:what|which|how|new)\b|\d,)[\w ,]){0,25}$", text[: a.start], re.I)]
