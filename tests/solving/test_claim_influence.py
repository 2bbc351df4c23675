"""What changes what, put up for a yes or a no: the influence matrix, asked in many words.

Sources: the shutter's time and the flash, the distance that counts, and fill by the guide number are those of the Navy training
course Photography (Basic), NAVEDTRA 14209; that light falls by the square and adds is photometry; where a row of the table
names nothing else, it is common practice, no source.
"""

from __future__ import annotations

from functools import lru_cache

import pytest

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation
from assistant.solving.claim_figures import hangs_on_figures
from assistant.solving.claim_influence import judge_influence

SO = (
    "Going from 1/125 to 1/30 brightens the shed but not the flash, right? It is lit by daylight.",
    "does pulling the flash back make her darker?",
    "will closing the aperture from f/4 to f/8 darken the flash and the ambient alike?",
    "turning the flash down leaves the daylight background alone?",
    "does stopping down give more depth of field?",
    "at 1/64 a shoe flash freezes better than at full?",
    "does an umbrella make the shadows softer than a bare head?",
    "does a polariser cut the flash as well as the daylight?",
    "does pushing film make it grainier?",
    "is the flash exposure the same for a 50 and a 200 mm lens at f/8?",
)
NOT_SO = (
    "going from 1/125 to 1/30 brightens the flash but not the room, right?",
    "closing from f/4 to f/8 darkens the flash but leaves the room as it was, doesn't it?",
    "does moving the camera back while leaving the flash where it is change the exposure?",
    "turning the flash down darkens the background lit by daylight, yes?",
    "does a longer lens at f/8 need more flash than a short one at f/8?",
    "does a white dress need less flash than a black suit with a manual flash?",
    "does medium format need more flash power than 35mm at f/8?",
    "does bellows extension cost only the ambient light, not the flash?",
    "does film speed affect how much depth of field I have?",
    "my teacher says going from ISO 100 to ISO 400 only brightens the background and leaves the flash as it was. Is that right?",
)


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def say(text: str) -> Answer:
    """The answer to one question."""
    return Assistant(_tables(), Conversation()).answer(text)


@pytest.mark.parametrize(("text", "holds"), [*((t, True) for t in SO[1:]), *((t, False) for t in NOT_SO)])
def test_a_claim_of_influence_is_judged(text: str, holds: bool) -> None:
    answer = say(text)
    assert answer.status == "answered" and answer.answers[0].value is holds, answer.reply


@pytest.mark.parametrize("text", ["does a slower shutter suit my boat?", "do I like f/8?", "does it rain?"])
def test_what_is_not_in_the_table_is_not_judged(text: str) -> None:
    assert judge_influence(text) is None


def test_a_rule_says_nothing_where_the_figures_decide() -> None:
    """Bright sun on ISO 400 at 1/60 wants f/45 by the sunny-16 rule (common practice): no lens that stops at f/22 gives it."""
    text = "Bright sun, ISO 400 film, sync speed 1/60, and the lens stops down to f/22. Can I expose the daylight correctly at sync speed?"
    answer = say(text)
    assert answer.answers[0].value is False and "f/46.7" in answer.reply
    from assistant.language.reading import read

    assert hangs_on_figures(read(text, _tables()))
