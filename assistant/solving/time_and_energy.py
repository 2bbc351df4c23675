"""How long and how much: the pulse, frozen motion, recycling, watt-seconds, batteries, charge.

Recycling and energy go with the power fraction (the charger refills at an even rate). A
pulse is taken as an exponential discharge, so that t0.1 is 3.32 times t0.5.
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import duration
from assistant.physics.flash import whole_count
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving import charge, energy_short, known_at, marks, open_each, recharge, strobe_fits, strobe_images
from assistant.solving.claim_denial import denied
from assistant.solving.pop_facts import FAR, apart, own, popped, share
from assistant.solving.pops import wanted
from assistant.solving.solution import Solution, needs
from assistant.units import length_in

BRIEF = ("duration", "t05", "t01", "shutter", "time")


def solve(query: Query) -> Solution | None:
    """Durations, movements, recycle times, energies; None for all others."""
    for ask in query.asks:
        for topic in TOPICS.get(ask.quantity, ()):
            found = topic(query, ask)
            if found is not None:
                return found
    return None


def _seconds(value: float) -> Quantity:
    return Quantity("duration", value, "s")


# --- pulse and motion --------------------------------------------------------------------------------


def _pulse(query: Query, ask: Ask) -> Solution | None:
    """t0.1 from t0.5 and back."""
    if ask.of not in ("t0.1", "t0.5", "t01", "t05"):
        return None
    to_tail = ask.of in ("t0.1", "t01")
    known = query.last("t05" if to_tail else "t01")
    if known is None and {"t05", "t01"} <= query.cues:
        return None
    if known is None:
        return needs(("duration",), f"I need the {'t0.5' if to_tail else 't0.1'} of the flash.", topic="time")
    value = duration.t01_from_t05(known.value) if to_tail else duration.t05_from_t01(known.value)
    return Solution(answers=(_seconds(value),), used=(known,), topic="time", working=("t0.1 = 3.32 × t0.5",),
                    notes=("For a plain exponential discharge; a flash that cuts its pulse short has a shorter tail.",))


def _brief(query: Query) -> Fact | None:
    found = [f for q in BRIEF for f in [query.last(q)] if f]
    return next((f for f in found if f.origin == "said"), found[0] if found else None)


_OVER_TAIL = Pattern(r"\b(?:as|over|with|within|during|in|inside|throughout|by|using|through|taking|take|on|at|for|reckon\w*|count\w*|from|after|down to) (?:(?:the|its|his|her|my|a) )?(?:whole |full |entire |longer )?t\W?0?\.1\b|\bt\W?0?\.1 instead\b", re.I)


def _movement(query: Query, ask: Ask) -> Solution | None:
    if ask.of != "movement":
        return None
    speed, brief, at = query.last("velocity"), _brief(query), known_at.of_the_power_asked(query)
    brief = at[0] if at else brief
    missing = tuple(name for name, fact in (("speed", speed), ("duration", brief)) if fact is None)
    if missing:
        said = {"speed": "how fast it moves", "duration": "how long the flash or the shutter lasts"}
        return needs(missing, "I need " + " and ".join(said[m] for m in missing) + ".", tuple(f for f in (speed, brief) if f), "time")
    assert speed is not None and brief is not None
    if brief.quantity == "t05" and not query.has("t01") and _OVER_TAIL.search(query.text):
        brief = replace(brief, quantity="t01", value=duration.t01_from_t05(brief.value))
        tail: tuple[str, ...] = ("t0.1 is 3.3 times t0.5 for a tail that dies away evenly; the maker's own figure is better.",)
    else:
        tail = ()
    metres = duration.motion(speed.value, brief.value)
    unit = _small_unit(query, ask, speed, metres)
    image, facts = _on_film(query, metres, unit)
    notes = ("Reckoned with t0.5; the tail of the pulse smears faintly up to 3.3 times as far.",) if brief.quantity == "t05" else ()
    what = "the exposure" if brief.quantity in ("shutter", "time") else "the flash"
    moved = Quantity("distance", length_in(metres, unit), unit)
    first = bool(image) and _ON_FILM.search(query.text) is not None
    answers = (*image, replace(moved, of="at the subject")) if first else (moved, *image)
    return Solution(lead=f"Movement on the film during {what}" if first else f"Movement during {what}", answers=answers, used=(speed, brief, *facts, *at, *known_at.power_of(query, brief)), topic="time", notes=notes + tail,
                    working=("speed × duration",))


_ON_FILM = Pattern(r"\b(?:on|onto|at) (?:the |my )?(?:film|negative|neg|sensor)\b[^?.]{0,24}\?\W*$", re.I)


def _on_film(query: Query, metres: float, unit: str) -> tuple[tuple[Quantity, ...], tuple[Fact, ...]]:
    size = query.last("magnification")
    if size is None or size.value <= 0:
        return (), ()
    return (Quantity("distance", duration.image_motion(metres, size.value) * 1000, "mm", "on the film"),), (size,)


def _small_unit(query: Query, ask: Ask, speed: Fact, metres: float) -> str:
    if ask.unit in ("mm", "cm", "in", "m", "ft"):
        return ask.unit
    named = next((u for u in query.units if u in ("mm", "cm", "in", "m", "ft")), "")
    if named:
        return named
    if speed.unit in ("ft", "yd", "in"):
        return "in" if metres < 0.3 else "ft"
    return "mm" if metres < 0.1 else "cm" if metres < 1 else "m"


_A_SPAN = 0.25  # metres; a longer way is how far the light may stand, and no blur


def _short_enough(query: Query, ask: Ask) -> Solution | None:
    """The longest pulse, or shutter, that keeps a movement under so much."""
    if ask.of != "freeze":
        return None
    speed, blur = query.last("velocity"), query.last("blur") or next((f for f in query.all("max_distance") if f.value < _A_SPAN), None)
    missing = tuple(name for name, fact in (("speed", speed), ("distance", blur)) if fact is None)
    if missing:
        said = {"speed": "how fast it moves", "distance": "how much movement you would accept"}
        return needs(missing, "I need " + " and ".join(said[m] for m in missing) + ".", tuple(f for f in (speed, blur) if f), "time")
    assert speed is not None and blur is not None
    value = duration.duration_for_motion(speed.value, blur.value)
    answer = marks.shutter(value) if ask.quantity == "shutter" else _seconds(value)
    note = "" if ask.quantity == "shutter" else "Compare it with t0.1 to be safe: a flash quoted by t0.5 must be 3.3 times as short."
    return Solution(lead="No longer than", answers=(answer,), used=(speed, blur), topic="time", notes=(note,), working=("movement / speed",))


_MOVES_MORE = Pattern(r"\b(?:move|moves|travel|travels|smear|smears|blur|blurs|streak|streaks|shift|shifts|go|goes|get|gets)\b(?: \w+){0,3}? (?<!no )(?<!not )(?:more than|over|beyond|further than|past|above)\b|\b(?:exceeds?|beats?)\b")
"""Asked whether it moves further than so much, and not whether it is held to that."""
_MOVES = Pattern(r"\b(?:move|travel|smear|blur|streak|shift|go|get)(?:s|ed)?\b|\b(?:is|are|be|was)(?:n't| not) (?:[\d.]+|an?|one|two|three) ")
_EVEN = 1 + 1e-9


def _is_held(said: str, share: float) -> bool:
    """Whether a movement that is so many times the one that is told bears out what is said of it."""
    no = denied(said)
    if _MOVES_MORE.search(said) is not None:
        return (share > _EVEN) is not no
    if no and _MOVES.search(said) is not None:
        return share < 1 / _EVEN - 1e-6  # "it doesn't move 2 mm, does it?"
    return (share <= _EVEN) is not no


def _freezes(query: Query, ask: Ask) -> Solution | None:
    speed, brief, blur = query.last("velocity"), _brief(query), query.last("blur")
    if speed is None or brief is None:
        return None
    metres = duration.motion(speed.value, brief.value)
    unit = _small_unit(query, ask, speed, metres)
    moved = Quantity("distance", length_in(metres, unit), unit)
    if blur is None:
        return Solution(lead="Movement during the flash", answers=(moved,), used=(speed, brief), topic="time", notes=("Whether that is frozen depends on how large it is on the print; tell me how much you would accept.",))
    holds = _is_held(query.text.lower().replace("’", "'"), metres / blur.value)
    return Solution(answers=(Quantity("claim", holds), moved), used=(speed, brief, blur), topic="time",
                    notes=(f"The longest that would do is 1/{speed.value / blur.value:.0f} s.",))


# --- recycling and waiting -------------------------------------------------------------------------------


def _recycle(query: Query, ask: Ask) -> Solution | None:
    if ask.of != "recycle" and not query.has("recycle") or ask.of in ("series", "freeze"):
        return None
    known = query.first("recycle") or query.first("time") or query.first("interval") or query.first("shutter")
    if known is None:
        return needs(("duration",), "I need a recycle time and the power it is for.", topic="time")
    fired = popped(query)
    if fired is not None and fired.value > 1 and not query.has("recycle") and not query.has("power") and _FROM_FIRST.search(query.text):
        return Solution(answers=(_seconds(known.value / (fired.value - 1)),), used=(known, fired), topic="time", working=(f"{known.value:g} s in {fired.value - 1:g} waits",), notes=("From the first pop to the last.",))
    fired = fired or next((f for f in query.all("max_count") if f.unit == "pops"), None)
    if fired is not None and fired.value > 1 and known.quantity == "recycle" and not query.has("power") and not query.has("energy") and _FROM_FIRST.search(query.text):
        frames = tuple(f for f in (*query.all("count"), *query.all("max_count")) if f.unit == "frames" and f.value == 1)
        return Solution(answers=(_seconds(known.value * (fired.value - 1)),), used=(known, fired, *frames), topic="time", working=(f"{fired.value - 1:g} waits of {known.value:g} s",), notes=("From the first pop to the last.",))
    before, after, used = _powers(query, known)
    if after is None:
        return needs(("power",), "I need the power to work it out for.", (known,), "time")
    whole = tuple(f for f in query.all("energy") if len(query.all("energy")) == 1)  # what the pack holds at full
    return Solution(answers=(_seconds(duration.recycle_time(known.value, after / before)),), used=(known, *used, *whole), topic="time", working=("the charger refills at an even rate, so time goes with energy",),
                    notes=("Going by energy; the last part of a charge is often slower, so give it a moment more.",))


_FROM_FIRST = Pattern(r"\bfirst (?:\w+ )?(?:to|till|until) (?:the )?last\b|\bbetween the first (?:\w+ )?and (?:the )?last\b", re.I)
_GAP_ASKED = Pattern(r"\b(?:what|how (?:long|big|large|many seconds))\b[^?.]{0,30}\b(?:gaps?|waits?|pauses?|intervals?|between (?:each|one|two|pops|them))\b", re.I)
_ONE_TO_NEXT = Pattern(r"\b(?:what|how (?:long|often|many seconds))\b[^.?!]*\b(?:from one (?:\w+ )?to the next|between (?:one|each|two|pops|them|the pops)|intervals?|gaps?|pauses?|waits?|apart)\b[^.?!]*\?", re.I)
_IN_ALL = Pattern(r"\b(?:open|exposure|took|lasted|lasts|takes?|within|whole (?:series|lot)|have|had|got)(?: (?:is|was|for|of|only|just|about|me|in|it|takes|took))* $", re.I)
"""Right before the time of the whole series."""
_AT_LAST = Pattern(r"(?:^|[,.;:]|\band\b|\bhow long\b|\bwhat (?:about|of)\b|\bwhat is it\b)\s*(?:then )?(?:at|on|for|with)\s+[^,.;:?]{1,24}\?*\s*$", re.I)
"""A second value asked about at the end: "..., at 250 Ws?"."""


def _powers(query: Query, known: Fact) -> tuple[float, float | None, tuple[Fact, ...]]:
    """The power a recycle time is for, and the one asked about; energies do as well."""
    for quantity in ("energy", "power"):
        facts = query.all(quantity)
        if len(facts) >= 2:
            base = own(known, [f for f in facts if f.end <= known.start and f.sentence == known.sentence] if _AT_LAST.search(query.text) and facts[0].end <= known.start < facts[-1].start and facts[0].sentence == known.sentence else facts, query.text)
            asked = facts[-1] if base is not facts[-1] else facts[0]
            return base.value, asked.value, (base, asked)
    part, fact = share(query)
    if part is None or fact is None:
        return 1.0, None, ()
    if known.at_power and known.origin != "said":
        return known.at_power, part, (fact,)
    asks_full = " full" in query.text.lower() and fact.quantity == "power" and part < 1 and fact.start < query.text.lower().rfind(" full")
    return (part, 1.0, (fact,)) if asks_full else (1.0, part, (fact,))


_FULL_POPS = Pattern(r"\bfull(?:[- ]power)?\b", re.I)
_LAST_AS_WELL = Pattern(r"\b(?:count\w*|includ\w*|with|plus|(?<!first )(?<!one )(?<!pop )(?<!flash )and) (?:in )?(?:the |a |one )?(?:recycl\w*|recharg\w*|wait|pause)?(?: time)? ?(?:after |of |for )?(?:the |that )?(?:last|final)\b|\b(?:last|final) (?:recycl\w*|recharg\w*|wait|one|pop)\b[^.?]{0,12}\b(?:too|as well|included|counted|counts)\b|\bafter the (?:last|final)(?: one| pop)? (?:too|as well)\b", re.I)
_ALL_IN = Pattern(r"\b(?:each|every|per|a) (?:pop|flash|burst|one)\b[^.?!]{0,80}\b(?:all in|all told|in all|altogether|all included|everything (?:included|counted))\b", re.I)
"""So long for each of them, with all that goes with it."""
_NOT_THE_LAST = Pattern(r"\b(?:not|no|without|don't|ignor\w*|except|but|leav\w*)\b[^.?]{0,24}\b(?:last|final)\b|\bclos(?:e|es|ed|ing)\b[^.?]{0,24}\b(?:after|on|with) the (?:last|final)\b|\b(?:last|final)(?: one| pop| flash| burst| of them)?,? (?:(?:then|also|just|is|to|that) )*(?:ends?|ending|clos(?:es|ing|e)|finish\w*|stops?|stopping|complet\w+)\b", re.I)
"""No wait after the last: "without the last", "the first goes at once and the last one ends it"."""


def _of_kept_pause(query: Query, ask: Ask, pops: Fact) -> bool:
    """"how long do ten pops take?", after the time to recycle or between the pops was told: no time of one pop, but of them all."""
    return not ask.of and pops.unit == "pops" and pops.value > 1 and any(f.origin in ("kept", "kit") for f in (*query.all("recycle"), *query.all("interval")))


def _series(query: Query, ask: Ask) -> Solution | None:
    """The time a number of pops takes, or a strobe burst."""
    pops, rate = popped(query) or next((f for f in query.all("count") if f.unit == "frames" and f.value > 1), None), query.last("frequency")
    if pops is None or ask.of != "series" and not _of_kept_pause(query, ask, pops):
        return None
    whole = query.last("interval") or query.last("shutter") or query.last("time")
    if whole is not None and pops.value > 1 and (_FROM_FIRST.search(query.text) and _GAP_ASKED.search(query.text) or _ONE_TO_NEXT.search(query.text) and _IN_ALL.search(query.text[: whole.start])):
        return Solution(answers=(_seconds(whole.value / (pops.value - 1)),), used=(whole, pops), topic="time", working=(f"{whole.value:g} s in {pops.value - 1:g} waits",))
    if rate:
        return strobe_fits.solve(query) or Solution(answers=(marks.shutter(pops.value / rate.value),), used=(pops, rate), topic="time", working=(f"{pops.value:g} flashes at {rate.value:g} a second",))
    pause = query.last("interval") or query.last("recycle")
    if pops.value <= 1:
        return needs(("count",), "I need the number of pops.", (pops,), "time")
    if pause is None:
        return needs(("duration",), "I need the time between pops.", (pops,), "time")
    part, fact = share(query)
    if _FULL_POPS.search(pops.said) and (fact is None or fact.origin != "said"):
        part = 1.0  # "five full pops", whatever power the time was told for
    at_it = len(query.all("power")) > 1 and len({f.value for f in query.all("power")}) == 1  # "recycles in 4 s at half; 8 pops at half"
    scale = part / (pause.at_power or 1.0) if part is not None and not at_it and pause.quantity == "recycle" else 1.0
    each = pause.value * scale
    frames = next((f for f in query.facts if f.quantity == "count" and f.unit == "frames" and f.value > 1 and f is not pops), None)
    fired = pops.value * (frames.value if frames else 1.0)
    if pause.cue == "each" or _ALL_IN.search(query.text) or _LAST_AS_WELL.search(query.text) and not _NOT_THE_LAST.search(query.text):
        return Solution(lead="The whole series takes" if pause.cue == "each" else "The whole series, the last recharge with it, takes", answers=(_seconds(each * fired),), used=tuple(f for f in (pops, frames, pause, fact if scale != 1.0 else None) if f), topic="time",
                        working=(f"{fired:g} times {each:g} s",))
    return Solution(lead="The whole series takes", answers=(_seconds(each * (fired - 1)),), used=tuple(f for f in (pops, frames, pause, fact if scale != 1.0 or pause.at_power else None) if f) + (tuple(query.all("power")) if at_it else ()), topic="time",
                    working=(f"{fired - 1:g} waits of {each:g} s",),
                    notes=(f"With a last recharge as well it is {each * fired:g} s. Ambient light builds up all the while the shutter is open.",))


# --- energy ---------------------------------------------------------------------------------------------


def _energy(query: Query, ask: Ask) -> Solution | None:
    farads, volts = query.last("capacitance"), query.last("voltage")
    if farads or "capacitor" in query.cues:
        missing = tuple(n for n, f in (("capacitance", farads), ("voltage", volts)) if f is None)
        if missing:
            return needs(missing, "I need the " + " and the ".join(missing) + " of the capacitor.", tuple(f for f in (farads, volts) if f), "time") if farads or volts else None
        assert farads is not None and volts is not None
        return Solution(answers=(Quantity("energy", duration.capacitor_energy(farads.value, volts.value), "J"),), used=(farads, volts), topic="time", working=("half the capacitance times the voltage squared",),
                        notes=("A capacitor at flash voltage can kill, also when switched off; leave the inside to a repairer.",))
    if len(query.all("aperture")) == 2 and len(_not_the_most(query)) == 1 and not any(query.has(q) for q in ("distance", "guide_number", "film_speed")):
        return _energy_for_aperture(query)
    more = query.has("stops") and len(query.all("aperture")) == 1 and len(query.all("energy")) == 1 and not any(query.has(q) for q in ("distance", "film_speed", "power"))
    if query.has("aperture") and not more or query.has("guide_number"):
        return None
    full = query.first("energy")
    if full is None:
        return needs(("energy",), "I need the watt-seconds of the flash at full power.", topic="time")
    return _energy_of(query, ask, full)


_ASKED_OF = Pattern(r"\b(?:what|how (?:much|many)|which)\b[^.,;?\d]{0,30}$")


_TOPS_OUT = Pattern(r"\b(?:tops? out|max(?:imum|es out)?|at most|no more than|only (?:goes|go) (?:up )?to|goes (?:no further|up) (?:than|to)|(?:ends|stops) at|limit)\b", re.I)
_TOPS_AFTER = Pattern(r"[ ,(]*(?:at (?:the )?most|max(?:imum)?|is (?:all|the most|its (?:limit|most|maximum)))\b", re.I)
_FLAT_OUT = Pattern(r"[ ,(]*(?:flat out|when it's flat out|at full (?:power|whack|tilt|output|blast)|on full(?: power)?|full (?:whack|tilt|blast)|wound right up|turned right up)\b", re.I)
"""What a head gives when it gives all it has."""


def _not_the_most(query: Query) -> list[Fact]:
    """The energies told, without the one that is only the most a pack can store."""
    energies = query.all("energy")
    return [f for f in energies if len(energies) == 1 or not (_TOPS_OUT.search(query.text[max(0, f.start - 24) : f.start].replace(", ", ". ").rsplit(". ", 1)[-1]) or _TOPS_AFTER.match(query.text, f.end))]


_GIVES_IT = Pattern(r" (?:gave|gives|give|made|makes|reads?|metered|meters|was (?:right|good) (?:for|at))(?: (?:me|her|him|us|them|you))?(?: only| just)? ", re.I)
_WITH_IT = Pattern(r" (?:with|at|from|on)(?: only| just)? ", re.I)
"""Between an energy and the f-number that it gives, and the other way round."""


def _energy_for_aperture(query: Query) -> Solution | None:
    """"200 Ws gives f/8: how much for f/16?", in either order."""
    stops, known, powers = query.all("aperture"), _not_the_most(query)[0], query.all("power")
    most = next((f for f in query.all("energy") if f is not known), None)
    if len(powers) > 1 or powers and powers[0].value != 1.0:
        return None
    asked = [f for f in stops if _ASKED_OF.search(query.text.lower()[: f.start])]
    near, far = sorted(stops, key=lambda f: apart(f, known, query.text))
    clear = known.origin == near.origin == far.origin and apart(far, known, query.text) >= FAR > apart(near, known, query.text) and far.cue != "meter"
    target = asked[0] if len(asked) == 1 else far if clear and near.cue != "want" else wanted(query, stops) if any(f.cue == "want" for f in stops) or known.start < stops[0].start else far
    if {f.origin for f in stops} == {"kept", "said"}:
        target = stops[1]  # "and f/5.6?": what is wanted, anew, in the place of the old
    given = [f for f in stops if _GIVES_IT.fullmatch(query.text, known.end, f.start) or _WITH_IT.fullmatch(query.text, f.end, known.start)]
    if len(given) == 1:
        target = stops[0] if given[0] is stops[1] else stops[1]
    one = stops[0] if target is stops[1] else stops[1]
    value = known.value * 2.0 ** aperture_difference_stops(target.value, one.value)  # between two marks the stops are counted (contract 12)
    if most is not None and value > most.value * 1.0005:
        return Solution("out_of_reach", f"Out of reach: more than the {most.value:g} Ws there are; it would take", (Quantity("energy", value, "J"),), used=(known, one, target, most, *powers), topic="time", working=("energy goes with the square of the f-number",))
    powers = [*powers, *((most,) if most else ())]
    if most is None and value > known.value * 1.0005 and known.origin == "said" and (_TOPS_OUT.search(query.text[max(0, known.start - 40) : known.end + 30]) or _FLAT_OUT.match(query.text, known.end)):
        pops = whole_count(value / known.value)
        return Solution("out_of_reach", "Out of reach of the head in one flash; it would take", (Quantity("energy", value, "J"),), used=(known, one, target, *powers), topic="time", working=("energy goes with the square of the f-number",),
                        alternatives=((marks.count(pops, "pops"), Quantity("energy", known.value, "J")),), notes=(f"What works: {pops:g} pops at {known.value:g} Ws on one frame, or open the lens.",))
    return Solution(answers=(Quantity("energy", value, "J"),), used=(known, one, target, *powers), topic="time", working=("energy goes with the square of the f-number",))


_BY_ALL_OF_THEM = Pattern(r"\b(?:how many|how much|what)\b[^?]*\b(?:between them|together|in all|altogether|in total|all told)\b", re.I)
_OF_THE_OTHER = Pattern(r"\b(?:twice|double|half|thrice|(?:two|three|four) times) (?:what|as much as|that of|the energy of)\b", re.I)
"""One head's share told by the other's."""


def _energy_of(query: Query, ask: Ask, full: Fact) -> Solution | None:
    """Full energy, times the power, times the pops; divided among heads where it is split."""
    if _OF_THE_OTHER.search(query.text) and "split" not in query.cues:
        return None
    counts = [f for f in query.facts if f.quantity == "count"]
    summed = ask.of == "each" and "split" not in query.cues and _BY_ALL_OF_THEM.search(query.text) is not None  # "each at half power. How many do they release between them?"
    split = "split" in query.cues or ask.of in ("each", "larger", "smaller") and not summed
    ratio = query.last("ratio")
    told = known_at.told_and_asked(query, full)
    part, fact = (told[1] / told[0], told[2][0]) if told else share(query)
    value, used = duration.energy_at(full.value, part or 1.0), [full, *(told[2] if told else (fact,) if fact else ())]
    if split and ratio and any(f.value > 2 for f in counts):
        return None  # "three heads, 2:1:1"
    if split and ratio and ratio.value > 0:
        larger = max(ratio.value, 1 / ratio.value)
        shares = [Quantity("energy", value * part / (larger + 1), "J", name) for part, name in ((larger, "larger share"), (1.0, "smaller share"))]
        ordered = reversed(shares) if ask.of == "smaller" else shares
        return Solution(answers=tuple(ordered), used=(*used, ratio, *counts), topic="time", working=(f"{larger + 1:g} parts of {value / (larger + 1):g}",))
    if split and patterns.search(r"\b(?:twice|double|half)\b[^.?]{0,12}\bother", query.text.lower()):
        return Solution(answers=(Quantity("energy", value * 2 / 3, "J", "larger share"), Quantity("energy", value / 3, "J", "smaller share")), used=tuple(used), topic="time")
    heads = next((f for f in counts if f.value > 1), None)
    if split and heads:
        return Solution(lead="Each head gets", answers=(Quantity("energy", value / heads.value, "J"),), used=(*used, heads), topic="time", working=(f"{value:g} / {heads.value:g}",))
    if split:
        return needs(("count",), "I need the number of heads.", tuple(used), "time")
    lower = query.text.lower()
    if heads and heads.unit in ("flashes", "heads") and any(w in lower for w in ("pack", "generator", "share", "rest", "others")):
        return None
    extra = next((f for f in query.facts if f.quantity in ("stops", "signed", "relation") and (f.cue == "more" or f.unit == "+")), None)
    if extra is not None and fact is not extra:
        value, used = value * 2.0 ** abs(extra.value), [*used, extra]
    for found in counts:
        if found.unit in ("pops", "flashes", "frames", "heads"):
            value, used = value * found.value, [*used, found]
    return Solution(answers=(Quantity("energy", value, "J"),), used=tuple(used), topic="time", working=("full energy × power" + (" × pops" if counts else ""),))


def _power(query: Query, ask: Ask) -> Solution | None:
    """The power setting that gives so many watt-seconds, or recycles in so many seconds."""
    if any(query.has(q) for q in ("guide_number", "aperture", "distance")):
        return None
    energies, recycles = query.all("energy"), [f for f in query.facts if f.quantity in ("recycle", "interval", "time") or f.quantity == "shutter" and f.value >= 0.1]
    if len(energies) == 2:
        high, low = max(energies, key=lambda f: f.value), min(energies, key=lambda f: f.value)
        part = own(low, query.all("power"), query.text) if query.has("power") and len({f.value for f in query.all("power")}) == 1 else None
        if part is not None and apart(part, low, query.text) > apart(part, high, query.text):
            return None
        return Solution(answers=(marks.power((duration.energy_at(low.value, part.value) if part else low.value) / high.value),), used=(*energies, *query.all("power")), topic="time")
    if len(recycles) == 1 and recycles[0].quantity == "recycle":
        recycles += [f for f in query.all("shutter") if f.value >= 0.2 and f.of != "ambient"]
    waits = len(query.all("interval")) == 2 and {f.quantity for f in query.facts} <= {"interval", "power", "remark", "place"} and all(f.value == 1 for f in query.all("power"))
    if len(recycles) == 2 and (query.has("recycle") or "recycle" in query.cues or waits):
        long, short = sorted(recycles, key=lambda f: -f.value)
        return Solution(answers=(marks.power(short.value / long.value),), used=(*recycles, *query.all("power")), topic="time", notes=("Or anything weaker: recycling goes with the energy.",))
    return None


TOPICS = {
    "duration": (open_each.solve, recharge.solve, _pulse, _short_enough, _series, _recycle),
    "shutter": (open_each.solve, _short_enough, _series),
    "distance": (strobe_images.spacing, strobe_images.on_film, _movement),
    "freeze": (_freezes,),
    "energy": (energy_short.of_heads, energy_short.solve, _energy),
    "stops": (charge.solve,),
    "power": (_power,),
}
