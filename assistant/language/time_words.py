"""What a question about pops, pulses and energy gives and asks.

A length beside a speed is a movement, "eight times" beside a flash are eight pops, and a
time beside "recycle" is asked for even where the question only says "what is it at half?".
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language.hearing import fold
from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, tally
from assistant.records import replace
from assistant.units import LENGTH

_FIRED = Pattern(r"\b(?:fir|pop|hit|flash|trigger|set (?:it |them )?off|set the flash off|burst)\w*\b[^.?!]{0,30}\btimes\b|\btimes\b[^.?!]{0,25}\b(?:on one frame|same frame|one exposure|on the frame)")
_WAITED = Pattern(r"\b(?:wait\w*|interval|gaps?|between (?:pops|shots|flashes|them|each|(?:one|each|a)(?: pop| flash| burst| shot| one)? and the (?:next|other|following)|every|the pops)|between\W*$|apart|every|after each|(?:each|one)(?: one| pop)? to the next|before the next)\b")
_COMES_BACK = Pattern(r"\b(?:comes?|coming|came) back(?: up| again)?\b(?! (?:(?:half|an?|one|two|three|to|down|towards|from|with)\b|\d))|\b(?:be|is|gets?|are) ready (?:again|for the next)|\bcharged? (?:up )?again\b|\brefills?\b|\brecovers?\b")
"""Said of a flash that recycles."""

_BACK_AFTER = Pattern(r"\b(?:comes?|coming|came) back(?: up| again)?|\b(?:be|is|gets?|are) ready(?: again| for the next)?|\b(?:re)?charg(?:ed?|es|ing)(?: up)?(?: again)?|\brefill(?:s|ed|ing)?|\brecover(?:s|ed|y|ing)?(?: time)?")
_SO_LONG = Pattern(r"(?:\s+(?:only|just|about|every|each time|within|after|in|takes?|of|is|it|for))*\s*$")
"""Between them and a time: "is ready again after five seconds"."""


def _comes_back(fact: Fact, lower: str) -> bool:
    """Whether a time is that of a flash that recycles, said before it or after it."""
    if _COMES_BACK.search(lower[fact.start : fact.end + 44]):
        return True
    before = lower[max(0, fact.start - 44) : fact.start]
    return any(_SO_LONG.fullmatch(before, found.end()) for found in _BACK_AFTER.finditer(before))


_TIMED = frozenset({"velocity", "capacitance", "supply", "voltage", "t01", "t05", "shutter", "time", "duration", "recycle", "times", "energy", "number", "aperture_range"})
_SPEAKS = Pattern(r"pop|twice|thrice|open flash|how many flashes|blur|smear|recycl", re.I)
"""Without one of these, and without a time or an energy, nothing here is called for: most questions."""


def time_facts(facts: Sequence[Fact], items: Sequence[Item], text: str) -> list[Fact]:
    """The facts with movements, pops counted as "times", waits and charges told apart."""
    if not any(f.quantity in _TIMED or f.unit == "%" for f in facts) and not _SPEAKS.may_match(text):
        return list(facts)
    lower = fold(text)
    moving = any(f.quantity == "velocity" for f in facts) or bool(patterns.search(r"\b(?:blur|smear)\w*\b", lower)) and not any(f.quantity == "aperture" for f in facts)
    cues = {i.word for i in items if i.kind == "cue"}
    out = _hit_twice(_counted_pops([_read(f, lower, moving, cues) for f in _rates(facts, lower)], lower), text, lower)
    out = _told_pulse(out, items) if {"t05", "t01"} <= cues else out
    if not any(f.quantity == "energy" for f in out) and _ENERGY.search(lower):
        bare = [f for f in out if f.quantity == "number" and not f.bad and 20 <= f.value <= 20000]
        out = [replace(f, quantity="energy", unit="J") if len(bare) == 1 and f is bare[0] else f for f in out]
    out = [replace(f, quantity="remark", value=0.0) if f.quantity == "power" and _TO_THE.search(lower[: f.start]) else f for f in _another_head(out, lower)]
    if patterns.search(r"\bpops?\b", lower) and not any(f.quantity == "aperture" for f in out):  # "from f/4 to f/11"
        spans = [f for f in out if f.quantity == "aperture_range"]
        out = [f for f in out if f not in spans] + [g for f in spans for g in (replace(f, quantity="aperture", other=float("nan")), replace(f, quantity="aperture", value=f.other, other=float("nan"), start=f.end - 1))]
    return [_like_the_last(_like_the_next(f, n, out, lower), n, out, lower) for n, f in enumerate(out)]


def _told_pulse(facts: list[Fact], items: Sequence[Item]) -> list[Fact]:
    """"given as 1/1000 the t0.5 way: what is it as t0.1?": the one that is not asked is the one that is told."""
    brief = [f for f in facts if f.quantity in ("shutter", "duration", "t05", "t01") and 0 < f.value < 0.1]
    if len(brief) != 1:
        return facts
    asks = [i.start for i in items if i.kind == "cue" and i.word in ("what", "how_long", "how_much", "give")]
    named = [i for i in items if i.kind == "cue" and i.word in ("t05", "t01")]
    outright = [i.word for i in named if any(0 < i.start - at <= 16 for at in asks) and not 0 <= brief[0].start - i.end <= 4]
    if not outright and brief[0].quantity in ("t05", "t01"):
        return facts
    asked = set(outright) or {i.word for i in named if asks and i.start > asks[-1]} or {named[-1].word}
    told = {"t05", "t01"} - asked
    return [replace(f, quantity=next(iter(told)), of="") if f is brief[0] else f for f in facts] if len(told) == 1 else facts


_TWICE = Pattern(r"\b(?:hit|hits|fired?|fires|popp?(?:ed|s)?|triggered|flash(?:ed)?|set off)(?: (?:it|that|them|(?:the|my) (?:flash|head|gun|strobe|light)))?(?: off)? (?P<many>twice|thrice)\b(?! (?:as|the|a)\b)")


def _hit_twice(facts: list[Fact], text: str, lower: str) -> list[Fact]:
    """"I hit it twice at half power": two pops."""
    found = _TWICE.search(lower)
    if found is None or any(f.quantity == "count" and f.value > 1 for f in facts):
        return facts
    start, end = found.span("many")
    return [*facts, Fact("count", 2.0 if found["many"] == "twice" else 3.0, "pops", start=start, end=end, said=text[start:end])]


_OTHER_IS = Pattern(r"\b(?:one|other|second|spare|borrowed|mine|his|hers|theirs|new|old|replacement|rental|backup|head|pack|unit|it|friend)(?:'s|s| is| was|,)?(?: only| just)? (?:an?|the)?\s*$|\b(?:swap\w*|replac\w*|trad\w*|chang\w*|borrow\w*|use|using|with|got)(?: it| that| to| for| only| up| down)* an? (?:borrowed |smaller |bigger |second |rented )?$")


def _another_head(facts: list[Fact], lower: str) -> list[Fact]:
    """"a 400 Ws head gave f/11, the borrowed one's a two hundred": watt-seconds too, and no film."""
    energies = [f for f in facts if f.quantity == "energy"]
    bare = [f for f in facts if f.quantity in ("number", "film_speed") and not f.bad and f.said.strip().lower().replace("-", " ").replace(" ", "").isalnum() and not _NAMED_FILM.search(f.said) and _OTHER_IS.search(lower[max(0, f.start - 50) : f.start]) and not _OF_FILM.match(lower, f.end)]
    if len(energies) != 1 or len(bare) != 1 or not 20 <= bare[0].value <= 20000 or bare[0].start < energies[0].start:
        return facts
    return [replace(f, quantity="energy", unit="J", of="") if f is bare[0] else f for f in facts]


_NAMED_FILM = Pattern(r"iso|asa|film|speed|din", re.I)
_OF_FILM = Pattern(r"[\s-]*(?:film|roll|iso|asa|speed|stock|feet|foot|ft|m\b|mm\b|metres?|meters?|watts?\b)")


_TO_THE = Pattern(r"\bfirst\b[^.?!\d]{0,20}\b(?:to|till|until|and) (?:the )?$")
"""Before "fifth": one of a series, no power."""


_A_SECOND = Pattern(r"\s*(?:a|per|every|each|/)\s*sec(?:ond)?\b")
_REPEATS = Pattern(r"\b(?:repeat\w*|strob\w*|bursts?|multi\w*|flashes)\b")


def _rates(facts: Sequence[Fact], lower: str) -> list[Fact]:
    """"repeat mode at 10 a second": how often, and no time of a second."""
    if not _REPEATS.search(lower):
        return list(facts)
    said = {f.start: m for f in facts if f.quantity == "number" and not f.bad and f.value > 0 and (m := _A_SECOND.match(lower, f.end))}
    return [replace(f, quantity="frequency", unit="Hz", of="") if f.start in said else f for f in facts if not any(f.quantity in ("shutter", "time") and m.start() <= f.start < m.end() for m in said.values())]


_POPPING = Pattern(r"\bpops?\b|\bopen flash|\bhow many flashes\b")
_DO_IT = Pattern(r"^\s*(?:of them )?(?:at [\w/]+(?: power)? )?(?:do|did|does|will do|are|were|is|was|give|gave|gives|make|made|work|worked|suffice|sufficed|enough|right|needed|fired|to do|light|lit)\b")
_COUNT_BEFORE = Pattern(r"\b(?:fired|fire|use|used|took|takes|needs?|needed|with|popped|hit it|gave it|give it)(?: just| only)?\s*$")
_MORE_STOPS = Pattern(r"^\s*(?:more|extra|further|additional)[ -]stops?\b")
_ENDS = Pattern(r"^\s*(?:[,.;?!]|$|of them\b|then\b)")
_AT_END = Pattern(r"\b(?:at|for|from)\s*$")


def _counted_pops(facts: list[Fact], lower: str) -> list[Fact]:
    """"how many at 20 feet if four do it at 10": four pops; "three more stops": stops; "at 30?": feet, as before."""
    if not _POPPING.search(lower):
        return facts
    lengths = [f for f in facts if f.quantity == "distance"]
    out: list[Fact] = []
    for fact in facts:
        if fact.quantity == "number" and not fact.bad and fact.value == int(fact.value) and 0 < fact.value:
            before, after = lower[: fact.start], lower[fact.end :]
            if _MORE_STOPS.match(after):
                fact = replace(fact, quantity="stops", cue="more", of="")
            elif fact.value <= 200 and _COUNT_BEFORE.search(before) and _ENDS.match(after) and len(lengths) == 2:
                fact = replace(fact, quantity="count", unit="pops", of="")  # "from 12 feet I'd need four, wouldn't I?"
            elif fact.value <= 200 and (_DO_IT.match(after) or _COUNT_BEFORE.search(before)) and not any(f.quantity == "count" and f.unit == "pops" for f in facts):
                fact = replace(fact, quantity="count", unit="pops", of="")
            elif len(lengths) == 1 and lengths[0].unit in LENGTH and _AT_END.search(before) and patterns.match(r"\s*(?:[?,;!.]|$|how|if)", after):
                fact = replace(fact, quantity="distance", value=fact.value * LENGTH[lengths[0].unit], unit=lengths[0].unit, of="")
        out.append(fact)
    return out


def _like_the_last(fact: Fact, n: int, facts: Sequence[Fact], lower: str) -> Fact:
    """"from 150 joules up to 600": the second number is of the first one's kind."""
    before = facts[n - 1] if n else None
    if fact.quantity != "number" or fact.bad or before is None or before.quantity not in ("energy", "voltage") or patterns.match(r"[\s-]*[a-z%/]", lower[fact.end :]) and not patterns.match(r"\s*(?:how|what|do|gain|is|in|,|costs?\b|loses?\b|gives?\b|makes?\b|would\b|will\b|puts?\b|means?\b|takes?\b|one\b|head\b|unit\b|pack\b|flash\b|and\b|at\b|instead\b)", lower[fact.end :]):
        return fact
    joined = patterns.fullmatch(r"\s*(?:(?:unit|head|pack|flash|monolight|one|strobe|light)s? )?(?:up |down )?(?:to|and|versus|vs\.?|against|for|with|or|than|over|from|into)\s*(?:an? |the |my |one |single |lone )*", lower[before.end : fact.start])
    return replace(fact, quantity=before.quantity, unit=before.unit) if joined else fact


def _like_the_next(fact: Fact, n: int, facts: Sequence[Fact], lower: str) -> Fact:
    """"between a 400 and a 250 Ws head": the first number is of the second one's kind."""
    after = facts[n + 1] if n + 1 < len(facts) else None
    if fact.quantity != "number" or after is None or after.quantity not in ("energy", "voltage") or fact.bad:
        return fact
    if patterns.fullmatch(r"\s*(?:for|with|to)\s*(?:an?|the|my)\s*", lower[fact.end : after.start]) and patterns.search(r"\b(?:swap|trad|chang|switch|replac|exchang)\w*[^.,;]*$", lower[: fact.start]):
        return replace(fact, quantity=after.quantity, unit=after.unit)
    joined = patterns.fullmatch(r"\s*(?:and|or|vs\.?|versus|to|over|against|than|down to|-|of|out of)\s*(?:an?|the|my)?\s*", lower[fact.end : after.start])
    return replace(fact, quantity=after.quantity, unit=after.unit) if joined else fact


_PART = r"(?:full|(?:a )?(?:half|third|quarter|eighth|sixteenth)|1/\d+)"
_PART_POPS = Pattern(rf"[\s-]+{_PART}(?:[\s-]+power)?[\s-]+(?:pops?|flashes|bursts|shots|blinks|ones)\b")
_AT_A_PART = Pattern(rf"\s+(?:of them |more )?at {_PART}\b")
"""A number of pops at a power: "450 half-power pops"; of a battery also "450 at half"."""

_SPOKEN = {"velocity": "speed", "capacitance": "capacitance", "supply": "battery", "voltage": "voltage"}


def _read(fact: Fact, lower: str, moving: bool, cues: set[str]) -> Fact:
    if fact.quantity in ("velocity", "capacitance", "supply", "voltage") and not 0 < fact.value < float("inf"):
        return replace(fact, bad=fact.bad or f"a {_SPOKEN[fact.quantity]} must be more than nothing")
    short = fact.quantity in ("t01", "t05", "shutter", "time", "duration") and fact.value < 1
    named = patterns.search(r"\bt\s?0?\.(1|5)\W*(?:it's|it is|that's|is|of|at|was|given as|quoted as)?\W*$", lower[: fact.start]) if short else None
    if named:
        return replace(fact, quantity="t01" if named[1] == "1" else "t05", of="")
    around = lower[max(0, fact.start - 30) : fact.end + 25]
    if fact.quantity == "power" and fact.unit == "%" and patterns.match(r"\W*(?:of )?(?:a |its |the )?(?:full )?(?:charge|charged|voltage)|\W*(?:of )?(?:the |its |full )*voltage", lower[fact.end : fact.end + 24]):
        return replace(fact, quantity="charge", of="")
    if fact.quantity == "recycle" and patterns.search(r"\b(?:in|during|per|over)\s+(?:an?\s+)?$", lower[: fact.start]) and not patterns.search(r"recycl\w*(?:\s+time)?(?:\s+is|\s+takes|\s+of)?\s+(?:in|about|around)\s*$", lower[: fact.start]):
        return replace(fact, quantity="time")
    if moving and fact.quantity in ("distance", "move", "max_distance", "focal_length", "sharp_limit") and not patterns.search("lens|focal", around) and 0 < fact.value < 1:
        return replace(fact, quantity="blur", of="")
    if fact.quantity == "number" and not fact.bad and fact.value >= 1 and (_PART_POPS.match(lower, fact.end) or patterns.match(r"\s+full\b", lower[fact.end :]) and "pop" in lower or "battery" in cues and _AT_A_PART.match(lower, fact.end)):
        return replace(fact, quantity="count", unit="pops")
    if fact.quantity == "number" and not fact.bad and "recycl" in lower and patterns.search(r"\b(?:takes|is|needs|in|about) $", lower[: fact.start]) and fact.value > 0:
        return replace(fact, quantity="recycle", unit="s")
    if fact.quantity == "times" and _FIRED.search(lower) and fact.value == int(fact.value):
        return replace(fact, quantity="count", unit="pops")
    if fact.quantity in ("shutter", "time") and fact.value >= 0.2 and _comes_back(fact, lower):
        return replace(fact, quantity="recycle", of="")
    if fact.quantity in ("shutter", "time") and fact.value >= 0.2 and not patterns.search("recycl", around) and _WAITED.search(lower[max(0, fact.start - 30) : fact.end + 30]):
        return replace(fact, quantity="interval")
    if fact.quantity == "shutter" and fact.of != "ambient" and not patterns.search(r"\b(?:i'm|im|i am|camera|shutter|shooting|we're|were)(?: is| set)? (?:at|on)\W*$", lower[: fact.start]) and patterns.search(r"^[^.?!,;]*\b(?:flash(?!es)|pulse|strobe)\b", lower[fact.end : fact.end + 14]) and not patterns.match(r"\W*(?:with|for|w|and|n)\b", lower[fact.end :]) and fact.value < 0.02 and "name_shutter" not in cues:
        return replace(fact, quantity="duration")
    if fact.quantity in ("shutter", "time") and fact.of != "ambient" and fact.value < 0.02 and patterns.search(r"\b(?:flash|pulse|burst) (?:that )?(?:lasts?|burns?|takes|of|is|at)\W*(?:for |about |only )?$|\bit (?:lasts?|burns?|takes)\W*(?:for |about |only )?$", lower[max(0, fact.start - 25) : fact.start]):
        return fact if patterns.search(r"\b(?:shoot|shooting|shot|using|under|with|expos\w+|take|taking|took|run|running|do|doing) (?:the |my )?(?:flash|it|this|that|her|him|them) at\W*$", lower[: fact.start]) else replace(fact, quantity="duration")
    return fact


# --- what is asked -----------------------------------------------------------------------------------

_MOVES = Pattern(r"(?:how (?:far|much|big|large|long)|what)\b[^?]{0,60}\b(?:move|moves|moved|travel|travels|blur|blurs|smear|smears|motion|movement|shift|streak)\b|\b(?:blur|movement|motion)\b[^.?]{0,50}\?")
_SHORT = Pattern(r"how (?:short|brief|quick|fast)\b[^?]{0,40}\b(?:flash|pulse|duration|burst|light|be|need)|(?:what|which)[^?.]{0,25}\bduration\b(?!s? (?:is|of)\b[^?]{0,10}\d)|(?:longest|maximum|max|shortest) (?:flash )?(?:duration|flash|pulse|burst)")
_FREEZES = Pattern(r"^\W*(?:\w+[,:]? ){0,12}?(?:will|does|do|would|can|could|is|am i)\b[^?]*\b(?:freeze|frozen|short enough|fast enough|brief enough|stop the (?:motion|action)|sharp enough)")
_YES_NO = Pattern(r"(?:^|[.?!;,:] *)(?:so |and )?(?:will|does|do|is|would|can) [^?]*\?")
_RECYCLE = Pattern(r"recycl|recharg|ready again|" + _COMES_BACK.pattern + r"|how long (?:between|from one) (?:pops?|flashes|shots)")
_ENERGY = Pattern(r"(?:how (?:much|many)|what(?:'s|s| is)?(?! about)|which|give me)\b[^?]{0,50}\b(?:energy|joules?|watt[- ]?seconds?|w/?s|j)\b|(?<!\d)(?<!\d )\b(?:energy|joules|watt[- ]?seconds|ws)\b[^.?\d]{0,25}\?|\benergy (?:of|in|for|from|stored)\b|\b(?:total|combined) energy\b|\bhow many w(?:s|att)|(?<!\d )(?<!\d)\b(?:joules|watt[- ]?seconds|ws|energy) (?:per|a|an|in each|for each|for every|in one|each) (?:single )?(?:pop|flash|burst|shot|hit|firing|frame|go)\b")
_SERIES = Pattern(r"how long\b|total time|(?:what|how much) time|how many (?:seconds|minutes)|\b(?:time|long) from (?:the )?first|\bfirst (?:\w+ )?(?:to|till|until) (?:the )?(?:last|second|third|[a-z]+th|\d+th)\b")
_POPS = Pattern(r"how (?:many|often)\b(?: (?!stops?\b|f-|seconds|minutes|joules|watt|ws\b|metres|meters|feet|degrees)[a-z'-]+){0,4}? ?(?:pops?|flashes|flash|bursts?|times|hits?|firings?|shots?|frames?|do i (?:get|need|have)|can i|will i|at\b|on\b)|number of (?:pops|flashes|bursts|shots)|how often|(?:pops?|flashes|bursts|discharges) (?:needed|required|necessary)\b|(?:count|estimate|give|work out|find) the (?:pops|flashes|bursts|discharges)\b|\b(?:pops|flashes|bursts|discharges)\s*\?")
_ADDS = Pattern(r"\b(?:add|adds|added|adding|amount|amounts|come|comes|worth|make|makes|total|totals|build|builds) ?(?:up)? ?(?:to|for)?\b[^.]{0,20}\?|what(?:'s|s| is)? (?:that|it|the) (?:f-?stop|aperture)|equivalent")


_ASKED_OF = frozenset({"count", "velocity", "duration", "t01", "t05", "recycle", "energy", "voltage", "capacitance", "frequency"})
_ASKING_CUES = frozenset({"t01", "t05", "capacitor", "battery"})


def time_asks(asks: Sequence[Ask], facts: Sequence[Fact], items: Sequence[Item], text: str) -> list[Ask]:
    """The asks with those about movement, duration, recycling, energy and pops."""
    cues = {i.word for i in items if i.kind == "cue"}
    if not (any(f.quantity in _ASKED_OF for f in facts) or cues & _ASKING_CUES or _POPS.may_match(text) or _RECYCLE.may_match(text)):
        return list(asks)
    lower = patterns.sub(r"\s+", " ", fold(text))
    counted = tally(facts)
    kinds = set(counted) | {f"two_{q}" for q, n in counted.items() if n > 1}
    rules = (_as_one, _another_place, _often, _pulse, _movement, _recycling, _series, _compared, _stored, _supplied, _fired, _added, _for_another_aperture)
    for rule in rules:
        found = rule(lower, kinds, cues, asks)
        if found is not None:
            return found
    return list(asks)


_ONE_POWER = Pattern(r"\b(?:what|which|equals?|equivalent|same)\b[^.?]{0,40}\b(?:single|one|1) (?:pop|flash|burst|shot|go|hit)\b|\b(?:single|one|1) (?:pop|flash|burst|shot|go|hit)\b[^.?]{0,30}\b(?:same|equals?|equivalent|match\w*|as much)\b")


def _as_one(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"two pops at an eighth: what one pop gives the same?": its power."""
    plain = {"count", "power"} <= kinds and not kinds & {"two_power", "aperture", "guide_number", "distance", "energy", "stops", "relation"} and not any(a.quantity in ("stops", "count", "power") for a in asks)
    return [Ask("power")] if plain and "battery" not in cues and _ONE_POWER.search(lower) and not patterns.search(r"\bstops?\b|\bhow many\b", lower) else None


def _another_place(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"at 15 feet five pops are right. At 30?"."""
    plain = not asks and {"count", "two_distance"} <= kinds and not kinds & {"guide_number", "aperture", "velocity"}
    return [Ask("count", "", "pops")] if plain and patterns.search(r"\bpops?\b[^?]*\b(?:at|from|for)\s+[\d.]+[^?,.]{0,10}\?", lower) else None


_RATE = Pattern(r"\b(?:what|which|how high a) (?:flash )?(?:frequency|rate|hertz|hz)\b|\bhow many (?:hz|hertz|a second|per second|flashes (?:a|per) second)\b|\bfrequency\W*(?:\?|$)|\bhow fast (?:must|should|do|does) (?:it|the strobe|i) (?:flash|fire|strobe)")


def _often(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"eight flashes in two seconds, what frequency?"."""
    timed = "count" in kinds and kinds & {"shutter", "time", "interval"} and not kinds & {"frequency", "guide_number", "aperture", "recycle"}
    return [Ask("count", "a second", "flashes")] if timed and _RATE.search(lower) else None


def _pulse(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"what is the t0.1", one of the two given."""
    if not cues & {"t01", "t05"} or kinds & {"velocity", "guide_number"}:
        return None
    if "t05" in kinds and "t01" not in kinds:
        return [Ask("duration", "t0.1", "s")]
    if "t01" in kinds and "t05" not in kinds:
        return [Ask("duration", "t0.5", "s")]
    return None


def _movement(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if "velocity" not in kinds:
        if kinds & {"duration", "t05", "t01"} and not kinds & {"guide_number", "aperture"} and _MOVES.search(lower) and patterns.search(r"\b(?:move|travel|blur|smear)", lower):
            return [Ask("distance", "movement")]
        return None
    timed = kinds & {"duration", "t05", "t01", "shutter", "time"}
    if timed and (_FREEZES.search(lower) or "blur" in kinds and _YES_NO.search(lower)):
        return [Ask("freeze")]
    wants_shutter = any(a.quantity == "shutter" for a in asks)
    if wants_shutter and not timed:
        return [Ask("shutter", "freeze")]
    if "blur" in kinds and not timed:
        return [Ask("duration", "freeze")]
    if (_SHORT.search(lower) or any(a.quantity == "duration" for a in asks)) and not (timed and "blur" not in kinds):
        return [Ask("duration", "freeze")]
    if _MOVES.search(lower) or timed:
        return [Ask("distance", "movement", next((a.unit for a in asks if a.unit), ""))]
    return None


def _recycling(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if not (_RECYCLE.search(lower) or "recycle" in kinds) or kinds & {"guide_number", "aperture"}:
        return None
    if any(a.quantity in ("count", "power", "stops", "energy") for a in asks) and not _SERIES.search(lower):
        return None
    if "count" in kinds and _SERIES.search(lower) and "recycle" in kinds:
        return [Ask("duration", "series")]
    if "?" in lower or asks or patterns.search(r"\b(?:what|how long)\b|\b(?:estimate|work out|find|give|calculate)\b", lower):
        return [Ask("duration", "recycle")]
    return None


def _series(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if {"count", "interval"} <= kinds and _SERIES.search(lower):
        return [Ask("duration", "series")]
    if {"count", "frequency"} <= kinds and (_SERIES.search(lower) or patterns.search(r"\bshutter\b[^?]*\bopen\b", lower) or any(a.quantity == "shutter" for a in asks)):
        return [Ask("shutter", "series")]
    return None


def _compared(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"difference in stops between a 400 and a 250 Ws head"."""
    plain = not kinds & {"aperture", "guide_number", "distance", "power", "power_down"}
    if kinds & {"two_energy", "two_voltage"} and plain and patterns.search(r"\bstops?\b", lower) and patterns.search(r"how (?:many|much)|difference|what|gain|lose|worth|\?", lower):
        return [Ask("stops", next((a.of for a in asks if a.quantity == "stops"), ""))]
    return None


def _added(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"what do four pops of f/8 add up to"."""
    if {"count", "aperture"} <= kinds and not asks and not kinds & {"guide_number", "distance"} and _ADDS.search(lower):
        return [Ask("aperture", "", "")]
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


def _stored(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    if {"two_energy", "aperture"} <= kinds and not kinds & {"two_aperture", "guide_number", "distance"} and not any(a.quantity in ("stops", "count", "power", "film_speed") for a in asks) and ("?" in lower or patterns.search(r"\bwhat\b", lower)):
        return [Ask("aperture")]
    if "energy" in kinds and "split" in cues and not kinds & {"aperture", "guide_number", "distance", "two_energy"}:
        if "count" in kinds and patterns.search(r"\bhow many stops\b|\bin stops\b", lower):
            return [Ask("stops", "split")]
        part = _SHARE_ASKED.search(lower) if "ratio" in kinds else None
        if part:
            return [Ask("energy", "smaller" if part["which"] in ("weaker", "smaller", "lesser", "little", "fill") else "larger", "J")]
    if "energy" in kinds and "split" in cues and not kinds & {"aperture", "guide_number", "distance"} and patterns.search(r"\beach\b|per head|apiece", lower) and all(a.quantity in ("aperture", "stops", "count", "energy") for a in asks):
        return [Ask("energy", "each", "J")]
    if "capacitance" in kinds or ("energy" in kinds or "capacitor" in cues) and not kinds & {"guide_number", "distance"}:
        if "split" in cues and "energy" in kinds and not _ENERGY.search(lower) and all(a.quantity in ("stops", "count") for a in asks) and patterns.search(r"\beach\b|per head|apiece", lower):
            return [Ask("energy", "each", "J")]
        if "capacitance" in kinds and not asks:
            return [Ask("energy", "", "J")]
        if _ENERGY.search(lower) and not any(a.quantity in ("aperture", "stops", "power", "count", "guide_number", "film_speed") for a in asks):
            each = patterns.search(r"\beach\b|per head|apiece|every head", lower) and not patterns.search(r"\beach (?:pop|flash|shot|burst)\b|\b(?:total|in all|altogether|all told)\b", lower)
            return [Ask("energy", "each" if each else "", "J")]
    return None


_SETS = Pattern(r"\bhow many (?:more |full |fresh |spare |such |new )*(?:sets?|packs?|loads?|changes?|batteries|charges?)\b(?! (?:of )?(?:pops|flashes))")
_ROLLS = Pattern(r"\bhow many (?:more |whole |full |complete |entire )*(?:rolls?|films?|cassettes?)\b")


def _supplied(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"how many sets of cells do I pack?", "how many rolls will it do?": of a number of pops told."""
    if "count" not in kinds or kinds & {"guide_number", "aperture"}:
        return None
    if "battery" in cues and _SETS.search(lower):
        return [Ask("count", "", "sets")]
    return [Ask("count", "", "rolls")] if "two_count" in kinds and _ROLLS.search(lower) and patterns.search(r"\b(?:pops?|flash(?:es)?|bursts)\b", lower) else None


_SAID_NUMBER = Pattern(r"(?:\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|sixteen|full|half))\s*$")
"""Before "pops?": so many of them, told and not asked."""


def _fired(lower: str, kinds: set[str], cues: set[str], asks: Sequence[Ask]) -> list[Ask] | None:
    """"how many more pops", "how often do I hit it"."""
    found = _POPS.search(lower)
    if not found or found.group().startswith(("pop", "flash", "burst", "discharge")) and _SAID_NUMBER.search(lower[: found.start()]) or any(a.quantity == "count" and a.unit == "frames" for a in asks):
        return None
    more = "more" if patterns.search(r"how many (?:more|extra|further|additional|other)\b", lower) else ""
    asked = patterns.search(r"\b(?:needed|required|necessary)\b|^(?:count|estimate|give|work out|find)\b", found.group())
    if kinds & {"frequency"} or asked or patterns.search(r"\bpops?\b|\bhits?\b|burst|open flash|battery|charge|how often|\bcells\b", lower) and "sync" not in kinds:
        rest = [a for a in asks if a.quantity not in ("count", "stops", "distance")]
        return [Ask("count", more, "flashes" if "frequency" in kinds else "pops"), *rest]
    return None
