"""A half-sentence that goes by the question's own names: "move the right chair in to 9 ft"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.set_ups import called
from assistant.solving.whose_figure import words_of_each

_WORD = re.compile(r"[a-z]{3,}(?: ones?\b)?", re.I)
"""A name may stand with "one" in the place of its noun: "the second one" of two boats."""
_LETTERS = frozenset({"a", "b"})
"""What "the second one" was taken for, before it was known whose second it is."""
SAYS_ONLY_SO = frozenset({"q", "what_if", "correction", "now"})
_IS_MOVED = Pattern(r"\b(?:mov(?:e|es|ed)|shift(?:s|ed)?|push(?:es|ed)?|pull(?:s|ed)?|bring|brings|brought|takes?|comes?|really) |\b(?:in|out|up|back|closer|nearer|further|farther) (?=to \d)", re.I)


def without_names(query: Query, last: Query) -> Query:
    """The half-sentence without what the question has named already, and without its being moved: "move the right chair in to 9 ft" after "the left chair is 7 ft from it, the right chair 10 ft"; as it is where it names nothing of that."""
    known = called(last.text.lower())
    facts = [f for f in query.facts if f.quantity != "remark"]
    if len(facts) != 1:
        return query

    def blank(found: re.Match[str]) -> str:
        in_it = facts[0].start < found.end() and found.start() < facts[0].end
        return found[0] if in_it or not known.intersection(called(found[0].lower())) else " " * len(found[0])

    text = _WORD.sub(blank, query.text)
    if text == query.text:
        return query
    unlettered = tuple(replace(f, of="") if f.of in _LETTERS else f for f in query.facts)
    return replace(query, text=_IS_MOVED.sub(lambda found: " " * len(found[0]), text), facts=unlettered, mentioned=tuple(m for m in query.mentioned if m not in _LETTERS))


def called_so(same: list[Fact], query: Query, last: Query) -> list[Fact]:
    """Of the values of the question those that stand by the name which the half-sentence tells."""
    told = sorted((f for f in last.facts if f.quantity in {g.quantity for g in same}), key=lambda f: f.start)
    words = [called(w) for w in words_of_each(last.text, told)]
    its = called(query.text.lower(), True)
    return [f for f, mine in zip(told, words) if f in same and its.intersection(mine.difference(*(w for w in words if w is not mine)))]
