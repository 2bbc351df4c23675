"""Asks: what is wanted, and of whom.

The name of a quantity with no value beside it is a question when a question word stands
before it ("which f-stop do I set") or when nothing follows it ("…, ISO 200, aperture?").
Question words that carry their quantity ("how far", "how many stops") ask by themselves.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import in_units, named_only, sharp_asks, takings_asked
from assistant.language.items import Item
from assistant.language.question_sentence import asked_there
from assistant.language.segments import ROLES, Segment, is_role
from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Ask
from assistant.records import replace

QUESTION = ("what", "how_much", "how_many", "give", "what_if")
_KEPT = ("keep",)
FAR = 80
"""Items to either side beyond which nothing said in the same breath bears on what is asked."""
_CUE_ASKS = {
    "how_far": "distance", "how_low": "power", "brightest": "stops", "hyperfocal": "hyperfocal", "near_limit": "near_limit", "far_limit": "far_limit",
    "depth_of_field": "depth_of_field", "coverage": "coverage",
}

_COVERS_A_THING = Pattern(r"\s+(?:the |a |both |my |her |his )?(?:whole |full |entire )?(?:face|faces|sitter|subject|sides?|scene|group|shadow)\b", re.IGNORECASE)
_NEAR_AND_FAR = Pattern(r"what(?:'s| is| are)? the (?:nearest|closest) (?:and|or) (?:the )?(?:furthest|farthest)\b", re.IGNORECASE)
_KEY_TO_FILL = Pattern(r"what(?:'s| is| does)? (?:that|this|it)?[^?.!]{0,16}\bkey to fill\W*$", re.IGNORECASE)
_MARK_NEXT = Pattern(r"\s+f\W?\d", re.IGNORECASE)
_OPENED = Pattern(r"how (?:far|much) (?:do|must|should|shall|would) i (?:then |have to |need to )?open\b", re.IGNORECASE)


def asks_of(segments: Sequence[Segment], text: str) -> list[Ask]:
    """Everything asked for, strongest first, in the order said."""
    strong: list[Ask] = []
    weak: list[Ask] = []
    for number, segment in enumerate(segments):
        last = number == len(segments) - 1
        for at, item in enumerate(segment.items):
            if item.kind not in ("cue", "name"):
                continue
            found = _ask_at(segment, at, text)
            if found:
                strong.append(found)
                continue
            hint = _weak_ask_at(segment, at, text, last)
            if hint:
                weak.append(hint)
    if patterns.search(r"\bas an? (?:filter |exposure )?factor\b|\bmultipl\w+\b.{0,40}\bby (?:how much|what)\b|\b(?:what|which) factor\b|\bhow many times\b|\b(?:exposure|time|it|light|multiply|by|so|is|that|that\'s) times what\b", text.lower()) and any(i.kind == "stops" or (i.kind == "name" and i.word == "guide_number") for s in segments for i in s.items):
        return [Ask("factor", "", "x", 0)]
    asks = takings_asked.in_stops(_merged(asked_there(strong or weak[-2:], text) or _fallback(segments, text)), text)
    return [replace(a, quantity="power") if a.quantity in ("aperture", "stops") else a for a in asks] if _A_FRACTION.search(text) or _TURNED_TO.search(text) else asks


def _fallback(segments: Sequence[Segment], text: str) -> list[Ask]:
    """A question word with no quantity named: "what is 110 feet in metres", "what is it at full?"."""
    kinds = [i.kind for s in segments for i in s.items]
    if (dialled := _DIALLED.search(text)) is not None:
        return [Ask("power" if dialled["power"] else "aperture", "", "", dialled.start())]
    if _SHARE_OR_DEPTH.search(text) and "length" in kinds and "guide_number" not in kinds:
        return []
    if _TURNED_TO.search(text):
        return [Ask("power", "", "", 0)]
    if patterns.search(r"\bwhat(?:'?s| is| was| do| does| will| would|'ll) (?:[^?.]{1,30} )?(?:lose|losing|lost|gain|gaining|gained|drop|(?:under|over|down|up) by)\b", text.lower()) and "length" in kinds and kinds.count("length") + kinds.count("number") > 1:
        return []
    for segment in segments:
        at = next((n for n, i in enumerate(segment.items) if i.kind == "cue" and i.word in ("what", "give", "how_much")), None)
        if at is None:
            continue
        unit = _unit_wanted(segment, at)
        if unit:
            return [Ask("guide_number" if "guide_number" in kinds else "distance", "", unit, segment.items[at].start)]
        wants_setting = any(i.kind == "cue" and i.word == "do_i" for i in segment.items[at : at + 3])
        if "guide_number" not in kinds and "aperture" not in kinds and kinds.count("length") == 1 and kinds.count("film_speed") >= 2:
            return [Ask("guide_number", _whom(segment, at), "", segment.items[at].start)]  # "24 metres at ISO 64, what is it at ISO 100?"
        if "guide_number" in kinds and "length" not in kinds and "aperture" not in kinds and not wants_setting and not named_only.asks_a_reading(text):
            return [Ask("guide_number", _whom(segment, at), "", segment.items[at].start)]
        metered = any(i.kind == "cue" and i.word == "meter" or i.kind == "name" and i.word == "meter" for s in segments for i in s.items)
        if segment.asked and metered and "count" in kinds:
            return [Ask("aperture", "", "", segment.items[at].start)]
        if segment.asked and "aperture" not in kinds and {"guide_number", "length"} & set(kinds) and not (kinds.count("power") == 1 and "guide_number" not in kinds and kinds.count("length") > 1):
            return [Ask("aperture", _whom(segment, at), "", segment.items[at].start)]
        if any(is_role(i) for i in segment.items) and any(i.kind == "link" for i in segment.items):
            return [Ask("aperture", _whom(segment, at), "", segment.items[at].start)]
    return []


def _merged(asks: list[Ask]) -> list[Ask]:
    out: list[Ask] = []
    for ask in asks:
        if not any(a.quantity == ask.quantity and a.of == ask.of for a in out):
            out.append(ask)
    return out


def _ask_at(segment: Segment, at: int, text: str) -> Ask | None:
    item = segment.items[at]
    if item.kind == "cue":
        return _cue_ask(segment, at, text)
    if item.kind == "name" and _asked_before(segment, at, text) and not (item.word == "guide_number" and named_only.is_what_it_says(text, item.start, item.end)) and not (item.word == "magnification" and _COUNTED_IN.match(text, item.end)):
        quantity = _quantity(item, segment, text)
        return Ask(quantity, _whom(segment, at), _unit_wanted(segment, at), item.start) if quantity else None
    return None


_OF_THE_FILM = Pattern(r" (?:is|was|of|does|has) (?:the|this|that|my|his|her|our|their) (?:film|roll|emulsion|slide|stock)\b| (?:(?:should|do|must|can|shall|would|could|ought|did) (?:i|we|you|one) |to )(?:to )?(?:then |now |really )?(?:re-?)?rate\b", re.I)


def _quantity(item: Item, segment: Segment, text: str) -> str:
    """The quantity a name asks for: "what stop" is an aperture, "how many stops" are stops."""
    if item.word == "stops":
        said = text[item.start : item.end].lower()
        counted = any(i.kind == "cue" and i.word in ("how_many", "how_much") for i in segment.items)
        return "stops" if counted or said.rstrip().endswith("s") and not said.startswith("f") else "aperture"
    if item.word == "speed":
        return "film_speed" if _OF_THE_FILM.match(text, item.end) else "speed"
    if item.word == "meter":
        return ""
    return item.word


def _asked_before(segment: Segment, at: int, text: str) -> bool:
    for back in range(at - 1, max(-1, at - 7), -1):
        item = segment.items[back]
        if item.kind == "cue" and item.word == "what_if":
            return not segment.items[at + 1 :]
        if item.kind == "cue" and item.word in QUESTION:
            return not (segment.items[at].word == "sync" and named_only.is_told_of(text, segment.items[at].start) or named_only.is_relative(text, item.start, segment.items[at].end))
        if item.kind == "cue" and item.word in _KEPT:
            return False
        if item.kind in ("name", "aperture", "film_speed", "length", "guide_number"):
            return False
    return False


_MOST = Pattern(r"max(?:imum)?", re.IGNORECASE)
"""No power in "max distance"."""
_COVERED_UP = Pattern(r"\b(?:i|we) (?:can't|cannot|can not|can|could|couldn't|won't|didn't|must|have to|will)(?: really| fully| quite)? $|\b(?:isn't|is not|can't be|cannot be|be|are|been) $", re.I)
"""Before "cover": it is a window or a door that somebody covers, no angle."""


_WHERE_IT_FALLS = Pattern(r"where (?:does|do|will|would) (?:the |my )?(?:wall|background|backdrop|paper|curtain|back(?: row)?|last row|far (?:row|end)|\w+ row)\b[^?.]{0,10}\b(?:fall|land|sit|lie|come out|end up|go)\b"
                           rf"|how far (?:is|are|was|were|does|do|did|will|would) (?:the |my )?(?:ambient|background|backdrop|sky|window|daylight|sun|street|scene|picture|frame|shot|exposure|{ROOMS})(?: light)?(?: then| now| come out| lie| be| sit| fall)* (?:under|over)\b")
"""How dark it comes out, no place."""


_PATH_LONG = Pattern(r"[^.?!;]{0,24}\b(?:path|way|route|throw|travel)\b", re.IGNORECASE)
_DIALLED = Pattern(r"where (?:does|do|should|must|will|would|shall|to) ?(?:i |we )?(?:put |set |turn |leave |have |dial |park |stick |point |click |fix |stop )?(?:the|my|its) (?:lens|ring|aperture|iris|f-?stop|barrel|(?P<power>power|output))\b", re.IGNORECASE)
"""Where a setting is put, which is no place in the room: "where do I put the power"."""
_ON_THE_RING = Pattern(r"(?:what|which)(?: (?:number|mark|figure|setting|f|f-number))? (?:(?:should|must|does|do|would|will|shall|can) (?:the|my) (?:lens|ring|iris|barrel) (?:be|go|sit|stand|read|need)\b(?! focus)"
                       r"|(?:should|must|do|would|shall|can) (?:i|we) (?:\w+ )?(?:turn|set|put|have|leave|move|open) (?:the|my) (?:lens|ring|iris|barrel) (?:to|at|on)\b)", re.IGNORECASE)
"""Where the ring stands: "what should the lens be on", "what number do I turn the ring to"."""


def _cue_ask(segment: Segment, at: int, text: str) -> Ask | None:
    item = segment.items[at]
    after = segment.items[at + 1 : at + 5]
    if item.word == "how_many":
        return _how_many(segment, at, after, text)
    if item.word == "how_much":
        return _how_much(segment, at, after, text)
    if item.word == "how_long":
        lasts = "shutter" if named_only.is_of_the_exposure(text, item.end) else "duration"
        return Ask("distance", "", _unit_wanted(segment, at), item.start) if _PATH_LONG.match(text, item.end) else Ask(lasts, _whom(segment, at), "", item.start)
    if item.word in ("t01", "t05", "duration") and any(i.kind == "cue" and i.word in QUESTION for i in segment.items[max(0, at - 4) : at]):
        return Ask("duration", item.word if item.word != "duration" else "", "", item.start)
    lit = item.word == "how_far" and any(i.kind == "cue" and i.word in ("ambient", "backdrop") for i in segment.items)
    placed = _DIALLED.match(text[item.start :]) if item.word == "how_far" else None
    if placed:
        return Ask("power" if placed["power"] else "aperture", _whom(segment, at) if placed["power"] else "", "", item.start)
    if item.word == "how_far" and _WHERE_IT_FALLS.match(text[item.start :].lower()):
        return Ask("stops", _whom(segment, at), "", item.start)
    if item.word == "how_far" and patterns.search(r"\bhow (?:far|close|near) apart\b[^?.]*\bstops\b", text.lower()):
        return Ask("stops", "", "", item.start)
    if item.word == "how_far" and after and after[0].kind == "cue" and after[0].word in (("less", "more", "down") if lit else ("less", "more")):
        return Ask("stops", _whom(segment, at), "", item.start)
    if item.word == "how_far" and any(i.kind == "cue" and i.word in ("down", "up") for i in segment.items[at + 1 :]) and any(i.kind == "name" and i.word == "power" or i.kind == "noun" for i in segment.items[at + 1 :]) \
            and not any(i.kind in ("stops", "length") for i in segment.items):
        return Ask("power", _whom(segment, at), "", item.start) if patterns.search(r"\b(turn|dial|knock|crank|wind|drop|bring)\b", text.lower()) else Ask("distance", _whom(segment, at), _unit_wanted(segment, at), item.start)
    if item.word == "what" and _ON_THE_RING.match(text[item.start :]):
        return Ask("aperture", "", "", item.start)
    if item.word == "what" and _NEAR_AND_FAR.match(text[item.start :]):
        return Ask("near_limit", "", "", item.start)
    if item.word == "what" and _KEY_TO_FILL.match(text[item.start :]):
        return Ask("ratio", "", "", item.start)
    if item.word == "what" and _sets(segment, at, text):
        return Ask("aperture", "", "", item.start)
    if item.word == "meter" and text[item.start : item.end].lower().startswith("reading") and any(i.kind == "cue" and i.word == "what" for i in segment.items[max(0, at - 4) : at]):
        return Ask("aperture", _whom(segment, at), "", item.start)
    if item.word == "coverage" and text[item.start : item.end].lower() in ("cover", "covers", "spread") and _COVERS_A_THING.match(text[item.end :]):
        return None
    if item.word == "how_far" and _OPENED.match(text[item.start :]):
        return Ask("stops", "", "", item.start)
    if item.word == "coverage" and (_COVERED_UP.search(text[max(0, item.start - 20) : item.start]) or named_only.stands_spread(text, item.start, item.end)):
        return None  # "a glass door I can't cover", "a family is spread from 3 m to 5 m"
    if item.word == "coverage" and patterns.search(r"\b(?:in|many) stops\b|\bstops? (?:of )?(?:spread|cover)", text.lower()):
        return Ask("stops", "", "", item.start)
    if _only_named(segment, at, text):
        return None
    if item.word in _CUE_ASKS:
        return Ask(_CUE_ASKS[item.word], _whom(segment, at), _unit_wanted(segment, at), item.start)
    return None


def _only_named(segment: Segment, at: int, text: str) -> bool:
    """Whether a cue that asks elsewhere only names something here."""
    item = segment.items[at]
    if item.word == "depth_of_field" and sharp_asks.is_reason(text, item.start, item.end):
        return True  # "I need f/11 for more depth of field": why, and not what
    if item.word == "depth_of_field" and patterns.match(r"depth of (?:the|my|our|this) (?:group|choir|crew|team|band|class|party|rows|lot)\b", text[item.start :].lower()):
        return True
    if item.word == "brightest" and (any(i.kind == "cue" and i.word == "bracket" for i in segment.items[max(0, at - FAR) : at + FAR]) or patterns.match(r"(?: \w+)? first\b", text[item.end :].lower())):
        return True  # the order of a bracket
    return item.word in ("far_limit", "near_limit") and named_only.is_end_of_a_place(text, item.start, item.end)


_SETTING = ("set", "shoot at", "shoot it at", "use", "dial in", "go with")


def _clause_text(text: str, start: int, end: int) -> str:
    """The clause with the small words after it that are no items: "what do i set"."""
    tail = patterns.match(r"\s*(?:set|use|shoot at|go with|dial in)\b", text[end:], re.IGNORECASE)
    return (text[start:end] + (tail.group() if tail else "")).lower()


_A_FRACTION = Pattern(r"\b(?:what|which) fraction (?:do|should|must|would|shall|can|will) (?:i|we) (?:then |now )?(?:set|dial|use|turn|put|need|give|go)\b", re.IGNORECASE)
_TURNED_TO = Pattern(r"\b(?:turn|dial|knock|wind|crank|power)(?:ing)?(?: (?:it|that|this|the (?:flash|light|head|fill|strobe|gun|power)))?(?: right| back)? (?:down|up|back) to what\b(?! (?:f|aperture|f-?stop|mark on)\b)", re.IGNORECASE)
_SHARE_OR_DEPTH = Pattern(r"\bdeepest\b|\b(?:greatest|largest|maximum) depth\b|\b(?:what|which|how large a|how big a) (?:share|part|proportion|fraction|percentage) of (?:the|its|that|my|all)\b[^?.]{0,20}\blight\b|\blight\b[^?.]*\b(?:what|which) (?:share|part|proportion|fraction|percentage) of (?:that|the light)\b", re.IGNORECASE)
"""What is asked by these words is no aperture."""
_SHARE_ASKED = Pattern(r"(?:what|which) (?:fraction|share|part|proportion|percentage)\b", re.IGNORECASE)
"""A fraction that is dialled in is a power."""


def _sets(segment: Segment, at: int, text: str) -> bool:
    """"what should I set": the aperture, when nothing else is named."""
    tail = segment.items[at + 1 : at + 3]
    clause = [segment.items[at]]
    for item in segment.items[at + 1 :]:
        if (item.kind == "mark" and item.word == "AND") or (item.kind == "cue" and item.word in QUESTION):
            break
        clause.append(item)
    said = _clause_text(text, clause[0].start, clause[-1].end)
    if any(i.kind in ("name", "aperture") for i in clause) or _SHARE_ASKED.match(text[segment.items[at].start :]):
        return False
    return any(i.kind == "cue" and i.word == "do_i" for i in tail) and any(said.endswith(w) for w in _SETTING) and not any(i.kind == "cue" and i.word in ("meter", "rate", "down", "up") for i in clause)


_AN_OCCASION = Pattern(r"\b(?:next|this|last|first|second|another|each|every|some|any) $", re.I)


def _how_many(segment: Segment, at: int, after: Sequence[Item], text: str) -> Ask | None:
    start = segment.items[at].start
    for item in after:
        if item.kind == "mark" and item.word == "TIMES":
            if _AN_OCCASION.search(text[:item.start]):
                break  # "how many next time?" asks for as many as were told of
            return Ask("factor", "", "x", start)
        if item.kind == "unit_name":
            return Ask("distance", _whom(segment, at), item.word, start)
        if item.kind == "noun":
            return Ask("count", "", item.word, start)
        if item.kind == "name" and not (item.word == "distance" and _MARK_NEXT.match(text[item.end :]) and text[item.start : item.end].lower() == "reach"):
            word = item.word
            if word == "degrees":
                return Ask("coverage", "", "degrees", start)
            return Ask("stops" if word == "stops" else word, _whom(segment, at), "", start)
        if item.kind in ("length", "aperture", "guide_number"):
            break
    if _SO_MANY_OVER.match(text[segment.items[at].end :]):
        return Ask("stops", _whom(segment, at), "", start)
    if after and after[0].kind == "word":
        return None  # how many of something that is none of ours
    if (before := in_units.named_before(text, start, segment.items[at].end)) is not None:
        return before
    return Ask("count", "", "", start)


_SO_MANY_OVER = Pattern(r"\s+(?:over|under|above|below|hotter|brighter|darker|dimmer|up|down)\b(?! to\b)(?! (?:flash|light|head|pop|frame|shot)\w*\b)", re.IGNORECASE)
""""How many over is that": stops, though nobody says so."""


def _how_much(segment: Segment, at: int, after: Sequence[Item], text: str) -> Ask | None:
    start = segment.items[at].start
    later = segment.items[at + 1 :]
    if after and after[0].kind == "cue" and after[0].word in ("further", "closer") and (len(after) < 2 or after[1].kind != "name"):
        return Ask("distance", "move", "", start)
    named = any(i.kind == "stops" or i.kind == "name" and not _THE_SAME.search(text[max(0, i.start - 12) : i.start]) for i in later)
    if any(i.kind == "cue" and i.word in ("down", "up") for i in later) and not named and _turned(later):
        return Ask("power", _whom(segment, at), "", start)
    if any(i.kind == "cue" and i.word == "depth_of_field" for i in after[:3]):
        return None  # "how much more depth"
    if _IS_IT_OFF.match(text[start:]):
        return Ask("stops", "", "", start)
    for item in after[:3]:
        if item.kind == "cue" and item.word in ("less", "more", "open_up", "close_down", "loss", "down", "up"):
            return Ask("stops", _whom(segment, at), "", start)
        if item.kind == "cue" and item.word in ("further", "closer", "move"):
            return Ask("distance", "move", "", start)
        if item.kind == "name":
            return None
        if item.kind == "cue" and item.word == "energy":
            return Ask("energy", "", "J", start)
    return Ask("stops", _whom(segment, at), "", start) if not any(i.kind == "name" for i in segment.items[at + 1 :]) else None


_IS_IT_OFF = Pattern(r"(?:by )?how much (?:is|am|are|was|were) (?:it|i|we|that|the (?:exposure|picture|frame|shot)) (?:off|out)\b", re.IGNORECASE)
_THE_SAME = Pattern(r"\bsame $", re.IGNORECASE)
"""Right before what is kept, and so not asked for: "at the same distance"."""


def _turned(items: Sequence[Item]) -> bool:
    """Whether it is the flash that is turned up or down, not the light that goes down."""
    return not any(i.kind == "cue" and i.word in ("less", "more", "back", "front", "backdrop", "ambient") for i in items)


_STAYS = Pattern(r"\s*(?:stays?|remains?|is (?:the same|unchanged|fixed|kept|staying)|unchanged|fixed|doesn'?t (?:change|move)|not (?:changed|touched)|as (?:is|it is|before))\b", re.IGNORECASE)
"""A quantity that stays is not asked for."""
_STEADY = Pattern(r"\b(?:fixed|constant|unchanged|unaltered|steady|equal|identical)(?: flash| manual)?\s*$", re.IGNORECASE)


_SET_OFF = Pattern(r"[,;:] *(?:(?:what|which|and|so|the|my|then) )*$", re.IGNORECASE)
"""Before a name that the mark parts from what is kept: "keep f/8, power?"."""


_COUNTED_IN = Pattern(r"\s*(?:is |being |all )?(?:counted|included|allowed for|accounted for|taken (?:in|into account)|reckoned in|and all|in mind)\b", re.IGNORECASE)
"""A loss that is to be part of the answer, not the answer."""


def _weak_ask_at(segment: Segment, at: int, text: str, last: bool) -> Ask | None:
    item = segment.items[at]
    if item.kind == "cue" and item.word in ("t01", "t05") and segment.asked:
        return Ask("duration", item.word, "", item.start)
    if item.kind != "name" or item.word == "meter":
        return None
    before = segment.items[at - 1] if at else None
    if item.word == "distance" and text[item.start : item.end].lower() == "reach" and _MARK_NEXT.match(text[item.end :]):
        return None  # "how many to reach f/11"
    if item.word == "speed" and text[: item.start].lower().rstrip().endswith(("at box", "the box", "its box")) and not segment.asked:
        return None  # "the 160 roll at box speed": how it is shot
    if item.word == "sync" and named_only.is_told_of(text, item.start) or not segment.asked and named_only.is_told_after(text, item.end):
        return None
    if item.word == "distance" and before is not None and before.kind == "length":
        return None  # "an 11 foot throw"
    if before is not None and (before.kind in ("share", "power") and not _MOST.fullmatch(text[before.start : before.end]) or (before.kind == "mark" and before.word == "TWICE")):
        return None
    if any(i.kind == "cue" and i.word in (*_KEPT, "only_full_half") for i in segment.items[max(0, at - 2) : at]) and not (before is not None and before.kind in ("aperture", "length", "film_speed") and item.word != before.kind and _SET_OFF.search(text[: item.start])):
        return None
    if _STAYS.match(text[item.end :]) or _STEADY.search(text[: item.start]) or _COUNTED_IN.match(text[item.end :]):
        return None
    if patterns.search(r"\b(?:correct|allow|compensat|adjust|account|mak\w* up)\w*(?: it)? for(?: the| my| that| any)?\s*$", text[: item.start].lower()):
        return None
    rest = [i for i in segment.items[at + 1 :] if i.kind not in ("word", "link", "glue") and not (i.kind == "cue" and i.word in ("do_i", "want", "correction", "now", "claim", "meter", "loss", "more", "less", "self"))]
    ends = not rest or (rest[0].kind == "mark" and rest[0].word in ("FOR", "IN", "AT", "OF", "TO")) or is_role(rest[0]) or _from_a_thing(item, rest)
    if not ends or (before is not None and before.kind == "mark" and before.word in ("FROM",)):
        return None
    leads = at == 0 and bool(rest) and rest[0].kind == "mark" and rest[0].word == "FOR"
    wanted = before is not None and before.kind == "cue" and before.word == "want" and not rest
    if not (segment.asked or len(segment.items) <= 2 or last or leads or wanted):
        return None
    follows = segment.items[at + 1 : at + 3]
    if item.word == "distance" and text[item.start : item.end].lower() == "range" and any(i.kind == "name" for i in follows):
        return None
    quantity = _quantity(item, segment, text)
    return Ask(quantity, _whom(segment, at), _unit_wanted(segment, at), item.start) if quantity else None


def _from_a_thing(item: Item, rest: Sequence[Item]) -> bool:
    """"distance from the paper" at the end, with no length told."""
    return item.word == "distance" and rest[0].kind == "mark" and rest[0].word == "FROM" and not any(i.kind in ("length", "number", "length_range") for i in rest)


_OF_ALL = frozenset({("mark", "BOTH"), ("cue", "combined")})


def _whom(segment: Segment, at: int) -> str:
    """Whose quantity is asked: the first light named after the ask, else the last before it."""
    first = max(0, at - FAR)
    near = segment.items[first : at + FAR]
    for item in near[at + 1 - first :]:
        if item.kind in ROLES:
            return item.word
    if not _OF_ALL.isdisjoint([(i.kind, i.word) for i in near]):
        return "both"
    before = [i for i in near[: at - first] if i.kind in ROLES]
    return before[-1].word if before else ""


def _unit_wanted(segment: Segment, at: int) -> str:
    """"in metres" said in the same breath."""
    near = segment.items[max(0, at - FAR) : at + FAR]
    for here, after in zip(near, near[1:]):
        if here.kind == "mark" and here.word == "IN" and after.kind == "unit_name":
            return after.word
    return ""
