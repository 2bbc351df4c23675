"""A film's own sheet of long times, read off aloud: "1 second becomes 2, 10 becomes 50", "4 s give 7; 10 s give 22".

Each row is a metered time and the time to give, or the stops to add; the second number of a row, and the first of
every row but one, seldom carry their unit. "Anything from 1 to 10 seconds wants one more stop" is a row with two ends.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language import film_words
from assistant.language.number_words import STOPS_SPOKEN
from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

_SHEET = Pattern(r"\b(?:sheet|card|slip|scale|label|carton|back of the|leaflet|table|chart|list|notes?|maker|booklet|instructions|paper|film|emulsion|reciprocity|becomes?|turns? into)\b|\bstops? (?:more |extra )?(?:from|for|between) \d|\b(?:from|between) \d+ ?(?:s|secs?|seconds)? ?(?:to|and) \d+ ?(?:s|secs?|seconds)\b", re.I)
_LINK = Pattern(r"[\s,:]*(?:\(?metered\)?[\s,:]*)?(?:becomes?|(?:turns? )?into|goes to|go to|stays?(?: at)?|remains?|holds(?: at)?|wants?|needs?|takes?|gets?|gives?(?: it| them)?|gave|is given|make (?:it|that)|makes?|means?|corrects? to|(?:is |are )?corrected to|should be|->|=>|→|=|:|[-–](?= ))[\s:]*(?:about |really |a full )?", re.I)
_TIMES = frozenset({"shutter", "time", "duration"})
_MIS_READ = ("number", "guide_number", "film_speed", "aperture", "signed", "count")
"""What a bare number of a row may have been taken for."""
KINDS = _TIMES


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the rows of such a sheet as `sheet_row`: value the metered time, other the time to give."""
    if not [f for f in facts if f.quantity in _TIMES and f.value >= 1]:
        return facts
    facts = film_words.threshold(list(facts), text)
    if not _SHEET.search(text) and sum(f.quantity in _TIMES for f in facts) < 2:
        return facts
    ordered = _told_backwards(sorted(facts, key=lambda f: f.start), text)
    out = _stop_rows(_span([_first(f, text) for f in ordered], text), text)
    rows = _rows(out, text)
    many = sum(f.quantity == "sheet_row" for f in rows)
    out = rows if many >= 2 else _one_pair(out, text) if many or len(out) == 2 else out
    return [_metered(f, text) for f in out] if any(f.quantity in ("sheet_row", "sheet_span") for f in out) else out


_SEC = Pattern(r"\s?(?:s|secs?|seconds?)\b", re.I)


def _first(fact: Fact, text: str) -> Fact:
    """"the leaflet for my film: 2 s becomes 3", "the film says: 1 second needs half a stop": seconds, and no film of so small a speed nor a time of the light."""
    unit = _SEC.match(text[fact.end :]) if fact.quantity in ("film_speed", "shutter") else None
    return replace(fact, quantity="shutter", unit="", of="", end=fact.end + unit.end()) if unit else fact


def _metered(fact: Fact, text: str) -> Fact:
    """"meter says ten", beside the rows of a sheet: seconds as well."""
    bare = fact.quantity in ("number", "aperture") and not _WRITTEN_F.match(fact.said) and not fact.bad
    return replace(fact, quantity="shutter", unit="", cue="", of="") if bare and _METER_SAYS.search(text[: fact.start]) and not _THEN_NOT.match(text[fact.end :]) else fact


_METER_SAYS = Pattern(r"\b(?:meter(?:ed|s)?|metering|reading)(?:'s)?(?: it| them| the \w+)?(?: says?| said| saying| gives?| gave| reads?| tells me| told me| wants?| is| was| at| for| shows?)*(?: about| roughly)? $", re.I)
_THEN_NOT = Pattern(r"\s*(?:feet|ft|m\b|metres?|stops?|iso|at f|mm|ev)", re.I)


_WRITTEN_F = Pattern(r"\s*f(?![a-z])", re.I)


def _seconds(fact: Fact) -> bool:
    bare = fact.quantity in _MIS_READ and not fact.bad and not fact.unit and not _WRITTEN_F.match(fact.said) and "iso" not in fact.said.lower()
    return fact.value > 0 and (fact.quantity in _TIMES or bare)


_FOR_SO_LONG = Pattern(r"\s*(?:for|instead of|where the meter says|when the meter says|when i meter|at)\s*(?:a )?(?:metered |measured )?", re.I)
_STOPS_AT = Pattern(r"\s*(?:more |extra |over )?(?:at|for|by|when it'?s|from)\s*(?:a |about )?", re.I)
_TABLE = Pattern(r"\b(?:sheet|card|slip|leaflet|table|chart|notes?)\b[^.?!\d]{0,40}$", re.I)


def _told_backwards(facts: list[Fact], text: str) -> list[Fact]:
    """"4 s for 2 s and 15 s for 6 s", "half a stop at 5 s, one stop at 20": rows whose metered time comes last."""
    rows: dict[int, Fact] = {}
    for n, (first, last) in enumerate(zip(facts, facts[1:])):
        gap = text[first.end : last.start]
        if n - 1 in rows:
            continue
        longer = first.quantity in _TIMES and last.quantity in _TIMES and first.value > last.value and _FOR_SO_LONG.fullmatch(gap)
        added = first.quantity in ("stops", "signed") and (last.quantity in _TIMES or bool(rows) and _seconds(last)) and _STOPS_AT.fullmatch(gap)
        if longer or added:
            made = _row(first, last, first.value if longer else last.value * 2.0 ** abs(first.value))
            rows[n] = replace(made, value=last.value)
    if len(rows) < 2:
        return facts
    return [rows.get(n, f) for n, f in enumerate(facts) if n - 1 not in rows]


def _rows(facts: list[Fact], text: str) -> list[Fact]:
    out: list[Fact] = []
    place, opened = 0, False
    while place < len(facts):
        here, after = facts[place], facts[place + 1] if place + 1 < len(facts) else None
        timed = here.quantity in _TIMES or opened or _TABLE.search(text[: here.start]) is not None
        if after is not None and timed and _seconds(here) and _seconds(after) and _LINK.fullmatch(text[here.end : after.start]):
            out.append(_row(here, after, after.value))
            place, opened = place + 2, True
        else:
            out.append(here)
            place += 1
    return out


def _row(here: Fact, after: Fact, given: float) -> Fact:
    return Fact("sheet_row", here.value, "s", of="film", other=given, start=here.start, end=after.end, said=f"{here.said.strip()}: {after.said.strip()}", sentence=here.sentence)


_WHERE_METERED = Pattern(r"\s*(?:where|when|if|for what|instead of what|while) (?:the|my) meter (?:says|said|reads|gives|asks for|wants|shows)(?: only| just)?\s*", re.I)


def _one_pair(facts: list[Fact], text: str) -> list[Fact]:
    """"turns 5 seconds into 12", "wants 40 seconds where the meter says 15": both are times, though one carries no unit."""
    for here, after in zip(facts, facts[1:]):
        gap = text[here.end : after.start]
        if _seconds(here) and _seconds(after) and {here.quantity, after.quantity} & _TIMES and (_LINK.fullmatch(gap) and after.value >= here.value or _WHERE_METERED.fullmatch(gap)) and not _THEN_NOT.match(text[after.end :]):
            return [replace(f, quantity="shutter", unit="", of="", cue="") if f in (here, after) else f for f in facts]
    return facts


_ADD = Pattern(r"[\s,:=(-]*(?:(?:then |you |we |i )*(?:add|open(?: up)?|give)|plus|\+|needs?|wants?|takes?|gets?|gives?(?: it)?|allow)[\s:]*(?:an? (?:extra|more) |another |an extra )?(?:an? )?(?:(?:full|whole) )?", re.I)
_MULTIPLY = Pattern(r"[\s,:=(-]*(?:you |it'?s |is |a |the |then )*(?:multiply(?: it)?(?: by)?|multiplied by|times|by|x|factor(?: of| is)?|needs|wants)?[\s:]*(?:a )?", re.I)
_SIGNED = Pattern(r"[\s,:=(-]*(?:is|wants?|needs?|gets?)?[\s:]*", re.I)
_AS_METERED = Pattern(r"[\s,:=(-]*(?:(?:is|stays|stay|gets|wants|needs|there'?s|so|with|and|you)\s+)*(?:no (?:change|correction|extra|adjustment|compensation)|nothing(?: (?:extra|more|added))?|as (?:is|metered|it is)|unchanged|the same|leave (?:it )?(?:alone|as is|be)|fine|put)\b", re.I)
_MORE = Pattern(r"^\s*(?:more|extra)?\s*(?:[,.;:]|and\b|$)", re.I)


def _stop_rows(facts: list[Fact], text: str) -> list[Fact]:
    """"at 1 second add half a stop, at 10 add one, at 100 add two": rows in stops; "needs" is said but once."""
    found: list[tuple[int, Fact]] = []
    facts = [_row(f, f, f.value) if f.quantity in _TIMES and _AS_METERED.match(text[f.end :]) else f for f in facts]
    plain = sum(f.quantity == "sheet_row" for f in facts)
    for n, (here, after) in enumerate(zip(facts, facts[1:])):
        times = after.quantity == "factor" and (here.quantity in _TIMES or found and _seconds(here)) and _MULTIPLY.fullmatch(text[here.end : after.start])
        if times:
            found.append((n, _row(here, after, here.value * after.value)))
            continue
        stops = after.quantity in ("stops", "signed") or bool(found) and after.quantity == "number" and after.value <= 6 and _MORE.match(text[after.end :]) is not None
        if (here.quantity in _TIMES or found and _seconds(here)) and stops and (_ADD.fullmatch(gap := text[here.end : after.start]) or (found or _MORE.match(text[after.end :])) and not gap.strip(" ,:") or after.unit == "+" and _SIGNED.fullmatch(text[here.end : after.start])):
            found.append((n, _row(here, after, here.value * 2.0 ** abs(after.value))))
    if len(found) + plain < 2:
        return [f for f in facts if f.quantity != "sheet_row"] if plain else facts
    gone = {m for n, _ in found for m in (n, n + 1)}
    return sorted([*(f for n, f in enumerate(facts) if n not in gone), *(row for _, row in found)], key=lambda f: f.start)


_FROM_TO = Pattern(r"\b(?:from |between )?(?P<low>\d+(?:\.\d+)?)(?: ?s(?:ec(?:ond)?s?)?)? ?(?:to|and|-|–) ?(?P<high>\d+(?:\.\d+)?) ?(?:s|secs?|seconds)\b(?=[^.?!\d]{0,40}\b(?:stop|double|twice|factor|multipl))", re.I)
_FACTOR_FROM = Pattern(r"\b(?:multipl\w+|factor|times|doubl\w+|tripl\w+|twice)\b(?:[^.?!;]|\.\d){0,60}?\b(?:from|between) (?P<low>\d+(?:\.\d+)?)(?: ?s(?:ec(?:ond)?s?)?)? ?(?:to|and|-|–) ?(?P<high>\d+(?:\.\d+)?) ?(?:s|secs?|seconds)\b", re.I)
"""The stretch of times told after what it is multiplied by: "multiply by 2.5 any time between 5 and 15 seconds"."""


_NUMBER = r"\d+(?:\.\d+)?"
_STOPS_FROM = Pattern(rf"\b(?P<many>half a|a|one|two|three|four|one and a half|{_NUMBER})(?: more| extra| whole)? stops? (?:more |extra |of (?:extra |more )?(?:time|exposure|light) |longer )?(?:(?:for|with|on|to|at) (?:(?:anything|everything|any|all|each|every|metered|times?|exposures?|readings?|whatever|what|is|lies|falls|the meter says) ){{1,4}})?(?:from|for|between|of) (?P<low>{_NUMBER})(?: ?s(?:ec(?:ond)?s?)?)? ?(?:to|and|-|–) ?(?P<high>{_NUMBER})(?P<unit> ?(?:s|secs?|seconds)\b)?", re.I)


_STOPS_AFTER = Pattern(rf"\b(?:from |between )?(?P<low>{_NUMBER})(?: ?s(?:ec(?:ond)?s?)?)? ?(?:to|and|-|–) ?(?P<high>{_NUMBER})(?P<unit> ?(?:s|secs?|seconds)\b)[^.?!;\d]{{0,24}}?\b(?P<many>half a|an?|one|two|three|four|one and a half|{_NUMBER})\b(?! (?:half|third)|(?: more| extra| whole| full)*(?: stops?)? and (?:a |one |two )?(?:half|third|quarter))(?: more| extra| whole| full)*(?: stops?)?\b", re.I)
"""The same with the times first: "1 to 10 seconds need one extra stop, 10 to 100 seconds need two"."""
_JUST_OVER = 1.0005
"""Where one stretch ends and the next begins at one figure, that figure belongs to the first."""


def _stops_first(facts: list[Fact], text: str) -> list[Fact]:
    """"add one stop from 1 to 10 seconds and two stops from 11 to 100": each stretch of times as its first row and its last."""
    told = list(_STOPS_FROM.finditer(text))
    if len(told) < 2:
        told = list(_STOPS_AFTER.finditer(text)) if "stop" in text.lower() else []
    if len(told) < 2:
        return facts
    made: list[Fact] = []
    ends: set[str] = set()
    for m in told:
        more = 2.0 ** (STOPS_SPOKEN.get(m["many"].lower()) or {"a": 1.0, "an": 1.0, "half a": 0.5, "four": 4.0}.get(m["many"].lower()) or float(m["many"]))
        for end in ("low", "high"):
            at = float(m[end]) * (_JUST_OVER if m[end] in ends else 1.0)
            made.append(Fact("sheet_row", at, "s", of="film", other=at * more, start=m.start(end), end=m.end(end), said=m[end]))
        ends.add(m["high"])
    kept = [f for f in facts if not any(f.start < m.end() and f.end > m.start() for m in told)]
    return sorted([*kept, *made], key=lambda f: f.start)


def _span(facts: list[Fact], text: str) -> list[Fact]:
    """"anything metered from 1 to 10 seconds wants one more stop": the times for which the stops are added."""
    facts = _stops_first(facts, text)
    if any(f.quantity == "sheet_row" for f in facts):
        return facts
    first = _STOPS_FROM.search(text)
    found = first if first is not None and first["unit"] else _FROM_TO.search(text) or _FACTOR_FROM.search(text)
    if found is None or not float(found["low"]) < float(found["high"]):
        return facts
    start, end = found.start("low"), found.end()
    inside = [f for f in facts if f.start < end and f.end > start]
    if any(f.quantity == "exponent" for f in inside):
        return facts  # "an exponent of 1.26 and 30 s metered"
    made = Fact("sheet_span", float(found["low"]), "s", of="film", other=float(found["high"]), start=start, end=end, said=text[start:end])
    return sorted([*(f for f in facts if f not in inside), made], key=lambda f: f.start)


_HOW_LONG = Pattern(r"\bhow long\b|\bhow many (?:more |extra |total )?(?:seconds|secs)\b|\b(?:what|which|total|corrected|real|actual) (?:time|seconds|exposure|secs)\b|\bwhat do i (?:give|expose)\b|\bfor how\b|\btime (?:then|now)?\W*$", re.I)
_WHAT_I_GIVE = Pattern(r"\bwhat (?:do|should|must|shall) (?:i|we) (?:give|expose|set|allow)\b", re.I)
_NOT_BY = Pattern(r"\bnot (?:by |with |the |as |in |on )*(?:aperture|f-?stop|lens|opening)\b", re.I)
_AS_A_FACTOR = Pattern(r"\bas an? (?:factor|multipl\w+)\b|\bhow many times (?:longer|as long|the metered)\b|\b(?:what|which) (?:factor|multipl\w+)\b", re.I)
_BY_APERTURE = Pattern(r"\b(?:new|what|which|corrected|final) (?:f[- ]?(?:stop|number)|aperture|opening)\b|\bby (?:the )?(?:aperture|lens|f-?stop)\b", re.I)
_HOW_MANY_SECONDS = Pattern(r"\bhow many (?:\w+ )?(?:seconds|secs)\b", re.I)
_SECONDS = Pattern(r"\b(?:total|how many|in|what) (?:of )?(?:seconds|secs|time)\b|\bhow long\b", re.I)


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """With rows of a sheet told, the time is asked for, or the stops that the sheet adds; "as time, not aperture" asks no aperture."""
    kinds, wanted = {f.quantity for f in facts}, [a.quantity for a in asks]
    if "aperture" in wanted and not kinds.isdisjoint(_TIMES) and _NOT_BY.search(text):
        asks = [a for a in asks if a.quantity != "aperture"] or ([Ask("shutter", "", "")] if _SECONDS.search(text) else [])
    if "count" in wanted and _HOW_MANY_SECONDS.search(text) and _SHEET.search(text):
        asks = [Ask("shutter", "", "") if a.quantity == "count" else a for a in asks]
    if "exponent" in kinds and _AS_A_FACTOR.search(text):
        return [Ask("factor", "", "")]
    if not asks and sum(f.quantity in _TIMES for f in facts) > 2 and _WHAT_I_GIVE.search(text):
        return [Ask("shutter", "", "")]
    if "sheet_row" not in kinds and "sheet_span" not in kinds:
        return list(asks)
    if any(a.quantity == "aperture" for a in asks) and _BY_APERTURE.search(text) and sum(f.quantity == "aperture" for f in facts) == 1:
        return [Ask("aperture", "", "")]
    kinds = {a.quantity for a in asks}
    if "stops" in kinds or "factor" in kinds:
        return [a for a in asks if a.quantity in ("stops", "factor")]
    if not asks and len({f.value for f in facts if f.quantity in _TIMES}) == 1:
        return [Ask("shutter", "", "")]  # rows and one time: what else could be wanted
    return [Ask("shutter", "", "")] if _HOW_LONG.search(text) or kinds & {"shutter", "duration", "time", "depth_of_field", "aperture"} or not asks and "?" in text else list(asks)
