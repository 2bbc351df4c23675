"""Rules of thumb put to the ledger: if this changes so much, does that change as is said?

Every rule is one of two balances (see ledger): a flash exposure and an ambient exposure. What
has to change along with something else is whatever closes the balance again; what follows
from a change is its weight in it. No rule is written down by itself.
"""

from __future__ import annotations

import math

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.records import record, replace
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, tolerance, within
from assistant.solving.claim_denial import called_wrong, denials
from assistant.solving.claim_words import Term, part_of, plain, terms

WEIGHTS: dict[str, dict[str, float]] = {
    # stops of light for each doubling (ledger.WEIGHT), and of a shutter time, which only the ambient light feels
    "flash": {"guide_number": 2.0, "film_speed": 1.0, "power": 1.0, "count": 1.0, "pops": 1.0, "distance": -2.0, "aperture": -2.0, "time": 0.0, "filter": -1.0, "reciprocity": 0.0, "bellows": -1.0},
    "ambient": {"film_speed": 1.0, "aperture": -2.0, "time": 1.0, "filter": -1.0, "power": 0.0, "count": 0.0, "distance": 0.0, "guide_number": 0.0, "pops": 0.0, "reciprocity": -1.0, "bellows": -1.0},
}
TOLERANCE = 0.34
"""Stops within which a figure is near enough: a third, the finest step of most apertures."""

EXACT = 0.15
"""Stops within which a factor said outright must come: 1.4 for the root of two is near, three for three stops is not."""

_ABOUT = Pattern(r"\b(?:about|roughly|around|nearly|almost|approximately|some|more or less|ish)\b")

RANK = {"guide_number": 1, "light": 1, "stops": 1}
"""What causes comes before what follows: the guide number follows from settings, the light from everything."""

NAMES = {"guide_number": "the guide number", "film_speed": "the film speed", "power": "the power", "count": "the number of equal flashes", "pops": "the number of pops",
         "distance": "the distance", "aperture": "the f-number", "time": "the shutter time", "light": "the light", "filter": "the filter"}

_SPECIAL = {2.0: "twice", 4.0: "four times", 3.0: "three times", 8.0: "eight times", 9.0: "nine times", 16.0: "sixteen times", 0.5: "half", 0.25: "a quarter of", 0.125: "an eighth of", 0.0625: "a sixteenth of"}


@record
class Verdict:
    """Whether a rule holds, how far it is out in stops, what is right, and why."""

    holds: bool
    off: float
    right: str
    why: str
    answers: tuple[Quantity, ...] = ()
    start: int = 0


def judge_rule(text: str) -> Verdict | None:
    """The verdict on the rule said in the text; the first part that does not hold, if any. None where no rule is said."""
    said = plain(text)
    found = _with_speed(said, [t for t in terms(text) if t.doublings or t.quantity == "count"])
    cause = min(found, key=lambda t: (RANK.get(t.quantity, 0), t.start), default=None)
    effects = [t for t in found if cause is not None and t is not cause and t.quantity != cause.quantity]
    if cause is None or not effects:
        return None
    if cause.quantity == "count" and _SPLIT.search(said):
        cause = Term("power", -cause.doublings, cause.start, cause.end, cause.part)
    if _STAYS.search(said) and not any(t.part or t.quantity in ("light", "time") for t in found):
        return None  # what two changes of the flash do to the ambient light is not what balances them
    if cause.quantity == "distance" and _of_the_camera(said) or cause.quantity == "count" and elsewhere(said):
        return None
    no = denials(said)
    if cause.quantity == "distance" and keeps_together(said):
        return _spreads_less([v for v in (_judge(said, cause, e) for e in effects if e.quantity in ("light", "stops")) if v is not None], no)
    verdicts = [_denied(v, no) for v in (_judge(said, cause, e) for e in effects) if v is not None]
    wrong = [v for v in verdicts if not v.holds]
    judged = next(iter(wrong or verdicts), None)
    return replace(judged, holds=not judged.holds, off=0.0) if judged is not None and called_wrong(said) else judged


def _denied(verdict: Verdict, no: list[tuple[int, int]]) -> Verdict:
    """"doubling the distance does not halve the light": what is denied of an effect turns round what is true of it."""
    return replace(verdict, holds=not verdict.holds, off=0.0) if sum(a <= verdict.start < b for a, b in no) % 2 else verdict


_NO_POINT = Pattern(
    r"\b(?:parallel|collimated|laser|pencil)[- ](?:beam|light|rays)|\b(?:beam|light|rays) (?:is|are|was|stays?|runs?) (?:parallel|collimated)|\b(?:searchlight|lighthouse|laser)\b"
    r"|\b(?:corridor|tunnel|hallway|passage(?:way)?|stairwell|tube of white)\b|\b(?:white|pale|mirrored|reflecting|shiny|tiled)[- ](?:walls|walled|room|tiles)\b|\bmirrors? (?:all round|on both sides)\b"
    r"|\b(?:close|right up|very near|nearer than its (?:own )?(?:width|size)) to (?:the |a |my )?(?:big|large|huge|giant) (?:soft ?box|window|scrim|octa\w*|source)\b|\b(?:wall|row|bank|line|strip) of (?:lights|tubes|windows|flashes|heads)\b")
"""Light that does not spread from one small spot into the open: the square of the distance takes too much off it."""
_NO_SQUARE = "The inverse square law is of light that spreads freely from a small source; a beam that keeps its width, walls that send light back and a source wider than it is far away all lose less, so meter it."


def keeps_together(text: str) -> bool:
    """Whether the light that is spoken of does not fall by the square of the distance."""
    return _NO_POINT.search(text.lower()) is not None


def _spreads_less(judged: list[Verdict], no: list[tuple[int, int]]) -> Verdict | None:
    """What the inverse square law says does not hold there; how much less is lost nobody can tell, so no other figure is judged."""
    if len(judged) != 1 or not judged[0].holds:
        return None
    return _denied(Verdict(False, 0.0, _NO_SQUARE, "", (), judged[0].start), no)


_STAYS = Pattern(rf"\b(?:ambient|background|daylight|available|{ROOMS})(?: light| exposure| part)?\b[^,.;?]{{0,12}}\b(?:stays?|remains?|is|be|kept?|leaves?|unchanged|same|alone)\b")
_CAMERA_STANDS = Pattern(r"\bcamera\b")
_FLASH_WITH_IT = Pattern(r"\b(?:on|to|with) (?:the |my |your )?camera\b|\bon-camera\b|\bhot ?shoe\b")
_ELSEWHERE = Pattern(
    r"\b(?:opposite|either|each|both|other) (?:side|end|cheek)s?\b|\bfrom (?:behind|the (?:back|other side))\b|\bbehind\b|\b(?:rim|hair|back|kicker|accent|background)[- ]?(?:light|head|flash)?\b|\bcross[- ]?light\w*|\bone each side\b"
    r"|\b(?:second|other|another|extra|third)\b[^.?;]{0,30}\b(?:(?:half|quarter|1/\d+|less|lower) (?:the )?power|(?:twice|half|double) (?:the|as|its) (?:distance|far)|further|farther|closer|nearer|weaker|smaller|stronger)\b"
)
_ADDED = Pattern(r"\b(?:second|other|another|extra|third|add\w*|two|three|four)\b")
"""Lights that do not fall from one spot, equally strong, on the side that is seen."""


def elsewhere(said: str) -> bool:
    """Whether a second light is said to stand elsewhere than the first or to give another light, or a distance is the camera's."""
    return _ELSEWHERE.search(said) is not None and _ADDED.search(said) is not None or _of_the_camera(said)


def _of_the_camera(said: str) -> bool:
    return _CAMERA_STANDS.search(said) is not None and _FLASH_WITH_IT.search(said) is None


_SPLIT = Pattern(r"\b(?:split|shared?|divided)\b[^.?!]{0,24}\b(?:even\w*|equal\w*|between|among|in (?:two|half|three|four))\b[^?]*\b(?:each|every|either|one of them)\b")
"""One pack's energy among the heads: each has its part."""
_INSTEAD = Pattern(r"\b(?:instead of|rather than|over|against|compared (?:to|with)|than|not|vs|versus)\b|\bof (?=(?:iso|asa)\b)|\bas (?=(?:with |on |at )?(?:an? |the |my )?(?:iso|asa|film|stock|roll)\b)")


def _with_speed(said: str, found: list[Term]) -> list[Term]:
    """"ISO 400 doubles the reach": one film speed said beside an effect is counted from ISO 100, two from the second."""
    speeds = patterns.findall(r"\b(?:iso|asa|(?:film|stock|roll|emulsion) rated(?: at)?(?: iso)?) ?(\d+)\b", said)
    sized = all(t.quantity in ("guide_number", "distance", "stops", "light") for t in found)
    if len(speeds) == 2 and _INSTEAD.search(said) is None:
        speeds = speeds[::-1]  # "swapping ISO 100 for ISO 400": the second is the new one
    base = float(speeds[1]) if len(speeds) == 2 and speeds[1] != speeds[0] else 100.0
    if len(found) != 1 or len(speeds) not in (1, 2) or not sized or float(speeds[0]) in (0.0, base) or base <= 0:
        return found
    start = said.find(speeds[0])
    return [Term("film_speed", math.log2(float(speeds[0]) / base), start, start + len(speeds[0])), *found]


_STATED = Pattern(r"\b(?:halv(?:es|ing)|doubl(?:es|ing)|quadruples|triples|quarters|divides?|multipl(?:ies|y))\b|\b(?:cuts?|drops?|reduces?)\b[^.?!]{0,24}\b(?:in half|by half|to half|to a (?:half|quarter))\b")


def judge_stated(text: str) -> Verdict | None:
    """The verdict on a rule said outright ("halves", "divides by") in one clause of a worked line."""
    said = plain(text)
    loss = patterns.search(r"\b[\w.]+[- ]stop (?:nd|filter)\b|\bnd ?\d+\b", said)
    for clause in patterns.split(r"[.;:?!]\s|,\s?", said):
        if _STATED.search(clause):
            found = judge_rule(clause) or (judge_rule(f"{loss.group()} {clause}") if loss and patterns.search(r"\b(?:nd|filter)\b", clause) else None)
            if found is not None:
                return found
    return None


def _judge(said: str, cause: Term, effect: Term) -> Verdict | None:
    part = effect.part or cause.part or ("flash" if cause.quantity != "time" else _part_in_clause(said, effect))
    weight = _weight(cause.quantity, part)
    if weight is None:
        return None
    light = cause.doublings * weight if cause.quantity not in ("stops", "light") else _signed(said, cause)
    if effect.quantity in ("light", "stops"):
        return _of_light(said, cause, effect, light, part)
    mine = _weight(effect.quantity, part)
    if not mine:
        return None
    right = _doublings(said, cause, effect, light, mine)
    off = (effect.doublings - right) * mine
    near = TOLERANCE if _ABOUT.search(said[max(0, effect.start - 20) : effect.end]) else EXACT
    bound = bound_of(said[: effect.start])[0]
    holds = within(bound, (right - effect.doublings) * abs(mine), near)
    return Verdict(holds, 0.0 if bound else abs(off), _say(cause, effect.quantity, right), _why(cause, effect.quantity, right), (_factor(right),), effect.start)


_CLAUSE = Pattern(r"[,.;:?!](?!\d)|\b(?:and|but|while|whereas)\b")


def _part_in_clause(said: str, effect: Term) -> str:
    """What a time of the shutter is said to change: the light that the clause of the effect speaks of."""
    here = _CLAUSE.split(said[: effect.start])[-1] + _CLAUSE.split(said[effect.start :])[0]
    return "ambient" if "flash" not in said else part_of(here) or "flash"


def _weight(quantity: str, part: str) -> float | None:
    return 1.0 if quantity in ("light", "stops") else WEIGHTS[part].get(quantity)


def _doublings(said: str, cause: Term, effect: Term, light: float, weight: float) -> float:
    """How many times the other quantity doubles: it carries the light, or it makes up for it."""
    carries = effect.quantity == "guide_number" and cause.quantity in ("power", "count", "film_speed", "filter", "light", "stops")
    alike = patterns.search(r"\b(?:like|same as|equals?|equivalent|as good as|worth|equal to)\b", said) is not None
    value = light / weight if carries or alike else -light / weight
    if cause.quantity in ("stops", "light") and not carries:
        # so many stops said without a sign: the way that was said is taken, only the size is judged
        value = math.copysign(value, effect.doublings)
    elif cause.quantity in ("stops",):
        value = math.copysign(value, effect.doublings)
    return value


_LESS = Pattern(r"\b(?:los\w*|cost\w*|less|dark\w*|drop\w*|under|dimmer|weaker|takes? away|down)\b")
_MORE = Pattern(r"\b(?:gain\w*|gives?|adds?|more|bright\w*|lighter|lifts?|rises?|comes? up|goes up|over|stronger|buys?|wins?)\b")
_OPENS = Pattern(r"\b(?:needs?|requires?|open\w*|compensat\w*|extra|add(?:s|ed|ing)?|makes? up|have to give)\b")
"""Stops to open up or to add are positive."""
_NEED = Pattern(r"\b(?:needs?|open\w*|compensat\w*|must|have to|make up|stop down|clos\w*|required?)\b")


def _signed(said: str, term: Term) -> float:
    return term.doublings if term.quantity == "light" or not _LESS.search(said) else -term.doublings


def _of_light(said: str, cause: Term, effect: Term, light: float, part: str) -> Verdict | None:
    claimed = effect.doublings
    if cause.quantity in ("light", "stops"):
        light, claimed = abs(light), abs(claimed)
    elif effect.quantity == "stops":
        costs = cause.quantity == "distance" and (_REACH.search(said, cause.start, cause.end) is not None or _REACHES.match(said, cause.end) is not None) or cause.quantity == "filter" and not patterns.search(r"\b(?:brighter|gains?|hotter)\b", said)
        claimed = math.copysign(claimed, light) if costs else _stops_claimed(said, effect, light)
    needed = effect.quantity == "light" and cause.quantity != "light" and patterns.search(r"\b(?:needs?|requires?|takes|wants?|calls? for|asks? for|(?:must|has to|have to) (?:put out|give|deliver|produce|supply|be))\b[^.;]*$", said[: effect.start]) is not None
    light = -light if needed else light
    off = claimed - light
    strength = cause.quantity == "filter" and patterns.search(r"\bnd\b|\bnd ?\d|neutral|\bmore exposure\b|\bextra\b", said) is not None  # an ND is sold by its stops (contract 32)
    shown = abs(light) if effect.quantity == "stops" and (strength or _OPENS.search(said) and not _LESS.search(said)) else light
    answers = (marks.stops(shown),) if abs(light) > 1e-9 else ()
    more = math.copysign(off, off * claimed) if effect.quantity == "stops" and claimed else off  # of stops their size is bounded, of a share the light
    bound = bound_of(said[: effect.start])[0]
    near = TOLERANCE if bound or _ABOUT.search(said[max(0, effect.start - 20) : effect.end]) else EXACT
    holds = within(bound, -more, tolerance(said, effect.start, effect.end, near))
    return Verdict(holds, 0.0 if bound else abs(off), _say_light(cause, light, part, needed), _why(cause, "light", light), answers, effect.start)


_REACH = Pattern(r"\b(?:reach|range|throw)\b")
_REACHES = Pattern(r" (?:that |which )?(?:the |my |a |it's |its )?(?:flash|light|gun|head|it) (?:can |will |still )?(?:reach\w*|carr\w*|cover\w*|gets?|goes)\b")
"""How far the light carries: it may be what the stops give, or what they pay for, so only their size is judged."""


def _stops_claimed(said: str, effect: Term, light: float) -> float:
    """The sign of the stops: as said where it is plain, beside them before anywhere else, else as it must be."""
    _, bound = bound_of(said[: effect.start])  # "costs more than three stops" is a loss
    before = bound if bound >= 0 else effect.start
    near = said[max(0, before - 20) : before] + said[effect.start : effect.end + 20]
    less, more = _LESS.search(near) is not None, _MORE.search(near) is not None
    if less == more:
        less, more = _LESS.search(said) is not None, _MORE.search(said) is not None
    claimed = effect.doublings
    if _NEED.search(said) or less == more:
        return math.copysign(claimed, light)
    return -claimed if less else claimed


# --- words -------------------------------------------------------------------------------------


def times(doublings: float) -> str:
    """A factor in words: "twice", "1.41 times", "half".

    >>> times(1.0), times(-2.0), times(0.5)
    ('twice', 'a quarter of', '1.41 times')
    """
    factor = 2.0**doublings
    close = next((word for value, word in _SPECIAL.items() if abs(factor - value) < 0.004 * value), None)
    return close or (f"{factor:.3g} times" if factor >= 1 or factor < 0.1 else f"{factor:.2g} times")


def _cause(cause: Term) -> str:
    if cause.quantity == "stops":
        return speak_stops(cause.doublings)
    if cause.quantity == "filter":
        return f"a loss of {speak_stops(cause.doublings)}"
    if cause.quantity == "pops" and cause.doublings > 0:
        return f"{2**cause.doublings:.3g} times the pops"
    if cause.quantity == "count":
        many = 2**cause.doublings
        return f"{_COUNT.get(round(many), f'{many:.3g}')} equal flashes from one spot" if abs(many - round(many)) < 0.01 else f"{many:.3g} times the number of flashes"
    return f"{times(cause.doublings)} {NAMES[cause.quantity]}"


_COUNT = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 8: "eight", 9: "nine", 16: "sixteen"}


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _say(cause: Term, quantity: str, right: float) -> str:
    verb = "give" if cause.quantity == "count" else "gives" if quantity in ("guide_number",) else "goes with"
    if cause.quantity in ("count",) and quantity != "guide_number":
        verb = "go with"
    if cause.quantity == "stops" and cause.doublings > 1:
        verb = "go with"
    same = abs(right) < 1e-9
    return f"{_capital(_cause(cause))} {verb} {'the same' if same else times(right)} {NAMES[quantity].removeprefix('the ') if same else NAMES[quantity]}."


def _say_light(cause: Term, light: float, part: str, needed: bool = False) -> str:
    if abs(light) < 1e-9:
        return f"{_capital(_cause(cause))} leaves the {part} light as it was."
    way = "more" if light > 0 else "less"
    if cause.quantity == "filter":
        return f"It costs {speak_stops(light)} of light."
    if cause.quantity == "stops":
        return f"{_capital(_cause(cause))} {'is' if cause.doublings <= 1 else 'are'} {times(abs(light))} the light."
    if cause.quantity == "light":
        return f"{_capital(_cause(cause))} is {speak_stops(light)} {way}."
    whole = "" if abs(light) > 6 else f", {times(light)} the light"
    if needed:
        return f"{_capital(_cause(cause))} {'need' if cause.quantity == 'count' else 'needs'} {speak_stops(light)} {way}{whole}."
    verb = "give" if cause.quantity == "count" else "is"
    return f"{_capital(_cause(cause))} {verb} {speak_stops(light)} {way}{whole}."


_ROOT_WHY = "Light goes with the square of the guide number, so the guide number goes with the square root of the light"
_WHY = {
    ("guide_number", ""): _ROOT_WHY + ": one stop is 1.4 times, two stops twice.",
    ("", "distance"): "Light spreads over an area, so it falls with the square of the distance (the inverse square law): twice as far leaves a quarter.",
    ("aperture", ""): "The light let in goes with the square of the f-number: one stop is 1.4 times, the square root of two.",
    ("", "aperture"): "The light let in goes with the square of the f-number: each whole mark of the scale halves it.",
    ("", "time"): "The flash is over while the shutter is open, so the shutter time changes the ambient light alone (within sync speed).",
    ("", "count"): "Light adds: every doubling of equal flashes is one stop.",
    ("", "pops"): "Light adds: every doubling of the pops is one stop.",
    ("", "power"): "Half the power is half the light, one stop.",
    ("", "film_speed"): "Every doubling of the film speed is one stop.",
    ("", "stops"): "A stop is a doubling or a halving of the light, so stops multiply.",
    ("", "light"): "A stop is a doubling or a halving of the light.",
}


def _why(cause: Term, quantity: str, right: float) -> str:
    for key in ((quantity, ""), ("", "distance" if quantity == "distance" else cause.quantity), ("", quantity)):
        if key in _WHY and not (cause.quantity == "distance" and quantity in ("aperture", "guide_number")):
            return _WHY[key]
    return "Distance and f-number both work by the square, so they go together: their product is the guide number." if cause.quantity == "distance" else ""


def _factor(doublings: float) -> Quantity:
    return Quantity("factor", 2.0**doublings, "times")
