"""Practice and the sum behind an answer: figures follow from the guide number's definition (ISO 1230)."""

from __future__ import annotations

import math
import random
import re

import pytest

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.solving.slips import Change, slip_of
from assistant.teaching.practice import GRADES, exercise, judge, sheet


def talk(*lines: str) -> list[Answer]:
    helper = Assistant.create()
    return [helper.answer(line) for line in lines]


def right_answer(text: str) -> float:
    """The aperture of a practice question, worked out from its own words."""
    guide, iso = float(re.search(r"guide number (\d+)", text, re.I)[1]), float(re.search(r"ISO (\d+)", text)[1])  # type: ignore[index]
    far = float(re.search(r"([\d.]+) (?:feet|metres):", text)[1])  # type: ignore[index]
    power = {"full": 1.0, "half": 0.5, "1/4": 0.25, "1/8": 0.125}[re.search(r"(full|half|1/\d) power", text)[1]]  # type: ignore[index]
    many = {"two": 2, "three": 3, "four": 4}.get((re.match(r"(\w+) equal", text) or [""])[0].split(" ")[0].lower(), 1)
    return guide * math.sqrt(iso / 100 * power * many) / far


@pytest.mark.parametrize("grade", range(4))
@pytest.mark.parametrize("unit", ["ft", "m"])
def test_the_answer_of_an_exercise_is_the_one_its_words_give(grade: int, unit: str) -> None:
    for seed in range(25):
        one = exercise(random.Random(seed), unit, grade)
        assert one.value == pytest.approx(right_answer(one.text), rel=1e-6), one.text


@pytest.mark.parametrize("grade", range(len(GRADES)))
def test_the_same_chance_gives_the_same_question(grade: int) -> None:
    assert exercise(random.Random(7), "m", grade) == exercise(random.Random(7), "m", grade)


def test_a_third_of_a_stop_is_right_and_a_whole_one_is_not() -> None:
    one = exercise(random.Random(1), "ft", 0)
    assert judge(one, one.value * 2 ** (1 / 6))[0] and not judge(one, one.value * math.sqrt(2))[0]


def test_a_slip_is_told_from_the_number() -> None:
    """Half power used as it stands gives half the figure; ISO 400 left out gives half of it too."""
    assert slip_of(20.0, 14.142, (Change("power", -1.0),))[0] == "power"
    assert "left out" in slip_of(20.0, 10.0, (Change("film_speed", 2.0),))[1]
    assert slip_of(20.0, 20.0 * 3.2808, ())[1] == "feet and metres were mixed"
    assert slip_of(20.0, 27.0, ()) == ("", "")


def test_a_quiz_from_first_question_to_the_stop() -> None:
    helper = Assistant.create()
    first = helper.answer("quiz me in metres")
    assert "metres" in first.reply
    value = right_answer(first.reply.split(" (Say")[0])
    second = helper.answer(f"f/{value:.3g}")
    assert second.answers[0].value is True and "Next:" in second.reply
    assert helper.answer("f/1").answers[0].value is False
    assert helper.answer("that's enough").status == "noted"
    assert helper.answer("f/8").answers == ()


def test_an_ordinary_question_in_between_is_answered() -> None:
    answers = talk("quiz me", "guide number 110 feet, 10 feet, what aperture?")
    assert float(answers[1].answers[0].value) == pytest.approx(11.0)


def test_ten_questions_with_an_answer_sheet() -> None:
    answer = talk("ten questions on power with an answer sheet, in metres")[0]
    assert len(answer.table) == 11 and answer.table[0] == ("question", "answer")
    assert len({one.text for one in sheet(random.Random(0), "ft", 10)}) == 10


def test_the_sum_is_shown_in_the_units_of_the_learner() -> None:
    answers = talk("GN 36 m, half power, 4 m, ISO 100, f-number?", "show me the sum", "just the stops", "why is it not f/4.5?")
    assert "25.5 / 4 = f/6.36" in answers[1].reply
    assert "power 0.5: -1.00" in answers[2].reply and "together 0.00" in answers[2].reply
    assert "one stop over" in answers[3].reply and "square root" in answers[3].reply


def test_how_sure_names_what_is_uncertain() -> None:
    answers = talk("GN 36 m, 4 m, softbox, aperture?", "how sure are you?")
    assert "typical" in answers[1].reply and "test" in answers[1].reply
