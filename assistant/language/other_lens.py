"""A second lens told by its bare length, where two are held against each other: "a 100 mm lens has four times the hyperfocal distance of a 50"."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_HYPERFOCAL_OF = Pattern(r"\bhyper-?focal(?: distance)?\b[^.?!]{0,24}\b(?:of|than|as|with|for) (?:an?|the|my) $|\b(?:than|as|against|beside|that of|those of) (?:an?|the|my) $")
_NO_LENS = Pattern(r" ?(?:m\b|metres?|meters?|feet|ft\b|foot|stops?|iso|film|percent|%|degrees?|s\b|seconds?|-|×|x\d)")


def other_lens(facts: list[Fact], lens: Fact, lower: str) -> list[Fact]:
    """"a 100 mm lens has four times the hyperfocal distance of a 50": the other lens, where lenses are held against each other."""
    bare = [f for f in facts if f.quantity == "number" and not f.bad and 8 <= f.value <= 1200 and f.value != lens.value * 1000] if "hyperfocal" in lower.replace("-", "") else []
    if len(bare) != 1 or not _HYPERFOCAL_OF.search(lower[: bare[0].start]) or _NO_LENS.match(lower, bare[0].end):
        return facts
    return [replace(f, quantity="focal_length", value=f.value / 1000, unit="mm") if f is bare[0] else f for f in facts]
