"""What must hold for every question, whatever its numbers and however it is put."""

from __future__ import annotations

import json
import math
import re
from itertools import permutations

import pytest
from corpus import answer, cases, fresh, tables
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from assistant import patterns
from assistant.answering import in_plain_words
from assistant.language.hearing import fold, hear
from assistant.language.pieces import Number
from assistant.language.reading import read
from assistant.query import TAKES_LIGHT

MANY = settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])

GUIDES = st.integers(20, 200)
FEET = st.sampled_from([3, 4, 5, 5.5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25])
SPEEDS = st.sampled_from([25, 50, 64, 100, 125, 160, 200, 320, 400, 800, 1600])
POWERS = st.sampled_from(["full", "1/2", "1/4", "1/8", "1/16", "1/32", "1/64"])


def aperture_of(text: str) -> float:
    """The exact f-number a question gets."""
    found = answer(text)
    assert found.status in ("answered", "out_of_reach"), (text, found.reply)
    assert found.answers[0].quantity == "aperture", (text, found.reply)
    return float(found.answers[0].value)


# --- order, units, there and back -----------------------------------------------------------------


@MANY
@given(GUIDES, FEET, SPEEDS, POWERS, st.permutations(range(5)))
def test_the_order_of_the_conditions_does_not_matter(guide: int, feet: float, speed: int, power: str, order: list[int]) -> None:
    """Five phrases in any order are one question."""
    phrases = [f"guide number {guide} feet", f"{feet} feet", f"ISO {speed}", f"{power} power", "what aperture"]
    share = 1.0 if power == "full" else 1 / float(power.partition("/")[2])
    expected = guide / feet * math.sqrt(speed / 100 * share)
    assert aperture_of(", ".join(phrases[n] for n in order) + "?") == pytest.approx(expected, rel=1e-6)


SAID_ANY_WAY = ("gn 80 ft", "ten feet", "on 200 film", "at quarter power", "what f-stop")


@pytest.mark.parametrize("order", list(permutations(range(5)))[::7], ids=lambda order: "".join(map(str, order)))
def test_the_order_of_loosely_put_conditions_does_not_matter(order: tuple[int, ...]) -> None:
    """The same with words as people say them."""
    assert aperture_of(", ".join(SAID_ANY_WAY[n] for n in order)) == pytest.approx(8 * math.sqrt(2) / 2, rel=1e-6)


@MANY
@given(GUIDES, FEET, SPEEDS)
def test_feet_and_metres_are_one_length(guide: int, feet: float, speed: int) -> None:
    """A distance said in metres gives the aperture of the same distance in feet."""
    in_feet = aperture_of(f"guide number {guide} feet, {feet} feet, ISO {speed}, what aperture?")
    in_metres = aperture_of(f"guide number {guide} feet, {feet * 0.3048:.6f} metres, ISO {speed}, what aperture?")
    assert in_metres == pytest.approx(in_feet, rel=1e-4)


@MANY
@given(GUIDES, FEET)
def test_a_guide_number_in_metres_is_the_one_in_feet(guide: int, feet: float) -> None:
    """A guide number moved between units lights the same."""
    in_feet = aperture_of(f"guide number {guide} feet, {feet} feet, what aperture?")
    assert aperture_of(f"guide number {guide * 0.3048:.6f} metres, {feet} feet, what aperture?") == pytest.approx(in_feet, rel=1e-4)


@MANY
@given(GUIDES, FEET, SPEEDS)
def test_the_aperture_asked_back_gives_the_distance(guide: int, feet: float, speed: int) -> None:
    """Ask for the aperture, then for the distance at that aperture: the distance comes back."""
    aperture = aperture_of(f"guide number {guide} feet, {feet} feet, ISO {speed}, what aperture?")
    found = answer(f"guide number {guide} feet, f/{aperture:.6f}, ISO {speed}, how far away?")
    assert found.answers[0].quantity == "distance"
    assert float(found.answers[0].value) == pytest.approx(feet, rel=1e-4)


@MANY
@given(GUIDES, FEET, SPEEDS)
def test_the_guide_number_asked_back_is_the_one_given(guide: int, feet: float, speed: int) -> None:
    """The exposure that a guide number gives is measured back as that guide number."""
    aperture = aperture_of(f"guide number {guide} feet, {feet} feet, ISO {speed}, what aperture?")
    found = answer(f"what guide number gives f/{aperture:.6f} at {feet} feet on ISO {speed}?")
    assert found.answers[0].quantity == "guide_number"
    assert float(found.answers[0].value) == pytest.approx(guide, rel=1e-3)


@MANY
@given(GUIDES, FEET, POWERS)
def test_the_power_asked_back_is_the_one_given(guide: int, feet: float, power: str) -> None:
    """The power that gives the aperture of a power is that power."""
    aperture = aperture_of(f"guide number {guide} feet, {feet} feet, {power} power, what aperture?")
    found = answer(f"guide number {guide} feet, {feet} feet, f/{aperture:.6f}, what power?")
    share = 1.0 if power == "full" else 1 / float(power.partition("/")[2])
    assert float(found.answers[0].value) == pytest.approx(share, rel=1e-4)


# --- nothing typed is a fault ----------------------------------------------------------------------

FAULT = "the fault is in this program"
HOSTILE = [
    "", " ", "\x00", "\x1b[31mred\x1b[0m", "\u202egn 110 ft, 10 ft\u202c", "\ufeffgn 110 ft 10 ft stop?", "gn 1e400 ft, 10 ft, aperture?", "1e400", "-1e400 feet",
    "nan", "inf", "-inf stops", "gn nan ft, inf ft", "\"\"\"\"\"\"", "\"5'6\"\" \"'\"'\"", "((((((", "))))", "f/" * 300, "1/" * 300 + "1", "½" * 200, "°" * 50, "9" * 5000,
    "ISO " * 400, "to " * 300, "and a half " * 200, "\n\n\n", "a\tb\tc", "٣ feet", "１０ ｆｅｅｔ, ｇｎ １１０ ｆｔ", "🚣 gn 110 ft 🚣 10 ft 🚣 what stop?", "\ud800",
    "what " * 1000, "'; DROP TABLE kit; --", "{0}{1}%s%n", "../../../../etc/passwd", "__import__('os')", "gn 0/0 ft", "0/0", "0:0", "1/0 power", "ISO 1/0", "f/0 at 0 feet at ISO 0 at 0 power",
    "10 ft 10 ft 10 ft gn 5 ft gn 6 ft gn 7 ft ISO 1 ISO 2 f/1 f/2 f/3?", "minus minus minus 3 feet", "−−−1 stop", "1e308 feet times 1e308", "10**999 stops", "one hundred " * 50,
    "log frame 99999999999999999999", "show frame -1", "call it \x07", "start over start over start over", "my flash is called \u202e\u202e", "go back " * 20,
    "ISO 1e-320 f/1e-320 gn 1e-320 ft", "gn 110 ft at 1e-300 m, f?", "shutter 1e300 s", "EV 1e9", "EV -1e9", "magnification 1e200", "2 to the power of 99999 rows",
]


def check_whole(text: str) -> None:
    """An answer comes, whole and printable, and it is not an excuse."""
    found = answer(text)
    assert FAULT not in found.reply, (text, found.reply)
    assert found.reply.strip(), text
    assert not any(ord(c) < 32 or c in "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069" for c in found.reply if c != "\n"), text
    body = json.loads(found.as_json())
    assert body["heard"] == text and body["status"] == found.status


@pytest.mark.parametrize("text", HOSTILE, ids=lambda text: ascii(text[:30]))
def test_hostile_input_gets_an_answer(text: str) -> None:
    """Controls, bidirectional marks, numbers beyond any scale, nested quotes."""
    check_whole(text)


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=120))
@example("f")
def test_any_text_gets_an_answer(text: str) -> None:
    """Whatever Unicode has."""
    check_whole(text)


_WORDS = st.sampled_from(
    "guide number gn feet ft m metres f / : ' \" ½ 8 11 5.6 10 110 ISO ASA 400 0 -3 1/4 1/60 power half full stops stop key fill at and to from the over under what how far "
    "many aperture distance flash two rows front back bounce ceiling softbox push ND bracket log undo forget call it sync sunny 3:1 , . ? ( ) % ° x + - = nan 1e400 each both "
    "not no sorry actually again another closer back by per second mm lens focus depth why table right".split()
)


@settings(max_examples=400, deadline=None)
@given(st.lists(_WORDS, max_size=25))
def test_any_heap_of_our_own_words_gets_an_answer(words: list[str]) -> None:
    """The words that mean something, in every senseless order."""
    check_whole(" ".join(words))


@settings(max_examples=100, deadline=None)
@given(st.lists(st.lists(_WORDS, max_size=8).map(" ".join), min_size=2, max_size=6))
def test_any_conversation_of_our_own_words_gets_answers(turns: list[str]) -> None:
    """The same with a memory."""
    talk = fresh()
    for turn in turns:
        found = talk.answer(turn)
        assert FAULT not in found.reply, (turns, found.reply)
        json.loads(found.as_json())


PHRASES = sorted({say for case in cases() for say in ([t[0] for t in case.turns] or [case.phrase])})


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(PHRASES), st.integers(0, 10_000), st.sampled_from(["drop", "double", "swap", "cut", "join"]), st.sampled_from(PHRASES))
def test_a_phrase_with_a_slip_gets_an_answer(phrase: str, place: int, slip: str, other: str) -> None:
    """A letter dropped, doubled or swapped, half a sentence, two sentences run together."""
    at = place % max(len(phrase), 1)
    slips = {
        "drop": phrase[:at] + phrase[at + 1 :], "double": phrase[:at] + phrase[at : at + 1] + phrase[at:],
        "swap": phrase[:at] + phrase[at + 1 : at + 2] + phrase[at : at + 1] + phrase[at + 2 :], "cut": phrase[:at], "join": phrase + " " + other,
    }
    check_whole(slips[slip])


@settings(max_examples=250, deadline=None)
@given(st.lists(st.lists(st.sampled_from(PHRASES), min_size=1, max_size=4), min_size=1, max_size=5), st.sampled_from([", ", " ", " and ", ". "]))
@example([["1e400 feet", "gn 110 ft", "what power", "f/8"]], ", ")
@example([["1/4 bracket"], ["not 1/4, 0"]], ", ")
@example([["what aperture"], ["go back"], ["undo"]], ", ")
@example([["a metre nearer the crew", "30 mph"]], " and ")
def test_phrases_run_together_get_answers(turns: list[list[str]], between: str) -> None:
    """Conversations made of whole phrases of the corpus, senseless or not."""
    talk = fresh()
    for turn in turns:
        found = talk.answer(between.join(turn))
        assert found.reply.strip(), turns
        json.loads(found.as_json())


# --- places, spaces, case --------------------------------------------------------------------------


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=80))
def test_folding_keeps_every_place(text: str) -> None:
    """Place n of the folded text is place n of what was typed, so that it can be quoted back."""
    assert len(fold(text)) == len(text)


@settings(max_examples=200, deadline=None)
@given(st.sampled_from(PHRASES))
def test_tokens_stand_in_order_inside_the_text(phrase: str) -> None:
    """Each token quotes the words it was made of."""
    tokens = hear(phrase, tables().lexicon).tokens
    assert all(0 <= t.start <= t.end <= len(phrase) for t in tokens)
    assert [t.start for t in tokens] == sorted(t.start for t in tokens)


def facts(text: str) -> list[tuple[str, str, float]]:
    """Facts without their places."""
    return [(f.quantity, f.of, f.value) for f in read(text, tables()).facts]


@pytest.mark.parametrize("phrase", [case.phrase for case in cases() if case.kind == "means" and case.phrase.isascii()][::3], ids=str)
def test_case_and_spaces_do_not_matter(phrase: str) -> None:
    """Shouting and double spaces mean nothing."""
    def heard(text: str) -> list[tuple[str, object]]:
        return [(t.type, t.value) for t in hear(text, tables().lexicon).tokens]

    assert repr(facts(phrase.upper())) == repr(facts(phrase))
    assert heard(phrase.replace(" ", "  ")) == heard(phrase)


# --- no number is left out -------------------------------------------------------------------------


def _said_numbers(text: str) -> list[tuple[int, int, float]]:
    """Where numbers stand in a text, and their values."""
    return [(t.start, t.end, t.value.value) for t in hear(text, tables().lexicon).tokens if isinstance(t.value, Number)]


_PUT_RIGHT = re.compile(r"[,.;:-]\s*(?:oh |er |ah )?(?:no|sorry|rather|oops|wait|actually|i mean)\b|\bnot (?:at |on |the |a |an )?[a-z\d/.]+", re.IGNORECASE)
"""What is put right is gone, and need not be told."""


def left_out(text: str) -> list[str]:
    """Numbers of a question that neither a fact took, in its place or by its value, nor the answer quoted as unplaced.

    "One" alone is a pronoun as well; a claim is answered by where it first goes wrong.
    """
    found = answer(text)
    if found.status not in ("answered", "out_of_reach") or _PUT_RIGHT.search(text) or any(a.quantity == "claim" for a in found.answers):
        return []
    facts = [f for f in read(text, tables()).facts if f.quantity != "number"]
    taken = [(f.start, f.end) for f in facts]
    reworded = [f for f in read(in_plain_words(tables(), text), tables()).facts if f.quantity != "number"]
    values = {f"{value:.4g}" for f in (*facts, *reworded) for value in (f.value, f.other, f.at_iso, f.at_power) if value is not None} | set(re.findall(r"\d+(?:\.\d+)?", found.reply))
    values.add(str(sum(f.quantity in TAKES_LIGHT for f in facts)))  # "what do the three take off?": as many as were told
    unplaced = " ".join((*found.unplaced, found.reply))
    patterns.at_hand(text)
    return [
        text[start:end] for start, end, value in _said_numbers(text)
        if text[start:end].lower() not in ("one", "zero") and not any(low < end and start < max(high, low + 1) for low, high in taken) and text[start:end] not in unplaced and f"{value:.4g}" not in values
    ]


ASKED = [case for case in cases() if case.kind == "answers" and case.expect.startswith("answered ")]


@pytest.mark.parametrize("text", [case.phrase for case in ASKED], ids=str)
def test_an_answer_leaves_out_no_number(text: str) -> None:
    """Every number said is in a fact or is quoted as not used."""
    assert not left_out(text)


@MANY
@given(GUIDES, FEET, SPEEDS, st.sampled_from(["42 boats", "7 oars", "frame 13", "12 volts", "page 36", "3 seconds", "crew 8", "1.85", "0.3", "17"]))
def test_a_number_that_does_not_belong_is_said_to_be_unused(guide: int, feet: float, speed: int, extra: str) -> None:
    """A stray number is quoted back or named, never dropped."""
    text = f"guide number {guide} feet, {feet} feet, ISO {speed}, {extra}, what aperture?"
    found = answer(text)
    if found.status != "answered":
        return
    number = next(word for word in extra.split() if word[0].isdigit())
    assert re.search(rf"(?<![\d.]){re.escape(number)}(?![\d])", found.reply) or number in " ".join(found.unplaced), found.reply
