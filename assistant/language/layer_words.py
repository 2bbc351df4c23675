"""Several alike in the light: "two layers of tissue, one stop each", "each sheet takes half a stop and I hang three of them"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

_SHEET = r"(?:layer|sheet|piece|thickness|fold|silk|scrim|net|veil|hankie|handkerchief|diffuser|cloth|tissue|gel|frost|muslin|filter)"
LAYERS = Pattern(r"(?<![.\d])\b(?P<many>two|three|four|double|(?:a )?pair of|2|3|4)\s+(?:(?:thin|thick|white|equal|identical|such|more) )?(?:layers?|sheets?|pieces?|bits|thicknesses|folds|sides|gels|silks|scrims|nets|veils|frosts|grids|tissues|hankies|handkerchiefs|diffusers|cloths|muslins|polari[sz]ers|filters|(?:nd|neutral density|gr[ea]y) filters|nds|neutral densit(?:y|ies))\b", re.I)
_SO_MANY_OF_THEM = Pattern(r"(?<![.\d])(?<!\bthe )(?<!\bboth )(?<!\bthese )(?<!\bthose )\b(?P<many>two|three|four|2|3|4)(?: of (?:them|these|those|it|the same)\b|(?= (?:in front|over (?:the|my|it)|on (?:the|my|it)|together|deep|thick)\b)|(?=\W*(?:$|[.,;?!](?!\d))))", re.I)
"""With what one of them takes told: "and I use two of them"."""
_MANY = {"two": 2, "double": 2, "2": 2, "three": 3, "3": 3, "four": 4, "4": 4}
_OF_ONE = Pattern(rf"\b(?:one|a|a single|single|each|every|1) (?P<of>{_SHEET})\b(?:(?!\b(?:two|three|four|double|layers|sheets)\b)[^.;?!\d]){{0,40}}\b(?:los|cost|eat|take|took|swallow|steal|is|was|be|drink|measur|test|rob|absorb|soak|hold)\w*", re.I)
"""Told of one of them: "one layer of our silk takes two thirds of a stop, and I have hung two"."""
_ONE_OFF = Pattern(r"\b(?:tak|peel|pull|strip|whip|remov)\w* (?:off |away )?one (?:of (?:them|these|those|the \w+)|\w+)?(?: (?:off|away))?\b|\bone (?:layer|sheet|of them|less|fewer)\b[^.?!,;]{0,12}\b(?:off|less|fewer|away)\b", re.I)
_ANY_SHEET = ("layer", "sheet", "piece", "thickness", "fold")
_EVERY_BEFORE = Pattern(r"\b(?:each|every)\b(?: \w+){1,9}\s*$", re.I)
_EACH_AFTER = Pattern(r"\s*(?:of (?:the )?light )?(?:(?:being |is )?(?:lost|loss|off|gone|swallowed|eaten|taken|down|disappearing|disappears) )?(?:(?:in|to|by|for|from|through|with|at) )?(?:each|apiece|every one|per \w+|(?:a|every|each) (?:layer|sheet|piece)|either)\b", re.I)
SUM_OF = Pattern(r"\W*(?:together|altogether|in all|in total|between them|all told|combined)\b", re.I)
_LOST = frozenset({"loss", "stops", "filter_loss", "nd"})
_COUNTED = frozenset({"number", "count", "rows"})


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the loss of one of several alike taken so many times."""
    match = LAYERS.search(text) or (_SO_MANY_OF_THEM.search(text) if _OF_ONE.search(text) else None)
    if match is None:
        return facts
    there = _MANY.get(match["many"].lower(), 2)
    many = 1 if _ONE_OFF.search(text, max(0, match.start() - 24)) else there  # what one takes, where only one comes off
    first = _first_told(facts, match, text)
    out = [f for f in facts if not (f.quantity in _COUNTED and match.start() <= f.start < match.end())]
    out.append(Fact("rows", float(there), "layers", start=match.start("many"), end=match.end("many"), said=match["many"]))  # how many there are, used in each loss
    told = next((f for f in facts if f.quantity in ("loss", "stops", "filter_loss")), None)
    first = told if told is not None and _EVERY_BEFORE.search(text[: told.start]) else first
    return [_times(f, many) if f.quantity in _LOST and not SUM_OF.match(text[f.end :]) and (f == first or _EACH_AFTER.match(text[f.end :])) else f for f in out]


def _times(fact: Fact, many: int) -> Fact:
    return replace(fact, value=fact.value * many, quantity="loss" if fact.quantity == "stops" and not fact.cue else fact.quantity)


def _first_told(facts: Sequence[Fact], match: re.Match[str], text: str) -> Fact | None:
    """The loss that is told of one of them."""
    last = match.group().lower().split()[-1]
    of_one = next((one for one in _OF_ONE.finditer(text) if one["of"].lower() in _ANY_SHEET or last.startswith(one["of"].lower()[:4]) or match.re.pattern == _SO_MANY_OF_THEM.pattern), None)
    return next((f for f in facts if of_one and f.quantity in ("loss", "stops", "filter_loss") and f.start >= of_one.end()), None)
