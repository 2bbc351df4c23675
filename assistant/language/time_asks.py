"""What a question about pops, pulses and energy asks: "eight times" and "how often" are counts, "what is it at half?" is a time."""

from __future__ import annotations

from collections.abc import Sequence

from assistant import patterns
from assistant.language.hearing import evenly
from assistant.language.items import Item
from assistant.language.time_words import COMES_BACK, ENERGY, RATE
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, tally

_MOVES = Pattern(r"(?:how (?:far|much|big|large|long|many (?:mm|cm|millimet(?:re|er)s|centimet(?:re|er)s|inches|met(?:re|er)s|feet))|what)\b[^?]{0,60}\b(?:move|moves|moved|travel|travels|blur|blurs|smear|smears|motion|movement|shift|streak)\b|\b(?:blur|movement|motion)\b[^.?]{0,50}\?")
_SHORT = Pattern(r"how (?:short|brief|quick|fast)\b[^?]{0,40}\b(?:flash|pulse|duration|burst|light|be|need)|(?:what|which)[^?.]{0,25}\bduration\b(?!s? (?:is|of)\b[^?]{0,10}\d)|(?:longest|maximum|max|shortest) (?:flash )?(?:duration|flash|pulse|burst)")
_WOULD_DO = Pattern(r"\b(?:will|would|does|can|could) (?:a |an |the )?(?:flash of )?(?:1/\d+|[a-z]+th)(?: of a)?(?: s| sec| second)?(?: flash| pulse)? (?:do|suffice|be enough|be short enough|hold|stop)\b")
_FREEZES = Pattern(r"^\W*(?:\w+[,:]? ){0,12}?(?:will|does|do|would|can|could|is|am i)\b[^?]*\b(?:freeze|frozen|short enough|fast enough|brief enough|stop the (?:motion|action)|sharp enough)")
_YES_NO = Pattern(r"(?:^|[.?!;,:] *)(?:so |and |is that )?(?:sharp|short|brief|fast|quick)(?: enough)?(?: then)? ?\?|(?:^|[.?!;,:] *)(?:so |and )?(?:will|does|do|is|would|can) [^?.]*(?:\?|$)")
_RECYCLE = Pattern(r"recycl|recharg|ready again|" + COMES_BACK.pattern + r"|how long (?:between|from one) (?:pops?|flashes|shots)|how long (?:is|was|must|should|would|will|can|are) (?:be )?(?:each|the|one|every|my) (?:wait|gap|pause|interval|recharge)")
_WAITING = frozenset({"interval", "shutter", "time"})
_BETWEEN_POPS = frozenset({"interval", "shutter", "time", "power", "two_power", "remark", "place"})
_TO_WAIT = Pattern(r"\bhow long\b[^.?!]{0,24}\b(?:wait|pause|rest|take|need|gap)\b|\bhow long (?:at|on|for|after)\b")
_SERIES = Pattern(r"how long\b|total (?:time|seconds)|(?:what|how much) time|how many (?:seconds|minutes)|\b(?:time|long) from (?:the )?first|\bfirst (?:\w+ )?(?:to|till|until) (?:the )?(?:last|second|third|[a-z]+th|\d+th)\b")
_POPS = Pattern(r"how (?:many|often)\b(?: (?!stops?\b|f-|seconds|minutes|joules|watt|ws\b|metres|meters|feet|degrees)[a-z'-]+){0,4}? ?(?:pops?|flashes|flash|bursts?|times|hits?|firings?|shots?|frames?|images|exposures|positions|ghosts|do i (?:get|need|have)|can i|will i|at\b|on\b)|number of (?:pops|flashes|bursts|shots)|how often|(?:pops?|flashes|bursts|discharges) (?:needed|required|necessary)\b|(?:count|estimate|give|work out|find) the (?:pops|flashes|bursts|discharges)\b|\b(?:pops|flashes|bursts|discharges)\s*\?")
_ADDS = Pattern(r"\b(?:add|adds|added|adding|amount|amounts|come|comes|worth|make|makes|total|totals|build|builds) ?(?:up)? ?(?:to|for)?\b[^.]{0,20}\?|what(?:'s|s| is)? (?:that|it|the) (?:f-?stop|aperture)|equivalent")


_ASKED_OF = frozenset({"count", "velocity", "duration", "t01", "t05", "recycle", "energy", "voltage", "capacitance", "frequency", "magnification"})
_ASKING_CUES = frozenset({"t01", "t05", "capacitor", "battery"})


def time_asks(asks: Sequence[Ask], facts: Sequence[Fact], items: Sequence[Item], text: str) -> list[Ask]:
    """The asks with those about movement, duration, recycling, energy and pops."""
    cues = {i.word for i in items if i.kind == "cue"}
    if _ASKED_OF.isdisjoint([f.quantity for f in facts]) and cues.isdisjoint(_ASKING_CUES) and not _POPS.may_match(text) and not _RECYCLE.may_match(text) and not _TO_WAIT.may_match(text):
        return list(asks)
    lower = evenly(text)
    counted = tally(facts)
    kinds = set(counted) | {f"two_{q}" for q, n in counted.items() if n > 1}
    rules = (_as_one, _another_place, _image_moved, _images, _often, _pulse, _movement, _recycling, _series, _compared, _stored, _supplied, _fired, _added, _for_another_aperture)
    named = list(asks)
    for rule in rules:  # a plain loop: asked of every question of a time
        found = rule(lower, kinds, cues, asks)
        if found is not None:
            named = found
            break
    timed = "count" in kinds and len(named) > 1 and any(a.quantity == "duration" for a in named) and _HOW_LONG.match(lower) and " how many" not in lower
    return [a for a in named if a.quantity != "count"] if timed else named  # "how long for five half-power pops?": their number is told


_HOW_LONG = Pattern(r"\W*(?:(?:and|so|then|ok) )*how long\b")
_POPS_ELSEWHERE = Pattern(r"\bpops?\b[^?]*(?:[.,;:!?]|\band\b|\bbut\b)\s*(?:and |so |but |now )?(?:what )?(?:if|when|were) i (?:(?:have to|had to|must|can only|only|then|now) )?(?:back|step|move|go|walk|stand|come|stay|get|open|close|stop|use|set|work|shoot)\b[^?.]{0,40}\d[^?.]{0,12}\??\W*$")


_ONE_POWER = Pattern(r"\b(?:what|which|equals?|equivalent|same)\b[^.?]{0,40}\b(?:single|one|1) (?:pop|flash|burst|shot|go|hit)\b|\b(?:single|one|1) (?:pop|flash|burst|shot|go|hit)\b[^.?]{0,30}\b(?:same|equals?|equivalent|match\w*|as much)\b")


def _as_one(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"two pops at an eighth: what one pop gives the same?": its power."""
    plain = {"count", "power"} <= kinds and not kinds & {"two_power", "aperture", "guide_number", "distance", "energy", "stops", "relation"} and not any(a.quantity in ("stops", "count", "power") for a in asks)
    return [Ask("power")] if plain and "battery" not in cues and _ONE_POWER.search(lower) and not patterns.search(r"\bstops?\b|\bhow many\b", lower) else None


_HOW_MANY_RIGHT = Pattern(r"\bhow many (?:(?:would|should|do|did|does|will|must|might|ought) )(?:have |i |it |we |the |to |frame |take |need |be )*\w*")
""""twenty pops were a stop too many: how many would have been right?"."""


def _another_place(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"at 15 feet five pops are right. At 30?", "six did it at 12 feet. if I back up to 17?", "ten pops at f/16, what if I open to f/8"."""
    if not asks and "count" in kinds and len(kinds & {"two_distance", "two_aperture"}) == 1 and not kinds & {"guide_number", "velocity", "energy", "stops", "relation", "power"} and _POPS_ELSEWHERE.search(lower):
        return [Ask("count", "", "pops")]
    if not asks and "count" in kinds and kinds & {"stops", "relation"} and kinds <= {"count", "stops", "relation", "aperture", "remark", "frames"} and _HOW_MANY_RIGHT.search(lower):
        return [Ask("count", "", "pops")]
    plain = not asks and {"count", "two_distance"} <= kinds and not kinds & {"guide_number", "aperture", "velocity"}
    return [Ask("count", "", "pops")] if plain and patterns.search(r"\bpops?\b[^?]*\b(?:at|from|for)\s+[\d.]+[^?,.]{0,10}\?", lower) else None


_ON_FILM = Pattern(r"\b(?:on|onto|at|across) (?:the |my |its )?(?:film|negative|neg|plate|sensor)\b|\bimage\b")


def _image_moved(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"at 1:10 it moves 5 mm: how far does its image move on the film?"."""
    small = kinds & {"distance", "blur", "move"} and not kinds & {"velocity", "duration", "t05", "t01", "shutter", "time", "aperture", "guide_number", "focal_length", "two_distance", "extension"}
    if "magnification" not in kinds or not small or not _MOVES.search(lower) or not _ON_FILM.search(lower):
        return None
    return [Ask("distance", "image", next((a.unit for a in asks if a.unit), ""))]


_IMAGES_APART = Pattern(r"\b(?:apart|spac\w+|separat\w+|gap|distance|how far|between|next|differ|shift|advance)\b")


def _images(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"20 flashes a second on a hand at 3 m/s: how far apart are its images", "how many a second for images so far apart"."""
    if "velocity" not in kinds or kinds & {"guide_number", "aperture", "duration", "t05", "t01"}:
        return None
    if "frequency" in kinds or "interval" in kinds and "image" in lower:
        wants = not any(a.quantity in ("stops", "count", "duration", "shutter", "freeze") for a in asks) and _IMAGES_APART.search(lower)
        return [Ask("distance", "spacing", next((a.unit for a in asks if a.unit), ""))] if wants else None
    lengths = kinds & {"blur", "gap", "distance", "move", "max_distance"}
    return [Ask("count", "a second", "flashes")] if lengths and not kinds & {"shutter", "time"} and RATE.search(lower) else None


def _often(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"eight flashes in two seconds, what frequency?"."""
    timed = kinds & {"count", "times"} and kinds & {"shutter", "time", "interval"} and not kinds & {"frequency", "guide_number", "aperture", "recycle"}
    return [Ask("count", "a second", "flashes")] if timed and RATE.search(lower) else None


def _pulse(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"what is the t0.1", one of the two given."""
    if not cues & {"t01", "t05"} or kinds & {"velocity", "guide_number"}:
        return None
    if "t05" in kinds and "t01" not in kinds:
        return [Ask("duration", "t0.1", "s")]
    if "t01" in kinds and "t05" not in kinds:
        return [Ask("duration", "t0.5", "s")]
    return None


_GHOST = Pattern(r"\bhow (?:long|big|large|wide|broad|far|many \w+)\b[^.?!]{0,30}\b(?:ghost|smear|streak|blur|trail|track|tail)\b|\b(?:length|width|size) of (?:the |his |her |its |that |my )?(?:ghost|smear|streak|blur|trail|track|tail)\b")


def _movement(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if "velocity" not in kinds:
        if kinds & {"duration", "t05", "t01"} and not kinds & {"guide_number", "aperture"} and _MOVES.search(lower) and patterns.search(r"\b(?:move|travel|blur|smear)", lower):
            return [Ask("distance", "movement")]
        return None
    timed = kinds & {"duration", "t05", "t01", "shutter", "time"}
    if timed and (_FREEZES.search(lower) or "blur" in kinds and _WOULD_DO.search(lower) or "blur" in kinds and _YES_NO.search(lower)):
        return [Ask("freeze")]
    if "blur" not in kinds and _GHOST.search(lower):
        return [Ask("distance", "movement", next((a.unit for a in asks if a.unit), ""))]
    wants_shutter = any(a.quantity == "shutter" for a in asks)
    if wants_shutter and not timed:
        return [Ask("shutter", "freeze")]
    if "blur" in kinds and not timed:
        return [Ask("duration", "freeze")]
    if (_SHORT.search(lower) or any(a.quantity == "duration" for a in asks)) and not (timed - {"shutter"} and "blur" not in kinds):
        return [Ask("duration", "freeze")]
    if _MOVES.search(lower) or timed:  # with no time told, it is the time that lacks
        return [Ask("distance", "movement", next((a.unit for a in asks if a.unit), ""))]
    return None


_CLOCKS = frozenset({"recycle", "shutter", "time", "duration", "interval"})
_SHARE_BACK = Pattern(r"\b(?:half|third|quarter|fifth|eighth|tenth|sixteenth|all|\d+ ?%|percent|per cent|1/\d+)(?: of (?:it|that|the light|what hits it))?(?: only| just| still)? (?:came|comes?|coming|gets?|got|is (?:sent|thrown)|was (?:sent|thrown)) back\b")
"""What a wall sends back of the light, where no time is told: nothing is charged anew."""

_FILM_BACK = Pattern(r"\b(?:slides?|chromes?|transparenc(?:y|ies)|trann(?:y|ies)|negs?|negatives?|rolls?|films?|frames?|sheets?|prints?|pictures?|shots?)\b[^.?!;]{0,60}\b(?:comes?|coming|came) back\b")
"""From the laboratory, where no time is told."""


def _recycling(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    waits = "two_power" in kinds and len(kinds & _WAITING) == 1 and kinds <= _BETWEEN_POPS and "two_shutter" not in kinds and _TO_WAIT.search(lower) is not None  # "at a quarter I wait 2 s; how long at full"
    lower = lower if kinds & _CLOCKS else _FILM_BACK.sub(" ", _SHARE_BACK.sub(" ", lower))
    if not (_RECYCLE.search(lower) or "recycle" in kinds or waits) or kinds & {"guide_number", "aperture"}:
        return None
    if any(a.quantity in ("count", "power", "stops", "energy") for a in asks) and not _SERIES.search(lower):
        return None
    if "count" in kinds and _SERIES.search(lower) and kinds & {"recycle", "interval"}:
        return [Ask("duration", "series")]
    if "?" in lower or asks or patterns.search(r"\b(?:what|how long)\b|\b(?:estimate|work out|find|give|calculate)\b", lower):
        return [Ask("duration", "recycle")]
    return None


def _series(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if {"count", "open_each"} <= kinds and _SERIES.search(lower) and not any(a.quantity == "stops" for a in asks):
        return [Ask("duration", "series", "s")]
    if {"count", "interval"} <= kinds and _SERIES.search(lower):
        return [Ask("duration", "series")]
    if {"count", "frequency"} <= kinds and (_SERIES.search(lower) or patterns.search(r"\bshutter\b[^?]*\bopen\b", lower) or any(a.quantity == "shutter" for a in asks)):
        return [Ask("shutter", "series")]
    return None


def _compared(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"difference in stops between a 400 and a 250 Ws head"."""
    plain = not kinds & {"aperture", "guide_number", "distance", "power", "power_down"}
    if kinds & {"two_energy", "two_voltage"} and plain and patterns.search(r"\bstops?\b|\b(?:gain(?:ed)?|lost)\W*\?", lower) and patterns.search(r"how (?:many|much)|difference|what|gain|lose|worth|\?", lower):
        return [Ask("stops", next((a.of for a in asks if a.quantity == "stops"), ""))]
    return None


def _added(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"what do four pops of f/8 add up to"."""
    if {"count", "aperture"} <= kinds and not asks and not kinds & {"guide_number", "distance"} and _ADDS.search(lower):
        return [Ask("aperture", "", "")]
    of_battery = "battery" in cues and {"count", "power"} <= kinds and not kinds & {"aperture", "distance", "film_speed"}
    if of_battery and "guide_number" not in kinds and patterns.search(r"\bwhat (?:do|would|will|can) (?:i|it|we|they) (?:then )?(?:get|have|give|do)\b", lower) and all(a.quantity in ("aperture", "guide_number", "count") for a in asks):
        return [Ask("count", "", "pops")]
    if asks or "guide_number" in kinds:
        return None
    if "frequency" in kinds and "?" in lower and kinds & {"shutter", "time", "count"}:
        return [Ask("count", "", "flashes")] if kinds & {"shutter", "time"} else [Ask("shutter", "series")]
    if "battery" in cues and "count" in kinds and "?" in lower and kinds & {"power", "power_down", "stops", "signed", "relation"}:
        return [Ask("count", "", "pops")]
    return None


def _for_another_aperture(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"300 joules for f/8, how many for f/11": of what was named first."""
    counted = all(a.quantity == "count" and not a.unit for a in asks)
    if {"energy", "two_aperture"} <= kinds and counted and not kinds & {"two_energy", "guide_number", "count", "distance"} and patterns.search(r"how (?:much|many) (?:for|at|do|would|will|to|is|are)\b", lower):
        return [Ask("energy", "", "J")]
    if {"energy", "two_aperture"} <= kinds and not asks and "guide_number" not in kinds and "two_energy" not in kinds and patterns.search(r"\benergy\b|how (?:much|many)", lower):
        return [Ask("energy", "", "J")]
    return None


_SHARE_ASKED = Pattern(r"\b(?:what|how (?:much|many))\b[^.?]{0,24}\b(?P<which>stronger|bigger|larger|main|greater|brighter|weaker|smaller|lesser|little|fill|first|each)\b[^.?]{0,16}\b(?:gets?|have|has|take|takes|give|gives|receive|fed|share)\b")


_OVER_HEADS = Pattern(r"\b(?:over|between|across|into|among|to|on) (?:\w+ )?(?:\w+ )?heads\b[^?.]{0,16}\b(?:equal|equally|evenly|even|each|apiece)\b")


_EACH_GETS = Pattern(r"\b(?:pack|generator)\b[^?]*\bwhat (?:does|will|would|do) (?:each|every)(?: one| head| of (?:them|the heads))? (?:get|have|receive|put out)\b")


_OF_A_PART = Pattern(r"\b(?:how (?:many|much)|what|which)\b(?! (?:stops?|f\b|f-|aperture|power|setting|pops|flashes|film|distance|about|if|happens)\b)")
_MUCH_FIRED = Pattern(r"\bhow much\b (?:(?:does|do|will|would|is|can|it|the|my|head|flash|pack|that|then|now|be|actually|still) )*(?:fire|deliver|put out|give out|give off|emit|comes? out|goes? out|fired|delivered|left)\b")
_PARTED = frozenset({"energy", "power", "two_power", "power_down", "stops", "signed", "relation", "number"})


def _of_a_part(lower: str, kinds: set[str], asks: Sequence[Ask]) -> bool:
    """"it stores 400 watt-seconds: how many does it give out at an eighth?": of nothing but an energy and the part of it that is set."""
    plain = all(a.quantity == "energy" or a.quantity == "count" and not a.unit or a.quantity == "stops" and _MUCH_FIRED.search(lower) for a in asks)
    return kinds <= _PARTED and len(kinds) > 1 and plain and _OF_A_PART.search(lower) is not None


_WHICH_SETTING = Pattern(r"\b(?:what|which) (?:power )?(?:setting|fraction|position|power|part of (?:its|full) power)\b|\bwhere (?:do|should|must) i set\b")
_REST = Pattern(r"\b(?:what|how (?:much|many))\b[^?.]{0,40}\b(?:left|remain\w*|rest|other|second)\b")
_ALL_HEADS = Pattern(r"\beach\b[^?]*\b(?:pack|generator)\b[^?]{0,40}\b(?:in all|altogether|total|hold|have|need|put out|deliver|give)\b|\b(?:pack|generator)\b[^?]{0,60}\b(?:each|apiece)\b[^?]{0,30}\b(?:in all|altogether|total)\b|\bwhat (?:size|sort) (?:of )?(?:pack|generator)\b[^?]*\beach\b")


def _stored(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if {"two_energy", "aperture"} <= kinds and not kinds & {"two_aperture", "guide_number", "distance"} and not any(a.quantity in ("stops", "count", "power", "film_speed") for a in asks) and ("?" in lower or patterns.search(r"\bwhat\b", lower)):
        return [Ask("aperture")]
    only = kinds <= {"energy", "two_energy", "power", "count", "remark", "place"}
    if only and "two_energy" in kinds and "two_power" not in kinds and "count" not in kinds and _WHICH_SETTING.search(lower) and all(a.quantity in ("energy", "power", "aperture") for a in asks):
        return [Ask("power")]
    if only and "count" in kinds and "two_energy" in kinds and _REST.search(lower):
        return [Ask("energy", "rest", "J")]
    if only and "count" in kinds and "two_energy" not in kinds and "power" not in kinds and _ALL_HEADS.search(lower):
        return [Ask("energy", "all heads", "J")]
    plain = "energy" in kinds and not kinds & {"aperture", "guide_number", "distance", "two_energy"}
    part = _SHARE_ASKED.search(lower) if plain and "ratio" in kinds else None
    if part:
        return [Ask("energy", "smaller" if part["which"] in ("weaker", "smaller", "lesser", "little", "fill") else "larger", "J")]
    if plain and "count" in kinds and (not asks and _OVER_HEADS.search(lower) or all(a.quantity == "aperture" for a in asks) and _EACH_GETS.search(lower)):
        return [Ask("energy", "each", "J")]
    if "split" in cues and (plain or kinds == {"count"} and patterns.search(r"\b(?:pack|generator)\b", lower)):
        if "count" in kinds and patterns.search(r"\bhow many stops\b|\bin stops\b|\bstops (?:down|lost|less)\b", lower):
            return [Ask("stops", "split")]
    if "energy" in kinds and "split" in cues and not kinds & {"aperture", "guide_number", "distance"} and patterns.search(r"\beach\b|per head|apiece", lower) and all(a.quantity in ("aperture", "stops", "count", "energy") for a in asks):
        return [Ask("energy", "each", "J")]
    if plain and "split" not in cues and _of_a_part(lower, kinds, asks):
        return [Ask("energy", "", "J")]
    if "capacitance" in kinds or ("energy" in kinds or "capacitor" in cues) and not kinds & {"guide_number", "distance"}:
        if "split" in cues and "energy" in kinds and not ENERGY.found_in(lower) and all(a.quantity in ("stops", "count") for a in asks) and patterns.search(r"\beach\b|per head|apiece", lower):
            return [Ask("energy", "each", "J")]
        if "capacitance" in kinds and not asks:
            return [Ask("energy", "", "J")]
        if ENERGY.found_in(lower) and not any(a.quantity in ("aperture", "stops", "power", "count", "guide_number", "film_speed") for a in asks):
            each = patterns.search(r"\beach\b|per head|apiece|every head", lower) and not patterns.search(r"\beach (?:pop|flash|shot|burst)\b|\b(?:total|in all|altogether|all told)\b|\d ?(?:j|joules?|ws|watt[- ]?seconds?)(?:,| of energy)? (?:each|apiece)\b", lower)
            return [Ask("energy", "each" if each else "", "J")]
    return None


_SETS = Pattern(r"\bhow many (?:more |full |fresh |spare |such |new )*(?:sets?|packs?|loads?|changes?|batteries|charges?)\b(?! (?:of )?(?:pops|flashes))|\b(?:number of )?(?:sets|batteries)(?: needed| required| to (?:bring|pack))?\W*\?\W*$")
_ROLLS = Pattern(r"\bhow many (?:more |whole |full |complete |entire )*(?:rolls?|films?|cassettes?)\b|\b(?:number of )?rolls(?: (?:per|a|for a|on a|from a|each|from one|on one|to the) (?:full )?(?:charge|set|battery))?\W*\?\W*$")


def _supplied(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"how many sets of cells do I pack?", "how many rolls will it do?": of a number of pops told."""
    if "count" not in kinds or kinds & {"guide_number", "aperture"}:
        return None
    if ("battery" in cues or "two_count" in kinds) and _SETS.search(lower):
        return [Ask("count", "", "sets")]
    return [Ask("count", "", "rolls")] if "two_count" in kinds and _ROLLS.search(lower) and patterns.search(r"\b(?:pops?|flash(?:es)?|bursts)\b", lower) else None


_SAID_NUMBER = Pattern(r"(?:\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|sixteen|full|half))\s*$")
"""Before "pops?": so many of them, told and not asked."""


_ON_TOP = Pattern(r"how many (?:(?:pops|flashes|bursts|shots|hits|firings) )?(?:do i (?:need|want|fire) )?(?:more|extra|further|additional|other|besides|on top|in addition)\b")
"""Those already fired do not count: "how many more pops", "how many pops more"."""


_FIRE_IT = Pattern(r"\bhow (?:many times|often)(?: (?:do|must|should|would|will|have|can) (?:i|we|you)(?: (?:have|need))?(?: to)?| to)? (?:fire|pop|trigger|hit|set (?:it|them|the \w+) off|discharge|flash (?:it|them|the))\b")


def _fired(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"how many more pops", "how often do I hit it"."""
    found = _FIRE_IT.search(lower) or _POPS.search(lower) or (_ON_TOP.search(lower) if "count" in kinds and kinds & {"stops", "relation"} else None)
    if not found or found.group().startswith(("pop", "flash", "burst", "discharge")) and _SAID_NUMBER.search(lower[: found.start()]) or any(a.quantity == "count" and a.unit == "frames" for a in asks):
        return None
    more = "more" if _ON_TOP.search(lower) else ""
    if more and found.re.pattern == _ON_TOP.pattern:
        return [Ask("count", more, "pops")]
    asked = patterns.search(r"\b(?:needed|required|necessary)\b|^(?:count|estimate|give|work out|find)\b", found.group())
    if kinds & {"frequency"} or asked or found.re.pattern == _FIRE_IT.pattern or patterns.search(r"\bpops?\b|\bhits?\b|burst|open flash|battery|charge|how often|\bcells\b", lower) and "sync" not in kinds:
        rest = [a for a in asks if a.quantity not in ("count", "stops", "distance")]
        return [Ask("count", more, "flashes" if "frequency" in kinds else "pops"), *rest]
    return None
