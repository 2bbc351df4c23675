"""Two things compared on a scale of the trade: "slide film forgives more than negative film", "X is not as soft as Y".

Which of the two has more is in the table; which way round it was said, whether more or less,
and whether it was denied are read from the sentence, so that every wording of a pair is judged alike.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern
from assistant.solving.claim_denial import denied, untagged
from assistant.solving.claim_rank_rows import RANKS, Rank
from assistant.solving.claim_rules import Verdict
from assistant.solving.claim_words import plain

_BARED = Pattern(r"\b(?:without|no) (?:an? |the |any )?(?:umbrella|brolly|soft ?box|octa\w*|diffus\w+|modifiers?|scrim|it|one|anything)\b")
_THAN = Pattern(r"\b(?:than|compared (?:to|with)|versus|vs)\b")
_FRONTED = Pattern(r"^\W*compared (?:to|with) (?P<two>[^,]+),(?P<one>.+)")
_AS = Pattern(r"(?P<not>\b(?:not|never|n't)(?: \w+){0,2}? |n't(?: \w+){0,2}? )?\b(?:just |quite |every bit |at least |nearly |anywhere near )?(?:as|so) (?P<how>[^,.;]{2,40}?)(?:\bas\b) (?P<two>.+)")
_LESS = Pattern(r"\b(?:less|fewer|worse|poorer|least|more (?:poorly|badly))\b")
_PLAIN_DIGITS = Pattern(r"\bt ?0?\.[15]\b|\b[ce]-?(?:41|6)\b|\b35 ?mm\b|\b(?:one|two|three)[- ]")


def judge_ranks(text: str) -> Verdict | None:
    """The verdict on a comparison of two kinds of thing; None where no pair of the table is compared.

    >>> judge_ranks("slide film is more forgiving than negative film").holds, judge_ranks("isn't slide film less forgiving than negative film?").holds
    (False, True)
    """
    said = _BARED.sub("bare", plain(text).strip().replace("dosen't", "doesn't"))
    bare = untagged(said)
    alike = None if _THAN.search(bare) else _AS.search(bare)
    sides = _sides(bare, alike is not None)
    if sides is None:
        return None
    one, two, how = sides
    for row in RANKS:
        way = _way(row, how)
        order = _order(row, one, two) if way else 0
        if order and _fits(row, bare):
            holds = order * way > 0
            if alike is not None and not patterns.search(r"\bat least as\b", bare):
                holds = denied(said) and order * way < 0
            elif denied(said):
                holds = not holds
            return Verdict(holds, 0.0, row.sentence, "")
    return None


def _sides(said: str, alike: bool) -> tuple[str, str, str] | None:
    """What is compared, what it is compared with, and the words that say how."""
    fronted = _FRONTED.search(said)
    if fronted:
        return fronted["one"], fronted["two"], fronted["one"]
    found = _AS.search(said) if alike else _THAN.search(said)
    if found is None:
        return None
    two = found["two"] if alike else said[found.end() :]
    one = said[: found.start()]
    return one, two, found["how"] if alike else one if found.group() == "than" else said


def _way(row: Rank, how: str) -> int:
    """+1 for more of the row's quality, -1 for less, 0 where it is not spoken of."""
    for sign, words in ((-1, row.down), (1, row.up)):
        found = patterns.search(words, how) if words else None
        if found:
            rest = how[: found.start()] + " " + how[found.end() :]
            return -sign if _LESS.search(rest) else sign
    return 0


def _order(row: Rank, one: str, two: str) -> int:
    """+1 where the first has more of it by the table, -1 where the second has, 0 where the pair is not this row's."""
    first, second = _side(row, one), _side(row, two)
    if first is None or second is None or first == second:
        return 0
    return 1 if first > second else -1


def _side(row: Rank, words: str) -> float | None:
    """Where one side stands on the scale: a mark, or the high or the low end; None where it is not said, or both are."""
    if row.mark is not None:
        return row.mark(words)
    high, low = patterns.search(row.high, words), patterns.search(row.low, words)
    return None if (high is None) == (low is None) else 1.0 if high else -1.0


def _fits(row: Rank, said: str) -> bool:
    """Whether the sentence is about the row's matter, and no figures of a worked case are in it."""
    if row.about and not patterns.search(row.about, said):
        return False
    return row.mark is not None or not patterns.search(r"\d", _PLAIN_DIGITS.sub(" ", said))
