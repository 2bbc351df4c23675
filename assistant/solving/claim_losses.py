"""Losses claimed without a scene: "a softbox costs two stops", "umbrellas always lose exactly two", "two sheets leave a half"."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_denial import denied
from assistant.solving.claim_rules import Verdict
from assistant.solving.claim_words import plain, terms
from assistant.solving.lights import MODIFIER_NAMES, TYPICAL_LOSS
from assistant.solving.solution import Solution

_WORDS: tuple[tuple[str, str], ...] = (
    ("shoot_through", r"shoot[- ]through"), ("umbrella", r"umbrellas?|broll(?:y|ies)"), ("softbox", r"soft ?box(?:es)?|octas?|octabox"), ("dome", r"domes?"), ("dish", r"beauty dish(?:es)?"),
    ("diffuser", r"diffusers?|diffusion"), ("scrim", r"scrims?|silks?"), ("grid", r"grids?|honeycombs?"), ("snoot", r"snoots?"), ("polariser", r"polari[sz]ers?|polari[sz]ing filters?"),
    ("hss", r"hss|high[- ]speed sync\w*"), ("ceiling", r"bounc\w+|ceilings?"),
)
_COSTS = Pattern(r"\b(?:los\w*|costs?|costing|takes?|eats?|drops?|loss|steals?|soaks?|open(?:ing)? up|is|about)\b")


_FOR_FIGURES = Pattern(r"\b(?:power|twice|doubl\w+|tripl\w+|quadrupl\w+|(?:two|three|four|eight) times|enough|as far|per ?cent|than)\b|%")
"""What such a claim is about is a setting, and the loss only what it is for."""

_PLACE = Pattern(r"\b\d[\d.]* ?(?:m|metres?|meters?|ft|feet|foot|')(?![a-z])", re.I)


def judge_loss(text: str) -> Verdict | None:
    """Whether so many stops are in the usual range of a modifier; None where no modifier and no stops are said."""
    said = plain(text)
    worn = next((name for name, words in _WORDS if patterns.search(rf"\b(?:{words})\b", said)), None)
    stops = [t for t in terms(text) if t.quantity in ("stops", "filter")]
    if worn is None or len(stops) != 1 or not _COSTS.search(said) or _FOR_FIGURES.search(said) or patterns.search(r"\b(?:gn|guide)\b|\bf ?/ ?\d", said):
        return None
    if len(_PLACE.findall(text)) > 1:
        return None  # "an umbrella 1.4 m from her, 4.2 m from the wall": the lamp by its name, and the stops between two places
    low, usual, high = TYPICAL_LOSS[worn]
    value = stops[0].doublings
    fixed = patterns.search(r"\b(?:always|exactly|every|all|never)\b", said) is not None
    name = MODIFIER_NAMES[worn] if worn != "ceiling" else "white ceiling, beside the longer path,"
    article = "" if worn == "hss" else "an " if name[0] in "aeiou" else "a "
    right = f"{article}{name} usually costs {speak_stops(low)} to {speak_stops(high)}, typically {speak_stops(usual)}."
    return Verdict(low - 0.05 <= value <= high + 0.05 and not fixed, 0.0, right[:1].upper() + right[1:], "It differs from one to the next: test your own.", (marks.stops(-usual),), stops[0].start)


_TO_A_SHARE = Pattern(r"\b(?:cut|let|pass|leav|reduc|bring|tak|drop|turn)\w*\b[^.?]{0,30}\b(?:to|only|through)\s+(?:only )?(?:at |from )?(?:an? |one )?$")
_HELD_AGAINST = Pattern(r"\bthan\b|\bas (?:much|bright|strong)\b[^.?!]*\bas\b")
_CARRIED = r"guide(?: ?(?:numbers?|nos?))?|gns?|reach|range|throw|(?:flash |working )?distance"
_OF_THE_CARRY = Pattern(rf"\b(?:{_CARRIED})\b[^.?]{{0,16}}$")
_CARRY_AFTER = Pattern(rf"\W*(?:of )?(?:the |its |my )?(?:old |usual |former |bare )?(?:{_CARRIED})\b")
"""How far the light carries, before the share or after it: that goes with the root of the light."""


def claim_of_share(query: Query) -> Solution | None:
    """"two sheets at one stop each cut the light to a half": what the losses together leave, against the share that is said."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd") and f.value]
    share = next((f for f in query.facts if f.quantity in ("power", "share", "number") and 0 < f.value < 1 and "power" not in f.said), None)
    if not lost or share is None or query.has("guide_number") or _HELD_AGAINST.search(query.text.lower()) or not _TO_A_SHARE.search(query.text[: share.start].lower()):
        return None
    stops = sum(f.value for f in lost)
    carry = _OF_THE_CARRY.search(query.text[: share.start].lower()) or _CARRY_AFTER.match(query.text[share.end :].lower())
    left = 2.0 ** (-stops / 2 if carry else -stops)
    holds = abs(math.log2(share.value / left)) < (0.1 if not carry else 0.05)
    right = f"{left:.2g} times the guide number and the reach" if carry else f"1/{1 / left:.3g} of the light"
    beside = Quantity("factor", left, "times") if carry else Quantity("stops", math.log2(left), "stops")
    return Solution(answers=(Quantity("claim", holds, ""), beside), used=(*lost, share), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {speak_stops(stops).capitalize()} lost {'leaves' if stops <= 1 else 'leave'} {right}.")


_TIMES_POWER = Pattern(r"\b(?P<many>twice|doubl\w+|three times|tripl\w+|four times|quadrupl\w+|eight times)\b(?: (?:the|as much|of|my|its|flash))*(?: power| light| energy)\b(?!'s)")
_MANY = {"twi": 2.0, "dou": 2.0, "thr": 3.0, "tri": 3.0, "fou": 4.0, "qua": 4.0, "eig": 8.0}
_HELD = Pattern(r"\b(?:hold\w* back|held back|swallow\w*|absorb\w*|lets?|pass\w*|transmit\w*)\b")
_LOST_FACTS = frozenset({"loss", "filter_loss", "nd"})
_ROUND = 0.2
"""Doublings by which a round figure may be off."""
_WAS_BARE = Pattern(r"\b(?:bare|without|naked)\b")


def claim_of_power_for_loss(query: Query) -> Solution | None:
    """"the umbrella loses two stops, do I need twice the power?", "is half power enough behind a two-stop silk, when 1/16 did it bare?"."""
    lost = [f for f in query.facts if f.quantity in _LOST_FACTS and f.value]
    kinds = {f.quantity for f in query.facts} - {*_LOST_FACTS, "modifier", "camera_filter", "times", "power", "remark"}
    if not lost or kinds or _HELD.search(query.text.lower()):
        return None
    said, stops = plain(query.text), sum(f.value for f in lost)
    found, powers = _TIMES_POWER.search(said), query.all("power")
    right = 2.0**stops
    if found is not None and len(powers) <= 1:
        holds = (abs(math.log2(_MANY[found["many"][:3]]) - stops) < _ROUND) is not denied(said)
        return Solution(answers=(Quantity("claim", holds), marks.factor(stops)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {speak_stops(stops).capitalize()} lost takes {right:.3g} times the power.")
    if len(powers) != 2 or "enough" not in said or (bare := _WAS_BARE.search(said)) is None or denied(said):
        return None
    base = min(powers, key=lambda f: min(abs(f.start - bare.end()), abs(bare.start() - f.end)))
    other = powers[0] if base is powers[1] else powers[1]
    needed = base.value * right
    return Solution(answers=(Quantity("claim", other.value >= needed * 0.9), marks.power(needed)), used=query.facts, topic="claims", lead=f"{'Yes' if other.value >= needed * 0.9 else 'No'}. {speak_stops(stops).capitalize()} more than bare.")
