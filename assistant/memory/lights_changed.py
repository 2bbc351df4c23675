"""Lights put on, taken off, swapped: "lose the fill", "softbox off", "add another", "and the other one?"."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.language.number_words import STOPS_SPOKEN
from assistant.language.stop_words import LOSING
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.nth import nth_told, without_it
from assistant.memory.rules import Pair
from assistant.memory.taken_away import nothing_on
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Fact, Query
from assistant.records import replace

_BOUNCED = frozenset({"bounce", "ceiling", "wall", "path"})


_TAKEN_OFF = Pattern(r"(?<!-)\b(?<!back )(?<!her )(?<!him )(?<!them )(?<!camera )(?<!metres )(?<!meters )(?<!metre )(?<!meter )(?<!feet )(?<!foot )(?<!inches )(?<!yards )(?<!paces )(?<!steps )(?<!\dm )(?<!\dft )(?<!\d m )(?<!\d ft )(?<!\d cm )off\b(?!\W*(?:to|by|the|a|an|camera|axis|of|from|centre|center|\d)\b|[- ](?:camera|axis))|\b(?:take|comes?|came|pull|whip|with) (?:it|that|this|the \w+|\w+) off\b(?! (?:to|by)\b)", re.I)
"""Something comes off: "softbox off", "take it off", and not "back her off to 4 m", "off the ceiling" or "3 metres off", which is how far."""


_ASKED_FOR = frozenset({"aperture", "guide_number", "distance", "power", "shutter"})
_ONLY = Pattern(r"\b(?:only|just) (?:with )?(?:the|my|that)\b")


def drops(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"lose the fill", "without the hair light", "Duke alone", "take the softbox off", "forget the push"."""
    text = query.text.lower()
    mentioned = [m for m in query.mentioned]
    lights = {f.of for f in scene.facts if f.of}
    leaving = patterns.search(r"\b(lose|forget|drop|without|remove|kill|(?:take|taken|taking|took) (?:off|away|out|down)|(?:take|took|taking|pull|pulled|pulling|whip|whipped|peel|peeled|strip|stripped|slip|slipped)(?: \w+){1,4} (?:away|out)|removed|turn off|switch off|(?:leave|leaving|left) (?:off|out)|skip|no more|ditch|scrap|minus|lost|no(?= \w)|nor|neither|get rid of)\b|(?:'s|\bis|\bare|\bwas|\bhas|\bhave)(?: now| all| already)? gone\b", text) or _TAKEN_OFF.search(text)
    if talk.missing and not leaving and query.cues & {"bare", "BARE"} and any(f.quantity in _ASKED_FOR for f in query.facts):
        return query, scene  # "bare it was f/16", after what it was is asked for: how the value was found, and nothing comes off
    facts = scene.facts
    alone = [f for f in query.facts if f.quantity == "modifier"]
    if len(alone) == len(query.facts) == 1 and _ONLY.search(text) and any(f.quantity == "loss" and f.unit == alone[0].unit for f in facts):
        kept = tuple(f for f in facts if f.quantity not in ("modifier", "loss", "filter_loss", "camera_filter") or f.unit == alone[0].unit)
        return replace(query, facts=()), replace(scene, facts=kept)  # "with only the gel": as strong as it was told to be
    if leaving and mentioned and not any(f.of in mentioned for f in query.facts):
        facts = tuple(f for f in facts if f.of not in mentioned)
        left = tuple(m for m in scene.mentioned if m not in mentioned)
        return replace(query, mentioned=tuple(m for m in query.mentioned if m not in mentioned)), replace(scene, facts=facts, mentioned=left)
    if "one_light" in query.cues and mentioned and not query.facts:
        facts = tuple(f for f in facts if not f.of or f.of in mentioned or f.of not in lights)
        return query, replace(scene, facts=facts, asks=tuple(replace(a, of="") for a in scene.asks), mentioned=())
    if patterns.search(r"\b(?:direct|straight at|no bounce|not bounced|without (?:the )?bounc\w+|unbounced)\b", text) and scene.cues & _BOUNCED:
        kept = tuple(f for f in facts if f.quantity != "path" and not (f.quantity == "loss" and f.unit in ("ceiling", "wall")))
        return replace(query, cues=query.cues - _BOUNCED), replace(scene, facts=kept, cues=scene.cues - _BOUNCED)
    if (leaving or "not" in query.cues) and ("push" in text or "pull" in text) and not any(f.quantity in ("push", "stops", "modifier", "camera_filter") for f in query.facts):
        return query, replace(scene, facts=tuple(f for f in facts if f.quantity not in ("push",)))
    return _unworn(query, scene, bool(leaving), text)


_STAYS_AFTER, _STAYS_BEFORE = Pattern(r"\s*(?:only|alone|stays|still|by itself|on its own)\b", re.I), Pattern(r"\b(?:only|just|keep|leave|still|but)(?: (?:with|the|my|a|an))*\s*$", re.I)


_ALL_OF_IT = Pattern(r"\b(?:either|neither|both|everything|the lot|all of (?:it|them)|any of (?:it|them)|anything)\b")
_A_BOX = Pattern(r"\b(?:box|octa)\b(?! speed)")
_BOX_STAYS = Pattern(r"\b(?:box|octa) (?:only|alone|stays|still|remains|on|kept)\b|\b(?:only|just|keep|keeping|leave|still|but)(?: (?:with|the|my|a|an))* (?:soft)?(?:box|octa)\b")
_PUT_ON = Pattern(r"\b(?:with|but|instead|through|use|using)\b")


def _named_again(query: Query, scene: Scene, text: str) -> set[str]:
    """The kinds of what is on that are named here, though a negation took them out of the facts: "no polariser", "without the box"."""
    on = {f.unit for f in scene.facts if f.quantity in ("modifier", "loss", "camera_filter", "filter_loss") and f.unit}
    return on & (set(query.cues) | ({"softbox"} if _A_BOX.search(text) and not _BOX_STAYS.search(text) else set()) | ({"nd"} if "nd" in text.split() else set()))


_GOES_AFTER = Pattern(r"\s*(?:(?:is|was|being|now|gets|comes|has been) )*(?:(?:taken|pulled|stripped|peeled|whipped) )?(?:off|away|down|removed|gone)\b", re.I)
"""After the thing that is taken away: "and with the box off?"."""


def _unworn(query: Query, scene: Scene, leaving: bool, text: str) -> Pair:
    worn = [f for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    stays = [f for f in worn if _STAYS_AFTER.match(query.text[f.end :]) or _STAYS_BEFORE.search(query.text[: f.start])]
    if stays and len(stays) < len(worn):  # "no gel, softbox only"
        query, worn = replace(query, facts=tuple(f for f in query.facts if f not in stays)), [f for f in worn if f not in stays]
    bare = bool(query.cues & {"bare", "BARE", "not"})
    named = _named_again(query, scene, text) - {f.unit for f in stays}
    if (leaving or bare) and (worn or named or _ALL_OF_IT.search(text) or query.cues & {"bare", "BARE"} or patterns.search(r"\bwithout (?:it|that|one)\b", text) or _TAKEN_OFF.search(text)):
        kinds = {f.unit for f in worn} | named | ({"umbrella", "shoot_through"} if any(f.unit in ("umbrella", "shoot_through") for f in worn) else set())
        gone = [f for f in scene.facts if f.quantity in ("modifier", "loss", "camera_filter", "filter_loss", "nd") and (not kinds or f.unit in kinds or not f.unit) or f.quantity == "factor" and (not kinds or "filter" in kinds)]
        if gone:
            put_on = _PUT_ON.search(text) is not None and {f.unit for f in worn if not _GOES_AFTER.match(query.text, f.end)} - {f.unit for f in gone}
            facts = tuple(f for f in query.facts if f not in worn or put_on and f.unit in put_on)
            facts = facts or (nothing_on(query),)
            return replace(query, facts=facts, cues=query.cues - _OF_OTHER_MOVES), replace(scene, facts=tuple(f for f in scene.facts if f not in gone))
        if worn and leaving and scene.asks:  # it was not on: nothing is put on instead
            return replace(query, facts=tuple(f for f in query.facts if f not in worn), cues=query.cues - {f.unit for f in worn}), scene
    return query, scene


_OF_OTHER_MOVES = frozenset({"pull", "push", "further", "closer", "move"})
"""What "pulled the baffle out" says of no film and no light."""
_LOSES_ONE = Pattern(rf"\b{LOSING}(?: only| just| me)* (one|two|three|half|a half|one and a half)\W*$", re.I)
_IT_IS = Pattern(r"^\W*(?:no,? |well,? |but |oh,? )*(?:i(?:'d)? (?:make|call|say|reckon)(?: (?:it|that)(?:'s)?)?|call it|it'?s|its|it is|that'?s|thats|mine(?:'s| is)?|this one'?s?|only)\b(?! (?:too|over|under))", re.I)


def measured_loss(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"it only eats a stop and a half", "it's only a stop": of the modifier that is on."""
    if len(query.facts) == 1 and query.facts[0].quantity == "stops" and not query.facts[0].cue and not query.asks and _IT_IS.match(query.text) and any(f.quantity == "modifier" for f in scene.facts):
        query = replace(query, facts=(replace(query.facts[0], quantity="loss", unit=""),))
    losses = [f for f in query.facts if f.quantity == "loss"]
    spoken = _LOSES_ONE.search(query.text) if not losses and not query.asks and not query.has("stops") else None
    if spoken and any(f.quantity == "loss" for f in scene.facts):
        old_loss = next(f for f in reversed(scene.facts) if f.quantity == "loss")
        losses = [replace(old_loss, value=STOPS_SPOKEN[spoken[1].lower()], start=spoken.start(), end=spoken.end(), said=spoken.group(), origin="said")]
        query = replace(query, facts=(*query.facts, losses[0]))
    worn = [f for f in scene.facts if f.quantity == "modifier"]
    if losses and worn and not losses[0].unit:
        named = replace(losses[0], unit=worn[-1].unit, of=worn[-1].of)
        facts = tuple(named if f is losses[0] else f for f in query.facts if f.quantity != "modifier")
        old = tuple(f for f in scene.facts if not (f.quantity == "loss" and f.unit == named.unit))
        return replace(query, facts=facts), replace(scene, facts=old)
    if losses and any(f.quantity == "loss" and f.unit == losses[0].unit for f in scene.facts):
        return query, replace(scene, facts=tuple(f for f in scene.facts if not (f.quantity == "loss" and f.unit == losses[0].unit)))
    return query, scene


_SWAPPED = Pattern(r"\b(?P<for>(?:swap|switch|change|trade|exchange|replace)\w*)\b|\b(?:instead of|rather than|in place of)\b", re.I)


def swaps(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"swap Green for Amber": the second takes the first one's place."""
    worn = [f for f in query.facts if f.quantity == "modifier"]
    if len(worn) == 2 and patterns.search(r"\b(swap|switch|replace|trade|change|exchange)\w*\b|\binstead of\b", query.text.lower()) and any(f.quantity in ("modifier", "loss") for f in scene.facts):
        off = worn[1] if patterns.search(r"\binstead of\b|\bput \w+ \w+ in\b", query.text.lower()) else worn[0]
        kept = tuple(f for f in scene.facts if not (f.quantity in ("modifier", "loss") and f.unit in (off.unit, "", "shoot_through" if off.unit == "umbrella" else off.unit)))
        return replace(query, facts=tuple(f for f in query.facts if f is not off), cues=query.cues - {off.unit}), replace(scene, facts=kept, cues=scene.cues - {off.unit})
    taking = [f for f in query.facts if f.quantity in TAKES_LIGHT]
    on = {f.unit for f in scene.facts if f.quantity in ("modifier", "loss")}
    if len(worn) == 1 and len(on) == 1 and not taking and worn[0].unit not in on and "instead" in query.text.lower():
        return query, replace(scene, facts=tuple(f for f in scene.facts if f.quantity not in ("modifier", "loss")), cues=scene.cues - on)
    if len(taking) == 2 and (which := _SWAPPED.search(query.text)) is not None:
        gone, put = taking if which["for"] else taking[::-1]
        held = [f for f in scene.facts if f.quantity == gone.quantity and math.isclose(f.value, gone.value, abs_tol=0.02)]
        if len(held) == 1:
            return replace(query, facts=tuple(f for f in query.facts if f not in taking)), replace(scene, facts=tuple(replace(put, origin="said") if f is held[0] else f for f in scene.facts))
    names = [m for m in query.mentioned if m in talk.kit.names or m in talk.kit.flashes()]
    if len(names) == 2 and patterns.search(r"\b(swap|switch|replace|trade|change)\b|\binstead of\b", query.text.lower()):
        old, new = names if names[0] in scene.mentioned or any(f.of == names[0] for f in scene.facts) else names[::-1]
        facts = tuple(replace(f, of=new) if f.of == old else f for f in scene.facts)
        lights = tuple(new if m == old else m for m in scene.mentioned if m != new)
        return replace(query, mentioned=()), replace(scene, facts=facts, mentioned=lights)
    if len(names) == 1 and not query.facts and (query.cues & {"now", "what_if"} or patterns.match(r"\W*(and|now|then)\b", query.text.lower()) or "instead" in query.text.lower()):
        known = {f.of for f in scene.facts if f.of in talk.kit.names or (f.of and f.of in talk.kit.flashes())}
        if len(known) == 1:
            old = known.pop()
            lights = tuple(m for m in scene.mentioned if m != old)
            return query, replace(scene, facts=tuple(replace(f, of=names[0]) if f.of == old else f for f in scene.facts), mentioned=lights)
    return query, scene


def another(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"add another at the same spot", "and a third": one more of the same, in the same place."""
    text = query.text.lower()
    now = next((f for f in scene.facts if f.quantity == "count"), None)
    nth = nth_told(query.text, now.value if now else 1.0)
    wanted = query.cues & {"add_light", "another_length"} or nth is not None or patterns.search(r"\band a third\b", text)
    if not wanted or any(m not in ("a", "b", "c") for m in query.mentioned) or query.has("guide_number") or query.has("rows") or any(f.quantity == "move" for f in query.facts) or not scene.asks:
        return query, scene
    lights = {f.of for f in scene.facts if f.of and f.quantity in ("guide_number", "distance")}
    lit = any(f.quantity in ("guide_number", "aperture", "distance", "power", "energy", "count") for f in (*scene.facts, *talk.kit.facts))
    query = query.with_facts(without_it(query.facts, query.text)) if nth is not None else query
    if not lit or lights or query.has("distance") or "same_spot" not in query.cues and any(query.has(taken) for taken in TAKES_LIGHT):  # "and a grid, another stop" adds a loss, and no flash
        return query, scene
    many = float(nth) if nth is not None else 3.0 if patterns.search(r"\ba third\b", text) else (now.value if now else 1.0) + 1
    unit = now.unit if now and now.unit == "pops" else "flashes"
    facts = tuple(f for f in scene.facts if f is not now) + (Fact("count", many, unit, said=f"{many:g} {unit}"),)
    return replace(query, facts=tuple(f for f in query.facts if f.quantity not in ("number", "count", "share")), unplaced=()), replace(scene, facts=facts)


_AT_THAT = Pattern(r"\b(?:at|with|for|on|to) (?:that|this|the same) (?:aperture|f-?stop|stop|f-?number|power|distance|film speed)\b", re.I)


def keeps_answer(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"keep that power": the power that was answered is set from now on."""
    if "keep" not in query.cues and not _AT_THAT.search(query.text):
        return query, scene
    held = [f for f in scene.answered if f"name_{f.quantity}" in query.cues and not query.has(f.quantity)]
    if not held:
        return query, scene
    kept = tuple(f for f in scene.facts if f.quantity not in {h.quantity for h in held})
    return query, replace(scene, facts=kept + tuple(replace(h, said=f"the {h.quantity}") for h in held))


_ONE_GIVES = Pattern(r"\b(?:one|a single|a|each)(?: pop| flash| one)? (?:is|was|gives?|gave|reads?|makes?|does)\b", re.I)


def one_pop(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"one pop gives f/8", told after being asked: the reference, beside the aperture wanted."""
    wanted = [f for f in scene.facts if f.quantity == "aperture"]
    told = [f for f in query.facts if f.quantity == "aperture"]
    if len(told) == 1 and not talk.missing and not query.asks and scene.asks and scene.asks[0].quantity == "aperture" and any(f.quantity == "count" and f.value > 1 for f in scene.facts):
        return query.with_facts(f for f in query.facts if f.quantity != "count" or f.value != 1), scene  # as many of them as before, whatever one gives
    if talk.missing == ("aperture",) and len(wanted) == 1 and len(told) == 1 and not query.asks and scene.asks and scene.asks[0].quantity == "count" \
            and any(f.quantity == "count" and f.value == 1 for f in scene.facts):
        return replace(query, facts=(replace(wanted[0], origin="kept"), *query.facts)), replace(scene, facts=tuple(f for f in scene.facts if f is not wanted[0]))
    if not talk.missing and len(wanted) == 2 and len(told) == 1 and scene.asks and scene.asks[0].quantity == "count" and _ONE_GIVES.search(query.text[: told[0].start]):  # what one gives, said anew
        goal = next((f for f in wanted if f.cue == "want"), wanted[-1])
        return replace(query, facts=(*query.facts, replace(goal, origin="kept"))), replace(scene, facts=tuple(f for f in scene.facts if f not in wanted))
    if not talk.missing or len(wanted) != 1 or len(told) != 1 or query.asks or not scene.asks or scene.asks[0].quantity not in ("count", "power"):
        return query, scene
    if not query.has("count") and not told[0].cue and "power" not in query.text.lower():
        return query, scene
    return replace(query, facts=(*(f for f in query.facts if f is not told[0]), told[0], replace(wanted[0], origin="kept"))), replace(scene, facts=tuple(f for f in scene.facts if f is not wanted[0]))


def turned_round(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and where would it give f/4?", after "f/8 at 2 m; what at 3 m?": the pair that was tested stands."""
    old = [f for f in scene.facts if f.quantity == "aperture"]
    new = [f for f in query.facts if f.quantity == "aperture"]
    tested = len(old) == 1 and len(new) == 1 and scene.asks and scene.asks[0].quantity == "aperture" and not any(f.quantity == "guide_number" for f in (*scene.facts, *talk.kit.facts))
    if not tested or not query.asks_for("distance"):
        return query, scene
    lengths = [f for f in scene.facts if f.quantity == "distance"]
    kept = tuple(f for f in scene.facts if f is not old[0] and f not in lengths[1:])
    return replace(query, facts=(replace(old[0], origin="kept"), *query.facts)), replace(scene, facts=kept)


def rows_again(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"what if they were 6 and 9 m?": the front row and the back row."""
    pair = next((f for f in query.facts if f.quantity == "length_range"), None)
    rows = [f.of for f in scene.facts if f.quantity == "distance" and f.of in ("front", "back")]
    if pair is None or sorted(set(rows)) != ["back", "front"]:
        return query, scene
    near = replace(pair, quantity="distance", of="front", other=math.nan)
    far = replace(pair, quantity="distance", of="back", value=pair.other, other=math.nan)
    return replace(query, facts=tuple(f for f in query.facts if f is not pair) + (near, far)), scene


def just_one(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"no, just the one": one flash instead of several."""
    if query.facts or not patterns.search(r"\b(just|only)\s+(the\s+)?one\b", query.text.lower()):
        return query, scene
    return replace(query, mentioned=()), replace(scene, facts=tuple(f for f in scene.facts if f.quantity != "count"))


_FAILS = Pattern(r"\b(?:one|the other|a flash|one of (?:them|the \w+))(?: of them)?(?: has| had|'s| is| was)?(?: just| now| suddenly)? (?:dies|died|dead|gone|dying|fails|failed|quits|breaks|broke|misfires|goes(?: down| dead| out)?|gives up|packs up|(?:does not|doesn't|doesnt|did not|didn't|didnt|won't|wont) (?:fire|go off|trigger)|stops working|conks out)\b")


_WITHOUT_ONE = Pattern(r"\b(?:without|lose|drop|minus|not|no) (?:the )?(?:second|other|third|2nd|3rd|last) (?:one|flash|light|head|strobe)\b")


_BACK_ON = Pattern(r"\b(?:with it|put (?:it|that) back|(?:it|that) back on|back on)\b(?: again| back| on)?", re.I)


_BOTH_ON = Pattern(r"\bback to (?:both|all|everything)\b|\b(?:both|all|everything|the lot)(?: of (?:it|them))? (?:back )?(?:in|on)(?: again)?\b(?! (?:the|a|one|iso|film)\b)", re.I)


def put_back(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"with it again but from 12 feet": the modifier that was taken off is on once more."""
    worn = ("modifier", "loss", "filter_loss", "nd", "camera_filter")
    if _BOTH_ON.search(query.text) and not any(f.quantity in worn for f in query.facts):
        now = sum(f.quantity in worn for f in scene.facts)
        full = next((old for old in reversed(talk.past) if sum(f.quantity in worn for f in old.facts) > now), None)
        return (query, scene) if full is None else (replace(query, cues=query.cues - {"both"}), replace(scene, facts=(*(f for f in scene.facts if f.quantity not in worn), *(f for f in full.facts if f.quantity in worn)), cues=scene.cues | full.cues))
    if (known := _as_it_was_told(query, scene, talk)) is not None:
        return known
    if not _BACK_ON.search(query.text) or any(f.quantity in worn and f.unit != "BARE" for f in (*scene.facts, *query.facts)):
        return query, scene
    before = next((old for old in reversed(talk.past) if any(f.quantity in worn and f.unit != "BARE" for f in old.facts)), None)
    if before is None:
        return query, scene
    return query, replace(scene, facts=(*(f for f in scene.facts if f.unit != "BARE"), *(f for f in before.facts if f.quantity in worn)), cues=scene.cues | before.cues)


def _as_it_was_told(query: Query, scene: Scene, talk: Conversation) -> Pair | None:
    """"brolly back on, but with 400 in the camera", after "without the brolly": what it takes was told once, and is no typical loss."""
    worn = [f for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    if len(worn) != 1 or query.has("loss") or query.has("filter_loss") or any(f.unit == worn[0].unit for f in scene.facts) or query.cues & {"forget", "not"}:
        return None
    alike = ("umbrella", "shoot_through") if worn[0].unit in ("umbrella", "shoot_through") else (worn[0].unit,)
    told = next((found for old in reversed(talk.past) if (found := [f for f in old.facts if f.quantity in TAKES_LIGHT and f.unit in alike])), [])
    if len(told) != 1:
        return None
    return replace(query, facts=(*query.facts, replace(told[0], unit=worn[0].unit, origin="kept"))), replace(scene, facts=tuple(f for f in scene.facts if f.unit != "BARE"))


def one_fails(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"what if one dies?": one flash less of several."""
    count = next((f for f in reversed(scene.facts) if f.quantity == "count" and f.value >= 2), None)
    said = query.text.lower()
    if count is None or query.facts or not (_FAILS.search(said) or _WITHOUT_ONE.search(said)):
        return query, scene
    left = tuple(replace(f, value=f.value - 1) if f is count else f for f in scene.facts if f is not count or count.value > 2)
    return replace(query, mentioned=(), asks=query.asks or scene.asks), replace(scene, facts=left)


def all_of_them(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"all three there", "both": every named flash of the kit, where the others are; "if they were both f/5.6": the reading of each of two lights."""
    read = [f for f in scene.facts if f.quantity == "aperture"]
    if "both" in query.cues and not query.mentioned and len(query.facts) == 1 and query.facts[0].quantity == "aperture" and len(read) == len({f.of for f in read}) == 2 and "ambient" in {f.of for f in read}:
        return query.with_facts(replace(query.facts[0], of=f.of) for f in read), scene
    lights = talk.kit.names if len(talk.kit.names) > 1 else tuple(name for name in talk.kit.flashes() if name)
    if "both" not in query.cues or query.mentioned or len(lights) < 2 or query.has("guide_number"):
        return query, scene
    return replace(query, mentioned=tuple(lights)), scene


def other_light(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and the other one?": the other light of two."""
    asked = (scene.asks[0].of or (scene.mentioned[0] if len(scene.mentioned) == 1 else "")) if scene.asks else ""
    if not talk.missing and query.mentioned and query.facts and not query.asks and asked and scene.asks[0].quantity not in ("stops", "ratio", "factor") and asked in scene.mentioned and len(query.mentioned) == 1 and query.mentioned[0] != asked \
            and not query.cues & {"both", "combined", "add_light", "same_light"} and all(f.of == query.mentioned[0] and f.quantity != scene.asks[0].quantity for f in query.facts):
        return replace(query, asks=(replace(scene.asks[0], of=query.mentioned[0]),)), scene
    if not query.mentioned or query.facts or query.asks or not scene.asks:
        return query, scene
    lights = list(dict.fromkeys(f.of for f in scene.facts if f.of and f.quantity in ("guide_number", "distance", "power", "aperture")))
    if "b" in query.mentioned and len(lights) == 2 and "b" not in lights:
        other = next((name for name in lights if name != scene.asks[0].of), lights[-1])
        return replace(query, mentioned=(other,), asks=(replace(scene.asks[0], of=other),)), scene
    name = query.mentioned[0]
    if name in lights and patterns.match(r"\W*(and|what about|how about|now)\b", query.text.lower()):
        return replace(query, asks=(replace(scene.asks[0], of=name),)), scene
    return query, scene
