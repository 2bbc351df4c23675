"""Which of the two conventions of a lighting ratio is meant: key to fill, or key and fill together to fill; the latter unless the words say otherwise."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Query

_OTHER_WAY = Pattern(r"(?:[.?!;]\s[^.?!;]*|\band (?:what(?:'s| is) |as )?(?:the |a )?)\b(?:lighting ratio|(?:plus|and|\+) (?:the )?fill to (?:the )?fill)\b")
"""Asked in a later sentence: "and as a lighting ratio?"."""


def is_key_to_fill(query: Query) -> bool:
    """Whether the ratio meant is key : fill rather than (key + fill) : fill (contract 7)."""
    text = query.text.lower().replace("-", " ").replace(":", " to ")
    plain = max(text.rfind(words) for words in ("key to fill", "key fill", "main to fill", "key  to  fill"))
    if plain >= 0 and _OTHER_WAY.search(text, plain):
        return False
    return plain >= 0 or "key_to_fill" in query.cues
