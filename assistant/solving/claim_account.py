"""Whether a general verdict accounts for every figure that is said: a rule that leaves one out judges another claim.

"Two sheets, each lets half the light through, that is two stops" is no claim that half the light is two stops:
the number of sheets is a figure too. Such a claim is for what computes with all of its figures, else for nobody.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.claim_words import compared_with, plain, terms
from assistant.solving.solution import Solution

_FIGURE = Pattern(r"(?<![\w.])\d[\d.]*(?:/\d+)?|\b(?:two|three|four|five|six|seven|eight|nine|ten|twelve|sixteen)\b(?! (?:fiftieth|hundred|thousand))|\b(?:half|third|thirds|quarter|eighth|twice|thrice)\b")
_ENERGY = Pattern(r"^\s?(?:ws|j|joules?|watt)\b")
_MINE = Pattern(r"\b(?:mine|my (?:gn|guide number|flash|one|gun))(?:'s| is| has| of| being)?(?: an?| about| gn| guide number| at)* ?$")
_SPEED = Pattern(r"\b(?:iso|asa) ?$")


def all_in_terms(said: str) -> bool:
    """Whether every figure of a rule of thumb stands in one of its terms.

    >>> all_in_terms("half the light through, twice, is two stops"), all_in_terms("half the light is two stops")
    (False, True)
    """
    found = terms(said)
    line = plain(said)
    spans = [(t.start, t.end) for t in found] + compared_with(line)
    return not any(_bears(line, m.start(), m.end(), m.group(), len(found)) for m in _FIGURE.finditer(line) if not any(a < m.end() and m.start() < b for a, b in spans))


def _bears(line: str, start: int, end: int, figure: str, many: int) -> bool:
    """A figure outside the terms that may change the verdict: none is a time told beside, an energy, one's own guide number, the speed of the film that a lone term is set against."""
    if figure.startswith("1/") or _ENERGY.match(line[end:]) or _MINE.search(line[:start]):
        return False
    return not (_SPEED.search(line[:start]) and (many == 1 or figure == "100"))


def all_in_rows(said: str, hears: tuple[str, ...]) -> bool:
    """Whether a belief names every figure that is said: what it does not name it cannot have weighed."""
    spans = [m.span() for words in hears if not words.startswith("^") for m in patterns.finditer(words, said)]
    figures = [m for m in _FIGURE.finditer(said) if not m.group().startswith("1/") and not _ENERGY.match(said[m.end() :]) and m.group() not in ("half", "quarter", "eighth", "third")]
    return all(any(a < m.end() and m.start() < b for a, b in spans) for m in figures)


_SO_MANY_OF = Pattern(r"\s+(?:(?:identical|equal|such|[\w./]+-stop|of (?:the|those|them))\s+)*(?:\.?\d|nds?\b|filters?\b|sheets?\b|layers?\b|nets?\b|scrims?\b|silks?\b|cloths?\b|gels?\b|diffusers?\b|screens?\b|grids?\b|tissues?\b|flash(?:es)?\b|heads?\b|strobes?\b|lights?\b|pops?\b)")
_AGAINST = Pattern(r"\b(?:over|than|against|from|versus|vs|of)\s+(?:just |only )?$")
_ENDS = Pattern(r"\s*(?:[,.;?!]|$)")


def left_uncounted(said: Query, found: Solution) -> bool:
    """"two ND 0.3 are one stop?", "eight flashes are two stops over two?": a verdict that has not counted how many there are."""
    text, places = said.text.lower(), {f.start for f in found.used}
    counts = [f for f in said.facts if f.quantity == "number" and f.origin == "said" and not f.bad and 2 <= f.value <= 16 and f.value == int(f.value) and f.start not in places]
    return any(_SO_MANY_OF.match(text, f.end) or _AGAINST.search(text[: f.start]) and _ENDS.match(text, f.end) for f in counts)
