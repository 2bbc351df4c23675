"""Two set-ups told in one claim or question, and which figures are of the one, of the other, and of both.

They stand across a comparison ("the 35 at f/2.8 … than the 50 at f/4"), or are told one after the other and named
again in it ("Sun at EV 15, shade at EV 12. Does the shade get …"). A figure told of each is its own; one told once
holds for both, but for a power, a number of flashes and a loss, which are of the one they are told with.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import record
from assistant.solving.claim_words import plain


@record
class SetUps:
    """The facts of the one, of the other, and of both; the words of each; `named`: 0 or 1, the one that the claim is of, -1 where that is not plain."""

    one: tuple[Fact, ...]
    other: tuple[Fact, ...]
    shared: tuple[Fact, ...]
    words: tuple[str, str]
    named: int

    def of(self, side: int) -> tuple[Fact, ...]:
        """All that holds for one of them."""
        return (*(self.other if side else self.one), *self.shared)


LOSSES = frozenset({"loss", "filter_loss", "nd"})
OWN = frozenset({"power", "count", "power_down", *LOSSES})
"""Told once, they are of the set-up that they are told with: the other is at full power, is one flash, has nothing before it."""
BARE = Pattern(r"\b(?:bare|naked|without|unmodified|undiffused|straight|full(?: power)?)\b")
"""Of such a one nothing need be told."""
_OF_BOTH = Pattern(r"\b(?:both|each|same|either|all|every|throughout|always|one and the same)\b")
_ENDS = Pattern(r"[;:?!]|[.](?!\d)")
SIDES = (0, 1)
_CUTS = (
    # what parts two set-ups, the surest first
    Pattern(r"[.?!](?!\d)"), Pattern(r";"), Pattern(r",? (?:and|or|but|while|whereas|against|versus) (?=(?:with )?(?:the|an?|my|mine|his|hers?|one|another)\b)"), Pattern(r":"), Pattern(r",(?!\d)"), Pattern(r"\b(?:and|or|but|while|whereas|against|versus)\b"),
)
_SENTENCE = Pattern(r"[;?!]|[.](?!\d)")
_PIVOT = Pattern(r"\b(?:than|as|of|that|what|compared (?:to|with)|over|against|versus)\b")
_FRONTED = Pattern(r"(?:^|[.;:] )\W*(?:compared (?:to|with)|against|next to|beside)\b")


_DIFFER = frozenset({"guide_number", "distance", "focal_length", "focus_distance", "camera_distance", "sharp_limit", "aperture", "film_speed", "power", "energy", "shutter", "exposure_value", "format", "loss", "filter_loss", "nd", "factor", "magnification"})
_WEIGHED = frozenset({"guide_number", "energy", "exposure_value"})
_PLACES = ("focus_distance", "camera_distance", "sharp_limit")
_ANOTHERS = Pattern(r"\b(?:than|as) (?:hers|his|mine|yours|theirs|ours)\b")
_COMPARED = Pattern(r"\b(?:brighter|darker|stronger|weaker|dimmer|more light|less light|the same light|as much light)\b")
_HELD_AGAINST = Pattern(r"\b(?:than|as (?:much|bright|strong|deep|dark|far|fast|many|long)\b[^.;?!]{0,40}\bas)\b")


def held_against(query: Query) -> bool:
    """Whether two cases that differ in more than one figure are held against each other: no rule of one cause decides between them."""
    told = {(f.quantity, round(f.value, 9)) for f in query.facts if f.quantity in _DIFFER and f.origin == "said"}
    kinds = ["distance" if kind in _PLACES else "loss" if kind in LOSSES or kind == "factor" else kind for kind, _ in told]
    kinds += ["count"] if any(f.quantity == "count" and f.value > 1 for f in query.facts) else []
    twice, said = {kind for kind in kinds if kinds.count(kind) > 1}, plain(query.text)
    if len(twice) > 1 and _COMPARED.search(said) or _ANOTHERS.search(said):
        return True
    differ = len(twice) > 1 or bool(twice & LOSSES) or bool(twice) and len(set(kinds)) > 2 or bool(twice & _WEIGHED) and (query.has("distance") or query.has("modifier"))
    return differ and _HELD_AGAINST.search(said) is not None


def across(facts: Sequence[Fact], text: str, start: int, end: int) -> SetUps | None:
    """The set-ups on both sides of a comparison whose size stands from `start` to `end`; None where a figure has no side."""
    said = plain(text)
    begins = max((m.end() for m in _ENDS.finditer(said, 0, start)), default=0)
    ends = next((m.start() for m in _ENDS.finditer(said, end)), len(said))
    pivot = _PIVOT.search(said, max(start, end - 8), ends)
    if pivot is None or _FRONTED.search(said):
        return None
    inside = [f for f in facts if begins <= f.start < ends]
    than = next((m for m in _PIVOT.finditer(said, pivot.start(), ends) if m.group() in ("than", "as") and any(f.start > m.end() for f in inside)), pivot)
    cut = than.start()
    sides = parted(facts, said, cut, begins, ends)
    if sides is None:
        return None
    return SetUps(*sides, (said[begins:cut], said[than.end() : ends]), 0)


def told(facts: Sequence[Fact], text: str, start: int, end: int, since: int = 0) -> SetUps | None:
    """The set-ups told one after the other, before the claim or after it; which of them it is of goes by the words that they share."""
    said = plain(text)
    facts, again = _named_again(facts, said, start, end)
    twice = _twice(facts)
    if not twice:
        return None
    first, second = max(pair[0].end for pair in twice), min(pair[1].start for pair in twice)
    if first > second or not (min(p[0].start for p in twice) >= end or max(p[1].end for p in twice) <= start):
        return None
    cut = _cut(said, first, second, any(first <= f.start < second for f in facts))
    if cut < 0:
        return None
    facts = [f for f in facts if not (f.quantity == "count" and f.value == len(SIDES) and f.end <= min(p[0].start for p in twice))]  # "two heads, a 600 Ws and a 150 Ws"
    begins = max((m.end() for m in _SENTENCE.finditer(said, since, min(p[0].start for p in twice))), default=since)
    last = max(p[1].end for p in twice)
    ends = next((m.start() for m in _ENDS.finditer(said, last)), len(said))
    clause = re.compile(r",(?!\d)").search(said, last)
    if clause is not None and clause.start() < min(ends, start if start >= last else len(said)) and not any(clause.start() < f.start < ends for f in facts):
        ends = clause.start()
    if start < begins:
        begins = max(begins, end)
    sides = parted(facts, said, cut, begins, ends)
    if sides is None:
        return None
    words = (said[begins:cut], said[cut:ends])
    named = _by_place(sides[0], sides[1], said, start)
    if named < 0:
        named = _named(said, start, end, words)
    if again is not None and named < 0:
        named = next((side for side in SIDES if any(f.quantity == again.quantity and f.value == again.value for f in sides[side])), -1)
    return SetUps(*sides, words, named)


def _named_again(facts: Sequence[Fact], said: str, start: int, end: int) -> tuple[Sequence[Fact], Fact | None]:
    """"one frame at f/4, the next at f/11: does the f/4 frame have …": the figure that the claim calls one of them by, and the rest."""
    begins = max((m.end() for m in _ENDS.finditer(said, 0, start)), default=0)
    called = [f for f in facts if begins <= f.start < start and said[: f.start].endswith("the ") and sum(o.quantity == f.quantity and o.value == f.value for o in facts) > 1]
    return ([f for f in facts if f is not called[0]], called[0]) if len(called) == 1 else (facts, None)


_NEAR_OR_FAR = Pattern(r"\b(?:(?P<far>far|farther|further|farthest|more distant)|near|nearer|nearest|close|closer) (?:one|light|lamp|flash|head)\b")


def _by_place(one: Sequence[Fact], other: Sequence[Fact], said: str, start: int) -> int:
    """"the far one", "the near one": by their distances."""
    places = [next((f.value for f in side if f.quantity == "distance"), 0.0) for side in (one, other)]
    begins = max((m.end() for m in _COMMA.finditer(said, 0, start)), default=0)
    called = _NEAR_OR_FAR.search(said, begins, start)
    if min(places) <= 0 or called is None:
        return -1
    return int((places[1] > places[0]) is (called["far"] is not None))


def _cut(said: str, first: int, second: int, more: bool) -> int:
    """Where the second set-up begins, between the figures from `first` to `second`; -1 where that is not plain. `more`: other figures stand between."""
    for parts in _CUTS:
        found = list(parts.finditer(said, first, second))
        if len(found) == 1 or found and not more:
            return found[0].end()
        if found:
            return -1
    return -1


def _twice(facts: Sequence[Fact]) -> list[tuple[Fact, Fact]]:
    """The quantities told of each, with their two figures in order."""
    kinds = {f.quantity for f in facts} - OWN
    pairs = [sorted((f for f in facts if f.quantity == kind), key=lambda f: f.start) for kind in sorted(kinds)]
    found = [(pair[0], pair[1]) for pair in pairs if len(pair) == 2]
    if found:
        return found
    own = [sorted((f for f in facts if f.quantity in kind), key=lambda f: f.start) for kind in (LOSSES, {"power"}, {"count"})]
    return [(pair[0], pair[1]) for pair in own if len(pair) == 2]


def parted(facts: Sequence[Fact], said: str, cut: int, begins: int, ends: int) -> tuple[tuple[Fact, ...], tuple[Fact, ...], tuple[Fact, ...]] | None:
    """The facts before and after the cut; what is told once, or outside both, holds for both."""
    one: list[Fact] = []
    other: list[Fact] = []
    shared: list[Fact] = []
    for kind in sorted({f.quantity for f in facts}):
        mine = [f for f in facts if f.quantity == kind]
        before, after = [f for f in mine if f.start < cut], [f for f in mine if f.start >= cut]
        if kind in OWN:
            outside = [f for f in mine if not begins <= f.start < ends]
            if any(_OF_BOTH.search(_around(said, f)) is None for f in outside) or outside and len(mine) > 1 or kind not in LOSSES and max(len(before), len(after)) > 1:
                return None
            alike = outside or (mine if len(mine) == 1 and _OF_BOTH.search(_clause(said, mine[0])) else [])
            shared += alike
            one += [f for f in before if f not in alike]
            other += [f for f in after if f not in alike]
        elif len(mine) == 1 or len({round(f.value, 9) for f in mine}) == 1:
            shared.append(mine[0])
        elif len(before) == 1 and len(after) == 1:
            one += before
            other += after
        else:
            return None
    return tuple(one), tuple(other), tuple(shared)


def _around(said: str, fact: Fact) -> str:
    """The sentence that a figure stands in."""
    begins = max((m.end() for m in _ENDS.finditer(said, 0, fact.start)), default=0)
    ends = next((m.start() for m in _ENDS.finditer(said, fact.end)), len(said))
    return said[begins:ends]


_COMMA = Pattern(r"[;:?!]|[.,](?!\d)")


def _clause(said: str, fact: Fact) -> str:
    """The words right before a figure in its clause."""
    begins = max((m.end() for m in _COMMA.finditer(said, 0, fact.start)), default=0)
    return said[max(begins, fact.start - 24) : fact.start]


def unknown_loss(query: Query, held: SetUps) -> bool:
    """Whether one of them stands in something whose loss is not told."""
    worn = {f.unit for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit not in ("", "BARE")}
    return len(worn) > sum(f.quantity in LOSSES for f in (*held.one, *held.other, *held.shared))


# --- which of the two is named --------------------------------------------------------------------

_WORD = re.compile(r"[a-z]{3,}")
_COMMON = frozenset(
    "the and its her his our your that this then than therefore thus hence has have having had gets get getting gives give given giving reads read reading meter meters metered metering says said shows measures measured light lights "
    "side part end one ones just only about exactly with from for into onto are was were but does did can could should would will must may might stands stand stood standing stays stay set puts put sees lies least most more less "
    "same aperture stop stops times time focus focused film lens iso shutter power full half quarter feet foot metres meters metre meter away off out which who whose where when while both each either same very now here there still also "
    "she him them they you makes make made thing bright dark brighter darker loses lose lost costs cost eats takes take how many much guide number".split()
)


_LETTERED = re.compile(r"\b(?:head|light|flash|lamp|set-?up|gun|strobe|camera|lens|number|option|case) ([a-d]|one|two|[12])\b")
_FIRST, _OTHER = re.compile(r"\b(?:first|former)\b"), re.compile(r"\b(?:second|latter|other)\b")


_WHOSE = {
    # what a word of the one who speaks again is, and the words that it stands for where they were told
    "mine": "mine my", "hers": "hers her", "yours": "yours your", "she": "she lady woman bride girl mother sister aunt grandmother daughter actress wife", "he": "he gentleman man groom boy father brother uncle grandfather son actor husband",
    **dict.fromkeys(("outside", "outdoors"), "outside outdoors sun sunlight street yard courtyard garden terrace porch field beach"),
    **dict.fromkeys(("inside", "indoors"), "inside indoors interior room hall hallway kitchen church barn lobby stairwell"),
}


def called(words: str, again: bool = False) -> set[str]:
    """The words by which something may be called; `again`: where it is named once more, by a pronoun too."""
    said = set(re.findall(r"[a-z]+", words))
    pronouns = {f"#{name}" for name, told in _WHOSE.items() if not said.isdisjoint({name} if again else told.split())}
    return pronouns | {f"#{m}" for m in _LETTERED.findall(words)} | {w.removesuffix("s") for w in _WORD.findall(words)} - _COMMON - {w.removesuffix("s") for w in _COMMON}


def _named(said: str, start: int, end: int, words: tuple[str, str]) -> int:
    """Which of the two is spoken of before the size, or is not the one that it is held against after it; -1 where that is not plain."""
    first, second = (called(w) for w in words)
    first, second = first - second, second - first
    begins = max((m.end() for m in _COMMA.finditer(said, 0, start)), default=0)
    ends = next((m.start() for m in _COMMA.finditer(said, end)), len(said))
    there = _THERE.match(said, end, ends)
    turn = there.end() if there else end
    subject, against = called(said[begins:start] + " " + said[end:turn], True), called(said[turn:ends], True)
    if _FIRST.search(said, begins, start) or _OTHER.search(said, begins, start):
        return 0 if _FIRST.search(said, begins, start) else 1
    of, to = _one_of(subject, first, second), _one_of(against, first, second)
    if _PIVOT.search(said[max(start, end - 8) : ends]) and against and to < 0 and _AGAINST.search(said[end:ends]):
        return -1  # held against something else
    if of >= 0 and to >= 0 and of == to:
        return -1
    return of if of >= 0 else 1 - to if to >= 0 else -1


_THERE = Pattern(r"(?:\s*(?:more|less|light|brighter|darker|dimmer|hotter|lighter|lower|higher))*\s*(?:outside|inside|outdoors|indoors|(?:in|at|on|by|near|behind|under) (?:the |my |your |our )?\w+)(?! (?:as|than)\b)")
"""The place that the size is said of, after it: "four stops brighter outside"."""


def named_in(said: str, words: tuple[str, str]) -> int:
    """Which of the two some words name: 0 or 1, -1 for neither or both."""
    first, second = (called(w) for w in words)
    return _one_of(called(said, True), first - second, second - first)


_AGAINST = Pattern(r"\b(?:than|as|compared)\b|\bof the (?!light|exposure)")


def _one_of(words: set[str], first: set[str], second: set[str]) -> int:
    """0 where the words name the first, 1 the second, -1 neither or both."""
    one, other = bool(words & first), bool(words & second)
    return -1 if one is other else 0 if one else 1
