"""Film that is always given more or less than its box says, beside a flash.

"always a stop over" · "box 400, I give it two thirds more" · "rated a third slower than the box" · "pulling it a stop"
"400 film that tests a stop slow" · "expired twenty years ago, a stop a decade"
Such stops are of the film: they count from box speed as a push does, and the flash's exposure goes by the speed that they leave.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.number_words import STOPS_SPOKEN
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

HABIT = "habit"
"""The cue of a push that is no development, only light: "always a stop over"."""

_STOPS = ("stops", "signed", "relation", "number", "loss")
_COUNTED = ("stops", "signed", "relation", "loss", "power_down", "push", "rated", "ratio", "nd", "filter_loss")
_PARTS = (1 / 3, 1 / 2, 2 / 3)

_OF_THE_FILM = Pattern(
    r"\b(?:always|given|usually|habit\w*|as a rule|every (?:frame|roll|time|shot)|by default|for safety|to be safe|safe side|insurance)\b"
    r"|\bexpos(?:e|es|ed|ing) (?:the|my) film\b|\bbox(?: speed)?\b|\b(?:neg(?:ative)?s?|slides?|chromes?|transparenc\w+|film|roll|emulsion|stock)\b", re.I)
_OF_THE_EXPOSURE = Pattern(
    r"\b(?:over|under)[- ]?(?:expos|rat)\w*|\bexpos(?:e|es|ed|ing) (?:it|them|for|everything|all|this|that)\b"
    r"|\b(?:give|gives|giving|gave|feed|feeding|likes?|prefers?|wants?|needs?|have|keep|expose|shoot|add|adding|allow|allowing) (?:it|them|him|this|that|these|everything|mine|an extra|an additional|just)\b"
    r"|\b(?:i|we|she|he) (?:like|prefer|want|add|allow|give|work|shoot|expose|rate|go)\b", re.I)
_OF_THE_LIGHT = Pattern(
    r"\b(?:flash(?:gun)?s?|gun|lamps?|strobe|head|bulb|batter\w+|guide|gn|power|key|fill|main|rim|hair|kicker|backdrop|background|ambient|daylight|window|sun|room|wall|meter\w*|reads?|reading|says|shows"
    r"|(?:com|turn|work)(?:e|es|ing|ed|s)? out|came|printed|looks?|looked|was|were|test\w*|last (?:time|roll)|lens|filter|softbox|umbrella|brolly|bounce\w*|how (?:many|much)|lost|loses?|eats?|costs?|takes?|closer|further|nearer|move\w*)\b", re.I)
_THAN_METERED = Pattern(r"\b(?:than|what|as|from) (?:it |is |the |was |i )*(?:meter\w*|guide(?: number)?|table|reading|box)(?: says| gives| reads)?\b", re.I)
_OVER = Pattern(r"\b(?:over\w*|more|extra|above|hot|hotter|generous\w*|fat|dense|denser|fuller|slower|slow|plus)\b|\+", re.I)
_UNDER = Pattern(r"\b(?:under\w*|less|below|darker|thin|thinner|leaner|faster|fast|minus|short)\b", re.I)
_CLAUSE = Pattern(r"(?:[,;:!?()]|\.(?!\d)| - | – )")
_FOLLOWS = Pattern(r"\s*(?:so|hence|therefore|which means|that's why|thus)\b", re.I)
_BARE_ONE = Pattern(r"\b(?P<many>one and a half|two thirds|a third|one third|a half|half|one|two)(?: of a)? (?:over|under|extra)\b", re.I)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with stops that are of the film as a push, where a flash and a film are told and no other stops are."""
    kinds = [f.quantity for f in facts]
    if "guide_number" not in kinds or not ("film_speed" in kinds or "film" in text.lower()):
        return facts
    facts = [_no_softbox(f, text) for f in facts if not _box_of_film(f, text)]
    facts = _aged(facts, text)
    counted = [f for f in facts if f.quantity in _COUNTED or f.quantity == "number" and _is_part(f, facts, text)]
    if not counted:
        counted = _unsaid(facts, text)
        facts = sorted([*facts, *counted], key=lambda f: f.start)
    if len(counted) != 1 or counted[0].quantity not in _STOPS or counted[0].of or not 0 < abs(counted[0].value) <= 3:
        return facts
    if counted[0].quantity == "loss" and not (_slow(counted[0], facts, text) or _OF_AGE.search(_clause(counted[0], facts, text))):
        return facts
    over = 1 if counted[0].quantity == "loss" else _over(counted[0], facts, text)
    return facts if over == 0 else [replace(f, quantity="push", value=-over * abs(f.value), unit="", of="film", cue=HABIT, to="") if f is counted[0] else f for f in facts]


def _is_part(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """"two thirds more": of a stop, and of nothing else."""
    part = any(abs(fact.value - part) < 0.005 for part in _PARTS) and not fact.bad
    return part and any(way.match(text[fact.end :].lstrip()) or way.search(_clause(fact, facts, text)) for way in (_OVER, _UNDER))


def _unsaid(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"always one over": the stops are not said."""
    found = _BARE_ONE.search(text)
    if found is None or any(f.start < found.end("many") and f.end > found.start("many") for f in facts):
        return []
    start, end = found.span("many")
    return [Fact("stops", STOPS_SPOKEN[found["many"].lower()], start=start, end=end, said=found["many"])]


def _clause(fact: Fact, facts: Sequence[Fact], text: str) -> str:
    """The words around, as far as the next mark or figure on either side and no more than sixty letters."""
    low = max([fact.start - 60, 0, *(f.end for f in facts if f.end <= fact.start)])
    high = min([fact.end + 60, *(f.start for f in facts if f.start >= fact.end)])
    before, after = text[low : fact.start], text[fact.end : high]
    marks = [m.end() for m in _CLAUSE.finditer(before) if not _FOLLOWS.match(before[m.end() :])]
    ends = _CLAUSE.search(after)
    return before[marks[-1] if marks else 0 :] + text[fact.start : fact.end] + after[: ends.start() if ends else len(after)]


_AGED = Pattern(r"\b(?:expir\w*|out[- ]of[- ]date|outdated|past its (?:date|best)|best before|went off|out of its date)\b", re.I)
_A_DECADE = Pattern(r"\s*(?:more |extra |of (?:light|exposure|speed) )?(?:for (?:every|each)|per|an?|each|every)(?: of (?:them|those|the))? (?:(?:ten|10) years|decade)\b", re.I)


def _aged(facts: list[Fact], text: str) -> list[Fact]:
    """"expired twenty years ago, one stop a decade": two stops that the film wants more."""
    old, rate = [f for f in facts if f.quantity == "years"], [f for f in facts if f.quantity == "stops" and _A_DECADE.match(text, f.end)]
    if len(rate) != 1 or not _AGED.search(text):
        return facts
    old = [f for f in old if not (rate[0].end <= f.start < _A_DECADE.match(text, rate[0].end).end())]  # type: ignore[union-attr]
    if len(old) != 1:
        return facts
    lost = replace(rate[0], quantity="push", value=-abs(rate[0].value) * old[0].value / 10, unit="", of="film", cue=HABIT, to="")
    return [lost if f is rate[0] else replace(f, quantity="remark") if f.quantity == "years" else f for f in facts]


_OF_AGE = Pattern(r"\b(?:film|roll|stock|emulsion|it|which|that) (?:has |have |had |must have )?(?:lost|loses|lose)\b[^.?!;,]{0,20}(?:\b(?:with (?:age|the years|time)|over the years|in (?:the )?(?:heat|drawer|cupboard|attic|sun|storage)|since it expired|from age|of speed|of sensitivity)\b)", re.I)
_SLOW = Pattern(r"\s*(?:too |more )?(?:(?P<slow>slow(?:er)?)|fast(?:er)?|quick(?:er)?)\b|\s*(?P<lost>of (?:its )?(?:speed|sensitivity))\b", re.I)
_NO_FILM = Pattern(r"\b(?:shutter|lens|flash\w*|recycl\w*|sync\w*|than (?:the |my |that )?(?:other|old|new|last|first|slide|neg\w*|iso|asa|\d+))\b", re.I)


def _slow(fact: Fact, facts: Sequence[Fact], text: str) -> int:
    """1 where it is the film that is slower than its box by so much, -1 where it is faster: "tests two stops slow", "a stop faster than marked"."""
    way = _SLOW.match(text, fact.end)
    if way is None:
        return 0
    words = _clause(fact, facts, text)
    last = [f for f in facts if f.end <= fact.start][-1:]
    told = _OF_THE_FILM.search(words) or last and last[0].quantity == "film_speed" and not _CLAUSE_ENDS.search(text[last[0].end : fact.start])
    return 0 if not told or _NO_FILM.search(words) else 1 if way["slow"] or way["lost"] else -1


_CLAUSE_ENDS = Pattern(r"[.;!?]", re.I)


def _over(fact: Fact, facts: Sequence[Fact], text: str) -> int:
    """1 where more light is meant for the film, -1 where less, 0 where the stops are of something else or the way is not said."""
    words = _clause(fact, facts, text)
    slow = _slow(fact, facts, text)
    if slow:
        return slow
    of_film = _OF_THE_FILM.search(words) or _rated_so(fact, facts, text) or _OF_THE_EXPOSURE.search(words) and not any(f.quantity == "aperture" for f in facts)
    if _OF_THE_LIGHT.search(_THAN_METERED.sub(" ", words)) or not of_film:
        return 0
    said = text[fact.start : fact.end + 14]
    over = fact.cue == "more" or fact.unit == "+" or _OVER.search(words) is not None
    under = fact.cue == "less" or fact.unit == "-" or _UNDER.search(words) is not None
    if over and under:
        over, under = _OVER.search(said) is not None, _UNDER.search(said) is not None
    return 0 if over == under else 1 if over else -1


_RATES = Pattern(r"\b(?:always giv(?:e|es)|rat(?:e|es|ed|ing)|shoot(?:s|ing)?|shot|expos(?:e|es|ed|ing)|meter(?:s|ed|ing)?|set(?:s|ting)?)\b[^.,;?!\d]{0,20}$", re.I)
_STRAIGHT_ON = Pattern(r"\s*(?:film|roll|stock|slide|neg\w*|at|about|by|just|,)*\s*", re.I)


def _rated_so(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """"I'm rating 400 film a stop slower": said right after the film that is rated."""
    before = [f for f in facts if f.quantity in ("film_speed", "rated") and f.end <= fact.start and _STRAIGHT_ON.fullmatch(text[f.end : fact.start])]
    return bool(before) and _RATES.search(text[: before[-1].start]) is not None


_RATED_SLOWER = Pattern(r"\b(?:slower|faster|below|above|under|over|less|more)(?: speed)? than (?:the |its )?box\b|\b(?:under|below|over|above|off|from) (?:the |its )?box(?: speed)?\b", re.I)
_THE_BOX = Pattern(r"\W*(?:the |its |on the )?box\W*(?:speed)?\W*", re.I)
_FILM_WORD = Pattern(r"\b(?:film|iso|asa|rat(?:e|ed|ing)|speed|neg\w*|slide|expose\w*)\b", re.I)


def _is_box(fact: Fact, text: str) -> bool:
    return fact.unit == "softbox" and _RATED_SLOWER.search(text) is not None and _FILM_WORD.search(text) is not None and "softbox" not in text.lower() and "soft box" not in text.lower()


def _box_of_film(fact: Fact, text: str) -> bool:
    """"a stop slower than the box": the film's, and no softbox."""
    return fact.quantity == "modifier" and _is_box(fact, text) and _THE_BOX.fullmatch(fact.said) is not None


def _no_softbox(fact: Fact, text: str) -> Fact:
    return replace(fact, quantity="stops", unit="", of="", cue="") if fact.quantity == "loss" and _is_box(fact, text) else fact
