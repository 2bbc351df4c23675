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
                "COUNTED": "noun", "GLUE": "glue", "LINK": "link", "WORD": "word"}
_NAMES = {"guide": "guide_number", "guide_after": "guide_number", "film_speed": "film_speed", "iso": "film_speed", "aperture": "aperture", "f": "aperture",
          "power": "power", "shutter": "shutter", "sync": "sync", "distance": "distance", "ratio_word": "ratio", "factor": "factor",
          "nd": "nd", "mag": "magnification", "focal": "focal_length", "evw": "exposure_value", "stop": "stops", "joule": "energy",
          "speed_word": "speed", "meter": "meter", "degree_word": "degrees"}


def build(parts: Sequence[Part]) -> list[Item]:
    """The items of a parsed question, in order."""
    return [_from_node(p) if isinstance(p, Node) else _from_token(p) for p in parts]


def _from_node(node: Node) -> Item:
    if node.name == "quantity_name":
        token = node.children[0]
        assert isinstance(token, Token)
        if token.type == "LEN":
            return Item("unit_name", token.start, token.end, word=str(token.value))
        return Item("name", token.start, token.end, word=_NAMES[token.type.lower()], unit=token.type)
    return _within_reason(BUILDERS[node.name](node))


SCALE_END = 1e9
"""Nothing a photographer measures is beyond this, or nearer to nothing than one part of it."""


def _within_reason(item: Item) -> Item:
    """The item, or what is wrong with it when no scale reaches so far."""
    size = abs(item.value)
    fits = item.kind == "number" or not math.isfinite(size) or size == 0 or 1 / SCALE_END <= size <= SCALE_END
    return item if fits or item.bad else replace(item, bad="that number is beyond any scale")


def _from_token(token: Token) -> Item:
    kind = _TOKEN_KINDS.get(token.type)
    if token.type == "ANOTHER":
        return Item("cue", token.start, token.end, word="another_length")
    if kind:
        return Item(kind, token.start, token.end, word=str(token.value))
    if token.type in ("LEN", "METER", "MM"):
        return Item("unit_name", token.start, token.end, word={"METER": "m", "MM": "mm"}.get(token.type, str(token.value)))
    return Item("mark", token.start, token.end, word=token.type)
