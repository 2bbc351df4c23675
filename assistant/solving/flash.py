"""Flash exposure: one unknown of aperture, distance, power, film speed, guide number, count.

For any number of lights: each has its own ledger, their light adds, and the unknown closes
the balance. The result is put back into the balance before it is returned.
"""

from __future__ import annotations

import math
import re

from assistant.answer import Assumed
from assistant.patterns import Pattern
from assistant.physics.flash import sum_of_light, whole_count
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.solving import camera
from assistant.solving.ledger import Line, balance, close, line
from assistant.solving.lights import Light, guide_unit, lights, preferred_unit, typical_words
from assistant.solving.marks import aperture, count, distance, film_speed, guide_number, power
from assistant.solving.readings import metered_sum
from assistant.solving.solution import Solution, needs, rejected
from assistant.units import speak_length

ASKED = ("aperture", "distance", "power", "film_speed", "guide_number", "count")
NAMES = {"guide_number": "the guide number of the flash", "distance": "the distance from the flash to the subject",
         "aperture": "the aperture you want", "power": "the power"}


def solve(query: Query) -> Solution | None:
    """The unknown of a flash balance; needs what is missing; None when it is no flash question."""
    ask = next((a for a in query.asks if a.quantity in ASKED), None)
    if ask is None:
        return None
    if ask.quantity == "film_speed" and query.has("widest_aperture") and not query.has("aperture"):
        query = query.with_facts(replace(f, quantity="aperture") if f.quantity == "widest_aperture" else f for f in query.facts)  # the slowest film is for the lens wide open
    return _SOLVERS[ask.quantity](query, ask)


# --- shared ----------------------------------------------------------------------------------


_GUIDE_OF_LOW_POWER = Pattern(r"\b(?:minimum|min|lowest|least|low|lower|reduced|weakest|smallest|partial) power,? (?:(?:setting|with|where|at|that|which|it|its|has|giving|gives|for|the|a|is|and) )*(?:guide number|guide|gn)\b(?! (?:at|for) full)", re.I)
"""The guide number that holds at that power, whatever it is: "at a low power with a guide number of 11 metres". No other power is taken."""


def _assumptions(query: Query, found: list[Light], film: tuple[Assumed, ...], asked: str = "") -> tuple[Assumed, ...]:
    made = list(film)
    if asked != "power" and any(lamp.power is None and lamp.guide_number is not None for lamp in found):
        if not any(f.quantity in ("power", "power_down") for f in query.facts) and _GUIDE_OF_LOW_POWER.search(query.text) is None:
            made.append(Assumed("power", 1.0, "of full", "none was given"))
    for fact in query.facts:
        if fact.quantity == "guide_number" and any(fact in lamp.facts for lamp in found):
            unit, taken = guide_unit(query, fact, asked_unit(query))
            if taken:
                made.append(Assumed("guide_number", fact.value, unit, "no unit was given with the guide number"))
    for one in found:
        for worn in one.typical:
            loss = dict(one.losses)[worn]
            made.append(Assumed("stops", -loss, "stops", typical_words(worn)))
    return tuple(made) + camera.assumed(query)


def asked_unit(query: Query) -> str:
    """The unit of length named in the question itself."""
    return next((a.unit for a in query.asks if a.unit in ("ft", "m", "cm", "in", "yd")), "")


def _missing(query: Query, one: Light, wanted: tuple[str, ...]) -> tuple[str, ...]:
    have = {"guide_number": one.guide_number, "distance": one.distance}
    return tuple(q for q in wanted if q in have and have[q] is None)


def ask_for(missing: tuple[str, ...], name: str = "") -> str:
    """The question that asks for exactly what is missing."""
    whose = f" for the {name}" if name else ""
    return "I need " + " and ".join(NAMES.get(m, m.replace("_", " ")) for m in missing) + whose + "."


def _reading(one: Light, speed: float, loss: float) -> tuple[float, list[Line]]:
    if one.reading is not None:
        return one.reading, []
    lines = one.lines() + [line("film_speed", speed), line("loss", loss)]
    return close("aperture", lines), lines


def _facts(found: list[Light], *more: tuple[Fact, ...]) -> tuple[Fact, ...]:
    facts = [f for lamp in found for f in lamp.facts] + [f for group in more for f in group]
    return tuple(dict.fromkeys(facts))


CHANGES = frozenset({"now", "what_if", "move", "correction", "go_back", "further", "closer", "front", "back", "middle", "rows"})


def _contradiction(query: Query) -> Solution | None:
    """Two values of one thing in one breath, with no word of a change."""
    if query.cues & CHANGES:
        return None
    for quantity in ("distance", "film_speed"):
        said = [f for f in query.facts if f.quantity == quantity and not f.of and f.origin == "said"]
        if len(said) == 2 and not math.isclose(said[0].value, said[1].value, rel_tol=0.02) and not said[0].cue and not said[1].cue:
            name = quantity.replace("_", " ")
            return rejected(f"You gave two values for the {name}, “{said[0].said.strip()}” and “{said[1].said.strip()}”; it can only be one of them.")
    return None


def _split(found: list[Light], query: Query) -> list[Light]:
    """"three flashes at 1/4, 1/8 and 1/8": a power each, in the order named (contract 33)."""
    if len(found) != 1 or found[0].count < 2:
        return found
    powers = [f for f in query.facts if f.quantity == "power" and f.value < 1.0001]
    many = int(found[0].count)
    if len(powers) != many:
        return found
    return [replace(found[0], name=chr(97 + n) if many <= 26 else str(n), count=1.0, power=p.value, facts=(*found[0].facts, p)) for n, p in enumerate(powers)]


# --- one function for each unknown ---------------------------------------------------------------


def _aperture(query: Query, ask: Ask) -> Solution | None:
    contradiction = _contradiction(query)
    if contradiction:
        return contradiction
    metered = metered_sum(query)
    if metered:
        return metered
    found = _split(lights(query, asked_unit(query)), query)
    speed, film, film_facts = camera.film_speed(query)
    loss, loss_facts, _ = camera.loss_total(query)
    chosen = [lamp for lamp in found if lamp.name == ask.of] if ask.of not in ("", "both") else [lamp for lamp in found if lamp.of_subject]
    chosen = chosen or found
    chosen, found = _from_relations(query, chosen, found, speed, loss)
    for one in chosen:
        missing = _missing(query, one, ("guide_number", "distance")) if one.reading is None else ()
        if missing:
            return needs(missing, ask_for(missing, one.name), _facts(found, film_facts), "flash")
    read = {lamp.name: _reading(lamp, speed, loss) for lamp in found if not _missing(query, lamp, ("guide_number", "distance")) or lamp.reading is not None}
    value = sum_of_light(read[lamp.name][0] for lamp in chosen)
    answers = [aperture(value, ask.of if ask.of not in ("", "both") else None)]
    for one in found:
        if (len(chosen) > 1 or one not in chosen) and one.name in read:
            answers.append(aperture(read[one.name][0], one.name))
    lines = tuple(read[chosen[0].name][1]) if len(chosen) == 1 else ()
    return Solution(
        answers=tuple(answers), assumed=_assumptions(query, found, film), lines=lines + ((line("aperture", value),) if lines else ()),
        used=_facts(found, film_facts, loss_facts, tuple(query.all("count", ""))), topic="flash",
    )


def _from_relations(query: Query, chosen: list[Light], found: list[Light], speed: float, loss: float) -> tuple[list[Light], list[Light]]:
    """Lights known only by their difference from another: "the fill is two stops under the key"."""
    made: dict[str, Light] = {}
    for one in found:
        said = query.last("relation", one.name)
        if said is None or one.reading is not None or not _missing(query, one, ("guide_number", "distance")):
            continue
        other = next((o for o in found if o is not one and said.to in (o.name, "") and (o.reading is not None or not _missing(query, o, ("guide_number", "distance")))), None)
        if other is not None:
            stops = abs(said.value) * (1 if said.cue == "more" else -1)
            made[one.name] = replace(one, reading=_reading(other, speed, loss)[0] * 2 ** (stops / 2), facts=(*one.facts, said))
    return [made.get(lamp.name, lamp) for lamp in chosen], [made.get(lamp.name, lamp) for lamp in found]


def _single(query: Query, ask: Ask, unknown: str) -> tuple[Light, list[Line], tuple[Assumed, ...], tuple[Fact, ...]] | Solution:
    """The one light asked about and the ledger without its unknown, or what is missing."""
    found = lights(query, asked_unit(query))
    one = next((lamp for lamp in found if lamp.name == ask.of), None) or next((lamp for lamp in found if _open(lamp, unknown)), found[0])
    speed, film, film_facts = camera.film_speed(query)
    loss, loss_facts, _ = camera.loss_total(query)
    target = _target(query, found, one, speed, loss)
    wanted = tuple(q for q in ("guide_number", "distance") if q != unknown)
    missing = _missing(query, one, wanted) + (("aperture",) if target is None else ())
    if missing:
        return needs(missing, ask_for(missing, one.name if len(found) > 1 else ""), _facts(found, film_facts), "flash")
    assert target is not None
    lines = one.lines(unknown) + [line("loss", loss), line("aperture", target)]
    lines += [] if unknown == "film_speed" else [line("film_speed", speed)]
    facts = _facts(found, film_facts if unknown != "film_speed" else (), loss_facts, (_wished_of(query, one) or query.all("aperture")[-1],))
    assumed = _assumptions(query, [one], film if unknown != "film_speed" else (), unknown)
    return one, lines, assumed, facts


def _open(one: Light, unknown: str) -> bool:
    return {"distance": one.distance, "power": one.power, "guide_number": one.guide_number}.get(unknown, 0) is None


def _target(query: Query, found: list[Light], one: Light, speed: float, loss: float) -> float | None:
    """The aperture the light alone must give: the wanted one less what the other lights give."""
    own = _wished_of(query, one)
    if own is not None:
        return own.value
    fact = query.last("aperture", "") or query.last("aperture", "ambient")
    if fact is None:
        return None
    others = [lamp for lamp in found if lamp is not one and lamp.of_subject and not _missing(query, lamp, ("guide_number", "distance"))]
    if not others or one.name in ("", *()) or not one.of_subject:
        return fact.value
    already = sum(_reading(lamp, speed, loss)[0] ** 2 for lamp in others)
    left = fact.value**2 - already
    return math.sqrt(left) if left > 0 else fact.value


def _wished_of(query: Query, one: Light) -> Fact | None:
    """"I want the hair light to read f/16 on her head": what a light that does not count toward the subject is to give, where it is told of it once."""
    own = query.all("aperture", one.name) if one.name and not one.of_subject else []
    return own[0] if len(own) == 1 and not query.all("relation", one.name) else None


def _close(parts: tuple[Light, list[Line], tuple[Assumed, ...], tuple[Fact, ...]], unknown: str) -> tuple[float, tuple[Line, ...]]:
    value = close(unknown, parts[1])
    lines = (*parts[1], line(unknown, value))
    assert abs(balance(list(lines))) < 1e-6, "the balance does not close"
    return value, lines


def _distance(query: Query, ask: Ask) -> Solution | None:
    parts = _single(query, ask, "distance")
    if isinstance(parts, Solution):
        return parts
    value, lines = _close(parts, "distance")
    now = query.last("distance")
    if ask.of == "move" and now is not None:
        moved = Solution(answers=(distance(value - now.value, preferred_unit(query, ask.unit), "move"), distance(value, preferred_unit(query, ask.unit))), assumed=parts[2], lines=lines, used=(*parts[3], now), topic="flash")
        return replace(moved, lead=f"Move it {speak_length(abs(value - now.value), preferred_unit(query, ask.unit))} {'back' if value > now.value else 'nearer'}.")
    unit = preferred_unit(query, ask.unit)
    return Solution(answers=(distance(value, unit, ask.of or None),), assumed=parts[2], lines=lines, used=parts[3], topic="flash")


def _power(query: Query, ask: Ask) -> Solution | None:
    parts = _single(query, ask, "power")
    if isinstance(parts, Solution):
        return parts
    value, lines = _close(parts, "power")
    return Solution(answers=(power(value, ask.of or None),), assumed=parts[2], lines=lines, used=parts[3], topic="flash")


def _film_speed(query: Query, ask: Ask) -> Solution | None:
    found = [lamp for lamp in lights(query, asked_unit(query)) if lamp.of_subject]
    if len(found) > 1:
        return _film_speed_for_many(query, found)
    parts = _single(query, ask, "film_speed")
    if isinstance(parts, Solution):
        return parts
    value, lines = _close(parts, "film_speed")
    return Solution(answers=(film_speed(value),), assumed=parts[2], lines=lines, used=parts[3], topic="flash")


def _film_speed_for_many(query: Query, found: list[Light]) -> Solution:
    loss, loss_facts, _ = camera.loss_total(query)
    target = query.last("aperture", "")
    for one in found:
        missing = _missing(query, one, ("guide_number", "distance"))
        if missing or target is None:
            missing = missing + (() if target else ("aperture",))
            return needs(missing, ask_for(missing, one.name))
    assert target is not None
    total = sum_of_light(_reading(lamp, 100.0, loss)[0] for lamp in found)
    value = 100.0 * (target.value / total) ** 2
    return Solution(answers=(film_speed(value),), assumed=_assumptions(query, found, ()), used=_facts(found, loss_facts, (target,)), topic="flash")


def _guide_number(query: Query, ask: Ask) -> Solution | None:
    guides = [f for f in query.facts if f.quantity in ("guide_number", "guide_number_pair")]
    told = [f for f in query.facts if f.origin == "said"]
    tested = {"aperture", "distance"} <= {f.quantity for f in told} and not any(f.quantity.startswith("guide_number") for f in told)
    if guides and not tested:
        return _combined_guide(query, ask)
    query = query.with_facts(f for f in query.facts if not f.quantity.startswith("guide_number"))
    lengths, many = query.all("distance"), query.last("count")
    if len(lengths) == 1 and not query.has("aperture") and many is not None and "combined" in query.cues:
        unit = "m" if lengths[0].unit in ("m", "cm") else "ft"
        guide = replace(lengths[0], quantity="guide_number", value=lengths[0].value / (0.3048 if unit == "ft" else 1.0), unit=unit, of="")
        return _combined_guide(query.with_facts(tuple(f for f in query.facts if f is not lengths[0]) + (guide,)), ask)
    target, film_facts = query.last("aperture"), query.all("film_speed")
    found = lights(query, asked_unit(query))
    one = found[0]
    missing = tuple(q for q, v in (("aperture", target), ("distance", one.distance)) if v is None)
    if missing:
        return needs(missing, ask_for(missing), _facts(found), "flash")
    assert target is not None
    speed = film_facts[0].value if film_facts else 100.0
    loss, loss_facts, _ = camera.loss_total(query)
    bared_now = target.origin == "kept" and any(f.unit == "BARE" and f.origin == "said" for f in query.all("camera_filter"))
    whole = not bared_now and _AS_A_WHOLE.search(query.text) is not None
    if whole or one.typical and not _BY_ITSELF.search(query.text):
        one = replace(one, losses=() if whole else tuple((name, lost) for name, lost in one.losses if name not in one.typical), typical=())
    at_iso = film_facts[-1].value if len(film_facts) > 1 else 100.0
    powers = query.all("power")
    one = replace(one, power=powers[0].value if powers else one.power)
    lines = one.lines("guide_number") + [line("film_speed", speed), line("loss", loss), line("aperture", target.value)]
    value = close("guide_number", lines) * math.sqrt(at_iso / 100.0)
    unit = preferred_unit(query, ask.unit)
    assumed: tuple[Assumed, ...] = () if film_facts else (Assumed("film_speed", 100.0, "ISO", "none was given"),)
    if one.power is None:
        assumed += (Assumed("power", 1.0, "of full", "none was given"),)
    return Solution(answers=(guide_number(value if unit in ("m", "cm") else value / 0.3048, "m" if unit in ("m", "cm") else "ft", at_iso),), assumed=assumed, lines=(*lines, line("guide_number", value)),
                    used=_facts(found, tuple(film_facts), loss_facts, (target,), tuple(powers)), topic="flash")


_BY_ITSELF = Pattern(r"\b(?:bare|naked|without|(?:flash|head|gun|strobe|lamp)(?:'s)? (?:alone|itself|by itself|on its own)|(?:alone|by itself|on its own|itself)\W*\?)", re.I)
"""The guide number asked is that of the flash with nothing on."""
_AS_A_WHOLE = Pattern(r"\bguide number (?:of|for|is)\b[^?]*\b(?:together|combination|combined|as a whole|pair of them|as one)\b|\b(?:guide number|gn)\b[^?]*\b(?:whole|entire|complete|rig|set-?up|outfit|assembly|the two|the pair|them both|both)\b|\b(?:working|effective|practical|real) (?:guide number|gn)\b|\b(?:flash|head|gun|strobe|lamp) (?:and|plus|with) (?:the |its |my )?[a-z -]{3,24}?(?: together)?(?: have|has| amount to| give| come to)?\W*\?|\b(?:guide number|gn)\b[^?]{0,24}\b(?:with (?:it|the \w+) (?:on|up|included|in place)|through (?:it|the \w+)|in (?:it|that box|the box))\b[^?]*\?", re.I)
"""The guide number asked is that of the flash with what it was read through."""


def _combined_guide(query: Query, ask: Ask) -> Solution:
    """The guide number of several lights from one spot: light adds, so squares add."""
    unit = ask.unit or next((f.unit for f in query.facts if f.quantity == "guide_number" and f.unit), "") or preferred_unit(query)
    unit = "m" if unit in ("m", "cm") else "ft"
    found = lights(query, unit)
    factor = 0.3048 if unit == "ft" else 1.0
    total = sum((lamp.guide_number or 0.0) ** 2 * lamp.count * (lamp.power or 1.0) * 2.0 ** -lamp.loss for lamp in found)
    speeds = query.all("film_speed")
    at_iso = speeds[-1].value if speeds else 100.0
    value = math.sqrt(total * at_iso / 100.0) / factor
    return Solution(answers=(guide_number(value, unit, at_iso),), used=_facts(found, tuple(speeds)), assumed=_assumptions(query, found, (), "power"), topic="flash")


NEARLY = 0.995
"""A count is not rounded up for less light than this leaves out: a hundredth of a stop, which f-numbers as marked are off by."""


def _count(query: Query, ask: Ask) -> Solution | None:
    several = [f for f in query.all("count") if f.unit in ("flashes", "heads") and f.value > 1]
    together = several[0] if ask.unit == "pops" and len(several) == 1 and len(query.all("guide_number")) == 1 else None
    query = query.with_facts(f for f in query.facts if f.quantity != "count" or f.value == 1)
    if not (query.has("guide_number") or query.has("aperture")) and ask.unit not in ("flashes", "pops"):
        return None
    base = [f for f in query.facts if f.quantity == "aperture"]
    one_pop = any(f.quantity == "count" and f.value == 1 for f in query.facts)
    if len(base) == 1 and one_pop and not query.has("guide_number"):
        return needs(("aperture",), "I need the aperture you want.", tuple(base), "flash")
    parts = _single(query, ask, "count")
    if isinstance(parts, Solution) and not query.has("guide_number") and not query.has("distance") and ask.unit == "pops" and "aperture" not in parts.missing:
        return replace(parts, missing=("aperture", *parts.missing), lead="I need the aperture that one pop gives there, or the guide number of the flash and its distance.")
    if isinstance(parts, Solution):
        return parts
    one = replace(parts[0], count=1.0)
    lines = [entry for entry in parts[1] if entry.quantity != "count"]
    exact = close("count", lines)
    if together is not None:
        exact /= together.value
        parts = (*parts[:3], (*parts[3], together))
    unit = "pops" if ask.unit == "pops" else "flashes"
    each = "one" if together is None else f"one pop of all {together.value:g}"
    lines += [line("count", together.value)] if together is not None else []
    return Solution(answers=(count(whole_count(exact * NEARLY), unit),), assumed=parts[2], lines=(*lines, line("count", exact)), used=parts[3], topic="flash").noting(
        f"Exactly {exact:.3g} times the light of {each} is needed." if one.count == 1.0 and abs(exact - round(exact)) > 0.01 else "")


_SOLVERS = {"aperture": _aperture, "distance": _distance, "power": _power, "film_speed": _film_speed, "guide_number": _guide_number, "count": _count}
