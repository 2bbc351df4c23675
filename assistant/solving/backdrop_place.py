"""How far off the backdrop must be to come out so many stops darker than the subject, by one light; the inverse square law."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import distance_for_falloff
from assistant.query import Ask, Fact, Query
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.placing import Scene
from assistant.solving.solution import Solution, needs
from assistant.solving.tones import TONES
from assistant.units import speak_length

Darker = tuple[float, tuple[Fact, ...], tuple[Assumed, ...]]
"""The stops between two places, the facts that told them, and what was taken for granted."""


def darker_by(query: Query) -> Darker | None:
    """The stops wanted between two places (minus: the far one darker)."""
    told = [f for f in query.facts if f.quantity in ("stops", "relation", "loss", "signed", "power_down")]
    if told:
        said = next((f for f in told if f.cue == "want"), told[0])
        return (-abs(said.value), (said, *(f for f in told if said.cue == "want")), ())
    for words, stops, why in TONES:
        if patterns.search(words, query.text, re.I):
            return stops, (), (Assumed("stops", stops, "stops", why),)
    return None


_SENTENCES = re.compile(r"[.!?;]\s+")
_ASKS_PLACE = Pattern(r"\b(?:how (?:far|close|near|many (?:feet|metres))|what distance|which distance|where|distance)\b", re.I)
_A_LIGHT = r"(?:the |my |that |this |its )?(?:same |very |one |key |main )?(?:light|flash|lamp|strobe|key|head|gun|softbox|umbrella)"
_FROM_LIGHT = Pattern(rf"\b(?:what|which) distance\b[^.?!]{{0,24}}?\b(?:from|between) {_A_LIGHT} (?:to|and)\b|\b(?:how (?:far|close|near)|(?:what|which) distance)(?: away)? (?:from|off|to) {_A_LIGHT}\b(?! to\b)|\b(?:from|to) {_A_LIGHT}\b(?! to\b)[^.]*\??\W*$|\bfrom the light must\b", re.I)
_HOW_FAR_BEHIND = Pattern(r"\bhow far behind\b|\bbehind\W*$", re.I)


def solve(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """How far off the backdrop must be to come out so many stops darker than the subject."""
    wanted = darker_by(query)
    if wanted is None or scene.far is not None or not patterns.search(r"backdrop|background|\bwall\b|seamless|paper|behind", query.text, re.I):
        return None
    if scene.near is None:
        return needs(("distance",), "I need the distance from the light to the subject.", wanted[1], "falloff") if "how far behind" in query.text.lower() and {f.quantity for f in query.facts} <= {"stops", "relation", "loss", "remark"} else None
    if wanted[0] > 0:
        return Solution("out_of_reach", "The key alone cannot make what stands behind the subject brighter than the subject: it needs a light of its own, two stops over for white (common practice).",
                        answers=(marks.stops(wanted[0], "background"),), used=scene.used + wanted[1], topic="falloff")
    far = distance_for_falloff(scene.near, wanted[0])
    unit = preferred_unit(query, ask.unit)
    if _is_the_backdrops(query) and not query.has("gap") and "behind" not in query.text.lower():  # "it's 4 m from the light: how far from it must she be"
        near = distance_for_falloff(scene.near, -wanted[0])
        return _done((marks.distance(near, unit, "subject"),), scene, wanted, f"The subject {_length(query, near)} from the light.")
    behind, whole = marks.distance(far - scene.near, unit, "background"), marks.distance(far, unit, "light to background")
    asked = next((part for part in reversed(_SENTENCES.split(query.text)) if _ASKS_PLACE.search(part)), query.text)
    from_light = _FROM_LIGHT.search(asked) is not None and _HOW_FAR_BEHIND.search(asked) is None
    answers = (whole, behind) if from_light else (behind, whole)
    lead = f"{_length(query, far)} from the light, which is {_length(query, far - scene.near)} behind the subject." if from_light else f"{_length(query, far - scene.near)} behind the subject, which is {_length(query, far)} from the light."
    return _done(answers, scene, wanted, lead)


_CLOTH = r"(?:wall|backdrop|background|backcloth|paper|curtain|cloth|canvas|seamless|hedge|fence)"
_OF_THE_CLOTH = Pattern(rf"(?:^|[.;,:?!(]\s*|\b(?:to|and|but|with) )(?:the |my |our |a |that )?(?:[a-z]+ )?{_CLOTH}(?:'s| is| it's| it is| stands?| hangs?| standing| stays?| stuck| fixed|,| at| about| only| just| from {_A_LIGHT})*\s*$", re.I)


def _is_the_backdrops(query: Query) -> bool:
    """Whether the one place that is told is that of the backdrop: "it's 4 m from the light", "from my light to the wall it's 20 feet"."""
    told = query.all("distance")
    return all(f.of == "backdrop" for f in told) or len(told) == 1 and not told[0].of and _OF_THE_CLOTH.search(query.text[: told[0].start]) is not None


def _done(answers: tuple[Quantity, ...], scene: Scene, wanted: Darker, lead: str) -> Solution:
    return Solution(answers=answers, used=tuple(dict.fromkeys((*scene.used, *wanted[1]))), topic="falloff", lead=lead, assumed=wanted[2])


def _length(query: Query, metres: float) -> str:
    return speak_length(metres, preferred_unit(query))
