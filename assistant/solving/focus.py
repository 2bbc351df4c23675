"""What is sharp: depth of field, near and far limits, hyperfocal, the stop or the focus for two limits.

The film format gives the circle of confusion (35 mm where none was said). Where a flash is
part of the question its aperture is worked out first and the depth taken at that aperture.
"""

from __future__ import annotations

import math
import re

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Ask, Fact, Query
from assistant.records import record, replace
from assistant.solving import change, flash, marks
from assistant.solving.frames import Frame, frame_of
from assistant.solving.one_of_two_stops import DEPTH_CHANGED, WHICH, asked_of_the_second, in_use, which_is_deeper
from assistant.solving.sharp_limits import aperture_for, hyperfocal_limits, length, say, too_near
from assistant.solving.solution import Solution, needs, rejected
from assistant.units import LENGTH, length_in

SHARP = ("near_limit", "far_limit", "depth_of_field", "hyperfocal")
ABOUT = frozenset({"in_focus", "depth_of_field", "near_limit", "far_limit", "hyperfocal", "focus"})
NAMES = {"focal_length": "the focal length of the lens", "focus_distance": "the distance it is focused at", "aperture": "the aperture",
         "distance": "the distance that has to be sharp"}


@record
class Setting:
    """A lens as it is set; lengths in metres, None where unknown. `used` are the facts behind it."""

    focal: float | None
    aperture: float | None
    focus: float | None
    frame: Frame
    limits: tuple[float, ...]
    unit: str
    used: tuple[Fact, ...]
    assumed: tuple[Assumed, ...] = ()


def solve(query: Query) -> Solution | None:
    """Questions about sharpness; None for all others."""
    if len(query.all("sharp_limit")) == 2 and query.asks_for("aperture") and not query.has("aperture") and (held := _widest(query)) is not None:
        return held  # "the near rail at 3 ft and the far barn at infinity both sharp: what f-stop"
    for ask in query.asks:
        if ask.quantity in SHARP:
            return _sharpness(query)
        if ask.quantity == "sharp":
            return _whether(query)
        if ask.quantity == "focus_distance":
            return _where_to_focus(query)
    if any(a.quantity == "aperture" for a in query.asks):
        return _widest(query)
    return None


def setting(query: Query) -> Setting:
    """The lens of a question."""
    focal, stop, frame = query.last("focal_length"), query.last("aperture", "") or query.last("aperture"), frame_of(query)
    focus, assumed = _focus(query)
    limits = tuple(f for f in query.facts if f.quantity == "sharp_limit")
    if focus is None and len(limits) == 1 and not limits[0].cue and not math.isinf(limits[0].value) and any(a.quantity in SHARP for a in query.asks):
        focus, limits = limits[0], ()
    beside = [f for f in query.all("distance") if not f.of and f is not focus and _of_flash(f, query.text)] if not query.has("guide_number") else []
    facts = tuple(f for f in (focal, stop, focus, *limits, *frame.used, *beside) if f)
    return Setting(focal.value if focal else None, stop.value if stop else None, focus.value if focus else None, frame,
                   tuple(f.value for f in limits), _unit(query, focus, limits), facts, frame.assumed + assumed)


def _focus(query: Query) -> tuple[Fact | None, tuple[Assumed, ...]]:
    """The focus that was said, else the camera's distance, else the subject's where only one is known."""
    focus = query.last("focus_distance")
    plain = [f for f in query.facts if f.quantity == "distance" and not f.of]
    if focus and focus.origin == "said":
        return focus, ()
    said = [f for f in plain if f.origin == "said" and not _of_flash(f, query.text)]
    if said and not query.has("guide_number") and (focus is None or focus.origin == "kept"):
        return said[-1], ()
    camera = query.last("camera_distance")
    if focus or camera:
        return focus or camera, ()
    if len(plain) == 1:
        why = "the focus is taken to be on the subject, at the distance said"
        unit = plain[0].unit if plain[0].unit in LENGTH else "m"
        return plain[0], (Assumed("focus_distance", length_in(plain[0].value, unit), unit, why),) if query.has("guide_number") else ()
    return None, ()


_FLASH_AT = Pattern(r"\b(?:flash|light|strobe|lamp|head|key|umbrella|softbox)(?:'s| is| at| stands?| stood| sits?| about| set| up| placed)*\W*$", re.I)
_CAMERA_TOLD = Pattern(r"\b(?:camera|i'm|i am|tripod|focus\w*)\b", re.I)


def _of_flash(fact: Fact, text: str) -> bool:
    """"flash 6 feet from the subject": no focus, where the camera's own distance or the focus was told."""
    return bool(_FLASH_AT.search(text[: fact.start])) and bool(_CAMERA_TOLD.search(text))


def _unit(query: Query, focus: Fact | None, limits: tuple[Fact, ...]) -> str:
    asked = next((a.unit for a in query.asks if a.unit in ("ft", "m", "cm", "in", "yd", "mm")), "")
    named = next((u for u in query.units if u in ("ft", "m", "cm", "in", "yd", "mm")), "")
    said = [f.unit for f in (focus, *limits, *query.facts) if f and f.unit in ("ft", "m", "cm", "in", "yd") and f.quantity not in ("focal_length", "circle", "extension")]
    return asked or named or (said[0] if said else "m")


def _wanting(state: Setting, *names: str) -> tuple[str, ...]:
    have = {"focal_length": state.focal, "aperture": state.aperture, "focus_distance": state.focus}
    return tuple(n for n in names if have[n] is None)


def _asks_for(missing: tuple[str, ...], state: Setting) -> Solution:
    return needs(missing, "I need " + " and ".join(NAMES[m] for m in missing) + ".", state.used, "focus")


# --- depth of field -----------------------------------------------------------------------------


def _sharpness(query: Query) -> Solution | None:
    """Limits, depth and hyperfocal in the order asked, with whatever else is asked of the flash."""
    ends = query.all("sharp_limit")
    if len(ends) == 2 and [a.quantity for a in query.asks] == ["depth_of_field"] and not query.asks[0].of and not query.has("focal_length") and ends[0].value != ends[1].value:
        state = setting(query)
        return Solution(answers=(length("depth_of_field", abs(ends[1].value - ends[0].value), state.unit),), used=tuple(ends), topic="focus")
    deeper = which_is_deeper(query)
    if deeper is not None:
        return deeper
    if query.asks_for("aperture") and query.asks_for("hyperfocal") and not query.has("aperture") and not query.has("guide_number"):
        return _stop_for_hyperfocal(query)
    others = tuple(a for a in query.asks if a.quantity not in SHARP)
    lens_asks = tuple(a for a in query.asks if a.quantity in SHARP)
    if not others and query.has("guide_number") and not query.has("aperture") and any(a.quantity != "hyperfocal" for a in lens_asks):
        others = (Ask("aperture"),)  # the depth is that of the flash's aperture
    if query.has("guide_number") and len(query.all("sharp_limit")) == 2 and not query.has("aperture"):
        return None  # the depth is what is wanted, and no f-number of the flash's
    beside = _flash_part(query, others) if others else None
    if beside is not None and beside.status == "needs":
        return beside
    found = next((q for q in beside.answers if q.quantity == "aperture"), None) if beside else None
    state = setting(query)
    if found is not None:
        state = replace(state, aperture=float(found.value))
    both = [f for f in query.all("aperture") if f.origin == "said"]
    if len(both) == 2 and found is None:
        both = in_use(both, query.text)
        state = replace(state, aperture=both[-1].value)
    lenses = [f for f in query.all("focal_length") if f.origin == "said"]
    if len(lenses) == 2 and lenses[0].value != lenses[1].value and beside is None and len(both) <= 2:
        return _two_lenses(query, state, lens_asks, lenses, both)
    if len(both) == 2 and found is None and beside is None:
        return _compared(query, state, lens_asks, both)
    return _depth(query, state, lens_asks, beside)


def _stop_for_hyperfocal(query: Query) -> Solution:
    """"what aperture puts the hyperfocal distance at 5 m": N = f**2 / (c (H - f))."""
    endless = tuple(f for f in query.facts if f.quantity in ("focus_distance", "sharp_limit") and math.isinf(f.value))
    query = query.with_facts(f for f in query.facts if f not in endless)  # "sharp out to infinity" is what it comes to
    state = setting(query)
    missing = _wanting(state, "focal_length", "focus_distance")
    if missing:
        return _asks_for(missing, state)
    assert state.focal is not None and state.focus is not None
    bad = too_near(state.focal, (state.focus,))
    if bad:
        return rejected(bad)
    value = optics.aperture_for_hyperfocal(state.focal, state.focus, state.frame.circle)
    return Solution(answers=(marks.aperture(value),), used=(*state.used, *endless), assumed=state.assumed, topic="focus",
                    notes=(f"Focused at {say(state.focus, state.unit)} all is then sharp from half of that to infinity.",))


def _compared(query: Query, state: Setting, asks: tuple[Ask, ...], stops: list[Fact]) -> Solution:
    """The same question at two apertures: an answer for each, in the order said."""
    parts = [_depth(query, replace(state, aperture=f.value), asks, None) for f in stops]
    failed = next((p for p in parts if p.status != "answered"), None)
    if failed:
        return failed
    answers = tuple(replace(q, of=f"f/{f.value:g}") for f, part in zip(stops, parts) for q in part.answers[: len(asks)])
    if len(asks) == 1 and asks[0].quantity == "depth_of_field" and DEPTH_CHANGED.search(query.text) and all(math.isfinite(float(q.value)) for q in answers):
        apart = float(answers[1].value) - float(answers[0].value)  # "how much depth do I lose by opening to f/4"
        answers = (replace(answers[0], value=abs(apart), of="difference"), *answers)
    return replace(parts[0], answers=answers, used=(*parts[0].used, *stops), working=parts[0].working + parts[1].working)


def _two_lenses(query: Query, state: Setting, asks: tuple[Ask, ...], lenses: list[Fact], stops: list[Fact]) -> Solution:
    """The same question of two lenses: an answer for each, the deeper first where it is asked which has more."""
    marks_said = stops if len(stops) == 2 else [None, None]
    places = [f for f in query.facts if f.quantity in ("distance", "camera_distance", "focus_distance", "sharp_limit") and f.origin == "said"]
    each = [f.value for f in places] if len(places) == 2 else [state.focus, state.focus]
    parts = [_depth(query, replace(state, focal=f.value, aperture=n.value if n else state.aperture, focus=place), asks, None) for f, n, place in zip(lenses, marks_said, each)]
    failed = next((p for p in parts if p.status != "answered"), None)
    if failed:
        return failed
    pairs = [(f, replace(q, of=f"{f.value * 1000:g} mm")) for f, part in zip(lenses, parts) for q in part.answers[: len(asks)]]
    more = WHICH.search(query.text)
    if not more and asks[0].quantity == "hyperfocal" and state.focus is not None and asked_of_the_second(query.text, lenses):
        pairs.reverse()
    if more and len(asks) == 1:
        pairs.sort(key=lambda pair: float(pair[1].value), reverse=bool(more["more"]))
    return replace(parts[0], answers=tuple(q for _, q in pairs), used=(*parts[0].used, *lenses, *stops, *places), working=parts[0].working + parts[1].working)


def _flash_part(query: Query, asks: tuple[Ask, ...]) -> Solution | None:
    plain = replace(query, asks=asks)
    lightless = plain.with_facts(f for f in query.facts if f.quantity not in ("focal_length", "format", "focus_distance", "camera_distance", "circle", "sharp_limit"))
    together = query.last("focus_distance")
    if together is not None and not query.has("distance") and _ALL_AT_ONE_PLACE.search(query.text):
        found = flash.solve(lightless.with_facts((*lightless.facts, replace(together, quantity="distance", of="", cue=""))))
        return replace(found, used=(*found.used, together)) if found is not None else None
    return change.solve(lightless) or flash.solve(lightless)


_ALL_AT_ONE_PLACE = Pattern(r"\b(?:flash|light|strobe|lamp|head|gun)\b[^.?!]{0,60}\band (?:the |my )?(?:focus\w*|camera|lens)(?: and (?:the |my )?\w+)? (?:are |is |stand |being )?(?:both|each|alike|set|at|the same)\b|\b(?:focus\w*|camera|lens) and (?:the |my )?(?:flash|light|strobe|lamp|head|gun)\b[^.?!]{0,40}\b(?:both|each|are|at)\b|\b(?:flash|gun|strobe|light)(?: \w+)? on (?:the |my )?camera\b|\bon-camera (?:flash|gun|strobe|light)\b|\bfrom (?:both )?(?:the |my )?(?:flash|light|camera|lens) and (?:the |my )?(?:flash|light|camera|lens)\b", re.I)
"""The flash stands where the lens is, or both at the place told."""


def _depth(query: Query, state: Setting, asks: tuple[Ask, ...], beside: Solution | None) -> Solution:
    only_hyperfocal = all(a.quantity == "hyperfocal" for a in asks)
    at_hyperfocal = state.focus is None and "hyperfocal" in query.cues
    if "hyperfocal" in query.cues and not only_hyperfocal and state.focus and not (state.focal and state.aperture):
        return hyperfocal_limits(query, state.focus, state.unit, asks, state.used)
    missing = _wanting(state, "focal_length", "aperture", *(() if only_hyperfocal or at_hyperfocal else ("focus_distance",)))
    if missing:
        return _asks_for(missing, state)
    assert state.focal is not None and state.aperture is not None
    circle, focal, stop = state.frame.circle, state.focal, state.aperture
    hyper = optics.hyperfocal(focal, stop, circle)
    focus = hyper if state.focus is None else state.focus
    if not only_hyperfocal and focus <= focal:
        return rejected(f"A {focal * 1000:g} mm lens cannot focus at {focus * 1000:g} mm: the focus must be farther off than one focal length.")
    near = hyper / 2 if focus == hyper else hyper - focal if math.isinf(focus) else optics.near_limit(focal, stop, focus, circle)
    far = math.inf if focus == hyper or math.isinf(focus) else optics.far_limit(focal, stop, focus, circle)
    values = {"near_limit": near, "far_limit": far, "depth_of_field": far - near, "hyperfocal": hyper}
    wanted = [_piece(a, values, focus, state.unit) for a in asks]
    rest = [q for q in ("near_limit", "far_limit", "depth_of_field", "hyperfocal") if q not in [a.quantity for a in asks]]
    more = rest[:-1] if not only_hyperfocal else [] if state.focus and query.cues & {"near_limit", "far_limit"} else ["near_limit"]
    extra = [length(q, values[q] if q != "near_limit" or not only_hyperfocal else hyper / 2, state.unit) for q in more]
    answers = (*(beside.answers if beside else ()), *wanted, *extra)
    return Solution(
        answers=_in_order(query, answers, beside), assumed=(*(beside.assumed if beside else ()), *state.assumed),
        used=(*(beside.used if beside else ()), *state.used), topic="focus", working=_working(state, hyper, focus, near, far),
        notes=(f"With the focus there everything from {say(hyper / 2, state.unit)} to infinity is sharp." if only_hyperfocal else "",
               "How far off the flash stands does not bear on that." if not beside and any(f.quantity == "distance" and _of_flash(f, query.text) for f in state.used) else ""),
    )


def _piece(ask: Ask, values: dict[str, float], focus: float, unit: str) -> Quantity:
    if ask.quantity == "depth_of_field" and ask.of in ("behind", "in front"):
        part = values["far_limit"] - focus if ask.of == "behind" else focus - values["near_limit"]
        return length("depth_of_field", part, unit, ask.of)
    return length(ask.quantity, values[ask.quantity], unit)


def _in_order(query: Query, answers: tuple[Quantity, ...], beside: Solution | None) -> tuple[Quantity, ...]:
    """Answers in the order asked, the rest after them."""
    order = [a.quantity for a in query.asks]
    first = [next(q for q in answers if q.quantity == name) for name in order if any(q.quantity == name for q in answers)]
    return tuple(dict.fromkeys((*first, *answers)))


def _working(state: Setting, hyper: float, focus: float, near: float, far: float) -> tuple[str, ...]:
    unit = state.unit
    assert state.focal is not None and state.aperture is not None
    return (f"circle of confusion {state.frame.circle * 1000:.3g} mm ({state.frame.name})",
            f"hyperfocal distance: focal length squared over (f-number times circle), plus the focal length: {say(hyper, unit)}",
            f"focused at {say(focus, unit)}: sharp from {say(near, unit)} to {say(far, unit)}")


# --- the other way round ---------------------------------------------------------------------------


def _limits(query: Query, state: Setting) -> tuple[tuple[float, ...], tuple[Fact, ...]]:
    """The distances that must be sharp: said as such, or those of the people in the scene."""
    if state.limits:
        return tuple(sorted(state.limits)), ()
    both = [f for f in query.facts if f.quantity in ("distance", "camera_distance")]
    if len(both) == 2 and {f.quantity for f in both} == {"distance", "camera_distance"} and {f.of for f in both} & {"front", "back"} and not query.has("focus_distance"):
        return tuple(sorted(f.value for f in both)), tuple(both)  # "the front row 4 m and the back row 6 m from the camera"
    kinds = ("distance", "camera_distance") if query.has("focus_distance") else ("distance",)
    facts = tuple(f for f in query.facts if f.quantity in kinds and f.value != state.focus)
    return tuple(sorted(f.value for f in facts)), facts


_ALL_SHARP = Pattern(r"\b(?:all|both|everybody|everyone|everything|each|group|them)\b(?:[^.?!]|\.(?=\d)){0,60}\b(?:sharp|in focus|crisp)\b|\b(?:holds?|covers?|keeps?|gets?|takes? in) (?:them )?both\b|\bfocus\w*\b[^?]*\b(?:holds?|covers?|keeps?|gets?|takes? in) (?:them |it )?(?:all(?: of them)?|everyone|everybody|the lot|the whole \w+)\b", re.I)


def _widest(query: Query) -> Solution | None:
    """The widest f-number that keeps a limit, or two, sharp; None where sharpness is not the point."""
    if query.has("guide_number") or not query.cues & {"in_focus", "depth_of_field", "near_limit", "far_limit"} and not query.has("sharp_limit") and not (query.has("focal_length") and _ALL_SHARP.search(query.text)):
        return None
    state = setting(query)
    limits, more = _limits(query, state)
    state = replace(state, focus=None) if len(more) == 2 and any(f.quantity == "camera_distance" for f in more) else state
    if query.has("aperture") and not query.has("sharp_limit"):
        return None
    missing = _wanting(state, "focal_length") + (() if limits else ("distance",)) + (() if state.focus or len(limits) > 1 else ("focus_distance",))
    if missing:
        return _asks_for(missing, state)
    assert state.focal is not None
    focus = state.focus if state.focus is not None else optics.focus_for_limits(limits[0], limits[-1])
    bad = too_near(state.focal, (focus, *limits))
    if bad:
        return rejected(bad)
    value = max(aperture_for(state.focal, focus, limit, state.frame.circle) for limit in limits)
    if value <= 0:
        return rejected("What is to be sharp is the very distance focused at: any aperture keeps it.")
    where = (length("distance", focus, state.unit, "focus"),) if state.focus is None else ()
    return Solution(answers=(marks.aperture(value), *where), assumed=state.assumed, used=(*(f for f in state.used if f.quantity != "aperture"), *more), topic="focus",
                    notes=("Any smaller opening does as well.", f"Focus at {say(focus, state.unit)}." if where else ""))


_STILL_TO_FOCUS = Pattern(r"\b(?:do|should|must|shall|can|to) (?:i |we )?focus\b", re.I)


def _where_to_focus(query: Query) -> Solution | None:
    """The focus that makes two limits equally sharp; the hyperfocal distance for infinity alone."""
    state = setting(query)
    limits, more = _limits(query, replace(state, focus=None))
    if not limits:
        return needs(("distance",), "I need the nearest and the farthest distance that must be sharp.", state.used, "focus")
    if len(limits) == 1 and math.isinf(limits[0]):
        return _depth(query, replace(state, focus=None), (Ask("hyperfocal"),), None)
    if len(limits) == 1:
        return needs(("distance",), "I need the other limit as well: the nearest and the farthest distance that must be sharp.", state.used, "focus")
    focus = optics.focus_for_limits(limits[0], limits[-1])
    stop: tuple[Quantity, ...] = ()
    if state.focal and focus > state.focal:
        stop = (marks.aperture(optics.aperture_for_limits(state.focal, limits[0], limits[-1], state.frame.circle)),)
    if stop and state.aperture is not None and math.isinf(limits[-1]) and float(stop[0].value) > state.aperture * 1.06 and _STILL_TO_FOCUS.search(query.text):
        return needs(("aperture",), f"I need a smaller opening: f/{state.aperture:g} does not hold both, it takes {stop[0].set}.", state.used, "focus")
    used = tuple(f for f in state.used if f.quantity == "sharp_limit" or stop) + more
    where = length("distance", focus, state.unit, "focus")
    answers = (*stop, where) if stop and query.asks[0].quantity == "aperture" else (where, *stop)
    return Solution(lead="" if answers[0] is not where else "Focus at", answers=answers, assumed=state.assumed if stop else (), used=used, topic="focus",
                    notes=("It is nearer to the near limit than to the far one: 2 × near × far over their sum.",))


def _whether(query: Query) -> Solution | None:
    """A yes or a no about sharpness, after the flash's part where that is asked first."""
    others = tuple(a for a in query.asks if a.quantity != "sharp")
    if not others:
        return _is_sharp(query, setting(query))
    beside = _flash_part(query.with_facts(f for f in query.facts if f.quantity != "aperture"), others)
    stop = next((q for q in beside.answers if q.quantity == "aperture"), None) if beside else None
    if beside is None or stop is None:
        return None
    judged = _is_sharp(query, replace(setting(query), aperture=float(stop.value)))
    if judged is None or judged.status != "answered":
        return judged or beside
    return replace(judged, answers=(*beside.answers, *judged.answers), used=(*beside.used, *judged.used), assumed=(*beside.assumed, *judged.assumed))


def _holds_range(state: Setting, more: tuple[Fact, ...], limits: tuple[float, ...]) -> Solution:
    """Whether the aperture holds two limits with the best focus between them."""
    assert state.focal is not None and state.aperture is not None
    bad = too_near(state.focal, limits)
    if bad:
        return rejected(bad)
    need = optics.aperture_for_limits(state.focal, limits[0], limits[-1], state.frame.circle)
    focus = length("distance", optics.focus_for_limits(limits[0], limits[-1]), state.unit, "focus")
    return Solution(answers=(Quantity("claim", state.aperture >= need * (1 - 1e-6)), marks.aperture(need), focus), assumed=state.assumed, used=(*state.used, *more), topic="focus")


_BLURRED = Pattern(r"\bblurr|\bout of focus\b|\bunsharp\b|\b(?:outside|beyond)(?: of)? (?:the |my |its )?(?:depth|zone|d\.?o\.?f)", re.I)


def _is_sharp(query: Query, state: Setting) -> Solution | None:
    """Whether the distances said lie within the limits."""
    limits, more = _limits(query, state)
    if state.focus is None and len(limits) > 1 and state.focal and state.aperture:
        return _holds_range(state, more, limits)
    missing = _wanting(state, "focal_length", "aperture", "focus_distance") if "hyperfocal" not in query.cues else _wanting(state, "focal_length", "aperture")
    if missing:
        return _asks_for(missing, state)
    depth = _depth(query, state, (Ask("near_limit"), Ask("far_limit")), None)
    if depth.status != "answered" or not limits:
        return depth if limits else None
    assert state.focal is not None and state.aperture is not None
    focus = state.focus if state.focus is not None else optics.hyperfocal(state.focal, state.aperture, state.frame.circle)
    near = optics.near_limit(state.focal, state.aperture, focus, state.frame.circle)
    far = math.inf if state.focus is None else optics.far_limit(state.focal, state.aperture, focus, state.frame.circle)
    holds = all(near * (1 - 0.005) <= limit <= far * (1 + 0.005) for limit in limits)
    blurred = _BLURRED.search(query.text) is not None
    lead = f"{'It is sharp' if holds else 'It is not sharp'}: the sharp zone runs from {say(near, state.unit)} to {say(far, state.unit)}"
    return replace(depth, answers=(Quantity("claim", holds != blurred), *depth.answers), used=(*depth.used, *more), notes=(lead + ".", *depth.notes))
