"""Patterns that wait: compiled when a text may match, and not before.

Most of the phrases that the program knows do not stand in the question at hand, and compiling them
costs more than answering it. For each pattern a table holds sets of letters: of each set some must
stand in any text that it matches, and a text that has none of one of them is passed by. A pattern
that the table does not know is compiled at once when it is used, so that a stale table is slower and
never wrong.

The text at hand is held against a hundred patterns. Each set of letters has a bit, each word the bits
of the sets of which it holds some, and the text lacks those that none of its words has: one look at
two integers says no.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

MOST_KEPT = 2000
"""Patterns kept of those that are written where they are used."""
MOST_WORDS = 8000
"""Words whose bits are kept."""
FEW_TEXTS = 2
"""Texts read before bits are given out: for one question they would cost more than they save."""
UNREAD = "?"
"""The letters of a pattern that no text was held against yet."""
LONGEST_PIECE = 16
"""Letters of the longest stem that has no space; the tests hold it to the table."""
LONG = 400
"""Letters of a text that is long; a pattern for the end of one looks at so many of its last."""
FAR, OFTEN = 160, 12
"""In a long text, how many letters a "." or a class of letters takes at most, and how often a group is repeated."""


class Pattern:
    """A regular expression with the methods of `re.Pattern` that the program uses."""

    __slots__ = ("_at_end", "_bounded", "_compiled", "_found", "_letters", "_mask", "_phrases", "_sets", "_sure", "_text", "flags", "pattern")

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self.pattern = pattern
        self.flags = flags
        self._letters = UNREAD
        self._sets: tuple[tuple[str, ...], ...] = ()  # the same, parted when they are first looked for
        self._mask = 0  # the bits of its sets, given out when it pays, which one question alone does not
        self._phrases: tuple[tuple[int, tuple[str, ...]], ...] = ()  # of the sets that have some: the bits of their single words, and the others
        self._sure = False  # whether there are none, and the bits say all that the letters do
        self._compiled: re.Pattern[str] | None = None
        self._bounded: re.Pattern[str] | None = None  # for long texts, made for the first
        self._at_end = False  # whether it matches at the end of a text only
        self._text = ""  # the long text searched last, and what was found
        self._found: re.Match[str] | None = None

    def may_match(self, text: str) -> bool:
        """False where the text has none of the letters that a match must have."""
        if _held.lacks & self._mask and (text is _held.text or text in _held.letters or text in _held.text):
            return False  # the text at hand, or a part of it
        return not self._letters or self._has_letters(text)

    def _has_letters(self, text: str) -> bool:
        """Whether of each set some letters stand in this text."""
        if not self._sets and not self._read_letters():
            return True
        if self._mask and (text is _held.text or text == _held.letters):  # the bits have told all but whether words stand side by side
            lacks, low = _held.lacks, _held.letters
            for words, phrases in self._phrases:
                if not words or lacks & words:
                    for stem in phrases:
                        if stem in low:
                            break
                    else:
                        return False
            return True
        if not self._mask and _held.texts > FEW_TEXTS:
            self._mask = _Bits.given_to(self._sets)  # what the text at hand lacks was worked out without these
            self._phrases = tuple([_Bits.and_phrases(stems) for stems in self._sets if " " in "".join(stems)])
            self._sure = not self._phrases
        low = text.lower() if text.isascii() else _low(text)
        for stems in self._sets:  # plain loops: this is asked dozens of times of every question
            for stem in stems:
                if stem in low:
                    break
            else:
                return False
        return True

    def _read_letters(self) -> bool:
        """Whether the table, which is read for the first pattern that a text is held against, has letters for this one."""
        from assistant.pattern_stems import STEMS

        self._letters = STEMS.get(self.pattern, "")
        self._sets = sets_of(self._letters) if self._letters else ()
        return bool(self._letters)

    def _for(self, text: str) -> re.Pattern[str] | None:
        """The compiled pattern, or None where the text cannot match."""
        if _held.lacks & self._mask and (text is _held.text or text in _held.letters or text in _held.text):
            return None  # as in `may_match`, without its call
        if self._letters and not (self._sure and (text is _held.text or text == _held.letters)) and not self._has_letters(text):
            return None
        return self._compiled or self._compile()

    def _compile(self) -> re.Pattern[str]:
        self._compiled = re.compile(self.pattern, self.flags)
        return self._compiled

    def search(self, text: str, start: int = 0, end: int = sys.maxsize) -> re.Match[str] | None:
        """As re.Pattern.search."""
        if _held.lacks & self._mask and (text is _held.text or text in _held.letters or text in _held.text):
            return None  # most patterns go this way
        if self._letters and not (self._sure and (text is _held.text or text == _held.letters)) and not self._has_letters(text):
            return None
        if len(text) > LONG and not start:
            return self._search_long(text, end)
        return (self._compiled or self._compile()).search(text, start, end)

    def _search_long(self, text: str, end: int) -> re.Match[str] | None:
        """As `search`, of a text of hundreds or thousands of letters, by bounded looks: such a text may hold hundreds of figures or of one word, and from each of them the whole of it would be gone through."""
        ready = self._bounded
        if ready is None:
            ready = self._bounded = re.compile(bounded(self.pattern, self.flags), self.flags)
            self._at_end = ends_at_end(self.pattern)
        if self._at_end:
            return ready.search(text, max(0, min(len(text), end) - LONG), end)
        if end < len(text):
            return ready.search(text, 0, end)
        if text != self._text:
            self._found, self._text = ready.search(text), text
        return self._found

    def match(self, text: str, *place: int) -> re.Match[str] | None:
        """As re.Pattern.match."""
        if _held.lacks & self._mask and (text is _held.text or text in _held.letters or text in _held.text):
            return None
        ready = self._compiled or self._for(text)  # at one place it is tried as fast as its letters are looked for
        return ready.match(text, *place) if ready else None

    def fullmatch(self, text: str, *place: int) -> re.Match[str] | None:
        """As re.Pattern.fullmatch."""
        ready = self._compiled or self._for(text)
        return ready.fullmatch(text, *place) if ready else None

    def finditer(self, text: str, *place: int) -> Iterator[re.Match[str]]:
        """As re.Pattern.finditer."""
        if _held.lacks & self._mask and (text is _held.text or text in _held.letters or text in _held.text):
            return iter(())
        ready = self._for(text)
        return ready.finditer(text, *place) if ready else iter(())

    def findall(self, text: str, *place: int) -> list[str]:
        """As re.Pattern.findall."""
        ready = self._for(text)
        return ready.findall(text, *place) if ready else []

    def sub(self, new: str | Callable[[re.Match[str]], str], text: str, count: int = 0) -> str:
        """As re.Pattern.sub."""
        if _held.lacks & self._mask and (text is _held.text or text in _held.letters or text in _held.text):
            return text
        ready = self._for(text)
        return ready.sub(new, text, count) if ready else text

    def split(self, text: str, maxsplit: int = 0) -> list[str | Any]:
        """As re.Pattern.split."""
        ready = self._for(text)
        return list(ready.split(text, maxsplit)) if ready else [text]


def sets_of(letters: str) -> tuple[tuple[str, ...], ...]:
    """The sets of letters of a row of the table.

    >>> sets_of("damp|wet&floor")
    (('damp', 'wet'), ('floor',))
    """
    return tuple([tuple(stems.split("|")) for stems in letters.split("&")])


def ends_at_end(pattern: str) -> bool:
    """Whether each of the branches of a pattern ends with "$", and none begins at the beginning.

    >>> ends_at_end(r"\\b(?:at|on)\\s*$|\\bto$"), ends_at_end(r"[|$]to|at$"), ends_at_end(r"(?:at$|on)"), ends_at_end(r"^at$")
    (True, False, False, False)
    """
    plain = _CLASSES.sub("c", pattern)
    depth = 0
    for place, letter in enumerate(plain):
        depth += (letter == "(") - (letter == ")")
        if letter == "|" and depth == 0 and (plain[place - 1] != "$" or plain[place + 1 : place + 2] == "^"):
            return False
    return plain.endswith("$") and not plain.startswith("^")


def bounded(pattern: str, flags: int = 0) -> str:
    """A pattern that repeats nothing without end.

    >>> bounded(r"\\bfilm\\b[^.?]*(?:at|on)+ \\d+"), bounded(r"[.*+)*]\\*")
    ('\\\\bfilm\\\\b[^.?]{0,160}(?:at|on){1,12} \\\\d{1,160}', '[.*+)*]\\\\*')
    """
    if flags & re.VERBOSE:
        return pattern
    return _PARTS.sub(_often_enough, pattern)


def _often_enough(part: re.Match[str]) -> str:
    what, often = part["what"], part["often"]
    return f"{what}{{{'0' if often == '*' else '1'},{OFTEN if what == ')' else FAR}}}" if often else what


CLASS = r"\\.|\[\^?\]?(?:[^\\\]]|\\.)*\]"
_CLASSES = re.compile(CLASS)
"""What is no sign of a pattern's make."""
_PARTS = re.compile(rf"(?P<what>{CLASS}|.)(?P<often>[*+]?)", re.DOTALL)


class Patterns(tuple[Pattern, ...]):
    """Several patterns that are held against one text."""

    def to_try(self, text: str) -> list[int]:
        """The numbers of those that the words of a text may match, in order; of what is left of it when parts are put as spaces, none of the others matches either."""
        lacks = _held.lacks if text in _held.letters or text in _held.text else _Bits.lacking(_low(text))
        return [number for number, pattern in enumerate(self) if not lacks & pattern._mask]


class Rows(tuple[tuple[Pattern, ...], ...]):
    """Rows of patterns, all of a row to be found in one text."""

    def found_in(self, text: str) -> list[int]:
        """The numbers of the rows of which every pattern is found, in order."""
        lacks = _held.lacks if text in _held.letters or text in _held.text else _Bits.lacking(_low(text))
        found = []
        for number, row in enumerate(self):
            for pattern in row:
                if lacks & pattern._mask:
                    break
            else:
                if _all_found(row, text):
                    found.append(number)
        return found


def _all_found(row: tuple[Pattern, ...], text: str) -> bool:
    for pattern in row:
        if pattern.search(text) is None:
            return False
    return True


class _AtHand:
    """The letters of the text at hand, and the bits of the sets of letters that it lacks: one question is held against many patterns.

    There is one of them, whose slots are quicker to look at than what belongs to a class.
    """

    __slots__ = ("known", "lacks", "letters", "text", "texts")

    def __init__(self) -> None:
        self.text = ""
        self.letters = ""
        self.lacks = 0
        self.known = 0  # the bits that were given out when it was looked for them
        self.texts = 0


_held = _AtHand()


class _Bits:
    """Which sets of letters a word has some of. One that is given its bit later makes what is known of the words out of date."""

    of_set: dict[tuple[str, ...], int] = {}  # noqa: RUF012
    of_piece: dict[str, int] = {}  # noqa: RUF012
    of_word: dict[str, int] = {}  # noqa: RUF012
    every = 0

    @classmethod
    def given_to(cls, sets: tuple[tuple[str, ...], ...]) -> int:
        """The bits of these sets: each stem is found by its longest piece without a space."""
        mask = 0
        for stems in sets:
            if stems not in cls.of_set:
                bit = cls.of_set[stems] = cls.every + 1
                cls.every |= bit
                for stem in stems:
                    piece = max(reversed(stem.split()), key=len)  # "on the neg": hardly ever the first of them is the rarest
                    cls.of_piece[piece] = cls.of_piece.get(piece, 0) | bit
                cls.of_word.clear()
            mask |= cls.of_set[stems]
        return mask

    @classmethod
    def and_phrases(cls, stems: tuple[str, ...]) -> tuple[int, tuple[str, ...]]:
        """The bit of those of a set that have no space, and the others."""
        words = tuple([stem for stem in stems if " " not in stem])
        return cls.given_to((words,)) if words else 0, tuple([stem for stem in stems if " " in stem])

    @classmethod
    def lacking(cls, letters: str) -> int:
        """The bits of the sets of which no letters stand in a text."""
        bits, known = 0, cls.of_word
        for word in letters.split() if cls.every else ():
            found = known.get(word)
            bits |= cls._of_word(word) if found is None else found
        return cls.every & ~bits

    @classmethod
    def _of_word(cls, word: str) -> int:
        bits, pieces, most = 0, cls.of_piece, LONGEST_PIECE
        for start in range(len(word)):
            for end in range(start + 1, min(start + most, len(word)) + 1):
                bits |= pieces.get(word[start:end], 0)
        if len(cls.of_word) >= MOST_WORDS:
            cls.of_word.clear()
        if len(word) <= 2 * most:
            cls.of_word[word] = bits
        return bits


def _low(text: str) -> str:
    """Small letters, those also that a pattern without regard to case takes for plain ones (the long s, the dotless i)."""
    low = text.lower()
    return low if text.isascii() else low.replace("\u017f", "s").replace("\u0131", "i")


def at_hand(text: str) -> str:
    """The text, of which much will be asked now: its small letters are kept."""
    if text is _held.text and _held.known == _Bits.every:
        return text
    _held.text, _held.letters = text, _low(text)
    _held.lacks, _held.known = _Bits.lacking(_held.letters), _Bits.every
    _held.texts += 1
    return text


_kept: dict[tuple[str, int], Pattern] = {}


def _known(pattern: str, flags: int) -> Pattern:
    found = _kept.get((pattern, flags))
    if found is None:
        if len(_kept) >= MOST_KEPT:
            _kept.clear()
        found = _kept[pattern, flags] = Pattern(pattern, flags)
    return found


def search(pattern: str, text: str, flags: int = 0) -> re.Match[str] | None:
    """As re.search."""
    waiting = _kept.get((pattern, flags)) or _known(pattern, flags)
    if _held.lacks & waiting._mask and (text is _held.text or text in _held.letters or text in _held.text):
        return None
    return waiting.search(text)


def match(pattern: str, text: str, flags: int = 0) -> re.Match[str] | None:
    """As re.match."""
    return (_kept.get((pattern, flags)) or _known(pattern, flags)).match(text)


def fullmatch(pattern: str, text: str, flags: int = 0) -> re.Match[str] | None:
    """As re.fullmatch."""
    return (_kept.get((pattern, flags)) or _known(pattern, flags)).fullmatch(text)


def finditer(pattern: str, text: str, flags: int = 0) -> Iterator[re.Match[str]]:
    """As re.finditer."""
    return (_kept.get((pattern, flags)) or _known(pattern, flags)).finditer(text)


def findall(pattern: str, text: str, flags: int = 0) -> list[str]:
    """As re.findall."""
    return (_kept.get((pattern, flags)) or _known(pattern, flags)).findall(text)


def sub(pattern: str, new: str | Callable[[re.Match[str]], str], text: str, count: int = 0, flags: int = 0) -> str:
    """As re.sub."""
    return (_kept.get((pattern, flags)) or _known(pattern, flags)).sub(new, text, count)


def split(pattern: str, text: str, maxsplit: int = 0, flags: int = 0) -> list[str | Any]:
    """As re.split."""
    return (_kept.get((pattern, flags)) or _known(pattern, flags)).split(text, maxsplit)
