"""What comes in and what goes out, whatever the terminal, the locale and the bytes are.

In: any bytes, read as UTF-8, what is not UTF-8 replaced. Out: no control characters, and letters
that the terminal's encoding lacks told in plain ones.
"""

from __future__ import annotations

import codecs
import os
import re
import sys

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator
    from typing import BinaryIO, TextIO

LONGEST_BYTES = 4 * 1024 * 1024
"""Of a longer line the rest is not read."""

_PLAIN = {
    "“": '"', "”": '"', "‘": "'", "’": "'", "–": "-", "—": "-", "−": "-", "…": "...", "×": "x", "·": ".", "√": "sqrt ", "≈": "about ", "∞": "infinity",
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "°": " degrees", "\u00a0": " ",
}
_LONG_WORD = re.compile(r"\S{121,}")


def prepare_output() -> None:
    """Make sure that no letter can stop the output."""
    codecs.register_error("stopwise_plain", _in_plain_letters)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="stopwise_plain")


def _in_plain_letters(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    return "".join(_PLAIN.get(letter, "?") for letter in error.object[error.start : error.end]), error.end


def shown(text: str) -> str:
    """Text as it may be shown: no control characters but line ends, no endless word.

    >>> shown("f/8 \\x1b[31m" + "a" * 200)[-5:]
    'aaaa…'
    """
    lines = ("".join(c if c.isprintable() else " " for c in line) for line in text.split("\n"))
    return _LONG_WORD.sub(lambda match: match[0][:60] + "…", "\n".join(lines))


def wrapped(text: str, width: int) -> str:
    """Text in lines of at most `width` letters (20 or more), broken between words; an indented line keeps its indent.

    >>> wrapped("put the flash a little further back", 20)
    'put the flash a\\nlittle further back'
    """
    return "\n".join(_filled(line, max(width, 20)) if len(line) > width else line for line in text.split("\n"))


def _filled(line: str, width: int) -> str:
    import textwrap

    indent = " " * (len(line) - len(line.lstrip()))
    return textwrap.fill(line, width, subsequent_indent=indent + "  " if indent else "", break_on_hyphens=False)


def words_given(arguments: Iterable[str]) -> str:
    """The words on the command line as text; bytes that are no text are replaced."""
    return " ".join(arguments).encode("utf-8", "surrogateescape").decode("utf-8", "replace")


def lines_of(source: BinaryIO) -> Iterator[str]:
    """The lines that come in, without their ends, as they come."""
    first = True
    while raw := source.readline(LONGEST_BYTES):
        rest = raw
        while rest and not rest.endswith(b"\n") and len(rest) == LONGEST_BYTES:
            rest = source.readline(LONGEST_BYTES)
        yield raw.decode("utf-8-sig" if first else "utf-8", "replace").rstrip("\r\n")
        first = False


def standard_input() -> BinaryIO | None:
    """Standard input as bytes; None when it is closed."""
    return None if sys.stdin is None else sys.stdin.buffer


def is_terminal(stream: TextIO | None) -> bool:
    """Whether a person sits at this stream."""
    try:
        return stream is not None and stream.isatty()
    except ValueError:  # closed
        return False


def silence(stream: TextIO | None) -> None:
    """Nobody reads any more: what is still waiting to be written must not complain at the end."""
    try:
        if stream is not None:
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
    except (OSError, ValueError):
        pass
