"""Losses asked in words: modifiers, bounce, zoom tables, filters, bellows, high-speed sync, T-stops."""

from __future__ import annotations

import math
from functools import lru_cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answer import Answer
from assistant.assistant import Assistant
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation
from assistant.scales import nearest_aperture
from assistant.solving.bounce import mirror_path
from assistant.solving.lights import TYPICAL_LOSS


@lru_cache(maxsize=1)
def _tables() -> Tables:
    return load_tables(None)


def ask(*turns: str) -> Answer:
    """The answer to the last turn of a conversation with nobody's gear."""
    assistant = Assistant(_tables(), Conversation())
    return [assistant.answer(turn) for turn in turns][-1]


def value(*turns: str, quantity: str = "") -> float:
    """The first answer's value, checked to be answered and of its quantity."""
    answer = ask(*turns)
    assert answer.status == "answered", answer.reply
    assert not quantity or answer.answers[0].quantity == quantity, answer.reply
    return float(answer.answers[0].value)


# --- readings taken through the filter ---------------------------------------------------------------


@pytest.mark.parametrize(("said", "aperture"), [("metered through the filter", 8.0), ("the meter was behind it", 8.0), ("metered without it", 4.0), ("the meter wasn't behind it", 4.0), ("it was not metered through the filter", 4.0)])
def test_what_the_meter_looked_through_is_in_its_reading(said: str, aperture: float) -> None:
    assert value(f"orange filter, factor 4; {said} and read f/8, what do I set?", quantity="aperture") == pytest.approx(aperture)


# --- published ----------------------------------------------------------------------------------------


def test_bounce_of_the_navy_course() -> None:
    # US Navy, Photography (Basic), NAVEDTRA 14209, assignment 4, question 4-68: GN 220, path 14 ft, f/8 (two stops for the surface from memory)
    found = value("Bounced, GN 220 feet, total path 14 feet, the surface takes two stops, ISO 100. Aperture?", quantity="aperture")
    assert nearest_aperture(found).value == 8.0


def test_bounce_of_the_forum_rule() -> None:
    # "Bouncing the flash", The Photo Forum, 2006: f = 0.7 GN / (d1 + d2) is one stop for the paint
    found = value("Bounce: 2 m up to the ceiling and 3 m down to her, the ceiling costs one stop, GN 50 m. Aperture?", quantity="aperture")
    assert found == pytest.approx(0.7 * 50 / 5, rel=0.015)


FACTORS = (
    # US Army correspondence subcourse SS0512, p. 12: factor 2 takes f/5.6 to f/4, factor 4 takes f/16 to f/8
    (5.6, 2, 4.0), (16, 4, 8.0),
)


@pytest.mark.parametrize(("before", "factor", "after"), FACTORS)
def test_filter_factors_of_the_army_course(before: float, factor: int, after: float) -> None:
    found = value(f"f/{before} is right as it is. I put a filter of factor {factor} on the lens. What aperture now?", quantity="aperture")
    assert nearest_aperture(found).value == after


@pytest.mark.parametrize(
    ("first", "second", "factor", "stops"),
    [(4, 4, 16, 4.0), (3, 25, 75, 6.23)],  # essential-skills textbook, "using more than one filter"; "The filter factor", Photography Corner
)
def test_stacked_filters_multiply(first: int, second: int, factor: float, stops: float) -> None:
    answer = ask(f"Filters of factor {first} and factor {second} stacked: what factor is that?")
    found = {a.quantity: float(a.value) for a in answer.answers}
    assert found["factor"] == pytest.approx(factor)
    assert found["stops"] == pytest.approx(stops, abs=0.01)


ND_TABLE = ((2, 0.3, 1), (4, 0.6, 2), (8, 0.9, 3), (16, 1.2, 4), (64, 1.8, 6), (512, 2.7, 9))
"""Factor, density, stops: "Neutral density", encyclopaedia table."""


@pytest.mark.parametrize(("factor", "density", "stops"), ND_TABLE)
def test_nd_by_factor_and_by_density(factor: int, density: float, stops: int) -> None:
    assert value(f"ND{factor} on the lens: how many stops?", quantity="stops") == pytest.approx(stops)
    assert value(f"ND {density} on the lens: how many stops?", quantity="stops") == pytest.approx(stops, abs=0.04)


# --- laws ----------------------------------------------------------------------------------------------


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(["softbox", "umbrella", "diffuser", "grid", "scrim"]), st.sampled_from([0.5, 1, 1.5, 2, 3]))
def test_a_loss_costs_its_stops_of_aperture(worn: str, lost: float) -> None:
    bare = value("GN 64 m, 4 m, ISO 100. Aperture?")
    assert value(f"GN 64 m through a {worn} that costs {lost} stops, 4 m, ISO 100. Aperture?") == pytest.approx(bare / 2 ** (lost / 2))


@settings(max_examples=25, deadline=None)
@given(st.floats(1, 4), st.floats(1, 4))
def test_only_the_whole_path_of_a_bounce_counts(up: float, down: float) -> None:
    up, down = round(up, 1), round(down, 1)
    found = value(f"Bounce off the ceiling, {up} m up to the ceiling and {down} m down to him, ceiling costs two stops, GN 48 m. Aperture?")
    assert found == pytest.approx(48 / (up + down) / 2)


@pytest.mark.parametrize("worn", ["softbox", "umbrella", "grid", "dome", "snoot"])
def test_a_loss_not_given_is_typical_and_said_so(worn: str) -> None:
    answer = ask(f"GN 56 m through a {worn}, 2 m, ISO 100. Aperture?")
    assert float(answer.answers[0].value) == pytest.approx(28 / 2 ** (TYPICAL_LOSS[worn][1] / 2))
    assert any(a.quantity == "stops" for a in answer.assumed)
    assert "common practice" in answer.reply and "test your own" in answer.reply


def test_a_mirror_path_is_at_least_the_straight_way() -> None:
    assert mirror_path(4, 0, 0) == 4
    assert mirror_path(3, 2, 2) == pytest.approx(5)  # a 3-4-5 triangle
    assert mirror_path(3, 1, 3) == pytest.approx(mirror_path(3, 2, 2))


# --- bounce ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "question",
    [
        "bouncing off a white ceiling, 4 feet from the head up to the ceiling, 8 feet from the ceiling down to the crew, the ceiling soaks up a stop and a half. GN 120 ft, ISO 400. f number?",
        "Head to ceiling 4 feet, ceiling to the crew 8 feet, paint takes 1.5 stops, GN 120 ft, ISO 400, aperture?",
        "Bounced, path of 12 feet in all, ceiling costs 1.5 stops, GN 120 feet, ISO 400. What aperture?",
        "GN 120 ft, ISO 400, bounce: four feet up, another eight down to her, the ceiling eats 1.5 stops. aperture?",
    ],
)
def test_legs_of_a_bounce_in_many_words(question: str) -> None:
    answer = ask(question)
    assert float(answer.answers[0].value) == pytest.approx(11.8921, rel=1e-3), answer.reply
    assert "path" in answer.reply and "paint" in answer.reply


def test_path_from_the_height_of_the_ceiling() -> None:
    found = value("Bounce. Ceiling is 3 m high, flash and face both at 1.5 m, subject 4 m away. GN 58 m, ISO 400, ceiling takes 2 stops. What aperture?")
    assert found == pytest.approx(58 * 2 / 5 / 2)


# --- zoom -----------------------------------------------------------------------------------------------

TABLE = "GN 28 at 24 mm, 36 at 50 mm and 50 at 105 mm, all in metres at ISO 100."


def test_only_the_guide_number_of_the_zoom_setting_counts() -> None:
    assert value(f"{TABLE} Zoomed to 105, 5 m. Aperture?") == pytest.approx(10.0)
    assert value(f"{TABLE} Zoomed to 50, 4.5 m. Aperture?", "and zoomed to 24?") == pytest.approx(28 / 4.5)


def test_between_two_settings_is_an_estimate() -> None:
    answer = ask(f"{TABLE} Zoomed to 70, 4 m. Aperture?")
    assert 9.0 < float(answer.answers[0].value) < 12.5
    assert "estimate" in answer.reply


def test_a_table_without_a_setting_asks_for_it() -> None:
    answer = ask(f"{TABLE} The subject is 4 m away. Aperture?")
    assert answer.status == "needs" and answer.missing == ("focal_length",)


# --- the rest ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("question", "lost"),
    [
        ("Bare it reads f/16, through the softbox f/8. How many stops does the softbox cost?", -2.0),
        ("Through the brolly it reads f/8, bare it was f/16. How many stops do I lose?", -2.0),
        ("The lens is f/2.8 but a T/4 lens. How many stops does it lose?", 2 * math.log2(2.8 / 4)),
    ],
)
def test_a_measured_loss_is_negative(question: str, lost: float) -> None:
    assert value(question, quantity="stops") == pytest.approx(lost, abs=0.01)


@pytest.mark.parametrize(
    ("question", "aperture"),
    [
        ("Without the filter it was f/11. The filter costs two stops. What aperture with it?", 5.5),
        ("f/5.6 with the softbox on, it costs 2 stops. I take it off. New aperture?", 11.2),
        ("Half a stop for the gel, one more stop for the dome, GN 36 metres, 3 metres away. aperture?", 12 / 2**0.75),
        ("GN 36 m through two layers of tissue, one stop each, 3 m. Aperture?", 6.0),
        ("HSS eats 3 stops at 1/1000. GN 64 m, 4 m, ISO 100. aperture?", 16 / 2**1.5),
        ("life size (1:1), GN 24 m, half a metre from the shell, ISO 100. aperture?", 24.0),
    ],
)
def test_losses_in_many_words(question: str, aperture: float) -> None:
    assert value(question, quantity="aperture") == pytest.approx(aperture, rel=1e-3)


def test_high_speed_sync_is_never_free() -> None:
    answer = ask("in high speed sync at 1/2000, GN 40 m, 2.5 m, ISO 100, aperture?")
    assert float(answer.answers[0].value) < 16
    assert any(a.quantity == "stops" for a in answer.assumed)


def test_a_source_nearer_than_its_own_size_is_named() -> None:
    answer = ask("60 cm softbox only 50 cm from the face, GN 40 m, the softbox costs 2 stops. aperture?")
    assert "inverse square" in answer.reply
    assert float(answer.answers[0].value) == pytest.approx(40)


def test_more_power_for_what_is_put_on() -> None:
    assert value("I was at quarter power bare. The umbrella takes one stop. What power keeps the same aperture?", quantity="power") == pytest.approx(0.5)


@pytest.mark.parametrize("question", ["softbox costs 1e9 stops, GN 40 m, 2 m, f?", "EV 15, ND of 2000 stops, f/8, ISO 100, shutter?"])
def test_more_stops_than_there_are_is_rejected(question: str) -> None:
    assert ask(question).status == "rejected"


# --- told of one, changed in a half-sentence ----------------------------------------------------------


def test_a_plate_is_a_format_and_no_part_of_the_power() -> None:
    assert value("gn 40 m, 4 m, what aperture, for my quarter plate camera") == pytest.approx(10)
    assert value("gn 40 m, 4 m, at quarter power, for my half plate camera, what aperture") == pytest.approx(5)


def test_a_head_is_in_each_of_two_softboxes_but_one_behind_two_nets() -> None:
    assert value("two softboxes losing a stop each, gn 40 m each, 4 m, aperture") == pytest.approx(10)
    assert value("two nets losing a stop each, gn 40 m, 4 m, aperture") == pytest.approx(5)


def test_a_loss_told_of_one_sheet_goes_for_every_sheet_and_one_of_all_does_not() -> None:
    assert value("one sheet of frost takes half a stop. f/16 bare, four sheets on, what do I set") == pytest.approx(8)
    assert value("two layers of tissue take a stop together. f/16 bare. what with them on") == pytest.approx(16 / math.sqrt(2))


def test_what_goes_on_another_thing_adds_and_what_replaces_it_does_not() -> None:
    box = "gn 80 ft, 10 ft, softbox takes a stop, aperture"
    assert value(box, "the grid in it takes one") == pytest.approx(4)
    assert value(box, "umbrella instead, two stops") == pytest.approx(4)
    assert value(box, "it takes two stops") == pytest.approx(4)


def test_one_leg_of_a_bounce_is_changed_or_asked_about() -> None:
    bounced = "gn 40 m, bounced, 2 m up and 3 m down, the ceiling takes two stops, aperture"
    assert value(bounced, "make it 3 m up") == pytest.approx(40 / 6 / 2)
    assert value(bounced, "and 6 m down?") == pytest.approx(40 / 8 / 2)
    assert value(bounced, "a 4 m path") == pytest.approx(5)
    assert ask(bounced, "make it 2.5 m").status == "not_understood"


def test_the_draw_is_told_anew_in_its_own_unit() -> None:
    assert value("300 mm lens, bellows at 450, stops to open up", "draw 600") == pytest.approx(2)
    assert value("ten inch lens, bellows 15 inches, stops to open up", "and at 20") == pytest.approx(2)
    assert value("300 mm lens, bellows at 600, stops to open up", "and with a 150") == pytest.approx(4)


def test_film_that_came_out_wrong_tells_where_the_lens_should_have_been() -> None:
    assert value("snoot on, negs came out two stops thin at f/11, where should the lens have been") == pytest.approx(5.5)
    assert value("the slides came out a stop too light at f/8, what aperture should it have been") == pytest.approx(8 * math.sqrt(2))


def test_a_reading_told_by_the_way_does_not_stop_the_sum() -> None:
    assert value("three layers of scrim, half a stop each, plus a gel that takes half a stop, it was f/16 bare at ten feet, how many stops am I down altogether") == pytest.approx(-2)


def test_one_more_loss_after_a_measured_one_goes_on_from_the_reading_with_it_on() -> None:
    assert value("bare f/22, softbox f/11. stops lost?", "and with the grid in it takes another stop, aperture then?") == pytest.approx(11 / math.sqrt(2))


def test_the_lens_told_before_its_bellows_is_the_lens() -> None:
    assert value("what's the exposure factor with the 150 mm when the bellows are drawn to 225?", quantity="factor") == pytest.approx(2.25)
    assert value("exposure factor at 225 mm of bellows with the 150 mm", quantity="factor") == pytest.approx(2.25)


def test_a_value_taken_back_with_its_reason_does_not_count() -> None:
    assert value("gn 80 ft, 5 ft, the box eats two stops, no wait, I metered that, one stop, aperture") == pytest.approx(16 / math.sqrt(2))
    assert value("bounced, gn 80 ft, flash to the ceiling is five feet, sorry, four feet, and six more from there down to her, paint takes 2 stops, aperture") == pytest.approx(4)


def test_a_loss_told_anew_is_taken_off_or_put_on_as_before() -> None:
    assert value("with the softbox on I get f/8. it loses 2 stops. what bare?", "and if it lost three") == pytest.approx(8 * 2**1.5)
    assert value("f/16 bare. softbox takes 2 stops. what f stop", "and with it taking three") == pytest.approx(16 / 2**1.5)


def test_where_the_reading_was_taken_says_what_it_holds() -> None:
    assert value("one stop silk with f/5.6 measured behind it. what was it in front") == pytest.approx(7.92, rel=0.01)
    assert value("f/16 in front of the silk. silk takes a stop. what behind it") == pytest.approx(16 / math.sqrt(2))
    assert value("meter in the softbox light says f/8. I'm about to pull the front cloth, which was a stop. where will it read then") == pytest.approx(8 * math.sqrt(2))


def test_going_back_with_the_zoom_costs_stops() -> None:
    assert value("zoomed to 105 it's gn 58, at 35 it's 36, both metres. stops I lose going back to 35") == pytest.approx(2 * math.log2(36 / 58))


def test_one_loss_told_of_two_things_counts_once_and_each_counts_twice() -> None:
    assert value("softbox and gel together take 2 stops, gn 120 feet, 8 ft, f stop") == pytest.approx(7.5)
    assert value("a softbox and a gel, each taking a stop, gn 40 m, 4 m, aperture") == pytest.approx(5)
