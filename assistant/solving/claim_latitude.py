"""Whether an exposure that went wrong is within what one's own film was found to take: "it takes three over and one under; f/16 was right and I shot at f/8"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, film_speed_difference_stops, shutter_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_words import number, plain
from assistant.solving.film import box_and_rated
from assistant.solving.solution import Solution, needs

WITHIN = Pattern(
    r"\b(?:am i|are we|is (?:it|that|this|he|she|(?:the|my|this|that) \w+)|are (?:those|these|they|(?:the|my) \w+)|was (?:it|that|i)|does (?:that|it|this)|do (?:i|we|they)|have i|did i)(?: (?:still|just|all|safely|stay|fall|keep|kept|frames?|negs?|negatives?))* (?:inside|within|in range|fall within|covered|ok|okay|safe|usable|printable|all right|fine)\b"
    r"|\bwould you call (?:it|that|this) (?:within|inside|ok)\b"
    r"|\b(?:will|would|does|do|should|could|can) (?:it|that|this|they|these|those|(?:the|my|this|that) \w+)(?: (?:still|just|all|safely|even))* (?:prints?|scans?|do|hold(?: up)?|survive|pass|come out|be (?:ok|okay|fine|safe|usable|printable|all right|within|inside|good))\b"
    r"|\b(?:can|could|will|would) (?:i|we|he|she|they|you|the (?:lab|shop|printer))(?: (?:still|just|safely|even))* (?:print|scan|use|save|rescue)\b"
    r"|(?:^|[.,;:?!-] ?)(?:(?:so|and|but|still|just|is it|are they|is that|was it|all|any) )*(?:safe|ok|okay|usable|printable|fine|(?:within|inside)(?: (?:that|it|this|the limits?))?|all right|alright|in range|good enough)(?: (?:or not|then|still))?\W*$"
)
"""Whether something lies within a limit, put up for a yes or a no."""
_SOMEBODY = Pattern(r"\b(?:is|are|was|were|does|do|did|will|would) (?:(?!(?:not|never|no|out|outside|beyond|past)\b)(?:[\w/'-]|\.(?=\d))+ ){1,10}?(?:inside|within)\b")
_ASKED_FOR = Pattern(r"\b(?:what|which|how|where|who)(?:'s)?\b(?:[^.?!;]|\.(?=\d))*$")


def is_within(said: str) -> bool:
    """Whether somebody or something is asked to be within the limit; "what is the widest stop that stays within it" asks for a value."""
    if WITHIN.search(said) is not None:
        return True
    found = _SOMEBODY.search(said)
    return found is not None and _ASKED_FOR.search(said[: found.start()]) is None


_FILM = Pattern(r"\b(?:film|stock|negs?|negatives?|slides?|chrome|transparenc\w+|roll|emulsion)\b")
_ONE = (r"(?:(?P<{0}half>half a|a half|half)|(?P<{0}part>(?:a|one|1|two|2) thirds?(?: of an?)?|[12]/3(?: of an?)?|three quarters(?: of an?)?)|(?P<{0}n>\d+(?:\.\d+)?|an?|one|two|three|four|five)(?P<{0}and> and a half| 1/2|½)?)(?: (?:full |whole )?stops?)?(?P<{0}late> and a half)?")
_OVER, _UNDER = r"(?:too much |of )?(?:over(?:exposure)?|more|plus|hot)\b", r"(?:too little |of )?(?:under(?:exposure)?|less|minus|dark)\b"
_AND = r"[,;/]? ?(?:(?:and|or|but|to|only|just|up|about|through|at most|no more than|not more than)[ ,]+)*"
_SPANS = (
    Pattern(rf"\b{_ONE.format('o')} {_OVER}{_AND}{_ONE.format('u')} {_UNDER}"),
    Pattern(rf"\b{_ONE.format('u')} {_UNDER}{_AND}{_ONE.format('o')} {_OVER}"),
    Pattern(rf"\b{_ONE.format('b')}(?: (?:of latitude|of leeway|of error))? (?:(?:either|each|both|in either|in each|in both) (?:ways?|sides?|directions?)|either side|up or down|over or under|and (?:nothing|no|not a bit|not) (?:more|further)|at (?:the )?most|and that's (?:it|all)|and that is (?:it|all))"),
    Pattern(rf"(?:plus or minus|plus/minus|±|\+/-) ?{_ONE.format('b')}"),
)
_TAKES = Pattern(r"\b(?:(?:is|are|it's|they're) (?:still |all |usually |quite )?(?:fine|ok|okay|safe|good|usable|all right)|(?:fine|ok|okay|safe) (?:from|for|up to|with|between)|surviv\w*|live with|forgiv\w*|tak(?:es?|ing)|holds?|tolerat\w*|toleranc\w*|latitude|stands?|good for|swallows?|copes?|puts? up with|allows?|bears?|within|handles?)\b")

_OF_A_MARK = 0.05
"""Stops by which marks of a scale differ from what they are called; of places it is counted outright."""
_FORGIVES = Pattern(rf"\b(?:(?:i|we) (?:only |just )?(?:allow|accept|permit)(?: myself| ourselves)?|forgiv\w*|tolerat\w*|latitude of|tolerance of|leeway of)(?: (?:me|you|us|only|just|about|no more than|an error of|up to|at most))* {_ONE.format('b')}(?:(?<=stop)|(?<=stops))(?! (?:(?:of |too much |too little )?(?:over|under|more|less|plus|minus|too)|and an? (?:half|third|quarter)))")
_FORGIVEN = Pattern(rf"\b{_ONE.format('b')}(?:(?<=stop)|(?<=stops)) (?:(?:that |which )?(?:(?:the|my|this|slide|negative|colou?r|film|stock|chrome|roll) )+(?:will |would |can )?(?:forgiv|tolerat|tak)es?\b|is (?:all|the most|the limit|as much as)(?: of)?(?: that)? (?:he|she|it|they|(?:(?:the|this|that|my|our) )?(?:\w+ ){{0,2}}(?:film|stock|chrome|slides?|emulsion|roll|lab|editor))(?:'ll|'d| will| would| can)? (?:forgiv|tolerat|tak|stand|bear|accept|allow|print|put up with|live with)(?:e?s?)\b)(?! (?:over|under|more|less))")
"""A limit with no way told: either, on slides; of a negative film it may be that of too much light alone."""
_OF_ERROR = Pattern(rf"\b{_ONE.format('b')} of (?:latitude|leeway|error|tolerance|slack|play)\b(?! (?:over|under|either|each|both))")
_INSIDE = Pattern(rf"\b(?:within|inside|(?:off|out|wrong) by (?:no more than|at most)) {_ONE.format('b')}(?:(?<=stop)|(?<=stops)|(?<=half))(?! (?:over|under|of|too|more|less|each|either|both)\b)")
"""How near one wants to be, whatever it is shot on: "I want to be within half a stop"."""
_SLIDES = Pattern(r"\b(?:slides?|chrome|transparenc\w+|reversal)\b")

_ONE_WAY = ((Pattern(rf"\b{_ONE.format('o')} {_OVER}"), "over", 1), (Pattern(rf"\b{_ONE.format('o')} {_UNDER}"), "under", -1))


def asks_of_latitude(said: str) -> bool:
    """Whether a limit of the film is told, and something put up against it: "good for half a stop either way. f/11 was due, I shot f/8. safe?"."""
    return _FILM.search(said) is not None and is_within(said) and _TAKES.search(said) is not None and _OPEN.search(said) is None and any(span.search(said) for span in (*_SPANS, _FORGIVEN))


def says_what_it_takes(text: str) -> bool:
    """"and on a film that bears a whole stop?": a limit of the film, and no exposure that went wrong."""
    said = plain(text)
    return _FILM.search(said) is not None and _TAKES.search(said) is not None


_OPEN = Pattern(r"\b(?:what|which|how)\b")


def claim_of_latitude(query: Query) -> Solution | None:
    """Within the latitude that is told, or not: the stops over or under against it."""
    said = plain(query.text)
    of_a_film = _FORGIVEN.search(said) is not None or _FILM.search(said) is not None and _TAKES.search(said) is not None
    inside = _INSIDE.search(said) if any(told_right(f, said) or told_due(f, said) for f in query.all("aperture") if not f.of) else None
    if not is_within(said) or not of_a_film and inside is None:
        return None
    found = next((m for pattern in (*_SPANS, _FORGIVES, _FORGIVEN, _OF_ERROR) if (m := pattern.search(said))), None) or inside
    if found is None:
        return _one_way(query, said)
    limits = found.groupdict()
    over, under = (_value(limits, "b"), _value(limits, "b")) if "bn" in limits else (_value(limits, "o"), _value(limits, "u"))
    again = [m for m in (_INSIDE.finditer(said) if found is inside else ()) if m["bhalf"] == found["bhalf"] and m["bn"] == found["bn"]]
    rest = query.with_facts(f for f in query.facts if not any(m.start() <= f.start < m.end() for m in (found, *again)) and not (f.quantity == "stops" and _THE_SAME.search(said[: f.start])))
    off = _off(rest, said)
    if off is None:
        return needs(("aperture",), "I need what would have been right and what was given.", query.facts, "claims") if not query.has("guide_number") else None
    spare = _OF_A_MARK if not rest.has("distance") else 0.01
    holds = -under - spare <= off <= over + spare
    if holds and off < 0 and found.re.pattern in (_FORGIVES.pattern, _FORGIVEN.pattern, _OF_ERROR.pattern) and _SLIDES.search(said) is None:
        return None
    state = "right" if abs(off) < 0.05 else f"{speak_stops(abs(off))} {'over' if off > 0 else 'under'}"
    limit = f"the limit is {speak_stops(over)} either way" if found is inside else f"the film takes {speak_stops(over)} over and {speak_stops(under)} under"
    lead = f"{'Yes' if holds else 'No'}. The exposure is {state}, and {limit}."
    return Solution(answers=(Quantity("claim", holds), *((marks.stops(off),) if abs(off) > 0.05 else ())), used=query.facts, topic="claims", lead=lead)


def error_told(query: Query) -> Fact | None:
    """The one figure of stops that is no limit: "it holds half a stop each way, I was two thirds over"."""
    said = plain(query.text)
    found = next((m for pattern in _SPANS if (m := pattern.search(said))), None) if _FILM.search(said) and _TAKES.search(said) else None
    out = [f for f in query.facts if f.quantity in ("stops", "loss", "relation") and found is not None and not found.start() <= f.start < found.end()]
    return out[0] if len(out) == 1 and _told(out[0], said) is not None else None


def _one_way(query: Query, said: str) -> Solution | None:
    """"it copes with two stops over": only the one way is told, and only an exposure that went that way is held against it."""
    for span, way, sign in _ONE_WAY:
        every = list(span.finditer(said))
        limit = [m for m in every if _TAKES.search(said, max(said.rfind(mark, 0, m.start()) for mark in ".,;?") + 1, m.start())]
        found = limit[0] if limit else every[0] if len(every) == 1 else None
        off = _off(query.with_facts(f for f in query.facts if not found.start() <= f.start < found.end()), said) if found else None
        if found is None or off is None or off * sign < 0.05:
            continue
        most = _value(found.groupdict(), "o")
        holds = abs(off) <= most + 0.05
        lead = f"{'Yes' if holds else 'No'}. The exposure is {speak_stops(abs(off))} {way}, and the film takes {speak_stops(most)} {way}."
        return Solution(answers=(Quantity("claim", holds), marks.stops(off)), used=query.facts, topic="claims", lead=lead)
    return None


def _value(groups: dict[str, str | None], of: str) -> float:
    part, n = groups[f"{of}part"], groups[f"{of}n"]
    half = 0.5 if groups[f"{of}and"] or groups[f"{of}late"] else 0.0
    if groups[f"{of}half"]:
        return 0.5
    if part:
        return 0.75 if "quarter" in part else 2 / 3 if re.match(r"two|2", part) else 1 / 3
    return number(n or "1") + half


_SHOT = Pattern(r"\b(?:shot|exposed|left|set|took|made|fired|used|had|gave|was on|was at|were at|at)\b[^.;]{0,30}$")
_SHOULD = Pattern(r"\b(?:asked|called|wanted|needed|correct|right|should(?: have|'ve| of|a)? (?:been|be)|should've|ought|due|meant|supposed|meter\w*|said|read|reads|says|wants|calls|asks)\b[^.;]{0,24}$")
_WAS_RIGHT = Pattern(r"\s*(?:was|is|were|would have been|would've been|had been)(?: the)? (?:right|correct|due|needed|wanted|called for|meant|asked for|what)\b")


_THE_SAME = Pattern(r"\b(?:that|this|the|its|those|these)(?: same| film's)? $")
"""Before a limit that is said again: "inside that half stop"."""
_RIGHT_AT = Pattern(r"\b(?:right(?:ly)?|correct(?:ly)?|properly|perfectly|spot on|perfect|exposed|set|metered|measured|meant|worked out|calculated|reckoned|aperture)\b[^.;,?!]{0,24}$")
_IN_THE_BEAM = frozenset({"", "front", "middle", "back", "subject"})


def told_right(fact: Fact, said: str) -> bool:
    """Whether it is told of this value that the exposure is right at it: "set for 3 m", "3 m was right"."""
    return _RIGHT_AT.search(said[: fact.start]) is not None or _WAS_RIGHT.match(said[fact.end :]) is not None


def told_due(fact: Fact, said: str) -> bool:
    """Whether it is told of this aperture that it was asked for: "it needed f/11"."""
    before = said[max(0, fact.start - 40) : fact.start]
    due = _SHOULD.search(before)
    return due is not None and _DONE.search(before, due.start()) is None


_DONE = Pattern(r"\b(?:shot|exposed|left|took|made|fired|used|gave|given|was on|was at|were at|had (?:it|the \w+) (?:on|at))\b")
def _by_place(query: Query, said: str) -> float | None:
    """"the flash is right at 3 m, somebody stands at 3.4": over or under by the place, where it is told for which of the two the flash was set."""
    places = [f for f in query.facts if f.quantity == "distance"]
    if len({f.value for f in places}) != 2 or len(places) != 2 or {f.quantity for f in query.facts} - {"distance", "remark", "place", "rows"} or not all(f.of in _IN_THE_BEAM and f.value > 0 for f in places):
        return None
    right = [f for f in places if told_right(f, said)]
    other = [f for f in places if f not in right]
    return 2 * math.log2(right[0].value / other[0].value) if len(right) == 1 else None


def _off(query: Query, said: str) -> float | None:
    """Stops over (plus) or under that the exposure came out; None where that is not told."""
    stops = sorted((f for f in query.facts if f.quantity == "aperture"), key=lambda f: f.start)
    stops += [replace(f, quantity="aperture") for f in query.facts if f.quantity == "number" and len(stops) == 1 and 1 <= f.value <= 64 and f.start > stops[0].end and _SHOT.search(said[: f.start])]
    speeds = sorted((f for f in query.facts if f.quantity in ("film_speed", "rated")), key=lambda f: f.quantity == "rated")
    times = [f for f in query.facts if f.quantity == "shutter"]
    told = [f for f in query.facts if f.quantity in ("stops", "loss", "relation") and f.value]
    if told:
        return _told(told[0], said) if len(told) == 1 and not (stops or speeds or times) else None
    if len(stops) == 2 and not query.has("guide_number") and len(times) < 2:
        right, shot = _in_order(stops, said)
        return aperture_difference_stops(right.value, shot.value)
    if len(stops) == 1 and query.has("guide_number", "distance"):
        from assistant.solving.flash import solve

        found = solve(replace(query, facts=tuple(f for f in query.facts if f not in stops), asks=(Ask("aperture"),), claim=False))
        value = found.answers[0].value if found is not None and found.status == "answered" else None
        return aperture_difference_stops(float(value), stops[0].value) if isinstance(value, (int, float)) else None
    if not stops and len(times) == 2:
        right, shot = _in_order(times, said)
        return shutter_difference_stops(right.value, shot.value)
    if not stops and not times and len(speeds) == 2:
        box, rated = (speeds[0], speeds[1]) if speeds[0].quantity != speeds[1].quantity else box_and_rated(speeds, said)
        return -film_speed_difference_stops(box.value, rated.value)
    return _by_place(query, said)


_IS_OUT = Pattern(r"\s*(?:stops? )?(?:too )?(?:(?P<over>over|hot|bright|dense|(?<=too )much)|under|dark|thin|short|(?<=too )little)(?:exposed)?\b")


def _told(off: Fact, said: str) -> float | None:
    """"I am two over", "I was 2/3 under": how far it is out, said outright."""
    if off.cue in ("more", "less"):
        return {"more": 1, "less": -1}[off.cue] * abs(off.value)
    way = _IS_OUT.match(said, off.end)
    return None if way is None else abs(off.value) if way["over"] else -abs(off.value)


def _in_order(two: list[Fact], said: str) -> tuple[Fact, Fact]:
    """What was right and what was shot: as told in that order, unless the words say otherwise."""
    one, other = two
    late = _WAS_RIGHT.match(said[other.end :]) is not None or _SHOULD.search(said[one.end : other.start]) is not None
    turned = late and _WAS_RIGHT.match(said[one.end :]) is None and _SHOULD.search(said[max(0, one.start - 40) : one.start]) is None
    return (other, one) if turned else (one, other)
