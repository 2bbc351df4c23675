"""Corrections: "115 feet, not 105", "not metres, feet", "no sorry, it's 120"."""

from __future__ import annotations

import math

from assistant import patterns
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.left_out import shown
from assistant.units import LENGTH


def _negated(query: Query) -> list[Fact]:
    """Values said after "not": the old ones."""
    out = []
    for fact in query.facts:
        before = query.text[max(0, fact.start - 14) : fact.start].lower()
        if patterns.search(r"\b(not|instead of|rather than)\s+(?:a |an |at |the |f/?|iso )?\s*$", before):
            out.append(fact)
    return out


_NO_FIGURE = frozenset({"loss", "filter_loss", "nd", "modifier", "camera_filter", "remark", "place"})
"""What is lost or stands in the way is told beside a correction and is none."""


def corrected(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"115 feet, not 105": the value that was wrong tells which quantity is meant."""
    old = _negated(query)
    if not old:
        return query, scene
    new = [f for f in query.facts if f not in old]
    known = [k for k in (*scene.facts, *talk.kit.facts) if k.quantity != "only_powers"]
    wrong = old[0]
    target = next((k for k in reversed(known) if math.isclose(shown(k), shown(wrong), rel_tol=1e-6) or math.isclose(k.value, wrong.value, rel_tol=1e-6)), None)
    if target and new and new[0].quantity not in _NO_FIGURE and not any(f.quantity == target.quantity for f in new):
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
    target = next((k for k in talk.kit.facts if k.quantity != "only_powers" and math.isclose(shown(k), shown(old[0]), rel_tol=1e-6)), None)
    return _recast(new[0], target) if target else None


_ALIKE = {"sync": "shutter", "widest_aperture": "aperture", "smallest_aperture": "aperture", "min_power": "power"}
_NO = Pattern(r"^\W*(?:no|nope|wait|sorry|oops|actually|hang on|scratch that|correction)\b(?!\W+(?:more|less|closer|further|flash|light)\b)")


def last_put_right(query: Query, talk: Conversation) -> Fact | None:
    """"no sorry, it's 120", right after a fact of the kit was told: that fact."""
    put_right = "correction" in query.cues or _NO.match(query.text.lower()) is not None
    if talk.scene.asks or not talk.kit.facts or talk.kit.facts[-1].quantity == "only_powers" or not put_right or len(query.facts) != 1 or query.asks:
        return None
    new, last = query.facts[0], talk.kit.facts[-1]
    alike = new.quantity in ("number", "distance", last.quantity) or new.quantity == _ALIKE.get(last.quantity)
    return _recast(new, last) if alike and not new.bad else None


def _recast(fact: Fact, target: Fact) -> Fact:
    """A value read as the quantity that it corrects."""
    number = shown(fact)
    unit = fact.unit if fact.unit in LENGTH else target.unit
    value = number * LENGTH[unit] if target.quantity in ("distance", "camera_distance", "max_distance") and unit in LENGTH else number
    if target.quantity in ("guide_number",):
        return replace(target, value=number, unit=unit or target.unit, said=fact.said, start=fact.start, end=fact.end, origin="said", bad=fact.bad)
    return replace(target, value=value, unit=unit or target.unit, said=fact.said, start=fact.start, end=fact.end, origin="said", bad=fact.bad)


_AND = Pattern(r"^\W*(?:and|what about|how about|what if|with|now|then)\b")
_IN_UNITS = Pattern(r"^\W*(?:(?:and|so|ok|okay|now|please|what|whats|what's|is|that|it|that's|thats|this|say|give me|the same|same) )*in (feet|foot|ft|metres|meters|m)\W*(?:please|then)?\W*$")
"""Nothing but another unit for the answer."""


def units(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"not metres, feet": the guide number or the distances were in the other unit."""
    text = query.text.lower()
    dins = [f for f in query.facts if f.quantity == "film_speed" and f.unit == "DIN"]
    if dins and len(query.facts) == 1 and [a.quantity for a in query.asks] == ["film_speed"] and scene.asks and scene.asks[0].quantity not in ("film_speed", "speed") and _AND.match(text):
        return replace(query, asks=()), scene  # "and 21 DIN?": another film
    again = _IN_UNITS.match(text)
    if again and scene.asks and not query.facts:
        return replace(query, asks=(), units=("ft" if again[1][0] == "f" else "m",)), scene
    found = patterns.search(r"\bnot\s+(?:in\s+)?(feet|ft|foot|metres|meters|m|metric)\b", text)
    spoken = patterns.search(r"(?:^|\b(?:no|sorry|actually|i mean|i meant|that'?s|it'?s|was|were|oops)[,\s]+(?:in\s+|it'?s\s+(?:in\s+)?)?)(feet|ft|foot|metres|meters|metric)\b", text)
    if query.facts or not (found or spoken):
        return query, scene
    if found:
        wrong = "ft" if found.group(1)[0] == "f" else "m"
        right = "m" if wrong == "ft" else "ft"
    elif patterns.search(r"\bin\s+(feet|ft|metres|meters|m)\b", text) and not patterns.search(r"\b(no|sorry|actually|meant?|oops)\b", text):
        return query, scene
    else:
        assert spoken is not None
        right = "ft" if spoken.group(1)[0] == "f" else "m"
        wrong = "m" if right == "ft" else "ft"
    guides = [f for f in scene.facts if f.quantity == "guide_number"]
    retaken = any(f.quantity == "distance" and f.unit == wrong for f in scene.facts)
    if retaken and "distance" not in text:  # the guide number went by the distances: it is taken anew
        scene = replace(scene, facts=tuple(replace(f, unit="", cue="") if f.quantity == "guide_number" and f.cue == "unit_taken" else f for f in scene.facts))
        guides = [f for f in scene.facts if f.quantity == "guide_number"]
    taken = [f for f in guides if not f.unit and not retaken] or ([f for f in guides if f.unit == wrong] if not any(f.quantity == "distance" and f.unit == wrong for f in scene.facts) else [])
    if taken and "distance" not in text:
        facts = tuple(replace(f, unit=right) if f in taken else f for f in scene.facts)
    else:
        facts = tuple(replace(f, unit=right, value=f.value / LENGTH[wrong] * LENGTH[right]) if f.quantity == "distance" and f.unit == wrong else
                      replace(f, unit=right) if f.quantity == "guide_number" and f.unit == wrong and f in guides and not f.unit else f for f in scene.facts)
    return replace(query, units=()), replace(scene, facts=facts)
