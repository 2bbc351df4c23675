"""What the film came out as, or comes out as now: "came out a stop thin", "I'm a stop short with 100 film"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact

_CAME_OUT = Pattern(r"\b(?:com(?:e|es|ing)|came|turn(?:s|ed|ing)?) (?:\w+ )?(?:out|back|up)\b(?![^.?!,;]{0,24}\b(?:better|best|nicer|nicest|right|richer|cleaner|sweeter)\b)[^.?!,;]{0,24}$|\b(?:found|measur\w+|densitometer)\b[^.?!]{0,32}$|\bfinds? (?:that )?(?:his|her|my|our|their|all|the) [^.?!]{0,36}$|\b(?:negatives|negs|slides|frames|pictures|prints|shots|rolls|chromes) (?:always|usually|all|often) (?:about |a good )?$|\b(?:look(?:s|ed|ing)?|print(?:s|ed)?|are|were|been|(?:slide|chrome|frame|roll|neg|negative|print|picture|shot|portrait|test|everything|it|which) (?:is|was))\b(?: (?:all|always|about|roughly|usually|every|still|just|a good|by)){0,3} $", re.I)
_WAY = Pattern(r"^[\w -]{0,24}?\b(?:(?P<result>thin|dense|(?:too|all) (?P<too>dark|light|bright|pale))|(?P<under>under\w*|dark)|over\w*)\b", re.I)


_WANTED = Pattern(r"\b(?:want\w*|lik(?:e|es)|prefer\w*|aim\w*|(?<!negatives )(?<!negs )(?<!slides )(?<!frames )(?<!pictures )(?<!prints )(?<!shots )(?<!rolls )(?<!chromes )(?<!are )(?<!is )always(?! com| turn| print| look)|shoot|expose|give|so that|so they|make (?:them|it))\b[^.?!]{0,40}$", re.I)


_RESULT_FIRST = Pattern(r"\b(?P<result>thin|dense)\b[,;:-]?(?: (?:by|about|around|roughly|maybe|say|i'd say|some|a good))* ?$", re.I)
"""Right before the stops: "came out thin, a stop and a third under"."""


_NOW = Pattern(r"\b(?:(?:i|we|it|that|this)(?:['’](?:m|re|s)| am| are| is)|leaves (?:me|us|it)|(?:i|we) (?:get|come out|end up))(?: (?:still|about|only|just|coming out))* $", re.I)
_LACK = Pattern(r"\s*(?:too )?(?:(?P<less>under\w*|short|dark|thin|shy)|over\w*|bright|hot|dense)\b", re.I)


def lacks_now(text: str, moved: Fact) -> float:
    """1 where so much light is lacking as it stands ("I'm a stop short with 100 film"), -1 where there is too much."""
    way = _LACK.match(text, moved.end)
    return 0.0 if way is None or _NOW.search(text[: moved.start]) is None else 1.0 if way["less"] else -1.0


def came_out_short(text: str, moved: Fact) -> float:
    """1 where frames came out with too little light ("always a stop thin", "thin by a stop"), -1 with too much, 0 where no result is told."""
    first = _RESULT_FIRST.search(text[: moved.start])
    if first is not None:
        return 1.0 if first["result"].lower() == "thin" else -1.0
    way = _WAY.match(text[moved.start : moved.end + 20])
    wanted, came = _WANTED.search(text[: moved.start]), _CAME_OUT.search(text[: moved.start])
    shot = wanted is not None and came is not None and wanted.start() < came.start() and wanted[0].lower().startswith(("shoot", "expose"))  # "everything I shoot … comes back a stop thin"
    if way is None or wanted is not None and not shot or not way["result"] and came is None:
        return 0.0
    return 1.0 if way["under"] or (way["result"] or "").lower() == "thin" or (way["too"] or "").lower() == "dark" else -1.0
