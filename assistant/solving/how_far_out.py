"""How far out: stops over or under, from what was set and what would have been right.

"set f/5.6, it called for f/11" · "GN 80 feet at 20 feet, and I had it on f/8" · "the box claims 33,
my test says f/8 at 3 m". Plus is more light than was needed, or than was claimed.
"""

from __future__ import annotations

import math
import re

from assistant.answer import Assumed
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, is_shutter_mark, shutter_difference_stops, speak_stops
from assistant.solving import bracket_ends, flash, marks, room_adds
from assistant.solving.solution import Solution, needs

_OUT = Phrasings(r"\bhow (?:many stops|far|much|badly|thin|dense|many)\b[^?.]{0,40}\b(?:out|over|under|off|wrong|short|thin|dense|dark|bright|light|hot|over ?exposed|under ?exposed|miss\w*|too little|too much)\b|\bstops? (?:out|over|under|off|wrong|short)\b|\b(?:over|under)(?:[- ]?exposed)?(?: is (?:it|that)| am i| was i| are they)?\W*(?:and )?by (?:how|what)"
               r"|\b(?:where|how) (?:does|do|will|would|did|is|are)\b[^.?]{0,40}\b(?:lands?|come|comes|coming|falls?|end|ends|ended|sits?|lies?|lying|turn|finish|stand|left)\b|\bhow (?:many stops|far|much)\b[^?.]{0,40}\b(?:low|high|down|up)\b|\bwhere(?:'s| is)? [^.?]{0,30}\b(?:lands?|comes?|falls?|ends?|sits?|lies)\b|\bstops?\W*$")
"""Asked how far out it is, or where it lands."""
_NO_MISS = Pattern(r"\b(?:turn|dial|knock|wind|power (?:it |the flash )?(?:down|up)|bounc\w*|umbrella|softbox|brolly|diffus\w*|gel|costs?|loses?|eats?|bracket\w*|latitude|get away)\b")


_WHICH_FILM = Pattern(r"\bwhich\b[^.?!]{0,40}\b(?:faster|slower|quicker|more sensitive|less sensitive)\b", re.I)
"""Two films weighed, and nothing that was out."""


def solve(query: Query) -> Solution | None:
    """Stops by which an exposure, or a maker's figure, was out; None where nothing is told to be out."""
    if query.claim:
        return None
    if _WHICH_FILM.search(query.text):
        return None
    if (best := bracket_ends.best_frame(query)) is not None:
        return best
    stops = query.asks_for("stops")
    for early in (room_adds.both_over, room_adds.on_top, _still_short, _left_open) if stops else ():
        found = early(query)
        if found is not None:
            return found
    if stops and (found := _role_over(query)) is not None:
        return found
    if query.cues & {"front", "back", "backdrop", "ambient", "bounce", "zoom"}:
        return None
    for rule in (_set_and_needed, _film_slipped, _two_guides, _against_the_maker, _against_the_guide) if stops else (_put_right,):
        found = rule(query)
        if found is not None:
            return found
    return None


def _spoken(value: float, used: tuple[Fact, ...], assumed: tuple[Assumed, ...] = (), working: tuple[str, ...] = ()) -> Solution:
    lead = "Right on" if abs(value) < 0.05 else "That is over" if value > 0 else "That is under"
    return Solution(lead=lead, answers=(marks.stops(value),), used=used, assumed=assumed, working=working, topic="change")


# --- a light against what it is to read --------------------------------------------------------------

_AS_IT_IS = r"(?:at present|at the moment|now|right now|currently|so far|as it is|as it stands|today)"
_IS_NOW = Pattern(rf"\b{_AS_IT_IS}\b[^.;?\d]{{0,30}}$", re.I)
_METERED = Pattern(r"\b(?:meter|it|reading)(?:'s)? (?:only |just )?(?:says?|reads?|reading|shows?|gives?|gets?|is|at)(?: only| just| about)?\s*$", re.I)
_AFTER_NOW = Pattern(rf"^\W*(?:only |there )?{_AS_IT_IS}\b", re.I)


def _still_short(query: Query) -> Solution | None:
    """"the paper is to read two stops over f/16, at present it reads f/22": by how many stops it must still be raised."""
    said, read = query.last("relation"), query.all("aperture")
    if said is None or said.cue not in ("less", "more") or len(read) != 2 or any(query.has(q) for q in ("guide_number", "distance", "shutter")):
        return None
    now = [f for f in read if _IS_NOW.search(query.text[: f.start]) or _AFTER_NOW.match(query.text[f.end :])]
    if not now and said.to == "aperture":  # "a stop over f/8; the meter says f/11"
        wanted = min((f for f in read if f.start >= said.end), key=lambda f: f.start, default=None)
        now = [f for f in read if f is not wanted and _METERED.search(query.text[: f.start])]
    if len(now) != 1:
        return None
    base = next(f for f in read if f is not now[0])
    value = abs(said.value) * (1 if said.cue == "more" else -1) - aperture_difference_stops(now[0].value, base.value)
    lead = f"{speak_stops(abs(value)).capitalize()} {'more' if value > 0 else 'less'} light ({value:+.2f})." if abs(value) > 0.05 else "It is there already."
    return Solution(answers=(marks.stops(value, said.of or None),), used=(said, *read), topic="relations", lead=lead)


# --- the time it was open against the time it needs ----------------------------------------------------

_NEEDS = Pattern(
    r"\b(?:needs?|needed|need|wants?|wanted|call(?:s|ed)? for|ask(?:s|ed)? for|takes?|requires?|would be|should (?:have|get|be)|deserves?|(?:meter|reading|table|sum)s? (?:says?|said|gives?|gave|reads?|shows?|was|is)|(?:proper|correct|right|normal|full)(?:ly)? (?:time|exposures?|exposed|at|in|with|after)|meters?(?: at)?|metered(?: at| time)?)\b")
_NEEDED_AFTER = Pattern(r"^[^.;?,]{0,30}\b(?:(?:is|was|were|gives|makes|would(?:'ve| have)? be(?:en)?|to be) (?:the |a |it )?(?:right|correct|proper|needed|wanted|called for|normal)|would (?:do|suit|be it)|(?:to be|comes? out) (?:right|correct))\b")
_GETS = Pattern(r"\b(?:open|hold|held|keep|kept|leav\w+|left|gets?|got|giv\w+|gave|shoot\w*|shot|set|us(?:e|ed|ing)|i'm (?:at|on)|im (?:at|on)|stay\w*|drag\w*|only|just|cut|close[ds]?|stopped|(?:popping|pops|flash\w*|firing|painting|walk\w*|exposure|sequence)(?: \w+){0,3} (?:takes?|took|lasts?|lasted|is|are)|done|exposed|exposing)\b")
_OF_THE_LIGHT = ("guide_number", "relation", "stops", "nd", "factor", "filter_loss", "loss", "exponent", "exposure_value", "distance")


def _left_open(query: Query) -> Solution | None:
    """"open for 15 s while I pop, the hill by itself needs a minute": two stops under."""
    times = [f for f in query.facts if f.quantity in ("shutter", "time") and not f.bad and f.value > 0]
    if len(times) != 2:
        return None
    lower = query.text.lower()
    if not _OUT.found_in(lower) or any(query.has(q) for q in _OF_THE_LIGHT) or len({f.value for f in query.all("film_speed")} | {f.at_iso for f in query.facts if f.at_iso}) > 1:
        return None
    if _FROM_ONE.search(lower[: times[0].start]) and _TO_THE_OTHER.match(lower[times[0].end : times[1].start]):
        return None  # "dragged from 1/125 to 1/15": a change, and neither of them is needed
    if _INTO.search(lower[times[0].end : times[1].start]):
        return None  # "the table turns 30 s into 90": both are its own
    stops, needed = query.all("aperture"), [f for f in times if _is_needed(f, times, lower)]
    if len({f.value for f in stops}) > 1:
        return None
    if len(needed) != 1:
        got = [f for f in times if _is_needed(f, times, lower) is False]
        needed = [f for f in times if f not in got] if len(got) == 1 and not needed else []
    if len(needed) != 1:
        return None
    was = times[0] if times[1] is needed[0] else times[1]
    exact = not (is_shutter_mark(was.value) and is_shutter_mark(needed[0].value))
    value = math.log2(was.value / needed[0].value) if exact else shutter_difference_stops(needed[0].value, was.value)
    return replace(_spoken(value, (was, needed[0], *stops, *query.all("film_speed")), working=(f"log2 of {was.value:g} / {needed[0].value:g}",)), topic="ambient")


_FROM_ONE = Pattern(r"\bfrom (?:a |an |the )?$")
_INTO = Pattern(r"\b(?:into|becomes?|out of|turns? to)\b")
_TO_THE_OTHER = Pattern(r"\W*(?:all the way |right |back |down |up |over |on )*to\b")


def _is_needed(fact: Fact, times: list[Fact], lower: str) -> bool | None:
    """Whether a time is what the light needs, or what it gets; None where no word says so. The word next to it decides; of a time kept from a sentence before, whose it is."""
    if fact.origin != "said":
        return True if fact.of == "ambient" else None
    if _NEEDED_AFTER.match(lower[fact.end : min([t.start for t in times if t.start > fact.start], default=len(lower))]):
        return True
    before = _before(fact, times, lower)
    clause = before[max((m.end() for m in _CLAUSE_END.finditer(before)), default=0) :]
    needs_at, gets_at = (max((m.end() for m in pattern.finditer(clause)), default=-1) for pattern in (_NEEDS, _GETS))
    return None if needs_at < 0 and gets_at < 0 else needs_at >= gets_at


_CLAUSE_END = Pattern(r"[.;?!](?=\s|$)")


# --- one setting against another ---------------------------------------------------------------------

_NEEDED = Pattern(r"\b(?:call(?:ed|s|ing) for|want(?:ed|s)|need(?:ed|s)|ask(?:ed|s) for|should(?:'ve| have| of)? (?:been|used|read|be|had|set|shot)|supposed to be|meant|instead of|rather than|not|right (?:one |stop |setting )?(?:was|is)|correct (?:one |stop |setting |exposure )?(?:was|is)|(?:meter|reading|sum|card|table|it) (?:said|says|gave|read|reads|was for|showed))\b[^.,;?\d]{0,18}$")
_WAS_RIGHT = Pattern(r"^\W*(?:was|is|would(?:'ve| have)? been|were) (?:the )?(?:right|correct|wanted|needed|called for|what (?:it|i|she|he) (?:needed|wanted|should)|proper)\b")
_SET = Pattern(r"\b(?:set|left|shot|shoot|shooting|had|used|put|stuck|stayed|on|at|fired|opened|stopped|dialled|dialed|exposed|took|did|went|was|slipped|ended|got|moved|knocked|jumped|crept)\b[^.,;?\d]{0,22}$")
_SETTINGS = ("aperture", "power", "energy")


def _set_and_needed(query: Query) -> Solution | None:
    """"I set f/5.6 by mistake but the flash called for f/11": two stops over."""
    lower = query.text.lower()
    if not _OUT.found_in(lower) or _NO_MISS.search(lower) or query.has("guide_number") or any(f.unit == "pops" and f.value > 1 for f in query.all("count")):
        return None
    for quantity in _SETTINGS:
        pair = [f for f in query.facts if f.quantity == quantity and f.of in ("", "camera") and f.origin == "said"]
        if len(pair) != 2:
            continue
        needed = [f for f in pair if _NEEDED.search(_before(f, pair, lower)) or _WAS_RIGHT.match(lower[f.end :])]
        if len(needed) != 1:
            return None
        made = pair[0] if pair[1] is needed[0] else pair[1]
        if not _SET.search(_before(made, pair, lower)) and made.start > needed[0].start:
            return None
        value = aperture_difference_stops(needed[0].value, made.value) if quantity == "aperture" else math.log2(made.value / needed[0].value)
        return _spoken(value, (made, needed[0]))
    return None


_METER = Pattern(r"\b(?:meter\w*|rating|dial\w*|worked|calculat\w+|comput\w+|reckoned|figured|set|thought(?: (?:it|this|that|they) (?:was|were|had))?|treated|rated|expos\w+|sums?|maths?|figures|flash|guide|card|table|shot (?:it )?(?:at|as))\b")
_IN_THE_CAMERA = Pattern(r"\b(?:film|rolls?|stock|sheets?|load\w*|in the (?:camera|back|holder)|holder|box|really|actually|turned out|in fact|it was)\b")
_HELD = Pattern(r"^[\s-]*(?:asa |iso |speed |b/?w |black and white |colou?r )*(?:film|roll|stock|sheets?|loaded|in the (?:camera|back|holder)|slide|neg\w*|in (?:it|there))\b(?! (?:is|was|were) (?:iso |asa )?\d)")
_RATED_AT = Pattern(r"\b(?:at|as|for|on|to)(?: (?:iso|asa|ei|a))? (?:\d+|(?:\w+ ){1,2}hundred|\w+)$")
_METER_AFTER = Pattern(r"^[\s,]*(?:is |was |being )?(?:what|where|how|the (?:speed|number|one|value)) (?:\w+ ){0,3}?(?:meter|dial|set|sums?)\w*")


def _film_slipped(query: Query) -> Solution | None:
    """"400 film with the meter left at 100": two stops over. As much as the film is faster than what was metered for."""
    speeds = [f for f in query.facts if f.quantity == "film_speed" and f.origin == "said"]
    lower = query.text.lower()
    if len(speeds) != 2 or not _OUT.found_in(lower) or len({f.value for f in query.all("aperture")}) > 1 or query.has("distance") or query.has("guide_number") or "open_up" in query.cues:
        return None
    whose = [_was_metered(f, speeds, lower) for f in speeds]
    if whose[0] is None and whose[1] is None:
        return None
    if query.has("aperture") and None in whose:
        return None
    if whose[0] is whose[1]:
        return None if _LAB.search(lower) else needs(("film_speed",), "I need to know which of the two speeds is the film's and which was metered for.", tuple(speeds), "change")
    metered, film = speeds if whose[0] or whose[1] is False else speeds[::-1]
    return _spoken(math.log2(film.value / metered.value), (film, metered, *query.all("aperture")))


_LAB = Pattern(r"\b(?:push|pull)(?:ed|ing|s)?\b")


_BELIEVED = Pattern(r"\b(?:thought|believed|assumed|treated|took)(?: (?:it|this|that|they|the film|the roll))?(?: (?:was|were|had|to be|for|as))?(?: (?:an?|iso|loaded with))* $")


def _was_metered(fact: Fact, pair: list[Fact], lower: str) -> bool | None:
    """Whether a speed is what was metered for, or the film's own; None where no word beside it says so. The word next to it decides."""
    if _BELIEVED.search(lower[: fact.start]):
        return True
    if _HELD.match(lower[fact.end :]):
        return False
    if _METER_AFTER.match(lower[fact.end :]):
        return True
    before = lower[max((f.end for f in pair if f.end <= fact.start), default=0) : fact.end]
    last = [max((m.end() for m in pattern.finditer(before)), default=-1) for pattern in (_METER, _IN_THE_CAMERA)]
    if last[0] >= 0 and _RATED_AT.search(before):
        return True  # "metered the whole roll at 400"
    return None if last == [-1, -1] else last[0] >= last[1]


def _before(fact: Fact, pair: list[Fact], lower: str) -> str:
    """What stands before a fact, back to the one before it."""
    return lower[max((f.end for f in pair if f.end <= fact.start), default=0) : fact.start]


# --- put right -------------------------------------------------------------------------------------------

_ASIDE = r"(?:\W+(?:by|about|maybe|roughly|some|perhaps|i'?d say|i would say|i think|i reckon|i guess|call it|say|around|a good|only|just|all of|probably))*\W*"
_CAME_OUT = Pattern(
    r"\b(?:c[ao]mes? (?:out|back|up)|turned out|looked|looks|printed|was|were|is|are|i was|i am|i'm|we are|we're|it's|ended up|(?:negs?|negatives?|frames?|slides?|roll|shots?|prints?|pictures?|chromes?)(?= ))"
    r"(?: (?:about|around|all|only|roughly|a good|still|just|by|too|a bit|very|rather))*(?:\W*\b(?P<was>thin|dark|under\w*|short|over\w*|dense|bright|light|hot|heavy|pale))?(?:\W+(?:at|on|with) f\W?\d[\d.]*)?" + _ASIDE + "$")
"""What a result came out as, before its stops: "came out thin, I'd say" one stop."""
_GOT = Pattern(
    r"(?:^|[.;:!]\s+)(?:(?!\b(?:what|which|how|where|should|could|can|want\w*|wish\w*|like|need\w*|must|until|till|so|if|let|to|for|i'd|me)\b)[^.;:!?]|\.(?=\d)){0,60}?"
    r"(?:\b(?P<was>)(?:reads?|reading|metered|meters|shows?|showed|get|gets|got|gives?|gave|measures?|measured|puts?|leaves?|left|makes?|made)(?: (?:me|us|it|her|him|them|out|the (?:exposure|picture|frame)))?"
    r"|\b(?:full|half|quarter|eighth|1/\d+)(?: power)?,(?: and)?)" + _ASIDE + "$", re.I)
"""What a setting gives, told and not wished for: "at half power the meter reads" a stop over, "half power," a stop over."""
_OUT_AT_IT = Pattern(r"^(?:.*[.;?!]\s+)?(?P<was>)(?:(?:still|about|now|hm+|ok|damn|so|only|just|well)\W+)*(?:an?|one|two|three|half|\d[\d./]*)(?: (?:and a half|a|full|whole|third of a|thirds of a|thirds))?\W(?:stop|stops)\b(?: and an? (?:half|third|quarter))? (?:too )?(?:over|under|hot|dark|bright|short|thin|dense)\w*,? (?:at|on|with) (?:only )?$", re.I)
"""What it came out as and at which setting, in short: "a stop and a third over at half power"."""
_TOO = Pattern(r"^\W*(?:(?:of|too|all|a bit) )*(?P<way>thin|dark|under\w*|short|over\w*|dense|bright|light|hot|heavy|pale|less|more|above(?=\W*[.;?!])|below(?=\W*[.;?!])|(?<=too )(?:high|low|much|little|strong|weak))\b(?! (?:the|my|key|fill|ambient|f/?\d|what|than))")
_THAN_IT = Pattern(r"\s*(?:under|over|below|above|less than|more than|down from|short of)?\s*(?:the |my |a )?")
"""Between the stops and a setting they are counted from: "what power is two stops under" a quarter: nothing came out wrong."""
_LOOKS = frozenset({"dark", "ligh", "brig", "pale"})
_A_NEGATIVE = Pattern(r"\bneg(?:ative)?s?\b")
_A_SLIDE = Pattern(r"^(?!.*\bneg(?:ative)?s?\b).*\b(?:slides?|transparenc(?:y|ies)|chromes?)\b", re.S)
_OF_DENSITY = frozenset({"dens", "heav", "thin"})
"""A dense negative has had too much light, a dense slide too little."""
_BRIGHT = frozenset({"over", "dens", "brig", "ligh", "hot", "heav", "more", "pale", "abov", "high", "much", "stro"})


def _put_right(query: Query) -> Solution | None:
    """"the test at f/8 came out a stop thin: what f-stop?": opened, or turned up, by as much."""
    off = [f for f in query.facts if f.quantity in ("stops", "relation", "signed") and not f.of]
    if len(query.asks) != 1 or len(off) != 1:
        return None
    ask, lower = query.asks[0].quantity, query.text.lower()
    known = [f for f in query.facts if f.quantity == ask]
    told = {f.quantity for f in query.facts} - {"stops", "relation", "signed", "aperture", "power", "distance", "place", "remark", "preferred_unit"}
    if not known or len({f.value for f in known}) != 1 or told or query.mentioned or len(query.all("distance")) > 1:
        return None
    way = _TOO.match(lower[off[0].end :]) or _TOO.match(off[0].said.strip().lower().split()[-1] if off[0].cue else "")
    came = _CAME_OUT.search(lower[: off[0].start]) or _GOT.search(lower[: off[0].start]) or _OUT_AT_IT.match(lower[: known[0].start])
    if came is None or known[0].of or way is None and not came["was"] or known[0].start >= off[0].end and _THAN_IT.fullmatch(lower[off[0].end : known[0].start]):
        return None
    look = way["way"] if way is not None else came["was"]
    if look[:4] in _LOOKS and _A_NEGATIVE.search(lower):
        return None  # a dark negative has had too much light, its print too little: which of them is meant is for the person to say
    bright = (look[:4] in _BRIGHT) is not (look[:4] in _OF_DENSITY and _A_SLIDE.search(lower) is not None)
    over = abs(off[0].value) * (1.0 if bright else -1.0)
    value = known[0].value * 2.0 ** (over / 2 if ask == "aperture" else -over)
    others = tuple(f for f in query.facts if f.quantity in ("aperture", "power", "distance") and f.quantity != ask)
    answer = marks.aperture(value) if ask == "aperture" else marks.power(value)
    return Solution(answers=(answer,), used=(*known, off[0], *others), topic="change", working=(f"{'less' if over > 0 else 'more'} light by {abs(over):g} stops",))


# --- against a guide number -----------------------------------------------------------------------------

_CLAIMED = Pattern(r"\b(?:box|maker|makers|manufacturer|claim\w*|book|booklet|advert\w*|sticker|label|spec\w*|brochure|leaflet|paper|manual|says|said|printed|quoted|rated|sold as|how far (?:off|out) is (?:the|its|my|this|that) (?:gn|guide)|supposed|catalogue|instructions)\b")
_TESTED = Pattern(r"\b(?:test\w*|came out (?:right|best|well)|(?:was|is|were|looked|exposed) (?:right|correct|best|spot on|perfect|good)|right at|correct at|measured|metered|reads?|meter (?:says|said|reads|gives))\b")
_WEAKER = Pattern(r"\b(?:weaker|short(?: of)?|less|below|under|off|out|down|dimmer|stronger|better|lower)\b")
_BOASTS = Pattern(r"\b(?:optimistic|over-?rat\w*|exaggerat\w*|generous|boast\w*|too high|inflat\w*|overstat\w*|flatter\w*|oversold|oversell\w*|lying|lie|lies|fib\w*)\b")


def _by_the_guide(query: Query) -> tuple[float, Fact, Solution] | None:
    """The aperture the guide number gives, the one that was told, and how the first was found."""
    guides, stops, places = query.all("guide_number"), query.all("aperture"), query.all("distance")
    others = any(query.has(q) for q in ("stops", "relation", "ratio", "exposure_value", "path", "loss"))
    if not (len(guides) == len(stops) == len(places) == 1) or others or places[0].of or len(query.all("film_speed")) > 1:
        return None
    told = stops[0]
    found = flash.solve(replace(query.with_facts(f for f in query.facts if f is not told and not _is_the_carton(f)), asks=(Ask("aperture"),)))
    if found is None or found.status != "answered" or not found.answers:
        return None
    return float(found.answers[0].value), told, found


def _is_the_carton(fact: Fact) -> bool:
    """"the box claims": what the flash came in, no softbox."""
    return fact.quantity == "modifier" and fact.unit == "softbox" and fact.said.strip().lower().removeprefix("the ") == "box"


def _against_the_maker(query: Query) -> Solution | None:
    """"the box claims GN 33 metres, f/8 at 3 m came out right": what the flash gives against what is claimed."""
    lower = query.text.lower()
    boasts = _BOASTS.search(lower) is not None
    if not _TESTED.search(lower) or not (boasts or _CLAIMED.search(lower) and _WEAKER.search(lower)):
        return None
    found = _by_the_guide(query)
    if found is None:
        return None
    claimed, told, by = found
    value = 2 * math.log2(told.value / claimed)
    lead = "The claim is high by" if boasts and value < 0 else "Weaker by" if value < 0 else "Stronger by"
    return replace(_spoken(-value if boasts else value, (*by.used, told), by.assumed, (f"the claim would give f/{claimed:.3g}, the test f/{told.value:g}",)), lead=lead)


_FOUND = Pattern(r"\b(?:test\w*|get|got|gives?|gave|measured?|real(?:ly|ity)?|actual(?:ly)?|true|truth|comes? out|came out|works? out|worked out)\b")
_CLAIMS = Pattern(r"\b(?:claim\w*|says|said|promis\w*|rated|quoted|box|maker\w*|book|label|spec\w*|printed|advert\w*|sold)\b[^.,;\d]{0,30}$")


def _two_guides(query: Query) -> Solution | None:
    """"they claim GN 60 m, I get GN 42 m: stops short?"."""
    guides, lower = query.all("guide_number"), query.text.lower()
    claimed = [f for f in guides if _CLAIMS.search(_before(f, guides, lower))]
    if len(guides) != 2 or len(claimed) != 1 or not _FOUND.search(lower) or not (_WEAKER.search(lower) or _BOASTS.search(lower)) or query.has("distance") or query.has("aperture"):
        return None
    found = guides[0] if guides[1] is claimed[0] else guides[1]
    if {f.at_iso for f in guides} != {claimed[0].at_iso} or len({f.unit for f in guides if f.unit}) > 1:
        return None
    value = 2 * math.log2(found.value / claimed[0].value)
    boasts = _BOASTS.search(lower) is not None
    lead = "The claim is high by" if boasts and value < 0 else "Weaker by" if value < 0 else "Stronger by"
    return replace(_spoken(-value if boasts else value, (found, claimed[0])), lead=lead)


_ROLES = ("hair", "rim", "kicker", "accent", "backdrop", "background")
_OVER_IT = Pattern(r"\bhow (?:many stops|far|much)\b[^?]{0,60}\b(?:over|above|under|below|exceeds?|brighter|hotter|darker|too (?:bright|hot|strong|weak|dark))\b|\b(?:over|under|above|below|exceeds?|brighter|hotter)\b[^?]{0,40}\bby how (?:many|much)\b|\bby how many stops\b[^?]{0,60}\b(?:over|above|under|below|exceeds?|brighter|hotter|darker|burnt?|burns?)\b")


def _role_over(query: Query) -> Solution | None:
    """"the rim is a GN 60 flash at half power, 3 feet off, and I'm shooting at f/8: how far over?": what it reads against what the lens is set to."""
    of = next((f.of for f in query.all("guide_number")), "")
    set_at = {f.value for f in query.all("aperture") if f.of in ("", "camera", "key")}
    if of not in _ROLES or len(set_at) != 1 or len(query.all("guide_number")) != 1 or not _OVER_IT.search(query.text.lower()):
        return None
    told = next(f for f in query.all("aperture") if f.of in ("", "camera", "key"))
    own = query.with_facts(replace(f, of="") if f.of == of else f for f in query.facts if f.quantity != "aperture" and f.of in ("", of, "film", "camera"))
    found = flash.solve(replace(own, asks=(Ask("aperture"),), claim=False, mentioned=()))
    if found is None or found.status != "answered" or found.answers[0].quantity != "aperture":
        return None
    value = 2 * math.log2(float(found.answers[0].value) / told.value)
    used = tuple(f for f in query.facts if f.quantity in ("guide_number", "distance", "power", "film_speed", "loss", "modifier") and f.of in ("", of)) + tuple(query.all("aperture"))
    return replace(_spoken(value, used, found.assumed, (f"f/{float(found.answers[0].value):.3g} there, and the lens at f/{told.value:g}",)), answers=(marks.stops(value, of),))


def _against_the_guide(query: Query) -> Solution | None:
    """"GN 80 feet, 20 feet away, and I had it on f/8": what was set against what the guide number gives."""
    lower = query.text.lower()
    if not _OUT.found_in(lower) or _NO_MISS.search(lower) or _TESTED.search(lower) or _BOASTS.search(lower):
        return None
    found = _by_the_guide(query)
    if found is None:
        return None
    right, told, by = found
    return _spoken(2 * math.log2(right / told.value), (*by.used, told), by.assumed, (f"f/{right:.3g} would have been right",))
