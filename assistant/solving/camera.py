"""What the camera adds to the balance: film speed, and losses between the lens and the film."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Assumed
from assistant.patterns import Pattern
from assistant.physics import optics
from assistant.physics.ambient import stops_from_factor
from assistant.query import Fact, Query
from assistant.solving.lights import TYPICAL_LOSS, typical_words

_CLOSE = 12.0
"""Focal lengths within which the lens's extension costs a quarter of a stop or more."""

Loss = tuple[str, float, tuple[Fact, ...]]


def film_speed(query: Query) -> tuple[float, tuple[Assumed, ...], tuple[Fact, ...]]:
    """The speed the film is exposed at, what was assumed for it, and from which facts.

    A push counts from box speed: rated one stop faster (contract 9).
    """
    said = query.last("film_speed")
    rated = query.last("rated")
    push = query.last("push")
    if rated:
        return rated.value, (), tuple(f for f in (rated, said, push) if f)
    if said is None:
        condition = next((f for f in query.facts if f.quantity == "guide_number" and f.at_iso), None)
        if condition and condition.at_iso:
            why = "the guide number was given for it"
            return condition.at_iso, (Assumed("film_speed", condition.at_iso, "ISO", why),), (condition,)
        base = 100.0 * 2 ** (push.value if push else 0.0)
        return base, (Assumed("film_speed", base, "ISO", "none was given"),), (push,) if push else ()
    return said.value * 2 ** (push.value if push else 0.0), (), tuple(f for f in (said, push) if f)


_LOSING = frozenset({"factor", "filter_loss", "nd", "camera_filter", "offset", "magnification", "extension", "focus_distance"})


def losses(query: Query) -> list[Loss]:
    """Losses at the camera in stops: filters, bellows, tele-converters."""
    if _LOSING.isdisjoint([f.quantity for f in query.facts]):
        return []
    found: list[Loss] = []
    factors = [f for f in query.facts if f.quantity == "factor"]
    found += [("filter", stops_from_factor(f.value), (f,)) for f in factors if f.value > 0]
    found += [("filter", f.value, (f,)) for f in query.facts if f.quantity == "filter_loss"]
    found += [("ND", f.value, (f,)) for f in query.facts if f.quantity == "nd"]
    found += [(f.unit, TYPICAL_LOSS[f.unit][1], (f,)) for f in unmeasured(query)]
    found += [("asked for", f.value, (f,)) for f in query.facts if f.quantity == "offset"]
    bellows = _bellows(query)
    return found + ([bellows] if bellows else [])


def unmeasured(query: Query) -> list[Fact]:
    """Filters on the lens whose strength was not given: a typical one is taken."""
    if not query.has("camera_filter"):
        return []
    told = {f.unit for f in query.facts if f.quantity == "filter_loss"}
    spare = sum(f.quantity == "factor" or f.quantity == "loss" and not f.unit and not query.has("modifier") for f in query.facts)
    any_told = bool(told) or spare > 0 or query.has("nd")
    found: list[Fact] = []
    seen: set[str] = set()
    for fact in query.facts:
        if fact.quantity != "camera_filter" or fact.unit not in TYPICAL_LOSS or fact.unit in told or fact.unit in seen:
            continue  # named again, it is still one filter
        seen.add(fact.unit)
        if fact.unit == "filter" and any_told:
            spare -= 1
        elif spare > 0:
            spare -= 1
        else:
            found.append(fact)
    return found


def assumed(query: Query) -> tuple[Assumed, ...]:
    """What was taken for those filters."""
    return tuple(Assumed("stops", -TYPICAL_LOSS[f.unit][1], "stops", typical_words(f.unit)) for f in unmeasured(query))


def _bellows(query: Query) -> Loss | None:
    magnified = query.last("magnification")
    if magnified and magnified.value > 0:
        return ("bellows", math.log2(optics.bellows_factor_from_magnification(magnified.value)), (magnified,))
    extension, focal = query.last("extension"), query.last("focal_length")
    if extension and focal:
        return ("bellows", math.log2(bellows_factor(query, extension, focal)), (extension, focal))
    focus = query.last("focus_distance")
    if focus and focal and focal.value < focus.value < _CLOSE * focal.value:
        return ("bellows", math.log2(optics.bellows_factor_from_focus(focal.value, focus.value)), (focus, focal))
    return None


def time_through(query: Query) -> bool:
    """Whether the time is asked behind what takes light before the film: a filter, or the bellows at a scale that is told; the film's own failure comes after."""
    close = any(f.quantity == "magnification" and f.value >= _COUNTS for f in query.facts) or query.has("extension", "focal_length")
    plain = close and not any(query.has(q) for q in ("exponent", "sheet_row", "sheet_span", "guide_number", "nd", "film_speed"))
    return any(a.quantity in ("shutter", "duration") and (a.of == "through" or plain and not a.of) for a in query.asks)


_COUNTS = 0.1
"""A smaller scale than this takes less than a third of a stop."""


_FROM_THE_FILM = Pattern(r"\b(?:from|to) the (?:film|plate|ground ?glass)\b|\blens[- ]to[- ]film\b|\b(?:past|beyond|before) infinity\b", re.I)


def bellows_factor(query: Query, extension: Fact, focal: Fact) -> float:
    """(extension / focal length) squared, whether the extension is the whole draw or added to it."""
    ring_at_infinity = any(math.isinf(f.value) for f in query.all("focus_distance")) and not _FROM_THE_FILM.search(query.text)
    added = extension.value <= focal.value or ring_at_infinity or bool(patterns.search(r"\btubes?\b|\bbeyond\b|\bpast\b|\bextra\b(?=[^\w?.!;]+(?:\w+[^\w?.!;]+){0,2}(?:extension|bellows|draw|mm\b|cm\b))|(?:mm|cm|extension|draw|bellows)\W+(?:of )?extra\b(?! (?:stops?|light|exposure|time))|(?<!be )(?<!is )(?<!are )\badded\b(?! (?:stops?|light|exposure|time|to (?:the |my )?(?:exposure|time|light|reading)))", query.text, re.I))
    whole = focal.value + extension.value if added else extension.value
    return optics.bellows_factor(whole, focal.value)


def loss_total(query: Query) -> tuple[float, tuple[Fact, ...], tuple[str, ...]]:
    """All of them together, their facts and their names."""
    found = losses(query)
    if not found:
        return 0, (), ()
    facts = tuple(f for _, _, fs in found for f in fs)
    return sum(s for _, s, _ in found), facts, tuple(f"{name} {stops:.2g} stops" for name, stops, _ in found)
