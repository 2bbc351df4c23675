"""Terms and explanations: what is found for which words, and that the figures in the texts are right.

Phrase tables are the author's own. Figures are checked against the published source named beside each.
"""

from __future__ import annotations

import math
import re

import pytest

from assistant.teaching.glossary import PAIRS, TERMS, WHYS, Term, Why, explain, lookup

EXPLAINED = (
    ("Explain guide numbers like I'm new to all this", "guide number"),
    ("what on earth is a guide number", "guide number"),
    ("what even is a guide number", "guide number"),
    ("what does gn stand for", "guide number"),
    ("whats the point of a guide number", "guide number"),
    ("can you explain guide numbers to me like I've never held a flash", "guide number"),
    ("our teacher keeps saying sync speed. whats that mean", "sync speed"),
    ("I keep reading about sync speed and have no clue what it is", "sync speed"),
    ("people keep saying 'a stop'. how much is a stop?", "stop"),
    ("um what is a stop i keep hearing it", "stop"),
    ("tell me about reciprocity failure, I'm doing long night shots", "reciprocity failure"),
    ("how do I bounce flash off a ceiling?", "bounce method"),
    ("everybody keeps telling me to bounce it off the ceiling, what does that actually do for the picture?", "bounce method"),
    ("How does the auto sensor on an old flash work?", "auto sensor flash"),
    ("someone at the club said inverse square law and I just nodded, what is it", "inverse square law"),
    ("What does TTL stand for?", "ttl"),
    ("my book mentions a bellows factor, what's that", "bellows factor"),
    ("why does light from a flash fall off so fast?", "fall-off with distance"),
    ("is a stop the same as an f-stop?", "stop and f-stop"),
    ("what does 1/128 power mean", "power"),
    ("what is butterfly lighting", "butterfly lighting"),
    ("whats a stop", "stop"),
    ("what's a stop?", "stop"),
    ("What does f-number mean?", "f number"),
    ("what is aperture?", "aperture"),
    ("what is the inverse square law", "inverse square law"),
    ("how does the inverse square law work?", "inverse square"),
    ("How come moving the flash twice as far costs two stops?", "inverse square"),
    ("What's feathering?", "feather"),
    ("what does sync speed mean", "sync speed"),
    ("What's dragging the shutter, in plain words?", "dragging the shutter"),
    ("What is meant by t0.5?", "t0.5"),
    ("Can you explain what a lighting ratio is?", "lighting ratio"),
    ("tell me about hyperfocal distance", "hyperfocal"),
    ("what's reciprocity failure?", "reciprocity failure"),
    ("what is a polarizer", "polariser"),
    ("what are watt-seconds", "watt second"),
    ("How can I find out the guide number of my own flash with a test?", "test for guide number"),
    ("How do I work out my flash's real guide number?", "test for guide number"),
    ("Why do I lose light with a softbox, and roughly how many stops?", "softbox loss"),
    ("why does my umbrella eat so much light", "umbrella loss"),
    ("Why do I have to give more exposure when the bellows are racked out a long way?", "bellows"),
    ("What's the difference between a lighting ratio and a key-to-fill ratio?", "ratio conventions"),
    ("does the colour of the subject matter?", "subject colour"),
    ("do I need to change anything if she wears a white dress?", "subject colour"),
    ("why is my guide number in meters smaller than in feet?", "feet and metres"),
    ("Why do f-stops go 1.4, 2, 2.8?", "f-numbers backwards"),
    ("Why doesn't the shutter affect flash?", "shutter and flash"),
    ("why does the shutter speed matter with flash bulbs?", "bulbs and shutter"),
    ("Why do two flashes only give me one more stop?", "two flashes"),
    ("why does half power only lose one stop rather than half the f-number?", "half power"),
    ("Is a T-stop the same as an f-stop?", "f-stop and t-stop"),
    ("t0.5 vs t0.1?", "t0.5 and t0.1"),
    ("what's the difference between watt seconds and guide number?", "energy and guide number"),
    ("why do people use ND filters with fill flash?", "nd with flash"),
    ("why is everything behind my sitter black when I use flash?", "black background"),
    ("What's the point of bracketing", "why bracket"),
    ("why does depth of field grow when I stop down?", "depth of field"),
    ("What happens to the background if I slow the shutter down?", "shutter and ambient"),
    ("why must I count the distance from the flash and not the camera?", "camera distance"),
    ("How does an umbrella change the light?", "modifier softness"),
    ("why is my flash guide number in feet bigger?", "feet and metres"),
    ("Why isn't the flash twice as bright at half the distance?", "inverse square"),
    ("How do you drag the shutter?", "dragging the shutter"),
    ("I don't get guide numbers. Can you explain?", "guide number"),
    ("Why can't I use 1/500 with flash?", "sync limit"),
    ("why divide by distance to get the f-stop?", "the rule itself"),
    ("Do I need to change the exposure for a black dog?", "subject colour"),
    ("when should I bracket?", "why bracket"),
    ("why is direct flash so harsh?", "soft by size"),
    ("Does ISO affect flash?", "film speed effect"),
    ("what's the relation between power and stops?", "power effect"),
    ("why do two lights at equal power give a 2:1 ratio?", "ratio of equal lights"),
)

NOT_EXPLAINED = (
    "guide number 110, 10 feet, what aperture?",
    "what's the guide number if f/8 is right at 10 feet?",
    "What's the aperture?",
    "What's the guide number?",
    "and at quarter power?",
    "what is the ratio of f/8 to f/5.6?",
    "how far can I be at f/8?",
    "How do I get f/8 at 10 feet with GN 160?",
    "what power do I set?",
    "what stop?",
    "which f-stop for the rim light",
    "How many stops do I lose with a 2 stop ND and softbox?",
    "Two identical flashes side by side double the guide number. true or false?",
    "does it rain in Leeds",
    "my dog keeps barking at night, how do I stop it",
    "Which camera should I buy",
    "What is 37 metres in feet",
    "f/8 or f/11?",
    "Will the flash reach the back row at 30 feet?",
    "what's the fill at?",
    "What is the depth of field at f/8, 10 feet, 50mm?",
    "It's EV 15 and my sync is 1/250. What aperture is right for the daylight at sync speed?",
    "What's my total if key is f/8 and fill f/5.6?",
    "how do I make the background two stops darker?",
    "my flash is a manual one",
    "what is the capital of Peru",
    "",
)


@pytest.mark.parametrize(("phrase", "name"), EXPLAINED)
def test_a_teaching_question_finds_its_explanation(phrase: str, name: str) -> None:
    """Paraphrases reach the entry that answers them."""
    found = explain(phrase)
    assert found is not None
    assert found.names[0] == name


@pytest.mark.parametrize("phrase", NOT_EXPLAINED)
def test_exposure_questions_and_strangers_are_left_alone(phrase: str) -> None:
    """A question that wants a number, or is about something else, gets no lesson."""
    assert explain(phrase) is None


@pytest.mark.parametrize("entry", WHYS + PAIRS, ids=lambda entry: entry.example)
def test_every_explanation_hears_its_example(entry: Why) -> None:
    """No row is hidden behind another."""
    assert explain(entry.example) is entry.term


@pytest.mark.parametrize("term", TERMS, ids=lambda term: term.names[0])
def test_every_name_is_found(term: Term) -> None:
    """Each name finds its own term, alone and inside a question."""
    for name in term.names:
        assert lookup(name) is term, name
        for frame in ("what is {}?", "what's a {}", "what does {} mean?"):
            assert explain(frame.format(name)) is term, frame.format(name)


@pytest.mark.parametrize("term", TERMS + tuple(entry.term for entry in WHYS + PAIRS), ids=lambda term: term.names[0])
def test_texts_are_short_and_sourced(term: Term) -> None:
    """One to five sentences and a source or the mark of common practice."""
    assert 1 <= len(re.findall(r"[.](?: |$)", term.text)) <= 5
    assert term.source


def test_there_are_plenty_of_terms() -> None:
    """The trade's words are covered, each name once."""
    names = [name for term in TERMS for name in term.names]
    assert len(TERMS) >= 80
    assert len(names) == len(set(names))


def test_the_longest_name_wins() -> None:
    """ "Sync speed" is not read as "sync", nor "fill flash" as "fill"."""
    for phrase, name in (("sync speed", "sync speed"), ("fill flash", "fill flash"), ("high-speed sync", "high speed sync"), ("focal-plane shutters", "focal plane shutter")):
        found = lookup(phrase)
        assert found is not None
        assert found.names[0] == name


def test_spellings_and_plurals_are_forgiven() -> None:
    """American and British spellings, hyphens, plurals and common slips."""
    for phrase, name in (("color temperature", "colour temperature"), ("gray cards", "grey card"), ("guide-numbers", "guide number"), ("aperature", "aperture"), ("umbrelas", "umbrella"), ("NDs", "nd")):
        found = lookup(phrase)
        assert found is not None
        assert name in found.names


def _text(name: str) -> str:
    for term in TERMS + tuple(entry.term for entry in WHYS + PAIRS):
        if term.names[0] == name:
            return term.text
    raise AssertionError(name)


FIGURES = (
    # Photography (Basic), NAVEDTRA 14209: f/8 at 10 ft is guide number 80.
    ("test for guide number", "f/8 at 10 feet is guide number 80", 8 * 10, 80),
    ("guide number", "guide number 80 in feet, at 10 feet, is f/8", 80 / 10, 8),
    # Guide number, Wikipedia: 37 in metres is 120 in feet.
    ("feet and metres", "3.28 times", 1 / 0.3048, 3.28),
    # US Army subcourse SS0512: 450 mm on a 300 mm lens, 2.25.
    ("bellows factor", "2.25 times", (450 / 300) ** 2, 2.25),
    # Bellows factor question and answer copy: life size needs four times the light.
    ("magnification", "four times the light", (1 + 1) ** 2, 4),
    # NAVEDTRA 14209 and the derivation: key plus fill to fill, fill a stop under.
    ("lighting ratio", "one stop under makes 3:1", (2 + 1) / 1, 3),
    ("key to fill ratio", "3:1 and 5:1", (4 + 1) / 1, 5),
    # Exponential discharge: ln 10 over ln 2.
    ("t0.1", "3.32 times", math.log(10) / math.log(2), 3.32),
    # Micro reciprocal degree, ITWissen: 5,500 K is 182.
    ("mired", "182", 1e6 / 5500, 182),
    # Exposure value, Wikipedia: f/16 at 1/125 s is EV 15.
    ("exposure value", "EV 15", math.log2(16**2 * 125), 15),
    # Relation between flash guide number and ISO: ISO 400 doubles the number.
    ("film speed and guide number", "80 at ISO 100 is 160 at ISO 400", 80 * math.sqrt(4), 160),
    # DIN system, Encyclopaedia Britannica: ISO 200 is 24 DIN.
    ("din", "24 DIN is ISO 200", 10 * math.log10(200) + 1, 24),
    # Standard photometric relations: 75 % of the charge is 0.4 stop.
    ("ready light", "0.4 stop", -math.log2(0.75), 0.4),
    # The same: flash one stop under adds log2(1.5), two under log2(1.25).
    ("flash plus ambient", "about 0.6 stop", math.log2(1.5), 0.6),
    ("flash plus ambient", "two stops under 0.3", math.log2(1.25), 0.3),
    # Neutral density (encyclopaedia table): 0.9 is three stops.
    ("nd", "0.9, or ND8, is three", 0.9 / math.log10(2), 3),
    # The derivation: 1000 BCPS is 70.7 in feet.
    ("bcps", "about 71", math.sqrt(5 * 1000), 71),
    ("grey card", "two and a half stops", math.log2(1 / 0.18), 2.5),
)


@pytest.mark.parametrize(("name", "said", "worked", "stated"), FIGURES)
def test_figures_in_the_texts_are_right(name: str, said: str, worked: float, stated: float) -> None:
    """The number in the sentence agrees with its source within half a percent or the last figure given."""
    assert said in _text(name)
    assert worked == pytest.approx(stated, rel=0.005, abs=0.05)
