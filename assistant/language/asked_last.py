"""What is asked by its name where the sentence ends: "so the shutter must be what", "that makes the aperture…", "what's the time at f/5.6".

The rules that read a question know a name with its question word before it; here it is put so. Figures that lack
their mark or their unit beside the words that say which they are get it as well: "wide open at 2.8", "each pop eats 400 of them".
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_NAME = r"(?:(?:new |right |correct |exposure )*(?:shutter(?: (?:speed|time))?|exposure time|time|aperture|f-?(?:stop|number)|lens|ring|opening|power|guide number|gn|distance))"
_MUST_BE = r"(?:(?:then |now )?(?:(?:must|should|has to|have to|needs to|ought to|will|would|is to) (?:then |now )?(?:be|go to|come to|read|get|become)|is|becomes?|comes? to|comes out (?:at|as)|goes (?:to|on|at)|works out (?:at|as|to be)|be)(?: then| now)?)"
_LAST = Pattern(rf"(?P<before>^|[.,;:!–-]\s+|\b(?:so|then|and|now|but) )(?P<makes>(?:that |which |this )?(?:makes|means|gives|leaves) )?(?:my |the |its )?(?P<name>{_NAME}) (?:(?P<is>{_MUST_BE})(?P<what> (?:what|where|how (?:much|long|many seconds)))?|(?P<only>what))(?P<end>\W*)$", re.I)
"""The name of a setting at the end, and after it a "what", or nothing but what breaks off."""
_MAKES_WHAT = Pattern(rf"(?P<before>^|[.,;:!–-]\s+|\b(?:so|then|and|now) )(?:that |which |this )(?:makes|means|gives|leaves) (?:my |the |its )?(?P<name>{_NAME}) ?(?:…|\.\.+)\s*$", re.I)
_ASKS = Pattern(r"\b(?:what|which|how|why|when|where|who)\b", re.I)
_FIGURES_OF_LIGHT = Pattern(r"\b(?:ev|lv) ?-?\d|\b(?:iso|asa|gn) ?\d|\bguide number|\bf ?/? ?\d|\b1/\d|\bfilm\b|\bstops?\b", re.I)
_OPENING = ("lens", "ring", "opening")
_BREAKS_OFF = ("…", "..", "?", "-", "–")


_THE_TIME = Pattern(r"\b(?:what(?:['’]?s| is| would be| will be| must be) the|(?<!any )(?<!same )(?:(?<=[.?!;:,] )|^)(?:so |and |then )?(?:the )?)(?: ?new| ?exposure)* ?time (?=(?:at|on|with|through) (?:f ?/? ?\d|iso ?\d|asa ?\d|\d{2,4} film))", re.I)
"""Of an exposure at a setting, and not of the day."""
_METERS = Pattern(r"\b1/\d|\b\d+(?:\.\d+)? ?(?:s|sec|secs|seconds?|minutes?)\b|\bev ?-?\d", re.I)

_WIDE_OPEN_AT = Pattern(r"\bwide open(?P<at>,? (?:(?:at|is|being|means|=|to)|(?:which|that)(?:'s| is))? ?)(?:about )?(?P<mark>1|1\.2|1\.4|1\.8|2|2\.5|2\.8|3\.5|4|4\.5|5\.6|6\.3|8|11)(?![\d./:]*\d)(?! ?(?:m|ft|feet|foot|metres?|meters?|yards?|paces|mm|s|sec|seconds?|stops?|pops?|flash(?:es)?|thirds?|times|%)\b)", re.I)
_OF_THEM = Pattern(r"\b(?P<many>\d[\d,.]*) of (?:them|those|these|it|that)\b", re.I)
_ENERGY = Pattern(r"\b\d[\d,.]* ?(?P<unit>joules?|watt[- ]?seconds?|ws|j)\b", re.I)
_EACH = Pattern(r"\b(?:each|every|a|one|per|single|full) (?:\w+ )?(?:pop|flash|burst|shot|firing|discharge)\b", re.I)
_UNSPOILT = Pattern(r",? (?:without|and not|but not|and still not) (?:badly |ever )?(?:over|under)[- ]?(?:expos|cook)(?:e|ing)(?: (?:it|anything|the (?:film|frame|picture|scene|negative|sky|highlights)))?(?=\W*$)", re.I)
_END_WANTED = Pattern(r"\b(?:widest|largest|biggest|slowest|longest)\b[^.?!]{0,40}$", re.I)
_HELD = Pattern(r"\b(?P<meter>meter|light meter|lightmeter|flash meter|flashmeter) (?:(?:here )?in (?:my|his|her|the) hands?|in hand|round my neck|in my pocket)(?= (?:says|reads|gives|shows|said|read|gave|showed|has)\b)", re.I)
"""Where the meter is held bears on nothing."""


def asked_last(text: str) -> str:
    """The text with its question word before the name of what is wanted.

    >>> asked_last("EV 11 at ISO 100, f/8, so the shutter must be what")
    'EV 11 at ISO 100, f/8, so what shutter?'
    >>> asked_last("EV 9, wide open at 2.8"), asked_last("12000 joules, a pop takes 400 of them")
    ('EV 9, wide open at f/2.8', '12000 joules, a pop takes 400 joules')
    """
    said = _WIDE_OPEN_AT.sub(r"wide open\g<at>f/\g<mark>", text) if _WIDE_OPEN_AT.may_match(text) else text
    said = _HELD.sub(r"\g<meter>", said) if _HELD.may_match(said) else said
    said = _in_energy(said) if " of " in said and _EACH.may_match(said) else said
    said = _THE_TIME.sub("what time ", said, 1) if _THE_TIME.may_match(said) and _METERS.search(said) else said
    return _named_last(_without_spoiling(said))


def _named_last(text: str) -> str:
    """"… so the lens is…", "…, shutter what?"; a question that was put already is left as it is."""
    found = _LAST.search(text) if _LAST.may_match(text) else None
    found = found or (_MAKES_WHAT.search(text) if _MAKES_WHAT.may_match(text) else None)
    if found is None or _ASKS.search(text[: found.start("name")]) or "?" in text[: found.start("name")] or not _FIGURES_OF_LIGHT.search(text):
        return text
    said = found.groupdict()
    if said.get("is") and not said.get("what") and not any(mark in said["end"] for mark in _BREAKS_OFF):
        return text
    name = said["name"].lower()
    wanted = "aperture" if name.endswith(_OPENING) else "shutter" if name.endswith("time") else said["name"]
    return f"{text[: found.end('before')]}what {wanted}?"


def _in_energy(text: str) -> str:
    """"the battery holds 12000 joules and each pop eats 400 of them": joules, and no pops."""
    told = _ENERGY.search(text)
    found = _OF_THEM.search(text, told.end()) if told is not None else None
    if told is None or found is None or not _EACH.search(text, told.end()):
        return text
    return f"{text[: found.start()]}{found['many']} {told['unit']}{text[found.end() :]}"


def _without_spoiling(text: str) -> str:
    """"the widest f-stop I can use without overexposing": the end that still is right, which is what "can" says."""
    found = _UNSPOILT.search(text) if _UNSPOILT.may_match(text) else None
    return text if found is None or not _END_WANTED.search(text[: found.start()]) else text[: found.start()] + text[found.end() :]
