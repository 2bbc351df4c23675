"""Signs that a change was misread: a loss made up for the wrong way, pops that the light of the room has no use for."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving import deeds
from assistant.solving.solution import Solution
from assistant.solving.taken_off import BEFORE_ASKED, BEFORE_IT, WAS_ASKED

_PUT_ON = Pattern(r"\b(?:goes|go|went|gone|add(?:s|ed|ing)?|put(?:s|ting)?|fit(?:s|ted|ting)?|screw(?:s|ed|ing)?|hang(?:s|ing)?|hung|slip(?:s|ped|ping)?|clip(?:s|ped|ping)?)\b[^.?!;]{0,40}\b(?:on|up|over|in front|an?|the|my|its|another)\b", re.I)
_TAKEN_OFF = Pattern(r"\b(?:off|remov\w+|without|away|bared|gone|unscrew\w*|pull\w*|peel\w*|strip\w*|drop\w*|ditch\w*|los(?:e|ing)|instead|rather|leav(?:e|es|ing) (?:just|only)|go(?:es|ing|ne)? from|went from|swap\w*|replac\w+|exchang\w+|chang\w+)\b", re.I)
_MORE_LIGHT = {"power": 1, "energy": 1, "film_speed": 1, "distance": -1, "aperture": -1}
"""Which way each setting goes for more light."""


def loss_made_worse(said: Query, whole: Query, found: Solution) -> bool:
    """"9 feet, a box of 2 stops goes on; how far now": 18 feet, where it can only be nearer, whatever else was read."""
    first = found.answers[0]
    way = _MORE_LIGHT.get(first.quantity)
    if way is None or not isinstance(first.value, float) or first.of in ("move", "background") or not _PUT_ON.search(said.text) or _TAKEN_OFF.search(said.text) or BEFORE_IT.search(said.text) or WAS_ASKED.search(said.text) or BEFORE_ASKED.search(said.text):
        return False
    told = {f.value / (0.3048 if first.quantity == "distance" and first.unit == "ft" else 1.0) for f in whole.facts if f.quantity == first.quantity and not f.of}
    moved = any(len({f.value for f in whole.facts if f.quantity == quantity}) > 1 for quantity in _MORE_LIGHT)
    if len(told) != 1 or moved or deeds.told(said)[0]:
        return False
    ratio = first.value / told.pop()
    return ratio < 0.98 if way > 0 else ratio > 1.02


_EACH = Pattern(r"\b(?:each|every|apiece|per pop|between)\b", re.I)


def pops_idle_in_the_room(said: Query, whole: Query, found: Solution) -> bool:
    """"12 pops, half a second at each: how far under is the room", and the twelve not counted; where the whole time is told, they do not matter."""
    if len({f.value for f in found.used if f.quantity == "shutter"}) == 2 and not any(f.quantity in ("interval", "open_each", "recycle") for f in said.facts) and not said.cues & {"each"} and _EACH.search(said.text) is None:
        return False
    places = {f.start for f in found.used}
    return any(f.quantity == "count" and f.unit in ("pops", "flashes") and f.value > 1 and f.origin == "said" and f.start not in places for f in said.facts)


_ADDING = Pattern(r"\b(?:add(?:s|ed|ing)?|gain(?:s|ed|ing)?|strengthen\w*) (?:me |us |about |some )?$", re.I)
_OF_LOSS = Pattern(r"\s*of (?:loss|light loss)\b", re.I)


def gain_taken_for_loss(said: Query, whole: Query, found: Solution) -> bool:
    """"the dish had been adding a stop and a half", and as much counted as lost."""
    return any(f.quantity in ("loss", "filter_loss") and f.unit == "dish" and f in found.used and _ADDING.search(said.text[: f.start]) and not _OF_LOSS.match(said.text, f.end) for f in said.facts)


_WON = Pattern(r"\b(?:won|win|winning|got|get|getting|gain\w*|regain\w*|claw\w*|made|making|earn\w*|recover\w*|put|give|gives|gave)(?: me| us| back| about| some| up)* (?:a |one )?$", re.I)
_BACK = Pattern(r"\s*(?:of (?:it|that) )?(?:back|up)\b", re.I)


def won_back_taken_for_loss(said: Query, whole: Query, found: Solution) -> bool:
    """"lost a stop and a half and won half a stop back", and both counted as lost."""
    return any(f.quantity in ("loss", "filter_loss") and f in found.used and _WON.search(said.text[: f.start]) and (_BACK.match(said.text, f.end) or said.text[: f.start].rstrip().endswith("back")) for f in said.facts)


_GOES_ON = Pattern(r"\b(?:reflect\w*|transmit\w*|pass(?:es|ed|ing)?|lets?|letting|through|bounc\w*|sends? back|gives? back|returns?)\b", re.I)


def share_taken_for_power(said: Query, whole: Query, found: Solution) -> bool:
    """"the card reflects 90 percent, the ceiling 50", and both taken for powers of a flash."""
    shares = [f for f in said.facts if f.quantity == "power" and f.unit == "%" and f in found.used]
    return len(shares) > 1 and _GOES_ON.search(said.text) is not None and "power" not in said.text.lower()


_FEWER_POPS = Pattern(r"\bhow many\b[^?]*\b(?:save[ds]?|saving|spare[ds]?|sparing|fewer|less|leave out|do without|drop)\b", re.I)


def saved_more_than_there_were(said: Query, whole: Query, found: Solution) -> bool:
    """"how many of my 12 pops could I have saved", and more found than there were."""
    first = found.answers[0]
    told = [f.value for f in said.facts if f.quantity == "count" and f.unit in ("pops", "flashes")]
    return bool(told) and first.value >= max(told) and _FEWER_POPS.search(said.text) is not None if isinstance(first.value, (int, float)) else False


def layers_idle(said: Query, whole: Query, found: Solution) -> bool:
    """"three equal layers took f/16 to f/8: what does each cost", and the three not used."""
    places = {f.start for f in found.used}
    return any(f.quantity == "rows" and f.unit == "layers" and f.value > 1 and f.origin == "said" and f.start not in places for f in said.facts)


def deed_left_out(said: Query, whole: Query, found: Solution) -> bool:
    """"added a gel and doubled the power", and only the gel was counted."""
    done, _ = deeds.told(said)
    return bool(done)


_NO_NOUN_NEXT = Pattern(r"\s*(?:$|[?.,;:!](?!\d)|(?:give|gives|gave|do|does|did|make|makes|would|will|should|are|is|be|need|reach|put|at|on|for|from|in all|of (?:them|those|these)|that|which|i|we|fired|right)\b)")


def number_left_among_pops(said: Query, whole: Query, found: Solution) -> bool:
    """"eight pops give f/16, what do two give?", and the two not used: they are pops as well."""
    places, energies = {f.start for f in found.used}, {f.value for f in found.used if f.quantity == "energy"}
    left = [f for f in said.facts if f.quantity == "number" and not f.bad and f.value == int(f.value) and f.value >= 2 and f.start not in places and f.value not in energies]
    return any(f.quantity == "count" for f in said.facts) and any(_NO_NOUN_NEXT.match(said.text.lower(), f.end) for f in left)


_OF_A_GUIDE = Pattern(r"\s*(?:of )?(?:the|its|my|his|her|that) (?:old |other |first )?(?:guide|gn)\b")


_OF_WHAT_WENT = Pattern(r"\s*of (?:it|them|that|those|this)\b(?! (?:power|flash|head))", re.I)
_GOT_BACK = Pattern(r"\b(?:gain\w*|got|get|won|win|lost|lose|recover\w*|sav\w+|made up|ma[dk]e good|claw\w*)(?: back)?(?: about| only| just)? (?:a |one )?$", re.I)


def _part_of_what_went(said: Query, found: Solution) -> bool:
    """"I lost a stop and gained half of it back", and half of the power counted: it was of the stop."""
    return any(f.quantity == "power" and f in found.used and _OF_WHAT_WENT.match(said.text, f.end) and _GOT_BACK.search(said.text[: f.start]) for f in said.facts)


def part_left(said: Query, whole: Query, found: Solution) -> bool:
    """A part that was read as that of something else, or of nothing."""
    return _part_of_a_guide(said, found) or _part_of_what_went(said, found) or _fraction_beside_losses(said, whole, found)


def _part_of_a_guide(said: Query, found: Solution) -> bool:
    """"a flash of half the guide number", and half of its power counted: that is a quarter of the light."""
    return any(f.quantity == "power" and f in found.used and _OF_A_GUIDE.match(said.text.lower(), f.end) for f in said.facts)


def _fraction_beside_losses(said: Query, whole: Query, found: Solution) -> bool:
    """"the box takes two stops, the gel 1/3", and the third not used: beside losses a fraction is one."""
    places = {f.start for f in found.used}
    return any(f.quantity == "number" and f.origin == "said" and not f.bad and 0 < f.value < 1 and f.start not in places for f in whole.facts) and any(f.quantity in ("loss", "filter_loss", "nd", "factor") for f in said.facts)


def film_changed_nothing(said: Query, whole: Query, found: Solution) -> bool:
    """Two films told and the f-number that was told found again: one of the films was another's."""
    first = found.answers[0]
    speeds = {f.value for f in said.facts if f.quantity == "film_speed"}
    told = {f.value for f in said.facts if f.quantity == "aperture"}
    return found.topic == "change" and first.quantity == "aperture" and len(speeds) > 1 and first.value in told and len(told) == 1 and not any(f.quantity in ("distance", "power", "count") for f in said.facts)


def pops_left_out(said: Query, whole: Query, found: Solution) -> bool:
    """A number of pops told, and the pops found from another: "three flashes ... the twin statue"."""
    first, places = found.answers[0], {f.start for f in found.used}
    counts = [f for f in said.facts if f.quantity == "count" and f.unit in ("pops", "flashes") and f.value > 1]
    return found.topic == "time" and first.quantity == "count" and len({f.value for f in counts}) > 1 and any(f.start not in places for f in counts)


_POPS_NAMED = Pattern(r"\b(?:pops?|flash(?:es)?|bursts?|hits?|fir(?:e|es|ed|ing)|guns?|heads?|strobes?|units?|times|shots?|exposures?|frames?|lights|lamps?)\b", re.I)


_OF_LOSSES = frozenset({"loss", "filter_loss", "nd", "modifier", "camera_filter", "stops", "remark"})


def pops_of_no_flash(said: Query, whole: Query, found: Solution) -> bool:
    """"the silk takes two stops and I've opened one: how many more do I need?": no flash is spoken of, and stops were meant."""
    first = found.answers[0]
    return first.unit in ("pops", "flashes") and {f.quantity for f in whole.facts} <= _OF_LOSSES and _POPS_NAMED.search(said.text) is None and all(f.origin == "said" for f in whole.facts)


_PART_GONE = Pattern(r"[\s-]*(?:per ?cent |quarters? |thirds? )?of (?:it|that|them|this|(?:the|my|its|all the) (?:flash |light|flash's light|energy|output))\w*(?: is| are| gets?| was| were| goes| being)* (?:lost|gone|swallowed|eaten|absorbed|wasted|missing|soaked up|taken)\b", re.I)


def part_that_is_gone(said: Query, whole: Query, found: Solution) -> bool:
    """"a quarter of the light is lost in the glass", and a quarter is counted as what is left."""
    return any(f.quantity == "power" and f in found.used and abs(f.value - 0.5) > 0.01 and _PART_GONE.match(said.text, f.end) for f in said.facts)
