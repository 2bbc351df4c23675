"""Parts of a whole as they are told: "two thirds", "3/4", "80 per cent"."""

from __future__ import annotations

import re

A_PART = r"(?P<{0}>(?:\d{{1,2}}(?:\.\d+)?|ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety) ?(?:%|percent|per cent)|[1-9]/(?:10|[2-8])|half|(?:an?|one|two|three|four|nine)[- ](?:third|quarter|fifth|tenth)s?)"
"""A part of a whole, in per cent or as a fraction."""
_TENS = {"ten": 10, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
_TOPS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "nine": 9}
_BOTTOMS = {"third": 3, "quarter": 4, "fifth": 5, "tenth": 10}


def part_said(words: str) -> float:
    """"two thirds", "3/4", "80 %", "eighty per cent": the part of a whole that is told."""
    said = words.lower().strip()
    if said == "half":
        return 0.5
    top, _, bottom = said.replace("-", " ").replace("/", " / ").partition(" ")
    if bottom.startswith("/ "):
        return float(top) / float(bottom[2:])
    if bottom.rstrip("s") in _BOTTOMS:
        return _TOPS[top] / _BOTTOMS[bottom.rstrip("s")]
    return float(_TENS.get(top) or re.sub(r"[^\d.]", "", said)) / 100
