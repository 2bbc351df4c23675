"""Slips of the tongue: "ten feet, no wait, eight feet" is eight feet.

The value said after the correction takes the place of the last one of its kind before it. Words
between them may only say once more what the first one was of: "back row 14 ft, sorry, back row 20 ft".
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

_SLIP = Pattern(
    r"(?:^|[\s,.;:-])(?:(?:oh |ah |er |um |uh |or )?(?:no|nope|sorry|wait|oops|i mean|i meant|actually|(?<!'d )(?<!would )rather|make (?:that|it)|scratch that|scrap that|strike that|forget that|cancel that|correction|my mistake|hang on|hold on)\b[\s,.;:-]*)+(?:(?:i|we|he|she)(?:'ve| have)? (?:just )?(?:re)?(?:metered|measured|tested|checked|timed|paced|looked)(?: (?:that|it|them|this|again|up))*[\s,.;:-]+)?"
    r"(?P<label>(?:(?:it's|its|that's|thats|it is|i've|i've got|i have|the|an|a|at|is|of|to|say)\s+)*(?:[a-z]+\s+){0,2}(?:at|is|of|to)?\s*)$", re.I)
_ASKED = Pattern(r"\b(?:what|does|do|did|will|would|which)\b[^.?!]*\bmake (?:it|that)\b", re.I)
_VALUES = frozenset({"length", "number", "guide_number", "film_speed", "aperture", "power", "share", "stops", "shutter", "time", "count", "energy", "focal_length", "velocity"})
_NUMBER_MAY_BE = frozenset({"guide_number", "film_speed", "aperture", "length", "power", "share", "stops", "energy", "shutter", "velocity", "count"})
_PLAIN = frozenset("it's its that's thats it is the a an at of to say f i've got i have plain just only straight flat simply even exactly clean bang".split())
_REACH = 5
"""Words that may stand between a value and its correction: "14 ft from the flash, no sorry"."""


def put_right(items: Sequence[Item], text: str) -> tuple[list[Item], list[range]]:
    """The items with every value that was taken back replaced by the one said instead; where the text taken back stands."""
    out: list[Item] = []
    back: list[range] = []
    slips, denials = _SLIP.may_match(text), _BUT.may_match(text)
    if not slips and not denials:
        return list(items), back
    for item in items:
        at = _taken_back(item, out, text) if slips and item.kind in _VALUES else None
        denied = _denied(item, out, text) if denials and at is None and item.kind in _VALUES else None
        if denied is not None:
            back.append(range(item.start, item.end))
            out[denied] = replace(_as_kind(item, out[denied]), start=out[denied].start, end=out[denied].end)
        elif at is None:
            out.append(item)
        else:
            back.append(range(out[at].start, item.start))
            out[at:] = [_as_kind(item, out[at])]
    return out, back


_OTHER_KIND = Pattern(r"\b(?:iso|asa|din|gn|guide|ev)\W*$", re.IGNORECASE)


_OF_ANOTHER = Pattern(r",?\s*that'?s (?:wrong|not it|not right|(?:for |of )?(?:the|my) (?:other|old|wrong|spare|big|small|little) (?:one|flash|gun|strobe|film|roll|lens|back|body|camera))\b", re.IGNORECASE)
"""Why a value is taken back: "thirty, no, that's the other one, twenty"."""


_IN_FACT_ON = Pattern(r"\b(?:i'm|i am|we're|we are|it's|there's|i've got|i have|film is|film's) actually (?:(?:on|in|using|shooting|loading|an?|with|iso|asa) )*$", re.I)
_OF_THE_METER = Pattern(r"\b(?:dial|meter|digital\w*|phone|app|set|reading|says|gave|read)\b[^.?!]{0,30}$", re.I)


def _taken_back(item: Item, before: Sequence[Item], text: str) -> int | None:
    """The place of the value that this one corrects, if it corrects any."""
    at = next((n for n in range(len(before) - 1, -1, -1) if before[n].kind in _VALUES), None)
    if at is None or not (_alike(before[at], item) or _no_speed(before[at], item, text)):
        return None
    gap = _OF_ANOTHER.sub(" ", text[before[at].end : item.start])
    slip = _SLIP.search(gap)
    if slip is None or len(gap[: slip.start()].split()) > _REACH or any(mark in gap[: slip.start()] for mark in "?!"):
        return None
    if _OTHER_KIND.search(gap[: slip.start()]):
        return None  # "10 ft, ISO correction 100": of the film, not of the feet
    if item.kind in ("film_speed", "number") and _IN_FACT_ON.search(gap) and _OF_THE_METER.search(text[: before[at].start]):
        return None  # "the dial was on 400, but I'm actually on 100": the one of the reading, the other of the film
    if _ASKED.search(gap[: slip.end()]):
        return None  # "what does that make it at ISO 100?"
    label = {word for word in slip["label"].lower().split()} - _PLAIN
    return at if label <= set(re.findall(r"[a-z']+", text[: before[at].end].lower())) else None


_NOT = Pattern(r"(?:\bnot|n't|n’t|\bnever)(?: (?!only\b|just\b|merely\b|both\b|even\b)[a-z']+){0,2} ?$", re.IGNORECASE)
_NOT_ONE = Pattern(r"(?:\bnot|n't|n’t|\bnever)(?: (?!both\b|even\b)[a-z']+){0,3} ?$", re.IGNORECASE)
"""Before a number of things, "not only one flash but two" is two all the same."""
_BUT = Pattern(r"[^.?!;:\d]{0,40}\bbut(?: (?:rather|only|just|instead|an?|the|at|on|to|by|for|of|about|it's|its))* ?", re.IGNORECASE)


def _denied(item: Item, before: Sequence[Item], text: str) -> int | None:
    """"not one stop under the key but two": the place of the value that is denied; what stands between the two is said of both."""
    at = next((n for n in range(len(before) - 1, -1, -1) if before[n].kind in _VALUES), None)
    if at is None or not _alike(before[at], item) or item.kind not in ("number", before[at].kind):
        return None
    old = before[at]
    if old.kind == "count" and item.kind == "number" and not (0 < item.value < 20 and item.value == int(item.value)):
        return None
    said = _BUT.fullmatch(text, old.end, item.start) and (_NOT_ONE if old.kind == "count" else _NOT).search(text[max(0, old.start - 30) : old.start])
    return at if said else None


def _alike(old: Item, new: Item) -> bool:
    return old.kind == new.kind or old.kind == "number" or (new.kind == "number" and old.kind in _NUMBER_MAY_BE) or (old.kind, new.kind) in (("guide_number", "length"), ("power", "share"), ("share", "power"))


def _no_speed(old: Item, new: Item, text: str) -> bool:
    """"lens board to film measures ten, no, twelve inches": the ten stood beside "film" and was no speed of it."""
    return old.kind == "film_speed" and new.kind == "length" and _MEASURES.search(text[old.start : old.end]) is not None


_MEASURES = Pattern(r"\bfilm (?:measures?|is|distance)\b", re.I)


def _as_kind(new: Item, old: Item) -> Item:
    """The new value as the kind of quantity that the old one was."""
    if new.kind == old.kind or old.kind in ("number", "film_speed"):
        return new if new.unit or not old.unit else replace(new, unit=old.unit)
    value = new.value
    if old.kind == "guide_number" and new.kind == "length":
        value = new.value / LENGTH.get(new.unit, 1.0)
    if old.kind == "shutter" and new.kind == "number" and old.value < 1:
        value = 1 / new.value if new.value >= 2 else math.nan  # "a thousandth, no, two thousand"
    if old.kind == "length" and new.kind == "number":
        value = new.value * LENGTH.get(old.unit, 1.0)
    return replace(old, value=value, unit=new.unit or old.unit, start=new.start, end=new.end, bad=new.bad)


_AS_IT_IS = Pattern(r"\b(?:now|moved?|walked|pulled|pushed|backed|dragged|shifted|carried|brought|so (?:it|that)(?:'s| is)|until it(?:'s| is))\b[^.?!\d]{0,40}$", re.I)
_ROWS = ("front", "middle", "back")


def left_behind(facts: list[Fact], text: str) -> list[Fact]:
    """"the front row used to be nine feet off, now it is eighteen": with the rows so far apart, what no longer holds is only told."""
    now = next((f for f in reversed(facts) if f.quantity == "distance" and _AS_IT_IS.search(text[: f.start])), None)
    old = [f for f in facts if f.quantity == "distance" and f.of in _ROWS and now is not None and f.start < now.start and now.of in (f.of, "")]
    if now is None or len(old) != 1 or sum(f.quantity == "distance" for f in facts) != 2:
        return facts
    return [replace(f, quantity="remark", of="", value=0.0) if f is old[0] else replace(f, of=old[0].of) if f is now else f for f in facts]
