"""Hearing: what was typed or spoken becomes tokens that know where they stood.

The text is folded character for character (so every token can be quoted back from where
it stood), split into raw words, numbers and marks, read for numbers, and looked up in the
lexicon. Nothing is decided here about what a number means.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.language.lexicon import Lexicon
from assistant.language.numbers import Raw, read_numbers

MAX_WORDS = 4000
"""Longer texts are cut here and the rest is reported as not read."""


@dataclass(frozen=True, slots=True)
class Token:
    """One canonical word: its terminal, its value, and where it stood in the text."""

    type: str
    value: object
    start: int
    end: int
    read_as: str = ""  # the word it was taken for, when a typing mistake was forgiven


@dataclass(frozen=True, slots=True)
class Heard:
    """A text and its tokens; `cut` is true when the text was too long to be read whole."""

    text: str
    tokens: tuple[Token, ...]
    cut: bool = False

    def quote(self, start: int, end: int) -> str:
        """The words of the person between two places."""
        return self.text[start:end]


_SAME_WIDTH = {
    "’": "'", "‘": "'", "′": "'", "ʹ": "'", "`": "'", "´": "'", "“": '"', "”": '"', "″": '"', "ʺ": '"',
    "ƒ": "f", "×": "x", "–": "-", "—": "-", "−": "-", "‐": "-", "‑": "-", "⁄": "/", "∕": "/", "÷": "/",
    "\u00a0": " ", "\u2009": " ", "\u202f": " ", "º": "°", "˚": "°", "，": ",", "？": "?", "：": ":",
    "é": "e", "è": "e", "ö": "o", "ü": "u", "∞": "∞",
}


def _fold_character(character: str) -> str:
    if character in _SAME_WIDTH:
        return _SAME_WIDTH[character]
    code = ord(character)
    if 0xFF01 <= code <= 0xFF5E:  # full-width forms of ASCII
        character = chr(code - 0xFEE0)
    if not character.isprintable():
        return " " if character != "\n" else ";"
    if code > 127 and character.isdecimal():
        return str(int(character))
    lowered = character.lower()
    return lowered if len(lowered) == 1 else character


def fold(text: str) -> str:
    """Lower case and plain marks, of the same length as the text: place n stays place n."""
    if text.isascii() and text.isprintable():
        return text.lower()
    return "".join(map(_fold_character, text))


_RAW = re.compile(
    r"""
    (?P<word>t\s?0?\.(?:5|1)\b)                      # t0.5 and t0.1, flash durations
  | (?P<fmark>f\s?[/:]\s?(?=[\d½.])|f/(?=[a-z?]))    # f/8, f:8
  | (?P<fnum>f(?=\d))                                # f8
  | (?P<format>\b(?:4\s?x\s?5|5\s?x\s?7|8\s?x\s?10|6\s?x\s?4\.5|6\s?x\s?[6789])\b(?!\s*(?:ft|feet|m\b)))
  | (?P<number>\d[\d,]*(?:\.\d+)?(?:e[+-]?\d+)?[½⅓⅔¼¾⅛⅜⅝⅞]?|\.\d+|[½⅓⅔¼¾⅛⅜⅝⅞])
  | (?P<tail>(?<=[a-z])'(?:s|m|re|ve|ll|d|t)\b)      # what's, isn't
  | (?P<word2>[a-z]+)
  | (?P<mark>[-+/%:='"?!,;.()°∞&*~<>≈√^²x#])
  | (?P<other>[^\s])
    """,
    re.VERBOSE,
)


def split(folded: str) -> list[Raw]:
    """Raw pieces of a folded text."""
    pieces: list[Raw] = []
    for found in _RAW.finditer(folded):
        kind = found.lastgroup or "other"
        if kind in ("word", "word2", "tail"):
            kind = "word"
        elif kind in ("fmark", "fnum"):
            kind = "f"
        pieces.append(Raw(kind, found.group(), found.start(), found.end()))
        if len(pieces) > MAX_WORDS:
            break
    return pieces


Names = dict[str, list[tuple[list[str], str]]]


def hear(text: str, lexicon: Lexicon, names: Names | None = None) -> Heard:
    """Tokens of a text, each with its place; `names` are the person's own names for lights.

    Sound-alikes and small typing mistakes are put right by the lexicon; the token keeps
    the word it was read as so that the reply can say so.
    """
    pieces = split(fold(text))
    cut = len(pieces) > MAX_WORDS
    numbered = read_numbers(pieces[:MAX_WORDS])
    tokens: list[Token] = []
    place = 0
    while place < len(numbered):
        piece = numbered[place]
        if piece.text in ("(", ")"):
            place += 1
            continue
        if piece.kind != "word":
            tokens.append(Token(_terminal(piece), piece.value, piece.start, piece.end))
            place += 1
            continue
        own = _own_name(numbered, place, names) if names else None
        if own:
            tokens.append(Token("NAMED", own[0], piece.start, numbered[own[1] - 1].end))
            place = own[1]
            continue
        entry = lexicon.longest(numbered, place)
        last = numbered[place + entry.length - 1]
        tokens.append(Token(entry.terminal, entry.value, piece.start, last.end, entry.read_as))
        place += entry.length
    return Heard(text, tuple(_settle(tokens)), cut)


def _own_name(pieces: list[Raw], place: int, names: Names) -> tuple[str, int] | None:
    for rest, name in names.get(pieces[place].text, ()):
        stop = place + 1 + len(rest)
        if [p.text for p in pieces[place + 1 : stop]] == rest:
            return name, stop
    return None


_NO_INCHES = {"LEN", "METER", "ISO", "FILM", "GUIDE", "STOP", "COUNTED", "PERCENT", "PERCENT_WORD", "SEC", "MM", "JOULE",
              "TIMES", "POWER", "POP", "PAIR", "FOOT_MARK", "SPEED_WORD", "FILM_SPEED", "DIN", "EVW", "FACTOR", "SLASH"}


def _settle(tokens: list[Token]) -> list[Token]:
    """Marks that depend on their neighbours: hyphens, signs, and the inches of "five foot six"."""
    out: list[Token] = []
    for place, token in enumerate(tokens):
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        if token.type == "DASH":
            token = _dash(tokens, place) or token
            if token.type == "JOINED":
                continue
        out.append(token)
        if _spoken_inches(tokens, place, after):
            out.append(Token("INCH_MARK", "in", token.end, token.end))
    return out


def _dash(tokens: list[Token], place: int) -> Token | None:
    token = tokens[place]
    before = tokens[place - 1] if place else None
    after = tokens[place + 1] if place + 1 < len(tokens) else None
    touches_before = before is not None and before.end == token.start
    touches_after = after is not None and after.start == token.end
    numeric = after is not None and after.type in ("NUM", "FRAC", "SPEED", "F")
    if touches_before and touches_after and before is not None:
        if numeric and before.type in ("NUM", "FRAC"):
            return None
        if numeric and before.type in ("EQ", "COLON"):
            return Token("SIGN", "-", token.start, token.end)
        return Token("JOINED", "-", token.start, token.end)
    if touches_after and numeric:
        return Token("SIGN", "-", token.start, token.end)
    if numeric and before is not None and before.type in ("EQ", "LINK", "ISO", "GUIDE"):
        return Token("SIGN", "-", token.start, token.end)
    if numeric and before is not None and before.type in ("NUM", "FRAC"):
        return None
    return Token("COMMA", "-", token.start, token.end)


def _spoken_inches(tokens: list[Token], place: int, after: Token | None) -> bool:
    """"five foot six": a number under twelve right after feet, with no unit of its own."""
    if place < 2 or tokens[place].type != "NUM" or tokens[place - 1].value != "ft" or tokens[place - 2].type != "NUM":
        return False
    value = getattr(tokens[place].value, "value", 99.0)
    joined = after is not None and after.type in _NO_INCHES | {"INCH_MARK", "IN"}
    is_inch_unit = after is not None and after.value == "in" and after.type == "LEN"
    return value < 12 and not joined and not is_inch_unit


_MARKS = {
    ",": "COMMA", ";": "END", ".": "END", "!": "END", "?": "Q", ":": "COLON", "=": "EQ", "+": "PLUS",
    "-": "DASH", "/": "SLASH", "%": "PERCENT", "'": "FOOT_MARK", '"': "INCH_MARK", "°": "DEGREE",
    "&": "AND", "*": "TIMES", "x": "TIMES", "~": "ABOUT", "≈": "ABOUT", "√": "ROOT",
}


def _terminal(piece: Raw) -> str:
    if piece.kind == "mark":
        return _MARKS.get(piece.text, "OTHER")
    return {"f": "F", "format": "FORMAT", "other": "OTHER"}.get(piece.kind, piece.kind)
