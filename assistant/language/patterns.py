"""Patterns that wait: compiled when a text may match, and not before.

Most of the phrases that the program knows do not stand in the question at hand, and compiling them
costs more than answering it. For each pattern a table holds letters of which some must stand in any
text that it matches; a text with none of them is passed by. A pattern that the table does not know
is compiled at once when it is used, so that a stale table is slower and never wrong.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from assistant.language.pattern_stems import STEMS


class Pattern:
    """A regular expression with the methods of `re.Pattern` that the program uses."""

    __slots__ = ("_compiled", "_stems", "flags", "pattern")

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self.pattern = pattern
        self.flags = flags
        self._stems: tuple[str, ...] = STEMS.get(pattern, ())
        self._compiled: re.Pattern[str] | None = None

    def _for(self, text: str) -> re.Pattern[str] | None:
        """The compiled pattern, or None where the text cannot match."""
        if self._stems and text.isascii():
            lower = text.lower()
            if not any(stem in lower for stem in self._stems):
                return None
        if self._compiled is None:
            self._compiled = re.compile(self.pattern, self.flags)
        return self._compiled

    def search(self, text: str, *place: int) -> re.Match[str] | None:
        """As re.Pattern.search."""
        ready = self._for(text)
        return ready.search(text, *place) if ready else None

    def match(self, text: str, *place: int) -> re.Match[str] | None:
        """As re.Pattern.match."""
        ready = self._for(text)
        return ready.match(text, *place) if ready else None

    def fullmatch(self, text: str, *place: int) -> re.Match[str] | None:
        """As re.Pattern.fullmatch."""
        ready = self._for(text)
        return ready.fullmatch(text, *place) if ready else None

    def finditer(self, text: str, *place: int) -> Iterator[re.Match[str]]:
        """As re.Pattern.finditer."""
        ready = self._for(text)
        return ready.finditer(text, *place) if ready else iter(())

    def findall(self, text: str, *place: int) -> list[str]:
        """As re.Pattern.findall."""
        ready = self._for(text)
        return ready.findall(text, *place) if ready else []

    def sub(self, new: str | Callable[[re.Match[str]], str], text: str, count: int = 0) -> str:
        """As re.Pattern.sub."""
        ready = self._for(text)
        return ready.sub(new, text, count) if ready else text

    def split(self, text: str, maxsplit: int = 0) -> list[str | None]:
        """As re.Pattern.split."""
        ready = self._for(text)
        return list(ready.split(text, maxsplit)) if ready else [text]
