"""A claim put up again of another thing, or of another number of the same: "and the flash too?", "so three lose two stops?".

Such a half-sentence tells no value in the place of one of its kind, so it is put into the words of the claim that
stands, and read there; where it cannot be, nothing is judged.
"""

from __future__ import annotations

import re

from assistant.memory.conversation import Judged
from assistant.memory.judged_again import reworded
from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Fact, Query
from assistant.records import record, replace

_FLASH = r"(?:flash(?:es)?|strobe|speedlight|flashgun)(?: exposure| light| part)?"
_ROOM = rf"(?:ambient|daylight|available light|existing light|background|backdrop|sky|window|surroundings|{ROOMS})(?: exposure| light| part)?"
_OTHER_THING = Pattern(
    r"^\W*(?:(?:and|but|so|then|what about|how about) )*(?:(?:does|do|will|would|is|did) (?:it|that|this|the same) )?(?:also )?(?:(?P<verb>[a-z]+) )?"
    rf"(?:the |my )?(?:(?P<flash>{_FLASH})|(?P<room>{_ROOM}))(?: itself)?(?: (?:by )?(?P<many>[\w./]+(?: and a half)?)(?: stops?)?)?(?: (?:too|as well|also|likewise|the same|by as much|equally|then|either))*\W*$", re.I)
_A_FLASH, _A_ROOM = Pattern(rf"\b{_FLASH}", re.I), Pattern(rf"\b{_ROOM}", re.I)
_TAIL = frozenset("too as also likewise the by equally then either".split())


@record
class PutAnew:
    """Whether a half-sentence is one of these, and the claim with it put in, where it can be."""

    is_one: bool
    query: Query | None = None
    new: tuple[Fact, ...] = ()


def put_anew(query: Query, judged: Judged) -> PutAnew:
    """The claim that stands with the other thing, or the other number of layers, in its words."""
    if not judged.claim:
        return PutAnew(False)
    layers = _of_layers(query, judged)
    return layers if layers.is_one else _of_the_other(query, judged)


def _of_the_other(query: Query, judged: Judged) -> PutAnew:
    """"and the flash as well?" after what a longer time does to the room."""
    said, text = _OTHER_THING.match(query.text), judged.query.text
    if said is None or query.asks:
        return PutAnew(False)
    named = (_A_ROOM if said["flash"] else _A_FLASH).search(text)
    if named is None or (_A_FLASH if said["flash"] else _A_ROOM).search(text):
        return PutAnew(False)
    stops = [f for f in judged.query.facts if f.quantity == "stops"]
    told = [f for f in query.facts if f.quantity in ("stops", "number", "count", "relation")]
    same = not told or len(told) == 1 and len(stops) == 1 and abs(told[0].value) == abs(stops[0].value)
    many = (said["many"] or "").lower()
    if not same or len(told) != len(query.facts) or many and many not in _TAIL and not told and not _is_figure_of(many, stops) or not _same_verb(said["verb"], text):
        return PutAnew(True)
    word = "flash" if said["flash"] else (said["room"] or "").lower()
    shift = len(word) - (named.end() - named.start())
    moved = tuple(_moved(f, named.start(), shift, bool(said["flash"])) for f in judged.query.facts)
    return PutAnew(True, replace(judged.query, text=f"{text[: named.start()]}{word}{text[named.end() :]}", facts=moved, cues=judged.query.cues - {"ambient", "backdrop"} if said["flash"] else judged.query.cues | {"ambient"}), ())


_FIGURES = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "half": 0.5, "a": 1.0}


def _is_figure_of(word: str, stops: list[Fact]) -> bool:
    return word in _FIGURES and len(stops) == 1 and abs(stops[0].value) == _FIGURES[word]


def _same_verb(verb: str | None, text: str) -> bool:
    """Whether it is done to the other what was done to the first: "lifts the room … lifts the flash"; "darkens" is not asked of what was said to brighten."""
    return verb is None or verb.lower() in ("the", "my", "for", "of", "on", "with") or verb.lower()[:4] in {w[:4] for w in text.lower().split()}


def _moved(fact: Fact, at: int, shift: int, to_flash: bool) -> Fact:
    fact = replace(fact, of="") if to_flash and fact.of in ("ambient", "backdrop") else fact
    return replace(fact, start=fact.start + shift, end=fact.end + shift) if fact.origin == "said" and fact.start > at else fact


_LAYERS = Pattern(
    r"^\W*(?:(?:and|but|so|then|ok|what about|how about|does that mean|would|will|do) )*(?P<many>two|three|four|five|six|[2-6])(?: (?:of (?:them|'?em|those|these)|layers?|sheets?|silks?|gels?|nets?|scrims?|thicknesses|cloths|pieces))?"
    r"(?: (?:then|together|would|will|do))*,?(?: (?:lose|loses|cost|costs|eat|eats|take|takes|make|makes|are|is|means?|come to|that's|thats|steal|rob))?(?: (?:me|us|about))? (?P<stops>[\w./½⅓⅔ ]{1,24}?) stops?(?: lost| gone| in all| altogether| then| off)*\W*$", re.I)
_COUNT = {"two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0}


def _of_layers(query: Query, judged: Judged) -> PutAnew:
    """"so three lose two stops?" after "two layers at half a stop each, that's one stop?": the number and the sum anew, and each as it was."""
    rows = [f for f in judged.query.facts if f.quantity == "rows" and f.value > 1 and f.origin == "said"]
    lost = sorted((f for f in judged.query.facts if f.quantity in ("loss", "filter_loss", "stops") and f.origin == "said"), key=lambda f: f.start)
    said = _LAYERS.match(query.text) if len(rows) == 1 and len(lost) == 2 else None
    if said is None:
        return PutAnew(bool(rows) and any(f.quantity == "rows" for f in query.facts))
    told = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "stops")]
    sums = [f for f in lost if not _told_of_each(judged.query.text, f)]
    if len(told) != 1 or len(sums) != 1:
        return PutAnew(True)
    total = sums[0]
    many = _COUNT.get(said["many"].lower()) or float(said["many"])
    new = (replace(rows[0], value=many, said=said["many"]), replace(total, value=abs(told[0].value), said=query.text[told[0].start : told[0].end].strip()))
    text, facts = reworded(judged.query.text, list(judged.query.facts), list(zip((rows[0], total), new)))
    return PutAnew(True, replace(judged.query, text=text, facts=tuple(facts)), tuple(f for f in facts if any((f.quantity, f.value, f.said) == (n.quantity, n.value, n.said) for n in new)))


_EACH_AFTER = Pattern(r"[^.?!,;]{0,12}\b(?:each|apiece|every one|per (?:layer|sheet))\b", re.I)
_EACH_BEFORE = Pattern(r"\b(?:each|every|per (?:layer|sheet)|one (?:layer|sheet))\b[^.?!,;]{0,24}$", re.I)


def _told_of_each(text: str, fact: Fact) -> bool:
    return _EACH_AFTER.match(text, fact.end) is not None or _EACH_BEFORE.search(text[: fact.start]) is not None
