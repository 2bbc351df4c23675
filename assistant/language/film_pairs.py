"""Film speeds told in pairs: box and rating, what a guide number is for, the film before and the film now.

"box 400, I rate it at 200" · "GN 110 feet (that's at 100)" · "swapped backs, 160 to 800" · "the meter stood at 400 and in the camera was 160"
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.language import film_alone, film_habits, two_scales, whose_film
from assistant.language.bare import UNIT_NEXT
from assistant.language.steps import Steps, Table, stepped
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark, iso_from_din
from assistant.units import LENGTH

_SPEEDS = ("film_speed", "rated")
_SLOWEST_BARE, _FASTEST_BARE = 25.0, 6400.0
"""Between these a number with no unit may be a film speed."""


def _told_apart(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with each of two film speeds known for what it is."""
    mine = len([f for f in facts if _may_be_speed(f)])
    if mine == 0 or mine == 1 and not any(f.quantity in ("guide_number", "number_range") or f.quantity == "number" and 3 <= f.value < _SLOWEST_BARE and _RATES.search(text) or f.quantity == "distance" and f.value > 8 for f in facts):
        return facts
    return stepped(facts, text, _TOLD_APART)


_RATES = Pattern(r"\b(?:rat(?:e|es|ed|ing)|expos(?:e|ed|ing)|meter(?:ed|ing)?)\b[^.?!;]{0,40}\b(?:film|roll|negs?|negatives?|stock|iso|asa|slides?)\b", re.I)
"""A film that is rated, however slow."""


def _may_be_speed(fact: Fact) -> bool:
    if fact.quantity == "number_range":
        return _bare(fact.value) and _bare(fact.other)
    return fact.quantity in _SPEEDS or fact.quantity == "number" and not fact.bad and _bare(fact.value)


def _bare(value: float) -> bool:
    return _SLOWEST_BARE <= value <= _FASTEST_BARE and is_film_speed_mark(value)


def _speed(fact: Fact, quantity: str = "film_speed") -> Fact:
    return replace(fact, quantity=quantity, of="film" if quantity == "rated" else "", unit="" if fact.quantity == "number" else fact.unit, cue="")


_PAPER_RATED = Pattern(r"\b(?:paper|plates?|ortho|lith|x-?ray)\b[^.?!\d]{0,24}\b(?:at|is|as|of)\s*(?:about |ei )*$", re.I)


def _slow_papers(facts: list[Fact], text: str) -> list[Fact]:
    return [_slow_paper(f, text) for f in facts]


def _slow_paper(fact: Fact, text: str) -> Fact:
    """"I rate the paper at 6": paper and plates are slower than any film in a box."""
    slow = fact.quantity == "number" and not fact.bad and 1 <= fact.value < _SLOWEST_BARE and is_film_speed_mark(fact.value)
    return _speed(fact) if slow and _PAPER_RATED.search(text[: fact.start]) and not UNIT_NEXT.match(text[fact.end :]) else fact


_BOTH = Pattern(r"(?P<iso>\d{1,4})/(?P<din>\d{1,2})(?!\d)°?")


_WRITTEN_AS_BOTH = frozenset({"power", "number", "share", "shutter", "film_speed"})


def _on_both_scales(facts: list[Fact], text: str) -> list[Fact]:
    return [_both_scales(f, text) if f.quantity in _WRITTEN_AS_BOTH else f for f in facts] if "/" in text else facts


def _both_scales(fact: Fact, text: str) -> Fact:
    """"100/21": a speed on both scales at once, as boxes have it, and no fraction."""
    found = _BOTH.match(text, fact.start)
    if found is None or int(found["din"]) < 9 or not _SLOWEST_BARE / 4 <= float(found["iso"]) or round(float(iso_from_din(float(found["din"])))) != int(found["iso"]):
        return fact
    return replace(fact, quantity="film_speed", value=float(found["iso"]), unit="", of="", bad="", cue="")


# --- what a guide number is for -----------------------------------------------------------------

_UNIT = r"(?:[ ,]{0,2}(?:in )?(?:feet|foot|ft|metres?|meters?|m)\b)?"
_FOR_FILM = Pattern(rf"{_UNIT}(?:[\s,;:(]*(?:and |but )?(?:(?:that|which|it|this)(?:'s| is|s)(?: given| quoted| measured| only| of course)?|given|quoted|marked|measured|rated|stated))? ?\(?(?:at|for|on|with) (?:iso |asa |an? )?", re.I)
_FLASH_IS = Pattern(r"\b(?:flash(?:gun)?|gun|strobe|speedlight|head|hammerhead|lamp|bulb|unit)(?:'s| is| was| has| does| of)?(?: rated| marked| good)?(?: at| for| of)?\s*$", re.I)
_HOW_FAR = Pattern(r"\bhow (?:far|near|close)\b|\breach\b", re.I)
_GUIDE = Pattern(r"\bguide\b|\bgn\b", re.I)
_FOR_100 = Pattern(r"\s*(?:at|for|on|with) (?:iso |asa )?(?:100|a hundred|hundred)\b(?! ?(?:feet|ft|m\b|met))|\s*(?:at|for|on|with) (?:iso |asa )\d|\s*(?:at|for|on|with) \d+ ?(?:iso|asa|din)\b", re.I)


def _flash_is(facts: list[Fact], text: str) -> list[Fact]:
    """"the flash is 33 metres for 100": a guide number, for nothing else is told of a film."""
    if any(f.quantity == "guide_number" for f in facts) or sum(f.quantity == "distance" for f in facts) != 2 and not _HOW_FAR.search(text) or _GUIDE.search(text):
        return facts
    return [replace(f, quantity="guide_number", value=f.value / LENGTH[f.unit], of="") if f.quantity == "distance" and f.unit in ("ft", "m") and _FLASH_IS.search(text[: f.start]) and _FOR_100.match(text[f.end :]) else f for f in facts]


def _of_the_guide(facts: list[Fact], text: str) -> list[Fact]:
    """"guide 110 feet (that's at 100)", "GN 40 at a hundred" beside a film of another speed: what the guide number is for."""
    out: list[Fact] = []
    others = sum(f.quantity in (*_SPEEDS, "push") for f in facts)
    for fact in facts:
        guide = out[-1] if out and out[-1].quantity == "guide_number" and not out[-1].at_iso else None
        joined = guide is not None and _may_be_speed(fact) and fact.quantity != "number_range" and _FOR_FILM.fullmatch(text[guide.end : fact.start].strip() + " ")
        if guide is not None and fact.quantity == "film_speed" and _NEXT_TO_IT.fullmatch(text[guide.end : fact.start]) and _another_loaded(fact, facts, text):
            out[-1] = replace(guide, at_iso=fact.value)
        elif guide is not None and joined and (fact.value == 100 or others > (fact.quantity in _SPEEDS)):
            out[-1] = replace(guide, at_iso=fact.value)
        else:
            out.append(fact)
    return out


def _said_twice(facts: list[Fact], text: str) -> list[Fact]:
    """"I shoot two hundred, tonight it's eight hundred, the table says f/8 for two hundred": the first film is named again."""
    speeds = [f for f in facts if f.quantity == "film_speed"]
    again = len(speeds) == 3 and speeds[0].value == speeds[2].value != speeds[1].value and any(f.quantity == "aperture" for f in facts)
    return [f for f in facts if f is not speeds[2]] if again else facts


_WANTED_FOR = Pattern(r"\bwhat\b[^.?\d]{0,40}\b(?:for|on|at|with)\s*(?:a |an |the )?$|\b(?:for|on|at|with) $", re.I)


def _guide_for(facts: list[Fact], text: str) -> list[Fact]:
    """"GN 110 for 100 film, what is it for 160": the film that the guide number is wanted for."""
    guides, numbers = [f for f in facts if f.quantity == "guide_number"], [f for f in facts if f.quantity == "number"]
    alone = len(guides) == len(numbers) == 1 and guides[0].at_iso and len(facts) == 2 and _may_be_speed(numbers[0]) and not UNIT_NEXT.match(text[numbers[0].end :])
    return [_speed(f) if f.quantity == "number" else f for f in facts] if alone and _WANTED_FOR.search(text[: numbers[0].start]) else facts


_NEXT_TO_IT = Pattern(rf"{_UNIT}[\s,(]*(?:iso |asa )?", re.I)
_IS_LOADED = Pattern(r"\b(?:film|loaded|loading|shooting|camera|back|roll|slide|chrome|neg\w*|tonight|today|but|i'?m on|using|i have|i'?ve got)\b[^.?!;\d]{0,20}$", re.I)
_LOADED_AFTER = Pattern(r"\s*(?:asa |iso )?(?:film|slide|chrome|neg\w*|loaded|stock|roll|in the (?:camera|back)|today|tonight)\b", re.I)
_CHANGED = Pattern(r"\b(?:then|instead|swap\w*|switch\w*|chang\w+|compared|versus|becomes?|difference|than)\b", re.I)


def _another_loaded(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """Whether another film is told as the one loaded: "gn 160 ft iso 100, film 25 asa"."""
    others = [f for f in facts if f.quantity == "film_speed" and f is not fact]
    return len(others) == 1 and others[0].start > fact.end and _CHANGED.search(text) is None and (_IS_LOADED.search(text[fact.end : others[0].start]) or _LOADED_AFTER.match(text[others[0].end :]) or _OF_FILM.search(others[0].said.replace("ISO", ""))) is not None


# --- one film for another -----------------------------------------------------------------------

_OF_FILM = Pattern(r"\b(?:films?|backs?|magazines?|rolls?|stock|iso|asa|slides?|chromes?|neg(?:ative)?s?|sheets?|bodies|emulsion)\b", re.I)


def _swapped(facts: list[Fact], text: str) -> list[Fact]:
    """"swapped backs, 160 to 800": a film for another, where films or backs are spoken of."""
    pair = next((f for f in facts if f.quantity == "number_range" and _may_be_speed(f)), None)
    if pair is None or not _OF_FILM.search(text) or UNIT_NEXT.match(text[pair.end :]) or any(f.quantity == "push" for f in facts):
        return facts
    same = (pair.value, pair.other)
    first = replace(pair, quantity="film_speed", other=math.nan, of="", unit="")
    made = [first, replace(first, value=pair.other, start=pair.end - 1)]
    kept = [f for f in facts if f is not pair and not (_may_be_speed(f) and f.value in same)]
    return sorted([*kept, *made], key=lambda f: f.start)


_FILM_IN = Pattern(r"\b(?:in (?:the|my|that) (?:camera|back|body|magazine)|(?:film|roll)(?: back| magazine)?|back|magazine)(?:'s| is| was| had| holds| held| has| takes| contains| sat)(?: really| actually| only| in fact)? (?:iso |an? |the )*$", re.I)
_FILM_AFTER = Pattern(r"\s*(?:in (?:the|my|that|there)(?: (?:camera|back|body|magazine))?|loaded|film|speed|in there)\b", re.I)
_METER_AT = Pattern(r"\b(?:meter|dial|iso|camera)(?:'s| sat| stood| stayed| said| read| was| is| had been| has been)?(?: (?:stood|sat|stuck|set|left|still|reading|on|for|all)){0,3} (?:at|on|to|for) (?:iso )?$|\b(?:worked|figured|calculated|reckoned|did)\b[^.,;?!\d]{0,24} (?:for|at|as|on) (?:iso )?$", re.I)


def _both_told(facts: list[Fact], text: str) -> list[Fact]:
    """"the meter stood at 400 and in the camera was 160": what was metered for and what was loaded."""
    def told(fact: Fact) -> bool:
        return fact.quantity == "number" and _may_be_speed(fact) and not UNIT_NEXT.match(text[fact.end :])
    metered = [f for f in facts if (told(f) or f.quantity == "film_speed") and _METER_AT.search(text[: f.start])]
    film = [f for f in facts if f not in metered and (f.quantity == "film_speed" or told(f) and (_FILM_IN.search(text[: f.start]) or _FILM_AFTER.match(text[f.end :])))]
    if len(metered) != 1 or not film:
        return facts
    return [_speed(f) if f.quantity == "number" and (f in film or f in metered) else f for f in facts]


_NOW_IS = Pattern(r"\b(?:(?:and|but|while) the other(?: one| body| camera| back| roll| magazine| holder)?(?: has| holds| is| takes| with| had)?|(?:this (?:week|time|roll|one)|now|today|tonight|then|and|but) (?:it'?s|it is|i'?m on|we'?re on|i have|we have|with|on|for)|(?:this one|film|back|body|camera)(?:'s| is| holds| has| takes)|(?:now |ive |i've |have |just )?loaded|loading|offers me|offered me|swapped (?:it )?(?:for|to)|changed (?:it )?(?:for|to)|switched (?:it )?to) (?:the |an? |iso )*$", re.I)
_WHAT_WITH = Pattern(r"\b(?:what|which|how much) (?:power|aperture|opening|f-?stop|distance)\b[^.?\d]{0,16}\b(?:with|on|for) (?:the |an? )?$", re.I)
_ENDS = Pattern(r"\s*(?:$|[.,;:?!)](?!\d)|(?:now|instead|and|so|but|then|today|tonight|in|what|same|loaded|film)\b)", re.I)


def _loaded(facts: list[Fact], text: str) -> list[Fact]:
    """"quarter power was right with 100 film; this week it's 400": a film beside the film told."""
    if sum(f.quantity in _SPEEDS for f in facts) != 1:
        return facts
    return [_speed(f) if f.quantity == "number" and _may_be_speed(f) and f.value >= 50 and (_NOW_IS.search(text[: f.start]) or _WHAT_WITH.search(text[: f.start])) and _ENDS.match(text[f.end :]) else f for f in facts]


_TWO_OF_THEM = Pattern(r"\b(?:bod(?:y|ies)|cameras?|backs?|magazines?|rolls?|films?|holders?|inserts?)\b", re.I)
_THE_OTHER = Pattern(r"(?:\b(?:and|but|while|then)\b|[,;])\s*(?:the |my |in the |in my )?(?:other|second|another|one|next|two|b)(?: (?:one|body|camera|back|roll|magazine|two|b))?(?:'s| is| has| had| holds| with| on| takes| carries| loaded| of| at| film)*\s*(?:iso )?$|\b(?:body|camera|back|magazine) (?:two|b|2)(?:'s| is| has| holds| with| on| takes| carries| loaded)*\s*$", re.I)
_INSTEAD_OF = Pattern(r"\b(?:instead of|in place of|rather than) (?:iso |the )?$", re.I)
_THAT_ONE = Pattern(r"\b(?:the|on|for|with) (?:iso )?$", re.I)


def _two_films(facts: list[Fact], text: str) -> list[Fact]:
    """"one body has 100 film and the other 160; on the 100 it is f/11, what on the 160": the second film, and each named again."""
    speeds = [f for f in facts if f.quantity in _SPEEDS]
    others = [f for f in facts if f.quantity == "number" and _may_be_speed(f) and (_THE_OTHER.search(text[: f.start]) and _ENDS.match(text[f.end :]) or _INSTEAD_OF.search(text[: f.start]) and not UNIT_NEXT.match(text[f.end :]))]
    if len({f.value for f in speeds}) != 1 or len(others) != 1 or others[0].value == speeds[0].value or not _TWO_OF_THEM.search(text):
        return facts
    told = {speeds[0].value, others[0].value}
    out = [_speed(f) if f is others[0] else f for f in facts]
    return [replace(f, quantity="remark") if f.quantity == "number" and f is not others[0] and (f.value in told and _THAT_ONE.search(text[: f.start]) or f.value == 2 and _TWO_OF_THEM.match(text[f.end :].lstrip())) else f for f in out]


# --- box and rating -----------------------------------------------------------------------------

_RATES_THE = Pattern(r"\b(?:rat(?:e|es|ed|ing)|treat(?:s|ed|ing)?|shoots?|shot|shooting|expos(?:e|es|ed|ing)|meter(?:s|ed|ing)?) (?:the |my |this |that |his |her |our |an? |all |iso |old |stale |expired |ancient |outdated |fresh |box[- ]speed |nominal |nominally |good |whole |film |stock |roll |rolls |sheets |of )*$", re.I)
_RATED_AT = Pattern(r"(?:[\s-]*(?:speed|film|stock|stuff|roll|slide|chrome|neg(?:ative)?s?|colou?r|black and white|tonight|always))*\s*(?:at|as|for|like) (?:iso |ei |an? |if it were )*", re.I)


_IS_RATED = Pattern(r"[\s,-]*(?:(?:film|stock|roll) )?(?:that |which |and |but )?(?:by my test )?(?:(?:really |in fact |actually )?(?:tests?|tested|proves|proved|behaves|behaved|acts|turned out|works out|comes out|came out)(?: for me)? (?:as|at|like|to be|as if it were|nearer|closer to) (?:only |just |about )?(?:iso |ei |an? )*)|[\s,-]*(?:(?:speed|film|stock|stuff|roll|slide|chrome|negs?|negative|colou?r|black and white)[\s,]+)*(?:(?:which|that|and|but) )?(?:(?:i|we|she|he)(?:'m|'re| am| are)? )?(?:(?:always|usually|normally|generally|only) )?(?:rat(?:e|es|ed|ing)|work(?:s|ed|ing)?(?= (?:it )?(?:at|as|like))|treat(?:s|ed|ing)?|regard(?:ed)?|expos(?:e|es|ed|ing)|meter(?:s|ed|ing)?)(?: it| them)?(?: at| as| like| for| to)? (?:if it were )?(?:iso |ei |an? )*", re.I)


def _rates_at(facts: list[Fact], text: str) -> list[Fact]:
    """"she rates the four hundred at two fifty": the box, then the rating."""
    out = list(facts)
    for n, (box, rated) in enumerate(zip(facts, facts[1:])):
        pair = _may_be_speed(box) and box.quantity != "number_range" and (_may_be_speed(rated) and rated.quantity != "number_range" or rated.quantity == "number" and not rated.bad and 3 <= rated.value and is_film_speed_mark(rated.value)) and not UNIT_NEXT.match(text[rated.end :])
        if pair and (_RATES_THE.search(text[: box.start]) and _RATED_AT.fullmatch(text[box.end : rated.start]) or _IS_RATED.fullmatch(text[box.end : rated.start])):
            out[n : n + 2] = [_speed(box), _speed(rated, "rated")]
    return out


_RATED_BEFORE = Pattern(r"\b(?:rat(?:e|ed|ing)|expos(?:e|ed|ing)|shot|shoot|shooting|metered|work)(?: it| them| (?:the |my |this |that |all )?(?:film|roll|stock))?(?: at| as)?(?: iso| ei)? *\d*$", re.I)
_OF_THE_BOX = Pattern(r"[\s,]*(?:(?:(?:al)?though|but|while|where|when|as|and) )?(?:(?:on|for|with|against|off|instead of|rather than) )?(?:an? |the |my |its )?box(?: speed)?(?:'s| is| of| says)? *(?:iso )?", re.I)


def _rated_of_box(facts: list[Fact], text: str) -> list[Fact]:
    """"rated 200 on box 400": the rating, then the box."""
    out = list(facts)
    for n, (rated, box) in enumerate(zip(facts, facts[1:])):
        if rated.quantity in _SPEEDS and box.quantity in _SPEEDS and _RATED_BEFORE.search(text[: rated.end]) and _OF_THE_BOX.fullmatch(text[rated.end : box.start]):
            out[n : n + 2] = [_speed(rated, "rated"), _speed(box)]
    return out


_RATING = Pattern(r"\b(?:real|true|actual|effective|tested) (?:film )?(?:speed|index|rating|iso)(?: really| only)? (?:is|was|of|comes to|came to|turned out(?: to be| as| at)?) (?:only |about |just )?(?:iso )?$|\b(?:rat(?:e|es|ed|ing)|treat(?:s|ed|ing)?|expos(?:e|es|ing)|meter(?:s|ing)|ei|exposure index)\b(?! ?\d)[^.,;:?!\d]{0,24}\b(?:at|as|for|to|ei|index|of)\s*(?:iso |ei |of |an? )*$|\bei $|\b(?:rat(?:e|es|ed|ing)|expos(?:e|es|ing)|meter(?:s|ing)?) (?:it|this|that|them)(?: all)? $", re.I)
_INDEX = ("ei", "exposure index")
_BOUND = frozenset({"guide_number", "distance"})


def _rating(facts: list[Fact], text: str) -> list[Fact]:
    """"box says 400 but I rate it at 200", with a flash: the rating is what the exposure goes by."""
    speeds = [f for f in facts if f.quantity in _SPEEDS]
    if len(speeds) != 2 or not {f.quantity for f in facts} & _BOUND or any(f.quantity in ("push", "aperture") for f in facts):
        return facts
    box = speeds[0] if _RATED_AT.fullmatch(text[speeds[0].end : speeds[1].start]) else None  # "I rate this ISO 400 film at 200"
    rated = [f for f in speeds if f is not box and _RATING.search(text[: f.start] + ("ei " if f.said.lower().startswith(_INDEX) else ""))]
    if len(rated) != 1:
        return facts
    return [_speed(f, "rated" if f is rated[0] else "film_speed") if f in speeds else f for f in facts]


_AS_IF = Pattern(r"\b(?:as if|as though|like|pretending|thinking|believing)(?: (?:it|that|this|the film|the roll))? (?:were|was|is|had been|to be|being)(?: loaded with| rated| really)?(?: at| as)? (?:iso |asa |an? )*$", re.I)


def _as_if(facts: list[Fact], text: str) -> list[Fact]:
    """"I exposed 125 film as though it were 500": the film, and what it was taken for."""
    taken = [f for f in facts if f.quantity == "number" and _may_be_speed(f) and _AS_IF.search(text[: f.start]) and not UNIT_NEXT.match(text[f.end :])]
    if len(taken) != 1 or sum(f.quantity == "film_speed" for f in facts) != 1 or any(f.quantity == "rated" for f in facts):
        return facts
    return [_speed(f, "rated") if f is taken[0] else f for f in facts]


_SET_FOR = Pattern(r"\bmeter\b[^.?!\d]{0,20}\b(?:set|stands?|is|left|dialled|dialed)\b[^.?!\d]{0,12}\b(?:to|at|on|for)\s*(?:iso |ei )*$", re.I)


def _set_for(facts: list[Fact], text: str) -> list[Fact]:
    """"I rate the paper at 6; the meter is set to 100 and says f/45": what the meter stands at is no rating of the film."""
    if not any(f.quantity == "aperture" for f in facts):
        return facts
    return [_speed(f) if f.quantity == "rated" and _SET_FOR.search(text[: f.start]) else f for f in facts]


_AFTERWARDS = Pattern(r"\b(?:now|then|next|today|tonight|this (?:time|week|one|roll)|later|afterwards|new|another|second|other|instead|from now on)\b[^.?!;]{0,40}$", re.I)
_AND_NOW = Pattern(r"\s*(?:now|instead|today|tonight|this time|from now on)\b", re.I)


def _rated_anew(facts: list[Fact], text: str) -> list[Fact]:
    """"with the film rated 400 I get f/8; the film's now rated at 1600": two ratings one after the other, and not a box and its rating."""
    rated, boxes, read = ([f for f in facts if f.quantity == kind] for kind in ("rated", "film_speed", "aperture"))
    if not rated or len(rated) + len(boxes) not in (2, 3) or len(boxes) > 1 or len(read) != 1 or any(f.quantity in ("guide_number", "push", "stops") for f in facts):
        return facts
    last = rated[-1]
    if read[0].start > last.start or not (_AFTERWARDS.search(text[: last.start]) or _AND_NOW.match(text, last.end)):
        return facts
    return [_speed(f) if f in rated else replace(f, quantity="remark") if f in boxes and len(rated) == 2 else f for f in facts]


_TOLD_APART = Table((
    (_flash_is, frozenset({"distance"})), (_said_twice, frozenset({"film_speed"})), (_of_the_guide, frozenset({"guide_number"})), (_guide_for, frozenset({"guide_number"})), (_swapped, frozenset({"number_range"})),
    (_both_told, frozenset({"number"})), (_rates_at, frozenset({*_SPEEDS, "number"})), (_rated_of_box, frozenset(_SPEEDS)), (_two_films, frozenset({"number"})), (_loaded, frozenset({"number"})), (_set_for, frozenset({"rated"})), (_rated_anew, frozenset({"rated"})), (_rating, frozenset(_SPEEDS)), (_as_if, frozenset({"number"})),
))
_DIALS = Pattern(r"\b(?:dial(?: in)?|rate|meter|set|expose|shoot)(?: (?:it|the (?:meter|film|dial|roll)|this|that))?(?: (?:at|to|on|for|as))?(?: iso| ei)? $", re.I)
_OR = Pattern(r" or (?:at |on |as )?(?:iso |ei )?", re.I)


def _two_to_dial(facts: list[Fact], text: str) -> list[Fact]:
    """"dial 320 or 640?" with a film that is told: two speeds to rate it at."""
    if " or " not in text.lower() or not any(f.quantity == "film_speed" for f in facts):
        return facts
    for one, other in zip(facts, facts[1:]):
        joined = other.quantity in ("number", "rated") and one.quantity in ("number", "rated") and not (one.bad or other.bad) and _OR.fullmatch(text, one.end, other.start) is not None
        if joined and (one.quantity == "rated" or _DIALS.search(text[: one.start])) and min(one.value, other.value) >= 12 and is_film_speed_mark(one.value) and is_film_speed_mark(other.value):
            return [_speed(f, "rated") if f is one or f is other else f for f in facts]
    return facts


STEPS: Steps = (
    (two_scales.settle, frozenset({"number"})), (film_alone.settle, film_alone.KINDS), (_slow_papers, frozenset({"number"})), (_on_both_scales, _WRITTEN_AS_BOTH), (film_habits.settle, frozenset({"guide_number"})),
    (_told_apart, frozenset({*_SPEEDS, "number", "number_range"})), (whose_film.settle, frozenset({"film_speed"})), (_two_to_dial, frozenset({"number"})),
)
"""The facts with each of two film speeds known for what it is."""
