"""The room of a bounce: which length is a leg of the light's way, which a height, which the space between flash and face.

"flash and face are both 4 ft off the floor and 8 ft apart, the ceiling is 9 ft high" · "1.4 m from the head up to the plaster, 2.1 m down to the face"
Each length is judged by the words between its neighbours; where one of them has no place, nothing is settled here.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

LENGTHS = ("distance", "path", "max_distance", "min_distance", "move", "camera_distance", "gap", "ceiling_height", "ceiling_above", "subject_height")
_OVERHEAD = r"(?:ceiling|roof|rafters?|beams?|vault(?:ing)?|canopy|boards|tiles|plaster(?! (?:head|bust|cast|figure|statue))|paint(?:work)?|whitewash)"
_SURFACE = rf"(?:{_OVERHEAD}|walls?|card|board|panel|reflector|surface|sheet)"
_LAMP = r"(?:flash(?:gun)?(?:es)?|gun|strobe|lamp|light(?! path)|head(?!s\b| height)|tube|camera|hammerhead|speedlight)"
_THE = r"(?:the |that |this |my |our |her |his |their |its |a |an )?"
_FLOOR = r"(?:floor|ground|boards|carpet|deck|stage|flagstones|lino|floorboards)"

_END = Pattern(r"[.?!;](?=\s|$)")
_CLAUSE = Pattern(r",|:|;|\(|\)|[.?!](?=\s|$)|\b(?:then|while|but|so|with|where|which|whose|plus)\b", re.I)
_AND = Pattern(r"\band\b", re.I)

_WHOLE_AFTER = Pattern(rf"\s*(?:of |long )?(?:(?:total|light|whole|bounced?) )*path\b|\s*(?:all told|in all|altogether|in total|overall|all the way|in one way and another)\b|\s*from {_THE}(?:[a-z]+ )?{_LAMP}(?:'s \w+)?(?: head)? (?:by way of|via|to|off) {_THE}(?:\w+ ){{0,2}}{_SURFACE} (?:and (?:on |down |back )*)?(?:down |back |on )*to\b", re.I)
_WHOLE_BEFORE = Pattern(r"\b(?:path|light way|total way|whole way|route|round trip)\b(?: (?!if\b|when\b|bounc|off\b)[\w']+){0,9}:? $|\b(?:travels?|covers?|goes|runs) (?:about |some |a total of |a good )?$", re.I)
_BY_WAY = Pattern(rf"\s*(?:in all|altogether|all told|in total|by way of|via|off {_THE}(?:\w+ )?{_SURFACE}|before it)\b", re.I)
_LEG_UP_AFTER = Pattern(rf"\s*(?:away )?(?:(?:from )?{_THE}(?:[a-z]+ )?{_LAMP}(?: head)? )?(?:straight |right )?(?:up |over |across |out |on )*(?:to|as far as|until it (?:hits|meets|reaches)) (?:it\b|{_THE}(?:\w+[ -]){{0,2}}{_SURFACE}\b)", re.I)
_LEG_UP_BEFORE = Pattern(rf"\b{_LAMP}(?: head)? (?:up )?to {_THE}(?:\w+[ -]){{0,2}}{_SURFACE}\b[^\d,;.?!]{{0,24}}$|\b(?:up|over|across|out|way)(?: up)? to {_THE}(?:\w+[ -]){{0,2}}{_SURFACE}\b[^\d,;.?!]{{0,24}}$|\b(?:to|between) {_THE}(?:\w+[ -]){{0,2}}{_SURFACE}(?: and {_THE}{_LAMP})?(?: is| are| it's| measures| comes to|:)* (?:about )?$|\b(?:climbs?|rises?|goes up|travels up|runs up|shoots up) (?:about )?$", re.I)
_LEG_DOWN_AFTER = Pattern(rf"\s*(?:more |further |again |on )?(?:straight |back |right )*(?:down\b|(?:from (?:there|{_THE}(?:\w+[ -]){{0,2}}{_SURFACE})|{_THE}{_SURFACE})(?: back| down| on)* to\b(?! (?:bounce|work|use|play|shoot|light|throw|fire)\b)|back (?:to|on to|onto|from)\b|on to {_THE}\w+)", re.I)
_LEG_DOWN_BEFORE = Pattern(rf"\bfrom (?:there|it|{_THE}(?:\w+[ -]){{0,2}}{_SURFACE})(?: back| down| on)* to {_THE}[\w' ]+$|\b{_SURFACE} (?:back |down |on )*to {_THE}[\w' ]+$|\b(?:way|leg|back|and|then|drops?|falls|comes|goes|runs)(?: back| straight)? down\b[^\d,;.?!]*$|\bback (?:down )?to {_THE}[\w' ]+$|\b(?:drops|falls|comes back) (?:about )?$|\bdown(?:'s| is|:) $", re.I)
_JUST_UP = Pattern(rf"\s*(?:straight )?(?:up|upwards)\b(?! from {_THE}{_FLOOR}| in the air| off| above)", re.I)
_MOVES = Pattern(r"\b(?:goes|climbs|travels|rises|runs|light|path|leg|way|bounc\w+|shoots)\b[^,;.?!]*$", re.I)
_BELOW = Pattern(rf"\s*(?:(?:below|under|underneath|beneath|short of) (?:it\b|{_THE}(?:\w+[ -]){{0,2}}{_OVERHEAD}\b)|(?:away )?from {_THE}(?:\w+[ -]){{0,2}}{_OVERHEAD}\b)", re.I)
_ABOVE = Pattern(rf"\s*(?:(?:straight |clear |right )?(?:above|over|higher than|up from|over and above)|of (?:headroom|clearance|air) (?:above|over)) (?!{_THE}{_FLOOR}\b)", re.I)
_OFF_FLOOR = Pattern(rf"\s*(?:high |up |in height )?(?:above|off|from|over|up from) {_THE}{_FLOOR}\b|\s*up (?:in the air|on a stand)\b", re.I)
_HIGH = Pattern(r"\s*(?:high|tall|up|in height)\b(?! (?:to|and down)\b)", re.I)
_A_CEILING = Pattern(rf"[ -]*(?:high |tall )?(?:\w+ )?{_OVERHEAD}\b", re.I)
_ACROSS_AFTER = Pattern(rf"\s*(?:apart|away|between|across|horizontally|along|from (?:me|us|it|you|each|one|where|her|him|{_THE}(?:\w+ )?{_LAMP})|in front of|off\b(?! {_THE}(?:{_FLOOR}|{_SURFACE}))|distant|separat\w+)", re.I)
_ACROSS_BEFORE = Pattern(rf"\b(?:(?:stand|sit|stay|stood|place|seat|kneel)\w*|apart(?: by)?|distance|gap|spacing|separated by|between (?:them|us|the two)|subject|sitter|(?:from|to) (?:her|him|them|the \w+))(?: is| are| at| of| about|:)*\s*$|\bfrom {_THE}{_LAMP} to {_THE}[\w' ]+$|\b{_LAMP} to (?:subject|sitter|face|her|him|{_THE}\w+)(?: is| are|:)*\s*$", re.I)
_SET_AT = Pattern(r"(?:\b(?:is|are|was|were|be|at|held|sits?|stands?|hangs?|of|lies?|height|being|also|both|each|measures?)|'s|'re|:)(?: (?:also|both|each|all|only|just|about|held|at|up|too|some))*\s*$", re.I)
_READING = Pattern(r"\b(?:gave|gives|reads?|metered|right|correct|need(?:s|ed)?|calls|wants)\b|\bf ?/ ?\d", re.I)
_STANDS_AT = Pattern(rf"\b{_LAMP}(?: head)? (?:stands|sits|is held|is set|is mounted|hangs) at (?:about )?$", re.I)
_LAMP_WORD = Pattern(rf"\b{_LAMP}\b", re.I)
_ROOF_WORD = Pattern(rf"\b(?:{_OVERHEAD}|room|hall|attic|loft)\b", re.I)
_SOMEBODY = Pattern(r"\b(?:the|my|her|his|their|our|a|an|each|faces?|eyes|she|he|they|sitter|subject|baby)\b", re.I)
_BOTH = Pattern(rf"\b(?:both|each|alike)\b|\b{_LAMP}(?: head)? and (?!is\b|points?\b|stands?\b|held\b|at\b|sits\b)", re.I)
_WALL_FROM_BOTH = Pattern(rf"\s*(?:to (?:the|my|one|our) (?:left|right|side) of|beside|(?:away )?from) (?:both|us both|the two|the pair|us and|{_THE}{_LAMP} and)\b", re.I)
_WALL_WORD = Pattern(r"\bwall\b", re.I)


def settle(facts: Sequence[Fact], text: str) -> list[Fact] | None:
    """The facts with each length of the bounce in its place; None where one of them has none, or where they make no way of the light.

    >>> told = [Fact("distance", 1.4, "m", start=0, end=5, said="1.4 m"), Fact("distance", 2.1, "m", start=25, end=30, said="2.1 m")]
    >>> [f.quantity for f in settle(told, "1.4 m up to the ceiling, 2.1 m down to the face")]
    ['path', 'path']
    """
    lengths = [f for f in facts if f.quantity in LENGTHS and f.end > f.start and not f.bad]
    if not lengths:
        return None
    roles = _roles(lengths, text)
    told = set(roles.values())
    if list(roles.values()).count("across") > 1:
        return None  # one flash stands in one place
    if len(lengths) == 2 and told in ({"whole", "across"}, {"whole", ""}) and _DIRECT.search(text):
        roles = {place: role or "across" for place, role in roles.items()}
        return [_placed(f, roles[f.start], False)[0] if f in lengths else f for f in facts]
    whole = {"up", "down"} <= told or told == {"whole"} or told & {"ceiling", "above", "flash above", "face above"} and (len(told) > 1 or "above" in told)
    if "" in told or not whole or len(lengths) > 5:
        return None
    out: list[Fact] = []
    for fact in facts:
        stays = fact not in lengths or fact.quantity == "camera_distance" and {"up", "down"} <= told  # with both legs told, no flash stands by the camera
        out += [fact] if stays else _placed(fact, roles[fact.start], "whole" in told)
    return out


_DIRECT = Pattern(r"\b(?:straight|direct\w*|head on)\b", re.I)
"""Beside the way by the ceiling, the way without it."""
_QUANTITY = {"ceiling": "ceiling_height", "above": "ceiling_above", "flash above": "ceiling_above", "face above": "ceiling_above", "flash": "flash_height", "face": "face_height", "across": "distance"}


def _placed(fact: Fact, role: str, summed: bool) -> list[Fact]:
    """One length in its place: a height that is both the flash's and the face's makes two facts."""
    plain = replace(fact, of="", cue="", to="", quantity=_QUANTITY.get(role, "path"))
    if role == "whole":
        return [replace(plain, cue="total" if summed else "")]
    if role in ("up", "down"):
        return [replace(plain, quantity="distance", of="leg")] if summed else [plain]
    if role == "both":
        return [replace(plain, quantity="flash_height"), replace(plain, quantity="face_height")]
    return [plain]


def _roles(lengths: Sequence[Fact], text: str) -> dict[int, str]:
    """By where each length begins: a leg "up" or "down", the "whole" way, a height, "across", or nothing."""
    found: dict[int, str] = {}
    ups = "down" in text.lower()
    for n, fact in enumerate(lengths):
        sentence = max((m.end() for m in _END.finditer(text, 0, fact.start)), default=0)
        before = text[max(sentence, lengths[n - 1].end if n else 0) : fact.start]
        after = text[fact.end : lengths[n + 1].start if n + 1 < len(lengths) else len(text)]
        found[fact.start] = _role(before, after, ups)
    return found


def _role(before: str, after: str, ups: bool) -> str:
    here = _CLAUSE.split(before)[-1]
    then = _CLAUSE.split(after)[0]
    way = _of_the_way(here, then, ups)
    if way:
        return way
    lamps = [m.start() for m in _LAMP_WORD.finditer(here)]
    if _BELOW.match(then):
        return "above" if _BOTH.search(here) else "flash above" if lamps else "face above"
    if _ABOVE.match(then) or _WALL_FROM_BOTH.match(then) and _WALL_WORD.search(here):
        return "above"
    if _A_CEILING.match(then) and not _ROOF_WORD.search(here):
        return "ceiling"
    if lamps and _STANDS_AT.search(here) and not _ACROSS_AFTER.match(then):
        return "flash"
    if _OFF_FLOOR.match(then) or (_HIGH.match(then) or not _ACROSS_AFTER.match(then) and _SET_AT.search(here) and not _ACROSS_BEFORE.search(here) and not _READING.search(here)):
        return _height(here, lamps)
    if _HIGH.match(after) or not then.strip() and lamps and not _READING.search(here) and not _ACROSS_BEFORE.search(here) and here.rstrip().endswith(("at", "is", "are")):
        return _height(here, lamps)
    return "across" if _ACROSS_AFTER.match(then) or _ACROSS_BEFORE.search(here) else ""


def _of_the_way(here: str, then: str, ups: bool) -> str:
    """The legs and the sum of the light's way."""
    if _WHOLE_AFTER.match(then) or _WHOLE_BEFORE.search(here) and (_BY_WAY.match(then) or not (_LEG_UP_AFTER.match(then) or _LEG_DOWN_AFTER.match(then) or _JUST_UP.match(then) or _ACROSS_AFTER.match(then) or _ABOVE.match(then))):
        return "whole"
    if _LEG_DOWN_AFTER.match(then) or _LEG_DOWN_BEFORE.search(here):
        return "down"
    if _LEG_UP_AFTER.match(then) or _LEG_UP_BEFORE.search(here):
        return "up"
    return "up" if _JUST_UP.match(then) and ups and (_MOVES.search(here) or not _LAMP_WORD.search(here)) else ""


def _height(here: str, lamps: Sequence[int]) -> str:
    """Whose height above the floor it is: of what is named last before it."""
    roofs = [m.start() for m in _ROOF_WORD.finditer(here)]
    if roofs and (not lamps or roofs[-1] > lamps[-1]):
        return "ceiling"
    if _BOTH.search(here):
        return "both"
    return "flash" if lamps else "face" if _SOMEBODY.search(here) else ""


_PATH_ASKED = Pattern(
    r"\bhow (?:long|far|many (?:feet|metres|meters|foot))\b[^.?!;]*\b(?:path|route|(?:the )?(?:light|flash|beam)(?:'s)? (?:has to |have to |must |will )?(?:travels?|goe?s?|covers?|way|come)|travel|bounced? (?:path|way))\b"
    r"|\b(?:what|work out|give me|find|tell me|calculate|which)\b[^.?!;]{0,40}\b(?:(?:length|distance|sum) of the (?:light'?s? |bounced |whole |total )*(?:path|way|route)|(?:distance|path|length|way)[^.?!;]{0,12} (?:does|will|must|has) (?:the|my) (?:bounced )?(?:light|flash|beam)|(?:is|are|'s|be|the|total|whole|light|light's|bounced) (?:total |whole |overall |bounced |light |light's )*(?:path|route)\b(?! (?:is|of \d)))", re.I)
_OTHERWISE_ASKED = frozenset({"aperture", "power", "stops", "film_speed", "factor", "count", "energy"})
KINDS = frozenset({"path", "ceiling_above", "ceiling_height"})
"""What is asked of a bounce's way is asked where one of these is told."""


def asked(asks: Sequence[Ask], text: str) -> list[Ask]:
    """"how long is the path of the light?": a length, where nothing else is asked by name."""
    named = _PATH_ASKED.search(text)
    if named is None or any(a.quantity in _OTHERWISE_ASKED and not named.start() <= a.start < named.end() for a in asks):
        return list(asks)
    unit = next((a.unit for a in asks if a.quantity == "distance"), "")
    return [Ask("distance", "path", unit)]
