"""Times and film speeds near a reading: what the meter was set to, what it read, and what is no power and no sync."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.language.daylight import IS_AMBIENT, METERED, clause_before
from assistant.language.steps import Steps
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_JUST_BEFORE = 60
"""Letters looked through before a time."""
_THEN_APERTURE = Pattern(r"^\s*(?:s|sec|secs|second|of a second|th)?\s*(?:at|@|,|and|on|with|/)?\s*f\s*/?\s*\d", re.I)
_APERTURE_THEN = Pattern(r"\bf\s*/?\s*\d+(?:\.\d+)?\s*(?:at|,|@|and|for|\+)?\s*(?:a )?$", re.I)


_METER_AT = Pattern(r"\b(?:meter(?:ed|ing)?|(?:iso |asa |film )?dial|wheel)\b(?: \w+){0,3} (?:to|at|on|for)(?: iso| asa)?\s*$", re.I)


_NO_EV = 25
"""No light is of so high a value: "EV at a hundred" is counted at that film speed."""


def _meter_at(facts: list[Fact], text: str) -> list[Fact]:
    """"meter set to 400 says 1/30 at f/4": the speed that a reading of aperture and time is for, no rating of a film."""
    if {"aperture", "shutter"} <= {f.quantity for f in facts}:
        return [replace(f, quantity="film_speed", of="") if f.quantity == "rated" and _METER_AT.search(text[: f.start]) else f for f in facts]
    return facts


def _of_no_light(facts: list[Fact], _: str) -> list[Fact]:
    return [replace(f, quantity="film_speed", of="") if f.quantity == "exposure_value" and f.value >= _NO_EV else f for f in facts]


def _counted_at(facts: list[Fact], text: str) -> list[Fact]:
    """"ISO 400 in. What EV at ISO 100": the second speed is the one EVs are counted at."""
    speeds = [f for f in facts if f.quantity == "film_speed"]
    counted = [f for f in speeds if f.value == 100 and patterns.search(r"\b(?:ev|e v|exposure value|light value)s? (?:at|for)\s*(?:a |iso |asa )*$", text[: max(f.start, f.end - len(f.said.split()[-1]))], re.I)]
    return [f for f in facts if f not in counted] if len(speeds) > len(counted) > 0 and not any(f.quantity == "exposure_value" for f in facts) else facts


def _seconds(facts: list[Fact], text: str) -> list[Fact]:
    """"my film wants 40 seconds": no light, and no film of so small a figure."""
    return [_in_seconds(f, text) if f.quantity in ("exposure_value", "film_speed") and not f.unit else f for f in facts]


_SECONDS = Pattern(r"\s*(?:seconds?|secs?|s)\b", re.I)


def _in_seconds(fact: Fact, text: str) -> Fact:
    unit = _SECONDS.match(text, fact.end)
    return replace(fact, quantity="shutter", unit="", of="", end=unit.end()) if unit else fact


def _read_times(facts: list[Fact], text: str) -> list[Fact]:
    return [replace(f, quantity="shutter", of="") if f.quantity == "sync" and _is_read_time(f, text) else f for f in facts]


def _top_times(facts: list[Fact], text: str) -> list[Fact]:
    return [replace(f, quantity="sync", of="camera", cue="top") if f.quantity == "shutter" and (_TOP_TIME.search(text[max(0, f.start - 64) : f.start]) or _IS_THE_TOP.match(text, f.end)) else replace(f, quantity="sync", of="camera") if f.quantity == "shutter" and _SYNCS_TO.search(text[max(0, f.start - 70) : f.start]) else f for f in facts]


_IS_THE_TOP = Pattern(r"(?: ?s(?:ec\w*)?)?,? (?:(?:is|being|was) (?:(?:only )?as (?:fast|quick|short) as (?:it|she|he|the (?:shutter|camera)|my (?:shutter|camera))|(?:the|my|its|her|his) (?:camera's |shutter's )?(?:fastest|shortest|quickest|top)\b(?! film))|(?:at (?:the )?(?:most|best|fastest)|and no (?:faster|quicker|shorter))\b)", re.I)
"""Right after one: "1/500 is as fast as it goes"."""
_SYNCS_TO = Pattern(r"\bsync(?:s|hronis\w+|hroniz\w+)?\b[^.?!;,\d]{0,40}\b(?:to|up to|as far as|as high as|as fast as|down to)(?: even)? $", re.I)
"""Right before a time: "syncs at every speed up to"."""


def _slow_times(facts: list[Fact], text: str) -> list[Fact]:
    """"meters 1/8 at f/2.8": a time, not a power, beside an aperture in talk of the light that is there."""
    return [replace(f, quantity="shutter", unit="", of="") if _is_slow_time(f, text) else f for f in facts]


_TOP_TIME = Pattern(
    r"\b(?:fastest|quickest|shortest|top|max|maximum)(?: (?:shutter|speed|time|marked|setting|it (?:has|does|goes)|it's got|of mine|i have|i've got))*(?: (?:is|being|of|at))?(?: only| just| about)?[ :]*$"
    r"|\b(?:fastest|quickest|shortest) (?:(?:shutter )?(?:speed |time |exposure )?)(?:that |which )?(?:(?:the|my|this|that|her|his|our|their|old|leaf|little|big) )*(?:camera|body|shutter|lens|box|dial|it|she|he|thing|slr|tlr|rangefinder|i|we)(?:'s| will| can| would|'ll)? (?:go|goes|do|does|has|have|had|got|gets?|give|gives|offers?|manages?|reaches|reach|runs?|fires?|set|sets)(?: me| us| to)? (?:is|are|was)(?: only| just| about)? $"
    r"|\b(?:shutter|leaf|camera|body|it|dial) (?:tops out|stops|ends|maxes out|only goes|goes only|goes no (?:faster|further|higher)|(?:will not|won't|can't|cannot|doesn't|does not) go (?:any )?(?:faster|further|higher|shorter|quicker|above|past|beyond))(?: up)?(?: at| to| than)? $|\b(?:nothing|no) (?:(?:faster|quicker|shorter) than|above|past|beyond) $", re.I)
"""Right before a time: the shortest that the shutter has."""


def _is_read_time(fact: Fact, text: str) -> bool:
    """"my meter says 1/500 … only sync at 1/125": the first is no sync time."""
    return bool(METERED.search(clause_before(fact, text))) and not patterns.search(r"sync", text[max(0, fact.start - 25) : fact.end + 12], re.I)


_DRAGGED_TO = Pattern(r"\b(?:drag(?:ged|ging|s)?|shutter|slow(?:ed|ing)?)(?: the shutter| it| that| down| out| goes| is)*(?: to| at| for| from)(?: about)?\s*$", re.I)
"""Right before a time: "I drag to a quarter"."""


def _is_slow_time(fact: Fact, text: str) -> bool:
    if fact.quantity != "power":
        return False
    said = text[fact.start : fact.end].strip().lower()
    if not patterns.fullmatch(r"1/\d+|(?:an? |one )?(?:half|quarter|eighth|fifteenth|sixtieth|thirtieth)(?: second)?|\d/\d", said):
        return False
    before = text[max(0, fact.start - _JUST_BEFORE) : fact.start]
    beside = _THEN_APERTURE.match(text[fact.end :]) or _APERTURE_THEN.search(before)
    if _DRAGGED_TO.search(before):
        return not patterns.match(r"\s*power", text[fact.end :], re.I)
    if not (beside or patterns.search(r"(?:meter(?:s|ed)?|reads?|says|wants?|needs?|takes?|(?:asks?|calls?) for)(?: at)?\s*$", before, re.I)) or patterns.match(r"\s*power", text[fact.end :], re.I):
        return False
    return bool(METERED.search(clause_before(fact, text)) or IS_AMBIENT.search(clause_before(fact, text)))


_READING_THING = Pattern(r"an? meter", re.I)
_IT_DOES = Pattern(r"\s*(?:(?:which|that|when|held|aimed|pointed|turned|laid|in my hand|on the wall|at the window)\b[^.?!,;\d]{0,40}?)?\b(?:puts?|says?|said|reads?|shows?|showed|gives?|gave|makes|told|tells|finds?|found|measures?|pointed|aimed|held)\b", re.I)


def _instruments(facts: list[Fact], text: str) -> list[Fact]:
    """"a meter puts the hall at EV 6": the instrument, and no length."""
    return [replace(f, quantity="remark", unit="", of="") if f.quantity == "distance" and f.value == 1.0 and _READING_THING.fullmatch(f.said.strip()) and _IT_DOES.match(text, f.end) else f for f in facts]


_EXPOSURE = Pattern(r"\s*(?:and proper |and correct )?(?:exposures?|density|negative|scale|sun|daylight)\b", re.I)


def _full_exposure(facts: list[Fact], text: str) -> list[Fact]:
    """"that still gives a full exposure": no power of a flash."""
    return [f for f in facts if not (f.quantity == "power" and f.said.strip().lower() == "full" and _EXPOSURE.match(text, f.end))]


_OF_A_FILM = Pattern(r"\b(?:film|emulsion|stock|recip\w*|metered|sheet)\b", re.I)


def _to_the_power(fact: Fact, facts: list[Fact], text: str) -> Fact:
    """"the film goes by the power 1.3": beside a time, and with no flash that could give so much."""
    odd = fact.quantity == "power" and 1 < fact.value < 3 and fact.value != int(fact.value) and fact.said.lower().startswith("power")
    told = odd and any(f.quantity in ("shutter", "time", "duration") for f in facts) and not any(f.quantity in ("guide_number", "distance") for f in facts)
    return replace(fact, quantity="exponent", of="film", unit="", bad="") if told and _OF_A_FILM.search(text) else fact


def _exponents(facts: list[Fact], text: str) -> list[Fact]:
    return [_to_the_power(f, facts, text) if f.quantity == "power" and f.bad else f for f in facts]


_BY_ITSELF = Pattern(r"\b(?:alone|(?:by|all by|on) (?:itself|its own|themselves|their own))\b(?:(?!\b(?:flash|pop|head|gun|strobe)\b)[^.?!;\d]){0,44}$", re.I)


def _of_itself(facts: list[Fact], text: str) -> list[Fact]:
    """"the library alone would be exposed in 240 s": the time that the light which is there wants."""
    return [replace(f, of="ambient") if f.quantity == "shutter" and not f.of and f.value >= 1 and _BY_ITSELF.search(text[: f.start]) else f for f in facts]


_STOP_AND_TIME = Pattern(r"f ?/? ?(?P<stop>\d+(?:\.\d+)?) and (?P<time>(?:an? )?(?P<part>eighth|quarter|half))", re.I)
_PARTS = {"eighth": 1 / 8, "quarter": 1 / 4, "half": 1 / 2}
_OF_A_SECOND = Pattern(r"\s*(?:of )?(?:a )?sec(?:ond)?s?\b", re.I)
_OF_A_STOP = Pattern(r"\s*(?:of (?:a|one) )?stops?\b", re.I)
_IN_EV = Pattern(r"\bevs?\b|\b(?:exposure|light) value\b", re.I)


def _and_a_time(facts: list[Fact], text: str) -> list[Fact]:
    """"f4 and an eighth on ISO 100, what EV is that", "f/8 and half a second": a time, since no ring is marked in eighths, and an EV has one."""
    for fact in facts:
        told = _STOP_AND_TIME.fullmatch(fact.said.strip()) if fact.quantity == "aperture" and not _OF_A_STOP.match(text, fact.end) else None
        if told is None:
            continue
        second = _OF_A_SECOND.match(text, fact.end)
        end = second.end() if second is not None else fact.end
        rest = [f for f in facts if f is not fact and not fact.end <= f.start < end]
        by_itself = told["part"].lower() == "eighth" or told["part"].lower() == "quarter" and _IN_EV.search(text) is not None
        if second is None and (not by_itself or any(f.quantity == "shutter" for f in rest)):
            continue
        cut = fact.start + told.start("time")
        stop = replace(fact, value=float(told["stop"]), end=fact.start + told.end("stop"), said=told[0][: told.end("stop")])
        time = Fact("shutter", _PARTS[told["part"].lower()], of=fact.of, start=cut, end=end, said=text[cut:end], sentence=fact.sentence)
        return sorted([*rest, stop, time], key=lambda f: f.start)
    return facts


STEPS: Steps = (
    (_and_a_time, frozenset({"aperture"})),
    (_of_itself, frozenset({"shutter"})),
    (_exponents, frozenset({"power"})),
    (_full_exposure, frozenset({"power"})),
    (_instruments, frozenset({"distance"})),
    (_of_no_light, frozenset({"exposure_value"})), (_meter_at, frozenset({"rated"})), (_counted_at, frozenset({"film_speed"})),
    (_seconds, frozenset({"exposure_value", "film_speed"})), (_read_times, frozenset({"sync"})), (_top_times, frozenset({"shutter"})), (_slow_times, frozenset({"power"})),
)
