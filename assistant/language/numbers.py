"""The language of numbers: digits, fractions and number words, as people type and say them.

`read_numbers` replaces every run of number pieces by one piece whose value is a `Number`.
What a number *means* is decided later; what is doubtful stays doubtful: "five six" is 56
and remembers that it may be 5.6, "eight and a half" remembers the whole and the part.
"""

from __future__ import annotations

import math

from assistant import patterns
from assistant.language.number_words import PARTS, SCALES, SMALL, TENS, UNIT_PARTS, VULGAR
from assistant.patterns import Pattern
from assistant.records import record, replace


@record
class Number:
    """A number as said. `pair` is the decimal that two spoken digits may mean (5.6 for
    "five six"); `whole` and `part` are kept apart for "eight and a half"; a fraction keeps
    its `top` and `bottom`."""

    value: float
    pair: float | None = None
    whole: float | None = None
    part: float | None = None
    top: float | None = None
    bottom: float | None = None
    spoken: bool = False


@record
class Raw:
    """A piece of the folded text: a word, a number, a mark."""

    kind: str
    text: str
    start: int
    end: int
    value: object = None


_ORDINAL = Pattern(r"(?:st|nd|rd|th|ths)$")
POWERS_OF_TWO = {2.0**n for n in range(1, 14)}
DUAL = (2.0, 4.0, 8.0)  # as a power and as a shutter time alike


def is_power_like(bottom: float) -> bool:
    """Whether 1/bottom is a step of a flash's power rather than of a shutter."""
    return bottom in POWERS_OF_TWO or bottom in (3.0, 5.0, 6.0, 10.0, 12.0)


def digits(text: str) -> float:
    """The value of a run of digits: "1,600" is 1600, "2,5" is 2.5, "½" is 0.5."""
    part = 0.0
    if text and text[-1] in VULGAR:
        top, bottom = VULGAR[text[-1]]
        part, text = top / bottom, text[:-1]
    if not text:
        return part
    if "," in text:
        head, _, tail = text.rpartition(",")
        decimal_comma = len(tail) in (1, 2) and "," not in head and "." not in tail and len(head) <= 2
        text = f"{head}.{tail}" if decimal_comma else text.replace(",", "")
    try:
        return float(text) + part
    except (ValueError, OverflowError):
        return math.inf


_BEGINNING = frozenset((*SMALL, *TENS, *SCALES, *PARTS, "a", "an", "single", "point"))
"""Words that a number may begin with."""


def read_numbers(pieces: list[Raw]) -> list[Raw]:
    """The pieces with every number run made one piece of kind NUM, FRAC, SPEED, PERCENT_NUM or RATIO."""
    pieces = _split_trailing_commas(pieces)
    out: list[Raw] = []
    place = 0
    while place < len(pieces):
        piece = pieces[place]
        if piece.kind == "mark" or piece.kind == "word" and piece.text not in _BEGINNING:
            out.append(piece)
            place += 1
            continue
        found = _number_at(pieces, place, out)
        if found is None:
            out.append(pieces[place])
            place += 1
        else:
            piece, place = found
            out.append(piece)
    return out


def _split_trailing_commas(pieces: list[Raw]) -> list[Raw]:
    """"8," is a number and a comma; "8,11,16" is three numbers, "1,600" is one."""
    out: list[Raw] = []
    for piece in pieces:
        if piece.kind != "number" or "," not in piece.text:
            out.append(piece)
            continue
        for group in patterns.finditer(r"\d{1,3}(?:,\d{3})+(?!\d)(?:\.\d+)?[½⅓⅔¼¾⅛]?|\d{1,2},\d{1,2}(?![\d,.])(?<!,\d\d)|\d+(?:\.\d+)?[½⅓⅔¼¾⅛]?|,", piece.text):
            kind = "mark" if group.group() == "," else "number"
            out.append(Raw(kind, group.group(), piece.start + group.start(), piece.start + group.end()))
    return out


def _text(pieces: list[Raw], place: int) -> str:
    return pieces[place].text if place < len(pieces) else ""


def _kind(pieces: list[Raw], place: int) -> str:
    return pieces[place].kind if place < len(pieces) else ""


def _touching(pieces: list[Raw], place: int) -> bool:
    return 0 < place < len(pieces) and pieces[place - 1].end == pieces[place].start


def _make(kind: str, pieces: list[Raw], place: int, stop: int, number: Number) -> tuple[Raw, int]:
    text = " ".join(p.text for p in pieces[place:stop])
    return Raw(kind, text, pieces[place].start, pieces[stop - 1].end, number), stop


def _fraction(pieces: list[Raw], place: int, stop: int, top: float, bottom: float, spoken: bool = False) -> tuple[Raw, int]:
    if bottom == 0:
        return _make("FRAC", pieces, place, stop, Number(math.inf, top=top, bottom=0.0))
    kind = "FRAC" if is_power_like(bottom) or top != 1 else "SPEED"
    return _make(kind, pieces, place, stop, Number(top / bottom, top=top, bottom=bottom, spoken=spoken))


def _number_at(pieces: list[Raw], place: int, before: list[Raw]) -> tuple[Raw, int] | None:
    kind = pieces[place].kind
    if kind == "number":
        return _digits_at(pieces, place)
    if kind == "word":
        return _words_at(pieces, place, before)
    return None


_PLACES = {1.0: "first", 2.0: "second", 3.0: "third"}
"""The places people write with a figure: "the 2nd flash"."""


def _digits_at(pieces: list[Raw], place: int) -> tuple[Raw, int]:
    text = pieces[place].text
    value = digits(text)
    after, then = _text(pieces, place + 1), place + 2
    if after in ("/", ":") and _kind(pieces, then) == "number" and (_touching(pieces, place + 1) or _touching(pieces, then)):
        other = digits(_text(pieces, then))
        if after == "/":
            tail = then + 2 if _touching(pieces, then + 1) and _text(pieces, then + 1) in ("st", "nd", "rd", "th", "ths") else then + 1
            return _fraction(pieces, place, tail, value, other)
        return _make("RATIO", pieces, place, then + 1, Number(value / other if other else math.inf, top=value, bottom=other))
    if after == "over" and _kind(pieces, then) == "number" and value == 1:
        return _fraction(pieces, place, then + 1, value, digits(_text(pieces, then)))
    if _kind(pieces, place + 1) == "word" and _touching(pieces, place + 1) and after in ("st", "nd", "rd", "th", "ths"):
        if after in ("th", "ths") or value > 30:
            return _fraction(pieces, place, place + 2, 1.0, value)
        if value in _PLACES:
            return Raw("word", _PLACES[value], pieces[place].start, pieces[place + 1].end), place + 2
    if text and text[-1] in VULGAR and len(text) == 1:
        top, bottom = VULGAR[text]
        return _fraction(pieces, place, place + 1, float(top), float(bottom))
    if text and text[-1] in VULGAR:
        return _make("NUM", pieces, place, place + 1, Number(value, whole=digits(text[:-1]), part=value - digits(text[:-1])))
    # "1 16th", "1 1/3": a whole and its fraction
    if _kind(pieces, place + 1) == "number" and not _touching(pieces, place + 1) and _begins_fraction(pieces, place + 1):
        inner, stop = _digits_at(pieces, place + 1)
        number = inner.value
        if isinstance(number, Number) and number.bottom and inner.kind != "RATIO":
            if number.top == 1 and value == 1 and inner.text.endswith("th"):
                return _fraction(pieces, place, stop, 1.0, number.bottom)
            if number.top and number.top < number.bottom <= 4 and value < 100 and not _unit_fraction_power(pieces, stop):
                return _make("NUM", pieces, place, stop, Number(value + number.value, whole=value, part=number.value))
    if after == "point" and _text(pieces, then).isdecimal() and float(value).is_integer():
        return _make("NUM", pieces, place, then + 1, Number(float(f"{int(value)}.{_text(pieces, then)}")))
    return _and_part(pieces, place, place + 1, Number(value))


def _begins_fraction(pieces: list[Raw], place: int) -> bool:
    """Whether a number could be the top or the whole of a fraction: else a long row of numbers would be read from each of its places."""
    after = _text(pieces, place + 1)
    return after in ("/", ":", "over", "and", "&") or _text(pieces, place)[-1] in VULGAR or (_kind(pieces, place + 1) == "word" and _touching(pieces, place + 1))


def _unit_fraction_power(pieces: list[Raw], stop: int) -> bool:
    return _text(pieces, stop) in ("power", "output")


def _and_part(pieces: list[Raw], place: int, stop: int, number: Number) -> tuple[Raw, int]:
    """"eight and a half", "two and three quarters": the whole, kept apart from the part."""
    if _text(pieces, stop) in ("and", "&") and _kind(pieces, stop) in ("word", "mark"):
        part, end = _part_words(pieces, stop + 1)
        unit = _text(pieces, stop + 1) not in ("a", "an", "one") and _text(pieces, end) in ("life", "lifesize", "pop", "output")
        if part is not None and part < 1 and not unit and _text(pieces, end) not in ("power", "stop", "stops", "of"):
            whole = Number(number.value + part, whole=number.value, part=part, spoken=True)
            return _make("NUM", pieces, place, end, whole)
        if part is not None and part < 1 and _text(pieces, end) in ("stops", "stop"):
            return _make("NUM", pieces, place, end, Number(number.value + part, whole=number.value, part=part, spoken=True))
    return _make("NUM", pieces, place, stop, number)


def _part_words(pieces: list[Raw], place: int) -> tuple[float | None, int]:
    """A fraction said after "and": "a half", "two thirds", "1/3"."""
    word = _text(pieces, place)
    if _kind(pieces, place) == "number":
        piece, stop = _digits_at(pieces, place)
        number = piece.value
        fraction = isinstance(number, Number) and number.bottom and piece.kind == "FRAC"
        return (number.value if isinstance(number, Number) else None, stop) if fraction else (None, place)
    top = 1.0
    if word in ("a", "one", "an"):
        place += 1
    elif word in ("two", "three") and _text(pieces, place + 1) in PARTS:
        top, place = float(SMALL[word]), place + 1
    elif word not in ("half", "third", "quarter"):
        return None, place
    bottom = PARTS.get(_text(pieces, place))
    return (top / bottom, place + 1) if bottom and bottom <= 10 else (None, place)


_LIGHT_NOUNS = ("flash", "light", "strobe", "head", "lamp", "gun", "unit")
"""After these "third" is a place, not a part: "the third flash"."""


_ONE_AFTER = frozenset("back front rear near nearest nearer far farther farthest furthest further close closest closer first second last middle other left right this that which every next same new old main".split())
_COUNTED_BY_ONE = frozenset("stop stops third half quarter and point over hundred metre metres meter meters foot feet ft m yard light flash pop second minute f - /".split())
"""After "the back" a "one" is somebody, unless it counts what follows: "the back one stop under"."""


_SINGLE_OF = frozenset("pop flash burst dump firing head light lamp unit".split())
"""What "a single" counts."""


def _words_at(pieces: list[Raw], place: int, before: list[Raw]) -> tuple[Raw, int] | None:
    word = pieces[place].text
    if (word == "single" or word in ("a", "an") and _text(pieces, place + 1) == "single") and _text(pieces, place + 1 + (word != "single")) in _SINGLE_OF:
        return _make("NUM", pieces, place, place + 1 + (word != "single"), Number(1.0, spoken=True))
    if word in ("a", "an") and (_part_bottom(pieces, place + 1) or _text(pieces, place + 1) in ("hundred", "thousand")):
        found = _words_at(pieces, place + 1, before)
        if found and found[0].kind in ("FRAC", "SPEED", "NUM"):
            return replace(found[0], start=pieces[place].start), found[1]
        return None
    bottom = _part_bottom(pieces, place)
    if word == "third" and _text(pieces, place + 1) in _LIGHT_NOUNS:
        return None
    if bottom and not (word == "second" or word == "first"):
        return _fraction(pieces, place, bottom[1], 1.0, bottom[0], True)
    if word == "point" and (_text(pieces, place + 1) in SMALL or _kind(pieces, place + 1) == "number"):
        return _decimal(pieces, place, place, "0")
    if word not in SMALL and word not in TENS and word not in SCALES:
        return None
    if word == "one" and before and before[-1].text in _ONE_AFTER and _text(pieces, place + 1) not in _COUNTED_BY_ONE:
        return None
    if word == "oh" and _text(pieces, place + 1) not in SMALL and _text(pieces, place + 1) != "point":
        return None
    return _spoken_run(pieces, place, before)


def _part_bottom(pieces: list[Raw], place: int) -> tuple[float, int] | None:
    """A spoken denominator at this place and where it ends: "sixteenth", "sixty fourth", "twenty eighth"."""
    word = _text(pieces, place)
    if _kind(pieces, place) != "word":
        return None
    if word in TENS and _dash_skip(pieces, place + 1)[0] in UNIT_PARTS:
        unit, after = _dash_skip(pieces, place + 1)
        if unit == "second" and TENS[word] not in (30,):
            return None
        return (float(TENS[word] + UNIT_PARTS[unit]), after + 1)
    if word in PARTS:
        return (float(PARTS[word]), place + 1)
    return None


def _dash_skip(pieces: list[Raw], place: int) -> tuple[str, int]:
    """The word at this place, looking past a hyphen."""
    if _text(pieces, place) == "-" and _kind(pieces, place + 1) == "word":
        place += 1
    return _text(pieces, place), place


def _decimal(pieces: list[Raw], place: int, point: int, whole: str) -> tuple[Raw, int]:
    stop, tail = point + 1, ""
    while stop < len(pieces):
        word = pieces[stop].text
        if word in SMALL and SMALL[word] < 10:
            tail += str(SMALL[word])
        elif word in TENS and not tail:
            tail += str(TENS[word])
            if _text(pieces, stop + 1) in SMALL and 0 < SMALL[_text(pieces, stop + 1)] < 10:
                stop += 1
                tail = str(int(tail) + SMALL[pieces[stop].text])
        elif pieces[stop].kind == "number" and not tail and word.isdigit():
            tail += word
        else:
            break
        stop += 1
        if len(tail) >= 2:
            break
    return _make("NUM", pieces, place, stop, Number(float(f"{whole}.{tail or '0'}"), spoken=True))


def _spoken_run(pieces: list[Raw], place: int, before: list[Raw]) -> tuple[Raw, int]:
    """A run of number words: a list of groups, then what they make together."""
    groups, stop = _groups(pieces, place)
    if _text(pieces, stop) == "point" and (_text(pieces, stop + 1) in SMALL or _text(pieces, stop + 1) in TENS or _kind(pieces, stop + 1) == "number"):
        return _decimal(pieces, place, stop, str(_joined([g for g, _ in groups])))
    if _text(pieces, stop) == "over" and (_kind(pieces, stop + 1) == "number" or _text(pieces, stop + 1) in SMALL or _text(pieces, stop + 1) in TENS):
        inner = _number_at(pieces, stop + 1, [])
        if inner and isinstance(inner[0].value, Number) and [g for g, _ in groups] == [1]:
            return _fraction(pieces, place, inner[1], 1.0, inner[0].value.value, True)
    groups, stop = _before_fraction(pieces, groups, stop)
    fraction = _spoken_fraction(pieces, place, groups, stop)
    if fraction:
        return fraction
    cue = _cue_before(before)
    keep = _groups_to_keep(groups, cue, _is_unit(pieces, stop))
    if keep < len(groups):
        groups, stop = groups[:keep], groups[keep - 1][1]
    values = [g for g, _ in groups]
    value = float(_joined(values))
    pair = values[0] + values[1] / 10 if len(values) == 2 and values[0] < 10 and values[1] < 10 else None
    return _and_part(pieces, place, stop, Number(value, pair=pair, spoken=True))


def _cue_before(before: list[Raw]) -> str:
    for piece in reversed(before[-3:]):
        if piece.kind == "f" or piece.text in ("f", "stop", "aperture", "iso", "asa", "so", "number", "guide", "gn", "speed"):
            return "f" if piece.kind == "f" or piece.text in ("f", "stop", "aperture") else ("iso" if piece.text in ("iso", "asa", "so", "speed") else "gn")
        if piece.text not in ("is", "of", "at", "about", "a", "to"):
            return ""
    return ""


def _is_unit(pieces: list[Raw], place: int) -> bool:
    return _text(pieces, place) in ("feet", "foot", "ft", "metres", "meters", "metre", "meter", "inches", "yards", "percent", "power", "stops")


_F_SPOKEN: set[float] = {1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 3.5, 4.5, 6.3, 1.8, 7.1, 9, 10, 13, 14, 18, 20, 25}
_ISO_SPOKEN: set[float] = {25, 32, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 3200, 6400}


def _groups_to_keep(groups: list[tuple[int, int]], cue: str, unit_follows: bool) -> int:
    """How many groups belong to the number before: "f eight twelve feet" is f/8 and 12 feet.

    Only where a cue word stands before the run and a unit after it, and the first groups
    make a mark that exists while the whole run does not.
    """
    if len(groups) < 2:
        return len(groups)
    values = [g for g, _ in groups]
    marks: set[float] | None = {"f": _F_SPOKEN, "iso": _ISO_SPOKEN}.get(cue)
    if marks is not None:
        for keep in range(len(groups), 0, -1):
            head = values[:keep]
            pair = head[0] + head[1] / 10 if len(head) == 2 and head[0] < 10 and head[1] < 10 else None
            if _joined(head) in marks or pair in marks:
                return keep if keep == len(groups) or unit_follows or len(groups) - keep >= 1 else len(groups)
        return len(groups)
    if cue == "gn" and unit_follows and _joined(values) > 400:
        return len(groups) - 1
    return len(groups)


def _groups(pieces: list[Raw], place: int) -> tuple[list[tuple[int, int]], int]:
    """Groups of a spoken run, each with the place where it ends: "one twenty-five" is 1 and 25."""
    groups: list[tuple[int, int]] = []
    while place < len(pieces):
        found = _group(pieces, place)
        if found is None:
            break
        value, stop = found
        nxt = _part_bottom(pieces, place)
        if nxt and nxt[0] > 3 and _text(pieces, place) in TENS:
            break
        groups.append((value, stop))
        place = stop
        if _text(pieces, place) == "-" and _kind(pieces, place + 1) == "word" and (_text(pieces, place + 1) in SMALL or _text(pieces, place + 1) in TENS):
            place += 1
        if len(groups) > 12:
            break
    return groups, groups[-1][1] if groups else place


def _group(pieces: list[Raw], place: int) -> tuple[int, int] | None:
    word, value = _text(pieces, place), 0
    if _kind(pieces, place) != "word":
        return None
    if word in TENS:
        value, place = TENS[word], place + 1
        unit, at = _dash_skip(pieces, place)
        if unit in SMALL and 0 < SMALL[unit] < 10 and unit != "oh":
            value, place = value + SMALL[unit], at + 1
    elif word in SMALL:
        value, place = SMALL[word], place + 1
    elif word in SCALES:
        value = 1
    else:
        return None
    return _scaled(pieces, place, value)


def _scaled(pieces: list[Raw], place: int, value: int) -> tuple[int, int]:
    """"two hundred and fifty", "four thousand eight hundred"."""
    unit, at = _dash_skip(pieces, place)
    total, scaled = 0, False
    while unit in SCALES:
        value, place, scaled = max(value, 1) * SCALES[unit], at + 1, True
        total, value = total + value, 0
        nxt, at2 = _dash_skip(pieces, place)
        if nxt == "and":
            nxt, at2 = _dash_skip(pieces, at2 + 1)
            if nxt not in SMALL and nxt not in TENS:
                break
        inner = _group_small(pieces, at2)
        if inner is None:
            break
        value, place = inner
        unit, at = _dash_skip(pieces, place)
        if unit not in SCALES:
            break
    return (total + value, place) if scaled else (value, place)


def _group_small(pieces: list[Raw], place: int) -> tuple[int, int] | None:
    word = _text(pieces, place)
    if _kind(pieces, place) != "word":
        return None
    if word in TENS:
        unit, at = _dash_skip(pieces, place + 1)
        if unit in SMALL and 0 < SMALL[unit] < 10:
            return TENS[word] + SMALL[unit], at + 1
        if _part_bottom(pieces, place) and (_part_bottom(pieces, place) or (0, 0))[0] > 9:
            return None
        return TENS[word], place + 1
    if word in SMALL and word != "oh":
        return SMALL[word], place + 1
    return None


def _joined(values: list[int]) -> int:
    """Groups said one after another are digits written one after another: 1, 20 is 120."""
    return int("".join(str(v) for v in values)[:15])


def _before_fraction(pieces: list[Raw], groups: list[tuple[int, int]], stop: int) -> tuple[list[tuple[int, int]], int]:
    """"guide one ten one sixteenth": the last one begins a fraction of its own, where the whole run makes no shutter time."""
    bottom = _part_bottom(pieces, _dash_skip(pieces, stop)[1])
    if len(groups) < 2 or groups[-1][0] != 1 or bottom is None or bottom[0] >= 100:
        return groups, stop
    values = [g for g, _ in groups]
    if values[0] == 1 and float(f"{_joined(values[1:])}{int(bottom[0]):02d}") in _SHUTTERS_SPOKEN:
        return groups, stop
    return groups[:-1], groups[-2][1]


_SHUTTERS_SPOKEN = {125.0, 160.0, 180.0, 250.0, 320.0, 350.0, 400.0, 500.0, 640.0, 800.0, 1000.0, 1250.0, 1600.0}

_PARTS_SAID = {(2, 3), (3, 4), (3, 8), (5, 8), (7, 8), (2, 10), (3, 10), (7, 10), (9, 10)}
"""Parts said without an s: "three quarter power", "two third"."""


def _spoken_fraction(pieces: list[Raw], place: int, groups: list[tuple[int, int]], stop: int) -> tuple[Raw, int] | None:
    """"one sixteenth", "three quarters", "one one twenty-fifth", "one twenty-eighth", "two hundredth"."""
    values = [g for g, _ in groups]
    word, at = _dash_skip(pieces, stop)
    if word == "and" and values and values[-1] % 100 == 0:  # "a hundred and twenty-fifth"
        word, at = _dash_skip(pieces, at + 1)
        if (_part_bottom(pieces, at) or (0, 0))[0] <= 10:
            return None
    bottom = _part_bottom(pieces, at)
    if bottom is None or word in ("second", "first"):
        return None
    low = int(bottom[0])
    if not values:
        return None
    if low in (100, 1000):
        head = values[1:] if len(values) > 1 and values[0] == 1 else values
        scale = _joined(head) if head else 1
        return _fraction(pieces, place, bottom[1], 1.0, float(low * scale), True)
    if low > 10 and values[-1] % 100 == 0 and values[-1] >= 100:
        return _fraction(pieces, place, bottom[1], 1.0, float(values[-1] + low), True)
    if values == [1] and low in (16, 32, 64, 8, 4, 2, 3, 5, 10, 15, 30, 60):
        return _fraction(pieces, place, bottom[1], 1.0, float(low), True)
    if low <= 10 and (len(values) > 1 or values[0] >= 10 or not (word.endswith("s") or values[0] == 1 or (values[0], low) in _PARTS_SAID)):
        return None  # "guide number forty four quarter power", "f eight half power"
    if len(values) == 1 and values[0] < 10 and low <= 10:
        return _fraction(pieces, place, bottom[1], float(values[0]), float(low), True)
    head = values[1:] if len(values) > 1 and values[0] == 1 else values
    return _fraction(pieces, place, bottom[1], 1.0, float(f"{_joined(head)}{low:02d}"), True)
