"""Changes told as deeds and without figures: "doubled the power", "moved it to twice the distance", "turned the power up by a stop".

Each is so many stops beside the other changes. A figure that the reading made of such a word
("halved" as half power) is taken back: it is no setting.
"""

from __future__ import annotations

import math
import re

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import record
from assistant.solving.ledger import WEIGHT


@record
class Deed:
    """What was changed, by how many stops (plus is more light on the film), and where it was said."""

    name: str
    stops: float
    start: int
    end: int


_VERB = r"(?P<verb>doubl|halv|quadrupl|tripl|trebl)(?:e|es|ed|ing)"
_WHAT = r"(?:flash |light |lamp )?(?P<what>power|output|energy|distance|film speed|iso)"
_FORMS = (
    Pattern(rf"\b{_VERB} (?:the |my |its |their |that )?{_WHAT}\b", re.I),
    Pattern(rf"\b{_WHAT}(?: (?:is|was|has|have|had|been|gets?|got|then|now|also|since))* {_VERB.replace('(?:e|es|ed|ing)', 'ed')}\b", re.I),
    Pattern(r"\b(?:to|at|with|from|give it|using|on) (?P<verb>twice|double|half|three times|four times)(?: of)? (?:the|its|my|as much|that) (?P<what>power|output|energy|distance)\b", re.I),
    Pattern(r"\b(?P<verb>twice|half|three times|four times) as (?P<what>far)\b(?: (?:away|back|off))?", re.I),
)
_BY = {"doubl": 2.0, "halv": 0.5, "quadrupl": 4.0, "tripl": 3.0, "trebl": 3.0, "twice": 2.0, "double": 2.0, "half": 0.5, "three times": 3.0, "four times": 4.0}
_OF = {"power": "power", "output": "power", "energy": "power", "distance": "distance", "far": "distance", "film speed": "film_speed", "iso": "film_speed"}
_MAY = Pattern(r"doubl|halv|quadrupl|tripl|trebl|twice|half|times|up", re.I)
_TURNED = Pattern(r"\b(?:turn|dial|bring|brought|push|put|crank|wind|wound|run|set|rais|rose)\w*(?: (?:the|my|its))?(?: (?:flash|head|light))? ?(?:power|output|flash|it|lamp|head|gun|light)? up(?: by)?(?: another| a further)? $", re.I)
_ASKED = Pattern(r"\b(?:if|what|which|how|should|would|must|need)\b", re.I)


def told(query: Query) -> tuple[list[Deed], Query]:
    """The deeds of a text, and the query without the facts that were made of their words."""
    if not _MAY.may_match(query.text):
        return [], query
    out: list[Deed] = []
    for form in _FORMS:
        for found in form.finditer(query.text):
            quantity = _OF[found["what"].lower()]
            if not any(d.start < found.end() and found.start() < d.end for d in out):
                out.append(Deed(quantity, WEIGHT[quantity] * math.log2(_BY[found["verb"].lower()]), found.start(), found.end()))
    turned = [f for f in query.facts if f.quantity == "stops" and f.value > 0 and _TURNED.search(query.text[: f.start])]
    out += [Deed("power", abs(f.value), f.start, f.end) for f in turned]
    if not out:
        return out, query
    return sorted(out, key=lambda d: d.start), query.with_facts(f for f in query.facts if not any(d.start <= f.start < d.end for d in out))


def after(deeds: list[Deed], known: Fact | None) -> bool:
    """Whether they were all done after what is known, as it is told."""
    return known is None or all(known.end <= d.start for d in deeds)
