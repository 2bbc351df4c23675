"""The transcripts are what the program says today, word for word."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from rewrite import README, exchanges, replayed, transcripts

EXPECTED = ("beginner-with-full-and-half", "brass-fittings-close-up", "crew-in-two-rows", "first-questions", "halving-the-guide-number", "kit-and-log",
            "lamps-against-the-key", "practice-sheet", "several-changes-weighed", "visitor-in-metres", "worked-in-half-sentences")


@pytest.mark.parametrize("path", transcripts(), ids=lambda p: p.stem)
def test_a_transcript_replays(path: Path) -> None:
    """Rewrite with: python -m tests.transcripts.rewrite"""
    text = path.read_text(encoding="utf-8")
    assert replayed(text) == text


def test_every_evening_is_there() -> None:
    """The demo conversations that the readers are promised."""
    assert tuple(p.stem for p in transcripts()) == EXPECTED


@pytest.mark.parametrize("path", transcripts(), ids=lambda p: p.stem)
def test_a_reply_can_be_heard(path: Path) -> None:
    """Replies begin with a capital or a mark, end with a stop, and hold no code and no fault."""
    for said, reply in exchanges(path.read_text(encoding="utf-8")):
        assert reply, said
        assert reply[0].isupper() or reply.startswith(("f/", "“", "1/", "½")) or reply[0].isdigit(), (said, reply)
        assert reply[-1] in ".?!)”" or "\n" in reply, (said, reply)
        assert "fault is in this program" not in reply and not re.search(r"\bNone\b|\bnan\b|[{}_]|  ", reply.split("\n")[0]), (said, reply)


def test_the_readme_quotes_the_transcripts() -> None:
    """Every exchange of the README stands in a transcript."""
    known = {pair for path in transcripts() for pair in exchanges(path.read_text(encoding="utf-8"))}
    quoted = exchanges(README.read_text(encoding="utf-8"))
    assert len(quoted) >= 3
    assert not [said for said, reply in quoted if (said, reply) not in known]
