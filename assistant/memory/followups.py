"""Follow-ups: half-sentences that change the scene that stands.

"half that" · "a stop more light" · "not 105, 115" · "lose the fill" · "another at the same spot".
Each rule looks at the query and the scene and gives both back, changed. The rules run in
order; a rule that does not fit gives back what it got.
"""

from __future__ import annotations

import math
import re
from dataclasses import replace
from typing import Callable

from assistant.memory.conversation import Conversation, Scene
from assistant.query import Ask, Fact, Query
from assistant.units import LENGTH

Pair = tuple[Query, Scene]
Rule = Callable[[Query, Scene, Conversation], Pair]


def follow_up(query: Query, talk: Conversation) -> Pair:
    """The query and the scene with the changes that the query's words ask for."""
    pair = (query, talk.scene)
    if not talk.scene.facts and not talk.scene.asks and not talk.kit.facts:
        return pair
    for rule in RULES:
        pair = rule(pair[0], pair[1], talk)
    return pair


# --- corrections ------------------------------------------------------------------------------


def shown(fact: Fact) -> float:
    """A fact's number as the person would say it."""
    if fact.quantity in ("distance", "camera_distance", "focus_distance", "max_distance") and fact.unit in LENGTH:
        return fact.value / LENGTH[fact.unit]
    return fact.value


def _negated(query: Query) -> list[Fact]:
    """Values said after "not": the old ones."""
    out = []
    for fact in query.facts:
        before = query.text[max(0, fact.start - 14) : fact.start].lower()
        if re.search(r"\b(not|instead of|rather than)\s+(?:a |an |at |the |f/?|iso )?\s*$", before):
            out.append(fact)
    return out


def _corrected(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"115 feet, not 105": the value that was wrong tells which quantity is meant."""
    old = _negated(query)
    if not old:
        return query, scene
    new = [f for f in query.facts if f not in old]
    known = [*scene.facts, *talk.kit.facts]
    wrong = old[0]
    target = next((k for k in reversed(known) if math.isclose(shown(k), shown(wrong), rel_tol=1e-6) or math.isclose(k.value, wrong.value, rel_tol=1e-6)), None)
    if target and new and not any(f.quantity == target.quantity for f in new):
        new = [_recast(f, target) if n == 0 else f for n, f in enumerate(new)]
    elif target and new:
        new = [replace(f, of=target.of) if f.quantity == target.quantity and not f.of else f for f in new]
    return replace(query, facts=tuple(new), unplaced=()), scene


def correction(query: Query, talk: Conversation) -> Fact | None:
    """The fact of the kit as it is put right by this query, if it does that."""
    old = _negated(query)
    new = [f for f in query.facts if f not in old]
    if not old or not new or any(math.isclose(shown(k), shown(old[0]), rel_tol=1e-6) for k in talk.scene.facts):
        return None
    target = next((k for k in talk.kit.facts if math.isclose(shown(k), shown(old[0]), rel_tol=1e-6)), None)
    return _recast(new[0], target) if target else None


def last_put_right(query: Query, talk: Conversation) -> Fact | None:
    """"no sorry, it's 120", right after a fact of the kit was told: that fact."""
    if talk.scene.asks or not talk.kit.facts or "correction" not in query.cues or len(query.facts) != 1:
        return None
    new, last = query.facts[0], talk.kit.facts[-1]
    return _recast(new, last) if new.quantity in ("number", "distance", last.quantity) and not new.bad else None


def _recast(fact: Fact, target: Fact) -> Fact:
    """A value read as the quantity that it corrects."""
    number = shown(fact)
    unit = fact.unit if fact.unit in LENGTH else target.unit
    value = number * LENGTH[unit] if target.quantity in ("distance", "camera_distance", "max_distance") and unit in LENGTH else number
    if target.quantity in ("guide_number",):
        return replace(target, value=number, unit=unit or target.unit, said=fact.said, start=fact.start, end=fact.end, origin="said", bad=fact.bad)
    return replace(target, value=value, unit=unit or target.unit, said=fact.said, start=fact.start, end=fact.end, origin="said", bad=fact.bad)


def _units(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"not metres, feet": the guide number or the distances were in the other unit."""
    text = query.text.lower()
    found = re.search(r"\bnot\s+(?:in\s+)?(feet|ft|foot|metres|meters|m|metric)\b", text)
    spoken = re.search(r"(?:^|\b(?:no|sorry|actually|i mean|i meant|that'?s|it'?s|was|were|oops)[,\s]+(?:in\s+|it'?s\s+(?:in\s+)?)?)(feet|ft|foot|metres|meters|metric)\b", text)
    if query.facts or not (found or spoken):
        return query, scene
    if found:
        wrong = "ft" if found.group(1)[0] == "f" else "m"
        right = "m" if wrong == "ft" else "ft"
    elif re.search(r"\bin\s+(feet|ft|metres|meters|m)\b", text) and not re.search(r"\b(no|sorry|actually|meant?|oops)\b", text):
        return query, scene
    else:
        assert spoken is not None
        right = "ft" if spoken.group(1)[0] == "f" else "m"
        wrong = "m" if right == "ft" else "ft"
    guides = [f for f in scene.facts if f.quantity == "guide_number"]
    taken = [f for f in guides if not f.unit] or ([f for f in guides if f.unit == wrong] if not any(f.quantity == "distance" and f.unit == wrong for f in scene.facts) else [])
    if taken and "distance" not in text:
        facts = tuple(replace(f, unit=right) if f in taken else f for f in scene.facts)
    else:
        facts = tuple(replace(f, unit=right, value=f.value / LENGTH[wrong] * LENGTH[right]) if f.quantity == "distance" and f.unit == wrong else
                      replace(f, unit=right) if f.quantity == "guide_number" and f.unit == wrong and f in guides and not f.unit else f for f in scene.facts)
    return replace(query, units=()), replace(scene, facts=facts)


# --- relative changes ----------------------------------------------------------------------------


def _more_or_less(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"a stop more light", "turn it up a stop", "half that": a step from where things stand."""
    if not scene.asks:
        return query, scene
    step = next((f for f in query.facts if f.quantity in ("stops", "power_down") and not f.of), None)
    if step is None or query.asks_for("stops", "power", "aperture", "factor"):
        return query, scene
    sign = _sign(step, query)
    if not sign:
        return query, scene
    stops = sign * abs(step.value)
    facts = tuple(f for f in query.facts if f is not step)
    asked = scene.asks[0].quantity
    if _turns_power(query, asked):
        return replace(query, facts=facts), _power_by(scene, talk, stops)
    if asked == "aperture" and query.cues & {"open_up", "close_down"} and scene.answered:
        return replace(query, facts=facts), _offset(scene, stops)
    return replace(query, facts=facts), _offset(scene, stops)


def _sign(step: Fact, query: Query) -> int:
    """Which way a step goes; the last direction word said decides ("too much, back down half a stop")."""
    if step.quantity == "power_down":
        return -1
    ways = {"more": 1, "up": 1, "open_up": 1, "less": -1, "down": -1, "close_down": -1}
    words = [i.word for i in query.items if getattr(i, "kind", "") == "cue" and getattr(i, "word", "") in ways]  # type: ignore[attr-defined]
    near = step.cue or (words[-1] if words else "") or _spoken_way(query.text)
    return {"more": 1, "less": -1}.get(near, ways.get(near, 0))


_WAYS = re.compile(r"\b(more|up|brighter|hotter|over|open|raise|boost|increase|add)\b|\b(less|down|darker|dimmer|under|back off|drop|lower|reduce|cut)\b")


def _spoken_way(text: str) -> str:
    """The last direction word, whatever phrase it stood in."""
    found = _WAYS.findall(text.lower())
    return "" if not found else "more" if found[-1][0] else "less"


def _turns_power(query: Query, asked: str) -> bool:
    text = query.text.lower()
    if asked == "power":
        return False
    return "power" in text or bool(re.search(r"\b(turn|dial|crank|knock|bump|wind|bring|pull)\b.*\b(up|down|back)\b", text)) or "it down" in text or "it up" in text


def _power_by(scene: Scene, talk: Conversation, stops: float) -> Scene:
    now = next((f for f in reversed(scene.facts) if f.quantity in ("power", "power_down")), None)
    value = 1.0 if now is None else (now.value if now.quantity == "power" else 2.0**-now.value)
    changed = Fact("power", value * 2.0**stops, "", now.of if now else "", said="the changed power",
                   bad="" if value * 2.0**stops <= 1.0001 else "a flash cannot give more than full power")
    return replace(scene, facts=tuple(f for f in scene.facts if f is not now) + (changed,))


def _offset(scene: Scene, stops: float) -> Scene:
    old = next((f for f in scene.facts if f.quantity == "offset"), None)
    total = stops + (old.value if old else 0.0)
    return replace(scene, facts=tuple(f for f in scene.facts if f is not old) + (Fact("offset", total, "stops", said=f"{total:+g} stops"),))


_HALVES = re.compile(r"\b(half|twice|double|quarter|a third)\s+(?:of\s+)?(?:that|it|the distance|the power|as far|as much)\b|\b(halve|double)\s+(?:that|it|the (?:distance|power))")


def halves(query: Query) -> bool:
    """"half that", "double it again"."""
    return _HALVES.search(query.text.lower()) is not None


def _half_that(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"half that", "double it": the answer's or the latest value, halved or doubled."""
    text = query.text.lower()
    found = _HALVES.search(text)
    if not found or not scene.facts:
        return query, scene
    word = next(g for g in found.groups() if g)
    factor = {"half": 0.5, "halve": 0.5, "twice": 2.0, "double": 2.0, "quarter": 0.25, "a third": 1 / 3}[word]
    quantity = "distance" if "distance" in text or "as far" in text else "power" if "power" in text or "as much" in text else ""
    target = next((f for f in reversed(scene.facts) if (f.quantity == quantity if quantity else f.quantity in ("power", "distance"))), None)
    if target is None and quantity in ("", "power"):
        target = Fact("power", 1.0)
    if target is None:
        return query, scene
    new = replace(target, value=target.value * factor, said=found.group(), origin="said", bad="" if target.quantity != "power" or target.value * factor <= 1 else "a flash cannot give more than full power")
    facts = tuple(f for f in query.facts if f.quantity not in ("power", "share", "count", "times"))
    asks = tuple(a for a in query.asks if a.quantity != target.quantity) or scene.asks
    return replace(query, facts=facts + (new,), asks=asks, unplaced=()), replace(scene, facts=tuple(f for f in scene.facts if f is not target))


def _another_length(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and another metre": the same way as the move before."""
    last = next((f for f in reversed(scene.facts) if f.quantity == "last_move"), None)
    facts = []
    for fact in query.facts:
        if fact.quantity == "move" and fact.cue == "again" and last is not None:
            fact = replace(fact, value=math.copysign(fact.value, last.value), cue="")
        facts.append(fact)
    moves = [f for f in facts if f.quantity == "move"]
    if moves:
        kept = tuple(f for f in scene.facts if f.quantity != "last_move")
        scene = replace(scene, facts=kept + (Fact("last_move", moves[-1].value, said="the last move"),))
    return replace(query, facts=tuple(facts)), scene


# --- lights and what they wear -----------------------------------------------------------------------


def _drops(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"lose the fill", "without the hair light", "Duke alone", "take the softbox off", "forget the push"."""
    text = query.text.lower()
    mentioned = [m for m in query.mentioned]
    lights = {f.of for f in scene.facts if f.of}
    leaving = re.search(r"\b(lose|forget|drop|without|remove|kill|take (?:off|away|out|down)|turn off|switch off|no more|ditch|scrap|off|minus|lost|no|get rid of)\b", text)
    facts = scene.facts
    if leaving and mentioned and not any(f.of in mentioned for f in query.facts):
        facts = tuple(f for f in facts if f.of not in mentioned)
        left = tuple(m for m in scene.mentioned if m not in mentioned)
        return replace(query, mentioned=tuple(m for m in query.mentioned if m not in mentioned)), replace(scene, facts=facts, mentioned=left)
    if "one_light" in query.cues and mentioned and not query.facts:
        facts = tuple(f for f in facts if not f.of or f.of in mentioned or f.of not in lights)
        return query, replace(scene, facts=facts, asks=tuple(replace(a, of="") for a in scene.asks), mentioned=())
    if leaving and ("push" in text or "pull" in text) and not any(f.quantity == "push" for f in query.facts):
        return query, replace(scene, facts=tuple(f for f in facts if f.quantity not in ("push",)))
    return _unworn(query, scene, bool(leaving), text)


def _unworn(query: Query, scene: Scene, leaving: bool, text: str) -> Pair:
    worn = [f for f in query.facts if f.quantity in ("modifier", "camera_filter")]
    bare = "bare" in query.cues or "not" in query.cues
    if (leaving or bare) and (worn or "bare" in query.cues or re.search(r"\bwithout (?:it|that|one)\b", text) or re.search(r"\b(it|that|the modifier|the box)\b.*\boff\b|\boff\b", text)):
        kinds = {f.unit for f in worn}
        gone = [f for f in scene.facts if f.quantity in ("modifier", "loss", "camera_filter", "filter_loss", "nd") and (not kinds or f.unit in kinds or not f.unit)]
        if gone:
            facts = tuple(f for f in query.facts if f not in worn)
            return replace(query, facts=facts), replace(scene, facts=tuple(f for f in scene.facts if f not in gone))
    return query, scene


def _measured_loss(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"it only eats a stop and a half": of the modifier that is on."""
    losses = [f for f in query.facts if f.quantity == "loss"]
    worn = [f for f in scene.facts if f.quantity == "modifier"]
    if losses and worn and not losses[0].unit:
        named = replace(losses[0], unit=worn[-1].unit, of=worn[-1].of)
        facts = tuple(named if f is losses[0] else f for f in query.facts if f.quantity != "modifier")
        old = tuple(f for f in scene.facts if not (f.quantity == "loss" and f.unit == named.unit))
        return replace(query, facts=facts), replace(scene, facts=old)
    if losses and any(f.quantity == "loss" and f.unit == losses[0].unit for f in scene.facts):
        return query, replace(scene, facts=tuple(f for f in scene.facts if not (f.quantity == "loss" and f.unit == losses[0].unit)))
    return query, scene


def _swaps(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"swap Green for Amber": the second takes the first one's place."""
    names = [m for m in query.mentioned if m in talk.kit.names or m in talk.kit.flashes()]
    if len(names) == 2 and re.search(r"\b(swap|switch|replace|trade|change)\b|\binstead of\b", query.text.lower()):
        old, new = names if names[0] in scene.mentioned or any(f.of == names[0] for f in scene.facts) else names[::-1]
        facts = tuple(replace(f, of=new) if f.of == old else f for f in scene.facts)
        lights = tuple(new if m == old else m for m in scene.mentioned if m != new)
        return replace(query, mentioned=()), replace(scene, facts=facts, mentioned=lights)
    if len(names) == 1 and not query.facts and (query.cues & {"now", "what_if"} or re.match(r"\W*(and|now|then)\b", query.text.lower()) or "instead" in query.text.lower()):
        known = {f.of for f in scene.facts if f.of in talk.kit.names or (f.of and f.of in talk.kit.flashes())}
        if len(known) == 1:
            old = known.pop()
            lights = tuple(m for m in scene.mentioned if m != old)
            return query, replace(scene, facts=tuple(replace(f, of=names[0]) if f.of == old else f for f in scene.facts), mentioned=lights)
    return query, scene


def _another(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"add another at the same spot", "and a third": one more of the same, in the same place."""
    text = query.text.lower()
    wanted = query.cues & {"add_light", "another_length"} or re.search(r"\band a (third|fourth|fifth|sixth)\b", text)
    if not wanted or query.has("guide_number") or any(f.quantity == "move" for f in query.facts) or not scene.asks:
        return query, scene
    lights = {f.of for f in scene.facts if f.of and f.quantity in ("guide_number", "distance")}
    if lights or query.has("distance"):
        return query, scene
    now = next((f for f in scene.facts if f.quantity == "count"), None)
    many = (now.value if now else 1.0) + 1
    ordinal = re.search(r"\ba (third|fourth|fifth|sixth)\b", text)
    if ordinal:
        many = {"third": 3.0, "fourth": 4.0, "fifth": 5.0, "sixth": 6.0}[ordinal.group(1)]
    facts = tuple(f for f in scene.facts if f is not now) + (Fact("count", many, "flashes", said=f"{many:g} flashes"),)
    return replace(query, facts=tuple(f for f in query.facts if f.quantity not in ("number", "count", "share")), unplaced=()), replace(scene, facts=facts)


def _keeps_answer(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"keep that power": the power that was answered is set from now on."""
    if "keep" not in query.cues:
        return query, scene
    held = [f for f in scene.answered if f"name_{f.quantity}" in query.cues and not query.has(f.quantity)]
    if not held:
        return query, scene
    kept = tuple(f for f in scene.facts if f.quantity not in {h.quantity for h in held})
    return query, replace(scene, facts=kept + tuple(replace(h, said=f"the {h.quantity}") for h in held))


def _one_pop(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"one pop gives f/8", told after being asked: the reference, beside the aperture wanted."""
    wanted = [f for f in scene.facts if f.quantity == "aperture"]
    told = [f for f in query.facts if f.quantity == "aperture"]
    if not talk.missing or len(wanted) != 1 or len(told) != 1 or query.asks or not scene.asks or scene.asks[0].quantity not in ("count", "power"):
        return query, scene
    if not query.has("count") and not told[0].cue and "power" not in query.text.lower():
        return query, scene
    return replace(query, facts=(*(f for f in query.facts if f is not told[0]), told[0], replace(wanted[0], origin="kept"))), replace(scene, facts=tuple(f for f in scene.facts if f is not wanted[0]))


def _rows_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"what if they were 6 and 9 m?": the front row and the back row."""
    pair = next((f for f in query.facts if f.quantity == "length_range"), None)
    rows = [f.of for f in scene.facts if f.quantity == "distance" and f.of in ("front", "back")]
    if pair is None or sorted(set(rows)) != ["back", "front"]:
        return query, scene
    near = replace(pair, quantity="distance", of="front", other=math.nan)
    far = replace(pair, quantity="distance", of="back", value=pair.other, other=math.nan)
    return replace(query, facts=tuple(f for f in query.facts if f is not pair) + (near, far)), scene


def _just_one(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, just the one": one flash instead of several."""
    if query.facts or not re.search(r"\b(just|only)\s+(the\s+)?one\b", query.text.lower()):
        return query, scene
    return replace(query, mentioned=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "count"))


def _all_of_them(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"all three there", "both": every named flash of the kit, where the others are."""
    if "both" not in query.cues or query.mentioned or not talk.kit.names or query.has("guide_number"):
        return query, scene
    if len(talk.kit.names) < 2:
        return query, scene
    return replace(query, mentioned=tuple(talk.kit.names)), scene


def _other_light(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and the other one?": the other light of two."""
    asked = (scene.asks[0].of or (scene.mentioned[0] if len(scene.mentioned) == 1 else "")) if scene.asks else ""
    if not talk.missing and query.mentioned and query.facts and not query.asks and asked and asked in scene.mentioned and len(query.mentioned) == 1 and query.mentioned[0] != asked \
            and not query.cues & {"both", "combined", "add_light", "same_light"} and all(f.of == query.mentioned[0] for f in query.facts):
        return replace(query, asks=(replace(scene.asks[0], of=query.mentioned[0]),)), scene
    if not query.mentioned or query.facts or query.asks or not scene.asks:
        return query, scene
    lights = list(dict.fromkeys(f.of for f in scene.facts if f.of and f.quantity in ("guide_number", "distance", "power", "aperture")))
    if "b" in query.mentioned and len(lights) == 2 and "b" not in lights:
        other = next((l for l in lights if l != scene.asks[0].of), lights[-1])
        return replace(query, mentioned=(other,), asks=(replace(scene.asks[0], of=other),)), scene
    name = query.mentioned[0]
    if name in lights and re.match(r"\W*(and|what about|how about|now)\b", query.text.lower()):
        return replace(query, asks=(replace(scene.asks[0], of=name),)), scene
    return query, scene


# --- numbers left bare ---------------------------------------------------------------------------------


def _bare_numbers(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"pushed two", "make it 8", "and 400?": a number that can only be one thing here."""
    numbers = [f for f in query.facts if f.quantity in ("number", "signed") and not f.bad]
    if len(query.unknown) > 1 or len(numbers) != 1 or talk.missing or not (scene.asks or scene.facts):
        return query, scene
    number = numbers[0]
    meant = _meant(number, query, scene)
    if meant is None:
        return query, scene
    return replace(query, facts=tuple(meant if f is number else f for f in query.facts), unplaced=()), scene


def _wide_open(query: Query, scene: Scene, talk: Conversation) -> Pair:
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


def _only_so_many(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"I only have two": a limit of how many, when how many was asked."""
    if not scene.asks or scene.asks[0].quantity != "count" or not query.cues & {"at_most", "my_kit"}:
        return query, scene
    numbers = [f for f in query.facts if f.quantity in ("number", "count")]
    if len(numbers) != 1 or query.asks:
        return query, scene
    limit = replace(numbers[0], quantity="max_count", of="")
    return replace(query, facts=tuple(limit if f is numbers[0] else f for f in query.facts), unplaced=()), scene


def _meant(number: Fact, query: Query, scene: Scene) -> Fact | None:
    if query.cues & {"push", "pull"}:
        if number.value <= 5:
            return replace(number, quantity="push", value=number.value * (1 if "push" in query.cues else -1), of="film")
        return replace(number, quantity="rated", of="film")
    from assistant.scales import is_aperture_mark, is_film_speed_mark

    asked = scene.asks[0].quantity if scene.asks else ""
    if query.cues & {"move", "closer", "further"} and any(f.quantity == "distance" for f in scene.facts):
        last = next(f for f in reversed(scene.facts) if f.quantity == "distance")
        unit = last.unit if last.unit in LENGTH else "ft"
        return replace(number, quantity="distance", value=number.value * LENGTH[unit], unit=unit, of=last.of)
    pair = number.other if not math.isnan(number.other) else number.value
    if re.search(r"\b(?:from|at)\s+$", query.text[: number.start].lower()) and any(f.quantity == "distance" for f in scene.facts) and asked != "distance":
        last = next(f for f in reversed(scene.facts) if f.quantity == "distance")
        unit = last.unit if last.unit in LENGTH else "ft"
        return replace(number, quantity="distance", value=number.value * LENGTH[unit], unit=unit, of=last.of)
    distances = [f for f in scene.facts if f.quantity == "distance"]
    apertures = [f for f in scene.facts if f.quantity == "aperture"]
    if number.value >= 25 and is_film_speed_mark(number.value) and asked != "film_speed":
        return replace(number, quantity="film_speed", of="")
    if apertures and not distances and is_aperture_mark(pair):
        return replace(number, quantity="aperture", value=pair, of=apertures[-1].of)
    if distances and not apertures:
        unit = distances[-1].unit if distances[-1].unit in LENGTH else "ft"
        return replace(number, quantity="distance", value=number.value * LENGTH[unit], unit=unit, of=distances[-1].of)
    return None


def _film_pushes(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """A push said anew replaces the one before, counted from box speed."""
    if any(f.quantity in ("push", "rated") for f in query.facts):
        scene = replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in ("push", "rated")))
    return query, scene


def _ratio_convention(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"as key to fill then": the same ratio counted the other way."""
    text = query.text.lower().replace("-", " ")
    if scene.asks and scene.asks[0].quantity == "ratio" and "key to fill" in text:
        return replace(query, asks=scene.asks, unplaced=(), unknown=()), replace(scene, cues=scene.cues | {"key_to_fill"})
    return query, scene


def _role_value(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and if the fill drops to f/2.8": a reading of the light that is named."""
    lights = {f.of for f in scene.facts if f.of and f.quantity == "aperture"}
    named = [m for m in query.mentioned if m in lights]
    if len(named) == 1:
        facts = tuple(replace(f, of=named[0]) if f.quantity == "aperture" and not f.of else f for f in query.facts)
        return replace(query, facts=facts), scene
    return query, scene


def _relation_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"one stop under instead", "make that two stops under": the relation that stands, changed."""
    old = next((f for f in reversed(scene.facts) if f.quantity in ("relation", "stops")), None)
    steps = [f for f in query.facts if f.quantity in ("stops", "relation") and not f.to]
    if old is None or not steps or query.asks or not (old.quantity == "relation" or old.cue):
        return query, scene
    step = steps[0]
    new = replace(old, value=step.value, cue=step.cue or old.cue, said=step.said, start=step.start, end=step.end, origin="said")
    return replace(query, facts=tuple(new if f is step else f for f in query.facts)), scene


RULES: tuple[Rule, ...] = (
    _corrected, _units, _ratio_convention, _swaps, _drops, _measured_loss, _another_length, _half_that, _relation_again, _more_or_less,
    _another, _keeps_answer, _one_pop, _rows_again, _just_one, _all_of_them, _other_light, _role_value, _film_pushes, _wide_open, _only_so_many, _bare_numbers,
)
