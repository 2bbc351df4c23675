"""A known good exposure and a change: what was named twice changed, what was not stays.

"I had f/8 on ISO 100, now ISO 160" · "full power gave f/11 at two metres; at three?"
The ledger needs no guide number for this: only the differences count.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import times_the_light, whole_count
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.ledger import changed, stops_of
from assistant.solving.lights import preferred_unit
from assistant.solving.new_film import newly_loaded
from assistant.solving.placing import times_as_far
from assistant.solving.pop_facts import FAR, apart
from assistant.solving.readings import told_of_all
from assistant.solving.solution import Solution, needs
from assistant.solving.taken_off import is_taken_off
from assistant.solving.turned_too import SAID_OF_IT
from assistant.solving.worn import in_place_of_another
from assistant.units import speak_length

DEFAULT_BEFORE = {"power": 1.0, "count": 1.0, "loss": 0.0}


def solve(query: Query) -> Solution | None:
    """A quantity after a change, from its value before; None when there is no such pair."""
    ask = next((a for a in query.asks if a.quantity in ("aperture", "distance", "power", "film_speed", "count", "energy")), None)
    query = _from_one_to_the_other(query)
    if ask is None or query.has("guide_number") or query.has("exposure_value") or _several_lights(query):
        return None
    if ask.quantity == "distance" and len(query.all("aperture")) == 2 and not query.has("distance") and not query.cues & {"ambient"}:
        return needs(("distance",), "I need the distance at which it reads that.", tuple(query.all("aperture")), "change")
    rated = query.all("rated")
    if len(rated) == len(query.all("film_speed")) == 1 and not query.has("push") and not query.has("aperture"):
        query = query.with_facts(replace(f, quantity="film_speed", of="") if f is rated[0] else f for f in query.facts)  # "changed to film I rate at 1600"
    loaded = newly_loaded(query)
    if loaded is not None and len(query.all("film_speed")) == 1:
        return needs(("film_speed",), "I need the speed of the film that it was read for.", query.facts, "change")
    if loaded is not None and ask.quantity != "power" and len(kept := query.all("power")) == 1 and kept[0].value < 1 and kept[0].origin == "kept":
        return None  # what was read with it, or set since?
    if (added := _heads_added(query, ask)) is not None:
        return added
    if (further := _so_many_times_as_far(query, ask)) is not None:
        return further
    before, after, used = _states(query, ask)
    if before is None or ask.quantity in after:
        return None
    said = ask.quantity in before
    reference = before.pop(ask.quantity, DEFAULT_BEFORE.get(ask.quantity))
    moved = {q: v for q, v in after.items() if q in before or q in DEFAULT_BEFORE}
    if not said and not any(q in before for q in after):
        return None
    if reference is None or not moved:
        return None
    start = {q: before.get(q, DEFAULT_BEFORE.get(q, 1.0)) for q in moved}
    return _finish(query, ask, reference, start, moved, used)


_BRINGING = Pattern(r"\b(?:(?:bring|brought|raise|lift|tak|go|get|chang|turn|drop|lower)\w*|stop(?:ped|ping)?(?: (?:it|the (?:lens|ring|iris)))? down|clos(?:e|ed|ing)(?: (?:it|the (?:lens|ring|iris)))?(?: down)?|open(?:ed|ing)?(?: (?:it|the (?:lens|ring|iris)))? up)\b[^.?!;]{0,40}\bfrom (?:about )?$", re.I)


def _from_one_to_the_other(query: Query) -> Query:
    """"to bring the backdrop up from f/4 to f/8", "I must stop down from f/16 to f/32": what was and what is to be, and no span."""
    span = query.last("aperture_range")
    if span is None or math.isnan(span.other) or query.has("aperture") or not _BRINGING.search(query.text[: span.start]):
        return query
    both = (replace(span, quantity="aperture", other=math.nan), replace(span, quantity="aperture", value=span.other, other=math.nan, start=span.start + 1))
    return query.with_facts((*(f for f in query.facts if f is not span), *both))


def _so_many_times_as_far(query: Query, ask: Ask) -> Solution | None:
    """"it was fine at f/8, half the distance now": no place is told, but how many times as far it stands; the half is no power."""
    many = times_as_far(query)
    halves = dict.fromkeys([f for f in query.all("power") if f.said.strip().lower() in SAID_OF_IT])
    known = [f for f in query.all(ask.quantity) if f not in halves and not f.of]
    mine = frozenset(known)
    kept = dict.fromkeys([f for f in query.facts if f.quantity in ("aperture", "film_speed", "power", "count", "shutter", "times", "focal_length") and f not in mine])
    if many is None or ask.quantity not in ("aperture", "power", "film_speed") or len({f.value for f in known}) != 1 or any(len({f.value for f in kept if f.quantity == q and f not in halves}) > 1 for q in ("aperture", "film_speed", "power", "count")):
        return None
    if any(f.quantity not in ("remark", "number", "place", ask.quantity) and f not in kept for f in query.facts):
        return None
    if _WHERE_IT_WAS.search(query.text):
        return needs(("distance",), "I need the distance at which it read that.", tuple(known), "change")
    found = _finish(query, ask, known[0].value, {"distance": 1.0}, {"distance": many}, [*known, *(f for f in kept if f not in halves)])
    return None if found is None else replace(found, used=found.used + tuple(replace(f, quantity="times", value=many, cue="further") for f in halves)).noting(f"{many:g} times as far is {speak_stops(abs(2 * math.log2(many)))} {'less' if many > 1 else 'more'} light.")


_WHERE_IT_WAS = Pattern(r"\b(?:old|original|former|previous|earlier|first) (?:distance|place|spot|position)\b|\bback (?:to|at|in) (?:where|the)\b", re.I)


def _heads_added(query: Query, ask: Ask) -> Solution | None:
    """"I add a 200 Ws head to the 400 Ws one that gives f/8": their energies add; the one nearest the reading is the one that was read."""
    energies, read = query.all("energy"), query.all("aperture")
    if ask.quantity != "aperture" or len(energies) != 2 or len(read) != 1 or not _ADDED.search(query.text):
        return None
    rest = [f for f in query.facts if f.quantity in ("distance", "power", "film_speed", "count")]
    if len({f.quantity for f in rest}) < len(rest) or any(f.quantity in ("loss", "stops", "relation", "power_down") for f in query.facts):
        return None
    alone = min(energies, key=lambda f: apart(f, read[0], query.text))
    value = times_the_light(read[0].value, sum(f.value for f in energies) / alone.value)
    return Solution(answers=(marks.aperture(value),), used=(*read, *energies, *rest), topic="change", working=(f"{alone.value:g} and {sum(f.value for f in energies) - alone.value:g} watt-seconds together",))


def _several_lights(query: Query) -> bool:
    return len({f.of for f in query.facts if f.of and f.quantity in ("aperture", "distance", "power") and f.of not in ("ambient", "camera")}) > 1


def _states(query: Query, ask: Ask) -> tuple[dict[str, float] | None, dict[str, float], list[Fact]]:
    """Values before and after by quantity; a quantity said once, beside a reference, stays."""
    before: dict[str, float] = {}
    after: dict[str, float] = {}
    used: list[Fact] = []
    for quantity in ("aperture", "distance", "power", "film_speed", "energy", "count", "loss"):
        facts = _of(query, quantity)
        if not facts:
            continue
        facts = in_time(facts, query.text) if quantity == "aperture" else metered_first(facts, query) if quantity == "film_speed" else facts
        facts = _flash_first(_found_with(_once_each(facts, query), query, ask), ask)
        values = [_value(f) for f in facts]
        used += _of(query, quantity)
        if quantity == "loss" and _of_two_things(facts, query):
            facts, values = facts[:1], [sum(values)]  # a gel and a silk hang there together, and none of them first
        if quantity == "count" and len(set(values)) == 1:
            facts, values = facts[:1], values[:1]  # "two old flashes, twins": said twice, and no change
        if len({round(v, 6) for v in values}) > 2:
            return None, {}, []  # a row of values is no change
        if len(facts) > 1:
            before[quantity], after[quantity] = values[0], values[-1]
        elif quantity == "film_speed" and _told_after(facts[0], query):
            before[quantity], after[quantity] = 100.0, values[0]  # the reading named none (contract: ISO 100)
        elif quantity == ask.quantity or quantity not in DEFAULT_BEFORE:
            before[quantity] = values[0]
        elif quantity == "power" and _of_the_test(facts[0], query):
            before[quantity] = after[quantity] = values[0]  # "f/11 at ISO 100 on quarter power": what it was found with
        elif quantity == "count" and _read_together(facts[0], query):
            before[quantity] = after[quantity] = values[0]
        elif not _is_default(quantity, values[0]):
            after[quantity] = values[0]
    rated, read = query.last("rated"), query.first("aperture")
    if "film_speed" in before and "film_speed" not in after and rated is not None and read is not None and rated.start < read.start < query.all("film_speed")[-1].start:
        before["film_speed"], after["film_speed"] = rated.value, before["film_speed"]  # "the meter was set to 400 and gave f/11, but the film's 125"
        used.append(rated)
    reference = "aperture" in before
    push = query.last("push")
    if reference and push is not None and "film_speed" in before and after.get("film_speed", before["film_speed"]) == before["film_speed"]:
        after["film_speed"] = before["film_speed"] * 2.0**push.value
        used.append(push)
    elif reference and push is not None and "film_speed" in after and (push.origin, push.start) > max((f.origin, f.start) for f in query.all("film_speed")):
        after["film_speed"] *= 2.0**push.value  # "f/11 at 200; now 50 film, pushed a stop"
        used.append(push)
    kept = not reference and ask.of != "move" and _stays_right(query, ask, before, after)
    if "loss" in after and "loss" not in before:
        known = next((f for f in used if f.quantity == ("aperture" if reference else ask.quantity)), None)
        gone = kept and any(_taken_off(f, query.text) for f in _of(query, "loss")) or known is not None and is_taken_off(query.text, known)
        if gone:
            before["loss"], after["loss"] = after["loss"], 0.0
    return (before if reference or kept else None), after, used


def _flash_first(facts: list[Fact], ask: Ask) -> list[Fact]:
    """"daylight f/11, the flash gives f/22: what power makes them equal?": the flash is turned to what the daylight reads, and never the other way."""
    turned = ask.quantity in ("power", "distance") and len(facts) == 2 and facts[0].quantity == "aperture" and facts[0].of == "ambient" != facts[1].of
    return [facts[1], facts[0]] if turned else facts


def _of_two_things(losses: Sequence[Fact], query: Query) -> bool:
    return len({f.unit for f in losses if f.unit}) == 2 and not in_place_of_another(query)


_TOGETHER = Pattern(
    r" ?(?:(?:at|on|with|from|for|in|of|it|that|i|we|me|us|bare|the (?:bare )?(?:flash|light|meter|head|gun|lamp)|its|a|an|power|charge|charged|energy|film|is|was|were|had|got|used|gave|gives?|makes?|made|reads?|shows?|showed|metered|measured|meant|needed|right|correct|good|fine|perfect|enough|did|do|as|by|itself|alone|own)\b ?){0,6}", re.I)
"""Between two figures of one exposure: "f/8 was right at 2 m", "2 m gave f/8"."""


_FOUND = frozenset({"aperture", "power", "energy", "shutter", "distance"})
"""What one finds by a trial."""


def _found_with(pair: list[Fact], query: Query, ask: Ask) -> list[Fact]:
    """"at 4 m what stop, if 2 m gave f/8": what stands with the reading was there before, whichever was said first."""
    quantities = ("power", "distance", "film_speed", "energy") if pair[0].quantity == "aperture" else (ask.quantity,) if ask.quantity in _FOUND else ()
    read = [f for q in quantities for f in _of(query, q) if q != pair[0].quantity]
    if len(pair) != 2 or len(read) != 1 or any(f.origin != "said" for f in (*pair, *read)):
        return pair
    if _TURNED_TO.search(query.text[: pair[1].start]) or pair[0].quantity == "film_speed" and _METER_STANDS.search(query.text[: pair[0].start]):
        return pair  # "turned down to 200 Ws, it was f/16": the second is what there is now
    first, second = (is_found_with(f, read[0], query.text) for f in pair)
    return pair[::-1] if second and not first else pair


_TURNED_TO = Pattern(r"\b(?:turn|dial|mov|drop|go|went|switch|swap|chang|bring|brought|push|pull|walk)\w*\b[^.?!\d]{0,24}\b(?:to|onto)(?: an?| the)? $", re.I)
"""Right before a figure: what something was changed to."""


def _once_each(facts: list[Fact], query: Query) -> list[Fact]:
    """"an 800 J and a 400 J head, the 400 J gave f/8, what does the 800 J give": two values named again, each kept where the reading stands with it, else where it was said last."""
    values, read = list(dict.fromkeys(f.value for f in facts)), query.first("aperture")
    if len(facts) == 3 and facts[0].quantity == "aperture" and facts[0].value == facts[2].value != facts[1].value:
        return facts[1:]  # "it read f/8, the grid brings it down to f/5.6: what power reads f/8 again"
    if len(facts) < 3 or len(values) != 2 or read is None or any(f.origin != "said" for f in (*facts, read)) or facts[0].quantity == "aperture":
        return facts
    named = [next((f for f in facts if f.value == v and is_found_with(f, read, query.text)), None) for v in values]
    if sum(f is not None for f in named) != 1:
        return facts
    kept = [found or [f for f in facts if f.value == v][-1] for v, found in zip(values, named)]
    return sorted(kept, key=lambda f: f.start)


def is_found_with(fact: Fact, read: Fact, text: str) -> bool:
    """Whether a figure stands with the reading that was got by it: "f/8 at 2 m", "2 m gave f/8"."""
    return _TOGETHER.fullmatch(text[min(fact.end, read.end) : max(fact.start, read.start)]) is not None


_ADDED = Pattern(r"^(?!.*\b(?:swap\w*|instead|replac\w*|exchang\w*|trad(?:e|ed|ing)|substitut\w*|in place of|versus|vs|compared|or)\b).*\b(?:add(?:s|ed|ing)?|plus|both (?:on|heads?|together|fir\w*|lit|going|at once|giv\w*)|together|as well|in addition|alongside|beside it|next to it|at the same spot|joined by|helped by)\b", re.I | re.S)
"""A second head that fires with the first: their energies add, where one in place of the other does not."""

_READS = Pattern(r"\b(?:reads?|meters?|gives?|gave|shows?|puts out|measures?|it's getting)\W*$", re.I)


_ASKED = Pattern(r"\b(?:what|which|how|where|whats)\b", re.I)


def in_time(facts: list[Fact], text: str) -> list[Fact]:
    """"f/8 stays; at full it reads f/16": what is read was there before what is wanted, whichever was said first."""
    if len(facts) != 2 or any(f.origin != "said" for f in facts) or not _READS.search(text[: facts[1].start]) or _READS.search(text[: facts[0].start]) or _ASKED.search(text[facts[0].end : facts[1].start]):
        return facts
    return [facts[1], facts[0]]


_METER_STANDS = Pattern(r"\bmeter\b[^.?!\d]{0,24}\b(?:set|on|at|to|for|stands)\s*(?:iso |ei )*$", re.I)


_LOADED_NOW = Pattern(r"\b(?:camera|back|magazine|body|i|i've|ive|we|we've)(?:'s)? (?:now )?(?:has|have|holds|got|loaded|loads|put)(?: got| in)?(?: an?| some)? (?:iso |asa )?$", re.I)
"""Right before a speed: what is in the camera now, and not what was read with."""
_INSTEAD = Pattern(r"\b(?:instead of|rather than|in place of)\b", re.I)


def metered_first(speeds: list[Fact], query: Query) -> list[Fact]:
    """"I rate the paper at 6; the meter, set to 100, says f/45": the reading is for what the meter stands at, whichever was said first."""
    if len(speeds) != 2 or any(f.origin != "said" for f in speeds):
        return speeds
    text, read = query.text, query.first("aperture")
    if read is not None and read.end <= speeds[1].start and _LOADED_NOW.search(text[read.end : speeds[1].start]):
        return speeds
    if read is not None and read.origin == "said" and apart(speeds[1], read, text) < FAR <= apart(speeds[0], read, text) and read.start > speeds[0].start:
        return speeds[::-1]  # "what on 800 film, if it was f/5.6 on 200"
    if _INSTEAD.search(text[speeds[0].end : speeds[1].start]):
        return speeds[::-1]
    last = _METER_STANDS.search(text[: speeds[1].start]) and not _METER_STANDS.search(text[: speeds[0].start])
    return speeds[::-1] if last else speeds


_RIGHT = Pattern(r"\b(?:(?:was|is|were|looked|exposed|came out|spot) (?:right|correct|on|good|perfect|fine)|right at|correct at|same (?:exposure|aperture|f-?stop|stop|f|f-?number|picture|result|neg|negative)|keep(?:ing)? (?:the |my )?(?:exposure|aperture|f-?stop|lens)|(?:lens|aperture|ring|f-?stop)\b[^.,;?]{0,16}\b(?:stays?|put|alone|same|as it is))\b", re.I)
_OFF_BEFORE = Pattern(r"\b(?:(?:took|take|taking|taken|pull(?:ed|ing)?) (?:off )?|remov\w* |without |los(?:e|t|ing) |dropp?(?:ed|ing)? |ditch\w* |unscrew\w* )(?:the |my |that |an? )?$", re.I)
_OFF_AFTER = Pattern(r"^\s*(?:of light )?back\b(?= ?[.,;?!]|$)|^\W*(?:(?:filter|nd|is|has|come|came|comes|taken|now|back|it) )*(?:off|removed|gone|away)\b(?! the (?:flash|light))", re.I)


def _taken_off(fact: Fact, text: str) -> bool:
    """"took the ND off": the loss was there before, and is there no more."""
    return _OFF_BEFORE.search(text[: fact.start]) is not None or _OFF_AFTER.search(text[fact.end :]) is not None



def _stays_right(query: Query, ask: Ask, before: dict[str, float], after: dict[str, float]) -> bool:
    """No f-number told, but that it stays right: two values of one thing, or a loss put in, move the thing asked for."""
    told = _RIGHT.search(query.text) is not None or bool(query.cues & {"same_light"})
    moved = [q for q in after if q in before or q == "loss"]
    return told and ask.quantity in before and ask.quantity not in after and len(moved) == 1


def _is_default(quantity: str, value: float) -> bool:
    return value == DEFAULT_BEFORE.get(quantity)


def _of_the_test(power: Fact, query: Query) -> bool:
    """Whether a power was said with the reading, before the thing that then changed."""
    read = query.first("aperture")
    changes = [facts[-1] for facts in (query.all(q) for q in ("film_speed", "distance")) if len(facts) == 2 and facts[-1].origin == "said"]
    if read is None or not power.origin == read.origin == "said":
        return False
    if changes and all(power.end <= f.start for f in changes):
        return True
    lost = [f for f in _of(query, "loss") if f.origin == "said"]
    first, last = sorted((power, read), key=lambda f: f.start)
    return bool(lost) and not any(first.start < f.start < last.start for f in lost) and (is_found_with(power, read, query.text) or _BREAK.search(query.text, first.end, last.start) is None)


_BREAK = Pattern(r"[,.;:?!](?!\d)|\b(?:and|but|what|which|now|then|if|so|when)\b", re.I)


_ONE_OF_THEM = Pattern(r"\b(?:each|apiece|every|one|single|singly|alone|by itself|either|a flash|another)\b", re.I)


def _read_together(count: Fact, query: Query) -> bool:
    """"my pair is f/8 at 11 feet, now at 5 and a half": what they read is of all of them, where it is another thing that changes."""
    read = query.first("aperture")
    changes = any(len({f.value for f in query.all(q)}) > 1 for q in ("distance", "power", "film_speed", "energy"))
    if read is not None and count.origin == read.origin == "said" and told_of_all(query) is read:
        return True
    if read is None or not changes or not count.origin == read.origin == "said" or not count.end <= read.start:
        return False
    return _ONE_OF_THEM.search(query.text) is None and not any(mark in query.text[count.end : read.start] for mark in ".;?!")


def _told_after(speed: Fact, query: Query) -> bool:
    """Whether a film speed was told after a reading that stands and named none."""
    read = query.first("aperture")
    return speed.origin == "said" and read is not None and read.origin == "kept" and len(query.all("aperture")) == 1 and query.has("loss")


def _of(query: Query, quantity: str) -> list[Fact]:
    if quantity == "power":
        return [f for f in query.facts if f.quantity in ("power", "power_down")]
    if quantity == "loss":
        return [f for f in query.facts if f.quantity == "loss" or f.quantity in ("nd", "filter_loss") and not query.has("loss")]
    return [f for f in query.facts if f.quantity == quantity and f.unit != "frames" and f.of not in ("front", "back", "middle", "backdrop")]


def _value(fact: Fact) -> float:
    return 2.0**-fact.value if fact.quantity == "power_down" else fact.value


_HOW_MUCH_CLOSER = Pattern(r"\b(?:how (?:many (?:feet|metres|meters|inches|centimetres)|much|far) (?:closer|nearer|further|farther|behind(?! (?:an?|the|my|this|that) (?:[\w-]+ )?(?:silk|umbrella|brolly|soft ?box|box|dome|gel|scrim|grid|net|cloth|diffuser|filter|dish|snoot)\b)|beyond)\b(?! (?:can|may)\b)|by how (?:much|many \w+|far)\b[^?]{0,24}\b(?:move|bring|shift|pull|push|come|go)\b|how (?:far|much)\b[^?.,;]{0,40}\b(?:move|come|go|shift|be moved|be shifted|bring|push|pull)\b[^?.,;]{0,20} (?:in|out|back|closer|nearer|forward|further)\b(?! (?:to|the) )|how far (?:has|have|had|did|was|were) [^?.,;]{0,24}\b(?:walk(?:ed)?|moved?|come|gone|go|stepped|carried|brought|bring|pushed|pulled|shifted)\b)", re.I)
_INWARD = Pattern(r"\b(?:how (?:much|far|many \w+)|by what)\b[^?.]{0,50}\b(?:closer|nearer|in)\b(?! (?:is|was) (?:it|she|he|the))", re.I)
_OUTWARD = Pattern(r"\b(?:how (?:much|far|many \w+)|by what)\b[^?.]{0,50}\b(?:further|farther|back|out)\b", re.I)
_AND_THE_MOVE = Pattern(r"\b(?:how (?:far|close|near)|where|what distance)\b[^?]*\band (?:by )?how (?:much|far|many \w+)\b[^?]{0,24}\b(?:move|bring|shift|pull|push|closer|nearer|further|farther)\b", re.I)


def _other_way_asked(query: Query, moved: float) -> bool:
    """Whether "how much closer" was asked where it is farther, or the other way round."""
    inward, outward = _INWARD.search(query.text) is not None, _OUTWARD.search(query.text) is not None
    return inward is not outward and (inward and moved > 0 or outward and moved < 0)


def place_or_move(query: Query, ask: Ask, now: float, then: float) -> Solution | None:
    """The way from one distance to another, in metres, where that is asked ("how much closer"), or both; None where only the place is."""
    unit = preferred_unit(query, ask.unit)
    if len(query.all("aperture")) == 2 and _other_way_asked(query, then - now):
        then = now * now / then  # "I wanted f/8 and get f/5.6: how much closer": the second was the reading
    place, way = marks.distance(then, unit), marks.distance(abs(then - now), unit, "move")
    if ask.of != "move" and _AND_THE_MOVE.search(query.text):
        return Solution(answers=(place, way), topic="change")
    if ask.of == "move" or _HOW_MUCH_CLOSER.search(query.text):
        return Solution(answers=(way, place), topic="change", lead=f"Move it {speak_length(abs(then - now), unit)} {'back' if then > now else 'nearer'}, to {speak_length(then, unit)}.")
    return None


def _finish(query: Query, ask: Ask, reference: float, before: dict[str, float], after: dict[str, float], used: list[Fact]) -> Solution:
    if ask.quantity in ("count", "power", "energy") and "aperture" in after:  # between two marks the stops are counted (contract 12)
        after = {**after, "aperture": before["aperture"] * 2.0 ** (-aperture_difference_stops(before["aperture"], after["aperture"]) / 2)}
    value = changed(ask.quantity, reference, before, after)
    if ask.quantity == "count":
        quantity: Quantity = marks.count(whole_count(value), ask.unit or "pops")
    elif ask.quantity == "distance":
        if (moved_to := place_or_move(query, ask, reference, value)) is not None:
            return replace(moved_to, used=tuple(used))
        quantity = marks.distance(value, preferred_unit(query, ask.unit))
    elif ask.quantity == "energy":
        quantity = Quantity("energy", value, "J")
    else:
        quantity = {"aperture": marks.aperture, "power": marks.power, "film_speed": marks.film_speed}[ask.quantity](value)
    assumed = (Assumed("film_speed", 100.0, "ISO", "for the reading"),) if before.get("film_speed") == 100.0 and len(query.all("film_speed")) == 1 else ()
    moved = tuple(f"{q.replace('_', ' ')} {_plain(q, before[q], query)} to {_plain(q, after[q], query)}: {stops_of(q, after[q]) - stops_of(q, before[q]):+.2f} stops" for q in after)
    return Solution(answers=(quantity,), used=tuple(used), working=moved, topic="change", assumed=assumed)


def _plain(quantity: str, value: float, query: Query) -> str:
    if quantity == "distance":
        unit = preferred_unit(query)
        shown = marks.distance(value, unit)
        return f"{shown.value:.3g} {unit}"
    return f"{value:.4g}"
