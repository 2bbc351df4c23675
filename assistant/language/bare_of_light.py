"""Bare numbers of the light that is wanted: "exposed at eight", "I want it to drop 4"."""

from __future__ import annotations

import re

from assistant.language.bare import UNIT_NEXT, Bare
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.scales import is_aperture_mark
from assistant.units import LENGTH

_EXPOSED = Pattern(r"\b(?:expos(?:ed|ure)|work(?:ing)?|shoot(?:ing)?)(?: (?:is|it|her|him|them|the \w+))? (?:at|for|on) $", re.I)


def exposed_at(n: Bare) -> Fact | None:
    """"the subject is exposed at eight": the f-number that the lens is set to."""
    told = is_aperture_mark(n.mark) and 1.4 <= n.mark <= 45 and n.kinds.isdisjoint(("aperture", "guide_number")) and _EXPOSED.search(n.text[max(0, n.fact.start - 40) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if told and not UNIT_NEXT.match(n.text[n.fact.end :]) else None


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


RULES = (exposed_at, drop_wanted, place_asked, light_reads, more_stops, place_as_well, small_format)
