"""A light read together with another, and one of the two read without it: the other is what is left.

Whoever tells it, a figure is of the two or of the one: by what is said beside it ("together", "with the blind
up"; "alone", "with it unplugged"), never by which was said first. Light adds, so the squares of the f-numbers
do: the rest is the root of their difference, and from the two parts come how far one lies under the other and
what each adds to the other.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.flash import light_still_wanted
from assistant.query import Fact, Query
from assistant.records import record
from assistant.solving import marks
from assistant.solving.solution import Solution

_TWO = frozenset({"aperture", "shutter", "film_speed", "count", "remark", "place", "modifier"})
_MOST_LIGHTS = 4
"""More in number are pops, or frames."""
_LIT = r"(?:on|lit|burning|lighted|going|firing|fired|added|in|open(?:ed)?|(?<!turned )up|back|connected|plugged in|raised|drawn back|uncovered|switched on|turned on)"
_UNLIT = r"(?:off|(?<!came )(?<!comes )(?<!come )(?<!turned )out|unlit|unplugged|disconnected|dead|dark|shut|closed|covered|blocked|flagged|drawn|down|switched off|turned off|put out|killed|disabled)"
_BY_ITSELF = r"(?:alone|by (?:it|them)sel(?:f|ves)|on (?:its|their) own)"
_NAME = r"(?:flash|strobe|key|fill|main|room|window|daylight|sun|ambient|lamps?|bulbs?|spot|flood|sky)(?: light)?"
_TOGETHER = Pattern(
    rf"\b{_NAME} (?:and|plus|with) (?:the |my )?{_NAME}\b(?! (?:alone|each))"
    r"|\b(?:together|combined|altogether|in (?:all|total)|(?:the )?(?:total|sum)|the (?:pair|lot|two(?: of them)?)|both(?! (?:(?:at|on) )?(?:\d|iso|f\W?\d)| (?:of them )?(?:on the same|fall|hit|reach|strik|land))|everything|plus|(?:all|both) of (?:it|them))\b", re.I)
_PUT_TO_IT = Pattern(
    rf"\bafter(?:wards?)?\b(?! (?:i|we|the|she|he|it)\b)|\bwith (?:it|them)\b|\bwith (?:the|my) [a-z]+(?: [a-z]+){{0,2}} {_LIT}\b"
    rf"|\b(?:it|them|that|lamps?|lights?|bulbs?|blinds?|curtains?|shutters|flash|strobe|fill|key)(?: is| are| goes| go| went| comes| came)? (?:back )?(?:{_LIT})\b(?! (?:the|a|my|her|his))"
    r"|\b(?:add(?:ed|ing)?|bring(?:ing)? in|brought in|switch(?:ed|ing)? on|turn(?:ed|ing)? on|plug(?:ged|ging)? in|fir(?:e|ed|ing)|open(?:ed|ing)?|raise[ds]?|light(?:ing)?|lit)(?: up)? (?:the|my|a|that) (?!lens|aperture|camera|shutter)[a-z]+", re.I)
"""Of a reading with a light more than before; it takes a word for the one without it as well."""
_BEFORE_IT = r"\bbefore (?:(?:i|we|the|my|it|they|she|he) )+(?:[a-z]+ ){0,4}?(?:on|in|up|fires?|fired|pops?|popped|flashes|flashed)\b"
_PART = Pattern(
    rf"\b{_BY_ITSELF}\b|{_BEFORE_IT}|\b(?:only|just) (?:the |my |its )?[a-z]+|\b(?:the |my )?[a-z]+ only\b|\bwithout\b|\balready\b|\b(?:it|them|that|[a-z]+)(?: (?:is|are|was|were|goes|go|went|being))? {_UNLIT}\b|\b(?:unplug\w*|switch(?:ed|ing)? off|turn(?:ed|ing)? off|kill(?:ed|ing)?|block(?:ed|ing)?|cover(?:ed|ing)?|leav\w+ out|clos(?:ed|ing)|draw(?:n|ing)?|put(?:ting)? out|tak(?:e|ing) away|took away|remov(?:e|ed|ing)) (?:the|my|that) [a-z]+", re.I)
_GONE = Pattern(
    rf"\bbefore (?:(?:i|we|it|they|she|he) )?(?:[a-z]+ )??(?:the |my )(?P<later>[a-z]+(?: light)?) (?:on|in|up|fires?|fired|pops?|popped|flashes|flashed)\b|\b(?:with|while|once|when|if|after|and)? ?(?:the |my |both |all )?(?P<with>[a-z]+(?: (?!is|are|was|were|goes|go|went|being)[a-z]+)?)(?: (?:is|are|was|were|goes|go|went|being))? {_UNLIT}\b"
    r"|\b(?:without|unplug\w*|switch(?:ed|ing)? off|turn(?:ed|ing)? off|kill(?:ed|ing)?|block(?:ed|ing)?|cover(?:ed|ing)?|leav\w+ out|clos(?:ed|ing)|draw(?:n|ing)?|put(?:ting)? out|tak(?:e|ing) away|took away|remov(?:e|ed|ing)) (?:(?:the|my|any|that) )?(?P<without>[a-z]+(?: light)?)", re.I)
"""The light that is not there while the one part is read."""
_CUTS = Pattern(r"[.;?!](?=\s|$)|,(?=\s)|\s[-–—]+\s|:\s|\b(?:but|and|while|whereas|when|once|then)\b", re.I)
_QUESTION = Pattern(r"(?:^|[.;,?!:]\s+|\b(?:so|and|then|now|but) )(?P<ask>(?:(?:what|which|how|by how|by what|to what)\b|(?:the|my) [a-z]+(?: light)? (?:alone|by itself|on its own)(?: is| reads| gives| makes)?\W*\?).*?)(?=,? (?:if|when|given|where|since|seeing)\b|[?;]|[.!](?=\s|$)|$)", re.I)
_AS_A_NUMBER = Pattern(r"\b(?:f.?numbers?|f.?stops?|apertures?)\b", re.I)
_APART = Pattern(r"\b(?:other|opposite|different) (?:side|cheek|half)\b|\bratio\b", re.I)
_BOTH_ASKED = Pattern(r"\b(?:both|together|the two|the pair|total|i set|do i (?:set|use|shoot)|should i (?:set|use|shoot)|the lens|the camera|to set)\b", re.I)
_SETTING = Pattern(r"\b(?:lens|camera|ring|(?:i|we)(?:'m|'ve| am| have)? (?:set|shot|shoot|exposed|stopped)|aperture|auto|dial)\b", re.I)
"""Said of what the camera is set to, and of no light."""
_SET_FOR_BOTH = Pattern(r"\bfor (?:the |my )?[a-z]+ (?:and|plus) (?:the |my )?[a-z]+(?: together)?\b|\bfor (?:both|the two|the pair|them) together\b", re.I)
_ADDS = Pattern(r"\b(?:adds?|adding|contribut\w+|lifts?|rais\w+|brightens?|gains?|push(?:es)?)\b", re.I)
_AGAINST = Pattern(r"\b(?:under|below|weaker|dimmer|darker|fainter|over|above|brighter|stronger|hotter|less|more)\b", re.I)
_SUBJECT = Pattern(r"\b(?:is|are|does|do|will|would|must|should|has|have|was|were|did|can) (?:the light of |the |my |that |those )?(?:light of (?:the |my ))?(?P<one>[a-z]+)", re.I)
_NO_NAME = frozenset("the my that those this what which how many much far stops light lights alone itself themselves by give gives read reads meter f number aperture stop one other then now on its own there in on at is are be does do it with both together two pair of measure measures make makes show shows i we she he you they do to total work worth bright brightness".split())


@record
class Parts:
    """The reading of the two lights and that of one; `there` and `gone`: the words for the light that it is of, and for the one that is not there."""

    whole: Fact
    part: Fact
    there: frozenset[str]
    gone: frozenset[str]

    @property
    def rest(self) -> float:
        """The f-number of the light that is not in the part."""
        return light_still_wanted(self.whole.value, self.part.value)

    def is_part(self, question: str) -> bool | None:
        """Whether the question is of the light that the part was read of; None where no word tells."""
        subject = _SUBJECT.search(question)
        named = _words(subject["one"]) if subject is not None else frozenset[str]()
        if named:
            return bool(named & (self.there - self.gone))
        words = _words(question)
        of_there, of_gone = bool(words & (self.there - self.gone)), bool(words & self.gone)
        return of_there if of_there != of_gone else None


def _singular(word: str) -> str:
    return word.lower().removesuffix("s")


def _words(text: str) -> frozenset[str]:
    return frozenset(_singular(w) for w in patterns.findall(r"[a-z]+", text.lower())) - {_singular(w) for w in _NO_NAME}


def told(query: Query) -> Parts | None:
    """The reading of both lights and that of one of them, where two readings are told so."""
    read = query.all("aperture")
    if len(read) != 2 or {f.quantity for f in query.facts if f.origin == "said"} - _TWO or len({f.value for f in query.all("shutter")}) > 1 or any(f.value > _MOST_LIGHTS for f in query.all("count")) or _APART.search(query.text):
        return None
    part, whole = sorted(read, key=lambda f: f.value)
    if part.value >= whole.value * 0.995:
        return None
    clauses = {f.start: clause for f, clause in zip(read, _clauses(query.text, read[0], read[1]))}
    of_whole, of_part = clauses[whole.start], clauses[part.start]
    if _SETTING.search(of_whole) and not _SET_FOR_BOTH.search(of_whole) or _SETTING.search(of_part):
        return None
    if not _is_whole(_GONE.sub(" ", of_whole), of_whole, of_part):
        return None
    gone = frozenset(w for m in _GONE.finditer(of_part) for w in _words(m["later"] or m["with"] or m["without"]))
    if not gone or gone <= {"it", "them"}:
        gone = _words(_of_the_added(of_whole))
    return Parts(whole, part, _words(_GONE.sub(" ", of_part)), gone)


def _is_whole(lit: str, of_whole: str, of_part: str) -> bool:
    """Whether the words beside the larger figure (`lit`: without what is off) are of both lights, and those beside the smaller of one."""
    if _PART.search(of_whole):
        return False
    alone = _PART.search(of_part) is not None
    return _TOGETHER.search(lit) is not None and (alone or not _TOGETHER.search(of_part)) or alone and _PUT_TO_IT.search(lit) is not None


_THE_ADDED = Pattern(rf"\bwith (?:the |my )?(?P<lit>[a-z]+(?: [a-z]+)?) {_LIT}\b|\b(?:add(?:ed|ing)?|bring(?:ing)? in|brought in|switch(?:ed|ing)? on|turn(?:ed|ing)? on|plug(?:ged|ging)? in|fir(?:e|ed|ing)|open(?:ed|ing)?|raise[ds]?|lit)(?: up)? (?:the |my |a |that )(?P<put>[a-z]+)", re.I)


def _of_the_added(clause: str) -> str:
    """What was put to the part to make the whole."""
    found = _THE_ADDED.search(clause)
    return (found["lit"] or found["put"]) if found is not None else ""


def _clauses(text: str, first: Fact, second: Fact) -> tuple[str, str]:
    """What is said beside each of two figures: up to the last break between them, and no word of the question."""
    asked = _question(text, first, second)
    end = asked[0] if asked is not None and asked[0] >= second.end else len(text)
    start = asked[1] if asked is not None and asked[1] <= first.start else 0
    if asked is not None and first.end <= asked[0] and asked[1] <= second.start:
        return text[: asked[0]], text[asked[1] :]
    breaks = [m for m in _CUTS.finditer(text, first.end, second.start)]
    strong = [m for m in breaks if text[m.start()] in ".;?!"]
    cut = (strong or breaks)[-1 if strong else 0].end() if breaks else first.end
    return text[start:cut], text[cut:end]


def one_is_off(query: Query) -> bool:
    """Whether of two readings one was taken with a light off: they are of no two lights that add."""
    read = query.all("aperture")
    return len(read) == 2 and [_GONE.search(clause) is not None for clause in _clauses(query.text, read[0], read[1])].count(True) == 1


def _question(text: str, first: Fact, second: Fact) -> tuple[int, int] | None:
    """Where the question begins and ends: the last one that holds neither figure."""
    spans = [m.span("ask") for m in _QUESTION.finditer(text)]
    free = [span for span in spans if not any(span[0] <= figure.start < span[1] for figure in (first, second))]
    return free[-1] if free else None


def solve(query: Query) -> Solution | None:
    """The light that was taken out of the sum, or how the two compare; None where no whole and part are told."""
    if not query.asks_for("aperture", "stops") or len(query.all("aperture")) != 2:
        return None
    if {f.of for f in query.all("aperture")} == {"background", "key"}:
        return None  # each lights a place of its own
    asked = _question(query.text, *query.all("aperture"))
    question = query.text[asked[0] : asked[1]] if asked is not None else ""
    parts = told(query) if question else None
    if parts is None:
        return None
    of_part = parts.is_part(question)
    used = (parts.whole, parts.part, *query.all("shutter"), *query.all("film_speed"), *query.all("count"))
    note = f"What is read with it, less what is read without it: the squares of the f-numbers are taken from one another. Alone it reads f/{parts.rest:.3g}."
    if query.asks_for("stops") and not _AS_A_NUMBER.search(question):
        found = _stops(parts, question, of_part)
        return None if found is None else Solution(answers=(marks.stops(found),), used=used, topic="ambient", notes=(note,))
    if of_part is not False and _BOTH_ASKED.search(question) or of_part:
        return None
    return Solution(answers=(marks.aperture(parts.rest),), used=used, topic="ambient", lead="Alone it reads", notes=(note.split(". ")[0].rstrip(".") + ".",))


def _stops(parts: Parts, question: str, of_part: bool | None) -> float | None:
    """How far the light asked of lies over (+) or under (-) the other, or what it adds to it."""
    if of_part is None:
        return None
    one, other = (parts.part.value, parts.rest) if of_part else (parts.rest, parts.part.value)
    if _ADDS.search(question):
        return 2 * math.log2(parts.whole.value / other)
    return 2 * math.log2(one / other) if _AGAINST.search(question) else None
