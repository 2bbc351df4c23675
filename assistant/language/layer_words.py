"""Several alike in the light: "two layers of tissue, one stop each", "each sheet takes half a stop and I hang three of them"."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving.alike import Some, measured_and_asked, spoken_of
from assistant.solving.taken_off import BARE, layers_gone

_SHEET = r"(?:layer|sheet|piece|thickness|fold|silk|scrim|net|veil|hankie|handkerchief|diffuser|cloth|tissue|gel|frost|muslin|filter)"
LAYERS = Pattern(r"(?<![.\d])\b(?P<many>two|three|four|double|both|(?:a )?pair of|2|3|4)\s+(?:(?!(?:stops?|feet|foot|ft|metres?|meters?|m|flash\w*|lights?|heads?|lamps?|strobes?|of|and|or|through|from|in|with|for|behind|on|under|over|times|pops?)\b)[a-z-]+ ){0,2}(?:layers?|sheets?|pieces?|bits|thicknesses|folds|sides|gels|silks|scrims|nets|veils|frosts|grids|tissues|hankies|handkerchiefs|diffusers|cloths|muslins|polari[sz]ers|filters|(?:nd|neutral density|gr[ea]y) filters|nds|neutral densit(?:y|ies))\b", re.I)
_SO_MANY_OF_THEM = Pattern(r"(?<![.\d/])(?<!\bthe )(?<!\bboth )(?<!\bthese )(?<!\bthose )\b(?P<many>two|three|four|2|3|4)(?: of (?:them|these|those|it|the same)\b|(?= (?:in front|over (?:the|my|it)|on (?:the|my|it)|together|deep|thick)\b)|(?=\W*(?:$|[.,;?!](?!\d))))", re.I)
"""With what one of them takes told: "and I use two of them"."""
_FOLDED = Pattern(rf"\b{_SHEET}s?\b(?:(?!\b(?:power|output|distance|exposure|time|speed|energy)\b)[^.;:?!]|\.\d){{0,60}}?(?:,| and| is| was| when| if| then)+ (?:it is |it's |it |i )?(?:fold(?:ed)? (?:it |over |in )*)?(?P<many>doubled|double)(?: (?:over|up|it))?(?=\W*(?:$|[,.;:?!]|\b(?:how|what|which)\b))", re.I)
""""A cloth that lets 60 percent through, doubled": two of it."""
_MANY = {"doubled": 2, "both": 2, "two": 2, "double": 2, "2": 2, "three": 3, "3": 3, "four": 4, "4": 4}
_OF_ONE = Pattern(rf"\b(?:one|a|a single|single|each|every|1) (?P<of>{_SHEET})\b(?:(?!\b(?:two|three|four|double|layers|sheets)\b)[^.;?!\d]){{0,40}}\b(?:los|cost|eat|take|took|swallow|steal|is|was|be|drink|measur|test|rob|absorb|soak|hold)\w*", re.I)
"""Told of one of them: "one layer of our silk takes two thirds of a stop, and I have hung two"."""
_ONE_OFF = Pattern(r"\b(?:tak|peel|pull|strip|whip|remov)\w* (?:off |away )?one (?:of (?:them|these|those|the \w+)|\w+)?(?: (?:off|away))?\b|\bone (?:layer|sheet|of them|less|fewer)\b[^.?!,;]{0,12}\b(?:off|less|fewer|away)\b", re.I)
_ANY_SHEET = ("layer", "sheet", "piece", "thickness", "fold")
_EVERY_BEFORE = Pattern(r"\b(?:each|every)\b(?: \w+){1,9}\s*$", re.I)
_EACH_AFTER = Pattern(r"\s*(?:of (?:the )?light )?(?:(?:being |is )?(?:lost|loss|off|gone|swallowed|eaten|taken|down|disappearing|disappears) )?(?:(?:in|to|by|for|from|through|with|at) )?(?:each|apiece|every one|per \w+|(?:a|every|each) (?:layer|sheet|piece)|either)\b", re.I)
SUM_OF = Pattern(r"\W*(?:together|altogether|in all|in total|between them|all told|combined)\b", re.I)
LOST = frozenset({"loss", "stops", "filter_loss", "nd"})
TOLD = LOST | {"rows"}
_COUNTED = frozenset({"number", "count", "rows"})


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the loss of one of several alike taken so many times."""
    facts = _counted_alike(facts, text)
    scaled = _share_of_told(facts, text) or _so_many_more(facts, text) or _read_through_others(facts, text)
    if scaled is not None:
        return scaled
    match = LAYERS.search(text) or (_SO_MANY_OF_THEM.search(text) if _OF_ONE.search(text) else None) or _FOLDED.search(text)
    if match is None:
        return facts
    there = _MANY.get(match["many"].lower(), 2)
    many = _that_change(facts, text, match, there)
    first = _first_told(facts, match, text)
    out = [f for f in facts if not (f.quantity in _COUNTED and match.start() <= f.start < match.end())]
    out.append(Fact("rows", float(there), "layers", start=match.start("many"), end=match.end("many"), said=match["many"]))  # how many there are, used in each loss
    told = next((f for f in facts if f.quantity in ("loss", "stops", "filter_loss")), None)
    first = told if told is not None and (match.re.pattern == _FOLDED.pattern or _EVERY_BEFORE.search(text[: told.start])) else first
    return [_times(f, many) if f.quantity in LOST and not SUM_OF.match(text[f.end :]) and (f == first or _EACH_AFTER.match(text[f.end :])) else f for f in out]


def _that_change(facts: Sequence[Fact], text: str, match: re.Match[str], there: int) -> int:
    """How many of them count: all, or of a reading taken through all those that come off, or of a guide number those that stay."""
    gone = layers_gone(text, max(0, match.start() - 24))
    if gone is None or gone.start() < match.start() and gone.groupdict().get("gone") is None:
        return 1 if _ONE_OFF.search(text, max(0, match.start() - 24)) else there
    named = gone.groupdict()
    off = _NUMBERS[named["gone"].lower()] if named.get("gone") else there - _NUMBERS[(named.get("left") or named["kept"]).lower()]
    if not 0 < off < there:
        return there
    return there - off if any(f.quantity == "guide_number" for f in facts) else off


def _counted_alike(facts: list[Fact], text: str) -> list[Fact]:
    """"a pair of the same silks", "one of the three": so many layers, and no flashes."""
    if not any(f.quantity in ("count", "number") for f in facts):
        return facts
    said = spoken_of(text)
    named = any(s.by_name for s in said)
    some = [s for s in said if s.many > 1 and named or s.of]
    things = len({f.unit for f in facts if f.quantity == "modifier"})
    told = {s.start for s in said if s.many == things > 1 and not named}  # "the three of them", each named before
    facts = [replace(f, quantity="remark", of="") if f.quantity in ("count", "number") and any(s.start <= f.start < s.end and s.start in told for s in said) else f for f in facts]
    return [_as_layers(f, some) if f.quantity in ("count", "number") else f for f in facts]


def _as_layers(fact: Fact, some: list[Some]) -> Fact:
    within = next((s for s in some if s.start <= fact.start < s.end), None)
    if within is None:
        return fact
    if within.of == fact.value:
        return replace(fact, quantity="remark", of="")
    return replace(fact, quantity="rows", unit="layers", of="") if within.many == fact.value and fact.unit in ("flashes", "") else fact


def _share_of_told(facts: list[Fact], text: str) -> list[Fact] | None:
    """"two identical silks cost two and two thirds stops: what does one of them cost": its share of the loss, where none is told of each."""
    told = [f for f in facts if f.quantity in ("loss", "stops", "filter_loss", "factor") and f.value > 0]
    pair = measured_and_asked(text) if len(told) == 1 and any(f.quantity in ("modifier", "nd", "rows", "camera_filter") for f in facts) and not any(f.quantity in ("aperture", "aperture_range", "guide_number", "power", "distance") for f in facts) else None
    if pair is None:
        return None
    measured, wanted = pair
    of_each = _EACH_AFTER.match(text[told[0].end :]) or _EVERY_BEFORE.search(text[: told[0].start])
    part = wanted.many / (1 if of_each else measured.many)
    rows = [Fact("rows", float(s.many), "layers", start=s.start, end=s.end, said=text[s.start : s.end]) for s in dict.fromkeys(pair)]
    kept = [f for f in facts if f is not told[0] and not (f.quantity in _COUNTED and any(s.start <= f.start < s.end for s in pair))]
    return [*kept, *rows, replace(told[0], quantity="loss" if told[0].quantity == "stops" else told[0].quantity, cue="", of="" if told[0].of == "both" else told[0].of, value=told[0].value ** part if told[0].quantity == "factor" else told[0].value * part)]


_NUMBERS = {"a": 1, "one": 1, "single": 1, "double": 2, "each": 1, "every": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12}
_SO_MANY = Pattern(
    r"(?<![.\d/])\b(?P<many>a(?! (?:double|single))|one|single|double|each|every|two|three|four|five|six|seven|eight|nine|ten|twelve|\d{1,2}) (?:(?:thin|thick|white|equal|identical|such|single|of (?:the|my|these|those)) )*"
    r"(?:layers?|sheets?|pieces?|thickness(?:es)?|folds?|ply|plies|of (?:them|these|those))\b", re.I)
"""So many layers; twice in a text, of other numbers, they are those that were measured and those that are asked of."""


def _so_many_more(facts: list[Fact], text: str) -> list[Fact] | None:
    """"two layers take 1.4 stops: how many will five take?": as many times the loss as there are layers to those that were measured."""
    told = [f for f in facts if f.quantity in ("loss", "stops", "filter_loss") and f.value]
    if len(told) != 1 or any(f.quantity in ("aperture", "aperture_range", "guide_number", "power", "distance") for f in facts):
        return None
    named = [(found, float(_NUMBERS.get(found["many"].lower(), 0) or found["many"])) for found in _SO_MANY.finditer(text)]
    if len(named) != 2 or named[0][1] == named[1][1] or min(value for _, value in named) < 1:
        return None
    gaps = [_gap(text[min(told[0].end, found.end()) : max(told[0].start, found.start())]) for found, _ in named]
    of_loss = gaps.index(min(gaps))
    measured, wanted = named[of_loss], named[1 - of_loss]
    if _ASKED.search(text[: wanted[0].start()]) is None and "?" not in text[wanted[0].end() :]:
        return None
    out = [f for f in facts if not (f.quantity in _COUNTED and any(found.start() <= f.start < found.end() for found, _ in named))]
    out += [Fact("rows", many, "layers", start=found.start("many"), end=found.end("many"), said=found["many"]) for found, many in named]
    return [replace(f, quantity="loss" if f.quantity == "stops" else f.quantity, cue="" if f.quantity == "stops" else f.cue, value=f.value * wanted[1] / measured[1]) if f is told[0] else f for f in out]


_FROM_TO = Pattern(r"\b(?:took|takes?|brings?|brought|drops?|dropped|cuts?|lowers?|lowered|pulls?|pulled|turns?|turned|knocks?|knocked|reduces?|reduced|puts?|makes?|made)\b[^.?!]*$", re.I)
_LAYERS_ASKED = Pattern(r"\b(?:what|which)\b[^.?!]*?\b(?P<many>one|a single|single|two|three|four|five|six|[1-6])\b(?: of (?:them|these|those)| layers?| sheets?| nets?| silks?| scrims?| gels?| cloths?| thicknesses)?\b(?! (?:stops?|metres?|meters?|feet|ft|m)\b)", re.I)


def _read_through_others(facts: list[Fact], text: str) -> list[Fact] | None:
    """"two nets took f/11 down to f/8: what would three leave?": the bare reading, and as many times the loss of those that were measured."""
    span = [f for f in facts if f.quantity == "aperture_range"]
    if len(span) != 1 or not span[0].other < span[0].value or {f.quantity for f in facts} - {"aperture_range", "modifier", "rows", "number", "count"}:
        return None
    measured = LAYERS.search(text[: span[0].start]) or _SO_MANY.search(text[: span[0].start])
    asked = _LAYERS_ASKED.search(text, span[0].end)
    if measured is None or asked is None or _COST_OF.search(text, span[0].end) or not _FROM_TO.search(text[measured.end() : span[0].start]):
        return None
    there, wanted = (float(_NUMBERS.get(m["many"].lower().removeprefix("a "), 0) or (m["many"] if m["many"].isdigit() else 0)) for m in (measured, asked))
    if not there or not wanted or there == wanted:
        return None
    lost = aperture_difference_stops(span[0].other, span[0].value) * wanted / there
    named = [Fact("rows", many, "layers", start=m.start("many"), end=m.end("many"), said=m["many"]) for m, many in ((measured, there), (asked, wanted))]
    kept = [f for f in facts if f.quantity == "modifier" or f.quantity in _COUNTED and not any(n.start <= f.start < n.end + 12 for n in named)]
    bare = replace(span[0], quantity="aperture", cue=BARE, other=math.nan)
    return sorted([*kept, *named, bare, replace(span[0], quantity="loss", value=abs(lost), unit="scrim", start=span[0].end - 1, other=math.nan)], key=lambda f: f.start)


def _gap(between: str) -> int:
    """How far a loss stands from so many layers: another clause is far."""
    return len(between) + 200 * len(_CLAUSE.findall(between))


_CLAUSE = Pattern(r"[,;?!:]|\.(?!\d)|\b(?:how|what|which|and|if)\b", re.I)
_ASKED = Pattern(r"\b(?:how|what|which)\b", re.I)
_COST_OF = Pattern(r"\b(?:what|how much) (?:do|does|did|will|would|is|was)\b[^?.]*\b(?:cost|take|swallow|eat|lose|account for|worth|cost(?:ing)?|the (?:cost|loss|share|factor)|steal|absorb|rob|drink)\b", re.I)
_MANY_LAYERS = Pattern(r"\b(?:how many|what number of) (?:more |such )?(?:sheets?|layers?|thicknesses|pieces|folds|plies|hankies|hankys|handkerchiefs|tissues|cloths?|nets?|scrims?|gels?|silks?|diffusers?)\b", re.I)


def asked(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """"how many thicknesses bring it from f/16 down to f/4": a number of layers, where what one takes is told."""
    if [a.quantity for a in asks] in ([], ["aperture"]) and any(f.quantity == "rows" and f.unit == "layers" for f in facts) and _COST_OF.search(text):
        return [Ask("stops")]
    if not asks and sum(f.quantity == "rows" and f.unit == "layers" for f in facts) == 2 and any(f.quantity == "aperture" for f in facts):
        return [Ask("aperture")]
    if any(a.quantity != "count" for a in asks) or not any(f.quantity in LOST for f in facts) or not _MANY_LAYERS.search(text):
        return asks
    return [Ask("count", "", "layers")]


def _times(fact: Fact, many: int) -> Fact:
    return replace(fact, value=fact.value * many, quantity="loss" if fact.quantity == "stops" and not fact.cue else fact.quantity)


_OF_SUCH = Pattern(r"\s+of (?:(?:the|my|this|that|same|identical|a) )*", re.I)
_STRONG = Pattern(r"-stops?\b", re.I)


def _first_told(facts: Sequence[Fact], match: re.Match[str], text: str) -> Fact | None:
    """The loss that is told of one of them."""
    last = match.group().lower().split()[-1]
    of_one = next((one for one in _OF_ONE.finditer(text) if one["of"].lower() in _ANY_SHEET or last.startswith(one["of"].lower()[:4]) or match.re.pattern == _SO_MANY_OF_THEM.pattern), None)
    made_of = next((f for f in facts if f.quantity in ("loss", "stops", "filter_loss") and _OF_SUCH.fullmatch(text, match.end(), f.start) and _STRONG.search(f.said + text[f.end : f.end + 6])), None)
    made_of = made_of or next((f for f in facts if f.quantity == "nd" and _OF_SUCH.fullmatch(text, match.end(), f.start)), None)
    if made_of is not None:
        return made_of  # "two layers of half-stop silk", "two sheets of 0.3 ND"
    return next((f for f in facts if of_one and f.quantity in ("loss", "stops", "filter_loss") and f.start >= of_one.end()), None)
