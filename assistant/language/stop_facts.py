"""What stops are said of: a loss, a push, a power, or one light against another."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.language.items import Item
from assistant.language.place import Place, fact_at
from assistant.language.segments import is_role
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace


def stop_fact(place: Place) -> Fact:
    """The fact that so many stops make where they stand: a push, a loss, a relation, a power, or plain stops.

    The value is in stops, signed for a push only; film speeds that were read as stops become a range of them.
    """
    speeds = patterns.match(r"(\d{2,4}) ?(?:to|-) ?(\d{2,4})", place.text[place.item.start : place.item.end].lower())
    if speeds and place.item.value >= 25:  # "pushed 400 to 1600 stops?": film speeds, whose stops are asked
        return fact_at(place, "number_range", float(speeds[1]), other=float(speeds[2]), of="")
    before = place.beside(-2)
    if place.item.value >= 25 and before is not None and before.kind == "film_speed" and place.mark("TO", "VERSUS", "AND", "DASH"):
        return fact_at(place, "film_speed", of="", unit="", bad="")  # "ISO 100 to 800 stops?"
    """What stops are: a loss, a push, a relation between lights, a power turned down, a difference."""
    for rule in (_push, _filter_loss, _modifier_loss, _relation, _power_down):
        found = rule(place)
        if found:
            return found
    return fact_at(place, "stops", of=place.owner, cue=_direction(place))


def _direction(place: Place) -> str:
    """Whether more or less light is meant; empty where it was not said."""
    if place.item.unit in ("-", "+"):
        return "less" if place.item.unit == "-" else "more"
    before = place.text[: place.item.start]
    bound = _NO_MORE_THAN.search(before) is not None or _THAN_SO_MUCH.search(before) is not None and place.near("less", "more", before=0, after=2) is not None
    near = place.near("less", "more", "down", "up", "open_up", "close_down", before=0 if bound else 3, after=2)
    table = {"less": "less", "more": "more", "down": "less", "up": "more", "open_up": "more", "close_down": "less"}
    if near and near.start < place.item.start and table[near.word] == "more" and _IS_LOST.search(place.text[near.end : place.item.start]):
        return "less"
    return table[near.word] if near else ""


_IS_LOST = Pattern(r"\b(?:los(?:e|es|ing)|drop(?:s|ping)?|fall(?:s|ing)?|shed(?:s|ding)?|giv(?:e|es|ing) (?:away|up)|sink(?:s|ing)?)(?: (?:about|just|only|him|her|it|me))*(?: a| an| one| the)* *$", re.I)
"""Nearer than a "more" of something else: "how many metres more can she go before losing a third of a stop"."""
_NO_MORE_THAN = Pattern(r"\b(?:los(?:e|es|ing)|drop(?:s|ping)?|fall(?:s|ing)?|shed(?:s|ding)?|giv(?:e|es|ing) (?:away|up)|sink(?:s|ing)?) (?:any )?(?:no )?more than(?: (?:about|some|just))?(?: a| an| one| the)* *$", re.I)
"""Right before what may be lost at most, which "more" does not make a gain."""
_THAN_SO_MUCH = Pattern(r"\b(?:more|less) than(?: (?:about|some|just|at most))?(?: a| an| one| the)* *$", re.I)
"""A limit on the figure, whose way the word after it tells: "without going more than two thirds of a stop under"."""


def _push(place: Place) -> Fact | None:
    near = place.near("push", "pull", before=5, after=3)
    if not near:
        return None
    if near.word == "pull" and patterns.match(r"pull\w* (?:the (?:light|flash|lamp|key|strobe|head) |back)", place.text[near.start :], re.I):
        return None
    if near.word == "pull" and patterns.match(r"pull\w* it ", place.text[near.start :], re.I) and not patterns.search(r"film|roll|iso|asa|box speed|lab|slide|chrome|neg|contrast|highlights|develop|process", place.text, re.I):
        return None
    if _another_is_pushed(place, near):
        return None
    sign = 1 if near.word == "push" else -1
    return fact_at(place, "push", sign * abs(place.item.value), of="film")


def _another_is_pushed(place: Place, push: Item) -> bool:
    """"an orange filter of two stops and pushing two stops": the push has stops of its own after it."""
    at = place.number_of(push)
    return at > place.at and any(i.kind == "mark" and i.word in ("AND", "COMMA") for i in place.items[place.at + 1 : at]) and any(i.kind == "stops" for i in place.items[at + 1 : at + 4])


def _filter_loss(place: Place) -> Fact | None:
    near = place.kind_near("camera_filter", before=5, after=3)
    if near and (near.word == "BARE" or _of_what_stands_before(place, near)):
        return None
    return fact_at(place, "filter_loss", abs(place.item.value), of="camera", unit=near.word) if near else None


def _of_what_stands_before(place: Place, glass: Item) -> bool:
    """"a dome that costs one stop and a polariser …": said of the dome, and the filter is the next in the row."""
    at = place.number_of(glass)
    if at < place.at or not any(i.kind == "mark" and i.word in ("AND", "COMMA", "END") for i in place.items[place.at + 1 : at]):
        return False
    return place.kind_near("modifier", before=5, after=0) is not None and place.near("loss", before=3, after=0) is not None


_SURFACE_TAKES = Pattern(r"\b(?:wall|ceiling|paint|plaster|roof)\b[^.,;:?!\d]{0,24}$", re.I)


def _of_the_surface(place: Place, modifier: Item) -> bool:
    """"the wall takes two stops and my dome another one": said of the wall, and the dome is the next in the row."""
    at = place.number_of(modifier)
    if at < place.at or not any(i.kind == "mark" and i.word in ("AND", "COMMA", "END") for i in place.items[place.at + 1 : at]):
        return False
    return _SURFACE_TAKES.search(place.text[: place.item.start]) is not None


def _modifier_loss(place: Place) -> Fact | None:
    loss = place.near("loss", before=5, after=3)
    modifier = place.kind_near("modifier", before=6, after=3)
    if modifier is not None and loss and _of_the_surface(place, modifier):
        modifier = None
    adjacent = place.beside(1)
    if adjacent is not None and adjacent.kind == "modifier":
        return fact_at(place, "loss", abs(place.item.value), unit=adjacent.word)
    if not modifier and place.near("less", "more", before=0, after=2) and _BRINGS_TO.search(place.text[: place.item.start]):
        return None
    if not modifier and place.near("less", before=0, after=2) and patterns.search(r"\b(?:drops?|puts?|sends?|takes?|brings?|pulls?|sinks?)\b[^.,;?]{0,30}\b(?:wall|background|backdrop|room|ambient|sky|window|them|it)\W*$", place.text[: place.item.start], re.I):
        return None  # "what drops that wall six stops under"; what is worn by no light is no loss
    if loss and (modifier or place.near("less", before=0, after=2) or "hss" in place.cues or "ceiling" in place.cues or "wall" in place.cues):
        return fact_at(place, "loss", abs(place.item.value), unit=modifier.word if modifier else _what_loses(place))
    if modifier and (not place.near("less", "more", before=2, after=2) or _THAN_BARE.match(place.text, place.item.end)):
        return fact_at(place, "loss", abs(place.item.value), unit=modifier.word)
    if loss and "how_many" not in place.cues:
        return fact_at(place, "loss", abs(place.item.value), unit=_what_loses(place))
    if "hss" in place.cues and (place.item.unit == "-" or place.near("less", "down", before=3, after=3)):
        return fact_at(place, "loss", abs(place.item.value), unit="hss")
    return None


_BRINGS_TO = Pattern(r"\b(?:drops?|puts?|sends?|takes?|brings?|pulls?|sinks?|raises?|lifts?)\b[^.,;?]{0,30}\b(?:key|main|fill|hair|rim|kicker|accent|background|wall)(?: ?light| lamp| flash| head)?(?: down| back| up)? to (?:just |about |only |exactly )*$", re.I)
"""Before the stops that a lamp is to be over or under: "takes the fill to" a stop under the key."""
_THAN_BARE = Pattern(r"\s*(?:of light )?(?:down|under|below|less|lower)(?: light)? (?:on|than|from|against|compared (?:with|to)) (?:the |its |a |my )?(?:bare|naked)\b", re.I)
"""After so many stops: "I measured my softbox at 1.5 stops down on the bare head"."""


def _what_loses(place: Place) -> str:
    for word in ("ceiling", "wall", "hss"):
        if word in place.cues:
            return word
    return ""


def _relation(place: Place) -> Fact | None:
    """"the fill one stop under the key": whose, which way, against what."""
    way = place.near("less", "more", before=2, after=2)
    if not way:
        return None
    start = place.number_of(way)
    against = next((i for i in place.items[max(start, place.at) + 1 : max(start, place.at) + 5] if is_role(i) or i.kind == "aperture" or i.kind == "mark" and i.word == "LENS" and patterns.search(r"\b(?:the|my) \w*$", place.text[: i.end], re.I)
                    or (i.kind == "cue" and i.word in ("ambient", "backdrop", "meter"))), None)
    behind = ("ambient", "backdrop") if place.cues & {"bounce", "ceiling"} else ("ambient", "backdrop", "wall")
    subject = place.last_before(lambda i: is_role(i) or (i.kind == "cue" and i.word in behind))
    if against is not None and is_role(against) and patterns.search(r"\b(?:where|what|how|which)\b", place.text[place.item.end : against.start], re.I):
        against = None  # "a stop less where does fill stand": what is asked
    if against is not None and is_role(against) and _GIVEN_BY.search(place.text[place.item.end : against.start]):
        against = None  # "one stop less from the key light": what it gives itself
    if against is not None and against.word == "meter" and _ANOTHER_CLAUSE.search(place.text[place.item.end : against.start]):
        against = None  # "two stops under while the flash is right at f/4": another thing that is read
    if against is not None and against.kind == "aperture" and place.text[: against.start].lower().rstrip().endswith((" at", " on")):
        against = None  # "one stop under at f/8": where the lens stands
    if against is not None and is_role(against) and place.text[: against.start].lower().rstrip().endswith(" as"):
        subject, against = against, None
    if against is not None and subject is not None and is_role(against) and against.word == subject.word:
        against = None  # "the hair light a stop brighter than that on her hair": where it falls, and no other light
    if (mirrored := _mirrored(place, start)) is not None:
        subject, against = mirrored
    if against is None and subject is None:
        return None
    to = "" if against is None else ("aperture" if against.kind in ("aperture", "mark") else against.word)
    if to in ("meter",):
        to = "ambient"
    return fact_at(place, "relation", of="" if subject is None else "backdrop" if subject.word == "wall" else subject.word, to=to, cue=way.word)


_GIVEN_BY = Pattern(r"\b(?:less|more)(?: light| output)? (?:from|out of) (?:the |my |her |his )?$", re.I)
_ANOTHER_CLAUSE = Pattern(r"\b(?:while|and|but|when)\b", re.I)
_COMPARES = frozenset({"ambient", "backdrop"})


def _mirrored(place: Place, way: int) -> tuple[Item, Item] | None:
    """"two stops under the key is what the background reads", "under the key by two stops is the hair light": whose, and against what, where the light itself comes last."""
    near = enumerate(place.items[way + 1 : max(way, place.at) + 10], way + 1)
    lights = [n for n, i in near if is_role(i) or i.kind == "cue" and i.word in _COMPARES]
    against = next((n for n in lights if way < n <= way + 3), None)
    subject = next((n for n in lights if against is not None and max(against, place.at) < n <= max(against, place.at) + 6), None)
    if against is None or subject is None or place.items[subject].word == place.items[against].word:
        return None
    between = place.text[place.items[max(against, place.at)].end : place.items[subject].start]
    return (place.items[subject], place.items[against]) if _IS.fullmatch(between) else None


_IS = Pattern(r",? *(?:is|'s|should be|must be|is to be|was|would be|goes|stands|sits|comes)(?: (?:what|where|how|the|my|a|reading of|level of))* *", re.I)


def _power_down(place: Place) -> Fact | None:
    """"turned down two stops": a power, when it is the flash that is turned."""
    near = place.near("down", "up", before=3, after=2)
    if not near or near.word != "down" or place.near("open_up", "close_down"):
        return None
    fact = fact_at(place, "power_down", abs(place.item.value), cue="less")
    lies = _TO_LIE.search(place.text[: place.item.start]) if fact.of and fact.of != "key" else None
    return replace(fact, quantity="relation", to="key") if lies is not None else fact


_TO_LIE = Pattern(r"\b(?:fill|hair|rim|kicker|accent)(?: ?light| flash| head)? (?:to |should |must |has to )(?:be|lie|sit|read|come out|come in|come) (?:(?:about|just|exactly|roughly) )*$", re.I)
"""Before how far under it is to lie, where nobody turns anything: "for the fill to be two stops down"."""
