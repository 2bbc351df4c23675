"""Slips of the fingers, put right in the text: so that every rule reads the word that was meant, and not only the one that looks words up."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from assistant.language.lexicon import Lexicon, is_slip
from assistant.language.well_spelt import PATTERN_WORDS, WELL_SPELT
from assistant.patterns import Pattern

_WORD = Pattern(r"(?<![\w/'’-])[A-Za-z][a-z]{4,13}(?![\w’]|'(?!s\b))")


@lru_cache(maxsize=1)
def _by_letters() -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for word in PATTERN_WORDS:
        letters = "".join(sorted(word))
        found[letters] = (*found.get(letters, ()), word)
    return found


def _letters_turned(typed: str) -> str:
    """The word of which two neighbouring letters were typed the wrong way about; nothing where it is none of ours.

    >>> _letters_turned("exaclty"), _letters_turned("exactly"), _letters_turned("trails")
    ('exactly', '', '')
    """
    near = [word for word in _by_letters().get("".join(sorted(typed)), ()) if word != typed and is_slip(typed, word)]
    return near[0] if len(near) == 1 else ""


def put_right_slips(text: str, lexicon: Lexicon, names: Sequence[str] = ()) -> tuple[str, tuple[tuple[str, str], ...]]:
    """The text with each mistyped word as the one that was meant, and the pairs of them; names of lights stay as they are."""
    found: dict[str, str] = {}
    for part in text.split():
        if part not in lexicon.typed_right:
            found.update(_slips_in(part, lexicon))
    if found and names:
        own = {word for name in names for word in name.lower().split()}
        found = {word: meant for word, meant in found.items() if word.lower() not in own}
    if not found:
        return text, ()
    return re.sub(_WORD.pattern, lambda match: found.get(match[0], match[0]), text), tuple(found.items())


MOST_KEPT = 8000
"""Parts of texts known to be typed right: people say the same words again and again."""


def _slips_in(part: str, lexicon: Lexicon) -> dict[str, str]:
    """The mistyped words of what stands between two spaces; where there are none, that is kept."""
    found: dict[str, str] = {}
    for word in _WORD.findall(part):
        low = word.lower()
        meant = low if low in lexicon.words or low in WELL_SPELT else _letters_turned(low) or lexicon.put_right(low)
        if meant != low:
            found[word] = meant
    if not found:
        if len(lexicon.typed_right) >= MOST_KEPT:
            lexicon.typed_right.clear()
        lexicon.typed_right.add(part)
    return found
