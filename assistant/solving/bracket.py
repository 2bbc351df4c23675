"""Brackets: the frames of a bracket as apertures, shutter times or powers, in shooting order."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.physics.film import bracket_offsets
from assistant.query import Ask, Fact, Query
from assistant.records import record, replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import bracket_base, bracket_ends, marks
from assistant.solving.bracket_span import end_to_end
from assistant.solving.solution import Solution, needs

_TALK = Phrasings(r"\b(?:under|over),? (?:then )?(?:straight|normal|exact|correct|as metered|on the nose)\b[^.?!]{0,40}\b(?:over|under)\b|\bstops? (?:too )?dark\b[^.?!]*\bstops? (?:too )?light\b|\bstops? (?:too )?light\b[^.?!]*\bstops? (?:too )?dark\b|\b(?:under|over)\b[^.?!]*\b(?:next|then|second)\b[^.?!]*\b(?:last|then|third)\b[^.?!]*\b(?:under|over|normal|metered|exact)\b|\b(?:normal|straight|exact|metered)(?: one| frame| exposure)?(?: comes)? first\b[^.?!]*\b(?:under|over)\b[^.?!]*\bthen\b|\bstops? (?:under|over)(?: first)?, then\b[^.?!]*\bthen\b[^.?!]*\b(?:under|over)\b|\bnormal\b[^.?!]{0,20}\b(?:plus|over)\b[^.?!]{0,30}\b(?:minus|under)\b|\bthen (?:on the nose|normal|straight|as metered|right on)\b[^.?!]*\bthen\b|\b(?:exposures?|shots|photos|pictures)\b.*\b(?:apart|steps?|either|each (?:side|way))|\bframes?\b.*\b(?:around|round|about|apart|steps?|in (?:half|third|one|full))\b|(?<!on a )(?<!on the )(?<!on its )(?<!on my )(?<!flash )\bbracket(?:s|ing|ed)?\b(?![- ]mounted)|\b(?:negs?|negatives|sheets?|plates|slides|chromes)\b[^?]{0,60}\b(?:either|each) (?:side|way)\b|\b(?:frames?|sheets|plates)\b[^.?!]{0,30}\b(?:around|round|about)\b[^?!]{0,20}\bf\W?\d|\bframes?\b.*\b(?:over|under|either side|each side|each way|either way|both sides)\b|\b(?:over|under)\b.*\bframes?\b|\bframes?\b[^.?!]*\bfirst\b|\b(?:then|next|shots|photos|pictures|exposures)\b[^.?!]{0,40}\b(?:over|under)\b[^.?!]{0,20}(?:,|\b(?:then|last|third|finally|and)\b)[^.?!]{0,24}\b(?:over|under)\b|\bstops?\b[^.?!]{0,16}\b(?:either|each|both) (?:side|way)s?\b[^?!]*\bfirst\b", re.I)
_SHEETS = Pattern(r"\b(?:two|three|four|five|six|seven|[2-7]) (?:sheets|plates)\b", re.I)
_PLUS_MINUS = Pattern(r"[+]\s?[\d½⅓⅔][^+]*[-−]\s?[\d½⅓⅔]")
_NUMBER = r"(?:(?:a|one|two|three|half|\d+(?:\.\d+)?|\d/\d|[½⅓⅔])(?: (?:whole|full))?(?: and a half)?(?: (?:a|of a|thirds?(?: of a)?))? ?(?:stops?|ev)?|third of a stop)"
_SIGN = Pattern(r"\b(?P<over>(?<!most )over(?:[- ]?exposed)?|more|brighter|lighter|hotter|above|plus|up)\b|\b(?P<under>(?<!most )under(?:[- ]?exposed)?|less|darker|dimmer|below|minus|down)\b", re.I)
_STRAIGHT = Pattern(r"\b(?:normal|one right(?=,? (?:and|one)\b|[,;.])|(?:the|a) right one(?=,| first\b)|(?<=then )(?:a|the) right one|(?<=then )(?:the )?right(?: one| frame)?(?=[,;.])|on the nose|as metered|(?<!in the )exact(?! (?:order|same|sequence))|as (?:measured|found|worked out|calculated|it is|it stands|given)|the (?:measured|calculated|middle) (?:one|frame|exposure|value)|(?<=, )(?:right|exact)(?=,? (?:and|then|one|half|two)\b)|the middle(?=\W*(?:,|;|then|and|$))|unchanged|straight|spot on|dead on|correct(?: exposure)?|at the (?:metered|reading)|metered|as is|as read|right on|neutral|bang on|zero|(?<![\d.])0(?![\d.])|no change|at f)\b", re.I)
_EITHER = Pattern(r"either (?:side|way|direction)|each (?:side|way)|both (?:sides|ways)|plus (?:and|or|/) ?minus|over and under|under and over|\+ ?/? ?[-−]|±|above and below|up and down", re.I)
_STEP = Pattern(r"^\W*(?:steps?|increments?|apart|intervals?|at a time|between|each\b(?! (?:way|side))|spacing|jumps?)|^\W*bracket", re.I)


_OF_METAL = Pattern(r"\b(?:on|off|from|by|with|to|in|using) (?:an?|the|my|its|that) (?:\w+ ){0,2}?brackets?\b(?! (?:of|around|about|run|in|by)\b)|\b(?:flash|camera|l|side|handle|twin|straight|rotating|shoe|stand|hammerhead) brackets?\b|\bbrackets? (?:on|under|beside|to) (?:the|my) (?:camera|side|lens)\b|\bbracket-mounted\b|\bbrackets? (?:holding|carrying|that (?:holds?|takes?|carr(?:y|ies)))\b", re.I)
"""What a flash is screwed to."""


@record
class Base:
    """What is bracketed and from where."""

    quantity: str
    value: float
    used: tuple[Fact, ...]
    working: tuple[str, ...] = ()


_MAKE: dict[str, tuple[float, Callable[[float, str | None], Quantity]]] = {
    # quantity: the power of two its value takes for one stop more exposure
    "aperture": (-0.5, marks.aperture), "shutter": (1.0, marks.shutter), "power": (1.0, marks.power), "film_speed": (-1.0, marks.film_speed),
}


def solve(query: Query) -> Solution | None:
    """The settings of a bracket, or how many frames it takes; None when it is none."""
    found = (_safe_between(query) if query.asks_for("aperture") else None) or (bracket_ends.solve(query) if query.asks else None)
    if found is not None:
        return found
    text = _OF_METAL.sub(" ", query.text)
    of_frames = query.has("count") and bool([f for f in query.facts if f.quantity == "count" and f.unit == "frames"]) and "battery" not in query.cues and not query.has("max_count")
    if of_frames and query.asks_for("count") and _SETS.search(text) and not query.has("guide_number") and (filled := _on_a_roll(query)) is not None:
        return filled
    if not query.asks or not ("bracket" in query.cues and "bracket" in text.lower() or _TALK.found_in(text) or "+" in text and _PLUS_MINUS.search(text) or query.asks_for("count") and end_to_end(query)) or query.has("expired"):
        return None
    if query.asks_for("count") and _POPS_ASKED.search(text):
        return None
    if query.asks_for("ratio", "distance", "near_limit", "far_limit", "duration") or query.asks_for("guide_number") and not query.asks_for("count") or (query.asks_for("stops") and patterns.search(r"how (?:many stops|much|far (?:under|over|off|out))", query.text, re.I)):
        return None
    named = tuple(f for f in query.facts if f.quantity in ("stops", "relation") and f.said.strip().lower() == "one" and query.text[: f.start].lower().endswith("the "))  # "the one over": which frame
    query = query.with_facts(f for f in query.facts if f not in named) if named else query
    if "pop" not in text.lower():
        query = query.with_facts(replace(f, quantity="count", unit="frames") if f.quantity == "count" and f.unit == "pops" or f.quantity == "rows" and _SHEETS.search(text) else f for f in query.facts)  # "three shots"
    filled = _on_a_roll(query)
    if filled is not None:
        return filled
    offsets = frames(query)
    darkest, brightest = _DARKEST_FIRST.search(query.text), _BRIGHTEST_FIRST.search(query.text)
    if (darkest is None) != (brightest is None) and list(offsets) in (sorted(offsets), sorted(offsets, reverse=True)):
        offsets = tuple(sorted(offsets, reverse=brightest is not None))
    if not offsets or len(offsets) == 1 and query.asks_for("film_speed") and "bracket" not in text.lower():
        return None
    used = tuple(f for f in query.facts if f.quantity in ("stops", "count", "signed", "relation", "ev_stops", "loss", "number_range") or (f.quantity in ("power", "share") and f.said.lower() in ("half", "a half", "third", "a third")))
    if query.asks_for("count") or patterns.search(r"how many (?:frames|exposures|shots)", query.text, re.I):
        return _counted(query, text, offsets, used)
    base = _base(query)
    if (untold := bracket_base.untold(query, offsets, _spelled(query))) is not None:
        return needs(("stops",), f"I need all {untold[0]} frames: I see {untold[1]} of them told.", used, "bracket")
    if base is None:
        return needs(("aperture",), "I need the setting to bracket around: the aperture, or the guide number and the distance.", used, "bracket")
    weight, make = _MAKE[base.quantity]
    if len(offsets) > 1 and _ENDS_ONLY.search(query.text):
        ends = sorted(base.value * 2 ** (weight * o) for o in (min(offsets), max(offsets)))
        pair = (make(ends[0], "from"), make(ends[1], "to"))
        return replace(_said(query, base, pair, (min(offsets), max(offsets))), lead=f"From {pair[0].set} to {pair[1].set}.", used=(*base.used, *used))
    several = len(offsets) > 1
    if several and (end := bracket_ends.end_asked(query)) is not None and list(offsets) == sorted(offsets):
        return Solution(answers=(make(base.value * 2 ** (weight * end(offsets)), None),), used=(*base.used, *used), topic="bracket", working=base.working)
    answers = tuple(make(base.value * 2 ** (weight * o), _name(o) if several else None) for o in offsets)
    return replace(_said(query, base, answers, offsets), used=(*base.used, *used, *(replace(f, quantity="remark") for f in named)))


def _counted(query: Query, text: str, offsets: tuple[float, ...], used: tuple[Fact, ...]) -> Solution:
    """How many frames it takes, or how many such brackets a roll holds."""
    held = [f for f in query.all("count") if f.unit == "frames"]
    if len(held) == 1 and _SETS.search(text) and end_to_end(query):
        return bracket_ends.on_a_roll(query, held[0], replace(held[0], value=float(len(offsets))))
    through = _through(query)
    if through is not None:
        return through
    return Solution(answers=(marks.count(len(offsets), "frames"),), used=used, topic="bracket")


_END = r"(?:least|most|widest|smallest|largest|longest|shortest|slowest|fastest|highest|lowest|greatest|narrowest|brightest|darkest)"
_ENDS_ONLY = Pattern(rf"\b(?:what|which|how)\b[^.?!]{{0,40}}\b(?:{_END} (?:\w+ )?(?:and|or) (?:the )?{_END}|(?:two )?(?:extremes?|outermost|outer|ends)\b)(?! frames?| first)", re.I)
"""The two ends of a bracket are asked for, and not its frames."""
_BETWEEN = Pattern(r"\b(?:between|from) (?:which|what)(?: two)? (?:apertures?|f-?(?:stops?|numbers?)|openings|settings|marks)\b|\b(?:what|which) (?:is the )?range of (?:apertures|f-?stops|f-?numbers)\b|\bwhich (?:two )?(?:apertures|f-?stops|f-?numbers) (?:bound|limit|are the (?:limits|ends))\b", re.I)


def _safe_between(query: Query) -> Solution | None:
    """"f/8 is right and the film takes half a stop either way: between which apertures am I safe": the two ends, and no frames between."""
    sizes, read = [f for f in query.facts if f.quantity in ("stops", "loss", "relation", "signed")], query.all("aperture")
    if not _BETWEEN.search(query.text) or len(read) != 1 or not sizes or query.has("guide_number"):
        return None
    over, under = (next((abs(f.value) for f in sizes if f.cue == way), abs(sizes[-1].value) if _EITHER.search(query.text) or len(sizes) == 1 else 0.0) for way in ("more", "less"))
    ends = (marks.aperture(read[0].value * 2 ** (-over / 2), "from"), marks.aperture(read[0].value * 2 ** (under / 2), "to"))
    return Solution(answers=ends, used=(read[0], *sizes), topic="bracket", lead=f"From {ends[0].set} to {ends[1].set}.")


def _through(query: Query) -> Solution | None:
    """"I bracket from f/5.6 to f/11 in half stops: how many frames?": both ends are frames."""
    span, sizes = query.last("aperture_range"), [f for f in query.facts if f.quantity in ("stops", "signed", "relation", "ev_stops")]
    if span is None or len(sizes) != 1 or not sizes[0].value or span.value <= 0 or span.other <= 0:
        return None
    steps = abs(aperture_difference_stops(span.value, span.other)) / abs(sizes[0].value)
    if abs(steps - round(steps)) > 0.02:
        return None
    return Solution(answers=(marks.count(round(steps) + 1, "frames"),), used=(span, sizes[0]), topic="bracket", notes=("Both ends are counted.",))


_POPS_ASKED = Pattern(r"\b(?:how many|number of) (?:more |extra |full |such )*(?:pops|flashes|bursts)\b", re.I)
_SETS = Pattern(r"\bhow many (?:whole |full |complete |such )?(?:brackets|subjects|set-?ups|scenes|sets|sitters|poses|groups|views|places)\b", re.I)


def _on_a_roll(query: Query) -> Solution | None:
    """"36 exposures, three frames a bracket, how many brackets": whole ones, rounded down (contract 23)."""
    counts = [f for f in query.facts if f.quantity == "count" and f.unit in ("frames", "pops", "exposures") and f.value > 1]
    if len(counts) == 2 and any(f.unit == "pops" for f in counts) and any(a.unit == "sets" for a in query.asks):
        return None  # sets of cells
    if len(counts) != 2 or not query.asks_for("count") or query.has("stops", "aperture") and not _SETS.search(query.text):
        return None
    held, each = sorted(counts, key=lambda f: -f.value)
    return bracket_ends.on_a_roll(query, held, each)


def _name(offset: float) -> str:
    return "normal" if offset == 0 else f"{speak_stops(abs(offset))} {'over' if offset > 0 else 'under'}"


def _said(query: Query, base: Base, answers: tuple[Quantity, ...], offsets: tuple[float, ...]) -> Solution:
    notes: list[str] = []
    if base.quantity == "shutter":
        notes.append("The shutter brackets the ambient light only; the flash stays the same in every frame.")
    if base.quantity == "aperture" and query.has("guide_number") and query.has("shutter"):
        notes.append("The aperture moves flash and ambient light together.")
    over = [a for a in answers if base.quantity == "power" and isinstance(a.value, float) and a.value > 1.0005]
    if over:
        return Solution("out_of_reach", "", answers, notes=("The flash has no more than full power: open the lens for the frames over.",), topic="bracket")
    if len(answers) > 1 and not _spelled_out(query) and list(offsets) in (sorted(offsets), sorted(offsets, reverse=True)):
        notes.append("In order from most to least exposure." if offsets[0] > offsets[-1] else "In order from least to most exposure.")
    lead = ", ".join(str(a.set) for a in answers) + (": " + ", ".join(_name(o) for o in offsets) if len(answers) > 1 else "") + "."
    return Solution(answers=answers, lead=lead if len(answers) > 1 else "", notes=tuple(notes), topic="bracket", working=base.working)


_BY = Pattern(r"\b(?:by|with|using|on|through|in|bracket(?:ing|ed)?)(?: only| just)? (?:changing |altering |varying |moving |turning )?(?:only )?(?:the |my )?(?:(?:flash|lens|shutter) )?(?P<what>power|index|film speed|shutter(?: (?:speeds?|times?))?|aperture|f-?stop|lens opening)(?: alone| only| settings?| dial| ring)?\b(?! (?:is|at|of|set|alone gives)\b)", re.I)
_MOVED = {"power": "power", "shutter": "shutter", "speed": "shutter", "speeds": "shutter", "time": "shutter", "times": "shutter", "aperture": "aperture", "index": "film_speed", "f-stop": "aperture", "fstop": "aperture", "opening": "aperture"}
"""What is changed from frame to frame, where that is said: "I bracket by power, without touching the aperture"."""


def _base(query: Query) -> Base | None:
    """The setting in the middle: said, or worked out from guide number and distance."""
    by = _BY.search(query.text)
    asked = ("film_speed" if by["what"].lower().startswith("film") else _MOVED[by["what"].lower().split()[-1]]) if by else next((a.quantity for a in query.asks if a.quantity in _MAKE), "aperture")
    asked = "shutter" if not by and asked == "aperture" and query.asks_for("speed") and query.has("shutter") else asked
    order = (asked, "aperture", "shutter", "power") if asked != "aperture" or query.has("aperture") or query.has("guide_number") else ("shutter", "power")
    for quantity in order:
        fact = query.last(quantity)
        if fact is not None and quantity == asked or (fact is not None and not query.has("guide_number")):
            assert fact is not None
            return Base(quantity, fact.value, (fact,))
        if quantity == "aperture" and query.has("guide_number"):
            return _from_flash(query)
    return None


def _from_flash(query: Query) -> Base | None:
    from assistant.solving import flash

    plain = tuple(f for f in query.facts if f.quantity not in ("stops", "count", "signed", "place", "relation", "power_down", "loss"))
    found = flash.solve(Query(query.text, plain, (Ask("aperture"),)))
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return None
    return Base("aperture", found.answers[0].value, found.used, tuple(f"{entry.quantity} {entry.value:.4g}: {entry.stops:+.2f} stops" for entry in found.lines))


# --- the frames ------------------------------------------------------------------------------------


_MOST = r"(?:(?:the )?(?:most|greatest|highest|more) (?:generous(?:ly)?(?: exposed| exposure)?|exposure|exposed|light|over\w*)|(?:the )?(?:brightest|bright|lightest|light|densest|hottest|longest|fullest|heaviest|fattest|fat|heavy|dense|widest|wide|biggest|largest|strongest)|over\w*|plus)"
_LEAST = r"(?:(?:the )?(?:least|smallest|lowest|less) (?:exposure|exposed|light)|(?:the )?most under\w*|(?:the )?(?:darkest|dark|thinnest|thin|shortest|weakest)|under\w*|minus)"
_STARTS = r"\b(?:start|begin|open|lead|go)\w*(?: (?:off|out|it|them))?(?: with| from| at| on| by)?(?: the)?(?: \w+){0,5}? "
_BRIGHTEST_FIRST = Pattern(rf"\border\W+{_MOST}\b|{_STARTS}{_MOST}\b|\bfrom {_MOST}\b[^.?!]{{0,24}}\bto\b|\b{_MOST}(?: (?:one|frame|exposure|opening|stop|negative|neg|sheet|aperture))*,? (?:comes |goes )?first\b|\b{_MOST} to {_LEAST}\b", re.I)
_DARKEST_FIRST = Pattern(rf"\border\W+{_LEAST}\b|{_STARTS}{_LEAST}\b|\bfrom {_LEAST}\b[^.?!]{{0,24}}\bto\b|\b{_LEAST}(?: (?:one|frame|exposure|opening|stop|negative|neg|sheet|aperture))*,? (?:comes |goes )?first\b|\b{_LEAST} to {_MOST}\b", re.I)
_FROM_TO = Pattern(r"\bfrom\b[^.?]{0,24}\b(?:under|below|over|above|less|more|minus|plus|down|up)\b[^.?]{0,6}\bto\b|\bfrom\s*[-+−][^.?]{0,20}\bto\b", re.I)
_IN_TURN = Pattern(r"\bthen\b|\bfirst\b|\bsecond\b|\bnext\b|\blast(?:ly)?\b|\bin (?:that|this|the following) (?:order|sequence)\b|\border\W", re.I)
_BY_STEPS = Pattern(r"\b(?:in|by) (whole|full|single|half|third)[- ](?:of a )?(?:stops?|steps?)\b", re.I)
_IN_STEPS = Pattern(r"\b(?:(?:in|by|of|at|with) )?(whole|full|one|single|half|third)[- ](?:of a )?(?:stops?|steps?)\b", re.I)


def frames(query: Query) -> tuple[float, ...]:
    """Stops off the middle of each frame, in shooting order (contract: one answer a frame)."""
    sizes = [f for f in query.facts if f.quantity in ("stops", "signed", "relation", "ev_stops", "power_down", "loss")]
    if not sizes:
        steps_said, held = _IN_STEPS.search(query.text), next((f for f in query.facts if f.quantity == "count" and f.unit == "frames" and f.value > 1), None)
        if steps_said and held is not None:
            told = _in_turn(query.text, _step_said(steps_said)) if held.value == 3 and _IN_TURN.search(query.text) else ()
            return told or bracket_offsets(int(held.value), _step_said(steps_said))
        return _spelled(query)
    if told := end_to_end(query):
        return told
    text = query.text
    if _ONE_WAY.search(text):
        return ()
    if _IN_TURN.search(text) and len(told := _spelled(query)) > 2 and 0.0 in told and min(told) < 0 < max(told):
        return told
    span = _FROM_TO.search(text)
    ends = [f for f in sizes if (f.cue in ("less", "more") or f.unit in ("+", "-")) and not _STEP.match(text[f.end : f.end + 14])]
    if span is not None and len(ends) == 2:
        step = next((abs(f.value) for f in sizes if f not in ends and f.value), _step_said(_IN_STEPS.search(text)))
        low, high = (abs(f.value) * (1 if f.cue == "more" or f.unit == "+" else -1) for f in ends)
        if high > low and step > 0 and (high - low) / step < 50:
            return tuple(low + n * step for n in range(round((high - low) / step) + 1))
    many = next((f for f in query.facts if f.quantity == "count" and f.unit == "frames"), None)
    if len(sizes) > 0 and any(f.origin == "kept" for f in sizes):
        sizes = [f for f in sizes if f.origin != "kept"] or sizes
    steps = [f for f in sizes if _STEP.match(text[f.end : f.end + 14]) or patterns.match(r"\W*steps", text[f.end :], re.I) or patterns.search(r"steps?$", text[f.start : f.end], re.I) or (len(sizes) > 1 and patterns.search(r"\b(?:in|by) (?:steps of )?$", text[: f.start], re.I))]
    extent = [f for f in sizes if f not in steps]
    either = bool(_EITHER.search(text))
    if many is not None and not either and _IN_TURN.search(text) and len(_spelled(query)) == many.value:
        return _spelled(query)
    if many is not None and len(sizes) == 1 and len(_by_words(query)) == many.value:
        return _spelled_in_order(query)
    sides = patterns.search(r"\b(?P<n>one|two|three|[1-5]) (?:frames? |shots? |stops? )?(?:on )?(?:either|each) side", text, re.I)
    if sides and len(sizes) == 1 and not any(f.start <= sides.start("n") < f.end for f in sizes):
        each = {"one": 1, "two": 2, "three": 3}.get(sides.group("n").lower()) or int(sides.group("n"))
        return bracket_offsets(2 * each + 1, abs(sizes[0].value))
    in_turn = _named_in_turn(query) if either and extent else ()
    if in_turn and set(in_turn) == set(bracket_offsets(3, abs(extent[0].value))):
        return in_turn
    if extent and (either or (steps and many is None)):
        return _evenly(abs(extent[-1].value), abs(steps[-1].value) if steps else _step_said(by_steps) if (by_steps := _BY_STEPS.search(text)) else (abs(extent[-1].value) * 2 / (many.value - 1) if many and many.value > 1 else abs(extent[-1].value)))
    if many and many.value > 1 and not either and (from_there := _FROM_THERE.search(text)):
        way = 1 if from_there["up"] or from_there["over"] else -1
        return tuple(way * n * abs((steps or sizes)[-1].value) for n in range(int(many.value)))
    if many and many.value > 1 and (steps or (len(sizes) == 1 and not _spelled_out(query))):
        return bracket_offsets(int(many.value), abs((steps or sizes)[-1].value))
    spelled = _named_in_turn(query) if len(steps) == len(sizes) == 1 else _spelled(query)
    if not spelled and len(sizes) == 1:
        return bracket_offsets(3, abs(sizes[0].value)) if not _SIGN.search(text) else ()
    return spelled


_ONE_WAY = Pattern(r"\bfrom (?:f\W?\d[\d.]*|1/\d+) (?:only )?(?:up|down)(?:wards?)?\b(?! to\b)", re.I)
"""To larger f-numbers or to more light? It is not told."""
_FROM_THERE = Pattern(r"\b(?:from (?:there|that|it|here) (?:only )?(?:down(?:wards?)?|(?P<up>up(?:wards?)?))|only (?:downwards?|(?P<over>upwards?)))\b", re.I)
"""A bracket to one side: "in half stops from there downwards"."""


def _step_said(said: re.Match[str] | None) -> float:
    """The size of "in half stops", "in thirds"; a whole stop where none is said."""
    return {"h": 0.5, "t": 1 / 3}.get(said[1][0].lower(), 1.0) if said else 1.0


def _spelled_in_order(query: Query) -> tuple[float, ...]:
    return tuple(value for _, value in sorted(_by_words(query)))


def _evenly(extent: float, step: float) -> tuple[float, ...]:
    return bracket_offsets(2 * round(extent / step) + 1, step) if step > 0 and extent / step < 50 else ()


def _spelled_out(query: Query) -> bool:
    return any(_spelled(query)) and not _EITHER.search(query.text)


_ONE_OF_THEM = Pattern(r"\b(?:one|then|next|other|second|third|last)\b[^,.;]{0,14}$", re.I)


def _spelled(query: Query) -> tuple[float, ...]:
    """Frames named one by one: "first on the nose, second one stop over, third one under"."""
    text = query.text
    marked: list[tuple[int, float]] = []
    taken: list[tuple[int, int]] = []
    for m in patterns.finditer(rf"(?P<n>\b{_NUMBER})\s*(?:too )?(?P<way>over|under|more|less|brighter|darker|dimmer|dark|light|above|below|down|up)\b|(?P<sign>plus|minus|\+|-(?=[\d½⅓⅔]))\s*(?P<m>{_NUMBER})", text, re.I):
        sign = _direction(m.group("way") or m.group("sign") or "")
        if (m.group("n") or "").strip().lower() == "one" and text[: m.start()].lower().endswith("the "):
            continue  # "the one over": which frame, not by how much
        size = _size(query, m.start(), m.end(), m.group("n") or m.group("m") or "")
        if sign and size:
            marked.append((m.start(), sign * size))
            taken.append(m.span())
    for m in _STRAIGHT.finditer(text):
        if not any(a <= m.start() < b for a, b in taken) and not (m.group().lower() == "metered" and patterns.match(r"\W*(?:at )?f\W?\d", text[m.end() :], re.I)) and (m.group().lower() not in ("metered", "at f", "as metered") or len(marked) > 1 or marked and _ONE_OF_THEM.search(text[: m.start()]) is not None):
            marked.append((m.start(), 0.0))
    if all(value == 0 for _, value in marked):
        marked = _by_words(query) or marked
    base = bracket_base.place(query, marked)
    if base is not None:
        marked.append((base, 0.0))  # "one stop over, the calculated f/5.6, one stop under"
    marked.sort()
    while len(marked) > 2 and marked[0][1] == 0 and any(value == 0 for _, value in marked[1:]):
        marked = marked[1:]  # "normal power is a half. one under first, then normal, then one over"
    out = [value for _, value in marked]
    if patterns.search(r"\bbracket", text, re.I) and len(out) == 2 and out[0] == -out[1] and not any(f.quantity == "count" and f.value == 2 for f in query.facts) and not patterns.search(r"\btwo[- ](?:frame|shot)", text, re.I):
        out = [0.0, *out]
    return tuple(v for n, v in enumerate(out) if v != 0 or v not in out[:n])


def _by_words(query: Query) -> list[tuple[int, float]]:
    """"half a stop: under, then normal, then over": one size, the order in words."""
    sizes = [f for f in query.facts if f.quantity in ("stops", "signed")]
    if len(sizes) != 1:
        return []
    start = sizes[0].end
    found = [(m.start(), abs(sizes[0].value) if m.group("over") else -abs(sizes[0].value)) for m in _SIGN.finditer(query.text) if m.start() >= start]
    found += [(m.start(), 0.0) for m in _STRAIGHT.finditer(query.text) if m.start() >= start]
    return found if len({value for _, value in found}) >= 2 else []


def _named_in_turn(query: Query) -> tuple[float, ...]:
    """"over, normal, under, two thirds apart", "a stop each way: normal, then one over, then one under": one size, the frames in the order of their words."""
    sizes = [f for f in query.facts if f.quantity in ("stops", "signed", "relation")]
    if not sizes or len({abs(f.value) for f in sizes}) != 1:
        return ()
    return _in_turn(query.text, abs(sizes[0].value))


def _in_turn(text: str, size: float) -> tuple[float, ...]:
    """Three frames of one size, in the order of their words."""
    text = _EITHER.sub(lambda m: " " * len(m.group()), text)
    found = [(m.start(), size if m.group("over") else -size) for m in _SIGN.finditer(text)] + [(m.start(), 0.0) for m in _STRAIGHT.finditer(text) if m.group().lower() not in ("at f", "metered")]
    order = tuple(dict.fromkeys(value for _, value in sorted(found)))
    return order if len(order) == 3 and len(found) <= 4 else ()


def _direction(word: str) -> int:
    return 1 if word.lower() in ("over", "more", "brighter", "lighter", "light", "above", "up", "plus", "+") else -1 if word else 0


def _size(query: Query, start: int, end: int, words: str) -> float:
    fact = next((f for f in query.facts if f.quantity in ("stops", "signed", "relation", "ev_stops") and f.start < end and f.end > start and f.origin == "said"), None)
    if fact is not None and not math.isnan(fact.value):
        return abs(fact.value)
    words = words.lower().strip()
    table = {"a": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "half": 0.5, "½": 0.5, "⅓": 1 / 3, "⅔": 2 / 3}
    first = words.split()[0] if words else ""
    if first in table:
        return table[first] + (0.5 if "and a half" in words else 0.0)
    try:
        top, _, bottom = first.partition("/")
        return float(top) / float(bottom or 1)
    except ValueError:
        return 0.0
