"""Safety questions asked outright: which are answered, on what topic, and which are left alone.

Figures in the replies are checked against published sources named beside each check.
"""

from __future__ import annotations

import re
from collections import Counter

import pytest

from assistant.safety.aspects import Aspect
from assistant.safety.cautions import TOPICS
from assistant.safety.questions import ASPECTS, answer_hazard, answer_safety, best_aspect

ASKED = (
    ("Is it safe to flash a newborn?", "infant"),
    ("do I need to worry about my baby and the flash", "infant"),
    ("will the strobe hurt a two-week-old's eyes?", "infant"),
    ("can I use my 250 V old flash on a digital camera", "sync_voltage"),
    ("Will my old hammerhead flash fry my mirrorless?", "sync_voltage"),
    ("is it dangerous to touch the hot shoe contacts of an old flash?", "sync_voltage"),
    ("can I open the flash to fix the capacitor", "high_voltage"),
    ("how long after I switch it off is the capacitor safe?", "high_voltage"),
    ("is it ok to take the head apart myself?", "high_voltage"),
    ("the big head gave me a shock", "high_voltage"),
    ("lithium battery puffed up, can I get one more job?", "battery"),
    ("my battery is swollen", "battery"),
    ("can I take flash batteries on the plane", "battery"),
    ("the AAs have leaked inside the flash, what do I do?", "battery"),
    ("flash in the rain", "water"),
    ("Is flash OK in the rain?", "water"),
    ("the boathouse floor is wet, is it ok to plug the pack in?", "water"),
    ("can I shoot with strobes when it is drizzling", "water"),
    ("will strobe at 12 Hz trigger epilepsy?", "epilepsy"),
    ("my sitter has epilepsy, can I photograph her with flash?", "epilepsy"),
    ("how many flashes per second are safe for people?", "epilepsy"),
    ("gel started smoking", "fire"),
    ("My softbox is starting to smell of burning, what now", "fire"),
    ("can I put a cloth over the modelling lamp?", "fire"),
    ("cat's eyes flash", "eyes"),
    ("does flash hurt a cat's eyes", "eyes"),
    ("can flash make you go blind?", "eyes"),
    ("is it safe to use an umbrella outdoors when it's gusty?", "stand"),
    ("are two sandbags enough to keep it safe?", "stand"),
    ("is it ok to boom a light over the crew?", "stand"),
    ("are flashbulbs dangerous?", "bulbs"),
    ("can the modelling lamp burn me?", "heat"),
    ("can I run both heads off one extension reel?", "mains"),
    ("is it ok to run the pack from a generator?", "mains"),
    ("will the flash bother a horse", "eyes"),
    ("what happens if I get rain inside my flash", "water"),
    ("can flash bulbs blow up in my face?", "bulbs"),
    ("is 8 flashes a second ok with an audience?", "epilepsy"),
    ("I want to fire the flash 15 times a second at a party. Is that a problem?", "epilepsy"),
    ("my softbox caught fire", "fire"),
    ("My monolight buzzes and sparks when plugged in, what should I do", "mains"),
    ("should I use a GFCI outlet for strobes outside?", "mains"),
    ("what weight should hold down a c-stand with a boom?", "stand"),
    ("safe to leave charging NiMH overnight?", "battery"),
    ("Is it OK to fire a flash in a barn full of hay?", "fire"),
    ("Is the voltage of my grandfather's flash too high for my DSLR?", "sync_voltage"),
    ("Is the flash too bright for her eyes at 2 feet?", "eyes"),
    ("how do I stop my light stand falling over in the wind?", "stand"),
    ("can I change the flash tube?", "high_voltage"),
    ("mains monoblocs on the lawn, starting to drizzle; carry on or pack up?", "water"),
    ("found a carton of old flashbulbs, what do I watch out for", "bulbs"),
    ("open up a dead studio head and discharge the capacitor with a screwdriver, how", "high_voltage"),
    ("How do I stop a big softbox on a tall stand from tipping over?", "stand"),
    ("are there any dangers with studio flash I should know about", "high_voltage"),
    ("what's the safest way to power heads outdoors", "mains"),
)

NOT_SAFETY = (
    "will it rain in Leeds on Saturday afternoon?",
    "It's pouring and the light is out in the rain. Guide number 200 feet, couple at 10 feet, iso 100, which f-stop?",
    "baby at 6 feet, GN 60, what aperture?",
    "Can I use f/8 at 10 feet with GN 80?",
    "Is f/8 a safe bet at 10 feet with my flash?",
    "can I bounce the flash off the ceiling?",
    "Can I use flash at 1/500?",
    "Will the flash reach the back row at 30 feet?",
    "Should I open up a stop for the umbrella?",
    "is flash ok for the baby at f/8 from 3 m with gn 40 or do I need f/11?",
    "Which camera should I buy for about a thousand pounds?",
    "Do I need a stop more for a dark horse?",
    "can I get two stops from two old flashes?",
    "Will four old strobes give me f/16?",
    "what's a stop?",
    "How long does my flash take to recycle?",
    "should I change the lens opening if I move the light closer to her face?",
    "what power for a newborn at 5 feet, f/5.6?",
    "my flash is on a boom",
    "no, flash bulbs",
    "how many stops does the orange gel cost?",
    "",
    "Can I use the flash outdoors?",
    "can the head swivel?",
    "is it bad to be half a stop over?",
    "will a stronger battery make my flash brighter?",
    "Is it fine to open the flash head wide with the zoom?",
    "how many degrees must the flash spread to cover the frame?",
    "is it ok to mix daylight and flash?",
)


@pytest.mark.parametrize(("phrase", "topic"), ASKED)
def test_a_safety_question_is_answered_on_its_topic(phrase: str, topic: str) -> None:
    """The prepared answer belongs to the hazard that was asked about."""
    answer = answer_safety(phrase)
    assert answer is not None
    assert topic in answer.topics


@pytest.mark.parametrize("phrase", NOT_SAFETY)
def test_other_questions_are_left_alone(phrase: str) -> None:
    """An exposure question in a risky scene is not taken for a safety question."""
    assert answer_safety(phrase) is None


STATED = (
    ("We're by the pool with a mains head on an extension lead and it has started drizzling", "water"),
    ("one of the rowers has epilepsy and we want to shoot a strobe sequence", "epilepsy"),
    ("the breaker keeps tripping when both heads recycle", "mains"),
    ("kids will be running round the stands all day", "stand"),
    ("leads across the doorway, guests coming through", "mains"),
    ("my flash fell in the river", "water"),
    ("the softbox lining is touching the bulb", "fire"),
    ("I'm going to take the flash apart to fix it", "high_voltage"),
    ("shooting a newborn tomorrow with the little one on the camera", "infant"),
)


@pytest.mark.parametrize(("phrase", "topic"), STATED)
def test_a_hazard_only_stated_is_answered(phrase: str, topic: str) -> None:
    found = answer_hazard(phrase)
    assert found is not None
    assert topic in found.topics


@pytest.mark.parametrize("phrase", ["will it rain in Leeds on Saturday afternoon?", "in the rain, GN 80, 10 feet, what aperture?", "a light grey wall", "two heads and a softbox"])
def test_no_hazard_of_the_trade_is_none(phrase: str) -> None:
    assert answer_hazard(phrase) is None


@pytest.mark.parametrize("aspect", ASPECTS, ids=lambda aspect: aspect.example)
def test_every_aspect_hears_its_example(aspect: Aspect) -> None:
    """No prepared answer is hidden behind another."""
    assert best_aspect(aspect.example) is aspect


@pytest.mark.parametrize("aspect", ASPECTS, ids=lambda aspect: aspect.example)
def test_replies_are_short_and_sourced(aspect: Aspect) -> None:
    """One to five sentences, a source, known topics."""
    sentences = re.findall(r"[.!?](?: |$)", aspect.reply)
    assert 1 <= len(sentences) <= 5
    assert aspect.source
    assert set(aspect.topics) <= set(TOPICS)


def test_every_topic_has_at_least_two_aspects() -> None:
    """Each of the twelve topics is answered from more than one side."""
    counted = Counter(topic for aspect in ASPECTS for topic in aspect.topics)
    assert all(counted[topic] >= 2 for topic in TOPICS), counted


SOURCED = (
    # Photosensitive epilepsy, Epilepsy Society: 3 to 30 Hz; WCAG 2.x criterion 2.3.1: three flashes a second.
    ("will strobe at 12 Hz trigger epilepsy?", r"between about 3 and 30 times a second.*three flashes in any second"),
    # Pack safe: spare lithium batteries, US Federal Aviation Administration: 100 Wh, carry-on only.
    ("can I take flash batteries on the plane?", r"carry-on.*100 watt-hours"),
    # Set safety, Ithaca College: 25 lb for the heavy stand, 15 lb for a lighter one.
    ("is one sandbag enough for a tall stand to be safe?", r"25 lb.*15 lb"),
    # A safe flash trigger for a digital camera, Silicon Chip: one pack, two readings.
    ("how do I measure the trigger voltage of my old flash safely?", r"103 volts.*224"),
    # Should you use the camera flash for your baby's pictures (interview): the first month.
    ("is it safe to flash a newborn?", r"not expected to harm.*first month"),
    # Electrical safety, NIOSH (4 to 6 mA) and Residual current devices, Alard Electrical (30 mA).
    ("do I need an RCD for studio heads?", r"30 mA.*4 to 6 mA"),
    # Set safety, Ithaca College: a clear path of 2 feet.
    ("is it safe to run cables across the floor?", r"2 feet"),
    # Capacitors: real-world scenarios: 45 J at 300 V.
    ("can I open the flash to fix the capacitor?", r"tens of joules at around 300 volts"),
)


@pytest.mark.parametrize(("phrase", "fact"), SOURCED)
def test_figures_in_replies_agree_with_their_sources(phrase: str, fact: str) -> None:
    """The number spoken is the one published."""
    answer = answer_safety(phrase)
    assert answer is not None
    assert re.search(fact, answer.reply)
