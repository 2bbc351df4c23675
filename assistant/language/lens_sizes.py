"""Sizes near a lens: a ring at infinity, the draw to the film, the side of a frame, a thing and its image.

"set at infinity" is where the lens is focused, no distance of a light. "24 cm wide fills the
36 mm side of the frame" gives a thing and its image; "a 36 mm wide frame" what a lens covers.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language.from_the_focus import HAIR
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact
from assistant.records import replace

_SMALL = ("mm", "cm", "in")
_LENGTHS = ("size", "focal_length", "distance", "move", "camera_distance", "focus_distance", "extension", "max_distance")
_MAGNIFIED = Pattern(r"\bmagnif\w*|\breproduction|life[- ]?size|\bscale\b|\bmacro\b", re.I)
_ANGLE = Pattern(r"\bangle|field of view|\bdegrees\b|how wide\b|\bcover", re.I)
_FILM = r"(?:frame|negative|neg|film|sensor|gate|slide|transparency|tranny|sheet|plate|ground glass|screen|picture(?: area)?|image area)"
_SIDE = r"(?:wide|high|tall|across|long|deep|square)"
_OF_FRAME = Pattern(rf"^[\s,-]*(?:(?:{_SIDE}|short)[\s-]*)?(?:(?:side|width|height|length|edge|diagonal)\b,?\s*)?(?:of (?:the |a |my )?)?(?:(?:full|whole|long|short|35 ?mm) )?{_FILM}\b", re.I)
_FRAME_IS = Pattern(rf"\b(?:{_FILM}|gate)(?:'s)?(?: width| height| side| diagonal)?(?: that| which)?(?:'s| is| are| of| measures|,|:)?\s*(?:only |just |really |actually |about |\()?$", re.I)
_IN_IMAGE = Pattern(rf"^[\s-]*(?:{_SIDE} )?image\b|^[\s-]*(?:{_SIDE}\s*)?(?:on|in) (?:the |a |my )?{_FILM}\b", re.I)
_IMAGE_IS = Pattern(rf"\b(?:(?:its|the|her|his|their) )?image(?: of (?:it|the \w+))?(?: on (?:the |a |my )?(?:{_FILM}|glass))?(?:'s| is| measures| comes out(?: at)?| shows| stands| to be| should be| must be)?(?: about| just| only)? *$|\b{_FILM} (?:it|she|he|the \w+)(?:'s| is| measures| comes out(?: at)?) *$|\bwants? (?:it|them|that|her|him)(?: to be)? *$", re.I)
_TO_FILM = Pattern(r"^\W*(?:away )?(?:from (?:the )?lens to (?:the )?film|from (?:the )?film|lens[- ]to[- ]film|between (?:the )?lens and (?:the )?film|of (?:bellows )?draw\b|of (?:extra |added |further )?extension\b)", re.I)
_FILM_TO = Pattern(r"\b(?:(?:lens|board)[- ]to[- ](?:the )?film|lens (?:is )?from (?:the )?film|(?:bellows )?draw|distance (?:from (?:the )?lens )?to (?:the )?(?:film|plate|ground glass))(?: distance)?(?: is| of|:|'s|,)?\s*$", re.I)
_BARE_BEFORE = Pattern(r"(?:^|[.?!;:,]\s|\b(?:an?|the|my|on|with|behind|of|for|hyper[- ]?focal|dof|depth of field)\s)\s*$", re.I)
_LENS_TALK = Phrasings(r"how (?:deep|thin|shallow) is\b|edge to edge|\bdepth\W*$|hyper[- ]?focal|depth of field|\bdof\b|\bfocus|sharp|\btubes?\b|extension|\bbellows\b|angle of view|field of view|in the frame|side to side|\bget in\b|in view", re.I)


def sized(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with focus at infinity, draws, frames and images told apart."""
    facts = [f for f in facts if not (f.quantity == "magnification" and _SO_MANY_TIMES.search(text[: f.start]))]
    out = _said_again(_bare_lens(_ring(_full_frame(list(facts), text), text), text), text)
    lens = "focal_length" in [f.quantity for f in out]
    if lens:
        out = [_draw(f, out, text) for f in out]
        lens = "focal_length" in [f.quantity for f in out]
    if (_MAGNIFIED.search(text) or _FILLS.search(text) and (lens and _HOW_FAR.search(text) or _COSTS.search(text)) or _ON_THE_GLASS.search(text) or _MEASURED_ON.search(text) and _TAKES_LIGHT.search(text) and _two_small(out)) and not any(f.quantity == "extension" for f in out):
        return _no_cloth(_imaged(out, text))
    return [_frame(f, text) for f in out] if _ANGLE.search(text) else out


_SO_MANY_TIMES = Pattern(r"\bhow many times $", re.I)
_AND_FACTOR = Pattern(r"\band (?:what(?:'s| is)? )?(?:the |its )?(?:exposure|bellows|extension) (?:factor|increase)\b", re.I)
"""How many times life size it is, is what is asked."""
_WIDTH_SAID = Pattern(r"(?:35|thirty[- ]five)[- ]film", re.I)


def _full_frame(facts: list[Fact], text: str) -> list[Fact]:
    """"full frame 35": the film once more, no number of its own; "thirty-five film" beside a lens is a width and no speed."""
    if any(f.quantity == "focal_length" for f in facts) or _LENS_TALK.found_in(text):
        facts = [replace(f, quantity="format", value=0.0, unit="35 mm", of="") if f.quantity == "film_speed" and f.value == 35 and _WIDTH_SAID.fullmatch(f.said.strip()) else f for f in facts]
    return [f for f in facts if not (f.quantity in ("number", "film_speed") and f.value == 35 and patterns.search(r"\b(?:full[- ]frame|film|format)\s*$", text[: f.start], re.I) and not _iso_said(f, text))]


def _no_cloth(facts: list[Fact]) -> list[Fact]:
    """"a butterfly 40 mm wide fills the frame": the thing that is taken, and nothing hung before the light."""
    things = [f.start for f in facts if f.quantity == "object_size"]
    return [f for f in facts if not (f.quantity == "modifier" and f.unit == "scrim" and any(0 <= start - f.end <= 2 for start in things))]


def _ring(facts: list[Fact], text: str) -> list[Fact]:
    """"set at infinity" is the focus; "25 mm past infinity" an extension."""
    kinds = {f.quantity for f in facts}
    lens = bool(kinds & {"focal_length", "extension", "magnification"}) or bool(patterns.search(r"\btubes?\b|\bextension\b|\blens\b", text, re.I))
    out: list[Fact] = []
    for fact in facts:
        endless = math.isinf(fact.value) and fact.quantity in _LENGTHS and fact.start < fact.end
        if endless and lens and out and patterns.search(r"\b(?:past|beyond)(?: (?:the|its|my))?\s*$", text[: fact.start], re.I) and out[-1].quantity in ("focal_length", "distance", "extension") and not patterns.search(r"[.?!;]|\bextension\b", text[out[-1].end : fact.start]):
            out[-1] = replace(out[-1], quantity="extension", of="")
            continue
        if endless and lens and not patterns.search(r"\b(?:sharp|to)\s*$", text[: fact.start], re.I) or endless and lens and _is_set(text[: fact.start]):
            fact = replace(fact, quantity="focus_distance", of="camera", bad="")
        out.append(fact)
    return out


def _is_set(before: str) -> bool:
    return bool(patterns.search(r"\b(?:set|focus\w*|ring|turned|racked|parked|barrel|lens)\b[^.?!,]{0,20}\bto\s*$", before, re.I)) and not patterns.search(r"sharp\w*[^.?!]{0,30}$", before, re.I)


_SEES = Pattern(r"\s*(?:(?:that |which )?(?:sees?|takes? in|covers?|looks?|gives?|has|have|gets?|shows?|lens|wide)\b|on (?:a |the |my )?(?:35|thirty[- ]five|full|half|medium|small|6|six|4x5|miniature))", re.I)
"""After the bare focal length of a lens whose angle is asked; "a group of 30 in a beam of 60 degrees" is none."""


_FILLS = Pattern(rf"\b(?:fit|get)\b[^?.]{{0,30}}\b(?:edge to edge|side to side|in(?:to)? (?:the|my) (?:frame|picture|shot|view)|across the (?:frame|film|negative)|all in)\b|\bfill(?:s|ed|ing)? (?:up |out )?(?:(?:the|my|our|all|this|that|it|whole|full|\d+|edge|side)\b)[^?]{{0,50}}\b(?:{_FILM}|edge|side)\b|\b{_FILM}\b[^?.]{{0,40}}\bfilled\b", re.I)
_COSTS = Pattern(r"\b(?:exposure|bellows) (?:increase|factor|loss|correction)\b|\bhow many stops\b|\bstops? (?:to|do i) open\b", re.I)
_HOW_FAR = Pattern(r"\b(?:how (?:far|close|near)|where|what distance|lens to subject)\b", re.I)
_ON_THE_GLASS = Pattern(rf"\bimages?\b[^.?!]{{0,24}}\bon (?:the |a |my )?{_FILM}\b|\b{_FILM} (?:shows?|has|carries|holds)\b[^.?!]{{0,20}}\bimages?\b", re.I)


_MEASURED_ON = Pattern(rf"\b(?:on|in) (?:the |a |my )?{_FILM}\b", re.I)
_TAKES_LIGHT = Pattern(r"\bstops?\b|\bfactor\b|\bopen(?:ing)? up\b|\bexposure\b|\bhow much (?:more )?light\b|\beffective|\bf-?(?:number|stop)|\baperture\b|\bextension\b|\bbellows\b|\bdraw\b|\bhow (?:close|far|near)\b", re.I)


_LENS_NAMED = Pattern(r"lens|focal", re.I)


def _two_small(facts: list[Fact]) -> bool:
    """Whether two short lengths and nothing of a light are told beside the lens: a thing and its image."""
    lengths = [f for f in facts if f.quantity in _LENGTHS and not f.bad and not _LENS_NAMED.search(f.said)]
    return len(lengths) == 2 and all(f.unit in _SMALL for f in lengths) and not any(f.quantity in ("guide_number", "aperture_range", "power", "rows") for f in facts)


_USUAL = (24.0, 28.0, 35.0, 50.0, 85.0, 90.0, 105.0, 135.0)
_WITH_A = Pattern(r"\bwith (?:an?|the|my)\s*$", re.I)
_PLACED = Pattern(r"\s*(?:focus\w*|at \d|at f[/ \d]|on \d|[?.,]\s*$|\?|$)", re.I)
"""How deep is it "with a 50 at 2 m": a lens beside a guide number, and no film."""


def _bare_lens(facts: list[Fact], text: str) -> list[Fact]:
    """"a fifty focused at 3 m", "tubes on my 50": a bare number is the lens where a lens is talked of."""
    format_too = [f for f in facts if f.quantity == "focal_length" and abs(f.value - 0.035) < 1e-9 and patterns.search(r"\b(?:on|shooting|ordinary|normal|plain|standard|usual|regular|common)\s*$", text[: f.start], re.I) and not patterns.match(r"\s*lens", text[f.end :], re.I)]
    format_too += [f for f in facts if f.quantity == "focal_length" and f not in format_too and abs(f.value - 0.035) < 1e-9 and patterns.match(r"\s*(?:film )?(?:body|bodies|slr|rangefinder|camera|frame|format|negatives?|negs?)\b", text[f.end :], re.I)]
    named = [f for f in facts if f.quantity == "focal_length" and f not in format_too and not (_FRAME_IS.search(text[: f.start]) and _WIDE_NEXT.match(text[f.end :]))]
    mounted = _mounted(facts, text)
    if mounted is not None:
        return [replace(f, quantity="focal_length", value=f.value / 1000, unit="mm", of="") if f is mounted else f for f in facts]
    talked = _LENS_TALK.found_in(text)
    if named or not (talked or _ANGLE.search(text)):
        return facts
    if any(f.quantity == "guide_number" for f in facts):
        return [replace(f, quantity="focal_length", value=f.value / 1000, unit="mm", of="") if f.quantity in ("number", "film_speed") and f.value in _USUAL and not _iso_said(f, text) and _WITH_A.search(text[: f.start]) and _PLACED.match(text[f.end :]) else f for f in facts]
    bare = next((f for f in facts if f.quantity in ("number", "film_speed") and not f.bad and 8 <= f.value <= 1200 and not _iso_said(f, text) and _BARE_BEFORE.search(text[: f.start]) and not _COUNTS.match(text[f.end :]) and (talked or _SEES.match(text[f.end :]))), None)
    if bare is None and format_too:
        return [replace(f, quantity="format", value=0.0, unit="35 mm", of="") if f in format_too else f for f in facts]
    if bare is None:
        return facts
    lens = replace(bare, quantity="focal_length", value=bare.value / 1000, unit="mm", of="")
    return [lens if f is bare else replace(f, quantity="format", value=0.0, unit="35 mm", of="") if f in format_too else f for f in facts]


_COUNTS = Pattern(r"\s+(?:\w+ )?(?:(?!(?:lens|focus\w*|sees|gives|has|covers|does|is|was|shows|takes|gets|makes|needs|wants|reaches|serves|leaves|lets|keeps|goes|comes|becomes|stands|sits|works|this|across|millimetres|millimeters)\b)[a-z]{3,}(?<!s)s|people|men|women|children|folk)\b", re.I)
"""After a number of people or things: "twenty cousins in three rows"."""
_ARTICLE = Pattern(r"\b(?:an?|the|my)\s*$", re.I)


def _said_again(facts: list[Fact], text: str) -> list[Fact]:
    """"I've the twenty eight on, twenty eight millimetre": one lens, said twice."""
    lens = [f for f in facts if f.quantity == "focal_length"]
    if len(lens) != 1:
        return facts
    return [f for f in facts if not (f.quantity == "number" and abs(f.value / 1000 - lens[0].value) < 1e-9 and _ARTICLE.search(text[: f.start]))]


_MOUNTED_IS = Pattern(r"\blens\b[^.,;?!\d]{0,30}\b(?:is|was|'s) (?:an? |the |my )?$", re.I)
_ON_IT = Pattern(r"\s*on(?: (?:the|my) (?:camera|body))?\s*(?:[.,;:?!]|$|(?:and|now|with)\b)", re.I)
PUT_ON = frozenset({"number", "film_speed"})
"""What a lens is taken for, where nothing but its number is said."""


def is_put_on(fact: Fact, text: str) -> bool:
    """"I have the 50 on": a lens is put on, a film in."""
    return fact.quantity in PUT_ON and fact.value in _USUAL and _ON_IT.match(text[fact.end :]) is not None and _ARTICLE.search(text[max(0, fact.start - 8) : fact.start]) is not None


def _mounted(facts: list[Fact], text: str) -> Fact | None:
    """"the lens I've got on is a 28", beside a flash head that stands at another; "the 50 on"."""
    unnamed = not any(f.quantity == "focal_length" for f in facts)
    bare = [f for f in facts if f.quantity in ("number", "film_speed") and 8 <= f.value <= 1200 and not _iso_said(f, text) and (_MOUNTED_IS.search(text[: f.start]) or unnamed and is_put_on(f, text))]
    return bare[0] if len(bare) == 1 else None


_FORMAT_BEFORE = Pattern(r"(?:mm|millimet(?:re|er)s?|format) film[,.;:]\s*$", re.I)
"""A size of film, and no speed: "35 mm film, eighty-five at 2.8"."""


def _iso_said(fact: Fact, text: str) -> bool:
    if patterns.match(r"\s*on (?:a |the |my )?35 ?mm\b", text[fact.end :], re.I) and not patterns.search(r"iso|asa", text[: fact.start], re.I):
        return False
    end = next((at for at in range(fact.end + 16, len(text)) if not text[at].isalpha()), len(text))  # whole words: "two point eight" holds no EI
    near = text[fact.start if _FORMAT_BEFORE.search(text[: fact.start]) else max(0, fact.start - 12) : end]
    return bool(patterns.search(r"iso|asa|\bei\b|din|speed|film\b|slide|neg|rate|°|/", near, re.I)) and not patterns.match(r"\s*(?:lens|mm|mil)", text[fact.end :], re.I) and not patterns.match(r"\s*(?:mm |mil )?(?:lens )?(?:on )?(?:at|on) f", text[fact.end :], re.I)


_OF_A = Pattern(r"[\s-]*of (?:a |an |one )?", re.I)
_HUNDREDTHS = Pattern(r"hundredths\s*$", re.I)


def parts_of_a_millimetre(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"point oh five of a millimetre", "three hundredths of a mm": one length, and not two."""
    if "mm" not in [f.unit for f in facts]:
        return list(facts)
    out: list[Fact] = []
    for fact in facts:
        part = out[-1] if out else None
        whole = fact.quantity in _LENGTHS and fact.unit == "mm" and abs(fact.value - 0.001) < 1e-9
        if part is None or not whole or part.quantity not in ("number", "shutter", "share", "power", "exponent") or not 0 < part.value < 1 or not _OF_A.fullmatch(text[part.end : fact.start].lower()):
            out.append(fact)
            continue
        value = 1e-4 / part.value if part.quantity == "shutter" and _HUNDREDTHS.search(part.said) and part.value < 0.01 else part.value  # not 1/300
        out[-1] = replace(fact, quantity="distance", value=value * fact.value, start=part.start, said=text[part.start : fact.end], bad="", of="")
    return out


def hair_breadths(facts: Sequence[Fact]) -> list[Fact]:
    """"focus on 4 m 0.05 mm": beside a lens, so short a length is what counts as sharp on film, whatever stands around it."""
    if not any(f.quantity == "focal_length" and f.value > HAIR for f in facts):
        return list(facts)
    return [replace(f, quantity="circle", of="", cue="", bad="") if f.unit == "mm" and 0 < f.value < HAIR and f.quantity in _SHORT else f for f in facts]


_SHORT = frozenset({*_LENGTHS, "focus_distance", "camera_distance", "max_distance", "min_distance", "move", "path", "extension"})


def _draw(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"225 mm from lens to film": the whole draw."""
    lenses = sum(f.quantity == "focal_length" for f in facts)
    if fact.quantity not in ("focal_length", "distance") or fact.unit not in _SMALL or fact.quantity == "focal_length" and lenses < 2:
        return fact
    told = _TO_FILM.match(text[fact.end :]) or _FILM_TO.search(text[: fact.start])
    return replace(fact, quantity="extension", of="") if told else fact


# --- frames and images ----------------------------------------------------------------------------


_TWO_SIDES = Pattern(r"\b(\d+(?:\.\d+)?)\s*(?:mm|cm)?\s*(?:x|by|×)\s*(\d+(?:\.\d+)?)\s*-?(mm|cm|millimet\w+|centimet\w+|(?=frame|film|neg|slide|format))(?:\b|(?=\w))", re.I)
_ASKED_SIDE = (("diagonal", r"\bcorners?\b|\bdiagonal"), ("short", r"\b(?:vertical|short|upright|high|tall|height)\b"), ("long", r"\b(?:horizontal|long|wide|width|across|side to side)\b"))


def two_sides(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"a 95 by 120 mm negative": the side that the angle is asked of, or the diagonal."""
    found = _TWO_SIDES.search(text)
    if found is not None and {float(found[1]), float(found[2])} == {24.0, 36.0} and not found[3] and not any(f.quantity == "format" for f in facts):
        small = Fact("format", 0.0, "35 mm", start=found.start(), end=found.end(), said=found.group())
        return sorted([*(f for f in facts if not (f.start < found.end() and f.end > found.start())), small], key=lambda f: f.start)
    if found is None or {float(found[1]), float(found[2])} == {24.0, 36.0} and not found[3] or not patterns.search(r"\b(?:angle|degrees|field|corner|view|see|sees|take in|takes in)\b", text, re.I):
        return list(facts)
    a, b = (float(found[n]) * (0.01 if found[3][:1].lower() == "c" else 0.001) for n in (1, 2))
    named = next((side for side, said in _ASKED_SIDE if patterns.search(said, text[found.end() :], re.I) or patterns.search(said, text[: found.start()], re.I)), "diagonal")
    value = {"diagonal": math.hypot(a, b), "short": min(a, b), "long": max(a, b)}[named]
    rest = [f for f in facts if not (f.start < found.end() and f.end > found.start())]
    side = Fact("frame_side", value, "mm", cue={"diagonal": "diagonal", "short": "vertical", "long": "horizontal"}[named], start=found.start(), end=found.end(), said=found.group())
    return sorted([*rest, side], key=lambda f: f.start)


def _is_length(fact: Fact) -> bool:
    return fact.quantity in _LENGTHS and fact.end > fact.start and not math.isinf(fact.value)


_A_SIDE = Pattern(r"[\s-]*(?:(?:long|short) )?(?:side|edge|dimension|width|height|diagonal|way|direction)\b(?! (?:around|round|to (?:go|the)|from)\b)", re.I)
"""After a length on film: "the 36 mm side", where the angle of a lens is asked."""
_SIDE_IS = Pattern(r"\b(?:long|short|longer|shorter|wide|narrow|upright|horizontal|vertical) (?:side|edge|dimension)(?: (?:of|on) (?:the|my|a) \w+)?(?:'s| is| being| of|,|:)?\s*\(?$", re.I)
_WORN_NEXT = Pattern(r"[\s-]*(?:lens|glass|prime|tele|objective|wide[- ]?angle)\b", re.I)
_WIDE_NEXT = Pattern(rf"\s*{_SIDE}\b", re.I)


def _frame(fact: Fact, text: str) -> Fact:
    """"a 36 mm wide frame", "a frame 24 mm high": a side of what the lens covers."""
    before, after = text[: fact.start], text[fact.end :]
    if fact.quantity == "number" and not fact.bad and 8 <= fact.value <= 300 and _FRAME_IS.search(before) and _WIDE_NEXT.match(after):
        return replace(fact, quantity="frame_side", value=fact.value / 1000, unit="mm", of="", cue=_side(before[-30:] + " " + patterns.split(r"[,.;?]", after)[0][:30]))
    if not _is_length(fact) or fact.unit not in _SMALL or _named(fact, text):
        return fact
    if fact.unit == "mm" and fact.value >= 0.008 and patterns.match(r"[\s-]*(?:on |, ?)?(?:full|half)[- ]frame\b", after, re.I):
        return replace(fact, quantity="focal_length", of="")  # "85mm full frame": the lens, then the format
    if abs(fact.value - 0.035) < 1e-9 and patterns.match(r"[\s-]*(?:frame|film|camera|negative|neg|format)\b", after, re.I):
        return replace(fact, quantity="format", value=0.0, unit="35 mm", of="")  # "the long side of a 35mm frame": the film
    if not (_OF_FRAME.match(after) or _FRAME_IS.search(before) or fact.unit == "mm" and fact.value < 0.3 and (_A_SIDE.match(after) or _SIDE_IS.search(before) and not _WORN_NEXT.match(after))):
        return fact
    return replace(fact, quantity="frame_side", of="", cue=_side(before[-30:] + " " + patterns.split(r"[,.;?]", after)[0][:30]))


def _side(words: str) -> str:
    for side, said in (("diagonal", r"diagonal|corner"), ("vertical", r"\b(?:high|tall|height|short|vertical)"), ("horizontal", r"\b(?:wide|width|across|long|horizontal)")):
        if patterns.search(said, words, re.I):
            return side
    return ""


_THE_FRAME = Pattern(r"[\s-]*(?:frame|negative|film)\b", re.I)


_ON_THE_FILM = Pattern(rf"\b(?:on|in) (?:the |a |my )?{_FILM}\b[^.?!;]*$", re.I)
"""In the sentence of a length: "on the negative the flower head is 24 mm tall"."""


_OF_A_THING = Pattern(rf"\s*of (?:the |an? |my |that )?(?!(?:{_FILM}|draw|extension|bellows)\b)[a-z]+", re.I)
"""After so much of what is taken: "on the film, 24 mm tall, I see 60 mm of ruler"."""


def _imaged(facts: list[Fact], text: str) -> list[Fact]:
    """A thing and its image, where just these two lengths are told."""
    facts = [replace(f, quantity="format", value=0.0, unit="35 mm", of="") if f.quantity == "focal_length" and abs(f.value - 0.035) < 1e-9 and _THE_FRAME.match(text[f.end :]) else f for f in facts]
    lengths = [f for f in facts if _is_length(f) and not _named(f, text) and not _away(f, text)]
    images = [f for f in lengths if _OF_FRAME.match(text[f.end :]) or _IN_IMAGE.match(text[f.end :]) or _FRAME_IS.search(text[: f.start]) or _IMAGE_IS.search(text[: f.start]) or _ON_THE_FILM.search(text[: f.start])]
    named = [f for f in images if _OF_FRAME.match(text[f.end :]) or _IN_IMAGE.match(text[f.end :])]
    images = [f for f in images if not _OF_A_THING.match(text[f.end :])] if len(images) > 1 else images
    images = named or images  # "across the frame: 144 mm of it fills the 36 mm width of the negative"
    things = [f for f in lengths if f not in images]
    lenses = [f for f in things if f.quantity == "focal_length"]
    things = [f for f in things if f not in lenses] if len(things) == 2 and len(lenses) == 1 else things  # "3 m of wall in the 36 mm frame, with a 50"
    if len(images) > 1 or len(things) != 1 or not images and not patterns.search(r"\bfill\w*\b|\b(?:fit|get)\b[^?.]{0,30}\b(?:frame|picture|in)\b", text, re.I):
        return facts
    if not patterns.search(rf"\b(?:fill\w*|image|{_FILM})\b", text, re.I) or images and images[0].unit not in _SMALL:
        return facts
    thing = replace(things[0], quantity="object_size", of="", cue=_side(text[things[0].end : things[0].end + 8]), bad="")
    made = [thing, *(replace(f, quantity="image_size", of="", bad="") for f in images)]
    filled = [f for f in facts if f.quantity == "power" and patterns.match(r"full\b", f.said, re.I) or f.quantity == "modifier" and patterns.fullmatch(r"(?:the |a )?box", f.said.strip(), re.I)]  # "fills the full 36 mm"; "the watch box is 4 inches wide"
    return sorted([*(f for f in facts if (f not in lengths or f in lenses and len(lengths) > len(things) + len(images)) and f not in filled), *made], key=lambda f: f.start)


def _named(fact: Fact, text: str) -> bool:
    return bool(patterns.search(r"lens|focal", fact.said, re.I) or patterns.match(r"[\s-]*(?:lens|macro|camera|film|body|slr|rangefinder|format)\b", text[fact.end :], re.I))


def _away(fact: Fact, text: str) -> bool:
    return bool(patterns.match(r"\W*(?:away|off|from(?! (?:end|side|edge|tip|top|head|one|left|front)\b)|of extension|tube)\b", text[fact.end :], re.I) or patterns.search(r"\bfocus\w*[^,.]{0,12}$", text[: fact.start], re.I))


# --- what is asked --------------------------------------------------------------------------------

_TIMES = Pattern(r"(?:by )?how many times\b(?![^?]*\b(?:flash|fire|pop)\b)|multipl[^?.]*\bby (?:what|how)|what (?:do|must|should) i multiply|by what (?:factor|number|amount)\b|how many times (?:more|longer|as much)", re.I)
_EFFECTIVE = Pattern(r"\beffective|\b(?:real|true|actual|working|corrected|resulting) (?:f\b|f-|aperture|stop|opening)|\bf[- /]?(?:number|stop|no)\b[^?.!]{0,24}\b(?:really|truly|actually|in (?:fact|reality))\b|\b(?:really|actually)[^?.!]{0,16}\bf[- /]?(?:number|stop)\b|\baperture\b[^?.!]{0,24}\b(?:really|truly|actually)\b|\bact(?:s|ing|ually)?\b(?: now)? (?:as|like)|\bact(?:s|ing) as\b|\bwork(?:s|ing) (?:as|at|like|out)\b(?<!flash works out)(?<!gun works out)(?<!sum works out)(?<!exposure works out)(?<!strobe works out)(?<!number works out)(?<!light works out)|really (?:work|at\b)|film (?:is )?(?:really |actually )?(?:sees?|seeing|gets?|getting)\b|\bturn(?:s|ed)? into\b|\bbecomes?\b|amounts? to|\bworth\b|equivalent|\bbehav\w+|(?:am|do) i (?:really |actually )?(?:at|on|getting|have|get|end up with)\b|what (?:is|'s) (?:that|it) (?:really|actually)|in effect|in truth", re.I)
_TO_SET = Pattern(r"\bshould (?:the |my )?(?:lens|ring|aperture) (?:really |actually )?be\b|\bbe set\b|\b(?:do|must|should|shall|would|to) i? ?(?:really |actually |then )?(?:set|open|dial|use)\b|\b(?:wants|asks for|calls for|metered|meters?|flash gives|reads(?! f[ /-]?\S+ on the))\b(?![^?]*\beffective)", re.I)
_EFFECTIVE_BEFORE = Pattern(r"\b(?:effective|real|true|actual|working)(?: (?:aperture|f-?number|f-?stop|stop))?(?: of)? ?$", re.I)
_EFFECTIVE_AFTER = Pattern(r" ?(?:effective(?:ly)?|at the film)\b", re.I)
"""An f-number that is told as the one the film is to see: what is asked is the mark on the ring."""
_SCALE_ASKED = Pattern(r"\bmagnification(?: then| now)?(?: is| comes to| would be)?(?: what| how much)?\W*$|\b(?:what|which)(?: is|'s)? (?:the )?magnification\b|\b(?:what|which|the) scale\b|\bscale\W*$|\bhow many times (?:larger|smaller|life)\b", re.I)
_AT_THE_FILM = Pattern(r"\b(?:reach(?:es)?|gets? to|arrives? at|seen by) the film\b", re.I)
_NO_LIGHTS = Pattern(r"\b(?:key|fill|lighting|main|rim|hair|ratio|gn|guide)\b", re.I)


def reproduced(facts: Sequence[Fact], text: str) -> list[Fact]:
    """"at 1:1 by how many times": a scale of reproduction, where exposure and no lights are spoken of."""
    if "ratio" not in [f.quantity for f in facts]:
        return list(facts)
    if patterns.search(r"\b(?:shooting|working|photograph\w*|focus\w*|macro|close.?up) (?:it |this |her |them )?at \d:\d", text, re.I) and not patterns.search(r"\b(?:key|fill|lighting|main|ratio)\b", text, re.I):
        return [replace(f, quantity="magnification", of="") if f.quantity == "ratio" and not f.bad and patterns.search(r"\bat\s*$", text[: f.start], re.I) else f for f in facts]
    worked = any(f.quantity == "aperture" for f in facts) and patterns.search(r"\bring\b|\blens\b|\bwhat do i (?:set|put)|f-?stop|aperture", text, re.I)
    if worked and not _NO_LIGHTS.search(text) and patterns.search(r"\b(?:at|i'm|im|to) 1:[1-9]\b", text, re.I):
        return [replace(f, quantity="magnification", of="") if f.quantity == "ratio" and not f.bad and f.value <= 1 else f for f in facts]
    if _NO_LIGHTS.search(text) or not (_TIMES.search(text) or _EFFECTIVE.search(text) or patterns.search(r"open up|\badd\b|\bextra\b|exposure factor", text, re.I)):
        return list(facts)
    return [replace(f, quantity="magnification", of="") if f.quantity == "ratio" and not f.bad and 0.1 <= f.value <= 10 and patterns.search(r"\b(?:at|to|is|of|for|do|doing|shooting|for a)\s*$", text[: f.start], re.I) else f for f in facts]


_SIZE_ON_FILM = Pattern(rf"\b(?:how (?:big|large|small)|what (?:size|scale|magnification)|which scale)\b[^?.]{{0,60}}\b(?:{_FILM}|neg|life|real)\b", re.I)


_TIMES_LIFE = Pattern(r"\bhow many times (?:life|natural|actual)(?:[ -]?size)?\b", re.I)


_EFFECTIVE_ASKED = Pattern(r"\b(?:what|which|how large|how small)\b[^?.,]{0,24}\b(?:effective|true|real|actual) (?:aperture|f-?(?:stop|number)|stop)\b", re.I)


_OF_BELLOWS = Pattern(r"\b(?:bellows|extension|tubes?|draw|close[- ]?up)\b", re.I)


_FOCUSES_AT = Pattern(r"\b(?:how (?:near|close|far(?: away)?)|where|at (?:what|which) distance)\b[^?.]{0,40}\bfocus(?:es|ed)?\b|\bhow (?:near|close|far(?: away| off)?) (?:is|must|does|do|should|can)\b[^?]{0,30}\b(?:subject|thing|it|coin|flower|get|be)\b", re.I)
_METER_SAID = Pattern(r"\bwhat (?:had|did|does|would|must|should|will) (?:the|my) (?:(?:flash|hand|light|hand-held|handheld) ?)?meter (?:have )?(?:say|said|saying|read|shown?|shows|given?|asked for|called for)\b", re.I)


_HOW_DEEP = Pattern(r"\bhow deep\b|\b(?:what|how (?:much|large|big|wide)) (?:is|will be|would be) (?:the |my )?(?:depth of field|zone of sharpness)\b", re.I)


def sizes_asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """Factors and effective apertures asked in words of their own."""
    kinds = {f.quantity for f in facts}
    if not kinds.isdisjoint(("magnification", "extension")) and sum(f.quantity == "aperture" for f in facts) == 1 and not kinds & {"guide_number", "distance"} and _METER_SAID.search(text):
        return [Ask("aperture", "effective")]  # what was set is told, and the meter knows nothing of the draw
    if _TIMES_LIFE.search(text) and kinds & {"focus_distance", "distance", "extension", "object_size"}:
        return [Ask("magnification", "", "")]
    if [a.quantity for a in asks] == ["magnification"] and (factor := _AND_FACTOR.search(text)) is not None:
        return [*asks, Ask("factor", "", "x", factor.start())]
    if {a.quantity for a in asks} == {"magnification", "aperture"} and "aperture" in kinds and _EFFECTIVE.search(text) and not _TO_SET.search(text):
        return [replace(a, of="effective") if a.quantity == "aperture" else a for a in asks]
    if "aperture" in kinds and _EFFECTIVE_ASKED.search(text) and not _TO_SET.search(text) and any(a.quantity == "aperture" for a in asks) and kinds & {"magnification", "extension"}:
        return [replace(a, of="effective") if a.quantity == "aperture" else a for a in asks]
    if {"focal_length", "extension"} <= kinds and not kinds & {"guide_number", "aperture"} and _FOCUSES_AT.search(text):
        return [Ask("subject_distance", "", next((a.unit for a in asks if a.unit), ""))]
    if "factor" in kinds and sum(f.quantity == "aperture" for f in facts) == 1 and _EFFECTIVE_ASKED.search(text) and _OF_BELLOWS.search(text):
        return [Ask("aperture", "effective")]
    close = kinds & {"magnification", "extension", "object_size"}
    if not close or kinds & {"guide_number", "distance"}:
        return list(asks)
    if {"image_size", "object_size"} <= kinds and (not asks or [a.of for a in asks] == ["rim"]) and _SCALE_ASKED.search(text):
        return [Ask("magnification", "", "")]  # "a strip of ruler … the magnification is what": no ring, though "edge" was said
    if kinds & {"extension", "image_size"} and not asks and _SIZE_ON_FILM.search(text):
        return [Ask("magnification", "", "")]
    if {"focal_length", "object_size"} <= kinds and "magnification" not in {a.quantity for a in asks} and any(a.quantity == "distance" for a in asks):
        return [Ask("subject_distance", "", next(a.unit for a in asks if a.quantity == "distance"))]
    if {"focal_length", "magnification"} <= kinds and "aperture" not in kinds and patterns.search(r"\b(?:lens|subject) to (?:the )?(?:lens|subject)\b", text, re.I) and all(a.quantity in ("distance", "magnification") for a in asks):
        return [Ask("subject_distance", "", next((a.unit for a in asks), ""))]
    if _TIMES.search(text) and "aperture" not in kinds:
        return [Ask("factor", "", "x")]
    if "aperture" in kinds and _HOW_DEEP.search(text):  # "f/16 as marked on the ring, how deep is it?": which of the two is told
        return [a for a in asks if a.quantity != "aperture"]
    if "aperture" in kinds and (_EFFECTIVE.search(text) or _AT_THE_FILM.search(text)) and not any(a.quantity in ("stops", "factor", "magnification", "extension", "power") for a in asks):
        wanted = any(f.quantity == "aperture" and " at " not in f.said and (_EFFECTIVE_BEFORE.search(text[: f.start]) or _EFFECTIVE_AFTER.match(text[f.end :])) for f in facts)
        return [Ask("aperture", "" if (wanted or _TO_SET.search(text)) and not _AT_THE_FILM.search(text) else "effective")]
    return list(asks)
