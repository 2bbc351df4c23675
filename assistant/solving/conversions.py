"""Conversions: guide numbers, film speeds, powers; stops, factors, watt-seconds; differences of marks.

One table: what is asked, what is given, how. The first row whose givens are there answers.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence

from assistant import patterns, scales
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import flash_and_time, guide_by_time, marks, reach
from assistant.solving.lights import guide_unit
from assistant.solving.placing import times_as_far
from assistant.solving.pop_facts import own
from assistant.solving.relations import readings_named
from assistant.solving.solution import Solution, needs
from assistant.solving.taken_off import ORDINARY_ASKED, is_taken_off
from assistant.solving.two_readings import named
from assistant.units import LENGTH

Row = Callable[[Query, Ask], "Solution | None"]


def solve(query: Query) -> Solution | None:
    """A conversion, or None."""
    for ask in query.asks:
        for row in ROWS.get(ask.quantity, ()):
            found = row(query, ask)
            if found:
                return found
    return None


def _done(answer: Quantity, *used: Fact, notes: tuple[str, ...] = (), working: tuple[str, ...] = ()) -> Solution:
    return Solution(answers=(answer,), used=used, notes=notes, working=working, topic="conversions")


_WHICH_BRIGHTER = Pattern(r"\bwhich\b[^?]{0,24}\b(?P<way>brighter|stronger|darker|weaker|dimmer)\b", re.I)


def _which_reads_more(query: Query, ask: Ask) -> Solution | None:
    """"one reads f/5.6, the other f/8: which is the brighter, and by how much": the larger f-number was read in more light."""
    asked, read = _WHICH_BRIGHTER.search(query.text), readings_named(query).all("aperture")
    if asked is None or len(read) != 2 or any(query.has(q) for q in ("guide_number", "distance", "shutter", "film_speed")):
        return None
    apart = abs(scales.aperture_difference_stops(read[0].value, read[1].value))
    more = asked["way"].lower() in ("brighter", "stronger")
    one = (max if more else min)(read, key=lambda f: f.value)
    return _done(marks.stops(apart if more else -apart, one.of or named([one], [f for f in read if f is not one], query.text) or None), *query.all("aperture"), notes=(f"What reads f/{one.value:g} is the {asked['way'].lower()}.",))


# --- guide number ------------------------------------------------------------------------------


_WHAT_IS = Pattern(r"\bwhat(?:'s|s| is| does| would| will)?(?: be)? (?:a |my |the |an? )?$")


_BECOMES = Pattern(r"\b(?:becomes?|turns? into|chang\w+ to|drops? to|rises? to|goes? (?:up|down)? ?to|be (?:on|at|with|for))\b", re.I)
"""A guide number that is to be found from another one."""


def _guide(query: Query, ask: Ask) -> Solution | None:
    """A guide number at another film speed or power, or in the other unit."""
    guides = query.all("guide_number")
    lengths = query.all("distance")
    if not guides and len(lengths) == 1 and not query.has("aperture") and (query.has("film_speed") or query.has("power")):
        fact = lengths[0]
        unit = "m" if fact.unit in ("m", "cm") else "ft"
        guides = [replace(fact, quantity="guide_number", value=fact.value / LENGTH[unit], unit=unit)]
        query = query.with_facts(tuple(f for f in query.facts if f is not fact) + (guides[0],))
    if not guides and not lengths and not query.has("aperture") and (_BECOMES.search(query.text) or query.facts and {f.quantity for f in query.facts} <= {"film_speed", "power", "loss", "modifier", "place", "remark"}):
        return needs(("guide_number",), "I need the guide number that it has now, and what that is for.", tuple(query.all("film_speed")), "conversions")
    if len(guides) != 1 or query.has("distance") or query.has("aperture") or query.has("count") or query.has("ratio"):
        return None
    fact = guides[0]
    if (of_energy := _guide_of_energy(query, fact)) is not None:
        return of_energy
    if (shorter := guide_by_time.at_the_time(query, fact)) is not None:
        return shorter
    unit, _ = guide_unit(query, fact, "" if ask.unit else "")
    wanted = ask.unit or next((u for u in query.units if not u.startswith("not")), "") or unit
    wanted = "m" if wanted in ("m", "cm") else "ft"
    wished = not (query.has("film_speed") or query.has("power")) and _WHAT_IS.search(query.text[: fact.start].lower()) is not None
    if wished:  # "what is guide number 50 at ISO 400": the condition is what is asked for
        extra = [Fact(q, v, start=fact.start, end=fact.end, said=fact.said) for q, v in (("film_speed", fact.at_iso), ("power", fact.at_power)) if v]
        query, fact = query.with_facts((*(f for f in query.facts if f is not fact), *extra)), replace(fact, at_iso=None, at_power=None)
    push = query.last("push")
    if push is not None and len(query.all("film_speed")) == 1:
        rated = query.all("film_speed")[0]
        query = query.with_facts(replace(f, value=f.value * 2.0**push.value) if f is rated else f for f in query.facts)
    speeds, powers = query.all("film_speed"), [f for f in query.facts if f.quantity in ("power", "power_down")]
    losses = query.all("loss")
    iso_from, iso_to = _pair(fact.at_iso, [f.value for f in speeds], 100.0)
    power_from, power_to = _pair(fact.at_power, [_strength(f) for f in powers], 1.0)
    left = 2.0 ** (sum(f.value for f in losses) * (1 if losses and (is_taken_off(query.text, fact) or "hss" in query.cues and ORDINARY_ASKED.search(query.text)) else -1))  # told with it on, and asked without
    value = fact.value * math.sqrt(iso_to / iso_from * power_to / power_from * left) * LENGTH[unit] / LENGTH[wanted]
    return _done(marks.guide_number(value, wanted, iso_to, None if power_to == 1.0 else power_to), fact, *speeds, *powers, *losses, *((push,) if push else ()))


def _guide_of_energy(query: Query, fact: Fact) -> Solution | None:
    """"guide number 64 m at all of its 800 Ws: with 200 Ws?": it goes with the square root of the energy."""
    parts = query.all("energy")
    if len(parts) != 2 or min(f.value for f in parts) <= 0 or not {f.quantity for f in query.facts} <= {"guide_number", "energy", "remark", "place"}:
        return None
    base = own(fact, parts, query.text)
    other = parts[1] if base is parts[0] else parts[0]
    value = fact.value * math.sqrt(other.value / base.value)
    return _done(marks.guide_number(value, guide_unit(query, fact, "")[0]), fact, *parts, notes=("A guide number goes with the square root of the energy.",))


_TRIED = Pattern(r"\b(?:real|true|actual|effective|proper|tested|test|tests|own|working)\b", re.I)


def _guide_by_test(query: Query, ask: Ask) -> Solution | None:
    """"rated 110, the negatives came out a stop thin": the guide number that the test tells."""
    guides = query.all("guide_number")
    off = [f for f in query.facts if f.quantity in ("stops", "relation") and f.cue in ("less", "more") and not f.of]
    if len(guides) != 1 or len(off) != 1 or not _TRIED.search(query.text) or query.has("distance") or query.has("aperture"):
        return None
    stops = abs(off[0].value) * (1 if off[0].cue == "more" else -1)
    unit, _ = guide_unit(query, guides[0], "")
    value = marks.guide_number(guides[0].value * 2.0 ** (stops / 2), unit, guides[0].at_iso or 100.0, guides[0].at_power)
    return _done(value, guides[0], off[0], notes=("A guide number goes with the square root of the light.",))


def _strength(fact: Fact) -> float:
    return fact.value if fact.quantity == "power" else 2.0 ** -fact.value


def _pair(quoted: float | None, said: list[float], default: float) -> tuple[float, float]:
    """The condition a number was quoted for and the one it is wanted for."""
    if quoted is not None:
        return quoted, said[-1] if said else default
    if len(said) >= 2:
        return said[0], said[-1]
    return default, said[0] if said else default


# --- stops ---------------------------------------------------------------------------------------


def _stops_from_marks(query: Query, ask: Ask) -> Solution | None:
    """Stops between two marks of one scale."""
    unmoved = flash_and_time.unmoved(query)
    if unmoved is not None:
        return unmoved
    rows: tuple[tuple[str, Callable[[float, float], float]], ...] = (
        *((q, scales.DIFFERENCE_STOPS[q]) for q in ("aperture", "shutter", "film_speed")), ("energy", lambda a, b: math.log2(b / a)),
        ("power", lambda a, b: math.log2(b / a)), ("guide_number", lambda a, b: 2 * math.log2(b / a)),
        ("exposure_value", lambda a, b: b - a), ("count", lambda a, b: math.log2(b / a)), ("time", lambda a, b: math.log2(b / a)),
    )
    for quantity, between in rows:
        facts = _two_of(query.all(quantity))
        if quantity == "energy" and len(facts) == 2 and query.has("count") and all(f.value == 2 for f in query.all("count")):
            return _done(marks.stops(abs(between(facts[0].value, facts[1].value))), *facts, *query.all("count"))
        if quantity == "power" and len(facts) == 2 and facts[0].value == facts[1].value and not patterns.search(r"\b(?:from|between|than|as)\b", query.text.lower()):
            return None  # said again, or taken twice
        if quantity == "power" and len(facts) == 2 and any(f.unit == "full" for f in facts):
            if not patterns.search(r"\b(?:from|between)\s+(?:a\s+)?$", query.text[: facts[0].start].lower()):
                facts = sorted(facts, key=lambda f: f.unit != "full")
        if len(facts) == 2 and patterns.search(r"\b(?:faster|quicker|slower|brighter|stronger|more|less|weaker|over)\b.*\b(?:than|compared (?:to|with)|next to|versus)\b", query.text.lower()):
            needs_light = quantity == "film_speed" and patterns.search(r"\bneeds?\b|\bwants?\b", query.text.lower()) is not None and not _BY_SPEED.search(query.text)
            value = between(facts[1].value, facts[0].value)
            if quantity == "film_speed" and _ASKED_OF_FILM.search(query.text[facts[1].end :]):
                value = -abs(value) if "slower" in query.text[facts[1].end :].lower() else abs(value)  # both told before: "how many stops faster is mine?"
            return _done(marks.stops(-value if needs_light else value), *facts)
        if len(facts) == 2:
            first, second = facts if not patterns.search(r"\b(?:instead of|rather than)\b", query.text[facts[0].end : facts[1].start].lower()) else facts[::-1]
            needed = quantity == "shutter" and patterns.search(r"\b(?:needs?|wants?|asks? for|calls? for|takes?|(?:is|was|be) right|require\w*|metered|meters?|reads?)\b[^.?]{0,24}$", query.text[: second.start].lower())
            if needed and query.cues & {"less", "more"} and "ambient" in query.cues:
                return _done(marks.stops(between(second.value, first.value), "ambient"), *facts)
            value = between(first.value, second.value)
            return _done(marks.stops(_as_asked(value, query, quantity)), *query.all(quantity))
    pair = query.first("aperture_range")
    if pair:
        goal = query.last("aperture")
        ends = (pair.other, pair.value) if goal and goal.value == pair.value else (pair.value, pair.other)
        return _done(marks.stops(_as_asked(scales.aperture_difference_stops(*ends), query, "aperture")), pair, *((goal,) if goal and goal.value in ends else ()))
    return None


def _two_of(facts: Sequence[Fact]) -> list[Fact]:
    """Two marks of which one was said again, the one gone to last: "between 1/60 and 1/500? going to 1/500"."""
    if len(facts) != 3 or facts[0].value == facts[1].value or facts[2].value not in (facts[0].value, facts[1].value):
        return list(facts)
    return [facts[1], facts[0]] if facts[2].value == facts[0].value else [facts[0], facts[1]]


_OVER = Pattern(r"\bhow (?:much|far|many stops) (?:over|above|brighter|hotter)\b(?! (?:f/?\d|iso))", re.I)
_FEWER = Pattern(r"\bhow (?:much|far|many stops) (?:under|below|darker|dimmer|weaker)\b(?! (?:f/?\d|iso))|\bstops? (?:slower|weaker|dimmer|darker|under|below)\b(?! (?:f/?\d|iso))", re.I)
_ASKED_OF_FILM = Pattern(r"\bhow (?:many stops|much) (?:faster|quicker|slower)\b", re.I)
_BY_SPEED = Pattern(r"\bstops? (?:faster|quicker|slower)\b|\b(?:faster|quicker|slower)\b[^.?!]*\bstops\b", re.I)
"""It is compared by how fast it is, whatever is wanted besides."""
_FASTER = Pattern(r"\bhow many stops (?:faster|quicker)\b", re.I)
_THING_TAKES = Pattern(r"\bhow (?:many stops|much)\b[^?.]*\b(?:does|do|did|is|was|has|will)\b(?! i\b)[^?.]*\b(?:tak|cost|eat|los|steal|swallow|rob|absorb)\w*", re.I)
"""What a thing takes, told by what had to be added for it."""
_THING_COSTS = Pattern(r"\b(?:how (?:many stops|much)|what) (?:of it |light )?(?:does|do|did|is|are|was|will|has) (?:that |this |the |my |its |it|they)[^?.]{0,24}?(?:cost|eat|los|steal|swallow|rob|absorb|tak\w* (?:off|away|from me|me))\w*", re.I)
_WENT_IN = Pattern(r"\bhow many stops (?:went|go|(?:were|was|are|is|got|get) (?:lost|eaten|swallowed|taken)|disappear(?:ed)?|did i lose|do i lose)\b", re.I)
"""A loss is a negative number of stops."""


def _as_asked(value: float, query: Query, quantity: str) -> float:
    """The sign that was asked for: more, brighter and opening up are positive."""
    if quantity == "aperture" and "loss" in query.cues and query.has("modifier") and _THING_COSTS.search(query.text):
        return -abs(value)  # read without it and with it
    if quantity in ("film_speed", "aperture") and _FEWER.search(query.text) or quantity == "aperture" and _WENT_IN.search(query.text) or quantity in ("power", "energy", "guide_number") and _THING_TAKES.search(query.text):
        return -abs(value)
    if quantity == "aperture" and _OVER.search(query.text) or quantity == "film_speed" and _FASTER.search(query.text):
        return abs(value)
    if quantity == "shutter" and not query.cues & {"more"}:
        return value  # a shutter that is open is no lens opened up
    if query.cues & {"more", "open_up"} and not query.cues & {"less", "close_down"}:
        return abs(value) if quantity in ("energy", "power", "guide_number", "count") or "open_up" in query.cues else value
    if query.cues & {"less", "loss"} and quantity in ("energy", "power", "guide_number"):
        return -abs(value)
    return value


_EFFECT = Pattern(r"\bdo to\b|\bto (?:my|the) exposure\b|\bdark(?:en|ens|er)\b|\b(?:lose|losing|loses|lost|costs? (?:me|us))\b|\bhow (?:many stops|much)\b[^.?]{0,36}\bdown\b|\bstops? (?:does|do|will|would|did)\b(?:[^.?]|\.(?=\d)){0,50}\b(?:dim|weaken|reduce|(?:bring|knock|take|pull)(?= [^.?]{1,24} (?:down|back)\b)) (?:my |the |all |its |that )*(?:flash|light|exposure|sun|daylight|room|strobe)\b|\bhow much (?:does|will|would) (?:[^.?]|\.(?=\d)){1,50}\b(?:dim|weaken|reduce) (?:my |the )?(?:flash|light|exposure|sun|daylight|room|strobe)\b")
_LIGHT_TAKEN = Pattern(r"\bhow much (?:of the |of my )?(?:light|exposure|flash),?(?: in stops,?)? (?:does|do|will|did|would|is)\b[^?.]*\b(?:tak|cost|eat|lost|lose|steal|swallow|rob|absorb|cut|hold|stop)\w*|\bwhat (?:does|will|would) (?:it|that|this|the (?:nd|filter))[^?.]{0,12} (?:tak|rob|steal)\w* (?:off|from|away)|\bhow many stops (?:does|do|will|would) (?:it|that|this|the (?:nd|filter|gel|sheet)) (?:take|rob|steal|hold|keep) (?:off|away from|from|back from) (?:my|the) (?:flash|light|exposure|lamp)", re.I)
_TAKES_AWAY = Pattern(r"\b(?:takes?|taking|steals?|robs?) (?:it |that |this |me |us |the \w+ )?(?:away|off|from|of)\b|\bhow many stops (?:does|do|will) [^?.]{1,30} (?:take|steal|rob|eat|swallow|absorb|cost)\W*$", re.I)
"""An ND's strength is sold as a positive number; what it takes from the light is a negative one (contract 32)."""


def _stops_from_one(query: Query, ask: Ask) -> Solution | None:
    rows: tuple[tuple[str, Callable[[Fact], float]], ...] = (
        ("power", lambda f: math.log2(f.value)), ("nd", lambda f: f.value), ("factor", lambda f: math.log2(f.value)),
        ("times", lambda f: math.log2(f.value)), ("count", lambda f: math.log2(f.value)),
    )
    for quantity, convert in rows:
        facts = query.all(quantity)
        if quantity == "factor" and len(facts) > 1:
            return _done(marks.stops(sum(math.log2(f.value) for f in facts)), *facts)
        if quantity == "nd" and facts and (_EFFECT.search(query.text.lower()) or _LIGHT_TAKEN.search(query.text)):
            return _done(marks.stops(-facts[-1].value), facts[-1])
        if quantity == "power" and len(facts) > 1 and patterns.search(r"\b(?:again|another|then|each)\b", query.text.lower()):
            return None
        if facts and facts[-1].value > 0:
            costs = quantity == "factor" and ("loss" in query.cues and not query.cues & {"open_up", "more"} or _TAKES_AWAY.search(query.text) is not None)
            return _done(marks.stops(-convert(facts[-1]) if costs else convert(facts[-1])), facts[-1])
    return None


def _bellows_unknown(query: Query, ask: Ask) -> Solution | None:
    """What a bellows costs, with nothing said of how far it is out."""
    if "extension" not in query.cues or query.has("guide_number") or query.has("magnification") or query.has("factor"):
        return None
    lacking = tuple(q for q in ("extension", "focal_length") if not query.has(q))
    if not lacking:
        return None
    wanted = lacking if lacking == ("focal_length",) else ("magnification", *lacking)
    said = {2: "how far the lens is out and its focal length, or the magnification", 1: "the focal length" if lacking == ("focal_length",) else "the magnification, or how far the lens is out"}
    return needs(wanted, f"I need {said[len(lacking)]}.",
                 tuple(f for f in query.facts if f.quantity in ("extension", "focal_length")), "conversions")


def _stops_from_ratio(query: Query, ask: Ask) -> Solution | None:
    """How far under the key the fill lies for a ratio (contract 7)."""
    ratio = query.last("ratio")
    if ratio is None or query.has("distance") or query.has("aperture") or ratio.value == 1:
        return None
    from assistant.solving.conventions import is_key_to_fill

    wide = max(ratio.value, 1 / ratio.value)
    stops = math.log2(wide) if is_key_to_fill(query) else math.log2(wide - 1) if wide > 1 else 0.0
    named = "key to fill, each read alone" if is_key_to_fill(query) else "(key + fill) to fill"
    return replace(_done(marks.stops(-stops, "fill"), ratio, notes=(f"Counted as {named}.",)), lead="The fill is darker")


# --- factor, power, film speed ---------------------------------------------------------------------


def _factor(query: Query, ask: Ask) -> Solution | None:
    grown = reach.times_as_far(query, ask) or _guide_grows(query)
    if grown is not None:
        return grown
    stops = next((f for f in query.facts if f.quantity in ("stops", "nd", "filter_loss", "loss", "signed")), None)
    if stops is None:
        compared = _times_compared(query)
        if compared is not None:
            return compared
        several = query.all("factor") or query.all("times")
        if len(several) > 1:
            return _done(Quantity("factor", math.prod(f.value for f in several), "x"), *several)
        return None
    sign = -1 if stops.unit == "-" or stops.cue == "less" else 1
    value = 2.0 ** (stops.value if stops.quantity in ("nd", "filter_loss", "loss") else sign * abs(stops.value))
    return _done(Quantity("factor", value, "x"), stops)


_GUIDE_ASKED = Pattern(r"\b(?:guide ?(?:numbers?|nos?)?|gns?)\b(?! ?\d)", re.I)


def _guide_grows(query: Query) -> Solution | None:
    """"Doubling the film speed multiplies the guide number by how much?": by the root of what the light is multiplied by."""
    if query.has("guide_number") or query.has("distance") or query.has("aperture") or _GUIDE_ASKED.search(query.text) is None:
        return None
    from assistant.solving.claim_rules import WEIGHTS
    from assistant.solving.claim_words import terms

    pair = next((p for p in (query.all("film_speed"), query.all("power")) if len(p) == 2 and p[0].value > 0), None)
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd", "stops", "signed", "power_down", "relation")]
    if lost and not pair:
        more = lost[0].quantity in ("stops", "signed", "relation") and lost[0].cue != "less" and lost[0].unit != "-" and not query.cues & {"less", "loss", "down"}
        doublings = lost[0].value if more else -sum(abs(f.value) for f in lost)
    elif pair:
        first, second = reversed(pair) if patterns.search(r"\bthan\b|\bcompared\b", query.text.lower()) else pair
        doublings = math.log2(second.value / first.value)
    else:
        causes = [t for t in terms(query.text) if t.doublings and t.quantity in ("film_speed", "power", "count", "stops")]
        if len(causes) != 1:
            return None
        doublings = causes[0].doublings * WEIGHTS["flash"].get(causes[0].quantity, 1.0)
    used = pair or lost or [f for f in query.facts if f.quantity in ("times", "power", "count", "factor")]
    return _done(marks.factor(doublings / 2), *used, notes=("The guide number goes with the square root of the light.",))


def _times_compared(query: Query) -> Solution | None:
    """"How many times more light does ISO 50 need than ISO 400", "twice the distance: how many times the power"."""
    speeds, times = query.all("film_speed"), times_as_far(query)
    if any(query.has(q) for q in ("guide_number", "aperture", "shutter", "power", "distance")):
        return None
    if len(speeds) == 2 and speeds[0].value > 0 and speeds[1].value > 0:
        faster = patterns.search(r"\b(?:faster|more sensitive|quicker)\b|\bas (?:fast|sensitive|quick)\b", query.text.lower())
        value = speeds[0].value / speeds[1].value if faster else speeds[1].value / speeds[0].value
        return _done(Quantity("factor", value, "x"), *speeds, notes=("Half the film speed needs twice the light.",))
    if times is not None and not speeds:
        back = not patterns.search(r"need|keep|hold|same|power|output|more|compensat|make up|must|energy|joules|ws\b", query.text.lower()) or bool(patterns.search(r"how (?:much|many times) (?:less|dimmer|darker|weaker)|\bleft\b|falls? to", query.text.lower()))
        return _done(Quantity("factor", times**-2 if back else times**2, "x"), *query.all("times"), notes=("Light falls with the square of the distance.",))
    return None


_STOPS_WANTED = Pattern(r"\b(?:more|further|extra|another)\b", re.I)
_TAKEN_DOWN = Pattern(r"\s*(?:down|less|off|under|darker|dimmer|lower|weaker)\b", re.I)
_TOO_DARK = Pattern(r"\b(?:too (?:dark|thin|little|weak)|underexposed|short)\b", re.I)
"""After stops that are to be made up: "at half power it's a stop too dark"."""


def _power(query: Query, ask: Ask) -> Solution | None:
    """So many stops down from full, or watt-seconds of watt-seconds, as a fraction of full."""
    if query.has("guide_number") or query.has("distance"):
        return None
    down = next((f for f in query.facts if f.quantity in ("power_down", "stops", "signed", "loss")), None)
    energies = query.all("energy")
    if len(energies) == 2:
        return _done(marks.power(min(e.value for e in energies) / max(e.value for e in energies)), *energies)
    if down is None or query.has("aperture"):
        return None
    base = query.last("power")
    start = base.value if base else 1.0
    after = query.text[down.end :]
    wanted = _STOPS_WANTED.search(down.said) and not _TAKEN_DOWN.match(after) or base is not None and _TOO_DARK.search(down.said + after[:16])
    sign = 1 if down.cue == "more" or down.unit == "+" or wanted else -1
    value = start * 2.0 ** (sign * abs(down.value))
    return _done(marks.power(value), down, *((base,) if base else ()))


def _film_speed(query: Query, ask: Ask) -> Solution | None:
    said = query.last("film_speed")
    if said is None and query.has("push") and not query.has("guide_number"):
        return needs(("film_speed",), "I need the box speed of the film.", tuple(query.all("push")), "conversions")
    if said is None or query.has("guide_number") or query.has("aperture") or query.has("distance"):
        return None
    push = query.last("push")
    moved = next((f for f in query.facts if f.quantity in ("stops", "signed")), None)
    if push:
        return _done(marks.film_speed(said.value * 2**push.value), said, push)
    if moved and (moved.cue or moved.unit in ("+", "-")):
        text = query.text.lower()
        over = (moved.cue == "more" or moved.unit == "+" or "slower" in text) and "faster" not in text
        return _done(marks.film_speed(said.value * 2 ** (-abs(moved.value) if over else abs(moved.value))), said, moved)
    return _done(marks.film_speed(said.value), said) if said.unit == "DIN" else None


def _distance(query: Query, ask: Ask) -> Solution | None:
    """A length in another unit."""
    lengths = query.all("distance")
    if len(lengths) == 1 and (ask.unit or query.units) and not query.has("aperture") and not query.has("guide_number"):
        return _done(marks.distance(lengths[0].value, ask.unit or query.units[-1]), lengths[0])
    return None


ROWS: dict[str, tuple[Row, ...]] = {
    "guide_number": (_guide_by_test, _guide),
    "stops": (_which_reads_more, _stops_from_marks, _stops_from_one, _stops_from_ratio, _bellows_unknown),
    "factor": (_factor, _bellows_unknown),
    "power": (_power,),
    "film_speed": (_film_speed,),
    "distance": (_distance,),
}
