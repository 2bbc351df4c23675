"""Stops and film speeds that run into other words: "a stop down", "from 400 to 100 film"."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language.number_words import STOPS_SPOKEN
from assistant.language.steps import Steps
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark

LOSING = r"(?:los(?:es?|ing|t)|cost(?:s|ing)?|eat(?:s|ing)?|ate|takes?|taking|took|swallow(?:s|ing|ed)?|steal(?:s|ing)?|stole|drinks?|drank|knock(?:s|ed|ing)? off|robs?|robbed|soak(?:s|ed) up|pinch(?:es|ed)|absorb(?:s|ing|ed)?|uses? up|keeps? back|holds? back|forfeits?|sacrifices?|gobbles?(?: up)?|consumes?)"
"""What a modifier, a filter or the bellows does to the light."""

_STOP_DOWN = Pattern(r"\b(?P<many>a|one|half a|a half|a third of a|two thirds of a)\s+stop (?P<way>down|up)\b(?!\s*to\b)(?! (?:to|the lens|from)\b)", re.I)
_MANY = {"a": 1.0, "one": 1.0, "half a": 0.5, "a half": 0.5, "a third of a": 1 / 3, "two thirds of a": 2 / 3}
_SPEEDS = Pattern(r"\b(?:from|between|going)\s+(?:iso |asa )?(?P<one>\d{2,4})(?:\s*(?:film|iso|asa|speed))*\s*(?:to|and|over to|down to|up to)\s*(?:iso |asa )?(?P<two>\d{2,4})[\s-]*(?:speed\s*)?(?:film|iso|asa|slide|neg\w*|stock)\b", re.I)
_STOP_TAKER = Pattern(r"\b(?:the|my|that|this)\s+(?P<many>one|two|three|half|four)[- ]stop\s+", re.I)
_AND_TO = Pattern(r"(?:\band|\bplus|\bthen|[,;+&]|\.(?= ))\s*(?:and |plus |then |about |maybe )?(?P<many>half|a half|another|one|two|three|a third|two thirds|one and a half|[0-3](?:\.\d+)?)(?: more| again| further)?\s+(?:lost |gone )?(?:to|for|by|in|through|from)\s+(?:the |a |an |my |that |its )?(?:(?!the\b)[a-z]+ )?", re.I)
_PART_OVER = Pattern(r"(?<!stop and )(?<!stops and )(?<!stop plus )\b(?P<many>two thirds|a third|half|one third)\s+(?:more|extra) (?:exposure|light)\b", re.I)


_TOO_LITTLE = Pattern(r"\b(?:thin|too dark|underexposed|under)\W+(?:by |about |maybe |roughly |some |perhaps )+$", re.I)
_TOO_MUCH = Pattern(r"\b(?:dense|too (?:bright|light)|overexposed|over)\W+(?:by |about |maybe |roughly |some |perhaps )+$", re.I)


def is_part(value: float) -> bool:
    """A third, a half or two thirds: what is said of stops where the word "stop" is left out."""
    return abs(value - 1 / 3) < 0.01 or abs(value - 0.5) < 0.01 or abs(value - 2 / 3) < 0.01


def between_speeds(text: str) -> bool:
    """Whether two film speeds may be spoken of in one phrase: "from 400 to 100 film"."""
    return _SPEEDS.search(text) is not None


def _stops_down(facts: list[Fact], text: str) -> list[Fact]:
    for match in _STOP_DOWN.finditer(text):
        if not any(f.quantity in ("stops", "relation", "loss", "power_down") and f.start < match.end() and f.end > match.start() for f in facts):
            cue = "less" if match["way"].lower() == "down" else "more"
            facts = _put(facts, match, [Fact("stops", _MANY[match["many"].lower()], cue=cue, start=match.start(), end=match.end(), said=match.group())])
    return facts


def _too_much_or_little(facts: list[Fact], text: str) -> list[Fact]:
    return [replace(f, cue="less" if _TOO_LITTLE.search(text[: f.start]) else "more" if _TOO_MUCH.search(text[: f.start]) else f.cue) if f.quantity == "stops" and not f.cue and not f.unit else f for f in facts]


def _speeds(facts: list[Fact], text: str) -> list[Fact]:
    for match in _SPEEDS.finditer(text):
        pair = [(float(match[g]), match.start(g), match.end(g)) for g in ("one", "two")]
        if all(is_film_speed_mark(v) and 12 <= v <= 12800 for v, _, _ in pair):
            facts = _put(facts, match, [Fact("film_speed", v, start=a, end=b, said=text[a:b]) for v, a, b in pair])
    return facts


def _stop_takers(facts: list[Fact], text: str) -> list[Fact]:
    """"the two-stop scrim": what it takes, and it."""
    for match in _STOP_TAKER.finditer(text):
        taker = next((f for f in facts if f.quantity in _TAKERS and f.start == match.end()), None)
        if taker is not None and not any(f.start < match.end() and f.end > match.start() for f in facts):
            quantity = "loss" if taker.quantity == "modifier" else "filter_loss"
            facts = _put(facts, match, [Fact(quantity, STOPS_SPOKEN[match["many"].lower()], taker.unit, taker.of, start=match.start("many"), end=match.end(), said=match.group())])
    return facts


def _and_to(facts: list[Fact], text: str) -> list[Fact]:
    """"one stop to the scrim and a half to the gel": stops as well."""
    for match in _AND_TO.finditer(text):
        taker = next((f for f in facts if f.quantity == "modifier" and match.end("many") < f.start <= match.end()), None)
        within = any(f.start < match.start() and f.end >= match.end("many") for f in facts)  # "a metre and a half from the box"
        if taker is not None and not within and any(f.quantity in ("loss", "stops") and f.end <= match.start() for f in facts) and not any(f.quantity in ("loss", "stops") and f.start < match.end("many") and f.end > match.start("many") for f in facts):
            many = match["many"].lower()
            value = STOPS_SPOKEN[many] if many in STOPS_SPOKEN else float(many)
            facts = [f for f in facts if not match.start("many") <= f.start < match.end("many")]
            facts = _put(facts, match, [Fact("loss", value, taker.unit, taker.of, start=match.start("many"), end=match.end("many"), said=match["many"]), *(f for f in facts if match.end("many") <= f.start < match.end())])
    return facts


def _no_speeds(facts: list[Fact], text: str) -> list[Fact]:
    return [replace(f, quantity="stops", unit="", of="") if f.quantity == "film_speed" and 0 < f.value <= 6 and patterns.match(r"\s*stops?\b", text[f.end :], re.I) else f for f in facts]


def _part_over(facts: list[Fact], text: str) -> list[Fact]:
    for match in _PART_OVER.finditer(text):
        if any(f.quantity == "film_speed" for f in facts) and patterns.search(r"\bei\b|\brat(?:e|ed|ing)\b", text, re.I):
            facts = _put(facts, match, [Fact("stops", STOPS_SPOKEN[match["many"].lower()], cue="more", start=match.start(), end=match.end(), said=match.group())])
    return facts


def _halves_under(facts: list[Fact], text: str) -> list[Fact]:
    return [_half_under(f, facts, text) for f in facts]


_ITS_LIGHT = Pattern(r"\s*(?:its|the|all the|your|my|his|her) (?:lamp's |flash's |head's )?(?:light|output|brightness|illumination|beam)\b(?! (?:more|again))", re.I)
_PARTED = {"halves": 1.0, "quarters": 2.0}


def _parts_its_light(facts: list[Fact], text: str) -> list[Fact]:
    """"a scrim that halves its light": a stop lost in it, as it was told, and no usual loss."""
    out: list[Fact] = []
    for fact in facts:
        stops = _PARTED.get(fact.said.strip().lower()) if fact.quantity == "remark" else None
        taker = next((f for f in reversed(out) if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"), None) if stops else None
        if stops and taker is not None and _ITS_LIGHT.match(text, fact.end) and not patterns.search(r"[.?!;]", text[taker.end : fact.start]):
            out.append(replace(fact, quantity="filter_loss" if taker.quantity == "camera_filter" else "loss", value=stops, unit=taker.unit, of=taker.of, cue=""))
        else:
            out.append(fact)
    return out


def _halves_lost(facts: list[Fact], text: str) -> list[Fact]:
    return [_half_lost(f, facts, text) for f in facts]


def _parts_and_draws(facts: list[Fact], text: str) -> list[Fact]:
    return [_of_the_draw(_part_of_a_stop(_third_in_turn(f, text), text), text) if f.quantity in _STOPS_OR_NONE else f for f in facts]


def _coloured_glass(facts: list[Fact], text: str) -> list[Fact]:
    """"an orange contrast filter": glass on the lens, and no gel beside it."""
    return [f for n, f in enumerate(facts) if not (f.quantity == "modifier" and f.unit == "gel" and n + 1 < len(facts) and facts[n + 1].quantity == "camera_filter"
                                                   and patterns.fullmatch(r"(?: (?:screw|slip|push)(?:ed)?[- ](?:in|on)| [\w-]+)? ", text[f.end : facts[n + 1].start]) and "gel" not in f.said.lower())]


_WAY_OFF = Pattern(r"\s*(?P<way>over|under)\b(?! (?:the|my|a)\b)", re.I)


def _half_under(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"one stop over and half under": half a stop, where stops are told just before, and no half power."""
    way = _WAY_OFF.match(text[fact.end :]) if fact.quantity == "power" and fact.said.lower().strip() in ("half", "a half") else None
    if way is None or not any(f.quantity in ("stops", "relation") and f.end <= fact.start <= f.end + 24 for f in facts):
        return fact
    return replace(fact, quantity="stops", unit="", of="", cue="more" if way["way"].lower() == "over" else "less")


_LOSES = Pattern(rf"\b{LOSING}(?: (?:me|another|a further|about|off|up|maybe|only|just|a))*\s*$", re.I)
_OF_LIGHT = Pattern(r"^\s*(?:of |the |its |my )*(?:light|power|output|speed|distance|energy|exposure|way|as|what(?:'s| is| was) left|what (?:remains|remained)|rest|remainder|remaining)\b", re.I)


def _half_lost(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"two stops and a gel takes another half": half a stop, and no half power."""
    if fact.quantity != "power" or fact.said.lower().strip() not in ("half", "a half", "quarter", "a quarter") or not _LOSES.search(text[max(0, fact.start - 60) : fact.start]) or _OF_LIGHT.match(text[fact.end :]):
        return fact
    taker = next((f for f in reversed(facts) if f.quantity == "modifier" and f.end <= fact.start), None)
    if taker is not None and any(f.quantity in ("loss", "stops") for f in facts):
        return replace(fact, quantity="loss", unit=taker.unit, of=taker.of)
    twice = taker is not None and any(f.quantity == "power" and f is not fact for f in facts)
    return replace(fact, bad="it may be half a stop or half the light") if twice else fact  # "half power, the umbrella takes another half"


_TAKERS = frozenset({"modifier", "camera_filter"})
_STOPS_OR_NONE = frozenset({"stops", "loss", "relation", "number"})


def _third_in_turn(fact: Fact, text: str) -> Fact:
    """"first as metered, second a stop over, third a stop under": the third frame, and no third of a stop."""
    in_turn = fact.quantity in ("stops", "relation") and fact.said.lower().startswith("third a stop") and "second" in text[max(0, fact.start - 120) : fact.start].lower()
    return replace(fact, value=1.0) if in_turn else fact


_SO_MANY_OVER = Pattern(r"\b(?P<many>one and a half|one|two|three|half|a half) (?P<way>over|under|above|below)\b(?= ?[?.,;!]|$| (?:the )?(?:key|main|it|that)\b)", re.I)


_COMPARED = frozenset({"key", "fill", "hair", "rim", "kicker", "background", "backdrop"})


def _unsaid(facts: list[Fact], text: str) -> list[Fact]:
    """"power for one over?": stops, though the word was left out, where lights are compared."""
    found = _SO_MANY_OVER.search(text)
    if found is None or not any(f.of in _COMPARED for f in facts) or any(f.quantity in ("stops", "relation") or f.quantity == "loss" and f.start < found.start("many") < f.end for f in facts):
        return facts  # "takes it a stop and a half over" has its stops
    made = Fact("stops", STOPS_SPOKEN[found["many"].lower()], cue="more" if found["way"].lower() in ("over", "above") else "less", start=found.start("many"), end=found.end(), said=found.group())
    return _put(facts, found, [made])


_OVER_OR_UNDER = Pattern(r"^\s*(?P<way>over|under)(?:\W*$|(?= ?[.,;?!]))|^\s*(?:too )?(?P<result>thin|dark|dense|light|bright)\b(?! (?:meter|stand|table|orange))", re.I)
_ON_FILM = Pattern(r"\b(?:films?|slides?|negs?|negatives?|prints?|chromes?|transparenc\w+|rolls?|frames?)\b", re.I)
_APART = Pattern(r"\s*(?:apart|steps?|increments?|either (?:side|way)|each (?:side|way))\b", re.I)


def _part_of_a_stop(fact: Fact, text: str) -> Fact:
    """"and two thirds over?": of a stop."""
    part = fact.quantity == "number" and not fact.bad and is_part(fact.value)
    if part and fact.said.lower().strip() in ("thirds", "halves") and patterns.search(r"\b(?:in|by)\s*$", text[max(0, fact.start - 8) : fact.start], re.I):
        return replace(fact, quantity="stops", unit="", of="")  # a bracket "in thirds"
    way = _OVER_OR_UNDER.match(text[fact.end :]) if part else None
    if way and way["result"] and not _ON_FILM.search(text):
        return fact
    if part and way is None and _APART.match(text[fact.end :]):
        return replace(fact, quantity="stops", unit="", of="")  # "five frames a third apart"
    return replace(fact, quantity="stops", unit="", of="", cue="less" if (way["way"] or way["result"]).lower() in ("under", "thin", "dark") else "more") if way else fact


_DRAW_COSTS = Pattern(rf"\b(?:bellows|extension(?: tubes?)?|tubes?|draw|close[- ]?up)\b(?: \w+){{0,2}} (?:{LOSING}|need\w*|wants?)(?: (?:me|us|about|another|a further|up|some))*\s*$", re.I)


_DRAW_IS = Pattern(
    r"\b(?:bellows|extension|tubes?|draw)\b[^.;?!\d]{0,30}?\b(?:factor|that|it|this|which|loss|allowance|compensation)(?:'s| (?:comes? (?:out )?(?:to|at|as)|works? out (?:at|to|as)|is|of|adds up to|amounts to|means|makes|being|worth))"
    r"(?: (?:about|around|exactly|just|nearly|roughly|only|up|a full))*\s*$|\b(?:bellows|extension) (?:factor|loss|allowance)[,:=]?\s*$", re.I)
"""What the draw comes to, told in stops: "bellows out, the factor comes to a stop"."""
_HELD_AGAINST = Pattern(r"\s*(?:under|over|below|above|less|more|darker|brighter|down on|up on|short)\b", re.I)


def _of_the_draw(fact: Fact, text: str) -> Fact:
    """"the bellows cost me two stops": a loss behind the lens."""
    before = text[max(0, fact.start - 80) : fact.start]
    draw = fact.quantity in ("stops", "loss") and fact.unit in ("", "bellows") and not fact.of and (
        _DRAW_COSTS.search(before) is not None or not fact.cue and _DRAW_IS.search(before) is not None and _HELD_AGAINST.match(text, fact.end) is None)
    return replace(fact, quantity="filter_loss", unit="bellows loss", of="camera", cue="", value=abs(fact.value)) if draw else fact


def _said_twice(facts: list[Fact], text: str) -> list[Fact]:
    """"an ND 0.6 (2 stops)", "factor 4, two stops,": the same loss in other words counts once."""
    out: list[Fact] = []
    for fact in facts:
        last = next((f for f in reversed(out) if f.quantity in ("nd", "factor")), None)
        stops = 0.0 if last is None or last.value <= 0 else last.value if last.quantity == "nd" else math.log2(last.value)
        aside = last is not None and patterns.fullmatch(r"\s*\(\s*(?:that'?s |i\.?e\.? |so |=|= |is |or )?\s*", text[last.end : fact.start], re.I) is not None
        if fact.quantity in ("stops", "loss", "filter_loss") and aside and abs(abs(fact.value) - stops) < 0.1:
            continue
        out.append(fact)
    return out


_THAN_IT_WAS = Pattern(r"\s*(?:of light )?(?:hotter|brighter|darker|dimmer|weaker|stronger|cooler|more|less)\b(?! than (?!now|it|before|at the moment))", re.I)
_LAMPS = frozenset({"key", "fill", "hair", "rim", "kicker", "accent", "background"})
_OTHER_LAMPS = Pattern(r"\b(?P<lamp>key|main|fill|hair|rim|kicker|accent|background|backdrop|ambient|daylight|other|second)\b", re.I)


def _than_it_was(facts: list[Fact], text: str) -> list[Fact]:
    """"my rim light stands 1.2 m off, I want the rim one stop hotter": than it is now, where no other light and no reading is told."""
    return [replace(f, quantity="stops", to="") if f.quantity == "relation" and _alone(f, facts, text) and _THAN_IT_WAS.match(text, f.end) else f for f in facts]


def _alone(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    if fact.to or fact.of not in _LAMPS or any(f.quantity in ("aperture", "guide_number", "exposure_value", "shutter") for f in facts):
        return False
    others = {m["lamp"].lower() for m in _OTHER_LAMPS.finditer(text)} - {fact.of, *(("main",) if fact.of == "key" else ())}
    return not others and any(f.quantity in ("distance", "power", "energy") and f.of == fact.of for f in facts)


_MARK_AFTER = Pattern(r"[- ]?(?:stop )?(?:mark|click|detent|notch|position)\b", re.I)
_NAMES_IT = Pattern(r"\s*[,(-]+ ?(?:(?:that's|which is|that is|it's|i mean|i\.e\.) )?(?:on |at )?(?:the|a|its) ", re.I)


def _name_of_a_mark(facts: list[Fact], text: str) -> list[Fact]:
    """"f/9.5, the half stop mark": what a mark is called, and no stops."""
    ends = [f.end for f in facts if f.quantity == "aperture"]
    return [replace(f, quantity="remark", of="", cue="") if f.quantity in ("stops", "relation", "loss") and _MARK_AFTER.match(text, f.end) and any(_NAMES_IT.fullmatch(text, end, f.start) for end in ends) else f for f in facts]


def _put(facts: list[Fact], match: re.Match[str], made: list[Fact]) -> list[Fact]:
    """The facts with those of a stretch of the text replaced."""
    kept = [f for f in facts if not (f.start < match.end() and f.end > match.start() and f.end > f.start)]
    sentence = next((f.sentence for f in facts if f.start < match.end() and f.end > match.start()), 0)
    return sorted([*kept, *(replace(f, sentence=sentence) for f in made)], key=lambda f: f.start)


STEPS: Steps = (
    (_stops_down, None), (_too_much_or_little, frozenset({"stops"})), (_speeds, None), (_stop_takers, _TAKERS), (_and_to, frozenset({"modifier"})),
    (_no_speeds, frozenset({"film_speed"})), (_part_over, frozenset({"film_speed"})), (_halves_under, frozenset({"power"})), (_unsaid, None), (_halves_lost, frozenset({"power"})), (_parts_its_light, frozenset({"remark"})),
    (_parts_and_draws, _STOPS_OR_NONE), (_coloured_glass, frozenset({"camera_filter"})), (_said_twice, frozenset({"nd", "factor"})),
    (_name_of_a_mark, frozenset({"aperture"})), (_than_it_was, frozenset({"relation"})),
)
"""Stops and speeds that run into other words put in."""
