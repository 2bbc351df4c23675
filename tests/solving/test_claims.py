"""Claims: worked lines with one known slip, rules of thumb, beliefs, yes-or-no questions.

The figures follow from the definition of the guide number (f-number times distance at ISO 100,
ISO 1230) and the inverse square law; the chains are built here from those, not from the program.
CLAIM_CHAINS sets how many worked lines of each kind are tried (2,000 for the long run).
"""

from __future__ import annotations

import math
import os
import random
import re
from dataclasses import dataclass

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answer import Answer
from assistant.assistant import Assistant

CHAINS = int(os.environ.get("CLAIM_CHAINS", "150"))
HELPER = Assistant.create()


def ask(text: str) -> Answer:
    HELPER.new_conversation(keep_kit=False)
    return HELPER.answer(text)


def verdict(answer: Answer) -> object:
    return answer.answers[0].value if answer.answers and answer.answers[0].quantity == "claim" else None


# --- worked lines ------------------------------------------------------------------------------


@dataclass(frozen=True)
class Change:
    """One change of light: its words, its light as a factor, the words that name the step."""

    words: str
    light: float
    named: str


CHANGES = {
    "film_speed": [Change(f"ISO {iso}", iso / 100, "film speed") for iso in (25, 200, 400, 800)],
    "power": [Change(words, light, "power") for words, light in (("half power", 0.5), ("quarter power", 0.25), ("1/8 power", 0.125))],
    "count": [Change(words, many, "adding the flashes") for words, many in (("two flashes", 2.0), ("three flashes", 3.0), ("four flashes", 4.0))],
    "loss": [Change(words, 2.0**-stops, "lost") for words, stops in (("softbox takes one stop", 1), ("umbrella costs two stops", 2), ("3-stop ND", 3))],
}
SLIPS = {
    # kind: how the figure before turns into the wrong one, from the change's light
    "used without its root": lambda light: light,
    "left out": lambda light: 1.0,
    "wrong way round": lambda light: 1 / math.sqrt(light),
    "wrong way round without its root": lambda light: 1 / light,
}
LAST = ("distance squared", "multiplied by the distance")
KINDS = [(kind, slip) for kind in CHANGES for slip in SLIPS if (kind, slip) != ("loss", "wrong way round without its root")] + [("distance", slip) for slip in LAST]


def figure(value: float) -> str:
    return f"{value:.3g}" if value < 1000 else f"{value:.0f}"


def chain(chance: random.Random, slip: tuple[str, str] | None) -> tuple[str, str]:
    """A worked line, and the words that must name its wrong step (empty where every step is right)."""
    unit, length = chance.choice((("m", (2, 2.5, 3, 4, 5, 6, 8)), ("ft", (5, 6, 8, 10, 12, 15, 20))))
    running = float(chance.choice((24, 28, 36, 40, 45, 58) if unit == "m" else (80, 90, 110, 120, 140, 160)))
    kinds = chance.sample(sorted(CHANGES), chance.choice((1, 2, 3)))
    if slip and slip[0] != "distance" and slip[0] not in kinds:
        kinds[0] = slip[0]
    parts, named = [f"guide number {figure(running)} {chance.choice(_UNITS[unit])}"], ""
    for kind in kinds:
        change = chance.choice(CHANGES[kind])
        factor = math.sqrt(change.light)
        if slip and slip[0] == kind:
            factor, named = SLIPS[slip[1]](change.light), change.named
        running *= factor
        parts.append(f"{change.words} {chance.choice(('so', 'makes it', 'gives', 'so now'))} {figure(running)}")
    far = float(chance.choice(length))
    end = running / far
    if slip and slip[0] == "distance":
        end, named = (running / far**2 if slip[1] == LAST[0] else running * far), "distance"
    parts += [f"{far:g} {chance.choice(_UNITS[unit])}", f"{chance.choice(('so', 'therefore', 'and'))} f/{figure(end)}"]
    return ", ".join(parts) + chance.choice((". Is that right?", ", right?", ". Does that hold?", ", correct?", ". Check that please.")), named


_UNITS = {"m": ("m", "metres"), "ft": ("ft", "feet")}


def usable(slip: tuple[str, str], light: float) -> bool:
    return abs(math.log2(SLIPS[slip[1]](light) / math.sqrt(light))) > 0.2


@settings(max_examples=CHAINS, deadline=None)
@given(st.integers(0, 10**9))
def test_a_right_worked_line_is_never_called_wrong(seed: int) -> None:
    text, _ = chain(random.Random(seed), None)
    assert verdict(ask(text)) is True, text


def test_the_wrong_step_of_a_worked_line_is_named() -> None:
    """Over fourteen kinds of slip, one a line: the step is named in 95 of 100 lines at least."""
    missed = []
    for number in range(CHAINS):
        text, named = chain(random.Random(number), KINDS[number % len(KINDS)])
        answer = ask(text)
        step = re.search(r"first step that is off is (.{0,40}?), at", answer.reply)
        if verdict(answer) is not False or step is None or named not in step.group(1):
            missed.append(text)
    assert len(missed) <= 0.05 * CHAINS, missed[:5]


# --- rules of thumb ------------------------------------------------------------------------------

RULES = [
    ("half power halves the guide number, right?", False), ("quarter power halves the guide number, right?", True),
    ("two identical flashes double the guide number. true or false?", False), ("four equal flashes double the guide number, yes?", True),
    ("doubling the ISO doubles the guide number, isn't it?", False), ("going from ISO 100 to ISO 400 doubles the guide number, correct?", True),
    ("twice the distance costs one stop, right?", False), ("twice the distance costs two stops, right?", True),
    ("f/8 to f/11 halves the light, is that right?", True), ("f/8 to f/16 halves the light, is that right?", False),
    ("twice the distance needs twice the pops, right?", False), ("twice the distance needs four times the power, correct?", True),
    ("a 2-stop ND divides the guide number by two, right?", True), ("ND8 costs eight stops, true?", False),
    ("three stops are eight times the light, yes?", True), ("three stops are six times the light, yes?", False),
    ("equal key and fill make a 2:1 lighting ratio, right?", True), ("a fill one stop under makes a 4:1 lighting ratio, right?", False),
    ("a faster shutter darkens the background but not the flash, true?", True), ("the ND spares the flash, correct?", False),
    ("camera distance doesn't matter for the flash exposure, right?", True), ("a guide number still holds through an umbrella, doesn't it?", False),
]


@pytest.mark.parametrize(("text", "holds"), RULES)
def test_rules_of_thumb(text: str, holds: bool) -> None:
    assert verdict(ask(text)) is holds


@given(st.sampled_from([(2, 1), (4, 2), (8, 3), (16, 4)]), st.sampled_from(["the power", "the ISO"]), st.floats(-2, 2))
@settings(max_examples=CHAINS // 3, deadline=None)
def test_a_factor_and_its_stops_agree(pair: tuple[int, int], what: str, miss: float) -> None:
    """So many times the light is its logarithm to base two in stops, and nothing else."""
    claimed = round(pair[1] + miss)
    if claimed >= 1:
        assert verdict(ask(f"{pair[0]} times {what} is {claimed} stops more, right?")) is (claimed == pair[1])


# --- values asked yes or no --------------------------------------------------------------------------

VALUES = [
    ("will f/8 be right at 10 ft with GN 80 feet?", True, 8.0), ("GN 110 feet at 5 ft: f/11?", False, 22.0),
    ("Is GN 80 feet enough for f/11 at 10 feet?", False, 8.0), ("does GN 36 m reach 8 m at f/4?", True, 9.0),
    ("does GN 36 m reach 14 m at f/4?", False, 9.0), ("is f/4 too bright at 10 feet with GN 80 feet?", True, 8.0),
    ("GN 110 feet, 10 feet, so f/13?", True, 11.0), ("f/8 at 2 m, so f/5.6 at 4 m, right?", False, 4.0),
]


@pytest.mark.parametrize(("text", "holds", "right"), VALUES)
def test_values_asked_yes_or_no(text: str, holds: bool, right: float) -> None:
    answer = ask(text)
    assert verdict(answer) is holds
    assert float(answer.answers[1].value) == pytest.approx(right, rel=0.01)


def test_a_claim_that_lacks_something_is_not_guessed() -> None:
    answer = ask("GN 110 feet, so f/11, right?")
    assert answer.status == "needs" and "distance" in answer.missing


def test_a_false_premise_is_put_right_and_the_question_answered() -> None:
    answer = ask("Twice the distance costs one stop, so from f/8 at 5 feet what do I set at 10 feet?")
    assert float(answer.answers[0].value) == pytest.approx(4.0)
    assert "two stops less" in answer.reply
