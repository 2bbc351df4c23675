"""Which light a word names: "the other one behind her", "one at full and one at half", "that little head".

What looks like the name of another light may only say more of one that has a name already.
"""

from __future__ import annotations

import re

from assistant.language.items import Item
from assistant.language.segments import is_role
from assistant.patterns import Pattern
from assistant.records import replace


def called_by_what_they_are(items: list[Item], text: str) -> list[Item]:
    """The items with every light called by what it is."""
    return _said_of_it(_one_and_one(_behind(items, text), text), text)


_BEHIND = Pattern(r"\b(?:the )?(?:other|second)(?: one| flash| light| head)?\b[^.,;?\d]{0,20}\bbehind (?:her|him|them|the (?:subject|model|sitter|couple|bride|groom|group|dancer|child|kid|girl|boy|man|woman))\b", re.IGNORECASE)


def _behind(items: list[Item], text: str) -> list[Item]:
    """"the other one behind her": a rim light, that adds nothing to the face."""
    found = _BEHIND.search(text)
    if found is None:
        return items
    return [replace(i, kind="role", word="rim") if is_role(i) and i.word == "b" else i for i in items]


def _one_and_one(items: list[Item], text: str) -> list[Item]:
    """"one at full and one at half": two lights, the first and the second."""
    ones = [i for i in items if i.kind == "named" and i.word == "a" and text[i.start : i.end].lower().startswith("one")]
    if len(ones) < 2 or any(is_role(i) and i.word == "b" for i in items):
        return items
    letters = {i.start: letter for i, letter in zip(ones, "abc")}
    return [replace(i, word=letters[i.start]) if i.start in letters and i in ones else i for i in items]


_SIZES = frozenset({"big", "small"})
_WHAT_IT_IS = Pattern(r"(?:\b(?:is|are|be|have|has|got|use|using|of|with|as|from|own|brought)|'s|'ve)\s+(?:just |only )?(?:an?|my|the|that|this|one)\s*$|\b(?:that|this|same|it's an?|is an?)\s*$", re.I)


def _said_of_it(items: list[Item], text: str) -> list[Item]:
    """"for the hair light I've a little gun", "that little head": what the light is like, when no other is named by its size."""
    sizes = {i.word for i in items if i.kind == "named" and i.word in _SIZES}
    if len(sizes) != 1:
        return items
    return [replace(i, kind="glue", word="glue") if i.kind == "named" and i.word in sizes and _after_a_role(i, items) and _WHAT_IT_IS.search(text[: i.start]) else i for i in items]


def _after_a_role(item: Item, items: list[Item]) -> bool:
    before = [i for i in items if i.start < item.start and (is_role(i) or i.kind == "guide_number")]
    return bool(before) and before[-1].kind == "role"
