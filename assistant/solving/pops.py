"""Many pops in one exposure: how many for a stop or an aperture, and what so many add up to.

The light of pops adds: n pops are log2 n stops more than one, and the aperture grows with the
square root of n. How many are needed is rounded up, how many are to be had rounded down.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.duration import recycle_time
from assistant.physics.flash import times_the_light, whole_count
from assistant.query import COUNTED, Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving import energy_short, flash, known_at, marks, pop_heads, pop_sums, strobe_fits, strobe_images
from assistant.solving.pop_facts import POP_WORDS, drawn_out, is_of_each, lost_besides, own, popped, power_that_was_read, share, unclear_places
from assistant.solving.solution import Solution, needs


def solve(query: Query) -> Solution | None:
    """Pops for an aperture or a shortfall, what pops add up to, strobe counts."""
    for ask in query.asks if "extension" not in query.cues or drawn_out(query) else ():
        if ask.quantity == "count":
            return _count(_from_where_i_stand(query), ask)
        if ask.quantity == "aperture":
            return _adds_to(query)
        if ask.quantity == "stops":
            return pop_sums.stops_gained(query)
        if ask.quantity == "power":
            return _as_one(query)
    return None


_IN_ONE = Pattern(r"\b(?:single|one (?:pop|flash|burst|shot|go|hit)|in one|at once|instead|equals?|equivalent|same (?:exposure|light|as)|as much|match\w*|alone|replaces?)\b", re.I)


def _as_one(query: Query) -> Solution | None:
    """"two pops at a quarter: what power in a single pop?": so many times the power."""
    pops, powers = popped(query), query.all("power")
    others = ("guide_number", "aperture", "distance", "energy", "stops", "relation", "film_speed", "battery")
    if pops is None or pops.unit != "pops" or pops.value <= 1 or len(powers) != 1 or not 0 < powers[0].value < 1 or any(query.has(q) for q in others) or not _IN_ONE.search(query.text):
        return None
    value = pops.value * powers[0].value
    used = (*query.all("count"), powers[0])
    working = (f"{pops.value:g} times {powers[0].value:g} of full",)
    if value > 1.0 + 1e-9:
        return Solution("out_of_reach", "Out of reach of one pop; it would take", (Quantity("power", value, "of full"),), used=used, topic="time", working=working)
    return Solution(answers=(marks.power(value),), used=used, topic="time", working=working)


def _from_where_i_stand(query: Query) -> Query:
    """"two pops do when I stand three metres off; from six?": the flash is in the hand of who stands there, as near as he can get."""
    own = [f for f in query.facts if f.quantity == "camera_distance" and f.cue == "self" or f.quantity == "max_distance" and _ONLY_GET.search(query.text[: f.start]) or f.quantity == "min_distance"]
    placed = query.all("distance")
    in_hand = len(placed) == 1 and popped(query) is not None or not placed and query.has("guide_number") and _OPEN_FLASH.search(query.text) is not None
    if len(own) != 1 or not in_hand:
        return query
    return query.with_facts(replace(f, quantity="distance", of="", cue="") if f is own[0] else f for f in query.facts)


_ONLY_GET = Pattern(r"\bonly (?:stand|get|go|be|come|reach|work|fire|pop)(?: (?:it|the flash|as near as|within|to|at|from|up))*\s*$", re.I)
_OPEN_FLASH = Pattern(r"\bopen flash|\bpaint|\b(?:shutter )?(?:on|at|open on|set to) (?:b|t|bulb)\b|\bshutter (?:is |stays |left |held |locked )?open\b", re.I)
"""The shutter stands open and somebody walks about with the flash."""


def _count(query: Query, ask: Ask) -> Solution | None:
    if query.has("guide_number"):
        return _onto_a_wall(query)
    if ask.unit not in ("heads", "frames", "sets", "rolls") and _SEVERAL_HEADS.search(query.text) is None and ask.of != "more" and (made_up := energy_short.pops_for(query)) is not None:
        return made_up
    ask = replace(ask, of="more") if _HOW_MANY_MORE.search(query.text) else ask
    for rule in (_strobe, _in_a_time, _short, _for_aperture, _by_the_balance):
        found = rule(query, ask)
        if found is not None:
            return found
    return None


_SEVERAL_HEADS = Pattern(r"\b(?:heads|packs|units|guns|strobes|monolights|lamps)\b", re.I)
_HOW_MANY_MORE = Pattern(r"\bhow many (?:more|extra|further)(?: (?:pops|flashes|bursts|of them))?(?: (?:to|for|until|till|before|do|must|should|would|will|are)\b[^?]*)?\W*\?", re.I)


def _onto_a_wall(query: Query) -> Solution | None:
    """Open flash on a wall, or on the farthest of those who are lit: with nobody else placed it is the subject."""
    if query.all("distance", "") and _OPEN_FLASH.search(query.text) and not query.has("camera_distance"):
        return flash.solve(query)
    placed = query.all("distance")
    if len(placed) != 1 or placed[0].of not in ("backdrop", "front", "back", "middle"):
        return None
    return flash.solve(query.with_facts(replace(f, of="") if f is placed[0] else f for f in query.facts))


def _strobe(query: Query, ask: Ask) -> Solution | None:
    rate = query.last("frequency")
    if ask.of == "a second":
        return strobe_images.rate(query) or _rate(query)
    if rate is None:
        return None
    fits = strobe_fits.solve(query)
    if fits is not None:
        return fits
    shutter = query.last("shutter") or query.last("time") or query.last("interval")
    if shutter is None:
        return needs(("shutter",), "I need the time the shutter is open.", (rate,), "time")
    value = math.floor(rate.value * shutter.value * (1 + 1e-9))
    return Solution(answers=(marks.count(value, "flashes"),), used=(rate, shutter), topic="time", working=(f"{rate.value:g} a second for {shutter.value:g} s",),
                    notes=("One more if a flash falls just as the shutter opens.",))


def _rate(query: Query) -> Solution | None:
    """"eight flashes in two seconds": so many a second."""
    many = next((f for f in query.facts if f.quantity in ("count", "times")), None)
    time = query.last("shutter") or query.last("time") or query.last("interval")
    if many is None or time is None or time.value <= 0:
        return None
    if _APART.match(query.text, time.end):
        each, how = 1 / time.value, f"1 / {time.value:g} s"  # from one to the next
    else:
        ends = _AT_BOTH_ENDS.search(query.text) is not None and many.value > 1
        each, how = (many.value - ends) / time.value, f"{many.value - ends:g} / {time.value:g} s"
    return Solution(lead=f"{each:.3g} flashes a second.", answers=(Quantity("count", each, "flashes a second"),), used=(many, time), topic="time", working=(how,))


_APART = Pattern(r" ?(?:s |sec\w* )?(?:apart|from (?:one|each) to|between (?:them|each|one|images|flashes))\b", re.I)
_AT_BOTH_ENDS = Pattern(r"\bfirst\b[^.?!]{0,24}\b(?:start|begin\w*|opens?)\b[^.?!]{0,24}\blast\b[^.?!]{0,24}\b(?:end|clos\w+|shuts?)\b|\bone (?:of them )?(?:at|on) (?:each|either|every) end\b|\bone at both ends\b|\bboth ends (?:counted|included)\b", re.I)


def _in_a_time(query: Query, ask: Ask) -> Solution | None:
    """"recycles in 5 s: how many pops in a minute"."""
    pause = query.last("recycle") or query.last("interval")
    time = query.last("time") or query.last("shutter")
    if pause is None or time is None or time.value <= pause.value or query.has("aperture"):
        return None
    part, fact = share(query)
    two = known_at.told_and_asked(query, pause) if pause.quantity == "recycle" else None
    each = recycle_time(pause.value, two[1] / two[0] if two else 1.0 if fact is not None and _of_the_pause(query, fact, pause) else part or 1.0)
    value = math.floor(time.value / each * (1 + 1e-9))
    return Solution(answers=(marks.count(value, "pops"),), used=tuple(f for f in (pause, time, fact, *(two[2] if two else ())) if f), topic="time", notes=("One more if the flash is ready at the start.",))


def _of_the_pause(query: Query, power: Fact, pause: Fact) -> bool:
    """"at half power it recycles in 5 s. how many in a minute": the power that the wait was told for, and not the one that is asked."""
    text = query.text.lower()
    asks = max(text.find("how many"), text.find("how often"))
    lowest, highest = min(power.start, pause.start), max(power.end, pause.end)
    between = text[min(power.end, pause.end) : max(power.start, pause.start)]
    whole = query.all("power")
    return len(whole) == 1 and power.origin == pause.origin == "said" and asks >= 0 and not lowest <= asks <= highest and not patterns.search(r"[.,;:?!]|\b(?:but|and|if|when)\b", between) \
        and (asks > highest and patterns.search(r"[.,;:?!]|\b(?:so|and)\b", text[highest:asks]) is not None or asks < lowest and patterns.search(r"[.,;:?!]|\b(?:if|when|with)\b", text[asks:lowest]) is not None)


def _stops_short(query: Query) -> Fact | None:
    if query.has("guide_number") or len(query.all("aperture")) > 1 or query.cues & {"battery"}:
        return None
    if query.has("aperture"):
        return next((f for f in query.facts if f.quantity in ("stops", "relation") and f.value and f.cue == "less" or f.quantity in ("nd", "filter_loss", "loss") and f.value > 0), None)
    return next((f for f in query.facts if f.quantity in ("stops", "relation", "power_down", "signed", "loss", "filter_loss", "nd") and f.value), None)


def _short(query: Query, ask: Ask) -> Solution | None:
    """"three stops short with one pop"."""
    under = _stops_short(query)
    if under is None or query.has("distance"):
        return None
    taken = [f for f in query.facts if f.quantity in _TAKING] if under.quantity in _TAKING else [under]
    total = sum(abs(f.value) for f in taken)
    base = popped(query)
    if base is None and under.origin == "said" and not _OF_POPS.search(query.text):
        return None  # "how many DIN is a stop?"
    before = base.value if base else 1.0
    if _CAME_OUT_OVER.search(query.text[max(0, under.start - _BESIDE) : under.end + _BESIDE]):
        if before == 1.0:
            return None  # of one pop there are no fewer
        exact = before * 2.0**-total
        return Solution(answers=(marks.count(whole_count(exact), "pops"),), used=tuple(f for f in (*taken, base) if f), topic="time", working=(f"{before:g} divided by 2 to the power {total:g} is {exact:.3g}",))
    return _answer(before * 2.0**total, before, ask, tuple(f for f in (*taken, base) if f), f"{total:g} stops are 2 to the power {total:g}")


_TAKING = ("loss", "filter_loss", "nd")
"""Losses in a row, which add."""


_OF_POPS = Pattern(r"\b(?:pop|flash|burst|hit|fir|discharg|shot|bang|go(?:es)?\b|times\b|more\b|light|head|gun|strobe|how often)", re.I)
_CAME_OUT_OVER = Pattern(r"\b(?:was|were|is|are|am|i'm|came|come|comes|turned|got|gets|gave|gives|put|puts|leaves?|left|made|makes)\b(?:(?!\b(?:want|need|like|wish|prefer|should)\b)[^.?!;]){0,36}\bstops? (?:too (?:bright|much|hot|dense|light|many|strong)|over\b(?! (?:the|it|what))|overexposed|hot\b|more than (?:right|enough|needed|i (?:want|need)\w*))|\b(?:overexposed|too (?:bright|dense|hot)|over) by\b", re.I)
"""More light than is right: fewer pops are wanted. "I want a stop over" is a wish."""
_BESIDE = 44


def _answer(exact: float, before: float, ask: Ask, used: tuple[Fact, ...], working: str) -> Solution:
    """So many pops in all, or that many more than were fired."""
    whole = whole_count(exact)
    more = max(0, round(whole - before))
    reached = math.log2(whole / exact) if exact > 0 else 0.0
    note = f"Exactly {exact:.3g} would do; {whole:g} give {reached:.2g} stop more than needed." if reached > 0.05 else ""
    unit = ask.unit if ask.unit in ("flashes", "heads") and before == 1.0 else "pops"
    answers: tuple[Quantity, ...] = (marks.count(whole, unit),)
    if ask.of == "more":
        answers = (marks.count(more, unit), Quantity("count", whole, unit, "in all"))
    return Solution(answers=answers, used=used, topic="time", working=(working,), notes=(note,))


def _for_aperture(query: Query, ask: Ask) -> Solution | None:
    """"one pop is f/8, I need f/22": counted by the marks."""
    stops = query.all("aperture")
    if len(stops) != 2 or query.has("guide_number") or unclear_places(query) or query.has("film_speed") and len(query.all("film_speed")) > 1:
        return None
    target = wanted(query, stops)
    one = stops[0] if target is not stops[0] else stops[1]
    powers = query.all("power")
    if len(powers) > 1 or len(powers) == 1 and powers[0].value != 1.0 and (powers[0].start > stops[-1].start or powers[0].start > target.start):
        return None
    several = pop_heads.heads(query) if ask.unit != "flashes" else None
    if several is not None:
        return _by_heads(query, ask, one, target, several)
    if one.value == target.value and len(query.all("distance")) > 1:
        return None  # the same aperture from elsewhere
    base = popped(query)
    lost, takes = lost_besides(query, one)
    difference = -aperture_difference_stops(one.value, target.value) + lost
    if difference < 0 and not takes and not (base and base.value > 1) and not _WISHED.search(query.text.lower()[: target.start]):
        one, target, difference = target, one, -difference  # nobody asks how many pops where one is more than enough
    if difference <= 0 and not (base and base.value > 1):
        return Solution(answers=(marks.count(1, "pops"),), used=(one, target, *takes), topic="time", notes=(f"One pop already gives f/{one.value:g}.",))
    before = base.value if base and base.value > 1 and not is_of_each(query, base, one) else 1.0
    used = tuple(f for f in (one, target, base, *query.all("distance"), *(f for f in (*query.all("film_speed"), *query.all("power")) if f.cue == COUNTED), *takes, *power_that_was_read(query, one)) if f)
    found = _with_waits(query, _answer(before * 2.0**difference, before, ask, used, f"f/{one.value:g} to f/{target.value:g} is {difference - lost:.3g} stops" + (f", and {lost:.3g} lost" if takes else "")))
    return _with_energy(query, found)


_HOW_LONG = Pattern(r"\bhow long\b|\bhow many (?:seconds|minutes)\b|\bwhat time\b|\btotal time\b", re.I)


def _with_waits(query: Query, found: Solution) -> Solution:
    """How long they take from the first to the last, where that was asked as well."""
    pause = query.last("recycle") or query.last("interval")
    if pause is None or not _HOW_LONG.search(query.text):
        return found
    total = Quantity("duration", pause.value * (float(found.answers[0].value) - 1), "s", "from first to last")
    return replace(found, answers=(*found.answers, total), used=(*found.used, pause))


def _with_energy(query: Query, found: Solution) -> Solution:
    """The watt-seconds of all pops beside their number, where those of one were told."""
    each = query.all("energy")
    if len(each) != 1 or query.has("power"):
        return found
    total = Quantity("energy", each[0].value * float(found.answers[0].value), "J", "in all")
    return replace(found, answers=(*found.answers, total), used=(*found.used, each[0]))


def _by_heads(query: Query, ask: Ask, one: Fact, target: Fact, several: Fact) -> Solution:
    """"each of two heads gives f/8, I need f/22: pops?": of one head, or of all of them together."""
    alone = pop_heads.of_one(query)
    if not alone and not pop_heads.of_all(query):
        every = "both" if several.value == 2 else f"all {several.value:g}"
        return needs(("aperture",), f"I need to know whether f/{one.value:g} is the light of one head or of {every} together.", (one, target, several), "time")
    light = 2.0 ** -aperture_difference_stops(one.value, target.value) / (several.value if alone else 1.0)
    return _answer(light, 1.0, ask, (one, target, several), f"one pop of all {several.value:g} heads needs {light:.3g} times its light")


_EITHER = Pattern(r"\beither (?:of (?:them|the two)|one|flash|head|alone)\b", re.I)
_WISHED = Pattern(r"\b(?<!good )(?<!right )(?<!enough )(?<!correct )(?:for|need|needs|want|wants|reach|get to|to get|to have|get me to|up to|would like)\s*(?:an? |the )?$")


_OF_ONE = Pattern(r"\s*(?:for|from|with|after|off|per|by)\s*(?:only |just |a single )?", re.I)
""""the meter says f/16 for one pop"."""

_ASKED_AT = Pattern(r"\bhow many\b(?:(?!\b(?:if|when|with|from|where|since|because)\b)[^.,;?\d]){0,30}$")


def wanted(query: Query, stops: list[Fact]) -> Fact:
    """Which of two apertures is wanted: as said, else the one that is not a pop's own reading."""
    wishes = [f for f in stops if f.cue == "want" or f.origin == "said" and _WISHED.search(query.text.lower()[: f.start])]
    asked = [f for f in stops if _ASKED_AT.search(query.text.lower()[: f.start])]
    said = wishes[0] if len(wishes) == 1 else asked[0] if len(asked) == 1 else None
    base = popped(query)
    if said is None and base is not None and base.origin == "kept" and base.value > 1 and {f.origin for f in stops} == {"kept", "said"}:
        return next(f for f in stops if f.origin == "said")  # "six pops at f/8, how many at f/11?", "and at f/5.6?"
    if said is None and base is not None and base.value > 1 and base.origin == "said":
        known = own(base, stops, query.text)
        return stops[0] if known is stops[1] else stops[1]
    pop = next((f for f in query.facts if f.quantity == "count" and f.value == 1), None)
    pops_own = pop is not None and stops[0].end < pop.start < stops[1].start and not _OF_ONE.fullmatch(query.text[stops[0].end : pop.start])
    larger_first = stops[0].value > stops[1].value and (pop is None or pop.start > stops[0].start)
    return said or (stops[0] if pops_own or larger_first else stops[1])


def _by_the_balance(query: Query, ask: Ask) -> Solution | None:
    """One pop is right here: how many at twice the distance, at a quarter of the power, on slower film."""
    kept = query.all("aperture")
    if query.has("guide_number") or len({f.value for f in kept}) > 1 or kept and len(query.all("distance")) != 2 or ask.unit == "frames":
        return None
    factor, used, lines = 1.0, list[Fact](), list[str]()
    for quantity, power in (("distance", 2), ("power", -1), ("film_speed", -1), ("energy", -1)):
        facts = [f for f in query.facts if f.quantity == quantity and not (quantity == "power" and _OF_DISTANCE.match(query.text[f.end :]))]
        values = _powers(query, facts) if quantity == "power" and not (len(facts) == 2 and facts[0].value == facts[1].value) else [f.value for f in _asked_last(query, facts)]
        if len(values) == 2 and all(v > 0 for v in values):
            factor *= (values[1] / values[0]) ** power
            used += facts
            lines.append(f"{quantity.replace('_', ' ')}: {(values[1] / values[0]) ** power:.3g} times")
    times = next((f for f in query.facts if f.quantity == "times"), None)
    twice = patterns.search(r"(?:twice|doubl\w*|two times)\s+(?:the |my |that )?distance|distance (?:is )?doubl|twice as far", query.text.lower())
    halved = patterns.search(r"\b(?:half|halv\w+)\s+(?:of )?(?:the |my |that )?distance|distance (?:is )?halved|half as far|twice as (?:near|close)", query.text.lower())
    if not used and halved:
        factor, lines = 0.25, ["half the distance needs a quarter of the light"]
        used = [f for f in query.facts if f.quantity == "power" and _OF_DISTANCE.match(query.text[f.end :])]
    elif not used and twice:
        factor, lines = 4.0, ["twice the distance needs four times the light"]
    elif not used and times and "distance" in query.text.lower():
        factor, used, lines = times.value**2, [times], [f"{times.value:g} times the distance needs {times.value**2:g} times the light"]
    if not lines or not query.cues & {"name_distance"} and not used and _AS_FAR.search(query.text) is None:
        return None
    base = popped(query)
    before = base.value if base else 1.0
    return _answer(before * factor, before, ask, tuple((*used, *kept, *((base,) if base else ()))), "; ".join(lines))


_AS_FAR = Pattern(r"^(?!.*\b(?:camera|lens|tripod|zoom)\b).*\b(?:twice|half) as (?:far|near|close)\b", re.I)
"""A distance without its name, and of no camera."""
_OF_DISTANCE = Pattern(r"^\s*(?:of )?(?:the |my |that )?distance\b|^\s*as (?:far|near|close)\b", re.I)


_OF_THESE = Pattern(r"\s*(?:of )?(?:my|these|those|such|the|our|his|her)?\s*", re.I)
_TO_MATCH = Pattern(r"\b(?:match|equal|make up|replace|rival|add up to|the same as|as much as|stand in for)\b[^.?\d]*$", re.I)
""""one is worth 60 joules. how many match a 960 joule head": the last is what all of them come to."""


def _asked_last(query: Query, facts: list[Fact]) -> list[Fact]:
    """"how many at 20 ft, if four do it at 10": the value that is known, then the one that is asked about."""
    base, asks = popped(query), query.text.lower().find("how many")
    if len(facts) != 2 or asks < 0 or any(f.origin != "said" for f in facts):
        return facts
    after = asks + len("how many")
    if after <= facts[0].start and _OF_THESE.fullmatch(query.text[after : facts[0].start]) or 0 <= asks < facts[1].start and facts[0].end <= asks and _TO_MATCH.search(query.text[after : facts[1].start]):
        return [facts[1], facts[0]]  # "how many 200 joule heads match one of 800"
    def apart(fact: Fact, other: Fact) -> int:
        between = query.text[min(fact.end, other.end) : max(fact.start, other.start)]
        return len(between) + 100 * len(patterns.findall(r"[,.;?!]|\b(?:if|when|and|but|while|because|since|equals?|match(?:es)?|same)\b", between, re.I))
    if base is not None and base.start > asks:
        known = min(facts, key=lambda f: apart(f, base))
    elif all(f.start > asks for f in facts) and patterns.search(r"\b(?:if|when)\b", query.text[facts[0].end : facts[1].start], re.I):
        known = facts[1]
    else:
        return facts
    return [known, *(f for f in facts if f is not known)]


_ASKS_FULL = Pattern(r"how many\b[^?]{0,12}\bfull")


def _powers(query: Query, facts: list[Fact]) -> list[float]:
    """The power of the pops that were told of, and of those asked for; a full one is not always said."""
    lower = query.text.lower()
    partial = list({f.value: f for f in facts if f.value < 1}.values())
    if not partial:
        return []
    base = popped(query)
    if len(partial) == 1 and len(facts) == 2 and base is not None and all(f.origin == "said" for f in facts):
        return [f.value for f in _asked_last(query, facts)]
    if len(partial) == 1:
        return [partial[0].value, 1.0] if _ASKS_FULL.search(lower) else [1.0, partial[0].value]
    asked = min(partial, key=lambda f: (f.start < lower.find("how many"), abs(f.start - lower.find("how many"))))
    return [next(f.value for f in partial if f is not asked), asked.value]


# --- what they add up to ----------------------------------------------------------------------------


_ONE_OF_THEM = Pattern(r"\b(?:what|how much|which)\b[^.,;\d]{0,24}\b(?:a single|just one|only one|one|each)(?: (?:one|of them|alone|by itself|pop|flash|burst|hit))*(?: (?:be|give|make|read|do|on its own|worth|good for|by itself))*\W*$", re.I)
"""The light of one, where that of all is told."""


def _adds_to(query: Query) -> Solution | None:
    """n pops of f/4 each: f/4 times the square root of n."""
    pops, stops = popped(query), query.all("aperture")
    if pops is None or pops.unit != "pops" or len(stops) != 1 or query.has("guide_number") or len(query.all("distance")) > 1 or query.has("energy") or stops[0].cue == "want":
        return None
    if len(query.all("film_speed")) > 1 or len([p for p in query.all("power") if p.value != 1]) > 0 and len(query.all("power")) > 1:
        return None
    bases = [f for f in query.facts if f.quantity == "count" and f.unit in POP_WORDS and f.value != pops.value]
    before = bases[0].value if bases and bases[0].start < pops.start else 1.0
    heads = pop_heads.heads(query)
    if heads is not None:
        alone = bool(query.cues & {"each", "one_light"}) or any(f.value == 1 and f.unit in ("flashes", "heads") for f in query.all("count"))
        if not alone or before != 1.0:
            return None
        all_light = pops.value * heads.value
        return Solution(answers=(marks.aperture(times_the_light(stops[0].value, all_light)), Quantity("stops", math.log2(all_light), "stops")), used=(stops[0], pops, *query.all("count")), topic="time", working=(f"{pops.value:g} pops of {heads.value:g} heads",))
    if before == 1.0 and _ONE_OF_THEM.search(query.text):
        return Solution(answers=(marks.aperture(times_the_light(stops[0].value, 1 / pops.value)),), used=(stops[0], pops), topic="time", working=(f"{pops.value:g} pops are {math.log2(pops.value):.3g} stops more than one",))
    value = times_the_light(stops[0].value, pops.value / before)
    gained = math.log2(pops.value / before)
    return Solution(answers=(marks.aperture(value), Quantity("stops", gained, "stops")), used=(stops[0], *(c for c in query.all("count") if c.unit in POP_WORDS), *query.all("modifier")), topic="time",
                    working=(f"{pops.value:g} pops are {gained:.3g} stops more than {'one' if before == 1 else format(before, 'g')}",),
                    notes=("The light of the pops adds; anything that moves between them will show.",))
