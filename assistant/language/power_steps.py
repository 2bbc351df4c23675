"""A power told by steps from another: "a third of a stop over half power", "two stops off full", "quarter power less a third"."""

from __future__ import annotations

import re
from itertools import product

from assistant.language.turned_power import NEVER_TURNED
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_STEPS = frozenset({"stops", "relation", "power_down", "signed", "number"})
_HAS_ONE = frozenset({"guide_number", "energy", "recycle", "t05", "t01"})
"""What a flash is known by: beside it a power is a setting, and not what is compared."""
_OF_A_CHARGE = frozenset({"energy", "recycle", "interval", "count", "supply"})
_OF_EXPOSURE = frozenset({"aperture", "guide_number", "distance", "film_speed", "ratio"})
"""Where the former are told and none of these, each power is one that a flash or its battery is known at."""
_FROM = Pattern(
    r" ?(?:stops? )?(?:(?:(?P<up>over|above|past|beyond|more than|up from|hotter than|brighter than)|(?:turned |dialled |set )?(?:under|below|beneath|off|less than|down from|down on|short of|shy of|lower than|from))) (?:the |my |its |a )?", re.I)
"""Between the steps and the power that they count from."""
_LESS = Pattern(r",? ?(?:(?:and )?(?:then )?(?P<up>plus|and|up(?: by)?|more)|less|minus|down(?: by)?) (?:by )?(?:another )?", re.I)
"""Between a power and the steps that are taken from it."""


_AS_FAR = Pattern(r" (?:as (?:far|near|close|distant)|the distance|its distance|the key's distance)\b", re.I)


def half_as_far(facts: list[Fact], text: str) -> list[Fact]:
    """"the key stands half as far away": a share of a distance, and no power."""
    return [replace(f, quantity="times", unit="", cue="") if f.quantity in ("power", "share") and "power" not in f.said and _AS_FAR.match(text, f.end) else f for f in facts]


_TURNS_IT = Pattern(r"^\W*(?:(?:and|or|so|but|then|now|ok) )*(?:(?:what|how about|what about|suppose|say) )?(?:(?:if|when) )?(?:(?:(?:i|we) )?(?:dial|turn|set|knock|take|bring|wind|drop)(?:s|ed)? (?:it|the (?:flash|head|pack|power|gun))|at|with it|it's|it is|make it)?(?: down| by| only| just)* (?=\d|one|two|three|four|five|six|an? |half)", re.I)


def _of_the_scene(facts: list[Fact], text: str) -> bool:
    """"and if I dial it down three stops from full?": the flash of the question before."""
    return len(facts) == 2 and any(f.quantity == "power" and f.value == 1.0 for f in facts) and _TURNS_IT.match(text) is not None


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with that power alone, where a flash is told and one power of it, or nothing but what a charge is good for."""
    powers, kinds = [f for f in facts if f.quantity == "power" and not f.bad], {f.quantity for f in facts}
    of_a_charge = not kinds.isdisjoint(_OF_A_CHARGE) and kinds.isdisjoint(_OF_EXPOSURE)
    of_a_flash = of_a_charge or len(powers) == 1 and (not kinds.isdisjoint(_HAS_ONE) or _of_the_scene(facts, text))
    if not of_a_flash or kinds.isdisjoint(_STEPS) or NEVER_TURNED.search(text):
        return facts
    for power, steps in product(powers, facts):
        if steps.quantity not in _STEPS or steps.to or steps.quantity == "number" and not 0 < steps.value < 1:
            continue
        found = _FROM.fullmatch(text, steps.end, power.start) if steps.end <= power.start else _LESS.fullmatch(text, power.end, steps.start)
        if found is None:
            continue
        value = power.value * 2.0 ** (abs(steps.value) if found["up"] or steps.unit == "+" else -abs(steps.value))
        if value > 1.0:
            return facts  # "a stop over full power": said of something else
        start, end = min(steps.start, power.start), max(steps.end, power.end)
        told = replace(power, value=value, unit="", of=power.of or steps.of, start=start, end=end, said=text[start:end])
        return [told if f is power else f for f in facts if f is not steps]
    return facts
