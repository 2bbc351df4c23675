"""What a turn means in its conversation: its facts joined with the scene and the kit, and what it must want."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.language.daylight import SKIES
from assistant.memory.conversation import Conversation, Scene, merged, move_lengths, supply_missing
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving.lights import preferred_unit
from assistant.units import LENGTH


def meant(query: Query, talk: Conversation, scene: Scene) -> Query:
    """The query with what the conversation and the kit add to it."""
    if not (scene.facts or scene.asks or scene.cues or scene.units or scene.mentioned or talk.kit.facts or talk.missing or talk.last_solution):
        return _first_of_all(query)
    if talk.missing:
        query = supply_missing(query, talk.missing, preferred_unit(replace(query, facts=tuple(scene.facts))) if scene.facts else "ft")
        query = _with_its_speed(_other_place(query, talk.missing, scene), talk.missing, scene)
    if "shutter" in talk.missing and any(f.of == "ambient" for f in scene.facts):
        read = {f.value for f in scene.facts if f.quantity == "aperture" and f.of == "ambient"}
        query = query.with_facts(replace(f, of="ambient") if f.quantity == "shutter" and not f.of or f.quantity == "aperture" and not f.of and f.value in read else f for f in query.facts)  # the time of the reading, and the reading said again
    if "exposure_value" in talk.missing and query.has("exposure_value") and not any(f.of == "ambient" and f.quantity == "aperture" for f in scene.facts):
        scene = replace(scene, facts=tuple(replace(f, of="") if f.quantity == "shutter" and f.of == "ambient" else f for f in scene.facts))  # the time to work at, now that the light is told
    if _new_subject(query, scene) and not talk.missing:
        from assistant.memory.worn import WORN, with_what_is_on

        stays = frozenset({"film_speed", "rated", "push"}) | (WORN if with_what_is_on(query, scene) else frozenset())
        scene = Scene(asks=scene.asks, facts=tuple(f for f in scene.facts if f.quantity in stays))
    if query.asks and scene.asks and not query.mentioned and query.asks[0].quantity != scene.asks[0].quantity and query.asks[0].quantity in ("guide_number", "film_speed", "aperture"):
        scene = replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in ("ratio", "relation")))
    moves = [f for f in query.facts if f.quantity == "move"]
    new = [f for f in query.facts if f.quantity != "move" or not _has_distance(scene, query)]
    facts = merged([replace(f, origin="kept") for f in scene.facts], new)
    facts = _as_it_was_first(query, talk, scene, (*_where_it_was(query, talk, scene), *facts))
    if "film_speed" in talk.missing:
        facts = (*facts, *(f for f in scene.facts if f.quantity == "push" and not any(n.quantity == "push" for n in facts)))
        facts = (*facts, *(replace(f, origin="kept") for f in scene.facts if f.quantity == "film_speed" and query.has("film_speed")))  # the film that was loaded, after the one it was read for
    if moves and _has_distance(scene, query):
        of_rows = talk.last_solution is not None and any((q.of or "").endswith(" row") for q in talk.last_solution.answers[:1]) or _of_two_in_one_light(scene, talk)
        facts = move_lengths(facts, moves, of_rows)
    asks = query.asks or (() if scene.asks else inferred_ask(replace(query, facts=facts))) or scene.asks or ((Ask("aperture"),) if implied_ask(replace(query, facts=facts)) else ())
    own = talk.kit.flashes()
    if len(own) > 1 and len(query.mentioned) == 1 and query.mentioned[0] in own and asks and not asks[0].of and asks[0].quantity in ("power", "distance", "aperture"):
        asks = (replace(asks[0], of=query.mentioned[0]), *asks[1:])
    if not query.asks and _gives_what_was_asked(query, scene, facts):
        asks = (Ask("power", scene.asks[0].of),)
    cues = query.cues | (scene.cues if not query.asks or _same_kind(query.asks, scene.asks) else scene.cues & (_STAYING | SKIES if _in_that_light(query) else _STAYING))
    units = query.units or scene.units
    lights = tuple(dict.fromkeys((*scene.mentioned, *query.mentioned))) if not query.asks or not query.mentioned else query.mentioned
    whole = replace(query, facts=facts, asks=asks, cues=cues, units=units, claim=query.claim, mentioned=lights)
    bared = "BARE" in query.cues and scene.asks and scene.asks[0].quantity == "guide_number"  # "what would it be bare?", of a guide number with the box on
    if not bared and (not query.asks or not query.facts and scene.asks and [a.quantity for a in query.asks] == [scene.asks[0].quantity]):
        whole = _in_its_words(whole, scene, frozenset(query.facts), query.cues)
    if _of_the_row_it_is_set_for(query, scene):
        whole = _with_its_words(whole, scene, frozenset(query.facts))
    named = {o for o in (*whole.owners(), *(a.of for a in asks), *whole.mentioned) if o}
    kit = talk.kit.for_scene(whole, named)
    unit = next((f.unit for f in talk.kit.facts if f.quantity == "guide_number" and f.unit), "")
    beside = (Fact("preferred_unit", 0.0, unit, origin="kit"),) if unit else ()
    return replace(whole, facts=(*kit, *beside, *whole.facts))


def _first_of_all(query: Query) -> Query:
    """The first question of a conversation, to which nothing is added but what it must want."""
    facts, mentioned = merged((), query.facts), tuple(dict.fromkeys(query.mentioned))
    whole = query if facts == query.facts and mentioned == query.mentioned else replace(query, facts=facts, mentioned=mentioned)
    return whole if query.asks else replace(whole, asks=inferred_ask(whole) or ((Ask("aperture"),) if implied_ask(whole) else ()))


_ROWS = frozenset({"front", "middle", "back"})
_SECOND_OF_TWO = frozenset({"key", "fill", "hair", "rim", "kicker", "accent"})


_OTHER_ROW = {"front": "back", "back": "front"}


def _other_place(query: Query, missing: tuple[str, ...], scene: Scene) -> Query:
    """"it is 5 m from the light", after "2 m from the first pew, and the last one?": the place that was asked for, which takes nothing from the first."""
    first = [f for f in scene.facts if f.quantity in ("distance", "gap")]
    new = [f for f in query.facts if f.quantity == "distance"]
    asked = missing == ("distance",) and bool(scene.asks) and scene.asks[0].quantity == "stops"
    lights = [n for n in scene.mentioned if first and n != first[0].of]
    rows = _ROWS & scene.cues - {f.of for f in first}
    if asked and len(first) == len(new) == len(rows) == 1 and first[0].of in _ROWS and not new[0].of and not _TAKES_BACK.search(query.text):
        return query.with_facts(replace(f, of=next(iter(rows))) if f is new[0] else f for f in query.facts)  # "13 ft", after "the front row is at 9 feet: how much darker is the back?"
    if asked and len(first) == len(new) == len(lights) == 1 and first[0].of and not new[0].of and lights[0] in _SECOND_OF_TWO:
        return query.with_facts(replace(f, of=lights[0]) if f is new[0] else f for f in query.facts)  # "3.5 feet", after "the key sits 5 feet out: how far over is the rim?"
    if asked and len(first) == len(new) == 1 and first[0].quantity == "distance" and first[0].of in _OTHER_ROW and not new[0].of and not _TAKES_BACK.search(query.text):
        return query.with_facts(replace(f, of=_OTHER_ROW[first[0].of]) if f is new[0] else f for f in query.facts)  # "10 feet", after "the front is 7 ft from the light: how much darker is the back row?"
    if not asked or len(first) != 1 or len(new) != 1 or first[0].quantity == "gap" or first[0].of or new[0].of or _TAKES_BACK.search(query.text):
        return query
    return query.with_facts((replace(first[0], origin="kept"), *query.facts))


_UNDER_WHAT = Pattern(r"^\W*(?:at|on|for|with|in)(?: an?)? $", re.I)


_IT_IS = Pattern(r"\W*(?:(?:it|that|this|the (?:gn|guide number))(?:'s| is| was)?|is|was|i have|i get)? ?(?:about )?$", re.I)


def _with_its_speed(query: Query, missing: tuple[str, ...], scene: Scene) -> Query:
    """"it is 24 m at ISO 100", after "what's the guide number on ISO 800?": what it is given for, and not the film or the power that was asked about (contract 18)."""
    told = query.all("guide_number") or [f for f in query.all("distance") if f.of in ("", "both")]
    under = [f for f in query.facts if f.quantity in ("film_speed", "power")]
    if missing != ("guide_number",) or len(told) != 1 or len(under) != 1 or not any(f.quantity == under[0].quantity for f in scene.facts):
        return query
    one, at = told[0], under[0]
    if not (_UNDER_WHAT.match(query.text[one.end : at.start]) if one.end <= at.start else _IT_IS.match(query.text[at.end : one.start])):
        return query
    value = one.value / (LENGTH[one.unit] if one.quantity == "distance" and one.unit in LENGTH else 1.0)
    guide = replace(one, quantity="guide_number", value=value, end=at.end, **{"at_iso" if at.quantity == "film_speed" else "at_power": at.value})
    return query.with_facts(guide if f is one else f for f in query.facts if f is not at)


_WAS = Pattern(r"^\W*(?:(?:oh|ah|sorry|well|ok|okay|and),? )*(?:it|that|they|she|he|i|we|the \w+|my \w+) (?:used to|was|were|stood|sat|had|started|began|came from)\b|\b(?:before|at first|originally|to begin with|to start with)\W*$|^\W*from\b", re.IGNORECASE)

_NOW_AT = Pattern(r"\b(?:until|till) (?:it|they|she|he) (?:is|are|was|were|stood|stands?|sat|sits?)\b|\b(?:moved|pulled|pushed|slid|drawn|brought|gone|come|backed)\b[^.?!]{0,30}\bto (?:about |just |exactly )?\d|\b(?:is|are|stands?|sits?|it's) now\b|\bnow (?:is|at|stands?|sits?|\d)", re.IGNORECASE)


def _as_it_was_first(query: Query, talk: Conversation, scene: Scene, facts: tuple[Fact, ...]) -> tuple[Fact, ...]:
    """The facts, with what was missing before what is now so, where it is said of before, or what was told is of now: "it used to be at 8 feet"."""
    said = [f for f in query.facts if f.origin == "said"]
    if len(said) != 1 or said[0].quantity not in talk.missing or not (_WAS.search(query.text) or _NOW_AT.search(scene.text)):
        return facts
    told = said[0]
    alike = [n for n, f in enumerate(facts) if f.quantity == told.quantity]
    if len(alike) != 2 or facts[alike[1]].start != told.start or facts[alike[1]].value != told.value:
        return facts
    first, second = alike
    return (*facts[:first], facts[second], facts[first], *facts[first + 1 : second], *facts[second + 1 :])


_PLACED = ("distance", "film_speed")


def _where_it_was(query: Query, talk: Conversation, scene: Scene) -> tuple[Fact, ...]:
    """After "300 Ws is f/8 at 3 m, for f/16?" a "6 m" is where it goes: the three metres are what the pair was found at."""
    last = talk.last_solution
    if last is None or last.topic != "change" or query.asks or any(f.quantity == "guide_number" for f in scene.facts):
        return ()
    kept = []
    for quantity in _PLACED:
        old = [f for f in scene.facts if f.quantity == quantity and not f.of]
        new = [f for f in query.facts if f.quantity == quantity and not f.of]
        if len(old) == len(new) == 1 and scene.asks and scene.asks[0].quantity != quantity and not _TAKES_BACK.search(query.text):
            kept.append(replace(old[0], origin="kept"))
    return tuple(kept)


_TAKES_BACK = Pattern(r"^\W*(?:no|nope|sorry|wait|oops|i mean|i meant|actually)\b|\b(?:it was|not)\b", re.I)


_OWN_WORDS = frozenset({"less", "more", "up", "down", "open_up", "close_down", "further", "closer", "move", "put_on", "bare", "loss", "bounce", "push", "pull", "both", "one_light", "each"})
"""Words that say by themselves what is wanted now."""


_OF_ONE_OF_THEM = frozenset({"both", "one_light", "each"})
_TAKING = frozenset({"loss", "filter_loss", "modifier", "camera_filter"})
"""What is told of a loss alone: "and if it lost three?" asks as before, with it or without it."""


def _in_its_words(whole: Query, scene: Scene, said: frozenset[Fact], cues: frozenset[str]) -> Query:
    """A value said anew is put into the question that stands: it is read in the words that asked for it, and its own after them."""
    if said and scene.asks and (scene.asks[0].of == "both" or "both" in scene.cues):
        cues -= _OF_ONE_OF_THEM  # "and if the flash alone is f/5.6?": what the two make together is still what is asked
    lost = cues & _OWN_WORDS == {"loss"} and {f.quantity for f in said} <= _TAKING and any(f.quantity in ("loss", "filter_loss") for f in said)
    if not scene.text or not scene.asks or whole.claim or cues & _OWN_WORDS and not lost and not _only_moved(scene, said) and not _one_of_two_readings(scene, said) and not (cues & _OWN_WORDS <= {"less", "more"} and any(f.quantity in ("relation", "stops") for f in (*scene.facts, *(f for f in said if f.of))) and all(f.quantity in ("relation", "stops") for f in said)):
        return whole
    return _with_its_words(whole, scene, said)


def _of_the_row_it_is_set_for(query: Query, scene: Scene) -> bool:
    """"how much under is the back row?", after "set for the middle row, what aperture?": under what the lens is set for."""
    rows = sum(f.of in ("front", "middle", "back") for f in scene.facts)
    if rows < 2 or not query.asks_for("stops") or not query.cues & {"front", "middle", "back"} or query.mentioned:
        return False
    from assistant.solving.set_for_row import names_its_row

    return bool(names_its_row(scene.text)) and not names_its_row(query.text)


def _with_its_words(whole: Query, scene: Scene, said: frozenset[Fact]) -> Query:
    shift, gone = len(scene.text) + 1, _replaced(whole, scene, said)
    facts = tuple(f if f not in said else replace(f, start=gone.start, end=gone.end) if gone is not None else replace(f, start=f.start + shift, end=f.end + shift) for f in whole.facts)
    return replace(whole, text=patterns.at_hand(f"{scene.text} {whole.text}"), facts=facts)


def _replaced(whole: Query, scene: Scene, said: frozenset[Fact]) -> Fact | None:
    """The one value whose place the one that was said takes, in the question as in the words of it."""
    told = next(iter(said)) if len(said) == 1 else None
    left = {(f.quantity, f.of, f.value) for f in whole.facts if f not in said}
    gone = [f for f in scene.facts if told is not None and f.quantity == told.quantity and f.of == told.of and (f.quantity, f.of, f.value) not in left]
    return gone[0] if len(gone) == 1 and gone[0].end <= len(scene.text) else None


_GOES = Pattern(r"\b(?:mov|shift|bring|brought|tak|took|pull|push|carr|walk|go|went|step|back|slid|put|from \d|to \d|instead|then|key|fill|rim|hair|kicker)", re.I)
"""Of something that changes its place, or of two lights."""


def _of_two_in_one_light(scene: Scene, talk: Conversation) -> bool:
    """"the bride is 6 ft from the light and the groom 9, how many stops less does he get?": two who stand still, and the light moves for both."""
    found, places = talk.last_solution, [f for f in scene.facts if f.quantity == "distance"]
    return found is not None and found.topic == "falloff" and found.answers[0].quantity == "stops" and len(places) == 2 and all(f.of in ("", "b") for f in places) and not _GOES.search(scene.text)


def _only_moved(scene: Scene, said: frozenset[Fact]) -> bool:
    """"set for the middle row: how hot is the front?", and then the light goes back: the rows are still counted from the one the lens is set for."""
    if not said or any(f.quantity != "move" for f in said) or not any(f.of in ("front", "middle", "back") for f in scene.facts):
        return False
    from assistant.solving.set_for_row import names_its_row

    return bool(names_its_row(scene.text))


def _one_of_two_readings(scene: Scene, said: frozenset[Fact]) -> bool:
    """"flash f/11 and sun f/11 on one cheek, together?", then "if the flash alone is f/5.6": one of the two anew, and both together still."""
    read = {f.of for f in scene.facts if f.quantity == "aperture"}
    return read == {"", "ambient"} and len(said) == 1 and all(f.quantity == "aperture" and f.of in read for f in said)


def _gives_what_was_asked(query: Query, scene: Scene, facts: tuple[Fact, ...]) -> bool:
    """"can I do f/8?", after the aperture was asked: what is left to turn is the power."""
    told = any(f.quantity == "aperture" and not f.of for f in query.facts)
    kinds = {f.quantity for f in facts}
    return told and bool(scene.asks) and scene.asks[0].quantity == "aperture" and {"guide_number", "distance"} <= kinds and "both" not in query.cues and len(query.facts) == 1


def _new_subject(query: Query, scene: Scene) -> bool:
    """A whole flash question after a question that had nothing to do with a flash."""
    placed = query.has("guide_number") and (query.has("distance") or query.has("aperture"))
    return bool(query.asks and scene.asks and placed) and not any(f.quantity in ("guide_number", "distance") for f in scene.facts)


def inferred_ask(query: Query) -> tuple[Ask, ...]:
    """What a question with no quantity named must want: the one unknown of its balance."""
    if not _questioning(query) and not query.units:
        return ()
    has = query.has
    readings = {f.of for f in query.facts if f.quantity == "aperture" and f.of}
    ratio, other = query.last("ratio"), next((m for m in query.mentioned if m in ("key", "fill") and m not in readings), "")
    if ratio and readings and other and "q" in query.cues:
        return (Ask("aperture", other),)
    against = query.last("relation")
    if against and against.to == "aperture" and not has("guide_number") and query.cues & {"what", "q", "meter"}:
        return (Ask("aperture", against.of),)
    if against and readings and "one_light" in query.cues and "q" in query.cues:
        return (Ask("aperture", against.of),)
    pops = query.last("count")
    if pops and pops.unit == "pops" and has("aperture") and not has("guide_number") and query.cues & {"what"}:
        return (Ask("aperture"),)
    if len(readings) > 1 or (readings and has("relation") and "both" in query.cues):
        return (Ask("aperture", "both"),)
    if has("push") and not has("film_speed") and not has("guide_number"):
        return (Ask("film_speed"),)
    if [u for u in query.units if not u.startswith("not")] and {f.quantity for f in query.facts} <= {"distance", "guide_number"} and len(query.facts) == 1 and not ("my_kit" in query.cues and not query.cues & {"what", "give"}):
        return (Ask(query.facts[0].quantity, "", query.units[-1]),)
    beside = query.last("camera_distance")
    if has("guide_number") and not has("aperture") and (has("distance") or beside is not None and beside.cue == "self"):
        return (Ask("aperture"),)
    if has("guide_number", "aperture"):
        return (Ask("power"),) if has("distance") and not has("power") else (Ask("film_speed"),) if has("distance") and not has("film_speed") else (Ask("distance"),) if not has("distance") else ()
    if query.cues >= {"what", "do_i"} and query.facts and not has("aperture") and {f.quantity for f in query.facts} <= {"modifier", "power", "count", "film_speed", "loss", "camera_filter"}:
        return (Ask("aperture"),)
    if len(query.all("distance")) >= 2 and len(query.all("aperture")) == 1:
        return (Ask("aperture"),)
    return (Ask("aperture"),) if has("distance") and not has("aperture") else ()


def _questioning(query: Query) -> bool:
    return bool(query.cues & {"what", "how_much", "do_i", "how_far", "how_low", "what_if", "q"}) or (query.has("guide_number", "aperture", "distance") and any(f.cue == "want" for f in query.facts))


_STAYING = frozenset({"both", "same_spot", "bounce", "ceiling", "path"})


def _in_that_light(query: Query) -> bool:
    """"my camera only syncs at 1/60, what aperture then?" after a question of full sun: a setting for the same sky."""
    kinds = {f.quantity for f in query.facts}
    return query.asks[0].quantity in ("aperture", "shutter", "film_speed") and bool(kinds) and kinds <= {"sync", "shutter", "aperture", "film_speed", "nd"}


def _same_kind(new: tuple[Ask, ...], old: tuple[Ask, ...]) -> bool:
    return bool(old) and new[0].quantity == old[0].quantity


def _has_distance(scene: Scene, query: Query) -> bool:
    return any(f.quantity == "distance" for f in scene.facts)


def implied_ask(query: Query) -> bool:
    """A guide number and a distance (of the flash, or of a person who holds it) with nothing asked: the aperture is meant."""
    beside = query.last("camera_distance")
    near = query.has("distance") or query.has("path") or beside is not None and beside.cue == "self"
    return near and query.has("guide_number") and not query.has("aperture")


_OPENS_TO = {"widest_aperture": "aperture"}


def supplied(claimed: Query, query: Query) -> Query:
    """A claim with what it lacked: the new facts stand before all its words, so that none of them is taken for what is claimed."""
    new = [replace(f, quantity=_OPENS_TO.get(f.quantity, f.quantity) if not claimed.has("aperture") else f.quantity, start=0, end=0, origin="kept") for f in query.facts]
    old = [replace(f, start=f.start or 1) for f in claimed.facts if not any(n.quantity == f.quantity and n.of == f.of for n in new)]
    return replace(claimed, facts=(*new, *old), claim=True, unplaced=())
