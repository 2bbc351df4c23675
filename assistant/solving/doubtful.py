"""Signs that an answer was misread: what the answer to a question rightly understood does not look like.

Each check looks at what was said and at what was found, and knows nothing of how it was found.
An answer that fails one is not given: it is a nuisance to be asked again, and worse to set a wrong number.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from functools import cache

from assistant.patterns import Pattern, Patterns
from assistant.query import DENIED, TAKES_LIGHT, Query
from assistant.solving.claim_rules import WEIGHTS
from assistant.solving.claim_words import Term, terms
from assistant.solving.doubtful_changes import (
    deed_left_out,
    film_changed_nothing,
    gain_taken_for_loss,
    layers_idle,
    loss_made_worse,
    number_left_among_pops,
    part_left,
    part_that_is_gone,
    pops_idle_in_the_room,
    pops_left_out,
    pops_of_no_flash,
    saved_more_than_there_were,
    share_taken_for_power,
    won_back_taken_for_loss,
)
from assistant.solving.doubtful_figures import another_quantity, behind_the_back, beyond_nature, is_nothing, no_one_of_them, only_said_back, quarter_of_a_mark
from assistant.solving.doubtful_idle import bare_then_worn, far_left_out, left_idle, moved_for_a_depth, moved_the_other_way, old_value_kept, wanted_a_yes
from assistant.solving.doubtful_lights import (
    exposure_turned_idle,
    gone_on_for_how_long,
    grey_of_no_strength,
    pops_asked_again,
    power_turned_idle,
    shared_out,
    sum_as_a_reading,
)
from assistant.solving.doubtful_shares import (
    against_the_rule,
    all_for_one,
    fewer_taken_for_all,
    film_as_it_was,
    full_power_left,
    moved_and_not_counted,
    stops_for_a_setting,
    summed_again,
    takes_and_gains,
    which_of_them_stays,
)
from assistant.solving.doubtful_unread import amount_not_read
from assistant.solving.doubtful_words import against_what_was_asked, moved_against_the_light
from assistant.solving.solution import Solution

Check = Callable[[Query, Query, Solution], bool]
"""Of what was said in this turn, of the whole that was solved, and of what was found."""

_FURTHER = Pattern(r"\b(?:more|extra|further|additional|another)\b")


def doubtful(said: Query, whole: Query, found: Solution) -> bool:
    """Whether an answer looks like that of a question misread."""
    return found.status == "answered" and bool(found.answers) and found.topic != "claims" and _fails(said, whole, found)


def _fails(said: Query, whole: Query, found: Solution) -> bool:
    kinds = {fact.quantity for fact in (*said.facts, *whole.facts, *found.used)}
    for check, needed in _checks_of(found.answers[0].quantity, found.topic):
        if (needed is None or not needed.isdisjoint(kinds)) and check(said, whole, found):
            return True
    return False


def _comes_to_nothing(said: Query, whole: Query, found: Solution) -> bool:
    """Nobody asks how many pops where one will do, or by what factor where nothing changes."""
    first = found.answers[0]
    again = first.quantity == "count" and not said.asks and [f.quantity in ("film_speed", "aperture", "distance") for f in said.facts] == [True]  # "and with 400 film in?" after four pops
    return not again and first.quantity in ("count", "factor") and first.value == 1.0 and first.unit not in ("sets", "rolls") and not any("already" in note for note in found.notes) and _FURTHER.search(said.text.lower()) is None and not (len({f.value for f in found.used if f.quantity == "distance"}) == 2 and any(f.quantity == "count" and f.value > 1 for f in found.used))


def _loss_counted_twice(said: Query, whole: Query, found: Solution) -> bool:
    """A typical loss taken where as many losses were told as there are things in the light."""
    if not any([a.why.startswith("a typical loss") for a in found.assumed]):
        return False
    things = sum(f.quantity in ("modifier", "camera_filter") for f in whole.facts)
    told = sum(f.quantity in ("loss", "filter_loss", "factor", "nd", "stops", "power_down") for f in whole.facts)
    asked = found.answers[0].quantity in ("stops", "factor")  # what one's own filter costs is told, so nobody asks for the usual
    return told >= (1 if asked else max(1, things))


_BY_NAME: tuple[tuple[Pattern, frozenset[str]], ...] = (
    (Pattern(r"\b(?:what|which) (?:power|fraction)\b(?! of (?:the )?light)"), frozenset({"power", "energy"})),
    (Pattern(r"\b(?:what|which|what's the) (?:aperture|f-?stop|f-?number)\b"), frozenset({"aperture"})),
    (Pattern(r"\bhow many (?:more |extra |full )?stops\b"), frozenset({"stops", "factor", "count", "magnification"})),
    (Pattern(r"\bhow many (?:feet|metres)\b"), frozenset({"distance", "near_limit", "far_limit", "hyperfocal", "depth_of_field"})),
    (Pattern(r"\b(?:what|which) shutter\b"), frozenset({"shutter", "duration"})),
    (Pattern(r"\bhow many (?:pops|flashes|bursts)\b"), frozenset({"count"})),
    (Pattern(r"\b(?:what|which) (?:guide number|gn)\b"), frozenset({"guide_number"})),
    (Pattern(r"\bhow many (?:more |extra |full |whole )?(?:seconds?|secs?|minutes?)\b"), frozenset({"shutter", "duration", "time", "interval", "recycle"})),
    (Pattern(r"\bhow many (?:more |extra |full |whole )?(?:joules?|watt[- ]?seconds?|ws)\b"), frozenset({"energy"})),
    (Pattern(r"\bhow many (?:more |extra |full |whole )?rolls\b"), frozenset({"count"})),
    (Pattern(r"\b(?:what|which) circle of confusion\b(?! (?:do|did|does|are|is|have) (?:you|it)\b)"), frozenset({"circle"})),
)
"""What is asked by its name, and the kinds of answer that fit."""
_NAMES = Patterns(name for name, _ in _BY_NAME)


def _of_another_name(said: Query, whole: Query, found: Solution) -> bool:
    """"what power" answered with an aperture, where nothing else is asked by name."""
    words = said.text.lower()
    if not (named := [_BY_NAME[number][1] for number in _NAMES.to_try(words) if _NAMES[number].search(words)]):
        return False
    given = {a.quantity for a in found.answers[: max(1, len({a.quantity for a in said.asks}))]}
    return not any([given & fits for fits in named])


_IS_SO_LONG = Pattern(r"\b(?:metres?|meters?|m|feet|ft) (?:is|=|equals?|makes|comes to)(?: about| roughly| around| the same as| nearly)? [\d.]+ ?(?:metres?|meters?|m|feet|ft)\b")


def _is_another_length(said: Query, whole: Query, found: Solution) -> bool:
    """"guide number 33 metres is about 108 feet?": one length put for another, and no exposure."""
    return not said.asks and _IS_SO_LONG.search(said.text.lower()) is not None


_PARTS = (1 / 3, 0.5, 2 / 3, 0.3, 0.7)


def _part_of_a_stop_left(said: Query, whole: Query, found: Solution) -> bool:
    """"the dish knocked off two thirds and the sock a full stop": a part that no loss took, where losses are told."""
    if found.answers[0].quantity not in ("aperture", "stops", "factor", "power") or not any(f.quantity in TAKES_LIGHT for f in said.facts):
        return False
    return any(f.quantity == "number" and not f.bad and f not in found.used and any(abs(f.value - part) < 0.01 for part in _PARTS) for f in said.facts)


_SO_MANY_THINGS = Pattern(r"\s+[A-Za-z]+s\b")


def _as_it_was(said: Query, whole: Query, found: Solution) -> bool:
    """"two heads give f/8, I put in another two", and f/8 once more: nothing has changed, and a number was left out."""
    first, places = found.answers[0], {f.start for f in found.used}
    if not any(f.quantity == first.quantity and f.origin == "said" and f.value == first.value for f in said.facts):
        return False
    return any(f.quantity == "number" and not f.bad and f.origin == "said" and f.value >= 1 and f.start not in places for f in said.facts)


def _figure_of_a_loss_left(said: Query, whole: Query, found: Solution) -> bool:
    """"1.5 stops on the lamps and 1.5 on the lens", and the second not used: so small a figure beside losses is one."""
    if found.topic != "losses" or found.answers[0].quantity not in ("aperture", "stops", "factor", "power"):
        return False
    places = {f.start for f in found.used}
    if any(f.quantity == "power" and f.origin == "said" and f.start not in places and any(abs(f.value - part) < 0.01 for part in _PARTS) and "power" not in f.said.lower() and f.unit != "%" for f in whole.facts):
        return True  # "the dome eats 1 1/2, the sock 1/2"
    return any(f.quantity == "number" and f.origin == "said" and not f.bad and 0 < f.value <= 4 and f.start not in places and not any(r.quantity == "rows" and r.value == f.value for r in whole.facts) and not _SO_MANY_THINGS.match(said.text, f.end) for f in whole.facts)


_CAME_OUT_THIN = Pattern(r"\b(?:came|turned)\b[^.?;]{0,30}\b(?:thin|dark|under(?:exposed)?)\b|\b(?:negs?|negatives?|slides?|prints?|frames?)\b[^.?;]{0,24}\b(?:thin|underexposed|too dark)\b")
_CAME_OUT_DENSE = Pattern(r"^(?!.*\b(?:slides?|transparenc(?:y|ies)|chromes?)\b[^.?;]{0,40}\bdense\b).*?(?:\b(?:came|turned)\b[^.?;]{0,30}\b(?:dense|bright|over(?:exposed)?|burnt)\b|\b(?:negs?|negatives?|slides?|prints?|frames?)\b[^.?;]{0,24}\b(?:dense|overexposed|too bright)\b)", re.S)


_WISH = Pattern(r"\b(?:want|like|prefer|wish|aim)\b[^.?;!]*")
"""What is wished for is no result: "I want my prints overexposed"."""


def _makes_it_worse(said: Query, whole: Query, found: Solution) -> bool:
    """Thin frames, and the lens closed further than the f-number that was told, or the film rated faster; dense ones, and the other way."""
    first = found.answers[0]
    told = {f.value for f in whole.facts if f.quantity == first.quantity and not f.of}
    if len(told) != 1 or not isinstance(first.value, float) or found.topic == "bracket" or any("film makes up for it" in note for note in found.notes):
        return False
    words = _WISH.sub(" ", said.text.lower())
    thin, dense = _CAME_OUT_THIN.search(words) is not None, _CAME_OUT_DENSE.search(words) is not None
    less = first.value > max(told) * 1.02
    return thin is not dense and (thin and less or dense and first.value < max(told) * 0.98)


_SETTINGS = ("power", "film_speed", "shutter", "aperture", "energy", "count")


def _two_for_nothing(said: Query, whole: Query, found: Solution) -> bool:
    """Two values of one setting, told together, that the answer has no use for: they were what it was about."""
    settings = [f for f in whole.facts if f.quantity in _SETTINGS and f.origin == "said"]
    if len(settings) < 2:
        return False
    places = {f.start for f in found.used}
    counted = {(f.quantity, f.value) for f in found.used}
    idle = [f for f in settings if f.start not in places and (f.quantity, f.value) not in counted]
    values = {(f.quantity, f.unit if f.quantity == "count" else "", f.value) for f in idle}
    kinds = [(quantity, unit) for quantity, unit, _ in values]
    return any(kinds.count(kind) > 1 for kind in kinds)


def _another_opening_idle(said: Query, whole: Query, found: Solution) -> bool:
    """An aperture found of the light that is there, with another aperture told that it has no use for: that one was the reading."""
    first, places, used = found.answers[0], {f.start for f in found.used}, {u.value for u in found.used if u.quantity == "aperture"}
    if found.topic != "ambient" or first.quantity != "aperture":
        return False
    return any(f.quantity == "aperture" and f.origin == "said" and not f.of and f.start not in places and f.value not in used for f in whole.facts)


def _another_time_idle(said: Query, whole: Query, found: Solution) -> bool:
    """A time found of the light that is there, with a second reading's time left over: two places were told, and it is not plain which."""
    first, places = found.answers[0], {f.start for f in found.used}
    times = {f.value for f in found.used if f.quantity == "shutter"}
    idle = any(f.quantity == "shutter" and f.origin == "said" and f.start not in places and f.value not in times for f in whole.facts)
    return found.topic == "ambient" and first.quantity == "shutter" and bool(times) and idle


_PART_OF_A_STOP = Pattern(r"\s*(?:of a stop )?(?:more|less|over|under|extra|darker|brighter|slower|faster)\b")


def _part_left_out(said: Query, whole: Query, found: Solution) -> bool:
    """"given a third less", and the third not used: it was of a stop."""
    parts = [f for f in said.facts if f.quantity == "number" and 0 < f.value < 1 and f not in found.used]
    return found.topic in ("flash", "change") and any(_PART_OF_A_STOP.match(said.text.lower()[f.end :]) for f in parts)


def _moved_for_nothing(said: Query, whole: Query, found: Solution) -> bool:
    """"and at 8 m?" after pops from one f-number to another: the place they were read at is no longer known."""
    moved = len(said.facts) == 1 and said.facts[0].quantity == "distance"
    kept = len({f.value for f in whole.facts if f.quantity == "aperture" and f.origin == "kept"}) == 2
    return moved and kept and found.answers[0].quantity == "count" and sum(f.quantity == "distance" for f in whole.facts) == 1 and not any(f.quantity == "guide_number" for f in whole.facts)


_APIECE = Pattern(r"[^.?!]{0,90}\b(?:apiece|each|every one)\b")


def _how_many_left_out(said: Query, whole: Query, found: Solution) -> bool:
    """"three …, guide number 80 apiece", and the three not used: there were so many of them."""
    places = {f.start for f in found.used}
    many = [f for f in said.facts if f.quantity == "number" and not f.bad and 2 <= f.value <= 12 and f.value == int(f.value) and f.start not in places]
    return found.topic in ("flash", "lights", "change") and any(_APIECE.match(said.text.lower(), f.end) for f in many)


def _of_a_power_denied(said: Query, whole: Query, found: Solution) -> bool:
    """"not half power", and half power is set or counted with; or, with no other power told, full power is taken for granted."""
    denied = {f.value for f in said.facts if f.cue == DENIED}
    if not denied:
        return False
    counted = {f.value for f in found.used if f.quantity == "power"} | {a.value for a in found.answers if a.quantity == "power" and isinstance(a.value, float)}
    taken = {a.value for a in found.assumed if a.quantity == "power"}
    return bool(taken) or any(value > 0 and abs(math.log2(value / no)) < 0.25 for value in counted for no in denied)


_CAN_GIVE = Pattern(r"\b(?:batter(?:y|ies)|cells?|pack|charge|capacitor)\b[^.?!;]{0,24}\b(?:manages?|gives?|lasts?|does|do|holds?|good for|left|only has|have)\b[^.?!;]{0,14}$")


def _pops_of_a_charge(said: Query, whole: Query, found: Solution) -> bool:
    """"the batteries manage only 40 pops": what there is in them is not what is fired at one frame."""
    return found.answers[0].quantity in ("aperture", "distance") and any(f.quantity == "count" and f.unit == "pops" and f in found.used and _CAN_GIVE.search(said.text[: f.start].lower()) for f in said.facts)


_BOX_SPEED_NOW = Pattern(r"\b(?:now|this (?:week|time|roll|one)|today|tomorrow|next)\b[^.?!;]{0,30}\bbox speed\b|\b(?:last|previous|other|first|earlier) (?:week|time|roll|one)\b[^.?!;]{0,24}\bpu(?:sh|ll)\w*\b[^?]{0,40}\bbox speed\b")


def _pushed_before(said: Query, whole: Query, found: Solution) -> bool:
    """"last roll pushed one stop, this one at box speed", and the push is counted."""
    return any(f.quantity == "push" for f in found.used) and _BOX_SPEED_NOW.search(said.text.lower()) is not None


_TAKEN_OFF = Pattern(
    r"\b(?:took|taken|take|taking|pulled|pull|whipped) (?:off|away|down|out) (?:the |my )?[\w -]{0,20}?\b(?:soft ?box|umbrella|brolly|diffuser|scrim|grid|snoot|gel|dome|filter|polari[sz]er|nd)\b|\b(?:removed?|dropped) (?:the |my )(?:soft ?box|umbrella|brolly|diffuser|scrim|grid|snoot|gel|dome|filter|polari[sz]er|nd)\b"
    r"|\bno (?:soft ?box|umbrella|brolly|diffuser|scrim|grid|snoot|gel|dome|filter|polari[sz]er|nd)\b"
)


def _loss_of_what_is_off(said: Query, whole: Query, found: Solution) -> bool:
    """"I took off the softbox that cost two stops", "no softbox (it costs two)", and an exposure found with the loss."""
    off = _TAKEN_OFF.search(said.text.lower())
    if off is None:
        return False
    lost = [f for f in said.facts if f.quantity in TAKES_LIGHT and f in found.used]
    lone = sum(f.quantity in TAKES_LIGHT for f in said.facts) == 1 and not any(f.quantity == "aperture" for f in said.facts)
    return lone and bool(lost) and found.answers[0].quantity in ("aperture", "distance", "power") and off.end() <= lost[0].start <= off.end() + 40


_ANOTHERS = Pattern(r"\b(?:my|his|her|the|a) (?:friend|colleague|mate|assistant|brother|sister|wife|husband|boss|rival|teacher|tutor|pal|partner|neighbou?r)(?: always| usually| often| would| might| just| only)* (?:uses?|using|shoots?|push(?:es)?|pulls?|rates?|sets?|goes|has|likes|swears by|prefers?)\b[^.?!;,]{0,20}$")


def _of_somebody_else(said: Query, whole: Query, found: Solution) -> bool:
    """"GN 80 at full power; my colleague uses half", and half power is counted with."""
    if not _ANOTHERS.may_match(said.text):
        return False
    kinds = [f.quantity for f in said.facts]
    return any(f.quantity in ("power", "film_speed", "rated", "aperture", "push") and f in found.used and (kinds.count(f.quantity) > 1 or f.quantity != "aperture" and any(g.at_power for g in said.facts) or f.quantity == "rated" and "film_speed" in kinds) and _ANOTHERS.search(said.text[: f.start].lower()) for f in said.facts)


_CHANGES = frozenset({"power", "film_speed", "distance", "count", "aperture"})


def _one_change_of_two(said: Query, whole: Query, found: Solution) -> bool:
    """"if I double the distance and quadruple the power", and the stops of one of the two alone."""
    first, opened = found.answers[0], found.topic == "conversions" and any(f.quantity == "aperture_range" and f.origin == "said" and f not in found.used for f in whole.facts)
    if first.quantity != "stops" or found.used or not isinstance(first.value, float):
        return opened  # "from 1/60 to 1/250 and from f/8 to f/11", and the times alone
    changed = [t for t in terms(said.text) if t.quantity in _CHANGES]
    return len({t.quantity for t in changed}) > 1 and not any(math.isclose(abs(first.value), abs(_together(changed, way)), abs_tol=0.01) for way in (1, -1))


def _together(changed: list[Term], way: int) -> float:
    """Stops that the changes make together, the f-number's turned round where its opening was meant."""
    return sum(WEIGHTS["flash"][t.quantity] * t.doublings * (way if t.quantity == "aperture" else 1) for t in changed)


_UP_TO_IT = Pattern(r"\s*(?:up )?to the (?:ceiling|roof)\b", re.I)


def _legs_that_clash(said: Query, whole: Query, found: Solution) -> bool:
    """Two lengths of the whole way of a bounce, or two of the same leg: "2 m to the ceiling, 3 m to the ceiling"."""
    legs = [f for f in said.facts if f.quantity == "path"]
    return len(legs) > 1 and (len({f.value for f in legs if f.cue == "total"}) > 1 or len({f.value for f in legs if _UP_TO_IT.match(said.text, f.end)}) > 1)


def _one_lens_of_two(said: Query, whole: Query, found: Solution) -> bool:
    """The angle of one lens, and a second length in millimetres idle: it was a side of the film, or was to be compared."""
    told = {f.value for f in said.facts if f.quantity == "focal_length"}
    return len(told) > 1 and len({f.value for f in found.used if f.quantity == "focal_length"}) == 1


_NUMBER, _COUNT = frozenset({"number"}), frozenset({"count"})
_TURNED = frozenset({"aperture", "stops", "factor", "power"})
_CHECKS: tuple[tuple[Check, frozenset[str] | None, frozenset[str] | None, frozenset[str] | None], ...] = (
    # the check, the quantities of which the first answer is one, the topics that found it, and the kinds of facts of which it needs one; None: any
    (_makes_it_worse, frozenset({"aperture", "film_speed"}), None, frozenset({"aperture", "film_speed"})),
    (_of_another_name, None, None, None),
    (another_quantity, None, None, None),
    (no_one_of_them, frozenset({"aperture"}), None, frozenset({"aperture"})),
    (is_nothing, None, None, None),
    (film_changed_nothing, frozenset({"aperture"}), frozenset({"change"}), frozenset({"film_speed"})),
    (_as_it_was, frozenset({"aperture", "power"}), None, _NUMBER),
    (_part_left_out, None, frozenset({"flash", "change"}), _NUMBER),
    (_is_another_length, None, None, None),
    (_two_for_nothing, None, None, frozenset(_SETTINGS)),
    (_part_of_a_stop_left, _TURNED, None, _NUMBER),
    (_figure_of_a_loss_left, _TURNED, frozenset({"losses"}), frozenset({"number", "power"})),
    (part_left, frozenset({"aperture", "guide_number", "distance", "power", "stops", "count"}), None, TAKES_LIGHT | {"power"}),
    (_comes_to_nothing, frozenset({"count", "factor"}), None, None),
    (against_what_was_asked, frozenset({"stops", "aperture"}), None, None),
    (_loss_counted_twice, None, None, None),
    (beyond_nature, None, None, None),
    (_another_opening_idle, frozenset({"aperture"}), frozenset({"ambient"}), frozenset({"aperture"})),
    (_another_time_idle, frozenset({"shutter"}), frozenset({"ambient"}), frozenset({"shutter"})),
    (pops_left_out, _COUNT, frozenset({"time"}), _COUNT),
    (_moved_for_nothing, _COUNT, None, frozenset({"distance"})),
    (_how_many_left_out, None, frozenset({"flash", "lights", "change"}), _NUMBER),
    (_of_a_power_denied, None, None, frozenset({"remark"})),
    (_legs_that_clash, None, None, frozenset({"path"})),
    (_one_lens_of_two, frozenset({"coverage"}), None, frozenset({"focal_length"})),
    (_pops_of_a_charge, frozenset({"aperture", "distance"}), None, _COUNT),
    (_pushed_before, None, None, frozenset({"push"})),
    (_loss_of_what_is_off, frozenset({"aperture", "distance", "power"}), None, TAKES_LIGHT),
    (_of_somebody_else, None, None, frozenset({"power", "film_speed", "rated", "aperture", "push"})),
    (shared_out, frozenset({"stops", "factor"}), frozenset({"losses"}), TAKES_LIGHT),
    (part_that_is_gone, frozenset({"stops", "factor", "energy", "aperture"}), None, frozenset({"power"})),
    (pops_of_no_flash, _COUNT, None, None),
    (pops_asked_again, _COUNT, None, _COUNT),
    (grey_of_no_strength, frozenset({"aperture", "distance", "power"}), None, frozenset({"guide_number"})),
    (_one_change_of_two, frozenset({"stops"}), None, None),
    (loss_made_worse, frozenset({"power", "energy", "distance", "aperture"}), None, TAKES_LIGHT | {"power_down", "modifier"}),
    (gain_taken_for_loss, _TURNED | {"distance"}, None, frozenset({"loss", "filter_loss"})),
    (won_back_taken_for_loss, None, None, frozenset({"loss", "filter_loss"})),
    (share_taken_for_power, frozenset({"stops", "factor"}), None, frozenset({"power"})),
    (layers_idle, frozenset({"stops", "factor"}), frozenset({"conversions"}), frozenset({"rows"})),
    (all_for_one, frozenset({"stops"}), frozenset({"losses"}), frozenset({"aperture", "aperture_range"})),
    (moved_and_not_counted, frozenset({"stops", "aperture", "power", "distance"}), frozenset({"falloff", "relations"}), frozenset({"distance"})),
    (fewer_taken_for_all, frozenset({"stops", "aperture", "count"}), None, _COUNT),
    (takes_and_gains, frozenset({"stops"}), None, frozenset({"modifier", "loss", "filter_loss", "camera_filter"})),
    (stops_for_a_setting, frozenset({"stops"}), None, frozenset({"shutter"})),
    (which_of_them_stays, frozenset({"aperture"}), None, frozenset({"loss"})),
    (full_power_left, _COUNT, frozenset({"time"}), frozenset({"power"})),
    (film_as_it_was, frozenset({"film_speed"}), frozenset({"ambient", "film"}), frozenset({"film_speed"})),
    (summed_again, frozenset({"aperture"}), frozenset({"flash"}), frozenset({"aperture"})),
    (against_the_rule, frozenset({"stops", "factor"}), frozenset({"ambient"}), None),
    (saved_more_than_there_were, _COUNT, frozenset({"time"}), _COUNT),
    (number_left_among_pops, None, frozenset({"time", "conversions"}), _NUMBER),
    (deed_left_out, frozenset({"aperture", "power", "distance", "stops", "factor"}), frozenset({"losses"}), TAKES_LIGHT),
    (pops_idle_in_the_room, frozenset({"stops", "aperture", "shutter"}), frozenset({"ambient"}), _COUNT),
    (gone_on_for_how_long, None, None, frozenset({"interval"})),
    (left_idle, None, None, None), (only_said_back, frozenset({"distance"}), None, frozenset({"distance"})), (behind_the_back, None, None, frozenset({"distance"})),
    (bare_then_worn, frozenset({"aperture", "distance", "power"}), frozenset({"falloff", "change"}), frozenset({"modifier"})),
    (far_left_out, None, frozenset({"relations"}), None),
    (sum_as_a_reading, frozenset({"stops"}), frozenset({"conversions"}), frozenset({"aperture"})),
    (quarter_of_a_mark, None, None, frozenset({"shutter"})),
    (moved_the_other_way, frozenset({"distance"}), None, frozenset({"distance"})), (moved_for_a_depth, frozenset({"distance"}), None, frozenset({"distance"})), (moved_against_the_light, frozenset({"distance"}), None, frozenset({"distance"})),
    (old_value_kept, None, frozenset({"ambient", "falloff", "relations", "lamps"}), frozenset({"stops", "relation"})), (wanted_a_yes, None, None, None), (amount_not_read, frozenset({"aperture", "distance", "guide_number", "film_speed"}), None, None),
    (exposure_turned_idle, frozenset({"aperture", "shutter"}), frozenset({"ambient", "film"}), None),
    (power_turned_idle, frozenset({"aperture", "distance"}), frozenset({"change", "flash", "falloff"}), frozenset({"aperture"})),
)


@cache
def _checks_of(answer: str, topic: str) -> tuple[tuple[Check, frozenset[str] | None], ...]:
    """The checks of an answer of this quantity to a question of this topic, and the kinds of facts that they need."""
    return tuple((check, needed) for check, answers, topics, needed in _CHECKS if (answers is None or answer in answers) and (topics is None or topic in topics))
