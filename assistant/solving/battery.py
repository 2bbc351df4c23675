"""What a battery, a set of cells or a charge is good for: pops at another power, frames, rolls of film, and how many sets to bring.

A set holds so much energy, so its pops go with one over the power. What is had from it is rounded
down, what is needed is rounded up.
"""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.parts import A_PART, part_said
from assistant.patterns import Pattern
from assistant.physics import duration
from assistant.physics.flash import whole_count
from assistant.query import Fact, Query
from assistant.solving import known_at, marks
from assistant.solving.pop_facts import POP_WORDS, own, popped, share
from assistant.solving.solution import Solution, needs

_NEAR_ENOUGH = 1 + 1e-9
_ENERGY_ALONE = "Going by energy alone; the electronics take a little too."


def solve(query: Query) -> Solution | None:
    """Counts that a battery is good for; None for all others."""
    if not query.asks_for("count") or "extension" in query.cues and not _THE_TUBE.search(query.text) or any(query.has(q) for q in ("guide_number", "frequency", "aperture")):
        return None
    if (query.has("recycle") or query.has("interval")) and (query.has("time") or query.has("shutter")):
        return None  # so many in a minute
    for rule in (_left, _stored, _cells_to_bring, _rolls, _at_a_power):
        found = rule(query)
        if found is not None:
            return found
    return None


_THE_TUBE = Pattern(r"\b(?:to|into|through|at|in|reach(?:es|ing)?) the (?:flash )?tube\b(?! of| extension)", re.I)
"""The tube that flashes, and no extension behind a lens."""
_REMAINS = Pattern(r"\b(?:left|remain\w*|still (?:(?:have|has|got|in|good|be|there|get|fire|do|hold)\b)|(?:many|much) more|over|before (?:it|they) (?:is|are|runs?|go|goes)|any more)\b", re.I)
_SPENT = Pattern(r"\b(?:used(?: up)?|fired(?: off)?|spent|shot(?: off)?|burnt|burned|popped|gone through|got through|went through|taken|after|once i've done|done|minus|less)(?: (?:about|some|already|just|the first|me))* $", re.I)

_GONE = Pattern(r"(?: (?:at|of) [\w/ -]{1,16}?)?(?: (?:are|is|were|have been|have|has))(?: already| all)? (?:gone|used|spent|fired|done|taken)\b", re.I)
_AND = Pattern(r"^[^.;?!]{0,20}?(?:,| and| plus)(?: another)? $", re.I)


def _left(query: Query) -> Solution | None:
    """"a set does 180 full pops, 40 are fired: how many are left at a quarter?": what was fired is taken off by its energy."""
    counts = [f for f in query.facts if f.quantity in ("count", "max_count") and f.unit in POP_WORDS and f.value > 1 and f.origin == "said"]
    spent: list[Fact] = []
    for f in sorted(counts, key=lambda f: f.start):
        joined = spent and _AND.search(query.text[spent[-1].end : f.start]) is not None
        spent += [f] if joined or _SPENT.search(query.text[: f.start]) or _GONE.match(query.text, f.end) else []
    held = [f for f in counts if f not in spent]
    asks = max(query.text.lower().rfind(word) for word in ("how many", "how much", "what"))
    if len(held) == 1 and not spent and asks >= 0 and _REMAINS.search(query.text, asks) and (part := _PART_SPENT.search(query.text)) is not None:
        return _part_left(query, held[0], part, asks)
    if len(held) != 1 or not spent or asks < 0 or not _REMAINS.search(query.text, asks):
        return None
    powers = query.all("power")
    told = [(f, *_power_told(f, query, powers)) for f in (*held, *spent)]
    placed = {p.start for _, _, p in told if p is not None}
    asked = [p for p in powers if p.start not in placed and p.start >= asks] or [p for p in powers if p.start not in placed]
    if len({p.value for p in asked}) > 1:
        return None
    at = asked[0].value if asked else 1.0 if " full" in query.text.lower()[asks:] else told[0][1]
    charge = told[0][1] * held[0].value - sum(power * f.value for f, power, _ in told[1:])
    if charge < 0:
        return None
    value = math.floor(charge / at * _NEAR_ENOUGH)
    return Solution(answers=(marks.count(value, "pops"),), used=(*held, *spent, *powers), topic="time", working=(f"{charge:.4g} full pops are left in it",), notes=(_ENERGY_ALONE,))


_PART_SPENT = Pattern(r"\b(?:used(?: up)?|fired|spent|gone through|got through)(?: about| some)? " + A_PART.format("part") + r" of\b", re.I)
def _part_left(query: Query, held: Fact, part: re.Match[str], asks: int) -> Solution | None:
    """"I've used two thirds of the 180 full pops: how many at a quarter remain?"."""
    gone = part_said(part["part"])
    powers = [p for p in query.all("power") if not part.start("part") <= p.start < part.end("part")]
    holds, told = _power_told(held, query, powers)
    asked = [p for p in powers if p is not told]
    if not 0 < gone < 1 or len({p.value for p in asked}) > 1:
        return None
    at = asked[0].value if asked else 1.0 if " full" in query.text.lower()[asks:] else holds
    value = math.floor(held.value * holds * (1 - gone) / at * _NEAR_ENOUGH)
    used = (held, *powers, *(f for f in query.facts if part.start("part") <= f.start < part.end("part")))
    return Solution(answers=(marks.count(value, "pops"),), used=used, topic="time", working=(f"{1 - gone:.3g} of the charge is left",), notes=(_ENERGY_ALONE,))


def _speaks_of_battery(query: Query) -> bool:
    return "battery" in query.cues or _SUPPLY.search(query.text) is not None


_SUPPLY = Pattern(r"\b(?:battery|batteries|cells|pack|charge)\b|\b(?:pops|flashes) (?:are |still )?left\b", re.I)


_OF_THE_CHARGE = Pattern(r" of (?:it|that|this|them|which|the (?:charge|energy|battery|watt[- ]hours))\b", re.I)


def _stored(query: Query) -> Solution | None:
    """Watt-hours, or joules held, over the energy of a pop."""
    supply, energy = query.last("supply"), query.last("energy")
    doubtful = next((f for f in query.all("power") if f.origin == "said" and _OF_THE_CHARGE.match(query.text, f.end)), None)
    if supply and doubtful is not None:
        return needs(("power",), f"Is “{doubtful.said.strip()}” the power of each pop, or the part of the charge that reaches the tube? Say which.", (supply,), "time")
    kept = query.last("charge_share")
    reaches = kept.value if kept else 1.0
    part, fact = share(query)
    if supply and energy:
        joules = duration.energy_at(energy.value, part or 1.0)
        value = duration.pops_from_battery(supply.value * reaches, joules)
        stored = f"{supply.value:g} Wh is {supply.value * 3600:g} J" + (f", of which {supply.value * kept.value * 3600:g} J reach the tube" if kept else "")
        return Solution(answers=(marks.count(value, "pops"),), used=tuple(f for f in (supply, energy, fact, kept) if f), topic="time",
                        working=(f"{stored}, {joules:g} J a pop",), notes=() if kept else ("Losses in the charger are not counted; expect fewer.",))
    stores = query.all("energy")
    if len(stores) == 2 and ("battery" in query.cues or _HELD.search(query.text)):
        held, each = max(stores, key=lambda f: f.value), min(stores, key=lambda f: f.value)
        takes = each.value if part is None else duration.energy_at(each.value / (each.at_power or 1.0), part)
        stored = f"{held.value:g}{f' × {kept.value:.3g}' if kept else ''} / {takes:g}, rounded down"
        return Solution(answers=(marks.count(math.floor(held.value * reaches / takes * _NEAR_ENOUGH), "pops"),), used=(*(f for f in (held, each, kept, fact) if f), *query.all("power")), topic="time", working=(stored,))
    return None


_HELD = Pattern(r"\b(?:batter(?:y|ies)|accumulator|cells?|charge|supply|bank)\b|\bpack (?:that |which )?(?:can |will )?(?:holds?|stores?|delivers?|contains?|has|keeps?)\b", re.I)
"""What pops are had from, and not how many it takes."""


_PER_FRAME = Pattern(r"\s*(?:per|for each|for every|for a|on each|on every|on a|each|every|a|to a|to each|to every|to the|into each|into every) (?:single )?(?:frame|picture|exposure|shot|photo|negative)\b")


def _pop_counts(query: Query) -> list[Fact]:
    """The pops that a set gives and those that are wanted; not the pops of one frame."""
    return [f for f in query.facts if f.quantity in ("count", "max_count") and f.unit in POP_WORDS and f.value > 1 and not _is_per_frame(f, query)]


_FRAMES_OF = Pattern(r"\b(?:frames?|pictures|exposures|sheets|plates|negatives|photos) (?:of|with|at|that take|taking) $", re.I)
_OF_A_FRAME = Pattern(r"\b(?:per|each|every|a|one)(?: of)?(?: (?:my|the|these|those))? (?:\w+ )?(?:frame|picture|exposure|shot|photo|negative|neg|image|sheet|plate|view|set-?up)s?\b", re.I)


def _is_per_frame(fact: Fact, query: Query) -> bool:
    counts = [f for f in query.facts if f.quantity in ("count", "max_count") and f.unit in POP_WORDS and f.value > 1]
    if len(counts) == 2 and fact is min(counts, key=lambda f: f.value) and any(a.unit == "frames" for a in query.asks) and _OF_A_FRAME.search(query.text):
        return True
    if fact.origin == "said" and _FRAMES_OF.search(query.text[: fact.start]):
        return True
    return fact.origin == "said" and (_PER_FRAME.match(query.text.lower(), fact.end) is not None or _A_FRAME_TAKES.search(query.text.lower()[: fact.start]) is not None)


_A_FRAME_TAKES = Pattern(r"\b(?:each|every|an?|one)(?: of (?:my|the|these|those|our))?(?: single)? (?:frame|picture|exposure|shot|photo|negative|plate|image)s? (?:takes?|needs?|wants?|gets?|has|uses?|costs?|eats?|asks? for|calls? for)(?: me| up)? $")


def _said_with(count: Fact, powers: list[Fact], text: str) -> Fact | None:
    """"60 half power pops", "450 at half power": the power that stands in one breath with a count."""
    said = [p for p in powers if p.origin == count.origin and p.sentence == count.sentence and count.start <= p.start <= count.end + 20]
    return next((p for p in said if not any(mark in text[count.end : p.start] for mark in ",.;:?")), None)


def _power_told(count: Fact, query: Query, powers: list[Fact]) -> tuple[float, Fact | None]:
    """The power a number of pops was told for: full, unless it was said otherwise."""
    if "full" in count.said.lower():
        return 1.0, None
    told = _said_with(count, powers, query.text)
    if told is None and len({p.value for p in powers}) > 1:
        told = own(count, powers)
    return (told.value, told) if told is not None else (1.0, None)


def _cells_to_bring(query: Query) -> Solution | None:
    """"a set does 120 full pops, the job needs 450 at half: how many sets?"."""
    counts, powers = _pop_counts(query), query.all("power")
    if len(counts) == 1 and any(a.unit == "sets" for a in query.asks):
        return _sets_for_frames(query, counts[0])
    if len(counts) != 2 or not any(a.unit == "sets" for a in query.asks):
        return None
    wants = [f for f in counts if _WANTED.search(query.text.lower()[max(0, f.start - 30) : f.start])] if counts[0].origin == "said" else []
    gives = [f for f in counts if f.origin == "said" and (_GIVES.search(query.text.lower()[: f.start]) or _FROM_A_SET.match(query.text.lower(), f.end))]
    if len(gives) == 1:
        wants = [f for f in counts if f is not gives[0]]
    needed = wants[0] if len(wants) == 1 else max(counts, key=lambda f: f.value) if all(f.origin == "said" for f in counts) else counts[1]
    held = counts[0] if needed is counts[1] else counts[1]
    holds, _ = _power_told(held, query, powers)
    changed = [p for p in powers if p.origin == "said" and held.origin != "said"]
    takes = changed[-1].value if changed else _power_told(needed, query, powers)[0]
    pops = held.value * holds / takes
    sets = whole_count(needed.value / pops)
    return Solution(answers=(marks.count(sets, "sets"),), used=(held, needed, *powers), topic="time", working=(f"a set gives {pops:.4g} such pops; {needed.value:g} / {pops:.4g}, rounded up",), notes=(_ENERGY_ALONE,))


def _sets_for_frames(query: Query, held: Fact) -> Solution | None:
    """"180 frames, one flash a frame, a set lasts 80 flashes: how many sets?"."""
    frames = [f for f in query.all("count") if f.unit == "frames" and f.value > 1]
    per_frame = next((f for f in query.facts if f.quantity == "count" and f is not held and _is_per_frame(f, query)), None)
    powers = query.all("power")
    if len(frames) != 1 or len({p.value for p in powers if p.value < 1}) > 1:
        return None
    each = per_frame.value if per_frame else 1.0
    holds, told = _power_told(held, query, powers)
    takes = next((p.value for p in powers if p.value < 1 and p is not told), 1.0)
    sets = whole_count(frames[0].value * each * takes / (held.value * holds))
    used = tuple(f for f in (frames[0], held, per_frame, *query.all("power")) if f)
    return Solution(answers=(marks.count(sets, "sets"),), used=used, topic="time", working=(f"{frames[0].value * each:g} / {held.value:g}, rounded up",))


_GIVES = Pattern(r"\b(?:a|an|one|each|every|the|per|my) (?:\w+ )?(?:set|battery|charge|pack|load)\b[^.,;?\d]{0,32}$")
_FROM_A_SET = Pattern(r"\s*(?:full )?(?:pops |flashes )?(?:per|a|each|from (?:a|one|each)|out of (?:a|one|each)|to (?:a|the|each)|on (?:a|one|each)) (?:\w+ )?(?:set|battery|charge|pack|load)\b")
_WANTED = Pattern(r"\b(?:needs?|wants?|must|have to|has to|takes|calls for|after|requires?|do)\b[^.,;?\d]*$")


def _rolls(query: Query) -> Solution | None:
    """"120 flashes left, 36 on a roll, one flash a frame: how many rolls?", or how many frames."""
    rolls, frames = (any(a.unit == unit for a in query.asks) for unit in ("rolls", "frames"))
    counts = _pop_counts(query)
    if len(counts) != 1 or not rolls and not (frames and _speaks_of_battery(query)):
        return None
    on_roll = next((f for f in query.all("count") if f.unit == "frames" and f.value > 1), None)
    if rolls and on_roll is None:
        return needs(("count",), "I need the number of frames on a roll.", tuple(counts), "time")
    per_frame = next((f for f in query.all("count") if _is_per_frame(f, query)), None)
    each = (per_frame.value if per_frame else 1.0) * (on_roll.value if rolls and on_roll else 1.0)
    powers = [p for p in query.all("power") if p.value < 1]
    if len({p.value for p in powers}) > 1:
        return None
    holds, _ = _power_told(counts[0], query, powers)
    pops = counts[0].value * (holds / powers[-1].value if powers else 1.0)
    used = (counts[0], *powers, *(f for f in (per_frame, on_roll if rolls else None) if f))
    return Solution(answers=(Quantity("count", float(math.floor(pops / each * _NEAR_ENOUGH)), "rolls" if rolls else "frames"),), used=used, topic="time", working=(f"{pops:.4g} / {each:g}, rounded down",))


_ASKS_FULL = Pattern(r"how many\b[^?]{0,12}\bfull")


def _at_a_power(query: Query) -> Solution | None:
    """"a charge gives 200 full pops: how many at a quarter?"."""
    total = popped(query) or (query.last("max_count") if "battery" in query.cues else None)
    if total is None or not _speaks_of_battery(query):
        return None
    powers = query.all("power")
    two = known_at.told_and_asked(query, total)
    if two is not None:
        return Solution(answers=(marks.count(duration.pops_at_power(total.value, two[1] / two[0]), "pops"),), used=(total, *two[2]), topic="time", working=("energy of the battery = pops × power",), notes=(_ENERGY_ALONE,))
    part, fact = share(query)
    holds, told = _power_told(total, query, powers)
    others = [p.value for p in powers if p.value != holds] or ([part] if part is not None and fact not in powers else [])
    if not others and told is not None and holds < 1 and _ASKS_FULL.search(query.text.lower()):
        others = [1.0]
    if not others and part is None:
        return needs(("power",), "I need the power the pops are fired at.", (total,), "time")
    value = duration.pops_at_power(total.value, (others[-1] if others else holds) / holds)
    return Solution(answers=(marks.count(value, "pops"),), used=tuple(dict.fromkeys((total, *powers, *((fact,) if fact else ())))), topic="time",
                    working=("energy of the battery = pops × power",), notes=(_ENERGY_ALONE,))
