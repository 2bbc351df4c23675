"""One light out of two, and two out of one: a lamp read on and off, a light that gives so much of another's, two that read alike.

Light adds, so the squares of the f-numbers do: what the lamp gives alone is what is read with it less what is read without it.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.physics.ambient import added_light_stops
from assistant.physics.flash import light_still_wanted, sum_of_light, times_the_light
from assistant.query import Fact, Query
from assistant.scales import aperture_difference_stops
from assistant.solving import marks, whole_and_part
from assistant.solving.solution import Solution

_BESIDE = frozenset({"aperture", "aperture_range", "shutter", "film_speed", "stops", "relation", "power", "share", "number", "remark", "place"})
_ADD = "The two fall on the same face, so their light adds."


def solve(query: Query) -> Solution | None:
    """The answer where two lights on one face are told by their sum or their share; None where they are not."""
    if not {f.quantity for f in query.facts if f.origin == "said" and not _counts_lights(f)} <= _BESIDE or _APART.search(query.text) or len({f.value for f in query.all("shutter")}) > 1:
        return None
    if query.has("count"):
        return whole_and_part.solve(_of_lights(query))
    taken = _each_of_the_sum(query) or whole_and_part.solve(query) or _and_the_rest(query)
    if taken is not None:
        return taken
    if query.has("number"):
        return _share(query)  # "a third of the light"; any other number is of something else
    return _lifted(query) or _share(query) or _weaker(query) or _alike(query)


def _counts_lights(fact: Fact) -> bool:
    return fact.quantity == "count" and fact.unit in ("flashes", "heads", "lights") and fact.value in (1, 2, 3)


_THE_THIRD = Pattern(r"\b(?:the|of the) $", re.I)


def _of_lights(query: Query) -> Query:
    """The query without the "third" of "what does the third read?", which is a lamp and no part."""
    return query.with_facts(f for f in query.facts if not (f.quantity == "number" and f.said.strip().lower() == "third" and _THE_THIRD.search(query.text[: f.start])))


_SUM_BEFORE = Pattern(r"\b(?:sum|total|together|combined)\b[^.?!;,]{0,24}$", re.I)
_SUM_AFTER = Pattern(r"\s*(?:together|in all|in total|combined|altogether|as the sum|for the sum)\b", re.I)
_ALIKE = Pattern(r"\b(?:equal(?:ly)?|the same|alike|even(?:ly)?|half each|identical|as (?:much|strong|bright) as)\b", re.I)
_EACH_ASKED = Pattern(r"\b(?:what|which|how)\b[^?.]*\b(?:each|either|one of them|(?:the )?(?:flash|room|daylight|key|fill|one) (?:read |give |be )?(?:alone|by itself|on its own))\b", re.I)


def _each_of_the_sum(query: Query) -> Solution | None:
    """"flash and room in equal parts, the sum at f/8: what must each read": half of the light, so the f-number over the root of two."""
    read = query.all("aperture")
    if len(read) != 1 or not query.asks_for("aperture") or {f.quantity for f in query.facts} - {"aperture", "shutter", "film_speed", "remark"}:
        return None
    told = _SUM_BEFORE.search(query.text[: read[0].start]) or _SUM_AFTER.match(query.text, read[0].end)
    if not told or not _ALIKE.search(query.text) or not _EACH_ASKED.search(query.text):
        return None
    return Solution(answers=(marks.aperture(times_the_light(read[0].value, 0.5)),), used=_others(query, *read), topic="ambient", notes=("Two equal lights on one face make twice the light of one.",))


_APART = Pattern(r"\b(?:other|opposite|different) (?:side|cheek|half)\b|\bratio\b", re.I)
"""Lights that do not overlap, or are not to be summed."""
_ADDS = r"(?:adds?|contribut\w+|lifts?|rais\w+|brightens?|gains?|gives? (?:extra|more)|push(?:es)? up)"
_STOPS_ASKED = Pattern(r"\b(?:how (?:many|much|far)|by what)\b[^?]{0,24}\bstops?\b|\b(?:by )?how (?:much|far)\b", re.I)


def _others(query: Query, *used: Fact) -> tuple[Fact, ...]:
    """What stays the same for both and so does not count."""
    return (*used, *query.all("shutter"), *query.all("film_speed"))


# --- a lamp that lifts the reading -------------------------------------------------------------------

_BY_ITSELF = r"(?:alone|by (?:it|them)sel(?:f|ves)|on (?:its|their) own|only|itself|themselves)"
_LAMP_ALONE = Pattern(rf"\b(?P<one>[a-z]+?)s? (?:(?:would|does|do|must|should|will|light) )?(?:(?:give|read|be|meter)s? )?{_BY_ITSELF}\b", re.I)
_LIFTS = Pattern(r"\b[a-z]+(?: light)? (?:lifts?|raises?|lifted|raised|takes|brings|pushes|brightens) [^.?!]{0,40}$", re.I)


def _lifted(query: Query) -> Solution | None:
    """"the lamp lifts it from f/5.6 to f/8: what does the lamp alone give?"."""
    span = query.last("aperture_range")
    lifts = _LIFTS.search(query.text[: span.start]) if span is not None and not query.has("aperture") and not query.has("stops") and not query.has("relation") else None
    if span is None or lifts is None or span.other <= span.value or _STOPS_ASKED.search(query.text):
        return None
    named = _LAMP_ALONE.search(query.text[span.end :])
    if named is None or named["one"].lower() not in lifts.group().lower():
        return None
    return Solution(answers=(marks.aperture(light_still_wanted(span.other, span.value)),), used=_others(query, span), topic="ambient", lead="Alone it reads", notes=(_ADD,))


# --- so much of another's light ----------------------------------------------------------------------

_PART = r"(?P<part>half|one half|a third|one third|a quarter|one quarter|a fifth|a tenth|an eighth|twice|double|three times|four times)"
_SO_MUCH = Pattern(rf"\b(?P<one>[a-z]+)(?:'s)?(?: lights?| bulbs?| lamps?)? (?:gives?|puts?|adds?|has|have|is|are|throws?|sheds?|supplies|supply|lends?|contributes?|delivers?|brings?)(?: only| just| about)? (?:{_PART}(?: of)?(?: (?:the|as much) (?:amount of )?light| as (?:bright|strong))|(?P<same>(?:just |exactly )?as (?:much light|bright|strong)))(?: that| which| of| as| from)? (?:the |my )?(?P<other>[a-z]+)\b", re.I)
_SHARES = {"half": 0.5, "third": 1 / 3, "quarter": 0.25, "fifth": 0.2, "tenth": 0.1, "eighth": 0.125, "twice": 2.0, "double": 2.0, "three times": 3.0, "four times": 4.0}
_TOGETHER = Pattern(r"\b(?:together|both|the two|total|sum|combined|in all|the pair|add up)\b", re.I)
_WHO_ADDS = Pattern(rf"\b(?:does|do|will|would|is) (?:the |my )?(?:light of the )?(?P<who>[a-z]+)(?: light)? (?:then |thus )?{_ADDS}|\bgain\b", re.I)


_AND_THE_REST = Pattern(r"\b(?P<one>[a-z]+)(?: light)?(?: alone)? (?:gives?|puts?|makes?(?: up)?|is|supplies|delivers|adds?|throws?|contributes|brings?)(?: about| only| just)? (?P<part>a third|one third|a quarter|one quarter|three quarters|two thirds|a fifth|four fifths|a tenth|nine tenths|an eighth)(?: of)?(?: (?:the|all the|all) (?:light|exposure))\b[^.;?!]{0,40}?(?:,|;| and| with)+ (?:the |my )?(?P<other>[a-z]+)(?: light)?(?: gives?| puts?| makes?| is| supplies| adds?| throws?| giving| making| adding)? the (?:rest|remainder|other [a-z]+)\b", re.I)
_PARTS = {"three quarters": 0.75, "two thirds": 2 / 3, "four fifths": 0.8, "nine tenths": 0.9, "third": 1 / 3, "quarter": 0.25, "fifth": 0.2, "tenth": 0.1, "eighth": 0.125}


def _and_the_rest(query: Query) -> Solution | None:
    """"the sun gives three quarters of the light and the flash the rest": how far one lies under the other, or what each reads of the whole."""
    told = _AND_THE_REST.search(query.text)
    asked = _SUBJECT.search(query.text[told.end() :]) if told is not None else None
    if told is None or asked is None or any(f.quantity not in ("power", "share", "number", "aperture", "shutter", "film_speed", "remark", "place") or f.quantity in ("power", "share", "number") and not told.start() <= f.start < told.end() for f in query.facts):
        return None
    part = next(value for word, value in _PARTS.items() if word in told["part"].lower())
    of_one = asked["one"].lower() == told["one"].lower()
    if not of_one and asked["one"].lower() != told["other"].lower() or query.has("aperture"):
        return None
    over = math.log2(part / (1 - part)) * (1 if of_one else -1)
    used = _others(query, *(f for f in query.facts if f.quantity in ("power", "share", "number")))
    return Solution(answers=(marks.stops(over),), used=used, topic="ambient", notes=(f"The one gives {part / (1 - part):.3g} times the light of the other.",))


_SUBJECT = Pattern(r"\bhow (?:many stops|much|far)\b[^?]{0,24}?\b(?:is|are|does|do|lies) (?:the |my )?(?P<one>[a-z]+)(?: light)?\b[^?]{0,24}\b(?:above|over|brighter|stronger|under|below|weaker|darker|than)\b", re.I)


def _share(query: Query) -> Solution | None:
    """"the room gives half the light that the flash gives": what they read together, or what the one adds to the other."""
    told, read = _SO_MUCH.search(query.text), query.all("aperture")
    if told is None or len(read) > 1 or query.has("stops") or query.has("relation"):
        return None
    share = 1.0 if told["same"] else next(value for word, value in _SHARES.items() if word in told["part"].lower())
    powers = tuple(f for f in query.facts if f.quantity in ("power", "share", "number") and told.start() <= f.start < told.end())
    if any(f.quantity in ("power", "share", "number") and f not in powers for f in query.facts):
        return None
    one, other = told["one"].lower(), told["other"].lower()
    if not read and _STOPS_ASKED.search(query.text):
        who = _WHO_ADDS.search(query.text)
        base = None if who is None else share if (who["who"] or "it").lower() in (one, "it", "they", "that", "this") else 1 / share if (who["who"] or "").lower() == other else None
        return None if base is None else Solution(answers=(marks.stops(math.log2(1 + base)),), used=_others(query, *powers), topic="ambient", notes=(_ADD,))
    if len(read) != 1 or not _TOGETHER.search(query.text[told.end() :]) and not _TOGETHER.search(query.text[: told.start()]):
        return None
    clause = patterns.search(r"[^.,;?!]*(?:, (?:which|that|and it)\b[^.,;?!]*)?$", query.text[: read[0].start])
    of_one, of_other = (clause is not None and name in clause.group().lower() for name in (one, other))
    if of_one and of_other and clause is not None and clause.group().lower().rfind(one) < clause.group().lower().rfind(other) and ", which" in clause.group().lower():
        of_one = False  # "as the daylight, which reads f/8"
    if of_one == of_other or _STOPS_ASKED.search(query.text):
        return None
    value = times_the_light(read[0].value, 1 + (share if of_other else 1 / share))
    return Solution(answers=(marks.aperture(value),), used=_others(query, read[0], *powers), topic="ambient", notes=(_ADD,))


_SIZE = r"\s*(?:weaker|dimmer|darker|fainter|below|under|less(?: bright)?|down on|behind)(?: than)? (?:the |my )?(?:main |key )?"
_FLASH = r"(?:flash|strobe|key|speedlight|gun)\b"
_UNDER_FLASH = Pattern(rf"{_SIZE}{_FLASH}", re.I)
_OVER_THEM = Pattern(r"\s*(?:stronger|brighter|hotter|above|over|more)(?: than)? (?:the |my |that )?(?P<weak>[a-z]+)", re.I)
_ADDED = Pattern(rf"\bhow (?:many stops|much)\b[^?]{{0,16}}\b(?:does|do|will|would|is|are) (?:the |my )?(?P<who>[a-z]+)(?:'s? \w+| \w+)? ?{_ADDS}", re.I)


def _weaker(query: Query) -> Solution | None:
    """"the bulbs are two stops weaker than my flash on the same side: how many stops do they add?", whatever the bulbs are called."""
    asked = _ADDED.search(query.text)
    sizes = [f for f in query.facts if f.quantity in ("stops", "relation")]
    if asked is None or len(sizes) != 1 or query.has("aperture"):
        return None
    if asked["who"].lower() in ("flash", "strobe", "i", "we") or not _UNDER_FLASH.match(query.text[sizes[0].end :]) and not (_OVER_THEM.match(query.text[sizes[0].end :]) and patterns.search(_FLASH, query.text[: sizes[0].start], re.I)):
        return None
    return Solution(answers=(marks.stops(added_light_stops(abs(sizes[0].value))),), used=_others(query, sizes[0]), topic="ambient", notes=(_ADD, "That is how much brighter it is than with the flash alone."))


# --- two that read alike -----------------------------------------------------------------------------

_BOTH_READ = Pattern(r"\b(?:each|both|either)\b[^.?!;]{0,60}\b(?:reads?|gives?|meters?|measures?|shows?|is|are|call for|calls for|wants?)(?: at| for)? $", re.I)
_A_FLASH = Pattern(r"\b(?:flash|strobe|fill|key|speedlight)\b", re.I)
_OTHER_LIGHT = Pattern(r"\b(?:ambient|daylight|room|window|sun(?:light)?|sky|lamps?|bulbs?|lights|available light|existing light)\b", re.I)
_SET = Pattern(r"\b(?:set|leave|left|keep|kept|shoot|stay|stop(?:ped)? down|close(?:d)?(?: down)?|lens|camera|use|open)\b[^.?!;\d]{0,24}$", re.I)
_OUT = Pattern(r"\b(?:over|under|overexposed|underexposed|too (?:bright|dark|much)|out|off)\b", re.I)


def _alike(query: Query) -> Solution | None:
    """"flash and daylight each read f/8 and I set f/8: how far over?", "what do I set for the two?": twice the light of one."""
    read, sizes = query.all("aperture"), [f for f in query.facts if f.quantity in ("stops", "relation")]
    if not read or len(read) > 3 or not _A_FLASH.search(query.text) or not _OTHER_LIGHT.search(query.text) or query.has("power"):
        return None
    if len(read) > 1:
        return _over_the_lens(query, read) if not sizes and _OUT.search(query.text) and _STOPS_ASKED.search(query.text) else None
    if not _BOTH_READ.search(query.text[: read[0].start]) or not _TOGETHER.search(query.text) or len(sizes) > 1 or _STOPS_ASKED.search(query.text) or not query.asks_for("aperture"):
        return None
    wanted = _wanted(query.text, sizes[0]) if sizes else 0.0
    if wanted is None:
        return None
    value = sum_of_light((read[0].value, read[0].value)) * 2.0 ** (-wanted / 2)
    return Solution(answers=(marks.aperture(value),), used=_others(query, *read, *sizes), topic="ambient", notes=("Two equal lights on one face make twice the light of one.",))


def _over_the_lens(query: Query, read: list[Fact]) -> Solution | None:
    """What two lights give together, against the f-number that is set: one reading for each, or one for both."""
    starts = [0, *(f.end for f in read)]
    lens = [f for f, start in zip(read, starts) if _SET.search(query.text[start : f.start])]
    if len(lens) != 1:
        return None
    lights = [f for f in read if f is not lens[0]]
    if len(lights) == 1 and not _BOTH_READ.search(query.text[: lights[0].start]) or len(lights) == 2 and query.has("shutter"):
        return None
    if len(lights) == 1 or lights[0].value == lights[1].value:
        over = 1.0 + aperture_difference_stops(lights[0].value, lens[0].value)  # by the marks: twice the light is a stop
    else:
        over = 2 * math.log2(sum_of_light(f.value for f in lights) / lens[0].value)
    return Solution(answers=(marks.stops(over),), used=_others(query, *read), topic="ambient", notes=(_ADD,))


_SUM_OUT = Pattern(r"\b(?:together|both|sum|total|the two|the pair|in all)\b[^.?!;]{0,40}$", re.I)


def _wanted(text: str, size: Fact) -> float | None:
    """Stops by which the sum is to come out over (+) or under (-); None where it is not the sum that is so."""
    way = patterns.match(r"\s*(?:too )?(?:(?P<over>over|bright|hot|above)|under|dark|below)", text[size.end :], re.I)
    if way is None or not _SUM_OUT.search(text[: size.start]):
        return None
    return abs(size.value) if way["over"] else -abs(size.value)
