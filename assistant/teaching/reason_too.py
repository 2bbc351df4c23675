"""A figure and its reason asked in one breath: "what f-number is that, and why is a small hole a big number?".

The figure is what is worked out; the reason is explained beside it. A reason that has figures of
its own, or is asked of a thing that went wrong, stays with the question.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query

_WHY = Pattern(r"(?:(?<=[.?!,;:])|(?<=\s)|^)\s*(?:(?:and|but|also|oh|then|so)[\s,]+){0,2}\b(?:why|how come)\b(?:(?!,? (?:and|but) (?:what|which|how|whats)\b)[^.?!])*[.?!]*")
_JOIN = Pattern(r"^(?:and|but|also|oh|then|so)[\s,]+", re.I)
_ITS_OWN = Pattern(r"\d|\b(?:not|n't|wrong|one|two|three|four|five|six|eight|eleven|sixteen)\b|n't\b")
_ASKED = Pattern(r"\b(?:what|whats|which|how (?:many|much|far|close|near|deep|wide|long|big|fast|strong|bright))\b")
_FIGURE = Pattern(r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|sixteen|twenty|thirty|forty|fifty|sixty|eighty|ninety|hundred|half|quarter)\b")
_LONGEST = 1000


def parted(text: str) -> tuple[str, str]:
    """The question for a figure and, apart, the why; the whole text and nothing where there are not both.

    >>> parted("The hole is 9 mm, the lens 50. What f-number is that? And why is a small hole a big number?")
    ('The hole is 9 mm, the lens 50. What f-number is that?', 'And why is a small hole a big number?')
    >>> parted("Why is my flash weaker at 1/125?")
    ('Why is my flash weaker at 1/125?', '')
    """
    lower = text.lower()
    found = _WHY.search(lower) if len(text) <= _LONGEST else None
    if found is None or len(lower) != len(text):
        return text, ""
    why, rest = text[found.start() : found.end()].strip(), f"{text[: found.start()].rstrip(' ,;')} {text[found.end() :]}".strip()
    both = not _ITS_OWN.search(why.lower()) and _ASKED.search(rest.lower()) and _FIGURE.search(rest.lower())
    return (rest, why) if both else (text, "")


def worth_a_figure(query: Query) -> bool:
    """Whether what is left without the why asks a figure of figures."""
    return bool(query.asks) and not query.claim and any(f.origin == "said" and f.quantity != "number" and not f.bad for f in query.facts)


def reason(why: str, whole: str) -> str:
    """What the glossary says to the why, by itself or in the words of the whole question, to stand beside the figure; empty where it says nothing."""
    from assistant.teaching.glossary import explain

    term = explain(_JOIN.sub("", why)) or explain(whole)
    return f"{term.text} ({term.source})" if term else ""
