"""What a question about pops, pulses and energy gives.

A length beside a speed is a movement, "eight times" beside a flash are eight pops, and a
time beside "recycle" is asked for even where the question only says "what is it at half?".
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import pop_words, speed_words
from assistant.language.hearing import fold
from assistant.language.items import Item
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

_FIRED = Pattern(r"\b(?:fir|pop|hit|flash|trigger|set (?:it |them )?off|set the flash off|burst)\w*\b[^.?!]{0,30}\btimes\b|\btimes\b[^.?!]{0,25}\b(?:on one frame|same frame|one exposure|on the frame)")
_OF_A_LENGTH = Pattern(r"\s*(?:(?:the|its|that|this|his|her|my|our|their) )?(?:(?:former|old|first|original|previous|earlier|present|usual|same) )*(?:distance|as (?:far|close|near|much|bright|strong|long)|further|farther|power|light|energy|exposure)\b")
"""So many times as far or as much, and no pops: "the flash is taken to three times its former distance"."""
_ONLY_TO_TEST = Pattern(r"\s*(?:times )?(?:just |only |first )?(?:to|and) (?:test|check|try|warm|clear|form|see (?:if|whether)|make sure|wake)\b")
"""After so many pops that were none of the picture's."""
_WAITED = Pattern(r"\b(?:wait\w*|interval|gaps?|between (?:pops|shots|flashes|them|each|(?:one|each|a)(?: pop| flash| burst| shot| one)? and the (?:next|other|following)|every|the pops)|between(?=\s*[,.;?!]|\W*$)|apart|every|after each|after the (?:last|previous|one before|preceding|first)(?: one| pop| flash)?\b|(?:each|one)(?: one| pop)? to the next|before the next)\b")
COMES_BACK = Pattern(r"\b(?:comes?|coming|came) back(?= from (?:a )?(?:full|half|quarter|pop|flash))|\b(?:have|get) it back\b|\b(?:comes?|coming|came) back(?: up| again)?\b(?! (?:(?:half|an?|one|two|three|to|down|towards|from|with)\b|\d))|\b(?:be|is|gets?|are)(?: it| they| the (?:flash|gun|pack|head))? ready (?:again|for the next)|\bcharged? (?:up )?again\b|\brefills?\b|\brecovers?\b|\bto (?:re)?(?:charge|cycle)\b")
"""Said of a flash that recycles."""

_BACK_AFTER = Pattern(r"\b(?:have|get) it back\b|\b(?:comes?|coming|came) back(?: up| again)?|\b(?:be|is|gets?|are)(?: it| they| the (?:flash|gun|pack|head))? ready(?: again| for the next)?|\b(?:re)?charg(?:ed?|es|ing)(?: up)?(?: again)?|\brefill(?:s|ed|ing)?|\brecover(?:s|ed|y|ing)?(?: time)?")
_IT_NEEDS = Pattern(r"\b(?:flash|it|pack|gun|unit|head|charger|capacitor) (?:needs|takes|wants|asks for)(?: about)? $")
_AFTER_FULL = Pattern(r" ?(?:to get ready |to charge )?(?:after|from|at) (?:an? )?full\b")
_SO_LONG = Pattern(r"(?:\s+(?:only|just|about|every|each time|within|after|in|takes?|of|is|it|for))*\s*$")
"""Between them and a time: "is ready again after five seconds"."""


def _comes_back(fact: Fact, lower: str) -> bool:
    """Whether a time is that of a flash that recycles, said before it or after it."""
    if COMES_BACK.search(lower[fact.start : fact.end + 44]):
        return True
    before = lower[max(0, fact.start - 44) : fact.start]
    if _IT_NEEDS.search(before) and _AFTER_FULL.match(lower, fact.end):
        return True
    return any(_SO_LONG.fullmatch(before, found.end()) for found in _BACK_AFTER.finditer(before))


_FOR_SO_LONG = Pattern(r"\d ?(?:s|sec\w*|seconds?)\b[^.?!]{0,16}\b(?:for|within|over|during) (?:the |about )?$")
"""Before a whole time, after the wait that was told: "a pop every 12 seconds for two minutes"."""
_FOR_EACH = Pattern(r"\s*apiece\b|\s*(?:a|per|for (?:each|every)(?: single)?(?: one)?(?: of)?)\s+(?:(?:the|those|these|my) )?(?:\w+ )?(?:pops?|flash(?:es)?|bursts?|hits?)\b|\s*for (?:each|every) one\b|\s*each\W*(?:$|[,.;]|\bin all\b|\btotal\b|\bhow\b)")
_EACH_TAKES = Pattern(r"\b(?:each|every)(?: single)?(?: one)?(?: of (?:the|these|those|my)(?: \w+)?)? ?(?:pops?|flash(?:es)?|bursts?|hits?)? (?:takes?|needs?|lasts?|costs?|gets)(?: me| about| up)* $")


_WITH_ITS_WAIT = Pattern(r"\b(?:pop|flash|burst|hit)(?: alone)?,? (?:plus|and|with|including|counting|incl\.?) (?:(?:its|the|a|my) )?(?:own )?(?:wait\w*|pause|recycl\w*|recharg\w*|gap|rest|walk\w*)(?: time)?(?: (?:after|that follows|before)(?: it| the next| that)?)?,? ?(?:(?:together|between them|in all|is|are|takes?|make|makes|comes? to|lasts?|needs?|about|=|:)[ ,]*)*$")


_EACH_COSTING = Pattern(r"\b(?:pops?|flashes|bursts|hits),? (?:each|every one)(?: of (?:them|which))? (?:costing|taking|needing|lasting|costs|takes|needs|lasts)(?: me| about| some)* $")
_OF_A_POP = Pattern(r"\b(?:each|every|per|a) (?:pop|flash|burst|hit|one)\b[^.?!;]{0,30}$")
_ALL_IN = Pattern(r"[^.?!;\d]{0,50}\b(?:all in|all told|everything (?:included|counted|in)|altogether)\b")


def _with_its_wait(fact: Fact, lower: str) -> bool:
    """"each pop plus its wait is eight seconds": the last one waits as well."""
    before = lower[max(0, fact.start - 90) : fact.start]
    return _WITH_ITS_WAIT.search(before) is not None or _EACH_COSTING.search(before) is not None or _OF_A_POP.search(before) is not None and _ALL_IN.match(lower, fact.end) is not None


def _is_for_each(fact: Fact, lower: str) -> bool:
    """"six seconds for every one of the twenty", "each pop takes ten seconds": all of them take so many times that, and not one gap less."""
    return _FOR_EACH.match(lower, fact.end) is not None or _EACH_TAKES.search(lower[: fact.start]) is not None


ENERGY = Phrasings(r"(?:how (?:much|many)|what(?:'s|s| is)?(?! about)|which|give me)\b[^?]{0,50}\b(?:energy|joules?|watt[- ]?seconds?|w/?s|j)\b|(?<!\d)(?<!\d )\b(?:energy|joules|watt[- ]?seconds|ws)\b[^.?\d]{0,25}\?|\benergy (?:of|in|for|from|stored)\b|\b(?:total|combined) energy\b|\bhow many w(?:s|att)|(?<!\d )(?<!\d)\b(?:joules|watt[- ]?seconds|ws|energy) (?:per|a|an|in each|for each|for every|in one|each) (?:single )?(?:pop|flash|burst|shot|hit|firing|frame|go)\b")
"""Asks for an energy."""
RATE = Pattern(r"\b(?:what|which|how high)(?:'s| is| must be| should be| would be)? (?:a |the |its )?(?:flash |strobe )?(?:frequency|rate|hertz|hz)\b|\bhow many (?:hz|hertz|a second|per second|flashes (?:a|per) second)\b|\bfrequency\W*(?:\?|$)|\bhow fast (?:must|should|do|does) (?:it|the strobe|i) (?:flash|fire|strobe)")
"""Asks how often a second."""


_TIMED = frozenset({"velocity", "frequency", "capacitance", "supply", "voltage", "t01", "t05", "shutter", "time", "duration", "recycle", "times", "energy", "number", "aperture_range", "max_count", "number_range"})
_SPEAKS = Pattern(r"pop|onto (?:one|the same)|full (?:energy|charge|voltage)|twice|thrice|open flash|how many flashes|blur|smear|recycl", re.I)
"""Without one of these, and without a time or an energy, nothing here is called for: most questions."""


def time_facts(facts: list[Fact], items: Sequence[Item], text: str) -> list[Fact]:
    """The facts with movements, pops counted as "times", waits and charges told apart."""
    kinds = {f.quantity for f in facts}
    if _TIMED.isdisjoint(kinds) and "%" not in [f.unit for f in facts] and not _SPEAKS.may_match(text):
        return facts
    lower = fold(text)
    facts = _two_voltages(speed_words.settle(facts, lower), lower)
    moving = "velocity" in [f.quantity for f in facts] or "aperture" not in kinds and bool(patterns.search(r"\b(?:blur|smear)\w*\b", lower))
    cues = {i.word for i in items if i.kind == "cue"}
    facts = pop_words.opened_for_each(pop_words.counted(_rates(facts, lower), lower), lower)
    out = _hit_twice(_counted_pops([_read(f, lower, moving, cues) for f in facts], lower), text, lower)
    out = _told_pulse(out, items) if {"t05", "t01"} <= cues else out
    if "energy" not in [f.quantity for f in out] and ENERGY.found_in(lower):
        bare = [f for f in out if f.quantity == "number" and not f.bad and 20 <= f.value <= 20000]
        out = [replace(f, quantity="energy", unit="J") if len(bare) == 1 and f is bare[0] else f for f in out]
    if RATE.search(lower):
        out = [replace(f, quantity="count", unit="flashes", of="") if f.quantity == "number" and not f.bad and _IMAGES.match(lower, f.end) else f for f in out]
    out = [replace(f, quantity="remark", value=0.0) if f.quantity == "power" and _TO_THE.search(lower[: f.start]) else f for f in _another_head(out, lower)]
    if patterns.search(r"\bpops?\b", lower) and not any(f.quantity == "aperture" for f in out):  # "from f/4 to f/11"
        spans = [f for f in out if f.quantity == "aperture_range"]
        out = [f for f in out if f not in spans] + [g for f in spans for g in (replace(f, quantity="aperture", other=float("nan")), replace(f, quantity="aperture", value=f.other, other=float("nan"), start=f.end - 1))]
    return [_like_the_last(_like_the_next(f, n, out, lower), n, out, lower) for n, f in enumerate(out)]


_OF_VOLTS = Pattern(r"\bvolt(?:s|age)\b")


def _two_voltages(facts: list[Fact], lower: str) -> list[Fact]:
    """"the voltage has dropped from 360 to 255": the one and the other."""
    span = [f for f in facts if f.quantity == "number_range"]
    if len(span) != 1 or len({f.quantity for f in facts} - {"remark", "place"}) != 1 or _OF_VOLTS.search(lower) is None:
        return facts
    one = replace(span[0], quantity="voltage", unit="V", of="", other=float("nan"))
    return [part for f in facts for part in ((one, replace(one, value=f.other, start=f.end - 1)) if f is span[0] else (f,))]


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


_OTHER_IS = Pattern(r"\b(?:full(?: power)?|one|other|second|spare|borrowed|mine|his|hers|theirs|new|old|replacement|rental|backup|head|pack|unit|it|friend)(?:'s|s| is| was|,)?(?: only| just)? (?:an?|the)?\s*$|\b(?:swap\w*|replac\w*|trad\w*|chang\w*|borrow\w*|use|using|with|got)(?: it| that| to| for| only| up| down)* an? (?:borrowed |smaller |bigger |second |rented )?$")


def _another_head(facts: list[Fact], lower: str) -> list[Fact]:
    """"a 400 Ws head gave f/11, the borrowed one's a two hundred", "so for f/16 I need 800", "over two heads is 500 each": watt-seconds too, and no film."""
    energies = [f for f in facts if f.quantity == "energy"]
    if len(energies) != 1:
        return facts
    wanted = sum(f.quantity == "aperture" for f in facts) == 2 and not any(f.quantity in ("distance", "guide_number") for f in facts)
    parted = _WHAT_POWER.search(lower) is not None
    shared = any(f.quantity == "count" and f.unit in ("flashes", "heads") for f in facts)
    sole = {f.quantity for f in facts} <= {"energy", "aperture", "number", "film_speed", "remark", "place"} and sum(f.quantity == "aperture" for f in facts) == 1 and "film" not in lower
    popped = _HOW_MANY_POPS.search(lower) is not None and not any(f.quantity in ("distance", "guide_number", "aperture") for f in facts)

    def of_energy(fact: Fact) -> bool:
        before = lower[max(0, fact.start - 50) : fact.start]
        return _OTHER_IS.search(before) is not None or parted and _GIVES.search(before) is not None or wanted and _NEEDS.search(before) is not None or sole and _I_HAVE.search(before) is not None or popped and (_A_POP.match(lower, fact.end) is not None or _STORED.search(before) is not None) or shared and (_TO_EACH.match(lower, fact.end) is not None or _EACH_GETS.search(before) is not None or _ONE_TAKES.search(before) is not None)

    bare = [f for f in facts if f.quantity in ("number", "film_speed") and not f.bad and f.said.strip().lower().replace("-", " ").replace(" ", "").isalnum() and not _NAMED_FILM.search(f.said) and of_energy(f) and not _OF_FILM.match(lower, f.end)]
    if len(bare) != 1 or not 20 <= bare[0].value <= 20000 or bare[0].start < energies[0].start and not popped:
        return facts
    return [replace(f, quantity="energy", unit="J", of="") if f is bare[0] else f for f in facts]


_I_HAVE = Pattern(r"\b(?:(?:i|we)(?: now| only)? have(?: got)?|(?:i|we)'ve(?: only)?(?: got)?|there's|there is|left with|the pack (?:has|gives))(?: only| just| about)? $")
_HOW_MANY_POPS = Pattern(r"\b(?:how many|number of) (?:\w+ ){0,2}?(?:pops|flashes|bursts|hits|discharges|firings|times)\b|\bhow often\b")
_A_POP = Pattern(r",? *(?:at most |flat out |at full )?(?:a|per|each|for each|in each|with each|at each|every|in one|in a) ?(?:single )?(?:pop|flash|burst|hit|discharge|firing|go|time)?\b|,? *at most\b|,? *(?:flat out|at full|and no more)\b")
_STORED = Pattern(r"\b(?:holds?|stores?|puts? out|delivers?|fires?|gives?|has|of|is|manages?|only|tops? out at|goes up to|be|takes?|needs?|wants?|comes? to|total(?:s| of)?|calls? for)(?: (?:only|just|about|at most|no more than|me))* $")
_WHAT_POWER = Pattern(r"\b(?:what|which) (?:power|setting|fraction|part)\b")
_GIVES = Pattern(r"\b(?:gives?|delivers?|fires?|puts? out|give out|gives out|have|get|want|need)(?: only| just| about)? $")
_NEEDS = Pattern(r"\b(?:needs?|takes?|wants?|costs?|requires?|turn (?:it|the pack|the head) (?:up|down) to|set (?:it|the pack|the head) to)(?: only| just| about)? $")
_TO_EACH = Pattern(r",? *(?:each|apiece|(?:a|per|to each|for each|in each|in every|to every|at each) (?:head|lamp|one|light))\b")
_EACH_GETS = Pattern(r"\b(?:each|every)(?: one| head| of them)*(?: gets?| has| receives?| gives?| is| of)? $")
_ONE_TAKES = Pattern(r"\b(?:one|the first|first|key|main|larger|bigger|smaller|fill)(?: head| of them| light)?,? (?:takes|gets|has|uses|draws|receives|is given|is set to|is on)(?: only| just| about)? $")
_NAMED_FILM = Pattern(r"iso|asa|film|speed|din", re.I)
_OF_FILM = Pattern(r"[\s-]*(?:film|roll|iso|asa|speed|stock|feet|foot|ft|m\b|mm\b|metres?|meters?|watts?\b)")


_IMAGES = Pattern(r"\s+(?:clear |separate |distinct |sharp )?(?:images?|pictures?|exposures|positions|ghosts|copies|stages)\b")
"""As many flashes as there are to be images of one movement."""

_TO_THE = Pattern(r"\bfirst\b[^.?!\d]{0,20}\b(?:to|till|until|and) (?:the )?$")
"""Before "fifth": one of a series, no power."""


_A_SECOND = Pattern(r"\s*(?:a|per|every|each|/)\s*sec(?:ond)?\b")
_REPEATS = Pattern(r"\b(?:repeat\w*|strob\w*|bursts?|multi\w*|flashes)\b")


def _rates(facts: Sequence[Fact], lower: str) -> list[Fact]:
    """"repeat mode at 10 a second": how often, and no time of a second."""
    if not _REPEATS.search(lower):
        return list(facts)
    facts = [part for f in facts for part in (_a_second_apart(f) if f.quantity == "frequency" and _APART.match(lower, f.end) else (f,))]
    said = {f.start: m for f in facts if f.quantity == "number" and not f.bad and f.value > 0 and (m := _A_SECOND.match(lower, f.end))}
    return [replace(f, quantity="frequency", unit="Hz", of="") if f.start in said else f for f in facts if not any(f.quantity in ("shutter", "time") and m.start() <= f.start < m.end() for m in said.values())]


_APART = Pattern(r"\s*apart\b")


def _a_second_apart(rate: Fact) -> tuple[Fact, Fact]:
    """"five flashes a second apart": five of them, and a second from each to the next."""
    return replace(rate, quantity="count", unit="flashes", of=""), replace(rate, quantity="interval", value=1.0, unit="s", of="", start=rate.end - 1)


_POPPING = Pattern(r"\bpops?\b|\bopen flash|\bhow many flashes\b")
_DO_IT = Pattern(r"^\s*(?:of them )?(?:at [\w/]+(?: power)? )?(?:do|did|does|will do|are|were|is|was|give|gave|gives|make|made|work|worked|suffice|sufficed|enough|right|needed|fired|to do|light|lit)\b")
_COUNT_BEFORE = Pattern(r"\b(?:fired|fire|use|used|took|takes|needs?|needed|with|popped|hit it|gave it|give it)(?: just| only)?\s*$")
_MORE_STOPS = Pattern(r"^\s*(?:more|extra|further|additional)[ -]stops?\b")
_ONE_READS = Pattern(r"\b(?:one|a|single|each|1)(?: single)? (?:pop|flash|burst|hit)\b(?! (?:at|from) )")
_THEN_SO_MANY = Pattern(r"[.,;:!?-] *(?:(?:and|so|then|now|what about|how about|what of|with|for) )*$")
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
            if fact.value <= 200 and _THEN_SO_MANY.search(before) and not patterns.sub(r"\W", "", after) and _ONE_READS.search(before):
                fact = replace(fact, quantity="count", unit="pops", of="")  # "one pop f/5.6, then four?"
            elif _MORE_STOPS.match(after):
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

_FARADS = Pattern(r"\s*(?:u ?f|micro ?farads?|mfd|(?P<milli>milli ?farads?))\b")
"""After "energy in watt seconds: 2000": what is told, and no energy."""

_OF_ITS_FULL = Pattern(r"(?:%|\bper ?cent|\bpercent|\bhalf|\bquarters?|\bthirds?) (?:of (?:its|the|his|her|my|a) |the )$")
"""Before "full voltage": the whole of which so much is the part, and no power by itself."""

_SPOKEN = {"velocity": "speed", "capacitance": "capacitance", "supply": "battery", "voltage": "voltage"}


def _read(fact: Fact, lower: str, moving: bool, cues: set[str]) -> Fact:
    if fact.quantity in ("velocity", "capacitance", "supply", "voltage") and not 0 < fact.value < float("inf"):
        return replace(fact, bad=fact.bad or f"a {_SPOKEN[fact.quantity]} must be more than nothing")
    short = fact.quantity in ("t01", "t05", "shutter", "time", "duration") and fact.value < 1
    named = patterns.search(r"\bt\s?0?\.(1|5)\W*(?:it's|it is|that's|is|of|at|was|given as|quoted as)?(?: about| around| roughly| some)?\W*$", lower[: fact.start]) if short else None
    if named:
        return replace(fact, quantity="t01" if named[1] == "1" else "t05", of="")
    if fact.quantity == "energy" and fact.said[:1].isalpha() and (unit := _FARADS.match(lower, fact.end)):
        return replace(fact, quantity="capacitance", value=fact.value * (1e-3 if unit["milli"] else 1e-6), unit="", of="")
    if fact.quantity == "power" and fact.value == 1.0 and _OF_ITS_FULL.search(lower[: fact.start]):
        return replace(fact, quantity="remark", value=0.0)
    around = lower[max(0, fact.start - 30) : fact.end + 25]
    if fact.quantity == "power" and fact.unit == "%" and patterns.match(r"\W*(?:of )?(?:a |its |the )?(?:full )?(?:charge|charged|voltage)|\W*(?:of )?(?:the |its |full )*voltage", lower[fact.end : fact.end + 24]):
        return replace(fact, quantity="charge", of="")
    if fact.quantity == "recycle" and patterns.search(r"\b(?:in|during|per|over)\s+(?:an?\s+)?$", lower[: fact.start]) and not patterns.search(r"recycl\w*(?:\s+time)?(?:\s+is|\s+takes|\s+of)?\s+(?:in|about|around)\s*$", lower[: fact.start]):
        return replace(fact, quantity="time")
    if moving and fact.quantity in ("distance", "move", "max_distance", "focal_length", "sharp_limit") and not patterns.search("lens|focal", around) and 0 < fact.value < 1:
        return replace(fact, quantity="blur", of="")
    if fact.quantity == "number" and not fact.bad and fact.value >= 1 and (_PART_POPS.match(lower, fact.end) or patterns.match(r"\s+full\b", lower[fact.end :]) and ("pop" in lower or "battery" in cues) or "battery" in cues and _AT_A_PART.match(lower, fact.end)):
        return replace(fact, quantity="count", unit="pops")
    if fact.quantity == "number" and not fact.bad and "recycl" in lower and patterns.search(r"\b(?:takes|is|needs|in|about) $", lower[: fact.start]) and fact.value > 0:
        return replace(fact, quantity="recycle", unit="s")
    if fact.quantity == "film_speed" and fact.said.isdigit() and "battery" in cues and _AT_A_PART.match(lower, fact.end):
        return replace(fact, quantity="count", unit="pops", of="")  # "I shot 80 at quarter power"
    if fact.quantity in ("count", "times") and _ONLY_TO_TEST.match(lower, fact.end) and _FIRED.search(lower):
        return replace(fact, quantity="remark", unit="", of="", cue="")
    if fact.quantity == "times" and _FIRED.search(lower) and fact.value == int(fact.value) and not _OF_A_LENGTH.match(lower, fact.end):
        return replace(fact, quantity="count", unit="pops")
    if fact.quantity in ("shutter", "time", "recycle") and fact.value >= 0.2 and _with_its_wait(fact, lower):
        return replace(fact, quantity="interval", cue="each", of="")
    if fact.quantity in ("shutter", "time") and fact.value >= 0.2 and _comes_back(fact, lower):
        return replace(fact, quantity="recycle", of="")
    if fact.quantity in ("shutter", "time") and fact.value >= 0.2 and _is_for_each(fact, lower):
        return replace(fact, quantity="interval", cue="each", of="")
    if fact.quantity in ("shutter", "time") and fact.value >= 0.2 and not patterns.search("recycl", around) and (_WAITED.search(lower[fact.end - 1 : fact.end + 30]) or _WAITED.search(lower[max(0, fact.start - 30) : fact.end]) and _FOR_SO_LONG.search(lower[: fact.start]) is None):
        return replace(fact, quantity="interval")
    if fact.quantity == "shutter" and fact.of != "ambient" and not patterns.search(r"\b(?:i'm|im|i am|camera|shutter|shooting|we're|were)(?: is| set)? (?:at|on)\W*$", lower[: fact.start]) and patterns.search(r"^[^.?!,;]*\b(?:flash(?!es)|pulse|strobe)\b", lower[fact.end : fact.end + 14]) and not patterns.match(r"\W*(?:with|for|w|and|n|so|to|because|as|if|when|where|but|or|my|our|his|her|the|by|due|thanks|under|on)\b", lower[fact.end :]) and fact.value < 0.02 and "name_shutter" not in cues:
        return replace(fact, quantity="duration")
    if fact.quantity in ("shutter", "time") and fact.of != "ambient" and fact.value < 0.02 and "hss" not in cues and patterns.search(r"\b(?:flash|pulse|burst) (?:that |itself |alone |only )?(?:lasts?|burns?|takes|of|is|at)\W*(?:for |about |only )?$|\bit (?:lasts?|burns?|takes)\W*(?:for |about |only )?$", lower[max(0, fact.start - 32) : fact.start]):
        return fact if patterns.search(r"\b(?:shoot|shooting|shot|using|under|with|expos\w+|take|taking|took|run|running|do|doing) (?:the |my )?(?:flash|it|this|that|her|him|them) at\W*$", lower[: fact.start]) else replace(fact, quantity="duration")
    return fact
