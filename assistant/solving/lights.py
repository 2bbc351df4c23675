"""Lights: the lamps of a scene put together from the facts about them."""

from __future__ import annotations

import math
from collections.abc import Iterable

from assistant import patterns
from assistant.query import Fact, Query
from assistant.records import field, record, replace
from assistant.solving.ledger import Line, close, line
from assistant.units import LENGTH

NOT_SUBJECT = frozenset({"hair", "rim", "kicker", "accent", "background"})
ROLES = frozenset({"key", "fill", "hair", "rim", "kicker", "accent", "background"})
ROLE_WORDS = frozenset({"big", "small"})
PLACES = frozenset({"camera", "front", "middle", "back", "backdrop", "ambient", "film", "both", "aperture"})
TYPICAL_LOSS: dict[str, tuple[float, float, float]] = {
    # low, typical, high, in stops: common practice, no source; test your own
    "softbox": (1.0, 2.0, 3.0), "umbrella": (1.5, 2.0, 2.5), "shoot_through": (1.5, 2.0, 2.5), "dome": (1.0, 1.5, 2.0),
    "diffuser": (0.5, 1.0, 2.0), "tissue": (0.5, 1.0, 1.5), "scrim": (0.5, 1.5, 2.5), "grid": (0.5, 1.0, 2.0), "snoot": (0.5, 1.0, 2.0),
    "dish": (0.5, 1.0, 1.5), "gel": (0.25, 1.0, 1.5), "wide_panel": (0.5, 1.0, 1.5), "card": (2.0, 2.5, 3.0),
    "ceiling": (1.0, 2.0, 3.0), "wall": (1.0, 2.0, 3.0), "hss": (2.0, 3.0, 4.0), "polariser": (1.0, 1.5, 2.0), "filter": (0.33, 1.0, 3.0),
}
MODIFIER_NAMES = {"softbox": "softbox", "umbrella": "umbrella", "shoot_through": "shoot-through umbrella", "dome": "dome", "diffuser": "diffuser",
                  "tissue": "cloth", "scrim": "scrim", "grid": "grid", "snoot": "snoot", "dish": "beauty dish", "gel": "gel", "wide_panel": "wide panel",
                  "card": "bounce card", "ceiling": "ceiling", "wall": "wall", "hss": "high-speed sync", "polariser": "polariser", "filter": "filter"}


def typical_words(worn: str) -> str:
    """Why a loss was taken: what it is typical of."""
    name = MODIFIER_NAMES.get(worn, worn.replace("_", " "))
    article = "" if worn == "hss" else "an " if name[0] in "aeiou" else "a "
    return f"a typical loss for {article}{name}; common practice, test your own"


@record
class Light:
    """One light. Guide number in metres at ISO 100, full power; distance in metres."""

    name: str
    guide_number: float | None = None
    distance: float | None = None
    power: float | None = None
    count: float = 1.0
    losses: tuple[tuple[str, float], ...] = ()
    typical: tuple[str, ...] = ()
    reading: float | None = None
    facts: tuple[Fact, ...] = field(default=(), repr=False)

    @property
    def of_subject(self) -> bool:
        """Whether its light counts toward the subject's aperture."""
        return self.name not in NOT_SUBJECT

    @property
    def loss(self) -> float:
        return sum(stops for _, stops in self.losses)

    def lines(self, leave: str = "") -> list[Line]:
        """The ledger lines of this light, without the quantity `leave`."""
        known = [("guide_number", self.guide_number), ("power", self.power if self.power is not None else 1.0), ("count", self.count),
                 ("distance", self.distance)]
        lines = [line(q, v) for q, v in known if v is not None and q != leave]
        return lines + [line("loss", stops, name) for name, stops in self.losses]


_OWN = frozenset({"guide_number", "distance", "power", "power_down", "loss", "modifier", "count", "energy", "aperture", "relation", "path", "guide_number_pair"})


def light_names(query: Query) -> list[str]:
    """Names of the lights of the scene, in order of mention; "" is the only, unnamed one."""
    owned = {f.of for f in query.facts if f.of and f.of not in PLACES and f.quantity in _OWN}
    names = [o for o in query.owners() if o in owned] if owned else []
    for fact in query.facts:
        if fact.quantity == "relation" and fact.to and fact.to not in PLACES and fact.to not in names:
            names.append(fact.to)
    for ask in query.asks:
        if ask.of and ask.of not in PLACES and ask.of not in names and ask.of not in ("move", "t01", "t05") and names:
            names.append(ask.of)
    for name in query.mentioned:
        if name not in names and name not in ROLE_WORDS and any(f.quantity == "guide_number" and f.of == name for f in query.facts):
            names.append(name)
    shared = len(query.mentioned) > 1 and any(f.of == "both" for f in query.facts) and len([m for m in query.mentioned if m in ROLES]) > 1
    if not query.mentioned:
        return names or [""]
    if query.has("ratio") or query.has("relation") or query.asks_for("ratio") or shared:
        names += [m for m in query.mentioned if m in ROLES and m not in names]
    return names or [""]


def preferred_unit(query: Query, asked: str = "") -> str:
    """The unit of the answer: asked for, else that of the distances, else of the guide number."""
    if asked:
        return asked
    wanted = [u for u in query.units if not u.startswith("not ")]
    if wanted:
        return wanted[-1]
    latest = {f.quantity: f.unit for f in query.facts if f.unit in LENGTH and f.unit != "mm"}
    for quantity in ("distance", "gap", "path", "move", "max_distance", "camera_distance", "length_range", "focus_distance", "guide_number"):
        if quantity in latest:
            return _family(latest[quantity]) if quantity == "guide_number" else latest[quantity]
    kit = [f.unit for f in query.facts if f.quantity == "preferred_unit"]
    return kit[-1] if kit else "ft"


def _family(unit: str) -> str:
    return "m" if unit in ("m", "cm", "mm") else "ft"


def guide_unit(query: Query, fact: Fact, asked: str = "") -> tuple[str, bool]:
    """The unit of a guide number and whether it was taken, not said (contract 1)."""
    if fact.unit:
        return _family(fact.unit), fact.cue == "unit_taken"
    if asked:
        return _family(asked), True
    latest = {f.quantity: f.unit for f in query.facts if f.unit in LENGTH and f.unit != "mm"}
    for quantity in ("distance", "path", "max_distance", "length_range", "move"):
        if quantity in latest:
            return _family(latest[quantity]), True
    said = [f.unit for f in query.facts if f.quantity == "guide_number" and f.unit in LENGTH]
    if said:
        return _family(said[-1]), True
    kit = [f.unit for f in query.facts if f.quantity == "preferred_unit"]
    if kit:
        return _family(kit[-1]), True
    camera = [f.unit for f in query.facts if f.quantity == "camera_distance"]
    return (_family(camera[-1]) if camera and camera[-1] in LENGTH else "ft"), True


def guide_in_metres(query: Query, fact: Fact, asked: str = "") -> float:
    """A guide number as metres at ISO 100 and full power, whatever it was quoted for."""
    unit, _ = guide_unit(query, fact, asked)
    value = fact.value * LENGTH[unit]
    value /= math.sqrt((fact.at_iso or 100.0) / 100.0)
    return value / math.sqrt(fact.at_power or 1.0)


def _pick(query: Query, quantity: str, name: str, nobodys: bool = True) -> Fact | None:
    """The latest fact of a light, else of all lights, else of nobody in particular."""
    latest: dict[str, Fact] = {}
    for fact in query.facts:
        if fact.quantity == quantity:
            latest[fact.of] = fact
    return (latest.get(name) or latest.get("both") or (latest.get("") if nobodys else None)) if latest else None


def light(query: Query, name: str, many: bool, asked: str = "") -> Light:
    """One light of the scene. Its distance is never borrowed from another light."""
    guide = _pick(query, "guide_number", name)
    distance = _pick(query, "distance", name, nobodys=not many)
    if distance is None and many and (group := query.last("count", "")) is not None and group.value >= 2:
        distance = query.last("distance", "")
    if distance is None and many and "both" in query.cues and len(query.all("distance")) == 1:
        distance = query.last("distance", "")
    if distance is None and many and "same_spot" in query.cues:
        distance = query.last("distance")
    if distance is None and not many:
        distance = _beside_camera(query)
    path = query.all("path", name) or (query.all("path", "") if name else [])
    power = _pick(query, "power", name)
    down = _pick(query, "power_down", name)
    count = _fired(query, name) or (_fired(query, "") if name and not many else None)
    losses, typical, loss_facts = _losses(query, name, many)
    reading = query.last("aperture", name) if name else None
    if power is None and down is None and guide is not None and guide.at_power:
        power = replace(guide, quantity="power", value=guide.at_power)
    strength = (power.value if power else 1.0) * (2.0 ** -down.value if down else 1.0) if power or down else None
    total_path = sum(p.value for p in path) if path else None
    facts = [f for f in (guide, distance if not path else None, power, down, count, reading) if f] + list(path) + loss_facts
    return Light(
        name=name,
        guide_number=guide_in_metres(query, guide, asked) if guide else None,
        distance=total_path if total_path else (distance.value if distance else None),
        power=strength,
        count=count.value if count else 1.0,
        losses=losses, typical=typical,
        reading=reading.value if reading else None,
        facts=tuple(facts),
    )


def read_alike(both: list[Light], query: Query) -> list[Light]:
    """Lights told by guide number beside one that is told by what it reads, with what they would read; none of them where that is not known of one."""
    if all(lamp.reading is None for lamp in both):
        return both
    out = [_read(lamp, query) for lamp in both]
    return out if all(lamp.reading is not None for lamp in out) else []


def _read(one: Light, query: Query) -> Light:
    if one.reading is not None or one.guide_number is None or one.distance is None:
        return one
    speed = query.last("film_speed")
    return replace(one, reading=close("aperture", [*one.lines(), line("film_speed", speed.value if speed else 100.0)]))


def _fired(query: Query, name: str) -> Fact | None:
    """How many of them, or how many pops; frames are no light."""
    for fact in reversed(query.facts):
        if fact.quantity == "count" and fact.of == name and fact.unit in ("flashes", "pops"):
            return fact
    return None


ON_CAMERA = r"\b(?:flash|gun|strobe|light)(?: is|'s|s)? (?:right )?on (?:the |my )?camera\b|\bon[ -]camera flash\b|\bhot ?shoe\b"
OFF_CAMERA = r"\b(?:boom|stand|off[ -]camera|tripod|remote|slave|flash is off|camera)\b"


def _beside_camera(query: Query) -> Fact | None:
    """"I'm ten feet away" with no other distance: the flash taken to be with the person."""
    own = query.last("camera_distance")
    if own is None:
        return None
    on_it = patterns.search(ON_CAMERA, query.text.lower()) is not None
    with_me = own.cue == "self" and not patterns.search(OFF_CAMERA, query.text.lower())
    return own if on_it or with_me else None


def _losses(query: Query, name: str, many: bool) -> tuple[tuple[tuple[str, float], ...], tuple[str, ...], list[Fact]]:
    mine = (name, "both") if many and name else (name, "", "both")
    said = [f for f in query.facts if f.quantity == "loss" and f.of in mine]
    worn = [f for f in query.facts if f.quantity == "modifier" and f.of in mine]
    if not said and not worn:
        return (), (), []
    losses = [(f.unit or "loss", f.value) for f in said]
    covered = {f.unit for f in said}
    typical = []
    anonymous = sum(1 for f in said if not f.unit)
    for fact in worn:
        if fact.unit in covered or fact.unit in typical:
            continue
        if anonymous:
            anonymous -= 1
            continue
        typical.append(fact.unit)
        losses.append((fact.unit, fact.value or TYPICAL_LOSS.get(fact.unit, (1.0, 1.0, 1.0))[1]))
    return tuple(losses), tuple(typical), said + worn


def lights(query: Query, asked: str = "") -> list[Light]:
    """Every light of the scene."""
    query = _powers_in_order(name_by_size(query))
    names = light_names(query)
    many = len(names) > 1 and len([n for n in names if n]) > 1
    found = [light(query, n, many, asked) for n in names]
    return _readings_by_relation([_shared_guide(lamp, found, query) for lamp in found], query)


def _readings_by_relation(found: list[Light], query: Query) -> list[Light]:
    """"the fill is one stop under it": what it reads, from what the other light reads."""
    out = []
    for one in found:
        said = query.last("relation", one.name)
        other = next((o for o in found if said and o is not one and o.reading is not None and said.to in (o.name, "")), None)
        if said and other and other.reading and one.reading is None and one.distance is None and one.guide_number is None:
            stops = abs(said.value) * (1 if said.cue == "more" else -1)
            one = replace(one, reading=other.reading * 2 ** (stops / 2), facts=(*one.facts, said))
        out.append(one)
    return out


def _shared_guide(one: Light, found: Iterable[Light], query: Query) -> Light:
    """"same model", "twins", "identical": the second light has the first one's guide number."""
    if one.guide_number is not None or not query.cues & {"keep", "same_model", "both"}:
        return one
    other = next((o for o in found if o.guide_number is not None), None)
    return replace(one, guide_number=other.guide_number, facts=one.facts + other.facts[:1]) if other and _alike(query) else one


def _alike(query: Query) -> bool:
    text = query.text.lower()
    return bool(patterns.search(r"\b(?:same (?:flash|model|unit|gun|head|light|kind|type|make|power|guide|gn|as|again|sort)|identical|twins?|another|alike|matching|pair|equal|are the same|the same[,.]?$)", text))


def _powers_in_order(query: Query) -> Query:
    """"powers 1/4 and 1/8", "at 1/2, 1/8 and 1/4": to the lights in the order named (contract 33)."""
    powers = [f for f in query.facts if f.quantity == "power"]
    if len(powers) < 2:
        return query
    names = [n for n in light_names(query) if n]
    if len(powers) != len(names) or len({f.of for f in powers}) != 1:
        return query
    gaps = [query.text[a.end : b.start] for a, b in zip(powers, powers[1:])]
    if any(patterns.sub(r"[\s,&]|and", "", gap.lower()) for gap in gaps if gap):
        return query
    order = {f.start: name for f, name in zip(powers, names)}
    return query.with_facts(replace(f, of=order.get(f.start, f.of)) if f.quantity == "power" else f for f in query.facts)


def name_by_size(query: Query) -> Query:
    """"the big one" and "the small one" among unnamed guide numbers."""
    guides = [f for f in query.facts if f.quantity == "guide_number" and not f.of]
    if len(guides) > 2 and len({f.start for f in guides}) == len(guides):
        letters = {g.start: chr(97 + n % 26) for n, g in enumerate(guides)}
        named = [replace(f, of=letters[f.start]) if f in guides else f for f in query.facts]
        return _pair_up(query.with_facts(named), list(letters.values()))
    if len(guides) == 2:
        asked = {a.of for a in query.asks} | {f.of for f in query.facts}
        ordered = sorted(guides, key=lambda f: f.value)
        names = {ordered[0].start: "small", ordered[1].start: "big"} if asked & {"big", "small"} else {guides[0].start: "a", guides[1].start: "b"}
        named = [replace(f, of=names.get(f.start, f.of)) if f.quantity == "guide_number" else f for f in query.facts]
        return _pair_up(query.with_facts(named), [names[g.start] for g in guides])
    return query


def _pair_up(query: Query, names: list[str]) -> Query:
    """Two unnamed guide numbers and two distances: the first goes with the first."""
    facts = list(query.facts)
    for quantity in ("distance", "power"):
        loose = [f for f in facts if f.quantity == quantity and not f.of]
        if len(loose) == len(names):
            facts = [replace(f, of=names[loose.index(f)]) if f in loose else f for f in facts]
    return query.with_facts(facts)


def lit_by_its_own(query: Query, subject: str) -> Query:
    """"the wall a stop under her, from a flash of guide number 28 that is 2.5 m from the wall": that flash lights the wall, so it is the flash's own distance."""
    guides, places = query.all("guide_number"), query.all("distance")
    if subject not in ("", "backdrop", "background", "ambient") or subject == "ambient" and any(f.of == "ambient" and f.quantity != "relation" for f in query.facts) or len(guides) != 1 or len(places) != 1 or places[0].of != "backdrop":
        return query
    return query.with_facts(replace(f, of=guides[0].of) if f is places[0] else f for f in query.facts)
