"""Twins: a second light of the same model, so many stops over or under the first.

No guide number is needed: by the inverse square law only the distances and the powers count.
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.conventions import is_key_to_fill
from assistant.solving.lights import NOT_SUBJECT, PLACES, light_names, preferred_unit
from assistant.solving.placing import SO_FAR, asks_move, times_as_far
from assistant.solving.relations import REFERENCE_FIRST
from assistant.solving.solution import Solution, needs
from assistant.units import speak_length

_SAME = Pattern(r"\b(?:same|identical|twins?|another|alike|match(?:ing|ed)|equal|both)\b", re.I)
_AS_FAR = Pattern(r"\b(?:same|equal) (?:distance|place|spot)\b|\b(?:equally|just as|(?<!twice )(?<!half )(?<!double )(?<!times )as) far\b|\bside by side\b", re.I)
_LIGHT = Pattern(r"\b(?:key|main|fill|rim|hair|kicker|accent)\b", re.I)
_SECOND = ("hair", "rim", "kicker", "accent", "fill")


def solve(query: Query) -> Solution | None:
    """The distance or the power of the second light; None where the lights are not known to be alike."""
    apart = _between(query)
    if apart is not None:
        return apart
    ask = next((a for a in query.asks if a.quantity in ("distance", "power")), None)
    if ask is None:
        return None
    relation = next((f for f in query.facts if f.quantity in ("relation", "stops") and f.cue in ("less", "more") and f.to in ("key", "", "subject")), None) or _of_times(query) or _of_ratio(query) or _level(query, ask)
    if relation is None and _only_placed(query, ask):
        return needs(("ratio", "stops"), f"I need how bright the {ask.of} is to be: a ratio, or so many stops under the key.", tuple(query.all("distance")), "twins")
    if relation is None or query.has("guide_number") or query.has("loss") or query.has("modifier") or not _SAME.search(query.text):
        return None
    if relation.of in ("backdrop", "background"):
        return _on_the_backdrop(query, ask, relation)
    others = list(dict.fromkeys(n for n in (*light_names(query), *query.mentioned) if n in _SECOND))
    name = ask.of if ask.of in _SECOND else relation.of or (others[0] if len(others) == 1 else "")
    if name not in _SECOND or "key" not in (*light_names(query), *query.mentioned):
        return None
    stops = abs(relation.value) * (1 if relation.cue == "more" else -1)
    of_key = ask.of == "key" and not (ask.quantity == "distance" and query.has("distance") and all(f.of == "key" for f in query.all("distance")))  # whose place is told
    if of_key and ask.quantity == "power" and query.all("power", "key") and not query.all("power", name):
        of_key = False  # "the key is at half power: what power gives 3:1 (key plus fill to fill)": the other's
    return _the_key(query, ask, name, stops) if of_key else _placed(query, ask, name, stops)


_A_SECOND = Pattern(r"\b(?:second|another|other|twin|identical|matching|spare|the same (?:flash|head|model|kind|type|gun|strobe) again)\b(?! (?:stop|side|row|wall))", re.I)


def _on_the_backdrop(query: Query, ask: Ask, relation: Fact) -> Solution | None:
    """"how far from the backdrop must a twin of the key be to make it two stops brighter than the subject": a light of its own, as far as the key's place and those stops say."""
    keys = [f for f in query.all("distance") if f.of in ("key", "")]
    if ask.quantity != "distance" or len(keys) != 1 or len(query.all("distance")) != 1 or query.has("gap") or query.has("power") and len({f.value for f in query.all("power")}) > 1 or not _A_SECOND.search(query.text):
        return None
    stops = abs(relation.value) * (1 if relation.cue == "more" else -1)
    used = tuple(f for f in query.facts if f.quantity in ("relation", "stops", "count", "distance", "power"))
    return Solution(answers=(marks.distance(keys[0].value * 2 ** (-stops / 2), preferred_unit(query, ask.unit), "background"),), used=used, topic="twins")


_LEVEL = Pattern(r"\b(?:to equal|equals?|equal to|level with|match(?:es|ing)?|(?:read(?:s|ing)?|be|the|exactly|just) (?:the )?same as|as (?:bright|strong) as|same (?:reading|brightness|f-?stop|exposure) as) (?:the |my )?(?:key|main)\b", re.I)


def _level(query: Query, ask: Ask) -> Fact | None:
    """"its own reading is to equal the key's": no stops over it and none under, where none are told."""
    apart = any(query.has(q) for q in ("relation", "stops", "ratio", "aperture"))
    return Fact("relation", 0.0, of=ask.of, to="key", cue="more", origin="meant") if not apart and _LEVEL.search(query.text) else None


def _of_ratio(query: Query) -> Fact | None:
    """A lighting ratio as so many stops of the fill under the key, counted as it was named (contract 7); None for an even or an impossible one."""
    ratio = query.last("ratio")
    if ratio is None or ratio.bad or ratio.value <= 0:
        return None
    wide = max(ratio.value, 1 / ratio.value)
    over = wide if is_key_to_fill(query) else wide - 1
    return replace(ratio, quantity="relation", value=math.log2(over), of="fill", to="key", cue="less") if over > 0 else None


_TIMES_AS_BRIGHT = Pattern(r" as (?:bright|strong|powerful|much light)(?: as)? (?:the |my )?(?P<than>key|main|fill|rim|hair|kicker|accent)\b", re.I)


def _of_times(query: Query) -> Fact | None:
    """"I want the key four times as bright as the fill": so many stops of the second under the key, each read alone."""
    for times in query.all("times"):
        than, before = _TIMES_AS_BRIGHT.match(query.text, times.end), list(_LIGHT.finditer(query.text[: times.start]))
        who = _OTHER_NAMES.get(before[-1].group().lower(), before[-1].group().lower()) if before else ""
        other = _OTHER_NAMES.get(than["than"].lower(), than["than"].lower()) if than is not None else ""
        if "key" in (who, other) and who != other != "" and times.value > 0:
            under = who == "key"
            return replace(times, quantity="relation", value=abs(math.log2(times.value)), of=other if under else who, to="key", cue="less" if under is (times.value >= 1) else "more")
    return None


_OTHER_NAMES = {"main": "key"}


def _only_placed(query: Query, ask: Ask) -> bool:
    """Whether nothing is known of the second light but that it is the twin of a key that is placed."""
    return ask.of in _SECOND and ask.quantity == "distance" and query.last("distance", "key") is not None and _SAME.search(query.text) is not None \
        and not any(query.has(q) for q in ("guide_number", "aperture", "ratio", "stops", "relation", "loss", "modifier", "factor", "times")) \
        and all(f.of in ("", "both") for f in query.all("power"))


def _between(query: Query) -> Solution | None:
    """Stops between two lights of one model, by their distances and powers; `of` names the light asked about, or the brighter."""
    if not query.asks_for("stops"):
        return None
    placed = {f.of: f for f in query.all("distance") if f.of in ("key", *_SECOND)}
    if not placed:  # "flash A at 2 m, flash B, the same model, at 1 m"
        placed = {f.of: f for f in query.all("distance") if f.of and f.of not in PLACES and f.of not in NOT_SUBJECT}
    if len(placed) == 1 and _FRONT_LIGHT.search(query.text):  # "the rim is 1 m from it, the front one 2.8 m": a light, and no row
        placed |= {f.of: f for f in query.all("distance", "front")}
    if len(placed) == 1 and (unplaced := _other_unplaced(query, next(iter(placed)))):
        return needs(("distance",), f"I need the distance of the {unplaced} as well.", tuple(f for f in query.facts if f.quantity in ("distance", "power")), "twins")
    if len(placed) != 2 or len(query.all("distance")) != 2 or not _SAME.search(query.text) or query.has("guide_number") or query.has("loss") or query.has("modifier") or query.has("aperture"):
        return None
    strength = {who: next((f.value for f in query.all("power") if f.of in (who, "both", "")), 1.0) for who in placed}
    one, two = placed
    stops = 2 * math.log2(placed[two].value / placed[one].value) + math.log2(strength[one] / strength[two])
    used = tuple(f for f in query.facts if f.quantity in ("distance", "power"))
    asked = next(a.of for a in query.asks if a.quantity == "stops")
    if asked in placed and REFERENCE_FIRST.search(query.text):  # "how many stops over the key is the hair light": of the hair light
        asked = two if asked == one else one
    if asked in placed and query.cues & {"less", "more"}:
        return Solution(answers=(marks.stops(stops if asked == one else -stops, asked),), used=used, topic="twins", lead=f"The {asked} is {'brighter' if (stops >= 0) == (asked == one) else 'darker'}")
    if _WEAKER.search(query.text):
        return Solution(answers=(marks.stops(-abs(stops), two if stops >= 0 else one),), used=used, topic="twins", lead=f"The {two if stops >= 0 else one} is darker")
    return Solution(answers=(marks.stops(abs(stops), one if stops >= 0 else two),), used=used, topic="twins", lead=f"The {one if stops >= 0 else two} is brighter")


def _other_unplaced(query: Query, placed: str) -> str:
    """"two heads alike, the fill at 9 feet: how many stops under the key?": the light that is named and stands nowhere yet; empty where it is not that alone which is missing."""
    others = [n for n in dict.fromkeys((*light_names(query), *query.mentioned)) if n != placed and n in ("key", *_SECOND)]
    told = {f.quantity for f in query.facts} <= {"distance", "power", "count", "remark", "place"} and len(query.all("distance")) == 1
    return others[0] if len(others) == 1 and told and _SAME.search(query.text) and "same_spot" not in query.cues else ""


_FRONT_LIGHT = Pattern(r"\b(?:front|frontal) (?:one|light|flash|head|lamp|gun)\b", re.I)
_WEAKER = Pattern(r"\bhow (?:many stops|much|far)\b[^?]{0,12}\b(?:weaker|darker|dimmer|fainter|less|under|below)\b", re.I)


def _the_key(query: Query, ask: Ask, name: str, stops: float) -> Solution | None:
    """The distance or the power of the key itself, from the second light's, which lies so many stops over it (minus: under)."""
    theirs = query.last("distance", name)
    if theirs is None and query.last("distance", "key") is None:
        return None
    if theirs is None or ask.quantity == "power" and query.last("distance", "key") is None:
        return needs(("distance",), f"I need the distance of the {name if theirs is None else 'key'}.", tuple(query.all("distance")), "twins")
    strength = {who: next((f.value for f in query.all("power") if f.of in (who, "both", "")), 1.0) for who in ("key", name)}
    used = tuple(f for f in query.facts if f.quantity in ("relation", "stops", "ratio", "times", "count", "distance", "power"))
    if ask.quantity == "distance":
        place = theirs.value * 2 ** (stops / 2) * (strength["key"] / strength[name]) ** 0.5
        return Solution(answers=(marks.distance(place, preferred_unit(query, ask.unit), "key"),), used=used, topic="twins")
    value = strength[name] * 2**-stops * (query.all("distance", "key")[-1].value / theirs.value) ** 2
    return Solution("answered" if value <= 1.0005 else "out_of_reach", answers=(marks.power(value, "key"),), used=used, topic="twins")


def _so_far(query: Query, name: str) -> float | None:
    """How many times as far off as the key the second light stands, by the light that its sentence begins with."""
    said, times = SO_FAR.search(query.text), times_as_far(query)
    if said is None or times is None or times <= 0:
        return None
    opens = max(query.text.rfind(mark, 0, said.start()) for mark in ".;!?") + 1
    whose = _LIGHT.search(query.text, opens, said.start())
    if whose is None:
        return None
    return times if whose.group().lower() == name else 1 / times if whose.group().lower() in ("key", "main") else None


def _placed(query: Query, ask: Ask, name: str, stops: float) -> Solution | None:
    distances = query.all("distance")
    first = query.last("distance", "key") or next((f for f in distances if f.of in ("", "both")), None)
    mine = query.last("distance", name)
    powers = query.all("power")
    strength = {who: next((f.value for f in powers if f.of in (who, "both", "")), 1.0) for who in ("key", name)}
    used = tuple(f for f in query.facts if f.quantity in ("relation", "stops", "ratio", "times", "count", "distance", "power") or f.quantity == "energy" and f.of in ("", "both"))
    if first is None and mine is None and ask.quantity == "power" and (further := _so_far(query, name)) is not None:
        value = strength["key"] * 2**stops * further**2
        return Solution("answered" if value <= 1.0005 else "out_of_reach", answers=(marks.power(value, name),), used=(*used, *query.all("times")), topic="twins", working=(f"{further:g} times as far off, so {further**2:g} times the power for the same light",))
    together = first is not None and first.of in ("", "both") and "both" in query.text.lower()
    if (first is None or together) and mine is None and ask.quantity == "power" and (together or _AS_FAR.search(query.text)):
        value = strength["key"] * 2**stops
        return Solution("answered" if value <= 1.0005 else "out_of_reach", answers=(marks.power(value, name),), used=used, topic="twins")
    if first is None and query.has("ratio"):
        return None
    if first is None:
        return needs(("distance",), "I need the distance of the key.", used, "twins")
    if ask.quantity == "distance":
        if mine is not None:
            return None
        unit, place = preferred_unit(query, ask.unit), first.value * 2 ** (-stops / 2) * (strength[name] / strength["key"]) ** 0.5
        there = marks.distance(place, unit, name)
        if first.of != "both" or not asks_move(query, ask):
            return Solution(answers=(there,), used=used, topic="twins")
        way = place - first.value
        lead = f"Move the {name} {speak_length(abs(way), unit)} {'back' if way >= 0 else 'closer'}, to {speak_length(place, unit)} from the subject."
        return Solution(answers=(marks.distance(abs(way), unit), there), used=used, topic="twins", lead=lead)
    if mine is None:
        return None
    value = strength["key"] * 2**stops * (mine.value / first.value) ** 2
    status = "answered" if value <= 1.0005 else "out_of_reach"
    return Solution(status, answers=(marks.power(value, name),), used=used, topic="twins")
