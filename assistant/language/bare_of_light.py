"""Bare numbers of the light that is wanted: "exposed at eight", "I want it to drop 4"."""

from __future__ import annotations

import re

from assistant.language.bare import CLAUSE_ENDS, COMMON_FILMS, UNIT_NEXT, Bare
from assistant.language.segments import is_role
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.scales import is_aperture_mark
from assistant.units import LENGTH

_EXPOSED = Pattern(r"\b(?:expos(?:ed|ure)|work(?:ing)?|shoot(?:ing)?)(?: (?:is|it|her|him|them|the \w+))? (?:at|for|on) $", re.I)


def exposed_at(n: Bare) -> Fact | None:
    """"the subject is exposed at eight": the f-number that the lens is set to."""
    told = is_aperture_mark(n.mark) and 1.4 <= n.mark <= 45 and n.kinds.isdisjoint(("aperture", "guide_number")) and _EXPOSED.search(n.text[max(0, n.fact.start - 40) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if told and not UNIT_NEXT.match(n.text[n.fact.end :]) else None


_MARK_AT = Pattern(r"f ?/? ?\d+(?:\.\d+)?(?: and (?:a|two) (?:half|thirds?))?,? (?:at|on) (?:about )?$", re.I)
_OF_A_PLACE = Pattern(r"\s*-?(?:away|off|out|back|from|paces?|steps?|yards?|th\b|ths\b|rd\b)", re.I)
_ANOTHER_FILM = Pattern(r"\b(?:film|roll|stock|neg|slide)(?:'s| is| are| says| in (?:it|the camera) is)? (?:only )?(?:iso |asa )?\d{2,4}\b|\b\d{2,4} (?:film|neg|slide|stock)\b|\b(?:load(?:ed|ing)?|i have|i've(?: got)?|with) (?:iso |asa )?\d{2,4}\b", re.I)
_NO_TIMES = frozenset({32, 64, 100, 160, 200, 320, 400, 640, 800, 1600, 3200})


def film_of_the_mark(n: Bare) -> Fact | None:
    """"tested f/8 at 200 for this set; the film's 50": the speed that the mark was found at, whatever is said after it."""
    plain = n.value in _NO_TIMES and n.kinds.isdisjoint(("distance", "shutter", "guide_number", "power")) and _MARK_AT.search(n.text[max(0, n.fact.start - 32) : n.fact.start])
    if not plain or UNIT_NEXT.match(n.text[n.fact.end :]) or _OF_A_PLACE.match(n.text[n.fact.end :]):
        return None
    return n.of("film_speed", of="") if _ANOTHER_FILM.search(n.text[n.fact.end :]) or _ANOTHER_FILM.search(n.text[: n.fact.start]) else None


_TO_DROP = Pattern(r"\b(?:drop|fall|lose|go down|be down|differ|come down|dim) (?:off )?(?:by )?(?:only |just |about )?$", re.I)


def drop_wanted(n: Bare) -> Fact | None:
    """"the paper drops two stops, I want it to drop 4": stops as well."""
    said = 0 < n.value <= 8 and not n.kinds.isdisjoint(("loss", "stops", "relation")) and _TO_DROP.search(n.text[max(0, n.fact.start - 32) : n.fact.start])
    return n.of("stops", unit="", of="", cue="want") if said and not UNIT_NEXT.match(n.text[n.fact.end :]) else None


_OFF_AT = Pattern(r"\b(?:over|under|off|out|hot|dark|bright|up|down|above|below)(?: is it| am i| will it be| are they)? at (?:about )?$", re.I)
_RIGHT_AT = Pattern(r"\b(?:set|right|correct|exposed|spot on|worked out)\b[^.?!\d]{0,24}\b(?:at|for) (?:about |exactly )?$", re.I)


def place_asked(n: Bare) -> Fact | None:
    """"set for 12 feet, how much over at 9 and how much under at 16": places too, in the unit of the one it is right for."""
    if n.value <= 0 or n.fact.bad or not _OFF_AT.search(n.text[max(0, n.fact.start - 40) : n.fact.start]) or UNIT_NEXT.match(n.text[n.fact.end :]):
        return None
    right = next((f for f in n.facts if f.quantity == "distance" and f.unit in LENGTH and f.end <= n.fact.start and _RIGHT_AT.search(n.text[max(0, f.start - 60) : f.start])), None)
    return n.of("distance", value=n.value * LENGTH[right.unit], unit=right.unit, of="") if right is not None else None


_LIT = Pattern(r"\b(?:windows?|ambient|daylight|sun(?:light)?|sky|room|hall|house lights?|stage(?: lights?)?|background|scene|flash|strobe|gun|fill|street|bar|church|porch|doorway|lamps?)(?: light| outside| alone| by itself| on (?:its|their) own| only| itself)*(?:(?<=alone)|(?<=by itself)|(?<=its own)| reads?| meters?| metered| says?| gives?| measures?| shows?| comes (?:in|out))(?: about| just| only| me| at)* $", re.I)


_READS = Pattern(r"\b(?:reads?|meters?|metered|says?|measures?)(?: about| just| only)? $", re.I)
_AT_A_TIME = Pattern(r"\s*(?:at|@|and)\s*(?:1/\d|the same (?:speed|time|shutter)|(?:an? |one )?(?:\w+[ -]){0,4}?\w+(?:th|ths)\b|(?:half|quarter|one|two) (?:a )?seconds?)", re.I)


def light_reads(n: Bare) -> Fact | None:
    """"window reads 4 at a sixtieth, flash on its own reads 8": readings, where a time is told and nothing is measured out."""
    plain = is_aperture_mark(n.mark) and 1 <= n.mark <= 45 and "shutter" in n.kinds and n.kinds.isdisjoint(("guide_number", "distance"))
    before = n.text[max(0, n.fact.start - 48) : n.fact.start]
    told = plain and (_LIT.search(before) or _READS.search(before) and _AT_A_TIME.match(n.text[n.fact.end :]))
    return n.of("aperture", value=n.mark, of="") if told and not UNIT_NEXT.match(n.text[n.fact.end :]) else None


_MORE_STOPS = Pattern(r"\s*(?:whole |full )?(?P<way>more|extra|further|additional|fewer|less) (?:whole |full )?stops?\b", re.I)


def more_stops(n: Bare) -> Fact | None:
    """"I need two more stops on the child"."""
    found = _MORE_STOPS.match(n.text[n.fact.end :]) if 0 < n.value <= 12 else None
    return n.of("stops", unit="", of="", cue="less" if found["way"].lower() in ("fewer", "less") else "more") if found else None


_IS = Pattern(r"(?P<verb>\b(?:is|are|was|were|stands?|sits?|kneels?)(?: at)?|'s(?: at)?|\b(?:at|for|from))\s+(?:about |only |just |roughly |some )?$", re.I)
_AND_ANOTHER = Pattern(r"(?:\s+(?:away|off|back))?(?:\s+(?:from|to) (?:the|my|that) (?:\w+ )?(?:flash|light|lamp|strobe|head|softbox))?\W*(?:\b(?:and|but|while|then|so)\b\W*)*(?:(?:the|his|her|my|their|its|your) )?(?:\w+ ){0,3}?\w*$", re.I)
_PLACE_ENDS = Pattern(r"\s*(?:away|back|off)?(?:\s+from (?:it|there|the (?:flash|light|lamp)))?\s*(?:$|[.,;:?!](?!\d)|\b(?:and|so|but|what|how|same|which)\b)", re.I)
_NO_PLACE = Pattern(r"\b(?:lens|ring|aperture|iso|asa|film|shutter|f|f-?stop|meter|power|reads?|key|fill|rim|gn|guide|pops?|count|frames?)\b", re.I)


def place_as_well(n: Bare) -> Fact | None:
    """"the bride's 6 feet away and the groom is 7", "f-stop for 18 feet, then for 25": said as the place before was said, in its unit."""
    before = next((f for f in reversed(n.facts) if f.end <= n.fact.start), None)
    if before is None or before.quantity != "distance" or before.unit not in LENGTH or before.bad or n.fact.bad or "guide_number" in n.kinds:
        return None
    gap = n.text[before.end : n.fact.start]
    here, there = _IS.search(gap), _IS.search(n.text[max(0, before.start - 40) : before.start])
    right = there is not None and here is not None and _RIGHT_AT.search(n.text[: before.start]) is not None  # "set for 10 feet, uncle is at 14"
    if here is None or there is None or len(gap) > 80 or not right and _kind_of(here["verb"]) != _kind_of(there["verb"]) or not _AND_ANOTHER.match(gap[: here.start()]) or _NO_PLACE.search(gap):
        return None
    size = n.value * LENGTH[before.unit] / before.value if before.value else 0.0
    ends = 0.2 < size < 5 and size != 1 and not UNIT_NEXT.match(n.text[n.fact.end :]) and _PLACE_ENDS.match(n.text[n.fact.end :])
    return n.of("distance", value=n.value * LENGTH[before.unit], unit=before.unit, of="", cue="") if ends else None


def _kind_of(verb: str) -> str:
    """"is" and "'s" and "stands at" place alike; "for" only as "for" does."""
    word = verb.lower().split()[0]
    return word if word in ("at", "for", "from") else "is"


def small_format(n: Bare) -> Fact | None:
    """"my 645 with the cloth shutter": a size of film, and no figure of the light."""
    return n.of("format", value=0.0, unit="6x4.5", of="") if n.value == 645 and n.fact.said[:1].isdigit() else None


_LIGHT_OR_LIT = Pattern(
    r"\b(?:(?P<key>key|main)|(?P<fill>fill)|face|cheek|nose|sitter|subject|bride|paper|wall|sheet|curtain|back(?:drop|ground|cloth)|bg|white|sky|daylight|sun|windows?|ambient|room|rim|hair(?: ?light)?|kicker|flash|strobe|gun|heads?|lights?|lens|ring|each|both|(?:one|the other|another|the first|the second|the third)(?= (?:at|reads?|gives?|meters?|alone)\b))"
    r"(?: light| lights| head| itself| (?:at|on) full(?: power)?| alone| only| by itself| by themselves| on its own| on (?:the|her|his) (?:face|cheek|nose|sitter|subject)| (?:the |her |his )?same (?:face|cheek|side|spot|place))*,?"
    r"(?: (?:is|are|reads?|meters?|metered|says?|shows?|gives?|measures?|comes (?:in|out)|set|sits|stands|stays|right))*(?: about| just| only| at| on)*[:=]? *$|\b(?:stay|keep|stick|remain|still|stuck)(?:ing|s)?(?: it| the (?:lens|ring)| right)*(?: on| at| to| with) $", re.I)
_SKY = Pattern(r"\b(?:sun|sunny|sunlight|sunshine|overcast|cloud|clouds|cloudy|hazy|shade|daylight)\b", re.I)
_ALONE_AFTER = Pattern(r"\s+(?:(?:and )?(?:the |her |his )?(?:key|main|fill|rim|hair|face|wall|backdrop|background|paper|flash)\b|alone|by itself|on its own|bare|from|on the|on (?:her|him|it|them|my|that|its)\b|there|too|as well|through|with|without|at (?:full|half|quarter|1/|a |an |my|the same))", re.I)
_FOR_A_LIGHT = Pattern(r"\s*(?:for|on|from) (?:the |my )?(?:key|main|(?P<fill>fill))\b(?! (?:side|of))", re.I)
_EACH_OF_THEM = Pattern(r"\s*(?:each|apiece|a piece|per (?:head|light|lamp|flash))\b", re.I)
_ADDED_UP = Pattern(r"\b(?:together|both|all|combined|total|add\w*|sum)\b", re.I)
_OF_LIGHT_ALONE = frozenset({"number", "aperture", "relation", "stops", "ratio", "count", "shutter", "film_speed", "loss", "remark", "modifier", "power", "power_down", "signed", "sync", "filter_loss", "factor"})


def reads_beside(n: Bare) -> Fact | None:
    """"key 11, fill 5.6", "face at 8, wall two stops hotter": a reading, where no place and no guide number is told but another figure of the light is."""
    if n.fact.unit or n.mark == 2 or not n.kinds <= _OF_LIGHT_ALONE or not is_aperture_mark(n.mark) or not 1.4 <= n.mark <= 45:  # a two counts lights more often
        return None
    end = n.text[n.fact.end : n.fact.end + 64]
    if "count" in n.kinds and _EACH_OF_THEM.match(end) and _ADDED_UP.search(end):
        return n.of("aperture", value=n.mark, unit="", of="")
    light = _FOR_A_LIGHT.match(end)
    if light is not None and _beside(n):
        return n.of("aperture", value=n.mark, unit="", of="fill" if light["fill"] else "key")
    found = _LIGHT_OR_LIT.search(n.text[max(0, n.fact.start - 64) : n.fact.start])
    if found is None or "guide_number" in n.names or n.reads and any(is_role(i) for i in n.before) or UNIT_NEXT.match(end) or not (CLAUSE_ENDS.match(end) or _ALONE_AFTER.match(end)) or not _beside(n):
        return None
    return n.of("aperture", value=n.mark, unit="", of="key" if found["key"] else "fill" if found["fill"] else "")


def _beside(n: Bare) -> bool:
    """Whether another figure of the light is told."""
    if not n.kinds.isdisjoint(("aperture", "relation", "ratio", "shutter", "count")):
        return True
    other = next((f for f in n.facts if f is not n.fact and f.quantity == "number" and is_aperture_mark(f.value)), None)
    return other is not None or _SKY.search(n.text) is not None and any(f.quantity == "film_speed" or f.quantity == "number" and f.value in COMMON_FILMS for f in n.facts)


_AT_A_PLACE = Pattern(r"\b(?:key|main|fill|rim|hair|kicker|background|backdrop)(?: light| flash| head)?(?:'s| is| stands| sits| goes| placed| set)*(?: up| out)? at (?:about )?$", re.I)


def place_like_the_next(n: Bare) -> Fact | None:
    """"the key is at 8, the fill at 11 feet": a place as well, in the unit of the next light's."""
    if "distance" not in n.kinds or not n.kinds.isdisjoint(("aperture", "ratio")) or n.value <= 0 or n.fact.bad or not _AT_A_PLACE.search(n.text[max(0, n.fact.start - 48) : n.fact.start]) or UNIT_NEXT.match(n.text[n.fact.end :]):
        return None
    after = next((f for f in n.facts if f.start >= n.fact.end), None)
    placed = after is not None and after.quantity == "distance" and after.unit in LENGTH and after.of and _AT_A_PLACE.search(n.text[n.fact.end : after.start])
    return n.of("distance", value=n.value * LENGTH[after.unit], unit=after.unit) if placed and after is not None else None


_BEHIND_AT = Pattern(r"\b(?:[a-z]+ behind(?: (?:them|her|him|it|us|those))?|(?:back|rear) (?!to\b|by\b|up\b|off\b|at\b|another\b)[a-z]+)(?: is| are|'s|,)*(?: at)?(?: about| only| just)? $", re.I)
_A_WALL = Pattern(r"\b(?:wall|backdrop|background|paper|curtain|sheet|cloth|seamless|screen|light|lamp|flash|head|camera|it) behind\b", re.I)
_THE_FRONT = Pattern(r"\b(?:front|from (?:the|my) (?:flash|light|lamp|strobe|head))\b", re.I)


def row_behind(n: Bare) -> Fact | None:
    """"bridesmaids in front ten feet from the flash, grannies behind at fourteen", "front lads four metres, back lads six": in the unit of those in front."""
    before = n.text[max(0, n.fact.start - 48) : n.fact.start]
    if "distance" not in n.kinds or n.value <= 0 or n.fact.bad or not _BEHIND_AT.search(before) or _A_WALL.search(before) or UNIT_NEXT.match(n.text[n.fact.end :]) or not CLAUSE_ENDS.match(n.text[n.fact.end :]):
        return None
    front = next((f for f in reversed(n.facts) if f.end <= n.fact.start), None)
    near = front is not None and front.quantity == "distance" and front.unit in LENGTH and front.of in ("", "front") and _THE_FRONT.search(n.text[max(0, front.start - 40) : n.fact.start])
    return n.of("distance", value=n.value * LENGTH[front.unit], unit=front.unit, of="back") if near and front is not None else None


_GIVEN = Pattern(
    r"\b(?:leaflet|(?:data ?)?sheet|chart|table|booklet|instructions|makers?|paper|film|curve|graph|card)(?: (?:for|of|in|with|from|on) (?:the|this|that|my) \w+)? (?:says?|said|wants?|asks? for|calls? for|makes? (?:it|that)|turns? (?:it|that) into|gives?)(?: (?:to |i should |you should |me to )?(?:give|expose(?: (?:it|that))?(?: for)?|use|hold (?:it )?for|it'?s|that'?s))?(?: it| about| more like)? $"
    r"|\b(?:metered|metering|meter)\b[^.?!]{0,24}\b(?:sec|seconds?|s),? (?:and|but|then) (?:i |we )?(?:gave|give|used?|exposed (?:it )?for|held (?:it )?for|opened for)(?: it)? $", re.I)
"""Right before the time that a film is given for the one that was metered."""


def given_for_metered(n: Bare) -> Fact | None:
    """"metered 10 seconds, but the leaflet says to give 40": seconds as well."""
    metered = [f for f in n.facts if f.quantity == "shutter" and f.end <= n.fact.start and f.value >= 1]
    seconds = n.value * (60.0 if metered and metered[0].unit == "min" else 1.0)
    told = len(metered) == 1 and seconds > metered[0].value and _GIVEN.search(n.text[max(0, n.fact.start - 90) : n.fact.start])
    return n.of("shutter", unit=metered[0].unit, value=seconds, of="") if told and not UNIT_NEXT.match(n.text[n.fact.end :]) and CLAUSE_ENDS.match(n.text[n.fact.end :]) else None


RULES = (given_for_metered, exposed_at, film_of_the_mark, drop_wanted, place_asked, light_reads, more_stops, place_as_well, place_like_the_next, row_behind, small_format, reads_beside)
