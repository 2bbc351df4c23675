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
    "does a polariser darken the flash just as much as it darkens the daylight?",
    "does pushing film make it grainier?",
    "going from 1/60 to 1/30 gives the room one stop more and leaves the flash as it was, yes?",
    "is the flash exposure the same for a 50 and a 200 mm lens at f/8?",
    "is the flash exposure the same with my 28 as with my 135, both at f/8?",
    "our coach thinks a slow shutter makes the flash stronger. He's mistaken, isn't he?",
    "at low power do I get more flashes out of a set of batteries?",
    "going to a faster film extends how far the flash will carry, doesn't it?",
    "pulling the film lowers contrast, yes?",
    "does backing off the light make the rows more evenly lit",
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
    "If I close down from f/4 to f/5.6 the flash drops a stop but the room light stays the same, doesn't it?",
    "going from 1/60 to 1/30 gives the flash one stop more and leaves the room as it was, yes?",
    "does film speed affect how much depth of field I have?",
    "does shutter speed decide how long the flash itself lasts?",
    "does the shutter touch neither the flash nor the ambient?",
    "if I put on the 135 instead of the 50 and keep f/5.6, do I need more flash?",
    "with the flash at a quarter instead of full, does the evening sky in the shot go darker?",
    "my teacher says going from ISO 100 to ISO 400 only brightens the background and leaves the flash as it was. Is that right?",
)


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def say(text: str) -> Answer:
    """The answer to one question."""
    return Assistant(_tables(), Conversation()).answer(text)


@pytest.mark.parametrize(("text", "holds"), [*((t, True) for t in SO), *((t, False) for t in NOT_SO)])
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


def test_settings_kept_from_before_are_no_case() -> None:
    """What was told a turn ago makes no case of a general claim, and a sync speed of then is not what is asked about."""
    talk = Assistant(_tables(), Conversation())
    for told in ("my sync is 1/60", "guide number 110 feet, 10 feet, what aperture?"):
        talk.answer(told)
    answer = talk.answer("do I save battery by running the flash at 1/8 power?")
    assert answer.answers[0].value is True and "sync" not in answer.reply, answer.reply
    assert talk.answer("is the flash exposure the same with my 28 as with my 135?").answers[0].value is True


CAUSES = (  # what is changed, what that does to the flash, and to the ambient light
    ("a slower shutter", 0, 1),
    ("going from 1/30 to 1/125", 0, -1),
    ("opening the lens two stops", 1, 1),
    ("going from f/4 to f/8", -1, -1),
    ("a faster film", 1, 1),
    ("dropping the ISO from 800 to 200", -1, -1),
    ("more flash power", 1, 0),
    ("setting the flash to 1/4 power", -1, 0),
    ("moving the flash closer", 1, 0),
    ("taking the flash farther from the crew", -1, 0),
    ("stepping back with the camera", 0, 0),
    ("swapping the 50 mm for a 135 mm", 0, 0),
    ("zooming the flash head in", 1, 0),
    ("putting an umbrella on the flash", -1, 0),
    ("bouncing the flash off the ceiling", -1, 0),
    ("an ND on the lens", -1, -1),
    ("adding a second flash", 1, 0),
    ("extending the bellows", -1, -1),
)


@pytest.mark.parametrize(("cause", "flash", "ambient"), CAUSES, ids=lambda word: str(word))
def test_every_wording_of_an_influence_is_judged_alike(cause: str, flash: int, ambient: int) -> None:
    """Said straight, denied, with "only", with "both", of one part and of the other."""
    said = {
        f"does {cause} touch neither the flash nor the ambient?": flash == ambient == 0,
        f"{cause} changes the room light but not the flash, yes?": ambient != 0 and flash == 0,
        f"{cause} changes only the flash, right?": flash != 0 and ambient == 0,
        f"does {cause} change both the flash and the ambient?": flash != 0 and ambient != 0,
    }
    for part, way in (("the flash on the subject", flash), ("the daylight in the picture", ambient)):
        said |= {
            f"does {cause} brighten {part}?": way == 1,
            f"true or false: {cause} makes {part} weaker": way == -1,
            f"{cause} leaves {part} as it was, right?": way == 0,
            f"my mate says {cause} has no influence on {part}. is he right?": way == 0,
            f"is it a myth that {cause} changes {part}?": way == 0,
        }
    assert {text: getattr(judge_influence(text), "holds", None) for text in said} == said


def test_two_causes_and_choices_are_not_judged() -> None:
    """What hangs on both of two changes, or is a choice between two, is no yes or no of this table."""
    said = (
        "if I stop down and slow the shutter to match, does the ambient change?",
        "if I open up one stop and halve the flash power, does the flash exposure change?",
        "does a slower shutter brighten the flash or the ambient?",
        "in high speed sync, does a faster shutter darken the flash?",
        "does dropping the power shorten the pulse on a studio head?",
        "does a longer lens blur the background more?",
    )
    assert [judge_influence(text) for text in said] == [None] * len(said)
