"""Where one light stands by the camera, how many stand there uncounted, and what a light under another reads."""

from __future__ import annotations

from functools import lru_cache

import pytest

from assistant.assistant import Assistant
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def value(text: str) -> float:
    """The first answer's value, checked to be answered."""
    answer = Assistant(_tables(), Conversation()).answer(text)
    assert answer.status == "answered", answer.reply
    return float(answer.answers[0].value)


@pytest.mark.parametrize(
    ("said", "metres"),
    [("flash 3 m behind the camera, camera 2 m from her", 5), ("the camera is 2 m from her and the flash 3 m behind me", 5), ("the light is 1 m in front of the camera, the camera 5 m from him", 4), ("the flash is on the camera, the camera 5 m from him", 5)],
)
def test_the_light_s_way_is_a_sum_or_a_difference(said: str, metres: float) -> None:
    assert value(f"{said}, GN 40 m, aperture?") == pytest.approx(40 / metres)


@pytest.mark.parametrize(("said", "flashes"), [("both flashes GN 40 m each", 2), ("not only one flash but two of GN 40 m", 2), ("one flash of GN 40 m", 1), ("GN 40 m, both eyes sharp,", 1)])
def test_flashes_that_nobody_counted(said: str, flashes: int) -> None:
    assert value(f"{said} at 5 m, aperture?") == pytest.approx(8 * flashes**0.5)


def test_what_lies_under_the_key_is_asked_where_the_key_is_told() -> None:
    answer = Assistant(_tables(), Conversation()).answer("key f/16, the background is three stops under the key, what's the background?")
    assert (answer.answers[0].of, round(float(answer.answers[0].value), 2)) == ("backdrop", 5.66)
