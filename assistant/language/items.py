"""Items: each phrase of the grammar becomes one quantity in the units of the trade.

Lengths are in metres, times in seconds, powers fractions of full; the unit that was said is
kept beside the value. A value that cannot be (a negative distance, a power above full) is
kept with the reason, so that the reply can say what was wrong.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant.language.parsing import Node
from assistant.language.pieces import Number
from assistant.language.tokens import Token
from assistant.records import record


@record
class Item:
    """One quantity, name, cue or word of a question, with its place in the text.

    kind: what it is ("length", "aperture", "cue", "role", "name", "word", …).
    word: for names, cues, roles and words: which. unit: the unit said.
    other: the second number of a range or pair. bad: why the value cannot be.
    """

    kind: str
    start: int
    end: int
    value: float = math.nan
    unit: str = ""
    word: str = ""
    other: float = math.nan
    bad: str = ""
    estimate: bool = False
    named: bool = False  # the quantity's own name was said with it


def numbers_of(node: Node) -> list[Number]:
    """The numbers of a phrase, in order."""
    return [c.value for c in node.children if isinstance(c, Token) and isinstance(c.value, Number)]


def unit_of(node: Node, default: str = "") -> str:
    """The unit of length said in a phrase."""
    for child in node.children:
        if isinstance(child, Token):
            if child.type == "LEN":
                return str(child.value)
            if child.type == "FOOT_MARK":
                return "ft"
            if child.type == "METER":
                return "m"
            if child.type == "MM":
                return "mm"
    return default


def has(node: Node, *types: str) -> bool:
    """Whether a phrase holds a token of one of these types."""
    for child in node.children:
        if isinstance(child, Token) and child.type in types:
            return True
    return False


def item_of(kind: str, node: Node, value: float, **more: object) -> Item:
    """The item of a phrase, with its place."""
    return Item(kind, node.children[0].start, node.children[-1].end, value, **more)  # type: ignore[arg-type]


def simple(kind: str, unit: str = "", scale: float = 1.0, bad_at_zero: str = "") -> Callable[[Node], Item]:
    """A reader of phrases that hold one number and mean it as it is, or so many times it."""
    def read(node: Node) -> Item:
        value = next((n.value for n in numbers_of(node)), 1.0) * scale  # "a hertz" is one
        bad = bad_at_zero if bad_at_zero and not 0 < value < math.inf else ""
        return item_of(kind, node, value, unit=unit, bad=bad, named=len(node.children) > 1)

    return read


def negative(kind: str, what: str) -> Callable[[Node], Item]:
    """A reader of phrases whose number is below nothing, where it cannot be."""
    def read(node: Node) -> Item:
        return item_of(kind, node, -numbers_of(node)[0].value, unit=unit_of(node), bad=f"{what} cannot be negative", named=True)

    return read
