"""Bare numbers known by the very words before or after them: "multiply by 2.5", "I want to be at 16", "its baffle another 1"."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.language.bare import CLAUSE_ENDS, COMMON_FILMS, UNIT_NEXT, Bare
from assistant.language.stop_words import LOSING, is_part
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.scales import is_aperture_mark

_LOSING = Pattern(rf"\b{LOSING}\s+(?:me |about |around |maybe |roughly |some |another |a further |off )*$", re.I)


_ANOTHER = Pattern(r"\b(?:another|a further|one more|plus)\s*$", re.I)


def another_lost(n: Bare) -> Fact | None:
    """"the softbox takes 1.5 stops and its baffle another 1": stops as well."""
    said = 0 < n.value <= 5 and "loss" in n.kinds and _ANOTHER.search(n.text[max(0, n.fact.start - 12) : n.fact.start])
    ends = said and patterns.match(r"\s*(?:[.,;?!](?!\d)|and\b|$)", n.text[n.fact.end :])
    return n.of("loss", unit="", of="") if ends else None


_PAINT_TAKES = Pattern(rf"\b(?P<surface>ceiling|wall|paint|plaster|card|board)(?: (?:itself|alone|there|paint))? {LOSING}(?: (?:me|about|around|maybe|roughly|another|off|up|say))*\s*$", re.I)
_ON_TOP = Pattern(r"\s*(?:on top|besides|as well|too|more)\b", re.I)


def paint_takes(n: Bare) -> Fact | None:
    """"the ceiling takes 2": stops, of the paint."""
    said = _PAINT_TAKES.search(n.text[max(0, n.fact.start - 60) : n.fact.start]) if 0 < n.value <= 5 else None
    after = n.text[n.fact.end : n.fact.end + 12]
    paint = said is not None and (CLAUSE_ENDS.match(after) or _ON_TOP.match(after))
    return n.of("loss", unit="wall" if said and said["surface"].lower() == "wall" else "ceiling", of="") if paint else None


_WHAT_IS_IT = Pattern(r"\b(?:whats|what'?s|what is|what would|what does|what will|make|makes)(?: it| that| the (?:guide|guide number|gn|number))?(?: be| become| come to| make it)? (?:at|for|on|with) $", re.I)


def guide_asked_at(n: Bare) -> Fact | None:
    """"guide 60 metres, that's at iso 400. so what is it at 100": a film, where nothing else is told beside the guide number."""
    plain = n.value in COMMON_FILMS and n.kinds <= {"guide_number", "film_speed", "gn_iso", "number", "place", "remark"} and {"guide_number", "film_speed"} <= n.kinds | ({"film_speed"} if "gn_iso" in n.kinds else set())
    asked = plain and _WHAT_IS_IT.search(n.text[max(0, n.fact.start - 40) : n.fact.start])
    return n.of("film_speed", of="", unit="") if asked and CLAUSE_ENDS.match(n.text[n.fact.end : n.fact.end + 12]) else None


_GUIDE_AT = Pattern(r"\b(?:guide|gn)\b[^.?!,;]{0,40}\d\s*(?:ft|feet|foot|m|metres?|meters?)?\s*(?:\b(?:at|for|on) |@ ?)$", re.I)


def guide_speed(n: Bare) -> Fact | None:
    """"eleven feet all told, the guide number is 88 feet at 100": the film it is for, where the distance is told otherwise."""
    said = n.value in COMMON_FILMS and n.value >= 50 and not n.kinds.isdisjoint(("distance", "path")) and _GUIDE_AT.search(n.text[max(0, n.fact.start - 70) : n.fact.start])
    return n.of("gn_iso", of="") if said and CLAUSE_ENDS.match(n.text[n.fact.end : n.fact.end + 12]) else None


_WITHIN = Pattern(r"\b(?:within|inside|no more than|at most|plus or minus|plus and minus|give or take)\s+(?:about |only |just )?$", re.I)
_WITHIN_ENDS = Pattern(r"\s*(?:$|[.,;:?!](?!\d)|\b(?:if|when|either|each|both|over|under|from|around|with|at|on)\b)", re.I)


def part_allowed(n: Bare) -> Fact | None:
    """"within a third if set at 9 feet": of a stop."""
    said = is_part(n.value) and n.kinds.isdisjoint(("stops", "power")) and _WITHIN.search(n.text[max(0, n.fact.start - 32) : n.fact.start])
    return n.of("stops", unit="", of="") if said and _WITHIN_ENDS.match(n.text[n.fact.end :]) else None


def part_lost(n: Bare) -> Fact | None:
    """"a screen losing a third", "grid takes 1 1/3": of a stop, or a stop and a part."""
    parted = is_part(n.value) or n.fact.unit == "mixed" and n.value < 5 and is_part(n.value % 1)
    if not parted or UNIT_NEXT.match(n.text[n.fact.end :]) or not _LOSING.search(n.text[: n.fact.start]) or patterns.match(r"\s*(?:of|the)\b", n.text[n.fact.end :].lower()):
        return None
    return n.of("loss", unit="", of="")


_WANTS = Pattern(r"\b(?:want\w*|need\w*|have|must|like)\b(?: (?:to|it|be|get|i|reach|up|me))* (?:at|to|reach|for)\s*$", re.I)
_NEEDS = Pattern(r"\b(?:needs?|needed|wants?|wanted|must have)(?: it)?(?: about)? $", re.I)
_A_POP_GAVE = Pattern(r"\b(?:one|a|each|1|single|every|lone) (?:full )?(?:pop|flash|burst|hit|bang)(?: (?:alone|by itself|here|there|on its own|(?:on|at|of) (?:the |my |her )?[a-z]+(?: [a-z]+)?))? (?:is|gives?|was|gave|reads?|makes?|says|meter(?:s|ed)|measure[sd]|comes to)(?: me| us)?(?: about)? (?:f ?/? ?)?\d", re.I)
"""What one pop gives; what is needed after it is an f-number as well: "one flash reads 8, need 32"."""
_MOUNTED = Pattern(r"\b(?:mount\w*|put\w*|us\w+|fit\w*|switch\w* to|chang\w* to|with)(?: on)? (?:an?|the|my)\s*$", re.I)
_ON_THE_CAMERA = Pattern(r"^\s*(?:is |mounted )?(?:on|onto) (?:the|my|that|this) (?:same )?(?:35 ?mm )?(?:camera|body)\b", re.I)
_COVERED = Pattern(r"\bcover\w*\b|\bcorners?\b|\bwhole (?:frame|picture)\b", re.I)


def wanted_mark(n: Bare) -> Fact | None:
    """"one flash gives 5.6 and I want to be at 16: how many": the f-number that is wanted."""
    lone = "aperture" in n.kinds and n.kinds.isdisjoint(("distance", "guide_number", "film_speed")) and is_aperture_mark(n.mark)
    before = n.text[: n.fact.start]
    if lone and _WANTS.search(before[-40:]) or is_aperture_mark(n.mark) and _NEEDS.search(before) and _A_POP_GAVE.search(before) and not UNIT_NEXT.match(n.text[n.fact.end :]):
        return n.of("aperture", value=n.mark, of="", cue="want")
    return None


def lens_mounted(n: Bare) -> Fact | None:
    """"the head covers a 35; if I mount a 24", "zoomed to 50, 85 on the camera": a lens, where it is asked what is covered."""
    sized = 10 <= n.value <= 600 and n.value == int(n.value) and _COVERED.search(n.text) is not None
    on = sized and (_MOUNTED.search(n.text[max(0, n.fact.start - 24) : n.fact.start]) or _ON_THE_CAMERA.match(n.text[n.fact.end :]))
    return n.of("focal_length", value=n.value / 1000, unit="mm", of="") if on else None


_A_POP_GIVES = Pattern(r"\b(?:one|a|each|single|every|lone) (?:full )?(?:pop|flash|burst|hit|bang)(?: (?:alone|by itself|here|there|on its own|(?:on|at|of) (?:the |my |her )?[a-z]+(?: [a-z]+)?))? (?:is|gives?|was|gave|reads?|makes?|says|meter(?:s|ed)|measure[sd]|comes to)(?: me| us)?(?: about)? $", re.I)


def of_a_pop(n: Bare) -> Fact | None:
    """"one pop gives me 5.6": what it reads, though another f-number follows."""
    return n.of("aperture", value=n.mark, of="") if is_aperture_mark(n.mark) and _A_POP_GIVES.search(n.text[max(0, n.fact.start - 40) : n.fact.start]) else None


_THAN = Pattern(r"(?:\s+(?:\w+ ){0,3}?than|,? or) (?:with |at |on |by )?(?:f/?)?$", re.I)


_ONLY_MARKS = frozenset({1.4, 2.8, 5.6})
"""Figures that nobody says of anything but the ring."""


def against_a_mark(n: Bare) -> Fact | None:
    """"more depth at 11 than at 5.6", "deeper at f/8 than 4": an f-number, held against one."""
    others = [f for f in n.facts if f.quantity == "aperture"] or [f for f in n.facts if f is not n.fact and f.quantity == "number" and f.value in _ONLY_MARKS]
    if len(others) != 1 or not is_aperture_mark(n.mark) or n.mark == others[0].value or UNIT_NEXT.match(n.text[n.fact.end :]):
        return None
    first, last = sorted((n.fact, others[0]), key=lambda f: f.start)
    return n.of("aperture", value=n.mark, of="") if first.end < last.start <= first.end + 24 and _THAN.fullmatch(n.text[first.end : last.start]) else None


_OF_TUBE = Pattern(r"[\s-]*of (?:extra |added |more |extension )?(?:tubes?|rings?|extension|draw|bellows)\b", re.I)


def so_much_tube(n: Bare) -> Fact | None:
    """"25 of tube on a 50": what is put between the lens and the camera, in millimetres, and no lens."""
    return n.of("extension", value=n.value / 1000, unit="mm", of="") if 5 <= n.value <= 1000 and _OF_TUBE.match(n.text, n.fact.end) else None


_MULTIPLIED = Pattern(r"\bmultipl\w+(?: (?:it|that|the \w+(?: \w+)?|by|your \w+))*? by (?:about |roughly )?$", re.I)


def multiplier(n: Bare) -> Fact | None:
    """"the leaflet says multiply by 2.5 at eight seconds": a factor, and no f-number."""
    return n.of("factor", of="", unit="") if n.value > 0 and _MULTIPLIED.search(n.text[max(0, n.fact.start - 48) : n.fact.start]) else None


_ON_THE_RING = Pattern(r"\b(?:ring|lens|aperture|iris|barrel)(?: (?:was|is|stood|stayed|sat|left|set))* (?:on|at|to)\s*$", re.I)


def on_the_ring(n: Bare) -> Fact | None:
    """"metered f/8, I left the ring on 9.5", "ring on 16, bellows out to life size": an f-number, beside another or close up."""
    told = is_aperture_mark(n.mark) and not n.kinds.isdisjoint(("aperture", "magnification")) and _ON_THE_RING.search(n.text[max(0, n.fact.start - 32) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if told and not UNIT_NEXT.match(n.text[n.fact.end :]) else None


_SAYS = Pattern(r"\b(?:meter|reading)(?:ed)?(?: now| then| only| just| still)*(?: says| said| gives| gave| shows| showed| reads| read| is| was)?\s*$", re.I)
_COMPARED = Pattern(r"\s*(?:without|with|through|bare|naked|once|when|after|before)\b", re.I)
_SAID_TWICE = Pattern(r"\b(?:meter|reading)(?:ed)? (?:says|said|gives|gave|shows|showed|reads|read|is|was)\b[^?]{0,80}\b(?:meter|reading)(?:ed)? (?:says|said|gives|gave|shows|showed|reads|read|is|was)\b", re.I)


def metered(n: Bare) -> Fact | None:
    """"my meter says 11 without the umbrella", "put it on, the meter said 9.5": a reading, though another one is told."""
    said = _SAYS.search(n.text[max(0, n.fact.start - 24) : n.fact.start]) if 1 <= n.mark <= 64 else None
    after = n.text[n.fact.end : n.fact.end + 16]
    with_and_without = said and (not n.kinds.isdisjoint(("modifier", "camera_filter")) or _LENS.search(n.text))  # else it is what the light must be brought from
    told = said and (is_aperture_mark(n.mark) and _COMPARED.match(after) or with_and_without and ("aperture" in n.kinds or _SAID_TWICE.search(n.text)) and CLAUSE_ENDS.match(after))
    return n.of("aperture", value=n.mark, of="", cue="meter") if told else None


_SAYS_IT = r"(?:\s*:|,)?(?: (?:and|then|now))*(?: it)?(?: (?:the |a )?(?:meter|reading))?(?: (?:says|said|gives|gave|shows|showed|reads|read|is|was|it's|it was))?"
_BARE_SAID = Pattern(rf"\b(?:bare|naked|without (?:it|anything))(?: flash| head| bulb| light| gun)?{_SAYS_IT}\s*$", re.I)
_ON_A_FACE = Pattern(r"\s*(?:(?:on|at|off|for|by) (?:the|his|her|my|their|your|our|its|a) )(?:\w+(?:'s)? )?(?:face|cheek|nose|chin|forehead|brow|ear|eyes?|skin|neck|subject|sitter|model|stool|chair|seat|couple|bride|groom|vase|table|spot)\b", re.I)
"""Where a reading was taken."""


def bare_read(n: Bare) -> Fact | None:
    """"the box robs me of two stops, bare meter said sixteen", "bare head reads eleven on his cheek": the reading without it."""
    mark = _half_past(n)
    told = 1.4 <= mark <= 64 and n.kinds.isdisjoint(("aperture", "guide_number")) and not n.kinds.isdisjoint(_IN_THE_LIGHT)
    if told and _BARE_NEXT.match(n.text[n.fact.end :]) and _OPENS.search(n.text[: n.fact.start]):
        return n.of("aperture", value=mark, of="", unit="", cue="meter")
    told = told and _BARE_SAID.search(n.text[max(0, n.fact.start - 44) : n.fact.start]) is not None
    ends = told and (CLAUSE_ENDS.match(n.text[n.fact.end :]) or _ON_A_FACE.match(n.text[n.fact.end :]))
    return n.of("aperture", value=mark, of="", unit="", cue="meter") if ends else None


_BARE_NEXT = Pattern(r"\s*(?:bare|naked|without (?:it|anything))\s*(?:[.,;:!?]|$)", re.I)
_OPENS = Pattern(r"(?:^|[.,;:!?])\s*(?:it (?:was|is) |i (?:had|got) )?$", re.I)
_IN_THE_LIGHT = ("modifier", "camera_filter", "loss", "stops", "filter_loss")
_WITHOUT = Pattern(r"\b(?:bare|naked|without)\b", re.I)
_SAID_THROUGH = Pattern(rf"(?:\b(?:through|with|behind|under|inside) (?:it|(?:the|my|a|an|its|that) (?:\w+ )?\w+)(?: on| up| in| fitted| (?:over|across|round|around|in front of) (?:it|(?:the|my) \w+))?|\b\w+ (?:on|up|fitted)|\b(?:put|hung|added|fitted|taped|clipped|stretched)(?: on| up| in| over)? (?:the|my|a|an|that) (?:\w+ )?\w+|\bwithout (?:it|the \w+)){_SAYS_IT}\s*$", re.I)


def read_through(n: Bare) -> Fact | None:
    """"bare: sixteen. through the silk: eight": the reading with what takes from it, beside the one without."""
    mark = _half_past(n)
    told = 2.8 <= mark <= 64 and "modifier" in n.kinds and n.kinds.isdisjoint(("distance", "guide_number", "loss", "stops", "power")) and _WITHOUT.search(n.text)
    said = told and _SAID_THROUGH.search(n.text[max(0, n.fact.start - 64) : n.fact.start]) and CLAUSE_ENDS.match(n.text[n.fact.end :])
    return n.of("aperture", value=mark, of="", unit="", cue="meter") if said else None


_READS = Pattern(r"\b(?:reads?|meters|metered|says|said|shows?|showed|gives?|gave)(?: me| us)?\s*$", re.I)


def read_on_a_face(n: Bare) -> Fact | None:
    """"the flash reads sixteen on her cheek": a reading, and no number written on the flash."""
    mark = _half_past(n)
    told = 1.4 <= mark <= 64 and n.kinds.isdisjoint(("aperture", "guide_number")) and _ON_A_FACE.match(n.text[n.fact.end :]) and _READS.search(n.text[max(0, n.fact.start - 24) : n.fact.start])
    return n.of("aperture", value=mark, of="", unit="", cue="meter") if told else None


def _half_past(n: Bare) -> float:
    """The f-number that a bare number is, whole or half a stop or a third past a mark; 0 where it is none."""
    if is_aperture_mark(n.mark):
        return n.mark
    part = next((p for p in (0.5, 1 / 3, 2 / 3) if n.fact.unit == "mixed" and is_aperture_mark(round(n.value - p, 3))), None)
    return round(n.value - part, 3) * 2.0 ** (part / 2) if part else 0.0


_EV_ASKED = Pattern(r"\b(?:ev|exposure value|light value)\b[^.?!\d]{0,30}\b(?:at|for|on)\s*$", re.I)


def film_of_the_value(n: Bare) -> Fact | None:
    """"what EV is that at a hundred": the film that it is asked for."""
    asked = n.value in COMMON_FILMS and "shutter" in n.kinds and "exposure_value" not in n.kinds and _EV_ASKED.search(n.text[max(0, n.fact.start - 60) : n.fact.start])
    return n.of("film_speed", of="") if asked and CLAUSE_ENDS.match(n.text[n.fact.end :]) else None


_METERS = Pattern(r"\b(?:meters?|metered|reads?|reading|says|said|shows?|gives?|gave)\b", re.I)
_METERED = Pattern(r"\b(?:meters?|metered|reads?|reading|says|said|shows?|gives?|gave|was|is)(?: at| me| us)?\s*$", re.I)


def half_mark(n: Bare) -> Fact | None:
    """"it meters 11 and a half with the dish, 5.6 and a half once the grid's in": half a stop past the mark."""
    past = _half_past(n) if n.fact.unit == "mixed" else 0.0
    if past < 2 or not _METERS.search(n.text):
        return None
    read = _METERED.search(n.text[max(0, n.fact.start - 24) : n.fact.start]) or _COMPARED.match(n.text[n.fact.end : n.fact.end + 12]) and n.value > 5
    return n.of("aperture", value=past, of="", unit="mixed", cue="meter") if read and not UNIT_NEXT.match(n.text[n.fact.end :]) else None


_KEPT_AT = Pattern(r"\b(?:lens|aperture|ring|f-?stop|it)(?:'s| is)? (?:stays?|staying|remains?|is to stay|must stay|kept|stuck|fixed|left)(?: put| set)? (?:at|on)\s*$|\b(?:keep|leave|hold|keeping|leaving|stay|staying|stick(?:ing)?)(?: the| my| it| lens| aperture| ring| f-?stop)* (?:at|on|to|with)\s*$", re.I)
_LENS = Pattern(r"\b(?:lens|aperture|ring|f-?stop)\b", re.I)


def kept_mark(n: Bare) -> Fact | None:
    """"I won't touch the lens, it stays at sixteen": the f-number that is kept."""
    kept = is_aperture_mark(n.mark) and n.mark <= 64 and "aperture" not in n.kinds and _LENS.search(n.text) and _KEPT_AT.search(n.text[max(0, n.fact.start - 40) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if kept and CLAUSE_ENDS.match(n.text[n.fact.end : n.fact.end + 8]) else None


_A_MARK_BEFORE = Pattern(r"(?<!card )(?<!box )(?<!label )(?<!back )(?<!book )(?<!plate )(?<!sticker )\b(?:meter(?:s|ed)?|reads?|reading|readings|says|said|gives?|gave|shows?|showed|puts|set(?: up)? (?:for|at|to))(?: me| about| just| roughly| of)*\s*$", re.I)
_AT_A_MARK = Pattern(r"\b(?:at|on|for|to|with|and|over)\s*$", re.I)
_THEN_A_TIME = Pattern(r"\s*(?:at|and|with|for|,)\s*(?:1/\d|(?:an? |one |half an? )?(?:\w+[ -]){0,4}?(?:\w+(?:th|ths)\b|half\b|quarter\b|seconds?\b))", re.I)


def spoken_mark(n: Bare) -> Fact | None:
    """"the window reads five six", "two eight at a thirtieth": two digits said one after another, as only f-numbers are, beside a meter or a time."""
    if n.mark == int(n.mark) or n.mark == n.value or not is_aperture_mark(n.mark) or UNIT_NEXT.match(n.text[n.fact.end :]):
        return None
    before, timed = n.text[max(0, n.fact.start - 40) : n.fact.start], not n.kinds.isdisjoint(("shutter", "exposure_value"))
    beside = _A_MARK_BEFORE.search(before) or timed and (_THEN_A_TIME.match(n.text[n.fact.end : n.fact.end + 48]) or _AT_A_MARK.search(before))
    return n.of("aperture", value=n.mark, of="") if beside else None


_READ_THERE = Pattern(r"\b(?:meter|reading) (?:(?:held|put|right) )?(?:at|on|by|beside|next to|from) (?:(?:the|my|her|his|a) )?\w+(?: \w+)? (?:says|said|gives|gave|shows|showed|reads|read|is|was)\s*$", re.I)


def read_there(n: Bare) -> Fact | None:
    """"the flash meter at the ring reads 16": a reading, where nothing else is an f-number or a guide number."""
    alone = is_aperture_mark(n.mark) and n.kinds.isdisjoint(("aperture", "guide_number")) and _READ_THERE.search(n.text[max(0, n.fact.start - 60) : n.fact.start])
    return n.of("aperture", value=n.mark, of="", cue="meter") if alone and CLAUSE_ENDS.match(n.text[n.fact.end :]) else None


_STOPPED_TO = Pattern(r"\b(?:(?:stopped|closed|screwed|shut) (?:it |her |the lens |right |all the way )?(?:down)?|stopped|opened (?:it |the lens )?up|wide open) (?:to|at)\s*$", re.I)


_RATIO_OR_FILM = Pattern(r"\s*(?:[:/]|film)", re.I)


def stopped_to(n: Bare) -> Fact | None:
    """"and stopped down to sixteen": the f-number that the lens is closed to."""
    told = is_aperture_mark(n.mark) and _STOPPED_TO.search(n.text[max(0, n.fact.start - 32) : n.fact.start])
    return n.of("aperture", value=n.mark, of="") if told and not (UNIT_NEXT.match(n.text[n.fact.end : n.fact.end + 12]) or _RATIO_OR_FILM.match(n.text[n.fact.end : n.fact.end + 6])) else None


_ALIKE = Pattern(
    r"\s*(?:of (?:the|these|those|my|our|his|her|such)\b(?: (?!frames|shots|rows|people|pictures)[\w-]+){0,3}? (?:kind|sort|type|make|pattern|model|ones?|things|jobs)\b"
    r"|(?:(?:equal|identical|like|alike|matched|matching|similar|old|small|little|big|same|cheap|plain) ){1,3}(?:lamps?|lights?|heads?|flash(?:es|guns?)?|guns?|units?|strobes?|ones|things|jobs)\b"
    r"|,(?= (?:gn|guide)\b))",
    re.I,
)
EACH_OF_THEM = Pattern(r"\b(?:each|apiece|a ?piece|every one|singly)\b", re.I)


def so_many_alike(n: Bare) -> Fact | None:
    """"three of the old kind, guide number 80 feet apiece", "four equal lamps, every one f/5.6": flashes, of which each gives as much."""
    many = 2 <= n.value <= 12 and n.value == int(n.value) and "count" not in n.kinds and not n.kinds.isdisjoint(("guide_number", "aperture"))
    alike = many and _ALIKE.match(n.text, n.fact.end)
    return n.of("count", unit="flashes", of="") if alike and EACH_OF_THEM.search(n.text[n.fact.end : n.fact.end + 90]) else None


_LEFT_ON = Pattern(r"\b(?:(?:left|had|set|put|shot|got|stuck|kept|found) (?:it|them|that|the \w+|everything)|(?:it|lens|ring|i|that) (?:was|were|stood|stayed|sat)(?: still| left| set| stuck)?|should(?:'ve| have) (?:been|had it|set)|(?:instead of|rather than))(?: at| on| to)?\s*$", re.I)
_OUT_BY = Pattern(r"\bstops?\b[^.?]{0,24}\b(?:over|under|out|off|wrong|too)\b|\bhow (?:far|much)\b[^.?]{0,24}\b(?:over|under|out|off|wrong)\b", re.I)


def left_on(n: Bare) -> Fact | None:
    """"should have been at f/8 and I left it on 5.6, how many stops over": the other f-number, where one alone is told."""
    told = is_aperture_mark(n.mark) and n.mark <= 45 and "aperture" in n.kinds and n.kinds.isdisjoint(("distance", "guide_number", "power", "shutter")) and sum(f.quantity == "aperture" for f in n.facts) == 1
    if not told or not _LEFT_ON.search(n.text[max(0, n.fact.start - 40) : n.fact.start]) or not _OUT_BY.search(n.text) or UNIT_NEXT.match(n.text[n.fact.end :]):
        return None
    return n.of("aperture", value=n.mark, of="")


_HELD_OPEN = Pattern(r"\b(?:open|expos(?:e|ed|ing)(?: it| them)?|(?:on|at) (?:b|t|bulb|time)) for(?: (?:only|just|about|some|barely|around|a mere|no more than))*\s*$", re.I)
_IN_SECONDS = Pattern(r"\d ?-?s(?:ec(?:ond)?s?)?\b|\bseconds?\b", re.I)


def held_open(n: Bare) -> Fact | None:
    """"the lamps want 60 seconds; I hold the shutter open for only 15": seconds, where another time is told in them."""
    before = n.text[max(0, n.fact.start - 48) : n.fact.start]
    timed = [f for f in n.facts if f.quantity == "shutter" and _IN_SECONDS.search(f.said)]
    if not timed or not _HELD_OPEN.search(before) or UNIT_NEXT.match(n.text[n.fact.end :]) or not _TIME_ENDS.match(n.text[n.fact.end :]):
        return None
    return n.of("shutter", unit="s", of="")


_TIME_ENDS = Pattern(r"\s*(?:$|[,;:?!)]|\.(?!\d)|(?:and|so|but|then|what|how|while|as|when|with|instead|or|not|only|at)\b)", re.I)


_LOST_BY_IT = Pattern(rf"\b{LOSING}(?: (?:me|us|about|around|maybe|roughly|say|nearly|another|a further))*\s*$", re.I)


def lost_by_it(n: Bare) -> Fact | None:
    """"the pola on the lens eats 1.5", "the grid I taped in costs me 2": stops, where a thing in the light is named before and nothing else is counted."""
    said = 0 < n.value <= 5 and _LOST_BY_IT.search(n.text[max(0, n.fact.start - 40) : n.fact.start])
    taker = next((f for f in reversed(n.facts) if f.end <= n.fact.start), None) if said else None
    if taker is None or taker.quantity not in ("modifier", "camera_filter") or taker.unit == "BARE" or not CLAUSE_ENDS.match(n.text[n.fact.end :]) or patterns.search(r"[.?!;](?!\d)", n.text[taker.end : n.fact.start]):
        return None
    return n.of("filter_loss" if taker.quantity == "camera_filter" else "loss", unit=taker.unit, of=taker.of)


_HELD_AGAINST = Pattern(r"(?:\b(?:than|over|under|on|from|to|against|versus|vs\.?|above|below|of|as|not|instead of|compared (?:with|to)|and|or)|=|->)\s*$", re.I)


def another_energy(n: Bare) -> Fact | None:
    """"is 600 Ws two stops brighter than 150": joules as well, where energies alone are told."""
    told = [f for f in n.facts if f.quantity == "energy" and f.end <= n.fact.start]
    plain = bool(told) and n.value >= 5 and n.kinds <= {"energy", "stops", "relation", "number", "loss", "modifier", "remark", "times", "signed"}
    held = plain and _HELD_AGAINST.search(n.text[max(0, n.fact.start - 24) : n.fact.start]) and CLAUSE_ENDS.match(n.text[n.fact.end :])
    return n.of("energy", unit=told[-1].unit, of="") if held else None


_CALLED = Pattern(r"\b(?:call it|treat it as|becomes?|works? as|counts? as|(?:goes|comes) (?:up |down )?to|makes? it|turns (?:it )?into|it'?s|it is|that'?s|that is|i have|i get|i've got|acts (?:as|like))(?: an?| about| really| effectively)?\s*$", re.I)


def guide_called(n: Bare) -> Fact | None:
    """"guide number 80 feet at ISO 100, so with 400 in the camera I can call it 160": the guide number for the other film."""
    guides = [f for f in n.facts if f.quantity == "guide_number" and f.end <= n.fact.start]
    films = [f for f in n.facts if (f.quantity == "film_speed" or f.quantity == "number" and f.value in COMMON_FILMS) and guides and guides[0].end < f.end <= n.fact.start]
    told = len(guides) == 1 and bool(films) and n.kinds <= {"guide_number", "film_speed", "gn_iso", "number", "remark"} and 4 <= n.value <= 1000
    called = told and _CALLED.search(n.text[max(0, n.fact.start - 32) : n.fact.start]) and CLAUSE_ENDS.match(n.text[n.fact.end :])
    return n.of("guide_number", unit=guides[0].unit, of="", cue="claimed") if called else None


_WITH_A_FILM = Pattern(r"\b(?:with|on|for|using|in)(?: the| an?)?\s*$", re.I)
_PLACE_ASKED = Pattern(r"\b(?:where|how (?:far|close|near)|what distance)\b", re.I)


def place_with_a_film(n: Bare) -> Fact | None:
    """"400 film lets me stand at 20 feet, where do I stand with 100": the other film, where a place is asked."""
    films = [f for f in n.facts if f.quantity == "film_speed"]
    asked = len(films) == 1 and n.value in COMMON_FILMS and n.value != films[0].value and "distance" in n.kinds and n.kinds <= {"distance", "film_speed", "number", "aperture", "remark"}
    told = asked and _WITH_A_FILM.search(n.text[max(0, n.fact.start - 16) : n.fact.start]) and _PLACE_ASKED.search(n.text)
    return n.of("film_speed", of="") if told and CLAUSE_ENDS.match(n.text[n.fact.end :]) else None
