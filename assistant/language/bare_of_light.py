"""Bare numbers of the light that is wanted: "exposed at eight", "I want it to drop 4"."""

from __future__ import annotations

import re

from assistant.language.bare import Bare
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.scales import is_aperture_mark
from assistant.units import LENGTH

_EXPOSED = Pattern(r"\b(?:expos(?:ed|ure)|work(?:ing)?|shoot(?:ing)?)(?: (?:is|it|her|him|them|the \w+))? (?:at|for|on) $", re.I)
_NO_MARK = Pattern(r"\s*(?:feet|foot|ft|m\b|met|cm|mm|stops?|flash|pops?|%|x\b|times|iso|asa|hz|sec|s\b|to\b|ev\b|people|o'clock)", re.I)


def exposed_at(n: Bare) -> Fact | None:
    """"the subject is exposed at eight": the f-number that the lens is set to."""
    told = is_aperture_mark(n.mark) and 1.4 <= n.mark <= 45 and n.kinds.isdisjoint(("aperture", "guide_number")) and _EXPOSED.search(n.text[max(0, n.fact.start - 40) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if told and not _NO_MARK.match(n.text[n.fact.end :]) else None


_TO_DROP = Pattern(r"\b(?:drop|fall|lose|go down|be down|differ|come down|dim) (?:off )?(?:by )?(?:only |just |about )?$", re.I)


def drop_wanted(n: Bare) -> Fact | None:
    """"the paper drops two stops, I want it to drop 4": stops as well."""
    said = 0 < n.value <= 8 and not n.kinds.isdisjoint(("loss", "stops", "relation")) and _TO_DROP.search(n.text[max(0, n.fact.start - 32) : n.fact.start])
    return n.of("stops", unit="", of="", cue="want") if said and not _NO_MARK.match(n.text[n.fact.end :]) else None


_OFF_AT = Pattern(r"\b(?:over|under|off|out|hot|dark|bright|up|down|above|below)(?: is it| am i| will it be| are they)? at (?:about )?$", re.I)
_RIGHT_AT = Pattern(r"\b(?:set|right|correct|exposed|spot on|worked out)\b[^.?!\d]{0,24}\b(?:at|for) (?:about |exactly )?$", re.I)


def place_asked(n: Bare) -> Fact | None:
    """"set for 12 feet, how much over at 9 and how much under at 16": places too, in the unit of the one it is right for."""
    right = next((f for f in n.facts if f.quantity == "distance" and f.unit in LENGTH and f.end <= n.fact.start and _RIGHT_AT.search(n.text[: f.start])), None)
    if right is None or n.value <= 0 or n.fact.bad or _NO_MARK.match(n.text[n.fact.end :]) or not _OFF_AT.search(n.text[max(0, n.fact.start - 40) : n.fact.start]):
        return None
    return n.of("distance", value=n.value * LENGTH[right.unit], unit=right.unit, of="")


_LIT = Pattern(r"\b(?:windows?|ambient|daylight|sun(?:light)?|sky|room|hall|house lights?|stage(?: lights?)?|background|scene|flash|strobe|gun|fill|street|bar|church|porch|doorway|lamps?)(?: light| outside| alone| by itself| on (?:its|their) own| only| itself)*(?:(?<=alone)|(?<=by itself)|(?<=its own)| reads?| meters?| metered| says?| gives?| measures?| shows?| comes (?:in|out))(?: about| just| only| me| at)* $", re.I)


def light_reads(n: Bare) -> Fact | None:
    """"window reads 4 at a sixtieth, flash on its own reads 8": readings, where a time is told and nothing is measured out."""
    told = is_aperture_mark(n.mark) and 1 <= n.mark <= 45 and "shutter" in n.kinds and n.kinds.isdisjoint(("guide_number", "distance")) and _LIT.search(n.text[max(0, n.fact.start - 48) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if told and not _NO_MARK.match(n.text[n.fact.end :]) else None


RULES = (exposed_at, drop_wanted, place_asked, light_reads)
