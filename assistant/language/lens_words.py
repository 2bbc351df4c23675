"""What a question about sharpness gives and asks: focus, limits of sharpness, formats, extension.

A length near a lens means something else than a length near a flash. The words that stand
closest to it decide: "focused at 3 m" is the focus, "keeps 2.4 m sharp" a limit, "bellows
pulled out to 210 mm" a draw. What is asked is read from the words of the whole question.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import bellows_words, from_the_focus, lens_sizes, lens_wants, sharp_asks, told_twice, two_places, view_camera
from assistant.language.from_the_focus import ANOTHER_CLAUSE
from assistant.language.hearing import evenly
from assistant.language.items import Item
from assistant.language.other_lens import other_lens
from assistant.language.question_sentence import asked_first
from assistant.language.segments import is_role
from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.scales import is_aperture_mark

LENS_ASKS = ("near_limit", "far_limit", "depth_of_field", "hyperfocal", "coverage", "magnification", "extension", "focus_distance", "sharp")
_LENGTHS = ("distance", "camera_distance", "focus_distance", "max_distance", "min_distance", "move", "path")
_ABOUT = ("blurred", "depth_of_field", "in_focus", "near_limit", "far_limit", "hyperfocal", "circle", "focus")
_STRETCH = ("extension_words", "needed_extension")


_OF_A_LENS = frozenset({"focal_length", "format", "extension", "magnification", "ratio", "focus_distance", "circle", "sharp_limit", "object_size", "image_size", "frame_side"})
_SPEAKS = Pattern(r"lens|tele|hole|ground|on the neg|on the film|focus|focal|tube|exten|bellow|draw|rack|hyper|depth|dof|d\.o\.f|sharp|angle|field|cover|wide|degree|magnif|reproduc|life|scale|macro|frame|blur|soft|infinit|inch|pulled|stretched|wound|limit", re.I)
_HOW_DEEP = Pattern(r"\bhow deep is (?:it|that) (?:with|on|for) an? \d", re.I)
_CUES = frozenset({"blurred", "depth_of_field", "in_focus", "near_limit", "far_limit", "hyperfocal", "circle", "focus", "coverage", "extension_words", "needed_extension", "EXTENSION", "LENS"})


def speaks_of_lenses(items: Sequence[Item], text: str) -> bool:
    """Whether any word may be of a lens and its sharpness: in most questions about light none is."""
    return _SPEAKS.may_match(text) or not _CUES.isdisjoint([i.word for i in items]) or _HOW_DEEP.search(text) is not None


def _tells_of_lenses(facts: Sequence[Fact], text: str) -> bool:
    for fact in facts:
        if fact.quantity in _OF_A_LENS or fact.unit == "in" or math.isinf(fact.value) or fact.quantity in lens_sizes.PUT_ON and lens_sizes.is_put_on(fact, text):
            return True
    return False


def lens_facts(facts: list[Fact], items: Sequence[Item], text: str, spoken: bool) -> list[Fact]:
    """The facts with lengths, formats and circles of confusion read as a lens needs them; `spoken`: a word may be of a lens."""
    return lens_wants.measured(told_twice.another_lens(_of_a_lens(facts, items, text), text), text) if spoken or _tells_of_lenses(facts, text) else _half_frame(facts, text)


def _of_a_lens(facts: Sequence[Fact], items: Sequence[Item], text: str) -> list[Fact]:
    facts = lens_sizes.hair_breadths(lens_sizes.parts_of_a_millimetre(lens_sizes.two_sides(facts, text), text))
    told = {f.quantity for f in facts}
    if "number" in told and "aperture" not in told:
        facts = [replace(f, quantity="aperture", of="") if f.quantity == "number" and f.value % 1 and is_aperture_mark(f.value) and f.said[:1].isdigit() else f for f in facts]
    facts = two_places.told_apart(facts, text)
    spoken = [i for i in items if i.kind not in ("glue", "link")]
    places = {i.start: n for n, i in enumerate(spoken)}
    cues = {i.word for i in items if i.kind == "cue"}
    out = _formats(lens_sizes.sized(bellows_words.drawn(facts, text), text), spoken, places, text)
    out = _half_frame(_stretched(out, spoken, places, cues), text)
    out = view_camera.left_alone(told_twice.settle(lens_sizes.reproduced(_reproduction([_magnified(f, text) if "/" in f.said else f for f in out], spoken), text), text), text)
    if not cues & set(_ABOUT) and not _extent_words(text, out):
        return out
    read: list[Fact] = []
    rows = {f.of for f in out if f.quantity == "distance"} >= _ROWS
    for fact in out:
        if fact.quantity == "distance" and fact.start not in places and read and read[-1].quantity == "sharp_limit":
            read.append(replace(fact, quantity="sharp_limit", of="", cue=""))  # the far end of "from 2 to 4 metres"
            continue
        read += [fact] if rows and fact.quantity == "distance" and fact.of in _ROWS else _sharp(fact, spoken, places, text)
    return _bare_lens(from_the_focus.settle(_both_ends(read, text), text), spoken, places, text)


_TO_THE_OTHER = Pattern(r" ?(?:to|and|till|until|up to|-) ?(?:about )?", re.I)


def _both_ends(facts: list[Fact], text: str) -> list[Fact]:
    """"from 2 m to 4 m in front of my camera": both are to be sharp where one of them is, and neither is a gap."""
    at = next((n for n, (a, b) in enumerate(zip(facts, facts[1:])) if {a.quantity, b.quantity} == {"gap", "sharp_limit"} and _TO_THE_OTHER.fullmatch(text, a.end, b.start)), None)
    return facts if at is None else [replace(f, quantity="sharp_limit", of="", cue="") if n in (at, at + 1) else f for n, f in enumerate(facts)]


_PART_FORMAT = Pattern(r"\b(?:half[- ]frame|(?P<plate>half|quarter|whole|full|1/4|1/2)[- ]plate)\b", re.I)
_PLATES = {"half": "half plate", "1/2": "half plate", "quarter": "quarter plate", "1/4": "quarter plate", "whole": "whole plate", "full": "whole plate"}
_ROWS = frozenset({"front", "back"})


def _half_frame(facts: list[Fact], text: str) -> list[Fact]:
    """"half frame" is a film format and "quarter plate" one of glass: no part of anything."""
    found = _PART_FORMAT.search(text)
    if not found:
        return facts
    name = _PLATES[found["plate"].lower()] if found["plate"] else "half frame"
    kept = [f for f in facts if not found.start() <= f.start < found.end()]
    return [*kept, Fact("format", 0.0, name, start=found.start(), end=found.end(), said=found.group())]


_FILM_SAID = Pattern(r"iso|asa|film|din|speed|\bei\b|slide|neg|°|/")


def _bare_lens(facts: list[Fact], items: Sequence[Item], places: dict[int, int], text: str) -> list[Fact]:
    """"hyperfocal of an 80 on 6x6": a bare number is the lens, where none was named."""
    lenses = [f for f in facts if f.quantity == "focal_length"]
    if len(lenses) == 1:
        return other_lens(facts, lenses[0], text.lower())
    if lenses:
        return facts
    bare = [f for f in facts if (f.quantity == "number" or f.quantity == "film_speed" and not _FILM_SAID.search(f.said.lower())) and not f.bad and 8 <= f.value <= 1200
            and patterns.search(r"\b(?:an?|the|my|with|for|lens|on) $", text.lower()[max(0, f.start - 6) : f.start])]
    return [replace(f, quantity="focal_length", value=f.value / 1000, unit="mm") if f in bare[:1] else f for f in facts]


def _extent_words(text: str, facts: Sequence[Fact]) -> bool:
    """Words of sharpness that are no cues; "hold" and "keep" count only where a lens and no flash is spoken of."""
    kinds = {f.quantity for f in facts}
    lens = "focal_length" in kinds and not kinds & {"guide_number", "power"} and patterns.search(r"\b(?:hold|holds|keep|keeps)\b", text.lower())
    return bool(lens or patterns.search(r"\b(?:blurr?ed|out of focus|soft at|to infinity)\b", text.lower()) or _HOW_DEEP.search(text))


def _reproduction(facts: Sequence[Fact], items: Sequence[Item]) -> list[Fact]:
    """"1:2 on a 60 mm", "1:1 on the bellows": a scale of reproduction, where no lights are compared."""
    kinds = {f.quantity for f in facts}
    if "ratio" not in kinds or kinds.isdisjoint(("focal_length", "extension", "magnification")) and not any(i.kind == "mark" and i.word in ("EXTENSION", "LENS") for i in items):
        return list(facts)
    if any(is_role(i) or i.kind == "name" and i.word == "ratio" for i in items):
        return list(facts)
    return [replace(f, quantity="magnification", of="") if f.quantity == "ratio" and not f.bad else f for f in facts]


_MAGNIFIED = Pattern(r"\bmagnif\w*(?: on (?:the )?film| is| was| of| at| from|:|,|=)*\s*$", re.I)


def _magnified(fact: Fact, text: str) -> Fact:
    """"magnification on film 1/20": no time."""
    return replace(fact, quantity="magnification", unit="", of="") if fact.quantity in ("shutter", "power", "time") and "/" in fact.said and _MAGNIFIED.search(text[: fact.start]) else fact


_ANOTHER_LENS = Pattern(r"\b(?:the|my|an?|his|her|your|with)\s*$", re.I)
_SET_AT = Pattern(r"\s*(?:(?:is |set |stopped (?:down )?|wide open )?(?:at|to) )?f ?/? ?\d|\s*(?:at (?:the same|one) (?:f-?)?(?:stop|aperture|f-?number)|(?:has|have|give|gives|keeps?|does|focused|wins?|beats?)\b)", re.I)
"""What is said of a lens, and of no film."""


def _formats(facts: Sequence[Fact], items: Sequence[Item], places: dict[int, int], text: str) -> list[Fact]:
    """"35 mm camera", "full frame 35 mm", "85 mm lens, 35 mm": the film, where another length is the lens."""
    lenses = [f for f in facts if f.quantity == "focal_length"]
    told = any(f.quantity == "format" for f in facts)
    out: list[Fact] = []
    for fact in facts:
        bare = fact.quantity == "focal_length" and abs(fact.value - 0.035) < 1e-9 and not patterns.search("lens|focal", fact.said)
        if bare and len(lenses) > 1 and _ANOTHER_LENS.search(text[: fact.start]) and (told or _SET_AT.match(text[fact.end :])):
            bare = False  # "the 35 mm at f/2.8 or the 50 mm at f/4": two lenses
        if bare and (len(lenses) > 1 or _camera_follows(items, places.get(fact.start, 0))) and not _lens_before(items, places.get(fact.start, 0)):
            fact = replace(fact, quantity="format", value=0.0, unit="35 mm")
        out.append(fact)
    return out


def _camera_follows(items: Sequence[Item], at: int) -> bool:
    after = items[at + 1] if at + 1 < len(items) else None
    return after is not None and (after.kind == "noun" and after.word == "frames" or after.kind == "cue" and after.word in ("camera", "full_frame"))


def _lens_before(items: Sequence[Item], at: int) -> bool:
    return at > 0 and items[at - 1].kind == "mark" and items[at - 1].word in ("LENS", "VERSUS", "OR")


def _stretched(facts: Sequence[Fact], items: Sequence[Item], places: dict[int, int], cues: set[str]) -> list[Fact]:
    """"bellows pulled out to 210 mm": the draw, where another length is the lens."""
    out: list[Fact] = []
    sized = sum(1 for f in facts if f.quantity in ("focal_length", "magnification"))
    for fact in facts:
        at = places.get(fact.start, 0)
        unnamed = fact.quantity in ("focal_length", "distance") and not patterns.search("lens|focal", fact.said) and fact.unit in ("mm", "cm", "in")
        others = sized - (fact.quantity == "focal_length")
        lens_next = at + 1 < len(items) and items[at + 1].kind == "mark" and items[at + 1].word == "LENS"
        if unnamed and not lens_next and (bellows_words.beside_the_lens(fact, facts, items) or any(f.quantity == "focal_length" for f in facts if f is not fact) and others and _stretch_before(items, at)):
            fact = replace(fact, quantity="extension", of="")
        out.append(fact)
    return out


def _stretch_before(items: Sequence[Item], at: int) -> bool:
    for item in reversed(items[max(0, at - 6) : at]):
        if item.kind == "mark" and item.word in ("END", "Q", "COMMA", "LENS"):
            return False
        if item.kind in ("focal_length", "aperture", "length"):
            return False
        if item.kind == "mark" and item.word == "EXTENSION" or item.kind == "cue" and item.word in _STRETCH:
            return True
    return False


def _sharp(fact: Fact, items: Sequence[Item], places: dict[int, int], text: str) -> list[Fact]:
    """One fact, or the two limits of a range, as the nearest lens word has it."""
    at = places.get(fact.start)
    if at is None:
        return [fact]
    if fact.quantity in ("number", "distance", "focal_length", "camera_distance") and _near(items, at, ("circle",), 4, 2) < 5 and fact.value < (5 if fact.quantity == "number" else 0.002):
        millimetres = fact.value if fact.quantity == "number" else fact.value * 1000
        return [replace(fact, quantity="circle", value=millimetres / 1000, unit="mm", of="", cue="", bad="" if millimetres > 0 else fact.bad or "a circle of confusion must be more than nothing")]
    if fact.quantity == "length_range" and " or " not in fact.said and not _OF_A_STEP.search(text[max(0, fact.start - 50) : fact.start]):
        return [replace(fact, quantity="sharp_limit", other=math.nan, of=""), replace(fact, quantity="sharp_limit", value=fact.other, other=math.nan, of="", start=fact.start + 1)]
    if fact.quantity not in _LENGTHS:
        return [fact]
    return [_placed(fact, items, at, text)]


_PURPOSE = Pattern(r"\b(?:flash|light|strobe|lamp|softbox|so|such|to (?:keep|have|get|hold|make)|for|when|if|where|keep|keeps|hold|everything|both)\b")


_OF_A_STEP = Pattern(r"\b(?:mov(?:e|es|ed|ing)|step(?:s|ped|ping)?|back(?:s|ed|ing)|walk(?:s|ed|ing)?|shift(?:s|ed|ing)?)(?: (?:back|in|out|up|closer|off|away|myself|the camera|my camera|the tripod|the focus))* (?:from )?$", re.I)
_OF_A_MOVE = Pattern(r"\b(?:bring|mov|pull|push|tak|shift|walk|carry|slid)\w* (?:the |my )?(?:flash|light|head|key|lamp|strobe|softbox)(?: in| up| back| closer| out)? from (?:[\d.½¼ /]+ ?(?:m|cm|ft|feet|foot|met(?:re|er)s?)?,? (?:in |out |back |up )?to )?$", re.I)


def _placed(fact: Fact, items: Sequence[Item], at: int, text: str) -> Fact:
    boundless = "" if math.isinf(fact.value) else fact.bad
    if _OF_A_MOVE.search(text[max(0, fact.start - 70) : fact.start]):
        return fact
    cue = next((i for i in reversed(items[max(0, at - 5) : at]) if i.kind == "cue" and i.word in ("focus", "hyperfocal")), None)
    aimed = cue is not None and not _PURPOSE.search(text[cue.end : fact.start].lower())
    focus = min(_near(items, at, ("focus", "hyperfocal"), 5, 0) if aimed else 99.0, 99.0 if ANOTHER_CLAUSE.match(text, fact.end) else _near(items, at, ("focus",), 0, 2) + 0.5)
    sharp = min(_limit_before(items, at), _near(items, at, ("in_focus", "depth_of_field", "blurred"), 0, 5) + 0.25, 1.5 if _spans(items, at) else 99)
    if focus < 99 and (focus <= sharp and not (sharp < 99 and _side(items, at))) and not (sharp < 99 and math.isinf(fact.value)):
        return replace(fact, quantity="focus_distance", of="camera", bad=boundless)
    if sharp < 99:
        return replace(fact, quantity="sharp_limit", of="", bad=boundless, cue=_side(items, at))
    return replace(fact, bad=boundless) if math.isinf(fact.value) else fact


def _near(items: Sequence[Item], at: int, words: Sequence[str], before: int, after: int) -> float:
    """Steps to the nearest of these cues in the same clause; 99 where there is none."""
    best = 99.0
    for way, reach in ((-1, before), (1, after)):
        for step in range(1, reach + 1):
            n = at + way * step
            if not 0 <= n < len(items) or _ends(items[n]):
                break
            if items[n].kind == "cue" and items[n].word in words:
                best = min(best, step)
    return best


def _ends(item: Item) -> bool:
    return item.kind == "mark" and item.word in ("END", "Q", "COMMA")


def _limit_before(items: Sequence[Item], at: int) -> float:
    """"sharp from 2 m to 5 m", "near limit 2 m": only small words and lengths may stand between."""
    for step in range(1, 6):
        n = at - step
        if n < 0 or _ends(items[n]):
            return 99.0
        item = items[n]
        if item.kind == "cue" and item.word in ("in_focus", "near_limit", "far_limit", "depth_of_field", "blurred"):
            return float(step) if item.word != "depth_of_field" or step > 1 else 99.0
        if item.kind not in ("mark", "length", "word"):
            return 99.0
        if item.kind == "mark" and item.word not in ("FROM", "TO", "AT", "AND", "A", "COLON", "EQ", "OF", "BETWEEN", "OR", "DASH"):
            return 99.0
    return 99.0


def _spans(items: Sequence[Item], at: int) -> bool:
    """One end of "from 2 m to 5 m"."""
    ahead = [i for i in items[at + 1 : at + 3]]
    back = [i for i in items[max(0, at - 2) : at]]
    named = bool(back) and back[-1].word in ("FROM", "BETWEEN")
    opens = len(ahead) == 2 and ahead[0].word in (("TO", "AND", "DASH") if named else ("TO", "DASH")) and ahead[1].kind == "length"
    closes = len(back) == 2 and back[1].word in ("TO", "AND", "DASH") and back[0].kind in ("length", "number")
    return opens or closes


def _side(items: Sequence[Item], at: int) -> str:
    for item in reversed(items[max(0, at - 4) : at]):
        if item.kind == "cue" and item.word in ("near_limit", "far_limit"):
            return item.word
    return ""


# --- what is asked --------------------------------------------------------------------------------

def lens_asks(asks: Sequence[Ask], facts: Sequence[Fact], items: Sequence[Item], text: str, spoken: bool) -> list[Ask]:
    """The asks with those about sharpness and coverage in the order said; `spoken`: a word may be of a lens."""
    return lens_wants.wanted(_asked(asks, facts, items, text), facts, text) if spoken or _tells_of_lenses(facts, text) else list(asks)


def _asked(asks: Sequence[Ask], facts: Sequence[Fact], items: Sequence[Item], text: str) -> list[Ask]:
    asks = bellows_words.close_asks(lens_sizes.sizes_asked(asks, facts, text), facts, text)
    lower = evenly(text)
    if _puts_to_the_test(lower, facts):
        return [Ask("sharp", "", "", 0)]
    if not _about_a_lens(facts, items, lower):
        return list(asks)
    found = sharp_asks.asked(lower, facts)
    cues = {i.word for i in items if i.kind == "cue"}
    if not found:
        return _other_asks(asks, facts, cues, lower)
    taken = {a.quantity for a in found}
    spurious = {"stops", "degrees", "distance", "count", "duration"} | set(LENS_ASKS)
    kept = [a for a in asks if a.quantity not in spurious or (a.quantity == "magnification") or (a.quantity == "distance" and _other_distance(taken, lower))]
    kept = [a for a in kept if a.quantity != "aperture" or any(f.quantity == "guide_number" for f in facts) or _APERTURE_NAMED.search(lower) or not (taken <= {"extension", "focus_distance"} or any(f.quantity == "aperture" for f in facts))]
    kept = [a for a in kept if a.quantity != "aperture" or not _ZONE_STOPS.search(lower) or _APERTURE_NAMED.search(lower)]
    unit = next((a.unit for a in asks if a.unit in ("cm", "in", "mm", "ft", "m")), "")
    kept += _named_beside(kept, facts, lower)
    if not any(a.quantity == "sharp" for a in kept) and _asks_whether(lower, facts):
        kept.append(Ask("sharp", "", "", len(lower)))
    out = sorted([*kept, *(replace(a, unit=unit) for a in found)], key=lambda a: a.start)
    return sorted(out, key=lambda a: a.quantity == "aperture") if _AT_THE_FLASHS.search(lower) else asked_first(out, text)


_ZONE_STOPS = Pattern(r"\b(?:does|will|do|would) [a-z ]{2,20}\bstop\b|\bstops where\b|\bwhat do i focus\b")
_APERTURE_NAMED = Pattern(r"\baperture\b|\bf[- ]?(?:stop|number|no\b)|\b(?:what|which|widest) stop\b")
"""Sharpness stops somewhere, which is no aperture."""
_AT_THE_FLASHS = Pattern(r"\b(?:at|with|for|using|given) (?:the|that|whatever|which(?:ever)?|what) (?:aperture|f-?stop|stop|f-?number|setting)(?: that| which)? (?:the |my )?(?:flash|it|strobe|light|guide number|that|this)(?: \w+)? (?:calls? for|gives?|asks? for|needs?|wants?|allows?|makes?|says|dictates?|works? out|forces?|sets?)\b"
    r"|\b(?:at|with|for|using|given) (?:(?:the|my) )?(?:flash|strobe|light|guide number)(?:'?s)? (?:aperture|f-?stop|stop|f-?number|setting)\b|^(?!.*\b(?:what|which|whats|what's|(?:give|tell|find|get|name|want|need|work out)(?: me| us)?(?: the| an?| my)?) (?:aperture|f-?stop|stop|f-?number|opening)\b).*\b(?:at (?:that|this) (?:aperture|f-?stop|stop|f-?number|opening)"
    r"|(?:aperture|f-?stop|stop|f-?number|lens|ring|iris)(?: (?:is|was|being|then|set|chosen|taken|worked out))* (?:by|to suit|for) (?:the|my|our) (?:flash|strobe|light|guide number))\b")
"""The aperture is only what the depth is taken at: "at the aperture the flash calls for, how deep is it?"."""


def _asks_whether(lower: str, facts: Sequence[Fact]) -> bool:
    """"… and is the wall at 14 ft sharp?"."""
    return any(f.quantity == "sharp_limit" for f in facts) and bool(patterns.search(r"(?:^|[,.?] *|\band +)(?:is|are|will|would) [^?,.]*\b(?:sharp|in focus)\b[^?.]*\?", lower))


_BEAM = Pattern(r"\bhow (?:wide|big|broad)\b[^?]*\bdegrees?\b[^?]*\b(?:beam|angle|spread|cone)\b|\b(?:beam|cone|spread)\b[^?]*\bdegrees?\b[^?]*\bhow (?:wide|big|broad|large)\b")
_LENS_FACTS = frozenset({"object_size", "frame_side", "focal_length", "focus_distance", "sharp_limit", "circle", "extension", "magnification", "format"})
_LENS_CUES = frozenset({"depth_of_field", "in_focus", "hyperfocal", "circle", "coverage", "focus", "blurred"})


def _about_a_lens(facts: Sequence[Fact], items: Sequence[Item], lower: str) -> bool:
    """Near and far are words of flash distances too: without a lens word nothing is read here."""
    cues = {i.word for i in items if i.kind == "cue"}
    return bool({f.quantity for f in facts} & _LENS_FACTS or _BEAM.search(lower) or cues & _LENS_CUES or cues & {"near_limit", "far_limit"} and "limit" in lower)


_YES_NO = Pattern(r"(?:^|[.?!:;,] *|\b(?:and|so|but) )(?:is|are|will|would|does|do|can|could) (?!the (?:near|far|depth|hyper)(?![^?]{0,40}\b(?:sharp|in focus|within the|inside the)\b))")


_ENDS_SHARP = Pattern(
    r"\b(?:sharp|in focus)\b[^.?!]{0,24}?[,: ] ?(?:yes or no|y ?/ ?n|true or false|right or wrong|right|correct|true)\W*$"
    r"|\b(?:right|correct|true|yes or no|enough)\s*\?|\b(?:is|are|will|would|do|does) (?!to\b)(?:the |my |her |his )?(?:[^.?!,]|\.(?=\d)){1,30}\b(?:sharp|in focus)(?: (?:too|as well|then|or not|enough))?\W*$"
    r"|\b(?:is|are)\b[^.?!]{1,30}\b(?:sharp|in focus)\b[^.?!]{0,12}\b(?:to|at) infinity\b"
    r"|(?:^|[.!;:,] *)(?:(?:so|then|and|still|all|all of it|everything|it's) )*(?:sharp|in focus)\b[^.?!]{0,40}\?\W*$"
)
"""A test put at the end, with or without its mark: "is 9.5 m still sharp", "sharp right out to infinity then?"."""


_DEPTH_HOLDS = Pattern(r"\b(?:does|do|will|would|is|can) (?:the |my |its )?(?:depth(?: of (?:field|sharpness))?|d\.?o\.?f\.?|(?:zone|field) of (?:sharpness|focus)|sharp zone|sharpness)\b[^?!]*?\b(?:reach|stretch|extend|run|carry|go|get|include|cover|hold|enclose|take in|enough|deep enough)\b")
"""Whether the depth gets as far as something: "does the depth of field take in the wall at 6 m"."""


def _puts_to_the_test(lower: str, facts: Sequence[Fact]) -> bool:
    """"is f/8 enough to keep 3 m sharp?", "will 2.5 m be sharp?": a yes or a no, with nothing else asked."""
    kinds = {f.quantity for f in facts}
    stood = {"focal_length", "aperture"} <= kinds and (kinds & {"distance"} or {"camera_distance", "focus_distance"} <= kinds) and (patterns.search(r"\b(?:sharp|in focus|(?:with)?in(?:side)? (?:the|my) (?:depth|zone|d\.?o\.?f)|(?:outside|beyond)(?: of)? (?:the|my) (?:depth|zone|d\.?o\.?f))\b", lower) or _DEPTH_HOLDS.search(lower))
    if not ("sharp_limit" in kinds or stood) or "guide_number" in kinds or patterns.search(r"\b(?:what|which|where|how)\b", lower):
        return False
    return bool(_YES_NO.search(lower)) or bool(_ENDS_SHARP.search(lower)) or bool(_DEPTH_HOLDS.search(lower))


def _named_beside(kept: Sequence[Ask], facts: Sequence[Fact], lower: str) -> list[Ask]:
    """"aperture and depth of field": the flash's part of a double question."""
    if kept or not any(f.quantity == "guide_number" for f in facts):
        return []
    for quantity, pattern in (("aperture", r"\b(?:aperture|f-?stop|f[ -]number|what stop)\b"), ("power", r"\bpower\b")):
        found = None if any(f.quantity == quantity for f in facts) else patterns.search(pattern, lower)
        if found:
            return [Ask(quantity, "", "", found.start())]
    return []


def _other_distance(taken: set[str], lower: str) -> bool:
    return bool(patterns.search(r"flash|light|strobe", lower)) and not taken & {"far_limit", "near_limit", "focus_distance", "hyperfocal", "extension", "coverage"}


def _other_asks(asks: Sequence[Ask], facts: Sequence[Fact], cues: set[str], lower: str) -> list[Ask]:
    """Angles asked by cue, and yes-or-no questions about what is sharp."""
    out = [a for a in asks if not (a.quantity == "degrees" and any(b.quantity == "coverage" for b in asks))]
    if out and cues & {"in_focus"} and _asks_whether(lower, facts) and all(a.quantity in ("aperture", "power") for a in out):
        return [*out, Ask("sharp", "", "", len(lower))]
    limits = any(f.quantity == "sharp_limit" for f in facts)
    if len(asks) == 0 and "focal_length" in {f.quantity for f in facts} and not {"aperture", "guide_number", "power"} & {f.quantity for f in facts} and sum(f.quantity == "sharp_limit" for f in facts) == 2 and patterns.search(r"\b(?:wants?|needs?|must|has to|have to)\b", lower):
        return [Ask("aperture", "", "", 0)]  # "28 mm, want 1 metre to infinity sharp"
    held = limits or cues & {"in_focus"} and {"front", "back"} <= {f.of for f in facts if f.quantity == "distance"}
    if held and all(a.quantity == "distance" for a in out) and not any(f.quantity == "aperture" for f in facts) and patterns.search(r"\b(?:aperture|f-?stop|f[- ]number|stop|widest)\b", lower):
        return [Ask("aperture", "", "", 0)]
    if cues & {"in_focus", "depth_of_field"} and limits and not out and patterns.match(r"^\W*(?:\w+ ){0,3}?(?:is|are|will|would|do|does|can|could|if)\b|.*[,.] ?(?:is|are|will|would|do|does|can) ", lower):
        return [Ask("sharp", "", "", 0)]
    kinds = {f.quantity for f in facts}
    if not out and kinds & {"extension", "magnification"} and "aperture" in kinds and patterns.search(r"\bwhat\b[^?]*\b(?:set|use|need|shoot|stop)\b", lower):
        return [Ask("aperture", "", "", 0)]
    if {"focal_length", "magnification"} <= kinds and not kinds & {"guide_number", "distance", "aperture"} and any(a.quantity == "distance" for a in out):
        return [Ask("subject_distance", "", next(a.unit for a in out if a.quantity == "distance"), 0), *(a for a in out if a.quantity in ("factor", "stops"))]
    return out
