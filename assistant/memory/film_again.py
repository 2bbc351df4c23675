"""Half-sentences about the film: "make it half a stop over", "and 18?" of an old scale."""

from __future__ import annotations

import re

from assistant.language.film_habits import HABIT
from assistant.language.film_words import speed_on_scale
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import COUNTED, Fact, Query
from assistant.records import replace
from assistant.scales import exact_aperture, film_speed_difference_stops, nearest_aperture

_FURTHER = Pattern(r"\b(?:another|further|again|more light|still more|on top)\b", re.I)
_OVER_OR_UNDER = Pattern(r"\b(?:over|under|extra|overexpos\w*|underexpos\w*|instead)\b", re.I)
_BOX_SPEED = Pattern(r"\b(?:at|to|on|just|straight|plain) box(?: speed)?\b|\b(?:nothing|no stops?|not) (?:over|under|extra)\b|\bwithout the (?:extra|overexposure)\b", re.I)


def over_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"make it two stops over" after "always a stop over": so many instead, counted from the box."""
    old = next((f for f in scene.facts if f.quantity == "push" and f.cue == HABIT), None)
    if old is None or query.asks:
        return query, scene
    if not query.facts and _BOX_SPEED.search(query.text):
        return replace(query, unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f is not old))
    if len(query.facts) != 1 or query.facts[0].quantity not in ("stops", "signed") or not _OVER_OR_UNDER.search(query.text) or _FURTHER.search(query.text):
        return query, scene
    new = query.facts[0]
    way = {"more": -1.0, "less": 1.0}.get(new.cue) or (-1.0 if new.unit == "+" else 1.0 if new.unit == "-" else old.value)
    made = replace(new, quantity="push", value=abs(new.value) * (1 if way > 0 else -1), unit="", of="film", cue=HABIT)
    return replace(query, facts=(made,)), replace(scene, facts=tuple(f for f in scene.facts if f is not old))


_THE_OTHER_WAY = Pattern(r"^\W*(?:(?:and|or|but|no|if|when|what if|i|we|it's|its|it is|it was|make it|say|is) )*(?P<way>push|pull)(?:ed|ing|s)?(?: it| that)?(?: (?:instead|then|rather|now|the same|by as much|as much))*\W*$", re.I)


def pushed_or_pulled(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and pushed?" after a film that was pulled a stop: as many stops the other way."""
    told = [f for f in scene.facts if f.quantity == "push"]
    said = _THE_OTHER_WAY.match(query.text) if len(told) == 1 and not query.facts else None
    if said is None:
        return query, scene
    made = replace(told[0], value=abs(told[0].value) * (1 if said["way"].lower() == "push" else -1), said=f"{said['way'].lower()}ed as much", origin="said", cue="", start=said.start("way"), end=said.end("way"))
    return replace(query, facts=(made,), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if f is not told[0]))


def scale_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and 18?" after "what is 24 DIN in ISO": a speed on the same old scale."""
    speeds = [f for f in scene.facts if f.quantity == "film_speed"]
    only = len(scene.facts) == 1 and len(speeds) == 1 and speeds[0].unit in ("DIN", "GOST") and bool(scene.asks) and scene.asks[0].quantity == "film_speed"
    numbers = [f for f in query.facts if f.quantity in ("number", "film_speed") and not f.unit]
    if not only or len(numbers) != 1 or len(query.facts) != 1:
        return query, scene
    made = speed_on_scale(numbers[0], speeds[0].unit)
    return (query, scene) if made is None else (replace(query, facts=(made,), unplaced=()), scene)


def pops_on_another_film(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"what about ISO 400?" after pops counted from one f-number to another on 100: what each pop gives goes with the film's speed."""
    told = [f for f in scene.facts if f.quantity == "film_speed"]
    read = [f for f in scene.facts if f.quantity == "aperture"]
    mine = query.facts[0] if len(query.facts) == 1 else None
    if mine is None or mine.quantity != "film_speed" or mine.bad or query.asks or len(told) != 1 or len(read) != 2 or told[0].value <= 0 or [a.quantity for a in scene.asks] != ["count"] or any(f.quantity in ("guide_number", "distance") for f in scene.facts):
        return query, scene
    known = read[0] if wanted_of(read) is not read[0] else read[1]
    exact = exact_aperture(known.value) * 2.0 ** (film_speed_difference_stops(told[0].value, mine.value) / 2)
    mark = nearest_aperture(exact)  # pops are counted by the marks
    gives = replace(known, value=mark.value if abs(mark.error_stops) < 0.03 else exact, origin="kept")
    return replace(query, facts=(replace(mine, cue=COUNTED),)), replace(scene, facts=tuple(gives if f is known else f for f in scene.facts if f is not told[0]))


def wanted_of(read: list[Fact]) -> Fact:
    """Of two apertures the one that is wanted: as it was said, else the smaller opening."""
    wishes = [f for f in read if f.cue == "want"]
    return wishes[0] if len(wishes) == 1 else max(read, key=lambda f: f.value)


_OF_THE_ROLL = Pattern(r"\b(?:rolls?|films?|cassettes?|magazines?|backs?|exposures?)\b|\b(?:on|from|out of) (?:an? )?(?=\d|twelve|twenty|thirty)", re.I)
_MORE_ROLLS = Pattern(r"\b(?:rolls|cassettes|films|magazines)\b|\bone roll\b", re.I)
_ROLLS_OF = (8, 10, 12, 15, 16, 20, 24, 27, 36, 72)


_PLURALS = {"twos": 2.0, "threes": 3.0, "fours": 4.0, "fives": 5.0, "sixes": 6.0, "sevens": 7.0, "nines": 9.0}
_BY_SO_MANY = Pattern(r"\b(?:in |by )?(?P<many>" + "|".join(_PLURALS) + r")\b", re.I)


def says_so_many_each(query: Query, scene: Scene) -> bool:
    """"in threes?" of brackets on a roll."""
    return not query.facts and _BY_SO_MANY.search(query.text) is not None and sum(f.quantity == "count" and f.unit == "frames" and f.value > 1 for f in scene.facts) == 2


def frames_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"three-frame brackets instead?" after five-frame ones on a roll of 36: so many in each, or so many on the roll, and the other as it was."""
    told = sorted((f for f in scene.facts if f.quantity == "count" and f.unit == "frames" and f.value > 1), key=lambda f: f.value)
    by = _BY_SO_MANY.search(query.text) if len(told) == 2 and not query.facts else None
    if by is not None:
        query = replace(query, facts=(Fact("count", _PLURALS[by["many"].lower()], "frames", start=by.start("many"), end=by.end("many"), said=by["many"]),), unknown=())
    mine = [f for f in query.facts if f.quantity in ("count", "number") and not f.bad and f.value == int(f.value) and f.value >= 1]
    if len(told) != 2 or len(mine) != 1 or len(query.facts) != 1 or any(a.quantity != "count" for a in query.asks) or not scene.asks or scene.asks[0].quantity != "count":
        return query, scene
    if mine[0].quantity == "number" and _MORE_ROLLS.search(query.text):
        return replace(query, facts=(replace(mine[0], quantity="rolls"),), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in ("number", "rolls")))
    of_roll = mine[0].value in _ROLLS_OF and (_OF_THE_ROLL.search(query.text) is not None or mine[0].value > told[0].value and mine[0].quantity == "count" and mine[0].said.lower().endswith(("exposure", "exposures", "exp")))
    old = told[1] if of_roll else told[0]
    if mine[0].value < 2 or (mine[0].value >= told[1].value and not of_roll):
        return query, scene
    new = replace(old, value=mine[0].value, said=mine[0].said, start=mine[0].start, end=mine[0].end, origin="said")
    rest = told[0] if of_roll else told[1]
    return replace(query, facts=(replace(rest, origin="kept"), new), asks=(), unplaced=(), cues=query.cues - {"each"}), replace(scene, facts=tuple(f for f in scene.facts if f not in told))


def guide_for_another(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"ok and for four hundred" after a guide number asked for another film."""
    speeds = [f for f in scene.facts if f.quantity == "film_speed"]
    asked = bool(scene.asks) and scene.asks[0].quantity == "guide_number" and bool(speeds) and any(f.quantity == "guide_number" for f in scene.facts)
    number = query.facts[0] if len(query.facts) == 1 else None
    if not asked or number is None or number.quantity != "number" or number.bad or not 12 <= number.value <= 6400:
        return query, scene
    return replace(query, facts=(replace(number, quantity="film_speed", of=""),), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f not in speeds[-1:]))
