"""What the kinds of figures told leave open, whatever the order they come in and whatever the verbs between them.

Where all that is told are the watt-seconds of one setting and two f-numbers, a bare 16 is the one and a
bare 22 the other; where it is one film with its f-number and another film, only an f-number can be asked.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from assistant.language import film_alone, film_words, old_scales
from assistant.language.bare import COMMON_FILMS, UNIT_NEXT
from assistant.language.hearing import fold
from assistant.language.steps import Table, stepped
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import OFFERED, Ask, Fact
from assistant.records import replace
from assistant.scales import is_aperture_mark, is_film_speed_mark
from assistant.units import LENGTH

_TOUCHED = frozenset({"number", "number_range", "distance", "power", "modifier", "exponent", "aperture_range", "film_speed", "rows", "max_count"})
_ASIDE = frozenset({"remark", "place", "rows"})
_POPS = ("pops", "flashes")
_LIKELY_ENERGY = (30.0, 6400.0)
_ANY_ENERGY = Pattern(r"\b(?:energy|joules?|j|watt[- ]?seconds?|w/?s)\b")
_IN_JOULES = Pattern(r"\s*(?:joules?|j\b|watt[- ]?seconds?|w/?s\b)")
_STOPS, _THAN_A = Pattern(r"\bstops?\b"), Pattern(r"\b(?:than|over|above|under|below|against) (?:an? |the |my |one of )?$")
_OTHER_THINGS = r"(?! (?:\w+ )?(?:sec\w*|minutes?|hours?|stops?|watts?|joules?|met(?:re|er)s?|feet|rolls?|films?|people|sheets?|steps?|paces?|degrees?|times)\b)"
_MANY = Pattern(rf"\bhow (?:many|often)\b{_OTHER_THINGS}|\b(?:pops|flashes|bursts|hits|firings|shots)\W*\?|\bnumber of\b")
_FIRED = Pattern(r"\b(?:pops?|popped|bursts?|hits?|flash(?:es)?|firings?)\b")
_SUPPLY = Pattern(r"\b(?:batter(?:y|ies)|cells|charges?|charged|packs?|sets?)\b")
_OF_FILM = Pattern(r"\b(?:on|at|for|with|is|in|to|loaded|loading|putting|got|have|of|asa|iso|the|a|an|was|now|set|hold\w*|takes?|shoot\w*|film)\s*$")
_THEN_FILM = Pattern(r"\s*(?:$|[.,;:?!)](?!\d)|(?:film|one|in|now|instead|so|and|but|today|tonight|loaded|what|whats|which|then|if|when|it)\b)")
_A_METER = Pattern(r"\b(?:for|as|without|borrow\w*|owns?|use|used|using|like) $")
_METER_READS = Pattern(r"\s*(?:readings?|reads?|says|shows|have (?:said|shown|read|given|asked|wanted)|(?:would|should|could|might|must|will|did)(?: have)?(?: then)? (?:say|said|show|shown|read|give|given|ask|asked|want|wanted))\b")
_DECADE = Pattern(r"[\s-]+(?:twen|thir|for|fif|six|seven|eigh|nine)t?ies\b")


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the bare numbers known that only one kind of figure is left for."""
    told = [f.quantity for f in facts]
    return facts if _TOUCHED.isdisjoint(told) and told.count("count") < 2 and not any(f.value >= 1930 for f in facts if f.quantity == "remark") else stepped(facts, fold(text), _RULES)


def _bare(facts: Sequence[Fact], lower: str) -> list[Fact]:
    """Numbers that carry no unit and mean nothing yet."""
    return [f for f in facts if f.quantity == "number" and not f.bad and f.value > 0 and not UNIT_NEXT.match(lower, f.end)]


def _kinds(facts: Sequence[Fact]) -> set[str]:
    return {f.quantity for f in facts} - _ASIDE - {"number"}


def _all(facts: Sequence[Fact], quantity: str) -> list[Fact]:
    return [f for f in facts if f.quantity == quantity]


_OF_A_THING = Pattern(r"[\s-]*of (?:\w+ )?(?:cable|cord|lead|wire|flex|tape|string|rope|hose|tubing|velvet|cloth|fabric|carpet|seamless|gel|foil)\b")


def _no_distance(facts: list[Fact], lower: str) -> list[Fact]:
    """"uses her camera for a meter", "two feet of cable": what is read, or how much of a thing there is, and no length of the light's way."""
    facts = [replace(f, quantity="remark", of="", cue="", unit="") if f.quantity in ("distance", "path") and _OF_A_THING.match(lower, f.end) else f for f in facts]
    return [f for f in facts if not (f.quantity == "distance" and f.said.lower() == "a meter" and (_A_METER.search(lower[: f.start]) or _METER_READS.match(lower, f.end)))]


def _heights(facts: list[Fact], lower: str) -> list[Fact]:
    """"he is 6 feet tall": how big somebody is, and no place, where no frame is to be filled and no ceiling measured."""
    if not _TALL.search(lower) or "focal_length" in {f.quantity for f in facts} or _OF_A_SIZE.search(lower):
        return facts
    return [replace(f, quantity="remark", of="", cue="", unit="") if f.quantity in ("distance", "face_height") and _TALL_AFTER.match(lower, f.end) and _SOMEBODY.search(lower[max(0, f.start - 40) : f.start]) else f for f in facts]


_TALL = Pattern(r"\btall\b")
_TALL_AFTER = Pattern(r"[\s-]*(?:tall|in height)\b")
_OF_A_SIZE = Pattern(r"\b(?:ceiling|bounc\w*|cover\w*|fill(?:s|ing)? the frame|lens|angle|degrees?|head height)\b")
_SOMEBODY = Pattern(r"\b(?:he|she|they|i|we|you|him|her|man|woman|bride|groom|boy|girl|kid|child|sitter|subject|model|person|dancer|player|guy|lady|father|mother|son|daughter)(?:'s|'m|'re| is| are| am| was| stands| being)?(?: about| nearly| only| just| over| almost)? (?:an? )?$")


def _decades(facts: list[Fact], lower: str) -> list[Fact]:
    """"cans from the nineteen-seventies": when, and no figure."""
    return [replace(f, quantity="remark", of="") if f.quantity == "number" and f.value == 19 and _DECADE.match(lower, f.end) else f for f in facts]


def _added(facts: list[Fact], lower: str) -> list[Fact]:
    """"reciprocity adds two thirds of a stop": stops, and no exponent."""
    return [replace(f, quantity="stops", cue="more", of="", unit="") if f.quantity == "exponent" and "stop" in f.said.lower() else f for f in facts]


def _two_of_energy(facts: list[Fact], lower: str) -> list[Fact]:
    """"from 150 to 600 watt seconds": the one and the other."""
    out: list[Fact] = []
    for fact in facts:
        if fact.quantity == "number_range" and _IN_JOULES.match(lower, fact.end):
            one = replace(fact, quantity="energy", unit="J", of="", other=math.nan)
            out += [one, replace(one, value=fact.other, start=fact.end - 1)]
        else:
            out.append(fact)
    same = _all(out, "energy") and not _kinds(out) - {"energy", "modifier"} and _STOPS.search(lower)
    return [replace(f, quantity="remark", value=0.0) if f.quantity == "modifier" else f for f in out] if same and "same" in lower else out


def _last_of_a_series(facts: list[Fact], lower: str) -> list[Fact]:
    """"eight flashes ... right after the eighth": one of them, and no power."""
    counts = {f.value for f in facts if f.quantity == "count" and f.value > 1}
    return [replace(f, quantity="remark", value=0.0, of="") if f.quantity == "power" and f.value and 1 / f.value in counts and f.said.lower().strip().endswith("th") and lower[: f.start].rstrip().endswith("the") else f for f in facts]


def _from_to(facts: list[Fact]) -> list[Fact]:
    """"from f/8 to f/16": the one that is, and the one that is wanted."""
    spans = _all(facts, "aperture_range")
    parts = [part for f in spans for part in (replace(f, quantity="aperture", other=math.nan), replace(f, quantity="aperture", value=f.other, other=math.nan, cue="want", start=f.end - 1))]
    return sorted([*(f for f in facts if f not in spans), *parts], key=lambda f: f.start)


def _openings(facts: list[Fact], lower: str) -> list[Fact]:
    """"400 ws gives 16, need 22", "one pop meters at eight, I want sixteen": two f-numbers, where two are what is missing."""
    if _kinds(facts) == {"energy", "aperture_range"} and len(facts) == 2:
        return _from_to(facts)
    bare, known = _bare(facts, lower), _all(facts, "aperture")
    kinds = _kinds(facts) - {"aperture"}
    of_energy = kinds == {"energy"} and len(_all(facts, "energy")) == 1 and _ANY_ENERGY.search(lower)
    of_pops = kinds <= {"count"} and all(f.value == 1 for f in _all(facts, "count")) and _FIRED.search(lower) and _MANY.search(lower)
    if not (of_energy or of_pops) or not bare or len(bare) + len(known) != 2:
        return facts
    fits = all(is_aperture_mark(f.value) and f.value <= 64 for f in bare)
    return [replace(f, quantity="aperture", unit="", of="") if f in bare else f for f in facts] if fits else facts


def _energies(facts: list[Fact], lower: str) -> list[Fact]:
    """"swapping my 200 Ws pack for the club's 800: stops?": watt-seconds as well, where nothing else is told."""
    bare, speeds = _bare(facts, lower), _all(facts, "film_speed")
    if len(speeds) == 1 and speeds[0].said.isdigit() and len(_all(facts, "aperture")) == 2 and _kinds(facts) == {"film_speed", "aperture"} and _ANY_ENERGY.search(lower) and "film" not in lower:
        return [replace(f, quantity="energy", unit="J") if f is speeds[0] else f for f in facts]  # "Ws for f/11? had f/5.6 with 100"
    fits = len(bare) == 1 == len(_all(facts, "energy")) and (_kinds(facts) == {"energy"} or _kinds(facts) <= {"energy", "stops", "relation"} and _THAN_A.search(lower[: bare[0].start])) and _LIKELY_ENERGY[0] <= bare[0].value <= _LIKELY_ENERGY[1] and _STOPS.search(lower)
    return [replace(f, quantity="energy", unit="J", of="") if f is bare[0] else f for f in facts] if fits else facts


def _films(facts: list[Fact], lower: str) -> list[Fact]:
    """"what aperture on 800 film if it was f/5.6 on 200": the other film, where one f-number and one film are told."""
    bare = _bare(facts, lower)
    fits = len(bare) == 1 == len(_all(facts, "film_speed")) == len(_all(facts, "aperture")) and _kinds(facts) == {"film_speed", "aperture"} and bare[0].value in COMMON_FILMS
    return [replace(f, quantity="film_speed", unit="", of="") if f is bare[0] else f for f in facts] if fits and _OF_FILM.search(lower[: bare[0].start]) and _THEN_FILM.match(lower, bare[0].end) else facts


def _rated(facts: list[Fact], lower: str) -> list[Fact]:
    """"I want a stop extra on my 400, what do I tell the meter": a film, where stops and a rating are all that is spoken of."""
    bare, moved = _bare(facts, lower), [f for f in facts if f.quantity in _MOVES]
    fits = len(bare) and len({f.value for f in bare}) == len(moved) == 1 and _kinds(facts) <= _MOVES and is_film_speed_mark(bare[0].value) and bare[0].value >= 12 and _DIAL.found_in(lower)
    return [replace(f, quantity="film_speed" if f is bare[0] else "remark", unit="", of="") if f in bare else f for f in facts] if fits else facts


def _timed(facts: list[Fact], lower: str) -> list[Fact]:
    """"the chart turns 8 s into 18 s. The meter says 8", "I gave 90 s where the meter said 30": seconds as well, where times are all that is told."""
    bare, times = _bare(facts, lower), _all(facts, "shutter")
    fits = len(bare) == 1 and bool(times) and _kinds(facts) == {"shutter"} and min(f.value for f in times) >= 1 and "meter" in lower and (len(times) > 1 and _BY_SHEET.search(lower) or _METER_SAYS.search(lower[: bare[0].start]))
    return [replace(f, quantity="shutter", unit="s", of="") if f is bare[0] else f for f in facts] if fits else facts


_METER_SAYS = Pattern(r"\b(?:meter(?:ed)?|reading)(?: (?:says?|said|reads?|gave|gives|was|is|wanted|asked for|showed|at|only))* $")


def _places(facts: list[Fact], lower: str) -> list[Fact]:
    """"ten pops from 3 metres; I can get no nearer than 6": a place in the same unit; and both are of the light."""
    lengths, bare = _all(facts, "distance"), _bare(facts, lower)
    pops = [f for f in _all(facts, "count") if f.unit in _POPS]
    if len(pops) != 1 or not lengths or _kinds(facts) != {"count", "distance"} or not _MANY.search(lower) and "?" not in lower:
        return facts
    if len(lengths) == len(bare) == 1 and lengths[0].unit in ("ft", "m") and not _is_film(bare[0]):
        facts = [replace(f, quantity="distance", value=f.value * LENGTH[lengths[0].unit], unit=lengths[0].unit, of="") if f is bare[0] else f for f in facts]
    both = _all(facts, "distance")
    if len(both) != 2 or len({f.of for f in both}) > 1 and any(_A_THING_STANDS.search(lower[max(0, f.start - 40) : f.start]) for f in both):
        return facts
    return [replace(f, of="", cue="") if f in both and f.of in ("", "backdrop", "camera") else f for f in facts]


_A_THING_STANDS = Pattern(r"\b(?:backdrop|background|paper|curtain|camera|tripod)\b[^.;?!]{0,24}$")
"""Right before a length: where the backdrop or the camera stands, and no place of the light."""


def _is_film(fact: Fact) -> bool:
    """Whether a bare number is more likely a film than a length."""
    return fact.value >= 50


def _supplies(facts: list[Fact], lower: str) -> list[Fact]:
    """"the run calls for 500 flashes and a set yields 120", "each frame takes six": pops as well, where a battery is spoken of."""
    bare = _bare(facts, lower)
    counts = [f for f in facts if f.quantity in ("count", "max_count") and f.unit in _POPS and f.value > 1]
    if len(counts) == 2 and not bare and _kinds(facts) <= {"count", "max_count"} and _SUPPLY.search(lower):
        return [replace(f, quantity="count", cue="") if f in counts else f for f in facts]
    fits = len(bare) == len(counts) == 1 and _kinds(facts) <= {"count", "max_count"} and bare[0].value == int(bare[0].value) and _SUPPLY.search(lower) and _FIRED.search(lower)
    return [replace(f, quantity="count", unit="pops", of="", cue="") if f in (bare[0], counts[0]) else f for f in facts] if fits else facts


_ROLLS = Pattern(r"[\s-]*(?:rolls?|films?|cassettes?|magazines?|backs?)\b")


def _rolls(facts: list[Fact], lower: str) -> list[Fact]:
    """"5 rolls of 36, one flash a frame": so many frames, and no film of ISO 5."""
    frames = [f for f in facts if f.quantity == "count" and f.unit == "frames" and f.value in _ON_A_ROLL]
    many = [f for f in facts if f.quantity in ("film_speed", "number") and 1 < f.value <= 24 and f.value == int(f.value) and (_ROLLS.match(lower, f.end) or _ROLLS.search(f.said.lower()))]
    if len(frames) != 1 or len(many) != 1 or not _SUPPLY.search(lower):
        return facts
    start, end = min(many[0].start, frames[0].start), max(many[0].end, frames[0].end)
    whole = replace(frames[0], value=many[0].value * frames[0].value, start=start, end=end, said=lower[start:end])
    return [whole if f is frames[0] else f for f in facts if f is not many[0]]


_ON_A_ROLL = frozenset({8.0, 10.0, 12.0, 15.0, 16.0, 20.0, 24.0, 27.0, 36.0})


_APIECE = Pattern(r"\s*(?:of )?(?:each|apiece|a head|per (?:kid|child|person|head|couple|guest|pupil|student|face|family))\b")
_SITTERS = Pattern(r"\s*(?:kids|children|people|persons|guests|pupils|students|couples|sitters|portraits|faces|families|players|boys|girls|men|women|of them)\b")


def _frames_apiece(facts: list[Fact], lower: str) -> list[Fact]:
    """"60 kids, two frames each": so many frames in all, where a battery is spoken of."""
    frames = [f for f in facts if f.quantity == "count" and f.unit == "frames" and _APIECE.match(lower, f.end)]
    sitters = [f for f in facts if f.quantity in ("number", "remark") and f.value > 1 and _SITTERS.match(lower, f.end)]
    if len(frames) != 1 or len(sitters) != 1 or not _SUPPLY.search(lower):
        return [replace(f, quantity="remark") if f in sitters and len(frames) == 1 else f for f in facts]
    start, end = min(sitters[0].start, frames[0].start), max(sitters[0].end, frames[0].end)
    whole = replace(frames[0], value=frames[0].value * sitters[0].value, start=start, end=end, said=lower[start:end])
    return [whole if f is frames[0] else f for f in facts if f is not sitters[0]]


def _framed(facts: list[Fact], lower: str) -> list[Fact]:
    """"three sheets round f/22, order over, normal, under": frames of a bracket."""
    rows = _all(facts, "rows")
    fits = len(rows) == 1 and rows[0].value > 1 and _kinds(facts) <= {"aperture", "stops"} and _SHEETS.search(lower)
    return [replace(f, quantity="count", unit="frames", of="") if f is rows[0] else f for f in facts] if fits else facts


_RULES = Table((
    (_no_distance, frozenset({"distance", "path"})), (_heights, frozenset({"distance", "face_height"})), (_rolls, frozenset({"count"})), (_frames_apiece, frozenset({"count"})),
    (_decades, frozenset({"number"})), (film_words.years_between, frozenset({"number", "remark", "film_speed"})), (film_words.years_of_a_rule, frozenset({"years"})), (film_words.in_degrees, frozenset({"film_speed"})), (old_scales.settle, old_scales.KINDS), (_added, frozenset({"exponent"})),
    (_two_of_energy, frozenset({"number_range", "energy"})), (_last_of_a_series, frozenset({"power"})), (_openings, frozenset({"number", "aperture_range"})),
    (_energies, frozenset({"number", "film_speed"})), (_films, frozenset({"number"})), (_rated, frozenset({"number"})), (_timed, frozenset({"number"})),
    (_places, frozenset({"count"})), (_supplies, frozenset({"count", "max_count"})), (_framed, frozenset({"rows"})),
))


# --- what is asked --------------------------------------------------------------------------------

_MOVES = frozenset({"stops", "push", "relation"})
_SHEETS = Pattern(r"\b(?:sheets|plates|negs|negatives)\b")
_OPEN = Phrasings(r"^\W*(?:(?:the|my|meter|camera) )*(?:dial|rating|ei)\b|\bneeded\b|\b(?:takes?|needs?|wants?|gives?|makes?)\W*$|\b(?:time|total|seconds|long)\b[^.]{0,24}$|\b(?:what|whats|which|how|where)\b|\b(?:so )?i (?:then )?(?:set|use|put|need)\W*$")
_NAMES_POPS = Pattern(rf"\b(?:pops|flashes|bursts|hits|firings)\W*$|\bhow (?:many|often)\b{_OTHER_THINGS}")
_FRAMES = Pattern(r"\b(?:frames|pictures|exposures|images|negatives|negs|sheets|plates|views)\W*\?\W*$|\bhow many (?:\w+ )?(?:frames|pictures|exposures|images|negatives|negs|photos|shots|sheets|plates|views|set-?ups)\b")
_SETS = Pattern(r"\bnumber of (?:sets|batteries|charges|packs)\b|\bhow many (?:\w+ )?(?:sets?|packs?|batteries|charges?|loads)\b|\b(?:sets|batteries|charges)(?: to \w+| needed| required)?\W*\?\W*$|\b(?:sets|batteries|charges) (?:needed|required)\b")
_RATING = r"(?:dial|meter|rate|rating|ei|exposure index|speed|number|iso|asa)"
_DIAL = Phrasings(rf"\b(?:what|which|where|how)\b[^.?!]{{0,48}}\b{_RATING}\b|\b{_RATING}\b(?![^.?!]*\d)[^.?!]{{0,24}}\W*$|^\W*(?:(?:the|my|meter|camera) )*(?:dial|rating|ei)\b")
_TIMED = frozenset({"interval", "recycle"})
_IN_TIME = Pattern(r"\b(?:total|time|long|altogether|seconds|in all)\b")
_TURNS = Pattern(r"\bfirst\b|\b(?:either|each|both|every) (?:side|way|direction)\b|\border\b|\b(?:thin|dark|under|less|least)\w* to \w+\b|\bplus (?:and|or) minus\b|\bone over\b")


def asked(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """What is asked where the figures told leave one thing open."""
    lower = fold(text)
    if "?" not in lower and not _OPEN.found_in(lower) and not _NAMES_POPS.search(lower) and not _TURNS.search(lower) and not any(f.cue == OFFERED for f in facts):
        return asks
    kinds = {f.quantity for f in facts}
    for rule, of in _ASKS:
        found = None if kinds.isdisjoint(of) else rule(asks, facts, lower)
        if found is not None:
            return [found]
    return asks


def _only(asks: Sequence[Ask], *quantities: str) -> bool:
    return all(a.quantity in quantities for a in asks)


def _asks_opening(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"f/8 on 100. on 400?": the f-number for the other film."""
    speeds = {f.value for f in _all(facts, "film_speed")}
    told = not asks and len(speeds) == 2 and len(_all(facts, "aperture")) == 1 and _kinds(facts) == {"film_speed", "aperture"}
    return Ask("aperture") if told and not _STOPS.search(lower.replace("f-stop", "").replace("f stop", "")) and "film do" not in lower and not _OF_ITS_OWN.search(lower) else None


_OF_ITS_OWN = Pattern(r"\b(?:which|why|who|better|worse|difference|compare\w*)\b|\bhow (?!about\b|do i set\b|should i set\b)\w+")
"""A question word with its own subject, "which is sharper": what it asks was not heard, so nothing is left open by the figures."""


def _asks_pops(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"one hit gives f/8, need f/11. hits?", "twelve flashes at 4 metres; moving to 8, flashes?"."""
    if not _FIRED.search(lower) or not _only(asks, "distance", "aperture"):
        return None
    counts, kinds = [f for f in _all(facts, "count") if f.unit in _POPS], _kinds(facts) - {"count"}
    of_light = kinds == {"aperture"} and len(_all(facts, "aperture")) == 2 and all(f.value == 1 for f in counts)
    of_place = kinds == {"distance"} and len(_all(facts, "distance")) == 2 and len(counts) == 1
    return Ask("count", "", "pops") if of_light and _NAMES_POPS.search(lower) or of_place and (_NAMES_POPS.search(lower) or not asks) else None


def _asks_supply(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"a set does 150 flashes, I need 400, how many sets", "battery 180 pops, 8 pops a frame, frames?"."""
    counts = [f for f in facts if f.quantity in ("count", "max_count") and f.unit in _POPS and f.value > 1]
    if len(counts) != 2 or _kinds(facts) - {"count", "max_count", "power"} or not _only(asks, "count"):
        return None
    if _SETS.search(lower):
        return Ask("count", "", "sets")
    return Ask("count", "", "frames") if _FRAMES.search(lower) and _SUPPLY.search(lower) else None


def _asks_rating(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"400 film, pushing it two stops. the dial says?": the rating, which is all that a film and its stops leave open."""
    moved = [f for f in facts if f.quantity in _MOVES]
    told = _only(asks, "distance", "speed", *(("aperture",) if "box" in lower else ())) and len(_all(facts, "film_speed")) == 1 == len(moved) and _kinds(facts) - _MOVES == {"film_speed"}
    return Ask("film_speed") if told and (_DIAL.found_in(lower) or asks and asks[0].quantity == "aperture") and "how many stops" not in lower else None


def _asks_power_of_ratio(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"3:1 from two equal heads, the key on half, where do I set the fill": a power, where no place is told."""
    powers = _all(facts, "power")
    told = len(powers) == 1 == len(_all(facts, "ratio")) and powers[0].of in _OTHER and _kinds(facts) <= {"power", "ratio", "count"}
    return Ask("power", _OTHER[powers[0].of]) if told and _only(asks, "distance") and _SET_TO.search(lower) and not _NAMES_OPENING.search(lower) and not _PLACED.search(lower) else None


_OTHER = {"key": "fill", "fill": "key"}
_PLACED = Pattern(r"\b(?:how (?:far|close|near)|what distance|metres|meters|feet)\b")
_NAMES_OPENING = Pattern(r"\b(?:f-?stop|f ?/?number|aperture|read(?:s|ing)?|meters?|lens|f/)\b")
_SET_TO = Pattern(r"\b(?:dial|fraction|stand|sets?|setting|goes?|go|dial\w*|turn\w*|run|power\w*|put|use|what)\b")


def _asks_other_power(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"key on half, I want the fill two stops below it, so it gets set to what": the power of the other light, where nothing is told of f-numbers."""
    powers, apart = [f for f in _all(facts, "power") if f.of], _all(facts, "relation")
    told = len(powers) == len(apart) == 1 and apart[0].of not in ("", "ambient", "backdrop", powers[0].of) and _kinds(facts) <= {"power", "relation", "distance", "count"}
    if not told or not _only(asks, "aperture") or _NAMES_OPENING.search(lower) or not _SET_TO.search(lower):
        return None
    return Ask("power", apart[0].of, "", asks[0].start) if asks else Ask("power", apart[0].of)


def _asks_energy(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"800 joules gave f/16; f/22 will take": the energy, which is all that two f-numbers and one energy leave open."""
    marks = _all(facts, "aperture")
    plain = len(_all(facts, "energy")) == 1 and len(marks) == 2 and not any(f.of for f in marks) and _kinds(facts) <= {"energy", "aperture", "modifier"} and _only(asks, "aperture", "count")
    named = _JOULES_ASKED.search(lower) is not None
    open_left = named or not _all(facts, "modifier") and (_only(asks, "count") or _WILL_TAKE.search(lower) is not None)
    return Ask("energy", "", "J") if plain and open_left and not _A_NUMBER_OF.search(lower) and not _STOPS.search(lower.replace("f-stop", "")) else None


_A_NUMBER_OF = Pattern(r"\b(?:number of|count of|discharges|pops|flashes|bursts|hits)\b")
_WILL_TAKE = Pattern(r"\b(?:will|would|to) (?:take|need|want|cost)\b|\b(?:takes|needs|wants)\W*$")
_JOULES_ASKED = Pattern(r"\b(?:what|how|which)\b[^.?!]{0,40}\b(?:joules?|watt[- ]?seconds?|w/?s|energy)\b|\b(?:joules|ws)\W*$")


def _asks_series(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"9 pops, 5 s each, total": the time they take."""
    counts = [f for f in _all(facts, "count") if f.unit in _POPS and f.value > 1]
    timed = len(counts) == 1 and len([f for f in facts if f.quantity in _TIMED]) == 1 and _kinds(facts) - _TIMED == {"count"}
    return Ask("duration", "series") if timed and all(not a.of for a in asks) and _only(asks, "duration", "shutter", "time") and _IN_TIME.search(lower) else None


_BY_SHEET = Pattern(r"\b(?:sheet|leaflet|maker|film|emulsion|chart|table|reciprocity|datasheet|instructions|box)\b")
_HOW_LONG = Pattern(r"\bwhat (?:do|must|should|shall|would) i (?:really )?give\b|\bhow (?:long|many sec\w*)\b|\b(?:time|seconds?|secs)(?: \w+){0,2}\W*$|\bmetered\W*$")


def _asks_long_time(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"the leaflet adds a stop at 10 s; metered 10 s. time?": the time to give, where one time and its extra stops are told."""
    times, added = {f.value for f in _all(facts, "shutter")}, [f for f in facts if f.quantity in ("stops", "relation", "factor") and f.cue != "less"]
    doubled = not added and "doubl" in lower
    told = len(times) == 1 and (len(added) == 1 or doubled) and min(times) >= 1 and _kinds(facts) <= {"shutter", "stops", "relation", "aperture", "factor"} and _only(asks, "stops", "shutter", "duration", "time")
    return Ask("shutter") if told and _BY_SHEET.search(lower) and _HOW_LONG.search(lower) else None


def _asks_bracket(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"three frames at f/11, half stops, underexposed first": the f-numbers."""
    frames = [f for f in _all(facts, "count") if f.unit == "frames" and f.value > 1]
    told = not asks and len(_all(facts, "aperture")) == 1 and _kinds(facts) - {"count", "stops", "signed", "relation"} == {"aperture"} and (frames or _all(facts, "stops"))
    return Ask("aperture") if told and _TURNS.search(lower) and "pop" not in lower else None


_SIZE_OF_GUIDE = Pattern(r"\b(?:how (?:big|large|high|great|small|strong|long|much|powerful|bright)(?: of)?|what (?:size|strength|sort|kind)(?: of)?|how much (?:of )?) ?(?:an? |the )?(?:\w+ )?(?:guide(?:[ -]?(?:number|no\.?))?|gn|leitzahl)\b")
_SIZE_OF_FLASH = Pattern(r"\bhow (?:big|large|powerful|strong|bright|great)(?: of)? an? (?:\w+ )?(?:flash(?:gun)?|gun|strobe|speedlight|head|light|unit)\b|\bhow (?:big|powerful|strong|bright) (?:must|should|does|has|need|would|will) (?:the |my |a |an )?(?:flash(?:gun)?|gun|strobe|speedlight|head|light|unit)\b|\bwhat (?:size|strength) (?:of )?(?:flash(?:gun)?|gun|strobe|speedlight)\b")


def _asks_size(asks: list[Ask], facts: Sequence[Fact], lower: str) -> Ask | None:
    """"how big a guide number, in metres, do I have to find", "how powerful a gun for f/16 at 10 feet": the guide number."""
    kinds = _kinds(facts)
    if not {"aperture", "distance"} <= kinds or kinds & {"guide_number", "energy"}:
        return None
    named = _SIZE_OF_GUIDE.search(lower) or _SIZE_OF_FLASH.search(lower) and "joule" not in lower and "watt" not in lower
    unit = _SIZE_UNIT.search(lower) if named else None
    return Ask("guide_number", "", "" if unit is None else "m" if unit[1].startswith("m") else "ft") if named else None


_SIZE_UNIT = Pattern(r"\bin (m|metres|meters|feet|foot|ft)\b")


_ASKS: tuple[tuple[Callable[[list[Ask], Sequence[Fact], str], Ask | None], frozenset[str]], ...] = (
    # each rule, and the kinds of facts of which it needs one
    (_asks_other_power, frozenset({"relation"})), (_asks_power_of_ratio, frozenset({"ratio"})), (_asks_opening, frozenset({"film_speed"})), (_asks_pops, frozenset({"aperture", "distance"})),
    (_asks_supply, frozenset({"count", "max_count"})), (_asks_rating, _MOVES), (_asks_energy, frozenset({"energy"})), (_asks_series, frozenset({"count"})),
    (_asks_long_time, frozenset({"shutter"})), (_asks_bracket, frozenset({"aperture"})), (_asks_size, frozenset({"aperture"})), (film_alone.asked, frozenset({"film_speed", "rated", "exponent"})),
)
