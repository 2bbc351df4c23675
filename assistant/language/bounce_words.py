"""A bounce told in words: the legs of the light's way, the heights of room and face, and what the paint takes."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.language import bounce_room
from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

_LENGTHS = ("distance", "path", "max_distance", "min_distance", "move", "camera_distance")
_SURFACE = r"(?:ceiling|roof|plaster(?! (?:head|bust|cast|figure|statue))|wall|card|board|panel|reflector|surface|umbrella)"
_LEG_BEFORE = Pattern(rf"(?:\bto (?:the |a |that |my )?(?:\w+ )?{_SURFACE}|{_SURFACE}(?: back)?(?: down)?(?: again)? to (?:the |my |her |his )?[\w' ]+|\b{_SURFACE} to \w+|from (?:the |that )?{_SURFACE} (?:back |down |on )*to [\w' ]+|"
                         rf"\b(?:goes|go|going|climbs?|rises?|comes?|drops?|falls?|runs?) (?:back |straight |right )?(?:up|down)|from (?:the |that ){_SURFACE}|(?:from )?there (?:back |down |on )*to [\w' ]+|\bpath\b[\w ,]*|travels?|flash up|{_SURFACE} down|back down|then|light goes)[\s:,=]*(?:is|are|was|about|of|another|a|it's|roughly|measures|at|down|up)?[\s:]*$", re.I)
_LAMP_TO_SURFACE = rf"(?:from )?(?:the |my )?(?:head|flash|gun|light|lamp|strobe)(?: up)? (?:(?:to )?(?:the |a )?{_SURFACE}|(?:up )?to (?:it|there)\b)"
_FIRST_LEG = Pattern(rf"^\s*{_LAMP_TO_SURFACE}\b", re.I)
_ON_FROM_IT = rf"{_SURFACE} (?:back |down |on )*to (?!bounce|work|use|play|shoot|light\b|throw|fire)"
_LEG_AFTER = Pattern(rf"^\s*,?\s*(?:away |of )?(?:(?:the )?{_ON_FROM_IT}\w+|up|down|back down|on|out|{_LAMP_TO_SURFACE}|(?:up |over |across |back )*(?:to|from) (?:the |a |that )?(?:\w+ )?{_SURFACE}|"
                        rf"from (?:there|it)|(?:of )?(?:total )?(?:light )?path|all told|all the way|altogether|in all|in total|total|off it|(?:back )?(?:down )?(?:on )?to)\b", re.I)
_TOTAL = Pattern(r"\b(?:total|path|altogether|all told|in all|all the way|travels?|overall)\b", re.I)
_HIGH = Pattern(rf"^[\s-]*(?:high )?(?!{_ON_FROM_IT})(?:{_SURFACE})|^\s*(?:high|tall)\b", re.I)
_HEIGHT_BEFORE = Pattern(r"\b(?<!to )(?<!to the )(?<!to a )(?<!the white )(?:ceiling|roof)(?: height)?(?: is|'s| at| of|:)?(?: at)?(?: about)?\s*$", re.I)
_ABOVE = Pattern(r"^\s*(?:(?:is )?above (?:the |my |us|both|us both)|(?:higher than|over) (?:the |my ))", re.I)
_FLASH_HEIGHT = Pattern(r"\b(?:flash|head|gun|light|strobe)(?: head)?(?: and (?:the |her |his )?(?:face|subject|sitter|eyes))?(?: is| are|'s| at| sits| held)?(?: both)?(?: at| up)?\s*$", re.I)
_FACE_HEIGHT = Pattern(r"\b(?:face|subject|sitter|eyes?|head height|faces|chest|her|his)(?: is| are|'s| at)?(?: at)?\s*$", re.I)


_STRAIGHT = Pattern(
    r"\b(?:no|not|isn't|never|without|don't|won't|didn't|can't|do not|will not)(?: \w+)? bounc\w*(?: (?:it|the flash|the light|anything|at all))?(?: (?:off|from) (?:the |a |that )?(?:\w+ )?(?:ceiling|wall|roof))?|\bunbounced\b|\bdirect flash\b"
    r"|\b(?:direct|straight|directly) (?:at|on|onto|on to|towards?|to) (?:her|him|them|me|my|his|the (?!ceiling|roof|wall|umbrella|card|board|panel|reflector)[a-z])", re.I)
_UNDER_A_ROOF = Pattern(r"\b(?:ceiling|roof|bounc\w*)\b", re.I)
_ROUND_ABOUT = Pattern(r"\bbounc|\b(?:off|by way of|via) (?:the|a|my|that) (?:\w+ )?(?:ceiling|wall|roof|card|board)|\bto the (?:ceiling|wall)\b", re.I)


def is_straight(text: str) -> bool:
    """"not bounced", "straight at her": the light goes direct, though a ceiling is told of.

    >>> is_straight("ceiling 2.5 m, but I don't bounce it"), is_straight("direct flash gave f/8, bounced?")
    (True, False)
    """
    return _STRAIGHT.search(text) is not None and _ROUND_ABOUT.search(_STRAIGHT.sub(" ", text)) is None


_OF_A_BOUNCE = frozenset({"bounce", "ceiling"})


def unbounced(items: list[Item], text: str) -> list[Item]:
    """The items without the words of a bounce, where it is said that there is none."""
    if _OF_A_BOUNCE.isdisjoint([i.word for i in items]) or not is_straight(text):
        return items
    return [replace(i, kind="glue", word="glue") if i.kind == "cue" and i.word in _OF_A_BOUNCE else i for i in items]


def _overhead(fact: Fact, text: str) -> Fact:
    """A ceiling's height, told where no light goes there."""
    high = fact.quantity in _LENGTHS and (_HEIGHT_BEFORE.search(text[max(0, fact.start - 40) : fact.start]) or _HIGH.match(text[fact.end :]))
    return replace(fact, quantity="ceiling_height", of="", cue="straight") if high else fact


def settle(facts: list[Fact], text: str, cues: frozenset[str]) -> list[Fact]:
    """The facts with the legs of a bounce and the loss in the paint made plain."""
    if _UNDER_A_ROOF.search(text) and is_straight(text):
        return [_overhead(f, text) for f in facts]
    if _is_bounced(text, cues):
        free = _FREE_PAINT.search(text)
        none = [Fact("loss", 0.0, _surface(text), start=free.start(), end=free.end(), said=free.group())] if free and not any(f.quantity in ("loss", "stops") for f in facts) else []
        return _card_is_the_surface(sorted([*(_paint(f, text) for f in _legs(facts, text)), *none], key=lambda f: f.start))
    return [_paint(f, text) if f.quantity in _PAINTED and _RECKONED.search(text[max(0, f.start - 30) : f.start]) else f for f in facts]


def _card_is_the_surface(facts: list[Fact]) -> list[Fact]:
    """"off the white card … the card swallows a stop": told of the surface, so no usual loss of a card beside it."""
    told = any(f.quantity == "path" for f in facts) and any(f.quantity == "loss" and f.unit in ("wall", "ceiling", "card", "") for f in facts)
    return [f for f in facts if not (told and f.quantity == "modifier" and f.unit == "card")]


_BEHIND_HER = Pattern(r"\bbehind\b|backdrop|background|\bdarker\b|how dark|\bstops? (?:under|down|darker)|in front of|\bwall (?:be|come|go|read|fall|gets?|reads?|end)", re.I)


_BOUNCED_OFF = Phrasings(rf"\bbounc|(?:off|by way of|via) (?:the|a|my|that)(?: \w+)? {_SURFACE}|(?:to|from) (?:the|a|my)?\s*{_SURFACE}|{_SURFACE} (?:down )?to\b|light path|path of the light|total path|(?:ft|foot|feet|m|metres?|meters?) path\b|of paint\b", re.I)


_POINTED_AT = Pattern(r"\b(?:point|aim|fir|turn|direct|shoot|bounc)\w*\b[^.?!,]{0,24}\b(?:at|into|up at) (?:the|a|that|my) (?:\w+ )?(?:wall|ceiling)\b", re.I)
_BY_WAY_OF = Pattern(r"\bbounc|\boff (?:the|a|my|that|it)\b|ceiling|\bpath\b|\bvia\b|by way of|\bto (?:the|a|my|that) (?:\w+ )?wall\b[^.?!]*\b(?:back|there|from it|then|on)\b|\bwall (?:back )?to\b(?! (?:read|be|come|fall|go|look|meter|record|turn|get|lie|sit|have|give|stay|reproduce|print|show|appear)\b)|\bfrom (?:the|that) wall (?:back )?to\b|\bpaint (?:takes|costs|loses|eats)", re.I)


_THERE_AND_BACK = Pattern(r"\bup to the (?P<what>\w+)\b.{0,60}\bfrom the (?P=what) (?:back )?down\b", re.I)
"""Where one leg ends the other begins, whatever it is called: "up to the beams … from the beams down to the bride"."""


def _is_bounced(text: str, cues: frozenset[str]) -> bool:
    if "ceiling" in cues and patterns.search(r"\bgn\b|guide|flash|gun|\blamp|strobe|\bpath\b|\btravel", text, re.I):
        return True
    if _POINTED_AT.search(text):
        return True
    if patterns.search(r"\bwall\b", text, re.I) and not _BY_WAY_OF.search(text) and "bounce" not in cues:
        return False  # "two pops do when I stand three metres from the wall"
    if patterns.search(r"\bwall\b", text, re.I) and _BEHIND_HER.search(text) and not patterns.search(r"\bbounc|\boff the\b|\bpath\b|ceiling", text, re.I):
        return False  # the wall is what stands behind the subject
    return "bounce" in cues or _BOUNCED_OFF.found_in(text) or _THERE_AND_BACK.search(text) is not None


def _legs(facts: list[Fact], text: str) -> list[Fact]:
    room = bounce_room.settle(facts, text)
    if room is not None:
        return room
    units = [f.unit for f in facts if f.quantity in _LENGTHS]
    facts = [_bare_leg(f, text, units[0]) if units and _is_bare(f, text) else f for f in facts]
    out = [_leg(f, text) if f.quantity in _LENGTHS and f.end > f.start else f for f in facts]
    legs = [f for f in out if f.quantity == "path"]
    totals = [f for f in legs if f.cue == "total"]
    if len(legs) == 1 and not totals and (again := _AS_FAR_AGAIN.match(text, legs[0].end)):
        out += [replace(legs[0], start=again.start("same"), end=again.end(), said=again["same"])]
    if totals and len(legs) > len(totals):
        out = [replace(f, quantity="distance", of="leg") if f in legs and f not in totals else f for f in out]
    if len(legs) == 1 and not totals:
        rest = [f for f in out if f.quantity == "distance" and f.of == ""]
        if len(rest) == 1 and not any(f.quantity.startswith(("ceiling", "flash_height", "face_height")) for f in out):
            out = [replace(f, quantity="path") if f is rest[0] else f for f in out]
    return out


_FREE_PAINT = Pattern(r"\b(?:no loss (?:in|to|for|from|at|off)|nothing (?:lost|off|taken)? ?(?:in|to|for|from|by)|ignor\w+|forget(?:ting)?|leav\w+ out|not counting|without counting) (?:the |any )?(?:loss in the |loss of the )?(?:paint|ceiling|wall|plaster|surface|card|board)\b"
                      r"|\b(?:paint|ceiling|wall|plaster|surface|card|board)(?: itself)? (?:takes?|costs?|loses?|eats?|swallows?) (?:nothing|no light|none)\b|\bloses? nothing\b", re.I)
"""Said that the paint takes nothing: so no usual loss is taken for it."""


def _surface(text: str) -> str:
    return "wall" if patterns.search(r"\bwall\b", text, re.I) and not patterns.search("ceiling", text, re.I) else "ceiling"


_RECKONED = Pattern(r"\b(?:call (?:it|that)|reckon|allow|say|make (?:it|that)|count|take|knock off)(?: \w+)?\s*$", re.I)
"""A loss put right after the sum: "reckon two stops for the ceiling"."""


_PAINTED = ("stops", "signed", "relation")


def _paint(fact: Fact, text: str) -> Fact:
    """"ceiling -1.5 stops", "minus a stop for the paint": what the surface takes."""
    if fact.quantity not in _PAINTED:
        return fact
    named = patterns.search(r"\b(?:ceiling|wall|paint|surface|plaster)\W*(?:of|at|is|:)?\W*$", text[: fact.start], re.I) or patterns.match(r"\W*(?:for|to|in|at|off|by|from) the (?:ceiling|wall|paint|plaster|surface)\b", text[fact.end :], re.I)
    if not named:
        return fact
    return replace(fact, quantity="loss", value=abs(fact.value), unit=_surface(text), of="", to="", cue="")


_NO_LENGTH = Pattern(r"^\W*(?:f[\W\d]|f-?stop|t/|ap|stop)|\b(?:f|stops?|stopped|lens|aperture|opened|open|closed?|gn|guide(?: number)?|iso|asa|at|on)\W*(?:it|is|to|of|at|the lens|down|up)?\W*$", re.I)
_ONWARD = rf"\s*(?:more |again |further )?(?:straight |right |back )?(?:down|up|across|on|over|(?:from|to) (?:the |that |a )?(?:\w+ )?{_SURFACE}|from there|to (?:her|him|them|us|me|it|my|his|their|the) ?(?!paint|lens|ring|film)(?:\w+)?)\b"
_WAY_ON = Pattern(rf"{_ONWARD}(?! (?:to |at )?(?:f\b|f/|\d|film))", re.I)
"""After a leg whose unit is not said: "then two point eight down to her"."""
_WAY_BEFORE = Pattern(rf"(?:\b(?:up|down|back)(?:'s| is| are|:)|\b{_SURFACE} (?:back )?(?:down )?to (?:the |my |her |his )?\w+(?:'s| is| are|:)?)(?: it's| about| another| roughly)?\s*$", re.I)
_A_LEG_ENDS = Pattern(r"\s*(?:$|[.,;:?!)](?!\d)|(?:and|so|but|then|what)\b)", re.I)


_AS_FAR_AGAIN = Pattern(rf"[^.?!;\d]{{0,36}}?(?:,|\band\b|\bthen\b|\bplus\b)\s*(?:then |about )?(?P<same>the same|as (?:much|far)|just as (?:much|far)|that much|the same distance|the same way)(?: again)?{_ONWARD}", re.I)
"""After the one leg told: "eleven feet up and the same back down"."""


def _is_bare(fact: Fact, text: str) -> bool:
    """A figure with nothing beside it: 2.8 is read as an f-number where nothing else is known of it."""
    return fact.quantity == "number" or fact.unit == "mixed" or fact.quantity == "aperture" and not fact.cue and not _NO_LENGTH.match(fact.said) and not _NO_LENGTH.search(text[max(0, fact.start - 20) : fact.start])


def _bare_leg(fact: Fact, text: str, unit: str) -> Fact:
    """"five feet up and another seven down": the second leg in the unit of the first."""
    onward = _WAY_ON.match(text, fact.end) or _WAY_BEFORE.search(text[max(0, fact.start - 40) : fact.start]) and _A_LEG_ENDS.match(text, fact.end)
    if unit not in LENGTH or not onward:
        return fact
    return replace(fact, quantity="path", value=fact.value * LENGTH[unit], unit=unit, of="", other=math.nan)


_OF_THE_CAMERA = Pattern(r"\b(?:lens ?board|front standard|ground ?glass|lens to)\b", re.I)
"""A board that holds the lens sends back no light."""


_SLIPPED = Pattern(r"(?:\b[\w.]+ (?:and a half )?(?:feet|foot|ft|metres?|meters?|m|cm)|\d(?:ft|m))[\s,.-]+(?:(?:no|sorry|wait|i mean|oops|rather|actually|er|um)\b[\s,.-]*)+$", re.I)
"""A leg that was taken back right before this one: "to the ceiling is five feet, sorry, four feet"."""


_PART_WAY = Pattern(rf"\s*(?:straight |back )?(?:up|down|over|across)\b|\s*to (?:the |a |that )?(?:\w+ )?{_SURFACE}\b", re.I)
"""After one leg of the way, though "travels" or "path" stands before it: "the light travels 1.6 m up to the plaster"."""


_FROM_UMBRELLA = Pattern(r"\s*(?:away |off )?(?:from|in front of|off) (?:the|my|a|an|that) (?:\w+ )?(?:umbrella|brolly)\b(?! (?:back|on|down|to)\b)", re.I)
_ROUND_THE_UMBRELLA = Pattern(r"\bbounc|\b(?:in)?to (?:the|my|a|an) (?:\w+ )?umbrella|\bceiling\b|\bwall\b|\bpath\b|\bshaft\b", re.I)


def _leg(fact: Fact, text: str) -> Fact:
    before, after = text[max(0, fact.start - 60) : fact.start], text[fact.end : fact.end + 60]
    before = patterns.split(r"[.;?!]\s|,\s+(?:and\s+)?", _SLIPPED.sub("", before))[-1]
    if _OF_THE_CAMERA.search(before):
        return fact
    if patterns.search(rf"\bcamera (?:to|is)\b[\w ]*(?:{_SURFACE})?[\w ]*$", before, re.I):
        return replace(fact, quantity="camera_distance", of="camera")
    if fact.quantity == "distance" and fact.of in ("front", "middle", "back") and not patterns.search(r"\bbounc|\bceiling\b", text, re.I):
        return fact  # "the front row is nine feet from the umbrella": no leg of a bounce
    if fact.quantity == "distance" and _FROM_UMBRELLA.match(after) and _ROUND_THE_UMBRELLA.search(text) is None:
        return fact  # "f/8 at 3 m from the umbrella": what the light comes from
    if _LEG_BEFORE.search(before) and (not _TOTAL.search(before[-30:]) or _PART_WAY.match(after)) and not _HEIGHT_BEFORE.search(before):
        return replace(fact, quantity="path", of="", cue="")
    if _ABOVE.match(after):
        return replace(fact, quantity="ceiling_above", of="")
    down = patterns.match(r"\s*(?:back )?down\b", after, re.I) and patterns.search(r"\d[\w ]* up\b[^.;?]*$", before, re.I)
    if (down or patterns.match(r"\s*(?:straight )?up\b[^.;?]*\bdown\b", after, re.I)) and fact.quantity in ("path", "distance", "move", "max_distance"):
        return replace(fact, quantity="path", of="", cue="")
    if (_HEIGHT_BEFORE.search(before) and not _FIRST_LEG.match(after) and not patterns.match(r"\s*up\b", after, re.I)) or (_HIGH.match(after) and not _LEG_BEFORE.search(before) and not patterns.match(r"\s*up (?:to|and)|\s*up$", after)):
        return replace(fact, quantity="ceiling_height", of="")
    if patterns.match(r"\s*(?:high|off the floor|off the ground|up)\b", after) or _FACE_HEIGHT.search(before) or _FLASH_HEIGHT.search(before):
        if patterns.search(r"ceiling (?:is|height)|(?:foot|metre|meter|ft|m) (?:high )?ceiling", text, re.I) and not patterns.match(r"\s*(?:from|away|to)\b", after):
            return replace(fact, quantity="face_height" if _FACE_HEIGHT.search(before) else "flash_height", of="")
    if _TOTAL.search(before[-30:]) and not _PART_WAY.match(after) or patterns.match(r"\s*(?:of )?(?:total |light )*(?:path|all told|altogether|in all|in total|all the way|total|overall)\b", after, re.I):
        return replace(fact, quantity="path", of="", cue="total")
    if fact.quantity == "path" or _LEG_BEFORE.search(before) or _LEG_AFTER.match(after):
        return replace(fact, quantity="path", of="", cue="")
    return fact
