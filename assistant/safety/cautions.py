"""Cautions that belong beside an answer: what a question or scene says that can hurt somebody.

Two tables do the work. CAUTIONS holds one short text for each topic, most serious first.
TRIGGERS (in `triggers`) holds the words that call for it. Texts defer to local codes, licensed
people and medical advice. Sources are cited by title; the rest is marked as common practice.
"""

from __future__ import annotations

import re
from types import MappingProxyType

from assistant.patterns import Pattern, Patterns
from assistant.records import record
from assistant.safety.triggers import TRIGGERS

COMMON = "common practice, no source"
CLOSE_TO_PEOPLE_M = 0.3048
"""One foot. A flash nearer than this to a person calls for the eyes caution (common practice, no source)."""


@record
class Caution:
    """One caution: its topic, one or two plain sentences, and where they come from."""

    topic: str
    text: str
    source: str


CAUTIONS: tuple[Caution, ...] = (
    Caution(
        "water",
        "Water and flash power can kill: keep mains gear and anything with cables out of the wet, use battery units "
        "under cover, and stop if anything gets wet inside. Mains power near water is for a qualified electrician, "
        "by the local code.",
        "Scope of IEC 60491 (flash apparatus not normally exposed to splashes); " + COMMON,
    ),
    Caution(
        "high_voltage",
        "Do not open a flash: its capacitor can hold a deadly charge long after it is switched off. "
        "Leave it to a qualified repairer.",
        "Capacitors: real-world scenarios (a flash capacitor at 300 V holds 45 J); " + COMMON,
    ),
    Caution(
        "mains",
        "On mains power use sound, earthed leads and an outlet protected against earth leakage, keep cables out of "
        "people's way, and follow the local electrical code.",
        "Electrical safety, controlling hazards, NIOSH; " + COMMON,
    ),
    Caution(
        "fire",
        "A modelling lamp or flash tube can set fire to gel, cloth or paper that touches it: keep an air gap, use only "
        "materials made for lamps, and switch off at the first smell of burning.",
        COMMON,
    ),
    Caution(
        "battery",
        "Never charge or use a battery that is swollen, hot, leaking or damaged: put it away from anything that burns "
        "and take it to a battery recycling point. On a flight, spare lithium batteries go in the cabin with their "
        "contacts covered; check with the airline.",
        "Pack safe: spare lithium batteries, US Federal Aviation Administration; " + COMMON,
    ),
    Caution(
        "epilepsy",
        "Repeated flashes can set off a seizure in a person with photosensitive epilepsy: keep to three a second or "
        "fewer, and warn everybody who can see them. Medical questions are for that person and their doctor.",
        "WCAG 2.x, success criterion 2.3.1, Three flashes or below threshold; Photosensitive epilepsy, Epilepsy Society",
    ),
    Caution(
        "stand",
        "A falling light can injure: spread and weight the stand, tie down what catches the wind, put a safety wire on "
        "anything overhead, and keep people, above all children, clear.",
        "Film set lighting safety (restating WorkSafeBC, 2001); Set safety, Ithaca College",
    ),
    Caution(
        "bulbs",
        "Flash bulbs can burst and are hot enough to burn: use a shield over the reflector, keep away from faces and "
        "anything that burns, do not use a cracked bulb, and let it cool before you take it out.",
        COMMON,
    ),
    Caution(
        "heat",
        "Flash heads and modelling lamps get hot enough to burn skin and melt gel: leave an air gap, never cover the "
        "vents, and let the head cool after a run of full-power flashes.",
        COMMON,
    ),
    Caution(
        "infant",
        "With a baby, keep the flash off its face at close range and soften or bounce it. An ordinary flash is not "
        "expected to do harm, but an eye specialist advises against very large flashes in the first month: "
        "ask the baby's doctor if in doubt.",
        "Reply of the American Optometric Association on flash and babies; "
        "Should you use the camera flash for your baby's pictures (interview)",
    ),
    Caution(
        "eyes",
        "Do not fire a flash close to eyes: at less than about a foot (30 cm) turn it away, bounce it or lower the "
        "power, and let nobody stare into the tube.",
        COMMON,
    ),
    Caution(
        "sync_voltage",
        "An old flash can put hundreds of volts on the sync contact and ruin a modern camera: have it measured, stay "
        "under the limit in the camera's manual, or trigger it by radio or an isolating adapter.",
        "A safe flash trigger for a digital camera, Silicon Chip (one old pack read 103 V to 224 V); " + COMMON,
    ),
)

TOPICS: tuple[str, ...] = tuple(one.topic for one in CAUTIONS)
"""The twelve topics, most serious first."""

_BY_TOPIC = MappingProxyType({one.topic: one for one in CAUTIONS})


def caution(topic: str) -> Caution:
    """The caution of one topic. Raises KeyError for a topic that is not among TOPICS.

    >>> caution("water").topic
    'water'
    """
    return _BY_TOPIC[topic]


_TRIGGERS = Patterns(Pattern(rf"\b(?:{trigger.pattern})", re.IGNORECASE) for trigger in TRIGGERS)


def plain(text: str) -> str:
    """One line of lower-case text with plain apostrophes and single spaces.

    >>> plain("It\u2019s  raining")
    "it's raining"
    """
    return " ".join(text.replace("\u2019", "'").replace("\u2018", "'").lower().split())


def topics_in(text: str) -> frozenset[str]:
    """The hazard topics whose trigger words stand in the text.

    >>> sorted(topics_in("gusty, and the floor is wet"))
    ['stand', 'water']
    """
    found: set[str] = set()
    said, place = plain(text), 0
    ahead = {number: match for number in _TRIGGERS.to_try(said) if (match := _TRIGGERS[number].search(said))}
    while ahead:  # one after the other, and of those that begin at one place the first of the table
        first = min(ahead, key=lambda number: (ahead[number].start(), number))
        found.update(TRIGGERS[first].topics)
        place = ahead[first].end()
        ahead = {number: later for number, match in ahead.items() if (later := match if match.start() >= place else _TRIGGERS[number].search(said, place))}
    return frozenset(found)


def find_cautions(text: str, *, distance_m: float | None = None, people: bool = True) -> tuple[Caution, ...]:
    """The cautions a question calls for, most serious first.

    `distance_m` is the flash-to-subject distance in metres where known; with `people` in the picture
    anything under one foot calls for the eyes caution. Nothing found gives an empty tuple.

    >>> [one.topic for one in find_cautions("pouring rain, 8 feet")]
    ['water']
    >>> [one.topic for one in find_cautions("a portrait", distance_m=0.25)]
    ['eyes']
    """
    found = set(topics_in(text))
    if people and distance_m is not None and 0 < distance_m < CLOSE_TO_PEOPLE_M - 1e-6:
        found.add("eyes")
    return tuple(one for one in CAUTIONS if one.topic in found)
