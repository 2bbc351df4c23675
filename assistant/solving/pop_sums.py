"""Pops that are not all alike on one frame, two numbers of pops held against each other, and equal exposures that add up to a right one.

The light of the pops adds (a pop's light goes with its power): so many at full power and so many at a
quarter are worth the sum of number times power, and an f-number grows with the square root of it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import times_the_light
from assistant.query import Ask, Fact, Query
from assistant.records import record
from assistant.scales import aperture_difference_stops
from assistant.solving import marks
from assistant.solving.pop_facts import POP_WORDS, popped
from assistant.solving.solution import Solution


def solve(query: Query) -> Solution | None:
    """What is summed or compared of pops; None for pops that are all alike and told once."""
    if len(query.asks) != 1 or query.claim:
        return None
    ask = query.asks[0]
    for rule in _RULES.get(ask.quantity, ()):
        found = rule(query, ask)
        if found is not None:
            return found
    return None


# --- pops of several powers -------------------------------------------------------------------------


@record
class Group:
    """So many pops at one power, and the facts that tell it."""

    many: float
    power: float
    facts: tuple[Fact, ...]


_AT = Pattern(r"(?: (?:more|other|others|of them|pops?|flashes|bursts?|of those|each|further|again))*,?(?: (?:fired|given|made|set|done|were|was|are|is))?(?: (?:at|on|with|of|only))*(?: an?)? ?", re.I)
"""Between a number of pops and their power: "two pops at full power and four at a quarter"."""
_ONCE = Pattern(r"\b(?P<often>once|twice|thrice)\b[^.,;?!\d]{0,24}\b(?:at|on|with) $|\b(?P<one>one)(?: of them| pop| more)? (?:at|on|with) $", re.I)
_OFTEN = {"once": 1.0, "twice": 2.0, "thrice": 3.0}
_AROUND = frozenset({"count", "number", "power", "aperture", "remark", "frames", "place", "film_speed"})


def _groups(query: Query) -> list[Group]:
    """The pops told with their power, in the order said."""
    said = sorted((f for f in query.facts if f.origin == "said"), key=lambda f: f.start)
    powers, out, taken = [f for f in said if f.quantity == "power"], list[Group](), set[int]()
    for f in said:
        if not (f.quantity == "count" and f.unit in POP_WORDS or f.quantity == "number" and not f.bad and f.value == int(f.value) and 1 <= f.value <= 200):
            continue
        own = next((p for p in powers if f.start <= p.start < f.end or p.start >= f.end and _AT.fullmatch(query.text, f.end, p.start)), None)
        if own is not None and own.start not in taken:
            out.append(Group(f.value, own.value, (f, own)))
            taken.add(own.start)
        elif own is None and f.quantity == "count" and re.search(r"\bfull\b", f.said, re.I):
            out.append(Group(f.value, 1.0, (f,)))
    for p in powers:
        often = _ONCE.search(query.text[max(0, p.start - 44) : p.start]) if p.start not in taken else None
        if often is not None:
            out.append(Group(_OFTEN[(often["often"] or "once").lower()], p.value, (p,)))
    return sorted(out, key=lambda g: g.facts[0].start)


_AGAINST = Pattern(r"\b(?:compared? (?:with|to)|against|than|beside|versus|vs\.?|under|over|below|above|to|of) (?:just |only )?(?:an? |the )?(?:light of )?(?:an? |the )?(?:single |lone )?$", re.I)
_WORTH = Pattern(r"(?: (?:pop|flash|burst|one))?(?: (?:alone|by itself|on its own|from there))?,? (?:is|was|gives?|gave|reads?|read|meters?|metered|makes?|made|wants?|needs?|suits?|means|calls for|equals)(?: (?:right|correct|good|worth|enough|me|about|exactly|just|meant))*(?: (?:for|at|by|with))?(?: an?)? ?", re.I)
_ONE_POP = Pattern(r"\b(?:an?|one|a single|any|each|every) (?:single )?$", re.I)


def _reference(query: Query, groups: list[Group]) -> Group | None:
    """The one pop that the known aperture is of, or that all are held against."""
    read = query.all("aperture")
    for f in query.all("power"):
        group = next((g for g in groups if f in g.facts), None)
        if group is not None and group.many != 1:
            continue
        first = group.facts[0] if group is not None else f
        told = len(read) == 1 and f.end <= read[0].start and _WORTH.fullmatch(query.text, max(f.end, first.end), read[0].start)
        if told or not read and _AGAINST.search(query.text[max(0, first.start - 50) : first.start]):
            return Group(1.0, f.value, (first, f))
    for g in groups:
        if g.many == 1 and len(g.facts) == 1 and (read and g.facts[0].end <= read[0].start and _WORTH.fullmatch(query.text, g.facts[0].end, read[0].start) or not read and _AGAINST.search(query.text[max(0, g.facts[0].start - 50) : g.facts[0].start])):
            return g
    return None


def _mixed(query: Query, ask: Ask) -> Solution | None:
    """"two pops at full power and four at a quarter; one full pop is f/8": number times power, summed."""
    read = query.all("aperture")
    if not query.has("power") or {f.quantity for f in query.facts} - _AROUND or len(read) != (ask.quantity == "aperture") or any(f.origin != "said" for f in query.facts):
        return None
    groups = _groups(query)
    known = _reference(query, groups)
    if known is None:
        return None
    fired = [g for g in groups if not set(g.facts) & set(known.facts)]
    if not fired or sum(g.many for g in fired) < 2:
        return None
    placed = {f.start for g in (*fired, known) for f in g.facts}
    in_all = sum(g.many for g in fired)
    rest = [f for f in query.facts if f.quantity in ("count", "number", "power") and f.unit != "frames" and f.start not in placed and f.value not in (in_all, 1.0)]
    if rest:
        return None
    light = sum(g.many * g.power for g in fired) / known.power
    working = (" + ".join(f"{g.many:g} × {g.power:.4g}" for g in fired) + f" = {light * known.power:.4g} of a full pop",)
    return _of_light(query, ask, light, working)


def _of_light(query: Query, ask: Ask, light: float, working: tuple[str, ...]) -> Solution:
    """So many times the light of the known pop, as an f-number or in stops."""
    stops = Quantity("stops", math.log2(light), "stops")
    note = "The light of the pops adds; anything that moves between them will show."
    answers = (marks.aperture(times_the_light(query.all("aperture")[0].value, light)), stops) if ask.quantity == "aperture" else (stops,)
    return Solution(answers=answers, used=query.facts, topic="time", working=working, notes=(note,))


# --- more pops than before --------------------------------------------------------------------------

_THE_OTHER = Pattern(r"\b(?:than|instead of|rather than|in place of|against|compared (?:with|to)|versus|vs\.?|over|from|not)(?: (?:with|just|only|by|for|the|those|firing|the usual|my usual|giving it|a frame of))* ?$", re.I)
"""Right before the number that the other is held against."""
_GOT_FROM = Pattern(r"\b(?:get|gets|got|have|gain|win|comes?|light|exposure|less|more|brighter|darker) (?:out )?(?:from|with|for|over)(?: just| only)? ?$", re.I)
"""Before the number that is asked of: "how much more do I get from four pops compared with one?"."""
_COMPARED = Pattern(r"\b(?:than|instead of|rather than|in place of|against|compared|versus|vs|from|last time|last night|tonight|second|only|before|first|this time|now|then|gain|brighter|darker|more|less|under|over|difference|grow\w*|add\w*)\b", re.I)


def _against_another(query: Query, ask: Ask) -> Solution | None:
    """"ten pops instead of three": the logarithm of how many times as many."""
    told = [f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS or f.quantity == "number" and not f.bad]
    rest = {f.quantity for f in query.facts if f.unit != "frames"} - {"count", "number", "remark", "place", "number_range"}
    if rest or any(f.quantity == "number" and f.value > 200 for f in told) or len(told) != 2 or not any(f.quantity == "count" for f in told) or any(f.origin != "said" or f.value < 1 or f.value != int(f.value) for f in told) or told[0].value == told[1].value or not _COMPARED.search(query.text):
        return None
    first, second = sorted(told, key=lambda f: f.start)
    of_second = _THE_OTHER.search(query.text[: second.start]) is not None or _WAS_ENOUGH.match(query.text, second.end) is not None
    from_first = _THE_OTHER.search(query.text[: first.start]) is not None and not (of_second and _GOT_FROM.search(query.text[: first.start]))
    base, other = (second, first) if of_second and not from_first else (first, second)
    if not (of_second or from_first) and not _IN_TIME.search(query.text):
        return None
    return Solution(answers=(Quantity("stops", math.log2(other.value / base.value), "stops"),), used=query.facts, topic="time", working=(f"log2({other.value:g} / {base.value:g})",))


_PLANNED = Pattern(r"\b(?:plann\w+|meant|needs?|needed|wanted|wants?|should (?:be|have)|supposed|required?|calls? for|takes?|of (?:the|my|those|these|all|our|his|her))\b", re.I)
_NOT_FIRED = Pattern(r"\b(?:failed|misfired|did(?:n't| not) (?:fire|go|light|work)|missed|lost|skipped|forgot\w*|dud)\b", re.I)
_AS_FIRED = Pattern(r"\b(?:went off|fired|done|after|only|managed|got|died|stop now|stopp\w+|ran out|gave out|worked|flashed)\b", re.I)


def _short_of_plan(query: Query, ask: Ask) -> Solution | None:
    """"six of the eight pops went off", "two of my sixteen failed": what was fired against what was to be."""
    told = [f for f in query.facts if f.quantity in ("count", "max_count") and f.unit in POP_WORDS]
    if len(told) != 2 or told[0].value == told[1].value or not _PLANNED.search(query.text) or {f.quantity for f in query.facts if f.unit != "frames"} - {"count", "max_count", "remark", "place", "aperture"} or len(query.all("aperture")) > 1:
        return None
    failed = _NOT_FIRED.search(query.text) is not None
    if not failed and not _AS_FIRED.search(query.text) or any(f.origin != "said" for f in query.facts):
        return None
    some, whole = sorted(told, key=lambda f: f.value)
    fired = whole.value - some.value if failed else some.value
    return Solution(answers=(Quantity("stops", math.log2(fired / whole.value), "stops"),), used=query.facts, topic="time", working=(f"log2({fired:g} / {whole.value:g})",))


_WAS_ENOUGH = Pattern(r"(?: pops| of them)?,? (?:(?:would|should|could|might) have |would |were |was |are |is )(?:been |have been )?(?:done|do|enough|right|plenty|sufficed|sufficient|correct|needed|wanted)\b", re.I)
"""After the number that was needed, and that the other is held against."""
_IN_TIME = Pattern(r"\b(?:last time|before|first|earlier|yesterday|last night|this time|now|then|today|tonight|next|to|after that|second|only|lost count)\b", re.I)


_PART = Pattern(r"\b(?:(?P<half>halv\w+|half (?:as many|(?:of )?(?:the|that|those|my)(?: number of)?))|(?P<twice>doubl\w+|twice (?:as many|the|that)(?: number of)?))\b[^.?!;,\d]{0,16}\bpops\b", re.I)
_ASKS = Pattern(r"\b(?:what|which|where|how)\b", re.I)


def _of_fewer(query: Query, ask: Ask) -> Solution | None:
    """"eight pops gave f/16, what would one have given?": the f-number goes with the square root of their number."""
    told, read = [f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS or f.quantity == "number" and not f.bad and f.value == int(f.value) > 0], query.all("aperture")
    if len(read) != 1 or read[0].cue == "want" or not told or told[0].quantity != "count" or len(told) > 2 or {f.quantity for f in query.facts if f.unit != "frames"} - {"count", "number", "aperture", "remark", "place"} or any(f.origin != "said" for f in query.facts):
        return None
    base, part = told[0], _PART.search(query.text)
    asked = told[1].value if len(told) == 2 else base.value * (2.0 if part["twice"] else 0.5) if part is not None and len(told) == 1 else 0.0
    last = told[1].start if len(told) == 2 else part.start() if part is not None else 0
    if not asked or base.value <= 1 or _ASKS.search(query.text, read[0].end) is None or last < max(read[0].end, base.end):
        return None
    changed = told[1].cue if len(told) == 2 and told[1].unit == "flashes" else ""
    asked = base.value + asked if changed == "more" else base.value - asked if changed == "less" else asked
    if asked <= 0:
        return None
    gained = math.log2(asked / base.value)
    answers = (marks.aperture(times_the_light(read[0].value, asked / base.value)), Quantity("stops", gained, "stops"))
    return Solution(answers=answers, used=query.facts, topic="time", working=(f"{asked:g} pops to {base.value:g}: {gained:+.3g} stops",), notes=("The light of the pops adds; anything that moves between them will show.",))


def _still_short(query: Query, ask: Ask) -> Solution | None:
    """"one pop gives f/5.6 and I've fired three: how far under f/11?": the light of so many against what is wanted."""
    pops, read = [f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS and f.value > 1], query.all("aperture")
    if len(pops) != 1 or len(read) != 2 or read[0].value == read[1].value or not _OF_ONE_POP.search(query.text) or {f.quantity for f in query.facts if f.unit != "frames"} - {"count", "aperture", "remark", "place"} or any(f.origin != "said" for f in query.facts):
        return None
    gives = [f for f in read if _OF_ONE_POP.search(query.text[max(0, f.start - 44) : f.start])]
    if len(gives) != 1:
        return None
    target = next(f for f in read if f is not gives[0])
    value = math.log2(pops[0].value) + aperture_difference_stops(gives[0].value, target.value)
    return Solution(answers=(Quantity("stops", value, "stops"),), used=query.facts, topic="time", working=(f"{pops[0].value:g} pops of f/{gives[0].value:g} beside f/{target.value:g}",))


_OF_ONE_POP = Pattern(r"\b(?:one|a|each|every|a single|1)(?: single)?(?: (?:full|lone))?(?: (?:pop|flash|burst|hit|of them))?,? (?:gives?|gave|is|was|reads?|meters?|makes?|makes me|comes to|puts?)\b", re.I)


# --- equal exposures that add up --------------------------------------------------------------------

_EQUAL = Pattern(r"\s*(?:(?:equal|identical|like|even|separate|equally long|matching) )+(?:exposures?|pops|flashes|bursts|hits|shots)\b|\s*(?:exposures?|pops|flashes|bursts)(?: all)? (?:alike|of (?:the )?(?:same|equal) (?:size|length|amount)|the same)\b", re.I)
_TIMES = Pattern(r"\b(?:expos\w+|shoot\w*|photograph\w*|open\w*|tak\w+|record\w*|fir\w+|tak\w+|pop\w*)\b", re.I)
_EACH_UNDER = Pattern(r"\b(?:each|every|apiece|one of (?:them|those)|them all)\b[^.?!]{0,40}\b(?:under|less|down|short|below|held back|cut|dark\w*|closed)\b|\b(?:under|less|down|short|below|cut|dark\w*)\b[^.?!]{0,40}\b(?:each|every|apiece|one of them)\b", re.I)
_ONE_FRAME = Pattern(r"\b(?:one|a|the same|a single|this|that|each) (?:single )?(?:frame|sheet|negative|plate|piece of film|neg|picture|film)\b|\bmultiple exposure\b|\b(?:sum|together|add up|in total|in all|altogether)\b", re.I)


def _each_under(query: Query, ask: Ask) -> Solution | None:
    """"four equal exposures on one frame: how far under must each be": the logarithm of their number."""
    many = [f for f in query.facts if f.quantity in ("count", "number", "times") and f.value >= 2 and f.value == int(f.value) and not f.bad]
    if len(many) != 1 or {f.quantity for f in query.facts if f.unit != "frames" or f is many[0]} - {"count", "number", "times", "remark", "place", "film_speed"}:
        return None
    if not _EACH_UNDER.search(query.text) or not _ONE_FRAME.search(query.text):
        return None
    if not (_EQUAL.match(query.text, many[0].end) or _EQUAL.match(query.text, many[0].start + len(many[0].said.split(" ")[0])) or _TIMES.search(query.text) and re.search(r"\b(?:times|twice|exposures?)\b", many[0].said + query.text[many[0].end : many[0].end + 14], re.I)):
        return None
    under = math.log2(many[0].value)
    note = f"{many[0].value:g} equal parts of the light: each is 1/{many[0].value:g} of it."
    return Solution(answers=(Quantity("stops", -under, "stops"),), used=query.facts, topic="time", notes=(note,), working=(f"log2({many[0].value:g}) = {under:.3g}",))


# --- some more beside those that were read -----------------------------------------------------------

_MORE_AFTER = Pattern(r"(?: (?:of (?:the same|them|those|these)|just like (?:it|them)|like (?:it|them)|identical|equal))?(?: more| extra| further| others?\b| additional)", re.I)
_MORE_BEFORE = Pattern(r"\b(?:another|a further|an extra|an additional)(?: set of| batch of)? $", re.I)
_WHOLE_SAID = Pattern(r"\b(?:in all|in total|altogether|all told|makes? (?:it )?\w+)\b", re.I)


def _some_more(query: Query, ask: Ask) -> Solution | None:
    """"four pops gave f/8, I fire four more: what aperture": all of them against those that were read."""
    told, read = sorted((f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS or f.quantity == "number" and not f.bad), key=lambda f: f.start), query.all("aperture")
    if {f.quantity for f in query.facts if f.unit != "frames"} - {"count", "number", "aperture", "remark", "place"} or any(f.origin != "said" for f in query.facts) or len(read) > 1 or ask.quantity == "aperture" and not read:
        return None
    if len(told) == 1 and _OF_ONE_POP.search(query.text[: told[0].start]):
        before, more = 1.0, told[0]
    elif len(told) == 2:
        before, more = told[0].value, told[1]
    else:
        return None
    added = _MORE_AFTER.match(query.text, more.end) or _MORE_BEFORE.search(query.text[: more.start]) or more.said.lower().startswith("another") or re.search(r"\bmore\b", more.said, re.I)
    if not added or before < 1 or more.value < 1 or more.value != int(more.value) or _ASKS.search(query.text, more.end) is None or read and read[0].start > more.start:
        return None
    light = (before + more.value) / before
    stops = Quantity("stops", math.log2(light), "stops")
    answers = (marks.aperture(times_the_light(read[0].value, light)), stops) if ask.quantity == "aperture" else (stops,)
    return Solution(answers=answers, used=query.facts, topic="time", working=(f"{before + more.value:g} for {before:g}: {math.log2(light):+.3g} stops",), notes=("The light of the pops adds; anything that moves between them will show.",))


_WORTH_IN = Pattern(r"\bhow many (?:full|full-power)\b|\bhow many (?:pops|flashes|bursts)?(?: of)? ?(?:at )?full\b|\bin full (?:pops|flashes)\b", re.I)


_OF_A_CHARGE = Pattern(r"\b(?:left|remain\w*|charges?|batter(?:y|ies)|cells?|pack|sets?|still|good for)\b", re.I)
"""What a charge still holds is no sum."""


def _in_full_pops(query: Query, ask: Ask) -> Solution | None:
    """"two at full and two at half: how many full pops is that worth": number times power, summed; None where all are of one power."""
    if {f.quantity for f in query.facts if f.unit != "frames"} - {"count", "number", "power", "remark", "place"} or any(f.origin != "said" for f in query.facts) or not _WORTH_IN.search(query.text) or _OF_A_CHARGE.search(query.text):
        return None
    asked = _WORTH_IN.search(query.text)
    groups = [g for g in _groups(query) if asked is not None and g.facts[0].start < asked.start()]
    placed = {f.start for g in groups for f in g.facts}
    if len(groups) < 2 or len({g.power for g in groups}) < 2 or any(f.quantity in ("count", "number") and f.unit != "frames" and f.start not in placed for f in query.facts):
        return None
    worth = sum(g.many * g.power for g in groups)
    working = (" + ".join(f"{g.many:g} × {g.power:.4g}" for g in groups) + f" = {worth:.4g}",)
    return Solution(answers=(Quantity("count", worth, "pops"),), used=query.facts, topic="time", working=working, notes=(f"In light they are worth {worth:.4g} at full power.",))


_PER_FRAME = Pattern(r"\s*(?:pops?|flashes|bursts?|shots?|hits|times)?,?\s*(?:(?:of flash |fired |go |goes |going |are |is |given )*(?:(?:a|per|each|every|to (?:a|the|each|every)|(?:for|on|into|onto|at) (?:a|each|every|each of the)) ?(?:single )?(?:frames?|shot|picture|exposure|sheet|plate|neg|negative|one)|(?:(?:for|on|at|to) )?(?:each|every one)|apiece|a piece|every time)\b)", re.I)
_POPS_ASKED = Pattern(r"\bhow many (?:full )?(?:pops|flashes|bursts|times)\b|\b(?:total|number of|sum of the) (?:pops|flashes|bursts)\b|\b(?:pops|flashes|bursts) (?:in all|in total|altogether|all told|total)\b|\bhow many\b[^?]{0,24}\b(?:in all|in total|altogether|all told)\b", re.I)
_FULL_POPS = Pattern(r"\bfull(?:[- ]power)? (?:pops|flashes|bursts)\b", re.I)
_ROLLS = Pattern(r"\b(?:rolls?|films?|boxes|packs|packets|holders|backs|magazines)\b", re.I)
_SHEETS = Pattern(r"[\s-]*(?:sheets|plates|negs|negatives|pictures|exposures|shots)\b", re.I)


def _for_all_frames(query: Query, ask: Ask) -> Solution | None:
    """"36 frames, four pops a frame, how many pops in all?": so many times as many; the power is the same for all."""
    counts = [f for f in query.facts if f.quantity in ("count", "max_count")]
    pops = [f for f in counts if f.unit in POP_WORDS]
    frames = [f for f in counts if f.unit == "frames" and f.value > 1] + [f for f in query.facts if f.quantity == "rows" and f.unit == "layers" and _SHEETS.match(query.text, f.end)]
    rolls = [f for f in query.facts if f.quantity == "number" and f.value > 1 and _ROLLS.search(f.said + query.text[f.end : f.end + 10])]
    rest = {f.quantity for f in query.facts if f not in (*counts, *frames, *rolls) and f.value != 1} - {"remark", "place", "film_speed", "format"}
    if len(pops) != 1 or len(frames) != 1 or len(rolls) > 1 or rest - {"power"} or len(query.all("power")) > 1 or ask.unit not in ("", *POP_WORDS):
        return None
    if not _PER_FRAME.match(query.text, pops[0].end) or not _POPS_ASKED.search(query.text):
        return None
    factors = (*rolls, frames[0], pops[0], *(query.all("power") if _FULL_POPS.search(query.text) else ()))
    total = math.prod(f.value for f in factors)
    working = " × ".join(f"{f.value:g}" for f in factors)
    return Solution(answers=(marks.count(math.ceil(total - 1e-9), "pops"),), used=(*rolls, frames[0], pops[0], *query.all("power")), topic="time", working=(f"{working} = {total:g}",))


_RULES: dict[str, tuple[Callable[[Query, Ask], Solution | None], ...]] = {
    "count": (_in_full_pops, _for_all_frames),
    "aperture": (_mixed, _some_more, _of_fewer),
    "stops": (_mixed, _short_of_plan, _some_more, _against_another, _still_short, _each_under),
}


def stops_gained(query: Query) -> Solution | None:
    """"how many stops do eight pops give over one"."""
    pops = popped(query)
    of_pops = pops is not None and (pops.unit == "pops" or any(f.unit in ("pops", "frames") for f in query.all("count")))
    if pops is None or not of_pops or any(query.has(q) for q in ("guide_number", "aperture", "distance", "energy", "film_speed", "relation", "stops", "shutter")):
        return None
    powers = query.all("power")
    partial = [f for f in powers if f.value < 1]
    if len(partial) > 1:
        return None
    part = partial[0].value if partial else 1.0
    others = [f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS and f is not pops]
    before, after = others[0].value if others else 1.0, pops.value
    if others and others[0].end <= pops.start and _INSTEAD.search(query.text.lower()[others[0].end : pops.start]):
        before, after = after, before  # "ten pops instead of three"
    gained = math.log2(after * part / before)
    return Solution(answers=(Quantity("stops", gained, "stops"),), used=(pops, *others, *powers), topic="time", working=(f"2 to the power {gained:.3g} is {after * part / before:.3g}",))


_INSTEAD = Pattern(r"\b(?:instead of|rather than|in place of|than|over|against|compared|beside)\b")
