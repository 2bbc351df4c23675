"""Failures described in words: which cause is named, and that thin is under and pale slides are over.

The phrase tables are the author's own; causes are common practice or derived, as each row says.
"""

from __future__ import annotations

import pytest

from assistant.teaching.diagnosis import FAILURES, Failure, diagnose

DESCRIBED = (
    ("Every other negative is thin, what's going on?", "fired before recycled"),
    ("every flash picture on the roll is half black. what did i do wrong", "above sync speed"),
    ("all my frames came back with thin negatives, were they under or over?", "negatives thin"),
    ("thin negs: over or under?", "negatives thin"),
    ("my slides came back really dark, over or under?", "slides under"),
    ("are pale slides over or underexposed?", "slides over"),
    ("the first frame is fine and the next two are dark", "fired before recycled"),
    ("i can see two images of the rower in one frame", "ghost beside the flash picture"),
    ("shots through the softbox are two stops dark", "umbrella or box not counted"),
    ("every second frame is black", "fired before recycled"),
    ("alternate frames are blank", "fired before recycled"),
    ("half of each frame is black on the roll I shot at 1/500", "above sync speed"),
    ("there's a black band across the bottom of every picture", "above sync speed"),
    ("My negs are all thin", "negatives thin"),
    ("negatives are dense as anything", "negatives dense"),
    ("The slides came back pale", "slides over"),
    ("The slides came back way too dark", "slides under"),
    ("why are my slides dark?", "slides under"),
    ("The crew at the back of the boat came out dark", "fall-off over the rows"),
    ("back row came out dark", "fall-off over the rows"),
    ("people's faces are chalky white", "white faces"),
    ("why did the background go black?", "black background"),
    ("there's a blurry double image around the oars", "ghost beside the flash picture"),
    ("why are the corners of my wide-angle shots dark", "corners dark"),
    ("everyone has red-eye in my photos", "red eyes"),
    ("the team shots all came out orange", "colour cast"),
    ("only the bottom half of the picture is exposed", "only part of the height lit"),
    ("whole roll came back blank", "flash did not fire"),
    ("the film came back completely clear", "flash did not fire"),
    ("Shots with the softbox are underexposed", "umbrella or box not counted"),
    ("my macro shots came out too dark", "close-ups dark"),
    ("all the shots with the polariser were underexposed", "filter not counted"),
    ("my flash pics are all murky", "under"),
    ("The last few frames of the roll are dark", "under"),
    ("The top half of my picture is lit, the bottom isn't", "only part of the height lit"),
    ("the flash didn't go off on half the frames", "some frames not fired"),
    ("dark corners in all the shots", "corners dark"),
    ("the kids' eyes glow red", "red eyes"),
    ("negs have no shadow detail", "negatives thin"),
    ("Last night's frames alternate between fine and two stops dark", "fired before recycled"),
    ("a ghost trail behind the rower", "ghost beside the flash picture"),
)

NOT_DESCRIBED = (
    "GN 80, 10 feet, dark room, what aperture?",
    "how do I make the background black?",
    "how dark will the background be?",
    "Black background, flash at 5 ft, wall at 20 ft, how many stops under?",
    "the back row is at 20 ft and the front at 10, how much darker is it?",
    "I want the background two stops under",
    "what's a thin negative?",
    "should I open up for a black suit?",
    "I have a dense ND on the lens",
    "slide film, 10 feet, GN 110, f-stop?",
    "My flash is a white one with gn 40",
    "two stops darker please",
    "rim light a stop over",
    "I'm half a stop over on slide film. Is that all right?",
    "The dog is black and the room is white",
    "we have a dark wooden ceiling and 12 feet of room",
    "White umbrella, 6 feet, GN 110",
    "The whole team is in black at 12 feet, GN 160 ft, full power",
    "all the frames are at f/8",
    "",
    "I'm on 400 film and the boathouse is dark",
    "everything is lit by the big head at full",
    "the background is black velvet, 12 feet",
    "the flash is half covered, pictures at 10 ft",
    "all lights on full, too bright for f/16",
)


@pytest.mark.parametrize(("phrase", "name"), DESCRIBED)
def test_a_described_failure_is_recognised(phrase: str, name: str) -> None:
    """Each description leads to its likeliest cause."""
    found = diagnose(phrase)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize("phrase", NOT_DESCRIBED)
def test_exposure_questions_are_no_failures(phrase: str) -> None:
    """Dark, black or white in a question about settings is not a failure."""
    assert diagnose(phrase) is None


@pytest.mark.parametrize("failure", FAILURES, ids=lambda failure: failure.example)
def test_every_failure_hears_its_example(failure: Failure) -> None:
    """No row is hidden behind another, and each has causes, a check and a source."""
    found = diagnose(failure.example)
    assert found is not None
    assert found.name == failure.name
    assert failure.causes and failure.check and failure.source


@pytest.mark.parametrize(
    ("phrase", "verdict"),
    [
        ("my negatives are thin", "too little light"),
        ("my negatives are dense", "too much light"),
        ("my slides are pale", "too much light"),
        ("my slides are thin", "too much light"),
        ("my slides are dark", "too little light"),
        ("my slides are dense", "too little light"),
    ],
)
def test_negatives_and_slides_read_opposite_ways(phrase: str, verdict: str) -> None:
    """A thin negative is under and a thin slide is over (common practice, no source)."""
    found = diagnose(phrase)
    assert found is not None
    assert verdict in found.reply.split(".")[0]


def test_stops_have_the_sign_of_exposure() -> None:
    """Half of the charge is one stop under; life size is two (standard relations; bellows question and answer copy)."""
    recycled, close = diagnose("every second frame is thin"), diagnose("my close-ups are too dark")
    assert recycled is not None and recycled.stops == -1.0
    assert close is not None and close.stops == -2.0


def test_the_reply_starts_with_the_likeliest_cause_and_ends_with_the_check() -> None:
    """One cause first, the others after it, then what to do next."""
    found = diagnose("half the frame is black")
    assert found is not None
    assert found.reply.startswith("Most likely the shutter was faster than the sync speed")
    assert found.reply.endswith(found.check)
