"""Two lenses, or one lens set in two ways, held against each other for what they keep sharp: "has the 28 at f/4 more depth of field than the 50 at f/11?".

Depth of field goes by focal length, f-number, distance and format together, so each is worked out with all of them.
"""

from __future__ import annotations

import math
from copy import copy

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import how_much, set_ups
from assistant.solving.claim_words import plain
from assistant.solving.frames import frame_of
from assistant.solving.how_much import Said
from assistant.solving.set_ups import SetUps
from assistant.solving.sharp_limits import length, say, too_near
from assistant.solving.solution import Solution, needs
from assistant.units import LENGTH

_FIGURES = frozenset({"focal_length", "aperture", "focus_distance", "format", "circle"})
_BY_THE_WAY = frozenset({"remark", "place", "rows", "times", "number", "share", "film_speed", "shutter", "count"})
_PLACES = frozenset({"distance", "camera_distance"})
_OF_WHAT: tuple[tuple[str, Pattern], ...] = (
    ("hyperfocal", Pattern(r"\bhyperfocal\b")),
    ("far_limit", Pattern(r"\bfar (?:limit|end|edge)\b|\b(?:reach\w*|goes|carries|extends?|stretch\w*|runs?|holds?)\b[^.?!]{0,24}\b(?:further|farther|deeper)\b(?! (?:in front|forward|towards))|\b(?:further|farther) (?:back|behind|away|out)\b")),
    ("near_limit", Pattern(r"\bnear(?:est)? (?:limit|end|edge|point)\b|\b(?:starts?|begins?|sharp(?:ness)?)\b[^.?!]{0,30}\b(?:closer|nearer)\b")),
    ("depth_of_field", Pattern(r"\b(?:depth(?: of (?:field|focus|sharpness))?|d\.?o\.?f|deeper|shallower|in focus|sharp(?:ness)?)\b")),
)
"""What is compared, the first that is named."""
_MORE_FAR, _LESS_FAR = Pattern(r"\b(?:further|farther|more distant|longer|deeper)\b"), Pattern(r"\b(?:closer|nearer|shorter)\b")
_AS_FRAMED = Pattern(r"\b(?:same (?:framing|size|view|image size|composition|magnification|field of view)|framed (?:the same|alike|as)|fill(?:s|ing|ed)? the (?:same |whole )?frame|same (?:head )?size|cropp\w*|enlarg\w*|tilt\w*|swing\w*|bokeh|blur\w*|background)\b")
"""The picture is to be alike, or is looked at otherwise: then the distance differs, or the circle."""
_ELSE = Pattern(r"\b(?:flash|guide|gn|light|brighter|darker|expos\w*|diffraction|grain\w*)\b")
_ANY = 0.005
"""Doublings by which one must be more than the other, lengths being told to the centimetre."""
_ENDLESS = 1000.0
"""Doublings: more than any."""


def claim_of_two_depths(query: Query) -> Solution | None:
    """The verdict on what one setting of a lens keeps sharp against another's; None where nothing of the kind is put up."""
    said = plain(query.text)
    quantity = next((q for q, words in _OF_WHAT if words.search(said)), "")
    if not query.claim or not quantity or _ELSE.search(said) or sum(f.quantity in ("focal_length", "aperture", *_PLACES, "focus_distance", "sharp_limit") for f in query.facts) < 2:
        return None
    found = how_much.claimed(query)
    sizes = found if found and found[0].kind != "way" else _ways(said, quantity, found)
    if len(sizes) > 1 and sizes[0].kind in ("stops", "share"):
        return None
    for size in sizes:
        judged = _judged(query, said, size, quantity)
        if judged is not None:
            return judged
    return None


def _ways(said: str, quantity: str, found: list[Said]) -> list[Said]:
    """More or less of it; of a limit and of the hyperfocal distance, farther or nearer."""
    if quantity == "depth_of_field":
        return [replace(s, near=_ANY) for s in found]
    words = [(1, m) for m in _MORE_FAR.finditer(said)] + [(-1, m) for m in _LESS_FAR.finditer(said)]
    return [replace(s, near=_ANY) for s in found] + [Said("way", 0.0, way, "", _ANY, m.start(), m.end()) for way, m in words]


def _judged(query: Query, said: str, size: Said, quantity: str) -> Solution | None:
    facts = [_as_focus(f, said) for f in how_much.without(query, [size]) if f.quantity not in _BY_THE_WAY]
    if not {f.quantity for f in facts} <= _FIGURES or any(f.bad for f in facts):
        return None
    for held in (set_ups.across(facts, query.text, size.start, size.end), set_ups.told(facts, query.text, size.start, size.end)):
        if held is None or held.named < 0 or not (held.one and held.other) or {f.quantity for f in held.one} != {f.quantity for f in held.other}:
            continue
        if _AS_FRAMED.search(said):
            return needs(("focus_distance",), "I need the distance each of them is focused at: depth of field goes by it.", tuple(query.facts), "claims")
        return _verdict(query, said, size, quantity, held)
    return None


def _as_focus(fact: Fact, said: str) -> Fact:
    at = fact.quantity == "sharp_limit" and not math.isinf(fact.value) and said[: fact.start].endswith((" at ", " on "))
    return replace(fact, quantity="focus_distance", of="") if at or fact.quantity in _PLACES or fact.quantity == "focus_distance" else replace(fact, of="")


def _verdict(query: Query, said: str, size: Said, quantity: str, held: SetUps) -> Solution | None:
    sides = [_Side(query, held, side) for side in (0, 1)]
    wanted = ("focal_length", "aperture") if quantity == "hyperfocal" else ("focal_length", "aperture", "focus_distance")
    missing = tuple(name for name in wanted if any(not s.has(name) for s in sides))
    if any(s.focal is not None and s.focus is not None and too_near(s.focal, (s.focus,)) for s in sides):
        return None
    if missing:
        return _at_any(query, size, said, sides, quantity, held.named, missing)
    values = [s.measure(quantity) for s in sides]
    right = _doublings(*values)
    if right is None and size.kind != "way":
        return None
    holds = how_much.verdict([size], [(right or 0.0) * (-1 if held.named else 1)], said)
    unit = next((f.unit for f in query.facts if f.quantity in ("focus_distance", *_PLACES) and f.unit in LENGTH), "m")
    lead = f"{'Yes' if holds else 'No'}. The {quantity.replace('_', ' ')} of the first is {say(values[0], unit)}, of the second {say(values[1], unit)}."
    answers = tuple(length(quantity, value, unit, side.name) for value, side in zip(values, sides, strict=True))
    return Solution(answers=(Quantity("claim", holds), *answers), used=query.facts, topic="claims", assumed=_assumed(sides), lead=lead)


def _at_any(query: Query, size: Said, said: str, sides: list[_Side], quantity: str, named: int, missing: tuple[str, ...]) -> Solution | None:
    """Where a figure is told of neither, and taken as the same for both, the deeper one may be the same whatever it is; else it is asked for."""
    lacking = needs(missing, "I need " + " and ".join(_NAMES[m] for m in missing) + ".", tuple(query.facts), "claims")
    if any(s.has(name) for s in sides for name in missing) or "focal_length" in missing and size.kind != "way":
        return lacking
    tried = [(_doublings(*(s.at(stop, focus, lens).measure(quantity) for s in sides))) for stop in _STOPS for focus in _FOCUSES for lens in _LENSES]
    rights = [r for r in tried if r is not None]
    ways = {0 if abs(r) < _ANY else 1 if r > 0 else -1 for r in rights}
    verdicts = {how_much.verdict([size], [r * (-1 if named else 1)], said) for r in rights}
    if len(ways) != 1 or len(verdicts) != 1:
        return lacking
    holds = verdicts.pop()
    more = {"depth_of_field": "keeps more sharp", "hyperfocal": "has the longer hyperfocal distance", "near_limit": "has its near limit farther off", "far_limit": "is sharp farther back"}[quantity]
    lead = f"{'Yes' if holds else 'No'}. " + ("They are alike." if ways == {0} else f"The {'first' if ways == {1} else 'second'} {more}.")
    assumed = tuple(Assumed(name, "the same for both", "", "not told; which of them has more does not hang on it") for name in missing)
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, topic="claims", assumed=(*_assumed(sides), *assumed), lead=lead)


def _assumed(sides: list[_Side]) -> tuple[Assumed, ...]:
    return tuple(dict.fromkeys(a for s in sides for a in s.assumed))


_STOPS, _FOCUSES, _LENSES = (2.8, 8.0, 22.0), (1.5, 4.0, 12.0), (0.028, 0.05, 0.15)
"""F-numbers, distances and focal lengths in metres that are tried where none is told."""
_NAMES = {"focal_length": "the focal length of each lens", "aperture": "the f-number of each", "focus_distance": "the distance that they are focused at"}


def _doublings(one: float, other: float) -> float | None:
    """log2 of the one over the other; without end where one alone reaches infinity, None where both do."""
    if math.isinf(one) and math.isinf(other):
        return None
    if math.isinf(one) or math.isinf(other):
        return _ENDLESS if math.isinf(one) else -_ENDLESS
    return math.log2(one / other)


class _Side:
    """One lens as it is set: its figures in metres, None where they are not told."""

    def __init__(self, query: Query, held: SetUps, side: int) -> None:
        facts = held.of(side)
        self.focal, self.aperture, self.focus = (next((f.value for f in facts if f.quantity == q), None) for q in ("focal_length", "aperture", "focus_distance"))
        frame = frame_of(query.with_facts(facts))
        self.circle, self.assumed = frame.circle, frame.assumed
        self.name = " at ".join(n for n in (f"{self.focal * 1000:g} mm" if self.focal else "", f"f/{self.aperture:g}" if self.aperture else "") if n)

    def at(self, aperture: float, focus: float, focal: float) -> _Side:
        """The same with these figures where none are told."""
        other = copy(self)
        other.aperture, other.focus, other.focal = self.aperture or aperture, self.focus or focus, self.focal or focal
        return other

    def has(self, name: str) -> bool:
        """Whether a figure is told."""
        return {"focal_length": self.focal, "aperture": self.aperture, "focus_distance": self.focus}[name] is not None

    def measure(self, quantity: str) -> float:
        """A depth or a limit in metres; every figure that it takes must be told."""
        assert self.focal is not None and self.aperture is not None
        if quantity == "hyperfocal":
            return optics.hyperfocal(self.focal, self.aperture, self.circle)
        assert self.focus is not None
        formula = {"depth_of_field": optics.depth_of_field, "near_limit": optics.near_limit, "far_limit": optics.far_limit}[quantity]
        return formula(self.focal, self.aperture, self.focus, self.circle)
