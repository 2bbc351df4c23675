"""Readings: several lights each metered alone; together their light adds."""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.physics.flash import light_still_wanted, sum_of_light
from assistant.query import Fact, Query
from assistant.solving.lights import NOT_SUBJECT
from assistant.solving.marks import aperture
from assistant.solving.solution import Solution


def solve(query: Query) -> Solution | None:
    """The aperture for two lights or more that were each read by themselves."""
    apart = _one_of_all(query) or _each_alike(query)
    if apart is not None:
        return apart
    named = {f.of for f in query.facts if f.quantity == "aperture" and f.of not in ("", "ambient", "camera", "front", "back")}
    ask = query.asks[0] if query.asks else None
    return metered_sum(query) if len(named) > 1 and ask is not None and ask.of in ("", "both") and not query.has("shutter") else None


_ALL = r"(?:both|together|total|combined|altogether|in all|sum)"
_TOTAL_BEFORE = Pattern(rf"\b(?:{_ALL}|all in|the (?:pair|lot))\b(?:(?!alone|itself|own|only|each|every)[^.?;\d]){{0,24}}$", re.I)
_BY_ITSELF = Pattern(r"^\s*(?:each|apiece|alone|by (?:it|them)sel\w+|on (?:its|their) own)\b", re.I)
_TOTAL_AFTER = Pattern(rf"^\s*(?:for |with |from |all |in )?{_ALL}\b(?!\s*\?)", re.I)


def told_of_all(query: Query) -> Fact | None:
    """The one reading that is said to be of all the lights together: "with both it's f/11", "f/16 all together"."""
    said = [f for f in query.all("aperture") if not _BY_ITSELF.match(query.text[f.end : f.end + 24]) and (_TOTAL_BEFORE.search(query.text[max(0, f.start - 40) : f.start]) or _TOTAL_AFTER.match(query.text[f.end : f.end + 24]))]
    return said[0] if len(said) == 1 else None


_OF_ONE = Pattern(r"\bwhat(?:'s|s)?\b(?:(?!\b(?:if|when|with|where|both|together|two|all|camera|lens|i|we)\b)[^.?!,;]){0,24}\b(?:(?P<alike>each|one|a single)|key|main|fill|flash|strobe|hair|rim|window|room|daylight|ambient|other|second|first)\b|\b(?:what|which)\b[^.?!]{0,40}\b(?:with|for|from|by|if) (?:just |only )?(?P<with_one>one|each|a single)\b(?! more| other| stop)", re.I)
_ONE_MORE = Pattern(r"\b(?:one|a) (?:more|further|extra)\b|\banother (?:one|head|flash|pop)?\b(?! (?:film|spot|place|day))|\b(?:add|adding) (?:just )?(?:one|a)\b", re.I)
_ONE_LESS = Pattern(r"\bone (?:of (?:them|these|those) )?(?:is |goes |went |gets )?(?:switched |turned |taken )?(?:off|out|fails?|failed|dies|died|less|fewer|misfires?|doesn't fire|does not fire)\b|\b(?:without|lose|minus) one\b|\b(?:switch|turn|take)(?:ing)? (?:off )?one\b", re.I)
_OTHERWISE = Pattern(r"\b(?:more|added?|adding|further|extra|off|without|fewer|less)\b", re.I)
"""Something is otherwise than it was read, and it is not told here by how many."""
_OF_THE_LENS = Pattern(r"\bwhat (?:do|should|must) (?:i|we) (?:set|shoot|use|expose)\b", re.I)


def _one_of_all(query: Query) -> Solution | None:
    """"three heads, f/8 all together, what does each read?", "together f/11, the fill alone f/5.6, what does the key read?": one light taken out of the sum."""
    whole, read = told_of_all(query), query.all("aperture")
    if whole is None or not query.asks_for("aperture") or not {f.quantity for f in query.facts} <= {"aperture", "count", "film_speed", "shutter", "remark"}:
        return None
    asked, heads = _OF_ONE.search(query.text), query.last("count")
    if len(read) == 1 and asked is not None and (asked["alike"] or asked["with_one"]) and heads is not None and heads.unit != "frames" and heads.value > 1:
        return Solution(answers=(aperture(whole.value / math.sqrt(heads.value)),), used=(whole, heads), topic="flash", lead="Each alone reads")
    if len(read) == 1 and asked is None and heads is not None and heads.unit != "frames" and heads.value > 1:
        after = heads.value + (1 if _ONE_MORE.search(query.text) else -1 if _ONE_LESS.search(query.text) else 0)
        said = after != heads.value or _OF_THE_LENS.search(query.text) and not _OTHERWISE.search(query.text)
        return Solution(answers=(aperture(whole.value * math.sqrt(after / heads.value)),), used=(whole, heads), topic="flash", notes=("What was read is of all of them together.",)) if said else None
    part = next((f for f in read if f is not whole), None)
    if part is None or len(read) != 2 or part.value >= whole.value or query.has("count") and heads is not None and heads.value != 2:
        return None
    if asked is not None and not asked["alike"] and not asked["with_one"]:
        return Solution(answers=(aperture(light_still_wanted(whole.value, part.value)),), used=(*read, *query.all("count"), *query.all("shutter"), *query.all("film_speed")), topic="flash", lead="Alone it reads",
                        notes=("The two fall on the same face, so the squares of the f-numbers add up.",))
    if asked is None and _OF_THE_LENS.search(query.text):
        return Solution(answers=(aperture(whole.value),), used=(*read, *query.all("count")), topic="flash", notes=("That is what the two read together.",))
    return None


def _each_alike(query: Query) -> Solution | None:
    """"each light alone reads f/8, key and fill: both together?": two of one reading."""
    read = query.all("aperture")
    if len(read) != 1 or len(query.facts) != 1 or not query.cues & {"both", "combined"} or not query.cues & {"each", "one_light"} or not query.asks_for("aperture"):
        return None
    return Solution(answers=(aperture(read[0].value * math.sqrt(2.0)),), used=(read[0],), topic="flash")


def metered_sum(query: Query) -> Solution | None:
    """Several readings, each of one light alone: together their light adds."""
    read = [f for f in query.facts if f.quantity == "aperture" and f.of not in NOT_SUBJECT]
    count_said = query.last("count")
    if len(read) == 1 and count_said and count_said.unit == "flashes" and not query.has("guide_number") and query.cues & {"each", "one_light", "meter", "name_meter"}:
        value = read[0].value * math.sqrt(count_said.value)
        return Solution(answers=(aperture(value),), used=(read[0], count_said), topic="flash")
    if len(read) < 2 or query.has("guide_number") or query.has("distance") or any(f.of in ("ambient", "camera") for f in read):
        return None
    if not (query.cues & {"both", "combined", "one_light", "each"} or len({f.of for f in read}) == len(read)):
        return None
    return Solution(answers=(aperture(sum_of_light(f.value for f in read)),), used=tuple(read) + ((count_said,) if count_said else ()), topic="flash")


