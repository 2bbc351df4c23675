"""Long times: what the film's sheet makes of a metered time, in seconds, in stops, or as a factor.

A film needs more than the metered time once that is longer than about a second (reciprocity failure);
its own exponent, extra stops, a factor, or pairs of its sheet say how much.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.physics.film import corrected_from_table, metered_time, metered_time_adding, reciprocity_exponent, reciprocity_time, time_by_failure_exponent
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving import camera, marks
from assistant.solving.solution import Solution, needs


def done(answers: tuple[Quantity, ...], *used: Fact | None, lead: str = "", notes: tuple[str, ...] = (), working: tuple[str, ...] = (), assumed: tuple[Assumed, ...] = ()) -> Solution:
    """What was found about a film, and from what."""
    return Solution(answers=answers, used=tuple(dict.fromkeys(f for f in used if f is not None)), lead=lead, notes=notes, working=working, assumed=assumed, topic="film")


_FAILURE = Phrasings(r"\bleaflet\b|\b(?:maker|chart|emulsion|table|data ?sheet|film) (?:\w+ ){0,2}?(?:says?|adds?|asks?|wants?|gives?|turns?)\b|\bbecomes?\b|\bfilm\b.*\b(?:needs|extra|wants)\b|\bsheet\b|recip|schwarz|exponent|p.value|long exposure|\bp\s*(?:=|is|of)", re.I)


_EXTRA_STOPS = {"a": 1.0, "one": 1.0, "half a": 0.5, "a half": 0.5, "two": 2.0, "three": 3.0, "another": 1.0}
_EXTRA = Pattern(r"(?:add|plus|extra|another|needs?|give it|allow)\W+(?:an? (?=half)|an? extra )?(?P<n>half a|a half|one|two|three|a|another)\W+(?:more |extra |whole |full )?stops?", re.I)


_SO_LONG = Pattern(r"\b(?P<times>doubl|tripl|trebl|quadrupl)(?:e|es|ed|ing)\b", re.I)
_TIMES_OF = {"dou": 2.0, "tri": 3.0, "tre": 3.0, "qua": 4.0}
_ASIDE = Pattern(r"\b(?:forget(?:ting)?|ignor\w+|never mind|leav\w+ aside|without|not counting|no) (?:about |the |any )?reciprocity\b", re.I)


def lengthened(query: Query, ask: Ask) -> Solution | None:
    """The time to give, from the metered one and what the film's sheet says."""
    times = query.all("shutter")
    speeds = {f.value for f in query.facts if f.quantity in ("film_speed", "rated")}
    if len(speeds) > 1 and times and (query.has("exponent") or query.has("sheet_row")):
        return needs(("shutter",), "I need the time metered at the speed that you rate the film at.", tuple(times), "film")
    newest = [f for f in times if f.origin == "said"] or times
    if times and "metered_asked" in query.cues and (_GIVEN.search(query.text) or _really_given(query, newest)):
        backwards = _backwards(query, newest if any(f.origin == "kept" for f in times) else times)
        if backwards is not None:
            return backwards
    if query.has("sheet_row") or query.has("sheet_span"):
        return _by_sheet(query, times)
    if not times and query.has("exponent") and not query.has("guide_number") and not query.has("exposure_value"):
        return _where_it_adds(query) or needs(("shutter",), "I need the time that was metered.", tuple(query.all("exponent")), "film")
    if not times or not (_FAILURE.found_in(query.text) or query.has("exponent") or "reciprocity" in query.cues) or query.has("sync"):
        return None
    if _ASIDE.search(query.text) and not query.has("exponent"):
        return None
    if camera.time_through(query) and not query.has("exponent") and len(times) == 1:
        return None
    if query.has("nd") or query.has("filter_loss") or query.has("exponent") and (query.has("camera_filter") or query.has("loss") or query.has("factor") or len({f.value for f in query.all("aperture")}) == 2 or query.has("magnification") and not _THROUGH_LENS.search(query.text) or _of_the_draw(query)):
        return _through_a_filter(query, times)
    if len(query.all("aperture")) >= 2 and not query.has("exponent") and len(times) < 3 and not _kept_open(query, times):
        return None  # a reading and another aperture: an equivalent exposure
    if len(times) >= 3:
        return _by_table(query, times)
    metered, exponent = times[-1], query.last("exponent")
    extra = next((f for f in query.facts if f.quantity in ("stops", "factor", "times", "signed", "loss") or f.quantity == "relation" and f.cue == "more"), None)
    so_long = _SO_LONG.search(query.text) if extra is None and exponent is None else None
    if so_long:
        return done((marks.shutter(metered.value * _TIMES_OF[so_long["times"].lower()[:3]]),), metered, notes=(_FLASH_NOTE,))
    spoken = _EXTRA.search(query.text) if extra is None and exponent is None else None
    if spoken:
        value = metered.value * 2 ** _EXTRA_STOPS[spoken.group("n").lower()]
        return done((marks.shutter(value),), metered, notes=(_FLASH_NOTE,))
    if exponent:
        return _by_exponent(metered, exponent)
    if extra:
        value = metered.value * (2 ** abs(extra.value) if extra.quantity not in ("factor", "times") else extra.value)
        return done((marks.shutter(value),), metered, extra, notes=(_FLASH_NOTE,))
    if metered.value <= 1:
        return done((marks.shutter(metered.value),), metered, notes=("Most films hold up to about a second: no correction.",))
    return needs(("factor",), "I need what the film's sheet says: its reciprocity exponent, or the extra stops at that time.", (metered,), "film")


def _kept_open(query: Query, times: list[Fact]) -> bool:
    """"metered 10 s at f/16, and I keep f/16; the leaflet adds one stop": the aperture said twice, and only the time is to be changed."""
    return len({f.value for f in query.all("aperture")}) == 1 and query.has("stops") and times[-1].value >= 1 and len(query.all("film_speed")) < 2


def _where_it_adds(query: Query) -> Solution | None:
    """"with p of 1.3, at what metered time is the correction one stop?": the time whose lengthening comes to so many stops."""
    stops, exponent = [f for f in query.facts if f.quantity in ("stops", "relation", "factor", "times")], query.last("exponent")
    if len(stops) != 1 or exponent is None or exponent.value == 1 or {f.quantity for f in query.facts} - {stops[0].quantity, "exponent", "remark", "place"}:
        return None
    added = math.log2(stops[0].value) if stops[0].quantity in ("factor", "times") and stops[0].value > 0 else abs(stops[0].value)
    value = metered_time_adding(added, exponent.value if exponent.value > 1 else 1 / exponent.value)
    return done((marks.shutter(value),), stops[0], exponent, lead="Metered", notes=(_FLASH_NOTE,))


_FLASH_NOTE = "It lengthens the ambient part only; a flash is too short to need it."


_GLASS = r"(?:it|(?:the|my|that|this|an?) (?:[\w.-]+ ){0,3}?(?:filter|nd|polari[sz]er|glass|grad))\b"
_THROUGH_GLASS = Pattern(rf"\b(?:through|behind) {_GLASS}(?! off\b)|\bwith {_GLASS} (?:already )?(?:on|in place|fitted|mounted)\b", re.I)
_SET_OFF_BY = Pattern(r"[.;?!](?=\s|$)")
_ASKING = Pattern(r"\b(?:what|how|adding|add|put|fit|screw)\b", re.I)


def _is_read_through(text: str, time: Fact) -> bool:
    """"4 s through the filter", "with the filter on the meter said 4 s": a reading that lacks the light already."""
    close = _THROUGH_GLASS.search(text[time.end : time.end + 40])
    if close is not None and not text[time.end : time.end + close.start()].strip():
        return True
    start = max((m.end() for m in _SET_OFF_BY.finditer(text[: time.start])), default=0)
    end = _SET_OFF_BY.search(text, time.end)
    sentence = text[start : end.start() if end else len(text)]
    return _THROUGH_GLASS.search(sentence) is not None and _ASKING.search(sentence) is None


def _through_a_filter(query: Query, times: list[Fact]) -> Solution | None:
    """What is on the lens, and a lens closed further than it was metered for, lengthen the metered time; the film's failure lengthens that."""
    lost, facts, _ = camera.loss_total(query)
    drawn = _of_the_draw(query)
    if drawn and facts and abs(sum(abs(f.value) for f in drawn) - lost) > 0.1:
        return needs(("stops",), "I need to know what is lost in all: by the scale it is not what was said.", (*drawn, *facts), "film")
    plain = [f for f in query.all("loss") if not f.unit] if not (facts or drawn or query.has("modifier")) else []
    lost, facts = (lost if facts else sum(abs(f.value) for f in (*drawn, *plain))), (*facts, *drawn, *plain)
    if len(times) == 1 and _is_read_through(query.text, times[0]):
        lost = 0.0  # what is on the lens was in the reading already
    exponent, stops = query.last("exponent"), query.all("aperture")
    closed = _closed(stops)
    if exponent is None or len(times) != 1 or not (facts or closed) or query.has("guide_number") or len({f.value for f in stops}) > 2:
        return None
    longer = replace(times[0], value=times[0].value * 2.0 ** (lost + closed))
    found = _by_exponent(longer, exponent)
    at = f" at f/{stops[-1].value:g}" if closed else ""
    return replace(found, used=(times[0], *facts, *stops, exponent), assumed=camera.assumed(query), working=(f"{'through the filter' if facts else 'metered'}{at} {longer.value:.4g} s", *found.working))


_THROUGH_LENS = Pattern(r"\bthrough the lens\b|\bttl\b|\bin[- ]camera meter", re.I)
_DRAWN = Pattern(r"\bbellows\b|\bdraw\b|\bextension\b|\blife[- ]?size\b|\bclose-?up\b|\bmagnif\w*|\bmacro\b|\btubes?\b", re.I)


def _of_the_draw(query: Query) -> tuple[Fact, ...]:
    """"life size adds two stops": stops that the bellows takes, before the film is asked."""
    told = tuple(f for f in query.facts if f.quantity in ("stops", "loss") and f.cue != "less")
    return told if told and query.has("exponent") and _DRAWN.search(query.text) else ()


def _closed(stops: list[Fact]) -> float:
    """Stops from the opening metered for to the one that is set; the one set is told last, unless only the last is a meter's."""
    if len(stops) > 2 and len({f.value for f in stops}) == 2:  # the flash's own, said again of the lens
        metered = next((f for f in stops if f.cue == "meter" or f.of == "ambient"), stops[0])
        stops = [metered, next(f for f in stops if f.value != metered.value)]
    if len(stops) != 2:
        return 0.0
    read = [f for f in stops if f.cue == "meter" or f.of == "ambient"]
    one, two = stops[::-1] if read == stops[1:] else stops
    return -aperture_difference_stops(one.value, two.value)


def _by_exponent(metered: Fact, exponent: Fact) -> Solution:
    value = reciprocity_time(metered.value, exponent.value) if exponent.value >= 1 else time_by_failure_exponent(metered.value, exponent.value)
    stops = math.log2(value / metered.value)
    power = exponent.value if exponent.value >= 1 else 1 / exponent.value
    notes = (_FLASH_NOTE,) if metered.value > 1 else ("Up to a second nothing is added.",)
    step = f"{metered.value:g} s to the power {power:.4g} = {value:.4g} s" if metered.value > 1 else f"{metered.value:g} s stays: not above 1 s"
    return done((marks.shutter(value), marks.stops(stops)), metered, exponent, notes=notes, working=(step,))


def _rows_of(text: str, times: list[Fact]) -> tuple[list[tuple[float, float]], list[Fact]]:
    """The times that go together as rows of a sheet, and those that are left over."""
    pairs: list[tuple[float, float]] = []
    left: list[Fact] = []
    place = 0
    while place < len(times):
        here, after = times[place], times[place + 1] if place + 1 < len(times) else None
        if after and _paired(text[here.end : after.start]):
            pairs.append((here.value, after.value))
            place += 2
        else:
            left.append(here)
            place += 1
    return pairs, left


_GIVEN = Pattern(r"\b(?:patience|(?:real|true|actual|corrected|final) (?:exposure|time)|no (?:longer|more) than|at (?:the )?most|can (?:only )?(?:give|wait|hold|keep)|won't go (?:past|beyond|over)|gave|given|giving|exposed|exposing|ran|run|opened for|kept (?:it )?open|keep (?:the shutter |it )?open|(?:has to|must|should) include|with the correction (?:in|included|counted)|correction (?:in it|included|counted)|all in)\b", re.I)


_SAID_METERED = Pattern(r"\b(?:meter\w*|indicat\w+|reads?|reading|uncorrected|measured)\b(?: (?:says|said|at|of|is|was|for|asks|wants|gives|shows|reads|needs|time|exposure|a|about|the))*\s*$", re.I)
_METERED_AFTER = Pattern(r"\s*(?:metered|indicated|on the meter|by the meter|uncorrected)\b", re.I)


def _really_given(query: Query, times: list[Fact]) -> bool:
    """Whether the one time told beside an exponent is no meter's: where the metered one is asked for, it is the one given."""
    if not query.has("exponent") or len({f.value for f in times}) != 1 or times[0].value <= 1:
        return False
    return not any(_SAID_METERED.search(query.text[: f.start]) or _METERED_AFTER.match(query.text[f.end :]) for f in times)


def _backwards(query: Query, times: list[Fact]) -> Solution | None:
    """"the sheet turns 2 s into 5 and 8 into 30; I gave 30 s, what was metered?": the other way round."""
    rows, exponent = query.all("sheet_row"), query.last("exponent")
    pairs, left = ([(r.value, r.other) for r in rows], times) if rows else _rows_of(query.text, times)
    if len({f.value for f in left}) != 1 or not (pairs or exponent) or len({f.value for f in query.all("aperture")}) > 1:
        return None
    given = left[0].value
    if pairs:
        value, how = corrected_from_table(given, [(after, before) for before, after in pairs]), "between the rows, straight in logarithms"
    else:
        power = exponent.value if exponent is not None and exponent.value >= 1 else 1 / exponent.value if exponent is not None else 1.0
        value, how = metered_time(given, power), f"{given:g} s to the power 1/{power:.4g}"
    return replace(done((marks.shutter(value), marks.stops(math.log2(given / value))), *times, *rows, exponent, working=(how,)), lead="Metered")


def _by_table(query: Query, times: list[Fact]) -> Solution | None:
    """Between the rows of a sheet, straight in logarithms; the time left over is the metered one."""
    pairs, left = _rows_of(query.text, times)
    if not pairs or len(left) != 1:
        return None
    stops = list({f.value: f for f in query.all("aperture")}.values())
    if len(stops) > 2:
        return None
    metered = left[0].value * 2.0 ** _closed(stops)
    if len(pairs) == 1 and pairs[0][0] > 1:
        power = reciprocity_exponent(*pairs[0])
        value = reciprocity_time(metered, power)
        how = f"one pair gives the exponent {power:.3g}"
    else:
        value, how = corrected_from_table(metered, pairs), "between the rows, straight in logarithms"
    return done((marks.shutter(value), marks.stops(math.log2(value / metered))), *times, *(query.all("aperture") if len(stops) == 2 else ()), notes=(_FLASH_NOTE,), working=(how,))


def _by_sheet(query: Query, times: list[Fact]) -> Solution | None:
    """By the rows of the person's own sheet: the metered time at the aperture that is set and behind what is on the lens, then as the sheet says."""
    rows, spans, stops = query.all("sheet_row"), query.all("sheet_span"), query.all("aperture")
    if not times:
        return needs(("shutter",), "I need the time that was metered.", tuple(rows or spans), "film")
    if len({f.value for f in times}) != 1 or len(stops) > 2 or query.has("guide_number"):
        return None
    factors = query.all("factor")
    times_it = factors[0] if spans and not rows and len(factors) == 1 and not any(query.has(q) for q in ("stops", "relation")) else None  # the sheet's own, and no filter's
    lost, losing, _ = camera.loss_total(query.with_facts(f for f in query.facts if f is not times_it))
    closed = _closed(stops)
    metered = times[0].value * 2.0 ** (lost + closed)
    added = times_it or next((f for f in query.facts if f.quantity in ("stops", "relation") and f not in losing), None)
    if spans and not rows:
        if added is None or not spans[0].value <= metered <= spans[0].other:
            return needs(("factor",), f"I need what the sheet says for {metered:.4g} s.", (*times, *spans), "film")
        value, how = (metered * added.value, f"{metered:.4g} s times {added.value:g}") if added is times_it else (metered * 2.0 ** abs(added.value), f"{abs(added.value):g} stops on {metered:.4g} s")
    else:
        value, how = corrected_from_table(metered, [(r.value, r.other) for r in rows]), "between the rows, straight in logarithms"
        added = None
    to_sheet = (f"{times[0].value:.4g} s becomes {metered:.4g} s before the film is asked",) if metered != times[0].value else ()
    notes = (_FLASH_NOTE,) if not rows or metered <= max(r.value for r in rows) else (_FLASH_NOTE, "That is past the last row of the sheet; its last slope is taken to go on.")
    return done((marks.shutter(value), marks.stops(math.log2(value / metered))), *times, *rows, *spans, *stops, *losing, added, notes=notes, working=(*to_sheet, how))


_SHEET_SAYS = Pattern(r"\b(?:sheet|leaflet|table|chart|reciprocity|schwarzschild|datasheet|maker)\b|\b(?:film|emulsion)\b[^.?!]{0,30}\b(?:needs|wants|asks|extra)\b", re.I)


def by_aperture(query: Query, ask: Ask) -> Solution | None:
    """The lens opened by what the sheet adds, where the time is kept."""
    times, stops = query.all("shutter"), query.all("aperture")
    if not stops and times and "metered_asked" in query.cues and _really_given(query, times):
        return _backwards(query, times)  # "which reading of the meter": a time
    if len(stops) != 1 or query.has("guide_number"):
        return None
    exponent = query.last("exponent")
    if exponent is not None and len({f.value for f in times}) == 1 and not query.has("sheet_row"):
        longer = _by_exponent(times[0], exponent)
        return replace(longer, answers=(marks.aperture(stops[0].value * (times[0].value / float(longer.answers[0].value)) ** 0.5), longer.answers[1]), used=(stops[0], *times, exponent))
    pairs, left = _rows_of(query.text, times)
    if len(pairs) == 1 and left and all(f.value == pairs[0][0] for f in left):  # "turns 15 s into 45; I leave it at 15 and open the lens"
        more = math.log2(pairs[0][1] / pairs[0][0])
        return done((marks.aperture(stops[0].value * 2.0 ** (-more / 2)), marks.stops(more)), stops[0], *times)
    if (often := _so_many_times(query, times)) is not None:
        more, told = often
        return done((marks.aperture(stops[0].value * 2.0 ** (-more / 2)), marks.stops(more)), stops[0], *times, *told)
    if not query.has("sheet_row") and not query.has("sheet_span"):
        added = [f for f in query.facts if f.quantity in ("stops", "signed")]
        plain = len(added) == len({f.value for f in times}) == 1 and times[0].value > 1 and _SHEET_SAYS.search(query.text) is not None and added[0].cue != "less"
        return done((marks.aperture(stops[0].value * 2.0 ** (-abs(added[0].value) / 2)),), stops[0], added[0], *times) if plain else None
    found = _by_sheet(query.with_facts(f for f in query.facts if f is not stops[0]), times)
    if found is None or len(found.answers) < 2 or not isinstance(found.answers[1].value, float):
        return found
    more = found.answers[1].value
    answers = (marks.aperture(stops[0].value * 2.0 ** (-more / 2)), found.answers[1])
    return replace(found, answers=answers, used=(stops[0], *found.used), working=(*found.working, f"opened {more:.3g} stops from f/{stops[0].value:g}"))


_OFTEN = Pattern(r"\b(?:(?P<word>twice|doubl(?:e|ed|es|ing)|tripl(?:e|ed|es|ing)|trebl(?:e|ed|es|ing)|quadrupl(?:e|ed|es|ing))|(?P<n>three|four|five|\d+(?:\.\d+)?) times)\b(?: (?:the|as|its|that|my))*(?: (?:metered|measured|exposure|time|long|much|one|light|it))*", re.I)
_OFTEN_IN_WORDS = {"twi": 2.0, "dou": 2.0, "tri": 3.0, "tre": 3.0, "qua": 4.0, "three": 3.0, "four": 4.0, "five": 5.0}


def _so_many_times(query: Query, times: list[Fact]) -> tuple[float, tuple[Fact, ...]] | None:
    """"the maker doubles the exposure at 8 s; I keep the time and open the lens": the stops of so many times, where a film is spoken of and nothing else is told to change."""
    found = _OFTEN.search(query.text)
    if found is None or len({f.value for f in times}) != 1 or times[0].value <= 1 or not (_SHEET_SAYS.search(query.text) or _FAILURE.found_in(query.text)) or any(query.has(q) for q in ("sheet_row", "sheet_span", "exponent", "distance", "nd")):
        return None
    if any(f.quantity in ("stops", "signed", "loss", "relation", "factor") for f in query.facts):
        return None
    said = (found["word"] or found["n"]).lower()
    value = _OFTEN_IN_WORDS.get(said[:3] if found["word"] else said) or float(said)
    return math.log2(value), tuple(f for f in query.facts if f.quantity in ("times", "number", "count") and found.start() <= f.start < found.end())


def _paired(between: str) -> bool:
    return bool(patterns.fullmatch(r"\W*(?:metered\W*)?(?:becomes?|needs?|wants?|turns? to|into|goes to|go to|gives?|is|are|to|turns into|->|=>|=|:|should be|means|corrected to|really|for)?(?:\W+(?:really|about|to))?\W*(?:metered)?\W*", between, re.I)) and not patterns.fullmatch(r"\s*[,;.?]?\s*", between)


_LOST = Pattern(r"\b(?:los(?:e|es|ing)|lost)\b|\bhow (?:far|many stops|much)\b(?:(?!\b(?:add|open|extra|more|give it|correct)\b)[^.?!;]){0,40}?\b(?:under\w*|short|down|too little|thin)\b", re.I)


_FAILS_FROM = 0.5
"""Seconds below which no film in use asks for more (data sheets begin at one second, a few at a half)."""


def stops_added(query: Query) -> Solution | None:
    """Extra stops of a lengthened time."""
    times = query.all("shutter")
    if query.has("sheet_row"):
        found = _by_sheet(query, times)
        return replace(found, answers=found.answers[::-1], lead="Add") if found is not None and found.answers else found
    exponent = query.last("exponent")
    if not times or exponent is None and not _FAILURE.found_in(query.text) or _ASIDE.search(query.text):
        return None
    if exponent and len({f.value for f in times}) == 1:
        found = _by_exponent(times[0], exponent)
        lost = _LOST.search(query.text) is not None
        stops = marks.stops(-float(found.answers[1].value)) if lost else found.answers[1]
        return done((stops, found.answers[0]), times[0], exponent, lead="Lost" if lost else "Add", notes=found.notes, working=found.working)
    if len({f.value for f in times}) == 2 and max(f.value for f in times) > _FAILS_FROM:
        lost = _LOST.search(query.text) is not None
        added = abs(math.log2(max(f.value for f in times) / min(f.value for f in times)))  # whichever was said first, the film's time is the longer
        return done((marks.stops(-added if lost else added),), *times, lead="Lost" if lost else "Add")
    return None


def factor(query: Query, ask: Ask) -> Solution | None:
    """"the exposure multiplier for a metered 20 s with an exponent of 1.3"."""
    times, exponent = query.all("shutter"), query.last("exponent")
    if len(times) != 1 or exponent is None or query.has("guide_number") or query.has("nd"):
        return None
    found = _by_exponent(times[0], exponent)
    longer = float(found.answers[0].value) / times[0].value
    return done((Quantity("factor", longer, "x"), *found.answers), times[0], exponent, notes=found.notes, working=found.working)
