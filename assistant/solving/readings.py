"""Readings: several lights each metered alone; together their light adds."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import sum_of_light, times_the_light
from assistant.query import Fact, Query
from assistant.solving import whole_and_part
from assistant.solving.lights import NOT_SUBJECT
from assistant.solving.marks import aperture
from assistant.solving.solution import Solution


def solve(query: Query) -> Solution | None:
    """The aperture for two lights or more that were each read by themselves."""
    apart = _one_of_all(query) or _each_alike(query) or _guide_of_each(query)
    if apart is not None:
        return apart
    named = {f.of for f in query.facts if f.quantity == "aperture" and f.of not in ("", "ambient", "camera", "front", "back")}
    ask = query.asks[0] if query.asks else None
    return metered_sum(query) if len(named) > 1 and ask is not None and ask.of in ("", "both") and not query.has("shutter") else None


_ALL = r"(?:both|together|total|combined|altogether|in all|sum)"
_TOTAL_BEFORE = Pattern(rf"\b(?:{_ALL}|all in|the (?:pair|lot))\b(?:(?!alone|itself|own|only|each|every)[^.?;\d]){{0,44}}$", re.I)
_BY_ITSELF = Pattern(r"^\s*(?:each|apiece|alone|by (?:it|them)sel\w+|on (?:its|their) own)\b", re.I)
_TOTAL_AFTER = Pattern(rf"^\s*(?:for |with |from |of |all |in )?(?:(?:the |my )?(?:daylight|flash|fill|key|room|window|sun|ambient) and (?:the |my )?(?:daylight|flash|fill|key|room|window|sun|ambient) )?{_ALL}\b(?!\s*\?)", re.I)


_OF_ONE_LIGHT = Pattern(r"(?<!\band )(?<!\band the )(?<!\bplus )(?<!\bwith )\b(?:key|fill|main|hair|rim|window|sun|room)(?: light)?(?: alone)?(?:,? (?:is|reads?|at|gives?|says))? $", re.I)
"""Right before a reading: whose it is by name."""


def told_of_all(query: Query) -> Fact | None:
    """The one reading that is said to be of all the lights together: "with both it's f/11", "f/16 all together"."""
    said = [f for f in query.all("aperture") if not _BY_ITSELF.match(query.text[f.end : f.end + 24]) and not _OF_ONE_LIGHT.search(query.text[: f.start]) and (_TOTAL_BEFORE.search(query.text[max(0, f.start - 60) : f.start]) or _TOTAL_AFTER.match(query.text[f.end : f.end + 48]))]
    return said[0] if len(said) == 1 else None


_THEY_GIVE = Pattern(r"(?:(?!\b(?:alone|itself|own|only|each|every|apiece|one(?! (?:spot|place|point|stand|side|frame|exposure))|either|single)\b)[^.?!;,\d]){0,44}\b(?:giv(?:e|es|ing)|gave|mak(?:e|es|ing)|made|reads?|meters?|metered|add(?:s|ed)? up to|puts?|amounts? to|comes? to|came to|are|is|were|was|have|had)\b(?:(?!\b(?:alone|each|apiece|one|either)\b)[^.?!;,\d]){0,24}$", re.I)


def _of_all_of_them(query: Query, quantity: str) -> Fact | None:
    """The one value that so many lights are said to give: "two heads from one spot give f/11"."""
    values, heads = query.all(quantity), query.all("count")
    if len(values) != 1 or len(heads) != 1 or heads[0].unit not in ("flashes", "heads") or heads[0].value < 2 or heads[0].end > values[0].start:
        return None
    alone = _BY_ITSELF.match(query.text[values[0].end : values[0].end + 24])
    return values[0] if not alone and _THEY_GIVE.match(query.text[heads[0].end : values[0].start]) else None


def _guide_of_each(query: Query) -> Solution | None:
    """"my two flashes together have a guide number of 56 metres: of each?": by the root of their number."""
    whole, heads = _of_all_of_them(query, "guide_number"), query.last("count")
    if whole is None or heads is None or not query.asks_for("guide_number") or len(query.facts) != 2 or not query.cues & {"each", "one_light"}:
        return None
    value = whole.value / math.sqrt(heads.value)
    return Solution(answers=(Quantity("guide_number", value, whole.unit, at_iso=whole.at_iso),), used=(whole, heads), topic="flash", lead="Each alone has", notes=("Light adds, so guide numbers add by their squares.",))


_OF_ONE = Pattern(r"\bwhat(?:'s|s)?\b(?:(?!\b(?:if|when|with|where|both|together|two|all|camera|lens|i|we)\b)[^.?!,;]){0,24}\b(?:(?P<alike>each|one|a single)|key|main|fill|flash|strobe|hair|rim|window|room|daylight|ambient|other|second|first)\b|\b(?:what|which)\b[^.?!]{0,40}\b(?:with|for|from|by|if) (?:just |only )?(?P<with_one>one|each|a single)\b(?! more| other| stop)", re.I)
_ONE_MORE = Pattern(r"\b(?:one|a) (?:more|further|extra)\b|\banother (?:one|head|flash|pop)?\b(?! (?:film|spot|place|day))|\b(?:add|adding) (?:just )?(?:one|a)\b|\b(?:add(?:ing|ed)?|put up|bring in|with) (?:in )?a (?:second|third|fourth|fifth)\b", re.I)
_ONE_LESS = Pattern(r"\bone (?:of (?:them|these|those) )?(?:is |goes |went |gets )?(?:switched |turned |taken )?(?:off|out|fails?|failed|dies|died|less|fewer|misfires?|doesn't fire|does not fire)\b|\b(?:without|lose|minus) one\b|\b(?:switch|turn|take)(?:ing)? (?:off )?one\b", re.I)
_OTHERWISE = Pattern(r"\b(?:more|added?|adding|further|extra|off|without|fewer|less)\b", re.I)
"""Something is otherwise than it was read, and it is not told here by how many."""
_OF_THE_LENS = Pattern(r"\bwhat (?:do|should|must) (?:i|we) (?:set|shoot|use|expose)\b", re.I)


_STAYS = ("distance", "power", "film_speed", "shutter")


def _nothing_else(query: Query) -> bool:
    """Whether besides the readings and the number of lights nothing is told but what stays as it was."""
    kinds = {f.quantity for f in query.facts}
    return kinds <= {"aperture", "count", "number", "remark", *_STAYS} and not any(len({f.value for f in query.all(q)}) > 1 for q in _STAYS)


def _staying(query: Query) -> tuple[Fact, ...]:
    return tuple(f for quantity in _STAYS for f in query.all(quantity))


def _one_of_all(query: Query) -> Solution | None:
    """"three heads, f/8 all together, what does each read?", "together f/11, the fill alone f/5.6, what does the key read?": one light taken out of the sum."""
    whole, read = told_of_all(query) or _of_all_of_them(query, "aperture"), query.all("aperture")
    if whole is None or not query.asks_for("aperture") or not _nothing_else(query):
        return None
    asked, heads = _OF_ONE.search(query.text), query.last("count")
    if len(read) == 1 and asked is not None and (asked["alike"] or asked["with_one"]) and heads is not None and heads.unit != "frames" and heads.value > 1:
        return Solution(answers=(aperture(times_the_light(whole.value, 1 / heads.value)),), used=(whole, heads, *_staying(query)), topic="flash", lead="Each alone reads")
    if len(read) == 1 and asked is None and heads is not None and heads.unit != "frames" and heads.value > 1:
        after = heads.value + (1 if _ONE_MORE.search(query.text) else -1 if _ONE_LESS.search(query.text) else 0)
        said = after != heads.value or _OF_THE_LENS.search(query.text) and not _OTHERWISE.search(query.text)
        return Solution(answers=(aperture(times_the_light(whole.value, after / heads.value)),), used=(whole, heads, *_staying(query), *(query.all("number") if after > heads.value else ())), topic="flash", notes=("What was read is of all of them together.",)) if said else None
    part = next((f for f in read if f is not whole), None)
    if part is None or len(read) != 2 or part.value >= whole.value or query.has("count") and heads is not None and heads.value != 2:
        return None
    if asked is None and _OF_THE_LENS.search(query.text):
        return Solution(answers=(aperture(whole.value),), used=(*read, *query.all("count")), topic="flash", notes=("That is what the two read together.",))
    return None


def _each_alike(query: Query) -> Solution | None:
    """"each light alone reads f/8, key and fill: both together?": two of one reading."""
    read = query.all("aperture")
    if len(read) != 1 or len(query.facts) != 1 or not query.cues & {"both", "combined"} or not query.cues & {"each", "one_light"} or not query.asks_for("aperture"):
        return None
    return Solution(answers=(aperture(times_the_light(read[0].value, 2.0)),), used=(read[0],), topic="flash")


def metered_sum(query: Query) -> Solution | None:
    """Several readings, each of one light alone: together their light adds."""
    read = [f for f in query.facts if f.quantity == "aperture" and f.of not in NOT_SUBJECT]
    count_said = query.last("count")
    if len(read) == 1 and count_said and count_said.unit == "flashes" and not query.has("guide_number") and query.cues & {"each", "one_light", "meter", "name_meter"}:
        value = times_the_light(read[0].value, count_said.value)
        return Solution(answers=(aperture(value),), used=(read[0], count_said), topic="flash")
    if len(read) < 2 or whole_and_part.one_is_off(query) or query.has("guide_number") or query.has("distance") or any(f.of in ("ambient", "camera") for f in read):
        return None
    if not (query.cues & {"both", "combined", "one_light", "each"} or len({f.of for f in read}) == len(read)):
        return None
    return Solution(answers=(aperture(sum_of_light(f.value for f in read)),), used=tuple(read) + ((count_said,) if count_said else ()), topic="flash")


