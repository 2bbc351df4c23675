"""The shape of one prepared safety answer."""

from __future__ import annotations

from assistant.records import record

COMMON = "common practice, no source"


@record
class Aspect:
    """One thing people ask about one hazard.

    Every pattern in `hears` must be found. An `urgent` aspect reports trouble under way and needs no
    question word. The first sentence of `reply` is the answer; `example` is a phrase it must hear.
    """

    topics: tuple[str, ...]
    hears: tuple[str, ...]
    reply: str
    source: str
    example: str
    urgent: bool = False
