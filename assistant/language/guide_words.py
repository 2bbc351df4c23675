"""Guide numbers said without their name in front: "a 60 ft flash", "56 m is the gn", "its full power guide number"."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.language.steps import Steps
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.units import LENGTH

_FLASH_AFTER = Pattern(r"^\)?\s*(?:\w+\s+)?(?:flash(?:es|guns?)?|strobes?|speedlights?|guns?|units?|heads?)\b(?! (?:to|from|is|and|at|away|shots?|pictures?|photos?|frames?|exposures?|leads?|cords?|cables?|stands?|distances?|range))", re.IGNORECASE)
_IS_THE_GUIDE = Pattern(r"^\s*(?:(?:at|for|on) (?:(?:iso|asa) ?\d+|(?:full|half|quarter|1/\d+)(?: power)?)\s*)?(?:(?:is|was|'s)\s+(?:the|its|my|his|her)?|(?:as )?(?:the|its|my|his|her))\s*(?:gn|guide)\b", re.IGNORECASE)
_THAT_IS_IT = Pattern(r"[^.?!;\d]{0,48}?[\s(,–-]+(?:(?:that(?:'s| is| being| was|s)|which is|it'?s|i mean|meaning|being) (?:the|its|my|his|her)?\s*(?:gn|guide)\b)(?! (?:at|for|with|on)\b)", re.IGNORECASE)
"""After a length: "good for 88 feet on this film (that's the guide number)"."""
_CAME_OUT = Pattern(r"\b(?:gn|guide(?: number| no\.?| factor)?)(?: has| had| just| actually| really)* (?:came out|comes out|worked out|works out|turned out|turns out|tested|tests|measured|measures|proved)(?: (?:as|at|to be|to|of|about|around|more like|nearer))*\s*$", re.IGNORECASE)
_GUIDE_SAID = Pattern(r"\b(?:gn|guide(?: number| no\.?)?)(?: is| of|'s)? (?:normally|usually|nominally|typically|officially|always|otherwise|elsewhere|as a rule|at best|bare|currently|now|at full(?: power| whack)?|without (?:it|that|(?:the |a |any )?\w+)|(?:in|with|at|on) (?:ordinary|normal|plain|standard|usual|x) (?:flash )?(?:sync|use|mode|running))(?: is|:|,)?\s*$", re.IGNORECASE)
_JOINED = Pattern(r"^\s*(?:and|plus|,)\s+(?:an?|one)\s*$", re.IGNORECASE)
_BESIDE_ITS_NUMBER = Pattern(r"\b(?:gn|guide(?: number| no\.?)?|leitzahl)\b(?:(?! (?:at|for|on) (?:iso|asa)|[.,;?!\d]).){0,40}?(?:,? ?\(?in (?P<before>metres?|meters?|feet|foot|ft|m)\b\)?,?)?[^.,;?!\d]{0,24}$", re.IGNORECASE)
_UNIT_BEHIND = Pattern(r"\s*[,(]?\s*(?:in )?(?P<unit>metres?|meters?|feet|foot|ft|m)\b(?!\s*\d)\)?\s*(?:$|[,.;:?!]|and\b|at\b|for\b)", re.IGNORECASE)
_QUOTED = Pattern(r"(?:^|[.,;?!])(?!\s*(?:so |and |then )?(?:what|how|whats|give|find|bring|work)\b)[^.,;?!\d]*\b(?:gn|guide(?: number| no)?)\b[^.?\d]{0,16}\b(?:for|at|given at|quoted at|quoted for|given for)\s*$", re.IGNORECASE)


def _fallen(facts: list[Fact], text: str) -> list[Fact]:
    """"the panel drops my guide number from 105 to 63 feet; 6 feet, aperture?": the number bare, and what the thing before the light loses of it."""
    worn = [f for f in facts if f.quantity == "modifier"]
    if len({f.unit for f in worn}) != 1 or not _GN_FROM.may_match(text) or any(f.quantity == "loss" for f in facts):
        return facts
    for n, (bare, through) in enumerate(zip(facts, facts[1:], strict=False)):
        if bare.quantity != "distance" or through.quantity != "distance" or not bare.value > through.value > 0 or not (_GN_FROM.search(text[: bare.start]) and _DOWN_TO.fullmatch(text[bare.end : through.start])):
            continue
        rest = facts[n + 2 :]
        if not any(f.quantity in ("distance", "aperture") for f in (*facts[:n], *rest)):
            return facts  # what it loses is asked
        speed = rest[0] if rest and rest[0].quantity == "film_speed" and _BOTH_AT.fullmatch(text[through.end : rest[0].start]) else None
        guide = replace(bare, quantity="guide_number", value=bare.value / LENGTH[bare.unit], cue="", at_iso=speed.value if speed else None)
        loss = replace(through, quantity="loss", value=2 * math.log2(bare.value / through.value), unit=worn[0].unit, cue="", said=text[bare.start : through.end])
        return [*facts[:n], guide, loss, *(f for f in rest if f is not speed)]
    return facts


_AND_THE_OTHER = Pattern(r"[,;]? (?:and|but) the other(?: one| flash| gun| head)?(?: is| of| with| has| at|'s|,)? (?:one of )?(?:about )?$", re.IGNORECASE)
_OF_A_FLASH = Pattern(r"\b(?:one|first|bigger|smaller|left|right)\b[^.;?!]{0,24}$", re.IGNORECASE)


def _the_other(facts: list[Fact], text: str) -> list[Fact]:
    """"one with a guide number of 36 metres and the other 22 metres": of one kind, where it does not say that it stands there."""
    out = list(facts)
    for n, (one, other) in enumerate(zip(facts, facts[1:], strict=False)):
        if one.quantity == "guide_number" and other.quantity == "distance" and other.unit in ("ft", "m") and _AND_THE_OTHER.search(text[one.end : other.start]) and _OF_A_FLASH.search(text[: one.start]) and not _STANDS.match(text[other.end :]):
            out[n + 1] = replace(other, quantity="guide_number", value=other.value / LENGTH[other.unit], cue="")
    return out


def _near(text: str, fact: Fact) -> str:
    """The words right before a fact: no more, or many facts would each look through the whole text."""
    return text[max(0, fact.start - 60) : fact.start]


_SO_MANY = Pattern(r"(?:\ban?|\bone|\btwo|\d)\s*$", re.IGNORECASE)
_CLAUSE_OPENS = Pattern(r"(?:^|[.;:!?])\s*(?:the |my |this |that )?$", re.IGNORECASE)
_ON_ITS_BOX = Pattern(r"\b(?:gn|guide(?: number| no\.?)?) (?:printed |written |given |stated )?(?:on|in|from|by) (?:the|its|my|his|her) (?:box|label|book|booklet|manual|leaflet|sticker|plate|tag|card|side|back|data ?sheet|maker|carton|instructions)(?: (?:is|was|says|said|reads|gives|of|:))?\s*$", re.IGNORECASE)
"""Right before a length: "guide number on the box one hundred and ten in feet"."""
_OF_WHAT = Pattern(r"\b(?:gn|guide(?: number| no\.?)?) (?:of|for|on|at|with) (?:the|my|this|that|our|her|his|your|one|a|an|a single|each) (?!distance|aperture|f-?stop|film|power)(?:[\w-]+ ){1,3}(?:is|was|being|comes to|reads|says|=|:)\s*(?:about |only |just |around )?$", re.IGNORECASE)
"""Right before a length: "GN of the flash is 112 feet"."""
_FLASH_OF = Pattern(r"\b(?:flash(?:gun)?|gun|strobe|speedlight|hammerhead) of (?:only |just |about |some )?$", re.IGNORECASE)
"""Right before a length: "a flash of 140 feet"."""
_AN = Pattern(r"\b(?:an?|my|one|this|with)\s*$", re.IGNORECASE)
_FLASH_OF_MINE = Pattern(r"^[\s-]*(?:flash(?:gun)?|strobe|speedlight|gun|head|unit)\b(?! (?:to|from|distance|range|and)\b)", re.IGNORECASE)
"""After a length, where a guide number is asked or spoken of: "the guide number that my 36 m flash has left"."""
_FLASH_AT = Pattern(r"[\s-]*(?:flash(?:gun)?|strobe|speedlight|gun|unit|head),? (?:at|from|and|is at|used at|set at) (?:about )?(?:an? |the )?(?:\d|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty)", re.IGNORECASE)
"""After a length: "an 80 ft flash at 10 feet" has a place of its own, so the length is the flash's."""
_FLASH_PLACED = Pattern(r"[\s-]*(?:flash(?:gun)?|strobe|speedlight|gun),? (?:at|from) (?:about )?(?:\d+(?:\.\d+)?|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty) ?(?:m|ft|feet|foot|metres?|meters?)\b", re.IGNORECASE)
"""The same at the head of a clause, with its article left out: "40 m flash at 5 m, what stop?"."""
_CALLED_NUMBER = Pattern(r"(?:(?:^|[.,;:!?(]\s*|\band |\bwith )(?:the |my |its |his |her |our )?|\b(?:the|my|its|gun'?s|flash'?s|strobe'?s|lamp'?s) )number(?: on (?:it|the (?:back|box|label|flash|gun))| of (?:the|my) (?:flash|gun|strobe))?(?:'s| is| was| of|:| being| says| reads)?\s*(?:an? |about )?$", re.IGNORECASE)
"""Right before a length, with nothing else of the name: "number is 40 metres"."""
_SPEAKS = Pattern(r"gn|guide|number|flash|strobe|speedlight|gun|unit|head|mine|ours|my own", re.IGNORECASE)
"""Without one of these no length is a guide number."""


def _lengths_of_flashes(facts: list[Fact], text: str) -> list[Fact]:
    kinds = {f.quantity for f in facts}
    if not kinds.isdisjoint(("guide_number", "guide_number_pair")) or not _SPEAKS.may_match(text):
        return facts
    meant: set[int] = {n for n, f in enumerate(facts) if f.quantity in ("distance", "gap") and f.unit in LENGTH and (_LEFT_OF.search(_near(text, f)) or _MINE.search(_near(text, f)) and not _STANDS.match(text[f.end :]) and _GUIDE_BEFORE.search(text))}
    pair = [n for n, f in enumerate(facts) if f.quantity == "distance" and f.unit in LENGTH]
    if len(pair) == 2 and _GN_FROM.search(text[: facts[pair[0]].start]) and _DOWN_TO.fullmatch(text[facts[pair[0]].end : facts[pair[1]].start]):
        meant |= set(pair)

    for n, fact in enumerate(facts):
        if fact.quantity != "distance" or fact.unit not in ("ft", "m"):
            continue
        if _IS_THE_GUIDE.match(text[fact.end :]) or _THAT_IS_IT.match(text, fact.end) or _GUIDE_SAID.search(text[: fact.start]) or _CAME_OUT.search(text[: fact.start]) or _FLASH_AFTER.match(text[fact.end :]) and (_SO_MANY.search(_near(text, fact)) or (_CLAUSE_OPENS.search(_near(text, fact)) or _AN.search(_near(text, fact))) and fact.value / LENGTH[fact.unit] >= (8 if fact.unit == "m" else 25)) or _ON_ITS_BOX.search(_near(text, fact)) or _OF_WHAT.search(_near(text, fact)) or _FLASH_OF.search(_near(text, fact)) or _CALLED_NUMBER.search(_near(text, fact)) and not _STANDS.match(text[fact.end :]):
            meant.add(n)
        elif kinds >= {"distance"} and len(pair) > 1 and (_AN.search(_near(text, fact)) and _FLASH_AT.match(text[fact.end :]) or _CLAUSE_OPENS.search(_near(text, fact)) and _FLASH_PLACED.match(text[fact.end :])):
            meant.add(n)
    meant |= {n for n, f in enumerate(facts) if f.quantity == "distance" and f.unit in ("ft", "m") and _GUIDE_BEFORE.search(text) and _AN.search(_near(text, f)) and _FLASH_OF_MINE.match(text[f.end :])}
    named = [n for n, f in enumerate(facts) if f.quantity == "distance" and f.unit in ("ft", "m") and _OF_THE_FLASH.search(text[: f.start])]
    others = [f for n, f in enumerate(facts) if f.quantity == "distance" and n not in named]
    if len(named) == 1 and (any(_SAID_DISTANCE.search(text[: f.start]) for f in others) or _far_more_than(facts[named[0]], others) and not _STANDS.match(text[facts[named[0]].end :])):
        meant.add(named[0])
    for n in sorted(meant, reverse=True):
        if n and facts[n - 1].quantity == "distance" and _JOINED.match(text[facts[n - 1].end : facts[n].start]):
            meant.add(n - 1)
    return [replace(f, quantity="guide_number", value=f.value / LENGTH[f.unit], cue="", of="" if f.quantity == "gap" else f.of) if n in meant else f for n, f in enumerate(facts)]


def _far_more_than(length: Fact, others: list[Fact]) -> bool:
    """"gun 36m, 400 film, 5m": a number three times the one place, and no room so long."""
    return len(others) == 1 and not others[0].bad and length.value >= 3 * others[0].value and length.value / LENGTH[length.unit] >= (15 if length.unit == "m" else 50)


_LEFT_OF = Pattern(r"\b(?:gn|guide(?: number| no\.?)?)\b[^.,;?\d]{0,16}\b(?:left|remain\w*|stays|over) (?:of|out of|from) (?:my |its |the |a )?$", re.IGNORECASE)
""""what guide number is left of 45 metres"."""
_GN_FROM = Pattern(r"\b(?:gn|guide(?: number| no\.?)?)\b[^.,;?\d]{0,24}\bfrom $", re.IGNORECASE)
_DOWN_TO = Pattern(r"\s*(?:down |up )?to\s*(?:only |just )?", re.IGNORECASE)
""""the snoot takes the GN from 40 down to 32 metres"."""
_BOTH_AT = Pattern(r",? (?:both|each)(?: (?:quoted|given|measured|taken))? (?:at|for|on) (?:the )?", re.IGNORECASE)
_GUIDE_BEFORE = Pattern(r"\b(?:gn|guide(?: number| no\.?)?)\b", re.IGNORECASE)
_MINE = Pattern(r"[.,;:] *(?:and )?(?:mine|my flash|my own|ours)(?:'s| is| was| has)(?: a)? $", re.IGNORECASE)
""""a diffuser halves the guide number. Mine is 56 metres"."""
_STANDS = Pattern(r"\s*(?:away|from|off|back|to|behind|above|up)\b", re.IGNORECASE)
"""After a length that is where mine is: "mine is 3 metres from the bride"."""
_OF_THE_FLASH = Pattern(r"\b(?:flash|gun|strobe|speedlight)\s*$", re.IGNORECASE)
_SAID_DISTANCE = Pattern(r"\b(?:distance|away|subject at|range)(?: is| of| at|:)?\s*$", re.IGNORECASE)


_IN_BRACKETS = Pattern(r"^\s*(?:\()?(?:in )?(?:metres?|meters?|m|feet|ft)?[\s,]*(?:at |for |and )?$", re.IGNORECASE)


def _quoted_for(facts: list[Fact], text: str) -> list[Fact]:
    """"The guide number is for ISO 100": said apart from the number, but of it; so in brackets, "28 (metres, ISO 100)"."""
    guide = next((n for n, f in enumerate(facts) if f.quantity == "guide_number"), None)
    if guide is None:
        return facts
    aside = next((f for f in facts[guide + 1 : guide + 2] if f.quantity == "film_speed" and _IN_BRACKETS.match(text[facts[guide].end : f.start]) and text[f.end :].lstrip()[:1] == ")"), None)
    if aside is not None and sum(f.quantity == "film_speed" for f in facts) > 1:
        known = replace(facts[guide], at_iso=aside.value, end=aside.end)
        return [known if n == guide else f for n, f in enumerate(facts) if f is not aside]
    shot = facts[guide].at_iso
    for n, fact in enumerate(facts):
        if fact.quantity == "film_speed" and shot is not None and shot != fact.value and n > guide and _QUOTED.search(text[: fact.start]):
            return [replace(f, at_iso=fact.value) if m == guide else replace(f, value=shot) if m == n else f for m, f in enumerate(facts)]
        if fact.quantity == "film_speed" and n > guide and _QUOTED.search(text[: fact.start]) and sum(f.quantity == "film_speed" for f in facts) > 1:
            known = replace(facts[guide], at_iso=fact.value)
            return [known if m == guide else f for m, f in enumerate(facts) if m != n]
    return facts


_MEASURED = Pattern(
    r"^\W*(?:(?:which|and|that|it|this|was|is|were|been|has|had|that's|it's|i|we)\W+)*(?:measured|given|quoted|rated|stated|tested|specified|marked|printed|taken|found|valid|meant|got|worked out)\W+(?:it |that |this )?(?:only )?(?:at|for|with|on)\s*(?:the )?$", re.IGNORECASE)
"""Between a guide number and what it holds for: "GN 40 m was measured at" quarter power."""


def _measured_at(facts: list[Fact], text: str) -> list[Fact]:
    """"GN 40 m was measured at quarter power": the condition of the number, where another one is set."""
    guide = next((n for n, f in enumerate(facts) if f.quantity == "guide_number"), None)
    if guide is None:
        return facts
    own = next((f for f in facts[guide + 1 :] if f.quantity in ("power", "film_speed") and not f.bad and _MEASURED.match(text[facts[guide].end : f.start])), None)
    if own is None or (own.quantity == "power" and own.value == 1.0) or (own.quantity == "film_speed" and sum(f.quantity == "film_speed" for f in facts) < 2):
        return facts
    whole = replace(facts[guide], end=own.end, said=text[facts[guide].start : own.end])
    known = replace(whole, at_power=own.value) if own.quantity == "power" else replace(whole, at_iso=own.value)
    return [known if n == guide else f for n, f in enumerate(facts) if f is not own]


def _in_ordinary_sync(facts: list[Fact], text: str) -> list[Fact]:
    """"guide number in ordinary sync is 40, metres": what the guide number is, not how fast the shutter syncs; and "the guide number, in metres, is 36" has its unit."""
    out, has = list(facts), any(f.quantity == "guide_number" for f in facts)
    for n, fact in enumerate(out):
        of_sync = fact.quantity == "sync" and not has and "/" not in fact.said and fact.said.rstrip()[-1:].isdigit() and fact.value > 0
        if not of_sync and (fact.quantity != "guide_number" or fact.unit):
            continue
        figure = len(fact.said) - len(fact.said.rstrip().rstrip("0123456789."))
        beside = _BESIDE_ITS_NUMBER.search(text[max(0, fact.end - figure - 72) : fact.end - figure])
        if beside is None:
            continue
        behind = _UNIT_BEHIND.match(text[fact.end :])
        unit = (behind["unit"] if behind else beside["before"] or "").lower()
        if of_sync:
            out[n] = replace(fact, quantity="guide_number", value=round(1 / fact.value, 6), of="", unit=unit and ("m" if unit.startswith("m") else "ft"))
        elif unit:
            out[n] = replace(fact, unit="m" if unit.startswith("m") else "ft")
    return out


_UNIT_LATER = Pattern(r"^\s*(?:at|for|on)\s+(?:(?:iso|asa)\s*\d+|(?:full|half|quarter|1/\d+)(?: power)?)\s*,?\s*\(?(?:in )?(?P<unit>metres?|meters?|m|feet|foot|ft)\b\)?\s*[,.;:]", re.IGNORECASE)
_WANTED_FIRST = Pattern(r"\b(?:what|convert|turn|how much|give me|tell me)\b", re.IGNORECASE)


def _unit_after_condition(facts: list[Fact], text: str) -> list[Fact]:
    """"guide number 24 at ISO 64 in metres, what is it at ISO 100": the unit is the number's own."""
    at = next((n for n, f in enumerate(facts) if f.quantity == "guide_number" and not f.unit), None)
    if at is None or _WANTED_FIRST.search(text[: facts[at].start]):
        return facts
    later = _UNIT_LATER.match(text[facts[at].end :])
    if later is None:
        return facts
    unit = "m" if later["unit"].lower().startswith("m") else "ft"
    return [replace(f, unit=unit) if n == at else f for n, f in enumerate(facts)]


_IS = Pattern(r"^(?:\s*power)?\s*(?:is|=|gives|was|:|it's)?\s*(?:a )?$", re.IGNORECASE)


_AT = Pattern(r"^\s*(?:at|on|for|with)\s*(?:a )?$", re.IGNORECASE)


def _power_of_its_own(facts: list[Fact], text: str) -> list[Fact]:
    """"what at a quarter if full is 44 metres": the power said with the number is the one it is for."""
    if len([f for f in facts if f.quantity == "power"]) != 2:
        return facts
    guides = [n for n, f in enumerate(facts) if f.quantity == "guide_number"]
    if not guides and patterns.search(r"\b(?:gn|g\w?[iu]\w?de)\b", text, re.IGNORECASE):
        guides = [n for n, f in enumerate(facts) if f.quantity == "distance"]
    if len(guides) != 1 or guides[0] == 0:
        return facts
    n = guides[0]
    guide, before, after = facts[n], facts[n - 1], facts[n + 1] if n + 1 < len(facts) else None
    if before.quantity == "power" and not before.bad and _IS.match(text[before.end : guide.start]):
        power = before
    elif after is not None and before.quantity == after.quantity == "power" and (_AT.match(text[guide.end : after.start]) or after.unit == "full" and not text[guide.end : after.start].strip()):
        power = after
    else:
        return facts
    value = guide.value / LENGTH.get(guide.unit, 1.0) if guide.quantity == "distance" else guide.value
    return [replace(guide, quantity="guide_number", value=value, at_power=power.value) if f is guide else f for f in facts if f is not power]


_HAS_SO_MUCH = Pattern(
    r"(?:,? (?:my|the|this|its|that|it)(?: \w+)?(?:'s)?)?(?: (?:flash|gun|strobe|unit|head|lamp))?(?: (?:has|gives(?: me)?|shows|offers|makes|comes to|works out (?:at|to)|only has|is good for|with))(?: about| only| just)?(?: an?| the)?\s*|,? (?:the|its|my) (?:flash'?s )?", re.I)


def _at_that_power(facts: list[Fact], text: str) -> list[Fact]:
    """"my flash at quarter power has a guide number of 14 metres", "at half power the gn is 28 m": said as one thing, the number is that power's (contract 18)."""
    powers, guides = [f for f in facts if f.quantity == "power"], [f for f in facts if f.quantity == "guide_number"]
    if len(powers) != 1 or len(guides) != 1 or guides[0].at_power is not None or powers[0].bad or not 0 < powers[0].value < 1:
        return facts
    power, guide = powers[0], guides[0]
    if power.end > guide.start or not _HAS_SO_MUCH.fullmatch(text, power.end, guide.start) or _LEFT_AS_ASKED.search(text[: power.start]):
        return facts
    return [replace(f, at_power=power.value) if f is guide else f for f in facts]


_LEFT_AS_ASKED = Pattern(r"\b(?:what|which|how)\b[^.?!;]*$", re.I)


_BEING_FOR = Pattern(r"\s*(?:is |was |being |quoted |given |rated )?(?:at|for|on)\s*", re.IGNORECASE)


def _speed_of_its_own(facts: list[Fact], text: str) -> list[Fact]:
    """"what guide number at ISO 400 if it's 40 m at ISO 100": the speed said with the number is the one it is for."""
    speeds = [f for f in facts if f.quantity == "film_speed" and not f.bad]
    if len(speeds) != 2:
        return facts
    guides = [f for f in facts if f.quantity == "guide_number"] or [f for f in facts if f.quantity == "distance" and f.unit in ("ft", "m") and _GUIDE_BEFORE.search(text) and not any(g.quantity == "aperture" for g in facts)]
    if len(guides) != 1 or guides[0].at_iso is not None or not speeds[0].end <= guides[0].start or not _BEING_FOR.fullmatch(text[guides[0].end : speeds[1].start]):
        return facts
    value = guides[0].value / LENGTH[guides[0].unit] if guides[0].quantity == "distance" else guides[0].value
    return [replace(f, quantity="guide_number", value=value, at_iso=speeds[1].value, end=speeds[1].end, said=text[f.start : speeds[1].end]) if f is guides[0] else f for f in facts if f is not speeds[1]]


def _full_power_guide(facts: list[Fact], text: str) -> list[Fact]:
    """"its full power guide number is 120 feet": full is what the number is for, not what is set."""
    powers = [f for f in facts if f.quantity == "power"]
    if len(powers) < 2:
        return facts
    return [f for f in facts if not (f.quantity == "power" and f.unit == "full" and patterns.match(r"^(?:[\s-]+power)?\s+(?:gn|guide)\b", text[f.end :], re.IGNORECASE))]


_AND_ITS_SPEED = Pattern(r"\s*,?\s*(?:(?:at|on|for|with) )?(?:(?:its )?full(?: power)?|(?:half|quarter|1/\d+) power)(?: and|,| with| at)? (?:(?:at|on|with|for) )?", re.I)
"""Between a guide number and the film speed that it is quoted for, the power that it is quoted for: "110 feet at full power and ISO 100"."""


def _speed_after_power(facts: list[Fact], text: str) -> list[Fact]:
    """"guide number 110 feet at full power and ISO 100": quoted for both, where another film is loaded."""
    guides = [f for f in facts if f.quantity == "guide_number" and f.at_iso is None]
    speeds = [f for f in facts if f.quantity == "film_speed" and not f.bad]
    if len(guides) != 1 or len(speeds) < 2:
        return facts
    own = next((f for f in speeds if guides[0].end <= f.start and _AND_ITS_SPEED.fullmatch(text, guides[0].end, f.start)), None)
    if own is None:
        return facts
    return [replace(f, at_iso=own.value, end=own.end, said=text[f.start : own.end]) if f is guides[0] else f for f in facts if f is not own]


_TIMES = Pattern(r"\s*(?:times|fold)\b(?! (?:at|from) )", re.I)


def _so_many_times(facts: list[Fact], text: str) -> list[Fact]:
    """"is the guide number 1.7 times", "a film speed four times as high": how many times it is, and not what it is."""
    return [replace(f, quantity="times", unit="", of="", cue="") if f.quantity in ("guide_number", "film_speed") and _TIMES.match(text, f.end) else f for f in facts]


_GUIDE_GOES = Pattern(r"\b(?:gns?|guide(?: ?numbers?| nos?\.?)?)(?! (?:at|of|for|in) \d)(?: (?:climb|rise|rose|go|went|grow|jump|drop|fall|fell|sink|sank|shrink|shrank|chang|mov|com|swing|var|range|run|increas|decreas)\w*)?(?: (?:up|down|back|away|again))?(?: (?:from|between))? ?$", re.IGNORECASE)


def _spanned(facts: list[Fact], text: str) -> list[Fact]:
    """"the guide number climbs from 28 to 40 metres": two guide numbers, and no way from one place to another."""
    out: list[Fact] = []
    for fact in facts:
        if fact.quantity == "length_range" and fact.unit in ("m", "ft") and _GUIDE_GOES.search(_near(text, fact)) and math.isfinite(fact.other):
            first = re.match(r"[\d.,]+", fact.said)
            at = fact.start + (first.end() if first else max(1, len(fact.said) // 2))
            sizes = {"unit": fact.unit, "of": "", "cue": "", "other": math.nan}
            out.append(replace(fact, quantity="guide_number", value=fact.value / LENGTH[fact.unit], end=at, said=text[fact.start : at], **sizes))
            out.append(replace(fact, quantity="guide_number", value=fact.other / LENGTH[fact.unit], start=at, said=text[at : fact.end], **sizes))
        else:
            out.append(fact)
    return out


STEPS: Steps = (
    (_spanned, frozenset({"length_range"})),
    (_speed_after_power, frozenset({"guide_number"})), (_so_many_times, frozenset({"guide_number", "film_speed"})),
    (_in_ordinary_sync, frozenset({"sync", "guide_number"})), (_the_other, frozenset({"guide_number"})), (_fallen, frozenset({"modifier"})), (_lengths_of_flashes, frozenset({"distance", "gap"})),
    (_measured_at, frozenset({"guide_number"})), (_at_that_power, frozenset({"power"})), (_quoted_for, frozenset({"guide_number"})), (_unit_after_condition, frozenset({"guide_number"})),
    (_power_of_its_own, frozenset({"power"})), (_speed_of_its_own, frozenset({"film_speed"})), (_full_power_guide, frozenset({"power"})),
)
"""Lengths that are guide numbers made so, and the conditions a guide number is quoted for."""


_INCLUDED = Pattern(
    r"\balready (?:includ|count|allow|reckon|subtract|deduct|built|factored)\w*|\b(?:includes|including|allows for|allowing for|accounts for) (?:the|my|that|its) (?:\w+ )?(?:box|softbox|umbrella|brolly|diffuser|dome|gel|cloth|scrim|loss)\b"
    r"|\b(?:measured|tested|found) (?:through|with|in) (?:the|my|that) (?:\w+ )?(?:box|softbox|umbrella|brolly|diffuser|dome|gel|cloth|scrim)\b", re.I)
_BARE_TOO = Pattern(r"\b(?:bare|without|naked|doesn't|does not|isn't|not)\b", re.I)


def with_the_losses_in_it(facts: list[Fact], text: str) -> list[Fact]:
    """"the guide number already includes the softbox": what it takes is not taken again."""
    if not any(f.quantity in ("modifier", "loss") for f in facts) or sum(f.quantity == "guide_number" for f in facts) != 1:
        return facts
    if sum(f.quantity == "modifier" for f in facts) > 1 or sum(f.quantity == "loss" for f in facts) > 1 or any(f.quantity == "aperture" for f in facts) or not _INCLUDED.search(text) or _BARE_TOO.search(text):
        return facts
    return [replace(f, quantity="remark") if f.quantity == "loss" else f for f in facts if f.quantity != "modifier"]
