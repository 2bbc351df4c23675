"""Two places along one beam, and how much brighter the one is: from where the one stands, where the other does.

By the inverse square law the brighter one is the nearer, and so many stops are so many times the distance. It is
one sum for all who tell it, whatever they call the two: a face and a chair, the first row and the last, where a
lamp hung before it was moved and where it hangs now, the distance a setting was worked out for and where somebody
really stood. What is told is the place of one (or only the way between the two) and the difference, in stops, by a
reading of each, or as a share of the light; which of the two is the brighter and which stands at the place told is
a matter of words: whose it is said of, and what is asked of.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.flash import distance_for_falloff, falloff_stops
from assistant.query import Ask, Fact, Query
from assistant.records import record
from assistant.records import replace as record_replace
from assistant.scales import aperture_difference_stops
from assistant.solving import marks
from assistant.solving.last_question import last_question
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.units import speak_length

_KINDS = frozenset({"distance", "gap", "move", "stops", "relation", "loss", "signed", "power_down", "aperture", "aperture_range", "power", "share", "remark", "place", "rows", "film_speed", "shutter"})
_STOPS = ("stops", "relation", "loss", "signed", "power_down")
_LENGTHS = ("distance", "gap", "move")
_DARK = Pattern(r"\b(?:darker|under|less|below|dimmer|weaker|lost|loses?|losing|down|fell|falls?|fall off|dropped|drops?|cost|costs|too dark|underexposed|dimmed|sank)\b", re.I)
_BRIGHT = Pattern(r"\b(?:brighter|over|more|above|hotter|stronger|gain|gained|gains|won|up|rose|rises|too bright|overexposed|climbed)\b", re.I)
_BREAK = Pattern(r"[.;?!,](?=\s|$)|\s[-–—]+\s|\b(?:and|but|which|while|if|when|whereas)\b", re.I)
_PLAIN = frozenset(
    "a an the my his her our their that this these those it its is are was were be been being at from to of off in on by for with and but which who while if when where what how far away close near back "
    "behind light lights lamp flash strobe head softbox key reads read reading meters metered gets get got gives stop stops half third quarter thirds one two three f m cm mm metre metres meter meters feet foot ft inch inches "
    "so then now only just about exactly stands stand sits sit stood sat hangs hung there here comes came out does do did will would should must than as much many less more under over below above darker brighter "
    "need needs want wants prefer gained gains won falls fall lies lie not no i we you put place placed let say says shows gain lost same row rows rank ranks ones am s re ve ll short shy hot too".split())
_PRONOUNS = {"her": "she", "him": "he", "them": "they", "hers": "she", "his": "he"}


@record
class Pair:
    """How many stops the brighter place has over the darker, what each of them is called, and the facts that say so."""

    stops: float
    bright: frozenset[str]
    dark: frozenset[str]
    used: tuple[Fact, ...]


def solve(query: Query, ask: Ask) -> Solution | None:
    """The other place, or the way between the two; None where the words do not say which is which."""
    if ask.quantity != "distance" or {f.quantity for f in query.facts if not (f.quantity == "count" and f.value == 1)} - _KINDS or any(f.origin != "said" for f in query.facts) or len({f.value for f in query.all("film_speed")}) > 1:
        return None
    lengths = [f for f in query.facts if f.quantity in _LENGTHS and not f.bad]
    if len({(f.quantity, f.value) for f in lengths}) != 1 or lengths[0].value == 0:
        return None
    asked = last_question(query.text)
    if asked is None or query.has("power_down") and _KEPT.search(query.text) or _EITHER_WAY.search(query.text):
        return None  # turned down, and moved to make up for it; or what is borne to both sides
    question = _IN_CASE.split(query.text[asked[0] : asked[1]])[0]
    asked = asked[0], asked[0] + len(question)
    pair = _set_for(query) or _moved(query, asked) or _behind(query, _two(query), lengths[0])
    if pair is None or not 0 < pair.stops < 12 or any(_is_wished(query, f, asked) for f in pair.used):
        return None
    return _answer(query, ask, pair, lengths, question)


_EITHER_WAY = Pattern(r"\b(?:either|each) (?:way|side)\b|\bboth (?:ways|sides)\b|\bplus or minus\b|\bover or under\b", re.I)
_IN_CASE = Pattern(r"\b(?:if|so (?:that|as)|for (?:the|it|him|her|them|my)|in order|when|while|to (?:get|make|have|be|lose|fall)|before(?! (?:the|that|this|its|it was|i) (?:moved?|shift\w*|chang\w*|pull\w*|push\w*)\W*$))\b(?=.* )", re.I)
"""What the question goes on with is the case, and not whose place is asked."""


_BACK_ROW = Pattern(r"\b(?:back|rear|last|hindmost|farthest|furthest)(?: (?:row|rank|line|one|person|singer|tier))?\b(?<!back)|\bback (?:row|rank|line|one|tier)\b|\bthe (?:far|farther)(?: (?:row|rank|one|person))?\b")
_FRONT_ROW = Pattern(r"\b(?:front|first|nearest|closest|foremost)(?: (?:row|rank|line|one|person|singer|tier))?\b|\bthe (?:near|nearer)(?: (?:row|rank|one|person))?\b")


def _names(text: str) -> frozenset[str]:
    said = _FRONT_ROW.sub("frontrow", _BACK_ROW.sub("backrow", text.lower()))
    return frozenset(_PRONOUNS.get(w, w) for w in patterns.findall(r"[a-z]+", said)) - _PLAIN


def _clause(text: str, place: int) -> str:
    """What stands before a place since the last break."""
    starts = [m.end() for m in _BREAK.finditer(text, 0, place)]
    return text[starts[-1] if starts else 0 : place]


_ONLY_JOINED = Pattern(r"\band(?: (?:only|just|is|so|still|then|about))* *$", re.I)


def _clause_before(text: str, place: int) -> str:
    """The clause before, whose subject goes on: "the back row is 5 m off and only half a stop darker"."""
    joined = _ONLY_JOINED.search(text[:place])
    return _clause(text, joined.start()) if joined is not None else ""


def _difference(query: Query) -> tuple[float, tuple[Fact, ...]] | None:
    """Stops told outright, as a share of the light, or by two readings; without their sign."""
    said = [f for f in query.facts if f.quantity in _STOPS]
    read, spans = query.all("aperture"), query.all("aperture_range")
    shares = [f for f in query.facts if f.quantity in ("power", "share") and 0 < f.value < 1]
    if len(said) + len(spans) + len(shares) + (len(read) == 2) != 1 or len(read) > 2 or query.has("power") and not shares:
        return None
    if said and not (said[0].quantity == "loss" and said[0].unit):
        return abs(said[0].value), (said[0], *read)
    if said:
        return None  # what something takes that hangs in the light
    if shares:
        return (-math.log2(shares[0].value), (shares[0],)) if _OF_THE_LIGHT.match(query.text, shares[0].end) and not read else None
    first, second = (spans[0].value, spans[0].other) if spans else (read[0].value, read[1].value)
    return (abs(2 * math.log2(first / second)), (*spans, *read)) if first > 0 and second > 0 and first != second else None


_OF_THE_LIGHT = Pattern(r"\s*(?:of )?(?:(?:the|her|his|its|as much) )?(?:light|what|that)\b", re.I)

# --- a lamp, or somebody, that moved ------------------------------------------------------------------

_MOVING = Pattern(r"\b(?:mov(?:e|es|ed|ing)|pull\w*|push\w*|backed|back(?:s|ing) (?:off|away|up)|brought|bring\w*|came(?! out)|come(?! out)|coming(?! out)|step\w*|walk\w*|drew|draw\w*|shift\w*|slid\w*|drag\w*|took|taken|carried|wheeled|rolled|lift\w*|raised|lowered)\b", re.I)
_BACKWARD = Pattern(r"\b(?:back(?:ed|ing|wards?)?|off|away|further|farther|out)\b", re.I)
_FORWARD = Pattern(r"\b(?:in|closer|nearer|forwards?|towards?|up to)\b", re.I)
_TO = Pattern(r"\b(?:to|now)(?: (?:at|about|it(?:'s| is)|only|just|stands?|is|hangs?|sits?))* ?$", re.I)
_UNTIL = Pattern(r"\b(?:until|till) (?:it|he|she|they|the \w+)(?:'s| is| was| were| stood| stands| hung| sat)?(?: (?:at|about|only|just))* ?$", re.I)
"""Right before where the move ended: "moved back until it was 6 feet from the subject"."""
_STILL = Pattern(r"\s*(?:(?:away|off|from (?:the|my|her|him) ?\w*) )?now\b", re.I)
_BY = Pattern(r"\bby(?: (?:about|only|just))* ?$|\b(?:backed|moved|pulled|pushed|stepped|brought|walked|drew|dragged|came|went)(?: (?:it|the \w+|back|off|away|in|up|closer|nearer|further|farther|forward|another))* ?$", re.I)
"""Right before the way that something was moved by."""
_FROM = Pattern(r"\b(?:from|was|were|stood|hung|sat|had been|used to be|at first|first)(?: (?:at|about|only|just|it|placed))* ?$", re.I)
_WISHED = Pattern(r"\b(?:want\w*|need\w*|should|must|like|may|can|so that|so as|in order|to (?:be|get|lose|gain|have|make)|prefer)\b", re.I)
_SENTENCE = Pattern(r"[.;?!](?=\s|$)")
_TOO = Pattern(r"\s*too\b", re.I)
_TOO_BY = Pattern(r"\btoo (?:bright|dark|hot|strong|weak|dim|light|much|little)(?: by)?(?: (?:about|just|only|some))*\s*$", re.I)
"""Round the stops that are to be made good: where it should stand is asked, and not where it is so."""
_TO_BE = Pattern(r"\b(?:for|so that|to (?:be|get|lose|gain|have|make|fall|come out|read)|(?:before|until|till|without)(?: (?:i|it|he|she|they|we|the \w+|her|his|my))?(?:(?: \w+)?'s| is| are| am|'re|(?: has| have|'ve)? \w*(?:los(?:es?|ing|t)|drop(?:s|ping|ped)?|f[ae]ll(?:s|ing|en)?|gain(?:s|ing|ed)?|com(?:es?|ing)|go(?:es|ing)?|read(?:s|ing)?|get(?:s|ting)?)))\b[^.;?!,]{0,30}$", re.I)
_CAME_OUT = Pattern(r"\b(?:came|turned|has come|had come) out (?:about |just |nearly )?$", re.I)
_SOMEBODY = frozenset({"she", "he", "they"})
_OF_NOW, _OF_BEFORE = frozenset({"now"}), frozenset({"before"})


def _is_wished(query: Query, said: Fact, asked: tuple[int, int]) -> bool:
    """Whether the difference is what is to come about, and not told."""
    return asked[0] <= said.start < asked[1] or _WISHED.search(_SENTENCE.split(query.text[asked[1] if asked[1] <= said.start else 0 : said.start])[-1]) is not None or _TOO.match(query.text, said.end) is not None or _TOO_BY.search(query.text[: said.start]) is not None or _TO_BE.search(query.text[max(0, said.start - 40) : said.start]) is not None and _CAME_OUT.search(query.text[: said.start]) is None


def _moved(query: Query, asked: tuple[int, int]) -> Pair | None:
    """Where it was and where it is: what was lost lies farther, what was gained nearer."""
    found, verb = _difference(query), _MOVING.search(query.text)
    if found is None or verb is None or asked[0] <= verb.start() < asked[1]:
        return None
    stops, used = found
    lost = _lost(query, used[0])
    if lost is None:
        return None
    around = query.text[verb.start() : verb.end() + 40]
    if (_BACKWARD.search(around) is not None and _FORWARD.search(around) is None and not lost) or (_FORWARD.search(around) is not None and _BACKWARD.search(around) is None and lost):
        return None  # farther and brighter: it is not told of one lamp
    return Pair(stops, _OF_BEFORE if lost else _OF_NOW, _OF_NOW if lost else _OF_BEFORE, used)


def _lost(query: Query, said: Fact) -> bool | None:
    """Whether the move made it darker; None where that is not told."""
    if said.quantity == "aperture_range":
        return said.value > said.other
    if said.quantity == "aperture":
        read = query.all("aperture")
        return read[0].value > read[1].value if _IN_TIME.search(query.text) else None
    if said.quantity == "loss":
        return True
    if _KEPT.search(query.text):
        return None
    around = _clause(query.text, said.start)[-40:] + " | " + query.text[said.end : said.end + 16]
    dark, bright = _DARK.search(around) is not None or said.cue == "less", _BRIGHT.search(around) is not None or said.cue == "more"
    return dark if dark != bright else None


_KEPT = Pattern(r"\b(?:keep|kept|hold|held|same|restore|make up|made up|compensate)\b[^.?!]{0,24}\b(?:exposure|reading|f.?stop|aperture|brightness|light)\b|\bpower\b", re.I)
_IN_TIME = Pattern(r"\b(?:then|now|since|used to|after|afterwards|dropped|fell|rose|climbed|went|changed)\b", re.I)

# --- worked out for one place, and somebody stood at another ------------------------------------------

_WORKED_OUT = Pattern(r"\b(?:work\w*(?: it| this| that)?(?: out)?|calculated|figured|set(?: the \w+| it)?|exposed|exposure (?:is|was)|aperture (?:is|was)|right|correct|focused|reckoned)(?: (?:right|correct|out|good|spot on))?(?: (?:for|at|to be|it))+(?: (?:about|exactly|someone|somebody|a subject|at|standing))* ?$", re.I)
_OUT_BY = Pattern(r"\s*(?:too )?(?P<way>over|under|bright|dark|hot|thin|dense)", re.I)


def _set_for(query: Query) -> Pair | None:
    """"worked out for 12 feet, and the dog came out a stop under": over is nearer than it was set for, under is farther."""
    found = _difference(query)
    places = [f for f in query.all("distance") if _WORKED_OUT.search(query.text[: f.start])]
    if found is None or not (places or _SET_ASKED.search(query.text)) or found[1][0].quantity not in _STOPS:
        return None
    way = _OUT_BY.match(query.text, found[1][0].end)
    if way is None:
        return None
    over = way["way"].lower() in ("over", "bright", "hot", "dense")
    where, stood = frozenset({"set"}), frozenset({"stood"})
    return Pair(found[0], stood if over else where, where if over else stood, found[1])


# --- two who stand at different places ----------------------------------------------------------------

_ON = Pattern(r"\s*(?:on|at|off|for|in|to) (?P<whom>(?:the |my |her |his )?[a-z]+(?: [a-z]+)?)", re.I)
_THAN = Pattern(r"\s*(?:of (?:light |a stop )?)?(?:darker|brighter|dimmer|weaker|hotter|stronger|less|more|under|over|below|above)(?: light)?(?: than)?(?: what| that)?(?: (?:on|at|of))? (?P<other>(?:the |my |her |his |our )?[a-z]+(?: [a-z]+)?)", re.I)
_OF_WHAT = Pattern(r"\s*(?:of )?(?:the |as much )?(?:light|what|that)?(?: (?:that|which|as|of|on|at|what))* (?P<other>(?:the |my |her |his )?[a-z]+)", re.I)
_SIDE = Pattern(r"\b(?P<far>farthest|furthest|farther|back|last|rear|wall|backdrop|background|curtain|hindmost)\b|\b(?P<near>nearest|closest|nearer|front|first|foremost)\b", re.I)


def _two(query: Query) -> Pair | None:
    """"the chair is two stops under the face", "she reads f/8, the wall f/5.6": who is the brighter."""
    found = _difference(query)
    if found is None:
        return None
    stops, used = found
    said, text = used[0], query.text
    if said.quantity == "aperture_range":
        return None
    if said.quantity == "aperture":
        first, second = query.all("aperture")
        on = [_ON.match(text, f.end) for f in (first, second)]
        one, other = (_names("" if m is None else m["whom"]) for m in on) if on[0] is not None else (_names(_clause(text, f.start)) for f in (first, second))
        bright, dark = (one, other) if first.value > second.value else (other, one)
        return Pair(stops, bright - dark, dark - bright, used)
    if _THE_EXPOSURE_IS.search(text[: said.start]) and _THAN_WHOM.match(text, said.end) is None:
        return None
    one = _names(_clause(text, said.start)) or _names(_clause_before(text, said.start))
    if said.quantity in ("power", "share"):
        whom = _OF_WHAT.match(text, said.end)
        return Pair(stops, _names(whom["other"]) - one if whom is not None else frozenset(), one, used)
    whom = _THAN.match(text, said.end)
    other = _names(whom["other"]) if whom is not None else frozenset[str]()
    darker = _darker(text[said.end : said.end + 20], _clause(text, said.start)[-30:], said)
    if darker is None:
        return None
    return Pair(stops, other - one, one - other, used) if darker else Pair(stops, one - other, other - one, used)


_THE_EXPOSURE_IS = Pattern(r"\b(?:i(?:['’]m| am| was| come out| came out| get| got)|we(?:['’]re| are| were| get| got)|it(?:['’]s| is| was| comes out| came out)|(?:the |my )(?:exposure|picture|frame|neg|negative|slide)s?(?: is| was| are| were| comes? out| came out))(?: (?:now|still|about|only|just|some|a good|coming out|exactly|at least))* $", re.I)
"""Of the exposure as it is, and of nobody: "at twelve feet I'm two stops under"."""
_THAN_WHOM = Pattern(r"[^.,;?!]{0,24}\b(?:than|the|what|her|him|them|my)\b", re.I)


_ONE_BEHIND = Pattern(r"\s*(?:further |farther |away )?(?:behind|beyond|past|back from)(?: of)? (?P<whom>(?:the |my |her |his )?[a-z]+(?: [a-z]+)?)", re.I)


def _behind(query: Query, pair: Pair | None, length: Fact) -> Pair | None:
    """"the door stands 2 m behind the smith": whoever is behind is the darker."""
    behind = _ONE_BEHIND.match(query.text, length.end) if pair is not None and length.quantity == "gap" else None
    if pair is None or behind is None:
        return pair
    near, far = _names(behind["whom"]), _names(_clause(query.text, length.start))
    return record_replace(pair, bright=pair.bright | (near - far), dark=(pair.dark | far) - near)


def _darker(after: str, before: str, said: Fact) -> bool | None:
    """Whether so many stops are told of the darker one: by what follows them, else by what stands before."""
    for words in (after, after + " | " + before):
        dark, bright = _DARK.search(words) is not None or said.cue == "less", _BRIGHT.search(words) is not None or said.cue == "more"
        if dark != bright:
            return dark
    return None


# --- what is asked ------------------------------------------------------------------------------------

_GAP_ASKED = Pattern(r"\bhow far (?:apart|behind|(?:is|are|was|stands?|hangs?) (?:the |my )?[a-z]+ (?:behind|beyond|past|in front)|did (?:it|i|he|she|the \w+) (?:move|come|go)|(?:was|is|has) (?:it|he|she|the \w+) (?:been )?moved|did i (?:move|pull|push|bring))\b|\bhow deep\b|\bhow many (?:metres|meters|feet|cm|centimetres|inches) (?:apart|behind|deep)\b|\b(?:between|apart)\b", re.I)
_FROM_LAMP = Pattern(r"\bfrom (?:the |my )?(?:light|lamp|flash|strobe|head|softbox|key)\b|\b(?:light|lamp|flash|strobe|head|softbox)\b", re.I)
_NOW = Pattern(r"\b(?:now|end up|finally|is it|is the (?:light|lamp|flash|head)|stands?|am i)\b", re.I)
_THEN = Pattern(r"\b(?:before|at first|was (?:it|i|the \w+)|originally|did (?:it|the \w+|i) (?:stand|hang|start|begin)|to (?:start|begin) with|did i (?:move|bring|pull|push) (?:it|the \w+)(?! to)|old|former|first place|had (?:it|the \w+) been|stood|hung|come from|move it from|start)\b", re.I)


def _answer(query: Query, ask: Ask, pair: Pair, lengths: list[Fact], question: str) -> Solution | None:
    gap_asked = _GAP_ASKED.search(question) is not None or _between_two(pair, question)
    wanted = None if gap_asked else _which(pair, question)
    if not gap_asked and wanted is None:
        return None
    length = lengths[0]
    if length.quantity in ("gap", "move") or _BY.search(query.text[: length.start]):
        read = query.all("aperture")
        stops = pair.stops if len(read) != 2 else abs(aperture_difference_stops(read[0].value, read[1].value))  # by the marks: a small error of a mark is a large one of a place
        near = abs(length.value) / (2.0 ** (stops / 2) - 1)
        places = (near, near + abs(length.value))
        if gap_asked:
            return None
    else:
        owner = _owner(query, pair, length, wanted)
        if owner is None or owner == wanted:
            return None
        places = (length.value, distance_for_falloff(length.value, -pair.stops)) if owner == "bright" else (distance_for_falloff(length.value, pair.stops), length.value)
        wanted = wanted or ("dark" if owner == "bright" else "bright")
    return _done(query, ask, pair, lengths, places, "" if gap_asked else wanted or "")


def _done(query: Query, ask: Ask, pair: Pair, lengths: list[Fact], places: tuple[float, float], wanted: str) -> Solution:
    unit, (near, far) = preferred_unit(query, ask.unit), places
    there = near if wanted == "bright" else far
    whole = marks.distance(there, unit), marks.distance(far - near, unit, "between")
    if wanted == "dark" and _SO_MUCH_OF_IT.search(query.text):
        whole = whole[1], whole[0]
    answers = whole if wanted else (marks.distance(far - near, unit, "between"),)
    lead = f"{speak_length(there, unit)} from the light." if wanted else f"{speak_length(far - near, unit)} between the two."
    step = f"{speak_length(near, unit)} to {speak_length(far, unit)}: {falloff_stops(near, far):+.2f} stops"
    return Solution(answers=answers, used=tuple(dict.fromkeys((*lengths, *pair.used, *query.all("film_speed"), *query.all("shutter"), *query.all("rows")))), topic="falloff", lead=lead, working=(step,))


_SO_MUCH_OF_IT = Pattern(r"\bhow (?:many (?:metres|meters|feet|foot|yards|cm|centimetres|inches)|much) of (?:the |my |it\b)?(?! light)[a-z]+\b", re.I)
"""Of what runs away from the light, so much lies before that place: "how many metres of table are there before …"."""


def _between_two(pair: Pair, question: str) -> bool:
    """"how far is she from the wall": both are named, and no lamp."""
    words = _names(question)
    return bool(words & pair.bright) and bool(words & pair.dark) and not _FROM_LAMP.search(question)


def _which(pair: Pair, question: str) -> str | None:
    """Which of the two is asked of."""
    if pair.bright <= _OF_NOW | _OF_BEFORE and pair.bright:
        then = _THEN.search(question) is not None
        now = not then and _NOW.search(question) is not None
        if now == then:
            return None
        return "bright" if (pair.bright == _OF_NOW) == now else "dark"
    if "stood" in pair.bright | pair.dark:
        return _side_of("set" if _SET_ASKED.search(question) else "stood", pair)
    words = _names(question)
    meant = words.union(*(_MEANT_BY.get(word, frozenset()) for word in words))
    bright, dark = bool(meant & pair.bright), bool(meant & pair.dark)
    if not bright and not dark and words <= _SOMEBODY and bool(pair.bright) != bool(pair.dark):
        return "bright" if pair.bright else "dark"  # "the farthest is a stop darker. How far away is she?"
    if not bright and not dark and words & _ROWS_NAMED and {"frontrow", "backrow"} <= words | pair.bright | pair.dark:
        return "dark" if pair.bright else "bright"  # of two rows the one that is not named is the other
    if not bright and not dark and _NOUN_ASKED.search(question) and bool(pair.bright) != bool(pair.dark) and pair.used[0].quantity == "aperture":
        return "dark" if pair.bright else "bright"  # named in the question only: "how far is the curtain if it reads f/5.6 and she f/11"
    return None if bright == dark else "bright" if bright else "dark"


_SET_ASKED = Pattern(r"\b(?:what|which) distance (?:had|did|was|have|is)\b[^?]*\b(?:set|work\w* out|figured|expos\w+|calculat\w+|reckon\w*|flash (?:right|set))\b|\bhow far (?:away )?(?:had|did|was|have) (?:i|we|the flash|it)\b[^?]*\b(?:set|worked out|figured|calculated) (?:it |the flash |the exposure )?for\b", re.I)


def _side_of(word: str, pair: Pair) -> str:
    return "bright" if word in pair.bright else "dark"


_ROWS_NAMED = frozenset({"frontrow", "backrow"})
_NOUN_ASKED = Pattern(r"\b(?:is|was|are|were|stands?|hangs?|sits?) (?:the|my|our|that) (?!light|lamp|flash|strobe|head|key|softbox)[a-z]+", re.I)
_MEANT_BY = {
    "she": frozenset({"woman", "girl", "lady", "bride", "mother", "daughter", "sister", "aunt", "grandmother", "queen", "actress", "bridesmaid"}),
    "he": frozenset({"man", "boy", "groom", "father", "son", "brother", "uncle", "grandfather", "king", "actor"}),
}
_FROM_WHOM = Pattern(r"(?:\s*(?:away )?(?:from|off|to|of)? ?(?:the|my|her|his|him|them)? ?[a-z]*)?", re.I)


def _owner(query: Query, pair: Pair, length: Fact, wanted: str | None) -> str | None:
    """Which of the two stands at the place that is told."""
    if pair.bright <= _OF_NOW | _OF_BEFORE and pair.bright:
        before = query.text[: length.start]
        until = _UNTIL.search(before) is not None
        now, then = until or _TO.search(before) is not None or _STILL.match(query.text, length.end) is not None, not until and _FROM.search(before) is not None
        return None if now == then else "bright" if (pair.bright == _OF_NOW) == now else "dark"
    if "stood" in pair.bright | pair.dark:
        return _side_of("stood" if _SET_ASKED.search(query.text) else "set", pair)
    for beside in (_names(_clause(query.text, length.start)), _names(_FROM_WHOM.match(query.text[length.end :]).group())):  # type: ignore[union-attr]
        bright, dark = bool(beside & pair.bright), bool(beside & pair.dark)
        if bright != dark:
            return "bright" if bright else "dark"
        if bright:
            return None
    if wanted is not None:
        return "dark" if wanted == "bright" else "bright"
    return "bright" if pair.dark and not pair.bright else "dark" if pair.bright and not pair.dark else None
