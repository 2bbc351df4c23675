"""Which words call for which caution, and which innocent trade words do not.

The phrase tables are the author's own. Facts in the caution texts are checked against their published
source, named beside each check; the rest of the texts carry "common practice, no source".
"""

from __future__ import annotations

import time

import pytest

from assistant.safety.cautions import (
    CAUTIONS,
    CLOSE_TO_PEOPLE_M,
    TOPICS,
    caution,
    find_cautions,
    topics_in,
)
from assistant.safety.triggers import TRIGGERS, Trigger

HEARD = (
    ("It's pouring and the light is out with us, 10 feet", "water"),
    ("rain is dripping off the head", "water"),
    ("kneeling in a puddle at 8 ft", "water"),
    ("spray from the oars", "water"),
    ("the deck's wet", "water"),
    ("standing in the river at 2 m", "water"),
    ("the boathouse floor is wet and the pack is plugged into the wall", "mains"),
    ("on an extension lead", "mains"),
    ("running off a generator", "mains"),
    ("it keeps tripping the breaker", "mains"),
    ("I've taped the gel straight onto the bare bulb and it takes 1 stop", "heat"),
    ("I've taped the gel straight onto the bare bulb and it takes 1 stop", "fire"),
    ("a tissue over the modelling lamp", "fire"),
    ("silk draped on the hot lamp", "fire"),
    ("modelling lamp covered with a towel", "fire"),
    ("I draped a cloth over the modeling light", "fire"),
    ("a smell of burning from the head", "fire"),
    ("big umbrella on a tall light stand", "stand"),
    ("it's getting gusty", "stand"),
    ("a strong wind", "stand"),
    ("the wind's picking up", "stand"),
    ("head boomed over the crew", "stand"),
    ("toddlers running around the stand", "stand"),
    ("no sandbags with me", "stand"),
    ("the lithium battery has puffed up like a pillow", "battery"),
    ("the battery is bulging", "fire"),
    ("the cells leaked", "battery"),
    ("take the batteries on a plane", "battery"),
    ("10 flashes a second", "epilepsy"),
    ("strobe mode at 12 Hz", "epilepsy"),
    ("one of the guests has had seizures", "epilepsy"),
    ("a baby at 4 feet", "infant"),
    ("a three-week-old girl", "infant"),
    ("newborn twins", "infant"),
    ("the flash is close to the horse's eyes", "eyes"),
    ("firing right into his eyes", "eyes"),
    ("2 inches from her face", "eyes"),
    ("a press bulb in the old gun", "bulbs"),
    ("number 5 flashbulbs", "bulbs"),
    ("my old 1970s flash on my digital camera", "sync_voltage"),
    ("I measured 220 volts on the hot shoe", "sync_voltage"),
    ("opening the head to replace the tube", "high_voltage"),
    ("a 1000 microfarad capacitor at 300 volts", "high_voltage"),
)

NOT_HEARD = (
    "a watershed moment at f/8",
    "a pool of light on the floor",
    "shutter on bulb, f/8",
    "hot light fixture",
    "wind on to the next frame",
    "window light at f/4",
    "wet plate at ISO 1",
    "bare bulb flash, GN 60",
    "open flash with four pops",
    "open up the flash a stop",
    "a splash of light on the wall",
    "baby spot at 6 feet",
    "flash to face 6 feet",
    "key 8 feet from the face",
    "plane of focus at 10 feet",
    "focal plane shutter, 1/60",
    "photosensitive paper",
    "right as rain",
    "catchlight in her eyes",
    "red eye",
    "flooded with light",
    "plug the numbers into the formula",
    "plugged the sync cord into the camera",
    "two heads plugged in series",
    "a train at f/8",
    "restrained at 1/8 power",
    "a strobe at 8 feet",
    "handkerchief over the flash",
    "exponential discharge",
    "modelling light at 6 ft",
    "gel takes 1 stop",
    "light stand 8 ft away",
    "battery pack, GN 60",
    "guide number 110 feet, 7 feet, ISO 200, what aperture",
)


@pytest.mark.parametrize(("phrase", "topic"), HEARD)
def test_a_hazard_in_words_calls_for_its_caution(phrase: str, topic: str) -> None:
    """A scene that can hurt somebody brings the caution of its topic."""
    assert topic in {one.topic for one in find_cautions(phrase)}


@pytest.mark.parametrize("phrase", NOT_HEARD)
def test_innocent_trade_words_call_for_nothing(phrase: str) -> None:
    """Metaphors and trade terms that sound like hazards bring no caution."""
    assert topics_in(phrase) == frozenset()


@pytest.mark.parametrize("trigger", TRIGGERS, ids=lambda trigger: trigger.example)
def test_every_trigger_hears_its_example(trigger: Trigger) -> None:
    """No row of the trigger table is dead."""
    assert set(trigger.topics) <= topics_in(trigger.example)


def test_the_most_serious_comes_first() -> None:
    """Water with mains power stands before wind and eyes."""
    found = [one.topic for one in find_cautions("gusty, wet floor, plugged into the wall, close to her eyes")]
    assert found == sorted(found, key=TOPICS.index)
    assert found[0] == "water"
    assert found[-1] == "eyes"


@pytest.mark.parametrize(
    ("distance_m", "people", "warned"),
    [(CLOSE_TO_PEOPLE_M - 0.01, True, True), (CLOSE_TO_PEOPLE_M, True, False), (CLOSE_TO_PEOPLE_M + 0.01, True, False), (0.1, False, False), (0.0, True, False), (None, True, False)],
)
def test_a_flash_nearer_than_a_foot_to_a_person_is_cautioned(distance_m: float | None, people: bool, warned: bool) -> None:
    """The threshold is one foot (common practice, no source): inside it, at it and outside it."""
    found = {one.topic for one in find_cautions("a portrait", distance_m=distance_m, people=people)}
    assert ("eyes" in found) is warned


def test_there_is_one_caution_for_each_topic() -> None:
    """Twelve topics, each with a short text and a source."""
    assert sorted(TOPICS) == sorted(
        ["eyes", "infant", "epilepsy", "heat", "fire", "mains", "water", "stand", "battery", "high_voltage", "sync_voltage", "bulbs"]
    )
    for one in CAUTIONS:
        assert one.source
        assert 1 <= one.text.count(". ") + 1 <= 2, one.topic


def test_every_topic_has_a_trigger() -> None:
    """No caution is out of reach."""
    assert {topic for trigger in TRIGGERS for topic in trigger.topics} == set(TOPICS)


def test_figures_agree_with_their_sources() -> None:
    """Flash rate: WCAG 2.x success criterion 2.3.1 (three in a second). Old pack: Silicon Chip (103 V and 224 V)."""
    assert "three a second" in caution("epilepsy").text
    assert "103 V to 224 V" in caution("sync_voltage").source
    # Capacitors: real-world scenarios: half C times V squared.
    assert 0.5 * 1000e-6 * 300.0**2 == pytest.approx(45.0)
    assert "45 J" in caution("high_voltage").source


def test_an_unknown_topic_is_an_error() -> None:
    """Only the twelve topics exist."""
    with pytest.raises(KeyError):
        caution("weather")


def test_hearing_is_fast() -> None:
    """Two hundred sentences take well under a second."""
    topics_in("warm up")
    start = time.perf_counter()
    for _ in range(200):
        topics_in("guide number 110 feet, 7 feet, ISO 200, white umbrella in a boathouse with a wet floor, what aperture do I set")
    assert time.perf_counter() - start < 1.0
