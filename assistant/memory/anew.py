"""Values told anew in a half-sentence: a pair for a pair, one loss more, so many of the same."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable

from assistant.language.number_words import STOPS_SPOKEN
from assistant.language.stop_words import LOSING
from assistant.memory.bare import of_a_move, wanted_way
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import COUNTED, TAKES_LIGHT, Fact, Query
from assistant.records import replace
from assistant.scales import is_aperture_mark, is_film_speed_mark
from assistant.units import LENGTH

_PAIRED = ("shutter", "film_speed", "aperture", "distance", "exposure_value", "power", "energy", "guide_number")
_LITTLE = frozenset({"place", "remark", "modifier"})


def lone(query: Query, *quantities: str) -> Fact | None:
    """The only fact of a half-sentence that asks for nothing, where it is of one of these quantities."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    return mine if mine is not None and mine.quantity in quantities and not mine.bad else None


def instead(query: Query, scene: Scene, new: Iterable[Fact], old: Iterable[Fact]) -> Pair:
    """The new facts for what the half-sentence told, and the old ones out of the scene."""
    gone, told = {id(f) for f in old}, {f.said for f in query.facts}
    return replace(query, facts=tuple(new), unplaced=tuple(u for u in query.unplaced if u not in told)), replace(scene, facts=tuple(f for f in scene.facts if id(f) not in gone))


def as_told(old: Fact, value: float, mine: Fact) -> Fact:
    """An old fact with the value, and the place in the text, of what is told now."""
    return replace(old, value=value, start=mine.start, end=mine.end, said=mine.said, origin="said")


def pair_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"what about 1/60 to 1/4?" after "from 1/60 to 1/8": the two values that were compared, anew."""
    told = [f for f in scene.facts if f.quantity in _PAIRED]
    kinds = {f.quantity for f in told}
    if len(told) != 2 or len(kinds) != 1 or query.asks or not scene.asks or scene.asks[0].quantity in kinds:
        return query, scene
    values = _two_values(query, told)
    if values is None:
        return query, scene
    values = values[::-1] if _the_other_way_round(values, told) else values
    made = (replace(new, quantity=old.quantity, of=old.of, unit=new.unit or old.unit, other=math.nan) for new, old in zip(values, told))
    others = (f for f in query.facts if f.quantity not in (*kinds, "number", "number_range", "length_range"))
    return instead(query, scene, (*made, *others), told)


def _the_other_way_round(values: list[Fact], told: list[Fact]) -> bool:
    """Whether the first of two values told anew is of the second that was told: by its name, or since the other one stays: "the wall 6 m from the light, still 1.5 to her"."""
    if told[0].of == told[1].of:
        return False
    one, other = values
    if one.of or other.of:
        return bool(one.of and one.of == told[1].of or other.of and other.of == told[0].of)
    stays = [[math.isclose(new.value, old.value, rel_tol=0.01) for old in told] for new in values]
    return stays[0] == [False, True] and not stays[1][1] or stays[1] == [True, False] and not stays[0][0]


def _two_values(query: Query, told: list[Fact]) -> list[Fact] | None:
    """Two values of the kind that was told: by name, or as bare numbers that can be such."""
    quantity = told[0].quantity
    said = [f for f in query.facts if f.quantity not in _LITTLE]
    if len(said) == 2 and all(f.quantity == quantity and not f.bad for f in said):
        return said
    if quantity == "distance" and len(said) == 1 and said[0].quantity == "length_range" and not said[0].bad and not told[0].of and not told[1].of:
        return [replace(said[0], value=value, start=start) for value, start in ((said[0].value, said[0].start), (said[0].other, said[0].end - 1))]
    if any(f.quantity not in ("number", "number_range") for f in said) or told[0].of or told[1].of:
        return None
    bare = [part for f in said if not f.bad for part in ((f,) if f.quantity == "number" else (f, replace(f, value=f.other, start=f.end - 1)))]
    fits: dict[str, Callable[[float], bool]] = {"film_speed": is_film_speed_mark, "aperture": is_aperture_mark, "distance": lambda value: value > 0}
    if len(bare) != 2 or quantity not in fits or not all(fits[quantity](f.value) for f in bare):
        return None
    scale = LENGTH.get(told[0].unit, 1.0) if quantity == "distance" else 1.0
    return [replace(f, value=f.value * scale, unit=told[0].unit) for f in bare]


MORE = Pattern(r"\b(?:more|another|extra|further|as well|too|also|on top|additional|besides)\b", re.I)


def after_measured(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"half-stop scrim on top of that, what f now?" after "bare f/16, brolly f/8, what does it cost?": from the reading with it on."""
    read = [f for f in scene.facts if f.quantity == "aperture"]
    taken = [f for f in query.facts if f.quantity in TAKES_LIGHT]
    if len(read) != 2 or len(taken) != 1 or not query.asks_for("aperture") or query.has("aperture") or not scene.asks or scene.asks[0].quantity not in ("stops", "factor") or any(f.quantity == "guide_number" for f in scene.facts):
        return query, scene
    if not MORE.search(query.text) or read[0].of or read[1].of:
        return query, scene
    with_it = min(read, key=lambda f: f.value)
    return replace(query, asks=tuple(a for a in query.asks if a.quantity == "aperture")), replace(scene, asks=(), facts=(replace(with_it, origin="kept"),))


_SO_MANY = Pattern(r"^\W*(?:only |just )*(?:and |or |no |sorry |oh |what about |how about |with |what if |if )*(?:with )?(?P<did>(?:i |we |he |she |they )?(?:only |just )?(?:did|do|fired|fire|popped|pop|gave|give|managed|got off|got time for|got in|had time for|have time for|could get|hit it|used) (?:only |just )?)?(?:\w+)(?: of (?:them|these|those))?(?: (?:fired|went off|flashed|popped|worked|triggered|did|of them (?:fired|went off)))?(?: then| in the end| altogether| in all| together| in total| now)?\W*$", re.I)


def so_many(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and four?" after two flashes together, or after nine pops: so many of them."""
    told = [f for f in scene.facts if f.quantity == "count" and f.unit in ("flashes", "pops") and f.value > 1]
    mine = lone(query, "number", "aperture")
    if mine is not None and mine.quantity == "aperture" and any(c.isalpha() or c == "/" for c in mine.said):
        mine = None
    before = [f for f in talk.past[-1].facts if f.quantity == "count" and f.unit in ("flashes", "pops") and f.value > 1] if talk.past and mine is not None else []
    if not told and len(before) == 1 and mine is not None and 1 < mine.value == int(mine.value) <= 24 and _SO_MANY.match(query.text) and {f.quantity for f in scene.facts} == {f.quantity for f in talk.past[-1].facts} - {"count"}:
        return instead(query, scene, [replace(mine, quantity="count", unit=before[0].unit, of=before[0].of)], ())  # "and only one of them?" came between
    if len(told) != 1 or mine is None or not _SO_MANY.match(query.text) or any(f.quantity == "distance" for f in scene.facts):
        return query, scene
    if mine.value != int(mine.value) or not 1 <= mine.value <= 24:
        return query, scene
    return instead(query, scene, [replace(mine, quantity="count", unit=told[0].unit, of=told[0].of)], told)


_FULL_POPS = Pattern(r"\bfull[- ]power(?= (?:pops?|bursts?|flashes|hits?)\b)", re.I)
_PER_POP = Pattern(r"\b(?:pops?|bursts?|flashes|hits?|power)\b", re.I)


def another_power(query: Query, scene: Scene) -> Fact | None:
    """The power of "and with half-power pops?" after quarter-power ones that were read; None for anything else."""
    full = None if query.facts else _FULL_POPS.search(query.text)
    told = query.facts or ((Fact("power", 1.0, "full", start=full.start(), end=full.end(), said=full.group()),) if full else ())
    mine = told[0] if len(told) == 1 and told[0].quantity == "power" and all(a.quantity == "count" for a in query.asks) else None
    powers = {f.value: f for f in scene.facts if f.quantity == "power"}
    read = [f for f in scene.facts if f.quantity == "aperture"]
    fits = len(powers) <= 1 and len(read) == 2 and [a.quantity for a in scene.asks] == ["count"] and _PER_POP.search(query.text)
    return mine if mine is not None and not mine.bad and fits else None


def pops_of_another_power(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """What each pop gives goes with its power."""
    mine = another_power(query, scene)
    if mine is None:
        return query, scene
    was = next((f for f in scene.facts if f.quantity == "power"), Fact("power", 1.0))
    read = [f for f in scene.facts if f.quantity == "aperture"]
    gives = replace(read[0], value=read[0].value * math.sqrt(mine.value / was.value), origin="kept")
    return replace(query, asks=(), facts=tuple(replace(f, cue=COUNTED) if f is mine else f for f in query.facts)), replace(scene, facts=tuple(gives if f is read[0] else replace(f, value=mine.value) if f.quantity == "power" else f for f in scene.facts))


_ALONE = Pattern(
    r"^\W*(?:(?:and|or|then|what about|how about|what if|now|make (?:it|that)|no|nah|nope|sorry|wait|actually|well|rather|hang on|scratch that|i meant?|let'?s say|say|just|only|it'?s|it should be|should be|call it|if|it|were|was)\b\W*)*(?:with |at |for |to |on |by )*"
    r"(?P<many>half|one|two|three|four|five|one and a half|two and a half|a half|a third|two thirds)(?: of a)?(?: stops?)?(?: (?:(?P<too>too (?:hot|bright|light|strong|much))|(?P<less>under|down|darker|dimmer|below|less|short|shy|too (?:dark|thin|little))|(?P<more>over|up|brighter|hotter|above)))?(?:,? (?:instead|then|please|only))?\W*$", re.I)


_TOO = Pattern(r"\btoo (?:hot|bright|light|strong|much)\b", re.I)


def says_stops_again(query: Query, scene: Scene) -> re.Match[str] | None:
    """"two?", "no, just one" after "one stop under", where nothing else was counted."""
    if query.asks or any(f.quantity not in ("number", "aperture", "power", "share", "stops", "relation") for f in query.facts) or _told_apart(scene) is None:
        return None
    said = _ALONE.match(query.text)
    if said is not None and said["too"] and not _TOO.search(scene.text):
        return None
    counted = any(f.quantity == "count" for f in scene.facts)
    told = _told_apart(scene)
    same = said is not None and told is not None and bool(said["less"] and told.cue == "less" or said["more"] and told.cue == "more")
    return said if same or not counted else None  # "only one and a half short", of a frame and its pops; "three?" may be pops


def _told_apart(scene: Scene) -> Fact | None:
    told = [f for f in scene.facts if f.quantity in ("relation", "stops") and f.cue in ("less", "more")]
    return told[0] if len(told) == 1 else None


def stops_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"two?" after "one stop under": so many stops, and no f/2."""
    said, told = says_stops_again(query, scene), _told_apart(scene)
    if said is None or told is None:
        return query, scene
    moved = told.quantity == "stops" and of_a_move(scene)
    cue = "" if said["too"] else "less" if said["less"] else "more" if said["more"] else ""
    cue = wanted_way(query, cue, talk) if moved else cue or told.cue
    new = replace(told, value=STOPS_SPOKEN[said["many"].lower()], cue=cue, to="move" if moved else told.to, origin="said", start=said.start("many"), end=said.end("many"), said=said["many"])
    changed = instead(query, scene, [new], [told])
    if any(f.quantity == "count" for f in scene.facts):  # the shortfall that pops make up is told anew, and nothing is to be so much darker
        return replace(changed[0], text=" " * len(query.text), cues=query.cues - {"less", "more", "down", "up", "one_light"}, unknown=()), scene
    return (changed[0], scene) if moved else changed  # where to stand: the old stops are what the new ones are weighed against


def zoom_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and at 35?" of a head whose guide numbers were told by their zoom."""
    rows = {f.other for f in scene.facts if f.quantity == "zoom_row"}
    mine = lone(query, "number", "focal_length")
    if len(rows) < 2 or mine is None:
        return query, scene
    value = mine.value * 1000 if mine.quantity == "focal_length" else mine.value
    if not min(rows) <= value <= max(rows):
        return query, scene
    return instead(query, scene, [replace(mine, quantity="zoom", value=value, unit="mm", of="")], (f for f in scene.facts if f.quantity == "zoom"))


_LOSES = Pattern(rf"\b{LOSING}(?: (?:only|just|about))*\s*$", re.I)


_WORN = ("modifier", "camera_filter")


def loss_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"what if the ceiling loses 2?", "a grid taking half", "and at 1/2000, that costs four": stops, as before."""
    old = [f for f in scene.facts if f.quantity in ("loss", "filter_loss")]
    told = [f for f in query.facts if f.quantity not in _WORN and not f.bad]
    lost = [f for f in told if _may_be_stops(f) and _LOSES.search(query.text[: f.start])] if old else []
    mine = lost[0] if len(lost) == 1 else None
    beside = [f for f in told if f is not mine]
    if mine is None or len(told) == 1 and query.asks or any(f.quantity not in ("shutter", "distance", "power", "film_speed", "aperture") for f in beside):
        return query, scene
    taker = next((f for f in query.facts if f.quantity in _WORN and f.unit != "BARE"), None)
    if taker is not None:
        new = replace(mine, quantity="loss" if taker.quantity == "modifier" else "filter_loss", unit=taker.unit, of=taker.of, other=math.nan)
        return instead(query, scene, [new, *beside], ())
    return instead(query, scene, [as_told(old[0], mine.value, mine), *beside], old) if len(old) == 1 else (query, scene)


_SAID_ANEW = Pattern(r"^(?:[^.?!]{0,40}[,;.]\s)?\W{0,12}(?:(?:no|well|hmm?|wait|hang on|actually|sorry|oh|and|but|or|so|then|ok|okay)\b\W{0,12}){0,6}(?:(?:what )?if (?:it|that|this|they)(?:'s| is| was| were|'d be| really| only)*|(?:make|call) (?:it|that)|say|suppose|(?:let's say|try|it'?s|that'?s|it was|it should be|it is)(?: really| only| just)*)(?: (?:it|that|this|only|really|just|took|takes|costs?|lost|loses|were|was|is|the)){0,8}\s*$|^\W*(?:(?:no|sorry|wait|hang on|actually)\b\W*)+(?:(?:just|only|the)\b\s*)*$", re.I)


def the_loss_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, say it only takes one stop", "make it two stops": what the one thing in the light takes, put right, and no loss beside it."""
    old = [f for f in scene.facts if f.quantity in TAKES_LIGHT]
    mine = lone(query, "loss", "filter_loss", "stops") if old else None
    if mine is None or mine.unit or mine.cue and mine.quantity == "stops" or MORE.search(query.text):
        return query, scene
    if mine.quantity == "stops" and (not _SAID_ANEW.match(query.text[: mine.start]) or any(f.quantity in ("stops", "relation", "push") for f in scene.facts)):
        return query, scene
    if len(old) == 1:
        return instead(query, scene, [replace(as_told(old[0], abs(mine.value), mine), quantity="loss" if old[0].quantity == "factor" else old[0].quantity, unit="" if old[0].quantity == "nd" else old[0].unit)], old)
    return replace(query, facts=(replace(mine, quantity="stops", cue=""),)), scene  # one of several, and it is not said which


_OTHER_STOPS = frozenset({"power_down", "push"})


def the_stops_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, make that two stops" after a light that is to come down one: so many stops of the same, where it is the only count of stops."""
    old = [f for f in scene.facts if f.quantity in (*_OTHER_STOPS, *TAKES_LIGHT, "stops", "relation")]
    mine = lone(query, "stops")
    if len(old) != 1 or old[0].quantity not in _OTHER_STOPS or mine is None or mine.cue or not _SAID_ANEW.match(query.text[: mine.start]):
        return query, scene
    return instead(query, scene, [as_told(old[0], math.copysign(abs(mine.value), old[0].value), mine)], old)


def the_same_ones_loss(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, the gel takes two stops" after a box and a gel: the gel's, and the box takes what it took."""
    old = [f for f in scene.facts if f.quantity in ("loss", "filter_loss")]
    mine = [f for f in query.facts if f.quantity in ("loss", "filter_loss") and f.unit and not f.bad]
    same = [f for f in old if len(mine) == 1 and f.quantity == mine[0].quantity and f.unit == mine[0].unit]
    if len(old) < 2 or len(same) != 1 or MORE.search(query.text):
        return query, scene
    rest = [f for f in query.facts if f is not mine[0] and f.quantity not in _WORN]
    others = [f for f in old if f.quantity == mine[0].quantity and f is not same[0]]
    return instead(query, scene, [*others, mine[0], *rest], [*others, *same])


_NOW_ONLY = Pattern(r"\b(?:only|just|now|instead|down to)\b", re.I)


def loss_now(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"with the inner cloth out, so only 1.3 stops lost?": what is lost now, in place of what was, and not of the cloth that went."""
    old = [f for f in scene.facts if f.quantity in ("loss", "filter_loss")]
    mine = [f for f in query.facts if f.quantity == "loss" and f.value]
    rest = [f for f in query.facts if f not in mine and f.quantity not in _WORN]
    if len(old) != 1 or len(mine) != 1 or rest or query.asks or not _NOW_ONLY.search(query.text) or not _GONE.search(query.text) or mine[0].unit == old[0].unit:
        return query, scene
    return instead(query, scene, [as_told(old[0], mine[0].value, mine[0])], old)


_GONE = Pattern(r"\b(?:out|off|gone|without|removed|taken|took|pulled|remov\w+|peeled)\b", re.I)


def _may_be_stops(fact: Fact) -> bool:
    """Two, two and a half, or a half with no "power" beside it."""
    plain = fact.quantity == "number" or fact.quantity == "aperture" and (fact.unit == "mixed" or "f" not in fact.said.lower()) or fact.quantity in ("power", "share") and "power" not in fact.said and "%" not in fact.said
    return plain and 0 < fact.value <= 10


_OF_ANOTHER = Pattern(r"\b(?:one(?! stop| and )|instead|only|just)\b", re.I)


def strength_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and with a two-stop one instead?" after a three-stop ND: the same thing, weaker or stronger."""
    old = [f for f in scene.facts if f.quantity in ("loss", "filter_loss", "nd")]
    mine = lone(query, "stops")
    if len(old) != 1 or mine is None or mine.cue or not _OF_ANOTHER.search(query.text):
        return query, scene
    new = as_told(old[0], abs(mine.value), mine)
    return instead(query, scene, [replace(new, unit="") if new.quantity == "nd" else new], old)


_AT_ALONE = Pattern(r"^\W*(?:and |or |what about |how about |what if |now )*(?=\d[\d.]* ?mm\W*$)|^\W*(?:and |or |what about |how about |what if |now )*(?:at|out to|racked to|racked out to|pulled to|extended to|to)\b", re.I)


_MEASURED = Pattern(r"\b(?:bellows|draw|rail|rack(?:ed)?|ruler|tape|board|standard|measur\w+|misread|misjudged|extension)\b", re.I)


def _leads_to(text: str, fact: Fact) -> str:
    """The word right before a figure that is told: "with" of "and with 210 mm"."""
    return found[1].lower() if text[fact.start : fact.end].strip() == fact.said.strip() and (found := _LAST_WORD.search(text[: fact.start])) is not None else ""


_LAST_WORD = re.compile(r"([A-Za-z]+)\W+(?:(?:an?|the|my)\W+)?$", re.I)
_A_LENS = Pattern(r"\b(?:an?|the|my)\W+$", re.I)


def draw_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and at 200 mm?", "no, I measured wrong, it's 200" after bellows at 150, "with 210 mm" after "a lens with 300 mm to the film": the draw, and not the lens."""
    draws = [f for f in scene.facts if f.quantity == "extension"]
    mine = lone(query, "focal_length", "distance", "focus_distance")
    if len(draws) != 1 or mine is None or "lens" in query.text.lower():
        return query, scene
    lens = next((f for f in scene.facts if f.quantity == "focal_length"), None)
    whole = lens is not None and lens.value < draws[0].value < mine.value  # longer than the draw was: no lens has so short a draw
    if not (_AT_ALONE.match(query.text) or _MEASURED.search(query.text) or whole):
        alike = [f for f in (lens, draws[0]) if f is not None and _leads_to(query.text, mine) and _leads_to(query.text, mine) == _leads_to(scene.text, f)]
        if lens is None or alike == [lens] or mine.quantity != "focal_length" or _A_LENS.search(query.text[: mine.start]):
            return query, scene
        if alike != draws:
            return replace(query, facts=(replace(mine, quantity="number", of=""),)), scene  # a bare length, and two that it could be
    return instead(query, scene, [replace(mine, quantity="extension", of="")], draws)


_SURFACE = r"(?:ceiling|wall|card|board|reflector|surface|plaster)"
_LEG_UP = Pattern(rf"\b(?:up|out)\b(?! there)|\bto (?:the |that )?{_SURFACE}", re.I)
_LEG_DOWN = Pattern(rf"\bdown\b|\b(?:from|off) (?:(?:the |that )?{_SURFACE}|it\b|there\b)|\b{_SURFACE} to\b", re.I)
_WHOLE_WAY = Pattern(r"\b(?:path|in all|altogether|all told|in total|total|all the way|whole way)\b", re.I)


def leg_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"make it 1 m up" after two metres up and three down: that leg of the bounce, and not the whole of it."""
    legs = [f for f in scene.facts if f.quantity == "path"]
    mine = lone(query, "distance", "path", "move", "max_distance")
    up, down = _LEG_UP.search(query.text) is not None, _LEG_DOWN.search(query.text) is not None
    if len(legs) != 2 or mine is None or mine.quantity == "move" and up == down:
        return query, scene
    if mine.cue == "total" or _WHOLE_WAY.search(query.text):
        return instead(query, scene, [replace(mine, quantity="path", cue="total", of="")], legs)
    if up == down:
        return replace(query, facts=(replace(mine, quantity="number", of=""),)), scene  # one length, and two it could be
    old = legs[0] if up else legs[1]
    return instead(query, scene, [*(f for f in legs if f is not old), replace(as_told(old, abs(mine.value), mine), unit=mine.unit)], legs)


_BARE_LENGTH = Pattern(r"^\W*(?:and |or |what about |how about |what if )*[^\W\d_]*\W?[\d.]*\s*(?:and a half )?(?:m|metres?|meters?|ft|feet|foot|cm)\W*$", re.I)


_STILL_FURTHER = Pattern(r"\b(?:another|more|further|farther|again)\b", re.I)


def length_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"2.5 m?" after what should be sharp at three: what is to be sharp. After a move of the light a bare length tells nothing for sure."""
    mine = lone(query, "distance", "move")
    if mine is None or not _BARE_LENGTH.match(query.text) or mine.quantity == "move" and _STILL_FURTHER.search(query.text):
        return query, scene
    limits = [f for f in scene.facts if f.quantity == "sharp_limit"]
    if len(limits) == 1 and scene.asks and scene.asks[0].quantity == "aperture":
        return instead(query, scene, [replace(mine, quantity="sharp_limit", of="", cue=limits[0].cue)], limits)
    moved = any(f.quantity == "last_move" for f in scene.facts) and any(f.of in ("front", "back") for f in scene.facts)
    return (replace(query, facts=(replace(mine, quantity="number", of=""),)), scene) if moved else (query, scene)


_AT = Pattern(r"^\W*(?:(?:and|or|but|so|what about|how about|what if|if|with|suppose|say|then|no) )*(?:(?:it|i|the dial|my dial|the meter|the camera|that)(?:'d| had| has| was| were| is|'s)?(?: been)? )?(?:(?:left|sat|set|sitting|standing|parked|stuck) )?(?:at|rated at|rated|on|to|if it'?s at) (?:iso |ei |asa )?\d+(?: instead| then)?\W*$", re.I)


_INSTEAD_OF_IT = Pattern(r"\binstead\b|\bin (?:its|that one's|the other's) place\b|\b(?:swap|chang|switch|exchang|replac)\w*\b", re.I)


def in_its_place(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and with a factor 5 orange one instead?", "a two-stop ND instead of the polariser": what takes light now, and nothing of what did."""
    old, mine = [f for f in scene.facts if f.quantity in TAKES_LIGHT], [f for f in query.facts if f.quantity in TAKES_LIGHT]
    if len(old) != 1 or len(mine) != 1 or query.asks or not _INSTEAD_OF_IT.search(query.text) or {f.quantity for f in query.facts} - {*TAKES_LIGHT, "modifier", "camera_filter", "remark"}:
        return query, scene
    glass = old[0].quantity != "loss"
    new = replace(mine[0], quantity="filter_loss" if mine[0].quantity == "loss" and glass else mine[0].quantity, of=old[0].of, cue="", unit="filter" if mine[0].quantity == "loss" and glass else mine[0].unit)
    return replace(query, facts=(new,)), replace(scene, facts=tuple(f for f in scene.facts if f is not old[0] and f.quantity not in ("modifier", "camera_filter")))


_BARE_SPEED = Pattern(r"^\W*(?:and |or |what about |how about |what if |then |no,? )*\d{2,4}(?: (?:instead|then))?\W*$", re.I)


_SET_SO = Pattern(r"\b(?:set|dialled|dialed|rated|metered|exposed|shot|used|treated)\b", re.I)


def rated_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"at 64?" after "ISO 125 rated at 80": another rating of the same film."""
    rated = [f for f in scene.facts if f.quantity == "rated"]
    mine = lone(query, "number", "film_speed")
    if len(rated) == 2 and mine is not None and _AT.match(query.text):  # "I rate ISO 160 film at 100", then "at 80?"
        box, old = sorted(rated, key=lambda f: f.start)
        return instead(query, scene, [box, replace(old, value=mine.value, said=mine.said, origin="said")], rated)
    if len(rated) != 1 or mine is None or not _AT.match(query.text) and not (is_film_speed_mark(mine.value) and _SET_SO.search(query.text)) and not (_BARE_SPEED.match(query.text) and scene.asks and scene.asks[0].quantity == "stops"):
        return query, scene
    return instead(query, scene, [replace(mine, quantity="rated", of="film", unit="")], rated)
