"""What is to be sharp, told anew: another near end of it, or another length of one."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace

LENGTHS = frozenset({"distance", "gap", "path", "move", "camera_distance", "max_distance", "min_distance", "ceiling_height", "length_range"})
_NEAREST = Pattern(r"^\W*(?:(?:and|no|so|but|well|sorry|actually|wait)\b\W*)*(?:the |my )?(?:nearest|closest)(?: (?:thing|bit|part|one|person|object|edge|point|row))?(?: is| was|'s)(?: now| only| actually| really| (?:the|a|my|her|his|our) [a-z]+)* ?(?:at |to be )?", re.I)
"""Of whom the near end of what is to be sharp is: "nearest thing is the pram at"."""


def without_its_end(query: Query, last: Query) -> Query:
    """"nearest thing is the skiff at 3 metres, not 2.5", after "sharp from 2.5 m to infinity": another near end, and nothing asked."""
    said = _NEAREST.match(query.text) if last.has("sharp_limit") and "?" not in query.text else None
    return query if said is None else replace(query, text=" " * said.end() + query.text[said.end() :], claim=False, asks=())


def as_a_limit(mine: Fact, last: Query) -> Fact:
    """A length told anew of what is to be sharp, where no other length was told."""
    limits = mine.quantity == "distance" and not mine.of and last.has("sharp_limit") and not any(f.quantity in (*LENGTHS, "focus_distance") for f in last.facts)
    return replace(mine, quantity="sharp_limit") if limits else mine
