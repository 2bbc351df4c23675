"""Signs that something else was measured: the whole where a part of it was asked, a scene where it was held against a rule."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Query
from assistant.scales import aperture_difference_stops
from assistant.solving.alike import asks_of_one, spoken_of
from assistant.solving.solution import Solution
from assistant.solving.taken_off import stays_alone


def all_for_one(said: Query, whole: Query, found: Solution) -> bool:
    """"a silk and a net took f/16 to f/8: what does one of them take?", and what both took was found."""
    first = found.answers[0]
    read = [f for f in found.used if f.quantity == "aperture"]
    if first.quantity != "stops" or len(read) != 2 or not isinstance(first.value, float) or not asks_of_one(said.text):
        return False
    several = any(s.many > 1 for s in spoken_of(said.text)) or sum(f.quantity == "modifier" for f in said.facts) > 1
    return several and abs(abs(first.value) - abs(aperture_difference_stops(read[0].value, read[1].value))) < 0.01


_AGAINST_THE_RULE = Pattern(r"\b(?:under|below|over|above|than|short of|from|off|against|beyond)(?: what)?(?: the)? sunny.?(?:16|sixteen)\b", re.I)


def against_the_rule(said: Query, whole: Query, found: Solution) -> bool:
    """"f/5.6 and 1/125 in the shade: how many stops under sunny 16 is that?": two lights, and only one was looked at."""
    return not any(f.quantity in ("stops", "relation") for f in found.used) and _AGAINST_THE_RULE.search(said.text) is not None


_TOLD_OF_ALL = Pattern(r"\b(?:sum|total|together|both|combined|in all)\b", re.I)
_OF_ANOTHER = Pattern(r"\b(?:what|which)\b[^?]*\b(?:the (?:other|second|third|last|remaining|rest)|lamp b|flash b|head b|alone|by itself|on its own)\b", re.I)


_SUM_AND_ONE = Pattern(r"\b(?:sum|total|together|both|combined)\b[^?]*\b(?:alone|by itself|on its own)\b[^?]*\bwhat\b(?![^?]*\b(?:together|both|set|sum|total)\b)", re.I)


def summed_again(said: Query, whole: Query, found: Solution) -> bool:
    """"two flashes together read f/11.3 and one f/8: what does the other read?", and the two figures summed."""
    first, told = found.answers[0], [f.value for f in said.facts if f.quantity == "aperture"]
    return len(told) == 2 and isinstance(first.value, float) and first.value > max(told) * 1.02 and _TOLD_OF_ALL.search(said.text) is not None and (_OF_ANOTHER.search(said.text) is not None or _SUM_AND_ONE.search(said.text) is not None)


_TIMES = Pattern(r"\b(?:twice|double|half|quarter|\w+ times) (?:as |the )?(?:fast|slow|sensitive|speed)\b", re.I)


def film_as_it_was(said: Query, whole: Query, found: Solution) -> bool:
    """A film speed that is the one told, where another was asked for: one "twice as fast", or one that puts a reading at another f-number."""
    first, told = found.answers[0], {f.value for f in said.facts if f.quantity == "film_speed"}
    if first.value not in told or len(told) != 1:
        return False
    places = {f.start for f in found.used}
    return _TIMES.search(said.text) is not None or found.topic == "ambient" and any(f.quantity == "aperture" and f.origin == "said" and f.start not in places for f in said.facts)


_MOVED_TO = Pattern(r"\b(?:mov\w+|pull\w*|bring|brought|back|backed|push\w*|carr\w+|take|took|shift\w*|drag\w*)(?: (?:the|my) (?:lamp|light|flash|head|key|strobe|softbox|box)| it)?(?: (?:back|in|out|away|up|off|closer|further))* to (?:about |just |only )?$", re.I)


def moved_and_not_counted(said: Query, whole: Query, found: Solution) -> bool:
    """"I move the lamp back to 8 feet from the sitter", and where it stood before is counted with."""
    places, counted = {f.start for f in found.used}, {(f.said.strip(), round(f.value, 6)) for f in found.used if whole.text != said.text}  # a half-sentence has its places behind the scene's words
    return any(f.quantity == "distance" and f.origin == "said" and f.start not in places and (f.said.strip(), round(f.value, 6)) not in counted and _MOVED_TO.search(said.text[: f.start]) for f in said.facts)


def full_power_left(said: Query, whole: Query, found: Solution) -> bool:
    """"240 pops at half power: how many frames of four at full power?", and only the half counted."""
    powers = [f for f in said.facts if f.quantity == "power"]
    used = {f.value for f in found.used if f.quantity == "power"}
    return len({f.value for f in powers}) == 2 and 1.0 in {f.value for f in powers} and bool(used) and 1.0 not in used


_FEWER_THAN = Pattern(r"\b(?:pops?|flashes|bursts) (?:fewer|less|more|too few|too many) than\b", re.I)


def fewer_taken_for_all(said: Query, whole: Query, found: Solution) -> bool:
    """"three pops fewer than the 12 that were right", and three counted as all of them."""
    return _FEWER_THAN.search(said.text) is not None and any(f.quantity == "count" and f in found.used and _FEWER_THAN.search(said.text, f.start, f.end + 30) for f in said.facts)


_WHAT_IT_TAKES = Pattern(r"\bwhat (?:does|do|did|will|would) (?:the |my )?(?:\w+ ){1,2}(?:itself |alone |by itself )?(?:take|cost|lose|eat|swallow|steal|absorb)s?\W*$", re.I)


def takes_and_gains(said: Query, whole: Query, found: Solution) -> bool:
    """"what does the dish take?", and more light found."""
    first = found.answers[0]
    return isinstance(first.value, float) and first.value > 0.05 and _WHAT_IT_TAKES.search(said.text) is not None


_A_SETTING_FOR = Pattern(r"\bwhat (?:must|should|do|shall|can|would) (?:i|we) (?:then |now )?(?:set|use|give|go (?:to|with)|shoot(?: at)?|choose)\b[^?]*\bfor\b", re.I)


def stops_for_a_setting(said: Query, whole: Query, found: Solution) -> bool:
    """"right at 1/60, two under at 1/250: what must I use for one under?", and stops where a setting was asked."""
    return len({f.value for f in said.facts if f.quantity == "shutter"}) == 2 and _A_SETTING_FOR.search(said.text) is not None


def which_of_them_stays(said: Query, whole: Query, found: Solution) -> bool:
    """"through silk and net f/8 … through only the net?", both called by one name: an answer of anything else is of another question."""
    read, lost = said.all("aperture"), said.all("loss")
    return len(read) == 1 and len({f.unit for f in lost}) < len(lost) and stays_alone(said, read[0])
