"""The language of numbers: digits, fractions and number words, as people type and say them.

`read_numbers` replaces every run of number pieces by one piece whose value is a `Number`.
What a number *means* is decided later; what is doubtful stays doubtful: "five six" is 56
and remembers that it may be 5.6, "eight and a half" remembers the whole and the part.
"""

from __future__ import annotations

import math

from assistant import patterns
from assistant.language.number_words import PARTS, SCALES, SMALL, TENS, VULGAR
from assistant.language.pieces import Number, Raw, fraction, kind_at, made, part_bottom, text_at, touching
from assistant.language.spoken_groups import before_fraction, groups_at, groups_to_keep, joined, spoken_fraction
from assistant.records import replace


def digits(text: str) -> float:
    """The value of a run of digits: "1,600" is 1600, "2,5" is 2.5, "½" is 0.5."""
    if text.isdecimal():
        return float(text)
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
    after = 0  # where reading goes on behind the last number
    for place, piece in enumerate(pieces):
        if place < after:
            continue
        kind = piece.kind
        found = None
        if kind == "number":
            found = _digits_at(pieces, place)
        elif kind == "word" and piece.text in _BEGINNING:
            found = _words_at(pieces, place, out)
        if found is not None:
            piece, after = found
        out.append(piece)
    return out


def _split_trailing_commas(pieces: list[Raw]) -> list[Raw]:
    """"8," is a number and a comma; "8,11,16" is three numbers, "1,600" is one."""
    if not [piece for piece in pieces if piece.kind == "number" and "," in piece.text]:
        return pieces
    out: list[Raw] = []
    for piece in pieces:
        if piece.kind != "number" or "," not in piece.text:
            out.append(piece)
            continue
        for group in patterns.finditer(r"\d{1,3}(?:,\d{3})+(?!\d)(?:\.\d+)?[½⅓⅔¼¾⅛]?|\d{1,2},\d{1,2}(?![\d,.])(?<!,\d\d)|\d+(?:\.\d+)?[½⅓⅔¼¾⅛]?|,", piece.text):
            kind = "mark" if group.group() == "," else "number"
            out.append(Raw(kind, group.group(), piece.start + group.start(), piece.start + group.end()))
    return out


def _number_at(pieces: list[Raw], place: int, before: list[Raw]) -> tuple[Raw, int] | None:
    kind = pieces[place].kind
    if kind == "number":
        return _digits_at(pieces, place)
    if kind == "word":
        return _words_at(pieces, place, before)
    return None


_PLACES = {1.0: "first", 2.0: "second", 3.0: "third"}
"""The places people write with a figure: "the 2nd flash"."""


_LARGEST_RATIO = 32
"""No lighting ratio is larger."""


_GOES_ON = frozenset({"/", ":", "over", "point", "and", "an", "n", "&", "-"})
"""After a number that they may make more of."""


def _stands_alone(pieces: list[Raw], place: int) -> bool:
    """Whether nothing after the number could belong to it."""
    after = pieces[place + 1] if place + 1 < len(pieces) else None
    return after is None or after.text not in _GOES_ON and after.kind != "number" and (after.kind != "word" or after.start != pieces[place].end)


def _digits_at(pieces: list[Raw], place: int) -> tuple[Raw, int]:
    text = pieces[place].text
    value = digits(text)
    if text.isdecimal() and _stands_alone(pieces, place):
        return made("NUM", pieces, place, place + 1, Number(value))
    after, then = text_at(pieces, place + 1), place + 2
    if after in ("/", ":") and kind_at(pieces, then) == "number" and (touching(pieces, place + 1) or touching(pieces, then)) and not _colon_before_a_fraction(pieces, place):
        other = digits(text_at(pieces, then))
        if after == "/":
            tail = then + 2 if touching(pieces, then + 1) and text_at(pieces, then + 1) in ("st", "nd", "rd", "th", "ths") else then + 1
            return fraction(pieces, place, tail, value, other)
        listed = after == ":" and value > _LARGEST_RATIO and not touching(pieces, then)  # "for ISO 100: 160 at 1/60": what follows is listed
        if text_at(pieces, then + 1) == "/" or listed:  # "ISO 100: 1/30 …": what follows is a time
            return made("NUM", pieces, place, place + 1, Number(value))
        return made("RATIO", pieces, place, then + 1, Number(value / other if other else math.inf, top=value, bottom=other))
    if after == "over" and kind_at(pieces, then) == "number" and value == 1:
        return fraction(pieces, place, then + 1, value, digits(text_at(pieces, then)))
    if kind_at(pieces, place + 1) == "word" and touching(pieces, place + 1) and after in ("st", "nd", "rd", "th", "ths"):
        if after in ("th", "ths") or value > 30:
            return fraction(pieces, place, place + 2, 1.0, value)
        if value in _PLACES:
            return Raw("word", _PLACES[value], pieces[place].start, pieces[place + 1].end), place + 2
    if text and text[-1] in VULGAR and len(text) == 1:
        top, bottom = VULGAR[text]
        return fraction(pieces, place, place + 1, float(top), float(bottom))
    if text and text[-1] in VULGAR:
        return made("NUM", pieces, place, place + 1, Number(value, whole=digits(text[:-1]), part=value - digits(text[:-1])))
    # "1 16th", "1 1/3": a whole and its fraction
    if kind_at(pieces, place + 1) == "number" and not touching(pieces, place + 1) and _begins_fraction(pieces, place + 1):
        inner, stop = _digits_at(pieces, place + 1)
        number = inner.value
        if isinstance(number, Number) and number.bottom and inner.kind != "RATIO":
            if number.top == 1 and value == 1 and inner.text.endswith("th"):
                return fraction(pieces, place, stop, 1.0, number.bottom)
            if number.top and number.top < number.bottom <= (32 if _of_a_rule(pieces, stop) else 4) and value < 100 and not _unit_fraction_power(pieces, stop):
                return made("NUM", pieces, place, stop, Number(value + number.value, whole=value, part=number.value))
    if after == "-" and touching(pieces, place + 1) and touching(pieces, then) and kind_at(pieces, then) == "number" and text_at(pieces, then + 1) == "/":
        inner, stop = _digits_at(pieces, then)
        if isinstance(inner.value, Number) and inner.value.bottom and inner.value.value < 1 and (_of_a_rule(pieces, stop) or inner.value.bottom <= 4 and text_at(pieces, stop) in _WHOLE_AND_PART):
            return made("NUM", pieces, place, stop, Number(value + inner.value.value, whole=value, part=inner.value.value))  # "1-5/8 in"
    if after == "point" and text_at(pieces, then).isdecimal() and float(value).is_integer():
        return made("NUM", pieces, place, then + 1, Number(float(f"{int(value)}.{text_at(pieces, then)}")))
    return _and_part(pieces, place, place + 1, Number(value))


def _colon_before_a_fraction(pieces: list[Raw], place: int) -> bool:
    """"ISO 400: 1/125": the colon ends what was said before, and no ratio has a fraction in it."""
    return text_at(pieces, place + 1) == ":" and not touching(pieces, place + 2) and text_at(pieces, place + 3) == "/" and touching(pieces, place + 3) and touching(pieces, place + 4)


def _begins_fraction(pieces: list[Raw], place: int) -> bool:
    """Whether a number could be the top or the whole of a fraction: else a long row of numbers would be read from each of its places."""
    after = text_at(pieces, place + 1)
    return after in ("/", ":", "over", "and", "&") or text_at(pieces, place)[-1] in VULGAR or (kind_at(pieces, place + 1) == "word" and touching(pieces, place + 1))


def _unit_fraction_power(pieces: list[Raw], stop: int) -> bool:
    return text_at(pieces, stop) in ("power", "output")


_INCHES = frozenset({"inch", "inches", "in", "ins", '"', "″", "”"})

_WHOLE_AND_PART = frozenset({"foot", "feet", "ft", "stop", "stops", "metre", "metres", "meter", "meters", "yard", "yards"})
"""What is told as a whole and a half with a hyphen between: "a 2-1/2 foot gap"."""


def _of_a_rule(pieces: list[Raw], stop: int) -> bool:
    """Whether inches follow, which a rule divides into eighths and sixteenths."""
    return text_at(pieces, stop) in _INCHES


_SPEEDS_FROM = 50
"""A whole number from which on "and 1/8" is a value of its own, and no part of it."""


def _and_part(pieces: list[Raw], place: int, stop: int, number: Number) -> tuple[Raw, int]:
    """"eight and a half", "two and three quarters": the whole, kept apart from the part."""
    mistyped = text_at(pieces, stop) == "an" and text_at(pieces, stop + 1) == "a"  # "two an a half"
    if (mistyped or text_at(pieces, stop) in ("and", "n", "&")) and kind_at(pieces, stop) in ("word", "mark"):
        part, end = _part_words(pieces, stop + 1)
        unit = text_at(pieces, stop + 1) not in ("a", "an", "one") and text_at(pieces, end) in ("life", "lifesize", "pop", "output")
        if part is not None and number.value >= _SPEEDS_FROM and part <= 0.25 and kind_at(pieces, stop + 1) == "number":
            return made("NUM", pieces, place, stop, number)  # "at ISO 100 and 1/8 s"
        if part is not None and part < 1 and _hyphened(pieces, end):
            return made("NUM", pieces, place, stop, number)  # "takes 1 and a half-orange gel"
        if part is not None and part < 1 and not unit and text_at(pieces, end) not in ("power", "stop", "stops", "of"):
            whole = Number(number.value + part, whole=number.value, part=part, spoken=True)
            return made("NUM", pieces, place, end, whole)
        of_a_stop = text_at(pieces, end) == "of" and text_at(pieces, end + 1) in ("a", "one") and text_at(pieces, end + 2) in ("stop", "f-stop") and not (place and pieces[place - 1].text == "between")
        if part is not None and part < 1 and (text_at(pieces, end) in ("stops", "stop") or of_a_stop):
            return made("NUM", pieces, place, end, Number(number.value + part, whole=number.value, part=part, spoken=True))
    return made("NUM", pieces, place, stop, number)


def _hyphened(pieces: list[Raw], end: int) -> bool:
    """Whether a part is the beginning of a word: of "a half-orange", and not of "a half-stop"."""
    joined = end + 1 < len(pieces) and pieces[end].text == "-" and pieces[end].start == pieces[end - 1].end and pieces[end].end == pieces[end + 1].start
    return joined and kind_at(pieces, end + 1) == "word" and text_at(pieces, end + 1) not in ("stop", "stops", "stopped")


def _part_words(pieces: list[Raw], place: int) -> tuple[float | None, int]:
    """A fraction said after "and": "a half", "two thirds", "1/3"."""
    word = text_at(pieces, place)
    if kind_at(pieces, place) == "number":
        if word[-1] not in VULGAR and text_at(pieces, place + 1) in ("and", "n", "&"):
            return None, place  # "8 and 8 and 8 …": no fraction, however long the row
        piece, stop = _digits_at(pieces, place)
        number = piece.value
        fraction = isinstance(number, Number) and number.bottom and piece.kind == "FRAC"
        return (number.value if isinstance(number, Number) else None, stop) if fraction else (None, place)
    top = 1.0
    if word in ("a", "one", "an"):
        place += 1
    elif word in ("two", "three") and text_at(pieces, place + 1) in PARTS:
        top, place = float(SMALL[word]), place + 1
    elif word not in ("half", "third", "quarter"):
        return None, place
    bottom = PARTS.get(text_at(pieces, place))
    return (top / bottom, place + 1) if bottom and bottom <= 10 else (None, place)
_LIGHT_NOUNS = ("flash", "light", "strobe", "head", "lamp", "gun", "unit")
"""After these "third" is a place, not a part: "the third flash"."""


_ONE_AFTER = frozenset("back front rear near nearest nearer far farther farthest furthest further close closest closer first second last middle other left right this that which every next same new old main".split())
_COUNTED_BY_ONE = frozenset("stop stops third half quarter point over hundred metre metres meter meters foot feet ft m yard light flash pop second minute f - /".split())
"""After "the back" a "one" is somebody, unless it counts what follows: "the back one stop under"."""


_A_PART_MORE = frozenset("a an one two 1 2 1/2 1/3 2/3 half third quarter".split())


def _counts(pieces: list[Raw], place: int) -> bool:
    """Whether a "one" before that place counts something: "one stop", "one and a half"; not "the front one and no more"."""
    word = text_at(pieces, place)
    return word in _COUNTED_BY_ONE or word == "and" and text_at(pieces, place + 1) in _A_PART_MORE


_SINGLE_OF = frozenset("pop flash burst dump firing head light lamp unit".split())
"""What "a single" counts."""


_BEFORE_POINT = frozenset("of at about by is was are minus plus t f factor density exponent with from to a an the only just some roughly around nearly nd loses lose costs cost takes take and or than under over".split())
"""Words after which "point 4" is a figure; after another one it is somebody's: "a spear point 4 m off"."""


_FAR = frozenset({"m", "metre", "metres", "meter", "meters", "ft", "foot", "feet", "yards", "yard"})


def _is_a_thing(before: list[Raw]) -> bool:
    return bool(before) and before[-1].kind == "word" and before[-1].text not in _BEFORE_POINT


def _words_at(pieces: list[Raw], place: int, before: list[Raw]) -> tuple[Raw, int] | None:
    word = pieces[place].text
    if (word == "single" or word in ("a", "an") and text_at(pieces, place + 1) == "single") and text_at(pieces, place + 1 + (word != "single")) in _SINGLE_OF:
        return made("NUM", pieces, place, place + 1 + (word != "single"), Number(1.0, spoken=True))
    if word in ("a", "an") and (part_bottom(pieces, place + 1) or text_at(pieces, place + 1) in ("hundred", "thousand")):
        found = _words_at(pieces, place + 1, before)
        if found and found[0].kind in ("FRAC", "SPEED", "NUM"):
            return replace(found[0], start=pieces[place].start), found[1]
        return None
    bottom = part_bottom(pieces, place)
    if word == "third" and text_at(pieces, place + 1) in _LIGHT_NOUNS:
        return None
    if bottom and not (word == "second" or word == "first"):
        return fraction(pieces, place, bottom[1], 1.0, bottom[0], True)
    if word == "point" and (text_at(pieces, place + 1) in SMALL or kind_at(pieces, place + 1) == "number") and not (_is_a_thing(before) and text_at(pieces, place + 2) in _FAR):
        return _decimal(pieces, place, place, "0")
    if word not in SMALL and word not in TENS and word not in SCALES:
        return None
    if word == "one" and before and before[-1].text in _ONE_AFTER and not _counts(pieces, place + 1):
        return None
    if word == "one" and _one_of_several(pieces, place):
        return None
    if word == "oh" and text_at(pieces, place + 1) not in SMALL and text_at(pieces, place + 1) != "point":
        return None
    return _spoken_run(pieces, place, before)


_REACH = 30
"""Pieces to either side in which the other of two is looked for."""


def _one_of_several(pieces: list[Raw], place: int) -> bool:
    """"one four metres off and one six metres": each "one" is somebody, where a length follows and the other has its own; "one five metres" alone may be fifteen."""
    if not _length_next(pieces, place + 1):
        return False
    around = range(max(0, place - _REACH), min(len(pieces), place + _REACH))
    return any(text_at(pieces, n) in ("other", "another") or n != place and text_at(pieces, n) == "one" and _length_next(pieces, n + 1) for n in around)


def _length_next(pieces: list[Raw], place: int) -> bool:
    word = text_at(pieces, place)
    return (word in TENS or word in SMALL and word not in ("one", "oh", "zero", "hundred")) and (_is_length(pieces, place + 1) or text_at(pieces, place + 1) == "and" and any(_is_length(pieces, place + n) for n in (3, 4)))


def _is_length(pieces: list[Raw], place: int) -> bool:
    return text_at(pieces, place) in ("feet", "foot", "ft", "metres", "meters", "metre", "meter", "inches", "yards", "paces")


def _decimal(pieces: list[Raw], place: int, point: int, whole: str) -> tuple[Raw, int]:
    stop, tail = point + 1, ""
    while stop < len(pieces):
        word = pieces[stop].text
        if word in SMALL and SMALL[word] < 10:
            tail += str(SMALL[word])
        elif word in TENS and not tail:
            tail += str(TENS[word])
            if text_at(pieces, stop + 1) in SMALL and 0 < SMALL[text_at(pieces, stop + 1)] < 10:
                stop += 1
                tail = str(int(tail) + SMALL[pieces[stop].text])
        elif pieces[stop].kind == "number" and not tail and word.isdigit():
            tail += word
        else:
            break
        stop += 1
        if len(tail) >= 2:
            break
    return made("NUM", pieces, place, stop, Number(float(f"{whole}.{tail or '0'}"), spoken=True))


def _spoken_run(pieces: list[Raw], place: int, before: list[Raw]) -> tuple[Raw, int]:
    """A run of number words: a list of groups, then what they make together."""
    groups, stop = groups_at(pieces, place)
    if text_at(pieces, stop) == "point" and (text_at(pieces, stop + 1) in SMALL or text_at(pieces, stop + 1) in TENS or kind_at(pieces, stop + 1) == "number"):
        return _decimal(pieces, place, stop, str(joined([g for g, _ in groups])))
    if text_at(pieces, stop) == "over" and (kind_at(pieces, stop + 1) == "number" or text_at(pieces, stop + 1) in SMALL or text_at(pieces, stop + 1) in TENS):
        inner = _number_at(pieces, stop + 1, [])
        if inner and isinstance(inner[0].value, Number) and [g for g, _ in groups] == [1]:
            return fraction(pieces, place, inner[1], 1.0, inner[0].value.value, True)
    groups, stop = before_fraction(pieces, groups, stop)
    found = spoken_fraction(pieces, place, groups, stop)
    if found:
        return found
    if len(groups) > 1 and text_at(pieces, stop) == "-" and text_at(pieces, stop + 1) in ("stop", "third", "stops"):
        groups, stop = groups[:-1], groups[-2][1]  # "two one-stop gels"
    cue = _cue_before(before)
    keep = 1 if not cue and _ends_a_row(pieces, groups, stop) else groups_to_keep(groups, cue, _is_unit(pieces, stop))
    if keep < len(groups):
        groups, stop = groups[:keep], groups[keep - 1][1]
    values = [g for g, _ in groups]
    value = float(joined(values))
    pair = values[0] + values[1] / 10 if len(values) == 2 and values[0] < 10 and values[1] < 10 else None
    return _and_part(pieces, place, stop, Number(value, pair=pair, spoken=True))


_ROW_UNITS = frozenset({"feet", "foot", "ft", "metres", "meters", "m"})


def _ends_a_row(pieces: list[Raw], groups: list[tuple[int, int]], stop: int) -> bool:
    """"ten twelve and fourteen feet": numbers that rise to the last one and its unit are a row of lengths, and no thousand and twelve."""
    values = [g for g, _ in groups]
    if len(values) < 2 or text_at(pieces, stop) != "and" or not all(a < b for a, b in zip(values, values[1:])):
        return False
    last, after = groups_at(pieces, stop + 1)
    return len(last) == 1 and last[0][0] > values[-1] and text_at(pieces, after) in _ROW_UNITS


def _cue_before(before: list[Raw]) -> str:
    for piece in reversed(before[-3:]):
        if piece.kind == "f" or piece.text in ("f", "stop", "aperture", "iso", "asa", "so", "number", "guide", "gn", "speed"):
            return "f" if piece.kind == "f" or piece.text in ("f", "stop", "aperture") else ("iso" if piece.text in ("iso", "asa", "so", "speed") else "gn")
        if piece.text not in ("is", "of", "at", "about", "a", "to"):
            return ""
    return ""


def _is_unit(pieces: list[Raw], place: int) -> bool:
    return text_at(pieces, place) in ("feet", "foot", "ft", "metres", "meters", "metre", "meter", "inches", "yards", "percent", "power", "stops")
