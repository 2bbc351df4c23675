"""Whose a length is: the flash's, the camera's, a row's, a room's, a leg of a bounce, or a move."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant import patterns
from assistant.language.from_the_focus import ANOTHER_CLAUSE
from assistant.language.items import Item
from assistant.language.place import Place, fact_at
from assistant.language.rows import END_TO_END, SO_LONG, WALL, around, row_length
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.units import LENGTH


def length_fact(place: Place) -> Fact:
    """What a length is: where a light stands, a path, a move, a lens, a focus."""
    told = place.beside(-1)
    flash = place.beside(-2)
    whole = place.at == len(place.items) - 1 and told is not None and told.kind == "link" and flash is not None
    if whole and flash is not None and (flash.kind in ("noun", "named") or (flash.kind == "cue" and flash.word == "my_kit")) and place.item.unit in ("ft", "m") \
            and place.item.value / LENGTH[place.item.unit] >= (30 if place.item.unit == "ft" else 9) and "guide_number" not in place.kinds:
        return fact_at(place, "guide_number", place.item.value / LENGTH[place.item.unit])
    if place.near("gn_hint", before=3, after=3) and place.item.unit in ("ft", "m") and "guide_number" not in place.kinds:
        return fact_at(place, "guide_number", place.item.value / LENGTH[place.item.unit])
    if _A_ROOM.search(place.before(40)) and _SO_LARGE.match(place.text[place.item.end :]):
        return fact_at(place, "max_distance", of="", cue="at_most")
    if place.text[place.item.end :].lower().lstrip().startswith("deep") and place.cues & {"rows", "front", "back"} and not patterns.search(r"\b(?:room|studio|garage|hall)\b", place.text.lower()):
        return fact_at(place, "gap", of="back")
    if place.item.unit == "mm" and _is_focal(place):
        return fact_at(place, "focal_length", of="")
    for rule, cues in _RULES:
        found = rule(place) if cues is None or not place.cues.isdisjoint(cues) else None
        if found:
            return found
    return fact_at(place, "distance", cue=_from_to(place))


_A_ROOM = Pattern(r"\b(?<!in the )(?<!in a )(?<!in our )(?<!in my )(?<!of the )(?:room|studio|hall|church|nave|stage|theatre|gym|barn|garage|kitchen|chapel|ballroom|space)(?:'s| is| was| of| about| only| some| measures)*\s*$", re.I)
_SO_LARGE = Pattern(r"[\s-]*(?:deep|long|wide|in depth|in length|across|from end to end)\b", re.I)
"""A room's own size, whatever rows stand in it: "the church is 30 m deep, front row at 5 m"."""


def _from_to(place: Place) -> str:
    before = place.beside(-1)
    if before and before.kind == "mark" and before.word in ("FROM", "TO"):
        return before.word.lower()
    if before and before.kind == "cue" and before.word == "leg_from" and place.before(6).lower().endswith("from "):
        return "from"  # "moving the flash from six feet": a place it leaves, the word within another phrase
    return ""


def _is_focal(place: Place) -> bool:
    if not 0.008 <= place.item.value <= 2:
        return False
    if place.near("extension", before=1, after=2) or _named_extension(place):
        return False
    return True


_DRAWN_BACK = Pattern(r"\bdr(?:aw|ew|awn|awing)s? (?:it|them|(?:the|my) (?!bellows|lens|rail|front|back\b)\w+(?: \w+)?)(?: a bit| some| a little)? (?:back|in|closer|nearer|away)\b[^.?!]{0,24}$", re.I)
"""Before a length: the light is drawn back, no bellows."""


def _named_extension(place: Place) -> bool:
    if "EXTENSION" not in [i.word for i in place.items[max(0, place.at - 6) : place.at + 3]] or _DRAWN_BACK.search(place.before(60)):
        return False
    before_it = place.items[max(0, place.at - 6) : place.at]
    if any(i.kind == "mark" and i.word == "EXTENSION" for i in before_it) and not any(i.kind == "mark" and i.word == "LENS" for i in place.items[place.at : place.at + 3]):
        return not any(i.kind in ("length", "focal_length") for i in before_it)
    after = [i for i in (place.beside(1), place.beside(2)) if i]
    before = [i for i in (place.beside(-1), place.beside(-2)) if i]
    return any(i.kind == "mark" and i.word == "EXTENSION" for i in before + after)


def _extension(place: Place) -> Fact | None:
    return fact_at(place, "extension", of="") if _named_extension(place) else None


_STOOD = Pattern(r"\s*(?:(?:stand|putt|plac|mov|tak|bring|pull|push|shift|carry|drag|slid|roll|back|sett)ing )?(?:it|them|(?:the|my) (?:flash|light|strobe|lamp|head)s?)\b", re.I)
"""After "I stand", "I'm": the flash is stood or moved there, not the photographer."""


_WITH_THE_CAMERA = Pattern(r"\bflash\b[^.;]{0,60}\band (?:the |my )?camera (?:are |is |stand )?(?:both|each)\b[^.,;\d]{0,24}$|\b(?:flash|light|strobe|lamp|head)(?:gun)? and (?:the |my )?camera\b[^.,;\d]{0,24}$|\bcamera and (?:the |my )?(?:flash|light|strobe|lamp|head)(?:gun)?\b[^.,;\d]{0,24}$", re.I)
"""Said of the flash and the camera at once: the flash's distance, on which the lens is focused as well."""


_FROM_BOTH = Pattern(r"\s*(?:away |back )?from (?:both )?(?:the |my )?(?:(?:camera|lens) (?:and|&|as well as) (?:the |my )?(?:flash|light|strobe|lamp|head|gun)|(?:flash|light|strobe|lamp|head|gun) (?:and|&|as well as) (?:the |my )?(?:camera|lens))\b", re.I)
_ON_CAMERA_FLASH = Pattern(r"\s*(?:away )?from (?:an?|the|my|that) (?:little |small )?(?:on[- ]camera|camera[- ]mounted|hot[- ]?shoe) (?:flash|gun|light|strobe)", re.I)
_ON_THE_CAMERA = Pattern(r"\b(?:with (?:it|that)|(?:flash|gun|strobe|speedlight|it)(?:, [^.;?!]{1,50},|\(.{1,50}\))?(?:'s| is| sits| stays| rides| lives| stands| stuck| mounted| fixed| clipped| right| straight)*) (?:up )?on (?:top of )?(?:the |my )?(?:camera|shoe|hot ?shoe|hot shoe|bracket|accessory shoe)\b", re.I)
"""The flash is where the camera is, so that a distance from the one is that from the other."""


_BESIDE_THE_CAMERA = Pattern(
    r"\b(?:key|main|fill|fill-?in|flash|light|head|strobe|lamp|gun|softbox|umbrella|brolly|second|other)(?: one| light)?(?:'s| is| was| sits| stands| goes| right| just| set| placed| up| high| low| straight| out)* (?:next to|beside|by|near|alongside|close to|over|above|just over|just above|at|under|on the axis of|on) (?:the |my )?(?:camera|lens)(?: position| axis)?,? *(?:(?:and|at|from|is|both|also|about|some|that is|which is|stands) )*$", re.I)
"""A light that has its place by the camera: its distance, "fill next to the camera at 10 feet"."""


_FROM_OVER_THE_CAMERA = Pattern(r"\s*(?:away |off |back )?from (?:right |just )?(?:on top of|the top of|above|over|beside|next to|by|near|under|behind) (?:the |my )?(?:camera|lens)\b", re.I)
"""After the distance of a light that is named: where it stands, "fill at 9 feet from on top of the camera"."""
_A_LIGHT_AT = Pattern(r"\b(?:key|main|fill|fill-?in|flash|light|head|strobe|lamp|gun|softbox|umbrella)(?: light)?(?:'s| is| stands| sits| set)*(?: at| about)? $", re.I)


_CAMERA_AWAY = Pattern(r"(?:^|[.;?!] |, |\b(?:and|but|while|with) )(?:and |but |while |with )?(?:the |my )?camera\b(?:(?!\b(?:flash|light|lamp|strobe|head|key|main|fill|gun|softbox|umbrella)\b)[^.;?!\d]){0,50}, (?:(?:at|about|some|only) )*$", re.I)
_AWAY = Pattern(r"\s*(?:away|off|back|up|behind)?(?: from (?:him|her|them|it|(?:the|my) (?!flash|light|lamp|strobe|head|key|main|fill|gun)\w+))?\s*(?:$|[,;:?!)]|\.(?!\d)|(?:and|so|but)\b)", re.I)
"""Round a length set after its clause: "my camera is up in the gallery, nine metres away"."""
_CAMERA_STANDS = Pattern(r"(?:^|[.;!?] )\W*(?:with )?(?:the |my |our )?(?:camera|tripod)(?: is| stands| sits|'s)? (?:(?:up|down|out|back|over|away) )?(?:in|on|at|by|under|above|behind) (?:the|a|an|my|our) (?:(?!flash|light|lamp|strobe|head|gun|key|fill|umbrella|softbox)\w+ ?){1,2}, (?:(?:at|about|some|only) )*$", re.I)
"""Where the camera has its place, and how far off that is: "Camera up in the gallery, twelve metres off."."""


_ASIDE = frozenset("(;")
"""Where another clause begins: "five feet from the sitter (the camera is at nine)"."""
_FROM_THE_LENS = Pattern(r"\s*(?:away |off |back )?from (?:the |my |our |this |that )(?:\d{2,4} ?mm )?lens\b(?! to\b)", re.I)
_A_LIGHT_IS_AT = Pattern(r"\b(?:flash|light|lamp|strobe|head|gun|key|fill|gn|guide)\b", re.I)
"""Where a light has a place of its own, what is measured from the lens is the camera's."""


def _camera_distance(place: Place) -> Fact | None:
    if _BESIDE_THE_CAMERA.search(place.before(100)) and not place.mark("FROM", offset=1):
        return None
    if _FROM_OVER_THE_CAMERA.match(place.text[place.item.end :]) and _A_LIGHT_AT.search(place.before(40)):
        return None
    if _WITH_THE_CAMERA.search(place.before(140)) or _ON_THE_CAMERA.search(place.text):
        return None
    if _ON_CAMERA_FLASH.match(place.text[place.item.end :]) or _FROM_BOTH.match(place.text[place.item.end :]):
        return None
    if _CAMERA_AWAY.search(place.before(90)) and _AWAY.match(place.text[place.item.end :]) or _CAMERA_STANDS.search(place.before(90)) and not place.mark("FROM", offset=1):
        return fact_at(place, "camera_distance", of="camera", cue="camera")
    after = place.items[place.at + 1 : place.at + 4]
    camera = next((i for i in after if i.kind == "cue" and i.word == "camera"), None)
    if camera is not None and place.mark("FROM", offset=1) and _ASIDE.isdisjoint(place.text[place.item.end : camera.start]):
        return fact_at(place, "camera_distance", of="camera")
    last = place.last_before(lambda i: i.kind in ("cue", "noun", "role", "named") and (i.kind != "cue" or i.word in ("camera", "self", "ceiling", "subject", "leg_from", "my_kit")))
    near = last is not None and (last.word != "self" or place.at - place.number_of(last) <= 3)
    stood = last is not None and last.word == "self" and _STOOD.match(place.text[last.end : place.item.start]) is not None
    if last and near and last.kind == "cue" and last.word in ("camera", "self") and not stood and not _light_follows(place):
        return fact_at(place, "camera_distance", of="camera", cue=last.word)
    return None


def _from_the_lens(place: Place) -> Fact | None:
    """"2 m from the flash and 2 m from my 50 mm lens": from the lens is from the camera."""
    return fact_at(place, "camera_distance", of="camera") if _FROM_THE_LENS.match(place.text[place.item.end :]) and _A_LIGHT_IS_AT.search(place.text) else None


def _light_follows(place: Place) -> bool:
    after = place.beside(2)
    return place.mark("FROM", offset=1) and after is not None and after.kind in ("noun", "role", "named")


def _focus_distance(place: Place) -> Fact | None:
    cue = place.near("focus", before=4, after=3)
    lamp = cue is not None and cue.end <= place.item.start and any(i.kind in ("noun", "role", "named") and i.start >= cue.end for i in place.items[max(0, place.at - 4) : place.at])
    lamp = lamp or cue is not None and cue.start >= place.item.end and ANOTHER_CLAUSE.match(place.text, place.item.end) is not None
    return fact_at(place, "focus_distance", of="camera") if cue and not lamp else None  # "focused on 2 m but the flash 3 m off"


_MOST_DISTANT = Pattern(r"\bmost (?:distant|remote|faraway)\b[^.?!,;\d]{0,24}$", re.I)
_COMES_UP_TO = Pattern(r"\b(?:shuffl|mov|step|com|came|walk|bring|brought|pull|push|shift|edg|creep|crept|inch|clos|slid|bunch|crowd|squeez)\w*(?: (?:it|them|him|her|one|all|right|on|in|forward|back))* up to (?:about |some |only |just )?$", re.I)
"""Up to a place, which is no limit: "the back ones shuffle up to 10 feet"."""


_OF_A_STUDIO = Pattern(r"(?:studio|room|hall) (?:head|flash|strobe|light|lamp|unit|pack|monobloc|kit|ceiling|floor|wall|backdrop|background|portraits?|shot|set-?up)s?\b", re.I)


def _room_limit(place: Place) -> Fact | None:
    if place.near("rows", before=2, after=2) and not place.near("room", before=4, after=3) and "room" not in place.text.lower():
        return None
    if "how_far" not in place.cues and patterns.match(r"\s*(?:away |back )?from the (?:front|first|near\w*)\b", place.text[place.item.end :], re.I):
        return None  # "no farther than 15 feet from the front row": where the light then is
    room = place.near("ambient", before=4, after=3)
    if room and place.text[room.start : room.end].lower() in ("room", "hall", "stage") and not place.mark("FROM", offset=1) and place.item.value > 1.5:
        return fact_at(place, "max_distance", of="", cue="at_most")
    if place.text[place.item.end :].lower().lstrip().startswith("behind"):
        return None  # "studio wall 3 m behind": what hangs there
    if _UP_TO_IT.search(place.before(40)) or _IF_IT_GOES.search(place.before(60)) or _limits_another(place) or _MOST_DISTANT.search(place.before(40)) or _COMES_UP_TO.search(place.before(40)):
        return None
    limit = place.near("room", "at_most", before=5, after=4)
    if limit is not None and _OF_A_STUDIO.match(place.text, limit.start):
        return None  # "the old studio head gives f/11 at 2.5 m": whose light it is
    if limit is not None and not place.near("further", "closer", before=1, after=0):
        if place.near("room", before=4, after=3) or "distance" not in place.kinds or place.near("at_most", before=3, after=3):
            return fact_at(place, "max_distance", of="", cue="at_most")
    if place.near("at_least", before=2, after=2):
        return fact_at(place, "min_distance", of="", cue="at_least")
    return None


_OTHERS = ("stops", "share", "power", "aperture", "length", "shutter", "film_speed", "ratio")


_UP_TO_IT = Pattern(r"\bup to (?:it|there|that|(?:the|a|my) [a-z]+(?: [a-z]+)?)(?: (?:is|are|measures|it's|about|some|just|only)|:|,)*\s*$", re.I)
"""Before a length: the way up, and no limit."""
_IF_IT_GOES = Pattern(r"\bif (?:it|i|we|they|he|she|the \w+)(?:'s| is| only| just)* (?:go|goes|move|moves|come|comes|get|gets|stand|stands|moved|went)(?: (?:out|back|in|up|only|just))* (?:to|at) (?:about |only |just )?$", re.I)
"""A case that is put, and no limit: "and if it only goes out to 4.5 m?"."""
_UP_TO_A_PLACE = Pattern(r"\s*(?:from (?:the |my )?\w+ )?up to (?:the|a|my)\s+[a-z]", re.I)


def _limits_another(place: Place) -> bool:
    """"1.2 m, and I'd like no more than a third of a stop": the limit is of what comes after it; "1.5 m up to the plaster" has none."""
    if _UP_TO_A_PLACE.match(place.text[place.item.end :]):
        return True
    limit = place.near("at_most", before=0, after=4)
    if limit is None or place.near("at_most", before=5, after=0) or place.near("room", before=5, after=4):
        return False
    if place.text[limit.start : limit.end].lower() == "within":
        return True  # "is somebody at six feet still within what the film takes?"
    after = next((i for i in place.items[place.number_of(limit) + 1 :] if i.kind not in ("mark", "link", "word")), None)
    return after is not None and after.kind in _OTHERS


_MOVES = {"further": 1, "closer": -1}


_MOVED_BY = Pattern(r"\b(?:(?P<nearer>closer|nearer|forward|in)|back|away|off|further|farther|out|further back|farther away)(?: (?:again|from (?:them|all of them|the (?:group|rows|lot|two))))? by(?: another| a further| some| about)?\s*$", re.I)
_SO_IT_IS = Pattern(r"\b(?:so|until|till|and) (?:it(?:'s| is)|they(?:'re| are)|she(?:'s| is)|he(?:'s| is))(?: now| then)?\s*$", re.I)


_ONE_AND_ANOTHER = Pattern(r"\bone (?!stop|more|metre|meter|foot|third|half)(?:of \w+ )?(?:[a-z]+ )?(?:sits|stands|is|poses|kneels|waits|at)\b[^.?!;]*,(?: and)? $|\bone (?:of \w+ )?(?:person|man|woman|child|boy|girl|guest|sitter|dancer|figure|face|row|singer|player)\b[^.?!;]*\d ?(?:m|metres?|meters?|ft|feet|foot)\b[^.?!;]*\band $", re.I)


_STANDS = Pattern(r"\b(?:that(?:'s| is)|which(?:'s| is)|(?:light|lamp|flash|key|head|it|strobe)(?:'s| is| stands| sits)|standing|sitting)(?: (?:now|about|only|just|currently|at))* $", re.I)
_OFF = Pattern(r" (?:away|off)\b", re.I)


def _move(place: Place) -> Fact | None:
    """"back a metre", "two feet closer", "another metre": a change, not a place."""
    by = _MOVED_BY.search(place.before(40))
    if by is not None:
        return fact_at(place, "move", place.item.value * (-1 if by["nearer"] else 1), of=place.owner)
    if place.item.word != "again" and place.cues.isdisjoint(_MOVES) or _SO_IT_IS.search(place.before(40)):
        return None
    if place.mark("TO", "AT") or place.before(12).lower().rstrip().endswith("from"):
        return None
    if _STANDS.search(place.before(30)) and _OFF.match(place.text, place.item.end):
        return None  # "bring a light that's 10 feet away": where it is
    before, after = place.beside(-1), place.beside(1)
    two_before = place.beside(-2)
    words = [i.word for i in (before, after) if i and i.kind == "cue"]
    moving = place.near("move", before=4, after=0) is not None
    if place.item.word == "again":
        if _ONE_AND_ANOTHER.search(place.text[: place.item.start]):
            return fact_at(place, "distance")  # "one guest sits 2 m from it, another 3.2 m"
        return fact_at(place, "move", of=place.owner, cue="again")
    for word in words:
        if word in _MOVES:
            said_move = moving or (before is not None and before.kind == "cue" and before.word in _MOVES) or _is_comparative(place, after)
            if said_move and not (two_before and two_before.kind == "mark" and two_before.word == "TO"):
                return fact_at(place, "move", place.item.value * _MOVES[word], of=place.owner)
    return None


def _is_comparative(place: Place, after: Item | None) -> bool:
    text = place.text[after.start : after.end].lower() if after and after.kind == "cue" else ""
    return text.startswith(("further", "farther", "closer", "nearer", "forward", "tighter"))


_POINTED_AT = Pattern(r"\b(?:point|aim|fir|turn|direct|shoot|bounc)\w*\b[^.?!,]{0,24}\b(?:at|into|up at) (?:the|a|that|my) (?:\w+ )?(?:wall|ceiling)\b", re.I)


_DEPTH_BEFORE = Pattern(r"\b(?:fall.?off|drop|loss|difference|spread)(?: in \w+| of \w+)? (?:over|across) (?:about |some )?$|\bdepth of (?:the|my|our|this) (?:group|choir|crew|team|band|class|party|rows|lot)(?: is| of|:|,)?(?: about| some)? $", re.I)
"""Before how far it is from the nearest to the farthest."""
_OF_A_GROUP = Pattern(r"[\s-]*(?:deep )?of (?:the |my |our |this )?(?:\w+ )?(?:choir|people|group|family|families|kids|children|singers|players|crew|team|band|class|guests|couples|rows|bridesmaids|party|orchestra|dancers|them|cast|faces|bodies|staff|pupils|students|depth)\b[^.?!]{0,40}\b(?:within|inside|even|evenly|stops?|third|half)\b", re.I)
"""After how deep they stand: "how far back so 4 ft of choir stays within a third of a stop"."""
_A_LINE = Pattern(r"\b(?:line|queue|file|column|row|string|procession|table|bench|boat|crew|group)\b[^.?!,;\d]{0,24}(?:, )?$", re.I)
_LONG_AWAY = Pattern(r"[\s-]*long\b[^.?!]{0,40}\b(?:away from|towards?|out from|back from|in line with|from) (?:the |my )?(?:flash|light|lamp|strobe|key|softbox|gun|head)\b", re.I)
"""Round how far a line reaches along the light: "a line of people 3 m long stretches away from the flash"."""
_MORE = Pattern(r"(?:another|a further|an extra|one more|additional|extra)\b", re.I)


_SO_LONG = Pattern(rf"\W*(?:{SO_LONG})", re.I)
_END_TO_END = Pattern(rf"(?<!stop )(?<!stops )(?<!stop from )(?<!stops from ){END_TO_END}", re.I)


def _standing(place: Place) -> Fact | None:
    """Rows and backdrops: a gap between two of them, or a row's own distance."""
    if place.cues & {"bounce", "ceiling", "path"} or _POINTED_AT.search(place.text):
        return None
    if place.owner in ("key", "a") and _FROM_THE_WALL.match(place.text[place.item.end :]):
        return _behind(place)
    if _DEPTH_BEFORE.search(place.before(40)) or _OF_A_GROUP.match(place.text, place.item.end) or _LONG_AWAY.match(place.text, place.item.end) and _A_LINE.search(place.before(50)):
        return fact_at(place, "gap", of="back", cue="in_all")
    if not place.owner and _FROM_THE_WALL.match(place.text[place.item.end :]):
        return _behind(place)
    if _APART.match(place.text[place.item.end :]) and _PEOPLE.search(place.before(40)):
        return _behind(place)
    if place.owner == "background" or not place.cues & {"front", "back", "middle", "rows", "backdrop", "wall"}:
        return None if place.owner or "behind" not in place.text.lower() and not _END_TO_END.search(place.text) and not _SO_LONG.match(place.text[place.item.end :]) else _behind(place)
    return _behind(place)


_APART = Pattern(r"\s*apart\b", re.I)
_PEOPLE = Pattern(r"\b(?:two|both|three|the|my|these|our|of) (?!lights?\b|flash(?:es)?\b|lamps?\b|heads?\b|strobes?\b|stands?\b|units?\b|rails?\b|exposures?\b)(?:[a-z]+ )?(?:people|men|women|children|[a-z]+s)(?:,? (?:who|that|which) (?:are|stand|sit)| standing| sitting| seated| are| stand| sit)?(?: about| some| only)? $", re.I)
"""Right before the length between two who are "60 cm apart"."""
_FROM_A_THING = Pattern(r"\s*(?:away |off )?from (?P<thing>(?:the |her |him |my |a )?(?:[\w'-]+ ){0,2}?[\w'-]+)(?:,? (?:and|so|but)|,)(?: (?:so|that|now|then|it's|it is|it stands|is))* (?:about |only )?", re.I)
_OF_A_LAMP = Pattern(r"\b(?:light|flash|lamp|strobe|head|key|main|softbox)(?:'s| is| stands| sits| hangs| was| comes| moves| goes| came| moved| went)?(?: now| about| only| up| in| back| closer| to| at)*\s*$", re.I)
_BEFORE_IT = Pattern(r"\s*(?:away )?(?:in front of|from|off|before) it\b", re.I)
_SOMEBODY_IS = Pattern(r"\b(?:she|he|they|(?:sitter|subject|model|couple|bride|groom|child|dancer|band|group|family)s?)(?:'s|'re| is| are| stands?| sits?| poses?| about| only| just| some| at)*\s*$", re.I)
_THE_WALL_WAS_LAST = Pattern(r"\b(?:walls?|backgrounds?|backdrops?|curtains?|canvas|backcloth|screen)\b(?!(?:(?!\bfrom\b).)*\b(?:flash|lamp|strobe|softbox|key|light)\b)", re.I | re.S)
_IT_STANDS = Pattern(r"(?:^|[.;:!?,]\s*|\b(?:and|with|have|keep|put|stand|had|hold) )it(?:'s| is| stands| sits| hangs| was| now)*(?: about| only| up| just)*\s*$", re.I)
_LAMP = Pattern(r"\b(?:it|light|flash|lamp|strobe|head|key|fill|main|softbox|umbrella|window|camera|lens)\b", re.I)
_CAMERA = Pattern(r"\b(?:camera|tripod|lens|i am|i'm|i stand)\b", re.I)
_NO_LAMP = Pattern(r"\b(?:me|dish|beauty|octa|head|panel|spot|ring|box|bulb|source|gun|speedlight|monolight|unit|reflector|parabolic|wall|ceiling|floor|chair|sofa|door|window|table)\b", re.I)
"""Something measured from one of these is no light itself: "it stands 2 m from the flash and 3 m from the wall"."""
_FROM_THE_WALL = Pattern(r"\s*(?:away )?from (?:the |my |a |that |its |his |her )?(?:[\w-]+ ){0,2}?(?:wall|background|backdrop|backcloth|paper|curtain|cloth|sheet|seamless|screen|canvas|hedge|fence)s?\b", re.I)


_LAMP_GOES = Pattern(
    r"\b(?:light|flash|lamp|strobe|head|gun|softbox|speedlight|monolight)s?(?:'s| is| was| has| have)?(?: (?:moved|pulled|pushed|brought|taken|carried|slid|shifted|walked|rolled|went|goes|came|comes|gone|been|moves|in|out|up|back|over|closer|nearer|away))* from (?:about |some )?$", re.I)
_ON_TO = Pattern(r",? ?(?:away |off )?(?:(?:right|all the way) )?(?:(?:in|out|up|down|back|over|closer|nearer)[ -]?)?to (?:about |just |only )?", re.I)


def _of_one_lamp(place: Place, first: Item) -> bool:
    """"it stands 2 m from her and 5 m from the wall": both from the light that is spoken of, and nothing between the two things."""
    thing, before = _FROM_A_THING.fullmatch(place.text[first.end : place.item.start]), place.text[max(0, first.start - 60) : first.start]
    if thing is None or not _FROM_THE_WALL.match(place.text[place.item.end :]):
        return False
    if not (_LAMP.search(thing["thing"]) or _SOMEBODY_IS.search(before) or _NO_LAMP.search(thing["thing"]) or _CAMERA.search(before)):
        return True  # whatever is so far from somebody, and from the wall too, is what lights him
    return _OF_A_LAMP.search(before) is not None or _IT_STANDS.search(before) is not None and not _LAMP.search(thing["thing"])


_TO_SOMEBODY = Pattern(r" to (?:him|her|them|it|(?:the|my) (?!wall|back)\w+)(?:,| and|, and)? (?:about |only )?", re.I)
_TO_THE_WALL = Pattern(rf"\s*to (?:the |my )?{WALL}", re.I)
"""Both from the lamp: "1.5 m to him and 3 m to the wall"."""
_A_LAMP = r"(?:the |my )?(?:light|flash|lamp|strobe|head|key|gun|softbox)"
_WALL_ASKED = Pattern(rf"\b(?:how (?:far|close|near)|(?:what|which) distance|where)\b[^.?!]{{0,40}}?\b(?:must|should|does|do|can|has|have|would|will|ought)(?: to)?(?: (?:the|my|that|a))?(?: \w+)? {WALL} (?:have to |need to |to )?(?:be|hang|stand|go|sit|move|come)\b|\bdistance\b[^.?!]{{0,24}}\bfrom {_A_LAMP} to (?:the |my )?{WALL}|\bhow (?:far|close|near)(?: away)? (?:from|off|to) {_A_LAMP} (?:must|should|does|do|can|has|would|will|ought)\b[^?.!]*?{WALL}|\bhow (?:far|close|near) (?:must|should|does|can|has|would|will|ought)\b[^?.!]*?{WALL}[^?.!]*? (?:from|off|to) {_A_LAMP}\b", re.I)
"""Where the wall goes is asked, so that nobody is told to stand so far from it."""


def _behind(place: Place) -> Fact | None:
    lengths = [i for i in place.every if i.kind in ("length", "length_range")]
    floor = max((i.end for i in lengths if i.end <= place.item.start), default=0)
    ceiling = min((i.start for i in lengths if i.start >= place.item.end), default=len(place.text))
    first = next((i for i in reversed(lengths) if i.end <= place.item.start), None)
    if first is not None and _FROM_THE_WALL.match(place.text[place.item.end :]) and _LAMP_GOES.search(place.text[max(0, first.start - 60) : first.start]) and _ON_TO.fullmatch(place.text[first.end : place.item.start]):
        return fact_at(place, "distance", of="")  # "we pulled the flash from 12 ft in to 6 ft from the wall": the wall is what it lights
    if first is not None and (_of_one_lamp(place, first) or _TO_SOMEBODY.fullmatch(place.text[first.end : place.item.start]) and _TO_THE_WALL.match(place.text[place.item.end :])):
        return fact_at(place, "distance", of="backdrop")  # "the light's 6 feet from the model and 12 feet from the wall"
    if _BEFORE_IT.match(place.text[place.item.end :]) and _SOMEBODY_IS.search(place.before(40)) and _THE_WALL_WAS_LAST.search(place.text[: place.item.start]) and not _WALL_ASKED.search(place.text, place.item.end):
        return fact_at(place, "gap", of="backdrop")  # "I want the background darker. She is 2 m in front of it."
    beside = around(place.text, place.item.start, place.item.end, floor, ceiling)
    found = row_length(*beside)
    if found is not None and found == ("distance", "backdrop") and first is not None and _MORE.match(place.text[place.item.start :]):
        found = "gap", "backdrop"  # "2 m to the sitter, the backdrop another 3 m"
    if found == ("distance", "backdrop") and first is None and _WALL_ASKED.search(place.text):
        found = "distance", ""  # "sitter 1 m from the softbox wall three stops less, how far must the wall be?"
    if found is None:
        return None
    whole = found[0] == "gap" and _END_TO_END.search(" ".join(beside)) is not None
    return fact_at(place, found[0], of=found[1], cue="in_all") if whole else fact_at(place, found[0], of=found[1])


_NO_FARTHER = Pattern(
    r"\b(?:(?:can'?t|cannot|can not|couldn'?t|won'?t|unable to|no way to|not able to) (?:(?:really|quite|physically|even) )?(?:get|go|move|put|push|pull|back|take|bring|drag|place|stand|have|be|set)(?: (?:it|the (?:light|flash|head|lamp|stand)|them|myself|any|much|back|up|off|away|out)){0,3}"
    r"|no room to (?:get|go|move|put|push|pull|back)(?: (?:it|the light|up|any)){0,2}) (?:further|farther)(?: (?:back|away|off|out))? than (?:about |some |roughly )?$", re.I)
"""Right before the place beyond which the light cannot go."""


def _no_farther(place: Place) -> Fact | None:
    """"I can't get it further than 15 ft", where it is asked how far: a limit, and neither a move nor where it is."""
    return fact_at(place, "max_distance", of="", cue="at_most") if "how_far" in place.cues and _NO_FARTHER.search(place.before(90)) else None


def _path_leg(place: Place) -> Fact | None:
    if "bounce" in place.cues or "ceiling" in place.cues:
        if place.near("ceiling", "wall", "leg_from", "leg_to", "path", before=6, after=6) or "path" in place.cues:
            return fact_at(place, "path", of="")
    return None


_RULES: tuple[tuple[Callable[[Place], Fact | None], frozenset[str] | None], ...] = (
    # in order, each with the cues of which it needs one; None: it looks for words of its own
    (_extension, None), (_camera_distance, frozenset({"camera", "self"})), (_from_the_lens, None), (_focus_distance, frozenset({"focus"})),
    (_no_farther, frozenset({"further"})), (_room_limit, frozenset({"ambient", "room", "at_most", "at_least"})), (_standing, None), (_move, None), (_path_leg, frozenset({"bounce", "ceiling"})),
)
