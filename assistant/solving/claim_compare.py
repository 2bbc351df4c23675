"""Two marks of one scale compared: "f/16 lets in more light than f/11", "1/60 is darker than 1/125"."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.records import record
from assistant.scales import aperture_difference_stops, shutter_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_rules import EXACT, Verdict
from assistant.solving.claim_words import factor_said, factor_start, plain

_SHARES = {"full": 1.0, "half": 0.5, "quarter": 0.25, "a quarter": 0.25, "an eighth": 0.125, "eighth": 0.125}
_MORE = r"\b(?:more|extra|bright\w*|lighter|wider|(?:bigger|larger) (?:hole|opening|aperture|stop))\b"
_LESS = r"\b(?:less|dark\w*|dimmer|narrower|smaller (?:hole|opening|aperture|stop))\b"


@record
class _Scale:
    """Marks of one scale: how they are written, their light against one another, words of its own for more and less."""

    mark: str
    stops: Callable[[str, str], float]
    more: str
    less: str
    words: tuple[str, str] = ("gives {} more light than", "gives {} less light than")


def _share(word: str) -> float:
    return _SHARES[word] if word in _SHARES else 1 / float(word[2:])


SCALES = (
    _Scale(r"f ?/? ?(\d+(?:\.\d+)?)\b(?! stops)", lambda a, b: aperture_difference_stops(float(b), float(a)), r"\bopen(?:er)?\b", r"\bclosed\b"),
    _Scale(r"(?<![\d/])1/(\d+)(?: ?s(?:ec\w*)?)?\b(?! power)", lambda a, b: shutter_difference_stops(1 / float(b), 1 / float(a)), r"\b(?:slower|longer)\b", r"\b(?:faster|shorter|quicker)\b"),
    _Scale(r"\b(?:iso|asa) ?(\d+)\b", lambda a, b: math.log2(float(a) / float(b)), r"\b(?:faster|more sensitive)\b", r"\b(?:slower|less sensitive)\b", ("is {} faster than", "is {} slower than")),
    _Scale(r"\b(full|half|quarter|a quarter|an eighth|eighth|1/\d+) power\b", lambda a, b: math.log2(_share(a) / _share(b)), r"\b(?:stronger|higher)\b", r"\b(?:weaker|lower)\b"),
)
_NOT = Pattern(r"\b(?:not|never)\b|n't\b(?! (?:it|that|they)\b)")
_THEN = Pattern(rf"\b(?:so|and|therefore|thus)\b[^.;?]{{0,40}}?(?:{_MORE}|{_LESS})")
"""What is concluded from it: "so it gets more light"."""
_FLASH_ALONE = Pattern(r"^(?!.*\b(?:ambient|background|room|daylight|sun\w*|window|bulbs?|hss|high[- ]speed|duration|pulse|pop|t ?0?\.\d)\b).*\bflash\b")
"""The flash is spoken of, and nothing that a shutter time acts on."""
_NEEDS = Pattern(r"\b(?:needs?|requires?|wants?|demands?|calls? for|takes)\b")
"""What needs more light gives less."""
_SIZED = Pattern(r"\b(?:stops?|twice|double|half|times|third|quarter (?:of|as)|percent)\b|%")


_OF_ANOTHER_MATTER = Pattern(r"\b(?:depth of field|dof|grain\w*|contrast\w*|soft\w*|hard\w*|sharp\w*|t ?0?\.[15]|durations?|pulses?|bursts?)\b", re.I)


def judge_comparison(text: str) -> Verdict | None:
    """Whether one mark gives more (or less) light than the other, as is said; None where no two marks are compared.

    >>> judge_comparison("f/16 lets in more light than f/11").holds, judge_comparison("f/16 is darker than f/11").holds
    (False, True)
    """
    if _OF_ANOTHER_MATTER.search(text):
        return None
    said = plain(text)
    for scale in SCALES:
        found = patterns.search(rf"(?P<one>{scale.mark})(?P<how>[^.;?\d]{{4,60}}?)\bthan\b[^.;?\d]{{0,24}}?(?P<two>{scale.mark})", said)
        if found is None or _SIZED.search(found["how"].replace("half power", "")):
            continue
        more, less = patterns.search(_own(_MORE, scale.more, scale.less), found["how"]), patterns.search(_own(_LESS, scale.less, scale.more), found["how"])
        if (more is None) == (less is None):
            continue
        if scale is SCALES[1] and _FLASH_ALONE.search(said) and patterns.search(f"{_MORE}|{_LESS}", found["how"]):
            return Verdict(_NOT.search(found["how"]) is not None, 0.0, "Up to sync speed the shutter time changes the ambient light alone: the flash is over while the shutter is open.", "", (), found.start())
        way = 1 if more else -1
        return _verdict(found, scale, -way if _NEEDS.search(found["how"]) else way)
    return None


def _own(common: str, own: str, other: str) -> str:
    """The scale's own words ("faster" of a shutter is less light, of a film more)."""
    return f"{own}|{common}" if other else common


def _verdict(found: re.Match[str], scale: _Scale, way: int) -> Verdict:
    light = scale.stops(found.group(2), found.group(5))
    holds = light * way > 0
    if _NOT.search(found["how"]):
        holds = not holds
    then = _THEN.search(found.string, found.end())
    if then:
        holds = holds and light * (1 if patterns.search(_MORE, then.group()) else -1) > 0
    one, two = found["one"].strip(), found["two"].strip()
    way_said = scale.words[0 if light > 0 else 1] if light else "gives the same light as"
    right = f"{_named(one)} {way_said.format(speak_stops(abs(light)))} {_named(two).lower() if two.endswith('power') else _named(two)}."
    return Verdict(holds, 0.0, right, "", (marks.stops(light),) if light else (), found.start())


def _named(mark: str) -> str:
    return mark.replace("iso", "ISO").replace("asa", "ASA") if not mark[0].isalpha() or mark[0] in "fia" else mark.capitalize()


_GUIDE = Pattern(r"\b(?:guide ?(?:numbers?|nos?)?|gns?)\b(?! ?(?:of )?\d)")


def judge_guides(text: str) -> Verdict | None:
    """"The guide number at ISO 400 is four times that at ISO 100": it goes with the root of the light.

    >>> judge_guides("guide number at ISO 400 is twice that at ISO 100").holds, judge_guides("guide number at half power is half that at full power").holds
    (True, False)
    """
    said = plain(text)
    for scale in SCALES[2:]:
        found = patterns.search(rf"(?P<one>{scale.mark})(?P<how>[^.;?]{{4,80}}?)(?P<two>{scale.mark})", said)
        claimed = factor_said(found["how"]) if found else None
        if found is None or claimed is None or _GUIDE.search(said[: found.start("two")]) is None:
            continue
        light = scale.stops(found.group(2), found.group(5))
        right = 2.0 ** (light / 2)
        off = abs(2 * math.log2(claimed / right))
        bound = bound_of(found["how"][: factor_start(found["how"])])[0]
        return Verdict(within(bound, 2 * math.log2(right / claimed), EXACT), 0.0 if bound else off, f"The guide number is then multiplied by {right:.3g}.", "It goes with the square root of the light.", (Quantity("factor", right, "x"),), found.start())
    return None


_FASTER = Pattern(r"\b(?:faster|slower|quicker|(?:more|less|as) sensitive|as fast|as slow|speedier)\b")
"""Two speeds weighed, and not said to be one."""
_DEGREES = Pattern(r"\b(?:iso|asa) ?(?P<iso>\d+)\b[^.;?]{0,30}?\b(?P<din>\d+) ?(?:din\b|°)|\b(?P<din2>\d+) ?(?:din\b|°)[^.;?]{0,30}?\b(?:iso|asa) ?(?P<iso2>\d+)\b")


def judge_degrees(text: str) -> Verdict | None:
    """"ISO 100 is 21 DIN": the arithmetic speed against the degrees, 1 + 10 log10 of it (ISO 5800, from memory).

    >>> judge_degrees("is ISO 100 21 DIN?").holds, judge_degrees("is ISO 400 24 DIN?").holds
    (True, False)
    """
    found = _DEGREES.search(plain(text))
    if found is None or _FASTER.search(plain(text)) or float(found["iso"] or found["iso2"]) <= 0:
        return None
    speed, degrees = float(found["iso"] or found["iso2"]), float(found["din"] or found["din2"])
    right = round(1 + 10 * math.log10(speed))
    return Verdict(right == degrees, 0.0, f"ISO {speed:g} is {right} DIN.", "Three degrees more is twice the speed, one stop.", (Quantity("film_speed", float(right), "DIN"), *(() if right == degrees else (Quantity("film_speed", float(f"{10 ** ((degrees - 1) / 10):.2g}"), "ISO"),))), found.start())


_DIN_STEP = Pattern(
    r"\b(?P<din>\d+|an?|one|two|three|four|five|six|nine|ten) (?:din|degrees din|degrees)\b[^.?!]{0,16}?\b(?:more|up|higher|faster|less|lower|down|apart|steps?)\b[^.?!]{0,24}?\b(?:(?P<stops>half an?|an?|one|two|three|\d+) (?:full |whole )?stops?\b|(?P<times>twice|double|doubles|(?:two|three|four|eight) times)\b)"
    r"|\b(?:din)\b[^.?!]{0,30}?\b(?:up|down|by|rises?|adds?)\b[^.?!]{0,8}?\b(?P<din2>\d+|one|two|three|four|five|six|ten)\b[^.?!]{0,12}?\b(?:for|with|per|a) (?:each|every|an?|one)? ?(?:full |whole )?(?P<stops2>stop)\b"
)
_DIN_IS = Pattern(
    r"\b(?P<din>\d+|an?|one|two|three|four|five|six|nine|ten) (?:degrees? (?:(?:on|of|in) )?(?:the )?din(?: scale)?|din degrees?)\b,?(?:(?! (?:film|stock|faster|slower|rated|than)\b) (?!\d|iso\b|film\b)[a-z]+,?){0,6}? "
    r"(?:(?P<stops>half an?|a third(?: of an?)?|two thirds(?: of an?)?|an?|one|two|three|four|\d+) (?:full |whole )?stops?\b(?! (?:faster|slower|quicker))|(?P<times>twice|double|doubles|(?:two|three|four|eight) times)\b(?! (?:as fast )?(?:as|than) (?:iso|\d)))"
)
"""Degrees of the scale by themselves, and what they are said to come to: "is a step of three degrees DIN one stop?"."""
_TIMES = {"twice": 2.0, "double": 2.0, "doubles": 2.0, "two": 2.0, "three": 3.0, "four": 4.0, "eight": 8.0}
_SPELLED = {"a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "nine": 9.0, "ten": 10.0, "half a": 0.5, "half an": 0.5, "a third": 1 / 3, "a third of a": 1 / 3, "two thirds": 2 / 3, "two thirds of a": 2 / 3}


def judge_degree_steps(text: str) -> Verdict | None:
    """"three DIN more is one stop faster": the degrees go by tenths of a logarithm, three to a stop.

    >>> judge_degree_steps("three DIN more is one stop faster").holds, judge_degree_steps("the DIN number goes up by one for each full stop").holds
    (True, False)
    >>> judge_degree_steps("is a step of three degrees on the DIN scale the same as one stop?").holds
    True
    """
    said = plain(text)
    step = _DIN_STEP.search(said)
    found = step or _DIN_IS.search(said)
    if found is None:
        return None
    din, stops = found["din"] or (step["din2"] if step else ""), found["stops"] or "one"
    degrees, claimed = (_SPELLED[w] if w in _SPELLED else float(w) for w in (din, stops))
    claimed = math.log2(_TIMES[found["times"].split()[0]]) if found["times"] else claimed
    right = degrees / 3
    off = abs(right - claimed)
    return Verdict(off < 0.1, 0.0, "Three degrees DIN are one stop.", "The degrees are logarithms: ten times the speed is ten more.", (marks.stops(right),), found.start())
