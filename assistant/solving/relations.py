"""Two lights against each other: ratios, so many stops under, which is brighter, equal light."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import key_plus_fill_ratio, key_to_fill_ratio, stops_from_key_plus_fill, stops_from_key_to_fill
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving import backdrop_reading, camera, lit_sides, marks, told_by_other
from assistant.solving.conventions import is_key_to_fill
from assistant.solving.dimmed import hung_since
from assistant.solving.flash import _assumptions, _facts, ask_for, asked_unit
from assistant.solving.ledger import close, line
from assistant.solving.lights import NOT_SUBJECT, Light, lights, lit_by_its_own, preferred_unit, read_alike
from assistant.solving.share_of_light import ratio_of_places
from assistant.solving.solution import Solution, needs


def solve(query: Query) -> Solution | None:
    """A question about the difference between lights; None when it is none."""
    now = hung_since(query)
    for topic in (_ratio, backdrop_reading.solve, _brighter, _against_mark, _matched, told_by_other.solve, _related):
        found = topic(now)
        if found:
            return found if now is query else replace(found, used=query.facts)
    return None


# --- ratio -----------------------------------------------------------------------------------


def _ratio(query: Query) -> Solution | None:
    ask = next((a for a in query.asks if a.quantity == "ratio"), None)
    if ask is None:
        return None
    plain = ratio_of_places(query)
    if plain is not None:
        return plain
    sides = lit_sides.ratio(query, is_key_to_fill(query))
    if sides is not None:
        return sides
    told, query = query.all("count"), _one_of_each(query)
    found = lights(query)
    difference = _difference(query, found)
    if isinstance(difference, Solution):
        return difference
    stops, used = difference
    if any(f.value > 1 and f.of in ("key", "fill") and f not in used for f in query.all("count")):
        return None  # two heads of one light that were not counted: the other light was not found
    key_to_fill = is_key_to_fill(query)
    value = key_to_fill_ratio(stops) if key_to_fill else key_plus_fill_ratio(stops)
    named = "key to fill, each read alone" if key_to_fill else "(key + fill) to fill"
    other = key_plus_fill_ratio(stops) if key_to_fill else key_to_fill_ratio(stops)
    note = f"Counted as {named}; the other way of counting calls it {other:.3g}:1."
    return Solution(answers=(marks.ratio(value), marks.stops(-abs(stops), "fill")), notes=(note,), used=(*used, *(f for f in told if f not in query.facts)), topic="relations")


def _one_of_each(query: Query) -> Query:
    """"fill at 8 ft, key at 5 ft, twin heads": the two of them are the key and the fill, not two at one place."""
    placed = {f.of for f in query.all("distance")} | {f.of for f in query.all("power")}
    if not {"key", "fill"} <= placed and not ({"key", "fill"} <= set(query.mentioned) and len(query.all("count")) == 1):
        return query
    return query.with_facts(replace(f, quantity="remark", of="") if f.quantity == "count" and f.value == 2 and _TWINS.search(f.said + query.text[f.end : f.end + 12]) else f for f in query.facts)


_TWINS = Pattern(r"\b(?:twins?|pair|identical|equal|match(?:ing|ed)|same|like)\b", re.I)


def _difference(query: Query, found: list[Light]) -> tuple[float, tuple[Fact, ...]] | Solution:
    """Stops of the key above the fill, from readings, distances and powers, or a statement."""
    said = query.last("relation") or next((f for f in query.facts if f.quantity == "stops"), None)
    apertures = query.all("aperture")
    pair = _key_and_fill(found)
    if len(apertures) >= 2 and (pair is None or pair[0].reading is None or pair[1].reading is None):
        apart = aperture_difference_stops(apertures[0].value, apertures[1].value)
        return apart if pair else abs(apart), tuple(apertures[:2])  # with no names the stronger is the key
    relation = query.last("relation")
    if relation and pair and not all(_comparable(lamp) for lamp in pair):
        return abs(relation.value), (relation,)
    if pair and all(_comparable(lamp) for lamp in pair) and not _one_unplaced(pair, query):
        return _above(pair[0], pair[1]), _facts(list(pair))
    if said and (not pair or not any(lamp.distance or lamp.guide_number for lamp in pair)):
        return abs(said.value), (said,)
    if "same_light" in query.cues and not query.has("distance") and not query.has("power") and not apertures:
        return 0.0, ()
    distances = query.all("distance")
    if len(distances) == 2:
        return abs(2 * math.log2(distances[1].value / distances[0].value)), tuple(distances)
    powers = query.all("power")
    if len(powers) == 1 and not distances and powers[0].of in ("fill", "key") and "same_spot" in query.cues | ({"same_spot"} if _ALIKE.search(query.text) else set()):
        return abs(math.log2(powers[0].value)), tuple(powers)  # "the fill at half the key's power, from the same distance"
    if len(powers) == 2 and not distances:
        return abs(math.log2(powers[0].value / powers[1].value)), tuple(powers)
    if pair and (pair[0].reading or pair[1].reading):
        lacks = pair[1] if pair[0].reading else pair[0]
        return needs(("aperture",), f"I need what the {lacks.name} reads on its own.", topic="relations")
    if len(apertures) == 1 and apertures[0].of:
        return needs(("aperture",), "I need what the other light reads on its own.", topic="relations")
    lacking = [lamp.name for lamp in (pair or ()) if lamp.distance is None and lamp.reading is None]
    return needs(("distance",), ask_for(("distance",), lacking[0] if lacking else ""), topic="relations")


_ALIKE = Pattern(r"\b(?:same|equal) distances?\b|\bas far (?:away|off)\b|\bboth (?:at|from) the same\b", re.I)


def _key_and_fill(found: list[Light]) -> tuple[Light, Light] | None:
    by_name = {lamp.name: lamp for lamp in found}
    if "key" in by_name and "fill" in by_name:
        return by_name["key"], by_name["fill"]
    named = [lamp for lamp in found if lamp.name and lamp.of_subject]
    if len(named) == 2:
        one, two = named
        return (one, two) if not (_comparable(one) and _comparable(two)) or _above(one, two) >= 0 else (two, one)
    return None


def _one_unplaced(pair: tuple[Light, Light], query: Query) -> bool:
    """Whether one of two lights is placed by a distance and the other by nothing: its distance is not borrowed (contract 21)."""
    unplaced = (pair[0].distance is None) is not (pair[1].distance is None) and not (pair[0].reading or pair[1].reading)
    return unplaced and "same_spot" not in query.cues and _ALIKE.search(query.text) is None


def _comparable(one: Light) -> bool:
    return one.reading is not None or one.distance is not None or one.power is not None


def _above(one: Light, two: Light) -> float:
    """How many stops one light is above another; equal guide numbers where none is known."""
    if one.reading and two.reading:
        return aperture_difference_stops(one.reading, two.reading)
    guide = 1.0
    if one.guide_number and two.guide_number:
        guide = one.guide_number / two.guide_number
    distance = (two.distance / one.distance) if one.distance and two.distance else 1.0
    power = (one.power or 1.0) / (two.power or 1.0)
    count = one.count / two.count
    return 2 * math.log2(guide * distance) + math.log2(power * count) - one.loss + two.loss


# --- which is brighter -------------------------------------------------------------------------


def _brighter(query: Query) -> Solution | None:
    if "brightest" not in query.cues and not (query.asks_for("stops") and (_compares(query) or _two_readings(query))):
        return None
    if "brightest" in query.cues:
        query = readings_named(query)
    found = read_alike([lamp for lamp in lights(query) if lamp.name], query)
    if len(found) != 2 or not all(_comparable(lamp) or lamp.guide_number for lamp in found):
        return None
    one, two = found
    put_on = told_by_other.put_on_one(query, found)
    if put_on is None:
        return None
    stops = _above(one, two) - put_on
    winner = one if stops >= 0 else two
    name = winner.name.upper() if len(winner.name) == 1 else winner.name
    wanted = next((a.of for a in query.asks if a.quantity == "stops" and a.of), "")
    behind = (not wanted or _OF_THE_CLOTH.search(query.text) is not None) and "backdrop" in query.cues and bool(query.cues & {"less", "more"}) and "background" in (one.name, two.name)
    wanted = "background" if behind else wanted  # "how many stops under the sitter is the backdrop"
    reference = _reference(query, (one.name, two.name))
    if (wanted in (one.name, two.name) or reference) and "brightest" not in query.cues:
        if reference:
            wanted = two.name if reference == one.name else one.name
        elif not behind and REFERENCE_FIRST.search(query.text):
            wanted = two.name if wanted == one.name else one.name
        signed = stops if wanted == one.name else -stops
        return Solution(answers=(marks.stops(signed, wanted),), used=_facts(found), assumed=_assumptions(query, found, ()), topic="relations",
                        lead=f"{_opening(wanted)} is {'brighter' if signed >= 0 else 'darker'}" if abs(signed) > 0.05 else "")
    return Solution(answers=(marks.stops(abs(stops), name),), used=_facts(found), assumed=_assumptions(query, found, ()), topic="relations",
                    lead=f"{name if len(name) == 1 else 'The ' + name} is brighter")


_OF_THE_CLOTH = Pattern(r"\bhow (?:many stops|much|far)\b[^?.;]*?\b(?:is|are|does|lies|sits) (?:the |my )?(?:white |grey |gray )?(?:paper|backdrop|background|cloth|seamless|wall)\b", re.I)
"""Whose brightness is asked, whatever light was named right before it."""
_LIGHT_AT = Pattern(r"\b(?P<name>key|main|fill|hair|rim|kicker|background|backdrop)(?: light| flash)?(?: (?:at|on|of|with))? $", re.I)


def readings_named(query: Query) -> Query:
    """"which is brighter, the key at f/8 or the fill at f/11": an f-number right after each light is what it reads."""
    read = query.all("aperture")
    names = [found["name"].lower() if (found := _LIGHT_AT.search(query.text[: f.start])) else "" for f in read]
    if len(read) != 2 or any(f.of for f in read) or not all(names) or names[0] == names[1]:
        return query
    named = dict(zip(read, (_CALLED.get(n, n) for n in names)))
    return query.with_facts(replace(f, of=named[f]) if f in named else f for f in query.facts)


REFERENCE_FIRST = Pattern(r"\b(?:under|below|over|above|beneath) (?:the |my )?\w+(?: light)? (?:is|does|lies|sits|reads)\b", re.I)
"""In "how far under the key is the fill" the light named first is the one compared with."""


_THAN = Pattern(r"\b(?:than|compared (?:to|with)|relative to|against|(?:over|under|above|below) or (?:over|under|above|below))\s+(?:(?:the|my|our|that|of)\s+)*(\w+)", re.I)
_CALLED = {"main": "key", "backdrop": "background", "bg": "background", "backlight": "back", "kicker": "kicker"}


def _reference(query: Query, names: tuple[str, str]) -> str:
    """The light compared with in "how much brighter is the one than the other"; empty where none is said so."""
    found = _THAN.search(query.text)
    name = found[1].lower() if found else ""
    name = _CALLED.get(name, name)
    return name if name in names else ""


def _opening(name: str) -> str:
    return name.upper() if len(name) == 1 else f"The {name}" if name.islower() else name


def _compares(query: Query) -> bool:
    return len([lamp for lamp in lights(query) if lamp.name]) == 2 and not query.has("relation") and bool(query.cues & {"less", "more", "brightest", "versus"})


def _two_readings(query: Query) -> bool:
    return not query.has("relation") and not query.has("distance") and len([lamp for lamp in lights(query) if lamp.name and lamp.reading]) == 2


def _against_mark(query: Query) -> Solution | None:
    """"reads one stop under f/16": a light; "set one stop less than f/16": the lens (contract 28)."""
    if not query.asks_for("aperture"):
        return None
    said, mark = query.last("relation"), query.last("aperture")
    text = query.text.lower()
    if said is None and any([word in text for word in ("closing", "opening", "by the lens", "on the lens")]):
        said = next((replace(f, to="aperture") for f in query.facts if f.quantity == "stops" and f.cue in ("less", "more")), None)
    if said is None or said.to != "aperture" or mark is None or query.has("guide_number") or query.has("distance"):
        return None
    stops = abs(said.value) * (1 if said.cue == "more" else -1)
    lens = any(word in text for word in ("camera", "lens", "exposure", "closing", "shoot", "set "))
    value = mark.value * 2 ** (-stops / 2 if lens and not said.of else stops / 2)
    again = tuple(f for f in query.facts if f.quantity in ("relation", "aperture") and f.value in (said.value, mark.value) and f.cue in (said.cue, mark.cue, "", "meter"))
    return Solution(answers=(marks.aperture(value, said.of or None),), used=tuple(dict.fromkeys((said, mark, *again))), topic="relations")


_MATCHES = Pattern(r"\b(?:level|equal|even|on a par|matched|match|the same|same|as bright|balanced?)\b(?: (?:in|as bright))?(?: (?:with|to|as|by))? (?:the |my )?(?P<name>\w+)", re.I)


def _matched(query: Query) -> Solution | None:
    """"the hair light reads f/11 on a quarter, I want it level with the key's f/8", or a stop under it: the power that turns one reading into the other."""
    if not query.asks_for("power"):
        return None
    read, power, said = query.all("aperture"), query.last("power"), query.last("relation")
    found = _MATCHES.search(query.text)
    other = next((f for f in read if power is not None and f.of != power.of), None)
    mine = next((f for f in read if power is not None and f.of == power.of), None)
    if power is None or not power.of or len(query.all("power")) != 1 or len(read) != 2 or mine is None or other is None or not other.of:
        return None
    level = found is not None and _CALLED.get(found["name"].lower(), found["name"].lower()) == other.of
    under = said is not None and said.cue in ("less", "more") and said.of in ("", power.of, power.of.replace("background", "backdrop")) and said.to in ("", other.of)
    if level == under or query.has("guide_number") or query.has("distance"):
        return None
    stops = aperture_difference_stops(other.value, mine.value) if level or said is None else aperture_difference_stops(other.value, mine.value) + abs(said.value) * (1 if said.cue == "more" else -1)
    value = power.value * 2.0**stops
    answers = (marks.power(value, power.of),)
    used = (*read, power, *(query.all("relation") if under else ()))
    return Solution("out_of_reach", f"It would take {value:.3g} times full power.", answers, used=used, topic="relations") if value > 1.0005 else Solution(answers=answers, used=used, topic="relations")


# --- so many stops under ---------------------------------------------------------------------------


def _related(query: Query) -> Solution | None:
    """A light's power, distance or aperture for so many stops against another light."""
    query = _one_of_each(query) if query.has("ratio") else query
    ask = next((a for a in query.asks if a.quantity in ("power", "distance", "aperture", "film_speed")), None)
    relation = _relation(query)
    if ask is not None and relation is not None and ask.quantity == "aperture" and ask.of in ("", "both") and relation[1] not in NOT_SUBJECT and relation[2] not in ("ambient", "backdrop", "aperture") \
            and any(lamp.guide_number and lamp.distance or lamp.reading for lamp in lights(query)):
        return None
    if ask is None or relation is None or (ask.quantity == "aperture" and ask.of in ("", "both") and "both" in query.cues):
        return None
    if ask.of == relation[2] != "" and ask.quantity in ("power", "distance") and relation[1] and relation[3]:
        relation = (-relation[0], relation[2], relation[1], relation[3])  # "the fill is on 1/16, what must the key be set to"
    stops, subject, reference, used = relation
    turned = _of_the_reference(query, ask, relation) or _of_a_place(query, ask, relation)
    if turned is not None:
        return turned
    found = lights(lit_by_its_own(query, subject), asked_unit(query))
    one = next((lamp for lamp in found if lamp.name == (ask.of if ask.of not in ("", "both", reference) else subject)), None) or next((lamp for lamp in found if lamp.name not in (reference,)), found[0])
    target = _reference_reading(query, found, one, reference)
    if isinstance(target, Solution):
        return target
    value, more, balanced = target
    wanted = value * 2 ** (stops / 2)
    return _for_reading(query, ask, one, wanted, used + more, balanced)


def _of_a_place(query: Query, ask: Ask, relation: tuple[float, str, str, tuple[Fact, ...]]) -> Solution | None:
    """"key f/11, the background two stops under it, what does the background read": no lamp of its own stands there."""
    stops, subject, reference, used = relation
    told = query.all("aperture", reference)
    if ask.quantity != "aperture" or ask.of != "backdrop" or subject != "backdrop" or len({f.value for f in told}) != 1 or query.has("guide_number"):
        return None
    return Solution(answers=(marks.aperture(told[0].value * 2 ** (stops / 2), subject),), used=(*used, *told), topic="relations")


def _of_the_reference(query: Query, ask: Ask, relation: tuple[float, str, str, tuple[Fact, ...]]) -> Solution | None:
    """"3:1, the fill reads f/5.6, what does the key read": the other way round, from the light that was told."""
    stops, subject, reference, used = relation
    told = query.all("aperture", subject) if subject else []
    if ask.quantity != "aperture" or ask.of != reference or not reference or len(told) != 1 or len(query.all("aperture")) != 1 or query.has("guide_number"):
        return None
    return Solution(answers=(marks.aperture(told[0].value * 2 ** (-stops / 2), reference),), used=(*used, told[0]), topic="relations")


def _relation(query: Query) -> tuple[float, str, str, tuple[Fact, ...]] | None:
    said = query.last("relation")
    if said:
        sign = 1 if said.cue == "more" else -1
        return sign * abs(said.value), said.of, said.to, (said,)
    ratio = query.last("ratio")
    if ratio:
        wide = ratio.value if ratio.value >= 1 else 1 / ratio.value
        stops = stops_from_key_to_fill(wide) if is_key_to_fill(query) else stops_from_key_plus_fill(wide) if wide > 1 else 0.0
        return -stops, "fill", "key", (ratio,)
    if "same_light" in query.cues and not query.asks_for("aperture"):
        asked = next((a.of for a in query.asks if a.of not in ("", "both")), "")
        others = [n for n in (lamp.name for lamp in lights(query)) if n != asked]
        if asked and others and (level := _MATCHES.search(query.text)) is not None and _CALLED.get(level["name"].lower(), level["name"].lower()) == asked:
            return 0.0, others[0], asked, ()  # "at which power does it match the key"
        return (0.0, asked, others[0], ()) if asked and others else None
    return None


def _reference_reading(query: Query, found: list[Light], one: Light, reference: str) -> tuple[float, tuple[Fact, ...], bool] | Solution:
    """What the other light (or the ambient light, or the aperture) reads; true when only in proportion."""
    speed, _, film_facts = camera.film_speed(query)
    other = next((lamp for lamp in found if lamp.name == reference and lamp is not one), None)
    measured = query.last("aperture", reference) if reference else None
    if measured is None and (reference in ("ambient", "aperture", "subject", "backdrop", "") or other is None or (reference == "key" and other.guide_number is None and len(query.all("aperture")) == 1)):
        measured = query.last("aperture", "ambient") or query.last("aperture", "") or query.last("aperture", "key")
    if measured is None and reference == "aperture" and len(query.all("aperture")) == 1:
        measured = query.last("aperture")  # "two stops over my f/8", said after the light's name
    if measured:
        return measured.value, (measured, *film_facts), False
    if other is None or not _comparable(other):
        other = next((lamp for lamp in found if lamp is not one and _comparable(lamp)), other) or next((lamp for lamp in found if lamp is not one), None)
    if other is None and query.asks_for("distance") and one.name in ("", "backdrop") and any(f.of == "backdrop" for f in query.all("relation")) and not query.has("aperture"):
        return needs(("distance",), "I need the distance from the light to the subject.", topic="relations")
    if other is None:
        return needs(("aperture",), "I need what it is compared with: the reading of the other light.")
    if other.distance is None and query.asks_for("distance"):
        return needs(("distance",), ask_for(("distance",), other.name), topic="relations")
    if other.distance is None and one.distance is None:
        other = replace(other, distance=1.0)
    elif other.distance is None:
        return needs(("distance",), ask_for(("distance",), other.name), topic="relations")
    guide = other.guide_number
    proportional = guide is None
    if proportional and not _grounds(query, one, other) and query.asks_for("aperture"):
        return needs(("aperture",), f"I need what the {other.name or 'other light'} reads on its own.", topic="relations")
    if proportional and not _grounds(query, one, other):
        missing = ("guide_number", "distance")
        return needs(missing, ask_for(missing, one.name), topic="relations")
    lines = replace(other, guide_number=guide or 1.0).lines() + [line("film_speed", speed)]
    return close("aperture", lines), other.facts + film_facts, proportional


def _grounds(query: Query, one: Light, other: Light) -> bool:
    """Whether two lights of unknown guide number may be compared in proportion: the same flash, or both placed."""
    alike = query.cues & {"same_spot", "keep", "both", "same_light"} or any(w in query.text.lower() for w in ("identical", "twin", "same", "equal", "alike", "matching"))
    return bool(alike) or bool(one.distance and other.distance) or bool(other.power is not None)


def _for_reading(query: Query, ask: Ask, one: Light, wanted: float, used: tuple[Fact, ...], proportional: bool) -> Solution:
    """The unknown of one light so that it reads as wanted."""
    speed, film, film_facts = camera.film_speed(query)
    if ask.quantity == "aperture":
        return Solution(answers=(marks.aperture(wanted, one.name or None),), used=used + one.facts, topic="relations")
    if proportional:
        one = replace(one, guide_number=1.0)
    if ask.quantity == "power" and one.distance is None and not query.has("distance"):
        one = replace(one, distance=1.0) if proportional else one
    missing = tuple(q for q, v in (("guide_number", one.guide_number), ("distance", one.distance)) if v is None and q != ask.quantity)
    if missing:
        return needs(missing, ask_for(missing, one.name), used, "relations")
    if ask.quantity == "film_speed":
        lines = one.lines() + [line("aperture", wanted)]
    else:
        lines = one.lines(ask.quantity) + [line("film_speed", speed), line("aperture", wanted)]
    value = close(ask.quantity, lines)
    answer: Quantity = marks.distance(value, preferred_unit(query, ask.unit), one.name or None) if ask.quantity == "distance" else \
        marks.power(value, one.name or None) if ask.quantity == "power" else marks.film_speed(value)
    assumed = () if proportional else _assumptions(query, [one], film, ask.quantity)
    beside = () if one.name in ("",) else (marks.aperture(wanted, f"{one.name} reading"),)
    return Solution(answers=(answer,), assumed=assumed, used=used + one.facts + film_facts, lines=(*lines, line(ask.quantity, value)), topic="relations",
                    notes=(f"It then reads f/{wanted:.3g} on its own.",) if beside and not proportional else ())
