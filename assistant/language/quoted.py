"""Words within quotation marks: the rim says 'times 2', and no two feet.

The marks are left out, since nothing reads them; one right after a figure, where no quotation was opened, is
of feet or inches and stays.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_OPENS = {
    "'": Pattern(r"(?:^|(?<=[\s(]))(?<!\d )'(?=[A-Za-z\d.])(?!(?:cause|cos|coz|til|till|em|bout|round|twas|tis|n|im|er|ere|ave|as|ow|\d0s)\b)", re.I),
    '"': Pattern(r'(?:^|(?<=[\s(]))(?<!\d )"(?=[A-Za-z\d.])'),
}
"""A mark before a word, after a space that follows no figure; what is shortened at its beginning opens nothing."""
_ENDS = {"'": Pattern(r"(?<=[\w.?!,½])'(?![A-Za-z\d])"), '"': Pattern(r'(?<=[\w.?!,½])"(?![A-Za-z\d])')}


def without_quotes(text: str) -> str:
    """The text without the marks around what is quoted, which keeps its place.

    >>> without_quotes("It says 'GN 50 at ISO 200'. It's 10' away.")
    "It says  GN 50 at ISO 200 . It's 10' away."
    >>> without_quotes("He said 'stand 10' away', so I did.")
    "He said  stand 10' away , so I did."
    """
    for mark in ("'", '"'):
        if text.count(mark) > 1:
            text = _without(text, mark)
    return text


def _without(text: str, mark: str) -> str:
    opened = [found.start() for found in _OPENS[mark].finditer(text)]
    if not opened:
        return text
    ends = [found.start() for found in _ENDS[mark].finditer(text)]
    letters = list(text)
    for at, following in zip(opened, [*opened[1:], len(text)]):
        closing = [end for end in ends if at < end < following]
        last = next((end for end in closing[1:] if not text[end - 1].isdigit()), closing[0]) if closing else None  # after 'the flash is 10' away' the first is of a length
        if last is not None:
            letters[at] = letters[last] = " "
    return "".join(letters)
