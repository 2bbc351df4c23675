"""Slips of the fingers, put right in the text: so that every rule reads the word that was meant, and not only the one that looks words up."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.lexicon import Lexicon
from assistant.patterns import Pattern

_WORD = Pattern(r"(?<![\w/'’-])[A-Za-z][a-z]{4,13}(?![\w'’])")


def put_right_slips(text: str, lexicon: Lexicon, names: Sequence[str] = ()) -> tuple[str, tuple[tuple[str, str], ...]]:
    """The text with each mistyped word as the one that was meant, and the pairs of them; names of lights stay as they are."""
    found: dict[str, str] = {}
    for word in dict.fromkeys(_WORD.findall(text)):
        if word.lower() in lexicon.words:
            continue
        meant = lexicon.put_right(word.lower())
        if meant != word.lower() and not any(word.lower() in name.lower().split() for name in names):
            found[word] = meant
    if not found:
        return text, ()
    return re.sub(_WORD.pattern, lambda match: found.get(match[0], match[0]), text), tuple(found.items())
