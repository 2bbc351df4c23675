"""Lighting ratios claimed: "a 2:1 lighting ratio is two equal lights", "4:1 key to fill is two stops"."""

from __future__ import annotations

import math

from assistant.patterns import Pattern
from assistant.physics.flash import key_plus_fill_ratio, key_to_fill_ratio
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_rules import TOLERANCE, Verdict
from assistant.solving.claim_words import number, plain, terms

_RATIO = Pattern(r"\b(?P<a>\d+(?:\.\d+)?|one|two|three|four|five|eight|nine) ?(?::|to|-to-) ?(?P<b>\d+|one|two)\b(?! ?(?:ft|feet|m\b|met))")
_EQUAL = Pattern(r"\b(?:equal\w*|same (?:brightness|power|strength|reading|light)|identical|as bright as|evenly|equally)\b")
_KEY_TO_FILL = Pattern(r"\b(?:key|main)[- ](?:to[- ])?fill\b")


def judge_ratio(text: str) -> Verdict | None:
    """The verdict on a ratio said together with how many stops the fill is under; None where not both are said."""
    said = plain(text)
    found = _RATIO.search(said)
    if found is None or "ratio" not in said and not _KEY_TO_FILL.search(said):
        return None
    one, two = number(found["a"]), number(found["b"])
    ratio = max(one, two) / min(one, two)
    stops = next((t.doublings for t in terms(text) if t.quantity == "stops"), 0.0 if _EQUAL.search(said) else None)
    if stops is None:
        return None
    plain_ratio = _KEY_TO_FILL.search(said) is not None
    right = key_to_fill_ratio(stops) if plain_ratio else key_plus_fill_ratio(stops)
    kind = "key-to-fill ratio" if plain_ratio else "lighting ratio, (key + fill) to fill,"
    lights = "Equal lights" if stops == 0 else f"A fill {speak_stops(stops)} under the key"
    other = key_plus_fill_ratio(stops) if plain_ratio else key_to_fill_ratio(stops)
    off = _off(ratio, right)
    why = f"Counted the other way, as {'(key + fill) to fill' if plain_ratio else 'key to fill'}, it is {other:.3g}:1."
    return Verdict(off <= TOLERANCE / 2, off, f"{lights} {'give' if stops == 0 else 'gives'} a {kind} of {right:.3g}:1.", why, (marks.ratio(right),), found.start())


def _off(one: float, two: float) -> float:
    return abs(math.log2(one / two))
