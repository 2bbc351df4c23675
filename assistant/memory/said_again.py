"""The question that stands, said once more with one value in the place of another: "and at 12 ft?" after "GN 80, 8 ft, what stop?".

A half-sentence that tells one value and nothing else is put into the words of the question, where
exactly one value of its kind stands, so that it means what the whole question said anew would mean:
what is known only by its words (what was read before, which of the two, through what) stays as it was.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable

from assistant.memory.bare_again import was_a_time
from assistant.memory.conversation import Conversation
from assistant.memory.in_place_of import AMOUNT_ALONE, as_it_was_called, in_place_of, told_with_place
from assistant.memory.in_the_same_words import FILLING, IF_SO, ONE_OF_ITS_KIND, blank, in_the_same_words, is_bare, is_near
from assistant.memory.named_again import SAYS_ONLY_SO, called_so, without_names
from assistant.memory.of_its_size import as_a_part_of_the_charge, as_a_place, of_its_size
from assistant.memory.sharp_again import LENGTHS, as_a_limit, without_its_end
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import is_aperture_mark, is_film_speed_mark
from assistant.solving.pop_facts import own
from assistant.units import LENGTH

_FEW = 3
"""Words beside the figure of a value that is told as one thing."""
_SPOKEN = 5
"""Words of a length that is told in words."""
_FIGURE = re.compile(r"\d+(?:\.\d+)?(?:/\d+)?")


def said_again(query: Query, talk: Conversation) -> tuple[Fact, str, tuple[int, int]] | None:
    """The old value, the words of the question with the new value in them, and where it stands there; None where the half-sentence tells more, or the question does not say it all."""
    last = standing(talk)
    query = without_its_end(query, last) if last is not None else query
    if last is None or talk.missing or query.claim and not (IF_SO.match(query.text) and _was_a_verdict(talk)):
        return None
    query, instead, placed = in_place_of(query)
    wrong = _NOT_SO.search(query.text)
    if wrong is None and (alike := in_the_same_words(query, last)) is not None and says_all(last, talk) and _keeps_its_way(*alike, query, last) and not _of_either(alike[0], last):
        words = _in_its_form(*alike)
        return None if words is None else (alike[1], *_put_in(words, alike[1], last))
    mine = _only_value(query if wrong is None else _without(query, wrong))
    named = mine is None and wrong is None
    mine = _only_value(without_names(query, last)) if named else mine
    if mine is None or not says_all(last, talk) or mine.quantity in ("number", "film_speed") and was_a_time(mine, query, talk) is not None:
        return None
    mine = as_a_place(_as_a_guide(as_a_limit(mine, last), query, last), query, talk, last)
    mine = as_a_part_of_the_charge(mine, query, last)
    if _shape(mine) == "#" and _CORRECTS.match(query.text):
        return None  # "no, 3": in the place of what was told last
    same = [f for f in last.facts if f.quantity == mine.quantity and _is_told_as(f, wrong["old"])] if wrong else _focused(mine, query, last) or _loaded(mine, query, last) or _alike(mine, last)
    if instead is not None:
        same = as_it_was_called(instead, mine, last)
    elif placed is not None:
        same = told_with_place(placed, mine, last)
    elif named:
        same = called_so(same, query, last) if len(same) > 1 or query.cues <= SAYS_ONLY_SO else []  # one that goes by a word of the trade is left to its own rules
    same = _second_of_two(same, mine, query, last) if len(same) == 2 and wrong is None and not mine.of else same
    same = _changed_before(mine, query, talk, last) or same if wrong is None else same
    charged = _of_the_charge(last) if mine.quantity == "power" and wrong is None else None
    same = [charged] if charged is not None else same
    if len(same) != 1 or not _keeps_its_way(mine, same[0], query, last):
        return None
    if wrong is None and mine.of not in ("", same[0].of) or query.asks and not all(a.quantity == mine.quantity for a in query.asks):
        return None
    words = _in_its_form(mine, same[0]) if last.text[same[0].start : same[0].end].strip() == same[0].said.strip() else None
    if words is None or _of_either(mine, last) or same[0].quantity == "focus_distance" and last.has("sharp_limit") and "focus" not in query.text.lower():
        return None
    return same[0], *_put_in(words, same[0], last)


def _was_a_verdict(talk: Conversation) -> bool:
    """Whether a yes or a no was given, so that "would it be at f/16?" asks for the same once more."""
    return talk.judged is not None or talk.last_solution is not None and talk.last_solution.answers[:1] != () and talk.last_solution.answers[0].quantity == "claim"


def _put_in(words: str, old: Fact, last: Query) -> tuple[str, tuple[int, int]]:
    """The words of the question with the new value where the old one stood, and its place; a power that is said twice is said anew twice: "it must stay on 1/8. how many pops at 1/8"."""
    text, start, end = last.text, old.start, old.end
    for twin in sorted((f for f in last.facts if _is_twin(f, old)), key=lambda f: -f.start):
        text = f"{text[: twin.start]}{words}{text[twin.end :]}"
        start, end = (start, end) if twin.start > start else (start + len(words) - (twin.end - twin.start), end + len(words) - (twin.end - twin.start))
    lead = len(text[start:end]) - len(text[start:end].lstrip())
    return f"{text[: start + lead]}{words}{text[end:]}", (start + lead, start + lead + len(words))


def _is_twin(fact: Fact, old: Fact) -> bool:
    """Whether this is the same power said in the same words at another place."""
    return fact.quantity == old.quantity == "power" and fact.start != old.start and (fact.value, fact.of, fact.said) == (old.value, old.of, old.said) and fact.origin != "kit"


def _changed_before(mine: Fact, query: Query, talk: Conversation, last: Query) -> list[Fact]:
    """The value that the turn before told anew, where the new one has no other name: "and 8 m?" after "when the wall is 6 m from it?", "two hundred?" after "and at 300 mm?"."""
    was = talk.changed
    if was is None or mine.of or not (mine.quantity == was.quantity or mine.quantity == "number" and is_bare(mine.said) and is_near(mine, was)):
        return []
    if not _NAMELESS.fullmatch(blank(query.text, (mine,))):
        return []  # "now she's at f/8", after "the wall meters f/4"
    return [f for f in last.facts if (f.quantity, f.value, f.of, f.start) == (was.quantity, was.value, was.of, was.start)]


_NAMELESS = Pattern(r"\W*(?:(?:and|or|then|so|now|but|no|ok|what|how|about|if|it|it's|that's|make|say|try|at|to|with|of|is|was|were|instead|please|only|just)\b\W*)*", re.I)
"""Beside a value that goes on from the one before."""
_PUT_RIGHT = Pattern(r"^\W*(?:no|nope|sorry|wait|oh|ah|i mean|i meant|make (?:it|that))\b|\binstead\W*$", re.I)
_AT_A_PLACE = Pattern(r"\b(?:at|from|to|by|stands?|subject|distance|away|he's|she's|they're)\b", re.I)


def _as_a_guide(mine: Fact, query: Query, last: Query) -> Fact:
    """"no, 180 foot" after "my 120 foot flash loses two stops": a length put right where the only length told is a guide number is another guide number."""
    guides = [f for f in last.facts if f.quantity == "guide_number"]
    if len(guides) == 1 and _too_far_for_it(mine, query, guides[0], last):
        return replace(mine, quantity="guide_number", value=mine.value / LENGTH.get(mine.unit, 1.0))
    if mine.quantity != "distance" or mine.of or len(guides) != 1 or guides[0].unit != mine.unit or any(f.quantity in LENGTHS for f in last.facts):
        return mine
    asked = {a.quantity for a in last.asks}
    meant = asked == {"guide_number"} and not _AT_A_PLACE.search(query.text) or asked == {"distance"} and _PUT_RIGHT.search(query.text)
    return replace(mine, quantity="guide_number") if meant else mine


def _is_told_as(fact: Fact, old: str) -> bool:
    """Whether a value was told by this figure, in figures or in words."""
    return AMOUNT_ALONE.findall(fact.said) == [old] or math.isclose(fact.value / LENGTH.get(fact.unit, 1.0), float(old), rel_tol=1e-6)


_FARTHEST = 0.6
"""Of a guide number: at f/1.7 and wider hardly anything is lit."""


def _too_far_for_it(mine: Fact, query: Query, guide: Fact, last: Query) -> bool:
    """"and 60 m?" after "a 40 m flash at 5 m": as a distance it would ask for a lens that there is not."""
    placed = [f for f in last.facts if f.quantity == "distance"]
    if mine.quantity != "distance" or mine.of or mine.unit not in LENGTH or len(placed) != 1 or not any(a.quantity == "aperture" for a in last.asks) or _AT_A_PLACE.search(query.text):
        return False
    unit = LENGTH.get(guide.unit or mine.unit, 1.0)
    return mine.unit == (guide.unit or mine.unit) and mine.value > _FARTHEST * guide.value * unit and mine.value > 3 * placed[0].value


_CORRECTS = Pattern(r"\W*(?:no|nope|sorry|wait|actually|i mean|i meant|make (?:it|that))\b", re.I)


def standing(talk: Conversation) -> Query | None:
    """The question or the claim that was answered last, and stands."""
    if talk.judged is not None:
        return talk.judged.query if talk.judged.claim else None
    before = talk.last_solution
    return talk.last_query if before is not None and before.answers and before.topic != "claims" else None


_NOT_NEGATIVE = Pattern(r",? (?:and |of course )?not (?:minus|negative|zero|nought|nothing|below zero|a minus|under nothing)(?: (?:\d+(?:\.\d+)?|six|anything))?(?: ?(?:ft|feet|foot|m|metres?|meters?))?(?: of course)?\W*$", re.I)
"""After the right value, what was wrong with the one before: "6 feet, not minus"."""


def with_the_right_value(query: Query, rejected: Query) -> str | None:
    """The words of a question that was rejected, with the value told now where the one stood that cannot be: "typo, 6 feet"; None where that is not plain."""
    bad = [f for f in rejected.facts if f.bad and f.end > f.start]
    wrong = _NOT_NEGATIVE.search(query.text)
    told = query if wrong is None else _without(query, wrong)
    mine = _only_value(_unnamed(told, bad[0].of) if len(bad) == 1 and bad[0].of else told)
    if mine is None or len(bad) != 1 or mine.of not in ("", bad[0].of) or rejected.text[bad[0].start : bad[0].end].strip() != bad[0].said.strip():
        return None
    if mine.quantity not in (bad[0].quantity, "number") and not {mine.quantity, bad[0].quantity} <= {"share", "power"}:
        return None
    words = mine.said.strip()
    if mine.quantity == "number":
        words = re.sub(r"(?:minus |-)?\d+(?:\.\d+)?(?:/\d+)?", lambda _: mine.said.strip(), bad[0].said.strip(), count=1)
    return f"{rejected.text[: bad[0].start]}{words}{rejected.text[bad[0].end :]}"


def _unnamed(query: Query, of: str) -> Query:
    """The query without the name of what its value is of: "front row at 10", where the front row's place is the one that cannot be."""
    named = re.sub(rf"\b(?:the )?{re.escape(of)}(?: (?:row|light|one))?(?:'s)?\b", lambda found: " " * len(found[0]), query.text, flags=re.I)
    return replace(query, text=named, mentioned=()) if set(query.mentioned) <= {of} else query


_TO_THE_OTHER = Pattern(r"\W*(?:(?:back|up|down|out|in|over|away) )?(?:to|into|until)\b\W*", re.I)
_TO = Pattern(r"\b(?:to|into)\W*$", re.I)
_FROM = Pattern(r"^\W*(?:(?:and|no|or|but|sorry|what about) )*from\b|\b(?:first|before|originally|earlier|at the start)\b", re.I)
_SHOT = Pattern(r"\b(?:been (?:on|at)|shot (?:it |them |that )?(?:at|on)|set (?:it |the lens )?(?:to|at|on)|used|exposed (?:it |them )?at|gone (?:with|to))\W*$", re.I)
_NOW = Pattern(r"\b(?:now|this time|today|tonight)\b", re.I)
_SUPPOSED = Pattern(r"\b(?:if|what|which|how many|how much|what about|how about|suppose|supposing|say|instead)\b", re.I)


def _second_of_two(two: list[Fact], mine: Fact, query: Query, last: Query) -> list[Fact]:
    """Of two values of a kind the one that is still open: "back from 6 feet to 12", then "no, to 9"; "4 pops were right. if we give one", then "and 16 pops"; both where that is not plain."""
    one, other = sorted(two, key=lambda f: f.start)
    between = last.text[one.end : other.start]
    ends = _TO_THE_OTHER.fullmatch(between) and (_TO.search(query.text[: mine.start]) or _CORRECTS.match(query.text))
    supposed = _SUPPOSED.search(between) and not _SUPPOSED.search(last.text[: one.start])
    if _FROM.search(query.text):
        return [one] if _TO_THE_OTHER.fullmatch(between) or supposed or _NOW.search(between) else two
    if _SHOT.search(query.text[: mine.start]) and len(shot := [f for f in two if _SHOT.search(last.text[max(0, f.start - 24) : f.start])]) == 1:
        return shot  # "the meter says 11, I shot at f/8", then "and if I'd been on 16"
    return [other] if ends or supposed else two


_FOCUSED = Pattern(r"\bfocus\w*(?: (?:it|on|at|to|set|is|now))*\W*$", re.I)


def _focused(mine: Fact, query: Query, last: Query) -> list[Fact]:
    """"focused at 3?": another focus in the unit of the one that was told, and no lens."""
    bare = mine.quantity == "number" and _FOCUSED.search(query.text[: mine.start]) is not None
    return [f for f in last.facts if f.quantity == "focus_distance" and f.origin != "kit"] if bare else []


_IN_THE_CAMERA = Pattern(r"\s*(?:film |speed )?(?:in (?:it|there|the (?:camera|back|body|magazine))|loaded)\b", re.I)
_DIALLED = Pattern(r"\b(?:dial|meter|set|rated|metered|left|at|to)\b[^.?!\d]{0,16}$", re.I)


def _loaded(mine: Fact, query: Query, last: Query) -> list[Fact]:
    """"and with 400 in it?": the film that is in the camera, and neither a time nor what the meter stood at."""
    if mine.quantity not in ("number", "film_speed") or not is_film_speed_mark(mine.value) or not _IN_THE_CAMERA.match(query.text, mine.end):
        return []
    speeds = [f for f in last.facts if f.quantity == "film_speed" and f.origin != "kit"]
    return speeds if len(speeds) < 2 else [f for f in speeds if not _DIALLED.search(last.text[: f.start])]


def _alike(mine: Fact, last: Query) -> list[Fact]:
    """The values of the question that the new one may take the place of: of its kind, else told in the same form ("31 %" for "30 %", "2.5 stops" for "1.5 stops")."""
    told = [f for f in last.facts if f.origin != "kit"]
    same = _once([f for f in told if f.quantity == mine.quantity and (mine.quantity != "count" or f.unit == mine.unit)], last.text)
    same = _not_the_one(same, last.text) if mine.quantity == "count" and len(same) == 2 else [f for f in same if f.quantity != "sharp_limit" or math.isfinite(f.value)]
    shape = _shape(mine)
    marks = [f for f in told if f.quantity == "aperture" and not f.of]
    if not same and mine.quantity == "number" and is_aperture_mark(mine.value) and len(marks) == len(told) == 2:
        return marks
    counts = [f for f in told if f.quantity == "count" and f.unit in ("pops", "flashes")]
    if not same and mine.quantity == "number" and len(counts) == 2 and mine.value == int(mine.value) and 1 <= mine.value <= _MOST_POPS and not any(f.quantity == "distance" for f in told):
        return _not_the_one(counts, last.text)
    energies = [f for f in told if f.quantity == "energy"]
    if not same and mine.quantity == "film_speed":
        same = [f for f in told if f.quantity == "rated"]  # a film that was only rated has no other speed
    if energies and mine.said.strip().isdigit() and mine.quantity in ("number", "film_speed") and not any(f.quantity in ("film_speed", "rated") for f in told) and mine.value >= _LEAST_ENERGY:
        return energies
    formed = [f for f in told if f.quantity in (ONE_OF_ITS_KIND if mine.quantity != "max_distance" else ("blur",)) and _shape(f) == shape and (shape != "#" or any(c.isdigit() for c in f.said))]
    if not same and mine.quantity == "number" and is_film_speed_mark(mine.value) and mine.value >= _SLOWEST and mine.said.strip().isdigit():
        return _once([f for f in told if f.quantity in ("film_speed", "rated")], last.text) if not any(f.quantity in _AS_LARGE for f in told) else []
    if not same and not formed and mine.quantity == "number":
        return of_its_size(mine, told)
    of_two = len(same) > 1 and formed == [f for f in same if f in formed]  # by their form alone two of one kind are not told apart
    return formed if len(formed) == 1 and (not same or shape == "#" and not of_two) else same


_AGAINST = Pattern(r" (?:than|instead of|rather than|in place of|compared (?:to|with)|versus) ", re.I)


_THAN_ONE = Pattern(r"\bthan (?:(?:that|those|the light|what) )?(?:(?:of|with|from|by|for) )?(?:just |only )?$", re.I)


def _not_the_one(counts: list[Fact], text: str) -> list[Fact]:
    """Of "six flashes" and "than a single flash" the six: what they are held against stays one."""
    ones = [f for f in counts if f.value == 1 and _THAN_ONE.search(text[: f.start])]
    return [f for f in counts if f not in ones] if len(ones) == 1 else counts


def _once(facts: list[Fact], text: str) -> list[Fact]:
    """Values without those read twice from the same words; of two held against each other the one that is spoken of: "1600 than 100"."""
    by_place = list({(f.start, f.end): f for f in facts}.values())
    if len(by_place) == 2:
        one, other = sorted(by_place, key=lambda f: f.start)
        return [one] if _AGAINST.search(text[one.end : other.start]) else by_place
    return by_place


def _shape(fact: Fact) -> str:
    """A value as it is told, without its figure and its plural.

    >>> _shape(Fact("loss", 1.5, said="1.5 stops")), _shape(Fact("stops", 1.0, said="a stop"))
    ('# stop', '# stop')
    """
    return re.sub(r"\s*#\s*", "# ", _AMOUNT.sub("#", fact.said.strip().lower()), count=1).replace("stops", "stop").strip()


_MOST_POPS = 64
_LEAST_ENERGY = 25
_SLOWEST = 50
"""Of a film speed that is told by its bare figure; below it a figure may be anything."""
_AS_LARGE = frozenset({"energy", "focal_length", "count", "duration", "frequency", "extension"})
_AMOUNT = re.compile(r"\d+(?:\.\d+)?(?:/\d+)?|\b(?:half an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fifteen|sixteen|eighteen|twenty|twenty-four|thirty|thirty-two|forty|fifty|sixty)\b")
_SHOT_AT = frozenset({"shutter", "aperture", "power", "distance"})


def _of_either(mine: Fact, last: Query) -> bool:
    """A film speed after a reading that was taken at another: the reading stays."""
    if mine.quantity in ("film_speed", "rated"):
        return any(f.of == "ambient" and f.quantity != "shutter" or f.quantity == "exposure_value" for f in last.facts) and (last.claim or any(a.quantity in _SHOT_AT for a in last.asks))
    return of_lens_or_draw(mine, last)


def of_lens_or_draw(mine: Fact, last: Query) -> bool:
    """A bare length in millimetres where a lens and a draw were told: which of them it is, is known only by the words around it."""
    return mine.quantity in ("focal_length", "extension", "number") and last.has("extension") and last.has("focal_length") and not any(c.isalpha() for c in mine.said.lower().replace("mm", ""))


def means_the_same(last: Query, whole: Query, old: Fact, anew: tuple[int, int]) -> bool:
    """Whether the question read anew tells what it told before, but for the one value that is new."""
    def told(facts: Iterable[Fact]) -> list[tuple[str, float, str]]:
        return sorted((f.quantity, round(f.value, 9), f.of) for f in facts if f.origin != "kit" and f.quantity != "preferred_unit")

    new = [f for f in whole.facts if f.start < anew[1] and f.end > anew[0]]
    new += [f for f in whole.facts if new and _is_twin(f, new[0]) and any(_is_twin(other, old) for other in last.facts)]
    return told(f for f in last.facts if not (f.start == old.start and f.end == old.end or _is_twin(f, old))) == told(f for f in whole.facts if f not in new) and any(f.quantity == old.quantity for f in new)


_NOT_SO = Pattern(r",? (?:and )?not (?P<old>\d+(?:\.\d+)?)(?: ?(?:ft|feet|foot|m|metres?|meters?|cm|stops?|pops?))?\W*$", re.I)
"""After the right value, the one that it is put in the place of: "12 ft behind her, not 6"."""


def _without(query: Query, wrong: re.Match[str]) -> Query:
    """The query without the value that is denied."""
    return replace(query, text=query.text[: wrong.start()], facts=tuple(f for f in query.facts if f.end <= wrong.start()))


def _of_the_charge(last: Query) -> Fact | None:
    """The power that is asked for, where a time or a number of pops is told for another: "how long at a quarter; 8 sec at full"."""
    powers = list({f.value: f for f in last.facts if f.quantity == "power" and f.origin != "kit"}.values())
    known = [f for f in last.facts if f.quantity in _TOLD_AT_A_POWER and f.unit not in ("frames", "rolls", "sheets")]
    if len(powers) == 2 and not known and last.asks and last.asks[0].quantity == "count" and sum(f.value == 1 for f in powers) == 1:
        return min(powers, key=lambda f: f.value)  # "how many pops at 1/16 make one at full?"
    if len(powers) != 2 or len(known) != 1 or not last.asks or last.asks[0].quantity not in ("duration", "count"):
        return None
    its = own(known[0], powers, last.text)
    return powers[0] if its is powers[1] else powers[1]


_TOLD_AT_A_POWER = frozenset({"shutter", "recycle", "duration", "time", "interval", "count"})


def _only_value(query: Query) -> Fact | None:
    """The one value of a half-sentence that has nothing else in it."""
    told = [f for f in query.facts if f.quantity != "remark"]
    if len(told) != 1 or told[0].quantity not in ONE_OF_ITS_KIND | {"number", "max_distance", "factor"} or told[0].bad or told[0].origin != "said" or query.mentioned or query.units and told[0].unit not in query.units:
        return None
    mine = told[0]
    way = _WAY.match(query.text[mine.end :]) if mine.quantity in ("stops", "loss") else None
    around = (query.text[: mine.start], query.text[mine.end + (way.end() if way else 0) :])
    if mine.quantity in ("max_distance", "blur"):
        around = (_AT_MOST.sub(" ", around[0]), _AT_MOST.sub(" ", around[1]))
    return mine if all(FILLING.fullmatch(words) for words in around) else None


_AT_MOST = Pattern(r"\b(?:at (?:the )?most|at the outside|no more than|not more than|up to|max(?:imum)?|tops|or less|less than|under|is (?:all|the most))\b", re.I)
_WAY = Pattern(r"\s*(?P<way>over|under)\b", re.I)
_THE_WAY = Pattern(r"\s*(?:of )?(?P<way>over|under)(?:-?expos\w+)?\b", re.I)


def _keeps_its_way(mine: Fact, old: Fact, query: Query, last: Query) -> bool:
    """Whether a value that is told as over or under takes the place of one that was told the same way."""
    return _WAY.match(query.text[mine.end :]) is None or _same_way(query.text[mine.end :], last.text[old.end :])


def _same_way(new: str, old: str) -> bool:
    """Whether what follows both values is over, or under: "one stop over" after "takes two stops of overexposure"."""
    one, other = _WAY.match(new), _THE_WAY.match(old)
    return one is not None and other is not None and one["way"].lower() == other["way"].lower()


def says_all(last: Query, talk: Conversation) -> bool:
    """Whether all that the answer went by stands in the words of the question."""
    told = [f for f in last.facts if f.origin != "kit" and f.quantity != "preferred_unit"]
    here = all(f.start < f.end for f in told) and sorted(last.text[f.start : f.end].strip() for f in told) == sorted(f.said.strip() for f in told)  # two may have changed places
    known = {(f.quantity, f.value) for f in last.facts}
    return here and all((f.quantity, f.value) in known for f in talk.scene.facts)


def _in_its_form(mine: Fact, old: Fact) -> str | None:
    """The new value in the words of the old one: another figure for its figure where both have one and the same unit, else its own words."""
    new, was = mine.said.strip(), old.said.strip()
    if mine.quantity == "number" and not _FIGURE.search(new):
        new = f"{mine.value:g}"  # "thirty", of ten seconds
    if mine.quantity == "number" and len(_AMOUNT.findall(was)) == 1:
        return _AMOUNT.sub(new, was)
    figures, olds = _FIGURE.findall(new), _FIGURE.findall(was)
    if mine.quantity == "number" and old.quantity == "count" and old.unit:
        return f"{new} {old.unit}"
    if mine.quantity == old.quantity == "count" and mine.unit == old.unit:
        return new
    if mine.quantity == old.quantity == "count" and new.isdigit():
        return f"{new} {old.unit}"
    beside = (len(_FIGURE.sub(" ", was).split()), len(_FIGURE.sub(" ", new).split()))
    if len(figures) == len(olds) == 1 and (mine.unit == old.unit or mine.quantity == "number" or _shape(mine) == _shape(old)) and ("/" in figures[0]) is ("/" in olds[0]) and beside[0] <= _FEW:
        return was.replace(olds[0], figures[0], 1)
    if mine.quantity == old.quantity and mine.unit == old.unit and mine.unit in LENGTH and not olds and len(was.split()) <= _SPOKEN and new.split()[-1] == was.split()[-1]:
        return new  # "3 metres" for "two and a half metres"
    if not figures and not olds and mine.quantity == old.quantity and "stop" in was:
        return new if "stop" in new else f"{new} of a stop" if mine.value < 1 else f"{new} stops"
    if _shape(mine) == _shape(old) or old.said.strip().isdigit() and new.isdigit():
        return new
    return new if beside[0] <= 1 and beside[1] <= 1 or old.quantity == mine.quantity == "power" else None
