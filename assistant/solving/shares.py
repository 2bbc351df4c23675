"""Shares and multiples in words: "an eighth", "three quarters", "12.5 percent", "a tenth of a percent", "four times", "twice"."""

from __future__ import annotations

from functools import lru_cache

from assistant.patterns import Pattern
from assistant.records import record


@record
class Share:
    """So much of something, 1.0 for all of it, and where it was said."""

    value: float
    start: int
    end: int


_COUNT = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "seven": 7.0, "eight": 8.0, "nine": 9.0, "ten": 10.0,
          "eleven": 11.0, "twelve": 12.0, "fifteen": 15.0, "sixteen": 16.0, "twenty": 20.0, "thirty": 30.0, "thirty-two": 32.0, "forty": 40.0, "fifty": 50.0, "sixty": 60.0, "sixty-four": 64.0,
          "seventy": 70.0, "seventy-five": 75.0, "eighty": 80.0, "ninety": 90.0, "a hundred": 100.0}
_PART = {"half": 2.0, "halves": 2.0, "third": 3.0, "quarter": 4.0, "fourth": 4.0, "fifth": 5.0, "sixth": 6.0, "seventh": 7.0, "eighth": 8.0, "ninth": 9.0, "tenth": 10.0, "twelfth": 12.0, "sixteenth": 16.0,
         "thirty-second": 32.0, "sixty-fourth": 64.0, "hundredth": 100.0, "thousandth": 1000.0}
_NUMBER = "|".join(sorted(_COUNT, key=len, reverse=True))
_PARTS = "|".join(sorted(_PART, key=len, reverse=True))
_NO_SHARE = r"(?!s?[- ](?:(?:of )?an? )?(?:(?:full |whole )?stops?|power|seconds?|life|frame|metres?|met(?:er|re)|feet|foot|inch\w*|way|an hour)\b)(?! (?:and|plus)\b[^,.;]{0,12}\bstops?\b)"
_SHARE = Pattern(
    rf"\b(?=[\dafhostewnqd])(?:(?=(?:[\w.-]+ ){{0,6}}[\d.]*(?:%|per ?cent))(?:(?P<of>(?:an?|one|half an?) (?:tenth|fifth|quarter|third|half) of|half) (?:an? |one )?)?(?P<pct>\d{{1,6}}(?:\.\d{{1,6}})?|{_NUMBER})? ?(?:%|per ?cents?\b)"
    rf"|(?<![\d/.])(?P<top>[1-9]\d?)/(?P<bottom>[1-9]\d{{0,2}})(?:rd|th)?\b(?! ?(?:s\b|sec|power|stops?|of an? stop))"
    rf"|\b(?P<x>\d{{1,4}}(?:\.\d{{1,4}})?|{_NUMBER})(?: ?times\b| ?x\b|-?fold\b)"
    rf"|\b(?P<twice>twice|double|thrice|doubl(?:es|ed)|halv(?:es|ed)|tripl(?:es|ed)|quadrupl(?:es|ed)|quartered)\b"
    rf"|\b(?:(?P<many>\d{{1,2}}|{_NUMBER})[ -])?(?P<part>{_PARTS})s?\b{_NO_SHARE}"
    rf"|\b(?:one|1) part in (?P<in>\d{{1,4}}|{_NUMBER})\b)"
)
_AND_A_HALF = Pattern(r"\bstops? and $")
"""Before the rest of so many stops: "a stop and a half"."""
_SMALL = {"tenth": 0.1, "fifth": 0.2, "quarter": 0.25, "third": 1 / 3, "half": 0.5}
_TIMES = {"twi": 2.0, "dou": 2.0, "thr": 3.0, "hal": 0.5, "tri": 3.0, "qua": 4.0}


def _number(word: str) -> float:
    return _COUNT[word] if word in _COUNT else float(word)


@lru_cache(maxsize=16)
def shares(said: str) -> tuple[Share, ...]:
    """Every share of a text in small letters, in the order said; shares of a stop, of a power or of a second are none.

    >>> [s.value for s in shares("three quarters, not an eighth, and twice that")], [round(s.value, 4) for s in shares("a tenth of a percent or 12.5 %")]
    ([0.75, 0.125, 2.0], [0.001, 0.125])
    >>> shares("two thirds of a stop at half power for a quarter of a second")
    ()
    """
    out = []
    for found in _SHARE.finditer(said):
        value = _value(found.groupdict())
        if value > 0 and _AND_A_HALF.search(said[: found.start()]) is None:
            out.append(Share(value, found.start(), found.end()))
    return tuple(out)


def _value(kinds: dict[str, str | None]) -> float:
    if kinds["x"]:
        return _number(kinds["x"])
    if kinds["twice"]:
        return 0.25 if kinds["twice"] == "quartered" else _TIMES[kinds["twice"][:3]]
    if kinds["top"] and kinds["bottom"]:
        return float(kinds["top"]) / float(kinds["bottom"])
    if kinds["in"]:
        return 1 / _number(kinds["in"])
    if kinds["part"]:
        return (_number(kinds["many"]) if kinds["many"] else 1.0) / _PART[kinds["part"]]
    of = next((part for word, part in _SMALL.items() if word in (kinds["of"] or "").split()), 1.0)
    return of * (_number(kinds["pct"]) if kinds["pct"] else 1.0 if kinds["of"] else 0.0) / 100
