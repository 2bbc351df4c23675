"""The kit and the shot log as a person handles them: by saying so."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.assistant import Assistant
from assistant.memory.keeping import Keeper


def say(assistant: Assistant, *turns: str) -> str:
    """The last reply; every turn before it must be answered or noted."""
    for turn in turns[:-1]:
        assert assistant.answer(turn).good, turn
    return assistant.answer(turns[-1]).reply


def statuses(assistant: Assistant, *turns: str) -> list[str]:
    return [assistant.answer(turn).status for turn in turns]


GEAR = ("the big one is guide number 80 feet", "the little one is guide number 40 feet", "I'm on ISO 400 film")


@pytest.mark.parametrize("question", ["what do you know about my gear?", "What's in my kit", "list my kit", "what gear do I have?", "please show me my gear", "which flashes do I have?", "read me back my kit"])
def test_the_gear_is_listed(assistant: Assistant, question: str) -> None:
    reply = say(assistant, *GEAR, question)
    assert "The big one: guide number 80 ft" in reply and "The little one: guide number 40 ft" in reply and "ISO 400" in reply
    assert assistant.answer(question).status == "answered"


def test_an_empty_kit_says_how_to_fill_it(assistant: Assistant) -> None:
    assert "“my flash is guide number 110 feet”" in say(assistant, "what do you know about my gear?")


def test_one_light_is_listed_alone(assistant: Assistant) -> None:
    assert say(assistant, *GEAR, "what do you know about the little one?") == "The little one: guide number 40 ft."


def test_scene_and_gear_are_listed_in_one_breath(assistant: Assistant) -> None:
    reply = say(assistant, *GEAR, "what aperture with the big one at 10 feet?", "what do you have so far?")
    assert "10 ft" in reply and "guide number 40 ft" in reply and "ISO 400" in reply


@pytest.mark.parametrize("words", ["forget the little one", "forget about the little one", "remove the little one from my kit", "please forget the little one."])
def test_a_light_is_forgotten_and_had_back(assistant: Assistant, words: str) -> None:
    assert "little" not in say(assistant, *GEAR, words, "what's in my kit?")
    assert "The little one: guide number 40 ft" in say(assistant, *GEAR, words, "undo", "what's in my kit?")


def test_forgetting_is_kept(assistant: Assistant, tmp_path: Path) -> None:
    say(assistant, *GEAR, "forget the little one")
    assert Keeper(tmp_path / "kept").load_kit().flashes() == ["big"]
    say(assistant, "undo")
    assert sorted(Keeper(tmp_path / "kept").load_kit().flashes()) == ["big", "small"]


def test_what_nobody_knows_cannot_be_forgotten(assistant: Assistant) -> None:
    assert assistant.answer("forget the purple one").status == "rejected"


def test_the_whole_kit_is_forgotten_and_had_back(assistant: Assistant) -> None:
    assert "nothing of your gear" in say(assistant, *GEAR, "forget my kit", "what's in my kit?")
    assert "guide number 80 ft" in say(assistant, "undo", "what's in my kit?")


def test_undo_takes_back_one_step_after_another(assistant: Assistant) -> None:
    say(assistant, *GEAR, "undo", "undo")
    assert assistant.conversation.kit.flashes() == ["big"]
    assert "nothing of your gear" in say(assistant, "undo")


def test_a_kit_goes_out_to_a_file_and_comes_in_from_it(assistant: Assistant, tmp_path: Path) -> None:
    file = tmp_path / "boathouse kit.toml"
    say(assistant, *GEAR, "call it Duke", f"export my kit to {file}")
    assert file.stat().st_mode & 0o077 == 0 and "guide_number" in file.read_text()
    before = assistant.conversation.kit
    say(assistant, "forget my kit", f'import kit from "{file}"')
    assert (before.names, [(f.quantity, f.of, f.value) for f in before.facts]) == (assistant.conversation.kit.names, [(f.quantity, f.of, f.value) for f in assistant.conversation.kit.facts])


def test_a_file_that_is_there_is_not_overwritten(assistant: Assistant, tmp_path: Path) -> None:
    (tmp_path / "kit.toml").write_text("mine")
    assert statuses(assistant, *GEAR, f"export my kit to {tmp_path}/kit.toml")[-1] == "rejected"
    assert (tmp_path / "kit.toml").read_text() == "mine"


@pytest.mark.parametrize("content", [None, "", "not = [a kit", "\0\0", "[a.b]\nvalue = 'x'", "[camera.film_speed]\nvalue = -4"])
def test_a_file_that_is_no_kit_is_refused_and_changes_nothing(assistant: Assistant, tmp_path: Path, content: str | None) -> None:
    if content is not None:
        (tmp_path / "kit.toml").write_text(content)
    say(assistant, *GEAR)
    before = assistant.conversation.kit
    assert assistant.answer(f"import kit from {tmp_path}/kit.toml").status == "rejected"
    assert assistant.conversation.kit == before


def test_a_kit_written_by_hand_is_read(assistant: Assistant, tmp_path: Path) -> None:
    (tmp_path / "kit.toml").write_text('["Duke".guide_number]\nvalue = { number = 80, unit = "ft" }\n["camera and film".film_speed]\nvalue = 100\n')
    assert "f/8" in say(assistant, f"import kit from {tmp_path}/kit.toml", "what aperture with Duke at 10 feet?").split(".")[0]


LOGGED = ("log f/8 at 10 feet frame 12", "note frame 13: the four crossing the line")


def test_frames_are_logged_and_read_back(assistant: Assistant) -> None:
    reply = say(assistant, *LOGGED, "frame fourteen was f/11 at 12 feet, half power", "what did I shoot?")
    assert "Frame 12: f/8, 10 ft." in reply and "Frame 13: “the four crossing the line”." in reply and "Frame 14: f/11, 12 ft, half power." in reply


def test_a_frame_with_no_number_is_the_next(assistant: Assistant) -> None:
    assert "frame 14" in say(assistant, *LOGGED, "log f/8 at 12 feet")


def test_an_answer_is_logged_by_saying_so(assistant: Assistant) -> None:
    assert "f/8" in say(assistant, "guide number 80 feet, 10 feet, ISO 100, what aperture?", "log that")


def test_the_log_outlives_the_program(assistant: Assistant, tmp_path: Path) -> None:
    say(assistant, *LOGGED)
    log = Keeper(tmp_path / "kept").load_log()
    assert [(s.frame, s.note) for s in log.shots][1] == (13, "the four crossing the line") and log.shots[0].facts[0].value == 8


def test_a_frame_is_struck_out_and_had_back(assistant: Assistant) -> None:
    assert "Frame 13" not in say(assistant, *LOGGED, "forget frame 13", "what did I shoot?")
    assert "Frame 13" in say(assistant, *LOGGED, "forget frame 13", "undo", "what did I shoot?")
    assert assistant.answer("forget frame 99").status == "rejected"


def test_a_new_roll_begins_at_frame_one(assistant: Assistant) -> None:
    assert "frame 1:" in say(assistant, *LOGGED, "new roll", "log f/8 at 12 feet")
    assert "Frame 12" not in say(assistant, "what did I shoot?")


def test_an_impossible_frame_is_refused(assistant: Assistant) -> None:
    assert assistant.answer("log f/8 at 0 feet frame 12").status == "rejected"


@pytest.mark.parametrize(
    ("came_out", "guide_number"),
    [("frame 12 came out a stop under", 56.57), ("frame 12 is two stops over", 160.0), ("frame 12 was two stops too dark", 40.0), ("frame 12 looked right", 80.0), ("frame 12 turned out thin by a stop", 56.57)],
)
def test_a_developed_frame_shows_what_the_flash_really_gives(assistant: Assistant, came_out: str, guide_number: float) -> None:
    """f/8 at 10 ft and right is guide number 80; a stop of light is a factor √2 of it (inverse square law)."""
    say(assistant, *LOGGED)
    found = assistant.answer(came_out)
    assert found.status == "answered" and found.answers[0].quantity == "guide_number"
    assert float(found.answers[0].value) == pytest.approx(guide_number, rel=1e-3)
    assert f"guide number {round(guide_number)} feet" in found.reply and {a.quantity for a in found.assumed} == {"film_speed", "power"}


def test_film_speed_and_power_of_the_frame_count(assistant: Assistant) -> None:
    """At ISO 400 and quarter power the two cancel: √(100/400) / √(1/4) = 1."""
    say(assistant, "log f/8 at 10 feet, ISO 400, quarter power, frame 5")
    found = assistant.answer("frame 5 was right")
    assert float(found.answers[0].value) == pytest.approx(80.0) and not found.assumed


def test_a_suggested_guide_number_can_be_said_back(assistant: Assistant) -> None:
    reply = say(assistant, "the little one is guide number 80 feet", "log the little one at 10 feet, f/8, frame 12", "frame 12 came out two stops under")
    assert "“the little one is guide number 40 feet”" in reply
    say(assistant, "the little one is guide number 40 feet")
    assert assistant.conversation.kit.facts[-1].value == 40


def test_a_frame_that_is_not_in_the_log_is_asked_for(assistant: Assistant) -> None:
    found = assistant.answer("frame 7 came out a stop under")
    assert found.status == "needs" and set(found.missing) == {"aperture", "distance"}


@pytest.mark.parametrize("innocent", ["what frame rate do I need", "f/8 on full frame at 10 feet, what guide number", "I shoot portraits", "is my kit any good at 10 feet, f/8?", "which frame should I bracket"])
def test_other_talk_changes_nothing_that_is_kept(assistant: Assistant, innocent: str) -> None:
    say(assistant, *GEAR, *LOGGED)
    kit, log = assistant.conversation.kit, assistant.conversation.log
    assistant.answer(innocent)
    assert (assistant.conversation.kit, assistant.conversation.log) == (kit, log)


def test_which_flash_can_do_it_is_told_of_each(assistant: Assistant) -> None:
    """By the guide number's definition: (16 × 8 / 160)² is 0.64 of full, (16 × 8 / 80)² 2.56 times it."""
    reply = say(assistant, "The big head is guide number 160 feet and the little one is guide number 80 feet", "which of my flashes can do f/16 at 8 feet?")
    assert "The big one can" in reply and "The little one cannot: it would take 2.56 times its full power." in reply


def test_what_is_not_on_cannot_be_taken_off(assistant: Assistant) -> None:
    assert "f/8" in say(assistant, "guide number 80 feet at 10 feet, what aperture?", "take the softbox off").split(".")[0]
