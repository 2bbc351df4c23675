"""The tokens and phrases of a parsed question become its items, each by the reader that is named for it."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from assistant.language.items import Item
from assistant.language.length_items import LENGTHS
from assistant.language.parsing import Node, Part
from assistant.language.setting_items import SETTINGS
from assistant.language.tokens import Token
from assistant.records import replace

BUILDERS: dict[str, Callable[[Node], Item]] = {**LENGTHS, **SETTINGS}
_TOKEN_KINDS = {"CUE": "cue", "ROLE": "role", "NAMED": "named", "MODIFIER": "modifier", "CAMERA_FILTER": "camera_filter",
                "COUNTED": "noun", "GLUE": "glue", "LINK": "link", "WORD": "word", "ANOTHER": "cue", "LEN": "unit_name", "METER": "unit_name", "MM": "unit_name"}
"""All others are marks."""
_UNIT_NAMES = {"METER": "m", "MM": "mm"}
_NAMES = {"guide": "guide_number", "guide_after": "guide_number", "film_speed": "film_speed", "iso": "film_speed", "aperture": "aperture", "f": "aperture",
          "power": "power", "shutter": "shutter", "sync": "sync", "distance": "distance", "ratio_word": "ratio", "factor": "factor",
          "nd": "nd", "mag": "magnification", "focal": "focal_length", "evw": "exposure_value", "stop": "stops", "joule": "energy",
          "speed_word": "speed", "meter": "meter", "degree_word": "degrees"}
SCALE_END = 1e9
"""Nothing a photographer measures is beyond this, or nearer to nothing than one part of it."""


def build(parts: Sequence[Part]) -> list[Item]:
    """The items of a parsed question, in order."""
    items: list[Item] = []
    for part in parts:
        if isinstance(part, Node):
            items.append(_from_node(part))
            continue
        kind, word = _TOKEN_KINDS.get(part.type, "mark"), part.type
        if part.type == "ANOTHER":
            word = "another_length"
        elif kind == "unit_name":
            word = _UNIT_NAMES.get(part.type) or str(part.value)
        elif kind != "mark":
            word = str(part.value)
        items.append(Item(kind, part.start, part.end, word=word))
    return items


def _from_node(node: Node) -> Item:
    if node.name == "quantity_name":
        token = node.children[0]
        assert isinstance(token, Token)
        if token.type == "LEN":
            return Item("unit_name", token.start, token.end, word=str(token.value))
        return Item("name", token.start, token.end, word=_NAMES[token.type.lower()], unit=token.type)
    item = BUILDERS[node.name](node)
    size = abs(item.value)
    fits = item.kind == "number" or size == 0 or 1 / SCALE_END <= size <= SCALE_END or not math.isfinite(size)
    return item if fits or item.bad else replace(item, bad="that number is beyond any scale")
