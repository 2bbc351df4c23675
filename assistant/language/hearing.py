"""Hearing: what was typed or spoken becomes tokens that know where they stood.

The text is folded character for character (so every token can be quoted back from where
it stood), split into raw words, numbers and marks, read for numbers, and looked up in the
lexicon. Nothing is decided here about what a number means.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from assistant import patterns
from assistant.language.lexicon import Entry, Lexicon, slips
from assistant.language.neighbours import UNITS, settle
from assistant.language.number_words import PARTS, SCALES, SMALL, TENS
from assistant.language.numbers import read_numbers
from assistant.language.pieces import Raw
from assistant.language.tokens import Token
from assistant.patterns import Pattern
from assistant.records import record, replace

MAX_NUMBERS = 80
MAX_WORDS = 800
"""Words, numbers and marks; longer texts are cut here and the reply says so."""


@record
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
    "µ": "u", "μ": "u", "é": "e", "è": "e", "ö": "o", "ü": "u", "∞": "∞",
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


def evenly(text: str) -> str:
    """The folded text with one space between its words."""
    folded = fold(text)
    return folded if folded.isascii() and "  " not in folded else patterns.sub(r"\s+", " ", folded)


_RAW = Pattern(
    r"""
    \s*(?:
    (?P<plain>(?:[abcdegijlmopqrstuvwxyz]|f(?!t\s?/)|n(?!o\.)|h(?!alf[\s-]peak)|k(?!m\s?/))[a-z]+)    # most words: nothing below begins so
  | (?P<wordhp>half[\s-]peak\b)                       # the time above half of the peak: t0.5
  | (?P<word>t\s?0?\.(?:5|1)\b)                      # t0.5 and t0.1, flash durations
  | (?P<wordt5>t[\s-](?:(?:nought|zero|oh)[\s-])?point[\s-]five\b)    # the same, as they are spoken
  | (?P<wordt1>t[\s-](?:(?:nought|zero|oh)[\s-])?point[\s-]one\b)
  | (?P<word1>(?:km\s?/\s?h|m\s?/\s?s|w/s|ft\s?/\s?s(?:ec)?)\b)     # speeds
  | (?P<fmark>f\s?[/:]\s?(?=-?[\d½.])|f/(?=[a-z?]))    # f/8, f:8
  | (?P<fnum>f(?=\d))                                # f8
  | (?P<format>\b(?:4\s*x\s*5|5\s*x\s*[47]|7\s*x\s*5|8\s*x\s*10|10\s*x\s*8|6\s*x\s*4\.5|6\s*x\s*[6789]|24\s*x\s*36|36\s*x\s*24)\b(?!\s*(?:ft|f(?:ee|oo)t|m\b|met|pop|flash|stop|sec|min)))
  | (?P<wordno>no\.(?=\s*(?:\d|is\b|of\b|:)))                          # guide no. 32
  | (?P<number>\d[\d,]*(?:\.\d+)?(?:e[+-]?\d+)?[½⅓⅔¼¾⅛⅜⅝⅞]?|\.\d+|[½⅓⅔¼¾⅛⅜⅝⅞])
  | (?P<tail>(?<=[a-z])'(?:s|m|re|ve|ll|d|t)\b)      # what's, isn't
  | (?P<word2>[a-z]+)
  | (?P<mark>[-+/%:='"?!,;.()°∞&*~<>≈√^²x#])
  | (?P<other>[^\s])
    )
    """,
    re.VERBOSE,
)


_KINDS = {"plain": "word", "word1": "word", "word2": "word", "tail": "word", "wordno": "word", "wordhp": "word", "wordt5": "word", "wordt1": "word", "fmark": "f", "fnum": "f"}


_PLAINLY = {"wordno": "no", "wordhp": "t05", "wordt5": "t05", "wordt1": "t01"}


def split(folded: str) -> list[Raw]:
    """Raw pieces of a folded text."""
    pieces: list[Raw] = []
    for found in _RAW.finditer(folded.rstrip()):  # so that some piece follows every space
        kind = found.lastgroup or "other"
        start, end = found.span(found.lastindex or 0)
        pieces.append(Raw("word", folded[start:end], start, end) if kind == "plain" else Raw(_KINDS.get(kind, kind), _PLAINLY.get(kind) or folded[start:end], start, end))
        if len(pieces) > MAX_WORDS:
            break
    return pieces


def _quotes(pieces: list[Raw]) -> set[int]:
    """Places of double quotes that open before a word and the ones that close them: no inches."""
    found: set[int] = set()
    opened = False
    for n, piece in enumerate(pieces):
        if piece.text != '"':
            continue
        after = pieces[n + 1] if n + 1 < len(pieces) else None
        before = pieces[n - 1] if n else None
        opens = after is not None and after.start == piece.end and (before is None or before.end < piece.start)
        if opens or opened:
            found.add(piece.start)
            opened = opens and not opened
    return found


_BRACKETS = frozenset({"(", ")"})
_NO_QUOTES: frozenset[int] = frozenset()
Names = dict[str, list[tuple[list[str], str]]]


def hear(text: str, lexicon: Lexicon, names: Names | None = None) -> Heard:
    """Tokens of a text, each with its place; `names` are the person's own names for lights.

    Sound-alikes and small typing mistakes are put right by the lexicon; the token keeps
    the word it was read as so that the reply can say so.
    """
    folded = fold(text)
    known = lexicon.words
    pieces = [_number_meant(piece) if piece.kind == "word" and 4 < len(piece.text) < 12 and piece.text not in known else piece for piece in split(folded)]
    cut = len(pieces) > MAX_WORDS
    quotes = _quotes(pieces) if '"' in folded else _NO_QUOTES
    numbered = read_numbers(pieces[:MAX_WORDS])
    counted = [place for place, piece in enumerate(numbered) if piece.kind not in ("word", "mark")] if len(numbered) > MAX_NUMBERS else []
    if len(counted) > MAX_NUMBERS:
        numbered, cut = numbered[: counted[MAX_NUMBERS]], True
    tokens: list[Token] = []
    place = 0
    while place < len(numbered):
        piece = numbered[place]
        if piece.kind == "mark":
            if piece.text not in _BRACKETS and piece.start not in quotes:
                tokens.append(Token(_MARKS.get(piece.text, "OTHER"), piece.value, piece.start, piece.end))
            place += 1
            continue
        named = _counted_name(numbered, place, lexicon) if piece.text == "one" else None
        if named:
            tokens.append(Token(named.terminal, named.value, piece.start, numbered[place + named.length - 1].end))
            place += named.length
            continue
        if piece.kind != "word":
            tokens.append(Token(_TERMINALS.get(piece.kind, piece.kind), patterns.sub(r"\s", "", piece.text) if piece.kind == "format" else piece.value, piece.start, piece.end))
            place += 1
            continue
        own = _own_name(numbered, place, names) if names else None
        if own:
            tokens.append(Token("NAMED", own[0], piece.start, numbered[own[1] - 1].end))
            place = own[1]
            continue
        entry = place and piece.text in _MAY_BE_COUNTED and numbered[place - 1].kind in _COUNTING and _counted_stops(numbered, place) or lexicon.longest(numbered, place)
        last = numbered[place + entry.length - 1] if entry.length > 1 else piece
        if entry.length > 1 and entry.terminal in _ENDS_IN_NUMBER and last.kind == "NUM" and _measures(numbered, place + entry.length, lexicon, entry.terminal):
            entry, last = lexicon.longest(numbered[: place + entry.length - 1], place), numbered[place + entry.length - 2]  # "flash three metres away" is no third flash, "the two-stop box" no two lights
        if piece.text == "second" and entry.terminal == "NAMED" and _is_of_a_speed(tokens, numbered[place + entry.length :]):
            entry = lexicon.longest(numbered[: place + 1], place)
        if entry.terminal == "FILLER":
            place += entry.length
            continue
        tokens.append(Token(entry.terminal, entry.value, piece.start, last.end, entry.read_as))
        place += entry.length
    return Heard(text, tuple(settle(_spoken_formats(tokens, text), text)), cut)


_BURSTS = frozenset({"lasts", "lasting", "duration", "burst", "length"})


def _is_of_a_speed(tokens: list[Token], after: list[Raw]) -> bool:
    """"three metres per second flash lasts 1/1000", "twenty feet a second flash lasts ...": how fast something goes, and no second flash."""
    if len(tokens) < 2 or tokens[-2].type not in ("LEN", "METER", "MM"):
        return False
    return tokens[-1].type in ("PER", "SLASH") or tokens[-1].type == "A" and bool(after) and (after[0].text in _BURSTS or after[0].text in ("is", "of") and after[1:2] != [] and after[1].kind not in ("word", "mark"))


_NUMBER_WORDS = frozenset((*SMALL, *TENS, *SCALES, *PARTS))
_LONG_NUMBERS = frozenset(word for word in _NUMBER_WORDS if len(word) >= 6)


def _number_meant(piece: Raw) -> Raw:
    """"qarter", "thirten": a number word with a slip of the fingers, where the word as typed means nothing."""
    if piece.text in _NUMBER_WORDS or not piece.text.isascii():
        return piece
    meant = _near_number(piece.text)
    return replace(piece, text=meant) if meant else piece


@lru_cache(maxsize=2000)
def _near_number(word: str) -> str:
    near = slips(word) & _LONG_NUMBERS
    return near.pop() if len(near) == 1 else ""


_COUNTING = frozenset({"NUM", "FRAC"})
_MAY_BE_COUNTED = frozenset({"stops", "f"})


def _counted_stops(pieces: list[Raw], place: int) -> Entry | None:
    """"two stops at 8 feet" and "one f-stop" count stops, though "stops at" is a limit and "f-stop" an aperture; "that one stops at 1/60" counts none."""
    before = pieces[place - 1]
    words = [p.text for p in pieces[place : place + 3]]
    if words[:2] == ["stops", "at"] and before.text.lower() != "one":
        return Entry("STOP", "stop", 1)
    few = getattr(before.value, "value", 9.0) <= 1
    length = words.index("stop") + 1 if few and words[0] == "f" and "stop" in words else 0
    return Entry("STOP", "stop", length) if length and set(words[1 : length - 1]) <= {"-"} else None


_FORMATS = {(4, 5): "4x5", (5, 7): "5x7", (8, 10): "8x10", (6, 4.5): "6x4.5", (6, 6): "6x6", (6, 7): "6x7", (6, 8): "6x8", (6, 9): "6x9",
            (24, 36): "24x36", (36, 24): "36x24", (5, 4): "5x4", (7, 5): "7x5", (10, 8): "10x8"}


_OF_A_ROOM = frozenset({"ft", "foot", "feet", "m", "metre", "meter", "metres", "meters"})


def _spoken_formats(tokens: list[Token], text: str) -> list[Token]:
    """"four by five", "my six-by-six": a film format, unless feet or metres follow (then it is a room)."""
    if "by" not in text.lower():
        return tokens
    out: list[Token] = []
    for token in tokens:
        first = _before_by(out, text) if token.type == "NUM" else None
        if first is not None:
            pair = (getattr(out[first].value, "value", 0.0), getattr(token.value, "value", 0.0))
            following = text[token.end : token.end + 10].lower().replace("-", " ").split()
            if pair in _FORMATS and not (following and following[0].rstrip(",.?!;:") in _OF_A_ROOM):
                out[first:] = [Token("FORMAT", _FORMATS[pair], out[first].start, token.end)]
                continue
        out.append(token)
    return out


def _before_by(tokens: Sequence[Token], text: str) -> int | None:
    """Where the number stands that a "by" follows at the end, with hyphens between or without."""
    last = [n for n in range(max(0, len(tokens) - 4), len(tokens)) if tokens[n].type != "DASH"][-2:]
    return last[0] if len(last) == 2 and tokens[last[0]].type == "NUM" and text[tokens[last[1]].start : tokens[last[1]].end].lower() == "by" else None


def _counted_name(pieces: list[Raw], place: int, lexicon: Lexicon) -> Entry | None:
    """"one at", "one of them", "one is": a light, not a number."""
    entry = lexicon.longest(pieces, place)
    if entry.length > 1 and entry.terminal == "NAMED":
        return entry
    opens = place + 1 < len(pieces) and pieces[place + 1].text in ("guide", "gn", "with", "has", "a", "of")
    return Entry("NAMED", "a", 1) if opens and any(p.text == "other" for p in pieces[place + 1 :]) else None


_COUNTABLE = UNITS | {"STOP", "COUNTED", "POP", "TIMES", "SEC", "MINUTE", "PERCENT", "JOULE", "SLASH"}
_AFTER_A_LENGTH = frozenset({"further", "farther", "back", "away", "from", "closer", "nearer", "out", "off", "behind", "above", "over", "high", "up", "in", ",", ".", "?", ";"})
"""After "meters": the unit, and nothing that meters ("flash two meters f/8")."""
_ENDS_IN_NUMBER = frozenset({"NAMED", "ROLE", "CUE", "BOTH"})


def _measures(pieces: Sequence[Raw], place: int, lexicon: Lexicon, said: str) -> bool:
    """Whether what stands there is what the number before it counts."""
    hyphen = place + 1 < len(pieces) and pieces[place].text == "-"
    if place >= len(pieces) or said == "BOTH" and not hyphen:
        return False
    counted = lexicon.longest(pieces, place + hyphen).terminal
    return counted in _COUNTABLE or counted == "METER" and pieces[place + 1 : place + 2] != [] and pieces[place + 1].text in _AFTER_A_LENGTH


def _own_name(pieces: list[Raw], place: int, names: Names) -> tuple[str, int] | None:
    for rest, name in names.get(pieces[place].text, ()):
        stop = place + 1 + len(rest)
        if [p.text for p in pieces[place + 1 : stop]] == rest:
            return name, stop
    return None


_MARKS = {
    ",": "COMMA", ";": "END", ".": "END", "!": "END", "?": "Q", ":": "COLON", "=": "EQ", "+": "PLUS",
    "-": "DASH", "/": "SLASH", "%": "PERCENT", "'": "FOOT_MARK", '"': "INCH_MARK", "°": "DEGREE",
    "&": "AND", "*": "TIMES", "x": "TIMES", "~": "ABOUT", "≈": "ABOUT", "√": "ROOT", "∞": "INFINITY",
}

_TERMINALS = {"f": "F", "format": "FORMAT", "other": "OTHER"}
"""Of the pieces that are neither words nor marks; those not in it are called as they are."""
