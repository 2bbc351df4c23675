"""A worked line replayed step by step: where it first goes wrong, and by how much.

"GN 120, ISO 200 so 168, half power so 84, 8 feet, f/10.5": each figure given on the way is
compared with what the settings said since the last figure make of that last figure.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from operator import attrgetter

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import record, replace
from assistant.scales import aperture_difference_stops
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain
from assistant.solving.lights import guide_unit
from assistant.solving.slips import Change, slip_of
from assistant.units import LENGTH


@record
class Step:
    """One figure of the line: what it stands for, as given, as it should be from the figure before."""

    quantity: str
    given: float
    right: float
    changes: tuple[Change, ...]
    about: str = ""
    slip: str = ""
    start: int = 0

    @property
    def off(self) -> float:
        """Stops by which the figure is out; plus is too large a figure. Marks of the aperture ring count as marks."""
        if self.quantity == "aperture":
            return aperture_difference_stops(self.given, self.right)
        return 2 * math.log2(self.given / self.right)


ARITHMETIC = Pattern(
    r"(?P<a>\d+(?:\.\d+)?)(?: ?(?:m|ft|feet|metres?|meters?))?(?P<more>(?: ?(?:\+|-|x|×|\*|/|÷|times|plus|divided by|over) ?(?:the )?(?:square )?(?:root (?:of )?|√ ?)?(?:\d+(?:\.\d+)?|two)(?: ?(?:m|ft|feet|metres?|meters?)\b)?){1,8})"
    r" ?(?:=|is(?: about)?|makes|gives|comes to|equals|->|→)\s?(?:about |roughly |around )?(?P<f>f ?/? ?)?(?P<r>\d+(?:\.\d+)?)"
)
_SPOKEN = Pattern(r"\b(?:so|is|=|gives?|makes?|becomes?|get|to|about|it's|now|then|means|that's|equals?|equal to|same as|leaves?|left with|down to|up to|->|→)\W{0,3}(?:it |us |me |now |about |roughly |around |only |just |a |the |gn |guide number |of )*$")


def without_sums(query: Query) -> Query:
    """The query with written arithmetic ("56 x 1.4 = 79") as the one figure it comes to."""
    said = plain(query.text)
    facts = _film_speeds(said, list(query.facts))
    for m in ARITHMETIC.finditer(said):
        if patterns.search(r"(?:f ?/ ?|1/|iso ?|asa ?)$", said[: m.start("a")]):
            continue
        first_guide = not any(f.quantity == "guide_number" and f.end <= m.start() for f in facts)
        inside = [f for f in facts if m.start() <= f.start < m.end("r") or m.start() < f.end <= m.end("r")]
        kept = [f for f in inside if f.quantity == "guide_number" and first_guide]
        facts = [f for f in facts if f not in inside or f in kept]
        facts += _divisor(m, facts)
        kind = "aperture" if m["f"] or _divides_by_distance(m["more"], query) else "number"
        after = patterns.match(r" ?(?:in )?(m\b|met|ft|feet)", said[m.end("r") :])
        if kind == "number" and after and patterns.search(r"3\.28|3\.3\b|0?\.3048|0?\.305", m["more"]):
            facts.append(Fact("guide_number", float(m["r"]), "m" if after.group(1)[0] == "m" else "ft", start=m.start("r"), end=m.end("r"), said=m["r"], cue="claimed"))
            continue
        facts.append(Fact(kind, float(m["r"]), "sum", "", start=m.start("r"), end=m.end("r"), said=m["r"], cue="result"))
    return query.with_facts(sorted(facts, key=attrgetter("start")))


def _divisor(m: re.Match[str], facts: list[Fact]) -> list[Fact]:
    """"120 / 10 = f/12": a guide number divided by a bare number has been divided by the distance."""
    guide = next((f for f in facts if f.quantity == "guide_number"), None)
    by = patterns.fullmatch(r" ?(?:/|÷|divided by|over) ?(\d+(?:\.\d+)?)(?: ?(?P<unit>m|ft|feet|metres?|meters?))?", m["more"])
    if guide is None or by is None or not m["f"] or any(f.quantity == "distance" for f in facts):
        return []
    unit = ("m" if by["unit"][0] == "m" else "ft") if by["unit"] else "m" if guide.unit == "m" else "ft"
    return [Fact("distance", float(by.group(1)) * LENGTH[unit], unit, start=m.start("more"), end=m.end("more"), said=by.group(1))]


def _film_speeds(said: str, facts: list[Fact]) -> list[Fact]:
    """"ISO 200: 56 x 1.4 = 79": a speed before a colon is a speed, not one side of a ratio."""
    for m in patterns.finditer(r"\b(?:iso|asa) ?(\d+) ?:", said):
        clash = [f for f in facts if f.start < m.end() and f.end > m.start()]
        if not any(f.quantity == "film_speed" for f in clash):
            facts = [f for f in facts if f not in clash]
            facts.append(Fact("film_speed", float(m.group(1)), start=m.start(), end=m.end(1), said=m.group()))
    return sorted(facts, key=attrgetter("start"))


def _divides_by_distance(operations: str, query: Query) -> bool:
    found = patterns.search(r"(?:/|÷|divided by|over) ?(\d+(?:\.\d+)?)(?!.*\d)", operations)
    if not found:
        return False
    divisor = float(found.group(1))
    return any(f.quantity in ("distance", "camera_distance", "path") and abs(f.value / LENGTH.get(f.unit, 1.0) - divisor) < 0.02 * divisor for f in query.facts)


def steps(query: Query, claimed: Fact | None = None) -> list[Step]:
    """Every figure of a worked line that starts at one guide number, with what it should be.

    `claimed` is the last figure: where no other was worked out, everything else comes before it.
    """
    guides = query.all("guide_number")
    if not guides or any(f.of not in ("", "camera", "film", "both") for f in query.facts if f.quantity in ("guide_number", "distance", "aperture")):
        return []
    if any(f.cue == "result" and f.start < guides[0].start for f in query.facts) or _several(guides, plain(query.text)):
        return []
    unit, _ = guide_unit(query, guides[0])
    replay = _Replay(guides[0].value, unit, guides[0].at_iso or 100.0, guides[0].at_power or 1.0, plain(query.text))
    before = [f for f in query.facts if f.start < guides[0].start or f.start == f.end and f is not guides[0] and f.origin != "said"]  # what is known from before has no place here
    after = [f for f in query.facts if f.start > guides[0].start]
    if claimed is not None and not any(f.start != claimed.start and _worked_out(f, replay.said) for f in after):
        rest = [f for f in (*before, *after) if f.start != claimed.start]
        before, after = [], [*rest, *(f for f in query.facts if f.start == claimed.start)]
    for fact in (*before, *_conditions_first(after, replay.said)):
        replay.take(fact)
    return replay.found


def _worked_out(fact: Fact, said: str) -> bool:
    return fact.cue == "result" or (fact.quantity in ("number", "guide_number") and is_figure(fact, said))


def _several(guides: list[Fact], said: str) -> bool:
    """More than one guide number that is given and not worked out: several lights."""
    return any(not is_figure(g, said) for g in guides[1:])


def is_figure(guide: Fact, said: str) -> bool:
    """Whether a guide number is the result of a step, by its mark or the word before it."""
    return guide.cue in ("claimed", "result") or _SPOKEN.search(said[: guide.start]) is not None


def _conditions_first(facts: list[Fact], said: str) -> list[Fact]:
    """"…becomes 60 at ISO 200", "f/16 on 200 film": what is said with the last figure belongs before it."""
    figures = [n for n, f in enumerate(facts) if f.quantity in ("aperture", "number", "guide_number")]
    if not figures:
        return facts
    last = figures[-1]
    tail = facts[last + 1 :]
    gaps = [said[a.end : b.start] for a, b in zip(facts[last:], tail)]
    joined = all(patterns.fullmatch(r"[^.;,?!]*\b(?:at|on|for|with|and|in|using|through)\b[^.;,?!]*", g) for g in gaps)
    return [*facts[:last], *tail, facts[last]] if joined and tail else facts


class _Replay:
    """The running figure of a worked line: the one they hold, and what was said since."""

    def __init__(self, value: float, unit: str, iso: float, power: float, said: str) -> None:
        self.value, self.unit, self.iso, self.power, self.said = value, unit, iso, power, said
        self.of_aperture = False
        self.distance = math.nan
        self.aperture = math.nan
        self.pending: list[Change] = []
        self.found: list[Step] = []

    def take(self, fact: Fact) -> None:
        """One more thing said: a setting is kept, a figure is checked."""
        change = self._change(fact)
        if change:
            self.pending = [c for c in self.pending if c.quantity != change.quantity or change.quantity == "loss"] + [change]
        elif fact.quantity in ("distance", "path") and not self._claims_distance():
            self.distance = fact.value / LENGTH[self.unit] + (self.distance if fact.quantity == "path" and self.distance > 0 else 0.0)
        elif fact.quantity == "aperture":
            self._aperture(fact)
        elif fact.quantity in ("distance",):
            self._check(fact, "distance", fact.value / LENGTH[self.unit], self._expected() / self.aperture)
        elif fact.quantity in ("number", "guide_number") and self._is_figure(fact):
            other = fact.unit if fact.quantity == "guide_number" and fact.unit in LENGTH else self.unit
            self._check(fact, "guide_number", fact.value * LENGTH[other] / LENGTH[self.unit], self._expected())

    def _claims_distance(self) -> bool:
        return self.aperture > 0 and not self.distance > 0

    def _is_figure(self, fact: Fact) -> bool:
        if fact.quantity == "guide_number" or fact.cue == "result":
            return not self.of_aperture
        return not self.of_aperture and _SPOKEN.search(self.said[: fact.start]) is not None and fact.value > 2

    def _expected(self) -> float:
        return self.value * 2 ** (sum(c.stops for c in self.pending) / 2)

    def _aperture(self, fact: Fact) -> None:
        if not self.of_aperture and not self.distance > 0:
            self.aperture = fact.value
            return
        right = self._expected() / (1.0 if self.of_aperture else self.distance)
        self._check(fact, "aperture", fact.value, right)

    def _check(self, fact: Fact, quantity: str, given: float, right: float) -> None:
        if not (given > 0 and right > 0 and math.isfinite(right)):
            return
        step = Step(quantity, given, right, tuple(self.pending), start=fact.start)
        if abs(step.off) > TOLERANCE:
            about, slip = slip_of(right, given, tuple(self.pending), self.distance if quantity == "aperture" and not self.of_aperture else math.nan)
            step = replace(step, about=about or _about(self.pending, quantity), slip=slip)
        self.found.append(step)
        if quantity != "distance":
            self.value, self.pending, self.of_aperture = given, [], quantity == "aperture"

    def _change(self, fact: Fact) -> Change | None:
        stops = self._stops(fact)
        return None if stops is None else Change(_GROUP.get(fact.quantity, fact.quantity), stops, fact.said)

    def _stops(self, fact: Fact) -> float | None:
        if fact.quantity == "film_speed":
            before, self.iso = self.iso, fact.value
            return math.log2(fact.value / before)
        if fact.quantity == "power":
            before, self.power = self.power, fact.value
            return math.log2(fact.value / before)
        if fact.quantity == "count":
            return math.log2(fact.value)
        if fact.quantity in ("loss", "nd", "filter_loss", "power_down"):
            return -abs(fact.value)
        if fact.quantity in ("relation", "stops") and fact.cue in ("less", "more") and self.found:
            return -abs(fact.value) if fact.cue == "less" else abs(fact.value)
        if fact.quantity == "push":
            return fact.value
        return -math.log2(fact.value) if fact.quantity == "factor" else None


_GROUP = {"nd": "loss", "filter_loss": "loss", "factor": "loss", "power_down": "power", "relation": "loss", "stops": "loss", "push": "film_speed"}


def _about(pending: Iterable[Change], quantity: str) -> str:
    return next((c.quantity for c in pending if abs(c.stops) > 0.2), "distance" if quantity in ("aperture", "distance") else quantity)


def first_wrong(query: Query, claimed: Fact | None = None) -> Step | None:
    """The first figure that is out by more than a third of a stop; None where every one holds."""
    return next((s for s in steps(without_sums(query), claimed) if abs(s.off) > TOLERANCE), None)


__all__ = ["ARITHMETIC", "Step", "first_wrong", "steps", "without_sums"]
