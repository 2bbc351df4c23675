"""The frames of a bracket as a row: its ends, the size of its steps and their number, of which three tell the fourth; and how many frames several brackets take.

"Five frames from f/11 to f/5.6, how large is each step?", "the darkest of five is f/16, a third apart: what is the brightest?"
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import DIFFERENCE_STOPS, aperture_difference_stops
from assistant.solving import marks
from assistant.solving.solution import Solution, needs

_SETTINGS: dict[str, tuple[float, Callable[[float, str | None], Quantity]]] = {
    # quantity: the power of two its value takes for one stop more exposure
    "aperture": (-0.5, marks.aperture), "shutter": (1.0, marks.shutter), "power": (1.0, marks.power),
}
_STEPS = ("stops", "relation", "signed")
_ENDS_OF_THE_LENS = frozenset({"widest_aperture", "smallest_aperture"})
_KINDS = frozenset({"count", "aperture", "aperture_range", "shutter", "power", "stops", "relation", "signed", "remark", "place", "film_speed"})


def solve(query: Query) -> Solution | None:
    """A step, an end or a sum of frames; None where a bracket is asked for frame by frame."""
    frames = [f for f in query.facts if f.quantity in ("count", "max_count") and f.unit == "frames" and f.value > 1 and f.value == int(f.value)]
    if query.claim or not frames or query.has("guide_number"):
        return None
    if query.asks_for("count"):
        return _whole_brackets(query, frames) or _in_all(query, frames)
    if len(frames) != 1 or {f.quantity for f in query.facts} - _KINDS - _ENDS_OF_THE_LENS:
        return None
    return _step(query, frames[0]) or _spread(query, frames[0]) or _other_end(query, frames[0])


# --- the step and the spread ------------------------------------------------------------------------

_STEP_ASKED = Pattern(r"\b(?:each|every|one|the|a|per|its|these|those|their) (?:single )?(?:steps?|jumps?|increments?|intervals?)\b|\b(?:how (?:big|large|wide|many stops)|what size|size)\b[^?.]{0,30}\b(?:steps?|jumps?|increments?)\b|\bbetween (?:the |each |one )?(?:frames?|neighbou?rs|exposures|shots|sheets|of them|two frames)\b|\bfrom (?:one |each )?(?:frame|shot|sheet|exposure) to (?:frame|the next)\b|\bstops? apart\b", re.I)


def _ends(query: Query) -> tuple[float, tuple[Fact, ...]] | None:
    """Stops from the one end to the other, and the facts that tell them."""
    span = query.last("aperture_range")
    if span is not None:
        return abs(aperture_difference_stops(span.value, span.other)), (span,)
    told = [(q, query.all(q)) for q in _SETTINGS if len({f.value for f in query.all(q)}) > 1]
    if len(told) != 1:
        return None
    quantity, facts = told[0]
    low, high = min(f.value for f in facts), max(f.value for f in facts)
    between = DIFFERENCE_STOPS.get(quantity)
    return abs(between(low, high) if between is not None else math.log2(high / low)), tuple(facts)


def _step(query: Query, frames: Fact) -> Solution | None:
    """"five frames from f/11 to f/5.6, how many stops is each step?": one step fewer than frames."""
    ends = _ends(query)
    if ends is None or any(query.has(q) for q in _STEPS) or not _STEP_ASKED.search(query.text):
        return None
    return Solution(answers=(Quantity("stops", ends[0] / (frames.value - 1), "stops"),), used=(frames, *ends[1]), topic="bracket", working=(f"{ends[0]:.3g} stops in {frames.value - 1:g} steps",))


_SPREAD_ASKED = Pattern(r"\bhow (?:wide|broad|many stops|far|much)\b[^?.]{0,50}\b(?:bracket|first (?:\w+ )?(?:to|and)|end to end|ends?|darkest (?:\w+ )?(?:to|and)|in all|altogether|cover\w*|span\w*|total)\b", re.I)


def _spread(query: Query, frames: Fact) -> Solution | None:
    """"seven frames in third stops: how wide is it from first to last?"."""
    steps = [f for f in query.facts if f.quantity in _STEPS]
    if len(steps) != 1 or any(query.has(q) for q in (*_SETTINGS, "aperture_range")) or not query.asks_for("stops") or not _SPREAD_ASKED.search(query.text):
        return None
    return Solution(answers=(Quantity("stops", abs(steps[0].value) * (frames.value - 1), "stops"),), used=(frames, steps[0]), topic="bracket", working=(f"{frames.value - 1:g} steps of {abs(steps[0].value):.3g}",))


# --- the other end ---------------------------------------------------------------------------------

_PLACE = r"(?P<dark>darkest|thinnest|shortest|fastest|smallest|narrowest|least exposed|most underexposed|least exposure)|(?P<bright>brightest|lightest|densest|longest|slowest|widest|largest|most exposed|most overexposed|most exposure)|(?P<first>first|start\w*|begin\w*|began|opening frame)|(?P<last>last|end(?:s|ed|ing)?|final|finish\w*|stops at)|(?P<middle>middle|centre|normal)"
_KNOWN = Pattern(rf"\b(?:{_PLACE})\b(?:(?!\b(?:around|about|round|apart|each|either|times?|speed|first)\b)[^.,;?!\d]){{0,60}}$", re.I)
_ASKED = Pattern(rf"\b(?:what|which|where)\b[^?.]{{0,40}}?\b(?:{_PLACE})\b", re.I)
_OPENS = Pattern(r"\b(?:open\w*|brighter|lighter|wider|longer|slower|more (?:exposure|light|open))\b(?! frame)", re.I)
_CLOSES = Pattern(r"\b(?:clos\w+|stopp\w+ down|darker|smaller|shorter|faster|less (?:exposure|light))\b", re.I)


_NO_OTHER = r"(?P<dark>(?!))?(?P<bright>(?!))?(?P<first>(?!))?(?P<last>(?!))?"
_MIDDLE_AFTER = Pattern(rf"{_NO_OTHER}[\s,]*(?:is |as |in |at |for |being )*(?:the |its )(?P<middle>middle|centre|normal)\b", re.I)
_ROUND = Pattern(rf"{_NO_OTHER}\b(?P<middle>around|about|round|either side of)(?: a| the)? $", re.I)
"""The middle of the row, told after its setting or by what the row lies round."""
_OF_THE_LENS = Pattern(r"[^?.]{0,24}\b(?:lens|can|may|allowed|film)\b", re.I)


def end_asked(query: Query) -> Callable[[Iterable[float]], float] | None:
    """"which is the brightest frame's aperture": one end of the frames, and no list of them; None where no end is asked for, or one of the lens."""
    asked = _ASKED.search(query.text)
    if asked is None or not (asked["dark"] or asked["bright"]) or _IN_ORDER.match(query.text, asked.end()) or _OF_THE_LENS.match(query.text, asked.end()):
        return None
    return max if asked["bright"] else min


_IN_ORDER = Pattern(r"[^?.]{0,16}\b(?:first|last|and|to|order)\b", re.I)


def _in_row(place: re.Match[str], frames: float, opens: bool | None) -> float | None:
    """Where a frame stands, counted from the darkest; None where it is not told which way the row goes."""
    if place["middle"]:
        return (frames - 1) / 2
    if place["dark"] or place["bright"]:
        return frames - 1 if place["bright"] else 0.0
    if opens is None:
        return None
    return frames - 1 if bool(place["last"]) is opens else 0.0


def _other_end(query: Query, frames: Fact) -> Solution | None:
    """"the darkest of five is f/16, a third apart: what is the brightest?": so many steps on from the frame that is told."""
    steps, told = [f for f in query.facts if f.quantity in _STEPS], [f for q in _SETTINGS for f in query.all(q)]
    one = told[0] if len(told) == 1 and told[0].origin == "said" else None
    known = (_KNOWN.search(query.text[: one.start]) or _MIDDLE_AFTER.match(query.text, one.end) or _ROUND.search(query.text[: one.start])) if one is not None else None
    if len(steps) != 1 or known is None or not query.asks_for(told[0].quantity):
        return None
    opens = _OPENS.search(query.text) is not None if (_OPENS.search(query.text) is None) is not (_CLOSES.search(query.text) is None) else None
    asked = _ASKED.search(query.text, told[0].end) or _ASKED.search(query.text[: known.start()])
    if known["middle"] and (asked is None or asked["middle"]):
        return None
    if asked is not None and _OF_THE_LENS.match(query.text, asked.end()):
        return None
    here = _in_row(known, frames.value, opens)
    there = _in_row(asked, frames.value, opens) if asked is not None else None
    if here is None or asked is not None and there is None:
        return needs(("stops",), "I need to know whether each frame gets more exposure than the one before it, or less.", (frames, steps[0], told[0]), "bracket")
    weight, make = _SETTINGS[told[0].quantity]
    places = [there] if there is not None else sorted(range(int(frames.value)), key=lambda n: abs(n - (here or 0.0)))
    answers = tuple(make(told[0].value * 2.0 ** (weight * (place - here) * abs(steps[0].value)), None) for place in places)
    if any((a.value < f.value) is (f.quantity == "widest_aperture") for a in answers for f in query.facts if f.quantity in _ENDS_OF_THE_LENS and isinstance(a.value, float)):
        return needs(("aperture",), "I need another middle: the lens does not go as far as that frame.", query.facts, "bracket")
    lead = ", ".join(str(a.set) for a in answers) + "." if len(answers) > 1 else ""
    return Solution(answers=answers, used=(frames, steps[0], told[0]), topic="bracket", lead=lead, working=(f"{frames.value - 1:g} steps of {abs(steps[0].value):.3g} from one end to the other",))


# --- the best of them ---------------------------------------------------------------------------------

_BEST = r"(?:best|right one|favourite|one (?:i|we) (?:liked|chose|printed|kept))"
_OF_THE_FRAME = Pattern(r"\b(?:frame|one|negative|neg|shot|exposure|sheet|picture|print)(?: that (?:was|is|got|had))?(?: given| made| at| with)? $", re.I)
_WAY = Pattern(r"\s*(?:stops? )?(?:(?P<under>under\w*|less|darker)|over\w*|more|brighter)\b(?=[^.?!;]*\b(?:best|right|favourite|liked|chose|printed|kept)\b)", re.I)
_MIDDLE = Pattern(r"\b(?:middle|normal|metered|straight|centre)\b[^.?!;\d]{0,30}$|\b(?:around|round|about) $", re.I)
_BEST_ASKED = Pattern(rf"\b(?:what|which|where)\b[^?]*\b{_BEST}\b[^?]*\?|\b(?:what|which) (?:aperture|f-?stop|f-?number)\b[^?]*\b(?:was|is) (?:it|that)\b", re.I)


def best_frame(query: Query) -> Solution | None:
    """"the frame two thirds under was the best, the middle one f/8: at which aperture was the best one?"."""
    sizes, told = [f for f in query.facts if f.quantity in _STEPS], query.all("aperture")
    if len(sizes) != 1 or len(told) != 1 or not query.asks_for("aperture") or not _OF_THE_FRAME.search(query.text[: sizes[0].start]) or {f.quantity for f in query.facts} - _KINDS:
        return None
    way = _WAY.match(query.text, sizes[0].end)
    if way is None or not _MIDDLE.search(query.text[: told[0].start]) or not _BEST_ASKED.search(query.text):
        return None
    value = told[0].value * 2.0 ** (abs(sizes[0].value) / (2 if way["under"] else -2))
    return Solution(answers=(marks.aperture(value),), used=(told[0], sizes[0], *query.all("count")), topic="bracket")


# --- frames in all ---------------------------------------------------------------------------------

_PICTURES = Pattern(r"\bhow many (?:different |whole |full |such )?(?:pictures|views|subjects|scenes|compositions|motifs|photographs|brackets|sitters|people|set-?ups|poses|portraits)\b", re.I)
_SEVERAL = Pattern(r"\s+(?!(?:frames|shots|exposures|rolls?|films|stops|seconds|minutes|feet|metres|meters|steps)\b)(?:[a-z]+ )?(?:[a-z]+s|people|children|men|women|couples)\b", re.I)
_EACH = Pattern(r"\b(?:each|every|apiece|per|of them|a head)\b", re.I)


def _whole_brackets(query: Query, frames: list[Fact]) -> Solution | None:
    """"12 frames, and I bracket three each: how many pictures?": whole ones (contract: rounded down)."""
    if len(frames) != 2 or "bracket" not in query.text.lower() or not _PICTURES.search(query.text) or query.has("energy"):
        return None
    each, held = sorted(frames, key=lambda f: f.value)
    return on_a_roll(query, held, each)


_ROLLS = Pattern(r"[\s-]*(?:\d+[\s-]*(?:exposures?|exp|frames?|shots?)[\s-]+)?(?:rolls?|films?|cassettes?|magazines?)\b", re.I)
_ROLLS_SAID = Pattern(r"\b(?:rolls?|films?|cassettes?|magazines?)$", re.I)


def on_a_roll(query: Query, held: Fact, each: Fact) -> Solution:
    """The whole brackets of so many frames each that a roll holds, or so many rolls of them."""
    rolls = query.all("rolls") or [f for f in query.all("number") if f.value >= 1 and f.value == int(f.value) and (_ROLLS_SAID.search(f.said) or _ROLLS.match(query.text, f.end))]
    many = int(rolls[0].value) if len(rolls) == 1 else 1
    on_one = math.floor(held.value / each.value * (1 + 1e-9))
    over, run_on = held.value - on_one * each.value, math.floor(held.value * many / each.value * (1 + 1e-9))
    notes = [f"{over:g} {'frame is' if over == 1 else 'frames are'} left over{' on each roll' if many > 1 else ''}."] if over else []
    notes += [f"A bracket may run on from one roll to the next: then it is {run_on}."] if run_on != on_one * many else []
    told = tuple(replace(f, quantity="rolls") for f in rolls if f.quantity == "number")
    return Solution(
        answers=(marks.count(on_one * many, "brackets"),), used=(held, each, *rolls, *told, *query.all("stops"), *query.all("aperture")), topic="bracket", notes=tuple(notes),
        working=(f"{held.value:g} / {each.value:g}, rounded down{f', {many} times' if many > 1 else ''}",))


def _in_all(query: Query, frames: list[Fact]) -> Solution | None:
    """"nine sitters, five frames each: how many frames?"."""
    told = [f for f in query.facts if f.quantity in ("number", "remark") and f.value > 1 and f.value == int(f.value) and _SEVERAL.match(query.text, f.end)]
    if len(frames) != 1 or len(told) != 1 or not any(a.unit == "frames" for a in query.asks) or not _EACH.search(query.text) or {f.quantity for f in query.facts} - {"count", "number", "remark", "place", "film_speed", "stops"}:
        return None
    value = told[0].value * frames[0].value
    return Solution(answers=(marks.count(value, "frames"),), used=query.facts, topic="bracket", working=(f"{told[0].value:g} × {frames[0].value:g}",))
