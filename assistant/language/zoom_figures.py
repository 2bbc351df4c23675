"""The figures of a zoom head told apart: which is a setting, which a guide number, and which go together.

"GN 28 at 35 mm and 50 at 85" · "at its 24 setting the book quotes GN 28, zoomed to 85 it quotes 50"
A setting and its guide number stand side by side, one pair after another, always in the same order.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import record, replace
from assistant.units import LENGTH

Row = tuple[int, int, float, float]
"""Where a pair begins and ends, its guide number and its setting in millimetres."""

_FIGURE = Pattern(r"(?<![\d./])\d+(?:\.\d+)?(?![\d/]|\.\d|\s*%)")
_OTHERS_BEFORE = Pattern(r"(?:\bf\W?\s?|\biso\s*|\basa\s*|1/)$", re.I)
_OTHERS_AFTER = Pattern(r"\s*-?\s*(?:asa|iso|film|speed|neg|stops?|s\b|sec|%|x\b)", re.I)
_SETTING_AFTER = Pattern(r"\s*-?\s*(?:(?:mm|mil|millimet\w+)\b|(?:setting|position|mark|end|zoom)\b)", re.I)
_GUIDE_AFTER = Pattern(r"\s*-?\s*(?:(?:in |\()?(?:m|ft|feet|foot|met(?:re|er)s?)|(?:guide|gn)(?! (?:(?:number|no\.?|is|of) )*\d))\b", re.I)
_GUIDE_BEFORE = Pattern(r"\b(?:gn|guide(?: number| no\.?)?)(?: is| of|'s|:| =)*\s*(?:only |just |about )?$", re.I)
_SETTING_BEFORE = Pattern(r"(?:\b(?:at|to|on|for|with)(?: (?:the|its|my|a|head|reflector|zoom))*(?: at)?|\bzoom(?:ed)?(?: in| out| back)?(?: to| at)?|@|\()\s*(?:the )?$", re.I)
_SAYS_BEFORE = Pattern(r"(?:\b(?:reads?|says?|quotes?|gives?|lists?|shows?|claims?|promises|is|it's|its|has|an?|only|just|rises to|drops to|falls to|becomes)|=|:|->)\s*$", re.I)
_APART = 70
"""Letters between two figures beyond which they do not go together."""


@record
class Figure:
    """A number of the text: what it is by the words beside it, "setting", "guide" or nothing; sure where its unit or its name says so."""

    start: int
    end: int
    value: float
    kind: str
    sure: bool


def _kind(text: str, start: int, end: int) -> tuple[str, bool]:
    before, after = text[max(0, start - 30) : start], text[end : end + 20]
    if _SETTING_AFTER.match(after):
        return "setting", True
    if _GUIDE_AFTER.match(after) or _GUIDE_BEFORE.search(before):
        return "guide", True
    if _SETTING_BEFORE.search(before):
        return "setting", False
    return ("guide", False) if _SAYS_BEFORE.search(before) else ("", False)


def figures(facts: Sequence[Fact], text: str) -> list[Figure]:
    """The numbers that may be settings or guide numbers, in digits and in words, in the order said."""
    found = []
    for match in _FIGURE.finditer(text):
        if not _OTHERS_BEFORE.search(text[max(0, match.start() - 5) : match.start()]) and not _OTHERS_AFTER.match(text[match.end() : match.end() + 10]):
            found.append(Figure(match.start(), match.end(), float(match.group()), *_kind(text, match.start(), match.end())))
    return sorted([*found, *_spoken(facts, text)], key=lambda figure: figure.start)


_PLAIN = {"number": 1.0, "guide_number": 1.0, "focal_length": 0.001, "zoom": 1.0}
_WORDS = Pattern(r"(?:(?:an? |one )?(?:hundred|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|one|two|three|four|five|six|seven|eight|nine|and|point)[\s-]*)+", re.I)


def _spoken(facts: Sequence[Fact], text: str) -> list[Figure]:
    """Numbers in words, that the reading has already understood."""
    found = []
    for fact in facts:
        scale = LENGTH.get(fact.unit, 0.0) if fact.quantity in ("distance", "path", "move", "camera_distance") else _PLAIN.get(fact.quantity, 0.0)
        words = None if any(c.isdigit() for c in fact.said) else _WORDS.search(fact.said)
        if words is not None and scale:
            start = fact.start + words.start()
            end = fact.start + len(fact.said[: words.end()].rstrip(" -"))
            found.append(Figure(start, end, round(fact.value / scale, 3), *_kind(text, start, end)))
    return found


def rows(told: Sequence[Figure]) -> list[Row]:
    """The pairs of guide number and setting; none where they do not all run in one order and rise together."""
    for first in range(max(0, len(told) - 3)):
        for order in (("guide", "setting"), ("setting", "guide")):
            found = _from(told[first:], order)
            if len(found) > 1:
                return found
    return []


def _from(told: Sequence[Figure], order: tuple[str, str]) -> list[Row]:
    found: list[Row] = []
    known = 0
    for one, two in zip(told[::2], told[1::2]):
        guide, setting = (one, two) if order[0] == "guide" else (two, one)
        fits = guide.kind in ("guide", "") and (setting.kind in ("setting", "") or not setting.sure and found) and two.start - one.end < _APART
        if not fits or not 10 <= setting.value <= 300 or not 3 <= guide.value <= 400 or not _rises(found, guide.value, setting.value):
            break
        known += (guide.kind == "guide") + (setting.kind == "setting")
        found.append((one.start, two.end, guide.value, setting.value))
    return found if known >= 3 else []


def _rises(found: Sequence[Row], guide: float, setting: float) -> bool:
    """The longer the setting, the greater the guide number."""
    return all((guide - g) * (setting - s) > 0 for _, _, g, s in found)


_END = r"(?:wide|long|tele\w*|tight|narrow|in|out|right (?:in|out))"
_AT_AN_END = Pattern(rf"\s*(?:m\b|ft|feet|foot|met(?:re|er)s?)?\s*(?:(?:when |with the head |if )?(?:zoomed|racked|pulled|pushed)(?: all the way| fully| right)? {_END}|(?:at|on|for) (?:the |its )?(?:wide|long|tele\w*|tight|narrow|far)(?:est)?(?: end| setting| position)?|wide open)\b", re.I)


def at_the_ends(facts: list[Fact], text: str) -> list[Fact]:
    """"guide 25 m zoomed wide, 42 m zoomed long": a guide number for either end, where no setting is numbered."""
    told = [f for f in figures(facts, text) if _AT_AN_END.match(text[f.end :]) and 3 <= f.value <= 400]
    guides = [f for f in facts if f.quantity == "guide_number"]
    if len(told) != 2 or len(guides) not in (1, 2) or not any(g.start <= f.start < g.end for g in guides for f in told):
        return facts
    rest = [f for f in facts if not any(f.start < one.end and f.end > one.start for one in told)]
    made = [replace(guides[0], value=one.value, start=one.start, end=one.end, said=text[one.start : one.end]) for one in told]
    return sorted([*rest, *made], key=lambda fact: fact.start)
