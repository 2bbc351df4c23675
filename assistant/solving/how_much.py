"""How much of one light is said of another: "a quarter of the light", "more than two stops brighter", "as bright as", "no darker than".

Read from the words alone: what is held against what, and what is right, is for the judges that ask here.
"""

from __future__ import annotations

import math

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import record, replace
from assistant.solving.claim_bounds import STRICT, TO_THE_DOT, bound_of, tolerance, within
from assistant.solving.claim_denial import called_wrong, denials, put_up
from assistant.solving.claim_words import number, plain
from assistant.solving.shares import shares


@record
class Said:
    """One size that is claimed. `kind`: share (`value`: log2 of it), stops, way (more or less, no size) or same; `way` +1 more, -1 less, 0 not said, as of two that are so many stops apart.

    `lost`: the share is what is gone, and `value` what that leaves; `after`: the words that follow it in its clause; `figure`: where the number of it stands, if that is elsewhere.
    """

    kind: str
    value: float
    way: int
    bound: str
    near: float
    start: int
    end: int
    after: str = ""
    lost: bool = False
    at_least: bool = False
    figure: tuple[int, int] = (0, 0)


MORE = r"(?:more|brighter|lighter|stronger|hotter|higher|greater|bigger|larger|deeper|longer|better lit|faster)"
LESS = r"(?:less|fewer|darker|dimmer|weaker|fainter|lower|smaller|shallower|thinner|shorter|slower)"
_STOPS = ("stops", "relation", "loss", "filter_loss", "signed", "power_down")
_MORE_AFTER = Pattern(rf"(?:stops?|half|thirds?|\d)?[\s-]*(?:of (?:the )?(?:light|exposure) )?(?:too )?(?:(?P<more>{MORE}|over|above|up)|(?P<less>{LESS}|under|below|down))\b")
_IN_IT = Pattern(rf"(?:(?P<more>\b(?:{MORE}|over|above))|(?P<less>\b(?:{LESS}|under|below)))\b")
_FILL = r"(?:\W+(?:the|it|her|him|his|its|my|that|room|background|backdrop|hall|light|flash|exposure|face|subject|scene|ambient|daylight|sky|window|of|on|by|for|me|us|down|up|only|just|about|exactly|roughly|nearly|over|under|than|more|less|at|least|most|no|as|much|any|to|by|then|row|back|front|a|good|full|whole)\b)*\W*$"
_LESSENS = Pattern(r"\b(?:dark\w*|dim\w*|cut\w*|costs?|los(?:e|es|t|ing)|drop\w*|fall\w*|fell|reduc\w*|weaken\w*|tak\w+|rob\w*|eat\w*|lower\w*|sinks?|knock\w*|swallow\w*|steal\w*)" + _FILL)
_RAISES = Pattern(r"\b(?:lift\w*|rais\w*|bright\w*|lighten\w*|gain\w*|com(?:es?|ing) up|rises?|adds?|increas\w*|boost\w*)" + _FILL)
_HELD = Pattern(r"\b(?:los(?:e|es|t|ing)|costs?|costing|eats?|eating|ate|swallow\w*|holds? back|held back|holding back|keeps? back|takes? away|takes? out|takes? off|takes?|took|absorb\w*|block\w*|robs?|steals?|stole|wast\w+|soaks? up|cuts? (?:off|out|away)|shuts? out|filters? out)\b(?: (?:me|us|you|it|her|him|them|the film|only|just|about|exactly|roughly|nearly|over|under|more than|less than|no more than|no less than|at least|at most|up to|fewer than|a full|fully|some|around|as much as)\b)*\W*$")
_CUT_BY = Pattern(r"\b(?:cut\w*|reduc\w*|drop\w*|fall\w*|fell|down|dim\w*|dark\w*|lower\w*|weaken\w*|less|knock\w*)\b[^.,;?]{0,40}\bby (?:only |just |about |exactly |nearly |roughly |over |more than |less than |at least |at most |no more than )*$")
_CUT_AWAY = Pattern(r"(?: of (?:the |its |my |her |all the |that )?(?:\w+ )?(?:light|exposure|flash|it|output))?(?: that \w+)?(?: is| are| gets?| was| goes| being| has been)? (?:lost|gone|held back|swallowed|eaten|absorbed|wasted|missing|soaked up|taken(?: away)?|kept back|blocked)\b")
_LETS = Pattern(r"\b(?:lets?|letting|pass\w*|transmit\w*|leav\w*|admit\w*|through|gets?|left)\b[^.,;?]{0,24}$")
_ALL_BUT = Pattern(r"\ball (?:but|except|save|bar) (?:about |only )?$")
_ABOUT = Pattern(r"\b(?:about|roughly|around|nearly|almost|approximately|some|close to|near enough)\s*(?:an? |the )?$")
_NOT_AS_SAID = Pattern(r"\b(?:almost|nearly|hardly|barely|scarcely|not quite|anywhere near|half|twice|times|thirds?|quarters?|eighths?|percent|%) $")
_NEEDS = Pattern(r"\b(?:needs?|requires?|wants?|demands?|calls? for|must have|asks? for)(?: (?:about|only|just|exactly|more than|less than|at least))* $")
_DOWN_TO_ITS_PART = Pattern(r"^(?: times| fold)? (?:less|dimmer|darker|weaker|fainter|smaller|lower|shorter|slower|as (?:weak|dark|dim|short|slow|little|faint|small|shallow|near|close))\b")
_MORE_BY_IT = Pattern(rf"^ (?:{MORE})\b")
_SAME = Pattern(r"\b(?:(?P<least>at least )?(?:just |exactly |quite |every bit )?as (?:much|bright|brightly lit|strong|deep|far|long|fast)\b(?P<what>[^,.;?]{0,40}?)\bas\b|(?:exactly |just |about )?(?:the |of the )?same (?P<noun>(?:amount of )?(?:light|daylight|ambient(?: light)?|exposure|brightness|depth(?: of (?:field|focus|sharpness))?|hyperfocal(?: distance)?))\b(?: (?:as|that))?|(?:just |exactly )?(?:equally (?:bright|strong|deep)|as good as))")
_WAY = Pattern(rf"\b(?:(?P<more>{MORE})|(?P<less>{LESS}))\b(?! than (?:about |just )?(?:twice|double|half|(?:(?:an?|one|two|three|four|five|six|eight|\d[\d.]*) )?(?:(?:and an? \w+ )?stops?|times|thirds?|quarters?|eighths?|percent|per cent|%)))")
_CLAUSE = Pattern(r"[;:?!]|[.,](?!\d)")
_NO = Pattern(r"\b(?:no|never|not any|n't any) $")
BARELY = 0.02
"""Stops by which a bound must be passed: nine parts in sixteen are more than half."""
NEAR_STOPS, NEAR_SHARE, NEAR_SAME, NEAR_ROUND = 1 / 3, 0.15, 0.15, 0.34
"""Stops within which a number of stops, a share, "the same" and a share said to be round must come."""


def claimed(query: Query) -> list[Said]:
    """The sizes put up in a claim, in the order said: stops and shares where there are any, else the same, else more or less.

    Where a text ends in a question of its own, what is said before that is told, and not put up.
    """
    said = plain(query.text)
    since = put_up(said)
    for found in (_of_stops(said, query) + _of_shares(said, query), _of_same(said), _of_way(said)):
        asked = [s for s in found if s.start >= since]
        if asked:
            return sorted(asked, key=lambda s: s.start)
    return []


def _of_stops(said: str, query: Query) -> list[Said]:
    out = []
    for fact in query.facts:
        if fact.quantity not in _STOPS or fact.origin != "said" or not fact.value or _is_told_of(said, fact, query):
            continue  # "an umbrella that loses two stops" is told
        way, by = _way_of_stops(said, fact), None
        if not way and (by := _BY.search(said, 0, fact.start)) is not None:
            way = 1 if by["more"] else -1
        if way or fact.quantity in ("stops", "loss", "relation"):
            start, end = by.span("way") if by is not None else (fact.start, fact.end)
            out.append(Said("stops", abs(fact.value), way, bound_of(said[: fact.start])[0], tolerance(said, fact.start, fact.end, NEAR_STOPS), start, end, _after(said, end), figure=(fact.start, fact.end)))
    return out + _without_unit(said, out) if out and (" and " in said or " but " in said) else out


def _without_unit(said: str, told: list[Said]) -> list[Said]:
    """"two stops off the flash and one off the window": the second in the unit of the first, which says the way too."""
    found = [m for m in _OFF_TOO.finditer(said, told[0].end) if not any(s.start < m.end() and m.start("many") < s.end for s in told)]
    return [Said("stops", number(m["many"]), told[0].way, bound_of(said[: m.start("many")])[0], NEAR_STOPS, m.start("many"), m.end("many"), _after(said, m.end("many"))) for m in found]


_OFF_TOO = Pattern(r"\b(?:and|but)\b[^.;?!,]{0,30}? (?P<many>" + r"one|two|three|four|five|six|\d(?:\.\d+)?)(?=(?: (?:off|from|of|on|onto|for|to))? (?:the |my )?(?:flash|strobe|ambient|daylight|window|room|lamps?|sky|background|light)|\W*(?:$|[.?!;]))")


def _is_told_of(said: str, fact: Fact, query: Query) -> bool:
    """Whether a loss is told with what takes it, in one clause."""
    if fact.quantity not in ("loss", "filter_loss") or not fact.unit:
        return False
    begins = max((m.end() for m in _CLAUSE.finditer(said, 0, fact.start)), default=0)
    return any(f.quantity in ("modifier", "camera_filter") and (begins <= f.start <= fact.start or 0 <= f.start - fact.end < 4) for f in query.facts) or _WHICH_TAKES.search(said[begins : fact.start]) is not None


_WHICH_TAKES = Pattern(r"^ (?:which|that|who) ")


def every(query: Query) -> list[Said]:
    """All sizes that are said, of whatever kind."""
    said = plain(query.text)
    return _of_stops(said, query) + _of_shares(said, query) + _of_same(said) + _of_way(said)


_BY = Pattern(rf"\b(?P<way>(?P<more>{MORE})|{LESS})\b[^.,;:?!]{{0,60}}?,? by (?:about |only |just |exactly |more than |less than |at least |at most |over |nearly |roughly |a good |a full )*$")
"""Before how much, where it is said last: "brighter than the other by two stops"."""


def _way_of_stops(said: str, fact: Fact) -> int:
    """+1 for stops more, -1 for stops less: by the word after them or within them, else by the verb before; 0 where neither says."""
    found = _IN_IT.search(said[fact.start : fact.end]) or _MORE_AFTER.match(said[fact.end :])
    if found is not None:
        return 1 if found["more"] else -1
    before = said[: fact.start]
    less, more = _LESSENS.search(before) is not None, _RAISES.search(before) is not None
    return 0 if less is more else -1 if less else 1


_MAY_BE_SHARES = frozenset({"power", "share", "times", "number", "factor", "count", "loss", "filter_loss", "ratio", "remark", "min_power"})


_NEARBY = 240
"""Letters to either side of a share that say what it is of: the whole text, looked at for each of a heap of shares, takes too long."""


_TURNED_TO = Pattern(r"\b(?:flash|flashgun|gun|strobe|head|lamp|unit|one|monolight|it)(?: (?:is|set|turned|down|working|firing))* (?:on|at) $")
""""The same flash on one eighth": what it is turned to, and no size of what it gives."""


_MOST_SHARES = 24
"""Shares told at once beyond which no claim is of one of them."""


def _of_shares(said: str, query: Query) -> list[Said]:
    out = []
    taken = [f for f in query.facts if f.quantity not in _MAY_BE_SHARES or "power" in f.said.lower() or f.quantity == "power" and _TURNED_TO.search(said, 0, f.start) is not None]
    told = shares(said)
    for share in told if len(told) <= _MOST_SHARES else ():
        if any(f.start < share.end and share.start < f.end for f in taken):
            continue
        before, after = said[max(0, share.start - _NEARBY) : share.start], said[share.end : share.end + _NEARBY]
        value = share.value
        if value >= 1 and _HELD.search(before) is not None:
            continue  # "holds back twice as much": no share of the light
        if _DOWN_TO_ITS_PART.match(after) and value >= 1:
            value = 1 / value
        elif _MORE_BY_IT.match(after) and value < 1:
            value += 1
        elif _DOWN_TO_ITS_PART.match(after):
            continue  # "a third less": of what, is not plain
        lost = value < 1 and (_HELD.search(before) is not None or _CUT_BY.search(before) is not None or _CUT_AWAY.match(after) is not None)
        bound = bound_of(before)[0]
        if _ALL_BUT.search(before):
            verb = _ALL_BUT.sub("", before)
            if value >= 1 or _HELD.search(verb) is None and _LETS.search(verb) is None:
                continue
            lost = _HELD.search(verb) is None
        if lost:
            value, bound = 1 - value, _OTHER[bound]
        usual = NEAR_ROUND if _ABOUT.search(before) else NEAR_SHARE
        out.append(Said("share", math.log2(value), 0, bound, tolerance(said, share.start, share.end, usual), share.start, share.end, _after(said, share.end), lost))
    return out


_OTHER = {"": "", "over": "under", "under": "over", "most": "least", "least": "most"}


def _of_same(said: str) -> list[Said]:
    return [Said("same", 0.0, 0, "", NEAR_SAME, m.start(), m.end(), _after(said, m.end()), at_least=bool(m["least"])) for m in _SAME.finditer(said) if _NOT_AS_SAID.search(said[: m.start()]) is None]


def _of_way(said: str) -> list[Said]:
    return [Said("way", 0.0, 1 if m["more"] else -1, "", STRICT, m.start(), m.end(), _after(said, m.end())) for m in _WAY.finditer(said)]


def _after(said: str, end: int) -> str:
    """The words after a size in its clause."""
    stop = _CLAUSE.search(said, end)
    return said[end : stop.start() if stop else len(said)]


def held_back(said: str, size: Said) -> bool:
    """Whether what is more or less is a loss, or a need: "costs less light", "needs twice the light"."""
    before = said[: size.start]
    if _NEEDS.search(before) is not None and _LIGHT_AFTER.match(said[size.end :]) is not None:
        return True
    return size.kind != "share" and _HELD.search(before) is not None


_LIGHT_AFTER = Pattern(r"(?: (?:of|as much|the))* (?:light|exposure|flash|power)\b")


def holds(size: Said, right: float, said: str) -> bool:
    """Whether a size is so where the light is `right` stops above what it is held against (minus: below), a "not" of its clause minded."""
    fits = _fits(size, right)
    denied = sum(a <= size.start < b for a, b in denials(said)) + (_NO.search(said[: size.start]) is not None)
    if denied % 2 and size.kind == "same" and not size.at_least and _AS_AS.match(said, size.start):
        return right < -size.near  # "not as bright as" is less
    return fits is not (denied % 2 == 1)


_AS_AS = Pattern(r"(?:just |exactly |quite |every bit )?as ")


def _fits(size: Said, right: float) -> bool:
    near = min(size.near, TO_THE_DOT) if size.bound else size.near
    if size.kind == "share":
        return within(size.bound, right - size.value, near, BARELY)
    if size.kind == "stops":
        return within(size.bound, (size.way * right if size.way else abs(right)) - size.value, near, BARELY)
    if size.kind == "same":
        return right >= -size.near if size.at_least else abs(right) <= size.near
    return right * size.way > size.near


def verdict(sizes: list[Said], rights: list[float], said: str) -> bool:
    """Whether every size of a claim holds, the claim as a whole turned round where it is called wrong."""
    return all([holds(size, right, said) for size, right in zip(sizes, rights, strict=True)]) is not called_wrong(said)


def without(query: Query, sizes: list[Said]) -> tuple[Fact, ...]:
    """The facts of a claim but those that are its sizes."""
    spans = [(s.start, s.end) for s in sizes] + [s.figure for s in sizes]
    return tuple(f for f in query.facts if not any(f.start < end and start < f.end for start, end in spans))


def as_lost(size: Said) -> Said:
    """A share said of what is taken, as what it leaves."""
    return replace(size, value=math.log2(1 - 2.0**size.value), bound=_OTHER[size.bound], lost=True) if size.value < 0 else size


def turned(size: Said) -> Said:
    """The same said of what is taken away, or wanted."""
    return replace(size, way=-size.way, value=-size.value if size.kind == "share" else size.value, bound=_OTHER[size.bound] if size.kind == "share" else size.bound)
