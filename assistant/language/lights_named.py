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
    words = {i.word for i in items}
    items = _behind(items, text)
    items = _edges(items, text) if "rim" in words else items
    items = _one_and_one(_not_a_row(items, text), text) if "a" in words else items
    items = items if _LETTERS.isdisjoint(words) or _KEY_OR_FILL.isdisjoint(words) else _as_what(items, text)
    items = items if _SIZES.isdisjoint(words) else _said_of_it(items, text)
    return _all_in_all(items, text) if "scrim" in words else items


_BEHIND = Pattern(r"\b(?:the )?(?:other|second)(?: one| flash| light| head)?\b[^.,;?\d]{0,20}\bbehind (?:her|him|them|the (?:subject|model|sitter|couple|bride|groom|group|dancer|child|kid|girl|boy|man|woman))\b", re.IGNORECASE)


def _behind(items: list[Item], text: str) -> list[Item]:
    """"the other one behind her": a rim light, that adds nothing to the face."""
    found = _BEHIND.search(text)
    if found is None:
        return items
    return [replace(i, kind="role", word="rim") if is_role(i) and i.word == "b" else i for i in items]


_AN_EDGE = Pattern(r"\b(?:front|back|rear|near|nearer|nearest|far|farthest|furthest|leading|left|right|other|table|table's|its|one|the) $", re.IGNORECASE)
_OF_A_THING = Pattern(r"\s*(?:of|to|must|is to be|and the (?:back|far))\b", re.IGNORECASE)


def _edges(items: list[Item], text: str) -> list[Item]:
    """"from the front edge": where a table ends, and no light."""
    return [replace(i, kind="glue", word="glue") if i.kind == "role" and i.word == "rim" and text[i.start : i.end].lower() == "edge" and _is_an_edge(i, text) else i for i in items]


def _is_an_edge(item: Item, text: str) -> bool:
    found = _AN_EDGE.search(text[max(0, item.start - 12) : item.start])
    return found is not None and (found.group().lower() not in ("the ", "one ", "its ") or _OF_A_THING.match(text[item.end :]) is not None)


_ROW_SAID = Pattern(r"\b(?:rows?|ranks?|tiers?|lines?)\b", re.IGNORECASE)
_BESIDE_A_ROW = Pattern(r"\b(?:behind|in front of|beyond|from|than|as|to) $", re.IGNORECASE)
_LAMPS_SAID = Pattern(r"\b(?:lights|flashes|heads|lamps|guns|strobes|second (?:light|flash|head|lamp|gun))\b", re.IGNORECASE)


def _not_a_row(items: list[Item], text: str) -> list[Item]:
    """"a row 1 m behind the first": of the rows, where several lights are not spoken of."""
    if _ROW_SAID.search(text) is None or _LAMPS_SAID.search(text):
        return items
    return [replace(i, kind="glue", word="glue") if i.kind == "named" and i.word == "a" and text[i.start : i.end].lower() in ("the first", "first") and _BESIDE_A_ROW.search(text[: i.start]) else i for i in items]


_POPS_SAID = Pattern(r"\b(?:pops?|bursts?|hits)\b", re.I)


def _one_and_one(items: list[Item], text: str) -> list[Item]:
    """"one at full and one at half": two lights, the first and the second."""
    ones = [i for i in items if i.kind == "named" and i.word == "a" and text[i.start : i.end].lower().startswith("one")]
    if len(ones) == 1 and _POPS_SAID.search(text) and not any(i.kind == "named" and i not in ones for i in items):
        return [replace(i, kind="glue", word="glue") if i is ones[0] else i for i in items]  # "how many pops at 1/16 make up one at full?"
    if len(ones) < 2 or any(is_role(i) and i.word == "b" for i in items):
        return items
    letters = {i.start: letter for i, letter in zip(ones, "abc")}
    return [replace(i, word=letters[i.start]) if i.start in letters and i in ones else i for i in items]


_KEY_OR_FILL = frozenset({"key", "fill"})
_LETTERS = frozenset({"a", "b"})
_AS_WHAT = Pattern(r"[^.?!;,]{0,36}?,? ?\b(?:as|for|is|being)(?: the| a| my)? (?:key|main|fill)\b(?! ratio| to)", re.I)


def _as_what(items: list[Item], text: str) -> list[Item]:
    """"one at 5 ft as key and one at 7 ft as fill": the one is the key, the other the fill."""
    roles = [i for i in items if i.kind == "role" and i.word in _KEY_OR_FILL]
    return [_of_its_role(i, items, roles, text) if i.kind == "named" and i.word in _LETTERS else i for i in items] if roles else items


def _of_its_role(item: Item, items: list[Item], roles: list[Item], text: str) -> Item:
    role = next((r for r in roles if r.start >= item.end), None)
    if role is None or any(item.end <= i.start < role.start for i in items if i.kind == "named" and i.word in ("a", "b")) or not _AS_WHAT.fullmatch(text[item.end : role.end]):
        return item
    return replace(item, kind="role", word=role.word)


_AFTER_NET = Pattern(r"\s*(?:stops?|loss|gain|change|effect|difference|result|total|sum|light|exposure|in stops)\b", re.I)
_ALL_IN_NET = Pattern(r"(?:^|[.,;:?!])\s*(?:and |so |the |what's the |what is the )?$", re.I)


def _all_in_all(items: list[Item], text: str) -> list[Item]:
    """"net stops?", "the net change": all in all, and nothing that hangs in the light."""
    return [replace(i, kind="glue", word="glue") if i.kind == "modifier" and i.word == "scrim" and text[i.start : i.end].lower() == "net" and _AFTER_NET.match(text[i.end :]) and _ALL_IN_NET.search(text[: i.start]) else i for i in items]


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
