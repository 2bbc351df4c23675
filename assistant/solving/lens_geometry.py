"""How large and how wide: magnification, extension, bellows exposure, the angle a lens covers."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.query import Ask, Fact, Query
from assistant.scales import nearest_aperture
from assistant.solving import lit_patch, marks
from assistant.solving.camera import bellows_factor
from assistant.solving.claim_denial import denials
from assistant.solving.frames import frame_of
from assistant.solving.sharp_limits import length
from assistant.solving.solution import Solution, needs, rejected
from assistant.solving.taken_off import back_to_infinity, is_allowed_for

SIDES = ("horizontal", "vertical", "diagonal")


def solve(query: Query) -> Solution | None:
    """Angles, magnification, extension and what close focus costs; None for all others."""
    if query.asks_for("distance", "coverage"):
        seen = _field_width(query) or (lit_patch.width(query) or lit_patch.elsewhere(query) if not query.has("focal_length") else None)
        if seen is not None:
            return seen
    if query.asks_for("aperture") and query.has("pupil", "focal_length"):
        return _by_the_hole(query)
    for ask in query.asks:
        topic = {"coverage": _coverage, "magnification": _magnification, "extension": _extension, "subject_distance": _subject_distance}.get(ask.quantity)
        if topic:
            return topic(query, ask)
        if ask.quantity in ("stops", "factor", "aperture") and _close_up(query):
            return _bellows(query, ask)
        if ask.quantity in ("stops", "factor", "aperture") and _half_told(query):
            return needs(("magnification",), "I need the magnification, or how far the lens is out.", tuple(query.all("focal_length")), "optics")
    return None


# --- angle -----------------------------------------------------------------------------------------


_HEAD_FOR = Pattern(r"\b(?:flash|head|strobe|zoom\w*)\b[^.,;?!]{0,30}$", re.I)


_COVERS = Pattern(r"\bcover|\bcorners?\b|\bedges\b|\bwhole (?:frame|picture)\b|\b(?:fill|light)\w* (?:all of |the whole of )?the (?:whole )?frame\b", re.I)
_DARK = Pattern(r"\b(?:corners?|edges?)\b[^.?!]{0,24}\b(?:dark\w*|black|unlit|fall off|vignett\w*)\b|\bvignett\w*", re.I)


def _covers(query: Query) -> Solution | None:
    """"the head's set for a 35 and I've put the 24 on: does it cover": a head lights what its setting sees, and no wider lens."""
    lenses = [(f.value * 1000, f) for f in query.all("focal_length")] + [(f.value, f) for f in query.all("zoom")]
    heads = [x for x in lenses if x[1].quantity == "zoom"] or [x for x in lenses if _HEAD_FOR.search(query.text[: x[1].start])]
    mounted = [x for x in lenses if x not in heads]
    if len(heads) != 1 or len(mounted) != 1 or not query.claim or not _COVERS.search(query.text) or query.cues & {"bounce", "wide_panel"}:
        return None
    covers = mounted[0][0] >= heads[0][0] - 0.5
    holds = covers is not (_DARK.search(query.text) is not None and not denials(query.text.lower()))
    why = "the lens sees no wider than the head lights." if covers else "the lens sees wider than the head lights, so the corners go dark: zoom the head out or use the wide panel."
    return Solution(lead=f"{'Yes' if holds else 'No'}: {why}", answers=(Quantity("claim", holds),), used=(heads[0][1], mounted[0][1]), topic="optics")


def _coverage(query: Query, ask: Ask) -> Solution | None:
    told = _covers(query)
    if told is not None:
        return told
    focal = query.last("focal_length")
    if query.has("degrees") and focal is None:
        return lit_patch.width(query)
    spread = lit_patch.angle(query) if focal is None else None
    if spread is not None:
        return spread
    if focal is None:
        return needs(("focal_length",), "I need the focal length of the lens.", topic="optics")
    one_side = query.last("frame_side")
    if one_side is not None:
        return _one_side(focal, one_side, query)
    frame = frame_of(query)
    given = query.last("degrees")
    sides = {"horizontal": frame.sides[0], "vertical": frame.sides[1], "diagonal": frame.diagonal}
    if query.cues & {"upright_camera"}:
        sides["horizontal"], sides["vertical"] = sides["vertical"], sides["horizontal"]
    named = [s for s in SIDES if s in query.cues] or (["horizontal"] if _ONE_SIDE.search(query.text) else [])
    if "diagonal" in named and len(named) == 2 and not _SIDE_NAMED.search(query.text):
        named = ["diagonal"]  # "the angle across the diagonal"
    order = named + [s for s in ("diagonal", "horizontal", "vertical") if s not in named]
    answers = tuple(Quantity("coverage", optics.field_angle(focal.value, sides[s]), "degrees", s) for s in order)
    if given is not None and query.claim:
        answers = (Quantity("claim", given.value >= float(answers[0].value) - 0.5), *answers)
    note = "" if named else "The diagonal is what an angle of view means when no direction is given."
    return Solution(answers=answers, assumed=tuple(a for a in frame.assumed if a.quantity == "format"), used=tuple(f for f in (focal, given, *frame.used) if f), topic="optics", notes=(note,),
                    working=(f"twice the arc tangent of half the frame ({sides[order[0]] * 1000:.3g} mm) over the focal length ({focal.value * 1000:g} mm)",))


_SIDE_NAMED = Pattern(r"\b(?:horizontal\w*|width|long side|wide way|sideways|vertical\w*|height|short side)\b", re.I)
_ONE_SIDE = Pattern(r"\b(?:along|across) (?:one|a|the) side\b|\bside of the square\b|\bside to side\b", re.I)


_SEEN = Pattern(r"\bhow wide is the (?:field|view|picture)\b|\bhow (?:many (?:metres|meters|feet)|wide|much|broad)\b[^?]*\b(?:in the frame|side to side|get in|fits?|take in|takes in|in the picture|in view|width)\b|\bhow wide\b[^?]*\b(?:does|will|can) (?:it|(?:the|my|an?) (?:[\w-]+ ){0,3}?(?:lens|camera|\d+)) (?:see|cover|take)\b", re.I)


def _field_width(query: Query) -> Solution | None:
    """"A 50 on 35 mm film, 5 m from the backdrop: how many metres of it are in the frame": the frame, as many times larger as the lens draws smaller."""
    focal, far = query.last("focal_length"), [f for f in query.facts if f.quantity in ("distance", "camera_distance", "focus_distance") and not f.bad]
    if focal is None or len(far) != 1 or far[0].value <= focal.value or query.has("guide_number") or not _SEEN.search(query.text):
        return None
    frame = frame_of(query)
    side = max(frame.sides)
    wide = side / optics.magnification(focal.value, far[0].value)
    return Solution(lead="Across", answers=(length("distance", wide, far[0].unit),), used=(focal, far[0], *frame.used), assumed=tuple(a for a in frame.assumed if a.quantity == "format"), topic="optics",
                    working=(f"the long side of the frame, {side * 1000:g} mm, over the magnification",))


def _one_side(focal: Fact, side: Fact, query: Query) -> Solution:
    """The angle across a side of the frame that was told."""
    if side.value <= 0:
        return rejected("A frame must be wider than nothing.")
    name = side.cue or next((s for s in SIDES if s in query.cues), None)
    angle = optics.field_angle(focal.value, side.value)
    given = query.last("degrees")
    judged = (Quantity("claim", given.value >= angle - 0.5),) if given is not None and query.claim else ()
    return Solution(answers=(*judged, Quantity("coverage", angle, "degrees", name)), used=(focal, side, *((given,) if given and judged else ())), topic="optics",
                    working=(f"twice the arc tangent of half the side ({side.value * 1000:.3g} mm) over the focal length ({focal.value * 1000:g} mm)",))


def _by_the_hole(query: Query) -> Solution:
    """"The hole in a 50 mm lens is 12.5 mm across": the focal length over it."""
    focal, hole = query.all("focal_length")[-1], query.all("pupil")[-1]
    return Solution(answers=(marks.aperture(optics.f_number(focal.value, hole.value)),), used=(focal, hole), topic="optics", working=("focal length over the diameter of the opening",))


# --- close up ----------------------------------------------------------------------------------------


def _imaged(query: Query) -> tuple[float | None, tuple[Fact, ...]]:
    """Image over thing: the image told, or the side of the frame that the thing fills."""
    thing, image = query.last("object_size"), query.last("image_size")
    if thing is None or thing.value <= 0:
        return None, ()
    if image is not None:
        return image.value / thing.value, (thing, image)
    frame = frame_of(query)
    named = patterns.search(r"\b(?:(?P<high>height|short)|(?P<wide>width|long))\b(?: side| edge| way)? of (?:the|a|my)\b[^.?]*\bframe", query.text, re.I)
    side = ("vertical" if named["high"] else "horizontal") if named else thing.cue
    lengths = {"horizontal": frame.sides[0], "vertical": frame.sides[1]}
    if side not in lengths:
        return None, (thing,)
    told = query.last("frame_side")
    if told is not None:
        return told.value / thing.value, (thing, told)
    return (lengths[side] / thing.value, (thing, *frame.used)) if frame.used else (None, (thing,))


def _whole_draw(query: Query, extension: Fact, focal: Fact) -> float:
    return focal.value * math.sqrt(bellows_factor(query, extension, focal))


def _where_it_is(query: Query) -> Fact | None:
    """Where the lens is focused, by whatever word: "60 cm from it when it's sharp"."""
    sharp = query.all("sharp_limit")
    return query.last("focus_distance") or query.last("camera_distance") or query.last("distance", "") or (sharp[0] if len(sharp) == 1 else None)


def magnification_of(query: Query) -> tuple[float | None, tuple[Fact, ...]]:
    """Magnification said, or from extension, or from the focus distance; None where unknown."""
    said, focal, extension = query.last("magnification"), query.last("focal_length"), query.last("extension")
    if said and said.value > 0:
        return said.value, (said,)
    if query.has("object_size"):
        return _imaged(query)
    ring = tuple(f for f in query.all("focus_distance") if math.isinf(f.value))
    if focal and extension:
        return optics.magnification_from_extension(_whole_draw(query, extension, focal), focal.value), (focal, extension, *ring)
    distance = _where_it_is(query)
    if focal and distance and focal.value < distance.value < math.inf:
        return optics.magnification(focal.value, distance.value), (focal, distance)
    ratio = query.last("ratio")
    if ratio and ratio.value > 0 and query.cues & {"name_magnification", "life_size"}:
        return ratio.value, (ratio,)
    return None, tuple(f for f in (focal, extension, distance) if f)


_EFFECTIVE = Pattern(r"\beffective|\b(?:working|real|true)\b|\bfilm (?:really |actually )?(?:gets|sees)\b|\breally\b|\bworth\b|\bacts? (?:as|like)\b|\bmarked\b", re.I)


def _by_what_is_lost(query: Query) -> tuple[float | None, tuple[Fact, ...]]:
    """The scale at which the extension takes so many stops, or makes one f-number act as another: the root of the factor, less one."""
    lost, marked = [f for f in query.facts if f.quantity in ("loss", "stops", "filter_loss") or f.quantity == "relation" and not f.of and "extension" in query.cues], sorted(query.all("aperture"), key=lambda f: f.value)
    if len(lost) == 1 and not marked and lost[0].value:
        return 2 ** (abs(lost[0].value) / 2) - 1, tuple(lost)
    if len(marked) == 2 and not lost and marked[1].value > marked[0].value and _EFFECTIVE.search(query.text):
        return marked[1].value / marked[0].value - 1, tuple(marked)
    return None, ()


def _magnification(query: Query, ask: Ask) -> Solution | None:
    focal, extension = query.last("focal_length"), query.last("extension")
    distance = _where_it_is(query)
    if focal and distance and not extension and distance.value <= focal.value:
        return rejected(f"A {focal.value * 1000:g} mm lens cannot focus at {distance.value * 1000:g} mm: the focus must be farther off than one focal length.")
    value, used = magnification_of(query)
    if value is None and (factor := query.last("factor")) is not None and factor.value > 1 and not query.has("object_size") and not focal:
        value, used = math.sqrt(factor.value) - 1, (factor,)
    if value is None and not focal and not query.has("object_size"):
        value, used = _by_what_is_lost(query)
    if value is None and query.has("object_size"):
        return needs(("format",), "I need the size of the image on the film, or the film format and which side of it is filled.", used, "optics")
    if value is None:
        missing = ("focal_length",) if not focal else ("focus_distance",)
        return needs(missing, "I need the focal length of the lens." if not focal else "I need the extension, or the distance from the lens to the subject.", used, "optics")
    if value <= 0:
        return Solution(answers=(Quantity("magnification", 0.0, "x"),), used=used, topic="optics", notes=("With no extension the lens is focused at infinity.",))
    stops = math.log2(optics.bellows_factor_from_magnification(value))
    notes: tuple[str, ...] = (f"That costs {stops:.2g} stop{'s' if stops != 1 else ''} of light at the film, flash and ambient alike.",) if value >= 0.1 else ()
    if distance in used and distance is not None:
        notes += ("The distance is taken from the lens, not from the film.",)
    return Solution(answers=(Quantity("magnification", value, "x"),), used=used, topic="optics", notes=notes, working=("size on the film over size in life",) if query.has("object_size") else ("extension beyond the focal length, over the focal length",))


def _extension(query: Query, ask: Ask) -> Solution | None:
    focal = query.last("focal_length")
    if focal is None:
        return needs(("focal_length",), "I need the focal length of the lens.", topic="optics")
    value, used = magnification_of(query)
    if value is None and (factor := query.last("factor")) is not None and factor.value > 1:
        value, used = math.sqrt(factor.value) - 1, (factor,)
    if value is None:
        value, used = _by_what_is_lost(query)
    if value is None:
        return needs(("magnification",), "I need the magnification, or the distance from the lens to the subject.", (focal,), "optics")
    added, whole = focal.value * value, focal.value * (1 + value)
    order = [("extension", added), ("lens to film", whole)]
    if _FILM_TO_LENS.search(query.text) or not _EXTENSION_ITSELF.search(query.text) and any(w in query.text.lower() for w in ("draw", "bellows", "lens to film", "total", "rail", "lens-to-film")):
        order.reverse()
    return Solution(lead="Extension" if order[0][0] == "extension" else "Lens to film", answers=tuple(length("distance", v, "mm", name) for name, v in order), used=tuple(dict.fromkeys((focal, *used))), topic="optics",
                    notes=("The extension is what is added beyond the focus at infinity.",), working=("extension = focal length × magnification",))


_FILM_TO_LENS = Pattern(r"\bhow far\b[^?]{0,24}\b(?:film|plate|ground ?glass)\b[^?]{0,24}\b(?:lens|glass)\b", re.I)
_EXTENSION_ITSELF = Pattern(r"\b(?:how (?:long|much|many \w+)|what)\b[^.?!]{0,24}\bextension\b(?![^.?!]*\b(?:draw|film|total|rail)\b)[^.?!]*\b(?:beyond|past|over|added|extra)\b", re.I)
_FROM_FILM = Pattern(r"\bfrom (?:the )?film to (?:the )?\w+|\bfilm[- ]to[- ]subject\b|\bsubject[- ]to[- ]film\b|\bfrom (?:the )?\w+ to (?:the )?film\b", re.I)


def _subject_distance(query: Query, ask: Ask) -> Solution | None:
    """From the lens to a subject at a magnification: f (1 + 1/m)."""
    focal = query.last("focal_length")
    size, used = magnification_of(query) if query.has("magnification") or query.has("object_size") or query.has("extension") else (None, ())
    if focal is None or size is None or size <= 0:
        return None
    whole = _FROM_FILM.search(query.text) is not None
    metres = focal.value * (2 + size + 1 / size if whole else 1 + 1 / size)
    thing = query.last("object_size")
    unit = ask.unit or (thing.unit if thing is not None and thing.unit in ("ft", "m") else "cm" if metres < 1 else "m")
    return Solution(lead="From the film to the subject" if whole else "From the lens to the subject", answers=(length("distance", metres, unit),), used=(focal, *used), topic="optics", working=("focal length × (1 + 1/magnification)",))


_OF_AN_EXPOSURE = frozenset({"guide_number", "modifier", "camera_filter", "nd", "factor", "loss", "filter_loss", "film_speed", "shutter", "power"})
_OF_THE_SIZE = frozenset({"magnification", "extension", "object_size"})


def _close_up(query: Query) -> bool:
    kinds = {f.quantity for f in query.facts}
    if not _OF_AN_EXPOSURE.isdisjoint(kinds):
        return False
    return not _OF_THE_SIZE.isdisjoint(kinds) or "effective" in query.text.lower() and "focal_length" in kinds


_STRETCHED = Pattern(r"\bbellows\b|\bextension tubes?\b|\btubes? on\b", re.I)


def _half_told(query: Query) -> bool:
    """"a 100 mm lens on bellows, the meter says f/22": how far it is out was not said."""
    told = query.has("focal_length") and (query.has("aperture") or not any(a.quantity == "aperture" for a in query.asks))
    return told and _STRETCHED.search(query.text) is not None and not any(query.has(q) for q in ("guide_number", "distance", "factor", "filter_loss", "extension", "magnification", "focus_distance", "camera_distance"))


def _bellows(query: Query, ask: Ask) -> Solution | None:
    value, used = magnification_of(query)
    if value is None and query.has("extension") and not query.has("focal_length"):
        return needs(("focal_length",), "I need the focal length of the lens.", tuple(query.all("extension")), "optics")
    if value is None:
        return None
    lamps = tuple(f for f in query.all("distance") if f not in used)  # how far the light stands is no part of the draw
    factor = optics.bellows_factor_from_magnification(value)
    lost = patterns.search(r"\b(?:lost|loses?|losing|loss|costs?|darker)\b", query.text, re.I) and not patterns.search(r"\b(?:open|add|give|extra|more|compensat\w*|make up)\b", query.text, re.I)
    stops = Quantity("stops", -math.log2(factor) if lost else math.log2(factor), "stops")
    notes = ("Flash and ambient light lose the same.",)
    working = (f"(1 + magnification {value:.3g}) squared = {factor:.3g}",)
    if ask.quantity == "stops":
        return Solution(answers=(stops, Quantity("factor", factor, "x")), used=(*used, *lamps), topic="optics", working=working, notes=("Open up, or add light, by that much.", *notes))
    if ask.quantity == "factor":
        return Solution(answers=(Quantity("factor", factor, "x"), stops), used=used, topic="optics", working=working, notes=notes)
    return _bellows_aperture(query, value, used, working)


_TOLD_AS_SEEN = Pattern(r"\b(?:effective|film (?:really |actually )?(?:sees|saw|gets|got))\b[^.?!]*$", re.I)
_RING_ASKED = Pattern(r"\b(?:what|which|where)\b[^?]*\b(?:ring|marked|marking|engraved|dial|barrel|set)\b", re.I)
"""The effective aperture is told, and that of the ring is asked."""


def _bellows_aperture(query: Query, scale: float, used: tuple[Fact, ...], working: tuple[str, ...]) -> Solution | None:
    """The aperture the film sees, or the one to set so that it sees the metered one."""
    stop = query.last("aperture")
    if stop is None or len({f.value for f in query.all("aperture")}) > 1 or query.has("distance"):
        return None
    effective = any(a.of == "effective" for a in query.asks) and not (_RING_ASKED.search(query.text, stop.end) and _TOLD_AS_SEEN.search(query.text[: stop.start]))
    if not effective and (is_allowed_for(query.text) or back_to_infinity(query)):
        return Solution(answers=(marks.aperture(stop.value * math.sqrt(optics.bellows_factor_from_magnification(scale))),), used=(stop, *used), topic="optics", working=working, notes=("That is before the extension is made up for.",))
    value = optics.effective_aperture(stop.value, scale) if effective else stop.value / math.sqrt(optics.bellows_factor_from_magnification(scale))
    lead = f"The film sees {nearest_aperture(value).text}" if effective else ""
    return Solution(lead=lead, answers=(marks.aperture(value),), used=(stop, *used), topic="optics", working=working,
                    notes=("That is what the exposure counts; the ring stays where it is.",) if effective else ("That makes up for the extension.",))
