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
    ("Two identical flashes instead of one give me two stops more. True?", False), ("does 1:1 lose two stops?", True), ("At 1:1 I lose one stop, correct?", False),
    ("f/16 lets in more light than f/11?", False), ("My mate swears f/16 lets in more light than f/11. Is he right?", False), ("is f/2.8 wider than f/4?", True),
    ("1/60 is darker than 1/125?", False), ("Is ISO 800 faster than ISO 400?", True), ("1/250 is faster than 1/60, so it gets more ambient light, right?", False),
    ("Half power at 2 metres is the same as full power at 2.8 metres, right?", True), ("Full power at 4 m gives the same light as half power at 2 m, correct?", False),
    ("a 3 stop ND means 3 times less light. correct?", False), ("if I stand twice as far with my camera, do I need to open up two stops?", False),
    ("can I use 1/500 with a sync of 1/125?", False), ("my sync is 1/60, is 1/30 ok?", True), ("key f/8, fill f/4, so one stop difference, right?", False),
    ("f/11 at 8 feet on ISO 100 means guide number 88, so on ISO 400 it's 176, and at 16 feet I get f/11. Did I do that right?", True),
    ("f/11 at 8 feet means guide number 100, so at 16 feet I get f/6. right?", False), ("is ISO 100 21 DIN?", True), ("ISO 400 is 24 DIN, right?", False),
    ("bigger f-number means less light, right?", True), ("is t0.1 shorter than t0.5?", False), ("Is a 400 Ws head always brighter than a 200 Ws one?", False),
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
    ("A flash has GN 100 at full power. Is its guide number 50 feet at half power?", False, 70.71), ("Is a GN 40 metre flash a GN 20 at half power?", False, 28.28),
    ("a mate says iso 200 doubles your guide number, so my 40 metres becomes 80 and at 5 metres I'd be at f/16. is he right?", False, 11.31),
    ("Would GN 110 ft give me f/11 at ten feet?", True, 11.0), ("can a GN 40 m flash give me f/22 at 3 m?", False, 13.33), ("will gn 40 m reach 12 m at f/2.8 iso 100", True, 14.29),
    ("one pop was right at 8 feet so two pops is right at 16 feet, correct?", False, 4.0), ("three pops at 2 m, so 12 pops at 4 m, right?", True, 12.0),
    ("life size only needs one stop extra, true?", False, 2.0), ("does 1:2 magnification lose two stops?", False, -1.17),
    ("I worked out quarter power for f/8 at 2 m using a GN 32 m flash on ISO 100. Am I right?", True, 0.25),
    ("GN 110 feet, 10 feet, so f/13?", True, 11.0), ("f/8 at 2 m, so f/5.6 at 4 m, right?", False, 4.0),
]


@pytest.mark.parametrize(("text", "holds", "right"), VALUES)
def test_values_asked_yes_or_no(text: str, holds: bool, right: float) -> None:
    answer = ask(text)
    assert verdict(answer) is holds
    assert float(answer.answers[1].value) == pytest.approx(right, rel=0.01)


SUPPLIED = [
    (("will my flash reach 20 m?", "guide number 50 metres, lens opens to 2.8"), False, 17.86), (("can my flash do f/11 at 12 feet?", "guide number 110"), False, 9.17),
    (("will gn 60 be enough for a group at 15 feet?", "f/5.6 iso 400"), True, 21.43), (("Is f/8 right at 10 feet?", "guide number 80"), True, 8.0),
]


@pytest.mark.parametrize(("turns", "holds", "right"), SUPPLIED)
def test_a_claim_waits_for_what_it_lacks(turns: tuple[str, str], holds: bool, right: float) -> None:
    first = ask(turns[0])
    assert first.status == "needs"
    answer = HELPER.answer(turns[1])
    assert verdict(answer) is holds
    assert float(answer.answers[1].value) == pytest.approx(right, rel=0.01)


def test_a_follow_up_asks_the_claim_again_and_gives_the_right_figure_after_it() -> None:
    """80 / 20 = 4, so f/8 is wrong there; on ISO 400 it is right."""
    ask("Is f/8 right at 10 feet for GN 80?")
    answer = HELPER.answer("and at 20 feet?")
    assert verdict(answer) is False
    assert float(answer.answers[1].value) == pytest.approx(4.0)
    assert verdict(HELPER.answer("and on ISO 400?")) is True


def test_what_is_asked_after_a_claim_is_answered_with_the_figure() -> None:
    ask("Is f/8 right at 10 feet for GN 110?")
    answer = HELPER.answer("what would I get then?")
    assert (answer.answers[0].quantity, answer.answers[0].value) == ("aperture", pytest.approx(11.0))


def test_what_the_aperture_would_take_stands_beside_a_claim_that_fails() -> None:
    """f/22 is 22 x 3 / 40 squared = 2.72 times what guide number 40 gives at 3 m."""
    power = next(q for q in ask("can a GN 40 m flash give me f/22 at 3 m?").answers if q.quantity == "power")
    assert float(power.value) == pytest.approx(2.72, rel=0.01)


def test_a_claim_that_lacks_something_is_not_guessed() -> None:
    answer = ask("GN 110 feet, so f/11, right?")
    assert answer.status == "needs" and "distance" in answer.missing


def test_a_false_premise_is_put_right_and_the_question_answered() -> None:
    answer = ask("Twice the distance costs one stop, so from f/8 at 5 feet what do I set at 10 feet?")
    assert float(answer.answers[0].value) == pytest.approx(4.0)
    assert "two stops less" in answer.reply
