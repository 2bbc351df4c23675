"""Loose numbers: a number with no unit that its neighbours make a distance or a film matter.

"and the back at 4.5" · "160 colour neg" · "the meter was set to 100" · "exponent 1.3" · "20 years old"
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language.bare import COMMON_FILMS, UNIT_NEXT
from assistant.language.items import Item
from assistant.language.rows import around, loose_row
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.scales import is_film_speed_mark, is_shutter_mark, iso_from_din
from assistant.units import LENGTH

_STOCK = r"(?:stuff|colou?r|neg|negs|negative|slide|chrome|transparency|print film|black[- ]and[- ]white|monochrome|b ?& ?w|b/w|bw|film|roll|stock|emulsion|sheet)"
_FILM_AFTER = Pattern(rf"^\W*(?:-?speed\W+)?{_STOCK}\b", re.I)
_FILM_BEFORE = Pattern(rf"\b(?:{_STOCK}|rolls|box|cassette|box speed)\W*(?:is|was|of|says|at|speed|rated|marked|that's|a|an|:|,)*(?:\W+(?:is|of|a|an|at|says))*\W*$|\bfilm(?: camera| body| one| back|'s)?(?: in (?:there|it|(?:the |my )?(?:other |second |film )?(?:body|camera|one)))?(?:'s| is| was| has| takes| holds| wants| uses| are)?(?: loaded with| got| in)?\W*(?:iso )?$", re.I)
_RATED = Pattern(
    r"\b(?:rat(?:e|ed|ing)|treat(?:s|ed|ing)?|sho(?:t|ot|oting)|expos(?:e|ed|ing)|meter(?:ed|ing)?|dial(?:led|ed)?|set|push(?:ed)?|pull(?:ed)?|develop(?:ed)?)"
    r"(?:\W+(?:it|them|this|that|the|a|whole|roll|rolls|film|meter|light|was|is|in|all|set|my|of|speed|iso|asa|slide|neg|colou?r|every?thing|lot|things|dial|camera|flash|stuff|\d{2,4}))*\W+(?:at|to|as|for|on|like|as (?:if|though) it (?:was|were))\W*(?:ei\W*|iso\W*)?$", re.I)
_EXPONENT = Pattern(r"(?:\bexponent|\bschwarzschild(?:'s)?(?: exponent| number| p)?|\breciprocity|\bp|\bto the power|\bpower law|\bpower|\bp.value|\^)(?:\W+(?:of|is|value|about|around))*\W*$", re.I)
_YEARS = Pattern(r"^\W*(?:years?|yrs?|decades?)\b", re.I)
_THING = r"(?:flash(?:es|guns?)?|guns?|strobes?|speedlights?|units?|packs?|generators?|heads?|monolights?|lamps?|capacitors?|batter(?:y|ies)|lens(?:es)?|cameras?|meters?|bod(?:y|ies)|shutters?|tripods?)"
_OLD_THING = Pattern(rf"^\W*(?:years?|yrs?|decades?)[\s-]*old (?:\w+ )?(?:{_THING}|son|daughter|boy|girl|brother|sister|kid|child|nephew|niece|lad|man|woman|dad|mum)\b", re.I)
_THING_IS = Pattern(rf"\b{_THING}(?:'s| is| are| was)(?: about| over| at least| some)? $", re.I)
_LOADED = Pattern(r"\b(?:load(?:ed|ing)?|swap(?:ped|ping)? (?:in|to|for)|put in|switch(?:ed|ing)? to|chang(?:e|ed|ing) to|now (?:it's|on|in|i have|i'm on|im on|i'm using|we're on)|now|what about|how about|and for|and with)(?:\W+(?:is|it|with|a|the|some|up))*\W*$", re.I)
_OVER_UNDER = Pattern(r"^\W*(?:stops? )?(?:too )?(?P<more>over|hot|above)|^\W*(?:stops? )?(?:too )?(?P<less>under|below)\b", re.I)
_FILM_TALK = Pattern(r"bracket|film|slide|\bneg|frame|\broll\b|expos|\brate\b|\bEI\b|box speed", re.I)
_SHOT = Pattern(r"\b(?:shot|loaded|loading|exposed|rated|metered|metered for|metered at|set for)\W+(?:my |the |a |with |it )*$", re.I)
_HAD_LOADED = Pattern(r"\bif (?:i|we|you|he|she|they)(?: had|'d| have|'ve)? (?:loaded|load|put in)(?: up)?(?: with)? (?:an? |some |the )?$", re.I)
_SHOT_AFTER = Pattern(r"^\s*(?:(?:film|at|as|and|but|instead|by mistake|when|how|what|which)\b|[,.;]|$)", re.I)
_THEN_RATED = Pattern(r"^\s*(?:film |neg |slide )?(?:rated|shot|metered|exposed)\b(?: it)?(?: at| to| as| for)?\s*(?:iso |ei |asa )?\d{2,4}\b", re.I)
_FRAME_NUMBER = Pattern(r"\b(?:frame|exposure|shot|picture|negative|neg|sheet)\W{0,2}(?:no\W*|nr\W*|number |#)?$", re.I)
_FRAME_CHOSEN = Pattern(r"\s*(?:of the (?:roll|test|strip|row|bracket|sheet)\s*)?(?:was|is|the one|one|looked|looks|came|turned|exposed|printed|seems|seemed)\b", re.I)
_ROLLS = (8.0, 10.0, 12.0, 15.0, 16.0, 20.0, 24.0, 27.0, 36.0, 72.0)
_ROLL_BEFORE = Pattern(r"\brolls? (?:of|has|holds|with)\W*$", re.I)
_ROLL_AFTER = Pattern(r"^\W*(?:exps?\b|exposures?|frames?|shots?|on (?:the|a) roll|left on|left\b|to a roll)", re.I)
_A_ROLL = Pattern(r"^\W*(?:exps?|exposures?|frames?|shots?|pictures)?\W*(?:(?:on|to|per|in) (?:(?:the|a|each|every) )?|an? )roll\b|^\W*exp(?:osure)?\W+rolls?\b", re.I)
_PER_BRACKET = Pattern(r"^\W*(?:shots?|frames?|exposures?|exps?)?\W*(?:per|to (?:a|the|each)|in (?:a|each|every)|each|a) (?:bracket|subject|set-?up|scene)|^\W*(?:shot|frame|exposure)?\W*brackets?\b", re.I)
_MARK_SPEEDS = (25.0, 6400.0)
Meaning = tuple[str, str, float, str, str]


_ON_THE_SHUTTER = Pattern(r"\bshutter(?: speed| dial| ring)?(?:'s| is| was| stays| stands| sits)?(?: set| left| stuck)? (?:on|to|at)(?: an?)? $", re.I)


_AROUND = 150
"""Letters on either side beyond which nothing gives a bare number its meaning."""


_PEOPLE = Pattern(r"^\s*(?:people|persons|guests|kids|children|men|women|boys|girls|players|rowers|dancers|singers|students|faces|heads of people|of us|adults|things|options|choices|candidates|possibilities|ideas|depths(?! of)|(?:stand |sit |lie |are )?in (?:a|one) (?:line|row)|abreast)\b", re.I)


_IN_THE_YEAR = Pattern(r"\b(?:before|since|in|from|after|until|till|made|dated|year|around|about|pre)[\s-]*$", re.I)


_BY_DIN = Pattern(r"\bdin\b[^?!\d]{0,40}\b(?:at|on|to|reads?|says?|is|shows?|reading|marked)\s*$", re.I)


_ROUNDED_TO = Pattern(r"\bnearest(?: whole)?\s*$", re.I)


def _rows_told(facts: Sequence[Fact], before: str) -> bool:
    """"front row three metres, back row five": how far off, since the other row was told so."""
    return patterns.search(r"\b(?:front|back|first|last|rear|near|far|second|third|fourth|fifth|middle)\w* row\W{0,2}$", before, re.I) is not None and any(f.quantity == "distance" and f.of in ("front", "back", "middle") for f in facts)


def loose_number(fact: Fact, items: Sequence[Item], at: int, facts: Sequence[Fact], text: str) -> Meaning | None:
    """(quantity, of, value, unit, cue) a bare number stands for, or None."""
    before, after = text[max(0, fact.start - _AROUND) : fact.start], text[fact.end : fact.end + _AROUND]
    if _PEOPLE.match(after) or 1900 <= fact.value <= 2040 and fact.value == int(fact.value) and _IN_THE_YEAR.search(before):
        return "remark", "", fact.value, "", ""
    if 9 <= fact.value <= 42 and fact.value == int(fact.value) and _BY_DIN.search(before) and not UNIT_NEXT.match(after):
        return "film_speed", "", float(iso_from_din(fact.value)), "DIN", ""
    if fact.value <= 1 and _ROUNDED_TO.search(before):
        return "remark", "", fact.value, "", ""  # "to the nearest third": how fine an answer is wanted
    if fact.value >= 15 and fact.value == int(fact.value) and _ON_THE_SHUTTER.search(before) and is_shutter_mark(1 / fact.value) and not UNIT_NEXT.match(after):
        return "shutter", "", 1 / fact.value, "", ""  # "leaf shutter on 500"
    years = _YEARS.match(after)
    if years and (_OLD_THING.match(after) or _THING_IS.search(before)):
        return "remark", "", fact.value, "", ""  # "a thirty-year-old flash": no film's age
    if years:
        return "years", "film", fact.value * (10.0 if "decade" in years.group().lower() else 1.0), "years", ""
    if patterns.search(r"\brows?\W{0,2}(?:no\W*|number |#)?$", before, re.I) and fact.value == int(fact.value) and fact.value <= 12 and not _rows_told(facts, before) and not patterns.match(r"\s*(?:feet|foot|ft|m\b|met|people|(?:rows|ranks|tiers|lines)\b|,?\s*and \d)|\.\d", after, re.I):
        return "place", "", fact.value, "", ""  # "row 2": which row it is
    if fact.value == int(fact.value) and 1 <= fact.value <= 40 and _FRAME_NUMBER.search(before) and _FRAME_CHOSEN.match(after):
        return "place", "", fact.value, "", ""  # "frame five": which one it is
    if fact.value == int(fact.value) and _ROLL_BEFORE.search(before) and fact.value in _ROLLS or fact.value in _ROLLS and (_A_ROLL.match(after) or _ROLL_AFTER.match(after) and "bracket" in text.lower()):
        return "count", "", fact.value, "frames", ""
    if 1 < fact.value < 20 and "bracket" in text.lower() and (patterns.search(r"\bbracket(?:s|ing)?(?: sets?| runs?)?(?: (?:of|are|is|takes?|with|in)\W*| (?:(?:every|each|all|the|my|a|any)(?: of (?:the|my))? \w+ |everything |it all )(?:with|in|as|by|at|over|on) | )$", before, re.I) or _PER_BRACKET.match(after)):
        return "count", "", fact.value, "frames", ""
    if 0 < fact.value < 10 and patterns.match(r"\s*(?:of an? )?stops? down\b(?! to\b)", after, re.I):
        return "stops", "", fact.value, "", "less"
    if fact.value == 0 and ("+" in text or "bracket" in text.lower()) and patterns.search(r"[+]\s?\d|\bbracket", text, re.I):
        return "place", "", 0.0, "", ""  # the frame on the nose of "+1, 0, -1"
    if fact.value >= 2 and patterns.match(r"\W*(?:rows?|ranks?|tiers?|lines|deep)\b", after, re.I):
        return "rows", "", fact.value, "", ""
    if patterns.match(r"\W*(?:one|frame|shot|exposure|row)\b", after, re.I) and patterns.search(r"bracket|frame|exposures|\brow\b", text, re.I) and 0 < fact.value < 1:
        return "place", "", float(round(1 / fact.value)), "", ""  # "the third one": a frame's place in the bracket
    if patterns.match(r"\W*(?:shots?|frames?|exposures?)\b", after, re.I) and "bracket" in text.lower() and 1 < fact.value < 20:
        return "count", "", fact.value, "frames", ""
    pushed = patterns.search(r"\b(push|pull)\w*(?: it| them)?(?: just| only| by)*\W*$", before, re.I)
    if pushed and 0 < fact.value <= 3 and not patterns.match(r"\W*stops?", after, re.I):
        return "push", "film", fact.value * (1 if pushed.group(1).lower() == "push" else -1), "", ""
    way = _OVER_UNDER.match(after)
    if way and 0 < fact.value <= 5 and _FILM_TALK.search(text) and not patterns.search(r"\b(?:key|fill|ambient)\b", text, re.I):
        return "stops", "", fact.value, "", "more" if way.group("more") else "less"
    if 0 < fact.value < 4 and _EXPONENT.search(before) and patterns.search(r"recip|exponent|schwarz|long expos|metered|\bp\b|to the power", text, re.I):
        return "exponent", "film", fact.value, "", ""
    return _film_number(fact, facts, before, after) or _row_number(fact, items, at, text)


_IN_THE_CAMERA = Pattern(r"^\s*(?:is |was |goes |speed )?(?:loaded\b|in (?:the |my |this |that |her |his )?(?:\w+ )?(?:camera|body|back|magazine|holders?|it)\b(?!\s+(?:feet|metres|meters)))", re.I)
_CAMERA_HOLDS = Pattern(r"\b(?:roll|film|stock|camera|body|magazine)\b[^.,;?\d]{0,30}\b(?:is|has|holds|says|reads|takes)\s*(?:an? )?$", re.I)
_ON_IT = Pattern(r"\bon\s*$", re.I)
_WAS_A = Pattern(r"\b(?:was|is|it's|it is|it was) an? $", re.I)
_FILM_TOLD = Pattern(r"\b(?:film|roll|stock|neg\w*|slides?|chrome)\b", re.I)
_SWAPPED = Pattern(r"\b(?:swap|chang|switch|trad|exchang|replac)\w*(?: from| out| my| the)* (?:iso |asa )?\d{2,4}(?: film| speed| stock| asa| iso)*(?: out)? (?:for|to|with|by)\s*$", re.I)
_ON_THE_METER = Pattern(r"^\s*(?:on|into|in) (?:the |my |a )?(?:light ?)?(?:meter|dial|iso dial)\b", re.I)
_ON_THE = Pattern(r"\bon (?:the|my|our|this|that)\s*$", re.I)
_METERED_AT = Pattern(r"\bmeter(?:ed|ing)?(?: off)? (?:the |my |that |this )?[a-z]+ (?:at|for|on)\s*$", re.I)
_A_TIME_TOLD = frozenset({"shutter", "exposure_value"})
_AFTER_A_MARK = Pattern(r"\b(?:at|f|and)\W{0,3}(?:\d{1,2}(?:\.\d)?|(?:two|five|four|six|three|one|eight|eleven|sixteen|twenty[- ]two)(?: (?:eight|six|five|four|point \w+))?)\s+(?:on|at|with|for)\s*$", re.I)
_GOT = Pattern(r"\b(?:i'?ve|'ve|have|has|had|got|put|there'?s|there is|with|only|is|stuck|slipped|run|running|carrying|using)\s*$", re.I)
_GOT_IN = Pattern(r"\s*in(?:side)?(?: here| there| it)?(?: today| tonight| now| instead)?(?=\s*(?:[.,;:?!-]|$|(?:f\W?\d|how|what|which|so|and|at|then|now|but|with|the|though|while)\b))", re.I)
_PUSHED_TO = Pattern(r"\b\d{2,4}\s+(?:film |stock )?(?:pushed|pulled)\s+(?:up |down )?to\s+$", re.I)


_WHEN_NEW = Pattern(r"^\s*(?:film |stock )?(?:when (?:it was |they were |i bought it )?(?:new|fresh|made|bought)|originally|once|in its (?:day|time|youth)|new\b|fresh\b)", re.I)
_WAS_ONCE = Pattern(r"\b(?:was|were) (?:once |originally |sold as |sold at |born (?:an? )?|rated |marked )+(?:iso |asa )?$|\b(?:new|fresh) (?:it was|it is)(?: an?)? $", re.I)


def _film_number(fact: Fact, facts: Sequence[Fact], before: str, after: str) -> Meaning | None:
    if not (is_film_speed_mark(fact.value) and _MARK_SPEEDS[0] <= fact.value <= _MARK_SPEEDS[1]) or patterns.match(r"\W*(?:%|ws|w/s|j\b|mm|feet|ft|watt)", after, re.I):
        return None
    if patterns.match(r"\W*(?:degrees?|deg)\b|\s*°", after, re.I):
        return "film_speed", "", float(iso_from_din(fact.value)), "DIN", ""
    known = any(f.quantity == "film_speed" for f in facts)
    if _PUSHED_TO.search(before) or known and _ON_THE_METER.match(after):
        return "rated", "film", fact.value, "", ""
    if _WHEN_NEW.match(after) or _WAS_ONCE.search(before):
        return ("film_speed", "", fact.value, "", "") if not known else None
    if _RATED.search(before):
        other = known or bool(patterns.search(rf"\b\d{{2,4}}\W+(?:speed\W+)?{_STOCK}\b|\b{_STOCK}\W+(?:is|of)\W+(?:a )?\d{{2,4}}\b", before + after, re.I))
        return ("rated", "film", fact.value, "", "") if other else ("film_speed", "", fact.value, "", "")
    if patterns.search(r"\bfrom\W*(?:iso )?$", before, re.I) and patterns.match(r"\W*to (?:iso |asa )?\d{2,4}\b\W*(?:film|iso|asa|speed|stock)?", after, re.I) and known:
        return "film_speed", "", fact.value, "", ""
    if known and (_LOADED.search(before) or _SWAPPED.search(before)) and not patterns.match(r"\W*(?:feet|foot|m\b|metres|stops?|people|flash|frames?)", after, re.I):
        return "film_speed", "", fact.value, "", ""
    if _THEN_RATED.match(after) or _HAD_LOADED.search(before) and _SHOT_AFTER.match(after):
        return "film_speed", "", fact.value, "", ""
    if _SHOT.search(before) and _SHOT_AFTER.match(after):
        return "film_speed", "", fact.value, "", ""
    if fact.value in COMMON_FILMS and _GOT.search(before) and _GOT_IN.match(after):
        return "film_speed", "", fact.value, "", ""  # "I've got 400 in"
    if fact.value >= 100 and ((_ON_THE.search(before) and any(f.quantity in _A_TIME_TOLD for f in facts) and _SHOT_AFTER.match(after)) or (_METERED_AT.search(before) and patterns.match(r"\s*[:,;.]", after))):
        return "film_speed", "", fact.value, "", ""  # "1/30 on the 400", "metered the hall at 800: 1/60"
    if fact.value >= 100 and fact.value in COMMON_FILMS and not known and any(f.quantity in _A_TIME_TOLD for f in facts) and _AFTER_A_MARK.search(before) and _SHOT_AFTER.match(after):
        return "film_speed", "", fact.value, "", ""  # "a thirtieth at five six on 400"
    if _FILM_AFTER.match(after) or _FILM_BEFORE.search(before) or _IN_THE_CAMERA.match(after) or _WAS_A.search(before) and _FILM_TOLD.search(before) or _CAMERA_HOLDS.search(before) and "fastest" not in before.lower() or known and fact.value >= 50 and _ON_IT.search(before) and _SHOT_AFTER.match(after):
        return "film_speed", "", fact.value, "", ""
    return None


_TAKEN_BACK = Pattern(r"\S{1,40}\W{1,12}(?:(?:no|nope|sorry|wait|i mean|i meant|actually|rather|make that)\b[\s,.-]{0,12}){1,8}$", re.I)
"""What was said before it and taken back: "furthest is fifteen, no seventeen"."""


_TO_A_ROW = Pattern(r"\W*(?:away )?(?:to|from|off) (?:the |my )?(?:(?P<front>front|first|near\w*|closest)|(?P<back>back|rear|last|far\w*|furthest|third|fourth))(?: (?:row|one|rank|lot|line|people|person|kids))?\b", re.I)
_ROW_ENDS = Pattern(r"\s*(?:$|[.,;:?!]|\b(?:and|one|with|so|what|how|from)\b)", re.I)


_ENDS_OF_ROWS = (("front", "front|near|closest"), ("back", r"\bback(?! to\b)|far|rear|\b(?:third|fourth|fifth|last) row"), ("backdrop", "wall|backdrop|background|paper"))


def _whose(before: str) -> str:
    """The row or wall that was named last: "eleven feet from the front row, back row sixteen"."""
    named = [(max((m.start() for m in patterns.finditer(words, before, re.I)), default=-1), of) for of, words in _ENDS_OF_ROWS]
    place, of = max(named)
    return of if place >= 0 else ""


def _row_number(fact: Fact, items: Sequence[Item], at: int, text: str) -> Meaning | None:
    lengths = [i for i in items[max(0, at - _AROUND) : at + _AROUND] if i.kind == "length" and i.unit in LENGTH and i.unit != "mm"]
    if not lengths:
        return None
    floor = max((i.end for i in lengths if i.end <= fact.start), default=0)
    ceiling = min((i.start for i in lengths if i.start >= fact.end), default=len(text))
    before, after = around(text, fact.start, fact.end, floor, ceiling)
    before = _TAKEN_BACK.sub("", before)
    joined = ceiling < len(text) and bool(patterns.fullmatch(r"\W*(?:and|to|or)\W*(?:at )?", after, re.I)) and bool(patterns.search(r"\brows?\b|\bfrom\b|\bbetween\b|\bare\b|\bat\b", before, re.I))
    to_one = _TO_A_ROW.match(text[fact.end : fact.end + 40])
    if to_one and _TO_A_ROW.match(text[floor : fact.start]) and _ROW_ENDS.match(text[fact.end + to_one.end() :]):
        unit = min(lengths, key=lambda i: abs(i.start - fact.start)).unit
        return "distance", "back" if to_one["back"] else "front", fact.value * LENGTH[unit], unit, ""  # "ten foot to the front row, fourteen to the back"
    if joined or loose_row(before, bool(patterns.match(r"\W*(?:(?:of )?an? )?(?:stops?|rows?|people|flash|%|film|x\b|:)", text[fact.end :], re.I))):
        unit = next((i.unit for i in lengths if i.start >= fact.end), lengths[-1].unit) if joined else min(lengths, key=lambda i: abs(i.start - fact.start)).unit
        of = _whose(before)
        return "distance", "" if joined else of, fact.value * LENGTH[unit], unit, ""
    return None
