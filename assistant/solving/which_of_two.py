"""Which of two values has more of what is asked: "1/30 or 1/8, which makes the lamps brighter", "3 m or 5 m from the first row, which is more even".

All else being equal the answer goes by the way alone: one table says of what there is more with a larger value of
each setting. Where something is told of only one of the two they are weighed by the light of both (`light_of_two`),
and where that is not known nothing is said here.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Fact, Query
from assistant.records import record, replace
from assistant.scales import speak_stops
from assistant.solving import light_of_two, marks
from assistant.solving.choices import flat
from assistant.solving.claim_words import plain
from assistant.solving.film_compared import which_faster
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.solving.which_depth import deeper_of_two
from assistant.units import LENGTH, speak_length


@record
class Asked:
    """One thing that there may be more of: the words for more and for less of it, whether a larger value of a setting gives more (+1) or less (-1), and why."""

    name: str
    more: Pattern
    less: Pattern
    ways: dict[str, int]
    why: str
    about: Pattern | None = None
    """What the question must speak of besides."""


_ROOM = Pattern(rf"\b(?:ambient|daylight|sky|windows?|back(?:ground|drop)|surroundings|scene|ghosts?|sun(?:light|set|rise)?|dusk|dawn|moon|stars|city|skyline|traffic|harbou?r|lamps?|candles?|candelabr\w+|bulbs?|chandeliers?|lanterns?|fire|embers|neon|fairy lights|street ?lights?|(?:{ROOMS})|behind (?:him|her|them|it|me|us|the (?:man|woman|sitter|subject|couple|group|singer|bride|model|boy|girl|child)))\b")
_BEHIND = Pattern(r"\b(?:background|backdrop|behind|walls?|curtains?|backing)\b")
_BRIGHTER = Pattern(r"\b(?:brighter|brightest|more bright(?:ly)?|lighter|brightens?|more (?:light|exposure|of (?:the|my|her|his))|lets? (?:in )?more|shows? more|stronger|better lit)\b")
_DARKER = Pattern(r"\b(?:darker|darkest|less bright(?:ly)?|dimmer|fainter|darkens?|less (?:light|exposure|of (?:the|my|her|his))|lets? (?:in )?less|shows? less|weaker)\b")
_DEPTH = "depth of field"
_STILL = "stillness"
_TABLE: tuple[Asked, ...] = (
    Asked("even light", Pattern(r"\b(?:more even(?:ly)?|evener|evenest|most even(?:ly)?|as even(?:ly)? as|evens?|evenly|closer in (?:brightness|exposure|light)|(?:less|smaller|least|gentler|slower) (?:of a )?(?:fall-?off|difference|drop|spread)|fall(?:s|ing)?[ -]?off (?:less|slower|more (?:gently|slowly|gradually))|more alike|more (?:uniform|equal)(?:ly)?|more the same)\b"),
          Pattern(r"\b(?:less even(?:ly)?|more uneven(?:ly)?|(?:more|faster|quicker|steeper|bigger|larger|greater|stronger|most) (?:of a )?(?:fall-?off|drop|difference)|fall(?:s|ing)?[ -]?off (?:more(?! (?:gent|slow|grad))|faster|quicker|harder|sooner|more (?:quickly|rapidly)))\b"), {"distance": 1},
          "Light falls with the square of the distance: the farther the light, the less the depth of what it lights matters."),
    Asked(_DEPTH, Pattern(r"\b(?:(?:more|most|greater|greatest|larger|deeper|deepest) (?:depth|dof|depth of field|zone of sharpness|of (?:it|the \w+) (?:sharp|in focus))|more (?:\w+ ){0,3}(?:sharp|in focus)|deeper (?:field|focus)|sharper (?:background|behind)|gets? more (?:sharp|in focus))\b"),
          Pattern(r"\b(?:(?:less|least|shallower|shallowest|smaller|thinner) (?:depth|dof|depth of field|field|zone)|blurs?|blurr\w+|softer (?:background|behind)|more (?:\w+ )?out of focus|throws? (?:\w+ ){1,4}out of focus|shallower|less (?:\w+ ){0,3}(?:sharp|in focus))\b"), {"aperture": 1, "focal_length": -1, "distance": 1},
          "A smaller opening, which is a larger f-number, a shorter lens from the same place and focusing farther off give more depth of field."),
    Asked("light of the room", _BRIGHTER, _DARKER, {"shutter": 1, "aperture": -1, "film_speed": 1}, "The flash exposure does not change with the shutter, within sync.", _ROOM),
    Asked("light behind, with the aperture set for the subject", _BRIGHTER, _DARKER, {"distance": 1}, "Light falls with the square of the distance: the nearer the light to the subject, the less of it reaches what is behind.", _BEHIND),
    Asked("light", _BRIGHTER, _DARKER, {"aperture": -1, "distance": -1, "power": 1, "film_speed": 1}, ""),
    Asked("reach of the flash", Pattern(r"\b(?:(?:gets?|goes|go|get|reach(?:es)?|carr(?:y|ies)|throws?)\b[^.?!]{0,24}\b(?:further|farther|furthest|farthest)|(?:longer|longest|more|greater) (?:reach|range))\b"),
          Pattern(r"\b(?:shorter|shortest|less) (?:reach|range)\b"), {"film_speed": 1, "power": 1, "aperture": -1}, "The reach goes with the guide number over the f-number."),
    Asked("short time", Pattern(r"\b(?:shorter|faster|quicker|shortest|fastest) (?:shutter|time|exposure|speed)(?: (?:time|speed))?\b"), Pattern(r"\b(?:longer|slower|longest|slowest) (?:shutter|time|exposure)(?: (?:time|speed))?\b"), {"aperture": -1, "film_speed": 1}, ""),
    Asked("wide opening", Pattern(r"\b(?:open(?:s|ing)? (?:up )?(?:the |my )?(?:lens |aperture )?wider|(?:wider|larger|bigger) (?:aperture|opening|f-?stop))\b"), Pattern(r"\b(?:(?:stop|close)(?:s|ing)? (?:the |my )?(?:lens |aperture )?(?:down )?(?:further|farther|more)|(?:smaller|narrower) (?:aperture|opening|f-?stop))\b"), {"film_speed": -1, "power": -1, "distance": 1}, ""),
    Asked("softness", Pattern(r"\b(?:softer|softest|gentler)\b(?! (?:background|behind))"), Pattern(r"\b(?:harder|harsher|hardest|crisper|less soft)\b"), {"distance": -1}, "Softness goes by how large the light looks from the subject: the closer, the softer."),
    Asked(_STILL, Pattern(r"\b(?:freez\w*|stops?|catch\w*|holds?|arrests?)\b[^.?!]{0,40}\b(?:better|best|sharper|more|cleaner|harder)\b|\b(?:better|best|more) (?:at|for|to) (?:freez|stop|catch|hold)\w*|\b(?:freez\w*|(?:sharper|less blurr\w+|less blur|less smear))\b"),
          Pattern(r"\b(?:more blurr\w*|more blur|blurs? more|more smear\w*|smears? more)\b"), {"duration": -1}, "The shorter the flash, the less a thing moves in it, where the flash is all its light."),
    Asked("grain", Pattern(r"\b(?:more grain|grainier|coarser(?: grain)?)\b"), Pattern(r"\b(?:less grain\w*|finer(?: grain)?|smoother)\b"), {"film_speed": 1}, "Faster film has coarser grain."),
)
_INTERROGATIVE = Pattern(r"\b(?:which|what (?:one|distance|aperture|f-?stop|shutter(?: speed)?|time|power|film)|(?:at|from) (?:which|what|where)|whose|where)\b")
_ONE_OR = Pattern(r"(?:(?<=^)|(?<=[.?!;:] ))(?:so |and |now )?(?:(?:for|to (?:get|have|make|keep)|if (?:i|we) (?:want|need|like)|wanting)\b[^.?!;:,]{3,48},? )?(?:should|shall|do|does|would|will|must|is it|is(?= (?:at |from )?(?:f/?|1/)?\d[\w.]*(?: \w+)? or ))\b(?=[^.?!]*\bor\b(?! not\b)[^?!]*\?)")
"""A question that offers two: "would f/8 or f/16 need the shorter time"."""
_OR = Pattern(r"\bor\b|\bversus\b|\bvs\b|\bthe other\b")
_AND = Pattern(r"\bor\b|\band\b|\bversus\b|\bvs\b|\bthe other\b")
_TURNED = Pattern(r"\b(?:not|never|without|too|least|neither|nor|wrong|worse|avoid\w*|if(?! (?:i|we|you) want\b)|how (?:many|much|far))\b|n't\b")
_READ = Pattern(r"\b(?:reads?|reading|meters?|metered|metering|key|fill|rim|hair|kicker|flash(?:es)? (?:gives?|gave)|calls for|wants)\b")
_THEM = Pattern(r"\b(?:them|they|those|these)\b")
_OF_A_LIGHT = Pattern(r"\b(?:flash|light|lamp|head|strobe|key|fill|softbox|umbrella|background|behind|blur\w*)\b")
_FLASH_ALONE = Pattern(r"\b(?:flash|strobe|speedlight)\b")
_EQUAL_BY = frozenset({"loss", "filter_loss", "nd", "power_down", "factor", "modifier", "energy", "exponent", "magnification", "extension", "size"})
"""Told of one of the two, perhaps: then the way alone does not decide."""
_BY_THE_WAY = frozenset({"remark", "place", "number", "rows", "gap", "format", "times", "share"})
_KINDS = ("shutter", "aperture", "distance", "film_speed", "power", "focal_length", "duration")
_STRETCH = Pattern(r"\bfrom [^.?!,;]{1,14} to (?:about )?\d[^.?!]*\bor\b")
_BETWEEN = 90
"""Letters that may stand between the two."""
_SENTENCE = Pattern(r"[?!;]|[.](?!\d)")


_LEFT_ALONE = Pattern(r"\b(?:(?:don't|do not|won't|will not|can't|cannot|mustn't|not|without|never) (?:(?:want|wish|like|have|dare|going|allowed) to )?(?:touch|chang|mov|alter|shift|fiddl|mess|adjust|reset)(?:e|ing|le|ling)?(?: with)?) (?:the |my |either |his |her )?(?:flash|power|aperture|lens|f-?stop|light|lights|shutter|film|iso|anything|settings?)(?: power)?(?:(?:,? (?:or|and|nor) )(?:the |my )?(?:flash|power|aperture|lens|f-?stop|light|lights|shutter|film|iso|anything else))*\b")
"""What stays as it is, though a "not" is said of it."""


def more_of(query: Query) -> Solution | None:
    """The one of two that has more of what is asked, named first; None where two are not told, or the question is not plain."""
    said = plain(query.text)
    said = _LEFT_ALONE.sub(lambda found: " " * len(found[0]), said) if _LEFT_ALONE.search(said) else said
    start, end = _question(said)
    if end <= start or _TURNED.search(said, start, end):
        return None
    facts = [one for f in query.facts if f.origin == "said" and not f.bad for one in flat(f)]
    facts = _of_one_kind(_with_its_gap(facts, said), said)
    by_how_much = query.asks_for("stops") or query.asks_for("factor")
    weighed = None if by_how_much else _weighed(query, said, facts, start, end)
    if weighed is not None:
        return weighed
    two = _two(said, facts)
    if two is None:
        return deeper_of_two(query, said[: end]) or which_faster(query)
    asked = _asked(said[start:end], two[0].quantity, said)
    if asked is None:
        return which_faster(query)
    if not _alone(facts, two, asked[0], said):
        return None
    row, way = asked
    if by_how_much and row.more is _BRIGHTER:
        return None  # the stops between the two are for others
    if row.ways == {"distance": 1} and _STRETCH.search(said):
        return None  # two stretches, and not two places
    if row.name == _DEPTH and two[0].quantity == "distance" and (query.has("guide_number") or _OF_A_LIGHT.search(said)):
        return None  # a light's place
    if row.name == _DEPTH and two[0].quantity == "focal_length" and way > 0 and query.has("aperture") and (query.has("distance") or query.has("focus_distance")):
        return None  # how deep it is can be told
    best = (max if way * row.ways[two[0].quantity] > 0 else min)(two, key=lambda f: f.value)
    return _said(query, best, row, way)


def _said(query: Query, best: Fact, row: Asked, way: int, *more: Quantity) -> Solution:
    chosen = _quantity(query, best)
    lead = f"{_named(best)}: {'more' if way > 0 else 'less'} {row.name}." if row.name not in ("short time", "wide opening", _STILL) else f"{_named(best)}."
    return Solution(answers=(chosen, *more), used=tuple(one for f in query.facts for one in flat(f)), topic="which_of_two", lead=lead, notes=(row.why,) if row.why else ())


def _named(fact: Fact) -> str:
    words = fact.said.strip()
    if " or " in words and fact.unit in LENGTH:
        words = speak_length(fact.value, fact.unit)
    return f"f/{fact.value:g}" if fact.quantity == "aperture" else words[:1].upper() + words[1:]


def _quantity(query: Query, fact: Fact) -> Quantity:
    if fact.quantity == "distance":
        return marks.distance(fact.value, fact.unit if fact.unit in LENGTH else preferred_unit(query, ""))
    if fact.quantity == "focal_length":
        return Quantity("focal_length", fact.value * 1000, "mm")
    made: dict[str, Callable[[float], Quantity]] = {"aperture": marks.aperture, "film_speed": marks.film_speed, "power": marks.power, "shutter": marks.shutter, "duration": _duration}
    return made[fact.quantity](fact.value)


def _duration(seconds: float) -> Quantity:
    return Quantity("duration", seconds, "s", set=f"1/{1 / seconds:.0f}")


_FREEZES = Pattern(r"\b(?:freez|blur|smear|stop|catch|sharp|arrest|hold)")


def _of_one_kind(facts: list[Fact], said: str) -> list[Fact]:
    """"a flash of 1/800 or one of 1/5000, which freezes better": the second is a flash's as the first is."""
    timed = [f for f in facts if f.quantity in ("duration", "t05", "t01", "shutter")]
    flashes = [f for f in timed if f.quantity != "shutter"]
    if len({f.value for f in timed}) != 2 or not flashes or len({f.quantity for f in flashes}) > 1 or not _FREEZES.search(said):
        return facts
    return [replace(f, quantity="duration") if f in timed else f for f in facts]


def _with_its_gap(facts: list[Fact], said: str) -> list[Fact]:
    """"6 feet or 12 feet in front of the first row": the second is a distance as the first is, and no gap."""
    far = [f for f in facts if f.quantity == "distance"]
    return [replace(f, quantity="distance") if f.quantity == "gap" and any(_JUST_OR.fullmatch(said, d.end, f.start) for d in far) else f for f in facts]


_JUST_OR = Pattern(r" or (?:at |from |even )?")


_EITHER = r"(?:at |from )?(?:f/?|iso |1/)?[\w.½]{1,8}(?: ?(?:ft|feet|foot|m|metres?|meters?|power|film|mm|s))? or (?:at |from )?(?:f/?|iso |1/)?[\w.½]{1,8}(?: ?(?:ft|feet|foot|m|metres?|meters?|power|film|mm|s))?"
_FOR_WHAT = r"(?:for|to (?:get|have|keep|give|make|see)|if (?:i|we|you) want|(?:i|we)(?:'d| would)? (?:want|need|like|prefer)(?: to (?:get|have|keep|see))?)"
_TWO_FOR = Pattern(rf"(?:(?<=^)|(?<=[.?!;:,] ))(?:(?:so |and |then |now )?{_FOR_WHAT} [^.?!;]{{3,50}}[,:] (?:so |would it be |is it |should it be |is that )?{_EITHER}|{_EITHER},? {_FOR_WHAT} [^.?!;,]{{3,50}})\s*\?")
"""What there is to be more of, and the two to choose from: "for more depth of field, f/4 or f/11?"."""
_ONLY_TWO = Pattern(rf"(?:^|[.?!;:] )(?:so |and |then )?{_EITHER}(?: for the (?:light|flash|head))?\s*\?")
_WISHED = Pattern(r"\b(?:need|needs|want|wants|wanted|after|like|to (?:get|have|keep|make)|for)\b")
"""The two alone are the question, and what there is to be more of is wished beside it: "5 ft or 12 ft? need the rows even"."""


def _question(said: str) -> tuple[int, int]:
    """Where the sentence stands that asks which, from its "which" on; (0, 0) where none does, or more than one."""
    found = [m for m in (*_INTERROGATIVE.finditer(said), *_ONE_OR.finditer(said)) if said.find("?", m.start()) >= 0 or _SENTENCE.search(said, m.start()) is None]
    if not found:
        wished = list(_TWO_FOR.finditer(said))
        if len(wished) == 1:
            return wished[0].span()
        return (0, len(said)) if len(_ONLY_TWO.findall(said)) == 1 and _WISHED.search(said) else (0, 0)
    starts = {max((e.end() for e in _SENTENCE.finditer(said, 0, m.start())), default=0) for m in found}
    if len(starts) != 1:
        return 0, 0
    ends = _SENTENCE.search(said, found[0].start())
    return found[0].start(), ends.start() if ends is not None else len(said)


def _two(said: str, facts: list[Fact]) -> tuple[Fact, Fact] | None:
    """The only two values of one setting that are joined by an "or", or told as "one … the other …"."""
    found: list[tuple[Fact, Fact]] = []
    for kind in _KINDS:
        told = sorted((f for f in facts if f.quantity == kind), key=lambda f: f.start)
        for one, other in zip(told, told[1:], strict=False):
            between = said[one.end : other.start]
            joined = one.start == other.start and " or " in one.said.lower() or len(between) <= _BETWEEN and not _SENTENCE.search(between) and (_OR if "or" in said.split() else _AND).search(between)
            if joined and one.value != other.value:
                found.append((one, other))
    return found[-1] if len({frozenset((one.value, other.value)) for one, other in found}) == 1 else None  # said once more where it is asked: still two


def _asked(words: str, kind: str, said: str) -> tuple[Asked, int] | None:
    """What the question asks for, and whether for more of it (+1) or less (-1); None where that is not plain."""
    rows = []
    for row in _TABLE:
        more, less = row.more.search(words), row.less.search(words)
        if kind in row.ways and (more is None) is not (less is None) and (row.about is None or row.about.search(words) or row.about is _ROOM and _THEM.search(words) and not _FLASH_ALONE.search(words) and row.about.search(said)):
            rows.append((row, 1 if more is not None else -1))
        elif more is not None and less is not None:
            return None
    if len(rows) > 1 and rows[0][0].about is not None:
        rows = rows[:1] if rows[0][0].about is _BEHIND or not _FLASH_ALONE.search(words) else []
    if len(rows) != 1:
        return None
    if kind == "aperture" and rows[0][0].more is _BRIGHTER and _READ.search(said):
        return None  # a meter gives the larger number where there is more light
    return rows[0]


def _alone(facts: list[Fact], two: tuple[Fact, Fact], row: Asked, said: str) -> bool:
    """Whether nothing else may tell the two apart."""
    kind, (first, last) = two[0].quantity, sorted((two[0].start, two[1].start))
    for fact in facts:
        if fact in two or fact.quantity in _BY_THE_WAY or fact.quantity == "modifier" and not fact.value and fact.end <= first or fact.quantity == "count" and (fact.value == 1 or fact.value == len(two) and fact.end <= first and _ONE_EACH.search(said, fact.end)):
            continue
        if fact.quantity == kind and fact.value not in (two[0].value, two[1].value) and not (row.name == "even light" and not first <= fact.start <= last):
            return False
        if fact.quantity in _EQUAL_BY or fact.quantity == "count" and fact.unit in ("flashes", "pops", "heads") or first <= fact.start <= last and fact.quantity != kind:
            return False
        if fact.quantity in row.ways and fact.quantity != kind and len({f.value for f in facts if f.quantity == fact.quantity}) > 1:
            return False
    return True


_ALIKE = 0.05
_ONE_EACH = Pattern(r"\bone\b[^.?!]{0,60}\b(?:the other|one)\b")
""""two lamps, one at 1 m and the other at 4 m": their number bears on neither."""
_ASKED_FOR = Pattern(r"\b(?:which|what) (?P<kind>distance|power|place|spot)\b")
_OF_EACH = frozenset({"power", "distance", "film_speed", "guide_number", "energy", "count"})


def _weighed(query: Query, said: str, facts: list[Fact], start: int, end: int) -> Solution | None:
    """"full power at 8 feet, or half power at 5 feet": both told with a distance and a power, weighed by the light of each."""
    named = _ASKED_FOR.search(said, start, end)
    told = [f for f in facts if f.quantity not in _BY_THE_WAY and not (f.quantity == "count" and f.value == 1)]
    if any(f.quantity not in _OF_EACH for f in told):
        return None
    more, less = _BRIGHTER.search(said, start, end), _DARKER.search(said, start, end)
    cuts = [m for m in re.finditer(r"\bor\b|\bagainst\b|\bversus\b", said) if any(f.end <= m.start() for f in told) and any(f.start >= m.end() for f in told)]
    if (more is None) is (less is None) or len(cuts) != 1:
        return None
    one, other = [f for f in told if f.start < cuts[0].start()], [f for f in told if f.start > cuts[0].start()]
    kinds = sorted(f.quantity for f in one)
    if kinds != sorted(f.quantity for f in other) or len(kinds) != len(set(kinds)) or len(kinds) < 2 or "distance" not in kinds:
        return None
    apart = light_of_two.gained((), one, other)
    if apart is None:
        return None
    if abs(apart) < _ALIKE:
        return Solution(answers=(marks.stops(apart),), used=query.facts, topic="which_of_two", lead="They are equally bright.")
    wins = one if (apart > 0) is (more is not None) else other
    kind = "power" if named is not None and named["kind"] == "power" and "power" in kinds else "distance"
    best = next(f for f in wins if f.quantity == kind)
    rest = tuple(_quantity(query, f) for f in wins if f is not best and f.quantity in _KINDS)
    lead = f"{_named(best)}: {speak_stops(abs(apart))} {'more' if more is not None else 'less'} light ({abs(apart):.2f})."
    stops = marks.stops(abs(apart) if more is not None else -abs(apart), best.said.strip())
    return Solution(answers=(_quantity(query, best), *rest, stops), used=query.facts, topic="which_of_two", lead=lead)
