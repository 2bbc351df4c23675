"""Losses by themselves: measured before and after, added up, and taken off a known good aperture."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns, scales
from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.ambient import aperture_after, factor_from_stops
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import camera, close_power, high_speed, marks, power_restored, t_stops, two_guides
from assistant.solving.lights import TYPICAL_LOSS, typical_words
from assistant.solving.solution import Solution, needs
from assistant.solving.taken_off import WITH_ONLY, WITHOUT, back_to_infinity, is_taken_off, stays_alone
from assistant.solving.turned_down import turned_down
from assistant.solving.worn import AFTER, BEFORE, in_place_of_another
from assistant.solving.worn import worn as worn_when

_COSTS = Pattern(r"\b(?:cost|costs|costing|lose|losing|loses|lost|loss|eat|eats|eating|ate|take|takes|taking|steal|steals|rob|robs|swallow|soak|soaks|drop|drops|eaten|absorb|absorbs|knock|knocks|thr[eo]w|wast|disappear|vanish|go(?:es)? missing|consum|forfeit|sacrific|use[sd]? up|keeps? back|gone\b|given (?:up|away)|giv\w+ (?:up|away))", re.I)


def route(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None:
    """The query without the sizes of modifiers, and what to say of one nearer than its own size."""
    sizes = query.all("size")
    if not sizes:
        return high_speed.with_its_loss(query)
    plainer = query.with_facts(f for f in query.facts if f.quantity != "size")
    nearest = min((f.value for f in query.facts if f.quantity == "distance" and f.of not in ("camera", "backdrop")), default=math.inf)
    largest = max(f.value for f in sizes)
    note = "The light is nearer than its own size: it falls off slower than the inverse square law says, so make a test." if nearest <= largest else \
        "The size of the modifier alters softness, not this sum." if nearest > 2 * largest else "At less than twice its own size a large source falls off a little slower than the inverse square law."
    return plainer, tuple(sizes), (note,)


def solve(query: Query) -> Solution | None:
    """What something in the way costs, or the aperture once it is there; None for anything else."""
    if camera.time_through(query) and (found := _time_through(query)) is not None:
        return found
    wanted = [a for a in query.asks if a.quantity in ("stops", "factor", "aperture", "power", "energy")]
    if not wanted:
        return None
    if (close := close_power.solve(query)) is not None:
        return close
    for topic in (_as_read_bare, power_restored.solve, t_stops.solve, two_guides.solve, _guide_fell, _should_have_been, _measured, _added_up, _after, _made_up, _power_untold):
        found = topic(query, wanted[0])
        if found is not None:
            return found
    return None


_READ = frozenset({"aperture", "camera_distance", "camera_filter", "remark", "place", "film_speed", "shutter", "preferred_unit"})


def _as_read_bare(query: Query, ask: Ask) -> Solution | None:
    """"and with nothing on?", after a filter over what read f/11: f/11."""
    read = [f for f in query.facts if f.quantity == "aperture" and f.origin == "kept" and not f.of]
    bare = [f for f in query.facts if f.quantity == "camera_filter" and f.unit == "BARE" and f.origin == "said"]
    stays = [f for f in query.facts if f.quantity in ("distance", "power") and f.origin == "kept" and not f.of]  # where the light stands since it was read
    there = stays if len({f.quantity for f in stays}) == len(stays) else []
    if ask.quantity != "aperture" or len(read) != 1 or not bare or not {f.quantity for f in query.facts if f.origin != "kit" and f not in there} <= _READ or any(f.unit != "BARE" for f in query.all("camera_filter")):
        return None
    return Solution(answers=(marks.aperture(read[0].value),), used=(read[0], *bare, *there), topic="losses", notes=("That is what was read with nothing in the light.",))


def _time_through(query: Query) -> Solution | None:
    """A shutter time that was right without the filter, with it on: so many doublings longer."""
    times = [f for f in query.facts if f.quantity in ("shutter", "duration", "time") and f.value > 0]
    through, facts, _ = camera.loss_total(query)
    close = (query.has("magnification") or query.has("extension")) and len(query.all("aperture")) == 1  # "2 s at f/16, life size": the same opening
    if len(times) != 1 or not through or query.has("aperture") and not close or any(query.has(q) for q in ("guide_number", "exposure_value", "velocity", "film_speed", "t_exponent", "exponent")):
        return None
    taken_off = _WITHOUT_AT_LAST.search(query.text) is not None or is_taken_off(query.text, times[0]) and not WITHOUT.search(query.text)
    value = times[0].value * factor_from_stops(-through if taken_off else through)
    notes = ("Over a second or so film needs longer still: see the maker's reciprocity table.",) if value > 1 else ()
    return Solution(answers=(marks.shutter(value), Quantity("stops", math.log2(value / times[0].value), "stops")), used=(times[0], *facts), assumed=camera.assumed(query), topic="losses", working=(f"{through:.3g} stops are {factor_from_stops(through):.4g} times",), notes=notes)


_WITHOUT_AT_LAST = Pattern(r"\b(?:without|bare|with(?:out)? it off|taken off|off)(?: it| the (?:filter|nd ?[\d.]*|polari[sz]er|glass|gel))?\W*$", re.I)
"""What is asked is the time with nothing on: "with it on it's 1/60. without?"."""
_THROUGH = Pattern(r"\bthrough (?:a |the |my |some |this |that )?(?!the lens|the viewfinder|(?:[a-z]+ ){0,2}(?:windows?|door(?:way)?s?|arch(?:way)?|gate|hatch)\b)[a-z]+|\b(?:putting|adding|hanging|taping) |\bin front of the (?:light|head|flash|lens|lamp)\b", re.I)


def _measured(query: Query, ask: Ask) -> Solution | None:
    """Readings without and with it, nothing moved: the marks between them, lost."""
    if ask.quantity not in ("stops", "factor"):
        return None
    read = [f for f in query.all("aperture") if f.of in ("", "ambient")]
    span = query.last("aperture_range")
    if span and not read:
        read = [replace(span, quantity="aperture"), replace(span, quantity="aperture", value=span.other)]
    something = [f for f in query.facts if f.quantity in ("modifier", "camera_filter")] or query.cues & {"ceiling", "wall", "bounce", "hss", "zoom"}
    if "more" in query.cues and not query.has("modifier") and not query.has("camera_filter") or len(query.all("shutter")) > 1 or len(read) != 2 or not (something or _THROUGH.search(query.text)) or query.has("guide_number") or query.has("loss"):
        return None
    if not (_COSTS.search(query.text) or query.cues & {"loss", "how_much", "how_many"} or any(f.unit == "BARE" for f in query.all("camera_filter"))):
        return None
    lost = abs(scales.aperture_difference_stops(read[0].value, read[1].value))
    stood = query.all("distance") if len({f.value for f in query.all("distance")}) == 1 else []  # both read from one place
    return _told(query, ask, lost, (*read, *stood, *query.all("power"), *query.all("zoom"), *((span,) if span else ())))


_CAME_OUT = Pattern(r"\b(?:came (?:out|back)|come out|turned out|were|was|are|is|all|look(?:s|ed)?|ended up|got|printed|read) (?:about |roughly |just |all |too |easily )*$", re.I)
_FAILED = Pattern(r"\s*(?:of a stop )?(?:too )?(?P<way>thin|under\w*|dark|dense|over\w*|bright|light|hot|blown(?: out)?)\b(?! (?:the|my|key|her|his)\b)", re.I)
_SHOULD_HAVE = Pattern(r"\b(?:should|ought|supposed|meant|right|correct|instead|next time|fix|cure|reshoot|re-shoot|do it again|retake)\b", re.I)
_ON_FILM = Pattern(r"\b(?:negs?|negatives?|slides?|chromes?|transparenc\w+|trann(?:y|ies)|prints?|frames?|films?|rolls?|pictures?|shots?|polaroids?|everything|it|they)\b", re.I)


def _should_have_been(query: Query, ask: Ask) -> Solution | None:
    """"the negs came out a stop and a third thin at f/8, where should the lens have been": opened by as much, whatever stood in the light."""
    if ask.quantity != "aperture":
        return None
    told, known = query.all("stops"), query.all("aperture")
    if len(told) != 1 or len(known) != 1 or known[0].of or not _SHOULD_HAVE.search(query.text):
        return None
    if {f.quantity for f in query.facts} - {"stops", "aperture", "modifier", "camera_filter", "film_speed", "power", "distance"} or any(len(query.all(q)) > 1 for q in ("film_speed", "power", "distance")):
        return None
    failed = _FAILED.match(query.text[told[0].end :])
    if failed is None or not _CAME_OUT.search(query.text[max(0, told[0].start - 30) : told[0].start]) or not _ON_FILM.search(query.text[: told[0].start]):
        return None
    slide = patterns.search(r"\b(?:slides?|chromes?|transparenc\w+|trann\w+|prints?|pictures?)\b", query.text, re.I) is not None
    under = failed["way"].lower().startswith(("thin", "under", "dark")) if not failed["way"].lower().startswith("light") else not slide
    stops = abs(told[0].value) if under else -abs(told[0].value)
    value = aperture_after(known[0].value, -stops)
    note = f"{'Open up' if under else 'Close down'} {scales.speak_stops(abs(stops))} from f/{known[0].value:g}."
    return Solution(answers=(marks.aperture(value),), used=(known[0], told[0], *query.all("modifier"), *query.all("film_speed"), *query.all("power"), *query.all("distance")), topic="losses", notes=(note,))


_GUIDE_FELL = Pattern(r"\b(?:guide(?: number| no\.?)?|gn)\b[^.?!\d]{0,40}\bfrom\b|\bfrom (?:a )?(?:guide|gn)\b", re.I)


def _guide_fell(query: Query, ask: Ask) -> Solution | None:
    """"with the umbrella up my guide number falls from 110 to 60 feet": twice the logarithm, lost."""
    span = query.last("length_range") or query.last("number_range") if ask.quantity in ("stops", "factor") else None
    if span is None or len(query.facts) - len(query.all("modifier")) != 1 or not _GUIDE_FELL.search(query.text[: span.start + 5]) or not span.value > span.other > 0 or "zoom" in query.cues:
        return None
    return _told(query, ask, 2 * math.log2(span.value / span.other), (span,), ("A guide number goes with the square root of the light, so it counts twice.",))


def _told(query: Query, ask: Ask, lost: float, used: tuple[Fact, ...], notes: tuple[str, ...] = (), assumed: tuple[Assumed, ...] = ()) -> Solution:
    stops, factor = marks.stops(-lost), marks.factor(lost)
    answers = (factor, stops) if ask.quantity == "factor" else (stops, factor)
    lead = "" if ask.quantity == "factor" else "Lost"
    return Solution(answers=answers, used=used, topic="losses", notes=notes, assumed=assumed, lead=lead)


_DOES_TO = Pattern(r"\bdo(?:es)?\b[^?]*\bto (?:my|the) exposure\b|\bhow (?:much|many stops) (?:darker|less|down|under|dimmer)\b", re.I)


_TOGETHER = Pattern(r"\W*(?:together|altogether|in all|in total|between them|all told|combined)\b", re.I)
_COMPARED = Pattern(r"\bwhich (?:one )?(?:is|of (?:them|the two)|loses|costs|gives|(?:\w+ ){1,2}(?:more|less|most|least))\b|\bdifference\b|\bby how much\b|\b(?:brighter|darker|more|less)(?: light)? than (?:the other|with)\b|\bbetween (?:them|the two)\b", re.I)


_SHARED = Pattern(r"\b(?:cost|tak|los|eat|swallow|steal|absorb|rob|drink)\w*\b[^.?!]*\bbetween (?:them|the two)\b(?! differ)", re.I)
"""What both take together, and not how far they are apart."""
_LOSING = Pattern(r"\bhow many stops (?:do|does|will|would) (?:they|it|both|these|the \w+)(?: all| both)? take\b|\bhow (?:many|much)\b[^?.]*\b(?:losing|lose|lost|los(?:s|es)|cost\w*|swallow\w*|eat\w*|thr[eo]w\w*|wast\w*|gone|disappear\w*|vanish\w*|missing|consum\w+|forfeit\w*|sacrific\w+|giv\w+ (?:up|away))\b", re.I)


_ALL_DOWN = Pattern(r"\bhow (?:many|much)\b[^?.]*\b(?:down|los\w+|cost\w*|gone|altogether|in all|all told|in total|total)\b|\b(?:total|whole|overall|combined) loss\b", re.I)


def _told_by_the_way(query: Query) -> tuple[Fact, ...]:
    """"it was f/16 bare at ten feet if that matters, how many stops am I down altogether": one reading and its place, where losses are summed."""
    reading = query.all("aperture")
    summed = len(reading) == 1 and len(query.all("distance")) <= 1 and sum(f.quantity in ("loss", "filter_loss") for f in query.facts) >= 2
    return (*reading, *query.all("distance")) if summed and "BARE" in query.cues and _ALL_DOWN.search(query.text) else ()


def _added_up(query: Query, ask: Ask) -> Solution | None:
    """Several things in the way and nothing else asked: their losses added."""
    if ask.quantity not in ("stops", "factor") or in_place_of_another(query):
        return None
    by_the_way = _told_by_the_way(query)
    if query.has("guide_number") or query.has("aperture") and not by_the_way or query.has("aperture_range") or query.has("path") or query.has("distance") and not by_the_way:
        return None
    if (query.has("magnification") or query.has("extension")) and not any(query.has(q) for q in ("loss", "filter_loss", "factor", "nd")):
        return None  # the draw alone is optics
    said = [f for f in query.facts if f.quantity in ("loss", "filter_loss")]
    worn = [f for f in query.facts if f.quantity == "modifier" and f.unit not in {s.unit for s in said}]
    through, facts, _ = camera.loss_total(query)
    turned, by = turned_down(query) if _ALL_DOWN.search(query.text) else ((), 0.0)
    if len(turned) < sum(f.quantity in ("power", "power_down") for f in query.facts):
        return None
    typical = tuple(Assumed("stops", -_typical(f), "stops", typical_words(f.unit)) for f in worn) + camera.assumed(query)
    if turned:
        total = sum(f.value for f in said if f.quantity == "loss") + sum(_typical(f) for f in worn) + through + by
        return _told(query, ask, total, tuple(dict.fromkeys((*said, *worn, *facts, *turned))), ("Stops in a row add; factors multiply.",), typical) if said or worn or facts else None
    if _DOES_TO.search(query.text) and facts:
        return _told(query, ask, through, facts, (), camera.assumed(query))
    opens = "how_many" in query.cues and "open_up" in query.cues and (query.has("filter_loss") or query.has("nd")) and not query.has("times")
    if len(said) + len(worn) + len(facts) - sum(f in said for f in facts) < (1 if worn or opens or query.has("rows") or any(f.cue == "passed" for f in said) or patterns.search(r"\btotal\b|\baltogether\b|\bin all\b", query.text, re.I) else 2):
        return None
    if "how_many" in query.cues and query.cues & {"open_up", "more"} and not _LOSING.search(query.text) and not (_COMPARED.search(query.text) and not _SHARED.search(query.text)):
        total = sum(f.value for f in said if f.quantity == "loss") + sum(_typical(f) for f in worn) + through
        return Solution(answers=(marks.stops(total), marks.factor(total)), used=tuple(dict.fromkeys((*said, *worn, *facts))), assumed=typical, topic="losses")
    claimed = [f for f in said if _TOGETHER.match(query.text[f.end :])] if query.claim else []
    if len(claimed) == 1 and len(said) > 1 and not worn:
        added = sum(f.value for f in said if f is not claimed[0])
        holds = abs(added - claimed[0].value) < 1 / 6
        return Solution(lead=f"{'Yes' if holds else 'No'}. Together they lose {scales.speak_stops(added)}: stops in a row add.", answers=(Quantity("claim", holds), marks.stops(-added)), used=tuple(query.facts), topic="claims")
    compared = [f.value for f in said]
    if len(compared) == 2 and not worn and _COMPARED.search(query.text) and not _SHARED.search(query.text):
        apart = abs(compared[0] - compared[1])
        note = "The one that loses less is the brighter by so much." if apart else "They lose the same."
        return Solution(answers=_in_order(ask, marks.stops(apart), marks.factor(apart)), used=tuple(said), topic="losses", notes=(note,))
    total = sum(f.value for f in said if f.quantity == "loss") + sum(_typical(f) for f in worn) + through
    if not worn and _STRENGTH.search(query.text):
        return Solution(answers=_in_order(ask, marks.stops(total), marks.factor(total)), used=tuple(dict.fromkeys((*said, *facts, *query.all("rows")))), topic="losses")  # as it is sold, plus (contract 32)
    if not _COSTS.search(query.text) and not any(f.quantity == "loss" for f in said) and not patterns.search(r"(?<![\d/])[-−]\s?[\d.½]|\bminus\b", query.text):
        return Solution(answers=_in_order(ask, marks.stops(total), marks.factor(total)), used=tuple(dict.fromkeys((*said, *worn, *facts))), assumed=typical, topic="losses",
                        notes=("Stops in a row add; factors multiply.",))
    return _told(query, ask, total, tuple(dict.fromkeys((*said, *worn, *facts, *by_the_way))), ("Stops in a row add; factors multiply.",) if len(said) + len(worn) + len(facts) > 1 else (), typical)


_STRENGTH = Pattern(r"\bhow strong (?:is|are|must|should)\b|\bstrength (?:of|in)\b", re.I)


def _in_order(ask: Ask, stops: Quantity, factor: Quantity) -> tuple[Quantity, ...]:
    return (factor, stops) if ask.quantity == "factor" else (stops, factor)


def _typical(fact: Fact) -> float:
    return fact.value or TYPICAL_LOSS.get(fact.unit, (1.0, 1.0, 1.0))[1]


_ROUNDED = 0.2
"""Stops by which a loss that is quoted from memory may differ from the sum."""
_ALREADY_ON = Pattern(r"\s*(?:is |was |'s )?(?:already|in (?:place|position)|(?:is |was )?counted|included)\b", re.I)


def _of_the_draw(query: Query, lost: Fact) -> bool:
    """Whether a loss is the draw's own, said once more: "life size … you lose two stops that close"."""
    close = query.has("magnification") or query.has("extension") and query.has("focal_length")
    return close and not lost.unit and not any(query.has(q) for q in ("modifier", "camera_filter", "nd", "factor"))


_SHOT_AT = Pattern(r"\b(?:shot|shoot|exposed|took|taken|fired)\b[^.?!]{0,24}\b(?:at|on)\b", re.I)
"""The reading and where the lens then stood: "lit for f/8, and shot at f/8" is one value."""


_READ_TOGETHER = Pattern(r"\b(?:pair|heads|lights|lamps|flashes|guns|strobes|both|two|three|four)(?: of them)?(?: together)? (?:meters?|reads?|gives?|measures?)\b|\b(?:together|between them)\b", re.I)
"""One reading of all the flashes that are told: how many they are changes nothing."""


def _after(query: Query, ask: Ask) -> Solution | None:
    """A known good aperture, and something put in the way: open up by what it takes."""
    if ask.quantity != "aperture" or query.has("guide_number") or in_place_of_another(query):
        return None
    if len({f.value for f in query.all("count") if f.unit == "pops"}) > 1:
        return None  # "one pop through the umbrella is f/5.6, and with four": it hung there at every pop
    told = query.all("aperture")
    known = list({f.value: f for f in reversed(told)}.values()) if _SHOT_AT.search(query.text) and {f.of for f in told} <= {"", "meter"} else told
    drawn = query.has("magnification") or query.has("extension")
    if len(known) != 1 or query.has("power") and not (drawn and len(query.all("power")) == 1) or query.has("distance") and not _stays_put(query) or any(query.all(q) for q in ("path", "relation", "stops", "exposure_value")) or query.has("shutter") and not _by_the_way(query, known[0]):
        return None
    if known[0].of not in ("", "ambient", "key", "a", "meter") or any(len(query.all(q)) > 1 for q in ("film_speed", "energy")):
        return None
    through, facts, names = camera.loss_total(query)
    said = [f for f in query.facts if f.quantity == "loss"]
    again = [f for f in said if _of_the_draw(query, f)]
    if any(abs(f.value - through) > _ROUNDED for f in again):
        return None  # the draw says one thing and the words another
    said = [f for f in said if f not in again]
    counted = [f for f in query.all("modifier") if through and _ALREADY_ON.match(query.text[f.end : f.end + 30])]
    worn = [f for f in query.facts if f.quantity == "modifier" and f.unit not in {s.unit for s in said} and f not in counted] if not said else []
    every = said
    one_stays = stays_alone(query, known[0])
    off = one_stays or is_taken_off(query.text, known[0])
    gone = _gone_of(query, said, known[0]) if not worn and not through and off else []
    if one_stays and not gone:
        return None  # both are called by one name: which of them stays is not plain
    said = gone or said
    lost = through + sum(f.value for f in said) + sum(_typical(f) for f in worn)
    if len(said) > 1 and all(f.origin == "said" for f in said) and {BEFORE, AFTER} <= {one.when for one in worn_when(query) or ()}:
        return None  # one comes off and another goes on: no sum of both
    if lost == 0 or not said and any(f.unit == "flashes" and f.value > 1 for f in query.all("count")) and query.cues & {"each", "both", "one_light"}:
        return None
    taken_off = off and not (drawn and not said and not worn)
    before, bared = _before_one_went(query, known[0]) if said or through else ("", False)
    if before:
        if bared and not is_taken_off(before, known[0]):
            return Solution(answers=(marks.aperture(known[0].value),), used=(*told, *query.all("camera_filter")), topic="losses", notes=("That is the bare reading again.",))
        if is_taken_off(before, known[0]):
            return None  # read with all of it on: what is left on is no longer what the reading lacks
        taken_off = False
    effective = through and not said and not worn and not taken_off and (ask.of == "effective" or _is_effective(query.text))
    value = aperture_after(known[0].value, lost if taken_off or effective else -lost)
    faster = query.last("film_speed")
    if faster is not None and faster.origin == "said" and known[0].origin == "kept":
        value *= math.sqrt(faster.value / 100.0)  # told after the reading, which was taken to be for ISO 100
    typical = tuple(Assumed("stops", -_typical(f), "stops", typical_words(f.unit)) for f in worn) + camera.assumed(query)
    note = f"So much light reaches the film as at that f-number: {scales.speak_stops(abs(lost))} less than the ring says." if effective else f"{'Close down' if taken_off else 'Open up'} {scales.speak_stops(abs(lost))} from f/{known[0].value:g}."
    counted += query.all("count") if _READ_TOGETHER.search(query.text) else []
    return Solution(answers=(marks.aperture(value),), used=(*told, *facts, *every, *again, *worn, *counted, *query.all("film_speed"), *query.all("power"), *query.all("distance")), assumed=typical, topic="losses", notes=(note,), lead="That comes to" if effective else "")


_LIT_BY_FLASH = Pattern(r"\b(?:flash\w*|strobes?|heads?|guns?|pops?|bare|sync\w*)\b", re.I)


def _by_the_way(query: Query, read: Fact) -> bool:
    """"the bare reading is f/45 … the shutter's on 1/125, which syncs": one time, and a reading of the flash, on which it has no say (contract 22)."""
    return len(query.all("shutter")) == 1 and read.of != "ambient" and query.all("shutter")[0].of != "ambient" and _LIT_BY_FLASH.search(query.text) is not None


def _stays_put(query: Query) -> bool:
    """"bare it gave f/45 at 5 feet, and now a softbox": one place is told, that of the reading, before anything goes on, and nothing is moved."""
    places, worn, read = query.all("distance"), query.all("modifier"), query.all("aperture")
    beside = len(places) == len(read) == 1 and bool(worn) and max(places[0].start, read[0].start) < min(f.start for f in worn) and places[0].sentence == read[0].sentence
    return beside and not places[0].of and not query.cues & {"move", "further", "closer"} and any(f.unit == "BARE" for f in query.all("camera_filter"))


def _power_untold(query: Query, ask: Ask) -> Solution | None:
    """"the gel takes a stop, what power do I need to keep the reading?": so much more than there was, and that is not told."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd") and (f.unit or query.has("modifier"))]
    if ask.quantity != "power" or not lost or {f.quantity for f in query.facts} - {"loss", "filter_loss", "nd", "modifier", "camera_filter", "remark", "place"}:
        return None
    total = sum(f.value for f in lost)
    return needs(("power",), f"It takes {scales.speak_stops(total)} ({2**total:.3g} times) more than now. What power is the flash at now?", tuple(lost), "losses")


_EFFECTIVE = Pattern(
    r"\b(?:what|which|how)\b[^.?!]*(?:\beffective|\b(?:widest|largest|maximum|biggest|fastest) (?:aperture|opening|f-?stop|stop)\b|\bfilm (?:really |actually )?(?:sees?|gets?)\b|\bworth\b|\bin effect\b|\bamounts? to\b|\bbecomes?\b|\bacts? (?:as|like)\b|\bwork(?:s|ing) (?:as|like)\b|\breally (?:at|shooting at)\b)"
    r"|\bhow (?:wide|far) (?:does|will|can) (?:it|she|the lens|my lens) (?:still |now )?open\b", re.I)
"""What the ring comes to behind the glass, and not what it is to be set to."""
_TO_SET = Pattern(r"\b(?:do|must|should|shall|would|to) i? ?(?:set|open|dial|use|put|turn)\b|\bmeter(?:ed|s)?\b|\bring (?:say|read|stand|be)", re.I)
_ASKING = Pattern(r"\b(?:what|which|how)\b", re.I)


def _is_effective(text: str) -> bool:
    """Whether it is asked what the film gets, and not what is to be set."""
    asking = [m.start() for m in _ASKING.finditer(text)]
    return bool(asking) and _EFFECTIVE.search(text, asking[-1]) is not None and _TO_SET.search(text, asking[-1]) is None


_GONE_BEFORE = Pattern(r"\b(?:without|remov\w*|los(?:e|ing)|ditch\w*|drop\w*|(?:take|taking|took|taken|pull\w*)(?: off| out)?|(?:leav\w*|left) (?:off|out))(?: just| only)?(?: the| my| that| its)? *$", re.I)
_GONE_AFTER = Pattern(r" *(?:is |was |comes |came |now )*(?:off|gone|removed|taken off|left (?:out|off)|out(?=[,.;?!]))\b", re.I)


def _gone_of(query: Query, said: Sequence[Fact], known: Fact) -> list[Fact]:
    """"a gel and a softbox are on: without the gel?": of several things in the way, the losses of those that go; empty where it is all or none."""
    units = {f.unit for f in query.all("modifier") if f.start > known.end and (_GONE_BEFORE.search(query.text[max(0, f.start - 30) : f.start]) or _GONE_AFTER.match(query.text[f.end : f.end + 30]))}
    left = WITH_ONLY.search(query.text, known.end) if not units and stays_alone(query, known) else None
    kept = {f.unit for f in query.all("modifier") if left is not None and left.start() <= f.start < left.end()}
    gone = [f for f in said if f.unit in units or kept and f.unit not in kept]
    return gone if len(gone) < len(said) else []


def _before_one_went(query: Query, known: Fact) -> tuple[str, bool]:
    """What was said before "and without the gel?", which took one of several things off, or before "and bare?", which took off all; nothing where no such turn was taken."""
    gone = next((f for f in query.all("camera_filter") if f.unit == "BARE" and f.origin == "said" and query.text.rstrip(" ?.!").endswith(f.said.rstrip(" ?.!"))), None)
    if gone is None or known.origin != "kept":
        return "", False
    before = query.text.rstrip(" ?.!")[: -len(gone.said.rstrip(" ?.!"))]
    return (before, _BARE_NOW.search(gone.said) is not None) if known.end < len(before) else ("", False)


_BARE_NOW = Pattern(r"\b(?:bare|naked|nothing on)\b", re.I)


_LEFT = Pattern(r"\b(?:left|effective\w*|worth|amounts?|through it|gets? through|comes? (?:out|through)(?! (?:the same|right|as before|ok|correct|exactly the same))|reach(?:es)?|arriv\w*|equivalent|acts?|really getting)\b", re.I)


_TO_HOLD = Pattern(r"\bneed\b[^.?]{0,12}\bto (?:be at|keep|hold|get)\b|\bhow (?:many|much) (?:ws|w/s|joules|watt[- ]?seconds|power|energy) do i need\b", re.I)


def _made_up(query: Query, ask: Ask) -> Solution | None:
    """A known good power, and something put in the way: more power for the same aperture."""
    powers, said = query.all("energy" if ask.quantity == "energy" else "power"), [f for f in query.facts if f.quantity == "loss"]
    through, glass, _ = camera.loss_total(query)
    if ask.quantity not in ("power", "energy") or len(powers) != 1 or not (said or glass or query.has("modifier")) or _LEFT.search(query.text) and not _TO_HOLD.search(query.text):
        return None
    if query.has("guide_number") or any(len({f.value for f in query.all(q)}) > 1 for q in ("distance", "aperture", "film_speed")):
        return None
    worn = [f for f in query.facts if f.quantity == "modifier" and f.unit not in {s.unit for s in said}] if not said and not glass else []
    lost = through + sum(f.value for f in said) + sum(_typical(f) for f in worn)
    if through and back_to_infinity(query):
        lost -= 2 * through  # the extension was there, and has gone
    if worn and query.has("distance"):
        return None  # somebody moved, and what the thing costs was not told
    before, bared = _before_one_went(query, powers[0]) if said or through else ("", False)
    if before and (bared or is_taken_off(before, powers[0])):
        return None
    value = powers[0].value * factor_from_stops(-lost if not before and is_taken_off(query.text, powers[0]) else lost)
    assumed = tuple(Assumed("stops", -_typical(f), "stops", typical_words(f.unit)) for f in worn) + camera.assumed(query)
    answer = Quantity("energy", value, "J") if ask.quantity == "energy" else marks.power(value)
    solution = Solution(answers=(answer,), used=(powers[0], *said, *glass, *worn, *query.all("aperture"), *query.all("distance")), assumed=assumed, topic="losses")
    if value <= 1.0005 or ask.quantity == "energy":
        return solution
    short = math.log2(value)
    ways = ((marks.power(1.0), marks.stops(short, "to open up")),)
    return replace(solution, status="out_of_reach", alternatives=ways, lead="Out of reach; it would take").noting(f"At full power open the lens {scales.speak_stops(short)} as well.")
