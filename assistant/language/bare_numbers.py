"""Bare numbers: what a number with no unit of its own is, by the words around it and by what else was said.

"key reads 8" · "four of them" · "8 at ten feet, guide 80" · "push it to 800"
Each rule looks at one thing; the first that knows the number has it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence

from assistant import patterns
from assistant.language import bare_by_words, bare_in_shorthand, bare_of_light, bare_places
from assistant.language.bare import COMMON_FILMS, Bare
from assistant.language.items import Item
from assistant.language.loose import loose_number
from assistant.language.segments import is_role
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_aperture_mark, is_film_speed_mark
from assistant.units import LENGTH

_ONE_WHOLE = Pattern(r"\s+(?:whole|full)\s*(?:[,.;)]|$|(?:and|both|so)\b)", re.I)
"""Of a stop that was named before: "the silk half a stop, thick cloth one whole"."""


def number_meant(fact: Fact, items: Sequence[Item], at: int, names: set[str], facts: Sequence[Fact], kinds: frozenset[str], text: str) -> Fact | None:
    """The fact that a bare number is, the number itself where nothing tells; None for a "one" that counts nothing."""
    loose = loose_number(fact, items, at, facts, text)
    if loose:
        return replace(fact, quantity=loose[0], of=loose[1], value=loose[2], unit=loose[3], cue=loose[4])
    if text[fact.start : fact.end].lower() in ("one", "zero") and fact.value <= 1 and _ONE_WHOLE.match(text[fact.end :]) is None:
        return None
    mark = fact.value if math.isnan(fact.other) else fact.other
    bare = Bare(fact, items, at, names, facts, kinds, text, fact.value, mark, items[max(0, at - 4) : at], items[at + 1 : at + 4])
    for rule in _EVERY_RULE:
        found = rule(bare)
        if found:
            return found
    return fact


_TO = Pattern(r"\b(?:to|at)\s*$", re.I)


def _film(n: Bare) -> Fact | None:
    """"push it to 800", "800 is a stop faster", "the fastest I have is 400"."""
    if not is_film_speed_mark(n.value) or n.value < 12:
        return None
    pushed = any(i.kind == "cue" and i.word in ("push", "pull") for i in n.items[n.at + 1 : n.at + 3])
    if pushed or patterns.search(r"\b(?:faster|slower)\b", n.text.lower()):
        return n.of("film_speed", of="")
    if "fastest" in n.cues and n.value >= 25:
        return n.of("max_film_speed", of="", cue="at_most")
    if n.cues & {"push", "pull"} and "guide_number" in n.kinds and _TO.search(n.text[: n.fact.start]):
        return n.of("rated", of="film")
    if n.cues & {"push", "pull", "rate", "box_speed"}:
        return n.of("rated" if "rate" in n.cues and "film_speed" in n.kinds else "film_speed", of="")
    return None


_AGAINST = Pattern(r"\s*(?:film|stock)?\s*(?:vs?\.?|versus|against|compared (?:to|with)|to|and|-)\s*")


def _second_speed(n: Bare) -> Fact | None:
    """"ISO 100 v 800 in stops": a speed against a speed."""
    before = next((f for f in reversed(n.facts) if f.start < n.fact.start), None)
    if n.value not in COMMON_FILMS or before is None or before.quantity != "film_speed" or not patterns.search(r"\bstops?\b", n.text.lower()):
        return None
    return n.of("film_speed", of="") if _AGAINST.fullmatch(n.text[before.end : n.fact.start].lower()) else None


def _reading(n: Bare) -> Fact | None:
    """"the key reads 8"; "the key is 80" of a light just told is its guide number."""
    role = next((i.word for i in reversed(n.before) if is_role(i)), "")
    by_itself = bool(n.before) and n.before[-1].kind == "cue" and n.before[-1].word == "one_light"
    if (n.reads or by_itself) and role and is_aperture_mark(n.mark):
        return n.of("aperture", value=n.mark, of=role, cue="meter")
    if n.before and n.before[-1].word == "meter" and is_aperture_mark(n.mark) and "aperture" not in n.kinds and patterns.match(r"\s*(?:at|from|for|without|with|through|bare|,|\.|$)", n.text[n.fact.end :].lower()):
        return n.of("aperture", value=n.mark, of="", cue="meter")
    told = n.before and (n.before[-1].kind == "link" or (n.before[-1].kind == "mark" and n.before[-1].word not in ("AT", "FOR"))) and any(is_role(i) for i in n.before[-3:])
    if told and n.value >= 8 and n.value == int(n.value) and len(n.items) <= 6 and not n.names and n.kinds.isdisjoint(("aperture", "distance")):
        return n.of("guide_number", unit="", of=role)
    return None


def _count(n: Bare) -> Fact | None:
    """"the little ones, four", "two identical heads", "3 GN 80 heads"."""
    if n.value != int(n.value) or n.value > 24:
        return None
    if n.before and n.before[-1].kind == "named" and 2 <= n.value <= 12:
        return n.of("count", unit="flashes", of=n.before[-1].word)
    noun = next((place for place, i in enumerate(n.after) if i.kind == "noun"), None)
    if noun and all(i.kind in ("word", "named") or i.word == "backdrop" for i in n.after[:noun]) and n.value >= 2:
        word = n.after[noun].word
        return n.of("count", unit="flashes" if word in ("flashes", "heads") else word, of="")
    if n.after and (n.after[0].kind == "guide_number" or n.after[0].kind == "energy" and n.value >= 2) and n.text[n.fact.end : n.after[0].start].isspace() and n.value <= 12:
        return n.of("count", unit="flashes", of="")
    return None


def _hinted_guide(n: Bare) -> Fact | None:
    if "gn_hint" in n.cues | {i.word for i in n.after if i.kind == "cue"} and "guide_number" not in n.kinds:
        return n.of("guide_number", unit="", of="")
    return None


def _in_a_unit(n: Bare) -> Fact | None:
    """"80 in feet": a flash's guide number, or else a distance."""
    if n.fact.unit not in ("ft", "m") or "guide_number" in n.kinds:
        return None
    flash = any(i.kind == "noun" or (i.kind == "cue" and i.word == "my_kit") for i in n.items)
    return n.of("guide_number", of="") if flash else n.of("distance", value=n.value * LENGTH[n.fact.unit])


_FLASH_SAYS = Pattern(r"\b(?:flash(?![ -]?meter)|gun|strobe|head|card|box|label|back|manual|book|booklet|plate|tag|sticker|it)\b[^.?\d]{0,24}\b(?:says?|reads?|rated(?: at)?|marked|gives?|is|shows?)\W*$", re.I)
_A_FLASH = Pattern(r"\b(?:flash(?:gun)?|gun|strobe|speedlight|monolight|flash head)\b", re.I)


def _what_the_flash_says(n: Bare) -> Fact | None:
    """"one flash, the card says 34": what is written on a flash is its guide number."""
    if "guide_number" in n.kinds or not 10 <= n.value <= 400 or n.value != int(n.value) or not _A_FLASH.search(n.text):
        return None
    return n.of("guide_number", unit="", of="") if _FLASH_SAYS.search(n.text[: n.fact.start]) else None


_TO_A_ROW = Pattern(r"\W*(?:away )?(?:from|to) (?:the |my )?(?P<back>last|back|rear|far|farthest|furthest)?\b")


def _row(n: Bare) -> Fact | None:
    """"three metres from the nearest and four from the last": in the unit of the length before."""
    found = _TO_A_ROW.match(n.text[n.fact.end : n.fact.end + 40].lower())
    if found is None or not found["back"]:
        return None
    before = next((f for f in reversed(n.facts) if f.quantity == "distance" and f.unit in LENGTH and f.start < n.fact.start), None)
    if before is None or not before.of:
        return None
    return n.of("distance", value=n.value * LENGTH[before.unit], unit=before.unit, of="back")


_FROM_ROW = Pattern(r"\bfrom\s*$", re.I)
_OF_A_ROW = Pattern(r"^\s*(?:from|to) (?:those|the|them|everyone|everybody)\b", re.I)


def _of_another_light(n: Bare, known: Fact) -> bool:
    """"main is 6 feet from her and the other sits at 8 and a half": the other light's place, where the first has its own."""
    role = next((i.word for i in reversed(n.before) if is_role(i)), "")
    return bool(role) and bool(known.of) and known.of != role and not is_aperture_mark(n.value) and n.before[-1].kind == "mark" and n.before[-1].word == "AT"


def _from_as_well(n: Bare) -> Fact | None:
    """"key from three feet, fill from six", "seven feet from the front and eleven from those at the back": in the unit of the one before."""
    before = [f for f in n.facts if f.quantity == "distance" and f.unit in LENGTH and f.start < n.fact.start]
    if not before or n.fact.bad or n.value <= 0 or patterns.match(r"\s*(?:stops?|flash|pops?|%|x\b|times|to\b|f/)", n.text[n.fact.end :], re.I):
        return None
    if _OF_A_ROW.match(n.text[n.fact.end :]) or _of_another_light(n, before[-1]) or _FROM_ROW.search(n.text[: n.fact.start]) and patterns.search(r"\bfrom\s*$", n.text[: before[-1].start], re.I):
        return n.of("distance", value=n.value * LENGTH[before[-1].unit], unit=before[-1].unit)
    return None


_THE_RING = Pattern(r"\b(?:ring|lens|aperture|iris|barrel|f.?stop)(?: (?:stays|stay|is|remains|kept|stands|left|still|set|put))* at\s*$", re.I)


def _another_place(n: Bare) -> Fact | None:
    """"f/8 is right at 10 ft, what's right at 14": in the unit of the place before."""
    if "guide_number" in n.kinds or "aperture" not in n.kinds or not patterns.search(r"\bat\s*$", n.text[max(0, n.fact.start - 20) : n.fact.start].lower()):
        return None
    before = [f for f in n.facts if f.quantity == "distance" and f.unit in LENGTH and f.start < n.fact.start]
    if len(before) != 1 or before[0].of or _THE_RING.search(n.text[max(0, n.fact.start - 40) : n.fact.start]) or not patterns.search(r"\bwhat\b|\bwhats\b|\bhow about\b|\?", n.text.lower()):
        return None
    return n.of("distance", value=n.value * LENGTH[before[0].unit], unit=before[0].unit)


_TIMED = Pattern(r"(?:1/\d+|\b(?:an? )?(?:sixtieth|thirtieth|fifteenth|eighth|half|quarter|hundredth|twenty[- ]?fifth|fiftieth|\d+(?:th|ths))|\d ?s(?:ec(?:onds?)?)?|\bseconds?)(?: of a second| a second| sec(?:ond)?s?| s)?\s*(?:wide open )?(?:at|@|and|,|/)\s*$", re.I)


def _beside_a_time(n: Bare) -> Fact | None:
    """"1/30 at 2.8": an f-number right after a shutter time."""
    plain = is_aperture_mark(n.mark) and n.mark <= 45 and not patterns.match(r"\s*(?:m\b|ft\b|feet|foot|metres?|meters?|cm|mm|stops?|s\b|sec|%|x\b|hz|ev\b|iso\b[^\d]|\"|')", n.text[n.fact.end :].lower())
    return n.of("aperture", value=n.mark, of="") if plain and "shutter" in n.kinds and _TIMED.search(n.text[max(0, n.fact.start - 40) : n.fact.start]) else None


_INSTEAD = Pattern(r"\b(?:instead of|rather than|not|from|versus|vs|against|than|to|or)\s*$", re.I)


def _of_the_exposure_value(n: Bare) -> Fact | None:
    """"EV 7 (at 100)": the film speed that the exposure value is for."""
    before = next((f for f in reversed(n.facts) if f.start < n.fact.start), None)
    told = before is not None and before.quantity == "exposure_value" and n.value in COMMON_FILMS and patterns.fullmatch(r"\W*(?:at|for|on|@)\W*", n.text[before.end : n.fact.start].lower())
    return n.of("film_speed", of="") if told else None


def _another_time(n: Bare) -> Fact | None:
    """"90 seconds instead of 30": a time against a time, in the unit of the first."""
    times = [f for f in n.facts if f.quantity in ("shutter", "time", "duration") and f.value >= 1]
    if len(times) != 1 or n.kinds & {"aperture", "distance", "guide_number"} or not _INSTEAD.search(n.text[max(0, n.fact.start - 24) : n.fact.start]):
        return None
    return n.of(times[0].quantity, unit=times[0].unit, of="")


_ON_TO = Pattern(r"\s*(?:in |out |back |down |up |over |forward |away )?(?:to|->|→)\s*", re.I)


def _on_to(n: Bare) -> Fact | None:
    """"from ten feet in to seven": in the unit of the place it came from."""
    before = next((f for f in reversed(n.facts) if f.end <= n.fact.start), None)
    if before is None or before.quantity != "distance" or before.unit not in LENGTH or not _ON_TO.fullmatch(n.text[before.end : n.fact.start]):
        return None
    return n.of("distance", value=n.value * LENGTH[before.unit], unit=before.unit, of=before.of) if not patterns.match(r"\s*(?:stops?|x\b|%|times)", n.text[n.fact.end :].lower()) else None


_ZOOM_END = Pattern(r"\s*(?:m\b|metres?|ft|feet)?\s*(?:at|on|for|zoomed to) (?:the )?(?:long|tele\w*|tight|narrow|wide|wide-angle|far)(?: end| setting| position)?\b", re.I)


def _guide_at_an_end(n: Bare) -> Fact | None:
    """"GN 28 at the wide end and 56 at the long end": a guide number for each."""
    guides = [f for f in n.facts if f.quantity == "guide_number"]
    told = len(guides) == 1 and guides[0].start < n.fact.start and 4 <= n.value <= 400 and _ZOOM_END.match(n.text[n.fact.end :])
    return n.of("guide_number", unit=guides[0].unit, of="") if told else None


_TO_SOMEBODY = Pattern(r"\s*(?:to|from) (?:the|her|his|him|them|their|our|my)\b", re.I)


def _to_another(n: Bare) -> Fact | None:
    """"three metres to the bride, four and a half to the bridesmaids": in the unit of the first."""
    before = next((f for f in reversed(n.facts) if f.end <= n.fact.start), None)
    same = before is not None and before.quantity == "distance" and before.unit in LENGTH and _TO_SOMEBODY.match(n.text[before.end :]) and _TO_SOMEBODY.match(n.text[n.fact.end :])
    return n.of("distance", value=n.value * LENGTH[before.unit], unit=before.unit, of="") if same and before is not None else None


_SOMEBODY_AT = Pattern(r"\b(?:he|she|they|it|somebody|the (?:subject|sitter|model|bride|groom|child|dancer|singer))(?:'s|'re| is| are| was| stands)? (?:now |then )?at\s*$", re.I)


def _somebody_at(n: Bare) -> Fact | None:
    """"he takes a step back and he's at 2.5": a place, in the unit of the one before."""
    if not _SOMEBODY_AT.search(n.text[max(0, n.fact.start - 40) : n.fact.start]):
        return None
    before = [f for f in n.facts if f.quantity == "distance" and f.unit in LENGTH and f.start < n.fact.start]
    if not before:
        return None
    return n.of("distance", value=n.value * LENGTH[before[-1].unit], unit=before[-1].unit, of="")


def _lens_end(n: Bare) -> Fact | None:
    """"opens to 2.8 and closes to 22"; after "move it" nothing is told by it."""
    kind = _lens_limit(n.before, n.after, n.text)
    if kind and is_aperture_mark(n.mark) and not patterns.search(r"\blens (?:is |set |stays )?at\s*$", n.text[: n.fact.start], re.I):
        return n.of(kind, value=n.mark, of="")
    return n.fact if kind or n.cues & {"move", "closer"} else None


def _lens_limit(before: Sequence[Item], after: Sequence[Item], text: str) -> str:
    if "lens" not in text.lower():
        return ""
    near = [i.word for i in (*before[-3:], *after) if i.kind == "cue" and i.word in ("smallest_stop", "at_least", "widest", "wide_open", "at_most")]
    if not near:
        return ""
    nearer = [i.word for i in before[-3:] if i.kind == "cue" and i.word in near]
    return "widest_aperture" if (nearer or near)[-1] in ("widest", "wide_open") else "smallest_aperture"


def _named_aperture(n: Bare) -> Fact | None:
    """"the aperture I want is 8"."""
    near = [i for i in n.before if i.kind == "name"]
    linked = bool(n.before) and n.before[-1].kind in ("link", "cue", "mark") and patterns.search(r"\b(?:is|of|be|at|=|:)\s*$", n.text[: n.fact.start].lower())
    if near and near[-1].word == "aperture" and linked and is_aperture_mark(n.mark) and "aperture" not in n.kinds:
        return n.of("aperture", value=n.mark, of="")
    return None


_LENS_AT = Pattern(r"\blens (?:is |set |stays |stands )?(?:at|on|to)\s*$", re.I)


_IS_AT = Pattern(r"\b(?:at|on)\s*$", re.I)
_OF_A_LENS = Pattern(r"\s*(?:lens|glass|prime|wide|at (?:its|the) widest|maximum|max|is as)\b", re.I)


_T_NUMBER = Pattern(r"\bt[ /-]?$", re.I)


def _decimal_mark(n: Bare) -> Fact | None:
    """"five six", "2.8": only apertures are numbered so."""
    if n.mark == int(n.mark) or not is_aperture_mark(n.mark) or "aperture" in n.kinds or _T_NUMBER.search(n.text[max(0, n.fact.start - 4) : n.fact.start]) or ("lens" in n.text.lower() and not patterns.match(r"\s*(?:on|at|with) (?:the|my) lens\b", n.text[n.fact.end :].lower()) and not _LENS_AT.search(n.text[: n.fact.start]) and not (_IS_AT.search(n.text[: n.fact.start]) and not _OF_A_LENS.match(n.text[n.fact.end :]))):
        return None
    role = next((i.word for i in reversed(n.before) if is_role(i)), "")
    return n.of("aperture", value=n.mark, of=role if n.reads else "")


_PLAIN_FILMS = frozenset({100, 160, 200, 400, 800, 1600, 3200})
"""Speeds that are no shutter mark as well."""


_SET_OFF = Pattern(r"(?:[,.;]|\bon)\s*$", re.I)
_ENDS = Pattern(r"\s*(?:$|[,;?!]|\.(?!\d))")


def _stands_alone(n: Bare) -> bool:
    """"snow in full sun, 100, 1/125": set off by commas, and no time."""
    return n.value in _PLAIN_FILMS and _SET_OFF.search(n.text[: n.fact.start]) is not None and _ENDS.match(n.text[n.fact.end :]) is not None


def _common_film(n: Bare) -> Fact | None:
    """"guide number 80, ten feet, 400": film is sold in such speeds."""
    if n.value not in COMMON_FILMS:
        return None
    lacks = n.kinds.isdisjoint(("film_speed", "rated")) and not n.kinds.isdisjoint(("guide_number", "distance", "aperture", "exposure_value", *(("shutter",) if _stands_alone(n) else ()))) \
        and ("guide_number" in n.kinds or "guide_number" not in n.names)
    asked_again = "guide_number" in n.names and "film_speed" in n.kinds
    return n.of("film_speed", of="") if lacks or asked_again else None


def _what_lacks(n: Bare) -> Fact | None:
    """"8 at 12, guide 80", "need eleven at three metres": the one quantity that is still wanting."""
    if "guide_number" not in n.kinds:
        return None
    at = bool(n.before) and n.before[-1].kind == "mark" and n.before[-1].word in ("AT", "FOR")
    wanted = "want" in n.cues and "distance" in n.kinds and "count" not in n.names
    if is_aperture_mark(n.mark) and "aperture" not in n.kinds and (wanted or at and ("distance" in n.kinds or _asks_distance(n.items))):
        return n.of("aperture", value=n.mark, of="")
    if at and n.before[-1].word == "AT" and "distance" not in n.kinds and not _asks_distance(n.items):
        unit = next((f.unit for f in n.facts if f.quantity == "guide_number" and f.unit), "") or "ft"
        return n.of("distance", value=n.value * LENGTH[unit], unit=unit)
    return None


_OF_A_FRAME = Pattern(r"\b(?:frame|shot|exposure|picture|negative|neg|print|take)s?(?: (?:was|is))?(?: number| no\.?)?\s*$|\b(?:was|is) number\s*$", re.I)
"""Before the number of a frame: "the best looking frame was number five"."""


def _named_guide(n: Bare) -> Fact | None:
    if _OF_A_FRAME.search(n.text[: n.fact.start]):
        return None
    if "guide_number" in n.names and "guide_number" not in n.kinds and 4 <= n.value <= 400:
        return n.of("guide_number", unit=next((i.word for i in n.items if i.kind == "unit_name"), ""))
    return None


def _asks_distance(items: Sequence[Item]) -> bool:
    return any((i.kind == "cue" and i.word == "how_far") or (i.kind == "name" and i.word == "distance") for i in items)


RULES: tuple[Callable[[Bare], Fact | None], ...] = (
    bare_by_words.so_much_tube, bare_by_words.held_open, bare_by_words.multiplier, bare_by_words.guide_called, bare_by_words.guide_speed, bare_by_words.guide_asked_at, bare_by_words.of_a_pop, bare_by_words.wanted_mark, bare_by_words.lens_mounted, _row, _from_as_well, _film, _second_speed, _reading, _count, bare_by_words.so_many_alike, _hinted_guide, _in_a_unit, bare_by_words.spoken_mark, bare_by_words.read_on_a_face, bare_by_words.bare_read, bare_by_words.read_through, _what_the_flash_says, bare_by_words.another_lost, bare_by_words.paint_takes, bare_by_words.lost_by_it, bare_by_words.another_energy, bare_by_words.part_lost, bare_by_words.part_allowed, _beside_a_time, _of_the_exposure_value, _another_time, _on_to, bare_by_words.film_of_the_value, bare_by_words.place_with_a_film, bare_by_words.metered, bare_by_words.on_the_ring, bare_by_words.against_a_mark, bare_by_words.read_there, bare_by_words.half_mark, bare_by_words.kept_mark, bare_by_words.stopped_to, bare_by_words.left_on, _to_another, _somebody_at, _guide_at_an_end, _another_place, _lens_end, _named_aperture, _decimal_mark, _common_film, _what_lacks, _named_guide,
)
_EVERY_RULE = (*bare_of_light.RULES, *bare_in_shorthand.RULES, *bare_places.RULES, *RULES)
