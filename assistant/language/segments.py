"""Segments: a question cut at its commas and sentence ends, and whose each quantity is.

Who a distance or a power belongs to ("the key at 5 feet, the fill at 8") is settled here,
by where the light's name stands among the quantities, and nowhere else.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.records import record

LIGHT_QUANTITIES = {"power_pair", "guide_number", "length", "power", "share", "count", "energy", "stops", "modifier", "length_range", "guide_number_pair"}
_BREAKS = {"COMMA", "END", "Q", "COLON"}
ROLES = frozenset({"role", "named"})


@record
class Segment:
    """The items between two breaks; `sentence` counts ends, `asked` is true before a "?"."""

    items: tuple[Item, ...]
    sentence: int
    asked: bool


def cut(items: Sequence[Item]) -> list[Segment]:
    """Segments in order, glue words left out."""
    out: list[Segment] = []
    run: list[Item] = []
    sentence = 0
    for item in items:
        if item.kind != "mark" or item.word not in _BREAKS:
            if item.kind != "glue":
                run.append(item)
            continue
        if item.word == "COLON" and any(is_role(i) for i in run) and not any(i.kind in LIGHT_QUANTITIES for i in run):
            continue
        if item.word == "Q" and not run and out:
            out[-1] = Segment(out[-1].items, out[-1].sentence, True)
        elif run or item.word == "Q":
            out.append(Segment(tuple(run), sentence, item.word == "Q"))
        run = []
        sentence += item.word in ("END", "Q")
    if run:
        out.append(Segment(tuple(run), sentence, False))
    return out


def is_role(item: Item) -> bool:
    """A word that names a light."""
    return item.kind in ROLES


def owners(segments: Sequence[Segment], text: str = "") -> dict[int, str]:
    """Start of a quantity -> whose it is; quantities of no named light are not in it."""
    found: dict[int, str] = {}
    current, sentence = "", -1
    if ROLES.isdisjoint([i.kind for s in segments for i in s.items]):
        return found
    spoken_of = ""
    for segment in segments:
        if segment.sentence != sentence and any(is_role(i) for i in segment.items):
            current = ""
        if segment.sentence != sentence:
            if spoken_of and segment.items and _goes_on_of_it(text, segment.items[0].start):
                current = spoken_of  # "the rim is a stop over the key. It has a guide number of 30 m": the rim has
            spoken_of = ""
        named = [i for n, i in enumerate(segment.items) if is_role(i) and not _is_reference(segment.items, n)]
        wished = next((i.word for i in named if _WISHED.search(text[max(0, i.start - 32) : i.start])), "")
        spoken_of = wished or spoken_of or (named[0].word if named else "")
        sentence = segment.sentence
        current = _own(segment.items, current, found)
    return found


_WISHED = Pattern(r"\b(?:want|wants|wanted|like|need|needs|add|adding|hang|put|after|going to have|set up)(?: (?:to|have|get|put|add|hang))*(?: (?:the|a|an|my|some|another))+ $", re.I)
"""Right before the light that a sentence is about, whatever others it names: "key reads f/8, and I'd like the hair light a stop over that"."""
_IT_BEFORE = Pattern(r"[.;!?]\s+(?:it|its|it's)\b[^.?!]{0,24}$", re.I)
_IT_NEXT = Pattern(r"(?:it|its|it's)\b", re.I)


def _goes_on_of_it(text: str, start: int) -> bool:
    """Whether a new sentence, whose first item begins there, goes on of what the one before was about."""
    return _IT_BEFORE.search(text[max(0, start - 30) : start]) is not None or _IT_NEXT.match(text, start) is not None


def _own(items: Sequence[Item], current: str, found: dict[int, str]) -> str:
    places = [n for n, item in enumerate(items) if item.kind in ROLES and not _is_reference(items, n)]
    if not places:
        for place, item in enumerate(items):
            if item.kind in LIGHT_QUANTITIES and (current or _of_everybody(items, place)):
                found[item.start] = "both" if current == "both" or _of_everybody(items, place) else current
        return current
    joined = len(places) > 1 and any(i.kind == "mark" and i.word == "AND" for i in items[places[0] : places[-1]])
    if joined and not any(i.kind in LIGHT_QUANTITIES or i.kind == "aperture" for i in items):
        return "both"  # "main and fill are the same, …": what follows is of both
    claimed = 0
    at = {item.start: place for place, item in reversed(list(enumerate(items)))}
    for which, place in enumerate(places):
        stop = places[which + 1] if which + 1 < len(places) else len(items)
        after = [i for i in items[place + 1 : stop] if i.kind in LIGHT_QUANTITIES]
        before = [i for i in items[claimed:place] if i.kind in LIGHT_QUANTITIES]
        name = items[place].word
        trailing = place > 0 and items[place - 1].kind == "mark" and items[place - 1].word in ("FOR", "A") or (bool(before) and not after)
        if before and before[0].kind == "count" and not trailing:
            for item in before[1:]:
                found[item.start] = "both"  # "two flashes at full power, the key at 6 feet"
            before = []
        mine = before if trailing and before else (before if which == 0 and not current else []) + after
        if trailing and before and which == len(places) - 1:
            mine = before + after
        for item in mine:
            found[item.start] = "both" if _of_everybody(items, at[item.start]) else name
        if mine:
            claimed = max(at[i.start] for i in mine) + 1
    return items[places[-1]].word


def _is_reference(items: Sequence[Item], place: int) -> bool:
    """A light named only to be compared with: "under the key", "over key", "than the fill"."""
    for back in range(place - 1, max(-1, place - 4), -1):
        item = items[back]
        if item.kind == "cue" and item.word in ("less", "more"):
            return True
        if item.kind in LIGHT_QUANTITIES | {"aperture", "role", "named"}:
            return False
    return False


def _of_everybody(items: Sequence[Item], place: int) -> bool:
    """"both at 8 feet", "full power each": said of all lights."""
    before = False
    for earlier in reversed(items[max(0, place - 6) : place]):
        if earlier.kind in LIGHT_QUANTITIES or is_role(earlier):
            break
        before = before or (earlier.kind == "mark" and earlier.word in ("BOTH", "EACH"))
    after = any(i.kind == "mark" and i.word == "EACH" for i in items[place + 1 : place + 3]) \
        or (place + 1 < len(items) and items[place + 1].kind == "mark" and items[place + 1].word == "BOTH" and not any(i.kind in LIGHT_QUANTITIES for i in items[place + 2 :]))
    return before or after
