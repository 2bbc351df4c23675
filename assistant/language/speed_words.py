"""A speed told by a way and the time that it takes: "the runner covers 4 m in half a second", "half a metre a second"; and the time beside a speed that looks like a power."""

from __future__ import annotations

from assistant.language.length_items import SPEEDS
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_GOES = Pattern(r"\b(?:cross|cover|travel|run|go|mov|fl|swing|roll|fall|spin|sprint|ride|drive|dart|pass|advanc|slid|walk|do)(?:e?s|es|ies|ing|e|s|ed|ls|led)?(?: (?:about|around|some|roughly|nearly|over|through|a distance of|the))* $")
_TAKES = Pattern(r"(?: (?:of|wide|long))? in (?:about |around |roughly |only |just )*$")
_LENGTHS = frozenset({"distance", "blur", "move", "max_distance", "length"})
_TIMES = frozenset({"shutter", "time", "interval", "duration"})


_A_SECOND = ("a second", "a sec", "one second")
_SHUTTER_IS = Pattern(r"\b(?:shutter(?: speed| time)?|exposure|leaf)(?:'s)? ?(?:(?:is|was|set|stays|stands|left|open|opens|kept|at|to|on|of|for|in|a|an|about) ?)*$")


_ROLLS_AT = Pattern(r"rolls? (?:at|along at) \d")
_A_SPEED = Pattern(r" ?(?P<unit>m/s|metres? (?:a|per) second|meters? (?:a|per) second|feet (?:a|per) second|ft/s|km/h|mph)(?![a-z])")
_METRES = {"mp": SPEEDS["mph"], "m/": 1.0, "me": 1.0, "fe": SPEEDS["fts"], "ft": SPEEDS["fts"], "km": SPEEDS["kmh"]}


def _rolling(fact: Fact, lower: str) -> Fact:
    """"a ball rolls at 2 m/s": no roll of film of that speed."""
    unit = _A_SPEED.match(lower, fact.end) if _ROLLS_AT.match(fact.said.lower()) else None
    if unit is None:
        return fact
    scale = _METRES[unit["unit"][:2]]
    return replace(fact, quantity="velocity", value=fact.value * scale, unit="ft" if unit["unit"][0] == "f" or unit["unit"] == "mph" else "m", of="", bad="", end=unit.end(), said=lower[fact.start : unit.end()])


def settle(facts: list[Fact], lower: str) -> list[Fact]:
    """The facts with such a way and its time as one velocity, in metres a second."""
    facts = [_rolling(f, lower) if f.quantity == "film_speed" else f for f in facts]
    if any(f.quantity == "velocity" for f in facts):
        timed = any(f.quantity in _TIMES or f.quantity in ("t05", "t01") for f in facts)
        return facts if timed else [replace(f, quantity="shutter", unit="", of="") if f.quantity == "power" and f.said.startswith("1/") and _SHUTTER_IS.search(lower[: f.start]) else f for f in facts]
    for way, time in zip(facts, facts[1:]):
        each_second = time.said.lower() in _A_SECOND and lower[way.end : time.start] == " "
        told = way.quantity in _LENGTHS and (time.quantity in _TIMES or each_second) and time.value > 0 and way.value > 0
        if told and (each_second or _GOES.search(lower[: way.start]) and _TAKES.fullmatch(lower, way.end, time.start)):
            speed = replace(way, quantity="velocity", value=way.value / time.value, of="", cue="", end=time.end, said=lower[way.start : time.end])
            return [speed if f is way else f for f in facts if f is not time]
    return facts
