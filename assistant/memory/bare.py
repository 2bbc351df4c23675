"""Half-said values: bare numbers, "wide open", "pushed two", "one stop under instead"."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.memory.conversation import OF_A_STOP, Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving.light_wanted import AMISS
from assistant.units import LENGTH


def bare_numbers(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"pushed two", "make it 8", "and 400?": a number that can only be one thing here."""
    numbers = [f for f in query.facts if f.quantity in ("number", "signed") and not f.bad]
    if len(query.unknown) > 1 or len(numbers) != 1 or talk.missing or not (scene.asks or scene.facts):
        return query, scene
    number = numbers[0]
    meant = _meant(number, query, scene, talk)
    if meant is None:
        return query, scene
    return replace(query, facts=tuple(meant if f is number else f for f in query.facts), unplaced=()), scene


_FRONT_ROW = Pattern(r"\b(?:front|near\w*|first|closest)\b[^\d]{0,24}$", re.I)
_BACK_ROW = Pattern(r"\b(?:back|rear|far\w*|furthest|last)\b[^\d]{0,24}$", re.I)


def density_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and a 0.9?" after a filter of so much density: a density too."""
    told = [f for f in scene.facts if f.quantity == "nd"]
    bare = [f for f in query.facts if f.quantity in ("number", "aperture") and "f" not in f.said.lower() and 0 < f.value < 5]
    if len(told) != 1 or told[0].unit != "density" or len(bare) != 1 or query.asks or len(query.facts) != 1:
        return query, scene
    return replace(query, facts=(replace(bare[0], quantity="nd", value=stops_from_density(bare[0].value), unit="density", of="camera", cue=""),), unplaced=()), scene


_STEPS_AGAIN = Pattern(
    r"^\W*(?:(?:and|or|then|now|no|what about|how about|in|with|by|make (?:it|that|them)|say|steps of|a|an|one) )*(?P<size>whole|full|half|halves|thirds?|one)\b(?:[- ](?:of a )?stops?)?(?:[- ]steps?)?(?: apart| instead| then| please| steps?)*\W*$", re.I)
"""A size of step and little else: "in whole stops instead", "thirds?"."""
_SIDES = ("diagonal", "horizontal", "vertical")


def steps_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"in whole stops instead" of a bracket in halves."""
    told = [f for f in scene.facts if f.quantity == "stops" and not f.cue]
    said = _STEPS_AGAIN.search(query.text)
    counted = bool(scene.asks) and (scene.asks[0].quantity, scene.asks[0].unit) == ("count", "frames")
    if said is not None and counted and all(f.quantity in ("number", "remark", "stops") for f in query.facts) and len(query.facts) < 2:
        return _steps_of_a_count(query, scene, said)
    if said is None or query.asks and not query.asks_for("stops") or any(f.quantity not in ("number", "remark", "stops") for f in query.facts) or len(told) != 1 or not any(f.quantity == "count" and f.unit == "frames" for f in scene.facts):
        return query, scene
    size = {"ha": 0.5, "th": 1 / 3}.get(said["size"].lower()[:2], 1.0)
    return replace(query, asks=(), facts=(replace(told[0], value=size, origin="said", start=said.start("size"), end=said.end("size"), said=said["size"]),), unplaced=()), scene


_A_STEP = Pattern(r"[- ]?(?:stop )?(?:steps?|increments?|intervals?|apart)\b", re.I)


def _steps_of_a_count(query: Query, scene: Scene, said: re.Match[str]) -> Pair:
    """"and in whole stops?" after how many frames there are in half stops: the size of the step, told or not."""
    spans = [f for f in scene.facts if f.quantity == "stops"]
    size = {"ha": 0.5, "th": 1 / 3}.get(said["size"].lower()[:2], 1.0)
    old = [f for f in spans if _A_STEP.match(scene.text, f.end) or f.said.lower().endswith("steps") or scene.text[: f.start].lower().endswith(" in ")]
    if len(old) > 1 or len(spans) - len(old) not in (1, 2):
        return query, scene
    new = Fact("stops", size, "", "", start=said.start("size"), end=said.end("size"), said=f"{said['size']} stop steps") if not old else replace(old[0], value=size, cue="", said=said["size"], origin="said")
    return replace(query, asks=(), facts=(new, *(replace(f, origin="kept") for f in spans if f not in old)), unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "stops"))


def side_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and the diagonal?": the same angle along another side."""
    side = [c for c in _SIDES if c in query.cues]
    if query.facts or query.asks or len(side) != 1 or not scene.asks or scene.asks[0].quantity != "coverage":
        return query, scene
    return replace(query, asks=scene.asks[:1]), replace(scene, cues=(scene.cues - set(_SIDES)) | {side[0]})


_NORMAL = Pattern(r"\b(?:correct(?:ly)?|proper(?:ly)?|normal(?:ly)?) (?:exposed|exposure)\b|\b(?:back to|make it) normal\b", re.I)


def made_right(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, make it correctly exposed" after "one stop under": none under."""
    under = [f for f in scene.facts if f.quantity in ("relation", "stops") and f.of in ("", "ambient", "backdrop") and f.cue in ("less", "more")]
    if query.facts or query.asks or len(under) != 1 or not _NORMAL.search(query.text):
        return query, scene
    match = _NORMAL.search(query.text)
    assert match is not None
    return replace(query, facts=(replace(under[0], value=0.0, start=match.start(), end=match.end(), said=match.group()),)), scene


def row_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"make the far row 3.5 m", then "and at 4 m?": of the row, or the wall, that was moved."""
    last = _said_last(talk)
    mine = [f for f in query.facts if f.quantity == "distance" and not f.of]
    if last is None or last.quantity != "distance" or last.of not in ("front", "back", "backdrop") or len(mine) != 1 or len(query.facts) != 1 or query.asks:
        return query, scene
    return replace(query, facts=(replace(mine[0], of=last.of),)), scene


_PLACED_AT = Pattern(r"\b(?:at|to|from|back to|in to)\W*$", re.I)


def row_number(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and if the front is at 3.5?": the place of that row, and no f/3.5."""
    told = {f.of: f for f in scene.facts if f.quantity == "distance" and f.of in ("front", "back", "key", "fill", "rim", "hair", "backdrop") and f.unit in LENGTH}
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if len(told) != 2 or mine is None or mine.quantity not in ("number", "aperture", "film_speed") or mine.bad or any(c.isalpha() for c in mine.said) or any(f.quantity == "aperture" for f in scene.facts):
        return query, scene
    before = query.text[: mine.start]
    named = [m for m in query.mentioned if m in told]
    of = "front" if _FRONT_ROW.search(before) else "back" if _BACK_ROW.search(before) else named[0] if len(named) == 1 and _PLACED_AT.search(before) else ""
    if of not in told:
        return query, scene
    return replace(query, facts=(replace(mine, quantity="distance", value=mine.value * LENGTH[told[of].unit], other=math.nan, unit=told[of].unit, of=of, cue=""),), unplaced=()), scene


def row_numbers(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and with the front at 15 and the back at 19?", "what about 20 and 24?": the rows that were told, anew."""
    told = {f.of: f for f in scene.facts if f.quantity == "distance" and f.of in ("front", "back") and f.unit in LENGTH}
    numbers = [f for f in query.facts if f.quantity in ("number", "number_range") and not f.bad]
    if len(told) != 2 or not numbers or query.asks or any(f.quantity == "distance" for f in query.facts):
        return query, scene
    values = [(f.value, f) for f in numbers] + [(f.other, f) for f in numbers if f.quantity == "number_range"]
    if len(values) != 2 or sum(value >= 1 for value, _ in values) != 2:
        return query, scene
    before = [query.text[: f.start] for _, f in values]
    names = ["front" if _FRONT_ROW.search(b) else "back" if _BACK_ROW.search(b) else "" for b in before]
    names = ["front", "back"] if set(names) != {"front", "back"} else names
    made = tuple(replace(f, quantity="distance", value=value * LENGTH[told[of].unit], other=math.nan, unit=told[of].unit, of=of) for (value, f), of in zip(values, names))
    return replace(query, facts=(*(f for f in query.facts if f not in numbers), *made), unplaced=()), scene


def wide_open(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"wide open": the lens's widest aperture, where it is known; "stopped right down" its smallest."""
    if query.has("aperture"):
        return query, scene
    for cue, quantity, pick in (("wide_open", "widest_aperture", min), ("stopped_down", "smallest_aperture", max)):
        if cue in query.cues:
            known = next((f for f in (*talk.kit.facts, *query.facts) if f.quantity == quantity), None)
            span = next((f for f in (*talk.kit.facts, *query.facts) if f.quantity == "aperture_range"), None)
            value = known.value if known else pick(span.value, span.other) if span else None
            if value:
                return replace(query, facts=(*query.facts, Fact("aperture", value, said=f"f/{value:g}"))), scene
    return query, scene


def only_so_many(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"I only have two": a limit of how many, when how many was asked."""
    if not scene.asks or scene.asks[0].quantity != "count" or not query.cues & {"at_most", "my_kit"}:
        return query, scene
    numbers = [f for f in query.facts if f.quantity in ("number", "count")]
    if len(numbers) != 1 or query.asks:
        return query, scene
    limit = replace(numbers[0], quantity="max_count", of="")
    return replace(query, facts=tuple(limit if f is numbers[0] else f for f in query.facts), unplaced=()), scene


_NAMES_A_THING = Pattern(r"(?:\b(?:flash|light|head|strobe|lamp|unit|row|frame|roll|number)|(?<=[a-z] )no)\s+$", re.I)


_METERED_SO = Pattern(r"\bmeter(?:s|ed)? (?:now |then )?(?:wants?|asks for|needs?|calls for|says?|said|reads?|shows?)\s*$", re.I)
_TOO_FAR_OFF = 5.0
"""Times the last distance: beyond that a bare mark of film speed is one."""


def _said_last(talk: Conversation) -> Fact | None:
    """The one value that the turn before changed: a bare number after it is of its kind."""
    said = [f for f in talk.last_query.facts if f.origin == "said"] if talk.last_query is not None and talk.past else []
    return said[0] if len(said) == 1 and said[0].quantity in ("distance", "aperture", "stops", "count", "guide_number", "energy", "shutter") else None


_NEXT_PLACE = Pattern(r"^\W*(?:(?:and|or|then|what about|how about|what) )*(?:at )?[\w.]+\W*$", re.I)


def _meant(number: Fact, query: Query, scene: Scene, talk: Conversation) -> Fact | None:
    if _NAMES_A_THING.search(query.text[: number.start]) or number.cue == "either" or OF_A_STOP.search(number.said):
        return None
    if len(query.mentioned) == 1:
        number = replace(number, of=query.mentioned[0])
    if query.cues & {"push", "pull"}:
        if number.value <= 5:
            return replace(number, quantity="push", value=number.value * (1 if "push" in query.cues else -1), of="film")
        return replace(number, quantity="rated", of="film")
    if any(f.quantity == "push" for f in scene.facts) and number.value <= 4 and scene.asks and scene.asks[0].quantity in ("film_speed", "speed"):
        old = next(f for f in scene.facts if f.quantity == "push")
        return replace(number, quantity="push", value=math.copysign(number.value, old.value), of="film")
    from assistant.scales import is_aperture_mark, is_film_speed_mark

    asked = scene.asks[0].quantity if scene.asks else ""
    timed = [f for f in scene.facts if f.quantity in ("shutter", "time") and f.value >= 1]
    if asked in ("shutter", "duration") and len(timed) == 1 and not any(f.quantity in ("distance", "guide_number") for f in scene.facts) and patterns.search(r"\b(?:metered|meter(?:s|ed)? (?:says?|said)?|says|said|for|at|is|was|reads?)\s*$", query.text[: number.start].lower()):
        return replace(number, quantity=timed[0].quantity, unit=timed[0].unit, of=timed[0].of)
    if query.cues & {"move", "closer", "further"} and any(f.quantity == "distance" for f in scene.facts):
        last = next(f for f in reversed(scene.facts) if f.quantity == "distance")
        unit = last.unit if last.unit in LENGTH else "ft"
        return replace(number, quantity="distance", value=number.value * LENGTH[unit], unit=unit, of=number.of or last.of)
    before = query.text[: number.start].lower()
    if number.value == round(number.value) and 2 <= number.value <= 64 and any(f.quantity == "count" for f in scene.facts) and patterns.search(r"\bwith (?:just |only )?$", before):
        return replace(number, quantity="count", unit=next(f.unit for f in scene.facts if f.quantity == "count"), of="")
    pair = number.other if not math.isnan(number.other) else number.value
    if patterns.search(r"\b(?:from|at)\s+$", before) and any(f.quantity == "distance" for f in scene.facts) and asked != "distance":
        last = next(f for f in reversed(scene.facts) if f.quantity == "distance")
        unit = last.unit if last.unit in LENGTH else "ft"
        if number.value >= 100 and is_film_speed_mark(number.value) and asked != "film_speed" and number.value * LENGTH[unit] > _TOO_FAR_OFF * last.value:
            return replace(number, quantity="film_speed", of="")  # after "10 feet, ISO 100": no flash is moved to 200 feet
        return replace(number, quantity="distance", value=number.value * LENGTH[unit], unit=unit, of=number.of or last.of)
    distances = [f for f in scene.facts if f.quantity == "distance"]
    apertures = [f for f in scene.facts if f.quantity == "aperture"]
    lengths_only = asked == "stops" and bool(distances) and {f.quantity for f in scene.facts} <= {"distance", "gap", "stops", "count"}
    if number.value >= 25 and is_film_speed_mark(number.value) and asked != "film_speed" and not lengths_only:
        return replace(number, quantity="film_speed", of="")
    if apertures and not distances and is_aperture_mark(pair):
        return replace(number, quantity="aperture", value=pair, of=number.of or apertures[-1].of)
    if _METERED_SO.search(before):
        return None  # "meter wants fifteen": seconds perhaps, and no place
    again = _said_last(talk)
    if again is not None and (again.quantity != "aperture" or is_aperture_mark(pair)) and again.quantity != "film_speed":
        unit = again.unit if again.unit in LENGTH else "ft"
        of_kind = {"distance": number.value * LENGTH[unit], "aperture": pair}.get(again.quantity, number.value)
        return replace(number, quantity=again.quantity, value=of_kind, unit=again.unit, of=number.of or again.of)
    moved = len(distances) > 1 and len(apertures) == 1 and asked in ("", "aperture") and _NEXT_PLACE.match(query.text) is not None  # "what's that at 10 feet?", "and 20?"
    if distances and (not apertures or moved):
        unit = distances[-1].unit if distances[-1].unit in LENGTH else "ft"
        return replace(number, quantity="distance", value=number.value * LENGTH[unit], unit=unit, of=number.of or distances[-1].of)
    return None


_PUSHED_ANEW = Pattern(r"\b(push|pull)\w*\b[^.?!\d]{0,16}\b(one|two|three|half a stop|a half)(?: stops?)?(?: instead| then| only)?\W*$", re.I)
_SO_MANY = {"one": 1.0, "two": 2.0, "three": 3.0, "half a stop": 0.5, "a half": 0.5}
_NO_PUSH = Pattern(r"\b(?:don'?t|do not|not|no|without|forget|skip|never mind|won'?t|leave out)\b(?: \w+){0,3} (?:push|pull)\w*\b|\bprocess(?:ed|ing)? (?:it )?normal\w*\b|\bnormal (?:processing|development)\b", re.I)
_RATES = Pattern(r"\brat(?:e|ed|ing)\b|\bmeter(?:ed|ing)?\b|\bshot it at\b|\bexpos(?:e|ed|ing)\b|\bshoot it at\b", re.I)


_FILM_GOES = Pattern(r"\b(?:i'?m|i am|i'll be|we'?re|we are|it'?s being|going to be|having it|to be) (?:push|pull)\w*\b(?! (?:the (?:light|flash|lamp|head)|back\b|in\b))", re.I)


def film_pushes(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """A push said anew replaces the one before, counted from box speed."""
    if any(f.quantity == "rated" for f in scene.facts) and len(query.all("film_speed")) == 1 and _RATES.search(query.text):
        query = replace(query, facts=tuple(replace(f, quantity="rated", of="film") if f.quantity == "film_speed" else f for f in query.facts))
    pushes = [f for f in scene.facts if f.quantity == "push"]
    again = _PUSHED_ANEW.search(query.text) if pushes and not query.has("push") else None
    if again and not query.facts:
        sign = -1.0 if again[1] and again[1].lower().startswith("pull") else 1.0 if again[1] else math.copysign(1.0, pushes[-1].value)
        query = replace(query, facts=(Fact("push", sign * _SO_MANY[again[2].lower()], of="film", start=again.start(2), end=again.end(), said=again[2]),), unplaced=())
    elif pushes and scene.asks and scene.asks[0].quantity in ("film_speed", "speed") and len(query.facts) == 1 and query.facts[0].quantity == "stops" and not query.facts[0].cue:
        query = replace(query, facts=(replace(query.facts[0], quantity="push", value=math.copysign(query.facts[0].value, pushes[-1].value), of="film"),))
    elif not query.asks and len(query.facts) == 1 and query.facts[0].quantity == "stops" and query.cues & {"pull", "push"} and (pushes or any(f.quantity == "film_speed" for f in scene.facts) and _FILM_GOES.search(query.text)):
        query = replace(query, facts=(replace(query.facts[0], quantity="push", value=abs(query.facts[0].value) * (-1.0 if "pull" in query.cues else 1.0), of="film", cue=""),))
    if "pull" in query.cues and any(f.quantity == "push" for f in scene.facts):
        query = replace(query, facts=tuple(replace(f, quantity="push", value=-abs(f.value), of="film", cue="") if f.quantity in ("stops", "move", "power_down") else f for f in query.facts))
    if pushes and not query.facts and not query.asks and _NO_PUSH.search(query.text):
        return query, replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "push"))
    if any(f.quantity in ("push", "rated") for f in query.facts) or "box_speed" in query.cues and not query.asks:
        scene = replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in ("push", "rated")))
    return query, scene


def ratio_convention(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"as key to fill then": the same ratio counted the other way; "make it 4:1": by moving the fill."""
    text = query.text.lower().replace("-", " ")
    if scene.asks and scene.asks[0].quantity == "ratio" and "key to fill" in text:
        return replace(query, asks=scene.asks, unplaced=(), unknown=()), replace(scene, cues=scene.cues | {"key_to_fill"})
    if "key_to_fill" in scene.cues and patterns.search(r"\blighting ratio\b|\b(?:plus|and|\+) (?:the )?fill\b", text):
        scene = replace(scene, cues=scene.cues - {"key_to_fill"})
    if scene.asks and scene.asks[0].quantity == "ratio" and query.has("ratio") and len(query.facts) == 1 and not query.asks and any(f.of == "fill" and f.quantity == "distance" for f in scene.facts):
        return replace(query, asks=(Ask("distance", "fill"),)), scene
    return query, scene


def role_value(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and if the fill drops to f/2.8": a reading of the light that is named."""
    lights = {f.of for f in scene.facts if f.of and f.quantity == "aperture"}
    named = [m for m in query.mentioned if m in lights]
    if len(named) == 1:
        facts = tuple(replace(f, of=named[0]) if f.quantity == "aperture" and not f.of else f for f in query.facts)
        return replace(query, facts=facts), scene
    return query, scene


def _way_of(talk: Conversation) -> str:
    """Whether the place that was answered gives less light than the one told, or more."""
    found, told = talk.last_solution, next((f for f in talk.scene.facts if f.quantity == "distance"), None)
    there = next((q for q in found.answers if q.quantity == "distance" and q.of != "move"), None) if found else None
    if told is None or there is None or not isinstance(there.value, float) or there.unit not in LENGTH:
        return ""
    return "less" if there.value * LENGTH[there.unit] > told.value else "more"


def wanted_way(query: Query, cue: str, talk: Conversation) -> str:
    """Whether a move is to bring less light or more, by a half-sentence: "two stops less", "and if it's two stops too dark?" (more is wanted), "and two stops?" (as before)."""
    amiss = AMISS.search(query.text)
    return cue or _way_of(talk) if amiss is None else "less" if amiss["much"] else "more"


def of_a_move(scene: Scene) -> bool:
    """Whether it is asked where to stand for so many stops, and by no guide number."""
    kinds = {f.quantity for f in scene.facts}
    return bool(scene.asks) and scene.asks[0].quantity == "distance" and "stops" in kinds and not kinds & {"guide_number", "aperture"}


def relation_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"one stop under instead", "make that two stops under": the relation that stands, changed."""
    old = next((f for f in reversed(scene.facts) if f.quantity in ("relation", "stops")), None)
    steps = [f for f in query.facts if f.quantity in ("stops", "relation") and not f.to]
    moved = old is not None and old.quantity == "stops" and of_a_move(scene)
    if old is None or not steps or query.asks or not (old.quantity == "relation" or old.cue or moved):
        return query, scene
    step = steps[0]
    new = replace(old, value=step.value, to="move" if moved else old.to, cue=wanted_way(query, step.cue, talk) if moved else step.cue or old.cue or _way_of(talk), said=step.said, start=step.start, end=step.end, origin="said")
    return replace(query, facts=tuple(new if f is step else f for f in query.facts)), scene
