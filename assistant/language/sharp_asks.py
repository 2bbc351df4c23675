"""What is asked of a lens in words: limits, depth, hyperfocal, where to focus, the angle, the draw.

Each kind of question is one row of ways to say it; depth that is only the reason for an f-number
("f/11 for the depth") is no question.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Ask, Fact

_N = r"(?:near(?:est|er)?|closest?|closer)"
_F = r"(?:far(?:thest|ther)?|furthest|most distant|rear|back)"
_SHARP = r"(?:sharp|focus|crisp|limit|depth of field|dof)"
_ZONE = r"it|everything|(?:the )?(?:things|objects|picture|image)|(?:the )?zone of (?:sharpness|focus)|(?:the )?(?:sharp\w*|focus|zone|depth)(?: (?:zone|part|bit|area|stretch|field))?"
_WHO = r"(?:i|he|she|they|we|it|one|people|someone|somebody|anyone|anybody|(?:the|my|a|our|his|her) (?:[a-z]+ )?[a-z]+)"
_GO = r"(?:can|may|could|might|do|does|will|should) "
_BLURS = r"\b(?:before|till|until|without|and not|when)\b[^?.]{0,24}\b(?:soft|blurr?\w*|fuzzy|mushy|unsharp|out of focus|out of the (?:zone|depth|focus))\b"
_RANGE = (
    r"from where to where", r"\bsharp from(?: and| to|,)* where\b", r"\bwhere(?:'s| is|s)? (?:it|this|that|the \w+|everything) (?:in focus|sharp) from\b", r"\bnear(?:est)?(?: limit)?(?:[,/&+-]| )+ ?far(?:thest)?(?: limit)?\b", rf"\b{_N}\b[^.?]{{0,25}}\b(?:and|to|&|through)\s+(?:the\s+)?{_F}\b(?=[^?]*)", r"how (?:close|near) and how far",
    r"limits of (?:sharp|focus|depth|the depth|acceptable)", r"(?:depth[- ]of[- ]field|dof|sharpness|focus) limits", r"between (?:what|which) (?:distances|limits|points)",
    r"(?:what|which) (?:distances|range|zone|stretch)[^.?]{0,40}(?:sharp|focus)", r"\b(?:range|zone) of (?:sharp|focus|acceptable)",
    r"\bwhat(?:'s|s| is| will be|'ll be| comes out| stays| would be|’s)? (?:all )?(?:acceptably )?(?:sharp|in focus)\b", rf"where (?:does|will|do) (?:{_ZONE})[^.?]{{0,20}}\b(?:start|begin)", rf"\b(?:{_ZONE}) (?:starts?|begins?) where\b",
    r"from how (?:far|close|near|many [a-z]+)(?: [a-z]+)? to how (?:far|many)", r"\b(?:both|two) limits\b", r"from what (?:distance )?to what",
    rf"\bwhere (?:{_ZONE}) (?:starts?|begins?)\b", r"\b(?:begin\w*|start) and (?:the )?(?:end|finish) of (?:the )?(?:sharp\w*|focus|depth|zone)",
)
_BEGINS = rf"\b(?:how (?:far|close|near|many \w+)|(?:at|from) (?:what|which) (?:distance|point|place))(?: away| off| out)?(?: (?:from|in front of|before) (?:the |my )?\w+)? (?:{_GO})(?:{_ZONE})[^?.]{{0,16}}\b(?:start|begin|set in|(?:turn|become|get|come) (?:sharp|crisp|in(?:to)? focus))\b(?![^?]*\b(?:end|stop|finish)s?\b)"
"""How far off what is sharp begins: the near limit and nothing else, whatever "how far" asks elsewhere."""
_HALF_HYPER = r"(?<!from )\bhalf (?:of )?(?:the|its|my|that) hyper[- ]?focal\b"
_NEAR = (_BEGINS, _HALF_HYPER, rf"where (?:does|will|do) (?:{_ZONE}) (?:first )?(?:get|become|turn|go|come) (?:sharp|crisp|in(?:to)? focus)", rf"\bhow (?:close|near)(?: in| up)? {_GO}{_WHO}\b[^?.]{{0,30}}{_BLURS}", r"\b(?:sharp|in focus|crisp) from where\b(?! to)", r"(?<!from where to )\bfrom where(?! to)\b[^?]{0,30}\b(?:sharp|crisp|in focus)", r"from how (?:many (?:metres|meters|feet|foot)|far|close|near)\b[^?]{0,40}\b(?:sharp|crisp|in focus)", r"\bfirst (?:thing|point|bit|row|person|metre|foot)\b[^?.]{0,40}\b(?:sharp|in focus)", r"from (?:what|which) (?:distance|point|place)\b[^?]{0,40}\b(?:sharp|crisp|in focus)", rf"\b{_N}\b(?:,? (?!and\b|both\b)[a-z']+){{0,7}} (?:in )?{_SHARP}", rf"\b(?:sharp|focus)[^.?]{{0,20}}\b{_N}\b", r"how (?:close|near)\b[^?]{0,60}\b(?:sharp|focus|crisp)", r"\bnear(?:est)? (?:point|edge|end)\b")
_FAR = (r"\b(?:out|up|back|away) to (?:what|which) (?:distance|point|place)\b[^?]{0,40}\b(?:sharp|crisp|in focus)", r"\bto (?:what|which) distance (?:is|are|does|do|will|stays?)\b[^?]{0,40}\b(?:sharp|crisp|in focus)", rf"\bhow far(?: back| away| off| out)? {_GO}{_WHO}\b[^?.]{{0,30}}{_BLURS}", rf"where (?:does|will|do) (?:{_ZONE})[^.?]{{0,16}}\b(?:end|stop|finish|run out|leave off|(?:go|get|fall) (?:soft|off|out of focus|blurry))\b", rf"\b(?:{_ZONE}) (?:stops?|ends?|runs out) where\b", r"\blast (?:thing|point|bit|row|person|metre|foot)\b[^?.]{0,40}\b(?:sharp|in focus)", r"where does (?:it|the \w+|everything) (?:stop|cease|leave off)(?: being)?\b[^.?]{0,20}\b(?:sharp|focus|behind)", rf"\b{_F}\b(?:,? (?!and\b|both\b)[a-z']+){{0,7}} (?:in )?{_SHARP}", r"how far\b[^?]{0,60}\b(?:sharp|in focus|crisp)", r"\b(?:sharp|focus)[^.?]{0,20}\b(?:farthest|furthest)\b", r"\bfar(?:thest)? (?:point|edge|end)\b")
_DEPTH = (r"depth[- ]of[- ]f(?:ie|ei)ld", r"\bdof\b", r"\bd\.o\.f\b", r"depth of focus", r"how much\b[^?]{0,30}\b(?:sharp|in focus)", r"(?<!from )how many (?:(?:centi|milli)?(?:metres|meters)|cm|mm|feet|inches)\b[^?]{0,30}\b(?:sharp|in focus)", r"how (?:thin|shallow|narrow)\b[^?]{0,24}\b(?:sharp|focus|zone|field)", r"how deep is (?:it|that|the sharpness) (?:with an? \d|at (?:1:\d|f\W?\d|life|half life|twice life|a (?:quarter|third|half)))", r"how deep\b[^?]{0,40}\b(?:sharp|focus|zone|field)", r"how thick")
_FAR_AWAY = r"(?:infinity|horizon|hills|mountains?|skyline|stars|far distance)"
_FOR_INFINITY = rf"(?:how (?:close|near)|closest|nearest|(?:smallest|shortest|least) distance)\b[^?.]{{0,24}}\bfocus\b[^?]*\b{_FAR_AWAY}\b[^?]{{0,30}}\b(?:sharp|in focus|crisp)"
_HYPER = (_FOR_INFINITY, r"focus\b[^.?]{0,60}\b(?:everything|all|it)\b[^.?]{0,40}\b(?:infinity|horizon|mountains?|hills|skyline|stars|far distance|as far as)\b", r"hyper[- ]?focal", r"(?:where|what|how far|how close|closest|nearest)[^.?]{0,40}\bfocus\b[^.?]{0,40}\b(?:infinity|∞|horizon)", r"(?:infinity|∞|horizon)[^.]{0,40}(?:where|how close|how near|what distance|closest|nearest)[^.?]{0,40}\bfocus",
          r"(?:closest|nearest) focus\b[^.?]{0,40}infinity", rf"\b{_FAR_AWAY}\b[^?]{{0,60}}\bhow (?:many (?:feet|metres|meters)|far)(?: away| out| off)? (?:do|should|must|shall) (?:i|we) (?:have to |need to )?focus\b")
_FOCUSED_AT = r"\bwhere (?:was|were|is|had|did) [^.?]{0,24}\bfocus|\bwhat (?:was|is|were|had|did) [^.?]{0,20}(?<!limit of )(?<!edge of )(?<!end of )\bfocus(?:ed|sed)?\b(?: (?:at|on|to))|\b(?:on|at) (?:what|which distance) (?:was|is|had|did) [^.?]{0,20}\bfocus"
_WHERE = (r"where (?:do|should|must|to|shall|would|can)[^.?]{0,20}\bfocus", _FOCUSED_AT, r"(?:what|which) (?:distance|point|spot)[^.?]{0,40}\bfocus", r"\bfocus (?:at|on|to) what", r"how far (?:away |out )?(?:do|should|must) i focus", r"(?:what|which) focus\b", r"what do i focus (?:at|on)",
          r"(?:what|which|best) (?:focus|focusing|focussing) (?:distance|setting|point)", r"(?:what|which) (?:distance|mark) (?:do|should|must|shall|to) (?:i )?set\b[^?.]{0,20}\b(?:lens|ring|scale|barrel)\b", r"set the (?:lens|ring|scale|focus\w*)\b[^?.]{0,20}\bto (?:what|which) distance", r"set the focus\?", r"\bfocus(?:ing)? distance\W*\?", r"\bfocus where\b")
_ANGLE = (r"angle of view", r"field of view", r"(?:beam|coverage|horizontal|vertical|diagonal) angle", r"how many degrees", r"what angle", r"\bangle of (?:an?|the|my) \d+\b", r"\b(?:takes?|sees?|covers?)(?: in)?\b[^?.]{0,40}\bdegrees\b", r"\bhow wide\b[^?]*\b(?:degrees?|angle|view|field|spread|sees?|looks?|takes? in)\b", r"degrees (?:of coverage|must|does|do)", r"\b(?:zoom\w*|head|beam|lens)\b[^?]*\b(?:corners|edges)\b[^?.]{0,24}\b(?:lit|covered|dark|black)\b", r"\b(?:zoom\w*|head|beam|lens)\b[^?]*\b(?:light|reach|fill)\w* (?:up |into )?(?:the |all the )?(?:corners|edges)\b",
          r"\bhow (?:wide|big|broad|large)(?: across)? is the (?:circle|patch|pool|spot|area|beam)\b", r"\bhow (?:wide|big|broad)(?: an?)? (?:area|patch|circle|spot|stretch|strip|band|piece|part)\b[^?]*\b(?:beam|degrees?|angle|cover\w*|(?:does|will|do|can) (?:it|that|the (?:flash|light|head|dish)))\b")
_DRAW = (r"\bhow far (?:away |behind )?(?:is|was|does|must|should|will) (?:the |my )?(?:film|plate|ground ?glass)(?: plane| be| stand| sit| lie)*[^?]{0,12}\b(?:from|behind) (?:the |my )?(?:lens|glass)\b", r"\bhow far (?:away )?(?:is|was|does|must|should) (?:the |a |my |an )?(?:[\w.]+ ?(?:mm|cm|inch)? )?(?:lens|front standard)\b[^?]{0,12}\bfrom the (?:film|plate|ground ?glass)\b", r"\bhow far (?:out|forward) (?:is|was|does|must|should|has|will|do i (?:rack|pull|move)) (?:the |a |my |an )?(?:[\w.]+ ?(?:mm|cm|inch)? )?(?:lens|bellows|standard)\b", r"\bhow (?:many (?:milli|centi)?(?:metres|meters|mm|cm|inches)|far|much)\b[^?.]{0,24}\blens\b[^?.]{0,20}\b(?:move|go|come|travel|stand|shift|be (?:moved|pulled|racked|shifted|brought))\b[^?.]{0,16}\b(?:out|forwards?|further|from (?:the )?(?:film|infinity)|away|off)\b", r"\bhow (?:much|many \w+) (?:further|farther) (?:away |out )?(?:from (?:the )?(?:film|plate|ground ?glass)|out)\b[^?.]{0,30}\blens\b", r"how many (?:milli|centi)?(?:metres|meters|mm|cm|inches)(?: of)? (?:extra )?(?:extension|draw|tubes?)\b", r"how (?:much|long|far)[^.?]{0,20}\b(?:extension|tubes?|bellows|draw|rack)\b(?! (?:factor|increase|exposure|correction))", r"(?:what|which)[^.?]{0,12}\b(?:extension|bellows draw|draw|tube)\b(?! factor)", r"(?:[,.;:]|\band|\bwhat) *(?:the )?(?:bellows(?: draw)?|draw|extension|lens[ -]to[ -]film)\W*\?\W*$", r"\b(?:what|which|how (?:long|large|great)(?: a| is the| must the)?) lens[- ]to[- ](?:film|plate)\b", r"extension (?:needed|required|do i need)", r"how far[^.?]{0,30}\b(?:rack|extend|pull out)")
_PATTERNS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("range", _RANGE), ("near_limit", _NEAR), ("far_limit", _FAR), ("depth_of_field", _DEPTH), ("hyperfocal", _HYPER),
    ("focus_distance", _WHERE), ("coverage", _ANGLE), ("extension", _DRAW),
)
_COMPILED = tuple((name, Pattern("|".join(f"(?:{p})" for p in patterns))) for name, patterns in _PATTERNS)
_HYPERFOCAL_IS = Pattern(r"\bhyper[- ]?focal(?: distance| point)?\b[^.?!,;]{0,24}\b(?:is|of|=)\s*(?:about )?(?:\d|(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty)\b)")
_GIVEN_BEFORE = Pattern(r"(?:\b(?:at|on|to|is|by|with)(?: (?:its|the|my|that))?|at the)\s*$")


_FOR_MORE = Pattern(r"\b(?:for|to get|to have|to gain|to win) (?:a bit |some |a little |a )?(?:more|extra|greater|deeper|less|better|shallower|smaller|larger)\s*$|\b(?:to (?:gain|win|increase|deepen|reduce|cut|extend|lessen)|for want of) (?:the |some |more |my )?$", re.I)
_FOR_THE_DEPTH = Pattern(r"\b(?:for|for the sake of|for reasons of|because of|on account of|owing to|thanks to|(?:go|goes|going|went) by|to (?:get|have|keep|hold|give))(?: (?:all|the|that|this|my|his|her|their|our|some|enough|sufficient|proper|decent|good|full|any))*\s*$", re.I)
_DEPTH_DEMANDS = Pattern(r"[^.?!,;]{0,24}?\b(?:says?|needs?|wants?|demands?|requires?|asks?|calls?|means?|dictates?|forces?|tells?|takes?|puts?|has to be|must be)\b[^.?!]{0,30}?", re.I)
_MARK = Pattern(r"\bf ?[-/:]? ?(?:\d|(?:one|two|three|four|five|six|eight|nine|ten|eleven|thirteen|sixteen|eighteen|twenty|thirty|forty)\b)", re.I)
_ASKED_OF = Pattern(r"\b(?:what|how|which|whats|figures?|answer)\b[^.?!,;]{0,24}$", re.I)


_REFUSED_BEFORE = Pattern(r"(?:\bnot|n't|\bnever|\bdont|\bdidnt)(?: (?:want|need|care|after|asking|ask|worried|interested|bothered|mean|looking))(?: (?:about|for|in|to know))*(?: (?:the|any|my|a|your))?\s*$|\b(?:never mind|forget|ignore|leave aside|rather than|instead of|not)(?: about)?(?: (?:the|any|my|a))?\s*$", re.I)
_REFUSED_AFTER = Pattern(r"^(?: (?:distance|limit|point|itself))?(?:'s| is| was)?(?: not|n't|nt| no) (?:what i|the (?:issue|question|point|matter|problem|concern)|an? (?:issue|question|concern|problem)|concern|matter|important|needed|wanted|asked)\b|^ (?:doesn't|does not|doesnt|don't) (?:matter|concern|bother|count|interest)\b", re.I)


def is_refused(text: str, start: int, end: int) -> bool:
    """"I don't care about depth of field", "the hyperfocal isn't what I want": named and not asked."""
    return _REFUSED_BEFORE.search(text[max(0, start - 50) : start]) is not None or _REFUSED_AFTER.match(text[end : end + 40]) is not None


def is_reason(text: str, start: int, end: int) -> bool:
    """Whether the depth said there is only why an f-number has to be: "it has to be f/11 for the depth", "depth needs f/16", or is not cared for."""
    before, after = text[max(0, start - 60) : start], text[end : end + 70]
    if is_refused(text, start, end):
        return True
    if _FOR_MORE.search(before):
        return True
    if _ASKED_OF.search(before):
        return False
    if _FOR_THE_DEPTH.search(before):
        return bool(_MARK.search(before) or _MARK.search(after))
    demand = _DEPTH_DEMANDS.match(after)
    return demand is not None and bool(_MARK.match(after[demand.end() :].lstrip()) or _MARK.search(after[demand.end() : demand.end() + 34]))


_FOCUSED_ELSEWHERE = Pattern(r"\b(?:if|when|once) (?:i|we) focus(?:ed)? (?:it )?(?:at|on|to) (?:about )?\d|\binstead\b")
_BOTH_ENDS = Pattern(rf"\b{_N}\b[^?]*\b{_F}\b|\b{_F}\b[^?]*\b{_N}\b|\b(?:starts?|begins?)\b[^?]*\b(?:stops?|ends?|finish(?:es)?)\b|\bto how\b")


_WAS_FOCUSED = Pattern(_FOCUSED_AT)
_STOPPED_DOWN = Pattern(r"\bhow (?:far|much) (?:(?:do|must|should|would|need|have) i |i (?:have to|need to|must) )(?:have to |need to )?(?:stop|close) (?:it |the lens )?down\b|\bhow small a (?:stop|aperture|opening)\b|\bhow (?:far|wide|much) (?:may|can|could|might|dare) (?:i|we) open\b")
"""The f-number that holds all of it, said as how far the lens is closed."""


def asked(lower: str, facts: Sequence[Fact]) -> list[Ask]:
    """What is asked of sharpness, angle and draw, in the order said."""
    if (stopped := _STOPPED_DOWN.search(lower)) is not None and not any(f.quantity in ("aperture", "guide_number") for f in facts):
        return [Ask("aperture", "", "", stopped.start())]
    places: dict[str, int] = {}
    for name, pattern in _COMPILED:
        for match in pattern.finditer(lower):
            if name not in places and not _is_given(match, facts) and not is_refused(lower, match.start(), match.end()) and not (name == "depth_of_field" and is_reason(lower, match.start(), match.end())):
                places[name] = match.start()
    if {"range", "near_limit", "far_limit"} & set(places) and len({f.value for f in facts if f.quantity in ("distance", "camera_distance", "sharp_limit")}) > 1 and _WHAT_HOLDS.search(lower):
        places = {name: at for name, at in places.items() if name not in ("range", "near_limit", "far_limit")}
    if {"near_limit", "far_limit"} <= set(places) and _HOW_FAR_TO_THE_NEAREST.search(lower):
        del places["far_limit"]
    if "hyperfocal" in places and _CLOSEST_FOCUS.search(lower):
        return [Ask("hyperfocal", "", "", places["hyperfocal"])]
    if "far_limit" not in places and _ONLY_NEAR.search(lower):
        return [Ask("near_limit", "", "", places.get("near_limit", 0))]
    if "focus_distance" in places and sum(f.quantity == "sharp_limit" for f in facts) == 2 and _WAS_FOCUSED.search(lower):
        return [Ask("focus_distance", "", "", places["focus_distance"])]  # both limits are told
    if "range" in places and len({"near_limit", "far_limit"} & set(places)) == 1 and not _BOTH_ENDS.search(lower):
        del places["range"]  # "far limit of what's sharp?"
    if "range" in places:
        at = places.pop("range")
        places["near_limit"], places["far_limit"] = at, at + 1
    if "hyperfocal" in places and (set(places) - {"hyperfocal", "focus_distance"}) and (_HYPERFOCAL_IS.search(lower) or _GIVEN_BEFORE.search(lower[: places["hyperfocal"]])):
        del places["hyperfocal"]
    if "hyperfocal" in places and "hyper" not in lower and sum(f.quantity == "sharp_limit" for f in facts) == 2:
        places["focus_distance"] = places.pop("hyperfocal")  # "sharp from 3 m to infinity": both limits are told
    if "hyperfocal" in places:
        places.pop("focus_distance", None)
        if "infinity" in lower and "near" not in lower.replace("nearest", "").replace("near to infinity", ""):
            places.pop("near_limit", None)
            places.pop("far_limit", None)
    if (both := _BOTH_SIDES.search(lower)) is not None:
        first, second = ("in front", "behind") if (both["first"] or both["early"] or both["side"]) != "behind" else ("behind", "in front")
        return [Ask("depth_of_field", first, "", both.start()), Ask("depth_of_field", second, "", both.start() + 1)]
    if (side := _BEHIND_WHOM.search(lower)) is not None and not {"near_limit", "far_limit"} <= set(places):
        return [Ask("depth_of_field", "in front" if side["side"] == "in front" else "behind", "", side.start())]
    if "hyperfocal" in places and {"near_limit", "far_limit"} & set(places) and _FOCUSED_ELSEWHERE.search(lower) and not _ASKED_OF.search(lower[: places["hyperfocal"]]):
        del places["hyperfocal"]  # what was focused at before
    if "depth_of_field" in places and patterns.search(r"limits", lower):
        if {"near_limit", "far_limit"} <= set(places) and abs(places["near_limit"] - places["depth_of_field"]) < 25:
            del places["depth_of_field"]
    return sorted((Ask(q, _of(q, lower), "", at) for q, at in places.items()), key=lambda a: a.start)


_WHAT_HOLDS = Pattern(r"\b(?:what|which) (?:aperture|f[- ]?(?:stop|number)|stop|mark)\b(?!s)(?! and)[^?]{0,30}\b(?:hold|keep|get|cover|bring|give|take|have|put)\w*\b[^?]{0,40}\b(?:sharp|in focus|crisp)\b(?![^?]*\bwhere\b)")
"""The f-number that holds two places told, "the near one at 2 m and the far one at 4 m": neither limit is asked."""
_HOW_FAR_TO_THE_NEAREST = Pattern(r"\bhow far\b[^?.!]{0,30}\bis the (?:near\w*|closest)\b(?![^?.!]*\b(?:far(?:thest|ther)?|furthest)\b)")
_ONLY_NEAR = Pattern(f"{_BEGINS}|{_HALF_HYPER}")
_CLOSEST_FOCUS = Pattern(_FOR_INFINITY)


def _is_given(match: re.Match[str], facts: Sequence[Fact]) -> bool:
    """"near limit 2 m": said with its value, so not asked."""
    return any(f.quantity == "sharp_limit" and 0 <= f.start - match.end() < (24 if "limit" in match.group() else 12) and f.cue for f in facts)


_SIDE = Pattern(r"(?:sharp|field|focus|how (?:deep|much|thick)\b[^?]{0,16}\bzone)[^?]{0,20}\b(?P<after>behind|in front)\b|\b(?P<before>behind|in front)(?: of)?(?: (?!the (?:lens|camera))(?:the )?\w+)?,?(?: (?:how (?:much|deep|far|many \w+)|what|is|stays|will be|would be|of|will|does|the|it|depth))* (?:is |are |be |stay )?(?:sharp|field|focus)")


_BEHIND_WHOM = Pattern(r"how (?:far|much|many \w+) (?P<side>behind|in front|beyond)(?: of)? (?:him|her|them|it|me|(?:the|an?|my|his|our) (?!lens|camera|film)\w+)\b[^?]{0,40}\b(?:sharp|focus|crisp)")
_BOTH_SIDES = Pattern(r"how (?:far|much|many \w+) (?P<side>in front|behind)\b(?: of)?(?: (?:him|her|them|it|me|that|(?:the|an?|my|his|our) (?!lens|camera|film)\w+))?(?: \w+){0,3}? (?:sharp|focus|crisp)\w*[^?]{0,12}\band\b[^?]{0,24}\b(?:in front|behind)\b(?! of (?:the |my )?(?:lens|camera))|how (?:far|much|many \w+)\b(?: \w+){0,5}? (?:sharp|focus|crisp)\w*(?: \w+){0,2}? (?P<early>in front|behind|before)\b[^?]{0,40}\band\b[^?]{0,30}\b(?:in front|behind|before)\b|how (?:far|much|many \w+) (?P<first>in front|behind)(?: of)?(?: (?:him|her|them|it|me|(?:the|an?|my|his|our) \w+))?(?: and| and how (?:far|much))(?: in front of| behind)(?: (?:him|her|them|it|me|(?:the|an?|my|his|our) (?!lens|camera|film)\w+))?\b[^?]{0,40}\b(?:sharp|focus|crisp)")
"""So much of the depth on one side of the focus, and no distance from the lens."""


def _of(quantity: str, lower: str) -> str:
    """Which side of the focus is meant, whether it is said before the sharpness or after it."""
    found = _SIDE.search(lower) if quantity == "depth_of_field" else None
    return (found["after"] or found["before"]) if found is not None else ""
