"""Rows and backdrops: what a length reaches to when people stand one behind another.

"front row at 8 feet, back row at 11" · "the wall is 5 feet behind her" · "rows 4 feet apart"
A length between two things on the same line is a gap; a length from the light is a distance.
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_ONE = r"(?: (?!(?:to|till|through|and|from|is|are|was|it|light|flash|lamp|strobe|head|key|gun|softbox|source|element|standard|cap|cover|limit|point|distance|focus|sharp|curtain|lens|frame|shot|pop|time)s?\b)[a-z]+)?"
"""Whoever sits there: "the front people", "the last bridesmaid"; no end of a lens, no light and no end of what is sharp."""
_FIRST_ONE = rf"(?:the )?(?:front|first|near(?:est)?|closest){_ONE}"
_LAST_ONE = rf"(?:the |its )?(?:back|last|rear(?:most)?|far|furthest|farthest|hindmost){_ONE}"
END_TO_END = rf"\b(?:(?:from )?{_FIRST_ONE} (?:to|till|through to) {_LAST_ONE}|between {_FIRST_ONE} and {_LAST_ONE})\b"
"""From one end of a group to the other: "first to last", "the front row and the back row"."""
FRONT = r"\b(?:front|nearest|nearer|closest|closer (?:row|one|person)|first (?:row|rank|tier)|near (?:row|end|one|side|person)|bow)\b"
BACK = r"\b(?:back|rear|most distant|remotest|furthest|farthest|last (?:row|rank|tier)|(?:third|fourth|fifth) row|far (?:row|end|one|side|person)|stern|hindmost)\b(?! (?:a|the light|the flash|it|up|off|to|walls?|drop|ground|curtain)\b)"
MIDDLE = r"\b(?:middle|second row|cent(?:re|er) row)\b"
WALL = r"\b(?:walls?|backdrops?|backgrounds?|bg|backcloth|seamless|paper(?! neg)|cyc|curtain|canvas)\b"
PEOPLE = r"(?:her|him|them|me|you|it|us|his|their|the (?!camera|light|flash|lens|tripod)\w+|my (?!camera|light|flash|lens|tripod)\w+|a (?:sitter|subject|model))"
_SOMEBODY = r"(?:sitter|subject|model|cox|rower|speaker|client|dancer|kid|lady|guy|person|people|crew|team|family|players?|bride|groom|couple|group|singer|child|girl|boy|man|woman|her|him|them)\b"
LAMP = r"\b(?:light|lights|flash|strobe|lamp|head|key|gun|softbox|source|main)\b"

_THE_LENS = Pattern(r"^\W*(?:in front of|before|away from|from) (?:the |my |an? )?(?:\d+ ?mm|lens)\b", re.I)
_BEHIND = Pattern(rf"^\W*(?:directly |straight |right |further |farther )?(?:behind|beyond|in front of(?! (?:the |my |that |a )?(?:\w+ )?{LAMP}))\b(?:\W+{PEOPLE})?", re.I)
SO_LONG = r"(?:long )?(?:line|row|queue|bench|table|counter|rank|file|pew|spread)(?= (?:of|with|is|and)\b|[,.;?!])|along\b|down the (?:line|row|bench|table|length)\b"
"""After the length of a row of people or things, or of the way along it: "a 3 m line of dancers", "1.5 m along"."""
_APART = Pattern(rf"^\W*(?:{SO_LONG}|apart|(?:per|for each|for every) (?:row|rank|tier|line)|row to row|deep|spacing|intervals?\b|long\b|(?:of |in )?depth\b|(?:from )?end to end\b|from (?:one )?end to (?:the )?other\b|front to back|from front to back|of separation|between (?:them|the|rows|each|her|him|sitter|subject)|{END_TO_END})", re.I)
_FURTHER = Pattern(r"^[^\w,;]*(?:on|beyond|past|back|behind)(?: (?:that|it|them|from there))?\s*(?:$|[.,;?])|^\W*(?:further|farther)\b|^[^\w,;]*(?:back|behind)\b(?! (?:a|the)\b)\W*(?:$|from)", re.I)
_FROM_WALL = Pattern(rf"^\W*(?:from|off|to|away from|in front of)\W+(?:a |the |my |her |his |that )?(?:(?!{_SOMEBODY})\w+ )?{WALL}", re.I)
_FROM_LAMP = Pattern(rf"^\W*(?:away )?(?:from|off|to|in front of)\W+(?:a |the |my |that )?(?:\w+ )?(?:{LAMP}|it\b)", re.I)
_ROW_TO_ROW = rf"{END_TO_END}(?:,? (?:the|my|our|this) \w+)?(?:'s| is| there is| there's| there are| we have| it is| it's| are| measures| comes to|:|,| =)?(?: about| some| roughly)?\W*$"
_GAP_NAMED = Pattern(rf"{_ROW_TO_ROW}|\b(?:each (?:row|rank|tier|line|one)(?: is| stands| sits| then)?|depth|gap|separation|spacing|spaced|apart by|deep by|another|between (?:them|the rows|rows|her and|him and|the sitter and|the subject and|subject and))\b(?:\W+\w+){{0,5}}\W*$", re.I)
_MOVING = Pattern(r"\b(?:move|moved|moving|pull|pulled|shift|slide|drag|walk|step|stepped|push|bring)\b", re.I)
_NOT_THE_KEY = Pattern(r"\b(?:rim|hair|kicker|(?:background|backdrop|bg) (?:light|head|flash|lamp|strobe|gun|unit)|camera|tripod|i'm|i am)\b", re.I)
_ROWS: tuple[tuple[str, Pattern], ...] = tuple(
    (of, Pattern(pattern, re.I)) for of, pattern in (("front", FRONT), ("back", BACK), ("middle", MIDDLE), ("backdrop", WALL)))


def row_length(before: str, after: str) -> tuple[str, str] | None:
    """("gap" or "distance", whose) of a length by the words before and after it; None when it is no row's.

    `before` reaches back to the length before or the start of the sentence, `after` on to the next.

    >>> row_length("the wall is ", " behind her")
    ('gap', 'backdrop')
    >>> row_length("front row at ", "")
    ('distance', 'front')
    """
    if _NOT_THE_KEY.search(before):
        return None
    if _THE_LENS.match(after) or _LAMP_TO.search(before) or _FROM_HERE.search(before) and _TO_THERE.match(after):
        return None
    if _BEHIND_A_ROW.match(after) and not patterns.search(WALL, before[-30:], re.I):
        return ("gap", "back")  # "a row 1 m behind the first", "the others stand 2 m behind it"
    if _FROM_A_ROW.match(after):  # "pull the light back so it's 16 feet from the nearest"
        of = _first_row(_clause(after))
        return ("distance", of) if of else None
    if _TO_A_ROW.match(after) and not _FROM_THE_FIRST.search(before):
        of = _first_row(_clause(after))  # "the flash goes back so it's 10 feet to the front"
        if of:
            return ("distance", of)
    if _is_gap(before, after):
        return "gap", "backdrop" if patterns.search(WALL, before + after, re.I) else "back"
    if patterns.search(r"bounc|ceiling", before + after, re.I):
        return None
    if _MOVED_BACK.search(before):
        return None
    found = _last_row(before) or _first_row(_clause(after)) or _row_at_the_end(before, after)
    return ("distance", found) if found else None


_MOVED_BACK = Pattern(r"\b(?:mov|pull|shift|step|tak|took|bring|brought|walk|push|carr|drag|put|draw|drew|go|went|com|came)\w* (?:it |them |(?:the |my )\w+ )?back (?:by |another |a further |about |from |to |only |just )*$", re.I)


_FROM_HERE = Pattern(r"\bfrom (?:about )?$", re.I)
_TO_THERE = Pattern(r"\W*(?:away |off )?(?:(?:out|back|in) )?to (?:about )?(?:$|\d)", re.I)
"""Round where a thing came from: "take the light back from 5 ft to 10 ft" speaks of no row at the back."""
_BEHIND_A_ROW = Pattern(r"^\W*(?:further |farther )?(?:behind|back of|in back of) (?:it|that|that one|this one|the (?:first|front|near\w*|other)(?: (?:row|rank|tier|line|one|ones))?)(?=\W*(?:$|[.,;?]|\b(?:is|are|may|must|should|to|and|will|can|has|have|in|at|so|gets?|stays?)\b))", re.I)
_FROM_A_ROW = Pattern(r"^\W*(?:away )?from (?:the |my )?(?:near\w*|front|first|closest|back|rear|far\w*|furthest|last)\b(?! wall)(?!(?: \w+)? to\b)", re.I)


_TO_A_ROW = Pattern(r"^\W*(?:away )?to (?:the |my )(?:near\w*|front|first|closest|back|rear|far\w*|furthest|last)(?: (?:row|rank|tier|line|one|ones|person|people|man|end|edge))?\b(?! (?:wall|of the))", re.I)
_FROM_THE_FIRST = Pattern(r"\bfrom (?:the |my )?(?:near\w*|front|first|closest)\b", re.I)


_WALL_TO = Pattern(rf"{WALL}[^.?!]*\b(?:to|so (?:it's|it is|that's)) (?:about |just |only )?$", re.I)


_A_WALL = Pattern(rf"{WALL}(?:'s| is| are| hangs| stands| sits| about| only| just| another)*\s*$", re.I)
_FROM_SOMEBODY = Pattern(rf"^\s*(?:away |back )?(?:from|off) (?:the |my )?{_SOMEBODY}", re.I)
_LAMP_TO = Pattern(rf"(?:{LAMP}|\b(?:umbrella|brolly|octa|box|dish)\b) (?:on )?to (?:the |her |his |my )?(?:\w+ )?(?:subject|sitter|model|face|nose|chin|eyes?|her|him|them|child|couple)(?: is| are|'s| it's| at| of| about| roughly|,|:)*\s*$", re.I)
"""From the light to whom it lights: never a gap between two rows."""


_RUNS = Pattern(r"\b(?:line|row|queue|bench|table|counter|rank|column|file|shelf|boats?|spread|group|team|choir|crew)\b[^.?!;,]{0,24}?\b(?:runs?|stretch(?:es)?|extends?|goes|reach(?:es)?|trails?|running|stretching|extending|going)(?: back| away| out| for| about| some)*\s*$", re.I)
_FROM_LIGHT = Pattern(rf"^\W*(?:long )?(?:straight )?(?:away|back|off|out)(?: from (?:the |my )?(?:\w+ )?(?:{LAMP}|it\b))?", re.I)
"""Of a row of things that runs away from the light: how deep it is, and not how far it stands."""


_LONG_AND_RUNS = Pattern(r"^\W*(?:long|deep)\b[^.?!;,]{0,16}?\b(?:runs?|stretch(?:es|ing)?|extend(?:s|ing)?|going|goes|leading|leads|trail(?:s|ing)?|running)(?: straight)? (?:away|back|off|out)\b", re.I)


def _is_gap(before: str, after: str) -> bool:
    if _RUNS.search(before) and _FROM_LIGHT.match(after) or _LONG_AND_RUNS.match(after):
        return True
    if _WALL_TO.search(before) and _BEHIND.search(after):
        return True  # "pull the backdrop to 1 m behind"
    if _A_WALL.search(before) and _FROM_SOMEBODY.match(after):
        return True  # "the wall's 5 ft from the sitter"
    if _MOVING.search(before) or _FROM_A_ROW.match(after) or _FROM_LAMP.search(after):
        return False
    if _APART.search(after) or _GAP_NAMED.search(before):
        return True
    row_before = bool(patterns.search(f"{WALL}|{BACK}", before, re.I))
    lamp_before = _last(LAMP, before) > _last(rf"{WALL}|{BACK}|\b(?:she|he|they|subject|sitter|model|her|him|group)\b", before)
    if _BEHIND.search(after) and not lamp_before:
        return True
    if _FURTHER.search(after) and (row_before or patterns.search(MIDDLE, before, re.I)):
        return True
    return bool(_FROM_WALL.search(after)) and not lamp_before and not row_before


def _last(pattern: str, text: str) -> int:
    return max((m.start() for m in patterns.finditer(pattern, text, re.I)), default=-1)


def _last_row(text: str) -> str:
    places = [(max((m.start() for m in pattern.finditer(text)), default=-1), of) for of, pattern in _ROWS]
    place, of = max(places)
    subject = _last(rf"\b(?:sitter|subject|model|she|he|her|him|who)\b|{LAMP}", text)
    return of if place >= 0 and (of != "backdrop" or place > subject) else ""


_AT_THE_END = Pattern(r"^\W*(?:(?:that'?s|that is|that being|i mean|meaning)\b\W*)?the (?:(?P<front>front|near|nearest|first|closest)|(?P<back>back|rear|far|furthest|farthest|last)|(?P<middle>middle))(?: (?:row|rank|tier|line|one|ones|lot|pair|people|kids|pew))?(?:,? (?:i mean|that is|then|now|instead))?[.?!]*$", re.I)
_OPENING = Pattern(r"^\W*(?:(?:oh|ah|sorry|well|ok|okay|and|so|now|no|it'?s|that'?s|make (?:it|that)|make|say|call it|about|roughly|around|some|just|at|what about|how about)\b\W*)*$", re.I)


def _row_at_the_end(before: str, after: str) -> str:
    """Whose a length is that stands alone, with the row named after it: "thirteen feet, the back one"."""
    said = _AT_THE_END.match(after) if _OPENING.match(before) else None
    return (said.lastgroup or "") if said is not None else ""


_NEXT_CLAUSE = Pattern(rf"\b{_SOMEBODY}\W*$", re.I)
"""Before a wall with no word between: "1.5 m off sitter wall 3 m behind", where the wall begins what is said next."""


def _first_row(text: str) -> str:
    if patterns.match(r"\W*(?:and|but|,)\b", text):
        return ""
    places = [(m.start(), of) for of, pattern in _ROWS for m in [pattern.search(text)] if m and not (of == "backdrop" and _NEXT_CLAUSE.search(text[: m.start()]))]
    return min(places)[1] if places and patterns.match(r"\W*(?:away )?(?:from|to|for|off|is|at)\b|\W*[(]", text) else ""


def _clause(text: str) -> str:
    return patterns.split(r"[,;.?!]|\band\b|\bso\b|\bhow\b|\bwhat\b", text, maxsplit=1)[0]


def around(text: str, start: int, end: int, floor: int, ceiling: int) -> tuple[str, str]:
    """The words of the same sentence before and after a place, between two other quantities."""
    before = patterns.split(r"[.;?!](?:\s|$)", text[floor:start])[-1]
    if floor:  # "9 ft from the wall and 3 ft": the wall belongs to the nine feet
        before = patterns.sub(r"^\W*(?:away )?(?:from|to|off|behind|in front of)\b[^,]*?(?=,|\b(?:and|but|keep|keeps|hold|holds|leave|leaves|get|gets|bring|brings)\b)", "", before)
    after = patterns.split(r"[.;?!](?:\s|$)", text[end:ceiling])[0]
    return before, after


_MORE_FAR = Pattern(r"^\s*(?P<way>further|farther|more distant|(?:more|longer|greater) (?:distance|throw|way)|(?:less|shorter) (?:distance|throw)|closer|nearer)\b", re.I)


def parts_further(facts: list[Fact], text: str) -> list[Fact]:
    """"40 % further": 1.4 times the distance, and no power."""
    return [_part_further(f, text) for f in facts]


def _part_further(fact: Fact, text: str) -> Fact:
    found = _MORE_FAR.match(text[fact.end :]) if fact.quantity == "power" and fact.unit == "%" and not fact.bad else None
    if found is None:
        return fact
    nearer = found["way"].lower().startswith(("closer", "nearer", "less", "shorter"))
    return replace(fact, quantity="times", value=1 - fact.value if nearer else 1 + fact.value, unit="", of="", cue="further", to="")


def loose_row(before: str, unit_follows: bool) -> bool:
    """Whether a bare number stands where a row's distance would: "and the back at 4.5"."""
    return bool(patterns.search(rf"(?:{FRONT}|{BACK}|{WALL})(?:\W+(?:row|rows|one|ones|is|are|at|person|people|rank|lot|line|bunch|end|side|kids|singers|about|of|them|s)\b)*\W*$", before, re.I)) or (
        not unit_follows and bool(patterns.search(r"^\W*(?:to|out to|back to|->)\W*$|\b(?:com(?:e|ing)|go(?:es|ing)?|mov(?:e|ed|ing)|br(?:ing|ought)|back|step(?:s|ped)?)(?: it| her| him)?(?: in| out| back| closer)? to\W*$", before, re.I)))


_A_ROW_BY_NUMBER = Pattern(r"\bthe (?:second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)(?=\W*(?:$|[.,;:?!]|\b(?:row|rank|tier|line|one|is|get|read|and|than|compared|against)))", re.I)


def row_by_number(facts: list[Fact], text: str) -> list[Fact]:
    """"six rows: how many stops under is the sixth?": which of them, and no part of full power."""
    if not any(f.quantity == "rows" or f.quantity == "distance" and f.of == "middle" for f in facts):
        return facts
    named = [m.span() for m in _A_ROW_BY_NUMBER.finditer(text)]
    return [replace(f, quantity="place", unit="", of="") if f.quantity in ("power", "number") and any(start <= f.start and f.end <= end for start, end in named) else f for f in facts]
