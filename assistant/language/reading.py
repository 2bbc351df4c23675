"""Reading: items become a query. What is given, what is asked, what could not be placed."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import (
    asked_of,
    auto_words,
    background_lamp,
    bared,
    beam_words,
    bounce_words,
    by_kinds,
    charge_share,
    charge_words,
    daylight,
    daylight_asks,
    denials,
    each_from,
    film_pairs,
    film_words,
    guide_words,
    hours,
    light_losses,
    lit_cloths,
    metered_times,
    nd_counts,
    nd_marked,
    open_asks,
    others_power,
    pop_limits,
    pop_numbers,
    pop_words,
    power_steps,
    relative_places,
    sheet_words,
    shutter_rows,
    tested_words,
    told_as_well,
    turned_power,
    two_alike,
    two_guides,
    two_places,
    two_times,
)
from assistant.language.asks import asks_of
from assistant.language.bare_numbers import number_meant
from assistant.language.facts import facts_of
from assistant.language.from_the_focus import hair_alone
from assistant.language.hearing import hear
from assistant.language.hints import implied_asks
from assistant.language.item_builders import build
from assistant.language.items import Item
from assistant.language.length_items import PACE_METRES
from assistant.language.lens_words import lens_asks, lens_facts, speaks_of_lenses
from assistant.language.lights_named import called_by_what_they_are
from assistant.language.lists import PAIRS, expand, in_order_of_time, metres_and_more
from assistant.language.moved_places import as_near_as_it_gets
from assistant.language.names import index_of, names_told
from assistant.language.orders import ordered
from assistant.language.parsing import parse
from assistant.language.pieces import Number
from assistant.language.rows import row_by_number
from assistant.language.segments import ROLES, Segment, cut, owners
from assistant.language.slips import put_right_slips
from assistant.language.slips_of_tongue import left_behind, put_right
from assistant.language.steps import Table, stepped
from assistant.language.tables import Tables
from assistant.language.time_asks import time_asks
from assistant.language.time_words import time_facts
from assistant.language.yes_no import is_claim
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import is_aperture_mark


def read(text: str, tables: Tables, names: Sequence[str] = ()) -> Query:
    """The query of a text; `names` are the lights the person has named before.

    Nothing is solved and nothing is assumed.
    """
    text, slips = put_right_slips(text, tables.lexicon, names)
    heard = hear(patterns.at_hand(text), tables.lexicon, index_of(names))
    told = names_told(heard.tokens, text)
    if told:
        heard = hear(text, tables.lexicon, index_of([*names, *told]))
    items = build(parse(heard.tokens, tables))
    items, taken_back = put_right(items, text)
    items = bounce_words.unbounced(items, text)
    by_shutter = shutter_rows.table(called_by_what_they_are(items, text), text)
    items = by_shutter.items
    cues, segments = _cues(items), cut(items)
    facts = stepped(_settle_numbers(stepped(facts_of(segments, owners(segments, text), text), text, _ROWS), segments, text), text, _AS_TOLD)
    facts = stepped(_unit_after(facts, segments), text, _OF_PAIRS)
    facts = stepped(light_losses.settle(auto_words.settle(facts, text, cues), text, cues), text, _OF_TWO)
    cues |= {"sunny"} if daylight.in_plain_sun(text) else frozenset()
    facts = daylight.settle(facts, text, cues)
    of_lenses = speaks_of_lenses(items, text)
    facts = stepped(time_facts(lens_facts(facts, items, text, of_lenses), items, text), text, _BY_KINDS)
    asks = _asked(items, segments, facts, cues, text)
    asks = tested_words.asked(time_asks(beam_words.asked(lens_asks(asks, facts, items, text, of_lenses), facts, text), facts, items, text), facts, text)
    asks = asked_of.settle(by_kinds.asked(_not_told_here(sheet_words.asked(asks, facts, text), facts, text), facts, text), facts, text)
    asks = open_asks.settle(two_guides.asked(asks, facts, text), facts, text)
    facts = [replace(f, value=math.inf, bad="that is no number") if f.value != f.value and not f.bad else f for f in facts]  # infinity less infinity
    facts = film_words.as_marked(in_order_of_time(shutter_rows.settle(facts, by_shutter.rows, text), text), text)
    claim = is_claim(text, segments, asks, facts)
    figures = [(t.start, t.end, t.value.value) for t in heard.tokens if t.value.__class__ is Number and text[t.start].isdecimal()]
    facts = facts if claim else bared.settle(denials.settle(facts, text), text)  # a claim may deny: "it isn't half power, is it?"
    return Query(
        text=text,
        facts=tuple(facts),
        asks=tuple(asks),
        cues=cues | _meant_cues(text),
        claim=claim,
        unknown=tuple([text[i.start : i.end] for i in items if i.kind == "word"]),
        unplaced=tuple([f.said for f in facts if f.quantity == "number" and not f.bad]),
        read_as=slips + tuple([(text[t.start : t.end], t.read_as) for t in heard.tokens if t.read_as]),
        known_words=len([i for i in items if i.kind not in _LITTLE]),
        units=_units(items),
        items=tuple(items),
        names=tuple(told),
        mentioned=tuple(dict.fromkeys([i.word for i in items if i.kind in ROLES])),
        cut=heard.cut,
        figures=tuple(figures if not taken_back else [f for f in figures if not any(f[0] in part for part in taken_back)]),
        taken_back=tuple([(*f, part.stop) for part in taken_back for f in figures if f[0] in part]) if taken_back else (),
    )


def _asked(items: Sequence[Item], segments: Sequence[Segment], facts: Sequence[Fact], cues: frozenset[str], text: str) -> list[Ask]:
    """What is asked by name, or else by what is told and how the text ends."""
    named = daylight_asks.asked(light_losses.asked(asks_of(segments, text), facts, text), facts, text) or _of_a_light(daylight_asks.implied(text, facts), items, text)
    hinted = [] if named or "call_it" in cues else _of_a_light(implied_asks(text, facts), items, text)
    if [a.quantity for a in named] == ["aperture"] and not named[0].of:
        named = _at_the_back(named, text)
    return named or hinted or ordered(text, facts)


_SET_TO = Pattern(r"\b(?:shutter|aperture|lens|power|speed|film|(?:re-?)?rat(?:e|ed|ing)|iso|flash|it)(?: (?:it|speed|them))?(?: down| up| back)?(?: to| at| on)\s*$", re.IGNORECASE)
_WHAT_IF = Pattern(r"\b(?:what|how) (?:if|about)\b|^\W*(?:and |but |or |then )?if\b", re.IGNORECASE)
_ASKING = Pattern(r"\b(?:what|which|how|where|whats|when)\b", re.IGNORECASE)


_AT_THAT = Pattern(r"\b(?:at|with|on|using|for) (?:the|that|this|whatever) (?:right |correct |same |resulting )?(?:aperture|f-?stop|f-?number)\b|\b(?:use|using|set|set to|set at|take|shoot at|work at) (?:the|that) (?:aperture|f-?stop|f-?number) (?:which|that|the flash|it)\b|\bwhatever (?:aperture|f-?stop|f-?number|stop)\b", re.IGNORECASE)
_WHAT_APERTURE = Pattern(r"\b(?:what|which|whats|what's|aperture and|f-?stop and|and (?:the |what )?(?:aperture|f-?stop))\b[^.?!]{0,16}(?:aperture|f-?stop|f-?number)\b", re.IGNORECASE)


def _not_told_here(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """"what if I drag the shutter to 1/15?" tells the time and does not ask it, nor does "at the aperture that is right for the flash, how deep is it?" the aperture."""
    if len(asks) == 2 and asks[0].quantity == "aperture" and asks[1].quantity in ("depth_of_field", "near_limit", "far_limit", "hyperfocal") and _AT_THAT.search(text) and not _WHAT_APERTURE.search(text):
        return asks[1:]
    if len(asks) != 1 or asks[0].quantity not in ("shutter", "film_speed", "aperture", "power"):
        return asks
    told = [f for f in facts if f.quantity == asks[0].quantity and _SET_TO.search(text[: f.start])]
    if len(told) != 1 or not _WHAT_IF.search(text) or _ASKING.search(_WHAT_IF.sub(" ", text)):
        return asks
    return []


_LITTLE = frozenset({"word", "glue", "mark", "link"})


_TO_READ = Pattern(r"\s*(?:light |head |flash )?(?:then |now )?(?:should|must|is to|has to|needs to|to)? ?(?:reads?|meters?|at|shows?)\W*\?+\W*$", re.I)
"""After the light whose reading is asked: "the fill should read?"."""
_READ_AT_LAST = Pattern(r"\b(?:reads?|meters?|at|shows?)\W*\?+\W*$", re.I)


_READS = Pattern(r" (?:light |head |flash |paper )?(?:alone |then |now )?(?:should |must |has to |will )?(?:reads?|meters?|shows?) (?:at )?", re.I)
"""Between the light and "what": "so the paper meters what f"."""


_OVER_OR_UNDER = Pattern(r"\bstops? (?:over|under|above|below|brighter|darker|up|down|hotter)\b", re.I)
_AT_THE_BACK = Pattern(r"\b(?:meter|read|measure|get|see)(?:ing)?\b[^?.]{0,16}?\b(?:at|on|off|from) (?:the|my) (?:[a-z]+ )?(?:backdrop|background|wall|paper|cloth|screen|seamless)\b", re.I)


def _of_a_light(asks: list[Ask], items: Sequence[Item], text: str) -> list[Ask]:
    """"what should the fill meter", "where is the key": the light that stands right after the question word."""
    if not asks:
        return asks
    lower = text.lower()
    at = max(lower.rfind("what"), lower.rfind("where")) if asks[0].quantity == "distance" else lower.rfind("what")
    items = [i for i in items if i.kind in ROLES]
    light = next((i for i in items if 0 <= at < i.start <= at + 24), None)
    if light is None and _READ_AT_LAST.search(text):
        light = next((i for i in reversed(items) if _TO_READ.match(text[i.end :])), None)
    if light is None and at > 0:
        light = next((i for i in reversed(items) if i.end < at and _READS.fullmatch(text[i.end : at])), None)
    return _at_the_back(asks, text) if light is None else [a if a.of else replace(a, of=light.word) for a in asks]


def _at_the_back(asks: list[Ask], text: str) -> list[Ask]:
    """"I want the cloth a stop under, so what do I read at the backdrop?": the backdrop's aperture."""
    at = text.lower().rfind("what")
    if at < 0 or asks[0].quantity != "aperture" or not _AT_THE_BACK.search(text, at) or not _OVER_OR_UNDER.search(text, 0, at):
        return asks
    return [replace(asks[0], of="background"), *asks[1:]]


def _unit_after(facts: list[Fact], segments: Sequence[Segment]) -> list[Fact]:
    """"Leitzahl 45, metres": a unit that stands alone after the number belongs to it."""
    out = facts
    for before, after in zip(segments, segments[1:]):
        alone = len(after.items) == 1 or (len(after.items) == 2 and after.items[0].word == "IN")
        if alone and after.items and after.items[-1].kind == "unit_name" and before.items and before.items[-1].kind == "guide_number":
            out = [replace(f, unit=after.items[-1].word) if f.start == before.items[-1].start and not f.unit else f for f in out]
    return out


def _listed_guides(facts: list[Fact], text: str) -> list[Fact]:
    """"guide numbers of 36, 36 and 58 metres": every number of the list is a guide number."""
    facts = [part for f in facts for part in (_pair_of_guides(f) if f.quantity == "guide_number_pair" else (f,))]
    found = patterns.search(r"\b(?:guide ?numbers|guides|gns)\b", text.lower())
    at = next((n for n, f in enumerate(facts) if f.quantity == "guide_number" and found and f.start <= found.end() + 12 and f.end > found.start()), None)
    if at is None:
        return facts
    out, unit = list(facts), facts[at].unit
    for n in range(at + 1, len(facts)):
        fact, gap = facts[n], text[facts[n - 1].end : facts[n].start]
        if patterns.sub(r"[\s,&]|and", "", gap.lower()) or fact.quantity not in ("number", "distance", "length_range", "number_range", "guide_number", "guide_number_pair"):
            break
        scale = {"ft": 0.3048, "m": 1.0}.get(fact.unit, 1.0) if fact.quantity in ("distance", "length_range") else 1.0
        unit = unit or fact.unit
        made = [replace(fact, quantity="guide_number", value=fact.value / scale, other=math.nan)]
        if not math.isnan(fact.other) and fact.quantity in ("length_range", "number_range", "guide_number_pair"):
            made.append(replace(fact, quantity="guide_number", value=fact.other / scale, other=math.nan, start=fact.end - 1))
        out = [f for f in out if f is not fact] + made
    return sorted((replace(f, unit=f.unit or unit) if f.quantity == "guide_number" else f for f in out), key=lambda f: f.start)


def _pair_of_guides(pair: Fact) -> tuple[Fact, Fact]:
    """"guide numbers 40 and 30": one and the other."""
    one = replace(pair, quantity="guide_number", other=math.nan)
    return one, replace(one, value=pair.other, start=pair.end - 1)


def _rows_in_order(facts: list[Fact], text: str) -> list[Fact]:
    """"three rows at 10, 12 and 14 feet": the front, the middle and the back."""
    lengths = [f for f in facts if f.quantity == "distance" and not f.of]
    if len({f.value for f in lengths}) < 3 or any(f.cue in ("from", "to") for f in lengths) or not patterns.search(r"\brows?\b", text.lower()):
        return facts
    ordered = sorted(lengths, key=lambda f: f.value)
    places = {ordered[0].start: "front", ordered[-1].start: "back"}
    return [replace(f, of=places.get(f.start, "middle")) if f in lengths else f for f in facts]


def _lens_span(facts: list[Fact], text: str) -> list[Fact]:
    """"the lens goes 2.8 to 22": from f-number to f-number."""
    span = Pattern(r"\b(?:lens|ring|aperture)s?\b[^.?]{0,24}$", re.IGNORECASE)
    return [replace(f, quantity="aperture_range", of="") if f.quantity == "number_range" and is_aperture_mark(f.value) and is_aperture_mark(f.other)
            and (span.search(text[: f.start]) or (len(facts) == 1 and _ODD_MARKS & {f.value, f.other} and patterns.search(r"\bstops\b", text.lower()))) else f for f in facts]


_ODD_MARKS = frozenset({1.4, 2.8, 5.6, 11.0, 22.0})
"""F-numbers that nobody takes for another figure: "2.8 to 8 in stops"."""


def _magnified(facts: list[Fact], text: str) -> list[Fact]:
    """"shooting at 1:1": a scale of reproduction, where no lighting ratio is spoken of."""
    if patterns.search(r"\b(?:ratio|key|fill|lighting|main|contrast)\b", text.lower()) or not (patterns.search(r"\b(?:at|to) 1:\d|, ?1:\d(?! ratio)|macro|close.?up|life|coin|ring|bellows", text.lower()) or _SCALE.search(text)):
        return facts
    return [replace(f, quantity="magnification", other=1.0) if f.quantity == "ratio" and f.value <= 5 else f for f in facts]


_SCALE = Pattern(r"\b(?:going|go|goes|shoot\w*|photograph\w*|focus\w*|down|in|up|at|copying) (?:(?:in|up|down|at|to|as close as) )*(?:1:1|one[- ]to[- ]one)\b|\b(?:1:\d|one[- ]to[- ]one) (?:costs?|loses?|eats?|takes?|needs?|robs?|means|wants?|magnification|reproduction)\b", re.IGNORECASE)
"""A scale by the verb before it, or by what it takes."""


_AGAIN = Pattern(r"\b(?:another|a second|one more|its twin)\b(?: one| flash| light| head)?[^.?]{0,40}\b(?:same (?:spot|place|distance|position|stand)|beside it|next to it|alongside)", re.IGNORECASE)


_LIKE_IT = Pattern(r"\b(?:second|another|more|twin)\b[^.?,;]{0,16}\b(?:just )?(?:like (?:it|that|the first)|the same|identical|of the same)\b", re.I)
_ADDED = Pattern(r"\b(?:add|put|bring|set|clamp|stand|rig|mount|fire|plac|position|hang|bolt|screw|fix|us)(?:ing|ed|es|e|s)?(?: in| up| on)? (?:an?|the|one|its) (?:(?:second|same|identical|another|matching|twin|like|equal|other) )+(?:one|flash|gun|light|head|lamp|strobe)?\b[^.?]{0,24}\b(?:next to|beside|alongside|same (?:spot|place|stand|distance)|with) (?:it|the first)?", re.IGNORECASE)


def _same_again(facts: list[Fact], text: str) -> list[Fact]:
    """"a GN 24 m flash and another at the same spot": two of them."""
    found = _AGAIN.search(text) or _ADDED.search(text)
    if not found or not any(f.quantity in ("guide_number", "aperture") and f.start < found.start() for f in facts) or any(f.quantity == "count" and (f.value > 1 or not _ADDED.search(text) and not _LIKE_IT.search(text)) for f in facts):
        return facts
    two = Fact("count", 2.0, "flashes", start=found.start(), end=found.end(), said=found.group())
    return [replace(f, of="") if f.of in ("a", "b") else f for f in facts if f.quantity != "count" or f.value != 1] + [two]


def _metric_paces(facts: list[Fact], _: str) -> list[Fact]:
    """A pace is 0.75 m to somebody who speaks in metres."""
    if "pace" not in [f.unit for f in facts]:
        return facts
    metric = any(f.unit in ("m", "cm") for f in facts if f.quantity in ("guide_number", "distance", "path"))
    return [replace(f, value=f.value / PACE_METRES["ft"] * PACE_METRES["m"], unit="m") if f.unit == "pace" and metric else f for f in facts]


def _now_here(facts: list[Fact], text: str) -> list[Fact]:
    """"f/8 at two metres; now I'm at 3 m": the second distance is of the same kind as the first."""
    placed = [f for f in facts if f.quantity == "distance" and not f.of]
    moved = [f for f in facts if f.quantity == "camera_distance" and f.cue == "self"]
    if len(placed) != 1 or len(moved) != 1 or not patterns.search(r"\b(now|today|tonight|this time)\b", text[placed[0].end :].lower()):
        return facts
    return [replace(f, quantity="distance", of="", cue="") if f is moved[0] else f for f in facts]


_ROWS = Table(((hours.settle, hours.KINDS), (metres_and_more, frozenset({"number"})), (expand, frozenset({"number", "shutter", *PAIRS}))))
"""Before the bare numbers are settled: rows said with one unit."""
_AS_TOLD = Table((
    (_rows_in_order, frozenset({"distance"})), (_lens_span, frozenset({"number_range"})), (_magnified, frozenset({"ratio"})), (_same_again, frozenset({"guide_number", "aperture"})),
    (_metric_paces, None), (hair_alone, frozenset({"distance"})), (nd_counts.settle, nd_counts.KINDS), (nd_marked.settle, nd_marked.KINDS), *guide_words.STEPS, *tested_words.STEPS, (_now_here, frozenset({"camera_distance"})), (as_near_as_it_gets, frozenset({"min_distance"})),
    (row_by_number, frozenset({"power", "number"})), (relative_places.settle, relative_places.KINDS), (lit_cloths.settle, lit_cloths.KINDS), (background_lamp.settle, background_lamp.KINDS), (background_lamp.read_on_it, background_lamp.READ), (background_lamp.heads_on_it, background_lamp.HEADS), (others_power.settle, others_power.KINDS),
))
_OF_PAIRS = Table(((_listed_guides, frozenset({"guide_number", "guide_number_pair"})), *film_pairs.STEPS))
_OF_TWO = Table(((turned_power.settle, frozenset({"aperture"})), (power_steps.half_as_far, frozenset({"power", "share"})), (power_steps.settle, frozenset({"power"})), (left_behind, frozenset({"gap"})), (pop_words.stood_from, frozenset({"gap", "camera_distance"})), (pop_words.onto_the_wall, frozenset({"gap", "distance"})), (two_times.settle, two_times.KINDS), (two_guides.settle, two_guides.KINDS), (two_guides.another_flash, two_guides.KINDS), (two_alike.settle, frozenset({"guide_number"})), (two_places.one_row_moved_from, frozenset({"distance"})), (two_places.of_two_things, frozenset({"distance"})), (each_from.settle, frozenset({"guide_number", "count"})), *metered_times.STEPS, *told_as_well.STEPS))
_BY_KINDS = Table(((beam_words.settle, beam_words.KINDS), (sheet_words.settle, sheet_words.KINDS), (charge_share.settle, None), (charge_words.settle, charge_words.KINDS), (by_kinds.settle, None), (pop_numbers.settle, pop_numbers.KINDS), (pop_limits.settle, pop_limits.KINDS)))


_CUES = frozenset({"cue", "modifier", "camera_filter"})
_TELLING_MARKS = frozenset({"NOT", "BOTH", "EACH", "BARE", "VERSUS", "OR", "Q", "FILM", "LENS", "EXTENSION"})


def _cues(items: Sequence[Item]) -> frozenset[str]:
    cues = []
    for item in items:
        kind = item.kind
        if kind in _CUES:
            cues.append(item.word)
        elif kind == "mark" and item.word in _TELLING_MARKS:
            cues.append(item.word.lower())
        elif kind == "name":
            cues.append("name_" + item.word)
    return frozenset(cues)


_SPAN = Phrasings(r"(?<!max )(?<!maximum )(?<!greatest )(?<!longest )(?<!this )(?<!that )(?<!close )(?<!short )(?<!such )\brange(?! (?:was|drops|falls|went|of the (?:flash|gun)))|between wh(?:at|ich)|from (?:what|which) distance to (?:what|which)|within (?:what|which) distances|nearest|near(?: and|est and)|how near\b[^.?!]{0,24}\bhow far|either (?:way|side)|stays? within|stay(?:ing)? within|\bwander|leeway|how close and how far|tolera|accept|get away|plus (?:or|and) minus|each way|both ways|limits", re.IGNORECASE)


def _meant_cues(text: str) -> frozenset[str]:
    """Cues that no single word carries."""
    cues = []
    if _AGAIN.search(text):
        cues.append("same_spot")
    if _SPAN.found_in(text) or "±" in text or "+/-" in text:
        cues.append("span")
    if open_asks.METERED_ASKED.found_in(text):
        cues.append("metered_asked")
    if open_asks.SAFE_SPAN.found_in(text) and not open_asks.IN_TURN.search(text):
        cues.append("safe_span")
    return frozenset(cues)


def _units(items: Sequence[Item]) -> tuple[str, ...]:
    """Units asked for by name: "in metres"."""
    if "unit_name" not in [i.kind for i in items]:
        return ()
    named = [n for n, item in enumerate(items) if item.kind == "unit_name" and n and items[n - 1].kind == "mark" and items[n - 1].word in ("IN", "NOT", "AS")]
    return tuple([items[n].word if items[n - 1].word == "IN" else "not " + items[n].word for n in named])


def _settle_numbers(facts: list[Fact], segments: Sequence[Segment], text: str) -> list[Fact]:
    """Bare numbers that their neighbours give a meaning; the rest stay numbers."""
    kinds = frozenset([f.quantity for f in facts])
    if kinds.isdisjoint(("number", "gn_iso")) and not kinds >= {"guide_number", "power"}:
        return facts
    items = [i for s in segments for i in s.items]
    places = {i.start: n for n, i in enumerate(items)}
    names = {i.word for i in items if i.kind == "name"}
    out: list[Fact] = []
    for fact in facts:
        if fact.quantity == "number" and not fact.bad:
            meant = number_meant(fact, items, places[fact.start], names, facts, kinds, text)
            if meant is None:
                continue
            fact = meant
        out.append(fact)
    return _conditions(out, items, places, text)


def _conditions(facts: list[Fact], items: Sequence[Item], places: dict[int, int], text: str) -> list[Fact]:
    """"guide number 90 at quarter power", "24 at ISO 64": the condition goes with the number (contract 18)."""
    out: list[Fact] = []
    for fact in facts:
        guide = out[-1] if out and out[-1].quantity == "guide_number" else None
        at = places.get(fact.start, 0)
        joined = at > 1 and items[at - 2].kind == "guide_number" and items[at - 1].kind == "mark" and items[at - 1].word in ("AT", "FOR")
        apart = guide is not None and "," in text[guide.end : fact.start]  # "gn 80, at quarter power": the scene's, not the number's
        joined = joined and not apart
        if guide and joined and fact.quantity == "gn_iso" and not fact.bad:
            out[-1] = replace(guide, at_iso=fact.value)
        elif guide and joined and fact.quantity == "power" and not fact.bad:
            out[-1] = replace(guide, at_power=fact.value)
        else:
            out.append(replace(fact, quantity="film_speed") if fact.quantity == "gn_iso" else fact)
    return out
