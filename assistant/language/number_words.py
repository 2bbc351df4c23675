"""The words of numbers: small ones, tens, scales, and the parts of one; the written fractions."""

from __future__ import annotations

VULGAR = {"½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8)}

SMALL = {
    word: value
    for value, word in enumerate(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen"
        " seventeen eighteen nineteen".split()
    )
} | {"oh": 0, "nought": 0, "naught": 0}
TENS = {word: 10 * (n + 2) for n, word in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split())} | {"fourty": 40}
SCALES = {"hundred": 100, "thousand": 1000}
PARTS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4, "fifth": 5, "fifths": 5, "sixth": 6, "sixths": 6, "twelfth": 12,
    "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10, "sixteenth": 16, "sixteenths": 16, "fifteenth": 15, "thirtieth": 30,
    "sixtieth": 60, "hundredth": 100, "thousandth": 1000, "twentieth": 20, "fortieth": 40, "fiftieth": 50, "eightieth": 80, "ninetieth": 90,
}
STOPS_SPOKEN = {
    "one": 1.0, "another": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "half": 0.5, "a half": 0.5, "one and a half": 1.5, "one and a third": 4 / 3, "one and two thirds": 5 / 3, "two and a half": 2.5,
    "a third": 1 / 3, "one third": 1 / 3, "two thirds": 2 / 3, "two-thirds": 2 / 3,
}
"""Stops in words, where the word itself was left unsaid: "the gel takes two thirds"."""
UNIT_PARTS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9}
