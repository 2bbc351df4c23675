"""The film speed that a reading of the light is for: a meter may be set to another than is in the camera."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark

OF_THE_READING = "reading"
"""How the one speed is marked that an EV is told for: the film that is loaded may be another."""
_END = Pattern(r"[.!?;](?=\s|$)")
_CLOSES = Pattern(r"(?: (?:outside|inside|here|there|outdoors|indoors|in (?:the|here)(?: \w+)?))?[.!?;](?=\s|$)", re.I)
"""After the speed that an EV is told for: the sentence ends, and the film that is loaded comes in another."""
_OTHER_FILM = Pattern(r"\bbut\b|\bwhile\b|\bthough\b|\binstead\b|\bthere'?s\b|\bi'?(?:ve|m)\b|\bload\w*\b|\bin (?:this|the|my) (?:\w+ )?(?:back|camera|body|magazine|holder)\b|\bin it\b", re.I)
"""Said of the film that is in the camera, where the meter was set to another."""


_METER_SET = Pattern(r"\b(?:digital\w*|(?:light |hand |spot )?meter|phone|telephone|app)\b[^.?!;\d]{0,24}\bset (?:to|at|on|for)(?: iso| asa)? ?$", re.I)
"""Before a speed: that of what the light was read with, and no rating of the film."""
_LOADED = Pattern(r",? (?:with|on) (?:an? )?(?:iso |asa )?\d+(?: iso| asa)?[ -](?:speed )?(?:film|slide|negative|neg|stock|roll)\b", re.I)
"""After a reading: "EV 14 with ISO 50 film" is what is in the camera, and no speed that the light was read for."""
_FOR_ANOTHER = Pattern(r"\s*(?:film |stock )?(?:to|for|down to|up to)\s*(?:iso |asa |a )?", re.I)
_METER_ON = Pattern(r"\bmeter\b(?:'s| is| was| stands| still)*(?: (?:set|dialled|dialed|left|turned|switched))?(?: (?:to|at|for|on|in))*(?: (?:iso|asa))?\s*$|^\W*(?:set|dialled|dialed|left) (?:to|at|for|on)(?: iso| asa)?\s*$", re.I)
"""Right before the speed that a meter is set to."""
_THE_METER = Pattern(r"\W*(?:and |then )?(?:the|my|a|his|her) (?:light |hand |spot )?meter (?:shows|says|reads|gives|tells me|read|said|showed|gave)\b", re.I)
"""Right after it: "at ISO 200 the meter shows" EV 11."""


_AGAINST = Pattern(r"\b(?:than|same (?:exposure|light|brightness) as|as (?:bright|dark|much light|light) as|equals?|equivalent to)\b", re.I)
"""Between two settings that are held against each other: each keeps its own film."""


_ON_ITS_DIAL = Pattern(r" (?:(?:set|left|dialled|dialed|punched|keyed) )?(?:in )?on (?:the|my|its) (?:light |hand )?(?:meter|dial)\b| (?:dialled|dialed|punched|keyed) in(?:to (?:it|the meter))?\b(?! on (?:the|my) (?:pack|head|flash|camera|body))", re.I)
"""Right after a speed: "with 400 dialled in", "with 400 on the meter"."""


def _stands_on_the_meter(fact: Fact, facts: list[Fact], light: Fact | None, text: str) -> bool:
    """Whether a figure is the speed that the light was read for, and no rating of the film."""
    if fact.quantity == "number":
        return light is not None and not fact.bad and fact.value >= _SLOWEST and is_film_speed_mark(fact.value) and _ON_ITS_DIAL.match(text, fact.end) is not None
    if fact.quantity != "rated" or not any(f.quantity == "film_speed" for f in facts):
        return False
    return _METER_SET.search(text[: fact.start]) is not None or light is not None and _ON_ITS_DIAL.match(text, fact.end) is not None


_SLOWEST = 25
"""Of a film speed that is told by its bare figure."""


def conditions(facts: list[Fact], text: str) -> list[Fact]:
    """"EV 9 at ISO 100 … 400 film": the first speed is that of the reading."""
    light = next((f for f in facts if f.quantity == "exposure_value"), None) or next((f for f in facts if f.of == "ambient" and f.quantity == "aperture"), None)
    facts = [replace(f, quantity="film_speed", of="", cue="") if _stands_on_the_meter(f, facts, light, text) else f for f in facts]
    speeds = sorted((f for f in facts if f.quantity == "film_speed"), key=lambda f: f.start)
    if light is None or not speeds or len(speeds) == 2 and _AGAINST.search(text[speeds[0].end : speeds[1].start]):
        return facts
    near = [s for s in speeds if s.start >= light.end and not _LOADED.match(text[light.end :]) and patterns.fullmatch(r"[\s,(/]*(?:at|for|on|@|with)?[\s(]*", text[light.end : s.start], re.I) and not (light.quantity == "exposure_value" and "," in text[light.end : s.start] and not (s is speeds[0] and len(speeds) == 2 and _CLOSES.match(text, s.end)))]
    before = [s for s in speeds if s.end <= light.start and not _END.search(text[s.end : light.start])]
    near = near or [s for s in speeds if s.start > light.start and not _END.search(text[light.end : s.start]) and light.quantity == "aperture" and not (before and _OTHER_FILM.search(text[light.end : s.end + 24]))]
    if not near and len(speeds) == 2 and light.quantity == "aperture" and (speeds[0].said == speeds[1].said or _FOR_ANOTHER.fullmatch(text[speeds[0].end : speeds[1].start])):
        near = speeds[:1]  # "I drop from ISO 400 to 100": the light was read for the first
    if not near and light.quantity == "aperture" and before and len(speeds) == 2:
        near = before[:1]  # "the meter was on 400 and said f/5.6, but there's 800 in the back"
    if not near and light.quantity == "exposure_value" and before and (_METER_ON.search(text[: before[-1].start]) or _THE_METER.match(text, before[-1].end)):
        near = before[-1:]  # "the meter is set to ISO 400 and shows EV 12"
    if not near and light.quantity == "aperture" and len(speeds) == 1:
        near = speeds
    if not near:
        return facts
    out = [replace(f, at_iso=near[0].value) if f is light else f for f in facts]
    if len(speeds) > 1:
        return [f for f in out if f is not near[0]]
    return [replace(f, cue=OF_THE_READING) if f is near[0] and light.quantity == "exposure_value" else f for f in out]
