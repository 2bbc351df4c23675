"""A half-sentence in the words of the question: "what if one pop only gives f/2.8?" of "one pop from here gives f/4, the camera has to be at f/11".

Where the question holds two values of a kind, or the new one is a bare figure, the words around it say which is meant:
it goes where those words stood. A word that the question has not tells something else, and then nothing is placed here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.language.number_words import SMALL, TENS
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.pop_facts import POP_WORDS
from assistant.units import LENGTH

FILLING = Pattern(
    r"(?:[\s,.;:?!'’-]|back (?=to |at )|(?:and|so|then|ok|okay|now|first|before|earlier|originally|no|nope|sorry|typo|mistyped|slip|finger|fingers|slipped|oops|whoops|haha|ha|lol|doh|d'oh|silly|mistake|my|wait|well|but|or|hm+|erm?|um|right|please|pls|instead|actually|rather|what|how|about|if|i|we|you|it|it's|its|is|were|was|are|be|been|would|should|could|can|"
    r"made?|make|that|that's|this|at|on|to|in|for|of|from|a|an|the|say|suppose|supposing|try|use|using|used|set|go|goes|going|went|gone|put|have|has|had|got|get|only|just|meant|mean|take|by|there|he's|she's|they're|"
    r"he|she|they|her|him|them|i'm|i'd|we'd|he'd|she'd|they'd|you'd|it'd|we're|s|reach(?:es)?|reads?|reading|met(?:er|ers|ered)|gives?|gave|says|said|becomes?|came|comes|stands?|stood|sits?|sat|sitting|standing|been|left|parked|locked|racked|rested|safe|safer|instead|same|both|each|thing|again|change|changed|turn|turned|with|let's|lets|ah|oh|hang|behind|beyond|away|apart|out|deep|within|inside|slide|slides|neg|negs|negative|print|really|exactly|loaded|film|lens|focus|focused|flash|light|subject|distance|aperture|power|"
    r"battery|spare|when|takes|lasts|one|sooner|prefer|rather|settle|manage|gets|goes|do|does|will|plenty|fine|(?:(?!not |never |hardly |barely |scarcely |quite )[a-z]+ )?enough(?! *\?)|(?:on|with|in|for) (?:this|these|that|those) [a-z]+)(?![a-z]))*", re.I)
"""Words that may stand around the one value that is told, and say nothing of their own."""
ONE_OF_ITS_KIND = frozenset({
    "distance", "path", "gap", "aperture", "film_speed", "rated", "power", "power_down", "energy", "guide_number", "loss", "filter_loss", "nd", "stops", "relation", "shutter", "exposure_value", "exponent", "focal_length", "focus_distance",
    "recycle", "duration", "t05", "t01", "velocity", "magnification", "extension", "t_number", "camera_distance", "ratio", "push", "years", "count", "blur", "charge_share", "voltage", "capacitance", "sharp_limit",
})
IF_SO = Pattern(r"^\W*(?:(?:and|but|or|so|then|ok) )*(?:would|will|is|does|do|could|can) (?:it|that|this|they|he|she)\b", re.I)
"""The question of a verdict put once more: "would it be at f/16?"."""
_OF_ITSELF = Pattern(r"\b(?:is|does|would) (?:that|this|it)\W*$", re.I)
"""A question of what it has just told: "ND8, how many stops is that?"."""

_FIGURE = re.compile(r"\d+(?:\.\d+)?")
_WORD = re.compile(r"[a-z]+(?:'[a-z]+)?")
_ENDING = re.compile(r"(?:s|ed|ing)$")
_CLAUSE_ENDS = re.compile(r"[.,;?!](?!\d)|\b(?:and|but|so|then)\b")
_SAYING = frozenset({"hold", "will", "stay", "one", "manage", "deliver", "still", "when", "want", "need", "ask", "do", "doe", "did", "pop", "burst"})
"""Words around a value that say no more of it than the words of the question do."""
_NAMES = frozenset({"meter", "flash", "lens", "film", "focus", "subject"})
"""Filling where one value is told, and the name of it where two are."""

_MOST = 24
"""Values told at once, beyond which it is not looked for the words of each."""


def in_the_same_words(query: Query, last: Query) -> tuple[Fact, Fact] | None:
    """A value told in the words in which the question told one of its kind, and that one: "what if one pop only gives f/2.8?" of "one pop from here gives f/4, the camera has to be at f/11"."""
    if len(last.facts) > _MOST or len(query.facts) > _MOST:
        return None
    known = {(f.quantity, f.value, f.of, f.unit) for f in last.facts}
    again = [f for f in query.facts if f.quantity != "number" and (f.quantity, f.value, f.of, f.unit) in known]
    told = [f for f in query.facts if f.quantity != "remark" and f not in again]
    if len(told) != 1 or told[0].quantity not in ONE_OF_ITS_KIND | {"number"} or told[0].bad or told[0].origin != "said" or query.mentioned or not _asks_the_same(query, last):
        return None
    mine = _bare(told[0], last)
    if not _telling(blank(query.text, (mine, *again))) <= _telling(last.text) | _SAYING | _NAMES:
        return None
    words = _clause(mine, query.text)
    scored = [(len(words & _clause(f, last.text)), f) for f in last.facts if f.origin != "kit" and f.start < f.end and _may_replace(mine, f)]
    most = max((score for score, _ in scored), default=0)
    best = [f for score, f in scored if score == most]
    plain = most or query.asks and not _OF_ITSELF.search(query.text) or IF_SO.match(query.text)  # the question is put once more: any word of it may stand there
    return (mine, best[0]) if plain and len(best) == 1 and mine.of in ("", best[0].of) and best[0].value != mine.value else None


def _bare(fact: Fact, last: Query) -> Fact:
    """"metered 16" of a question that has no f-number: a bare number, whatever it could be elsewhere."""
    guessed = fact.quantity in ("aperture", "film_speed") and _FIGURE.fullmatch(fact.said.strip()) and not last.has(fact.quantity)
    return replace(fact, quantity="number", of="", cue="") if guessed else fact


def _asks_the_same(query: Query, last: Query) -> bool:
    """Whether nothing is asked but what was asked before."""
    return {(a.quantity, a.of) for a in query.asks} <= {(a.quantity, a.of) for a in last.asks}


def _may_replace(mine: Fact, old: Fact) -> bool:
    """Whether one value is of the kind of the other, as far as it tells its kind."""
    if mine.quantity == "number":
        return old.quantity in ONE_OF_ITS_KIND and is_near(mine, old)
    if mine.quantity == "film_speed" and old.quantity == "rated":
        return True
    return mine.quantity == old.quantity and (mine.quantity != "count" or mine.unit == old.unit or {mine.unit, old.unit} <= set(POP_WORDS))


def _telling(text: str) -> set[str]:
    """The words of a text that tell something of their own, without their endings.

    >>> sorted(_telling("and if the cells only yield"))
    ['cell', 'yield']
    """
    words = [(word, _ENDING.sub("", word)) for word in _WORD.findall(text.lower())]
    return {stem for word, stem in words if stem in _NAMES or not FILLING.fullmatch(word)}


def _clause(fact: Fact, text: str) -> set[str]:
    """The telling words of the clause in which a value stands."""
    start = max((m.end() for m in _CLAUSE_ENDS.finditer(text, 0, fact.start)), default=0)
    ends = _CLAUSE_ENDS.search(text, fact.end)
    return _telling(f"{text[start : fact.start]} {text[fact.end : ends.start() if ends else len(text)]}") - {"one"} | _telling(fact.said) & _NAMES


def blank(text: str, facts: Iterable[Fact]) -> str:
    """The text without the words of these facts."""
    for fact in facts:
        text = f"{text[: fact.start]}{' ' * (fact.end - fact.start)}{text[fact.end :]}"
    return text


_NEAR = 8
"""Times by which a bare number may differ from the value that it takes the place of."""


def is_near(bare: Fact, old: Fact) -> bool:
    """Whether a bare number, in the unit of a value, is of its size."""
    return old.value / _NEAR <= bare.value * LENGTH.get(old.unit, 1.0) <= old.value * _NEAR


def is_bare(said: str) -> bool:
    """Whether a number is told with no word of what there is so many of.

    >>> is_bare("two hundred"), is_bare("three rolls")
    (True, False)
    """
    return all(word in SMALL or word in TENS or word in ("a", "and", "hundred", "thousand") for word in _WORD.findall(said.lower()))
