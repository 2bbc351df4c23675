"""Where to stand for so many stops, asked again of another number of them: "how much further to lose one stop?", then "and for two?"."""

from __future__ import annotations

import math
import re

from assistant.language.number_words import STOPS_SPOKEN
from assistant.memory.bare_again import EITHER, changed_last
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.units import LENGTH

_STOPS = ("loss", "stops", "power_down")
_OF_A_MOVE = frozenset({*_STOPS, "distance", "number"})
_BY_WORDS = r"(?:to )?(?:lose|drop|gain|add|shed|pick up|win|get|(?P<take>take off|knock off|shave off|take|knock|shave))"
_SO_MANY = Pattern(
    rf"^\W*(?:(?:and|or|then|so|now|ok|okay|but|no|actually|what about|how about|what if|make it|say|just|only)\b\W*)*(?:(?P<aim>for|{_BY_WORDS}) )?(?:only |just |about )*"
    r"(?P<many>a third|one third|two thirds|a half|half|one and a half|two and a half|one|two|three|four|[1-4](?:\.\d+)?|an?(?= (?:(?:full|whole) )?stop))(?: (?:full|whole)(?= stop))?(?P<named> stops?| of them| of a stop)?(?P<off> off(?: (?:him|her|them|it))?)?(?:,? (?:instead|then|now|please))*\W*$", re.I)


def says_another_move(query: Query, scene: Scene) -> re.Match[str] | None:
    """"and for two?" after it was asked where the light goes to lose one stop."""
    if query.asks or _moved_by(scene) is None or any(f.quantity not in ("number", "share", "aperture", "power", *_STOPS) for f in query.facts):
        return None
    said = _SO_MANY.match(query.text)
    return said if said is None or not (said["off"] or said["take"]) or _TAKEN_OFF.search(scene.text) else None


_TAKEN_OFF = Pattern(r"\b(?:tak\w*|took|knock\w*|shav\w*|los\w+|shed\w*|drop\w*)\b[^.?!]{0,40}\bstops?\b|\bstops? off\b", re.I)
"""The move was asked for less light, as the one asked for now."""


def _moved_by(scene: Scene) -> Fact | None:
    """The stops that the move is asked for, where nothing but the place of the light is told beside them."""
    told = [f for f in scene.facts if f.quantity in _STOPS and not (f.quantity == "stops" and f.cue)]  # "one stop less": counted anew by `stops_again`
    places = [f for f in scene.facts if f.quantity == "distance"]
    of_a_move = scene.asks[:1] and scene.asks[0].quantity == "distance" and {f.quantity for f in scene.facts} <= _OF_A_MOVE
    same = len({(f.quantity, f.value) for f in told}) == 1  # "a stop too much: how far back to take that stop off?"
    return told[0] if of_a_move and same and len(places) == 1 and told[0].value else None


def move_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The stops anew and the place as it was. A small figure with nothing before it may be a place as well: then it is left a number, and the person is asked."""
    said, told = says_another_move(query, scene), _moved_by(scene)
    if said is None or told is None:
        return query, scene
    place = next(f for f in scene.facts if f.quantity == "distance")
    many = STOPS_SPOKEN.get(said["many"].lower()) or (1.0 if said["many"].lower() in ("a", "an") else float(said["many"]))
    last = changed_last(talk)
    if not (said["aim"] or said["named"] or last == told.quantity or _only_stops(said["many"].lower(), many, place)):
        return (query, scene) if last == "distance" else (replace(query, facts=tuple(replace(f, quantity="number", cue=EITHER) for f in query.facts)), scene)
    new = replace(told, quantity="loss" if told.quantity == "power_down" or said["off"] or said["take"] else told.quantity, cue="", value=math.copysign(many, told.value), start=said.start("many"), end=said.end("many"), said=said["many"], origin="said")
    return replace(query, facts=(new,), unplaced=(), unknown=()), replace(scene, facts=tuple(f for f in scene.facts if (f.quantity, f.value) != (told.quantity, told.value)))


def _only_stops(said: str, many: float, place: Fact) -> bool:
    """Parts of a stop, a word where the place was told in figures, and the figure at which the light stands now are no place to go to."""
    spelled = not said[0].isdigit()
    return said.endswith(("third", "thirds", "a half")) or spelled and place.said[:1].isdigit() or math.isclose(many * LENGTH.get(place.unit, LENGTH["ft"]), place.value)
