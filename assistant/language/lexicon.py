"""The lexicon: which words mean something, and what the rest are.

Every word of a question is either meaningful (it has a terminal), glue (it carries
nothing), or unknown. The table is grammar/words.toml; here it is only looked up.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from assistant.language.pieces import Raw
from assistant.language.well_spelt import WELL_SPELT
from assistant.records import record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


@record
class Entry:
    """What a run of words is: its terminal, its value, how many pieces it took."""

    terminal: str
    value: str
    length: int
    read_as: str = ""


class Lexicon:
    """Longest match of words, with small typing mistakes forgiven in words that matter."""

    def __init__(self, table: dict[str, list[list[Any]]]) -> None:
        self._by_first = table  # first word -> [[rest, terminal, value], …], longest first
        self.words = table.keys()
        """Every word that something in the lexicon begins with."""
        self.typed_right: set[str] = set()
        """Parts of texts in which no word is mistyped, as far as they were met."""
        self._forgiven: dict[str, str] = {}
        self._split: dict[str, tuple[dict[str, list[list[Any]]], Entry | None]] = {}

    def longest(self, pieces: Sequence[Raw], place: int) -> Entry:
        """The longest entry at this place; an unknown word is a WORD of length one."""
        word = pieces[place].text
        longer, alone = self._split.get(word) or (None, None)
        if alone is not None:
            after = pieces[place + 1].text if longer and place + 1 < len(pieces) else ""
            after = _word_after(pieces, place + 1) if after == "-" else after
            if not longer or after not in longer and (after in self._by_first or not self._may_be_a_slip(after)):
                return alone  # nothing that follows belongs to it: most words
        found = self._match(word, pieces, place)
        if found:
            return found
        meant = self._meant(word)
        if meant:
            found = self._match(meant, pieces, place)
            if found:
                return Entry(found.terminal, found.value, found.length, "" if _is_another_form(word, meant) else meant)
        return Entry("WORD", word, 1)

    def put_right(self, word: str) -> str:
        """The word that a slip of the fingers was for; the word itself where it is one of ours, might be for several, or is another form of it ("filled", and no filler)."""
        meant = "" if word in self._by_first else self._meant(word)
        return meant if meant and not _is_another_form(word, meant) and word not in self._later else word

    @cached_property
    def _later(self) -> frozenset[str]:
        """Words that stand second or later in an entry, and first in none."""
        return frozenset(word for entries in self._by_first.values() for rest, _, _ in entries for word in rest)

    def _match(self, word: str, pieces: Sequence[Raw], place: int) -> Entry | None:
        entries = self._by_first.get(word)
        if entries is None:
            return None
        after = _word_after(pieces, place + 1)
        if not self._may_be_a_slip(after):
            return self._exact(word, after, pieces, place)
        for rest, terminal, value in entries:
            if not rest:
                return Entry(terminal, value, 1)
            if rest[0] != after:  # most entries fail here
                if len(rest) == 1 and len(rest[0]) >= 6 and is_slip(after, rest[0]):
                    read_as = "" if _is_another_form(after, rest[0]) else f"{word} {rest[0]}"
                    return Entry(terminal, value, 3 if pieces[place + 1].text == "-" else 2, read_as)
                continue
            stop = self._follow(rest, pieces, place + 1)
            if stop:
                return Entry(terminal, value, stop - place)
        return None

    def _may_be_a_slip(self, word: str) -> bool:
        return len(word) >= 5 and word.isalpha() and word not in self._by_first

    def _exact(self, word: str, after: str, pieces: Sequence[Raw], place: int) -> Entry | None:
        """The longest entry of this word with the known word after it, no slip forgiven."""
        split = self._split.get(word)
        if split is None:
            split = self._split[word] = _by_second(self._by_first[word])
        for rest, terminal, value in split[0].get(after, ()):
            stop = self._follow(rest, pieces, place + 1)
            if stop:
                return Entry(terminal, value, stop - place)
        return split[1]

    @staticmethod
    def _follow(rest: Sequence[str], pieces: Sequence[Raw], at: int) -> int:
        for word in rest:
            if at < len(pieces) and pieces[at].text == "-" and at + 1 < len(pieces):
                at += 1
            if at >= len(pieces) or pieces[at].text != word:
                return 0
            at += 1
        return at

    def _meant(self, word: str) -> str:
        """The one word of the lexicon that is a single slip away, or nothing."""
        if len(word) < 5 or len(word) > 14 or not word.isascii() or word in WELL_SPELT:
            return ""
        if word not in self._forgiven:
            if len(self._forgiven) > 5000:
                self._forgiven.clear()
            self._forgiven[word] = self._search(word)
        return self._forgiven[word]

    def _search(self, word: str) -> str:
        near = {slip for slip in slips(word) if slip in self._by_first and len(slip) >= (5 if len(word) > 5 else 6) and self._matters(slip)}
        return min(near, default="") if len({self._alone(word) for word in near}) == 1 else ""

    def _alone(self, word: str) -> tuple[str, str]:
        """What a word means that nothing follows: "metres" and "meters" are the same."""
        return next(((terminal, value) for rest, terminal, value in self._by_first[word] if not rest), ("", word))

    def _matters(self, word: str) -> bool:
        return any(terminal not in ("GLUE", "LINK") for _, terminal, _ in self._by_first[word])


_ENDINGS = ("d", "s", "r", "n", "y", "ly", "ed", "es")


def _is_another_form(word: str, of: str) -> bool:
    """Whether they differ in their ending alone.

    >>> _is_another_form("darken", "darker"), _is_another_form("overexpose", "overexposed"), _is_another_form("apeture", "aperture")
    (True, True, False)
    """
    if len(word) == len(of):
        return word[:-1] == of[:-1] and word[-1] in "dnrsyetl"
    long, short = (word, of) if len(word) > len(of) else (of, word)
    return long.startswith(short) and long[len(short) :] in _ENDINGS


def _by_second(entries: list[list[Any]]) -> tuple[dict[str, list[list[Any]]], Entry | None]:
    """The entries of several words by their second one, and the entry of one word."""
    longer: dict[str, list[list[Any]]] = {}
    for entry in entries:
        if entry[0]:
            longer.setdefault(entry[0][0], []).append(entry)
    return longer, next((Entry(terminal, value, 1) for rest, terminal, value in entries if not rest), None)


def _word_after(pieces: Sequence[Raw], at: int) -> str:
    """The next word, a hyphen before it passed over; nothing at the end."""
    if at + 1 < len(pieces) and pieces[at].text == "-":
        at += 1
    return pieces[at].text if at < len(pieces) else ""


def is_slip(typed: str, meant: str) -> bool:
    """Whether `meant` is among the slips of `typed`, without writing them all out.

    >>> is_slip("qarter", "quarter"), is_slip("apreture", "aperture"), is_slip("calf", "half")
    (True, True, False)
    """
    if typed[:1] != meant[:1] or abs(len(typed) - len(meant)) > 1:
        return False
    same = 0
    for a, b in zip(typed, meant):
        if a != b:
            break
        same += 1
    rest, other = typed[same:], meant[same:]
    return rest[1:] == other or rest == other[1:] or rest[1:] == other[1:] or len(rest) > 1 and rest[1::-1] == other[:2] and rest[2:] == other[2:]


_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def slips(word: str) -> set[str]:
    """Words one letter away that begin alike: dropped, doubled, swapped, or changed.

    >>> "quarter" in slips("qarter"), "half" in slips("calf")
    (True, False)
    """
    cuts = [(word[:n], word[n:]) for n in range(1, len(word) + 1)]
    dropped = {a + b[1:] for a, b in cuts if b}
    swapped = {a + b[1] + b[0] + b[2:] for a, b in cuts if len(b) > 1}
    changed = {a + c + b[1:] for a, b in cuts if b for c in _LETTERS}
    added = {a + c + b for a, b in cuts for c in _LETTERS}
    return dropped | swapped | changed | added
