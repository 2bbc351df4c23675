"""Pieces of a text, and one piece made of several: numbers as said, fractions, spoken denominators."""

from __future__ import annotations

import math

from assistant.language.number_words import PARTS, TENS, UNIT_PARTS
from assistant.records import record


@record
class Number:
    """A number as said. `pair` is the decimal that two spoken digits may mean (5.6 for
    "five six"); `whole` and `part` are kept apart for "eight and a half"; a fraction keeps
    its `top` and `bottom`."""

    value: float
    pair: float | None = None
    whole: float | None = None
    part: float | None = None
    top: float | None = None
    bottom: float | None = None
    spoken: bool = False


@record
class Raw:
    """A piece of the folded text: a word, a number, a mark."""

    kind: str
    text: str
    start: int
    end: int
    value: object = None


POWERS_OF_TWO = {2.0**n for n in range(1, 14)}


def is_power_like(bottom: float) -> bool:
    """Whether 1/bottom is a step of a flash's power rather than of a shutter."""
    return bottom in POWERS_OF_TWO or bottom in (3.0, 5.0, 6.0, 10.0, 12.0)


def text_at(pieces: list[Raw], place: int) -> str:
    """The text of the piece at this place; nothing past the end."""
    return pieces[place].text if place < len(pieces) else ""


def kind_at(pieces: list[Raw], place: int) -> str:
    """The kind of the piece at this place; nothing past the end."""
    return pieces[place].kind if place < len(pieces) else ""


def touching(pieces: list[Raw], place: int) -> bool:
    """Whether no space stands before the piece at this place."""
    return 0 < place < len(pieces) and pieces[place - 1].end == pieces[place].start


def made(kind: str, pieces: list[Raw], place: int, stop: int, number: Number) -> tuple[Raw, int]:
    """One piece in the place of several, and where reading goes on."""
    text = " ".join([p.text for p in pieces[place:stop]]) if stop - place > 1 else pieces[place].text
    return Raw(kind, text, pieces[place].start, pieces[stop - 1].end, number), stop


def fraction(pieces: list[Raw], place: int, stop: int, top: float, bottom: float, spoken: bool = False) -> tuple[Raw, int]:
    """A fraction as a piece: a step of power (FRAC) or a shutter time (SPEED)."""
    if bottom == 0 or math.isinf(top) and math.isinf(bottom):
        return made("FRAC", pieces, place, stop, Number(math.inf, top=top, bottom=bottom))
    kind = "FRAC" if is_power_like(bottom) or top != 1 else "SPEED"
    return made(kind, pieces, place, stop, Number(top / bottom, top=top, bottom=bottom, spoken=spoken))


def past_dash(pieces: list[Raw], place: int) -> tuple[str, int]:
    """The word at this place, looking past a hyphen."""
    if text_at(pieces, place) == "-" and kind_at(pieces, place + 1) == "word":
        place += 1
    return text_at(pieces, place), place


def part_bottom(pieces: list[Raw], place: int) -> tuple[float, int] | None:
    """A spoken denominator at this place and where it ends: "sixteenth", "sixty fourth", "twenty eighth"."""
    if place >= len(pieces) or pieces[place].kind != "word":
        return None
    word = pieces[place].text
    if word in TENS and past_dash(pieces, place + 1)[0] in UNIT_PARTS:
        unit, after = past_dash(pieces, place + 1)
        if unit == "second" and TENS[word] not in (30,):
            return None
        return (float(TENS[word] + UNIT_PARTS[unit]), after + 1)
    if word in PARTS:
        return (float(PARTS[word]), place + 1)
    return None
