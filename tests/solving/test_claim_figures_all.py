"""A verdict takes in every figure of the claim, or is none: the values follow from doublings and inverse squares."""

from __future__ import annotations

import pytest

from assistant.assistant import Assistant

ONE = Assistant.create()


def _verdict(text: str) -> object:
    ONE.new_conversation(keep_kit=False)
    answer = ONE.answer(text)
    return answer.answers[0].value if answer.answers and answer.answers[0].quantity == "claim" else None


@pytest.mark.parametrize(
    ("text", "holds"),
    [
        # denied, called wrong, or bounded: the same figures, and the way the claim is put
        ("doubling the distance doesn't halve the light, does it?", True),
        ("doubling the distance doesn't cost two stops, does it?", False),
        ("is it a myth that twice the distance costs two stops?", False),
        ("am I wrong to think doubling the distance halves the light?", True),
        ("doubling the distance costs more than one stop, true?", True),
        ("doubling the distance costs less than two stops?", False),
        ("guide number 80 at 10 feet isn't f/8, is it?", False),
        ("isn't guide number 80 at 10 feet f/8?", True),
        ("is f/5.6 wrong at 10 feet with guide number 80?", True),
        ("GN 80, 20 feet, f/8 wouldn't be underexposed, would it?", False),
        ("GN 80 doesn't reach 20 feet at f/8, does it?", True),
        ("do I need more than half power for f/4 at 20 feet with GN 80?", True),
        ("GN 80 at f/4 carries more than 25 feet, right?", False),
        ("my flash has GN 80 but doesn't zoom. At 10 feet f/8?", True),
        ("since I'm not using a diffuser, it's f/8 at 10 ft with GN 80, correct?", True),
        ("an ND8 doesn't cost three stops, does it?", False),
        ("an ND8 costs more than two stops, right?", True),
        ("key f/8 and fill f/5.6, that isn't a 3:1 ratio, is it?", False),
        ("is 1/8 power two stops less than half?", True),
        ("is 1/8 power two stops more than half?", False),
        ("two stops less power means half the reach?", True),
        ("one stop more power doubles the reach?", False),
        # lights that do not fall from one spot, a base that is not one, the camera's distance: no rule is for these
        ("two flashes on opposite sides of the face give one stop more on each cheek, right?", None),
        ("does a second flash behind the subject add a stop on the face?", None),
        ("a second flash at half power adds one stop?", None),
        ("eight flashes are two stops over two?", None),
        ("does doubling the camera distance cost two stops with the light on a stand?", None),
        ("front row 8 ft, back row 12 ft, the difference isn't more than a stop, is it?", False),
        ("ISO 400 rated at 1600 is less than two stops under, right?", False),
        ("ISO 400 rated at 1600 is two stops under, right?", True),
        ("in bright sun with ISO 100 film, f/16 at 1/100 isn't right, is it?", False),
        ("flash covers 28 mm, lens is 35 mm: the corners won't be dark, will they?", True),
        # two changes of the flash that balance say nothing of the ambient light; a larger source farther off is two causes
        ("if I double the ISO and halve the flash power does the flash exposure stay the same?", True),
        ("if I double the ISO and halve the flash power does the ambient stay the same?", None),
        ("does a bigger softbox further away stay as soft?", None),
        ("three nets each passing half the light: three stops, correct?", True),  # (1/2)^3 is three stops
        ("three nets each passing half the light: two stops, correct?", False),
        ("four layers of cloth at a stop each leave an eighth of the light. True or false?", False),  # 1/16
        ("two gels at half a stop apiece, that is a quarter of the light left, agreed?", False),  # a half
        ("is it true that three sheets of tracing paper at two thirds of a stop each cost two stops", True),
        ("half the light through, twice, is two stops gone, right?", True),
        ("Twice as far from the flash leaves a quarter of the light, so two stops gone, yes?", True),
        ("At life size the bellows cost me two stops, and the polariser a stop and a half. I make the total four stops. Confirm or refute.", False),
        ("A polariser darkens flash and ambient equally, true?", True),
        ("turning the flash power down takes as much off the daylight as off the flash, true or false", False),
        # what the film takes, against the marks between what was right and what was shot
        ("This slide stock forgives a third of a stop and nothing more. The meter asked for f/8 and I exposed at 9.5. Is the frame within what it forgives?", False),
        ("neg film takes 3 over and 1 under. i shot iso 400 at ei 100. am i inside that?", True),
        ("My neg stock holds two stops over and one under. Should have been f/4, I had it at f/8. Is the frame within that?", False),
        ("film takes plus or minus one stop. box is ISO 400 and I rated it at 200. am I within it", True),
        ("ISO 100 neg, f/5.6, ten feet from a flash of guide number 110 feet. My film holds one stop over and one under. Are those frames within its latitude?", False),  # f/11 was right
        # the hyperfocal distance goes with the square of the focal length and falls with the f-number
        ("My tutor says the hyperfocal distance of a 50 mm lens gets cut in half when you go from f/5.6 to f/11. Is she right?", True),
        ("Closing from f/8 to f/16 doubles the hyperfocal distance, correct?", False),
        ("going from a 28mm to a 56mm at f/11 doubles the hyperfocal, right?", False),
        # what a flash lights against what the lens sees: 2 atan(36/56) is 65.5 degrees, 2 atan(28/75) 40.9
        ("flash spreads 60 degrees side to side. 28mm lens on 35mm film, horizontal shot. does it light the full width of the frame", False),
        ("The flash head is zoomed to 50 and there's a 35 mm lens on the camera. Will the flash light the frame right into the corners?", False),
        # the time of the shutter, by the kind of light
        ("Leaf shutter, electronic flash. If I go from a sixtieth to a two fiftieth do I lose two stops of the flash?", False),
        ("with a flash bulb going from 1/30 to 1/250 makes no difference to exposure, right?", False),
        ("My focal plane camera syncs up to 1/125. If I use an ordinary flash, no high speed mode, at 1/500, will the flash light the whole frame?", False),
        # filters: factors multiply, 0.3 of density is a stop
        ("two filters, factor 2 and factor 3, stacked: I multiply by five. Am I right?", False),
        ("two filters, factor 2 and factor 3, stacked: I multiply by six. Am I right?", True),
        ("Would I be correct in saying that a filter of density 0.9 wants two stops more exposure?", False),
        # energy, movement, waits
        ("recycle is 8 s at full so about 4 s at quarter, right?", False),
        ("batteries give 100 full pops, so 400 at quarter power, if energy is all that counts. yes?", True),
        ("pack good for 200 full pops. 900 frames at 1/8 power today. will one charge do", True),
        ("will one charge do 500 frames at half power if the pack does 200 full pops", False),
        ("my flash duration is 1/500 and a hand moves 1 m/s so it smears 5 mm. right?", False),
        ("my t0.5 is 1/1000 so t0.1 is 1/3000, correct?", False),
        ("painting a wall with flash, if I move from 4 feet back to 8 feet I need four times as many pops, is that so", True),
        ("bare = f/16. silk costs half a stop, thick cloth one whole. both on so f/9.5, correct?", True),
        # marks of the scale, shares that pass, the time for another mark
        ("half a stop up from f/8 is f/9.5, yes?", False),
        ("one third of a stop down from f/8 is f/9, correct", True),
        ("diffuser that passes 25% costs one and a half stops yes", False),
        ("a gel with 50% transmission takes one stop, right?", True),
        ("room reads 1/30 at f/2.8, so at f/5.6 I need 1/15, correct?", False),
        ("the hall meters 1/15 at f/4 on 400. With the lens on f/8 I then want 1/4 for the hall, correct?", True),
        ("eight pops where one gives f/4, is that f/11", True),
        ("changing from 1/125 to 1/60 does nothing to the flash but the window gets a stop brighter, right or wrong", True),
        ("does opening from f/8 to f/4 bring the hyperfocal distance nearer", False),
    ],
)
def test_all_figures_are_weighed(text: str, holds: bool) -> None:
    assert _verdict(text) is holds


def test_a_belief_is_silent_where_figures_decide() -> None:
    assert _verdict("Slide film forgives more than a third. The meter asked for f/8 and I gave it 5.6. Is the frame within what it forgives?") is not True
