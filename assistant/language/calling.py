"""How a light is spoken of: by the name a person gave it, else by what it is."""

from __future__ import annotations

LIGHTS = {
    "big": "the big one", "small": "the little one", "left": "the left one", "right": "the right one", "a": "flash A", "b": "flash B", "c": "flash C",
    "key": "the key", "fill": "the fill", "hair": "the hair light", "rim": "the rim light", "kicker": "the kicker", "accent": "the accent light",
    "background": "the background light",
}


def called(name: str) -> str:
    """A light as it is spoken of.

    >>> called("small"), called("Duke")
    ('the little one', 'Duke')
    """
    return LIGHTS.get(name, printable(name))


def printable(text: str) -> str:
    """Text that may be quoted back: control and bidirectional characters taken out."""
    return "".join(c if c.isprintable() else " " for c in text)
