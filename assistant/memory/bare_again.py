"""A bare number that is another of what was told: "and at 0.25?" of a magnification, "and 13?" of an EV, "to 22?" of a pair of marks.

It takes the place of the one value of the question that it can be. Where it can be two of them and neither was
changed last, it is left a number, and the person is asked.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant.language.number_words import SMALL, TENS
from assistant.memory.anew import as_told
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import is_aperture_mark, is_film_speed_mark
from assistant.units import LENGTH

EITHER = "either"
"""The cue of a bare number that could be two of the values told."""
_FULL_STOPS = (1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0, 45.0, 64.0)
_NAMED = Pattern(r"[a-z/%]", re.I)


def _is_magnification(value: float, old: Fact, facts: list[Fact]) -> bool:
    return 0 < value <= 10 and (value < 1.4 or old.value / 8 <= value <= old.value * 8)


def _is_exposure_value(value: float, old: Fact, facts: list[Fact]) -> bool:
    return -6 <= value <= 20 and value == round(value * 2) / 2


def _is_t_number(value: float, old: Fact, facts: list[Fact]) -> bool:
    """Glass lets no more through than its opening: a T-number is never below the f-number."""
    opening = next((f.value for f in facts if f.quantity == "aperture"), 0.0)
    return max(opening, 0.7) <= value <= 32


def _is_opening(value: float, old: Fact, facts: list[Fact]) -> bool:
    lets_through = next((f.value for f in facts if f.quantity == "t_number"), None)
    if lets_through is not None:
        return is_aperture_mark(value) and value <= lets_through
    measured = any(f.quantity in ("magnification", "exposure_value") for f in facts)
    return value in _FULL_STOPS[1:] if measured else is_aperture_mark(value)


_KINDS: dict[str, Callable[[float, Fact, list[Fact]], bool]] = {
    "magnification": _is_magnification, "exposure_value": _is_exposure_value, "t_number": _is_t_number, "aperture": _is_opening,
}
_OF_THESE = frozenset({"magnification", "exposure_value", "t_number"})
_BARE = Pattern(r"^\W*(?:(?:and|or|then|so|now|but|no|ok|what about|how about|what if(?: it'?s| it is| it were)?|make it|say|try|at|for|with|of|to|if it'?s|if it were|only|just)\b\W*)*[\w./:]+(?: (?:instead|then|now|please))?\W*$", re.I)


def number_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """A number with no name, in a question of a magnification, an EV or a T-number."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if mine is None or mine.bad or mine.quantity not in ("number", "aperture", "film_speed", "share", "power", "ratio") or _NAMED.search(mine.said) and not mine.said.isalpha() or not _BARE.match(query.text):
        return query, scene
    told = [f for f in scene.facts if f.quantity in _KINDS]
    if _OF_THESE.isdisjoint([f.quantity for f in told]) or mine.quantity != "ratio" and any(f.quantity in ("distance", "guide_number", "focal_length", "count") for f in scene.facts):
        return query, scene
    fits = [f for f in told if (mine.quantity != "ratio" or f.quantity == "magnification") and _KINDS[f.quantity](mine.value, f, told)]
    if len(fits) > 1:
        fits = [f for f in fits if f.quantity == changed_last(talk)] or fits
    if len(fits) != 1:
        return (replace(query, facts=(replace(mine, quantity="number", cue=EITHER),)), scene) if fits else (query, scene)
    return replace(query, facts=(as_told(fits[0], mine.value, mine),), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not fits[0]))


def changed_last(talk: Conversation) -> str:
    """The quantity of the one value that the turn before told anew."""
    if talk.changed is not None:
        return talk.changed.quantity
    facts = talk.last_query.facts if talk.last_query is not None and talk.past else ()
    new = [f for f in facts if f.origin == "said" and f.quantity not in ("modifier", "camera_filter", "remark")]  # "and if the scrim loses two?"
    return new[0].quantity if len(new) == 1 < len(facts) else ""


_ONE_OF = Pattern(r"^\W*(?:(?:and|or|then|so|now|but|what about|how about|what if it'?s|if it'?s|for|with|at|on) )*(?:(?:an?|one|the) )?(?:(?:other |deeper |stronger )?(?:one|filter|glass|factor) )?(?:(?:of|that'?s|marked|at) )?x?\d+(?:\.\d+)? ?x?\W*$", re.I)
_NAMED_ONE = Pattern(r"^\W*(?:(?:and|or|then|so|now|but|what about|how about|what if it'?s|if it'?s|for|with|at|on) )*(?:(?:an?|one|the) )?(?:(?:other |deeper |stronger )?(?:one|filter|glass|factor) )(?:of|that'?s|marked|at) x?\d+(?:\.\d+)? ?x?\W*$", re.I)
_BESIDE_A_FACTOR = frozenset({"factor", "camera_filter", "remark"})


def factor_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and for one of 8?" of a question that holds nothing but a factor: another factor."""
    new = [f for f in query.facts if f.quantity != "camera_filter"]
    mine = new[0] if len(new) == 1 and not query.asks else None
    told = [f for f in scene.facts if f.quantity == "factor"]
    if mine is None or mine.quantity not in ("number", "times", "aperture", "film_speed") or mine.bad or mine.value < 1 or len(told) != 1 or any(c.isalpha() and c not in "xX" for c in mine.said):
        return query, scene
    alone = {f.quantity for f in scene.facts} <= _BESIDE_A_FACTOR and mine.quantity in ("number", "times")
    if not (_ONE_OF.match(query.text) if alone else _NAMED_ONE.match(query.text)):
        return query, scene
    return replace(query, facts=(as_told(told[0], mine.value, mine),), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))


_TO_END = Pattern(r"^\W*(?:(?:and|or|then|so|now|what about|how about|what if) )*(?P<end>to|from|up to|down to)\b", re.I)
_FITS: dict[str, Callable[[float], bool]] = {"aperture": is_aperture_mark, "film_speed": is_film_speed_mark}


def end_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and to f/16?" after "from f/5.6 to f/11": the end of the pair anew, and its beginning as it was."""
    said = _TO_END.match(query.text)
    mine = query.facts[0] if said is not None and len(query.facts) == 1 and not query.asks else None
    told = _pair(scene)
    if said is None or mine is None or mine.bad or len(told) != 2 or not scene.asks or scene.asks[0].quantity not in ("stops", "factor", "count"):
        return query, scene
    quantity, second = told[0].quantity, said["end"].lower() != "from"
    if mine.quantity != quantity and not (mine.quantity in ("number", "film_speed") and quantity in _FITS and _FITS[quantity](mine.value)) and not (mine.quantity == "power" and quantity == "shutter" and "/" in mine.said):
        return query, scene
    old = told[int(second)]
    new = replace(as_told(old, mine.value, mine), start=old.start, end=old.end)
    pair = (replace(told[0], origin="kept"), new) if second else (new, replace(told[1], origin="kept"))
    return replace(query, facts=pair, unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in (quantity, f"{quantity}_range")))


def _pair(scene: Scene) -> list[Fact]:
    """The two values of one kind that are held against each other, in the order said."""
    ranges = [f for f in scene.facts if f.quantity == "aperture_range"]
    if len(ranges) == 1 and not any(f.quantity == "aperture" for f in scene.facts):
        whole = ranges[0]
        return [replace(whole, quantity="aperture", other=math.nan, end=whole.start + 1), replace(whole, quantity="aperture", value=whole.other, other=math.nan, start=whole.end - 1)]
    told = sorted((f for f in scene.facts if f.quantity in ("aperture", "film_speed", "shutter")), key=lambda f: f.start)
    return told if len({(f.quantity, f.of) for f in told}) == 1 else []


_STOPS_ALONE = Pattern(
    r"^\W*(?:(?:and|or|then|so|now|no|but|well|actually|sorry|what about|how about|what if|if|make|say|only|just)\b\W*)*(?P<it>(?:it|that|this)(?:'s| is| was| were| only| just| took| takes?| costs?| cost| lost| loses| ate| eats)* *)?"
    r"(?:only |just |about )*(?P<many>a third|one third|two thirds|a half|half|one and a half|two and a half|one|two|three|four|\d(?:\.\d+)?)(?: (?:instead|then|only))?\W*$", re.I)
_CALLED = Pattern(
    r"[a-z][,;.:]? (?:(?:so|then|and|but|actually|well) )*(?P<it>(?:call|make|reckon|say) (?:it|that|this))(?: (?:about|more like|only|just|nearer|maybe))* "
    r"(?P<many>a third|one third|two thirds|a half|half|one and a half|two and a half|one|two|three|four|\d(?:\.\d+)?)(?: (?:instead|then|now))?\W*$", re.I)
"""After what takes the light: "the ceiling is really cream, so call it 1.5"."""
_SPOKEN = {"a third": 1 / 3, "one third": 1 / 3, "two thirds": 2 / 3, "a half": 0.5, "half": 0.5, "one and a half": 1.5, "two and a half": 2.5, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0}


def says_stops_alone(query: Query, scene: Scene, talk: Conversation | None = None) -> re.Match[str] | None:
    """"and if it were two thirds?" of what one thing takes, "one?" of a push: so many stops, and no length or mark."""
    told = _one_of_stops(scene)
    called = _CALLED.search(query.text) if told is not None and not query.asks else None
    if told is not None and called is not None and told.unit and told.unit in query.cues | {f.unit for f in query.facts} and {f.quantity for f in query.facts} <= {"number", "share", "modifier", "camera_filter"}:
        return called
    if told is None or query.asks or any(f.quantity not in ("number", "share", "aperture", "power", "loss") or f.quantity == "power" and "power" in f.said or f.unit and f.quantity == "loss" for f in query.facts):
        return None
    said = _STOPS_ALONE.match(query.text)
    if said is None or told.quantity == "push" and scene.asks[:1] and scene.asks[0].quantity in ("film_speed", "speed"):
        return said
    part = said["many"].lower().endswith(("third", "thirds", "half"))
    return said if part and (said["it"] or said["many"].lower() != "half") or said["it"] or talk is not None and changed_last(talk) == told.quantity else None


_OF_A_GROUP = frozenset({"gap", "stops", "rows", "count", "max_distance", "remark", "place"})


def _one_of_stops(scene: Scene) -> Fact | None:
    between = [f for f in scene.facts if f.quantity == "stops" and f.value]
    if len(between) == 1 and scene.asks and scene.asks[0].quantity == "distance" and any(f.quantity == "gap" for f in scene.facts) and {f.quantity for f in scene.facts} <= _OF_A_GROUP:
        return between[0]  # "how far back, half a stop front to back at most", then "a third": the stops between the rows
    told = [f for f in scene.facts if f.quantity in ("loss", "filter_loss", "push", "nd") and f.value]
    return told[0] if len(told) == 1 and scene.asks and told[0].unit != "density" and not any(f.quantity in ("stops", "relation", "rows") for f in scene.facts) else None


def stops_alone(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The stops of the one thing that was told in stops, anew."""
    said, told = says_stops_alone(query, scene, talk), _one_of_stops(scene)
    if said is None or told is None:
        return query, scene
    many = _SPOKEN.get(said["many"].lower()) or float(said["many"])
    new = replace(told, value=math.copysign(many, told.value), start=said.start("many"), end=said.end("many"), said=said["many"], origin="said")
    return replace(query, facts=(new,), unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told))


_THIRDS = Pattern(r"^\W*(?:(?:and|or|then|so|now|no|but|well|what about|how about|what if|if it'?s|make it|say|with|for|at|only|just|by)\b\W*)*(?P<many>a third|one third|two thirds)(?: (?:instead|then|only|either way|each way))?\W*$", re.I)
_IN_STOPS = frozenset({"stops", "relation", "loss", "filter_loss", "nd", "push", "signed"})


def thirds_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and with two thirds?" after half a stop either way: of a stop, whatever else was told."""
    told = [f for f in scene.facts if f.quantity in _IN_STOPS]
    said = _THIRDS.match(query.text) if len(told) == 1 and told[0].unit != "density" and not query.asks else None
    if said is None or len(query.facts) > 1 or any(f.quantity in ("power", "share") for f in scene.facts):
        return query, scene
    new = replace(told[0], value=math.copysign(_SPOKEN[said["many"].lower()], told[0].value), start=said.start("many"), end=said.end("many"), said=said["many"], origin="said")
    return replace(query, facts=(new,), unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))


_PART = Pattern(r"^\W*(?:(?:and|or|then|so|now|no|but|what about|how about|what if|at|to|with|make it|say)\b\W*)*1/\d+(?:,? (?:instead|then|now|please|rather))*\W*$", re.I)
_OF_POWER = frozenset({"power", "power_down", "guide_number", "energy", "min_power", "recycle"})


def time_alone(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"1/8?" after a shutter time: another one, where no power was told."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    timed = [f for f in scene.facts if f.quantity == "shutter"]
    if mine is None or mine.quantity != "power" or not timed or not _PART.match(query.text) or any(f.quantity in _OF_POWER for f in scene.facts) or scene.asks and scene.asks[0].quantity in ("power", "energy"):
        return query, scene
    return replace(query, facts=(replace(mine, quantity="shutter", unit="s"),)), scene


_BACK = Pattern(r"\b(?:back|again|after all)\b", re.I)


def was_a_time(mine: Fact, query: Query, talk: Conversation) -> Fact | None:
    """The shutter time that a bare number puts back, where one of so many parts of a second was told before, and no such film."""
    if mine.value < 2 or not mine.said.strip().isdigit() or not _BACK.search(query.text) or any(f.quantity in ("film_speed", "rated") and f.value == mine.value for old in (talk.scene, *talk.past) for f in old.facts):
        return None
    return next((f for old in reversed(talk.past) for f in old.facts if f.quantity == "shutter" and math.isclose(f.value * mine.value, 1.0, rel_tol=1e-6)), None)


def time_put_back(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"put the 250 back", "back to 250" after 1/60 took the place of 1/250: that time again, and no film."""
    mine = next((f for f in query.facts if f.quantity in ("number", "film_speed") and f.said.strip().isdigit() and not f.bad), None)
    before = was_a_time(mine, query, talk) if mine is not None and not query.asks else None
    now = [f for f in scene.facts if before is not None and f.quantity == "shutter" and f.of == before.of]
    if mine is None or before is None or len(now) != 1 or now[0].value == before.value:
        return query, scene
    new = replace(as_told(before, before.value, mine), cue="")
    return replace(query, facts=tuple(new if f is mine else f for f in query.facts), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not now[0]))


def range_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"12 and 15?" after rows at 10 and 13 feet: the two places anew."""
    told = [f for f in scene.facts if f.quantity == "length_range"]
    numbers = [f for f in query.facts if f.quantity in ("number", "number_range") and not f.bad]
    values = [value for f in numbers for value in ((f.value,) if f.quantity == "number" else (f.value, f.other))]
    if len(told) != 1 or told[0].unit not in LENGTH or len(numbers) != len(query.facts) or len(values) != 2 or min(values) <= 0 or query.asks:
        return query, scene
    scale = LENGTH[told[0].unit]
    new = replace(told[0], value=values[0] * scale, other=values[1] * scale, start=numbers[0].start, end=numbers[-1].end, said=query.text[numbers[0].start : numbers[-1].end], origin="said")
    return replace(query, facts=(new,), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))


_OTHER_WAY = Pattern(r"\b(?:the )?other way (?:round|around|about)\b|\bvice versa\b|\b(?:swap|reverse|turn) (?:them|it|that)(?: (?:round|around))?\b|\bthe reverse\b", re.I)


def says_other_way(query: Query) -> bool:
    """"and the other way round?", with nothing else said."""
    return not query.facts and not query.asks and len(query.text.split()) <= 8 and _OTHER_WAY.search(query.text) is not None


def other_way(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and the other way round?" after "from f/5.6 to f/11": the same two values from the second to the first."""
    told = _pair(scene) if says_other_way(query) else []
    if len(told) != 2 or not scene.asks or scene.asks[0].quantity not in ("stops", "factor"):
        return query, scene
    first, second = told
    turned = (replace(first, value=second.value, said=second.said, origin="said"), replace(second, value=first.value, said=first.said, origin="said"))
    return replace(query, facts=turned, unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in (first.quantity, f"{first.quantity}_range")))


_A_SECOND = Pattern(r"\b(?P<many>\d+(?:\.\d+)?|two|three|four|five|six|eight|ten|twelve|twenty)(?: (?:flashes|times|pops|of them))? (?:a|per|each|every|to the) second\b|\b(?P<hertz>\d+(?:\.\d+)?) ?(?:hz|hertz)\b", re.I)


def rate_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and at 10 a second?" of a strobe: another rate, and no time of a second."""
    old = [f for f in scene.facts if f.quantity == "frequency"]
    said = _A_SECOND.search(query.text) if len(old) == 1 and not query.asks and query.facts else None
    if said is None or any(f.end <= said.start() or f.start >= said.end() for f in query.facts):
        return query, scene
    many = said["many"] or said["hertz"]
    new = replace(old[0], value=float(SMALL.get(many.lower()) or TENS.get(many.lower()) or many), start=said.start(), end=said.end(), said=said.group(), origin="said")
    return replace(query, facts=(new,), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not old[0]))



def reading_kept(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"one pop reads f/6.3", noted; then "how many pops for f/16?": what one gives, and what is wanted."""
    read = [f for f in scene.facts if f.quantity == "aperture" and f.cue != "want"]
    wanted = [f for f in query.facts if f.quantity == "aperture"]
    of_one = any(f.quantity == "count" and f.value == 1 and f.unit in ("pops", "flashes") for f in scene.facts)
    if scene.asks or not query.asks_for("count") or len(read) != 1 or len(wanted) != 1 or not of_one or query.has("count"):
        return query, scene
    return replace(query, facts=(replace(read[0], origin="kept"), *query.facts)), replace(scene, facts=tuple(f for f in scene.facts if f is not read[0]))
