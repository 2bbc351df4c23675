"""The short words of a hurried hand in their usual wording: "one under", "2.8 or 8", "at a quarter", "400 box, 20 years out".

Each leaves out a word that only its neighbours tell. It is put in where they leave no choice, and nowhere else.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.language.level_lights import with_level_as_stops
from assistant.language.places_named import with_places_named
from assistant.language.spoken_marks import with_their_f
from assistant.patterns import Pattern
from assistant.places import ROOMS

_TWO_PLACES = Pattern(r"\b(?:lights|heads|flashes|lamps|strobes|guns|softboxes|umbrellas|reflectors|panels|boards|bulbs|windows|clamshell|stacked|bracket\w*|frames?|shots|exposures|another)\b", re.I)
"""Of which one may stand over or under another."""
_ONE_OVER = Pattern(r"(?<!the )(?<!that )(?<!this )(?<!which )(?<!each )(?<!only )(?<!no )(?<!other )(?<![\w./-])(?:one|1) (?P<way>over|under)(?=\s*(?:$|[,;:?!]|\.(?!\d)))", re.I)
_STOPS_SAID = Pattern(r"\b(?:stop|frames?|ev)\b", re.I)


def _one_stop(said: str) -> str:
    """"I want the flash one under" is a stop, where nothing told stands over or under another."""
    found = list(_ONE_OVER.finditer(said))
    if len(found) != 1 or _TWO_PLACES.search(said):
        return said
    return _ONE_OVER.sub(r"one stop \g<way>", said)


_MARK = r"(?:1\.4|1\.8|2|2\.8|3\.5|4|4\.5|5\.6|6\.3|8|11|16|22|32)"
_BARE = r"(?<![\w./=-])(?<!gn )(?<!guide )(?<!iso )(?<!f )"
_NO_UNIT = r"(?![\w.%:/-]*\d)(?! ?(?:stops?|times|x|mm|cm|m|ft|feet|foot|met(?:re|er)s?|pops?|flashes|frames?|heads?|lights?|shots?|seconds?|secs?|s|hours?|minutes?|years?|ws|j|joules|inch(?:es)?|yards?|volts?|v|thirds?|people|rows?|sets|rolls|to one|and a|to)\b)(?![\"'°])"
_EITHER_MARK = Pattern(rf"{_BARE}(?P<one>{_MARK}) or (?:f/? ?)?(?P<two>{_MARK}){_NO_UNIT}", re.I)
_FOR_DEPTH = Pattern(rf"^(?P<two>\W*f/{_MARK} or f/{_MARK}),? for (?:the )?(?P<which>more|most|less|least|deeper|greater) (?:depth|dof)(?: of field)?\b", re.I)
_TENTHS = (".4", ".8", ".5", ".6", ".3")


def _either_stop(said: str) -> str:
    """"2.8 or 8 for more depth": f-numbers both, since one of them is a mark that has tenths."""
    said = _EITHER_MARK.sub(lambda m: f"f/{m['one']} or f/{m['two']}" if any(m[side].endswith(_TENTHS) for side in ("one", "two")) else m[0], said)
    return _FOR_DEPTH.sub(r"\g<two>, which gives \g<which> depth of field", said) if "which" not in said else said


_ROOM_AT = Pattern(rf"\b(?P<room>(?:(?:{ROOMS})|ambient|daylight|room|window|sky|background|scene)(?: light)?(?:'s| is| reads| meters| metered| read| was|:)?) (?P<time>1/\d{{1,4}}) (?:at|@|and) (?:f/? ?)?(?P<stop>{_MARK}){_NO_UNIT}", re.I)


def _room_at(said: str) -> str:
    """"room is 1/8 at 5.6": a time and an f-number."""
    return _ROOM_AT.sub(r"\g<room> \g<time> s at f/\g<stop>", said)


_CLOSING = Pattern(rf"\b(?P<way>closing|stopping|opening|going|close|stop|open)(?: the lens)?(?: (?:down|up))?(?: from)? (?P<one>{_MARK}) (?:down to|up to|to) (?P<two>{_MARK}){_NO_UNIT}", re.I)
_OF_DEPTH = Pattern(r"\b(?:depth|dof|in focus|sharp\w*|diffraction)\b", re.I)
_OTHER_SCALES = Pattern(r"\b(?:feet|foot|ft|met(?:re|er)s?|m|mm|focus\w*)\b", re.I)


def _from_stop_to_stop(said: str) -> str:
    """"closing from 4 to 11 gives less depth of field": f-numbers, where only they are spoken of."""
    if not _OF_DEPTH.search(said) or _OTHER_SCALES.search(said):
        return said
    return _CLOSING.sub(lambda m: m[0] if m["way"].lower() == "going" and float(m["one"]) == float(m["two"]) else f"{'opening up' if float(m['two']) < float(m['one']) else 'stopping down'} from f/{m['one']} to f/{m['two']}", said)


_SPEED = r"(?:25|32|50|64|80|100|125|160|200|250|320|400|500|640|800|1000|1600|3200)"
_AS_IF = Pattern(rf"(?:(?<=shot )|(?<=exposed )|(?<=metered ))(?:the|my|a|that) (?:whole )?(?:roll|film|lot|thing|reel) as if (?:it (?:was|were) |at |for )?(?P<rated>{_SPEED})(?=\s*(?:$|[,;:?!]|\.(?!\d)))|\bas if (?:it (?:was|were) |at |for )?(?P<speed>{_SPEED})(?=\s*(?:$|[,;:?!]|\.(?!\d)))", re.I)
_EITHER_FILM = Pattern(rf"^\W*(?P<one>{_SPEED}) or (?P<two>{_SPEED})(?=\s*[,;:?-])", re.I)
_GUIDE_TOLD = Pattern(r"\b(?:gn|guide number|guide) (?:of |is )?\d", re.I)
_SPEED_TOLD = Pattern(r"\b(?:iso|asa|film)\b", re.I)
_BOX = Pattern(rf"(?<![\w./])(?P<speed>{_SPEED}) box\b(?! speed)|\bbox (?P<after>{_SPEED})\b(?! ?(?:ws|j|mm|cm|ft|feet|m)\b)", re.I)
_INDEX = Pattern(r"\b(?P<asks>what|which) index\b", re.I)
_YEARS_OUT = Pattern(r"\b(?P<many>\d+|ten|fifteen|twenty|thirty|forty|fifty) years? (?:out|over|past(?: it)?|gone)(?=\s*(?:$|[,;:?!]|\.(?!\d)))", re.I)
_OF_FILM = Pattern(r"\b(?:film|roll|rolls|box|stock|iso|asa|emulsion)\b|\b(?:loaded|rate[ds]?|shot)\b", re.I)


def _of_films(said: str) -> str:
    """"shot the lot as if 100", "100 or 400, gn 20 at iso 100", "400 box": film speeds."""
    said = _AS_IF.sub(lambda m: f"it at ISO {m['rated']}" if m["rated"] else f"at ISO {m['speed']}", said)
    said = _INDEX.sub(r"\g<asks> exposure index", said)
    if _EITHER_FILM.may_match(said) and _GUIDE_TOLD.search(said) and _SPEED_TOLD.search(said):
        said = _EITHER_FILM.sub(r"ISO \g<one> or ISO \g<two>", said)
    if _OF_FILM.search(said) or _YEARS_OUT.fullmatch(said.strip(" .?!")):
        said = _YEARS_OUT.sub(r"\g<many> years out of date", said)
    return _BOX.sub(lambda m: f"box speed ISO {m['speed'] or m['after']}", said)


_PART = r"(?:a |an |one )?(?P<part>half|quarter|eighth|sixteenth|thirty-second|1/2|1/4|1/8|1/16|1/32)"
_AT_A_PART = Pattern(rf"\bat {_PART}(?=\s*(?:$|[,;:?!]|\.(?!\d)))(?! power)", re.I)
_CHARGES = Pattern(r"\brecycl\w*\b", re.I)
_RECYCLE_FIRST = Pattern(r"^\W*(?:the )?(?:recycle|recycling)(?: time)?(?= (?:at|on) )", re.I)
_HOW_MANY = Pattern(r"\bhow many (?P<what>flashes|pops|full pops|shots)\b", re.I)
_AT_FULL = Pattern(r"(?<![\w./])(?P<many>\d{2,4})(?= (?:at|on) (?:full|half|a quarter|quarter|1/\d+)\b)", re.I)
_OTHER_FIGURES = Pattern(r"\bf ?/|\b(?:gn|guide|iso|asa|ws|joules|watt|volts?)\b", re.I)
"""Beside which a bare figure at full power may be no number of pops."""
_IN_STEP = Pattern(r"[,;] ?(?:and )?(?:say|assume|assuming|reckon|i reckon|supposing|it|goes|and it)(?: (?:it|that|just))? ?(?:scales|goes)?(?: (?:evenly|in step|straight|in proportion|with (?:the )?(?:power|energy)))?(?=\s*(?:$|[,;:?!]|\.(?!\d)))", re.I)


def _of_charge(said: str) -> str:
    """"recycle at a quarter? 8 sec on full", "how many flashes at quarter power, 200 at full"."""
    many = _HOW_MANY.search(said)
    if many is not None and _AT_FULL.may_match(said) and not _OTHER_FIGURES.search(said):
        return _AT_FULL.sub(rf"\g<many> {many['what'].split()[-1]}", _IN_STEP.sub("", said), count=1)
    if not _CHARGES.search(said):
        return said
    return _RECYCLE_FIRST.sub("how long does it recycle", _AT_A_PART.sub(r"at \g<part> power", _IN_STEP.sub("", said)))


_STOP_BOX = Pattern(r"\b(?P<many>(?:one|two|three|half|1|2|3|1\.5|a half)[ -]stop) box\b", re.I)
_GONE = Pattern(r"\b(?P<many>stops?) gone(?=\s*(?:$|[,;:?!]|\.(?!\d)))", re.I)
_POWER = Pattern(r"\bpower\b", re.I)
_GREY = Pattern(r"\b(?:nds?|neutral|density|filters?)\b", re.I)
_TIMES_BACK = Pattern(r"\b(?P<many>\d+(?:\.\d+)? times|twice|double|(?:two|three|four) times) (?:further|farther)(?: (?:back|away|off|out))?\b(?! than)", re.I)
_CAMERA = Pattern(r"\b(?:camera|tripod|lens|focus\w*|depth|background|backdrop|wall|screen|magnif\w*)\b", re.I)
_METERED = Pattern(r"\b(?:stops?|light)\b", re.I)
_WHITE = Pattern(r"\b(?:paper|backdrop|background|cyc|cove|sweep|seamless)\b", re.I)
_THE_WHITE = Pattern(r"\bthe white(?= (?:is |reads? |to read |to be |sits |at |a )?(?:one|two|three|half|\d|f/))", re.I)
_STAND_WITHIN = Pattern(r"\bwhere can (?P<who>they|she|he|i|we|people|somebody|one) stand and (?:stay|be|keep|still be) (?:inside|within)\b", re.I)
_EITHER_WAY = Pattern(r"\b(?P<many>half a stop|a third of a stop|a stop|one stop|1/3 stop|1/2 stop|two thirds of a stop|two stops) (?:either|each) way\b", re.I)
_ACROSS_FOOT = Pattern(r"\b(?P<many>\d+(?:\.\d+)? ?(?:v|volts?)) (?:across|on|at|over) (?:the |its )?(?:foot|hot ?shoe|shoe|contacts?|pins?|terminals|sync (?:lead|cord|plug))\b", re.I)
_DIN_IS = Pattern(r"^\W*(?P<claim>(?:a |one |two |three |\d+ )(?:degrees? )?din (?:more|up|higher|faster|less|lower|down|slower) (?:is|are|means?|makes?) [^,.;?]+)\?\s*$", re.I)


_THAN_RIGHT = Pattern(r"\b(?P<how>(?:brighter|darker|hotter|dimmer|lighter) than|\bstops? (?:over|under|above|below)) (?:what is |what's )?(?:correct|right|proper)(?: exposure)?(?=\s*(?:$|[,.;:!]))", re.I)


def _of_light(said: str) -> str:
    """"1.4 times further back costs a stop", "two-stop box", "the white two over"."""
    if _STOP_BOX.may_match(said) and not _POWER.search(said):
        said = _STOP_BOX.sub(r"\g<many> softbox", said)
    if _GONE.may_match(said) and not _GREY.search(said):
        said = _GONE.sub(r"\g<many> lost", said)
    if _TIMES_BACK.may_match(said) and _METERED.search(said) and not _CAMERA.search(said):
        said = _TIMES_BACK.sub(r"\g<many> the distance", said)
    if _THAN_RIGHT.may_match(said):
        said = _THAN_RIGHT.sub(r"\g<how> normal", said)  # "let the screen go a stop brighter than correct"
    if _WHITE.may_match(said) and _WHITE.search(said):
        said = _THE_WHITE.sub("the background", said)
    return said


def _asked_in_short(said: str) -> str:
    """"where can they stand and stay inside half a stop either way", "3 DIN more is one stop faster?"."""
    if _STAND_WITHIN.may_match(said):
        said = _EITHER_WAY.sub(r"\g<many>", _STAND_WITHIN.sub(r"between what distances can \g<who> stand and stay within", said))
    said = _ACROSS_FOOT.sub(r"trigger voltage \g<many>", said)
    return _DIN_IS.sub(r"\g<claim>, is that right?", said)


_COLOURED_ONE = Pattern(r"\b(?P<which>(?:the|an?|my|his|her) (?:(?:light|dark|deep|pale|half|full|quarter) )?(?:yellow|orange|red|green|blue|amber)) one(?=\s*(?:$|[,.;:?!]|(?:that|which|is|was|it|at|with|of|on|and|eats?|takes?|costs?|loses?|robs)\b(?! (?:a half|and a|a third))))", re.I)


def _coloured(said: str) -> str:
    """"with the orange one, two stops": a glass or a gel, and no figure."""
    return _COLOURED_ONE.sub(r"\g<which>", said) if " one" in said else said


_FULL_POPS = Pattern(r"\b(?P<many>\d+|two|three|four|five|six|eight|ten|twelve|sixteen) full (?P<what>pops|bursts|flashes)\b(?=[^?]*\bhow many\b[^?]*\b(?:at|on|of) (?:an? )?(?:half|quarter|eighth|sixteenth|1/))", re.I)


def _full_pops(said: str) -> str:
    """"as much as 2 full pops. how many at a quarter?": pops at full power, beside those at another."""
    return _FULL_POPS.sub(r"\g<many> \g<what> at full power", said) if " full " in said else said


_SET_WHAT = Pattern(r"\b(?P<who>i|we|you)(?:'d|'ll| should| must| would| will| could| can| do)? (?:(?:then|now) )?(?P<does>set|use|shoot at|open (?:up )?to|close (?:down )?to) what(?= (?:on|for|at|with|then|now|if)\b|\W*$)", re.I)


_WOULD_SET = Pattern(r"^(?P<lead>\W*(?:(?:so|and|then|ok|now|right),? )*)what (?:would|should|must|could|might|do) (?P<who>i|we) set (?P<where>(?:at|from) [^?.,;:]{2,24})\W*$", re.I)


def _what_to_set(said: str) -> str:
    """"so at seven feet I'd set what": what is to be set."""
    if "hat " not in said and not said.lower().endswith(" what"):
        return said
    said = _WOULD_SET.sub(r"\g<lead>\g<where> what do \g<who> set?", said)
    return _SET_WHAT.sub(lambda m: f"what do {m['who']} {m['does']}", said)


_RULES: tuple[Callable[[str], str], ...] = (_coloured, _what_to_set, _full_pops, _one_stop, _either_stop, _room_at, _from_stop_to_stop, _of_films, _of_charge, _of_light, _asked_in_short, with_their_f, with_places_named, with_level_as_stops)


def without_short_words(said: str) -> str:
    """The text with what was left out put in.

    >>> without_short_words("2.8 or 8, gn 20 m"), without_short_words("I want the flash one under")
    ('f/2.8 or f/8, gn 20 m', 'I want the flash one stop under')
    """
    for rule in _RULES:
        said = rule(said)
    return said
