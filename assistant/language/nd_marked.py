"""What is engraved on a grey filter: "an ND filter engraved 1.5", "it has 0.9 on its rim" are densities, "ND 3.0" is no factor of three.

Grey filters are sold by density, written with its decimal, or by factor, written whole (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density, stops_from_factor
from assistant.query import Fact
from assistant.records import replace

_GREY = r"\b(?:nds?|neutral[- ]densit(?:y|ies)|densit(?:y|ies)|gr[ae]y (?:filter|glass|gel|screen|grad)s?)\b"
_MARKED = r"\b(?:engrav\w+|mark(?:ed|ing|s)?|stamp\w*|label\w*|printed|etched|scratched|rim|ring|mount|edge|says?|reads?|writ\w+|carr(?:y|ies)|bears?|figure|number|shows?|sold as|called|rated|has|densit(?:y|ies)(?: is| of)?)\b"
_BEFORE = Pattern(rf"{_GREY}[^.?!;\d]{{0,60}}?{_MARKED}[^.?!;\d,]{{0,24}}(?:, ?)?$")
_AFTER = Pattern(r" (?:is |was |stands |are )?(?:engraved|marked|stamped|written|printed|etched|on (?:its|the) (?:rim|ring|mount|edge))\b")
_NEAR = Pattern(rf"{_GREY}[^.?!;\d]{{0,40}}$")
_NO_MARK = Pattern(r"[ -]*(?:stops?|m\b|metres?|meters?|ft|feet|foot|mm|cm|s\b|sec|x\b|times|per ?cent|%|of a stop)")
_WITH_DECIMAL = Pattern(r"\d\.\d+\)?$")
_OF_A_DENSITY = Pattern(r"(?<!neutral )(?<!neutral-)\bdensity (?:of |is |at |= ?)?\d[\d.]*$")
_FACTORS = frozenset({2.0, 4.0, 8.0, 16.0, 32.0, 64.0, 100.0, 128.0, 200.0, 256.0, 400.0, 500.0, 1000.0, 1024.0})
_SEVERAL = Pattern(r"\b(?:nds|(?:nd|neutral[- ]density|gr[ae]y) (?:filters|glasses)|neutral densities)\b")
_ONE_OF_THEM = Pattern(r"\b(?:one|another|the (?:first|second|third|fourth|other|last)(?: one)?|and)(?: of (?:them|these|those|the \w+))?(?:'s| is| was| being| has| reads| marked|,)* ?(?:an? |the )?$")
_IN_STOPS = Pattern(r"[\w\s.-]+-stop(?:per)?")
_THE_THIRD = Pattern(r"\bthe $")
KINDS = frozenset({"nd", "number", "aperture", "stops"})


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with the figures that grey filters are marked with as stops.

    >>> settle([Fact("number", 1.5, start=25, end=28, said="1.5")], "a neutral density marked 1.5")[0].unit
    'density'
    """
    said = text.lower()
    if _SEVERAL.search(said):
        facts = [replace(f, quantity="remark", of="") if f.quantity == "number" and f.said.lower() == "third" and _THE_THIRD.search(said[: f.start]) else _one_of_several(f, said) for f in facts]
    return [as_density(f, said) if f.quantity == "nd" else _marked(f, said) if f.quantity in ("number", "aperture") else f for f in facts]


def _one_of_several(fact: Fact, said: str) -> Fact:
    """"three NDs: one is a 0.9, another a three-stop": each a strength, though the name is not said again."""
    if fact.quantity not in ("aperture", "number", "stops") or fact.bad or not _ONE_OF_THEM.search(said[max(0, fact.start - 40) : fact.start]):
        return fact
    if fact.quantity == "stops":
        return replace(fact, quantity="nd", unit="stops", of="camera", cue="") if _IN_STOPS.fullmatch(fact.said.lower()) else fact
    density = "." in fact.said and 0 < fact.value < 4 and "f" not in fact.said.lower() and not _NO_MARK.match(said, fact.end)
    return replace(fact, quantity="nd", value=stops_from_density(fact.value), unit="density", of="camera", cue="") if density else fact


def as_density(fact: Fact, text: str) -> Fact:
    """"ND 3.0", "a density of 2", "a neutral density of 1.2": written as densities are, and no stops are named."""
    if fact.unit == "stops" and _WITH_DECIMAL.fullmatch(fact.said.strip()) and not _NO_MARK.match(text, fact.end) and fact.value < 5:
        return replace(fact, value=stops_from_density(fact.value), unit="density")
    whole = fact.unit == "factor" and not math.isnan(fact.other) and 0 < fact.other <= 5
    said = fact.said.lower().strip()
    if not whole or not (_WITH_DECIMAL.search(said) or _OF_A_DENSITY.search(said)):
        return fact
    return replace(fact, value=stops_from_density(fact.other), unit="density")


def _marked(fact: Fact, said: str) -> Fact:
    """A figure with no name of its own, beside what says where it stands."""
    if fact.bad or not fact.said.strip()[:1].isdigit() or not 0 < fact.value <= 1024 or _NO_MARK.match(said, fact.end):
        return fact
    before = said[max(0, fact.start - 90) : fact.start]
    if _BEFORE.search(before) is None and not (_AFTER.match(said, fact.end) and _NEAR.search(before)):
        return fact
    density = fact.value < 5 and "." in fact.said
    if not density and fact.value not in _FACTORS:
        return fact
    stops = stops_from_density(fact.value) if density else stops_from_factor(fact.value)
    return replace(fact, quantity="nd", value=stops, unit="density" if density else "factor", of="camera", cue="", other=math.nan)

