"""Losses whose stops, density or factor was left unsaid, by what they stand beside.

"the silk (one and a third)" · "a grid in it, two thirds more" · "0.6 grey over the lens" · "the filter says x2 on it"
A number is taken so only next to what stands in the light, and where nothing else claims it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.language.number_words import STOPS_SPOKEN
from assistant.language.steps import Steps
from assistant.language.stop_words import LOSING, is_part
from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density
from assistant.query import Fact
from assistant.records import replace

_WORN = ("modifier", "camera_filter")
_LOST = ("loss", "filter_loss")
_TOLD = ("stops", "loss", "filter_loss")
_FIGURES = ("number", "aperture", "times", "stops", "loss")
_UNSAID = ("number", "aperture", "power")
_COUNTED = frozenset({"stops", "loss", "filter_loss", "nd", "relation"})


_TAKEN = frozenset({"loss", "nd"})


def _hearsays(facts: list[Fact], text: str) -> list[Fact]:
    return [_hearsay(f, facts, text) if f.quantity in _TOLD else f for f in facts]


def _figures(facts: list[Fact], text: str) -> list[Fact]:
    return [_glass(_box(_density(f, facts, text), text), text) if f.quantity in _FIGURES else f for f in facts]


def _told_of_takers(facts: list[Fact], text: str) -> list[Fact]:
    counted = [f for f in facts if f.quantity in _COUNTED]
    return [_told_of(f, facts, counted, text) if f.quantity in _UNSAID else f for f in facts]


_ANOTHER_ONE = Pattern(rf"\b{LOSING} (?:me |us )?(?P<many>another one|one more|another)(?: (?:again|besides|as well|too|on top))?(?=\s*(?:$|[,;:.?!)]|(?:and|so|then|making|which|in all|altogether)\b))", re.I)


def _another_stop(facts: list[Fact], text: str) -> list[Fact]:
    """"the box eats two stops and the cloth in front eats another one": a stop, of what was named last."""
    out = facts
    for match in _ANOTHER_ONE.finditer(text):
        start, end = match.span("many")
        told = any(f.quantity in _COUNTED and f.end <= start for f in out) and not any(f.start < end and f.end > start for f in out)
        taker = next((f for f in sorted(out, key=lambda f: -f.end) if f.quantity in _WORN and f.end <= start), None)
        glass = taker is not None and taker.quantity == "camera_filter"
        if told:
            out = [*out, Fact("filter_loss" if glass else "loss", 1.0, taker.unit if taker else "", taker.of if taker else "", start=start, end=end, said=text[start:end])]
    return sorted(out, key=lambda f: f.start) if out is not facts else facts


_SAYS = Pattern(r"\b(?:says?|said|reckons?|swears?|thinks?|thought|told (?:me|us|them)|claims?|insists?|heard)\b[^.?!\d]{0,24}$", re.I)
_HOW_MANY = Pattern(r"\bhow many (?:\w+ )?stops?\b", re.I)


def _hearsay(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"it says 0.9, somebody says that's nine tenths of a stop. how many stops is it": what the filter's own mark is asked against."""
    told = fact.quantity in ("stops", "loss", "filter_loss") and any(f.quantity in ("nd", "factor") and f.end <= fact.start for f in facts)
    said = told and _SAYS.search(text[max(0, fact.start - 60) : fact.start]) and _HOW_MANY.search(text[fact.end :])
    return replace(fact, quantity="remark", unit="", of="", cue="") if said else fact


_OTHERS_SAY = Pattern(r"\b(?:used to|usually|normally|generally|typically|as a rule|on average|they say|people say|(?:book|manual|maker|box|label|table|sheet|leaflet|friend|teacher|forum|everybody|everyone|somebody|someone|he|she|shop) (?:says?|said|reckons?|claims?|quotes?|gives?|told)|(?:is |are )?(?:supposed|said|meant|reckoned|quoted|rated) (?:to|at))\b[^.?!;]{0,40}$", re.I)
"""Before a loss that is not one's own, or no longer is."""
_MANY_STOPS = r"(?P<many>one and a half|two and a half|two thirds|a third|a half|half|one|two|three|\d(?:\.\d+)?)"
_MY_OWN = Pattern(rf"\b(?:i (?:have |'ve )?(?:measured|tested|found|metered|make|made|got|get)|in mine|my own|mine|this one|these days|now)(?: (?:only|just|about|it|it's|its|at|is|was|with|costs?|costing|takes?|eats?|loses?|lost|a|the|new|clean|fresh|cloth|one(?= (?:it|is|costs|takes|eats|loses))|to be|gives?|for (?:the|my) \w+|off))*,? {_MANY_STOPS}\b(?! (?:flash|light|head|metre|meter|feet|foot|m|ft|umbrella|softbox|gel)\b)(?!/)", re.I)


def _ones_own(facts: list[Fact], text: str) -> list[Fact]:
    """"the book says two stops for the umbrella, I measured one and a half": what one measured oneself counts, and the other is only told."""
    told = [f for f in facts if f.quantity == "loss" and _OTHERS_SAY.search(text[max(0, f.start - 60) : f.start])]
    own = _MY_OWN.search(text) if len(told) == 1 else None
    if own is None or any(f.start < own.end("many") and f.end > own.start("many") and f.quantity not in ("loss", "stops", "number", "count", "power") for f in facts):
        return list(facts)
    many = own["many"].lower()
    value = STOPS_SPOKEN[many] if many in STOPS_SPOKEN else float(many)
    mine = replace(told[0], value=value, start=own.start("many"), end=own.end("many"), said=own["many"])
    rest = [replace(f, quantity="remark", unit="", of="", cue="") if f is told[0] else f for f in facts if not (f.start < mine.end and f.end > mine.start)]
    return sorted([*rest, mine], key=lambda f: f.start)


# --- stops beside a modifier or a filter -----------------------------------------------------------

_BETWEEN = Pattern(rf"[\s,(:–-]*(?:(?:in|on|over|inside|which|front|both|cloths?|layers?|its?|the|head|lens|lamp|of|them|that|that's|thats|this|which|i|we|found|make|made|reckoned|it|is|was|'s|call|say|about|around|roughly|maybe|just|only|another|an?|further|extra|additional|tested|measured|at|worth|for|and|goes|going|adds?|adding|eats|{LOSING})[\s,(:–-]*)*", re.I)
_ENDS = Pattern(r"\s*(?:whole|full|for the (?:pair|lot|two)|all told|more|further|again|on top|lost|off|down|gone|extra|by my own test|tested|measured)?\s*(?:[,;:)!?]|\.(?!\d)|$|(?:and|plus|then|with|so|how|what|whats|where|altogether|alltogether|in all|are|is)\b)", re.I)
_LETTERS_APART = 70


def _told_of(fact: Fact, facts: Sequence[Fact], counted: Sequence[Fact], text: str) -> Fact:
    """"the silk (one and a third)", "a honeycomb in it, one and a third more", "half cto another half"."""
    if not _may_be_stops(fact) or not (any(f is not fact for f in counted) or fact.quantity in ("number", "aperture") and (_OF_LOSS.search(text) or _is_in_thirds(fact)) or text[fact.start - 1 : fact.start] == "("):
        return fact
    taker = next((f for f in sorted(facts, key=lambda f: -f.end) if f.quantity in _WORN and f.unit != "BARE" and f.end <= fact.start), None)
    if taker is None or fact.start - taker.end > _LETTERS_APART or any(taker.end <= f.start < fact.start and f.quantity in _COUNTED for f in facts):
        return fact
    if not _BETWEEN.fullmatch(text[taker.end : fact.start]) or not _ENDS.match(text[fact.end : fact.end + 40]):
        return fact
    glass = taker.quantity == "camera_filter"
    return replace(fact, quantity="filter_loss" if glass else "loss", value=abs(fact.value), unit=taker.unit, of=taker.of, cue="", other=math.nan, bad="")


def _is_in_thirds(fact: Fact) -> bool:
    """One and two thirds: only stops are counted so."""
    return fact.unit == "mixed" and any(abs(fact.value % 1 - third) < 0.01 for third in (1 / 3, 2 / 3))


_OF_LOSS = Pattern(r"\bstops\b|\bloss\b|\blost\b|\blos(?:e|ing)\b|\d down\b", re.I)


_IN_TENTHS = Pattern(r"[0-3]?\.[357]")
"""A third, a half and two thirds as meters write them."""


def _may_be_stops(fact: Fact) -> bool:
    """A number of so many stops and parts, as they are said of what stands in the light; "half" of a power that nobody named."""
    if fact.bad or not 0 < fact.value <= 4:
        return False
    if fact.quantity == "power":
        return is_part(fact.value) and "power" not in fact.said.lower() and "%" not in fact.said
    if fact.quantity in ("number", "aperture") and _IN_TENTHS.fullmatch(fact.said.strip()):
        return True
    return fact.quantity == "number" and (fact.unit == "mixed" or is_part(fact.value) or not fact.said[:1].isdigit())


_BOX = Pattern(r"\b(?:box|baffle|inner cloth|outer cloth|front cloth|sock)(?: (?:is|takes|costs|eats|loses|alone|itself|that's|about|maybe|worth|on its own|is worth|is about))*\s*\(?$", re.I)
_AND_A_BOX = Pattern(r"(?:\band|\bplus|[,;]) (?:the |a |my )?box(?: is| at| of| costs| takes| eats| loses)? ?\(?$", re.I)
"""Beside another thing in the light, whose loss was told before: "a gel (1 stop) and the box (2 stops)"."""
_FILM_BOX = Pattern(r"\bbox (?:speed|says)\b", re.I)


def _box(fact: Fact, text: str) -> Fact:
    """"box is two stops": what the softbox takes."""
    plain = fact.quantity == "stops" and not fact.cue and not fact.unit
    beside = fact.quantity == "loss" and fact.unit != "softbox" and _AND_A_BOX.search(text[max(0, fact.start - 30) : fact.start])
    return replace(fact, quantity="loss", unit="softbox", of="") if (beside or plain and _BOX.search(text[max(0, fact.start - 40) : fact.start])) and not _FILM_BOX.search(text) else fact


_THE_OTHER = Pattern(r"(?:,|;|\band|\.)\s*(?:and )?(?:the )?(?:other|second|third|next|last|inner|outer)(?: one| layer| sheet| cloth| net| scrim| gel)?(?: (?:is|takes|costs|eats|loses|another|about|only|just))*\s*$", re.I)


def _of_many(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"the first takes two thirds of a stop, the second half a stop": lost as well."""
    out: list[Fact] = []
    for fact in facts:
        last = out[-1] if out else None
        plain = fact.quantity == "stops" and not fact.cue or fact.quantity == "number" and _may_be_stops(fact) and _ENDS.match(text[fact.end : fact.end + 40])
        more = last is not None and last.quantity in _LOST and plain and _THE_OTHER.fullmatch(text[last.end : fact.start])
        out.append(replace(fact, quantity=last.quantity, value=abs(fact.value), unit="", of=last.of, to="") if more and last is not None else fact)
    return out


_WITH_IT = Pattern(r"\s+(?:with|plus|over|under|on) (?:(?:its|the|an?|my|that|both|inner|outer|front|own)\s+)*", re.I)
_AND_IT = Pattern(r"\s*(?:with|plus|and|&|\+|on|over)\s+(?:(?:its|the|an?|my|that)\s+)*", re.I)
_THEN_TAKES = Pattern(rf"(?: (?:on|in|over|in front|fitted)(?: (?:of )?it)?)?\s+{LOSING}(?: (?:me|us|about|around|roughly|a|some|together|up))*\s*", re.I)
_FOR_BOTH = Pattern(r"\s*(?:lost |off )?(?:for (?:the (?:pair|lot|two|whole thing)|both)|together|altogether|all told|in all|in total|between them|combined|all in)\b", re.I)


_EACH = Pattern(r"\b(?:each|apiece)\b", re.I)
"""As much for the one as for the other: "a softbox and a gel, each taking a stop"."""


def _for_the_pair(facts: list[Fact], text: str) -> list[Fact]:
    """"my box with its grid eats two and a half stops", "softbox and grid, three stops all told", "softbox and gel together take two": one loss for both, and nothing besides."""
    worn = [f for f in facts if f.quantity == "modifier" and f.unit != "BARE"] if any(f.quantity == "loss" for f in facts) else []
    gone: list[Fact] = []
    for one, two in zip(worn, worn[1:]):
        lost = next((f for f in facts if f.quantity == "loss" and f.start >= two.end), None)
        if lost is None or any(f.quantity == "loss" and f.unit == one.unit for f in facts if f is not lost):
            continue
        gap = text[one.end : two.start]
        if _AND_IT.fullmatch(gap) and lost.start - two.end < 40 and _EACH.search(text[two.end : lost.end + 10]):
            gone += [f for f in (one, two) if f.unit != lost.unit]
            facts = [replace(f, value=2 * f.value) if f is lost else f for f in facts]
            continue
        whole = _WITH_IT.fullmatch(gap) and _THEN_TAKES.fullmatch(text[two.end : lost.start]) or _AND_IT.fullmatch(gap) and lost.start - two.end < 50 and (_FOR_BOTH.match(text[lost.end :]) or _FOR_BOTH.match(text[two.end : lost.start]))
        gone += [f for f in (one, two) if f.unit != lost.unit] if whole else []
    return [f for f in facts if f not in gone]


_A_BOX = Pattern(r"\bbox\b|\bsoftbox\b|\bsoft box\b|\bocta\w*\b", re.I)


def _part_of_the_box(facts: list[Fact], text: str) -> list[Fact]:
    """"a softbox with both cloths in, one and two thirds": the cloths are the box's, and no tissue beside it."""
    cloths = [f for f in facts if f.quantity == "modifier" and f.unit == "tissue" and "cloth" in f.said.lower() and _A_BOX.search(text[max(0, f.start - 40) : f.end + 40])]
    lost = {f.unit for f in facts if f.quantity == "loss"}
    if not cloths or not lost or {"softbox", "tissue"} <= lost:  # "a softbox losing two stops and an inner cloth losing half": each has its own
        return facts
    owner = next((f.of for f in facts if f.quantity == "modifier" and f.unit == "softbox"), "")
    return [replace(f, unit="softbox", of=owner) if f.quantity == "loss" and f.unit == "tissue" else f for f in facts if f not in cloths]


def _alike(facts: list[Fact], text: str) -> list[Fact]:
    """The losses of layers of one thing are that thing's; a "grey gel" of a density is no coloured gel as well."""
    if any(f.quantity == "nd" for f in facts):
        facts = [f for f in facts if not (f.quantity == "modifier" and f.unit == "gel" and (_GREY_BEFORE.search(text[max(0, f.start - 10) : f.start]) or _OF_DENSITY.match(text, f.end) or any(g.quantity == "nd" and text[g.end : f.start] == " " for g in facts)))]
    worn = {(f.unit, f.of) for f in facts if f.quantity == "modifier"}
    if len(worn) != 1 or sum(f.quantity == "loss" and not f.unit for f in facts) < 2:
        return facts
    unit, of = next(iter(worn))
    return [replace(f, unit=unit, of=of) if f.quantity == "loss" and not f.unit else f for f in facts]


_OF_DENSITY = Pattern(r" (?:of|with|at|marked|that is|having)?(?: (?:a|an optical))? ?(?:optical )?density\b", re.I)
_GREY_BEFORE = Pattern(r"\b(?:gr[ae]y|nd ?\d*(?:\.\d+)?|neutral|neutral density)\s*$", re.I)


# --- filters by their density or their factor ----------------------------------------------------------

_DENSITIES = frozenset({0.1, 0.15, 0.2, 0.3, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 1.2, 1.5, 1.8, 2.1, 2.4, 2.7, 3.0})
"""Densities that grey filters are sold in, a third of a stop for each tenth."""
_GREY_AFTER = Pattern(r"\s*-?\s*(?:gr[ae]y|nds?\b|neutral|density|grad\b)", re.I)
_GREY_NEAR = Pattern(r"\b(?:nds?|neutral densit(?:y|ies)|density|gr[ae]y (?:filter|gel|glass|screen|grad))\b", re.I)
_GREY_IS = Pattern(r"\bgr[ae]y (?:filter|gel|glass|screen|grad)(?: (?:of|is|says|marked|at|that's))*\s*$", re.I)
_PUT_ON = Pattern(r"\b(?:(?:screw|put|slip|drop|clip|fit|tape|add|slap|pop|stick)(?:ed|ing|s|ped|ted)? (?:on |in |up )?|(?:swap\w*|chang\w*|switch\w*)(?: (?:it|that|them|the nd|the filter))? (?:for|to) |(?:stacked |screwed |put |doubled )?(?:on|onto|on top of|over|behind|in front of|together with|with) |the other(?: one)?(?: is)?(?: of)? |another(?: of)? |one of |and |plus )(?:an? |the |of )?$", re.I)


_GREY_ROW = Pattern(r"\b(?:nds|neutrals|neutral densities|(?:nd|neutral density|gr[ae]y) filters)(?: on| stacked| together| in a row)*\s*[,:(–-]?\s*(?:an? |one |the )?$", re.I)
_AND_ANOTHER = Pattern(r"\s*(?:nd )?(?:and|plus|\+|&|with|on top of)\s*(?:an? |the )?(?:nd ?)?\d?\.\d\b(?!\s*(?:stops?|m\b|ft|feet|s\b))", re.I)
"""Grey filters in a row: "two NDs, a 0.3 and a 0.6"."""


def _density(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"0.6 grey over the lens", "without the nd, then I screw on a 0.9": the density of a filter."""
    if fact.quantity not in ("number", "aperture", "times") or fact.bad or round(fact.value, 3) not in _DENSITIES or "." not in fact.said or "f" in fact.said.lower():
        return fact
    before = text[max(0, fact.start - 40) : fact.start]
    again = any(f.quantity == "nd" and f.unit == "density" and f.end <= fact.start for f in facts) or fact.value < 1.0 and _GREY_NEAR.search(text) is not None
    row = fact.value < 1.0 and _GREY_NEAR.search(text) is not None and (_GREY_ROW.search(before) or _AND_ANOTHER.match(text[fact.end :]))
    if not (row or _GREY_AFTER.match(text[fact.end :]) or fact.value < 1.0 and _GREY_IS.search(before) or again and _PUT_ON.search(before)):
        return fact
    return replace(fact, quantity="nd", value=stops_from_density(fact.value), unit="density", of="camera", cue="", other=math.nan)


_GLASS_BEFORE = Pattern(r"\b(?:filter|glass|screen)\b(?: (?:on|over|from|for) (?:the|my|his|her|our) (?:[\w']{1,16} ){0,2}(?:lens|camera|box|case))?(?: (?:on|is|it|its|it's|rim|that|which|the|says|reads|marked|stamped|engraved|labelled|rated|a|at|of|with|for|takes|needs|wants|has|just))*[\s:,(]*$", re.I)


_AND_A_FILTER = Pattern(r"\s*(?:,|and|plus|with|on|over)\s+(?:(?:an?|the|another)\s+)?(?:\d+(?:\.\d+)?\s*x|x\s*\d+(?:\.\d+)?)\s+(?:\w+ )?(?:filter|glass)", re.I)


def _glass(fact: Fact, text: str) -> Fact:
    """"the yellow filter says x2 on it", "an orange glass marked 4x": its factor."""
    marked = fact.quantity == "times" and fact.value > 1 and (_GLASS_BEFORE.search(text[max(0, fact.start - 60) : fact.start]) or _AND_A_FILTER.match(text[fact.end : fact.end + 60]))
    return replace(fact, quantity="factor", of="camera", cue="") if marked else fact


_COLOURED = Pattern(r"\s*(?:colou?red )?(?:glass|filter|screen)\b", re.I)


def without_gel_of_glass(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"an orange glass": a filter of the lens and no gel of the flash, where its factor is told."""
    factor = any(f.quantity in ("factor", "filter_loss") for f in facts)
    return [replace(f, quantity="camera_filter", unit="filter", of="camera", value=0.0) if factor and f.quantity == "modifier" and f.unit == "gel" and _COLOURED.match(text[f.end :]) else f for f in facts]


def _as_lit(facts: list[Fact], text: str) -> list[Fact]:
    """"cross-polarised copy work: the filter on the lens loses 1.7": how it is lit, and no polariser beside the glass whose loss is told."""
    told = any(f.quantity == "filter_loss" for f in facts)
    return [f for f in facts if not (f.quantity == "camera_filter" and f.unit == "polariser" and f.said.strip().lower().endswith("ed"))] if told else facts


STEPS: Steps = (
    (_hearsays, frozenset(_TOLD)), (_another_stop, _COUNTED), (_ones_own, frozenset({"loss"})), (_figures, frozenset(_FIGURES)), (_of_many, frozenset(_LOST)),
    (_told_of_takers, frozenset(_UNSAID)), (_part_of_the_box, _TAKEN), (_for_the_pair, _TAKEN), (_alike, _TAKEN), (_as_lit, frozenset({"camera_filter"})),
)
"""Such numbers made the losses they are."""
