"""The solver: which topic answers a query, what is rejected, what cannot be reached.

Each topic is a function from a query to a solution or None; the first in TOPICS that
answers is taken. A new kind of question is one more topic file and one more row here.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from functools import cache, lru_cache
from importlib import import_module

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.choices import choose
from assistant.solving.each_in_turn import solve as each_in_turn
from assistant.solving.guide_aside import bears_not
from assistant.solving.ranges import over_values
from assistant.solving.solution import Solution, rejected
from assistant.solving.to_be_added import as_an_addition

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

Topic = Callable[[Query], "Solution | None"]
Route = Callable[[Query], "tuple[Query, tuple[Fact, ...], tuple[str, ...]] | None"]

ROUTES: tuple[tuple[str, frozenset[str]], ...] = (
    # module of solving/ whose `route` makes a query plainer first, and the signs of which it needs one: kinds of facts, whose they are, cues
    ("one_light", frozenset({"hair", "rim", "background", "fill", "key"})),
    ("behind_camera", frozenset({"distance", "camera_distance"})),
    ("moved_light", frozenset({"move"})),
    ("zoom", frozenset({"zoom"})),
    ("shutter_table", frozenset({"shutter_row"})),
    ("open_each", frozenset({"open_each"})),
    ("auto_sensor", frozenset({"auto"})),
    ("bounce", frozenset({"path", "bounce", "ceiling_above", "ceiling_height"})),
    ("metered_through", frozenset({"factor", "nd", "filter_loss"})),
    ("losses", frozenset({"size", "hss"})),
    ("shaded", frozenset({"scrim", "diffuser", "tissue"})),
    ("close_up_in_stops", frozenset({"magnification", "extension"})),
    ("t_stops", frozenset({"t_number"})),
    ("lens_ends", frozenset({"widest_aperture", "smallest_aperture", "aperture_range"})),
)

TOPICS: tuple[tuple[str, frozenset[str]], ...] = (
    # module of solving/, asked quantities it may answer (empty: any)
    ("claims", frozenset()),
    ("lamp_against_lamp", frozenset({"power", "distance", "stops", "aperture"})),
    ("bounce", frozenset({"distance", "stops", "factor", "aperture"})),
    ("pop_sums", frozenset({"stops", "aperture", "count"})),
    ("layers", frozenset({"count", "stops", "factor", "aperture"})),
    ("loss_measures", frozenset({"stops", "factor", "nd", "magnification"})),
    ("one_gel_of_two", frozenset({"aperture"})),
    ("one_or_other", frozenset({"stops", "factor"})),
    ("before_after", frozenset({"stops", "factor", "aperture", "power", "distance", "energy", "film_speed"})),
    ("parts_of_light", frozenset({"aperture", "stops"})),
    ("by_this_number", frozenset({"aperture"})),
    ("reference_light", frozenset({"aperture"})),
    ("readings", frozenset({"aperture", "guide_number"})),
    ("auto_sensor", frozenset({"film_speed", "aperture", "distance", "guide_number", "stops"})),
    ("how_far_out", frozenset({"stops", "aperture", "power"})),
    ("part_given", frozenset({"energy", "power", "stops"})),
    ("film", frozenset()),
    ("falloff", frozenset({"stops", "factor", "count", "distance", "aperture", "power", "near_limit", "far_limit", "coverage"})),
    ("close_depth", frozenset({"depth_of_field", "aperture", "hyperfocal", "near_limit", "far_limit"})),
    ("focus", frozenset({"near_limit", "far_limit", "depth_of_field", "hyperfocal", "sharp", "focus_distance", "aperture"})),
    ("lens_geometry", frozenset({"coverage", "distance", "magnification", "extension", "subject_distance", "stops", "factor", "aperture"})),
    ("metered_through", frozenset({"aperture"})),
    ("losses", frozenset({"stops", "factor", "aperture", "power", "energy", "shutter"})),
    ("time_and_energy", frozenset({"duration", "shutter", "distance", "freeze", "energy", "stops", "power"})),
    ("battery", frozenset({"count"})),
    ("pops", frozenset({"count", "aperture", "stops", "power"})),
    ("zoom", frozenset({"stops", "guide_number", "aperture", "distance", "power"})),
    ("ambient_light", frozenset({"shutter", "aperture", "film_speed", "exposure_value", "stops", "nd", "factor", "power", "distance", "guide_number", "duration", "time"})),
    ("relations", frozenset({"ratio", "stops", "power", "distance", "aperture", "film_speed", "guide_number"})),
    ("conversions", frozenset({"guide_number", "stops", "factor", "power", "film_speed", "distance"})),
    ("change", frozenset({"aperture", "distance", "power", "film_speed", "count", "energy"})),
    ("flash", frozenset({"aperture", "distance", "power", "film_speed", "guide_number", "count"})),
)


@cache
def _module(name: str) -> Any:
    """A module of solving/, imported when it is first asked."""
    return import_module(f"assistant.solving.{name}")


def solve(query: Query) -> Solution | None:
    """The solution of a query; None when no topic knows what to do with it."""
    wrong = impossible(query)
    if wrong:
        return wrong
    query, used, notes = routed(query)
    found = _which(query) or choose(query, _asked) or each_in_turn(query, _asked) or over_values(query, _asked) or _asked(query)
    if found is None or found.status not in ("answered", "out_of_reach"):
        return found
    found = as_an_addition(query, found)
    return replace(found, used=found.used + used).noting(*notes) if used or notes else found


def _which(query: Query) -> Solution | None:
    """The one of two that has more of what is asked, where two are told and it is asked which."""
    text = query.text.lower()
    if "which" not in text and "what" not in text and "?" not in text or not (" or " in text or " and " in text or "the other" in text):
        return None
    found: Solution | None = _module("which_of_two").more_of(query)
    return found


def routed(query: Query) -> tuple[Query, tuple[Fact, ...], tuple[str, ...]]:
    """The query made plainer: the guide number of a zoom table, the path and paint of a bounce."""
    used: tuple[Fact, ...] = ()
    notes: tuple[str, ...] = ()
    signs = _signs(query)
    for name, needed in ROUTES:
        if needed.isdisjoint(signs):
            continue
        route: Route = _module(name).route
        plainer = route(query)
        if plainer is not None:
            query, used, notes = plainer[0], used + plainer[1], notes + plainer[2]
            signs = _signs(query)
    return query, used, notes


def _signs(query: Query) -> set[str]:
    """The kinds of its facts, whose they are, and its cues."""
    return {sign for fact in query.facts for sign in (fact.quantity, fact.of)}.union(query.cues)


def _in_order(query: Query) -> Solution | None:
    """What was asked first, by itself, where it can be answered so."""
    alone = _first(replace(query, asks=query.asks[:1]))
    return alone if alone is not None and alone.status == "answered" else None


_CALLED_FOR = Pattern(r"\b(?:aperture|f-?stop|opening) (?:that )?(?:that|it|this|the (?:flash|light|strobe|gun)) (?:calls for|wants|needs|asks for|gives|requires|demands)\b(?! ?\?)|\bset (?:the |my )?(?:aperture|f-?stop|lens) (?:to suit|accordingly|to match|for it|by (?:it|that))\b", re.I)
"""The aperture that follows from what was told, on the way to what is asked."""


def _asked(query: Query) -> Solution | None:
    """Everything that was asked, what was asked first before the rest."""
    if len(query.asks) < 2:
        return _first(query)
    hangs_together = query.has("guide_number") and query.asks_for("near_limit", "far_limit", "depth_of_field", "sharp")  # the depth needs the flash's aperture
    if hangs_together and _CALLED_FOR.search(query.text):
        query = replace(query, asks=tuple(a for a in query.asks if a.quantity != "aperture") or query.asks)
    found = _in_order(query) if len({a.quantity for a in query.asks}) > 1 and not hangs_together else None
    found = found or _first(query)
    return _with_the_rest(query, found) if found is not None else None


def _with_the_rest(query: Query, found: Solution) -> Solution:
    """Two things asked in one breath: what the first topic did not answer is asked again by itself."""
    given = {q.quantity for q in found.answers}
    if found.status not in ("answered", "out_of_reach"):
        return found
    for ask in query.asks:
        if ask.quantity in given or ask.quantity in ("speed", "latitude"):
            continue
        more = _first(replace(query, asks=(ask,)))
        if more is not None and more.status == "answered" and more.answers:
            extra = tuple(q for q in more.answers if q not in found.answers)
            found = replace(found, answers=found.answers + extra, notes=found.notes + more.notes, used=tuple(dict.fromkeys(found.used + more.used)),
                            assumed=tuple(dict.fromkeys(found.assumed + more.assumed)))
            given |= {q.quantity for q in extra}
    return found


@lru_cache(maxsize=500)
def _topics_of(asked: frozenset[str], claim: bool) -> tuple[str, ...]:
    """The topics that may answer what is asked."""
    return tuple([name for name, quantities in TOPICS if not (quantities and asked.isdisjoint(quantities)) and (name != "claims" or claim)])


def _first(query: Query) -> Solution | None:
    """The first topic that answers."""
    for name in _topics_of(frozenset([a.quantity for a in query.asks]), query.claim):
        topic: Topic = _module(name).solve
        found = topic(query)
        if found is not None:
            return found
    return None


ABOVE_NOTHING = frozenset({"guide_number", "distance", "power", "film_speed", "aperture", "shutter", "sync", "count", "energy", "focal_length", "path"})


def impossible(query: Query) -> Solution | None:
    """A value that cannot be, with the reason and the words that said it."""
    for fact in query.facts:
        if fact.bad and fact.origin == "said":
            return rejected(f"“{fact.said.strip()}” cannot be: {fact.bad}.")
        if fact.quantity == "distance" and math.isinf(fact.value) and fact.origin == "said" and "hyperfocal" not in query.cues:
            return rejected(f"“{fact.said.strip()}” cannot be: that is no distance a light can be at.")
        if fact.quantity == "power" and fact.value > 1 and fact.origin == "said" and "/" in fact.said:
            return rejected(f"“{fact.said.strip()}” cannot be: a flash cannot give more than full power.")
        if fact.quantity in ABOVE_NOTHING and fact.value <= 0 and fact.origin == "said":  # put right to nothing: "not 1/4, 0"
            return rejected(f"“{fact.said.strip()}” cannot be: {fact.quantity.replace('_', ' ')} must be more than nothing.")
    return None


BEARING = frozenset({"distance", "guide_number", "stops", "loss", "relation", "ratio", "factor", "push", "energy", "charge_share", "gap", "length_range", "number_range", "signed", "path", "nd", "filter_loss", "times", "exponent", "t_number", "t05", "t01", "zoom_row", "open_each"})
"""Facts of these kinds bear on an exposure: one that an answer did not use means a misreading."""


def unbearable(query: Query, solution: Solution) -> list[Fact]:
    """Facts said that would change the answer and were not used in it."""
    if solution.status not in ("answered", "out_of_reach") or solution.topic == "claims":
        return []
    return [f for f in unused(query, solution) if f.of != "middle" and (f.quantity in BEARING and not bears_not(f, query, solution) or _bears_here(f, query, solution)) and f.said.strip().lower() != "one"]


def _bears_here(fact: Fact, query: Query, solution: Solution) -> bool:
    """Whether a fact of a kind that is often told by the way bears on this answer."""
    where = _BEARS_WHERE.get(fact.quantity)
    return where is not None and where(fact, query, solution)


def _aperture_bears(fact: Fact, query: Query, solution: Solution) -> bool:
    compared = solution.topic == "relations" and query.asks_for("stops")
    return compared or fact.unit == "mixed" or solution.topic in ("conversions", "zoom") or _is_another(fact, solution)


def _time_bears(fact: Fact, query: Query, solution: Solution) -> bool:
    """Another time, or a long one where no flash is asked of, to which it would be one setting of the camera more."""
    return fact.value >= 1 and solution.topic != "flash" and not any(f.quantity == "shutter" and f.value == fact.value for f in solution.used) or _is_another(fact, solution)


def _least_power_bears(fact: Fact, query: Query, solution: Solution) -> bool:
    return query.asks_for("aperture") and any(a.quantity == "power" for a in solution.assumed)


def _is_another(fact: Fact, solution: Solution) -> bool:
    """A second film speed or power beside the one that the answer went by."""
    if fact.quantity == "film_speed" and (fact.value == 100 or solution.topic not in ("ambient", "flash", "falloff", "film")):
        return False
    if fact.quantity == "shutter" and solution.topic != "time" and not any(q.quantity in ("shutter", "duration") for q in solution.answers):
        return False
    if fact.quantity == "aperture" and not fact.of:
        return False
    if fact.quantity == "power" and (fact.value == 1.0 or not any(q.quantity == "power" for q in solution.answers)):
        return False
    return any(f.quantity == fact.quantity and f.value != fact.value and f.of == fact.of for f in solution.used)


_BEARS_WHERE: dict[str, Callable[[Fact, Query, Solution], bool]] = {
    "aperture": _aperture_bears,
    "shutter": _time_bears,
    "film_speed": lambda fact, query, solution: _is_another(fact, solution),
    "power": lambda fact, query, solution: fact.value < 1 and not bears_not(fact, query, solution) and not any(f.quantity == "power" for f in solution.used) or _is_another(fact, solution),
    "min_power": _least_power_bears,
    "power_down": lambda fact, query, solution: solution.topic == "ambient",
    "magnification": lambda fact, query, solution: fact.value >= 0.1 and solution.topic in ("change", "film", "ambient"),
    "move": lambda fact, query, solution: solution.topic == "falloff" and query.asks_for("stops"),
    "duration": lambda fact, query, solution: solution.topic == "ambient",
    "focal_length": lambda fact, query, solution: fact.value > 10 and solution.topic not in ("flash", "change", "falloff", "focus", "optics"),
    **dict.fromkeys(("circle", "coverage", "sharp_limit", "blur", "extension"), lambda fact, query, solution: True),
}
"""Where a fact of these kinds bears on the answer. A lens is often named by the way where the flash alone is asked of."""

BEARING_ON_A_CLAIM = frozenset({"loss", "relation", "gap", "focal_length", "format", "distance", "aperture", "extension", "blur", "sharp_limit"})
"""Facts of these kinds are part of what is put up for a yes or a no."""


def beside_the_claim(query: Query, verdict: Solution) -> bool:
    """Whether a verdict was reached without a figure of the claim that bears on it."""
    return verdict.status == "answered" and (any(f.quantity in BEARING_ON_A_CLAIM or f.quantity == "rows" and f.unit == "layers" and f.value > 1 or f.quantity == "stops" and not _WITHIN.search(query.text, 0, f.start) for f in unused(query, verdict)) or _two_idle(query, verdict))


_WITHIN = Pattern(r"\bwithin (?:about |a )?$")
"""Before the stops that a verdict may be out, which each verdict allows for."""


def _two_idle(query: Query, verdict: Solution) -> bool:
    """Two powers or two films told, and neither counted: they were what it was about."""
    idle = {(f.quantity, f.value) for f in unused(query, verdict) if f.quantity in ("power", "film_speed", "shutter", "count")}
    return len(idle) > len({quantity for quantity, _ in idle})


_BY_THE_WAY = frozenset({"number", "modifier", "camera_filter", "place", "rows", "claimed", "remark"})


def unused(query: Query, solution: Solution) -> list[Fact]:
    """Facts said this turn that the solution did not use."""
    if query is not _looked_at.query or solution is not _looked_at.solution:
        _looked_at.query, _looked_at.solution, _looked_at.idle = query, solution, _unused(query, solution)
    return list(_looked_at.idle)


class _LookedAt:
    """What was asked last: each check of an answer asks it again of the same one."""

    __slots__ = ("idle", "query", "solution")

    def __init__(self) -> None:
        self.query: Query | None = None
        self.solution: Solution | None = None
        self.idle: list[Fact] = []


_looked_at = _LookedAt()


def _unused(query: Query, solution: Solution) -> list[Fact]:
    places = {f.start for f in solution.used if f.origin == "said"}  # what is kept of another turn stood in another text
    idle = [f for f in query.facts if f.start not in places and f.origin == "said" and f.quantity not in _BY_THE_WAY]
    if not idle:
        return idle
    again = {(f.quantity, f.value, of) for f in solution.used for of in (f.of, "")}
    return [f for f in idle if (f.quantity, f.value, f.of) not in again]
