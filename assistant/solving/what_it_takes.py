"""What a thing in the light takes, told backwards: by the setting that made good for it, or as what is left of a sum.

"without the silk 1/32 power was enough, behind it I need 1/8" and "the diffuser makes me move from 4 m to 2.8 m" tell
by kinds: one setting twice, and one thing that came between. "the three of them take 4 stops in all, the dome two and
the gel one" tells a sum and all its parts but one.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.ambient import combined_factor, factor_from_stops
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, film_speed_difference_stops, shutter_difference_stops
from assistant.solving import marks
from assistant.solving.solution import Solution
from assistant.units import LENGTH

_ASIDE = frozenset({"modifier", "camera_filter", "remark", "place", "size", "format", "rows"})
_TAKES = Pattern(r"\b(?:cost|los[esti]|eat|swallow|tak|steal|absorb|drink|rob|soak|dim|weaken|hold\w* back|keep\w* back|factor|worth|good for|amount)\w*", re.I)
_CLOSE = Pattern(r"\b(?:effective|bellows|close[- ]?up|extension|tubes?|in close|closer|macro|magnification|life[- ]size)\b", re.I)
_THING = Pattern(r"\b(?:filters?|bellows|tubes?|ceiling|bounc\w+|glass|cloth|panel)\b", re.I)

_WEIGHED: dict[str, Callable[[float, float], float]] = {
    "power": lambda one, other: math.log2(other / one),
    "shutter": shutter_difference_stops,
    "film_speed": film_speed_difference_stops,
    "distance": lambda one, other: 2 * math.log2(other / one),
}
"""Settings by which something in the light is made good for, and the stops between two values of each."""


def asked_in(text: str) -> str:
    """The last sentence, which asks."""
    return re.split(r"[.;!](?=\s)", text.rstrip(" ?.!"))[-1]


def made_good(query: Query, ask: Ask) -> Solution | None:
    """One setting told twice and a thing that came between: it takes what the setting makes good for, and nothing else may differ."""
    told = {quantity: _values(query, quantity) for quantity in _WEIGHED}
    twice = [quantity for quantity, facts in told.items() if len(facts) == 2]
    kinds = {f.quantity for f in query.facts} - _ASIDE - {"length_range", "aperture", "rated"}
    if len(twice) != 1 or not kinds <= set(_WEIGHED) or len(_values(query, "aperture")) > 1 or any(len(facts) > 2 for facts in told.values()):
        return None
    things = {f.unit for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"}
    if len(things) != 1 or not _TAKES.search(asked_in(query.text)) and not (_IS_THAT.search(asked_in(query.text)) and _COSTS_SO.search(query.text)):
        return None
    one, other = told[twice[0]]
    lost = abs(_WEIGHED[twice[0]](one.value, other.value))
    return _told(ask, lost, query.facts, f"By the {twice[0].replace('_', ' ')} that makes good for it." if lost else "") if lost > 0.02 else None


def strength_for_times(query: Query, ask: Ask) -> Solution | None:
    """"1/500 without, which ND gets me to 1/60": the stops between two times at one opening, as a filter is sold."""
    times = _values(query, "shutter")
    if len(times) != 2 or {f.quantity for f in query.facts} - _ASIDE - {"shutter", "aperture", "film_speed", "nd_asked"} or len(_values(query, "aperture")) > 1 or len(_values(query, "film_speed")) > 1:
        return None
    strength = abs(shutter_difference_stops(times[0].value, times[1].value))
    return _told(ask, strength, query.facts, "", strength=True) if strength > 0.02 else None


_IS_THAT = Pattern(r"\bhow many stops (?:is|was|does|did|makes?|would) (?:that|it|this)\b", re.I)
_COSTS_SO = Pattern(r"\b(?:cost|los[est]|eat|ate|swallow|tak|took|steal|stole|absorb|drink|drank|rob)\w*", re.I)


def _values(query: Query, quantity: str) -> list[Fact]:
    """The values told of a setting, each once; both ends of a way that a light was moved."""
    told = [*query.all(quantity), *(query.all("rated") if quantity == "film_speed" else ())]
    found = {round(f.value, 9): f for f in reversed(told) if f.value > 0}
    moved = query.last("length_range") if quantity == "distance" and not found else None
    if moved is not None:
        return [moved, Fact(quantity, moved.other, moved.unit)]
    return list(found.values())[::-1]


_TOTAL = Pattern(r"\b(?:together|altogether|all told|in all|in total|total(?:s|led|ling)?|between them|combined|as a whole|(?:the )?whole (?:lot|stack|rig|thing|outfit|assembly)|the lot|the (?:stack|pair|set|rig)|come(?:s)? to|make[s]?(?= (?:up )?[\w. /]+ stops?\b)|both(?! (?:ends|sides)))\b", re.I)
_SHARE_ASKED = Pattern(r"\b(?:rest|remain\w*|other|others|third|fourth|last|alone|by itself|on its own|for itself|itself|share|part|left (?:for|to))\b", re.I)
_PARTS = frozenset({"loss", "filter_loss", "nd", "stops", "power_down"})


def the_rest(query: Query, ask: Ask) -> Solution | None:
    """A sum of losses and all its parts but the one that is asked of: what is left; of factors, what the whole is divided by."""
    factors = query.all("factor")
    losses = [f for f in query.facts if f.quantity in _PARTS and f.value]
    said = losses or factors
    if losses and factors or len(said) < 2 or {f.quantity for f in query.facts} - _PARTS - _ASIDE - {"factor"}:
        return None
    whole = max(said, key=lambda f: f.value)
    parts = [f for f in said if f is not whole]
    if not _TOTAL.search(_clause(query.text, whole)) or any(_TOTAL.search(_clause(query.text, f)) and _clause(query.text, f) != _clause(query.text, whole) for f in parts):
        return None
    asked = asked_in(query.text)
    asked_from = len(query.text.rstrip(" ?.!")) - len(asked)
    if not _SHARE_ASKED.search(asked) and not _unpriced(query, said, asked_from):
        return None
    if factors:
        left = math.log2(whole.value / combined_factor([f.value for f in parts]))
    else:
        left = whole.value - sum(f.value for f in parts)
    if left <= 0.02:
        return None
    grey = any(f.quantity == "nd" for f in said) and not query.has("modifier")
    return _told(ask, left, query.facts, "What all take together, without what the others take.", strength=grey)


def _clause(text: str, fact: Fact) -> str:
    """What is said around a figure, up to the marks and joints before and behind it."""
    before = re.split(r"[.;:?!](?=\s)|, (?=and|but|of which|so)|\b(?:but|of which|while|whereas)\b", text[: fact.start])[-1]
    behind = re.split(r"[.;:?!,](?=\s)|[?!]|\b(?:and|but|of which|while|whereas)\b", text[fact.end :])[0]
    return f"{before} # {behind}"


def _unpriced(query: Query, said: list[Fact], asked_from: int) -> bool:
    """Whether the one thing asked of is none of those whose own share was told."""
    asked = {f.unit for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.start >= asked_from}
    whole = max(said, key=lambda f: f.value)
    return len(asked) == 1 and not asked & {f.unit for f in said if f is not whole}


_GUIDE = Pattern(r"\b(?:guide(?: numbers?| no\.?)?|gns?)\b", re.I)
_BARE = Pattern(r"\b(?:bare|without|naked|unmodified|on its own|alone)\b", re.I)


def by_guides(query: Query, ask: Ask) -> Solution | None:
    """"bare my guide number is 36 m, in the box it drops to 24": two guide numbers of one flash, of which the second has no name of its own."""
    figures = [f for f in query.facts if f.quantity in ("guide_number", "distance", "number", "aperture") and not f.of and "f/" not in f.said]
    if len(figures) != 2 or {f.quantity for f in query.facts} - _ASIDE - {"guide_number", "distance", "number", "aperture"} or not _GUIDE.search(query.text[: figures[1].start]):
        return None
    things = {f.unit for f in query.facts if f.quantity == "modifier"}
    if len(things) != 1 or not _BARE.search(query.text) or not _TAKES.search(asked_in(query.text)) or "m" in {f.unit for f in figures} and "ft" in {f.unit for f in figures}:
        return None
    one, other = (f.value / LENGTH[f.unit] if f.quantity == "distance" and f.unit in LENGTH else f.value for f in figures)
    lost = abs(2 * math.log2(one / other)) if one > 0 and other > 0 else 0.0
    return _told(ask, lost, query.facts, "A guide number goes with the square root of the light, so it counts twice.") if 0.02 < lost < 8 else None


def by_openings(query: Query, ask: Ask) -> Solution | None:
    """"I opened up from f/11 to f/5.6 for the bellows": the factor, or the scale, by the stops between the two."""
    read, span = query.all("aperture"), query.last("aperture_range")
    ends = [f.value for f in read] if read else [span.value, span.other] if span is not None else []
    if len(ends) != 2 or {f.quantity for f in query.facts} - _ASIDE - {"aperture", "aperture_range"} or not _CLOSE.search(query.text) or query.has("modifier") or query.has("camera_filter"):
        return None
    if not _FOR_IT.search(query.text):
        return None
    lost = abs(aperture_difference_stops(ends[0], ends[1]))
    if ask.quantity != "magnification":
        return _told(ask, lost, query.facts, "The stops between the two openings.")
    scale = math.sqrt(factor_from_stops(lost)) - 1
    return Solution(answers=(Quantity("magnification", scale, "x"),), used=query.facts, topic="losses", working=("the root of the exposure factor, less one",))


_FOR_IT = Pattern(r"\b(?:effective|clos(?:e|ed|ing)(?! (?:up|in)\b)|open\w*|needs?|needed|wants?|wanted|takes?|took|had to|made me|instead of|rather than|where the meter|for the (?:bellows|extension|close))\b", re.I)


def _told(ask: Ask, lost: float, used: tuple[Fact, ...], note: str, strength: bool = False) -> Solution:
    factor, stops = marks.factor(lost), marks.stops(lost if strength else -lost)
    answers = (factor, stops) if ask.quantity == "factor" else (stops, factor)
    return Solution(answers=answers, used=used, topic="losses", lead="" if strength or ask.quantity == "factor" else "Lost", notes=(note,) if note else ())


_MORE_THAN = Pattern(r"\s*(?:of (?:a stop )?(?:light )?)?(?P<way>more|less) than\b", re.I)


def than_another(query: Query, ask: Ask) -> Solution | None:
    """"a box loses half a stop more than the brolly, which takes 1.5: what does the box take?": the other's loss and what lies between them."""
    said = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "stops", "relation") and f.value]
    apart = [f for f in said if _MORE_THAN.match(query.text, f.end)]
    if len(said) != 2 or len(apart) != 1 or {f.quantity for f in query.facts} - _ASIDE - {"loss", "filter_loss", "stops", "relation"} or not _TAKES.search(asked_in(query.text)):
        return None
    base = next(f for f in said if f is not apart[0])
    things = [f for f in query.facts if f.quantity in ("modifier", "camera_filter")]
    asked_from = len(query.text.rstrip(" ?.!")) - len(asked_in(query.text))
    asked = {f.unit for f in things if f.start >= asked_from}
    other = next((f.unit for f in things if f.start >= apart[0].end), "")
    if len(asked) != 1 or not other or len({f.unit for f in things}) > 2:
        return None
    way = 1.0 if _MORE_THAN.match(query.text, apart[0].end)["way"].lower() == "more" else -1.0  # type: ignore[index]
    way = -way if _GIVES.search(query.text[max(0, apart[0].start - 24) : apart[0].start]) else way
    first_asked = asked != {other}
    told_of_other = base.unit in (other, "") or base.start > apart[0].end and other not in asked
    if first_asked is not told_of_other:
        return None  # what was told is what is asked
    lost = base.value + (way if first_asked else -way) * abs(apart[0].value)
    return _told(ask, lost, query.facts, "") if lost > 0.02 else None


_GIVES = Pattern(r"\b(?:gives?|lets?|leaves?|passes|reads?|brings?|yields?|keeps?|saves?|is|transmits?)(?: me| us| through)?(?: about)?\s*$", re.I)
"""A thing that gives more takes less."""


def by_thing(query: Query, ask: Ask) -> Solution | None:
    """"with the umbrella f/8, with the box f/6.3, bare f/16: what does the box cost?": the bare reading against the one of the thing asked of."""
    read, bare = query.all("aperture"), [f for f in query.all("camera_filter") if f.unit == "BARE"]
    if len(read) < 3 or len(bare) != 1 or {f.quantity for f in query.facts} - _ASIDE - {"aperture"} or not _TAKES.search(asked_in(query.text)):
        return None
    asked_from = len(query.text.rstrip(" ?.!")) - len(asked_in(query.text))
    names = sorted((f for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.start < asked_from), key=lambda f: f.start)
    asked = {f.unit for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE" and f.start >= asked_from}
    if len(names) != len(read) or len(asked) != 1 or len({f.unit for f in names}) != len(names):
        return None
    named_first = all(n.start < r.start for n, r in zip(names, read))
    if not named_first and not all(r.start < n.start for n, r in zip(names, read)):
        return None
    of = {n.unit: r.value for n, r in zip(names, read)}
    mine = of.get(next(iter(asked)))
    lost = aperture_difference_stops(mine, of["BARE"]) if mine is not None else 0.0
    return _told(ask, abs(lost), query.facts, f"From f/{of['BARE']:g} bare to f/{mine:g}.") if abs(lost) > 0.02 else None


_SWAPPED = Pattern(r"\b(?:swap|exchang|trad|replac|chang|switch)\w*\b(?:[^.?!]|\.\d)*\b(?:for|with|by|to)\b", re.I)


def by_swap(query: Query, ask: Ask) -> Solution | None:
    """"I swapped the 1.5 stop umbrella for a box and the meter fell from f/8 to f/6.3: what does the box cost?": what was told of the one, and the stops between the two."""
    said = [f for f in query.facts if f.quantity in ("loss", "filter_loss") and f.value]
    span, read = query.last("aperture_range"), query.all("aperture")
    ends = [f.value for f in read] if read else [span.value, span.other] if span is not None else []
    if len(said) != 1 or len(ends) != 2 or {f.quantity for f in query.facts} - _ASIDE - {"loss", "filter_loss", "aperture", "aperture_range"} or not _SWAPPED.search(query.text) or not _TAKES.search(asked_in(query.text)):
        return None
    asked_from = len(query.text.rstrip(" ?.!")) - len(asked_in(query.text))
    asked = {f.unit for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.start >= asked_from}
    if len(asked) != 1 or asked == {said[0].unit}:
        return None
    goes = min((f for f in query.facts if f.quantity in ("modifier", "camera_filter")), key=lambda f: f.start).unit
    fell = abs(aperture_difference_stops(ends[0], ends[1])) * (1 if ends[0] > ends[1] else -1)
    lost = said[0].value + (fell if goes == said[0].unit else -fell)
    return _told(ask, lost, query.facts, "What the other took, and the stops between the two readings.") if lost > 0.02 else None


def by_guide(query: Query, ask: Ask) -> Solution | None:
    """"guide number 120 feet, through an umbrella the meter says f/5.6 at 10 feet: what does it take?": what the flash alone would give there, against what was read."""
    read, worn = query.all("aperture"), {f.unit for f in query.all("modifier")}
    kinds = {f.quantity for f in query.facts} - _ASIDE
    if len(read) != 1 or read[0].of or len(worn) != 1 or not {"guide_number", "distance", "aperture"} <= kinds <= {"guide_number", "distance", "aperture", "power", "film_speed", "preferred_unit"} or not _TAKES.search(asked_in(query.text)):
        return None
    from assistant.solving import flash

    bare = flash.solve(replace(query, facts=tuple(f for f in query.facts if f.quantity not in ("modifier", "aperture")), asks=(Ask("aperture"),)))
    if bare is None or bare.status != "answered" or len(bare.answers) != 1 or not isinstance(bare.answers[0].value, float):
        return None
    lost = 2 * math.log2(bare.answers[0].value / read[0].value)
    found = _told(ask, lost, (*query.facts,), f"Alone it would give f/{bare.answers[0].value:.3g} there.") if 0.02 < lost < 8 else None
    return found and replace(found, assumed=bare.assumed)


RULES: dict[str, tuple[Callable[[Query, Ask], Solution | None], ...]] = {
    "stops": (by_guide, than_another, by_thing, by_swap, the_rest, made_good, by_guides, by_openings), "nd": (the_rest, strength_for_times), "factor": (by_thing, the_rest, made_good, by_guides, by_openings), "magnification": (by_openings,),
}
"""By what is asked."""
