"""The bellows and the tube: which length is the lens's, which the draw, and the scale said in one phrase.

Lenses for large film are named in inches ("a ten inch lens"), and near a bellows a bare number
takes the unit of the lens it stands with ("450 of bellows on a 300 mm lens").
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.units import LENGTH

_SMALL = ("mm", "cm", "in")
_LENGTHS = ("focal_length", "distance", "move", "camera_distance", "max_distance", "extension", "focus_distance", "path")
_CLOSE = Phrasings(r"\bbell?ows?(?<!below)\b|\bdraw\b|\bdrawn\b|\bextension\b|\bextended\b|\btubes?\b|\brack(?:ed|s)?\b|\blens\b[^.?!]{0,20}\b(?:pulled|stretched|wound) out\b|\bbetween (?:it|(?:the |my )?lens)\b|\b(?:lens|lens ?board|front standard|board)[ -](?:to|and)[ -](?:the )?(?:film|plate|back|ground ?glass|rear standard)\b|\bfrom (?:the |my )?(?:film|plate|ground ?glass)\b", re.I)
_LENS_AFTER = Pattern(r"^[\s-]*(?:mm |mil |in\.? )?(?:(?:focal length|portrait|process|macro|view|field|wide|long|normal|old|brass|prime|enlarging|tele|telephoto|petzval|large format)[\s-]*)*(?:lens\b(?! (?:hood|cap|shade|cloth|board))|tele\b|focal length\b)", re.I)
_LENS_BEFORE = Pattern(r"\b(?:lens|focal length)(?:'s| is| of| with| at|:|,| =|=)?(?: an?)?\s*$", re.I)
_DRAW = r"(?:bell?ows?(?<!below)|draw|extension|extended|rack(?:ed|s)?(?: it)?(?: out)?|drawn(?: out)?|draws?(?: out)?|pulled(?: out)?|stretched(?: out)?|wound out|(?:run|runs|running|let|cranked|pushed|brought) out|extended by|(?:lens|it) out|tubes?)"
_THEN_TO_FILM = Pattern(r"^[\s-]*(?:to|and)[\s-](?:the )?(?:film|plate|ground glass|rear standard)\b", re.I)
_BETWEEN = Pattern(r"^[\s-]*(?:mm|mil|inch(?:es)?|in\.?)?[\s-]*(?:(?:of )?(?:tubes?|rings?|spacers?|spacing|extra|added|put|fitted|in) )*(?:in )?between (?:it|the lens|lens|my lens|them|the board)(?: and (?:the |my )?(?:body|camera|mount|film|back))?\b", re.I)
_TAKEN_BACK = r"(?:[\w.½ ]{1,24},? (?:no|sorry|wait|i mean|er|make that|actually)[, ]+)?"
"""A figure that is put right in the next word: "measures ten, no, twelve inches"."""
_LENS_TO_FILM = Pattern(r"\b(?:lens|lens ?board|front standard)[- ](?:to|and)[- ](?:the )?(?:film|plate|film plane|back|ground glass|rear standard)(?:,? (?:distance|measures?|is|are|of|at|now|about|comes to|reads))*[\s:=]*" + _TAKEN_BACK + "$", re.I)
_DRAW_BEFORE = Pattern(rf"\b{_DRAW}(?: (?:is|are|was|of|at|out|to|long|length|now|about|set|reads|measures|extended|extension|draw|long of|me|it|about|some|roughly|=))*[\s:=]*{_TAKEN_BACK}$", re.I)
_DRAW_AFTER = Pattern(r"^[\s-]*(?:mm|mil|inch(?:es)?|in\.?)?[\s-]*(?:long )?(?:of )?(?:the |my |total |full )?(?:bell?ows?(?<!below)|draw|extension|tubes?)\b", re.I)
_TO_FILM_AFTER = Pattern(r"^[\s-]*(?:(?:from |off )?(?:the )?(?:lens|lens ?board|front standard)[- ](?:to|and)[- ](?:the )?|(?:away |out |clear )?(?:from|off|in front of) (?:the |my )?)(?:film plane|film|plate|back|ground ?glass|rear standard|focal plane)\b", re.I)
"""After a length: "210 mm lens to film", "300 mm from the film"."""
_SPEED_SAID = Pattern(r"iso|asa|\bei\b|din|film|°|/", re.I)


def drawn(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with the lens, the draw and the scale of a close-up told apart."""
    out = [_inches(f, facts, text) if f.quantity == "number" else f for f in facts]
    out = _between_them(out, text)
    out = [_to_the_subject(_lens(_to_the_film(f, text), text), out, text) if f.unit in _SMALL else f for f in out]
    facts = [replace(f, quantity="remark", unit="", of="") if f.quantity == "focal_length" and f.value < 0.008 and f.said.lower().endswith("lenses") else f for f in facts]  # "two lenses": how many
    out = _one_scale(_in_focal_lengths(out, text), text)
    if not _CLOSE.found_in(text):
        return out
    out = [replace(f, quantity="magnification", unit="", of="", cue="") if f.quantity == "times" and _AN_X.search(f.said) and _TO_A_SCALE.search(text[: f.start]) else f for f in out]
    out = _tubes_named(out, text)
    out = [replace(f, quantity="focal_length", of="") if f.quantity == "extension" and _THEN_THE_DRAW.match(text[f.end : f.end + 40]) else f for f in out]
    unit = next((f.unit for f in out if f.quantity == "focal_length" and f.unit in _SMALL), "")
    out = _racked([_draw(f, text, unit) for f in out], text)
    return _asked_draw(_stacked(_bare_lens(_both_bare(out, text), text), text), text)


_GLASS_AND_FILM = Pattern(r"\bbetween (?:the |my |an? )?(?:(?:film|plate|ground ?glass)(?: plane)? and (?:the |my |an? )?[\w. -]{0,24}?lens|[\w. -]{0,24}?lens(?:,[^,]{1,24},)? and (?:the |my )?(?:film|plate|ground ?glass))\b", re.I)


def _between_them(facts: list[Fact], text: str) -> list[Fact]:
    """"225 mm between a 150 mm lens and the film": the lens is named between the two, the draw outside."""
    span = _GLASS_AND_FILM.search(text)
    lengths = [f for f in facts if f.quantity in _LENGTHS and f.unit in _SMALL and not f.bad and not f.said.lower().endswith("lens")]
    if span is None:
        return facts
    within = [f for f in facts if f.quantity in _LENGTHS and span.start() <= f.start < span.end()]
    draws = [f for f in lengths if f not in within]
    if len(draws) != 1 or len(within) != 1:
        return facts
    return [replace(f, quantity="extension" if f in draws else "focal_length", of="", cue="", to="") if f in draws or f in within else f for f in facts]


_OFF_IT = Pattern(r"\s*(?:away |off |out )?(?:in front of|ahead of|before|from|off|away)\b(?! (?:the |my )?(?:film|plate|ground ?glass|infinity))", re.I)
_DISTANCE_IS = Pattern(r"\b(?:lens[ -]to[ -]subject|subject[ -]to[ -]lens|from (?:the )?lens to (?:the )?\w+|distance)(?: distance)?(?: is| of|:|=|,)*\s*$", re.I)


def _to_the_subject(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"an 80 mm lens is 400 mm from a seed pod": no second lens, but where the subject is."""
    if fact.quantity != "focal_length" or not any(f.quantity == "focal_length" and f.value < fact.value for f in facts) or fact.said.lower().endswith("lens"):
        return fact
    placed = _OFF_IT.match(text, fact.end) or _DISTANCE_IS.search(text[: fact.start])
    return replace(fact, quantity="focus_distance", of="camera", cue="", to="") if placed else fact


_AN_X = Pattern(r"\d ?x$", re.I)
_TO_A_SCALE = Pattern(r"\b(?:for|to|at|of|gives?|giving|reach\w*|magnification)(?: about)? $", re.I)
"""Before "0.5x", where a bellows or tubes are spoken of: a scale."""
_RACKED_FROM = Pattern(rf"\b{_DRAW}(?: (?:the|my|it|them|out|in|bellows|draw|lens|further|go|goes|going|went|moves?|shortened|closed|brought|back))* from (?:about )?$", re.I)
_ON_TO = Pattern(r"\s*(?:mm|cm|in)?\s*(?:of (?:draw|bellows|extension) )?(?:out )?(?:to|till|up to) (?:about )?", re.I)


def _racked(facts: list[Fact], text: str) -> list[Fact]:
    """"rack the bellows from 180 mm to 260 mm": the draw before and after."""
    out: list[Fact] = []
    for fact in facts:
        last = out[-1] if out else None
        if fact.quantity == "length_range" and fact.unit in _SMALL and _RACKED_FROM.search(text[: fact.start]):
            middle = fact.start + max(1, len(fact.said) // 2)
            out += [replace(fact, quantity="extension", of="", other=math.nan, end=middle), replace(fact, quantity="extension", of="", value=fact.other, other=math.nan, start=middle)]
        elif last is not None and last.unit == fact.unit and fact.unit in _SMALL and last.quantity in _LENGTHS and fact.quantity in _LENGTHS and _ON_TO.fullmatch(text[last.end : fact.start]) and _RACKED_FROM.search(text[: last.start]):
            out[-1:] = [replace(f, quantity="extension", of="", cue="", to="", bad="") for f in (last, fact)]
        else:
            out.append(fact)
    return out


_THEN_THE_DRAW = Pattern(r"\s*(?:lens )?(?:when|while|if|once|as|and|but|with|where) (?:(?:the|my|its) )?(?:bellows|draw|extension|tubes?) (?:is|are|was|were|at|to|out|drawn|racked|extended|pulled|set|of|goes|go)\b", re.I)
"""After the length of the lens: "with the 150 mm when the bellows are drawn to 225"."""


def _to_the_film(fact: Fact, text: str) -> Fact:
    """"two hundred and ten millimetres lens to film", "it sits 300 mm from the film": the draw, whole."""
    start = fact.end - len(" lens") if fact.said.lower().endswith((" lens", "-lens")) else fact.end
    drawn_out = fact.quantity in _LENGTHS and fact.unit in _SMALL and 0.03 <= fact.value <= 2 and (
        _TO_FILM_AFTER.match(text[start : start + 40]) and not _BETWEEN_BEFORE.search(text[:start]) or _FILM_STANDS.search(text[: fact.start]) and _OFF_THE_LENS.match(text, start)
    )
    return replace(fact, quantity="extension", of="", cue="", to="", end=start, said=text[fact.start : start]) if drawn_out else fact


_FILM_STANDS = Pattern(r"\b(?:film|plate|ground ?glass|paper negative)(?: plane| holder)?(?: (?:is|was|lies|lay|sits|sat|stands|stood|ends up|now|then|comes|exactly|about|roughly|at|placed|set|held|which|that|distance))*\s*$", re.I)
_OFF_THE_LENS = Pattern(r"\s*(?:away |off |back )?(?:from|behind|off|beyond|in back of|of) (?:an? |the |my |its |this |that )?(?:[\w.-]+ ){0,5}?(?:lens|glass)\b", re.I)
"""Around the draw told from the film's side: "the film lies 150 mm behind a 100 mm lens"."""
_BETWEEN_BEFORE = Pattern(r"\bbetween (?:the |my |an? )?[\d.]+ ?(?:mm|cm|inch|in|millimetres?)?$", re.I)
"""Before the film there, it is the lens's own length: "between a 150 mm lens and the film"."""
_AT_BEFORE = Pattern(r"\bat\s*$", re.I)


def _lens(fact: Fact, text: str) -> Fact:
    """"a ten inch lens", "lens of 21 cm": the focal length."""
    if fact.quantity not in _LENGTHS or fact.unit not in _SMALL or fact.end <= fact.start or not 0.008 <= fact.value <= 2 or _TO_FILM_AFTER.match(text[fact.end : fact.end + 40]):
        return fact
    named = _LENS_AFTER.match(text[fact.end :]) or not _AT_BEFORE.search(text[: fact.start]) and _LENS_BEFORE.search(text[: fact.start]) and not _DRAW_AFTER.match(text[fact.end :])
    return replace(fact, quantity="focal_length", of="", cue="", to="", bad="") if named else fact


_INCHES_OF = Pattern(r"^\s*in\.?\s+(?:from|away|off|of (?:draw|bellows|extension)|draw|bellows|lens|extension)\b", re.I)


def _inches(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    """"subject 12 in from lens": inches, where inches are spoken of."""
    if fact.quantity != "number" or fact.bad or fact.value <= 0 or not _INCHES_OF.match(text[fact.end :]):
        return fact
    if not (any(f.unit == "in" for f in facts) or patterns.search(r"\binch", text, re.I) or _CLOSE.found_in(text)):
        return fact
    return replace(fact, quantity="distance", value=fact.value * LENGTH["in"], unit="in", of="")


_JOINED = Pattern(r"\s*(?:mm|cm)?\s*(?:tube|ring)?\s*(?:,|\+|and|plus|with)\s*(?:an?|the|another)?\s*", re.I)


_TUBES_AFTER = Pattern(r"[\s-]*(?:mm|mil|millimet\w+)?[\s-]*(?:extension |macro |auto )?(?:tubes?|rings?)\b", re.I)
_BOTH = Pattern(r"\band\b|\bplus\b|\+|,", re.I)


def _tubes_named(facts: list[Fact], text: str) -> list[Fact]:
    """"the twelve and the twenty mil tubes", "12 and 20 mm tubes": both of them, in the unit of the last, one on the other."""
    at = next((n for n, f in enumerate(facts) if _TUBES_AFTER.match(text[f.end : f.end + 30]) and f.unit in ("mm", "") and not f.bad), None)
    last = facts[at] if at is not None else None
    if at is None or last is None:
        return facts
    if last.quantity == "length_range" and last.unit == "mm" and _BOTH.search(last.said):
        return [replace(f, quantity="extension", value=f.value + f.other, other=math.nan, of="") if f is last else f for f in facts]
    first = facts[at - 1] if at else None
    if first is None or last.unit != "mm" or not _JOINED.fullmatch(text[first.end : last.start]):
        return facts
    bare = _is_bare(first, text)
    lens = any(f.quantity == "focal_length" or _is_bare(f, text) and f.value >= 20 for f in facts if f not in (first, last))
    named = first.quantity == "focal_length" and first.unit == "mm" and lens and not patterns.search("lens|focal", first.said, re.I)
    value = first.value / 1000 if bare else first.value
    if not (bare or named) or not 0.005 <= value <= 0.2:
        return facts
    both = replace(last, quantity="extension", value=value + last.value, start=first.start, said=text[first.start : last.end], of="")
    return [both if f is last else f for f in facts if f is not first]


def _stacked(facts: list[Fact], text: str) -> list[Fact]:
    """"tubes of 12 and 20 mm", "36 mm plus 12 mm": rings one on another, so their lengths add."""
    if not patterns.search(r"\b(?:tubes?|rings?)\b", text, re.I):
        return facts
    out: list[Fact] = []
    for fact in facts:
        last = out[-1] if out else None
        ring = last is not None and last.quantity == "extension" and fact.quantity in ("focal_length", "distance", "extension") and fact.unit == last.unit and not patterns.search("lens|focal", fact.said, re.I)
        before = last is not None and last.quantity == "focal_length" and fact.quantity == "extension" and fact.unit == last.unit and not patterns.search("lens|focal", last.said, re.I) \
            and any(f.quantity == "focal_length" for f in facts if f is not last)
        if (ring or before) and last is not None and _JOINED.fullmatch(text[last.end : fact.start]) and not _LENS_AFTER.match(text[fact.end :]):
            out[-1] = replace(last, quantity="extension", value=last.value + fact.value, end=fact.end, said=text[last.start : fact.end])
        else:
            out.append(fact)
    return out


def _both_bare(facts: list[Fact], text: str) -> list[Fact]:
    """"the bellows at 380 and a 240 on the board": millimetres both, where neither length has a unit."""
    if any(f.quantity in ("focal_length", "extension") for f in facts):
        return facts
    bare = [f for f in facts if _is_bare(f, text) and 40 <= f.value <= 2000]
    draws = [f for f in bare if _DRAW_BEFORE.search(text[: f.start]) or _DRAW_AFTER.match(text[f.end :])]
    if len(bare) != 2 or len(draws) != 1:
        return facts
    return [replace(f, quantity="extension" if f is draws[0] else "focal_length", value=f.value / 1000, unit="mm", of="") if f in bare else f for f in facts]


_ON_A = Pattern(r"\b(?:on|with|for|using|behind)\s+(?:an?|the|my|this)\s*$", re.I)


def _asked_draw(facts: list[Fact], text: str) -> list[Fact]:
    """"how much bellows for 1:2 on a 100 mm": the one length is the lens, since the draw is asked."""
    draws = [f for f in facts if f.quantity == "extension"]
    if len(draws) != 1 or any(f.quantity == "focal_length" for f in facts) or not any(f.quantity == "magnification" for f in facts):
        return facts
    lens = _ON_A.search(text[: draws[0].start]) and not _DRAW_AFTER.match(text[draws[0].end :])
    return [replace(f, quantity="focal_length", of="") if lens and f is draws[0] else f for f in facts]


_ON_THE_LENS = Pattern(r"\b(?:extension|tubes?|rings?|draw) (?:on|with|behind|for|to) (?:an?|my) $", re.I)
"""Between the draw and the lens: "12 mm of extension on a 50"."""


def _draw(fact: Fact, text: str, unit: str) -> Fact:
    """"bellows 450", "racked out to 12 inches", "300 of draw": how far the lens stands from the film, or what is added."""
    bare = _is_bare(fact, text) and bool(unit)
    length = fact.quantity in _LENGTHS and fact.unit in _SMALL and fact.end > fact.start
    before, after = text[: fact.start], text[fact.end :]
    if fact.quantity == "focal_length" and fact.unit in _SMALL and _THEN_TO_FILM.match(after) and not fact.said.lower().endswith("lens"):
        return replace(fact, quantity="extension", of="", cue="", to="")  # "270 mm lens to film": no lens
    if not (bare or length) or _LENS_AFTER.match(after) or patterns.search(r"lens|focal", fact.said, re.I) or fact.quantity == "extension":
        return fact
    if _ON_THE_LENS.search(before):
        return fact
    if not (_DRAW_BEFORE.search(before) or _DRAW_AFTER.match(after) or _LENS_TO_FILM.search(before) or _BETWEEN.match(after)):
        return fact
    value = fact.value * LENGTH[unit] if bare else fact.value
    return replace(fact, quantity="extension", value=value, unit=unit if bare else fact.unit, of="", cue="", to="")


def _is_bare(fact: Fact, text: str) -> bool:
    plain = fact.quantity == "number" or fact.quantity == "film_speed" and not _SPEED_SAID.search(text[max(0, fact.start - 8) : fact.end + 6])
    return plain and not fact.bad and fact.value > 0 and not patterns.search(r"\b(?:not|no)\s*$", text[: fact.start], re.I)


def _bare_lens(facts: list[Fact], text: str) -> list[Fact]:
    """"a 300 with 450 mm of draw": the one number beside a draw that is told."""
    draws = [f for f in facts if f.quantity == "extension"]
    bare = [f for f in facts if _is_bare(f, text) and 8 <= f.value / (1 if draws and draws[0].unit != "in" else 0.04) <= 2000]
    if len(draws) != 1 or len(bare) != 1 or any(f.quantity == "focal_length" for f in facts) or draws[0].unit not in ("mm", "in"):
        return facts
    unit = draws[0].unit
    return [replace(f, quantity="focal_length", value=f.value * LENGTH[unit], unit=unit, of="") if f is bare[0] else f for f in facts]


def _one_scale(facts: list[Fact], text: str) -> list[Fact]:
    """"magnification half life size": one scale, though both halves of the phrase name it."""
    out: list[Fact] = []
    for fact in facts:
        last = out[-1] if out else None
        again = last is not None and last.quantity == fact.quantity == "magnification" and patterns.fullmatch(r"[\s,(]*(?:times|of|x)?\s*", text[last.end : fact.start], re.I)
        if again and last is not None and patterns.fullmatch(r"\W*(?:life[- ]?size\w*|actual size|full size)\W*", text[fact.start : fact.end], re.I):
            out[-1] = replace(last, end=fact.end, said=text[last.start : fact.end])
        else:
            out.append(fact)
    return out


_SO_OFTEN = {"equal to": 1.0, "equal": 1.0, "twice": 2.0, "double": 2.0, "triple": 3.0, "treble": 3.0, "two": 2.0, "three": 3.0, "four": 4.0, "half": 0.5, "a third of": 1 / 3, "a quarter of": 0.25, "one and a half": 1.5, "two and a half": 2.5, "1½": 1.5}
_OF_FOCAL = Pattern(rf"\b(?P<n>{'|'.join(sorted(_SO_OFTEN, key=len, reverse=True))}|\d(?:\.\d+)?)(?: ?x| times| full)? (?:of )?(?:the |its |my |that |one )?(?:(?:lens's|lens’s|lens) )?focal[- ]lengths?\b", re.I)
_SO_EXTENDED = Pattern(r"\b(?P<n>double|twice|triple|treble)[ -](?:the )?(?:normal )?(?:extension|bellows|draw)\b(?![ -](?:bellows|field|view|plate|folding|wooden|camera|enlarger|rail|capab\w+|model|back)\b)", re.I)
"""The draw in the focal length without its name; "a double extension camera" is what it can do."""
_ADDED_BEFORE = Pattern(r"\b(?:by|extra|add(?:ed|ing|s)?|additional|further|another|plus|tubes?|rings?)(?: of| is| are| that is| an?| about| just)*\s*$", re.I)
_ADDED_AFTER = Pattern(r"\s*(?:of |in )?(?:extra|added|additional|further|more|beyond|past infinity|tubes?|rings?)\b", re.I)


def _in_focal_lengths(facts: list[Fact], text: str) -> list[Fact]:
    """"bellows at twice the focal length": life size; "at double extension" too; "extended by half its focal length": half of it, since "by" adds to the one it has at infinity. Any lens, so none need be named."""
    found = _OF_FOCAL.search(text) or _SO_EXTENDED.search(text)
    if found is None or not _CLOSE.found_in(text) or any(f.quantity in ("magnification", "extension") for f in facts):
        return facts
    said = found["n"].lower()
    times = _SO_OFTEN[said] if said in _SO_OFTEN else float(said)
    added = times <= 1 or _ADDED_BEFORE.search(text[: found.start()]) is not None or _ADDED_AFTER.match(text, found.end()) is not None
    value = times if added else times - 1
    rest = [f for f in facts if f.end <= found.start() or f.start >= found.end()]
    return sorted([*rest, Fact("magnification", value, "", start=found.start(), end=found.end(), said=found.group())], key=lambda f: f.start)


# --- what is asked --------------------------------------------------------------------------------

_STOPS = Pattern(r"how many (?:\w+ )?stops?\b", re.I)
_COST = Pattern(r"\b(?:exposure|light)[ -](?:loss|increase|compensation|correction|penalty|allowance)\b|\bloss of (?:light|exposure)\b|how much (?:light|exposure|more|extra|do i (?:lose|open|add|give))\b|\bstops\W*\?|\bcompensat\w*[^.?]*\?|\b(?:one|two|half a|a) stops? or\b", re.I)
_RING_PLACE = r"\bwhere (?:do|should|must|shall|would) (?:i|we|you) (?:set|put|turn|leave) (?:the |my )?(?:ring|lens|aperture|iris|f-?stop)\b"
_SET = Pattern(rf"{_RING_PLACE}|\bset (?:it |the lens |the ring )?(?:to |at )?(?:what|where)\b|\bwhat\b[^?]*\b(?:set|use|aperture|f-?stop|f-?number|stop)\b", re.I)
_WHERE_SET = Pattern(_RING_PLACE, re.I)
_TIME = Pattern(r"\bwhat(?:'s|s| is)?(?: \w+){0,3} (?:time|shutter|exposure)\b|\bhow (?:long|many sec\w*)\b|\b(?:new|corrected|real|which) (?:time|shutter|exposure)\b", re.I)


def close_asks(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """What a close-up asks in few words: the stops it costs, the aperture to set, the time to give."""
    kinds = {f.quantity for f in facts}
    close = "magnification" in kinds or {"extension", "focal_length"} <= kinds
    if not close or kinds & {"guide_number", "distance", "film_speed", "power"}:
        return list(asks)
    if "magnification" in kinds and "aperture" in kinds and _SET.search(text):
        asks = [a for a in asks if a.quantity != "magnification"]  # "once the magnification is allowed for": told
    if _STOPS.search(text) and all(a.quantity == "count" for a in asks):
        return [Ask("stops", "", "")]
    if "shutter" in kinds and _TIME.search(text) and all(a.quantity in ("shutter", "duration", "time", *(() if "aperture" in kinds else ("aperture",))) for a in asks):
        return [Ask("shutter", "", "s")]
    if asks and not (_WHERE_SET.search(text) and all(a.quantity == "distance" for a in asks)):
        return list(asks)
    if "aperture" in kinds and _SET.search(text):
        return [Ask("aperture", "", "")]
    return [Ask("stops", "", "")] if _COST.search(text) and "aperture" not in kinds else []


def beside_the_lens(fact: Fact, facts: Sequence[Fact], items: Sequence[Item]) -> bool:
    """"tubes push my 100 mm lens 50 mm further out": where tubes or bellows are spoken of, the one other small length beside a lens that is named."""
    small = [f for f in facts if f.quantity in ("focal_length", "distance", "extension", "object_size", "image_size")]
    marks = {i.word for i in items if i.kind == "mark"}
    return fact.quantity == "focal_length" and len(small) == 2 and "EXTENSION" in marks and marks.isdisjoint(("VERSUS", "OR")) and all(f.quantity == "focal_length" and (f is fact or "lens" in f.said.lower()) for f in small)
