"""Groups of number words said in one breath: "one twenty-five", "two hundred and fifty", "one sixty-fourth"."""

from __future__ import annotations

from assistant.language.number_words import SCALES, SMALL, TENS
from assistant.language.pieces import Raw, fraction, kind_at, part_bottom, past_dash, text_at

_F_SPOKEN: set[float] = {1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 3.5, 4.5, 6.3, 1.8, 7.1, 9, 10, 13, 14, 18, 20, 25}
_ISO_SPOKEN: set[float] = {25, 32, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 3200, 6400}


def groups_to_keep(groups: list[tuple[int, int]], cue: str, unit_follows: bool) -> int:
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
            if joined(head) in marks or pair in marks:
                return keep if keep == len(groups) or unit_follows or len(groups) - keep >= 1 else len(groups)
        return len(groups)
    if cue == "gn" and unit_follows and joined(values) > 400:
        return len(groups) - 1
    return len(groups)


def groups_at(pieces: list[Raw], place: int) -> tuple[list[tuple[int, int]], int]:
    """Groups of a spoken run, each with the place where it ends: "one twenty-five" is 1 and 25."""
    groups: list[tuple[int, int]] = []
    while place < len(pieces):
        found = _group(pieces, place)
        if found is None:
            break
        value, stop = found
        nxt = part_bottom(pieces, place)
        if nxt and nxt[0] > 3 and text_at(pieces, place) in TENS:
            break
        groups.append((value, stop))
        place = stop
        if text_at(pieces, place) == "-" and kind_at(pieces, place + 1) == "word" and (text_at(pieces, place + 1) in SMALL or text_at(pieces, place + 1) in TENS):
            place += 1
        if len(groups) > 12:
            break
    return groups, groups[-1][1] if groups else place


def _group(pieces: list[Raw], place: int) -> tuple[int, int] | None:
    if place >= len(pieces) or pieces[place].kind != "word":
        return None
    word, value = pieces[place].text, 0
    if word in TENS:
        value, place = TENS[word], place + 1
        unit, at = past_dash(pieces, place)
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
    unit, at = past_dash(pieces, place)
    total, scaled = 0, False
    while unit in SCALES:
        scale = SCALES[unit]
        value, place, scaled = max(value, 1) * scale, at + 1, True
        total, value = total + value, 0
        nxt, at2 = past_dash(pieces, place)
        if nxt == "and":
            nxt, at2 = past_dash(pieces, at2 + 1)
            if nxt not in SMALL and nxt not in TENS:
                break
        inner = _group_small(pieces, at2)
        if inner is None or SCALES.get(past_dash(pieces, inner[1])[0], 0) >= scale:
            break  # "four hundred and four hundred": two numbers
        value, place = inner
        unit, at = past_dash(pieces, place)
        if unit not in SCALES:
            break
    return (total + value, place) if scaled else (value, place)


def _group_small(pieces: list[Raw], place: int) -> tuple[int, int] | None:
    word = text_at(pieces, place)
    if kind_at(pieces, place) != "word":
        return None
    if word in TENS:
        unit, at = past_dash(pieces, place + 1)
        if unit in SMALL and 0 < SMALL[unit] < 10:
            return TENS[word] + SMALL[unit], at + 1
        if part_bottom(pieces, place) and (part_bottom(pieces, place) or (0, 0))[0] > 9:
            return None
        return TENS[word], place + 1
    if word in SMALL and word != "oh":
        return SMALL[word], place + 1
    return None


def joined(values: list[int]) -> int:
    """Groups said one after another are digits written one after another: 1, 20 is 120."""
    return int("".join(map(str, values))[:15])


_SHUTTERS_SPOKEN = {125.0, 160.0, 180.0, 250.0, 320.0, 350.0, 400.0, 500.0, 640.0, 800.0, 1000.0, 1250.0, 1600.0}


def before_fraction(pieces: list[Raw], groups: list[tuple[int, int]], stop: int) -> tuple[list[tuple[int, int]], int]:
    """"guide one ten one sixteenth": the last one begins a fraction of its own, where the whole run makes no shutter time."""
    bottom = part_bottom(pieces, past_dash(pieces, stop)[1])
    if len(groups) < 2 or groups[-1][0] != 1 or bottom is None or bottom[0] >= 100:
        return groups, stop
    values = [g for g, _ in groups]
    if values[0] == 1 and float(f"{joined(values[1:])}{int(bottom[0]):02d}") in _SHUTTERS_SPOKEN:
        return groups, stop
    return groups[:-1], groups[-2][1]


_PARTS_SAID = {(2, 3), (3, 4), (3, 8), (5, 8), (7, 8), (2, 10), (3, 10), (7, 10), (9, 10)}
"""Parts said without an s: "three quarter power", "two third"."""


def spoken_fraction(pieces: list[Raw], place: int, groups: list[tuple[int, int]], stop: int) -> tuple[Raw, int] | None:
    """"one sixteenth", "three quarters", "one one twenty-fifth", "one twenty-eighth", "two hundredth"."""
    values = [g for g, _ in groups]
    word, at = past_dash(pieces, stop)
    if word == "and" and values and values[-1] % 100 == 0:  # "a hundred and twenty-fifth"
        word, at = past_dash(pieces, at + 1)
        if (part_bottom(pieces, at) or (0, 0))[0] <= 10:
            return None
    bottom = part_bottom(pieces, at)
    if bottom is None or word in ("second", "first"):
        return None
    low = int(bottom[0])
    if not values:
        return None
    if low in (100, 1000):
        head = values[1:] if len(values) > 1 and values[0] == 1 else values
        scale = joined(head) if head else 1
        return fraction(pieces, place, bottom[1], 1.0, float(low * scale), True)
    if low > 10 and values[-1] % 100 == 0 and values[-1] >= 100:
        return fraction(pieces, place, bottom[1], 1.0, float(values[-1] + low), True)
    if values == [1] and low in (16, 32, 64, 8, 4, 2, 3, 5, 10, 15, 30, 60):
        return fraction(pieces, place, bottom[1], 1.0, float(low), True)
    if low <= 10 and (len(values) > 1 or values[0] >= 10 or not (word.endswith("s") or values[0] == 1 or (values[0], low) in _PARTS_SAID)):
        return None  # "guide number forty four quarter power", "f eight half power"
    if len(values) == 1 and values[0] < 10 and low <= 10:
        return fraction(pieces, place, bottom[1], float(values[0]), float(low), True)
    head = values[1:] if len(values) > 1 and values[0] == 1 else values
    return fraction(pieces, place, bottom[1], 1.0, float(f"{joined(head)}{low:02d}"), True)
