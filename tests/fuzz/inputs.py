"""Strange inputs: corpus phrases bent and joined, soups of words and marks, letters of every script, endless lines."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path
from random import Random

from assistant.language.tables import load_tables

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "language"))
import corpus  # noqa: E402

LONG = (6_000, 20_000, 100_000, 1_000_000)
CONTROLS = "".join(map(chr, (*range(32), *range(127, 160)))) + "\u200b\u200c\u200d\u2060\ufeff\u00ad\u2028\u2029\ud800\udfff"
TURNING = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u061c"
DIGITS = ("٠١٢٣٤٥٦٧٨٩", "۰۱۲۳۴۵۶۷۸۹", "०१२३४५६७८९", "০১২৩৪৫৬৭৮৯", "๐๑๒๓๔๕๖๗๘๙", "໐໑໒໓໔໕໖໗໘໙", "０１２３４５６７８９", "𝟎𝟏𝟐𝟑𝟒𝟓𝟔𝟕𝟖𝟗", "᠐᠑᠒᠓᠔᠕᠖᠗᠘᠙", "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉", "①②③④⑤⑥⑦⑧⑨⑩", "〇一二三四五六七八九")
NUMBERS = ("1e400", "1e-400", "-1e400", "1e308", "9" * 400, "0." + "0" * 400 + "1", "0", "-0", "-1", "0.0", "1/0", "0/0", "1/1e400", "1e5", "1,000,000", "1,,2", "1.2.3", "½½", "4½/0", "³", "NaN", "inf", "∞",
           "0x1F", "1_000", "½", "1/8000", "f/0", "f/-8", "f/1e400", "iso 0", "1:0", "0:1", "f/8.0000000001", "2 1/2", "-3 1/3", "00008", "1e", "1e+", ".5", "5.", "..5", "%", "100%", "-50%", "1000%")
NESTS = ("(", "((", "[{", "“", '"', "'", "half of ", "twice the ", "not ", "from ", "no, sorry, ", "and then ", "what if ", "is it true that ", "1/", "f/", "-", "+", "minus ", "a stop under ", "the ", "<", "key ", "why ", "½", "x", "one ", "hundred ", "and ", "point ")
SCRIPTS = ((0x20, 0x7F), (0xA0, 0x250), (0x300, 0x370), (0x370, 0x400), (0x400, 0x530), (0x590, 0x700), (0x900, 0xE00), (0xE00, 0x1100), (0x2000, 0x2300), (0x2400, 0x2800), (0x3000, 0x3400), (0x4E00, 0x5000), (0xAC00, 0xAD00), (0xD800, 0xE000),
           (0xFE00, 0x10000), (0x1D400, 0x1D800), (0x1F300, 0x1F700), (0xE0000, 0xE0100))


@cache
def phrases() -> tuple[str, ...]:
    """Every phrase of the corpus and every turn of its conversations."""
    return tuple(dict.fromkeys(text for case in corpus.cases() for text in ([say for say, _ in case.turns] or [case.phrase])))


@cache
def words() -> tuple[str, ...]:
    """Every word that may begin an entry of the lexicon."""
    return tuple(sorted(load_tables().lexicon._by_first))


def strange(chance: Random) -> str:
    """One input, of a kind taken by chance."""
    return chance.choices(KINDS, WEIGHTS)[0](chance)


def _bent(chance: Random) -> str:
    """A phrase of the corpus with a few things done to it."""
    text = chance.choice(phrases())
    for _ in range(chance.randint(1, 4)):
        text = chance.choice(BENDS)(chance, text)
    return text


def _joined(chance: Random) -> str:
    """Two or three phrases in one breath."""
    return chance.choice((" ", ", ", "? ", "; ", "\n", " and ", " but ", "")).join(chance.choice(phrases()) for _ in range(chance.randint(2, 3)))


def _soup(chance: Random) -> str:
    """Words of the lexicon, numbers and marks in no order."""
    pots = (words(), words(), NUMBERS, tuple("0123456789?!,.;:/-+%'\"()=°×"), [str(chance.choice((chance.randint(0, 400), round(chance.uniform(0, 40), 1))))])
    return " ".join(chance.choice(chance.choice(pots)) for _ in range(chance.randint(1, 25)))


def _script(chance: Random) -> str:
    """Letters of any script, marks that turn the writing, controls."""
    spans = [chance.choice(SCRIPTS) for _ in range(3)]
    return "".join(chr(chance.randrange(*chance.choice(spans))) for _ in range(chance.randint(0, 60)))


def _nested(chance: Random) -> str:
    """The same thing inside itself, and a question."""
    return chance.choice(NESTS) * chance.randint(2, 300) + chance.choice(("", " ", chance.choice(phrases())))


def _long(chance: Random) -> str:
    """An endless line."""
    part = chance.choice((chance.choice("a1 .,?/-½'\"(\u202e"), chance.choice(words()) + " ", chance.choice(phrases()) + " ", chance.choice(NUMBERS) + " ", _script(chance) + " ", chance.choice(NESTS)))
    size = chance.choices(LONG, (60, 30, 9, 1))[0]
    return (part * (size // len(part) + 1))[:size]


def _put_in(chance: Random, text: str, letters: str) -> str:
    at = chance.randint(0, len(text))
    return text[:at] + letters + text[at:]


def _without(chance: Random, text: str) -> str:
    parts = text.split()
    if parts:
        del parts[chance.randrange(len(parts))]
    return " ".join(parts)


def _shuffled(chance: Random, text: str) -> str:
    parts = text.split()
    chance.shuffle(parts)
    return " ".join(parts)


def _other_number(chance: Random, text: str) -> str:
    return re.sub(r"\d+(?:\.\d+)?", lambda m: chance.choice((chance.choice(NUMBERS), m[0], str(chance.randint(0, 3000)))), text)


def _other_digits(chance: Random, text: str) -> str:
    digits = chance.choice(DIGITS)
    return re.sub(r"[0-9]", lambda m: digits[int(m[0])], text)


def _slip(chance: Random, text: str) -> str:
    at = chance.randrange(len(text)) if text else 0
    return text[:at] + chance.choice("abcdefghijklmnopqrstuvwxyz ") + text[at + chance.randint(0, 1) :]


BENDS: tuple[Callable[[Random, str], str], ...] = (
    _without, _shuffled, _other_number, _other_number, _other_digits, _slip, _slip,
    lambda chance, text: _put_in(chance, text, chance.choice(CONTROLS) * chance.randint(1, 3)),
    lambda chance, text: _put_in(chance, text, chance.choice(TURNING)),
    lambda chance, text: _put_in(chance, text, " " + chance.choice(NUMBERS) + " "),
    lambda chance, text: _put_in(chance, text, " " + chance.choice(words()) + " "),
    lambda chance, text: text.upper() if chance.random() < 0.5 else text.swapcase(),
    lambda chance, text: text + " " + text,
    lambda chance, text: text[: chance.randint(0, len(text))],
    lambda chance, text: text.replace(" ", chance.choice(("\t", "\u00a0", "\n", "", "  ", "\u3000", ", ", "-"))),
)
KINDS: tuple[Callable[[Random], str], ...] = (_bent, _joined, _soup, _script, _nested, _long)
WEIGHTS = (60, 15, 14, 7, 3.7, 0.3)
