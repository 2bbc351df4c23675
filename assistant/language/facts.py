"""Facts: what each quantity of a question is a quantity of, by the words that stand near it.

One function for each kind of item; the words near it decide what is meant ("six feet from
the camera", "one stop under the key", "a diffuser that eats two stops"). No exposure is
computed here.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from typing import Callable, Sequence

from assistant.language.items import Item
from assistant.language.rows import around, row_length
from assistant.language.segments import Segment, is_role
from assistant.query import Fact
from assistant.units import LENGTH

NOT_SUBJECT = ("hair", "rim", "kicker", "accent", "background")


_FAR_BACK = 200
"""Items beyond which nothing said before has a bearing on a number."""


@dataclass(frozen=True, slots=True)
class Place:
    """An item among its neighbours, with what is known of the whole question."""

    items: tuple[Item, ...]
    at: int
    owner: str
    cues: frozenset[str]
    kinds: frozenset[str]
    sentence: int
    text: str
    every: tuple[Item, ...] = ()

    @property
    def item(self) -> Item:
        return self.items[self.at]

    def near(self, *words: str, before: int = 4, after: int = 4) -> Item | None:
        """The nearest cue with one of these words within so many items."""
        best: Item | None = None
        gap = 99
        for n in range(max(0, self.at - before), min(len(self.items), self.at + after + 1)):
            item = self.items[n]
            if n != self.at and item.kind == "cue" and item.word in words and abs(n - self.at) < gap:
                best, gap = item, abs(n - self.at)
        return best

    def beside(self, offset: int) -> Item | None:
        n = self.at + offset
        return self.items[n] if 0 <= n < len(self.items) else None

    def mark(self, *words: str, offset: int = -1) -> bool:
        item = self.beside(offset)
        return item is not None and item.kind == "mark" and item.word in words

    def kind_near(self, kind: str, before: int = 3, after: int = 3) -> Item | None:
        for n in range(max(0, self.at - before), min(len(self.items), self.at + after + 1)):
            if n != self.at and self.items[n].kind == kind:
                return self.items[n]
        return None

    def last_before(self, test: Callable[[Item], bool]) -> Item | None:
        for n in range(self.at - 1, max(-1, self.at - _FAR_BACK), -1):
            if test(self.items[n]):
                return self.items[n]
        return None


def _fact(place: Place, quantity: str, value: float | None = None, **more: object) -> Fact:
    item = place.item
    body: dict[str, object] = {"unit": item.unit, "of": place.owner, "other": item.other, "start": item.start, "end": item.end,
                               "said": place.text[item.start : item.end], "bad": item.bad, "estimate": item.estimate, "sentence": place.sentence}
    body.update(more)
    return Fact(quantity, item.value if value is None else value, **body)  # type: ignore[arg-type]


# --- lengths ---------------------------------------------------------------------------------


def _length(place: Place) -> Fact:
    told = place.beside(-1)
    flash = place.beside(-2)
    whole = place.at == len(place.items) - 1 and told is not None and told.kind == "link" and flash is not None
    if whole and flash is not None and (flash.kind in ("noun", "named") or (flash.kind == "cue" and flash.word == "my_kit")) and place.item.unit in ("ft", "m") \
            and place.item.value / LENGTH[place.item.unit] >= (30 if place.item.unit == "ft" else 9) and "guide_number" not in place.kinds:
        return _fact(place, "guide_number", place.item.value / LENGTH[place.item.unit])
    if place.near("gn_hint", before=3, after=3) and place.item.unit in ("ft", "m") and "guide_number" not in place.kinds:
        return _fact(place, "guide_number", place.item.value / LENGTH[place.item.unit])
    if place.text[place.item.end :].lower().lstrip().startswith("deep") and place.cues & {"rows", "front", "back"} and not re.search(r"\b(?:room|studio|garage|hall)\b", place.text.lower()):
        return _fact(place, "gap", of="back")
    if place.item.unit == "mm" and _is_focal(place):
        return _fact(place, "focal_length", of="")
    for rule in (_extension, _camera_distance, _focus_distance, _room_limit, _standing, _move, _path_leg):
        found = rule(place)
        if found:
            return found
    return _fact(place, "distance", cue=_from_to(place))


def _from_to(place: Place) -> str:
    before = place.beside(-1)
    if before and before.kind == "mark" and before.word in ("FROM", "TO"):
        return before.word.lower()
    return ""


def _is_focal(place: Place) -> bool:
    if not 0.008 <= place.item.value <= 2:
        return False
    if place.near("extension", before=1, after=2) or _named_extension(place):
        return False
    return True


def _named_extension(place: Place) -> bool:
    before_it = place.items[max(0, place.at - 6) : place.at]
    if any(i.kind == "mark" and i.word == "EXTENSION" for i in before_it) and not any(i.kind == "mark" and i.word == "LENS" for i in place.items[place.at : place.at + 3]):
        return not any(i.kind in ("length", "focal_length") for i in before_it)
    after = [i for i in (place.beside(1), place.beside(2)) if i]
    before = [i for i in (place.beside(-1), place.beside(-2)) if i]
    return any(i.kind == "mark" and i.word == "EXTENSION" for i in before + after)


def _extension(place: Place) -> Fact | None:
    return _fact(place, "extension", of="") if _named_extension(place) else None


def _camera_distance(place: Place) -> Fact | None:
    after = place.items[place.at + 1 : place.at + 4]
    if any(i.kind == "cue" and i.word == "camera" for i in after) and place.mark("FROM", offset=1):
        return _fact(place, "camera_distance", of="camera")
    last = place.last_before(lambda i: i.kind in ("cue", "noun", "role", "named") and (i.kind != "cue" or i.word in ("camera", "self", "ceiling", "subject")))
    near = last is not None and (last.word != "self" or place.at - place.items.index(last) <= 3)
    if last and near and last.kind == "cue" and last.word in ("camera", "self") and not _light_follows(place):
        return _fact(place, "camera_distance", of="camera", cue=last.word)
    return None


def _light_follows(place: Place) -> bool:
    after = place.beside(2)
    return place.mark("FROM", offset=1) and after is not None and after.kind in ("noun", "role", "named")


def _focus_distance(place: Place) -> Fact | None:
    return _fact(place, "focus_distance", of="camera") if place.near("focus", before=4, after=3) else None


def _room_limit(place: Place) -> Fact | None:
    if place.near("rows", before=2, after=2) and not place.near("room", before=4, after=3) and "room" not in place.text.lower():
        return None
    room = place.near("ambient", before=4, after=3)
    if room and place.text[room.start : room.end].lower() in ("room", "hall", "stage") and not place.mark("FROM", offset=1) and place.item.value > 1.5:
        return _fact(place, "max_distance", of="", cue="at_most")
    if place.near("room", "at_most", before=5, after=4) and not place.near("further", "closer", before=1, after=0):
        if place.near("room", before=4, after=3) or "distance" not in place.kinds or place.near("at_most", before=3, after=3):
            return _fact(place, "max_distance", of="", cue="at_most")
    if place.near("at_least", before=2, after=2):
        return _fact(place, "min_distance", of="", cue="at_least")
    return None


_MOVES = {"further": 1, "closer": -1}


def _move(place: Place) -> Fact | None:
    """"back a metre", "two feet closer", "another metre": a change, not a place."""
    if place.mark("TO", "AT") or place.text[: place.item.start].lower().rstrip().endswith("from"):
        return None
    before, after = place.beside(-1), place.beside(1)
    two_before = place.beside(-2)
    words = [i.word for i in (before, after) if i and i.kind == "cue"]
    moving = place.near("move", before=4, after=0) is not None
    if place.item.word == "again":
        return _fact(place, "move", of=place.owner, cue="again")
    for word in words:
        if word in _MOVES:
            said_move = moving or (before is not None and before.kind == "cue" and before.word in _MOVES) or _is_comparative(place, after)
            if said_move and not (two_before and two_before.kind == "mark" and two_before.word == "TO"):
                return _fact(place, "move", place.item.value * _MOVES[word], of=place.owner)
    return None


def _is_comparative(place: Place, after: Item | None) -> bool:
    text = place.text[after.start : after.end].lower() if after and after.kind == "cue" else ""
    return text.startswith(("further", "farther", "closer", "nearer", "forward", "tighter"))


def _standing(place: Place) -> Fact | None:
    """Rows and backdrops: a gap between two of them, or a row's own distance."""
    if place.cues & {"bounce", "ceiling", "path"}:
        return None
    if place.owner == "background" or not place.cues & {"front", "back", "middle", "rows", "backdrop", "wall"}:
        return None if place.owner or "behind" not in place.text.lower() else _behind(place)
    return _behind(place)


def _behind(place: Place) -> Fact | None:
    lengths = [i for i in place.every if i.kind in ("length", "length_range")]
    floor = max((i.end for i in lengths if i.end <= place.item.start), default=0)
    ceiling = min((i.start for i in lengths if i.start >= place.item.end), default=len(place.text))
    found = row_length(*around(place.text, place.item.start, place.item.end, floor, ceiling))
    return _fact(place, found[0], of=found[1]) if found else None


def _path_leg(place: Place) -> Fact | None:
    if "bounce" in place.cues or "ceiling" in place.cues:
        if place.near("ceiling", "wall", "leg_from", "leg_to", "path", before=6, after=6) or "path" in place.cues:
            return _fact(place, "path", of="")
    return None


# --- stops -----------------------------------------------------------------------------------


def _stops(place: Place) -> Fact:
    for rule in (_push, _filter_loss, _modifier_loss, _relation, _power_down):
        found = rule(place)
        if found:
            return found
    return _fact(place, "stops", of=place.owner, cue=_direction(place))


def _direction(place: Place) -> str:
    """Whether more or less light is meant; empty where it was not said."""
    if place.item.unit in ("-", "+"):
        return "less" if place.item.unit == "-" else "more"
    near = place.near("less", "more", "down", "up", "open_up", "close_down", before=3, after=2)
    table = {"less": "less", "more": "more", "down": "less", "up": "more", "open_up": "more", "close_down": "less"}
    return table[near.word] if near else ""


def _push(place: Place) -> Fact | None:
    near = place.near("push", "pull", before=5, after=3)
    if not near:
        return None
    if near.word == "pull" and re.match(r"(?:pull\w*) (?:it |the (?:light|flash|lamp|key|strobe|head) |back)", place.text[near.start :], re.I) and not re.search(r"film|roll|iso|asa|box speed|lab", place.text, re.I):
        return None
    sign = 1 if near.word == "push" else -1
    return _fact(place, "push", sign * abs(place.item.value), of="film")


def _filter_loss(place: Place) -> Fact | None:
    near = place.kind_near("camera_filter", before=5, after=3)
    if near and near.word == "BARE":
        return None
    return _fact(place, "filter_loss", abs(place.item.value), of="camera", unit=near.word) if near else None


def _modifier_loss(place: Place) -> Fact | None:
    loss = place.near("loss", before=5, after=3)
    modifier = place.kind_near("modifier", before=6, after=3)
    adjacent = place.beside(1)
    if adjacent is not None and adjacent.kind == "modifier":
        return _fact(place, "loss", abs(place.item.value), unit=adjacent.word)
    if loss and (modifier or place.near("less", before=0, after=2) or "hss" in place.cues or "ceiling" in place.cues or "wall" in place.cues):
        return _fact(place, "loss", abs(place.item.value), unit=modifier.word if modifier else _what_loses(place))
    if modifier and not place.near("less", "more", before=2, after=2):
        return _fact(place, "loss", abs(place.item.value), unit=modifier.word)
    if loss and "how_many" not in place.cues:
        return _fact(place, "loss", abs(place.item.value), unit=_what_loses(place))
    if "hss" in place.cues and place.near("less", "down", before=3, after=3):
        return _fact(place, "loss", abs(place.item.value), unit="hss")
    return None


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
    start = place.items.index(way)
    against = next((i for i in place.items[max(start, place.at) + 1 : max(start, place.at) + 5] if is_role(i) or i.kind == "aperture"
                    or (i.kind == "cue" and i.word in ("ambient", "backdrop", "meter"))), None)
    subject = place.last_before(lambda i: is_role(i) or (i.kind == "cue" and i.word in ("ambient", "backdrop")))
    if against is not None and is_role(against) and place.text[: against.start].lower().rstrip().endswith(" as"):
        subject, against = against, None
    if against is None and subject is None:
        return None
    to = "" if against is None else ("aperture" if against.kind == "aperture" else against.word)
    if to in ("meter",):
        to = "ambient"
    return _fact(place, "relation", of=subject.word if subject else "", to=to, cue=way.word)


def _power_down(place: Place) -> Fact | None:
    """"turned down two stops": a power, when it is the flash that is turned."""
    near = place.near("down", "up", before=3, after=2)
    if not near or near.word != "down" or place.near("open_up", "close_down"):
        return None
    return _fact(place, "power_down", abs(place.item.value), cue="less")


# --- the rest ----------------------------------------------------------------------------------


def _aperture(place: Place) -> Fact:
    role = place.last_before(lambda i: is_role(i) or i.kind in ("length", "guide_number", "power"))
    owner = ""
    if role and is_role(role):
        between = place.items[place.items.index(role) + 1 : place.at]
        if any(i.kind == "link" or (i.kind == "cue" and i.word in ("meter", "one_light")) or (i.kind == "name" and i.word == "meter") for i in between) \
                or all(i.kind == "mark" and i.word in ("EQ", "COLON") for i in between):
            owner = role.word
    if not owner and _says_ambient(place):
        owner = "ambient"
    cue = _aperture_cue(place)
    if cue in ("widest", "smallest"):
        return _fact(place, f"{cue}_aperture", of="")
    return _fact(place, "aperture", of=owner, cue=cue)


def _says_ambient(place: Place) -> bool:
    near = place.near("ambient", "sunny", before=4, after=0)
    return near is not None and not place.near("less", "more", before=2, after=0)


def _aperture_cue(place: Place) -> str:
    if place.near("widest", before=4, after=1) or (place.near("wide_open", before=0, after=2) and "lens" in place.text.lower()):
        return "widest"
    if place.near("smallest_stop", before=3, after=1) or (place.near("at_least", before=3, after=1) and "lens" in place.text.lower()) or (place.near("at_most", before=3, after=1) and "lens" in place.text.lower()):
        return "smallest"
    if place.near("want", before=3, after=0):
        return "want"
    return "meter" if place.near("meter", before=3, after=2) or place.kind_near("name", before=2, after=1) is not None else ""


def _power(place: Place) -> Fact:
    before = place.text[max(0, place.item.start - 30) : place.item.start].lower()
    if re.search(r"\bfull\b.{0,10}\b(?:down )?to\s+(?:a\s+)?$", before) and place.item.unit != "full" and "only" in place.text.lower() + "":
        return _fact(place, "min_power", of=place.owner)
    if place.near("at_least", before=4, after=2):
        return _fact(place, "min_power", of=place.owner)
    return _fact(place, "power")


def _share(place: Place) -> Fact:
    bottom = float(place.item.unit or 0)
    if bottom in (3.0,) and not place.near("at_least"):
        return _fact(place, "number")
    return _power(place)


def _shutter(place: Place) -> Fact:
    if place.near("at_most", before=4, after=3) and "sync" in place.kinds:
        return _fact(place, "sync", of="camera")
    for cue, quantity in (("t05", "t05"), ("t01", "t01"), ("duration", "duration"), ("recycle", "recycle")):
        if place.near(cue, before=4, after=2):
            return _fact(place, quantity, of="")
    return _fact(place, "shutter", of="ambient" if _says_ambient(place) else "")


def _count(place: Place) -> Fact:
    after = place.beside(1)
    if place.text[place.item.start : place.item.end].lower().endswith("pair") and after is not None and after.kind in ("link", "aperture"):
        return _fact(place, "remark", of="")  # "tested pair is f/11 at 8 ft": no two flashes
    if sum(1 for i in place.items if is_role(i)) > 1:
        return _fact(place, "count", unit=place.item.word or "pops", of="")
    owned = "how_many" in place.cues and (place.near("my_kit", before=4, after=0) is not None or re.search(r"\b(?:own|only|just|got|have)\b", place.text[max(0, place.item.start - 24) : place.item.start].lower()) is not None)
    if owned or place.near("at_most", before=3, after=2) or "no more" in place.text.lower()[place.item.end : place.item.end + 30]:
        return _fact(place, "max_count", unit=place.item.word, of="", cue="at_most")
    return _fact(place, "count", unit=place.item.word or "pops")


def _plain(quantity: str, owned: bool = False) -> Callable[[Place], Fact]:
    return lambda place: _fact(place, quantity, of=place.owner if owned else "")


def _film_speed(place: Place) -> Fact:
    if place.near("fastest", before=5, after=2):
        return _fact(place, "max_film_speed", of="", cue="at_most")
    guide = place.beside(-2)
    said_with = place.mark("AT") and guide is not None and guide.kind == "guide_number"
    if place.near("rate", before=2, after=1) and len([i for i in place.items if i.kind == "film_speed"]) > 1:
        return _fact(place, "rated", of="film")
    return _fact(place, "gn_iso" if said_with else "film_speed", of=place.owner if said_with else "")


def _camera_filter(place: Place) -> Fact:
    return _fact(place, "camera_filter", 0.0, unit=place.item.word, of="camera")


def _modifier(place: Place) -> Fact:
    return _fact(place, "modifier", 0.0, unit=place.item.word)


def _nd(place: Place) -> Fact:
    return _fact(place, "nd", of="camera")


def _number(place: Place) -> Fact:
    return _fact(place, "number")


READERS: dict[str, Callable[[Place], Fact]] = {
    "length": _length, "stops": _stops, "aperture": _aperture, "power": _power, "share": _share, "shutter": _shutter,
    "count": _count, "film_speed": _film_speed, "camera_filter": _camera_filter, "modifier": _modifier, "nd": _nd, "number": _number,
    "guide_number": _plain("guide_number", True), "guide_number_pair": _plain("guide_number_pair", True), "energy": _plain("energy", True),
    "sync": _plain("sync"), "time": _shutter, "exposure_value": _plain("exposure_value"), "ev_stops": _stops, "focal_length": _plain("focal_length"),
    "factor": _plain("factor"), "times": _plain("times"), "magnification": _plain("magnification"), "format": _plain("format"),
    "frequency": _plain("frequency"), "capacitance": _plain("capacitance"), "supply": _plain("supply"),
    "ratio": _plain("ratio"), "velocity": _plain("velocity"), "voltage": _plain("voltage"), "signed": _plain("signed", True),
    "aperture_pair": _plain("aperture_pair"), "power_pair": _plain("power_pair", True), "degrees": _plain("degrees"), "aperture_choice": _plain("aperture_choice"), "aperture_range": _plain("aperture_range"),
    "length_range": _plain("length_range", True), "number_range": _plain("number_range"),
}


def facts_of(segments: Sequence[Segment], owners: dict[int, str], text: str) -> list[Fact]:
    """The facts of a question, in the order said."""
    cues = frozenset(i.word for s in segments for i in s.items if i.kind == "cue")
    kinds = frozenset(i.word if i.kind == "name" else i.kind for s in segments for i in s.items)
    every = tuple(i for s in segments for i in s.items)
    found = []
    for segment in segments:
        for at, item in enumerate(segment.items):
            reader = READERS.get(item.kind)
            if reader:
                fact = reader(Place(segment.items, at, owners.get(item.start, ""), cues, kinds, segment.sentence, text, every))
                found += _both_of(fact) if fact.quantity in ("aperture_pair", "power_pair") else [fact]
    return found


def _both_of(pair: Fact) -> list[Fact]:
    """"f/5.6 and f/4": two apertures; "1/4 and 1/8": two powers."""
    quantity = pair.quantity.removesuffix("_pair")
    return [replace(pair, quantity=quantity, other=math.nan), replace(pair, quantity=quantity, value=pair.other, other=math.nan, start=pair.end - 1)]


def is_finite(fact: Fact) -> bool:
    """Whether the fact's value is a number."""
    return math.isfinite(fact.value)
