"""The marks that a text without any is given: those of its last question."""

from __future__ import annotations

import pytest

from assistant.language.unmarked import marked


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("the head spreads 60 degrees and the lens is a 28 does the flash cover the width", "the head spreads 60 degrees and the lens is a 28. does the flash cover the width?"),
        ("bare it reads f/8 the scrim takes a stop lens", "bare it reads f/8 the scrim takes a stop. lens?"),
        ("the flash does not change only the daylight right", "the flash does not change only the daylight, right?"),
        ("gn 40 metres at 100 film what is it for 400", "gn 40 metres at 100 film. what is it for 400?"),
        ("true or not a filter darkens the flash as well", "true or not: a filter darkens the flash as well"),
    ],
)
def test_the_last_question_is_set_apart(said: str, read: str) -> None:
    """What is told comes before it, and it is one."""
    assert marked(said) == read


@pytest.mark.parametrize(
    "said",
    [
        "gn 40 metres, 5 metres off, will it do",
        "what aperture does the flash need at 5 metres",
        "gn 40 metres 5 metres 100 film at full power",
        "tell me if the flash will reach them",
        "keep the same aperture and turn it down by half a stop",
        "half power",
    ],
)
def test_what_has_marks_or_no_second_sentence_is_left_alone(said: str) -> None:
    """A name with a word of its own before it is asked for by nobody."""
    assert marked(said) == said
