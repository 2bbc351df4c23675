"""How many pops there may be at most, where the words of a bound stand apart from their number: "max I can do is 6 pops", "can only do eight", "six is the limit"."""

from __future__ import annotations

from assistant.language.hearing import fold
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"count", "number"})
_WHO = r"(?:i|we|he|she|they|it|the \w+|my \w+)"
_MAY = rf"(?: (?:that )?{_WHO}(?:'ll| can| could| may| will| have| would)?(?: (?:do|fire|manage|get|give|hold|take|stand|allow|spare|have|fit|time|for))*)?"
_BOUND_BEFORE = Pattern(rf"\b(?P<bound>max(?:imum)?|(?:the |my |his |her )?(?:limit|most|ceiling))(?: (?:pops|flashes|number|of pops))?{_MAY}(?: is| are| would be| =|:)? $")
_ONLY = Pattern(r"\b(?:can|could|may|will|got time to|have time to) only(?: (?:do|fire|manage|get|give|have|fit|squeeze|take|allow|time|spare|in))+ $|\bonly (?:have )?time for $|\b(?:can't|cannot|can not) (?:do|fire|manage|get|give|fit) (?:any )?more than $|\bno more than $")
_NOUN = r"(?: (?:more |full )?(?:pops|flashes|bursts))?"
_BOUND_AFTER = Pattern(rf"{_NOUN}(?: (?:max(?:imum)?|tops|at the (?:very )?most|at most)\b| (?:is|are|would be) (?:the |my |his |her )?(?:limit|most|max(?:imum)?|ceiling|all)\b| and no more\b)")
_TIRED = Pattern(rf"{_NOUN}(?: (?:times|shots|hits|firings|in a row|on the trot|straight|at (?:full(?: power)?|most)|max))*,? (?:before|until|till|then|or) (?:{_WHO} )?(?:(?:has to|must|needs to|starts to|will|would) )?(?:over ?heat|cut(?:s|ting)? out|shut(?:s|ting)? (?:down|off|itself)|trips?\b|get(?:s|ting)? too (?:hot|warm)|cool|quits?\b|lock(?:s|ing)? (?:up|out)|thermal|melt|burns? out|cooks?\b|pack(?:s|ing)? up)")
"""What a head can stand: "20 before it cuts out"."""
_OF_A_CHARGE = Pattern(r"\b(?:charge|batter(?:y|ies)|cells?)\b")
_ENDS = Pattern(rf"{_NOUN}\s*(?:$|[.,;:?!](?!\d)|(?:before|or|in (?:this|the)|and|but|so|until)\b)")
_OF_EACH = Pattern(r" ?(?:pops |flashes )?(?:per|on each|on a|a|each|every|in \d|in (?:a|one|the) (?:minute|second))\b")
_ASKED = Pattern(r"\b(?:how many\b|enough\b|will it do\b|can i\b|do i need\b|pops needed|pops\W*(?:\?|$))")
_READINGS = frozenset({"aperture", "stops", "loss", "relation", "power_down"})
_UNITS = ("pops", "flashes")


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the most pops there may be as a bound, where so many are asked for and what they must make up is told."""
    if "pop" not in text.lower() and "flash" not in text.lower() and "burst" not in text.lower():
        return facts
    lower = fold(text)
    told = sum(f.quantity == "aperture" for f in facts) > 1 or any(f.quantity in _READINGS - {"aperture"} for f in facts)
    if not told or not _ASKED.search(lower):
        return facts
    bounds = [f for f in facts if _may_be_pops(f) and _is_bound(f, lower)]
    if len(bounds) != 1:
        return facts
    said = _BOUND_BEFORE.search(lower[: bounds[0].start])
    kept = [f for f in facts if said is None or not (f.quantity == "power" and said.start("bound") <= f.start < said.end("bound"))]  # "max" is no full power
    return [replace(f, quantity="max_count", unit="pops", of="", cue="at_most") if f is bounds[0] else f for f in kept]


def _may_be_pops(fact: Fact) -> bool:
    counted = fact.quantity == "count" and fact.unit in _UNITS or fact.quantity == "number"
    return counted and not fact.bad and fact.value > 1 and fact.value == int(fact.value)


def _is_bound(fact: Fact, lower: str) -> bool:
    if _OF_EACH.match(lower, fact.end):
        return False
    after = lower[fact.start :][len(fact.said.strip()) :] if fact.said else ""
    before = lower[: fact.start]
    if (_BOUND_BEFORE.search(before) or _ONLY.search(before)) and (_ENDS.match(lower, fact.end) or _ENDS.match(after)):
        return True
    if _TIRED.match(lower, fact.end) and not _OF_A_CHARGE.search(lower):
        return True
    return _BOUND_AFTER.match(lower, fact.end) is not None or _BOUND_AFTER.match(after) is not None

