"""Comparisons put up for a yes or a no: whichever way round they are said, the answer is the same.

Every pair is common practice, no source, save where another is named beside it.
"""

from __future__ import annotations

import pytest

from assistant.solving.claim_compare import judge_comparison
from assistant.solving.claim_denial import denied
from assistant.solving.claim_folklore import judge_folklore
from assistant.solving.claim_influence import judge_influence
from assistant.solving.claim_ranks import judge_ranks

PAIRS = (  # what has more, what has less, more, less
    ("negative film", "slide film", "more forgiving", "less forgiving"),
    ("a softbox", "a bare flash", "softer", "harder"),
    ("a close umbrella", "a distant umbrella", "softer", "harsher"),
    ("t0.1", "t0.5", "longer", "shorter"),  # ISO 2827
    ("a 4:1 ratio", "a 2:1 ratio", "more contrasty", "flatter"),
    ("the key", "the fill", "brighter", "weaker"),
    ("a flash bulb", "an electronic flash", "longer", "shorter"),
    ("the guide number in feet", "the guide number in metres", "larger", "smaller"),  # international yard and pound agreement, 1959
    ("a leaf shutter syncing", "a focal plane shutter syncing", "faster", "slower"),
    ("the flash at full power", "the flash at 1/16 power", "longer", "shorter"),
    ("daylight", "a household lamp", "bluer", "warmer"),
)


@pytest.mark.parametrize(("high", "low", "more", "less"), PAIRS, ids=lambda word: word)
def test_a_comparison_is_judged_alike_in_every_wording(high: str, low: str, more: str, less: str) -> None:
    """Said straight, turned round, with the other word, denied, and as a question with "isn't"."""
    said = {
        f"is {high} {more} than {low}?": True,
        f"is {low} {more} than {high}?": False,
        f"is {low} {less} than {high}?": True,
        f"is {high} {less} than {low}?": False,
        f"{high} is not {more} than {low}, right?": False,
        f"{low} is not {more} than {high}, right?": True,
        f"isn't {high} {more} than {low}?": True,
        f"{low} is {less} than {high}, isn't it?": True,
        f"is it a myth that {high} is {more} than {low}?": False,
    }
    assert {text: getattr(judge_ranks(text), "holds", None) for text in said} == said


def test_over_and_under_are_told_apart_from_the_kinds_of_film() -> None:
    """Negatives forgive over, slides forgive under."""
    said = {
        "is colour negative more tolerant of over than of under exposure": True,
        "does slide film stand overexposure better than underexposure?": False,
        "does slide film forgive overexposure better than colour negative?": False,
    }
    assert {text: getattr(judge_ranks(text), "holds", None) for text in said} == said


def test_figures_of_a_case_are_no_general_comparison() -> None:
    """A fill that is brighter than its key is a matter of the figures."""
    assert judge_ranks("key at f/5.6 and fill at f/8, is the fill brighter than the key?") is None


def test_reciprocity_and_filters_by_parts() -> None:
    """Reciprocity failure is the ambient part's alone; a filter takes from both."""
    said = {
        "does reciprocity failure of a ten second exposure weaken the flash part as well?": False,
        "only the ambient suffers reciprocity failure": True,
        "a neutral density on the lens cuts the sun but leaves the flash alone": False,
        "a polariser affects daylight but not flash": False,
        "bellows extension matters for ambient light, not flash": False,
    }
    assert {text: getattr(judge_influence(text), "holds", None) for text in said} == said


def test_beliefs_without_a_comparison() -> None:
    """Pushing, red-eye, bounce off a colour, the sun's distance."""
    said = {
        "does moving the flash away from the lens make red-eye worse?": False,
        "does a pre-flash reduce red-eye?": True,
        "will a green ceiling tint my bounced flash?": True,
        "does the inverse square law hold for the sun when I step back?": False,
    }
    assert {text: getattr(judge_folklore(text), "holds", None) for text in said} == said


def test_who_is_compared_with_whom_counts_for_a_belief() -> None:
    """What a belief is of stands before "than", else the belief is not the one said."""
    assert judge_folklore("is a plain head softer than a bounced one?") is None


def test_a_shutter_time_makes_no_brighter_flash() -> None:
    """Within sync speed the shutter acts on the ambient light alone (Photography (Basic), NAVEDTRA 14209)."""
    said = {"does 1/30 give a brighter flash than 1/60?": False, "does 1/30 give a brighter background than 1/60?": True, "does ISO 400 need more light than ISO 100?": False}
    assert {text: getattr(judge_comparison(text), "holds", None) for text in said} == said


def test_a_tag_denies_nothing() -> None:
    """Only a "not" inside the claim does."""
    assert [denied(t) for t in ("x is y, isn't it?", "don't x y?", "x isn't y, is it?", "x is y or not?")] == [False, False, True, False]
