"""Where the question of a text stands: what is asked is told apart from what is told."""

from __future__ import annotations

from assistant.patterns import Pattern

_ASKS = Pattern(r"(?:^|[.;,?!:]\s+|\b(?:so|and|then|now|but) )(?:(?:so|and|then|now|but) )*(?:(?:at|to|by|from|for|on|with)(?: (?!what|which|how)[^.;?!,]{1,24})? )?(?:what|which|how|where|when)\b")


def last_question(text: str) -> tuple[int, int] | None:
    """Where the last question begins and ends; None where no word asks.

    >>> text = "It was right at 2 m. Where now?"
    >>> text[slice(*last_question(text))]
    '. Where now'
    """
    lower = text.lower()
    found = list(_ASKS.finditer(lower))
    if not found:
        return None
    end = text.find("?", found[-1].end())
    return found[-1].start(), end if end >= 0 else len(text)
