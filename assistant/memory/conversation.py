"""The conversation: what was said so far, and what a new turn changes of it.

A follow-up changes only what it names and asks the same thing again. A rejected change
leaves the scene as it was. `take` turns a query as read into the query that is meant.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable

from assistant.memory.kit import Kit
from assistant.patterns import Pattern
from assistant.query import BY_RULE, Ask, Fact, Query
from assistant.records import changing, field, record, replace
from assistant.solving.solution import Solution

TYPE_CHECKING = False
if TYPE_CHECKING:
    from assistant.teaching.practice import Practice

if TYPE_CHECKING:
    from assistant.memory.shotlog import ShotLog

LIMITS = frozenset({"max_count", "max_film_speed", "max_distance", "min_distance", "min_power", "widest_aperture", "smallest_aperture", "aperture_range", "sync", "only_powers"})
TOPIC_CUES = frozenset({
    "same_spot", "span", "safe_span", "metered_asked", "keep", "both", "bounce", "ceiling", "wall", "path", "key_to_fill", "ambient", "sunny", "hazy", "overcast", "heavy_overcast", "shade",
    "snow", "hss", "reciprocity", "full_frame", "half_frame", "medium_format", "large_format", "in_focus", "depth_of_field", "more", "less", "open_up",
    "front", "back", "rows", "loss", "softbox", "horizontal", "vertical", "diagonal", "bracket", "each", "slide", "negative", "leaf", "recycle", "battery", "t05", "t01",
})


@record
class Scene:
    """What is known in this conversation, and what was asked last."""

    facts: tuple[Fact, ...] = ()
    asks: tuple[Ask, ...] = ()
    cues: frozenset[str] = frozenset()
    units: tuple[str, ...] = ()
    answered: tuple[Fact, ...] = ()
    claim: bool = False
    text: str = ""
    mentioned: tuple[str, ...] = ()


@record
class Judged:
    """A claim that was judged, and what its figures were held against; or a question that was answered, and what it asked."""

    query: Query
    asked: tuple[Ask, ...]
    claim: bool = True


@changing
class Conversation:
    """One conversation: the scene, the scenes before it, what was asked for, the kit."""

    kit: Kit = field(default_factory=Kit)
    scene: Scene = field(default_factory=Scene)
    past: list[Scene] = field(default_factory=list)
    first: Scene | None = None
    missing: tuple[str, ...] = ()
    cautioned: set[str] = field(default_factory=set)
    claimed: Query | None = None
    judged: Judged | None = None
    last_working: tuple[str, ...] = ()
    last_query: Query | None = None
    last_solution: Solution | None = None
    changed: Fact | None = None
    """The one value with which the question that stands was said again."""
    practice: Practice | None = None
    practised: int = 0
    log: ShotLog | None = None
    unanswered: bool = False
    """Whether the question before this turn was not understood."""
    rejected: Query | None = None
    """The question before this turn, where a value of it cannot be."""
    before: list[tuple[Kit, ShotLog | None]] = field(default_factory=list)

    def keep(self, scene: Scene) -> None:
        """Make this the scene; the one before can be gone back to."""
        if self.scene.facts or self.scene.asks:
            self.past.append(self.scene)
            del self.past[:-50]
        self.scene = scene
        if self.first is None and scene.asks:
            self.first = scene

    def start_over(self) -> None:
        """Forget the scene, not the kit."""
        self.scene, self.past, self.first, self.missing, self.judged, self.unanswered, self.rejected = Scene(), [], None, (), None, False, None


def merged(old: Iterable[Fact], new: Iterable[Fact]) -> tuple[Fact, ...]:
    """Old facts with the new ones in their place.

    One new value replaces the latest old one of that quantity and owner; two or more
    replace them all. A new value said of nobody replaces that of the only owner.
    """
    kept = list(old)
    before = frozenset(kept)  # two values said in one breath never replace each other
    groups: dict[tuple[str, str], list[Fact]] = {}
    for fact in new:
        groups.setdefault((fact.quantity, fact.of), []).append(fact)
    if not kept:
        return tuple(_only_one_power([fact for facts in groups.values() for fact in facts], groups))
    added: list[Fact] = []
    for (quantity, of), facts in groups.items():
        same = [k for k in kept if k in before and k.quantity == quantity and (k.of == of or (not k.of and of != "ambient")) and _of_one_kind(k, facts[0])]
        owners = {k.of for k in kept if k in before and k.quantity == quantity and k.of != "ambient"}
        if not of and owners and "" not in owners and len(owners) == 1:
            of = owners.pop()
            same = [k for k in kept if k in before and k.quantity == quantity and k.of == of]
            facts = [replace(f, of=of) for f in facts]
        wishes = [k for k in same if k.cue == "want"] if quantity == "aperture" and len(facts) == 1 and facts[0].cue == "want" else []
        alike = len(same) > 1 and quantity == "power" and len({k.value for k in same}) == 1 and not all("power" in k.said for k in same)  # one power, said twice: "at quarter power, if each uses a quarter"
        drop = same if len(facts) > 1 or alike else wishes if len(wishes) == 1 else _several(same, facts[0], kept) or same[-1:]
        if quantity == "aperture" and len(facts) == 1 and drop and drop[0].cue == "want" and not facts[0].cue:
            facts = [replace(facts[0], cue="want")]  # what is wanted, anew
        place = kept.index(drop[0]) if drop else len(kept)
        gone = frozenset(drop)
        kept = [k for k in kept if k not in gone]
        kept[place:place] = facts
    return tuple(_only_one_power(kept, groups)) + tuple(added)


def _several(same: list[Fact], new: Fact, kept: list[Fact]) -> list[Fact]:
    """"I hit it four times, a single pop is f/8", and "nine pops": the reading of the single one stays."""
    several = [k for k in same if k.value > 1] if new.quantity == "count" and new.value > 1 and len(same) == 2 else []
    told = any(k.quantity == "aperture" for k in kept) or {k.unit for k in same} == {"pops"} == {new.unit}  # "four pops against one", and then "six pops"
    return several if len(several) == 1 and told else []


def _of_one_kind(old: Fact, new: Fact) -> bool:
    """Frames and pops are counted beside each other, and the age of a film beside the years that a rule counts by."""
    if old.quantity == "count":
        return (old.unit == "frames") == (new.unit == "frames")
    return old.quantity != "years" or (old.cue == BY_RULE) == (new.cue == BY_RULE)


_RIVALS = {"power": "power_down", "power_down": "power", "rated": "push", "push": "rated", "film_speed": "push", "distance": "path"}


def _only_one_power(facts: list[Fact], groups: dict[tuple[str, str], list[Fact]]) -> list[Fact]:
    """A power said replaces "two stops down", and a rating replaces a push, and the other way round."""
    named = groups.keys()
    gone = {(_RIVALS[q], of) for q, of in named if q in _RIVALS and (_RIVALS[q], of) not in named}
    if not gone and ("film_speed", "") not in named:
        return facts
    return [f for f in facts if (f.quantity, f.of) not in gone and not (f.quantity == "push" and ("film_speed", "") in named and ("push", "film") not in named)]


OF_A_STOP = Pattern(r"\bthirds?\b", re.I)
"""Thirds of nothing named are of a stop, and no place, mark or guide number."""
_NO_STOPS = frozenset({"guide_number", "distance", "aperture", "focal_length", "focus_distance", "film_speed", "energy"})
"""What "half a stop?" is not, whatever was asked for."""
_LEAST_GUIDE = 5.0
"""In metres at ISO 100: no flash that is set by hand has less, so "and if it's 6 ft?" is a place."""
_WHERE = Pattern(r"\b(?:at|from|for|to)\W*$", re.I)


def supply_missing(query: Query, missing: tuple[str, ...], unit: str) -> Query:
    """A bare value after being asked is the answer to what was asked."""
    numbers = [f for f in query.facts if f.quantity in ("number", "stops", "share") and not (missing[:1] == ("guide_number",) and _WHERE.search(query.text[: f.start]))]
    lengths = [f for f in query.facts if f.quantity == "distance"]
    if not missing or not (numbers or lengths) or len(query.unknown) > 2 or len(query.text.split()) > 6:
        return query
    wanted = [m for m in missing if not any(f.quantity == m for f in query.facts)]
    facts = list(query.facts)
    for fact, quantity in zip(numbers, wanted):
        if fact.bad or quantity == "power" and fact.value > 1 or quantity not in ("power", "stops", "loss") and OF_A_STOP.search(fact.said) or quantity in _NO_STOPS and "stop" in fact.said.lower():
            continue
        facts[facts.index(fact)] = _as(fact, quantity, unit)
    lengths = [f for f in facts if f.quantity == "distance" and f.of in ("", "both") and not _WHERE.search(query.text[: f.start]) and not f.value < _LEAST_GUIDE]
    if "guide_number" in wanted and lengths and not any(f.quantity == "guide_number" for f in facts) and ("distance" not in wanted or len(lengths) > 1):
        at = facts.index(lengths[0])
        factor = {"ft": 0.3048, "m": 1.0}.get(lengths[0].unit, 1.0)
        facts[at] = replace(lengths[0], quantity="guide_number", value=lengths[0].value / factor, of="" if lengths[0].of == "both" else lengths[0].of)
    return replace(query, facts=tuple(facts), unplaced=())


def _as(fact: Fact, quantity: str, unit: str) -> Fact:
    value, of = fact.value, fact.of
    if quantity in ("distance", "focus_distance"):
        value *= {"ft": 0.3048, "m": 1.0, "cm": 0.01, "in": 0.0254}.get(unit, 0.3048)
    if quantity == "aperture" and not math.isnan(fact.other):
        value = fact.other
    if quantity == "focal_length":
        value /= 1000
    bad = "" if value > 0 else f"a {quantity.replace('_', ' ')} must be more than nothing"
    return replace(fact, quantity=quantity, value=value, unit=unit if quantity == "distance" else "", of=of, bad=bad)


def move_lengths(facts: Iterable[Fact], moves: list[Fact], rows_told: bool = False) -> tuple[Fact, ...]:
    """"back a metre": the latest distance, moved, or with `rows_told` every row's. A move that ends at nothing is bad."""
    out = list(facts)
    for move in moves:
        places = [n for n, f in enumerate(out) if f.quantity == "distance" and (not move.of or f.of == move.of)]
        if not places:
            continue
        in_rows = rows_told and len(places) > 1 and all(out[n].of in ("", "b") for n in places) or any(out[n].of in ("front", "middle", "back") for n in places)
        rows = [n for n in places if out[n].of in ("front", "middle", "back") or in_rows]
        if len(rows) > 1 and not move.of:  # the light goes, and all the rows are so much farther from it
            for n in rows:
                out[n] = replace(out[n], value=out[n].value + move.value, said=move.said, origin="said", bad="" if out[n].value + move.value > 0 else "that would put the light behind the subject")
            continue
        at = places[-1]
        value = out[at].value + move.value
        bad = "" if value > 0 else "that would put the light behind the subject"
        out[at] = replace(out[at], value=value, said=move.said, bad=bad, origin="said", unit=out[at].unit)
    return tuple(out)
