"""Rows at several distances, and the lens set for one of them: how far over or under each of the others is.

"rows at 9, 11 and 13 ft, set for the middle one: how hot is the front?" · "and the back row?"
By the inverse square law, counted from the row that comes out right; plus is more light.
"""

from __future__ import annotations

import re
from collections.abc import Collection

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution, needs
from assistant.units import speak_length

_WHICH_ROW = r"(?P<row>front|first|near(?:est)?|closest|middle|cent(?:re|er)|second|third|fourth|fifth|sixth|seventh|eighth|back|rear|last|furthest|farthest|far)"
_SET_FOR = Pattern(
    rf"\b(?:set|exposed?|exposing|(?<!difference in )(?<!change in )(?<!drop in )(?<!loss of )(?<!difference of )exposure|metered|metering|worked (?:it )?out|calculated|figured|right|correct|spot on|opened|f\W?\d[\d.]*)\b[^.?!\d]{{0,30}}\b(?:for|on|at|by) (?:the |my )?{_WHICH_ROW}\b(?: (?:row|one|rank|tier|person|lot))?"
    rf"|\b{_WHICH_ROW.replace('row', 'named')} (?:row|one|rank|tier|person)(?:'s| is| comes out| will be) (?:spot on|right|correct|perfect|properly exposed|correctly exposed)\b", re.I)
_NAMED = Pattern(rf"(?<!how )\b{_WHICH_ROW}\b(?! (?:of the (?:room|hall)|up|off|it|away))", re.I)
_MOVED = Pattern(r"\b(?:mov|pull|push|shift|step|tak|bring|brought|drag|walk|draw|wheel|roll|slid|put|go|com|back)\w*(?: (?:it|them|(?:the|my) \w+))?(?: further| farther)? back\b", re.I)
"""The light that goes back, and no back row."""
_ROW_OF = {"front": "front", "first": "front", "near": "front", "nearest": "front", "closest": "front", "middle": "middle", "centre": "middle", "center": "middle", "second": "middle"}
_SUITS = Pattern(rf"\b(?:aperture|f-?stop|stop|f-?number|setting|what)\b[^.?!\d]{{0,30}}\b(?:suits?|fits?|is right for|for|right on|gets|does|do i (?:set|use) for) (?:the |my )?{_WHICH_ROW} (?:row|one|rank|tier|person)\b", re.I)
"""The lens will be set for the row whose aperture is asked in the same breath."""
_ANOTHER = Pattern(rf"^\W*(?:(?:and|ok|okay|so|then|what about|how about|for|at|on) )*(?:the )?{_WHICH_ROW}(?: (?:row|rank|tier|one|person|lot))?(?: then)?\W*$", re.I)


def asks_another(said: str, before: str, *, told: bool = False) -> bool:
    """Whether "and the back row?" asks the question that stands of another row: after a row that the lens is set for, or where each row's answer is `told` by other means.

    >>> asks_another("and the back row?", "rows at 9 and 11 ft, set for the front, how far off is the middle?")
    True
    """
    return _ANOTHER.match(said) is not None and (told or _SET_FOR.search(before) is not None)


def names_its_row(text: str) -> str:
    """The row that the words say the lens is set for; nothing where they say none."""
    told = _SET_FOR.search(text)
    return _row(told["row"] or told["named"] or "") if told is not None else ""


def set_for_another(text: str, row: str) -> str | None:
    """The question with the lens set for another row; None where the words do not say for which it is set.

    >>> set_for_another("right for the middle row: how far over is the front?", "back")
    'right for the back row: how far over is the front?'
    """
    told = _SET_FOR.search(text)
    if told is None:
        return None
    named = "row" if told["row"] else "named"
    return f"{text[: told.start(named)]}{row.lower()}{text[told.end(named) :]}"


ADDED_FOR = Pattern(r"\bhow (?:many|much)\b[^?]*\b(?:add|open up|turn (?:it |the \w+ )?up|give)\b[^?]*\b(?:for|on|to)\b|\bhow (?:many stops|much) (?:more|extra) (?:power|light|exposure)\b[^?]*\b(?:need|want|take)s?\b|\bhow many stops (?:do|must|should|would) i open up\b", re.I)
"""What the back row would need, not what it lacks."""


def solve(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """Stops of the rows asked about against the row that the lens is set for; None where it is set for none."""
    there = _set_for_a_place(query)
    if there is not None:
        return there
    told, suits = _SET_FOR.search(query.text), _SUITS.search(query.text) if query.has("guide_number") else None
    told = suits or told
    if told is None or not scene.rows or scene.near is None or scene.far is None or query.has("stops") or query.has("guide_number") and suits is None and ask.quantity != "stops":
        return None
    places = _places(query, scene)
    if patterns.search(r"\bthird\b", query.text, re.I) and "middle" not in places and "third" not in places:
        return needs(("distance",), "I need the distance of the third row, or how many rows there are and how far apart.", scene.used, "falloff") if told["row"] == "third" else None  # which of how many
    right = _row(told["row"] or told.groupdict().get("named") or "", places)
    asked = [row for row in _asked(query.text, told.start(), told.end(), places) if row != right and row in places] or [row for row in ("front", "middle", "back") if row in places and row != right]
    if right not in places or not asked:
        return None
    values = [(row, falloff_stops(places[right], places[row])) for row in asked]
    if len(values) == 1 and values[0][1] < 0 and ADDED_FOR.search(query.text):
        row, lacks = values[0]
        return Solution(answers=(marks.stops(-lacks, f"{row} row"),), used=tuple(dict.fromkeys((*scene.used, *query.all("distance")))), topic="falloff", lead=f"Add {speak_stops(-lacks)} for the {row} row ({-lacks:+.2f}).")
    answers: tuple[Quantity, ...] = tuple(marks.stops(value, f"{row} row") for row, value in values)
    lead = "; ".join(f"the {row} row {speak_stops(abs(value))} {'over' if value > 0 else 'under'} ({value:+.2f})" for row, value in values)
    used = tuple(dict.fromkeys((*scene.used, *query.all("distance"), *query.all("rows"))))
    return Solution(answers=answers, used=used, lead=f"{lead[:1].upper()}{lead[1:]}.", topic="falloff")


RIGHT_AT = Pattern(r"\b(?:set|right|correct|exposed?|exposure|spot on|good|worked (?:it )?out|calculated)(?:ly)?\b[^.?!\d]{0,24}\b(?:at|for) (?:(?:about|exactly|those|the (?:ones?|faces?|people|person|man|woman|girl|boy)|people|someone|somebody|whoever|faces?|at|who|is|are|sits?|stands?|standing|sitting) )*$|\b(?:set|meter(?:ed)?|metering|exposed?|exposing|expose|exposure|worked (?:it )?out|calculated)\b[^.?!\d]{0,40}\b(?:middle|centre|center)\b[^.?!\d]{0,16}$", re.I)


def _set_for_a_place(query: Query) -> Solution | None:
    """"right at 10 ft: how far under is somebody at 15 ft, and how far over at 7": each place against the one it is set for."""
    places = [f for f in query.facts if f.quantity in ("distance", "focus_distance")]
    right = [f for f in places if RIGHT_AT.search(query.text[: f.start])]
    ends = {f.of: f for f in places if f not in right and f.of in ("front", "back")}
    if len(right) == 1 and len(ends) == 2 and len(places) == 3 and not any(query.has(q) for q in ("stops", "guide_number", "gap", "focal_length")):
        rows = [row for row in _asked(query.text, 0, 0) if row in ends] or list(ends)
        return Solution(answers=tuple(marks.stops(falloff_stops(right[0].value, ends[row].value), f"{row} row") for row in rows), used=tuple(places), topic="falloff")
    others = [f for f in places if f not in right and f.quantity == "distance" and not f.of]
    if len(right) != 1 or len(others) < 2 or len(places) != 1 + len(others) or any(query.has(q) for q in ("stops", "guide_number", "gap", "focal_length")):
        return None
    values = [(speak_length(f.value, f.unit), falloff_stops(right[0].value, f.value)) for f in others]
    lead = "; ".join(f"at {where} {speak_stops(abs(value))} {'over' if value > 0 else 'under'} ({value:+.2f})" for where, value in values)
    return Solution(answers=tuple(marks.stops(value, f"at {where}") for where, value in values), used=tuple(places), lead=f"{lead[:1].upper()}{lead[1:]}.", topic="falloff")


_BY_NUMBER = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")


def _row(word: str, places: Collection[str] = ()) -> str:
    """The name of a row; by its number only where there are so many."""
    word = word.lower()
    return word if word in places or word in _BY_NUMBER[3:] else _ROW_OF.get(word, "back")


def _places(query: Query, scene: Scene) -> dict[str, float]:
    """How far each row is from the light, front to back; the middle of rows that are evenly spaced lies half-way, and each of more than three goes by its number."""
    assert scene.near is not None and scene.far is not None
    middle = query.last("distance", "middle")
    count = query.last("rows")
    places = {"front": min(scene.near, scene.far), "back": max(scene.near, scene.far)}
    if middle is not None:
        places["middle"] = middle.value
    elif scene.gap is not None and count is not None and count.value % 2:
        places["middle"] = (scene.near + scene.far) / 2
    if scene.gap is not None and count is not None and 3 < count.value <= len(_BY_NUMBER):
        apart = (places["back"] - places["front"]) / (count.value - 1)
        places |= {name: places["front"] + at * apart for at, name in enumerate(_BY_NUMBER[: int(count.value)]) if 0 < at < count.value - 1}
    return places


def _asked(text: str, start: int, end: int, places: Collection[str] = ()) -> list[str]:
    """The rows named in the last question, in its order, what the lens is set for left out."""
    rest = _MOVED.sub("move", text[:start] + "." + text[end:])
    for part in reversed(patterns.split(r"[?!]|\.(?!\d)", rest)):
        rows = list(dict.fromkeys(_row(m["row"], places) for m in _NAMED.finditer(part)))
        if rows:
            return rows
    return []


def back_first(query: Query) -> bool:
    """Whether the question names the last row first, or that one alone and without its distance."""
    named = _asked(query.text, 0, 0)
    if named == ["back", "front"]:
        return True
    opens = max((m.end() for m in patterns.finditer(r"[?!;]|\.(?!\d)|,(?= (?:(?:at|on|for|to|so|and|then) )?(?:what|which|how)\b)", query.text.rstrip(" ?!."))), default=0)
    named = list(dict.fromkeys(_row(m["row"]) for m in _NAMED.finditer(query.text, opens))) if named != ["back"] else named
    return named == ["back"] and not any(f.quantity in ("distance", "gap") and f.start >= opens for f in query.facts)


def read_there(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"f/8 for the middle row, what would the front row want": the reading of another row, where the middle one is spoken of."""
    told, read = _SET_FOR.search(query.text), query.all("aperture")
    if len(read) != 1 or scene.near is None or scene.far is None or query.has("stops") or query.has("guide_number"):
        return None
    middle = query.last("distance", "middle")
    at_middle = middle is not None and query.last("distance", "front") is not None and query.last("distance", "back") is not None and read[0].sentence == middle.sentence and middle.start < read[0].start
    if (told is None or not scene.rows) and not at_middle:
        return None
    places, right = _places(query, scene), _row(told["row"] or told["named"]) if told is not None else "middle"
    span = (told.start(), told.end()) if told is not None else (0, read[0].end)
    asked = [row for row in _asked(query.text, *span) if row != right and row in places]
    if right not in places or not asked or len(asked) > 1 and not at_middle or "middle" not in (right, asked[0]):
        return None
    used = tuple(dict.fromkeys((*scene.used, *query.all("distance"), *query.all("rows"), read[0])))
    return Solution(answers=tuple(marks.aperture(read[0].value * places[right] / places[row], f"{row} row") for row in asked), used=used, topic="falloff")


def at_each(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """"f/16 at 9 feet: what for 18 feet, then for 25": the reading at each of several places, from the one at the first."""
    read, places = query.all("aperture"), query.all("distance")
    if len(read) != 1 or len({f.value for f in places}) < 3 or any(f.of for f in (*read, *places)) or {f.quantity for f in query.facts} & _CHANGES:
        return None
    was = min(places, key=lambda f: abs(f.start - read[0].end))
    others = [f for f in places if f is not was]
    if was is not places[0] or places[1].start < read[0].end:
        return None
    answers = tuple(marks.aperture(read[0].value * was.value / f.value, f"at {speak_length(f.value, f.unit)}") for f in others)
    return Solution(answers=answers, used=(read[0], *places), topic="falloff")


_CHANGES = frozenset({"guide_number", "stops", "relation", "loss", "gap", "move", "push", "length_range", "focal_length", "exposure_value"})


def changes_more(query: Query) -> bool:
    """Whether more than the place changes between the two."""
    return any(len(query.all(q)) > 1 for q in ("film_speed", "power", "energy"))


def of_one_row(query: Query, scene: Scene) -> Solution | None:
    """"guide number 50, the altos in the first row 5 m from the flash: what aperture": the one row that was placed is the subject."""
    from assistant.solving import flash

    places, one = query.all("distance"), scene.near_fact
    if one is None or len(places) != 1 or one.of not in ("front", "back", "middle") or any(query.has(q) for q in ("gap", "stops", "relation", "length_range", "move", "count")) or changes_more(query):
        return None
    found = flash.solve(query.with_facts(replace(f, of="") if f is one else f for f in query.facts))
    return replace(found, used=tuple(one if f.start == one.start and f.quantity == "distance" else f for f in found.used)) if found is not None and found.status == "answered" else None
