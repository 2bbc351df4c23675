"""The setting that a bracket goes round, as one of its frames: "f/8 first, then a stop over, then a stop under"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query

_FIRST_AFTER = Pattern(r"(?: (?:sec\w*|s|power))?,? (?:(?:as (?:the )?|to |comes? |goes |is |for the |on the )?(?:first|begin with|start(?: with)?|last|normal|straight|as metered|as is|the middle|at the end)\b(?!,? (?:a|an|one|two|half|third|frame|shot|sheet|exposure|\d)\b))| (?:then|next|finally|at last)\b", re.I)
_FIRST_BEFORE = Pattern(r"\b(?:first|second|third|last|next|then|finally|(?:frame|shot|sheet|exposure|number) (?:one|two|three|[123])|start(?:s|ing|ed)?(?: off)?|begin(?:s|ning)?|straight|normal|metered|base|middle)(?: (?:comes|goes|one|frame|shot|sheet|exposure|is|was|be|at|on|with|from|it|the))*[:,]? (?:at |on |is |with )?$", re.I)
_MARK_FIRST = Pattern(r"\b(?:first|frame one|start(?:s|ing)?|begin\w*)\b[^.?!,;]{0,14}$", re.I)
_KINDS = ("aperture", "shutter", "power")


_SEVERAL = Pattern(r"\b(?:f[- ]?stops|f[- ]?numbers|f'?s|apertures|settings|speeds|times|powers)\b", re.I)


def untold(query: Query, offsets: Sequence[float], spelled: Sequence[float]) -> tuple[int, int] | None:
    """How many frames are to be and how many of them are told one by one, where it is not all of them."""
    many = next((int(f.value) for f in query.facts if f.quantity == "count" and f.unit == "frames" and f.value > 1 and f.origin == "said"), 0)
    short = many and many != len(offsets) and tuple(offsets) == tuple(spelled) and (len(offsets) > 1 or _SEVERAL.search(query.text))
    return (many, len(offsets)) if short else None


def place(query: Query, marked: Sequence[tuple[int, float]]) -> int | None:
    """Where the setting itself is told as a frame, among the frames that lie over or under it; None where it is none."""
    named = next((found for kind in _KINDS if len(found := [f for f in query.all(kind) if f.origin == "said"]) == 1), None)
    if named is None or not marked or not all(value for _, value in marked):
        return None
    many = next((f.value for f in query.facts if f.quantity == "count" and f.unit == "frames" and f.value > 1), None)
    if many is not None and many != len(marked) + 1:
        return None
    base, first, last = named[0], min(marked)[0], max(marked)[0]
    if first < base.start < last:
        return base.start if base.quantity == "aperture" or _told_in_turn(base, query.text) else None
    if _told_in_turn(base, query.text):
        return base.start
    return base.start if many is not None and len(marked) > 1 and base.start < first and not _MARK_FIRST.search(query.text[base.end : first]) else None


def _told_in_turn(base: Fact, text: str) -> bool:
    return _FIRST_AFTER.match(text, base.end) is not None or _FIRST_BEFORE.search(text[: base.start]) is not None
