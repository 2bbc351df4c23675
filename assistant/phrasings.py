"""Phrasings: several ways to say one thing, of which it is asked only whether the text holds one.

Written as one pattern they wait for letters of which each has some, and then all of them are tried at
every letter of the text. Here each waits for its own, and most texts that hold letters of the one or
the other are gone by without any of them being tried.
"""

from __future__ import annotations

import re

from assistant.patterns import CLASS, Pattern, Patterns


class Phrasings:
    """The alternatives of a pattern, each by itself. `whole` says at one look that the text has letters of none."""

    __slots__ = ("_parts", "whole")

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self.whole = Pattern(pattern, flags)
        self._parts: Patterns | None = None  # taken apart for the first text that may hold one

    @property
    def parts(self) -> Patterns:
        """The single phrasings, parted when they are first looked for."""
        if self._parts is None:
            self._parts = Patterns(Pattern(part, self.whole.flags) for part in alternatives(self.whole.pattern))
        return self._parts

    def found_in(self, text: str) -> bool:
        """Whether one of them stands in the text.

        >>> ways = Phrasings("how (?:far|much)|wide|apart")
        >>> ways.found_in("how far is it"), ways.found_in("how wide"), ways.found_in("how deep")
        (True, True, False)
        """
        if not self.whole.may_match(text):
            return False
        parts = self._parts or self.parts
        for number in parts.to_try(text):
            if parts[number].search(text) is not None:
                return True
        return False


_SIGNS = re.compile(rf"{CLASS}|.", re.DOTALL)


def alternatives(pattern: str) -> list[str]:
    """A pattern taken apart where an "|" stands in no group.

    >>> alternatives(r"how (?:far|much)|[|(]wide|\\|apart")
    ['how (?:far|much)', '[|(]wide', '\\\\|apart']
    """
    parts, depth = [""], 0
    for sign in _SIGNS.findall(pattern):
        depth += (sign == "(") - (sign == ")")
        if sign == "|" and not depth:
            parts.append("")
        else:
            parts[-1] += sign
    return parts
